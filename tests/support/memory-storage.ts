import type { Project } from '../../src/project/project.ts';
import type { SavedJob, SavedSource, Storage } from '../../src/app/storage.ts';
import type { Wishes } from '../../src/app/view-state.ts';

/** Storage that lives as long as the test, and refuses when told to. */
export class MemoryStorage implements Storage {
  isRefusing = false;
  /** Documents in the order they were saved. */
  readonly saves: Project[] = [];
  readonly sources = new Map<string, SavedSource>();
  wishes: Wishes | null = null;

  async load(): Promise<SavedJob | null> {
    await this.#answer();
    const project = this.saves.at(-1);
    if (project === undefined) return null;
    const sources = project.parts.map((part) => this.sources.get(part.source.hash));
    return sources.every((source) => source !== undefined) ? { project, sources } : null;
  }

  async save(project: Project, fresh: readonly SavedSource[]): Promise<void> {
    await this.#answer();
    for (const source of fresh) this.sources.set(source.hash, source);
    this.saves.push(project);
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
    if (this.isRefusing) throw new Error('storage is switched off');
  }
}
