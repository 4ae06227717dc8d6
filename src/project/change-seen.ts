import { sharedWith } from '../base/share-equal.ts';
import type { Command } from './commands.ts';
import type { Project } from './project.ts';

/**
 * A change as it was meant by whom saw an older document than the one it is made to: a field sends all of what it stands in, as it was
 * last drawn, and a quick hand has changed another field since. What the command changes of the document that was seen is changed in the
 * one that is there; what came about since stays. Where both changed one value, the command's holds; where the two cannot be told apart (a
 * list without ids that both changed), the command is made to the document that is there, as it is.
 * @param seen the document that was on the screen; with null, the command as it is.
 */
export function changeAsSeen(command: Command, seen: Project | null): Command {
  if (seen === null) return command;
  return {
    ...command,
    apply(now) {
      if (now === seen) return command.apply(now);
      const meant = command.apply(seen);
      if (meant === seen) return command.apply(now);
      // Parts that say the same are the same object from here on: all below goes by identity.
      const before = sharedWith(now, seen);
      const both = merged(before, sharedWith(before, sharedWith(now, meant)), now);
      return both === APART ? command.apply(now) : (both as Project);
    },
  };
}

/** Two changes to one thing that cannot both be kept. */
const APART = Symbol('apart');

type Json = unknown;
type Fields = Readonly<Record<string, Json>>;

/** What `meant` made of `seen`, made to `now` as well; `APART` where that cannot be told. */
function merged(seen: Json, meant: Json, now: Json): Json {
  if (meant === seen || meant === now) return now;
  if (now === seen) return meant;
  if (Array.isArray(seen) && Array.isArray(meant) && Array.isArray(now)) return mergedLists(seen, meant, now);
  if (isFields(seen) && isFields(meant) && isFields(now)) return mergedFields(seen, meant, now);
  return isObject(meant) || isObject(now) ? APART : meant;
}

/** What has become of another kind since, or has lost what is to be changed, is not the thing that was seen. */
function mergedFields(seen: Fields, meant: Fields, now: Fields): Json {
  if (now.kind !== seen.kind) return APART;
  const result: Record<string, Json> = {};
  for (const key of new Set([...Object.keys(now), ...Object.keys(meant)])) {
    if (key in seen && !(key in now) && meant[key] !== seen[key]) return APART;
    const value = merged(seen[key], meant[key], now[key]);
    if (value === APART) return APART;
    if (value !== undefined) result[key] = value;
  }
  return result;
}

function mergedLists(seen: readonly Json[], meant: readonly Json[], now: readonly Json[]): Json {
  const ids = [seen, meant, now].map(idsOf);
  if (ids.every((own) => own !== null)) return mergedById(...(ids as [Known, Known, Known]));
  if (meant.length !== seen.length || now.length !== seen.length) return APART;
  const values = seen.map((value, i) => merged(value, meant[i], now[i]));
  return values.includes(APART) ? APART : values;
}

type Known = ReadonlyMap<string, Json>;

/** Things of a list by their ids; null where some have none, or two have one. */
function idsOf(list: readonly Json[]): Known | null {
  const known = new Map<string, Json>();
  for (const thing of list) {
    if (!isFields(thing) || typeof thing.id !== 'string' || known.has(thing.id)) return null;
    known.set(thing.id, thing);
  }
  return known;
}

/** In the order of the list that is there, new ones behind; a list that was only put in another order is put in that order. */
function mergedById(seen: Known, meant: Known, now: Known): Json {
  const values: Json[] = [];
  for (const id of inOrder(seen, meant, now)) {
    const value = merged(seen.get(id), meant.get(id), now.get(id));
    if (value === APART) return APART;
    if (value !== undefined) values.push(value);
  }
  return values;
}

function inOrder(seen: Known, meant: Known, now: Known): readonly string[] {
  const isMoved =
    [...meant.keys()].filter((id) => seen.has(id)).join() !== [...seen.keys()].filter((id) => meant.has(id)).join();
  const [first, second] = isMoved ? [meant, now] : [now, meant];
  return [...new Set([...first.keys(), ...second.keys()])];
}

const isObject = (value: Json): value is object => typeof value === 'object' && value !== null;

const isFields = (value: Json): value is Fields => isObject(value) && !Array.isArray(value);
