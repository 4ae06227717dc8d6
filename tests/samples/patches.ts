import { cornerAngle, type SampleFiles } from './read-sample.ts';

export interface PatchFacts {
  /** The `g` names in the patch, in file order. */
  readonly panels: readonly string[];
  readonly euler: number;
  /** Closed runs of boundary: 1 for a disc, 1 more for each window. */
  readonly loops: number;
  /** Sum over the inner vertices of |360 degrees less the corner angles|: how far the patch is from bending alone. */
  readonly defectDeg: number;
}

/** The number of the group each of `count` things is in, after joining all `pairs`; groups are named by their lowest member. */
function joined(count: number, pairs: Iterable<readonly [number, number]>): number[] {
  const up = Array.from({ length: count }, (_, i) => i);
  const root = (i: number): number => {
    while (up[i] !== i) i = up[i] = up[up[i]];
    return i;
  };
  for (const [a, b] of pairs) {
    const [p, q] = [root(a), root(b)];
    up[Math.max(p, q)] = Math.min(p, q);
  }
  return up.map((_, i) => root(i));
}

export const edgeKey = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** A side of a face: the edge from its corner `k` to the next one. */
export interface Side {
  readonly face: number;
  readonly k: number;
  readonly from: number;
  readonly to: number;
}

/** For each edge the sides of faces that use it. */
export function sidesByEdge(sample: SampleFiles): Map<string, Side[]> {
  const sides = new Map<string, Side[]>();
  for (const [face, corners] of sample.faces.entries()) {
    for (const [k, from] of corners.entries()) {
      const to = corners[(k + 1) % corners.length];
      const key = edgeKey(from, to);
      const row = sides.get(key);
      if (row) row.push({ face, k, from, to });
      else sides.set(key, [{ face, k, from, to }]);
    }
  }
  return sides;
}

/** Cuts a sample along its seams. Every corner of a face is its own point until an edge that is not cut joins it to a neighbour's. */
export function patchesOf(sample: SampleFiles): PatchFacts[] {
  const cut = new Set(sample.seams.map(([a, b]) => edgeKey(a, b)));
  const sides = sidesByEdge(sample);
  const firstCorner: number[] = [];
  let corners = 0;
  for (const face of sample.faces) {
    firstCorner.push(corners);
    corners += face.length;
  }
  const cornerAt = (side: Side, vertex: number): number => {
    const n = sample.faces[side.face].length;
    return firstCorner[side.face] + (side.from === vertex ? side.k : (side.k + 1) % n);
  };

  const faceJoins: [number, number][] = [];
  const cornerJoins: [number, number][] = [];
  const rim: Side[] = [];
  for (const [key, row] of sides) {
    if (row.length === 2 && !cut.has(key)) {
      faceJoins.push([row[0].face, row[1].face]);
      for (const v of [row[0].from, row[0].to]) cornerJoins.push([cornerAt(row[0], v), cornerAt(row[1], v)]);
    } else rim.push(...row);
  }
  const patchOfFace = joined(sample.faces.length, faceJoins);
  const pointOfCorner = joined(corners, cornerJoins);

  const next = new Map<number, number>();
  const patchOfRim = new Map<number, number>();
  for (const side of rim) {
    const from = pointOfCorner[cornerAt(side, side.from)];
    next.set(from, pointOfCorner[cornerAt(side, side.to)]);
    patchOfRim.set(from, patchOfFace[side.face]);
  }

  return [...new Set(patchOfFace)].map((patch) => {
    const faces = sample.faces.map((_, f) => f).filter((f) => patchOfFace[f] === patch);
    const angle = new Map<number, number>();
    let inner = 0;
    for (const f of faces) {
      for (let k = 0; k < sample.faces[f].length; k++) {
        const point = pointOfCorner[firstCorner[f] + k];
        angle.set(point, (angle.get(point) ?? 0) + cornerAngle(sample, f, k));
      }
    }
    for (const [a] of faceJoins) if (patchOfFace[a] === patch) inner++;
    const rimPoints = [...patchOfRim].filter(([, p]) => p === patch).map(([point]) => point);
    const seen = new Set<number>();
    let loops = 0;
    for (const start of rimPoints) {
      if (seen.has(start)) continue;
      loops++;
      for (let p = start; !seen.has(p); p = next.get(p)!) seen.add(p);
    }
    let defect = 0;
    for (const [point, sum] of angle) if (!next.has(point)) defect += Math.abs(2 * Math.PI - sum);
    return {
      panels: [...new Set(faces.map((f) => sample.panels[f]))],
      euler: angle.size - (inner + rimPoints.length) + faces.length,
      loops,
      defectDeg: (defect * 180) / Math.PI,
    };
  });
}
