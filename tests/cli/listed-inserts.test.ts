import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Refused } from '../../src/cli/exit.ts';
import { withParts } from '../../src/cli/parts-option.ts';
import { emptyProject } from '../../src/project/new-project.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { scratchFiles } from './run-cli.ts';

const SCHEMA = JSON.parse(readFileSync('shared/parts.schema.json', 'utf8')) as Schema;

const wrap = (name: string, diameter: string) => ({
  kind: 'shape',
  name,
  foam: '6 mm',
  shape: 'pipe_wrap',
  sizes: { diameter, length: '200 mm' },
});
const LANTERN = {
  version: 1,
  parts: [wrap('Post', '100 mm'), { ...wrap('Arm', '28 mm'), place: { at: [0, 0, 100], facing: [0, 1, 0] } }],
  inserts: [
    {
      name: 'Magnet',
      into: 'Post',
      wish: { kind: 'magnet', size: 'Disc 10 x 3', pole: 'north' },
      at: { piece: 'wrap', x: 40, y: 40, turnDeg: 0 },
    },
  ],
  joins: [{ kind: 'hole', part: 'Arm', through: 'Post' }],
};

describe('a parts file', () => {
  const fileOf = (content: unknown): string => scratchFiles({ 'parts.json': JSON.stringify(content) })[0];

  it('also tells what is let in and how parts are joined, by their names', async () => {
    expect(schemaFaults(SCHEMA, LANTERN)).toEqual([]);
    const { project } = await withParts(emptyProject('lantern'), fileOf(LANTERN));
    const [post, arm, magnet] = project.plain ?? [];
    expect(magnet).toMatchObject({ kind: 'insert', into: post.id, foams: [expect.any(String)] });
    expect(project.joins).toEqual([{ id: 'join-1', kind: 'hole', part: arm.id, through: post.id }]);
    const again = await withParts(project, fileOf(LANTERN));
    expect(again.project.plain).toHaveLength(3);
    expect(again.project.joins).toHaveLength(1);
  });

  it('that joins what is not there, or lets in what has the name of another part, is refused', async () => {
    const lost = { ...LANTERN, joins: [{ kind: 'seat', part: 'Lamp', on: 'Post' }] };
    await expect(withParts(emptyProject('lantern'), fileOf(lost))).rejects.toThrow(Refused);
    const [magnet] = LANTERN.inserts;
    for (const inserts of [[{ ...magnet, name: 'Post' }], [magnet, magnet]])
      await expect(withParts(emptyProject('lantern'), fileOf({ ...LANTERN, inserts }))).rejects.toThrow('of its own');
  });
});
