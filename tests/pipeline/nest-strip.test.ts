import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { HomeHand, nestTogether } from '../../src/pipeline/nest-crew.ts';
import { readStripTask, type StripTask } from '../../src/pipeline/nest-instance.ts';
import { stripOutcome } from '../../src/pipeline/nest-strip.ts';
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
