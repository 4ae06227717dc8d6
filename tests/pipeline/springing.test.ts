import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { Springings, springingFindings, type SpringingJob } from '../../src/pipeline/springing.ts';
import { runSample } from '../support/run-sample.ts';

async function jobOf(sample: string): Promise<SpringingJob> {
  const { cut, flats, pieces } = await runSample(sample);
  if (cut === null || flats === null || pieces === null) throw new Error('an unfinished outcome');
  return { cut, flats, pieces: pieces.map((piece) => ({ ...piece, bendStyle: 'rolled' as const })) };
}

describe('springing that is remembered', () => {
  it('lists joined seams from the most pulled on, and holds no piece twice', async () => {
    const job = await jobOf('shoulder-plate');
    const springings = new Springings();
    const first = await springings.of(job, QUIET_WORK);
    const joined = job.cut.chains.filter(({ kind }) => kind !== 'open').map(({ id }) => id);
    expect(first.seams.map(({ seam }) => seam).toSorted()).toEqual(joined.toSorted());
    const pulls = first.seams.map(({ pullNPerMm }) => pullNPerMm);
    expect(pulls).toEqual(pulls.toSorted((a, b) => b - a));
    expect(first.pieces.every(({ bendingMj, membraneMj }) => bendingMj > 0 && membraneMj >= 0)).toBe(true);
    expect(first.pieces.every(({ opensMm }) => opensMm > 0 && opensMm < 200)).toBe(true);
    const count = springings.heldCount;
    expect(count).toBe(job.pieces.length);
    expect(await springings.of(job, QUIET_WORK)).toEqual(first);
    expect(springings.heldCount).toBe(count);
  });

  it('leaves out grooved pieces, which bend in their grooves', async () => {
    const job = await jobOf('shoulder-plate');
    const pieces = job.pieces.map((piece) => ({ ...piece, bendStyle: 'grooved' as const }));
    expect(await new Springings().of({ ...job, pieces }, QUIET_WORK)).toEqual({ pieces: [], seams: [] });
  });
});

describe('the note of it', () => {
  const pull = (letter: string, pullNPerMm: number) => ({
    seam: `seam-${letter}` as never,
    letter,
    pullNPerMm,
    way: 'opensFace' as const,
    opensMm: 12,
    acrossNPerMm: 0,
    shearNPerMm: 0,
    peelNPerMm: 0,
    momentN: 0,
    at: [1, 2, 3] as const,
  });

  it('names the three joints under most pull and shows the first', () => {
    const seams = ['B', 'A', 'D', 'C'].map((letter, i) => pull(letter, 9 - i));
    const [note] = springingFindings('part', { pieces: [], seams }, 6);
    expect(note.text).toContain('seams B, A and D:');
    expect(note.where).toEqual({ part: 'part', seam: 'seam-B', point: [1, 2, 3] });
  });

  it('is not there where no joint is pulled much', () => {
    expect(springingFindings('part', { pieces: [], seams: [pull('A', 0.4)] }, 6)).toEqual([]);
  });
});
