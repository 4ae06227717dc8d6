import type { Finding } from '../base/finding.ts';
import { ok, type Fail, type Result } from '../base/result.ts';
import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import { cautionTexts } from '../model/cautions.ts';
import {
  USUAL_CUT_WIDTH_MM,
  type Bridges,
  type CutterChoice,
  type CutterKind,
  type CutterSheet,
} from '../model/cutter.ts';
import type { Stroke } from '../model/template.ts';
import { cutterSheets } from '../steps/write/cutter-sheets.ts';
import { writeDxf } from '../steps/write/dxf.ts';
import { FontOutlines } from '../steps/write/png-font.ts';
import { pngSteps, type Picture } from '../steps/write/png.ts';
import { writeSheetSvg } from '../steps/write/sheet-svg.ts';
import { modelFileSteps, type ModelChoice } from './machine-models.ts';
import type { Project } from '../project/project.ts';
import { besideOf, type Outcome } from './outcome.ts';

/** Files beside the templates that were asked for; left out means: none. */
export interface MachineChoices {
  /** A DXF of every sheet of foam. */
  readonly dxf?: boolean;
  /** Two SVG files of every sheet: in hairlines, and filled. */
  readonly sheetSvg?: boolean;
  /** A PNG of every page and sheet, with so many dots to the inch. */
  readonly pngDpi?: number;
  /** Solid models of the finished prop. */
  readonly models?: ModelChoice;
  readonly cutter: CutterChoice;
}

/** What cuts the sheets, with the usual width of its cut where none is given. */
export const cutterOf = (kind: CutterKind, cutWidthMm: number | undefined, bridges?: Bridges): CutterChoice => ({
  kind,
  cutWidthMm: cutWidthMm ?? USUAL_CUT_WIDTH_MM[kind],
  ...(bridges === undefined ? {} : { bridges }),
});

/** What cuts the sheets of a project, as far as it was said. */
export const cutterOfProject = ({ cutter }: Pick<Project, 'cutter'>): CutterChoice =>
  cutterOf(cutter?.kind ?? 'unknown', cutter?.cutWidthMm, cutter?.bridges);

/**
 * What is to be said before files for a cutter are written: what a laser must never cut, unless the sheets are for a blade.
 * @returns none where nothing is for a cutter.
 */
export const machineCautions = (choices: MachineChoices): readonly string[] =>
  isForCutter(choices) && choices.cutter.kind !== 'blade' ? cautionTexts('laser') : [];

const isForCutter = ({ dxf, sheetSvg }: MachineChoices): boolean => dxf === true || sheetSvg === true;

/**
 * Files for machines, by name. The same outcome gives the same bytes.
 * @param font DejaVu Sans as a TrueType file.
 * @returns fails as the writers do; notes tell what is left to the hand.
 */
export const machineFiles = (outcome: Outcome, choices: MachineChoices, font: Uint8Array): Result<Files> =>
  runAtOnce(machineFileSteps(outcome, choices, font));

/** The same in short stretches. */
export function* machineFileSteps(
  outcome: Outcome,
  choices: MachineChoices,
  font: Uint8Array,
): Stepwise<Result<Files>> {
  const files = new Map<string, Uint8Array | string>();
  const notes: Finding[] = [];
  const sheets = sheetsForCutter(outcome, choices.cutter);
  if (!sheets.ok) return sheets;
  yield;
  if (isForCutter(choices)) {
    yield* addCutterFiles(files, outcome, choices, sheets.value);
    notes.push(...sheets.notes);
  }
  if (choices.pngDpi !== undefined) {
    const failed = yield* addPictures(files, outcome, sheets.value, choices.pngDpi, new FontOutlines(font));
    if (failed !== null) return failed;
  }
  if (choices.models !== undefined)
    for (const [name, content] of yield* modelFileSteps(outcome, choices.models)) files.set(name, content);
  return ok(files, notes);
}

type Files = Map<string, Uint8Array | string>;

function* addCutterFiles(
  files: Files,
  outcome: Outcome,
  choices: MachineChoices,
  sheets: readonly CutterSheet[],
): Stepwise<void> {
  const cautions = machineCautions(choices);
  for (const sheet of sheets) {
    const [name, about] = [`sheet-${sheet.number}`, aboutSheet(outcome, sheet)];
    if (choices.dxf === true) files.set(`${name}.dxf`, writeDxf(sheet, [about, ...cautions]));
    if (choices.sheetSvg === true) {
      files.set(`${name}.svg`, writeSheetSvg(sheet, 'hairline', about, cautions));
      files.set(`${name}-filled.svg`, writeSheetSvg(sheet, 'filled', about, cautions));
    }
    yield;
  }
}

/** @returns what one of them failed with, or null. */
function* addPictures(
  files: Files,
  { paper }: Outcome,
  sheets: readonly CutterSheet[],
  dpi: number,
  font: FontOutlines,
): Stepwise<Fail | null> {
  const pages = paper?.pages ?? [];
  const digits = String(pages.length).length;
  const pictures = [
    ...sheets.map((sheet) => ({ file: `sheet-${sheet.number}.png`, picture: sheetPicture(sheet) })),
    ...pages.map((page, i) => ({
      file: `page-${String(i + 1).padStart(digits, '0')}-${page.name.replace(/[^\w-]+/g, '-').slice(0, 100)}.png`,
      picture: { ...page, name: `page ${page.name}` },
    })),
  ];
  for (const { file, picture } of pictures) {
    const made = yield* pngSteps(picture, dpi, font);
    if (!made.ok) return made;
    files.set(file, made.value);
  }
  return null;
}

/** A sheet as it is looked at: every piece where it lies, and the sheet's edge. */
function sheetPicture({ number, widthMm, heightMm, pieces, list, listMm }: CutterSheet): Picture {
  const edge: Stroke = {
    role: 'frame',
    points: Float64Array.of(0, 0, widthMm, 0, widthMm, heightMm, 0, heightMm),
    closed: true,
  };
  return {
    name: `sheet ${number}`,
    widthMm: widthMm + listMm,
    heightMm,
    drawing: {
      strokes: [edge, ...pieces.flatMap(({ drawing }) => drawing.strokes)],
      words: [...pieces.flatMap(({ drawing }) => drawing.words), ...list],
    },
  };
}

function sheetsForCutter(outcome: Outcome, choice: CutterChoice): Result<readonly CutterSheet[]> {
  const { pieces, templates, sheets } = outcome;
  if (pieces === null || templates === null || sheets === null)
    throw new Error('machineFiles: the chain has not run to its end');
  return cutterSheets({ pieces: [...pieces, ...besideOf(outcome)], templates, layout: sheets, choice });
}

/** One line that says what a sheet is. */
export function aboutSheet({ project }: Pick<Outcome, 'project'>, sheet: CutterSheet): string {
  const foam = project.foams.find(({ id }) => id === sheet.foam)?.name ?? 'foam';
  const size = `${Math.round(sheet.widthMm)} × ${Math.round(sheet.heightMm)} mm`;
  return `${project.name}, sheet ${sheet.number}, ${foam}, ${size}${sheet.isTooLarge ? ', larger than any sheet in stock' : ''}`;
}
