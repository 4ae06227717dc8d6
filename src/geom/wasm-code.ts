/**
 * A small assembler for WebAssembly (core specification 2.0 with 128-bit vectors): each function gives the bytes of one instruction or of
 * a few that belong together. Bodies are written as nested lists and flattened at the end.
 */
export type Code = readonly (number | Code)[];

const I32 = 0x7f;
const NO_RESULT = 0x40;

export const get = (local: number): Code => [0x20, local];
export const set = (local: number, ...value: Code): Code => [value, 0x21, local];
export const constant = (value: number): Code => [0x41, signed(value)];
export const add = (...pair: Code): Code => [pair, 0x6a];
export const subtract = (...pair: Code): Code => [pair, 0x6b];
export const multiply = (...pair: Code): Code => [pair, 0x6c];
export const and = (...pair: Code): Code => [pair, 0x71];
export const shiftLeft = (...pair: Code): Code => [pair, 0x74];
export const isEqual = (...pair: Code): Code => [pair, 0x46];
export const isAbove = (...pair: Code): Code => [pair, 0x4b];
/** The first of two values where the condition holds, else the second. */
export const choose = (first: Code, second: Code, condition: Code): Code => [first, second, condition, 0x1b];
/** Runs `body` until `isDone` holds before it. */
export const until = (isDone: Code, ...body: Code): Code => [
  0x02,
  NO_RESULT,
  0x03,
  NO_RESULT,
  isDone,
  0x0d,
  1,
  body,
  0x0c,
  0,
  0x0b,
  0x0b,
];
export const when = (condition: Code, ...body: Code): Code => [condition, 0x04, NO_RESULT, body, 0x0b];
export const loadIndex = (address: Code): Code => [address, 0x28, 2, 0];

/** Numbers of 64 bits. `offset` in bytes, 0 to 127. */
export const load = (address: Code, offset = 0): Code => [address, 0x2b, 3, offset];
export const store = (address: Code, value: Code, offset = 0): Code => [address, value, 0x39, 3, offset];
export const plus = (...pair: Code): Code => [pair, 0xa0];
export const minus = (...pair: Code): Code => [pair, 0xa1];
export const times = (...pair: Code): Code => [pair, 0xa2];

/** Two numbers side by side. */
export const loadTwo = (address: Code, offset = 0): Code => [address, 0xfd, 0x00, 3, offset];
export const loadTwice = (address: Code, offset = 0): Code => [address, 0xfd, 0x0a, 3, offset];
export const storeTwo = (address: Code, value: Code, offset = 0): Code => [address, value, 0xfd, 0x0b, 3, offset];
export const noughts: Code = [0xfd, 0x0c, Array<number>(16).fill(0)];
export const twice = (value: Code): Code => [value, 0xfd, 0x14];
export const lane = (value: Code, which: 0 | 1): Code => [value, 0xfd, 0x21, which];
export const plusTwo = (...pair: Code): Code => [pair, 0xfd, 0xf0, 0x01];
export const minusTwo = (...pair: Code): Code => [pair, 0xfd, 0xf1, 0x01];
export const timesTwo = (...pair: Code): Code => [pair, 0xfd, 0xf2, 0x01];
/** Lane `which` of both vectors. */
export const pairOf = (first: Code, second: Code, which: 0 | 1): Code => [
  first,
  second,
  0xfd,
  0x0d,
  Array.from({ length: 16 }, (_, i) => (i < 8 ? 8 * which + i : 16 + 8 * which + i - 8)),
];

/** A function of 32-bit integers without a result. */
export interface WasmFunction {
  readonly name: string;
  readonly parameters: number;
  /** Further locals, numbered on from the parameters: first integers, then numbers, then vectors. */
  readonly integers: number;
  readonly numbers: number;
  readonly vectors: number;
  readonly body: Code;
}

/** The bytes of a module that works on the memory imported as `room.memory`. */
export function moduleOf(functions: readonly WasmFunction[]): Uint8Array<ArrayBuffer> {
  const types = functions.map(({ parameters }) => [0x60, unsigned(parameters), Array<number>(parameters).fill(I32), 0]);
  const bytes: Code = [
    [0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    section(1, list(types)),
    section(2, list([[text('room'), text('memory'), 0x02, 0x00, 0x01]])),
    section(3, list(functions.map((_, i) => unsigned(i)))),
    section(7, list(functions.map(({ name }, i) => [text(name), 0x00, unsigned(i)]))),
    section(10, list(functions.map(bodyOf))),
  ];
  return Uint8Array.from(flat(bytes));
}

function bodyOf({ integers, numbers, vectors, body }: WasmFunction): Code {
  const groups = [
    [integers, I32],
    [numbers, 0x7c],
    [vectors, 0x7b],
  ].filter(([count]) => count > 0);
  return sized([list(groups.map(([count, type]) => [unsigned(count), type])), body, 0x0b]);
}

const section = (id: number, content: Code): Code => [id, sized(content)];
const list = (items: readonly Code[]): Code => [unsigned(items.length), ...items];
const text = (word: string): Code => list(Array.from(word, (letter) => [letter.charCodeAt(0)]));

function sized(content: Code): Code {
  const bytes = flat(content);
  return [unsigned(bytes.length), bytes];
}

const flat = (code: Code): number[] => (code as readonly unknown[]).flat(Infinity) as number[];

/** Variable-length integers (LEB128). */
function unsigned(value: number): Code {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)];
}

function signed(value: number): Code {
  const low = value & 0x7f;
  const rest = value >> 7;
  const isLast = (rest === 0 && low < 0x40) || (rest === -1 && low >= 0x40);
  return isLast ? [low] : [low | 0x80, ...signed(rest)];
}
