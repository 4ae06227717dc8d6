import type { Layout } from './layout.ts';
import type { PoseTable } from './pose-table.ts';

/** Moves what lies right of a random place to the left, so that the strip is shorter by a share. @returns the new length. */
export function cutShort(table: PoseTable, layout: Layout, length: number, share: number, rand: () => number): number {
  const target = Math.floor(length * (1 - share));
  const by = length - target;
  const at = rand() * length;
  for (let i = 0; i < layout.movable; i += 1) {
    const p = layout.pose[i];
    const middle = layout.x[i] + (table.minX[p] + table.maxX[p]) / 2;
    if (middle > at) layout.x[i] -= by;
    layout.x[i] = Math.max(-table.minX[p], Math.min(target - table.maxX[p], layout.x[i]));
  }
  return target;
}

/** Two of the larger pieces, of different shapes, change places. */
export function changePlaces(
  table: PoseTable,
  layout: Layout,
  length: number,
  height: number,
  rand: () => number,
): void {
  const size = (i: number): number => {
    const p = layout.pose[i];
    return (table.maxX[p] - table.minX[p]) * (table.maxY[p] - table.minY[p]);
  };
  const order = Array.from({ length: layout.movable }, (_, i) => i).sort((i, j) => size(j) - size(i) || i - j);
  const large = order.slice(0, Math.max(2, Math.ceil(order.length * 0.6)));
  for (let attempt = 0; attempt < 20; attempt += 1) {
    const i = large[Math.floor(rand() * large.length)];
    const j = large[Math.floor(rand() * large.length)];
    if (table.shapeOf[layout.pose[i]] === table.shapeOf[layout.pose[j]]) continue;
    const [xi, yi, xj, yj] = [i, j].flatMap((k) => [middleX(table, layout, k), middleY(table, layout, k)]);
    put(table, layout, i, xj, yj, length, height);
    put(table, layout, j, xi, yi, length, height);
    return;
  }
}

const middleX = (table: PoseTable, layout: Layout, i: number): number =>
  layout.x[i] + (table.minX[layout.pose[i]] + table.maxX[layout.pose[i]]) / 2;
const middleY = (table: PoseTable, layout: Layout, i: number): number =>
  layout.y[i] + (table.minY[layout.pose[i]] + table.maxY[layout.pose[i]]) / 2;

function put(table: PoseTable, layout: Layout, i: number, x: number, y: number, length: number, height: number): void {
  const p = layout.pose[i];
  const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));
  layout.x[i] = Math.round(within(x - (table.minX[p] + table.maxX[p]) / 2, -table.minX[p], length - table.maxX[p]));
  layout.y[i] = Math.round(within(y - (table.minY[p] + table.maxY[p]) / 2, -table.minY[p], height - table.maxY[p]));
}
