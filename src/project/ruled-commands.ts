import type { Command } from './commands.ts';
import type { PaperChoice } from './project.ts';

/** Whether long straight strips are printed, or cut by the ruler from figures on the map. */
export const setRuled = (ruled: NonNullable<PaperChoice['ruled']>): Command => ({
  label: ruled === 'tell' ? 'cut straight strips by the ruler' : 'print straight strips',
  apply: (project) =>
    (project.paper.ruled ?? 'tell') === ruled ? project : { ...project, paper: { ...project.paper, ruled } },
});
