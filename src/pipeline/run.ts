import type { Finding } from '../base/finding.ts';
import type { Ok, Problem, Result } from '../base/result.ts';
import type { StepName } from '../model/bench-view.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { FoamId } from '../base/ids.ts';
import { sculptAtWork } from '../project/at-work.ts';
import type { Project } from '../project/project.ts';
import { NO_ASSEMBLY } from './assembly.ts';
import type { EarlyOutcome, Outcome } from './outcome.ts';
import { SculptRun } from './sculpt-run.ts';
import type { TrimSculptOf } from './trim-sculpt.ts';

export interface RunChoices {
  /** True when the seams come from a seam file: a pair that is no edge is then the file's fault (`seams/no-edge`). */
  readonly strictSeams?: boolean;
  /** Printed on the pages, `YYYY-MM-DD`. */
  readonly date?: string;
  /**
   * Told as soon as a patch is flat or near it, while the run goes on; left out where nobody looks. The result of the run is the same in
   * either case.
   */
  readonly onEarly?: (early: EarlyOutcome) => void;
}

/** Thrown inside a run to leave the chain; caught by the pipeline. */
export class Stopped extends Error {
  constructor(
    readonly step: StepName,
    readonly problem: Problem,
  ) {
    super(problem.code);
  }
}

/** What one run has gathered of a project so far. */
export class Run {
  /** Of the whole; those of a sculpt come to them when it has been told of. */
  readonly findings: Finding[] = [];
  /** In the order of the project. */
  readonly sculpts: readonly SculptRun[];
  pieces: Outcome['pieces'] = null;
  seams: Outcome['seams'] = null;
  strips: Outcome['strips'] = [];
  plain: Outcome['plain'] = [];
  /** What strips are laid on, once the sculpts are parted. */
  trimSculptOf: TrimSculptOf = () => null;
  assembly: Outcome['assembly'] = NO_ASSEMBLY;
  templates: Outcome['templates'] = null;
  turned: Outcome['turned'] = [];
  sheets: Outcome['sheets'] = null;
  paper: Outcome['paper'] = null;
  /** Where the work on the whole could not go on. */
  stopped: Outcome['stopped'] = null;
  readonly #madeNew = new Set<StepName>();

  constructor(
    readonly project: Project,
    readonly choices: RunChoices,
  ) {
    const atWork = sculptAtWork(project);
    // A seam file and who looks on are of the sculpt that is worked on.
    this.sculpts = project.parts.map((part, i) => new SculptRun(this, part, i + 1, part === atWork ? choices : {}));
  }

  /** The sculpt that is worked on; undefined where the project has none. */
  get atWork(): SculptRun | undefined {
    const atWork = sculptAtWork(this.project);
    return this.sculpts.find(({ wished }) => wished === atWork);
  }

  /** @throws Error where the project has no sculpt. */
  needAtWork(): SculptRun {
    const { atWork } = this;
    if (atWork === undefined) throw new Error('run: a project without a sculpt');
    return atWork;
  }

  made(...steps: readonly StepName[]): void {
    for (const step of steps) this.#madeNew.add(step);
  }

  get madeNew(): readonly StepName[] {
    return [...this.#madeNew];
  }

  /** A result that is known to stand, or the end of the work at that step. */
  take<T>(step: StepName, result: Result<T>): Ok<T> {
    if (!result.ok) throw new Stopped(step, result.problem);
    return result;
  }

  /** A sheet of the maker's stock. */
  foam(id: FoamId): FoamSheet {
    const sheet = this.project.foams.find((candidate) => candidate.id === id);
    if (sheet === undefined) throw new Error(`run: foam ${id} is not in the project`);
    return sheet;
  }
}
