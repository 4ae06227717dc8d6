import { expect, it } from 'vitest';
import type { Drawing, Stroke } from '../../../src/model/template.ts';
import { wordsInFront } from '../../../src/steps/tile/words-in-front.ts';
import { handMadeWords, straight } from '../../support/hand-made-templates.ts';
import { collisions } from './support.ts';

const pageOf = (drawing: Drawing) => ({
  kind: 'build' as const,
  name: 'p',
  widthMm: 200,
  heightMm: 200,
  pieces: [],
  drawing,
});

it('breaks lines off where words stand, and leaves the rest as it is', () => {
  const square: Stroke = { role: 'cut', points: Float64Array.of(20, 20, 120, 20, 120, 120, 20, 120), closed: true };
  const away = straight('map', 20, 150, 120, 150);
  const arrow: Stroke = { role: 'mark', points: Float64Array.of(70, 20, 72, 22, 74, 20), closed: true, filled: true };
  const words = [handMadeWords('B', 70, 19), handMadeWords('AB', 120, 70, { angleRad: 0.7 })];
  const before = { strokes: [square, away, straight('map', 60, 10, 80, 30)], words };
  expect(collisions(pageOf(before)).length).toBeGreaterThan(2);
  const after = wordsInFront({ ...before, strokes: [...before.strokes, arrow] });
  expect(collisions(pageOf({ ...after, strokes: after.strokes.filter(({ filled }) => filled !== true) }))).toEqual([]);
  expect(after.strokes).toContain(away);
  expect(after.strokes).toContain(arrow);
  const length = after.strokes
    .filter(({ role }) => role === 'cut')
    .reduce((sum, { points }) => {
      for (let i = 2; i < points.length; i += 2)
        sum += Math.hypot(points[i] - points[i - 2], points[i + 1] - points[i - 1]);
      return sum;
    }, 0);
  expect(length).toBeGreaterThan(385);
  expect(length).toBeLessThan(397);
});
