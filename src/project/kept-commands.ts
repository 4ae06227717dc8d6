import type { Command } from './commands.ts';
import { documentOf, LONGEST_NAME, MOST_VERSIONS, versionsOf, withVersions, type Document } from './kept-version.ts';
import type { Project } from './project.ts';

/**
 * Keeps a state of the project under a name. What is kept shares all that has not changed since, and leaves the paper as it is.
 * Without a name, or where another version has it, or beyond {@link MOST_VERSIONS}, nothing is kept.
 * @param keptAt    as `KeptVersion.keptAt`.
 * @param document  the state; left out: as the project is when the command is made.
 */
export const keepVersion = (name: string, keptAt: string, document?: Document): Command => ({
  label: 'keep a version',
  apply(project) {
    const versions = versionsOf(project);
    const free = freeName(project, name);
    if (free === null || versions.length >= MOST_VERSIONS) return project;
    const id = freeId(versions.map((version) => version.id));
    return withVersions(project, [...versions, { id, name: free, keptAt, document: document ?? documentOf(project) }]);
  },
});

/** Without a name, or where another version has it, the old one stays. */
export const renameVersion = (id: string, name: string): Command => ({
  label: 'name a kept version',
  apply(project) {
    const free = freeName(project, name);
    if (free === null) return project;
    return withVersions(
      project,
      versionsOf(project).map((version) => (version.id === id ? { ...version, name: free } : version)),
    );
  },
});

export const removeVersion = (id: string): Command => ({
  label: 'remove a kept version',
  apply(project) {
    const rest = versionsOf(project).filter((version) => version.id !== id);
    return rest.length === versionsOf(project).length ? project : withVersions(project, rest);
  },
});

/** Makes the project what it was when the version was kept: a change like any other. */
export const fetchVersion = (id: string): Command => ({
  label: 'fetch back a kept version',
  apply(project) {
    const version = versionsOf(project).find((kept) => kept.id === id);
    return version === undefined ? project : asItWas(project, version.document);
  },
});

/**
 * A project as an earlier state of it says, with the versions it keeps now. What was done to paper and foam since stays ticked off: no command
 * takes back a cut, and pieces that are no longer as they were cut are told.
 */
export function asItWas(project: Project, earlier: Document): Project {
  if (documentOf(project) === earlier) return project;
  const { done, doneSteps } = project;
  const { done: _, doneSteps: __, ...rest } = earlier;
  const ticked = {
    ...rest,
    ...(done === undefined ? {} : { done }),
    ...(doneSteps === undefined ? {} : { doneSteps }),
  };
  return withVersions(ticked, versionsOf(project));
}

/** A name as it is kept: trimmed and not too long; null where it is empty or another version has it. */
export function freeName(project: Project, name: string): string | null {
  const short = name.trim().slice(0, LONGEST_NAME).trim();
  return short === '' || versionsOf(project).some((version) => version.name === short) ? null : short;
}

function freeId(taken: readonly string[]): string {
  for (let n = taken.length + 1; ; n += 1) if (!taken.includes(`version-${n}`)) return `version-${n}`;
}
