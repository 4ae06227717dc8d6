import type { Result } from '../base/result.ts';
import { runWithPauses } from '../base/stepwise.ts';
import { shareOfWork, sharesOfWork, type Work } from '../base/work.ts';
import type { LayerId } from '../base/ids.ts';
import { vertexCount } from '../mesh/mesh.ts';
import { sculptAtWork } from '../project/at-work.ts';
import type { Project, SculptPart, SourceRef } from '../project/project.ts';
import { wallRoomSteps } from '../steps/shell/wall-room.ts';
import { AllLayers } from './all-layers.ts';
import { ClayCoreStage } from './clay-core-stage.ts';
import { DrawnLines } from './drawn-lines.ts';
import { HomeCrew, type FlattenCrew } from './flatten-crew.ts';
import { LayOutStage } from './lay-out-stage.ts';
import { layerPlans } from './layer-plan.ts';
import { LayerStages } from './layer-stages.ts';
import { mirrorFindings, mirrorOfSculpt } from './mirror-of-sculpt.ts';
import type { BodyMeasure } from '../model/body-measures.ts';
import { newVersion, type NewVersion } from './new-version/new-version.ts';
import type { Outcome, SizedSculpt } from './outcome.ts';
import { onSculpt } from './places-on-sculpt.ts';
import { LayerRun, Run, Stopped, type RunChoices } from './run.ts';
import { raisedPlans } from './raised-plan.ts';
import { SculptStage, type Source } from './sculpt-stage.ts';
import { forgetGoneFaces, SimplifyStage } from './simplify-stage.ts';
import { TrimOnPieces } from './trim-on-pieces.ts';
import { TrimSculpts } from './trim-sculpt.ts';
import { Wear, type ReadCore } from './wear.ts';

/** No pieces of a sculpt, always the same object. */
const NONE: readonly never[] = [];

/** Sheets whose results are remembered, those of the last run among them. */
const MOST_SHEETS = 12;

/**
 * The order of the steps and what is remembered between runs. A change re-makes only what depends on it: a new paper re-tiles, a new
 * thickness re-shells and starts each piece from its last flat shape, undo finds everything as it was.
 */
export class Pipeline {
  readonly #crew: FlattenCrew;
  readonly #sculpts = new SculptStage();
  readonly #simplify = new SimplifyStage();
  readonly #lines = new DrawnLines();
  readonly #layers = new Map<LayerId, LayerStages>();
  readonly #all = new AllLayers();
  readonly #layOut = new LayOutStage((hash) => this.#sculpts.sourceOf(hash));
  readonly #clayCores = new ClayCoreStage();
  readonly #trimSculpts = new TrimSculpts();
  readonly #trimOnPieces = new TrimOnPieces();
  readonly #wear = new Wear();

  /** @param crew  lays the patches flat. */
  constructor(crew: FlattenCrew = new HomeCrew()) {
    this.#crew = crew;
  }

  /** Keeps a source file for later runs, under the SHA-256 of its bytes. */
  putSource(hash: string, source: Source): void {
    this.#sculpts.putSource(hash, source);
  }

  sourceOf(hash: string): Source | undefined {
    return this.#sculpts.sourceOf(hash);
  }

  /** The sculpt of a project as it is read, repaired and sized, before it is made simpler; null where it cannot be. */
  async sculptOf(project: Project, work: Work): Promise<SizedSculpt | null> {
    const run = new Run(project, sculptAtWork(project), {});
    if (run.partOrNone === null) return null;
    try {
      await this.#sculpts.make(run, work);
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      return null;
    }
    return run.sculpt;
  }

  /**
   * Runs the chain as far as it goes. The user's faults end in `stopped`; what was made before stands.
   * @throws Cancelled when the work was called off; what was finished by then is remembered.
   */
  async run(project: Project, work: Work, choices: RunChoices = {}): Promise<Outcome> {
    const part = sculptAtWork(project);
    const run = new Run(project, part, choices);
    if (part === null) return this.#withoutSculpt(run, work);
    try {
      await this.#sculpts.make(run, shareOfWork(work, 0, run.part.simplify === undefined ? 0.3 : 0.15));
      await this.#simplify.make(run, shareOfWork(work, 0.15, 0.3));
      await this.#clayCores.make(run, shareOfWork(work, 0.3, 0.3));
      run.layers = layerPlans(part).map((plan) => new LayerRun(plan));
      run.raised = raisedPlans(run.part).map((plan) => new LayerRun(plan));
      const drawn = await this.#lines.of(run, shareOfWork(work, 0.3, 0.3));
      run.drawn = drawn.surface;
      run.findings.push(...drawn.findings);
      await this.#each(run, shareOfWork(work, 0.3, 0.4), (stages, layer, own) => stages.part(run, layer, own));
      await this.#findRoom(run, shareOfWork(work, 0.4, 0.4));
      await this.#each(run, shareOfWork(work, 0.4, 0.9), (stages, layer, own) => stages.flatten(run, layer, own));
      await this.#findMirror(run, shareOfWork(work, 0.9, 0.9));
      await work.pause(0.9, 'adding edges, marks and words');
      await this.#makeFoam(run, shareOfWork(work, 0.9, 0.95));
      await work.pause(0.95, 'laying out sheets and pages');
      await this.#layOut.layOut(
        run,
        this.#all.pieces(run.sheetsOfFoam) ?? [],
        this.#all.seams(run.sheetsOfFoam) ?? [],
        shareOfWork(work, 0.95, 0.96),
      );
      await this.#fitBody(run, shareOfWork(work, 0.96, 0.97));
      // Last of all, because all else can be shown and printed without it.
      const [seen] = run.layers;
      await this.#stagesOf(seen).offerCuts(run, seen, shareOfWork(work, 0.97, 0.98));
      await this.#each(run, shareOfWork(work, 0.98, 0.99), (stages, layer, own) => stages.fitDry(run, layer, own));
      await this.#each(run, shareOfWork(work, 0.99, 1), (stages, layer, own) => stages.springBack(run, layer, own));
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      run.stopped = { step: error.step, problem: error.problem };
    }
    forgetGoneFaces(run);
    // Seams are marked on both sides before there are pieces.
    if (run.mirror === null) await this.#findMirror(run, shareOfWork(work, 0.99, 1));
    run.findings.push(...mirrorFindings(run.mirror, run.part));
    await work.pause(1, 'done');
    this.#forgetOld(run);
    return this.#outcome(run);
  }

  /** The chain of a project that is made of other parts alone. @throws Cancelled when the work was called off. */
  async #withoutSculpt(run: Run, work: Work): Promise<Outcome> {
    try {
      await this.#layOut.draw(run, NONE, NONE, shareOfWork(work, 0, 0.5));
      await this.#layOut.layOut(run, NONE, NONE, shareOfWork(work, 0.5, 1));
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      run.stopped = { step: error.step, problem: error.problem };
    }
    await work.pause(1, 'done');
    return this.#outcome(run);
  }

  /** A part brought to a new version of its sculpt, whose file was put here. @throws Cancelled when the work was called off. */
  newVersion(
    part: SculptPart,
    source: SourceRef,
    work: Work,
    body: readonly BodyMeasure[] = [],
  ): Promise<Result<NewVersion>> {
    return newVersion(part, source, body, (wanted, share) => this.#sculpts.read(wanted, share), work);
  }

  /** Sheets that were taken away are remembered for a while, in case they come back. */
  #forgetOld(run: Run): void {
    const now = new Set(run.sheetsOfFoam.map(({ plan }) => plan.choice.id));
    for (const id of this.#layers.keys()) {
      if (this.#layers.size <= MOST_SHEETS) return;
      if (!now.has(id)) this.#layers.delete(id);
    }
  }

  /** Takes one step with every sheet, the outermost first. */
  async #each(
    run: Run,
    work: Work,
    step: (stages: LayerStages, layer: LayerRun, work: Work) => Promise<void>,
  ): Promise<void> {
    const shares = sharesOfWork(
      work,
      run.sheetsOfFoam.map(() => 1),
    );
    for (const [i, layer] of run.sheetsOfFoam.entries()) {
      const before = run.findings.length;
      try {
        await step(this.#stagesOf(layer), layer, shares[i]);
      } catch (error) {
        if (!(error instanceof Stopped) || layer.plan.raised === undefined) throw error;
        this.#leaveOut(run, layer, error);
      }
      const { own } = layer;
      if (own === null) continue;
      const told = run.findings.splice(before);
      const sculptVertices = vertexCount(run.needSculpt().mesh);
      run.findings.push(...told.map((finding) => onSculpt(finding, own, sculptVertices)));
    }
  }

  /** A raised sheet that cannot be made does not stop the wall it lies on. */
  #leaveOut(run: Run, layer: LayerRun, { problem }: Stopped): void {
    const name = layer.plan.raised?.area.name ?? '';
    run.raised = run.raised.filter((other) => other !== layer);
    run.findings.push({
      code: 'raised/left-out',
      severity: 'warning',
      text: `The raised sheet on ${name} cannot be made and is left out: ${problem.text}`,
      where: { part: run.part.id },
    });
  }

  #stagesOf({ plan }: LayerRun): LayerStages {
    const { id } = plan.choice;
    let stages = this.#layers.get(id);
    if (stages === undefined) this.#layers.set(id, (stages = new LayerStages(this.#crew)));
    return stages;
  }

  async #makeFoam(run: Run, work: Work): Promise<void> {
    let next = 1;
    await this.#each(run, shareOfWork(work, 0, 0.6), async (stages, layer, own) => {
      await stages.makeFoam(run, layer, next, own);
      next += layer.pieces?.length ?? 0;
    });
    this.#placeTrim(run);
    const [pieces, seams] = [this.#all.pieces(run.sheetsOfFoam) ?? [], this.#all.seams(run.sheetsOfFoam) ?? []];
    await this.#layOut.draw(run, pieces, seams, shareOfWork(work, 0.6, 1));
  }

  /** Lines under trim come on the pieces that are seen. */
  #placeTrim(run: Run): void {
    const [seen] = run.layers;
    const { part, drawn } = run;
    const cut = seen.needCut();
    run.trimSculptOf = (id) => (id === part.id ? this.#trimSculpts.of(part, run.needSculpt(), drawn, cut) : null);
    const strips = this.#layOut.laidStrips(run).filter(({ laid }) => laid.on === part.id);
    if (seen.pieces === null || strips.length === 0) return;
    seen.bare = seen.pieces;
    seen.pieces = this.#trimOnPieces.of(seen.bare, cut, strips);
  }

  /** Whether the wall has room between the sides of the sculpt. */
  async #findRoom(run: Run, work: Work): Promise<void> {
    await work.pause(0, 'looking for room for the foam');
    // Lines drawn on the sculpt change nothing of its form.
    const { mesh } = run.needSculpt();
    const wall = this.#all.wall(run.layers.map((layer) => layer.needShellOfWhole()));
    const steps = wallRoomSteps(mesh, wall);
    run.findings.push(...(await runWithPauses(steps, () => work.pause(0.5))));
  }

  /** The mirror in force; found once for each sculpt. */
  async #findMirror(run: Run, work: Work): Promise<void> {
    if (run.sculpt === null || run.sculpt.mmPerUnit === null) return;
    const { mesh, mmPerUnit } = run.sculpt;
    run.mirror = await mirrorOfSculpt(mesh, run.part, mmPerUnit, work);
  }

  async #fitBody(run: Run, work: Work): Promise<void> {
    const { mmPerUnit } = run.needSculpt();
    if (mmPerUnit === null) return;
    // Seams are looked at too, so it is the sculpt as it was parted.
    const { mesh, chains } = run.layers[0].needCut();
    const readCore: ReadCore = ({ source }, share) => this.#sculpts.read(source, share);
    const cut = { shell: this.#all.wall(run.layers.map((layer) => layer.needCut().shell)), chains };
    run.bodyFit = await this.#wear.of(mesh, mmPerUnit, cut, run.part, work, readCore);
    const { drawn } = run;
    const told = run.bodyFit?.findings ?? [];
    const sculptVertices = vertexCount(run.needSculpt().mesh);
    run.findings.push(...(drawn === null ? told : told.map((finding) => onSculpt(finding, drawn, sculptVertices))));
  }

  #outcome(run: Run): Outcome {
    const {
      project,
      partOrNone: part,
      sculpt,
      drawn,
      layers,
      raised,
      sheetsOfFoam,
      strips,
      plain,
      areasInClay,
      templates,
      turned,
      sheets,
      paper,
      bodyFit,
      mirror,
      findings,
      stopped,
      madeNew,
      seen,
    } = run;
    // A project without a sculpt has no pieces of one, and no seams between them.
    const none = part === null ? NONE : null;
    return {
      project,
      part,
      sculpt,
      drawn,
      layers: layers.map((layer) => layer.outcome()),
      raised: raised.map((layer) => layer.outcome()),
      cut: seen?.cut ?? null,
      flats: seen?.flats ?? null,
      pieces: none ?? this.#all.pieces(sheetsOfFoam),
      seams: none ?? this.#all.seams(sheetsOfFoam),
      strips,
      plain,
      areasInClay,
      templates,
      turned,
      sheets,
      paper,
      bodyFit,
      mirror,
      dryFit: this.#all.dryFit(sheetsOfFoam),
      springing: this.#all.springing(sheetsOfFoam),
      findings,
      stopped,
      madeNew,
    };
  }
}
