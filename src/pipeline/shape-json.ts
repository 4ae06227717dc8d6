import { findingFigures } from '../base/finding.ts';
import type { OutlineSegment } from '../geom/outline.ts';
import type { Vec2 } from '../geom/vec.ts';
import type { Shape, ShapeEdge, ShapeMeasure } from '../model/shape.ts';
import type { SizeField } from '../model/shape-size.ts';
import type { ShapeKind } from '../steps/shapes/shape-kind.ts';

type Json = Record<string, unknown>;

/** A shape as it is written: measures by name with their units beside them, pieces with arcs as arcs. */
export function shapeJson(shape: Shape, kind: ShapeKind): Json {
  const { name, sizes, measures, pieces, seams, warnings } = shape;
  return {
    schemaVersion: 1,
    shape: name,
    sizes,
    sizeUnits: Object.fromEntries(
      kind.sizes
        .filter((field) => sizes[field.name] !== undefined && field.unit !== '')
        .map((field) => [field.name, field.unit]),
    ),
    measures: byName(measures, ({ value }) => value),
    units: byName(measures, ({ unit }) => unit),
    pieces: pieces.map(({ outline, holes, folds, marks, ...rest }) => ({
      ...rest,
      outline: outline.map(edgeJson),
      holes: holes.map((hole) => hole.map(edgeJson)),
      folds: folds.map(({ from, to, angleDeg }) => ({ from: pair(from), to: pair(to), angleDeg })),
      marks: marks.map((mark) => ({ name: mark.name, at: pair(mark.at) })),
    })),
    seams: seams.map((seam) => ({ ...seam, differenceMm: Math.abs(seam.lengthMm[0] - seam.lengthMm[1]) })),
    warnings: warnings.map(findingFigures),
  };
}

/** Figures of several parts stand in a group under the part's name. */
function byName(measures: readonly ShapeMeasure[], take: (one: ShapeMeasure) => unknown): Json {
  const all: Json = {};
  for (const one of measures) {
    if (one.of === undefined) all[one.name] = take(one);
    else all[one.of] = { ...(all[one.of] ?? {}), [one.name]: take(one) };
  }
  return all;
}

const pair = ({ x, y }: Vec2): readonly [number, number] => [x, y];

function edgeJson({ name, segments, lengthMm, trueLengthMm, bevelDeg, seam, meets }: ShapeEdge): Json {
  return {
    name,
    lengthMm,
    trueLengthMm,
    bevelDeg: bevelsJson(bevelDeg),
    seam,
    meets,
    segments: segments.map(segmentJson),
  };
}

/** One number where the bevel stays, else at the start, half-way and at the end. */
const bevelsJson = ({ from, middle, to }: ShapeEdge['bevelDeg']): number | readonly number[] =>
  from === middle && middle === to ? from : [from, middle, to];

function segmentJson(segment: OutlineSegment): Json {
  const ends = { kind: segment.kind, from: pair(segment.from), to: pair(segment.to) };
  if (segment.kind === 'line') return ends;
  if (segment.kind === 'arc')
    return { ...ends, centre: pair(segment.centre), radiusMm: segment.radius, turnDeg: (180 * segment.turn) / Math.PI };
  return { ...ends, lengthMm: segment.lengthMm, deviationMm: segment.deviationMm, points: segment.points.map(pair) };
}

/** A kind and its sizes as `shape --list --json` writes them. */
export const kindJson = ({ name, also, says, sizes }: ShapeKind): Json => ({
  name,
  also,
  says,
  sizes: sizes.map(fieldJson),
});

const fieldJson = ({ also, isList, ...field }: SizeField): Json => ({
  ...field,
  list: isList === true,
  also: also?.map((one) => one.name),
});
