import type { Command } from './commands.ts';
import type { PaperChoice } from './project.ts';

/** Whether pieces that mirror each other share a template, turned over for the second, or have one each. */
export const setMirrored = (mirrored: NonNullable<PaperChoice['mirrored']>): Command => ({
  label: mirrored === 'once' ? 'print mirrored pieces once' : 'print each of mirrored pieces',
  apply: (project) =>
    (project.paper.mirrored ?? 'once') === mirrored ? project : { ...project, paper: { ...project.paper, mirrored } },
});
