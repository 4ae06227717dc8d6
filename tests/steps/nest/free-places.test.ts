import { describe, expect, it } from 'vitest';
import type { FoamId, PieceId } from '../../../src/base/ids.ts';
import type { FreePlaces } from '../../../src/model/free-places.ts';
import type { StockSheet } from '../../../src/model/stock.ts';
import { USUAL_FILL } from '../../../src/project/fill-rule.ts';
import { stockRoom, type FoamRoom } from '../../../src/steps/nest/foam-room.ts';
import { freePlaces, type LaidArea } from '../../../src/steps/nest/free-places.ts';

const FOAM = 'eva-6' as FoamId;

/** A rectangle whose nought is its lower left corner. */
const plate = (piece: string, width: number, height: number, x = 0, y = 0, turnRad = 0): LaidArea => ({
  piece: piece as PieceId,
  copy: 0,
  area: { outer: Float64Array.of(0, 0, width, 0, width, height, 0, height), holes: [] },
  move: { x, y, turnRad, isFlipped: false },
});

function room(shape: StockSheet['shape'], keepOut: readonly (readonly number[])[] = []): FoamRoom {
  const fill = { ...USUAL_FILL, foam: FOAM, borderMm: 10 };
  const made = stockRoom({ id: 'stock-1', name: 'rest', foam: FOAM, shape, count: 1, keepOut }, fill, 0);
  if (made === null) throw new Error('no room');
  return made;
}

const WIDE: StockSheet['shape'] = { kind: 'rectangle', widthMm: 400, heightMm: 300 };
const TALL: StockSheet['shape'] = { kind: 'rectangle', widthMm: 300, heightMm: 400 };

const corners = ({ free }: FreePlaces): number[][] =>
  free
    .flatMap((ring) => Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i], ring[2 * i + 1]]))
    .map((corner) => corner.map((mm) => Math.round(mm * 10) / 10))
    .sort(([ax, ay], [bx, by]) => ax - bx || ay - by);

describe('where a piece may be put by hand', () => {
  it.each([
    ['wide', WIDE, 290, 240],
    ['tall', TALL, 190, 340],
  ] as const)('is the room of a %s sheet less its border', (_, shape, right, top) => {
    const places = freePlaces(room(shape), 0, plate('brow', 100, 50), []);
    expect(corners(places)).toEqual([
      [10, 10],
      [10, top],
      [right, 10],
      [right, top],
    ]);
  });

  it('keeps the spacing to what lies there, turned as it is, and says what that is', () => {
    // Turned by a quarter it lies from x = 150 to 200 and from y = 10 to 110.
    const other = plate('visor', 100, 50, 200, 10, Math.PI / 2);
    const places = freePlaces(room(WIDE), 4, plate('brow', 100, 50), [other]);
    expect(places.blocks.map(({ piece }) => piece)).toEqual(['visor']);
    const [x0, y1] = [150 - 100 - 4, 110 + 4];
    expect(corners(places)).toEqual([
      [10, 10],
      [10, 240],
      [x0, 10],
      [x0, y1],
      [204, 10],
      [204, y1],
      [290, 10],
      [290, 240],
    ]);
  });

  it('is nowhere over a place that is kept clear, nor outside a traced outline', () => {
    const clear = freePlaces(room(WIDE, [[150, 0, 250, 0, 250, 300, 150, 300]]), 0, plate('brow', 100, 50), []);
    expect(clear.free).toHaveLength(2);
    // A step: the upper right quarter is gone.
    const step = [0, 0, 400, 0, 400, 150, 200, 150, 200, 300, 0, 300];
    const traced = freePlaces(room({ kind: 'outline', points: step }), 0, plate('brow', 100, 50), []);
    expect(corners(traced)).toEqual([
      [10, 10],
      [10, 240],
      [90, 90],
      [90, 240],
      [290, 10],
      [290, 90],
    ]);
  });

  it('is none where it is larger than the sheet', () => {
    expect(freePlaces(room(WIDE), 0, plate('brow', 500, 50), []).free).toEqual([]);
  });
});
