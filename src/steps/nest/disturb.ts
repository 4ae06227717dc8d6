import { isInRoom, middleX, middleY, putIn, type Layout, type Rooms } from './layout.ts';
import type { PoseTable } from './pose-table.ts';

/** Share of the pieces, the largest first, that may change places. */
const LARGE_SHARE = 0.6;
/** Pairs tried until one is taken. */
const MOST_PAIRS = 20;
/** Chance that a pair of one shape is passed over. */
const ALIKE_PASSED = 0.8;
/** Chance that one of two different pieces is turned. */
const TURNED = 0.3;

/**
 * Makes room for a shorter last room: what lies right of a random place in it moves left.
 * @param rooms   the last one is shorter already.
 * @param length  how far its pieces reach into it.
 */
export function cutShort(table: PoseTable, layout: Layout, rooms: Rooms, length: number, rand: () => number): void {
  const last = rooms.length / 4 - 1;
  const x0 = rooms[4 * last];
  const by = length - (rooms[4 * last + 2] - x0);
  const at = x0 + rand() * length;
  for (let i = 0; i < layout.movable; i += 1) {
    if (!isInRoom(table, layout, i, rooms, last)) continue;
    const x = middleX(table, layout, i);
    putIn(table, layout, i, rooms, last, x > at ? x - by : x, middleY(table, layout, i));
  }
}

/** Puts all that lies in the last room anywhere in it, in any pose. */
export function scatter(table: PoseTable, layout: Layout, rooms: Rooms, rand: () => number): void {
  const last = rooms.length / 4 - 1;
  const [x0, y0, x1, y1] = rooms.subarray(4 * last);
  for (let i = 0; i < layout.movable; i += 1) {
    if (!isInRoom(table, layout, i, rooms, last)) continue;
    const looks = table.looks[table.shapeOf[layout.pose[i]]];
    layout.pose[i] = looks[Math.floor(rand() * looks.length)];
    putIn(table, layout, i, rooms, last, x0 + rand() * (x1 - x0), y0 + rand() * (y1 - y0));
  }
}

/**
 * Two of the larger pieces change places: most often of different shapes, and now and then one of them is turned as well. Where they are alike and can
 * be turned no other way, one goes anywhere.
 */
export function changePlaces(table: PoseTable, layout: Layout, rooms: Rooms, rand: () => number): void {
  const size = (i: number): number => table.scale[layout.pose[i]];
  const order = Array.from({ length: layout.movable }, (_, i) => i).sort((i, j) => size(j) - size(i) || i - j);
  const large = order.slice(0, Math.max(2, Math.ceil(order.length * LARGE_SHARE)));
  for (let pair = 0; pair < MOST_PAIRS; pair += 1) {
    const i = large[Math.floor(rand() * large.length)];
    const j = large[Math.floor(rand() * large.length)];
    if (i === undefined || j === undefined || i === j) continue;
    const isAlike = table.shapeOf[layout.pose[i]] === table.shapeOf[layout.pose[j]];
    if (isAlike && rand() < ALIKE_PASSED) continue;
    const [roomI, roomJ] = [i, j].map((piece) => roomOf(table, layout, piece, rooms));
    const [xi, yi, xj, yj] = [i, j].flatMap((piece) => [middleX(table, layout, piece), middleY(table, layout, piece)]);
    const looks = table.looks[table.shapeOf[layout.pose[i]]];
    if (isAlike || rand() < TURNED) layout.pose[i] = looks[Math.floor(rand() * looks.length)];
    if (isAlike && looks.length === 1) {
      const [x0, y0, x1, y1] = rooms.subarray(4 * roomJ, 4 * roomJ + 4);
      putIn(table, layout, i, rooms, roomJ, x0 + rand() * (x1 - x0), y0 + rand() * (y1 - y0));
      return;
    }
    putIn(table, layout, i, rooms, roomJ, xj, yj);
    putIn(table, layout, j, rooms, roomI, xi, yi);
    return;
  }
}

function roomOf(table: PoseTable, layout: Layout, i: number, rooms: Rooms): number {
  for (let room = rooms.length / 4 - 1; room > 0; room -= 1) if (isInRoom(table, layout, i, rooms, room)) return room;
  return 0;
}
