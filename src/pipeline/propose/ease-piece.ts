import { formatPlain } from '../../base/format-length.ts';
import type { Work } from '../../base/work.ts';
import { changeSeams, dartTips, runFrom, seamEdgesAt } from '../../steps/seams/propose-graph.ts';
import { assessorOf, startOf } from './assessor-of.ts';
import { firstLayout, waysInto } from './first-layout.ts';
import type { Assessor, Layout } from './layout.ts';
import { proposalOf, reasonsOf } from './proposal-of.ts';
import type { LimitReason, ProposalWish, ProposedPiece } from './proposal.ts';

/** Seams to add so that one piece keeps its limits, or comes nearest to them. */
export interface EaseOffer {
  /** As pairs of vertices of the mesh. */
  readonly edges: readonly (readonly [number, number])[];
  readonly lengthMm: number;
  /** Pieces it falls into. */
  readonly pieces: number;
  /** Darts that are added. */
  readonly darts: number;
  /** True where all that comes of the piece keeps every limit. */
  readonly isEnough: boolean;
  /** 99th percentile after, the worst of what comes of it, per cent. */
  readonly stretch99: number;
  readonly squash99: number;
  /** What comes of the piece. */
  readonly parts: readonly ProposedPiece[];
  /** Limits that the piece breaks now and none of its parts does. */
  readonly mends: readonly LimitReason['limit'][];
  /** Limits that its parts still break, worst first. */
  readonly reasons: readonly LimitReason[];
  readonly text: string;
}

export interface Easing {
  /** Limits the piece breaks as it is, worst first; none where it keeps all. */
  readonly reasons: readonly LimitReason[];
  /** The least costly first, those that are enough before all others; none where the piece keeps its limits or no seam may be added. */
  readonly offers: readonly EaseOffer[];
}

/** Offers told. */
const MOST_OFFERS = 3;
/** Triangles laid flat in further cuts where one is not enough, for each place. */
const MOST_LAID = 30_000;
/** Two offers are the same place where they share more than this of the shorter one's edges. */
const SAME_SHARE = 0.5;

/**
 * "Ease this piece": the least extra seams or darts that bring one piece under its limits, at the three best places. From each peak of
 * strain and of angle defect the cheapest way to a seam or edge is cut, more cuts follow where that is not enough, and all of them are
 * shortened from their tips as far as the limits hold. Nothing else changes.
 * @param wish   whose `start` are the seams.
 * @param piece  its number, pieces being numbered by their lowest triangle.
 * @throws RangeError where there is no such piece; Cancelled when the work was called off.
 */
export async function easePiece(wish: ProposalWish, piece: number, work: Work): Promise<Easing> {
  const before = assessorOf(wish, work);
  const cut = await before.assess(startOf(wish, before.graph), null);
  if (cut === null) throw new Error('a layout without limit is always assessed');
  if (!(piece in cut.verdicts)) throw new RangeError(`piece ${piece} of ${cut.verdicts.length}`);
  const sure = await before.judge.confirm(cut.keys[piece], cut.verdicts[piece]);
  if (sure.badness === 0) return { reasons: [], offers: [] };
  const reasons = reasonsOf(before, sure, piece).sort((a, b) => b.share - a.share);
  // All other pieces stay as they are, and need not be good.
  const fixedTriangles = Uint8Array.from(cut.patchOfTriangle, (of) => (of === piece ? 0 : 1));
  const locked = cut.isSeam.map((value, e) => (value === 1 || wish.locked?.[e] === 1 ? 1 : 0));
  const others = wish.fixedTriangles;
  others?.forEach((value, t) => {
    if (value === 1) fixedTriangles[t] = 1;
  });
  const assessor = assessorOf({ ...wish, fixedTriangles, locked }, work);
  const start = await assessor.assess(cut.isSeam, null);
  const worst = start?.verdicts.find(({ patch }) => cut.patchOfTriangle[patch.meshTriangles[0]] === piece);
  if (start === null || worst === undefined) throw new Error('the piece is still there');
  const found: Layout[] = [];
  const ways = waysInto(assessor.graph, start, worst).map(({ edges }) => edges);
  for (const [i, edges] of (ways.length > 0 ? ways : [[]]).entries()) {
    await work.pause(i / Math.max(1, ways.length), 'looking for the least cut that eases a piece');
    const isSeam = changeSeams(assessor.graph, start.isSeam, [], edges);
    const reached = await firstLayout(assessor, isSeam, () => false, { mostLaid: MOST_LAID });
    found.push(await shortened(assessor, await assessor.confirm(reached), start));
  }
  const rank = (layout: Layout): number => layout.sum.total;
  found.sort((a, b) => a.badness - b.badness || rank(a) - rank(b));
  const offers = distinct(found, start)
    .slice(0, MOST_OFFERS)
    .map((layout) => offerOf(assessor, layout, start, reasons));
  return { reasons, offers };
}

/** Added seams shortened from their tips, halving what is tried, as long as it gets no worse. */
async function shortened(assessor: Assessor, first: Layout, start: Layout): Promise<Layout> {
  const { graph } = assessor;
  let now = first;
  for (const tip of dartTips(graph, first.degree)) {
    if (now.degree[tip] !== 1) continue;
    const run = runFrom(graph, now.isSeam, now.degree, tip, seamEdgesAt(graph, now.isSeam, tip)[0]);
    const edges = run.edges.filter((e) => start.isSeam[e] === 0);
    let done = 0;
    for (let count = edges.length; count >= 1; count = Math.floor(count / 2)) {
      if (done + count > edges.length) continue;
      const isSeam = changeSeams(graph, now.isSeam, edges.slice(done, done + count), []);
      const next = await assessor.assess(isSeam, now, Infinity, 1, now.badness);
      if (next === null) continue;
      const sure = await assessor.confirm(next);
      if (sure.badness > now.badness) continue;
      now = sure;
      done += count;
    }
  }
  return now;
}

const addedEdges = ({ isSeam }: Layout, start: Layout): number[] =>
  [...isSeam.keys()].filter((e) => isSeam[e] === 1 && start.isSeam[e] === 0);

/** Those that differ in where they lie, and add something. */
function distinct(layouts: readonly Layout[], start: Layout): Layout[] {
  const kept: { readonly layout: Layout; readonly edges: ReadonlySet<number> }[] = [];
  for (const layout of layouts) {
    const edges = new Set(addedEdges(layout, start));
    const isSame = kept.some((other) => {
      const shared = [...edges].filter((e) => other.edges.has(e)).length;
      return shared > SAME_SHARE * Math.min(edges.size, other.edges.size);
    });
    if (edges.size > 0 && !isSame) kept.push({ layout, edges });
  }
  return kept.map(({ layout }) => layout);
}

function offerOf(assessor: Assessor, layout: Layout, start: Layout, before: readonly LimitReason[]): EaseOffer {
  const { graph } = assessor;
  const edges = addedEdges(layout, start);
  const own = layout.verdicts.filter(({ patch }) => !assessor.isSettled(patch));
  const worst = (of: (verdict: (typeof own)[number]) => number): number => Math.max(...own.map(of));
  const [stretch99, squash99] = [worst((verdict) => verdict.stretch99), worst((verdict) => verdict.squash99)];
  const pieces = own.length;
  const darts = Math.max(0, layout.tips.length - start.tips.length);
  const lengthMm = edges.reduce((sum, e) => sum + graph.length[e], 0);
  const isEnough = layout.badness === 0;
  const { perPiece, reasons } = proposalOf(assessor, layout, 0);
  const isOfPiece = (i: number): boolean => !assessor.isSettled(perPiece[i].patch);
  const left = reasons.filter(({ piece, limit }) => isOfPiece(piece) && limit !== 'bend');
  const what = pieces > 1 ? `part it into ${pieces} pieces` : darts === 1 ? 'cut one dart' : `cut ${darts} darts`;
  return {
    edges: edges.map((e) => [graph.ends[2 * e], graph.ends[2 * e + 1]] as const),
    lengthMm,
    pieces,
    darts,
    isEnough,
    stretch99,
    squash99,
    parts: perPiece.filter((_, i) => isOfPiece(i)),
    mends: [...new Set(before.map(({ limit }) => limit))].filter((limit) =>
      left.every((other) => other.limit !== limit),
    ),
    reasons: left,
    text: `${what}, ${formatPlain(Math.round(lengthMm))} mm in all: stretch ${formatPlain(Math.round(10 * stretch99) / 10)} %, squash ${formatPlain(Math.round(10 * squash99) / 10)} %${isEnough ? '' : ', still more than the limit'}`,
  };
}
