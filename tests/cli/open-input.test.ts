import { expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { openInput } from '../../src/cli/open-input.ts';
import { Refused } from '../../src/cli/exit.ts';
import { proposeCommand } from '../../src/cli/propose-command.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { emptyProject } from '../../src/project/new-project.ts';
import { addPlain } from '../../src/project/plain-commands.ts';
import { writeProjectFile } from '../../src/project/project-file.ts';
import { scratchFiles } from './run-cli.ts';

const star = { kind: 'shape', name: 'Badge', transform: IN_PLACE, copies: 1, shape: 'star', sizes: {} } as const;
const alone = addPlain({ ...star, foams: [foamId('eva-6')] }).apply(emptyProject('grip'));
const text = writeProjectFile(alone, new Map());

it('a project of other parts alone is opened as it is', async () => {
  const bytes = new TextEncoder().encode(text);
  const opened = await openInput({ path: 'grip.foamloft.json', name: 'grip.foamloft.json', bytes }, undefined);
  expect(opened.project).toEqual(alone);
});

it('and seams cannot be looked for in it, which is told', async () => {
  const [input] = scratchFiles({ 'grip.foamloft.json': text });
  const end = { seconds: 1 };
  const choices = { input, out: `${input}.seams.json`, end, pieces: 'few', seed: 1 } as never;
  await expect(proposeCommand(choices, () => undefined)).rejects.toThrow(Refused);
  await expect(proposeCommand(choices, () => undefined)).rejects.toThrow(
    'grip.foamloft.json holds parts of other kinds and no sculpt',
  );
});
