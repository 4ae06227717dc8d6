import { readFileSync } from 'node:fs';

/** A figure of a case: a number, a row, a matrix, or a group of figures by name. */
export type CaseFigure = number | readonly number[] | readonly (readonly number[])[] | Readonly<Record<string, number>>;

export interface ShapeCase {
  readonly id: string;
  readonly name: string;
  readonly inputs: Readonly<Record<string, CaseFigure>>;
  readonly expected: Readonly<Record<string, CaseFigure>>;
  readonly tolerance: Readonly<{ abs_mm?: number; abs_deg?: number; abs_in?: number; rel?: number }>;
}

/** Every worked case of tests/reference/handbook-cases.json, which names the source of each. */
export const SHAPE_CASES: readonly ShapeCase[] = (
  JSON.parse(readFileSync(new URL('../handbook-cases.json', import.meta.url), 'utf8')) as { cases: ShapeCase[] }
).cases;

/** The shape that each case speaks of. Its inputs are given to it under their own names. */
export const SHAPE_OF_CASE: Readonly<Record<string, string>> = {
  A1: 'cone',
  A3: 'frustum',
  A4: 'cone_from_disc',
  B1: 'wrap',
  C1: 'truncated_cylinder',
  C3: 'truncated_cylinder',
  C4: 'branch',
  E1: 'sphere_gores',
  E2: 'dome_gores',
  E5: 'spherical_cap',
  F1: 'platonic_solids',
  F2: 'archimedean_solids',
  F3: 'truncated_icosahedron',
  F4: 'dome',
  G1: 'helical_strip',
  G2: 'helical_strip',
  H1: 'ring',
  I1: 'star',
  K1: 'arc',
  L1: 'bevel',
  L2: 'bevel',
  L4: 'bevel',
  L6: 'tapered_layers',
  M1: 'bend',
  M2: 'bend',
  M4: 'bend',
  M5: 'empirical_bend',
  M6: 'bend_strain',
  N1: 'angle_defects',
  N2: 'cone',
  O1: 'stretch',
  O3: 'stretch_bound',
  P1: 'page_units',
  Q1: 'sheet_mass',
  Q2: 'coating',
  R1: 'seam_allowance',
};

/** The sizes of a case as they are typed. */
export const sizesOfCase = ({ inputs }: ShapeCase): readonly (readonly [string, string])[] =>
  Object.entries(inputs).map(([name, value]) => [
    name,
    typeof value === 'number' ? String(value) : numbersIn(value).join(','),
  ]);

/** Every number of a row or a matrix, row by row. */
const numbersIn = (value: CaseFigure): readonly number[] =>
  typeof value === 'number' ? [value] : Object.values(value).flatMap(numbersIn);

/** What of a case's figures is not as expected, each in its own tolerance; nothing where all is well. */
export function faultsOfCase(
  { expected, tolerance }: ShapeCase,
  figures: Readonly<Record<string, unknown>>,
): readonly string[] {
  const faults: string[] = [];
  const compare = (name: string, want: unknown, got: unknown): void => {
    if (typeof want === 'number') {
      // Figures with a unit of length or angle may be off by so much, all by the relative share; published figures are rounded to six places.
      const most = Math.max(tolerance.abs_in ?? 1e-6, (tolerance.rel ?? 0) * Math.abs(want));
      if (typeof got !== 'number' || !(Math.abs(got - want) <= most))
        faults.push(`${name}: ${String(got)} in place of ${want}`);
    } else if (Array.isArray(want)) {
      if (!Array.isArray(got) || got.length !== want.length)
        faults.push(`${name}: ${JSON.stringify(got)} in place of ${want.length} numbers`);
      else want.forEach((one, i) => compare(`${name} ${i + 1}`, one, got[i]));
    } else {
      for (const [key, one] of Object.entries(want as Record<string, unknown>))
        compare(`${name} ${key}`, one, (got as Record<string, unknown> | undefined)?.[key]);
    }
  };
  for (const [name, want] of Object.entries(expected)) compare(name, want, figures[name]);
  return faults;
}
