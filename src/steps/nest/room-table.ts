import { latticeRing } from './lattice.ts';
import { isInRoom, Layout, type Rooms } from './layout.ts';
import type { FoamTask, RoomPlace } from './foam-task.ts';
import { PoseTable } from './pose-table.ts';
import type { RoomPlaces } from './quick-fit.ts';
import { shapeOf, type Shape, type Stance } from './shape.ts';

/** Some sheets as the search lays on them: side by side, in steps of the lattice. */
export interface RoomsInHand {
  readonly layout: Layout;
  readonly rooms: Rooms;
  /** Numbers of the rooms in the task, by their place in `rooms`. */
  readonly numbers: readonly number[];
  /** Copies that may move, by their place in the layout. */
  readonly copies: readonly number[];
}

/** Turns nearer than this are one, radians. */
const SAME_TURN_RAD = 1e-9;

/** A task in the terms of the search: poses of its pieces, and what never moves (what is held, what may not be cut from) as pieces that stay. */
export class RoomTable {
  readonly table: PoseTable;
  readonly #task: FoamTask;
  /** By rooms: shapes that block it. */
  readonly #blocked: readonly (readonly number[])[];
  readonly #pitch: number;

  /** @param start every way in which a copy lies there is a pose too. */
  constructor(task: FoamTask, start: RoomPlaces) {
    const { parts, rooms, perMm, copies } = task;
    const shapes: Shape[] = parts.map(({ shape }, part) => {
      const own = start.flatMap((place, i) => (place !== null && copies[i].part === part ? [place] : []));
      return { ...shape, stances: withStances(shape.stances, own) };
    });
    const known = new Map<unknown, readonly number[]>();
    this.#blocked = rooms.map(({ blocked, stock }) => {
      const before = known.get(stock);
      if (before !== undefined) return before;
      const made = blocked.map(({ outer, holes }) => {
        const rings = [outer, ...holes].map((ring, k) => latticeRing(ring, perMm, k > 0));
        const stances = [{ turnRad: 0, isFlipped: false }];
        return (
          shapes.push(
            shapeOf(
              rings.filter((ring) => ring.length >= 6),
              stances,
            ),
          ) - 1
        );
      });
      known.set(stock, made);
      return made;
    });
    this.#task = task;
    this.table = new PoseTable(shapes);
    const reach = rooms.reduce((most, { alongMm, acrossMm }) => Math.max(most, alongMm, acrossMm), 0);
    this.#pitch = Math.ceil(3 * reach * perMm) + 16;
  }

  /**
   * @param numbers  rooms in use, ascending.
   * @param isLoose  copies that may move, where they are not held; others stay where they lie.
   * @param isPut    loose copies that are about to be put somewhere in these rooms, wherever they lie now.
   */
  lay(
    places: RoomPlaces,
    numbers: readonly number[],
    isLoose: (copy: number) => boolean,
    isPut: (copy: number) => boolean,
  ): RoomsInHand {
    const { held, copies, perMm, growMm, rooms } = this.#task;
    const at = (place: RoomPlace): number => numbers.indexOf(place.room);
    const all = places.map((_, i) => i);
    const isHere = (i: number): boolean => {
      const place = places[i];
      return place !== null && at(place) >= 0;
    };
    const loose = all.filter((i) => held[i] === null && isLoose(i) && (isPut(i) || isHere(i)));
    const still = all.filter((i) => isHere(i) && !loose.includes(i));
    const blocks = numbers.flatMap((number, k) => this.#blocked[number].map((shape) => ({ shape, k })));
    const layout = new Layout(loose.length + still.length + blocks.length, loose.length);
    for (const [k, i] of [...loose, ...still].entries()) {
      const place = places[i];
      const { part } = copies[i];
      layout.pose[k] = this.table.firstOf[part] + (place === null ? 0 : this.#stanceOf(part, place));
      if (place === null || at(place) < 0) continue;
      layout.x[k] = at(place) * this.#pitch + Math.round(place.x * perMm);
      layout.y[k] = Math.round(place.y * perMm);
    }
    for (const [b, { shape, k }] of blocks.entries()) {
      const piece = loose.length + still.length + b;
      layout.pose[piece] = this.table.firstOf[shape];
      layout.x[piece] = k * this.#pitch;
    }
    const boxes = numbers.flatMap((number, k) => {
      const { minX, minY, maxX, maxY } = rooms[number].free;
      const off = k * this.#pitch;
      return [
        off + Math.round((minX - growMm) * perMm),
        Math.round((minY - growMm) * perMm),
        off + Math.round((maxX + growMm) * perMm),
        Math.round((maxY + growMm) * perMm),
      ];
    });
    return { layout, rooms: Float64Array.from(boxes), numbers, copies: loose };
  }

  /** The places of a layout: what is not in it stays where it lies. */
  placesOf(before: RoomPlaces, { rooms, numbers, copies }: RoomsInHand, layout: Layout): RoomPlaces {
    const { perMm } = this.#task;
    const places = [...before];
    for (const [k, i] of copies.entries()) {
      const room = numbers.findIndex((_, r) => isInRoom(this.table, layout, k, rooms, r));
      const pose = layout.pose[k];
      const shape = this.table.shapeOf[pose];
      const stance = this.table.shapes[shape].stances[pose - this.table.firstOf[shape]];
      places[i] = {
        room: numbers[room],
        x: (layout.x[k] - room * this.#pitch) / perMm,
        y: layout.y[k] / perMm,
        ...stance,
      };
    }
    return places;
  }

  #stanceOf(part: number, place: Stance): number {
    return this.table.shapes[part].stances.findIndex((stance) => isSame(stance, place));
  }
}

function withStances(stances: readonly Stance[], places: readonly Stance[]): readonly Stance[] {
  const all = [...stances];
  for (const place of places)
    if (!all.some((stance) => isSame(stance, place))) all.push({ turnRad: place.turnRad, isFlipped: place.isFlipped });
  return all;
}

function isSame(a: Stance, b: Stance): boolean {
  if (a.isFlipped !== b.isFlipped) return false;
  const turn = a.turnRad - b.turnRad;
  return Math.abs(turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))) < SAME_TURN_RAD;
}
