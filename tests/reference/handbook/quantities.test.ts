import { beforeAll, describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { COATINGS, coverageM2PerL } from '../../../src/model/coatings.ts';
import type { Outcome } from '../../../src/pipeline/outcome.ts';
import { shopPlanSteps, type ShopPlan } from '../../../src/pipeline/shop-plan.ts';
import { coatingQuantity, edgeGlueMm2, massG, meanAreaMm2 } from '../../../src/steps/shop/quantities.ts';
import { outcomeOf } from '../../support/run-solid.ts';
import { numbersOf, rowOf } from './cases.ts';
import { TRAY } from './polygon-solids.ts';

describe('handbook quantities', () => {
  it('Q1: the mass of a sheet', () => {
    const masses = rowOf('Q1', 'inputs', 'area_m2').map((area, i) =>
      massG(1e6 * area, rowOf('Q1', 'inputs', 'thickness_mm')[i], rowOf('Q1', 'inputs', 'density_kg_m3')[i]),
    );
    rowOf('Q1', 'expected', 'mass_kg').forEach((kg, i) => expect(masses[i] / 1000).toBeCloseTo(kg, 9));
  });

  it('Q2: what a litre of coating covers', () => {
    const { inputs, expected } = numbersOf('Q2');
    const coverage = coverageM2PerL({ solidsPct: inputs.solids_percent, dryFilmUm: inputs.dry_film_um });
    expect(coverage).toBeCloseTo(expected.m2_per_litre, 9);
    // The label's own figure goes first. 2.6 m², two coats: half a litre each.
    const coating = { ...COATINGS[0], coverageM2PerL: coverage, coats: 2, recoatMin: 45 };
    expect(coatingQuantity(coating, 2.6e6)).toEqual({ coating, ml: 1000, dryMin: 90 });
  });
});

it('a cut is t / cos(bevel) wide', () => {
  const edge = { stationMm: Float64Array.of(0, 100), bevelDeg: Float64Array.of(60, 60) };
  expect(edgeGlueMm2({ thicknessMm: 5 }, edge, { kind: 'butt', allowanceMm: 0 })).toBeCloseTo(1000, 9);
  expect(edgeGlueMm2({ thicknessMm: 5 }, edge, { kind: 'lap', allowanceMm: 12 })).toBeCloseTo(1200, 9);
});

it('a piece with a hole that a bevel shuts on one skin counts by the mean of both', () => {
  const square = (mm: number): Float64Array => Float64Array.of(0, 0, mm, 0, mm, mm, 0, mm);
  const hole = Float64Array.of(2, 2, 2, 4, 4, 4, 4, 2);
  const piece = { outline: square(10), holes: [hole], otherOutline: square(8), otherHoles: [] };
  expect(meanAreaMm2(piece)).toBeCloseTo((100 - 4 + 64) / 2, 9);
  // Half-way it is a square of 9 mm.
  expect(meanAreaMm2({ ...piece, holes: [] })).toBeCloseTo((100 + 4 * 81 + 64) / 6, 9);
});

describe('a tray of 100 mm from 10 mm foam of 100 kg/m³', () => {
  let outcome: Outcome;
  let plan: ShopPlan;
  beforeAll(async () => {
    outcome = await outcomeOf(TRAY, (part) => ({
      ...part,
      modelIs: 'face',
      layers: [{ ...part.layers[0], thicknessMm: 10 }],
    }));
    plan = runAtOnce(
      shopPlanSteps({
        ...outcome,
        project: {
          ...outcome.project,
          shop: { currency: 'EUR', sheetPrices: [{ foam: outcome.part!.layers[0].foam, price: 30 }], gluePricePerL: 20 },
        },
      }),
    );
  });

  it('weighs what is left of the cube', () => {
    // 100³ less the hollow of 80 × 80 × 90.
    const { massG: grams, foams, outsideMm2, sizeMm, longestMm } = plan.quantities;
    expect(grams).toBeCloseTo(((1e6 - 80 * 80 * 90) * 100) / 1e6, 6);
    expect(foams).toHaveLength(1);
    expect(foams[0].sheets).toBe(1);
    expect(outsideMm2).toBeCloseTo(5e4, 6);
    for (const mm of sizeMm) expect(mm).toBeCloseTo(100, 9);
    expect(longestMm).toBeCloseTo(100 * Math.sqrt(3), 9);
  });

  it('has its middle where the hollow leaves it', () => {
    const [x, y, z] = plan.quantities.centreOfMass ?? [0, 0, 0];
    const hollow = 80 * 80 * 90;
    expect(x).toBeCloseTo(50, 6);
    expect(y).toBeCloseTo(50, 6);
    expect(z).toBeCloseTo((1e6 * 50 - hollow * 45) / (1e6 - hollow), 6);
  });

  it('takes glue on both cuts of eight seams', () => {
    const { glue, cost } = plan.quantities;
    // Counted on the neutral surface, half-way in: four seams of 90 mm round the top, four of 95 down the sides. Cuts are 10 / cos 45° wide.
    const seamMm = 4 * 90 + 4 * 95;
    const edges = 2 * seamMm * 10 * Math.SQRT2;
    expect(glue.seamMm).toBeCloseTo(seamMm, 6);
    expect(glue.edgesMm2).toBeCloseTo(edges, 4);
    expect(glue.laidMm2).toBe(0);
    expect(glue.ml).toBeCloseTo((edges / 1e6 / 5) * 1000, 9);
    expect(cost).toBeCloseTo(30 + (20 * glue.ml) / 1000, 9);
  });

  it('lists what is cut: five panels and their bevels', () => {
    expect(plan.cutRows).toHaveLength(5);
    for (const { widthMm, heightMm, steepestDeg, thicknessMm, longestBevelMm } of plan.cutRows) {
      expect([widthMm, heightMm, thicknessMm]).toEqual([expect.closeTo(100, 6), expect.closeTo(100, 6), 10]);
      expect(steepestDeg).toBeCloseTo(45, 6);
      expect(longestBevelMm).toBeGreaterThan(89.9);
    }
    // Two settings in all: square at the open edges and 45° at the seams.
    expect(new Set(plan.sawRows.map(({ setting }) => setting))).toEqual(new Set(['square', '45° in under']));
  });
});

it('a wall of two sheets is glued flat on both faces', async () => {
  const outcome = await outcomeOf(TRAY, (part) => ({
    ...part,
    modelIs: 'back',
    layers: ['layer-1', 'layer-2'].map((id) => ({ ...part.layers[0], id: id as never, thicknessMm: 6 })),
  }));
  const { gluing, quantities } = runAtOnce(shopPlanSteps(outcome));
  const laid = gluing.steps.filter(({ work }) => work === 'lay');
  expect(laid).toHaveLength(5);
  expect(gluing.steps.findIndex(({ work }) => work === 'lay')).toBe(gluing.steps.length - 5);
  const outer = outcome.layers[0].pieces ?? [];
  const area = outer.reduce((sum, { surfaceAreaMm2 }) => sum + surfaceAreaMm2, 0);
  expect(quantities.glue.laidMm2).toBeCloseTo(2 * area, 6);
  expect(gluing.outside).toEqual([]);
});
