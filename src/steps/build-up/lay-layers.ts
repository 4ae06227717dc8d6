import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { BEND_LIMITS } from '../../model/bend-check.ts';
import type { BuiltLayer } from '../../model/build-up.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import type { PlannedLayer } from './plan-layers.ts';
import { LEAST_SEAM_TURN_DEG, leastApart, seamPlaces, wholeTurn } from './seam-angles.ts';
import { seamBevelDeg, skinStrainPct, wrapAround, wrapParts, wrapPiece, type WrapMark } from './wrap-piece.ts';

export interface LaidLayers {
  readonly layers: readonly BuiltLayer[];
  /** Of each layer, in the order of the layers. */
  readonly pieces: readonly (readonly PlainDraft[])[];
  readonly findings: readonly Finding[];
}

/** Planned layers with their numbers, seams, pieces and marks. @returns fails with `core/sheet-size`. */
export function layLayers(planned: readonly PlannedLayer[], seamTurnDeg: number): Result<LaidLayers> {
  const layers: BuiltLayer[] = [];
  const parts: { readonly around: number; readonly along: readonly number[] }[] = [];
  for (const [i, { from, to, depth, inside, sheet, sandMm3, fillMm3 }] of planned.entries()) {
    const aroundMm = wrapAround(inside, sheet);
    const part = wrapParts(aroundMm, to - from, sheet.sizeMm, depth % 2 === 0);
    if (part === null)
      return fail(
        'core/sheet-size',
        `Layer ${i + 1}, ${aroundMm.toFixed(0)} × ${(to - from).toFixed(0)} mm, would come in too many parts of its sheet: take a larger sheet.`,
      );
    const beneath = layers.filter((one) => one.depth === depth - 1 && one.fromMm < to && one.toMm > from);
    layers.push({
      number: i + 1,
      depth,
      fromMm: from,
      toMm: to,
      insideRadiusMm: inside,
      thicknessMm: sheet.thicknessMm,
      neutralFraction: sheet.neutralFraction,
      aroundMm,
      seamsDeg: seamPlaces(
        (depth - 1) * seamTurnDeg,
        part.around,
        beneath.flatMap(({ seamsDeg }) => seamsDeg),
      ),
      sandMm3,
      fillMm3,
      seamBevelDeg: seamBevelDeg(inside, sheet),
    });
    parts.push(part);
  }
  const pieces = layers.map((layer, i) => piecesOf(layer, parts[i], layers));
  return ok({ layers, pieces, findings: findingsOf(layers) });
}

function piecesOf(
  layer: BuiltLayer,
  { around, along }: { readonly around: number; readonly along: readonly number[] },
  layers: readonly BuiltLayer[],
): readonly PlainDraft[] {
  const { number, fromMm, insideRadiusMm, thicknessMm, neutralFraction, aroundMm, seamsDeg } = layer;
  let start = fromMm;
  return along.map((long, k) => {
    const from = start;
    start += long;
    const name = `layer ${number}${along.length > 1 ? ` part ${k + 1}` : ''}`;
    const notes = [
      `${name}: from ${from.toFixed(1)} to ${(from + long).toFixed(1)} mm along the core, ${around > 1 ? `${around} round it, seams` : 'seam'} at ${seamsDeg.map((one) => `${one.toFixed(1)}°`).join(', ')}.`,
      ...(layer.seamBevelDeg > 0
        ? [`Seam edges lean ${layer.seamBevelDeg.toFixed(1)}° in under: so thick a sheet stays flat there.`]
        : []),
    ];
    return wrapPiece(aroundMm / around, long, 1 / around, {
      key: `layer-${number}${along.length > 1 ? `-${k + 1}` : ''}`,
      name,
      thicknessMm,
      neutralFraction,
      radiusMm: insideRadiusMm + neutralFraction * thicknessMm,
      quantity: around,
      bevelDeg: layer.seamBevelDeg,
      seam: `seam of layer ${number}`,
      marks: around > 1 ? [] : marksOn(layer, from, long, layers),
      notes,
    });
  });
}

/** Where what lies on it has its seams and its ends. */
function marksOn(layer: BuiltLayer, from: number, long: number, layers: readonly BuiltLayer[]): readonly WrapMark[] {
  const upon = layers.filter(
    ({ depth, fromMm, toMm }) => depth === layer.depth + 1 && fromMm < from + long && toMm > from,
  );
  return upon.flatMap(({ number, seamsDeg, fromMm, toMm }) => [
    ...seamsDeg.map((seam) => ({ text: `seam of ${number}`, at: { turnDeg: wholeTurn(seam - layer.seamsDeg[0]) } })),
    { text: `${number} from here`, at: { alongMm: fromMm - from } },
    { text: `${number} up to here`, at: { alongMm: toMm - from } },
  ]);
}

function findingsOf(layers: readonly BuiltLayer[]): readonly Finding[] {
  const found: Finding[] = [];
  const tight = layers.filter((one) => skinStrainPct(one.insideRadiusMm, one) > BEND_LIMITS.noticePct);
  if (tight.length > 0) {
    const worst = Math.max(...tight.map((one) => skinStrainPct(one.insideRadiusMm, one)));
    const isTooMuch = worst > BEND_LIMITS.tooMuchPct;
    found.push({
      code: isTooMuch ? 'core/bend-too-tight' : 'core/bend-tight',
      severity: 'warning',
      text: `In ${named(tight)} a skin changes by up to ${worst.toFixed(0)} %: ${isTooMuch ? 'take thinner sheets next to the core' : 'warm it before it is wound'}.`,
      value: worst,
      limit: isTooMuch ? BEND_LIMITS.tooMuchPct : BEND_LIMITS.noticePct,
      unit: '%',
      where: {},
    });
  }
  const near = layers.filter((one) => {
    const beneath = layers.filter(
      ({ depth, fromMm, toMm }) => depth === one.depth - 1 && fromMm < one.toMm && toMm > one.fromMm,
    );
    return (
      leastApart(
        one.seamsDeg,
        beneath.flatMap(({ seamsDeg }) => seamsDeg),
      ) < LEAST_SEAM_TURN_DEG
    );
  });
  if (near.length > 0)
    found.push({
      code: 'core/seams-near',
      severity: 'note',
      text: `In ${named(near)} seams come nearer than ${LEAST_SEAM_TURN_DEG}° to those beneath, because there are several: they stand as far apart as they can.`,
      where: {},
    });
  return found;
}

const named = (layers: readonly BuiltLayer[]): string =>
  `layer${layers.length === 1 ? '' : 's'} ${layers
    .slice(0, 8)
    .map(({ number }) => number)
    .join(', ')}${layers.length > 8 ? ' and others' : ''}`;
