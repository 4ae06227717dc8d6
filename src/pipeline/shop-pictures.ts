import type { PieceId } from '../base/ids.ts';
import type { PropPlate } from '../model/bench-view.ts';
import type { Stepwise } from '../base/stepwise.ts';
import type { GluingRun, GluingStep } from '../model/gluing.ts';
import type { Drawing } from '../model/template.ts';
import { stepPicture, type SeamToDraw, type StepScene } from '../steps/shop/step-picture.ts';
import { wordsInFront } from '../steps/tile/words-in-front.ts';
import type { LayerOutcome, Outcome, SculptOutcome } from './outcome.ts';
import { propSteps } from './prop.ts';

/** Size of a picture, mm. */
export interface PictureSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * A picture of the body that each step works on, as it is when the step is done. What is laid is shown with all that lies there already.
 * @param sizeOf how large it is to be.
 * @param before pieces that were laid before the first of these steps.
 * @returns one for each step.
 */
export function* stepPictureSteps(
  outcome: Outcome,
  steps: readonly GluingStep[],
  sizeOf: (step: GluingStep) => PictureSize,
  before: ReadonlySet<PieceId> = new Set(),
): Stepwise<readonly Drawing[]> {
  const { project, sculpts } = outcome;
  const pieces = outcome.pieces ?? [];
  const plateOf = new Map<PieceId, PropPlate>();
  const sculptOf = new Map<PieceId, SculptOutcome>();
  const wanted = new Set(steps.flatMap(({ makes }) => makes.pieces));
  for (const own of sculpts) {
    const ids = (own.pieces ?? []).map(({ id }) => id);
    for (const id of ids) sculptOf.set(id, own);
    if (!ids.some((id) => wanted.has(id))) continue;
    const prop = yield* propSteps({ ...own, project });
    for (const plate of prop?.plates ?? []) plateOf.set(ids[plate.piece], plate);
  }
  const numberOf = new Map(pieces.map(({ id, number }) => [id, number]));
  const laid = new Set(before);
  const drawings: Drawing[] = [];
  for (const step of steps) {
    const sculpt = sculptOf.get(step.makes.pieces[0]);
    if (sculpt === undefined) throw new Error(`stepPicture: step ${step.number} makes nothing`);
    // What is laid already is shown with it, as far as it is of the same sculpt.
    const onto = step.work === 'lay' ? [...laid].filter((id) => sculptOf.get(id) === sculpt) : step.makes.pieces;
    const added = new Set<PieceId>(step.work === 'close' ? [] : step.adds.pieces);
    const shown = [...new Set([...onto, ...step.makes.pieces])];
    const scene: StepScene = {
      plates: shown.flatMap((id) => {
        const plate = plateOf.get(id);
        return plate === undefined ? [] : [{ ...plate, number: numberOf.get(id) ?? 0, isNew: added.has(id) }];
      }),
      seams: step.runs.map((run) => seamToDraw(sculpt, run)),
      upAxis: sculpt.part.upAxis,
    };
    const { widthMm, heightMm } = sizeOf(step);
    drawings.push(wordsInFront(stepPicture(scene, widthMm, heightMm)));
    for (const id of step.makes.pieces) laid.add(id);
    yield;
  }
  return drawings;
}

/** The stretch of a seam on the face of its sheet. */
function seamToDraw({ layers, raised }: SculptOutcome, run: GluingRun): SeamToDraw {
  const layer = [...layers, ...raised].find(({ seams }) => seams?.some(({ id }) => id === run.seam) === true);
  const points = stretchPoints(layer, run);
  const share = (run.touch.stationMm - run.fromMm) / (run.toMm - run.fromMm);
  return { letter: run.letter, points, touchShare: share, roll: run.roll };
}

function stretchPoints(layer: LayerOutcome | undefined, { seam, fromMm, toMm }: GluingRun): Float64Array {
  const cut = layer?.cut;
  const chain = cut?.chains.find(({ id }) => id === seam);
  if (cut === undefined || cut === null || chain === undefined) throw new Error(`seamToDraw: no seam ${seam}`);
  const { facePositions, neutralPositions } = cut.shell;
  const at = (positions: Float64Array, i: number): readonly number[] => [
    ...positions.subarray(3 * chain.vertices[i], 3 * chain.vertices[i] + 3),
  ];
  const points: number[] = [];
  let station = 0;
  for (let i = 0; i + 1 < chain.vertices.length; i += 1) {
    const [a, b] = [at(neutralPositions, i), at(neutralPositions, i + 1)];
    const mm = Math.hypot(...a.map((x, k) => b[k] - x));
    const [from, to] = [Math.max(0, (fromMm - station) / mm), Math.min(1, (toMm - station) / mm)];
    station += mm;
    if (!(to > from)) continue;
    const [p, q] = [at(facePositions, i), at(facePositions, i + 1)];
    const between = (share: number): readonly number[] => p.map((x, k) => x + share * (q[k] - x));
    if (points.length === 0) points.push(...between(from));
    // Long edges in parts, so that it is told for each whether it is seen.
    const parts = Math.max(1, Math.ceil(mm / LONGEST_MM));
    for (let k = 1; k <= parts; k += 1) points.push(...between(from + ((to - from) * k) / parts));
  }
  return Float64Array.from(points);
}

/** Longest part of a seam that is asked for as one whether it is seen, mm. */
const LONGEST_MM = 12;
