import type { SurfacePoint } from '../model/seams.ts';
import { replacePath } from '../project/path-commands.ts';
import { namedPath } from '../project/path-names.ts';
import type { SourceRef } from '../project/project.ts';
import type { BenchPick } from '../viewport/bench-contract.ts';
import { filePairs } from './edge-index.ts';
import { Follow } from './follow.ts';
import { piecesShown } from './pieces-shown.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

type Place = readonly [number, number, number];

interface Grip {
  readonly source: SourceRef;
  readonly path: number;
  /** The line as it was when it was taken hold of, and where that was, mm. */
  readonly points: readonly SurfacePoint[];
  readonly from: Place;
  readonly mergeKey: string;
  /** How often it had been undone: after another time it is let go of. */
  readonly undos: number;
}

/**
 * Moves a seam that runs across faces by dragging any place of it over the sculpt: it runs through the place under the pointer, from there
 * straight back to where it was, and the farther it is dragged the more of it comes along. The whole drag undoes as one.
 */
export class PathDrag {
  readonly #bench: Workbench;
  #grip: Grip | null = null;
  #count = 0;
  readonly #follow = new Follow<Place | 'push'>((place) => this.#bring(place));
  /** Where the hand is, and how far it was pushed on from there since. */
  #at: Place = [0, 0, 0];
  #pushed: Place = [0, 0, 0];

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** @returns true when the press took hold of a line across faces. */
  grab({ onSculpt, edge, seam = -1, point }: BenchPick): boolean {
    const { bench, view } = this.#bench;
    this.#grip = null;
    if (view.tool !== 'choose' || onSculpt !== true || edge === undefined || point === undefined) return false;
    if (seam < 0 || bench.sculpt === null) return false;
    const [pair] = filePairs(bench.sculpt, [edge]);
    const path = pair === undefined ? null : namedPath(pair);
    return path !== null && this.hold(path, point);
  }

  /** Takes hold of a path at a place of it, mm. @returns false where there is no such path. */
  hold(path: number, from: Place): boolean {
    const { part } = this.#bench;
    const points = part?.seams.paths[path]?.points;
    this.#follow.stay();
    this.#grip = null;
    if (part === null || points === undefined) return false;
    this.#count += 1;
    [this.#at, this.#pushed] = [from, [0, 0, 0]];
    this.#grip = {
      source: part.source,
      path,
      points,
      from,
      mergeKey: `move-path-${this.#count}`,
      undos: this.#bench.undos,
    };
    return true;
  }

  get isHeld(): boolean {
    return this.#grip !== null && this.#grip.undos === this.#bench.undos;
  }

  drag({ onSculpt, point }: Pick<BenchPick, 'onSculpt' | 'point'>): void {
    if (this.#grip !== null && onSculpt === true && point !== undefined) this.#follow.to(point);
  }

  /** On from where it is along the surface, mm. */
  push(by: Place): void {
    if (this.#grip === null) return;
    const [x, y, z] = this.#pushed.map((mm, i) => mm + by[i]);
    this.#pushed = [x, y, z];
    this.#follow.to('push');
  }

  /** The seam stays where it is wanted now. */
  drop(): void {
    if (this.#grip !== null) this.#bench.say(WORDS.spoken.moved);
  }

  /** Resolves once it is where it was dragged to. */
  there(): Promise<void> {
    return this.#follow.there();
  }

  async #bring(place: Place | 'push'): Promise<void> {
    const grip = this.#grip;
    if (grip === null || !this.isHeld) return;
    const { path, points, from, source, mergeKey } = grip;
    const way = place === 'push' ? { to: this.#at, push: this.#pushed } : { to: place };
    this.#pushed = [0, 0, 0];
    const moved = await this.#bench.workshop.moveLine({ points, from, ...way });
    const { part, view } = this.#bench;
    if (this.#grip !== grip || !this.isHeld || part?.source !== source || part.seams.paths.length <= path) return;
    if (!moved.ok) return this.#bench.showProblem(moved.problem);
    const { at, xyz } = moved.value;
    this.#at = at;
    const inHand = view.tool === 'move' && view.grip !== null ? { grip: { ...view.grip, at } } : {};
    this.#bench.setView({ previewLines: [xyz], ...inHand });
    this.#bench.run(replacePath(path, moved.value.points, mergeKey));
    await piecesShown(this.#bench);
    this.#bench.setView({ previewLines: null });
  }
}
