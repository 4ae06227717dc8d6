import type { MockUp } from '../project/mock-up.ts';
import type { MadeFile } from '../worker/workshop-api.ts';
import { MOCK_UP_WORDS } from './mock-up-words.ts';
import type { Workbench } from './workbench.ts';

/** Has the mock-up made and hands it over. @param date `YYYY-MM-DD`. */
export async function saveMockUp(
  bench: Workbench,
  mockUp: MockUp,
  date: string,
  save: (file: MadeFile) => void,
): Promise<void> {
  const { project } = bench;
  if (project === null) return;
  bench.setNotice({ tone: 'note', text: MOCK_UP_WORDS.begun });
  const made = await bench.workshop.makeMockUp(mockUp, project, date);
  if (!made.ok) return bench.showProblem(made.problem);
  save(made.value);
  bench.setNotice({ tone: 'note', text: MOCK_UP_WORDS.saved(made.value.name) });
}
