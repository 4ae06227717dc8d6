import { Color } from 'three';

/** Colours of the bench as CSS texts, usually the values of custom properties. */
export interface BenchTheme {
  readonly background: string;
  readonly bench: string;
  /** Rule and its numbers on the bench. */
  readonly benchLine: string;
  /** Skin of the foam. */
  readonly foam: string;
  /** Faces of the foam that a blade made. */
  readonly foamCut: string;
  /** The sculpt itself, the form under the foam. */
  readonly sculpt: string;
  /** Seams and everything drawn on foam. */
  readonly seam: string;
  /** Fine lines: ridges and edges of the sculpt. */
  readonly line: string;
  /** Only for what is chosen or next. */
  readonly accent: string;
  /** What is pointed at. */
  readonly words: string;
  readonly danger: string;
}

/** Warm paper: what is drawn before the page says otherwise. */
export const PAPER_THEME: BenchTheme = {
  background: '#e9e2d3',
  bench: '#cabda5',
  benchLine: '#75694f',
  foam: '#4a4743',
  foamCut: '#8f897e',
  sculpt: '#efe8d9',
  seam: '#f4e9d2',
  line: '#1f1d1a',
  accent: '#f2a11f',
  words: '#fffaf0',
  danger: '#c8452c',
};

/** The same colours ready for drawing. */
export type BenchColours = { readonly [K in keyof BenchTheme]: Color } & {
  /** True on a dark page: lights are set a little lower. */
  readonly isDark: boolean;
};

/**
 * Reads the texts. Anything a canvas understands is understood, so custom properties may hold any CSS colour.
 * A text that is no colour at all comes out as black.
 */
export function coloursOf(theme: BenchTheme): BenchColours {
  const reader = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
  const read = (text: string): Color => {
    if (reader === null) return new Color(text);
    reader.fillStyle = '#000';
    reader.fillStyle = text;
    reader.fillRect(0, 0, 1, 1);
    const [r, g, b] = reader.getImageData(0, 0, 1, 1).data;
    return new Color().setRGB(r / 255, g / 255, b / 255, 'srgb');
  };
  const background = read(theme.background);
  const foam = read(theme.foam);
  const words = read(theme.words);
  const seam = read(theme.seam);
  return {
    background,
    bench: read(theme.bench),
    benchLine: read(theme.benchLine),
    foam,
    foamCut: read(theme.foamCut),
    sculpt: read(theme.sculpt),
    // What is drawn on foam must be told from it.
    seam: contrast(seam, foam) < LEAST_CONTRAST ? words : seam,
    line: read(theme.line),
    accent: read(theme.accent),
    words,
    danger: read(theme.danger),
    isDark: luminance(background) < 0.18,
  };
}

/** Ratio below which a line is lost on its ground; WCAG 2.2, 1.4.11, asks for 3 of what must be seen. */
const LEAST_CONTRAST = 3;

/** Contrast ratio as WCAG 2.2 defines it, 1 to 21. */
function contrast(a: Color, b: Color): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

const luminance = ({ r, g, b }: Color): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;
