import { fail, ok, type Result } from '../base/result.ts';
import type { Finding } from '../base/finding.ts';
import { formatPlain } from '../base/format-length.ts';
import type { PrinterProfile, ScaleReadings } from '../model/printer.ts';
import type { Command } from './commands.ts';
import type { Project } from './project.ts';

/** Beyond this the print dialogue scales, not the printer: nothing is corrected, %. Makers report pages shrunk by 2 to 10 %. */
export const MOST_CORRECTION_PCT = 10;
/** Above this the maker is asked to look at the dialogue first, %. */
const LARGE_CORRECTION_PCT = 3;
/** Axes that differ by more are told, %. */
const AXES_APART_PCT = 1;
/** What a share loses in the arithmetic of doubles, %. */
const ROUNDING_PCT = 1e-9;
/** A lean beyond this is a page that was pulled in askew, not a printer, degrees [J]. */
export const MOST_LEAN_DEG = 2;
/** Sides and diagonals of one square may contradict each other by what a ruler may be misread, mm [J]. */
const MISREAD_MM = 1;

/** A printer as measured, and what the maker should know of it. */
export interface MeasuredPrinter {
  readonly profile: PrinterProfile;
  readonly notes: readonly Finding[];
}

/**
 * What the readings say of a printer.
 * The lean follows from the diagonals of the parallelogram with sides `a` and `b`: rising² − falling² = 4 a b sin(lean); without diagonals it is
 * as it was. Sides and diagonals must belong together: rising² + falling² = 2 (a² + b²) (parallelogram law).
 * @param printedFor the printer the measured page was corrected for; null for a page as it is.
 * @returns fails with `printer/name`, `printer/readings` where they cannot be of one square, and `printer/far` beyond {@link MOST_CORRECTION_PCT} or
 *          {@link MOST_LEAN_DEG}.
 */
export function measurePrinter(
  name: string,
  readings: ScaleReadings,
  printedFor: PrinterProfile | null,
): Result<MeasuredPrinter> {
  const { nominalMm, acrossMm, upMm, diagonals } = readings;
  if (name.trim() === '')
    return fail('printer/name', 'Give the printer a name, so that its correction is found again.');
  const lengths = [
    nominalMm,
    acrossMm,
    upMm,
    ...(diagonals === undefined ? [] : [diagonals.risingMm, diagonals.fallingMm]),
  ];
  if (!lengths.every((mm) => mm > 0 && Number.isFinite(mm)))
    return fail(
      'printer/readings',
      'Each reading must be a length above 0 mm: measure the square of the scale page again.',
    );
  let leanSine = 0;
  if (diagonals !== undefined) {
    const { risingMm, fallingMm } = diagonals;
    const bothMm = Math.sqrt((risingMm ** 2 + fallingMm ** 2) / 2);
    const dueMm = Math.hypot(acrossMm, upMm);
    if (Math.abs(bothMm - dueMm) > MISREAD_MM) {
      return fail(
        'printer/readings',
        `These are not sides and diagonals of one square: with sides of ${formatPlain(acrossMm)} and ${formatPlain(upMm)} mm the diagonals are about ${dueMm.toFixed(1)} mm. Measure all four again.`,
      );
    }
    leanSine = (risingMm ** 2 - fallingMm ** 2) / (4 * acrossMm * upMm);
  }
  const read: PrinterProfile = {
    name: name.trim(),
    acrossShare: acrossMm / nominalMm,
    upShare: upMm / nominalMm,
    leanRad: Math.asin(leanSine),
  };
  const profile = printedFor === null ? read : after(read, printedFor, diagonals !== undefined);
  const off = [profile.acrossShare, profile.upShare].map((share) => Math.abs(share - 1) * 100);
  if (Math.max(...off) > MOST_CORRECTION_PCT) {
    return fail(
      'printer/far',
      `That is ${Math.max(...off).toFixed(1)} % off, more than a printer errs: look in the print window for “fit”, “shrink” or “scale”, set 100 %, and print the page again.`,
    );
  }
  if (Math.abs(profile.leanRad) > (MOST_LEAN_DEG * Math.PI) / 180) {
    return fail(
      'printer/far',
      `The square leans by ${((Math.abs(profile.leanRad) * 180) / Math.PI).toFixed(1)}°, more than a printer does: the paper ran in askew. Set its guides and print the page again.`,
    );
  }
  return ok({ profile, notes: printerNotes(profile) });
}

/** What a maker should know of a correction: over 3 %, or axes that differ by more than 1 %. */
export function printerNotes({ name, acrossShare, upShare }: PrinterProfile): readonly Finding[] {
  const notes: Finding[] = [];
  const most = Math.max(Math.abs(acrossShare - 1), Math.abs(upShare - 1)) * 100;
  const apart = Math.abs(acrossShare - upShare) * 100;
  const beside = { severity: 'warning', unit: '%', where: {} } as const;
  if (most > LARGE_CORRECTION_PCT + ROUNDING_PCT) {
    notes.push({
      ...beside,
      code: 'printer/large',
      text: `${name} is corrected by ${most.toFixed(1)} %: most often the print window shrinks or fits the page. Set 100 % there first, then measure again.`,
      value: most,
      limit: LARGE_CORRECTION_PCT,
    });
  }
  if (apart > AXES_APART_PCT + ROUNDING_PCT) {
    notes.push({
      ...beside,
      code: 'printer/axes',
      text: `${name} prints across and up ${apart.toFixed(1)} % apart: measure the square once more with a good ruler before you trust the correction.`,
      value: apart,
      limit: AXES_APART_PCT,
    });
  }
  return notes;
}

/** A page corrected for `old` was printed and read as `read`: what the printer does by itself is the one after the other. */
function after(read: PrinterProfile, old: PrinterProfile, hasDiagonals: boolean): PrinterProfile {
  const lean = hasDiagonals ? read.leanRad : 0;
  const [a, b, d] = [read.acrossShare, read.upShare * Math.sin(lean), read.upShare * Math.cos(lean)];
  const [e, f, h] = [old.acrossShare, old.upShare * Math.sin(old.leanRad), old.upShare * Math.cos(old.leanRad)];
  // Both send the direction across to itself: ( a b ; 0 d ) ( e f ; 0 h ).
  const [x, y] = [a * f + b * h, d * h];
  return { name: read.name, acrossShare: a * e, upShare: Math.hypot(x, y), leanRad: Math.atan2(x, y) };
}

/** The printer pages are corrected for; null where they are left as they are. */
export function printerOf({ printer, printers }: Pick<Project, 'printer' | 'printers'>): PrinterProfile | null {
  return printers?.find(({ name }) => name === printer) ?? null;
}

/** Keeps a printer under its name, in the place of one of that name, and prints for it. */
export const keepPrinter = (profile: PrinterProfile): Command => ({
  label: 'measure the printer',
  apply: (project) => ({
    ...project,
    printers: [...(project.printers ?? []).filter(({ name }) => name !== profile.name), profile],
    printer: profile.name,
  }),
});

/** Prints for a printer that is kept; null: pages stay as they are. A name that is not kept changes nothing. */
export const choosePrinter = (name: string | null): Command => ({
  label: 'choose the printer',
  apply(project) {
    const { printer, ...rest } = project;
    if (name === null) return printer === undefined ? project : rest;
    const isKnown = project.printers?.some((profile) => profile.name === name) === true;
    return name === printer || !isKnown ? project : { ...project, printer: name };
  },
});

/** Forgets a printer; pages stay as they are if it was the one they were corrected for. */
export const forgetPrinter = (name: string): Command => ({
  label: 'forget the printer',
  apply(project) {
    const { printer, printers, ...rest } = project;
    const kept = printers?.filter((profile) => profile.name !== name) ?? [];
    if (kept.length === (printers?.length ?? 0)) return project;
    return {
      ...rest,
      ...(kept.length === 0 ? {} : { printers: kept }),
      ...(printer === undefined || printer === name ? {} : { printer }),
    };
  },
});
