import { tapeInHand } from './tape-plane.ts';
import type { Verb } from './verb.ts';
import { WORDS } from './words.ts';
import type { Workbench } from './workbench.ts';

/** Name of the verb that takes a tape in hand, or puts it away. */
export const holdVerbOf = (tape: string): string => `hold-${tape}`;

/** Each tape can be taken in hand: its plane stands on the bench then, round what is whole or apart. */
export function tapeVerbs(bench: Workbench): Verb[] {
  const mmPerUnit = bench.bench.sculpt?.mmPerUnit ?? null;
  if (mmPerUnit === null) return [];
  const { plane, stage } = bench.view;
  return (bench.part?.tapes ?? []).map((tape) => {
    const isOn = plane?.of === 'tape' && plane.id === tape.id;
    return {
      id: holdVerbOf(tape.id),
      label: WORDS.wear.holdVerb(tape.name, isOn),
      isOn,
      run: () =>
        bench.setView(isOn ? { plane: null } : { plane: tapeInHand(tape, mmPerUnit), stage: Math.min(1, stage) }),
    };
  });
}
