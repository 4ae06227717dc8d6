import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import { BODY_MEASURES } from '../../src/model/body-measures.ts';
import { removeBodyMeasure, setBodyMeasure, tieToBody, untieFromBody } from '../../src/project/body-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import { sizeBy } from '../../src/project/wear-commands.ts';
import { expectProblem } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';

const HASH = '0'.repeat(64);
const bare = newProject('bracer', { hash: HASH, fileName: 'bracer.obj', format: 'obj' });
const TIE = { measure: 'forearm-girth', easeMm: 15, at: { by: 'tape', tape: 'tape-1' } } as const;
const ARM = { name: 'forearm-girth', mm: 280 };
const tied = tieToBody(TIE).apply(setBodyMeasure(ARM).apply(bare));
const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;

describe('the table of the body', () => {
  it('holds each measure once, and nothing changes where nothing does', () => {
    const twice = setBodyMeasure({ ...ARM, mm: 290 }).apply(setBodyMeasure(ARM).apply(bare));
    expect(twice.body).toEqual([{ ...ARM, mm: 290 }]);
    expect(setBodyMeasure({ ...ARM, mm: 290 }).apply(twice)).toBe(twice);
    expect(removeBodyMeasure(ARM.name).apply(twice)).not.toHaveProperty('body');
    expect(removeBodyMeasure('height').apply(twice)).toBe(twice);
    for (const wrong of [
      { name: 'tail', mm: 300 },
      { ...ARM, mm: 0 },
      { ...ARM, mm: NaN },
      { ...ARM, mm: 1e9 },
    ])
      expect(() => setBodyMeasure(wrong)).toThrow(RangeError);
  });

  it('has measures with usual ranges, each named once', () => {
    expect(new Set(BODY_MEASURES.map(({ name }) => name)).size).toBe(BODY_MEASURES.length);
    for (const { usualMm } of BODY_MEASURES) expect(usualMm[0]).toBeLessThan(usualMm[1]);
  });
});

describe('a tie to the body', () => {
  it('is the size of the part until it is untied or sized otherwise; its measure stays as long', () => {
    expect(tied.parts[0].scale).toEqual({ by: 'body', ...TIE });
    expect(removeBodyMeasure(ARM.name).apply(tied)).toBe(tied);
    const size = { by: 'size', axis: 'longest', mm: 240 };
    expect(untieFromBody(240).apply(tied).parts[0].scale).toEqual(size);
    expect(untieFromBody(240).apply(bare)).toBe(bare);
    expect(sizeBy(1.5, 160).apply(tied).parts[0].scale).toEqual(size);
    expect(() => tieToBody({ ...TIE, easeMm: Infinity })).toThrow(RangeError);
    expect(() => tieToBody({ ...TIE, at: { by: 'extent', axis: 'x', share: 0 } })).toThrow(RangeError);
  });

  it('is saved and read back, and what is broken is refused', async () => {
    const sources = new Map([[HASH, { fileName: 'bracer.obj', bytes: new Uint8Array() }]]);
    const text = writeProjectFile(tied, sources);
    const along: Project = tieToBody({ ...TIE, at: { by: 'extent', axis: 'y', share: 0.9 } }).apply(tied);
    for (const project of [tied, along])
      expect(schemaFaults(SCHEMA, JSON.parse(writeProjectFile(project, sources)))).toEqual([]);
    const read = await readProjectFile(text, 'a.json');
    // The empty file's hash is another, which is asked about last.
    if (!read.ok) expect(read.problem.code).not.toBe('project/broken');
    for (const [from, to] of [
      ['"mm": 280', '"mm": -280'],
      ['"by": "tape"', '"by": "thumb"'],
      ['"easeMm": 15', '"easeMm": "wide"'],
      ['"name": "forearm-girth"', '"name": "tail"'],
    ])
      expectProblem(await readProjectFile(text.replace(from, to), 'a.json'), 'project/broken');
  });
});

describe('a body on the command line', () => {
  const make = (...words: string[]) => {
    const command = parseCommand(['make', 'bracer.obj', '--out', 'out', ...words], '2026-03-01');
    if (command.name !== 'make') throw new Error('no make');
    return command.choices;
  };

  it('sizes by a girth at a tape, or by a share along an axis', () => {
    const { scale, body, wear } = make('--body', 'forearm=280mm', '--ease', '15', '--girth-at', 'y=120');
    expect(scale).toEqual({ by: 'body', ...TIE });
    expect(body).toEqual([ARM]);
    expect(wear?.tapes?.[0]).toMatchObject({ id: 'tape-1', pointInFile: [0, 120, 0] });
    expect(make('--body', 'height=180 cm', '--body-along', 'y=0.9').scale).toEqual({
      by: 'body',
      measure: 'height',
      easeMm: 0,
      at: { by: 'extent', axis: 'y', share: 0.9 },
    });
    expect(make('--body=forearm=11 in', '--ease=-10', '--girth-at', 'y=1').scale).toMatchObject({ easeMm: -10 });
  });

  it.each([
    ['--body', 'tail=30'],
    ['--body', 'forearm=280'],
    ['--body', 'forearm', '--girth-at', 'y=1'],
    ['--body', 'forearm=-3', '--girth-at', 'y=1'],
    ['--body', 'forearm=280', '--girth-at', 'y=1', '--size', 'x=20'],
    ['--body', 'forearm=280', '--girth-at', 'y=1', '--body-along', 'y'],
    ['--body', 'height=1800', '--body-along', 'y=0'],
    ['--body-along', 'y'],
  ])('refuses %s %s', (...words) => {
    expect(() => make(...words)).toThrow(WrongUsage);
  });
});
