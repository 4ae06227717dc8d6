import { expect, it } from 'vitest';
import { addRegion } from '../../src/project/commands.ts';
import { addColour, colourRegion, newColour, removeColour } from '../../src/project/finish-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { addSculpt } from '../../src/project/sculpt-commands.ts';
import { unknownColour } from '../../src/project/finish-schema.ts';

it('a colour that is removed is on no sculpt any more, whichever is worked on', () => {
  const source = { hash: 'a'.repeat(64), fileName: 'helm.obj', format: 'obj' } as const;
  const painted = [
    addColour(newColour('red', '#ff0000')),
    addRegion('crest', [1], 'normal'),
    colourRegion('area-1', 'colour-1'),
    addSculpt('another', source),
    removeColour('colour-1'),
  ].reduce((project, command) => command.apply(project), newProject('helm', source));
  expect(unknownColour(painted)).toBeNull();
});
