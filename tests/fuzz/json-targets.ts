import { DEFAULT_FOAMS } from '../../src/model/foams.ts';
import { readStripTask } from '../../src/pipeline/nest-instance.ts';
import { readPartsFile } from '../../src/project/parts-file.ts';
import { readSeamFile } from '../../src/project/seam-file.ts';
import { readStockFile } from '../../src/project/stock-file.ts';
import { about, answerTo, expectFinite } from './expect-answer.ts';
import { wildJson } from './json-grammar.ts';
import { seedFiles } from './seed-files.ts';
import { bytesOf, oneOf, textOf, type Random, type Target } from './target.ts';

const asBytes = (value: unknown): Uint8Array => bytesOf(JSON.stringify(value));

export const JSON_WORDS: readonly string[] = [
  ...[
    '{',
    '}',
    '[',
    ']',
    ':',
    ',',
    '"',
    'null',
    'true',
    '"__proto__":',
    '"constructor":',
    '"id":',
    '{}',
    '[]',
    '\\u0000',
    '\\ud800',
    '\\',
    '1e400',
    '-0',
  ],
];

const wild = (random: Random, seeds: readonly Uint8Array[]): Uint8Array => wildJson(random, oneOf(random, seeds));

const SEAMS = [
  {
    version: 1,
    edges: [
      [0, 1],
      [1, 2],
    ],
  },
  {
    version: 1,
    modelHash: 'a'.repeat(64),
    paths: [
      {
        points: [{ vertex: 0 }, { face: 3, bary: [0.2, 0.3, 0.5] }, { vertex: 5 }],
        kind: 'lap',
        lapSide: 'left',
        straight: true,
      },
    ],
    joins: [{ edge: [0, 1], kind: 'butt', allowanceMm: 2, lapFace: 1 }],
  },
];

const [{ id: foam }] = DEFAULT_FOAMS;
const STOCK = [
  [
    {
      id: 'a',
      name: 'whole sheets',
      foam,
      shape: { kind: 'rectangle', widthMm: 600, heightMm: 900 },
      count: 2,
      keepOut: [[0, 0, 50, 0, 50, 50]],
      grain: 'x',
      leftBy: { stock: 'buy', nth: 0 },
    },
    { id: 'b', name: 'offcut', foam, shape: { kind: 'outline', points: [0, 0, 300, 0, 300, 200, 0, 200] }, count: 1 },
  ],
];

const NEST = [
  {
    name: 'a',
    strip_height: 10,
    items: [
      {
        id: 0,
        demand: 2,
        allowed_orientations: [0, 90],
        shape: {
          type: 'simple_polygon',
          data: [
            [0, 0],
            [4, 0],
            [4, 3],
            [0, 3],
            [0, 0],
          ],
        },
      },
    ],
  },
  {
    strip_height: 20,
    items: [
      {
        shape: {
          data: {
            outer: [
              [0, 0],
              [9, 0],
              [9, 9],
              [0, 9],
            ],
            inner: [
              [
                [2, 2],
                [2, 4],
                [4, 4],
              ],
            ],
          },
        },
      },
    ],
  },
];

export const JSON_TARGETS: readonly Target[] = [
  {
    name: 'seams',
    ending: 'seams.json',
    seeds: () => [...SEAMS.map(asBytes), ...seedFiles('.seams.json')],
    words: [...JSON_WORDS, '"version":1', '"edges":', '[0,1]'],
    grammar: wild,
    look: async (bytes) =>
      await answerTo(readSeamFile(textOf(bytes), 'Fuzz.json'), bytes, ({ marks, joins }) => {
        expectFinite(marks.edges.flat(), 'an edge');
        return `${about(marks.edges.length)} ${about(marks.paths.length)} ${about(joins.length)}`;
      }),
  },
  {
    name: 'stock',
    ending: 'json',
    seeds: () => STOCK.map(asBytes),
    words: [...JSON_WORDS, '"rectangle"', '"outline"', '"points":', '"count":'],
    grammar: wild,
    look: async (bytes) =>
      await answerTo(readStockFile(textOf(bytes), 'Fuzz.json', DEFAULT_FOAMS), bytes, (sheets) => {
        expectFinite(numbersIn(sheets), 'a sheet');
        return `${about(sheets.length)}`;
      }),
  },
  {
    name: 'parts',
    ending: 'parts.json',
    seeds: () => seedFiles('.parts.json'),
    words: [...JSON_WORDS, '"kind":"shape"', '"sizes":', '"place":', '"joins":', '"inserts":'],
    grammar: wild,
    look: async (bytes) =>
      await answerTo(readPartsFile(textOf(bytes), 'Fuzz.json'), bytes, (file) => {
        expectFinite(numbersIn(file), 'a part');
        return `${about(file.parts.length)} ${[...new Set(file.parts.map(({ kind }) => kind))].sort().join(' ')}`;
      }),
  },
  {
    name: 'nest',
    ending: 'json',
    seeds: () => [
      ...NEST.map(asBytes),
      ...seedFiles('fu.json', 'shapes0.json', 'shapes1.json', 'blaz1.json', 'shirts.json', 'albano.json'),
    ],
    words: [...JSON_WORDS, '"strip_height":', '"items":', '"demand":', '"shape":', '"data":', '"inner":', '[0,0]'],
    grammar: wild,
    look: async (bytes) =>
      await answerTo(named(readStripTask(textOf(bytes))), bytes, (task) => {
        expectFinite(
          [
            task.height,
            ...task.kinds.flatMap(({ rings, turnsDeg }) => [...turnsDeg, ...rings.flatMap((ring) => [...ring])]),
          ],
          'a task',
        );
        return `${about(task.kinds.length)} ${about(task.kinds.reduce((sum, { quantity }) => sum + quantity, 0))}`;
      }),
  },
];

/** The command line puts the name of the file before what is said of a task. */
function named(result: ReturnType<typeof readStripTask>): typeof result {
  return result.ok ? result : { ok: false, problem: { ...result.problem, text: `Fuzz.json: ${result.problem.text}` } };
}

export function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}
