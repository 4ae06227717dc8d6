import { boxOfPoints, type Box2 } from '../../geom/ring.ts';
import { noFitRings } from './no-fit.ts';
import { turnRing, type Shape, type Turn } from './shape.ts';

/** Where one shape overlaps another, as seen from that other's nought; steps of the lattice. */
export interface NoFit {
  readonly rings: readonly Float64Array[];
  readonly box: Box2;
}

/** No-fit areas of shapes as they lie, found when first asked for. Any turn has a place in it, not only those of a list of poses. */
export class NoFitBook {
  readonly #shapes: readonly Shape[];
  readonly #turns: Turn[] = [];
  readonly #turnKeys = new Map<string, number>();
  readonly #laid = new Map<number, NoFit>();
  readonly #found = new Map<string, readonly Float64Array[]>();

  constructor(shapes: readonly Shape[]) {
    this.#shapes = shapes;
  }

  /** Number of a turn, the same for the same. */
  turnNumber(turn: Turn): number {
    const key = turn.join(' ');
    const known = this.#turnKeys.get(key);
    if (known !== undefined) return known;
    this.#turns.push(turn);
    this.#turnKeys.set(key, this.#turns.length - 1);
    return this.#turns.length - 1;
  }

  /** @param a,b shapes; @param aTurn,bTurn numbers of their turns. */
  noFit(a: number, aTurn: number, b: number, bTurn: number): NoFit {
    const key = ((a * MOST_TURNS + aTurn) * this.#shapes.length + b) * MOST_TURNS + bTurn;
    const known = this.#laid.get(key);
    if (known !== undefined) return known;
    const turn = this.#turns[aTurn];
    const rings = this.#seenFrom(a, turn, b, this.#turns[bTurn]).map((ring) => turnRing(ring, turn).map(Math.round));
    const made = { rings, box: boxOfPoints(rings.flatMap((ring) => [...ring])) };
    this.#laid.set(key, made);
    return made;
  }

  /** As seen by one who is turned with `a`. */
  #seenFrom(a: number, turn: Turn, b: number, other: Turn): readonly Float64Array[] {
    const seen = relativeTurn(turn, other);
    const key = `${a} ${b} ${seen.map((value) => Math.round(value * 1e7)).join(' ')}`;
    const known = this.#found.get(key);
    if (known !== undefined) return known;
    const { rings, parts } = this.#shapes[b];
    const made = noFitRings(this.#shapes[a], {
      rings: rings.map((ring) => turnRing(ring, seen)),
      parts: parts.map((part) => turnRing(part, seen)),
    });
    this.#found.set(key, made);
    return made;
  }
}

/** Turns that are told apart. */
const MOST_TURNS = 1e5;

/** `b` as it looks to one who is turned by `a`: the inverse of `a`, then `b`. A turn's inverse is its transpose. */
const relativeTurn = ([a, b, c, d]: Turn, [e, f, g, h]: Turn): Turn => [
  a * e + c * g,
  a * f + c * h,
  b * e + d * g,
  b * f + d * h,
];
