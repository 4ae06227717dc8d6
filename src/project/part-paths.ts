import type { PathJoin, SeamPath } from '../model/seams.ts';
import type { SculptPart } from './project.ts';

/** The part with some of its paths held, or not. */
export const lockedPaths = (part: SculptPart, numbers: ReadonlySet<number>, isLocked: boolean): SculptPart =>
  onPaths(part, numbers, (path) => {
    if ((path.locked ?? false) === isLocked) return path;
    const { locked: _, ...rest } = path;
    return isLocked ? { ...rest, locked: true } : rest;
  });

/** The part with its paths joined otherwise; wishes for their length and form stay. */
export const joinedPaths = (
  part: SculptPart,
  numbers: ReadonlySet<number>,
  join: Omit<PathJoin, 'holdLength' | 'straight'>,
): SculptPart =>
  onPaths(part, numbers, (path) => {
    const { points, locked, holdLength, straight } = path;
    const next: SeamPath = {
      points,
      ...join,
      ...(holdLength === undefined ? {} : { holdLength }),
      ...(straight === undefined ? {} : { straight }),
      ...(locked === undefined ? {} : { locked }),
    };
    return isSamePath(path, next) ? path : next;
  });

/** The part with its paths wished otherwise; a wish of false is none. */
export const wishedPaths = (
  part: SculptPart,
  numbers: ReadonlySet<number>,
  wish: Pick<PathJoin, 'holdLength' | 'straight'>,
): SculptPart =>
  onPaths(part, numbers, (path) => {
    const { holdLength, straight, ...rest } = { ...path, ...wish };
    const next: SeamPath = {
      ...rest,
      ...(holdLength === true ? { holdLength } : {}),
      ...(straight === true ? { straight } : {}),
    };
    return isSamePath(path, next) ? path : next;
  });

/** The part without some of its paths. */
export function withoutPaths(part: SculptPart, numbers: ReadonlySet<number>): SculptPart {
  const kept = part.seams.paths.filter((_, i) => !numbers.has(i));
  return kept.length === part.seams.paths.length ? part : withPaths(part, kept);
}

/** The part with some of its paths changed; the same part where nothing changes. */
export function onPaths(
  part: SculptPart,
  numbers: ReadonlySet<number>,
  change: (path: SeamPath) => SeamPath,
): SculptPart {
  const paths = part.seams.paths.map((path, i) => (numbers.has(i) ? change(path) : path));
  return paths.every((path, i) => path === part.seams.paths[i]) ? part : withPaths(part, paths);
}

export const withPaths = (part: SculptPart, paths: readonly SeamPath[]): SculptPart => ({
  ...part,
  seams: { ...part.seams, paths },
});

/** Points are compared by identity: they are changed as a whole. */
function isSamePath(a: SeamPath, b: SeamPath): boolean {
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])] as (keyof SeamPath)[];
  return names.every((name) => a[name] === b[name]);
}
