import type { Command } from './commands.ts';
import { asItWas } from './kept-commands.ts';
import { documentOf } from './kept-version.ts';
import type { Project } from './project.ts';

/** Makes the project what an earlier state of it was: a change like any other. */
export const bringBackState = (state: Project): Command => ({
  label: 'bring back an earlier state',
  apply: (project) => asItWas(project, documentOf(state)),
});
