import { distanceToSegment } from '../geom/distance-to-segment.ts';
import {
  type Box3,
  type Color,
  ConeGeometry,
  DoubleSide,
  Group,
  type Matrix4,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  Quaternion,
  SphereGeometry,
  Vector3,
} from 'three';
import type { Sight } from './aim.ts';
import type { BenchPlane } from './bench-contract.ts';
import type { Projection, ScreenPoint } from './edge-finder.ts';
import { LineBatch } from './line-batch.ts';
import { frameRound, modelPlane, scenePlane, type PlaneFrame } from './plane-frame.ts';
import { alongNormal, turnedTowards, type Grip } from './plane-drag.ts';

/** Reach of a knob and of the frame's sides, px. */
const KNOB_REACH_PX = 18;
const SIDE_REACH_PX = 7;
/** Knobs keep their size on the screen, px. */
const KNOB_PX = 8;
const ARROW_PX = 11;
const FILL_OPACITY = 0.09;
/** Above everything on the bench. */
const ORDER = 20;

/** A plane being dragged: what was taken hold of, and how things stood then. */
interface Hold {
  readonly grip: Grip;
  readonly frame: PlaneFrame;
  /** Where along the normal the pointer was, mm from the frame's middle. */
  readonly startMm: number;
  readonly from: Vector3;
}

/**
 * A plane in hand, for whatever is cut or measured at it: a frame round the sculpt with a double arrow that moves it along its normal and two
 * knobs that lean it. Any side of the frame moves it too. Knows no purpose: it is given a plane and says where it is dragged to.
 */
export class PlaneHandle {
  readonly object = new Group();
  readonly #sides = new LineBatch({ widthPx: 1.6, isOnTop: true, opacity: 0.95, renderOrder: ORDER });
  readonly #fill: Mesh<PlaneGeometry, MeshBasicMaterial>;
  readonly #knobs: readonly Mesh[];
  readonly #arrow = new Group();
  readonly #skin = new MeshBasicMaterial({ depthTest: false, transparent: true, opacity: 0.98 });
  #plane: BenchPlane | null = null;
  #sceneFromModel: Matrix4 | null = null;
  #frame: PlaneFrame | null = null;
  #hold: Hold | null = null;

  constructor() {
    const glass = new MeshBasicMaterial({
      side: DoubleSide,
      transparent: true,
      opacity: FILL_OPACITY,
      depthWrite: false,
    });
    this.#fill = new Mesh(new PlaneGeometry(2, 2), glass);
    const ball = new SphereGeometry(1, 20, 14);
    this.#knobs = [new Mesh(ball, this.#skin), new Mesh(ball, this.#skin)];
    const tip = new ConeGeometry(0.72, 1.3, 20);
    for (const way of [1, -1]) {
      const cone = new Mesh(tip, this.#skin);
      cone.position.y = 1.25 * way;
      cone.rotation.x = way > 0 ? 0 : Math.PI;
      this.#arrow.add(cone);
    }
    this.#fill.renderOrder = ORDER - 1;
    for (const mesh of [...this.#knobs, ...this.#arrow.children]) mesh.renderOrder = ORDER + 1;
    this.object.add(this.#fill, this.#sides.object, ...this.#knobs, this.#arrow);
    this.object.visible = false;
  }

  get plane(): BenchPlane | null {
    return this.#plane;
  }

  /** Where the frame stands now, in the scene. */
  get frame(): PlaneFrame | null {
    return this.#frame;
  }

  set colour(colour: Color) {
    this.#sides.colour = colour;
    this.#skin.color.copy(colour);
    this.#fill.material.color.copy(colour);
  }

  /**
   * Shows a plane, or puts it away for null.
   * @param box  round what it cuts, in the scene.
   */
  set(plane: BenchPlane | null, sceneFromModel: Matrix4 | null, box: Box3): void {
    const isShown = plane !== null && sceneFromModel !== null;
    this.#plane = isShown ? plane : null;
    this.#sceneFromModel = sceneFromModel;
    this.#frame = isShown ? frameRound(scenePlane(plane, sceneFromModel), box) : null;
    this.object.visible = isShown;
    if (this.#frame === null) {
      this.#hold = null;
      return;
    }
    this.#draw(this.#frame);
  }

  /** Knobs keep their size on the screen. @param pxPerMm  CSS px that a millimetre has where the eye looks. */
  scale(pxPerMm: number): void {
    for (const knob of this.#knobs) knob.scale.setScalar(KNOB_PX / pxPerMm);
    this.#arrow.scale.setScalar(ARROW_PX / pxPerMm);
  }

  /** What a press here takes hold of, or null. */
  gripAt(pointer: ScreenPoint, projection: Projection): Grip | null {
    const frame = this.#frame;
    if (frame === null) return null;
    const places = gripPlaces(frame);
    const seen = (place: Vector3) => projection.at([place.x, place.y, place.z], 0);
    const near = GRIPS.find((grip) => {
      const at = seen(places[grip]);
      return at !== null && Math.hypot(at.x - pointer.x, at.y - pointer.y) <= KNOB_REACH_PX;
    });
    if (near !== undefined) return near;
    const corners = cornersOf(frame).map(seen);
    const isOnSide = corners.some((a, i) => {
      const b = corners[(i + 1) % corners.length];
      return a !== null && b !== null && distanceToSegment(pointer.x, pointer.y, a.x, a.y, b.x, b.y) <= SIDE_REACH_PX;
    });
    return isOnSide ? 'shift' : null;
  }

  /** Takes hold. @returns false where this grip cannot be moved as it is seen now. */
  grab(grip: Grip, sight: Sight): boolean {
    const frame = this.#frame;
    if (frame === null) return false;
    const from = gripPlaces(frame).shift;
    const startMm = grip === 'shift' ? alongNormal(frame, from, sight) : 0;
    if (startMm === null || (grip !== 'shift' && turnedTowards(frame, grip, sight) === null)) return false;
    this.#hold = { grip, frame, startMm, from };
    return true;
  }

  /** Where the plane is when what was taken hold of is dragged here, or null where that says nothing. */
  dragTo(sight: Sight): BenchPlane | null {
    const [hold, sceneFromModel] = [this.#hold, this.#sceneFromModel];
    if (hold === null || sceneFromModel === null) return null;
    const { grip, frame, startMm, from } = hold;
    if (grip === 'shift') {
      const mm = alongNormal(frame, from, sight);
      if (mm === null) return null;
      const point = frame.centre.clone().addScaledVector(frame.normal, mm - startMm);
      return modelPlane(point, frame.normal, sceneFromModel);
    }
    const normal = turnedTowards(frame, grip, sight);
    return normal === null ? null : modelPlane(frame.centre, normal, sceneFromModel);
  }

  letGo(): void {
    this.#hold = null;
  }

  get isHeld(): boolean {
    return this.#hold !== null;
  }

  dispose(): void {
    this.#sides.dispose();
    this.#fill.geometry.dispose();
    this.#fill.material.dispose();
    this.#skin.dispose();
    for (const mesh of [...this.#knobs, ...this.#arrow.children]) (mesh as Mesh).geometry.dispose();
  }

  #draw(frame: PlaneFrame): void {
    const places = gripPlaces(frame);
    const corners = cornersOf(frame);
    this.#sides.set(corners.flatMap((a, i) => [...a.toArray(), ...corners[(i + 1) % corners.length].toArray()]));
    this.#fill.position.copy(frame.centre);
    this.#fill.quaternion.copy(new Quaternion().setFromUnitVectors(new Vector3(0, 0, 1), frame.normal));
    this.#fill.quaternion.premultiply(twistTo(this.#fill.quaternion, frame));
    this.#fill.scale.set(frame.halfU, frame.halfV, 1);
    this.#knobs[0].position.copy(places['turn-v']);
    this.#knobs[1].position.copy(places['turn-u']);
    this.#arrow.position.copy(places.shift);
    this.#arrow.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), frame.normal);
  }
}

const GRIPS: readonly Grip[] = ['shift', 'turn-u', 'turn-v'];

/** The arrow stands at one corner, a knob in the middle of each side it leans by. */
function gripPlaces({ centre, u, v, halfU, halfV }: PlaneFrame): Readonly<Record<Grip, Vector3>> {
  return {
    shift: centre.clone().addScaledVector(u, halfU).addScaledVector(v, -halfV),
    'turn-v': centre.clone().addScaledVector(u, halfU),
    'turn-u': centre.clone().addScaledVector(v, halfV),
  };
}

const cornersOf = ({ centre, u, v, halfU, halfV }: PlaneFrame): readonly Vector3[] =>
  [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a, b]) =>
    centre
      .clone()
      .addScaledVector(u, a * halfU)
      .addScaledVector(v, b * halfV),
  );

/** The turn about the normal that brings the pane's own x onto the frame's. */
function twistTo(pane: Quaternion, { u, normal }: PlaneFrame): Quaternion {
  const x = new Vector3(1, 0, 0).applyQuaternion(pane);
  const angle = Math.atan2(x.clone().cross(u).dot(normal), x.dot(u));
  return new Quaternion().setFromAxisAngle(normal, angle);
}
