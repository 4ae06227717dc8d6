import { PROJECT_SUFFIX } from '../../project/project-suffix.ts';
import { fileNameOf } from '../../base/file-name.ts';
import { downloadFile } from '../saving.ts';
import { isFull } from '../storage.ts';
import type { Remedy, Workbench } from '../workbench.ts';
import { canSaveInPlace, chooseToSave, mayWrite, writeWhole, type FileHandle } from './file-handle.ts';
import { KEEP_WORDS } from './keep-words.ts';
import type { JobFile } from './kept-job.ts';
import { openHandle } from './open-handle.ts';
import { whenSaid } from './when.ts';

/** Asks the browser to keep what it keeps for this site when it runs out of room. Once, and whatever it answers. */
let isAskedToKeep = false;

const typeOfJob = () => ({
  description: KEEP_WORDS.kindOfFile,
  accept: { 'application/json': [PROJECT_SUFFIX] },
});

/**
 * Saves the job to the file it came from or was saved to; without one, or `asAnother`, it asks for a file. Where the browser cannot write files it
 * downloads one. To be called within a click or a key press. What is on the disk is never lost: a file that was changed meanwhile is asked about,
 * and one that cannot be written stays as it was.
 * @param date `YYYY-MM-DD`.
 */
export async function saveJob(bench: Workbench, date: string, asAnother = false): Promise<void> {
  const { project } = bench;
  if (project === null) return;
  const { file } = bench.keeping.place;
  const suggested = file?.name ?? `${fileNameOf(project.name)}${PROJECT_SUFFIX}`;
  if (!canSaveInPlace() && (asAnother || file?.handle == null)) return await download(bench, date, suggested);
  if (file?.handle != null && !asAnother) return await saveInPlace(bench, date, file, file.handle);
  const handle = await chooseToSave(suggested, typeOfJob()).catch(() => undefined);
  if (handle === undefined) return await download(bench, date, suggested);
  if (handle !== null) await write(bench, date, handle);
}

async function download(bench: Workbench, date: string, name: string): Promise<void> {
  const { project } = bench;
  const made = await bench.makeFile('project', date);
  if (made === null || project === null) return;
  downloadFile({ ...made, name });
  await bench.isSavedTo({ name, handle: null, seenMs: null }, project);
  bench.setNotice({ tone: 'note', text: KEEP_WORDS.inDownloads(name) });
  askToKeep();
}

/** @param handle that of the file. */
async function saveInPlace(bench: Workbench, date: string, file: JobFile, handle: FileHandle): Promise<void> {
  const isAllowed = await mayWrite(handle).catch(() => false);
  if (!isAllowed) return tell(bench, KEEP_WORDS.notAllowed(file.name), saveAs(bench, date));
  let onDisk: File;
  try {
    onDisk = await handle.getFile();
  } catch {
    return tell(bench, KEEP_WORDS.gone(file.name), saveAs(bench, date));
  }
  if (file.seenMs === null || onDisk.lastModified === file.seenMs) return await write(bench, date, handle);
  tell(
    bench,
    KEEP_WORDS.changedOnDisk(file.name, whenSaid(onDisk.lastModified)),
    saveAs(bench, date),
    { label: KEEP_WORDS.openIt, run: () => void openHandle(bench, handle) },
    { label: KEEP_WORDS.writeOver, run: () => void write(bench, date, handle) },
  );
}

async function write(bench: Workbench, date: string, handle: FileHandle): Promise<void> {
  const { project } = bench;
  const made = await bench.makeFile('project', date);
  if (made === null || project === null) return;
  try {
    await writeWhole(handle, made.bytes as Uint8Array<ArrayBuffer>);
    const { lastModified } = await handle.getFile();
    await bench.isSavedTo({ name: handle.name, handle, seenMs: lastModified }, project);
  } catch (error) {
    const reason = isFull(error) ? KEEP_WORDS.reasons.full : KEEP_WORDS.reasons.other;
    const again = { label: KEEP_WORDS.again, run: () => void write(bench, date, handle) };
    return tell(bench, KEEP_WORDS.failed(handle.name, reason), again, saveAs(bench, date));
  }
  bench.setNotice(null);
  bench.say(KEEP_WORDS.saved(handle.name));
  askToKeep();
}

const saveAs = (bench: Workbench, date: string): Remedy => ({
  label: KEEP_WORDS.saveAs,
  run: () => void saveJob(bench, date, true),
});

function tell(bench: Workbench, text: string, remedy: Remedy, ...also: readonly Remedy[]): void {
  bench.setNotice({ tone: 'problem', text, remedy, also });
}

function askToKeep(): void {
  if (isAskedToKeep) return;
  isAskedToKeep = true;
  // A browser that does not say, or refuses, keeps things as long as it has room.
  void globalThis.navigator?.storage?.persist?.().catch(() => false);
}
