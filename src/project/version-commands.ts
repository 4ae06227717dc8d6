import { onSculpt, type Command } from './commands.ts';
import type { SculptPart } from './project.ts';

/** Takes a new version of the sculpt. @param carried  the part as it was brought to it. */
export const takeNewVersion = (carried: SculptPart): Command =>
  onSculpt('take a new version of the sculpt', (part) => (part.id === carried.id ? carried : part));
