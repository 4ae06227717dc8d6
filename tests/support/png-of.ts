import { zlibSync } from 'fflate';
import { crc32 } from '../../src/base/crc32.ts';

/** How a test's PNG is packed. `sample` gives each channel's value, 0 to 2^depth - 1. */
export interface PngWish {
  readonly width: number;
  readonly height: number;
  readonly colourType: 0 | 2 | 3 | 4 | 6;
  readonly depth: number;
  readonly sample: (x: number, y: number, channel: number) => number;
  readonly isInterlaced?: boolean;
  readonly chunks?: readonly (readonly [name: string, body: readonly number[]])[];
}

const CHANNELS = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 } as const;
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
];

export const bytes32 = (value: number): number[] => [
  value >>> 24,
  (value >>> 16) & 255,
  (value >>> 8) & 255,
  value & 255,
];

export function pngChunk(name: string, body: ArrayLike<number>): number[] {
  const text = [...Array.from(name, (letter) => letter.charCodeAt(0)), ...Array.from(body)];
  return [...bytes32(body.length), ...text, ...bytes32(crc32(Uint8Array.from(text)))];
}

export const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** A PNG for tests, its rows filtered by each of the five filters in turn. */
export function pngOf({ width, height, colourType, depth, sample, isInterlaced, chunks }: PngWish): Uint8Array {
  const channels = CHANNELS[colourType];
  const raw: number[] = [];
  for (const [x0, y0, stepX, stepY] of isInterlaced === true ? PASSES : [[0, 0, 1, 1]]) {
    let before: number[] = [];
    for (let y = y0; y < height && x0 < width; y += stepY) {
      const bits: number[] = [];
      for (let x = x0; x < width; x += stepX)
        for (let c = 0; c < channels; c += 1)
          for (let bit = depth - 1; bit >= 0; bit -= 1) bits.push((sample(x, y, c) >> bit) & 1);
      const row: number[] = [];
      for (let i = 0; i < bits.length; i += 8)
        row.push(Array.from({ length: 8 }, (_, k) => bits[i + k] ?? 0).reduce((sum, bit) => 2 * sum + bit, 0));
      const kind = y % 5;
      raw.push(kind, ...filtered(kind, row, before, Math.max(1, (channels * depth) >> 3)));
      before = row;
    }
  }
  const head = [...bytes32(width), ...bytes32(height), depth, colourType, 0, 0, isInterlaced === true ? 1 : 0];
  return pngFile(head, chunks, Uint8Array.from(raw));
}

function filtered(kind: number, row: readonly number[], before: readonly number[], step: number): number[] {
  return row.map((value, i) => {
    const [a, b, c] = [row[i - step] ?? 0, before[i] ?? 0, i < step ? 0 : (before[i - step] ?? 0)];
    const sum = a + b - c;
    const [pa, pb, pc] = [Math.abs(sum - a), Math.abs(sum - b), Math.abs(sum - c)];
    const guess = [0, a, b, (a + b) >> 1, pa <= pb && pa <= pc ? a : pb <= pc ? b : c][kind];
    return (value - guess) & 255;
  });
}

/** A grey PNG of 8 bits, its rows not filtered. @param shade  0 black to 1 white at a pixel. */
export function greyPng(
  width: number,
  height: number,
  shade: (x: number, y: number) => number,
  chunks: PngWish['chunks'] = [],
): Uint8Array {
  const raw = new Uint8Array(height * (width + 1));
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) raw[y * (width + 1) + 1 + x] = Math.round(255 * shade(x, y));
  return pngFile([...bytes32(width), ...bytes32(height), 8, 0, 0, 0, 0], chunks, raw);
}

function pngFile(head: readonly number[], chunks: PngWish['chunks'], raw: Uint8Array): Uint8Array {
  return Uint8Array.from([
    ...PNG_SIGNATURE,
    ...pngChunk('IHDR', head),
    ...(chunks ?? []).flatMap(([name, body]) => pngChunk(name, body)),
    ...pngChunk('IDAT', zlibSync(raw, { level: 1 })),
    ...pngChunk('IEND', []),
  ]);
}
