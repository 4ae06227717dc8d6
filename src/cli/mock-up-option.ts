import { QUIET_WORK } from '../base/work.ts';
import { makeMockUp, mockUpPdf, MOCK_UP_FILE } from '../pipeline/mock-up.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { Pipeline } from '../pipeline/pipeline.ts';
import { MOCK_UP_LIMITS, scaleText, USUAL_MOCK_UP, type MockUp } from '../project/mock-up.ts';
import { sourcesOfProject } from '../project/sources.ts';
import { Refused, WrongUsage } from './exit.ts';
import { number } from './option-values.ts';

/** `--mock-up 1:4` or `4`, `--card MM`; undefined where no mock-up is asked for. @throws WrongUsage */
export function mockUpFrom(values: {
  readonly 'mock-up'?: string | undefined;
  readonly card?: string | undefined;
}): MockUp | undefined {
  const { 'mock-up': scale, card } = values;
  if (scale === undefined) {
    if (card !== undefined) throw new WrongUsage('--card belongs to a mock-up: add --mock-up 1:4.');
    return undefined;
  }
  const times = number('mock-up', scale.replace(/^\s*1\s*:/, ''), MOCK_UP_LIMITS.times);
  const cardMm = number('card', card, MOCK_UP_LIMITS.cardMm);
  return { times: times ?? USUAL_MOCK_UP.times, cardMm: cardMm ?? USUAL_MOCK_UP.cardMm };
}

/** The mock-up's file and a line for people; nothing where none is asked for. @throws Refused */
export async function makeSmall(
  outcome: Outcome,
  mockUp: MockUp | undefined,
  { sourceOf }: Pick<Pipeline, 'sourceOf'>,
  { font, date }: { readonly font: Uint8Array; readonly date: string },
): Promise<{ readonly files: ReadonlyMap<string, Uint8Array>; readonly lines: readonly string[] }> {
  if (mockUp === undefined) return { files: new Map(), lines: [] };
  // What is remembered of the prop is none of the mock-up's.
  const pipeline = new Pipeline();
  for (const { hash } of sourcesOfProject(outcome.project)) {
    const source = sourceOf(hash);
    if (source !== undefined) pipeline.putSource(hash, source);
  }
  const made = await makeMockUp(pipeline, outcome, mockUp, date, QUIET_WORK);
  if (!made.ok) throw Refused.from(made.problem, 'mock-up');
  const count = made.value.pages.pages.length;
  const pdf = await mockUpPdf(made.value, font, date);
  if (!pdf.ok) throw Refused.from(pdf.problem, 'mock-up');
  return {
    files: new Map([[MOCK_UP_FILE, pdf.value]]),
    lines: [`${MOCK_UP_FILE}: ${count} pages at ${scaleText(mockUp)} for card ${mockUp.cardMm} mm thick`],
  };
}
