import type { Bitmap, InkField } from '../../model/bitmap.ts';
import { lightOf, valueOf } from './picture-grey.ts';

const BINS = 1024;

/** Shares of grey that count as neither dark nor light, of the way from one to the other. */
const HALF_TONES = [0.1, 0.9] as const;
/** Share of steps with half tones under which a picture has two tones alone. */
const FEW_SOFT = 0.3;

/** Where dark ends and light begins, and what lies on either side, all as shares of grey. */
export interface GreyLevel {
  readonly level: number;
  /** Middle values of the two. */
  readonly dark: number;
  readonly light: number;
}

/**
 * Finds where dark ends and light begins. Dark and light are told apart by the greatest variance between them (Otsu 1979, eq. 18); the level lies half-way
 * between the middle values of the two, since that is the grey of a pixel that an edge parts in halves. Null where all is of one grey.
 */
export function findLevel({ grey }: Bitmap): GreyLevel | null {
  let [least, most] = [Infinity, -Infinity];
  for (const value of grey) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  // One step of 8 bits tells nothing from noise.
  if (!(most - least > 1.5 / 255)) return null;
  const counts = new Float64Array(BINS);
  const step = (most - least) / (BINS - 1);
  for (const value of grey) counts[Math.round((value - least) / step)] += 1;
  let [below, sumBelow, best, split] = [0, 0, -1, 0];
  const sum = counts.reduce((total, count, i) => total + i * count, 0);
  for (let i = 0; i + 1 < BINS; i += 1) {
    below += counts[i];
    sumBelow += i * counts[i];
    const above = grey.length - below;
    if (below === 0 || above === 0) continue;
    const apart = sumBelow / below - (sum - sumBelow) / above;
    const variance = below * above * apart * apart;
    if (variance > best * (1 + 1e-12)) [best, split] = [variance, i];
  }
  const [dark, light] = [middleOf(counts, 0, split), middleOf(counts, split + 1, BINS - 1)].map(
    (i) => least + i * step,
  );
  return { level: (dark + light) / 2, dark, light };
}

function middleOf(counts: Float64Array, first: number, last: number): number {
  let total = 0;
  for (let i = first; i <= last; i += 1) total += counts[i];
  let sum = 0;
  for (let i = first; i <= last; i += 1) {
    sum += counts[i];
    if (2 * sum >= total) return i;
  }
  return last;
}

/** A level the maker gives, per cent of grey as programs show it, 0 black to 100 white, in the grey of a picture. */
export function levelOfPercent({ light }: Bitmap, percent: number): number {
  return light === 'photo' ? lightOf(percent / 100) : percent / 100;
}

/** A level as programs show it, per cent, 0 black to 100 white. */
export function percentOfLevel({ light }: Bitmap, level: number): number {
  return 100 * (light === 'photo' ? valueOf(level) : level);
}

/**
 * Whether edges have no half tones, so that lines are known to half a pixel alone: where an edge takes a step, hardly a pixel of four is between dark and
 * light. Edges along rows and columns have none either way and tell nothing.
 */
export function isTwoTone({ widthPx, heightPx, grey }: Bitmap, { level, dark, light }: GreyLevel): boolean {
  const [low, high] = HALF_TONES.map((share) => dark + share * (light - dark));
  const isBetween = (i: number): boolean => grey[i] > low && grey[i] < high;
  let [steps, soft] = [0, 0];
  for (let y = 1; y < heightPx; y += 1) {
    for (let x = 1; x < widthPx; x += 1) {
      const at = y * widthPx + x;
      const four = [at, at - 1, at - widthPx, at - widthPx - 1];
      const inside = four.filter((i) => grey[i] < level).length;
      if (inside !== 1 && inside !== 3) continue;
      steps += 1;
      if (four.some(isBetween)) soft += 1;
    }
  }
  return soft < FEW_SOFT * steps;
}

/**
 * What is inside shapes: the dark, or the light where it is the other way round. The rim mirrors a pixel inside about the level, so that a shape that
 * runs off the picture ends at its edge.
 * @param isKept  whether a place, px, belongs to what is traced; else it is outside.
 */
export function inkField(
  { widthPx, heightPx, grey }: Bitmap,
  level: number,
  isInverted: boolean,
  isKept: ((x: number, y: number) => boolean) | null,
): InkField {
  const wide = widthPx + 2;
  const ink = new Float32Array(wide * (heightPx + 2));
  const inkLevel = isInverted ? level : 1 - level;
  for (let y = 0, at = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1, at += 1) {
      const isOut = isKept !== null && !isKept(x + 0.5, y + 0.5);
      ink[(y + 1) * wide + x + 1] = isOut ? -1 : isInverted ? grey[at] : 1 - grey[at];
    }
  }
  const rim = (to: number, from: number): void => {
    ink[to] = ink[from] >= inkLevel ? Math.min(2 * inkLevel - ink[from], inkLevel - 1e-3) : ink[from];
  };
  for (let x = 1; x <= widthPx; x += 1) {
    rim(x, wide + x);
    rim((heightPx + 1) * wide + x, heightPx * wide + x);
  }
  for (let y = 1; y <= heightPx; y += 1) {
    rim(y * wide, y * wide + 1);
    rim(y * wide + widthPx + 1, y * wide + widthPx);
  }
  for (const corner of [0, widthPx + 1, (heightPx + 1) * wide, (heightPx + 1) * wide + widthPx + 1]) ink[corner] = -1;
  return { widthPx, heightPx, ink, level: inkLevel };
}

/** Whether what is inside reaches the edge of the picture. */
export function touchesEdge({ widthPx, heightPx, ink, level }: InkField): boolean {
  const wide = widthPx + 2;
  for (let x = 1; x <= widthPx; x += 1) if (ink[wide + x] >= level || ink[heightPx * wide + x] >= level) return true;
  for (let y = 1; y <= heightPx; y += 1)
    if (ink[y * wide + 1] >= level || ink[y * wide + widthPx] >= level) return true;
  return false;
}
