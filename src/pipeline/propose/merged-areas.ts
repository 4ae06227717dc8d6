import { topologyOf } from '../../mesh/topology.ts';
import { edgesBetweenAreas, nearlyFlatAreas } from '../../steps/seams/propose-clusters.ts';
import { changeSeams, type SeamGraph } from '../../steps/seams/propose-graph.ts';
import { firstLayout, halved } from './first-layout.ts';
import type { Assessor, Layout } from './layout.ts';

/** Triangles in an area, about, and how many areas there are at least and at most. */
const TRIANGLES_EACH = 40;
const LEAST_AREAS = 12;
const MOST_AREAS = 140;
/** Times all areas that fail are halved before it is given up. */
const MOST_HALVINGS = 14;

/** Times pieces that fail once neighbours were made one, or fail in full, are halved before what there is is taken. */
const MOST_SURPRISES = 5;
/** Triangles laid flat at most while small pieces are cut on: about a second. */
const MOST_LAID = 100_000;
/** Of sums of badness. */
const ROUNDING = 1e-9;

/**
 * A layout that holds every limit soon, for any surface: nearly flat areas, halved where they fail, and neighbours made one as long as the
 * limits hold, those first that share most of the shorter border. Clusters merged under a bound on distortion: Julius, Kraevoy and
 * Sheffer, "D-Charts", 2005; here the flattening itself is the bound.
 * @returns the layout as far as it came.
 */
export async function mergedAreas(
  assessor: Assessor,
  start: Uint8Array,
  isOver: () => boolean,
): Promise<Layout | null> {
  const { graph } = assessor;
  const count = Math.min(MOST_AREAS, Math.max(LEAST_AREAS, graph.mesh.triangles.length / 3 / TRIANGLES_EACH));
  const areas = nearlyFlatAreas(graph, assessor.positions, start, Math.round(count));
  const parted = await assessor.assess(changeSeams(graph, start, [], edgesBetweenAreas(graph, areas)), null);
  let layout = parted && (await halvedUntilGood(assessor, parted, isOver));
  // What fails by folds of its own is cut to the peaks of its strain while it is small, which costs little.
  if (layout !== null && layout.badness > 0)
    layout = await firstLayout(assessor, layout.isSeam, isOver, { mostLaid: MOST_LAID });
  for (let i = 0; i < MOST_SURPRISES && layout !== null && !isOver(); i += 1) {
    const failed = layout.badness;
    layout = await assessor.confirm(await mergeAll(assessor, layout, isOver));
    if (layout.badness <= failed) return layout;
    layout = await halvedUntilGood(assessor, layout, isOver);
  }
  return layout;
}

async function halvedUntilGood(assessor: Assessor, first: Layout, isOver: () => boolean): Promise<Layout> {
  let layout = first;
  for (let i = 0; i < MOST_HALVINGS && layout.badness > 0 && !isOver(); i += 1) {
    let { isSeam } = layout;
    for (const verdict of layout.verdicts) {
      if (verdict.badness > 0 && assessor.slivers.isWorthHalving(verdict.patch))
        isSeam = halved(assessor.graph, { ...layout, isSeam }, verdict) ?? isSeam;
    }
    const next = await assessor.assess(isSeam, layout);
    if (next === null || next.verdicts.length === layout.verdicts.length) break;
    layout = next;
  }
  return layout;
}

interface Pair {
  readonly edges: readonly number[];
  readonly name: string;
  readonly rank: number;
}

/** Makes neighbours one wherever what comes of them holds every limit, whatever fails elsewhere. */
async function mergeAll(assessor: Assessor, first: Layout, isOver: () => boolean): Promise<Layout> {
  let layout = first;
  const failed = new Set<string>();
  for (;;) {
    const pairs = pairsOf(assessor.graph, layout)
      .filter(({ name }) => !failed.has(name))
      .sort((a, b) => b.rank - a.rank || (a.name < b.name ? -1 : 1));
    // Pieces that were made one in this sweep are not looked at again in it: their borders have changed.
    const changed = new Set<string>();
    let hasMerged = false;
    for (const { edges, name } of pairs) {
      const keys = name.split('|');
      if (keys.some((key) => changed.has(key))) continue;
      if (isOver()) return layout;
      const isSeam = changeSeams(assessor.graph, layout.isSeam, edges, []);
      const others = layout.verdicts.reduce(
        (sum, verdict, i) => sum + (keys.includes(layout.keys[i]) ? 0 : assessor.badnessOf(verdict)),
        0,
      );
      const next = await assessor.assess(isSeam, layout, Infinity, 1, others + ROUNDING);
      if (next === null || next.sum.total > layout.sum.total) {
        failed.add(name);
        continue;
      }
      layout = next;
      hasMerged = true;
      for (const key of keys) changed.add(key);
    }
    if (!hasMerged) return layout;
  }
}

/** Neighbours and the seam between them; ranked by its share of the shorter of their borders. */
function pairsOf(graph: SeamGraph, { isSeam, patchOfTriangle, keys, verdicts }: Layout): Pair[] {
  const { halfedgeOfEdge, twin } = topologyOf(graph.mesh);
  const found = new Map<number, number[]>();
  const border = new Float64Array(verdicts.length);
  for (let e = 0; e < graph.edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    const a = patchOfTriangle[Math.floor(h / 3)];
    if (twin[h] < 0) border[a] += graph.length[e];
    if (twin[h] < 0 || isSeam[e] === 0) continue;
    const b = patchOfTriangle[Math.floor(twin[h] / 3)];
    border[a] += graph.length[e];
    border[b] += graph.length[e];
    if (a === b) continue;
    const pair = Math.min(a, b) * verdicts.length + Math.max(a, b);
    found.set(pair, [...(found.get(pair) ?? []), e]);
  }
  return [...found].flatMap(([pair, edges]) => {
    const [a, b] = [Math.floor(pair / verdicts.length), pair % verdicts.length];
    if (edges.some((e) => graph.isFixed[e] === 1)) return [];
    const shared = edges.reduce((sum, e) => sum + graph.length[e], 0);
    return [{ edges, name: `${keys[a]}|${keys[b]}`, rank: shared / Math.min(border[a], border[b]) }];
  });
}
