import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { isSimpleArea } from '../../src/geom/ring-simple.ts';

const ring = (...xy: number[]): Float64Array => Float64Array.from(xy);

describe('isSimpleArea', () => {
  it('accepts a ring and its hole, each wound right', () => {
    const outer = ring(0, 0, 10, 0, 10, 10, 0, 10);
    expect(isSimpleArea([outer])).toBe(true);
    expect(isSimpleArea([outer, ring(2, 2, 2, 4, 4, 4, 4, 2)])).toBe(true);
    expect(isSimpleArea([outer, ring(2, 2, 4, 2, 4, 4, 2, 4)])).toBe(false);
    expect(isSimpleArea([ring(0, 0, 0, 10, 10, 10, 10, 0)])).toBe(false);
  });

  it('refuses crossings, touches, edges that run back, and doubled points', () => {
    expect(isSimpleArea([ring(0, 0, 10, 10, 10, 0, 0, 12)])).toBe(false);
    expect(isSimpleArea([ring(0, 0, 10, 0, 10, 10, 5, 0, 0, 10)])).toBe(false);
    expect(isSimpleArea([ring(0, 0, 10, 0, 10, 10, 10, 4, 0, 4)])).toBe(false);
    expect(isSimpleArea([ring(0, 0, 10, 0, 10, 0, 10, 10)])).toBe(false);
    expect(isSimpleArea([])).toBe(false);
  });

  it('accepts a corner on a straight line', () => {
    expect(isSimpleArea([ring(0, 0, 5, 0, 10, 0, 10, 10, 0, 10)])).toBe(true);
  });

  it('agrees with comparing every pair on random stars and their tangled cousins', () => {
    const random = seededRandom(7);
    for (let round = 0; round < 40; round += 1) {
      const count = 5 + Math.floor(random() * 60);
      const star = Array.from({ length: count }, (_, i) => {
        const angle = (2 * Math.PI * i) / count;
        const r = 20 + 60 * random();
        return [r * Math.cos(angle), r * Math.sin(angle)];
      });
      expect(isSimpleArea([Float64Array.from(star.flat())])).toBe(true);
      // Two corners change places: most often some edges cross now.
      const [a, b] = [Math.floor(random() * count), Math.floor(random() * count)];
      const tangled = star.slice();
      [tangled[a], tangled[b]] = [star[b], star[a]];
      const flat = Float64Array.from(tangled.flat());
      expect(isSimpleArea([flat])).toBe(isWoundRight(flat) && !hasCrossing(flat));
    }
  });
});

function isWoundRight(xy: Float64Array): boolean {
  let sum = 0;
  for (let i = 0; i < xy.length; i += 2) {
    const j = (i + 2) % xy.length;
    sum += xy[i] * xy[j + 1] - xy[i + 1] * xy[j];
  }
  return sum > 0;
}

function hasCrossing(xy: Float64Array): boolean {
  const count = xy.length / 2;
  const at = (i: number) => [xy[2 * (i % count)], xy[2 * (i % count) + 1]];
  const turn = (p: number[], q: number[], r: number[]) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  for (let i = 0; i < count; i += 1) {
    for (let j = i + 2; j < count; j += 1) {
      if (i === 0 && j === count - 1) continue;
      const [p, q, r, s] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (turn(p, q, r) * turn(p, q, s) < 0 && turn(r, s, p) * turn(r, s, q) < 0) return true;
    }
  }
  return false;
}
