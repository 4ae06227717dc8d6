import { describe, expect, it } from 'vitest';
import { foamId, layerId } from '../../src/base/ids.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { surfaceOf } from '../../src/mesh/surface.ts';
import type { BodyTie } from '../../src/model/body-measures.ts';
import type { SourceModel } from '../../src/model/source-model.ts';
import { resizedFinding, scaleByBody, type SizedByBody } from '../../src/pipeline/body-size.ts';
import { readModel } from '../../src/steps/read/read-model.ts';
import { offsetsOf } from '../../src/steps/shell/mesh-offsets.ts';
import { backAtScale } from '../../src/steps/wear/scale-to-body.ts';
import { measureTape } from '../../src/steps/wear/tape.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { meshOf } from '../support/meshes.ts';

const THICK_MM = 10;
const part = (height: number, modelIs: SizedByBody['modelIs'] = 'face'): SizedByBody => ({
  modelIs,
  layers: [
    { id: layerId('l'), foam: foamId('f'), thicknessMm: THICK_MM, neutralFraction: 0.5 } as SizedByBody['layers'][0],
  ],
  tapes: [{ id: 'tape-1', name: 'Tape', pointInFile: [0, 0, height], normal: [0, 0, 1] }],
});
const TIE: BodyTie = { measure: 'forearm-girth', easeMm: 15, at: { by: 'tape', tape: 'tape-1' } };
const ARM = [{ name: 'forearm-girth', mm: 280 }];

/** An open tube of `sides` flat sides in units of the file, its rings given by half axes and height. */
function tube(sides: number, rings: readonly (readonly [a: number, b: number, z: number])[]): Mesh {
  const points = rings.flatMap(([a, b, z]) =>
    Array.from({ length: sides }, (_, i) => {
      const angle = (2 * Math.PI * i) / sides;
      return [a * Math.cos(angle), b * Math.sin(angle), z] as const;
    }),
  );
  const faces = rings.slice(1).flatMap((_, j) =>
    Array.from({ length: sides }, (__, i) => {
      const next = (i + 1) % sides;
      return [j * sides + i, j * sides + next, (j + 1) * sides + next, (j + 1) * sides + i];
    }),
  );
  return meshOf(points, faces);
}

const modelOf = async ({ positions, triangles }: Mesh): Promise<SourceModel> => {
  const lines: string[] = [];
  for (let v = 0; v < positions.length; v += 3) lines.push(`v ${positions.slice(v, v + 3).join(' ')}`);
  for (let t = 0; t < triangles.length; t += 3)
    lines.push(`f ${[...triangles.slice(t, t + 3)].map((v) => v + 1).join(' ')}`);
  return expectOk(await readModel(new TextEncoder().encode(lines.join('\n')), 'tube.obj', QUIET_WORK));
};

/** The tape inside the foam of a sculpt of a scale. */
function insideGirth(mesh: Mesh, scale: number, backMm: number, height: number): number {
  const directions = runAtOnce(offsetsOf(mesh)).directions;
  const sculpt = surfaceOf(mesh);
  const back = { ...sculpt, positions: backAtScale({ sculpt, directions, backMm }, scale) };
  return measureTape(back, { point: { x: 0, y: 0, z: scale * height }, normal: { x: 0, y: 0, z: 1 } })?.girthMm ?? NaN;
}

describe('a part that follows the body', () => {
  it('is a cylinder whose inside is body and ease: closed form', async () => {
    const sides = 64;
    const model = await modelOf(
      tube(sides, [
        [3, 3, 0],
        [3, 3, 10],
      ]),
    );
    // A polygon round a circle of radius r is 2 n tan(π/n) r long; its sides stand 10 mm farther in than the sculpt's.
    const round = 2 * sides * Math.tan(Math.PI / sides);
    const apothem = 3 * Math.cos(Math.PI / sides);
    for (const [modelIs, inward] of [
      ['face', 10],
      ['middle', 5],
      ['back', 0],
    ] as const)
      expect(expectOk(scaleByBody(model, TIE, ARM, part(5, modelIs)))).toBeCloseTo((295 / round + inward) / apothem, 9);
    // Twice the body is not twice the sculpt: the wall stays.
    const twice = expectOk(scaleByBody(model, TIE, [{ name: 'forearm-girth', mm: 575 }], part(5)));
    expect(twice).toBeCloseTo((590 / round + 10) / apothem, 9);
  });

  it('is a frustum by the wall that leans', async () => {
    const sides = 64;
    const mesh = tube(sides, [
      [4, 4, 0],
      [2, 2, 6],
    ]);
    const cos = Math.cos(Math.PI / sides);
    const lean = Math.atan((2 * cos) / 6);
    const round = 2 * sides * Math.tan(Math.PI / sides);
    const scale = expectOk(scaleByBody(await modelOf(mesh), TIE, ARM, part(3)));
    // Half way up the apothem is 3 cos(π/n); the back lies 10 mm off square to the wall, so 10 / cos lean across.
    expect(scale).toBeCloseTo((295 / round + THICK_MM / Math.cos(lean)) / (3 * cos), 6);
  });

  it('is a tube like an ellipse by Steiner, the nearer the more sides', async () => {
    const off: number[] = [];
    for (const sides of [32, 64, 128]) {
      const mesh = tube(sides, [
        [4, 3, 0],
        [4, 3, 8],
      ]);
      const scale = expectOk(scaleByBody(await modelOf(mesh), TIE, ARM, part(4)));
      expect(insideGirth(mesh, scale, -THICK_MM, 4)).toBeCloseTo(295, 6);
      const girth =
        measureTape(surfaceOf(mesh), { point: { x: 0, y: 0, z: 4 }, normal: { x: 0, y: 0, z: 1 } })?.girthMm ?? NaN;
      off.push(Math.abs(scale - (295 + 2 * Math.PI * THICK_MM) / girth));
    }
    for (const i of [0, 1]) expect(Math.log2(off[i] / off[i + 1])).toBeGreaterThan(1.8);
  });

  it('is as long as a share of a length, in proportion', async () => {
    const model = await modelOf(
      tube(8, [
        [1, 1, 0],
        [1, 1, 20],
      ]),
    );
    const tie: BodyTie = { measure: 'height', easeMm: -30, at: { by: 'extent', axis: 'z', share: 0.9 } };
    const sized = scaleByBody(model, tie, [{ name: 'height', mm: 1800 }], part(5));
    expect(expectOk(sized)).toBeCloseTo((0.9 * 1800 - 30) / 20, 12);
    expect(sized.ok && sized.notes.map(({ code }) => code)).toEqual(['size/by-body']);
  });

  it('tells a reading that is out of the usual, and takes it', async () => {
    const model = await modelOf(
      tube(16, [
        [3, 3, 0],
        [3, 3, 10],
      ]),
    );
    const sized = scaleByBody(model, TIE, [{ name: 'forearm-girth', mm: 28 * 25.4 }], part(5));
    expect(sized.ok && sized.notes.map(({ code }) => code)).toEqual(['body/unusual', 'size/by-body']);
  });

  it('says what is missing', async () => {
    const model = await modelOf(
      tube(16, [
        [3, 3, 0],
        [3, 3, 10],
      ]),
    );
    expectProblem(scaleByBody(model, TIE, [], part(5)), 'size/no-measure');
    expectProblem(scaleByBody(model, TIE, ARM, { ...part(5), tapes: [] }), 'size/no-tape');
    expectProblem(scaleByBody(model, TIE, ARM, part(50)), 'size/no-fit');
    expectProblem(scaleByBody(model, { ...TIE, easeMm: -400 }, ARM, part(5)), 'size/no-fit');
    const flat = { ...TIE, at: { by: 'extent', axis: 'z', share: 1 } } as const;
    expectProblem(
      scaleByBody({ ...model, positions: model.positions.map((x, i) => (i % 3 === 2 ? 0 : x)) }, flat, ARM, part(5)),
      'size/flat',
    );
  });

  it('tells what a new measure made of it', () => {
    expect(resizedFinding('Bracer', 240, 252.34)[0].text).toBe(
      'Bracer follows the body: 240.0 mm long before, 252.3 mm now.',
    );
    expect(resizedFinding('Bracer', 240, 240.01)).toEqual([]);
  });
});
