import { describe, expect, it } from 'vitest';
import { coveredRegions } from '../../src/geom/polygon-boolean.ts';
import { boxOfPoints, ringArea, type Ring } from '../../src/geom/ring.ts';
import { movePoints } from '../../src/geom/turn-and-move.ts';
import { findPaper } from '../../src/model/papers.ts';
import type { PageSet } from '../../src/model/page.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { PAPER_NESTER } from '../../src/pipeline/paper-nester.ts';
import { makePages } from '../../src/steps/tile/make-pages.ts';
import type { PageInput } from '../../src/steps/tile/page-input.ts';
import { expectOk } from '../support/expect-ok.ts';
import { handMadeTemplate, handMadeWords, stripTemplate } from '../support/hand-made-templates.ts';
import { collisions, kit, pageInput, rejoinError } from '../steps/tile/support.ts';

const rectangle = (width: number, height: number): Ring => Float64Array.of(0, 0, width, 0, width, height, 0, height);

/** An L of two arms 100 mm wide and 180 mm long. */
const corner = (): Ring => Float64Array.of(0, 0, 180, 0, 180, 80, 80, 80, 80, 180, 0, 180);

const areaOf = (rings: readonly Ring[]): number =>
  coveredRegions(rings).reduce(
    (sum, { outer, holes }) => sum + ringArea(outer) + holes.reduce((all, hole) => all + ringArea(hole), 0),
    0,
  );

describe('outlines on equal sheets', () => {
  it('lie in each other’s corners, in the sheet, apart by the gap', () => {
    const outlines = [corner(), corner()];
    const places = runAtOnce(PAPER_NESTER.onSheets(outlines, { width: 270, height: 190 }, 4))!;
    expect(new Set(places.map(({ room }) => room)).size).toBe(1);
    const laid = places.map(({ index, move }) => movePoints(outlines[index], move));
    for (const ring of laid) {
      const { minX, minY, maxX, maxY } = boxOfPoints(ring);
      expect(Math.min(minX, minY, 270 - maxX, 190 - maxY)).toBeGreaterThan(-0.01);
    }
    expect(areaOf(laid)).toBeCloseTo(2 * areaOf([corner()]), 3);
    // Two shelves would take a sheet of 364 mm.
    expect(runAtOnce(PAPER_NESTER.onSheets(outlines, { width: 170, height: 100 }, 4))).toBeNull();
  });

  it('stand upright rather than on their heads', () => {
    for (const outlines of [[corner()], [rectangle(150, 100), rectangle(140, 60), rectangle(30, 20)]]) {
      const places = runAtOnce(PAPER_NESTER.onSheets(outlines, { width: 190, height: 265 }, 4))!;
      const upright = places.reduce(
        (sum, { index, move }) => sum + Math.cos(move.turnRad) * ringArea(outlines[index]),
        0,
      );
      expect(upright).toBeGreaterThanOrEqual(-1e-3);
    }
  });
});

describe('outlines in rooms that are partly taken', () => {
  it('lie beside what is there, or are left out', () => {
    const taken = [rectangle(120, 265)];
    const rooms = [
      { width: 190, height: 265, taken },
      { width: 190, height: 265, taken: [] },
    ];
    const outlines = [rectangle(60, 200), rectangle(185, 260), rectangle(300, 20)];
    const places = runAtOnce(PAPER_NESTER.inRooms(outlines, rooms, 4));
    expect(places.map(({ index, room }) => [index, room])).toEqual([
      [0, 0],
      [1, 1],
    ]);
    const beside = boxOfPoints(movePoints(outlines[0], places[0].move));
    expect(beside.minX).toBeGreaterThan(123.99);
    expect(beside.maxX).toBeLessThan(190.01);
  });
});

/** How often a template's cut line lies on more than one printed tile in its whole, and how much of laid outlines overlaps. */
function laidCuts(input: PageInput, set: PageSet): readonly { piece: string; block: number; ring: Ring }[] {
  return set.blocks.flatMap(({ number, placements }) =>
    placements.map((placement) => {
      const { drawing } = input.templates.find(({ piece }) => piece === placement.piece)!;
      const cut = drawing.strokes.find(({ role }) => role === 'cut')!;
      return { piece: placement.piece, block: number, ring: movePoints(cut.points, placement) };
    }),
  );
}

const tiles = (set: PageSet): number => set.pages.filter(({ kind }) => kind === 'tile').length;

describe('templates on paper', () => {
  it.each(['A4', 'A3', 'Letter'])('take fewer pages of %s, and none is lost, cut or covered', (name) => {
    const paper = expectOk(findPaper(name));
    const templates = [...kit(), ...['left', 'right'].map((id) => stripTemplate(`greave ${id}`, 300, 110))];
    const input = pageInput({ paper, templates });
    const before = expectOk(makePages(input));
    const set = expectOk(makePages({ ...input, nester: PAPER_NESTER }));
    expect(tiles(set)).toBeLessThan(tiles(before));
    for (const role of ['cut', 'bevel', 'mark'] as const) expect(rejoinError(templates, set, role)).toBeLessThan(0.01);
    expect(set.pages.flatMap(collisions)).toEqual([]);
    const laid = laidCuts(input, set);
    expect(laid.map(({ piece }) => piece).sort()).toEqual(templates.map(({ piece }) => piece).sort());
    for (const block of new Set(laid.map((each) => each.block))) {
      const rings = laid.filter((each) => each.block === block).map(({ ring }) => ring);
      expect(areaOf(rings)).toBeCloseTo(
        rings.reduce((sum, ring) => sum + ringArea(ring), 0),
        2,
      );
    }
    // What fits a page crosses no edge: some page shows its whole cut line.
    for (const { piece, ring } of laid) {
      const { minX, minY, maxX, maxY } = boxOfPoints(ring);
      const [w, h] = [maxX - minX, maxY - minY].sort((a, b) => a - b);
      if (w > paper.widthMm - 45 || h > paper.heightMm - 57) continue;
      const { drawing } = templates.find((each) => each.piece === piece)!;
      const corners = drawing.strokes.find(({ role }) => role === 'cut')!.points.length / 2;
      const isWhole = set.pages.some((page) =>
        page.drawing.strokes.some(
          ({ role, closed, points }) => role === 'cut' && closed && points.length / 2 === corners,
        ),
      );
      expect(isWhole, piece).toBe(true);
    }
    expect(JSON.stringify(makePages({ ...input, templates: [...templates], nester: { ...PAPER_NESTER } }))).toBe(
      JSON.stringify(makePages({ ...input, nester: PAPER_NESTER })),
    );
  });

  it('keeps words beside a template clear of its neighbours', () => {
    const arm = [...corner()];
    const templates = ['a', 'b', 'c'].map((id) =>
      handMadeTemplate(id, arm, [], [handMadeWords(id, 40, 40), handMadeWords(`beside ${id} · bevel 12°`, 130, 90)]),
    );
    const set = expectOk(makePages(pageInput({ templates, paper: expectOk(findPaper('A3')), nester: PAPER_NESTER })));
    expect(set.pages.flatMap(collisions)).toEqual([]);
  });
});
