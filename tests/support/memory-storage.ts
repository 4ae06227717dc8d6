import {
  jobKeyOf,
  NO_NOTE,
  planKeeping,
  type JobFile,
  type KeepNote,
  type KeptStamp,
} from '../../src/app/files/kept-job.ts';
import type { SavedJob, SavedSource, Storage } from '../../src/app/storage.ts';
import type { Wishes } from '../../src/app/view-state.ts';
import type { Project } from '../../src/project/project.ts';
import { sourcesOfProject } from '../../src/project/sources.ts';

/** Storage that lives as long as the test, and refuses when told to. */
export class MemoryStorage implements Storage {
  /** What every call is refused with, if at all. */
  refusal: Error | null = null;
  onNewer = (): void => undefined;
  /** Documents in the order they were saved. */
  readonly saves: Project[] = [];
  readonly sources = new Map<string, SavedSource>();
  readonly files = new Map<string, JobFile | null>();
  wishes: Wishes | null = null;
  atMs = Date.UTC(2030, 0, 1);
  readonly #kept = new Map<string, { readonly stamp: KeptStamp; readonly project: Project }>();

  set isRefusing(isRefusing: boolean) {
    this.refusal = isRefusing ? new Error('storage is switched off') : null;
  }

  async load(): Promise<SavedJob | null> {
    const newest = (await this.states()).find(({ isNow }) => isNow);
    return newest === undefined ? null : await this.fetch(newest.id);
  }

  async states(): Promise<readonly KeptStamp[]> {
    await this.#answer();
    return [...this.#kept.values()].map(({ stamp }) => stamp).sort((a, b) => b.atMs - a.atMs);
  }

  async fetch(id: string): Promise<SavedJob | null> {
    await this.#answer();
    const kept = this.#kept.get(id);
    if (kept === undefined) return null;
    const sources = sourcesOfProject(kept.project).map(({ hash }) => this.sources.get(hash));
    if (!sources.every((source) => source !== undefined)) return null;
    return { ...kept, sources, file: this.files.get(kept.stamp.job) ?? null };
  }

  async save(
    project: Project,
    fresh: readonly SavedSource[],
    note: KeepNote = { ...NO_NOTE, job: jobKeyOf(project) },
  ): Promise<void> {
    await this.#answer();
    for (const source of fresh) this.sources.set(source.hash, source);
    this.saves.push(project);
    this.files.set(note.job, note.file);
    const stamps = [...this.#kept.values()].map(({ stamp }) => stamp);
    const { now, earlier, gone } = planKeeping(stamps, new Map(), project, note, (this.atMs += 1));
    const former = this.#kept.get(now.id);
    if (earlier !== null && former !== undefined && JSON.stringify(former.project) !== JSON.stringify(project))
      this.#kept.set(earlier.id, { stamp: earlier, project: former.project });
    this.#kept.set(now.id, { stamp: now, project });
    for (const id of gone) this.#kept.delete(id);
  }

  async forget(job: string): Promise<void> {
    await this.#answer();
    for (const [id, { stamp }] of this.#kept) if (stamp.job === job) this.#kept.delete(id);
  }

  async rename(job: string, to: string): Promise<void> {
    await this.#answer();
    for (const [id, { stamp, project }] of [...this.#kept]) {
      if (stamp.job !== job) continue;
      this.#kept.delete(id);
      const renamed = id.slice(0, -job.length) + to;
      this.#kept.set(renamed, { stamp: { ...stamp, id: renamed, job: to }, project });
    }
  }

  async loadWishes(): Promise<Wishes | null> {
    await this.#answer();
    return this.wishes;
  }

  async saveWishes(wishes: Wishes): Promise<void> {
    await this.#answer();
    this.wishes = wishes;
  }

  async #answer(): Promise<void> {
    await Promise.resolve();
    if (this.refusal !== null) throw this.refusal;
  }
}
