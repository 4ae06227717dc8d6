import type { Mesh } from '../../mesh/mesh.ts';

/** Share of a side within which a line through it takes the side's end: closer, it would leave a needle. */
const SNAP_SHARE = 0.02;
/**
 * The same at sides with a label, mm, and at most so large a share of them: a line that ends there close to a corner would leave the piece a
 * cut edge too short for the corner of its foam.
 */
const SNAP_AT_EDGE_MM = 1.5;
const MOST_SNAP_SHARE = 0.4;

/** Of edges along the lines that were cut. */
export const NO_LABEL = -1;

/** One number for an edge, whichever way it is taken; vertices are fewer than 2^26. */
export const edgeKeyOf = (v: number, w: number): number => Math.min(v, w) * 0x4000000 + Math.max(v, w);

/** Both vertices of an edge, the lower first. */
export const endsOfKey = (key: number): [number, number] => [Math.floor(key / 0x4000000), key % 0x4000000];

/** Where a side is cut: the new vertex, and how far it lies from the end of the lower number, as a share. */
interface Split {
  readonly vertex: number;
  readonly share: number;
}

/**
 * A surface that is cut finer along lines on which a value is the same. Vertices of the mesh keep their numbers, new ones follow; every
 * triangle knows the one of the mesh it is a part of.
 */
export class FinerSurface {
  readonly positions: number[];
  triangles: number[];
  /** Triangle of the mesh, per triangle. */
  source: number[];
  /** Values at the corners of triangles, one list per field; Infinity where a field says nothing. */
  fields: number[][];
  /** A number, 0 or more, that the user gives to edges, which their parts keep; {@link NO_LABEL} along the lines that were cut. */
  readonly labels: Map<number, number>;

  /**
   * @param fields  per corner of the mesh's triangles.
   * @param labels  by {@link edgeKeyOf}.
   */
  constructor(mesh: Mesh, fields: readonly (readonly number[])[], labels: ReadonlyMap<number, number>) {
    this.positions = Array.from(mesh.positions);
    this.triangles = Array.from(mesh.triangles);
    this.source = Array.from({ length: mesh.triangles.length / 3 }, (_, t) => t);
    this.fields = fields.map((field) => [...field]);
    this.labels = new Map(labels);
  }

  /**
   * Cuts triangles along the line on which a field has a value, so that each lies on one side of it.
   * @param isMeant  whether the line runs through a triangle; others are cut only where they share a cut side.
   * @returns for each triangle that there now is, the one it was.
   */
  cutAlong(field: number, level: number, isMeant: (triangle: number) => boolean): number[] {
    this.#snap(field, level, isMeant);
    const splits = this.#splits(field, level, isMeant);
    this.#splitLabels(splits);
    const before = { triangles: this.triangles, source: this.source, fields: this.fields };
    const was: number[] = [];
    [this.triangles, this.source, this.fields] = [[], [], before.fields.map(() => [])];
    for (let t = 0; t < before.source.length; t += 1) {
      const corners = before.triangles.slice(3 * t, 3 * t + 3);
      const sides = [0, 1, 2].map((k) => splits.get(edgeKeyOf(corners[k], corners[(k + 1) % 3])));
      const points = [...corners, ...sides.map((split) => split?.vertex ?? -1)];
      const parts = partsOf(points, this.positions);
      const values = before.fields.map((own, f) => {
        const at = own.slice(3 * t, 3 * t + 3);
        return [
          ...at,
          ...sides.map((split, k) => between(corners, at, k, split, f === field && isMeant(t) ? level : null)),
        ];
      });
      for (const part of parts) {
        was.push(t);
        this.source.push(before.source[t]);
        for (const corner of part) {
          this.triangles.push(points[corner]);
          values.forEach((own, f) => this.fields[f].push(own[corner]));
        }
      }
    }
    this.#labelLine(field, level, (t) => isMeant(was[t]));
    return was;
  }

  /** Lines that come later end on this one as they do on any other edge of a piece. */
  #labelLine(field: number, level: number, isMeant: (triangle: number) => boolean): void {
    const values = this.fields[field];
    for (let h = 0; h < values.length; h += 1) {
      const next = h % 3 === 2 ? h - 2 : h + 1;
      if (values[h] !== level || values[next] !== level || !isMeant(Math.floor(h / 3))) continue;
      const key = edgeKeyOf(this.triangles[h], this.triangles[next]);
      if (!this.labels.has(key)) this.labels.set(key, NO_LABEL);
    }
  }

  /** Brings ends of sides that the line passes closely onto it. */
  #snap(field: number, level: number, isMeant: (triangle: number) => boolean): void {
    const values = this.fields[field];
    const moved = new Map<number, number[]>();
    this.#eachCrossed(field, level, isMeant, (h, next, share) => {
      const most = this.#snapShare(this.triangles[h], this.triangles[next]);
      const near = share < most ? h : share > 1 - most ? next : -1;
      if (near >= 0) moved.set(this.triangles[near], [...(moved.get(this.triangles[near]) ?? []), values[near]]);
    });
    if (moved.size === 0) return;
    for (let h = 0; h < values.length; h += 1) {
      // A vertex on a seam has a value of its own on either side of it.
      if (moved.get(this.triangles[h])?.includes(values[h]) === true) values[h] = level;
    }
  }

  #snapShare(v: number, w: number): number {
    if (!this.labels.has(edgeKeyOf(v, w))) return SNAP_SHARE;
    return Math.max(SNAP_SHARE, Math.min(MOST_SNAP_SHARE, SNAP_AT_EDGE_MM / distance(this.positions, v, w)));
  }

  #splits(field: number, level: number, isMeant: (triangle: number) => boolean): Map<number, Split> {
    const splits = new Map<number, Split>();
    this.#eachCrossed(field, level, isMeant, (h, next, share) => {
      const [v, w] = [this.triangles[h], this.triangles[next]];
      const key = edgeKeyOf(v, w);
      if (splits.has(key)) return;
      const vertex = this.positions.length / 3;
      for (let i = 0; i < 3; i += 1)
        this.positions.push(this.positions[3 * v + i] * (1 - share) + this.positions[3 * w + i] * share);
      splits.set(key, { vertex, share: v < w ? share : 1 - share });
    });
    return splits;
  }

  /** @param use  is given both ends of a side of a triangle, as places, and where the line crosses it, as a share from the first. */
  #eachCrossed(
    field: number,
    level: number,
    isMeant: (triangle: number) => boolean,
    use: (h: number, next: number, share: number) => void,
  ): void {
    const values = this.fields[field];
    for (let h = 0; h < values.length; h += 1) {
      const next = h % 3 === 2 ? h - 2 : h + 1;
      const [a, b] = [values[h], values[next]];
      const isCrossed = (a < level && b > level) || (a > level && b < level);
      if (isCrossed && Number.isFinite(a) && Number.isFinite(b) && isMeant(Math.floor(h / 3)))
        use(h, next, (level - a) / (b - a));
    }
  }

  #splitLabels(splits: ReadonlyMap<number, Split>): void {
    for (const [key, { vertex }] of splits) {
      const label = this.labels.get(key);
      if (label === undefined) continue;
      this.labels.delete(key);
      for (const end of endsOfKey(key)) this.labels.set(edgeKeyOf(end, vertex), label);
    }
  }
}

/** Value at the cut of side k; taken from its lower end, so that both triangles at the side come to the same number. */
function between(
  corners: readonly number[],
  values: readonly number[],
  k: number,
  split: Split | undefined,
  level: number | null,
): number {
  if (split === undefined) return NaN;
  const [a, b] = [k, (k + 1) % 3];
  const [low, high] = corners[a] < corners[b] ? [values[a], values[b]] : [values[b], values[a]];
  if (level !== null && low < level !== high < level) return level;
  return low === high ? low : low * (1 - split.share) + high * split.share;
}

/**
 * Triangles a triangle falls into. Its corners are points 0, 1, 2, cuts of its sides 3, 4, 5 (side k from corner k to the next), -1 where a
 * side is whole.
 */
function partsOf(points: readonly number[], positions: readonly number[]): readonly (readonly number[])[] {
  const cut = [3, 4, 5].filter((i) => points[i] >= 0);
  const next = (k: number): number => (k + 1) % 3;
  switch (cut.length) {
    case 0:
      return [[0, 1, 2]];
    case 1: {
      const k = cut[0] - 3;
      const top = next(next(k));
      return [
        [k, cut[0], top],
        [cut[0], next(k), top],
      ];
    }
    case 2: {
      const k = [0, 1, 2].find((side) => points[3 + side] < 0) ?? 0;
      const [a, b, c] = [k, next(k), next(next(k))];
      const [right, left] = [3 + b, 3 + c];
      const rest =
        distance(positions, points[a], points[right]) <= distance(positions, points[b], points[left])
          ? [
              [a, b, right],
              [a, right, left],
            ]
          : [
              [a, b, left],
              [b, right, left],
            ];
      return [[right, c, left], ...rest];
    }
    default:
      return [
        [0, 3, 5],
        [3, 1, 4],
        [5, 4, 2],
        [3, 4, 5],
      ];
  }
}

const distance = (positions: readonly number[], v: number, w: number): number =>
  Math.hypot(...[0, 1, 2].map((i) => positions[3 * v + i] - positions[3 * w + i]));
