import { expect, it } from 'vitest';
import { CAUTION_ENDING, CAUTIONS } from '../../../src/model/cautions.ts';
import type { PartWork } from '../../../src/model/part-work.ts';
import { Flow } from '../../../src/steps/tile/flow.ts';
import { putPartWorks } from '../../../src/steps/tile/part-section.ts';

const workOf = (name: string, ...cautions: readonly string[]): PartWork => ({
  part: name,
  name,
  copies: 1,
  steps: [{ work: 'lay', text: `Glue ${name}.`, pieces: [], numbers: [4, 5], glueMm2: 1, cautions }],
});

it('a caution stands once in full, and each step names what it needs', () => {
  const [first, second, third] = CAUTIONS;
  const flow = new Flow({ minX: 0, minY: 0, maxX: 190, maxY: 270 });
  const blocks: string[][] = [];
  const works = [workOf('Hilt', first.id, second.id), workOf('Cap', second.id, third.id), workOf('Ring', third.id)];
  putPartWorks(flow, works, new Map(), [first.id], (_, texts) => void blocks.push([...texts]));
  expect(blocks).toEqual([[`${second.title}: ${second.text}`], [`${third.title}: ${third.text}`], []]);
  expect(blocks.flat()).not.toContain(CAUTION_ENDING);
  const told = flow.pages().flatMap(({ pen }) => pen.words.map(({ text }) => text));
  expect(told).toContain(`1. Glue Hilt (pieces 4, 5). Caution: ${first.title}, ${second.title}.`);
  expect(told).toContain(`1. Glue Ring (pieces 4, 5). Caution: ${third.title}.`);
});
