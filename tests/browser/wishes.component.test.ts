import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { WORDS } from '../../src/app/words.ts';
import { addRegion } from '../../src/project/commands.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

const inFindings = (path: string): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-fit-line', 'fl-findings', path);

describe('a wish in vain', () => {
  it('is told beside the fit and forgotten with a button; what has no place is no button itself', async () => {
    workbench.run(addRegion('badge', [99_999], 'stiff'));
    await restedApp(app);
    expect(inFindings('li.warning div > span').textContent).toContain(
      'The area “badge” is to be stiff, but names no face',
    );
    expect(await axeFaults(app)).toEqual([]);
    const forget = inFindings('li.warning .row button');
    expect(forget.textContent?.trim()).toBe(WORDS.remedies.forgetWish);
    forget.click();
    await restedApp(app);
    expect(workbench.part?.regions).toEqual([]);
    expect(workbench.bench.findings.filter(({ code }) => code.startsWith('wish/'))).toEqual([]);
  });
});
