import { TakenLines } from '../../geom/taken-lines.ts';
import type { CutterLine, CutterRole } from '../../model/cutter.ts';
import type { LineRole, Stroke, Template } from '../../model/template.ts';
import type { CutterShape } from './cutter-shape.ts';
import { SAME_CUT_MM } from './cutter-cuts.ts';
import { onFoam } from './sheet-drawings.ts';

/** How lines that are drawn on paper are taken; through cuts and leaning edges are made from the piece itself. */
export const CUTTER_ROLE_OF: Readonly<Partial<Record<LineRole, CutterRole>>> = {
  kerf: 'kerf',
  'kerf-behind': 'behind',
  score: 'score',
  engrave: 'engrave',
  'groove-behind': 'behind',
  groove: 'groove',
  'fold-out': 'fold',
  'fold-in': 'fold',
  placement: 'placement',
  lap: 'lap',
  mark: 'mark',
};

/** Everything that foam shows of a piece but its through cuts, as a machine or the hand after it needs it; drawn lines before cuts part way. */
export function drawnLines(template: Template, shape: CutterShape): readonly CutterLine[] {
  const { strokes } = onFoam(template);
  const arrows = arrowsIn(strokes, template.grainRad !== undefined);
  const drawn = strokes.flatMap((stroke, i): CutterLine[] => {
    const { role, points, closed } = stroke;
    const taken = arrows.get(i) ?? CUTTER_ROLE_OF[role];
    if (taken === undefined) return [];
    return [{ role: taken, points, closed }];
  });
  return [...knifeLines(strokes, shape), ...drawn].sort((a, b) => stageOf(a.role) - stageOf(b.role));
}

/** Drawn, then part way. */
const stageOf = (role: CutterRole): number => (role === 'kerf' || role === 'score' ? 1 : 0);

/** Edges on face and back that do not lie over the upright cut, and ticks where a lean changes. */
function knifeLines(strokes: readonly Stroke[], { regions }: CutterShape): readonly CutterLine[] {
  const edges = new TakenLines(SAME_CUT_MM);
  for (const { outer, holes } of regions) for (const points of [outer, ...holes]) edges.block({ points, closed: true });
  return strokes
    .filter(({ role }) => role === 'bevel' || role === 'cut')
    .flatMap((stroke) => edges.take(stroke).free)
    .map(({ points, closed }) => ({ role: 'knife', points, closed }));
}

/** Strokes of arrows: a shaft and right after it one filled head (up) or two (the sheet's length). */
function arrowsIn(strokes: readonly Stroke[], hasGrain: boolean): ReadonlyMap<number, CutterRole> {
  const isHead = (i: number): boolean => i < strokes.length && strokes[i].role === 'mark' && strokes[i].filled === true;
  const found = new Map<number, CutterRole>();
  for (let i = 0; i < strokes.length; i += 1) {
    if (!isHead(i) || isHead(i - 1)) continue;
    const heads = isHead(i + 1) ? 2 : 1;
    const role: CutterRole = heads === 2 && hasGrain ? 'grain' : 'words';
    for (let k = i - 1; k < i + heads; k += 1) found.set(k, role);
  }
  return found;
}
