import type { FoamId } from '../base/ids.ts';
import { setSeams } from '../project/commands.ts';
import { nameFromFile, newProject } from '../project/new-project.ts';
import { sourcesOfProject } from '../project/sources.ts';
import { atPlace, placeBeside, placeOf } from '../project/part-place.ts';
import { addPlain, freePartId } from '../project/plain-commands.ts';
import type { Project, SourceRef } from '../project/project.ts';
import { addSculpt } from '../project/sculpt-commands.ts';
import {
  inWindowsNames,
  loadSample,
  loadSampleFile,
  projectFromSample,
  type ProjectSample,
  type Sample,
  type SculptSample,
} from './samples.ts';
import { takeNewVersion } from '../project/version-commands.ts';
import type { FilePart } from '../worker/parts-api.ts';
import { openDrawing } from './drawing-actions.ts';
import { findingText } from './finding-text.ts';
import { freeId, setCore } from '../project/wear-commands.ts';
import { standingOn, upOf } from './parts-actions.ts';
import type { FileHandle } from './files/file-handle.ts';
import type { JobPlace } from './files/keeping.ts';
import { jobKeyOf } from './files/kept-job.ts';
import { begunHere } from './language/begun-here.ts';
import type { SavedJob, SavedSource } from './storage.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** Puts the last job back, with the maker's wishes. @returns false when there is none, or storage refuses. */
export async function restoreLast(bench: Workbench): Promise<boolean> {
  try {
    const wishes = await bench.storage.loadWishes();
    if (wishes !== null) bench.setWishes(wishes);
    const saved = await bench.storage.load();
    if (saved === null) return false;
    for (const source of saved.sources) {
      await bench.workshop.keepFile(source.bytes, source.fileName);
    }
    bench.setReading(saved.project.name);
    bench.adopt(saved.project, [], placeOfSaved(saved));
    bench.setNotice({ tone: 'note', text: WORDS.notice.recovered(saved.project.name) });
    return true;
  } catch {
    // Nothing can be read here; the first save will say that nothing can be kept either.
    return false;
  }
}

/** Where a job is kept that is kept in the browser. */
export const placeOfSaved = ({ project, stamp, file }: SavedJob): JobPlace => ({
  job: stamp.job,
  file,
  inFile: stamp.isInFile ? project : null,
});

/** Opens a file of any kind the window knows: a model, a project, a seam file for the job in hand, or a drawing to lay on it. @param handle  through which a project can be saved again. */
export async function openFile(bench: Workbench, file: File, handle: FileHandle | null = null): Promise<void> {
  bench.setReading(file.name);
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (/\.svg$/i.test(file.name)) return await openDrawing(bench, file);
    if (/\.(json|zip)$/i.test(file.name)) await openJson(bench, bytes, file, handle);
    else await openModel(bench, bytes, file.name);
  } catch {
    bench.setNotice({ tone: 'problem', text: WORDS.notice.unreadable(file.name) });
  } finally {
    if (bench.progress === null) bench.setReading(null);
  }
}

async function openModel(bench: Workbench, bytes: Uint8Array, fileName: string): Promise<void> {
  const put = await bench.workshop.putSource(bytes, fileName);
  if (!put.ok) return bench.showProblem(put.problem, fileName);
  const source = { ...put.value, fileName };
  bench.adopt(begunHere(newProject(nameFromFile(fileName), source)), [{ hash: source.hash, fileName, bytes }]);
}

/** Puts a file in the place of the sculpt: seams, areas and wishes go to where they lay, and what has no place there is told. */
export async function openNewVersion(bench: Workbench, file: File): Promise<void> {
  const { part } = bench;
  const taken = part === null ? null : await takeModel(bench, file);
  const { project } = bench;
  if (taken === null || project === null) return;
  const renewed = await bench.workshop.newVersion(project, taken.source);
  if (!renewed.ok) return bench.showProblem(renewed.problem, file.name);
  bench.autosave.addSource(taken.saved);
  bench.run(takeNewVersion(renewed.value.part));
  const told = renewed.value.findings.map(({ text }) => text).join(' ');
  bench.setNotice({ tone: 'note', text: WORDS.notice.renewed(file.name, told) });
}

/** Puts a model file in as a core of the part: it stands where its numbers put it beside the sculpt's. */
export async function openCore(bench: Workbench, file: File): Promise<void> {
  const taken = await takeModel(bench, file);
  if (taken === null) return;
  bench.autosave.addSource(taken.saved);
  const id = freeId('core', bench.part?.core ?? []);
  const { source } = taken;
  bench.run(
    setCore({ kind: 'model', id, name: nameFromFile(file.name), source, unit: 'sculpt', pointInFile: [0, 0, 0] }),
  );
}

/** Puts a model file into the job as another sculpt, and works on it. */
export async function openSculpt(bench: Workbench, file: File): Promise<void> {
  const taken = await takeModel(bench, file);
  const { project } = bench;
  if (taken === null || project === null) return;
  bench.autosave.addSource(taken.saved);
  const id = freePartId(project);
  bench.run(addSculpt(nameFromFile(file.name), taken.source));
  bench.setView({ choice: { kind: 'part', part: id } });
}

/** Puts a drawing, a picture or a solid into the job as a part of its own, cut out or stacked. */
export async function openPart(bench: Workbench, file: File, foam: FoamId): Promise<void> {
  const bytes = await bytesOf(bench, file);
  if (bytes === null) return;
  const made = await bench.workshop.partFromFile(bytes, file.name, foam);
  const { project } = bench;
  if (!made.ok) return bench.showProblem(made.problem, file.name);
  if (project === null) return;
  bench.autosave.addSource({ hash: made.value.source.hash, fileName: file.name, bytes });
  const id = freePartId(project);
  bench.run(addPlain(besideAll(bench, project, made.value)));
  bench.setView({ choice: { kind: 'part', part: id } });
}

/** A part beside all that stands on the bench; a model has its own way up, what is flat lies down. */
function besideAll(bench: Workbench, project: Project, part: FilePart): FilePart {
  const place = placeBeside(standingOn(bench.bench), null, upOf(project));
  const { x, y, z } = placeOf(place);
  return { ...part, transform: part.kind === 'stack' ? atPlace(part.transform, { x, y, z }) : place };
}

/** The bytes of a file; null where they cannot be read, which is told. */
async function bytesOf(bench: Workbench, file: File): Promise<Uint8Array | null> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    bench.setNotice({ tone: 'problem', text: WORDS.notice.unreadable(file.name) });
    return null;
  }
}

/** The bytes of a model, kept by the worker; null where they cannot be read, which is told. */
async function takeModel(
  bench: Workbench,
  file: File,
): Promise<{ readonly source: SourceRef; readonly saved: SavedSource } | null> {
  const bytes = await bytesOf(bench, file);
  if (bytes === null) return null;
  const put = await bench.workshop.putSource(bytes, file.name);
  if (!put.ok) {
    bench.showProblem(put.problem, file.name);
    return null;
  }
  const source = { ...put.value, fileName: file.name };
  return { source, saved: { hash: source.hash, fileName: file.name, bytes } };
}

async function openJson(bench: Workbench, bytes: Uint8Array, file: File, handle: FileHandle | null): Promise<void> {
  const { name: fileName } = file;
  const opened = await bench.workshop.openProject(bytes, fileName);
  if (opened.ok) {
    // A zip holds more than the job and is not written over: a job out of one is in no file.
    const place = /\.zip$/i.test(fileName) ? undefined : placeInFile(opened.value, file, handle);
    bench.adopt(opened.value, await sourcesOf(bench, opened.value), place);
    const told = opened.notes.map((note) => findingText(note, opened.value.lengthUnit));
    return told.length === 0 ? undefined : bench.setNotice({ tone: 'note', text: told.join(' ') });
  }
  const { readSeamFile } = await import('../project/seam-file.ts');
  const seams = readSeamFile(new TextDecoder().decode(bytes), fileName);
  if (opened.problem.code !== 'project/not-ours' || !seams.ok) return bench.showProblem(opened.problem);
  if (bench.project === null) return bench.setNotice({ tone: 'problem', text: WORDS.notice.seamsNeedModel(fileName) });
  bench.run(setSeams(seams.value.marks, seams.value.joins));
}

const placeInFile = (project: Project, { name, lastModified }: File, handle: FileHandle | null): JobPlace => ({
  job: jobKeyOf(project, name),
  file: { name, handle, seenMs: handle === null ? null : lastModified },
  inFile: project,
});

async function sourcesOf(bench: Workbench, project: Project): Promise<SavedSource[]> {
  const sources: SavedSource[] = [];
  for (const source of sourcesOfProject(project)) {
    const bytes = await bench.workshop.getSource(source.hash);
    if (bytes !== undefined) sources.push({ hash: source.hash, fileName: source.fileName, bytes });
  }
  return sources;
}

/** Opens a sample ready to print. @returns false when its files are not served. */
export async function openSample(bench: Workbench, sample: Sample): Promise<boolean> {
  bench.setReading(sample.title);
  const isOpen = await ('projectFile' in sample ? openProjectSample(bench, sample) : openSculptSample(bench, sample));
  if (isOpen) return true;
  bench.setReading(null);
  bench.setNotice({ tone: 'problem', text: WORDS.notice.noSample(sample.title) });
  return false;
}

async function openSculptSample(bench: Workbench, sample: SculptSample): Promise<boolean> {
  const files = await loadSample(sample).catch(() => null);
  const put = files === null ? null : await bench.workshop.putSource(files.model, sample.objFile);
  if (files === null || put === null || !put.ok) return false;
  const source = { ...put.value, fileName: sample.objFile };
  bench.adopt(projectFromSample(sample, source, files.seams), [{ ...source, bytes: files.model }]);
  return true;
}

async function openProjectSample(bench: Workbench, { projectFile }: ProjectSample): Promise<boolean> {
  const bytes = await loadSampleFile(projectFile).catch(() => null);
  const opened = bytes === null ? null : await bench.workshop.openProject(bytes, projectFile);
  if (opened === null || !opened.ok) return false;
  bench.adopt(inWindowsNames(opened.value), await sourcesOf(bench, opened.value));
  return true;
}
