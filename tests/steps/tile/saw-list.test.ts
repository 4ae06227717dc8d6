import { describe, expect, it } from 'vitest';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import { findPaper } from '../../../src/model/papers.ts';
import { sawSettings } from '../../../src/steps/foam/saw-settings.ts';
import { sawTable } from '../../../src/steps/foam/saw-table.ts';
import { makePages } from '../../../src/steps/tile/make-pages.ts';
import { wordsBox } from '../../../src/steps/tile/words-box.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { pieceOf, stripTemplate } from '../../support/hand-made-templates.ts';
import { BOX_EDGES, foamOf, partedAlong } from '../foam/support.ts';
import { boxMesh } from '../../support/meshes.ts';
import { collisions, pageInput } from './support.ts';

const [{ edges: BOX_PIECE_EDGES }] = foamOf(partedAlong(boxMesh(100), BOX_EDGES)).pieces;

type Edges = readonly (readonly [letter: string, ...bevels: number[]])[];

/** Pages of strips with such edges. */
function pagesOf(list: readonly Edges[], paper = expectOk(findPaper('A4'))) {
  const templates = list.map((_, i) => stripTemplate(`strip ${i + 1}`, 60, 30));
  const pieces = list.map((own, i): FoamPiece => {
    const edges = own.map(([letter, ...bevels]) => ({
      ...BOX_PIECE_EDGES[0],
      letter,
      bevelDeg: Float64Array.from(bevels),
    }));
    return pieceOf(templates[i], i + 1, { edges, saw: sawSettings(edges, 45) });
  });
  return expectOk(makePages(pageInput({ templates, pieces, saw: sawTable(pieces), paper }))).pages;
}

const wordsOf = (pages: ReturnType<typeof pagesOf>): readonly string[] =>
  pages.filter(({ kind }) => kind === 'map').flatMap(({ drawing }) => drawing.words.map(({ text }) => text));

describe('how the saw is set, on the map', () => {
  it('stands in a row for each setting, with pieces by number and edges by letter, and what is cut by hand under it', () => {
    const words = wordsOf(
      pagesOf([
        [
          ['A', 22.5],
          ['', 0],
          ['B', 22.5],
        ],
        [
          ['A', 22.1],
          ['C', -30],
          ['D', 5, 40],
        ],
      ]),
    );
    const from = words.indexOf('set to');
    expect(from).toBeGreaterThan(0);
    expect(words.slice(from, from + 10)).toEqual([
      'set to',
      'edges, by piece number and letter',
      'square',
      '1: open edge',
      '22.3° in under',
      '1: A, B · 2: A',
      '30° out under',
      '2: C',
      'by hand',
      '2: D 5° to 40° in under',
    ]);
  });

  it('is left out where every edge is square', () => {
    expect(wordsOf(pagesOf([[['A', 0]]]))).not.toContain('The saw');
  });

  it.each([
    { name: 'A4', paper: expectOk(findPaper('A4')) },
    { name: 'small paper', paper: expectOk(findPaper('custom', 120, 160)) },
  ])('goes on on further pages of $name and names every edge once', ({ paper }) => {
    const list = Array.from({ length: 60 }, (_, i): Edges => {
      const letters = ['A', 'B', 'C', 'D', 'E', 'F'].map((letter) => `${letter}x${i}`);
      return letters.map((letter, k) => [letter, 7 * k, ...(k === 5 ? [10] : [])]);
    });
    const pages = pagesOf(list, paper);
    const maps = pages.filter(({ kind }) => kind === 'map');
    const text = wordsOf(pages).join(' ');
    for (const [i, edges] of list.entries()) {
      for (const [letter] of edges) expect(text.split(new RegExp(`\\b${letter}\\b`)).length, `${i} ${letter}`).toBe(2);
    }
    expect(maps.flatMap(collisions)).toEqual([]);
    for (const page of maps) {
      for (const words of page.drawing.words) expect(wordsBox(words).minY, words.text).toBeGreaterThan(9.99);
    }
  });
});
