import { lstat, readdir, readFile, realpath, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { contentHash } from '../base/hash.ts';

type Content = Uint8Array | string;

/** Name of the file that tells which files of its folder were written by the last run. */
export const RECORD_NAME = 'files.json';

/** Names that a run gives, some of which a run with other options, or fewer sheets or pages, does not write. */
const OUR_NAMES =
  /^(sheet-\d+(-filled)?\.(svg|dxf|png)|page-\d+-[\w-]+\.png|prop(-sheet-\d+)?(-1-to-[\d.]+)?\.(stl|obj)|flat-pieces\.obj)$/;

/** The others: a record that names anything else was not written by a run. */
const OTHER_NAMES =
  /^((templates(-changed)?|build-sheet|mock-up|test-strip)\.pdf|pieces\.svg|report\.json|timings\.json|gluing\.json|cut-list\.csv|project\.foamloft\.json)$/;

/** What lies in a folder from an earlier run and is none of this one's files. */
export interface LeftOver {
  /** As it was written then: they can go. */
  readonly unchanged: readonly string[];
  /** Written then and changed since, or read by this run. */
  readonly kept: readonly string[];
  /** Named as a run names them; whether one wrote them is not known. */
  readonly unknown: readonly string[];
}

/** The record of a set of files: each name with the SHA-256 of its bytes. */
export async function recordOf(files: ReadonlyMap<string, Content>): Promise<string> {
  const list = await Promise.all(
    [...files].map(async ([name, content]) => ({
      name,
      sha256: await contentHash(typeof content === 'string' ? new TextEncoder().encode(content) : content),
    })),
  );
  return `${JSON.stringify({ schemaVersion: 1, files: list }, null, 1)}\n`;
}

/**
 * Looks what an earlier run has left in a folder; must be asked before this run's record is written.
 * @param names  of the files of this run.
 * @param inputs files that this run reads: never among those that can go.
 */
export async function leftOver(
  folder: string,
  names: ReadonlySet<string>,
  inputs: readonly string[],
): Promise<LeftOver> {
  const recorded = await readRecord(folder);
  const read = await Promise.all(inputs.map((path) => realpath(path).catch(() => path)));
  const unchanged: string[] = [];
  const kept: string[] = [];
  for (const [name, sha256] of recorded) {
    if (names.has(name)) continue;
    const path = join(folder, name);
    const isFile = await lstat(path).then(
      (found) => found.isFile(),
      () => false,
    );
    if (!isFile) continue;
    const isSame = (await hashOf(path)) === sha256;
    (isSame && !read.includes(await realpath(path)) ? unchanged : kept).push(name);
  }
  const all = await readdir(folder).catch(() => []);
  const unknown = all.filter((name) => OUR_NAMES.test(name) && !names.has(name) && !recorded.has(name)).sort();
  return { unchanged, kept, unknown };
}

/** Takes the files away that can go. @returns what is to be said, a line each. */
export async function clearLeftOver(folder: string, { unchanged, kept, unknown }: LeftOver): Promise<string[]> {
  for (const name of unchanged) await rm(join(folder, name), { force: true });
  const told = (what: string, list: readonly string[]): string[] =>
    list.length === 0 ? [] : [`${what}: ${list.join(', ')}`];
  return [
    ...told('removed, written by an earlier run and no part of this one', unchanged),
    ...told('of an earlier run and no part of this one, kept because they were changed or are read', kept),
    ...told('no part of this run, maybe of an earlier one; look before you cut by them', unknown),
  ];
}

/** Null where it cannot be read. */
const hashOf = (path: string): Promise<string | null> =>
  readFile(path).then(
    (bytes) => contentHash(new Uint8Array(bytes)),
    () => null,
  );

/** Files of the last run by their names; none where there is no record, or it is none of ours. */
async function readRecord(folder: string): Promise<ReadonlyMap<string, string>> {
  let record: unknown;
  try {
    record = JSON.parse(await readFile(join(folder, RECORD_NAME), 'utf8'));
  } catch {
    return new Map();
  }
  const files = typeof record === 'object' && record !== null && 'files' in record ? record.files : undefined;
  if (!Array.isArray(files)) return new Map();
  return new Map(files.flatMap((entry) => (isEntry(entry) ? [[entry.name, entry.sha256] as const] : [])));
}

/** Only names that a run gives: nothing outside the folder, and nothing of the maker's, is ever meant. */
function isEntry(entry: unknown): entry is { name: string; sha256: string } {
  if (typeof entry !== 'object' || entry === null || !('name' in entry) || !('sha256' in entry)) return false;
  const { name, sha256 } = entry;
  const isName = typeof name === 'string' && (OUR_NAMES.test(name) || OTHER_NAMES.test(name));
  return isName && typeof sha256 === 'string' && /^[0-9a-f]{64}$/.test(sha256);
}
