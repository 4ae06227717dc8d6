import { Vector3, type Box3 } from 'three';
import type { LengthUnit } from '../base/format-length.ts';
import type { PiecesView, PropView, SculptView, SeamsView, ShellView } from '../model/bench-view.ts';
import type { FormView } from './plain-forms.ts';
import type { DryFit } from '../model/dry-fit.ts';
import type { BendField } from '../model/bend-field.ts';
import type { RoomField } from '../model/room-field.ts';
import type { Springing } from '../model/springing.ts';
import type { SheetLayout } from '../model/sheet.ts';
import { Aim, type Sight } from './aim.ts';
import type {
  BenchEvents,
  BenchFacing,
  BenchInsets,
  BenchPick,
  BenchPlane,
  BenchStats,
  BenchTapes,
  Colouring,
  Familiar,
  FrameTarget,
  Highlight,
  Look,
  LookMove,
  UpAxis,
} from './bench-contract.ts';
import { BenchPicker } from './bench-picker.ts';
import { BenchShow } from './bench-show.ts';
import type { BenchTheme } from './bench-theme.ts';
import type { ScreenPoint } from './edge-finder.ts';
import { Framing } from './framing.ts';
import { looked, sideOf } from './look-moves.ts';
import { OrbitPointer } from './orbit-pointer.ts';
import { isPlainHere, type PictureManner } from './picture-manner.ts';
import { Studio } from './studio.ts';
import { Turntable } from './turntable.ts';

export type {
  BenchEvents,
  BenchPick,
  BenchPlane,
  BenchStats,
  Colouring,
  Familiar,
  FrameTarget,
  Highlight,
  LookMove,
  UpAxis,
};
export type { BenchTheme };
export { NoWebGl } from './bench-contract.ts';

/** Parts that change; a part left out stays as it was, null takes it away. */
export interface BenchViews {
  readonly sculpt?: SculptView | null;
  readonly shell?: ShellView | null;
  readonly seams?: SeamsView | null;
  readonly pieces?: PiecesView | null;
  readonly sheets?: SheetLayout | null;
  /** Other parts and sculpts that stand beside it. */
  readonly plain?: readonly FormView[];
}

/** The view that a new sculpt is first seen from: a little from the right and above. */
const FIRST_YAW = 0.34;
const FIRST_PITCH = 0.44;

/**
 * The bench: one 3D scene of the sculpt, its foam, the pieces on their way and the sheets they lie on. Draws only when something
 * changed; long work is done in slices. Holds no state of the job: it shows the records it is given and tells what is pointed at.
 */
export class BenchScene {
  readonly #events: BenchEvents;
  readonly #canvas: HTMLCanvasElement;
  readonly #studio: Studio;
  readonly #show: BenchShow;
  readonly #pointer: OrbitPointer;
  readonly #framing: Framing;
  readonly #turntable: Turntable;
  readonly #opening: Promise<void>;
  #isEdgeTool = false;
  #hoverAt: { x: number; y: number } | null = null;
  #hoverRequest = 0;
  #isHoverLate = false;
  #lastHover = '';
  #dragAt: { x: number; y: number } | null = null;
  #dragRequest = 0;
  #isFollowing = false;
  /** Where the plane in hand was dragged to last. */
  #dragged: BenchPlane | null = null;

  /** @throws NoWebGl when this browser cannot draw in 3D. */
  constructor(canvas: HTMLCanvasElement, events: BenchEvents, manner: PictureManner = 'auto') {
    this.#events = events;
    this.#canvas = canvas;
    this.#studio = new Studio(
      canvas,
      isPlainHere(manner),
      (pxPerMm) => this.#show.beforeDraw(pxPerMm),
      () => events.onDrawn(),
      () => events.onContextLost(),
      () => events.onContextRestored(),
    );
    this.#turntable = new Turntable(canvas, this.#studio);
    this.#framing = new Framing(this.#studio, (what) => this.#boxesOf(what));
    this.#show = new BenchShow(
      this.#studio,
      (isFirst) => {
        if (isFirst) this.#framing.frame('setting', true, FIRST_YAW, FIRST_PITCH);
      },
      (figures) => events.onSection(figures),
    );
    this.#pointer = new OrbitPointer(canvas, {
      orbit: () => this.#studio.orbit,
      bounds: () => this.#studio.bounds,
      setOrbit: (orbit) => this.#studio.setOrbit(orbit),
      pointUnder: (x, y) => this.#aimed()?.pointAt({ x, y }) ?? this.#studio.orbit.target,
      hovered: (x, y) => {
        this.#hoverAt = { x, y };
        this.#hoverSoon();
      },
      left: () => {
        this.#hoverAt = null;
        this.#tellHover({ kind: 'nothing' });
      },
      clicked: (x, y, keys) => {
        if (!this.#dropPlane()) events.onPick(this.#pickAt({ x, y }), keys);
      },
      clickedTwice: (x, y) => this.#frameAt({ x, y }),
      grabbed: (x, y) => {
        const isGrabbed = this.#grabPlane({ x, y }) || events.onGrab(this.#pickAt({ x, y }));
        if (isGrabbed) {
          this.#framing.work();
          this.#studio.stay();
        }
        return isGrabbed;
      },
      dragged: (x, y) => {
        this.#dragAt = { x, y };
        if (this.#dragRequest === 0) this.#dragRequest = requestAnimationFrame(() => this.#drag());
      },
      dropped: () => {
        this.#drag();
        if (!this.#dropPlane()) events.onDrop();
      },
    });
    this.#opening = this.#studio.open();
  }

  /** Shows new records. Large ones appear a little later, without holding up the window; {@link settled} tells when. */
  show(views: BenchViews): void {
    const before = this.#show.shown;
    this.#show.shown = {
      sculpt: views.sculpt === undefined ? before.sculpt : views.sculpt,
      shell: views.shell === undefined ? before.shell : views.shell,
      seams: views.seams === undefined ? before.seams : views.seams,
      pieces: views.pieces === undefined ? before.pieces : views.pieces,
      sheets: views.sheets === undefined ? before.sheets : views.sheets,
      plain: views.plain ?? before.plain,
    };
    if (views.sheets !== undefined && views.sheets !== before.sheets) this.#keepSetting();
    // A part that comes beside what is seen is brought into the picture.
    if (views.plain !== undefined && views.plain.length > before.plain.length) this.#keepInSight();
  }

  /** Resolves when everything shown so far is in the picture, the ways of all pieces included. */
  async settled(): Promise<void> {
    await this.#opening;
    await this.#show.settled();
  }

  /** Resolves when, besides, the eye is where it was sent. */
  async atRest(): Promise<void> {
    await this.settled();
    while (this.#studio.isTravelling) await new Promise(requestAnimationFrame);
  }

  /** Where the pieces are: 0 whole, 1 apart, 2 flat above their places, 3 on the sheet; anything between. */
  setStage(value: number): void {
    this.#show.stage = Math.max(0, Math.min(3, value));
  }

  /** How the finished pieces meet: drawn along their seams while the colouring is `fit`. */
  setFit(fit: DryFit | null): void {
    this.#show.fit = fit;
  }

  /** Room round the cores, drawn while the colouring is `room`. */
  setRoom(room: RoomField | null): void {
    this.#show.room = room;
  }

  /** How the foam bends all over, shown while the colouring is `bend`. */
  setBends(bends: BendField | null): void {
    this.#show.bends = bends;
  }

  /** What joints carry, drawn while the colouring is `pull`. */
  setPulls(pulls: Springing | null): void {
    this.#show.pulls = pulls;
  }

  /** Ends of the scales of bend, per cent, and of pull, N per mm; both > 0. */
  setLimits(limits: { readonly bendPct: number; readonly pullNPerMm: number }): void {
    this.#show.limits = limits;
  }

  setColouring(kind: Colouring): void {
    this.#show.colouring = kind;
  }

  /** How areas give, per triangle of the sculpt: 0 as the rest, 1 stiff, 2 soft. They are toned while no measure is shown. */
  setGives(gives: Uint8Array): void {
    this.#show.gives = gives;
  }

  /** Colours that areas are painted in, per triangle of the sculpt as 0xrrggbb, -1 for bare foam: shown while the colouring is `paint`. */
  setPaints(paints: Int32Array): void {
    this.#show.paints = paints;
  }

  /** Ends of the colours of stretch, per cent, > 0. */
  setStretchLimit(pct: number): void {
    this.#show.limitPct = pct;
  }

  /** What is pointed at, here or elsewhere on the screen. */
  setHighlight(highlight: Highlight | null): void {
    this.#show.pointing.highlight = highlight;
    this.#show.markParts();
    this.#show.pointOut();
  }

  /** What is chosen. */
  setSelection(selection: Highlight | null): void {
    this.#show.pointing.selection = selection;
    this.#show.markParts();
    this.#show.pointOut();
  }

  /** Edges of the topology that a click would part. */
  setPreviewEdges(edges: readonly number[] | null): void {
    this.#show.pointing.previewEdges = edges;
    this.#show.pointOut();
  }

  /** Lines that would be drawn across faces, packed xyz, mm, model space. */
  setPreviewLines(lines: readonly ArrayLike<number>[] | null): void {
    if (lines !== null) this.#framing.work();
    this.#show.pointing.previewLines = lines ?? [];
    this.#show.pointOut();
  }

  /** The vertex where the keyboard stands. */
  setCursorVertex(v: number | null): void {
    this.#show.pointing.cursor = v;
    this.#show.pointOut();
  }

  /** While on, the pointer finds the nearest edge of the sculpt, and all its edges are faintly drawn. */
  setEdgeTool(on: boolean): void {
    this.#isEdgeTool = on;
    this.#show.isEdgeTool = on;
  }

  /** A plane in hand, or null: {@link BenchEvents.onPlane} tells where it is dragged to, and it stays until it is set there. */
  setPlane(plane: BenchPlane | null): void {
    this.#show.plane = plane;
  }

  /** Tapes that are laid round the sculpt. */
  setTapes(tapes: BenchTapes): void {
    this.#show.tapes = tapes;
  }

  /** Cuts everything open at the plane in hand: what its normal points to is taken away. */
  setCutOpen(isCutOpen: boolean): void {
    this.#show.isCutOpen = isCutOpen;
  }

  /** What was cut, put together, or null: seen while it is looked at. */
  setProp(prop: PropView | null): void {
    this.#show.prop = prop;
    if (!this.#show.isWhole) this.#keepInSight();
  }

  /** By piece, the lower the earlier it is glued: what is glued last comes off first. Empty where that is not known. */
  setGlued(glued: readonly number[]): void {
    this.#show.glued = glued;
  }

  /** What is looked at while nothing has come off: the foam, or one surface. */
  setLook(look: Look): void {
    this.#show.look = look;
  }

  /** What each sheet is, in their order: written on the bench behind it. */
  setSheetTitles(titles: readonly string[]): void {
    this.#show.sheetTitles = titles;
  }

  /** Unit of figures that stand in the scene. */
  setUnit(unit: LengthUnit): void {
    this.#show.unit = unit;
  }

  setUpAxis(axis: UpAxis): void {
    this.#show.up = axis;
  }

  setTheme(theme: BenchTheme): void {
    this.#show.theme = theme;
  }

  setReducedMotion(on: boolean): void {
    this.#studio.isReduced = on;
  }

  /** A thing of known size beside the sculpt. */
  setFamiliar(kind: Familiar): void {
    this.#show.familiar = kind;
  }

  /** Turns the view to something, from where it is seen now. */
  frame(what: FrameTarget): void {
    this.#turntable.stop();
    this.#framing.goTo(what);
  }

  /** Panels came to lie over the picture, or went. */
  setInsets(insets: BenchInsets): void {
    this.#framing.setInsets(insets);
  }

  look(move: LookMove): void {
    if (move === 'round') return this.#turntable.toggle();
    this.#turntable.stop();
    const side = sideOf(move);
    if (move === 'return') this.#framing.back();
    else if (side !== null) this.#framing.goToSide(side);
    else this.#studio.travelTo(looked(this.#studio.goal, move), false);
  }

  /** Where a vertex of the sculpt is seen, CSS px in the canvas; null behind the eye or while nothing is shown. */
  screenOf(vertex: number): { x: number; y: number; hidden: boolean } | null {
    return this.#aimed()?.screenOf(vertex) ?? null;
  }

  /** Round the title of a sheet where it is seen, CSS px in the canvas; null behind the eye or where there is none. */
  titleOf(sheet: number): DOMRectReadOnly | null {
    const box = this.#show.titleBox(sheet);
    if (box.isEmpty()) return null;
    const { projection } = this.#aim();
    const corners = [box.min.x, box.max.x].flatMap((x) =>
      [box.min.z, box.max.z].map((z) => projection.at([x, 0, z], 0)),
    );
    const [xs, ys] = [corners.map((at) => at?.x ?? NaN), corners.map((at) => at?.y ?? NaN)];
    const [left, top] = [Math.min(...xs), Math.min(...ys)];
    return Number.isNaN(left) ? null : new DOMRectReadOnly(left, top, Math.max(...xs) - left, Math.max(...ys) - top);
  }

  /** What lies in the middle of the picture; where the sculpt is not there, or stands in its setting, in the middle of the sculpt. */
  pickMiddle(): BenchPick {
    const { widthPx, heightPx, riseGoalPx } = this.#studio;
    const middle = this.#show.boxes.sculpt.getCenter(new Vector3()).toArray();
    const ofSculpt = this.#pickAt(this.#aim().projection.at(middle, 0) ?? { x: -1, y: -1 });
    if (this.#framing.seen === 'setting' && ofSculpt.triangle !== undefined) return ofSculpt;
    const ofPicture = this.#pickAt({ x: widthPx / 2, y: heightPx / 2 - riseGoalPx });
    return ofPicture.triangle === undefined && ofSculpt.triangle !== undefined ? ofSculpt : ofPicture;
  }

  /** How a place of the sculpt, mm, is looked at; null while nothing is shown. */
  facing(point: readonly [number, number, number]): BenchFacing | null {
    const { solid } = this.#show;
    return solid === null ? null : this.#aim().facing(point, solid.sceneFromModel);
  }

  stats(): BenchStats {
    return this.#studio.stats();
  }

  /** Must follow every change of the canvas's size. */
  resize(): void {
    this.#studio.resize();
    this.#framing.keep();
  }

  snapshot(): Promise<Blob> {
    return this.#studio.snapshot();
  }

  dispose(): void {
    cancelAnimationFrame(this.#hoverRequest);
    cancelAnimationFrame(this.#dragRequest);
    this.#turntable.stop();
    this.#pointer.dispose();
    this.#show.dispose();
    this.#studio.dispose();
  }

  #boxesOf(what: FrameTarget): readonly Box3[] {
    const { boxes } = this.#show;
    if (what === 'all') return [boxes.top, boxes.sculpt];
    if (what === 'setting') return boxes.before.isEmpty() ? [boxes.sculpt] : [boxes.sculpt, boxes.before];
    const box = what === 'sculpt' ? boxes.sculpt : this.#boxOf(what);
    return [box.isEmpty() ? boxes.sculpt : box];
  }

  #boxOf(what: Exclude<FrameTarget, 'all' | 'setting' | 'sculpt'>): Box3 {
    if (what === 'pieces') return this.#show.pieceBox(null);
    if ('piece' in what) return this.#show.pieceBox(what.piece);
    return 'seam' in what ? this.#show.seamBox(what.seam) : this.#show.sheetBox(what.sheet);
  }

  /** Two clicks bring what is pointed at into the picture; on nothing, the whole. */
  #frameAt(pointer: ScreenPoint): void {
    // With the knife each click parts.
    if (this.#isEdgeTool) return;
    const { kind, seam, piece, sheet } = this.#pickAt(pointer);
    if (seam !== undefined && kind === 'edge') this.frame({ seam });
    else if (piece !== undefined) this.frame({ piece });
    else if (sheet !== undefined) this.frame({ sheet });
    else this.frame(kind === 'nothing' ? 'setting' : 'sculpt');
  }

  /** Sheets that come to lie before the sculpt, once they do: a picture of its setting has them in it. */
  #keepSetting(): void {
    void this.#show.settled().then(() => {
      if (this.#framing.held === 'setting') this.#framing.again(false);
    });
  }

  /** Once all plates are where they go. */
  #keepInSight(): void {
    if (this.#isFollowing) return;
    this.#isFollowing = true;
    void this.#show.settled().then(() => {
      this.#isFollowing = false;
      if (this.#show.isWhole) this.#framing.frame('sculpt', false);
      else if (this.#show.isPropSeen) this.#framing.frame('pieces', false);
    });
  }

  /** A picker for the view as it is now. */
  #aimed(): BenchPicker | null {
    const { solid, isWhole } = this.#show;
    if (solid === null) return null;
    const { base, seams, pieces, body, localOfTriangle, sceneFromModel, form } = solid;
    return new BenchPicker(
      {
        sculpt: base.sculpt,
        index: base.index,
        tree: base.tree,
        seams,
        pieces,
        localOfTriangle,
        body,
        formCorners: form.positions,
        sceneFromModel,
        isWhole,
        sheetHit: (origin, direction) => this.#show.sheetHit(origin, direction),
        left: (sight) => this.#show.inside.section.beyond(sight),
      },
      this.#aim(),
    );
  }

  /** How the scene is seen now. */
  #aim(): Aim {
    this.#studio.aim();
    return new Aim(this.#studio.camera, this.#studio.widthPx, this.#studio.heightPx);
  }

  #grabPlane(pointer: ScreenPoint): boolean {
    const { handle } = this.#show;
    if (handle.plane === null) return false;
    const aim = this.#aim();
    const grip = handle.gripAt(pointer, aim.projection);
    return grip !== null && handle.grab(grip, aim.sightAt(pointer));
  }

  /** @returns whether a plane was held. */
  #dropPlane(): boolean {
    const { handle } = this.#show;
    if (!handle.isHeld) return false;
    handle.letGo();
    const plane = this.#dragged ?? handle.plane;
    this.#dragged = null;
    if (plane !== null) this.#events.onPlane(plane, true);
    return true;
  }

  /** The first move of a frame is followed at once, so that what it points at is lit in the picture of that frame; others wait for the next. */
  #hoverSoon(): void {
    if (this.#hoverRequest !== 0) return void (this.#isHoverLate = true);
    this.#hoverRequest = requestAnimationFrame(() => {
      this.#hoverRequest = 0;
      if (!this.#isHoverLate) return;
      this.#isHoverLate = false;
      this.#hover();
    });
    this.#hover();
  }

  #hover(): void {
    if (this.#hoverAt === null || this.#pointer.isDragging) return;
    const { handle } = this.#show;
    const grip = handle.plane === null ? null : handle.gripAt(this.#hoverAt, this.#aim().projection);
    this.#canvas.style.cursor = grip === null ? '' : 'move';
    this.#tellHover(this.#pickAt(this.#hoverAt));
  }

  #drag(): void {
    cancelAnimationFrame(this.#dragRequest);
    this.#dragRequest = 0;
    if (this.#dragAt === null) return;
    const { handle } = this.#show;
    if (handle.isHeld) {
      const plane = handle.dragTo(this.#aim().sightAt(this.#dragAt));
      if (plane !== null) this.#events.onPlane((this.#dragged = plane), false);
    } else this.#events.onDrag(this.#pickAt(this.#dragAt));
    this.#dragAt = null;
  }

  #pickAt(pointer: ScreenPoint): BenchPick {
    const { section, prop } = this.#show.inside;
    const sight = this.#aim().sightAt(pointer);
    const cut = section.hit(sight);
    if (cut === null && this.#show.isPropSeen) {
      const piece = prop.pieceAt(section.beyond(sight));
      return piece < 0 ? { kind: 'nothing' } : { kind: 'piece', piece };
    }
    const picker = this.#aimed();
    if (cut === null || picker === null)
      return this.#pickBeside(sight, picker?.pick(pointer, this.#isEdgeTool) ?? null);
    // What stands before the cut was taken away.
    return {
      kind: 'piece',
      ...(cut.piece < 0 ? {} : { piece: cut.piece }),
      ...(cut.thicknessMm === null ? {} : { thicknessMm: cut.thicknessMm }),
    };
  }

  /** What was picked, or the form of another part where that stands before it. */
  #pickBeside({ origin, direction }: Sight, pick: BenchPick | null): BenchPick {
    const part = this.#show.forms.hit(origin, direction);
    if (part === null) return pick ?? this.#sheetAt(origin, direction);
    const { solid } = this.#show;
    const at = pick?.point;
    const isBehind =
      at !== undefined &&
      solid !== null &&
      new Vector3(...at).applyMatrix4(solid.sceneFromModel).distanceTo(origin) < part.distance;
    return isBehind && pick !== null ? pick : { kind: 'part', part: part.part };
  }

  /** Where no sculpt stands sheets are all that can be met. */
  #sheetAt(origin: Vector3, direction: Vector3): BenchPick {
    const sheet = this.#show.sheetHit(origin, direction);
    return sheet === null ? { kind: 'nothing' } : { kind: 'sheet', sheet: sheet.sheet };
  }

  #tellHover(pick: BenchPick): void {
    const text = JSON.stringify(pick);
    if (text === this.#lastHover) return;
    this.#lastHover = text;
    this.#events.onHover(pick);
  }
}
