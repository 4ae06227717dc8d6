import {
  MOST_BRIDGE_MM,
  MOST_BRIDGES,
  MOST_CUT_WIDTH_MM,
  USUAL_CUT_WIDTH_MM,
  type Bridges,
  type CutterWish,
} from '../model/cutter.ts';
import type { Command } from './commands.ts';

/** Least and most that may be said of a cutter: the same for the project's file, the window and the command line. */
export const CUTTER_LIMITS = {
  cutWidthMm: { least: 0, most: MOST_CUT_WIDTH_MM },
  bridges: { least: 1, most: MOST_BRIDGES },
  /** Over 0. */
  bridgeMm: { most: MOST_BRIDGE_MM },
} as const;

/** Width of its cut, mm, where nobody has measured it. */
export const usualCutWidth = (kind: CutterWish['kind']): number => USUAL_CUT_WIDTH_MM[kind ?? 'unknown'];

/** Says what goes through the foam; null: nobody knows. How wide it cuts is then as is usual for that. */
export const setCutter = (kind: CutterWish['kind'] | null): Command =>
  onCutter('say what cuts the sheets', (cutter) => {
    const { kind: before, cutWidthMm: _, ...rest } = cutter;
    return (kind ?? undefined) === before ? cutter : { ...given(kind ?? undefined, undefined), ...rest };
  });

/** How wide it cuts, measured; null: as is usual. @throws RangeError outside {@link CUTTER_LIMITS}. */
export function setCutWidth(mm: number | null): Command {
  const { least, most } = CUTTER_LIMITS.cutWidthMm;
  if (mm !== null && !(mm >= least && mm <= most)) throw new RangeError(`cut width ${mm} mm`);
  return onCutter('set the width of the cut', ({ kind, cutWidthMm: _, ...rest }) => ({
    ...given(kind, mm ?? undefined),
    ...rest,
  }));
}

/** What holds each piece to its sheet; null: nothing. @throws RangeError outside {@link CUTTER_LIMITS}. */
export function setBridges(bridges: Bridges | null): Command {
  if (bridges !== null && !areBridges(bridges)) throw new RangeError(`bridges ${bridges.count}, ${bridges.widthMm} mm`);
  return onCutter('set what holds the pieces', ({ kind, cutWidthMm }) => ({
    ...given(kind, cutWidthMm),
    ...(bridges === null ? {} : { bridges }),
  }));
}

/** Whether they are within {@link CUTTER_LIMITS}. */
export function areBridges({ count, widthMm }: Bridges): boolean {
  const { least, most } = CUTTER_LIMITS.bridges;
  return (
    Number.isInteger(count) && count >= least && count <= most && widthMm > 0 && widthMm <= CUTTER_LIMITS.bridgeMm.most
  );
}

const given = (kind: CutterWish['kind'], cutWidthMm: number | undefined): CutterWish => ({
  ...(kind === undefined ? {} : { kind }),
  ...(cutWidthMm === undefined ? {} : { cutWidthMm }),
});

function onCutter(label: string, change: (cutter: CutterWish) => CutterWish): Command {
  return {
    label,
    apply(project) {
      const { cutter = {}, ...rest } = project;
      const next = change(cutter);
      if (JSON.stringify(next) === JSON.stringify(cutter)) return project;
      return Object.keys(next).length === 0 ? rest : { ...rest, cutter: next };
    },
  };
}
