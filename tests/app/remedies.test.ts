import { describe, expect, it } from 'vitest';
import { remedyFor } from '../../src/app/remedies.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';
import { setAllowForShrinkage } from '../../src/project/commands.ts';

describe('a wish that cannot be followed', () => {
  it('is forgotten with one button, and comes back with undo', async () => {
    const { workbench } = makeWorkbench();
    await openPartedTray(workbench);
    const told = () => workbench.bench.findings.filter(({ code }) => code === 'wish/shrinkage-unknown');
    expect(told()).toEqual([]);
    workbench.run(setAllowForShrinkage(true));
    await shown(workbench);
    const [finding] = told();
    const remedy = remedyFor(finding, workbench.bench);
    expect(remedy?.label).toBe('Forget this wish');
    if (remedy !== null) workbench.run(remedy.command);
    await shown(workbench);
    expect(told()).toEqual([]);
    workbench.undo();
    await shown(workbench);
    expect(told()).toHaveLength(1);
  });
});
