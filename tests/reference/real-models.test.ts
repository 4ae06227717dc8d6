import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectHonest } from './expect-honest.ts';
import { chooseSeams } from './seams/choose-seams.ts';
import { piecesOf } from './seams/cut-surface.ts';
import { seamFileText } from './seams/seam-file-text.ts';
import { surfaceFromObj } from './seams/surface.ts';
import { REAL_MODELS, SHAPES, type TestModel } from './seams/test-models.ts';
import { modelBytes, runModel, seamsOf } from './test-model-chain.ts';

const textOf = (file: string): string => readFileSync(new URL(file, import.meta.url), 'utf8');

/** Pieces the kept seams leave, counted without the product. */
function piecesBySeams(model: TestModel): ReturnType<typeof piecesOf> {
  const surface = surfaceFromObj(textOf(model.modelFile));
  const seams = new Set(seamsOf(model).map(([v, w]) => `${v} ${w}`));
  return piecesOf(
    surface,
    Uint8Array.from(surface.edges, ({ v, w }) => (seams.has(`${v} ${w}`) ? 1 : 0)),
  );
}

describe.each([...REAL_MODELS, ...SHAPES])('seams of $name', (model) => {
  it('are what the chooser gives', () => {
    const surface = surfaceFromObj(textOf(model.modelFile));
    expect(seamFileText(chooseSeams(surface, model.choice))).toBe(textOf(model.seamFile));
  });

  it('lay every piece flat, told as it is', async () => {
    const expected = piecesBySeams(model);
    expect(expected.every((piece) => piece.euler === 1 && piece.borders.length === 1)).toBe(true);
    const { report } = await runModel(model);
    expect(report.pieces).toHaveLength(expected.length);
    expect(report.pieces.map((piece) => piece.flat.triangles.length).sort()).toEqual(
      expected.map((piece) => trianglesOf(model, piece.faces)).sort(),
    );
    expectHonest(modelBytes(model), report);
  });
});

function trianglesOf(model: TestModel, faces: readonly number[]): number {
  const surface = surfaceFromObj(textOf(model.modelFile));
  return faces.reduce((sum, f) => sum + surface.faces[f].length - 2, 0);
}

describe.each(SHAPES.filter(({ name }) => !['bracer_cone', 'hammer'].includes(name)))('uncut $name', (model) => {
  it('lies flat in one piece, however much it stretches', async () => {
    const { report } = await runModel(model, { seams: [] });
    expect(report.pieces).toHaveLength(1);
    expectHonest(modelBytes(model), report);
  });
});

describe('foam on the outside of a model', () => {
  it.each(['hand_lowres', 'wingnut'])('of %s is told as it is', async (name) => {
    const model = REAL_MODELS.find((candidate) => candidate.name === name);
    if (model === undefined) throw new Error(name);
    const { report } = await runModel(model, { modelIs: 'back', neutralFraction: 0.4 });
    expectHonest(modelBytes(model), report);
  });
});
