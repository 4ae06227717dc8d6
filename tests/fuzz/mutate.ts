import { HOSTILE_BYTES, HOSTILE_FIGURES, HOSTILE_NAMES } from './hostile-values.ts';
import { below, bytesOf, oneOf, type Random } from './target.ts';

/** No input is made larger than this, bytes, but where a part is said over many times. */
export const MOST_BYTES = 1 << 16;

/** The bytes changed in one to six places, or more in a few of them. */
export function mutated(random: Random, bytes: Uint8Array, other: Uint8Array, words: readonly string[]): Uint8Array {
  let now = bytes;
  const times = random() < 0.5 ? 1 : 1 + below(random, random() < 0.9 ? 6 : 30);
  for (let i = 0; i < times; i += 1) now = oneOf(random, WAYS)(random, now, other, words);
  return now.length > MOST_BYTES ? now.subarray(0, MOST_BYTES) : now;
}

type Way = (random: Random, bytes: Uint8Array, other: Uint8Array, words: readonly string[]) => Uint8Array;

/** `bytes` with what stands from `from` to `to` put by something else. */
function spliced(bytes: Uint8Array, from: number, to: number, put: Uint8Array): Uint8Array {
  const made = new Uint8Array(from + put.length + bytes.length - to);
  made.set(bytes.subarray(0, from));
  made.set(put, from);
  made.set(bytes.subarray(to), from + put.length);
  return made;
}

const nothing = new Uint8Array(0);

/** A stretch of the bytes, mostly short. */
function stretch(random: Random, bytes: Uint8Array): [from: number, to: number] {
  const from = below(random, bytes.length + 1);
  const most = random() < 0.8 ? 16 : bytes.length;
  return [from, Math.min(bytes.length, from + 1 + below(random, most))];
}

/** Where runs of letters or figures that stand together begin and end, near a place drawn. */
function tokenAt(random: Random, bytes: Uint8Array, belongs: (byte: number) => boolean): [number, number] | null {
  let from = below(random, bytes.length);
  for (let tries = 0; tries < 64 && from < bytes.length && !belongs(bytes[from]); tries += 1) from += 1;
  if (from >= bytes.length || !belongs(bytes[from])) return null;
  while (from > 0 && belongs(bytes[from - 1])) from -= 1;
  let to = from;
  while (to < bytes.length && belongs(bytes[to])) to += 1;
  return [from, to];
}

const isOfFigure = (byte: number): boolean => (byte >= 48 && byte <= 57) || byte === 46 || byte === 45 || byte === 43;
const isOfWord = (byte: number): boolean =>
  byte > 32 && byte !== 34 && byte !== 44 && byte !== 58 && byte !== 60 && byte !== 62;

const WAYS: readonly Way[] = [
  function turnBit(random, bytes) {
    const made = bytes.slice();
    if (made.length > 0) made[below(random, made.length)] ^= 1 << below(random, 8);
    return made;
  },
  function putByte(random, bytes) {
    const made = bytes.slice();
    if (made.length > 0)
      made[below(random, made.length)] = random() < 0.5 ? oneOf(random, HOSTILE_BYTES) : below(random, 256);
    return made;
  },
  function putWholeNumber(random, bytes) {
    const made = bytes.slice();
    const size = oneOf(random, [2, 4]);
    if (made.length < size) return made;
    const view = new DataView(made.buffer);
    const at = below(random, made.length - size + 1);
    const value = oneOf(
      random,
      [0, 1, -1, 0x7fffffff, -0x80000000, 0x80, 0xff, 0x100, 0xffff, 0x10000, 0x7f800000, 0x7fc00000],
    );
    if (size === 2) view.setInt16(at, value, random() < 0.5);
    else view.setInt32(at, value, random() < 0.5);
    return made;
  },
  function leaveOut(random, bytes) {
    const [from, to] = stretch(random, bytes);
    return spliced(bytes, from, to, nothing);
  },
  function sayTwice(random, bytes) {
    const [from, to] = stretch(random, bytes);
    const times = random() < 0.95 ? 1 : 1 + below(random, 200);
    const part = bytes.subarray(from, to);
    if (part.length * times > MOST_BYTES) return bytes;
    const many = new Uint8Array(part.length * times);
    for (let i = 0; i < times; i += 1) many.set(part, i * part.length);
    return spliced(bytes, to, to, many);
  },
  function putRun(random, bytes) {
    const [from, to] = stretch(random, bytes);
    const made = bytes.slice();
    made.fill(oneOf(random, HOSTILE_BYTES), from, to);
    return made;
  },
  function exchange(random, bytes) {
    const [a, b] = stretch(random, bytes);
    const [c, d] = stretch(random, bytes);
    return spliced(bytes, a, b, bytes.slice(c, d));
  },
  function cutOff(random, bytes) {
    return bytes.slice(0, below(random, bytes.length + 1));
  },
  function takeOver(random, bytes, other) {
    const [from, to] = stretch(random, other);
    const [a, b] = stretch(random, bytes);
    return spliced(bytes, a, random() < 0.5 ? a : b, other.subarray(from, to));
  },
  function joinHalves(random, bytes, other) {
    return spliced(
      bytes,
      below(random, bytes.length + 1),
      bytes.length,
      other.subarray(below(random, other.length + 1)),
    );
  },
  putFigure,
  putFigure,
  putFigure,
  function putName(random, bytes) {
    const place = tokenAt(random, bytes, isOfWord) ?? [0, 0];
    return spliced(bytes, place[0], place[1], bytesOf(oneOf(random, HOSTILE_NAMES)));
  },
  putWord,
  putWord,
  function exchangeWords(random, bytes) {
    const [a, b] = [tokenAt(random, bytes, isOfWord), tokenAt(random, bytes, isOfWord)];
    return a === null || b === null ? bytes : spliced(bytes, a[0], a[1], bytes.slice(b[0], b[1]));
  },
  function putLongWord(random, bytes) {
    const at = below(random, bytes.length + 1);
    const letter = oneOf(random, ['a', '9', ' ', '-', '(', '"', '\u00e9', '\u{1f600}']);
    return spliced(bytes, at, at, bytesOf(letter.repeat(1 + below(random, random() < 0.95 ? 400 : 20_000))));
  },
];

function putFigure(random: Random, bytes: Uint8Array): Uint8Array {
  const place = tokenAt(random, bytes, isOfFigure);
  return place === null ? bytes : spliced(bytes, place[0], place[1], bytesOf(oneOf(random, HOSTILE_FIGURES)));
}

function putWord(random: Random, bytes: Uint8Array, _other: Uint8Array, words: readonly string[]): Uint8Array {
  if (words.length === 0) return bytes;
  const word = bytesOf(oneOf(random, words));
  const place = random() < 0.5 ? tokenAt(random, bytes, isOfWord) : null;
  const at = below(random, bytes.length + 1);
  return spliced(bytes, place?.[0] ?? at, place?.[1] ?? at, word);
}
