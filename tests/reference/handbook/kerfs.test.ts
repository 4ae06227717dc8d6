import { describe, expect, it } from 'vitest';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import { runChain, type ChainOutput } from '../run-chain.ts';
import { objOf, type Solid } from './polygon-solids.ts';

/**
 * Kerf bending by its geometry, which any handbook of joinery gives for wood: the outside keeps its length on what the saw leaves, the inside loses
 * what the kerfs close by. Sculpts are rows of flat sides that touch their circle.
 */
const WIDTH = 40;
const SIDES = 90;
const { hingeMm, kerfMm } = FOAM_RULES;

/** A strip round the y axis from radius to radius, bottom to top; its face is outside the bend, or inside it. */
function bentStrip(bottomMm: number, topMm: number, turnRad: number, isConvex = true): Solid {
  const at = (i: number) => (i / SIDES) * turnRad;
  const round = (radius: number, y: number) =>
    Array.from({ length: SIDES + 1 }, (_, i) => [radius * Math.cos(at(i)), y, -radius * Math.sin(at(i))] as const);
  const sides = Array.from({ length: SIDES }, (_, i) => [i, i + 1, SIDES + 2 + i, SIDES + 1 + i]);
  return {
    corners: [...round(bottomMm, 0), ...round(topMm, WIDTH)],
    faces: isConvex ? sides : sides.map((side) => side.toReversed()),
    seams: [],
  };
}

const kerfed = (solid: Solid, thicknessMm: number): Promise<ChainOutput> =>
  runChain({
    fileName: 'strip.obj',
    bytes: objOf(solid),
    seams: solid.seams,
    scale: { by: 'unit', unit: 'mm' },
    thicknessMm,
    modelIs: 'face',
    neutralFraction: 0.5,
    pieceSettings: [{ face: 0, bendStyle: 'kerfed' }],
  });

const onlyPiece = ({ outcome }: ChainOutput): FoamPiece => {
  expect(outcome.stopped).toBeNull();
  expect(outcome.pieces).toHaveLength(1);
  return (outcome.pieces ?? [])[0];
};

const codesOf = ({ findings }: FoamPiece): readonly string[] => findings.map(({ code }) => code);

describe('kerfs', () => {
  const turn = (2 * Math.PI) / 3;

  it.each([
    ['convex', true, 60 - hingeMm / 2, 60 - 10],
    ['concave', false, 60 + 10 - hingeMm / 2, 60],
  ] as const)(
    'bend a %s strip on what they leave, and close by what its inside is shorter',
    async (_, isConvex, hingeRadius, inside) => {
      const piece = onlyPiece(await kerfed(bentStrip(60, 60, turn, isConvex), 10));
      expect(piece.bendStyle).toBe('kerfed');
      const { kerfs } = piece;
      if (kerfs === undefined) throw new Error('no kerfs');
      expect(kerfs.side).toBe(isConvex ? 'back' : 'face');
      expect(kerfs.depthMm).toBe(10 - hingeMm);
      // What bends are the folds between the sides: a side less than the whole row.
      const bent = (turn * (SIDES - 1)) / SIDES;
      const arm = 10 - hingeMm / 2;
      expect(kerfs.lines).toHaveLength(Math.ceil((bent * arm) / kerfMm));
      const flat = piece.areaMm2 / WIDTH;
      // The face's circle passes through the corners; sides move in parallel, the two ends straight along theirs.
      const half = turn / SIDES / 2;
      const [faceSide, side] = [
        2 * 60 * Math.sin(half),
        2 * (60 * Math.cos(half) + (hingeRadius - 60)) * Math.tan(half),
      ];
      expect(flat).toBeCloseTo((SIDES - 1) * side + faceSide, 9);
      const closed = kerfs.lines.length * (kerfMm - kerfs.mouthMm);
      expect(closed).toBeCloseTo(bent * arm, 9);
      // What is left is as long as the inside.
      const insideSide = side - 2 * (hingeRadius - inside) * Math.tan(half);
      expect(flat - closed).toBeCloseTo((SIDES - 1) * insideSide + faceSide, 1);
      for (const [ax, ay, bx, by] of kerfs.lines) expect(Math.hypot(bx - ax, by - ay)).toBeCloseTo(WIDTH, 6);
      const apart = (bent / kerfs.lines.length) * hingeRadius;
      expect(kerfs.spacingMm.least).toBeCloseTo(apart, 1);
      expect(kerfs.spacingMm.most).toBeCloseTo(apart, 1);
      expect(codesOf(piece).filter((code) => code.startsWith('foam/kerf'))).toEqual([]);
    },
  );

  it('of a cone run to its tip, and lie nearer where it is narrower', async () => {
    const piece = onlyPiece(await kerfed(bentStrip(90, 60, turn), 10));
    const lines = piece.kerfs?.lines ?? [];
    expect(lines.length).toBeGreaterThan(5);
    // Each is drawn to a hundredth of a side; the tip lies three times as far off as the piece is high.
    const [p, q] = [lines[0], lines[lines.length - 1]];
    const tip = crossing(p, q);
    for (const line of lines) expect(aside(line, tip)).toBeLessThan(0.2);
    const { least, most } = piece.kerfs?.spacingMm ?? { least: 0, most: 0 };
    // The hinges lie on a cone of the same slope, hingeMm / 2 inside the face.
    const slope = Math.hypot(WIDTH, 30) / WIDTH;
    expect(most / least).toBeCloseTo((90 - (slope * hingeMm) / 2) / (60 - (slope * hingeMm) / 2), 1);
  });

  it('closed round a tube meet their own seam', async () => {
    const tube = bentStrip(60, 60, 2 * Math.PI);
    const { outcome } = await kerfed(tube, 10);
    expect(outcome.pieces?.[0].bendStyle).toBe('kerfed');
    expect(outcome.pieces?.[0].kerfs?.lines.length).toBeGreaterThan(15);
  });

  it('are told where they run into each other', async () => {
    expect(codesOf(onlyPiece(await kerfed(bentStrip(14, 14, turn), 10)))).toContain('foam/kerf-close');
  });

  it('are told where what they leave is stretched too far', async () => {
    const piece = onlyPiece(await kerfed(bentStrip(60, 60, turn), 2));
    // A strip as thick as its hinge, bent evenly over the width of a kerf.
    const each = (turn * (SIDES - 1)) / SIDES / (piece.kerfs?.lines.length ?? 0);
    const pct = (100 * (hingeMm / 2)) / (kerfMm / each);
    expect(pct).toBeGreaterThan(25);
    const found = piece.findings.find(({ code }) => code === 'foam/kerf-tight');
    expect(found).toMatchObject({ severity: 'warning', limit: 25, unit: '%' });
    expect(found?.value).toBeCloseTo(pct, 9);
  });

  it('are not cut where nothing would be left over them', async () => {
    const piece = onlyPiece(await kerfed(bentStrip(60, 60, turn), 1.5));
    expect(piece.kerfs).toBeUndefined();
    expect(codesOf(piece)).toContain('foam/kerf-thin');
    expect(piece.areaMm2 / WIDTH).toBeCloseTo((60 - 0.75) * turn, 1);
  });

  it.each([
    ['a ball', dome(), 'bends two ways'],
    ['a wave', wave(), 'bends to both sides'],
    ['a board', bentStrip(1e5, 1e5, 1e-3), 'needs no kerfs'],
  ] as const)('are refused on %s, which is rolled', async (_, solid, why) => {
    const piece = onlyPiece(await kerfed(solid, 10));
    expect(piece.bendStyle).toBe('rolled');
    const found = piece.findings.find(({ code }) => code === 'foam/kerf-unfit');
    expect(found?.text).toContain(why);
  });
});

/** A cap of a ball of R 80, out to 40 degrees. */
function dome(): Solid {
  const [rings, around] = [8, 24];
  const corners: (readonly [number, number, number])[] = [[0, 80, 0]];
  for (let r = 1; r <= rings; r += 1)
    for (let i = 0; i < around; i += 1) {
      const [down, round] = [(r / rings) * ((40 * Math.PI) / 180), (2 * Math.PI * i) / around];
      const out = 80 * Math.sin(down);
      corners.push([out * Math.cos(round), 80 * Math.cos(down), -out * Math.sin(round)]);
    }
  const at = (r: number, i: number) => 1 + (r - 1) * around + (i % around);
  const faces: number[][] = Array.from({ length: around }, (_, i) => [0, at(1, i), at(1, i + 1)]);
  for (let r = 1; r < rings; r += 1)
    for (let i = 0; i < around; i += 1) faces.push([at(r, i), at(r + 1, i), at(r + 1, i + 1), at(r, i + 1)]);
  return { corners, faces, seams: [] };
}

/** Two arcs of 60 degrees, one after the other to either side. */
function wave(): Solid {
  const line: [number, number][] = [[0, 0]];
  let heading = -Math.PI / 6;
  for (let i = 0; i < 60; i += 1) {
    heading += ((i < 30 ? 1 : -1) * Math.PI) / 90;
    const [x, y] = line[line.length - 1];
    line.push([x + 3 * Math.cos(heading), y + 3 * Math.sin(heading)]);
  }
  const count = line.length;
  return {
    corners: [0, WIDTH].flatMap((z) => line.map(([x, y]) => [x, y, -z] as const)),
    faces: line.slice(1).map((_, i) => [i, i + 1, count + i + 1, count + i]),
    seams: [],
  };
}

function crossing([ax, ay, bx, by]: Float64Array, [cx, cy, dx, dy]: Float64Array): [number, number] {
  const share = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / ((bx - ax) * (dy - cy) - (by - ay) * (dx - cx));
  return [ax + share * (bx - ax), ay + share * (by - ay)];
}

const aside = ([ax, ay, bx, by]: Float64Array, [x, y]: [number, number]): number =>
  Math.abs((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / Math.hypot(bx - ax, by - ay);
