import { fail, ok, type Fail, type Result } from '../../base/result.ts';
import type { Work } from '../../base/work.ts';
import { ByteScanner } from './byte-scanner.ts';
import { coordinateFault } from './coordinate-fault.ts';
import { GroupNames } from './group-names.ts';
import { GrowingFloats, GrowingNumbers } from './growing.ts';
import { MOST_CORNERS, MOST_FACE_CORNERS, MOST_TRIANGLES } from './limits.ts';
import type { RawModel } from './raw-model.ts';
import { NAME_BYTES, readText, type TextReader } from './read-text.ts';

/** The largest number a face may name: what 32 bits hold less one, so that one more still fits. */
const MOST_INDEX = 0xfffffffe;

/**
 * Reads a Wavefront OBJ: `v` with 3 numbers or more (x y z, then a weight that polygons do not use, or r g b and maybe an opacity), `f`
 * with corners `v`, `v/vt`, `v//vn` or `v/vt/vn` counted from 1 or back from the last `v` line (negative), names of `o`, `g` and
 * `usemtl`. All else is passed over: textures, normals, lines, curves, material files, words nobody knows.
 * Colours in 0 to 255, as some programs write them, are told by a value over 1.
 * @param from first byte after a byte order mark.
 */
export async function readObj(bytes: Uint8Array, from: number, work: Work): Promise<Result<RawModel>> {
  return await readText(new ObjReader(bytes, from), from, bytes.length, work);
}

class ObjReader implements TextReader {
  readonly #scanner: ByteScanner;
  readonly #points: GrowingFloats;
  readonly #faceStarts: GrowingNumbers;
  readonly #corners: GrowingNumbers;
  readonly #faceLines: GrowingNumbers;
  readonly #groupOfFace: GrowingNumbers;
  readonly #groups = new GroupNames();
  /** r g b of every point up to the last coloured one, NaN where there is none; nothing until a colour comes. */
  readonly #colours = new GrowingFloats(0);
  #pointCount = 0;
  #triangleCount = 0;
  #largestIndex = -1;
  #hasCurves = false;

  constructor(bytes: Uint8Array, from: number) {
    this.#scanner = new ByteScanner(bytes, from);
    // Usual files spend some 80 bytes on a vertex with its two faces.
    const guess = Math.ceil(bytes.length / 80);
    this.#points = new GrowingFloats(3 * guess);
    this.#faceStarts = new GrowingNumbers(2 * guess);
    this.#corners = new GrowingNumbers(6 * guess);
    this.#faceLines = new GrowingNumbers(2 * guess);
    this.#groupOfFace = new GrowingNumbers(2 * guess);
    this.#faceStarts.push(0);
  }

  get at(): number {
    return this.#scanner.at;
  }

  get isAtEnd(): boolean {
    return this.#scanner.isAtEnd;
  }

  /** Reads whole statements until `to` is reached or passed. */
  readTo(to: number): Fail | null {
    const scanner = this.#scanner;
    const { bytes } = scanner;
    while (scanner.at < to && !scanner.isAtEnd) {
      if (scanner.skipBlanks()) {
        const next = bytes[scanner.at + 1];
        const isShort = next === 32 || next === 9 || next === 92;
        const first = bytes[scanner.at];
        let fault: Fail | null = null;
        if (isShort && first === V) fault = this.#vertex();
        else if (isShort && first === F) fault = this.#face();
        else if (first !== V && !(isShort && first === S)) this.#name();
        if (fault !== null) return fault;
      }
      scanner.nextLine();
    }
    return null;
  }

  #vertex(): Fail | null {
    const scanner = this.#scanner;
    const { line } = scanner;
    scanner.at += 1;
    if (this.#pointCount === MOST_CORNERS) return tooLarge(`more than ${MOST_CORNERS} vertices`);
    for (let axis = 0; axis < 3; axis += 1) {
      const value = scanner.number();
      const fault = coordinateFault(scanner, value, `on line ${line}`);
      if (fault !== null) return fault;
      this.#points.push(value + 0);
    }
    this.#colour();
    this.#pointCount += 1;
    return null;
  }

  /** Takes r g b where six numbers or more stand on the line; of five or fewer the rest is a weight or a stray. */
  #colour(): void {
    const scanner = this.#scanner;
    let [red, green, blue] = [0, 0, 0];
    for (let i = 0; i < 3; i += 1) {
      const value = scanner.number();
      if (scanner.kind !== 'number') return;
      [red, green, blue] = [green, blue, value];
    }
    while (this.#colours.length < 3 * this.#pointCount) this.#colours.push(NaN);
    this.#colours.push(red);
    this.#colours.push(green);
    this.#colours.push(blue);
  }

  #face(): Fail | null {
    const scanner = this.#scanner;
    const { line } = scanner;
    scanner.at += 1;
    const begin = this.#corners.length;
    while (scanner.skipBlanks()) {
      const fault = this.#corner(line);
      if (fault !== null) return fault;
    }
    const count = this.#corners.length - begin;
    if (count < 3) {
      const has = count === 0 ? 'no corner' : count === 1 ? 'one corner' : 'two corners';
      return fail(
        'read/short-face',
        `The face on line ${line} has ${has}, and a face needs three: export the sculpt again as polygons.`,
      );
    }
    if (count > MOST_FACE_CORNERS) {
      return fail(
        'read/face-too-large',
        `The face on line ${line} has ${count} corners, and ${MOST_FACE_CORNERS} is the most: let your modelling program cut it into triangles.`,
      );
    }
    this.#triangleCount += count - 2;
    if (this.#triangleCount > MOST_TRIANGLES) return tooLarge(`more than ${MOST_TRIANGLES} triangles`);
    this.#faceStarts.push(this.#corners.length);
    this.#faceLines.push(line);
    this.#groupOfFace.push(this.#groups.current + 1);
    return null;
  }

  /** Reads `v`, `v/vt`, `v//vn` or `v/vt/vn`; only the first number matters here. */
  #corner(line: number): Fail | null {
    const scanner = this.#scanner;
    const { bytes } = scanner;
    const from = scanner.at;
    let at = from;
    const isNegative = bytes[at] === 45;
    if (isNegative || bytes[at] === 43) at += 1;
    const digits = at;
    let number = 0;
    while (bytes[at] >= 48 && bytes[at] <= 57) {
      number = Math.min(MOST_INDEX, 10 * number + bytes[at] - 48);
      at += 1;
    }
    const isNumber = at > digits;
    if (isNumber && bytes[at] === SLASH) while (isTail(bytes[at])) at += 1;
    if (!isNumber || !isCornerEnd(bytes[at])) {
      const word = scanner.word();
      return fail(
        'read/bad-index',
        `The face on line ${line} names “${word}” where the number of a vertex belongs: export the sculpt again as OBJ.`,
      );
    }
    if (number === MOST_INDEX) {
      return fail(
        'read/index-range',
        `The face on line ${line} names vertex ${scanner.word()}, far more than the file can hold: export the sculpt again.`,
      );
    }
    scanner.at = at;
    if (number === 0) {
      return fail(
        'read/index-zero',
        `The face on line ${line} names vertex 0, and OBJ counts from 1: export the sculpt again as OBJ.`,
      );
    }
    if (isNegative && number > this.#pointCount) {
      return fail(
        'read/index-range',
        `The face on line ${line} counts back ${number} vertices, but only ${this.#pointCount} came before it: export the sculpt again as OBJ.`,
      );
    }
    const index = isNegative ? this.#pointCount - number : number - 1;
    this.#largestIndex = Math.max(this.#largestIndex, index);
    this.#corners.push(index);
    return null;
  }

  #name(): void {
    const scanner = this.#scanner;
    const word = scanner.word();
    if (word === 'o') this.#groups.set('object', scanner.rest(NAME_BYTES));
    else if (word === 'g') this.#groups.set('group', scanner.rest(NAME_BYTES));
    else if (word === 'usemtl') this.#groups.set('material', scanner.rest(NAME_BYTES));
    else if (word === 'curv' || word === 'surf' || word === 'curv2') this.#hasCurves = true;
  }

  finish(): Result<RawModel> {
    const faceCount = this.#faceStarts.length - 1;
    if (faceCount === 0) return this.#noFaces();
    const corners = this.#corners.view();
    const starts = this.#faceStarts.view();
    const lines = this.#faceLines.view();
    if (this.#largestIndex >= this.#pointCount) {
      let f = 0;
      while (!corners.subarray(starts[f], starts[f + 1]).some((index) => index >= this.#pointCount)) f += 1;
      const index = corners.subarray(starts[f], starts[f + 1]).find((number) => number >= this.#pointCount) ?? 0;
      return fail(
        'read/index-range',
        `The face on line ${lines[f]} names vertex ${index + 1}, but the file has ${this.#pointCount}: it may be cut short, so export the sculpt again.`,
      );
    }
    return ok({
      format: 'obj',
      points: this.#points.view(),
      colours: this.#finishedColours(),
      cornersInFile: this.#pointCount,
      faceStarts: starts,
      faceCorners: corners,
      groupNames: this.#groups.names,
      groupOfFace: new Int32Array(this.#groupOfFace.view()).map((index) => index - 1),
      placeOfFace: (f) => `line ${lines[f]}`,
      findings: [],
    });
  }

  #noFaces(): Fail {
    if (this.#hasCurves) {
      return fail(
        'read/no-faces',
        'The file holds curved surfaces but no polygons: export the sculpt as a polygon mesh.',
      );
    }
    if (this.#pointCount > 0) {
      return fail(
        'read/no-faces',
        `The file holds ${this.#pointCount} ${this.#pointCount === 1 ? 'point' : 'points'} but no faces: export the sculpt as a mesh, not as points or lines.`,
      );
    }
    return fail('read/no-faces', 'The file holds no faces: export the sculpt as OBJ or STL.');
  }

  /** Points without a colour in a file that has some are white. */
  #finishedColours(): Float64Array | null {
    if (this.#colours.length === 0) return null;
    const colours = new Float64Array(3 * this.#pointCount).fill(NaN);
    colours.set(this.#colours.view());
    const full = colours.some((part) => part > 1) ? 255 : 1;
    return colours.map((part) => (Number.isNaN(part) ? 1 : Math.min(1, Math.max(0, part / full))));
  }
}

const V = 118;
const F = 102;
const S = 115;

const SLASH = 47;

/** Slash, minus and digits: what may follow the first number of a corner after a slash. */
const isTail = (byte: number): boolean => (byte >= SLASH && byte <= 57) || byte === 45 || byte === 43;

/** The end of the file, a blank, a line end, a comment or a continued line. */
const isCornerEnd = (byte: number | undefined): boolean =>
  byte === undefined || byte <= 32 || byte === 35 || byte === 92;

const tooLarge = (what: string): Fail =>
  fail('read/too-large', `The file has ${what}, more than fits: reduce the mesh in your modelling program first.`);
