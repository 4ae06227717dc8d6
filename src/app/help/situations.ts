import type { Bench } from '../bench-state.ts';
import { middlePlane } from '../section-plane.ts';
import { NO_PATH, NOTHING, type ViewState } from '../view-state.ts';
import type { Workbench } from '../workbench.ts';

/** What the maker has chosen or in hand, as far as keys go by it. */
export type Situation =
  'any' | 'seam' | 'open' | 'piece' | 'area' | 'part' | 'knife' | 'path' | 'dart' | 'walk' | 'move' | 'plane';

/** In the order of the sheet. */
export const SITUATIONS: readonly Situation[] = [
  'any',
  'seam',
  'open',
  'piece',
  'area',
  'part',
  'knife',
  'walk',
  'path',
  'dart',
  'move',
  'plane',
];

/** What would be looked at in a situation; null where the job has nothing to be chosen for it. */
function viewIn(situation: Situation, bench: Bench, parts: readonly string[]): Partial<ViewState> | null {
  const { seams, pieces, sculpt } = bench;
  const edgeOf = (isOpen: boolean): Partial<ViewState> | null => {
    const found = seams?.chains.find(({ kind }) => (kind === 'open') === isOpen);
    return found === undefined ? null : { choice: { kind: 'seam', seam: found.id } };
  };
  const piece = pieces?.pieces.at(0);
  switch (situation) {
    case 'any':
      return {};
    case 'seam':
      return edgeOf(false);
    case 'open':
      return edgeOf(true);
    case 'piece':
      return piece === undefined ? null : { choice: { kind: 'piece', piece: piece.id } };
    case 'area': {
      const place = piece === undefined ? -1 : (pieces?.patchOfTriangle.indexOf(piece.patch) ?? -1);
      return piece === undefined || place < 0 ? null : { choice: { kind: 'piece', piece: piece.id }, place };
    }
    case 'part':
      return parts.length === 0
        ? null
        : { choice: { kind: 'part', part: parts[parts.length - 1] } as ViewState['choice'] };
    case 'plane':
      return sculpt === null ? null : { plane: { of: 'section', plane: middlePlane(sculpt, 'y', 'front') } };
    case 'knife':
      return sculpt === null ? null : { tool: 'part' };
    case 'walk':
      return sculpt === null ? null : { tool: 'walk', cursor: 0, walked: 0 };
    case 'path':
      return sculpt === null ? null : { tool: 'path', through: [0, 1] };
    case 'dart':
      return sculpt === null ? null : { tool: 'dart', dart: { tip: 0, lengthMm: 1 } };
    case 'move':
      return sculpt === null ? null : { tool: 'move' };
  }
}

/**
 * The workbench as it would be in a situation, to read verbs from: nothing of it may be run. Null where the job has nothing to be chosen for it.
 */
export function workbenchIn(situation: Situation, bench: Workbench): Workbench | null {
  const { project } = bench;
  const parts = [...(project?.parts ?? []), ...(project?.plain ?? [])].map(({ id }) => id);
  const patch = viewIn(situation, bench.bench, parts);
  if (patch === null) return null;
  const bare: Partial<ViewState> = {
    ...NO_PATH,
    choice: NOTHING,
    tool: 'choose',
    place: null,
    withinMm: null,
    plane: null,
  };
  const view: ViewState = { ...bench.view, ...bare, ...patch };
  return new Proxy(bench, {
    get: (target, name) => (name === 'view' ? view : (Reflect.get(target, name, target) as unknown)),
  });
}
