import type { Project } from '../project/project.ts';

/** What a part is called; null where there is none of that id. */
export const nameOfPart = (project: Project | null, id: string): string | null =>
  [...(project?.parts ?? []), ...(project?.plain ?? [])].find((part) => part.id === id)?.name ?? null;
