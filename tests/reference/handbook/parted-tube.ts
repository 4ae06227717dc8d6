import type { Solid } from './polygon-solids.ts';

/** A tube from ring to ring, parted along some of its corners. */
export const parted = (solid: Solid, sides: number, at: readonly number[]): Solid => ({
  ...solid,
  seams: at.map((i): [number, number] => [i, sides + i]),
});

/** 0, 1 … below `count`. */
export const allOf = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
