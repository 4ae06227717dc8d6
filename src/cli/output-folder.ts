import { mkdir, mkdtemp, rename, rm, stat, writeFile } from 'node:fs/promises';
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
    await moveIn(folder, draft, [...files.keys()]);
  } catch (error) {
    if (madeFolder !== undefined) await rm(madeFolder, { recursive: true, force: true });
    throw new Refused(
      `${folder}: cannot be written (${error instanceof Error && 'code' in error ? String(error.code) : 'unknown cause'}); choose another folder with --out.`,
    );
  } finally {
    if (draft !== undefined) await rm(draft, { recursive: true, force: true });
  }
}

/**
 * Moves the files of a draft into the folder. Those they replace wait in the draft until all are in; when one cannot be moved, the new ones
 * go and the old ones come back.
 */
async function moveIn(folder: string, draft: string, names: readonly string[]): Promise<void> {
  const movedIn: string[] = [];
  const setAside: string[] = [];
  try {
    for (const name of names) {
      const place = join(folder, name);
      if (await isFile(place)) {
        await rename(place, join(draft, `${name}.old`));
        setAside.push(name);
      }
      await rename(join(draft, name), place);
      movedIn.push(name);
    }
  } catch (error) {
    for (const name of movedIn) await rm(join(folder, name), { force: true });
    for (const name of setAside) await rename(join(draft, `${name}.old`), join(folder, name));
    throw error;
  }
}

async function isFile(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}
