import { expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/mock-up-fields.ts';
import type { MockUpFields } from '../../src/app/mock-up-fields.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { MockUp } from '../../src/project/mock-up.ts';

it('asks for a mock-up at the scale and of the card that were chosen', async () => {
  const fields = document.createElement('fl-mock-up-fields') as MockUpFields;
  fields.project = newProject('helm', { hash: 'a'.repeat(64), fileName: 'helm.obj', format: 'obj' });
  const asked: MockUp[] = [];
  fields.addEventListener('fl-mock-up', (event) => asked.push(event.mockUp));
  document.body.append(fields);
  do await fields.updateComplete;
  while (fields.isUpdatePending);
  const root = fields.shadowRoot as ShadowRoot;
  const save = root.querySelector('button') as HTMLButtonElement;
  await userEvent.click(save);
  await userEvent.selectOptions(root.querySelector('select') as HTMLSelectElement, '1:6');
  const card = root.querySelector('fl-length-field')?.shadowRoot?.querySelector('input') as HTMLInputElement;
  await userEvent.fill(card, '0,3');
  await userEvent.keyboard('{Enter}');
  await userEvent.click(save);
  expect(asked).toEqual([
    { times: 4, cardMm: 0.4 },
    { times: 6, cardMm: 0.3 },
  ]);
  fields.remove();
});
