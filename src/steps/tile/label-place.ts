import type { Box2, Ring } from '../../geom/ring.ts';
import { uprightBox, type TurnedBox } from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import type { Label } from './labels.ts';
import type { Obstacles } from './obstacles.ts';
import { isBoxInside } from './words-box.ts';

/** A part of a block in which words stay whole. */
export type Cell = Box2;

/** Near search round the smallest move, then the whole cell: reach and step, mm. */
const NEAR_REACH_MM = 30;
const NEAR_STEP_MM = 1.5;
const FAR_STEP_MM = 4;

/** What it costs, in mm of move, to leave the piece, to point across a joint, and to lead a line over other words [J]. */
const COST_OUTSIDE = 400;
const COST_OTHER_CELL = 40;
const COST_OVER_WORDS = 200;

/** A leader shorter than this is not seen, mm. */
const SHORTEST_LEADER_MM = 2;

/**
 * The cheapest free place for a label in any cell: as near as can be, inside the piece if it was inside, a leader short and off other
 * words. A label with a leader may also be set level. Null when every place is taken.
 * @param rings the piece's cut lines, outside first.
 */
export function findLabelPlace(
  label: Label,
  cells: readonly Cell[],
  obstacles: Obstacles,
  rings: readonly Ring[],
): TurnedBox | null {
  const { box, leader } = label;
  const price = leader === null ? movePrice(box, rings) : leaderPrice(leaderTarget(label), obstacles);
  const stances = leader === null || box.angleRad === 0 ? [box] : [box, { ...box, angleRad: 0 }];
  let best: TurnedBox | null = null;
  let least = Infinity;
  const consider = (cell: Cell, there: TurnedBox): void => {
    const bare = price.bare(there);
    if (bare >= least || !isBoxInside(uprightBox(there), cell) || !obstacles.isFree(there)) return;
    const full = bare + price.extra(there, cell);
    if (full < least) [best, least] = [there, full];
  };
  for (const isFar of [false, true]) {
    for (const cell of cells) {
      for (const stance of stances) {
        if (holdsBox(cell, stance)) for (const there of placesIn(cell, stance, isFar)) consider(cell, there);
      }
    }
    if (best !== null && least < COST_OVER_WORDS) return best;
  }
  return best;
}

/** The label laid with its box at a place, its leader drawn straight to where it pointed before. */
export function movedLabel(label: Label, place: TurnedBox): Label {
  const { lines, box, leader } = label;
  const turn = place.angleRad - box.angleRad;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const moved = lines.map((line) => {
    const [dx, dy] = [line.at.x - box.x, line.at.y - box.y];
    return {
      ...line,
      at: { x: place.x + c * dx - s * dy, y: place.y + s * dx + c * dy },
      angleRad: line.angleRad + turn,
    };
  });
  if (leader === null) return { lines: moved, box: place, leader };
  const target = leaderTarget(label);
  const from = nearestOnBox(place, target);
  const isDrawn = Math.hypot(from.x - target.x, from.y - target.y) > 0;
  return {
    lines: moved,
    box: place,
    leader: isDrawn ? { ...leader, points: Float64Array.of(from.x, from.y, target.x, target.y) } : null,
  };
}

/** True when the cell is large enough for the box as it is turned. */
export function holdsBox(cell: Cell, box: TurnedBox): boolean {
  const { minX, minY, maxX, maxY } = uprightBox(box);
  return maxX - minX <= cell.maxX - cell.minX && maxY - minY <= cell.maxY - cell.minY;
}

/** What a place costs, mm: `bare` at once, `extra` only asked where the place is free and might be the best. */
interface Price {
  readonly bare: (there: TurnedBox) => number;
  readonly extra: (there: TurnedBox, cell: Cell) => number;
}

function movePrice(from: TurnedBox, rings: readonly Ring[]): Price {
  const isInside = depthInside(rings, from.x, from.y) > 0;
  return {
    bare: ({ x, y }) => Math.hypot(x - from.x, y - from.y),
    extra: ({ x, y }) => (isInside && depthInside(rings, x, y) <= 0 ? COST_OUTSIDE : 0),
  };
}

function leaderPrice(target: Vec2, obstacles: Obstacles): Price {
  return {
    bare: (there) => {
      const from = nearestOnBox(there, target);
      return Math.hypot(from.x - target.x, from.y - target.y);
    },
    extra: (there, cell) => {
      const from = nearestOnBox(there, target);
      const isShort = Math.hypot(from.x - target.x, from.y - target.y) < SHORTEST_LEADER_MM;
      const isHere = target.x >= cell.minX && target.x <= cell.maxX && target.y >= cell.minY && target.y <= cell.maxY;
      return (
        (isShort ? COST_OTHER_CELL : 0) +
        (isHere ? 0 : COST_OTHER_CELL) +
        (obstacles.isOpen(from, target) ? 0 : COST_OVER_WORDS)
      );
    },
  };
}

/** The end of the leader that is farther from the words. */
function leaderTarget({ box, leader }: Label): Vec2 {
  if (leader === null) throw new Error('leaderTarget: a label without a leader');
  const { points } = leader;
  const ends = [
    { x: points[0], y: points[1] },
    { x: points[points.length - 2], y: points[points.length - 1] },
  ];
  const away = ends.map((end) => {
    const from = nearestOnBox(box, end);
    return Math.hypot(from.x - end.x, from.y - end.y);
  });
  return away[1] >= away[0] ? ends[1] : ends[0];
}

/** The point of a box nearest to a point. */
function nearestOnBox({ x, y, halfWidth, halfHeight, angleRad }: TurnedBox, p: Vec2): Vec2 {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const [dx, dy] = [p.x - x, p.y - y];
  const u = Math.max(-halfWidth, Math.min(halfWidth, c * dx + s * dy));
  const v = Math.max(-halfHeight, Math.min(halfHeight, c * dy - s * dx));
  return { x: x + c * u - s * v, y: y + s * u + c * v };
}

/** Places of the box's middle in the cell: round the one that needs the smallest move, or all over. */
function* placesIn(cell: Cell, box: TurnedBox, isFar: boolean): Generator<TurnedBox> {
  const { minX, minY, maxX, maxY } = uprightBox(box);
  const [w, h] = [(maxX - minX) / 2, (maxY - minY) / 2];
  const { halfWidth, halfHeight, angleRad } = box;
  const low = { x: cell.minX + w, y: cell.minY + h };
  const high = { x: cell.maxX - w, y: cell.maxY - h };
  const into = {
    x: Math.min(high.x, Math.max(low.x, box.x)),
    y: Math.min(high.y, Math.max(low.y, box.y)),
  };
  const step = isFar ? FAR_STEP_MM : NEAR_STEP_MM;
  const reach = isFar ? Infinity : NEAR_REACH_MM;
  const [i0, i1] = [-Math.min(reach, into.x - low.x), Math.min(reach, high.x - into.x)].map((mm) =>
    Math.trunc(mm / step),
  );
  const [j0, j1] = [-Math.min(reach, into.y - low.y), Math.min(reach, high.y - into.y)].map((mm) =>
    Math.trunc(mm / step),
  );
  for (let i = i0; i <= i1; i += 1) {
    for (let j = j0; j <= j1; j += 1)
      yield { x: into.x + i * step, y: into.y + j * step, halfWidth, halfHeight, angleRad };
  }
}
