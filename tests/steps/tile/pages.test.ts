import { describe, expect, it } from 'vitest';
import { findPaper } from '../../../src/model/papers.ts';
import type { Page, PageSet } from '../../../src/model/page.ts';
import { makePages } from '../../../src/steps/tile/make-pages.ts';
import { wordsBox } from '../../../src/steps/tile/words-box.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { handMadeTemplate, stripTemplate } from '../../support/hand-made-templates.ts';
import {
  areLinesInside,
  collisions,
  kit,
  PAPER_CASES,
  pageInput,
  rejoinError,
  segmentsOf,
  tilesOf,
} from './support.ts';

const wordsOf = (page: Page): string => page.drawing.words.map(({ text }) => text).join(' ');
const tilePages = (set: PageSet): readonly Page[] => set.pages.filter(({ kind }) => kind === 'tile');

describe.each(PAPER_CASES)('pages on $name', ({ change }) => {
  const input = pageInput(change);
  const set = expectOk(makePages(input));

  it('have the paper’s size, each with something on it, under names that are its own', () => {
    const { paper } = input;
    const [short, long] = [paper.widthMm, paper.heightMm];
    for (const page of set.pages) {
      if (paper.roll) {
        expect(page.widthMm).toBe(short);
        expect(page.heightMm).toBeLessThanOrEqual(5000);
      } else {
        expect([page.widthMm, page.heightMm]).toEqual(
          input.orientation === 'landscape' ? [long, short] : [short, long],
        );
      }
      expect(page.drawing.strokes.length + page.drawing.words.length).toBeGreaterThan(3);
    }
    for (const page of tilePages(set)) {
      const roles = new Set(page.drawing.strokes.map(({ role }) => role));
      roles.delete('frame');
      roles.delete('ruler');
      expect(roles.size, page.name).toBeGreaterThan(0);
      expect(page.pieces.length, page.name).toBeGreaterThan(0);
    }
    expect(new Set(set.pages.map(({ name }) => name)).size).toBe(set.pages.length);
    expect(set.pages.map(({ kind }) => kind).join(' ')).toMatch(/^(scale ?)+( ?map ?)+( ?tile ?)+$/);
  });

  it('stay inside the margin with every line and every word', () => {
    const m = input.marginMm;
    for (const page of set.pages) {
      expect(areLinesInside(page, m, m, page.widthMm - m, page.heightMm - m), page.name).toBe(true);
      for (const words of page.drawing.words) {
        const box = wordsBox(words);
        const isInside =
          box.minX > m - 0.01 &&
          box.minY > m - 0.01 &&
          box.maxX < page.widthMm - m + 0.01 &&
          box.maxY < page.heightMm - m + 0.01;
        expect(isInside, `${page.name}: ${words.text} ${JSON.stringify(box)}`).toBe(true);
        expect(words.heightMm).toBeGreaterThanOrEqual(2.5);
      }
    }
  });

  it('let no words run into lines or other words', () => {
    expect(set.pages.flatMap(collisions)).toEqual([]);
  });

  it('rejoin to every line within 0.01 mm', () => {
    for (const role of ['cut', 'bevel', 'fold-out', 'fold-in', 'groove', 'mark'] as const) {
      expect(rejoinError(input.templates, set, role), role).toBeLessThan(0.01);
    }
    const laid = set.blocks.flatMap((block) => block.placements.map(({ piece }) => piece));
    expect([...laid].sort()).toEqual(input.templates.map(({ piece }) => piece).sort());
  });

  it('carry every line of words of every template whole', () => {
    const said = tilePages(set).flatMap((page) => page.drawing.words.map(({ text }) => text));
    const all = said.join(' ');
    for (const { drawing } of input.templates) {
      for (const { text } of drawing.words) {
        // Only where no page is wide enough for it may a line be broken.
        const isWhole = said.includes(text) || text.split(' ').every((word) => all.includes(word));
        expect(isWhole, text).toBe(true);
        if (input.paper.widthMm > 150) expect(said).toContain(text);
      }
    }
  });

  it('count the tiles that are left out', () => {
    const tiles = set.blocks.flatMap((block) => block.pageOfTile);
    for (const { columns, rows, pageOfTile } of set.blocks) expect(pageOfTile.length).toBe(columns * rows);
    expect(set.blankTiles).toBe(tiles.filter((page) => page < 0).length);
    expect(tiles.filter((page) => page >= 0).sort((a, b) => a - b)).toEqual(
      set.pages.flatMap(({ kind }, i) => (kind === 'tile' ? [i] : [])),
    );
  });
});

describe('makePages', () => {
  const set = expectOk(makePages(pageInput()));

  it('tells on the map what the words of a leaning cut mean', () => {
    const said = set.pages
      .filter(({ kind }) => kind === 'map')
      .map(wordsOf)
      .join(' ');
    expect(said).toContain('in under, it lies inside');
    expect(said).toContain('out under, outside');
  });

  it('leaves the middle of a large ring out and counts it', () => {
    const ring = handMadeTemplate(
      'ring',
      [0, 0, 700, 0, 700, 900, 0, 900],
      [{ role: 'cut', points: Float64Array.of(20, 20, 20, 880, 680, 880, 680, 20), closed: true }],
    );
    const { blocks, blankTiles, pages } = expectOk(makePages(pageInput({ templates: [ring] })));
    expect(blankTiles).toBeGreaterThanOrEqual(2);
    expect(tilesOf(blocks[0], pages).length + blankTiles).toBe(blocks[0].columns * blocks[0].rows);
    expect(wordsOf(pages[1])).toContain(`${blankTiles} blank tiles left out`);
  });

  it('lets small templates share a page, and turns what fits one page only turned', () => {
    const shared = set.blocks.filter(({ placements }) => placements.length > 1);
    expect(shared.flatMap(({ placements }) => placements).length).toBeGreaterThan(8);
    const strap = expectOk(makePages(pageInput({ templates: [stripTemplate('strap', 240, 35)] })));
    expect(strap.blocks[0].placements[0].turnRad).toBeCloseTo(Math.PI / 2, 12);
    // 300 × 20 mm fits 190 × 265 mm only across the corners.
    const slanting = expectOk(makePages(pageInput({ templates: [stripTemplate('rod', 300, 20)] })));
    expect(slanting.blocks[0]).toMatchObject({ columns: 1, rows: 1 });
    expect(Math.abs(Math.sin(2 * slanting.blocks[0].placements[0].turnRad))).toBeGreaterThan(0.1);
  });

  it('begins with a square of 100 mm, both ways, and two rules of 4 in', () => {
    const [scale] = set.pages;
    expect(scale.kind).toBe('scale');
    const lines = scale.drawing.strokes.filter(({ role }) => role === 'ruler').flatMap(segmentsOf);
    const long = lines.map(([ax, ay, bx, by]) => [Math.abs(bx - ax), Math.abs(by - ay)]);
    const count = (x: number, y: number): number =>
      long.filter(([dx, dy]) => Math.abs(dx - x) < 1e-9 && Math.abs(dy - y) < 1e-9).length;
    expect(count(100, 0)).toBe(2);
    expect(count(0, 100)).toBe(2);
    expect(count(101.6, 0)).toBe(1);
    expect(count(0, 101.6)).toBe(1);
    expect(wordsOf(scale)).toContain('at 100 %');
    expect(wordsOf(scale)).toContain('100 mm');
    expect(wordsOf(scale)).toContain('Read the label.');
    expect(wordsOf(scale)).toContain('10 mm strip');
  });

  it('lists each piece on the map with its pages, and says the printed side and the lines', () => {
    const map = set.pages.filter(({ kind }) => kind === 'map');
    const text = map.map(wordsOf).join(' ');
    for (const { number, name, revision } of pageInput().pieces) {
      expect(text).toContain(name);
      expect(text).toContain(revision);
      expect(number).toBeGreaterThan(0);
    }
    expect(text).toMatch(/printed side up/);
    expect(text).toContain('folds away from you');
    expect(text).not.toContain('under its neighbour');
    for (const page of tilePages(set)) expect(text).toContain(page.name.split('-')[1]);
  });

  it('puts project, revision, date, page and piece revisions on each page', () => {
    set.pages.forEach((page, i) => {
      expect(wordsOf(page)).toContain(
        `Lamplighter shield · revision 4 · 2026-11-25 · page ${i + 1} of ${set.pages.length}`,
      );
      expect(wordsOf(page)).toContain(page.name);
    });
    const [first] = tilePages(set);
    expect(wordsOf(first)).toContain('rev R1');
    expect(wordsOf(first)).toContain('100 mm both ways');
  });

  it('rules every tile by 100 mm along two of its edges', () => {
    for (const page of tilePages(set)) {
      const lines = page.drawing.strokes.filter(({ role }) => role === 'ruler').flatMap(segmentsOf);
      const sizes = lines.map(([ax, ay, bx, by]) => `${ax} ${ay} ${(bx - ax).toFixed(6)} ${(by - ay).toFixed(6)}`);
      expect(sizes).toContain('10 22 100.000000 0.000000');
      expect(sizes).toContain('10 22 0.000000 100.000000');
    }
  });

  it('puts a shield, strips and studs on one length of a wide roll', () => {
    const roll = expectOk(makePages(pageInput({ paper: expectOk(findPaper('roll', 914)) })));
    expect(tilePages(roll).length).toBe(1);
    expect(tilePages(roll)[0].heightMm).toBeLessThan(900);
    // A roll is cut where the last line ends: front pages are no longer than what is on them.
    expect(roll.pages[0].heightMm).toBeLessThan(250);
  });

  it('gives the same pages for the same input', () => {
    expect(JSON.stringify(makePages(pageInput()))).toBe(JSON.stringify(makePages(pageInput())));
  });

  it('says what to change where the paper leaves no room', () => {
    const margin = expectProblem(makePages(pageInput({ marginMm: 90 })), 'tile/margin');
    expect(margin.text).toContain('choose 0 to 75 mm');
    expectOk(makePages(pageInput({ marginMm: 75, templates: [stripTemplate('s', 40, 20)] })));
    const overlap = expectProblem(makePages(pageInput({ overlapMm: 180 })), 'tile/overlap');
    expect(overlap.text).toContain('choose 0 to 160 mm');
    for (const bad of [-1, Number.NaN, Infinity]) {
      expectProblem(makePages(pageInput({ marginMm: bad })), 'tile/margin');
      expectProblem(makePages(pageInput({ overlapMm: bad })), 'tile/overlap');
    }
    expectProblem(makePages(pageInput({ templates: [] })), 'tile/nothing');
  });

  it('warns of a margin that printers cut into', () => {
    const thin = makePages(pageInput({ marginMm: 3 }));
    expect(thin.ok && thin.notes.map(({ code }) => code)).toEqual(['tile/thin-margin']);
    const usual = makePages(pageInput());
    expect(usual.ok && usual.notes).toEqual([]);
  });

  it('refuses in good time what would fill thousands of pages', () => {
    const wall = handMadeTemplate('wall', [0, 0, 90_000, 0, 90_000, 60_000, 0, 60_000]);
    expect(expectProblem(makePages(pageInput({ templates: [wall] })), 'tile/too-many-pages').text).toContain('size');
    const rope = handMadeTemplate('rope', [0, 0, 400_000, 0, 400_000, 10, 0, 10]);
    expectProblem(makePages(pageInput({ templates: [rope] })), 'tile/too-many-pages');
  });

  it('takes names of any length and kind', () => {
    const templates = kit().slice(2, 5);
    const pieces = pageInput({ templates }).pieces.map((piece) => ({ ...piece, name: 'Größe Ж 鐘 '.repeat(60) }));
    const { pages } = expectOk(makePages(pageInput({ templates, pieces, projectName: 'W'.repeat(400) })));
    for (const page of pages) {
      for (const words of page.drawing.words)
        expect(wordsBox(words).maxX, words.text).toBeLessThan(page.widthMm - 10 + 0.01);
    }
  });
});
