import { contentHash } from '../../src/base/hash.ts';
import { layerId } from '../../src/base/ids.ts';
import { seededRandom } from '../../src/base/random.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import type { SeamPath, SeamSetting } from '../../src/model/seams.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { LayerChoice, PaperChoice, Project, SculptPart } from '../../src/project/project.ts';
import { readModel } from '../../src/steps/read/read-model.ts';
import { meshFromModel } from '../../src/steps/read/size.ts';
import { facePolygons } from '../../src/steps/seams/surface-points.ts';
import { hostilePaths, type Sculpt } from '../support/hostile-paths.ts';
import { edgeSet, type EdgeList } from './edge-sets.ts';
import type { SeamMesh } from './seam-meshes.ts';

/** A sculpt that was opened, and its file. */
export interface OpenedMesh {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly hash: string;
  readonly sculpt: Sculpt;
}

export async function openMesh({ name, bytes: make }: SeamMesh): Promise<OpenedMesh> {
  const bytes = await make();
  const model = await readModel(bytes, 'sculpt.obj', QUIET_WORK);
  if (!model.ok) throw new Error(`${name}: ${model.problem.text}`);
  const mesh = meshFromModel(model.value, 1);
  return { name, bytes, hash: await contentHash(bytes), sculpt: { mesh, polygons: facePolygons(model.value) } };
}

/** One set of seams on a sculpt with all else a maker may choose, by chance: the same seed gives the same. */
export interface SeamTrial {
  /** What kinds of seams they are. */
  readonly name: string;
  readonly project: Project;
}

type Rand = () => number;

const pick = <T>(list: readonly T[], rand: Rand): T => list[Math.floor(rand() * list.length)];
const between = (least: number, most: number, rand: Rand): number => least + (most - least) * rand();
/** A figure as a maker types it. */
const typed = (least: number, most: number, rand: Rand): number => Math.round(10 * between(least, most, rand)) / 10;

export function seamTrial({ sculpt, hash, name }: OpenedMesh, seed: number): SeamTrial {
  const rand = seededRandom(seed);
  const { mesh } = sculpt;
  const along = edgeSet(mesh, rand);
  const across = rand() < 0.3 ? drawnPaths(sculpt, rand) : { name: '', paths: [] };
  const first = newProject(name, { hash, fileName: 'sculpt.obj', format: 'obj' });
  const [base] = first.parts;
  const part: SculptPart = {
    ...base,
    scale: { by: 'size', axis: 'longest', mm: typed(60, 250, rand) },
    seams: { edges: along.edges, paths: across.paths },
    seamSettings: along.edges
      .filter(() => rand() < 2 / (2 + along.edges.length))
      .map((edge) => seamSetting(edge, mesh, rand)),
    pieceSettings: rand() < 0.4 ? pieceSettings(mesh, rand) : [],
    modelIs: pick(['face', 'face', 'middle', 'back'], rand),
    ...(rand() < 0.1 ? { offMm: typed(-5, 5, rand) } : {}),
    layers: wall(base.layers[0], rand),
    tracedSide: pick(['face', 'face', 'back'], rand),
    // Looking for one takes longer than all else, and has nothing to do with seams.
    ...(rand() < 0.9 ? { mirror: { by: 'off' as const } } : {}),
    upAxis: pick(['x', 'y', 'z'], rand),
    copies: rand() < 0.03 ? 2 : 1,
    flatten: {
      seamPrice: pick([base.flatten.seamPrice, base.flatten.seamPrice, 0, 10_000], rand),
      squashPrice: pick([3, 3, 1, 20], rand),
      evenOut: rand() < 0.1,
      keepApart: rand() < 0.1,
    },
    ...tips(along.edges, rand),
    ...scores(along.edges, rand),
  };
  return {
    name: across.name === '' ? along.name : `${along.name} + ${across.name}`,
    project: { ...first, parts: [part], paper: paper(first.paper, rand), lengthUnit: pick(['mm', 'mm', 'in'], rand) },
  };
}

function drawnPaths(sculpt: Sculpt, rand: Rand): { name: string; paths: readonly SeamPath[] } {
  const { name, paths } = hostilePaths(sculpt, Math.floor(rand() * 1000), rand);
  return {
    name,
    paths: paths.map((points): SeamPath => {
      const kind = pick(['butt', 'butt', 'lap', 'rebate'] as const, rand);
      return { points, kind, ...(kind === 'lap' ? { allowanceMm: typed(0, 20, rand) } : {}), straight: rand() < 0.1 };
    }),
  };
}

function seamSetting(edge: EdgeList[number], { faceCount }: Mesh, rand: Rand): SeamSetting {
  const face = Math.floor(rand() * faceCount);
  const kind = pick(['butt', 'lap', 'rebate'] as const, rand);
  return {
    edge,
    kind,
    allowanceMm: kind === 'lap' || rand() < 0.3 ? typed(0, 20, rand) : 0,
    ...(kind === 'lap' ? { lapFace: face, lapUnder: rand() < 0.5 } : {}),
    ...(kind === 'rebate' && rand() < 0.5 ? { standFace: face } : {}),
    ...(kind === 'butt' && rand() < 0.6 ? { steep: pick(['split', 'fill', 'trim'] as const, rand) } : {}),
  };
}

const pieceSettings = ({ faceCount }: Mesh, rand: Rand): SculptPart['pieceSettings'] =>
  Array.from({ length: 1 + Math.floor(3 * rand()) }, () => ({
    face: Math.floor(rand() * faceCount),
    ...(rand() < 0.7 ? { bendStyle: pick(['rolled', 'grooved', 'kerfed'] as const, rand) } : {}),
    ...(rand() < 0.2 ? { quantity: 1 + Math.floor(3 * rand()) } : {}),
    ...(rand() < 0.2 ? { tracedSide: pick(['face', 'back'] as const, rand) } : {}),
    ...(rand() < 0.2
      ? { grain: { angleDeg: typed(-180, 180, rand), stretch: pick(['any', 'across', 'along'] as const, rand) } }
      : {}),
  }));

function wall(base: LayerChoice, rand: Rand): readonly LayerChoice[] {
  const sheets = rand() < 0.9 ? 1 : pick([2, 2, 3], rand);
  return Array.from({ length: sheets }, (_, i) => ({
    ...base,
    id: layerId(`layer-${i + 1}`),
    thicknessMm: typed(2, 15, rand),
    neutralFraction: pick([0.5, 0.5, 0, 1, 0.35], rand),
    ...(i + 1 < sheets && rand() < 0.3 ? { staggerMm: typed(5, 40, rand) } : {}),
  }));
}

const tips = (edges: EdgeList, rand: Rand): Pick<SculptPart, 'tipHoles'> =>
  edges.length === 0 || rand() >= 0.1 ? {} : { tipHoles: [{ corner: pick(edges, rand)[0], diameterMm: 4 }] };

const scores = (edges: EdgeList, rand: Rand): Pick<SculptPart, 'scores'> =>
  edges.length === 0 || rand() >= 0.05
    ? {}
    : { scores: [{ id: 'score-1', edges: [pick(edges, rand)], depthMm: typed(1, 20, rand), openMm: 1 }] };

function paper(usual: PaperChoice, rand: Rand): PaperChoice {
  const name = pick(['A4', 'A4', 'A3', 'Letter', 'Tabloid', 'A1', 'roll', 'custom'], rand);
  return {
    ...usual,
    name,
    ...(name === 'roll' ? { widthMm: 610 } : {}),
    ...(name === 'custom' ? { widthMm: typed(200, 500, rand), heightMm: typed(200, 700, rand) } : {}),
    orientation: pick(['portrait', 'landscape'], rand),
    marginMm: typed(5, 20, rand),
    overlapMm: typed(0, 25, rand),
    ...(rand() < 0.3 ? { mirrored: 'each' as const } : {}),
    language: pick([undefined, 'de'], rand),
  };
}

/** The whole chain run on a trial, from its bytes on, as if nothing had been opened before. */
export async function runTrial({ bytes, hash }: OpenedMesh, project: Project): Promise<Outcome> {
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName: 'sculpt.obj', bytes });
  return pipeline.run(project, QUIET_WORK, { date: '2026-01-01' });
}
