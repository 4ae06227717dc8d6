import { BufferAttribute, BufferGeometry, type Color, LineBasicMaterial, LineSegments } from 'three';
import type { SculptDisplay } from './display.ts';
import { cornerAfter } from '../mesh/corners-at-vertices.ts';

/** All edges of the sculpt's polygons as hairlines: what can be parted while the edge tool is on. One draw call for any number. */
export class MeshEdges {
  readonly object: LineSegments<BufferGeometry, LineBasicMaterial>;
  #base: SculptDisplay | null = null;
  #halfedges = new Uint32Array(0);

  constructor() {
    this.object = new LineSegments(
      new BufferGeometry(),
      new LineBasicMaterial({ transparent: true, opacity: 0.34, depthWrite: false }),
    );
    this.object.frustumCulled = false;
    this.object.visible = false;
    this.object.renderOrder = 1;
  }

  set colour(colour: Color) {
    this.object.material.color.copy(colour);
  }

  /** @param corners packed xyz per corner of the sculpt's triangles where they are now. */
  set(base: SculptDisplay | null, corners: Float32Array | null, isOn: boolean): void {
    this.object.visible = isOn && base !== null;
    if (base === null || corners === null || !isOn) return;
    if (this.#base !== base) {
      this.#base = base;
      this.#halfedges = polygonEdges(base);
      this.object.geometry.dispose();
      this.object.geometry = new BufferGeometry();
      this.object.geometry.setAttribute(
        'position',
        new BufferAttribute(new Float32Array(6 * this.#halfedges.length), 3),
      );
    }
    const attribute = this.object.geometry.getAttribute('position');
    const points = attribute.array as Float32Array;
    for (let i = 0; i < this.#halfedges.length; i += 1) {
      const [a, b] = [3 * this.#halfedges[i], 3 * cornerAfter(this.#halfedges[i])];
      for (let k = 0; k < 3; k += 1) {
        points[6 * i + k] = corners[a + k];
        points[6 * i + 3 + k] = corners[b + k];
      }
    }
    attribute.needsUpdate = true;
  }

  dispose(): void {
    this.object.geometry.dispose();
    this.object.material.dispose();
  }
}

/** One half-edge for every edge of the sculpt that is no diagonal. */
function polygonEdges({ sculpt, index }: SculptDisplay): Uint32Array<ArrayBuffer> {
  const { edgeIsDiagonal } = sculpt;
  const found = new Uint32Array(edgeIsDiagonal.length);
  let count = 0;
  for (let e = 0; e < edgeIsDiagonal.length; e += 1) {
    const h = index.halfedgesOfEdge[2 * e];
    if (edgeIsDiagonal[e] === 0 && h >= 0) found[count++] = h;
  }
  return found.slice(0, count);
}
