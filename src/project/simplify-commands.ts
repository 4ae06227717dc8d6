import { onSculpt, type Command } from './commands.ts';
import type { SimplifyChoice } from './project.ts';

/** Fewest triangles that can be asked for: with fewer nothing encloses anything. */
export const LEAST_TRIANGLES = 4;

/** How far it goes: to so many triangles, or as long as the surface moves no farther than so many mm. */
export type SimplifyMeasure = { readonly triangles: number } | { readonly deviationMm: number };

/** Makes the sculpt simpler for paper; null: takes it as it is. */
export const setSimplify = (simplify: SimplifyChoice | null): Command =>
  onSculpt(simplify === null ? 'take the sculpt as it is' : 'make the sculpt simpler', (part) => {
    const { simplify: had, ...rest } = part;
    if (simplify === null) return had === undefined ? part : rest;
    return { ...rest, simplify };
  });
