import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { boxOfPoints, ringArea, ringLength } from '../../src/geom/ring.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import type { ModelIs } from '../../src/model/shell-layer.ts';
import { makeMockUp, mockUpPdf } from '../../src/pipeline/mock-up.ts';
import { checkMockUp, type MockUp } from '../../src/project/mock-up.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { readPdf } from '../support/read-pdf.ts';
import { madeSample, testFont } from '../support/run-sample.ts';
import { block, solidProject, type PartChange } from '../support/run-solid.ts';

const DATE = '2026-01-01';
const QUARTER: MockUp = { times: 4, cardMm: 0.5 };

async function cardPieces(solid: Solid, mockUp: MockUp, change?: PartChange): Promise<readonly FoamPiece[]> {
  const { project, pipeline } = await solidProject(solid, change);
  const outcome = await pipeline.run(project, QUIET_WORK);
  return expectOk(await makeMockUp(pipeline, outcome, mockUp, DATE, QUIET_WORK)).outcome.pieces!;
}

const SIDES = 24;

/** A frustum without ends, one seam down it; a tube where both radii are one. */
function frustum(low: number, high: number, height: number): Solid {
  const ring = (radius: number, y: number): [number, number, number][] =>
    Array.from({ length: SIDES }, (_, i) => {
      const angle = (2 * Math.PI * i) / SIDES;
      return [radius * Math.sin(angle), y, radius * Math.cos(angle)];
    });
  return {
    corners: [...ring(low, 0), ...ring(high, height)],
    faces: Array.from({ length: SIDES }, (_, i) => {
      const next = (i + 1) % SIDES;
      return [i, next, SIDES + next, SIDES + i];
    }),
    seams: [[0, SIDES]],
  };
}

describe('pieces of card', () => {
  it.each([
    // Edges touch on the inside of every fold, a thickness inside the face on both sides.
    ['face', 200 / 4 - 2 * 0.5],
    ['back', 200 / 4],
  ] as const)('are squares that close where the model of a cube is the %s', async (modelIs: ModelIs, side) => {
    const pieces = await cardPieces(block([0, 0, 0], [200, 200, 200]), QUARTER, (part) => ({ ...part, modelIs }));
    expect(pieces.length).toBe(6);
    for (const { outline, otherOutline, edges } of pieces) {
      for (const ring of [outline, otherOutline]) {
        const { minX, minY, maxX, maxY } = boxOfPoints(ring);
        expect(maxX - minX).toBeCloseTo(side, 6);
        expect(maxY - minY).toBeCloseTo(side, 6);
        expect(Math.abs(ringArea(ring))).toBeCloseTo(side ** 2, 5);
      }
      for (const { bevelDeg, allowanceMm } of edges) {
        expect(Math.max(...Array.from(bevelDeg, Math.abs))).toBeLessThan(1e-6);
        expect(allowanceMm).toBe(0);
      }
    }
  });

  it('are the fan of a cone', async () => {
    const [low, high, height, times, card] = [160, 60, 240, 4, 0.8];
    const [{ outline }] = await cardPieces(frustum(low, high, height), { times, cardMm: card });
    // A corner moves in its own plane through the axis so that both facets beside it move by half the card.
    const cos = Math.cos(Math.PI / SIDES);
    const lean = Math.atan(((low - high) * cos) / height);
    const normal = { across: Math.cos(lean) * cos, up: Math.sin(lean) };
    const inward = (0.5 * card * normal.across) / (normal.across ** 2 + normal.up ** 2);
    const chord = (radius: number): number => 2 * (radius / times - inward) * Math.sin(Math.PI / SIDES);
    const slant = Math.hypot(low - high, height) / times;
    const [bottom, top] = [chord(low), chord(high)];
    const rise = Math.sqrt(slant ** 2 - ((bottom - top) / 2) ** 2);
    expect(ringLength(outline)).toBeCloseTo(SIDES * (bottom + top) + 2 * slant, 2);
    expect(Math.abs(ringArea(outline))).toBeCloseTo((SIDES * (bottom + top) * rise) / 2, 1);
  });

  it('have nothing of laps, layers and slits', async () => {
    const solid = block([0, 0, 0], [200, 200, 200]);
    const plain = await cardPieces(solid, QUARTER);
    const laps = await cardPieces(solid, QUARTER, (part) => ({
      ...part,
      layers: [part.layers[0], { ...part.layers[0], id: 'layer-9' as (typeof part.layers)[0]['id'], thicknessMm: 15 }],
      seamSettings: [{ edge: part.seams.edges[0], kind: 'lap', allowanceMm: 12 }],
      offMm: 0,
    }));
    expect(laps.map(({ outline }) => [...outline].map((mm) => mm.toFixed(6)))).toEqual(
      plain.map(({ outline }) => [...outline].map((mm) => mm.toFixed(6))),
    );
  });
});

it('the shoulder plate in card closes within 0.1 mm, and is plain about what it is', async () => {
  const { pipeline, outcome } = await madeSample('shoulder-plate');
  const made = expectOk(await makeMockUp(pipeline, outcome, { times: 4, cardMm: 0.4 }, DATE, QUIET_WORK));
  const { dryFit, pieces } = made.outcome;
  expect(dryFit!.perSeam.length).toBeGreaterThan(1);
  expect(dryFit!.worstGapMm).toBeLessThan(0.1);
  expect(dryFit!.worstOverlapMm).toBeLessThan(0.1);
  expect(pieces!.map((piece) => piece.name)).toEqual(outcome.pieces!.map((piece) => piece.name));
  expect(pieces!.map(({ number }) => number)).toEqual(outcome.pieces!.map(({ number }) => number));
  const read = await readPdf(expectOk(await mockUpPdf(made, testFont(), DATE)));
  for (const { texts } of read.pages) {
    const said = texts.map(({ text }) => text).join(' ');
    expect(said).toContain('mock-up 1:4, not for foam');
    expect(said).not.toMatch(/bevel|fill|EVA/);
  }
  const first = read.pages[0].texts.map(({ text }) => text).join(' ');
  expect(first).toContain('every length is a quarter');
  expect(first).toContain('100 mm');
});

it('is refused where nobody could mean it', () => {
  expectProblem(checkMockUp({ times: 0.5, cardMm: 0.4 }), 'mock-up/scale');
  expectProblem(checkMockUp({ times: Number.NaN, cardMm: 0.4 }), 'mock-up/scale');
  expectProblem(checkMockUp({ times: 4, cardMm: 12 }), 'mock-up/card');
});
