import type { LineRole, PaperLayer } from './template.ts';

/** How a line looks on paper: width in mm, dash pattern in mm (empty = solid), grey 0 (black) to 1 (white), and the layer it lies on. */
export interface LineStyle {
  readonly widthMm: number;
  readonly dashMm: readonly number[];
  readonly grey: number;
  readonly layer: PaperLayer;
}

/**
 * One look for screen, PDF and SVG. Kinds after ISO 128-2:2020 (wide continuous for what is cut, narrow continuous for the other edge of a
 * bevel, dashed and dash-dot for folds); since the standard's dash also means "hidden", each fold line carries its word.
 */
export const LINE_STYLES: Readonly<Record<LineRole, LineStyle>> = {
  cut: { widthMm: 0.35, dashMm: [], grey: 0, layer: 'cut' },
  bevel: { widthMm: 0.18, dashMm: [], grey: 0.35, layer: 'bevel' },
  lap: { widthMm: 0.18, dashMm: [6, 1.5], grey: 0.2, layer: 'fold' },
  'fold-out': { widthMm: 0.25, dashMm: [6, 1.5, 0.5, 1.5], grey: 0, layer: 'fold' },
  'fold-in': { widthMm: 0.25, dashMm: [3, 1.5], grey: 0, layer: 'fold' },
  groove: { widthMm: 0.13, dashMm: [], grey: 0.2, layer: 'groove' },
  'groove-behind': { widthMm: 0.13, dashMm: [1.5, 1], grey: 0.2, layer: 'groove' },
  kerf: { widthMm: 0.25, dashMm: [9, 1, 0.6, 1, 0.6, 1], grey: 0, layer: 'groove' },
  'kerf-behind': { widthMm: 0.25, dashMm: [2.5, 1, 0.6, 1, 0.6, 1], grey: 0, layer: 'groove' },
  score: { widthMm: 0.25, dashMm: [1, 0.8], grey: 0, layer: 'fold' },
  placement: { widthMm: 0.25, dashMm: [0.4, 1.2], grey: 0, layer: 'fold' },
  engrave: { widthMm: 0.18, dashMm: [], grey: 0.15, layer: 'marks' },
  hole: { widthMm: 0.35, dashMm: [], grey: 0, layer: 'cut' },
  mark: { widthMm: 0.25, dashMm: [], grey: 0, layer: 'marks' },
  leader: { widthMm: 0.13, dashMm: [], grey: 0.4, layer: 'words' },
  frame: { widthMm: 0.15, dashMm: [], grey: 0.45, layer: 'frame' },
  ruler: { widthMm: 0.2, dashMm: [], grey: 0, layer: 'ruler' },
  map: { widthMm: 0.2, dashMm: [], grey: 0.2, layer: 'marks' },
};

/** Smallest capital height on paper, mm: readable at arm's length in a workshop. */
export const SMALLEST_WORDS_MM = 2.5;

/** Bold words are the one embedded weight with an outline this wide, as a share of their capital height: they run no longer than plain ones. */
export const BOLD_OUTLINE_SHARE = 0.08;
