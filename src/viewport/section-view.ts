import { BufferAttribute, BufferGeometry, type Color, Group, Mesh, Plane, Sphere, Vector3 } from 'three';
import { cutPlate, isInArea, thicknessAt, type CutArea } from '../geom/plate-section.ts';
import type { Sight } from './aim.ts';
import type { SectionFigures } from './bench-contract.ts';
import { cutFaceMaterial } from './foam-materials.ts';
import type { FoamPatch } from './foam-patch.ts';
import { LineBatch } from './line-batch.ts';
import type { PlaneFrame } from './plane-frame.ts';

/** Share of its colour that a cut face gives off by itself. */
const OWN_LIGHT = 0.3;

/** One patch and how far it stands from its place on the sculpt. */
export interface StandingPatch {
  readonly patch: FoamPatch;
  readonly shift: Vector3;
}

/** What is under a place of the picture in the cut. */
export interface SectionHit {
  readonly piece: number;
  readonly thicknessMm: number | null;
  readonly distance: number;
}

/** The foam where a plane cuts it open: drawn solid, with its lines. What stands on the normal's side is left out by {@link planes}. */
export class SectionView {
  readonly object = new Group();
  /** What the surfaces on the bench are clipped by while something is cut. */
  readonly planes: readonly Plane[] = [new Plane()];
  readonly #lines = new LineBatch({ widthPx: 1.8, renderOrder: 4 });
  readonly #face = new Mesh(new BufferGeometry(), cutFaceMaterial());
  #cuts: readonly { readonly piece: number; readonly area: CutArea }[] = [];
  #frame: PlaneFrame | null = null;
  #box: readonly [number, number, number, number] | null = null;

  constructor() {
    this.object.add(this.#face, this.#lines.object);
    this.#face.frustumCulled = false;
    this.#face.receiveShadow = true;
    this.object.visible = false;
  }

  get isCut(): boolean {
    return this.#frame !== null;
  }

  paint(foam: Color, line: Color): void {
    const { material } = this.#face;
    material.color.copy(foam);
    // A fresh cut is seen in the shade of the wall as well.
    material.emissive.copy(foam).multiplyScalar(OWN_LIGHT);
    this.#lines.colour = line;
  }

  /** Cuts what stands on the bench, or nothing for null. @returns the size of the cut, or null where nothing is met. */
  cut(frame: PlaneFrame | null, standing: readonly StandingPatch[]): SectionFigures | null {
    this.#frame = frame;
    this.object.visible = frame !== null;
    if (frame === null) {
      this.#cuts = [];
      this.#box = null;
      return null;
    }
    const { centre, u, v, normal } = frame;
    this.planes[0].setFromNormalAndCoplanarPoint(normal.clone().negate(), centre);
    const plane = { origin: centre, u, v };
    this.#cuts = standing.flatMap(({ patch: { shape, borders }, shift }) =>
      cutPlate({ ...shape, borders }, plane, shift).map((area) => ({ piece: shape.piece, area })),
    );
    this.#fill(frame);
    return this.#figures();
  }

  /** Whether what was at a place is taken away. */
  isAway(place: Vector3): boolean {
    return this.isCut && this.planes[0].distanceToPoint(place) < 0;
  }

  /** Least x, least y, greatest x, greatest y of what is cut, in the frame, mm; null where nothing is met. */
  get box(): readonly [number, number, number, number] | null {
    return this.#box;
  }

  /** The foam that is seen cut along a line of sight. */
  hit({ origin, direction }: Sight): SectionHit | null {
    const frame = this.#frame;
    if (frame === null) return null;
    const slope = direction.dot(frame.normal);
    // From behind, the cut is hidden by what is left.
    if (slope > -1e-6) return null;
    const distance = frame.centre.clone().sub(origin).dot(frame.normal) / slope;
    if (distance <= 0) return null;
    const way = origin.clone().addScaledVector(direction, distance).sub(frame.centre);
    const [x, y] = [way.dot(frame.u), way.dot(frame.v)];
    const found = this.#cuts.find(({ area }) => isInArea(area, x, y));
    return found === undefined ? null : { piece: found.piece, thicknessMm: thicknessAt(found.area, x, y), distance };
  }

  /** The part of a line of sight that runs through what is left of the scene. */
  beyond(sight: Sight): Sight {
    const frame = this.#frame;
    if (frame === null) return sight;
    const { origin, direction } = sight;
    const height = origin.clone().sub(frame.centre).dot(frame.normal);
    const slope = direction.dot(frame.normal);
    if (height <= 0 || slope > -1e-6) return sight;
    return { origin: origin.clone().addScaledVector(direction, -height / slope), direction };
  }

  dispose(): void {
    this.#face.geometry.dispose();
    this.#face.material.dispose();
    this.#lines.dispose();
  }

  #fill({ centre, u, v, normal }: PlaneFrame): void {
    const points: number[] = [];
    const index: number[] = [];
    const lines: number[] = [];
    const at = new Vector3();
    for (const { area } of this.#cuts) {
      const first = points.length / 3;
      for (const { points: ring } of [area.outer, ...area.holes]) {
        const start = points.length;
        for (let i = 0; i < ring.length; i += 2)
          at.copy(centre)
            .addScaledVector(u, ring[i])
            .addScaledVector(v, ring[i + 1])
            .toArray(points, points.length);
        for (let i = start; i < points.length; i += 3) {
          const j = i + 3 < points.length ? i + 3 : start;
          lines.push(points[i], points[i + 1], points[i + 2], points[j], points[j + 1], points[j + 2]);
        }
      }
      for (const p of area.triangles) index.push(first + p);
    }
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3));
    const normals = new Float32Array(points.length);
    for (let i = 0; i < normals.length; i += 3) normal.toArray(normals, i);
    geometry.setAttribute('normal', new BufferAttribute(normals, 3));
    geometry.setIndex(index);
    geometry.boundingSphere = new Sphere(undefined, Infinity);
    this.#face.geometry.dispose();
    this.#face.geometry = geometry;
    this.#lines.set(lines);
  }

  #figures(): SectionFigures | null {
    let [minX, maxX, minY, maxY] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const { area } of this.#cuts) {
      const { points } = area.outer;
      for (let i = 0; i < points.length; i += 2) {
        minX = Math.min(minX, points[i]);
        maxX = Math.max(maxX, points[i]);
        minY = Math.min(minY, points[i + 1]);
        maxY = Math.max(maxY, points[i + 1]);
      }
    }
    this.#box = maxX < minX ? null : [minX, minY, maxX, maxY];
    return maxX < minX ? null : { breadthMm: maxX - minX, heightMm: maxY - minY };
  }
}
