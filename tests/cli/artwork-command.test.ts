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
    [['artwork', 'a.svg', '--thickness', '5'], '--thickness is no option of artwork'],
    [['make', 'a.obj', '--out', 'x', '--close', '5'], '--close is an option of artwork'],
  ])('%j is refused', (words, text) => {
    expect(() => parseCommand(words, '2026-01-01')).toThrow(text);
  });
});
