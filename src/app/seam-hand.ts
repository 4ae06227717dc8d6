import type { SeamChain } from '../model/seams.ts';
import { namedPath } from '../project/path-names.ts';
import type { BenchFacing } from '../viewport/bench-contract.ts';
import { chainIndex, type Bench } from './bench-state.ts';
import { edgeIndexOf, filePairs } from './edge-index.ts';
import { ARROWS, stepTowards } from './edge-walk.ts';
import { MARK_WORDS } from './mark-words.ts';
import type { PathDrag } from './path-drag.ts';
import type { SeamDrag } from './seam-drag.ts';
import type { ScreenOf } from './seam-walk.ts';
import { NOTHING, type SeamGrip } from './view-state.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

type Place = readonly [number, number, number];

/** How one looks at the sculpt, which the stage knows. */
export interface Looking {
  facing(point: Place): BenchFacing | null;
  screenOf: ScreenOf;
}

const STEP_MM = 1;
const COARSE_MM = 10;
/** Places of a seam that can be taken hold of: so many parts, its ends left out. */
const PARTS = 8;

/** Moves the chosen seam by keys: takes hold of a place of it, the middle first, and brings that where the arrows lead. */
export class SeamHand {
  readonly #bench: Workbench;
  readonly #seamDrag: SeamDrag;
  readonly #pathDrag: PathDrag;
  readonly #looking: Looking;

  constructor(bench: Workbench, seamDrag: SeamDrag, pathDrag: PathDrag, looking: Looking) {
    this.#bench = bench;
    this.#seamDrag = seamDrag;
    this.#pathDrag = pathDrag;
    this.#looking = looking;
  }

  /** Takes hold of the middle of the chosen seam. */
  begin(): void {
    const { choice } = this.#bench.view;
    const chain = choice.kind === 'seam' ? chainIndex(this.#bench.bench, choice.seam) : -1;
    if (!this.#hold(chain, PARTS / 2)) this.#bench.say(MARK_WORDS.spoken.noHold);
  }

  /** Lets go and takes hold of the next place along the seam; after the last the first. */
  next(): void {
    const { grip } = this.#bench.view;
    const chain = grip === null ? -1 : chainHeld(this.#bench.bench, grip);
    if (grip !== null) this.#hold(chain, (grip.part % (PARTS - 1)) + 1);
  }

  /** @returns true when the key moved the seam in hand. */
  key(key: string, isCoarse: boolean): boolean {
    const { grip } = this.#bench.view;
    if (grip === null || !(key in ARROWS)) return false;
    const drag = grip.path === null ? this.#seamDrag : this.#pathDrag;
    // Undone, it is where it was before: there it is taken hold of again.
    if (!drag.isHeld) this.#hold(chainHeld(this.#bench.bench, grip), grip.part);
    const now = this.#bench.view.grip ?? grip;
    if (now.path === null) this.#walk(now, key);
    else this.#push(now, ARROWS[key], isCoarse ? COARSE_MM : STEP_MM);
    this.#bench.say(WORDS.spoken.moved);
    return true;
  }

  #hold(chain: number, part: number): boolean {
    const { bench } = this.#bench;
    const { sculpt } = bench;
    const seam = bench.seams?.chains[chain];
    if (sculpt === null || seam === undefined || seam.vertices.length < 3) return false;
    const at = placeAlong(sculpt.positions, seam, part / PARTS);
    const corner = seam.vertices[at];
    const [x, y, z] = sculpt.positions.subarray(3 * corner, 3 * corner + 3);
    const path = pathAt(bench, seam, at);
    this.#bench.setView({ tool: 'choose' });
    const isHeld =
      path === null
        ? this.#seamDrag.grab({ kind: 'edge', onSculpt: true, seam: chain, vertex: corner })
        : this.#pathDrag.hold(path, [x, y, z]);
    const grip: SeamGrip = { path, seam: seam.id, corner, part, at: [x, y, z] };
    if (!isHeld) return false;
    this.#bench.setView({ tool: 'move', grip, choice: NOTHING, preview: null });
    this.#bench.say(MARK_WORDS.move.spoken);
    return true;
  }

  /** From corner to corner along the edge that leads that way. */
  #walk(grip: SeamGrip, key: string): void {
    const { sculpt } = this.#bench.bench;
    const { screenOf } = this.#looking;
    const from = screenOf(grip.corner);
    if (sculpt === null || from === null) return;
    const index = edgeIndexOf(sculpt);
    const steps = index.edgesAt(grip.corner).map((edge) => ({ edge, to: index.across(edge, grip.corner) }));
    const step = stepTowards(from, ARROWS[key], steps, screenOf);
    if (step === null) return this.#bench.say(WORDS.spoken.noWay);
    const [x, y, z] = sculpt.positions.subarray(3 * step.to, 3 * step.to + 3);
    this.#bench.setView({ grip: { ...grip, corner: step.to, at: [x, y, z] } });
    this.#seamDrag.drag({ kind: 'surface', onSculpt: true, vertex: step.to });
  }

  /** Over the surface, as it is seen. */
  #push(grip: SeamGrip, [across, down]: readonly [number, number], mm: number): void {
    const seen = this.#looking.facing(grip.at);
    if (seen === null) return;
    const [x, y, z] = [0, 1, 2].map((i) => mm * (across * seen.right[i] - down * seen.up[i]));
    this.#pathDrag.push([x, y, z]);
  }
}

/** The corner of a seam nearest to a share of its length, never one of its ends. */
function placeAlong(positions: ArrayLike<number>, { vertices }: SeamChain, share: number): number {
  const way = [0];
  for (let i = 1; i < vertices.length; i += 1) {
    const [a, b] = [3 * vertices[i - 1], 3 * vertices[i]];
    way.push(way[i - 1] + Math.hypot(...[0, 1, 2].map((k) => positions[b + k] - positions[a + k])));
  }
  const wanted = share * way[way.length - 1];
  let best = 1;
  for (let i = 1; i + 1 < vertices.length; i += 1)
    if (Math.abs(way[i] - wanted) < Math.abs(way[best] - wanted)) best = i;
  return best;
}

/** The path that a seam runs along at one of its places; null where it runs along an edge of the sculpt. */
function pathAt({ sculpt }: Bench, { vertices }: SeamChain, at: number): number | null {
  if (sculpt === null) return null;
  const edge = edgeIndexOf(sculpt).between(vertices[at], vertices[at + 1]);
  const [pair] = edge < 0 ? [] : filePairs(sculpt, [edge]);
  return pair === undefined ? null : namedPath(pair);
}

/** The seam in hand as it runs now: a line that was moved is cut anew, and its seams have other names. */
function chainHeld(bench: Bench, { path, seam }: SeamGrip): number {
  if (path === null) return chainIndex(bench, seam);
  return (bench.seams?.chains ?? []).findIndex(
    (chain) => chain.kind !== 'open' && chain.vertices.some((_, i) => pathAt(bench, chain, i) === path),
  );
}
