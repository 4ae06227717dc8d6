import { describe, expect, it } from 'vitest';
import { elbow } from './handbook/polygon-solids.ts';
import type { Pair, ReportPiece } from './report-shape.ts';
import { runSolid } from './handbook/flat-figures.ts';

const [SIDES, RADIUS, HEIGHT] = [192, 50, 120];

/** A flat place of the lower tube of an elbow as turn about its axis and height along it, by what the corners of the piece have. */
function roundPlace(piece: ReportPiece, neutralRadius: number): (p: Pair) => { angle: number; height: number } {
  const { uvMm, neutralMm, triangles } = piece.flat;
  const [a, b, c] = triangles[0];
  const angleOf = (v: number): number => Math.atan2(neutralMm[v][1], neutralMm[v][0]);
  const away = (v: number): Pair => [uvMm[v][0] - uvMm[a][0], uvMm[v][1] - uvMm[a][1]];
  const [p, q] = [away(b), away(c)];
  const det = p[0] * q[1] - p[1] * q[0];
  const [rise, riseOther] = [neutralMm[b][2] - neutralMm[a][2], neutralMm[c][2] - neutralMm[a][2]];
  // The tube lies flat without stretch, so that its axis is one direction of the flat piece, of length 1, and the other goes round it.
  const axis: Pair = [(rise * q[1] - riseOther * p[1]) / det, (p[0] * riseOther - q[0] * rise) / det];
  const round: Pair = [-axis[1], axis[0]];
  const beside = [b, c].find((v) => Math.abs(away(v)[0] * round[0] + away(v)[1] * round[1]) > 1e-6) ?? b;
  const turned = angleOf(beside) - angleOf(a);
  const sense = Math.sign(
    (turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI))) *
      (away(beside)[0] * round[0] + away(beside)[1] * round[1]),
  );
  // A round of chords is a little shorter than the circle.
  const perRadian = (neutralRadius * Math.sin(Math.PI / SIDES) * SIDES) / Math.PI;
  return ([x, y]) => {
    const [dx, dy] = [x - uvMm[a][0], y - uvMm[a][1]];
    return {
      angle: angleOf(a) + (sense * (dx * round[0] + dy * round[1])) / perRadian,
      height: neutralMm[a][2] + dx * axis[0] + dy * axis[1],
    };
  };
}

describe('a tube bent round exactly, against the straight plate that bevels and dry fit take it for', () => {
  it.each([6, 10])('misses the plane of an elbow by no more than 0.15 t² / R in %i mm foam', async (thicknessMm) => {
    const solid = elbow(SIDES, RADIUS, HEIGHT);
    const { report } = await runSolid(solid, { thicknessMm });
    const piece = report.pieces.find(({ flat }) => flat.neutralMm.some(([, , z]) => z < 1e-6));
    if (piece === undefined) throw new Error('no lower tube');
    const place = roundPlace(piece, RADIUS - thicknessMm / 2);
    for (const [ring, radius] of [
      [piece.outlineMm, RADIUS],
      [piece.otherOutlineMm, RADIUS - thicknessMm],
    ] as const) {
      let worst = 0;
      for (const point of ring) {
        const { angle, height } = place(point);
        if (height < HEIGHT / 2 - 10) continue;
        // Both sides lack as much, each by its way to the plane z = HEIGHT + x, seen square to the cut in the flat piece.
        const lack = HEIGHT + radius * Math.cos(angle) - height;
        worst = Math.max(worst, Math.abs(2 * lack) / Math.hypot(1, Math.sin(angle)));
      }
      expect(worst).toBeLessThan((0.15 * thicknessMm ** 2) / RADIUS);
      // And it is no less than that by much: the straight plate leaves out something real.
      expect(worst).toBeGreaterThan((0.1 * thicknessMm ** 2) / RADIUS);
    }
  });
});
