import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import type { MakeChoices } from '../../src/cli/make-command.ts';
import { pieceFoamSettings } from '../../src/cli/piece-foam-option.ts';
import { USAGE } from '../../src/cli/usage.ts';
import { DEFAULT_FOAMS } from '../../src/model/foams.ts';
import { runHere } from './run-here.ts';

function choicesOf(...words: string[]): MakeChoices {
  const command = parseCommand(['make', 'helm.obj', '--out', 'out', ...words], '2026-03-01');
  if (command.name !== 'make') throw new Error(`read as ${command.name}`);
  return command.choices;
}

describe('wishes for laying flat on the command line', () => {
  it('say nothing of what was left out', () => {
    expect(choicesOf().flatten).toEqual({});
    expect(choicesOf()).not.toHaveProperty('shrinkage');
  });

  it('are read one by one', () => {
    expect(choicesOf('--seam-price', '0').flatten).toEqual({ seamPrice: 0 });
    expect(choicesOf('--squash-price', '2,5', '--even-out').flatten).toEqual({ squashPrice: 2.5, evenOut: true });
    expect(choicesOf('--keep-apart').flatten).toEqual({ keepApart: true });
  });

  it.each([
    ['2,1', { alongPct: 2, acrossPct: 1 }],
    ['2.5,-0.5', { alongPct: 2.5, acrossPct: -0.5 }],
    ['0, 19.9', { alongPct: 0, acrossPct: 19.9 }],
  ])('take shrinkage %s', (word, shrinkage) => expect(choicesOf(`--shrink=${word}`).shrinkage).toEqual(shrinkage));

  it.each(['', '2', '2,', ',2', '2,1,1', '2;1', '20,1', '1,-20', 'two,one', 'NaN,1'])(
    'refuse shrinkage %j in one sentence',
    (word) => {
      const told = (): unknown => choicesOf(`--shrink=${word}`);
      expect(told).toThrow(WrongUsage);
      expect(told).toThrow(/^--shrink takes two numbers of per cent under 20, .* not .+\.$/);
    },
  );

  it.each([
    ['--seam-price', '-1', /from 0 to 10000/],
    ['--seam-price', '10001', /from 0 to 10000/],
    ['--squash-price', '0.9', /from 1 to 20/],
    ['--squash-price', '', /not nothing/],
    ['--seam-price', '0x10', /not 0x10/],
    ['--shrink', '0x2,1', /not 0x2,1/],
  ])('refuse %s %j', (option, word, sentence) => expect(() => choicesOf(`${option}=${word}`)).toThrow(sentence));

  it('are told in the help, no wider than a terminal', () => {
    for (const option of ['--seam-price', '--squash-price', '--even-out', '--keep-apart', '--shrink'])
      expect(USAGE).toContain(option);
    for (const line of USAGE.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
});

describe('paper of pieces that mirror each other on the command line', () => {
  it('is one template or one each, in these words alone', () => {
    expect(choicesOf('--mirrored', 'each').paper).toEqual({ mirrored: 'each' });
    expect(choicesOf('--mirrored', 'once').paper).toEqual({ mirrored: 'once' });
    expect(choicesOf().paper ?? {}).toEqual({});
    expect(() => choicesOf('--mirrored', 'twice')).toThrow(/^--mirrored takes once, each, not twice\.$/);
    expect(USAGE).toContain('--mirrored once|each');
  });
});

describe('rules of the shop on the command line', () => {
  it('are read by name, the later of two counting', () => {
    expect(choicesOf('--rule', 'bevelLimitDeg=40', '--rule', 'hingeMm=2', '--rule=hingeMm=1.2').rules).toEqual({
      bevelLimitDeg: 40,
      hingeMm: 1.2,
    });
    expect(choicesOf()).not.toHaveProperty('rules');
    expect(USAGE).toContain('--rule NAME=N');
  });

  it.each([
    ['bevelLimitDeg', /^--rule looks like bevelLimitDeg=40\.$/],
    ['hingeMm=1=2', /^--rule looks like/],
    ['blade=40', /^there is no rule blade: rules are stretchNoticePct, .*leastHingeMm.*\.$/],
    ['bevelLimitDeg=80', /^--rule bevelLimitDeg takes a number from 1 to 70, not 80\.$/],
    ['hingeMm=thin', /^--rule hingeMm takes a number from 0.2 to 20, not thin\.$/],
    ['toString=1', /^there is no rule toString/],
  ])('refuse %s in one sentence', (word, sentence) => {
    const told = (): unknown => choicesOf(`--rule=${word}`);
    expect(told).toThrow(WrongUsage);
    expect(told).toThrow(sentence);
  });
});

describe('strip', () => {
  it('is read, and needs a folder and no file', () => {
    expect(parseCommand(['strip', '--out', 'out', '--thickness', '10', '--paper', 'Letter'], '2026-03-01')).toEqual({
      name: 'strip',
      choices: { out: 'out', thicknessMm: 10, paper: { name: 'Letter' }, date: '2026-03-01' },
    });
    expect(() => parseCommand(['strip'], '2026-03-01')).toThrow(/--out DIR/);
    expect(() => parseCommand(['strip', 'helm.obj', '--out', 'out'], '2026-03-01')).toThrow(/takes no file/);
    expect(() => parseCommand(['strip', '--out', 'out', '--even-out'], '2026-03-01')).toThrow(
      /--even-out is an option/,
    );
  });
});

describe('what a part is measured against on the command line', () => {
  it('is nothing where nothing is said', () => expect(choicesOf()).not.toHaveProperty('wear'));

  it('is a tape, a rod, and what must pass', () => {
    expect(choicesOf('--girth-at=y=-120,5', '--body-girth', '570', '--ease', '15').wear).toEqual({
      tapes: [
        { id: 'tape-1', name: 'Girth', pointInFile: [0, -120.5, 0], normal: [0, 1, 0], bodyGirthMm: 570, easeMm: 15 },
      ],
    });
    expect(choicesOf('--core-model', 'arm.stl', '--core-unit', 'cm', '--core-room', '4').coreModel).toEqual({
      path: 'arm.stl',
      unit: 'cm',
      roomMm: 4,
    });
    expect(choicesOf('--core-model', 'arm.stl').coreModel).toEqual({ path: 'arm.stl', unit: 'sculpt' });
    expect(choicesOf('--core', 'x=32', '--pass', '600').wear).toEqual({
      core: [{ id: 'core-1', name: 'Core', pointInFile: [0, 0, 0], direction: [1, 0, 0], diameterMm: 32 }],
      worn: { girthMm: 600 },
    });
  });

  it.each([
    [['--body-girth', '570'], /--girth-at y=120/],
    [['--girth-at', '120'], /^--girth-at takes axis=number with axis x, y, z, not 120\.$/],
    [['--girth-at', 'y='], /^--girth-at takes a number/],
    [['--girth-at', 'y=1=2'], /^--girth-at looks like y=120\.$/],
    [['--core-unit', 'mm'], /^--core-unit and --core-room belong to a core/],
    [['--core-model', 'a.stl', '--core-unit', 'ft'], /^--core-unit/],
    [['--core', 'z=0'], /^--core takes a number over 0/],
    [['--ease', '-1'], /ease/],
  ])('refuses %j', (words, told) => expect(() => choicesOf(...words)).toThrow(told));
});

describe('foam of single pieces on the command line', () => {
  it('is read by a face of the file and a thickness, and taken from the stock', () => {
    const { pieceFoams } = choicesOf('--piece-foam', '12=10', '--piece-foam=0=2');
    expect(pieceFoams).toEqual([
      { face: 12, thicknessMm: 10 },
      { face: 0, thicknessMm: 2 },
    ]);
    expect(pieceFoamSettings(pieceFoams ?? [], DEFAULT_FOAMS)).toEqual([
      { face: 12, foam: 'eva-10' },
      { face: 0, foam: 'eva-2' },
    ]);
    expect(choicesOf()).not.toHaveProperty('pieceFoams');
    expect(USAGE).toContain('--piece-foam');
  });

  it.each(['12', '=10', '12=', '1.5=10', '-1=10', '12=0', '12=10=2', 'rim=10'])(
    'refuses %j in one sentence',
    (word) => {
      expect(() => choicesOf(`--piece-foam=${word}`)).toThrow(WrongUsage);
      expect(() => choicesOf(`--piece-foam=${word}`)).toThrow(/^--piece-foam (looks like|takes a number) [^\n]*\.$/);
    },
  );

  it('tells what the stock has where no sheet is so thick', () => {
    const told = (): unknown => pieceFoamSettings([{ face: 3, thicknessMm: 7 }], DEFAULT_FOAMS);
    expect(told).toThrow('--piece-foam 3=7: the stock has foam of 2, 6, 10, 15 mm.');
  });
});

describe('what is no value', () => {
  it('a word with a dash is told in one sentence', () => {
    const read = () => choicesOf('--margin', '-1');
    expect(read).toThrow(WrongUsage);
    expect(read).toThrow(
      /^--margin is followed by a word with a dash: give it a value, with a minus as --margin=-2\.$/,
    );
  });

  it.each(['2026-02-30', '2025-02-29', '2026-04-31T10:00:00Z', '2026-13-01'])('%s is no date', (date) => {
    expect(() => choicesOf('--date', date)).toThrow(/is no date/);
  });

  it.each(['2024-02-29', '2026-12-31T23:59:59Z'])('%s is one', (date) => {
    expect(choicesOf('--date', date).date).toBe(date);
  });
});

describe('help', () => {
  it.each([['--help'], ['-h'], ['make', '--help']])('is asked for by %s', (...words) =>
    expect(parseCommand(words, '2026-03-01').name).toBe('help'),
  );
});

describe('wrong usage', () => {
  it.each<[string, string[], RegExp]>([
    ['an unknown command', ['unfold', 'helm.obj'], /no command unfold/],
    ['no file', ['inspect'], /needs a file/],
    ['no folder', ['make', 'helm.obj'], /--out DIR/],
    ['two files', ['inspect', 'a.obj', 'b.obj'], /one file/],
    ['an unknown option', ['make', 'helm.obj', '--out', 'x', '--glue', 'hot'], /--glue/],
    ['an option of the other command', ['inspect', 'helm.obj', '--paper', 'A4'], /--paper is an option of make/],
    ['a unit of long ago', ['make', 'helm.obj', '--out', 'x', '--unit', 'furlong'], /mm, cm, m, in/],
    ['unit and size', ['make', 'helm.obj', '--out', 'x', '--unit', 'mm', '--size', 'x=3'], /not both/],
    ['a size without a number', ['make', 'helm.obj', '--out', 'x', '--size', 'longest'], /--size/],
    ['a size of nothing', ['make', 'helm.obj', '--out', 'x', '--size', 'x=0'], /--size/],
    ['a size along no axis', ['make', 'helm.obj', '--out', 'x', '--size', 'w=3'], /--size/],
    ['foam thinner than nothing', ['make', 'helm.obj', '--out', 'x', '--thickness=-3'], /--thickness/],
    ['foam thick as words', ['make', 'helm.obj', '--out', 'x', '--thickness', 'thick'], /--thickness/],
    ['a neutral surface outside the foam', ['make', 'helm.obj', '--out', 'x', '--neutral', '1.5'], /--neutral/],
    ['an unknown side', ['make', 'helm.obj', '--out', 'x', '--model-is', 'front'], /face, middle, back/],
    ['a day that is none', ['make', 'helm.obj', '--out', 'x', '--date', '2026-02-31x'], /--date/],
    ['a price that is none', ['make', 'helm.obj', '--out', 'x', '--seam-price', 'dear'], /--seam-price takes a number/],
    ['squash cheaper than stretch', ['make', 'helm.obj', '--out', 'x', '--squash-price', '0.5'], /from 1 to 20/],
    ['one shrinkage of two', ['make', 'helm.obj', '--out', 'x', '--shrink', '2'], /--shrink takes two numbers/],
    ['an empty margin', ['make', 'helm.obj', '--out', 'x', '--margin', ''], /--margin/],
  ])('of %s is told in one sentence', async (_, words, sentence) => {
    const { status, stdout, stderr } = await runHere(...words);
    expect(stderr).toMatch(sentence);
    expect(stderr.trimEnd()).not.toContain('\n');
    expect(stdout).toBe('');
    expect(status).toBe(2);
  });
});
