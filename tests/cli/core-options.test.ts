import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { coreCommand } from '../../src/cli/core-command.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { scratchFolder } from './run-cli.ts';

function core(...words: string[]): Promise<string> {
  const command = parseCommand(['core', ...words], '2026-01-01');
  if (command.name !== 'core') throw new Error(`read as ${command.name}`);
  return coreCommand(command.choices);
}

const HANDLE = ['--pipe', 'PVC 32', '--length', '900', '--sheets', '10,6,2'];
const KNOB = ['--profile', '0:20,300:20~,350:32,400:20'];

describe('core on the command line', () => {
  it('tells layers, what is to sand, strips and the order of the work', async () => {
    const text = await core(
      ...HANDLE,
      ...KNOB,
      '--wind',
      'width=25,pitch=22,to=300',
      '--place',
      'head=700-860',
      '--start-cap',
      '10',
    );
    expect(text).toMatch(/^PVC 32: 32 mm outside, cut to 890 mm\n/);
    expect(text).toContain('\nhead: hole 32.6 mm\n');
    expect(text).toContain('\nlayer 1: 2 mm, 0 to 400, 106.81 mm round, seam 0°\n');
    expect(text).toMatch(/\nstrip 1: lead 9\.47°, pitch 22 mm, overlap 3\.3 mm, 13\.64 turns, /);
    expect(text).toMatch(/\n1\. Cut the core, PVC 32, to 890 mm/);
  });

  it('gives the figures of handbook cases G1 and G2', async () => {
    for (const [lap, long] of [
      ['0', 2827.433388],
      ['5', 3769.911184],
    ] as const) {
      const json = await core(
        '--diameter',
        '30',
        '--length',
        '600',
        '--wind',
        `width=20,overlap=${lap},thick=0`,
        '--json',
      );
      const { windings } = JSON.parse(json) as { windings: { stripMm: number }[] };
      expect(windings[0].stripMm).toBeCloseTo(long, 3);
    }
  });

  it('writes figures and both drawings, in mm', async () => {
    const out = scratchFolder();
    const json = await core(
      ...HANDLE,
      '--profile',
      '0:20,300:24',
      '--wind',
      'width=20,overlap=2,cut=curved,from=0,to=90',
      '--json',
      '--out',
      out,
    );
    expect(readFileSync(join(out, 'core.json'), 'utf8')).toBe(json);
    const read = JSON.parse(json) as { pieces: { key: string; areaMm2: number; ring: [number, number][] }[] };
    for (const { ring, areaMm2 } of read.pieces) {
      const area = ring.reduce(
        (sum, [x, y], i) => sum + (x * ring[(i + 1) % ring.length][1] - ring[(i + 1) % ring.length][0] * y) / 2,
        0,
      );
      expect(area / areaMm2).toBeCloseTo(1, 4);
    }
    const svg = readFileSync(join(out, 'core-pieces.svg'), 'utf8');
    const [, width, box] = /width="([\d.]+)mm" height="[\d.]+mm" viewBox="0 0 ([\d.]+) /.exec(svg) ?? [];
    expect(width).toBe(box);
    expect(svg.match(/<g id="/g)).toHaveLength(read.pieces.length);
    const side = readFileSync(join(out, 'core-side.svg'), 'utf8');
    const { layers } = JSON.parse(json) as { layers: unknown[] };
    expect(side.match(/fill="#e8e4da"/g)).toHaveLength(2 * layers.length);
    expect(side).toContain('stroke="#c22"');
  });

  it('lists pipes with their standards', async () => {
    expect(await core('--list')).toContain(
      'Schedule 40 1/2: 21.34 mm outside, wall 2.77; PVC pipe, Schedule 40, ASTM D1785',
    );
    expect(JSON.parse(await core('--list', '--json'))).toHaveProperty('pipes');
  });

  it('reads skins and staves', async () => {
    const text = await core(
      ...HANDLE,
      '--profile',
      '0:20,300:20,350:36,400:36',
      '--staves',
      '300-350=8,2',
      '--rule',
      'middle',
    );
    expect(text).toMatch(/\n8 staves 300 to 350: table [\d.]+°, taper [\d.]+°/);
    expect(await core(...HANDLE, '--profile', '0:20,300:30', '--skin', '2')).toMatch(
      /\nskin 1: 2 mm, 0 to 300, seam [\d.]+°, arcs /,
    );
  });

  it('refuses what it cannot read, and says how it is written', () => {
    for (const words of [
      [...HANDLE, 'model.obj'],
      ['--length', '900'],
      ['--pipe', 'PVC 32', '--diameter', '32', '--length', '900'],
      ['--pipe', 'PVC 32'],
      ['--pipe', 'PVC 32', '--length', '-5'],
      ['--pipe', 'PVC 32', '--length', '900', '--profile', '0:20,300:20'],
      [...HANDLE, '--profile', '0:20,300'],
      [...HANDLE, '--profile', 'a:b'],
      [...HANDLE, '--wind', 'pitch=22'],
      [...HANDLE, '--wind', 'width=25,pitch=22,gap=2'],
      [...HANDLE, '--wind', 'width=25,width=22'],
      [...HANDLE, '--wind', 'width=wide'],
      [...HANDLE, '--staves', '300=8'],
      [...HANDLE, '--place', 'head'],
      [...HANDLE, '--start-cap', 'thick'],
      [...HANDLE, '--sheet-size', '1000'],
      [...HANDLE, '--rule', 'larger'],
      [...HANDLE, '--turned', '0:20'],
    ])
      expect(() => parseCommand(['core', ...words], '2026-01-01'), words.join(' ')).toThrow(WrongUsage);
    expect(() => parseCommand(['stack', 'a.obj', '--sheets', '10', '--wind', 'width=3'], '2026-01-01')).toThrow(
      '--wind',
    );
  });

  it('refuses what cannot be built', async () => {
    await expect(core('--pipe', 'PVC 33', '--length', '900')).rejects.toThrow(Refused);
    await expect(core(...HANDLE, '--profile', '0:10,300:20')).rejects.toThrow('inside the core');
    await expect(core(...HANDLE, '--wind', 'width=25,pitch=0')).rejects.toThrow('pitch');
    await expect(core('--pipe', 'PVC 32', '--length', '30000')).rejects.toThrow('20 m');
  });
});
