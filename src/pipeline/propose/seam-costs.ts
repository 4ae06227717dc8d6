import type { Work } from '../../base/work.ts';
import { changeSeams, seamRuns } from '../../steps/seams/propose-graph.ts';
import { assessorOf, startOf } from './assessor-of.ts';
import type { Layout } from './layout.ts';
import { isBetweenPieces } from './moves.ts';
import { reasonsOf } from './proposal-of.ts';
import type { LimitReason, ProposalWish } from './proposal.ts';

/** What becomes of the pieces beside a seam that is taken away. */
export interface SeamCost {
  /** Edges of the seam as pairs of vertices of the mesh, in a row from end to end. */
  readonly edges: readonly (readonly [number, number])[];
  readonly lengthMm: number;
  /** True where it joins two pieces, false where it closes a dart or a seam of one piece with itself. */
  readonly joins: boolean;
  /** True where the piece it leaves keeps every limit. */
  readonly feasible: boolean;
  /** Greatest figure of that piece over its limit; Infinity where it cannot be laid flat. */
  readonly share: number;
  /** 99th percentile, per cent. */
  readonly stretch99: number;
  readonly squash99: number;
  readonly overlaps: number;
  readonly reasons: readonly LimitReason[];
}

/**
 * "What would it cost to remove this seam?" for each run of seam between branches, tips and edges that is not fixed, each on its own, with
 * the piece it leaves laid flat in full.
 * @param wish  whose `start` are the seams.
 * @returns the cheapest first: those that need not be there, longest first, then by how far the limits are broken.
 * @throws Cancelled when the work was called off.
 */
export async function seamCosts(wish: ProposalWish, work: Work): Promise<readonly SeamCost[]> {
  const assessor = assessorOf(wish, work);
  const { graph, judge } = assessor;
  const layout = await assessor.assess(startOf(wish, graph), null);
  if (layout === null) throw new Error('a layout without limit is always assessed');
  const runs = seamRuns(graph, layout.isSeam, layout.degree).filter(({ edges }) =>
    edges.every((e) => graph.isFixed[e] === 0),
  );
  const costs: SeamCost[] = [];
  for (const [i, { edges, vertices }] of runs.entries()) {
    await work.pause(i / runs.length, 'trying to do without each seam');
    const next = await assessor.assess(changeSeams(graph, layout.isSeam, edges, []), layout);
    if (next === null) throw new Error('a layout without limit is always assessed');
    const changed = newPieces(layout, next);
    const sure = await Promise.all(changed.map((p) => judge.confirm(next.keys[p], next.verdicts[p])));
    const most = (of: (verdict: (typeof sure)[number]) => number): number => Math.max(0, ...sure.map(of));
    costs.push({
      edges: edges.map((_, k) => [vertices[k], vertices[k + 1]] as const),
      lengthMm: edges.reduce((sum, e) => sum + graph.length[e], 0),
      joins: isBetweenPieces(graph, layout, edges[0]),
      feasible: sure.every(({ badness }) => badness === 0),
      share: most(({ share }) => share),
      stretch99: most(({ stretch99 }) => stretch99),
      squash99: most(({ squash99 }) => squash99),
      overlaps: most(({ overlaps }) => overlaps),
      reasons: sure.flatMap((verdict, k) => reasonsOf(assessor, verdict, changed[k])),
    });
  }
  const rank = ({ feasible, share, lengthMm }: SeamCost): number => (feasible ? -lengthMm : share);
  return costs.sort(
    (a, b) => Number(b.feasible) - Number(a.feasible) || rank(a) - rank(b) || a.edges[0][0] - b.edges[0][0],
  );
}

/** Pieces of the later layout that the earlier one did not have. */
function newPieces(before: Layout, after: Layout): number[] {
  const known = new Set(before.keys);
  return after.keys.flatMap((key, i) => (known.has(key) ? [] : [i]));
}
