import { onSculpt, type Command } from './commands.ts';
import type { MirrorChoice } from './project.ts';

/** Says in which plane the sculpt mirrors itself, or that it does not; null: as it is found. */
export const setMirror = (mirror: MirrorChoice | null): Command =>
  onSculpt(
    mirror === null ? 'find the mirror' : mirror.by === 'off' ? 'put the mirror away' : 'set the mirror',
    (part) => {
      const { mirror: had, ...rest } = part;
      if (isSame(had, mirror ?? undefined)) return part;
      return mirror === null ? rest : { ...rest, mirror };
    },
  );

function isSame(a: MirrorChoice | undefined, b: MirrorChoice | undefined): boolean {
  if (a === undefined || b === undefined || a.by !== 'plane' || b.by !== 'plane') return a?.by === b?.by;
  return [0, 1, 2].every((i) => a.pointInFile[i] === b.pointInFile[i] && a.normal[i] === b.normal[i]);
}
