import { describe, expect, it } from 'vitest';
import { inPicture, seenLines } from '../../../src/steps/shop/hidden-lines.ts';
import { joinedLines } from '../../../src/steps/shop/joined-lines.ts';
import { solidScene, type ScenePlate } from '../../../src/steps/shop/solid-scene.ts';
import { stepPicture, viewFrom } from '../../../src/steps/shop/step-picture.ts';

/** A flat plate of so many mm, its face up at `z`, `t` thick, its lower left corner at x, y. */
function plate(x: number, y: number, z: number, wide: number, deep: number, t: number): ScenePlate {
  const skin = (at: number): number[] => [x, y, at, x + wide, y, at, x + wide, y + deep, at, x, y + deep, at];
  return { triangles: [0, 1, 2, 0, 2, 3], face: skin(z), back: skin(z - t) };
}

const lengthOf = (lines: readonly { ax: number; ay: number; bx: number; by: number }[]): number =>
  lines.reduce((sum, { ax, ay, bx, by }) => sum + Math.hypot(bx - ax, by - ay), 0);

describe('hidden lines', () => {
  it('of a box leave nine of its twelve edges, whole', () => {
    const scene = solidScene([plate(0, 0, 40, 100, 60, 40)]);
    const view = viewFrom('z', 35, 24);
    const lines = seenLines(scene, view);
    expect(lines).toHaveLength(9);
    // Each direction three times, as long as it is seen from there.
    const seen = [
      { x: 100, y: 0, z: 0 },
      { x: 0, y: 60, z: 0 },
      { x: 0, y: 0, z: 40 },
    ].map((edge) => {
      const { x, y } = inPicture(view, edge);
      return 3 * Math.hypot(x, y);
    });
    expect(lengthOf(lines)).toBeCloseTo(seen[0] + seen[1] + seen[2], 6);
  });

  it('are parted where a body stands before another', () => {
    // Looked at from above: the upper plate hides the middle third of the lower one's long edges.
    const view = { right: { x: 1, y: 0, z: 0 }, up: { x: 0, y: 1, z: 0 }, eye: { x: 0, y: 0, z: 1 } };
    const scene = solidScene([plate(0, 0, 0, 90, 20, 5), plate(30, -10, 50, 30, 40, 5)]);
    const lower = seenLines(scene, view).filter(({ plate: own }) => own === 0);
    expect(lengthOf(lower)).toBeCloseTo(2 * 60 + 2 * 20, 6);
    const ends = lower.flatMap(({ ax, bx }) => [ax, bx]).sort((a, b) => a - b);
    expect(new Set(ends.map((x) => Math.round(1e6 * x) / 1e6))).toEqual(new Set([0, 30, 60, 90]));
    const upper = seenLines(scene, view).filter(({ plate: own }) => own === 1);
    expect(lengthOf(upper)).toBeCloseTo(140, 6);
  });

  it('are put together where two of them meet, and nowhere else', () => {
    const line = (ax: number, ay: number, bx: number, by: number) => ({ plate: 0, ax, ay, bx, by });
    const joined = joinedLines([
      line(0, 0, 1, 0),
      line(2, 0, 1, 0),
      line(2, 0, 3, 0),
      line(3, 0, 3, 1),
      line(3, 0, 4, 0),
    ]);
    expect(joined.map((points) => points.length / 2).sort()).toEqual([2, 2, 4]);
  });
});

describe('the picture of a step', () => {
  const drawing = stepPicture(
    {
      plates: [
        { ...plate(0, 0, 0, 100, 60, 6), number: 1, isNew: false },
        { ...plate(100, 0, 0, 50, 60, 6), number: 2, isNew: true },
      ],
      seams: [
        { letter: 'A', points: Float64Array.of(100, 0, 0, 100, 30, 0, 100, 60, 0), touchShare: 0.5, roll: 'both' },
      ],
      upAxis: 'z',
    },
    88,
    60,
  );

  it('lies in its box, what is new heavier than the rest, with letter and numbers clear of each other', () => {
    for (const { points } of drawing.strokes) {
      for (let i = 0; i < points.length; i += 2) {
        expect(points[i]).toBeGreaterThan(0);
        expect(points[i]).toBeLessThan(88);
        expect(points[i + 1]).toBeGreaterThan(0);
        expect(points[i + 1]).toBeLessThan(60);
      }
    }
    expect(drawing.words.map(({ text }) => text).sort()).toEqual(['1', '2', 'A']);
    expect(drawing.words.find(({ text }) => text === '2')?.bold).toBe(true);
    expect(drawing.words.find(({ text }) => text === '1')?.bold).toBeUndefined();
    const places = drawing.words.map(({ at }) => at);
    places.forEach((p, i) => {
      for (const q of places.slice(0, i)) expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThan(3);
    });
    expect(new Set(drawing.strokes.filter(({ filled }) => filled !== true).map(({ role }) => role))).toEqual(
      new Set(['map', 'cut']),
    );
  });

  it('has the seam as two bars, a dot and an arrow head at either end', () => {
    expect(drawing.strokes.filter(({ filled }) => filled === true).map(({ points }) => points.length / 2)).toEqual([
      4, 4, 16, 3, 3,
    ]);
  });
});
