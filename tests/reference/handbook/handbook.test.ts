import { beforeAll, describe, expect, it } from 'vitest';
import type { Pair, Report, ReportPiece } from '../report-shape.ts';
import { numbersOf, rowOf } from './cases.ts';
import { angleAt, apart, flatPointsOf, fromLine, layFlat, meeting } from './flat-figures.ts';
import { cone, elbow, tube } from './polygon-solids.ts';

/**
 * Published developments of round things against the flat pieces of their low-poly likenesses. Each figure is held twice: to rounding
 * against the closed form of the polygon, and against the published value of the round thing, short by what the polygon is known to miss.
 *
 * With x = pi / sides: a chord is 2 r sin x, so a wrap is short by the share 1 - sin x / x = x² / 6 - x⁴ / 120 + …
 */
const SIDES = 144; // a multiple of 12, so that the handbook's 30 degree steps are corners
const X = Math.PI / SIDES;
const DEG = 180 / Math.PI;

/** Relative difference allowed against the polygon's own value. */
const OWN = 1e-6;

function expectClose(value: number, expected: number, relative = OWN): void {
  expect(Math.abs(value - expected) / Math.abs(expected), `${value} against ${expected}`).toBeLessThan(relative);
}

/**
 * The published value less its known shortfall, `share` being the leading term in x²; what the series leaves out is of fourth order.
 * Published figures are rounded to six decimals.
 */
function expectShortOf(published: number, value: number, share: number): void {
  const rounding = 5e-7 / Math.abs(published);
  expect(Math.abs(value / published - (1 - share)), `${value} against ${published}`).toBeLessThan(
    X ** 4 + 2 * rounding,
  );
}

function expectUnstretched(piece: ReportPiece): void {
  expect(piece.flipped).toBe(0);
  expect(piece.overlaps).toBe(0);
  for (const spread of [piece.stretchPct, piece.squashPct]) expect(Math.abs(spread.max)).toBeLessThan(1e-6);
  expectClose(piece.flatAreaMm2, piece.surfaceAreaMm2, 1e-9);
}

describe('cone A1', () => {
  const { inputs, expected } = numbersOf('A1');
  const { base_radius: radius, height } = inputs;
  const slant = Math.hypot(radius, height);
  // Each side is a triangle with two legs `slant` and the base 2 r sin x, so at the apex it takes 2 asin(r sin x / slant).
  const turn = 2 * Math.asin((radius * Math.sin(X)) / slant);
  const sine2 = (radius / slant) ** 2;
  let piece: ReportPiece;
  beforeAll(async () => {
    const { pieces } = await layFlat(cone(SIDES, radius, height));
    expect(pieces).toHaveLength(1);
    [piece] = pieces;
  });

  it('keeps its slant on every side', () => {
    const [apex] = flatPointsOf(piece, SIDES);
    for (let i = 0; i < SIDES; i += 1) {
      for (const point of flatPointsOf(piece, i)) expectClose(apart(apex, point), slant);
    }
    expectClose(slant, expected.slant, 1e-9);
    expectUnstretched(piece);
  });

  it('opens to the sector of the handbook', () => {
    const [apex] = flatPointsOf(piece, SIDES);
    const [p, q] = flatPointsOf(piece, 0);
    const sector = angleAt(apex, p, q);
    expectClose(sector, SIDES * turn);
    // asin(s sin x) = s x (1 - (1 - s²) x² / 6 + …)
    expectShortOf(expected.sector_angle_deg, sector * DEG, ((1 - sine2) * X * X) / 6);
    // The chord 2 slant sin(sector / 2) changes with the sector by cot(sector / 2) sector / 2.
    const half = (SIDES * turn) / 2;
    expectClose(apart(p, q), 2 * slant * Math.sin(half));
    expectShortOf(expected.sector_chord, apart(p, q), ((((1 - sine2) * X * X) / 6) * half) / Math.tan(half));
  });

  it('has the area of its triangles', () => {
    expectClose(piece.flatAreaMm2, (SIDES / 2) * slant * slant * Math.sin(turn));
    // sin(2 y) / (2 y) with y = s x loses a further 2 s² x² / 3.
    expectShortOf(expected.area, piece.flatAreaMm2, ((1 - sine2) / 6 + (2 / 3) * sine2) * X * X);
  });
});

describe('nearly cylindrical frustum A3', () => {
  const { inputs, expected } = numbersOf('A3');
  const { large_radius: large, small_radius: small, height } = inputs;
  const slant = Math.hypot(height, large - small);
  const outer = (slant * large) / (large - small);
  const turn = 2 * Math.asin((large * Math.sin(X)) / outer);
  let piece: ReportPiece;
  beforeAll(async () => {
    const { pieces } = await layFlat(tube(SIDES, large, small, () => height));
    expect(pieces).toHaveLength(1);
    [piece] = pieces;
  });

  it('opens to the long thin sector of the handbook', () => {
    const [p, q] = flatPointsOf(piece, 0);
    const [r, s] = flatPointsOf(piece, SIDES);
    for (const [low, high] of [
      [p, r],
      [q, s],
    ])
      expectClose(apart(low, high), slant);
    expectClose(slant, expected.slant, 1e-8);
    const apex = meeting(p, r, q, s);
    const sector = angleAt(apex, p, q);
    expectClose(sector, SIDES * turn);
    expectShortOf(expected.sector_angle_deg, sector * DEG, ((1 - (large / outer) ** 2) * X * X) / 6);
    expectClose(apart(apex, p), outer);
    expectClose(apart(apex, r), outer - slant);
    expectClose(outer, expected.outer_radius, 1e-9);
    expectClose(outer - slant, expected.inner_radius, 1e-9);
    expectUnstretched(piece);
  });

  it('has the rim and the sagitta of the handbook', () => {
    let rim = 0;
    const row = Array.from({ length: SIDES + 1 }, (_, i) => flatPointsOf(piece, i % SIDES)[i === SIDES ? 1 : 0]);
    const ordered = row.slice(1, SIDES);
    const ends = flatPointsOf(piece, 0).sort((a, b) => apart(a, ordered[0]) - apart(b, ordered[0]));
    const along: Pair[] = [ends[0], ...ordered, ends[1]];
    for (let i = 0; i < SIDES; i += 1) rim += apart(along[i], along[i + 1]);
    expectClose(rim, 2 * SIDES * large * Math.sin(X));
    expectShortOf(expected.outer_arc, rim, (X * X) / 6);
    const sagitta = fromLine(along[SIDES / 2], [ends[0], ends[1]]);
    expectClose(sagitta, outer * (1 - Math.cos((SIDES * turn) / 2)));
    // A small sagitta goes with the square of the sector.
    expectShortOf(expected.arc_sagitta, sagitta, (X * X) / 3);
  });
});

describe('wrap B1', () => {
  const { inputs, expected } = numbersOf('B1');
  const { outer_diameter: outside, thickness } = inputs;
  const height = 200;

  it.each([
    ['inner', 0],
    ['K0.33', 0.33],
    ['K0.44', 0.44],
    ['K0.50_mid', 0.5],
    ['outer', 1],
  ])('is as long as its neutral surface: %s', async (key, neutralFraction) => {
    const { pieces } = await layFlat(
      tube(SIDES, outside / 2, outside / 2, () => height),
      {
        modelIs: 'face',
        thicknessMm: thickness,
        neutralFraction,
      },
    );
    const [piece] = pieces;
    const [p, q] = flatPointsOf(piece, 0);
    // The flat sides of the outside stand r cos x from the axis; inwards by d they are 2 (r cos x - d) tan x wide.
    const inward = (1 - neutralFraction) * thickness;
    const radius = outside / 2;
    expectClose(apart(p, q), 2 * SIDES * (radius * Math.cos(X) - inward) * Math.tan(X));
    // sin x = x - x³/6 and tan x = x + x³/3, over the true length 2 pi (r - d).
    expectShortOf(expected[key], apart(p, q), ((radius / 6 + inward / 3) * X * X) / (radius - inward));
    expectClose(apart(p, flatPointsOf(piece, SIDES).sort((a, b) => apart(a, p) - apart(b, p))[0]), height);
    expectUnstretched(piece);
  });

  it('is the middle when the model is drawn at the middle', async () => {
    const radius = (outside - thickness) / 2;
    const { pieces } = await layFlat(
      tube(SIDES, radius, radius, () => height),
      { thicknessMm: thickness },
    );
    const [p, q] = flatPointsOf(pieces[0], 0);
    expectClose(apart(p, q), 2 * SIDES * radius * Math.sin(X));
    expectShortOf(expected['K0.50_mid'], apart(p, q), (X * X) / 6);
    expectClose(pieces[0].flatAreaMm2, 2 * SIDES * radius * Math.sin(X) * height);
  });
});

describe('elbow C1', () => {
  const { inputs, expected } = numbersOf('C1');
  const { diameter, centreline_height: height } = inputs;
  let report: Report;
  beforeAll(async () => {
    report = await layFlat(elbow(SIDES, diameter / 2, height));
    expect(report.pieces).toHaveLength(2);
  });

  it('has the ordinates of the handbook on both pieces', () => {
    const ordinates = rowOf('C1', 'expected', 'ordinates');
    const distances = rowOf('C1', 'expected', 'x_of_ordinates');
    for (const [piece, foot] of [
      [report.pieces[0], 0],
      [report.pieces[1], 2 * SIDES],
    ] as const) {
      const base = flatPointsOf(piece, foot) as [Pair, Pair];
      expectClose(apart(...base), SIDES * diameter * Math.sin(X));
      expectShortOf(expected.stretch_out, apart(...base), (X * X) / 6);
      for (const [k, degrees] of rowOf('C1', 'inputs', 'theta_deg').entries()) {
        const i = (degrees * SIDES) / 360;
        const tops = flatPointsOf(piece, SIDES + i);
        for (const top of tops) expectClose(fromLine(top, base), height + (diameter / 2) * Math.cos(degrees / DEG));
        expect(Math.abs(fromLine(tops[0], base) - ordinates[k])).toBeLessThan(1e-5);
        // Distance along the base from the slit that corner i stands on: i chords.
        const [low] = flatPointsOf(piece, foot + i);
        const along = Math.min(...base.map((end) => apart(end, low)));
        expect(Math.abs(along - i * diameter * Math.sin(X))).toBeLessThan(1e-6 * diameter);
        if (i > 0) expectShortOf(distances[k], along, (X * X) / 6);
      }
      expectUnstretched(piece);
    }
  });

  it('closes on its cut without a difference', () => {
    const [joint] = report.seams.filter((seam) => new Set(seam.pieces).size === 2);
    const rim = cutEdge(diameter / 2, diameter / 2);
    for (const length of [...joint.lengthMm, joint.trueLengthMm]) expectClose(length, rim);
    expect(joint.differenceMm).toBeLessThan(1e-6);
    expect(joint.worstMisalignmentMm).toBeLessThan(1e-6);
  });
});

describe('truncated cylinder C3', () => {
  const { inputs, expected } = numbersOf('C3');
  const { diameter, h_min: low, h_max: high } = inputs;
  const [mean, swing] = [(low + high) / 2, (high - low) / 2];
  let piece: ReportPiece;
  beforeAll(async () => {
    const { pieces } = await layFlat(
      tube(SIDES, diameter / 2, diameter / 2, (angle) => mean + swing * Math.cos(angle)),
    );
    expect(pieces).toHaveLength(1);
    [piece] = pieces;
  });

  it('has the lateral area of the handbook', () => {
    // The cosines of evenly spread corners add up to nothing: mean height times the width of all sides.
    expectClose(piece.flatAreaMm2, SIDES * diameter * Math.sin(X) * mean);
    expectShortOf(expected.area, piece.flatAreaMm2, (X * X) / 6);
    expectUnstretched(piece);
  });

  it('has the cut edge and the cut angle of the handbook', () => {
    const tops = Array.from({ length: SIDES }, (_, i) => flatPointsOf(piece, SIDES + i));
    let edge = 0;
    for (let i = 0; i < SIDES; i += 1) {
      const gaps = tops[i].flatMap((p) => tops[(i + 1) % SIDES].map((q) => apart(p, q)));
      edge += Math.min(...gaps);
    }
    expectClose(edge, cutEdge(diameter / 2, swing));
    expectShortOf(expected.cut_edge_length, edge, cutEdgeShortfall(diameter / 2, swing));
    const fall = fromLine(tops[0][0], flatPointsOf(piece, 0) as [Pair, Pair]);
    const rise = fromLine(tops[SIDES / 2][0], flatPointsOf(piece, 0) as [Pair, Pair]);
    expectClose(Math.atan2(fall - rise, diameter) * DEG, expected.cut_angle_deg);
  });
});

/** Length of the polygon r cos, r sin, swing cos over its corners, mm. */
function cutEdge(radius: number, swing: number): number {
  const corner = (i: number): number[] => {
    const angle = 2 * X * i;
    return [radius * Math.cos(angle), radius * Math.sin(angle), swing * Math.cos(angle)];
  };
  let length = 0;
  for (let i = 0; i < SIDES; i += 1) {
    const [p, q] = [corner(i), corner(i + 1)];
    length += Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]);
  }
  return length;
}

/**
 * Share by which chords over equal steps h of a curve r(t) are short: (h² / 24) ∫ |r' × r''|² / |r'|³ dt over its length. Here the cross
 * product is constant, r hypot(r, swing), and |r'|² = r² + swing² sin² t. The integrals are taken by the midpoint rule, which is exact
 * to rounding for periodic functions.
 */
function cutEdgeShortfall(radius: number, swing: number): number {
  const steps = 720;
  const cross2 = radius ** 2 * (radius ** 2 + swing ** 2);
  let bend = 0;
  let length = 0;
  for (let i = 0; i < steps; i += 1) {
    const speed = Math.sqrt(radius ** 2 + (swing * Math.sin((2 * Math.PI * (i + 0.5)) / steps)) ** 2);
    length += speed;
    bend += cross2 / speed ** 3;
  }
  const h = 2 * X;
  return ((h * h) / 24) * (bend / length);
}
