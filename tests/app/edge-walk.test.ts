import { describe, expect, it } from 'vitest';
import { EdgeIndex } from '../../src/app/edge-index.ts';
import { ARROWS, stepTowards } from '../../src/app/edge-walk.ts';

/** Corner 0 in the middle, 1 right, 2 up, 3 left a little down, 4 on top of the middle. */
const SPOTS = [
  { x: 100, y: 100 },
  { x: 160, y: 110 },
  { x: 95, y: 40 },
  { x: 40, y: 110 },
  { x: 100, y: 100 },
];
const screenOf = (corner: number) => SPOTS[corner] ?? null;
const steps = [1, 2, 3, 4].map((to) => ({ edge: 10 + to, to }));
const towards = (key: string, from = steps) => stepTowards(SPOTS[0], ARROWS[key], from, screenOf)?.to ?? null;

describe('walking along edges by arrow keys', () => {
  it('takes the edge that runs nearest to the arrow', () => {
    expect(towards('ArrowRight')).toBe(1);
    expect(towards('ArrowUp')).toBe(2);
    expect(towards('ArrowLeft')).toBe(3);
  });

  it('never walks away from the arrow', () => {
    expect(towards('ArrowDown')).toBeNull();
    expect(towards('ArrowDown', [{ edge: 1, to: 1 }])).toBeNull(); // 80 degrees off
  });

  it('passes over corners that cannot be seen or lie on the walker', () => {
    expect(
      towards('ArrowRight', [
        { edge: 9, to: 99 },
        { edge: 14, to: 4 },
      ]),
    ).toBeNull();
  });
});

describe('the table of edges', () => {
  // A square 0 1 2 3 with the diagonal 0 2 that only triangles made.
  const index = new EdgeIndex({
    positions: new Float32Array(12),
    edgeVertices: Uint32Array.from([0, 1, 1, 2, 2, 3, 3, 0, 0, 2]),
    edgeIsDiagonal: Uint8Array.from([0, 0, 0, 0, 1]),
  });

  it('finds an edge by its ends, either way round', () => {
    expect(index.between(2, 1)).toBe(1);
    expect(index.between(1, 2)).toBe(1);
    expect(index.between(1, 3)).toBe(-1);
  });

  it('leaves diagonals out of a walk but knows them as edges', () => {
    expect(index.edgesAt(0).toSorted()).toEqual([0, 3]);
    expect(index.between(0, 2)).toBe(4);
    expect(index.across(3, 0)).toBe(3);
  });

  it('follows a path of corners', () => {
    expect(index.along([0, 1, 2, 3])).toEqual([0, 1, 2]);
    expect(index.along([1, 3])).toEqual([]);
  });
});
