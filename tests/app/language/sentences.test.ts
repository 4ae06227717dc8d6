import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { toldText } from '../../../src/app/finding-text.ts';
import { SENTENCES, sayInGerman } from '../../../src/base/german/sentences/say.ts';
import { WORK_STEPS } from '../../../src/base/german/work-steps.ts';
import { speak } from '../../../src/app/language/language.ts';
import { plainTold } from '../../../src/base/plain-told.ts';
import { findTold, type Told } from '../../house/find-told.ts';
import { projectFiles, readProjectFile } from '../../house/project-files.ts';

const CORE = ['base', 'geom', 'mesh', 'model', 'steps', 'project', 'pipeline', 'worker'];

/** Codes none of whose sentences is said in German yet. A new sentence of the core comes with its German, so this only ever falls. */
const MOST_CODES_LEFT = 0;
/** Wordings of the sources that fit no saying: one and several of a thing mixed, as is never said. */
const MOST_WORDINGS_LEFT = 14;

/** Sentences that are put together of parts, as samples and tests give them. */
const PUT_TOGETHER: readonly string[] = [
  'Seam C is so sharp that its edges lean 62.5° from square, and a blade or saw table leans at most 45°: spread the fold over two seams with a strip between them 11.6 mm wide on the face and 3.1 mm on the back, which leaves bevels of 31.3°; or cut both edges at 45°, glue them where they touch and fill the gap, 4.2 mm wide at the face; or cover that gap with a thin trim strip 16.2 mm wide.',
  'Seam C is so sharp that its edges lean 62.5° from square, and a blade or saw table leans at most 45°: spread the fold over three seams with 2 strips between them, each 11.6 mm wide on the face and 3.1 mm on the back, which leaves bevels of 31.3°; or cut both edges at 45°, glue them where they touch and fill the gap, 4.2 mm wide at the back; or cover that gap with a thin trim strip 16.2 mm wide.',
  'A corner of Crown is cut back 2.5 mm, the most of 3 such corners, because a piece it shares no seam with would be in its way: cut it as drawn, and fill what stays open there, at most 1.5 mm wide.',
  'At a corner of Crown two cut lines would only meet far off and are joined by a step of 1.2 mm, the largest of 3 such corners: cut it as drawn and fill what stays open, or part the piece there.',
  'Put together, the corners of Brow and Cheek run up to 3.5 mm into each other, the worst of 4 such corners: they share no seam there, so trim one against the other when the pieces between them are in place.',
  'Put together, the edges of seam A run up to 1.2 mm into each other on the back, because the sculpt is smaller there than the foam is thick: along 12.5 mm the bevels leave nothing of an edge. Use thinner foam, or end the pieces before that place and carve it of solid foam.',
  'Put together, the edges of seam A stand up to 1.2 mm apart on the face, because a facet beside it turns by 31° on its way into the foam, where planes that meet at a corner of it find no common point: use thinner foam, smooth the sculpt there, or sand the place until it closes.',
  'At seam B foam of 5 mm meets foam of 10 mm, and its fold is too small to share between them: there is a step of 2.5 mm on the face and 2.5 mm on the back. Sand it off or leave it, or make it a rebate.',
  'Brow has a fold with a groove wider than the panel beside it: it needs 5.0 mm to the edge and has 3.0 mm, so use thinner foam there or part the piece at the fold.',
  'Seams A, B and C meet at a corner, and others at 2 more, some as rebates and some bevelled, which leaves a hole up to 10 mm wide on the back: make all of them rebates, or none, or fill it.',
  'Brow is larger than a sheet of EVA 10 mm: part it along the straight line of 320 mm that is offered, so that both parts fit, or take a larger sheet.',
  'The largest opening has a girth of 520 mm and is 180 mm wide, too little for what must pass: let it come apart along seams A, B, or widen the opening.',
  'Tape 1: the inside comes to 520 mm (20 1/2 in), 30 mm less than the body’s 540 mm and 10 mm of ease: make the part larger, take thinner foam, or let it open.',
  'The edge between corners 3 and 9 of the file (counted from 0) is to hold its length and be straight, but the sculpt has no such edge: forget the wish, or say it of the edge you mean.',
  'Seam A through corners 3 and 9 of the file (counted from 0) is to hold its length, but seam lengths have no price, so nothing holds it: give “seam lengths against stretch” more than 0, or forget the wish.',
  '12 edges of seams have no place within 4 mm on the new version of the sculpt: mark the seams anew where they end.',
  'The back of 10 mm foam folds over itself at 3 places where the sculpt is tighter than the foam is thick: use at most 6 mm there, or smooth the sculpt.',
  'Foam 10 mm thick runs into foam of another side of the sculpt at 1 place: there is no room for foam there, or move the two sides of the sculpt apart.',
  'At 4 corners more than three panels meet that no single inner point suits: the templates are trimmed by up to 1.2 mm there, so cut small corners as drawn.',
  '3 pairs of triangles run through each other or lie on each other: foam cannot, so part the surfaces in your modelling program.',
  '2 faces of the sculpt are not flat and had to be cut into triangles; cut the other way it would be 1.2 % larger. Cut them in your modelling program if the fold matters.',
  'helm.foamloft.json cannot be used: at parts.0.scale there is a string where a number belongs.',
  'The sculpt is 2.2 m long, about as tall as a door: this looks like the wrong unit, so check its size.',
  'An overlap of 80 mm leaves each page too little of its own: choose 0 to 40 mm on A4 with this margin.',
  'Printed paper is out of date for 1 Brow, 2 Cheek and 3 more: save the pages of what changed, and throw the old ones away.',
  '4 spikes are too sharp for foam of this thickness and were blunted on the far side: part the foam there, or round the sculpt.',
  'Seams A, B and 2 more of a staggered sheet stay over the seam of the sheet that is seen: a sheet does not bend over the crease it runs along. Glue there with care.',
  'The sculpt was made simpler for paper, from 9000 to 400 triangles: no place of it lies farther than 1.2 mm from the sculpt (new from old 0.3 to 1.2 mm, old from new 0.2 to 1.1 mm).',
  'Brow bends to a radius of 12 mm: its outside stretches by 25 % and its inside is squashed by 25 %, over the 10 % worth a word by shop rule: use foam of 2.4 mm or less, glue up 2 layers of 3 mm on the bend, or warm it and hold it round a form until it is cold.',
  'Brow bends to a radius of 12 mm: its outside stretches by 25 % and its inside is squashed by 25 %, over the 10 % this foam takes by shop rule: use foam of 2.4 mm or less, glue up 2 layers of 3 mm on the bend, cut kerfs 3 mm wide and 4.5 mm deep into its inside every 8.0 mm (5 for a quarter turn), or warm it and hold it round a form until it is cold.',
  'Seam B comes too late in the order of gluing you chose; no hand reaches it from within once the seam of Brow and Cheek is shut: glue it before that. Until then it is told earlier than you put it.',
  'The shape cone is told that its size is of the inside, and of=outside: leave one of them out.',
  'A path cannot be read at character 12: a number of use should stand there, not “x”. Save it again as plain SVG.',
  'Bend 2 says that 300 mm of a tube of 75 mm were covered, but it is only 235.6 mm round: take a thicker tube or a shorter strip.',
  'The finished PDF was read back and is not what it should be: piece 3 is on none of its pages. No PDF was made. This is a fault of the program: keep the report of it, and another paper or another layout may work meanwhile.',
  'The outline of the pane 80 x 50 needs 3 to 2000 corners: change it.',
  'Brow must be pulled by 12.0 % in places (at most 15.0 %), over the 8.0 % this foam takes by shop rule: part it once more, or end a seam in it as a dart. At the middle of a long side: pull it in every direction. No way of laying it flat keeps all of it under 8.0 %, for it holds 45° of dome within 60 mm: only another seam through that place, a dart there, or warmth helps.',
];

const page = { lang: '', dir: '' } as HTMLElement;
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

const told: readonly Told[] = CORE.flatMap((folder) => projectFiles(`src/${folder}/`))
  .filter((path) => path.endsWith('.ts'))
  .flatMap((path) => findTold(path, readProjectFile(path)));
/** As sayings stand in the catalogue, their holes open, and what was put together of them. */
const sayings = [...Object.values(SENTENCES).flat(), ...WORK_STEPS].map(([english]) => plainTold(english));
const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const filled = sayings.map(
  (english) =>
    new RegExp(
      `^${english
        .split(/\{\w\}/)
        .map(literal)
        .join('.+?')}$`,
    ),
);

/** Whether a wording with 7 in its holes, which stand for one word or many, fits a saying or what was put together. */
function fitsWhole(text: string): boolean {
  const open = new RegExp(`^${text.split('7').map(literal).join('.*')}$`);
  return filled.some((saying) => saying.test(text)) || [...sayings, ...PUT_TOGETHER].some((known) => open.test(known));
}

const fits = (text: string): boolean =>
  isSaid(text) || fitsWhole(text) || text.split(/(?<=[.!?]) (?=\p{Lu})/u).every(fitsWhole);
const isSaid = (text: string): boolean => sayInGerman(plainTold(text)) !== null;

describe('sentences of the core in German', () => {
  it('leave no more codes in English than are known', () => {
    const codes = new Set(told.map(({ code }) => code));
    expect(codes.size).toBeGreaterThan(350);
    const said = new Set(told.filter(({ texts }) => texts.some(isSaid)).map(({ code }) => code));
    const left = [...codes].filter((code) => !said.has(code) && !(code in SENTENCES)).sort();
    expect(left.length, `codes without German:\n${left.join('\n')}`).toBeLessThanOrEqual(MOST_CODES_LEFT);
  });

  it('follow the wording of the sources', () => {
    const texts = [...new Set(told.flatMap((one) => one.texts))];
    expect(texts.length).toBeGreaterThan(500);
    const left = texts.filter((text) => !fits(plainTold(text))).sort();
    expect(left.length, `not said in German:\n${left.join('\n')}`).toBeLessThanOrEqual(MOST_WORDINGS_LEFT);
  });

  it('keep the holes of the English', () => {
    const holes = (text: string): string[] => [...new Set(text.match(/\{\w\}/g) ?? [])].sort();
    const unlike = Object.values(SENTENCES)
      .flat()
      .filter(([english, german]) => holes(english).join() !== holes(german).join());
    expect(unlike).toEqual([]);
  });

  it('are put together of words that are known', () => {
    expect(PUT_TOGETHER.filter((text) => !isSaid(text))).toEqual([]);
  });

  it('say all that is told of broken files', () => {
    const golden = readFileSync(new URL('../../golden/broken-inputs.txt', import.meta.url), 'utf8');
    const texts = [...golden.matchAll(/^ {2}(?:\w+ )?[a-z]+\/[a-z-]+\n {2}(.+)$/gm)].map(([, text]) => text);
    expect(texts.length).toBeGreaterThan(60);
    expect(texts.filter((text) => !isSaid(text))).toEqual([]);
  });
});

describe('one sentence', () => {
  beforeEach(() => speak('de', page));
  afterEach(() => speak('en', page));

  it.each([
    [
      'Put together, the edges of seam B stand up to 1.2 mm apart on the back: fill the place or use thinner foam, or move the seam where the surface bends less.',
      'mm',
      'Zusammengesetzt stehen die Kanten von Naht B auf der Rückseite bis zu 1,2 mm auseinander: die Stelle füllen, dünneren Schaumstoff nehmen oder die Naht dorthin legen, wo sich die Oberfläche weniger biegt.',
    ],
    [
      'Helm: 4 Brow must be pulled by 3.8 % in places (at most 4.1 %), over the 3.0 % worth a word by shop rule: it will go with some warmth. Near the top: pull it lengthwise.',
      'mm',
      'Helm: 4 Brow muss stellenweise um 3,8 % gedehnt werden (höchstens 4,1 %), mehr als die 3,0 %, ab denen es zu sagen ist (Werkstattregel): mit etwas Wärme geht es. Nahe der oberen Kante: der Länge nach dehnen.',
    ],
    [
      '4 Brow is nowhere wider than 12.7 mm, under 3 thicknesses of its foam: hard to cut clean and to glue, so join it to a neighbour if you can.',
      'in',
      '4 Brow ist nirgends breiter als 1/2 in, weniger als 3 Dicken seines Schaumstoffs: schwer sauber zu schneiden und zu kleben, wenn möglich mit einem Nachbarn verbinden.',
    ],
    [
      'The file is empty: save or copy it again. Nobody knows this one.',
      'mm',
      'The file is empty: save or copy it again. Nobody knows this one.',
    ],
    [
      'The file looks like a song, not like OBJ or STL: export the sculpt as OBJ or STL.',
      'mm',
      'The file looks like a song, not like OBJ or STL: export the sculpt as OBJ or STL.',
    ],
  ] as const)('%s', (text, unit, german) => {
    expect(plain(toldText(text, unit))).toBe(german);
  });
});
