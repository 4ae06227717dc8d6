import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sample, scratchFiles, scratchFolder } from './run-cli.ts';
import { runHere } from './run-here.ts';

/** What a maker may hand over by mistake, and the sentence each gets: where it is and what to do. */
type Broken = readonly [
  what: string,
  files: Readonly<Record<string, string | Uint8Array>>,
  sentence: RegExp,
  words?: readonly string[],
];

const CORNERS = 'v 0 0 0\nv 10 0 0\nv 10 10 0\nv 0 10 0\nv 0 0 10\nv 10 0 10\nv 10 10 10\nv 0 10 10\n';
const CUBE = `${CORNERS}f 1 4 3 2\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n`;
const SQUARE = 'v 0 0 0\nv 10 0 0\nv 10 10 0\nv 0 10 0\nf 1 2 3 4\n';
/** Half a cube: three faces round a corner, lies flat without a seam. */
const TRAY = `${CORNERS}f 1 4 3 2\nf 1 2 6 5\nf 4 1 5 8\n`;

const MODELS: readonly Broken[] = [
  ['an empty file', { 'a.obj': '' }, /a\.obj.*empty|a\.obj.*no (faces|surface)/i],
  [
    'a binary file of another kind',
    { 'a.obj': new Uint8Array([137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13]) },
    /a\.obj/,
  ],
  ['a letter', { 'a.obj': 'Dear maker,\nplease find attached a helmet.\n' }, /a\.obj/],
  ['corners without faces', { 'a.obj': CORNERS }, /a\.obj.*face/],
  ['a face that names a corner there is not', { 'a.obj': `${SQUARE}f 1 2 9\n` }, /a\.obj.*line 6|a\.obj.*9/],
  ['a face that counts from 0', { 'a.obj': `${SQUARE}f 0 1 2\n` }, /a\.obj.*(line 6|from 1|0)/],
  ['a face that counts back too far', { 'a.obj': `${SQUARE}f -1 -2 -9\n` }, /a\.obj.*(line 6|-9)/],
  ['a face index that is no number', { 'a.obj': `${SQUARE}f 1 two 3\n` }, /a\.obj.*(line 6|two)/],
  ['a corner in words', { 'a.obj': 'v 0 0 zero\nv 1 0 0\nv 0 1 0\nf 1 2 3\n' }, /a\.obj.*line 1/],
  ['a corner of two numbers', { 'a.obj': 'v 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n' }, /a\.obj.*line 1/],
  ['a corner that is not a number', { 'a.obj': 'v 0 0 nan\nv 1 0 0\nv 0 1 0\nf 1 2 3\n' }, /a\.obj.*line 1/],
  ['a corner beyond all measure', { 'a.obj': 'v 0 0 1e999\nv 1 0 0\nv 0 1 0\nf 1 2 3\n' }, /a\.obj.*line 1/],
  ['a model without area', { 'a.obj': 'v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n' }, /a\.obj/],
  ['a model in one point', { 'a.obj': 'v 1 1 1\nv 1 1 1\nv 1 1 1\nf 1 2 3\n' }, /a\.obj/],
  ['an STL cut short', { 'a.stl': binaryStl(12).subarray(0, 300) }, /a\.stl/],
  ['an STL without facets', { 'a.stl': binaryStl(0) }, /a\.stl/],
  [
    'a text STL cut short',
    { 'a.stl': 'solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\n' },
    /a\.stl/,
  ],
  ['a text STL with a corner in words', { 'a.stl': textStl('0 0 up') }, /a\.stl/],
  ['a closed surface without seams', { 'a.obj': CUBE }, /a\.obj.*closed surface.*seam/],
];

const SEAMS: readonly Broken[] = [
  ['seams that are no JSON', { 'a.obj': CUBE, 's.json': '0 4\n1 5\n' }, /s\.json.*JSON/],
  ['seams of another version', { 'a.obj': CUBE, 's.json': '{"version":2,"edges":[]}' }, /s\.json.*version/],
  ['seams of single corners', { 'a.obj': CUBE, 's.json': '{"version":1,"edges":[[0]]}' }, /s\.json.*edges/],
  [
    'a seam to a corner there is not',
    { 'a.obj': CUBE, 's.json': '{"version":1,"edges":[[0,8]]}' },
    /s\.json.*corner 8/,
  ],
  [
    'a seam between corners without an edge',
    { 'a.obj': CUBE, 's.json': '{"version":1,"edges":[[0,6]]}' },
    /s\.json.*\[0, 6\]/,
  ],
  [
    'seams of another model',
    { 'a.obj': CUBE, 's.json': `{"version":1,"modelHash":"${'0'.repeat(64)}","edges":[]}` },
    /s\.json.*modelHash/,
  ],
  [
    'a seam across faces to a corner that is not there',
    { 'a.obj': CUBE, 's.json': '{"version":1,"paths":[{"points":[{"vertex":0},{"vertex":99}]}]}' },
    /s\.json.*Point 2 of path 1 is corner 99/,
  ],
  ['too few seams', { 'a.obj': CUBE, 's.json': '{"version":1,"edges":[]}' }, /s\.json.*closed surface/],
];

const PROJECTS: readonly Broken[] = [
  ['a project cut short', { 'p.foamloft.json': '{"format":"foamloft-project","project":{"name"' }, /p\.foamloft\.json/],
  ['JSON of another kind', { 'p.json': '{"name":"p"}' }, /p\.json.*not a Foamloft project/],
  [
    'a project from the future',
    { 'p.foamloft.json': '{"format":"foamloft-project","project":{"schemaVersion":99}}' },
    /newer/,
  ],
  [
    'a project without its parts',
    { 'p.foamloft.json': '{"format":"foamloft-project","project":{"schemaVersion":1},"sources":{}}' },
    /p\.foamloft\.json/,
  ],
];

const CHOICES: readonly Broken[] = [
  ['a paper nobody sells', { 'a.obj': TRAY }, /paper called “B0”/, ['--paper', 'B0']],
  ['a paper smaller than its margins', { 'a.obj': TRAY }, /margin/i, ['--paper', 'custom=100x100', '--margin', '60']],
  [
    'an overlap wider than the page',
    { 'a.obj': TRAY },
    /overlap/i,
    ['--paper', 'custom=100x100', '--margin', '5', '--overlap', '100'],
  ],
  ['a size along an axis in which it is flat', { 'a.obj': SQUARE }, /a\.obj.*\bz\b/, ['--size', 'z=10']],
];

describe.each([
  ['models', MODELS],
  ['seam files', SEAMS],
  ['projects', PROJECTS],
  ['choices', CHOICES],
] as const)('broken %s', (_, list) => {
  const cases = list.map(([what, files, sentence, words = []]) => ({ what, files, sentence, words }));
  it.each(cases)('$what is refused in one sentence', async ({ files, sentence, words }) => {
    const [input, ...seams] = scratchFiles(files);
    const out = join(scratchFolder(), 'out');
    const { status, stdout, stderr } = await runHere(
      'make',
      input,
      ...seams.flatMap((path) => ['--seams', path]),
      '--out',
      out,
      ...words,
    );
    expect(stderr).toMatch(sentence);
    expect(stderr).toMatch(/^[^\n]{20,400}[.)]\n$/);
    expect(stderr).not.toMatch(/undefined|NaN|\[object|node:|\bat .*:\d+:\d+/);
    expect(stdout).toBe('');
    expect(status).toBe(1);
    expect(existsSync(out)).toBe(false);
  });
});

describe('files that cannot be read', () => {
  it.each([
    ['no such file', 'missing.obj', /missing\.obj: there is no such file/],
    ['a folder', '', /this is a folder/],
  ])('%s', async (_, name, sentence) => {
    for (const command of ['inspect', 'make']) {
      const out = join(scratchFolder(), 'out');
      const { status, stderr } = await runHere(
        command,
        join(scratchFolder(), name),
        ...(command === 'make' ? ['--out', out] : []),
      );
      expect(stderr).toMatch(sentence);
      expect(status).toBe(1);
      expect(existsSync(out)).toBe(false);
    }
  });

  it('an output folder that is a file', async () => {
    const { model, seams } = sample('bracer');
    const [file] = scratchFiles({ 'notes.txt': 'mine' });
    const { status, stderr } = await runHere('make', model, '--seams', seams, '--out', file);
    expect(stderr).toMatch(/notes\.txt.*--out/);
    expect(status).toBe(1);
  });
});

describe('models that are only untidy', () => {
  it.each<[string, string, RegExp]>([
    ['a doubled face', `${TRAY}f 1 4 3 2\n`, /warning: .*(doubled|twice)/i],
    ['a face turned over', `${CORNERS}f 1 4 3 2\nf 1 5 6 2\nf 4 1 5 8\n`, /warning: .*turned/i],
    ['three faces on an edge', `${TRAY}v 5 0 -9\nf 1 2 9\n`, /warning: .*edge/i],
    ['a face that names a corner twice', `${TRAY}f 1 2 1\n`, /warning: .*left out.*line 12/],
    ['a face on a line', `${TRAY}v 5 0 0\nf 1 9 2\n`, /warning: 1 face has no area/],
  ])('%s is told', async (_, text, sentence) => {
    const [model] = scratchFiles({ 'untidy.obj': text });
    const { status, stdout } = await runHere('inspect', model);
    expect(status).toBe(0);
    expect(stdout).toMatch(sentence);
  });
});

/** A binary STL of `count` facets of one size. */
function binaryStl(count: number): Uint8Array {
  const bytes = new Uint8Array(84 + 50 * count);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let f = 0; f < count; f += 1) {
    [0, 0, 1, f, 0, 0, f + 1, 0, 0, f, 1, 0].forEach((x, i) => view.setFloat32(84 + 50 * f + 4 * i, x, true));
  }
  return bytes;
}

function textStl(corner: string): string {
  return `solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex ${corner}\nendloop\nendfacet\nendsolid a\n`;
}
