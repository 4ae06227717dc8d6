import type { ArtworkChoice } from '../../src/model/artwork-choice.ts';
import type { Artwork } from '../../src/model/artwork.ts';
import { readSvgDrawing } from '../../src/geom/svg-drawing.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../../src/pipeline/artwork.ts';
import { about, answerTo, expectFinite } from './expect-answer.ts';
import { seedFiles } from './seed-files.ts';
import { wildSvg } from './svg-grammar.ts';
import { bytesOf, textOf, type Answer, type Target } from './target.ts';

const HEAD =
  '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="80mm" viewBox="0 0 100 80">';

const SEEDS = [
  `${HEAD}<rect id="a" x="1" y="2" width="40" height="20" rx="5"/></svg>`,
  `${HEAD}<g id="p" transform="translate(10 20) rotate(30) scale(2 3)"><path d="M0 0h30v10q5 5 0 10t-5 0c1 2 3 4 5 6s1 1 2 2a5 3 20 1 0 -9 -3z" fill="none" stroke="#000" stroke-width="2"/><circle cx="5" cy="5" r="10%"/></g></svg>`,
  `${HEAD}<style>.c{fill:none;stroke:red}#x{display:inline}</style><defs><symbol id="s" viewBox="0 0 10 10"><ellipse rx="3" ry="2" class="c"/></symbol></defs><use href="#s" x="3" width="20" height="20"/><use xlink:href="#s"/></svg>`,
  `${HEAD}<polygon points="0,0 30,0 0,40"/><polyline points="1 1 2 2 3 1"/><line x1="0" y1="0" x2="5" y2="5"/><text>hello</text><image href="x"/></svg>`,
];

const WORDS = [
  ...[
    '<g>',
    '</g>',
    '<svg>',
    '<use href="#a"/>',
    '<path d="M0 0H9V9Z"/>',
    ' transform="scale(0)"',
    ' viewBox="0 0 0 0"',
    ' d="M',
    'a1 1 0 1 1 1e9 0',
    ' id="a"',
  ],
  ...[
    '<!--',
    '-->',
    '<![CDATA[',
    ']]>',
    '<!DOCTYPE svg>',
    '<!ENTITY x "y">',
    '&#x0;',
    '&#xD800;',
    '&lt;',
    '<?xml version="1.0"?>',
    ' style="fill:url(#a)"',
  ],
  ...[
    'A',
    'C',
    'Z',
    'm',
    'e9',
    ' width="1e9mm"',
    '%',
    'matrix(1 0 0 0 0 0)',
    'rotate(',
    'skewX(90)',
    ' fill-rule="evenodd"',
    ' stroke-width="1e9"',
  ],
];

/** What may be asked of artwork: one of a few, by the bytes, so that the same input is asked the same. */
const CHOICES: readonly ArtworkChoice[] = [
  USUAL_ARTWORK,
  { ...USUAL_ARTWORK, strokes: 'outline', deviationMm: 0.5 },
  { ...USUAL_ARTWORK, closeMm: 1, regulariseMm: 0.5, symmetricMm: 0.5 },
  { ...USUAL_ARTWORK, size: { by: 'width', mm: 300 }, deviationMm: 1 },
];

/** What is told of a shape begins with its name. */
const NAME_FIRST = /^/;

const sumOf = (bytes: Uint8Array): number => bytes.reduce((sum, byte) => (31 * sum + byte) >>> 0, 7);

async function lookAtArtwork(bytes: Uint8Array): Promise<Answer> {
  const choice = CHOICES[sumOf(bytes) % CHOICES.length];
  return await answerTo(
    artworkFromSvg(textOf(bytes), choice),
    bytes,
    (made) => {
      checkArtwork(made);
      return `${about(made.pieces.length)} ${about(made.pieces.flatMap(({ regions }) => regions).length)}`;
    },
    NAME_FIRST,
  );
}

export function checkArtwork({ pieces, widthMm, heightMm }: Artwork): void {
  expectFinite([widthMm, heightMm], 'the size');
  for (const { regions, lines, areaMm2, lengthMm } of pieces) {
    expectFinite([areaMm2, lengthMm], 'a piece');
    for (const { outline, holes, areaMm2: area } of regions) {
      expectFinite([area], 'an area');
      for (const one of [outline, ...holes]) {
        expectFinite(one.ring, 'an outline');
        expectFinite([one.lengthMm, one.areaMm2], 'an outline');
      }
    }
    for (const { points, lengthMm: length } of lines) expectFinite([...points, length], 'a line');
  }
}

const seeds = (): Uint8Array[] => [...SEEDS.map(bytesOf), ...seedFiles('.svg')];

export const ARTWORK_TARGETS: readonly Target[] = [
  { name: 'svg', ending: 'svg', seeds, words: WORDS, grammar: wildSvg, look: lookAtArtwork },
  {
    name: 'drawing',
    ending: 'svg',
    seeds,
    words: WORDS,
    grammar: wildSvg,
    look: async (bytes) =>
      await answerTo(
        readSvgDrawing(textOf(bytes), 0.1),
        bytes,
        ({ strokes }) => {
          for (const { points } of strokes)
            expectFinite(
              points.flatMap(({ x, y }) => [x, y]),
              'a stroke',
            );
          return `${about(strokes.length)}`;
        },
        NAME_FIRST,
      ),
  },
];
