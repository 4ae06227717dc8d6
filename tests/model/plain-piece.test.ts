import { expect, it } from 'vitest';
import { chainRound } from '../../src/geom/outline.ts';
import { leaningEdge } from '../../src/model/plain-edge.ts';
import { checkPlainDraft, edgeLeans, type PlainDraft } from '../../src/model/plain-piece.ts';

const [side, ...others] = chainRound([
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
]);

const draftOf = (bevelDeg: number | readonly [number, number, number]): PlainDraft => ({
  key: 'plate',
  name: 'plate',
  quantity: 1,
  thicknessMm: 6,
  drawnAt: 1,
  outline: [leaningEdge('joint', [side], bevelDeg), leaningEdge('rest', others, 0)],
  holes: [],
  bend: { kind: 'flat' },
  lines: [],
  notes: [],
  areaMm2: 100,
});

it('an edge that leans the other way half-way along is told by both leans, not by its ends', () => {
  expect(edgeLeans(draftOf(22.5))).toEqual(['joint: 22.5° in under']);
  expect(edgeLeans(draftOf([10, 20, 30]))).toEqual(['joint: 10° to 30° in under']);
  expect(edgeLeans(draftOf([-15, 15, -15]))).toEqual(['joint: between 15° out under and 15° in under']);
  expect(edgeLeans(draftOf(0))).toEqual([]);
});

it('a draft that is not closed is our mistake', () => {
  const draft = draftOf(0);
  expect(() => checkPlainDraft(draft)).not.toThrow();
  expect(() => checkPlainDraft({ ...draft, outline: draft.outline.slice(1) })).toThrow('between two parts');
  expect(() => checkPlainDraft({ ...draft, quantity: 0.5 })).toThrow('quantity');
});
