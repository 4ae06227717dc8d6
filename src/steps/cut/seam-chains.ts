import { letters, seamId } from '../../base/ids.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { edgeFoldSteps } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { nextHalfedge, originOf, targetOf, topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { PlacedSetting, SeamChain, SeamKind, SeamSet, SeamSide } from '../../model/seams.ts';
import type { CutSurface } from './cut-patches.ts';
import { sideRoles } from './side-roles.ts';

/** One mesh edge of a chain: the half-edge on its left and the one across, or -1 at an open edge. */
interface Link {
  readonly left: number;
  readonly right: number;
  readonly edge: number;
}

/**
 * Gathers the cut edges into seams: runs without a branch along which the same two patches meet. Open edges of the prop form chains of
 * kind `open` with one side. Seams come first, numbered s1, s2 …, lettered A, B …; open edges follow as o1, o2 … without a letter.
 * @param settings  the maker's wishes, each tied to an edge in file numbers; the last one on a chain counts.
 */
export function seamChains(
  mesh: Mesh,
  seams: SeamSet,
  cut: CutSurface,
  settings: readonly PlacedSetting[],
): readonly SeamChain[] {
  return runAtOnce(chainSteps(mesh, seams, cut, settings));
}

/** The same in stretches. */
export function* chainSteps(
  mesh: Mesh,
  seams: SeamSet,
  cut: CutSurface,
  settings: readonly PlacedSetting[],
): Stepwise<readonly SeamChain[]> {
  const links = cutLinks(mesh, seams, cut);
  const runs = [
    ...gatherRuns(
      mesh,
      links.filter((link) => link.right >= 0),
      cut,
    ),
    ...gatherRuns(
      mesh,
      links.filter((link) => link.right < 0),
      cut,
    ),
  ];
  yield;
  const folds = yield* edgeFoldSteps(mesh);
  const settingOfEdge = settingsByEdge(mesh, settings);
  let seamCount = 0;
  let openCount = 0;
  return runs.map((run) => {
    const open = run.links[0].right < 0;
    const name = open ? `o${++openCount}` : `s${++seamCount}`;
    const wish = open
      ? undefined
      : run.links.map((link) => settingOfEdge.get(link.edge)).findLast((found) => found !== undefined);
    const kind: SeamKind = open ? 'open' : (wish?.kind ?? 'butt');
    return {
      id: seamId(name),
      letter: open ? '' : letters(seamCount - 1),
      kind,
      vertices: Uint32Array.from([
        originOf(mesh.triangles, run.links[0].left),
        ...run.links.map((link) => targetOf(mesh.triangles, link.left)),
      ]),
      closed: run.closed,
      sides: sidesOf(run.links, cut, open),
      foldRad: Float64Array.from(run.links, (link) => folds[link.edge]),
      // A rebate takes its length from the foam it stands on.
      allowanceMm: kind === 'rebate' ? 0 : (wish?.allowanceMm ?? 0),
      ...(kind === 'butt' && wish?.steep !== undefined ? { steep: wish.steep } : {}),
      ...sideRoles(mesh, cut, [patchAt(cut, run.links[0].left), open ? -1 : patchAt(cut, run.links[0].right)], wish),
    };
  });
}

/** Every cut edge once, its left side in the patch of the lower number; where both are the same, along the half-edge of the lower number. */
function cutLinks(mesh: Mesh, seams: SeamSet, cut: CutSurface): Link[] {
  const topology = topologyOf(mesh);
  const links: Link[] = [];
  for (let h = 0; h < mesh.triangles.length; h += 1) {
    const across = topology.twin[h];
    const edge = topology.edgeOfHalfedge[h];
    if (across < 0) {
      links.push({ left: h, right: -1, edge });
    } else if (seams.isSeam[edge] === 1 && h < across) {
      const [p, q] = [patchAt(cut, h), patchAt(cut, across)];
      links.push(p <= q ? { left: h, right: across, edge } : { left: across, right: h, edge });
    }
  }
  return links;
}

const patchAt = (cut: CutSurface, h: number): number => cut.patchOfTriangle[triangleOfHalfedge(h)];

interface Run {
  readonly links: Link[];
  readonly closed: boolean;
}

/**
 * Follows links end to end. A run goes on at a vertex where exactly two links meet and both sides carry on in the same local vertex.
 * A dart or closing seam has the same patch on both sides, so its links may have to be taken backwards.
 */
function gatherRuns(mesh: Mesh, links: readonly Link[], cut: CutSurface): Run[] {
  const at = new Map<number, number[]>();
  links.forEach((link, i) => {
    for (const v of [originOf(mesh.triangles, link.left), targetOf(mesh.triangles, link.left)]) {
      const list = at.get(v);
      if (list === undefined) at.set(v, [i]);
      else list.push(i);
    }
  });
  const branch = branchVertices(mesh, cut);
  const used = new Uint8Array(links.length);
  const runs: Run[] = [];
  const extend = (run: Link[], v: number, forward: boolean): number => {
    for (;;) {
      if (branch.has(v)) return v;
      const next = at.get(v)?.find((i) => used[i] === 0);
      if (next === undefined) return v;
      const end = forward ? run[run.length - 1] : run[0];
      const found = turned(mesh, links[next], v, forward);
      if (found === null || !carriesOn(cut, forward ? end : found, forward ? found : end)) return v;
      used[next] = 1;
      if (forward) run.push(found);
      else run.unshift(found);
      v = forward ? targetOf(mesh.triangles, found.left) : originOf(mesh.triangles, found.left);
    }
  };
  for (let i = 0; i < links.length; i += 1) {
    if (used[i] === 1) continue;
    used[i] = 1;
    const run = [links[i]];
    const start = originOf(mesh.triangles, links[i].left);
    const end = extend(run, targetOf(mesh.triangles, links[i].left), true);
    const closed = end === start && run.length > 2 && !branch.has(start) && carriesOn(cut, run[run.length - 1], run[0]);
    if (!closed) extend(run, start, false);
    runs.push({ links: run, closed });
  }
  return runs;
}

/** The link so that it leaves `v` (forward) or arrives at it; null when it cannot. Only links with one patch on both sides may be turned. */
function turned(mesh: Mesh, link: Link, v: number, forward: boolean): Link | null {
  const near = (h: number): number => (forward ? originOf(mesh.triangles, h) : targetOf(mesh.triangles, h));
  if (near(link.left) === v) return link;
  if (link.right >= 0 && near(link.right) === v) return { left: link.right, right: link.left, edge: link.edge };
  return null;
}

/** True when link `b` begins where `a` ends on both sides, in the same patches. */
function carriesOn(cut: CutSurface, a: Link, b: Link): boolean {
  const local = cut.localOfHalfedge;
  if (patchAt(cut, a.left) !== patchAt(cut, b.left) || local[nextHalfedge(a.left)] !== local[b.left]) return false;
  if (a.right < 0 || b.right < 0) return a.right < 0 && b.right < 0;
  return patchAt(cut, a.right) === patchAt(cut, b.right) && local[a.right] === local[nextHalfedge(b.right)];
}

/** Vertices where other than two cut edges meet: more than two fans of foam, or two at a rim. Neither line goes on through them. */
function branchVertices(mesh: Mesh, cut: CutSurface): Set<number> {
  const fans = new Uint32Array(mesh.positions.length / 3);
  for (const patch of cut.patches) for (const v of patch.meshVertices) fans[v] += 1;
  const branch = new Set<number>();
  for (let v = 0; v < fans.length; v += 1) if (fans[v] > 2) branch.add(v);
  const topology = topologyOf(mesh);
  for (let h = 0; h < mesh.triangles.length; h += 1) {
    if (topology.twin[h] >= 0) continue;
    for (const v of [originOf(mesh.triangles, h), targetOf(mesh.triangles, h)]) if (fans[v] > 1) branch.add(v);
  }
  return branch;
}

function sidesOf(links: readonly Link[], cut: CutSurface, open: boolean): SeamSide[] {
  const local = cut.localOfHalfedge;
  const left: SeamSide = {
    patch: patchAt(cut, links[0].left),
    localVertices: Uint32Array.from([local[links[0].left], ...links.map((link) => local[nextHalfedge(link.left)])]),
  };
  if (open) return [left];
  const right: SeamSide = {
    patch: patchAt(cut, links[0].right),
    localVertices: Uint32Array.from([local[nextHalfedge(links[0].right)], ...links.map((link) => local[link.right])]),
  };
  return [left, right];
}

function settingsByEdge(mesh: Mesh, settings: readonly PlacedSetting[]): Map<number, PlacedSetting> {
  const topology = topologyOf(mesh);
  const byEdge = new Map<number, PlacedSetting>();
  for (const setting of settings) {
    const edge = topology.edgeBetween(
      mesh.vertexOfFile[setting.edge[0]] ?? -1,
      mesh.vertexOfFile[setting.edge[1]] ?? -1,
    );
    if (edge >= 0) byEdge.set(edge, setting);
  }
  return byEdge;
}
