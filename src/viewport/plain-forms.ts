import {
  Box3,
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Group,
  Matrix4,
  Mesh,
  type Vector3,
  type MeshLambertMaterial,
} from 'three';
import type { PlainPartView } from '../model/bench-view.ts';
import { coloursOf, PAPER_THEME, type BenchColours } from './bench-theme.ts';
import { creasedNormals } from './creased-normals.ts';
import { dullMaterial } from './foam-materials.ts';
import { inScene } from './foam-build.ts';
import { distanceToCorners, hitCorners } from './ray.ts';

/** Above so many corners a form is drawn facet by facet: to even it out would hold up the window. */
const MOST_EVENED = 60_000;
/** How far what is pointed at goes towards the colour of the chosen, 0 to 1. */
const POINTED_SHARE = 0.35;

/** A finished form in its place in the frame of the sculpt. */
export type FormView = Pick<PlainPartView, 'part' | 'form'>;

interface StandingForm {
  readonly view: FormView;
  readonly corners: Float32Array;
  readonly mesh: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly box: Box3;
}

/** Finished forms of parts that no sculpt is parted for, each in its place. */
export class PlainForms {
  readonly object = new Group();
  /** Round all of them, in the scene; empty where there is none. */
  readonly box = new Box3();
  #forms: StandingForm[] = [];
  #sceneFromModel = new Matrix4();
  #colours: BenchColours = coloursOf(PAPER_THEME);
  #chosen: readonly string[] = [];
  #pointed: readonly string[] = [];

  /** Those that are the same objects as before stay. @returns whether anything is another than before. */
  set(views: readonly FormView[], sceneFromModel: Matrix4 | null): boolean {
    const matrix = sceneFromModel ?? this.#sceneFromModel;
    const isMoved = !matrix.equals(this.#sceneFromModel);
    const before = isMoved ? [] : this.#forms;
    this.#sceneFromModel = matrix.clone();
    const wanted = sceneFromModel === null ? [] : views.filter(({ form }) => form !== null && form.length > 0);
    if (!isMoved && wanted.length === before.length && wanted.every((view, i) => view === before[i].view)) return false;
    const next = wanted.map((view) => before.find((one) => one.view === view) ?? this.#stand(view));
    this.#forms.filter((one) => !next.includes(one)).forEach(forget);
    this.#forms = next;
    this.object.clear();
    this.box.makeEmpty();
    for (const { mesh, box } of next) {
      this.object.add(mesh);
      this.box.union(box);
    }
    this.#paint();
    return true;
  }

  set colours(colours: BenchColours) {
    this.#colours = colours;
    this.#paint();
  }

  /** Which of them are chosen, and which pointed at, by the ids of the parts. */
  mark(chosen: readonly string[], pointed: readonly string[]): void {
    [this.#chosen, this.#pointed] = [chosen, pointed];
    this.#paint();
  }

  /** The nearest of them along a line of sight, or null. */
  hit(origin: Vector3, direction: Vector3): { readonly part: string; readonly distance: number } | null {
    let found: { part: string; distance: number } | null = null;
    for (const { view, corners } of this.#forms) {
      const met = hitCorners(origin, direction, corners, null, 0, found?.distance ?? Infinity);
      if (met !== null) found = { part: view.part, distance: met.distance };
    }
    return found;
  }

  /** How far the nearest surface is from a place, or `most` where none is nearer. */
  distanceTo(place: Vector3, most: number): number {
    let nearest = most;
    for (const { box, corners } of this.#forms)
      if (box.distanceToPoint(place) < nearest) nearest = distanceToCorners(place, corners, null, 0, nearest);
    return nearest;
  }

  dispose(): void {
    this.#forms.forEach(forget);
    this.#forms = [];
  }

  #stand(view: FormView): StandingForm {
    const corners = inScene(view.form ?? new Float32Array(), this.#sceneFromModel);
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(corners, 3));
    if (corners.length / 3 > MOST_EVENED) geometry.computeVertexNormals();
    else geometry.setAttribute('normal', new BufferAttribute(creasedNormals(corners), 3));
    const material = dullMaterial({ nap: 0.16, grain: 0.1 }, { side: DoubleSide, shadowSide: DoubleSide });
    const mesh = new Mesh(geometry, material);
    mesh.castShadow = mesh.receiveShadow = true;
    return { view, corners, mesh, box: new Box3().setFromArray(corners) };
  }

  #paint(): void {
    const { foam, accent } = this.#colours;
    for (const { view, mesh } of this.#forms) {
      const { color } = mesh.material;
      color.copy(foam);
      if (this.#chosen.includes(view.part)) color.copy(accent);
      else if (this.#pointed.includes(view.part)) color.lerp(accent, POINTED_SHARE);
    }
  }
}

function forget({ mesh }: StandingForm): void {
  mesh.geometry.dispose();
  mesh.material.dispose();
}
