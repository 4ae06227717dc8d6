import type { StripTask } from './nest-instance.ts';
import type { StripOutcome, StripPlace } from './nest-strip.ts';

/** What `nest --out` writes: see shared/nest-layout.schema.json. */
export interface NestReport {
  readonly schemaVersion: 1;
  readonly name: string;
  readonly stripHeight: number;
  readonly length: number;
  readonly density: number;
  readonly seed: number;
  readonly moves: number;
  readonly places: readonly StripPlace[];
}

export const nestReport = (task: StripTask, outcome: StripOutcome, moves: number, seed: number): NestReport => ({
  schemaVersion: 1,
  name: task.name,
  stripHeight: task.height,
  length: outcome.length,
  density: outcome.density,
  seed,
  moves,
  places: outcome.places,
});
