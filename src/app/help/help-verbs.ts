import type { FileKind } from '../../worker/workshop-api.ts';
import type { Verb } from '../verb.ts';
import type { Workbench } from '../workbench.ts';
import type { HelpSheetName } from './help-look.ts';
import { HELP_WORDS } from './help-words.ts';

/** Lays a sheet of the help over the bench, or puts it away where it lies there already. @param term  the word to open it at. */
export function turnHelp(bench: Workbench, sheet: HelpSheetName | null, term = ''): void {
  const { help } = bench.view;
  const isAway = sheet === help.sheet && term === '';
  bench.setView({ help: { ...help, sheet: isAway ? null : sheet, term } });
}

/** Verbs of the help, wherever the maker is. */
export function helpVerbs(bench: Workbench): Verb[] {
  const words = HELP_WORDS.verbs;
  const { guide } = bench.wishes;
  const isOpen = guide?.isOpen === true;
  return [
    { id: 'help-keys', label: words.keys, key: '?', run: () => turnHelp(bench, 'keys') },
    { id: 'help-words', label: words.words, run: () => turnHelp(bench, 'words') },
    {
      id: 'guide',
      label: isOpen ? words.leave : words.guide,
      run: () => bench.setWishes({ guide: { done: guide?.done ?? [], isOpen: !isOpen } }),
    },
  ];
}

/** Keeps in mind that a file was saved. */
export function noteSaved(bench: Workbench, kind: FileKind): void {
  const { help } = bench.view;
  bench.setView({ help: { ...help, saved: [...help.saved, kind] } });
}
