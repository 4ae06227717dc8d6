import type { FoamId, PartId } from '../base/ids.ts';
import { IN_PLACE, type Matrix4 } from '../geom/matrix4.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { TrimProfile } from '../model/trim.ts';
import type { NewPlain } from './plain-commands.ts';
import { PLAIN_STRIP, type StrapFields } from './trim-part.ts';

/** A strip of sheet foam is laid over a turn like this without a mitre, degrees [J]. */
export const USUAL_TURN_DEG = 30;

/** A strap as it is sold for a costume, over a jacket's waist [J]; mm. */
export const USUAL_STRAP: StrapFields['strap'] = {
  girthMm: 800,
  widthMm: 25,
  overlapMm: 120,
  holes: { count: 5, spacingMm: 20, diameterMm: 5 },
  tip: { kind: 'rounded' },
  buckle: { barMm: 5, tabMm: 35, slotWidthMm: 4 },
  keeperWidthMm: 15,
  isReinforced: false,
};

/** Lean of a bevelled strip where nothing else is said, degrees. */
export const USUAL_LEAN_DEG = 45;

/**
 * A profile as it begins.
 * @param rimMm  thickness of what an edging goes round, mm, > 0.
 */
export function usualProfile(kind: TrimProfile['kind'], rimMm: number): TrimProfile {
  switch (kind) {
    case 'flat':
      return { kind };
    case 'bevelled':
      return { kind, leanDeg: USUAL_LEAN_DEG, sides: 'both' };
    case 'half-round':
      return { kind, from: 'cut' };
    case 'quarter-round':
      return { kind, from: 'cut', square: 'left' };
    case 'edge-roll':
      return { kind, rimMm, radiusMm: rimMm / 2, lapMm: 0 };
    case 'u-binding':
      return { kind, rimMm, depthMm: 10, insideRadiusMm: 0 };
  }
}

/** Strips are made of the thinnest sheet there is: it bends along every line. */
export const foamOfStrips = (foams: readonly FoamSheet[]): FoamSheet =>
  foams.reduce((thin, foam) => (foam.thicknessMm < thin.thicknessMm ? foam : thin));

/** Covers over all seams of a sculpt that are in view, as usual. */
export const newCovers = (name: string, on: PartId, foam: FoamId): NewPlain => ({
  kind: 'covers',
  ...lyingOn(name, foam),
  on,
  strip: PLAIN_STRIP,
  mostTurnDeg: USUAL_TURN_DEG,
});

/** Trim along seams of a sculpt. @param edges  one of each seam, by corners of its file. */
export const newTrim = (
  name: string,
  on: PartId,
  foam: FoamId,
  edges: readonly (readonly [number, number])[],
): NewPlain => ({ kind: 'trim', ...lyingOn(name, foam), on, along: { by: 'edges', edges }, strip: PLAIN_STRIP });

/** A strap as usual. */
export const newStrap = (name: string, foam: FoamId, transform: Matrix4): NewPlain => ({
  kind: 'strap',
  ...lyingOn(name, foam),
  transform,
  strap: USUAL_STRAP,
});

/** What lies on a sculpt stands where that stands. */
const lyingOn = (name: string, foam: FoamId) => ({ name, transform: IN_PLACE, copies: 1, foams: [foam] });
