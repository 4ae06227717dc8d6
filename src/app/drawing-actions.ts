import { drawPaths } from '../project/path-commands.ts';
import type { BenchFacing, BenchPick } from '../viewport/bench-contract.ts';
import type { FlatDrawing, LayWish } from '../worker/drawing-api.ts';
import { spotOf } from './across-actions.ts';
import { findingText } from './finding-text.ts';
import { MARK_WORDS } from './mark-words.ts';
import { NO_PATH, NOTHING, type DrawingInHand, type DrawingPlace } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** Reads an SVG file and takes it in hand: it is laid where one looks, and moved from there. */
export async function openDrawing(bench: Workbench, file: File): Promise<void> {
  const words = MARK_WORDS.drawing;
  if (bench.bench.sculpt === null) return bench.setNotice({ tone: 'problem', text: words.needsSculpt(file.name) });
  const text = await file.text().catch(() => null);
  const read = text === null ? null : await bench.workshop.readDrawing(text);
  if (read === null) return bench.setNotice({ tone: 'problem', text: words.unreadable(file.name) });
  if (!read.ok) return bench.showProblem(read.problem);
  takeDrawing(bench, file.name, read.value, read.notes.map((note) => findingText(note, bench.project?.lengthUnit ?? 'mm')).join(' '));
}

function takeDrawing(bench: Workbench, name: string, flat: FlatDrawing, notes: string): void {
  const drawing: DrawingInHand = {
    name,
    ...flat,
    notes,
    way: 'seen',
    sizePct: 100,
    turnDeg: 0,
    shiftMm: [0, 0],
    place: null,
  };
  const look = bench.view.look === 'prop' ? 'foam' : bench.view.look;
  bench.setView({ ...NO_PATH, choice: NOTHING, from: null, to: null, tool: 'drawing', stage: 0, look, drawing });
}

/** The place that was pointed at, and how it is looked at; null beside the sculpt. */
export function placeOfPick(
  pick: BenchPick,
  facing: (point: DrawingPlace['point']) => BenchFacing | null,
): DrawingPlace | null {
  const spot = spotOf(pick);
  if (spot === null || 'corner' in spot) return null;
  const seen = facing(spot.point);
  return seen && { triangle: spot.triangle, point: spot.point, facing: seen };
}

/** Its middle goes to another place. */
export function placeDrawing(bench: Workbench, place: DrawingPlace | null): void {
  const { drawing } = bench.view;
  if (drawing !== null && place !== null) bench.setView({ drawing: { ...drawing, place, shiftMm: [0, 0] } });
}

/** How it is laid. @param facing  how one looks at its place now: chosen anew, it is laid as seen from here. */
export function layDrawingBy(bench: Workbench, way: DrawingInHand['way'], facing: BenchFacing | null): void {
  const { drawing } = bench.view;
  if (drawing === null) return;
  const place = drawing.place && { ...drawing.place, facing: facing ?? drawing.place.facing };
  bench.setView({ drawing: { ...drawing, way, place } });
}

const STEP_MM = 1;
const COARSE_MM = 10;
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Arrow keys move it, with Shift by the coarse step. @returns true when the key was one of these. */
export function moveDrawing(bench: Workbench, key: string, isCoarse: boolean): boolean {
  const { drawing } = bench.view;
  if (drawing === null || !(key in WAYS)) return false;
  const step = isCoarse ? COARSE_MM : STEP_MM;
  const [x, y] = drawing.shiftMm;
  bench.setView({ drawing: { ...drawing, shiftMm: [x + step * WAYS[key][0], y + step * WAYS[key][1]] } });
  return true;
}

/** Parts along the drawing where it lies, as one change, and puts it away. */
export async function partDrawing(bench: Workbench): Promise<void> {
  const { drawing, isMirrored } = bench.view;
  const { sculpt } = bench.bench;
  const wish = drawing && layWish(bench, drawing);
  if (wish === null) return;
  const laid = await bench.workshop.layDrawing(wish, isMirrored);
  if (bench.view.drawing !== drawing || bench.bench.sculpt !== sculpt) return;
  if (!laid.ok) return bench.showProblem(laid.problem);
  bench.setView({ ...NO_PATH, tool: 'choose' });
  bench.run(drawPaths(laid.value.lines.map(({ points }) => ({ points, kind: 'butt' }))));
  bench.say(MARK_WORDS.spoken.drawn(laid.value.lines.length));
}

/** What is asked of the worker; null while it has no place. */
export function layWish({ part }: Workbench, drawing: DrawingInHand): LayWish | null {
  const { strokes, sizePct, turnDeg, shiftMm, place, way } = drawing;
  if (place === null) return null;
  const { right, up } = place.facing;
  const axis = part?.upAxis ?? 'y';
  const partUp = [axis === 'x' ? 1 : 0, axis === 'y' ? 1 : 0, axis === 'z' ? 1 : 0] as const;
  return {
    strokes,
    size: sizePct / 100,
    turnRad: (turnDeg * Math.PI) / 180,
    shiftMm,
    spot: { triangle: place.triangle, point: place.point },
    way: way === 'seen' ? { by: 'seen', right, up } : { by: 'round', ups: [partUp, up, right] },
  };
}
