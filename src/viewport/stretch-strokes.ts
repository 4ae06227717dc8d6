import type { BendField } from '../model/bend-field.ts';
import type { PatchView } from '../model/bench-view.ts';
import type { RoomField } from '../model/room-field.ts';
import type { LineBatch } from './line-batch.ts';

/**
 * Short lines that tell which way foam must be pulled and which way it must be gathered. A whole stroke runs along the stretch; a stroke
 * broken in its middle runs along the squash, so that its halves point at each other and the other stroke passes between them:
 *
 *            |
 *      ───── │ ─────        pulled up and down, gathered from left and right
 *            |
 *
 * Each is as long as the change of length is great. They are tied to a triangle by weights on its corners, and so lie on the sculpt and on
 * the piece alike.
 */
export interface StretchStrokes {
  /** Triangle of the sculpt for each line: a whole stroke is one, a broken one two. */
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
/** Half the gap in a broken stroke, as a share of the spacing. */
const GAP = 0.09;

/** A flat piece by its triangles. */
interface FlatTriangles {
  readonly uv: Float32Array | null;
  readonly triangles: Uint32Array;
  readonly meshTriangles: Uint32Array;
}

/** A flat piece with what its strokes tell, per triangle: how long the whole one is and the broken one, per cent, and the direction of the whole one, radians. */
export interface StrokedPatch extends FlatTriangles {
  readonly stretchPct: Float32Array | null;
  readonly squashPct: Float32Array | null;
  readonly majorAngle: Float32Array | null;
}

/** Bends as strokes along the line about which the foam bends: whole ones on ridges, broken ones in valleys. */
export const bendStrokes = (patches: readonly PatchView[], bends: BendField, limitPct: number): StretchStrokes =>
  stretchStrokes(
    patches.flatMap((patch, i): StrokedPatch[] => {
      const field = bends.patches[i] ?? null;
      if (field?.strainPct.length !== patch.meshTriangles.length) return [];
      const { strainPct, axisRad } = field;
      return [
        {
          ...patch,
          stretchPct: strainPct.map((pct) => Math.max(0, pct)),
          squashPct: strainPct.map((pct) => Math.max(0, -pct)),
          // Broken strokes run across the angle.
          majorAngle: axisRad.map((angle, t) => (strainPct[t] < 0 ? angle - Math.PI / 2 : angle)),
        },
      ];
    }),
    limitPct,
  );

/** Strokes on a grid over every flat piece. @param limitPct per cent where strokes are longest. */
export const stretchStrokes = (patches: readonly StrokedPatch[], limitPct: number): StretchStrokes =>
  strokesOver(patches, ({ stretchPct, squashPct, majorAngle }) =>
    stretchPct === null || squashPct === null || majorAngle === null
      ? null
      : (t, spacing) => linesOf(stretchPct[t] / limitPct, squashPct[t] / limitPct, majorAngle[t], spacing),
  );

/** Room round a core as signs: a plus where foam stands off it, a minus where foam would have to be where the core is, as long as it is much. */
export const roomSigns = (patches: readonly PatchView[], { atVertices, limitMm }: RoomField): StretchStrokes =>
  strokesOver(patches, ({ triangles, meshVertices }) => (t, spacing) => {
    const corners = [0, 1, 2].map((k) => atVertices[meshVertices[triangles[3 * t + k]]]);
    const share = Math.min(...corners.filter((mm) => mm === mm)) / limitMm;
    if (!Number.isFinite(share)) return [];
    const half = halfOf(Math.abs(share), spacing);
    const across = [-half, 0, half, 0] as const;
    return share <= -LEAST_SHARE ? [across] : share >= LEAST_SHARE ? [across, [0, -half, 0, half]] : [];
  });

type Line = readonly [number, number, number, number];
/** Lines at a place of a triangle of a patch, as start and end from it. */
type LinesAt = (triangle: number, spacing: number) => readonly Line[];

function strokesOver<T extends FlatTriangles>(
  patches: readonly T[],
  linesAt: (patch: T) => LinesAt | null,
): StretchStrokes {
  const triangles: number[] = [];
  const weights: number[] = [];
  for (const patch of patches) {
    const lines = linesAt(patch);
    if (lines !== null) addPatch(patch, lines, triangles, weights);
  }
  return { triangles: Uint32Array.from(triangles), weights: Float32Array.from(weights) };
}

function addPatch(patch: FlatTriangles, linesAt: LinesAt, found: number[], weights: number[]): void {
  const { uv, triangles, meshTriangles } = patch;
  if (uv === null) return;
  const spacing = Math.max(LEAST_SPACING_MM, extentOf(uv) / MOST_ACROSS);
  for (let t = 0; t < meshTriangles.length; t += 1) {
    const lines = linesAt(t, spacing);
    if (lines.length === 0) continue;
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
        for (const [x0, y0, x1, y1] of lines) {
          found.push(meshTriangles[t]);
          weights.push(...weigh(x + x0, y + y0), ...weigh(x + x1, y + y1));
        }
      }
    }
  }
}

/** The lines at one place, as start and end from it: the whole stroke first. @param stretch, squash shares of the limit. */
function linesOf(stretch: number, squash: number, angle: number, spacing: number): readonly Line[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const lines: Line[] = [];
  if (stretch >= LEAST_SHARE) {
    const half = halfOf(stretch, spacing);
    lines.push([-half * c, -half * s, half * c, half * s]);
  }
  if (squash >= LEAST_SHARE) {
    const [half, gap] = [halfOf(squash, spacing), GAP * spacing];
    for (const end of [-1, 1]) lines.push([end * gap * -s, end * gap * c, end * half * -s, end * half * c]);
  }
  return lines;
}

const halfOf = (share: number, spacing: number): number =>
  (spacing * (SHORTEST + (LONGEST - SHORTEST) * Math.min(1, share))) / 2;

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
