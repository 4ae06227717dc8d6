import type { Result } from '../base/result.ts';
import type { BuildUp, BuildUpWish } from '../model/build-up.ts';
import { findPipe, PIPES, type Pipe } from '../model/pipes.ts';
import { makeBuildUp } from '../steps/build-up/make-build-up.ts';

/** A core with all that is built up on it. @returns fails with a `core/…` problem. */
export const buildUpOf = (wish: BuildUpWish): Result<BuildUp> => makeBuildUp(wish);

/** The pipe of that name. @returns fails with `core/pipe`. */
export const pipeNamed = (name: string): Result<Pipe> => findPipe(name);

/** Every pipe that is known by name. */
export const knownPipes = (): readonly Pipe[] => PIPES;

export {
  GOLDEN_TURN_DEG,
  USUAL_WEIGHTS,
  type BuildUpWish,
  type CapWish,
  type CorePlace,
  type ProfileCorner,
  type StavesWish,
  type WindingWish,
} from '../model/build-up.ts';
