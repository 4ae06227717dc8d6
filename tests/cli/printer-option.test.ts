import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { printerFrom, withPrinter } from '../../src/cli/printer-option.ts';
import { USAGE } from '../../src/cli/usage.ts';
import { newProject } from '../../src/project/new-project.ts';
import { printerOf } from '../../src/project/printer-commands.ts';

const project = newProject('lid', { hash: '0'.repeat(64), fileName: 'lid.obj', format: 'obj' });
const measured = (name: string, word: string) => printerFrom({ printer: name, measured: word });

describe('a printer on the command line', () => {
  it('is measured and kept, chosen by its name, and left', () => {
    const words = ['make', 'lid.obj', '--out', 'out', '--printer', 'attic', '--measured', '97x98,4'];
    const printer = { name: 'attic', readings: { nominalMm: 100, acrossMm: 97, upMm: 98.4 } };
    expect(parseCommand(words, '2026-03-01')).toMatchObject({ choices: { printer } });
    for (const word of ['--printer', '--measured']) expect(USAGE).toContain(word);
    const kept = withPrinter(project, printer);
    expect(printerOf(kept)).toEqual({ name: 'attic', acrossShare: 97 / 100, upShare: 98.4 / 100, leanRad: 0 });
    const left = withPrinter(kept, printerFrom({ printer: 'off' }));
    expect(printerOf(left)).toBeNull();
    expect(printerOf(withPrinter(left, printerFrom({ printer: 'attic' })))?.acrossShare).toBe(0.97);
    expect(withPrinter(project, printerFrom({}))).toBe(project);
  });

  it('adds what its own corrected page was still off, another one begins anew', () => {
    const kept = withPrinter(project, measured('attic', '97x98.4'));
    expect(printerOf(withPrinter(kept, measured('attic', '100.5x100')))?.acrossShare).toBeCloseTo(0.97 * 1.005, 12);
    expect(printerOf(withPrinter(kept, measured('cellar', '99x100')))?.acrossShare).toBe(0.99);
  });

  it('takes diagonals, and the square of small paper', () => {
    // A square whose upright leans by one in a hundred to the right: its diagonals are √(101² + 100²) and √(99² + 100²).
    const leaning = withPrinter(project, measured('attic', '100x100.005x142.130x140.716'));
    expect(printerOf(leaning)?.leanRad).toBeCloseTo(0.01, 4);
    expect(printerOf(withPrinter(project, measured('attic', '49x50')))?.acrossShare).toBe(0.98);
  });

  it('is refused where it says nothing', () => {
    for (const values of [
      { printer: ' ' },
      { measured: '97x98' },
      { printer: 'off', measured: '97x98' },
      ...['97', '97x98x139', '97x-98', '97xx98', '0x97'].map((word) => ({ printer: 'attic', measured: word })),
    ])
      expect(() => printerFrom(values)).toThrow(WrongUsage);
    expect(() => withPrinter(project, { name: 'attic' })).toThrow('keeps none yet');
    const kept = withPrinter(project, measured('attic', '97x98.4'));
    expect(() => withPrinter(kept, { name: 'cellar' })).toThrow('keeps attic');
    expect(() => withPrinter(project, measured('attic', '80x100'))).toThrow(Refused);
  });
});
