import { clipPlaces, type Finding } from '../../base/finding.ts';
import { SMALL_HOLE_SHARE } from '../../base/tolerance.ts';
import { diagonalOf } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Rim } from './rims.ts';
import { several } from './wording.ts';

/** How many rims get a finding of their own; the rest share one. */
const MOST_FINDINGS = 20;

/**
 * Tells of the rims of a surface. A rim is no fault, for foam has edges; one under {@link SMALL_HOLE_SHARE} of the sculpt's diagonal is
 * likelier a hole nobody meant. Small ones come first, each kind in the order of the file.
 */
export function rimFindings(mesh: Mesh, rims: readonly Rim[]): Finding[] {
  const limit = SMALL_HOLE_SHARE * diagonalOf(mesh);
  const isSmall = rims.map((rim) => rim.isClosed && extentOf(mesh, rim) < limit);
  const small = rims.filter((_, i) => isSmall[i]);
  const wide = rims.filter((_, i) => !isSmall[i]);
  return [...listed(small, holeFinding, 'read/hole', 'warning'), ...listed(wide, rimFinding, 'read/open-rim', 'note')];
}

function listed(
  rims: readonly Rim[],
  tell: (rim: Rim) => Finding,
  code: string,
  severity: 'warning' | 'note',
): Finding[] {
  const findings = rims.slice(0, MOST_FINDINGS).map(tell);
  const rest = rims.slice(MOST_FINDINGS);
  if (rest.length === 0) return findings;
  const what =
    code === 'read/hole'
      ? several(rest.length, 'more small hole', 'more small holes')
      : several(rest.length, 'more open rim', 'more open rims');
  const edges: (readonly [number, number])[] = [];
  for (const rim of rest) edges.push(...edgesOf(rim));
  return [
    ...findings,
    {
      code,
      severity,
      text: `There ${rest.length === 1 ? 'is' : 'are'} ${what}: so many are quicker to close in your modelling program.`,
      value: rest.length,
      where: { edges: clipPlaces(edges) },
    },
  ];
}

const holeFinding = (rim: Rim): Finding => ({
  code: 'read/hole',
  severity: 'warning',
  text: `There is a small hole with ${rim.vertices.length} edges: close it (repair: close hole), unless it is meant.`,
  value: rim.vertices.length,
  unit: 'edges',
  where: { edges: clipPlaces(edgesOf(rim)) },
});

const rimFinding = (rim: Rim): Finding => ({
  code: 'read/open-rim',
  severity: 'note',
  text: `The surface is open along ${several(edgesOf(rim).length, 'edge', 'edges')}, and the foam ends there${rim.isClosed ? '; where it should go on, close it (repair: close hole)' : ''}.`,
  value: edgesOf(rim).length,
  unit: 'edges',
  where: { edges: clipPlaces(edgesOf(rim)) },
});

function edgesOf({ vertices, isClosed }: Rim): (readonly [number, number])[] {
  const edges: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < vertices.length; i += 1) edges.push([vertices[i], vertices[i + 1]]);
  if (isClosed) edges.push([vertices[vertices.length - 1], vertices[0]]);
  return edges;
}

/** Longest side of the upright box round a rim, mm. */
function extentOf({ positions }: Mesh, { vertices }: Rim): number {
  let extent = 0;
  for (let axis = 0; axis < 3; axis += 1) {
    let [low, high] = [Infinity, -Infinity];
    for (const v of vertices) {
      low = Math.min(low, positions[3 * v + axis]);
      high = Math.max(high, positions[3 * v + axis]);
    }
    extent = Math.max(extent, high - low);
  }
  return extent;
}
