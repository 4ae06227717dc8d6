import type { Finding } from '../base/finding.ts';
import type { ArtOutline, ArtPath, ArtSegment, Artwork } from '../model/artwork.ts';
import { circleRadius, pointOn } from '../steps/artwork/segments.ts';
import type { Vec2 } from '../geom/vec.ts';

/** Figures are written to a millionth of a mm. */
const figure = (value: number): number => Number(value.toFixed(6)) + 0;
const point = ({ x, y }: Vec2): [number, number] => [figure(x), figure(y)];

/** Artwork as JSON: everything in mm, y up, angles in degrees; exact parts where they are known, and straight parts. */
export function artworkJson(
  { pieces, widthMm, heightMm, scale, deviationMm }: Artwork,
  findings: readonly Finding[],
): object {
  return {
    schemaVersion: 1,
    unit: 'mm',
    widthMm: figure(widthMm),
    heightMm: figure(heightMm),
    scale: Number(scale.toPrecision(12)),
    deviationMm,
    pieces: pieces.map(({ name, regions, lines, areaMm2, lengthMm }) => ({
      name,
      areaMm2: figure(areaMm2),
      lengthMm: figure(lengthMm),
      holes: regions.reduce((sum, { holes }) => sum + holes.length, 0),
      regions: regions.map(({ outline, holes, areaMm2: area }) => ({
        areaMm2: figure(area),
        outline: outlineJson(outline),
        holes: holes.map(outlineJson),
      })),
      lines: lines.map((line) => ({
        shape: line.shape,
        lengthMm: figure(line.lengthMm),
        segments: segmentsJson(line.path),
        points: pointsJson(line.points),
      })),
    })),
    findings: findings.map(({ code, severity, text, value, unit, where }) => ({
      code,
      severity,
      text,
      ...(value === undefined ? {} : { value: figure(value) }),
      ...(unit === undefined ? {} : { unit }),
      ...(where.piece === undefined ? {} : { piece: where.piece }),
      ...(where.point === undefined ? {} : { at: [figure(where.point[0]), figure(where.point[1])] }),
    })),
  };
}

const outlineJson = ({ shape, path, ring, lengthMm, areaMm2 }: ArtOutline): object => ({
  ...(shape === null ? {} : { shape }),
  lengthMm: figure(lengthMm),
  areaMm2: figure(areaMm2),
  isExact: path !== null,
  ...(path === null ? {} : { segments: segmentsJson(path) }),
  points: pointsJson(ring),
});

const segmentsJson = ({ segments }: ArtPath): object[] => segments.map(segmentJson);

function segmentJson(segment: ArtSegment): object {
  const ends = { from: point(segment.from), to: point(segment.to) };
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', ...ends };
    case 'cubic':
      return { kind: 'cubic', ...ends, handles: segment.handles.map(point) };
    case 'arc': {
      const radius = circleRadius(segment);
      const isLeft = segment.u.x * segment.v.y - segment.u.y * segment.v.x > 0;
      const turnDeg = figure((Math.abs(segment.turn) * 180 * (segment.turn > 0 === isLeft ? 1 : -1)) / Math.PI);
      if (radius !== null)
        return { kind: 'arc', ...ends, centre: point(segment.centre), radiusMm: figure(radius), turnDeg };
      return {
        kind: 'ellipse',
        ...ends,
        centre: point(segment.centre),
        middle: point(pointOn(segment, 0.5)),
        halfDiameters: [point(segment.u), point(segment.v)],
        startDeg: figure((segment.start * 180) / Math.PI),
        turnDeg: figure((segment.turn * 180) / Math.PI),
      };
    }
  }
}

const pointsJson = (xy: ArrayLike<number>): [number, number][] =>
  Array.from({ length: xy.length / 2 }, (_, i) => [figure(xy[2 * i]), figure(xy[2 * i + 1])]);
