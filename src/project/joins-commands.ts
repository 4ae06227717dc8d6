import type { Command } from './commands.ts';
import type { PartJoin } from './joins.ts';
import { MOST_JOINS } from './part-limits.ts';
import type { Project } from './project.ts';

/** A join as it is before it is in a project: without an id. */
export type NewJoin = PartJoin extends infer J ? (J extends PartJoin ? Omit<J, 'id'> : never) : never;

/** Says how two parts have to do with each other, or where the prop comes apart. What is said already is not said twice; beyond {@link MOST_JOINS} nothing is. */
export const addJoin = (join: NewJoin): Command => ({
  label: 'join parts',
  apply(project) {
    const { joins = [] } = project;
    const said = JSON.stringify(join);
    const isSaid = joins.some(({ id: _, ...own }) => JSON.stringify(own) === said);
    if (isSaid || joins.length >= MOST_JOINS) return project;
    return { ...project, joins: [...joins, { ...join, id: freeJoinId(project) }] };
  },
});

/** Takes a join away; the parts stay as they stand. */
export const removeJoin = (id: string): Command =>
  onJoins('forget a join of parts', (joins) => joins.filter((join) => join.id !== id));

/**
 * Changes a join.
 * @param change   its fields; those of another kind are our mistake.
 * @param mergeKey changes in a row with one key undo as one.
 */
export const changeJoin = <J extends PartJoin>(
  id: string,
  change: Partial<Omit<J, 'id' | 'kind'>>,
  mergeKey?: string,
): Command => ({
  ...onJoins('change a join of parts', (joins) =>
    joins.map((join) => (join.id === id ? { ...join, ...change } : join)),
  ),
  ...(mergeKey === undefined ? {} : { mergeKey }),
});

/** The first of `join-1`, `join-2` … that is free. */
function freeJoinId({ joins = [] }: Pick<Project, 'joins'>): string {
  const taken = new Set(joins.map(({ id }) => id));
  for (let i = 1; ; i += 1) if (!taken.has(`join-${i}`)) return `join-${i}`;
}

function onJoins(label: string, change: (joins: readonly PartJoin[]) => readonly PartJoin[]): Command {
  return {
    label,
    apply(project) {
      const { joins = [], ...rest } = project;
      const after = change(joins);
      if (JSON.stringify(after) === JSON.stringify(joins)) return project;
      return after.length === 0 ? rest : { ...rest, joins: after };
    },
  };
}
