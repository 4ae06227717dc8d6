import type { Colouring } from '../../viewport/bench-contract.ts';

/** What colours can tell as figures, in the order it is offered. */
export const FIGURE_KINDS = ['stretch', 'bend', 'room', 'pull', 'fit'] as const;
export type FigureKind = (typeof FIGURE_KINDS)[number];

/** The figure that colours tell; null while they tell none. */
export const figureOf = (colouring: Colouring): FigureKind | null =>
  FIGURE_KINDS.find((kind) => kind === colouring) ?? null;
