import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { runWithPauses } from '../../base/stepwise.ts';
import { FAR_SHARE_OF_DIAGONAL } from '../../base/tolerance.ts';
import type { Work } from '../../base/work.ts';
import { triangulatePolygon3 } from '../../geom/triangulate.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { cleanFaces, type CleanFaces } from './clean-faces.ts';
import { joinSteps } from './join-corners.ts';
import { joiningDistance, type JoiningDistance } from './joining-distance.ts';
import { emptyFaces, faceAreaSteps } from './face-areas.ts';
import { LEAST_DIAGONAL } from './limits.ts';
import { PointTable } from './point-table.ts';
import { polygonCountSteps } from './polygon-counts.ts';
import type { RawModel } from './raw-model.ts';
import { several } from './wording.ts';

/** How many polygons are cut into triangles between two pauses. */
const STRIDE = 1 << 13;

/** What names the file: its name and the hash of its bytes. */
export interface FileName {
  readonly fileName: string;
  readonly hash: string;
}

/**
 * Makes a model of what a parser found: joins corners (exactly equal ones, then near ones), sets faces aside that bound nothing, drops
 * corners that no face uses and cuts polygons into triangles.
 */
export async function buildModel(raw: RawModel, file: FileName, work: Work): Promise<Result<SourceModel>> {
  await work.pause(0, 'joining corners');
  const exact = exactPoints(raw);
  const faces = cleanFaces(raw.faceStarts, raw.faceCorners, exact);
  if (faces.numbers.length === 0) {
    return fail(
      'read/nothing-left',
      'Every face of the file has two corners on one spot, so none has an area: export the sculpt again.',
    );
  }
  const used = usedPoints(faces.corners, raw.points.length / 3);
  const joining = joiningDistance(pick(raw.points, used));
  if (!(joining.diagonal >= LEAST_DIAGONAL)) {
    return fail(
      'read/no-size',
      'All corners of the file lie as good as on one spot: make the sculpt larger in your modelling program and export it again.',
    );
  }
  await work.pause(0.1);
  const joins = joinSteps(raw.points, used, faces.starts, faces.corners, joining.distance);
  const near = joining.isFar ? null : await runWithPauses(joins, () => work.pause(0.1));
  await work.pause(0.5, 'cutting faces into triangles');
  const numbering = numberVertices(raw.points.length / 3, used, exact, near);
  const { vertexOfPoint, fileVertex } = numbering;
  await work.pause(0.5);
  const positions = pick(raw.points, fileVertex);
  const faceVertices = faces.corners.map((point) => vertexOfPoint[point]);
  const { triangles, faceOfTriangle } = await cutFaces(positions, faces.starts, faceVertices, work);
  const model: SourceModel = {
    format: raw.format,
    hash: file.hash,
    fileName: file.fileName,
    positions,
    colours: raw.colours === null ? null : pick(raw.colours, fileVertex),
    fileVertex,
    vertexOfFile: numbering.vertexOfFile,
    faceStarts: faces.starts,
    faceVertices,
    faceNumber: faces.numbers,
    fileFaceCount: raw.faceStarts.length - 1,
    groupNames: raw.groupNames,
    groupOfFace: new Int32Array(faces.numbers).map((number) => raw.groupOfFace[number]),
    triangles,
    faceOfTriangle,
    joined: {
      inFile: raw.cornersInFile,
      afterExact: used.length,
      afterNear: fileVertex.length,
      toleranceUnits: joining.distance,
    },
    findings: [...raw.findings, ...faceFindings(faces, raw), ...(joining.isFar ? [farFinding(joining)] : [])],
  };
  const areas = await runWithPauses(faceAreaSteps(model), () => work.pause(1));
  if (emptyFaces(areas).length === faces.numbers.length) {
    return fail(
      'read/no-area',
      'No face of the file has an area, because the corners of each lie on one line: export the sculpt again.',
    );
  }
  if (near === null) return ok(model);
  const counting = polygonCountSteps(faces.starts, faces.corners, used.length);
  return ok({ ...model, afterExactJoin: await runWithPauses(counting, () => work.pause(1)) });
}

/** For each number of the file the lowest number with exactly the same coordinates; null where all differ by making (STL). */
function exactPoints(raw: RawModel): Uint32Array | null {
  if (raw.format === 'stl') return null;
  const { points } = raw;
  const count = points.length / 3;
  const table = new PointTable(count);
  const firstOf = new Uint32Array(count);
  const lowest = new Uint32Array(count);
  for (let n = 0; n < count; n += 1) {
    const before = table.count;
    const number = table.numberOf(points[3 * n], points[3 * n + 1], points[3 * n + 2]);
    if (number === before) firstOf[number] = n;
    lowest[n] = firstOf[number];
  }
  return lowest;
}

/** The points that faces name, ascending. */
function usedPoints(corners: Uint32Array, count: number): Uint32Array {
  const isUsed = new Uint8Array(count);
  for (const point of corners) isUsed[point] = 1;
  let total = 0;
  for (const flag of isUsed) total += flag;
  const used = new Uint32Array(total);
  let at = 0;
  for (let point = 0; point < count; point += 1) if (isUsed[point] === 1) used[at++] = point;
  return used;
}

function pick(triples: Float64Array, rows: Uint32Array): Float64Array {
  const picked = new Float64Array(3 * rows.length);
  for (let i = 0; i < rows.length; i += 1) {
    const from = 3 * rows[i];
    picked[3 * i] = triples[from];
    picked[3 * i + 1] = triples[from + 1];
    picked[3 * i + 2] = triples[from + 2];
  }
  return picked;
}

/**
 * Numbers the vertices by the lowest number of the file among the corners each was joined from. Numbers that no face uses but that lie
 * exactly where a used one lies lead to that one's vertex.
 */
function numberVertices(
  count: number,
  used: Uint32Array,
  exact: Uint32Array | null,
  near: Uint32Array | null,
): { vertexOfPoint: Int32Array; fileVertex: Uint32Array; vertexOfFile: Int32Array } {
  const leads = near === null ? used : used.filter((point) => near[point] === point);
  const vertexOfPoint = new Int32Array(count).fill(-1);
  for (let v = 0; v < leads.length; v += 1) vertexOfPoint[leads[v]] = v;
  if (near !== null) for (const point of used) vertexOfPoint[point] = vertexOfPoint[near[point]];
  const vertexOfFile = exact === null ? vertexOfPoint : new Int32Array(exact).map((point) => vertexOfPoint[point]);
  return { vertexOfPoint, fileVertex: leads.slice(), vertexOfFile };
}

async function cutFaces(
  positions: Float64Array,
  starts: Uint32Array,
  faceVertices: Uint32Array,
  work: Work,
): Promise<{ triangles: Uint32Array; faceOfTriangle: Uint32Array }> {
  const faceCount = starts.length - 1;
  const triangleCount = faceVertices.length - 2 * faceCount;
  const triangles = new Uint32Array(3 * triangleCount);
  const faceOfTriangle = new Uint32Array(triangleCount);
  let t = 0;
  for (let f = 0; f < faceCount; f += 1) {
    if (f % STRIDE === 0) await work.pause(0.5 + (0.5 * f) / faceCount);
    const begin = starts[f];
    const count = starts[f + 1] - begin;
    if (count === 3) {
      triangles.set(faceVertices.subarray(begin, begin + 3), 3 * t);
      faceOfTriangle[t] = f;
      t += 1;
      continue;
    }
    const corners = triangulatePolygon3(pick(positions, faceVertices.subarray(begin, begin + count)));
    for (let i = 0; i < corners.length; i += 1) triangles[3 * t + i] = faceVertices[begin + corners[i]];
    faceOfTriangle.fill(f, t, t + count - 2);
    t += count - 2;
  }
  return { triangles, faceOfTriangle };
}

function faceFindings({ shortened, leftOut }: CleanFaces, raw: RawModel): Finding[] {
  const findings: Finding[] = [];
  if (shortened.length > 0) {
    findings.push({
      code: 'read/corner-twice',
      severity: 'note',
      text: `${several(shortened.length, 'face has', 'faces have')} the same corner twice in a row (${first(shortened, raw)}), which was read as if it stood there once.`,
      value: shortened.length,
      where: {},
    });
  }
  if (leftOut.length > 0) {
    findings.push({
      code: 'read/face-left-out',
      severity: 'warning',
      text: `${several(leftOut.length, 'face has', 'faces have')} two corners on one spot and ${leftOut.length === 1 ? 'was' : 'were'} left out (${first(leftOut, raw)}): look for a hole there.`,
      value: leftOut.length,
      where: {},
    });
  }
  return findings;
}

const first = (faces: readonly number[], raw: RawModel): string =>
  `${faces.length === 1 ? '' : 'the first on '}${raw.placeOfFace(faces[0])}`;

const farFinding = ({ diagonal, step }: JoiningDistance): Finding => ({
  code: 'read/far-from-origin',
  severity: 'warning',
  text: 'The sculpt lies so far from the origin that single precision blurs its corners, so only exactly equal ones were joined: move it to the origin in your modelling program and export again.',
  value: step / diagonal,
  limit: FAR_SHARE_OF_DIAGONAL,
  where: {},
});
