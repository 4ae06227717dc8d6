import type { Vec3 } from '../../src/geom/vec.ts';
import { mirrored, type Cell } from './cells.ts';

/** Coordinates are written to this many steps per mm, so that a twin's numbers match digit for digit. */
const STEPS_PER_MM = 1000;

export interface SampleFace {
  /** Vertex numbers from 0, counter-clockwise seen from outside. */
  readonly corners: readonly number[];
  /** Design name of the panel the face lies in: the `g` line of the OBJ. */
  readonly panel: string;
}

export interface SampleModel {
  readonly name: string;
  /** mm, y up, front towards +z, x = 0 is the mirror plane. */
  readonly vertices: readonly Vec3[];
  readonly faces: readonly SampleFace[];
  /** Pairs of vertex numbers, the lower one first, in ascending order. */
  readonly seams: readonly (readonly [number, number])[];
}

/**
 * Collects the panels of a model. Points that round to the same 0.001 mm are one vertex.
 * Every panel becomes one piece of foam: where two panels meet there is a seam.
 */
export class ModelBuilder {
  readonly #name: string;
  readonly #vertices: Vec3[] = [];
  readonly #numberOf = new Map<string, number>();
  readonly #faces: SampleFace[] = [];
  readonly #cuts: (readonly [number, number])[] = [];

  constructor(name: string) {
    this.#name = name;
  }

  /** Adds cells as they are, as one piece. */
  panel(panel: string, cells: readonly Cell[]): void {
    for (const cell of cells) this.#faces.push({ corners: cell.map((p) => this.#vertex(p)), panel });
  }

  /** Adds cells of the side x >= 0 and their mirror image, each a piece of its own, named after the side of the wearer it is on. */
  twins(panel: string, cells: readonly Cell[], [plus, minus]: readonly [string, string] = ['left', 'right']): void {
    this.panel(`${panel}-${plus}`, cells);
    this.panel(`${panel}-${minus}`, cells.map(mirrored));
  }

  /** Adds cells of the side x >= 0 and their mirror image, together one piece that lies across the mirror plane. */
  across(panel: string, cells: readonly Cell[]): void {
    this.panel(panel, cells);
    this.panel(panel, cells.map(mirrored));
  }

  /** Cuts a piece along a row of neighbouring vertices, where it meets itself (a tube, a ring) or ends inside (a dart). */
  cutAlong(line: readonly Vec3[]): void {
    for (let i = 1; i < line.length; i++) this.#cuts.push([this.#vertex(line[i - 1]), this.#vertex(line[i])]);
  }

  build(): SampleModel {
    const panelOfEdge = new Map<string, string>();
    const seams = new Map<string, readonly [number, number]>();
    const key = (a: number, b: number): string => `${Math.min(a, b)} ${Math.max(a, b)}`;
    const addSeam = (a: number, b: number): void => {
      seams.set(key(a, b), [Math.min(a, b), Math.max(a, b)]);
    };
    for (const { corners, panel } of this.#faces) {
      corners.forEach((a, k) => {
        const b = corners[(k + 1) % corners.length];
        const other = panelOfEdge.get(key(a, b));
        if (other !== undefined && other !== panel) addSeam(a, b);
        panelOfEdge.set(key(a, b), panel);
      });
    }
    for (const [a, b] of this.#cuts) {
      if (!panelOfEdge.has(key(a, b))) throw new Error(`${this.#name}: a cut leaves the edges of the model`);
      addSeam(a, b);
    }
    return {
      name: this.#name,
      vertices: this.#vertices,
      faces: this.#faces,
      seams: [...seams.values()].sort((p, q) => p[0] - q[0] || p[1] - q[1]),
    };
  }

  #vertex(point: Vec3): number {
    const p = { x: rounded(point.x), y: rounded(point.y), z: rounded(point.z) };
    const key = `${p.x} ${p.y} ${p.z}`;
    const known = this.#numberOf.get(key);
    if (known !== undefined) return known;
    this.#numberOf.set(key, this.#vertices.length);
    this.#vertices.push(p);
    return this.#vertices.length - 1;
  }
}

/** Rounds by size, not upwards, so that a coordinate and its negative round alike; never gives -0. */
function rounded(mm: number): number {
  const size = Math.round(Math.abs(mm) * STEPS_PER_MM) / STEPS_PER_MM;
  return mm < 0 && size > 0 ? -size : size;
}
