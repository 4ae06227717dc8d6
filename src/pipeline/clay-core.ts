import { fail, ok, type Result } from '../base/result.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Clay } from '../model/clay.ts';
import type { ClayCore, ClayCoreWish } from '../model/clay-core.ts';
import type { PlainWork } from '../model/plain-piece.ts';
import type { Stack } from '../model/stack.ts';
import { areaSolid } from '../steps/clay-core/area-solid.ts';
import { clayFigures } from '../steps/clay-core/clay-figures.ts';
import { claySteps } from '../steps/clay-core/clay-steps.ts';
import { makeStack } from '../steps/stack/make-stack.ts';
import { stackWork } from '../steps/stack/stack-work.ts';

/** An area in clay: its figures, the core of sheets (null where none fits and all is clay), and the work on both. */
export interface ClayCoreMade {
  readonly figures: ClayCore;
  readonly core: Stack | null;
  readonly work: PlainWork;
}

/**
 * An area of a sculpt in clay over a stepped core of sheet: closed to a solid, the solid stacked by its smaller face under the cover, what is left over
 * measured.
 * @param faces   polygons of the file.
 * @param wallMm  thickness of the wall round the area, mm: what its rim is glued on; 0 where none is known.
 * @returns fails as `areaSolid` and `makeStack` do; an area too thin for any sheet is all clay, which is told.
 */
export function clayCoreOf(
  mesh: Mesh,
  faces: readonly number[],
  wish: ClayCoreWish,
  clay: Clay,
  wallMm: number,
): Result<ClayCoreMade> {
  const own = [...new Set(faces)].sort((a, b) => a - b);
  const area = areaSolid(mesh, new Set(own), wish.coverMm, wish.axis);
  if (!area.ok) return area;
  const { axis, solid, skin } = area.value;
  const made = makeStack(solid, {
    axis,
    rule: 'smaller',
    sheetsMm: wish.sheetsMm,
    seat: 'bottom',
    cover: { mm: wish.coverMm, skin },
    ...(wish.wallMm === undefined ? {} : { wallMm: wish.wallMm, openAt: 'bottom' as const }),
  });
  const isBare = !made.ok && (made.problem.code === 'stack/no-core' || made.problem.code === 'stack/too-low');
  if (!made.ok && !isBare)
    // Over several rims the walls down from one run through what stands on another.
    return area.value.borders.length > 1
      ? fail(
          'clay/rims',
          `The area ends at ${area.value.borders.length} rims, and no single core fills it from one of them: mark it in parts that have one rim each.`,
        )
      : made;
  const core = made.ok ? made.value : null;
  const figures = clayFigures(area.value, core, wish, clay, own, wallMm);
  const bare = core === null ? [ALL_CLAY] : [];
  const work = core === null ? { pieces: [], steps: [], findings: [], form: null } : stackWork(core);
  return ok({
    figures: { ...figures, findings: [...figures.findings, ...bare] },
    core,
    work: {
      pieces: work.pieces,
      steps: [
        // Steps of the core are covered, not sanded down or filled for themselves.
        ...work.steps.filter((step) => step.work !== 'fill' && step.work !== 'sand'),
        ...claySteps(
          figures,
          work.pieces.map(({ key }) => key),
        ),
      ],
      findings: [...figures.findings, ...bare],
      form: solid,
    },
  });
}

const ALL_CLAY = {
  code: 'clay/no-core',
  severity: 'note',
  text: 'No sheet fits under this cover, so the area is of clay alone: take a thinner cover or thinner sheets for a core.',
  where: {},
} as const;

/** Polygons that go on to the flattening when areas are modelled in clay; their rims are open edges then. */
export function facesThatStay(
  mesh: Pick<Mesh, 'faceOfTriangle'>,
  cores: readonly Pick<ClayCore, 'faces'>[],
): readonly number[] {
  const gone = new Set(cores.flatMap(({ faces }) => faces));
  return [...new Set(mesh.faceOfTriangle)].filter((face) => !gone.has(face)).sort((a, b) => a - b);
}

/** The sculpt without what is modelled in clay: vertices and faces keep their numbers, so that marks and seams stay where they are. */
export function meshWithout(mesh: Mesh, cores: readonly Pick<ClayCore, 'faces'>[]): Mesh {
  const gone = new Set(cores.flatMap(({ faces }) => faces));
  const kept: number[] = [];
  for (let t = 0; t < mesh.faceOfTriangle.length; t += 1) if (!gone.has(mesh.faceOfTriangle[t])) kept.push(t);
  return {
    ...mesh,
    triangles: Uint32Array.from(kept.flatMap((t) => [...mesh.triangles.subarray(3 * t, 3 * t + 3)])),
    faceOfTriangle: Uint32Array.from(kept, (t) => mesh.faceOfTriangle[t]),
  };
}
