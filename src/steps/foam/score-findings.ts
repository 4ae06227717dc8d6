import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { PartId } from '../../base/ids.ts';
import { formatMm } from '../../base/format-length.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { PieceScore, ScoredLine } from '../../model/score.ts';
import type { PieceLabel } from './piece-findings.ts';

/**
 * A scored line that goes so deep that the foam tears along it when it is warmed: it is held against the same rest as a groove.
 * @param leastMm what must be left of the foam under it.
 */
export function deepScoreFinding(
  label: PieceLabel,
  scores: readonly PieceScore[],
  thicknessMm: number,
  leastMm: number,
): Finding | null {
  const depthMm = Math.max(0, ...scores.map((score) => score.depthMm));
  const leftMm = thicknessMm - depthMm;
  if (leftMm >= leastMm) return null;
  const what =
    leftMm <= 0
      ? `goes through its ${formatMm(thicknessMm)} of foam`
      : `leaves ${formatMm(leftMm)} of its ${formatMm(thicknessMm)} of foam`;
  return {
    code: 'foam/score-deep',
    severity: leftMm <= 0 ? 'error' : 'warning',
    text: `${label.name} has a scored line ${formatMm(depthMm)} deep, which ${what}: score no deeper than ${formatMm(Math.max(0, thicknessMm - leastMm))}, or take thicker foam.`,
    value: leftMm,
    limit: leastMm,
    unit: 'mm',
    where: { part: label.part, piece: label.id },
  };
}

/** Lines of which some or all lies where nothing can be scored. @param inside one per line: how many of its edges lie inside a piece. */
export function lostScoreFindings(
  part: PartId,
  mesh: Mesh,
  lines: readonly ScoredLine[],
  inside: readonly number[],
): readonly Finding[] {
  return lines.flatMap(({ edges }, i): readonly Finding[] => {
    const lost = edges.length - inside[i];
    if (lost === 0) return [];
    const known = edges
      .map(([a, b]): [number, number] => [mesh.vertexOfFile[a] ?? -1, mesh.vertexOfFile[b] ?? -1])
      .filter(([a, b]) => a >= 0 && b >= 0);
    const what =
      inside[i] === 0 ? 'A scored line lies' : `Part of a scored line (${lost} of ${edges.length} edges) lies`;
    return [
      {
        code: 'foam/score-lost',
        severity: 'warning',
        text: `${what} along seams or open edges, where the foam is cut through anyway, or on no edge of the sculpt: nothing is scored there. Join the foam along it or take the line away.`,
        value: lost,
        where: { part, edges: clipPlaces(known) },
      },
    ];
  });
}
