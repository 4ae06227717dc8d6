import type { Stepwise } from '../../base/stepwise.ts';
import { cross3, length3, pointAt3, sub3, vec3 } from '../../geom/vec.ts';
import { boxOfPoints3, diagonalOf } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { reflect, type MirrorPlane } from '../../mesh/mirror/mirror-plane.ts';
import type { Patch } from '../../model/patch.ts';

/** Two points this share of the sculpt's diagonal apart mirror each other: modelled by mirroring, then rounded by a file. */
const MIRROR_SHARE = 1e-4;

/** Cosine from which on a plane parts left from right: 8 degrees. */
const SIDEWAYS = 0.99;

/** Areas and middles of twins agree to this share. */
const AREA_SHARE = 1e-3;

/** The twin of a patch and, where the mirror stands between left and right, which hand it is. */
export interface Twin {
  readonly patch: number;
  readonly hand?: 'left' | 'right';
  /** For each corner of the patch's border the twin's corner that mirrors it, by vertices of the mesh. */
  readonly partners: ReadonlyMap<number, number>;
}

/**
 * The direction a wearer who stands upright has on the left. Upright along y or x the wearer looks along +z, upright along z along -y (the
 * front view of programs with z up); left is up x forward: +x for y and for z, -y for x.
 */
const LEFT: Readonly<Record<'x' | 'y' | 'z', { axis: number; sign: number }>> = {
  y: { axis: 0, sign: 1 },
  z: { axis: 0, sign: 1 },
  x: { axis: 1, sign: -1 },
};

/**
 * Finds pieces that mirror each other, in stretches. Mirrors tried: across each axis, through the middle of the sculpt's box and through the origin, the one
 * between left and right first, and then the plane that was found or set. Two patches are twins when the corners of their borders mirror each other and their areas and middles agree.
 * @param isAlike tells whether two patches may be twins for other reasons (their edges are of the same kinds).
 * @param mirror  a plane the sculpt mirrors itself in; null: none is known.
 * @returns per patch its twin or null; always mutual.
 */
export function* twinSteps(
  mesh: Mesh,
  patches: readonly Patch[],
  upAxis: 'x' | 'y' | 'z',
  isAlike: (a: number, b: number) => boolean,
  mirror: MirrorPlane | null = null,
): Stepwise<readonly (Twin | null)[]> {
  const twins: (Twin | null)[] = patches.map(() => null);
  const { min, max } = boxOfPoints3(mesh.positions);
  const centre = [(min.x + max.x) / 2, (min.y + max.y) / 2, (min.z + max.z) / 2];
  const tolerance = MIRROR_SHARE * diagonalOf(mesh);
  if (!(tolerance > 0)) return twins;
  const corners = new CornerFinder(mesh, patches, tolerance);
  yield;
  const middles = patches.map((patch) => middleOf(mesh, patch));
  const byBorder = new Map<string, number[]>();
  patches.forEach((patch, i) => {
    const key = borderKey(patch, (v) => v);
    byBorder.set(key, [...(byBorder.get(key) ?? []), i]);
  });
  const left = LEFT[upAxis];
  const planes: { readonly plane: MirrorPlane; readonly isSideways: boolean }[] = [];
  for (const axis of [left.axis, ...[0, 1, 2].filter((a) => a !== left.axis)]) {
    const normal = vec3(axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0);
    for (const at of Math.abs(centre[axis]) > tolerance ? [centre[axis], 0] : [0])
      planes.push({ plane: { normal, at }, isSideways: axis === left.axis });
  }
  if (mirror !== null) {
    const { x, y, z } = mirror.normal;
    planes.push({ plane: mirror, isSideways: Math.abs([x, y, z][left.axis]) >= SIDEWAYS });
  }
  for (const { plane, isSideways } of planes) {
    yield;
    const isTwin = (a: number, b: number): boolean =>
      a !== b && twins[b] === null && isAlike(a, b) && doMirror(middles[a], middles[b], plane, tolerance);
    patches.forEach((patch, a) => {
      if (twins[a] !== null || patch.loops.length === 0) return;
      const mirrored = borderKey(patch, (v) => corners.mirrored(v, plane));
      const b = byBorder.get(mirrored)?.find((candidate) => isTwin(a, candidate));
      if (b === undefined) return;
      const isLeft = left.sign * (middles[a].point[left.axis] - middles[b].point[left.axis]) > 0;
      const hand = (mine: boolean): { hand?: 'left' | 'right' } =>
        isSideways ? { hand: mine ? 'left' : 'right' } : {};
      const pairs = borderVertices(patch).map((v) => [v, corners.mirrored(v, plane)] as const);
      twins[a] = { patch: b, ...hand(isLeft), partners: new Map(pairs) };
      twins[b] = { patch: a, ...hand(!isLeft), partners: new Map(pairs.map(([v, w]) => [w, v])) };
    });
  }
  return twins;
}

/** The corners of a patch's border as one word, each renamed; '' when one has no name. */
function borderKey(patch: Patch, rename: (v: number) => number): string {
  const names = borderVertices(patch).map(rename);
  if (names.some((name) => name < 0)) return '';
  return names.sort((a, b) => a - b).join(' ');
}

/** Vertices of the mesh round a patch; one on both sides of a slit stands twice. */
const borderVertices = ({ loops, meshVertices }: Patch): readonly number[] =>
  loops.flatMap((loop) => Array.from(loop, (local) => meshVertices[local]));

interface Middle {
  readonly area: number;
  readonly point: readonly number[];
}

function middleOf(mesh: Mesh, patch: Patch): Middle {
  let area = 0;
  const sum = [0, 0, 0];
  const { triangles } = mesh;
  for (const t of patch.meshTriangles) {
    const [a, b, c] = [0, 1, 2].map((k) => pointAt3(mesh.positions, triangles[3 * t + k]));
    const own = length3(cross3(sub3(b, a), sub3(c, a))) / 2;
    area += own;
    sum[0] += (own * (a.x + b.x + c.x)) / 3;
    sum[1] += (own * (a.y + b.y + c.y)) / 3;
    sum[2] += (own * (a.z + b.z + c.z)) / 3;
  }
  return { area, point: sum.map((x) => (area > 0 ? x / area : 0)) };
}

function doMirror(a: Middle, b: Middle, plane: MirrorPlane, tolerance: number): boolean {
  if (Math.abs(a.area - b.area) > AREA_SHARE * Math.max(a.area, b.area)) return false;
  const reach = Math.max(tolerance, AREA_SHARE * Math.sqrt(a.area));
  const image = reflect(plane, pointAt3(a.point, 0));
  return [image.x, image.y, image.z].every((x, i) => Math.abs(x - b.point[i]) <= reach);
}

/** Finds the border corner that stands where another's mirror image is. */
class CornerFinder {
  readonly #positions: Float64Array;
  readonly #cells = new Map<string, number[]>();
  readonly #cell: number;
  readonly #tolerance: number;

  constructor(mesh: Mesh, patches: readonly Patch[], tolerance: number) {
    this.#positions = mesh.positions;
    this.#tolerance = tolerance;
    this.#cell = 2 * tolerance;
    const corners = new Set<number>();
    for (const patch of patches)
      for (const loop of patch.loops) for (const local of loop) corners.add(patch.meshVertices[local]);
    for (const v of corners) {
      const key = this.#key([0, 1, 2].map((i) => Math.floor(mesh.positions[3 * v + i] / this.#cell)));
      const list = this.#cells.get(key);
      if (list === undefined) this.#cells.set(key, [v]);
      else list.push(v);
    }
  }

  /** The nearest corner within the tolerance, or -1. */
  mirrored(v: number, plane: MirrorPlane): number {
    const image = reflect(plane, pointAt3(this.#positions, v));
    const p = [image.x, image.y, image.z];
    let best = -1;
    let least = this.#tolerance;
    const low = p.map((x) => Math.floor((x - this.#tolerance) / this.#cell));
    const high = p.map((x) => Math.floor((x + this.#tolerance) / this.#cell));
    for (let i = low[0]; i <= high[0]; i += 1) {
      for (let j = low[1]; j <= high[1]; j += 1) {
        for (let k = low[2]; k <= high[2]; k += 1) {
          for (const w of this.#cells.get(this.#key([i, j, k])) ?? []) {
            const away = Math.hypot(...p.map((x, n) => x - this.#positions[3 * w + n]));
            if (away <= least) [least, best] = [away, w];
          }
        }
      }
    }
    return best;
  }

  #key(cell: readonly number[]): string {
    return cell.join(' ');
  }
}
