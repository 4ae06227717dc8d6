import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { stackCommand } from '../../src/cli/stack-command.ts';
import { ROOT, scratchFolder } from './run-cli.ts';

function stack(...words: string[]): Promise<string> {
  const command = parseCommand(['stack', ...words], '2026-01-01');
  if (command.name !== 'stack') throw new Error(`read as ${command.name}`);
  return stackCommand(command.choices);
}

const mesh = (name: string): string => join(ROOT, 'tests/reference/meshes', name);
const KNOB = ['--turned', '0:30,50:45,62:20', '--sheets', '10,6'];

describe('stack on the command line', () => {
  it('tells sheets, layers, dowels and what is to sand', async () => {
    const text = await stack(...KNOB, '--dowel', '6', '--core-hole', '12');
    expect(text).toMatch(/^turned profile: 7 layers by the larger face: 5 of 10 mm, 2 of 6 mm; 62 mm for 62 mm\n/);
    expect(text.match(/\ndowel 56 mm through layers 1 to 6 at /g)).toHaveLength(2);
    expect(text).toContain(
      '\nwarning: There is no room for two dowels in every part where these layers meet: 6 and 7.',
    );
    expect(text).toMatch(/\nto sand [\d.]+ cm³, at most [\d.]+ mm deep; to fill 0.0 cm³/);
  });

  it('writes figures and both drawings, in mm', async () => {
    const out = scratchFolder();
    const json = await stack(...KNOB, '--core-hole', '12', '--json', '--out', out);
    expect(readFileSync(join(out, 'stack.json'), 'utf8')).toBe(json);
    const read = JSON.parse(json) as {
      layers: { volumeMm3: number; solidMm3: number; sand: { volumeMm3: number }; pieces: { outline: number[][] }[] }[];
    };
    for (const { volumeMm3, solidMm3, sand } of read.layers)
      expect(sand.volumeMm3).toBeCloseTo(volumeMm3 - solidMm3, 6);
    const svg = readFileSync(join(out, 'stack.svg'), 'utf8');
    const [, width, box] = /width="([\d.]+)mm" height="[\d.]+mm" viewBox="0 0 ([\d.]+) /.exec(svg) ?? [];
    expect(width).toBe(box);
    expect(svg.match(/<g id="layer-/g)).toHaveLength(7);
    expect(svg.match(/r="6.15"/g)).toHaveLength(7);
    // The widest layer is drawn as wide as it is.
    const [, path] = /<g id="layer-5">\n<path d="M([^Z"]+)Z/.exec(svg) ?? [];
    const across = (path ?? '').split('L').map((pair) => Number(pair.split(' ')[0]));
    const own = read.layers[4].pieces[0].outline.map(([x]) => x);
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(Math.max(...own) - Math.min(...own), 2);
    expect(readFileSync(join(out, 'stack-sections.svg'), 'utf8')).toContain('stroke="#c22"');
  });

  it('opens a hollow where asked, and nothing else', async () => {
    const box = ['--turned', '0:60,80:60', '--sheets', '10', '--wall', '20', '--json'];
    const openings = async (...words: string[]): Promise<number[]> =>
      (JSON.parse(await stack(...box, ...words)) as { layers: { pieces: { openings: unknown[] }[] }[] }).layers.map(
        ({ pieces }) => pieces[0].openings.length,
      );
    expect(await openings()).toEqual([0, 0, 1, 1, 1, 1, 0, 0]);
    expect(await openings('--open', 'top')).toEqual([0, 0, 1, 1, 1, 1, 1, 1]);
    expect(() => parseCommand(['stack', 'a.stl', '--sheets', '10', '--open', 'top'], '2026-01-01')).toThrow(WrongUsage);
  });

  it('refuses an open model in a sentence', async () => {
    await expect(stack(mesh('hand_lowres.obj'), '--sheets', '10', '--size', 'longest=200')).rejects.toThrow(Refused);
    await expect(stack(mesh('hand_lowres.obj'), '--sheets', '10')).rejects.toThrow(
      'The surface is not closed: 16 sides',
    );
  });

  it('stacks a model at any axis', async () => {
    const text = await stack(
      mesh('spot_low_resolution.obj'),
      '--size',
      'longest=100',
      '--axis',
      '1,2,0',
      '--sheets',
      '10',
    );
    expect(text).toMatch(/^spot_low_resolution.obj: \d+ layers by the larger face/);
  });

  it.each([
    [['--sheets', '10']],
    [['a.obj']],
    [['a.obj', 'b.obj', '--sheets', '10']],
    [['a.obj', '--sheets', '10;6']],
    [['a.obj', '--sheets', '0']],
    [['a.obj', '--sheets', '10', '--axis', 'w']],
    [['a.obj', '--sheets', '10', '--axis', '0,0,0']],
    [['a.obj', '--sheets', '10', '--rule', 'best']],
    [['a.obj', '--sheets', '10', '--core-at', '1,2']],
    [['a.obj', '--sheets', '10', '--paper', 'A4']],
    [['--turned', '0:1,5', '--sheets', '10']],
  ])('is used wrongly: %j', (words) => {
    expect(() => parseCommand(['stack', ...words], '2026-01-01')).toThrow(WrongUsage);
  });

  it('keeps its options to itself', () => {
    expect(() => parseCommand(['make', 'a.obj', '--out', 'b', '--sheets', '10'], '2026-01-01')).toThrow(
      '--sheets is an option of stack.',
    );
  });
});
