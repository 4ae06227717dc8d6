import { describe, expect, it } from 'vitest';
import { overlapPlaces } from '../../src/geom/overlap-places.ts';
import { near } from '../support/near-numbers.ts';

/** A band of quads of 1 mm round the origin from angle 0 to `turns`, each cut in two: triangles 2 i and 2 i + 1 are quad i. */
function ringBand(turns: number, quads: number, inner = 5, outer = 8) {
  const xy: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i <= quads; i += 1) {
    const angle = (2 * Math.PI * turns * i) / quads;
    for (const r of [inner, outer]) xy.push(r * Math.cos(angle), r * Math.sin(angle));
    if (i < quads) triangles.push(2 * i, 2 * i + 1, 2 * i + 3, 2 * i, 2 * i + 3, 2 * i + 2);
  }
  return { xy: Float64Array.from(xy), triangles: Uint32Array.from(triangles) };
}

/** Area of a band of `quads` quads, mm². */
const bandArea = (quads: number, step: number, inner = 5, outer = 8): number =>
  (quads * Math.sin(step) * (outer * outer - inner * inner)) / 2;

describe('overlapPlaces', () => {
  it('finds nothing on a shape that lies beside itself', () => {
    const { xy, triangles } = ringBand(0.9, 36);
    expect(overlapPlaces(xy, triangles)).toEqual([]);
  });

  it('tells the area, the limbs and the middle of two squares that share a corner of 1 by 2 mm', () => {
    const xy = Float64Array.from([0, 0, 4, 0, 4, 4, 0, 4, 3, 2, 9, 2, 9, 8, 3, 8]);
    const [place, ...others] = overlapPlaces(xy, Uint32Array.from([0, 1, 2, 0, 2, 3, 4, 5, 6, 4, 6, 7]));
    expect(others).toEqual([]);
    expect(place.areaMm2).toBeCloseTo(2, 12);
    expect([...place.limbs[0]].concat([...place.limbs[1]]).sort()).toEqual([0, 1, 2, 3]);
    expect(place.limbs.map((limb) => limb.every((t) => t < 2))).toContain(true);
    expect(place.point.x).toBeGreaterThan(3);
    expect(place.point.x).toBeLessThan(4);
    expect(place.point.y).toBeGreaterThan(2);
    expect(place.point.y).toBeLessThan(4);
  });

  it('tells area and middle of what two triangles have in common', () => {
    const common = (corners: number[]) => overlapPlaces(Float64Array.from(corners), Uint32Array.of(0, 1, 2, 3, 4, 5));
    // 1 1, 6 1, 1 3.5 are common: 6.25 mm², its middle the mean of these.
    const [small, ...none] = common([0, 0, 8, 0, 0, 4, 1, 1, 9, 1, 1, 9]);
    expect(none).toEqual([]);
    expect([small.areaMm2, small.point.x, small.point.y]).toEqual(near([6.25, 8 / 3, 5.5 / 3]));
    expect([small.pair, small.pairs]).toEqual([[0, 1], [[0, 1]]]);
    // Five sides: the half square of 10 without that of 4 at its corner and that of 4 on the right.
    const [five] = common([0, 0, 10, 0, 0, 10, 6, -2, 6, 12, -8, 12]);
    expect([five.areaMm2, five.point.x, five.point.y]).toEqual(near([34, 292 / 3 / 34, 436 / 3 / 34]));
  });

  it('names the pair that has the most in common', () => {
    // A large triangle over two neighbours: 2 by 2 of the first, more of the second.
    const xy = Float64Array.from([0, 0, 10, 0, 10, 10, 0, 10, 3, 1, 9, 1, 9, 7]);
    const [place] = overlapPlaces(xy, Uint32Array.of(0, 2, 3, 0, 1, 2, 4, 5, 6));
    expect([...place.pair].sort()).toEqual([1, 2]);
    expect(place.areaMm2).toBeCloseTo(18, 9);
    expect([place.point.x, place.point.y]).toEqual(near([7, 3]));
  });

  it('gives one place with two limbs for a band of a turn and a quarter', () => {
    const { xy, triangles } = ringBand(1.25, 50);
    const places = overlapPlaces(xy, triangles);
    expect(places).toHaveLength(1);
    expect(places[0].areaMm2).toBeCloseTo(bandArea(10, (2 * Math.PI) / 40), 9);
    const [low, high] = [...places[0].limbs].sort((a, b) => a[0] - b[0]);
    expect([low[0], low[low.length - 1]]).toEqual([0, 19]);
    expect([high[0], high[high.length - 1]]).toEqual([80, 99]);
  });

  it('keeps apart two places that do not hang together', () => {
    const { xy, triangles } = ringBand(1.1, 44);
    const far = ringBand(1.2, 48);
    const both = Float64Array.from([...xy, ...far.xy.map((x) => x + 100)]);
    const shift = xy.length / 2;
    const places = overlapPlaces(both, Uint32Array.from([...triangles, ...far.triangles.map((v) => v + shift)]));
    expect(places.map((place) => place.areaMm2)).toEqual([
      expect.closeTo(bandArea(8, (2 * Math.PI) / 40), 9),
      expect.closeTo(bandArea(4, (2 * Math.PI) / 40), 9),
    ]);
    expect(places[0].point.x).toBeGreaterThan(90);
  });

  it('counts each pair of layers where three lie on each other', () => {
    const { xy, triangles } = ringBand(2.25, 90);
    const total = overlapPlaces(xy, triangles).reduce((sum, place) => sum + place.areaMm2, 0);
    // Quads 0 to 9 lie three deep, three pairs each; quads 10 to 39 two deep.
    expect(total).toBeCloseTo(bandArea(10 * 3 + 30, (2 * Math.PI) / 40), 8);
  });
});
