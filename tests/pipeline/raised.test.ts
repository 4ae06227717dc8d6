import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { boxOfPoints } from '../../src/geom/ring.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { propSteps } from '../../src/pipeline/prop.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { block, inSheets, outcomeOf, type PartChange } from '../support/run-solid.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/report.schema.json', import.meta.url), 'utf8')) as Schema;

const RAISED = { foam: foamId('eva-2'), thicknessMm: 2, neutralFraction: 0.5 };

/** One area over some faces, raised in 2 mm. */
const raisedOver =
  (faces: readonly number[], name = 'badge'): PartChange =>
  (part) => ({ ...part, regions: [{ id: 'area-1', name, faces, give: 'stiff', raised: RAISED }] });

/** A flat sheet of so many squares each way. */
function flatSheet(count: number, sideMm: number): Solid {
  const line = Array.from({ length: count + 1 }, (_, i) => i);
  const at = (x: number, y: number): number => y * (count + 1) + x;
  return {
    corners: line.flatMap((y) => line.map((x) => [x * sideMm, y * sideMm, 0] as const)),
    faces: line
      .slice(1)
      .flatMap((y) => line.slice(1).map((x) => [at(x - 1, y - 1), at(x, y - 1), at(x, y), at(x - 1, y)])),
    seams: [],
  };
}

/** Half a tube of corners at R, `rows` of faces high. */
function halfTube(R: number, sides: number, heights: readonly number[]): Solid {
  const around = Array.from({ length: sides + 1 }, (_, i) => (i * Math.PI) / sides);
  const at = (i: number, row: number): number => row * (sides + 1) + i;
  return {
    corners: heights.flatMap((z) => around.map((a) => [R * Math.cos(a), R * Math.sin(a), z] as const)),
    faces: heights
      .slice(1)
      .flatMap((_, row) =>
        around.slice(1).map((_, i) => [at(i, row), at(i + 1, row), at(i + 1, row + 1), at(i, row + 1)]),
      ),
    seams: [],
  };
}

const raisedPieces = ({ raised }: Outcome): readonly FoamPiece[] => raised.flatMap(({ pieces }) => pieces ?? []);
const wallPieces = ({ layers }: Outcome): readonly FoamPiece[] => layers.flatMap(({ pieces }) => pieces ?? []);

function sizeOf(points: Float64Array): readonly number[] {
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  return [maxX - minX, maxY - minY].sort((a, b) => a - b);
}

describe('a sheet raised on a flat panel', () => {
  it('is as large as its area, and so is the line where it is glued on', async () => {
    const outcome = await outcomeOf(flatSheet(3, 20), raisedOver([4]));
    expect(outcome.stopped).toBeNull();
    const [piece, ...more] = raisedPieces(outcome);
    expect(more).toEqual([]);
    expect(piece.areaMm2).toBeCloseTo(400, 9);
    expect([piece.thicknessMm, piece.foam]).toEqual([2, 'eva-2']);
    expect(piece.edges.flatMap(({ bevelDeg }) => [...bevelDeg]).every((deg) => deg === 0)).toBe(true);
    const [wall] = wallPieces(outcome);
    const [line, ...others] = wall.outlines ?? [];
    expect(others).toEqual([]);
    sizeOf(line.points).forEach((mm) => expect(mm).toBeCloseTo(20, 9));
    expect(line.points.length).toBe(2 * 5);
    // It lies in the middle of the piece.
    const [a, b] = [boxOfPoints(line.points), boxOfPoints(wall.outline)];
    expect(a.minX + a.maxX).toBeCloseTo(b.minX + b.maxX, 9);
    expect(a.minY + a.maxY).toBeCloseTo(b.minY + b.maxY, 9);
  });

  it('has a number, a name, letters and a template of its own, and is told on the template under it', async () => {
    const outcome = await outcomeOf(flatSheet(3, 20), raisedOver([4]));
    expect(outcome.pieces?.map(({ number, name }) => [number, name])).toEqual([
      [1, 'Piece 1'],
      [2, 'badge, raised'],
    ]);
    const ids = outcome.seams?.map(({ id }) => id) ?? [];
    expect(new Set(ids).size).toBe(ids.length);
    const [under, own] = outcome.templates ?? [];
    expect(under.drawing.strokes.filter(({ role }) => role === 'placement').length).toBe(1);
    expect(own.drawing.strokes.some(({ role }) => role === 'placement')).toBe(false);
    expect(JSON.stringify(under)).toContain('badge is glued on inside the dots, on the face');
    expect(outcome.sheets?.tooLarge).toEqual([]);
  });

  it('leaves the pieces of the wall as large as they were', async () => {
    const [plain, with2] = [await outcomeOf(flatSheet(3, 20)), await outcomeOf(flatSheet(3, 20), raisedOver([4]))];
    expect(wallPieces(with2)[0].outline).toEqual(wallPieces(plain)[0].outline);
    expect(wallPieces(plain)[0].outlines).toBeUndefined();
  });

  it('stands in the report, on the bench and in the finished prop, put on last', async () => {
    const outcome = await outcomeOf(flatSheet(3, 20), raisedOver([4]));
    const report = JSON.parse(reportOf(outcome)) as { layers: { thicknessMm: number }[]; pieces: unknown[] };
    expect(report.layers.map(({ thicknessMm }) => thicknessMm)).toEqual([6, 2]);
    expect(report.pieces.length).toBe(2);
    const { pieces } = new BenchUpdater().next(outcome, 0);
    expect(pieces?.patches.map(({ piece }) => piece)).toEqual([0, 1]);
    const prop = runAtOnce(propSteps(outcome));
    expect(prop?.plates.map(({ piece, order }) => [piece, order])).toEqual([
      [0, 0],
      [1, 1],
    ]);
    // It lies on the face: from 0 to 2 mm above the sculpt, which is the wall's face.
    const heights = [...(prop?.plates[1].face ?? [])].filter((_, i) => i % 3 === 2);
    heights.forEach((z) => expect(Math.abs(z)).toBeCloseTo(2, 5));
  });
});

describe('the report of a wall of two sheets with a third raised on it', () => {
  it('is as its schema says', async () => {
    const outcome = await outcomeOf(block([0, 0, 0], [60, 60, 60]), (part) => inSheets(raisedOver([0])(part), 6, 2));
    expect(outcome.raised.length).toBe(1);
    expect(schemaFaults(SCHEMA, JSON.parse(reportOf(outcome)))).toEqual([]);
  });
});

describe('a sheet raised on a bend', () => {
  /** A facet of the surface `d` outside a polygon of corners at R. */
  const facetMm = (R: number, sides: number, d: number): number =>
    2 * (R * Math.cos(Math.PI / sides / 2) + d) * Math.tan(Math.PI / sides / 2);

  it.each([2, 6])('is as long as its own neutral surface, %s mm', async (thicknessMm) => {
    const [R, sides] = [60, 24];
    const facets = [8, 9, 10, 11, 12, 13];
    const outcome = await outcomeOf(halfTube(R, sides, [0, 30, 60, 90]), (part) => {
      const [region] = raisedOver(facets.map((i) => sides + i))(part).regions;
      return { ...part, regions: [{ ...region, raised: { ...RAISED, thicknessMm } }] };
    });
    const [piece] = raisedPieces(outcome);
    // The sculpt is the face, so half the sheet's own thickness outside it.
    const longMm = facets.length * facetMm(R, sides, thicknessMm / 2);
    const [shortSide, longSide] = sizeOf(piece.outline);
    expect(shortSide).toBeCloseTo(30, 6);
    expect(longSide).toBeCloseTo(longMm, 6);
    // On the wall beneath, the line is as long as the wall's neutral surface, half of 6 mm under the face.
    const [line] = wallPieces(outcome)[0].outlines ?? [];
    const [, beneath] = sizeOf(line.points);
    expect(beneath).toBeCloseTo(facets.length * facetMm(R, sides, -3), 6);
  });
});

describe('a sheet raised where that is hard', () => {
  it('over a whole closed sculpt is parted where the wall is', async () => {
    const box = block([0, 0, 0], [60, 60, 60]);
    const outcome = await outcomeOf(box, raisedOver([0, 1, 2, 3, 4, 5]));
    expect(outcome.stopped).toBeNull();
    expect(raisedPieces(outcome).length).toBe(6);
    // Panels of the outer box: its back is the sculpt, so its face is 2 mm outside.
    raisedPieces(outcome).forEach(({ outline }) => sizeOf(outline).forEach((mm) => expect(mm).toBeCloseTo(64, 6)));
    expect(outcome.dryFit?.worstGapMm).toBeLessThan(1e-6);
    expect(wallPieces(outcome).every(({ outlines }) => outlines === undefined)).toBe(true);
  });

  it('over a closed sculpt without a seam is left out and told, and the wall with it stays as it was', async () => {
    const box = { ...block([0, 0, 0], [60, 60, 60]), seams: [] };
    const plain = await outcomeOf(box);
    const outcome = await outcomeOf(box, raisedOver([0, 1, 2, 3, 4, 5]));
    expect(outcome.stopped?.problem.code).toBe(plain.stopped?.problem.code);
  });

  it('over one face of a box lies on that panel alone, bent round nothing', async () => {
    const outcome = await outcomeOf(block([0, 0, 0], [60, 60, 60]), raisedOver([0]));
    const [piece, ...more] = raisedPieces(outcome);
    expect(more).toEqual([]);
    expect(piece.edges.length).toBeGreaterThan(0);
  });

  it('over one triangle is cut as that triangle', async () => {
    const wedge: Solid = {
      corners: [
        [0, 0, 0],
        [30, 0, 0],
        [0, 40, 0],
        [30, 40, 0],
      ],
      faces: [
        [0, 1, 2],
        [1, 3, 2],
      ],
      seams: [],
    };
    const outcome = await outcomeOf(wedge, raisedOver([1]));
    expect(raisedPieces(outcome).map(({ areaMm2 }) => areaMm2)).toEqual([expect.closeTo(600, 9)]);
  });

  it('over faces the file has not is left out and told', async () => {
    const outcome = await outcomeOf(flatSheet(3, 20), raisedOver([99_999]));
    expect(outcome.stopped).toBeNull();
    expect(outcome.raised).toEqual([]);
    expect(outcome.findings.map(({ code }) => code)).toContain('raised/left-out');
    expect(outcome.templates?.length).toBe(1);
  });

  it('over no face at all is none', async () => {
    const outcome = await outcomeOf(flatSheet(3, 20), raisedOver([]));
    expect(outcome.raised).toEqual([]);
  });
});
