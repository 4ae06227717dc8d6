import { beforeEach, describe, expect, it } from 'vitest';
import { joinChosenAs, joinFacts, seamJoinVerbs, widenChosenLap } from '../../src/app/seam-joins.ts';
import { NOTHING } from '../../src/app/view-state.ts';
import { facesOfPiece } from '../../src/app/wish-actions.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { foamId, type FoamId } from '../../src/base/ids.ts';
import type { FoamSeam } from '../../src/model/foam-piece.ts';
import { setRule } from '../../src/project/shop-rules.ts';
import { setPieceFoam } from '../../src/project/piece-commands.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

let workbench: Workbench;

const seamA = (): FoamSeam => {
  const seam = workbench.bench.pieces?.seams.find(({ letter }) => letter === 'A');
  if (seam === undefined) throw new Error('no seam A');
  return seam;
};

const verbs = () => {
  const chain = workbench.bench.seams?.chains.find(({ letter }) => letter === 'A');
  return chain === undefined ? [] : seamJoinVerbs(workbench, chain);
};

async function run(id: string): Promise<void> {
  verbs()
    .find((verb) => verb.id === id)
    ?.run();
  await shown(workbench);
}

const seamFoam = (): FoamId => {
  const foam = workbench.part?.layers[0].foam;
  if (foam === undefined) throw new Error('no foam');
  return foam;
};

const codesOf = (seam: string): readonly string[] =>
  workbench.bench.findings.filter(({ where }) => where.seam === seam).map(({ code }) => code);

const numbers = (): number[] =>
  seamA().pieces.map((id) => workbench.bench.pieces?.pieces.find((piece) => piece.id === id)?.number ?? 0);

beforeEach(async () => {
  ({ workbench } = makeWorkbench());
  await openPartedTray(workbench);
  workbench.setView({ choice: { kind: 'seam', seam: seamA().id } });
});

describe('the kind of a seam', () => {
  it('is chosen beside it: butt, lap and rebate', async () => {
    expect(verbs().map(({ id }) => id)).toEqual(['lap', 'rebate']);
    await run('rebate');
    expect(seamA().kind).toBe('rebate');
    expect(verbs().map(({ id }) => id)).toEqual(['butt', 'other-stands', 'lap']);
    await run('lap');
    expect([seamA().kind, seamA().allowanceMm]).toEqual(['lap', 10]);
    expect(verbs().map(({ id }) => id)).toEqual(['butt', 'other-lap', 'lap-under', 'rebate']);
    await run('butt');
    expect(seamA().kind).toBe('butt');
    expect(workbench.part?.seamSettings).toEqual([]);
  });

  it('lets either piece stand, and says which', async () => {
    await run('rebate');
    const first = seamA().standSide ?? 0;
    const [a, b] = numbers();
    const said = [`${b} stands on ${a}`, `${a} stands on ${b}`];
    expect(joinFacts(workbench.bench, seamA(), 'mm')).toEqual([said[1 - first]]);
    await run('other-stands');
    expect(seamA().standSide).toBe(1 - first);
    expect(joinFacts(workbench.bench, seamA(), 'mm')).toEqual([said[first]]);
    workbench.undo();
    await shown(workbench);
    expect(seamA().standSide).toBe(first);
  });

  it('lays the lap on either side, over or under, and keeps its width', async () => {
    await run('lap');
    widenChosenLap(workbench, 14);
    await shown(workbench);
    const [a, b] = numbers();
    const steps = 'step of 6\u00a0mm on the face, 6\u00a0mm on the back';
    expect(joinFacts(workbench.bench, seamA(), 'mm')).toEqual([`${a} lies over ${b}`, steps]);
    await run('lap-under');
    expect([seamA().lapSide, seamA().topSide, seamA().allowanceMm]).toEqual([0, 1, 14]);
    expect(joinFacts(workbench.bench, seamA(), 'mm')).toEqual([`${b} lies over ${a}`, steps]);
    await run('other-lap');
    expect([seamA().lapSide, seamA().topSide, seamA().allowanceMm]).toEqual([1, 0, 14]);
  });

  it('is built otherwise where its fold is beyond the blade, as the maker chooses', async () => {
    const foam = seamFoam();
    workbench.run(setRule(foam, 'bevelLimitDeg', 30));
    await shown(workbench);
    expect(verbs().map(({ id }) => id)).toEqual(['lap', 'rebate', 'steep-split', 'steep-fill', 'steep-trim']);
    await run('steep-split');
    // 90 degrees over two seams of 22.5 each.
    expect(seamA().steep).toMatchObject({ way: 'split', strips: 1, bevelDeg: expect.closeTo(22.5, 9) as number });
    expect(codesOf(seamA().id)).toEqual(['foam/steep-built']);
    expect(verbs().map(({ id }) => id)).toEqual(['lap', 'rebate', 'butt', 'steep-fill', 'steep-trim']);
    await run('butt');
    expect(seamA().steep).toBeUndefined();
    expect(codesOf(seamA().id)).toEqual(['foam/bevel-steep']);
  });

  it('changes nothing where no seam is chosen', () => {
    workbench.setView({ choice: NOTHING });
    const before = workbench.project;
    joinChosenAs(workbench, { kind: 'rebate' });
    widenChosenLap(workbench, 12);
    expect(workbench.project).toBe(before);
  });
});

describe('the foam of a piece', () => {
  it('shows both bevels of its seams', async () => {
    const piece = workbench.bench.pieces?.pieces.find(({ id }) => id === seamA().pieces[0]);
    if (piece === undefined) throw new Error('no piece');
    workbench.run(setPieceFoam(facesOfPiece(workbench.bench, piece), foamId('eva-10')));
    await shown(workbench);
    // atan(6/10) and atan(10/6)
    expect(seamA().sideBevelDeg?.map(({ max }) => Math.round(1000 * max) / 1000)).toEqual([30.964, 59.036]);
  });
});
