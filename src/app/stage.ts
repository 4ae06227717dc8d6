import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { LengthUnit } from '../base/format-length.ts';
import { nextTask } from '../base/next-task.ts';
import type { PiecesView } from '../model/bench-view.ts';
import type { Region } from '../model/flatten-settings.ts';
import type { Project } from '../project/project.ts';
import type { BenchFacing, BenchInsets, BenchPick, FrameTarget, LookMove } from '../viewport/bench-contract.ts';
import type { BenchScene, BenchTheme } from '../viewport/bench-scene.ts';
import { isPlainHere, type PictureManner } from '../viewport/picture-manner.ts';
import { movedPlane, PLANE_STEP } from '../viewport/plane-moves.ts';
import { litByStep } from './gluing-actions.ts';
import { gluedPlaces } from './put-together.ts';
import { chosenArea, givesOfTriangles } from './chosen-area.ts';
import { EMPTY_BENCH, chainIndex, pieceIndex, type Bench } from './bench-state.ts';
import { coloursOf } from './colour-of.ts';
import { ARROWS } from './edge-walk.ts';
import { LOOK_WORDS } from './look-words.ts';
import {
  StageDragEvent,
  StageDropEvent,
  StageGrabEvent,
  StageHoverEvent,
  StagePickEvent,
  StagePlaneEvent,
  StageSectionEvent,
  StageStandEvent,
} from './stage-events.ts';
import { PLANE_KEYS, TURNS } from './stage-keys.ts';
import './stage-titles.ts';
import type { SheetTitleEvent, StageTitles } from './stage-titles.ts';
import { paintsOfTriangles } from './paint-look.ts';
import { SHARED } from './styles.ts';
import { tapesOnBench } from './tape-plane.ts';
import { FIRST_VIEW, type Pointed, type ViewState } from './view-state.ts';
import { WORDS } from './words.ts';

const THEME_COLOURS: Readonly<Record<keyof BenchTheme, string>> = {
  background: '--bench-ground',
  bench: '--bench-top',
  benchLine: '--bench-line',
  foam: '--foam',
  foamCut: '--foam-cut',
  sculpt: '--sculpt',
  seam: '--on-foam',
  line: '--sculpt-line',
  accent: '--lamp',
  words: '--on-foam',
  danger: '--wrong',
};

const NO_REGIONS: readonly Region[] = [];
const NO_TITLES: readonly string[] = [];

interface Limits {
  readonly bendPct: number;
  readonly pullNPerMm: number;
}
const FIRST_LIMITS: Limits = { bendPct: 25, pullNPerMm: 2 };
/** They are worked out at each drawing: only others are news. */
const areOther = (next: Limits, before: Limits | undefined): boolean =>
  next.bendPct !== before?.bendPct || next.pullNPerMm !== before.pullNPerMm;

/** Of all patches those that lie on the sculpt: the scene draws one sheet of foam bent, the others by their lines. */
const onBench = (pieces: PiecesView): PiecesView => ({
  ...pieces,
  patches: pieces.patches.slice(0, pieces.benchPatches),
});

/** They are put together at each drawing: only others are news. */
const isOtherList = (next: readonly string[], before: readonly string[] | undefined): boolean =>
  next.length !== before?.length || next.some((one, i) => one !== before[i]);

/** How the 3D bench stands: on its way, drawn, or not to be had in this browser. */
type Stand = 'loading' | 'drawn' | 'missing' | 'lost';

/** Pictures of the window that a canvas stays unseen at most once it has a picture. */
const MOST_BLANK_TURNS = 60;

/** Parts of the view that say what is chosen. */
const SELECTING = ['choice', 'walked', 'tool', 'grip', 'place', 'withinMm', 'gluing'] as const;

/** The bench: the 3D scene, or the same pieces drawn flat where 3D cannot be had. */
@customElement('fl-stage')
export class Stage extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        position: relative;
        overflow: hidden;
        background: var(--bench-ground);
      }
      canvas {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
        touch-action: none;
        cursor: grab;
      }
      canvas:active {
        cursor: grabbing;
      }
      :host([tool='part']) canvas,
      :host([tool='path']) canvas,
      :host([tool='drawing']) canvas,
      :host([tool='measure']) canvas {
        cursor: crosshair;
      }
      canvas:focus-visible {
        outline-offset: -4px;
      }
      canvas[hidden] {
        display: none;
      }
      /* A canvas without a picture is black: until there is one the ground is seen, and what is told on it. */
      canvas.is-blank {
        opacity: 0;
      }
      /* Told where it takes long alone. */
      .word {
        position: absolute;
        inset-block-end: 22%;
        inset-inline: 0;
        inline-size: fit-content;
        margin-inline: auto;
        padding: var(--s1) var(--s3);
        border: var(--narrow) solid var(--ink);
        background: var(--paper-high);
        pointer-events: none;
        animation: appear 1ms 500ms both;
      }
      @keyframes appear {
        from {
          visibility: hidden;
        }
        to {
          visibility: visible;
        }
      }
      .is-stale canvas {
        filter: saturate(0.4) opacity(0.75);
      }
      .lost {
        position: absolute;
        inset: 0;
        display: grid;
        place-content: center;
        text-align: center;
        padding: var(--s6);
      }
      fl-flat-bench {
        position: absolute;
        inset: 0;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench = EMPTY_BENCH;
  @property({ attribute: false }) view: ViewState = FIRST_VIEW;
  @property() up: 'x' | 'y' | 'z' = 'y';
  @property() unit: LengthUnit = 'mm';
  /** What each sheet is. */
  @property({ attribute: false, hasChanged: isOtherList }) sheetTitles: readonly string[] = [];
  /** Changes whenever the window's colours do. */
  @property() theme = '';
  /** How finely it is drawn; a change begins a new picture. */
  @property() picture: PictureManner = 'auto';
  @property({ type: Number }) limitPct = 8;
  /** Ends of the scales of bend, per cent, and of pull, N per mm. */
  @property({ attribute: false, hasChanged: areOther }) limits: Limits = FIRST_LIMITS;
  /** Areas that give otherwise than the rest: they are toned. */
  @property({ attribute: false }) regions: readonly Region[] = NO_REGIONS;
  /** What was said of the work at the bench: its colours are shown where they are asked for. */
  @property({ attribute: false }) shop: Project['shop'] = undefined;
  /** What clicks do, for the pointer's look. */
  @property({ reflect: true }) tool = 'choose';
  /** True while the picture shows an older document. */
  @property({ type: Boolean }) stale = false;
  @query('canvas') private canvas!: HTMLCanvasElement;
  @query('fl-stage-titles') private titles!: StageTitles | null;
  @query('.word') private word!: HTMLElement;
  @state() private stand: Stand = 'loading';
  /** True before the first picture. */
  @state() private isBlank = true;
  #scene: BenchScene | null = null;
  #insets: BenchInsets = { topPx: 0, bottomPx: 0 };
  #stageShown: number | null = null;
  /** Resolves when the scene is brought what it is to show, with its first picture. */
  #begun: Promise<void> = Promise.resolve();
  /** What the scene was last told of areas. */
  #given: { readonly regions: readonly Region[]; readonly sculpt: Bench['sculpt'] } | null = null;
  /** What the scene was last told of colours. */
  #painted: {
    readonly regions: readonly Region[];
    readonly shop: Project['shop'];
    readonly sculpt: Bench['sculpt'];
  } | null = null;
  /** What the tapes on the bench were drawn of. */
  #taped: { bodyFit: Bench['bodyFit']; id: string | undefined; tried: ViewState['tried'] } | null = null;
  /** What the order of gluing was read from that the scene was told last. */
  #ordered: { shop: ViewState['gluing']['shop']; pieces: PiecesView | null } | null = null;
  /** Bench that the chosen things were pointed out on last. */
  #selectedOn: Bench | null = null;
  #stillness = window.matchMedia('(prefers-reduced-motion: reduce)');
  #sizes = new ResizeObserver(() => this.#scene?.resize());

  /** Turns the view to one of six sides, or a step. */
  look(side: LookMove): void {
    this.#scene?.look(side);
  }

  frame(what: FrameTarget): void {
    this.#scene?.frame(what);
  }

  /** Place of a corner of the sculpt, px from the stage's upper left; null without 3D. */
  screenOf(corner: number): { x: number; y: number; hidden: boolean } | null {
    return this.#scene?.screenOf(corner) ?? null;
  }

  /** How much of the picture panels lie over, px. */
  set insets(insets: BenchInsets) {
    this.#insets = insets;
    this.#scene?.setInsets(insets);
  }

  get middle(): { x: number; y: number } {
    return { x: this.clientWidth / 2, y: this.clientHeight / 2 };
  }

  /** What lies in the middle of the picture; nothing without 3D. */
  pickMiddle(): BenchPick {
    return this.#scene?.pickMiddle() ?? { kind: 'nothing' };
  }

  /** How a place of the sculpt, mm, is looked at; null without 3D. */
  facing(point: readonly [number, number, number]): BenchFacing | null {
    return this.#scene?.facing(point) ?? null;
  }

  /** Whether the scene can be drawn here; pieces and lists work in any case. */
  get hasScene(): boolean {
    return this.#scene !== null;
  }

  /** Figures of the last picture, for tests. */
  get stats() {
    return this.#scene?.stats() ?? null;
  }

  /** Resolves when everything shown so far is in the picture, and the eye is at rest. */
  async settled(): Promise<void> {
    await this.#begun;
    await this.#scene?.atRest();
  }

  focusCanvas(): void {
    this.canvas.focus();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sizes.disconnect();
    this.#scene?.dispose();
    this.#scene = null;
  }

  protected override render() {
    const isFlat = this.stand === 'missing' || this.stand === 'lost';
    return html`<div class=${this.stale ? 'is-stale' : ''}>
      ${keyed(
        this.picture,
        html`<canvas
          class=${this.isBlank ? 'is-blank' : ''}
          tabindex="0"
          role="application"
          aria-label=${WORDS.stage.label}
          aria-describedby="keys"
          ?hidden=${isFlat}
          @keydown=${this.#onKey}
        ></canvas>`,
      )}
      ${
        isFlat
          ? nothing
          : html`<fl-stage-titles
              .titles=${this.bench.sheets === null ? NO_TITLES : this.sheetTitles}
              @fl-sheet-title=${({ sheet }: SheetTitleEvent) => this.frame({ sheet })}
            ></fl-stage-titles>`
      }
      <p class="word" hidden>${LOOK_WORDS.settingOut}</p>
      <p id="keys" class="unseen">${WORDS.stage.keys}</p>
      ${isFlat ? html`<fl-flat-bench .bench=${this.bench} .view=${this.view} .up=${this.up} .reason=${this.stand}></fl-flat-bench>` : nothing}
    </div>`;
  }

  protected override firstUpdated(): void {
    this.#stillness.addEventListener('change', () => this.#scene?.setReducedMotion(this.#stillness.matches));
    void this.#load();
  }

  protected override updated(changed: PropertyValues<this>): void {
    if ((changed as ReadonlyMap<PropertyKey, unknown>).has('stand'))
      this.dispatchEvent(new StageStandEvent(this.stand === 'drawn'));
    if (this.#scene === null) return;
    if (changed.has('picture')) this.#begin();
    else this.#bring(changed);
  }

  /** A new picture on a new canvas. */
  #begin(): void {
    this.#scene?.dispose();
    this.#scene = null;
    [this.#given, this.#painted, this.#taped, this.#ordered] = [null, null, null, null];
    this.isBlank = true;
    // Where the sculpt is whole, it is seen in its setting again.
    if (this.view.stage === 0) this.#stageShown = null;
    void this.#load();
  }

  async #load(): Promise<void> {
    const loading = import('../viewport/bench-scene.ts');
    // What is asked of the browser once takes it a while: in a task of its own, and while the scene is on its way.
    await nextTask();
    isPlainHere(this.picture);
    const { BenchScene } = await loading;
    if (!this.isConnected) return;
    let scene: BenchScene;
    try {
      scene = new BenchScene(
        this.canvas,
        {
          onHover: (pick) => this.dispatchEvent(new StageHoverEvent(pick)),
          onPick: (pick) => this.dispatchEvent(new StagePickEvent(pick)),
          onGrab: (pick) => !this.dispatchEvent(new StageGrabEvent(pick)),
          onDrag: (pick) => this.dispatchEvent(new StageDragEvent(pick)),
          onDrop: () => this.dispatchEvent(new StageDropEvent()),
          onPlane: (plane, isDone) => this.dispatchEvent(new StagePlaneEvent(plane, isDone)),
          onDrawn: () => this.#followTitles(),
          onSection: (figures) => this.dispatchEvent(new StageSectionEvent(figures)),
          onContextLost: () => (this.stand = 'lost'),
          onContextRestored: () => (this.stand = 'drawn'),
        },
        this.picture,
      );
    } catch {
      // No WebGL, or one that fails on the way: the job goes on with flat pieces and lists.
      this.stand = 'missing';
      return;
    }
    this.#scene = scene;
    this.stand = 'drawn';
    this.#sizes.observe(this);
    scene.setInsets(this.#insets);
    scene.setReducedMotion(this.#stillness.matches);
    this.#begun = nextTask();
    await this.#begun;
    // Another picture may have been begun meanwhile.
    if (this.#scene !== scene) return;
    this.#begun = this.#firstPicture(scene);
    this.#bring(null);
    await this.#begun;
  }

  /** Shows the canvas once it has a picture. The first one is drawn before anything was brought to the scene; a second may never be needed. */
  async #firstPicture(scene: BenchScene): Promise<void> {
    const isBlank = (turns: number): boolean => scene.stats().frames < (turns < MOST_BLANK_TURNS ? 2 : 1);
    for (let turns = 0; this.#scene === scene && isBlank(turns); turns += 1) await new Promise(requestAnimationFrame);
    if (this.#scene === scene) this.isBlank = false;
  }

  /** Says that it is being set out until what was shown so far is in the picture. */
  async #sayUntilDrawn(scene: BenchScene): Promise<void> {
    const { sculpt, plain } = this.bench;
    this.word.hidden = sculpt === null && plain.length === 0;
    await Promise.all([scene.settled(), this.#begun]);
    if (this.#scene === scene) this.word.hidden = true;
  }

  /** Brings what changed to the scene; everything when `changed` is null. */
  #bring(changed: PropertyValues<this> | null): void {
    const scene = this.#scene;
    if (scene === null) return;
    const isNew = (name: keyof Stage): boolean => changed === null || changed.has(name);
    const before = changed === null ? EMPTY_BENCH : isNew('bench') ? (changed.get('bench') ?? EMPTY_BENCH) : this.bench;
    if (isNew('theme')) scene.setTheme(this.#themeNow());
    if (isNew('up')) scene.setUpAxis(this.up);
    if (isNew('unit')) scene.setUnit(this.unit);
    if (isNew('sheetTitles')) scene.setSheetTitles(this.sheetTitles);
    if (isNew('limitPct')) scene.setStretchLimit(this.limitPct);
    if (isNew('limits')) scene.setLimits(this.limits);
    if (isNew('bench')) this.#showParts(scene, before);
    if (changed === null || this.bench.dryFit !== before.dryFit) scene.setFit(this.bench.dryFit);
    if (changed === null || this.bench.room !== before.room) scene.setRoom(this.bench.room);
    if (changed === null || this.bench.springing !== before.springing) scene.setPulls(this.bench.springing);
    if (isNew('bench') || isNew('regions')) this.#showGives(scene);
    if (this.view.colouring === 'paint' && (isNew('bench') || isNew('regions') || isNew('shop') || isNew('view')))
      this.#showPaints(scene);
    if (isNew('view') || isNew('bench')) this.#showView(scene, changed?.get('view'));
    const isMoved = isNew('view') && changed?.get('view')?.stage !== this.view.stage;
    if (isNew('bench') || isMoved) void this.#sayUntilDrawn(scene);
  }

  #showParts(scene: BenchScene, before: Bench): void {
    const { sculpt, shell, seams, pieces, sheets, plain, sculptsBeside } = this.bench;
    scene.show({
      ...(sculpt === before.sculpt ? {} : { sculpt }),
      ...(shell === before.shell ? {} : { shell }),
      ...(seams === before.seams ? {} : { seams }),
      ...(pieces === before.pieces ? {} : { pieces: pieces && onBench(pieces) }),
      ...(sheets === before.sheets ? {} : { sheets }),
      ...(plain === before.plain && sculptsBeside === before.sculptsBeside
        ? {}
        : { plain: [...plain, ...sculptsBeside] }),
    });
  }

  /** Tones areas; the scene is told only what is new to it. */
  #showGives(scene: BenchScene): void {
    const { regions } = this;
    const { sculpt } = this.bench;
    const last = this.#given;
    if (last !== null && last.regions === regions && last.sculpt === sculpt) return;
    this.#given = { regions, sculpt };
    if (regions.length > 0 || (last?.regions.length ?? 0) > 0) scene.setGives(givesOfTriangles(sculpt, regions));
  }

  /** Colours of areas; the scene is told only what is new to it. */
  #showPaints(scene: BenchScene): void {
    const { regions, shop } = this;
    const { sculpt } = this.bench;
    const last = this.#painted;
    if (last !== null && last.regions === regions && last.shop === shop && last.sculpt === sculpt) return;
    this.#painted = { regions, shop, sculpt };
    scene.setPaints(paintsOfTriangles(sculpt, regions, shop));
  }

  #showView(scene: BenchScene, before: ViewState | undefined): void {
    const { view } = this;
    const isNew = (name: keyof ViewState): boolean => before === undefined || before[name] !== view[name];
    if (isNew('stage')) this.#setStage(scene, view.stage);
    this.#showSheet(scene, before);
    if (isNew('bends')) scene.setBends(view.bends);
    if (isNew('colouring')) scene.setColouring(view.colouring);
    if (isNew('familiar')) scene.setFamiliar(view.familiar);
    if (isNew('tool')) scene.setEdgeTool(!['choose', 'drawing', 'move'].includes(view.tool));
    if (isNew('look')) scene.setLook(view.look);
    if (isNew('prop')) scene.setProp(view.prop);
    this.#showOrder(scene);
    if (isNew('plane')) {
      scene.setPlane(view.plane?.plane ?? null);
      scene.setCutOpen(view.plane?.of === 'section');
    }
    this.#showTapes(scene);
    if (isNew('pointed')) scene.setHighlight(view.pointed);
    if (isNew('preview')) scene.setPreviewEdges(view.preview);
    if (isNew('previewLines')) scene.setPreviewLines(view.previewLines);
    if (isNew('cursor') || isNew('from') || isNew('through'))
      scene.setCursorVertex(view.cursor ?? view.through.at(-1) ?? view.from);
    // Pointing out draws the scene anew: not for what has nothing to do with it, as the progress of files.
    if (this.#selectedOn === this.bench && !SELECTING.some(isNew)) return;
    this.#selectedOn = this.bench;
    scene.setSelection(this.#chosen());
  }

  /** Pieces set out anew for it: not for what else is known of gluing, as a step that was moved. */
  #showOrder(scene: BenchScene): void {
    const { pieces } = this.bench;
    const { shop } = this.view.gluing;
    if (this.#ordered?.shop === shop && this.#ordered.pieces === pieces) return;
    this.#ordered = { shop, pieces };
    scene.setGlued(gluedPlaces(shop, pieces));
  }

  #followTitles(): void {
    this.titles?.follow((sheet) => this.#scene?.titleOf(sheet) ?? null);
  }

  /** Where pieces lie on their sheets, the one that is laid over the bench is come back to when it is put away. */
  #showSheet(scene: BenchScene, before: ViewState | undefined): void {
    const { choice, stage } = this.view;
    if (choice.kind !== 'sheet' || stage < 2) return;
    if (before?.choice.kind !== 'sheet' || before.choice.sheet !== choice.sheet) scene.frame({ sheet: choice.sheet });
  }

  #showTapes(scene: BenchScene): void {
    const { bodyFit } = this.bench;
    const { plane, tried } = this.view;
    const last = this.#taped;
    if (last?.bodyFit === bodyFit && last.id === plane?.id && last.tried === tried) return;
    this.#taped = { bodyFit, id: plane?.id, tried };
    scene.setTapes(tapesOnBench(this.bench, this.view));
  }

  /** At a stop the view turns to what is to be seen there, once it is in place. */
  #setStage(scene: BenchScene, stage: number): void {
    const isFirst = this.#stageShown === null;
    this.#stageShown = stage;
    scene.setStage(stage);
    if (isFirst || !Number.isInteger(stage)) return;
    void scene.settled().then(() => {
      if (this.#stageShown === stage && this.isConnected) scene.frame(stage === 0 ? 'sculpt' : 'pieces');
    });
  }

  #chosen(): Pointed | null {
    const { choice, walked, tool, grip } = this.view;
    if (tool === 'walk') return walked === null ? null : { edges: [walked] };
    if (tool === 'move') return grip === null ? null : { point: grip.at };
    switch (choice.kind) {
      case 'seam':
        return { seams: [chainIndex(this.bench, choice.seam)] };
      case 'piece':
        return {
          pieces: [pieceIndex(this.bench, choice.piece)],
          triangles: chosenArea(this.bench, this.view)?.triangles ?? [],
        };
      case 'part':
        return { parts: [choice.part] };
      case 'step':
        return litByStep(this.bench, this.view);
      case 'finding':
        return choice.place;
      default:
        return null;
    }
  }

  #themeNow(): BenchTheme {
    const colours = coloursOf(this, Object.values(THEME_COLOURS));
    const entries = Object.keys(THEME_COLOURS).map((key, i) => [key, colours[i]]);
    return Object.fromEntries(entries) as BenchTheme;
  }

  #onKey(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const isMoved = ['walk', 'drawing', 'move'].includes(this.view.tool);
    if (isMoved && (event.key in ARROWS || event.key === ' ' || event.key === 'Backspace')) return;
    if (this.#keyOfPlane(event)) return;
    const isShifted = event.shiftKey && event.key in ARROWS;
    const move = TURNS[isShifted ? `Shift ${event.key}` : event.key === ' ' ? 'Space' : event.key];
    if (move === undefined) return;
    event.preventDefault();
    this.#scene?.look(move);
  }

  /** While a plane is in hand arrow keys move it and lean it. @returns true when the key was one of these. */
  #keyOfPlane(event: KeyboardEvent): boolean {
    const inHand = this.view.plane;
    const move = PLANE_KEYS[`${event.shiftKey ? 'Shift ' : ''}${event.key}`];
    if (inHand === null || move === undefined) return false;
    event.preventDefault();
    const isCoarse = event.shiftKey;
    const plane = movedPlane(inHand.plane, move, isCoarse ? PLANE_STEP.coarseMm : PLANE_STEP.mm);
    this.dispatchEvent(new StagePlaneEvent(plane, true, true));
    return true;
  }
}
