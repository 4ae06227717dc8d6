import { LOOK_WORDS } from './look-words.ts';
import { LOOKS } from './look-row.ts';
import { PAINT_WORDS } from './paint-words.ts';
import { middlePlane } from './section-plane.ts';
import type { Verb } from './verbs.ts';
import type { Workbench } from './workbench.ts';

/** Verbs that look into the wall: at one surface of it, and at what a plane cuts open. */
export function insideVerbs(bench: Workbench): Verb[] {
  const { sculpt, shell } = bench.bench;
  if (sculpt === null || shell === null) return [];
  const { colouring, look, plane, stage } = bench.view;
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
    ...(bench.bench.dryFit === null
      ? []
      : [
          {
            id: 'fit-colours',
            label: colouring === 'fit' ? LOOK_WORDS.hideFit : LOOK_WORDS.showFit,
            key: 'd',
            isOn: colouring === 'fit',
            run: () => bench.setView({ colouring: colouring === 'fit' ? 'plain' : 'fit', look: 'foam' }),
          },
        ]),
    ...(bench.bench.room === null
      ? []
      : [
          {
            id: 'room-colours',
            label: colouring === 'room' ? LOOK_WORDS.hideRoom : LOOK_WORDS.showRoom,
            key: 'q',
            isOn: colouring === 'room',
            run: () =>
              bench.setView(
                colouring === 'room'
                  ? { colouring: 'plain', look: 'foam', roomMm: null }
                  : { colouring: 'room', look: 'back', stage: 0 },
              ),
          },
        ]),
    ...((bench.project?.shop?.colours ?? []).length === 0
      ? []
      : [
          {
            id: 'paint-colours',
            label: colouring === 'paint' ? PAINT_WORDS.hide : PAINT_WORDS.show,
            isOn: colouring === 'paint',
            run: () => bench.setView({ colouring: colouring === 'paint' ? 'plain' : 'paint', look: 'foam' }),
          },
        ]),
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
