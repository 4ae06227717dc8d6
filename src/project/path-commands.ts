import type { SeamMarks, SeamPath } from '../model/seams.ts';
import { addSeamEdges, onSculpt, type Command } from './commands.ts';
import { lockedPaths, onPaths, withoutPaths, withPaths } from './part-paths.ts';

/**
 * Draws lines across faces, along which the foam is parted: all of them undo as one.
 * @param paths    each of two or more points; others are passed over.
 * @param mergeKey of a stroke that is drawn bit by bit.
 */
export const drawPaths = (paths: readonly SeamPath[], mergeKey?: string): Command =>
  onSculpt(
    'draw a seam',
    (part) => {
      const added = paths.filter(({ points }) => points.length > 1);
      return added.length === 0 ? part : withPaths(part, [...part.seams.paths, ...added]);
    },
    mergeKey,
  );

/** Parts the foam along edges and lines across faces at once. */
export const addMarks = ({ edges, paths }: SeamMarks): Command => ({
  label: 'part here',
  apply: (project) => drawPaths(paths).apply(addSeamEdges(edges).apply(project)),
});

/** Joins the foam again along paths. @param numbers  of the paths, from 0; those that are none are passed over. */
export const removePaths = (numbers: readonly number[]): Command =>
  onSculpt('join', (part) => withoutPaths(part, new Set(numbers)));

/**
 * Draws a path otherwise: straightened, or dragged. What was said of its seams stays said.
 * @param mergeKey  the drag's own key.
 */
export const replacePath = (number: number, points: SeamPath['points'], mergeKey?: string): Command =>
  onSculpt(
    'move the seam',
    (part) => (points.length < 2 ? part : onPaths(part, new Set([number]), (path) => ({ ...path, points }))),
    mergeKey,
  );

/** Holds paths where they are, whatever is proposed, or lets them go. */
export const lockPaths = (numbers: readonly number[], isLocked: boolean): Command =>
  onSculpt(isLocked ? 'hold the seam' : 'let the seam go', (part) => lockedPaths(part, new Set(numbers), isLocked));
