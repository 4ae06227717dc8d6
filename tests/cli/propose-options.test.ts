import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import type { ProposeChoices } from '../../src/cli/propose-options.ts';
import { USAGE } from '../../src/cli/usage.ts';

function choicesOf(...words: string[]): ProposeChoices {
  const command = parseCommand(['seams', 'helm.obj', '--out', 'seams.json', ...words], '2026-03-01');
  if (command.name !== 'seams') throw new Error(`read as ${command.name}`);
  return command.choices;
}

describe('seams on the command line', () => {
  it('looks for ten seconds, for few pieces of foam, unless told otherwise', () => {
    expect(choicesOf()).toEqual({
      input: 'helm.obj',
      out: 'seams.json',
      kind: 'foam',
      pieces: 'few',
      isMirrored: false,
      end: { seconds: 10 },
      seed: 1,
    });
  });

  it('reads each option', () => {
    const words =
      '--limits foam --limit 6,5 --pieces simple --moves 40 --seed 7 --mirror --from a.json --report r.json';
    expect(choicesOf(...words.split(' '), '--thickness', '6', '--size', 'longest=300')).toEqual({
      input: 'helm.obj',
      out: 'seams.json',
      report: 'r.json',
      from: 'a.json',
      scale: { by: 'size', axis: 'longest', mm: 300 },
      thicknessMm: 6,
      kind: 'foam',
      limitPct: 6.5,
      pieces: 'simple',
      isMirrored: true,
      end: { moves: 40 },
      seed: 7,
    });
    expect(choicesOf('--hide', 'back').hide).toBe('back');
    expect(choicesOf('--hide', 'nowhere').hide).toBeNull();
    expect(choicesOf('--seconds', '2', '--unit', 'cm')).toMatchObject({
      end: { seconds: 2 },
      scale: { by: 'unit', unit: 'cm' },
    });
  });

  it.each<[string[], RegExp]>([
    [['--seconds', '2', '--moves', '5'], /not both/],
    [['--moves', '1.5'], /^--moves takes a whole number, not 1.5\.$/],
    [['--moves=-1'], /--moves takes a number from 0/],
    [['--seconds', '0'], /--seconds takes a number over 0/],
    [['--seconds', 'ten'], /not ten/],
    [['--limit', '0'], /--limit takes a number over 0/],
    [['--limits', 'paper'], /--limits takes foam, reference, not paper/],
    [['--pieces', 'many'], /--pieces takes few, simple, not many/],
    [['--seed', '0.5'], /--seed takes a whole number/],
    [['--limits', 'reference', '--thickness', '6'], /without thickness/],
    [['--limits', 'reference', '--mirror'], /alike or not/],
    [['--limits', 'reference', '--hide', 'back'], /seen or not/],
    [['--hide', 'inside'], /--hide takes nowhere, back, under, left, right, not inside/],
    [['--paper', 'A4'], /--paper is no option of seams/],
    [['--json'], /--json is no option of seams/],
    [['--unit', 'cm', '--size', 'x=3'], /not both/],
  ])('refuses %j in one sentence', (words, sentence) => {
    const told = (): unknown => choicesOf(...words);
    expect(told).toThrow(WrongUsage);
    expect(told).toThrow(sentence);
  });

  it('needs a model and a file', () => {
    expect(() => parseCommand(['seams'], '2026-03-01')).toThrow(/seams MODEL --out FILE\.json/);
    expect(() => parseCommand(['seams', 'helm.obj'], '2026-03-01')).toThrow(/--out FILE\.json/);
    expect(() => parseCommand(['seams', 'a.obj', 'b.obj', '--out', 'x'], '2026-03-01')).toThrow(/one file/);
  });

  it('keeps its options from make', () => {
    for (const option of ['--limit', '--limits', '--pieces', '--seconds', '--moves', '--seed', '--from', '--report']) {
      expect(() => parseCommand(['make', 'helm.obj', '--out', 'x', option, '5'], '2026-03-01')).toThrow(
        `${option} is an option of seams, not of make.`,
      );
      expect(USAGE).toContain(`${option} `);
    }
    expect(() => parseCommand(['inspect', 'helm.obj', '--seed', '5'], '2026-03-01')).toThrow(/not of inspect/);
  });
});
