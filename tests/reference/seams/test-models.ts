import type { SeamChoice } from './choose-seams.ts';

/** A test model with how its seams are chosen; `choice` null where it lies flat as it is. */
export interface TestModel {
  readonly name: string;
  /** Model and seam file, from tests/reference. */
  readonly modelFile: string;
  readonly seamFile: string;
  readonly choice: SeamChoice;
}

const CHOICE: SeamChoice = { count: 12, foldCost: 0.04, foldFree: 0.35, dartFrom: 1.2, dartReach: 0.12, mostDarts: 8 };

/** Real models, each with a count of regions that a maker would still glue together by hand. */
export const REAL_MODELS: readonly TestModel[] = [
  real('goathead', { count: 18 }),
  real('hand_lowres', { count: 12 }),
  real('wingnut', { count: 12, foldCost: 0.2 }),
  real('spot_low_resolution', { count: 16 }),
  real('spot_control_mesh', { count: 20 }),
];

function real(name: string, change: Partial<SeamChoice>): TestModel {
  return {
    name,
    modelFile: `meshes/${name}.obj`,
    seamFile: `seams/${name}.seams.json`,
    choice: { ...CHOICE, ...change },
  };
}
