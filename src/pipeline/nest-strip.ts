import { seededRandom } from '../base/random.ts';
import { ringArea } from '../geom/ring.ts';
import { firstFit } from '../steps/nest/first-fit.ts';
import { latticeRing, MOST_STEPS, stepsPerUnit } from '../steps/nest/lattice.ts';
import { Layout, type Rooms } from '../steps/nest/layout.ts';
import { PoseTable } from '../steps/nest/pose-table.ts';
import { shapeOf } from '../steps/nest/shape.ts';
import { StripSearch } from '../steps/nest/strip-search.ts';
import type { StripTask } from './nest-instance.ts';

/** A strip is searched for long: so many moves each searcher looks for other arrangements before it presses the best for the first time. */
const EXPLORE_MOVES = 30_000;

/** A layout as it is handed from one searcher to another: pose and place of each piece, steps of the lattice. */
export interface StripLayout {
  /** Steps for a unit of the task. */
  readonly perUnit: number;
  readonly length: number;
  readonly pose: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Where one piece lies, in the task's unit: turned about the nought of its outline, then moved. */
export interface StripPlace {
  readonly item: number;
  readonly copy: number;
  readonly turnDeg: number;
  readonly x: number;
  readonly y: number;
}

/** One searcher at a strip: where it looks depends on the task, the seed, its number and what it was offered alone. */
export class StripSearcher {
  readonly #search: StripSearch;
  readonly #moves: Generator<undefined, void, undefined>;
  readonly #perUnit: number;
  /** Kept free before and behind the pieces, steps. */
  readonly #inset: number;
  /** Moves made so far. */
  moves = 0;

  /** @param hand number of this searcher among those that work at the same task, from 0. */
  constructor(task: StripTask, seed: number, hand: number) {
    const { table, layout, rooms, perUnit } = firstLayout(task);
    this.#inset = rooms[0];
    this.#perUnit = perUnit;
    this.#search = new StripSearch(table, layout, rooms, seededRandom(seed * 8191 + hand), EXPLORE_MOVES);
    this.#moves = this.#search.moves();
  }

  get best(): StripLayout {
    const { length, best } = this.#search;
    return {
      perUnit: this.#perUnit,
      length: length + 2 * this.#inset,
      pose: best.pose.slice(),
      x: best.x.slice(),
      y: best.y.slice(),
    };
  }

  get length(): number {
    return this.#search.length + 2 * this.#inset;
  }

  /** Takes over what another searcher found, where it is shorter. */
  offer({ length, pose, x, y }: StripLayout): void {
    const layout = new Layout(pose.length, pose.length);
    layout.pose.set(pose);
    layout.x.set(x);
    layout.y.set(y);
    this.#search.offer(layout, length - 2 * this.#inset);
  }

  move(): void {
    this.#moves.next();
    this.moves += 1;
  }
}

/** What a layout of a task comes to. */
export interface StripOutcome {
  /** Length of strip that is used, in the task's unit. */
  readonly length: number;
  /** Area of all pieces over that of the strip so used, 0 to 1. */
  readonly density: number;
  readonly places: readonly StripPlace[];
}

export function stripOutcome(task: StripTask, layout: StripLayout): StripOutcome {
  const { perUnit } = layout;
  const length = layout.length / perUnit;
  let first = 0;
  let i = 0;
  const places: StripPlace[] = [];
  for (const { id, quantity, turnsDeg } of task.kinds) {
    for (let copy = 0; copy < quantity; copy += 1, i += 1) {
      const turnDeg = turnsDeg[layout.pose[i] - first];
      places.push({ item: id, copy, turnDeg, x: layout.x[i] / perUnit, y: layout.y[i] / perUnit });
    }
    first += turnsDeg.length;
  }
  return { length, density: areaOf(task) / (length * task.height), places };
}

interface FirstLayout {
  readonly table: PoseTable;
  readonly layout: Layout;
  /** The strip, steps of the lattice. */
  readonly rooms: Rooms;
  readonly perUnit: number;
}

/** The finest lattice in which the pieces, laid one by one, need no more room than it is exact for. */
function firstLayout(task: StripTask): FirstLayout {
  const finest = stepsPerUnit(Math.max(task.height, (2 * areaOf(task)) / task.height));
  for (let perUnit = finest; perUnit * task.height > 1; perUnit /= 10) {
    const shapes = task.kinds.map(({ rings, turnsDeg }) =>
      shapeOf(
        rings.map((ring, i) => latticeRing(ring, perUnit, i > 0)).filter((ring) => ring.length >= 6),
        turnsDeg.map((turn) => ({ turnRad: (turn * Math.PI) / 180, isFlipped: false })),
      ),
    );
    const isExact = task.kinds.every(({ rings }) => rings.every((ring) => isOnLattice(ring, perUnit)));
    // What was rounded may reach over a wall by half a step.
    const inset = isExact ? 0 : 1;
    const table = new PoseTable(shapes, isExact);
    const kinds = task.kinds.flatMap(({ quantity }, i) => new Array<number>(quantity).fill(i));
    const layout = new Layout(kinds.length, kinds.length);
    for (const [i, kind] of kinds.entries()) layout.pose[i] = table.firstOf[kind];
    const height = Math.floor(task.height * perUnit * (1 + 1e-12)) - inset;
    const rooms = Float64Array.of(inset, inset, MOST_STEPS, height);
    if (firstFit(table, layout, rooms).length === 0) return { table, layout, rooms, perUnit };
  }
  throw new RangeError(`nest: no lattice holds the strip of ${task.name}`);
}

/** True when a ring's numbers are whole steps, to the rounding of decimals. */
const isOnLattice = (ring: Float64Array, perUnit: number): boolean =>
  ring.every((value) => Math.abs(value * perUnit - Math.round(value * perUnit)) < 1e-4);

const areaOf = ({ kinds }: StripTask): number =>
  kinds.reduce((sum, { rings: [outer, ...holes], quantity }) => {
    const open = holes.reduce((all, hole) => all + Math.abs(ringArea(hole)), 0);
    return sum + quantity * (Math.abs(ringArea(outer)) - open);
  }, 0);
