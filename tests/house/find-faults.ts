import { builtinModules } from 'node:module';
import { posix } from 'node:path';
import { DOORS, ENDINGS, FOLDERS, IMPURE_FOLDERS, NODE_FOLDERS, type FolderRow } from './house-table.ts';
import { readSource, type Import } from './read-imports.ts';

/**
 * Holds one source file against the tables of the house.
 * @param path  below the top of the project, with slashes, for example src/geom/vec.ts
 * @returns one sentence for each fault, beginning with path and line
 */
export function findFaults(path: string, text: string): string[] {
  const inside = path.replace(/^src\//, '');
  const facts = readSource(path, text);
  const row = FOLDERS.find(({ folder }) => isAt(inside, folder));
  if (!row) return [`${path}: lies in no folder of the table`];
  const faults = facts.imports.flatMap((entry) => {
    const fault = entry.specifier.startsWith('.') ? relativeFault(path, row, entry) : outsideFault(inside, entry);
    return fault === undefined ? [] : [`${path}:${entry.line}: ${fault}`];
  });
  if (!IMPURE_FOLDERS.includes(row.folder)) {
    faults.push(...facts.impure.map(({ what, line }) => `${path}:${line}: uses ${what}, which the core may not`));
  }
  if (facts.isBarrel || posix.basename(path) === 'index.ts')
    faults.push(`${path}: a barrel file, import from the files themselves`);
  return faults;
}

function relativeFault(path: string, row: FolderRow, entry: Import): string | undefined {
  const { specifier, isTypeOnly, kind } = entry;
  const inside = path.replace(/^src\//, '');
  // Files that are found beside the running program by their address, such as the font, are not imports.
  if (kind === 'worker' && !specifier.endsWith('.ts')) return undefined;
  if (
    !ENDINGS.some(({ ending, at }) => specifier.endsWith(ending) && (at ?? ['']).some((place) => isAt(inside, place)))
  ) {
    return `${specifier} must end in .ts or .json`;
  }
  const target = posix.join(posix.dirname(path), specifier.replace(/\?.*$/, ''));
  if (!target.startsWith('src/')) {
    const isData = (row.data ?? []).some(
      (place) => target === place || (place.endsWith('/') && target.startsWith(place)),
    );
    return isData && target.endsWith('.json') ? undefined : `${row.folder} may not import ${target}`;
  }
  const targetInside = target.slice('src/'.length);
  const isAllowed = (places: readonly string[]): boolean => places.some((place) => isAt(targetInside, place));
  if (isAllowed([row.folder, ...row.may])) return undefined;
  if (!isAllowed(row.types ?? [])) return `${row.folder} may not import ${targetInside}`;
  return isTypeOnly ? undefined : `${row.folder} may import types alone from ${targetInside}`;
}

function outsideFault(inside: string, { specifier, names }: Import): string | undefined {
  if (specifier.startsWith('node:') || builtinModules.includes(specifier)) {
    return NODE_FOLDERS.some((folder) => isAt(inside, folder)) ? undefined : `${specifier} belongs to Node`;
  }
  const parts = specifier.split('/');
  const name = parts.slice(0, specifier.startsWith('@') ? 2 : 1).join('/');
  const doors = DOORS.filter((door) => door.package === name);
  if (doors.length === 0) return `${specifier} has no door`;
  const door = doors.find(({ at }) => at.some((place) => isAt(inside, place)));
  if (!door) return `${name} comes in through ${doors.flatMap(({ at }) => at).join(' or ')} alone`;
  const extra = names.find((taken) => door.names && !door.names.includes(taken));
  return extra === undefined ? undefined : `${extra} of ${name} may not be used here`;
}

/** Whether a file is the place, lies in the folder, or fits the pattern; the empty place is everywhere. */
function isAt(file: string, place: string): boolean {
  if (place === '' || file === place || file.startsWith(`${place}/`)) return true;
  if (!place.includes('*')) return false;
  const [before, after] = place.split('*');
  return (
    file.startsWith(before) &&
    file.endsWith(after) &&
    !file.slice(before.length, file.length - after.length).includes('/')
  );
}
