import type { PartId } from '../base/ids.ts';
import { Memo } from '../base/memo.ts';
import type { Result } from '../base/result.ts';
import { shareOfWork, sharesOfWork, type Work } from '../base/work.ts';
import type { BodyMeasure } from '../model/body-measures.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import { sculptAtWork } from '../project/at-work.ts';
import type { Project, SculptPart, SourceRef } from '../project/project.ts';
import { HomeCrew, type FlattenCrew } from './flatten-crew.ts';
import { LayOutStage } from './lay-out-stage.ts';
import { newVersion, type NewVersion } from './new-version/new-version.ts';
import { outcomeOf } from './outcome-of.ts';
import type { Outcome, SizedSculpt } from './outcome.ts';
import { joined } from './remembered.ts';
import { Run, Stopped, type RunChoices } from './run.ts';
import { SculptChain } from './sculpt-chain.ts';
import type { SculptRun } from './sculpt-run.ts';
import type { Source } from './sculpt-stage.ts';
import { tellOf, workOnSculpt } from './told-of-sculpt.ts';
import { TrimSculpts } from './trim-sculpt.ts';

/** Sculpts whose results are remembered, those of the last run among them. */
const MOST_SCULPTS = 12;

/** Lists of all pieces kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/**
 * The order of the steps and what is remembered between runs. A change re-makes only what depends on it: a new paper re-tiles, a new
 * thickness re-shells and starts each piece from its last flat shape, undo finds everything as it was, and what was done to one sculpt
 * leaves the others as they are.
 */
export class Pipeline {
  readonly #crew: FlattenCrew;
  readonly #sources = new Map<string, Source>();
  readonly #chains = new Map<PartId, SculptChain>();
  readonly #pieces = new Memo<(readonly FoamPiece[])[], readonly FoamPiece[]>(KEPT);
  readonly #seams = new Memo<(readonly FoamSeam[])[], readonly FoamSeam[]>(KEPT);
  readonly #layOut = new LayOutStage((hash) => this.#sources.get(hash));
  readonly #trimSculpts = new TrimSculpts();

  /** @param crew  lays the patches flat. */
  constructor(crew: FlattenCrew = new HomeCrew()) {
    this.#crew = crew;
  }

  /** Keeps a source file for later runs, under the SHA-256 of its bytes. */
  putSource(hash: string, source: Source): void {
    this.#sources.set(hash, source);
  }

  sourceOf(hash: string): Source | undefined {
    return this.#sources.get(hash);
  }

  /** The sculpt of a project as it is read, repaired and sized, before it is made simpler; null where it cannot be. */
  async sculptOf(project: Project, work: Work): Promise<SizedSculpt | null> {
    const { atWork } = new Run(project, {});
    if (atWork === undefined) return null;
    await this.#chainOf(atWork.part).size(atWork, work);
    return atWork.stopped === null ? atWork.sculpt : null;
  }

  /**
   * Runs the chain as far as it goes, for every sculpt of the project and for what is made of all together. The user's faults end in
   * `stopped`; what was made before stands, and a sculpt that could not go on leaves the others alone.
   * @throws Cancelled when the work was called off; what was finished by then is remembered.
   */
  async run(project: Project, work: Work, choices: RunChoices = {}): Promise<Outcome> {
    const run = new Run(project, choices);
    const { sculpts } = run;
    await this.#flatten(run, shareOfWork(work, 0, 0.9));
    if (sculpts.length > 0) await work.pause(0.9, 'adding edges, marks and words');
    await this.#makeFoam(run, shareOfWork(work, 0.9, 0.95));
    for (const own of sculpts) tellOf(run, own);
    // Other parts are made even where no sculpt could be.
    if (sculpts.length === 0 || run.pieces !== null || (project.plain ?? []).length > 0) {
      await work.pause(0.95, 'laying out sheets and pages');
      await this.#layOutAll(run, shareOfWork(work, 0.95, 0.96));
    }
    if (run.stopped === null) {
      await this.#each(run, sculpts, shareOfWork(work, 0.96, 0.99), (chain, own, share) => chain.finish(own, share));
    }
    await this.#each(run, sculpts, shareOfWork(work, 0.99, 1), (chain, own, share) => chain.close(own, share));
    for (const own of sculpts) tellOf(run, own);
    await work.pause(1, 'done');
    this.#forgetOld(project);
    return outcomeOf(
      run,
      sculpts.map((own) => this.#chainOf(own.part).outcome(own)),
    );
  }

  /** A part brought to a new version of its sculpt, whose file was put here. @throws Cancelled when the work was called off. */
  newVersion(
    part: SculptPart,
    source: SourceRef,
    work: Work,
    body: readonly BodyMeasure[] = [],
  ): Promise<Result<NewVersion>> {
    return newVersion(part, source, body, (wanted, share) => this.#chainOf(part).read(wanted, share), work);
  }

  /** The sculpt that is worked on first: it is looked at. */
  async #flatten(run: Run, work: Work): Promise<void> {
    const atWork = sculptAtWork(run.project);
    const inTurn = [...run.sculpts].sort((a, b) => Number(b.wished === atWork) - Number(a.wished === atWork));
    await this.#each(run, inTurn, work, (chain, own, share) => chain.flatten(own, share));
  }

  /** Pieces with edges, numbered on from sculpt to sculpt, and their templates. */
  async #makeFoam(run: Run, work: Work): Promise<void> {
    const { sculpts } = run;
    let next = 1;
    await this.#each(run, sculpts, shareOfWork(work, 0, 0.6), async (chain, own, share) => {
      await chain.makeFoam(own, next, share);
      next += own.pieces?.length ?? 0;
    });
    run.trimSculptOf = (id) => {
      const own = sculpts.find(({ part }) => part.id === id);
      const cut = own?.seen?.cut ?? null;
      return own === undefined || cut === null
        ? null
        : this.#trimSculpts.of(own.part, own.needSculpt(), own.drawn, cut, own.seen?.flats ?? null);
    };
    const strips = this.#layOut.laidStrips(run);
    for (const own of sculpts)
      this.#chainOf(own.part).placeTrim(
        own,
        strips.filter(({ laid }) => laid.on === own.part.id),
      );
    await this.#layOut.assemble(run, shareOfWork(work, 0.6, 0.6));
    for (const own of sculpts) this.#chainOf(own.part).placeLetIns(own, run.assembly.lines);
    const made = sculpts.filter(({ pieces }) => pieces !== null);
    if (made.length > 0 || sculpts.length === 0) {
      run.pieces = joined(
        this.#pieces,
        made.map(({ pieces }) => pieces ?? []),
      );
      run.seams = joined(
        this.#seams,
        made.map(({ seams }) => seams ?? []),
      );
    }
    await this.#each(run, sculpts, shareOfWork(work, 0.6, 1), (chain, own, share) => chain.draw(own, share));
  }

  async #layOutAll(run: Run, work: Work): Promise<void> {
    try {
      await this.#layOut.draw(run, shareOfWork(work, 0, 0));
      const splits = run.sculpts.map(({ part }) => this.#chainOf(part).splits);
      await this.#layOut.layOut(run, splits, work);
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      run.stopped = { step: error.step, problem: error.problem };
    }
  }

  /** Takes one step with every sculpt, one after the other. */
  async #each(
    run: Run,
    sculpts: readonly SculptRun[],
    work: Work,
    step: (chain: SculptChain, own: SculptRun, work: Work) => Promise<void>,
  ): Promise<void> {
    const shares = sharesOfWork(
      work,
      sculpts.map(() => 1),
    );
    for (const [i, own] of sculpts.entries())
      await step(this.#chainOf(own.part), own, workOnSculpt(run.project, own.part, shares[i]));
  }

  #chainOf({ id }: SculptPart): SculptChain {
    let chain = this.#chains.get(id);
    if (chain === undefined) this.#chains.set(id, (chain = new SculptChain(this.#crew, this.#sources)));
    return chain;
  }

  /** Sculpts that were taken away are remembered for a while, in case they come back. */
  #forgetOld({ parts }: Project): void {
    const now = new Set<string>(parts.map(({ id }) => id));
    for (const id of this.#chains.keys()) {
      if (this.#chains.size <= MOST_SCULPTS) return;
      if (!now.has(id)) this.#chains.delete(id);
    }
  }
}
