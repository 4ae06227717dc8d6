import type { Finding } from '../base/finding.ts';
import { Memo } from '../base/memo.ts';
import { rad } from '../geom/vec.ts';
import type { Work } from '../base/work.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { FoamRules } from '../model/foam-settings.ts';
import type { LayerChoice, SculptPart } from '../project/project.ts';
import { edgeKeyOf } from '../steps/cut/finer-surface.ts';
import { chainsByEdge, staggerSteps, type StaggeredSeams, type StaggerWish } from '../steps/cut/stagger-seams.ts';
import type { Stepwise } from '../base/stepwise.ts';
import type { CutSculpt } from './outcome.ts';
import type { OwnSurface } from './sculpt-run.ts';
import { rememberedSteps } from './remembered.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 4;

/** Wishes of the part that name edges and faces, brought to a mesh that was cut finer, and the marks to part it by. */
type OwnWishes = Pick<SculptPart, 'seams' | 'seamSettings' | 'edgeWishes' | 'pieceSettings'>;

interface Staggered extends Omit<OwnSurface, 'part'> {
  readonly wishes: OwnWishes;
  readonly findings: readonly Finding[];
}

/** The seams of a sheet beside those of the sheet that is seen, and what is remembered of them. */
export class Staggering {
  readonly #known = new Memo<unknown[], Staggered>(KEPT);

  /**
   * @param seen    the sheet that is seen, parted.
   * @param choice  of the sheet; staggered.
   * @param rules   of its foam.
   * @returns the sheet's own mesh, and the part with the wishes brought to it.
   */
  async of(
    seen: CutSculpt,
    part: SculptPart,
    { staggerMm = 0, thicknessMm }: LayerChoice,
    { foldLimitDeg, narrowThicknesses }: FoamRules,
    work: Work,
  ): Promise<OwnSurface & { findings: readonly Finding[] }> {
    const { mesh, chains, patches } = seen;
    const { seamSettings, edgeWishes, pieceSettings } = part;
    const how: How = { staggerMm, creaseRad: rad(foldLimitDeg), leastWidthMm: narrowThicknesses * thicknessMm };
    const key = [mesh, chains, patches, JSON.stringify(how), seamSettings, edgeWishes, pieceSettings];
    const made = await rememberedSteps(this.#known, key, () => staggered(seen, part, how), work);
    return { ...made, part: { ...part, ...made.wishes } };
  }
}

type How = Pick<StaggerWish, 'staggerMm' | 'creaseRad' | 'leastWidthMm'>;

function* staggered(seen: CutSculpt, part: SculptPart, how: How): Stepwise<Staggered> {
  const { mesh, chains, patches, patchOfTriangle } = seen;
  const moved = yield* staggerSteps({ mesh, chains, patches, patchOfTriangle, ...how });
  const { sourceOfTriangle, findings } = moved;
  return { mesh: moved.mesh, sourceOfTriangle, wishes: movedWishes(seen, part, moved), findings };
}

/** What was said of a seam is said of it where it now lies, and what was said of a piece at a face that it kept. */
function movedWishes(seen: CutSculpt, part: SculptPart, moved: StaggeredSeams): OwnWishes {
  const { fileVertex } = moved.mesh;
  const { edgeVertices } = topologyOf(moved.mesh);
  const named = (v: number, w: number): [number, number] => [fileVertex[v], fileVertex[w]];
  const edges: [number, number][] = [];
  moved.seams.isSeam.forEach((one, e) => {
    if (one === 1) edges.push(named(edgeVertices[2 * e], edgeVertices[2 * e + 1]));
  });
  const chainOfEdge = chainsByEdge(seen.chains);
  const vertexOf = (v: number): number => seen.mesh.vertexOfFile[v] ?? -1;
  const edgesOf = ([v, w]: readonly [number, number]): readonly [number, number][] => {
    const its = moved.edgesOfChain[chainOfEdge.get(edgeKeyOf(vertexOf(v), vertexOf(w))) ?? -1] ?? [];
    return its.length === 0 ? [[v, w]] : its.map(([a, b]) => named(a, b));
  };
  const faceOf = keptFaces(seen, moved);
  return {
    seams: { edges, paths: [] },
    seamSettings: part.seamSettings.map(({ edge, lapFace, standFace, ...rest }) => ({
      ...rest,
      edge: edgesOf(edge)[0],
      ...(lapFace === undefined ? {} : { lapFace: faceOf(lapFace) }),
      ...(standFace === undefined ? {} : { standFace: faceOf(standFace) }),
    })),
    edgeWishes: part.edgeWishes.map((wish) => ({ ...wish, edge: edgesOf(wish.edge)[0] })),
    pieceSettings: part.pieceSettings.map((setting) => ({ ...setting, face: faceOf(setting.face) })),
  };
}

/** For a face in a piece of the sheet that is seen one that lies wholly in the piece that took its place. */
function keptFaces({ mesh, patchOfTriangle }: CutSculpt, moved: StaggeredSeams): (face: number) => number {
  const { ownerOfTriangle, sourceOfTriangle } = moved;
  const patchOfFace = new Map<number, number>();
  patchOfTriangle.forEach((patch, t) => {
    if (!patchOfFace.has(mesh.faceOfTriangle[t])) patchOfFace.set(mesh.faceOfTriangle[t], patch);
  });
  const isParted = new Set<number>();
  ownerOfTriangle.forEach((owner, t) => {
    if (owner !== patchOfTriangle[sourceOfTriangle[t]]) isParted.add(moved.mesh.faceOfTriangle[t]);
  });
  const keptOf = new Map<number, number>();
  for (const [face, patch] of patchOfFace) if (!isParted.has(face) && !keptOf.has(patch)) keptOf.set(patch, face);
  return (face) => (isParted.has(face) ? (keptOf.get(patchOfFace.get(face) ?? -1) ?? face) : face);
}
