import { beforeEach, describe, expect, it } from 'vitest';
import { StagePicks } from '../../src/app/stage-picks.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { makeWorkbench, openPartedTray } from '../support/tray-workbench.ts';

describe('clicks on a piece', () => {
  let workbench: Workbench;
  let picks: StagePicks;
  beforeEach(async () => {
    ({ workbench } = makeWorkbench());
    await openPartedTray(workbench);
    picks = new StagePicks(workbench);
  });

  const click = (piece: number, triangle: number): void => picks.click({ kind: 'piece', piece, triangle });
  const chosen = () => ({ choice: workbench.view.choice, place: workbench.view.place });
  const idOf = (piece: number) => workbench.bench.pieces?.pieces[piece].id;

  it('choose it first, and then a place on it', () => {
    click(0, 5);
    expect(chosen()).toEqual({ choice: { kind: 'piece', piece: idOf(0) }, place: null });
    click(0, 6);
    expect(chosen()).toEqual({ choice: { kind: 'piece', piece: idOf(0) }, place: 6 });
    workbench.setView({ withinMm: 30 });
    click(1, 9);
    expect(chosen()).toEqual({ choice: { kind: 'piece', piece: idOf(1) }, place: null });
    expect(workbench.view.withinMm).toBeNull();
    picks.click({ kind: 'nothing' });
    expect(chosen()).toEqual({ choice: { kind: 'nothing' }, place: null });
  });
});
