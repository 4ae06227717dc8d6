import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { MM_PER_UNIT, type GivenScale, type SourceModel } from '../../model/source-model.ts';

/** Longest side of the box under which a sculpt is likelier in another unit than made of foam, mm: a craft sheet is 1 to 2 mm thick. */
const SMALLEST_SENSIBLE_MM = 20;

/** Longest side over which the same holds, mm: taller than a doorway. */
const LARGEST_SENSIBLE_MM = 3000;

/** Longest side of anything that is made of foam by hand, mm: a parade float four times over. */
const LARGEST_MM = 100_000;

/** How many mm one unit of the file is, by the maker's choice: a unit, a size along an axis, or the distance of two picked points. */
export function mmPerUnitOf(model: SourceModel, choice: GivenScale): Result<number> {
  if (choice.by === 'unit') return ok(MM_PER_UNIT[choice.unit]);
  if (!(choice.mm > 0 && Number.isFinite(choice.mm))) {
    return fail('size/no-length', `${choice.mm} mm is no length: give a size over 0 mm.`);
  }
  return choice.by === 'size'
    ? fromExtent(model, choice.axis, choice.mm)
    : fromPoints(model, choice.from, choice.to, choice.mm);
}

function fromExtent(model: SourceModel, axis: 'longest' | 'x' | 'y' | 'z', mm: number): Result<number> {
  const { min, max } = boxOfPoints3(model.positions);
  const size = { x: max.x - min.x, y: max.y - min.y, z: max.z - min.z };
  const extent = axis === 'longest' ? Math.max(size.x, size.y, size.z) : size[axis];
  if (!(extent > 0))
    return fail('size/flat', `The sculpt has no extent along ${axis}: give its size along another axis.`);
  return usable(mm / extent);
}

/** @param from @param to numbers of the file. */
function fromPoints(model: SourceModel, from: number, to: number, mm: number): Result<number> {
  const [v, w] = [model.vertexOfFile[from] ?? -1, model.vertexOfFile[to] ?? -1];
  if (v < 0 || w < 0)
    return fail('size/no-vertex', `The sculpt has no vertex ${v < 0 ? from : to}: pick two of its vertices.`);
  const { positions } = model;
  const distance = Math.hypot(
    positions[3 * w] - positions[3 * v],
    positions[3 * w + 1] - positions[3 * v + 1],
    positions[3 * w + 2] - positions[3 * v + 2],
  );
  if (!(distance > 0))
    return fail('size/same-point', 'Both picked points are one and the same: pick two that lie apart.', {
      vertices: [v],
    });
  return usable(mm / distance);
}

/** Beyond 1e±12 mm per unit the product with a coordinate is no longer a size anyone meant. */
const usable = (mmPerUnit: number): Result<number> =>
  mmPerUnit < 1e12 && mmPerUnit > 1e-12
    ? ok(mmPerUnit)
    : fail(
        'size/out-of-range',
        'This size would make one unit of the file unthinkably large or small: check the number and its unit.',
      );

/** The model as a mesh in mm. Faces are numbered as in the file; those that were dropped leave their number unused. */
export function meshFromModel(model: SourceModel, mmPerUnit: number): Mesh {
  if (!(mmPerUnit > 0 && Number.isFinite(mmPerUnit))) throw new RangeError(`${mmPerUnit} mm per unit`);
  const groupOfFace = new Int32Array(model.fileFaceCount).fill(-1);
  for (const [f, number] of model.faceNumber.entries()) groupOfFace[number] = model.groupOfFace[f];
  return {
    positions: model.positions.map((value) => value * mmPerUnit),
    triangles: model.triangles,
    faceOfTriangle: model.faceOfTriangle.map((f) => model.faceNumber[f]),
    faceCount: model.fileFaceCount,
    fileVertex: model.fileVertex,
    vertexOfFile: model.vertexOfFile,
    groupNames: model.groupNames,
    groupOfFace,
  };
}

/** Whether a sculpt is of a size that could be made of foam at all. Fails with `size/too-large`. @param boxSizeMm sides of the upright box, mm. */
export function canBeBuilt(boxSizeMm: readonly [number, number, number]): Result<null> {
  const longest = Math.max(...boxSizeMm);
  if (longest <= LARGEST_MM) return ok(null);
  return fail(
    'size/too-large',
    `The sculpt would be ${shortLength(longest)} long, and ${shortLength(LARGEST_MM)} is the most: check its unit, or give one real measure.`,
  );
}

/** What is odd about a size. @param boxSizeMm sides of the upright box, mm. */
export function sizeFindings(boxSizeMm: readonly [number, number, number]): Finding[] {
  const longest = Math.max(...boxSizeMm);
  if (longest >= SMALLEST_SENSIBLE_MM && longest <= LARGEST_SENSIBLE_MM) return [];
  const isSmall = longest < SMALLEST_SENSIBLE_MM;
  return [
    {
      code: isSmall ? 'size/small' : 'size/large',
      severity: 'warning',
      text: `The sculpt is ${shortLength(longest)} long, ${familiarObject(longest)}: this looks like the wrong unit, so check its size.`,
      value: longest,
      limit: isSmall ? SMALLEST_SENSIBLE_MM : LARGEST_SENSIBLE_MM,
      unit: 'mm',
      where: {},
    },
  ];
}

function shortLength(mm: number): string {
  if (mm >= 10_000) return `${Number((mm / 1000).toPrecision(3))} m`;
  return `${Number(mm.toPrecision(3))} mm`;
}

/**
 * Things everyone has held or stood beside, by their usual length, mm, rounded: such things differ by a tenth among themselves. Each
 * stands for the lengths nearer to it by ratio than to any other.
 */
const FAMILIAR: readonly (readonly [lengthMm: number, name: string])[] = [
  [0.1, 'about as thick as a hair'],
  [1, 'about as thick as a bank card'],
  [6, 'about as long as a grain of rice'],
  [20, 'about as wide as a thumb'],
  [50, 'about as long as a matchstick'],
  [100, 'about as wide as a palm'],
  [190, 'about as long as a hand'],
  [250, 'about as tall as a head'],
  [300, 'about as long as a school ruler'],
  [450, 'about as long as a forearm with the hand'],
  [700, 'about as long as an arm'],
  [1000, 'about as high as a table and a mug on it'],
  [1400, 'about as tall as a child of ten'],
  [1700, 'about as tall as a grown person'],
  [2000, 'about as tall as a door'],
  [2500, 'about as high as a room'],
  [4500, 'about as long as a car'],
  [12_000, 'about as long as a bus'],
  [30_000, 'about as tall as a church'],
];

/** A thing of about this length, as words that fit into a sentence. @param longestMm > 0. */
export function familiarObject(longestMm: number): string {
  const last = FAMILIAR[FAMILIAR.length - 1];
  if (longestMm > 2 * last[0]) return 'longer than any building nearby';
  let best = FAMILIAR[0];
  for (const entry of FAMILIAR) if (farness(entry[0], longestMm) < farness(best[0], longestMm)) best = entry;
  return longestMm < FAMILIAR[0][0] / 2 ? 'too small to see' : best[1];
}

const farness = (a: number, b: number): number => Math.abs(Math.log(a / b));
