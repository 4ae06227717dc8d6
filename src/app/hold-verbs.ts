import type { FoamPiece } from '../model/foam-piece.ts';
import type { SeamPaint } from '../model/flatten-settings.ts';
import { addRegion } from '../project/commands.ts';
import { holdPiece, holdSeams, isHeld, letPieceGo, letSeamsGo } from '../project/hold-commands.ts';
import { straightenChosen } from './across-actions.ts';
import { chosenArea } from './chosen-area.ts';
import { MARK_WORDS } from './mark-words.ts';
import type { Verb } from './verb.ts';
import { facesOfPiece, pairsOfSeam } from './wish-actions.ts';
import type { Workbench } from './workbench.ts';

/** What keeps the chosen seam where it is, or pulls it straight. */
export function seamHoldVerbs(bench: Workbench, seam: string): Verb[] {
  const pairs = pairsOfSeam(bench.bench, seam);
  const held = new Set((bench.part?.heldSeams ?? []).flatMap(([a, b]) => [`${a} ${b}`, `${b} ${a}`]));
  const isOn = pairs.length > 0 && pairs.every((pair) => held.has(pair.join(' ')));
  const words = MARK_WORDS.verbs;
  return [
    {
      id: 'hold-seam',
      label: isOn ? words.letGo : words.hold,
      key: 'h',
      isNear: true,
      isOn,
      run: () => bench.run(isOn ? letSeamsGo(pairs) : holdSeams(pairs)),
    },
    { id: 'straighten', label: words.straighten, key: 'z', isNear: true, run: () => void straightenChosen(bench) },
  ];
}

/** What keeps the chosen piece as it is. */
export function pieceHoldVerbs(bench: Workbench, piece: FoamPiece): Verb[] {
  const { part } = bench;
  if (part === null) return [];
  const faces = facesOfPiece(bench.bench, piece);
  const isOn = isHeld(part, faces);
  return [
    {
      id: 'hold-piece',
      label: isOn ? MARK_WORDS.verbs.letGo : MARK_WORDS.verbs.hold,
      key: 'h',
      isNear: true,
      isOn,
      run: () => bench.run(isOn ? letPieceGo(faces) : holdPiece(faces)),
    },
  ];
}

/** What is said of seams in the area that was clicked. */
export function areaPaintVerbs(bench: Workbench): Verb[] {
  const area = chosenArea(bench.bench, bench.view);
  if (area === null) return [];
  const { keepClear, prefer } = MARK_WORDS.verbs;
  const paint = (seams: SeamPaint) => () =>
    bench.run(addRegion(MARK_WORDS.areaNames[seams](area.piece), area.faces, 'normal', seams));
  return [
    { id: 'area-clear', label: keepClear, key: 'k', isNear: true, run: paint('clear') },
    { id: 'area-prefer', label: prefer, key: 'p', isNear: true, run: paint('prefer') },
  ];
}
