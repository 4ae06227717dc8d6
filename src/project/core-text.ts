import { decimal } from '../base/decimal.ts';
import { fail, ok, type Result } from '../base/result.ts';
import type { ProfileCorner } from '../model/build-up.ts';

/**
 * Corners of a built-up profile: `0:20,300:20~,350:32` are lengths and radii, mm; `~` after one: smooth from there to the next.
 * @returns fails with `core/profile-text` where it cannot be read.
 */
export function readProfile(text: string): Result<readonly ProfileCorner[]> {
  const corners: ProfileCorner[] = [];
  for (const pair of text.split(',')) {
    const word = pair.trim();
    const isSmooth = word.endsWith('~');
    const [atMm, radiusMm, ...rest] = (isSmooth ? word.slice(0, -1) : word).split(':').map(decimal);
    if (rest.length > 0 || !Number.isFinite(atMm) || !Number.isFinite(radiusMm))
      return fail(
        'core/profile-text',
        'A profile is length:radius in mm with commas between, as 0:20,300:20~,350:32; ~ goes on smoothly.',
      );
    corners.push({ atMm, radiusMm, ...(isSmooth ? { onward: 'smooth' as const } : {}) });
  }
  return ok(corners);
}

/** A profile as it is read again. */
export const profileText = (profile: readonly ProfileCorner[]): string =>
  profile.map(({ atMm, radiusMm, onward }) => `${atMm}:${radiusMm}${onward === 'smooth' ? '~' : ''}`).join(',');
