import { fail, ok, type Result } from '../../base/result.ts';
import { arc, chainSweep, line, onCircle } from '../../geom/outline.ts';
import { deg, type Vec2 } from '../../geom/vec.ts';
import type { SkinBand, SkinWish, WrapSheet } from '../../model/build-up.ts';
import { leaningEdge } from '../../model/plain-edge.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import { areJoined, chordsOf, movedInward, profileOf, slopeOf, type Chord } from './chords.ts';
import type { Profile } from './profile.ts';
import { arrow, seamBevelDeg, wrapPiece } from './wrap-piece.ts';

/** A band before its seam has a place. */
export type LooseBand = Omit<SkinBand, 'seamDeg'>;

export interface Skin {
  /** What the foam under it is sanded to. */
  readonly base: Profile;
  readonly bands: readonly LooseBand[];
  readonly pieces: readonly PlainDraft[];
}

/** More bands than this are no work for hands. */
const MOST_BANDS = 200;

/** A cone leaner than this is a cylinder to far below a knife's width over any core, radians. */
const LEVEL = 1e-7;

/**
 * One thin sheet over all of the profile, band after band: cylinders over level parts, frustums over tapered ones (radial line development: sector
 * angle 2 pi sin(slope), radii of the arcs r / sin(slope)), each as long as its neutral surface. Where two bands meet each takes half the turn.
 * @returns fails with `core/skin` where the sheet has no room over the core or in a corner.
 */
export function makeSkin(
  profile: Profile,
  coreRadius: number,
  { sheetMm, deviationMm }: SkinWish,
  neutralFraction: number,
): Result<Skin> {
  const face = chordsOf(profile, deviationMm);
  if (face.length > MOST_BANDS)
    return fail(
      'core/skin',
      `The skin would come in ${face.length} bands: let it stand off smooth stretches by more, or use fewer.`,
    );
  const inner = movedInward(face, sheetMm);
  const turned = inner.findIndex(({ x0, x1 }) => x1 - x0 < 1e-6);
  if (turned >= 0)
    return fail(
      'core/skin',
      `A skin of ${sheetMm} mm has no room in the hollow at ${face[turned].x0.toFixed(1)} mm: take a thinner one, or a gentler profile.`,
    );
  const low = inner.find(({ r0, r1 }) => Math.min(r0, r1) < coreRadius - 1e-6);
  if (low !== undefined)
    return fail(
      'core/skin',
      `A skin of ${sheetMm} mm does not fit between profile and core at ${(low.r0 < coreRadius ? low.x0 : low.x1).toFixed(1)} mm: raise the profile there by ${(coreRadius - Math.min(low.r0, low.r1)).toFixed(2)} mm, or take a thinner one.`,
    );
  const sheet: WrapSheet = { thicknessMm: sheetMm, neutralFraction };
  const neutral = movedInward(face, (1 - neutralFraction) * sheetMm);
  const made = face.map((_, i) => bandOf(face, inner, neutral, i, sheet));
  return ok({ base: profileOf(inner), bands: made.map(({ band }) => band), pieces: made.map(({ piece }) => piece) });
}

function bandOf(
  face: readonly Chord[],
  inner: readonly Chord[],
  neutral: readonly Chord[],
  i: number,
  sheet: WrapSheet,
): { readonly band: LooseBand; readonly piece: PlainDraft } {
  const [own, { x0, r0, x1, r1 }] = [face[i], neutral[i]];
  const slope = slopeOf(own);
  const long = Math.hypot(x1 - x0, r1 - r0);
  const least = Math.min(inner[i].r0, inner[i].r1);
  const name = `skin ${i + 1}`;
  const bevelDeg = seamBevelDeg(least, sheet);
  // A rim that meets the next band takes half the turn to it, convex over 0; one that ends square to the axis leans by the slope.
  const startDeg = deg(i > 0 && areJoined(face[i - 1], own) ? (slopeOf(face[i - 1]) - slope) / 2 : -slope);
  const endDeg = deg(i + 1 < face.length && areJoined(own, face[i + 1]) ? (slope - slopeOf(face[i + 1])) / 2 : slope);
  const notes = [`${name}: round the core from ${own.x0.toFixed(1)} to ${own.x1.toFixed(1)} mm.`];
  const common = {
    fromMm: own.x0,
    toMm: own.x1,
    fromRadiusMm: own.r0,
    toRadiusMm: own.r1,
    thicknessMm: sheet.thicknessMm,
  };
  if (Math.abs(slope) < LEVEL) {
    const piece = wrapPiece(2 * Math.PI * r0, long, 1, {
      key: `skin-${i + 1}`,
      name,
      thicknessMm: sheet.thicknessMm,
      neutralFraction: sheet.neutralFraction,
      radiusMm: r0,
      quantity: 1,
      bevelDeg,
      seam: name,
      marks: [],
      notes,
    });
    const outline = piece.outline.map((edge) =>
      edge.name === 'seam'
        ? edge
        : leaningEdge(edge.name, edge.segments, edge.name === 'start rim' ? startDeg : endDeg),
    );
    return { band: { ...common, sector: { outerMm: 0, innerMm: 0, angleDeg: 0 } }, piece: { ...piece, outline } };
  }
  const sin = Math.abs(Math.sin(slope));
  const [outer, near, angle] = [Math.max(r0, r1) / sin, Math.min(r0, r1) / sin, 2 * Math.PI * sin];
  const growing = slope > 0;
  // The end of the core lies up: the apex under the piece where it grows, over it where it tapers.
  const first = (growing ? Math.PI / 2 : -Math.PI / 2) - angle / 2;
  const at = (radius: number, end: 0 | 1): Vec2 => onCircle(ORIGIN, radius, first + end * angle);
  const [wideRim, thinRim] = growing ? ['end rim', 'start rim'] : ['start rim', 'end rim'];
  const [wideDeg, thinDeg] = growing ? [endDeg, startDeg] : [startDeg, endDeg];
  const outline = [
    leaningEdge(wideRim, [arc(ORIGIN, outer, first, angle)], wideDeg),
    leaningEdge('seam', [line(at(outer, 1), at(near, 1))], bevelDeg, { seam: name }),
    leaningEdge(thinRim, [arc(ORIGIN, near, first + angle, -angle)], thinDeg),
    leaningEdge('seam', [line(at(near, 0), at(outer, 0))], bevelDeg, { seam: name }),
  ];
  const piece: PlainDraft = {
    key: `skin-${i + 1}`,
    name,
    quantity: 1,
    thicknessMm: sheet.thicknessMm,
    drawnAt: sheet.neutralFraction,
    outline,
    holes: [],
    bend: {
      kind: 'rolled',
      leastRadiusMm: Math.min(r0, r1) / Math.cos(slope),
      greatestRadiusMm: Math.max(r0, r1) / Math.cos(slope),
    },
    lines: arrow(0, long, growing ? near : -outer),
    notes,
    areaMm2: chainSweep(outline.flatMap(({ segments }) => segments)),
  };
  return { band: { ...common, sector: { outerMm: outer, innerMm: near, angleDeg: deg(angle) } }, piece };
}

const ORIGIN: Vec2 = { x: 0, y: 0 };
