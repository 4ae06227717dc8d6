import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { artworkCommand } from '../../src/cli/artwork-command.ts';
import { greyPng } from '../support/png-of.ts';
import { coverageShade } from '../support/shade.ts';
import { scratchFolder } from './run-cli.ts';

const DISC = greyPng(
  100,
  80,
  coverageShade((x, y) => Math.hypot(x - 50, y - 40) < 30, 6),
);

async function artwork(folder: string, name: string, bytes: Uint8Array | string, ...words: string[]): Promise<string> {
  const file = join(folder, name);
  writeFileSync(file, bytes);
  const command = parseCommand(['artwork', file, ...words], '2026-01-01');
  if (command.name !== 'artwork') throw new Error(`read as ${command.name}`);
  return await artworkCommand(command.choices);
}

describe('a picture on the command line', () => {
  it('is told by what it is, not by its name, and gives the same files as a drawing', async () => {
    const folder = scratchFolder();
    const told = await artwork(folder, 'disc.dat', DISC, '--known', '0,0,50,0=50', '--out', join(folder, 'out'));
    expect(told).toContain('1 piece, 60.0\u00a0mm x 60.0\u00a0mm');
    expect(told).toContain('piece area 1: 28\u00a0cm², 0 holes');
    expect(told).toContain('note: Scaled by the known length of 50.0 mm over 50.0 pixels: one pixel is 1.0000 mm.');
    expect(told).toMatch(/note: Curves are no farther than 0\.\d+ mm from the line in the picture/);
    const json = JSON.parse(readFileSync(join(folder, 'out', 'artwork.json'), 'utf8')) as object;
    expect(json).toMatchObject({
      unit: 'mm',
      pieces: [{ name: 'area 1', holes: 0 }],
      trace: { scaledBy: 'points', mmPerPx: [1, 1], corners: 0, light: 'drawn', photo: null },
    });
  });

  it('is set straight by a rectangle or by places, with lengths held against it', async () => {
    const square = ['--square', '10,10,90,10,90,70,10,70=160x120', '--check', '20,40,80,40=120'];
    const told = await artwork(scratchFolder(), 'a.png', DISC, ...square, '--light', 'drawn');
    expect(told).toContain('1 piece, 120.0\u00a0mm x 120.0\u00a0mm');
    expect(told).toContain('note: A known length of 120.00 mm is found longer by 0.000 mm.');
    expect(told).toContain('The bend of the lens is not corrected');
    const places = ['10,10=0,120', '90,10=160,120', '90,70=160,0', '10,70=0,0', '50,40=80,60'].flatMap((one) => [
      '--place',
      one,
    ]);
    const json = JSON.parse(await artwork(scratchFolder(), 'a.png', DISC, ...places, '--json')) as object;
    expect(json).toMatchObject({ trace: { photo: { rmsMm: 0, isExact: false }, light: 'photo' } });
  });

  it('goes on to be worked', async () => {
    const told = await artwork(scratchFolder(), 'a.png', DISC, '--width', '60', '--offset', '2');
    expect(told).toContain('64.0\u00a0mm x 64.0\u00a0mm');
  });

  it.each([
    [['--square', '1,2,3=4x5'], '--square takes numbers as'],
    [['--square', '1,2,3,4,5,6,7,8=0x5'], 'sizes over 0 mm'],
    [['--place', '1,2'], '--place takes numbers as'],
    [['--check', '1,2,3,4=0'], 'a length over 0 mm'],
    [['--crop', '1,2,3'], '--crop takes two corners'],
    [['--threshold', '101'], '--threshold takes a number from 0 to 100'],
    [['--dpi', '300', '--height', '5'], 'give one of --height and --dpi'],
    [['--light', 'red'], '--light takes drawn, photo'],
  ])('%j is refused', (words, text) => {
    expect(() => parseCommand(['artwork', 'a.png', ...words], '2026-01-01')).toThrow(text);
  });

  it('refuses options of the other kind of file', async () => {
    await expect(artwork(scratchFolder(), 'a.png', DISC, '--width', '9', '--close', '1')).rejects.toThrow(
      '--close is for drawings',
    );
    await expect(artwork(scratchFolder(), 'a.png', DISC, '--known', 'a,b=3')).rejects.toThrow('is for drawings');
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9v9z"/></svg>';
    await expect(artwork(scratchFolder(), 'a.svg', svg, '--threshold', '40')).rejects.toThrow(
      '--threshold is for PNG and JPEG',
    );
    await expect(artwork(scratchFolder(), 'a.png', DISC)).rejects.toThrow(
      'a.png: The picture does not say how large it is',
    );
  });
});
