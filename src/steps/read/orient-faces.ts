import type { Stepwise } from '../../base/stepwise.ts';
import type { Vec3 } from '../../geom/vec.ts';
import type { SourceModel } from '../../model/source-model.ts';
import type { FaceAreas } from './face-areas.ts';
import { inwardSteps, type OpenShell } from './open-inward.ts';
import { runsAlong, type SideLinks } from './side-links.ts';

/** Which polygons must be turned over so that all look outward, one shell after the other. */
export interface Orientation {
  /** One flag per polygon, 1 to turn it over. */
  readonly turn: Uint8Array;
  readonly turnedCount: number;
  /** Polygons that lie against a neighbour of their shell: few of many where only some were turned. Ascending. */
  readonly against: readonly number[];
  /** Closed shells, and such as are closed but for small rims, that look inward throughout: how many, and a polygon of each. */
  readonly insideOut: readonly number[];
  /** A polygon of each shell that has only one side, like a Möbius band: it cannot be turned right. */
  readonly oneSided: readonly number[];
}

/**
 * Finds how the polygons of each shell must be turned to agree, and which way round the shell then looks. A shell here is what hangs
 * together by edges of two faces. A closed one, with a volume, looks outward: its signed volume is positive (the divergence theorem, summed
 * over triangles). An open one has no outside that could be computed, so the way in which the larger area looks is kept; but for one that
 * is closed all but small rims ({@link inwardSteps}).
 */
export function* orientSteps(
  model: SourceModel,
  links: SideLinks,
  { own }: Pick<FaceAreas, 'own'>,
): Stepwise<Orientation> {
  const faceCount = own.length;
  const flip = new Int8Array(faceCount).fill(-1);
  const turn = new Uint8Array(faceCount);
  const against: number[] = [];
  const insideOut: number[] = [];
  const oneSided: number[] = [];
  const open: OpenShell[] = [];
  const middle = middleOf(model);
  const volumes = faceVolumes(model, middle);
  yield;
  for (let seed = 0; seed < faceCount; seed += 1) {
    if (flip[seed] >= 0) continue;
    const shell = yield* floodShell(model, links, seed, flip);
    if (shell.isOneSided) {
      oneSided.push(seed);
      continue;
    }
    let [kept, turned, volume] = [0, 0, 0];
    for (const f of shell.faces) {
      if (flip[f] === 0) kept += own[f];
      else turned += own[f];
      volume += flip[f] === 0 ? volumes[f] : -volumes[f];
    }
    const few = turned > kept ? 0 : 1;
    for (const f of shell.faces) if (flip[f] === few) against.push(f);
    if (!shell.isClosed && !shell.faces.some((f) => flip[f] === few))
      open.push({ seed, faces: shell.faces, area: kept + turned, volume });
    const isClosed = shell.isClosed && volume !== 0;
    const way = isClosed ? (volume < 0 ? 0 : 1) : few;
    if (isClosed && !shell.faces.some((f) => flip[f] === few) && way !== few) insideOut.push(seed);
    for (const f of shell.faces) if (flip[f] === way) turn[f] = 1;
  }
  yield;
  const inward = new Set(yield* inwardSteps(model, links, open, middle));
  for (const { seed, faces } of open) {
    if (!inward.has(seed)) continue;
    insideOut.push(seed);
    for (const f of faces) turn[f] = 1;
  }
  return {
    turn,
    turnedCount: turn.reduce((sum, flag) => sum + flag, 0),
    against: against.sort((a, b) => a - b),
    insideOut: insideOut.sort((a, b) => a - b),
    oneSided,
  };
}

/** Polygons reached in one stretch: a few milliseconds. */
const STRETCH_FACES = 32_768;

interface Shell {
  readonly faces: readonly number[];
  readonly isClosed: boolean;
  readonly isOneSided: boolean;
}

/** Marks every polygon that hangs together with `seed` by 0 (looks the same way round) or 1 (looks the other way). */
function* floodShell(model: SourceModel, links: SideLinks, seed: number, flip: Int8Array): Stepwise<Shell> {
  const faces = [seed];
  flip[seed] = 0;
  let isClosed = true;
  let isOneSided = false;
  for (let at = 0; at < faces.length; at += 1) {
    if (at % STRETCH_FACES === STRETCH_FACES - 1) yield;
    const f = faces[at];
    for (let i = model.faceStarts[f]; i < model.faceStarts[f + 1]; i += 1) {
      const other = links.across[i];
      if (other < 0) {
        isClosed = false;
        continue;
      }
      const g = links.face[other];
      const wanted = runsAlong(model.faceVertices, links, i) ? 1 - flip[f] : flip[f];
      if (flip[g] < 0) {
        flip[g] = wanted;
        faces.push(g);
      } else if (flip[g] !== wanted) isOneSided = true;
    }
  }
  return { faces, isClosed, isOneSided };
}

/** Mean of all vertices. */
function middleOf({ positions }: SourceModel): Vec3 {
  const middle = [0, 0, 0];
  for (let i = 0; i < positions.length; i += 1) middle[i % 3] += (3 * positions[i]) / positions.length;
  return { x: middle[0], y: middle[1], z: middle[2] };
}

/** Signed volume between each polygon and the middle of the model, unit³: measured from near by, so that far-away models keep their digits. */
function faceVolumes(
  { positions, triangles, faceOfTriangle, faceStarts }: SourceModel,
  { x, y, z }: Vec3,
): Float64Array {
  const volumes = new Float64Array(faceStarts.length - 1);
  const middle = [x, y, z];
  const at = (t: number, k: number, axis: number): number => positions[3 * triangles[3 * t + k] + axis] - middle[axis];
  for (let t = 0; t < faceOfTriangle.length; t += 1) {
    const [ax, ay, az] = [at(t, 0, 0), at(t, 0, 1), at(t, 0, 2)];
    const [bx, by, bz] = [at(t, 1, 0), at(t, 1, 1), at(t, 1, 2)];
    const [cx, cy, cz] = [at(t, 2, 0), at(t, 2, 1), at(t, 2, 2)];
    volumes[faceOfTriangle[t]] += (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  }
  return volumes;
}

/** The model with the flagged polygons run the other way round, each from the same first corner. */
export function turnFaces(model: SourceModel, turn: Uint8Array): SourceModel {
  const faceVertices = model.faceVertices.slice();
  const triangles = model.triangles.slice();
  for (let f = 0; f < turn.length; f += 1) {
    if (turn[f] === 1) faceVertices.subarray(model.faceStarts[f] + 1, model.faceStarts[f + 1]).reverse();
  }
  for (let t = 0; t < model.faceOfTriangle.length; t += 1) {
    if (turn[model.faceOfTriangle[t]] === 1) triangles.subarray(3 * t + 1, 3 * t + 3).reverse();
  }
  return { ...model, faceVertices, triangles };
}
