import { fail, ok, type Result } from '../base/result.ts';
import { flatArc } from './svg-arc.ts';
import type { Vec2 } from './vec.ts';

/** One stroke of a drawing as corners in the plane, mm, y up; a closed one repeats no corner. */
export interface Stroke {
  readonly points: readonly Vec2[];
  readonly closed: boolean;
}

/** How many numbers each command takes. */
const NUMBERS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };

/** More corners than anybody draws by hand: a tolerance far too fine for the drawing. */
const MOST_POINTS = 100_000;

/**
 * Reads the text of a path as SVG writes it in its attribute `d` (SVG 1.1, chapter 8.3) into strokes of straight pieces: all commands,
 * absolute and relative, numbers with no space between where that is clear. SVG counts y downward; here it runs up, so y is turned over.
 * @param tolerance  how far a curve may be from its straight pieces, in the unit of the path, > 0, else RangeError.
 * @returns strokes of two corners or more. Fails with `path/unreadable`, telling what stands where, or `path/too-fine`.
 */
export function readSvgPath(text: string, tolerance: number): Result<readonly Stroke[]> {
  if (!(tolerance > 0)) throw new RangeError(`tolerance ${tolerance}`);
  const pen = new Pen(tolerance);
  const fault = drawSvgPath(text, pen);
  if (fault !== null) {
    const { at, wanted, found } = fault;
    return fail('path/unreadable', `The path cannot be read at character ${at}: ${wanted} should stand there${found}.`);
  }
  if (pen.isFull)
    return fail('path/too-fine', `The path would have more than ${MOST_POINTS} corners: give a larger tolerance.`);
  return ok(pen.strokes());
}

/** What takes the commands of a path, one by one. */
export interface PathPen {
  /** False until the first move. */
  readonly isDown: boolean;
  /** True when no more can be taken. */
  readonly isFull: boolean;
  /** @param kind the command's letter as a capital; `values` are as many as it takes. */
  draw(kind: string, values: readonly number[], isRelative: boolean): void;
}

/** Where the text of a path cannot be read. */
export interface PathFault {
  /** Character, from 1: the letter or number that cannot stand there. */
  readonly at: number;
  readonly wanted: 'a command' | 'a move first' | '0 or 1' | 'a number';
  /** What stands there, as the end of a sentence. */
  readonly found: string;
}

/**
 * Reads the text of a path command by command (SVG 1.1, chapter 8.3), until the pen is full.
 * @param mostNumber  greatest size of a number.
 * @returns the first fault, or null.
 */
export function drawSvgPath(text: string, pen: PathPen, mostNumber = Infinity): PathFault | null {
  const scanner = new PathScanner(text);
  const missing = (wanted: PathFault['wanted'], at: number): PathFault => ({
    at: at + 1,
    wanted,
    found: scanner.found(at),
  });
  let command = '';
  while (scanner.skipSpace()) {
    const from = scanner.at;
    const letter = scanner.letter();
    if (letter !== null) command = letter;
    // Numbers that go on without a letter repeat the command; after a move they are lines.
    else if (command === 'M' || command === 'm') command = command === 'M' ? 'L' : 'l';
    const kind = command.toUpperCase();
    if (!(kind in NUMBERS) || (letter === null && kind === 'Z')) return missing('a command', from);
    if (kind !== 'M' && !pen.isDown) return missing('a move first', from);
    const values: number[] = [];
    for (let i = 0; i < NUMBERS[kind]; i += 1) {
      const isFlag = kind === 'A' && (i === 3 || i === 4);
      scanner.skipSpace();
      const before = scanner.at;
      const value = isFlag ? scanner.flag() : scanner.number();
      if (value === null || Math.abs(value) > mostNumber) return missing(isFlag ? '0 or 1' : 'a number', before);
      values.push(value);
    }
    pen.draw(kind, values, command !== kind);
    if (pen.isFull) return null;
  }
  return null;
}

/** Goes through the text of a path, number by number. */
class PathScanner {
  readonly #text: string;
  at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  /** Passes spaces and commas; false at the end. */
  skipSpace(): boolean {
    while (this.at < this.#text.length && /[\s,]/.test(this.#text[this.at])) this.at += 1;
    return this.at < this.#text.length;
  }

  letter(): string | null {
    const letter = this.#text[this.at];
    if (!/[a-zA-Z]/.test(letter)) return null;
    this.at += 1;
    return letter;
  }

  number(): number | null {
    NUMBER.lastIndex = this.at;
    const match = NUMBER.exec(this.#text);
    if (match === null || !Number.isFinite(Number(match[0]))) return null;
    this.at += match[0].length;
    return Number(match[0]);
  }

  /** One digit, 0 or 1: what follows may stand right behind it. */
  flag(): number | null {
    const digit = this.#text[this.at];
    if (digit !== '0' && digit !== '1') return null;
    this.at += 1;
    return Number(digit);
  }

  /** What stands at a place of the text, as the end of a sentence. */
  found(at: number): string {
    return at < this.#text.length ? `, not “${this.#text.slice(at, at + 8)}”` : ', but it ends there';
  }
}

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;

/** Draws commands as strokes. Works in the path's own axes, y down, and turns them over at the end. */
class Pen implements PathPen {
  readonly #tolerance: number;
  readonly #strokes: { points: Vec2[]; closed: boolean }[] = [];
  #x = 0;
  #y = 0;
  /** Where the last curve's second handle stood, for the curve that goes on smoothly; null after other commands. */
  #handle: Vec2 | null = null;
  #handleOf = '';
  #isNew = true;
  isDown = false;
  count = 0;

  get isFull(): boolean {
    return this.count > MOST_POINTS;
  }

  constructor(tolerance: number) {
    this.#tolerance = tolerance;
  }

  draw(kind: string, values: readonly number[], isRelative: boolean): void {
    const [ox, oy] = isRelative ? [this.#x, this.#y] : [0, 0];
    const at = (i: number): Vec2 => ({ x: ox + values[i], y: oy + values[i + 1] });
    const here = { x: this.#x, y: this.#y };
    switch (kind) {
      case 'M':
        this.#strokes.push({ points: [at(0)], closed: false });
        [this.#x, this.#y] = [at(0).x, at(0).y];
        [this.isDown, this.#isNew] = [true, false];
        break;
      case 'L':
        this.#lineTo(at(0));
        break;
      case 'H':
        this.#lineTo({ x: ox + values[0], y: here.y });
        break;
      case 'V':
        this.#lineTo({ x: here.x, y: oy + values[0] });
        break;
      case 'C':
        this.#cubic(here, at(0), at(2), at(4));
        break;
      case 'S':
        this.#cubic(here, this.#mirrored('C'), at(0), at(2));
        break;
      case 'Q':
        this.#quadratic(here, at(0), at(2));
        break;
      case 'T':
        this.#quadratic(here, this.#mirrored('Q'), at(0));
        break;
      case 'A':
        for (const p of flatArc(here, values, at(5), this.#tolerance)) this.#lineTo(p);
        break;
      default:
        this.#close();
    }
    if (!'CSQT'.includes(kind)) this.#handle = null;
  }

  /** Strokes of two corners or more, y up, without corners that stand twice in a row. */
  strokes(): Stroke[] {
    return this.#strokes.flatMap(({ points, closed }) => {
      const kept = points.filter((p, i) => i === 0 || p.x !== points[i - 1].x || p.y !== points[i - 1].y);
      const [first, last] = [kept[0], kept[kept.length - 1]];
      if (closed && kept.length > 1 && first.x === last.x && first.y === last.y) kept.pop();
      return kept.length < 2
        ? []
        : [{ points: kept.map(({ x, y }) => ({ x, y: 0 - y })), closed: closed && kept.length > 2 }];
    });
  }

  #lineTo(p: Vec2): void {
    // After a close without a move, a new stroke begins where the closed one did.
    if (this.#isNew) this.#strokes.push({ points: [{ x: this.#x, y: this.#y }], closed: false });
    this.#isNew = false;
    this.#strokes[this.#strokes.length - 1].points.push(p);
    [this.#x, this.#y] = [p.x, p.y];
    this.count += 1;
  }

  #close(): void {
    const stroke = this.#strokes[this.#strokes.length - 1];
    if (!this.#isNew) stroke.closed = true;
    this.#isNew = true;
    [this.#x, this.#y] = [stroke.points[0].x, stroke.points[0].y];
  }

  /** The handle across the point here of the last curve's handle, where that was of this kind; else the point itself. */
  #mirrored(kind: string): Vec2 {
    const handle = this.#handleOf === kind ? this.#handle : null;
    return handle === null ? { x: this.#x, y: this.#y } : { x: 2 * this.#x - handle.x, y: 2 * this.#y - handle.y };
  }

  #cubic(a: Vec2, b: Vec2, c: Vec2, d: Vec2): void {
    const bend = Math.max(bendOf(a, b, c), bendOf(b, c, d));
    // n pieces stray by at most the greatest second derivative / 8 n^2 (Filip, Magedson and Markot 1986).
    this.#pieces(Math.sqrt((6 * bend) / (8 * this.#tolerance)), (t) => {
      const s = 1 - t;
      const [p, q, r, w] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
      return { x: p * a.x + q * b.x + r * c.x + w * d.x, y: p * a.y + q * b.y + r * c.y + w * d.y };
    });
    this.#lineTo(d);
    [this.#handle, this.#handleOf] = [c, 'C'];
  }

  #quadratic(a: Vec2, b: Vec2, c: Vec2): void {
    this.#pieces(Math.sqrt((2 * bendOf(a, b, c)) / (8 * this.#tolerance)), (t) => {
      const s = 1 - t;
      return { x: s * s * a.x + 2 * s * t * b.x + t * t * c.x, y: s * s * a.y + 2 * s * t * b.y + t * t * c.y };
    });
    this.#lineTo(c);
    [this.#handle, this.#handleOf] = [b, 'Q'];
  }

  /** Corners inside a curve, its end left to the caller. */
  #pieces(wanted: number, at: (t: number) => Vec2): void {
    const count = Math.min(MOST_POINTS + 1, Math.max(1, Math.ceil(wanted)));
    for (let i = 1; i < count; i += 1) this.#lineTo(at(i / count));
  }
}

const bendOf = (a: Vec2, b: Vec2, c: Vec2): number => Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
