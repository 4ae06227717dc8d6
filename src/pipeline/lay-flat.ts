import { Memo } from '../base/memo.ts';
import { ok, type Fail, type Result } from '../base/result.ts';
import { shareOfWork, sharesOfWork, type Work } from '../base/work.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import { runWithPauses } from '../base/stepwise.ts';
import type { FoamRules } from '../model/foam-settings.ts';
import type { Patch } from '../model/patch.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import { hingeShapeSteps, type HingeShapes } from '../steps/foam/hinge-shapes.ts';
import type { PartBends, PatchBend } from '../steps/foam/part-bends.ts';
import { seamCuts } from '../steps/foam/seam-cuts.ts';
import type { SculptPart } from '../project/project.ts';
import type { FlattenCrew } from './flatten-crew.ts';
import type { CutSculpt, EarlyOutcome } from './outcome.ts';
import type { PatchStore } from './patch-store.ts';
import { wishesOfPatches, type PatchHinges, type PatchWishes } from './patch-wishes.ts';

/** Wishes of so many cuts are remembered: a maker goes a few steps back and forth. */
const KEPT = 8;
/** Triangles from which a patch is shown before it is done: a smaller one is done as soon. */
const LONG_TRIANGLES = 3000;

export interface FlatInput {
  readonly mesh: Mesh;
  readonly cut: CutSculpt;
  readonly part: SculptPart;
  /** How its pieces bend and its seams lean. */
  readonly bends: PartBends;
  readonly rules: FoamRules;
}

export interface LaidFlat {
  /** How each patch came out: null where it cannot be laid flat and the cut has said so. */
  readonly results: readonly (Result<FlatPiece> | null)[];
  /** What was asked of each patch. */
  readonly wishes: readonly PatchWishes[];
  /** False when all of it was remembered. */
  readonly isNew: boolean;
}

/** Shapes so far, as in an {@link EarlyOutcome}. */
export type TellEarly = (early: Pick<EarlyOutcome, 'flats' | 'isFinal'>) => void;

/** Has all patches of a cut laid flat at once by a crew; what was laid flat before is remembered, and started from. */
export class LayFlat {
  readonly #crew: FlattenCrew;
  readonly #patches: PatchStore;
  readonly #wishes = new Memo<unknown[], readonly PatchWishes[]>(KEPT);
  readonly #hinges = new WeakMap<
    PatchBend,
    readonly { readonly shell: ShellLayer; readonly rules: FoamRules; readonly shapes: HingeShapes | null }[]
  >();
  /** Why a patch could not be laid flat, told again in each run. */
  readonly #notFlat = new WeakMap<Patch, Fail>();

  /** @param patches  where the patches of every cut have been settled. */
  constructor(crew: FlattenCrew, patches: PatchStore) {
    this.#crew = crew;
    this.#patches = patches;
  }

  /**
   * @param tell  called whenever there is another shape to show; changes nothing of the result.
   * @throws Cancelled when the work was called off; what was done by then is remembered.
   */
  async lay(input: FlatInput, work: Work, tell?: TellEarly): Promise<LaidFlat> {
    const { patches, shells } = input.cut;
    const wishes = await this.#wishesOf(input, work);
    const sizes = patches.map(({ meshTriangles }) => meshTriangles.length);
    const shares = sharesOfWork(work, sizes);
    const early = new EarlyFlats(patches.length, tell);
    const fresh = new Map<number, Result<FlatPiece>>();
    const laid = new Array<Promise<Result<FlatPiece> | null>>(patches.length);
    // Whoever is given the largest first is done the soonest.
    for (const i of [...patches.keys()].sort((a, b) => sizes[b] - sizes[a])) {
      const remembered = this.#remembered(patches[i], shells[i].neutralPositions, wishes[i]);
      if (remembered !== undefined) {
        early.knows(i, remembered);
        laid[i] = passed(shares[i], remembered);
        continue;
      }
      laid[i] = this.#lay(input, i, wishes[i], shares[i], early).then((result) => {
        fresh.set(i, result);
        early.finish(i, result);
        return result;
      });
    }
    try {
      return { results: await Promise.all(laid), wishes, isNew: fresh.size > 0 };
    } finally {
      // In the order of the patches, whoever was done first: what is started from later does not depend on chance.
      patches.forEach((patch, i) => {
        const result = fresh.get(i);
        if (result === undefined) return;
        this.#patches.keep(patch, shells[i].neutralPositions, wishes[i].key, result.ok ? result.value : null);
        if (!result.ok) this.#notFlat.set(patch, result);
      });
    }
  }

  /** What is known of a patch without work: null where the cut has said that it cannot be flat, undefined where nothing is known. */
  #remembered(
    patch: Patch,
    positions: Float64Array,
    { key, hinges }: PatchWishes,
  ): Result<FlatPiece> | null | undefined {
    if (patch.kind === 'closed' || patch.kind === 'handled') return null;
    // How a piece stands on its hinges follows from its neighbours too.
    const flat = this.#patches.flatOf(patch, positions, key, hinges === null);
    return flat === null ? this.#notFlat.get(patch) : flat && ok(flat);
  }

  async #lay(
    { cut }: FlatInput,
    i: number,
    wishes: PatchWishes,
    work: Work,
    early: EarlyFlats,
  ): Promise<Result<FlatPiece>> {
    const patch = cut.patches[i];
    const { neutralPositions } = cut.shells[i];
    const start =
      patch.kind === 'windowed' ? undefined : this.#patches.startFor(patch, neutralPositions, wishes.options);
    const isLong = early.isAsked && patch.meshTriangles.length >= LONG_TRIANGLES;
    const look = isLong ? { look: (flat: FlatPiece) => early.look(i, flat) } : {};
    await work.pause(0, 'laying the pieces flat');
    const task = {
      patch,
      positions: neutralPositions,
      options: wishes.options,
      wishes: wishes.key,
      ...look,
    };
    if (start === undefined) return await this.#crew.flatten(task, work);
    const begun = { ...task, options: { ...wishes.options, start } };
    const result = await this.#crew.flatten(begun, shareOfWork(work, 0, 0.5));
    const isSure = result.ok && !mayHaveOtherMinima(result.value);
    return isSure ? result : await this.#crew.flatten(task, shareOfWork(work, 0.5, 1));
  }

  /** The same object as long as nothing it follows from changes. */
  async #hingesOf(bend: PatchBend, shell: ShellLayer, rules: FoamRules, work: Work): Promise<HingeShapes | null> {
    const known = this.#hinges.get(bend)?.find((one) => one.shell === shell && one.rules === rules);
    if (known !== undefined) return known.shapes;
    const shapes = await runWithPauses(hingeShapeSteps(bend, shell, rules.hingeMm), () => work.pause(0));
    this.#hinges.set(bend, [{ shell, rules, shapes }, ...(this.#hinges.get(bend) ?? [])].slice(0, KEPT));
    return shapes;
  }

  async #wishesOf({ mesh, cut, part, bends, rules }: FlatInput, work: Work): Promise<readonly PatchWishes[]> {
    const { chains, patches, shells } = cut;
    const { flatten, regions, edgeWishes, pieceSettings, upAxis, tracedSide } = part;
    const key: unknown[] = [chains, patches, flatten, regions, edgeWishes, pieceSettings, upAxis];
    // What is asked of straight edges alone depends on the foam too.
    if (edgeWishes.some(({ straight }) => straight === true)) key.push(bends.bevels, tracedSide, shells);
    // And what is asked of grooved pieces.
    const isElsewhere = bends.patches.some(({ choice, corners }) => choice.style === 'grooved' || corners.length > 0);
    key.push(bends.patches, rules);
    if (isElsewhere) key.push(shells);
    const known = this.#wishes.get(key);
    if (known !== undefined) return known;
    const hinges: (PatchHinges | null)[] = [];
    for (const [i, bend] of bends.patches.entries()) {
      await work.pause(0);
      const shapes = await this.#hingesOf(bend, shells[i], rules, work);
      const named = `hinged ${rules.hingeMm} ${rules.foldLimitDeg}`;
      hinges.push(shapes && { bend, shapes, key: named });
    }
    const cuts = seamCuts(chains, bends.bevels, shells, rules.bevelLimitDeg);
    return this.#wishes.set(key, wishesOfPatches(mesh, cut, cuts, part, hinges));
  }
}

/** Stretch or squash of more than a hundredth of its area beyond which a shape is crumpled rather than formed, per cent. */
const CRUMPLED_PCT = 50;

/**
 * Whether the way to a shape may decide what it comes to: a piece that lies over itself or is crumpled has more than one shape that no small
 * change betters. (A piece with windows may too.) Such a piece is laid flat from nothing, so that the same project gives the same templates
 * whatever the maker tried before.
 */
function mayHaveOtherMinima({ overlapCount, overlaps, stretchPct, squashPct }: FlatPiece): boolean {
  return (overlapCount ?? overlaps.length) > 0 || stretchPct.p99 > CRUMPLED_PCT || squashPct.p99 > CRUMPLED_PCT;
}

/** A part of the work that was done before. */
async function passed<T>(work: Work, result: T): Promise<T> {
  await work.pause(1);
  return result;
}

/** Gathers shapes as they come and tells them. */
class EarlyFlats {
  readonly #flats: (FlatPiece | null)[];
  readonly #isFinal: boolean[];
  readonly #tell: TellEarly | undefined;

  constructor(count: number, tell: TellEarly | undefined) {
    this.#flats = new Array<FlatPiece | null>(count).fill(null);
    this.#isFinal = new Array<boolean>(count).fill(false);
    this.#tell = tell;
  }

  get isAsked(): boolean {
    return this.#tell !== undefined;
  }

  knows(i: number, result: Result<FlatPiece> | null): void {
    this.#flats[i] = result?.ok === true ? result.value : null;
    this.#isFinal[i] = true;
  }

  look(i: number, flat: FlatPiece): void {
    this.#flats[i] = flat;
    this.#told();
  }

  finish(i: number, result: Result<FlatPiece>): void {
    this.knows(i, result);
    this.#told();
  }

  #told(): void {
    this.#tell?.({ flats: [...this.#flats], isFinal: [...this.#isFinal] });
  }
}
