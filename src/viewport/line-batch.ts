import { type Color, InstancedInterleavedBuffer, InterleavedBufferAttribute, Sphere } from 'three';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';

export interface LineLook {
  /** CSS pixels. */
  readonly widthPx: number;
  readonly opacity?: number;
  /** True: also seen through what stands in front. */
  readonly isOnTop?: boolean;
  /** Dash and gap in mm of the scene; left out: solid. */
  readonly dashMm?: readonly [number, number];
  readonly renderOrder?: number;
}

/** Many straight segments of one look in one draw call. */
export class LineBatch {
  readonly object: LineSegments2;
  readonly #material: LineMaterial;
  #points = new Float32Array(0);
  #count = 0;

  constructor(look: LineLook) {
    this.#material = new LineMaterial({
      linewidth: look.widthPx,
      transparent: look.opacity !== undefined,
      opacity: look.opacity ?? 1,
      depthTest: !(look.isOnTop ?? false),
      depthWrite: false,
      dashed: look.dashMm !== undefined,
      dashSize: look.dashMm?.[0] ?? 1,
      gapSize: look.dashMm?.[1] ?? 1,
      // Towards the eye, so that a line on a surface is not half sunk in it.
      polygonOffset: true,
      polygonOffsetFactor: -2,
      polygonOffsetUnits: -4,
    });
    this.object = new LineSegments2(new LineSegmentsGeometry(), this.#material);
    this.object.frustumCulled = false;
    this.object.visible = false;
    this.object.renderOrder = look.renderOrder ?? 1;
  }

  get count(): number {
    return this.#count;
  }

  set colour(colour: Color) {
    this.#material.color.copy(colour);
  }

  set widthPx(widthPx: number) {
    this.#material.linewidth = widthPx;
  }

  set opacity(opacity: number) {
    this.#material.opacity = opacity;
    this.#material.transparent = true;
  }

  /** Room for `count` segments of xyz xyz to be filled in, followed by {@link filled}. */
  room(count: number): Float32Array {
    this.#count = count;
    if (6 * count !== this.#points.length) this.#points = new Float32Array(6 * count);
    return this.#points;
  }

  filled(): void {
    const { geometry } = this.object;
    this.object.visible = this.#count > 0;
    if (this.#count === 0) return;
    const known = geometry.getAttribute('instanceStart');
    if (known instanceof InterleavedBufferAttribute && known.data.array === this.#points) {
      known.data.needsUpdate = true;
    } else {
      geometry.dispose();
      const fresh = new LineSegmentsGeometry();
      const buffer = new InstancedInterleavedBuffer(this.#points, 6, 1);
      fresh.setAttribute('instanceStart', new InterleavedBufferAttribute(buffer, 3, 0));
      fresh.setAttribute('instanceEnd', new InterleavedBufferAttribute(buffer, 3, 3));
      fresh.instanceCount = this.#count;
      fresh.boundingSphere = new Sphere(undefined, Infinity);
      this.object.geometry = fresh;
    }
    if (this.#material.dashed) this.object.computeLineDistances();
  }

  /** Segments from packed xyz xyz. */
  set(points: ArrayLike<number>): void {
    this.room(points.length / 6).set(points);
    this.filled();
  }

  dispose(): void {
    this.object.geometry.dispose();
    this.#material.dispose();
  }
}
