import { shownLines } from '../base/shown-text.ts';
import { parseCommand } from './args.ts';
import { artworkCommand } from './artwork-command.ts';
import { compareCommand } from './compare-command.ts';
import { coreCommand } from './core-command.ts';
import { Refused, WrongUsage } from './exit.ts';
import { inspectCommand } from './inspect-command.ts';
import { makeCommand } from './make-command.ts';
import { nestCommand } from './nest-command.ts';
import { writeEach } from './output-folder.ts';
import { proposeCommand } from './propose-command.ts';
import { shapeCommand, writtenShape } from './shape-command.ts';
import { stackCommand } from './stack-command.ts';
import { stripCommand } from './strip-command.ts';
import { USAGE } from './usage.ts';
import packageFile from '../../package.json' with { type: 'json' };

const VERSION: string = packageFile.version;

/** Runs one command. @returns the exit code. */
async function main(words: readonly string[]): Promise<number> {
  try {
    const command = parseCommand(words, new Date().toISOString().slice(0, 10));
    const told = await run(command);
    // JSON says what steers a terminal in its own way, and is data.
    process.stdout.write(told.startsWith('{') ? told : shownLines(told));
    return 0;
  } catch (error) {
    if (error instanceof Refused) {
      process.stderr.write(`${error.message}\n${await keptReport(error)}`);
      return 1;
    }
    if (error instanceof WrongUsage) {
      process.stderr.write(`${error.message} See --help.\n`);
      return 2;
    }
    throw error;
  }
}

/** Writes the report of a fault of the program's own where the command was called, and says so. */
async function keptReport({ report }: Refused): Promise<string> {
  if (report === undefined) return '';
  await writeEach(new Map([[report.name, report.text]]));
  return `The report is in ${report.name}.\n`;
}

async function run(command: ReturnType<typeof parseCommand>): Promise<string> {
  switch (command.name) {
    case 'help':
      return USAGE;
    case 'version':
      return `${VERSION}\n`;
    case 'inspect':
      return await inspectCommand(command.input, command.json);
    case 'make':
      return await makeCommand(command.choices);
    case 'seams':
      return await proposeCommand(command.choices, (line) => {
        process.stdout.write(line);
      });
    case 'compare':
      return await compareCommand(command.choices);
    case 'nest':
      return await nestCommand(command.choices, (line) => {
        process.stderr.write(line);
      });
    case 'shape':
      return command.choices.out === undefined
        ? shapeCommand(command.choices)
        : await writtenShape(command.choices, command.choices.out);
    case 'stack':
      return await stackCommand(command.choices);
    case 'core':
      return await coreCommand(command.choices);
    case 'artwork':
      return await artworkCommand(command.choices);
    case 'strip':
      return await stripCommand(command.choices);
  }
}

process.exitCode = await main(process.argv.slice(2));
