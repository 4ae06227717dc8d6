import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../mesh/topology.ts';
import type { SeamSet } from '../model/seams.ts';
import { foamGround } from '../pipeline/foam-ground.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import type { ProposalWish } from '../pipeline/propose/proposal.ts';
import type { CostGround } from '../pipeline/seam-costs.ts';
import { searchSurface, type SearchSurface } from '../pipeline/search-surface.ts';
import { seamWishesOf, type SeamWishes } from '../pipeline/seam-wishes.ts';
import { seamSetFromMarks } from '../steps/seams/seam-set.ts';
import type { ProposalAsk } from './proposing-api.ts';

/** Same answers for the same job. */
const SEED = 1;

/** What is sought, and on what. */
export interface SearchWish {
  readonly surface: SearchSurface;
  readonly wish: Omit<ProposalWish, 'dial'>;
  /** What seams there are are weighed on. */
  readonly ground: CostGround;
}

/** What is sought, from the sheet that is seen: its neutral surface, its foam's sheets and rules. Null before there is a size. */
export function wishOf(outcome: Outcome, { from, limitPct }: ProposalAsk): SearchWish | null {
  const { project, part, sculpt, drawn, cut, mirror } = outcome;
  if (part === null) return null;
  const choice = part.layers.at(-1);
  const foam = project.foams.find(({ id }) => id === choice?.foam);
  if (sculpt?.mmPerUnit == null || cut === null || foam === undefined || choice === undefined) return null;
  const isRest = from === 'rest';
  // Lines that go anyway need not be cut into the sculpt.
  const isOnLines = isRest || part.seams.paths.some(({ locked }) => locked === true);
  const surface = searchSurface(sculpt, part, isOnLines ? drawn : null, ({ locked }) => isRest || locked === true);
  const { mesh } = surface;
  const marked = seamSetFromMarks(mesh, surface.part.seams, false);
  if (!marked.ok) return null;
  const opposite = mirror === null ? null : surface.edgesOnMesh(mirror.partners.ofEdge);
  const said = seamWishesOf(mesh, surface.part, marked.value, opposite);
  const wishes: SeamWishes = { ...said, ...surface.withPaths(said) };
  // Where the sheet is cut finer its own vertices follow those of the sculpt.
  const ground = foamGround(mesh, cut.shell, { part: surface.part, choice, foam }, limitPct);
  return {
    surface,
    ground: { ...ground, held: said.locked },
    wish: {
      mesh,
      ...ground,
      seed: SEED,
      start: isRest ? marked.value : heldAlone(mesh, marked.value, wishes),
      ...wishes,
      ...(isRest ? { locked: marked.value.isSeam } : {}),
    },
  };
}

/** Of the seams there are those that are held, and those round pieces that are. */
function heldAlone(mesh: Mesh, { isSeam }: SeamSet, { locked, fixedTriangles }: SeamWishes): SeamSet {
  const { halfedgeOfEdge, twin } = topologyOf(mesh);
  const isFixed = (h: number): boolean => h >= 0 && fixedTriangles[triangleOfHalfedge(h)] === 1;
  const held = isSeam.map((value, e) =>
    value === 1 && (locked[e] === 1 || isFixed(halfedgeOfEdge[e]) || isFixed(twin[halfedgeOfEdge[e]])) ? 1 : 0,
  );
  return { isSeam: held, count: held.reduce((sum, value) => sum + value, 0) };
}

/** Edges of what is on the bench: the mesh seams were sought on, or the same cut finer, where some edges are no more. */
export function edgesOnBench(shown: Mesh, pairs: readonly (readonly [number, number])[]): number[] {
  const topology = topologyOf(shown);
  return pairs.map(([v, w]) => topology.edgeBetween(v, w)).filter((e) => e >= 0);
}
