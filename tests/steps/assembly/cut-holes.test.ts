import { describe, expect, it } from 'vitest';
import { deg, pointAt3, rad, vec3 } from '../../../src/geom/vec.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import { cutHoles, type ShellSurfaces } from '../../../src/steps/assembly/cut-holes.ts';
import { enteringCore, enteringPart, type RoundCore } from '../../../src/steps/assembly/entering.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { boxMesh, tubeMesh } from '../../support/meshes.ts';
import { ballMesh, sheetMesh } from '../../support/round-meshes.ts';

const core = (over: Partial<RoundCore> = {}): RoundCore => ({
  name: 'the handle',
  point: vec3(0, 0, 0),
  direction: vec3(0, 0, 1),
  diameterMm: 40,
  fromMm: -500,
  toMm: 500,
  ...over,
});

/** A plate in the plane z = 0 with its back at -t. */
function plate(t: number, cells = 6): ShellSurfaces {
  const surface = surfaceOf(sheetMesh(cells, cells, 400, 400));
  const at = (z: number): Surface => ({
    ...surface,
    positions: surface.positions.map((value, i) => (i % 3 === 2 ? z : value - 200.3)),
  });
  return { face: at(0), neutral: at(-t / 2), back: at(-t) };
}

describe('cutHoles', () => {
  it('cuts an ellipse into a plate, with the bevel of closed form all round: sin = sin(tilt) cos(place)', () => {
    for (const tilt of [0, 20, 40]) {
      const direction = vec3(Math.sin(rad(tilt)), 0, Math.cos(rad(tilt)));
      const { holes, findings } = cutHoles(plate(10), expectOk(enteringCore(core({ direction }), 0.5)), 45);
      expect(findings).toEqual([]);
      expect(holes.length).toBe(1);
      const [{ face, back, neutral, bevelDeg, leastBevelDeg, greatestBevelDeg }] = holes;
      expect(neutral?.closed).toBe(true);
      const a = 20.5 / Math.cos(rad(tilt));
      for (let i = 0; i < face.points.length; i += 1) {
        const { x, y, z } = pointAt3(face.places, i);
        expect(z).toBeCloseTo(0, 12);
        // On the ellipse within the flats of the core: 20.5 (1 - cos(half a degree)) = 0.0008 mm.
        expect(Math.abs(Math.hypot((x / a) * 20.5, y) - 20.5)).toBeLessThan(0.0008);
        // The wall at azimuth p round the core: its normal has (cos p cos tilt, sin p, -cos p sin tilt).
        const p = Math.atan2(y, x * Math.cos(rad(tilt)));
        expect(bevelDeg[i]).toBeCloseTo(deg(Math.asin(-Math.cos(p) * Math.sin(rad(tilt)))), 6);
      }
      expect(leastBevelDeg).toBeCloseTo(-tilt, 1);
      expect(greatestBevelDeg).toBeCloseTo(tilt, 1);
      // The back's line is the face's, moved along the core: by t tan(tilt) to the side.
      const middle = (places: Float64Array): number => {
        let [low, high] = [Infinity, -Infinity];
        for (let i = 0; i < places.length; i += 3) [low, high] = [Math.min(low, places[i]), Math.max(high, places[i])];
        return (low + high) / 2;
      };
      expect(middle(back?.places ?? new Float64Array(3)) - middle(face.places)).toBeCloseTo(
        -10 * Math.tan(rad(tilt)),
        2,
      );
    }
  });

  it('tells of a lean beyond the blade, and of a wall along another direction', () => {
    const direction = vec3(Math.sin(rad(50)), 0, Math.cos(rad(50)));
    const { findings } = cutHoles(plate(10), expectOk(enteringCore(core({ direction }), 0)), 45);
    expect(findings.map(({ code }) => code)).toEqual(['assembly/too-steep']);
    expect(findings[0].value).toBeCloseTo(50, 1);
    const straight = {
      ...expectOk(enteringCore(core({ direction }), 0)),
      wall: { kind: 'along', direction: vec3(0, 0, 1) },
    } as const;
    const square = cutHoles(plate(10), straight, 45);
    expect(square.holes[0].greatestBevelDeg).toBeCloseTo(0, 9);
    expect(square.findings).toEqual([]);
  });

  it('cuts the saddle of a branch into a tube; the line comes true with the square of the fineness', () => {
    // Tube of radius 50 round z, branch of radius 20 along x: with p round the branch y = 20 cos p, z = 20 sin p, x = sqrt(50² - y²).
    const errors = [24, 48, 96, 192].map((sides) => {
      const mesh = tubeMesh(sides, 50, 200, Math.ceil(sides / 6));
      const surface = surfaceOf(mesh);
      const shell = { face: surface, neutral: surface, back: surface };
      const branch = core({ point: vec3(0, 0, 100.3), direction: vec3(1, 0, 0), fromMm: 0 });
      const { holes } = cutHoles(shell, expectOk(enteringCore(branch, 0)), 45);
      expect(holes.length).toBe(1);
      const [{ face, bevelDeg }] = holes;
      let [worst, lean] = [0, 0];
      for (let i = 0; i < face.points.length; i += 1) {
        const { x, y, z } = pointAt3(face.places, i);
        worst = Math.max(worst, Math.abs(x - Math.sqrt(2500 - y * y)));
        expect(Math.abs(Math.hypot(y, z - 100.3) - 20)).toBeLessThan(0.0008);
        // The tube's normal is (x, y, 0) / 50, the branch's (0, y, z) / 20.
        lean = Math.max(lean, Math.abs(bevelDeg[i] - deg(Math.asin((y * y) / 50 / Math.hypot(y, z - 100.3)))));
      }
      return { worst, lean };
    });
    for (let i = 1; i < errors.length; i += 1) {
      expect(errors[i - 1].worst / errors[i].worst).toBeGreaterThan(3);
      expect(errors[i].lean).toBeLessThan(errors[i - 1].lean);
    }
    expect(errors[3].worst).toBeLessThan(0.01);
    expect(errors[3].lean).toBeLessThan(0.05);
  });

  it('cuts a circle into a ball on its axis, with one bevel all round: sin = -r / R', () => {
    const errors = [2, 3, 4].map((level) => {
      const ball = surfaceOf(ballMesh(level, 60));
      const { holes } = cutHoles(
        { face: ball, neutral: ball, back: ball },
        expectOk(enteringCore(core({ fromMm: 0, diameterMm: 50 }), 0)),
        45,
      );
      const [{ face, bevelDeg }] = holes;
      let [worst, lean] = [0, 0];
      const wanted = deg(Math.asin(25 / 60));
      for (let i = 0; i < face.points.length; i += 1) {
        worst = Math.max(worst, Math.abs(face.places[3 * i + 2] - Math.sqrt(3600 - 625)));
        lean = Math.max(lean, Math.abs(bevelDeg[i] - wanted));
      }
      return { worst, lean };
    });
    expect(errors[0].worst / errors[1].worst).toBeGreaterThan(2.8);
    expect(errors[1].worst / errors[2].worst).toBeGreaterThan(2.8);
    expect(errors[2].lean).toBeLessThan(0.3);
  });

  it('lets any part in, with room; tells what does not come through', () => {
    const box = boxMesh(30, 20, 40);
    const lowered = { ...box, positions: box.positions.map((value, i) => value - [15, 10, 20][i % 3]) };
    const { holes, findings } = cutHoles(plate(10), expectOk(enteringPart('the block', lowered, 1)), 45);
    expect(holes[0].lengthMm).toBeCloseTo(2 * (32 + 22), 9);
    expect(holes[0].greatestBevelDeg).toBeCloseTo(0, 9);
    expect(findings).toEqual([]);
    const shallow = { ...box, positions: box.positions.map((value, i) => value - [15, 10, 4][i % 3]) };
    const blind = cutHoles(plate(10), expectOk(enteringPart('the block', shallow, 0)), 45);
    expect(blind.findings.map(({ code }) => code)).toEqual(['assembly/not-through']);
    const under = { ...box, positions: box.positions.map((value, i) => value - [15, 10, 43][i % 3]) };
    expect(
      cutHoles(plate(10), expectOk(enteringPart('the block', under, 0)), 45).findings.map(({ code }) => code),
    ).toEqual(['assembly/only-back']);
  });

  it('refuses a core without size', () => {
    for (const bad of [{ diameterMm: 0 }, { diameterMm: NaN }, { direction: vec3(0, 0, 0) }, { fromMm: 5, toMm: 5 }])
      expectProblem(enteringCore(core(bad), 0), 'assembly/core');
    expectProblem(enteringCore(core(), -1), 'assembly/core');
    expectProblem(enteringPart('x', boxMesh(1), NaN), 'assembly/core');
  });
});
