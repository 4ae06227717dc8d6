import { LitElement, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { FreeAsk } from '../model/free-places.ts';
import type { SculptPart } from '../project/project.ts';
import type { BenchPick } from '../viewport/bench-contract.ts';
import type { StepPicture } from '../worker/shop-api.ts';
import type { FileKind } from '../worker/workshop-api.ts';
import type { LapEvent } from './chosen-row.ts';
import type {
  ChooseEvent,
  CoreFileEvent,
  OffcutFileEvent,
  PartFileEvent,
  SculptFileEvent,
  CommandEvent,
  FilesEvent,
  MockUpEvent,
  GluingMoveEvent,
  PointEvent,
  SampleEvent,
  SharpEvent,
  SimplifyEvent,
  VerbEvent,
  ViewEvent,
  WishEvent,
} from './events.ts';
import type { JobSheet } from './job-sheet.ts';
import type { WalkEvent } from './history/history-events.ts';
import { isBare, isPressed, isTyping, keyWish } from './keys.ts';
import { FocusKeeper } from './focus-keeper.ts';
import { openCore, openFile, openNewVersion, openPart, openSample, openSculpt } from './opening.ts';
import { showKeys } from './key-cap.ts';
import { canChooseHandles, droppedHandle } from './files/file-handle.ts';
import { askState } from './files/keep-actions.ts';
import type { StateEvent } from './files/keep-events.ts';
import { keptLook } from './files/kept-look.ts';
import { FieldKeeper } from './files/field-keeper.ts';
import { chooseFile } from './files/open-handle.ts';
import { saveJob } from './files/save-job.ts';
import { BendFeed } from './legend/bend-feed.ts';
import { figureScale, N_PER_CM } from './legend/figure-scale.ts';
import './progress-line.ts';
import { SAMPLES } from './samples.ts';
import { downloadBlob, downloadFile } from './saving.ts';
import { partSharp, turnEdge } from './seam-actions.ts';
import { beginWalk, walk } from './seam-walk.ts';
import { simplifyTo } from './simplify-actions.ts';
import './stage.ts';
import { SeamDrag } from './seam-drag.ts';
import { PathDrag } from './path-drag.ts';
import { SeamHand } from './seam-hand.ts';
import { DartDrag } from './dart-drag.ts';
import { StrokeDraw } from './stroke-draw.ts';
import { partAlongPath, unpickForPath } from './mark-actions.ts';
import { sheetTitles } from './sheet-names.ts';
import { limitsOnBench } from './sheet-on-bench.ts';
import { widenChosenLap } from './seam-joins.ts';
import type { Stage } from './stage.ts';
import type {
  StageDragEvent,
  StageGrabEvent,
  StageHoverEvent,
  StagePickEvent,
  StagePlaneEvent,
  StageSectionEvent,
  StageStandEvent,
} from './stage-events.ts';
import { moveDrawing, openDrawing, partDrawing, placeDrawing, placeOfPick } from './drawing-actions.ts';
import { DrawingHand } from './drawing-hand.ts';
import { noteSaved, turnHelp } from './help/help-verbs.ts';
import { workbenchIn, type Situation } from './help/situations.ts';
import { saveFiles } from './files-actions.ts';
import { saveMockUp } from './mock-up-actions.ts';
import { beginWithShape, upOf } from './parts-actions.ts';
import { moveStep } from './gluing-actions.ts';
import { GluingFeed } from './gluing-feed.ts';
import { insetsOf } from './panel-insets.ts';
import { PropFeed } from './prop-feed.ts';
import { StagePicks } from './stage-picks.ts';
import { LayoutSearchHand } from './layout-search.ts';
import { PART_WORDS } from './part-words.ts';
import type { StageGoEvent } from './stage-rule.ts';
import { TapeHand } from './tape-hand.ts';
import { Travel } from './travel.ts';
import { SHARED } from './styles.ts';
import type { Verb, WindowActions } from './verb.ts';
import { verbsFor } from './verbs.ts';
import { nextOf } from './verdict/verdict-verbs.ts';
import { NO_PATH, NOTHING, type DrawingPlace } from './view-state.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';
import { WINDOW_STYLE } from './window-style.ts';

/** `YYYY-MM-DD`. */
const today = (): string => new Date().toISOString().slice(0, 10);

const NO_REGIONS: SculptPart['regions'] = [];

/** The window: the bench and its job sheet. Gives slices of the workbench to its elements and turns their events into changes. */
@customElement('fl-app')
export class App extends LitElement {
  static override styles = [SHARED, WINDOW_STYLE];

  /** What the window knows and shows; set once, before the element is put on the page. */
  @property({ attribute: false }) workbench!: Workbench;
  @state() private isDropping = false;
  /** The bench is drawn in 3D. */
  @state() private hasScene = false;
  @query('fl-stage') private stage!: Stage;
  @query('fl-look-row') private lookRow!: HTMLElement;
  @query('fl-stage-sides') private sides!: HTMLElement;
  @query('fl-legend') private legend!: HTMLElement;
  @query('fl-chosen-row') private chosenRow!: HTMLElement;
  @query('fl-job-sheet') private sheet!: JobSheet;
  @query('#any-file') private chooser!: HTMLInputElement;
  @query('#version-file') private versionChooser!: HTMLInputElement;
  @query('#drawing-file') private drawingChooser!: HTMLInputElement;
  #picks!: StagePicks;
  #seamDrag!: SeamDrag;
  #pathDrag!: PathDrag;
  #seamHand!: SeamHand;
  #stroke!: StrokeDraw;
  #dartDrag!: DartDrag;
  #travel!: Travel;
  #propFeed!: PropFeed;
  #gluingFeed!: GluingFeed;
  #bendFeed!: BendFeed;
  #tapeHand!: TapeHand;
  #drawingHand!: DrawingHand;
  #layoutSearch!: LayoutSearchHand;
  #panels = new ResizeObserver(() => {
    this.stage.insets = insetsOf(this.stage, [this.lookRow, this.sides, this.legend], this.chosenRow);
  });
  #focus = new FocusKeeper(() => this.stage.focusCanvas());
  #fields!: FieldKeeper;
  #night = window.matchMedia('(prefers-color-scheme: dark)');

  override connectedCallback(): void {
    super.connectedCallback();
    const { workbench } = this;
    this.#picks = new StagePicks(workbench);
    this.#seamDrag = new SeamDrag(workbench);
    this.#pathDrag = new PathDrag(workbench);
    this.#seamHand = new SeamHand(workbench, this.#seamDrag, this.#pathDrag, {
      facing: (point) => this.stage.facing(point),
      screenOf: (corner) => this.stage.screenOf(corner),
    });
    this.#stroke = new StrokeDraw(workbench);
    this.#dartDrag = new DartDrag(workbench);
    this.#propFeed = new PropFeed(workbench);
    this.#gluingFeed = new GluingFeed(workbench);
    this.#bendFeed = new BendFeed(workbench);
    this.#tapeHand = new TapeHand(workbench);
    this.#drawingHand = new DrawingHand(workbench, () => this.#placeOf(this.stage.pickMiddle()));
    this.#layoutSearch = new LayoutSearchHand(workbench);
    this.#travel = new Travel((stage) => workbench.setView({ stage }));
    workbench.addEventListener('change', this.#onChange);
    this.#focus.start();
    this.#fields = new FieldKeeper(workbench);
    this.#fields.start();
    window.addEventListener('keydown', this.#onKey);
    window.addEventListener('dragover', this.#onDrag);
    window.addEventListener('dragleave', this.#onDragEnd);
    window.addEventListener('drop', this.#onDrop);
    document.addEventListener('visibilitychange', this.#onHide);
    this.#night.addEventListener('change', this.#onChange);
    void this.updateComplete.then(() =>
      [this.stage, this.lookRow, this.sides, this.legend, this.chosenRow].forEach((part) => this.#panels.observe(part)),
    );
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#panels.disconnect();
    this.workbench.removeEventListener('change', this.#onChange);
    this.#focus.stop();
    this.#fields.stop();
    window.removeEventListener('keydown', this.#onKey);
    window.removeEventListener('dragover', this.#onDrag);
    window.removeEventListener('dragleave', this.#onDragEnd);
    window.removeEventListener('drop', this.#onDrop);
    document.removeEventListener('visibilitychange', this.#onHide);
    this.#night.removeEventListener('change', this.#onChange);
  }

  /** Every verb that can be done now. */
  get verbs(): readonly Verb[] {
    return verbsFor(this.workbench, this.#actions);
  }

  protected override render() {
    const { workbench } = this;
    const { project, bench, view, part, history } = workbench;
    const { verbs } = this;
    const chosenPage = view.choice.kind === 'page' ? view.choice.page : -1;
    const limit = limitsOnBench(project, view.sheet).tooMuchPct;
    return html`<main
      @fl-command=${(event: CommandEvent) => workbench.run(event.command)}
      @fl-point=${(event: PointEvent) => workbench.setView({ pointed: event.pointed })}
      @fl-choose=${this.#onChoose}
      @fl-verb=${(event: VerbEvent) => this.#do(event.verb)}
      @fl-view=${(event: ViewEvent) => this.#onView(event)}
      @fl-sample=${this.#onSample}
      @fl-core-file=${(event: CoreFileEvent) => void openCore(workbench, event.file)}
      @fl-part-file=${(event: PartFileEvent) => void openPart(workbench, event.file, event.foam)}
      @fl-sculpt-file=${(event: SculptFileEvent) => void openSculpt(workbench, event.file)}
      @fl-offcut-file=${(event: OffcutFileEvent) => void this.#openOffcut(event)}
      @fl-sharp=${(event: SharpEvent) => void partSharp(workbench, event.angleDeg)}
      @fl-simplify=${(event: SimplifyEvent) => void simplifyTo(workbench, event.measure)}
      @fl-files=${({ pick }: FilesEvent) => void saveFiles(workbench, pick, today(), downloadBlob)}
      @fl-mock-up=${({ mockUp }: MockUpEvent) => void saveMockUp(workbench, mockUp, today(), downloadFile)}
      @fl-gluing-move=${(event: GluingMoveEvent) => this.#onGluingMove(event)}
      @fl-walk=${({ step }: WalkEvent) => workbench.goToStep(step)}
      @fl-wish=${(event: WishEvent) => workbench.setWishes(event.patch)}
      @fl-state=${(event: StateEvent) => this.#onState(event)}
    >
      <section class="bench" aria-label=${WORDS.stage.bench} ?inert=${this.#isAtBench}>
        <fl-stage
          .bench=${bench}
          .view=${view}
          .up=${upOf(project)}
          .unit=${project?.lengthUnit ?? 'mm'}
          .sheetTitles=${sheetTitles(project, bench)}
          .theme=${this.#theme()}
          .picture=${workbench.wishes.picture}
          .limitPct=${limit}
          .limits=${this.#limits()}
          .regions=${part?.regions ?? NO_REGIONS}
          .shop=${project?.shop}
          .tool=${view.tool}
          .stale=${workbench.isStale && workbench.progress !== null && bench.shell !== null}
          @fl-stage-hover=${(event: StageHoverEvent) => this.#picks.hover(event.pick)}
          @fl-stage-pick=${this.#onPick}
          @fl-stage-grab=${this.#onGrab}
          @fl-stage-drag=${this.#onStageDrag}
          @fl-stage-drop=${this.#onDropped}
          @fl-stage-section=${(event: StageSectionEvent) => workbench.setView({ section: event.figures })}
          @fl-stage-plane=${this.#onPlane}
          @fl-stage-stand=${(event: StageStandEvent) => (this.hasScene = event.hasScene)}
        ></fl-stage>
        ${chosenPage >= 0 && bench.paper !== null ? html`<fl-page-view .pages=${bench.paper.pages} .at=${chosenPage}></fl-page-view>` : nothing}
        ${view.choice.kind === 'sheet' && bench.sheets !== null ? this.#sheetView(view.choice.sheet) : nothing}
        ${view.help.sheet === null ? nothing : this.#helpSheet()} ${this.#over()}
        <div class="top">
          <fl-stage-sides
            ?hidden=${['page', 'sheet'].includes(view.choice.kind)}
            .bench=${bench}
            .hasScene=${this.hasScene}
          ></fl-stage-sides>
          <fl-look-row
            ?hidden=${['page', 'sheet'].includes(view.choice.kind)}
            .project=${project}
            .bench=${bench}
            .view=${view}
          ></fl-look-row>
          <fl-legend
            ?hidden=${['page', 'sheet'].includes(view.choice.kind)}
            .project=${project}
            .bench=${bench}
            .view=${view}
          ></fl-legend>
          <fl-progress-line
            .progress=${workbench.progress}
            .reading=${bench.sculpt === null ? null : workbench.reading}
          ></fl-progress-line>
        </div>
        <fl-chosen-row
          .project=${project}
          .bench=${bench}
          .view=${view}
          .verbs=${verbs}
          @fl-lap=${(event: LapEvent) => widenChosenLap(workbench, event.mm)}
        ></fl-chosen-row>
        <fl-stage-rule
          ?hidden=${project?.parts.length === 0}
          ?data-next=${view.help.next === 'stage'}
          .stage=${view.stage}
          .over=${view.choice.kind === 'page' || view.choice.kind === 'sheet' ? view.choice.kind : null}
          .last=${this.#lastStage()}
          @fl-stage-go=${(event: StageGoEvent) => this.#rollTo(event.stage)}
        ></fl-stage-rule>
        ${view.finderOpen ? html`<fl-finder .verbs=${verbs}></fl-finder>` : nothing}
      </section>
      <fl-job-sheet
        ?inert=${this.#isAtBench}
        .project=${project}
        .bench=${bench}
        .view=${view}
        .wishes=${workbench.wishes}
        .asking=${workbench.workshop}
        .trail=${history?.trail ?? null}
        .saved=${workbench.autosave.state}
        .kept=${keptLook(workbench.keeping, project, workbench.refusals)}
        .storage=${workbench.storage}
        .canUndo=${history?.canUndo ?? false}
        .canRedo=${history?.canRedo ?? false}
        .undoLabel=${history?.undoLabel ?? ''}
        .redoLabel=${history?.redoLabel ?? ''}
        .earlier=${workbench.before?.name ?? ''}
        .notice=${workbench.notice}
        .theme=${this.#theme()}
        .isStale=${workbench.isStale}
        .next=${nextOf(workbench)}
        @fl-notice-done=${() => workbench.setNotice(null)}
      ></fl-job-sheet>
      <input
        id="version-file"
        type="file"
        accept=".obj,.stl"
        tabindex="-1"
        aria-hidden="true"
        hidden
        @change=${this.#onVersion}
      />
      <input
        id="drawing-file"
        type="file"
        accept=".svg"
        tabindex="-1"
        aria-hidden="true"
        hidden
        @change=${this.#onDrawing}
      />
      <input
        id="any-file"
        type="file"
        accept=".obj,.stl,.json,.zip,.svg"
        tabindex="-1"
        aria-hidden="true"
        @change=${this.#onFile}
      />
      ${this.#isAtBench ? this.#atBench() : nothing}
      <fl-field-help .unit=${project?.lengthUnit ?? 'mm'}></fl-field-help>
      <p class="unseen" aria-live="polite">${workbench.spoken}</p>
    </main>`;
  }

  protected override updated(): void {
    const { theme, contrast } = this.workbench.wishes;
    const root = document.documentElement;
    root.dataset['theme'] = theme;
    root.dataset['contrast'] = contrast;
    showKeys(this, this.verbs);
  }

  get #isAtBench(): boolean {
    return this.workbench.project !== null && this.workbench.wishes.atBench?.isOpen === true;
  }

  /** Over everything: what lies behind is neither seen nor reached. Its code is fetched when it is first wanted. */
  #atBench() {
    void import('./at-bench/at-bench.ts');
    const { project, bench, view, wishes } = this.workbench;
    return html`<fl-at-bench
      .project=${project}
      .bench=${bench}
      .shop=${view.gluing.shop}
      .line=${wishes.atBench?.line ?? null}
      .hold=${this.workbench.keeping.hold}
      .refusals=${this.workbench.refusals}
      .pictureOf=${this.#pictureOf}
    ></fl-at-bench>`;
  }

  readonly #pictureOf = (step: number): Promise<StepPicture | null> => this.workbench.workshop.stepPicture(step);

  readonly #freePlaces = (ask: FreeAsk) => this.workbench.workshop.freePlaces(ask);

  #sheetView(at: number) {
    const { project, bench } = this.workbench;
    return html`<fl-sheet-view
      .project=${project}
      .bench=${bench}
      .at=${at}
      .places=${this.#freePlaces}
    ></fl-sheet-view>`;
  }

  #helpSheet() {
    const { project, view, wishes } = this.workbench;
    return html`<fl-help-sheet
      .help=${view.help}
      .unit=${project?.lengthUnit ?? 'mm'}
      .letterKeys=${wishes.letterKeys}
      .verbsIn=${this.#verbsIn}
    ></fl-help-sheet>`;
  }

  /** The verbs there would be with something chosen or in hand; null where the job has none of it. */
  readonly #verbsIn = (situation: Situation): readonly Verb[] | null => {
    const bench = workbenchIn(situation, this.workbench);
    return bench === null ? null : verbsFor(bench, this.#actions);
  };

  /** What lies over the bench when it has nothing to show or a file is held over it. */
  #over() {
    const { bench, project, reading } = this.workbench;
    if (this.isDropping) return html`<p class="over drop">${WORDS.stage.drop}</p>`;
    if (bench.sculpt !== null || bench.plain.some(({ form }) => form !== null)) return nothing;
    if (reading === null && project !== null && project.parts.length === 0)
      return html`<p class="over">${(project.plain ?? []).length === 0 ? PART_WORDS.nothing : PART_WORDS.noForm}</p>`;
    return html`<p class="over">${reading === null ? WORDS.stage.empty : WORDS.stage.reading(reading)}</p>`;
  }

  /** Ends of the scales of bend and pull for the foam on the bench. */
  #limits() {
    const { project, bench, view } = this.workbench;
    const of = (kind: 'bend' | 'pull'): number => figureScale(kind, project, bench, view.sheet).limit;
    return { bendPct: of('bend'), pullNPerMm: of('pull') / N_PER_CM };
  }

  #theme(): string {
    const { theme, contrast } = this.workbench.wishes;
    const isNight = theme === 'dark' || (theme === 'auto' && this.#night.matches);
    return `${isNight ? 'dark' : 'light'} ${contrast}`;
  }

  /** Pieces must be there before they can travel. */
  #lastStage(): number {
    const { pieces, sheets } = this.workbench.bench;
    if (pieces === null || pieces.pieces.length === 0) return 0;
    return sheets === null ? 2 : 3;
  }

  readonly #actions: WindowActions = {
    look: (side) => this.stage.look(side),
    frame: (what) => this.stage.frame(what),
    rollTo: (stage) => this.#rollTo(stage),
    beginWalk: () => this.#beginWalk(),
    holdSeam: (isNext) => this.#holdSeam(isNext),
    layoutSearch: () => this.#layoutSearch,
    openFile: () => void this.#chooseFile(),
    beginWithShape: () => beginWithShape(this.workbench),
    openNewVersion: () => this.versionChooser.click(),
    openDrawing: () => this.#chooseDrawing(),
    facing: (point) => this.stage.facing(point),
    middle: () => this.#placeOf(this.stage.pickMiddle()),
    save: (kind) => void this.#save(kind),
    saveAs: () => void saveJob(this.workbench, today(), true),
    print: () => void this.#print(),
    goTo: (line, part) => void this.#goTo(line, part),
    press: (line, part) => void this.#goTo(line, part).then(() => this.sheet.press(line, part)),
  };

  /** Outlines of offcuts are parted and joined by code that is not needed for anything else here. */
  async #openOffcut({ file, foam }: OffcutFileEvent): Promise<void> {
    const { openOffcut } = await import('./stock-actions.ts');
    await openOffcut(this.workbench, file, foam);
  }

  #do(id: string): void {
    const { workbench } = this;
    if (workbench.view.finderOpen && id !== 'find') workbench.setView({ finderOpen: false });
    switch (id) {
      case 'back':
        return this.#stepBack();
      case 'find':
        return workbench.setView({ finderOpen: true });
      case 'cancel':
        return void workbench.cancel();
      case 'go-back':
        return workbench.goBack();
      case 'show-stage':
        return this.#showSlider();
      default:
        if (id.startsWith('word-')) return turnHelp(workbench, 'words', id.slice('word-'.length));
        this.verbs.find((verb) => verb.id === id)?.run();
    }
  }

  #showSlider(): void {
    const slider = this.renderRoot.querySelector('fl-stage-rule');
    slider?.scrollIntoView({ block: 'nearest' });
    slider?.shadowRoot?.querySelector('input')?.focus();
  }

  /** Esc: lets go of a line being drawn, leaves the finder, then takes back a corner of a path or a measure, then the tool, then a plane in hand, then the place on what is chosen, then that itself. Nothing is lost by it. */
  #stepBack(): void {
    const { workbench } = this;
    const { finderOpen, tool, from, place } = workbench.view;
    if (this.#stroke.cancel()) return;
    if (finderOpen) workbench.setView({ finderOpen: false });
    else if (workbench.view.help.sheet !== null) turnHelp(workbench, null);
    else if (unpickForPath(workbench)) return;
    else if (tool === 'measure' && from !== null) workbench.setView({ from: null, to: null, preview: null });
    else if (workbench.view.plane !== null && tool === 'choose') workbench.setView({ plane: null });
    else if (tool !== 'choose')
      workbench.setView({
        ...(tool === 'drawing' ? NO_PATH : {}),
        tool: 'choose',
        grip: null,
        within: null,
        cursor: null,
        walked: null,
        preview: null,
      });
    else if (place !== null) workbench.setView({ place: null, withinMm: null });
    else workbench.setView({ choice: NOTHING });
  }

  #beginWalk(): void {
    if (this.workbench.view.tool === 'walk') return this.#stepBack();
    if (!this.stage.hasScene) return;
    if (this.workbench.view.stage > 1) this.#travel.jump(0);
    beginWalk(this.workbench, (corner) => this.stage.screenOf(corner), this.stage.middle);
    this.stage.focusCanvas();
  }

  #holdSeam(isNext: boolean): void {
    if (isNext) return this.#seamHand.next();
    if (!this.stage.hasScene) return;
    if (this.workbench.view.stage > 1) this.#travel.jump(0);
    this.#seamHand.begin();
    this.stage.focusCanvas();
  }

  /** What lies over the bench is put away: the pieces are to be seen. */
  #rollTo(stage: number): void {
    const { choice } = this.workbench.view;
    if (choice.kind === 'page' || choice.kind === 'sheet') this.workbench.setView({ choice: NOTHING });
    this.#travel.go(this.workbench.view.stage, Math.min(stage, this.#lastStage()));
  }

  async #save(kind: FileKind): Promise<void> {
    if (kind === 'project') return await saveJob(this.workbench, today());
    const file = await this.workbench.makeFile(kind, today());
    if (file === null) return;
    downloadFile(file);
    noteSaved(this.workbench, kind);
    if (kind === 'pdf' || kind === 'changed') this.workbench.setView({ paperOut: this.workbench.bench.paper });
    this.workbench.setNotice({ tone: 'note', text: WORDS.notice.saved(file.name) });
  }

  #onView(event: ViewEvent): void {
    if (event.patch.stage !== undefined) this.#travel.stop();
    this.workbench.setView(event.patch);
  }

  #onChoose({ choice }: ChooseEvent): void {
    const { gluing } = this.workbench.view;
    this.workbench.setView({ choice, place: null, tool: 'choose', preview: null });
    const sheet = choice.kind === 'step' ? (gluing.shop?.gluing.steps.at(choice.step - 1)?.sheet ?? 0) : 0;
    // Its seams are lit on its own sheet of the wall.
    if (sheet > 0) this.workbench.setView({ sheet });
  }

  #onGluingMove({ step, before }: GluingMoveEvent): void {
    const { workbench } = this;
    if (before !== null) return void moveStep(workbench, step, before);
    workbench.setView({ gluing: { ...workbench.view.gluing, refused: null } });
  }

  #onPick({ pick }: StagePickEvent): void {
    const { tool, choice } = this.workbench.view;
    if (tool === 'drawing') return placeDrawing(this.workbench, this.#placeOf(pick));
    // The first click beside what is chosen lets go of it.
    if (pick.sheet !== undefined && tool === 'choose' && choice.kind === 'nothing')
      return this.stage.frame({ sheet: pick.sheet });
    this.#picks.click(pick);
  }

  #placeOf(pick: BenchPick): DrawingPlace | null {
    return placeOfPick(pick, (point) => this.stage.facing(point));
  }

  #onGrab(event: StageGrabEvent): void {
    const { pick } = event;
    // A seam in hand is moved by keys; the pointer turns the view.
    if (this.workbench.view.tool === 'move') return;
    const hands = [this.#stroke, this.#dartDrag, this.#seamDrag, this.#pathDrag];
    // Each is asked: those that do not take hold let go of what they had.
    if (hands.map((hand) => hand.grab(pick)).includes(true)) event.preventDefault();
  }

  #onDropped(): void {
    if (this.#stroke.drop() || this.#dartDrag.drop()) return;
    this.#seamDrag.drop();
    this.#pathDrag.drop();
  }

  #onStageDrag(event: StageDragEvent): void {
    this.#stroke.drag(event.pick);
    this.#dartDrag.drag(event.pick);
    this.#seamDrag.drag(event.pick);
    this.#pathDrag.drag(event.pick);
  }

  #onPlane({ plane, isDone, isByKey }: StagePlaneEvent): void {
    if (!this.#tapeHand.move(plane, isDone, isByKey)) this.#picks.movePlane(plane);
  }

  #onSample(event: SampleEvent): void {
    const sample = SAMPLES.find(({ id }) => id === event.sample);
    if (sample !== undefined) void openSample(this.workbench, sample);
  }

  /** To a line of the sheet as it is now: what was done a moment ago may still have to be drawn. */
  async #goTo(line: string, part?: string): Promise<void> {
    await customElements.whenDefined('fl-job-sheet');
    await this.updateComplete;
    await this.sheet.goTo(line, part);
  }

  /** Only what was opened by the browser's own chooser can be saved in its place. */
  async #chooseFile(): Promise<void> {
    if (!canChooseHandles() || !(await chooseFile(this.workbench))) this.chooser.click();
  }

  /** Drawn by code that is needed for nothing else. */
  async #print(): Promise<void> {
    const pages = this.workbench.bench.paper?.pages ?? [];
    const { printPages } = await import('./files/print-pages.ts');
    if (pages.length > 0) await printPages(pages);
  }

  async #onState({ ask, onDone }: StateEvent): Promise<void> {
    await askState(this.workbench, ask);
    onDone();
  }

  #onFile(): void {
    const file = this.chooser.files?.[0];
    this.chooser.value = '';
    if (file !== undefined) void openFile(this.workbench, file);
  }

  #onVersion(): void {
    const file = this.versionChooser.files?.[0];
    this.versionChooser.value = '';
    if (file !== undefined) void openNewVersion(this.workbench, file);
  }

  #chooseDrawing(): void {
    if (this.stage.hasScene) this.drawingChooser.click();
    else this.workbench.setNotice({ tone: 'problem', text: WORDS.marking.drawing.needs3d });
  }

  #onDrawing(): void {
    const file = this.drawingChooser.files?.[0];
    this.drawingChooser.value = '';
    if (file !== undefined) void openDrawing(this.workbench, file);
  }

  #onChange = (): void => {
    this.#propFeed.follow();
    this.#gluingFeed.follow();
    this.#bendFeed.follow();
    this.#tapeHand.follow();
    this.#drawingHand.follow();
    this.#layoutSearch.follow();
    this.requestUpdate();
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented) return;
    const { workbench } = this;
    const { tool, walked } = workbench.view;
    if (tool === 'walk' && isBare(event)) {
      const isWalked = walk(workbench, event.key, event.shiftKey, (corner) => this.stage.screenOf(corner));
      if (event.key === ' ' && walked !== null) turnEdge(workbench, walked);
      if (isWalked || event.key === ' ') return event.preventDefault();
    }
    if (tool === 'move' && isBare(event) && this.#seamHand.key(event.key, event.shiftKey))
      return event.preventDefault();
    if (tool === 'drawing' && this.#keyOfDrawing(event)) return event.preventDefault();
    if (
      event.key === 'Enter' &&
      workbench.view.through.length + workbench.view.spots.length > 1 &&
      !isTyping(event) &&
      !isPressed(event)
    ) {
      event.preventDefault();
      return void partAlongPath(workbench);
    }
    const wish = keyWish(event, this.verbs, workbench.wishes.letterKeys);
    if (wish === null) return;
    if (wish === 'back') return this.#stepBack();
    event.preventDefault();
    this.#do(wish === 'find' ? 'find' : wish.verb);
  };

  /** @returns true when the key moved the drawing in hand or parted along it. */
  #keyOfDrawing(event: KeyboardEvent): boolean {
    if (!isBare(event) || this.workbench.view.finderOpen) return false;
    if (event.key === 'Enter' && !isPressed(event)) {
      void partDrawing(this.workbench);
      return true;
    }
    return moveDrawing(this.workbench, event.key, event.shiftKey);
  }

  #onDrag = (event: DragEvent): void => {
    event.preventDefault();
    this.isDropping = event.dataTransfer?.types.includes('Files') ?? false;
  };

  #onDragEnd = (event: DragEvent): void => {
    if (event.relatedTarget === null) this.isDropping = false;
  };

  #onDrop = (event: DragEvent): void => {
    event.preventDefault();
    this.isDropping = false;
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) void droppedHandle(event).then((handle) => openFile(this.workbench, file, handle));
  };

  #onHide = (): void => {
    if (document.visibilityState === 'hidden') void this.workbench.autosave.flush();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-app': App;
  }
}
