import { describe, expect, it } from 'vitest';
import type { Vec2 } from '../../../src/geom/vec.ts';
import type { ArtPath, ArtSegment } from '../../../src/model/artwork.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../../../src/pipeline/artwork.ts';
import { flatPath } from '../../../src/steps/artwork/segments.ts';
import { symmetrise } from '../../../src/steps/artwork/symmetrise.ts';

const closed = (corners: readonly Vec2[]): ArtPath => ({
  isClosed: true,
  segments: corners.map((from, i) => ({ kind: 'line', from, to: corners[(i + 1) % corners.length] })),
});
/** Off by up to 0.05 mm, the same each time. */
const jitter = (i: number): number => 0.05 * Math.sin(12.9898 * (i + 1));
const star = (points: number, noise: number): Vec2[] =>
  Array.from({ length: 2 * points }, (_, i) => {
    const [r, turn] = [i % 2 === 0 ? 50 : 21, 0.3 + (Math.PI * i) / points];
    return { x: 7 + r * Math.cos(turn) + noise * jitter(i), y: -3 + r * Math.sin(turn) + noise * jitter(i + 40) };
  });
const cornersOf = ({ segments }: ArtPath): Vec2[] => segments.map(({ from }) => from);

/** Farthest of points from the nearest of others, mm. */
const farthestOff = (points: readonly Vec2[], others: readonly Vec2[]): number =>
  Math.max(...points.map((p) => Math.min(...others.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))));

const turned = (p: Vec2, c: Vec2, angle: number): Vec2 => ({
  x: c.x + Math.cos(angle) * (p.x - c.x) - Math.sin(angle) * (p.y - c.y),
  y: c.y + Math.sin(angle) * (p.x - c.x) + Math.cos(angle) * (p.y - c.y),
});
const mirrored = (p: Vec2, c: Vec2, axis: number): Vec2 => turned({ x: p.x, y: 2 * c.y - p.y }, c, 2 * axis);

describe('an outline made symmetric', () => {
  it('is a star again, turned and mirrored to rounding, and moved no farther than it says', () => {
    const drawn = star(5, 1);
    const { path, made } = symmetrise(closed(drawn), 0.2);
    if (made === null) throw new Error('no symmetry found');
    const corners = cornersOf(path);
    expect(made.fold).toBe(5);
    expect(made.axisRad).not.toBeNull();
    expect(
      farthestOff(
        corners.map((p) => turned(p, made.centre, (2 * Math.PI) / 5)),
        corners,
      ),
    ).toBeLessThan(1e-12);
    expect(
      farthestOff(
        corners.map((p) => mirrored(p, made.centre, made.axisRad ?? 0)),
        corners,
      ),
    ).toBeLessThan(1e-12);
    const moved = Math.max(...corners.map((p, i) => Math.hypot(p.x - drawn[i].x, p.y - drawn[i].y)));
    expect(made.deviationMm).toBeCloseTo(moved, 12);
    expect(moved).toBeLessThan(0.15);
  });

  it('is mirrored with its curves and arcs, in the axis of least squares', () => {
    // A shield about x = 20: straight top, curves down to a point, and a round nick that is drawn 0.04 mm too low on one side.
    const from = (x: number, y: number): Vec2 => ({ x, y });
    const [tl, tr, tip, a, b] = [from(0, 50), from(40, 50.04), from(20, 0), from(15, 50), from(25, 50)];
    const nick: ArtSegment = {
      kind: 'arc',
      from: b,
      to: a,
      centre: from(20, 50),
      u: from(5, 0),
      v: from(0, 5),
      start: 0,
      turn: -Math.PI,
    };
    const path: ArtPath = {
      isClosed: true,
      segments: [
        { kind: 'cubic', from: tl, handles: [from(0, 20), from(10, 8)], to: tip },
        { kind: 'cubic', from: tip, handles: [from(30, 8), from(40.06, 20)], to: tr },
        { kind: 'line', from: tr, to: b },
        nick,
        { kind: 'line', from: a, to: tl },
      ],
    };
    const found = symmetrise(path, 0.1);
    const { made } = found;
    if (made === null) throw new Error('no symmetry found');
    expect(made.fold).toBe(1);
    expect(made.axisRad).toBeCloseTo(Math.PI / 2, 2);
    const points = flatPath(found.path, 0.01);
    const all = Array.from({ length: points.length / 2 }, (_, i) => from(points[2 * i], points[2 * i + 1]));
    expect(
      farthestOff(
        all.map((p) => mirrored(p, made.centre, made.axisRad ?? 0)),
        all,
      ),
    ).toBeLessThan(1e-9);
    expect(made.deviationMm).toBeGreaterThan(0.01);
    expect(made.deviationMm).toBeLessThan(0.05);
    expect(found.path.segments.map(({ kind }) => kind)).toEqual(['cubic', 'cubic', 'line', 'arc', 'line']);
  });

  it('stays where it is exact, or too far off, which is told', () => {
    const exact = closed(star(6, 0));
    const same = symmetrise(exact, 0.2);
    expect(same.path).toBe(exact);
    expect(same.made).toMatchObject({ fold: 6 });
    const rough = closed(star(5, 1));
    const kept = symmetrise(rough, 0.01);
    expect(kept.path).toBe(rough);
    if (kept.made !== null) throw new Error('made in spite of the limit');
    expect(kept.nearest?.deviationMm).toBeGreaterThan(0.01);
    expect(
      symmetrise(
        closed([
          { x: 0, y: 0 },
          { x: 90, y: 4 },
          { x: 30, y: 20 },
        ]),
        0.2,
      ).made,
    ).toBeNull();
  });

  it('is told with its size when it is asked for of a drawing', () => {
    const points = star(5, 1).map(({ x, y }) => `${x + 60} ${y + 60}`);
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="0 0 120 120"><polygon points="${points.join(' ')}"/></svg>`;
    const codes = (symmetricMm?: number): string[] => {
      const made = artworkFromSvg(svg, { ...USUAL_ARTWORK, ...(symmetricMm === undefined ? {} : { symmetricMm }) });
      if (!made.ok) throw new Error(made.problem.text);
      return made.notes.map(({ code }) => code);
    };
    expect(codes()).toEqual([]);
    expect(codes(0.2)).toEqual(['artwork/symmetric']);
    expect(codes(0.01)).toEqual(['artwork/not-symmetric']);
  });
});
