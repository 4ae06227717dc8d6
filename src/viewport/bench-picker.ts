import { type Matrix4, Vector3 } from 'three';
import type { SurfaceTree } from '../geom/bvh.ts';
import type { PiecesView, SculptView, SeamsView } from '../model/bench-view.ts';
import type { Aim, Sight } from './aim.ts';
import type { BenchPick } from './bench-contract.ts';
import { nearestEdge, type Projection, type ScreenPoint } from './edge-finder.ts';
import type { FoamBody } from './foam-body.ts';
import type { SculptIndex } from './sculpt-index.ts';

/** How near the pointer must come, px: to any edge with the edge tool, to a seam without. */
const EDGE_REACH_PX = 12;
const SEAM_REACH_PX = 7;
/** So near to a seam or an open edge a line is meant to end on it, px. */
const BORDER_REACH_PX = 10;
/** Up to here the foam itself is asked where a ray meets it; larger sculpts are asked through their tree while they are whole. */
const MOST_TRIANGLES = 30_000;
/** Off the outline by no more than this still finds the edge, px. */
const RIM_PX = 8;

export interface Pickable {
  readonly sculpt: SculptView;
  readonly index: SculptIndex;
  readonly tree: SurfaceTree | null;
  readonly seams: SeamsView | null;
  readonly pieces: PiecesView | null;
  /** Per triangle of the sculpt its place in its patch. */
  readonly localOfTriangle: Uint32Array | null;
  readonly body: FoamBody | null;
  /** Corners of the sculpt itself where it is drawn. */
  readonly formCorners: Float32Array;
  readonly sceneFromModel: Matrix4;
  readonly isWhole: boolean;
  /** The part of a line of sight that runs through what is left where something was cut away. */
  left(sight: Sight): Sight;
  sheetHit(origin: Vector3, direction: Vector3): { sheet: number; distance: number } | null;
}

interface Hit {
  readonly triangle: number;
  readonly distance: number;
  readonly isFoam: boolean;
}

/** Finds what is under a place of the picture. */
export class BenchPicker {
  readonly #bench: Pickable;
  readonly #aim: Aim;
  readonly #projection: Projection;

  constructor(bench: Pickable, aim: Aim) {
    this.#bench = bench;
    this.#aim = aim;
    this.#projection = aim.projection;
  }

  pick(pointer: ScreenPoint, isEdgeTool: boolean): BenchPick {
    const direct = this.#meet(pointer);
    const hit = direct ?? this.#besideRim(pointer, isEdgeTool ? RIM_PX : SEAM_REACH_PX);
    if (hit === null) return this.#sheetOrNothing(pointer);
    const { sculpt, index, seams, pieces, body } = this.#bench;
    const corners = hit.isFoam && body !== null ? body.facePoints : this.#bench.formCorners;
    const isApart = hit.isFoam && !this.#bench.isWhole;
    const patchOf = pieces?.patchOfTriangle ?? null;
    const nearest = (reachPx: number, isAllowed: (edge: number) => boolean) =>
      nearestEdge(
        pointer,
        hit.triangle,
        corners,
        sculpt.triangles,
        index,
        this.#projection,
        reachPx,
        isAllowed,
        (t) => !isApart || patchOf === null || patchOf[t] === patchOf[hit.triangle],
      );
    const isSeam = (e: number): boolean => seams !== null && seams.chainOfEdge[e] >= 0;
    const found = isEdgeTool
      ? nearest(EDGE_REACH_PX, (e) => sculpt.edgeIsDiagonal[e] === 0)
      : nearest(SEAM_REACH_PX, isSeam);
    const border = isEdgeTool ? nearest(BORDER_REACH_PX, (e) => isSeam(e) || sculpt.edgeIsOpen[e] === 1) : null;
    if (direct === null && found === null) return this.#sheetOrNothing(pointer);
    const triangle = hit.triangle;
    const patch = patchOf === null ? undefined : pieces?.patches[patchOf[triangle]];
    const local = this.#bench.localOfTriangle?.[triangle] ?? -1;
    const seam = found === null || seams === null ? -1 : seams.chainOfEdge[found.edge];
    return {
      kind: found !== null ? 'edge' : isApart ? 'piece' : 'surface',
      triangle,
      vertex: this.#nearestVertex(pointer, triangle, corners),
      onSculpt: !isApart,
      point: this.#placeOn(triangle, corners, pointer),
      ...(found === null ? {} : { edge: found.edge }),
      ...(border === null ? {} : { border: border.edge }),
      ...(seam < 0 ? {} : { seam }),
      ...(patch === undefined || patch.piece < 0 ? {} : { piece: patch.piece }),
      ...(patch?.stretchPct == null || local < 0 ? {} : { stretchPct: patch.stretchPct[local] }),
      ...(patch?.squashPct == null || local < 0 ? {} : { squashPct: patch.squashPct[local] }),
    };
  }

  /** The point of the scene under a place of the picture, or null over nothing solid. */
  pointAt(pointer: ScreenPoint): Vector3 | null {
    const { origin, direction } = this.#aim.sightAt(pointer);
    const hit = this.#meet(pointer);
    const sheet = this.#bench.sheetHit(origin, direction);
    const distance = Math.min(hit?.distance ?? Infinity, sheet?.distance ?? Infinity);
    return distance === Infinity ? null : origin.addScaledVector(direction, distance);
  }

  /** Where a vertex of the sculpt is seen, and whether something stands before it. Null behind the eye. */
  screenOf(vertex: number): { x: number; y: number; hidden: boolean } | null {
    const { body, formCorners, index, isWhole } = this.#bench;
    const corner = index.around.corners[index.around.starts[vertex]];
    if (corner === undefined) return null;
    const corners = body !== null ? body.facePoints : formCorners;
    const at = this.#projection.at(corners, corner);
    if (at === null) return null;
    const hit = this.#meet(at);
    const depth = new Vector3().fromArray(corners, 3 * corner).distanceTo(this.#aim.eye);
    // A large sculpt is met on its own surface and not on the foam's, up to a thickness deeper or nearer.
    const slack = isWhole ? 0.02 * depth + 0.5 : 0.002 * depth + 0.5;
    return { ...at, hidden: hit !== null && hit.distance < depth - slack };
  }

  #meet(pointer: ScreenPoint): Hit | null {
    const eye = this.#aim.sightAt(pointer);
    const sight = this.#bench.left(eye);
    const hit = this.#meetAlong(sight);
    return hit && { ...hit, distance: hit.distance + sight.origin.distanceTo(eye.origin) };
  }

  #meetAlong({ origin, direction }: Sight): Hit | null {
    const { body, isWhole, sculpt } = this.#bench;
    const triangleCount = sculpt.triangles.length / 3;
    if (body === null || (isWhole && triangleCount > MOST_TRIANGLES)) {
      return this.#meetSculpt(origin, direction, body !== null);
    }
    const hit = isWhole ? null : this.#meetSculpt(origin, direction, false);
    const met = body.hit(origin, direction);
    return met === null || (hit !== null && hit.distance <= met.distance) ? hit : { ...met, isFoam: true };
  }

  #meetSculpt(origin: Vector3, direction: Vector3, isFoam: boolean): Hit | null {
    const modelFromScene = this.#bench.sceneFromModel.clone().invert();
    const met = this.#bench.tree?.raycast(
      origin.clone().applyMatrix4(modelFromScene),
      direction.clone().transformDirection(modelFromScene),
    );
    if (met == null) return null;
    const point = new Vector3(met.point.x, met.point.y, met.point.z).applyMatrix4(this.#bench.sceneFromModel);
    return { triangle: met.triangle, distance: point.distanceTo(origin), isFoam };
  }

  /** Just off the outline: what lies a few pixels to one of eight sides. */
  #besideRim({ x, y }: ScreenPoint, reach: number): Hit | null {
    for (let i = 0; i < 8; i += 1) {
      const angle = (i * Math.PI) / 4;
      const hit = this.#meet({ x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle) });
      if (hit !== null) return hit;
    }
    return null;
  }

  #sheetOrNothing(pointer: ScreenPoint): BenchPick {
    const { origin, direction } = this.#aim.sightAt(pointer);
    const sheet = this.#bench.sheetHit(origin, direction);
    return sheet === null ? { kind: 'nothing' } : { kind: 'sheet', sheet: sheet.sheet };
  }

  #nearestVertex(pointer: ScreenPoint, triangle: number, corners: Float32Array): number {
    let [best, least] = [this.#bench.sculpt.triangles[3 * triangle], Infinity];
    for (let c = 3 * triangle; c < 3 * triangle + 3; c += 1) {
      const at = this.#projection.at(corners, c);
      if (at === null) continue;
      const away = Math.hypot(at.x - pointer.x, at.y - pointer.y);
      if (away >= least) continue;
      least = away;
      best = this.#bench.sculpt.triangles[c];
    }
    return best;
  }

  /** The place on the sculpt that belongs to where the ray meets the plane of the triangle as drawn, held within the triangle. */
  #placeOn(triangle: number, corners: Float32Array, pointer: ScreenPoint): [number, number, number] {
    const { origin, direction } = this.#aim.sightAt(pointer);
    const [a, b, c] = [0, 1, 2].map((k) => new Vector3().fromArray(corners, 9 * triangle + 3 * k));
    const [u, v] = [b.clone().sub(a), c.clone().sub(a)];
    const normal = u.clone().cross(v);
    const slope = direction.dot(normal);
    const place = origin
      .clone()
      .addScaledVector(direction, slope === 0 ? 0 : a.clone().sub(origin).dot(normal) / slope);
    const from = place.sub(a);
    const area = normal.lengthSq() || 1;
    const second = Math.max(0, Math.min(1, from.clone().cross(v).dot(normal) / area));
    const third = Math.max(0, Math.min(1 - second, u.clone().cross(from).dot(normal) / area));
    const { positions, triangles } = this.#bench.sculpt;
    const [p, q, r] = [0, 1, 2].map((k) => 3 * triangles[3 * triangle + k]);
    const mix = (k: number): number =>
      positions[p + k] * (1 - second - third) + positions[q + k] * second + positions[r + k] * third;
    return [mix(0), mix(1), mix(2)];
  }
}
