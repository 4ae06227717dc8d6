import { deg } from '../../geom/vec.ts';
import type { BuiltLayer, TaperFigures } from '../../model/build-up.ts';
import { isStraight, radiiIn, slopeAt, volumeBetween, wholeOf, type Profile, type Stretch } from './profile.ts';
import { staveAngles } from './staves.ts';

/** Greatest heights of foam over the base and of the base over foam: between ends of layers and spans the foam is level. */
export function restOf(
  base: Profile,
  layers: readonly BuiltLayer[],
  coreRadius: number,
): { readonly sand: number; readonly fill: number } {
  if (base.length === 0) return { sand: 0, fill: 0 };
  const whole = wholeOf(base);
  const stops = [
    ...new Set([
      whole.from,
      whole.to,
      ...base.map(({ to }) => to),
      ...layers.flatMap(({ fromMm, toMm }) => [fromMm, toMm]),
    ]),
  ].sort((a, b) => a - b);
  let [sand, fill] = [0, 0];
  for (let i = 1; i < stops.length; i += 1) {
    const part = { from: stops[i - 1], to: stops[i] };
    const radii = radiiIn(base, part);
    if (radii === null) continue;
    const middle = (part.from + part.to) / 2;
    const top = layers.reduce(
      (most, one) =>
        one.fromMm <= middle && one.toMm >= middle ? Math.max(most, one.insideRadiusMm + one.thicknessMm) : most,
      coreRadius,
    );
    // Foam begins at the core: what the profile leaves bare there is not sanded.
    sand = Math.max(sand, top - Math.max(coreRadius, radii.least));
    fill = Math.max(fill, radii.most - top);
  }
  return { sand, fill };
}

/** Straight parts leaner than this are level, degrees. */
const LEVEL_DEG = 0.05;

/** Staves that are told for a taper. */
const TOLD_STAVES = [6, 8, 12];

export const tapersOf = (face: Profile, layers: readonly BuiltLayer[]): readonly TaperFigures[] =>
  face
    .filter((span) => isStraight(span) && Math.abs(deg(Math.atan(slopeAt(span, span.from)))) > LEVEL_DEG)
    .map((span) => {
      const slope = Math.atan(slopeAt(span, span.from));
      const { sand, fill } = restIn(face, layers, span);
      return {
        fromMm: span.from,
        toMm: span.to,
        slopeDeg: deg(slope),
        staves: TOLD_STAVES.map((count) => ({ count, ...staveAngles(count, slope) })),
        sandMm3: sand,
        fillMm3: fill,
      };
    });

/** Volume that layers stand over the face within a stretch, and the face over them. */
function restIn(
  face: Profile,
  layers: readonly BuiltLayer[],
  stretch: Stretch,
): { readonly sand: number; readonly fill: number } {
  let [sand, foam] = [0, 0];
  let inside = Infinity;
  for (const { fromMm, toMm, insideRadiusMm, thicknessMm } of layers) {
    const part = { from: Math.max(fromMm, stretch.from), to: Math.min(toMm, stretch.to) };
    if (!(part.to > part.from)) continue;
    const outside = insideRadiusMm + thicknessMm;
    const held = volumeBetween(face, part, insideRadiusMm, outside);
    sand += Math.PI * (outside ** 2 - insideRadiusMm ** 2) * (part.to - part.from) - held;
    foam += held;
    inside = Math.min(inside, insideRadiusMm);
  }
  const core = inside === Infinity ? 0 : inside;
  const whole = volumeBetween(face, stretch, core, Infinity);
  return { sand: Math.max(0, sand), fill: inside === Infinity ? 0 : Math.max(0, whole - foam) };
}
