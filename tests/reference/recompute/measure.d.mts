type Point = readonly number[];
type Triangle = readonly [Point, Point, Point];

export function spaceArea(triangle: Triangle): number;
export function flatArea(triangle: Triangle): number;
export function singularValues(flat: Triangle, space: Triangle): [number, number];
export function symmetricDirichlet(a: number, b: number): number;
export function spreadOf(
  values: readonly number[],
  weights: readonly number[],
): { readonly max: number; readonly p99: number; readonly mean: number };
