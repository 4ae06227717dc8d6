import type { Project } from '../../project/project.ts';
import { sourcesOfProject } from '../../project/sources.ts';
import type { FileHandle } from './file-handle.ts';
import { isWorthKeeping, lettingGo, type Stamp } from './ring.ts';

/** The file a job came from or was saved to. */
export interface JobFile {
  readonly name: string;
  /** Null where the browser only downloads. */
  readonly handle: FileHandle | null;
  /** When it was written last as far as this window knows, ms since 1970; null where it has no handle. */
  readonly seenMs: number | null;
}

/** What is written beside a document that is kept in the browser. */
export interface KeepNote {
  /** Key of its job. */
  readonly job: string;
  /** Name of the last change; empty where it was only opened. */
  readonly what: string;
  /** Pieces it came to; null where that was not known yet. */
  readonly pieces: number | null;
  readonly file: JobFile | null;
  /** True where the file holds just this document. */
  readonly isInFile: boolean;
  /** True for the first of a job that was opened: what was kept of that job before is then an earlier state. */
  readonly isOpened: boolean;
}

/** A kept state as a list tells of it. */
export interface KeptStamp extends Stamp {
  /** When work on it began after the earlier state before it, ms since 1970. */
  readonly sinceMs: number;
  readonly name: string;
  readonly what: string;
  readonly pieces: number | null;
  /** Of the file of its job; empty where it has none. */
  readonly fileName: string;
  readonly isInFile: boolean;
}

/** The key of a job: the same file with the same sculpt under the same name is the same job. Without any of these it is a job of its own. */
export function jobKeyOf(project: Project, fileName = ''): string {
  const hash = sourcesOfProject(project)[0]?.hash ?? '';
  return hash === '' && fileName === '' ? crypto.randomUUID() : [fileName, project.name, hash].join('\n');
}

/** Key of the state a job was in last. */
export const nowIdOf = (job: string): string => `now\n${job}`;

export const NO_NOTE: Omit<KeepNote, 'job'> = { what: '', pieces: null, file: null, isInFile: false, isOpened: false };

/** How a document is put away: its stamp, the state before it where that is kept as an earlier one, and what is let go. */
export interface KeepPlan {
  readonly now: KeptStamp;
  readonly earlier: KeptStamp | null;
  readonly gone: readonly string[];
}

/** @param weights bytes of each kept source by its hash, the fresh ones among them. */
export function planKeeping(
  stamps: readonly KeptStamp[],
  weights: ReadonlyMap<string, number>,
  project: Project,
  note: KeepNote,
  atMs: number,
): KeepPlan {
  const id = nowIdOf(note.job);
  const former = stamps.find((stamp) => stamp.id === id);
  const isKept = former !== undefined && (note.isOpened || isWorthKeeping(former.atMs, former.sinceMs, atMs));
  const earlier = isKept ? { ...former, id: `${former.atMs}\n${note.job}`, isNow: false } : null;
  const now: KeptStamp = {
    id,
    job: note.job,
    atMs,
    sinceMs: isKept ? atMs : (former?.sinceMs ?? atMs),
    isNow: true,
    bytes: former?.bytes ?? 0,
    sources: sourcesOfProject(project).map(({ hash }) => hash),
    name: project.name,
    what: note.what,
    pieces: note.pieces,
    fileName: note.file?.name ?? '',
    isInFile: note.isInFile,
  };
  const all = [...stamps.filter((stamp) => stamp.id !== id), now, ...(earlier === null ? [] : [earlier])];
  return { now, earlier, gone: lettingGo(all, weights, note.job, atMs) };
}
