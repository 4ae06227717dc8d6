import { distanceToSegment } from '../../geom/distance-to-segment.ts';
import { chainPoints } from '../../geom/outline.ts';
import { mirroredDraft } from '../../model/mirrored-draft.ts';
import type { Hand } from '../../model/placing.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import { ringsAt } from './draft-rings.ts';

/** How many of the copies of a part are mirror images of it, and which hand it is itself. */
export interface MirroredCopies {
  readonly count: number;
  readonly ownHand: Hand;
}

/** Lines that lie over each other may be this far apart, mm: half the width of a line to cut on either side. */
const ALIKE_MM = 0.05;
/** Farthest that straight parts of what is compared lie off their curve, mm. */
const CHORD_MM = 0.01;
/** Directions of the sheet's length nearer than this are one, radians: half a degree. */
const ALIKE_RAD = Math.PI / 360;
/** Axes that are tried at most: an outline with more corners is taken for one of two hands. */
const MOST_AXES = 200;

/**
 * Pieces of all copies of a part: those of its own hand, and where mirror images stand too those of the other, which have a template of their own
 * unless the piece is the same turned over.
 * @param copies  all of them, the mirrored ones among them.
 */
export function handedDrafts(
  drafts: readonly PlainDraft[],
  copies: number,
  mirrored: MirroredCopies | undefined,
): readonly PlainDraft[] {
  if (mirrored === undefined || mirrored.count === 0)
    return drafts.map((draft) => ({ ...draft, quantity: draft.quantity * copies }));
  const { count, ownHand } = mirrored;
  const otherHand: Hand = ownHand === 'left' ? 'right' : 'left';
  return drafts.flatMap((draft): readonly PlainDraft[] => {
    if (isSameTurnedOver(draft)) return [{ ...draft, quantity: draft.quantity * copies }];
    const handed = (one: PlainDraft, hand: Hand, many: number): readonly PlainDraft[] =>
      many === 0 ? [] : [{ ...one, name: `${one.name}, ${hand}`, quantity: draft.quantity * many }];
    return [...handed(draft, ownHand, copies - count), ...handed(mirroredDraft(draft), otherHand, count)];
  });
}

/**
 * Whether a piece mirrored in some line is itself on its face and on its back, with all that is drawn on it and with the direction of the sheet's length. The
 * axis of a figure runs through its middle and through a corner or the middle of an edge. Edges that lean alike have both their outlines alike.
 */
export function isSameTurnedOver(draft: PlainDraft): boolean {
  const { grainRad, thicknessMm, drawnAt } = draft;
  const rings = [draft.outline, ...draft.holes].map(pointsOf);
  const figures: readonly Figure[] = [
    { role: 'outline', points: rings[0], closed: true },
    ...rings.slice(1).map((points) => ({ role: 'hole', points, closed: true })),
    ...ringsAt(draft, (1 - drawnAt) * thicknessMm).map((ring) => ({
      role: 'face',
      points: pairsOf(ring),
      closed: true,
    })),
    ...ringsAt(draft, -drawnAt * thicknessMm).map((ring) => ({ role: 'back', points: pairsOf(ring), closed: true })),
    ...draft.lines.map(({ role, points, closed }) => ({ role, points: pairsOf(points), closed })),
  ];
  const middle = middleOf(rings[0]);
  const through = draft.outline.flatMap(({ segments }) =>
    segments.flatMap((segment) => {
      const own = chainPoints([segment], CHORD_MM);
      const [from, to] = [own[0], own[own.length - 1]];
      return [
        from,
        own.length > 2 ? own[Math.floor(own.length / 2)] : { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
      ];
    }),
  );
  if (through.length > MOST_AXES) return false;
  return through.some((point) => {
    const axis = Math.atan2(point.y - middle.y, point.x - middle.x);
    if (grainRad !== undefined && !isSameWay(2 * axis - grainRad, grainRad)) return false;
    return figures.every((figure) => isItself(figure, figures, (p) => mirroredIn(p, middle, axis)));
  });
}

/** Whether two directions run along one line. */
const isSameWay = (a: number, b: number): boolean => Math.abs(Math.sin(a - b)) < ALIKE_RAD;

type Point = Readonly<{ x: number; y: number }>;

interface Figure {
  readonly role: string;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

const pointsOf = (edges: readonly ShapeEdge[]): readonly Point[] =>
  chainPoints(
    edges.flatMap(({ segments }) => segments),
    CHORD_MM,
  );

const pairsOf = (points: Float64Array): readonly Point[] =>
  Array.from({ length: points.length / 2 }, (_, i) => ({ x: points[2 * i], y: points[2 * i + 1] }));

/** Middle of the area inside a ring. */
function middleOf(ring: readonly Point[]): Point {
  let [twice, x, y] = [0, 0, 0];
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length];
    const cross = a.x * b.y - a.y * b.x;
    twice += cross;
    x += (a.x + b.x) * cross;
    y += (a.y + b.y) * cross;
  }
  return { x: x / (3 * twice), y: y / (3 * twice) };
}

function mirroredIn({ x, y }: Point, middle: Point, axis: number): Point {
  const [dx, dy, c, s] = [x - middle.x, y - middle.y, Math.cos(2 * axis), Math.sin(2 * axis)];
  return { x: middle.x + c * dx + s * dy, y: middle.y + s * dx - c * dy };
}

/** Whether all of a figure, mirrored, lies on figures of its kind. */
function isItself({ role, points }: Figure, figures: readonly Figure[], mirrored: (p: Point) => Point): boolean {
  const same = figures.filter((other) => other.role === role);
  return points.every((point) => {
    const at = mirrored(point);
    return same.some((other) =>
      other.points.some((a, i) => {
        const isLast = i === other.points.length - 1;
        if (isLast && !other.closed) return false;
        const b = other.points[isLast ? 0 : i + 1];
        return distanceToSegment(at.x, at.y, a.x, a.y, b.x, b.y) <= ALIKE_MM;
      }),
    );
  });
}
