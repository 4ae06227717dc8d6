import { readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { History } from '../../../src/project/history.ts';
import { versionsOf, type KeptVersion } from '../../../src/project/kept-version.ts';
import { readProjectFile, writeProjectFile, type OpenedProject } from '../../../src/project/project-file.ts';
import type { Migration } from '../../../src/project/migrations.ts';
import type { Project } from '../../../src/project/project.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { Dice } from './dice.ts';
import type { Generator } from './generators.ts';
import { PROP_GENERATORS } from './prop-generators.ts';
import { SCULPT_GENERATORS } from './sculpt-generators.ts';
import { WalkModel } from './walk-model.ts';

export const GENERATORS: ReadonlyMap<string, Generator> = new Map(
  Object.entries({ ...SCULPT_GENERATORS, ...PROP_GENERATORS }).flatMap(([name, one]) =>
    one === undefined ? [] : [[name, one] as const],
  ),
);

/** What a walk was made of. */
export interface WalkFigures {
  readonly steps: number;
  readonly commands: number;
  /** Commands that changed the document, by name. */
  readonly changed: ReadonlyMap<string, number>;
  readonly undone: number;
  readonly redone: number;
  readonly walked: number;
  readonly saved: number;
  /** Ways left, and kept versions, at most. */
  readonly ways: number;
  readonly versions: number;
  readonly isCutShort: boolean;
}

/** Thrown where history and model, or a file and what was written, are not the same. */
export class WalkFault extends Error {}

/** What other commands are about comes up oftener: without areas nothing is painted. */
const GROUND = [
  'addRegion',
  'addColour',
  'addSeamEdges',
  'drawPaths',
  'keepVersion',
  'fetchVersion',
  'addLayer',
  'addStockSheet',
  'scoreSeam',
  'setTape',
  'holdPiece',
];

const KIT = new URL('../../../samples/kit.foamloft.json', import.meta.url);

/** A version before the first, made up for the walk: what is called name was called title. */
const FROM_BEFORE: ReadonlyMap<number, Migration> = new Map([[0, ({ title, ...rest }) => ({ ...rest, name: title })]]);

/**
 * Walks a document with commands, undo, redo and jumps, step by step beside the model; after each hundred it is saved, read, brought on from an
 * older version, and saved again.
 * @param startAnew  steps after which the walk goes on in what was read, with a new history.
 */
export async function walk(seed: number, steps: number, startAnew = 1000): Promise<WalkFigures> {
  const dice = new Dice(seed);
  const opened = expectOk(await readProjectFile(readFileSync(KIT, 'utf8'), 'kit'));
  let history = new History(frozen(opened.project));
  let model = new WalkModel(history.project);
  const names = [...GENERATORS.keys(), ...GROUND, ...GROUND, ...GROUND];
  const changed = new Map<string, number>();
  const count = { commands: 0, undone: 0, redone: 0, walked: 0, saved: 0, ways: 0, versions: 0, isCutShort: false };
  let last = '';
  for (let step = 1; step <= steps; step += 1) {
    const before = history.project;
    const draw = dice.between(0, 1);
    if (draw < 0.72) {
      const name = dice.pick(names);
      const command = GENERATORS.get(name)?.(before, dice) ?? null;
      if (command === null) continue;
      last = name;
      count.commands += 1;
      model.run(command, before);
      if (history.run(command, step) !== before) changed.set(name, (changed.get(name) ?? 0) + 1);
    } else if (draw < 0.86) {
      last = 'undo';
      count.undone += 1;
      for (let n = dice.pick([1, 1, 1, 3, 12]); n > 0; n -= 1) {
        history.undo();
        model.undo();
      }
    } else if (draw < 0.96) {
      last = 'redo';
      count.redone += 1;
      for (let n = dice.pick([1, 1, 2, 8]); n > 0; n -= 1) {
        history.redo();
        model.redo();
      }
    } else {
      last = 'go to';
      count.walked += 1;
      const id = dice.pick(model.places);
      history.goTo(id);
      model.goTo(id);
    }
    frozen(history.project);
    sameAsModel(history, model, `step ${step}, ${last}, seed ${seed}`);
    count.ways = Math.max(count.ways, model.left.length);
    count.versions = Math.max(count.versions, model.versions.length);
    count.isCutShort ||= model.isCutShort;
    if (step % 100 !== 0) continue;
    const read = await savedAndRead(history.project, opened.sources, `step ${step}, seed ${seed}`);
    count.saved += 1;
    if (step % startAnew !== 0) continue;
    history = new History(frozen(read));
    model = new WalkModel(read);
  }
  return { steps, changed, ...count };
}

function sameAsModel(history: History, model: WalkModel, at: string): void {
  const told = (what: string): WalkFault => new WalkFault(`${at}: ${what}`);
  const { versions: _, ...document } = history.project;
  if (!isDeepStrictEqual(document, model.document)) throw told('another document than the model’s');
  const [own, due] = [versionsOf(history.project), model.versions];
  if (own.length !== due.length || own.some((one, i) => !isSameVersion(one, due[i])))
    throw told('other versions than the model’s');
  if (history.undoLabel !== model.undoLabel) throw told(`undo ${history.undoLabel}, not ${model.undoLabel}`);
  if (history.redoLabel !== model.redoLabel) throw told(`redo ${history.redoLabel}, not ${model.redoLabel}`);
  const { steps, at: place, left, isCutShort } = history.trail;
  if (place !== model.at || isCutShort !== model.isCutShort) throw told(`at ${place}, not ${model.at}`);
  if (
    steps.length !== model.line.length ||
    steps.some(({ id, label }, i) => id !== model.line[i].id || label !== model.line[i].label)
  )
    throw told('other steps than the model’s');
  const ways = left.map(({ after, steps: own }) => ({ after: after?.id ?? null, steps: own.map(({ id }) => id) }));
  if (!isDeepStrictEqual(ways, model.told))
    throw told(`ways ${JSON.stringify(ways)}, not ${JSON.stringify(model.told)}`);
}

/** The document of a version is the very one that was kept. */
const isSameVersion = (one: KeptVersion, other: KeptVersion): boolean =>
  one.id === other.id &&
  one.name === other.name &&
  one.keptAt === other.keptAt &&
  isDeepStrictEqual(one.document, other.document);

/** @returns what was read. */
async function savedAndRead(project: Project, sources: OpenedProject['sources'], at: string): Promise<Project> {
  const text = writeProjectFile(project, sources);
  const result = await readProjectFile(text, 'walked');
  if (!result.ok) throw new WalkFault(`${at}: cannot be read again: ${result.problem.text}`);
  if (result.notes.length > 0) throw new WalkFault(`${at}: ${result.notes.map((note) => note.text).join(' ')}`);
  const { project: read, sources: readSources } = result.value;
  if (!isDeepStrictEqual(plain(read), plain(project)))
    throw new WalkFault(`${at}: another document was read than was written`);
  const again = writeProjectFile(read, readSources);
  if (again !== text) throw new WalkFault(`${at}: other bytes were saved again: ${firstDifference(text, again)}`);
  const older = JSON.parse(text) as { project: Record<string, unknown>; versions?: unknown };
  // Versions are what differs from the document as the file holds it: of an older one they would be written otherwise.
  delete older.versions;
  const { name, ...rest } = older.project;
  older.project = { ...rest, title: name, schemaVersion: 0 };
  const brought = await readProjectFile(JSON.stringify(older), 'of before', FROM_BEFORE);
  if (!brought.ok) throw new WalkFault(`${at}: an older file cannot be read: ${brought.problem.text}`);
  const { versions: _, ...document } = read;
  if (!isDeepStrictEqual(plain(brought.value.project), plain(document)))
    throw new WalkFault(`${at}: another document came of an older file`);
  return read;
}

/** Fields that are there and not said are not written, and so not read: JSON knows no undefined. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

function firstDifference(one: string, other: string): string {
  let at = 0;
  while (at < one.length && one[at] === other[at]) at += 1;
  return `${JSON.stringify(one.slice(Math.max(0, at - 80), at + 60))} became ${JSON.stringify(other.slice(at, at + 60))}`;
}

/** Frozen to its last value, so that a command that writes into a document throws. */
function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const own of Object.values(value)) frozen(own);
  return value;
}
