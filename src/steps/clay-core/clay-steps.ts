import type { ClayCore } from '../../model/clay-core.ts';
import type { PlainStep } from '../../model/plain-piece.ts';

/** After the core is stacked: it is glued into the wall, modelled over coat by coat, and sanded. @param pieces keys of the core's pieces. */
export function claySteps(figures: ClayCore, pieces: readonly string[]): readonly PlainStep[] {
  const { borders, glueMm2, clay, clayMm3, depthMm, depthBoundMm, leastMm } = figures;
  const rimMm = borders.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const [coats, hours] = [clay.coats[1], clay.dryH[1]];
  const one = coats === 1;
  return [
    ...(borders.length === 0 || pieces.length === 0
      ? []
      : [
          {
            work: 'join' as const,
            pieces,
            text: `Set the core into the opening of the wall, its base level with the rim (${Math.round(rimMm)} mm round), and fix it there until the clay holds it.`,
            glueMm2,
            cautions: glueMm2 > 0 ? ['adhesive'] : [],
          },
        ]),
    {
      work: 'clay',
      pieces,
      text: `Model ${(clayMm3 / 1000).toFixed(0)} cm³ of ${clay.name} over it, ${leastMm.toFixed(1)} to ${(depthMm + depthBoundMm).toFixed(1)} mm deep, in ${coats} ${one ? 'coat' : 'coats'} where it is deepest: dry ${one ? '' : 'each '}without forced heat, ${hours} h ${one ? '' : 'together '}there.`,
      glueMm2: 0,
      cautions: [],
    },
    {
      work: 'sand',
      pieces,
      text: 'Sand the clay when it is dry right through.',
      glueMm2: 0,
      cautions: clay.cautions,
    },
  ];
}
