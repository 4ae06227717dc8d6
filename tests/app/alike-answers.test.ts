import { expect, it } from 'vitest';
import { alikeAnswers } from '../../src/app/propose-actions.ts';
import type { ProposalAnswer } from '../../src/worker/proposing-api.ts';

const KINDS = ['few', 'between', 'simple'] as const;
const answer = (pairs: readonly (readonly [number, number])[], paths: ProposalAnswer['paths'] = []): ProposalAnswer =>
  ({ pairs, paths }) as ProposalAnswer;

it('answers with the same seams are told together, whichever way and in whatever order they are listed', () => {
  const one = answer([
    [1, 2],
    [2, 3],
  ]);
  const same = answer([
    [3, 2],
    [1, 2],
  ]);
  const other = answer([[1, 2]]);
  expect(alikeAnswers(KINDS, { few: one, between: other, simple: same })).toEqual([['few', 'simple']]);
  expect(alikeAnswers(KINDS, { few: one, between: same, simple: one })).toEqual([['few', 'between', 'simple']]);
  expect(alikeAnswers(KINDS, { few: one, between: other })).toEqual([]);
  const path = { points: [], kind: 'butt' } as unknown as ProposalAnswer['paths'][number];
  expect(alikeAnswers(KINDS, { few: other, between: answer([[1, 2]], [path]) })).toEqual([]);
});
