import type { BenchPick, BenchPlane } from '../viewport/bench-contract.ts';
import { fitAt } from './fit-at.ts';
import { pathEdges, partPath, turnEdge } from './seam-actions.ts';
import { NOTHING, type Choice } from './view-state.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** What pointing and clicking on the stage means, tool by tool. */
export class StagePicks {
  readonly #bench: Workbench;
  /** Corner a path is being looked up to: a newer one makes the answer worthless. */
  #asked = -1;

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  hover(pick: BenchPick): void {
    const { view } = this.#bench;
    const { stretchPct, squashPct } = pick;
    const thicknessMm = pick.thicknessMm ?? null;
    const fitReading = view.colouring === 'fit' ? fitAt(this.#bench.bench, pick) : null;
    const roomMm = view.colouring === 'room' ? this.#roomAt(pick) : null;
    const reading = stretchPct === undefined || squashPct === undefined ? null : { stretchPct, squashPct };
    const pointed = pick.seam !== undefined && pick.seam >= 0 ? { seams: [pick.seam] } : null;
    if (view.tool === 'path' && view.from !== null) {
      this.#bench.setView({ reading, pointed, thicknessMm, fitReading, roomMm });
      if (pick.vertex !== undefined) void this.#previewPath(view.from, pick.vertex);
      return;
    }
    const preview = view.tool === 'part' && pick.edge !== undefined ? [pick.edge] : null;
    this.#bench.setView({ reading, pointed, preview, thicknessMm, fitReading, roomMm });
  }

  click(pick: BenchPick): void {
    const bench = this.#bench;
    switch (bench.view.tool) {
      case 'part':
        if (pick.edge !== undefined) turnEdge(bench, pick.edge);
        return;
      case 'path':
        if (pick.vertex !== undefined) void this.#pathCorner(pick.vertex);
        return;
      case 'measure':
        if (pick.vertex !== undefined) this.#measureCorner(pick.vertex);
        return;
      case 'walk':
        if (pick.vertex !== undefined) bench.setView({ cursor: pick.vertex, walked: null });
        return;
      case 'choose':
        this.#choose(pick);
    }
  }

  /** Where a corner has no core beside it there is nothing to tell. */
  #roomAt({ vertex }: BenchPick): number | null {
    const mm = vertex === undefined ? undefined : this.#bench.bench.room?.atVertices[vertex];
    return mm === undefined || Number.isNaN(mm) ? null : mm;
  }

  /** The plane in hand was moved: what follows from it is shown along the way. */
  movePlane(plane: BenchPlane): void {
    const inHand = this.#bench.view.plane;
    if (inHand !== null) this.#bench.setView({ plane: { ...inHand, plane } });
  }

  /** The first click on a piece chooses it; the next one means a place on it. */
  #choose(pick: BenchPick): void {
    const { choice: before } = this.#bench.view;
    const choice = this.#choiceOf(pick);
    const isAgain = choice.kind === 'piece' && before.kind === 'piece' && choice.piece === before.piece;
    this.#bench.setView({ choice, place: isAgain ? (pick.triangle ?? null) : null, withinMm: null });
  }

  #choiceOf(pick: BenchPick): Choice {
    const { bench } = this.#bench;
    if (pick.kind === 'edge' && pick.edge !== undefined) {
      const chain = bench.seams?.chainOfEdge[pick.edge] ?? -1;
      if (chain >= 0 && bench.seams !== null) return { kind: 'seam', seam: bench.seams.chains[chain].id };
    }
    const piece = pick.piece === undefined ? undefined : bench.pieces?.pieces[pick.piece];
    return piece === undefined ? NOTHING : { kind: 'piece', piece: piece.id };
  }

  async #pathCorner(corner: number): Promise<void> {
    const { from } = this.#bench.view;
    if (from === null) {
      this.#bench.setView({ from: corner });
      this.#bench.say(WORDS.spoken.pathFrom);
    } else if (from !== corner && (await partPath(this.#bench, from, corner))) {
      // The next path goes on where this one ended, as a line of a knife does.
      this.#bench.setView({ from: corner, preview: null });
    }
  }

  #measureCorner(corner: number): void {
    const { from, to } = this.#bench.view;
    if (from === null || to !== null) this.#bench.setView({ from: corner, to: null });
    else if (corner !== from) this.#bench.setView({ to: corner, tool: 'choose' });
  }

  async #previewPath(from: number, to: number): Promise<void> {
    if (to === this.#asked) return;
    this.#asked = to;
    const edges = from === to ? [] : await pathEdges(this.#bench, from, to);
    if (to === this.#asked && this.#bench.view.tool === 'path') this.#bench.setView({ preview: edges });
  }
}
