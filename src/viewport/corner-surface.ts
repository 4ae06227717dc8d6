import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Sphere } from 'three';

/** Corners in one geometry at most: what a graphics card takes over in one go without holding up the window. */
const MOST_CORNERS = 3 * 100_000;

/**
 * A surface drawn corner by corner, so that each triangle can have a colour of its own: packed positions, normals and colours, three
 * corners a triangle. Positions are mm of the scene; colours are sRGB bytes. Large surfaces come in several geometries that look into
 * the same arrays.
 */
export class CornerSurface {
  readonly parts: readonly BufferGeometry[];
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly colours: Uint8Array;

  /** @param cornerCount three for each triangle. */
  constructor(cornerCount: number) {
    this.positions = new Float32Array(3 * cornerCount);
    this.normals = new Float32Array(3 * cornerCount);
    this.colours = new Uint8Array(4 * cornerCount).fill(255);
    const parts: BufferGeometry[] = [];
    for (let from = 0; from < cornerCount; from += MOST_CORNERS) {
      const to = Math.min(cornerCount, from + MOST_CORNERS);
      const part = new BufferGeometry();
      const set = (name: string, array: Float32Array | Uint8Array, size: number): void => {
        const attribute = new BufferAttribute(
          array.subarray(size * from, size * to),
          size,
          array instanceof Uint8Array,
        );
        part.setAttribute(name, attribute.setUsage(DynamicDrawUsage));
      };
      set('position', this.positions, 3);
      set('normal', this.normals, 3);
      set('color', this.colours, 4);
      // What moves is never left out of the picture; three would look at every corner to find out.
      part.boundingSphere = new Sphere(undefined, Infinity);
      parts.push(part);
    }
    this.parts = parts;
  }

  /** Colours all corners of triangle `t`; `r g b` 0 to 255. */
  paint(t: number, r: number, g: number, b: number): void {
    const { colours } = this;
    for (let i = 12 * t; i < 12 * t + 12; i += 4) {
      colours[i] = r;
      colours[i + 1] = g;
      colours[i + 2] = b;
    }
  }

  /** Mixes a colour, 0 to 255, into that of triangle `t`. @param share of it, 0 to 1. */
  tone(t: number, [r, g, b]: readonly [number, number, number], share: number): void {
    const i = 12 * t;
    const mix = (at: number, to: number): number => Math.round(at + share * (to - at));
    const { colours } = this;
    this.paint(t, mix(colours[i], r), mix(colours[i + 1], g), mix(colours[i + 2], b));
  }

  /** Must follow every change of positions and normals. */
  moved(): void {
    for (const part of this.parts) {
      part.getAttribute('position').needsUpdate = true;
      part.getAttribute('normal').needsUpdate = true;
    }
  }

  /** Must follow every change of colours. */
  painted(): void {
    for (const part of this.parts) part.getAttribute('color').needsUpdate = true;
  }

  dispose(): void {
    for (const part of this.parts) part.dispose();
  }
}
