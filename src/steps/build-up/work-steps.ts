import type { BuildUp, BuildUpWish } from '../../model/build-up.ts';
import type { PlainDraft, PlainStep } from '../../model/plain-piece.ts';
import { LEAST_SEAM_TURN_DEG } from './seam-angles.ts';
import type { WoundStrip } from './wind.ts';

const short = (value: number, digits = 1): string => String(Number(value.toFixed(digits)) + 0);
const cm3 = (mm3: number): string => `${(mm3 / 1000).toFixed(1)} cm³`;
const whole = (pieces: readonly PlainDraft[]): number =>
  pieces.reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0);
const keys = (pieces: readonly PlainDraft[]): readonly string[] => pieces.map(({ key }) => key);

/** Less than this, mm³, is nothing to sand or fill: a pinch of dust. */
const NOTHING_MM3 = 1;

/** The order of the work on a core: cut, wind layer on layer, sand or fill, cover, what sits on it, caps, strips. */
export function workSteps(
  wish: BuildUpWish,
  built: Pick<BuildUp, 'core' | 'layers' | 'skin' | 'staves' | 'sandMm3' | 'fillMm3' | 'sandDepthMm' | 'fillDepthMm'>,
  layerPieces: readonly (readonly PlainDraft[])[],
  covers: readonly PlainDraft[],
  caps: readonly PlainDraft[],
  wound: readonly WoundStrip[],
): readonly PlainStep[] {
  const { core, layers, skin, staves } = built;
  // Foam over PVC is never warmed on it.
  const rolling = wish.core.material?.includes('pvc') === true ? ['adhesive', 'pvc'] : ['adhesive'];
  const steps: PlainStep[] = [
    {
      work: 'insert',
      pieces: [],
      text: `Cut the core, ${wish.core.pipe ?? `${short(core.diameterMm, 2)} mm`}, to ${short(core.cutMm)} mm${core.marks.length > 0 ? ` and mark ${core.marks.map(({ name, atMm }) => `${name} ${short(atMm)}`).join(', ')}` : ''}; draw a line along it from its start.`,
      glueMm2: 0,
      cautions: ['machines'],
    },
  ];
  for (const [i, { number, thicknessMm, fromMm, toMm, seamsDeg, depth }] of layers.entries())
    steps.push({
      work: 'wrap',
      pieces: keys(layerPieces[i]),
      text: `Wind layer ${number}, ${short(thicknessMm)} mm, round ${depth === 1 ? 'the core' : 'the foam'} from ${short(fromMm)} to ${short(toMm)} mm, seam at ${seamsDeg.map((one) => `${short(one)}°`).join(', ')}${depth > 1 ? `, ${LEAST_SEAM_TURN_DEG}° or more from those beneath` : ' from the line'}.`,
      glueMm2: 2 * whole(layerPieces[i]) + 2 * seamsDeg.length * (toMm - fromMm) * thicknessMm,
      cautions: rolling,
    });
  // A polygon is sanded after it is glued.
  const [stavesSand, stavesFill] = [
    staves.reduce((sum, one) => sum + one.sandMm3, 0),
    staves.reduce((sum, one) => sum + one.fillMm3, 0),
  ];
  const under = skin.length > 0 ? ` to ${short(skin[0].thicknessMm)} mm under the profile` : ' to the profile';
  const rest = (sandMm3: number, fillMm3: number, what: string): void => {
    if (fillMm3 > NOTHING_MM3)
      steps.push({
        work: 'fill',
        pieces: [],
        text: `Fill ${what}: ${cm3(fillMm3)}, at most ${short(built.fillDepthMm)} mm.`,
        glueMm2: 0,
        cautions: [],
      });
    if (sandMm3 > NOTHING_MM3)
      steps.push({
        work: 'sand',
        pieces: [],
        text: `Sand ${what}: ${cm3(sandMm3)}${built.sandDepthMm > 0.05 ? `, at most ${short(built.sandDepthMm)} mm deep` : ''}.`,
        glueMm2: 0,
        cautions: ['dust'],
      });
  };
  rest(built.sandMm3 - stavesSand, built.fillMm3 - stavesFill, `the layers${under}`);
  if (skin.length > 0)
    steps.push({
      work: 'wrap',
      pieces: keys(covers),
      text: `Lay the skin band by band, ${skin.length} of them, seams at ${skin.map(({ seamDeg }) => `${short(seamDeg)}°`).join(', ')}.`,
      glueMm2: 2 * whole(covers),
      cautions: rolling,
    });
  staves.forEach(({ count, fromMm, toMm, tableTiltDeg, lengthMm, thicknessMm }, i) =>
    steps.push({
      work: 'join',
      pieces: [covers[i].key],
      text: `Saw ${count} staves with the table at ${tableTiltDeg.toFixed(2)}°, glue them edge to edge round the foam from ${short(fromMm)} to ${short(toMm)} mm.`,
      glueMm2: (2 * count * lengthMm * thicknessMm) / Math.cos((tableTiltDeg * Math.PI) / 180),
      cautions: ['machines', ...rolling],
    }),
  );
  if (staves.length > 0) rest(stavesSand, stavesFill, 'the staves round');
  for (const { name, fromMm, toMm, holeMm, on } of core.seats)
    steps.push({
      work: 'slide',
      pieces: [],
      text: `Slide ${name} on from ${short(fromMm)} to ${short(toMm)} mm, its hole ${short(holeMm, 2)} mm across${on === 'core' ? '' : ', on the foam'}.`,
      glueMm2: Math.PI * holeMm * (toMm - fromMm) * 2,
      cautions: ['adhesive'],
    });
  if (caps.length > 0)
    steps.push({
      work: 'lay',
      pieces: keys(caps),
      text: `Glue ${caps.map(({ name, quantity }) => `${name}, ${quantity} disc${quantity === 1 ? '' : 's'}`).join(', and ')}.`,
      glueMm2: 2 * whole(caps),
      cautions: ['adhesive'],
    });
  for (const [i, { winding, piece }] of wound.entries())
    steps.push({
      work: 'wind',
      pieces: piece === null ? [] : [piece.key],
      text: `Wind strip ${i + 1} from ${short(winding.fromMm)} to ${short(winding.toMm)} mm: ${winding.turns.toFixed(2)} turns of ${short(winding.pitchMm[0])}${winding.pitchMm[1] - winding.pitchMm[0] > 0.05 ? ` to ${short(winding.pitchMm[1])}` : ''} mm, marked along the line.`,
      glueMm2: 2 * winding.stripMm * wish.windings[i].widthMm * winding.starts * (wish.windings[i].crossed ? 2 : 1),
      cautions: ['adhesive'],
    });
  return steps;
}
