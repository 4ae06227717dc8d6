import { boxOfPoints, type Box2 } from '../../geom/ring.ts';
import type { FoamTask, RoomPlace } from './foam-task.ts';
import { latticeRing } from './lattice.ts';
import { NoFitBook, type NoFit } from './no-fit-book.ts';
import { shapeOf, turnOf, turnRing, type Stance } from './shape.ts';

/** By copies; null where one has no place. */
export type RoomPlaces = readonly (RoomPlace | null)[];

/** A place counts as clear of what it touches, steps of the lattice: more than rounding moves, less than the hair about each outline. */
const CLEAR_STEPS = 4;

/** A shape that lies in a room. */
interface Laid {
  readonly shape: number;
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

interface Pose {
  readonly stance: Stance;
  readonly turn: number;
  readonly box: Box2;
}

/**
 * Lays pieces one by one, each as far to the left as a corner of what lies there already lets it (of equals: towards the left of the sheet, or its lower edge), one sheet after the other. Quick,
 * because it needs to know of two pieces only where they overlap, not how deep.
 */
export class QuickFit {
  readonly #task: FoamTask;
  readonly #book: NoFitBook;
  readonly #poses: readonly (readonly Pose[])[];
  /** Of each room: what of it is blocked, and where pieces may be, steps. */
  readonly #blocked: readonly (readonly Laid[])[];
  readonly #free: readonly Box2[];

  constructor(task: FoamTask) {
    this.#task = task;
    const { perMm, growMm, parts, rooms } = task;
    const shapes = parts.map(({ shape }) => shape);
    const known = new Map<unknown, readonly number[]>();
    const blockedOf = rooms.map(({ blocked, stock }) => {
      const before = known.get(stock);
      if (stock !== null && before !== undefined) return before;
      const own = blocked.map(({ outer, holes }) => {
        const rings = [outer, ...holes].map((ring, k) => latticeRing(ring, perMm, k > 0));
        return (
          shapes.push(
            shapeOf(
              rings.filter((ring) => ring.length >= 6),
              [UPRIGHT],
            ),
          ) - 1
        );
      });
      known.set(stock, own);
      return own;
    });
    this.#book = new NoFitBook(shapes);
    const upright = this.#book.turnNumber(turnOf(UPRIGHT));
    this.#blocked = blockedOf.map((own) => own.map((shape) => ({ shape, turn: upright, x: 0, y: 0 })));
    this.#poses = parts.map(({ shape }) =>
      shape.stances.map((stance) => ({
        stance,
        turn: this.#book.turnNumber(turnOf(stance)),
        box: boxOfPoints(turnRing(shape.rings[0], turnOf(stance)).map(Math.round)),
      })),
    );
    this.#free = rooms.map(({ free }) => ({
      minX: Math.round((free.minX - growMm) * perMm),
      minY: Math.round((free.minY - growMm) * perMm),
      maxX: Math.round((free.maxX + growMm) * perMm),
      maxY: Math.round((free.maxY + growMm) * perMm),
    }));
  }

  /**
   * @param order   copies in the order in which they are laid.
   * @param rooms   rooms in the order in which they are filled.
   * @param fixed   copies that lie already.
   */
  lay(order: readonly number[], rooms: readonly number[], fixed: RoomPlaces): RoomPlaces {
    const { copies, parts } = this.#task;
    const places: (RoomPlace | null)[] = [...fixed];
    let rest = order.filter((i) => places[i] === null);
    for (const room of rooms) {
      if (rest.length === 0) break;
      const laid: Laid[] = [...this.#blocked[room]];
      for (const [i, place] of places.entries()) if (place?.room === room) laid.push(this.#laidAt(i, place));
      const left = new Set(rest);
      for (const group of this.#groupsOf(rest)) {
        const members = rest.filter((i) => parts[copies[i].part].group === group);
        const isElsewhere = places.some(
          (place, i) => place !== null && place.room !== room && parts[copies[i].part].group === group,
        );
        if (isElsewhere) continue;
        const before = laid.length;
        const found = members.map((i) => this.#put(i, room, laid));
        if (found.some((place) => place === null)) laid.length = before;
        else
          for (const [k, i] of members.entries()) {
            places[i] = found[k];
            left.delete(i);
          }
      }
      for (const i of rest) {
        if (parts[copies[i].part].group !== null) continue;
        places[i] = this.#put(i, room, laid);
        if (places[i] !== null) left.delete(i);
      }
      rest = rest.filter((i) => left.has(i));
    }
    return places;
  }

  #groupsOf(order: readonly number[]): ReadonlySet<string> {
    const { copies, parts } = this.#task;
    return new Set(order.flatMap((i) => parts[copies[i].part].group ?? []));
  }

  #laidAt(copy: number, place: RoomPlace): Laid {
    const { copies, perMm } = this.#task;
    return {
      shape: copies[copy].part,
      turn: this.#book.turnNumber(turnOf(place)),
      x: Math.round(place.x * perMm),
      y: Math.round(place.y * perMm),
    };
  }

  /** Lays one copy among those that lie already, and adds it to them. Null where it finds no place. */
  #put(copy: number, room: number, laid: Laid[]): RoomPlace | null {
    const { copies, perMm } = this.#task;
    const { part } = copies[copy];
    let best: { pose: Pose; x: number; y: number; mark: number } | null = null;
    for (const pose of this.#poses[part]) {
      const found = this.#leftmost(part, pose, room, laid, best?.mark ?? Infinity);
      if (found !== null) best = { pose, ...found };
    }
    if (best === null) return null;
    laid.push({ shape: part, turn: best.pose.turn, x: best.x, y: best.y });
    return { room, x: best.x / perMm, y: best.y / perMm, ...best.pose.stance };
  }

  #leftmost(part: number, { turn, box }: Pose, room: number, laid: readonly Laid[], under: number) {
    const free = this.#free[room];
    const { isTall } = this.#task.rooms[room];
    const [x0, y0] = [free.minX - box.minX, free.minY - box.minY];
    const [x1, y1] = [free.maxX - box.maxX, free.maxY - box.maxY];
    if (x1 < x0 || y1 < y0) return null;
    const inWay = laid.map((one) => ({ ...one, fit: this.#book.noFit(one.shape, one.turn, part, turn) }));
    const spots: { x: number; y: number; mark: number }[] = [];
    const offer = (x: number, y: number): void => {
      if (!(x >= x0 && x <= x1 && y >= y0 && y <= y1)) return;
      // The right edge counts, so that turns are chosen that lie flat against what is there.
      const mark = x + box.maxX + 1e-3 * (isTall ? y1 - y : y - y0);
      if (mark < under) spots.push({ x, y, mark });
    };
    offer(x0, y0);
    offer(x0, y1);
    for (const { x, y, fit } of inWay) offerCorners(fit, x, y, { x0, y0, y1 }, offer);
    for (const [i, one] of inWay.entries())
      if (one.fit.rings.length > 1)
        for (const [j, other] of inWay.entries())
          if (other.fit.rings.length === 1 || j > i) offerCrossings(one, other, offer);
    spots.sort((a, b) => a.mark - b.mark);
    return spots.find((spot) => inWay.every((one) => !isIn(one.fit, spot.x - one.x, spot.y - one.y))) ?? null;
  }
}

const UPRIGHT: Stance = { turnRad: 0, isFlipped: false };

/** Corners of a no-fit area about `x`, `y`, and where its sides cross the walls. */
function offerCorners(
  { rings }: NoFit,
  x: number,
  y: number,
  { x0, y0, y1 }: { readonly x0: number; readonly y0: number; readonly y1: number },
  offer: (x: number, y: number) => void,
): void {
  for (const ring of rings) {
    let [lastX, lastY] = [ring[ring.length - 2] + x, ring[ring.length - 1] + y];
    for (let k = 0; k < ring.length; k += 2) {
      const [px, py] = [ring[k] + x, ring[k + 1] + y];
      offer(px, py);
      if ((lastX - x0) * (px - x0) < 0) {
        const at = lastY + ((py - lastY) * (x0 - lastX)) / (px - lastX);
        offer(x0, Math.floor(at));
        offer(x0, Math.ceil(at));
      }
      for (const wall of [y0, y1]) {
        if ((lastY - wall) * (py - wall) >= 0) continue;
        const at = lastX + ((px - lastX) * (wall - lastY)) / (py - lastY);
        offer(Math.ceil(at), wall);
      }
      [lastX, lastY] = [px, py];
    }
  }
}

interface FitAt {
  readonly fit: NoFit;
  readonly x: number;
  readonly y: number;
}

/** Where the sides of two no-fit areas cross: within a hole, what lies there already has no other corner to begin at. */
function offerCrossings(a: FitAt, b: FitAt, offer: (x: number, y: number) => void): void {
  const [ox, oy] = [b.x - a.x, b.y - a.y];
  for (const ring of a.fit.rings) {
    for (let i = 0, p = ring.length - 2; i < ring.length; p = i, i += 2) {
      const [ax, ay] = [ring[p], ring[p + 1]];
      const [ux, uy] = [ring[i] - ax, ring[i + 1] - ay];
      for (const other of b.fit.rings) {
        for (let j = 0, q = other.length - 2; j < other.length; q = j, j += 2) {
          const [cx, cy] = [other[q] + ox, other[q + 1] + oy];
          const [vx, vy] = [other[j] + ox - cx, other[j + 1] + oy - cy];
          const cross = ux * vy - uy * vx;
          if (cross === 0) continue;
          const s = ((cx - ax) * vy - (cy - ay) * vx) / cross;
          const t = ((cx - ax) * uy - (cy - ay) * ux) / cross;
          if (s >= 0 && s <= 1 && t >= 0 && t <= 1) offer(Math.round(a.x + ax + s * ux), Math.round(a.y + ay + s * uy));
        }
      }
    }
  }
}

/** True for a place inside a no-fit area, farther from its border than counts as clear. */
function isIn({ rings, box }: NoFit, x: number, y: number): boolean {
  if (
    x <= box.minX + CLEAR_STEPS ||
    x >= box.maxX - CLEAR_STEPS ||
    y <= box.minY + CLEAR_STEPS ||
    y >= box.maxY - CLEAR_STEPS
  )
    return false;
  let isInside = false;
  for (const ring of rings) {
    for (let i = 0, p = ring.length - 2; i < ring.length; p = i, i += 2) {
      const [ay, by] = [ring[p + 1], ring[i + 1]];
      if (ay > y === by > y) continue;
      if (x < ring[p] + ((y - ay) / (by - ay)) * (ring[i] - ring[p])) isInside = !isInside;
    }
  }
  return isInside && !isNearSide(rings, x, y);
}

function isNearSide(rings: readonly Float64Array[], x: number, y: number): boolean {
  for (const ring of rings) {
    for (let i = 0, p = ring.length - 2; i < ring.length; p = i, i += 2) {
      const [ux, uy] = [ring[i] - ring[p], ring[i + 1] - ring[p + 1]];
      const [px, py] = [x - ring[p], y - ring[p + 1]];
      const square = ux * ux + uy * uy;
      const t = square === 0 ? 0 : Math.max(0, Math.min(1, (px * ux + py * uy) / square));
      if (Math.abs(px - t * ux) <= CLEAR_STEPS && Math.hypot(px - t * ux, py - t * uy) <= CLEAR_STEPS) return true;
    }
  }
  return false;
}
