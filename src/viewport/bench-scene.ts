import { Box3, Vector3 } from 'three';
import { Cancelled } from '../base/work.ts';
import type { PiecesView, SculptView, SeamsView, ShellView } from '../model/bench-view.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type {
  BenchEvents,
  BenchPick,
  BenchStats,
  Colouring,
  Familiar,
  FrameTarget,
  Highlight,
  LookMove,
  UpAxis,
} from './bench-contract.ts';
import { BenchPicker } from './bench-picker.ts';
import { coloursOf, PAPER_THEME, type BenchColours, type BenchTheme } from './bench-theme.ts';
import { BenchTop } from './bench-top.ts';
import { arrange, buildSculpt, buildSolid, type SculptDisplay, type Shown, type SolidDisplay } from './display.ts';
import { FamiliarThing } from './familiar.ts';
import { findPointed, findThreads, type OnBench } from './find-pointed.ts';
import { cutFaceMaterial, sculptMaterial, showGrain, skinMaterial } from './foam-materials.ts';
import { Ink } from './ink.ts';
import { whereabouts, type Journey } from './journey.ts';
import { LineBatch } from './line-batch.ts';
import { looked } from './look-moves.ts';
import { MeshEdges } from './mesh-edges.ts';
import { framed } from './orbit.ts';
import { OrbitPointer } from './orbit-pointer.ts';
import { paintSolid } from './painting.ts';
import { PointedOut } from './pointed-out.ts';
import { SheetsView } from './sheets-view.ts';
import { Slices } from './slices.ts';
import { Studio } from './studio.ts';
import { drawAlong } from './surface-lines.ts';
import { SurfaceObject } from './surface-object.ts';

export type { BenchEvents, BenchPick, BenchStats, Colouring, Familiar, FrameTarget, Highlight, LookMove, UpAxis };
export type { BenchTheme };
export { NoWebGl } from './bench-contract.ts';

/** Parts that change; a part left out stays as it was, null takes it away. */
export interface BenchViews {
  readonly sculpt?: SculptView | null;
  readonly shell?: ShellView | null;
  readonly seams?: SeamsView | null;
  readonly pieces?: PiecesView | null;
  readonly sheets?: SheetLayout | null;
}

const FONT = '"Atkinson Hyperlegible Next Variable", "Atkinson Hyperlegible Next", Verdana, sans-serif';
/** From here on pieces are off the sculpt, all flat, all down. */
const APART_FROM = 0.004;
const FLAT_FROM = 1.995;
const DOWN_FROM = 2.98;
/** The view that a new sculpt is first seen from: a little from the right and above. */
const FIRST_YAW = 0.42;
const FIRST_PITCH = 0.42;
const FRAME_MARGIN = 0.06;

/**
 * The bench: one 3D scene of the sculpt, its foam, the pieces on their way and the sheets they lie on. Draws only when something
 * changed; long work is done in slices. Holds no state of the job: it shows the records it is given and tells what is pointed at.
 */
export class BenchScene {
  readonly #events: BenchEvents;
  readonly #studio: Studio;
  readonly #pointer: OrbitPointer;
  readonly #top = new BenchTop(FONT);
  readonly #sheets = new SheetsView();
  readonly #ink = new Ink(FONT);
  readonly #familiar = new FamiliarThing();
  readonly #edges = new MeshEdges();
  readonly #form = new SurfaceObject(sculptMaterial());
  readonly #skins = new SurfaceObject(skinMaterial());
  readonly #walls = new SurfaceObject(cutFaceMaterial());
  readonly #lines = {
    seams: new LineBatch({ widthPx: 2.2 }),
    open: new LineBatch({ widthPx: 1.4 }),
    ridges: new LineBatch({ widthPx: 1, opacity: 0.5 }),
    formSeams: new LineBatch({ widthPx: 1.6 }),
    pointedThreads: new LineBatch({ widthPx: 1.2, isOnTop: true, opacity: 0.9, renderOrder: 9 }),
    chosenThreads: new LineBatch({ widthPx: 1.2, isOnTop: true, opacity: 0.9, renderOrder: 10 }),
  };
  readonly #pointed = {
    highlight: new PointedOut(3.5, 6),
    selection: new PointedOut(4, 7),
    preview: new PointedOut(4, 8, [5, 3]),
    cursor: new PointedOut(4, 9),
  };
  #shown: Shown = { sculpt: null, shell: null, seams: null, pieces: null, sheets: null };
  #colours: BenchColours = coloursOf(PAPER_THEME);
  #up: UpAxis = 'y';
  #colouring: Colouring = 'plain';
  #limitPct = 8;
  #stage = 0;
  #isEdgeTool = false;
  #highlight: Highlight | null = null;
  #selection: Highlight | null = null;
  #previewEdges: readonly number[] | null = null;
  #cursor: number | null = null;

  #base: SculptDisplay | null = null;
  #solid: SolidDisplay | null = null;
  #journeys: readonly Journey[] = [];
  #lift = 0;
  #work: Slices | null = null;
  readonly #opening: Promise<void>;
  #working: Promise<void> = Promise.resolve();
  #isPosing = false;
  #poseAgain = false;
  #hoverAt: { x: number; y: number } | null = null;
  #hoverRequest = 0;
  #lastHover = '';
  #isDisposed = false;

  /** @throws NoWebGl when this browser cannot draw in 3D. */
  constructor(canvas: HTMLCanvasElement, events: BenchEvents) {
    this.#events = events;
    this.#studio = new Studio(
      canvas,
      (pxPerMm) => this.#beforeDraw(pxPerMm),
      () => events.onContextLost(),
      () => events.onContextRestored(),
    );
    this.#studio.add(
      this.#top.object,
      this.#sheets.object,
      this.#form.object,
      this.#skins.object,
      this.#walls.object,
      this.#ink.object,
      this.#familiar.object,
      this.#edges.object,
      ...Object.values(this.#lines).map(({ object }) => object),
      ...Object.values(this.#pointed).map(({ object }) => object),
    );
    this.#pointer = new OrbitPointer(canvas, {
      orbit: () => this.#studio.orbit,
      bounds: () => this.#studio.bounds,
      setOrbit: (orbit) => this.#studio.setOrbit(orbit),
      pointUnder: (x, y) => this.#aimed()?.pointAt({ x, y }) ?? this.#studio.orbit.target,
      hovered: (x, y) => {
        this.#hoverAt = { x, y };
        if (this.#hoverRequest === 0) this.#hoverRequest = requestAnimationFrame(() => this.#hover());
      },
      left: () => {
        this.#hoverAt = null;
        this.#tellHover({ kind: 'nothing' });
      },
      clicked: (x, y, keys) =>
        events.onPick(this.#aimed()?.pick({ x, y }, this.#isEdgeTool) ?? { kind: 'nothing' }, keys),
    });
    this.#paint();
    this.#layOut();
    this.#opening = this.#studio.open();
  }

  /** Shows new records. Large ones appear a little later, without holding up the window; {@link settled} tells when. */
  show(views: BenchViews): void {
    const before = this.#shown;
    this.#shown = {
      sculpt: views.sculpt === undefined ? before.sculpt : views.sculpt,
      shell: views.shell === undefined ? before.shell : views.shell,
      seams: views.seams === undefined ? before.seams : views.seams,
      pieces: views.pieces === undefined ? before.pieces : views.pieces,
      sheets: views.sheets === undefined ? before.sheets : views.sheets,
    };
    this.#rebuild();
  }

  /** Resolves when everything shown so far is in the picture, the ways of all pieces included. */
  async settled(): Promise<void> {
    await this.#opening;
    for (let seen: Promise<void> | null = null; seen !== this.#working;) {
      seen = this.#working;
      await seen;
    }
    while (this.#isPosing) await new Promise((resolve) => setTimeout(resolve));
  }

  /** Where the pieces are: 0 whole, 1 apart, 2 flat above their places, 3 on the sheet; anything between. */
  setStage(value: number): void {
    const stage = Math.max(0, Math.min(3, value));
    if (stage === this.#stage) return;
    this.#stage = stage;
    void this.#pose();
  }

  setColouring(kind: Colouring): void {
    this.#colouring = kind;
    this.#paint();
  }

  /** Ends of the colours of stretch, per cent, > 0. */
  setStretchLimit(pct: number): void {
    this.#limitPct = pct;
    this.#paint();
  }

  /** What is pointed at, here or elsewhere on the screen. */
  setHighlight(highlight: Highlight | null): void {
    this.#highlight = highlight;
    this.#pointOut();
  }

  /** What is chosen. */
  setSelection(selection: Highlight | null): void {
    this.#selection = selection;
    this.#pointOut();
  }

  /** Edges of the topology that a click would part. */
  setPreviewEdges(edges: readonly number[] | null): void {
    this.#previewEdges = edges;
    this.#pointOut();
  }

  /** The vertex where the keyboard stands. */
  setCursorVertex(v: number | null): void {
    this.#cursor = v;
    this.#pointOut();
  }

  /** While on, the pointer finds the nearest edge of the sculpt, and all its edges are faintly drawn. */
  setEdgeTool(on: boolean): void {
    this.#isEdgeTool = on;
    this.#drawLines();
  }

  setUpAxis(axis: UpAxis): void {
    if (axis === this.#up) return;
    this.#up = axis;
    this.#solid = null;
    this.#rebuild();
  }

  setTheme(theme: BenchTheme): void {
    this.#colours = coloursOf(theme);
    this.#paint();
  }

  setReducedMotion(on: boolean): void {
    this.#studio.isReduced = on;
  }

  /** A thing of known size beside the sculpt. */
  setFamiliar(kind: Familiar): void {
    this.#familiar.set(kind);
    this.#layOut();
  }

  /** Turns the view to something, from where it is seen now. */
  frame(what: FrameTarget): void {
    this.#frame(what, false);
  }

  look(side: LookMove): void {
    this.#studio.travelTo(looked(this.#studio.goal, side), false);
  }

  /** Where a vertex of the sculpt is seen, CSS px in the canvas; null behind the eye or while nothing is shown. */
  screenOf(vertex: number): { x: number; y: number; hidden: boolean } | null {
    return this.#aimed()?.screenOf(vertex) ?? null;
  }

  stats(): BenchStats {
    return this.#studio.stats();
  }

  /** Must follow every change of the canvas's size. */
  resize(): void {
    this.#studio.resize();
  }

  snapshot(): Promise<Blob> {
    return this.#studio.snapshot();
  }

  dispose(): void {
    this.#isDisposed = true;
    this.#work?.stop();
    this.#pointer.dispose();
    this.#forget();
    for (const part of [this.#top, this.#sheets, this.#ink, this.#familiar, this.#edges]) part.dispose();
    for (const part of [...Object.values(this.#lines), ...Object.values(this.#pointed)]) part.dispose();
    for (const part of [this.#form, this.#skins, this.#walls]) part.dispose();
    this.#studio.dispose();
  }

  #rebuild(): void {
    this.#work?.stop();
    const work = new Slices();
    this.#work = work;
    this.#working = this.#build(work).catch((error: unknown) => {
      if (!(error instanceof Cancelled)) throw error;
    });
  }

  async #build(work: Slices): Promise<void> {
    const shown = this.#shown;
    if (shown.sculpt === null) {
      this.#base = null;
      this.#forget();
      this.#layOut();
      return;
    }
    const isNewSculpt = this.#base?.sculpt !== shown.sculpt;
    const base = this.#base !== null && !isNewSculpt ? this.#base : await buildSculpt(shown.sculpt, work);
    const solid = this.#solid;
    const isSame =
      solid !== null &&
      solid.base === base &&
      solid.shell === shown.shell &&
      solid.seams === shown.seams &&
      solid.pieces === shown.pieces;
    if (!isSame) {
      const fresh = await buildSolid(base, shown, this.#up, work);
      const isFirst = solid === null || !isAlike(solid.box, fresh.box);
      this.#forget();
      this.#base = base;
      this.#solid = fresh;
      this.#form.set(fresh.form.parts);
      this.#skins.set(fresh.body?.skins.parts ?? []);
      this.#walls.set(fresh.body === null ? [] : [fresh.body.walls]);
      this.#layOut();
      this.#paint();
      await this.#pose();
      if (isFirst) this.#frame(shown.sheets === null ? 'sculpt' : 'all', true, FIRST_YAW, FIRST_PITCH);
    } else {
      this.#layOut();
      await this.#pose();
    }
    await this.#prepareRolls(work);
  }

  /** Works out how each piece rolls flat; then the pieces may go on. */
  async #prepareRolls(work: Slices): Promise<void> {
    const patches = this.#solid?.body?.patches ?? [];
    if (patches.every((patch) => patch.canRoll || patch.shape.flat === null)) return;
    for (const patch of patches) await patch.prepare(work);
    this.#layOut();
    if (this.#stage > 0) await this.#pose();
  }

  /** Lays bench, sheets and printed lines for what is on show. */
  #layOut(): void {
    const { sheets } = this.#shown;
    const solid = this.#solid;
    const box = solid?.box ?? new Box3(new Vector3(-150, 0, -150), new Vector3(150, 1, 150));
    const all = box.clone();
    if (solid === null) {
      this.#journeys = [];
      this.#top.set({ minX: -300, maxX: 300, minZ: -200, maxZ: 200 }, true);
      all.expandByPoint(new Vector3(-300, 0, -200)).expandByPoint(new Vector3(300, 0, 200));
    } else {
      const { places, journeys, lift } = arrange(solid, sheets);
      this.#journeys = journeys;
      this.#lift = lift;
      const { minX, maxX, minZ, maxZ } = places.layout.top;
      this.#familiar.stand(box);
      const familiar = this.#familiar.box();
      const top = { minX: Math.min(minX, familiar.min.x - 40), maxX: Math.max(maxX, familiar.max.x + 40), minZ, maxZ };
      this.#top.set(top, solid.base.sculpt.sized);
      this.#sheets.set(sheets, solid.pieces, places);
      this.#sheets.colours = this.#colours;
      this.#ink.set(solid.pieces, places);
      all.union(familiar);
      all.expandByPoint(new Vector3(top.minX, 0, minZ)).expandByPoint(new Vector3(top.maxX, lift, maxZ));
    }
    this.#studio.setExtent(all);
  }

  /** Brings all pieces to where they are at this stage. Runs one at a time; a later stage overtakes. */
  async #pose(): Promise<void> {
    if (this.#isPosing) {
      this.#poseAgain = true;
      return;
    }
    this.#isPosing = true;
    const work = new Slices();
    do {
      this.#poseAgain = false;
      const solid = this.#solid;
      const body = solid?.body ?? null;
      const stage = this.#stage;
      for (let i = 0; body !== null && i < body.patches.length; i += 1) {
        await work.pause();
        if (this.#solid !== solid || this.#isDisposed) break;
        await body.place(i, whereabouts(this.#journeys[i], stage), work);
      }
      if (this.#isDisposed) return;
      body?.moved();
      this.#drawLines();
      this.#pointOut();
      this.#studio.changed();
    } while (this.#poseAgain);
    this.#isPosing = false;
  }

  /** Lines on foam and sculpt, and what is visible at this stage. */
  #drawLines(): void {
    const solid = this.#solid;
    const body = solid?.body ?? null;
    const isWhole = this.#stage < APART_FROM;
    this.#form.object.visible = solid !== null && (body === null || !isWhole);
    this.#skins.object.visible = this.#walls.object.visible = body !== null;
    this.#ink.object.visible = body !== null && this.#stage >= FLAT_FROM;
    this.#ink.object.position.y = this.#lift * (1 - smooth(Math.max(0, this.#stage - 2)));
    this.#ink.isDown = this.#stage >= DOWN_FROM;
    if (solid === null) {
      for (const batch of Object.values(this.#lines)) batch.set([]);
      this.#edges.set(null, null, false);
      return;
    }
    const corners = this.#corners(solid);
    // On flat pieces the printed lines say where to cut.
    const isFlat = this.#stage >= FLAT_FROM;
    drawAlong(this.#lines.seams, isFlat ? [] : solid.lines.seams, corners);
    drawAlong(this.#lines.open, isFlat ? [] : solid.lines.open, corners);
    drawAlong(this.#lines.ridges, solid.lines.ridges, corners);
    drawAlong(this.#lines.formSeams, body !== null && !isWhole ? solid.lines.seams : [], solid.form.positions);
    this.#edges.set(solid.base, corners, this.#isEdgeTool);
    this.#lineColours();
    this.#studio.redraw();
  }

  #corners(solid: SolidDisplay): Float32Array {
    return solid.body?.facePoints ?? solid.form.positions;
  }

  #paint(): void {
    const colours = this.#colours;
    this.#studio.paint(colours);
    this.#top.colours = colours;
    this.#sheets.colours = colours;
    this.#familiar.colours = colours;
    this.#walls.material.color.copy(colours.foamCut);
    showGrain(this.#skins.material, this.#colouring !== 'stretch');
    const { highlight, selection, preview, cursor } = this.#pointed;
    const ratio = this.#studio.pixelRatio;
    highlight.paint(colours.words, colours.line, ratio);
    selection.paint(colours.accent, colours.line, ratio);
    preview.paint(colours.accent, colours.line, ratio);
    cursor.paint(colours.accent, colours.line, ratio);
    this.#lines.pointedThreads.colour = colours.words;
    this.#lines.chosenThreads.colour = colours.accent;
    this.#lineColours();
    if (this.#solid !== null) paintSolid(this.#solid, this.#colouring, this.#limitPct, colours);
    this.#studio.changed();
  }

  /** Lines are light on charcoal and dark on the pale sculpt and on the pale scale of stretch. */
  #lineColours(): void {
    const { seam, line } = this.#colours;
    const isDarkGround = this.#solid?.body != null && this.#colouring !== 'stretch';
    const ink = isDarkGround ? seam : line;
    this.#lines.seams.colour = ink;
    this.#lines.open.colour = ink;
    this.#lines.ridges.colour = ink;
    this.#lines.formSeams.colour = line;
    this.#edges.colour = ink;
    this.#ink.colour = ink;
    this.#ink.outsideColour = seam;
  }

  #beforeDraw(pxPerMm: number): void {
    // From below one looks at the underside of the sculpt, not of the bench.
    const isAbove = this.#studio.camera.position.y > 0;
    this.#top.object.visible = isAbove;
    this.#sheets.object.visible = isAbove;
    // Lines have a width on foam as a pen has, as long as that is neither lost nor clumsy on the screen.
    const width = (mm: number, least: number, most: number): number => Math.max(least, Math.min(most, mm * pxPerMm));
    this.#lines.seams.widthPx = width(1.6, 1.1, 2.4);
    this.#lines.open.widthPx = width(1, 0.9, 1.5);
    this.#lines.formSeams.widthPx = width(1.2, 0.9, 1.8);
    this.#ink.scale(width(1.1, 0.9, 1.9), width(0.6, 0.6, 1.1));
    for (const part of [this.#form, this.#skins]) {
      const progress = part.proceed();
      if (progress !== 'done') this.#studio.drawAgain(progress === 'appeared');
    }
  }

  #pointOut(): void {
    const solid = this.#solid;
    const { highlight, selection, preview, cursor } = this.#pointed;
    if (solid === null) {
      for (const part of Object.values(this.#pointed)) part.set({ lines: [], fills: [], dots: [] });
      this.#lines.chosenThreads.set([]);
      this.#lines.pointedThreads.set([]);
      this.#studio.redraw();
      return;
    }
    const bench: OnBench = {
      sculpt: solid.base.sculpt,
      index: solid.base.index,
      lines: solid.lines,
      corners: this.#corners(solid),
      body: solid.body,
      sceneFromModel: solid.sceneFromModel,
    };
    highlight.set(findPointed(bench, this.#highlight ?? {}));
    selection.set(findPointed(bench, this.#selection ?? {}));
    preview.set(findPointed(bench, { edges: this.#previewEdges ?? [] }));
    cursor.set(findPointed(bench, { vertices: this.#cursor === null ? [] : [this.#cursor] }));
    const chosen = this.#selection?.seams ?? [];
    const pointed = (this.#highlight?.seams ?? []).filter((seam) => !chosen.includes(seam));
    const isWhole = this.#stage < APART_FROM;
    this.#lines.chosenThreads.set(isWhole ? [] : chosen.flatMap((seam) => findThreads(bench, seam)));
    this.#lines.pointedThreads.set(isWhole ? [] : pointed.flatMap((seam) => findThreads(bench, seam)));
    this.#studio.redraw();
  }

  #frame(what: FrameTarget, atOnce: boolean, yaw = this.#studio.goal.yaw, pitch = this.#studio.goal.pitch): void {
    const box = this.#boxOf(what);
    const aspect = this.#studio.widthPx / this.#studio.heightPx;
    this.#studio.travelTo(framed(box, yaw, pitch, aspect, FRAME_MARGIN), atOnce);
  }

  #boxOf(what: FrameTarget): Box3 {
    const all = this.#studio.bounds.box.clone();
    const solid = this.#solid;
    if (solid === null || what === 'all') return all;
    if (what === 'sculpt') return solid.box.clone().union(this.#familiar.box());
    const box = boxOfPieces(solid, what === 'pieces' ? null : what.piece);
    return box.isEmpty() ? all : box;
  }

  /** A picker for the view as it is now. */
  #aimed(): BenchPicker | null {
    const solid = this.#solid;
    if (solid === null) return null;
    this.#studio.aim();
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
        isWhole: this.#stage < APART_FROM,
        sheetHit: (origin, direction) => this.#sheets.hit(origin, direction),
      },
      this.#studio.camera,
      this.#studio.widthPx,
      this.#studio.heightPx,
    );
  }

  #hover(): void {
    this.#hoverRequest = 0;
    if (this.#hoverAt === null || this.#pointer.isDragging || this.#isDisposed) return;
    this.#tellHover(this.#aimed()?.pick(this.#hoverAt, this.#isEdgeTool) ?? { kind: 'nothing' });
  }

  #tellHover(pick: BenchPick): void {
    const text = JSON.stringify(pick);
    if (text === this.#lastHover) return;
    this.#lastHover = text;
    this.#events.onHover(pick);
  }

  /** Takes the solid things away. */
  #forget(): void {
    this.#solid?.form.dispose();
    this.#solid?.body?.dispose();
    this.#solid = null;
    for (const part of [this.#form, this.#skins, this.#walls]) part.object.visible = false;
    this.#sheets.set(null, null, null);
    this.#ink.set(null, null);
  }
}

/** Box round one piece where it is now, or round all. */
function boxOfPieces({ body }: SolidDisplay, piece: number | null): Box3 {
  const box = new Box3();
  body?.patches.forEach(({ shape }, i) => {
    if (piece === null || shape.piece === piece) box.union(body.boxes[i]);
  });
  return box;
}

/** About the same place and size, as after a change of foam: no reason to move the eye. */
function isAlike(a: Box3, b: Box3): boolean {
  const slack = 0.15 * a.getSize(new Vector3()).length();
  return a.min.distanceTo(b.min) < slack && a.max.distanceTo(b.max) < slack;
}

const smooth = (x: number): number => x * x * (3 - 2 * x);
