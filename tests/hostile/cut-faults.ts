import type { Finding } from '../../src/base/finding.ts';
import { checkMesh } from '../../src/mesh/check-mesh.ts';
import { surfaceArea, triangleArea } from '../../src/mesh/measure.ts';
import { triangleCount, type Mesh } from '../../src/mesh/mesh.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { CutSculpt, LayerOutcome, SculptOutcome } from '../../src/pipeline/outcome.ts';
import { checkFlatPiece } from '../../src/steps/flatten/check-flat-piece.ts';

/** Cutting may lose or gain so much of the surface's area: rounding and nothing else, share. */
const AREA_SHARE = 1e-9;

/** What is wrong with how a sculpt was parted and laid flat. @param told  all that the run tells. */
export function cutFaults({ sculpt, drawn, layers }: SculptOutcome, told: readonly Finding[]): string[] {
  if (sculpt === null) return [];
  const meshes: [string, Mesh][] = [['sculpt', sculpt.mesh]];
  if (drawn !== null) meshes.push(['drawn', drawn.mesh]);
  return [
    ...meshes.flatMap(([name, mesh]) => thrown(name, () => checkMesh(mesh))),
    ...(drawn === null ? [] : areaFaults('lines drawn', areaOf(sculpt.mesh), areaOf(drawn.mesh))),
    ...layers.flatMap((layer, i) => layerFaults(layer, `sheet ${i}`, told)),
  ];
}

function layerFaults({ cut, flats }: LayerOutcome, name: string, told: readonly Finding[]): string[] {
  if (cut === null) return [];
  return [
    ...thrown(name, () => checkMesh(cut.mesh)),
    ...patchFaults(cut, name),
    ...(flats ?? []).flatMap((flat, i) => flatFaults(cut, flat, i, `${name}, patch ${i}`, told)),
  ];
}

/** Every triangle lies in one patch, and the patches have the area of the whole. */
function patchFaults({ mesh, patches, patchOfTriangle, chains }: CutSculpt, name: string): string[] {
  const faults: string[] = [];
  const times = new Uint8Array(triangleCount(mesh));
  let sum = 0;
  for (const [i, { meshTriangles, triangles, meshVertices, loops, euler, kind }] of patches.entries()) {
    for (const t of meshTriangles) {
      times[t] += 1;
      sum += triangleArea(mesh.positions, mesh.triangles, t);
      if (patchOfTriangle[t] !== i) faults.push(`${name}: triangle ${t} is not told to lie in patch ${i}`);
    }
    if (triangles.length !== 3 * meshTriangles.length) faults.push(`${name}: corners of patch ${i}`);
    const isElsewhere = triangles.some(
      (v, k) => meshVertices[v] !== mesh.triangles[3 * meshTriangles[Math.floor(k / 3)] + (k % 3)],
    );
    if (isElsewhere) faults.push(`${name}: patch ${i} lies elsewhere`);
    if (kind === 'disc' && (loops.length !== 1 || euler !== 1)) faults.push(`${name}: patch ${i} is no disc`);
    if (kind === 'windowed' && euler !== 2 - loops.length) faults.push(`${name}: patch ${i} is no disc with windows`);
  }
  const wrong = times.findIndex((count) => count !== 1);
  if (wrong >= 0) faults.push(`${name}: triangle ${wrong} lies in ${times[wrong]} patches`);
  for (const { letter, sides, vertices } of chains)
    for (const { patch, localVertices } of sides)
      if (localVertices.some((v, k) => patches[patch].meshVertices[v] !== vertices[k]))
        faults.push(`${name}: seam ${letter} does not run along patch ${patch}`);
  return [...faults, ...areaFaults(`${name}, patches`, areaOf(mesh), sum)];
}

function flatFaults(
  { patches }: CutSculpt,
  flat: FlatPiece | null,
  i: number,
  name: string,
  told: readonly Finding[],
): string[] {
  if (flat !== null) return thrown(name, () => checkFlatPiece(patches[i], flat));
  const [first] = patches[i].meshTriangles;
  const isTold = told.some(
    ({ severity, code, where }) =>
      severity === 'error' &&
      /^(cut|flatten)\//.test(code) &&
      (where.triangles ?? []).length > 0 &&
      first !== undefined,
  );
  return isTold ? [] : [`${name} is left out and nothing says so`];
}

const areaOf = ({ positions, triangles }: Mesh): number => surfaceArea(positions, triangles);

const areaFaults = (name: string, before: number, after: number): string[] =>
  Math.abs(after - before) <= AREA_SHARE * before ? [] : [`${name}: an area of ${before} became ${after}`];

/** The message of what a check throws. */
export function thrown(name: string, check: () => void): string[] {
  try {
    check();
    return [];
  } catch (error) {
    return [`${name}: ${error instanceof Error ? error.message : String(error)}`];
  }
}
