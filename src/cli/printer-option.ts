import type { ScaleReadings } from '../model/printer.ts';
import { choosePrinter, keepPrinter, measurePrinter, printerOf } from '../project/printer-commands.ts';
import type { Project } from '../project/project.ts';
import { Refused, WrongUsage } from './exit.ts';
import { decimal, given } from './option-values.ts';

/** What is said of the printer; `name` null: pages stay as they are. */
export type PrinterOption =
  { readonly name: null } | { readonly name: string; readonly readings?: Readonly<ScaleReadings> };

/** Says that pages stay as they are. */
const OFF = 'off';
/** A square that reads shorter across was the one of 50 mm, which small paper has, mm. */
const SMALL_UNDER_MM = 75;

/** `--printer NAME|off` and `--measured 97x98.4` or `97x98.4x139.1x138`; nothing where neither is given. @throws WrongUsage */
export function printerFrom(values: {
  readonly printer?: string | undefined;
  readonly measured?: string | undefined;
}): PrinterOption | undefined {
  const { printer, measured } = values;
  const name = printer?.trim();
  if (name === '')
    throw new WrongUsage(`--printer takes the name of a printer that the project keeps, or ${OFF}, not nothing.`);
  if (measured === undefined) return name === undefined ? undefined : { name: name === OFF ? null : name };
  if (name === undefined || name === OFF)
    throw new WrongUsage('--measured belongs to a printer: give it a name with --printer NAME.');
  return { name, readings: readingsFrom(measured) };
}

function readingsFrom(word: string): ScaleReadings {
  const read = word.split(/x/i).map((part) => decimal(part.replace(',', '.')));
  if ((read.length !== 2 && read.length !== 4) || !read.every((mm) => mm > 0))
    throw new WrongUsage(
      '--measured looks like 97x98.4: the square of the first page in mm, across and up; with both diagonals, rising and falling, 97x98.4x139.1x138.',
    );
  const [acrossMm, upMm, risingMm, fallingMm] = read;
  return {
    nominalMm: acrossMm < SMALL_UNDER_MM ? 50 : 100,
    acrossMm,
    upMm,
    ...given('diagonals', read.length === 4 ? { risingMm, fallingMm } : undefined),
  };
}

/**
 * The project with the printer it prints for. A page measured again for the printer in force was corrected for it already, and what it is still off
 * is added.
 * @throws Refused where the project keeps no printer of that name, or the readings are of no printer.
 */
export function withPrinter(project: Project, option: PrinterOption | undefined): Project {
  if (option === undefined) return project;
  if (option.name === null) return choosePrinter(null).apply(project);
  const { name, readings } = option;
  if (readings !== undefined) {
    const now = printerOf(project);
    const measured = measurePrinter(name, readings, now?.name === name ? now : null);
    if (!measured.ok) throw new Refused(`--measured: ${measured.problem.text}`);
    return keepPrinter(measured.value.profile).apply(project);
  }
  const kept = (project.printers ?? []).map((profile) => profile.name);
  if (!kept.includes(name)) {
    const known = kept.length === 0 ? 'it keeps none yet' : `it keeps ${kept.join(', ')}`;
    throw new Refused(
      `--printer ${name}: the project knows no such printer, ${known}. Print the first page, measure its square and add --measured ACROSSxUP.`,
    );
  }
  return choosePrinter(name).apply(project);
}
