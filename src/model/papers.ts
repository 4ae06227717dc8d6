import { fail, ok, type Result } from '../base/result.ts';
import data from '../../shared/papers.json';
import type { Paper } from './foam-stock.ts';

/** A PDF page is at most 14 400 units of 1/72 in wide and high (ISO 32000-1, annex C), mm. */
const LONGEST_PAGE_MM = 5080;

/** Smallest side that still holds a page's frame, its words and some of a piece, mm. */
const SHORTEST_PAGE_MM = 100;

/** The papers that are offered by name, upright. */
export const PAPERS: readonly Paper[] = checkPapers(
  data.papers.map(({ name, widthMm, heightMm }) => ({ name, widthMm, heightMm, roll: false })),
);

/** Width of a roll when none is named, mm. */
export const USUAL_ROLL_MM = data.roll.widthMm;

/**
 * The paper of that name.
 * @param name      as in shared/papers.json in any case (`a4`, `ANSI C`, `ansi-c`), or `custom`, or `roll`.
 * @param widthMm   for `custom` and `roll`, mm; a roll has the usual width when left out.
 * @param heightMm  for `custom`, mm.
 * @returns a roll's height is the longest page that may be printed on it. Fails with `paper/unknown` or `paper/size`.
 */
export function findPaper(name: string, widthMm?: number, heightMm?: number): Result<Paper> {
  const key = plainName(name);
  if (key === 'roll') return roll(widthMm ?? USUAL_ROLL_MM);
  if (key === 'custom') return custom(widthMm, heightMm);
  const paper = PAPERS.find((candidate) => plainName(candidate.name) === key);
  if (paper !== undefined) return ok(paper);
  const names = PAPERS.map((candidate) => candidate.name).join(', ');
  return fail('paper/unknown', `There is no paper called “${name}” here: choose ${names}, roll or custom.`);
}

/** Finite, upright, within what a PDF page can be, every name once. @throws Error: a broken list is our mistake. */
export function checkPapers(papers: readonly Paper[]): readonly Paper[] {
  const names = new Set<string>();
  for (const { name, widthMm, heightMm } of papers) {
    if (!(isPageLength(widthMm) && isPageLength(heightMm) && widthMm <= heightMm))
      throw new Error(`paper ${name}: ${widthMm} × ${heightMm} mm`);
    if (names.has(plainName(name))) throw new Error(`paper ${name} is listed twice`);
    names.add(plainName(name));
  }
  return papers;
}

function roll(widthMm: number): Result<Paper> {
  if (!isPageLength(widthMm)) return badSize('A roll', 'wide');
  return ok({ name: `Roll ${widthMm} mm`, widthMm, heightMm: data.roll.longestMm, roll: true });
}

function custom(widthMm?: number, heightMm?: number): Result<Paper> {
  if (widthMm === undefined || heightMm === undefined) {
    return fail('paper/size', 'A paper of your own needs a width and a height in mm.');
  }
  if (!isPageLength(widthMm) || !isPageLength(heightMm)) return badSize('A paper of your own', 'wide and high');
  const [short, long] = widthMm <= heightMm ? [widthMm, heightMm] : [heightMm, widthMm];
  return ok({ name: `${short} × ${long} mm`, widthMm: short, heightMm: long, roll: false });
}

function badSize(what: string, way: string): Result<Paper> {
  return fail('paper/size', `${what} must be between ${SHORTEST_PAGE_MM} and ${LONGEST_PAGE_MM} mm ${way}.`);
}

function isPageLength(mm: number): boolean {
  return mm >= SHORTEST_PAGE_MM && mm <= LONGEST_PAGE_MM;
}

function plainName(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, '');
}
