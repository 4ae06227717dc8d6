import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import type { MakeChoices } from '../../src/cli/make-command.ts';
import { USAGE } from '../../src/cli/usage.ts';

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
