import { shareOfWork, type Work } from '../base/work.ts';
import { overlapPlaces } from '../geom/overlap-places.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { CutOffer, Patch } from '../model/patch.ts';
import { cutsForOverlap, type OverlapCut } from '../steps/cut/part-overlap.ts';
import { cutPatchAgain } from '../steps/cut/patch-as-mesh.ts';

/** Lays a patch flat as the chain would; null where it cannot be. A look from a start is enough to drop a cut that does not help. */
export type LayTrial = (
  patch: Patch,
  look: { readonly quality: 'first'; readonly start: Float64Array } | { readonly quality: 'full' },
  work: Work,
) => Promise<FlatPiece | null>;

/** Cuts one after the other at most: a piece that winds round more often is better parted by hand. */
const MOST_CUTS = 8;
/** Triangles laid flat in trials at most, all together: about ten seconds. */
const MOST_TRIANGLES = 200_000;
/** What a first look costs beside laying flat in full. */
const FIRST_LOOK_SHARE = 0.25;
/** Places of one piece for which cuts are looked for, the largest first, before it is given up. */
const MOST_PLACES = 3;
/** A slit is worth laying flat in full when a first look takes away this share of the place. */
const LOOK_SHARE = 0.5;
/** A cut has taken a place away when the double area shrinks by this share of it: what is left of others may change a little. */
const GONE_SHARE = 0.9;

/**
 * The shortest cut found that frees a piece from lying over itself: candidates in order of length, each cut and laid flat again as the
 * chain would. Where no single one does, the shortest that takes one place away, and so on with what is left.
 * @param index      number of the patch among all patches.
 * @param flat       the patch as it lies now.
 * @param positions  surface that is laid flat, x y z of the whole sculpt's vertices, mm.
 * @returns an offer whose pieces all lie flat beside themselves; null where the piece does so already or no such cut was found.
 */
export async function easeOverlap(
  index: number,
  patch: Patch,
  flat: FlatPiece,
  positions: Float64Array,
  layFlat: LayTrial,
  work: Work,
): Promise<CutOffer | null> {
  if (flat.overlaps.length === 0) return null;
  const trials = new Trials(positions, layFlat, work);
  const whole = lyingPiece(
    patch,
    flat,
    patch.meshVertices.map((_, v) => v),
  );
  const cuts: OverlapCut[] = [];
  let lying: readonly Lying[] = [whole];
  for (let worst = worstOf(lying); worst !== null; worst = worstOf(lying)) {
    const found = cuts.length < MOST_CUTS ? await firstThatHelps(trials, worst) : null;
    if (found === null) return null;
    cuts.push(found.cut);
    lying = [...lying.filter((piece) => piece !== worst), ...found.pieces];
  }
  const needed = cuts.length > 1 ? await withoutSpare(trials, whole, cuts) : cuts;
  return {
    patch: index,
    edges: needed.flatMap(({ edges }) => edges.map(([v, w]) => lowFirst(patch.meshVertices[v], patch.meshVertices[w]))),
    lengthMm: lengthOf(needed),
    text: needed.every((cut) => cut.kind === 'slit') ? OFFER_TEXT.slit : OFFER_TEXT.across,
  };
}

const OFFER_TEXT: Readonly<Record<OverlapCut['kind'], string>> = {
  across: 'part along the shortest line that keeps a piece from lying over itself',
  slit: 'slit a piece so that it no longer lies over itself',
};

const lowFirst = (v: number, w: number): readonly [number, number] => (v < w ? [v, w] : [w, v]);

const lengthOf = (cuts: readonly OverlapCut[]): number => cuts.reduce((sum, cut) => sum + cut.lengthMm, 0);

/** A part of the piece as it lies after the cuts made so far. */
interface Lying {
  readonly patch: Patch;
  readonly flat: FlatPiece;
  /** Local vertex of the whole piece for each of its own. */
  readonly localOf: Uint32Array;
  readonly places: ReturnType<typeof overlapPlaces>;
  /** Area that lies double, mm². */
  readonly doubleMm2: number;
}

function lyingPiece(patch: Patch, flat: FlatPiece, localOf: Uint32Array): Lying {
  const places = flat.overlaps.length === 0 ? [] : overlapPlaces(flat.uv, patch.triangles);
  return { patch, flat, localOf, places, doubleMm2: places.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) };
}

/** The piece with the most that lies double; null where nothing does. */
function worstOf(pieces: readonly Lying[]): Lying | null {
  return pieces.reduce<Lying | null>(
    (worst, piece) =>
      piece.places.length > 0 && (worst === null || piece.doubleMm2 > worst.doubleMm2) ? piece : worst,
    null,
  );
}

const doubleOf = (pieces: readonly Lying[]): number => pieces.reduce((sum, { doubleMm2 }) => sum + doubleMm2, 0);

/** A cut that was tried, in vertices of the whole piece, and what its piece fell into. */
interface Trial {
  readonly cut: OverlapCut;
  readonly pieces: readonly Lying[];
}

/** The shortest cut for the largest place that leaves nothing double, else the shortest that takes the place away; smaller places follow. */
async function firstThatHelps(trials: Trials, piece: Lying): Promise<Trial | null> {
  for (const place of piece.places.slice(0, MOST_PLACES)) {
    let partly: Trial | null = null;
    for (const cut of trials.affordable(piece, cutsForOverlap(piece.patch, trials.positions, place))) {
      const trial = await trials.tryOut(piece, cut, piece.doubleMm2 - LOOK_SHARE * place.areaMm2);
      if (trial === null) continue;
      if (trial.pieces.every(({ places }) => places.length === 0)) return trial;
      if (partly === null && doubleOf(trial.pieces) <= piece.doubleMm2 - GONE_SHARE * place.areaMm2) partly = trial;
    }
    if (partly !== null) return partly;
  }
  return null;
}

/** The cuts without those that later ones made needless, longest looked at first. */
async function withoutSpare(trials: Trials, whole: Lying, cuts: readonly OverlapCut[]): Promise<readonly OverlapCut[]> {
  let needed = cuts;
  for (const cut of cuts.toSorted((a, b) => b.lengthMm - a.lengthMm)) {
    const others = needed.filter((other) => other !== cut);
    if (others.length === 0) break;
    const together = { kind: cut.kind, edges: others.flatMap(({ edges }) => edges), lengthMm: lengthOf(others) };
    const trial = await trials.tryOut(whole, together, Infinity);
    if (trial?.pieces.every(({ places }) => places.length === 0) === true) needed = others;
  }
  return needed;
}

/** Cuts pieces and lays them flat, as long as the budget lasts. */
class Trials {
  readonly positions: Float64Array;
  readonly #layFlat: LayTrial;
  readonly #work: Work;
  #laid = 0;

  constructor(positions: Float64Array, layFlat: LayTrial, work: Work) {
    this.positions = positions;
    this.#layFlat = layFlat;
    this.#work = work;
  }

  /**
   * Candidates in order of length. Where there are more than the budget has room for, slits are thinned out evenly: a cut across always
   * helps and stays.
   */
  affordable(piece: Lying, candidates: readonly OverlapCut[]): readonly OverlapCut[] {
    const across = candidates.filter(({ kind }) => kind === 'across');
    const slits = candidates.filter(({ kind }) => kind === 'slit').sort(byLength);
    // Half of what is left is for what comes after this cut.
    const room = Math.floor((MOST_TRIANGLES - this.#laid) / 2 / piece.patch.meshTriangles.length) - across.length;
    const each = Math.max(1, slits.length / Math.max(1, room));
    const kept = room <= 0 ? [] : slits.filter((_, i) => Math.floor(i / each) !== Math.floor((i - 1) / each));
    return [...across, ...kept].sort(byLength);
  }

  /**
   * @param cut     in vertices of `piece`.
   * @param enough  a slit that leaves more than this double at first look is not gone on with, mm².
   * @returns null then, where the budget is used up, and where a part cannot be laid flat.
   */
  async tryOut(piece: Lying, cut: OverlapCut, enough: number): Promise<Trial | null> {
    if (this.#laid > MOST_TRIANGLES) return null;
    await this.#work.pause(this.#done, 'looking for a cut that frees a piece from lying over itself');
    const parts = cutPatchAgain(piece.patch, cut.edges, this.positions);
    if (cut.kind === 'slit') {
      const look = await this.#layAll(piece, parts, 'first');
      if (look === null || doubleOf(look) > enough) return null;
    }
    const pieces = await this.#layAll(piece, parts, 'full');
    if (pieces === null) return null;
    const edges = cut.edges.map(([v, w]) => [piece.localOf[v], piece.localOf[w]] as const);
    return { cut: { ...cut, edges }, pieces };
  }

  get #done(): number {
    return Math.min(1, this.#laid / MOST_TRIANGLES);
  }

  async #layAll(
    piece: Lying,
    parts: ReturnType<typeof cutPatchAgain>,
    quality: 'first' | 'full',
  ): Promise<Lying[] | null> {
    const pieces: Lying[] = [];
    for (const { patch, localOf } of parts) {
      const { uv } = piece.flat;
      const look =
        quality === 'full'
          ? { quality }
          : {
              quality,
              start: Float64Array.from({ length: 2 * localOf.length }, (_, i) => uv[2 * localOf[i >> 1] + (i & 1)]),
            };
      this.#laid += patch.meshTriangles.length * (quality === 'full' ? 1 : FIRST_LOOK_SHARE);
      const flat = await this.#layFlat(patch, look, shareOfWork(this.#work, this.#done, this.#done));
      if (flat === null) return null;
      pieces.push(
        lyingPiece(
          patch,
          flat,
          localOf.map((v) => piece.localOf[v]),
        ),
      );
    }
    return pieces;
  }
}

const byLength = (a: OverlapCut, b: OverlapCut): number => a.lengthMm - b.lengthMm;
