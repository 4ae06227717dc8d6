import { grownRegions } from '../../geom/polygon-boolean.ts';
import { fitsBin, packShelves, type PackSize } from '../../geom/shelf-pack.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import type { FoamTask } from './foam-task.ts';
import type { RoomPlaces } from './quick-fit.ts';
import { turnOf, turnRing, type Stance } from './shape.ts';

/** Kept free between two boxes, mm: what touches would count as overlapping. */
const HAIR_MM = 0.02;

/**
 * Every copy by its box alone, on shelves across sheets that are bought: what anyone would do at once. For sheets without anything held, kept together
 * or in hand.
 * @param copies  those that are to be laid, all of which fit a sheet as drawn or turned by a quarter; null where one does not.
 */
export function shelfLayout(task: FoamTask, copies: readonly number[]): RoomPlaces | null {
  const { rooms, parts, fill } = task;
  const [room] = rooms;
  const { free } = room;
  // Shelves are piled up along the sheet: the packing's width runs across it.
  // Outlines carry half the spacing, out to the tips of their corners, so their room reaches so much into the border.
  const grow = fill.spacingMm / 2;
  const bin = { width: free.maxY - free.minY + 2 * grow, height: free.maxX - free.minX + 2 * grow };
  const stands = parts.map(({ area, shape }) => {
    const isTurnable = shape.stances.length > 2 && fill.turns === 'any';
    const stance: Stance = isTurnable
      ? { turnRad: room.isTall ? -Math.PI / 2 : 0, isFlipped: false }
      : shape.stances[0];
    const outer = grow === 0 ? area.outer : grownRegions([area.outer], grow)[0].outer;
    const box = boxOfPoints(turnRing(outer, turnOf(stance)));
    const turned = boxOfPoints(turnRing(outer, turnOf(quarterOn(stance))));
    const size: PackSize = {
      width: box.maxY - box.minY,
      height: box.maxX - box.minX,
      ...(isTurnable ? {} : { isFixed: true }),
    };
    return { stance, box, turned, size };
  });
  const own = copies.map((i) => stands[task.copies[i].part]);
  if (!own.every(({ size }) => fitsBin(size, bin))) return null;
  const packed = packShelves(
    own.map(({ size }) => size),
    bin,
    HAIR_MM,
  );
  const places = task.copies.map((): RoomPlaces[number] => null);
  for (const [k, i] of copies.entries()) {
    const { bin: on, x, y, turned: isTurned } = packed[k];
    const { stance, box, turned } = own[k];
    const lies = isTurned ? turned : box;
    places[i] = {
      room: on,
      ...(isTurned ? quarterOn(stance) : stance),
      x: free.minX - grow + y - lies.minX,
      y: free.minY - grow + x - lies.minY,
    };
  }
  return places;
}

const quarterOn = ({ turnRad, isFlipped }: Stance): Stance => ({ turnRad: turnRad + Math.PI / 2, isFlipped });
