import type { Problem } from '../base/result.ts';

/** The user's file or choice is at fault: one sentence, exit 1. */
export class Refused extends Error {
  static from(problem: Problem, fileName: string): Refused {
    return new Refused(problem.text.includes(fileName) ? problem.text : `${fileName}: ${problem.text}`);
  }
}

/** The command line itself is wrong: one sentence, exit 2. */
export class WrongUsage extends Error {}
