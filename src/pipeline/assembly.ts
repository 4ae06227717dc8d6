import type { Finding } from '../base/finding.ts';
import { Memo } from '../base/memo.ts';
import type { PartId } from '../base/ids.ts';
import type { InsertPlan } from '../model/insert.ts';
import type { PlainStep } from '../model/plain-piece.ts';
import type { PartJoin } from '../project/joins.ts';
import type { Project } from '../project/project.ts';
import { checkMatrix } from '../steps/assembly/placing.ts';
import type { LinesOfPieces } from '../steps/assembly/holes-on-pieces.ts';
import { cutHoleJoin, drawSeat } from './assembly-holes.ts';
import { letInAll, type PlannedInsert } from './assembly-inserts.ts';
import { AssemblyLines, type JoinOutcome } from './assembly-lines.ts';
import {
  standingPlain,
  standingSculpt,
  type AssemblyPlain,
  type AssemblySculpt,
  type StandingPart,
} from './assembly-parts.ts';
import { cutToTravel } from './assembly-travel.ts';
import { tellUnsaid } from './assembly-unsaid.ts';
import { remembered } from './remembered.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;
/** Parts whose surfaces are kept, and pairs that were held against each other. */
const KEPT_PARTS = 256;
const KEPT_PAIRS = 4096;

/** A part that no sculpt is parted for; of what is let in, how. */
export interface AssembledPlain extends AssemblyPlain {
  readonly letIn?: InsertPlan;
}

/** How the parts of a prop have to do with each other. */
export interface AssemblyOutcome {
  /** What other parts leave on each piece, by its id; a piece that none does is left out. */
  readonly lines: LinesOfPieces;
  /** In the order of the project. */
  readonly joins: readonly JoinOutcome[];
  /** What is done to put the parts together, after each is made. */
  readonly steps: readonly PlainStep[];
  readonly findings: readonly Finding[];
}

/** Nothing was held against anything. */
export const NO_ASSEMBLY: AssemblyOutcome = { lines: new Map(), joins: [], steps: [], findings: [] };

/** No joins, always the same object. */
const NO_JOINS: readonly PartJoin[] = [];

/** Holds all parts of a prop against each other where they stand. */
export class Assembly {
  readonly #known = new Memo<unknown[], AssemblyOutcome>(KEPT);
  readonly #parts = new Memo<unknown[], StandingPart>(KEPT_PARTS);
  readonly #pairs = new Memo<unknown[], AssemblyLines>(KEPT_PAIRS);

  /**
   * The same object while nothing of it changes.
   * @param sculpts  those that came as far as pieces.
   * @param plains   those that could be made.
   */
  of(
    { joins = NO_JOINS }: Pick<Project, 'joins'>,
    sculpts: readonly AssemblySculpt[],
    plains: readonly AssembledPlain[],
  ): AssemblyOutcome {
    if (sculpts.length + plains.length < 2 && joins.length === 0) return NO_ASSEMBLY;
    const parts = [...sculpts.map((one) => this.#sculpt(one)), ...plains.map((one) => this.#plain(one))];
    const key: unknown[] = [joins, ...parts, ...plains.map(({ letIn }) => letIn)];
    key.push(...sculpts.flatMap(({ sheets }) => sheets.map(({ pieces }) => pieces)));
    return remembered(this.#known, key, () => this.#assembled(joins, parts, sculpts, plains));
  }

  #assembled(
    joins: readonly PartJoin[],
    parts: readonly StandingPart[],
    sculpts: readonly AssemblySculpt[],
    plains: readonly AssembledPlain[],
  ): AssemblyOutcome {
    const into = new AssemblyLines();
    const partOf = (id: PartId): StandingPart | undefined => parts.find((part) => part.id === id);
    for (const join of joins) {
      if (join.kind === 'travel') {
        cutToTravel(join, parts, into);
        continue;
      }
      const [part, host] = [partOf(join.part), partOf(join.kind === 'hole' ? join.through : join.on)];
      if (part === undefined || host === undefined || part === host) {
        tellLost(join, into);
        continue;
      }
      if (join.kind === 'hole') cutHoleJoin(join, part, host, into);
      else drawSeat(join, part, host, into);
      if (part.copies > host.copies) tellOnePlace(part, host, into);
      tellOneHand(part, host.id, plains, into);
    }
    const inserts = plains.flatMap(({ part, letIn }): PlannedInsert[] =>
      part.kind === 'insert' && letIn !== undefined ? [{ part, plan: letIn }] : [],
    );
    letInAll(inserts, sculpts, plains, into);
    for (const { part } of inserts) {
      const host = partOf(part.into);
      if (host !== undefined && part.copies > host.copies) tellOnePlace(part, host, into);
      tellOneHand(part, part.into, plains, into);
    }
    const said = saidPairs(joins);
    parts.forEach((a, i) => {
      for (const b of parts.slice(i + 1)) {
        if (said.has(pairName(a.id, b.id)) || a.liesOn === b.id || b.liesOn === a.id) continue;
        into.findings.push(...this.#unsaid(a, b));
      }
    });
    const { lines, steps, findings } = into;
    return { lines, joins: into.joins, steps, findings };
  }

  #unsaid(a: StandingPart, b: StandingPart): readonly Finding[] {
    return remembered(this.#pairs, [a, b], () => {
      const own = new AssemblyLines();
      tellUnsaid(a, b, own);
      return own;
    }).findings;
  }

  #sculpt(sculpt: AssemblySculpt): StandingPart {
    const { part, sheets, wallSheets } = sculpt;
    const key = [
      part.id,
      part.name,
      part.transform,
      part.copies,
      wallSheets,
      // What was parted is put together anew in every run, from things that stay.
      ...sheets.flatMap(({ cut: { mesh, shell, shells, patches }, pieces, foam }) => [
        mesh,
        shell,
        ...shells,
        patches,
        pieces,
        foam,
      ]),
    ];
    return remembered(this.#parts, key, () => standingSculpt(sculpt));
  }

  #plain(plain: AssembledPlain): StandingPart {
    const { part, work, foams } = plain;
    return remembered(this.#parts, [part, work, ...foams], () => standingPlain(plain));
  }
}

/** Whether a part may be held against others: one whose place would change its size is told where it is made. */
export const canStand = ({ part }: { readonly part: { readonly transform: readonly number[] } }): boolean =>
  checkMatrix(part.transform).ok;

const pairName = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

const saidPairs = (joins: readonly PartJoin[]): ReadonlySet<string> =>
  new Set(
    joins.flatMap((join) =>
      join.kind === 'travel' ? [] : [pairName(join.part, join.kind === 'hole' ? join.through : join.on)],
    ),
  );

/** Each copy of the other part has one of them; where the rest stand, nothing is drawn. */
function tellOnePlace(
  { id, name, copies }: Pick<StandingPart, 'id' | 'name' | 'copies'>,
  host: StandingPart,
  into: AssemblyLines,
): void {
  into.tell(
    'warning',
    'assembly/one-place',
    `The prop has ${copies} of ${name}, and only where the first of them stands is it drawn on ${host.name}: hold the others to it when it is put together, and mark them there.`,
    id,
    { value: copies },
  );
}

/** Templates of a part are made for both hands before anything of others comes on them. */
function tellOneHand(
  { id, name }: Pick<StandingPart, 'id' | 'name'>,
  on: PartId,
  plains: readonly AssembledPlain[],
  into: AssemblyLines,
): void {
  const host = plains.find(({ part }) => part.id === on)?.part;
  if (host?.mirrored === undefined) return;
  into.tell(
    'warning',
    'assembly/one-hand',
    `Of ${host.name} ${host.mirrored.count} of ${host.copies} are mirror images, and ${name} is drawn as it lies on the others: turn those templates over to draw it on the mirror images.`,
    id,
    { value: host.mirrored.count },
  );
}

function tellLost(join: Exclude<PartJoin, { kind: 'travel' }>, into: AssemblyLines): void {
  const other = join.kind === 'hole' ? join.through : join.on;
  into.tell(
    'warning',
    'assembly/lost-part',
    join.part === other
      ? 'A part is joined to itself: forget that, or choose another.'
      : 'A part that is joined to another is not in the project or could not be made: forget that, or bring it back.',
    join.part,
  );
}
