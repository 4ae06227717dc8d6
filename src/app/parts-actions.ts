import type { PartId } from '../base/ids.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { Command } from '../project/commands.ts';
import { emptyProject, firstFoam } from '../project/new-project.ts';
import { placeBeside } from '../project/part-place.ts';
import { addPlain, freePartId, removePlain, workOn } from '../project/plain-commands.ts';
import { sculptAtWork } from '../project/at-work.ts';
import type { Project } from '../project/project.ts';
import { removeSculpt } from '../project/sculpt-commands.ts';
import type { TriedShape } from '../worker/parts-api.ts';
import { EMPTY_BENCH, type Bench } from './bench-state.ts';
import { begunHere } from './language/begun-here.ts';
import { PART_WORDS } from './part-words.ts';
import type { Verb } from './verb.ts';
import type { Workbench } from './workbench.ts';

/** A shape that is not in the project yet, and what it came to when it was tried last. */
export interface DraftShape {
  readonly shape: string;
  readonly sizes: Readonly<Record<string, string>>;
  readonly tried: TriedShape | null;
}

/** Adds a shape beside all that stands on the bench. @returns with it the id it will have. */
export function newShapeCommand(
  project: Project,
  bench: Bench,
  name: string,
  { shape, sizes, tried }: DraftShape,
  foam: FoamSheet,
): { readonly command: Command; readonly id: PartId } {
  const transform = placeBeside(standingOn(bench), tried?.box ?? null, upOf(project));
  const part = { kind: 'shape', name, transform, copies: 1, foams: [foam.id], shape, sizes } as const;
  return { command: addPlain(part), id: freePartId(project) };
}

/** Corners of all that stands on the bench, packed x y z, mm. */
export const standingOn = ({ sculpt, plain, sculptsBeside }: Bench): readonly ArrayLike<number>[] => [
  ...(sculpt?.sized === true ? [sculpt.positions] : []),
  ...[...plain, ...sculptsBeside].flatMap(({ form }) => form ?? []),
];

/** What is up in the assembly: as the sculpt at work has it, else z. */
export const upOf = (project: Project | null): 'x' | 'y' | 'z' =>
  project === null ? 'y' : (sculptAtWork(project)?.upAxis ?? 'z');

/** A new job of one shape, in place of the one in hand. */
export function beginWithShape(bench: Workbench): void {
  const empty = begunHere(emptyProject(PART_WORDS.prop));
  const { command, id } = newShapeCommand(
    empty,
    EMPTY_BENCH,
    PART_WORDS.first.name,
    { shape: PART_WORDS.first.shape, sizes: {}, tried: null },
    firstFoam(empty.foams),
  );
  bench.adopt(command.apply(empty), []);
  bench.setView({ choice: { kind: 'part', part: id } });
}

/** What can be done with the part that is chosen. */
export function partVerbs(bench: Workbench, id: PartId): Verb[] {
  const { project } = bench;
  const sculpt = project?.parts.find((part) => part.id === id);
  if (project === null) return [];
  const words = PART_WORDS.fields;
  const isOnly = project.parts.length + (project.plain ?? []).length === 1;
  const remove = (): void => bench.run(sculpt === undefined ? removePlain(id) : removeSculpt(id));
  return [
    ...(sculpt === undefined || sculpt === bench.part
      ? []
      : [{ id: 'work-on', label: words.workOn, key: 'w', isNear: true, run: () => bench.run(workOn(id)) }]),
    ...(isOnly ? [] : [{ id: 'remove-part', label: words.remove, isNear: true, run: remove }]),
  ];
}
