import type { Material, Object3D, Plane } from 'three';
import type { Work } from '../base/work.ts';
import type { Look } from './bench-contract.ts';
import type { CornerSurface } from './corner-surface.ts';
import type { SolidDisplay } from './display.ts';
import { sculptMaterial } from './foam-materials.ts';
import { PropObject } from './prop-object.ts';
import { SectionSizes } from './section-sizes.ts';
import { SectionView } from './section-view.ts';
import { buildSurface } from './surface-look.ts';
import { SurfaceObject } from './surface-object.ts';

/** What shows the inside of a wall of foam: one of its surfaces by itself, the cut that a plane makes, and the prop put together as it was cut. */
export class InsideView {
  readonly surface = new SurfaceObject(sculptMaterial());
  readonly section = new SectionView();
  readonly prop = new PropObject();
  readonly sizes: SectionSizes;
  #look: Look = 'foam';
  #made: { readonly solid: SolidDisplay; readonly look: Look; readonly form: CornerSurface } | null = null;

  /** @param font of figures, CSS font family. */
  constructor(font: string) {
    this.sizes = new SectionSizes(font);
  }

  get look(): Look {
    return this.#look;
  }

  /** Makes the surface to be looked at; nothing is done where it is there. */
  async dress(solid: SolidDisplay | null, look: Look, work: Work): Promise<void> {
    this.#look = look;
    if (solid === null || look === 'foam' || look === 'prop') return this.forget();
    if (this.#made?.solid === solid && this.#made.look === look) return;
    const form = await buildSurface(solid, look, work);
    this.forget();
    this.#made = { solid, look, form };
    this.surface.set(form.parts);
    this.repaint();
  }

  /** What is seen of these solid things: the surface alone while it is looked at. */
  seen(solid: SolidDisplay | null, isWhole: boolean, isPropSeen: boolean): SolidDisplay | null {
    if (solid !== null && isPropSeen) return { ...solid, body: null };
    if (solid === null || !isWhole || this.#made?.solid !== solid) return solid;
    return { ...solid, body: null, form: this.#made.form };
  }

  /** A surface wears the colours of the sculpt under the foam. */
  repaint(): void {
    const made = this.#made;
    if (made === null) return;
    made.form.colours.set(made.solid.form.colours);
    made.form.painted();
  }

  forget(): void {
    this.#made?.form.dispose();
    this.#made = null;
    this.surface.object.visible = false;
  }

  dispose(): void {
    this.forget();
    this.surface.dispose();
    this.section.dispose();
    this.sizes.dispose();
    this.prop.dispose();
  }
}

/** Draws only what lies on one side of the planes; everything for null. */
export function clipAll(objects: readonly Object3D[], planes: readonly Plane[] | null): void {
  for (const object of objects) {
    object.traverse((part) => {
      const { material } = part as Object3D & { material?: Material };
      if (material === undefined || (material.clippingPlanes !== null) === (planes !== null)) return;
      material.clippingPlanes = planes === null ? null : [...planes];
      material.clipShadows = true;
      material.needsUpdate = true;
    });
  }
}
