import { zlibSync } from 'fflate';
import { decode } from 'fast-png';
import { encode } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { lightOf } from '../../../src/steps/artwork/picture-grey.ts';
import { isPicture, readPicture } from '../../../src/steps/artwork/read-picture.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { bytes32, greyPng, pngChunk, pngOf, PNG_SIGNATURE, type PngWish } from '../../support/png-of.ts';
import { ARITHMETIC_RAMP, PROGRESSIVE_RAMP, RESTARTED_RAMP } from './jpeg-files.ts';

const fromBase64 = (text: string): Uint8Array => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
const fault = (bytes: Uint8Array): string => {
  const read = readPicture(bytes, 'drawn');
  return read.ok ? 'read' : `${read.problem.code}: ${read.problem.text}`;
};

/** Any value that fits, unlike its neighbours. */
const some = (x: number, y: number, c: number, depth: number): number =>
  (37 * x + 91 * y + 53 * c + x * y) % 2 ** depth;

describe('PNG', () => {
  const kinds: readonly (readonly [PngWish['colourType'], number])[] = [
    ...[1, 2, 4, 8, 16].map((depth) => [0, depth] as const),
    ...[1, 2, 4, 8].map((depth) => [3, depth] as const),
    ...([2, 4, 6] as const).flatMap((type) => [[type, 8] as const, [type, 16] as const]),
  ];
  it.each(kinds)('reads colours of type %i with %i bits, interlaced or not', (colourType, depth) => {
    const most = 2 ** depth - 1;
    const [width, height] = [11, 9];
    const sample = (x: number, y: number, c: number) => some(x, y, c, depth);
    const palette = Array.from({ length: 3 * 2 ** Math.min(8, depth) }, (_, i) => (i * 29) % 256);
    for (const isInterlaced of [false, true]) {
      const bytes = pngOf({
        width,
        height,
        colourType,
        depth,
        sample,
        isInterlaced,
        chunks: colourType === 3 ? [['PLTE', palette]] : [],
      });
      const { grey } = expectOk(readPicture(bytes, 'drawn'));
      for (let y = 0; y < height; y += 1)
        for (let x = 0; x < width; x += 1) {
          const at = (c: number): number => sample(x, y, c) / most;
          const luma = (r: number, g: number, b: number): number => 0.299 * r + 0.587 * g + 0.114 * b;
          const index = 3 * sample(x, y, 0);
          const [shade, alpha] = {
            0: [at(0), 1],
            2: [luma(at(0), at(1), at(2)), 1],
            3: [luma(palette[index] / 255, palette[index + 1] / 255, palette[index + 2] / 255), 1],
            4: [at(0), at(1)],
            6: [luma(at(0), at(1), at(2)), at(3)],
          }[colourType];
          expect(grey[y * width + x]).toBeCloseTo(shade * alpha + 1 - alpha, 6);
        }
      // The maker of these files is right too: an independent reader agrees where it reads the kind.
      if (depth >= 8 && colourType === 0) expect(decode(bytes).data[width + 3]).toBe(sample(3, 1, 0));
    }
  });

  it('takes one colour, or entries of the palette, as see-through', () => {
    const wish = { width: 2, height: 1, depth: 8, sample: (x: number) => x };
    const named = pngOf({ ...wish, colourType: 0, chunks: [['tRNS', [0, 1]]] });
    expect([...expectOk(readPicture(named, 'drawn')).grey]).toEqual([0, 1]);
    const listed = pngOf({
      ...wish,
      colourType: 3,
      chunks: [
        ['PLTE', [0, 0, 0, 0, 0, 0]],
        ['tRNS', [0]],
      ],
    });
    expect([...expectOk(readPicture(listed, 'drawn')).grey]).toEqual([1, 0]);
  });

  it('takes grey from light where it is a photograph', () => {
    const { grey } = expectOk(
      readPicture(
        greyPng(1, 1, () => 188 / 255),
        'photo',
      ),
    );
    expect(grey[0]).toBeCloseTo(lightOf(188 / 255), 6);
    // Half of the light is 188 of 255 in sRGB: the published value, from memory.
    expect(grey[0]).toBeCloseTo(0.5, 2);
  });

  it('tells its density', () => {
    const bytes = greyPng(1, 1, () => 0, [['pHYs', [...bytes32(10_000), ...bytes32(8000), 1]]]);
    expect(expectOk(readPicture(bytes, 'drawn')).density).toEqual({ x: 10, y: 8, saidBy: 'pHYs' });
  });

  it('refuses what is broken, too large or animated', () => {
    const whole = greyPng(20, 20, (x) => x / 20);
    for (const size of [8, 20, 40, whole.length - 1])
      expect(fault(whole.subarray(0, size))).toContain('picture-cut-off');
    const changed = Uint8Array.from(whole);
    changed[whole.length - 30] ^= 1;
    expect(fault(changed)).toContain('check sum of IDAT');
    expect(fault(greyPng(1, 1, () => 0, [['acTL', [0, 0, 0, 1, 0, 0, 0, 0]]]))).toContain('an animated picture');
    const file = (head: readonly number[], data: Uint8Array) =>
      Uint8Array.from([
        ...PNG_SIGNATURE,
        ...pngChunk('IHDR', head),
        ...pngChunk('IDAT', data),
        ...pngChunk('IEND', []),
      ]);
    const head = (side: number, ...rest: number[]) => [...bytes32(side), ...bytes32(side), ...rest];
    const nothing = zlibSync(new Uint8Array(0));
    expect(fault(file(head(100_000, 8, 0, 0, 0, 0), nothing))).toContain('100000 x 100000 pixels; 67 million');
    expect(fault(file(head(60_000, 8, 0, 0, 0, 0), nothing))).toContain('too-large');
    expect(fault(file(head(0, 8, 0, 0, 0, 0), nothing))).toContain('no size');
    expect(fault(file(head(4, 3, 0, 0, 0, 0), nothing))).toContain('no known kind');
    expect(fault(file(head(4, 8, 3, 0, 0, 0), nothing))).toContain('no palette');
    expect(fault(file(head(4, 8, 0, 0, 0, 0), nothing))).toContain('cut-off');
    expect(fault(file(head(4, 8, 0, 0, 0, 0), Uint8Array.of(1, 2, 3, 4, 5, 6, 7)))).toContain('unpacked');
    expect(fault(file(head(4, 8, 0, 0, 0, 0), zlibSync(new Uint8Array(20).fill(9))))).toContain('no known way');
    // Ten million bytes behind a picture of sixteen pixels are never made room for.
    expect(fault(file(head(4, 8, 0, 0, 0, 0), zlibSync(new Uint8Array(1e7))))).toBe('read');
  });
});

describe('JPEG', () => {
  /** The ramp of the stored files in grey. */
  const ramp = (x: number, y: number): number => (0.299 * 10 * x + 0.587 * 15 * y + 0.114 * 128) / 255;

  it.each([
    ['progressive', PROGRESSIVE_RAMP],
    ['with restarts', RESTARTED_RAMP],
  ])('reads one that is %s', (_, text) => {
    const { widthPx, heightPx, grey, density } = expectOk(readPicture(fromBase64(text), 'drawn'));
    expect([widthPx, heightPx, density]).toEqual([24, 16, null]);
    for (let y = 0; y < 16; y += 1)
      for (let x = 0; x < 24; x += 1) expect(Math.abs(grey[24 * y + x] - ramp(x, y))).toBeLessThan(0.03);
  });

  /** A baseline file of 16 x 8 pixels, a dark spot at its upper left, with parts put behind its first marker. */
  function baseline(...parts: readonly (readonly number[])[]): Uint8Array {
    const data = new Uint8Array(16 * 8 * 4).fill(255);
    for (const [x, y] of [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ])
      data.fill(0, 4 * (16 * y + x), 4 * (16 * y + x) + 3);
    const file = encode({ width: 16, height: 8, data }, 95).data;
    const made = parts.flatMap((part) => [
      0xff,
      part[0],
      (part.length + 1) >> 8,
      (part.length + 1) & 255,
      ...part.slice(1),
    ]);
    return Uint8Array.from([...file.subarray(0, 2), ...made, ...file.subarray(2)]);
  }
  const exif = (orientation: number): number[] => {
    const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
    return [0xe1, ...Array.from('Exif', (letter) => letter.charCodeAt(0)), 0, 0, ...tiff];
  };

  it.each([
    [1, 'upper left'],
    [2, 'upper right'],
    [3, 'lower right'],
    [4, 'lower left'],
    [5, 'upper left'],
    [6, 'upper right'],
    [7, 'lower right'],
    [8, 'lower left'],
  ])('turns a picture of orientation %i upright: its first pixel is at the %s', (orientation, corner) => {
    const { widthPx, heightPx, grey } = expectOk(readPicture(baseline(exif(orientation)), 'drawn'));
    expect([widthPx, heightPx]).toEqual(orientation < 5 ? [16, 8] : [8, 16]);
    const corners = {
      'upper left': 0,
      'upper right': widthPx - 1,
      'lower left': widthPx * (heightPx - 1),
      'lower right': widthPx * heightPx - 1,
    };
    for (const [name, at] of Object.entries(corners)) expect(grey[at] < 0.5).toBe(name === corner);
    // The dark spot is 2 x 2 in the stored picture, so its second pixel along either side is dark as well.
    const second = corners[corner as keyof typeof corners] + (corner.endsWith('left') ? 1 : -1);
    expect(grey[second]).toBeLessThan(0.5);
  });

  it('refuses what is cut off, broken or of another kind', () => {
    const whole = baseline();
    for (const size of [3, 30, 300, whole.length - 1])
      expect(fault(whole.subarray(0, size))).toContain('picture-cut-off');
    expect(fault(fromBase64(ARITHMETIC_RAMP))).toContain('arithmetic code');
    const large = Uint8Array.from(whole);
    const frame = large.findIndex((value, i) => value === 0xff && large[i + 1] === 0xc0);
    large.set([0xff, 0xff, 0xff, 0xff], frame + 5);
    expect(fault(large)).toContain('65535 x 65535 pixels');
    const tables = Uint8Array.from(whole);
    tables.fill(0xff, frame + 10, frame + 14);
    expect(fault(tables)).toMatch(/picture-(broken|cut-off|kind)/);
  });

  it('ends in a problem or a picture whatever byte is changed', () => {
    const whole = baseline();
    for (let i = 2; i < whole.length; i += 7) {
      const changed = Uint8Array.from(whole);
      changed[i] ^= 0x5a;
      const read = readPicture(changed, 'drawn');
      if (read.ok) expect(read.value.grey.every(Number.isFinite)).toBe(true);
    }
  });
});

it('names other kinds of pictures', () => {
  const letters = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  expect(fault(letters('GIF89a...'))).toContain('This is a GIF file, which is not read: save it as PNG');
  expect(fault(letters('RIFF....WEBPVP8 '))).toContain('a WebP file');
  expect(fault(letters('....ftypheic'))).toContain('a HEIC or AVIF file');
  expect(isPicture(letters('<svg xmlns="'))).toBe(false);
  expect(isPicture(letters('GIF89a'))).toBe(true);
});
