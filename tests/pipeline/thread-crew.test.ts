import { beforeAll, describe, expect, it } from 'vitest';
import { ok, type Result } from '../../src/base/result.ts';
import { Cancelled, QUIET_WORK, type Work } from '../../src/base/work.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { Patch } from '../../src/model/patch.ts';
import type { ToHand } from '../../src/pipeline/crew-messages.ts';
import { HomeCrew, type FlattenCrew, type FlattenTask } from '../../src/pipeline/flatten-crew.ts';
import type { EarlyOutcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { ThreadCrew } from '../../src/pipeline/thread-crew.ts';
import { cutDome } from '../support/dome-project.ts';
import { expectOk } from '../support/expect-ok.ts';
import { sampleProject } from '../support/run-sample.ts';
import { nearHands, puppetHands } from '../support/near-hands.ts';

/** Three panels of a dome that are each worth a thread, and what this thread makes of them. */
let tasks: FlattenTask[];
let pieces: FlatPiece[];

beforeAll(async () => {
  const { mesh, patches } = await cutDome(18_000);
  const options = { seamPrice: 300 };
  tasks = patches.slice(0, 3).map((patch) => ({ patch, positions: mesh.positions, options, wishes: '' }));
  const home = new HomeCrew();
  pieces = [];
  for (const task of tasks) pieces.push(expectOk(await home.flatten(task, QUIET_WORK)));
});

/** A patch of so many triangles that is only carried about. */
const bundle = (triangles: number): FlattenTask => ({
  patch: {
    meshTriangles: new Uint32Array(triangles),
    triangles: new Uint32Array(3 * triangles),
    meshVertices: Uint32Array.from([0, 1]),
    loops: [],
    euler: 1,
    kind: 'disc',
    findings: [],
  },
  positions: new Float64Array(9),
  options: {},
  wishes: '',
});

/** What a puppet answers. */
const PIECE = { uv: new Float64Array(2) } as FlatPiece;
const done = (task: number) => ({ kind: 'done', task, result: ok(PIECE) }) as const;

class StoppableWork implements Work {
  readonly #controller = new AbortController();
  readonly signal = this.#controller.signal;
  readonly told: number[] = [];

  pause(share: number): undefined {
    if (this.signal.aborted) throw new Cancelled();
    this.told.push(share);
    return undefined;
  }
  cancel(): void {
    this.#controller.abort();
  }
}

/** Lets microtasks and messages pass. */
const moment = (ms = 0): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

const firstX = (message: ToHand): number => (message.kind === 'solve' ? message.positions[0] : NaN);
const solved = (messages: readonly ToHand[]) => messages.filter((message) => message.kind === 'solve');

describe('a crew of threads', () => {
  it.each([1, 2, 3])('of %i gives what this thread gives, to the last bit', async (most) => {
    const crew = new ThreadCrew(nearHands(), most);
    const results = await Promise.all(tasks.map((task) => crew.flatten(task, QUIET_WORK)));
    expect(results.map((result) => expectOk(result))).toEqual(pieces);
  });

  it('keeps the array of positions whole for who asked', async () => {
    const before = tasks[0].positions.slice();
    await new ThreadCrew(nearHands(), 1).flatten(tasks[0], QUIET_WORK);
    expect(tasks[0].positions).toEqual(before);
  });

  it('gives a patch to the hand that knows it, without the patch', async () => {
    const told: [number, ToHand][] = [];
    const crew = new ThreadCrew(
      nearHands((hand, message) => told.push([hand, message])),
      2,
    );
    await Promise.all([0, 1].map((i) => crew.flatten(tasks[i], QUIET_WORK)));
    const thicker = tasks[0].positions.map((x) => 1.01 * x);
    const again = [1, 0].map((i) => ({ ...tasks[i], positions: thicker }));
    const results = await Promise.all(again.map((task) => crew.flatten(task, QUIET_WORK)));
    const given = told.filter(([, { kind }]) => kind === 'solve');
    expect(given.map(([, message]) => 'patch' in message)).toEqual([true, true, false, false]);
    for (const hand of [0, 1]) {
      const [before, after] = given.filter(([which]) => which === hand).map(([, message]) => firstX(message));
      expect(after).toBe(1.01 * before);
    }
    expect(expectOk(results[1])).toEqual(expectOk(await new HomeCrew().flatten(again[1], QUIET_WORK)));
  });

  it('begins the largest first and starts no more threads than it may', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 2);
    const sizes = [3000, 5000, 4000, 6000];
    const results = sizes.map((size) => crew.flatten(bundle(size), QUIET_WORK));
    await moment();
    const begun: number[] = [];
    while (begun.length < sizes.length) {
      for (const hand of hands) {
        const last = solved(hand.told).at(-1)!;
        begun.push(last.patch!.meshTriangles.length);
        hand.say(done(last.task));
      }
      await moment();
    }
    expect(hands).toHaveLength(2);
    expect(begun).toEqual([6000, 5000, 4000, 3000]);
    await Promise.all(results);
  });

  it('solves small patches at home', async () => {
    const { hands, start } = puppetHands();
    const small = { ...bundle(1), patch: smallPatch(), positions: Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0]) };
    const result = await new ThreadCrew(start, 2).flatten(small, QUIET_WORK);
    expect(result.ok).toBe(true);
    expect(hands).toHaveLength(0);
  });

  it('starts no thread for less than it is told', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 2, 10_000);
    expect(expectOk(await crew.flatten(tasks[0], QUIET_WORK))).toEqual(pieces[0]);
    expect(hands).toHaveLength(0);
    const results = [6000, 5000].map((size) => crew.flatten(bundle(size), QUIET_WORK));
    await moment();
    expect(hands).toHaveLength(2);
    for (const hand of hands) hand.say(done(hand.task));
    await Promise.all(results);
  });

  it('forgets old patches, and says so to the hand that kept them', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 1);
    for (let i = 0; i < 3; i += 1) {
      const result = crew.flatten(bundle(150_000), QUIET_WORK);
      await moment();
      hands[0].say(done(hands[0].task));
      await result;
    }
    expect(hands[0].told.filter(({ kind }) => kind === 'forget')).toEqual([{ kind: 'forget', number: 1 }]);
  });

  it('passes on how far a hand is', async () => {
    const { hands, start } = puppetHands();
    const work = new StoppableWork();
    const result = new ThreadCrew(start, 1).flatten(bundle(3000), work);
    await moment();
    hands[0].say({ kind: 'progress', task: hands[0].task, done: 0.5 });
    hands[0].say(done(hands[0].task));
    expect(expectOk(await result)).toEqual(PIECE);
    expect(work.told).toEqual([0.5]);
  });
});

describe('a first shape', () => {
  it.each([0, 1])('comes before the last one, near it and measured as it is; %i threads', async (most) => {
    const [task] = tasks;
    const seen: FlatPiece[] = [];
    const crew = new ThreadCrew(nearHands(), most);
    const last = expectOk(await crew.flatten({ ...task, look: (flat) => seen.push(flat) }, QUIET_WORK));
    expect(last).toEqual(pieces[0]);
    // Where it begins, and one when it is nearly there.
    expect(seen).toHaveLength(2);
    for (const { solve, flipped } of seen) expect([solve.converged, flipped]).toEqual([false, 0]);
    const [far, near] = seen.map(({ energy }) => energy - last.energy);
    expect(near).toBeGreaterThan(0);
    expect(near).toBeLessThan(1e-4);
    expect(far).toBeGreaterThan(near);
    expect(far).toBeLessThan(0.02);
    expect(Math.max(...seen[1].major.map((a, t) => Math.abs(a - last.major[t])))).toBeLessThan(0.01);
  });

  it('is shown at once to whoever goes on with the job', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 1);
    const work = new StoppableWork();
    const [before, after]: FlatPiece[][] = [[], []];
    const task = bundle(3000);
    const called = refusal(crew.flatten({ ...task, look: (flat) => before.push(flat) }, work));
    await moment();
    hands[0].say({ kind: 'first', task: hands[0].task, flat: PIECE });
    work.cancel();
    await called;
    const again = crew.flatten({ ...task, look: (flat) => after.push(flat) }, QUIET_WORK);
    hands[0].say(done(hands[0].task));
    await again;
    expect([before, after]).toEqual([[PIECE], [PIECE]]);
  });
});

describe('a thread that fails', () => {
  const atHome = async (crew: ThreadCrew, work: () => void = () => undefined): Promise<void> => {
    const results = [0, 1].map((i) => crew.flatten(tasks[i], QUIET_WORK));
    await moment();
    work();
    expect((await Promise.all(results)).map((result) => expectOk(result))).toEqual(pieces.slice(0, 2));
  };

  it('to be made leaves the work at home', async () => {
    const refuse = (): never => {
      throw new Error('no threads here');
    };
    await atHome(new ThreadCrew(refuse, 2));
  });

  it('to start leaves the work at home', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 2);
    await atHome(crew, () => hands.forEach((hand) => hand.fail()));
    expect(hands.every(({ isEnded }) => isEnded)).toBe(true);
    await atHome(crew);
    expect(hands).toHaveLength(2);
  });

  it('in the middle of its work leaves that at home, and the other goes on', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 2);
    await atHome(crew, () => {
      hands[0].say({ kind: 'progress', task: hands[0].task, done: 0.5 });
      hands[0].fail();
      hands[1].say({ kind: 'broke', task: hands[1].task });
    });
    const next = crew.flatten(bundle(3000), QUIET_WORK);
    await moment();
    hands[1].say(done(hands[1].task));
    expect(expectOk(await next)).toEqual(PIECE);
  });
});

describe('work called off', () => {
  it('is answered at once, and its hand is told to stop when nobody asks for the same', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 1);
    const work = new StoppableWork();
    const [result, queued] = [crew.flatten(bundle(3000), work), crew.flatten(bundle(2500), work)].map(refusal);
    await moment();
    work.cancel();
    expect(await result).toBeInstanceOf(Cancelled);
    expect(await queued).toBeInstanceOf(Cancelled);
    expect(hands[0].told).toHaveLength(1);
    await moment(300);
    expect(hands[0].told[1]).toEqual({ kind: 'stop', task: hands[0].task });
  });

  it('is gone on with for whoever asks for the same again', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 1);
    const work = new StoppableWork();
    const task = bundle(3000);
    const first = refusal(crew.flatten(task, work));
    await moment();
    work.cancel();
    expect(await first).toBeInstanceOf(Cancelled);
    const again = crew.flatten({ ...task }, QUIET_WORK);
    await moment(300);
    expect(hands[0].told).toHaveLength(1);
    hands[0].say(done(hands[0].task));
    expect(expectOk(await again)).toEqual(PIECE);
  });

  it('makes way for other work: a hand that does not listen is ended and another takes its place', async () => {
    const { hands, start } = puppetHands();
    const crew = new ThreadCrew(start, 1);
    const work = new StoppableWork();
    const first = refusal(crew.flatten(bundle(3000), work));
    await moment();
    work.cancel();
    await first;
    const other = crew.flatten(bundle(4000), QUIET_WORK);
    await moment();
    expect(hands[0].told.at(-1)?.kind).toBe('stop');
    await moment(300);
    expect(hands.map(({ isEnded }) => isEnded)).toEqual([true, false]);
    hands[1].say(done(hands[1].task));
    expect(expectOk(await other)).toEqual(PIECE);
  });

  it('stops a real hand within its patience', async () => {
    const told: ToHand[] = [];
    const crew = new ThreadCrew(
      nearHands((_, message) => told.push(message)),
      1,
    );
    const work = new StoppableWork();
    const first = refusal(crew.flatten(tasks[0], work));
    while (told.length === 0) await moment();
    work.cancel();
    expect(await first).toBeInstanceOf(Cancelled);
    expect(expectOk(await crew.flatten(tasks[1], QUIET_WORK))).toEqual(pieces[1]);
    // The same hand did it: it was not ended.
    expect(solved(told)).toHaveLength(2);
  });
});

describe('the chain with a crew', () => {
  it('makes what it makes alone, whoever is done first', async () => {
    const backwards = new BackwardsCrew();
    const { project, pipeline } = await sampleProject('shoulder-plate');
    const alone = await pipeline.run(project, QUIET_WORK);
    const other = new Pipeline(backwards);
    other.putSource(project.parts[0].source.hash, pipeline.sourceOf(project.parts[0].source.hash)!);
    const together = await other.run(project, QUIET_WORK);
    expect(backwards.sizes).toEqual(backwards.sizes.toSorted((a, b) => b - a));
    expect(together.flats).toEqual(alone.flats);
    expect(together.pieces).toEqual(alone.pieces);
    expect(together.findings).toEqual(alone.findings);
  });

  it('tells shapes as they come, and makes the same whether or not anybody looks', async () => {
    const { project, pipeline } = await sampleProject('shoulder-plate');
    const told: EarlyOutcome[] = [];
    const seen = await pipeline.run(project, QUIET_WORK, { onEarly: (early) => told.push(early) });
    const { pipeline: other } = await sampleProject('shoulder-plate');
    expect(seen.flats).toEqual((await other.run(project, QUIET_WORK)).flats);
    expect(told.length).toBeGreaterThan(0);
    // What they mean to the maker is worked out when all are done.
    expect(seen.flats).toMatchObject(told.at(-1)!.flats);
    expect(told.at(-1)!.isFinal.every(Boolean)).toBe(true);
    expect(told[0].isFinal.every(Boolean)).toBe(seen.flats!.length === 1);
    // Nothing is new the second time, and so nothing is told.
    told.length = 0;
    await pipeline.run(project, QUIET_WORK, { onEarly: (early) => told.push(early) });
    expect(told).toEqual([]);
  });

  it('tells in every run why a piece cannot be laid flat', async () => {
    const pipeline = new Pipeline({ flatten: () => Promise.resolve(NO_AREA) });
    const { project, pipeline: source } = await sampleProject('bracer');
    pipeline.putSource(project.parts[0].source.hash, source.sourceOf(project.parts[0].source.hash)!);
    for (let i = 0; i < 2; i += 1) {
      const { cut, flats, findings } = await pipeline.run(project, QUIET_WORK);
      expect(flats?.every((flat) => flat === null)).toBe(true);
      expect(findings.filter(({ code }) => code === 'flatten/no-area')).toHaveLength(cut!.patches.length);
    }
  });
});

/** Is done with the last patch it is asked for first. */
class BackwardsCrew implements FlattenCrew {
  readonly sizes: number[] = [];
  #before: Promise<unknown> = Promise.resolve();
  #asked: (() => Promise<void>)[] = [];

  flatten(task: FlattenTask, work: Work): Promise<Result<FlatPiece>> {
    this.sizes.push(task.patch.meshTriangles.length);
    const result = new Promise<Result<FlatPiece>>((resolve, reject) =>
      this.#asked.unshift(() => new HomeCrew().flatten(task, work).then(resolve, reject)),
    );
    this.#before = this.#before
      .then(() => moment())
      .then(async () => {
        for (const solve of this.#asked.splice(0)) await solve();
      });
    return result;
  }
}

const NO_AREA: Result<FlatPiece> = {
  ok: false,
  problem: { code: 'flatten/no-area', text: 'A piece made only of faces without area.', where: {} },
};

/** The error that a promise ends in. */
const refusal = (promise: Promise<unknown>): Promise<unknown> =>
  promise.then(
    () => undefined,
    (error: unknown) => error,
  );

const smallPatch = (): Patch => ({
  meshTriangles: Uint32Array.from([0]),
  triangles: Uint32Array.from([0, 1, 2]),
  meshVertices: Uint32Array.from([0, 1, 2]),
  loops: [Uint32Array.from([0, 1, 2])],
  euler: 1,
  kind: 'disc',
  findings: [],
});
