import { Box3, Group, Vector3 } from 'three';
import type { Work } from '../base/work.ts';
import type { PropView } from '../model/bench-view.ts';
import type { Sight } from './aim.ts';
import type { BenchColours } from './bench-theme.ts';
import { cornerAfter } from '../mesh/corners-at-vertices.ts';
import type { SolidDisplay } from './display.ts';
import type { FoamBody } from './foam-body.ts';
import { cutFaceMaterial, skinMaterial } from './foam-materials.ts';
import { APART_SHARE, apartArrow } from './journey.ts';
import { LineBatch } from './line-batch.ts';
import { buildProp } from './prop-build.ts';
import type { StandingPatch } from './section-view.ts';
import { bytesOf } from './sheets-view.ts';
import { SurfaceObject } from './surface-object.ts';
import { placesBy, shareOff } from './taken-apart.ts';

/** Pieces of each sheet farther out come off so much farther, as a share of the sculpt's diagonal. */
const SHEET_SHARE = 0.16;

/** The finished prop on the bench: its plates in place, or taken apart in the order they are put together. */
export class PropObject {
  readonly object = new Group();
  readonly box = new Box3();
  readonly #skins = new SurfaceObject(skinMaterial());
  readonly #walls = new SurfaceObject(cutFaceMaterial());
  readonly #edges = new LineBatch({ widthPx: 1.3 });
  #made: { readonly view: PropView; readonly solid: SolidDisplay; readonly body: FoamBody } | null = null;
  #shifts: readonly Vector3[] = [];
  /** Corners of the sculpt's triangles where plates lie now, once they were asked for. */
  #corners: Float32Array | null = null;

  constructor() {
    this.object.add(this.#skins.object, this.#walls.object, this.#edges.object);
    this.object.visible = false;
  }

  get isShown(): boolean {
    return this.#made !== null;
  }

  /** Builds the prop where the sculpt stands, or puts it away for null; nothing is done where it is there. */
  async set(view: PropView | null, solid: SolidDisplay | null, work: Work): Promise<void> {
    if (view === null || solid === null) return this.forget();
    if (this.#made?.view === view && this.#made.solid === solid) return;
    const body = await buildProp(view, solid.sceneFromModel, work);
    this.forget();
    this.#made = { view, solid, body };
    this.#skins.set(body.skins.parts);
    this.#walls.set([body.walls]);
    this.object.visible = this.#skins.object.visible = this.#walls.object.visible = true;
  }

  /**
   * Brings every plate to where it is.
   * @param share  0 put together, 1 all apart.
   * @param glued  by piece, the lower the earlier it is glued; empty: as the plates say.
   */
  async place(share: number, glued: readonly number[], work: Work): Promise<void> {
    const made = this.#made;
    if (made === null) return;
    const { body, view, solid } = made;
    this.#shifts = this.#shiftsOf(share, glued);
    this.#corners = null;
    for (const [i, patch] of body.patches.entries()) {
      await work.pause(0);
      if (this.#made !== made) return;
      const at = { roll: 0, centre: patch.centre.clone().add(this.#shifts[i]), turn: patch.shapeTurn };
      await body.place(i, at, work);
    }
    if (this.#made !== made) return;
    body.moved();
    this.#draw(body);
    this.box.copy(solid.box);
    view.plates.forEach((_, i) => this.box.union(body.boxes[i]));
  }

  paint({ foam, foamCut, seam }: BenchColours): void {
    this.#walls.material.color.copy(foamCut);
    this.#edges.colour = seam;
    const body = this.#made?.body;
    if (body === undefined) return;
    const [r, g, b] = bytesOf(foam, 1);
    for (let t = 0; t < body.facePoints.length / 9; t += 1) body.paint(t, r, g, b);
    body.skins.painted();
  }

  get standing(): readonly StandingPatch[] {
    return this.#made?.body.patches.map((patch, i) => ({ patch, shift: this.#shifts[i] ?? new Vector3() })) ?? [];
  }

  /** How far the nearest plate is from a place, or `most` where none is nearer. */
  distanceTo(place: Vector3, most: number): number {
    return this.#made?.body.distanceTo(place, most) ?? most;
  }

  /** The piece along a line of sight, or -1. */
  pieceAt({ origin, direction }: Sight): number {
    const body = this.#made?.body;
    if (body === undefined) return -1;
    const hit = body.hit(origin, direction);
    return hit === null ? -1 : body.patches[hit.patch].shape.piece;
  }

  /** Packed xyz per corner of the sculpt's triangles, on the faces of the plates of this foam. */
  cornersOn(foam: FoamBody): Float32Array {
    const made = this.#made;
    if (made === null || this.#corners !== null) return this.#corners ?? foam.facePoints;
    const corners = foam.facePoints.slice();
    const { facePoints, patches } = made.body;
    for (const { shape } of foam.patches) {
      const plate = patches.find(({ shape: { piece } }) => piece >= 0 && piece === shape.piece)?.shape;
      if (plate?.triangles.length !== shape.triangles.length) continue;
      shape.meshTriangles.forEach((triangle, t) => {
        const from = 9 * plate.meshTriangles[t];
        corners.set(facePoints.subarray(from, from + 9), 9 * triangle);
      });
    }
    return (this.#corners = corners);
  }

  scale(widthPx: number): void {
    this.#edges.widthPx = widthPx;
  }

  forget(): void {
    this.#made?.body.dispose();
    this.#made = this.#corners = null;
    this.object.visible = false;
  }

  dispose(): void {
    this.forget();
    this.#skins.dispose();
    this.#walls.dispose();
    this.#edges.dispose();
  }

  #shiftsOf(share: number, glued: readonly number[]): readonly Vector3[] {
    const made = this.#made;
    if (made === null) return [];
    const { plates } = made.view;
    const { box } = made.solid;
    const [middle, size] = [box.getCenter(new Vector3()), box.getSize(new Vector3()).length()];
    const sheets = Math.max(...plates.map(({ sheet }) => sheet));
    const places = placesBy(plates.map(({ piece, order }) => glued[piece] ?? order));
    return plates.map(({ sheet }, i) => {
      const patch = made.body.patches[i];
      const far = size * (APART_SHARE + SHEET_SHARE * (sheets - sheet));
      const off = shareOff(places[i], plates.length, share);
      return apartArrow(patch.normal, patch.centre, middle, far).multiplyScalar(off);
    });
  }

  /** Rims of the plates, on face and back. */
  #draw(body: FoamBody): void {
    const count = body.patches.reduce((sum, { borders }) => sum + borders.length, 0);
    const points = this.#edges.room(2 * count);
    let at = 0;
    body.patches.forEach(({ shape, borders }, i) => {
      const shift = this.#shifts[i].toArray();
      for (const h of borders) {
        for (const skin of [shape.face, shape.back]) {
          for (const c of [h, cornerAfter(h)]) {
            const v = 3 * shape.triangles[c];
            for (let k = 0; k < 3; k += 1) points[at++] = skin[v + k] + shift[k];
          }
        }
      }
    });
    this.#edges.filled();
  }
}
