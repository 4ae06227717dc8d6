/** What {@link ByteScanner.number} found. */
export type NumberKind = 'number' | 'none' | 'not-a-number' | 'not-finite';

const TAB = 9;
const LF = 10;
const CR = 13;
const SPACE = 32;
const HASH = 35;
const BACKSLASH = 92;

/** Powers of ten that a double holds exactly. */
const EXACT_POWERS = Array.from({ length: 23 }, (_, e) => Number(`1e${e}`));

/** How much of a word is quoted back to the maker. */
const QUOTED = 24;

/**
 * Walks through the bytes of a text file, word by word and line by line, without making strings on the way. Lines end with LF, CR LF or
 * CR alone. A line that ends with a backslash goes on in the next one, but only for {@link number}, {@link skipBlanks} and {@link word}:
 * comments and names may end with a backslash of their own.
 */
export class ByteScanner {
  readonly bytes: Uint8Array;
  at: number;
  /** Number of the line that `at` is on, counted from 1. */
  line = 1;
  /** What the last call of {@link number} found. */
  kind: NumberKind = 'none';

  /** @param from first byte to read. */
  constructor(bytes: Uint8Array, from: number) {
    this.bytes = bytes;
    this.at = from;
  }

  get isAtEnd(): boolean {
    return this.at >= this.bytes.length;
  }

  /** Moves over blanks and continued line ends; true when something is left on the line, which a `#` ends too. */
  skipBlanks(): boolean {
    const { bytes } = this;
    for (;;) {
      const byte = bytes[this.at];
      if (byte === SPACE || byte === TAB || byte === 11 || byte === 12) this.at += 1;
      else if (byte !== BACKSLASH || !this.#skipContinuation()) break;
    }
    return this.at < bytes.length && !isLineEnd(bytes[this.at]) && bytes[this.at] !== HASH;
  }

  /** Moves over a backslash, blanks and the line end after it; false, and nowhere, where that is not what is here. */
  #skipContinuation(): boolean {
    let to = this.at + 1;
    while (this.bytes[to] === SPACE || this.bytes[to] === TAB) to += 1;
    if (!isLineEnd(this.bytes[to])) return false;
    this.at = this.#afterLineEnd(to);
    this.line += 1;
    return true;
  }

  #afterLineEnd(at: number): number {
    return this.bytes[at] === CR && this.bytes[at + 1] === LF ? at + 2 : at + 1;
  }

  /** Moves to the beginning of the next line. */
  nextLine(): void {
    const { bytes } = this;
    let at = this.at;
    while (at < bytes.length && !isLineEnd(bytes[at])) at += 1;
    if (at < bytes.length) {
      at = this.#afterLineEnd(at);
      this.line += 1;
    }
    this.at = at;
  }

  /** Moves to the end of the word here and gives it, at most its first few letters. */
  word(): string {
    const from = this.at;
    this.skipWord();
    return latin(this.bytes, from, Math.min(this.at, from + QUOTED)) + (this.at > from + QUOTED ? '…' : '');
  }

  skipWord(): void {
    const { bytes } = this;
    let at = this.at;
    while (bytes[at] > SPACE && !(bytes[at] === BACKSLASH && this.#endsLine(at))) at += 1;
    // A word is at least one byte long, or a stray control byte would hold the reader for ever.
    this.at = at === this.at ? at + 1 : at;
  }

  #endsLine(at: number): boolean {
    let to = at + 1;
    while (this.bytes[to] === SPACE || this.bytes[to] === TAB) to += 1;
    return isLineEnd(this.bytes[to]);
  }

  /** The rest of the line as text, trimmed. Stays before the line end. */
  rest(most: number): string {
    const { bytes } = this;
    let from = this.at;
    while (bytes[from] === SPACE || bytes[from] === TAB) from += 1;
    let to = from;
    while (to < bytes.length && !isLineEnd(bytes[to])) to += 1;
    this.at = to;
    return TEXT.decode(bytes.subarray(from, Math.min(to, from + most))).trim();
  }

  /**
   * Reads the next number of the statement, to the last bit as `Number` would. Sets {@link kind}: `none` where the statement has no more
   * words; on every other failure the scanner stands before the word that is to blame.
   */
  number(): number {
    if (!this.skipBlanks()) {
      this.kind = 'none';
      return 0;
    }
    const { bytes } = this;
    const from = this.at;
    let at = from;
    const sign = bytes[at];
    if (sign === 45 || sign === 43) at += 1;
    let digits = 0;
    let mantissa = 0;
    let power = 0;
    let byte = bytes[at];
    while (byte >= 48 && byte <= 57) {
      mantissa = 10 * mantissa + byte - 48;
      if (mantissa > 0) digits += 1;
      byte = bytes[++at];
    }
    let seen = at - from - (sign === 45 || sign === 43 ? 1 : 0);
    if (byte === 46) {
      const point = at;
      byte = bytes[++at];
      while (byte >= 48 && byte <= 57) {
        mantissa = 10 * mantissa + byte - 48;
        if (mantissa > 0) digits += 1;
        byte = bytes[++at];
      }
      power = point + 1 - at;
      seen += at - point - 1;
    }
    if (seen > 0 && (byte === 101 || byte === 69)) {
      let exponent = 0;
      byte = bytes[++at];
      const exponentSign = byte;
      if (byte === 45 || byte === 43) byte = bytes[++at];
      const first = at;
      while (byte >= 48 && byte <= 57) {
        exponent = Math.min(9999, 10 * exponent + byte - 48);
        byte = bytes[++at];
      }
      if (at === first) seen = 0;
      power += exponentSign === 45 ? -exponent : exponent;
    }
    if (seen === 0 || !this.#endsWord(at)) {
      this.kind = NOT_FINITE.test(this.#wordAt(from)) ? 'not-finite' : 'not-a-number';
      return 0;
    }
    const value = digits <= 15 && power >= -22 && power <= 22 ? exact(mantissa, power) : Number(latin(bytes, from, at));
    if (Math.abs(value) > Number.MAX_VALUE) {
      this.kind = 'not-finite';
      return 0;
    }
    this.at = at;
    this.kind = 'number';
    return sign === 45 ? -Math.abs(value) : Math.abs(value);
  }

  #endsWord(at: number): boolean {
    const byte = this.bytes[at];
    return at >= this.bytes.length || byte <= SPACE || (byte === BACKSLASH && this.#endsLine(at));
  }

  #wordAt(from: number): string {
    this.at = from;
    const word = this.word();
    this.at = from;
    return word;
  }
}

/** Ways in which programs write what is no number: C, C++, Fortran, and one runtime's own. */
const NOT_FINITE = /^[-+]?(nan|-?nan\(.*|inf|infinity|1\.#.*|\*+)$/i;

/** Exact by W. Clinger (How to read floating point numbers accurately, 1990): both parts are doubles without error, so one rounding is left. */
const exact = (mantissa: number, power: number): number =>
  power < 0 ? mantissa / EXACT_POWERS[-power] : mantissa * EXACT_POWERS[power];

const isLineEnd = (byte: number): boolean => byte === LF || byte === CR;

/** File names and groups are mostly UTF-8; bytes that are not become a replacement sign. */
const TEXT = new TextDecoder('utf-8');

function latin(bytes: Uint8Array, from: number, to: number): string {
  return TEXT.decode(bytes.subarray(from, to));
}
