import { contentHash } from '../base/hash.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { runAtOnce, runWithPauses } from '../base/stepwise.ts';
import { Cancelled, QUIET_WORK } from '../base/work.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { SeamCost } from '../model/seam-cost.ts';
import type { BendField } from '../model/bend-field.ts';
import type { PropView, SculptView } from '../model/bench-view.ts';
import type { GirthTape, TapeMeasures } from '../model/girth.ts';
import type { ModelFormat } from '../model/source-model.ts';
import type { FlattenCrew } from '../pipeline/flatten-crew.ts';
import { stoppedIn, type Outcome } from '../pipeline/outcome.ts';
import { Pipeline } from '../pipeline/pipeline.ts';
import { propSteps } from '../pipeline/prop.ts';
import { isWhole, shopPlanSteps } from '../pipeline/shop-plan.ts';
import { TapeTrial } from '../pipeline/tape-trial.ts';
import { changedPdfOf, FILE_NAMES, pdfOf, reportOf, stripPdfOf, svgOf } from '../pipeline/write-files.ts';
import { needSculptAtWork } from '../project/at-work.ts';
import { setSeams } from '../project/commands.ts';
import { readProjectFile, writeProjectFile } from '../project/project-file.ts';
import { PROJECT_SUFFIX } from '../project/project-suffix.ts';
import type { MockUp } from '../project/mock-up.ts';
import type { Project, SourceRef } from '../project/project.ts';
import { sourcesOfProject } from '../project/sources.ts';
import { sourceFormat } from '../pipeline/source-format.ts';
import { edgePath } from '../steps/seams/edge-path.ts';
import { sharpEdges } from '../steps/seams/sharp-edges.ts';
import { fileFromZip, isZip } from '../steps/write/from-zip.ts';
import { rad } from '../geom/vec.ts';
import { BendDesk } from './bend-desk.ts';
import { BenchUpdater } from './bench-update.ts';
import { EarlyPost } from './early-post.ts';
import { ProjectInterner } from './intern-project.ts';
import { CompareDesk } from './compare-desk.ts';
import { CostDesk } from './cost-desk.ts';
import type { AcrossLine, AcrossWish } from './drawing-api.ts';
import { DrawingDesk } from './drawing-desk.ts';
import type { BorderOf, LineWay, Marking } from './marking-api.ts';
import { MarkingDesk } from './marking-desk.ts';
import { MockUpDesk } from './mock-up-desk.ts';
import { EaseDesk } from './ease-desk.ts';
import { needsOf, ProposeDesk, type ProposeHost } from './propose-desk.ts';
import type { EaseAsk, ProposalAnswer, ProposalAsk, ToldReason } from './proposing-api.ts';
import { PartsDesk } from './parts-desk.ts';
import { PoliteWork } from './polite-work.ts';
import { SheetDesk } from './sheet-desk.ts';
import { LaterFilesDesk } from './later-files-desk.ts';
import { ShopDesk } from './shop-desk.ts';
import type { WholeWorkshop } from './reception.ts';
import type { ComputeReply, FileKind, MadeFile, OnEarly, Progress, Workshop } from './workshop-api.ts';

/** The pipeline behind the calls of {@link Workshop}. One project at a time; a new compute calls off the one before. */
export class PipelineWorkshop implements WholeWorkshop {
  readonly #pipeline: Pipeline;
  readonly #interner = new ProjectInterner();
  readonly #updater = new BenchUpdater();
  readonly #loadFont: () => Promise<Uint8Array>;
  #running: PoliteWork | null = null;
  /** Resolves when the run before has ended, finished or called off. */
  #settled: Promise<unknown> = Promise.resolve();
  #outcome: Outcome | null = null;
  /** A run on another document, for what a proposal needs; a compute goes first. */
  #trial: PoliteWork | null = null;
  readonly #tapes = new TapeTrial();
  readonly #marking = new MarkingDesk(() => this.#outcome);
  readonly #drawing = new DrawingDesk(() => this.#outcome);
  readonly #mockUps = new MockUpDesk(
    (hash) => this.#pipeline.sourceOf(hash),
    () => this.#loadFont(),
  );
  readonly #parts = new PartsDesk((hash, source) => this.#pipeline.putSource(hash, source));
  readonly #sheets = new SheetDesk(() => this.#outcome);
  readonly #bends = new BendDesk(() => this.#outcome);
  readonly #costs = new CostDesk(
    () => this.#outcome,
    () => this.#running !== null,
  );
  readonly #seeking: ProposeHost = {
    outcome: () => this.#outcome,
    isBusy: () => this.#running !== null,
    needsOf: async ({ project }, marks) => needsOf(await this.#tryOut(setSeams(marks).apply(project))),
  };
  readonly #shop = new ShopDesk(
    () => this.#outcome,
    () => this.#running !== null,
  );
  readonly #comparing = new CompareDesk(
    (hash) => this.#pipeline.sourceOf(hash),
    () => this.#running !== null,
  );
  readonly #files: LaterFilesDesk;
  readonly #proposing = new ProposeDesk(this.#seeking);
  readonly #easing = new EaseDesk(this.#seeking);
  readonly #props = new WeakMap<Outcome, PropView | null>();

  /**
   * @param loadFont gives DejaVu Sans as a TrueType file; asked for when the first PDF is made.
   * @param crew     lays the patches flat; in this thread unless said.
   */
  constructor(loadFont: () => Promise<Uint8Array>, crew?: FlattenCrew) {
    this.#loadFont = loadFont;
    this.#pipeline = new Pipeline(crew);
    this.#files = new LaterFilesDesk({
      loadFont,
      run: (project, date, work) =>
        this.#inTurn(() => this.#pipeline.run(this.#interner.same(project), work, { date })),
      sourceOf: (hash) => this.#pipeline.sourceOf(hash),
    });
  }

  takeSource(...kept: Parameters<Pipeline['putSource']>): void {
    this.#pipeline.putSource(...kept);
  }

  seenAs(view: SculptView): void {
    this.#updater.seen(view);
  }

  async putSource(bytes: Uint8Array, fileName: string): Promise<Result<{ hash: string; format: ModelFormat }>> {
    const format = sourceFormat(bytes, fileName);
    if (!format.ok) return format;
    const hash = await contentHash(bytes);
    this.#pipeline.putSource(hash, { fileName, bytes });
    return ok({ hash, format: format.value });
  }

  getSource(hash: string): Promise<Uint8Array | undefined> {
    return Promise.resolve(this.#pipeline.sourceOf(hash)?.bytes);
  }

  async compute(
    project: Project,
    have: number,
    onProgress: (progress: Progress) => void,
    onEarly?: OnEarly,
    sheet = 1,
  ): Promise<ComputeReply> {
    this.#running?.cancel();
    this.#trial?.cancel();
    void this.#costs.stopCosting();
    this.#shop.stop();
    const work = new PoliteWork(onProgress);
    this.#running = work;
    const turn = this.#inTurn(() => this.#run(this.#interner.same(project), have, sheet, work, onEarly));
    // Who calls off is answered now; the run itself ends at its next pause.
    return await Promise.race([turn, calledOff(work)]);
  }

  cancel(): Promise<void> {
    this.#running?.cancel();
    return Promise.resolve();
  }

  async prop(): Promise<PropView | null> {
    const outcome = this.#outcome;
    if (outcome === null) return null;
    const known = this.#props.get(outcome);
    if (known !== undefined) return known;
    const work = new PoliteWork(() => undefined);
    const made = await runWithPauses(propSteps(outcome), () => work.pause(0));
    this.#props.set(outcome, made);
    return made;
  }

  bendField(sheet: number): Promise<BendField | null> {
    return this.#bends.bendField(sheet);
  }

  tapeAt(tape: GirthTape): Promise<TapeMeasures | null> {
    return Promise.resolve(this.#outcome === null ? null : this.#tapes.of(this.#outcome, tape));
  }

  sharpEdges(angleDeg: number): Promise<readonly (readonly [number, number])[]> {
    const mesh = this.#mesh();
    return Promise.resolve(mesh === null ? [] : sharpEdges(mesh, rad(angleDeg)));
  }

  edgePath(from: number, to: number): Promise<Result<readonly number[]>> {
    const mesh = this.#mesh();
    return Promise.resolve(mesh === null ? fail('seams/no-sculpt', 'Open a sculpt first.') : edgePath(mesh, from, to));
  }

  handLine(...wish: Parameters<Marking['handLine']>): Promise<Result<readonly number[]>> {
    return this.#marking.handLine(...wish);
  }

  followLine(edge: number, way: LineWay): Promise<readonly number[]> {
    return this.#marking.followLine(edge, way);
  }

  border(of: BorderOf): Promise<readonly number[]> {
    return this.#marking.border(of);
  }

  simplifyKeeps(...of: Parameters<Marking['simplifyKeeps']>): Promise<readonly number[] | null> {
    return this.#marking.simplifyKeeps(...of);
  }

  freePlaces(...ask: Parameters<Workshop['freePlaces']>): ReturnType<Workshop['freePlaces']> {
    return this.#sheets.freePlaces(...ask);
  }

  shapes(): ReturnType<Workshop['shapes']> {
    return this.#parts.shapes();
  }

  tryShape(...ask: Parameters<Workshop['tryShape']>): ReturnType<Workshop['tryShape']> {
    return this.#parts.tryShape(...ask);
  }

  pipes(): ReturnType<Workshop['pipes']> {
    return this.#parts.pipes();
  }

  coreSide(...wish: Parameters<Workshop['coreSide']>): ReturnType<Workshop['coreSide']> {
    return this.#parts.coreSide(...wish);
  }

  partFromFile(...ask: Parameters<Workshop['partFromFile']>): ReturnType<Workshop['partFromFile']> {
    return this.#parts.partFromFile(...ask);
  }

  keepFile(...ask: Parameters<Workshop['keepFile']>): Promise<string> {
    return this.#parts.keepFile(...ask);
  }

  drawAcross(wish: AcrossWish, isMirrored?: boolean): Promise<Result<readonly AcrossLine[]>> {
    return this.#drawing.drawAcross(wish, isMirrored);
  }

  moveLine(...wish: Parameters<Workshop['moveLine']>): ReturnType<Workshop['moveLine']> {
    return this.#drawing.moveLine(...wish);
  }

  readDrawing(text: string): ReturnType<Workshop['readDrawing']> {
    return this.#drawing.readDrawing(text);
  }

  layDrawing(...wish: Parameters<Workshop['layDrawing']>): ReturnType<Workshop['layDrawing']> {
    return this.#drawing.layDrawing(...wish);
  }

  propose(ask: ProposalAsk, onAnswer: (answer: ProposalAnswer) => void): Promise<Result<null>> {
    this.#easing.stop();
    return this.#proposing.propose(ask, onAnswer);
  }

  async ease(ask: EaseAsk, onAnswer: (answer: ProposalAnswer) => void): Promise<Result<readonly ToldReason[]>> {
    await this.#proposing.stopProposing();
    return await this.#easing.ease(ask, onAnswer);
  }

  stopProposing(): Promise<void> {
    this.#easing.stop();
    return this.#proposing.stopProposing();
  }

  seamCosts(limitPct: number, onCost: (cost: SeamCost) => void): Promise<Result<null>> {
    return this.#costs.seamCosts(limitPct, onCost);
  }

  stopCosting(): Promise<void> {
    return this.#costs.stopCosting();
  }

  shop(): ReturnType<Workshop['shop']> {
    return this.#shop.shop();
  }

  stepPicture(step: number): ReturnType<Workshop['stepPicture']> {
    return this.#shop.stepPicture(step);
  }

  tryGluing(...ask: Parameters<Workshop['tryGluing']>): ReturnType<Workshop['tryGluing']> {
    return this.#shop.tryGluing(...ask);
  }

  compare(...ask: Parameters<Workshop['compare']>): ReturnType<Workshop['compare']> {
    return this.#comparing.compare(...ask);
  }

  stopComparing(): Promise<void> {
    return this.#comparing.stopComparing();
  }

  makeFiles(...ask: Parameters<Workshop['makeFiles']>): ReturnType<Workshop['makeFiles']> {
    return this.#files.makeFiles(...ask);
  }

  stopFiles(): Promise<void> {
    return this.#files.stopFiles();
  }

  async makeMockUp(mockUp: MockUp, project: Project, date: string): Promise<Result<MadeFile>> {
    const outcome = await this.#inTurn(() => this.#pipeline.run(this.#interner.same(project), QUIET_WORK));
    if (outcome.stopped !== null) return { ok: false, problem: outcome.stopped.problem };
    return await this.#mockUps.make(outcome, mockUp, date);
  }

  async makeFile(kind: FileKind, project: Project, date: string): Promise<Result<MadeFile>> {
    if (kind === 'project') return ok(projectFile(this.#projectText(project)));
    if (kind === 'strip') {
      const made = await stripPdfOf(project, { font: await this.#loadFont(), date });
      return made.ok ? ok({ name: FILE_NAMES.strip, mime: 'application/pdf', bytes: made.value }, made.notes) : made;
    }
    const outcome = await this.#inTurn(() => this.#pipeline.run(this.#interner.same(project), QUIET_WORK, { date }));
    const stopped = stoppedIn(outcome);
    if (stopped !== null) return { ok: false, problem: stopped.problem };
    switch (kind) {
      case 'pdf': {
        const made = await pdfOf(outcome, { font: await this.#loadFont(), date });
        return made.ok ? ok({ name: FILE_NAMES.pdf, mime: 'application/pdf', bytes: made.value }) : made;
      }
      case 'changed': {
        const made = await changedPdfOf(outcome, { font: await this.#loadFont(), date });
        return made.ok
          ? ok({ name: FILE_NAMES.changed, mime: 'application/pdf', bytes: made.value }, made.notes)
          : made;
      }
      case 'svg':
        return ok({ name: FILE_NAMES.svg, mime: 'image/svg+xml', bytes: new TextEncoder().encode(svgOf(outcome)) });
      case 'report':
        return ok({
          name: FILE_NAMES.report,
          mime: 'application/json',
          bytes: new TextEncoder().encode(
            reportOf(outcome, [], isWhole(outcome) ? runAtOnce(shopPlanSteps(outcome)) : undefined),
          ),
        });
    }
  }

  newVersion(project: Project, source: SourceRef): ReturnType<Workshop['newVersion']> {
    const part = needSculptAtWork(this.#interner.same(project));
    return this.#inTurn(() => this.#pipeline.newVersion(part, source, QUIET_WORK, project.body));
  }

  async openProject(bytes: Uint8Array, fileName: string): Promise<Result<Project>> {
    const inHand = isZip(bytes) ? fileFromZip(bytes, PROJECT_SUFFIX) : bytes;
    if (inHand === null)
      return fail(
        'project/not-in-zip',
        `${fileName} is damaged or holds no Foamloft project: choose a zip that was saved with the project in it, or a file ending in ${PROJECT_SUFFIX}.`,
      );
    const opened = await readProjectFile(new TextDecoder().decode(inHand), fileName);
    if (!opened.ok) return opened;
    for (const [hash, source] of opened.value.sources) this.#pipeline.putSource(hash, source);
    return ok(opened.value.project, opened.notes);
  }

  async #tryOut(project: Project): Promise<Outcome | null> {
    if (this.#running !== null) return null;
    const work = new PoliteWork(() => undefined);
    this.#trial = work;
    try {
      return await this.#inTurn(() => this.#pipeline.run(project, work));
    } catch (error) {
      if (error instanceof Cancelled) return null;
      throw error;
    }
  }

  /** Begins a run of the pipeline when the one before has ended: two never share it at the same moment. */
  #inTurn<T>(run: () => Promise<T>): Promise<T> {
    const turn = this.#settled.then(run);
    this.#settled = turn.catch(() => undefined);
    return turn;
  }

  async #run(
    project: Project,
    have: number,
    sheet: number,
    work: PoliteWork,
    onEarly: OnEarly | undefined,
  ): Promise<ComputeReply> {
    // What is shown before it is done is the sheet that is seen.
    const post = onEarly === undefined || sheet !== 1 ? null : this.#earlyPost(onEarly, have);
    try {
      const outcome = await this.#pipeline.run(
        project,
        work,
        post === null ? {} : { onEarly: (early) => post.offer(early) },
      );
      this.#outcome = outcome;
      return { cancelled: false, update: this.#updater.next(outcome, post?.have ?? have, sheet) };
    } catch (error) {
      if (error instanceof Cancelled) return { cancelled: true };
      throw error;
    } finally {
      post?.end();
      if (this.#running === work) this.#running = null;
    }
  }

  #earlyPost(onEarly: OnEarly, have: number): EarlyPost {
    const before = this.#outcome;
    const hasPieces = have > 0 && before?.pieces !== null && before !== null;
    return new EarlyPost(onEarly, have, hasPieces, (early, taken) => this.#updater.early(early, before, taken));
  }

  #mesh(): Mesh | null {
    return this.#outcome?.cut?.mesh ?? this.#outcome?.sculpt?.mesh ?? null;
  }

  /** A project file can be saved at any time, whether or not the chain has run to its end. */
  #projectText(project: Project): string {
    const sources = new Map(
      sourcesOfProject(project).flatMap((source) => {
        const kept = this.#pipeline.sourceOf(source.hash);
        return kept === undefined ? [] : [[source.hash, kept] as const];
      }),
    );
    return writeProjectFile(project, sources);
  }
}

/** Resolves when the work is called off. */
const calledOff = ({ signal }: PoliteWork): Promise<ComputeReply> =>
  new Promise((resolve) => signal.addEventListener('abort', () => resolve({ cancelled: true }), { once: true }));

const projectFile = (text: string): MadeFile => ({
  name: FILE_NAMES.project,
  mime: 'application/json',
  bytes: new TextEncoder().encode(text),
});
