import { describe, expect, it } from 'vitest';
import { checkMesh } from '../../../src/mesh/check-mesh.ts';
import { raisedProfile } from '../../../src/steps/artwork/raised-profile.ts';
import type { RaisedWish } from '../../../src/model/artwork-craft.ts';
import { raisedStack, type RaisedStack } from '../../../src/steps/artwork/raised-stack.ts';
import { enclosedVolume } from '../../support/enclosed-volume.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { artOf } from './art-of.ts';

const DISC = '<circle id="disc" cx="50" cy="50" r="30"/>';
const stack = (inner: string, wish: Partial<RaisedWish>): RaisedStack =>
  expectOk(
    raisedStack(artOf(inner, { deviationMm: 0.02 }), {
      layers: 3,
      thicknessMm: 2,
      edge: { kind: 'square' },
      rule: 'edge',
      ...wish,
    }),
  );

describe('the smooth edge', () => {
  it('of a quarter ellipse leaves 1 - pi/4 of its box outside', () => {
    const profile = raisedProfile({ kind: 'rounded', widthMm: 5 }, 6);
    expect([profile.at(0), profile.at(6)]).toEqual([0, 5]);
    expect(profile.areaBelow(6)).toBeCloseTo(30 * (1 - Math.PI / 4), 12);
    // (5 - x)²/25 + z²/36 = 1 at z = 3.6: x = 1.
    expect(profile.at(3.6)).toBeCloseTo(1, 12);
  });
});

describe('a disc in layers', () => {
  it('with a bevel of 45 degrees becomes the steps of a cone', () => {
    const { layers, sandMm3, withinMm3 } = stack(DISC, { edge: { kind: 'bevel', leanDeg: 45 } });
    expect(layers.map(({ setbackMm }) => setbackMm)).toEqual([0, expect.closeTo(2, 12), expect.closeTo(4, 12)]);
    expect(layers.map(({ edgeMm }) => edgeMm / (2 * Math.PI))).toEqual(
      [30, 28, 26].map((r): unknown => expect.closeTo(r, 9)),
    );
    // Cylinders less the frustum of radii 30 and 24, 6 high.
    const frustum = (6 * Math.PI * (900 + 720 + 576)) / 3;
    const steps = 2 * Math.PI * (900 + 784 + 676);
    expect(Math.abs(sandMm3 - (steps - frustum))).toBeLessThan(withinMm3);
    expect(withinMm3).toBeLessThan(0.08 * sandMm3);
  });

  it('rounded, with its edges on the middle of each layer, loses as much as it lacks, nearly', () => {
    const { layers, sandMm3, fillMm3 } = stack(DISC, { edge: { kind: 'rounded', widthMm: 6 }, rule: 'middle' });
    expect(layers.map(({ setbackMm }) => setbackMm)).toEqual(
      [1, 3, 5].map((z): unknown => expect.closeTo(6 * (1 - Math.sqrt(1 - (z * z) / 36)), 12)),
    );
    expect(fillMm3).toBeGreaterThan(0);
    expect(sandMm3).toBeGreaterThan(fillMm3);
  });

  it('is a closed terrace, with the line of each layer on the one under it', () => {
    const { work } = stack(DISC, { edge: { kind: 'bevel', leanDeg: 45 } });
    expect(work.pieces.map(({ key, lines }) => [key, lines.map(({ role }) => role)])).toEqual([
      ['layer-1-disc', ['placement']],
      ['layer-2-disc', ['placement']],
      ['layer-3-disc', []],
    ]);
    const [{ lines }] = work.pieces;
    expect(Math.hypot(lines[0].points[0] - 50, lines[0].points[1] - 150)).toBeCloseTo(28, 1);
    expect(work.steps.map((step) => step.work)).toEqual(['lay', 'stack', 'stack', 'sand']);
    expect(work.steps[1].glueMm2).toBeCloseTo(2 * Math.PI * 784, 6);
    if (work.form === null) throw new Error('no form');
    checkMesh(work.form);
    expect(enclosedVolume(work.form) / (2 * Math.PI * (900 + 784 + 676))).toBeCloseTo(1, 2);
  });

  it('with a hole opens it by as much, and layers with upright edges are one body', () => {
    const ring =
      '<path fill-rule="evenodd" d="M20 50a30 30 0 1 0 60 0a30 30 0 1 0-60 0zM40 50a10 10 0 1 0 20 0a10 10 0 1 0-20 0z"/>';
    const { layers, work } = stack(ring, { edge: { kind: 'bevel', leanDeg: 45 } });
    expect(layers[2].artwork.pieces[0].areaMm2).toBeCloseTo((26 ** 2 - 14 ** 2) * Math.PI, 6);
    if (work.form === null) throw new Error('no form');
    checkMesh(work.form);
    const areas = layers.reduce((sum, { artwork }) => sum + artwork.pieces[0].areaMm2, 0);
    expect(enclosedVolume(work.form) / (2 * areas)).toBeCloseTo(1, 2);
    const upright = stack(ring, {}).work.form;
    expect(upright === null ? 0 : enclosedVolume(upright) / (6 * 800 * Math.PI)).toBeCloseTo(1, 2);
    expect(upright === null ? [] : new Set(upright.positions.filter((_, i) => i % 3 === 2))).toEqual(new Set([0, 6]));
  });
});

it('tells what the higher layers lose, and ends where nothing is left', () => {
  const made = raisedStack(artOf('<path d="M0 0h40v18h30v4h-30v18h-40z"/>'), {
    layers: 3,
    thicknessMm: 2,
    edge: { kind: 'bevel', leanDeg: 45 },
    rule: 'edge',
  });
  expect(made.ok ? made.notes.map(({ text }) => text.slice(0, 8)) : []).toEqual(['Layer 2:', 'Layer 3:']);
  expectProblem(
    raisedStack(artOf(DISC), { layers: 20, thicknessMm: 2, edge: { kind: 'bevel', leanDeg: 45 }, rule: 'edge' }),
    'artwork/offset-nothing',
  );
});
