import type { TipHole } from '../model/tip-hole.ts';
import { onSculpt, type Command } from './commands.ts';

/** Least and greatest hole at the end of a dart, mm: a needle's and half a thumb's width. */
export const TIP_HOLE_MM = { least: 1, most: 20 } as const;

/** What a hole begins with, mm [J]: the punch for a belt. */
export const FIRST_TIP_HOLE_MM = 4;

/**
 * Ends a dart in a round hole, or in a point again.
 * @param corner     of the sculpt at which the dart ends, file number.
 * @param diameterMm within {@link TIP_HOLE_MM}, or null for a point.
 */
export const setTipHole = (corner: number, diameterMm: number | null): Command =>
  onSculpt(
    diameterMm === null ? 'end the dart in a point' : 'end the dart in a hole',
    (part) => {
      const { tipHoles = [], ...rest } = part;
      const had = tipHoles.find((hole) => hole.corner === corner);
      if ((had?.diameterMm ?? null) === diameterMm) return part;
      const others = tipHoles.filter((hole) => hole !== had);
      const holes: readonly TipHole[] = diameterMm === null ? others : [...others, { corner, diameterMm }];
      return holes.length === 0 ? rest : { ...rest, tipHoles: holes };
    },
    diameterMm === null ? undefined : `tip ${corner}`,
  );
