import { seededRandom } from '../../base/random.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import type { KeptSheet } from '../../model/stock.ts';
import { moveInRoom } from './foam-room.ts';
import { areaOfRoom, pickMove, type FoamTask, type RoomPlace } from './foam-task.ts';
import { HAND_SLACK_MM, LayoutCheck } from './layout-check.ts';
import { isBetter, scoreOf, usedRooms, type LayoutScore } from './layout-score.ts';
import { QuickFit, type RoomPlaces } from './quick-fit.ts';
import { shelfLayout } from './shelf-layout.ts';

/** A layout of all that is cut from one foam. */
export interface FoamLayout {
  /** By copies. */
  readonly places: RoomPlaces;
  readonly score: LayoutScore;
}

export interface FirstLayout extends FoamLayout {
  /** Copies of the kept layout that had to be laid anew. */
  readonly movedOn: readonly number[];
}

/** Orders tried at random beside the plain ones, for so many copies at most. */
const SHUFFLES: readonly (readonly [copies: number, tries: number])[] = [
  [12, 12],
  [25, 6],
  [60, 2],
];
/** With more copies than this the plainest order alone is tried. */
const MOST_FOR_ALL = 120;
/** Kinds of sheet in hand that are tried as the first to be filled. */
const MOST_FIRST_KINDS = 6;

/**
 * The layout that is there at once: what is held and what still fits of a layout that was taken stays, the rest is laid in a few orders, and the best
 * of those is kept; it is never worse than shelves. The same input gives the same layout.
 */
export const firstLayout = (task: FoamTask, kept: readonly KeptSheet[]): FirstLayout =>
  runAtOnce(firstLayoutSteps(task, kept));

/** The same in stretches of one order that is tried. */
export function* firstLayoutSteps(task: FoamTask, kept: readonly KeptSheet[]): Stepwise<FirstLayout> {
  const check = new LayoutCheck(task, 0);
  const stays = keptPlaces(task, kept);
  const quick = new QuickFit(task);
  const open = task.copies.map((_, i) => i).filter((i) => !task.isTooLarge[task.copies[i].part]);
  const rest = open.filter((i) => stays.places[i] === null);
  const candidates: RoomPlaces[] = [];
  if (rest.length === 0) candidates.push(stays.places);
  else {
    const roomOrders = stays.isKept ? [keptFirst(task, stays.places)] : roomOrdersOf(task);
    for (const rooms of roomOrders)
      for (const order of ordersOf(task, rest)) {
        yield;
        candidates.push(quick.lay(order, rooms, stays.places));
      }
    yield;
    if (isPlain(task) && !stays.isKept) candidates.push(...nonNull(shelfLayout(task, open)));
  }
  const found: FoamLayout[] = [];
  for (const places of candidates) {
    yield;
    found.push({ places, score: scoreOf(task, places, check) });
  }
  // Of equals the first one.
  found.sort((a, b) => (isBetter(a.score, b.score) ? -1 : isBetter(b.score, a.score) ? 1 : 0));
  const best = found.find(({ places }) => isClear(task, places, check));
  if (best === undefined) throw new Error(`layout of ${task.foam.id}: pieces overlap in every order`);
  return { ...best, movedOn: stays.movedOn };
}

/** Whether all can be cut where it lies, but for what was put there by hand. */
function isClear(task: FoamTask, places: RoomPlaces, check: LayoutCheck): boolean {
  const isByHand = (i: number): boolean => task.held[i] !== null;
  // What stays of a layout that was taken may touch.
  const byHand = new LayoutCheck(task, HAND_SLACK_MM);
  const areApart = (by: LayoutCheck): boolean => by.pairs(places).every(([i, j]) => isByHand(i) && isByHand(j));
  return (areApart(check) || areApart(byHand)) && byHand.strays(places).every(isByHand);
}

interface Stays {
  readonly places: RoomPlaces;
  readonly movedOn: readonly number[];
  /** Whether any place is from a layout that was taken. */
  readonly isKept: boolean;
}

/** What stays: copies that are held, and those of the kept layout that fit where they lay. */
export function keptPlaces(task: FoamTask, kept: readonly KeptSheet[]): Stays {
  const places: (RoomPlace | null)[] = [...task.held];
  const wished = wishedPlaces(task, kept);
  const check = new LayoutCheck(task, HAND_SLACK_MM);
  const tried = task.copies.map((_, i) => places[i] ?? wished[i]);
  const isWished = (i: number): boolean => task.held[i] === null && wished[i] !== null;
  const out = new Set(
    tried.flatMap((place, i) => (place !== null && isWished(i) && !isFitting(task, check, i, place) ? [i] : [])),
  );
  // Of two that overlap the one that is held stays, else the first.
  for (const [i, j] of check.pairs(tried)) {
    if (out.has(i) || out.has(j)) continue;
    if (isWished(j)) out.add(j);
    else if (isWished(i)) out.add(i);
  }
  for (const i of partedGroups(task, tried)) if (isWished(i)) out.add(i);
  for (const [i, place] of tried.entries()) if (!out.has(i)) places[i] = place;
  return {
    places,
    movedOn: [...out].sort((a, b) => a - b),
    isKept: places.some((_, i) => isWished(i) && !out.has(i)),
  };
}

function wishedPlaces(task: FoamTask, kept: readonly KeptSheet[]): RoomPlaces {
  const at = new Map<string, RoomPlace>();
  for (const { foam, sheet, places } of kept) {
    if (foam !== task.foam.id) continue;
    const room = task.rooms.findIndex(({ name }) => name.stock === sheet.stock && name.nth === sheet.nth);
    if (room < 0) continue;
    for (const place of places)
      at.set(`${place.piece} ${place.copy}`, { room, ...moveInRoom(task.rooms[room], pickMove(place)) });
  }
  return task.copies.map(({ part, copy }) => at.get(`${task.parts[part].piece} ${copy}`) ?? null);
}

/** Whether a copy may lie so: on its sheet, and turned as its foam lets it. */
function isFitting(task: FoamTask, check: LayoutCheck, copy: number, place: RoomPlace): boolean {
  const { shape } = task.parts[task.copies[copy].part];
  const { turns, turnOver } = task.fill;
  if (place.isFlipped && !turnOver) return false;
  const isAnyTurn = turns === 'any' && shape.stances.length > 2;
  const isTurned =
    isAnyTurn ||
    shape.stances.some(
      ({ turnRad, isFlipped }) => isFlipped === place.isFlipped && Math.cos(turnRad - place.turnRad) > 1 - 1e-9,
    );
  return isTurned && check.isWithin(copy, place);
}

/** Whether every group lies on one sheet. */
export const isTogether = (task: FoamTask, places: RoomPlaces): boolean => partedGroups(task, places).length === 0;

/** Copies of groups that lie on more than one sheet. */
function partedGroups({ parts, copies }: FoamTask, places: RoomPlaces): readonly number[] {
  const roomsOf = new Map<string, Set<number>>();
  const groupOf = (i: number): string | null => parts[copies[i].part].group;
  for (const [i, place] of places.entries()) {
    const group = groupOf(i);
    if (group === null || place === null) continue;
    roomsOf.set(group, (roomsOf.get(group) ?? new Set()).add(place.room));
  }
  return copies.map((_, i) => i).filter((i) => (roomsOf.get(groupOf(i) ?? '')?.size ?? 0) > 1);
}

/** Sheets of the kept layout before the others, in the order there is. */
function keptFirst({ rooms }: FoamTask, places: RoomPlaces): readonly number[] {
  const used = usedRooms(places);
  return [...used, ...rooms.map((_, i) => i).filter((i) => !used.includes(i))];
}

/** Sheets in hand from small to large, from large to small, and each kind first; always before those that are bought. */
function roomOrdersOf(task: FoamTask): readonly (readonly number[])[] {
  const { rooms } = task;
  const all = rooms.map((_, i) => i);
  const inHand = all.filter((i) => rooms[i].stock !== null);
  const bought = all.slice(inHand.length);
  const ids = [...new Set(inHand.map((i) => rooms[i].stock?.id ?? ''))];
  if (ids.length < 2) return [all];
  const falling = [...inHand].sort((a, b) => areaOfRoom(rooms[b]) - areaOfRoom(rooms[a]) || a - b);
  const first = ids.slice(1, MOST_FIRST_KINDS).map((id) => {
    const isOf = (i: number): boolean => rooms[i].stock?.id === id;
    return [...falling.filter(isOf), ...falling.filter((i) => !isOf(i))];
  });
  return [inHand, falling, ...first].map((order) => [...order, ...bought]);
}

/** Orders in which copies are laid: the largest first by several measures, then some at random about the first. */
function ordersOf(task: FoamTask, copies: readonly number[]): readonly (readonly number[])[] {
  const sizes = task.parts.map(({ shape, areaMm2 }) => {
    const { minX, minY, maxX, maxY } = boxOfPoints(shape.rings[0]);
    const [w, h] = [maxX - minX, maxY - minY];
    return [w * h + Math.max(w, h) ** 2, areaMm2, Math.max(w, h)];
  });
  const by = (k: number): readonly number[] =>
    [...copies].sort((i, j) => sizes[task.copies[j].part][k] - sizes[task.copies[i].part][k] || i - j);
  if (copies.length > MOST_FOR_ALL) return [by(0)];
  const rand = seededRandom(copies.length);
  const tries = SHUFFLES.find(([most]) => copies.length <= most)?.[1] ?? 0;
  const shuffled = Array.from({ length: tries }, () => {
    const marks = new Map(copies.map((i) => [i, sizes[task.copies[i].part][0] * (0.4 + 1.2 * rand())]));
    return [...copies].sort((i, j) => (marks.get(j) ?? 0) - (marks.get(i) ?? 0) || i - j);
  });
  return [by(0), by(1), by(2), ...shuffled];
}

/** True where shelves say all: nothing held, kept together or in hand. */
const isPlain = ({ rooms, held, parts }: FoamTask): boolean =>
  rooms.length > 0 &&
  rooms.every(({ stock }) => stock === null) &&
  held.every((place) => place === null) &&
  parts.every(({ group }) => group === null);

const nonNull = <T>(value: T | null): readonly T[] => (value === null ? [] : [value]);
