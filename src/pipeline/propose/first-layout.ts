import type { Patch } from '../../model/patch.ts';
import { offerCut } from '../../steps/cut/offer-cut.ts';
import { topologyOf } from '../../mesh/topology.ts';
import { changeSeams, cheapestWay, otherEnd, type SeamGraph, type SeamWay } from '../../steps/seams/propose-graph.ts';
import type { Assessor, Layout } from './layout.ts';
import type { Verdict } from './judge.ts';

/** A piece with holes that fails by more than this is cut from its holes to its edge before anything else: a tube never rolls out as a ring. */
const HARDLY_WINDOWED = 0.4;
/** Cuts made one after the other at most before what there is is taken. */
const MOST_CUTS = 120;
/** Places tried for one cut. */
const MOST_PLACES = 3;
/** Rounds over which strain and defect are handed to neighbours before their peaks are looked for. */
const ROUNDS = 3;
/** Badness that a root of the area of seam must take away to be worth it. */
const WORTH = 0.25;
/** What a cut must take away of a piece's badness; where none does, the piece is halved. */
const LEAST_GAIN = 0.03;

/** Weight of the mean strain over its limit beside badness, and the most that counts of one triangle, in limits. */
const OVER = 1;
const MOST_OVER = 4;

type IsOver = () => boolean;

/** When to leave it: where the seams cost more than another answer's, and when so many triangles were laid flat in trials. */
export interface FirstBounds {
  readonly mostTotal?: number;
  readonly mostLaid?: number;
  /** More pieces than this are left to another way. */
  readonly mostPieces?: number;
}

/**
 * Cuts until every piece keeps its limits: closed and handled surfaces are opened, then the piece that fails most is cut from its border to
 * the peaks of its strain and of its angle defect, whichever takes most away for its length; where that gains little it is halved.
 * Cuts to strong cones along shortest paths: Sheffer and Hart, "Seamster", 2002.
 */
export async function firstLayout(
  assessor: Assessor,
  start: Uint8Array,
  isOver: IsOver,
  { mostTotal = Infinity, mostLaid = Infinity, mostPieces = Infinity }: FirstBounds = {},
): Promise<Layout> {
  const { graph, judge } = assessor;
  let layout = await assessAll(assessor, start, null);
  const laidBefore = judge.laidTriangles;
  for (let i = 0; i < MOST_CUTS && layout.badness > 0 && !isOver(); i += 1) {
    if (layout.verdicts.length > mostPieces) break;
    if (layout.sum.total > mostTotal || judge.laidTriangles - laidBefore > mostLaid) break;
    const opened = opening(graph, layout);
    const isSeam = opened ?? (await nextCut(assessor, layout, isOver));
    if (isSeam === null) break;
    layout = await assessAll(assessor, isSeam, layout);
  }
  return layout;
}

async function assessAll(assessor: Assessor, isSeam: Uint8Array, before: Layout | null): Promise<Layout> {
  const layout = await assessor.assess(isSeam, before);
  if (layout === null) throw new Error('a layout without limit is always assessed');
  return layout;
}

/** Seams with all that must be opened opened; null where nothing must. */
function opening(graph: SeamGraph, { isSeam, verdicts }: Layout): Uint8Array | null {
  let next = isSeam;
  const patches = verdicts.map(({ patch }) => patch);
  for (const [i, { patch, badness }] of verdicts.entries()) {
    if (patch.kind === 'disc' || (patch.kind === 'windowed' && badness <= HARDLY_WINDOWED)) continue;
    const offer = offerCut(graph.mesh, { isSeam, count: 0 }, patches, i);
    if (offer === null) continue;
    const topology = topologyOf(graph.mesh);
    next = changeSeams(
      graph,
      next,
      [],
      offer.edges.map(([v, w]) => topology.edgeBetween(v, w)),
    );
  }
  return next.every((value, e) => value === isSeam[e]) ? null : next;
}

async function nextCut(assessor: Assessor, layout: Layout, isOver: IsOver): Promise<Uint8Array | null> {
  const { graph } = assessor;
  const need = needOf(layout);
  const order = layout.verdicts.toSorted((a, b) => b.badness - a.badness);
  for (const worst of order) {
    if (worst.badness === 0) return null;
    let best: Uint8Array | null = null;
    let most = LEAST_GAIN * worst.badness;
    const ways = waysInto(graph, layout, worst).map(({ edges }) => edges);
    for (const edges of ways.length > 1 ? [...ways, ways.flat()] : ways) {
      if (isOver()) return null;
      const isSeam = changeSeams(graph, layout.isSeam, [], edges);
      const next = await assessor.assess(isSeam, layout);
      if (next === null) continue;
      const gain = need - needOf(next) - WORTH * (next.sum.length - layout.sum.length);
      if (gain <= most) continue;
      [best, most] = [isSeam, gain];
    }
    best ??= halved(graph, layout, worst);
    if (best !== null) return best;
  }
  return null;
}

/**
 * How far a layout is from holding its limits. The badness of a piece is that of its worst hundredth, under which all else is hidden: what
 * the rest is over its limits counts too.
 */
const needOf = ({ badness, verdicts }: Layout): number =>
  badness + OVER * verdicts.reduce((sum, { strain }) => sum + strain.reduce(overLimit, 0) / strain.length, 0);

const overLimit = (sum: number, strain: number): number => sum + Math.max(0, Math.min(strain, MOST_OVER) - 1);

/** Cheapest ways from seams and edges to the peaks inside a piece. */
export function waysInto(graph: SeamGraph, { degree }: Layout, verdict: Verdict): SeamWay[] {
  const ways: SeamWay[] = [];
  const seen = new Set<number>();
  for (const v of peaksOf(graph, verdict)) {
    if (seen.has(v)) continue;
    seen.add(v);
    const way = cheapestWay(graph, v, (w) => degree[w] > 0 || graph.isRim[w] === 1);
    if (way !== null) ways.push(way);
  }
  return ways;
}

/** Vertices where strain, and where angle defect, is greatest round about, inside the piece. */
export function peaksOf(graph: SeamGraph, { patch, strain }: Pick<Verdict, 'patch' | 'strain'>): number[] {
  const count = graph.vertexCount;
  const inside = new Uint8Array(count);
  for (const v of patch.meshVertices) inside[v] = 1;
  const border = new Uint8Array(count);
  for (const loop of patch.loops) for (const v of loop) border[patch.meshVertices[v]] = 1;
  const strained = new Float64Array(count);
  const times = new Float64Array(count);
  const missing = new Float64Array(count);
  const { positions } = graph.mesh;
  patch.meshTriangles.forEach((_, t) => {
    for (let k = 0; k < 3; k += 1) {
      const v = patch.meshVertices[patch.triangles[3 * t + k]];
      strained[v] += Math.max(0, strain[t]);
      times[v] += 1;
      missing[v] -= cornerAngle(
        positions,
        v,
        patch.meshVertices[patch.triangles[3 * t + ((k + 1) % 3)]],
        patch.meshVertices[patch.triangles[3 * t + ((k + 2) % 3)]],
      );
    }
  });
  for (let v = 0; v < count; v += 1) {
    if (inside[v] === 0) continue;
    strained[v] /= times[v];
    missing[v] = border[v] === 1 ? 0 : missing[v] + 2 * Math.PI;
  }
  const vertices = [...new Set(patch.meshVertices)].sort((a, b) => a - b);
  const peaks: number[] = [];
  const fields = [strained, smoothed(graph, vertices, inside, strained), smoothed(graph, vertices, inside, missing)];
  for (const field of fields) {
    const smooth = field.map(Math.abs);
    const isPeak = (v: number): boolean =>
      border[v] === 0 && neighboursOf(graph, v).every((w) => inside[w] === 0 || smooth[w] <= smooth[v]);
    const found = vertices.filter(isPeak).sort((a, b) => smooth[b] - smooth[a] || a - b);
    peaks.push(...found.slice(0, MOST_PLACES));
  }
  return peaks;
}

const neighboursOf = (graph: SeamGraph, v: number): number[] =>
  Array.from(graph.edges.subarray(graph.starts[v], graph.starts[v + 1]), (e) => otherEnd(graph, e, v));

function smoothed(
  graph: SeamGraph,
  vertices: readonly number[],
  inside: Uint8Array,
  field: Float64Array,
): Float64Array {
  let now = field;
  for (let round = 0; round < ROUNDS; round += 1) {
    const next = now.slice();
    for (const v of vertices) {
      let [sum, count] = [now[v], 1];
      for (let i = graph.starts[v]; i < graph.starts[v + 1]; i += 1) {
        const w = otherEnd(graph, graph.edges[i], v);
        if (inside[w] === 0) continue;
        sum += now[w];
        count += 1;
      }
      next[v] = sum / count;
    }
    now = next;
  }
  return now;
}

function cornerAngle(p: Float64Array, v: number, a: number, b: number): number {
  let [dot, aa, bb] = [0, 0, 0];
  for (let i = 0; i < 3; i += 1) {
    const [x, y] = [p[3 * a + i] - p[3 * v + i], p[3 * b + i] - p[3 * v + i]];
    dot += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? Math.acos(Math.min(1, Math.max(-1, dot / Math.sqrt(aa * bb)))) : 0;
}

/** The piece parted across its longest extent, through the middle of its triangles; null where that is not allowed or it is one triangle. */
export function halved(
  graph: SeamGraph,
  { isSeam, patchOfTriangle }: Pick<Layout, 'isSeam' | 'patchOfTriangle'>,
  { patch }: Pick<Verdict, 'patch'>,
): Uint8Array | null {
  const { positions, triangles } = graph.mesh;
  const middles = Array.from(patch.meshTriangles, (t) =>
    [0, 1, 2].map(
      (i) =>
        (positions[3 * triangles[3 * t] + i] +
          positions[3 * triangles[3 * t + 1] + i] +
          positions[3 * triangles[3 * t + 2] + i]) /
        3,
    ),
  );
  const axis = longestAxis(middles);
  const along = middles.map((point) => point[0] * axis[0] + point[1] * axis[1] + point[2] * axis[2]);
  const half = along.toSorted((a, b) => a - b)[Math.floor(along.length / 2)];
  const isFar = new Map(Array.from(patch.meshTriangles, (t, i) => [t, along[i] >= half]));
  const next = changeSeams(graph, isSeam, [], edgesBetween(graph, patch, patchOfTriangle, isFar));
  return next.every((value, e) => value === isSeam[e]) ? null : next;
}

function edgesBetween(
  { mesh }: SeamGraph,
  patch: Patch,
  patchOfTriangle: Int32Array,
  isFar: ReadonlyMap<number, boolean>,
): number[] {
  const { twin, edgeOfHalfedge } = topologyOf(mesh);
  const found: number[] = [];
  for (const t of patch.meshTriangles) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      if (twin[h] < 0) continue;
      const other = Math.floor(twin[h] / 3);
      if (patchOfTriangle[other] === patchOfTriangle[t] && isFar.get(other) !== isFar.get(t))
        found.push(edgeOfHalfedge[h]);
    }
  }
  return found;
}

/** Of the three axes of space the one along which points spread most (variance). */
function longestAxis(points: readonly (readonly number[])[]): readonly [number, number, number] {
  const spread = [0, 1, 2].map((i) => {
    const mean = points.reduce((sum, point) => sum + point[i], 0) / points.length;
    return points.reduce((sum, point) => sum + (point[i] - mean) ** 2, 0);
  });
  const most = spread.indexOf(Math.max(...spread));
  return [most === 0 ? 1 : 0, most === 1 ? 1 : 0, most === 2 ? 1 : 0];
}
