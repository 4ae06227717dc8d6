import { partId, type PartId } from '../base/ids.ts';
import { formatLength } from '../base/format-length.ts';
import type { PlainPart } from '../project/plain-part.ts';
import type { Project, SculptPart } from '../project/project.ts';
import { sculptAtWork } from '../project/at-work.ts';
import { shapeText } from './data-words.ts';
import { allCut, type Bench } from './bench-state.ts';
import { PART_WORDS } from './part-words.ts';

/** A part as a list tells it. */
export interface PartFacts {
  readonly id: PartId;
  readonly name: string;
  readonly copies: number;
  /** Null where it is the core of an area of a sculpt: there it is said. */
  readonly part: SculptPart | PlainPart | null;
  readonly kind: string;
  /** Pieces to cut for all of it; null while that is not worked out. */
  readonly pieces: number | null;
  readonly foam: string;
  /** Faults and warnings. */
  readonly told: number;
  readonly isAtWork: boolean;
  readonly isMade: boolean;
}

/** Every part of a project, sculpts first. */
export function factsOfParts(project: Project, bench: Bench): readonly PartFacts[] {
  const atWork = sculptAtWork(project);
  const { lengthUnit } = project;
  const foamText = (mm: readonly number[]): string =>
    mm.length === 0 ? '' : PART_WORDS.foam(mm.map((one) => formatLength(one, lengthUnit)).join(', '));
  const sculpts = project.parts.map((part): PartFacts => {
    const isAtWork = part === atWork;
    const own = allCut(bench).filter((piece) => 'part' in piece && piece.part === part.id);
    return {
      ...headOf(part),
      part,
      kind: PART_WORDS.kind(part.kind),
      pieces: own.length === 0 ? null : own.reduce((sum, { quantity }) => sum + quantity, 0),
      foam: foamText(part.layers.map(({ thicknessMm }) => thicknessMm)),
      told: toldOf(bench, part.id, isAtWork ? (project.plain ?? []).map(({ id }) => id) : null),
      isAtWork,
      isMade: true,
    };
  });
  const piecesOf = (id: string): number =>
    (bench.pieces?.plain ?? []).filter((piece) => piece.part === id).reduce((sum, { quantity }) => sum + quantity, 0);
  const plain = (project.plain ?? []).map((part): PartFacts => {
    const view = bench.plain.find((one) => one.part === part.id);
    return {
      ...headOf(part),
      part,
      kind: kindOf(part),
      pieces: view === undefined ? null : piecesOf(part.id),
      foam: foamText(part.foams.flatMap((id) => project.foams.find((foam) => foam.id === id)?.thicknessMm ?? [])),
      told: toldOf(bench, part.id, null),
      isAtWork: false,
      isMade: view?.isMade !== false,
    };
  });
  const cores = bench.plain
    .filter(({ part }) => !(project.plain ?? []).some(({ id }) => id === part))
    .map((view): PartFacts => {
      const id = partId(view.part);
      const head = { id, name: view.name, copies: 1, part: null, kind: PART_WORDS.kind(view.kind), foam: '' };
      const told = toldOf(bench, id, null);
      return { ...head, pieces: piecesOf(id), told, isAtWork: false, isMade: view.isMade };
    });
  return [...sculpts, ...plain, ...cores];
}

const headOf = ({ id, name, copies }: SculptPart | PlainPart): Pick<PartFacts, 'id' | 'name' | 'copies'> => ({
  id,
  name,
  copies,
});

/** In one phrase. */
export const factsText = ({ kind, pieces, foam, copies, isMade }: PartFacts): string =>
  [
    kind,
    isMade ? (pieces === null ? PART_WORDS.notYet : PART_WORDS.pieces(pieces)) : PART_WORDS.notMade,
    ...(copies > 1 ? [PART_WORDS.copies(copies)] : []),
    foam,
  ]
    .filter((text) => text !== '')
    .join(', ');

const kindOf = (part: PlainPart): string =>
  part.kind === 'shape' ? PART_WORDS.shape(shapeText(part.shape)) : PART_WORDS.kind(part.kind);

/** @param others  where what names no part is told of this one: the parts that have their own. */
const toldOf = ({ findings }: Bench, id: string, others: readonly string[] | null): number =>
  findings.filter(
    ({ severity, where }) =>
      severity !== 'note' && (where.part === id || (others !== null && where.part === undefined)),
  ).length;
