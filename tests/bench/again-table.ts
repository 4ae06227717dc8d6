// Flat again after a stretch of a seam was dragged: the real chain, with one seam across a surface moved from place to place.
import { contentHash } from '../../src/base/hash.ts';
import type { Result } from '../../src/base/result.ts';
import type { Work } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { SeamMarks } from '../../src/model/seams.ts';
import { FLATTEN_WISHES, type FlattenWishes } from '../../src/model/flatten-settings.ts';
import type { FlattenCrew, FlattenTask } from '../../src/pipeline/flatten-crew.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { splitPatch } from './bench-patches.ts';
import type { BenchWords } from './bench-words.ts';
import { checksumOf } from './flat-figures.ts';
import { MovableSeam } from './moved-seam.ts';
import { objText } from './obj-text.ts';
import { PhaseClock } from './phase-clock.ts';
import { textTable } from './text-table.ts';
import { median, timesText } from './times.ts';

/** Share of the triangles the seam parts off: a large piece beside a small one, and two halves. */
const CASES = [
  { from: 'mask-5k', parts: 1, share: 0.08, limitMs: 40 },
  { from: 'hemisphere-10k', parts: 1, share: 0.5, limitMs: 40 },
  { from: 'mask-5k', parts: 2, share: 0.08, limitMs: 150 },
  { from: 'hemisphere-10k', parts: 2, share: 0.5, limitMs: 150 },
] as const;

/** Two strips of about twice as many triangles each. */
const STRIP_VERTICES = 12;
/** Drags before any is timed. */
const WARM_DRAGS = 4;
/** How far over the energy from scratch a piece may stand. */
const ENERGY_SLACK = 1e-6;

const WISHES: readonly (readonly [words: string, wishes: FlattenWishes])[] = [
  ['plain', { ...FLATTEN_WISHES, seamPrice: 0, squashPrice: 1 }],
  ['as begun', FLATTEN_WISHES],
];

/** Solves one patch after the other in this thread and notes how long each took, ms. */
class TimedCrew implements FlattenCrew {
  readonly taken: number[] = [];
  #last: Promise<unknown> = Promise.resolve();

  flatten({ patch, positions, options }: FlattenTask, work: Work): Promise<Result<FlatPiece>> {
    const turn = this.#last.then(async () => {
      const began = performance.now();
      const result = await flattenPatch(patch, positions, options, work);
      this.taken.push(performance.now() - began);
      return result;
    });
    this.#last = turn;
    return turn;
  }
}

export async function againTable({ rounds, most }: BenchWords<string>): Promise<string> {
  const rows: string[][] = [];
  for (const { from, parts, share, limitMs } of CASES) {
    const mesh = splitPatch(from, parts);
    if (mesh.triangles.length / 3 > most) continue;
    const bench = await SeamBench.of(mesh, share);
    for (const [words, wishes] of WISHES) rows.push(await rowOf(bench, `${from}, ${words}`, wishes, rounds, limitMs));
  }
  const head = [
    ...['piece', 'triangles', 'moved', 'from scratch', 'again', 'larger piece', 'limit', 'whole chain again'],
    ...['steps', 'from scratch', 'energy off by', 'holds', 'checksum'],
  ];
  return `Flat again after a seam was dragged over two strips of triangles, ms: median (least-most) of ${rounds} places along it
Both pieces change; again: both, one after the other, with their starts; larger piece: with the other left to a second thread
Holds: the larger piece within its limit, settled, no flip, the energy of a solve from scratch to ${ENERGY_SLACK}
${textTable(head, rows)}`;
}

/** One surface with a seam that can be moved, ready for the chain. */
class SeamBench {
  readonly seam: MovableSeam;
  readonly #bytes: Uint8Array;
  readonly #hash: string;

  private constructor(mesh: Mesh, share: number, bytes: Uint8Array, hash: string) {
    this.seam = new MovableSeam(mesh, share);
    this.#bytes = bytes;
    this.#hash = hash;
  }

  static async of(mesh: Mesh, share: number): Promise<SeamBench> {
    const bytes = new TextEncoder().encode(objText(mesh));
    return new SeamBench(mesh, share, bytes, await contentHash(bytes));
  }

  pipeline(crew: FlattenCrew): Pipeline {
    const pipeline = new Pipeline(crew);
    pipeline.putSource(this.#hash, { fileName: 'bench.obj', bytes: this.#bytes });
    return pipeline;
  }

  /**
   * The project before the seam is marked; a change keeps all else, as the app does, since the chain remembers by identity.
   * The model is the middle of the foam, so that what is laid flat is the surface as it stands.
   */
  project(flatten: FlattenWishes): Project {
    const fresh = newProject('bench', { hash: this.#hash, fileName: 'bench.obj', format: 'obj' });
    const [part] = fresh.parts;
    return { ...fresh, parts: [{ ...part, scale: { by: 'unit', unit: 'mm' }, modelIs: 'middle', flatten }] };
  }
}

function marked(project: Project, edges: SeamMarks['edges']): Project {
  return { ...project, parts: [{ ...project.parts[0], seams: { edges, paths: [] } }] };
}

interface TimedRun {
  readonly outcome: Outcome;
  readonly flats: readonly FlatPiece[];
  readonly chainMs: number;
  readonly flatMs: number;
  /** Without the solves of all pieces but the one that took longest. */
  readonly largerMs: number;
}

async function timedRun(pipeline: Pipeline, crew: TimedCrew, project: Project): Promise<TimedRun> {
  crew.taken.length = 0;
  const clock = new PhaseClock();
  const began = performance.now();
  const outcome = await pipeline.run(project, clock);
  const chainMs = performance.now() - began;
  if (outcome.stopped !== null) throw new Error(outcome.stopped.problem.text);
  const flats = (outcome.flats ?? []).filter((flat) => flat !== null);
  if (flats.length !== 2) throw new Error(`${flats.length} pieces`);
  const flatMs = clock.ms.get('laying the pieces flat') ?? 0;
  const solves = crew.taken.reduce((sum, ms) => sum + ms, 0);
  return { outcome, flats, chainMs, flatMs, largerMs: flatMs - solves + Math.max(0, ...crew.taken) };
}

async function rowOf(
  bench: SeamBench,
  name: string,
  wishes: FlattenWishes,
  rounds: number,
  limitMs: number,
): Promise<string[]> {
  const crew = new TimedCrew();
  const pipeline = bench.pipeline(crew);
  const unmarked = bench.project(wishes);
  await timedRun(pipeline, crew, marked(unmarked, bench.seam.edges));
  const drags: TimedRun[] = [];
  const scratch: TimedRun[] = [];
  let moved = 0;
  let off = 0;
  for (let i = -WARM_DRAGS; i < rounds; i += 1) {
    const drag = bench.seam.movedAt((i + WARM_DRAGS + 0.5) / (WARM_DRAGS + rounds), STRIP_VERTICES);
    const project = marked(unmarked, drag.edges);
    const again = await timedRun(pipeline, crew, project);
    const fresh = await timedRun(bench.pipeline(crew), crew, project);
    if (i < 0) continue;
    moved = Math.max(moved, drag.moved);
    again.flats.forEach(({ energy }, p) => (off = Math.max(off, Math.abs(energy - fresh.flats[p].energy))));
    drags.push(again);
    scratch.push(fresh);
  }
  const steps = (runs: readonly TimedRun[]): string =>
    String(Math.max(...runs.flatMap(({ flats }) => flats.map(({ solve }) => solve.steps))));
  const flats = drags.flatMap((drag) => drag.flats);
  const isGood = flats.every(({ flipped, solve }) => flipped === 0 && solve.converged) && off <= ENERGY_SLACK;
  const larger = drags.map(({ largerMs }) => largerMs);
  return [
    name,
    drags[0].outcome.cut?.patches.map(({ meshTriangles }) => meshTriangles.length).join(' + ') ?? '',
    String(moved),
    timesText(scratch.map(({ flatMs }) => flatMs)),
    timesText(drags.map(({ flatMs }) => flatMs)),
    timesText(larger),
    String(limitMs),
    timesText(drags.map(({ chainMs }) => chainMs)),
    steps(drags),
    steps(scratch),
    off.toExponential(1),
    isGood && median(larger) <= limitMs ? 'yes' : 'NO',
    checksumOf(flats),
  ];
}
