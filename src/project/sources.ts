import { isCoreModel } from '../model/clearance.ts';
import type { PlainSource } from './plain-part.ts';
import type { Part, Project, SourceRef } from './project.ts';
import { firstBy } from './first-by.ts';

/** Every file a sculpt is made from: its own first, then its cores, each once. */
export function sourcesOf({ source, core = [] }: Part): readonly SourceRef[] {
  return eachOnce([source, ...core.filter(isCoreModel).map((model) => model.source)]);
}

/** Every file a project and the versions kept of it are made from, each once. */
export const sourcesOfProject = ({ parts, plain = [], versions = [] }: Project): readonly PlainSource[] =>
  eachOnce([
    ...parts.flatMap(sourcesOf),
    ...plain.flatMap(plainSources),
    ...versions.flatMap(({ document }) => sourcesOfProject(document)),
  ]);

/** The files it cannot be without: a core, or what another part is made from, may have been missing before. */
export const neededSources = ({ parts, versions = [] }: Project): readonly PlainSource[] =>
  eachOnce([...parts.map(({ source }) => source), ...versions.flatMap(({ document }) => neededSources(document))]);

/** The files a part is made from that no sculpt is parted for. */
export const plainSources = ({
  source,
  other,
}: {
  readonly source?: PlainSource;
  readonly other?: PlainSource;
}): readonly PlainSource[] => [source, other].filter((one) => one !== undefined);

const firstByHash = firstBy(({ hash }: { readonly hash: string }) => hash);
const eachOnce = <T extends { readonly hash: string }>(all: readonly T[]): readonly T[] => all.filter(firstByHash);
