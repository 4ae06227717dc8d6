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

/** How far right the movable pieces reach. */
export function rightEnd(table: PoseTable, layout: Layout): number {
  let end = -Infinity;
  for (let i = 0; i < layout.movable; i += 1) end = Math.max(end, layout.x[i] + table.maxX[layout.pose[i]]);
  return end;
}
