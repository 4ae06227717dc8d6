import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { ModelIs } from '../../src/model/shell-layer.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { sampleProject } from '../support/run-sample.ts';

/** The shoulder plate run in one thickness after the other, by one pipeline; what a command does not touch stays the same object. */
async function runs(modelIs: ModelIs, ...thicknessesMm: readonly number[]): Promise<readonly Outcome[]> {
  const { project, pipeline } = await sampleProject('shoulder-plate');
  const [part] = project.parts;
  const outcomes: Outcome[] = [];
  for (const thicknessMm of thicknessesMm) {
    const layers = [{ ...part.layers[0], thicknessMm }];
    outcomes.push(await pipeline.run({ ...project, parts: [{ ...part, modelIs, layers }] }, QUIET_WORK));
  }
  return outcomes;
}

/** How many of a list are other objects than those in the same places before. */
const anew = (now: readonly unknown[] | null, before: readonly unknown[] | null): number =>
  (now ?? []).filter((one, i) => one !== before?.[i]).length;

describe('another thickness', () => {
  const onFace = runs('face', 6, 10, 6);

  it('makes shell, shapes, foam and paper anew, and neither the sculpt nor its parting', async () => {
    const [thin, thick] = await onFace;
    expect(thick.madeNew).toEqual(['shell', 'flatten', 'foam', 'nest', 'tile']);
    expect(thick.sculpt).toBe(thin.sculpt);
    expect(thick.cut?.patches).toBe(thin.cut?.patches);
    expect(thick.cut?.chains).toBe(thin.cut?.chains);
    expect(anew(thick.flats, thin.flats)).toBe(thin.flats?.length);
  });

  it('lays nothing flat anew where the surface that keeps its length stays where it is', async () => {
    const [thin, thick] = await runs('middle', 6, 10);
    expect(thick.madeNew).toEqual(['shell', 'foam', 'nest', 'tile']);
    expect(anew(thick.flats, thin.flats)).toBe(0);
    expect(anew(thick.pieces, thin.pieces)).toBe(thin.pieces?.length);
  });

  it('makes nothing anew when it is taken back', async () => {
    const [first, , again] = await onFace;
    expect(again.madeNew).toEqual([]);
    expect(again.dryFit).toEqual(first.dryFit);
    expect(anew(again.sheets?.sheets ?? null, first.sheets?.sheets ?? null)).toBe(0);
  });
});
