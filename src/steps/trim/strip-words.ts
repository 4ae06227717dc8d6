import type { Finding } from '../../base/finding.ts';
import type { StripFacts, TrimProfile } from '../../model/trim.ts';

/** A strip bent to more than this lies flat for all that foam knows, mm. */
const FLAT_RADIUS_MM = 1e5;
/** In-plane stretch and strain of the skins, per cent: worth a word, and too much (shop rules of cold foam). */
const STRETCH_PERCENT = { notice: 3, most: 8 };
const STRAIN_PERCENT = { notice: 10, most: 25 };
/** Twist under this is not worth a word, degrees in 100 mm. */
const LEAST_TWIST_DEG = 1;

export const isFlatEnough = ({ leastBendRadiusMm }: Pick<StripFacts, 'leastBendRadiusMm'>): boolean =>
  leastBendRadiusMm > FLAT_RADIUS_MM;

export const tenth = (mm: number): string => String(Math.round(10 * mm) / 10);

const PROFILE_WORDS: Record<TrimProfile['kind'], string> = {
  flat: '',
  bevelled: 'Long edges lean in towards the face.',
  'half-round': 'Half-round edging.',
  'quarter-round': 'Quarter-round edging.',
  'edge-roll': 'Wrap it over the rim round its cord; the left edge in the drawing lies as the marks say.',
  'u-binding': 'Fold it square over the rim, the same way down on both faces.',
};

/** What is printed on a strip's paper. */
export function stripNotes(facts: StripFacts, profile: TrimProfile): readonly string[] {
  const bent = isFlatEnough(facts) ? [] : [`Bends to a radius of ${tenth(facts.leastBendRadiusMm)} mm or more.`];
  const twist =
    facts.twistDegPer100Mm < LEAST_TWIST_DEG
      ? []
      : [`Twists by up to ${tenth(facts.twistDegPer100Mm)} degrees in 100 mm.`];
  const words = PROFILE_WORDS[profile.kind];
  const sand = facts.sandMm3 > 0 ? [`Sand off ${tenth(facts.sandMm3 / 1000)} cm³.`] : [];
  return [...(words === '' ? [] : [words]), ...bent, ...twist, ...sand];
}

/** What the maker should know of a strip. */
export function stripFindings(facts: StripFacts, name: string, withinMm: number): readonly Finding[] {
  const found: Finding[] = [];
  const { offMm, greatestStretchPercent: stretch, skinStrainPercent: strain } = facts;
  const where = { piece: facts.key };
  if (offMm > 1.001 * withinMm)
    found.push({
      code: 'trim/off-line',
      severity: 'note',
      text: `${name} lies up to ${tenth(offMm)} mm beside its line, which is too jagged to follow: check that it covers the seam, or draw a smoother line.`,
      value: offMm,
      limit: withinMm,
      unit: 'mm',
      where,
    });
  if (Math.abs(stretch) > STRETCH_PERCENT.notice)
    found.push({
      code: 'trim/stretch',
      severity: Math.abs(stretch) > STRETCH_PERCENT.most ? 'warning' : 'note',
      text: `An edge of ${name} must ${stretch > 0 ? 'stretch' : 'shrink'} by ${tenth(Math.abs(stretch))} %: make it narrower, or warm it.`,
      value: Math.abs(stretch),
      limit: STRETCH_PERCENT.notice,
      unit: '%',
      where,
    });
  if (strain > STRAIN_PERCENT.notice)
    found.push({
      code: 'trim/bend',
      severity: strain > STRAIN_PERCENT.most ? 'warning' : 'note',
      text: `${name} is bent so tightly that its skin is strained by ${tenth(strain)} %: take thinner foam, or groove its back.`,
      value: strain,
      limit: STRAIN_PERCENT.notice,
      unit: '%',
      where,
    });
  return found;
}
