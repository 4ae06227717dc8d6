import { formatArea, type LengthUnit } from '../base/format-length.ts';
import type { PiecesView, SculptView } from '../model/bench-view.ts';
import type { Give, Region } from '../model/flatten-settings.ts';
import { addRegion, freeFaces } from '../project/commands.ts';
import { pieceIndex, type Bench } from './bench-state.ts';
import { areaOf, facesOf, panelsOfPiece, trianglesWithin } from './panels.ts';
import type { ViewState } from './view-state.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** The area round the place that was clicked on the chosen piece. */
export interface ChosenArea {
  /** Of the sculpt, ascending. */
  readonly triangles: readonly number[];
  /** Polygons of the file, ascending. */
  readonly faces: readonly number[];
  /** mm². */
  readonly areaMm2: number;
  /** Which panel of its piece the place lies in, from 0, and of how many. */
  readonly panel: number;
  readonly panels: number;
  readonly piece: string;
}

/** The last answer for the pieces on show: the window asks each time it is drawn. */
const known = new WeakMap<PiecesView, { readonly key: string; readonly area: ChosenArea | null }>();

/** The panel round the clicked place, or what of it lies within the chosen distance; null while no place on the chosen piece is meant. */
export function chosenArea(bench: Bench, { choice, place, withinMm }: ViewState): ChosenArea | null {
  const { pieces } = bench;
  if (pieces === null || place === null || choice.kind !== 'piece') return null;
  const key = `${choice.piece} ${place} ${withinMm ?? ''}`;
  const last = known.get(pieces);
  if (last?.key === key) return last.area;
  const area = areaRound(bench, choice.piece, place, withinMm);
  known.set(pieces, { key, area });
  return area;
}

function areaRound(bench: Bench, id: string, place: number, withinMm: number | null): ChosenArea | null {
  const { sculpt, pieces } = bench;
  const piece = pieces?.pieces[pieceIndex(bench, id)];
  if (sculpt === null || piece === undefined || pieces?.patchOfTriangle[place] !== piece.patch) return null;
  const panels = panelsOfPiece(bench, piece.patch);
  const panel = panels.findIndex((triangles) => triangles.includes(place));
  if (panel < 0) return null;
  const triangles = withinMm === null ? panels[panel] : trianglesWithin(sculpt, panels[panel], place, withinMm);
  return {
    triangles,
    faces: facesOf(sculpt, triangles),
    areaMm2: areaOf(sculpt, triangles),
    panel,
    panels: panels.length,
    piece: piece.name,
  };
}

/** Steps to the next panel of the chosen piece: the first after the last, and at first the first. */
export function nextPanel(bench: Workbench): void {
  const { choice, place } = bench.view;
  const piece = choice.kind === 'piece' ? bench.bench.pieces?.pieces[pieceIndex(bench.bench, choice.piece)] : undefined;
  if (piece === undefined) return;
  const panels = panelsOfPiece(bench.bench, piece.patch);
  const at = panels.findIndex((triangles) => place !== null && triangles.includes(place));
  const next = panels[(at + 1) % panels.length];
  bench.setView({ place: next?.[0] ?? null, withinMm: null });
  const area = chosenArea(bench.bench, bench.view);
  const unit = bench.project?.lengthUnit ?? 'mm';
  if (area !== null) bench.say(areaWords(area, giveOf(bench.part?.regions ?? [], area.faces), unit));
}

/** Makes the chosen area stiff or soft, or lets it give as the rest does. */
export function setChosenGive(bench: Workbench, give: Give | 'rest'): void {
  const area = chosenArea(bench.bench, bench.view);
  if (area === null) return;
  const { named } = WORDS.forming.areas;
  const name = bench.view.withinMm === null ? named.panel(area.piece, area.panel + 1) : named.spot(area.piece);
  bench.run(give === 'rest' ? freeFaces(area.faces) : addRegion(name, area.faces, give));
}

/** How all of some polygons give, or `rest` where they do not give alike. */
export function giveOf(regions: readonly Region[], faces: readonly number[]): Give | 'rest' {
  const gives = new Map<number, Give>();
  for (const region of regions) for (const face of region.faces) gives.set(face, region.give);
  const first = faces.length === 0 ? undefined : gives.get(faces[0]);
  if (first === undefined || first === 'normal') return 'rest';
  return faces.every((face) => gives.get(face) === first) ? first : 'rest';
}

/** An area in words: which panel, how large, and how it gives where it does not give as the rest. @param isPanel false for a part of one. */
export function areaWords(area: ChosenArea, give: Give | 'rest', unit: LengthUnit, isPanel = true): string {
  const words = WORDS.forming.areas;
  const size = formatArea(area.areaMm2, unit);
  const what = isPanel ? words.panel(area.panel + 1, area.panels, size) : words.spot(size);
  return give === 'rest' ? what : `${what} ${give === 'stiff' ? words.isStiff : words.isSoft}`;
}

/** As numbers for the bench. */
const GIVES: Readonly<Record<Give, number>> = { normal: 0, stiff: 1, soft: 2 };

/** How each triangle of the sculpt gives: 0 as the rest, 1 stiff, 2 soft. Where areas meet, the later one counts. */
export function givesOfTriangles(sculpt: SculptView | null, regions: readonly Region[]): Uint8Array {
  const gives = new Map<number, number>();
  for (const { faces, give } of regions) for (const face of faces) gives.set(face, GIVES[give]);
  return Uint8Array.from(sculpt?.faceOfTriangle ?? [], (face) => gives.get(face) ?? 0);
}
