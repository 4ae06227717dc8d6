import { formatPlain } from '../../base/format-length.ts';
import { surfaceArea } from '../../mesh/measure.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import { angleDefect } from '../../steps/flatten/unfold.ts';
import { restShapes } from '../../steps/flatten/rest-shapes.ts';
import { seamEdgesAt } from '../../steps/seams/propose-graph.ts';
import type { Verdict } from './judge.ts';
import type { Assessor, Layout } from './layout.ts';
import type { LimitReason, Proposal, ProposedPiece } from './proposal.ts';

/** A layout as it is told. */
export function proposalOf(assessor: Assessor, layout: Layout, moves: number): Proposal {
  const { graph, rootArea } = assessor;
  const { isSeam, verdicts, sum } = layout;
  const edges: (readonly [number, number])[] = [];
  let lengthMm = 0;
  for (let e = 0; e < isSeam.length; e += 1) {
    if (isSeam[e] === 0) continue;
    edges.push([graph.ends[2 * e], graph.ends[2 * e + 1]]);
    lengthMm += graph.length[e];
  }
  const dartsOf = verdicts.map(() => 0);
  for (const tip of layout.tips) {
    const [edge] = seamEdgesAt(graph, isSeam, tip);
    const piece = verdicts.findIndex(({ patch }) => patch.meshVertices.includes(tip));
    if (edge !== undefined && piece >= 0) dartsOf[piece] += 1;
  }
  const perPiece = verdicts.map((verdict, i) => pieceOf(assessor, verdict, dartsOf[i]));
  const reasons = [
    ...verdicts.flatMap((verdict, i) => reasonsOf(assessor, verdict, i)),
    ...bendReasons(assessor, layout),
  ];
  return {
    seams: { isSeam, count: edges.length },
    edges,
    pieces: verdicts.length,
    lengthMm,
    lengthOverRootArea: lengthMm / rootArea,
    dartCount: layout.tips.length,
    sum,
    perPiece,
    feasible: perPiece.every(({ isFeasible }) => isFeasible),
    reasons: reasons.sort((a, b) => b.share - a.share || a.piece - b.piece),
    moves,
  };
}

function pieceOf({ positions }: Assessor, verdict: Verdict, dartCount: number): ProposedPiece {
  const { patch, flat, stretch99, squash99, overlaps, badness } = verdict;
  const corners = Uint32Array.from(patch.triangles, (v) => patch.meshVertices[v]);
  return {
    patch,
    flat,
    areaMm2: surfaceArea(positions, corners),
    stretch99,
    squash99,
    overlaps,
    dartCount,
    isFeasible: badness === 0,
  };
}

/** The tightest bend inside each piece, where that is tighter than the foam takes. */
function bendReasons({ graph, bends, positions, judge }: Assessor, layout: Layout): LimitReason[] {
  const { bend } = judge.limits;
  if (bends === null || bend === undefined) return [];
  const { halfedgeOfEdge } = topologyOf(graph.mesh);
  const worst = layout.verdicts.map(() => -1);
  bends.share.forEach((share, e) => {
    if (share === 0 || layout.isSeam[e] === 1) return;
    const piece = layout.patchOfTriangle[triangleOfHalfedge(halfedgeOfEdge[e])];
    if (worst[piece] < 0 || share > bends.share[worst[piece]]) worst[piece] = e;
  });
  return worst.flatMap((e, piece): LimitReason[] => {
    if (e < 0) return [];
    const { patch } = layout.verdicts[piece];
    const help =
      bends.isEased[e] === 1
        ? 'a seam along the bend takes that away'
        : 'seams cannot help: use thinner foam, or kerfs';
    return [
      {
        limit: 'bend',
        piece,
        share: bends.share[e],
        triangle: triangleOfHalfedge(halfedgeOfEdge[e]),
        defectRad: angleDefect(restShapes(patch, positions), patch.loops),
        text: `Its skin is strained ${formatPlain(Math.round(bends.share[e] * bend.mostPct))} % where it bends most, more than ${formatPlain(bend.mostPct)}: ${help}.`,
      },
    ];
  });
}

/** Which limits a piece breaks, and where. */
export function reasonsOf({ positions, judge }: Assessor, verdict: Verdict, piece: number): LimitReason[] {
  if (verdict.badness === 0 && verdict.widthShare <= 1) return [];
  const { limits } = judge;
  const { patch, strain, overlaps, flat } = verdict;
  const defectRad = angleDefect(restShapes(patch, positions), patch.loops);
  const worst = strain.reduce((best, value, t) => (value > strain[best] ? t : best), 0);
  const triangle = patch.meshTriangles[worst];
  const at = { piece, defectRad, triangle };
  if (verdict.uv === null) {
    return [
      {
        ...at,
        limit: 'cut',
        share: Infinity,
        text: 'This piece has no edge, or a handle, and cannot be laid flat before it is cut.',
      },
    ];
  }
  const bent = `its inside is bent by ${formatPlain(Math.round((defectRad * 180) / Math.PI))}° in all`;
  const found: LimitReason[] = [];
  const tell = (limit: LimitReason['limit'], share: number, text: string): void => {
    if (share > 1) found.push({ ...at, limit, share, text });
  };
  tell(
    'stretch',
    verdict.stretch99 / limits.stretchPct,
    `It must stretch ${formatPlain(verdict.stretch99)} %, more than ${limits.stretchPct}: ${bent}.`,
  );
  tell(
    'squash',
    verdict.squash99 / limits.squashPct,
    `It must gather ${formatPlain(verdict.squash99)} %, more than ${limits.squashPct}: ${bent}.`,
  );
  tell('sheet', verdict.sheetShare, 'It is larger than the sheet.');
  tell('width', verdict.widthShare, 'A part of it is narrower than was asked for.');
  if (overlaps > 0) {
    const first = flat?.overlaps[0]?.[0];
    found.push({
      ...at,
      triangle: first === undefined ? triangle : patch.meshTriangles[first],
      limit: 'overlap',
      share: 1 + overlaps / patch.meshTriangles.length,
      text: `It lies over itself in ${overlaps} places.`,
    });
  }
  return found;
}
