import { ARROWS } from '../hand-steps.ts';
import { CONTROL_KEYS, SIGN_KEYS } from '../keys.ts';
import { wishOfPieceKey } from '../sheet-piece-row.ts';
import { GESTURES, PLANE_KEYS, TURNS } from '../stage-keys.ts';
import type { Verb } from '../verb.ts';
import { KEY_WORDS } from './key-words.ts';
import type { Situation } from './situations.ts';

/** One line of the sheet of keys: what is pressed, key by key, and what it does. */
export interface KeyRow {
  readonly caps: readonly string[];
  readonly does: string;
}

/** Keys under one heading. */
export interface KeyGroup {
  readonly name: keyof typeof KEY_WORDS.situations;
  readonly rows: readonly KeyRow[];
  /** The job has nothing that could be chosen for it. */
  readonly isMissing: boolean;
}

/** The name of a key as it stands on it. */
function capOf(key: string): string {
  const named: Readonly<Record<string, string>> = KEY_WORDS.caps;
  return Object.hasOwn(named, key) ? named[key] : key.length === 1 ? key.toUpperCase() : key;
}

const row = (keys: readonly string[], does: string): KeyRow => ({ caps: keys.map(capOf), does });

/** `Shift ArrowUp` as two keys. */
const rowOf = (keys: string, does: string): KeyRow => row(keys.split(' '), does);

/** Verbs that a key reaches: of two with one key the first. */
function reached(verbs: readonly Verb[]): ReadonlyMap<string, Verb> {
  const byKey = new Map<string, Verb>();
  for (const verb of verbs)
    if (verb.key !== undefined && !(verb.key in SIGN_KEYS) && !byKey.has(verb.key)) byKey.set(verb.key, verb);
  return byKey;
}

/** What arrows and such do in a situation, beside the letters of its verbs. */
function fixedIn(situation: Situation): readonly KeyRow[] {
  const { fixed } = KEY_WORDS;
  const arrows = Object.keys(ARROWS);
  switch (situation) {
    case 'walk':
      return [row(arrows, fixed.walkOn), row(['Shift', ...arrows], fixed.walkPart), row(['Space'], fixed.walkTurn)];
    case 'path':
      return [row(['Enter'], fixed.enter)];
    case 'move':
      return [row(arrows, fixed.move), row(['Shift', ...arrows], fixed.moveFar)];
    case 'plane':
      return Object.entries(PLANE_KEYS).map(([keys, move]) => rowOf(keys, KEY_WORDS.plane[move]));
    default:
      return [];
  }
}

/** Keys that are the same everywhere, read from the tables the window goes by. */
function everywhere(): readonly KeyRow[] {
  const { fixed } = KEY_WORDS;
  const signs = Object.entries(SIGN_KEYS).map(([key, wish]) => {
    const name = typeof wish === 'object' && wish !== null ? wish.verb : (wish ?? 'back');
    return row([key], fixed[name as keyof typeof fixed]);
  });
  const control = Object.entries(CONTROL_KEYS).map(([keys, verb]) =>
    row(
      ['Control', ...keys.split(' ').map((key) => (key === 'shift' ? 'Shift' : key))],
      fixed[verb as keyof typeof fixed],
    ),
  );
  return [...signs, row(['Escape'], fixed.back), row(['F1'], fixed.field), ...control];
}

/** Keys of a piece in hand on its sheet: all that it takes. */
function onSheet(): readonly KeyRow[] {
  const codes = ['Comma', 'Period', ...'abcdefghijklmnopqrstuvwxyz'];
  return codes.flatMap((code) => {
    const wish = wishOfPieceKey(new KeyboardEvent('keydown', { code, key: code.toLowerCase() }));
    return typeof wish === 'string' ? [row([code], KEY_WORDS.onSheet[wish])] : [];
  });
}

/**
 * All keys with what they do, by what is chosen or in hand.
 * @param verbsIn the verbs there would be in a situation, the first of those with one key being what it does; null where the job has none.
 */
export function keyGroups(
  situations: readonly Situation[],
  verbsIn: (situation: Situation) => readonly Verb[] | null,
): readonly KeyGroup[] {
  const always = reached(verbsIn('any') ?? []);
  const ofPiece = reached(verbsIn('piece') ?? []);
  const groups = situations.map((situation): KeyGroup => {
    const verbs = verbsIn(situation);
    if (verbs === null) return { name: situation, rows: [], isMissing: true };
    // What is told under another heading already: an area is chosen on a piece.
    const told = situation === 'any' ? null : situation === 'area' ? ofPiece : always;
    const own = [...reached(verbs)].filter(([key, verb]) => told?.get(key)?.id !== verb.id);
    const rows = [...fixedIn(situation), ...own.map(([key, verb]) => row([key], verb.label))];
    return { name: situation, rows, isMissing: false };
  });
  const { gestures, comesOf } = KEY_WORDS;
  const hands = Object.keys(gestures) as (keyof typeof gestures)[];
  const pointer = hands.map((gesture): KeyRow => ({ caps: [gestures[gesture]], does: comesOf[GESTURES[gesture]] }));
  const view = Object.entries(TURNS).map(([key, move]) => rowOf(key, KEY_WORDS.turns[move]));
  const fixed = (name: KeyGroup['name'], rows: readonly KeyRow[]): KeyGroup => ({ name, rows, isMissing: false });
  return [fixed('help', everywhere()), ...groups, fixed('view', view), fixed('pointer', pointer), fixed('sheet', onSheet())].filter(
    ({ rows, isMissing }) => isMissing || rows.length > 0,
  );
}
