import type { Finding } from '../base/finding.ts';
import type { Work } from '../base/work.ts';
import type { Project, SculptPart } from '../project/project.ts';
import type { Run } from './run.ts';
import type { SculptRun } from './sculpt-run.ts';

/** Whether words must say which sculpt they speak of. */
const areSeveral = ({ parts }: Pick<Project, 'parts'>): boolean => parts.length > 1;

/** Work on a sculpt that says which one it is about, where there are several. */
export function workOnSculpt(project: Pick<Project, 'parts'>, { name }: SculptPart, work: Work): Work {
  if (!areSeveral(project)) return work;
  return { ...work, pause: (done, text) => work.pause(done, text === undefined ? text : `${name}: ${text}`) };
}

/**
 * What was found of a sculpt comes to what was found of the project; where there are several, each says of which. Where one could not go on
 * that is not worked on, that is told with it.
 */
export function tellOf(run: Run, own: SculptRun): void {
  const told = own.findings.splice(0);
  if (!areSeveral(run.project)) {
    run.findings.push(...told);
    return;
  }
  const { part, stopped } = own;
  run.findings.push(...told.map((finding) => toldOf(part, finding)));
  const isTold = run.findings.some(({ where, code }) => where.part === part.id && code === stopped?.problem.code);
  if (stopped !== null && own !== run.atWork && !isTold)
    run.findings.push(toldOf(part, { ...stopped.problem, severity: 'error' }));
}

const toldOf = ({ id, name }: SculptPart, finding: Finding): Finding => ({
  ...finding,
  text: `${name}: ${finding.text}`,
  where: { ...finding.where, part: id },
});
