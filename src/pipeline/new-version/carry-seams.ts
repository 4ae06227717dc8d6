import type { Stepwise } from '../../base/stepwise.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { SeamPath, SurfacePoint } from '../../model/seams.ts';
import type { MeshPoint } from '../../model/surface-line.ts';
import type { EdgePair } from '../../project/commands.ts';
import type { CarriedPlaces } from './carried-places.ts';

/** What became of an edge that was a seam. `gone`: its ends are one corner now; nothing is missing there. */
export type EdgeFate =
  | { readonly as: 'edge'; readonly pair: EdgePair }
  | { readonly as: 'path'; readonly path: number; readonly isBack: boolean }
  | { readonly as: 'gone' }
  | { readonly as: 'lost' };

export interface CarriedSeams {
  readonly edges: readonly EdgePair[];
  /** First those that edges have become, then those that were paths before. */
  readonly paths: readonly SeamPath[];
  readonly fateOf: (pair: EdgePair) => EdgeFate | null;
  /** For each earlier path the paths it has become; none: it is lost. */
  readonly pathsOf: readonly (readonly number[])[];
  /** Earlier edges without a place, as vertices of the earlier mesh. */
  readonly lost: readonly (readonly [number, number])[];
  /** Numbers of earlier paths of which points had no place. */
  readonly brokenPaths: readonly number[];
}

/** Edges looked up in one stretch: a few milliseconds. */
const STRETCH = 256;

/**
 * Brings marked edges and paths to a new version. An edge whose ends have become corners that an edge joins is that edge; rows of others become
 * paths through the places of their corners, which meet the edges beside them in the same corners.
 */
export function* carrySeams(
  places: CarriedPlaces,
  edges: readonly EdgePair[],
  paths: readonly SeamPath[],
): Stepwise<CarriedSeams> {
  const { before, after } = places;
  const topology = topologyOf(after.mesh);
  const vertexOf = (n: number): number => before.mesh.vertexOfFile[n] ?? -1;
  const known = new Map<string, EdgeFate>();
  const isCorner = new Set<number>();
  const open: (readonly [number, number])[] = [];
  const lost: (readonly [number, number])[] = [];
  const kept: EdgePair[] = [];
  for (const [i, pair] of edges.entries()) {
    if (i % STRETCH === STRETCH - 1) yield;
    const [v, w] = [vertexOf(pair[0]), vertexOf(pair[1])];
    const key = keyOf(v, w);
    if (known.has(key)) continue;
    const [a, b] = [places.vertexOf(v), places.vertexOf(w)];
    const edge = a < 0 || b < 0 ? -1 : topology.edgeBetween(a, b);
    if (edge >= 0 || (a >= 0 && a === b)) {
      isCorner.add(v).add(w);
      const own: EdgePair = [after.mesh.fileVertex[a], after.mesh.fileVertex[b]];
      if (edge >= 0) kept.push(own);
      known.set(key, edge >= 0 ? { as: 'edge', pair: own } : { as: 'gone' });
    } else if (places.ofVertex(v) === null || places.ofVertex(w) === null) {
      if (v >= 0 && w >= 0) lost.push([v, w]);
      known.set(key, { as: 'lost' });
    } else {
      open.push([v, w]);
      // Until it is known in which row it lies.
      known.set(key, { as: 'lost' });
    }
  }
  const pointOf = (v: number): SurfacePoint => {
    const place: MeshPoint | null = isCorner.has(v) ? { at: 'vertex', vertex: places.vertexOf(v) } : places.ofVertex(v);
    if (place === null) throw new Error(`carrySeams: vertex ${v} has no place`);
    return places.inFile(place);
  };
  const found: SeamPath[] = rowsOf(open, isCorner).map((row, path) => {
    row.slice(1).forEach((v, i) => {
      const [from, to] = [row[i], v];
      known.set(keyOf(from, to), { as: 'path', path, isBack: from > to });
    });
    return { points: withoutDoubles(row.map(pointOf)), kind: 'butt' };
  });
  yield;
  const pathsOf: number[][] = [];
  const brokenPaths: number[] = [];
  for (const [number, path] of paths.entries()) {
    yield;
    const points = path.points.map((point): SurfacePoint | null => {
      const v = 'vertex' in point ? vertexOf(point.vertex) : -1;
      if (v >= 0 && isCorner.has(v)) return pointOf(v);
      const place = places.ofPoint(point);
      return place === null ? null : places.inFile(place);
    });
    if (points.includes(null)) brokenPaths.push(number);
    const runs = runsOf(points).map((run) => ({ ...path, points: withoutDoubles(run) }));
    const whole = runs.filter((run) => run.points.length > 1);
    pathsOf.push(whole.map((_, i) => found.length + i));
    found.push(...whole);
  }
  return {
    edges: kept,
    paths: found,
    fateOf: (pair) => known.get(keyOf(vertexOf(pair[0]), vertexOf(pair[1]))) ?? null,
    pathsOf,
    lost,
    brokenPaths,
  };
}

const keyOf = (v: number, w: number): string => (v < w ? `${v} ${w}` : `${w} ${v}`);

/** Edges gathered into rows that end where they branch, or at one of the given vertices; a row that closes repeats its first. */
function rowsOf(edges: readonly (readonly [number, number])[], ends: ReadonlySet<number>): number[][] {
  const at = new Map<number, number[]>();
  edges.forEach(([v, w], i) => {
    for (const end of [v, w]) at.set(end, [...(at.get(end) ?? []), i]);
  });
  const isEnd = (v: number): boolean => ends.has(v) || at.get(v)?.length !== 2;
  const used = new Set<number>();
  const walk = (start: number, first: number): number[] => {
    const row = [start];
    for (let edge: number | undefined = first; edge !== undefined;) {
      used.add(edge);
      const [v, w]: readonly [number, number] = edges[edge];
      const next: number = row[row.length - 1] === v ? w : v;
      row.push(next);
      edge = isEnd(next) ? undefined : at.get(next)?.find((i) => !used.has(i));
    }
    return row;
  };
  const rows: number[][] = [];
  for (const v of [...at.keys()].sort((a, b) => a - b))
    if (isEnd(v)) for (const i of at.get(v) ?? []) if (!used.has(i)) rows.push(walk(v, i));
  // What is left closes.
  for (const [i, [v]] of edges.entries()) if (!used.has(i)) rows.push(walk(v, i));
  return rows;
}

function runsOf(points: readonly (SurfacePoint | null)[]): SurfacePoint[][] {
  const runs: SurfacePoint[][] = [[]];
  for (const point of points) {
    if (point === null) runs.push([]);
    else runs[runs.length - 1].push(point);
  }
  return runs;
}

const withoutDoubles = (points: readonly SurfacePoint[]): SurfacePoint[] =>
  points.filter((point, i) => i === 0 || JSON.stringify(point) !== JSON.stringify(points[i - 1]));
