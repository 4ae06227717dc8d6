import type { TracedSide } from '../model/foam-piece.ts';
import type { ModelIs } from '../model/shell-layer.ts';
import type { SculptPart } from '../project/project.ts';
import { MOST_OFF_MM } from '../project/wear-commands.ts';
import { given, number, oneOf } from './option-values.ts';

/** How the foam of a sculpt lies to it; left out means: as it is. */
export interface SculptWishes {
  readonly modelIs?: ModelIs;
  /** Where each sheet keeps its length, 0 (back) to 1 (face). */
  readonly neutral?: number;
  /** How far the foam stands off the sculpt, mm. */
  readonly offMm?: number;
  readonly traced?: TracedSide;
  readonly up?: 'x' | 'y' | 'z';
}

/** @throws WrongUsage */
export const sculptWishesFrom = (
  values: Readonly<Partial<Record<'model-is' | 'neutral' | 'off' | 'traced' | 'up', string>>>,
): SculptWishes => ({
  ...given('modelIs', oneOf('model-is', values['model-is'], ['face', 'middle', 'back'])),
  ...given('neutral', number('neutral', values.neutral, { least: 0, most: 1 })),
  ...given('offMm', number('off', values.off, { least: -MOST_OFF_MM, most: MOST_OFF_MM })),
  ...given('traced', oneOf('traced', values.traced, ['face', 'back'])),
  ...given('up', oneOf('up', values.up, ['x', 'y', 'z'])),
});

/** What the wishes change of a sculpt beside its sheets. */
export const wishedOf = (
  part: SculptPart,
  { modelIs, offMm, traced, up }: SculptWishes,
): Pick<SculptPart, 'modelIs' | 'tracedSide' | 'upAxis' | 'offMm'> => ({
  modelIs: modelIs ?? part.modelIs,
  ...(offMm === undefined ? {} : { offMm }),
  tracedSide: traced ?? part.tracedSide,
  upAxis: up ?? part.upAxis,
});
