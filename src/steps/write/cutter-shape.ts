import { coveredRegions, type Region } from '../../geom/polygon-boolean.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import { scaledPoint } from '../../geom/scale-along.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { cutFactor, cutRing, cutScaleOf } from '../../model/cut-larger.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import { isPlain, type CutBeside } from '../../model/plain-piece.ts';

/** A piece as foam is taken from the sheet for it, in the frame of its template, mm. */
export interface CutterShape {
  /** What an upright cut must leave: face and back one over the other. */
  readonly regions: readonly Region[];
  /** The edges on the traced side and on the other, rings in the order of the piece; a lean is left to be cut where they differ. */
  readonly traced: readonly Ring[];
  readonly other: readonly Ring[];
  /** Holes at the ends of darts. */
  readonly rounds: readonly RoundHole[];
}

/** A hole that is round, or oval where foam is cut larger one way than the other: then `radiusMm` is null. */
export interface RoundHole {
  readonly centre: Vec2;
  readonly radiusMm: number | null;
  /** Counter-clockwise, {@link CIRCLE_SIDES} sides. */
  readonly ring: Ring;
}

/** Sides of a circle where it is drawn straight: at 20 mm they lie 0.005 mm inside it. */
const CIRCLE_SIDES = 96;

export function circleRing({ x, y }: Vec2, radiusMm: number): Ring {
  return Float64Array.from({ length: 2 * CIRCLE_SIDES }, (_, i) => {
    const angle = (2 * Math.PI * (i >> 1)) / CIRCLE_SIDES;
    return i % 2 === 0 ? x + radiusMm * Math.cos(angle) : y + radiusMm * Math.sin(angle);
  });
}

/** Areas that differ by less are one, as a share: outlines of a metre are good to the grid of 0.1 µm. */
const SAME_AREA_SHARE = 1e-7;

/** @param piece what is cut beside the pieces has its template's own frame. */
export function cutterShape(piece: FoamPiece | CutBeside): CutterShape {
  if (isPlain(piece)) {
    const { faceRings, backRings } = piece;
    return { regions: ofBoth(faceRings, backRings, 1), traced: faceRings, other: backRings, rounds: [] };
  }
  if ('seam' in piece) return stripShape(piece);
  const flip = piece.tracedSide === 'back' ? -1 : 1;
  const drawn = (ring: Ring): Ring => mirrored(cutRing(piece, ring), flip);
  const traced = [piece.outline, ...piece.holes].map(drawn);
  const other = [piece.otherOutline, ...piece.otherHoles].map(drawn);
  return { regions: ofBoth(traced, other, flip), traced, other, rounds: roundsOf(piece, flip) };
}

function stripShape({ lengthMm, faceMm, backMm }: FoamStrip): CutterShape {
  const inset = (faceMm.max - backMm.max) / 2;
  const traced = Float64Array.of(0, 0, lengthMm, 0, lengthMm, faceMm.max, 0, faceMm.max);
  const top = faceMm.max - inset;
  const other = Float64Array.of(0, inset, lengthMm, inset, lengthMm, top, 0, top);
  return { regions: ofBoth([traced], [other], 1), traced: [traced], other: [other], rounds: [] };
}

/** Face and back joined; the traced rings themselves, to the last bit, where the other side lies within them. */
function ofBoth(traced: readonly Ring[], other: readonly Ring[], flip: 1 | -1): readonly Region[] {
  const [own, all] = [traced, [...traced, ...other]].map((rings) =>
    coveredRegions(rings.map((ring) => (flip === 1 ? ring : reversedRing(ring)))),
  );
  const [ownArea, allArea] = [areaOf(own), areaOf(all)];
  if (own.length !== 1 || allArea - ownArea > SAME_AREA_SHARE * ownArea) return all;
  const [outer, ...holes] = traced.map((ring) => (flip === 1 ? ring : reversedRing(ring)));
  return [{ outer, holes }];
}

const areaOf = (regions: readonly Region[]): number =>
  regions.reduce((sum, { outer, holes }) => sum + ringArea(outer) + holes.reduce((all, h) => all + ringArea(h), 0), 0);

function roundsOf(piece: FoamPiece, flip: 1 | -1): readonly RoundHole[] {
  const { tipHoles = [], shrinkage } = piece;
  const scale = cutScaleOf(piece);
  const onSheet = (p: Vec2): Vec2 => {
    const { x, y } = scale === null ? p : scaledPoint(p, scale);
    return { x: flip * x, y };
  };
  const isRound = shrinkage === undefined || shrinkage.alongPct === shrinkage.acrossPct;
  const factor = shrinkage === undefined ? 1 : cutFactor(shrinkage.alongPct);
  return tipHoles.map(({ at, diameterMm }) => {
    const centre = onSheet(at);
    const radius = diameterMm / 2;
    if (isRound) return { centre, radiusMm: factor * radius, ring: circleRing(centre, factor * radius) };
    const drawn = circleRing(at, radius);
    const oval = Float64Array.from({ length: drawn.length }, (_, i) => {
      const { x, y } = onSheet({ x: drawn[i & ~1], y: drawn[i | 1] });
      return i % 2 === 0 ? x : y;
    });
    return { centre, radiusMm: null, ring: flip === 1 ? oval : reversedRing(oval) };
  });
}

function mirrored(ring: Ring, flip: 1 | -1): Ring {
  return flip === 1 ? ring : ring.map((value, i) => (i % 2 === 0 ? -value : value));
}

/** The same ring run the other way round. */
export function reversedRing(ring: Ring): Ring {
  const count = ring.length / 2;
  return Float64Array.from({ length: ring.length }, (_, i) => ring[2 * (count - 1 - (i >> 1)) + (i & 1)]);
}
