import { expect, it } from 'vitest';
import { depthInside } from '../../../src/geom/widest-spot.ts';
import type { ScatterWish } from '../../../src/model/artwork-craft.ts';
import { scatter } from '../../../src/steps/artwork/scatter.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { artOf } from './art-of.ts';

const RIVET = artOf('<circle id="rivet" cx="20" cy="20" r="2"/>');
const PLATE = artOf('<path fill-rule="evenodd" d="M10 10H90L70 80H10zM30 30v20h20v-20z"/>');
const made = (wish: Partial<ScatterWish> = {}) =>
  scatter(RIVET, PLATE, { leastMm: 3, edgeMm: 1.5, sizeShare: 0, turnRad: 0, seed: 1, ...wish });
const rings = PLATE.pieces[0].regions.flatMap(({ outline, holes }) => [outline.ring, ...holes.map(({ ring }) => ring)]);

it.each([0, 0.3])('keeps its distances, and leaves no room for one more, sizes by %d', (sizeShare) => {
  const wish = { leastMm: 3, edgeMm: 1.5, sizeShare };
  const { places, radiusMm, roomLeftMm } = expectOk(made(wish));
  const circles = places.map(({ at, scale }) => ({ ...at, radius: scale * radiusMm }));
  const small = radiusMm * (1 - sizeShare);
  const room = (x: number, y: number, except = -1): number =>
    circles.reduce(
      (least, one, i) =>
        i === except ? least : Math.min(least, Math.hypot(one.x - x, one.y - y) - one.radius - wish.leastMm),
      depthInside(rings, x, y) - wish.edgeMm,
    );
  for (const [i, { x, y, radius }] of circles.entries()) {
    expect(room(x, y, i)).toBeGreaterThanOrEqual(radius - 1e-9);
    expect(radius).toBeGreaterThanOrEqual(small - 1e-12);
    expect(radius).toBeLessThanOrEqual(radiusMm * (1 + sizeShare) + 1e-12);
  }
  // No place of a fine grid has more room than is stated.
  expect(roomLeftMm).toBeLessThan(0.05);
  let most = -Infinity;
  for (let x = 10; x <= 90; x += 0.4) for (let y = 110; y <= 200; y += 0.4) most = Math.max(most, room(x, y));
  expect(most).toBeLessThanOrEqual(small + roomLeftMm);
});

it('is the same for a seed and another for another; its density lies between covering and packing', () => {
  const [one, again, other] = [made(), made(), made({ seed: 2 })].map(expectOk);
  expect(again.places).toEqual(one.places);
  expect(other.places).not.toEqual(one.places);
  const pitch = 2 * one.radiusMm + 3;
  // Middles lie in the plate less the margin: at most the hexagonal packing of discs half a pitch in radius in it and half a pitch round it.
  const area = PLATE.pieces[0].areaMm2;
  expect(one.places.length).toBeLessThan(area / ((Math.sqrt(3) / 2) * pitch * pitch));
  // Each leaves no room within one pitch.
  const inner =
    artOf('<path fill-rule="evenodd" d="M10 10H90L70 80H10zM30 30v20h20v-20z"/>').pieces[0].areaMm2 - 320 * 3.6;
  expect(one.places.length).toBeGreaterThan(inner / (Math.PI * pitch * pitch));
});

it('turns copies within what was asked', () => {
  const turns = expectOk(made({ turnRad: 0.5 })).places.map(({ turnRad }) => turnRad);
  expect(Math.max(...turns.map(Math.abs))).toBeLessThanOrEqual(0.5);
  expect(new Set(turns).size).toBe(turns.length);
});

it('ends in problems where nothing fits, or too much', () => {
  expectProblem(made({ edgeMm: 60 }), 'artwork/scatter-area');
  expectProblem(
    scatter(RIVET, artOf('<path fill="none" stroke="red" d="M0 0H9"/>'), {
      leastMm: 1,
      edgeMm: 0,
      sizeShare: 0,
      turnRad: 0,
      seed: 1,
    }),
    'artwork/scatter-area',
  );
  const dot = artOf('<circle cx="20" cy="20" r="0.1"/>');
  expectProblem(
    scatter(dot, PLATE, { leastMm: 0.01, edgeMm: 0, sizeShare: 0, turnRad: 0, seed: 1 }),
    'artwork/too-many',
  );
});
