import { mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Refused } from './exit.ts';

/**
 * Writes a set of files into a folder, all or none: they are written beside it first and moved in at the end.
 * @param folder  made when missing; other files in it stay.
 * @throws Refused when the folder cannot be written.
 */
export async function writeAll(folder: string, files: ReadonlyMap<string, Uint8Array | string>): Promise<void> {
  let draft: string | undefined;
  let madeFolder: string | undefined;
  try {
    madeFolder = await mkdir(folder, { recursive: true });
    draft = await mkdtemp(join(folder, '.draft-'));
    for (const [name, content] of files) await writeFile(join(draft, name), content);
    for (const name of files.keys()) await rename(join(draft, name), join(folder, name));
  } catch (error) {
    if (madeFolder !== undefined) await rm(madeFolder, { recursive: true, force: true });
    throw new Refused(
      `${folder}: cannot be written (${error instanceof Error && 'code' in error ? String(error.code) : 'unknown cause'}); choose another folder with --out.`,
    );
  } finally {
    if (draft !== undefined) await rm(draft, { recursive: true, force: true });
  }
}
