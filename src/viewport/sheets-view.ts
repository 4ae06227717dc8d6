import {
  Box3,
  BufferAttribute,
  BufferGeometry,
  Group,
  Matrix4,
  Mesh,
  Vector3,
  type Color,
  type MeshLambertMaterial,
} from 'three';
import { runWithPauses } from '../base/stepwise.ts';
import { Cancelled } from '../base/work.ts';
import type { PiecesView } from '../model/bench-view.ts';
import { cutRing } from '../model/cut-larger.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import type { BenchColours } from './bench-theme.ts';
import { sheetMaterial } from './foam-materials.ts';
import { LineBatch } from './line-batch.ts';
import { sheetFromDrawing, type PiecePlaces } from './piece-places.ts';
import { slabSteps, type Slab, type SlabHole, type SlabTriangles } from './sheet-slab.ts';
import { Slices } from './slices.ts';

/** A sheet along a line of sight, by its place in the layout, and how far away, mm. */
export interface SheetHit {
  readonly sheet: number;
  readonly distance: number;
}

/** Sheets are a shade darker than the pieces, so that what is left over steps back. */
const REST_SHADE = 0.8;

/** Real sheets of foam with the holes that the pieces come out of. Two draw calls. Made in slices: they appear a little after they are set. */
export class SheetsView {
  readonly object = new Group();
  readonly #slabs: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly #rims = new LineBatch({ widthPx: 1, opacity: 0.4 });
  readonly #appeared: () => void;
  #colours: BenchColours | null = null;
  #work: Slices | null = null;
  #making: Promise<void> = Promise.resolve();
  #isCut: Uint8Array = new Uint8Array(0);
  #boxes: {
    readonly sceneFromSheet: Matrix4;
    readonly width: number;
    readonly height: number;
    readonly thickness: number;
  }[] = [];

  /** @param appeared  called when sheets are in the picture. */
  constructor(appeared: () => void) {
    this.#appeared = appeared;
    this.#slabs = new Mesh(new BufferGeometry(), sheetMaterial());
    this.#slabs.castShadow = true;
    this.#slabs.receiveShadow = true;
    this.#slabs.visible = false;
    this.object.add(this.#slabs, this.#rims.object);
  }

  set(layout: SheetLayout | null, pieces: PiecesView | null, places: PiecePlaces | null): void {
    const sheets = places === null ? [] : (layout?.sheets ?? []);
    const slabs: Slab[] = [];
    // Places kept clear are lines on the foam.
    const clear: Slab[] = [];
    this.#boxes = [];
    sheets.forEach((sheet, s) => {
      const { widthMm: width, heightMm: height, thicknessMm: thickness } = sheet;
      const place = places?.sceneFromSheet[s] ?? new Matrix4();
      this.#boxes.push({ sceneFromSheet: place, width, height, thickness });
      const outline = sheet.outline ?? [0, 0, width, 0, width, height, 0, height];
      const holes: SlabHole[] = [];
      const isSeen = new Set<string>();
      for (const placement of sheet.placements) {
        const { piece: id, isFlipped = false } = placement;
        // A second copy has no traveller of its own, so its place stays whole.
        if (isSeen.has(id)) continue;
        isSeen.add(id);
        const i = pieces?.pieces.findIndex((piece) => piece.id === id) ?? -1;
        if (i < 0 || pieces === null || places === null) continue;
        const onSheet = sheetFromDrawing(placement, thickness).multiply(places.drawingFromFlat[i]);
        const { outer, inner } = cutRings(
          pieces.pieces[i],
          pieces.templates.find((template) => template.piece === id),
          isFlipped,
        );
        holes.push({ upper: movedRing(outer.upper, onSheet), lower: movedRing(outer.lower, onSheet) });
        for (const ring of inner) {
          const waste = { upper: movedRing(ring.upper, onSheet), lower: movedRing(ring.lower, onSheet) };
          slabs.push({ outer: waste, holes: [], thickness, place });
        }
      }
      slabs.push({ outer: { upper: outline, lower: outline }, holes, thickness, place });
      for (const zone of sheet.keepOut ?? [])
        clear.push({ outer: { upper: zone, lower: zone }, holes: [], thickness, place });
    });
    this.#rims.set([...slabs, ...clear].flatMap(rimOf));
    this.#work?.stop();
    this.#work = null;
    if (slabs.length === 0) this.#slabs.visible = false;
    else this.#making = this.#make(slabs, (this.#work = new Slices()));
  }

  /** Resolves when the sheets that were set last are in the picture. */
  async settled(): Promise<void> {
    for (let seen: Promise<void> | null = null; seen !== this.#making;) {
      seen = this.#making;
      await seen;
    }
  }

  async #make(slabs: readonly Slab[], work: Slices): Promise<void> {
    try {
      this.#show(await runWithPauses(slabSteps(slabs), () => work.pause()));
      this.#appeared();
    } catch (error) {
      if (!(error instanceof Cancelled)) throw error;
    }
  }

  #show({ positions, normals, isCut }: SlabTriangles): void {
    this.#isCut = isCut;
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(positions, 3));
    geometry.setAttribute('normal', new BufferAttribute(normals, 3));
    geometry.setAttribute('color', new BufferAttribute(new Uint8Array(4 * isCut.length).fill(255), 4, true));
    this.#slabs.geometry.dispose();
    this.#slabs.geometry = geometry;
    this.#slabs.visible = positions.length > 0;
    if (this.#colours !== null) this.colours = this.#colours;
  }

  set colours(colours: BenchColours) {
    this.#colours = colours;
    this.#rims.colour = colours.seam;
    const attribute = this.#slabs.geometry.getAttribute('color');
    if (attribute === undefined) return;
    const bytes = attribute.array as Uint8Array;
    const [rest, cut] = [bytesOf(colours.foam, REST_SHADE), bytesOf(colours.foamCut, 1)];
    for (let i = 0; i < this.#isCut.length; i += 1) bytes.set(this.#isCut[i] === 1 ? cut : rest, 4 * i);
    attribute.needsUpdate = true;
  }

  /** Round a sheet where it lies; empty where there is none of that number. */
  box(sheet: number): Box3 {
    const found = this.#boxes.at(sheet);
    if (found === undefined) return new Box3();
    const { sceneFromSheet, width, height, thickness } = found;
    return new Box3(new Vector3(), new Vector3(width, height, thickness)).applyMatrix4(sceneFromSheet);
  }

  /** The sheet that a ray meets on its upper side, and how far away; null when it passes by. */
  hit(origin: Vector3, direction: Vector3): SheetHit | null {
    let found: SheetHit | null = null;
    this.#boxes.forEach(({ sceneFromSheet, width, height, thickness }, sheet) => {
      const sheetFromScene = sceneFromSheet.clone().invert();
      const from = origin.clone().applyMatrix4(sheetFromScene);
      const way = direction.clone().transformDirection(sheetFromScene);
      const distance = (thickness - from.z) / way.z;
      const [x, y] = [from.x + way.x * distance, from.y + way.y * distance];
      const isInside = distance > 0 && x >= 0 && x <= width && y >= 0 && y <= height;
      if (isInside && (found === null || distance < found.distance)) found = { sheet, distance };
    });
    return found;
  }

  dispose(): void {
    this.#work?.stop();
    this.#slabs.geometry.dispose();
    this.#slabs.material.dispose();
    this.#rims.dispose();
  }
}

/** The upper edges of a slab and of its holes as segments of the scene. */
function rimOf({ outer, holes, thickness, place }: Slab): number[] {
  const points: number[] = [];
  const point = new Vector3();
  for (const { upper } of [outer, ...holes]) {
    for (let i = 0; i < upper.length; i += 2) {
      for (const j of [i, (i + 2) % upper.length]) {
        point
          .set(upper[j], upper[j + 1], thickness)
          .applyMatrix4(place)
          .toArray(points, points.length);
      }
    }
  }
  return points;
}

/** sRGB bytes of a colour made darker by `shade`. */
export function bytesOf(colour: Color, shade: number): [number, number, number, number] {
  const { r, g, b } = colour.clone().convertLinearToSRGB();
  return [Math.round(255 * shade * r), Math.round(255 * shade * g), Math.round(255 * shade * b), 255];
}

/** Both edges of every cut seen from the face; the upper one is on the traced side. */
function cutRings(
  piece: FoamPiece,
  template: Template | undefined,
  isFlipped: boolean,
): { outer: SlabHole; inner: SlabHole[] } {
  // A drawing that is not mirrored lies face up; the traced side is then the face.
  const isTracedUp = ((piece.tracedSide === 'back') === (template?.reversed ?? false)) !== isFlipped;
  const pair = (traced: ArrayLike<number>, other: ArrayLike<number>): SlabHole =>
    isTracedUp ? { upper: traced, lower: other } : { upper: other, lower: traced };
  return {
    outer: pair(cutRing(piece, piece.outline), cutRing(piece, piece.otherOutline)),
    inner: piece.holes.map((hole, i) => pair(cutRing(piece, hole), cutRing(piece, piece.otherHoles[i] ?? hole))),
  };
}

function movedRing(ring: ArrayLike<number>, move: Matrix4): number[] {
  const points: number[] = [];
  const point = new Vector3();
  for (let i = 0; i + 1 < ring.length; i += 2) {
    point.set(ring[i], ring[i + 1], 0).applyMatrix4(move);
    points.push(point.x, point.y);
  }
  return points;
}
