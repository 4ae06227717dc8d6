import type { PatchView } from '../model/bench-view.ts';
import type { LineBatch } from './line-batch.ts';
import { signedStretch } from './stretch-colours.ts';

/**
 * Short lines that tell which way foam must be pulled (along the stretch) or gathered (along the squash). Each is tied to a triangle by
 * weights on its corners, so that it lies on the sculpt and on the piece alike.
 */
export interface StretchStrokes {
  /** Triangle of the sculpt for each stroke. */
  readonly triangles: Uint32Array;
  /** Weights of corners 0, 1, 2 for the start and for the end: six a stroke. */
  readonly weights: Float32Array;
}

/** Strokes stand this far apart on a piece, mm, or as many as fit into a large one. */
const LEAST_SPACING_MM = 11;
const MOST_ACROSS = 40;
/** Changes of length below this share of the limit have no stroke; strokes are these shares of the spacing long there and at the limit. */
const LEAST_SHARE = 0.12;
const SHORTEST = 0.3;
const LONGEST = 0.85;

/** Strokes on a grid over every flat piece. @param limitPct per cent where strokes are longest. */
export function stretchStrokes(patches: readonly PatchView[], limitPct: number): StretchStrokes {
  const triangles: number[] = [];
  const weights: number[] = [];
  for (const patch of patches) addPatch(patch, limitPct, triangles, weights);
  return { triangles: Uint32Array.from(triangles), weights: Float32Array.from(weights) };
}

function addPatch(patch: PatchView, limitPct: number, found: number[], weights: number[]): void {
  const { uv, stretchPct, squashPct, majorAngle, triangles, meshTriangles } = patch;
  if (uv === null || stretchPct === null || squashPct === null || majorAngle === null) return;
  const spacing = Math.max(LEAST_SPACING_MM, extentOf(uv) / MOST_ACROSS);
  for (let t = 0; t < meshTriangles.length; t += 1) {
    const signed = signedStretch(stretchPct[t], squashPct[t]);
    const share = Math.min(1, Math.abs(signed) / limitPct);
    if (share < LEAST_SHARE) continue;
    const angle = majorAngle[t] + (signed < 0 ? Math.PI / 2 : 0);
    const half = (spacing * (SHORTEST + (LONGEST - SHORTEST) * share)) / 2;
    const [dx, dy] = [half * Math.cos(angle), half * Math.sin(angle)];
    const [a, b, c] = [2 * triangles[3 * t], 2 * triangles[3 * t + 1], 2 * triangles[3 * t + 2]];
    const [ux, uy, vx, vy] = [uv[b] - uv[a], uv[b + 1] - uv[a + 1], uv[c] - uv[a], uv[c + 1] - uv[a + 1]];
    const area = ux * vy - uy * vx;
    if (!(area > 0)) continue;
    const weigh = (x: number, y: number): readonly [number, number, number] => {
      const second = ((x - uv[a]) * vy - (y - uv[a + 1]) * vx) / area;
      const third = (ux * (y - uv[a + 1]) - uy * (x - uv[a])) / area;
      return [1 - second - third, second, third];
    };
    const first = (k: 0 | 1): number => Math.ceil(Math.min(uv[a + k], uv[b + k], uv[c + k]) / spacing);
    const last = (k: 0 | 1): number => Math.floor(Math.max(uv[a + k], uv[b + k], uv[c + k]) / spacing);
    for (let i = first(0); i <= last(0); i += 1) {
      for (let j = first(1); j <= last(1); j += 1) {
        const [x, y] = [i * spacing, j * spacing];
        if (weigh(x, y).some((weight) => weight < 0)) continue;
        found.push(meshTriangles[t]);
        weights.push(...weigh(x - dx, y - dy), ...weigh(x + dx, y + dy));
      }
    }
  }
}

function extentOf(uv: Float32Array): number {
  const least = [Infinity, Infinity];
  const most = [-Infinity, -Infinity];
  for (let i = 0; i < uv.length; i += 1) {
    least[i % 2] = Math.min(least[i % 2], uv[i]);
    most[i % 2] = Math.max(most[i % 2], uv[i]);
  }
  return Math.max(most[0] - least[0], most[1] - least[1]);
}

/** Fills a batch with the strokes where their triangles are now. @param corners packed xyz per corner of the sculpt's triangles. */
export function drawStrokes(batch: LineBatch, { triangles, weights }: StretchStrokes, corners: Float32Array): void {
  const points = batch.room(triangles.length);
  for (let i = 0; i < triangles.length; i += 1) {
    const t = 9 * triangles[i];
    for (let end = 0; end < 2; end += 1) {
      const w = 6 * i + 3 * end;
      for (let k = 0; k < 3; k += 1) {
        points[w + k] =
          weights[w] * corners[t + k] + weights[w + 1] * corners[t + 3 + k] + weights[w + 2] * corners[t + 6 + k];
      }
    }
  }
  batch.filled();
}
