import { findingFigures } from '../base/finding.ts';
import { chainPoints } from '../geom/outline.ts';
import type { BuildUp } from '../model/build-up.ts';
import type { PlainDraft } from '../model/plain-piece.ts';

/**
 * What is built up on a core as JSON of version 1: lengths mm along the core from its start, areas mm², volumes mm³, angles degrees. Outlines of pieces
 * are lists of edges with their exact parts; `ring` is the same as points, no chord farther from it than 0.01 mm.
 */
export function buildUpJson(built: BuildUp): Record<string, unknown> {
  const { core, rule, layers, skin, staves, tapers, windings, work, findings, sideView } = built;
  return {
    schemaVersion: 1,
    core: { ...core, marks: core.marks, seats: core.seats },
    rule,
    solidMm3: built.solidMm3,
    coreMm3: built.coreMm3,
    sandMm3: built.sandMm3,
    fillMm3: built.fillMm3,
    sandDepthMm: built.sandDepthMm,
    fillDepthMm: built.fillDepthMm,
    cost: built.cost,
    layers,
    skin,
    staves,
    tapers,
    windings,
    pieces: work.pieces.map(pieceJson),
    steps: work.steps,
    findings: findings.map(findingFigures),
    sideView,
  };
}

function pieceJson(piece: PlainDraft): Record<string, unknown> {
  const { key, name, quantity, thicknessMm, drawnAt, outline, bend, lines, notes, areaMm2 } = piece;
  return {
    key,
    name,
    quantity,
    thicknessMm,
    drawnAt,
    areaMm2,
    bend,
    edges: outline.map(({ name: edge, segments, lengthMm, bevelDeg, seam }) => ({
      name: edge,
      lengthMm,
      bevelDeg,
      seam,
      // Points of a curve stand in the ring.
      segments: segments.map((one) => (one.kind === 'curve' ? { ...one, points: one.points.length } : one)),
    })),
    ring: ringOf(piece).map(({ x, y }) => [x, y]),
    lines: lines.map(({ role, points, closed, text }) => ({ role, closed, text, points: [...points] })),
    notes,
  };
}

/** Corners of a piece's outline, the first not repeated. */
export const ringOf = ({ outline }: PlainDraft) =>
  chainPoints(outline.flatMap(({ segments }) => segments)).slice(0, -1);
