import { boxOfPoints } from '../../geom/ring.ts';
import { DepthGrid } from './depth-grid.ts';
import { noFitRings } from './no-fit.ts';
import { turnOf, turnRing, type Shape, type Turn } from './shape.ts';

/**
 * Places nearer than this to the border of a no-fit area count as overlapping, in steps of the lattice: more than its corners are off by rounding, and
 * those of shapes that are turned other than by quarters.
 */
const CLEAR_OF_QUARTERS = 1;
const CLEAR_OF_TURNS = 4;

/** How the price of an overlap grows with the size of what is overlapped. */
const SIZE_POWER = 0.75;

/** Every way every shape may lie, numbered through, and what any two of them need to be clear of each other, found when first asked for. */
export class PoseTable {
  readonly shapes: readonly Shape[];
  readonly count: number;
  /** First pose of each shape; one more at the end. */
  readonly firstOf: Int32Array;
  readonly shapeOf: Int32Array;
  readonly turns: readonly Turn[];
  /** The four numbers of each turn. */
  readonly turnParts: Float64Array;
  /** How far apart, in steps, two pieces must be to count as clear of each other. */
  readonly clear: number;
  readonly minX: Float64Array;
  readonly minY: Float64Array;
  readonly maxX: Float64Array;
  readonly maxY: Float64Array;
  /** Price of a step of depth in a piece of each pose: more in a large one, which is harder to find a place for. */
  readonly scale: Float64Array;
  readonly grids: DepthGrid[] = [];
  /** Poses of each shape worth trying: of those that look the same the first. */
  readonly looks: readonly Int32Array[];
  /** Number of the grid for two poses, or -1. */
  readonly #gridOf: Int32Array;
  readonly #known = new Map<string, number>();

  /** @param isExact  whether outlines are on the lattice as they were given, not rounded to it. */
  constructor(shapes: readonly Shape[], isExact = false) {
    this.shapes = shapes;
    this.firstOf = new Int32Array(shapes.length + 1);
    for (const [i, { stances }] of shapes.entries()) this.firstOf[i + 1] = this.firstOf[i] + stances.length;
    this.count = this.firstOf[shapes.length];
    this.shapeOf = Int32Array.from(shapes.flatMap(({ stances }, i) => stances.map(() => i)));
    this.turns = shapes.flatMap(({ stances }) => stances.map(turnOf));
    this.turnParts = Float64Array.from(this.turns.flat());
    this.clear =
      isExact && this.turns.every((turn) => turn.every(Number.isInteger)) ? CLEAR_OF_QUARTERS : CLEAR_OF_TURNS;
    const boxes = this.turns.map((_, pose) => boxOfPoints(this.ringsOf(pose)[0]));
    this.minX = Float64Array.from(boxes, ({ minX }) => minX);
    this.minY = Float64Array.from(boxes, ({ minY }) => minY);
    this.maxX = Float64Array.from(boxes, ({ maxX }) => maxX);
    this.maxY = Float64Array.from(boxes, ({ maxY }) => maxY);
    const sizes = boxes.map((box) => Math.sqrt((box.maxX - box.minX) * (box.maxY - box.minY)));
    const largest = sizes.reduce((a, b) => Math.max(a, b), 1);
    this.scale = Float64Array.from(sizes, (size) => (size / largest) ** SIZE_POWER);
    this.looks = shapes.map((_, shape) => {
      const seen = new Set<string>();
      const kept: number[] = [];
      for (let pose = this.firstOf[shape]; pose < this.firstOf[shape + 1]; pose += 1) {
        const look = lookOf(this.ringsOf(pose), this.minX[pose], this.minY[pose]);
        if (seen.has(look)) continue;
        seen.add(look);
        kept.push(pose);
      }
      return Int32Array.from(kept);
    });
    this.#gridOf = new Int32Array(this.count * this.count).fill(-1);
  }

  /** The shape's rings as they lie in a pose, whole numbers about its nought. */
  ringsOf(pose: number): readonly Float64Array[] {
    const turn = this.turns[pose];
    return this.shapes[this.shapeOf[pose]].rings.map((ring) => turnRing(ring, turn).map(Math.round));
  }

  /**
   * True where two poses share the grid of the first as it moves about the second: one grid does for both, and of two shapes the one that comes first
   * stays still.
   */
  isSwapped(still: number, moving: number): boolean {
    return this.shapeOf[still] > this.shapeOf[moving];
  }

  /** Depth at which a piece lies in another that stands still, `dx` `dy` from its nought to that of the moving one, steps. */
  depth(still: number, moving: number, dx: number, dy: number): number {
    const t = this.turnParts;
    const at = 4 * still;
    return this.grids[this.gridOf(still, moving)].depth(t[at] * dx + t[at + 2] * dy, t[at + 1] * dx + t[at + 3] * dy);
  }

  /** Grid of the places, seen from `still` as its shape was drawn, where `moving` overlaps it. */
  gridOf(still: number, moving: number): number {
    const at = still * this.count + moving;
    const known = this.#gridOf[at];
    return known >= 0 ? known : (this.#gridOf[at] = this.#found(still, moving));
  }

  #found(one: number, other: number): number {
    const [a, b] = [this.shapeOf[one], this.shapeOf[other]];
    const seen = relativeTurn(this.turns[one], this.turns[other]);
    const key = `${a} ${b} ${seen.map((value) => Math.round(value * 1e7)).join(' ')}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const { rings, parts } = this.shapes[b];
    const moving = {
      rings: rings.map((ring) => turnRing(ring, seen)),
      parts: parts.map((part) => turnRing(part, seen)),
    };
    this.grids.push(new DepthGrid(noFitRings(this.shapes[a], moving), this.clear));
    this.#known.set(key, this.grids.length - 1);
    return this.grids.length - 1;
  }
}

/** `b` as it looks to one who is turned by `a`: the inverse of `a`, then `b`. A turn's inverse is its transpose. */
const relativeTurn = ([a, b, c, d]: Turn, [e, f, g, h]: Turn): Turn => [
  a * e + c * g,
  a * f + c * h,
  b * e + d * g,
  b * f + d * h,
];

/** The same for rings that are the same but for where they lie and where they begin. */
function lookOf(rings: readonly Float64Array[], x: number, y: number): string {
  return rings
    .map((ring) => {
      const n = ring.length / 2;
      let first = 0;
      for (let i = 1; i < n; i += 1)
        if (ring[2 * i] < ring[2 * first] || (ring[2 * i] === ring[2 * first] && ring[2 * i + 1] < ring[2 * first + 1]))
          first = i;
      const corners: string[] = [];
      for (let k = 0; k < n; k += 1) {
        const i = (first + k) % n;
        corners.push(`${ring[2 * i] - x},${ring[2 * i + 1] - y}`);
      }
      return corners.join(' ');
    })
    .sort()
    .join(';');
}
