import type { FoamId } from '../base/ids.ts';
import { standingOf } from '../pipeline/plain/placed-part.ts';
import type { ListedInsert } from '../project/insert-part.ts';
import { firstFoam } from '../project/new-project.ts';
import { addPlain, type NewPlain } from '../project/plain-commands.ts';
import type { Project } from '../project/project.ts';
import { WrongUsage } from './exit.ts';

/**
 * A project with inserts of a parts file; one of a name that is there takes its place.
 * @param foamOf  the foam that a text names.
 * @throws WrongUsage
 */
export function withListedInserts(
  project: Project,
  listed: readonly ListedInsert[],
  foamOf: (text: string) => FoamId,
): Project {
  const others = [...project.parts, ...(project.plain ?? [])].filter(({ kind }) => kind !== 'insert');
  const doubled = listed.find(
    ({ name }, i) => others.some((part) => part.name === name) || listed.findIndex((one) => one.name === name) !== i,
  );
  if (doubled !== undefined)
    throw new WrongUsage(`What is let in as ${doubled.name} has the name of another part: give it one of its own.`);
  return listed.reduce((made, { name, into, wish, at, place, foam, copies = 1 }): Project => {
    const all = [...made.parts, ...(made.plain ?? [])];
    const host = all.find((part) => part.name === into);
    if (host === undefined)
      throw new WrongUsage(
        `${name} is let into “${into}”, which is no part of the prop: it has ${all.map((part) => part.name).join(', ')}.`,
      );
    const standing = standingOf(place ?? {});
    if (!standing.ok) throw new WrongUsage(standing.problem.text);
    const part: NewPlain = {
      kind: 'insert',
      name,
      transform: standing.value.transform,
      copies,
      foams: foam?.map(foamOf) ?? [firstFoam(made.foams).id],
      wish,
      into: host.id,
      ...(at === undefined ? {} : { at }),
    };
    const old = made.plain?.find((one) => one.name === name);
    if (old === undefined) return addPlain(part).apply(made);
    return { ...made, plain: made.plain?.map((one) => (one === old ? { ...part, id: old.id } : one)) ?? [] };
  }, project);
}
