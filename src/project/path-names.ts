import type { EdgePair } from './commands.ts';

/**
 * What names a path where commands name edges: its number in `SeamMarks.paths`, counted from -1 downward, at both ends. Edges that a path is cut
 * into have no corners in the file, and the numbers they do have change with the paths before it; so whoever points at one of them points at the
 * path.
 */
export const pathName = (path: number): EdgePair => [-1 - path, -1 - path];

/** The path that a pair names, or null where it is an edge of the file. */
export const namedPath = ([a, b]: EdgePair): number | null => (a < 0 && a === b ? -1 - a : null);

/** Edges of the file and numbers of paths, told apart. */
export function edgesAndPaths(pairs: readonly EdgePair[]): {
  readonly edges: readonly EdgePair[];
  readonly paths: ReadonlySet<number>;
} {
  const paths = pairs.map(namedPath).filter((path) => path !== null);
  return { edges: paths.length === 0 ? pairs : pairs.filter(([a, b]) => a >= 0 && b >= 0), paths: new Set(paths) };
}
