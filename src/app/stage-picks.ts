import { partId } from '../base/ids.ts';
import type { BenchPick, BenchPlane } from '../viewport/bench-contract.ts';
import { placeOfPick } from './legend/place-under.ts';
import { spotOf } from './across-actions.ts';
import { edgesInReach, pickForPath, previewPath, turnInReach } from './mark-actions.ts';
import { NOTHING, type Choice } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** What pointing and clicking on the stage means, tool by tool. */
export class StagePicks {
  readonly #bench: Workbench;
  /** What an answer is waited for: a newer question makes it worthless. */
  #asked: { readonly corner?: number; readonly edge?: number } = {};

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  hover(pick: BenchPick): void {
    const { view } = this.#bench;
    const thicknessMm = pick.thicknessMm ?? null;
    const seams = pick.seam !== undefined && pick.seam >= 0 ? { seams: [pick.seam] } : null;
    const pointed = pick.part === undefined ? seams : { parts: [pick.part] };
    const facts = { under: placeOfPick(pick), pointed, thicknessMm };
    if (view.tool === 'path' && view.through.length + view.spots.length > 0) {
      this.#bench.setView(facts);
      if (pick.vertex !== undefined) this.#previewPath(pick, pick.vertex);
      return;
    }
    const edge = view.tool === 'part' ? pick.edge : undefined;
    const isKnown = edge !== undefined && edge === this.#asked.edge && view.preview !== null;
    this.#bench.setView({ ...facts, ...(isKnown ? {} : { preview: edge === undefined ? null : [edge] }) });
    if (edge !== undefined && !isKnown) void this.#previewReach(edge);
  }

  click(pick: BenchPick): void {
    const bench = this.#bench;
    switch (bench.view.tool) {
      case 'part':
        if (pick.edge !== undefined) void turnInReach(bench, pick.edge, bench.view.reach);
        return;
      case 'path':
        if (pick.vertex !== undefined) void pickForPath(bench, pick.vertex, spotOf(pick) ?? undefined);
        return;
      case 'measure':
        if (pick.vertex !== undefined) this.#measureCorner(pick.vertex);
        return;
      case 'dart':
      case 'move':
      case 'drawing':
        // A dart is pulled, not clicked; a seam in hand moves by keys; where a drawing goes depends on how it is looked at, which the window knows.
        return;
      case 'walk':
        if (pick.vertex !== undefined) bench.setView({ cursor: pick.vertex, walked: null });
        return;
      case 'choose':
        this.#choose(pick);
    }
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
    if (pick.part !== undefined) return { kind: 'part', part: partId(pick.part) };
    const piece = pick.piece === undefined ? undefined : bench.pieces?.pieces[pick.piece];
    return piece === undefined ? NOTHING : { kind: 'piece', piece: piece.id };
  }

  #measureCorner(corner: number): void {
    const { from, to } = this.#bench.view;
    if (from === null || to !== null) this.#bench.setView({ from: corner, to: null });
    else if (corner !== from) this.#bench.setView({ to: corner, tool: 'choose' });
  }

  #previewPath(pick: BenchPick, corner: number): void {
    // Across faces every place counts, along edges the corners alone.
    if (corner === this.#asked.corner && this.#bench.view.spots.length === 0) return;
    this.#asked = { corner };
    void previewPath(this.#bench, corner, spotOf(pick) ?? undefined);
  }

  /** All that a click would part, where that is more than the edge. */
  async #previewReach(edge: number): Promise<void> {
    const { reach } = this.#bench.view;
    const asked = { edge };
    this.#asked = asked;
    if (reach === 'edge') return;
    const edges = await edgesInReach(this.#bench, edge, reach);
    const { view } = this.#bench;
    if (this.#asked === asked && view.tool === 'part' && view.reach === reach && edges.length > 0)
      this.#bench.setView({ preview: edges });
  }
}
