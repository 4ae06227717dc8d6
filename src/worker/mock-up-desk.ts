import { ok, type Result } from '../base/result.ts';
import { makeMockUp, mockUpPdf, MOCK_UP_FILE } from '../pipeline/mock-up.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { Pipeline } from '../pipeline/pipeline.ts';
import type { MockUp } from '../project/mock-up.ts';
import { sourcesOfProject } from '../project/sources.ts';
import { PoliteWork } from './polite-work.ts';
import type { MadeFile } from './workshop-api.ts';

/** Makes mock-ups in a pipeline of their own: what is remembered of the prop is none of theirs. */
export class MockUpDesk {
  readonly #pipeline = new Pipeline();
  readonly #sourceOf: Pipeline['sourceOf'];
  readonly #loadFont: () => Promise<Uint8Array>;
  /** Two never run at once. */
  #settled: Promise<unknown> = Promise.resolve();

  constructor(sourceOf: Pipeline['sourceOf'], loadFont: () => Promise<Uint8Array>) {
    this.#sourceOf = sourceOf;
    this.#loadFont = loadFont;
  }

  make(outcome: Outcome, mockUp: MockUp, date: string): Promise<Result<MadeFile>> {
    const made = this.#settled.then(() => this.#make(outcome, mockUp, date));
    this.#settled = made.catch(() => undefined);
    return made;
  }

  async #make(outcome: Outcome, mockUp: MockUp, date: string): Promise<Result<MadeFile>> {
    for (const { hash } of sourcesOfProject(outcome.project)) {
      const source = this.#sourceOf(hash);
      if (source !== undefined && this.#pipeline.sourceOf(hash) === undefined) this.#pipeline.putSource(hash, source);
    }
    const made = await makeMockUp(this.#pipeline, outcome, mockUp, date, new PoliteWork(() => undefined));
    if (!made.ok) return made;
    const pdf = await mockUpPdf(made.value, await this.#loadFont(), date);
    return pdf.ok ? ok({ name: MOCK_UP_FILE, mime: 'application/pdf', bytes: pdf.value }, made.notes) : pdf;
  }
}
