import type { PullWay, Springing } from '../model/springing.ts';
import { SPRINGING_ASSUMES } from '../pipeline/springing.ts';

/** Joints told to pull most; the rest is in the report. */
const MOST_JOINTS = 3;

const PULL_WORDS: Readonly<Record<PullWay, string>> = {
  opensFace: 'opens at the face',
  opensBack: 'opens at the back',
  apart: 'is pulled apart',
  slides: 'slides along itself',
  lifts: 'lifts off on one side',
};

/** Joints to warm or tape first; nothing where none pulls. */
export function springLines({ springing }: { readonly springing: Springing | null }): readonly string[] {
  const pulls = (springing?.seams ?? []).filter(({ pullNPerMm }) => pullNPerMm > 0).slice(0, MOST_JOINTS);
  if (pulls.length === 0) return [];
  const told = pulls.map(
    ({ letter, way, pullNPerMm, opensMm }) =>
      `${letter} ${PULL_WORDS[way]}, ${(10 * pullNPerMm).toFixed(1)} N/cm, let go up to ${opensMm.toFixed(0)} mm off`,
  );
  return [`warm or tape first: ${told.join('; ')}`, `  a guide, for ${SPRINGING_ASSUMES}`];
}
