import { type Color, Group, type Matrix4 } from 'three';
import type { BenchTapes } from './bench-contract.ts';
import { ringLines } from './find-pointed.ts';
import { LineBatch } from './line-batch.ts';

/** Of the light of lines on foam: is seen on dark foam and on the pale ground alike. */
const BETWEEN = 0.32;

/**
 * Tapes as they lie round the sculpt, bridging hollows, and the outlines of what it sits on; seen through the foam, because both lie behind
 * its back.
 */
export class TapeLines {
  readonly object = new Group();
  readonly #rest = new LineBatch({ widthPx: 1.4, isOnTop: true, opacity: 0.7, renderOrder: 12 });
  readonly #cores = new LineBatch({ widthPx: 1.2, isOnTop: true, opacity: 0.9, renderOrder: 11 });
  readonly #chosen = new LineBatch({ widthPx: 3, isOnTop: true, opacity: 0.95, renderOrder: 13 });

  constructor() {
    this.object.add(this.#cores.object, this.#rest.object, this.#chosen.object);
  }

  set(tapes: BenchTapes, sceneFromModel: Matrix4 | null): void {
    this.#cores.set(sceneFromModel === null ? [] : ringLines(tapes.cores, sceneFromModel));
    this.#rest.set(sceneFromModel === null ? [] : ringLines(tapes.rest, sceneFromModel));
    this.#chosen.set(sceneFromModel === null ? [] : ringLines(tapes.chosen, sceneFromModel));
  }

  paint(rest: Color, chosen: Color): void {
    this.#cores.colour = rest.clone().multiplyScalar(BETWEEN);
    this.#rest.colour = rest;
    this.#chosen.colour = chosen;
  }

  dispose(): void {
    this.#cores.dispose();
    this.#rest.dispose();
    this.#chosen.dispose();
  }
}
