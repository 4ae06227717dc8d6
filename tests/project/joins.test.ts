import { describe, expect, it } from 'vitest';
import { foamId, partId } from '../../src/base/ids.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { addJoin, changeJoin, removeJoin } from '../../src/project/joins-commands.ts';
import { withListedJoins } from '../../src/project/joins-listed.ts';
import { newProject } from '../../src/project/new-project.ts';
import { addPlain } from '../../src/project/plain-commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { HoleJoin } from '../../src/project/joins.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';

const bare = newProject('prop', { hash: '0'.repeat(64), fileName: 'head.obj', format: 'obj' });
const base = { transform: IN_PLACE, copies: 1, foams: [foamId('eva-6')] };
const withHandle = addPlain({
  ...base,
  kind: 'shape',
  name: 'Handle',
  shape: 'pipe_wrap',
  sizes: { diameter: '28 mm', length: '300 mm' },
}).apply(bare);
const hole = { kind: 'hole', part: partId('part-2'), through: partId('part-1') } as const;

describe('joins of parts', () => {
  it('are said, changed and forgotten; what is said twice is said once', () => {
    const said = addJoin(hole).apply(withHandle);
    expect(said.joins).toEqual([{ ...hole, id: 'join-1' }]);
    expect(addJoin(hole).apply(said)).toBe(said);
    const roomy = changeJoin<HoleJoin>('join-1', { roomMm: 1 }).apply(said);
    expect(roomy.joins).toMatchObject([{ roomMm: 1 }]);
    expect(removeJoin('join-1').apply(roomy)).toEqual(withHandle);
    expect(removeJoin('join-2').apply(said)).toBe(said);
  });

  it('go through a file with what is let in, and a broken one is refused', async () => {
    const magnet = addPlain({
      ...base,
      kind: 'insert',
      name: 'magnet',
      wish: { kind: 'magnet', size: 'Disc 10 x 2', pole: 'north', pair: 'A' },
      into: partId('part-1'),
    }).apply(addJoin(hole).apply(withHandle));
    // Without the sculpt, whose file would have to be there.
    const whole = addJoin({ kind: 'travel', along: [0, 0, 1], bagMm: 400, joint: { kind: 'strap' } }).apply(magnet);
    const all = { ...whole, parts: [] };
    const text = writeProjectFile(all, new Map());
    expect(expectOk(await readProjectFile(text, 'prop.json')).project).toEqual(all);
    const far = text.replace(/"into": ?"part-1"/, '$&, "at": { "piece": "wrap", "x": 1e300, "y": 0, "turnDeg": 0 }');
    expectProblem(await readProjectFile(far, 'prop.json'), 'project/broken');
    expectProblem(await readProjectFile(text.replace(/"bagMm": ?400/, '"bagMm": -1'), 'prop.json'), 'project/broken');
  });

  it('of a parts file name parts, and take the place of what was said between the same', () => {
    const said = expectOk(withListedJoins(withHandle, [{ kind: 'hole', part: 'Handle', through: 'prop' }]));
    expect(said.joins).toEqual([{ ...hole, id: 'join-1' }]);
    const again = expectOk(withListedJoins(said, [{ kind: 'hole', part: 'Handle', through: 'prop', roomMm: 2 }]));
    expect(again.joins).toHaveLength(1);
    expect(again.joins).toMatchObject([{ roomMm: 2 }]);
    expect(
      expectProblem(withListedJoins(said, [{ kind: 'seat', part: 'Badge', on: 'prop' }]), 'parts/no-part').text,
    ).toContain('Handle');
  });
});
