import { describe, expect, it } from 'vitest';
import { length3, sub3, type Vec2, type Vec3, vec2, vec3 } from '../../src/geom/vec.ts';
import { readSample, trianglesOf, type Triangle } from './read-sample.ts';

const FOAM = 6; // mm, as `samples.json` says for what is worn

/** Points all over a surface, at most `spacing` mm apart. */
function* pointsOn(triangles: readonly Triangle[], spacing: number): Generator<Vec3> {
  for (const [a, b, c] of triangles) {
    const n = Math.ceil(Math.max(length3(sub3(b, a)), length3(sub3(c, b)), length3(sub3(a, c))) / spacing);
    for (let i = 0; i <= n; i++) {
      for (let j = 0; i + j <= n; j++) {
        const [u, v, w] = [i / n, j / n, (n - i - j) / n];
        yield vec3(a.x * w + b.x * u + c.x * v, a.y * w + b.y * u + c.y * v, a.z * w + b.z * u + c.z * v);
      }
    }
  }
}

/** Where the level plane at height `y` cuts the edges of the triangles, seen from above. */
function section(triangles: readonly Triangle[], y: number): Vec2[] {
  return triangles.flatMap((t) =>
    t.flatMap((p, k) => {
      const q = t[(k + 1) % 3];
      if (p.y < y === q.y < y) return [];
      const s = (y - p.y) / (q.y - p.y);
      return [vec2(p.x + s * (q.x - p.x), p.z + s * (q.z - p.z))];
    }),
  );
}

/** Length of a tape drawn round the points: the rim of their convex hull, by turning from each point to the outermost next one. */
function girth(points: readonly Vec2[]): number {
  const turn = (o: Vec2, a: Vec2, b: Vec2): number => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y);
  const chain = (row: readonly Vec2[]): Vec2[] => {
    const kept: Vec2[] = [];
    for (const p of row) {
      while (kept.length > 1 && turn(kept[kept.length - 2], kept[kept.length - 1], p) <= 0) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  const hull = [...chain(sorted), ...chain([...sorted].reverse())];
  return hull.reduce((sum, p, k) => {
    const q = hull[(k + 1) % hull.length];
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
}

describe('the helm on a head of 580 mm girth', () => {
  const triangles = trianglesOf(readSample('helm.obj', 'helm.seams.json'));
  // Half breadth, height over the brow plane and half length of the head, mm. The level ellipse of 160 x 208 mm measures
  // 580 mm round; 105 mm from brow to crown is a large adult's.
  const head = vec3(80, 105, 104);

  it('takes the right head: its ellipse measures 580 mm round', () => {
    const points = Array.from({ length: 720 }, (_, i) =>
      vec2(head.x * Math.cos((i * Math.PI) / 360), head.z * Math.sin((i * Math.PI) / 360)),
    );
    expect(Math.abs(girth(points) - 580)).toBeLessThan(1);
  });

  it('leaves room for the foam and 8 mm of padding everywhere above the brow plane', () => {
    let least = Infinity;
    for (const p of pointsOn(triangles, 6)) {
      if (p.y < 0) continue;
      // Distance to the ellipsoid to first order: (g - 1) / |grad g| with g the gauge of the ellipsoid.
      const gauge = Math.hypot(p.x / head.x, p.y / head.y, p.z / head.z);
      const slope = Math.hypot(p.x / head.x ** 2, p.y / head.y ** 2, p.z / head.z ** 2) / gauge;
      least = Math.min(least, (gauge - 1) / slope);
    }
    expect(least).toBeGreaterThan(FOAM + 8);
    expect(least).toBeLessThan(FOAM + 20); // nor does it rattle
  });

  it('has an inside girth of 580 mm with 8 to 20 mm of mean clearance where the band goes round', () => {
    const inside = girth(section(triangles, 2)) - 2 * Math.PI * FOAM;
    // Just above the brow plane the brow is open in front: the tape runs straight across the face there, so this is the least.
    expect((inside - 580) / (2 * Math.PI)).toBeGreaterThan(8);
    expect((inside - 580) / (2 * Math.PI)).toBeLessThan(20);
  });

  it('goes over the head from above: nothing below the brow plane stands in the way', () => {
    for (const p of pointsOn(triangles, 6)) {
      if (p.y > 0) continue;
      expect(Math.hypot(p.x / (head.x + FOAM), p.z / (head.z + FOAM))).toBeGreaterThan(1);
    }
  });
});

describe('the bracer on a forearm', () => {
  const triangles = trianglesOf(readSample('bracer.obj', 'bracer.seams.json'));
  // Wrist and widest forearm of an adult, mm round, and where they lie above the hand edge of the body.
  it.each([
    [31, 175],
    [175, 280],
  ])('at %i mm has room for %i mm round', (y, body) => {
    const clearance = (girth(section(triangles, y)) - 2 * Math.PI * FOAM - body) / (2 * Math.PI);
    expect(clearance).toBeGreaterThan(2);
    expect(clearance).toBeLessThan(8);
  });

  it('opens along the back by 8 to 16 mm', () => {
    const back = section(triangles, 100)
      .filter((p) => p.y < 0)
      .map((p) => Math.abs(p.x));
    expect(2 * Math.min(...back)).toBeGreaterThan(8);
    expect(2 * Math.min(...back)).toBeLessThan(16);
  });
});

describe('the maul head on its handle', () => {
  const sample = readSample('maul-head.obj', 'maul-head.seams.json');
  it('has a hole 33 mm across its flats, for a pipe of 32 mm', () => {
    const lowest = Math.min(...sample.vertices.filter((v) => Math.hypot(v.x, v.z) < 20).map((v) => v.y));
    const rim = sample.vertices.filter((v) => v.y === lowest && Math.hypot(v.x, v.z) < 20);
    expect(rim).toHaveLength(8);
    for (const v of rim) expect(2 * Math.hypot(v.x, v.z) * Math.cos(Math.PI / 8)).toBeCloseTo(33.3, 1);
  });
});
