import type { Box2, Ring } from '../../geom/ring.ts';
import type { PaperBlock } from '../../model/page.ts';
import type { PrintedLine } from './printed-lines.ts';

/** Ends that lie so near are one place, mm: what a cut by a tile's edge and the rounding of the file leave between them is far less. */
const SAME_END_MM = 0.02;

/** An edge of a tile that was printed before reaches so little less far, mm: lines along it are nobody's loss. */
const EDGE_MM = 1e-4;

/** What came of the lines of one layer when the tiles were laid together. */
export interface JoinedLines {
  /** In the frame of the block, mm; each runs as it was drawn. */
  readonly rings: readonly Ring[];
  /** Ends of lines that no other goes on from, packed x y, mm. */
  readonly looseEnds: readonly number[];
}

/**
 * Lays the printed tiles of a block where they belong and joins lines of a layer to rings. What two tiles show twice counts once.
 * @param linesOfPage the printed lines of each page of the file, by the page's index.
 */
export function joinTiles(
  block: PaperBlock,
  linesOfPage: (page: number) => readonly PrintedLine[],
  layer: PrintedLine['layer'],
): JoinedLines {
  const rings: Ring[] = [];
  const open: Float64Array[] = [];
  const before: Box2[] = [];
  block.pageOfTile.forEach((page, tile) => {
    if (page < 0) return;
    const left = (tile % block.columns) * block.stepXMm;
    const low = Math.floor(tile / block.columns) * block.stepYMm;
    const near = before.filter(({ maxX, maxY, minX }) => maxX > left && minX < left + block.tileWidthMm && maxY > low);
    for (const line of linesOfPage(page)) {
      if (line.layer !== layer) continue;
      const points = line.points.map((mm, i) =>
        i % 2 === 0 ? mm - block.originXMm + left : mm - block.originYMm + low,
      );
      const own = lessBoxes(points, line.closed, near);
      if (own === null) rings.push(points);
      else open.push(...own);
    }
    before.push({
      minX: left + EDGE_MM,
      minY: low + EDGE_MM,
      maxX: left + block.tileWidthMm - EDGE_MM,
      maxY: low + block.tileHeightMm - EDGE_MM,
    });
  });
  return joinEnds(rings, open);
}

/** What of a line lies in none of some boxes, in stretches that run as it does; null for a closed line that is whole. */
function lessBoxes(points: Float64Array, closed: boolean, boxes: readonly Box2[]): Float64Array[] | null {
  const count = points.length / 2;
  const stretches: number[][] = [];
  let current: number[] = [];
  let isCut = false;
  const end = (): void => {
    if (current.length >= 4) stretches.push(current);
    current = [];
  };
  for (let i = 0; i < (closed ? count : count - 1); i += 1) {
    const j = (i + 1) % count;
    const [ax, ay, bx, by] = [points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1]];
    const kept = outside(ax, ay, bx, by, boxes);
    isCut ||= kept.length !== 1 || kept[0][0] > 0 || kept[0][1] < 1;
    for (const [from, to] of kept) {
      if (from > 0) end();
      if (current.length === 0) current.push(ax + from * (bx - ax), ay + from * (by - ay));
      current.push(ax + to * (bx - ax), ay + to * (by - ay));
      if (to < 1) end();
    }
    if (kept.length === 0) end();
  }
  if (closed && !isCut) return null;
  end();
  return stretches.map((stretch) => Float64Array.from(stretch));
}

/** The shares of a straight line that lie outside of all boxes, from its start on. */
function outside(ax: number, ay: number, bx: number, by: number, boxes: readonly Box2[]): [number, number][] {
  let kept: [number, number][] = [[0, 1]];
  for (const { minX, minY, maxX, maxY } of boxes) {
    let [enters, leaves] = [0, 1];
    for (const [a, b, low, high] of [
      [ax, bx, minX, maxX],
      [ay, by, minY, maxY],
    ]) {
      if (a === b) {
        if (a <= low || a >= high) leaves = -1;
        continue;
      }
      const [s, t] = [(low - a) / (b - a), (high - a) / (b - a)];
      enters = Math.max(enters, Math.min(s, t));
      leaves = Math.min(leaves, Math.max(s, t));
    }
    if (!(enters < leaves)) continue;
    kept = kept.flatMap(([from, to]) =>
      [[from, Math.min(to, enters)] as [number, number], [Math.max(from, leaves), to] as [number, number]].filter(
        ([start, stop]) => start < stop,
      ),
    );
  }
  return kept;
}

/** Goes on from the end of each line with the one that begins there, until it comes round. */
function joinEnds(rings: Ring[], open: readonly Float64Array[]): JoinedLines {
  const starts = new Map<string, number[]>();
  const cell = (mm: number): number => Math.floor(mm / SAME_END_MM);
  open.forEach((line, i) => {
    const key = `${cell(line[0])} ${cell(line[1])}`;
    const list = starts.get(key);
    if (list === undefined) starts.set(key, [i]);
    else list.push(i);
  });
  const used = new Set<number>();
  /** Where several begin at one place, the one that turns least. */
  const nextFrom = (x: number, y: number, dx: number, dy: number): number => {
    let [found, straightest] = [-1, -Infinity];
    for (const column of [-1, 0, 1]) {
      for (const row of [-1, 0, 1]) {
        for (const i of starts.get(`${cell(x) + column} ${cell(y) + row}`) ?? []) {
          const [sx, sy, tx, ty] = open[i];
          if (used.has(i) || Math.hypot(sx - x, sy - y) > SAME_END_MM) continue;
          const straight = ((tx - sx) * dx + (ty - sy) * dy) / (Math.hypot(tx - sx, ty - sy) * Math.hypot(dx, dy));
          if (!(straight <= straightest)) [found, straightest] = [i, straight];
        }
      }
    }
    return found;
  };
  const looseEnds: number[] = [];
  open.forEach((first, i) => {
    if (used.has(i)) return;
    const joined: number[] = [];
    // The first line stays to be found: who comes to it has come round.
    for (let at = i, line = first; ; line = open[at]) {
      joined.push(...line.subarray(0, line.length - 2));
      const [fromX, fromY, x, y] = line.subarray(line.length - 4);
      at = nextFrom(x, y, x - fromX, y - fromY);
      if (at >= 0) used.add(at);
      if (at === i) {
        rings.push(Float64Array.from(joined));
        return;
      }
      if (at < 0) {
        used.add(i);
        looseEnds.push(x, y);
        return;
      }
    }
  });
  return { rings, looseEnds };
}
