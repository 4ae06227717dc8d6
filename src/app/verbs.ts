import type { FoamPiece } from '../model/foam-piece.ts';
import { addRepair, setPieceSetting } from '../project/commands.ts';
import { AT_BENCH_WORDS } from './at-bench/at-bench-words.ts';
import { AT_SHOP_WORDS } from './at-shop/at-shop-words.ts';
import { chainIndex, pieceIndex } from './bench-state.ts';
import { chosenArea, giveOf, nextPanel, setChosenGive } from './chosen-area.ts';
import { areaPaintVerbs, pieceHoldVerbs, seamHoldVerbs } from './hold-verbs.ts';
import { labelText } from './label-words.ts';
import {
  areaMarkVerbs,
  dartVerbs,
  drawingVerbs,
  markVerbs,
  partAlongVerbs,
  pieceMarkVerbs,
  walkVerbs,
} from './mark-verbs.ts';
import { MARK_WORDS } from './mark-words.ts';
import { faceOfPiece } from './piece-face.ts';
import { costVerbs } from './cost-actions.ts';
import { filesVerbs } from './files-actions.ts';
import { keepVerbs } from './files/keep-actions.ts';
import { KEEP_WORDS } from './files/keep-words.ts';
import { gluingVerbs } from './gluing-actions.ts';
import { helpVerbs } from './help/help-verbs.ts';
import { easeVerbs, proposeVerbs } from './propose-actions.ts';
import { SAMPLES } from './samples.ts';
import { scoreVerb } from './score-actions.ts';
import { joinChosen } from './seam-actions.ts';
import { historyVerbs } from './history/history-verbs.ts';
import { seamJoinVerbs } from './seam-joins.ts';
import { colourVerbs } from './legend/colour-verbs.ts';
import { insideVerbs } from './look-verbs.ts';
import { LOOK_WORDS } from './look-words.ts';
import { dataText } from './data-words.ts';
import { openSample } from './opening.ts';
import { partVerbs } from './parts-actions.ts';
import { seatVerbs } from './seat-actions.ts';
import { PART_WORDS } from './part-words.ts';
import { MOCK_UP_WORDS } from './mock-up-words.ts';
import { SIMPLIFY_WORDS } from './simplify-words.ts';
import { tapeVerbs } from './tape-verbs.ts';
import { edgeWishOf, setEdgeWishOf } from './wish-actions.ts';
import { sheetVerbs } from './sheet-verbs.ts';
import type { Verb, WindowActions } from './verb.ts';
import { saveOrAsk, verdictVerbs } from './verdict/verdict-verbs.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** Keys that lead to the lines of the job sheet, in their order; 8 and 9 part where a plane cuts. */
const LINE_KEYS = '1234567';

const holdNext = () => ({ id: 'hold-next', label: MARK_WORDS.verbs.holdNext, key: 'n', isNear: true });

/** All verbs that can be done now, the ones beside the chosen thing first. */
export function verbsFor(bench: Workbench, actions: WindowActions): Verb[] {
  const all = workVerbs(bench, actions);
  return [...all, ...verdictVerbs(bench, actions, all)];
}

function workVerbs(bench: Workbench, actions: WindowActions): Verb[] {
  const near = nearVerbs(bench, actions);
  return [
    ...near,
    ...markVerbs(bench, actions),
    ...proposeVerbs(bench),
    ...costVerbs(bench),
    ...gluingVerbs(bench).rest,
    ...sheetVerbs(bench, actions.layoutSearch()),
    ...filesVerbs(bench),
    ...lookVerbs(bench, actions),
    ...jobVerbs(bench, actions),
    ...helpVerbs(bench),
    ...keepVerbs(bench, actions),
  ];
}

function nearVerbs(bench: Workbench, actions: WindowActions): Verb[] {
  const { choice, tool } = bench.view;
  if (tool === 'walk') return walkVerbs(bench);
  if (tool === 'path') return partAlongVerbs(bench);
  if (tool === 'dart') return dartVerbs(bench);
  if (tool === 'drawing') return drawingVerbs(bench, actions);
  if (tool === 'move') return [{ ...holdNext(), run: () => actions.holdSeam(true) }];
  if (tool !== 'choose') return [];
  switch (choice.kind) {
    case 'seam':
      return seamVerbs(bench, choice.seam, actions);
    case 'piece':
      return pieceVerbs(bench, actions, choice.piece);
    case 'part':
      return [...seatVerbs(bench, actions, choice.part), ...partVerbs(bench, choice.part)];
    case 'step':
      return [...gluingVerbs(bench).near];
    default:
      return [];
  }
}

function seamVerbs(bench: Workbench, id: string, actions: WindowActions): Verb[] {
  const seam = bench.bench.seams?.chains.find((chain) => chain.id === id);
  if (seam === undefined) return [];
  if (seam.kind === 'open') return edgeWishVerbs(bench, id, true);
  return [
    { id: 'join', label: WORDS.verbs.joinSeam(seam.letter), key: 'j', isNear: true, run: () => joinChosen(bench) },
    { id: 'move-seam', label: MARK_WORDS.verbs.move, key: 'm', isNear: true, run: () => actions.holdSeam(false) },
    {
      id: 'frame-seam',
      label: WORDS.verbs.frame,
      key: 'c',
      isNear: true,
      run: () => actions.frame({ seam: chainIndex(bench.bench, id) }),
    },
    scoreVerb(bench, seam),
    ...seamHoldVerbs(bench, id),
    ...seamJoinVerbs(bench, seam),
    ...edgeWishVerbs(bench, id, false),
  ];
}

/** Wishes for an edge of the foam. Seams keep their length anyway. */
function edgeWishVerbs(bench: Workbench, id: string, isOpen: boolean): Verb[] {
  const { holdLength = false, straight = false } = edgeWishOf(bench.bench, bench.part, id);
  const words = WORDS.forming.verbs;
  const hold: Verb = {
    id: 'hold-length',
    label: holdLength ? words.letLength : words.holdLength,
    key: 'h',
    isNear: true,
    run: () => setEdgeWishOf(bench, id, { holdLength: !holdLength }),
  };
  return [
    ...(isOpen ? [hold] : []),
    {
      id: 'straight',
      label: straight ? words.letStraight : words.straight,
      key: 'i',
      isNear: true,
      run: () => setEdgeWishOf(bench, id, { straight: !straight }),
    },
  ];
}

/** What can be done with an area of the chosen piece: step to it, and say how it gives. */
function areaVerbs(bench: Workbench): Verb[] {
  const words = WORDS.forming.verbs;
  const area = chosenArea(bench.bench, bench.view);
  const give = area === null ? null : giveOf(bench.part?.regions ?? [], area.faces);
  const gives = [
    ['stiff', words.stiff],
    ['soft', words.soft],
    ['rest', words.asRest],
  ] as const;
  return [
    { id: 'next-panel', label: words.nextPanel, key: 'n', isNear: true, run: () => nextPanel(bench) },
    ...gives
      .filter(([kind]) => give !== null && give !== kind)
      .map(([kind, label]) => ({ id: `area-${kind}`, label, isNear: true, run: () => setChosenGive(bench, kind) })),
  ];
}

function pieceVerbs(bench: Workbench, actions: WindowActions, id: string): Verb[] {
  const index = pieceIndex(bench.bench, id);
  const piece = bench.bench.pieces?.pieces[index];
  if (piece === undefined) return [];
  const words = WORDS.verbs;
  const face = faceOfPiece(bench.bench, piece);
  const other = piece.tracedSide === 'face' ? 'back' : 'face';
  const style = piece.bendStyle === 'rolled' ? 'grooved' : 'rolled';
  const ofPiece: Verb[] = [
    { id: 'frame-piece', label: words.frame, key: 'c', isNear: true, run: () => actions.frame({ piece: index }) },
    {
      id: 'trace',
      label: words.traceFrom(other),
      key: 't',
      isNear: true,
      run: () => bench.run(setPieceSetting(face, { tracedSide: other })),
    },
    {
      id: 'bend',
      label: words.bendAs[style],
      key: 'g',
      isNear: true,
      run: () => bench.run(setPieceSetting(face, { bendStyle: style })),
    },
    ...(piece.bendStyle === 'kerfed'
      ? []
      : [
          {
            id: 'kerf',
            label: words.bendAs.kerfed,
            key: 'y',
            isNear: true,
            run: () => bench.run(setPieceSetting(face, { bendStyle: 'kerfed' })),
          },
        ]),
    ...pieceMarkVerbs(bench, piece),
    ...pieceHoldVerbs(bench, piece),
    ...easeVerbs(bench, piece.patch),
    ...((bench.bench.sculpt?.facts.shells ?? 1) > 1
      ? [{ id: 'keep-surface', label: words.keepSurface, isNear: true, run: () => keepSurface(bench, piece) }]
      : []),
  ];
  // Where an area is meant, what is done with it stands beside it; the piece's own verbs are in the finder.
  const isArea = chosenArea(bench.bench, bench.view) !== null;
  const area = [...areaMarkVerbs(bench), ...areaPaintVerbs(bench), ...areaVerbs(bench)];
  return [...area, ...ofPiece.map((verb) => (isArea ? { ...verb, isNear: false } : verb))];
}

/** Drops every surface of the sculpt but the one this piece is cut from. */
function keepSurface(bench: Workbench, piece: FoamPiece): void {
  const { sculpt, pieces } = bench.bench;
  const vertex = pieces?.patches[piece.patch].meshVertices[0];
  if (sculpt !== null && vertex !== undefined)
    bench.run(addRepair({ kind: 'keep-shell', vertex: sculpt.fileVertex[vertex] }));
}

function lookVerbs(bench: Workbench, actions: WindowActions): Verb[] {
  const words = WORDS.verbs;
  const sides = ['front', 'back', 'left', 'right', 'top', 'bottom'] as const;
  return [
    ...WORDS.stages.map((label, i) => ({
      id: `stage-${i}`,
      label: words.roll(label),
      key: WORDS.stageKeys[i].toLowerCase(),
      run: () => actions.rollTo(i),
    })),
    ...colourVerbs(bench),
    ...insideVerbs(bench),
    ...tapeVerbs(bench),
    {
      id: 'frame-prop',
      label: LOOK_WORDS.propVerb,
      run: () => actions.frame(bench.view.stage === 0 ? 'sculpt' : 'pieces'),
    },
    { id: 'frame-all', label: words.frameAll, key: 'o', run: () => actions.frame('all') },
    ...(['hand', 'head', 'door', 'none'] as const).map((familiar) => ({
      id: `beside-${familiar}`,
      label: words.beside[familiar],
      run: () => bench.setView({ familiar }),
    })),
    ...sides.map((side) => ({ id: `look-${side}`, label: words.look(side), run: () => actions.look(side) })),
    { id: 'look-round', label: words.lookRound, run: () => actions.look('round') },
    { id: 'look-return', label: words.lookReturn, run: () => actions.look('return') },
  ];
}

const atBenchVerb = (bench: Workbench): Verb => ({
  id: 'at-bench',
  label: AT_BENCH_WORDS.verb,
  run: () => bench.setWishes({ atBench: { line: bench.wishes.atBench?.line ?? null, isOpen: true } }),
});

function jobVerbs(bench: Workbench, actions: WindowActions): Verb[] {
  const words = WORDS.verbs;
  const { history } = bench;
  const hasPages = bench.bench.paper !== null;
  return [
    ...(history?.canUndo === true
      ? [{ id: 'undo', label: words.undo(labelText(history.undoLabel ?? '')), run: () => bench.undo() }]
      : []),
    ...(history?.canRedo === true
      ? [{ id: 'redo', label: words.redo(labelText(history.redoLabel ?? '')), run: () => bench.redo() }]
      : []),
    ...historyVerbs(bench, actions),
    ...(bench.project === null ? [] : [atBenchVerb(bench)]),
    ...(bench.view.gluing.shop === null
      ? []
      : [{ id: 'at-shop', label: AT_SHOP_WORDS.verb, run: () => actions.goTo('takes', 'fl-shop-list') }]),
    { id: 'open', label: words.open, run: () => actions.openFile() },
    ...SAMPLES.map((sample) => ({
      id: `sample-${sample.id}`,
      label: `${WORDS.head.kit} ${dataText(sample.title)}`,
      run: () => void openSample(bench, sample),
    })),
    ...(bench.project === null
      ? []
      : [{ id: 'add-file', label: PART_WORDS.add.file, run: () => actions.press('parts', '.from-file') }]),
    { id: 'begin-shape', label: PART_WORDS.beginVerb, run: () => actions.beginWithShape() },
    ...(bench.part === null
      ? []
      : [{ id: 'new-version', label: words.newVersion, run: () => actions.openNewVersion() }]),
    ...(bench.bench.sculpt?.sized === true
      ? [{ id: 'change-size', label: WORDS.size.change, run: () => actions.goTo('size', '.known fl-length-field') }]
      : []),
    ...(bench.bench.sculpt?.sized === true
      ? [{ id: 'simplify', label: SIMPLIFY_WORDS.verb, run: () => actions.goTo('size', 'fl-simplify-fields') }]
      : []),
    ...(bench.bench.sculpt?.sized === true
      ? [{ id: 'fit-body', label: WORDS.wear.bodyGirth, run: () => actions.goTo('fit', 'fl-wear-group') }]
      : []),
    ...(hasPages
      ? (['pdf', 'changed', 'svg', 'report'] as const).map((kind) => ({
          id: `save-${kind}`,
          label: words.save(kind),
          run: () => saveOrAsk(bench, actions, kind),
        }))
      : []),
    ...(hasPages ? [{ id: 'print', label: KEEP_WORDS.print.verb, run: () => saveOrAsk(bench, actions, 'print') }] : []),
    ...(hasPages
      ? [{ id: 'mock-up', label: MOCK_UP_WORDS.verb, run: () => actions.goTo('paper', 'fl-mock-up-fields') }]
      : []),
    ...(bench.project === null
      ? []
      : (['project', 'strip'] as const).map((kind) => ({
          id: `save-${kind}`,
          label: words.save(kind),
          run: () => actions.save(kind),
        }))),
    ...Object.entries(WORDS.lines).map(([line, title], i) => ({
      id: `go-${line}`,
      label: words.goTo(title),
      ...(i < LINE_KEYS.length ? { key: LINE_KEYS[i] } : {}),
      run: () => actions.goTo(line),
    })),
  ];
}
