import { Color, Group, Sphere } from 'three';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';
import type { SeamId } from '../base/ids.ts';
import type { DryFit, FitSamples } from '../model/dry-fit.ts';
import type { Springing } from '../model/springing.ts';
import { cornerAfter } from '../mesh/corners-at-vertices.ts';
import type { SolidDisplay } from './display.ts';
import { BACK_CORNER } from './foam-body.ts';
import { LineBatch } from './line-batch.ts';
import { stretchColour } from './stretch-colours.ts';

/** Widths of the coloured line and of the dark one under it, CSS px. */
const WIDTH_PX = 4.5;
const EDGE_PX = 7;
/** Measured on each edge of a seam: at its start, in its middle and at its end. */
const STOPS = 3;

/** A stretch of an edge of a seam on one skin: from one place of it to another (shares), with the figure at both; of a gap mm, an overlap negative. */
export interface FitStretch {
  /** Edge of the seam in its order. */
  readonly edge: number;
  readonly from: number;
  readonly to: number;
  readonly figures: readonly [number, number];
}

/** What is coloured along one seam on the face and on the back of both pieces. @param edges  how many the seam has. */
export interface SeamFigures {
  readonly seam: SeamId;
  readonly onFace: (edges: number) => readonly FitStretch[];
  readonly onBack: (edges: number) => readonly FitStretch[];
}

/** Gap and overlap, mm. */
export const figuresOfFit = ({ perSeam }: DryFit): readonly SeamFigures[] =>
  perSeam.map(({ seam, samples }) => ({
    seam,
    onFace: (edges) => fitStretches(samples, samples.faceGapMm, edges),
    onBack: (edges) => fitStretches(samples, samples.backGapMm, edges),
  }));

/** What each joint carries where it carries most, N per mm, all along it. */
export const figuresOfPull = ({ seams }: Springing): readonly SeamFigures[] =>
  seams.map(({ seam, pullNPerMm }) => {
    const alike = (edges: number): readonly FitStretch[] =>
      Array.from({ length: edges }, (_, edge) => ({ edge, from: 0, to: 1, figures: [pullNPerMm, pullNPerMm] }));
    return { seam, onFace: alike, onBack: alike };
  });

/**
 * What was measured along a seam as stretches to colour, two for each of its edges.
 * @param edges  how many the seam has. Open seams were measured once more at both ends, where corner meets corner: that is left out.
 * @returns none where figures and seam are not of one result.
 */
export function fitStretches(
  { stationMm }: FitSamples,
  gapMm: ArrayLike<number>,
  edges: number,
): readonly FitStretch[] {
  const extra = stationMm.length - STOPS * edges;
  if (extra !== 0 && extra !== 2) return [];
  const at = (edge: number, stop: number): number => gapMm[STOPS * edge + stop + extra / 2];
  return Array.from({ length: edges }, (_, edge): readonly FitStretch[] => [
    { edge, from: 0, to: 0.5, figures: [at(edge, 0), at(edge, 1)] },
    { edge, from: 0.5, to: 1, figures: [at(edge, 1), at(edge, 2)] },
  ]).flat();
}

/** A figure along every seam, as coloured lines on the face and on the back of both pieces, wherever these are. */
export class FitLines {
  readonly object = new Group();
  readonly #under = new LineBatch({ widthPx: EDGE_PX, renderOrder: 2 });
  readonly #material = new LineMaterial({
    linewidth: WIDTH_PX,
    vertexColors: true,
    depthWrite: false,
    polygonOffset: true,
    polygonOffsetFactor: -4,
    polygonOffsetUnits: -8,
  });
  readonly #lines = new LineSegments2(new LineSegmentsGeometry(), this.#material);

  constructor() {
    this.#lines.frustumCulled = false;
    this.#lines.renderOrder = 3;
    this.object.add(this.#under.object, this.#lines);
    this.object.visible = false;
  }

  set colour(colour: Color) {
    this.#under.colour = colour;
  }

  /** @param limit  figure at the ends of the scale. */
  set(solid: SolidDisplay | null, figures: readonly SeamFigures[], limit: number): void {
    const { points, colours } = solid === null || figures.length === 0 ? NONE : colouredLines(solid, figures, limit);
    this.object.visible = points.length > 0;
    if (points.length === 0) return;
    this.#under.set(points);
    const geometry = new LineSegmentsGeometry();
    geometry.setPositions(points);
    geometry.setColors(colours);
    geometry.boundingSphere = new Sphere(undefined, Infinity);
    this.#lines.geometry.dispose();
    this.#lines.geometry = geometry;
  }

  dispose(): void {
    this.#under.dispose();
    this.#lines.geometry.dispose();
    this.#material.dispose();
  }
}

/** A dash and the room behind it, mm. */
const DASH_MM = 5;
const BETWEEN_MM = 4;

/** Foam that is pressed together is told by a broken line, as squash is: in grey its colour says how much alone. */
const isPressed = ({ figures: [a, b] }: FitStretch): boolean => a + b < 0;

/** A stretch as dashes, as many as fit and at least one, with equal room at both ends. @param lengthMm  of the stretch. */
export function dashes({ edge, from, to, figures: [a, b] }: FitStretch, lengthMm: number): readonly FitStretch[] {
  const many = Math.max(1, Math.round(lengthMm / (DASH_MM + BETWEEN_MM)));
  const on = DASH_MM / (DASH_MM + BETWEEN_MM);
  return Array.from({ length: many }, (_, i) => {
    const [begin, end] = [(i + (1 - on) / 2) / many, (i + (1 + on) / 2) / many];
    const at = (share: number): number => from + share * (to - from);
    const figure = (share: number): number => a + share * (b - a);
    return { edge, from: at(begin), to: at(end), figures: [figure(begin), figure(end)] };
  });
}

interface ColouredLines {
  readonly points: number[];
  readonly colours: number[];
}

const NONE: ColouredLines = { points: [], colours: [] };

function colouredLines(
  { body, seams, lines }: SolidDisplay,
  all: readonly SeamFigures[],
  limit: number,
): ColouredLines {
  const [points, colours]: [number[], number[]] = [[], []];
  if (body === null || seams === null) return NONE;
  const { positions } = body.skins;
  const half = body.facePoints.length / 3;
  const onBack = (corner: number): number => half + corner - (corner % 3) + BACK_CORNER[corner % 3];
  const tint = new Color();
  const add = (from: number, to: number, stretch: FitStretch, isReversed: boolean): void => {
    const ends = [from, to].map((corner) => [...positions.subarray(3 * corner, 3 * corner + 3)]);
    const lengthMm = Math.hypot(...ends[0].map((at, k) => ends[1][k] - at)) * (stretch.to - stretch.from);
    for (const part of isPressed(stretch) ? dashes(stretch, lengthMm) : [stretch]) addPart(from, to, part, isReversed);
  };
  const addPart = (from: number, to: number, stretch: FitStretch, isReversed: boolean): void => {
    for (const [share, figure] of [
      [stretch.from, stretch.figures[0]],
      [stretch.to, stretch.figures[1]],
    ]) {
      const s = isReversed ? 1 - share : share;
      for (let k = 0; k < 3; k += 1)
        points.push(positions[3 * from + k] + s * (positions[3 * to + k] - positions[3 * from + k]));
      tint.setRGB(...stretchColour(figure, limit), 'srgb').toArray(colours, colours.length);
    }
  };
  for (const { seam, onFace, onBack: onBackOf } of all) {
    const chain = lines.chains[seams.chains.findIndex(({ id }) => id === seam)];
    if (chain === undefined) continue;
    for (const [side, isReversed] of [
      [chain.left, false],
      [chain.right, true],
    ] as const) {
      for (const stretch of onFace(side.length))
        add(side[stretch.edge], cornerAfter(side[stretch.edge]), stretch, isReversed);
      if (!body.hasBack) continue;
      for (const stretch of onBackOf(side.length))
        add(onBack(side[stretch.edge]), onBack(cornerAfter(side[stretch.edge])), stretch, isReversed);
    }
  }
  return { points, colours };
}
