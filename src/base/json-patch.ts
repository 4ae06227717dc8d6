import { fail, ok, type Result } from './result.ts';

/**
 * A change to a JSON value by the three operations of JSON Patch (RFC 6902) that change one value; the place is a JSON Pointer (RFC 6901).
 */
export type PatchStep =
  | { readonly op: 'add' | 'replace'; readonly path: string; readonly value: unknown }
  | { readonly op: 'remove'; readonly path: string };

/** Steps within one value beyond which it is written whole. */
const MOST_STEPS = 1000;

type Fields = Record<string, unknown>;

/**
 * The steps that make one JSON value of another, short rather than few: a list that is shorter to write than what changes in it is written whole.
 * Fields without a value (undefined) count as missing.
 */
export function patchBetween(from: unknown, to: unknown): readonly PatchStep[] {
  return stepsAt('', from, to);
}

/**
 * The value that a patch makes; what was given is left as it is.
 * Fails with `json/no-place` where a step names a place that is not there.
 */
export function patched(value: unknown, steps: readonly PatchStep[]): Result<unknown> {
  const root: Fields = { '': structuredClone(value) };
  for (const step of steps) if (!isTaken(root, step)) return fail('json/no-place', `there is no place ${step.path}`);
  return ok(root['']);
}

function stepsAt(path: string, from: unknown, to: unknown): readonly PatchStep[] {
  if (from === to) return [];
  const steps =
    isFields(from) && isFields(to)
      ? fieldSteps(path, from, to)
      : Array.isArray(from) && Array.isArray(to)
        ? listSteps(path, from, to)
        : null;
  const whole: PatchStep = { op: 'replace', path, value: to };
  if (steps === null) return [whole];
  if (steps.length > MOST_STEPS) return [whole];
  return steps.length > 1 && lengthOf(steps) > lengthOf([whole]) ? [whole] : steps;
}

function fieldSteps(path: string, from: Fields, to: Fields): readonly PatchStep[] {
  const steps: PatchStep[] = [];
  for (const key of new Set([...Object.keys(from), ...Object.keys(to)])) {
    const [before, after] = [ownOf(from, key), ownOf(to, key)];
    const place = `${path}/${escaped(key)}`;
    if (before === undefined && after !== undefined) steps.push({ op: 'add', path: place, value: after });
    else if (before !== undefined && after === undefined) steps.push({ op: 'remove', path: place });
    else steps.push(...stepsAt(place, before, after));
  }
  return steps;
}

/** What both hold in one order stays; between, one after the other, and what is left over is put in or taken out. From the end, so that places before stay. */
function listSteps(path: string, from: readonly unknown[], to: readonly unknown[]): readonly PatchStep[] {
  const stays = stayingPlaces(from.map(keyOf), to.map(keyOf));
  const ends = [[-1, -1] as const, ...stays, [from.length, to.length] as const];
  const steps: PatchStep[] = [];
  for (let i = ends.length - 1; i > 0; i -= 1) {
    const [[a, b], [c, d]] = [ends[i - 1], ends[i]];
    const [gone, come] = [c - a - 1, d - b - 1];
    const both = Math.min(gone, come);
    const first = a + 1;
    for (let k = gone - 1; k >= both; k -= 1) steps.push({ op: 'remove', path: `${path}/${first + k}` });
    for (let k = both; k < come; k += 1) steps.push({ op: 'add', path: `${path}/${first + k}`, value: to[b + 1 + k] });
    for (let k = 0; k < both; k += 1) steps.push(...stepsAt(`${path}/${first + k}`, from[first + k], to[b + 1 + k]));
  }
  return steps;
}

const keyOf = (value: unknown): string => JSON.stringify(value);

/**
 * Places of what stays where it is in both lists, ascending in both: the longest such row of values that stand once in each, after what both
 * begin and end with.
 */
function stayingPlaces(from: readonly string[], to: readonly string[]): (readonly [number, number])[] {
  const shorter = Math.min(from.length, to.length);
  let head = 0;
  while (head < shorter && from[head] === to[head]) head += 1;
  let tail = 0;
  while (tail < shorter - head && from[from.length - 1 - tail] === to[to.length - 1 - tail]) tail += 1;
  const [before, after] = [onceIn(from, head, tail), onceIn(to, head, tail)];
  const pairs = [...before].flatMap(([key, i]) => {
    const j = after.get(key);
    return j === undefined ? [] : [[i, j] as const];
  });
  const heads = Array.from({ length: head }, (_, i) => [i, i] as const);
  const tails = Array.from({ length: tail }, (_, i) => [from.length - tail + i, to.length - tail + i] as const);
  return [...heads, ...longestAscending(pairs), ...tails];
}

/** Where each value stands that is in the list once, what it begins and ends with left out. */
function onceIn(list: readonly string[], head: number, tail: number): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  const often = new Set<string>();
  for (let i = head; i < list.length - tail; i += 1) {
    if (places.has(list[i])) often.add(list[i]);
    places.set(list[i], i);
  }
  for (const key of often) places.delete(key);
  return places;
}

/** Longest row of pairs whose second numbers ascend (patience sorting; Fredman 1975); the first ascend as they come. */
function longestAscending(pairs: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const tops: number[] = [];
  const under = new Int32Array(pairs.length).fill(-1);
  for (const [i, [, j]] of pairs.entries()) {
    let [low, high] = [0, tops.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (pairs[tops[middle]][1] < j) low = middle + 1;
      else high = middle;
    }
    if (low > 0) under[i] = tops[low - 1];
    tops[low] = i;
  }
  const row: (readonly [number, number])[] = [];
  for (let i = tops.at(-1) ?? -1; i >= 0; i = under[i]) row.push(pairs[i]);
  return row.reverse();
}

const lengthOf = (steps: readonly PatchStep[]): number => JSON.stringify(steps).length;

/** @param root  holds the value under an empty name, so that the whole of it has a place too. */
function isTaken(root: Fields, step: PatchStep): boolean {
  if (step.path !== '' && !step.path.startsWith('/')) return false;
  const names = step.path.split('/').map(plain);
  const last = names.pop() ?? '';
  let holder: unknown = root;
  for (const name of names) holder = memberOf(holder, name);
  if (Array.isArray(holder)) return isTakenInList(holder, last, step);
  if (!isFields(holder)) return false;
  if (step.op !== 'add' && !Object.hasOwn(holder, last)) return false;
  // Set as a field of its own whatever its name is: `__proto__` would be taken for the object's kind.
  if (step.op === 'remove') return Reflect.deleteProperty(holder, last);
  return Reflect.defineProperty(holder, last, {
    value: structuredClone(step.value),
    writable: true,
    enumerable: true,
    configurable: true,
  });
}

function isTakenInList(list: unknown[], name: string, step: PatchStep): boolean {
  const at = name === '-' && step.op === 'add' ? list.length : placeIn(name);
  if (at > list.length - (step.op === 'add' ? 0 : 1)) return false;
  if (step.op === 'remove') list.splice(at, 1);
  else list.splice(at, step.op === 'add' ? 0 : 1, structuredClone(step.value));
  return true;
}

function memberOf(holder: unknown, name: string): unknown {
  if (Array.isArray(holder)) return holder[placeIn(name)];
  return isFields(holder) ? ownOf(holder, name) : undefined;
}

const ownOf = (fields: Fields, key: string): unknown => (Object.hasOwn(fields, key) ? fields[key] : undefined);

/** Digits without a nought before them (RFC 6901, 4); Infinity for what is none. */
const placeIn = (name: string): number => (/^(0|[1-9]\d*)$/.test(name) ? Number(name) : Infinity);

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const escaped = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1');
const plain = (name: string): string => name.replaceAll('~1', '/').replaceAll('~0', '~');
