import { bendAllowance } from '../../geom/bend-allowance.ts';
import { rad } from '../../geom/vec.ts';
import type { TrimProfile } from '../../model/trim.ts';

/** Section of a strip across its length. */
export interface TrimSection {
  /** Width of flat foam that is cut for it, mm, at its neutral surface. */
  readonly flatMm: number;
  /** What is sanded off sheet to its form, mm² of its section, and where the middle of that lies from the middle of the width, mm, left > 0. */
  readonly sandMm2: number;
  readonly sandAtMm: number;
  /** Lean of the long edges, degrees; positive: the back stands inside the face. */
  readonly leftBevelDeg: number;
  readonly rightBevelDeg: number;
  /** How much its flat half widths are less than asked at the neutral surface, mm (bevelled edges). */
  readonly leftLessMm: number;
  readonly rightLessMm: number;
}

const plain = (flatMm: number): TrimSection => ({
  flatMm,
  sandMm2: 0,
  sandAtMm: 0,
  leftBevelDeg: 0,
  rightBevelDeg: 0,
  leftLessMm: 0,
  rightLessMm: 0,
});

/**
 * The section of a strip of this width and thickness.
 *
 *   bevelled     width at the back w; the face is narrower by t tan(lean) at each leaning side
 *   half-round   part of a circle over the width, as high as the strip is thick: radius (w² / 4 + t²) / (2 t); a half circle where w = 2 t
 *   quarter      the same of twice the width, halved: a quarter circle where w = t
 *   edge roll    inside radius r about the edge of a rim T thick: it leaves each face where the circle meets it, so it goes round by
 *                2 pi - 2 asin(T / 2 r), at the neutral radius r + k t, with a lap on each face (at r = T / 2 a half circle)
 *   U binding    two bends of 90 degrees about the rim's corners, each pi / 2 (r + k t), and what is straight between and beside them:
 *                T - 2 r and depth - r
 */
export function trimSection(
  profile: TrimProfile,
  widthMm: number,
  thicknessMm: number,
  neutralFraction: number,
): TrimSection {
  const [w, t, k] = [widthMm, thicknessMm, neutralFraction];
  switch (profile.kind) {
    case 'flat':
      return plain(w);
    case 'bevelled': {
      const less = k * t * Math.tan(rad(profile.leanDeg));
      const [left, right] = [profile.sides !== 'right', profile.sides !== 'left'];
      return {
        ...plain(w - (left ? less : 0) - (right ? less : 0)),
        leftBevelDeg: left ? -profile.leanDeg : 0,
        rightBevelDeg: right ? -profile.leanDeg : 0,
        leftLessMm: left ? less : 0,
        rightLessMm: right ? less : 0,
      };
    }
    case 'half-round':
      return profile.from === 'bought' ? plain(w) : { ...plain(w), sandMm2: w * t - capArea(w, t) };
    case 'quarter-round': {
      if (profile.from === 'bought') return plain(w);
      const area = capArea(2 * w, t) / 2;
      // Of the half cap, measured from its square side; what is sanded off has the rest of the rectangle's moment.
      const sandMm2 = w * t - area;
      const fromSquare = sandMm2 > 0 ? ((w * w * t) / 2 - halfCapMoment(w, t)) / sandMm2 : 0;
      const side = profile.square === 'left' ? 1 : -1;
      return { ...plain(w), sandMm2, sandAtMm: side * (w / 2 - fromSquare) };
    }
    case 'edge-roll': {
      const { rimMm, radiusMm, lapMm } = profile;
      const angle = 2 * Math.PI - 2 * Math.asin(Math.min(1, rimMm / (2 * radiusMm)));
      return plain((radiusMm + k * t) * angle + 2 * lapMm);
    }
    case 'u-binding': {
      const { rimMm, depthMm, insideRadiusMm } = profile;
      const bend = bendAllowance({
        angle: Math.PI / 2,
        insideRadius: insideRadiusMm,
        thickness: t,
        neutralFraction: k,
      });
      return plain(2 * bend + rimMm - 2 * insideRadiusMm + 2 * (depthMm - insideRadiusMm));
    }
  }
}

/** Radius of the circle part over a width as high as this, mm. */
export const capRadius = (widthMm: number, heightMm: number): number =>
  (widthMm * widthMm) / (8 * heightMm) + heightMm / 2;

/** Area of that part of a circle, mm²: r² asin(w / 2 r) less the triangle below it; a height up to half the width. */
export function capArea(widthMm: number, heightMm: number): number {
  const r = capRadius(widthMm, heightMm);
  return r * r * Math.asin(Math.min(1, widthMm / (2 * r))) - (widthMm / 2) * (r - heightMm);
}

/** Moment of half a cap about its middle line, mm³: the integral of x (sqrt(r² - x²) - (r - h)) from 0 to w. */
function halfCapMoment(halfWidthMm: number, heightMm: number): number {
  const r = capRadius(2 * halfWidthMm, heightMm);
  const low = r - heightMm;
  return (r ** 3 - Math.max(0, r * r - halfWidthMm * halfWidthMm) ** 1.5) / 3 - (low * halfWidthMm ** 2) / 2;
}

/** How wrapping a rim asks of the strip: the curvature it is cut to when flat, 1/mm, and the stretch that stays at worst, a share. */
export interface WrapFit {
  /** Share of the surface's bend along the rim (convex > 0) that the flat strip is curved by. */
  readonly bendShare: number;
  /** Length of the flat strip along its middle for each mm of rim: 1 + this times the rim's own curvature in its surface (outward > 0). */
  readonly lengthMm: number;
  /** Places across the wrapped strip: how far along the flat width from its middle, along the normal and beyond the rim, mm. */
  readonly across: readonly { readonly u: number; readonly up: number; readonly out: number }[];
}

/** Places looked at across a wrapped strip. */
const ACROSS = 400;

/**
 * A strip wrapped over a rim is long at each place of its section as a line beside the rim there: `1 + bend up + curve out` for each mm of rim, with `up`
 * along the normal and `out` beyond the rim. Laid flat it can only be `a + b u`: the least squares fit over its width gives what its flat edge is curved by and
 * how long its middle is; the rest must be stretched.
 */
export function wrapFit(
  profile: TrimProfile & { kind: 'edge-roll' | 'u-binding' },
  thicknessMm: number,
  k: number,
): WrapFit {
  const { flatMm } = trimSection(profile, 0, thicknessMm, k);
  const across = Array.from({ length: ACROSS }, (_, i) => {
    const u = flatMm * ((i + 0.5) / ACROSS - 0.5);
    return { u, ...placeAcross(profile, thicknessMm, k, u) };
  });
  const square = across.reduce((sum, { u }) => sum + u * u, 0);
  return {
    bendShare: across.reduce((sum, { u, up }) => sum + u * up, 0) / square,
    lengthMm: across.reduce((sum, { out }) => sum + out, 0) / ACROSS,
    across,
  };
}

function placeAcross(
  profile: TrimProfile & { kind: 'edge-roll' | 'u-binding' },
  t: number,
  k: number,
  u: number,
): { up: number; out: number } {
  const side = Math.sign(u);
  const far = Math.abs(u);
  if (profile.kind === 'edge-roll') {
    const r = profile.radiusMm + k * t;
    const half = Math.PI - Math.asin(Math.min(1, profile.rimMm / (2 * profile.radiusMm)));
    const angle = Math.min(far / r, half);
    // The lap runs on along the face, back from the rim.
    const lap = Math.max(0, far - half * r);
    return { up: side * r * Math.sin(angle), out: r * Math.cos(angle) - lap };
  }
  const { rimMm, insideRadiusMm: r } = profile;
  const flat = rimMm / 2 - r;
  const [bent, total] = [r + k * t, (Math.PI / 2) * (r + k * t)];
  const angle = Math.min(Math.max(0, far - flat), total) / bent;
  const leg = Math.max(0, far - flat - total);
  return {
    up: side * (Math.min(far, flat) + (Number.isFinite(angle) ? bent * Math.sin(angle) : 0)),
    out: k * t - (Number.isFinite(angle) ? bent * (1 - Math.cos(angle)) : 0) - leg,
  };
}
