import type { Project } from './project.ts';

/** A state of the project that was kept under a name. */
export interface KeptVersion {
  /** Its own among the kept versions. */
  readonly id: string;
  /** As the maker calls it; not empty, and no other has it. */
  readonly name: string;
  /** When it was kept: UTC, as `2026-01-31T09:30:00Z`. */
  readonly keptAt: string;
  readonly document: Document;
}

/** A project without the versions that are kept of it. */
export type Document = Omit<Project, 'versions'>;

/** Versions that one project keeps at most: a list that can still be read. */
export const MOST_VERSIONS = 50;

/** Longest name, characters. */
export const LONGEST_NAME = 80;

const NONE: readonly KeptVersion[] = [];

export const versionsOf = ({ versions = NONE }: Project): readonly KeptVersion[] => versions;

/** The project without its kept versions; itself where it has none. */
export function documentOf(project: Project): Document {
  if (project.versions === undefined) return project;
  const { versions: _, ...document } = project;
  return document;
}

/** The project with these versions kept in place of its own; itself where they are its own. */
export function withVersions(project: Project, versions: readonly KeptVersion[]): Project {
  if (versionsOf(project) === versions) return project;
  const document = documentOf(project);
  return versions.length === 0 ? document : { ...document, versions };
}
