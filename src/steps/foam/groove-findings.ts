import type { Finding } from '../../base/finding.ts';
import { pointAt3, rad, type Vec2 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { PieceFold } from '../../model/foam-piece.ts';
import type { FoldGroove } from '../../model/grooves.ts';
import type { Patch } from '../../model/patch.ts';
import type { PieceLabel } from './piece-findings.ts';
import type { PieceShape } from './piece-shape.ts';

/** What the grooves of a piece are held against. Flat coordinates in the piece's frame, mm. */
export interface GrooveRoom {
  readonly folds: readonly PieceFold[];
  readonly mesh: Mesh;
  readonly patch: Patch;
  readonly shape: Pick<PieceShape, 'uv' | 'face' | 'back'>;
  readonly leastHingeMm: number;
}

/**
 * Places along a fold, in shares of its length, where the room beside it is measured. Near its ends grooves that come together at a corner
 * always meet and the edge may be near; a fold is at fault where it lacks room at most of these.
 */
const STATIONS = [0.25, 0.375, 0.5, 0.625, 0.75];

/** A ray that starts on a line has not met it, mm. */
const START_MM = 1e-9;

/** A groove that lacks room: what it needs and has beside its fold, mm. */
interface Shortage {
  readonly fold: PieceFold;
  readonly needMm: number;
  readonly haveMm: number;
}

/** Grooves that leave too thin a hinge, that are wider than the panel beside them, and that run into one another: one finding each. */
export function grooveFindings(label: PieceLabel, room: GrooveRoom): readonly Finding[] {
  const grooved = room.folds.flatMap((fold) => (fold.groove === undefined ? [] : [{ fold, groove: fold.groove }]));
  if (grooved.length === 0) return [];
  const findings: Finding[] = [];
  const [{ fold, groove }] = grooved;
  if (groove.hingeMm < room.leastHingeMm) {
    findings.push({
      code: 'foam/groove-deep',
      severity: 'warning',
      text: `${label.name} is grooved ${mm(groove.depthMm)} deep, which leaves a hinge of ${mm(groove.hingeMm)}, and less than ${mm(room.leastHingeMm)} tears when it is bent (shop rule): leave more, or part it at the fold.`,
      value: groove.hingeMm,
      limit: room.leastHingeMm,
      unit: 'mm',
      where: placeOf(label, room, [fold]),
    });
  }
  const wide = grooved.flatMap((own) => shortageOf(own.fold, (p, way) => toEdge(own.groove, room, p, way)));
  if (wide.length > 0) {
    const tell = ({ needMm, haveMm }: Need): string =>
      `with a groove wider than the panel beside it: it needs ${mm(needMm)} to the edge and has ${mm(haveMm)}, so use thinner foam there or part the piece at the fold`;
    findings.push(shortageFinding('foam/groove-wide', label, room, wide, tell));
  }
  const meeting = grooved.flatMap((own) => shortageOf(own.fold, (p, way) => toGrooves(own, grooved, p, way)));
  if (meeting.length > 0) {
    const tell = ({ needMm, haveMm }: Need): string =>
      `whose grooves run into the next one: they need ${mm(needMm)} from fold to fold and have ${mm(haveMm)}, so use thinner foam, roll the piece, or bend it over fewer folds`;
    findings.push(shortageFinding('foam/groove-meet', label, room, meeting, tell));
  }
  return findings;
}

/** Folds that lack room, told by the worst of them. */
function shortageFinding(
  code: string,
  label: PieceLabel,
  room: GrooveRoom,
  short: readonly Shortage[],
  tell: (worst: Need) => string,
): Finding {
  const worst = worstOf(short);
  return {
    code,
    severity: 'warning',
    text: `${label.name} has ${folds(short.length)} ${tell(worst)}.`,
    value: worst.haveMm,
    limit: worst.needMm,
    unit: 'mm',
    where: placeOf(
      label,
      room,
      short.map(({ fold }) => fold),
    ),
  };
}

interface Need {
  readonly needMm: number;
  readonly haveMm: number;
}

/** Where a fold lacks room on one of its sides at most of its stations, its worst place. */
function shortageOf(fold: PieceFold, needs: (p: Vec2, way: Vec2) => readonly Need[]): readonly Shortage[] {
  const [dx, dy] = [fold.to.x - fold.from.x, fold.to.y - fold.from.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const short: Need[][] = [1, -1].map((sign) => {
    const way = { x: (-sign * dy) / length, y: (sign * dx) / length };
    return STATIONS.flatMap((share) => {
      const lacking = needs({ x: fold.from.x + share * dx, y: fold.from.y + share * dy }, way).filter(isLacking);
      return lacking.length === 0 ? [] : [worstOf(lacking)];
    });
  });
  const most = short.filter((list) => 2 * list.length > STATIONS.length).flat();
  return most.length === 0 ? [] : [{ fold, ...worstOf(most) }];
}

const isLacking = ({ needMm, haveMm }: Need): boolean => haveMm < needMm;

const worstOf = <T extends Need>(list: readonly T[]): T =>
  list.reduce((a, b) => (b.needMm - b.haveMm > a.needMm - a.haveMm ? b : a));

/** Room for half a groove from its fold to the edge of the surface it is cut from. */
function toEdge({ side, widthMm }: FoldGroove, { shape }: GrooveRoom, p: Vec2, way: Vec2): readonly Need[] {
  let haveMm = Infinity;
  const { outline, holes } = shape[side];
  for (const ring of [outline, ...holes]) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const met = meet(p, way, { x: ring[i], y: ring[i + 1] }, { x: ring[j], y: ring[j + 1] });
      if (met !== null) haveMm = Math.min(haveMm, met.distance);
    }
  }
  return [{ needMm: widthMm / 2, haveMm }];
}

/**
 * Room between grooves. Two from one side must not overlap at the surface. Of two from opposite sides, whose points lie past each other
 * where the hinges are thinner than half the foam, the wider one must pass the other's point: `(t - 2 h) tan(included / 2)`.
 */
function toGrooves(
  own: { readonly fold: PieceFold; readonly groove: FoldGroove },
  all: readonly { readonly fold: PieceFold; readonly groove: FoldGroove }[],
  p: Vec2,
  way: Vec2,
): readonly Need[] {
  return all.flatMap(({ fold, groove }) => {
    const met = fold === own.fold ? null : meet(p, way, fold.from, fold.to);
    if (met === null) return [];
    // The other groove runs at an angle to this one, so along the ray it reaches farther.
    const reach = 1 / met.sine;
    if (groove.side === own.groove.side) {
      return [{ needMm: (own.groove.widthMm + reach * groove.widthMm) / 2, haveMm: met.distance }];
    }
    const pastMm = own.groove.depthMm - groove.hingeMm;
    const slope = Math.max(slopeOf(own.groove), reach * slopeOf(groove));
    return pastMm > 0 ? [{ needMm: pastMm * slope, haveMm: met.distance }] : [];
  });
}

const slopeOf = ({ includedDeg }: FoldGroove): number => Math.tan(rad(includedDeg) / 2);

/** Where a ray meets a segment, or null: how far along, and the sine of the angle between them. */
function meet(p: Vec2, way: Vec2, a: Vec2, b: Vec2): { distance: number; sine: number } | null {
  const [ex, ey] = [b.x - a.x, b.y - a.y];
  const across = way.x * ey - way.y * ex;
  if (across === 0) return null;
  const [ax, ay] = [a.x - p.x, a.y - p.y];
  const distance = (ax * ey - ay * ex) / across;
  const share = (ax * way.y - ay * way.x) / across;
  if (distance <= START_MM || share < 0 || share > 1) return null;
  return { distance, sine: Math.abs(across) / Math.hypot(ex, ey) };
}

/** The ends of the folds on the sculpt, and the middle of the first to look at. */
function placeOf(
  label: PieceLabel,
  { mesh, patch, shape: { uv } }: GrooveRoom,
  list: readonly PieceFold[],
): Finding['where'] {
  const at = new Map<string, number>();
  patch.meshVertices.forEach((v, i) => at.set(`${uv[2 * i]} ${uv[2 * i + 1]}`, v));
  const ends = list.map(({ from, to }) => [from, to].flatMap(({ x, y }) => at.get(`${x} ${y}`) ?? []));
  const [first] = ends;
  const [a, b] = first.map((v) => pointAt3(mesh.positions, v));
  return {
    part: label.part,
    piece: label.id,
    vertices: [...new Set(ends.flat())],
    ...(first.length === 2 ? { point: [(a.x + b.x) / 2, (a.y + b.y) / 2, (a.z + b.z) / 2] as const } : {}),
  };
}

const folds = (count: number): string => (count === 1 ? 'a fold' : `${count} folds`);
const mm = (length: number): string => `${length.toFixed(1)} mm`;
