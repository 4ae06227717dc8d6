import { describe, expect, it } from 'vitest';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import { sawSettings, SAME_SETTING_DEG } from '../../../src/steps/foam/saw-settings.ts';
import { sawTable } from '../../../src/steps/foam/saw-table.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh } from '../../support/meshes.ts';
import { BOX_EDGES, foamOf, partedAlong } from './support.ts';

const [BARE] = foamOf(partedAlong(boxMesh(100), BOX_EDGES)).pieces;

/** A piece of its own with edges of the given bevels, degrees. */
function pieceWith(number: number, bevels: readonly (readonly number[])[], change: Partial<FoamPiece> = {}): FoamPiece {
  const edges = bevels.map((list, i) => ({
    ...BARE.edges[0],
    letter: 'ABCDEFGH'[i],
    bevelDeg: Float64Array.from(list),
  }));
  return { ...BARE, id: `piece-${number}` as FoamPiece['id'], number, edges, saw: sawSettings(edges, 45), ...change };
}

describe('settings of the saw for all pieces', () => {
  it('cut a box of six panels with one setting', () => {
    const { pieces } = foamOf(partedAlong(boxMesh(100), BOX_EDGES));
    const { settings } = sawTable(pieces);
    expect(settings.map(({ leanDeg }) => leanDeg.toFixed(6))).toEqual(['45.000000']);
    expect(settings[0].pieces).toEqual(pieces.map(({ id }) => ({ piece: id, edges: [0, 1, 2, 3] })));
  });

  it('join what leans alike over pieces, as the printed side shows it, and leave out what is cut by hand', () => {
    const pieces = [
      pieceWith(1, [[0], [22.2], [10, 30]]),
      pieceWith(2, [[-21.8], [-30]], { tracedSide: 'back' }),
      pieceWith(3, [[60], [-22]]),
    ];
    expect(sawTable(pieces).settings).toEqual([
      { leanDeg: 0, pieces: [{ piece: 'piece-1', edges: [0] }] },
      {
        leanDeg: 22,
        pieces: [
          { piece: 'piece-1', edges: [1] },
          { piece: 'piece-2', edges: [0] },
        ],
      },
      { leanDeg: -22, pieces: [{ piece: 'piece-3', edges: [1] }] },
      { leanDeg: 30, pieces: [{ piece: 'piece-2', edges: [1] }] },
    ]);
  });

  it('serve every edge that a piece’s own settings do, within a degree, and need no more of them', () =>
    forAll(
      (rand) =>
        Array.from({ length: 5 }, (_, i) =>
          pieceWith(
            i + 1,
            Array.from({ length: 6 }, () => [90 * rand() - 45]),
            { tracedSide: rand() < 0.5 ? 'face' : 'back' },
          ),
        ),
      (pieces) => {
        const { settings } = sawTable(pieces);
        const told = settings.flatMap(({ leanDeg, pieces: served }) =>
          served.flatMap(({ piece: id, edges }) => edges.map((edge) => ({ id, edge, leanDeg }))),
        );
        expect(told.length).toBe(30);
        for (const { id, edge, leanDeg } of told) {
          const piece = pieces.find((candidate) => candidate.id === id);
          const [bevel] = piece?.edges[edge].bevelDeg ?? [NaN];
          const lean = piece?.tracedSide === 'face' ? bevel : -bevel;
          expect(Math.abs(lean - leanDeg)).toBeLessThanOrEqual(SAME_SETTING_DEG + 1e-6);
        }
        const ofAll = pieces.reduce((sum, { saw }) => sum + (saw?.settings.length ?? 0), 0);
        expect(settings.length).toBeLessThanOrEqual(ofAll);
      },
    ));
});
