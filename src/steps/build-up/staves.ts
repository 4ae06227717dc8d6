import { fail, ok, type Result } from '../../base/result.ts';
import { gauss8 } from '../../geom/integrate.ts';
import { chainSweep, line } from '../../geom/outline.ts';
import { deg, vec2 } from '../../geom/vec.ts';
import type { BuildRule, StaveAngles, StaveSet, StavesWish } from '../../model/build-up.ts';
import { leaningEdge } from '../../model/plain-edge.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import { isStraight, radiusAt, straightSpan, type Profile } from './profile.ts';
import { arrow } from './wrap-piece.ts';

export interface Staves {
  readonly set: StaveSet;
  readonly piece: PlainDraft;
  /** The profile with what the staves take up inside its stretch taken off. */
  readonly base: Profile;
}

/**
 * Compound angles of n staves whose faces lean by `slope` from the axis. The normals of two neighbours are (cos s, 0, -sin s) and the same turned by
 * 2 pi / n, so the angle between them is 2 tilt with sin(tilt) = cos s sin(pi / n); half the width of a face grows by tan(pi / n) for each mm the flat
 * grows, so by sin s tan(pi / n) for each mm along the face: the tangent of the taper.
 */
export function staveAngles(count: number, slope: number): StaveAngles {
  return {
    tableTiltDeg: deg(Math.asin(Math.cos(slope) * Math.sin(Math.PI / count))),
    taperDeg: deg(Math.atan(Math.abs(Math.sin(slope)) * Math.tan(Math.PI / count))),
    slopeDeg: deg(slope),
  };
}

/**
 * How far flats of a polygon stand from the axis where its circle has the radius 1: they touch it (foam stands proud), its corners lie on it, or
 * both have the same area, n tan(pi / n) a² = pi.
 */
const flatOf = (rule: BuildRule, count: number): number => {
  const half = Math.PI / count;
  if (rule === 'sand') return 1;
  return rule === 'fill' ? Math.cos(half) : Math.sqrt(half / Math.tan(half));
};

/**
 * A stretch closed with straight strips, edges leaning: its round is sanded, or filled, from flats.
 * @returns fails with `core/staves`.
 */
export function makeStaves(
  profile: Profile,
  coreRadius: number,
  wish: StavesWish,
  rule: BuildRule,
  number: number,
): Result<Staves> {
  const { fromMm, toMm, count, sheetMm } = wish;
  const what = `Staves from ${fromMm} to ${toMm} mm`;
  if (!(toMm - fromMm >= 1))
    return fail('core/staves', `${what} have no length: say where they begin and end, as 300-350.`);
  if (!Number.isInteger(count) || count < 3 || count > 60)
    return fail('core/staves', `${what}: there are 3 to 60 of them, not ${count}.`);
  if (!(sheetMm >= 0.1 && sheetMm <= 200))
    return fail('core/staves', `${what}: their sheet is from 0.1 to 200 mm thick.`);
  const at = profile.findIndex(({ from, to }) => from <= fromMm && to >= toMm);
  if (at < 0 || !isStraight(profile[at]))
    return fail('core/staves', `${what} must lie within one straight stretch of the profile: one set for each.`);
  const span = profile[at];
  const share = flatOf(rule, count);
  const [r0, r1] = [radiusAt(span, fromMm), radiusAt(span, toMm)];
  const [a0, a1] = [share * r0, share * r1];
  // Flats lean a little less than the circle they stand for where the rule brings them in.
  const lean = Math.atan((a1 - a0) / (toMm - fromMm));
  const [b0, b1] = [a0 - sheetMm / Math.cos(lean), a1 - sheetMm / Math.cos(lean)];
  if (Math.min(b0, b1) < coreRadius - 1e-6)
    return fail(
      'core/staves',
      `${what}: ${sheetMm} mm does not fit between profile and core, by ${(coreRadius - Math.min(b0, b1)).toFixed(2)} mm: take a thinner sheet.`,
    );
  const angles = staveAngles(count, lean);
  const tan = Math.tan(Math.PI / count);
  const lengthMm = (toMm - fromMm) / Math.cos(lean);
  const [w0, w1] = [2 * a0 * tan, 2 * a1 * tan];
  const outline = [
    leaningEdge('start', [line(vec2(-w0 / 2, 0), vec2(w0 / 2, 0))], -deg(lean)),
    leaningEdge('edge', [line(vec2(w0 / 2, 0), vec2(w1 / 2, lengthMm))], angles.tableTiltDeg, { seam: 'edge' }),
    leaningEdge('end', [line(vec2(w1 / 2, lengthMm), vec2(-w1 / 2, lengthMm))], deg(lean)),
    leaningEdge('edge', [line(vec2(-w1 / 2, lengthMm), vec2(-w0 / 2, 0))], angles.tableTiltDeg, { seam: 'edge' }),
  ];
  const { sandMm3, fillMm3 } = rests(count, share, (x) => radiusAt(span, x), fromMm, toMm);
  const set: StaveSet = {
    ...angles,
    fromMm,
    toMm,
    count,
    thicknessMm: sheetMm,
    widthMm: [w0, w1],
    lengthMm,
    sandMm3,
    fillMm3,
  };
  const base: Profile = [
    ...profile.slice(0, at),
    ...(fromMm > span.from ? [straightSpan(span.from, radiusAt(span, span.from), fromMm, r0)] : []),
    straightSpan(fromMm, b0, toMm, b1),
    ...(span.to > toMm ? [straightSpan(toMm, r1, span.to, radiusAt(span, span.to))] : []),
    ...profile.slice(at + 1),
  ];
  const piece: PlainDraft = {
    key: `stave-${number}`,
    name: `stave ${number}`,
    quantity: count,
    thicknessMm: sheetMm,
    drawnAt: 1,
    outline,
    holes: [],
    bend: { kind: 'flat' },
    lines: arrow(0, lengthMm),
    notes: [
      `${count} staves from ${fromMm.toFixed(1)} to ${toMm.toFixed(1)} mm: tilt the table by ${angles.tableTiltDeg.toFixed(2)}° and run each long edge ${angles.taperDeg.toFixed(2)}° off the middle line.`,
    ],
    areaMm2: chainSweep(outline.flatMap(({ segments }) => segments)),
  };
  return ok({ set, piece, base });
}

/**
 * What lies outside the circle of radius r and inside a polygon whose flats stand at a = share r, and the other way round: both go with r². Of one
 * corner's sector of the angle 2 h, h = pi / n, the circle leaves the flat at the angle c = acos(share).
 */
function rests(
  count: number,
  share: number,
  radius: (x: number) => number,
  from: number,
  to: number,
): { readonly sandMm3: number; readonly fillMm3: number } {
  const h = Math.PI / count;
  const c = Math.min(h, Math.acos(Math.min(1, share)));
  // From c to h the polygon stands over the circle, up to c the circle over the polygon.
  const over = count * (share * share * (Math.tan(h) - Math.tan(c)) - (h - c));
  const under = count * (c - share * share * Math.tan(c));
  const squares = gauss8((x) => radius(x) ** 2, from, to);
  return { sandMm3: over * squares, fillMm3: under * squares };
}
