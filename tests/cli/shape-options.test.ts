import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { shapeCommand, writtenShape } from '../../src/cli/shape-command.ts';
import { scratchFolder } from './run-cli.ts';

function shape(...words: string[]): string {
  const command = parseCommand(['shape', ...words], '2026-01-01');
  if (command.name !== 'shape') throw new Error(`read as ${command.name}`);
  return shapeCommand(command.choices);
}

const json = (...words: string[]) => JSON.parse(shape(...words, '--json')) as Record<string, never>;

describe('shape on the command line', () => {
  it('takes sizes with units, without quotes too', () => {
    expect(json('cone', 'base_radius=4', '1/2', 'in', 'height=240').sizes).toMatchObject({
      base_radius: 114.3,
      height: 240,
    });
    expect(json('branch', 'offset=-10', 'branch_radius=30').sizes).toMatchObject({ offset: -10 });
  });

  it('writes arcs as arcs', () => {
    const pieces = json('ring', 'segments=1').pieces as {
      outline: { segments: unknown[] }[];
      holes: { segments: unknown[] }[][];
    }[];
    expect(pieces[0].outline[0].segments).toEqual([
      { kind: 'arc', from: [100, 0], to: [100, expect.closeTo(0, 9)], centre: [0, 0], radiusMm: 100, turnDeg: 360 },
    ]);
    expect(pieces[0].holes[0][0].segments).toMatchObject([{ kind: 'arc', radiusMm: 60, turnDeg: -360 }]);
  });

  it('names the units of figures and sizes', () => {
    const { units, sizeUnits, seams } = json('frustum');
    expect(units).toMatchObject({ slant: 'mm', area: 'mm²', sector_angle_deg: 'deg' });
    expect(sizeUnits).toMatchObject({ height: 'mm' });
    expect(seams).toMatchObject([{ name: 'seam', pieces: ['frustum', 'frustum'], differenceMm: 0 }]);
  });

  it('tells figures, pieces, seams and warnings in words', () => {
    const text = shape('wrap', 'diameter=20', 'thickness=10');
    expect(text).toContain('  wrap_length 94.2477796 mm\n');
    expect(text).toContain('piece wrap, 1 of it, 28274.3339 mm²: bottom 94.2477796 mm');
    expect(text).toContain('seam seam: wrap end 300 mm, wrap start 300 mm');
    expect(text).toContain('warning: The sheet is bent so tightly');
  });

  it('lists every shape with its sizes, units and defaults', () => {
    const text = shape('--list');
    expect(text).toContain('\ncone: Right circular cone: its development is a sector.');
    expect(text).toContain('  base_radius (length in mm; default 100; over 0; at most 100000): radius of the base\n');
    const all = JSON.parse(shape('--list', '--json')) as { name: string; says: string; sizes: { unit: string }[] }[];
    expect(all.length).toBeGreaterThan(60);
    for (const { sizes } of all) for (const { unit } of sizes) expect(unit).toBeTypeOf('string');
    expect(shape('elbow', '--list')).toMatch(/^elbow: [\s\S]*bend_radius \(length in mm/);
  });

  it.each([
    [['hat'], 'There is no shape called “hat”'],
    [['cone', 'width=3'], 'The shape cone has no size width: it takes base_radius, height,'],
    [['cone', 'height=tall'], 'height is a length such as 120, 4 1/2 in or 114,3 mm, not tall.'],
    [['ring', 'inner_radius=200'], 'inner_radius must be less than outer_radius.'],
  ])('refuses %j in a sentence', (words, sentence) => {
    expect(() => shape(...words)).toThrow(Refused);
    expect(() => shape(...words)).toThrow(sentence);
  });

  it.each([[[]], [['cone', 'height']], [['cone', 'height=3', '--list']], [['cone', '--margin', '3']]])(
    'is used wrongly: %j',
    (words) => {
      expect(() => shape(...words)).toThrow(WrongUsage);
    },
  );
});

it('--out writes the pieces as SVG and DXF and names them', async () => {
  const folder = scratchFolder();
  const command = parseCommand(['shape', 'frustum', 'height=90', '--out', folder], '2026-01-01');
  if (command.name !== 'shape') throw new Error(`read as ${command.name}`);
  const told = await writtenShape(command.choices, command.choices.out ?? '');
  expect(told).toContain(`frustum.svg, frustum.dxf written to ${folder}`);
  expect(readdirSync(folder).sort()).toEqual(['frustum.dxf', 'frustum.svg']);
  const table = parseCommand(['shape', 'page_units', '--out', folder], '2026-01-01');
  if (table.name !== 'shape') throw new Error(`read as ${table.name}`);
  await expect(writtenShape(table.choices, folder)).rejects.toThrow('leave --out out');
  expect(() => parseCommand(['shape', '--list', '--out', folder], '2026-01-01')).toThrow(WrongUsage);
});
