import type { SculptView } from '../model/bench-view.ts';
import type { SeamMarks } from '../model/seams.ts';
import { drawDart } from '../project/commands.ts';
import type { BenchPick } from '../viewport/bench-contract.ts';
import { onBoth } from './both-sides.ts';
import { lengthAlong } from './darts.ts';
import { edgeIndexOf, filePairs } from './edge-index.ts';
import { Follow } from './follow.ts';
import { LiveLine } from './live-line.ts';
import { MARK_WORDS } from './mark-words.ts';
import { piecesShown } from './pieces-shown.ts';
import type { Workbench } from './workbench.ts';

interface Pull {
  readonly sculpt: SculptView;
  readonly line: LiveLine;
  /** Corner of the edge or the seam it begins at. */
  readonly start: number;
  /** Seams and open edges as they were: it neither runs along them nor touches them. */
  readonly closed: readonly number[];
  readonly seams: SeamMarks;
  readonly mergeKey: string;
  /** How often it had been undone: after another time it is let go of. */
  readonly undos: number;
}

/**
 * Pulls a dart from an open edge or a seam into a piece: it follows the pointer along edges, and the pieces are laid flat on the way, so that
 * their stretch is seen. The whole pull undoes as one.
 */
export class DartDrag {
  readonly #bench: Workbench;
  #pull: Pull | null = null;
  /** Corner the dart is wanted to. */
  #wanted = -1;
  #count = 0;
  readonly #follow = new Follow<number>((corner) => this.#bring(corner));

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** @returns true when the press is at an edge or a seam with the tool for darts. */
  grab({ onSculpt, vertex }: BenchPick): boolean {
    const { bench, view, part } = this.#bench;
    const { sculpt, seams } = bench;
    this.#pull = null;
    if (view.tool !== 'dart' || onSculpt !== true || vertex === undefined) return false;
    if (sculpt === null || seams === null || part === null) return false;
    const closed = [...seams.chainOfEdge.keys()].filter((e) => seams.chainOfEdge[e] >= 0 || sculpt.edgeIsOpen[e] === 1);
    const isStart = closed.some(
      (e) => sculpt.edgeVertices[2 * e] === vertex || sculpt.edgeVertices[2 * e + 1] === vertex,
    );
    if (!isStart) {
      this.#bench.say(MARK_WORDS.spoken.noDartHere);
      return false;
    }
    this.#count += 1;
    this.#pull = {
      sculpt,
      line: new LiveLine(vertex),
      start: vertex,
      closed,
      seams: part.seams,
      mergeKey: `dart-${this.#count}`,
      undos: this.#bench.undos,
    };
    this.#wanted = vertex;
    this.#follow.stay();
    this.#bench.setView({ dart: null });
    return true;
  }

  drag({ onSculpt, vertex }: BenchPick): void {
    if (this.#pull === null || onSculpt !== true || vertex === undefined || vertex === this.#wanted) return;
    this.#wanted = vertex;
    this.#follow.to(vertex);
  }

  /** @returns false when none was pulled. */
  drop(): boolean {
    if (this.#pull === null) return false;
    if (this.#bench.view.dart !== null) this.#bench.say(MARK_WORDS.spoken.dart);
    return true;
  }

  /** Resolves once it is where it was dragged to. */
  there(): Promise<void> {
    return this.#follow.there();
  }

  async #bring(corner: number): Promise<void> {
    const pull = this.#pull;
    if (pull === null || pull.undos !== this.#bench.undos) return;
    await this.#pullTo(pull, corner);
    if (this.#pull === pull) await piecesShown(this.#bench);
  }

  async #pullTo({ sculpt, line, closed, seams, mergeKey, undos }: Pull, corner: number): Promise<void> {
    line.pointAt(corner);
    const { anchor, trail } = line;
    const way = await this.#bench.workshop.handLine([anchor, corner], { closed }, trail);
    if (!way.ok || this.#bench.bench.sculpt !== sculpt || this.#bench.undos !== undos) return;
    line.take(way.value);
    const edges = edgeIndexOf(sculpt).along(line.corners);
    const tip = line.corners.at(-1) ?? corner;
    this.#bench.setView({
      dart: edges.length === 0 ? null : { tip, lengthMm: lengthAlong(sculpt.positions, line.corners) },
    });
    this.#bench.run(drawDart(seams, onBoth(this.#bench, filePairs(sculpt, edges)), mergeKey));
  }
}
