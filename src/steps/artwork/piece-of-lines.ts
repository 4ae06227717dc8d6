import { coveredRegions, strokedRegions, type Region } from '../../geom/polygon-boolean.ts';
import { boxOfPoints, type Ring } from '../../geom/ring.ts';
import type { ArtFillRule, ArtOpenLine, ArtPiece, ArtRegion } from '../../model/artwork.ts';
import type { StrokeReading } from '../../model/artwork-choice.ts';
import type { PieceLine } from './join-ends.ts';
import { doesHold, flatOutline, isRingInside, nestRegions, regionOf, type ClosedLine } from './regions.ts';
import { pathLength } from './segments.ts';

/** What was done with a piece's lines that its maker should know. */
export type PieceRemark = 'united-fills' | 'lost-in-fill' | 'mixed-fills';

/** A line of a piece with its straight parts. */
export interface MeasuredLine extends PieceLine {
  readonly points: Float64Array;
}

export interface MadePiece {
  readonly piece: ArtPiece;
  readonly remarks: ReadonlySet<PieceRemark>;
}

/**
 * Makes the areas and open lines of one piece. Each filled shape is an area by its own fill rule, what its open lines leave open closed straight, as it
 * is seen; closed lines without fill are nested together, each second one a hole. Where filled shapes lie over each other they become one; where
 * lines with and without fill do, all are nested together.
 * @param crossings  pairs of lines, by their places in the list, that cross; one that crosses itself twice.
 */
export function pieceOfLines(
  name: string,
  lines: readonly MeasuredLine[],
  strokes: StrokeReading,
  deviationMm: number,
  crossings: readonly (readonly [number, number])[],
): MadePiece {
  const remarks = new Set<PieceRemark>();
  const open: ArtOpenLine[] = [];
  const groups = new Map<string, { members: number[]; rule: ArtFillRule }>();
  const stroked: Region[] = [];
  for (const [i, line] of lines.entries()) {
    const isStroked = strokes === 'outline' && line.stroke !== null && line.stroke.widthMm > 0;
    if (isStroked && line.stroke !== null)
      stroked.push(
        ...strokedRegions([{ points: line.points, isClosed: line.path.isClosed }], line.stroke.widthMm, {
          ...line.stroke,
          deviationMm,
        }),
      );
    if (line.fill === null && !line.path.isClosed) {
      if (!isStroked)
        open.push({ shape: line.shape, path: line.path, points: line.points, lengthMm: pathLength(line.path) });
      continue;
    }
    if (line.fill === null && isStroked) continue;
    if (line.points.length < 6) continue;
    const key = line.fill === null ? 'lines' : String(line.shapeNumber);
    const group = groups.get(key) ?? { members: [], rule: line.fill ?? 'evenodd' };
    groups.set(key, group);
    group.members.push(i);
  }
  const asClosed = (i: number): ClosedLine => ({
    shape: lines[i].shape,
    path: closedStraight(lines[i]),
    ring: lines[i].points,
  });
  const crossingsIn = (members: readonly number[]): (readonly [number, number])[] => {
    const placeOf = new Map(members.map((line, place) => [line, place]));
    return crossings.flatMap(([a, b]) => {
      const [p, q] = [placeOf.get(a), placeOf.get(b)];
      return p === undefined || q === undefined ? [] : [[p, q] as const];
    });
  };
  const lists = [...groups.values()];
  const meeting = lists.length > 1 ? meetingOf(lists, lines, crossings) : 'none';
  let regions: readonly ArtRegion[];
  if (meeting !== 'none' && groups.has('lines')) {
    const all = lists.flatMap(({ members }) => members);
    remarks.add('mixed-fills');
    regions = nestRegions(all.map(asClosed), 'evenodd', crossingsIn(all));
  } else {
    const each = lists.map(({ members, rule }) => nestRegions(members.map(asClosed), rule, crossingsIn(members)));
    regions = each.flat();
    if (meeting === 'crossing') {
      remarks.add('united-fills');
      regions = asFlat(coveredRegions(ringsOf(regions)));
    } else if (meeting === 'inside') {
      const kept = regions.filter((region) => !regions.some((other) => other !== region && isWithin(region, other)));
      if (kept.length < regions.length) remarks.add('lost-in-fill');
      regions = kept;
    }
  }
  if (stroked.length > 0)
    regions = asFlat(
      coveredRegions([...ringsOf(regions), ...stroked.flatMap(({ outer, holes }) => [outer, ...holes])]),
    );
  const sorted = [...regions].sort((a, b) => b.areaMm2 - a.areaMm2);
  const outlines = sorted.flatMap(({ outline, holes }) => [outline, ...holes]);
  return {
    piece: {
      name,
      regions: sorted,
      lines: open,
      areaMm2: sorted.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
      lengthMm: [...outlines, ...open].reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    },
    remarks,
  };
}

const ringsOf = (regions: readonly ArtRegion[]): Ring[] =>
  regions.flatMap(({ outline, holes }) => [outline.ring, ...holes.map(({ ring }) => ring)]);

const asFlat = (regions: readonly Region[]): readonly ArtRegion[] =>
  regions.map(({ outer, holes }) => regionOf(flatOutline(outer), holes.map(flatOutline)));

/** An open line of a fill, closed straight as a fill closes it. */
function closedStraight({ path }: PieceLine): PieceLine['path'] {
  if (path.isClosed) return path;
  const [first, last] = [path.segments[0].from, path.segments[path.segments.length - 1].to];
  return { segments: [...path.segments, { kind: 'line', from: last, to: first }], isClosed: true };
}

/** How the groups lie to each other: lines cross, or one lies in another, or neither. */
function meetingOf(
  groups: readonly { readonly members: readonly number[] }[],
  lines: readonly MeasuredLine[],
  crossings: readonly (readonly [number, number])[],
): 'none' | 'inside' | 'crossing' {
  const groupOf = new Map(groups.flatMap(({ members }, g) => members.map((i) => [i, g] as const)));
  if (crossings.some(([a, b]) => groupOf.has(a) && groupOf.has(b) && groupOf.get(a) !== groupOf.get(b)))
    return 'crossing';
  const boxed = [...groupOf].map(([i, group]) => ({ ring: lines[i].points, group, box: boxOfPoints(lines[i].points) }));
  const isInside = boxed.some((one) =>
    boxed.some(
      (other) => one.group !== other.group && doesHold(other.box, one.box) && isRingInside(one.ring, other.ring),
    ),
  );
  return isInside ? 'inside' : 'none';
}

/** True for a region that lies within another's own area, not in one of its holes. */
function isWithin(region: ArtRegion, other: ArtRegion): boolean {
  const { ring } = region.outline;
  if (region.outline.areaMm2 > other.outline.areaMm2) return false;
  if (!doesHold(boxOfPoints(other.outline.ring), boxOfPoints(ring)) || !isRingInside(ring, other.outline.ring))
    return false;
  return !other.holes.some((hole) => isRingInside(ring, hole.ring));
}
