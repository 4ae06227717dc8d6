import { type BufferGeometry, Group, Mesh, type MeshLambertMaterial } from 'three';
import { CornerSurface } from './corner-surface.ts';

/**
 * Draws a surface that may come in several geometries. A large one is handed to the graphics card part by part, one a picture, of which
 * a single triangle is drawn; when all are there they appear together. So no picture takes long.
 */
export class SurfaceObject {
  readonly object = new Group();
  readonly material: MeshLambertMaterial;
  #meshes: Mesh[] = [];
  #waiting = 0;

  constructor(material: MeshLambertMaterial) {
    this.material = material;
    this.object.visible = false;
    // Something of the right kind to begin with, so that the program is made before it is needed.
    this.set(new CornerSurface(3).parts);
  }

  set(parts: readonly BufferGeometry[]): void {
    this.object.clear();
    this.#meshes = parts.map((part) => {
      const mesh = new Mesh(part, this.material);
      mesh.frustumCulled = false;
      return mesh;
    });
    this.#waiting = parts.length > 1 ? parts.length : 0;
    if (this.#waiting === 0) this.#showAll();
    else this.#meshes.forEach((mesh, i) => this.#warm(mesh, i === 0));
    for (const mesh of this.#meshes) this.object.add(mesh);
  }

  /** Goes on with handing over. @returns whether another picture is needed, and whether it shows something new. */
  proceed(): 'done' | 'waiting' | 'appeared' {
    if (!this.object.visible || this.#waiting === 0) return 'done';
    this.#waiting -= 1;
    if (this.#waiting === 0) {
      this.#showAll();
      return 'appeared';
    }
    this.#warm(this.#meshes[this.#meshes.length - this.#waiting], true);
    return 'waiting';
  }

  dispose(): void {
    this.material.dispose();
  }

  #warm(mesh: Mesh, isShown: boolean): void {
    mesh.visible = isShown;
    mesh.geometry.setDrawRange(0, 3);
  }

  #showAll(): void {
    for (const mesh of this.#meshes) {
      mesh.visible = mesh.castShadow = mesh.receiveShadow = true;
      mesh.geometry.setDrawRange(0, Infinity);
    }
  }
}
