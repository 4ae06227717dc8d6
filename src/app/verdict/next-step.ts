import { sculptAtWork } from '../../project/at-work.ts';
import type { Project } from '../../project/project.ts';
import { piecesToPrint, standingOf } from '../../project/piece-standing.ts';
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
  | 'glue';

export interface NextStep {
  readonly kind: NextKind;
  /** The verb that leads there; null where there is nothing but to wait. */
  readonly verb: string | null;
  /** Of `see` how many findings, of `changed`, `tick` and `cut` how many pieces; else 0. */
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

/** What is to be done with the pages: print, tick off, cut, glue. */
function stepOfPaper({ project, bench, isPaperOut }: JobFacts): NextStep {
  const pieces = allCut(bench);
  if (bench.paper === null || pieces.length === 0) return step('wait', null);
  const wanted = piecesToPrint(project?.done, pieces).length;
  if (wanted > 0 && isPaperOut) return step('tick', 'go-paper', wanted);
  if (wanted > 0) return wanted < pieces.length ? step('changed', 'save-changed', wanted) : step('print', 'save-pdf');
  const uncut = standingOf(project?.done, pieces).filter(({ foam }) => foam !== 'cut').length;
  return uncut > 0 ? step('cut', 'go-cuts', uncut) : step('glue', 'go-gluing');
}
