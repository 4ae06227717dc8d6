import { fail, ok, type Result } from '../base/result.ts';
import { Cancelled, shareOfWork, type Work } from '../base/work.ts';
import type { Comparison } from '../model/comparison.ts';
import { compare } from '../pipeline/compare/compare.ts';
import { figuresOf, type MadeFigures } from '../pipeline/compare/figures-of.ts';
import { Pipeline } from '../pipeline/pipeline.ts';
import { documentOf } from '../project/kept-version.ts';
import type { Project } from '../project/project.ts';
import { neededSources, sourcesOfProject } from '../project/sources.ts';
import { ProjectInterner } from './intern-project.ts';
import { WaitingWork } from './waiting-work.ts';
import type { Progress } from './workshop-api.ts';

/** States whose figures are remembered: to go on from one to the next costs one run. */
const KEPT = 8;

/**
 * Works out what two states of a project come to, in a pipeline of its own, so that what is remembered of the job at work stays. Figures and outlines are
 * all that is kept of a state.
 */
export class CompareDesk {
  readonly #sourceOf: Pipeline['sourceOf'];
  readonly #isBusy: () => boolean;
  #pipeline = new Pipeline();
  #interner = new ProjectInterner();
  #known = new Map<string, MadeFigures>();
  #work: WaitingWork | null = null;
  /** Two never run at once. */
  #settled: Promise<unknown> = Promise.resolve();

  /** @param isBusy  true while the job at work is worked out. */
  constructor(sourceOf: Pipeline['sourceOf'], isBusy: () => boolean) {
    this.#sourceOf = sourceOf;
    this.#isBusy = isBusy;
  }

  compare(one: Project, other: Project, onProgress: (progress: Progress) => void): Promise<Result<Comparison | null>> {
    this.#work?.cancel();
    const work = new WaitingWork(this.#isBusy, onProgress);
    this.#work = work;
    const made = this.#settled.then(() => this.#compare(one, other, work));
    this.#settled = made.catch(() => undefined);
    return made;
  }

  stopComparing(): Promise<void> {
    this.#work?.cancel();
    this.#pipeline = new Pipeline();
    this.#interner = new ProjectInterner();
    this.#known = new Map();
    return Promise.resolve();
  }

  async #compare(one: Project, other: Project, work: Work): Promise<Result<Comparison | null>> {
    for (const project of [one, other]) {
      const missing = neededSources(project).find(({ hash }) => this.#sourceOf(hash) === undefined);
      if (missing !== undefined)
        return fail('compare/no-source', `The file ${missing.fileName} is not at hand: open it again, then compare.`);
    }
    try {
      const first = await this.#figures(one, shareOfWork(work, 0, 0.48));
      const second = await this.#figures(other, shareOfWork(work, 0.48, 0.96));
      return ok(await compare(first, second, shareOfWork(work, 0.96, 1)));
    } catch (error) {
      if (error instanceof Cancelled) return ok(null);
      throw error;
    }
  }

  async #figures(project: Project, work: Work): Promise<MadeFigures> {
    const document = documentOf(project);
    const key = JSON.stringify(document);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    for (const { hash } of sourcesOfProject(document)) {
      const source = this.#sourceOf(hash);
      if (source !== undefined) this.#pipeline.putSource(hash, source);
    }
    const made = figuresOf(await this.#pipeline.run(this.#interner.same(document), work));
    this.#known.set(key, made);
    const [oldest] = this.#known.keys();
    if (this.#known.size > KEPT) this.#known.delete(oldest);
    return made;
  }
}
