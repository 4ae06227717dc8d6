import { beforeAll, describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { barePieces } from '../../src/pipeline/bare-pieces.ts';
import type { EarlyOutcome, Outcome } from '../../src/pipeline/outcome.ts';
import { sampleProject } from '../support/run-sample.ts';

describe('pieces to look at while the work goes on', () => {
  let before: Outcome;
  let early: EarlyOutcome;

  beforeAll(async () => {
    const { project, pipeline } = await sampleProject('maul-head');
    before = await pipeline.run(project, QUIET_WORK);
    const { part, sculpt, cut, flats } = before;
    early = { project, part: part!, sculpt: sculpt!, drawn: null, cut: cut!, flats: flats!, isFinal: flats!.map(() => false) };
  });

  it('are drawn as they were where they are laid flat as they were', () => {
    const { pieces, templates } = barePieces(early, before);
    expect(pieces).toEqual(before.pieces);
    expect(templates).toEqual(before.templates);
  });

  it('are bare outlines of the same name, number and size where they are new', () => {
    const flats = early.flats.map((flat, i) => (i === 0 && flat !== null ? { ...flat } : flat));
    const { pieces, templates } = barePieces({ ...early, flats }, before);
    const [bare, made] = [pieces[0], before.pieces![0]];
    const { id, number, name, patch, quantity, thicknessMm, uv, neutralOutline, up } = made;
    expect(bare).toMatchObject({ id, number, name, patch, quantity, thicknessMm, uv, neutralOutline, up });
    expect(bare.outline).toEqual(neutralOutline);
    expect([bare.edges, bare.folds, bare.marks]).toEqual([[], [], []]);
    expect(Math.abs(bare.surfaceAreaMm2 - made.surfaceAreaMm2)).toBeLessThan(1e-6);
    expect(templates[0].drawing.words).toEqual([]);
    expect(templates[0].drawing.strokes.map(({ role }) => role)).toEqual(['cut']);
    expect(pieces[1]).toEqual(before.pieces![1]);
  });

  it('leave out what has no shape yet', () => {
    const flats = early.flats.map((flat, i) => (i === 0 ? null : flat));
    const { pieces } = barePieces({ ...early, flats }, null);
    expect(pieces.map(({ patch }) => patch)).toEqual(before.pieces!.slice(1).map(({ patch }) => patch));
    expect(pieces.map(({ number }) => number)).toEqual(before.pieces!.slice(1).map(({ number }) => number));
  });
});
