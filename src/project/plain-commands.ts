import { partId, type PartId } from '../base/ids.ts';
import type { Command } from './commands.ts';
import { MOST_PARTS } from './part-limits.ts';
import type { PlainPart } from './plain-part.ts';
import type { Project } from './project.ts';

/** A part as it is before it is in a project: without an id. */
export type NewPlain = PlainPart extends infer P ? (P extends PlainPart ? Omit<P, 'id'> : never) : never;

/** Adds a part that no sculpt is parted for, after the others. Beyond {@link MOST_PARTS} nothing is added. */
export const addPlain = (part: NewPlain): Command => ({
  label: 'add a part',
  apply(project) {
    const { plain = [] } = project;
    return plain.length >= MOST_PARTS
      ? project
      : { ...project, plain: [...plain, { ...part, id: freePartId(project) }] };
  },
});

/** Takes a part away, and what was ticked off of its pieces. The last part of a prop stays. */
export const removePlain = (id: PartId): Command => {
  const removal = onPlain('take a part away', (plain) => plain.filter((part) => part.id !== id));
  return {
    ...removal,
    apply(project) {
      const after = removal.apply(project);
      return after.parts.length + (after.plain ?? []).length === 0 ? project : after;
    },
  };
};

/**
 * Changes a part.
 * @param change   its fields; those of another kind are our mistake.
 * @param mergeKey changes in a row with one key undo as one: while a size is typed or a part is dragged.
 */
export const changePlain = <P extends PlainPart>(
  id: PartId,
  change: Partial<Omit<P, 'id' | 'kind'>>,
  label = 'change a part',
  mergeKey?: string,
): Command =>
  onPlain(label, (plain) => plain.map((part) => (part.id === id ? { ...part, ...change } : part)), mergeKey);

/** Works on another of the sculpts. */
export const workOn = (id: PartId): Command => ({
  label: 'work on another part',
  apply: (project) =>
    project.parts.some((part) => part.id === id) && project.atWork !== id ? { ...project, atWork: id } : project,
});

/** The first of `part-1`, `part-2` … that is free. */
export function freePartId({ parts, plain = [] }: Pick<Project, 'parts' | 'plain'>): PartId {
  const taken = new Set<string>([...parts, ...plain].map(({ id }) => id));
  for (let i = 1; ; i += 1) if (!taken.has(`part-${i}`)) return partId(`part-${i}`);
}

function onPlain(
  label: string,
  change: (plain: readonly PlainPart[]) => readonly PlainPart[],
  mergeKey?: string,
): Command {
  return {
    label,
    ...(mergeKey === undefined ? {} : { mergeKey }),
    apply(project) {
      const before = project.plain ?? [];
      const after = change(before);
      if (after.length === before.length && after.every((part, i) => isSame(part, before[i]))) return project;
      const { plain: _, ...rest } = project;
      return after.length === 0 ? rest : { ...rest, plain: after };
    },
  };
}

/** Whether two parts say the same; their fields are JSON. */
const isSame = (a: PlainPart, b: PlainPart): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);
