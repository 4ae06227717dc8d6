import { beforeEach, describe, expect, it } from 'vitest';
import { TapeHand } from '../../src/app/tape-hand.ts';
import { tapesOnBench } from '../../src/app/tape-plane.ts';
import { tapeVerbs } from '../../src/app/tape-verbs.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { setTape } from '../../src/project/wear-commands.ts';
import type { BenchPlane } from '../../src/viewport/bench-contract.ts';
import { TRAY_MM } from '../browser/open-tray.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

const LEVEL: BenchPlane['normal'] = [0, 1, 0];

describe('a tape in hand', () => {
  let workbench: Workbench;
  let hand: TapeHand;
  beforeEach(async () => {
    ({ workbench } = makeWorkbench());
    await openPartedTray(workbench);
    hand = new TapeHand(workbench);
    workbench.addEventListener('change', () => hand.follow());
    // The tray is drawn in centimetres: its middle is 50 mm up.
    workbench.run(setTape({ id: 'tape-1', name: 'Tape 1', pointInFile: [2, 5, 1], normal: [0, 3, 0] }));
    await shown(workbench);
    tapeVerbs(workbench)[0].run();
  });

  const at = (heightMm: number): BenchPlane => ({ point: [0, heightMm, 0], normal: LEVEL });
  const tape = () => workbench.part!.tapes![0];
  async function measured(): Promise<void> {
    for (let i = 0; i < 5; i += 1) await Promise.resolve();
  }

  it('stands where it lies, and is put away by the same verb', () => {
    expect(workbench.view.plane).toEqual({ of: 'tape', id: 'tape-1', plane: { point: [20, 50, 10], normal: LEVEL } });
    tapeVerbs(workbench)[0].run();
    expect(workbench.view.plane).toBeNull();
  });

  it('is measured where it is dragged to, and laid there by one command when it is let go', async () => {
    const before = workbench.project;
    for (const height of [30, 35, 25]) hand.move(at(height), false, false);
    await measured();
    expect(workbench.project).toBe(before);
    // The sculpt is the face of the foam: its girth at any height is that of the rectangle.
    expect(workbench.view.tried?.face?.girthMm).toBeCloseTo(2 * (TRAY_MM.width + TRAY_MM.depth), 9);
    expect(workbench.view.tried?.tape.pointInFile[1]).toBeCloseTo(2.5, 12);
    const inside = workbench.view.tried?.back?.girthMm;
    hand.move(at(25), true, false);
    await shown(workbench);
    await measured();
    // Its point kept its place in the plane.
    expect(tape().pointInFile).toEqual([2, 2.5, 1]);
    expect(workbench.bench.bodyFit?.tapes[0].back?.girthMm).toBe(inside);
    expect(workbench.view.tried).toBeNull();
    workbench.undo();
    expect(workbench.project).toBe(before);
    expect(workbench.view.plane?.plane.point).toEqual([20, 50, 10]);
  });

  it('of many places asks for the last one only', async () => {
    const asked: number[] = [];
    const { workshop } = workbench;
    const tapeAt = workshop.tapeAt.bind(workshop);
    workshop.tapeAt = (one) => {
      asked.push(10 * one.pointInFile[1]);
      return tapeAt(one);
    };
    for (const height of [30, 35, 25, 40]) hand.move(at(height), false, false);
    await measured();
    expect(asked).toEqual([30, 40]);
  });

  it('steps by key undo as one, each drag by itself', async () => {
    const before = workbench.project;
    for (const height of [51, 52, 53]) hand.move(at(height), true, true);
    workbench.undo();
    expect(workbench.project).toBe(before);
    for (const height of [60, 70]) hand.move(at(height), true, false);
    workbench.undo();
    expect(tape().pointInFile[1]).toBe(6);
    await shown(workbench);
  });

  it('is drawn apart from the others, and goes away with its tape', async () => {
    workbench.run(setTape({ id: 'tape-2', name: 'Tape 2', pointInFile: [0, 3, 0], normal: [0, 1, 0] }));
    await shown(workbench);
    const { bench } = workbench;
    const [first, second] = bench.bodyFit!.tapes;
    expect(tapesOnBench(bench, workbench.view)).toEqual({
      chosen: [first.back!.hull, first.face!.hull],
      rest: [second.back!.hull],
      cores: [],
    });
    workbench.undo();
    workbench.undo();
    expect(workbench.part?.tapes).toBeUndefined();
    expect(workbench.view.plane).toBeNull();
  });
});
