import { Group } from 'three';
import type { Highlight } from './bench-contract.ts';
import type { BenchColours } from './bench-theme.ts';
import { findPointed, findRings, findThreads, openLines, type OnBench } from './find-pointed.ts';
import { LineBatch } from './line-batch.ts';
import { PointedOut } from './pointed-out.ts';

/** What is pointed at, chosen or next, laid over the bench, and threads between the two edges of such seams. */
export class PointingView {
  readonly object = new Group();
  /** Pointed at, here or elsewhere on the screen. */
  highlight: Highlight | null = null;
  /** Chosen. */
  selection: Highlight | null = null;
  /** Edges of the topology that a click would part. */
  previewEdges: readonly number[] | null = null;
  /** Lines through space that would be drawn, packed xyz, mm, model space. */
  previewLines: readonly ArrayLike<number>[] = [];
  /** Where the keyboard stands. */
  cursor: number | null = null;
  readonly #highlight = new PointedOut(3.5, 6);
  readonly #selection = new PointedOut(4, 7);
  readonly #preview = new PointedOut(4, 8, [5, 3]);
  readonly #cursor = new PointedOut(4, 9);
  readonly #rings = new LineBatch({ widthPx: 2, isOnTop: true, opacity: 0.9, renderOrder: 11 });
  readonly #drawn = new LineBatch({ widthPx: 3, isOnTop: true, opacity: 0.9, renderOrder: 11 });
  readonly #pointedThreads = new LineBatch({ widthPx: 1.2, isOnTop: true, opacity: 0.9, renderOrder: 9 });
  readonly #chosenThreads = new LineBatch({ widthPx: 1.2, isOnTop: true, opacity: 0.9, renderOrder: 10 });

  constructor() {
    this.object.add(...[...this.#parts(), ...this.#batches()].map((part) => part.object));
  }

  /** Finds everything where it is now. @param isWhole true while both sides of every seam lie together. */
  set(bench: OnBench | null, isWhole: boolean): void {
    const find = (what: Highlight) => (bench === null ? NOTHING : findPointed(bench, what));
    this.#highlight.set(find(this.highlight ?? {}));
    this.#selection.set(find(this.selection ?? {}));
    this.#preview.set(find({ edges: this.previewEdges ?? [] }));
    this.#cursor.set(find({ vertices: this.cursor === null ? [] : [this.cursor] }));
    this.#rings.set(bench === null ? [] : findRings(bench, this.highlight?.rings ?? []));
    this.#drawn.set(bench === null ? [] : openLines(this.previewLines, bench.sceneFromModel));
    const chosen = this.selection?.seams ?? [];
    const pointed = (this.highlight?.seams ?? []).filter((seam) => !chosen.includes(seam));
    const threads = (seams: readonly number[]): number[] =>
      bench === null || isWhole ? [] : seams.flatMap((seam) => findThreads(bench, seam));
    this.#chosenThreads.set(threads(chosen));
    this.#pointedThreads.set(threads(pointed));
  }

  paint({ words, accent, line }: BenchColours, pixelRatio: number): void {
    this.#highlight.paint(words, line, pixelRatio);
    for (const part of [this.#selection, this.#preview, this.#cursor]) part.paint(accent, line, pixelRatio);
    this.#pointedThreads.colour = words;
    this.#chosenThreads.colour = this.#rings.colour = this.#drawn.colour = accent;
  }

  dispose(): void {
    for (const part of [...this.#parts(), ...this.#batches()]) part.dispose();
  }

  #batches(): LineBatch[] {
    return [this.#rings, this.#drawn, this.#pointedThreads, this.#chosenThreads];
  }

  #parts(): PointedOut[] {
    return [this.#highlight, this.#selection, this.#preview, this.#cursor];
  }
}

const NOTHING = { lines: [], fills: [], dots: [] };
