import { describe, expect, it } from 'vitest';
import { pieceId } from '../../../src/base/ids.ts';
import { boxOfPoints } from '../../../src/geom/ring.ts';
import { placeOfWords } from '../../../src/geom/words-place.ts';
import type { Drawing, Template } from '../../../src/model/template.ts';
import { sheetDrawings } from '../../../src/steps/write/sheet-drawings.ts';
import { handMadeTemplate, handMadeWords } from '../../support/hand-made-templates.ts';
import { collisions } from '../tile/support.ts';

/** A sliver with no room for its number. */
function sliver(number: number, width = 80, height = 3): Template {
  const template = handMadeTemplate(`s${number}`, [0, 0, width, 0, width, height, 0, height]);
  return { ...template, onFoam: { ...template.drawing, blocks: [], beside: String(number) } };
}

const laid = (piece: string, x: number, y: number, turnRad = 0, isFlipped = false) => ({
  piece: pieceId(piece),
  copy: 0,
  x,
  y,
  turnRad,
  isFlipped,
});

const hits = (drawings: readonly Drawing[]): readonly string[] =>
  collisions({
    kind: 'tile',
    name: 'sheet',
    widthMm: 0,
    heightMm: 0,
    pieces: [],
    drawing: {
      strokes: drawings.flatMap(({ strokes }) => strokes),
      words: drawings.flatMap(({ words }) => words),
    },
  });

/** Two segments that cross. */
const doCross = (a: ArrayLike<number>, b: ArrayLike<number>): boolean => {
  const side = (p: ArrayLike<number>, x: number, y: number): number =>
    Math.sign((p[2] - p[0]) * (y - p[1]) - (p[3] - p[1]) * (x - p[0]));
  return side(a, b[0], b[1]) * side(a, b[2], b[3]) < 0 && side(b, a[0], a[1]) * side(b, a[2], a[3]) < 0;
};

describe('numbers that have no room inside', () => {
  it('stand in free space beside their piece, with a leader that crosses nothing', () => {
    const slivers = Array.from({ length: 6 }, (_, i) => sliver(i + 1));
    // Edge to edge, as tight as can be: only the ends and the outermost sides are free.
    const sheet = { widthMm: 200, heightMm: 100, placements: slivers.map((_, i) => laid(`s${i + 1}`, 50, 40 + 3 * i)) };
    const { drawings, list } = sheetDrawings(sheet, slivers);
    expect(list).toEqual([]);
    expect(drawings.map(({ words }) => words.map(({ text }) => text))).toEqual([
      ['1'],
      ['2'],
      ['3'],
      ['4'],
      ['5'],
      ['6'],
    ]);
    expect(hits(drawings)).toEqual([]);
    const leaders = drawings.map(({ strokes }) => strokes.at(-1)!);
    const edges = drawings.flatMap(({ strokes: [cut] }) =>
      Array.from({ length: 4 }, (_, k) => [0, 1, 2, 3].map((i) => cut.points[(2 * k + i) % 8])),
    );
    leaders.forEach(({ role, points }, i) => {
      expect(role).toBe('leader');
      expect(edges.some((edge) => doCross(points, edge))).toBe(false);
      expect(leaders.some((other, k) => k !== i && doCross(points, other.points))).toBe(false);
      // It ends at its own piece.
      const { minX, minY, maxX, maxY } = boxOfPoints(drawings[i].strokes[0].points);
      const [x, y] = points.slice(2);
      expect(Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY))).toBeLessThan(0.5);
    });
  });

  it('are told in a list beside the sheet where nothing is free', () => {
    const slivers = Array.from({ length: 4 }, (_, i) => sliver(i + 1, 80, 3));
    const sheet = { widthMm: 80, heightMm: 12, placements: slivers.map((_, i) => laid(`s${i + 1}`, 0, 3 * i)) };
    const { drawings, list, listMm } = sheetDrawings(sheet, slivers);
    expect(drawings.every(({ words }) => words.length === 0)).toBe(true);
    expect(list.map(({ text }) => text)).toContain('1: 40 mm from the left, 2 mm from below');
    expect(list).toHaveLength(4);
    const boxes = list.map((line) => placeOfWords(line));
    for (const { x, halfWidth } of boxes) {
      expect(x - halfWidth).toBeGreaterThan(80);
      expect(x + halfWidth).toBeLessThan(80 + listMm);
    }
    expect(hits([{ strokes: [], words: list }])).toEqual([]);
  });

  it('have no leader across another piece: those shut in are told in the list', () => {
    const slivers = Array.from({ length: 4 }, (_, i) => sliver(i + 1, 80, 3));
    const sheet = { widthMm: 80, heightMm: 60, placements: slivers.map((_, i) => laid(`s${i + 1}`, 0, 20 + 3 * i)) };
    const { drawings, list } = sheetDrawings(sheet, slivers);
    expect(drawings.map(({ words }) => words.length)).toEqual([1, 0, 0, 1]);
    expect(list.map(({ text }) => text.slice(0, 2))).toEqual(['2:', '3:']);
  });

  it('lie on no other piece, however much white it has', () => {
    const plate = handMadeTemplate('plate', [0, 0, 180, 0, 180, 90, 0, 90]);
    const sheet = { widthMm: 200, heightMm: 104, placements: [laid('plate', 5, 5), laid('s1', 50, 95)] };
    const { drawings } = sheetDrawings(sheet, [plate, sliver(1)]);
    const [words] = drawings[1].words;
    const { x, y } = placeOfWords(words);
    expect(x > 5 && x < 185 && y > 5 && y < 95).toBe(false);
  });
});

describe('words of a piece that lies turned', () => {
  const words = [
    handMadeWords('6', 20, 30, { heightMm: 8, align: 'left' }),
    handMadeWords('Visor', 20, 22, { align: 'left' }),
  ];
  const template = handMadeTemplate('p', [0, 0, 100, 0, 100, 60, 0, 60], [], words);
  const onFoam = { ...template.drawing, blocks: [2] };

  it.each([0, 0.4, Math.PI / 2, 2, Math.PI, -2, -Math.PI / 2, -0.4])('never stand on their heads: %f', (turnRad) => {
    for (const isFlipped of [false, true]) {
      const sheet = { widthMm: 400, heightMm: 400, placements: [laid('p', 200, 200, turnRad, isFlipped)] };
      const [drawing] = sheetDrawings(sheet, [{ ...template, onFoam }]).drawings;
      for (const { angleRad } of drawing.words) expect(Math.cos(angleRad)).toBeGreaterThan(-1e-9);
      // The number stands over the name as it did, and both within the room they had.
      const [number, name] = drawing.words.map((line) => placeOfWords(line));
      const up = { x: -Math.sin(number.angleRad), y: Math.cos(number.angleRad) };
      expect((number.x - name.x) * up.x + (number.y - name.y) * up.y).toBeGreaterThan(0);
      expect(hits([drawing])).toEqual([]);
    }
  });
});
