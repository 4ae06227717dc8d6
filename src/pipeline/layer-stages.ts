import { Memo } from '../base/memo.ts';
import type { Finding } from '../base/finding.ts';
import { fail } from '../base/result.ts';
import { runWithPauses } from '../base/stepwise.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { rulesOf, type FoamRules } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { OutlineLine, ScoredLine } from '../model/score.ts';
import type { TipHole } from '../model/tip-hole.ts';
import { foamPieceSteps, type FoamFacts, type FoamOutcome } from '../steps/foam/make-foam-pieces.ts';
import { trimmedCorners } from '../steps/foam/panel-corners.ts';
import { partBendSteps, type PartBends } from '../steps/foam/part-bends.ts';
import { cornerFindings } from '../steps/shell/corner-findings.ts';
import type { LayerChoice, SculptPart } from '../project/project.ts';
import { cornerCutFindings, CornerTrims } from './corner-trims.ts';
import { DryFits, type DryFitJob } from './dry-fit.ts';
import { dryFitFindings } from './dry-fit-findings.ts';
import { gapReason } from './gap-reasons.ts';
import type { FlattenCrew } from './flatten-crew.ts';
import { Forming } from './forming.ts';
import { LayFlat } from './lay-flat.ts';
import { letterSuffix, nameSuffix } from './layer-plan.ts';
import type { EarlyOutcome } from './outcome.ts';
import { OverlapOffers } from './overlap-offers.ts';
import { Parting, type Parted, type SeamPrefix } from './parting.ts';
import { outlineOf, RaisedAreas } from './raised-areas.ts';
import { remembered, rememberedSteps } from './remembered.ts';
import { Stopped } from './run.ts';
import type { LayerRun, SculptRun } from './sculpt-run.ts';
import { shellChoice, Shells, type SheetSurface } from './shells.ts';
import { Springings, springingFindings } from './springing.ts';
import { Staggering } from './staggering.ts';
import { straightFindings } from './straight-findings.ts';
import { wishFindings } from './wish-findings.ts';

/** Results kept per step: a maker goes a few steps back and forth. */
const KEPT = 8;

/** One object, so that what is made without any is remembered. */
const NO_SCORES: readonly ScoredLine[] = [];
const NO_TIPS: readonly TipHole[] = [];
const NO_OUTLINES: readonly OutlineLine[] = [];

/**
 * The steps of one sheet of foam, from the sculpt's surface to pieces that were put together again, and what is remembered of them. Every
 * sheet of a part has its own: sheets differ in size, and may be parted otherwise.
 */
export class LayerStages {
  readonly #parting = new Parting();
  readonly #shells = new Shells();
  readonly #staggering = new Staggering();
  readonly #raisedAreas = new RaisedAreas();
  readonly #outlines = new Memo<unknown[], readonly OutlineLine[]>(KEPT);
  readonly #layFlat: LayFlat;
  readonly #overlapOffers: OverlapOffers;
  readonly #forming = new Forming();
  readonly #dryFits = new DryFits();
  readonly #cornerTrims = new CornerTrims();
  readonly #springings = new Springings();
  readonly #unheard = new Memo<unknown[], readonly Finding[]>(KEPT);
  readonly #bent = new Memo<unknown[], PartBends>(KEPT);
  readonly #foam = new Memo<unknown[], FoamOutcome>(KEPT);

  constructor(crew: FlattenCrew) {
    this.#layFlat = new LayFlat(crew, this.#parting.patches);
    this.#overlapOffers = new OverlapOffers(crew);
  }

  /** Moves the sculpt to the surfaces of the sheet and parts it along its seams. */
  async part(run: SculptRun, layer: LayerRun, work: Work): Promise<void> {
    const { surface, findings: stays } = await this.#surface(run, layer, work);
    const { mesh } = surface;
    const part = partOf(run, layer);
    const { plan } = layer;
    await work.pause(0, 'moving to the foam’s neutral surface');
    const whole = await this.#shells.of(run, surface.whole, shellChoice(run, plan), work);
    const shell = this.#shells.onSurface(whole, surface);
    layer.shellOfWhole = whole;
    await work.pause(0.5, 'parting along the seams');
    const { seams: marks, seamSettings } = part;
    const { cut, findings } = await this.#parting.of(
      run,
      { mesh, marks, seamSettings, prefix: prefixOf(run), suffix: letterSuffix(plan) },
      work,
    );
    const { patches, chains } = cut;
    if (plan.sheet === 1) {
      const foam = run.foam(plan.choice.foam);
      // Told as the document names things, not as they came to lie on the finer mesh.
      const { edgeWishes, seams, seamSettings: named, flatten, layers, pieceSettings, regions } = run.part;
      const wishes = [mesh, patches, chains, foam, edgeWishes, seams, flatten, layers, pieceSettings, regions, named];
      const { drawn } = run;
      const said = drawn === null ? part : { ...part, ...drawn.named };
      const unheard = () => wishFindings(mesh, { patches, chains }, said, foam, drawn?.placed);
      run.findings.push(...remembered(this.#unheard, wishes, unheard));
    }
    run.findings.push(...stays, ...findings, ...patches.flatMap((patch) => patch.findings));
    const rules = rulesOfLayer(run, layer);
    layer.bends = await this.#bend(part, mesh, cut, rules, work);
    // Of a raised sheet the wall under it has told what is to tell of the sculpt.
    if (plan.raised === undefined)
      run.findings.push(
        ...shell.findings,
        ...cornerFindings(shell.corners, trimmedCorners(patches, layer.bends.patches)),
      );
    const own = await this.#shells.ofPatches(run, surface, plan, patches, shell, work);
    run.findings.push(...[...new Set(own)].flatMap((other) => (other === shell ? [] : other.findings)));
    layer.cut = { ...cut, mesh, shell, shells: this.#shells.onHinges(layer.bends, cut.chains, own, rules) };
  }

  async flatten(run: SculptRun, layer: LayerRun, work: Work): Promise<void> {
    const { project, choices } = run;
    const part = partOf(run, layer);
    const [sculpt, cut] = [run.needSculpt(), layer.needCut()];
    const { onEarly } = choices;
    // What is shown before it is done is the sheet that is seen.
    const isShown = onEarly !== undefined && layer.plan.sheet === 1;
    const tell = isShown
      ? (early: Pick<EarlyOutcome, 'flats' | 'isFinal'>) =>
          onEarly({ project, part: run.part, sculpt, drawn: run.drawn, cut, ...early })
      : undefined;
    const { results, wishes, isNew } = await this.#layFlat.lay(
      { mesh: cut.mesh, cut, part, bends: layer.needBends(), rules: rulesOfLayer(run, layer) },
      shareOfWork(work, 0, 0.9),
      tell,
    );
    if (isNew) run.made('flatten');
    layer.wishes = wishes;
    const { patches, shells } = cut;
    results.forEach((result, i) => {
      if (result === null || result.ok) return;
      run.findings.push({ ...result.problem, severity: 'error', where: { triangles: [patches[i].meshTriangles[0]] } });
    });
    const laid = results.map((result) => (result?.ok === true ? result.value : null));
    const surfaces = shells.map(({ neutralPositions }) => neutralPositions);
    const corners = wishes.map(({ options }) => options.corners);
    layer.flats = await this.#forming.of(patches, laid, surfaces, corners, shareOfWork(work, 0.9, 1));
    if (layer.flats.every((flat) => flat === null)) {
      const needs = patches.flatMap((patch) => patch.findings).find((finding) => finding.severity === 'error');
      const failed = results.find((result) => result?.ok === false);
      const why = needs?.text ?? (failed?.ok === false ? failed.problem.text : undefined);
      throw new Stopped(
        'flatten',
        fail('cut/nothing-flat', why ?? 'Nothing can be laid flat yet: mark a seam.').problem,
      );
    }
  }

  /** @param firstNumber  of the sheet's pieces. */
  async makeFoam(run: SculptRun, layer: LayerRun, firstNumber: number, work: Work): Promise<void> {
    const [cut, flats] = [layer.needCut(), layer.needFlats()];
    const part = partOf(run, layer);
    const { choice } = layer.plan;
    const foam = run.foam(choice.foam);
    const others = [...new Set(cut.shells.map((own) => own.foam))].filter((id) => id !== choice.foam);
    const otherFoams = new Map(others.map((id) => [id, factsOf(run.foam(id), choice)]));
    const { chains, patches, shell, shells } = cut;
    const { pieceSettings, tracedSide, upAxis, copies, name } = part;
    const suffix = nameSuffix(layer.plan);
    const choices = [
      pieceSettings,
      tracedSide,
      upAxis,
      copies,
      name,
      foam,
      choice.allowForShrinkage,
      firstNumber,
      suffix,
    ];
    // Slits are cut where they are seen.
    const scores = layer.plan.sheet === 1 ? (part.scores ?? NO_SCORES) : NO_SCORES;
    choices.push(...others.map((id) => run.foam(id)));
    const outlines = layer.plan.sheet === 1 ? this.#outlinesOf(cut.mesh, part.regions) : NO_OUTLINES;
    const tipHoles = part.tipHoles ?? NO_TIPS;
    const key: unknown[] = [shell, shells, chains, patches, layer.needBends(), scores, outlines, ...choices, ...flats];
    key.push(tipHoles);
    const plane = run.mirror?.plane;
    key.push(...layer.hinges, plane);
    let made = this.#foam.get(key);
    if (made === undefined) {
      const steps = foamPieceSteps({
        part: part.id,
        partName: name,
        nameSuffix: suffix,
        layer: shell,
        shells,
        mesh: cut.mesh,
        patches,
        flats,
        hinges: layer.hinges,
        chains,
        bends: layer.needBends(),
        pieceSettings,
        scores,
        outlines,
        tipHoles,
        tracedSide,
        upAxis,
        ...(plane === undefined ? {} : { mirror: plane }),
        ...factsOf(foam, choice),
        otherFoams,
        rules: rulesOf(foam),
        copies,
        firstNumber,
      });
      made = this.#foam.set(key, await runWithPauses(steps, () => work.pause(0.5)));
      run.made('foam');
    }
    const { pieces, seams, findings } = made;
    layer.pieces = await this.#cornerTrims.of(this.#dryFitJob(run, layer, pieces, seams), shareOfWork(work, 0.9, 1));
    layer.seams = seams;
    run.findings.push(...findings, ...cornerCutFindings(part.id, layer.pieces));
    run.findings.push(...straightFindings(cut.mesh, cut, flats, layer.wishes, pieces, foam.stretchLimits));
  }

  /** What would free the pieces that lie over themselves. */
  async offerCuts(run: SculptRun, layer: LayerRun, work: Work): Promise<void> {
    const cut = layer.needCut();
    const eased = await this.#overlapOffers.of(
      { mesh: cut.mesh, cut, part: partOf(run, layer), bends: layer.needBends(), rules: rulesOfLayer(run, layer) },
      layer.needFlats(),
      work,
    );
    if (eased.length > 0) layer.cut = { ...cut, offers: [...cut.offers, ...eased] };
  }

  /** The finished pieces put together again. */
  async fitDry(run: SculptRun, layer: LayerRun, work: Work): Promise<void> {
    layer.dryFit = await this.#dryFits.of(this.#dryFitJob(run, layer, barePieces(layer), layer.seams ?? []), work);
    const [cut, bends] = [layer.needCut(), layer.needBends()];
    run.findings.push(...dryFitFindings(run.part.id, layer.dryFit, (fit) => gapReason(fit, cut, bends)));
  }

  /** Where raised sheets are laid on the sheet that is seen. */
  #outlinesOf(mesh: Mesh, regions: SculptPart['regions']): readonly OutlineLine[] {
    if (regions.every(({ raised }) => raised === undefined)) return NO_OUTLINES;
    return remembered(this.#outlines, [mesh, regions], () =>
      regions.flatMap((region) =>
        region.raised === undefined
          ? []
          : outlineOf(mesh, region).map((edges): OutlineLine => ({ area: region.id, name: region.name, edges })),
      ),
    );
  }

  /** What the pieces of a sheet are put together from. */
  #dryFitJob(run: SculptRun, layer: LayerRun, pieces: DryFitJob['pieces'], seams: DryFitJob['seams']): DryFitJob {
    const { tooMuchPct } = run.foam(layer.plan.choice.foam).stretchLimits;
    return { cut: layer.needCut(), bends: layer.needBends(), hinges: layer.hinges, pieces, seams, tooMuchPct };
  }

  async springBack(run: SculptRun, layer: LayerRun, work: Work): Promise<void> {
    const cut = layer.needCut();
    const springing = await this.#springings.of({ cut, flats: layer.needFlats(), pieces: barePieces(layer) }, work);
    layer.springing = springing;
    run.findings.push(...springingFindings(run.part.id, springing, cut.shell.thicknessMm));
  }

  /** What the sheet is made on: the sculpt, or that cut finer along its paths, or where its seams lie beside those of the sheet that is seen. */
  async #surface(
    run: SculptRun,
    layer: LayerRun,
    work: Work,
  ): Promise<{ surface: SheetSurface; findings: readonly Finding[] }> {
    const { staggerMm = 0 } = layer.plan.choice;
    const { seen, drawn } = run;
    const { mesh: sculpt } = run.needSculpt();
    const onLines = { mesh: drawn?.mesh ?? sculpt, whole: sculpt, cut: drawn?.cut ?? null };
    const { raised } = layer.plan;
    if (raised !== undefined) {
      const { own, isOnLines } = this.#raisedAreas.of(sculpt, run.part, drawn, raised.area);
      layer.own = own;
      // It lies on the face as the whole of it stands, not as its area would by itself.
      const surface = { ...onLines, mesh: own.mesh, ...(isOnLines ? {} : { cut: null }) };
      return { surface, findings: [] };
    }
    if (staggerMm === 0 || seen === undefined || seen === layer) {
      layer.own = drawn;
      return { surface: onLines, findings: [] };
    }
    const found = await this.#staggering.of(
      seen.needCut(),
      partOf(run, seen),
      layer.plan.choice,
      rulesOfLayer(run, layer),
      shareOfWork(work, 0, 0),
    );
    const { mesh, sourceOfTriangle, findings } = found;
    layer.own =
      drawn === null ? found : { ...found, sourceOfTriangle: sourceOfTriangle.map((t) => drawn.sourceOfTriangle[t]) };
    return { surface: { mesh, whole: mesh, cut: null }, findings };
  }

  async #bend(
    part: SculptPart,
    mesh: Mesh,
    { patches, chains }: Parted,
    rules: FoamRules,
    work: Work,
  ): Promise<PartBends> {
    const { pieceSettings } = part;
    const steps = () => partBendSteps(mesh, patches, chains, pieceSettings, rules);
    const key = [mesh, patches, chains, pieceSettings, JSON.stringify(rules)];
    return await rememberedSteps(this.#bent, key, steps, shareOfWork(work, 0.9, 1));
  }
}

/** `2A` is a seam of the second sculpt: the letters of the others do not change when it gains a seam, nor does their paper. */
const prefixOf = ({ part, place }: SculptRun): SeamPrefix =>
  place === 1 ? { letter: '', id: '' } : { letter: String(place), id: `${part.id}.` };

/** The part with its wishes as they apply to a sheet. */
const partOf = (run: SculptRun, layer: LayerRun): SculptPart => layer.own?.part ?? run.part;

/** Pieces of a sheet as they were cut. */
const barePieces = ({ bare, pieces }: LayerRun): DryFitJob['pieces'] => bare ?? pieces ?? [];

/** Shop rules of the foam a sheet is cut from. */
const rulesOfLayer = (run: SculptRun, { plan }: LayerRun): FoamRules => rulesOf(run.foam(plan.choice.foam));

/** What makes pieces of a foam differ beyond its size. */
function factsOf({ stretchLimits, bendLimits, shrinkage }: FoamSheet, { allowForShrinkage }: LayerChoice): FoamFacts {
  return {
    limits: stretchLimits,
    ...(bendLimits === undefined ? {} : { bendLimits }),
    ...(shrinkage === undefined || !allowForShrinkage ? {} : { shrinkage }),
  };
}
