import { fail, ok, type Result } from '../../base/result.ts';
import type { TrimEnd, TrimWish } from '../../model/trim.ts';

const isLength = (mm: number): boolean => Number.isFinite(mm) && mm > 0;
/** Longest and widest that makes sense, mm: numbers beyond are slips of the pen. */
const MOST_MM = 1e5;

/** The wish, if a strip can be made of it. */
export function checkTrim(wish: Omit<TrimWish, 'along'>): Result<null> {
  const { widthMm, thicknessMm, neutralFraction, leftShare, profile, start, end, overlapMm, mostLengthMm, withinMm } =
    wish;
  if (!isLength(widthMm) || !isLength(thicknessMm) || widthMm > MOST_MM || thicknessMm > MOST_MM)
    return fail('trim/size', 'A strip needs a width and a thickness above 0 mm: change them.');
  if (!(neutralFraction >= 0 && neutralFraction <= 1) || !(leftShare >= 0 && leftShare <= 1))
    return fail('trim/size', 'The neutral fraction and the share on the left lie between 0 and 1: change them.');
  if (!isLength(withinMm) || !(overlapMm >= 0 && overlapMm <= MOST_MM))
    return fail(
      'trim/size',
      'How near the strip keeps to its line is above 0 mm, and an overlap is not less than 0: change them.',
    );
  if (mostLengthMm !== undefined && !(mostLengthMm > 2 * widthMm))
    return fail('trim/length', 'The longest strip must be longer than twice its width: change it.');
  for (const one of [start, end]) {
    const fault = endFault(one);
    if (fault !== null) return fail('trim/end', fault);
  }
  switch (profile.kind) {
    case 'flat':
      break;
    case 'bevelled': {
      const less = thicknessMm * Math.tan((profile.leanDeg * Math.PI) / 180) * (profile.sides === 'both' ? 2 : 1);
      if (!(profile.leanDeg > 0 && profile.leanDeg < 80 && less < widthMm))
        return fail(
          'trim/profile',
          'So steep a bevel leaves no face: a smaller angle, a thinner sheet or a wider strip.',
        );
      break;
    }
    case 'half-round':
      if (thicknessMm > widthMm / 2 + 1e-9)
        return fail('trim/profile', 'Half-round edging is no higher than half its width: make it wider or thinner.');
      break;
    case 'quarter-round':
      if (thicknessMm > widthMm + 1e-9)
        return fail('trim/profile', 'Quarter-round edging is no higher than its width: make it wider or thinner.');
      break;
    case 'edge-roll':
      if (!(
        isLength(profile.rimMm) &&
        profile.radiusMm >= profile.rimMm / 2 &&
        profile.lapMm >= 0 &&
        profile.radiusMm <= MOST_MM &&
        profile.lapMm <= MOST_MM
      ))
        return fail(
          'trim/profile',
          'An edge roll goes round with at least half the thickness of the rim as its radius: make the radius larger.',
        );
      break;
    case 'u-binding':
      if (!(
        isLength(profile.rimMm) &&
        profile.insideRadiusMm >= 0 &&
        profile.insideRadiusMm <= profile.rimMm / 2 &&
        profile.depthMm > profile.insideRadiusMm &&
        profile.depthMm <= MOST_MM
      ))
        return fail(
          'trim/profile',
          'A binding is bent no rounder than half the rim and reaches down beyond its bends: change its sizes.',
        );
      break;
  }
  return ok(null);
}

function endFault(end: TrimEnd): string | null {
  if (end.kind === 'mitre' && !(Math.abs(end.turnDeg) < 150))
    return 'A mitre halves a turn of less than 150 degrees: change it.';
  if (end.kind === 'pointed' && !isLength(end.lengthMm)) return 'A point needs a length above 0 mm: change it.';
  return null;
}
