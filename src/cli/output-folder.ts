import { copyFile, link, mkdir, realpath, rename, rm, rmdir, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { Refused } from './exit.ts';
import { clearDrafts, makeDraft, syncFolder, UNFINISHED_NAME, UNFINISHED_TEXT, writeThrough } from './output-draft.ts';
import { cannotWriteText } from './output-place.ts';

type Content = Uint8Array | string;

/**
 * Writes a set of files into a folder, all or none: they are written beside it first and moved in at the end.
 * @param folder  made when missing; other files in it stay.
 * @throws Refused when the folder cannot be written.
 */
export async function writeAll(folder: string, files: ReadonlyMap<string, Content>): Promise<void> {
  let madeFolder: string | undefined;
  try {
    madeFolder = await mkdir(folder, { recursive: true });
    await moveInAll([...files].map(([name, content]) => ({ place: join(folder, name), content })));
  } catch (error) {
    if (madeFolder !== undefined) await removeEmpty(resolve(folder), resolve(madeFolder));
    throw new Refused(cannotWriteText(folder, error));
  }
}

/**
 * Writes files wherever they are named, all or none. A name that is a link to a file means that file.
 * @throws Refused when one of their folders cannot be written.
 */
export async function writeEach(files: ReadonlyMap<string, Content>): Promise<void> {
  const placed = await Promise.all(
    [...files].map(async ([path, content]) => ({ place: (await isFile(path)) ? await realpath(path) : path, content })),
  );
  try {
    await moveInAll(placed);
  } catch (error) {
    throw new Refused(cannotWriteText([...new Set([...files.keys()].map((path) => dirname(path)))].join(', '), error));
  }
}

interface Draft {
  readonly place: string;
  readonly content: Content;
}

/**
 * Writes every file into a draft beside its place, then moves all in, each over what it replaces: whatever ends this run, every file is whole, old or
 * new, and a note lies in the folder as long as some are old. The old ones wait in the draft until all are in; when one cannot be moved, the new
 * ones go and the old ones come back.
 */
async function moveInAll(files: readonly Draft[]): Promise<void> {
  const drafts = new Map<string, string>();
  const notes: string[] = [];
  /** Left by a run that was ended: what it says stays true until this one is over. */
  const found: string[] = [];
  const movedIn: string[] = [];
  const setAside: { readonly place: string; readonly old: string }[] = [];
  try {
    for (const folder of new Set(files.map(({ place }) => dirname(place)))) {
      for (const line of await clearDrafts(folder)) process.stderr.write(`${line}\n`);
      drafts.set(folder, await makeDraft(folder));
    }
    for (const { place, content } of files) await writeThrough(draftOf(drafts, place), content);
    for (const folder of drafts.keys()) {
      const note = join(folder, UNFINISHED_NAME);
      if (files.filter(({ place }) => dirname(place) === folder).length < 2) continue;
      if (await isFile(note)) found.push(note);
      else notes.push(note);
      await writeFile(note, UNFINISHED_TEXT);
    }
    for (const { place } of files) {
      const draft = draftOf(drafts, place);
      const isThere = await isFile(place);
      if (isThere) {
        await keepBeside(place, `${draft}.old`);
        setAside.push({ place, old: `${draft}.old` });
      }
      await rename(draft, place);
      if (!isThere) movedIn.push(place);
    }
    for (const folder of drafts.keys()) await syncFolder(folder);
    for (const note of [...notes, ...found]) await rm(note, { force: true });
  } catch (error) {
    for (const place of movedIn) await rm(place, { force: true });
    for (const { place, old } of setAside) await rename(old, place);
    for (const note of notes) await rm(note, { force: true });
    throw error;
  } finally {
    for (const draft of drafts.values()) await rm(draft, { recursive: true, force: true });
  }
}

/** The same file under a second name; a copy where the disk gives a file one name only. */
async function keepBeside(place: string, old: string): Promise<void> {
  await link(place, old).catch(() => copyFile(place, old));
}

const draftOf = (drafts: ReadonlyMap<string, string>, place: string): string =>
  join(drafts.get(dirname(place)) ?? dirname(place), basename(place));

/** Folders that were made for nothing go again, unless somebody has put something in. */
async function removeEmpty(folder: string, first: string): Promise<void> {
  for (let at = folder; ; at = dirname(at)) {
    try {
      await rmdir(at);
    } catch {
      return;
    }
    if (at === first) return;
  }
}

async function isFile(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}
