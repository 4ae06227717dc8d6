import type { Work } from '../../base/work.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';
import type { FlattenOptions } from '../../steps/flatten/flatten-options.ts';
import { flattenPatch } from '../../steps/flatten/flatten-patch.ts';
import { flatSystem, type FlatSystem } from '../../steps/flatten/flat-system.ts';
import { measureStretch } from '../../steps/flatten/measure-stretch.ts';
import { minimise, NewtonRoom } from '../../steps/flatten/newton.ts';
import { overlapsOf } from '../../steps/flatten/overlaps-of.ts';
import { restShapes, type RestShapes } from '../../steps/flatten/rest-shapes.ts';
import { seamSprings } from '../../steps/flatten/seam-springs.ts';
import { settle } from '../../steps/flatten/settle.ts';
import { startNear } from '../../steps/flatten/start-shape.ts';
import { evenSlope, excesses } from '../../steps/flatten/triangle-cost.ts';
import type { PieceGround, ProposalLimits, ProposalWish } from './proposal.ts';
import { narrowestPlace, percentile99, sheetShare } from './piece-limits.ts';
import { shapeFromEarlier } from './shape-from-earlier.ts';

/** What the flattening engine says of one piece. */
export interface Verdict {
  readonly patch: Patch;
  /** x y per local vertex, mm; null where the piece cannot be laid flat at all. */
  readonly uv: Float64Array | null;
  /** Greatest of all figures over their limits; 1 just holds. Infinity where the piece cannot be laid flat. */
  readonly share: number;
  /** Per cent, see `percentile99`. */
  readonly stretch99: number;
  readonly squash99: number;
  readonly overlaps: number;
  readonly sheetShare: number;
  readonly widthShare: number;
  /**
   * By how much it fails, 0 where nothing does: the logarithm of `share`, and a fine for what lies double. A narrow part is told and
   * priced, and no piece fails for it.
   */
  readonly badness: number;
  /** Per triangle of the patch the greater of stretch and squash over its limit. */
  readonly strain: Float64Array;
  /** Mean excess of the plain shape, against which the worst was evened out; 0 where it was not. */
  readonly excess: number;
  /** False where it was given up half way: `badness` is then a guess, from which it is known to be over what was asked. */
  readonly isWhole: boolean;
  /** Set once it was laid flat from nothing, in full. */
  readonly flat: FlatPiece | null;
}

/** Evening out lowers the worst by no more than this share of it: on the pieces of the test models by 0.58 to 1. */
const MOST_EVENED = 0.55;
/** By about so much in the middle. */
const OFTEN_EVENED = 0.75;
/** Badness of a piece that has no edge, or a handle. */
const NOT_FLAT = 4;
/** Fine for the first pair of triangles that lie on each other, and for all of them doing so. */
const OVERLAP_FINE = 0.05;
const OVERLAP_SHARE_FINE = 1;
/** Triangles of all pieces whose verdicts are remembered: some hundred bytes each. */
const KEPT_TRIANGLES = 1_000_000;

/** Powers by which the worst is evened out, as in `settle`. */
const EVEN_POWERS = [2, 4];
const LEAST_EXCESS = 1e-10;
/** Mean excess of a plain shape beside that of the evened one, about. */
const EVENED_EXCESS = 0.8;
/** A shape to begin from whose figures are under this many times their limits is evened out at once; a worse one is first brought near. */
const NEARLY_EVEN = 1.5;
/** Evening out is given up where the figures are this far over what is asked and have hardly come down over the last steps. */
const HOPELESS = 1.04;
const SETTLING = 1.03;
const SETTLING_STEPS = 2;
/** Promise of Newton's method at which a trial stops: percentages are then right to a few hundredths. */
const ENOUGH = 1e-4;

/** Lays pieces flat and measures them against the limits; remembers what it has seen. */
export class Judge {
  readonly limits: ProposalLimits;
  /** Triangles of all pieces laid flat so far, one by one. */
  laidTriangles = 0;
  readonly #surfaceOf: (patch: Patch) => PieceGround;
  readonly #isSewn: (v: number, w: number) => boolean;
  readonly #work: Work;
  readonly #known = new Map<string, Verdict>();
  #kept = 0;

  constructor(
    { mesh, positions, limits, surfaceOf }: Pick<ProposalWish, 'mesh' | 'positions' | 'limits' | 'surfaceOf'>,
    work: Work,
  ) {
    this.limits = limits;
    this.#surfaceOf = surfaceOf ?? (() => ({ positions }));
    this.#work = work;
    const topology = topologyOf(mesh);
    this.#isSewn = (v, w) => {
      const e = topology.edgeBetween(v, w);
      return e >= 0 && topology.twin[topology.halfedgeOfEdge[e]] >= 0;
    };
  }

  /**
   * @param key      equal for equal pieces.
   * @param earlier  verdicts on pieces that may share triangles with this one: where to begin from.
   * @param most     badness beyond which the exact figure does not matter.
   */
  async judge(key: string, patch: Patch, earlier: readonly Verdict[], most: number): Promise<Verdict> {
    const known = this.#known.get(key);
    if (known !== undefined && (known.isWhole || known.badness > most)) return known;
    const verdict = await this.#layFlat(known?.patch ?? patch, earlier, most);
    this.#remember(key, verdict);
    return verdict;
  }

  /** The same from nothing and in full, as the pieces are made in the end: what a proposal rests on. */
  async confirm(key: string, verdict: Verdict): Promise<Verdict> {
    if (verdict.flat !== null || verdict.uv === null) return verdict;
    const { patch } = verdict;
    this.laidTriangles += patch.meshTriangles.length;
    const surface = this.#surfaceOf(patch);
    const result = await flattenPatch(patch, surface.positions, this.#options(patch), this.#work);
    const rest = restShapes(patch, surface.positions, surface.corners);
    const sure = result.ok
      ? {
          ...this.#measure(patch, rest, result.value.uv, verdict.excess, countOverlaps(result.value)),
          flat: result.value,
        }
      : { ...verdict, badness: NOT_FLAT, share: Infinity, uv: null };
    this.#remember(key, sure);
    return sure;
  }

  #remember(key: string, verdict: Verdict): void {
    const count = verdict.patch.meshTriangles.length;
    if (this.#known.delete(key)) this.#kept -= count;
    this.#known.set(key, verdict);
    this.#kept += count;
    for (const [old, { patch }] of this.#known) {
      if (this.#kept <= KEPT_TRIANGLES || old === key) break;
      this.#known.delete(old);
      this.#kept -= patch.meshTriangles.length;
    }
  }

  #options(patch: Patch): FlattenOptions {
    const { laying } = this.limits;
    const { corners, lengthsOf } = this.#surfaceOf(patch);
    const options = corners === undefined ? laying : { ...laying, corners };
    if (laying.seamPrice <= 0) return options;
    const heldEdges = this.#heldEdges(patch);
    return { ...options, heldEdges, ...(lengthsOf === undefined ? {} : { heldLengths: lengthsOf(heldEdges) }) };
  }

  #heldEdges({ loops, meshVertices }: Patch): Uint32Array {
    const pairs: number[] = [];
    for (const loop of loops) {
      for (let i = 0; i < loop.length; i += 1) {
        const [v, w] = [loop[i], loop[(i + 1) % loop.length]];
        if (this.#isSewn(meshVertices[v], meshVertices[w])) pairs.push(v, w);
      }
    }
    return Uint32Array.from(pairs);
  }

  async #layFlat(patch: Patch, earlier: readonly Verdict[], most: number): Promise<Verdict> {
    if (patch.kind === 'closed' || patch.kind === 'handled') return notFlat(patch);
    const surface = this.#surfaceOf(patch);
    const rest = restShapes(patch, surface.positions, surface.corners);
    if (!rest.empty.includes(0)) return notFlat(patch);
    this.laidTriangles += patch.meshTriangles.length;
    const work = this.#work;
    await work.pause(0);
    const graph = graphOfTriangles(rest.vertexCount, patch.triangles);
    const system = flatSystem(patch, rest, graph);
    const room = new NewtonRoom(system.plan);
    const { evenOut } = this.limits.laying;
    const start = shapeFromEarlier(patch, surface.positions, earlier);
    const excess = earlier[0]?.excess ?? 0;
    const asked = Math.exp(most);
    if (evenOut && start !== null && excess > LEAST_EXCESS) {
      const begun = this.#measure(patch, rest, start, 0);
      if (begun.share < NEARLY_EVEN) {
        const even = await this.#evenedFrom(patch, system, start, room, {
          excess,
          powers: EVEN_POWERS.slice(-1),
          asked,
        });
        if (even !== null) {
          const next = EVENED_EXCESS * this.#meanExcess(rest, even.flat);
          return this.#measured(patch, rest, even.flat, next, even.isWhole);
        }
      }
    }
    const near = await startNear(patch, system, { earlier: start ?? undefined, rolled: undefined }, work);
    if (near === null) return notFlat(patch);
    const mean = await this.#meanShape(patch, system, near, room);
    if (mean === null) return notFlat(patch);
    if (!evenOut) return this.#measured(patch, rest, mean, 0);
    const first = this.#measure(patch, rest, mean, 0);
    if (first.share * MOST_EVENED > asked) {
      const share = first.share * OFTEN_EVENED;
      return { ...first, share, badness: Math.max(Math.log(share), most + 1e-9), isWhole: false };
    }
    const found = this.#meanExcess(rest, mean);
    if (!(found > LEAST_EXCESS)) return this.#measured(patch, rest, mean, 0);
    const even = await this.#evenedFrom(patch, system, mean, room, {
      excess: found,
      powers: EVEN_POWERS,
      asked,
    });
    return this.#measured(patch, rest, even?.flat ?? mean, found, even?.isWhole);
  }

  #measured(patch: Patch, rest: RestShapes, uv: Float64Array, excess: number, isWhole = true): Verdict {
    return { ...this.#measure(patch, rest, uv, excess, this.#overlaps(patch, uv)), isWhole };
  }

  #meanExcess(rest: RestShapes, uv: Float64Array): number {
    return excesses(rest, this.limits.laying.squashPrice, uv).reduce((sum, one, t) => sum + one * rest.weight[t], 0);
  }

  #overlaps(patch: Patch, uv: Float64Array): number {
    return overlapsOf(patch, uv).overlapCount ?? 0;
  }

  async #meanShape(
    patch: Patch,
    system: FlatSystem,
    near: Float64Array,
    room: NewtonRoom,
  ): Promise<Float64Array | null> {
    const { laying } = this.limits;
    if (laying.seamPrice > 0 || laying.keepApart) {
      const options = { ...this.#options(patch), quality: 'first' as const };
      return (await settle(patch, system, near, { ...options, keepApart: false }, this.#work))?.flat ?? null;
    }
    const cost = { weights: system.rest.weight, squashPrice: laying.squashPrice, evenOut: null };
    const found = await minimise({ system, cost, terms: [] }, near, this.#work, ENOUGH, undefined, room);
    return found?.flat ?? null;
  }

  /** As `settle` does it, but only nearly to the end; null where numbers do not hold. */
  async #evenedFrom(
    patch: Patch,
    system: FlatSystem,
    start: Float64Array,
    room: NewtonRoom,
    { excess, powers, asked }: { readonly excess: number; readonly powers: readonly number[]; readonly asked: number },
  ): Promise<{ readonly flat: Float64Array; readonly isWhole: boolean } | null> {
    const { squashPrice, seamPrice } = this.limits.laying;
    const { rest } = system;
    const bad = seamPrice > 0 ? percentile99(rest, excesses(rest, squashPrice, start)) : 0;
    let flat = start;
    let shares: number[] = [];
    let isWhole = true;
    const isHopeless = (shape: Float64Array): boolean => {
      const { share } = this.#measure(patch, rest, shape, 0);
      shares.push(share);
      const before = shares[shares.length - 1 - SETTLING_STEPS];
      isWhole = !(share > HOPELESS * asked && before !== undefined && before < SETTLING * share);
      return !isWhole;
    };
    for (const [i, power] of powers.entries()) {
      shares = [];
      const hopeless = i === powers.length - 1 && asked < Infinity ? isHopeless : undefined;
      const evenOut = { excess, power };
      const price = seamPrice > 0 ? evenSlope(evenOut, bad) * seamPrice : 0;
      const held = price > 0 ? seamSprings(this.#heldEdges(patch), price, rest.points, system.plan) : null;
      const problem = {
        system,
        cost: { weights: rest.weight, squashPrice, evenOut },
        terms: held === null ? [] : [held],
      };
      const found = await minimise(problem, flat, this.#work, ENOUGH, undefined, room, hopeless);
      if (found === null) return null;
      flat = found.flat;
    }
    return { flat, isWhole };
  }

  /** @param overlaps  null on the way, where neither these nor narrow parts matter yet. */
  #measure(patch: Patch, rest: RestShapes, uv: Float64Array, excess: number, overlaps: number | null = null): Verdict {
    const { limits } = this;
    const { major, minor } = measureStretch(rest, uv);
    const stretch99 = percentile99(
      rest,
      major.map((a) => 100 * (a - 1)),
      limits.isByNumberToo ?? false,
    );
    const squash99 = percentile99(
      rest,
      minor.map((b) => 100 * (1 - b)),
      limits.isByNumberToo ?? false,
    );
    const strain = major.map((a, t) =>
      Math.max((100 * (a - 1)) / limits.stretchPct, (100 * (1 - minor[t])) / limits.squashPct),
    );
    const onSheet = limits.sheet === undefined ? 0 : sheetShare(uv, limits.sheet);
    const least = limits.leastWidthMm ?? 0;
    const widthShare = least > 0 && overlaps !== null ? least / narrowestPlace(patch, uv, least).widthMm : 0;
    const share = Math.max(stretch99 / limits.stretchPct, squash99 / limits.squashPct, onSheet);
    const double = overlaps ?? 0;
    const fine = double > 0 ? OVERLAP_FINE + (OVERLAP_SHARE_FINE * double) / patch.meshTriangles.length : 0;
    return {
      patch,
      uv,
      share,
      stretch99,
      squash99,
      overlaps: double,
      sheetShare: onSheet,
      widthShare,
      badness: Math.max(0, Math.log(share)) + fine,
      strain,
      excess,
      isWhole: true,
      flat: null,
    };
  }
}

const countOverlaps = ({ overlapCount, overlaps }: FlatPiece): number => overlapCount ?? overlaps.length;

const notFlat = (patch: Patch): Verdict => ({
  patch,
  uv: null,
  share: Infinity,
  stretch99: Infinity,
  squash99: Infinity,
  overlaps: 0,
  sheetShare: 0,
  widthShare: 0,
  badness: NOT_FLAT,
  strain: new Float64Array(patch.meshTriangles.length).fill(1),
  excess: 0,
  isWhole: true,
  flat: null,
});
