import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH } from '../../../src/app/bench-state.ts';
import { saveOrAsk } from '../../../src/app/verdict/verdict-verbs.ts';
import type { WindowActions } from '../../../src/app/verb.ts';
import type { ViewState } from '../../../src/app/view-state.ts';
import type { Workbench } from '../../../src/app/workbench.ts';
import type { Severity } from '../../../src/base/finding.ts';

function saving(severity: Severity) {
  const done: string[] = [];
  const views: Partial<ViewState>[] = [];
  const workbench = {
    bench: { ...EMPTY_BENCH, findings: [{ code: 'foam/a', severity, text: 'So.', where: {} }] },
    setView: (patch: Partial<ViewState>) => views.push(patch),
  } as unknown as Workbench;
  const actions = {
    save: (kind: string) => done.push(`save ${kind}`),
    goTo: (line: string) => done.push(`go to ${line}`),
  } as unknown as WindowActions;
  return { workbench, actions, done, views };
}

describe('saving templates', () => {
  it('asks once more where something stops it, and saves when it was asked', () => {
    const { workbench, actions, done, views } = saving('error');
    saveOrAsk(workbench, actions, 'pdf');
    expect(done).toEqual(['go to paper']);
    expect(views).toEqual([{ printAsked: 'pdf' }]);
    saveOrAsk(workbench, actions, 'pdf', true);
    expect(done).toEqual(['go to paper', 'save pdf']);
  });

  it('asks nothing where nothing stops it, nor of files that are not printed', () => {
    const free = saving('warning');
    saveOrAsk(free.workbench, free.actions, 'pdf');
    const report = saving('error');
    saveOrAsk(report.workbench, report.actions, 'report');
    expect([...free.done, ...report.done]).toEqual(['save pdf', 'save report']);
  });
});
