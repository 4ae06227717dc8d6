import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { inspectCommand } from '../../src/cli/inspect-command.ts';
import { makeCommand } from '../../src/cli/make-command.ts';
import type { CliRun } from './run-cli.ts';

/** What `inspect` and `make` answer, in this process: for many small cases, where starting the program would take longer than the work. */
export async function runHere(...words: string[]): Promise<CliRun> {
  try {
    const command = parseCommand(words, '2026-03-01');
    if (command.name !== 'inspect' && command.name !== 'make') throw new Error(`${command.name} is not run here`);
    const told =
      command.name === 'inspect' ? inspectCommand(command.input, command.json) : makeCommand(command.choices);
    return { status: 0, stdout: await told, stderr: '' };
  } catch (error) {
    if (error instanceof Refused) return { status: 1, stdout: '', stderr: `${error.message}\n` };
    if (error instanceof WrongUsage) return { status: 2, stdout: '', stderr: `${error.message} See --help.\n` };
    throw error;
  }
}
