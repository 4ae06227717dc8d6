import { Box3 } from 'three';
import { QUIET_WORK } from '../../src/base/work.ts';
import { arrange, buildSolid, displayOf, type SolidDisplay } from '../../src/viewport/display.ts';
import type { Journey } from '../../src/viewport/journey.ts';
import { whereabouts } from '../../src/viewport/journey.ts';
import type { PiecePlaces } from '../../src/viewport/piece-places.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { madeSample } from '../support/run-sample.ts';

/** What stands on the bench of a sample, each piece ready to roll. */
export interface SampleBench {
  readonly solid: SolidDisplay;
  readonly places: PiecePlaces;
  readonly journeys: readonly Journey[];
  /** Brings all pieces to a place of the slider. */
  pose(stage: number): Promise<void>;
}

const made = new Map<string, Promise<SampleBench>>();

/** Once for all tests that share a process: whoever needs pieces in a place brings them there. */
export function sampleBench(name: string): Promise<SampleBench> {
  const known = made.get(name) ?? makeBench(name);
  made.set(name, known);
  return known;
}

async function makeBench(name: string): Promise<SampleBench> {
  const { outcome } = await madeSample(name);
  const {
    sculpt = null,
    shell = null,
    seams = null,
    pieces = null,
    sheets = null,
  } = new BenchUpdater().next(outcome, 0);
  if (sculpt === null || pieces === null) throw new Error(`nothing of ${name} on the bench`);
  const onBench = { ...pieces, patches: pieces.patches.slice(0, pieces.benchPatches) };
  const shown = { sculpt, shell, seams, pieces: onBench, sheets, plain: [] };
  const solid = await buildSolid(await displayOf(sculpt, null, QUIET_WORK), shown, 'y', QUIET_WORK);
  const { body } = solid;
  if (body === null) throw new Error(`no foam of ${name}`);
  for (const patch of body.patches) await patch.prepare(QUIET_WORK);
  const { places, journeys } = arrange(solid, sheets, new Box3(), []);
  return {
    solid,
    places,
    journeys,
    async pose(stage) {
      for (const [i, journey] of journeys.entries()) await body.place(i, whereabouts(journey, stage), QUIET_WORK);
    },
  };
}
