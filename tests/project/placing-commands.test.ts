import { expect, it } from 'vitest';
import type { FoamId, PieceId } from '../../src/base/ids.ts';
import { newProject } from '../../src/project/new-project.ts';
import { placeCopy, type LaidSheet } from '../../src/project/placing-commands.ts';

const FOAM = 'eva-6' as FoamId;
const BROW = 'brow' as PieceId;

const place = (piece: PieceId, copy: number, x: number) => ({ piece, copy, x, y: 10, turnRad: 0 });

const SHEETS: readonly LaidSheet[] = [
  {
    foam: FOAM,
    name: { stock: 'stock-1', nth: 0 },
    placements: [place(BROW, 0, 10), place('visor' as PieceId, 0, 200)],
  },
  { foam: FOAM, name: { stock: 'buy', nth: 0 }, placements: [place(BROW, 1, 10)] },
];

it('puts a copy where a hand laid it, holds it there, and leaves all others where they lie', () => {
  const project = newProject('helm', { hash: 'a'.repeat(64), fileName: 'helm.obj', format: 'obj' });
  const held = { copy: 1, sheet: { stock: 'stock-1', nth: 0 }, x: 400, y: 30, turnRad: Math.PI, isFlipped: true };
  const moved = placeCopy(SHEETS, BROW, held).apply(project);
  expect(moved.stock?.pieces).toEqual([{ piece: 'brow', held: [held] }]);
  // The sheet it came from holds nothing any more.
  expect(moved.stock?.kept).toEqual([
    {
      foam: FOAM,
      sheet: { stock: 'stock-1', nth: 0 },
      places: [
        place(BROW, 0, 10),
        place('visor' as PieceId, 0, 200),
        { piece: 'brow', copy: 1, x: 400, y: 30, turnRad: Math.PI, isFlipped: true },
      ],
    },
  ]);
});
