import type { PartId } from '../base/ids.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { addJoin, removeJoin, type NewJoin } from './joins-commands.ts';
import type { PartJoin } from './joins.ts';
import type { Project } from './project.ts';

/** A join as a parts file tells of it: parts by their names. */
export type ListedJoin = NewJoin extends infer J ? (J extends NewJoin ? ByName<J> : never) : never;

type ByName<J> = {
  readonly [K in keyof J]: J[K] extends PartId
    ? string
    : J[K] extends readonly PartId[] | undefined
      ? readonly string[]
      : J[K];
};

/**
 * A project with joins of a parts file; one between the same parts takes the place of what was said before.
 * @returns fails with `parts/no-part` where a name is that of no part.
 */
export function withListedJoins(project: Project, listed: readonly ListedJoin[]): Result<Project> {
  let made = project;
  for (const join of listed) {
    const own = byIds(made, join);
    if (!own.ok) return own;
    const said = made.joins?.find((other) => areSame(other, own.value));
    if (said !== undefined) made = removeJoin(said.id).apply(made);
    made = addJoin(own.value).apply(made);
  }
  return ok(made);
}

function byIds({ parts, plain = [] }: Project, join: ListedJoin): Result<NewJoin> {
  const all = [...parts, ...plain];
  const named =
    join.kind === 'travel' ? (join.parts ?? []) : [join.part, join.kind === 'hole' ? join.through : join.on];
  const lost = named.find((name) => all.every((part) => part.name !== name));
  if (lost !== undefined)
    return fail(
      'parts/no-part',
      `There is no part “${lost}” to join: the prop has ${all.map(({ name }) => name).join(', ')}.`,
    );
  const idOf = (name: string): PartId => {
    const found = all.find((part) => part.name === name);
    if (found === undefined) throw new Error(`no part ${name}`);
    return found.id;
  };
  switch (join.kind) {
    case 'hole':
      return ok({ ...join, part: idOf(join.part), through: idOf(join.through) });
    case 'seat':
      return ok({ ...join, part: idOf(join.part), on: idOf(join.on) });
    case 'travel': {
      const { parts: names, ...rest } = join;
      return ok({ ...rest, ...(names === undefined ? {} : { parts: names.map(idOf) }) });
    }
  }
}

/** Whether two joins are of one kind and between the same parts. */
function areSame(a: PartJoin, b: NewJoin): boolean {
  if (a.kind === 'hole') return b.kind === 'hole' && a.part === b.part && a.through === b.through;
  if (a.kind === 'seat') return b.kind === 'seat' && a.part === b.part && a.on === b.on;
  return b.kind === 'travel' && (a.parts ?? []).join() === (b.parts ?? []).join();
}
