import type { Project } from '../../project/project.ts';
import type { Colouring } from '../../viewport/bench-contract.ts';
import type { Bench } from '../bench-state.ts';
import type { Verb } from '../verb.ts';
import type { ViewState } from '../view-state.ts';
import type { Workbench } from '../workbench.ts';
import { LEGEND_WORDS } from './legend-words.ts';

/** What colours can be chosen to show, in the order it is offered. */
export const COLOURINGS = ['plain', 'stretch', 'bend', 'room', 'pull', 'fit', 'pieces', 'paint'] as const;

/** Its verb and, where it has one, its key. */
const VERBS: Readonly<Record<Colouring, { readonly id: string; readonly key?: string }>> = {
  plain: { id: 'plain-colours' },
  stretch: { id: 'stretch', key: 'k' },
  bend: { id: 'bend-colours' },
  room: { id: 'room-colours', key: 'q' },
  pull: { id: 'pull-colours' },
  fit: { id: 'fit-colours', key: 'd' },
  pieces: { id: 'piece-colours' },
  paint: { id: 'paint-colours' },
};

export const colourVerbOf = (colouring: Colouring): { readonly id: string; readonly key?: string } => VERBS[colouring];

/** Whether there is something to show. */
export function isColourable(colouring: Colouring, bench: Bench, project: Project | null): boolean {
  const { pieces, room, springing, dryFit } = bench;
  switch (colouring) {
    case 'plain':
    case 'stretch':
      return true;
    case 'room':
      return room !== null;
    case 'pull':
      return (springing?.seams.length ?? 0) > 0;
    case 'fit':
      return dryFit !== null;
    case 'paint':
      return (project?.shop?.colours ?? []).length > 0;
    default:
      return pieces !== null && pieces.pieces.length > 0;
  }
}

/** How the bench is looked at for it: room is on the inside of the foam, all else where it was. */
export function viewFor(colouring: Colouring, before: ViewState): Partial<ViewState> {
  if (colouring === 'room') return { colouring, look: 'back', stage: 0 };
  const isOfFoam = before.colouring === 'room' || ['bend', 'pull', 'fit', 'paint'].includes(colouring);
  return { colouring, ...(isOfFoam ? { look: 'foam' } : {}) };
}

/** Verbs that choose what colours show; one that is on already goes back to bare foam. */
export function colourVerbs(workbench: Workbench): Verb[] {
  const { bench, project, view } = workbench;
  const offered = COLOURINGS.filter((one) => isColourable(one, bench, project));
  const next = offered[(offered.indexOf(view.colouring) + 1) % offered.length];
  const show = (colouring: Colouring): void => workbench.setView(viewFor(colouring, workbench.view));
  return [
    ...offered.map((one): Verb => {
      const isOn = view.colouring === one;
      return {
        ...VERBS[one],
        label: LEGEND_WORDS.show[one],
        isOn: isOn && one !== 'plain',
        run: () => show(isOn ? 'plain' : one),
      };
    }),
    { id: 'colours-next', label: LEGEND_WORDS.next, key: ',', run: () => show(next) },
  ];
}
