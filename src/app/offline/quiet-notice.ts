import type { Notice } from '../workbench.ts';

/** Where one notice stands at a time; tells of every change by a `change` event. */
export interface NoticeBoard extends EventTarget {
  readonly notice: Notice | null;
  setNotice(notice: Notice | null): void;
}

/** A notice that takes no other's place: it waits until there is room, and comes back after one that took its place. Closed by the maker it is gone. */
export class QuietNotice {
  #notice: Notice | null = null;
  #isUp = false;

  constructor(readonly board: NoticeBoard) {
    board.addEventListener('change', () => this.#follow());
  }

  /** Shows this one in place of the one before. */
  say(notice: Notice): void {
    const before = this.#notice;
    this.#notice = notice;
    if (before !== null && this.board.notice === before) this.board.setNotice(notice);
    else this.#follow();
  }

  /** Takes it away. */
  drop(): void {
    const before = this.#notice;
    this.#notice = null;
    this.#isUp = false;
    if (before !== null && this.board.notice === before) this.board.setNotice(null);
  }

  #follow(): void {
    const { notice } = this.board;
    if (this.#notice === null) return;
    if (notice === this.#notice) {
      this.#isUp = true;
    } else if (notice !== null) {
      this.#isUp = false;
    } else if (this.#isUp) {
      this.#notice = null;
      this.#isUp = false;
    } else {
      this.board.setNotice(this.#notice);
    }
  }
}
