import type { Bitmap } from '../../src/model/bitmap.ts';
import { readPicture } from '../../src/steps/artwork/read-picture.ts';
import { ARITHMETIC_RAMP, PROGRESSIVE_RAMP, RESTARTED_RAMP } from '../steps/artwork/jpeg-files.ts';
import { pngOf } from '../support/png-of.ts';
import { about, answerTo } from './expect-answer.ts';
import { wildJpeg, wildPng } from './picture-grammar.ts';
import type { Answer, Target } from './target.ts';

async function look(bytes: Uint8Array): Promise<Answer> {
  const light = bytes.length % 2 === 0 ? 'drawn' : 'photo';
  return await answerTo(readPicture(bytes, light), bytes, (picture) => {
    checkPicture(picture);
    return `${about(picture.widthPx)} ${about(picture.heightPx)} ${picture.density?.saidBy ?? ''}`;
  });
}

function checkPicture({ widthPx, heightPx, grey, density }: Bitmap): void {
  if (!(Number.isInteger(widthPx) && Number.isInteger(heightPx) && widthPx >= 1 && heightPx >= 1))
    throw new Error(`${widthPx} x ${heightPx} pixels`);
  if (grey.length !== widthPx * heightPx) throw new Error(`${grey.length} pixels for ${widthPx} x ${heightPx}`);
  for (const value of grey) if (!(value >= 0 && value <= 1)) throw new Error(`a grey of ${value}`);
  if (density !== null && !(density.x > 0 && density.y > 0 && Number.isFinite(density.x + density.y)))
    throw new Error(`a density of ${density.x} x ${density.y}`);
}

const ramp = (x: number, y: number, channel: number): number => (40 * x + 15 * y + 70 * channel) & 255;

function pngSeeds(): Uint8Array[] {
  const size = { width: 9, height: 7 };
  return [
    pngOf({ ...size, colourType: 0, depth: 8, sample: ramp }),
    pngOf({ ...size, colourType: 0, depth: 1, sample: (x, y) => (x + y) & 1, isInterlaced: true }),
    pngOf({
      ...size,
      colourType: 2,
      depth: 16,
      sample: (x, y, c) => 257 * ramp(x, y, c),
      chunks: [['tRNS', [0, 1, 0, 2, 0, 3]]],
    }),
    pngOf({
      ...size,
      colourType: 3,
      depth: 2,
      sample: (x, y) => (x + y) & 3,
      chunks: [
        ['PLTE', [0, 0, 0, 255, 0, 0, 0, 255, 0, 255, 255, 255]],
        ['tRNS', [255, 0]],
      ],
    }),
    pngOf({
      ...size,
      colourType: 6,
      depth: 8,
      sample: ramp,
      isInterlaced: true,
      chunks: [['pHYs', [0, 0, 11, 19, 0, 0, 11, 19, 1]]],
    }),
  ];
}

const jpegSeeds = (): Uint8Array[] =>
  [PROGRESSIVE_RAMP, RESTARTED_RAMP, ARITHMETIC_RAMP].map((text) =>
    Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0)),
  );

export const PICTURE_TARGETS: readonly Target[] = [
  {
    name: 'png',
    ending: 'png',
    seeds: pngSeeds,
    words: ['IHDR', 'IDAT', 'IEND', 'PLTE', 'tRNS', 'pHYs', 'acTL'],
    grammar: wildPng,
    look,
  },
  {
    name: 'jpeg',
    ending: 'jpg',
    seeds: jpegSeeds,
    words: ['JFIF\0', 'Exif\0\0', 'Adobe', 'MM\0*', 'II*\0'],
    grammar: wildJpeg,
    look,
  },
];
