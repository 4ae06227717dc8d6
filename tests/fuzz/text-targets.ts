import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { withParts } from '../../src/cli/parts-option.ts';
import { parseLength } from '../../src/base/format-length.ts';
import { partsThousands, readFigure } from '../../src/base/read-figure.ts';
import { readTransform } from '../../src/geom/affine.ts';
import { readSvgLength } from '../../src/geom/svg-size.ts';
import { emptyProject } from '../../src/project/new-project.ts';
import { expectFinite, problemAnswer } from './expect-answer.ts';
import { wildJson } from './json-grammar.ts';
import { JSON_WORDS, numbersIn } from './json-targets.ts';
import { HOSTILE_FIGURES, HOSTILE_NAMES } from './hostile-values.ts';
import { seedFiles } from './seed-files.ts';
import { below, bytesOf, oneOf, textOf, type Answer, type Random, type Target } from './target.ts';

const FIGURES = [
  '322',
  '32,2 cm',
  '12 11/16 in',
  '4½',
  '4-1/2"',
  '5\' 4 1/2"',
  '3/8',
  '12 %',
  '−2',
  '1.234',
  '1,234.5',
  '2 m',
  'translate(1,2) rotate(30)',
];

/** Figures and lengths as they are typed. */
function lookAtFigure(bytes: Uint8Array): Promise<Answer> {
  const text = textOf(bytes);
  const figure = readFigure(text);
  const [mm, inch] = [parseLength(text, 'mm'), parseLength(text, 'in')];
  for (const length of [mm, inch])
    if (length !== null && !(length > 0 && length < Infinity)) throw new Error(`a length of ${length}`);
  const user = readSvgLength(text);
  if (user !== null) expectFinite([user.value, user.mmPerUnit ?? 1], 'a length of a drawing');
  const transform = readTransform(text);
  if (Math.abs(figure) === Infinity) throw new Error('a figure without end');
  const kind = [
    partsThousands(text),
    Number.isNaN(figure),
    mm === null,
    inch === null,
    user === null,
    transform === null,
  ].join(' ');
  return Promise.resolve({ isOk: !Number.isNaN(figure) || mm !== null, kind });
}

/** A refusal of the command line is an answer, all else that is thrown is a fault. */
async function refusedOr(bytes: Uint8Array, go: () => Promise<string> | string): Promise<Answer> {
  try {
    return { isOk: true, kind: await go() };
  } catch (error) {
    if (!(error instanceof Refused) && !(error instanceof WrongUsage)) throw error;
    return problemAnswer({ code: error.constructor.name, text: error.message, where: {} }, bytes, /^/);
  }
}

const LINES = [
  'make model.obj --out out --unit mm --thickness 6 --paper A4',
  'make model.obj\n--out\nout\n--size\nlongest=30 cm\n--wall\n10 mm,6 mm\n--neutral\n0.5\n--shrink\n1,2\n--stagger\n5\n--simplify\n500',
  'inspect model.obj --json',
  'nest task.json --seconds 5 --seed 3',
  'shape torus_skin --list',
  'stack a.obj --out b --thickness 10',
  'artwork a.svg --out b --width 200 --close 0.1',
  'strip --out a --length 300',
  'core --list',
  'seams a.obj --out b.json',
  'compare a b',
];

const OPTION_WORDS = [
  ...[
    '--out',
    '--unit',
    '--size',
    '--thickness',
    '--wall',
    '--paper',
    '--margin',
    '--overlap',
    '--seed',
    '--moves',
    '--seconds',
    '--area',
    '--name',
    '--date',
    '--foam',
    '--neutral',
    '--off',
    '--up',
  ],
  ...[
    '--printer',
    '--rules',
    '--spring',
    '--raise',
    '--paint',
    '--clay',
    '--stock',
    '--machine',
    '--mock-up',
    '--piece-foam',
    '--body',
    '--shop',
    '--scale',
    '--kerf',
    '--json',
    '--parts',
    '--language',
    '--new-version',
  ],
];

function wildLine(random: Random): Uint8Array {
  const words = [
    oneOf(random, ['make', 'inspect', 'nest', 'shape', 'stack', 'artwork', 'strip', 'core', 'seams', 'compare', 'x']),
    'a.obj',
    '--out',
    'b',
  ];
  for (let i = below(random, 5); i >= 0; i -= 1)
    words.push(
      oneOf(random, OPTION_WORDS),
      random() < 0.5
        ? oneOf(random, HOSTILE_FIGURES)
        : random() < 0.5
          ? oneOf(random, FIGURES)
          : oneOf(random, HOSTILE_NAMES),
    );
  return bytesOf(words.join('\n'));
}

const FOLDER = join(tmpdir(), `foamloft-fuzz-${process.pid}`);
const ART =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M0 0H20V20H0Z"/></svg>';

/** A parts file through the command's own reading: its figures, shapes, files, inserts and joins. */
async function lookAtParts(bytes: Uint8Array): Promise<Answer> {
  mkdirSync(FOLDER, { recursive: true });
  const path = join(FOLDER, 'Fuzz.json');
  writeFileSync(path, bytes);
  return await refusedOr(bytes, async () => {
    const { project } = await withParts(emptyProject('fuzz'), path);
    expectFinite(numbersIn(project), 'a part');
    return [...new Set((project.plain ?? []).map(({ kind }) => kind))].sort().join(' ');
  });
}

function partsSeeds(): Uint8Array[] {
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(join(FOLDER, 'flame-badge.svg'), ART);
  for (const name of ['maul-head.obj', 'maul-head.seams.json', 'lantern.obj', 'lantern.seams.json'])
    copyFileSync(join('samples', name), join(FOLDER, name));
  const kit = JSON.parse(textOf(seedFiles('kit.parts.json')[0])) as { parts: { name: string }[] };
  const alone = kit.parts.map((part) => ({ version: 1, parts: [part] }));
  return [...alone, kit].map((one) => bytesOf(JSON.stringify(one)));
}

export const TEXT_TARGETS: readonly Target[] = [
  {
    name: 'figures',
    ending: 'txt',
    seeds: () => FIGURES.map(bytesOf),
    words: [...HOSTILE_FIGURES, 'mm', 'cm', ' in', '"', "'", '½', '/', '-', '−', '\u00a0'],
    look: lookAtFigure,
  },
  {
    name: 'options',
    ending: 'txt',
    seeds: () => LINES.map((line) => bytesOf(line.includes('\n') ? line : line.replaceAll(' ', '\n'))),
    words: OPTION_WORDS.map((word) => `\n${word}\n`),
    grammar: wildLine,
    look: async (bytes) => await refusedOr(bytes, () => parseCommand(textOf(bytes).split('\n'), '2026-01-01').name),
  },
  {
    name: 'listed-parts',
    ending: 'parts.json',
    seeds: partsSeeds,
    words: JSON_WORDS,
    grammar: (random, seeds) => wildJson(random, oneOf(random, seeds)),
    look: lookAtParts,
  },
];
