import type { Problem } from '../base/result.ts';

/** The user's file or choice is at fault: one sentence, exit 1. */
export class Refused extends Error {
  /** Names the file where the fault is the file's; a fault of a choice (paper, margin) names the choice itself. */
  static from(problem: Problem, fileName: string): Refused {
    const isOfChoice = problem.code.startsWith('tile/') || problem.code.startsWith('paper/');
    return new Refused(isOfChoice || problem.text.includes(fileName) ? problem.text : `${fileName}: ${problem.text}`);
  }
}

/** The command line itself is wrong: one sentence, exit 2. */
export class WrongUsage extends Error {}
