import { describe, expect, it } from 'vitest';
import { SAW_WORDS } from '../../src/app/saw-words.ts';
import { sawSettings } from '../../src/steps/foam/saw-settings.ts';
import { BOX_EDGES, foamOf, partedAlong } from '../steps/foam/support.ts';
import { boxMesh } from '../support/meshes.ts';

/** A piece with edges of the given letters and bevels, degrees. */
function pieceWith(edges: readonly (readonly [string, ...number[]])[], tracedSide: 'face' | 'back' = 'face') {
  const [piece] = foamOf(partedAlong(boxMesh(100), BOX_EDGES)).pieces;
  const own = edges.map(([letter, ...bevels]) => ({ ...piece.edges[0], letter, bevelDeg: Float64Array.from(bevels) }));
  return { ...piece, tracedSide, edges: own, saw: sawSettings(own, 45) };
}

const said = (...given: Parameters<typeof pieceWith>): readonly string[] => SAW_WORDS.settings(pieceWith(...given));

describe('how the saw is set, in words', () => {
  it('begins at square and names every edge by its letter', () => {
    expect(
      said([
        ['', 0, 0],
        ['B', 22.5, 22.5],
        ['', 0, 0],
        ['A', 22.5, 22.5],
        ['C', -30, -30],
      ]),
    ).toEqual(['square: open edges', '22.5° in under: B, A', '30° out under: C']);
  });

  it('says nothing of a piece that is square all round', () => {
    expect(
      said([
        ['A', 0, 0],
        ['', 0, 0],
      ]),
    ).toEqual([]);
  });

  it('tells leans as the traced side shows them', () => {
    expect(said([['A', 45, 45]], 'back')).toEqual(['45° out under: A']);
  });

  it('tells what is cut by hand from where to where, in whole degrees', () => {
    expect(
      said([
        ['A', 12.2, 20, 30.4],
        ['B', 5, 40, 6],
        ['C', -5, 8],
        ['D', 0.1, 9],
        ['E', 60, 60],
        ['F', -9.5, -2, -8],
      ]),
    ).toEqual([
      'by hand: A 12° to 30° in under',
      'by hand: B between 5° and 40° in under',
      'by hand: C 5° out under to 8° in under',
      'by hand: D square to 9° in under',
      'by hand: E 60° in under, beyond blade and table',
      'by hand: F between 2° and 10° out under',
    ]);
  });
});
