import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Sphere } from 'three';

/**
 * A surface drawn corner by corner, so that each triangle can have a colour of its own: packed positions, normals and colours, three
 * corners a triangle. Positions are mm of the scene; colours are sRGB bytes.
 */
export class CornerSurface {
  readonly geometry = new BufferGeometry();
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly colours: Uint8Array;

  /** @param cornerCount three for each triangle. */
  constructor(cornerCount: number) {
    this.positions = new Float32Array(3 * cornerCount);
    this.normals = new Float32Array(3 * cornerCount);
    this.colours = new Uint8Array(4 * cornerCount).fill(255);
    this.geometry.setAttribute('position', new BufferAttribute(this.positions, 3).setUsage(DynamicDrawUsage));
    this.geometry.setAttribute('normal', new BufferAttribute(this.normals, 3).setUsage(DynamicDrawUsage));
    this.geometry.setAttribute('color', new BufferAttribute(this.colours, 4, true).setUsage(DynamicDrawUsage));
    // What moves is never left out of the picture; three would look at every corner to find out.
    this.geometry.boundingSphere = new Sphere(undefined, Infinity);
  }

  /** Colours all corners of triangle `t`; `r g b` 0 to 255. */
  paint(t: number, r: number, g: number, b: number): void {
    for (let i = 12 * t; i < 12 * t + 12; i += 4) {
      this.colours[i] = r;
      this.colours[i + 1] = g;
      this.colours[i + 2] = b;
    }
  }

  /** Must follow every change of positions and normals. */
  moved(): void {
    this.geometry.getAttribute('position').needsUpdate = true;
    this.geometry.getAttribute('normal').needsUpdate = true;
  }

  /** Must follow every change of colours. */
  painted(): void {
    this.geometry.getAttribute('color').needsUpdate = true;
  }

  dispose(): void {
    this.geometry.dispose();
  }
}
