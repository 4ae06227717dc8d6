import { ok, type Result } from '../base/result.ts';
import { cautionTexts } from '../model/cautions.ts';
import {
  USUAL_CUT_WIDTH_MM,
  type Bridges,
  type CutterChoice,
  type CutterKind,
  type CutterSheet,
} from '../model/cutter.ts';
import { cutterSheets } from '../steps/write/cutter-sheets.ts';
import { writeDxf } from '../steps/write/dxf.ts';
import { writeSheetSvg } from '../steps/write/sheet-svg.ts';
import type { Outcome } from './outcome.ts';

/** Files beside the templates that were asked for; left out means: none. */
export interface MachineChoices {
  /** A DXF of every sheet of foam. */
  readonly dxf?: boolean;
  /** Two SVG files of every sheet: in hairlines, and filled. */
  readonly sheetSvg?: boolean;
  readonly cutter: CutterChoice;
}

/** What cuts the sheets, with the usual width of its cut where none is given. */
export const cutterOf = (kind: CutterKind, cutWidthMm: number | undefined, bridges?: Bridges): CutterChoice => ({
  kind,
  cutWidthMm: cutWidthMm ?? USUAL_CUT_WIDTH_MM[kind],
  ...(bridges === undefined ? {} : { bridges }),
});

/**
 * What is to be said before files for a cutter are written: what a laser must never cut, unless the sheets are for a blade.
 * @returns none where nothing is for a cutter.
 */
export const machineCautions = (choices: MachineChoices): readonly string[] =>
  isForCutter(choices) && choices.cutter.kind !== 'blade' ? cautionTexts('laser') : [];

const isForCutter = ({ dxf, sheetSvg }: MachineChoices): boolean => dxf === true || sheetSvg === true;

/**
 * Files for machines, by name. The same outcome gives the same bytes.
 * @returns fails as the writers do; notes tell what is left to the hand.
 */
export function machineFiles(
  outcome: Outcome,
  choices: MachineChoices,
): Result<ReadonlyMap<string, Uint8Array | string>> {
  const files = new Map<string, Uint8Array | string>();
  if (!isForCutter(choices)) return ok(files);
  const sheets = sheetsForCutter(outcome, choices.cutter);
  if (!sheets.ok) return sheets;
  const cautions = machineCautions(choices);
  for (const sheet of sheets.value) {
    const [name, about] = [`sheet-${sheet.number}`, aboutSheet(outcome, sheet)];
    if (choices.dxf === true) files.set(`${name}.dxf`, writeDxf(sheet, [about, ...cautions]));
    if (choices.sheetSvg === true) {
      files.set(`${name}.svg`, writeSheetSvg(sheet, 'hairline', about, cautions));
      files.set(`${name}-filled.svg`, writeSheetSvg(sheet, 'filled', about, cautions));
    }
  }
  return ok(files, sheets.notes);
}

function sheetsForCutter(outcome: Outcome, choice: CutterChoice): Result<readonly CutterSheet[]> {
  const { pieces, strips, templates, sheets } = outcome;
  if (pieces === null || templates === null || sheets === null)
    throw new Error('machineFiles: the chain has not run to its end');
  return cutterSheets({ pieces: [...pieces, ...strips], templates, layout: sheets, choice });
}

/** One line that says what a sheet is. */
export function aboutSheet({ project }: Pick<Outcome, 'project'>, sheet: CutterSheet): string {
  const foam = project.foams.find(({ id }) => id === sheet.foam)?.name ?? 'foam';
  const size = `${Math.round(sheet.widthMm)} × ${Math.round(sheet.heightMm)} mm`;
  return `${project.name}, sheet ${sheet.number}, ${foam}, ${size}${sheet.isTooLarge ? ', larger than any sheet in stock' : ''}`;
}
