import type { SculptView } from '../model/bench-view.ts';
import type { EdgeWish } from '../model/flatten-settings.ts';
import type { SeamChain, SeamMarks, SeamSetting } from '../model/seams.ts';
import { moveSeam, type EdgePair } from '../project/commands.ts';
import type { BenchPick } from '../viewport/bench-contract.ts';
import { edgeIndexOf, filePairs } from './edge-index.ts';
import { Follow } from './follow.ts';
import { moveReach } from './move-reach.ts';
import { piecesShown } from './pieces-shown.ts';
import { pathEdges } from './seam-actions.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

interface Grip {
  readonly sculpt: SculptView;
  readonly chain: SeamChain;
  /** Place of the grabbed corner in the chain. */
  readonly at: number;
  /** The marks as they were when the seam was grabbed. */
  readonly seams: SeamMarks;
  readonly settings: readonly SeamSetting[];
  readonly edgeWishes: readonly EdgeWish[];
  readonly heldSeams: readonly EdgePair[] | undefined;
  readonly mergeKey: string;
  /** How often it had been undone: after another time it is let go of. */
  readonly undos: number;
}

/**
 * Moves a seam by dragging it over the sculpt: it runs through the corner under the pointer, from there along the shortest way back to
 * where it was, and the farther it is dragged the more of it comes along. The whole drag undoes as one.
 */
export class SeamDrag {
  readonly #bench: Workbench;
  #grip: Grip | null = null;
  /** Corner the seam is wanted at. */
  #wanted = -1;
  #count = 0;
  readonly #follow = new Follow<number>((corner) => this.#bring(corner));

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** @returns true when the press took hold of a seam that can be moved. */
  grab(pick: BenchPick): boolean {
    const { bench, view, part } = this.#bench;
    const { seam = -1, vertex = -1, edge = -1 } = pick;
    const chain = seam < 0 ? undefined : bench.seams?.chains[seam];
    this.#grip = null;
    if (view.tool !== 'choose' || pick.onSculpt !== true || part === null || bench.sculpt === null) return false;
    if (chain === undefined || chain.kind === 'open' || chain.vertices.length < 3) return false;
    const at = placeIn(chain, bench.sculpt, vertex, edge);
    if (at < 0 || isOnPath(chain, bench.sculpt)) return false;
    this.#count += 1;
    this.#grip = {
      sculpt: bench.sculpt,
      chain,
      at,
      seams: part.seams,
      settings: part.seamSettings,
      edgeWishes: part.edgeWishes,
      heldSeams: part.heldSeams,
      mergeKey: `move-seam-${this.#count}`,
      undos: this.#bench.undos,
    };
    this.#wanted = chain.vertices[at];
    this.#follow.stay();
    return true;
  }

  get isHeld(): boolean {
    return this.#grip !== null && this.#grip.undos === this.#bench.undos;
  }

  drag(pick: BenchPick): void {
    if (this.#grip === null || pick.onSculpt !== true || pick.vertex === undefined) return;
    if (pick.vertex === this.#wanted) return;
    this.#wanted = pick.vertex;
    this.#follow.to(this.#wanted);
  }

  /** The seam stays where it is wanted now. */
  drop(): void {
    if (this.#grip !== null) this.#bench.say(WORDS.spoken.moved);
  }

  /** Resolves once it is where it was dragged to. */
  there(): Promise<void> {
    return this.#follow.there();
  }

  async #bring(corner: number): Promise<void> {
    const grip = this.#grip;
    if (grip === null || !this.isHeld) return;
    await this.#moveTo(grip, corner);
    if (this.#grip === grip) await piecesShown(this.#bench);
  }

  async #moveTo(grip: Grip, corner: number): Promise<void> {
    const { chain, at, sculpt, mergeKey } = grip;
    const reach = moveReach(sculpt.positions, chain, at, corner);
    const [from, to] = reach;
    const ways = [
      await pathEdges(this.#bench, chain.vertices[from], corner),
      await pathEdges(this.#bench, corner, chain.vertices[to]),
    ];
    if (this.#bench.bench.sculpt !== sculpt || ways.includes(null) || this.#bench.undos !== grip.undos) return;
    const gone = edgeIndexOf(sculpt).along(chain.vertices.slice(from, to + 1));
    const added = ways.flatMap((way) => way ?? []).filter((edge) => sculpt.edgeIsOpen[edge] === 0);
    this.#bench.run(moveSeam(grip, filePairs(sculpt, gone), filePairs(sculpt, added), mergeKey));
  }
}

/** A seam across faces does not move along edges. */
const isOnPath = ({ vertices }: SeamChain, sculpt: SculptView): boolean =>
  sculpt.edgePathWay !== undefined &&
  edgeIndexOf(sculpt)
    .along(vertices)
    .some((edge) => sculpt.edgePathWay?.[edge] !== 0);

/** The place of the corner in the chain, or of an end of the edge that lies on it; never one of the chain's own ends. */
function placeIn(chain: SeamChain, sculpt: SculptView, vertex: number, edge: number): number {
  const inner = (v: number): number => {
    const at = chain.vertices.indexOf(v);
    return at > 0 && at < chain.vertices.length - 1 ? at : -1;
  };
  const ends = edge < 0 ? [] : [sculpt.edgeVertices[2 * edge], sculpt.edgeVertices[2 * edge + 1]];
  return [vertex, ...ends].map(inner).find((at) => at >= 0) ?? -1;
}
