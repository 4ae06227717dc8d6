import { grownRegions, type Region } from '../../geom/polygon-boolean.ts';
import { boxOfPoints, type Box2 } from '../../geom/ring.ts';
import type { FoamTask, RoomPlace } from './foam-task.ts';
import { latticeRing } from './lattice.ts';
import { doAreasMeet } from './overlap-check.ts';
import type { RoomPlaces } from './quick-fit.ts';
import { turnOf, turnRing } from './shape.ts';

/** What a hand lays so that it touches may reach over by so much, mm: far under any knife. */
export const HAND_SLACK_MM = 0.02;

/** Lattice of the check, steps for a mm: whole numbers on it stay exact for sheets of any size that is allowed. */
const PER_MM = 1e4;

interface Laid {
  readonly rings: readonly Float64Array[];
  readonly box: Box2;
}

/**
 * Says for certain whether copies can be cut where they lie, apart from how they came there: their true outlines, not the simplified ones they were
 * laid by, are set down corner by corner in whole numbers, and every side is held against every other.
 */
export class LayoutCheck {
  readonly #task: FoamTask;
  readonly #slackMm: number;
  /** By parts: what it takes, and the same with half the spacing round it. */
  readonly #bare: (readonly Region[] | undefined)[] = [];
  readonly #spaced: (readonly Region[] | undefined)[] = [];
  readonly #blocked = new Map<number, readonly Laid[]>();

  /** @param slackMm how far one may reach over another, or over the edge of its room. */
  constructor(task: FoamTask, slackMm: number) {
    this.#task = task;
    this.#slackMm = slackMm;
  }

  /** Pairs of copies that lie over each other or nearer than the spacing. @param from only those pairs of which one is this copy or a later one. */
  pairs(places: RoomPlaces): readonly (readonly [number, number])[] {
    const laid = places.map((place, i) => (place === null ? null : this.#lay(i, place, true)));
    const found: (readonly [number, number])[] = [];
    for (const [i, one] of laid.entries()) {
      if (one === null) continue;
      for (let j = i + 1; j < laid.length; j += 1) {
        const other = laid[j];
        if (other === null || places[i]?.room !== places[j]?.room) continue;
        if (doBoxesMeet(one.box, other.box) && doAreasMeet(one.rings, other.rings)) found.push([i, j]);
      }
    }
    return found;
  }

  /** Copies that reach over the border of their room, or over what is kept clear. */
  strays(places: RoomPlaces): readonly number[] {
    return places.flatMap((place, i) => (place !== null && !this.isWithin(i, place) ? [i] : []));
  }

  /** @param isOnSheet true: the border counts as part of the room. */
  isWithin(copy: number, place: RoomPlace, isOnSheet = false): boolean {
    const room = this.#task.rooms[place.room];
    const { rings, box } = this.#lay(copy, place, false);
    const free = isOnSheet ? { minX: 0, minY: 0, maxX: room.alongMm, maxY: room.acrossMm } : room.free;
    const slack = PER_MM * this.#slackMm;
    const isIn =
      box.minX >= PER_MM * free.minX - slack &&
      box.minY >= PER_MM * free.minY - slack &&
      box.maxX <= PER_MM * free.maxX + slack &&
      box.maxY <= PER_MM * free.maxY + slack;
    return (
      isIn &&
      this.#blockedOf(place.room).every((zone) => !doBoxesMeet(box, zone.box) || !doAreasMeet(rings, zone.rings))
    );
  }

  /** How far along its room a copy reaches, mm. */
  endOf(copy: number, place: RoomPlace): number {
    const { area } = this.#task.parts[this.#task.copies[copy].part];
    return boxOfPoints(turnRing(area.outer, turnOf(place))).maxX + place.x;
  }

  #lay(copy: number, place: RoomPlace, isSpaced: boolean): Laid {
    const turn = turnOf(place);
    const [mx, my] = [Math.round(place.x * PER_MM), Math.round(place.y * PER_MM)];
    const rings = this.#areaOf(this.#task.copies[copy].part, isSpaced)
      .flatMap(({ outer, holes }) => [outer, ...holes])
      .map((ring) => turnRing(ring, turn).map((value, k) => Math.round(value * PER_MM) + ((k & 1) === 0 ? mx : my)));
    return { rings, box: boxOfPoints(rings.flatMap((ring) => [...ring])) };
  }

  #areaOf(part: number, isSpaced: boolean): readonly Region[] {
    const list = isSpaced ? this.#spaced : this.#bare;
    return (list[part] ??= grown(
      this.#task.parts[part].area,
      (isSpaced ? this.#task.fill.spacingMm / 2 : 0) - this.#slackMm / 2,
    ));
  }

  #blockedOf(room: number): readonly Laid[] {
    const known = this.#blocked.get(room);
    if (known !== undefined) return known;
    const made = this.#task.rooms[room].blocked.map(({ outer, holes }) => {
      const rings = [outer, ...holes].map((ring, k) => latticeRing(ring, PER_MM, k > 0));
      return { rings, box: boxOfPoints(rings[0]) };
    });
    this.#blocked.set(room, made);
    return made;
  }
}

const grown = (region: Region, byMm: number): readonly Region[] =>
  byMm === 0 ? [region] : grownRegions([region.outer, ...region.holes], byMm);

const doBoxesMeet = (a: Box2, b: Box2): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
