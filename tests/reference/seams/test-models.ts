import type { ScaleChoice } from '../../../src/model/source-model.ts';
import type { SeamChoice } from './choose-seams.ts';

/** A test model and how its seams are chosen. */
export interface TestModel {
  readonly name: string;
  /** Model and seam file, from tests/reference. */
  readonly modelFile: string;
  readonly seamFile: string;
  readonly scale: ScaleChoice;
  readonly choice: SeamChoice;
}

/** Found by looking at the pieces: enough that no part of a limb is wrapped by one flat patch, few enough to glue by hand. */
const CHOICE: SeamChoice = { count: 12, foldCost: 0.04, foldFree: 0.35, dartFrom: 0.4, dartReach: 0.12, mostDarts: 40 };

/** Real models, made 300 mm long. */
export const REAL_MODELS: readonly TestModel[] = [
  real('goathead', { count: 22 }),
  real('hand_lowres', { count: 22 }),
  real('wingnut', { count: 12, foldCost: 0.2 }),
  real('spot_low_resolution', { count: 18 }),
  real('spot_control_mesh', { count: 22 }),
];

/** Things a maker would build; see seam-shapes/README.md. */
export const SHAPES: readonly TestModel[] = [
  shape('bracer_cone', { count: 1 }),
  shape('breastplate', { count: 1 }),
  shape('greave', { count: 1 }),
  shape('hammer', { count: 6, foldCost: 0.2 }),
  shape('helmet', { count: 4 }),
  shape('helmet_low', { count: 4 }),
  shape('horn', { count: 3 }),
  shape('pauldron', { count: 2 }),
];

function real(name: string, change: Partial<SeamChoice>): TestModel {
  return {
    name,
    modelFile: `meshes/${name}.obj`,
    seamFile: `seams/${name}.seams.json`,
    scale: { by: 'size', axis: 'longest', mm: 300 },
    choice: { ...CHOICE, ...change },
  };
}

function shape(name: string, change: Partial<SeamChoice>): TestModel {
  return {
    name,
    modelFile: `seam-shapes/${name}.obj`,
    seamFile: `seam-shapes/${name}.seams.json`,
    scale: { by: 'unit', unit: 'cm' },
    choice: { ...CHOICE, ...change },
  };
}
