import { html, nothing } from 'lit';
import type { LengthUnit } from '../base/format-length.ts';
import type { TrimProfile } from '../model/trim.ts';
import { choiceField, lengthField, numberField } from './figure-fields.ts';
import { STRIP_WORDS } from './strip-words.ts';

/** A lean is less than this, degrees. */
const MOST_LEAN_DEG = 79;

/** Figures of the section of a strip, where it has any. */
export function profileFields(profile: TrimProfile, unit: LengthUnit, take: (profile: TrimProfile) => void) {
  const words = STRIP_WORDS;
  const from = (of: Extract<TrimProfile, { from: unknown }>) =>
    choiceField(words.from, words.source, of.from, (source) => take({ ...of, from: source }));
  const rim = (of: Extract<TrimProfile, { rimMm: number }>) =>
    lengthField(words.rim, of.rimMm, unit, (rimMm) =>
      take(of.kind === 'edge-roll' ? { ...of, rimMm, radiusMm: Math.max(of.radiusMm, rimMm / 2) } : { ...of, rimMm }),
    );
  switch (profile.kind) {
    case 'flat':
      return nothing;
    case 'bevelled':
      return html`${numberField(words.lean, profile.leanDeg, '°', (leanDeg) => take({ ...profile, leanDeg }), {
        least: 1,
        most: MOST_LEAN_DEG,
      })}
      ${choiceField(words.sides, words.side, profile.sides, (sides) => take({ ...profile, sides }))}`;
    case 'half-round':
      return from(profile);
    case 'quarter-round':
      return html`${from(profile)}
      ${choiceField(words.square, words.hand, profile.square, (square) => take({ ...profile, square }))}`;
    case 'edge-roll':
      return html`${rim(profile)}
      ${lengthField(words.radius, profile.radiusMm, unit, (radiusMm) => take({ ...profile, radiusMm }), {
        least: profile.rimMm / 2,
      })}
      ${lengthField(words.lap, profile.lapMm, unit, (lapMm) => take({ ...profile, lapMm }), { least: 0 })}`;
    case 'u-binding':
      return html`${rim(profile)}
      ${lengthField(words.depth, profile.depthMm, unit, (depthMm) => take({ ...profile, depthMm }))}
      ${lengthField(
        words.radius,
        profile.insideRadiusMm,
        unit,
        (insideRadiusMm) => take({ ...profile, insideRadiusMm }),
        { least: 0 },
      )}`;
  }
}
