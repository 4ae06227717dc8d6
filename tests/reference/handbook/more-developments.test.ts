import { describe, expect, it } from 'vitest';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { angleDefect, unfold } from '../../../src/steps/flatten/unfold.ts';
import { onePatch } from '../../steps/flatten/flatten-support.ts';
import { capMesh } from '../../steps/flatten/hostile-meshes.ts';
import { meshOf } from '../../support/meshes.ts';
import type { Pair } from '../report-shape.ts';
import { numbersOf, rowOf } from './cases.ts';
import { angleAt, apart, flatPointsOf, fromLine, layFlat } from './flat-figures.ts';
import { cone, gutter, tube } from './polygon-solids.ts';

const SIDES = 144; // a multiple of 24, so that the handbook's 15 degree steps are corners
const X = Math.PI / SIDES;
const DEG = 180 / Math.PI;

describe('disc with a wedge removed A4', () => {
  const { inputs, expected } = numbersOf('A4');

  it('is what the cone of the handbook is laid out to', async () => {
    const { base_radius: radius, height } = expected;
    const {
      pieces: [piece],
    } = await layFlat(cone(SIDES, radius, height));
    const [apex] = flatPointsOf(piece, SIDES);
    const [p, q] = flatPointsOf(piece, 0);
    // Published radius and height are rounded to six decimals.
    expect(Math.abs(apart(apex, p) - inputs.disc_radius)).toBeLessThan(2e-6);
    const sine = radius / Math.hypot(radius, height);
    // Facets take 2 asin(sine sin x) each; their sum over 180 degrees is seen from the other side.
    const sector = SIDES * 2 * Math.asin(sine * Math.sin(X));
    expect(Math.abs(angleAt(apex, p, q) - (2 * Math.PI - sector))).toBeLessThan(1e-8);
    const wedge = angleAt(apex, p, q) * DEG;
    const wider = ((1 - sine * sine) * X * X * (360 - inputs.wedge_deg)) / 6;
    expect(Math.abs(wedge - inputs.wedge_deg - wider)).toBeLessThan(1e-5);
  });
});

describe('branch on a round body C4', () => {
  const { inputs } = numbersOf('C4');
  const { body_radius: body, branch_radius: branch } = inputs;

  it('has the ordinates of the handbook along its cope', async () => {
    const free = 120; // from the axis of the body to the free end of the branch, mm
    const saddle = (angle: number): number => Math.sqrt(body ** 2 - (branch * Math.sin(angle)) ** 2);
    const {
      pieces: [piece],
    } = await layFlat(tube(SIDES, branch, branch, (angle) => free - saddle(angle)));
    const foot = flatPointsOf(piece, 0) as [Pair, Pair];
    for (const [k, degrees] of rowOf('C4', 'inputs', 'theta_deg').entries()) {
      const height = rowOf('C4', 'expected', 'height_of_saddle')[k];
      for (const top of flatPointsOf(piece, SIDES + (degrees * SIDES) / 360))
        expect(Math.abs(free - fromLine(top, foot) - height)).toBeLessThan(1e-6);
    }
    expect(piece.stretchPct.max).toBeLessThan(1e-6);
  });
});

describe('arc from chord and rise K1', () => {
  const { inputs, expected } = numbersOf('K1');

  it('is as long when it is laid flat as the handbook says', async () => {
    const { chord, sagitta } = inputs;
    const radius = chord ** 2 / (8 * sagitta) + sagitta / 2;
    expect(Math.abs(radius - expected.radius)).toBeLessThan(1e-6);
    const angle = expected.angle_deg / DEG;
    const {
      pieces: [piece],
    } = await layFlat(gutter(SIDES, radius, angle, 80));
    const width = apart(flatPointsOf(piece, 0)[0], flatPointsOf(piece, SIDES)[0]);
    const half = angle / SIDES / 2;
    expect(Math.abs(width / (SIDES * 2 * radius * Math.sin(half)) - 1)).toBeLessThan(1e-6);
    // Chords are short by half² / 6.
    expect(Math.abs(width / expected.arc_length - (1 - (half * half) / 6))).toBeLessThan(1e-8);
  });
});

describe('flat ring in segments H1', () => {
  const { inputs, expected } = numbersOf('H1');
  const { outer_radius: outer, inner_radius: inner, segments } = inputs;

  it('comes out in the segments of the handbook', async () => {
    const ring = tube(SIDES, outer, inner, () => 0);
    const seams = Array.from({ length: segments }, (_, k): [number, number] => [
      (k * SIDES) / segments,
      SIDES + (k * SIDES) / segments,
    ]);
    const { pieces } = await layFlat({ ...ring, seams });
    expect(pieces).toHaveLength(segments);
    let area = 0;
    for (const piece of pieces) {
      area += piece.flatAreaMm2;
      const ends = seams.flat().filter((corner) => flatPointsOf(piece, corner).length > 0);
      const [large, small] = [ends.filter((v) => v < SIDES), ends.filter((v) => v >= SIDES)].map((pair) =>
        pair.map((corner) => flatPointsOf(piece, corner)[0]),
      );
      expect(Math.abs(apart(large[0], large[1]) - expected.segment_outer_chord)).toBeLessThan(1e-6);
      expect(Math.abs(apart(small[0], small[1]) - expected.segment_inner_chord)).toBeLessThan(1e-6);
      // From the inner chord to the crown of the outer arc, which is a corner of this ring.
      const heights = piece.neutralOutlineMm.map((point) => fromLine(point, [small[0], small[1]]));
      expect(Math.abs(Math.max(...heights) - expected.segment_bounding_height)).toBeLessThan(1e-6);
    }
    // A polygon's area is r² n sin(2x) / 2: short of pi r² by (2x)² / 6.
    expect(Math.abs(area / expected.ring_area - (1 - (2 * X) ** 2 / 6))).toBeLessThan((2 * X) ** 4);
  });
});

describe('what keeps a shape from lying flat', () => {
  it('is the missing sector at the tip of a cone N2', () => {
    const { inputs, expected } = numbersOf('N2');
    const { corners, faces } = cone(SIDES, inputs.base_radius, inputs.height);
    const mesh = meshOf(corners, faces);
    const patch = onePatch(mesh);
    const rest = restShapes(patch, mesh.positions);
    const missing = angleDefect(rest, patch.loops) * DEG;
    const sine = inputs.base_radius / Math.hypot(inputs.base_radius, inputs.height);
    expect(Math.abs(missing - (360 - SIDES * 2 * Math.asin(sine * Math.sin(X)) * DEG))).toBeLessThan(1e-9);
    const more = ((1 - sine * sine) * X * X * 360 * sine) / 6;
    expect(Math.abs(missing - expected.defect_deg - more)).toBeLessThan(1e-5);
    // Unslit it does not close: rolled out from one facet the last misses the first.
    expect(unfold(rest, graphOfTriangles(rest.vertexCount, patch.triangles)).gap).toBeGreaterThan(0.1);
  });

  it('is 2 pi (1 - cos a) over a cap E5', () => {
    const { inputs, expected } = numbersOf('E5');
    const rings = 40;
    const half = inputs.cap_half_angle_deg / DEG;
    const mesh = capMesh(half, rings, SIDES);
    const patch = onePatch(mesh);
    const rest = restShapes(patch, mesh.positions);
    // The border has none of its own: what is counted ends half a ring inside, at a - a / 2 rings.
    const inside = 360 * (1 - Math.cos(half * (1 - 0.5 / rings)));
    const missing = angleDefect(rest, patch.loops) * DEG;
    expect(Math.abs(missing / inside - 1)).toBeLessThan((half / rings) ** 2 + X * X);
    expect(Math.abs(missing / expected.integrated_curvature_deg - 1)).toBeLessThan(1.1 / rings);
    // Triangles with corners on the ball are smaller than it: x² 2 / 3 round, (a / rings)² / 12 or so outward.
    expect(rest.totalArea).toBeLessThan(expected.cap_area);
    expect(rest.totalArea / expected.cap_area).toBeGreaterThan(1 - X * X - (half / rings) ** 2 / 4);
  });
});
