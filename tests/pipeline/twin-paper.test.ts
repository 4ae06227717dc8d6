import { describe, expect, it } from 'vitest';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import type { LineRole, Stroke, Template } from '../../src/model/template.ts';
import { onPaper, pieceStrokes } from '../../src/steps/foam/template-lines.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { forAll } from '../support/for-all.ts';
import { mirroredSculpt } from '../support/mirrored-sculpt.ts';
import { IS_LONG } from '../support/long.ts';
import { madeSample } from '../support/run-sample.ts';
import { collisionsOf } from '../steps/foam/template-check.ts';
import { outcomeOf } from '../support/run-solid.ts';

/** How far lines of a template turned over may lie from those of the piece it is cut for, mm. */
const OFF_MM = 0.05;

type Point = readonly [number, number];

const pointsOf = ({ points }: Pick<Stroke, 'points'>): Point[] =>
  Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]]);

/**
 * The drawing turned over and laid on another, by hand as it were: corners of both lines to cut are paired in every way they may be, and the best
 * move taken by the two middles and the one angle that is left. Shares nothing with the program.
 */
function layOver(turned: Template, own: Template): (p: Point) => Point {
  const [from, to] = [turned, own].map(({ drawing }) =>
    pointsOf(drawing.strokes.find(({ role }) => role === 'cut') as Stroke),
  );
  expect(from.length).toBe(to.length);
  const count = from.length;
  let best: { off: number; move: (p: Point) => Point } | null = null;
  const middleOf = (ring: readonly Point[]): Point => {
    const sum = ring.reduce(([x, y], [px, py]): Point => [x + px, y + py], [0, 0]);
    return [sum[0] / count, sum[1] / count];
  };
  const mirrored = from.map(([x, y]): Point => [-x, y]);
  const [a, b] = [middleOf(mirrored), middleOf(to)];
  for (let shift = 0; shift < count; shift += 1) {
    let [c, s] = [0, 0];
    mirrored.forEach(([x, y], i) => {
      const [u, v] = to[(2 * count + shift - i) % count];
      c += (x - a[0]) * (u - b[0]) + (y - a[1]) * (v - b[1]);
      s += (x - a[0]) * (v - b[1]) - (y - a[1]) * (u - b[0]);
    });
    const size = Math.hypot(c, s);
    const move = ([x, y]: Point): Point => [
      b[0] + (c * (-x - a[0]) - s * (y - a[1])) / size,
      b[1] + (s * (-x - a[0]) + c * (y - a[1])) / size,
    ];
    const off = Math.max(
      ...from.map((p, i) => {
        const [x, y] = move(p);
        const [u, v] = to[(2 * count + shift - i) % count];
        return Math.hypot(x - u, y - v);
      }),
    );
    if (best === null || off < best.off) best = { off, move };
  }
  if (best === null) throw new Error('no line to cut');
  return best.move;
}

const toSegment = ([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number => {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(ax + t * dx - x, ay + t * dy - y);
};

/** From points along the lines of one drawing to the nearest line of another, greatest, mm. */
function farthest(lines: readonly Stroke[], others: readonly Stroke[], move: (p: Point) => Point): number {
  const segments = others.flatMap((stroke) => {
    const points = pointsOf(stroke).map(move);
    return points
      .slice(stroke.closed ? 0 : 1)
      .map((p, i) => [p, points.at(stroke.closed ? i - 1 : i) as Point] as const);
  });
  let worst = 0;
  for (const p of lines.flatMap(pointsOf))
    worst = Math.max(worst, Math.min(...segments.map(([a, b]) => toSegment(p, a, b))));
  return worst;
}

const ROLES: readonly LineRole[] = ['cut', 'bevel', 'lap', 'fold-out', 'fold-in', 'groove', 'groove-behind', 'mark'];

/**
 * The strokes of one role; without arrows, which each drawing has where it has room, and without the places where a bevel is told, which are counted
 * from the beginning of an edge.
 */
const linesOf = ({ drawing }: Template, role: LineRole, piece: FoamPiece): readonly Stroke[] => {
  const count = pieceStrokes(onPaper(piece)).filter((stroke) => stroke.role === role).length;
  return drawing.strokes.filter((stroke) => stroke.role === role).slice(0, count);
};

/** Turns each template that serves for two over, lays it on that of the second piece, and holds all lines and marks against each other. */
function checkTurned({ pieces, templates, turned }: Outcome): void {
  for (const shared of turned) {
    const [first, second] = [shared.piece, shared.turned].map(
      (id) => (pieces ?? []).find((piece) => piece.id === id) as FoamPiece,
    );
    const own = (templates ?? []).find(({ piece }) => piece === second.id) as Template;
    const move = layOver(shared, own);
    const back = layOver(own, shared);
    for (const role of ROLES) {
      const [lines, others] = [linesOf(shared, role, first), linesOf(own, role, second)];
      expect(lines.length > 0, role).toBe(others.length > 0);
      if (lines.length === 0) continue;
      expect(farthest(others, lines, move), role).toBeLessThan(OFF_MM);
      expect(farthest(lines, others, back), role).toBeLessThan(OFF_MM);
    }
    const names = new Set(shared.drawing.words.map(({ text }) => text));
    for (const mark of first.marks) {
      const at = move([(first.tracedSide === 'back' ? -1 : 1) * mark.at.x, mark.at.y]);
      const mate = second.marks.find((other) => {
        const x = (second.tracedSide === 'back' ? -1 : 1) * other.at.x;
        return Math.hypot(x - at[0], other.at.y - at[1]) < OFF_MM && other.index === mark.index;
      });
      const own = `${mark.letter}${mark.index}`;
      expect(mate, own).toBeDefined();
      expect(names).toContain(mate?.letter === mark.letter ? own : `${own}/${mate?.letter}${mate?.index}`);
    }
  }
}

const each = (project: Project): Project => ({ ...project, paper: { ...project.paper, mirrored: 'each' } });
const paperOf = ({ paper }: Outcome) => paper ?? { pages: [], turned: [], blocks: [], blankTiles: 0 };

describe('mirrored pieces', () => {
  it('of a random sculpt share paper: the template turned over is that of the other, lines, marks and all', async () => {
    const runs = IS_LONG ? 12 : 4;
    let shared = 0;
    await forAll(
      (rand) => ({ solid: mirroredSculpt(rand), isBack: rand() < 0.3, isGrooved: rand() < 0.3 }),
      async ({ solid, isBack, isGrooved }) => {
        const change = (part: SculptPart): SculptPart => ({
          ...part,
          tracedSide: isBack ? 'back' : 'face',
          pieceSettings: isGrooved ? solid.faces.map((_, face) => ({ face, bendStyle: 'grooved' as const })) : [],
        });
        const outcome = await outcomeOf(solid, change);
        expect(outcome.stopped).toBeNull();
        const twins = (outcome.pieces ?? []).filter(({ twinOf }) => twinOf !== undefined);
        expect(twins.length).toBeGreaterThanOrEqual(2);
        expect((outcome.templates ?? []).flatMap(({ apart }) => apart ?? [])).toEqual([]);
        expect(outcome.turned).toHaveLength(twins.length / 2);
        checkTurned(outcome);
        shared += outcome.turned.length;
      },
      { runs },
    );
    expect(shared).toBeGreaterThan(1.6 * runs);
  });

  // Pages with a template for each pair and with one for each piece, the map and the page to measure counted.
  it.each<[string, number, number, number]>([
    ['helm', 4, 9, 11],
    ['bracer', 0, 6, 6],
    ['lantern', 1, 11, 12],
  ])('of the %s: %i templates serve for two pieces', async (name, serving, pages, pagesEach) => {
    const { project, pipeline, outcome } = await madeSample(name);
    checkTurned(outcome);
    expect(outcome.turned.flatMap(collisionsOf)).toEqual([]);
    const paper = paperOf(outcome);
    expect(paper.turned).toHaveLength(serving);
    expect(paper.pages).toHaveLength(pages);
    const apart = await pipeline.run(each(project), QUIET_WORK);
    expect(paperOf(apart).turned).toEqual([]);
    expect(paperOf(apart).pages).toHaveLength(pagesEach);
    // Foam knows nothing of it: every piece is laid on its sheet.
    expect(outcome.sheets).toEqual(apart.sheets);
    for (const { piece, template } of paper.turned) {
      const on = paper.pages.filter((page) => page.kind === 'tile' && page.pieces.includes(template));
      expect(on.length).toBeGreaterThan(0);
      expect(on.every((page) => page.pieces.includes(piece))).toBe(true);
    }
  });
});
