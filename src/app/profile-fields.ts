import { html, nothing } from 'lit';
import type { LengthUnit } from '../base/format-length.ts';
import type { TrimProfile } from '../model/trim.ts';
import { choiceField, lengthField, numberField } from './figure-fields.ts';
import { STRIP_WORDS } from './strip-words.ts';
import { means } from './help/means.ts';

/** A lean is less than this, degrees. */
const MOST_LEAN_DEG = 79;

/** Figures of the section of a strip, where it has any. */
export function profileFields(profile: TrimProfile, unit: LengthUnit, take: (profile: TrimProfile) => void) {
  const words = STRIP_WORDS;
  const from = (of: Extract<TrimProfile, { from: unknown }>) =>
    means(
      'profile-from',
      choiceField(words.from, words.source, of.from, (source) => take({ ...of, from: source })),
    );
  const rim = (of: Extract<TrimProfile, { rimMm: number }>) =>
    means(
      'profile-rim',
      lengthField(words.rim, of.rimMm, unit, (rimMm) =>
        take(of.kind === 'edge-roll' ? { ...of, rimMm, radiusMm: Math.max(of.radiusMm, rimMm / 2) } : { ...of, rimMm }),
      ),
    );
  switch (profile.kind) {
    case 'flat':
      return nothing;
    case 'bevelled':
      return html`${means(
        'profile-lean',
        numberField(words.lean, profile.leanDeg, '°', (leanDeg) => take({ ...profile, leanDeg }), {
          least: 1,
          most: MOST_LEAN_DEG,
        }),
      )}
      ${means(
        'profile-sides',
        choiceField(words.sides, words.side, profile.sides, (sides) => take({ ...profile, sides })),
      )}`;
    case 'half-round':
      return from(profile);
    case 'quarter-round':
      return html`${from(profile)}
      ${means(
        'profile-square',
        choiceField(words.square, words.hand, profile.square, (square) => take({ ...profile, square })),
      )}`;
    case 'edge-roll':
      return html`${rim(profile)}
      ${means(
        'profile-radius',
        lengthField(words.radius, profile.radiusMm, unit, (radiusMm) => take({ ...profile, radiusMm }), {
          least: profile.rimMm / 2,
        }),
      )}
      ${means(
        'profile-lap',
        lengthField(words.lap, profile.lapMm, unit, (lapMm) => take({ ...profile, lapMm }), { least: 0 }),
      )}`;
    case 'u-binding':
      return html`${rim(profile)}
      ${means(
        'profile-depth',
        lengthField(words.depth, profile.depthMm, unit, (depthMm) => take({ ...profile, depthMm })),
      )}
      ${means(
        'profile-inside',
        lengthField(
          words.radius,
          profile.insideRadiusMm,
          unit,
          (insideRadiusMm) => take({ ...profile, insideRadiusMm }),
          { least: 0 },
        ),
      )}`;
  }
}
