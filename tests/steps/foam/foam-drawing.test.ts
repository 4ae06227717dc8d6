import { describe, expect, it } from 'vitest';
import { SMALLEST_WORDS_MM } from '../../../src/model/line-style.ts';
import type { FoamDrawing, Stroke } from '../../../src/model/template.ts';
import { wordsOnFoam } from '../../../src/steps/foam/foam-drawing.ts';
import { straight } from '../../support/hand-made-templates.ts';
import { collisionsOf, isInsidePolygon, wordsCorners } from './template-check.ts';

const NAMED = { number: 6, name: 'Maul head collar' };
const UP = { up: { x: 0, y: 1 }, grain: { x: 1, y: 0 } };

const ringOf = (points: readonly (readonly number[])[]): Float64Array => Float64Array.from(points.flat());
const rectangle = (width: number, height: number) => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

function drawn(points: readonly (readonly number[])[], more: readonly Stroke[] = [], ways = UP): FoamDrawing {
  const cut: Stroke = { role: 'cut', points: ringOf(points), closed: true };
  return wordsOnFoam([cut.points], [cut, ...more], NAMED, ways);
}

const texts = ({ words }: FoamDrawing): string[] => words.map(({ text }) => text);

/** Corners of words that do not lie inside. */
const outside = ({ words }: FoamDrawing, points: readonly (readonly number[])[]): readonly number[][] =>
  words.flatMap(wordsCorners).filter((corner) => !isInsidePolygon(corner, points));

describe('words on foam', () => {
  it.each([
    ['large', rectangle(300, 200)],
    ['a band', rectangle(300, 30)],
    ['narrow', rectangle(200, 9)],
    [
      'a hook',
      [
        [0, 0],
        [160, 0],
        [160, 18],
        [18, 18],
        [18, 120],
        [0, 120],
      ],
    ],
  ])('lie wholly inside what is cut, off lines and one another: %s', (_, points) => {
    const fold = straight('fold-out', 0, 0, points[2][0], points[2][1]);
    for (const drawing of [drawn(points), drawn(points, [fold])]) {
      expect(drawing.beside).toBeUndefined();
      expect(texts(drawing)[0]).toMatch(/^6/);
      expect(outside(drawing, points)).toEqual([]);
      const { strokes, words } = drawing;
      expect(collisionsOf({ drawing: { strokes, words } } as never)).toEqual([]);
    }
  });

  it('are the number as large as fits, the name and both arrows where there is room', () => {
    const large = drawn(rectangle(300, 200));
    expect(texts(large)).toEqual(['6', 'Maul head collar', 'up', 'grain']);
    expect(large.words[0].heightMm).toBe(14);
    // 9 mm less 0.7 on either side leave 7.6; letters take 1.43 of their height: 5 mm.
    const narrow = drawn(rectangle(200, 9), [], { up: null, grain: null } as never);
    expect(narrow.words[0].heightMm).toBe(5);
    expect(texts(narrow)).toEqual(['6.', 'Maul head collar']);
  });

  it('leave the number to a place beside where it has no room at 2.5 mm', () => {
    const least = 1.43 * SMALLEST_WORDS_MM + 1.4;
    expect(drawn(rectangle(200, least - 0.1))).toMatchObject({ beside: '6', words: [] });
    const roomy = drawn(rectangle(200, least + 0.2));
    expect(roomy.beside).toBeUndefined();
    expect(roomy.words[0].heightMm).toBe(SMALLEST_WORDS_MM);
  });

  it('count the lines that belong together', () => {
    const drawing = drawn(rectangle(300, 200));
    expect(drawing.blocks).toEqual([2, 1, 1]);
    expect(drawing.blocks.reduce((sum, count) => sum + count)).toBe(drawing.words.length);
  });
});
