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
