import { fail, ok, type Result } from '../base/result.ts';
import { runAtOnce } from '../base/stepwise.ts';
import { length3, sub3 } from '../geom/vec.ts';
import { lineThrough } from '../mesh/lines/line-through.ts';
import type { MeshLine, MeshPoint } from '../mesh/lines/mesh-line.ts';
import { placeOf, pointAtPlace, trianglesAt } from '../mesh/lines/mesh-point.ts';
import { surfaceOf } from '../mesh/surface.ts';
import type { SeamChain, SurfacePoint } from '../model/seams.ts';
import type { StripAlong } from '../project/trim-part.ts';
import { pathLineSteps } from '../steps/seams/path-line.ts';
import { facePolygons } from '../steps/seams/surface-points.ts';
import { coverNet } from '../steps/trim/net-trails.ts';
import { lineOfTrail, seamNet } from '../steps/trim/seam-net.ts';
import type { TrimLine } from '../steps/trim/trim-ground.ts';
import { groundOf, type TrimSculpt } from './trim-sculpt.ts';

/** Seams that were named together run on in one strip where it turns by no more, radians: what a mitre bears. */
const MOST_TURN = (120 * Math.PI) / 180;

/** What a seam or open edge is called: by its letter, or its id where it has none. */
export const chainName = ({ letter, id }: SeamChain): string => (letter === '' ? id : letter);

/** The seam or open edge as a line on its mesh. */
export function chainLine({ vertices, closed }: SeamChain): MeshLine {
  const own = closed ? vertices.subarray(0, vertices.length - 1) : vertices;
  return { points: Array.from(own, (vertex): MeshPoint => ({ at: 'vertex', vertex })), closed };
}

/**
 * The lines of a sculpt that a strip follows; seams that meet are one line.
 * @returns `trim/no-seam` where none is so called, or as a path does that is drawn where no surface is.
 */
export function trimLines(on: TrimSculpt, along: StripAlong): Result<readonly TrimLine[]> {
  if (along.by === 'line') {
    const line = drawnLine(on, along.points, along.closed);
    return line.ok ? ok([{ name: 'drawn', line: line.value }]) : line;
  }
  const chains = along.by === 'seams' ? named(on, along.ids) : through(on, along.edges);
  return chains.ok ? ok(joinedLines(on, chains.value, MOST_TURN).lines) : chains;
}

function named({ chains }: TrimSculpt, ids: readonly string[]): Result<readonly SeamChain[]> {
  const found: SeamChain[] = [];
  for (const id of new Set(ids)) {
    const chain = chains.find((one) => one.id === id || one.letter === id);
    if (chain === undefined) {
      const known = chains.map(chainName).join(', ');
      return fail('trim/no-seam', `It follows seam ${id}, which the sculpt does not have: it has ${known}.`);
    }
    if (!found.includes(chain)) found.push(chain);
  }
  return ok(found);
}

/** The seams and open edges that run through edges of the document. */
function through(on: TrimSculpt, edges: readonly (readonly [number, number])[]): Result<readonly SeamChain[]> {
  const found = new Set<SeamChain>();
  for (const edge of edges) {
    const chain = chainThrough(on, edge);
    if (chain === null)
      return fail(
        'trim/no-seam',
        `It follows a seam through the edge from corner ${edge[0]} to ${edge[1]}, and none runs there: choose another seam, or mark that one again.`,
      );
    found.add(chain);
  }
  return ok([...found]);
}

/** The seam or open edge that runs through an edge of the document; null where none does. */
export function chainThrough({ mesh, chains, drawn }: TrimSculpt, edge: readonly [number, number]): SeamChain | null {
  const [a, b] = (drawn?.placed(edge) ?? edge).map((number) => mesh.vertexOfFile[number] ?? -1);
  const runs = ({ vertices }: SeamChain): boolean =>
    vertices.some((v, i) => i > 0 && ((v === a && vertices[i - 1] === b) || (v === b && vertices[i - 1] === a)));
  return a < 0 || b < 0 ? null : (chains.find(runs) ?? null);
}

/** Lines of seams in as few runs as there can be, with what they come to. @param mostTurnRad  at a node. */
export function joinedLines(
  on: TrimSculpt,
  chains: readonly SeamChain[],
  mostTurnRad: number,
  isSeen: (chain: SeamChain) => boolean = () => true,
): { readonly lines: readonly TrimLine[]; readonly net: ReturnType<typeof coverNet> } {
  const lines = chains.map((chain) => ({ line: chainLine(chain), isSeen: isSeen(chain) }));
  const net = coverNet(seamNet(groundOf(on, 0).foot, lines, { mostTurnRad }));
  return {
    lines: net.trails.map((trail) => ({
      name: trailName(trail.lines.map(({ line }) => chainName(chains[line]))),
      line: lineOfTrail(lines, trail),
    })),
    net,
  };
}

/** So many seams are named one by one. */
const MOST_NAMED = 4;

const trailName = (names: readonly string[]): string =>
  names.length <= MOST_NAMED ? names.join('-') : `${names[0]} to ${names[names.length - 1]}`;

/** A line drawn on the sculpt, on the mesh that was parted. */
function drawnLine(on: TrimSculpt, points: readonly SurfacePoint[], closed: boolean): Result<MeshLine> {
  const { mesh, model } = on.sculpt;
  const round = closed ? [...points, points[0]] : points;
  const line = runAtOnce(pathLineSteps(mesh, facePolygons(model), { points: round }, 1));
  if (!line.ok) return line;
  if (on.mesh === mesh) return line;
  return lineThrough(surfaceOf(on.mesh), line.value.points.map(finerPoints(on)), line.value.closed);
}

/** A point of the sculpt on the mesh that was parted. */
export const pointOnFiner = (on: TrimSculpt, p: MeshPoint): MeshPoint =>
  on.mesh === on.sculpt.mesh ? p : finerPoints(on)(p);

/** A point of the sculpt on the mesh that was cut finer. */
function finerPoints({ sculpt, mesh, drawn }: TrimSculpt): (p: MeshPoint) => MeshPoint {
  const [whole, finer] = [surfaceOf(sculpt.mesh), surfaceOf(mesh)];
  const parts = new Map<number, number[]>();
  (drawn?.sourceOfTriangle ?? []).forEach((source, t) => {
    const own = parts.get(source);
    if (own === undefined) parts.set(source, [t]);
    else own.push(t);
  });
  return (p) => {
    if (p.at === 'vertex') return p;
    const place = placeOf(whole, p);
    let [best, least]: [MeshPoint, number] = [{ at: 'vertex', vertex: 0 }, Infinity];
    for (const t of trianglesAt(whole, p).flatMap((source) => parts.get(source) ?? [])) {
      const point = pointAtPlace(finer, t, place);
      const far = length3(sub3(placeOf(finer, point), place));
      if (far < least) [best, least] = [point, far];
    }
    return best;
  };
}
