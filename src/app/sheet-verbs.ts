import { hasBetter, type LayoutSearchHand } from './layout-search.ts';
import { LAYOUT_WORDS } from './layout-words.ts';
import { PLACING_WORDS } from './placing-words.ts';
import type { Verb } from './verb.ts';
import type { Workbench } from './workbench.ts';

/** What can be done about the layout on sheets. */
export function sheetVerbs(bench: Workbench, hand: LayoutSearchHand): Verb[] {
  const sheets = bench.bench.sheets?.sheets ?? [];
  if (sheets.length === 0) return [];
  const { layoutSearch: search } = bench.view;
  const words = LAYOUT_WORDS.verbs;
  return [
    search?.state === 'looking'
      ? { id: 'stop-layout', label: words.stop, isOn: true, run: () => hand.stop() }
      : { id: 'improve-layout', label: words.begin, run: () => hand.begin() },
    ...(search !== null && hasBetter(search) ? [{ id: 'take-layout', label: words.take, run: () => hand.take() }] : []),
    ...(search === null ? [] : [{ id: 'put-layout', label: LAYOUT_WORDS.put, run: () => hand.putAway() }]),
    ...sheets.map((_, sheet) => ({
      id: `sheet-${sheet}`,
      label: PLACING_WORDS.openOf(PLACING_WORDS.sheet(sheet + 1)),
      run: () => bench.setView({ choice: { kind: 'sheet', sheet }, tool: 'choose' }),
    })),
  ];
}
