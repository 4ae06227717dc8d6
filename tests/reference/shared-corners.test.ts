import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { FOAM_RULES } from '../../src/model/foam-settings.ts';
import type { CornerFit } from '../../src/model/dry-fit.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import { DryFits } from '../../src/pipeline/dry-fit.ts';
import { dryFitFindings } from '../../src/pipeline/dry-fit-findings.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { partBends } from '../../src/steps/foam/part-bends.ts';
import { runSolid } from './handbook/flat-figures.ts';
import { MORE_AT_A_CORNER } from './handbook/uniform-solids.ts';

const CUBOCTAHEDRON = MORE_AT_A_CORNER[0];

/**
 * With squares of normals X = (1, 0, 0) and Y = (0, 1, 0) and a triangle of T = (1, 1, 1) / sqrt 3 between them, the untrimmed edge of square X
 * runs inward from the corner along -(1, sqrt 3 - 1, 0): at the depth s it lies 1 - (sqrt 3 - 1) s over the back of square Y, and
 * s (Y - T) . (-1, 1 - sqrt 3, 0) / |Y - T| inside the cut between Y and the triangle. It is deepest where both are the same.
 */
const INSIDE_CUT = (2 - Math.sqrt(3)) / Math.sqrt(2 - 2 / Math.sqrt(3));
const DEEPEST = INSIDE_CUT / (INSIDE_CUT + Math.sqrt(3) - 1);

describe.each([6, 10])('squares of a cuboctahedron whose backs are not trimmed, %i mm', (thicknessMm) => {
  it('run into each other at every corner', async () => {
    const { outcome } = await runSolid(CUBOCTAHEDRON, { thicknessMm });
    const corners = await cornersOf(outcome, untrimmed);
    expect(corners).toHaveLength(12);
    for (const { overlapMm } of corners) expect(overlapMm).toBeCloseTo(DEEPEST * thicknessMm, 9);
  });

  it('are told with the place', async () => {
    const { outcome } = await runSolid(CUBOCTAHEDRON, { thicknessMm });
    const corners = await cornersOf(outcome, untrimmed);
    const [found, ...others] = dryFitFindings('part-1', {
      worstGapMm: 0,
      worstOverlapMm: 0,
      perSeam: [],
      corners,
    });
    expect(others).toEqual([]);
    expect(found).toMatchObject({ code: 'dryfit/corner', severity: 'warning', limit: 0.5, unit: 'mm' });
    expect(found.where.vertices).toHaveLength(12);
    expect(found.text).toContain(`up to ${(DEEPEST * thicknessMm).toFixed(1)} mm`);
    expect(found.text).toContain('the worst of 12 such corners');
  });

  it('keep out of each other as they are cut', async () => {
    const { outcome } = await runSolid(CUBOCTAHEDRON, { thicknessMm });
    expect(outcome.dryFit?.corners).toEqual([]);
    expect(outcome.findings.map(({ code }) => code)).not.toContain('dryfit/corner');
  });
});

async function cornersOf(
  { sculpt, cut, layers, pieces, seams, part }: Outcome,
  change: (piece: FoamPiece) => FoamPiece,
): Promise<readonly CornerFit[]> {
  if (sculpt === null || cut === null || pieces === null || seams === null) throw new Error('an unfinished outcome');
  const fit = await new DryFits().of(
    {
      cut,
      hinges: layers[0].hinges,
      bends: partBends(sculpt.mesh, cut.patches, cut.chains, part!.pieceSettings, FOAM_RULES),
      pieces: pieces.map(change),
      seams,
      tooMuchPct: 8,
    },
    QUIET_WORK,
  );
  return fit.corners;
}

/** A square whose trimmed back runs on to where its four edges meet; triangles as they are. */
function untrimmed(piece: FoamPiece): FoamPiece {
  const ring = piece.otherOutline;
  const count = ring.length / 2;
  if (count !== 8) return piece;
  const at = (i: number) => [ring[2 * (i % count)], ring[2 * (i % count) + 1]] as const;
  const length = (i: number): number => Math.hypot(at(i + 1)[0] - at(i)[0], at(i + 1)[1] - at(i)[1]);
  const first = length(0) > length(1) ? 0 : 1;
  const points = [0, 2, 4, 6].flatMap((k) => {
    // From the end of one long edge on along it, to the line of the next.
    const [p, q, r, s] = [0, 1, 2, 3].map((j) => at(first + k + j));
    const [ux, uy, vx, vy] = [q[0] - p[0], q[1] - p[1], s[0] - r[0], s[1] - r[1]];
    const f = ((r[0] - p[0]) * vy - (r[1] - p[1]) * vx) / (ux * vy - uy * vx);
    return [p[0] + f * ux, p[1] + f * uy];
  });
  return { ...piece, otherOutline: Float64Array.from(points) };
}
