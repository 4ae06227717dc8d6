import type { FaultReport, Problem } from '../base/result.ts';
import { shownSentence } from '../base/shown-text.ts';

/** The user's file or choice is at fault: one sentence, exit 1. */
export class Refused extends Error {
  /** To be kept beside what was asked for, where the fault is the program's own. */
  readonly report: FaultReport | undefined;

  constructor(text: string, report?: FaultReport) {
    super(shownSentence(text));
    this.report = report;
  }

  /** Names the file where the fault is the file's; a fault of a choice (paper, margin) names the choice itself. */
  static from(problem: Problem, fileName: string): Refused {
    const isOfChoice = problem.code.startsWith('tile/') || problem.code.startsWith('paper/');
    const text = isOfChoice || problem.text.includes(fileName) ? problem.text : `${fileName}: ${problem.text}`;
    return new Refused(text, problem.report);
  }
}

/** The command line itself is wrong: one sentence, exit 2. */
export class WrongUsage extends Error {
  constructor(text: string) {
    super(shownSentence(text));
  }
}
