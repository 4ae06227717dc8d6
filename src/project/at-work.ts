import { fail, ok, type Result } from '../base/result.ts';
import type { Project, SculptPart } from './project.ts';

/** The sculpt that is worked on: the one that was chosen, else the first; null where the project has none. */
export const sculptAtWork = ({ parts, atWork }: Pick<Project, 'parts' | 'atWork'>): SculptPart | null =>
  parts.find(({ id }) => id === atWork) ?? parts.at(0) ?? null;

/** @throws Error where the project has no sculpt. */
export function needSculptAtWork(project: Pick<Project, 'parts' | 'atWork'>): SculptPart {
  const part = sculptAtWork(project);
  if (part === null) throw new Error('a project without a sculpt');
  return part;
}

/** A project that seams can be looked for in; fails with `project/no-sculpt` where it is made of other parts alone. @param fileName it was read from. */
export const withSculpt = (project: Project, fileName: string): Result<Project> =>
  sculptAtWork(project) === null
    ? fail(
        'project/no-sculpt',
        `${fileName} holds parts of other kinds and no sculpt, so there is nothing to look for seams on: name one that has a sculpt.`,
      )
    : ok(project);
