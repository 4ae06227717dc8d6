import { beforeEach, expect, it, vi } from 'vitest';
import type { SaveState } from '../../../src/app/autosave.ts';
import { NewVersion } from '../../../src/app/offline/new-version.ts';
import { OFFLINE_WORDS } from '../../../src/app/offline/offline-words.ts';
import type { QuietNotice } from '../../../src/app/offline/quiet-notice.ts';
import type { Notice } from '../../../src/app/workbench.ts';
import type { Project } from '../../../src/project/project.ts';

const DRAWN = { name: 'drawn' } as Project;

let said: Notice;
let done: string[];
let state: SaveState;
/** What a write ends in. */
let written: SaveState;
let inFile: Project | null;
let canUndo: boolean;

const job = {
  project: DRAWN,
  get history() {
    return { canUndo, canRedo: false };
  },
  autosave: {
    get state() {
      return state;
    },
    flush: async () => {
      done.push('kept');
      if (state === 'saving') state = written;
    },
  },
  keeping: {
    get place() {
      return { inFile };
    },
  },
};

function offered(): NewVersion {
  const notice = { say: (one: Notice) => (said = one) } as unknown as QuietNotice;
  const version = new NewVersion(job, notice, {
    save: async () => {
      done.push('saved');
      inFile = DRAWN;
    },
    reload: () => done.push('loaded'),
  });
  version.offer(async () => void done.push('in force'), false);
  return version;
}

beforeEach(() => {
  [done, state, written, inFile, canUndo] = [[], 'saved', 'saved', null, true];
});

it('is taken up when the maker says so, after what waits is written', async () => {
  state = 'saving';
  offered();
  expect(done).toEqual([]);
  expect(said).toMatchObject({ text: OFFLINE_WORDS.newer, close: OFFLINE_WORDS.later });
  said.remedy?.run();
  await vi.waitFor(() => expect(done).toEqual(['kept', 'in force', 'kept', 'loaded']));
});

it.each(['refused', 'looking'] as const)('waits for a file where the window keeps nothing: %s', async (left) => {
  state = left;
  offered();
  expect(said.text).toBe(OFFLINE_WORDS.saveFirst);
  said.remedy?.run();
  await vi.waitFor(() => expect(said.text).toBe(OFFLINE_WORDS.newer));
  expect(done).toEqual(['saved']);
  said.remedy?.run();
  await vi.waitFor(() => expect(done.at(-1)).toBe('loaded'));
});

it('is held by a write that is refused at the last moment', async () => {
  [state, written] = ['saving', 'refused'];
  offered();
  said.remedy?.run();
  await vi.waitFor(() => expect(said.text).toBe(OFFLINE_WORDS.saveFirst));
  expect(done).toEqual(['kept']);
});

it('a job that was not worked on holds nothing up', () => {
  [state, canUndo] = ['refused', false];
  offered();
  expect(said.text).toBe(OFFLINE_WORDS.newer);
});
