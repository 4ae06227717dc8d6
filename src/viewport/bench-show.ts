import { Box3, Vector3, type Matrix4 } from 'three';
import type { LengthUnit } from '../base/format-length.ts';
import { Cancelled } from '../base/work.ts';
import {
  FIT_LIMIT_MM,
  isMeasure,
  NO_TAPES,
  type BenchPlane,
  type BenchTapes,
  type Colouring,
  type Familiar,
  type Look,
  type SectionFigures,
  type UpAxis,
} from './bench-contract.ts';
import { coloursOf, PAPER_THEME, type BenchColours, type BenchTheme } from './bench-theme.ts';
import type { Area } from './bench-layout.ts';
import { BenchTop } from './bench-top.ts';
import { BesideLines } from './beside-lines.ts';
import { ContactShade } from './contact-shade.ts';
import {
  arrange,
  buildSolid,
  displayOf,
  formsBeside,
  formsOf,
  footprintOf,
  type SculptDisplay,
  type Shown,
  type SolidDisplay,
} from './display.ts';
import type { PropView } from '../model/bench-view.ts';
import type { DryFit } from '../model/dry-fit.ts';
import type { BendField } from '../model/bend-field.ts';
import type { RoomField } from '../model/room-field.ts';
import type { Springing } from '../model/springing.ts';
import { clearOf } from './eye-room.ts';
import { FamiliarThing } from './familiar.ts';
import { figuresOfFit, figuresOfPull, FitLines } from './fit-lines.ts';
import type { OnBench } from './find-pointed.ts';
import { cutFaceMaterial, sculptMaterial, showGrain, skinMaterial } from './foam-materials.ts';
import { Ink } from './ink.ts';
import { clipAll, InsideView } from './inside-view.ts';
import { whereabouts, type Journey } from './journey.ts';
import { LinesView, penWidth } from './lines-view.ts';
import { placePieces } from './piece-places.ts';
import { PlainForms } from './plain-forms.ts';
import { lowestOf, standOnBench } from './standing.ts';
import { paintSolid } from './painting.ts';
import { PlaneHandle } from './plane-handle.ts';
import { PointingView } from './pointing-view.ts';
import { settingBefore } from './setting.ts';
import { SheetTitles } from './sheet-titles.ts';
import { SheetsView, type SheetHit } from './sheets-view.ts';
import { Slices } from './slices.ts';
import type { Studio } from './studio.ts';
import { SurfaceObject } from './surface-object.ts';
import { TapeLines } from './tape-lines.ts';

const FONT = '"Atkinson Hyperlegible Next Variable", "Atkinson Hyperlegible Next", Verdana, sans-serif';
/** From here on pieces are off the sculpt, rolling, all flat, all down. */
const APART_FROM = 0.004;
const ROLLING_FROM = 1;
const FLAT_FROM = 1.995;
const DOWN_FROM = 2.98;
/** Bench while nothing is on it, mm. */
const EMPTY_BOX = new Box3(new Vector3(-150, 0, -150), new Vector3(150, 1, 150));
const EMPTY_LAYOUT = { top: { minX: -300, maxX: 300, minZ: -200, maxZ: 200 } };
/** Bench beyond the thing beside the sculpt, mm. */
const BESIDE = 40;

/** Everything that stands and lies on the bench: builds it from the records, in slices, and brings it to where it is at each stage. */
export class BenchShow {
  readonly pointing = new PointingView();
  readonly sheets = new SheetsView(() => this.#studio.changed());
  readonly forms = new PlainForms();
  readonly handle = new PlaneHandle();
  readonly inside = new InsideView(FONT);
  readonly #studio: Studio;
  readonly #appeared: (isFirst: boolean) => void;
  readonly #sectioned: (figures: SectionFigures | null) => void;
  readonly #top = new BenchTop(FONT);
  readonly #titles = new SheetTitles(FONT);
  readonly #shade = new ContactShade();
  readonly #ink = new Ink(FONT);
  readonly #beside = new BesideLines();
  readonly #familiar = new FamiliarThing();
  readonly #form = new SurfaceObject(sculptMaterial());
  readonly #skins = new SurfaceObject(skinMaterial());
  readonly #walls = new SurfaceObject(cutFaceMaterial());
  readonly #lines = new LinesView();
  readonly #fitLines = new FitLines();
  readonly #tapeLines = new TapeLines();
  #tapes: BenchTapes = NO_TAPES;
  #fit: DryFit | null = null;
  #room: RoomField | null = null;
  #bends: BendField | null = null;
  #pulls: Springing | null = null;
  #bendLimitPct = 25;
  #pullLimit = 1;
  #shown: Shown = { sculpt: null, shell: null, seams: null, pieces: null, sheets: null, plain: [] };
  #colours: BenchColours = coloursOf(PAPER_THEME);
  #up: UpAxis = 'y';
  #colouring: Colouring = 'plain';
  #gives: Uint8Array = new Uint8Array(0);
  #paints: Int32Array = new Int32Array(0);
  #limitPct = 8;
  #stage = 0;
  #isEdgeTool = false;
  #plane: BenchPlane | null = null;
  #isCutOpen = false;
  #look: Look = 'foam';
  #figures: SectionFigures | null = null;
  #prop: PropView | null = null;
  #glued: readonly number[] = [];
  /** What stands where no sculpt does; empty on an empty bench. */
  #alone = new Box3();
  #base: SculptDisplay | null = null;
  #solid: SolidDisplay | null = null;
  #journeys: readonly Journey[] = [];
  #lift = 0;
  #topBox = new Box3();
  #filled: Area | null = null;
  #work: Slices | null = null;
  #working: Promise<void> = Promise.resolve();
  #isPosing = false;
  #poseAgain = false;
  #isDisposed = false;

  /** @param appeared called when new solid things are in place; `isFirst` when they are not about where others were before. */
  constructor(
    studio: Studio,
    appeared: (isFirst: boolean) => void,
    sectioned: (figures: SectionFigures | null) => void,
  ) {
    this.#studio = studio;
    this.#appeared = appeared;
    this.#sectioned = sectioned;
    studio.add(...this.#parts().map(({ object }) => object));
    this.#paint();
    this.#layOut();
  }

  get shown(): Shown {
    return this.#shown;
  }

  /** Solid things as they are seen now, or null on an empty bench. */
  get solid(): SolidDisplay | null {
    return this.inside.seen(this.#solid, this.isWhole, this.isPropSeen);
  }

  get isWhole(): boolean {
    return this.#stage < APART_FROM;
  }

  /** The finished prop is seen instead of the foam, put together or taken apart. */
  get isPropSeen(): boolean {
    return this.inside.prop.isShown && this.#stage <= ROLLING_FROM;
  }

  set shown(shown: Shown) {
    this.#shown = shown;
    this.#rebuild();
  }

  set stage(stage: number) {
    if (stage === this.#stage) return;
    this.#stage = stage;
    void this.#pose();
  }

  set colouring(colouring: Colouring) {
    this.#colouring = colouring;
    this.#drawLines();
    this.#paint();
  }

  /** The pieces put together again: drawn while the colouring is `fit`. */
  set fit(fit: DryFit | null) {
    this.#fit = fit;
    this.#drawLines();
  }

  /** Room round the cores: what colours mean while the colouring is `room`. */
  set room(room: RoomField | null) {
    this.#room = room;
    if (this.#colouring === 'room') this.#paint();
  }

  /** How the foam bends: what colours and strokes mean while the colouring is `bend`. */
  set bends(bends: BendField | null) {
    this.#bends = bends;
    this.#recolour('bend');
  }

  /** What joints carry: drawn while the colouring is `pull`. */
  set pulls(pulls: Springing | null) {
    this.#pulls = pulls;
    this.#recolour('pull');
  }

  /** Ends of the scales: strain of the skins, per cent, and pull of a joint, N per mm. */
  set limits({ bendPct, pullNPerMm }: { readonly bendPct: number; readonly pullNPerMm: number }) {
    [this.#bendLimitPct, this.#pullLimit] = [bendPct, pullNPerMm];
    this.#recolour(this.#colouring === 'pull' ? 'pull' : 'bend');
  }

  #recolour(of: Colouring): void {
    if (this.#colouring !== of) return;
    this.#drawLines();
    this.#paint();
  }

  /** How areas give, per triangle of the sculpt: see `GIVES`. */
  set gives(gives: Uint8Array) {
    this.#gives = gives;
    this.#paint();
  }

  /** What areas are painted in, per triangle of the sculpt: 0xrrggbb, or -1. */
  set paints(paints: Int32Array) {
    this.#paints = paints;
    if (this.#colouring === 'paint') this.#paint();
  }

  set limitPct(limitPct: number) {
    this.#limitPct = limitPct;
    this.#drawLines();
    this.#paint();
  }

  set isEdgeTool(isEdgeTool: boolean) {
    this.#isEdgeTool = isEdgeTool;
    this.#drawLines();
  }

  set plane(plane: BenchPlane | null) {
    this.#plane = plane;
    this.#placePlane();
    this.#cutOpen();
  }

  /** Tapes that are laid round the sculpt. */
  set tapes(tapes: BenchTapes) {
    this.#tapes = tapes;
    this.#layTapes();
    this.#studio.redraw();
  }

  /** Whether everything is cut open at the plane in hand. */
  set isCutOpen(isCutOpen: boolean) {
    this.#isCutOpen = isCutOpen;
    this.#cutOpen();
  }

  /** What was cut, put together: seen while the look is `prop`. */
  set prop(prop: PropView | null) {
    if (prop === this.#prop) return;
    this.#prop = prop;
    this.#rebuild();
  }

  /** By piece, the lower the earlier it is glued: what is glued last comes off first. */
  set glued(glued: readonly number[]) {
    this.#glued = glued;
    void this.#setOut();
  }

  set look(look: Look) {
    if (look === this.#look) return;
    this.#look = look;
    this.#rebuild();
  }

  set up(up: UpAxis) {
    if (up === this.#up) return;
    this.#up = up;
    this.#forget();
    this.#rebuild();
  }

  set theme(theme: BenchTheme) {
    this.#colours = coloursOf(theme);
    this.#paint();
  }

  set familiar(kind: Familiar) {
    this.#familiar.set(kind);
    this.#layOut();
  }

  /** What each sheet is. */
  set sheetTitles(titles: readonly string[]) {
    this.#titles.titles = titles;
    this.#studio.redraw();
  }

  set unit(unit: LengthUnit) {
    this.inside.sizes.unit = unit;
    this.#studio.redraw();
  }

  /**
   * Round the bench top, round the sculpt or the prop as far as it is taken apart and what stands beside it, and round so much of the sheets
   * before it as belongs in one picture with it; empty without sheets.
   */
  get boxes(): { readonly top: Box3; readonly sculpt: Box3; readonly before: Box3 } {
    const { prop } = this.inside;
    const standing = this.isPropSeen ? prop.box : (this.#solid?.box ?? this.#standingAlone);
    const sculpt = standing.clone().union(this.forms.box).union(this.#familiar.box());
    return { top: this.#topBox, sculpt, before: settingBefore(sculpt, this.#filled) };
  }

  get #standingAlone(): Box3 {
    return this.#alone.isEmpty() ? EMPTY_BOX : this.#alone;
  }

  /** Round a piece where it is now, or for null round all with what is written on their sheets; empty when there is none. */
  pieceBox(piece: number | null): Box3 {
    const box = new Box3();
    if (this.isPropSeen && piece === null) return box.copy(this.inside.prop.box);
    const body = this.#solid?.body;
    body?.patches.forEach(({ shape }, i) => {
      if (shape.piece >= 0 && (piece === null || shape.piece === piece)) box.union(body.boxes[i]);
    });
    // Flat over their sheets they are seen with what the sheets are.
    if (piece === null && this.#stage >= FLAT_FROM)
      this.#shown.sheets?.sheets.forEach((_, sheet) => box.union(this.#titles.box(sheet)));
    return box;
  }

  /** Round a sheet where it lies, with its title; empty where there is none of that number. */
  sheetBox(sheet: number): Box3 {
    return this.sheets.box(sheet).union(this.#titles.box(sheet));
  }

  /** Round the title of a sheet; empty where there is none. */
  titleBox(sheet: number): Box3 {
    return this.#titles.box(sheet);
  }

  /** The sheet that a line of sight meets, on its foam or on its title. */
  sheetHit(origin: Vector3, direction: Vector3): SheetHit | null {
    return this.sheets.hit(origin, direction) ?? this.#titles.hit(origin, direction);
  }

  /** Round both edges of a seam where they are now; empty when there is none. */
  seamBox(seam: number): Box3 {
    const box = new Box3();
    const { solid } = this;
    const chain = solid?.seams?.chains.at(seam);
    if (solid === null || chain === undefined) return box;
    const { triangles } = solid.base.sculpt;
    const points = cornersOf(solid);
    const isOn = new Set(chain.vertices);
    const point = new Vector3();
    for (let c = 0; c < triangles.length; c += 1)
      if (isOn.has(triangles[c])) box.expandByPoint(point.fromArray(points, 3 * c));
    return box;
  }

  /** Resolves when everything shown so far is in the picture, the ways of all pieces included. */
  async settled(): Promise<void> {
    for (let seen: Promise<void> | null = null; seen !== this.#working;) {
      seen = this.#working;
      await seen;
    }
    await this.sheets.settled();
    while (this.#isPosing) await new Promise((resolve) => setTimeout(resolve));
  }

  /** Finds again what is pointed at and chosen. */
  pointOut(): void {
    const { solid } = this;
    // Plates are the pieces of the foam as they were cut: its lines run along them.
    const foam = this.isPropSeen ? (this.#solid?.body ?? null) : null;
    const bench: OnBench | null =
      solid === null
        ? null
        : {
            sculpt: solid.base.sculpt,
            index: solid.base.index,
            lines: solid.lines,
            corners: foam === null ? cornersOf(solid) : this.inside.prop.cornersOn(foam),
            body: foam ?? solid.body,
            sceneFromModel: solid.sceneFromModel,
          };
    this.pointing.set(bench, this.isWhole);
    this.#studio.redraw();
  }

  /** Parts that are pointed at or chosen stand out. */
  markParts(): void {
    const { highlight, selection } = this.pointing;
    const chosen = selection?.parts ?? [];
    this.forms.mark(chosen, highlight?.parts ?? []);
    this.#beside.mark([...chosen, ...(highlight?.parts ?? [])]);
    this.#studio.redraw();
  }

  /** @param pxPerMm CSS px that a millimetre has where the eye looks. */
  beforeDraw(pxPerMm: number): void {
    // From below one looks at the underside of the sculpt, not of the bench.
    const isAbove = this.#studio.camera.position.y > 0;
    this.#top.object.visible = isAbove;
    this.#titles.object.visible = this.#shade.object.visible = isAbove;
    this.sheets.object.visible = this.#beside.object.visible = isAbove;
    this.#lines.scale(pxPerMm);
    this.handle.scale(pxPerMm);
    this.#ink.scale(penWidth(1.1, pxPerMm, 0.9, 1.9), penWidth(0.6, pxPerMm, 0.6, 1.1));
    for (const part of [this.#form, this.#skins, this.inside.surface]) {
      const progress = part.proceed();
      if (progress !== 'done') this.#studio.drawAgain(progress === 'appeared');
    }
  }

  dispose(): void {
    this.#isDisposed = true;
    this.#work?.stop();
    this.#forget();
    for (const part of this.#parts()) part.dispose();
    this.inside.dispose();
  }

  #parts() {
    const solids = [this.#form, this.#skins, this.#walls];
    const { surface, section, prop, sizes } = this.inside;
    const lines = [this.#ink, this.#lines, this.#fitLines, this.#tapeLines, this.pointing, this.handle];
    const beside = [this.sheets, this.#beside, this.forms];
    return [
      this.#top,
      this.#titles,
      this.#shade,
      ...beside,
      ...solids,
      surface,
      section,
      prop,
      sizes,
      this.#familiar,
      ...lines,
    ];
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
      const before = this.#alone.clone();
      const matrix = this.#standAlone();
      this.forms.set(shown.plain, matrix);
      this.#layOut();
      this.#paint();
      this.#giveRoom();
      if (!this.#alone.isEmpty()) this.#appeared(before.isEmpty() || !isAlike(before, this.#alone));
      return;
    }
    this.#alone.makeEmpty();
    const base = await displayOf(shown.sculpt, this.#base, work);
    const solid = this.#solid;
    const isSame =
      solid !== null &&
      solid.base === base &&
      solid.shell === shown.shell &&
      solid.seams === shown.seams &&
      solid.pieces === shown.pieces &&
      solid.floor === Math.min(solid.lowest, lowestOf(formsBeside(shown), this.#up));
    if (!isSame) {
      const fresh = await buildSolid(base, shown, this.#up, work);
      // Pieces that are on their way or down stay there.
      if (this.#stage > ROLLING_FROM) for (const patch of fresh.body?.patches ?? []) await patch.prepare(work);
      const isFirst = solid === null || !isAlike(solid.box, fresh.box);
      this.#standBeside(fresh);
      this.#forget();
      this.#base = base;
      this.#solid = fresh;
      this.#form.set(fresh.form.parts);
      this.#skins.set(fresh.body?.skins.parts ?? []);
      this.#walls.set(fresh.body === null ? [] : [fresh.body.walls]);
      this.#layOut();
      this.#paint();
      await this.#pose();
      this.#appeared(isFirst);
    } else {
      this.#standBeside(solid);
      this.#layOut();
      await this.#pose();
    }
    await this.inside.dress(this.#solid, this.#look, work);
    await this.inside.prop.set(this.#look === 'prop' ? this.#prop : null, this.#solid, work);
    this.inside.prop.paint(this.#colours);
    await this.#pose();
    await this.#prepareRolls(work);
  }

  /** Other parts stand where they are in the assembly; while the size of the sculpt is not known there is no telling where. */
  #standBeside({ base, sceneFromModel }: SolidDisplay): void {
    if (this.forms.set(this.#shown.plain, base.sculpt.sized ? sceneFromModel : null)) this.#studio.changed();
  }

  /** Parts of a prop without a sculpt stand on the bench together. @returns null where there is none. */
  #standAlone(): Matrix4 | null {
    const forms = formsOf(this.#shown.plain);
    this.#alone.makeEmpty();
    if (forms.length === 0) return null;
    const { matrix, box } = standOnBench(forms, this.#up, true);
    this.#alone.copy(box);
    return matrix;
  }

  /** Works out how each piece rolls flat; then the pieces may go on. */
  async #prepareRolls(work: Slices): Promise<void> {
    const patches = this.#solid?.body?.patches ?? [];
    if (patches.every((patch) => patch.canRoll || patch.shape.flat === null)) return;
    for (const patch of patches) {
      await patch.prepare(work);
      if (this.#stage > ROLLING_FROM) await this.#setOut();
    }
    if (this.#stage <= ROLLING_FROM) await this.#setOut();
  }

  /** Gives the pieces that can roll by now their ways. */
  async #setOut(): Promise<void> {
    if (this.#solid === null) return;
    this.#journeys = arrange(this.#solid, this.#shown.sheets, this.forms.box, this.#glued).journeys;
    if (this.#stage > 0) await this.#pose();
  }

  /** Lays bench, sheets and printed lines for what is on show. */
  #layOut(): void {
    const { sheets } = this.#shown;
    const solid = this.#solid;
    let { top } = EMPTY_LAYOUT;
    this.#journeys = [];
    this.#lift = 0;
    this.#filled = null;
    if (solid !== null) {
      const { places, journeys, lift } = arrange(solid, sheets, this.forms.box, this.#glued);
      this.#journeys = journeys;
      this.#lift = lift;
      this.#familiar.stand(solid.box.clone().union(this.forms.box));
      const familiar = this.#familiar.box();
      top = { ...places.layout.top };
      this.#filled = places.layout.filled;
      if (!familiar.isEmpty()) top = { ...top, maxX: Math.max(top.maxX, familiar.max.x + BESIDE) };
      this.sheets.set(sheets, solid.pieces, places);
      this.sheets.colours = this.#colours;
      this.#ink.set(solid.pieces, places);
      this.#beside.set(sheets, solid.pieces, places);
      this.#titles.set(sheets, places);
    } else if (sheets !== null && this.#shown.sculpt === null) {
      // What has no sculpt lies on its sheets, and has no way there.
      const places = placePieces(footprintOf(this.#standingAlone), null, sheets);
      this.#familiar.stand(this.#standingAlone);
      top = { ...places.layout.top };
      this.#filled = places.layout.filled;
      this.sheets.set(sheets, null, places);
      this.sheets.colours = this.#colours;
      this.#beside.set(sheets, this.#shown.pieces, places);
      this.#titles.set(sheets, places);
    }
    if (this.#studio.isPlain) this.#shade.set(solid?.form.positions ?? null, solid?.box ?? new Box3());
    this.markParts();
    this.#placePlane();
    this.#layTapes();
    this.#top.set(top, solid?.base.sculpt.sized ?? true);
    this.#topBox.set(new Vector3(top.minX, 0, top.minZ), new Vector3(top.maxX, 0, top.maxZ));
    const all = this.#topBox.clone().union(this.boxes.sculpt);
    all.expandByPoint(new Vector3(0, this.#lift, 0));
    this.#studio.setExtent(all);
  }

  #layTapes(): void {
    this.#tapeLines.set(this.#tapes, this.#solid?.sceneFromModel ?? null);
  }

  #placePlane(): void {
    const solid = this.#solid;
    const { prop } = this.inside;
    const isApart = this.#stage > 0 && this.#stage <= ROLLING_FROM && (solid?.body ?? null) !== null;
    const box = this.isPropSeen ? prop.box : isApart ? this.pieceBox(null) : (solid?.box ?? EMPTY_BOX);
    this.handle.set(this.#plane, solid?.sceneFromModel ?? null, box);
    this.#studio.redraw();
  }

  /** Cuts what stands on the bench at the plane in hand; rolled and flat pieces are left whole. */
  #cutOpen(): void {
    const { section, prop, sizes } = this.inside;
    const body = this.#isCutOpen && this.#stage <= ROLLING_FROM ? (this.#solid?.body ?? null) : null;
    const standing = this.isPropSeen
      ? prop.standing
      : body?.patches.map((patch, i) => {
          const journey = this.#journeys[i];
          const at = journey === undefined ? patch.centre : whereabouts(journey, this.#stage).centre;
          return { patch, shift: at.clone().sub(patch.centre) };
        });
    const frame = body === null ? null : this.handle.frame;
    const figures = section.cut(frame, standing ?? []);
    sizes.set(frame, section.box);
    const { surface } = this.inside;
    const parts = [this.#form, this.#skins, this.#walls, surface, this.#lines, this.#fitLines, this.pointing, prop];
    clipAll(
      parts.map(({ object }) => object),
      section.isCut ? section.planes : null,
    );
    this.#studio.changed();
    if (figures?.breadthMm === this.#figures?.breadthMm && figures?.heightMm === this.#figures?.heightMm) return;
    this.#figures = figures;
    this.#sectioned(figures);
  }

  /** Brings all pieces to where they are at this stage. Runs one at a time; a later stage overtakes. */
  async #pose(): Promise<void> {
    if (this.#isPosing) {
      this.#poseAgain = true;
      return;
    }
    this.#isPosing = true;
    try {
      do await this.#placeAll();
      while (this.#poseAgain && !this.#isDisposed);
    } finally {
      this.#isPosing = false;
    }
  }

  async #placeAll(): Promise<void> {
    const work = new Slices();
    this.#poseAgain = false;
    const solid = this.#solid;
    const body = solid?.body ?? null;
    const stage = this.#stage;
    for (let i = 0; body !== null && i < body.patches.length; i += 1) {
      await work.pause();
      if (this.#solid !== solid || this.#isDisposed) return;
      await body.place(i, whereabouts(this.#journeys[i], stage), work);
    }
    if (this.#isDisposed) return;
    body?.moved();
    if (this.isPropSeen) await this.inside.prop.place(stage, this.#glued, work);
    this.#drawLines();
    this.pointOut();
    this.#placePlane();
    this.#cutOpen();
    this.#giveRoom();
  }

  /** Tells the eye where foam is now. */
  #giveRoom(): void {
    const { section, prop } = this.inside;
    const { shell, pieces } = this.#shown;
    this.#studio.room = {
      clearMm: clearOf(
        Math.max(0, shell?.thicknessMm ?? 0, ...(pieces?.pieces ?? []).map(({ thicknessMm }) => thicknessMm)),
      ),
      at: (place, most) => {
        if (section.isAway(place)) return most;
        const body = this.isPropSeen ? prop : this.#solid?.body;
        return this.forms.distanceTo(place, body?.distanceTo(place, most) ?? most);
      },
    };
    this.#studio.makeRoom();
  }

  /** Lines on foam and sculpt, and what is visible at this stage. */
  #drawLines(): void {
    const { solid, isWhole, isPropSeen } = this;
    const body = solid?.body ?? null;
    const { prop, surface } = this.inside;
    prop.object.visible = isPropSeen;
    const isSurface = solid !== this.#solid;
    surface.object.visible = isSurface && !prop.object.visible;
    this.#form.object.visible = solid !== null && !isSurface && (body === null || !isWhole);
    this.#skins.object.visible = this.#walls.object.visible = body !== null;
    const lined = prop.object.visible ? null : solid;
    this.#ink.object.visible = body !== null && this.#stage >= FLAT_FROM;
    this.#ink.object.position.y = this.#lift * (1 - smooth(Math.max(0, this.#stage - 2)));
    this.#ink.show(this.#stage >= DOWN_FROM, !isMeasure(this.#colouring));
    this.#colourSeams(lined);
    this.#lines.set(lined, lined === null ? new Float32Array(0) : cornersOf(lined), {
      isWhole,
      isFlat: this.#stage >= FLAT_FROM,
      isEdgeTool: this.#isEdgeTool,
      colouring: this.#colouring,
      limitPct: this.#colouring === 'bend' ? this.#bendLimitPct : this.#limitPct,
      bends: this.#bends,
      room: this.#room,
    });
    this.#lineColours();
    this.#studio.redraw();
  }

  #colourSeams(lined: SolidDisplay | null): void {
    if (this.#colouring === 'fit' && this.#fit !== null)
      this.#fitLines.set(lined, figuresOfFit(this.#fit), FIT_LIMIT_MM);
    else if (this.#colouring === 'pull' && this.#pulls !== null)
      this.#fitLines.set(lined, figuresOfPull(this.#pulls), this.#pullLimit);
    else this.#fitLines.set(null, [], 1);
  }

  #paint(): void {
    const colours = this.#colours;
    this.#studio.paint(colours);
    this.#top.colours = colours;
    this.#titles.colour = colours.benchLine;
    this.#shade.colour = colours.bench;
    this.sheets.colours = this.forms.colours = this.#beside.colours = colours;
    this.#familiar.colours = colours;
    this.#walls.material.color.copy(colours.foamCut);
    showGrain(this.#skins.material, !isMeasure(this.#colouring));
    this.pointing.paint(colours, this.#studio.pixelRatio);
    this.handle.colour = colours.accent;
    this.#tapeLines.paint(colours.words, colours.accent);
    this.inside.sizes.colour = colours.benchLine;
    this.inside.section.paint(colours.foamCut, colours.line);
    this.inside.prop.paint(colours);
    this.#lineColours();
    const measures = {
      limitPct: this.#limitPct,
      room: this.#room,
      bends: this.#bends,
      bendLimitPct: this.#bendLimitPct,
    };
    if (this.#solid !== null) paintSolid(this.#solid, this.#colouring, measures, colours, this.#gives, this.#paints);
    this.inside.repaint();
    this.#studio.changed();
  }

  #lineColours(): void {
    const { seam, line } = this.#colours;
    const isDarkGround = this.solid?.body != null && !isMeasure(this.#colouring);
    this.#lines.paint(this.#colours, isDarkGround);
    this.#fitLines.colour = line;
    this.#ink.colour = isDarkGround ? seam : line;
    this.#ink.outsideColour = seam;
  }

  /** Takes the solid things away. */
  #forget(): void {
    this.inside.forget();
    this.inside.prop.forget();
    this.#solid?.form.dispose();
    this.#solid?.body?.dispose();
    this.#solid = null;
    for (const part of [this.#form, this.#skins, this.#walls]) part.object.visible = false;
    this.sheets.set(null, null, null);
    this.#beside.set(null, null, null);
    this.#titles.set(null, null);
    this.#ink.set(null, null);
  }
}

/** Where the corners of the sculpt's triangles are drawn: on the foam where there is any. */
const cornersOf = ({ body, form }: SolidDisplay): Float32Array => body?.facePoints ?? form.positions;

/** About the same place and size, as after a change of foam: no reason to move the eye. */
function isAlike(a: Box3, b: Box3): boolean {
  const slack = 0.15 * a.getSize(new Vector3()).length();
  return a.min.distanceTo(b.min) < slack && a.max.distanceTo(b.max) < slack;
}

const smooth = (x: number): number => x * x * (3 - 2 * x);
