import { layerId, type LayerId, type PartId } from '../base/ids.ts';
import { sculptAtWork } from './at-work.ts';
import type { Command } from './commands.ts';
import { firstFoam, newSculpt } from './new-project.ts';
import { MOST_SCULPTS } from './part-limits.ts';
import { freePartId } from './plain-commands.ts';
import type { Project, SculptPart, SourceRef } from './project.ts';

/**
 * Adds a sculpt of which nothing is decided, after the others, and works on it. It begins with the foam of the one at work. Beyond
 * {@link MOST_SCULPTS} nothing is added.
 */
export const addSculpt = (name: string, source: SourceRef): Command => ({
  label: 'add a sculpt',
  apply(project) {
    if (project.parts.length >= MOST_SCULPTS) return project;
    const id = freePartId(project);
    const usual = sculptAtWork(project)?.layers.at(0)?.foam;
    const foam = project.foams.find((one) => one.id === usual) ?? firstFoam(project.foams);
    const sculpt = newSculpt({ part: id, layer: freeLayerId(project) }, name, source, foam);
    return { ...project, parts: [...project.parts, sculpt], atWork: id };
  },
});

/** Changes what a sculpt has as every part has it, whether it is at work or not. */
export const changeSculpt = (
  id: PartId,
  change: Partial<Pick<SculptPart, 'name' | 'copies' | 'transform'>>,
  label = 'change a part',
  mergeKey?: string,
): Command => ({
  label,
  ...(mergeKey === undefined ? {} : { mergeKey }),
  apply(project) {
    const before = project.parts.find((part) => part.id === id);
    if (before === undefined || isAlready(before, change)) return project;
    return { ...project, parts: project.parts.map((part) => (part === before ? { ...part, ...change } : part)) };
  },
});

/** Takes a sculpt away with all that was decided of it; another is worked on then. The last part of a prop stays. */
export const removeSculpt = (id: PartId): Command => ({
  label: 'take a part away',
  apply(project) {
    const parts = project.parts.filter((part) => part.id !== id);
    if (parts.length === project.parts.length || parts.length + (project.plain ?? []).length === 0) return project;
    const { atWork, ...rest } = project;
    return { ...rest, parts, ...(atWork === undefined || atWork === id ? {} : { atWork }) };
  },
});

const isAlready = (part: SculptPart, change: Partial<SculptPart>): boolean =>
  Object.entries(change).every(
    ([key, value]) => JSON.stringify(part[key as keyof SculptPart]) === JSON.stringify(value),
  );

/** Sheets have ids of their own across all sculpts. */
function freeLayerId({ parts }: Project): LayerId {
  const taken = new Set<string>(parts.flatMap(({ layers }) => layers.map(({ id }) => id)));
  for (let i = 1; ; i += 1) if (!taken.has(`layer-${i}`)) return layerId(`layer-${i}`);
}
