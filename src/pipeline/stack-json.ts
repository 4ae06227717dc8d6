import type { Ring } from '../geom/ring.ts';
import type { Vec3 } from '../geom/vec.ts';
import type { Stack, StackLayer, StackPiece, StackRest } from '../model/stack.ts';

/**
 * A stack as JSON of version 1: lengths mm, areas mm², volumes mm³, outlines as pairs of x and y seen from the last layer; numbers in full.
 * `volumeMm3` of a rest is right to `volumeBoundMm3`, its depth is nowhere more than `depthMm + depthBoundMm`.
 * The sections of a layer are the finished surface at its two faces.
 */
export function stackJson(stack: Stack): Record<string, unknown> {
  const { frame, rule, heightMm, stackedMm, layers, dowels, solidMm3, stackedMm3, foamMm3, beyondMm3 } = stack;
  return {
    schemaVersion: 1,
    rule,
    frame: { x: vector(frame.x), y: vector(frame.y), z: vector(frame.z) },
    heightMm,
    stackedMm,
    solidMm3,
    stackedMm3,
    foamMm3,
    beyondMm3,
    sandMm3: sum(layers.map(({ sand }) => sand.volumeMm3)),
    fillMm3: sum(layers.map(({ fill }) => fill.volumeMm3)),
    sheets: sheetCounts(layers),
    layers: layers.map(layerJson),
    dowels: dowels.map((one) => ({ ...one })),
    findings: stack.findings.map(({ code, severity, text, value }) => ({ code, severity, text, value })),
  };
}

/** How many layers of each thickness, thickest first. */
export function sheetCounts(layers: readonly StackLayer[]): readonly { thicknessMm: number; layers: number }[] {
  const counts = new Map<number, number>();
  for (const { thicknessMm } of layers) counts.set(thicknessMm, (counts.get(thicknessMm) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => b - a).map(([thicknessMm, count]) => ({ thicknessMm, layers: count }));
}

export const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

function layerJson(layer: StackLayer): Record<string, unknown> {
  const { number, thicknessMm, fromMm, toMm, outlineAreaMm2, areaBoundMm2, solidMm3, sand, fill, pieces } = layer;
  return {
    number,
    thicknessMm,
    fromMm,
    toMm,
    outlineAreaMm2,
    areaBoundMm2,
    volumeMm3: outlineAreaMm2 * thicknessMm,
    solidMm3,
    sand: restJson(sand),
    fill: restJson(fill),
    lowerSection: layer.lowerSection.map(pairs),
    upperSection: layer.upperSection.map(pairs),
    pieces: pieces.map(pieceJson),
  };
}

const restJson = ({ volumeMm3, boundMm3, depthMm, depthBoundMm }: StackRest): Record<string, number> => ({
  volumeMm3,
  volumeBoundMm3: boundMm3,
  depthMm,
  depthBoundMm,
});

const pieceJson = ({
  name,
  areaMm2,
  outer,
  openings,
  holes,
  placing,
  labelAt,
  restsOn,
}: StackPiece): Record<string, unknown> => ({
  name,
  areaMm2,
  outline: pairs(outer),
  openings: openings.map(pairs),
  holes: holes.map((hole) => ({ ...hole })),
  placing: placing.map(pairs),
  labelAt: [labelAt.x, labelAt.y],
  restsOn: restsOn.map((one) => ({ ...one })),
});

const vector = ({ x, y, z }: Vec3): readonly number[] => [x, y, z];

const pairs = (ring: Ring): readonly (readonly [number, number])[] =>
  Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i], ring[2 * i + 1]] as const);
