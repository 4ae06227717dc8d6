import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ModelIs } from '../../src/model/shell-layer.ts';
import type { ModelUnit } from '../../src/model/source-model.ts';
import { IS_LONG } from '../support/long.ts';
import { expectHonest } from './expect-honest.ts';
import { runChain } from './run-chain.ts';
import { chooseSeams } from './seams/choose-seams.ts';
import { piecesOf } from './seams/cut-surface.ts';
import { seamFileText } from './seams/seam-file-text.ts';
import { surfaceFromObj, type Surface } from './seams/surface.ts';
import { REAL_MODELS, SHAPES, type TestModel } from './seams/test-models.ts';
import { modelBytes, runModel, seamsOf } from './test-model-chain.ts';

const textOf = (file: string): string => readFileSync(new URL(file, import.meta.url), 'utf8');

interface SculptEntry {
  readonly objFile: string;
  readonly seamFile: string;
  readonly unit: ModelUnit;
  readonly thickness: number;
  readonly modelIs: ModelIs;
}

/** The sculpts among the samples the app opens with, as their list describes them. */
const SAMPLES = (JSON.parse(textOf('../../samples/samples.json')) as readonly (SculptEntry | object)[]).filter(
  (entry): entry is SculptEntry => 'objFile' in entry,
);

/** Those that are tried every day: a real model, and of the shapes the smaller ones. */
const DAILY = ['hand_lowres', 'bracer_cone', 'hammer', 'helmet_low', 'horn'];
const isTried = ({ name }: TestModel): boolean => IS_LONG || DAILY.includes(name);

const surfaceOf = (model: TestModel): Surface => surfaceFromObj(textOf(model.modelFile));

/** Triangles of the pieces the kept seams leave, and whether each is a disc, counted without the product. */
function piecesBySeams(surface: Surface, seams: readonly (readonly [number, number])[]) {
  const isSeam = new Set(seams.map(([v, w]) => `${v} ${w}`));
  const pieces = piecesOf(
    surface,
    Uint8Array.from(surface.edges, ({ v, w }) => (isSeam.has(`${v} ${w}`) ? 1 : 0)),
  );
  return pieces.map(({ euler, borders, faces }) => ({
    isDisc: euler === 1 && borders.length === 1,
    triangles: faces.reduce((sum, f) => sum + surface.faces[f].length - 2, 0),
  }));
}

const ascending = (numbers: readonly number[]): number[] => [...numbers].sort((a, b) => a - b);

describe.each([...REAL_MODELS, ...SHAPES].filter(isTried))('seams of $name', (model) => {
  const surface = surfaceOf(model);

  it('are what the chooser gives', () => {
    expect(seamFileText(chooseSeams(surface, model.choice))).toBe(textOf(model.seamFile));
  });

  it('lay every piece flat, told as it is', async () => {
    const expected = piecesBySeams(surface, seamsOf(model));
    expect(expected.every((piece) => piece.isDisc)).toBe(true);
    const { report } = await runModel(model);
    expect(ascending(report.pieces.map((piece) => piece.flat.triangles.length))).toEqual(
      ascending(expected.map((piece) => piece.triangles)),
    );
    expectHonest(modelBytes(model), report);
  });
});

describe.each(SHAPES.filter(isTried).filter(({ name }) => !['bracer_cone', 'hammer'].includes(name)))(
  'uncut $name',
  (model) => {
    it('lies flat in one piece, however much it stretches', async () => {
      const { report } = await runModel(model, { seams: [] });
      expect(report.pieces).toHaveLength(1);
      expectHonest(modelBytes(model), report);
    });
  },
);

describe.each(SAMPLES)('sample $objFile', ({ objFile, seamFile, unit, thickness, modelIs }) => {
  it.each(IS_LONG || objFile === 'bracer.obj' ? ([modelIs, 'middle'] as const) : [modelIs])(
    'lies flat as it is told when the model is the %s of the foam',
    async (side) => {
      const bytes = readFileSync(new URL(`../../samples/${objFile}`, import.meta.url));
      const { edges } = JSON.parse(textOf(`../../samples/${seamFile}`)) as { edges: [number, number][] };
      const { report } = await runChain({
        fileName: objFile,
        bytes,
        seams: edges,
        scale: { by: 'unit', unit },
        thicknessMm: thickness,
        modelIs: side,
        neutralFraction: 0.5,
      });
      expectHonest(bytes, report);
      expect(report.pieces.filter((piece) => piece.overlaps > 0)).toEqual([]);
    },
  );
});

describe('foam on the outside of a model', () => {
  it.each(REAL_MODELS.filter(({ name }) => name === 'hand_lowres' || (IS_LONG && name === 'wingnut')))(
    'of $name is told as it is',
    async (model) => {
      const { report } = await runModel(model, { modelIs: 'back', neutralFraction: 0.4 });
      expectHonest(modelBytes(model), report);
    },
  );
});
