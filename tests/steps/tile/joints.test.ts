import { describe, expect, it } from 'vitest';
import type { Box2 } from '../../../src/geom/ring.ts';
import { doesSegmentMeetBox, type TurnedBox } from '../../../src/geom/turned-box.ts';
import type { Page, PageSet, PaperBlock } from '../../../src/model/page.ts';
import type { Template, Words } from '../../../src/model/template.ts';
import { movePoints } from '../../../src/geom/turn-and-move.ts';
import { makePages } from '../../../src/steps/tile/make-pages.ts';
import { turnedWordsBox, wordsBox } from '../../../src/steps/tile/words-box.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { handMadeTemplate, handMadeWords, shieldTemplate, straight } from '../../support/hand-made-templates.ts';
import { blockFromPage, collisions, PAPER_CASES, pageInput, rejoinError, segmentsOf, tilesOf } from './support.ts';

/** Pairs of printed tiles, the second to the right of or above the first. */
function joints(block: PaperBlock, pages: readonly Page[]): readonly { a: number; b: number; along: 'x' | 'y' }[] {
  const tiles = new Set(tilesOf(block, pages).map(({ tile }) => tile));
  return [...tiles].flatMap((a) => {
    const right = (a % block.columns) + 1 < block.columns && tiles.has(a + 1);
    const above = tiles.has(a + block.columns);
    return [
      ...(right ? [{ a, b: a + 1, along: 'x' as const }] : []),
      ...(above ? [{ a, b: a + block.columns, along: 'y' as const }] : []),
    ];
  });
}

/** Crosses of a tile, block space: points where an upright and a level mark of a cross meet. */
function crosses(block: PaperBlock, pages: readonly Page[], tile: number): readonly string[] {
  const { x, y } = blockFromPage(block, tile);
  const page = pages[block.pageOfTile[tile]];
  const marks = page.drawing.strokes.filter(({ role }) => role === 'ruler').flatMap(segmentsOf);
  // Ticks hang to one side of a line that is no ruler; a cross is met by a mark of the other direction.
  const found = marks.flatMap(([ax, ay, bx, by]) => {
    if (ay !== by || Math.abs(bx - ax) > 9) return [];
    return marks.flatMap(([cx, cy, dx, dy]) =>
      cx === dx && cx >= Math.min(ax, bx) && cx <= Math.max(ax, bx) && ay >= Math.min(cy, dy) && ay <= Math.max(cy, dy)
        ? [`${(cx + x).toFixed(6)} ${(ay + y).toFixed(6)}`]
        : [],
    );
  });
  return found;
}

const SHIELD = shieldTemplate('shield');
const CASES = PAPER_CASES.filter(({ name }) => /^(A4|A3|Letter|small|tiles|wide)/.test(name));

describe.each(CASES)('joints on $name', ({ change }) => {
  const { pages, blocks } = expectOk(makePages(pageInput({ ...change, templates: [SHIELD] })));
  const [block] = blocks;

  it('show the same crosses on both pages', () => {
    const all = joints(block, pages);
    expect(all.length).toBeGreaterThan(0);
    for (const { a, b } of all) {
      const own = new Set(crosses(block, pages, a));
      expect(
        new Set(crosses(block, pages, b).filter((cross) => own.has(cross))).size,
        `${a} ${b}`,
      ).toBeGreaterThanOrEqual(2);
    }
  });

  it('show ticks every 50 mm of the block, the same on both pages', () => {
    for (const { a, b, along } of joints(block, pages)) {
      const ticks = (tile: number): Set<string> => {
        const { x, y } = blockFromPage(block, tile);
        const marks = pages[block.pageOfTile[tile]].drawing.strokes
          .filter(({ role }) => role === 'ruler')
          .flatMap(segmentsOf);
        const places = marks
          .filter(([ax, ay, bx, by]) => Math.abs(Math.hypot(bx - ax, by - ay) - 2) < 1e-9)
          .map(([ax, ay]) => (along === 'x' ? ay + y : ax + x))
          .filter((place) => Math.abs(place / 50 - Math.round(place / 50)) < 1e-6);
        return new Set(places.map((place) => place.toFixed(3)));
      };
      const [first, second] = [ticks(a), ticks(b)];
      const common = [...first].filter((place) => second.has(place));
      const length = along === 'x' ? block.tileHeightMm : block.tileWidthMm;
      expect(common.length).toBeGreaterThanOrEqual(Math.floor(length / 50) - 2);
    }
  });

  it('name the page on the other side, on both pages', () => {
    for (const { a, b } of joints(block, pages)) {
      const [first, second] = [pages[block.pageOfTile[a]], pages[block.pageOfTile[b]]];
      const said = (page: Page): string => page.drawing.words.map(({ text }) => text).join(' | ');
      expect(said(first)).toMatch(new RegExp(`(glue|meets|right|above) ${second.name}\\b`));
      expect(said(second)).toMatch(new RegExp(`(lay on|meets|left|below) ${first.name}\\b`));
    }
  });

  it('cut no word of the template, and no words collide', () => {
    for (const { tile, page } of tilesOf(block, pages)) {
      const { x, y } = blockFromPage(block, tile);
      const visible = visibleBox(block, tile);
      for (const words of page.drawing.words.filter(({ text }) => isOfShield(text))) {
        const box = wordsBox({ ...words, at: { x: words.at.x + x, y: words.at.y + y } });
        // Whole where it can be seen once joined, here or on the neighbour that repeats it.
        const isHere = isInside(box, visible);
        const isThere = tilesOf(block, pages).some((other) => isInside(box, visibleBox(block, other.tile)));
        expect(isHere || isThere, `${page.name} ${words.text}`).toBe(true);
      }
      expect(collisions(page)).toEqual([]);
    }
  });
});

const isOfShield = (text: string): boolean =>
  SHIELD.drawing.words.some((words) => words.text.includes(text) || text.includes(words.text));
const isInside = (a: Box2, b: Box2): boolean =>
  a.minX >= b.minX && a.maxX <= b.maxX && a.minY >= b.minY && a.maxY <= b.maxY;

/** What can be seen of a tile once printed neighbours are laid over its right and upper strips. */
function visibleBox(block: PaperBlock, tile: number): Box2 {
  const { columns, rows, stepXMm, stepYMm, tileWidthMm, tileHeightMm, pageOfTile } = block;
  const [c, r] = [tile % columns, Math.floor(tile / columns)];
  const right = c + 1 < columns && pageOfTile[tile + 1] >= 0;
  const above = r + 1 < rows && pageOfTile[tile + columns] >= 0;
  return {
    minX: c * stepXMm - 1e-6,
    minY: r * stepYMm - 1e-6,
    maxX: c * stepXMm + (right ? stepXMm : tileWidthMm) + 1e-6,
    maxY: r * stepYMm + (above ? stepYMm : tileHeightMm) + 1e-6,
  };
}

describe('words at a joint', () => {
  const on = (words: Words[], strokes = [straight('mark', 0, 0, 1, 0)]): PageSet =>
    expectOk(
      makePages(
        pageInput({ templates: [handMadeTemplate('plate', [0, 0, 700, 0, 700, 120, 0, 120], strokes, words)] }),
      ),
    );
  const tiles = (set: PageSet): readonly Page[] => set.pages.filter(({ kind }) => kind === 'tile');

  it('move by less than their own length and are not written on both sides of the cut', () => {
    for (let x = 20; x < 680; x += 37) {
      const words = handMadeWords('mate letter', x, 60);
      const set = on([words]);
      const [block] = set.blocks;
      const found = tilesOf(block, set.pages).flatMap(({ tile, page }) =>
        page.drawing.words.filter(({ text }) => text === 'mate letter').map(({ at }) => ({ ...at, tile })),
      );
      expect(found.length).toBeGreaterThan(0);
    }
  });

  it('stay together: a block of lines moves as one', () => {
    const lines = ['12  A long title', 'cut 2 · EVA 10 mm', 'this side out'];
    for (let x = 20; x < 560; x += 7) {
      const set = on(lines.map((text, i) => handMadeWords(text, x, 80 - 8 * i, { heightMm: 4, align: 'left' })));
      const page = tiles(set).find(({ drawing }) => drawing.words.some(({ text }) => text === lines[0]));
      const at = lines.map((line) => page?.drawing.words.find(({ text }) => text === line)?.at);
      const [first, second, third] = at.map((place) => place ?? { x: NaN, y: NaN });
      // Turned with its piece, but every line still under the one before.
      for (const [above, below] of [
        [first, second],
        [second, third],
      ]) {
        expect(Math.hypot(above.x - below.x, above.y - below.y)).toBeCloseTo(8, 9);
      }
      expect(Math.hypot(first.x - third.x, first.y - third.y)).toBeCloseTo(16, 9);
    }
  });

  it('are all there where a joint cuts some lines of a block and not others', () => {
    const blocks = Array.from({ length: 10 }, (_, i) => [`${i} a title that is longer`, `cut ${i}`, `${i} out`]);
    const words = blocks.flatMap((lines, b) =>
      lines.map((text, i) => handMadeWords(text, 8 + 69 * b, 80 - 7 * i, { heightMm: 3.5, align: 'left' })),
    );
    const said = tiles(on(words)).flatMap(({ drawing }) => drawing.words.map(({ text }) => text));
    for (const { text } of words) expect(said).toContain(text);
  });

  it('take their leader along', () => {
    const leader = straight('leader', 400.2, 150, 380, 120.4);
    const set = on([handMadeWords('R → 9 · bevel 12° in under', 401, 150, { align: 'left' })], [leader]);
    const lines = tiles(set).flatMap(({ drawing }) => drawing.strokes.filter(({ role }) => role === 'leader'));
    expect(lines.length).toBeGreaterThan(0);
    const ends = tiles(set).flatMap((page) =>
      page.drawing.strokes
        .filter(({ role }) => role === 'leader')
        .map(({ points }) =>
          page.drawing.words.some((words) => words.text.startsWith('R') && isAt(points, turnedWordsBox(words))),
        ),
    );
    expect(ends).toContain(true);
  });

  it('are made smaller, then broken, only where no page is wide enough', () => {
    const wide =
      'a name so long that it will not go on any page at five millimetres, neither level nor upright nor aslant';
    const smaller = tiles(on([handMadeWords(wide, 350, 60, { heightMm: 5 })])).flatMap(({ drawing }) => drawing.words);
    const found = smaller.find(({ text }) => text === wide);
    expect(found?.heightMm).toBeLessThan(5);
    expect(found?.heightMm).toBeGreaterThanOrEqual(2.5);
    const long = Array.from({ length: 30 }, (_, i) => `word${i}`).join(' ');
    const all = tiles(on([handMadeWords(long, 350, 60)])).flatMap(({ drawing }) =>
      drawing.words.map(({ text }) => text),
    );
    for (const word of long.split(' ')) expect(all.join(' ')).toContain(word);
  });
});

const isAt = (points: Float64Array, box: TurnedBox): boolean =>
  doesSegmentMeetBox(points[0], points[1], points[points.length - 2], points[points.length - 1], {
    ...box,
    halfWidth: box.halfWidth + 1,
    halfHeight: box.halfHeight + 1,
  });

describe('any outline', () => {
  it('rejoins within 0.01 mm', () =>
    forAll(
      (rand) => {
        const count = 3 + Math.floor(40 * rand());
        const size = 60 + 700 * rand();
        const ring = Array.from({ length: count }, (_, i) => {
          const radius = size * (0.3 + 0.7 * rand());
          return [
            radius * Math.cos((2 * Math.PI * i) / count) - 333,
            1.3 * radius * Math.sin((2 * Math.PI * i) / count) + 55,
          ];
        });
        const paper = PAPER_CASES[Math.floor(rand() * PAPER_CASES.length)];
        return { ring: ring.flat(), paper, overlapMm: 30 * rand() };
      },
      ({ ring, paper, overlapMm }) => {
        const templates: Template[] = [handMadeTemplate('any', ring, [], [handMadeWords('any', ring[0], ring[1])])];
        const set = expectOk(makePages(pageInput({ ...paper.change, templates, overlapMm })));
        expect(rejoinError(templates, set, 'cut')).toBeLessThan(0.01);
      },
      { runs: 60 },
    ));
});

describe('tiles', () => {
  it('each show something that no other does', () =>
    forAll(
      (rand) => {
        const count = 3 + Math.floor(20 * rand());
        const size = 200 + 300 * rand();
        const ring = Array.from({ length: count }, (_, i) => {
          const radius = size * (0.5 + 0.5 * rand());
          return [radius * Math.cos((2 * Math.PI * i) / count), radius * Math.sin((2 * Math.PI * i) / count)];
        });
        return ring.flat();
      },
      (ring) => {
        const template = handMadeTemplate('any', ring);
        const { blocks } = expectOk(makePages(pageInput({ templates: [template], overlapMm: 40 })));
        const [block] = blocks;
        const boxes = block.pageOfTile.flatMap((page, tile) => (page < 0 ? [] : [wholeBox(block, tile)]));
        const seenAlone = new Set<number>();
        for (const [ax, ay, bx, by] of segmentsOf({
          points: movePoints(template.drawing.strokes[0].points, block.placements[0]),
          closed: true,
        })) {
          const steps = Math.ceil(Math.hypot(bx - ax, by - ay) / 0.5);
          for (let k = 0; k <= steps; k += 1) {
            const [x, y] = [ax + (k / steps) * (bx - ax), ay + (k / steps) * (by - ay)];
            const at = boxes.flatMap((box, i) => (isInside({ minX: x, minY: y, maxX: x, maxY: y }, box) ? [i] : []));
            if (at.length === 1) seenAlone.add(at[0]);
          }
        }
        expect(seenAlone.size).toBe(boxes.length);
      },
      { runs: 40 },
    ));
});

function wholeBox(block: PaperBlock, tile: number): Box2 {
  const x = (tile % block.columns) * block.stepXMm;
  const y = Math.floor(tile / block.columns) * block.stepYMm;
  return { minX: x - 1e-6, minY: y - 1e-6, maxX: x + block.tileWidthMm + 1e-6, maxY: y + block.tileHeightMm + 1e-6 };
}

describe('words beside a piece that just fits a page', () => {
  const words = [
    handMadeWords('9  Lantern vent', 290, 22, { align: 'left', heightMm: 3.75, bold: true }),
    handMadeWords('cut 1 · EVA 6 mm', 290, 17, { align: 'left' }),
    handMadeWords('M · bevel 22° in under', -60, 40, { align: 'left' }),
  ];
  const leaders = [straight('leader', 290, 20, 250, 15), straight('leader', -21.8, 39.2, 0.2, 20)];
  const vent = handMadeTemplate('vent', [0, 0, 250, 0, 250, 31, 0, 31], leaders, words);
  const { pages, blocks } = expectOk(makePages(pageInput({ templates: [vent] })));
  const page = pages[blocks[0].pageOfTile[0]];

  it('move onto it, each with its leader, which still points where it did', () => {
    expect(blocks).toMatchObject([{ columns: 1, rows: 1 }]);
    const found = words.map(({ text }) => page.drawing.words.find((line) => line.text === text));
    expect(found.every((line) => line !== undefined)).toBe(true);
    expect(collisions(page)).toEqual([]);
    const { x, y } = blockFromPage(blocks[0], 0);
    const ends = page.drawing.strokes
      .filter(({ role }) => role === 'leader')
      .map(({ points }) => [points[points.length - 2] + x, points[points.length - 1] + y]);
    const meant = movePoints([250, 15, 0.2, 20], blocks[0].placements[0]);
    expect(ends.length).toBe(2);
    for (const [px, py] of ends) {
      const away = [0, 2].map((i) => Math.hypot(meant[i] - px, meant[i + 1] - py));
      expect(Math.min(...away)).toBeLessThan(1e-6);
    }
  });
});
