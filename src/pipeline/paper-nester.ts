import { Memo } from '../base/memo.ts';
import { seededRandom } from '../base/random.ts';
import type { Stepwise } from '../base/stepwise.ts';
import { coveredRegions, grownRegions } from '../geom/polygon-boolean.ts';
import { boxOfPoints, ringArea, type Ring } from '../geom/ring.ts';
import { meetingOfWhole } from '../geom/whole-union.ts';
import type { Size2 } from '../geom/shelf-pack.ts';
import { firstFit } from '../steps/nest/first-fit.ts';
import { latticeRing, stepsPerUnit } from '../steps/nest/lattice.ts';
import { fitsRoom, isInRoom, Layout } from '../steps/nest/layout.ts';
import { simplifiedOutward } from '../steps/nest/outward.ts';
import { PoseTable } from '../steps/nest/pose-table.ts';
import { doAreasMeet, firstOverlap } from '../steps/nest/overlap-check.ts';
import { shapeOf, type Shape, type Stance } from '../steps/nest/shape.ts';
import { SheetSearch } from '../steps/nest/sheet-search.ts';
import type { NestedPlace, PaperNester, PartlyTaken } from '../steps/tile/paper-nester.ts';

/** Turns tried, as shares of a quarter: words are read along one of the paper's sides. */
const QUARTERS: readonly Stance[] = [0, 1, -1, 2].map((quarters) => ({
  turnRad: (quarters * Math.PI) / 2,
  isFlipped: false,
}));

/** How long equal sheets are searched; more outlines take longer for each move, and are given fewer. */
const MOVES = 120;
const FEWEST_MOVES = 12;
const MOVES_EACH = 3000;

/** Outlines are followed so closely, and notches narrower than twice this are filled, mm: it is paper that is spent, and time that is saved. */
const TOLERANCE_MM = 1;
const NOTCH_MM = 5;

/** Where an outline is cut off beyond a room its corners are rounded to such steps: it is far from what is printed there. */
const CUT_STEPS_PER_MM = 1000;

/** Longest room that is asked for, mm: a roll's page. */
const REACH_MM = 6000;

/** More outlines than this on one ask would take too long. */
const MOST_OUTLINES = 24;

const SEED = 1;

/** Places for templates on paper, by the engine that places pieces on foam. */
export const PAPER_NESTER: PaperNester = { onSheets, inRooms };

/** What is made of each thing, a stretch for each. */
function* eachInTurn<T, U>(things: readonly T[], make: (thing: T) => U): Stepwise<U[]> {
  const made: U[] = [];
  for (const thing of things) {
    yield;
    made.push(make(thing));
  }
  return made;
}

/** What equal sheets are searched with: the same outlines are laid on sheets of several sizes one after the other. */
const TABLES = new Memo<unknown[], PoseTable>(4);

function* onSheets(outlines: readonly Ring[], sheet: Size2, gapMm: number): Stepwise<readonly NestedPlace[] | null> {
  if (outlines.length === 0 || outlines.length > MOST_OUTLINES) return null;
  const grow = gapMm / 2;
  const perMm = stepsPerUnit(REACH_MM);
  const key = [gapMm, ...outlines];
  const table =
    TABLES.get(key) ??
    TABLES.set(
      key,
      new PoseTable(yield* eachInTurn(outlines, (outline) => paperShape(outline, grow, perMm, QUARTERS))),
    );
  // Outlines carry half the gap, so the room they may fill reaches so much beyond the sheet.
  const [width, height] = [sheet.width, sheet.height].map((size) => Math.floor((size + 2 * grow) * perMm));
  const room = Float64Array.of(0, 0, width, height);
  const start = new Layout(outlines.length, outlines.length);
  for (const i of outlines.keys()) {
    start.pose[i] = table.firstOf[i];
    if (!QUARTERS.some((_, k) => fitsRoom(table, table.firstOf[i] + k, room, 0))) return null;
  }
  const search = new SheetSearch(table, start, width, height, seededRandom(SEED));
  const moves = Math.max(FEWEST_MOVES, Math.min(MOVES, Math.round(MOVES_EACH / outlines.length ** 2)));
  const steps = search.moves();
  for (let move = 0; move < moves && search.sheets > 1; move += 1) {
    yield;
    steps.next();
  }
  yield;
  const { best, rooms, sheets } = search;
  // What is printed is cut: outlines are held against each other once more, apart from how places were found.
  if (firstOverlap(table, best, rooms) !== null) return null;
  const places = outlines.map((_, index): NestedPlace => {
    const on = Array.from({ length: sheets }, (__, r) => r).find((r) => isInRoom(table, best, index, rooms, r)) ?? 0;
    return {
      index,
      room: on,
      move: {
        x: (best.x[index] - rooms[4 * on]) / perMm - grow,
        y: best.y[index] / perMm - grow,
        turnRad: QUARTERS[best.pose[index] - table.firstOf[index]].turnRad,
      },
    };
  });
  return Array.from({ length: sheets }, (_, room) =>
    readable(
      places.filter((place) => place.room === room),
      outlines,
      sheet,
    ),
  ).flat();
}

/** The same sheet turned by half a turn where more of it would then stand upright than upside down. */
function readable(places: readonly NestedPlace[], outlines: readonly Ring[], sheet: Size2): readonly NestedPlace[] {
  const upright = places.reduce(
    (sum, { index, move }) => sum + Math.cos(move.turnRad) * Math.abs(ringArea(outlines[index])),
    0,
  );
  if (upright >= -1e-6) return places;
  return places.map((place) => ({
    ...place,
    move: {
      x: sheet.width - place.move.x,
      y: sheet.height - place.move.y,
      turnRad: place.move.turnRad > 0 ? place.move.turnRad - Math.PI : place.move.turnRad + Math.PI,
    },
  }));
}

const paperShape = (ring: Ring, growMm: number, perMm: number, stances: readonly Stance[]): Shape =>
  shapeRound(plainOutlines([ring])[0], growMm, perMm, stances);

const shapeRound = (ring: Ring, growMm: number, perMm: number, stances: readonly Stance[]): Shape =>
  shapeOf([latticeRing(simplifiedOutward(ring, growMm, TOLERANCE_MM / 8), perMm, false)], stances);

/** Outlines round the given ones with few corners; those that are near each other become one. */
function plainOutlines(rings: readonly Ring[]): readonly Ring[] {
  const grown = grownRegions(rings, NOTCH_MM).map(({ outer }) => outer);
  const closed = grownRegions(grown, -NOTCH_MM).map(({ outer }) => outer);
  // Sharp tips were cut off where outlines moved out.
  return coveredRegions([...closed, ...rings]).map(({ outer }) => simplifiedOutward(outer, 0, TOLERANCE_MM));
}

function* inRooms(
  outlines: readonly Ring[],
  rooms: readonly PartlyTaken[],
  gapMm: number,
): Stepwise<readonly NestedPlace[]> {
  if (outlines.length === 0 || rooms.length === 0 || outlines.length > MOST_OUTLINES) return [];
  const grow = gapMm / 2;
  // So far apart that what is taken in one reaches into no other.
  const reach = rooms.flatMap(({ width, height, taken }) => [
    width,
    height,
    ...taken.flatMap((ring) => {
      const box = boxOfPoints(ring);
      return [Math.abs(box.minX), Math.abs(box.maxX), Math.abs(box.minY), Math.abs(box.maxY)];
    }),
  ]);
  const pitchMm = 4 * reach.reduce((a, b) => Math.max(a, b)) + 4 * gapMm;
  const perMm = stepsPerUnit(pitchMm * (rooms.length + 1));
  const takenIn = yield* eachInTurn([...rooms.entries()], ([r, { width, height, taken: all }]) =>
    plainOutlines(all.filter((ring) => reachesInto(ring, width, height)))
      .flatMap((ring) => nearRoom(ring, width, height, gapMm))
      .map((ring) => ({ ring, r })),
  );
  const taken = takenIn.flat();
  const table = new PoseTable([
    ...(yield* eachInTurn(outlines, (outline) => paperShape(outline, grow, perMm, QUARTERS))),
    ...(yield* eachInTurn(taken, ({ ring }) => shapeRound(ring, grow, perMm, QUARTERS.slice(0, 1)))),
  ]);
  const layout = new Layout(outlines.length + taken.length, outlines.length);
  for (let i = 0; i < layout.count; i += 1) layout.pose[i] = table.firstOf[i];
  const left = (r: number): number => Math.round(r * pitchMm * perMm);
  for (const [k, { r }] of taken.entries()) layout.x[outlines.length + k] = left(r);
  // Outlines carry half the gap, so the room they may fill reaches so much beyond the room.
  const over = Math.floor(grow * perMm);
  const walls = Float64Array.from(
    rooms.flatMap(({ width, height }, r) => [
      left(r) - over,
      -over,
      left(r) + Math.floor(width * perMm) + over,
      Math.floor(height * perMm) + over,
    ]),
  );
  yield;
  const lost = new Set(firstFit(table, layout, walls));
  const laid = Array.from({ length: layout.count }, (_, i) => i).filter((i) => !lost.has(i));
  const ringsOf = new Map(laid.map((i) => [i, laidRings(table, layout, i)]));
  const isFree = (i: number): boolean =>
    laid.every((j) => j === i || !doAreasMeet(ringsOf.get(i) ?? [], ringsOf.get(j) ?? []));
  return outlines.flatMap((_, i) => {
    if (lost.has(i) || !isFree(i)) return [];
    const room = rooms.findIndex((__, r) => isInRoom(table, layout, i, walls, r));
    const { turnRad } = QUARTERS[layout.pose[i] - table.firstOf[i]];
    return [{ index: i, room, move: { x: (layout.x[i] - left(room)) / perMm, y: layout.y[i] / perMm, turnRad } }];
  });
}

/** What of a ring can be in the way of anything in a room: templates on joined pages reach far beyond, and every corner takes time. */
function nearRoom(ring: Ring, width: number, height: number, gapMm: number): readonly Ring[] {
  const beyond = gapMm + TOLERANCE_MM;
  const { minX, minY, maxX, maxY } = boxOfPoints(ring);
  if (minX >= -beyond && minY >= -beyond && maxX <= width + beyond && maxY <= height + beyond) return [ring];
  const [right, top] = [width + beyond, height + beyond];
  const room = Float64Array.of(-beyond, -beyond, right, -beyond, right, top, -beyond, top);
  const [own, walls] = [ring, room].map((one) => [one.map((value) => Math.round(value * CUT_STEPS_PER_MM))]);
  return meetingOfWhole(own, walls).map((one) => one.map((value) => value / CUT_STEPS_PER_MM));
}

const laidRings = (table: PoseTable, layout: Layout, i: number): readonly Float64Array[] =>
  table
    .ringsOf(layout.pose[i])
    .map((ring) => ring.map((value, k) => value + (k % 2 === 0 ? layout.x[i] : layout.y[i])));

function reachesInto(ring: Ring, width: number, height: number): boolean {
  const { minX, minY, maxX, maxY } = boxOfPoints(ring);
  return maxX > 0 && maxY > 0 && minX < width && minY < height;
}
