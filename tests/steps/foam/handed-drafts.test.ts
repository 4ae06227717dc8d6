import { expect, it } from 'vitest';
import { foamId, partId } from '../../../src/base/ids.ts';
import { IN_PLACE } from '../../../src/geom/matrix4.ts';
import { line } from '../../../src/geom/outline.ts';
import { ringArea } from '../../../src/geom/ring.ts';
import type { PlainDraft } from '../../../src/model/plain-piece.ts';
import type { ShapeEdge } from '../../../src/model/shape.ts';
import { handedDrafts, isSameTurnedOver } from '../../../src/steps/foam/handed-drafts.ts';
import { plainPieces } from '../../../src/steps/foam/plain-pieces.ts';

const outlineOf = (corners: readonly (readonly [number, number])[], leanDeg = 0): readonly ShapeEdge[] =>
  corners.map(([x, y], i): ShapeEdge => {
    const [toX, toY] = corners[(i + 1) % corners.length];
    const lengthMm = Math.hypot(toX - x, toY - y);
    const bevelDeg = { from: i === 0 ? leanDeg : 0, middle: 0, to: 0 };
    return {
      name: `edge ${i}`,
      segments: [line({ x, y }, { x: toX, y: toY })],
      lengthMm,
      trueLengthMm: lengthMm,
      bevelDeg,
    };
  });

const draftOf = (corners: readonly (readonly [number, number])[], more: Partial<PlainDraft> = {}): PlainDraft => ({
  key: 'a',
  name: 'Horn',
  quantity: 2,
  thicknessMm: 6,
  drawnAt: 1,
  outline: outlineOf(corners),
  holes: [],
  bend: { kind: 'flat' },
  lines: [],
  notes: [],
  areaMm2: 600,
  ...more,
});

const HORN = [
  [0, 0],
  [40, 0],
  [0, 30],
] as const;
const TENT = [
  [0, 0],
  [40, 0],
  [20, 30],
] as const;
const pair = { count: 1, ownHand: 'left' } as const;

it('a piece that is the same turned over has one template for both hands', () => {
  expect(handedDrafts([draftOf(TENT)], 3, pair)).toMatchObject([{ name: 'Horn', quantity: 6 }]);
  expect(
    isSameTurnedOver(
      draftOf([
        [0, 0],
        [40, 0],
        [40, 20],
        [0, 20],
      ]),
    ),
  ).toBe(true);
});

it('another has one for each, the other hand mirrored and its leans from end to start', () => {
  const leaning = draftOf(HORN, { outline: outlineOf(HORN, 20) });
  const [left, right] = handedDrafts([leaning], 3, pair);
  expect([left.name, left.quantity, right.name, right.quantity]).toEqual(['Horn, left', 4, 'Horn, right', 2]);
  expect(right.key).not.toBe(left.key);
  const first = right.outline.find(({ name }) => name === 'edge 0')!;
  expect(first.bevelDeg).toEqual({ from: 0, middle: 0, to: 20 });
  const [{ from, to }] = first.segments;
  expect([from, to].map(({ x, y }) => [x + 0, y + 0])).toEqual([
    [-40, 0],
    [0, 0],
  ]);
});

it('what is drawn on it, holes and grain make a hand of it as well', () => {
  const mark = { role: 'mark', points: Float64Array.of(5, 5, 10, 5), closed: false } as const;
  const middle = { ...mark, points: Float64Array.of(15, 5, 25, 5) };
  expect(isSameTurnedOver(draftOf(TENT, { lines: [middle] }))).toBe(true);
  expect(isSameTurnedOver(draftOf(TENT, { lines: [mark] }))).toBe(false);
  expect(
    isSameTurnedOver(
      draftOf(TENT, {
        holes: [
          outlineOf([
            [10, 5],
            [10, 8],
            [13, 8],
            [13, 5],
          ]),
        ],
      }),
    ),
  ).toBe(false);
  expect(isSameTurnedOver(draftOf(TENT, { grainRad: 1 }))).toBe(false);
});

it('without mirror images all copies are cut with one', () => {
  expect(handedDrafts([draftOf(HORN)], 3, undefined)).toMatchObject([{ name: 'Horn', quantity: 6 }]);
});

it('leans and grain that are the same turned over make no hand of a piece, others do', () => {
  const lean = (deg: readonly number[]): Partial<PlainDraft> => ({
    outline: outlineOf(TENT).map((edge, i) => ({ ...edge, bevelDeg: { from: deg[i], middle: deg[i], to: deg[i] } })),
  });
  expect(isSameTurnedOver(draftOf(TENT, lean([5, 20, 20])))).toBe(true);
  expect(isSameTurnedOver(draftOf(TENT, lean([5, 20, 12])))).toBe(false);
  for (const grainRad of [0, Math.PI / 2, Math.PI]) expect(isSameTurnedOver(draftOf(TENT, { grainRad }))).toBe(true);
});

it('a part whose place mirrors it is cut from mirrored templates, its mirror images from its own', () => {
  const part = { id: partId('horn'), name: 'Horn', copies: 3, mirrored: pair };
  const ringOf = (transform: readonly number[]) => {
    const pieces = plainPieces({ ...part, transform }, [draftOf(HORN)], 1, () => foamId('f'));
    return pieces.map(({ id, faceRings: [ring] }) => [id, ringArea(ring) > 0, Math.min(...ring), Math.max(...ring)]);
  };
  const [plain, mirrored] = [ringOf(IN_PLACE), ringOf([-1, ...IN_PLACE.slice(1)])];
  expect(plain).toEqual([
    ['horn/a', true, 0, 40],
    ['horn/a-mirrored', true, -40, 30],
  ]);
  expect(mirrored).toEqual([
    ['horn/a', true, -40, 30],
    ['horn/a-mirrored', true, 0, 40],
  ]);
});
