/** So many ways in a row must agree on a stretch before it stays where it is. */
const AGREE = 4;
/** Corners next to the end that never stay: the hand is still deciding about them. */
const LOOSE = 3;
/** Corners of the pointer's trail that are kept in mind: the anchor follows long before. */
const LONGEST_TRAIL = 100;

/**
 * A line that follows the pointer along edges: what the last few ways have in common stays, so that the line keeps to where the hand went
 * instead of jumping to the shortest way as a whole (cooling, Mortensen and Barrett 1995). Going back along it takes it up again.
 */
export class LiveLine {
  /** Corners that stay, the first one included; ways are asked for from the last. */
  #fixed: number[];
  #ways: (readonly number[])[] = [];
  /** Corners the pointer came by since the anchor: the way should lead along them. */
  #trail: number[] = [];

  constructor(start: number) {
    this.#fixed = [start];
  }

  /** The corner that the next way begins at. */
  get anchor(): number {
    return this.#fixed[this.#fixed.length - 1];
  }

  get trail(): readonly number[] {
    return this.#trail;
  }

  /** All corners of the line now. */
  get corners(): readonly number[] {
    return [...this.#fixed, ...(this.#ways.at(-1) ?? []).slice(1)];
  }

  /** The pointer is at a corner: what stayed beyond it is taken up again. Ask for a way from the anchor after this. */
  pointAt(corner: number): void {
    const at = this.#fixed.indexOf(corner);
    if (at < 0) {
      this.#trail = [...this.#trail.filter((other) => other !== corner), corner].slice(-LONGEST_TRAIL);
      return;
    }
    this.#fixed.length = at + 1;
    [this.#ways, this.#trail] = [[], []];
  }

  /** @param way  corners from the anchor to the pointer. */
  take(way: readonly number[]): void {
    this.#ways = [...this.#ways, way].slice(-AGREE);
    if (this.#ways.length < AGREE) return;
    let common = 0;
    while (this.#ways.every((other) => common < other.length && other[common] === way[common])) common += 1;
    const staying = common - LOOSE;
    if (staying < 2) return;
    this.#fixed.push(...way.slice(1, staying));
    this.#ways = this.#ways.map((other) => other.slice(staying - 1));
  }
}
