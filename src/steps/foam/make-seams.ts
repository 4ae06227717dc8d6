import type { Finding } from '../../base/finding.ts';
import type { FoamSeam } from '../../model/foam-piece.ts';
import { cornerStepFindings } from './corner-steps.ts';
import type { EdgeRun } from './edge-runs.ts';
import { foamSeam, type SeamPieceSide } from './foam-seams.ts';
import { joiningFindings } from './joining-findings.ts';
import type { FoamInput, PieceCall } from './make-foam-pieces.ts';
import type { PieceShape } from './piece-shape.ts';
import { rebateCornerFindings } from './rebate-corners.ts';
import type { SeamCut } from './seam-cuts.ts';
import { bevelFinding, walkFindings } from './seam-findings.ts';
import type { MarkPlace, WalkedSide } from './seam-walk.ts';
import { steepNote } from './steep-words.ts';

/** What is known of the pieces when their seams are told: one per patch, and one per chain for cuts and places. */
export interface SeamsMaking {
  readonly shapes: readonly (PieceShape | null)[];
  readonly calls: readonly PieceCall[];
  readonly runs: readonly (readonly EdgeRun[])[];
  /** Of the runs of each patch. */
  readonly walked: readonly (readonly WalkedSide[])[];
  readonly cuts: readonly SeamCut[];
  readonly places: readonly (readonly MarkPlace[])[];
}

/** The seams as they came out in foam, and what the maker must know of them. A seam of which no piece could be made is left out. */
export function makeSeams(
  { mesh, layer, patches, chains, bends, rules, part }: FoamInput,
  making: SeamsMaking,
): { seams: readonly FoamSeam[]; findings: readonly Finding[] } {
  const { cuts, places } = making;
  const seams: FoamSeam[] = [];
  const findings: Finding[] = [];
  sidesOfChains(chains.length, making).forEach((sides, c) => {
    if (sides.length === 0) return;
    const chain = chains[c];
    const { seam, walk } = foamSeam(chain, layer.layer, sides, cuts[c], places[c]);
    seams.push(seam);
    const sheets = sides.map(({ shape }) => shape.thicknessMm);
    const isHalved = cuts[c].joining === 'halved';
    const steep =
      isHalved && bevelFinding(mesh, part, chain, bends.bevels[c], rules.bevelLimitDeg, Math.max(...sheets));
    if (steep) findings.push(steep);
    const built = steepNote(part, seam, Math.max(...sheets));
    if (built !== null) findings.push(built);
    findings.push(...joiningFindings(part, chain, bends.bevels[c], cuts[c], sheets, rules.bevelLimitDeg));
    findings.push(...walkFindings(mesh, part, chain, walk));
  });
  const thickest = making.shapes.reduce((most, shape) => Math.max(most, shape?.thicknessMm ?? 0), 0);
  const pieces = making.shapes.flatMap((shape, i) =>
    shape === null ? [] : [{ name: making.calls[i].name, patch: patches[i], shape, corners: bends.patches[i].corners }],
  );
  findings.push(...rebateCornerFindings(part, chains, cuts, thickest), ...cornerStepFindings(part, pieces));
  return { seams, findings };
}

/** The sides of each chain whose pieces could be made, in order. */
function sidesOfChains(count: number, { shapes, calls, runs, walked }: SeamsMaking): readonly SeamPieceSide[][] {
  const sides: SeamPieceSide[][] = Array.from({ length: count }, () => []);
  runs.forEach((list, i) => {
    const shape = shapes[i];
    if (shape === null) return;
    const { id: piece, traced } = calls[i];
    list.forEach((run, r) => sides[run.chain].push({ piece, shape, run, walked: walked[i][r], traced }));
  });
  return sides.map((list) => list.sort((a, b) => a.run.side - b.run.side));
}
