import { LOOK_WORDS } from './look-words.ts';
import { LOOKS } from './looks.ts';
import { middlePlane } from './section-plane.ts';
import type { Verb } from './verb.ts';
import type { Workbench } from './workbench.ts';

/** Verbs that look into the wall: at one surface of it, and at what a plane cuts open. */
export function insideVerbs(bench: Workbench): Verb[] {
  const { sculpt, shell } = bench.bench;
  if (sculpt === null || shell === null) return [];
  const { look, plane, stage } = bench.view;
  const isCut = plane?.of === 'section';
  const looks = bench.bench.dryFit === null ? LOOKS.filter((one) => one !== 'prop') : LOOKS;
  const up = bench.part?.upAxis ?? 'y';
  return [
    {
      id: 'look-next',
      label: LOOK_WORDS.next,
      key: 'v',
      run: () => bench.setView({ stage: 0, look: looks[(looks.indexOf(look) + 1) % looks.length] }),
    },
    ...looks.map((next) => ({
      id: `look-at-${next}`,
      label: LOOK_WORDS.lookVerb(next),
      isOn: look === next,
      run: () => bench.setView({ stage: 0, look: next }),
    })),
    {
      id: 'cut-open',
      label: isCut ? LOOK_WORDS.closeVerb : LOOK_WORDS.cutVerb,
      key: 'u',
      isOn: isCut,
      run: () =>
        bench.setView({
          plane: isCut ? null : { of: 'section', plane: middlePlane(sculpt, up, 'front') },
          stage: Math.min(1, stage),
        }),
    },
  ];
}
