import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { FOAM_RULES } from '../../src/model/foam-settings.ts';
import type { SeamFit } from '../../src/model/dry-fit.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import { DryFits, type DryFitJob } from '../../src/pipeline/dry-fit.ts';
import { dryFitFindings } from '../../src/pipeline/dry-fit-findings.ts';
import type { GapReason } from '../../src/pipeline/gap-reasons.ts';
import { partBends } from '../../src/steps/foam/part-bends.ts';
import { madeSample, runSample } from '../support/run-sample.ts';

async function lanternJob(): Promise<DryFitJob> {
  const { sculpt, cut, layers, pieces, seams, part } = await runSample('lantern');
  if (sculpt === null || cut === null || pieces === null || seams === null) throw new Error('an unfinished outcome');
  const bends = partBends(sculpt.mesh, cut.patches, cut.chains, part!.pieceSettings, FOAM_RULES);
  return { cut, bends, hinges: layers[0].hinges, pieces, seams, tooMuchPct: 8 };
}

describe('dry fits that are remembered', () => {
  it('measures nothing anew when pieces are made anew but cut as before', async () => {
    const job = await lanternJob();
    const fits = new DryFits();
    const first = await fits.of(job, QUIET_WORK);
    expect(fits.measuredCount).toBe(first.perSeam.length);
    expect(await fits.of(job, QUIET_WORK)).toBe(first);
    const again = await fits.of({ ...job, pieces: job.pieces.map((piece) => ({ ...piece })) }, QUIET_WORK);
    expect(fits.measuredCount).toBe(first.perSeam.length);
    again.perSeam.forEach((fit, i) => expect(fit).toBe(first.perSeam[i]));
  });

  it('measures the seams of a piece that is cut otherwise, and no other', async () => {
    const job = await lanternJob();
    const fits = new DryFits();
    const first = await fits.of(job, QUIET_WORK);
    const [piece] = job.pieces;
    const cutLarger = (changed: FoamPiece): FoamPiece => ({
      ...changed,
      outline: changed.outline.map((x) => 1.001 * x),
    });
    const pieces = job.pieces.map((candidate) => (candidate === piece ? cutLarger(piece) : candidate));
    const second = await fits.of({ ...job, pieces }, QUIET_WORK);
    const changed = second.perSeam.filter((fit, i) => fit !== first.perSeam[i]);
    expect(fits.measuredCount).toBe(first.perSeam.length + changed.length);
    expect(changed.map(({ seam }) => seam)).toEqual(
      first.perSeam.filter((fit) => fit.pieces.includes(piece.id)).map(({ seam }) => seam),
    );
    expect(changed.length).toBeGreaterThan(0);
    expect(changed.length).toBeLessThan(first.perSeam.length);
    // Back again is a hit.
    expect(await fits.of(job, QUIET_WORK)).toBe(first);
  });

  it('is the same object as long as nothing it follows from changes', async () => {
    const { project, pipeline } = await madeSample('lantern');
    const first = await pipeline.run(project, QUIET_WORK);
    const other = await pipeline.run({ ...project, paper: { ...project.paper, name: 'A3' } }, QUIET_WORK);
    expect(first.dryFit).not.toBeNull();
    expect(other.dryFit).toBe(first.dryFit);
  });
});

const FIT: SeamFit = {
  seam: 'part-1.A' as SeamFit['seam'],
  letter: 'A',
  pieces: ['a' as SeamFit['pieces'][0], 'b' as SeamFit['pieces'][1]],
  worstGapMm: 0.5,
  worstOverlapMm: 0.4,
  worstSlipMm: 3,
  worstStepMm: 0,
  goneMm: 0,
  at: [1, 2, 3],
  samples: {
    stationMm: Float64Array.of(0, 10),
    points: Float64Array.of(0, 0, 0, 1, 2, 3),
    faceGapMm: Float64Array.of(0, -0.4),
    backGapMm: Float64Array.of(0, 0.5),
  },
};

describe('findings of a dry fit', () => {
  const found = (fit: SeamFit) =>
    dryFitFindings('part-1', {
      worstGapMm: fit.worstGapMm,
      worstOverlapMm: fit.worstOverlapMm,
      perSeam: [fit],
      corners: [],
    });

  it('says nothing of seams that close within the tolerance', () => {
    expect(found(FIT)).toEqual([]);
  });

  it('leads to the place and says what to do about a gap', () => {
    const backGapMm = Float64Array.of(0, 0.7);
    const [finding] = found({ ...FIT, worstGapMm: 0.7, samples: { ...FIT.samples, backGapMm } });
    expect(finding).toMatchObject({ code: 'dryfit/gap', severity: 'warning', value: 0.7, limit: 0.5, unit: 'mm' });
    expect(finding.where).toEqual({ part: 'part-1', seam: 'part-1.A', point: [1, 2, 3] });
    expect(finding.text).toContain('seam A stand up to 0.7 mm apart on the back: fill');
  });

  it('says why no edge can close where the sculpt is at fault', () => {
    const backGapMm = Float64Array.of(0, 0.7);
    const open = { ...FIT, worstGapMm: 0.7, samples: { ...FIT.samples, backGapMm } };
    const textFor = (reason: GapReason): string => {
      const fit = { worstGapMm: 0.7, worstOverlapMm: 0.4, perSeam: [open], corners: [] };
      return dryFitFindings('part-1', fit, () => reason)[0].text;
    };
    expect(textFor({ why: 'gone', lengthMm: 3.14 })).toContain(
      'apart on the back, because the sculpt is smaller there than the foam is thick: along 3.1 mm the bevels leave nothing',
    );
    expect(textFor({ why: 'turned', turnDeg: 4.2 })).toContain('because a facet beside it turns by 4° on its way');
  });

  it('says what to do about an overlap', () => {
    const faceGapMm = Float64Array.of(0, -0.9);
    const [finding] = found({ ...FIT, worstOverlapMm: 0.9, samples: { ...FIT.samples, faceGapMm } });
    expect(finding).toMatchObject({ code: 'dryfit/gap', value: 0.9 });
    expect(finding.text).toContain('seam A run up to 0.9 mm into each other on the face: sand');
  });
});
