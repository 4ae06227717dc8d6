import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { artworkCommand } from '../../src/cli/artwork-command.ts';
import { scratchFolder } from './run-cli.ts';

const DRAWING = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
 <g id="badge"><path fill-rule="evenodd" d="M0 0h40v30h-40zM10 10h10v10h-10z"/></g><text>a</text></svg>`;

async function artwork(folder: string, ...words: string[]): Promise<string> {
  const file = join(folder, 'badge.svg');
  writeFileSync(file, DRAWING);
  const command = parseCommand(['artwork', file, ...words], '2026-01-01');
  if (command.name !== 'artwork') throw new Error(`read as ${command.name}`);
  return await artworkCommand(command.choices);
}

describe('artwork on the command line', () => {
  it('tells pieces and findings and writes artwork.json', async () => {
    const folder = scratchFolder();
    const told = await artwork(folder, '--width', '80', '--out', join(folder, 'out'));
    expect(told).toContain('1 piece, 80.0 mm x 60.0 mm, scaled by 2.0000'.replaceAll(' mm', '\u00a0mm'));
    expect(told).toContain('piece badge: 44\u00a0cm², 1 hole, 360.0\u00a0mm of line');
    expect(told).toContain('warning: text 1 is writing and left out: turn text into paths first.');
    const json = JSON.parse(readFileSync(join(folder, 'out', 'artwork.json'), 'utf8')) as { pieces: unknown[] };
    expect(json).toMatchObject({
      unit: 'mm',
      scale: 2,
      pieces: [{ name: 'badge', areaMm2: 4400, lengthMm: 360, holes: 1 }],
      findings: [{ code: 'artwork/text' }],
    });
  });

  it('writes the same on the screen with --json', async () => {
    const json = JSON.parse(await artwork(scratchFolder(), '--json')) as { pieces: { areaMm2: number }[] };
    expect(json.pieces[0].areaMm2).toBe(1100);
  });

  interface Made {
    readonly made: string;
    readonly figures: Readonly<Record<string, number>>;
    readonly widthMm: number;
    readonly pieces: readonly { readonly name: string; readonly areaMm2: number }[];
    readonly work?: {
      readonly pieces: readonly { readonly key: string }[];
      readonly steps: readonly { work: string }[];
    };
  }
  const crafted = async (...words: string[]): Promise<Made> =>
    JSON.parse(await artwork(scratchFolder(), ...words, '--json')) as Made;

  it.each([
    [['--thickness', '2'], 'cut', {}, 1100, 1],
    [['--offset', '2', '--corners', 'sharp'], 'offset', { distanceMm: 2 }, 44 * 34 - 36, 1],
    [['--offset=-2'], 'offset', { distanceMm: -2 }, 36 * 26 - (100 + 80 + 4 * Math.PI), 1],
    [['--inlay', '0.2', '--cut-width', '0.1'], 'inlay', { gapMm: 0.2, pocketMm: 0.15, insertMm: 0.05 }, null, 2],
    [['--raised', '2x2mm', '--edge', 'bevel,45'], 'raised', { layer1SetbackMm: 0, layer2SetbackMm: 2 }, 1100, 2],
    [
      ['--repeat', '5', '--round', '90', '--strip-width', '40'],
      'round',
      { count: 5, flatSpacingMm: 60.318579 },
      1100,
      5,
    ],
  ] as const)('%j', async (words, made, figures, area, count) => {
    const told = await crafted(...words);
    expect(told).toMatchObject({ made, figures });
    expect(told.pieces.length).toBe(count);
    if (area !== null) expect(Math.abs(told.pieces[0].areaMm2 - area)).toBeLessThan(0.01);
  });

  it('goes along and over other drawings, and tells steps and figures in words', async () => {
    const folder = scratchFolder();
    const other = (d: string, fill: string) => {
      const file = join(folder, `${fill}.svg`);
      const head = 'xmlns="http://www.w3.org/2000/svg" width="900mm" height="400mm" viewBox="0 0 900 400"';
      writeFileSync(file, `<svg ${head}><path d="${d}" fill="${fill}"/></svg>`);
      return file;
    };
    expect(await crafted('--repeat', '4', '--along', other('M0 0H600', 'none'))).toMatchObject({
      figures: { count: 4, spacingMm: 200, curveLengthMm: 600 },
      widthMm: 640,
    });
    const over = await crafted(
      '--least',
      '5',
      '--vary',
      '10',
      '--turn',
      '180',
      '--scatter',
      other('M0 0h600v300h-600z', 'red'),
    );
    expect(over.pieces.length).toBe(over.figures.count);
    expect(over.figures.count).toBeGreaterThan(20);
    const told = await artwork(folder, '--repeat', '50mm', '--round', '90');
    expect(told).toContain('step 2: Close the joint between its ends, 60.0 mm long.');
    expect(told).toContain('count: 6.000');
    expect(told).toContain('note: 6 at');
  });

  it('takes a known length by points or names', () => {
    const choice = (known: string) => {
      const command = parseCommand(['artwork', 'a.svg', '--known', known], '2026-01-01');
      return command.name === 'artwork' ? command.choices.choice.size : null;
    };
    expect(choice('eye,tip=120')).toEqual({ by: 'names', a: 'eye', b: 'tip', mm: 120 });
    expect(choice('0,0,50,0=12,5')).toEqual({ by: 'points', a: { x: 0, y: 0 }, b: { x: 50, y: 0 }, mm: 12.5 });
  });

  it.each([
    [['artwork'], 'artwork needs a file'],
    [['artwork', 'a.svg', 'b.svg'], 'artwork takes one file'],
    [['artwork', 'a.svg', '--known', 'eye=3'], '--known takes two names'],
    [['artwork', 'a.svg', '--known', 'a,b=3', '--width', '5'], 'not both'],
    [['artwork', 'a.svg', '--strokes', 'both'], '--strokes takes centre, outline'],
    [['artwork', 'a.svg', '--spacing', '5'], '--spacing is no option of artwork'],
    [['artwork', 'a.svg', '--offset', '1', '--inlay', '1'], 'give one of --offset and --inlay'],
    [['artwork', 'a.svg', '--offset', '1', '--repeat', '3'], '--repeat does not go with --offset'],
    [['artwork', 'a.svg', '--repeat', '3'], '--repeat goes with --round or --along'],
    [['artwork', 'a.svg', '--round', '90'], '--repeat is missing'],
    [['artwork', 'a.svg', '--round', '90', '--repeat', '2.5'], '--repeat takes a whole number'],
    [['artwork', 'a.svg', '--raised', '3'], '--raised takes sheets and their thickness'],
    [['artwork', 'a.svg', '--raised', '3x2mm', '--edge', 'round'], '--edge takes square'],
    [['make', 'a.obj', '--out', 'x', '--round', '5'], '--round is an option of artwork'],
    [['make', 'a.obj', '--out', 'x', '--close', '5'], '--close is an option of artwork'],
  ])('%j is refused', (words, text) => {
    expect(() => parseCommand(words, '2026-01-01')).toThrow(text);
  });
});
