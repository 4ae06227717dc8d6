import type { PoseTable } from './pose-table.ts';

/** Rectangles a layout lies in, in steps of the lattice: x0 y0 x1 y1 each. They are so far apart that pieces in two of them never meet. */
export type Rooms = Float64Array;

/** What lies where: a pose and a place for each piece, in steps of the lattice. Pieces from `movable` on stay where they are. */
export class Layout {
  readonly pose: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly count: number;
  readonly movable: number;

  constructor(count: number, movable: number) {
    this.count = count;
    this.movable = movable;
    this.pose = new Int32Array(count);
    this.x = new Float64Array(count);
    this.y = new Float64Array(count);
  }

  copyFrom(other: Layout): void {
    this.pose.set(other.pose);
    this.x.set(other.x);
    this.y.set(other.y);
  }

  copy(): Layout {
    const made = new Layout(this.count, this.movable);
    made.copyFrom(this);
    return made;
  }
}

/** True where a pose has any place in a room. */
export const fitsRoom = (table: PoseTable, pose: number, rooms: Rooms, room: number): boolean =>
  table.maxX[pose] - table.minX[pose] <= rooms[4 * room + 2] - rooms[4 * room] &&
  table.maxY[pose] - table.minY[pose] <= rooms[4 * room + 3] - rooms[4 * room + 1];

/** Middle of a piece's box. */
export const middleX = (table: PoseTable, layout: Layout, i: number): number =>
  layout.x[i] + (table.minX[layout.pose[i]] + table.maxX[layout.pose[i]]) / 2;
export const middleY = (table: PoseTable, layout: Layout, i: number): number =>
  layout.y[i] + (table.minY[layout.pose[i]] + table.maxY[layout.pose[i]]) / 2;

/** True when the middle of a piece lies in a room, or right of it: rooms stand side by side, from left to right. */
export function isInRoom(table: PoseTable, layout: Layout, i: number, rooms: Rooms, room: number): boolean {
  const x = middleX(table, layout, i);
  return (room === 0 || x >= rooms[4 * room]) && (4 * room + 4 >= rooms.length || x < rooms[4 * room + 4]);
}

/** How far into a room its movable pieces reach; 0 where there are none. */
export function rightEndIn(table: PoseTable, layout: Layout, rooms: Rooms, room: number): number {
  let end = 0;
  for (let i = 0; i < layout.movable; i += 1)
    if (isInRoom(table, layout, i, rooms, room))
      end = Math.max(end, layout.x[i] + table.maxX[layout.pose[i]] - rooms[4 * room]);
  return end;
}

/** Puts the middle of a piece as near to a place in a room as its walls let it, in whole steps. */
export function putIn(
  table: PoseTable,
  layout: Layout,
  i: number,
  rooms: Rooms,
  room: number,
  x: number,
  y: number,
): void {
  const p = layout.pose[i];
  const [x0, y0, x1, y1] = rooms.subarray(4 * room, 4 * room + 4);
  const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));
  layout.x[i] = within(Math.round(x - (table.minX[p] + table.maxX[p]) / 2), x0 - table.minX[p], x1 - table.maxX[p]);
  layout.y[i] = within(Math.round(y - (table.minY[p] + table.maxY[p]) / 2), y0 - table.minY[p], y1 - table.maxY[p]);
}
