import { contentHash } from '../../src/base/hash.ts';
import { seededRandom } from '../../src/base/random.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import type { Source } from '../../src/pipeline/sculpt-stage.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { objOf, type Solid } from '../reference/handbook/polygon-solids.ts';
import { inSheets } from '../support/run-solid.ts';
import { BROKEN } from './broken-solids.ts';

/** A broken sculpt as a file, and a project that asks for foam of it. */
export interface BrokenTrial {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly project: Project;
}

const pick = <T>(list: readonly T[], rand: () => number): T => list[Math.floor(rand() * list.length)];

/** @param name  how it is broken, as in `BROKEN`. @param seed  the same gives the same. */
export async function brokenTrial(name: string, seed: number): Promise<BrokenTrial> {
  const rand = seededRandom(seed);
  const solid = BROKEN[name](rand);
  const format = rand() < 0.7 ? 'obj' : 'stl';
  const bytes = format === 'obj' ? objOf(solid) : stlOf(solid);
  const first = newProject(name, { hash: await contentHash(bytes), fileName: `broken.${format}`, format });
  const [base] = first.parts;
  const part: SculptPart = {
    ...base,
    scale:
      rand() < 0.6 ? { by: 'unit', unit: 'mm' } : { by: 'size', axis: 'longest', mm: Math.round(20 + 300 * rand()) },
    seams: { edges: someEdges(solid, rand), paths: [] },
    modelIs: pick(['face', 'middle', 'back'], rand),
    tracedSide: pick(['face', 'back'], rand),
    repairs: pick([[], [], [{ kind: 'drop-doubled' }], [{ kind: 'drop-empty' }], [{ kind: 'turn-faces' }]], rand),
  };
  const thick = (): number => Math.round(10 * (2 + 13 * rand())) / 10;
  const sheets = rand() < 0.85 ? [thick()] : [thick(), thick()];
  return { name, bytes, project: { ...first, parts: [inSheets(part, ...sheets)] } };
}

/** Its file, under its hash. */
export const sourcesOf = ({ bytes, project }: BrokenTrial): ReadonlyMap<string, Source> => {
  const { hash, fileName } = project.parts[0].source;
  return new Map([[hash, { fileName, bytes }]]);
};

/** The whole chain run on it through the door that files come in by. */
export async function runBroken(trial: BrokenTrial): Promise<Outcome> {
  const pipeline = new Pipeline();
  for (const [hash, source] of sourcesOf(trial)) pipeline.putSource(hash, source);
  return pipeline.run(trial.project, QUIET_WORK, { date: '2026-01-01' });
}

/** Some edges of its faces, and seldom one that is none. */
function someEdges({ faces, corners, seams }: Solid, rand: () => number): [number, number][] {
  const share = pick([0, 0.1, 0.1, 0.3, 0.6], rand);
  const own = faces.flatMap((face) => face.map((v, k): [number, number] => [v, face[(k + 1) % face.length]]));
  const none: [number, number][] = rand() < 0.1 ? [[0, Math.floor(rand() * corners.length)]] : [];
  return [...seams.map(([a, b]): [number, number] => [a, b]), ...own.filter(() => rand() < share), ...none].filter(
    ([a, b]) => a !== b,
  );
}

/** Every face as triangles from its first corner, in words; without a normal of its own, which readers need not believe. */
function stlOf({ corners, faces }: Solid): Uint8Array {
  const rows = faces.flatMap((face) =>
    face.slice(2).map((_, k) => {
      const lines = [face[0], face[k + 1], face[k + 2]].map((v) => `vertex ${corners[v].join(' ')}`);
      return `facet normal 0 0 0\nouter loop\n${lines.join('\n')}\nendloop\nendfacet`;
    }),
  );
  return new TextEncoder().encode(`solid broken\n${rows.join('\n')}\nendsolid broken\n`);
}
