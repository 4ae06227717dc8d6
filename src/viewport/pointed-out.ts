import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
  Points,
  ShaderMaterial,
} from 'three';
import { LineBatch } from './line-batch.ts';

/** Things that are pointed out, as found on the bench: packed xyz of the scene. */
export interface Pointed {
  /** Segments, xyz xyz. */
  readonly lines: readonly number[];
  /** Triangles, three corners each. */
  readonly fills: readonly number[];
  readonly dots: readonly number[];
}

const DOT_PX = 11;
const DOT_VERTEX = `uniform float size; void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); gl_Position.z -= 0.002 * gl_Position.w; gl_PointSize = size; }`;
const DOT_FRAGMENT = `uniform vec3 colour; uniform vec3 rim; void main() {
  float away = length(gl_PointCoord - 0.5) * 2.0;
  if (away > 1.0) discard;
  gl_FragColor = vec4(away > 0.68 ? rim : colour, 1.0);
  #include <colorspace_fragment>
}`;

/** Lines, areas and dots laid over what is pointed at or chosen. */
export class PointedOut {
  readonly object = new Group();
  readonly #lines: LineBatch;
  readonly #fill: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly #dots: Points<BufferGeometry, ShaderMaterial>;

  /** @param order later ones are drawn over earlier ones. */
  constructor(widthPx: number, order: number, dashMm?: readonly [number, number]) {
    this.#lines = new LineBatch({ widthPx, renderOrder: order, dashMm });
    this.#fill = new Mesh(
      new BufferGeometry(),
      new MeshBasicMaterial({
        transparent: true,
        opacity: 0.42,
        depthWrite: false,
        side: DoubleSide,
        forceSinglePass: true,
        polygonOffset: true,
        polygonOffsetFactor: -1,
        polygonOffsetUnits: -2,
      }),
    );
    this.#dots = new Points(
      new BufferGeometry(),
      new ShaderMaterial({
        uniforms: { colour: { value: new Color() }, rim: { value: new Color() }, size: { value: DOT_PX } },
        vertexShader: DOT_VERTEX,
        fragmentShader: DOT_FRAGMENT,
      }),
    );
    for (const object of [this.#fill, this.#dots]) {
      object.frustumCulled = false;
      object.visible = false;
      object.renderOrder = order;
    }
    this.object.add(this.#lines.object, this.#fill, this.#dots);
  }

  /** @param rim colour round the dots, so that they show on any ground. */
  paint(colour: Color, rim: Color, pixelRatio: number): void {
    this.#lines.colour = colour;
    this.#fill.material.color.copy(colour);
    const { uniforms } = this.#dots.material;
    (uniforms.colour.value as Color).copy(colour);
    (uniforms.rim.value as Color).copy(rim);
    uniforms.size.value = DOT_PX * pixelRatio;
  }

  set({ lines, fills, dots }: Pointed): void {
    this.#lines.set(lines);
    for (const [object, points] of [
      [this.#fill, fills],
      [this.#dots, dots],
    ] as const) {
      object.visible = points.length > 0;
      if (points.length === 0) continue;
      object.geometry.dispose();
      object.geometry = new BufferGeometry();
      object.geometry.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3));
    }
  }

  dispose(): void {
    this.#lines.dispose();
    for (const object of [this.#fill, this.#dots]) {
      object.geometry.dispose();
      object.material.dispose();
    }
  }
}
