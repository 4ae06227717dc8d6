import { expect, it } from 'vitest';
import { QuietNotice, type NoticeBoard } from '../../../src/app/offline/quiet-notice.ts';
import type { Notice } from '../../../src/app/workbench.ts';

class Board extends EventTarget implements NoticeBoard {
  notice: Notice | null = null;
  setNotice(notice: Notice | null): void {
    this.notice = notice;
    this.dispatchEvent(new Event('change'));
  }
}

const saying = (text: string): Notice => ({ tone: 'note', text });
const MINE = saying('mine');
const OTHER = saying('another');

it('stands where there is room, and waits where there is none', () => {
  const board = new Board();
  const quiet = new QuietNotice(board);
  board.setNotice(OTHER);
  quiet.say(MINE);
  expect(board.notice).toBe(OTHER);
  board.setNotice(null);
  expect(board.notice).toBe(MINE);
});

it('comes back after one that took its place, and is gone when it is closed', () => {
  const board = new Board();
  new QuietNotice(board).say(MINE);
  board.setNotice(OTHER);
  expect(board.notice).toBe(OTHER);
  board.setNotice(null);
  expect(board.notice).toBe(MINE);
  board.setNotice(null);
  board.dispatchEvent(new Event('change'));
  expect(board.notice).toBeNull();
});

it('takes the place of its own one before, and is taken away with no other', () => {
  const board = new Board();
  const quiet = new QuietNotice(board);
  quiet.say(OTHER);
  quiet.say(MINE);
  expect(board.notice).toBe(MINE);
  quiet.drop();
  expect(board.notice).toBeNull();
  board.setNotice(OTHER);
  quiet.drop();
  expect(board.notice).toBe(OTHER);
});

it('two of them show one after the other', () => {
  const board = new Board();
  const [first, second] = [new QuietNotice(board), new QuietNotice(board)];
  first.say(MINE);
  second.say(OTHER);
  expect(board.notice).toBe(MINE);
  board.setNotice(null);
  expect(board.notice).toBe(OTHER);
  board.setNotice(null);
  expect(board.notice).toBeNull();
});
