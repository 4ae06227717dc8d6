import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Refused } from './exit.ts';

/** Largest file taken into memory, bytes; Node cannot hold a larger one in one piece. */
const LARGEST_FILE = 2 ** 31 - 1;

export interface InputFile {
  readonly path: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Reads a file the user named. @throws Refused with a sentence when it cannot be read. */
export async function readInput(path: string): Promise<InputFile> {
  try {
    const bytes = new Uint8Array(await readFile(path));
    return { path, name: basename(path), bytes };
  } catch (error) {
    throw new Refused(`${path}: ${reason(error)}`);
  }
}

function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
      return 'there is no such file; check its name and folder.';
    case 'EISDIR':
      return 'this is a folder; name a file in it.';
    case 'EACCES':
    case 'EPERM':
      return 'the file may not be read; change its permissions.';
    case 'ERR_FS_FILE_TOO_LARGE':
      return `the file is larger than ${Math.round(LARGEST_FILE / 1e9)} GB; reduce the sculpt first.`;
    default:
      return 'the file cannot be read.';
  }
}
