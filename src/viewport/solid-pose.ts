import { cornerAfter } from '../mesh/corners-at-vertices.ts';

/**
 * Foam of true thickness carried along with a surface that bends. Face and back of each vertex are kept as arrows in the vertex's own
 * frame (along an edge, across it, outward), once for the finished shape and once for the flat piece; on the way the arrows are mixed
 * and set up again on the bent surface. So mitred edges open into bevels and nothing grows thin.
 */
export class SolidPose {
  readonly #triangles: Uint32Array;
  /** For each vertex one that it shares an edge with. */
  readonly #beside: Uint32Array;
  readonly #shapeFace: Float32Array;
  readonly #shapeBack: Float32Array;
  readonly #flatFace: Float32Array;
  readonly #flatBack: Float32Array;
  readonly #frames: Float32Array;

  /**
   * @param shape  surface of the finished shape, packed xyz; `shapeFace` and `shapeBack` the foam's skins over the same vertices.
   * @param flat   the same for the flat piece, face up (+z).
   */
  constructor(
    triangles: Uint32Array,
    shape: Float32Array,
    shapeFace: Float32Array,
    shapeBack: Float32Array,
    flat: Float32Array,
    flatFace: Float32Array,
    flatBack: Float32Array,
  ) {
    this.#triangles = triangles;
    this.#beside = new Uint32Array(shape.length / 3);
    for (let c = 0; c < triangles.length; c += 1) this.#beside[triangles[c]] = triangles[cornerAfter(c)];
    this.#frames = new Float32Array(3 * shape.length);
    this.#setFrames(shape);
    this.#shapeFace = this.#arrows(shape, shapeFace);
    this.#shapeBack = this.#arrows(shape, shapeBack);
    this.#setFrames(flat);
    this.#flatFace = this.#arrows(flat, flatFace);
    this.#flatBack = this.#arrows(flat, flatBack);
  }

  /**
   * Sets up the foam on a bent surface.
   * @param surface packed xyz per vertex.
   * @param share   0 as on the shape, 1 flat.
   * @param face    receives the face side, `back` the back side, packed xyz.
   */
  pose(surface: Float32Array, share: number, face: Float32Array, back: Float32Array): void {
    this.#setFrames(surface);
    setUp(surface, this.#frames, this.#shapeFace, this.#flatFace, share, face);
    setUp(surface, this.#frames, this.#shapeBack, this.#flatBack, share, back);
  }

  /** Three unit vectors per vertex: along the edge to its neighbour, across, outward. */
  #setFrames(p: Float32Array): void {
    const frames = this.#frames;
    const triangles = this.#triangles;
    for (let v = 0; v < p.length / 3; v += 1) frames[9 * v + 6] = frames[9 * v + 7] = frames[9 * v + 8] = 0;
    for (let i = 0; i < triangles.length; i += 3) {
      const [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
      const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
      const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
      const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
      for (const v of [a, b, c]) {
        frames[3 * v + 6] += nx;
        frames[3 * v + 7] += ny;
        frames[3 * v + 8] += nz;
      }
    }
    for (let v = 0; v < p.length / 3; v += 1) {
      const f = 9 * v;
      let [nx, ny, nz] = [frames[f + 6], frames[f + 7], frames[f + 8]];
      const n = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
      nx /= n;
      ny /= n;
      nz /= n;
      const w = 3 * this.#beside[v];
      let [ex, ey, ez] = [p[w] - p[3 * v], p[w + 1] - p[3 * v + 1], p[w + 2] - p[3 * v + 2]];
      const lean = ex * nx + ey * ny + ez * nz;
      ex -= lean * nx;
      ey -= lean * ny;
      ez -= lean * nz;
      const e = Math.sqrt(ex * ex + ey * ey + ez * ez) || 1;
      ex /= e;
      ey /= e;
      ez /= e;
      frames[f] = ex;
      frames[f + 1] = ey;
      frames[f + 2] = ez;
      frames[f + 3] = ny * ez - nz * ey;
      frames[f + 4] = nz * ex - nx * ez;
      frames[f + 5] = nx * ey - ny * ex;
      frames[f + 6] = nx;
      frames[f + 7] = ny;
      frames[f + 8] = nz;
    }
  }

  #arrows(from: Float32Array, to: Float32Array): Float32Array {
    const arrows = new Float32Array(from.length);
    for (let i = 0; i < from.length; i += 3) {
      const [x, y, z] = [to[i] - from[i], to[i + 1] - from[i + 1], to[i + 2] - from[i + 2]];
      for (let k = 0; k < 3; k += 1) {
        const f = 3 * (i + k);
        arrows[i + k] = x * this.#frames[f] + y * this.#frames[f + 1] + z * this.#frames[f + 2];
      }
    }
    return arrows;
  }
}

function setUp(
  surface: Float32Array,
  frames: Float32Array,
  atShape: Float32Array,
  atFlat: Float32Array,
  share: number,
  result: Float32Array,
): void {
  for (let i = 0; i < surface.length; i += 3) {
    const a = atShape[i] + share * (atFlat[i] - atShape[i]);
    const b = atShape[i + 1] + share * (atFlat[i + 1] - atShape[i + 1]);
    const c = atShape[i + 2] + share * (atFlat[i + 2] - atShape[i + 2]);
    const f = 3 * i;
    for (let k = 0; k < 3; k += 1) {
      result[i + k] = surface[i + k] + a * frames[f + k] + b * frames[f + 3 + k] + c * frames[f + 6 + k];
    }
  }
}
