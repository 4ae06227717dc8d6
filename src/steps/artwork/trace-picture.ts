import { fail, ok, type Result } from '../../base/result.ts';
import { boxOfPoints, ringArea, type Box2 } from '../../geom/ring.ts';
import type { ArtDrawing, ArtPath, ArtShape } from '../../model/artwork.ts';
import type { EdgeManner } from './trace-corners.ts';
import { traceLine } from './trace-line.ts';
import { doesHold, isRingInside } from './regions.ts';
import { reversedPath } from './segments.ts';

/** A closed line of a picture: places in px, y up, and the same in mm. */
export interface PictureLine {
  readonly px: Float64Array;
  readonly mm: Float64Array;
  /** mm², counter-clockwise > 0. */
  readonly areaMm2: number;
}

export interface TracedPicture {
  readonly drawing: ArtDrawing;
  readonly deviationMm: number;
  readonly cornerMm: number;
  readonly corners: number;
  readonly straightParts: number;
  readonly curves: number;
  readonly joinedLines: number;
}

/** Lines of a picture after specks are gone. */
const MOST_LINES = 5000;

/**
 * Fits curves to all lines of a picture and nests them: each connected area with its holes is a shape, and a piece, by size.
 * @param lines  none crosses another; the largest outside are outlines, and what lies in them is a hole, by turns.
 * @returns fails with `artwork/picture-lines`.
 */
export function tracePicture(
  lines: readonly PictureLine[],
  manner: EdgeManner,
  limitMm: number,
): Result<TracedPicture> {
  if (lines.length > MOST_LINES)
    return fail(
      'artwork/picture-lines',
      `The picture has ${lines.length} separate lines: smooth it, crop it, or leave out larger specks.`,
    );
  const sorted = [...lines].sort((a, b) => Math.abs(b.areaMm2) - Math.abs(a.areaMm2));
  const traced = sorted.map(({ px, mm }) => traceLine(px, mm, manner, limitMm));
  const groups = nested(sorted);
  const shapes = groups.map((members, piece): ArtShape => ({
    name: `area ${piece + 1}`,
    piece,
    paths: members.map((i): ArtPath =>
      sorted[i].areaMm2 > 0 === (i === members[0]) ? traced[i].path : reversedPath(traced[i].path),
    ),
    fill: 'evenodd',
    stroke: null,
  }));
  const kinds = traced.flatMap(({ path }) => path.segments.map(({ kind }) => kind));
  return ok({
    drawing: { shapes, pieces: shapes.map(({ name }) => name), mmFromUser: [1, 0, 0, 1, 0, 0] },
    deviationMm: Math.max(...traced.map(({ deviationMm }) => deviationMm)),
    cornerMm: Math.max(...traced.map(({ cornerMm }) => cornerMm)),
    corners: traced.reduce((sum, { corners }) => sum + corners, 0),
    straightParts: kinds.filter((kind) => kind === 'line').length,
    curves: kinds.filter((kind) => kind === 'cubic').length,
    joinedLines: traced.filter(({ isJoined }) => isJoined).length,
  });
}

/** Lines of each area, its outline first: numbers in a list that is sorted by size. */
function nested(lines: readonly PictureLine[]): number[][] {
  const boxes: Box2[] = lines.map(({ mm }) => boxOfPoints(mm));
  const depths: number[] = [];
  const groupOf: number[] = [];
  const groups: number[][] = [];
  for (const [i, { mm }] of lines.entries()) {
    let parent = i - 1;
    while (parent >= 0 && !(doesHold(boxes[parent], boxes[i]) && isRingInside(mm, lines[parent].mm))) parent -= 1;
    depths.push(parent < 0 ? 0 : depths[parent] + 1);
    if (depths[i] % 2 === 0) {
      groups.push([i]);
      groupOf.push(groups.length - 1);
    } else {
      groupOf.push(groupOf[parent]);
      groups[groupOf[parent]].push(i);
    }
  }
  return groups;
}

/** A line of a picture with its places brought to mm. @param mmOf  the true place of one, x y px, y up. */
export function pictureLine(px: Float64Array, mmOf: (x: number, y: number) => readonly [number, number]): PictureLine {
  const mm = new Float64Array(px.length);
  for (let i = 0; i < px.length; i += 2) [mm[i], mm[i + 1]] = mmOf(px[i], px[i + 1]);
  return { px, mm, areaMm2: ringArea(mm) };
}
