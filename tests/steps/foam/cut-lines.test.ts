import { describe, expect, it } from 'vitest';
import { offsetRing, type EdgeOffsets } from '../../../src/geom/offset-ring.ts';
import { boxOfPoints, ringArea, type Ring } from '../../../src/geom/ring.ts';
import { cutLines, movedLength, nearestOnRings, pointOnMoved } from '../../../src/steps/foam/cut-lines.ts';

const ring = (...xy: readonly number[]): Ring => Float64Array.from(xy);

/** The same distance outward on every edge of a ring. */
const all = (points: Ring, mm: number): EdgeOffsets => ({
  atStart: new Float64Array(points.length / 2).fill(mm),
  atEnd: new Float64Array(points.length / 2).fill(mm),
});

const PLATE = ring(0, 0, 100, 0, 100, 60, 0, 60);
/** Clockwise. */
const HOLE = ring(20, 20, 20, 40, 50, 40, 50, 20);

function expectRing(found: Ring, wanted: readonly number[]): void {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((mm, i) => expect(found[i]).toBeCloseTo(mm, 9));
}

describe('cut lines', () => {
  it('that are moved nowhere are the neutral ones themselves', () => {
    const lines = cutLines([PLATE, HOLE], [all(PLATE, 0), all(HOLE, 0)], false);
    expect([...lines.outline]).toEqual([...PLATE]);
    expect(lines.holes.map((hole) => [...hole])).toEqual([[...HOLE]]);
    expect(lines.loss).toBe('none');
    expect(lines.moved).toHaveLength(2);
  });

  it('stand outward by their offsets: an outline grows, a hole shrinks', () => {
    const lines = cutLines([PLATE, HOLE], [all(PLATE, 5), all(HOLE, 3)], false);
    expectRing(lines.outline, [-5, -5, 105, -5, 105, 65, -5, 65]);
    expect(lines.holes).toHaveLength(1);
    expectRing(lines.holes[0], [23, 23, 23, 37, 47, 37, 47, 23]);
    expect(lines.loss).toBe('none');
    expectRing(lines.moved[1].ring, [23, 23, 23, 37, 47, 37, 47, 23]);
  });

  it('are the neutral ones where nothing is left, and it is told', () => {
    const lines = cutLines([PLATE], [all(PLATE, -31)], false);
    expect(lines.loss).toBe('gone');
    expect([...lines.outline]).toEqual([...PLATE]);
    expect(lines.holes).toEqual([]);
    const withHole = cutLines([PLATE, HOLE], [all(PLATE, -31), all(HOLE, 0)], false);
    expect(withHole.holes.map((hole) => [...hole])).toEqual([[...HOLE]]);
  });

  /** Fields of 40 × 40 and 30 × 40 mm that a neck of 4 mm joins. */
  const NECK = ring(0, 0, 40, 0, 40, 18, 60, 18, 60, 0, 90, 0, 90, 40, 60, 40, 60, 22, 40, 22, 40, 40, 0, 40);

  it('keep the largest of what they fall into, and it is told', () => {
    const lines = cutLines([NECK], [all(NECK, -3)], false);
    expect(lines.loss).toBe('parted');
    const { minX, minY, maxX, maxY } = boxOfPoints(lines.outline);
    [minX, minY, maxX, maxY].forEach((mm, i) => expect(mm).toBeCloseTo([3, 3, 37, 37][i], 2));
    expect(ringArea(lines.outline)).toBeCloseTo(34 * 34, 0);
    expect(lines.holes).toEqual([]);
  });

  it('are left as they were moved on a piece that lies over itself', () => {
    const lines = cutLines([NECK], [all(NECK, -3)], true);
    expect(lines.loss).toBe('none');
    expect([...lines.outline]).toEqual([...offsetRing(NECK, all(NECK, -3)).ring]);
  });

  it('say nothing of a crumb under 1 mm² that comes off, and of one over it', () => {
    // A field of 40 × 40 and a bit of 7 × 6.6 or 7 × 8 mm: 3 mm inside 1 × 0.6 and 1 × 2 mm are left of it.
    const withBit = (high: number): Ring =>
      ring(0, 0, 40, 0, 40, 1, 50, 1, 50, 0, 57, 0, 57, high, 50, high, 50, 3, 40, 3, 40, 40, 0, 40);
    for (const [high, loss] of [
      [6.6, 'none'],
      [8, 'parted'],
    ] as const) {
      const lines = cutLines([withBit(high)], [all(withBit(high), -3)], false);
      expect(lines.loss).toBe(loss);
      expect(boxOfPoints(lines.outline).maxX).toBeLessThan(38);
    }
  });

  it('keep exact corners where crossings are cleaned away elsewhere', () => {
    const { outline } = cutLines([NECK], [all(NECK, -3)], false);
    const corners = Array.from({ length: outline.length / 2 }, (_, i) => `${outline[2 * i]} ${outline[2 * i + 1]}`);
    expect(corners).toEqual(expect.arrayContaining(['3 3', '37 3', '3 37']));
  });

  it('keep a slit of two points as it is, beside what is cleaned', () => {
    const slit = ring(10, 10, 30, 30);
    const lines = cutLines([NECK, slit], [all(NECK, -3), all(slit, 0)], false);
    expect(lines.holes.map((hole) => [...hole])).toEqual([[10, 10, 30, 30]]);
    expect(lines.loss).toBe('parted');
  });
});

describe('places on moved lines', () => {
  it('lie straight out from their share of the neutral edge, as far as the offset has changed there', () => {
    const slanting = ring(0, 0, 30, 40, -20, 50);
    const offsets = { atStart: Float64Array.of(2, 0, 0), atEnd: Float64Array.of(6, 0, 0) };
    // A quarter of the way from 0, 0 to 30, 40, 3 mm out along 0.8, -0.6.
    const { at, outward } = pointOnMoved(slanting, offsets, 0, 0.25);
    expect(outward.x).toBeCloseTo(0.8, 12);
    expect(outward.y).toBeCloseTo(-0.6, 12);
    expect(at.x).toBeCloseTo(7.5 + 2.4, 12);
    expect(at.y).toBeCloseTo(10 - 1.8, 12);
  });

  it('lie on the last edge too, which goes back to the first point', () => {
    const { at, outward } = pointOnMoved(PLATE, all(PLATE, 2), 3, 0.75);
    expect(outward).toEqual({ x: -1, y: -0 });
    expect(at.x).toBeCloseTo(-2, 12);
    expect(at.y).toBeCloseTo(15, 12);
  });

  it('have a way out on an edge without length', () => {
    const { at, outward } = pointOnMoved(ring(5, 7, 5, 7, 9, 9), all(ring(5, 7, 5, 7, 9, 9), 3), 0, 0.5);
    expect(outward).toEqual({ x: 0, y: -1 });
    expect(at).toEqual({ x: 5, y: 4 });
  });
});

describe('the length of moved edges', () => {
  it('is theirs, with the steps between them', () => {
    const outward = offsetRing(PLATE, all(PLATE, 5));
    // The lower edge, then that with the right one, then from the last to the first.
    expect(movedLength(outward, 4, 0, 1)).toBeCloseTo(110, 9);
    expect(movedLength(outward, 4, 0, 2)).toBeCloseTo(180, 9);
    expect(movedLength(outward, 4, 3, 2)).toBeCloseTo(180, 9);
    // The second of two edges in one line stands out 5 mm more: 50 and 5 and 50 mm.
    const straight = ring(0, 0, 50, 0, 100, 0, 100, 60, 0, 60);
    const stepped = { atStart: Float64Array.of(0, 5, 0, 0, 0), atEnd: Float64Array.of(0, 5, 0, 0, 0) };
    const moved = offsetRing(straight, stepped);
    expect(movedLength(moved, 5, 0, 2)).toBeCloseTo(105, 9);
    expect(movedLength(moved, 5, 1, 1)).toBeCloseTo(50, 9);
  });
});

describe('the nearest point of rings', () => {
  it.each([
    ['straight across from a point beside an edge', [30, -7], [30, 0]],
    ['the corner off a corner', [108, 66], [100, 60]],
    ['on the edge that closes the ring', [-4, 25], [0, 25]],
    ['on a hole', [48, 33], [50, 33]],
    ['on the other side of a hole', [22, 31], [20, 31]],
  ])('is %s', (_, [x, y], [nearX, nearY]) => {
    const near = nearestOnRings([PLATE, HOLE], { x, y });
    expect(near.x).toBeCloseTo(nearX, 12);
    expect(near.y).toBeCloseTo(nearY, 12);
  });

  it('lies on slanting edges square from the point, and bears an edge without length', () => {
    // 5 mm off the edge from 0, 0 to 30, 40, half-way along it.
    const near = nearestOnRings([ring(0, 0, 0, 0, 30, 40, -200, 300)], { x: 15 + 4, y: 20 - 3 });
    expect(near.x).toBeCloseTo(15, 12);
    expect(near.y).toBeCloseTo(20, 12);
  });

  it('is the point itself where there is no ring', () => {
    expect(nearestOnRings([], { x: 3, y: 4 })).toEqual({ x: 3, y: 4 });
  });
});
