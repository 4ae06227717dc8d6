import type { Stepwise } from '../../base/stepwise.ts';
import { add3, length3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import { layLine, nearestAlong, pointAlong, pointBetween, type LaidLine } from './along-line.ts';
import { countCrossings } from './line-crossings.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { lineLength, placeOf } from './mesh-point.ts';
import { lineThrough } from './line-through.ts';
import { nearShortestLine, readyForLinesSteps } from './shortest-line.ts';

/** A line made smooth. */
export interface FairLine {
  readonly line: MeshLine;
  readonly lengthMm: number;
  /** Greatest distance of the new line from the old one, mm, in space, good to a thousandth of what was allowed. */
  readonly farthestMm: number;
  /** The distance that was kept to in the end, mm: less than asked for where the line would have crossed itself or another one; 0 where it stays as it is. */
  readonly withinMm: number;
}

/** Places the line is held by first, and how many at most. */
const FEWEST_PLACES = 8;
const MOST_PLACES = 2048;
/** Places stand this share of the allowed distance apart: half of it shows every bend the distance leaves room for. */
const PLACE_SHARE = 0.5;
/** Rounds of pulling with each number of places. From level to level long waves are gone already. */
const ROUNDS = 10;
/** And again where they aim lower. */
const ROUNDS_AGAIN = 4;
/** Places moved in one stretch: a few milliseconds. */
const STRETCH_PLACES = 32;
/** Places are pulled taut within this share of the distance; then a few rounds in which they have the second share round what corners the corridor made. */
const ROOM = 0.8;
const ROUNDING_ROOM = 0.95;
const ROUNDING_ROUNDS = 5;
/** Where the line between two places does not, these two aim lower by this share, and all by what was too much; so often at most. */
const AIM_LOWER = 0.8;
const MOST_TRIES = 10;
/** A place is left out of the finished line where that moves it by less than this share of the allowed distance. */
const SIMPLE_SHARE = 0.005;
/** How often the distance is halved when the line comes to cross something. */
const MOST_HALVINGS = 4;

/**
 * Makes a jagged line smooth: pulls it taut over the surface within a corridor about where it was, so that it becomes straight where it has
 * room, and bends gently where the corridor holds it. Every place is put into the middle of the shortest line between its neighbours, and brought back
 * towards the old line where that lies beyond the corridor; first with few places, then with twice as many, until they stand half the allowed distance apart.
 * @param withinMm  greatest distance from the old line, mm, in space; > 0, else RangeError.
 * @param others    lines it may not come to cross. Where it would cross one, or itself, half the distance is tried, and so on.
 * @returns the line; the ends of an open one are where they were.
 */
export function* fairLineSteps(
  surface: Surface,
  line: MeshLine,
  withinMm: number,
  others: readonly MeshLine[] = [],
): Stepwise<FairLine> {
  if (!(withinMm > 0)) throw new RangeError(`within ${withinMm} mm`);
  yield* readyForLinesSteps(surface);
  const old = layLine(surface, line);
  const asItWas: FairLine = { line, lengthMm: old.lengthMm, farthestMm: 0, withinMm: 0 };
  if (line.points.length < 3) return asItWas;
  const crossings = countCrossings(surface, [line, ...others]);
  for (let [within, halvings] = [withinMm, 0]; halvings <= MOST_HALVINGS; within /= 2, halvings += 1) {
    const fair = yield* fairWithinSteps(surface, old, line.closed, within);
    if (fair === null) break;
    // What was drawn across its own path beforehand is not held against the new line.
    if (countCrossings(surface, [fair.line, ...others]) <= crossings) return fair;
    yield;
  }
  return asItWas;
}

/** The line pulled taut, whatever it crosses; null where it cannot be kept within the distance. */
function* fairWithinSteps(surface: Surface, old: LaidLine, closed: boolean, within: number): Stepwise<FairLine | null> {
  let aim = within;
  const held = yield* pullSteps(surface, old, closed, aim * ROOM);
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    yield* pullRoundSteps(surface, old, closed, aim * ROUNDING_ROOM, held, ROUNDING_ROUNDS);
    const kept = yield* simplifiedSteps(surface, held, closed, within);
    const drawn = lineThrough(surface, kept, closed);
    yield;
    if (!drawn.ok) return null;
    const fair = drawn.value;
    const farthestMm = yield* farthestSteps(surface, old, fair, within);
    if (farthestMm <= within) return { line: fair, lengthMm: lineLength(surface, fair), farthestMm, withinMm: within };
    // Between two places the line cuts corners of the corridor: those two aim lower; where it is none of them, all do.
    if (!lowerAims(surface, old, closed, within, held)) aim *= within / farthestMm;
    yield* pullRoundSteps(surface, old, closed, aim * ROOM, held, ROUNDS_AGAIN);
  }
  return null;
}

/** Lets those places aim lower between which the line goes beyond the distance; false where there are none. */
function lowerAims(surface: Surface, old: LaidLine, closed: boolean, within: number, held: Held[]): boolean {
  const places = held.map(({ point }) => placeOf(surface, point));
  const isFar = new Uint8Array(held.length);
  for (let i = 0; i < (closed ? held.length : held.length - 1); i += 1) {
    const j = (i + 1) % held.length;
    const middle = scale3(add3(places[i], places[j]), 0.5);
    if (nearestAlong(old, middle).distanceMm > within * ROUNDING_ROOM) isFar[i] = isFar[j] = 1;
  }
  for (const [i, one] of held.entries()) if (isFar[i] === 1) held[i] = { ...one, share: one.share * AIM_LOWER };
  return isFar.includes(1);
}

/** A place of the line in the making: where it is, how far along the old line it belongs, and its own share of the distance it may keep. */
interface Held {
  readonly point: MeshPoint;
  readonly mm: number;
  readonly share: number;
}

/** Places all over the line, pulled with more and more of them. @param aim how far from the old line they may be, mm. */
function* pullSteps(surface: Surface, old: LaidLine, closed: boolean, aim: number): Stepwise<Held[]> {
  let count = Math.max(2, Math.min(FEWEST_PLACES, old.points.length - 1));
  const spacing = Math.max(PLACE_SHARE * aim, old.lengthMm / MOST_PLACES);
  let held = Array.from({ length: closed ? count : count + 1 }, (_, i): Held => {
    const mm = (old.lengthMm * i) / count;
    return { point: pointAlong(surface, old, mm), mm, share: 1 };
  });
  for (;;) {
    yield* pullRoundSteps(surface, old, closed, aim, held, ROUNDS);
    if (old.lengthMm / count <= spacing) return held;
    count *= 2;
    const finer: Held[] = [];
    for (const [i, one] of held.entries()) {
      finer.push(one);
      if (!closed && i + 1 === held.length) continue;
      const next = held[(i + 1) % held.length];
      const mm = (one.mm + next.mm + (next.mm < one.mm ? old.lengthMm : 0)) / 2;
      finer.push({ ...placed(surface, old, closed, one.point, next.point, mm, aim), share: 1 });
      if (i % STRETCH_PLACES === 0) yield;
    }
    held = finer;
  }
}

/** Pulls the places there are, some rounds long. */
function* pullRoundSteps(
  surface: Surface,
  old: LaidLine,
  closed: boolean,
  aim: number,
  held: Held[],
  rounds: number,
): Stepwise<void> {
  for (let round = 0; round < rounds; round += 1) {
    // Every second one, then the others: neighbours never move at once, and neither end of the list is favoured.
    for (const parity of [1, 0])
      for (let i = parity; i < held.length; i += 2) {
        if (i % STRETCH_PLACES === parity) yield;
        if (!closed && (i === 0 || i === held.length - 1)) continue;
        const [before, after] = [held.at(i - 1) as Held, held[(i + 1) % held.length]];
        const { mm, share } = held[i];
        held[i] = { ...placed(surface, old, closed, before.point, after.point, mm, aim * share), share };
      }
  }
}

/** The middle between two places, brought into the corridor. */
function placed(
  surface: Surface,
  old: LaidLine,
  closed: boolean,
  before: MeshPoint,
  after: MeshPoint,
  mm: number,
  aim: number,
): Omit<Held, 'share'> {
  const between = nearShortestLine(surface, before, after);
  if (!between.ok) return { point: pointAlong(surface, old, mm), mm };
  const middle = pointAlong(surface, layLine(surface, between.value.line), between.value.lengthMm / 2);
  // The place belongs to the stretch of the old line it came from; it may slide along it by as much as its neighbours stand apart.
  const near = nearestWithin(old, closed, surface, middle, mm, between.value.lengthMm + 3 * aim);
  if (near.distanceMm <= aim) return { point: middle, mm: near.mm };
  const foot = pointBetween(surface, old.points[near.piece], old.points[near.piece + 1], near.share);
  const out = nearShortestLine(surface, foot, middle);
  if (!out.ok) return { point: foot, mm: near.mm };
  // A way over the surface is no shorter than the one through space, so this keeps to the corridor.
  return { point: pointAlong(surface, layLine(surface, out.value.line), aim), mm: near.mm };
}

function nearestWithin(
  old: LaidLine,
  closed: boolean,
  surface: Surface,
  p: MeshPoint,
  mm: number,
  reach: number,
): ReturnType<typeof nearestAlong> {
  const place = placeOf(surface, p);
  const found = [nearestAlong(old, place, mm - reach, mm + reach)];
  // Over the seam of a closed line.
  if (closed && mm - reach < 0) found.push(nearestAlong(old, place, mm - reach + old.lengthMm));
  if (closed && mm + reach > old.lengthMm) found.push(nearestAlong(old, place, 0, mm + reach - old.lengthMm));
  return found.reduce((best, one) => (one.distanceMm < best.distanceMm ? one : best));
}

/** The places without those that may be left out; ends, and of a closed line three of them, stay. */
function* simplifiedSteps(
  surface: Surface,
  held: readonly Held[],
  closed: boolean,
  within: number,
): Stepwise<MeshPoint[]> {
  const points = held.map(({ point }) => point);
  const isKept = new Uint8Array(points.length + 1);
  const keep = function* (from: number, to: number): Stepwise<void> {
    isKept[from] = isKept[to] = 1;
    if (to - from < 2) return;
    yield;
    const straight = nearShortestLine(surface, points[from], points[to % points.length]);
    let [worst, at] = [SIMPLE_SHARE * within, -1];
    if (!straight.ok) [worst, at] = [Infinity, (from + to) >> 1];
    else {
      const laid = layLine(surface, straight.value.line);
      for (let i = from + 1; i < to; i += 1) {
        const { distanceMm } = nearestAlong(laid, placeOf(surface, points[i]));
        if (distanceMm > worst) [worst, at] = [distanceMm, i];
      }
    }
    if (at < 0) return;
    yield* keep(from, at);
    yield* keep(at, to);
  };
  if (!closed) yield* keep(0, points.length - 1);
  else {
    const third = Math.max(1, Math.floor(points.length / 3));
    yield* keep(0, third);
    yield* keep(third, 2 * third);
    yield* keep(2 * third, points.length);
  }
  return points.filter((_, i) => isKept[i] === 1);
}

/**
 * Greatest distance of a line from an older one, mm, to a thousandth of `within`. Along a piece the distance changes no faster than one moves, so
 * stretches that cannot hold the greatest are passed over.
 */
function* farthestSteps(surface: Surface, old: LaidLine, line: MeshLine, within: number): Stepwise<number> {
  const { places } = layLine(surface, line);
  const far = places.map((p) => nearestAlong(old, p).distanceMm);
  let most = Math.max(...far);
  const look = (p: Vec3, fromP: number, q: Vec3, fromQ: number): void => {
    if ((fromP + fromQ + length3(sub3(q, p))) / 2 <= most + FAR_SHARE * within) return;
    const middle = scale3(add3(p, q), 0.5);
    const { distanceMm } = nearestAlong(old, middle);
    most = Math.max(most, distanceMm);
    look(p, fromP, middle, distanceMm);
    look(middle, distanceMm, q, fromQ);
  };
  for (let i = 1; i < places.length; i += 1) {
    look(places[i - 1], far[i - 1], places[i], far[i]);
    if (i % STRETCH_PLACES === 0) yield;
  }
  return most;
}

/** Share of the allowed distance to which the greatest distance is found. */
const FAR_SHARE = 1e-3;
