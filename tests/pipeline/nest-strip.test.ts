import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { HomeHand, nestTogether } from '../../src/pipeline/nest-crew.ts';
import { readStripTask, type StripTask } from '../../src/pipeline/nest-instance.ts';
import { stripOutcome, StripSearcher } from '../../src/pipeline/nest-strip.ts';
import { expectOk } from '../support/expect-ok.ts';

const taskText = (name: string): string =>
  readFileSync(new URL(`../reference/nesting/${name}.json`, import.meta.url), 'utf8');
const never = (): boolean => false;

async function densities(task: StripTask, moves: number): Promise<readonly number[]> {
  const found: number[] = [];
  const hands = [0, 1].map((i) => new HomeHand(task, 1, i, never));
  const { best } = await nestTogether(hands, moves, never, (state) =>
    found.push(stripOutcome(task, state.best).density),
  );
  expect(stripOutcome(task, best).density).toBe(found.at(-1));
  return found;
}

describe('a strip', () => {
  it('gets shorter with more moves, and never longer', async () => {
    const task = expectOk(readStripTask(taskText('fu')));
    const short = await densities(task, 300);
    const long = await densities(task, 1500);
    expect(await densities(task, 1500)).toEqual(long);
    expect(long.at(-1)).toBeGreaterThanOrEqual(short.at(-1) ?? 1);
    expect(long).toEqual([...long].sort((a, b) => a - b));
    expect(long.at(-1)).toBeGreaterThan(0.8);
  });

  it.each([
    [20, 20, 40],
    [30, 20, 60],
    [10, 30, 20],
  ])('holds two boxes of %s by %s one behind the other where they do not go over each other', (w, h, length) => {
    const corners = [
      [0, 0],
      [w, 0],
      [w, h],
      [0, h],
    ];
    const item = { id: 0, demand: 2, allowed_orientations: [0], shape: { data: corners } };
    const task = expectOk(readStripTask(JSON.stringify({ strip_height: 30, items: [item] })));
    const outcome = stripOutcome(task, new StripSearcher(task, 1, 0).best);
    expect(outcome.length).toBeCloseTo(length, 3);
    expect(outcome.places).toHaveLength(2);
  });

  it.each([
    ['that lies beside it', 25, 35],
    ['that reaches out of it', -5, 15],
  ])('refuses a hole %s', (_, from, to) => {
    const square = (a: number, b: number): number[][] => [
      [a, 5],
      [b, 5],
      [b, 15],
      [a, 15],
    ];
    const data = { outer: square(0, 20), inner: [square(from, to)] };
    const read = readStripTask(JSON.stringify({ strip_height: 30, items: [{ id: 0, shape: { data } }] }));
    expect(read.ok ? 'fine' : read.problem.text).toContain('hole that reaches out');
  });

  it('refuses a piece that vanishes beside the strip', () => {
    const data = [
      [0, 0],
      [1e-3, 0],
      [1e-3, 1e-3],
    ];
    const read = readStripTask(JSON.stringify({ strip_height: 1e6, items: [{ id: 4, shape: { data } }] }));
    expect(read.ok ? 'fine' : read.problem.text).toContain('piece 4 or a hole in it is too small');
  });

  it('refuses a broken task in one sentence that says where', () => {
    const task = (item: object, rest: object = {}): string =>
      JSON.stringify({
        strip_height: 10,
        items: [
          {
            id: 7,
            demand: 1,
            allowed_orientations: [0],
            shape: {
              data: [
                [0, 0],
                [1, 0],
                [0, 1],
              ],
            },
            ...item,
          },
        ],
        ...rest,
      });
    const said = (text: string): string => {
      const read = readStripTask(text);
      return read.ok ? 'fine' : read.problem.text;
    };
    expect(said(task({}))).toBe('fine');
    expect(said('{')).toContain('no JSON');
    expect(said('[]')).toContain('no object');
    expect(said(task({}, { strip_height: -1 }))).toContain('strip_height');
    expect(said(task({}, { items: [] }))).toContain('items');
    expect(said(task({ demand: 1.5 }))).toContain('item 7 needs "demand"');
    expect(said(task({ demand: 1e9 }))).toContain('are the most');
    expect(said(task({ allowed_orientations: ['up'] }))).toContain('item 7 needs "allowed_orientations"');
    expect(
      said(
        task({
          shape: {
            data: [
              [0, 0],
              [1, 0],
            ],
          },
        }),
      ),
    ).toContain('item 7 needs "shape"');
    expect(
      said(
        task({
          shape: {
            data: [
              [0, 0],
              [1, null],
              [0, 1],
            ],
          },
        }),
      ),
    ).toContain('item 7 needs "shape"');
    expect(
      said(
        task({
          shape: {
            data: [
              [0, 0],
              [1, 0],
              [2, 0],
            ],
          },
        }),
      ),
    ).toContain('item 7 has no area');
    expect(
      said(
        task({
          shape: {
            data: [
              [0, 0],
              [3, 2],
              [3, 0],
              [0, 3],
            ],
          },
        }),
      ),
    ).toContain('item 7 crosses itself');
    expect(
      said(
        task({
          shape: {
            data: [
              [0, 0],
              [1, 0],
              [0, 11],
            ],
          },
        }),
      ),
    ).toContain('piece 7 is higher');
  });
});
