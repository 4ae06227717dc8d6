import { afterEach, beforeEach, expect, it } from 'vitest';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { SpringList } from '../../src/app/spring-list.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { WORDS } from '../../src/app/words.ts';
import type { SeamPull } from '../../src/model/springing.ts';
import { axeFaults, openTrayApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

const textOf = (element: HTMLElement): string => (element.textContent ?? '').replace(/[\s\u00a0]+/g, ' ').trim();

it('joints are listed from the most pulled on, pointed at and chosen, with what the figures stand on', async () => {
  const [chain, ...others] = workbench.bench.seams!.chains;
  const pull = (pullNPerMm: number, at = chain): SeamPull => ({
    seam: at.id,
    letter: at.letter,
    pullNPerMm,
    way: 'opensFace',
    opensMm: 12,
    acrossNPerMm: 0,
    shearNPerMm: 0,
    peelNPerMm: 0,
    momentN: 0,
    at: [0, 0, 0],
  });
  const list = document.createElement('fl-spring-list') as SpringList;
  const seams = [pull(0.81), pull(0.4, others[0]), pull(0.3), pull(0.2), pull(0.001)];
  list.bench = { ...workbench.bench, springing: { pieces: [], seams } };
  app.shadowRoot!.querySelector('main')!.append(list);
  await list.updateComplete;
  const places = (): HTMLElement[] => [...list.shadowRoot!.querySelectorAll<HTMLElement>('button.place')];
  expect(places()).toHaveLength(3);
  expect(textOf(places()[0])).toBe(
    `Seam ${chain.letter} wants to open at the face, 8.1 N/cm; let go, its edges stand up to 12 mm off`,
  );
  places()[0].focus();
  expect(workbench.view.pointed?.seams).toEqual([0]);
  places()[0].click();
  expect(workbench.view.choice).toEqual({ kind: 'seam', seam: chain.id });
  expect(textOf(list.shadowRoot!.querySelector('p')!)).toBe(WORDS.springing.guide);
  list.shadowRoot!.querySelector<HTMLElement>('button.plain')!.click();
  await list.updateComplete;
  // What pulls next to nothing is left out.
  expect(places()).toHaveLength(4);
  expect(await axeFaults(app)).toEqual([]);
});

it('it is empty where nothing pulls', async () => {
  const list = document.createElement('fl-spring-list') as SpringList;
  list.bench = { ...workbench.bench, springing: { pieces: [], seams: [] } };
  app.shadowRoot!.querySelector('main')!.append(list);
  await list.updateComplete;
  expect(list.shadowRoot!.textContent?.trim()).toBe('');
});
