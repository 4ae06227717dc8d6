import { type Matrix4, Vector3 } from 'three';
import type { SculptView } from '../model/bench-view.ts';
import type { Highlight } from './bench-contract.ts';
import { cornerAfter } from '../mesh/corners-at-vertices.ts';
import type { FoamBody } from './foam-body.ts';
import type { Pointed } from './pointed-out.ts';
import type { SculptIndex } from './sculpt-index.ts';
import { addAlong, type SurfaceLines } from './surface-lines.ts';

/** What is on the bench now, as far as pointing at it goes. */
export interface OnBench {
  readonly sculpt: SculptView;
  readonly index: SculptIndex;
  readonly lines: SurfaceLines;
  /** Packed xyz per corner of the sculpt's triangles where they are drawn now: on the foam when there is any. */
  readonly corners: Float32Array;
  readonly body: FoamBody | null;
  readonly sceneFromModel: Matrix4;
}

/** Finds things where they are now. Numbers that are out of date (the records have changed since) are passed over. */
export function findPointed(bench: OnBench, what: Highlight): Pointed {
  const { corners, index, sculpt } = bench;
  const lines: number[] = [];
  const fills: number[] = [];
  const dots: number[] = [];
  for (const p of what.pieces ?? []) {
    for (const { shape, borders } of bench.body?.patches ?? []) {
      if (shape.piece !== p) continue;
      addAlong(
        lines,
        borders.map((h) => 3 * shape.meshTriangles[Math.floor(h / 3)] + (h % 3)),
        corners,
      );
    }
  }
  for (const s of what.seams ?? []) {
    const chain = bench.lines.chains[s];
    if (chain === undefined) continue;
    addAlong(lines, chain.left, corners);
    addAlong(lines, chain.right, corners);
  }
  for (const e of what.edges ?? []) {
    addAlong(
      lines,
      [index.halfedgesOfEdge[2 * e], index.halfedgesOfEdge[2 * e + 1]].filter((h) => h !== undefined && h >= 0),
      corners,
    );
  }
  for (const t of what.triangles ?? []) {
    if (3 * t >= sculpt.triangles.length) continue;
    for (let i = 9 * t; i < 9 * t + 9; i += 1) fills.push(corners[i]);
  }
  for (const v of what.vertices ?? []) {
    const found = new Set<string>();
    for (let i = index.around.starts[v]; i < (index.around.starts[v + 1] ?? 0); i += 1) {
      const c = 3 * index.around.corners[i];
      const key = `${corners[c].toFixed(1)} ${corners[c + 1].toFixed(1)} ${corners[c + 2].toFixed(1)}`;
      if (found.has(key)) continue;
      found.add(key);
      dots.push(corners[c], corners[c + 1], corners[c + 2]);
    }
  }
  if (what.point !== undefined)
    new Vector3(...what.point).applyMatrix4(bench.sceneFromModel).toArray(dots, dots.length);
  return { lines, fills, dots };
}

/** The sides of closed lines through space, xyz xyz. */
export const findRings = ({ sceneFromModel }: OnBench, rings: readonly ArrayLike<number>[]): number[] =>
  ringLines(rings, sceneFromModel);

/** Closed lines through space as segments in the scene, packed xyz xyz. */
export function ringLines(rings: readonly ArrayLike<number>[], sceneFromModel: Matrix4): number[] {
  const lines: number[] = [];
  for (const ring of rings) addRing(lines, ring, sceneFromModel);
  return lines;
}

/** Open lines through space likewise. */
export function openLines(lines: readonly ArrayLike<number>[], sceneFromModel: Matrix4): number[] {
  const found: number[] = [];
  for (const line of lines) {
    for (let i = 0; i + 1 < line.length / 3; i += 1)
      for (const k of [3 * i, 3 * i + 3])
        new Vector3(line[k], line[k + 1], line[k + 2]).applyMatrix4(sceneFromModel).toArray(found, found.length);
  }
  return found;
}

function addRing(lines: number[], ring: ArrayLike<number>, sceneFromModel: Matrix4): void {
  const at = (i: number): Vector3 => new Vector3(ring[3 * i], ring[3 * i + 1], ring[3 * i + 2]);
  const count = ring.length / 3;
  for (let i = 0; i < count; i += 1) {
    for (const end of [i, (i + 1) % count]) at(end).applyMatrix4(sceneFromModel).toArray(lines, lines.length);
  }
}

/** Shares of a seam's length at which threads are drawn: near both ends, so that one sees which end goes to which, and in the middle. */
const THREADS = [0.04, 0.5, 0.96];

/** Threads from one side of a seam to the other; none for the edges of the prop, nor where both sides lie together. */
export function findThreads(bench: OnBench, seam: number): number[] {
  const chain = bench.lines.chains[seam];
  if (chain === undefined || chain.right.length !== chain.left.length || chain.left.length === 0) return [];
  const { corners } = bench;
  const threads: number[] = [];
  for (const share of THREADS) {
    const place = share * chain.left.length;
    const i = Math.min(chain.left.length - 1, Math.floor(place));
    const along = place - i;
    // The right side runs against the chain.
    const a = pointOn(corners, chain.left[i], along);
    const b = pointOn(corners, chain.right[i], 1 - along);
    if (a.distanceTo(b) > 1) threads.push(a.x, a.y, a.z, b.x, b.y, b.z);
  }
  return threads;
}

function pointOn(corners: Float32Array, halfedge: number, share: number): Vector3 {
  const a = new Vector3().fromArray(corners, 3 * halfedge);
  return a.lerp(new Vector3().fromArray(corners, 3 * cornerAfter(halfedge)), share);
}
