import type { Finding } from '../base/finding.ts';
import { Memo } from '../base/memo.ts';
import type { Problem, Result } from '../base/result.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import { cutAlongSteps, type CutMesh } from '../mesh/lines/cut-along.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologySteps } from '../mesh/topology.ts';
import type { SeamMarks, SeamPath } from '../model/seams.ts';
import type { SurfaceLine } from '../model/surface-line.ts';
import type { EdgePair } from '../project/commands.ts';
import { namedPath, pathName } from '../project/path-names.ts';
import type { SculptPart } from '../project/project.ts';
import { edgeParts, finerMarks, type FinerMarks } from '../steps/seams/finer-marks.ts';
import { pathLineSteps } from '../steps/seams/path-line.ts';
import { facePolygons } from '../steps/seams/surface-points.ts';
import type { SizedSculpt } from './outcome.ts';
import { remembered, rememberedSteps } from './remembered.ts';
import { Stopped } from './run.ts';
import type { OwnSurface, SculptRun } from './sculpt-run.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 16;
/** Lines of single paths kept: those of a few drawings. */
const KEPT_LINES = 256;

/** One object, so that what is made without any is remembered. */
const NO_SCORES: FinerMarks['scores'] = [];

/** The sculpt cut along the paths that are drawn on it. */
export interface DrawnSurface extends OwnSurface {
  readonly cut: CutMesh;
  /** Numbers of the paths that were cut, from 0, one for each line of `cut`. */
  readonly pathOfLine: readonly number[];
  /** What is wished of edges and seams as the document names them: by edges of the sculpt, and by paths (`pathName`). */
  readonly named: Pick<SculptPart, 'edgeWishes' | 'seamSettings'>;
  /** The edge of the finer mesh, in its file numbers, at which what is so named begins; others stay as they are. */
  readonly placed: (edge: EdgePair) => EdgePair;
}

interface FoundLines {
  readonly paths: readonly SeamPath[];
  readonly lines: readonly SurfaceLine[];
  readonly numbers: readonly number[];
  readonly lost: readonly { readonly number: number; readonly problem: Problem }[];
}

/** Seams across faces: the paths of a part become edges of a finer mesh, and what was said of edges of the sculpt is said of theirs. */
export class DrawnLines {
  readonly #lines = new Memo<unknown[], Result<SurfaceLine>>(KEPT_LINES);
  readonly #found = new Memo<unknown[], FoundLines>(KEPT);
  readonly #cuts = new Memo<unknown[], CutMesh>(KEPT);
  readonly #marks = new Memo<unknown[], FinerMarks>(KEPT);

  /**
   * @returns null where no path is drawn, so that all is made on the sculpt itself. Of a project, paths that have lost their place are left
   *          out and told; of a seam file they stop the run.
   */
  async of(run: SculptRun, work: Work): Promise<{ surface: DrawnSurface | null; findings: readonly Finding[] }> {
    const { part } = run;
    if (part.seams.paths.length === 0) return { surface: null, findings: [] };
    const sculpt = run.needSculpt();
    const { mesh } = sculpt;
    await work.pause(0, 'drawing lines across faces');
    await runWithPauses(topologySteps(mesh), () => work.pause(0));
    const found = await this.#linesOf(sculpt, part.seams, work);
    const [first] = found.lost;
    if (first !== undefined && run.choices.strictSeams === true) throw new Stopped('seams', first.problem);
    const findings = found.lost.map(({ problem }): Finding => ({ ...problem, severity: 'warning' }));
    if (found.lines.length === 0) return { surface: null, findings };
    const cut = await this.#cutAlong(sculpt, found, work);
    const { seams, seamSettings, edgeWishes, scores = NO_SCORES } = part;
    const said = { seamSettings, edgeWishes, scores };
    const marks = remembered(this.#marks, [cut, seams, seamSettings, edgeWishes, scores], () =>
      finerMarks(mesh, cut, { edges: seams.edges, paths: found.paths }, said),
    );
    const { scores: finerScores, ...wishes } = marks;
    const own = { ...part, ...wishes, ...(part.scores === undefined ? {} : { scores: finerScores }) };
    return {
      surface: {
        mesh: cut.mesh,
        sourceOfTriangle: cut.sourceOfTriangle,
        part: own,
        cut,
        pathOfLine: found.numbers,
        named: namedWishes(part),
        placed: placing(mesh, cut, found.numbers),
      },
      findings,
    };
  }

  async #linesOf({ model, mesh }: SizedSculpt, seams: SeamMarks, work: Work): Promise<FoundLines> {
    const known = this.#found.get([mesh, seams]);
    if (known !== undefined) return known;
    const polygons = facePolygons(model);
    const found: { path: SeamPath; line: SurfaceLine; number: number }[] = [];
    const lost: { number: number; problem: Problem }[] = [];
    for (const [number, path] of seams.paths.entries()) {
      await work.pause(0);
      // By what its points say: a path that stays is another object after the document crossed to the worker.
      const key = [mesh, number, JSON.stringify(path.points)];
      const line = await rememberedSteps(this.#lines, key, () => pathLineSteps(mesh, polygons, path, number + 1), work);
      if (line.ok) found.push({ path, line: line.value, number });
      else lost.push({ number, problem: line.problem });
    }
    return this.#found.set([mesh, seams], {
      paths: found.map(({ path }) => path),
      lines: found.map(({ line }) => line),
      numbers: found.map(({ number }) => number),
      lost,
    });
  }

  /** The same cut as long as the lines are the same, whatever else is said of the paths. */
  async #cutAlong({ mesh }: SizedSculpt, { lines }: FoundLines, work: Work): Promise<CutMesh> {
    const key = [mesh, ...lines];
    const known = this.#cuts.get(key);
    if (known !== undefined) return known;
    const steps: Stepwise<CutMesh> = cutAlongSteps(mesh, lines);
    return this.#cuts.set(key, await runWithPauses(steps, () => work.pause(0.5)));
  }
}

/** Wishes of paths among those of the sculpt's edges. */
function namedWishes({ edgeWishes, seamSettings, seams }: SculptPart): Pick<SculptPart, 'edgeWishes' | 'seamSettings'> {
  const carried = seams.paths.map((path, i) => ({ ...path, edge: pathName(i) }));
  return {
    edgeWishes: [
      ...edgeWishes,
      ...carried.filter(({ holdLength, straight }) => holdLength === true || straight === true),
    ],
    seamSettings: [
      ...seamSettings,
      ...carried.flatMap(({ edge, kind, allowanceMm = 0, steep }) =>
        kind === 'butt' && allowanceMm === 0 && steep === undefined
          ? []
          : [{ edge, kind, allowanceMm, ...(steep === undefined ? {} : { steep }) }],
      ),
    ],
  };
}

function placing(mesh: Mesh, cut: CutMesh, pathOfLine: readonly number[]): DrawnSurface['placed'] {
  const partsOf = edgeParts(mesh, cut);
  const { fileVertex } = cut.mesh;
  return (edge) => {
    const path = namedPath(edge);
    if (path === null) return partsOf(edge)[0];
    const line = cut.lines[pathOfLine.indexOf(path)] ?? [];
    return line.length < 2 ? edge : [fileVertex[line[0]], fileVertex[line[1]]];
  };
}
