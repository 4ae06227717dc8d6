import { zlibSync } from 'fflate';
import { bytes32, PNG_SIGNATURE, pngChunk } from '../support/png-of.ts';
import { below, oneOf, type Random } from './target.ts';

/** A side of a picture: mostly small, sometimes far more than there is. */
const side = (random: Random): number =>
  random() < 0.93
    ? 1 + below(random, 40)
    : oneOf(random, [0, 1000, 8191, 8192, 8193, 65535, 65536, 0x7fffffff, 0x80000000, 0xffffffff]);

const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

/** A PNG whose lengths and check sums are right: what is wild lies behind them, in sizes, kinds, palettes and rows. */
export function wildPng(random: Random): Uint8Array {
  const [width, height] = [side(random), side(random)];
  const colourType = random() < 0.95 ? oneOf(random, [0, 2, 3, 4, 6]) : below(random, 8);
  const depth =
    random() < 0.95
      ? oneOf(random, colourType === 0 || colourType === 3 ? [1, 2, 4, 8] : [8, 16])
      : oneOf(random, [0, 1, 3, 16, 32, 255]);
  const interlace = random() < 0.97 ? below(random, 2) : 255;
  const rowBytes = Math.ceil((width * (CHANNELS[colourType] ?? 1) * depth) / 8) + 1;
  const wanted = Math.min(20_000, rowBytes * height * (interlace === 1 ? 2 : 1));
  const raw = new Uint8Array(random() < 0.9 ? wanted : below(random, 2 * wanted + 1));
  const isEven = random() < 0.5;
  for (let i = 0; i < raw.length; i += 1) raw[i] = isEven ? 0 : below(random, 256);
  if (!isEven && random() < 0.9) for (let at = 0; at < raw.length; at += rowBytes) raw[at] = below(random, 5);
  const packed = zlibSync(raw, { level: 1 });
  if (random() < 0.1) packed[below(random, packed.length)] ^= 1 << below(random, 8);
  const parts: number[][] = [
    pngChunk('IHDR', [
      ...bytes32(width),
      ...bytes32(height),
      depth,
      colourType,
      random() < 0.99 ? 0 : 1,
      random() < 0.99 ? 0 : 1,
      interlace,
    ]),
  ];
  if (colourType === 3 || random() < 0.05)
    parts.push(
      pngChunk(
        'PLTE',
        Array.from({ length: below(random, random() < 0.5 ? 800 : 20) }, () => below(random, 256)),
      ),
    );
  if (random() < 0.3)
    parts.push(
      pngChunk(
        'tRNS',
        Array.from({ length: below(random, 10) }, () => below(random, 256)),
      ),
    );
  if (random() < 0.3)
    parts.push(
      pngChunk('pHYs', [
        ...bytes32(oneOf(random, [0, 1, 2835, 0xffffffff])),
        ...bytes32(oneOf(random, [0, 2835, 0xffffffff])),
        below(random, 3),
      ]),
    );
  if (random() < 0.1)
    parts.push(
      pngChunk(oneOf(random, ['tEXt', 'gAMA', 'ABCD', 'acTL', 'IHDR', '\u0000\u0001\u0002\u0003', 'eXIf']), [1, 2, 3]),
    );
  const cut = below(random, packed.length + 1);
  for (const body of random() < 0.8 ? [packed] : [packed.subarray(0, cut), packed.subarray(cut)])
    parts.push(pngChunk('IDAT', body));
  if (random() < 0.05) parts.sort(() => random() - 0.5);
  if (random() < 0.97) parts.push(pngChunk('IEND', []));
  return Uint8Array.from([...PNG_SIGNATURE, ...parts.flat()]);
}

const word = (value: number): number[] => [(value >> 8) & 255, value & 255];
const segment = (marker: number, body: readonly number[]): number[] => [
  0xff,
  marker,
  ...word(body.length + 2),
  ...body,
];

/** A table of codes (ITU-T T.81, B.2.4.2), whole or not. */
function codes(random: Random, kind: number): number[] {
  const counts = Array.from({ length: 16 }, (_, i) =>
    i < 8 ? below(random, 1 + Math.min(4, i)) : random() < 0.1 ? below(random, 5) : 0,
  );
  const values = counts.flatMap((count) =>
    Array.from({ length: count }, () => (kind < 16 ? below(random, 12) : below(random, 256))),
  );
  return [kind, ...counts, ...values];
}

/** A JPEG whose segments have the lengths they say: wild are sizes, samplings, tables, orders and what is packed. */
export function wildJpeg(random: Random): Uint8Array {
  const frame = oneOf(random, [0xc0, 0xc0, 0xc1, 0xc2, 0xc2, 0xc3, 0xc9]);
  const count = random() < 0.9 ? oneOf(random, [1, 3]) : below(random, 6);
  const size = (): number =>
    Math.min(0xffff, random() < 0.95 ? 1 + below(random, 40) : oneOf(random, [0, 1000, 8192, 65535]));
  const components = Array.from({ length: count }, (_, i) => [
    random() < 0.95 ? i + 1 : below(random, 256),
    random() < 0.9 ? oneOf(random, [0x11, 0x21, 0x22]) : below(random, 256),
    random() < 0.95 ? 0 : below(random, 5),
  ]);
  const parts: number[][] = [];
  if (random() < 0.5)
    parts.push(
      segment(0xe0, [
        0x4a,
        0x46,
        0x49,
        0x46,
        0,
        1,
        1,
        below(random, 4),
        ...word(below(random, 300)),
        ...word(below(random, 300)),
        0,
        0,
      ]),
    );
  if (random() < 0.2)
    parts.push(
      segment(0xe1, [
        0x45,
        0x78,
        0x69,
        0x66,
        0,
        0,
        ...Array.from({ length: below(random, 60) }, () => (random() < 0.5 ? 0 : below(random, 256))),
      ]),
    );
  if (random() < 0.2) parts.push(segment(0xee, [0x41, 0x64, 0x6f, 0x62, 0x65, 0, 100, 0, 0, 0, 0, below(random, 4)]));
  parts.push(segment(0xdb, [random() < 0.95 ? 0 : 0x10, ...Array.from({ length: 64 }, () => 1 + below(random, 40))]));
  parts.push(segment(frame, [random() < 0.97 ? 8 : 12, ...word(size()), ...word(size()), count, ...components.flat()]));
  parts.push(segment(0xc4, [...codes(random, 0), ...codes(random, 0x10)]));
  if (random() < 0.1) parts.push(segment(0xdd, word(oneOf(random, [0, 1, 2, 0xffff]))));
  if (random() < 0.05) parts.sort(() => random() - 0.5);
  const scans = frame === 0xc2 ? 1 + below(random, 4) : 1;
  for (let i = 0; i < scans; i += 1) {
    const own = random() < 0.9 ? components : components.slice(0, 1);
    const spectral =
      frame === 0xc2 ? [below(random, 64), below(random, 64), oneOf(random, [0, 1, 0x10, 0x21])] : [0, 63, 0];
    parts.push(
      segment(0xda, [
        own.length,
        ...own.flatMap(([id]) => [id, random() < 0.95 ? 0 : below(random, 256)]),
        ...spectral,
      ]),
    );
    parts.push(Array.from({ length: below(random, 400) }, () => below(random, 255)));
  }
  if (random() < 0.9) parts.push([0xff, 0xd9]);
  return Uint8Array.from([0xff, 0xd8, ...parts.flat()]);
}
