import type { OffcutPlace, Placement, Sheet } from '../../model/sheet.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import { moveOnSheet, type FoamRoom } from './foam-room.ts';
import { areaOfRoom, type FoamTask } from './foam-task.ts';
import type { LayoutCheck } from './layout-check.ts';
import { usedRooms } from './layout-score.ts';
import type { RoomPlaces } from './quick-fit.ts';

/** What is left of a sheet is worth keeping from this size on, mm either way [J]. */
const LEAST_OFFCUT_MM = 80;

/** The sheets of a layout as they are cut; sheets that nothing lies on are left out. */
export function sheetsOfLayout(task: FoamTask, places: RoomPlaces, check: LayoutCheck): readonly Sheet[] {
  return usedRooms(places).map((number): Sheet => {
    const room = task.rooms[number];
    const here = places.flatMap((place, i) => (place?.room === number ? [{ i, place }] : []));
    const { stock, isTall } = room;
    const filledMm = here.reduce((most, { i, place }) => Math.max(most, check.endOf(i, place)), 0);
    const used = here.reduce((sum, { i }) => sum + task.parts[task.copies[i].part].areaMm2, 0);
    const offcut = offcutOf(room, filledMm + task.fill.spacingMm);
    return {
      foam: task.foam.id,
      name: room.name,
      ...(stock === null ? {} : { label: stock.name }),
      thicknessMm: task.foam.thicknessMm,
      widthMm: isTall ? room.acrossMm : room.alongMm,
      heightMm: isTall ? room.alongMm : room.acrossMm,
      ...(stock?.shape.kind === 'outline' ? { outline: stock.shape.points } : {}),
      ...(stock?.keepOut === undefined ? {} : { keepOut: stock.keepOut }),
      placements: here.map(({ i, place }): Placement => {
        const { piece } = task.parts[task.copies[i].part];
        const { x, y, turnRad, isFlipped } = moveOnSheet(room, place);
        return {
          piece,
          copy: task.copies[i].copy,
          x,
          y,
          turnRad,
          ...(isFlipped ? { isFlipped } : {}),
          ...(task.held[i] === null ? {} : { isHeld: true }),
        };
      }),
      usedShare: used / areaOfRoom(room),
      fillAlong: isTall ? 'y' : 'x',
      filledMm,
      ...(offcut === null ? {} : { offcut }),
    };
  });
}

/** All across, behind what is filled and behind what may not be cut from. Of a traced outline nothing is offered. */
function offcutOf({ stock, alongMm, acrossMm, isTall, blocked }: FoamRoom, fromMm: number): OffcutPlace | null {
  if (stock?.shape.kind === 'outline') return null;
  const from = blocked.reduce((most, { outer }) => Math.max(most, boxOfPoints(outer).maxX), fromMm);
  const left = alongMm - from;
  if (left < LEAST_OFFCUT_MM || acrossMm < LEAST_OFFCUT_MM) return null;
  return isTall
    ? { x: 0, y: from, widthMm: acrossMm, heightMm: left }
    : { x: from, y: 0, widthMm: left, heightMm: acrossMm };
}
