import type { FoamPiece } from '../model/foam-piece.ts';
import { FIRST_TIP_HOLE_MM, setTipHole } from '../project/tip-commands.ts';
import { chosenArea } from './chosen-area.ts';
import { layDrawingBy, partDrawing } from './drawing-actions.ts';
import { hasMarks, isParted } from './edge-facts.ts';
import { partAtPlane } from './across-actions.ts';
import { partAlongPath, partRound, pickForPath, turnInReach } from './mark-actions.ts';
import { MARK_WORDS } from './mark-words.ts';
import { layAgain } from './path-manner.ts';
import { joinEdges, joinEverything, partEdges } from './seam-actions.ts';
import type { Verb, WindowActions } from './verb.ts';
import { NO_PATH, NOTHING, type Lay, type Reach, type Tool, type ViewState } from './view-state.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** What a tool begins with: nothing of another is left in hand. */
const AFRESH: Partial<ViewState> = {
  from: null,
  to: null,
  ...NO_PATH,
  choice: NOTHING,
  stage: 0,
};

/** Verbs that mark seams wherever the maker stands. */
export function markVerbs(bench: Workbench, actions: WindowActions): Verb[] {
  const { sculpt } = bench.bench;
  if (sculpt === null) return [];
  const { tool } = bench.view;
  const words = WORDS.verbs;
  const isInHand = (to: Tool): boolean => tool === to && (to !== 'part' || bench.view.reach === 'edge');
  const turn = (to: Tool) => () => bench.setView({ ...AFRESH, reach: 'edge', tool: isInHand(to) ? 'choose' : to });
  const hasSeams = hasMarks(bench.part);
  return [
    ...(tool === 'walk'
      ? []
      : [{ id: 'part-tool', label: words.partTool, key: 'p', isOn: isInHand('part'), run: turn('part') }]),
    ...reachVerbs(bench),
    ...(tool === 'walk'
      ? []
      : [{ id: 'path-tool', label: words.pathTool, key: 'r', isOn: tool === 'path', run: turn('path') }]),
    { id: 'dart-tool', label: MARK_WORDS.verbs.dart, key: 'z', isOn: tool === 'dart', run: turn('dart') },
    { id: 'drawing-tool', label: MARK_WORDS.verbs.drawing, run: () => actions.openDrawing() },
    { id: 'walk', label: words.walk, key: 'e', isOn: tool === 'walk', run: () => actions.beginWalk() },
    { id: 'measure', label: WORDS.size.measureVerb, isOn: tool === 'measure', run: turn('measure') },
    ...planeVerbs(bench),
    ...mirrorVerbs(bench),
    { id: 'sharp', label: words.sharp, run: () => actions.goTo('seams') },
    ...(bench.part?.regions ?? []).map(({ id, name, faces }) => ({
      id: `round-${id}`,
      label: MARK_WORDS.verbs.round(name),
      run: () => void partRound(bench, { faces }),
    })),
    ...sculpt.groups.map(({ group, name }) => ({
      id: `round-group-${group}`,
      label: MARK_WORDS.verbs.round(name),
      run: () => void partRound(bench, { group }),
    })),
    ...(hasSeams ? [{ id: 'join-all', label: words.joinAll, run: () => joinEverything(bench) }] : []),
  ];
}

/** Parting at the plane that cuts the sculpt open. */
function planeVerbs(bench: Workbench): Verb[] {
  const { plane, spacingMm } = bench.view;
  if (plane?.of !== 'section') return [];
  const { atPlane, atPlanes } = MARK_WORDS.verbs;
  return [
    { id: 'part-at-plane', label: atPlane, key: '8', run: () => void partAtPlane(bench, null) },
    { id: 'part-at-planes', label: atPlanes, key: '9', run: () => void partAtPlane(bench, spacingMm) },
  ];
}

/** Marks appear on both sides, or not. */
function mirrorVerbs(bench: Workbench): Verb[] {
  if (bench.bench.mirror === null) return [];
  const { isMirrored } = bench.view;
  const { mirror, noMirror } = MARK_WORDS.verbs;
  const run = (): void => {
    bench.setView({ isMirrored: !isMirrored });
    bench.say(MARK_WORDS.spoken.mirrored(!isMirrored));
  };
  return [{ id: 'mirror', label: isMirrored ? noMirror : mirror, key: '0', isOn: isMirrored, run }];
}

/** Follow round and follow the ridge: from the edge just walked at once, else they are how far a click with the knife goes. */
function reachVerbs(bench: Workbench): Verb[] {
  const { tool, reach, walked, through, spots } = bench.view;
  // On the way of a path, L is its own.
  if (tool === 'walk' && through.length + spots.length > 0) return [];
  const verb = (to: Reach, id: string, label: string, key: string): Verb => ({
    id,
    label,
    key,
    isNear: tool === 'part' || (tool === 'walk' && walked !== null),
    isOn: tool === 'part' && reach === to,
    run: () => {
      if (tool === 'walk') {
        if (walked !== null) void turnInReach(bench, walked, to);
      } else if (tool === 'part') bench.setView({ reach: reach === to ? 'edge' : to, preview: null });
      else bench.setView({ ...AFRESH, tool: 'part', reach: to });
    },
  });
  return [
    verb('round', 'follow-round', MARK_WORDS.verbs.followRound, 'l'),
    verb('ridge', 'follow-ridge', MARK_WORDS.verbs.followRidge, 'b'),
  ];
}

/** What stands beside the mark that walks along edges. */
export function walkVerbs(bench: Workbench): Verb[] {
  const { walked, cursor, through, spots } = bench.view;
  const pick: Verb[] =
    cursor === null
      ? []
      : [
          {
            id: 'pick-corner',
            label: MARK_WORDS.verbs.pickCorner,
            key: 'r',
            isNear: true,
            run: () => void pickForPath(bench, cursor),
          },
        ];
  if (through.length + spots.length > 0) return [...partAlongVerbs(bench), ...pick];
  if (walked === null) return [...pick, ...layVerbs(bench)];
  return isParted(bench.bench, walked)
    ? [{ id: 'join', label: WORDS.verbs.join, key: 'j', isNear: true, run: () => joinEdges(bench, [walked]) }, ...pick]
    : [{ id: 'part', label: WORDS.verbs.part, key: 'p', isNear: true, run: () => partEdges(bench, [walked]) }, ...pick];
}

/** What stands beside a path on its way. */
export function partAlongVerbs(bench: Workbench): Verb[] {
  const { through, spots } = bench.view;
  const run = () => void partAlongPath(bench);
  return [
    ...(through.length + spots.length < 2
      ? []
      : [{ id: 'part-along', label: MARK_WORDS.verbs.partAlong, key: 'p', isNear: true, run }]),
    ...layVerbs(bench),
  ];
}

/** How the path runs from one picked place to the next. */
function layVerbs(bench: Workbench): Verb[] {
  const { lay, within } = bench.view;
  if (within !== null) return [];
  const verb = (to: Lay, key: string): Verb => ({
    id: `lay-${to}`,
    label: MARK_WORDS.verbs.lay[to],
    key,
    isNear: true,
    isOn: lay === to,
    run: () => void layAgain(bench, to),
  });
  return [verb('edges', 'k'), verb('straight', 'l'), verb('curve', 'c')];
}

/** What stands beside a drawing in hand: how it is laid. `as seen` once more takes it as it is seen now. */
export function drawingVerbs(bench: Workbench, actions: WindowActions): Verb[] {
  const { drawing, laid } = bench.view;
  if (drawing === null) return [];
  const { place } = drawing;
  const verb = (way: 'seen' | 'round', key: string): Verb => ({
    id: `lay-${way}`,
    label: MARK_WORDS.verbs.layBy[way],
    key,
    isNear: true,
    isOn: drawing.way === way,
    run: () => layDrawingBy(bench, way, place && actions.facing(place.point)),
  });
  const part: Verb = {
    id: 'part-along',
    label: MARK_WORDS.verbs.partAlong,
    key: 'p',
    isNear: true,
    run: () => void partDrawing(bench),
  };
  return [...(laid === null || 'problem' in laid ? [] : [part]), verb('seen', 'k'), verb('round', 'l')];
}

/** What stands beside the dart pulled last. */
export function dartVerbs(bench: Workbench): Verb[] {
  const { dart } = bench.view;
  const corner = dart === null ? undefined : bench.bench.sculpt?.fileVertex[dart.tip];
  if (corner === undefined) return [];
  const isHole = bench.part?.tipHoles?.some((hole) => hole.corner === corner) === true;
  return [
    {
      id: 'tip-hole',
      label: isHole ? MARK_WORDS.verbs.point : MARK_WORDS.verbs.hole,
      key: 'h',
      isNear: true,
      run: () => bench.run(setTipHole(corner, isHole ? null : FIRST_TIP_HOLE_MM)),
    },
  ];
}

/** What marks seams in the chosen piece. */
export function pieceMarkVerbs(bench: Workbench, piece: FoamPiece): Verb[] {
  const split = () => bench.setView({ ...AFRESH, tool: 'path', within: { piece: piece.id, isAcross: true } });
  return [{ id: 'split', label: MARK_WORDS.verbs.split, key: 'b', isNear: true, run: split }];
}

/** What marks seams round the area that was clicked. */
export function areaMarkVerbs(bench: Workbench): Verb[] {
  const area = chosenArea(bench.bench, bench.view);
  if (area === null) return [];
  const run = () => void partRound(bench, { faces: area.faces });
  return [{ id: 'round-here', label: MARK_WORDS.verbs.roundHere, key: 'l', isNear: true, run }];
}
