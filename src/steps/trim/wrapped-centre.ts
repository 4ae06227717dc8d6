import type { Surface } from '../../mesh/surface.ts';
import type { TrimPlace, TrimProfile } from '../../model/trim.ts';
import { flatCentre, type FlatCentre } from './flat-centre.ts';
import type { LineTurning } from './line-turning.ts';
import { wrapFit } from './profile.ts';
import { stripBend } from './strip-bend.ts';
import { partAt } from './develop-line.ts';

/** A strip wrapped over a rim, laid flat, and the stretch that stays on its upper and lower half, per cent by place. */
export interface WrappedCentre {
  readonly centre: FlatCentre;
  readonly left: readonly TrimPlace[];
  readonly right: readonly TrimPlace[];
}

/**
 * The flat middle of a strip that is wrapped over a rim. Its own surface stands square to that of the rim, so what bends the rim over the faces curves the
 * strip in its plane, by the share that fits best over its width (`wrapFit`); what curves the rim in its surface makes it longer or shorter as a whole, and
 * stretches its laps.
 * @param side  on which the surface lies, along the rim. The strip is seen from beyond the rim, along the rim.
 */
export function wrappedCentre(
  surface: Surface,
  turning: LineTurning,
  side: 'left' | 'right',
  profile: TrimProfile & { kind: 'edge-roll' | 'u-binding' },
  thicknessMm: number,
  neutralFraction: number,
  withinMm: number,
  overlapMm: number,
): WrappedCentre {
  const fit = wrapFit(profile, thicknessMm, neutralFraction);
  const width = 2 * Math.abs(fit.across[0].u);
  const whole = turning.laid.lengthMm + (turning.line.closed ? overlapMm : 0);
  const on = flatCentre(turning, 0, whole, withinMm, width);
  const bends = stripBend(surface, turning, 0, whole, Math.min(whole, Math.max(4 * turning.meshMm, width)));
  const sign = side === 'left' ? 1 : -1;
  const count = on.ways.length;
  const [x, y, headings, curvature, arc] = [0, 1, 2, 3, 4].map(() => new Float64Array(count));
  const left: TrimPlace[] = [];
  const right: TrimPlace[] = [];
  for (let i = 0; i < count; i += 1) {
    const k = partAt(bends.ways, on.ways[i]);
    const share = (on.ways[i] - bends.ways[k]) / (bends.ways[k + 1] - bends.ways[k]);
    const bend = bends.bend[k] + share * (bends.bend[k + 1] - bends.bend[k]);
    const outward = sign * on.curvature[i];
    const stretchOfMiddle = 1 + outward * fit.lengthMm;
    // Left of the strip is up where the surface is on the left of the rim; a longer upper edge turns it right.
    curvature[i] = (-sign * fit.bendShare * bend) / stretchOfMiddle;
    if (i > 0) {
      const step = (on.arc[i] - on.arc[i - 1]) * stretchOfMiddle;
      const turn = (step * (curvature[i] + curvature[i - 1])) / 2;
      arc[i] = arc[i - 1] + step;
      headings[i] = headings[i - 1] + turn;
      const middle = headings[i - 1] + turn / 2;
      const chord = step * (1 - (turn * turn) / 24);
      x[i] = x[i - 1] + chord * Math.cos(middle);
      y[i] = y[i - 1] + chord * Math.sin(middle);
    }
    let [leftMost, rightMost] = [0, 0];
    for (const { u, up, out } of fit.across) {
      const flat = stretchOfMiddle + fit.bendShare * bend * u;
      const stretch = 100 * ((1 + bend * up + outward * out) / flat - 1);
      const isLeft = sign * u > 0;
      if (isLeft && Math.abs(stretch) > Math.abs(leftMost)) leftMost = stretch;
      if (!isLeft && Math.abs(stretch) > Math.abs(rightMost)) rightMost = stretch;
    }
    if (i % 8 === 0 || i + 1 === count) {
      left.push({ atMm: arc[i], value: leftMost });
      right.push({ atMm: arc[i], value: rightMost });
    }
  }
  return { centre: { ...on, x, y, headings, curvature, arc }, left, right };
}
