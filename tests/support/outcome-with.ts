import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Project } from '../../src/project/project.ts';

/** The same outcome of a project of one sculpt after a change that makes nothing of the foam new. */
export function outcomeWith(outcome: Outcome, project: Project): Outcome {
  const [part] = project.parts;
  return { ...outcome, project, part, sculpts: outcome.sculpts.map((own) => ({ ...own, part })) };
}
