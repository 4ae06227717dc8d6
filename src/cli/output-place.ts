import { realpath, rmdir, stat } from 'node:fs/promises';
import type { BigIntStats } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Refused } from './exit.ts';
import { makeDraft } from './output-draft.ts';

/** A file that is to be written, and the option that names it or its folder. */
export interface OutputPlace {
  readonly path: string;
  readonly option: '--out' | '--report';
}

/**
 * Looks, before any work is done, whether a file can be written where the maker wants it, so that nothing is worked out in vain and no file that
 * is read is lost. Files are told apart by what they are, not by their names: a link to a file, and its name in other letters where the system
 * folds them, are that file.
 * @param inputs  files that are read.
 * @throws Refused where the folder is missing or takes no file, a folder or a device has that name, or the file is one of the inputs.
 */
export async function checkFile({ path, option }: OutputPlace, inputs: readonly string[]): Promise<void> {
  const found = await statOf(path);
  if (found?.isDirectory() === true) throw new Refused(`${path}: this is a folder; name a file with ${option}.`);
  if (found !== null && !found.isFile())
    throw new Refused(`${path}: this is no file but a device; name a file with ${option}.`);
  if (found !== null) await checkIsNone(path, found, inputs, option);
  const folder = dirname(path);
  const around = await statOf(folder);
  if (around === null)
    throw new Refused(`${folder}: there is no such folder; make it first, or choose another with ${option}.`);
  if (!around.isDirectory()) throw new Refused(isFileText(folder, option));
  await tryFolder(folder, folder, option);
}

/**
 * The same for files in a folder, which need not be there yet.
 * @param names  of the files.
 * @throws Refused
 */
export async function checkFolder(folder: string, names: readonly string[], inputs: readonly string[]): Promise<void> {
  let existing = resolve(folder);
  let found = await statOf(existing);
  while (found === null && dirname(existing) !== existing) {
    existing = dirname(existing);
    found = await statOf(existing);
  }
  if (found?.isDirectory() !== true) throw new Refused(isFileText(existing === resolve(folder) ? folder : existing));
  await tryFolder(existing, folder, '--out');
  for (const name of names) {
    const path = join(folder, name);
    const old = await statOf(path);
    if (old === null) continue;
    if (!old.isFile())
      throw new Refused(`${path}: this is no file, and one is to be written there; choose another folder with --out.`);
    await checkIsNone(path, old, inputs, '--out');
  }
}

const isFileText = (path: string, option = '--out'): string =>
  `${path}: this is a file, and nothing can be written into it; choose a folder with ${option}.`;

async function checkIsNone(
  path: string,
  found: BigIntStats,
  inputs: readonly string[],
  option: OutputPlace['option'],
): Promise<void> {
  for (const input of inputs) {
    const read = await statOf(input);
    if (read === null || !(await isSame(path, found, input, read))) continue;
    throw new Refused(
      `${path}: ${option} would write over ${path === input ? 'the file' : `${input}, the file`} that is read; choose another place.`,
    );
  }
}

/** Some file systems number no files: there the whole name decides. */
async function isSame(path: string, one: BigIntStats, input: string, other: BigIntStats): Promise<boolean> {
  if (one.ino !== 0n && one.ino === other.ino && one.dev === other.dev) return true;
  return (await realpath(path)) === (await realpath(input));
}

/** A folder takes files if it takes a folder: tried, because rights alone do not tell. */
async function tryFolder(existing: string, named: string, option: OutputPlace['option']): Promise<void> {
  try {
    await rmdir(await makeDraft(existing));
  } catch (error) {
    throw new Refused(cannotWriteText(named, error, option));
  }
}

/** What is said where a folder turns out to take no files. */
export const cannotWriteText = (folder: string, error: unknown, option: OutputPlace['option'] = '--out'): string =>
  `${folder}: cannot be written (${reasonOf(error)}); choose another folder with ${option}.`;

const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: ', the disk is full',
  EDQUOT: ', your share of the disk is full',
  EROFS: ', it can only be read',
};

const reasonOf = (error: unknown): string => {
  if (!(error instanceof Error && 'code' in error)) return 'unknown cause';
  const code = String(error.code);
  return `${code}${REASONS[code] ?? ''}`;
};

/** Of what a path leads to; null where it leads to nothing. */
async function statOf(path: string): Promise<BigIntStats | null> {
  try {
    return await stat(path, { bigint: true });
  } catch {
    return null;
  }
}
