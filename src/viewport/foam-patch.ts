import { Quaternion, Vector3, Matrix4 } from 'three';
import type { Work } from '../base/work.ts';
import type { Whereabouts } from './journey.ts';
import { rollKeys, type RollKeys } from './roll-keys.ts';
import { halfedgesAcross, rollTree } from './roll-tree.ts';
import { SolidPose } from './solid-pose.ts';

/** What a patch is made of. Points are packed xyz per local vertex, mm; those of the shape in the scene, those of the flat piece face up (+z). */
export interface PatchShape {
  /** Index of the piece, or -1 where it has none. */
  readonly piece: number;
  readonly meshTriangles: Uint32Array;
  readonly triangles: Uint32Array;
  readonly face: Float32Array;
  readonly back: Float32Array;
  readonly flat: FlatShape | null;
}

export interface FlatShape {
  /** Packed xy, the neutral surface. */
  readonly uv: ArrayLike<number>;
  readonly face: Float32Array;
  readonly back: Float32Array;
}

/** Foam between the borders of one patch: where its skins are at any stage of its journey. */
export class FoamPatch {
  readonly shape: PatchShape;
  /** Local half-edges (`3 t + k`) along the border. */
  readonly borders: Uint32Array;
  /** Middle of the shape, and mean outward normal (length under 1 where it bends). */
  readonly centre: Vector3;
  readonly normal: Vector3;
  /** Turn from the flat piece to the shape, known once {@link prepare} is done. */
  readonly shapeTurn = new Quaternion();
  readonly flatCentre = new Vector3();
  readonly #across: Int32Array;
  #roll: { readonly keys: RollKeys; readonly solid: SolidPose } | null = null;
  #surface: Float32Array | null = null;

  /** Finds the borders of a patch; long for a large one. */
  static async make(shape: PatchShape, work: Work): Promise<FoamPatch> {
    const across = await halfedgesAcross(shape.triangles, shape.face.length / 3, work);
    await work.pause(0);
    return new FoamPatch(shape, across);
  }

  private constructor(shape: PatchShape, across: Int32Array) {
    this.shape = shape;
    this.#across = across;
    const borders: number[] = [];
    for (let h = 0; h < across.length; h += 1) if (across[h] < 0) borders.push(h);
    this.borders = Uint32Array.from(borders);
    this.normal = meanNormal(shape.triangles, shape.face);
    this.centre = meanOf(shape.face).add(meanOf(shape.back)).multiplyScalar(0.5);
  }

  /** True when the piece can be bent flat: it has a flat shape and the way there was worked out. */
  get canRoll(): boolean {
    return this.#roll !== null;
  }

  /** Works out the way from shape to flat; long for large patches. */
  async prepare(work: Work): Promise<void> {
    const { triangles, face, back, flat } = this.shape;
    if (flat === null || this.#roll !== null) return;
    const middle = face.map((x, i) => (x + back[i]) / 2);
    const tree = await rollTree(triangles, middle, flat.uv, this.#across, work);
    await work.pause(0);
    const keys = await rollKeys(triangles, middle, flat.uv, tree, work);
    await work.pause(0);
    const [first, last] = [keys.steps[0], keys.steps[keys.steps.length - 1]];
    const basis = keys.shapeFromRoll;
    this.shapeTurn.setFromRotationMatrix(
      new Matrix4().makeBasis(
        new Vector3(basis[0], basis[1], basis[2]),
        new Vector3(basis[3], basis[4], basis[5]),
        new Vector3(basis[6], basis[7], basis[8]),
      ),
    );
    this.centre.set(...keys.shapeCentre);
    this.flatCentre.set(keys.flatCentre[0], keys.flatCentre[1], 0);
    const back0 = this.shapeTurn.clone().invert();
    const solid = new SolidPose(
      triangles,
      first,
      turned(face, back0, this.centre),
      turned(back, back0, this.centre),
      last,
      moved(flat.face, this.flatCentre),
      moved(flat.back, this.flatCentre),
    );
    this.#roll = { keys, solid };
    this.#surface = new Float32Array(face.length);
  }

  /**
   * Sets face and back points for where the piece is.
   * @param at   its centre and turn; a patch that cannot roll only comes off, as far as `at.centre` is from its own.
   */
  pose(at: Whereabouts, face: Float32Array, back: Float32Array): void {
    const { shape } = this;
    if (this.#roll === null || this.#surface === null || at.roll === 0) {
      const by = at.centre.clone().sub(this.centre);
      for (let i = 0; i < shape.face.length; i += 3) {
        for (let k = 0; k < 3; k += 1) {
          const d = by.getComponent(k);
          face[i + k] = shape.face[i + k] + d;
          back[i + k] = shape.back[i + k] + d;
        }
      }
      return;
    }
    const { steps } = this.#roll.keys;
    const place = at.roll * (steps.length - 1);
    const low = Math.min(steps.length - 2, Math.floor(place));
    const [a, b, share] = [steps[low], steps[low + 1], place - low];
    const surface = this.#surface;
    for (let i = 0; i < surface.length; i += 1) surface[i] = a[i] + share * (b[i] - a[i]);
    this.#roll.solid.pose(surface, at.roll, face, back);
    const matrix = new Matrix4().compose(at.centre, at.turn, new Vector3(1, 1, 1));
    applyTo(face, surface.length, matrix);
    applyTo(back, surface.length, matrix);
    keepOver(face, back, surface.length);
  }
}

/** Lifts what would reach through the bench top, at height 0, onto it. */
function keepOver(face: Float32Array, back: Float32Array, length: number): void {
  let lowest = 0;
  for (let i = 1; i < length; i += 3) lowest = Math.min(lowest, face[i], back[i]);
  for (let i = 1; lowest < 0 && i < length; i += 3) {
    face[i] -= lowest;
    back[i] -= lowest;
  }
}

function applyTo(points: Float32Array, length: number, { elements: m }: Matrix4): void {
  for (let i = 0; i < length; i += 3) {
    const [x, y, z] = [points[i], points[i + 1], points[i + 2]];
    points[i] = m[0] * x + m[4] * y + m[8] * z + m[12];
    points[i + 1] = m[1] * x + m[5] * y + m[9] * z + m[13];
    points[i + 2] = m[2] * x + m[6] * y + m[10] * z + m[14];
  }
}

function turned(points: Float32Array, turn: Quaternion, centre: Vector3): Float32Array {
  const result = points.slice();
  const matrix = new Matrix4()
    .makeRotationFromQuaternion(turn)
    .multiply(new Matrix4().makeTranslation(centre.clone().negate()));
  applyTo(result, result.length, matrix);
  return result;
}

function moved(points: Float32Array, centre: Vector3): Float32Array {
  const result = points.slice();
  applyTo(result, result.length, new Matrix4().makeTranslation(centre.clone().negate()));
  return result;
}

function meanOf(points: Float32Array): Vector3 {
  const mean = new Vector3();
  for (let i = 0; i < points.length; i += 3) {
    mean.x += points[i];
    mean.y += points[i + 1];
    mean.z += points[i + 2];
  }
  return mean.multiplyScalar(3 / Math.max(1, points.length));
}

/** Sum of the area vectors over the sum of the areas. */
function meanNormal(triangles: Uint32Array, p: Float32Array): Vector3 {
  const sum = new Vector3();
  let area = 0;
  const [u, v] = [new Vector3(), new Vector3()];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
    u.set(p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]);
    v.set(p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]);
    u.cross(v);
    area += u.length();
    sum.add(u);
  }
  return area > 0 ? sum.divideScalar(area) : sum;
}
