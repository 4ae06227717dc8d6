import { mkdtemp, open, readdir, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { crc32 } from '../base/crc32.ts';

/** Drafts are named after the machine and the process that writes them, so that one whose process is gone is known. */
const BEGIN = '.draft-';
const OWN_MACHINE = crc32(new TextEncoder().encode(hostname())).toString(36);
const NAMED = /^\.draft-([0-9a-z]+)-(\d+)-[^/]+$/;

/** Lies in a folder as long as its files are moved in: who finds it there knows that some of them are of another run. */
export const UNFINISHED_NAME = 'not-finished.txt';
export const UNFINISHED_TEXT =
  'A run was ended while it put its files here: some of them are new, some may be of an earlier run.\nDo not cut by them. Run it once more; this note then goes by itself.\n';

/** A folder beside the files, for what is not finished. */
export const makeDraft = (folder: string): Promise<string> =>
  mkdtemp(join(folder, `${BEGIN}${OWN_MACHINE}-${process.pid}-`));

/**
 * Takes away what runs have left in a folder that were ended while they wrote: their drafts, where they ran on this machine and are there no more.
 * @returns what is to be said, a line each.
 */
export async function clearDrafts(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch((): string[] => []);
  const strays = names.filter((name) => {
    const [, machine, pid] = NAMED.exec(name) ?? [];
    return machine === OWN_MACHINE && Number(pid) !== process.pid && !isRunning(Number(pid));
  });
  for (const name of strays) await rm(join(folder, name), { recursive: true, force: true });
  return [
    ...(strays.length === 0 ? [] : [`removed, left by a run that was ended while it wrote: ${strays.join(', ')}`]),
    ...(names.includes(UNFINISHED_NAME)
      ? [`an earlier run was ended while it put its files into ${folder}; those of this run take their place`]
      : []),
  ];
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // It is there and somebody else's.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Writes a file so that its bytes are on the disk, and not only on the way there, before anything takes its place. */
export async function writeThrough(path: string, content: Uint8Array | string): Promise<void> {
  const file = await open(path, 'wx');
  try {
    await file.writeFile(content);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Has what was moved in a folder on the disk. Some systems know no such thing for folders: there it is theirs to see to. */
export async function syncFolder(folder: string): Promise<void> {
  try {
    const opened = await open(folder, 'r');
    await opened.sync().finally(() => opened.close());
  } catch {
    // Nothing that was asked for has failed.
  }
}
