import { drawPaths } from '../project/path-commands.ts';
import { removeSeamEdges } from '../project/commands.ts';
import type { SeamPath } from '../model/seams.ts';
import type { AcrossLine, AcrossWish, Spot } from '../worker/drawing-api.ts';
import type { BenchPick } from '../viewport/bench-contract.ts';
import { chainIndex } from './bench-state.ts';
import { onBoth } from './both-sides.ts';
import { MARK_WORDS } from './mark-words.ts';
import { pairsOfSeam } from './wish-actions.ts';
import { NOTHING, NO_PATH } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** What was clicked as a place to draw through, or null beside the sculpt. */
export function spotOf({ onSculpt, triangle, point, border }: BenchPick): Spot | null {
  if (onSculpt !== true || triangle === undefined || point === undefined) return null;
  return { triangle, point, ...(border === undefined ? {} : { edge: border }) };
}

/** A click this near a picked place means that place, as a share of the size of the sculpt. */
const SAME_SHARE = 0.012;

/** A place is picked for a line across faces. The last one again ends it, and so does the first: then the line is closed. */
export async function pickSpot(bench: Workbench, spot: Spot): Promise<void> {
  const { spots } = bench.view;
  const isAt = (other: Spot | undefined): boolean => other !== undefined && isSamePlace(bench, other, spot);
  if (spots.length > 0 && isAt(spots.at(-1))) return spots.length > 1 ? await partAcross(bench) : undefined;
  const isClosed = spots.length > 2 && isAt(spots[0]);
  const next = [...spots, isClosed ? spots[0] : spot];
  bench.setView({ spots: next });
  bench.say(MARK_WORDS.spoken.placed(next.length));
  if (isClosed) return await partAcross(bench);
  await show(bench, next, next);
}

/** Takes the place picked last back. @returns false when none was picked. */
export function unpickSpot(bench: Workbench): boolean {
  const { spots } = bench.view;
  if (spots.length === 0) return false;
  const kept = spots.slice(0, -1);
  bench.setView({ spots: kept, previewLines: null });
  bench.say(MARK_WORDS.spoken.backOnePlace);
  void show(bench, kept, kept);
  return true;
}

/** Shows where the line would run if it went on to a place. */
export async function previewAcross(bench: Workbench, spot: Spot): Promise<void> {
  const { spots } = bench.view;
  if (spots.length > 0) await show(bench, spots, [...spots, spot]);
}

/** Parts along the line through the places picked so far. */
export async function partAcross(bench: Workbench): Promise<void> {
  const { spots } = bench.view;
  if (spots.length < 2) return;
  const lines = await drawn(bench, wishOf(bench, spots));
  if (lines === null || bench.view.spots !== spots) return;
  bench.setView(NO_PATH);
  bench.run(drawPaths(lines.map(pathOf)));
  bench.say(MARK_WORDS.spoken.drawn(lines.length));
}

/** Parts where the plane in hand cuts the sculpt, or where planes at equal distances from it do. */
export async function partAtPlane(bench: Workbench, spacingMm: number | null): Promise<void> {
  const { plane } = bench.view;
  if (plane?.of !== 'section') return;
  const { point, normal } = plane.plane;
  const lines = await drawn(bench, { by: 'plane', point, normal, ...(spacingMm === null ? {} : { spacingMm }) });
  if (lines === null) return;
  bench.setView({ previewLines: null });
  bench.run(drawPaths(lines.map(pathOf)));
  bench.say(MARK_WORDS.spoken.drawn(lines.length));
}

let straightened = 0;

/** Pulls the chosen seam taut within a distance of where it runs: a line across faces takes its place, as one change. */
export async function straightenChosen(bench: Workbench): Promise<void> {
  const { choice, tautMm } = bench.view;
  if (choice.kind !== 'seam') return;
  const chain = bench.bench.seams?.chains[chainIndex(bench.bench, choice.seam)];
  if (chain === undefined || chain.kind === 'open') return;
  const gone = onBoth(bench, pairsOfSeam(bench.bench, choice.seam));
  const lines = await drawn(bench, { by: 'taut', corners: [...chain.vertices], withinMm: tautMm });
  if (lines === null) return;
  const farthest = Math.max(0, ...lines.map(({ farthestMm }) => farthestMm ?? 0));
  straightened += 1;
  const mergeKey = `straighten ${straightened}`;
  bench.setView({ choice: NOTHING });
  bench.run({ ...removeSeamEdges(gone, mergeKey), label: MARK_WORDS.straightened });
  bench.run({ ...drawPaths(lines.map(pathOf), mergeKey), label: MARK_WORDS.straightened });
  bench.say(MARK_WORDS.spoken.straightened(farthest));
}

const pathOf = ({ points }: AcrossLine): SeamPath => ({ points, kind: 'butt' });

const wishOf = ({ view }: Workbench, spots: readonly Spot[]): AcrossWish => ({
  by: view.lay === 'curve' ? 'curve' : 'straight',
  spots,
});

/** Lines for a wish; null where there are none, told, or the sculpt is another by now. */
async function drawn(bench: Workbench, wish: AcrossWish, tell = true): Promise<readonly AcrossLine[] | null> {
  const { sculpt } = bench.bench;
  const lines = await bench.workshop.drawAcross(wish, bench.view.isMirrored);
  if (bench.bench.sculpt !== sculpt) return null;
  if (lines.ok) return lines.value;
  if (tell) bench.showProblem(lines.problem);
  return null;
}

/** Shows the line through the places picked so far. */
export const showSpots = (bench: Workbench, spots: readonly Spot[]): Promise<void> => show(bench, spots, spots);

async function show(bench: Workbench, now: readonly Spot[], through: readonly Spot[]): Promise<void> {
  const lines = through.length < 2 ? [] : await drawn(bench, wishOf(bench, through), false);
  if (bench.view.spots === now && lines !== null)
    bench.setView({ previewLines: lines.length === 0 ? null : lines.map(({ xyz }) => xyz) });
}

function isSamePlace({ bench }: Workbench, a: Spot, b: Spot): boolean {
  const { sculpt } = bench;
  if (sculpt === null) return false;
  const [p, q] = [a, b].map((spot) =>
    'corner' in spot ? [...sculpt.positions.subarray(3 * spot.corner, 3 * spot.corner + 3)] : spot.point,
  );
  const size = Math.hypot(...sculpt.facts.boxSize) * (sculpt.mmPerUnit ?? 1);
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) <= SAME_SHARE * size;
}
