import { Memo } from '../base/memo.ts';
import type { Finding } from '../base/finding.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import { fail, type Ok, type Problem, type Result } from '../base/result.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import { boxOfPoints3 } from '../mesh/measure.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologySteps } from '../mesh/topology.ts';
import type { StepName } from '../model/bench-view.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import { FOAM_RULES } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import { cautionTexts } from '../model/cautions.ts';
import { findPaper } from '../model/papers.ts';
import type { ModelFacts } from '../model/model-facts.ts';
import type { CutOffer } from '../model/patch.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { SourceModel } from '../model/source-model.ts';
import type { Template } from '../model/template.ts';
import type { LayerChoice, Project, SculptPart } from '../project/project.ts';
import { cutSteps } from '../steps/cut/cut-patches.ts';
import { offerSteps } from '../steps/cut/offer-cut.ts';
import { chainSteps } from '../steps/cut/seam-chains.ts';
import { foamPieceSteps, type FoamOutcome } from '../steps/foam/make-foam-pieces.ts';
import { partBendSteps, type PartBends } from '../steps/foam/part-bends.ts';
import { templateSteps } from '../steps/foam/make-template.ts';
import { layOnSheets } from '../steps/nest/lay-on-sheets.ts';
import { factSteps } from '../steps/read/facts.ts';
import { findFaults } from '../steps/read/faults.ts';
import { readModel } from '../steps/read/read-model.ts';
import { repairSteps } from '../steps/read/repair.ts';
import { meshFromModel, mmPerUnitOf, sizeFindings } from '../steps/read/size.ts';
import { seamSetFromMarks } from '../steps/seams/seam-set.ts';
import { shellLayerSteps } from '../steps/shell/make-shell-layer.ts';
import { makePages } from '../steps/tile/make-pages.ts';
import { HomeCrew, type FlattenCrew } from './flatten-crew.ts';
import { LayFlat } from './lay-flat.ts';
import { DryFits } from './dry-fit.ts';
import type { CutSculpt, EarlyOutcome, Outcome, SizedSculpt } from './outcome.ts';
import { Forming } from './forming.ts';
import { OverlapOffers } from './overlap-offers.ts';
import { PatchStore } from './patch-store.ts';
import type { PatchWishes } from './patch-wishes.ts';
import { wishFindings } from './wish-findings.ts';
import { dryFitFindings } from './dry-fit-findings.ts';
import { Springings, springingFindings } from './springing.ts';
import { Wear } from './wear.ts';
import { straightFindings } from './straight-findings.ts';

/** A source file kept beside the document. */
export interface Source {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

export interface RunChoices {
  /** True when the seams come from a seam file: a pair that is no edge is then the file's fault (`seams/no-edge`). */
  readonly strictSeams?: boolean;
  /** Printed on the pages, `YYYY-MM-DD`. */
  readonly date?: string;
  /**
   * Told as soon as a patch is flat or near it, while the run goes on; left out where nobody looks. The result of the run is the same in
   * either case.
   */
  readonly onEarly?: (early: EarlyOutcome) => void;
}

/** Thrown inside a run to leave the chain; never leaves this file. */
class Stopped extends Error {
  constructor(
    readonly step: StepName,
    readonly problem: Problem,
  ) {
    super(problem.code);
  }
}

/** Results kept per step: a maker goes a few steps back and forth. */
const KEPT = 8;

/**
 * The order of the steps and what is remembered between runs. A change re-makes only what depends on it: a new paper re-tiles, a new
 * thickness re-shells and starts each piece from its last flat shape, undo finds everything as it was.
 */
export class Pipeline {
  readonly #sources = new Map<string, Source>();
  readonly #patches = new PatchStore();
  readonly #layFlat: LayFlat;
  readonly #overlapOffers: OverlapOffers;
  readonly #forming = new Forming();
  readonly #wear = new Wear();
  readonly #dryFits = new DryFits();
  readonly #springings = new Springings();
  readonly #read = new Memo<[string], SourceModel>(3);
  readonly #repaired = new Memo<[SourceModel, unknown], Result<SourceModel>>(KEPT);
  readonly #sized = new Memo<[SourceModel, unknown], { sculpt: SizedSculpt; findings: readonly Finding[] }>(KEPT);
  readonly #facts = new Memo<[SourceModel], ModelFacts>(KEPT);
  readonly #faults = new Memo<[Mesh], readonly Finding[]>(KEPT);
  readonly #shells = new Memo<unknown[], ShellLayer>(KEPT);
  readonly #cuts = new Memo<unknown[], { cut: Omit<CutSculpt, 'shell'>; findings: readonly Finding[] }>(4 * KEPT);
  readonly #unheard = new Memo<unknown[], readonly Finding[]>(KEPT);
  readonly #bent = new Memo<unknown[], PartBends>(KEPT);
  readonly #foam = new Memo<unknown[], FoamOutcome>(KEPT);
  readonly #templates = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #sheets = new Memo<unknown[], ReturnType<typeof layOnSheets>>(KEPT);
  readonly #pages = new Memo<unknown[], ReturnType<typeof makePages>>(KEPT);

  /** @param crew  lays the patches flat. */
  constructor(crew: FlattenCrew = new HomeCrew()) {
    this.#layFlat = new LayFlat(crew, this.#patches);
    this.#overlapOffers = new OverlapOffers(crew);
  }

  /** Keeps a source file for later runs, under the SHA-256 of its bytes. */
  putSource(hash: string, source: Source): void {
    this.#sources.set(hash, source);
  }

  sourceOf(hash: string): Source | undefined {
    return this.#sources.get(hash);
  }

  /**
   * Runs the chain as far as it goes. The user's faults end in `stopped`; what was made before stands.
   * @throws Cancelled when the work was called off; what was finished by then is remembered.
   */
  async run(project: Project, work: Work, choices: RunChoices = {}): Promise<Outcome> {
    const part = project.parts.find((candidate) => candidate.kind === 'sculpt');
    if (part === undefined) throw new Error('run: a project without a sculpt');
    const run = new Run(project, part, choices);
    try {
      await this.#sculpt(run, shareOfWork(work, 0, 0.3));
      await this.#part(run, shareOfWork(work, 0.3, 0.4));
      await this.#flatten(run, shareOfWork(work, 0.4, 0.9));
      await work.pause(0.9, 'adding edges, marks and words');
      await this.#makeFoam(run, shareOfWork(work, 0.9, 0.95));
      await work.pause(0.95, 'laying out sheets and pages');
      this.#layOut(run);
      await this.#fitBody(run, shareOfWork(work, 0.96, 0.97));
      await this.#offerCuts(run, shareOfWork(work, 0.97, 0.98));
      await this.#fitDry(run, shareOfWork(work, 0.98, 0.99));
      await this.#springBack(run, shareOfWork(work, 0.99, 1));
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      run.stopped = { step: error.step, problem: error.problem };
    }
    await work.pause(1, 'done');
    return run.outcome();
  }

  async #sculpt(run: Run, work: Work): Promise<void> {
    const { source } = run.part;
    const kept = this.#sources.get(source.hash);
    if (kept === undefined) {
      throw new Stopped(
        'read',
        fail('read/no-source', `The file ${source.fileName} is not here: choose it again.`).problem,
      );
    }
    let model = this.#read.get([source.hash]);
    if (model === undefined) {
      model = run.take('read', await readModel(kept.bytes, source.fileName, shareOfWork(work, 0, 0.6))).value;
      this.#read.set([source.hash], model);
      run.made('read');
    }
    run.findings.push(...model.findings);
    const { repairs } = run.part;
    const look = shareOfWork(work, 0.6, 0.7);
    await look.pause(0, 'looking the model over');
    const repairing = rememberedSteps(this.#repaired, [model, repairs], () => repairSteps(model, repairs), look);
    const repaired = run.take('read', await repairing).value;
    const { sculpt, findings } = await this.#size(run, repaired, look);
    run.sculpt = sculpt;
    run.findings.push(...findings);
    let faults = this.#faults.get([sculpt.mesh]);
    if (faults === undefined) {
      faults = await findFaults(repaired, sculpt.mesh, shareOfWork(work, 0.7, 1));
      this.#faults.set([sculpt.mesh], faults);
    }
    run.findings.push(...faults);
    if (sculpt.mmPerUnit === null) {
      throw new Stopped(
        'size',
        fail('size/unknown', 'The file does not say how large the sculpt is: give its unit or one real measure.')
          .problem,
      );
    }
  }

  async #size(
    run: Run,
    model: SourceModel,
    work: Work,
  ): Promise<{ sculpt: SizedSculpt; findings: readonly Finding[] }> {
    const { scale } = run.part;
    const known = this.#sized.get([model, scale]);
    if (known !== undefined) return known;
    const mmPerUnit = scale === null ? null : run.take('size', mmPerUnitOf(model, scale)).value;
    const mesh = meshFromModel(model, mmPerUnit ?? 1);
    const { min, max } = boxOfPoints3(mesh.positions);
    const findings = mmPerUnit === null ? [] : sizeFindings([max.x - min.x, max.y - min.y, max.z - min.z]);
    await work.pause(0.5);
    const facts = await rememberedSteps(this.#facts, [model], () => factSteps(model), work);
    run.made('size');
    return this.#sized.set([model, scale], { sculpt: { model, facts, mesh, mmPerUnit }, findings });
  }

  async #part(run: Run, work: Work): Promise<void> {
    const { mesh } = run.needSculpt();
    const { part } = run;
    const layer = run.layer();
    await work.pause(0, 'moving to the foam’s neutral surface');
    const choice = { ...choiceOf(layer), modelIs: part.modelIs };
    // By what it is made of: whether pieces are cut larger for shrinkage is a matter of the same layer, but not of its shell.
    const shellKey = [mesh, ...Object.values(choice)];
    let shell = this.#shells.get(shellKey);
    if (shell === undefined) {
      shell = this.#shells.set(shellKey, await runWithPauses(shellLayerSteps(mesh, choice), () => work.pause(0.2)));
      run.made('shell');
    }
    await work.pause(0.5, 'parting along the seams');
    const key = [mesh, part.seams, part.seamSettings];
    let parted = this.#cuts.get(key);
    if (parted === undefined) {
      await runWithPauses(topologySteps(mesh), () => work.pause(0.5));
      const seams = run.take('seams', seamSetFromMarks(mesh, part.seams, run.choices.strictSeams ?? false));
      const raw = await runWithPauses(cutSteps(mesh, seams.value, mesh.positions), () => work.pause(0.6));
      await work.pause(0.7);
      const patches = this.#patches.settle(mesh, raw.patches);
      const offers: CutOffer[] = [];
      for (const i of patches.keys()) {
        const offer = await runWithPauses(offerSteps(mesh, seams.value, patches, i), () => work.pause(0.7));
        if (offer !== null) offers.push(offer);
      }
      await work.pause(0.8);
      const chaining = chainSteps(mesh, seams.value, { ...raw, patches }, part.seamSettings);
      const chains = await runWithPauses(chaining, () => work.pause(0.8));
      await work.pause(0.9);
      parted = this.#cuts.set(key, {
        cut: {
          chains,
          patches,
          patchOfTriangle: raw.patchOfTriangle,
          offers,
        },
        findings: seams.notes,
      });
      run.made('seams', 'cut');
    } else {
      const patches = this.#patches.settle(mesh, parted.cut.patches);
      // The store may have begun anew since, and know equal patches by other objects: those are the ones that results are kept for.
      if (patches !== parted.cut.patches) parted = this.#cuts.set(key, { ...parted, cut: { ...parted.cut, patches } });
    }
    const foam = run.foam();
    const { patches, chains } = parted.cut;
    const { edgeWishes, flatten, layers, pieceSettings, regions, seamSettings } = part;
    const wishes = [mesh, patches, chains, foam, edgeWishes, flatten, layers, pieceSettings, regions, seamSettings];
    run.findings.push(...remembered(this.#unheard, wishes, () => wishFindings(mesh, { patches, chains }, part, foam)));
    run.findings.push(...parted.findings, ...shell.findings, ...parted.cut.patches.flatMap((patch) => patch.findings));
    run.cut = { ...parted.cut, shell };
    run.bends = await this.#bend(run, work);
  }

  async #flatten(run: Run, work: Work): Promise<void> {
    const { project, part, choices } = run;
    const [sculpt, cut] = [run.needSculpt(), run.needCut()];
    const { onEarly } = choices;
    const tell =
      onEarly &&
      ((early: Pick<EarlyOutcome, 'flats' | 'isFinal'>) => onEarly({ project, part, sculpt, cut, ...early }));
    const { results, wishes, isNew } = await this.#layFlat.lay(
      { mesh: sculpt.mesh, cut, part, bevels: run.needBends().bevels },
      shareOfWork(work, 0, 0.9),
      tell,
    );
    if (isNew) run.made('flatten');
    run.wishes = wishes;
    const { patches } = cut;
    results.forEach((result, i) => {
      if (result === null || result.ok) return;
      run.findings.push({ ...result.problem, severity: 'error', where: { triangles: [patches[i].meshTriangles[0]] } });
    });
    const laid = results.map((result) => (result?.ok === true ? result.value : null));
    run.flats = await this.#forming.of(patches, laid, cut.shell.neutralPositions, shareOfWork(work, 0.9, 1));
    if (run.flats.every((flat) => flat === null)) {
      const needs = patches.flatMap((patch) => patch.findings).find((finding) => finding.severity === 'error');
      throw new Stopped(
        'flatten',
        fail('cut/nothing-flat', needs?.text ?? 'Nothing can be laid flat yet: mark a seam.').problem,
      );
    }
  }

  async #bend(run: Run, work: Work): Promise<PartBends> {
    const [{ mesh }, { patches, chains }] = [run.needSculpt(), run.needCut()];
    const { pieceSettings } = run.part;
    const steps = () => partBendSteps(mesh, patches, chains, pieceSettings, FOAM_RULES);
    return await rememberedSteps(this.#bent, [mesh, patches, chains, pieceSettings], steps, shareOfWork(work, 0.9, 1));
  }

  /** Last of all, because all else can be shown without it: what would free the pieces that lie over themselves. */
  async #offerCuts(run: Run, work: Work): Promise<void> {
    const { part } = run;
    const [{ mesh }, cut] = [run.needSculpt(), run.needCut()];
    const eased = await this.#overlapOffers.of(
      { mesh, cut, part, bevels: run.needBends().bevels },
      run.needFlats(),
      work,
    );
    if (eased.length > 0) run.cut = { ...cut, offers: [...cut.offers, ...eased] };
  }

  /** After all that can be printed: the finished pieces put together again. */
  async #fitDry(run: Run, work: Work): Promise<void> {
    const [{ mesh }, cut] = [run.needSculpt(), run.needCut()];
    const { tooMuchPct } = run.foam().stretchLimits;
    const [pieces, seams] = [run.pieces ?? [], run.seams ?? []];
    const job = { mesh, cut, bends: run.needBends(), pieces, seams, tooMuchPct };
    run.dryFit = await this.#dryFits.of(job, work);
    run.findings.push(...dryFitFindings(run.part.id, run.dryFit));
  }

  async #springBack(run: Run, work: Work): Promise<void> {
    const cut = run.needCut();
    const springing = await this.#springings.of({ cut, flats: run.needFlats(), pieces: run.pieces ?? [] }, work);
    run.springing = springing;
    run.findings.push(...springingFindings(run.part.id, springing, cut.shell.thicknessMm));
  }

  async #fitBody(run: Run, work: Work): Promise<void> {
    const { mesh, mmPerUnit } = run.needSculpt();
    if (mmPerUnit === null) return;
    run.bodyFit = await this.#wear.of(mesh, mmPerUnit, run.needCut(), run.part, work);
    run.findings.push(...(run.bodyFit?.findings ?? []));
  }

  async #makeFoam(run: Run, work: Work): Promise<void> {
    const sculpt = run.needSculpt();
    const cut = run.needCut();
    const flats = run.needFlats();
    const { part, project } = run;
    const foam = run.foam();
    const shrinkage = run.layer().allowForShrinkage ? foam.shrinkage : undefined;
    const key = [
      cut.shell,
      cut.chains,
      cut.patches,
      part.pieceSettings,
      part.tracedSide,
      part.upAxis,
      part.copies,
      part.name,
      foam,
      shrinkage,
      ...flats,
    ];
    let made = this.#foam.get(key);
    if (made === undefined) {
      const steps = foamPieceSteps({
        part: part.id,
        partName: part.name,
        layer: cut.shell,
        mesh: sculpt.mesh,
        patches: cut.patches,
        flats,
        chains: cut.chains,
        bends: run.needBends(),
        pieceSettings: part.pieceSettings,
        tracedSide: part.tracedSide,
        upAxis: part.upAxis,
        limits: foam.stretchLimits,
        ...(foam.bendLimits === undefined ? {} : { bendLimits: foam.bendLimits }),
        ...(shrinkage === undefined ? {} : { shrinkage }),
        rules: FOAM_RULES,
        copies: part.copies,
        firstNumber: 1,
      });
      made = this.#foam.set(key, await runWithPauses(steps, () => work.pause(0.5)));
      run.made('foam');
    }
    const { pieces, seams, findings } = made;
    run.pieces = pieces;
    run.seams = seams;
    run.findings.push(...findings);
    run.findings.push(...straightFindings(sculpt.mesh, cut, flats, run.wishes, pieces, foam.stretchLimits));
    const named = { projectName: project.name, foamName: foam.name };
    const steps = () => templateSteps(pieces, seams, named);
    run.templates = await rememberedSteps(this.#templates, [pieces, seams, project.name, foam.name], steps, work);
  }

  #layOut(run: Run): void {
    const { project } = run;
    const pieces = run.pieces ?? [];
    const templates = run.templates ?? [];
    const foam = run.foam();
    const sheets = remembered(this.#sheets, [templates, project.foams, foam], () => {
      run.made('nest');
      const items = pieces.map((piece, i) => ({
        piece: piece.id,
        template: templates[i],
        quantity: piece.quantity,
        foam: foam.id,
      }));
      return layOnSheets(items, project.foams);
    });
    run.sheets = sheets;
    for (const id of sheets.tooLarge) {
      const piece = pieces.find((candidate) => candidate.id === id);
      run.findings.push({
        code: 'nest/too-large',
        severity: 'warning',
        text: `${piece?.name ?? id} is larger than a sheet of ${foam.name}: part it once more, or take a larger sheet.`,
        where: { piece: id },
      });
    }
    const choice = project.paper;
    const paper = run.take('tile', findPaper(choice.name, choice.widthMm, choice.heightMm)).value;
    const pages = remembered(
      this.#pages,
      [templates, pieces, choice, project.name, project.revision, run.choices.date],
      () => {
        run.made('tile');
        return makePages({
          templates,
          pieces,
          paper,
          orientation: choice.orientation,
          marginMm: choice.marginMm,
          overlapMm: choice.overlapMm,
          projectName: project.name,
          projectRevision: project.revision,
          ...(run.choices.date === undefined ? {} : { date: run.choices.date }),
          cautions: cautionTexts('cut'),
        });
      },
    );
    const set = run.take('tile', pages);
    run.paper = set.value;
    run.findings.push(...set.notes);
  }
}

/** What one run has gathered so far. */
class Run {
  readonly findings: Finding[] = [];
  sculpt: SizedSculpt | null = null;
  cut: CutSculpt | null = null;
  bends: PartBends | null = null;
  flats: readonly (FlatPiece | null)[] | null = null;
  wishes: readonly PatchWishes[] = [];
  pieces: Outcome['pieces'] = null;
  seams: Outcome['seams'] = null;
  templates: Outcome['templates'] = null;
  sheets: Outcome['sheets'] = null;
  paper: Outcome['paper'] = null;
  dryFit: Outcome['dryFit'] = null;
  springing: Outcome['springing'] = null;
  bodyFit: Outcome['bodyFit'] = null;
  stopped: Outcome['stopped'] = null;
  readonly #madeNew = new Set<StepName>();

  constructor(
    readonly project: Project,
    readonly part: SculptPart,
    readonly choices: RunChoices,
  ) {}

  made(...steps: StepName[]): void {
    for (const step of steps) this.#madeNew.add(step);
  }

  /** A result that is known to stand, or the end of this run at that step. */
  take<T>(step: StepName, result: Result<T>): Ok<T> {
    if (!result.ok) throw new Stopped(step, result.problem);
    return result;
  }

  needSculpt(): SizedSculpt {
    if (this.sculpt === null) throw new Error('run: no sculpt yet');
    return this.sculpt;
  }

  needCut(): CutSculpt {
    if (this.cut === null) throw new Error('run: not parted yet');
    return this.cut;
  }

  needBends(): PartBends {
    if (this.bends === null) throw new Error('run: not parted yet');
    return this.bends;
  }

  needFlats(): readonly (FlatPiece | null)[] {
    if (this.flats === null) throw new Error('run: not flat yet');
    return this.flats;
  }

  /** The part's one layer of foam. */
  layer(): LayerChoice {
    return this.part.layers[0];
  }

  foam(): FoamSheet {
    const { foam } = this.layer();
    const sheet = this.project.foams.find((candidate) => candidate.id === foam);
    if (sheet === undefined) throw new Error(`run: foam ${foam} is not in the project`);
    return sheet;
  }

  outcome(): Outcome {
    return {
      project: this.project,
      part: this.part,
      sculpt: this.sculpt,
      cut: this.cut,
      flats: this.flats,
      pieces: this.pieces,
      seams: this.seams,
      templates: this.templates,
      sheets: this.sheets,
      paper: this.paper,
      bodyFit: this.bodyFit,
      dryFit: this.dryFit,
      springing: this.springing,
      findings: this.findings,
      stopped: this.stopped,
      madeNew: [...this.#madeNew],
    };
  }
}

function remembered<K extends unknown[], V>(memo: Memo<K, V>, key: K, make: () => V): V {
  return memo.get(key) ?? memo.set(key, make());
}

async function rememberedSteps<K extends unknown[], V>(
  memo: Memo<K, V>,
  key: K,
  make: () => Stepwise<V>,
  work: Work,
): Promise<V> {
  return memo.get(key) ?? memo.set(key, await runWithPauses(make(), () => work.pause(0.5)));
}

const choiceOf = (layer: LayerChoice) => ({
  layer: layer.id,
  foam: layer.foam,
  thicknessMm: layer.thicknessMm,
  neutralFraction: layer.neutralFraction,
});
