import type { Command } from '../../../src/project/commands.ts';
import type { Project } from '../../../src/project/project.ts';
import type { Dice } from './dice.ts';

/** Makes a command as a hand would give it to a document: within its limits, now and then about what is not there. Null: none just now. */
export type Generator = (project: Project, dice: Dice) => Command | null;

/** Generators by the names of the commands' functions. */
export type Generators = Readonly<Record<string, Generator | undefined>>;
