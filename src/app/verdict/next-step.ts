import { sculptAtWork } from '../../project/at-work.ts';
import type { Project } from '../../project/project.ts';
import { piecesToPrint, standingOf } from '../../project/piece-standing.ts';
import type { ShopView } from '../../worker/shop-api.ts';
import { workOrder } from '../at-bench/work-order.ts';
import { lineState } from '../at-bench/work-ticks.ts';
import { allCut, type Bench } from '../bench-state.ts';
import { hasMarks } from '../edge-facts.ts';
import { unseenFindings } from './told-findings.ts';

/** What is best done next, in the order of the work. */
export type NextKind =
  | 'open'
  | 'read'
  | 'size'
  | 'part'
  | 'take'
  | 'foam'
  | 'sheets'
  | 'see'
  | 'wait'
  | 'print'
  | 'changed'
  | 'tick'
  | 'cut'
  | 'glue'
  | 'finish'
  | 'done';

export interface NextStep {
  readonly kind: NextKind;
  /** The verb that leads there; null where there is nothing but to wait. */
  readonly verb: string | null;
  /** Of `see` how many findings, of `changed`, `tick` and `cut` how many pieces, of `finish` how many lines of the work; else 0. */
  readonly count: number;
}

/** What the next step follows from. */
export interface JobFacts {
  readonly project: Project | null;
  readonly bench: Bench;
  /** Findings that were shown, by their keys. */
  readonly seen: readonly string[];
  /** Whether the pages as they are were saved or printed. */
  readonly isPaperOut: boolean;
  /** Whether something is being worked out. */
  readonly isWorking: boolean;
  /** The work at the bench; null or missing where it is not known yet. */
  readonly shop?: ShopView | null;
  /** How many proposals of seams lie before the maker. Missing: none. */
  readonly offered?: number;
}

/** Surfaces that cannot be laid flat as they are: they ask for a seam. */
const ASK_FOR_SEAMS = ['cut/closed', 'cut/handle', 'cut/nothing-flat', 'flatten/not-flat-able'];

const step = (kind: NextKind, verb: string | null, count = 0): NextStep => ({ kind, verb, count });

/** The one thing that is best done next. */
export function nextStep(facts: JobFacts): NextStep {
  const { project } = facts;
  if (project === null || project.parts.length + (project.plain?.length ?? 0) === 0) return step('open', 'open');
  return stepOfSculpt(facts) ?? stepOfFindings(facts) ?? stepOfPaper(facts);
}

/** What a sculpt asks for before it has pieces. */
function stepOfSculpt({ project, bench, isWorking, offered = 0 }: JobFacts): NextStep | null {
  const { sculpt, stopped, findings } = bench;
  if (project === null || project.parts.length === 0) return null;
  if (stopped?.step === 'read') return step('read', 'go-size');
  if (sculpt === null) return isWorking ? step('wait', null) : step('read', 'go-size');
  if (!sculpt.sized || stopped?.step === 'size') return step('size', 'go-size');
  if (offered > 0 && !hasMarks(sculptAtWork(project))) return step('take', 'go-proposals');
  const codes = [...findings.map(({ code }) => code), stopped?.problem.code ?? ''];
  if (stopped?.step === 'seams' || codes.some((code) => ASK_FOR_SEAMS.includes(code))) return step('part', 'go-seams');
  if (stopped?.step === 'shell') return step('foam', 'go-foam');
  if (stopped?.step === 'nest' || codes.includes('nest/too-large')) return step('sheets', 'go-sheets');
  return null;
}

function stepOfFindings({ bench, seen }: JobFacts): NextStep | null {
  const { length } = unseenFindings(bench, seen);
  return length === 0 ? null : step('see', 'see-findings', length);
}

/** What is to be done with the pages: print, tick off, cut, glue, finish, until all is ticked. */
function stepOfPaper(facts: JobFacts): NextStep {
  const { project, bench, isPaperOut } = facts;
  const pieces = allCut(bench);
  if (bench.paper === null || pieces.length === 0) return step('wait', null);
  const wanted = piecesToPrint(project?.done, pieces).length;
  if (wanted > 0 && isPaperOut) return step('tick', 'go-paper', wanted);
  if (wanted > 0) return wanted < pieces.length ? step('changed', 'save-changed', wanted) : step('print', 'save-pdf');
  const uncut = standingOf(project?.done, pieces).filter(({ foam }) => foam !== 'cut').length;
  return uncut > 0 ? step('cut', 'go-cuts', uncut) : stepOfFoam(facts);
}

/** What is to be done with foam that is cut. That it was bevelled and formed follows from its being glued. */
function stepOfFoam({ project, bench, shop = null }: JobFacts): NextStep {
  if (project === null || shop === null) return step('glue', 'go-gluing');
  const open = workOrder(project, bench, shop).filter((line) => lineState(project, line) !== 'done');
  if (open.some(({ phase }) => phase === 'glue')) return step('glue', 'go-gluing');
  const rest = open.filter(({ phase }) => phase === 'parts' || phase === 'finish').length;
  return rest > 0 ? step('finish', 'at-bench', rest) : step('done', null);
}
