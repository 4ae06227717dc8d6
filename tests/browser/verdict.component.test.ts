import { afterAll, beforeAll, expect, it } from 'vitest';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import '../../src/app/later-elements.ts';
import type { Finding } from '../../src/base/finding.ts';
import type { App } from '../../src/app/app.ts';
import { LEGEND_WORDS } from '../../src/app/legend/legend-words.ts';
import type { PaperLine } from '../../src/app/paper-line.ts';
import { VERDICT_WORDS } from '../../src/app/verdict/verdict-words.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { axeFaults, findIn, openTrayApp, restedApp, soon } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeAll(async () => {
  ({ app, workbench } = await openTrayApp());
  app.style.cssText = 'display:block;inline-size:1200px;block-size:700px';
});
afterAll(() => app.remove());

const textOf = (element: HTMLElement): string =>
  (element.shadowRoot ?? element).textContent.replace(/\s+/g, ' ').trim();
const next = (): HTMLButtonElement => findIn(app, 'fl-job-sheet', 'fl-next-button', 'button');
const inPaper = (...path: string[]): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-paper-line', ...path);
const inChoice = (...path: string[]): HTMLElement =>
  findIn(app, 'fl-job-sheet', 'fl-fit-line', 'fl-colour-choice', ...path);

it('always has one button that leads on, by pointer and by key', async () => {
  if (workbench.bench.findings.some(({ severity }) => severity !== 'note')) {
    window.dispatchEvent(new KeyboardEvent('keydown', { key: '.', bubbles: true }));
    await restedApp(app);
    expect(findIn(app, 'fl-job-sheet', 'fl-paper-line').shadowRoot?.activeElement?.localName).toBe('fl-verdict');
  }
  expect(next().textContent).toContain(VERDICT_WORDS.next.print());
  expect(next().classList).toContain('next');
});

it('tells in one line whether it will work, with what was found good', async () => {
  const verdict = inPaper('fl-verdict');
  expect(textOf(inPaper('fl-verdict', '.answer'))).toMatch(/^It will work/);
  const details = inPaper('fl-verdict', '.checks') as HTMLDetailsElement;
  details.open = true;
  await restedApp(app);
  expect(textOf(details)).toContain('True to scale');
  expect(verdict.shadowRoot?.querySelectorAll('.checks .bad')).toHaveLength(0);
  expect(await axeFaults(app)).toEqual([]);
});

it('asks once more in place where something stops it, and leads to what does', async () => {
  const stop: Finding = { code: 'foam/loss', severity: 'error', text: 'Too much is lost.', where: {} };
  const line = document.createElement('fl-paper-line');
  Object.assign(line, {
    project: workbench.project,
    bench: { ...workbench.bench, findings: [stop] },
    isAsked: true,
  } satisfies Partial<PaperLine>);
  const asked: string[] = [];
  line.addEventListener('fl-verb', ({ verb }) => asked.push(verb));
  document.body.append(line);
  await soon(() => expect(line.shadowRoot?.querySelectorAll('.ask button')).toHaveLength(2));
  for (const button of line.shadowRoot!.querySelectorAll<HTMLElement>('.ask button')) button.click();
  expect(asked).toEqual(['see-findings', 'save-anyway']);
  const verdict = line.shadowRoot!.querySelector<HTMLElement>('fl-verdict')!;
  await soon(() => expect(textOf(verdict)).toContain(VERDICT_WORDS.answer.worksNot(stop.text)));
  line.remove();
});

it('shows one figure after the other in colours, each with its legend and its table sorted by keys', async () => {
  for (const kind of ['stretch', 'bend', 'fit'] as const) {
    workbench.setView({ colouring: kind });
    await restedApp(app);
    await soon(() => expect(textOf(findIn(app, 'fl-legend'))).toContain(LEGEND_WORDS.title[kind]('mm')));
  }
  const details = inChoice('fl-figure-table', 'details') as HTMLDetailsElement;
  details.open = true;
  await soon(() => inChoice('fl-figure-table', 'table'));
  const heading = (): HTMLElement => inChoice('fl-figure-table', 'th.name');
  expect(heading().getAttribute('aria-sort')).toBe('none');
  heading().querySelector('button')!.click();
  await restedApp(app);
  expect(heading().getAttribute('aria-sort')).toBe('ascending');
  expect(await axeFaults(app)).toEqual([]);
  // What is chosen by the keyboard is read as what is pointed at.
  workbench.setView({ choice: { kind: 'seam', seam: workbench.bench.dryFit!.perSeam[0].seam } });
  await restedApp(app);
  expect(textOf(findIn(app, 'fl-legend'))).toContain(`Seam ${workbench.bench.dryFit!.perSeam[0].letter}`);
});
