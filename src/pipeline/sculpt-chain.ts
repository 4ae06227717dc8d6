import type { LayerId } from '../base/ids.ts';
import { runWithPauses } from '../base/stepwise.ts';
import { shareOfWork, sharesOfWork, type Work } from '../base/work.ts';
import { vertexCount } from '../mesh/mesh.ts';
import type { LinesOfPieces } from '../steps/assembly/holes-on-pieces.ts';
import { wallRoomSteps } from '../steps/shell/wall-room.ts';
import { AllLayers } from './all-layers.ts';
import { AssemblyOnPieces } from './assembly-on-pieces.ts';
import { ClayCoreStage } from './clay-core-stage.ts';
import { DrawnLines } from './drawn-lines.ts';
import type { FlattenCrew } from './flatten-crew.ts';
import { layerPlans } from './layer-plan.ts';
import { LayerStages } from './layer-stages.ts';
import { mirrorFindings, mirrorOfSculpt } from './mirror-of-sculpt.ts';
import type { SculptOutcome } from './outcome.ts';
import { onSculpt } from './places-on-sculpt.ts';
import type { NamedStrips } from './plain/plain-outcome.ts';
import { raisedPlans } from './raised-plan.ts';
import { Stopped } from './run.ts';
import { LayerRun, type SculptRun } from './sculpt-run.ts';
import { SculptStage, type Source } from './sculpt-stage.ts';
import { forgetGoneFaces, SimplifyStage } from './simplify-stage.ts';
import { SplitStage } from './split-stage.ts';
import { TemplateStage } from './template-stage.ts';
import { TrimOnPieces } from './trim-on-pieces.ts';
import { Wear, type ReadCore } from './wear.ts';

/** Sheets whose results are remembered, those of the last run among them. */
const MOST_SHEETS = 12;

/**
 * The steps of one sculpt, from its file to pieces that were put together again, and what is remembered of them. Every sculpt of a project
 * has its own, so that a change of one makes nothing new of the others. The user's faults end in `stopped` of its run; what was made
 * before stands.
 */
export class SculptChain {
  readonly #crew: FlattenCrew;
  readonly #sculpts: SculptStage;
  readonly #simplify = new SimplifyStage();
  readonly #clayCores = new ClayCoreStage();
  readonly #lines = new DrawnLines();
  readonly #layers = new Map<LayerId, LayerStages>();
  readonly #all = new AllLayers();
  readonly #trim = new TrimOnPieces();
  readonly #letIns = new AssemblyOnPieces();
  readonly #wear = new Wear();
  readonly #templates = new TemplateStage();
  /** Where its large pieces may be parted. */
  readonly splits = new SplitStage();

  /**
   * @param crew     lays the patches flat.
   * @param sources  files by the SHA-256 of their bytes.
   */
  constructor(crew: FlattenCrew, sources: ReadonlyMap<string, Source>) {
    this.#crew = crew;
    this.#sculpts = new SculptStage(sources);
  }

  /** As `SculptStage.read`. */
  read(...of: Parameters<SculptStage['read']>): ReturnType<SculptStage['read']> {
    return this.#sculpts.read(...of);
  }

  /** As far as the sculpt as it is read, repaired and sized. */
  async size(run: SculptRun, work: Work): Promise<void> {
    await this.#asFarAsItGoes(run, () => this.#sculpts.make(run, work));
  }

  /** From the file to flat pieces. */
  async flatten(run: SculptRun, work: Work): Promise<void> {
    const { part } = run;
    await this.#asFarAsItGoes(run, async () => {
      await this.#sculpts.make(run, shareOfWork(work, 0, part.simplify === undefined ? 0.33 : 0.17));
      await this.#simplify.make(run, shareOfWork(work, 0.17, 0.33));
      await this.#clayCores.make(run, shareOfWork(work, 0.33, 0.33));
      run.layers = layerPlans(part).map((plan) => new LayerRun(plan));
      run.raised = raisedPlans(run.part).map((plan) => new LayerRun(plan));
      const drawn = await this.#lines.of(run, shareOfWork(work, 0.33, 0.33));
      run.drawn = drawn.surface;
      run.findings.push(...drawn.findings);
      await this.#each(run, shareOfWork(work, 0.33, 0.44), (stages, layer, own) => stages.part(run, layer, own));
      await this.#findRoom(run, shareOfWork(work, 0.44, 0.44));
      await this.#each(run, shareOfWork(work, 0.44, 1), (stages, layer, own) => stages.flatten(run, layer, own));
      await this.#findMirror(run, shareOfWork(work, 1, 1));
    });
    forgetGoneFaces(run);
  }

  /** @param firstNumber  of its first piece. */
  async makeFoam(run: SculptRun, firstNumber: number, work: Work): Promise<void> {
    let next = firstNumber;
    await this.#asFarAsItGoes(run, () =>
      this.#each(run, work, async (stages, layer, own) => {
        await stages.makeFoam(run, layer, next, own);
        next += layer.pieces?.length ?? 0;
      }),
    );
    this.#gather(run);
  }

  /** Lines under trim come on the pieces that are seen. @param strips  those that lie on this sculpt. */
  placeTrim(run: SculptRun, strips: readonly NamedStrips[]): void {
    const { seen } = run;
    if (seen === undefined || seen.pieces === null || strips.length === 0) return;
    seen.bare = seen.pieces;
    seen.pieces = this.#trim.of(seen.bare, seen.needCut(), strips);
    this.#gather(run);
  }

  /** What other parts leave on its pieces comes on them. */
  placeLetIns(run: SculptRun, lines: LinesOfPieces): void {
    for (const layer of run.sheetsOfFoam) {
      const { pieces } = layer;
      if (pieces === null) continue;
      layer.pieces = this.#letIns.ofSculpt(pieces, lines);
      // Dry fit and the rest go by pieces as they are cut.
      if (layer.pieces !== pieces) layer.bare ??= pieces;
    }
    this.#gather(run);
  }

  /** The templates of its pieces. */
  async draw(run: SculptRun, work: Work): Promise<void> {
    await this.#templates.draw(run, work);
  }

  /** What can be said when the pieces are laid out: body, cuts that help, dry fit. All else can be shown and printed without it. */
  async finish(run: SculptRun, work: Work): Promise<void> {
    const { seen } = run;
    if (run.pieces === null || seen === undefined) return;
    await this.#asFarAsItGoes(run, async () => {
      await this.#fitBody(run, shareOfWork(work, 0, 0.25));
      await this.#stagesOf(seen).offerCuts(run, seen, shareOfWork(work, 0.25, 0.5));
      await this.#each(run, shareOfWork(work, 0.5, 0.75), (stages, layer, own) => stages.fitDry(run, layer, own));
      await this.#each(run, shareOfWork(work, 0.75, 1), (stages, layer, own) => stages.springBack(run, layer, own));
    });
  }

  /** What is known however far it came. */
  async close(run: SculptRun, work: Work): Promise<void> {
    // Seams are marked on both sides before there are pieces.
    if (run.mirror === null) await this.#findMirror(run, work);
    run.findings.push(...mirrorFindings(run.mirror, run.part));
    this.#forgetOld(run);
  }

  outcome(run: SculptRun): SculptOutcome {
    const { wished, sculpt, drawn, layers, raised, pieces, seams, areasInClay } = run;
    const { bodyFit, mirror, stopped, sheetsOfFoam } = run;
    return {
      part: wished,
      sculpt,
      drawn,
      layers: layers.map((layer) => layer.outcome()),
      raised: raised.map((layer) => layer.outcome()),
      pieces,
      seams,
      areasInClay,
      bodyFit,
      mirror,
      dryFit: this.#all.dryFit(sheetsOfFoam),
      springing: this.#all.springing(sheetsOfFoam),
      stopped,
    };
  }

  /** Does nothing more for a run that could not go on. */
  async #asFarAsItGoes(run: SculptRun, steps: () => Promise<void>): Promise<void> {
    if (run.stopped !== null) return;
    try {
      await steps();
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      run.stopped = { step: error.step, problem: error.problem };
    }
  }

  #gather(run: SculptRun): void {
    if (run.stopped !== null) return;
    run.pieces = this.#all.pieces(run.sheetsOfFoam);
    run.seams = this.#all.seams(run.sheetsOfFoam);
  }

  /** Sheets that were taken away are remembered for a while, in case they come back. */
  #forgetOld(run: SculptRun): void {
    const now = new Set(run.sheetsOfFoam.map(({ plan }) => plan.choice.id));
    for (const id of this.#layers.keys()) {
      if (this.#layers.size <= MOST_SHEETS) return;
      if (!now.has(id)) this.#layers.delete(id);
    }
  }

  /** Takes one step with every sheet, the outermost first. */
  async #each(
    run: SculptRun,
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
  #leaveOut(run: SculptRun, layer: LayerRun, { problem }: Stopped): void {
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

  /** Whether the wall has room between the sides of the sculpt. */
  async #findRoom(run: SculptRun, work: Work): Promise<void> {
    await work.pause(0, 'looking for room for the foam');
    // Lines drawn on the sculpt change nothing of its form.
    const { mesh } = run.needSculpt();
    const wall = this.#all.wall(run.layers.map((layer) => layer.needShellOfWhole()));
    const steps = wallRoomSteps(mesh, wall);
    run.findings.push(...(await runWithPauses(steps, () => work.pause(0.5))));
  }

  /** The mirror in force; found once for each sculpt. */
  async #findMirror(run: SculptRun, work: Work): Promise<void> {
    if (run.sculpt === null || run.sculpt.mmPerUnit === null) return;
    const { mesh, mmPerUnit } = run.sculpt;
    run.mirror = await mirrorOfSculpt(mesh, run.part, mmPerUnit, work);
  }

  async #fitBody(run: SculptRun, work: Work): Promise<void> {
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
}
