import { expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { openInput } from '../../src/cli/open-input.ts';
import { Refused } from '../../src/cli/exit.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { newProject } from '../../src/project/new-project.ts';
import { addPlain } from '../../src/project/plain-commands.ts';
import { writeProjectFile } from '../../src/project/project-file.ts';

it('a project of other parts alone is refused with what to open instead, not broken off', async () => {
  const sculpt = { hash: '0'.repeat(64), fileName: 'grip.obj', format: 'obj' } as const;
  const star = { kind: 'shape', name: 'Badge', transform: IN_PLACE, copies: 1, shape: 'star', sizes: {} } as const;
  const alone = addPlain({ ...star, foams: [foamId('eva-6')] }).apply({ ...newProject('grip', sculpt), parts: [] });
  const bytes = new TextEncoder().encode(writeProjectFile(alone, new Map()));
  const opened = openInput({ path: 'grip.foamloft.json', name: 'grip.foamloft.json', bytes }, undefined);
  await expect(opened).rejects.toThrow(Refused);
  await expect(opened).rejects.toThrow('grip.foamloft.json holds parts of other kinds and no sculpt');
});
