import { describe, expect, it } from 'vitest';
import { splitLine } from '../../../src/steps/nest/split-line.ts';

const ring = (...xy: readonly number[]): Float64Array => Float64Array.from(xy);
const bar = (length: number, width: number): Float64Array => ring(0, 0, length, 0, length, width, 0, width);
const ANY = { turns: 'any', turnOver: false } as const;
const ROOM = [{ alongMm: 600, acrossMm: 400 }];

describe('the cut across a piece that is larger than a sheet', () => {
  it('is the shortest straight one after which both parts fit', () => {
    const line = splitLine({ outer: bar(1000, 300), holes: [] }, undefined, ANY, ROOM);
    expect(line).toMatchObject({ doBothFit: true });
    expect(line?.lengthMm).toBeCloseTo(300, 6);
    expect(line?.from.x).toBeGreaterThan(400);
    expect(line?.from.x).toBeLessThan(600);
  });

  it('takes the narrow place', () => {
    // Two squares with a neck of 60 between them, not in the middle.
    const outer = ring(
      0,
      0,
      450,
      0,
      450,
      150,
      500,
      150,
      500,
      0,
      900,
      0,
      900,
      380,
      500,
      380,
      500,
      210,
      450,
      210,
      450,
      380,
      0,
      380,
    );
    const line = splitLine({ outer, holes: [] }, undefined, ANY, ROOM);
    expect(line).toMatchObject({ doBothFit: true });
    expect(line?.lengthMm).toBeCloseTo(60, 6);
    expect(line?.from.x).toBeGreaterThanOrEqual(450);
    expect(line?.from.x).toBeLessThanOrEqual(500);
  });

  it('passes holes', () => {
    const holes = [ring(480, 100, 480, 200, 520, 200, 520, 100)];
    const line = splitLine({ outer: bar(1000, 300), holes }, undefined, ANY, ROOM);
    expect(line?.doBothFit).toBe(true);
    expect(Math.abs((line?.from.x ?? NaN) - 500)).toBeGreaterThan(20);
  });

  it('takes turns into account', () => {
    // Along x at most 600 where nothing is turned; the grain runs along y, so along the room.
    const part = splitLine({ outer: bar(380, 1000), holes: [] }, Math.PI / 2, { turns: 'none', turnOver: false }, ROOM);
    expect(part).toMatchObject({ doBothFit: true });
    const wide = splitLine({ outer: bar(700, 500), holes: [] }, Math.PI / 2, { turns: 'none', turnOver: false }, ROOM);
    expect(Math.abs((wide?.from.x ?? 0) - (wide?.to.x ?? 0))).toBeLessThan(1);
    expect(wide).toMatchObject({ doBothFit: true });
  });

  it('leaves one part that fits where one cut is not enough, and is none where none does', () => {
    const line = splitLine({ outer: bar(1700, 300), holes: [] }, undefined, ANY, ROOM);
    expect(line).toMatchObject({ doBothFit: false });
    expect(splitLine({ outer: bar(9000, 9000), holes: [] }, undefined, ANY, ROOM)).toBeNull();
  });
});
