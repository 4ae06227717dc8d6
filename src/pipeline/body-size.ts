import type { Finding } from '../base/finding.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { runAtOnce } from '../base/stepwise.ts';
import { boxOfPoints3 } from '../mesh/measure.ts';
import { surfaceOf } from '../mesh/surface.ts';
import { bodyFindings, kindOfMeasure, type BodyMeasure, type BodyTie } from '../model/body-measures.ts';
import type { GirthTape } from '../model/girth.ts';
import type { ScaleChoice, SourceModel } from '../model/source-model.ts';
import type { SculptPart } from '../project/project.ts';
import { meshFromModel, mmPerUnitOf } from '../steps/read/size.ts';
import { offsetsOf } from '../steps/shell/mesh-offsets.ts';
import { scaleForGirth } from '../steps/wear/scale-to-body.ts';
import { wallSpan } from './layer-plan.ts';

/** What a part tied to the body is sized from. */
export type SizedByBody = Pick<SculptPart, 'layers' | 'modelIs' | 'offMm' | 'tapes'>;

/** How many mm one unit of the file is, however the part's size is known. Fails as `mmPerUnitOf` and {@link scaleByBody} do. */
export function mmPerUnitOfPart(
  model: SourceModel,
  part: SizedByBody & { readonly scale: ScaleChoice },
  measures: readonly BodyMeasure[] = [],
): Result<number> {
  const { scale } = part;
  return scale.by === 'body' ? scaleByBody(model, scale, measures, part) : mmPerUnitOf(model, scale);
}

/** All that a size follows beside the model and the choice itself, fit to remember it by: the measure, the wall and the tape. */
export function followedBy(
  { scale, layers, modelIs, offMm = 0, tapes = [] }: SizedByBody & { readonly scale: ScaleChoice | null },
  measures: readonly BodyMeasure[] = [],
): readonly unknown[] {
  if (scale?.by !== 'body') return [];
  const mm = measures.find(({ name }) => name === scale.measure)?.mm;
  const { at } = scale;
  if (at.by === 'extent') return [mm];
  return [mm, wallSpan({ layers, modelIs, offMm }).backMm, tapes.find(({ id }) => id === at.tape)];
}

/** Scales beyond this are no size anyone meant, mm per unit. */
const MOST_SCALE = 1e12;

/**
 * How many mm one unit of the file is when a part follows the body. The size is worked out from tie, measure and wall each time, and never stored: seams,
 * marks and tapes stand in the numbers of the file and follow by themselves.
 * @returns with a note that says what came of it; fails with `size/no-measure`, `size/no-tape`, `size/flat` or `size/no-fit`.
 */
export function scaleByBody(
  model: SourceModel,
  tie: BodyTie,
  measures: readonly BodyMeasure[],
  part: SizedByBody,
): Result<number> {
  const kind = kindOfMeasure(tie.measure);
  const measure = measures.find(({ name }) => name === kind?.name);
  if (kind === undefined || measure === undefined)
    return fail(
      'size/no-measure',
      `The part follows ${kind?.title.toLowerCase() ?? tie.measure}, which was not measured: type it into the table of body measures, or size the part otherwise.`,
    );
  const sized = tie.at.by === 'extent' ? byExtent(model, tie, measure.mm) : byTape(model, tie, measure.mm, part);
  if (!sized.ok) return sized;
  if (!(sized.value > 1 / MOST_SCALE && sized.value < MOST_SCALE)) return noFit(kind.title, measure.mm, tie.easeMm);
  return ok(sized.value, [...bodyFindings([measure]), sizeNote(model, sized.value, kind.title, measure.mm, tie)]);
}

function byExtent(model: SourceModel, { easeMm, at, measure }: BodyTie, mm: number): Result<number> {
  if (at.by !== 'extent') throw new Error('body: not tied by an extent');
  const { min, max } = boxOfPoints3(model.positions);
  const size = { x: max.x - min.x, y: max.y - min.y, z: max.z - min.z };
  const extent = at.axis === 'longest' ? Math.max(size.x, size.y, size.z) : size[at.axis];
  if (!(extent > 0)) return fail('size/flat', `The sculpt has no extent along ${at.axis}: tie it along another axis.`);
  const wanted = at.share * mm + easeMm;
  return wanted > 0 ? ok(wanted / extent) : noFit(measure, mm, easeMm);
}

function byTape(model: SourceModel, { measure, easeMm, at }: BodyTie, mm: number, part: SizedByBody): Result<number> {
  if (at.by !== 'tape') throw new Error('body: not tied by a tape');
  const tape = part.tapes?.find(({ id }) => id === at.tape);
  if (tape === undefined)
    return fail(
      'size/no-tape',
      'The tape by which the part follows the body is gone: lay one, or tie the part along an axis.',
    );
  const wanted = mm + easeMm;
  if (!(wanted > 0)) return noFit(measure, mm, easeMm);
  const mesh = meshFromModel(model, 1);
  const shell = {
    sculpt: surfaceOf(mesh),
    directions: runAtOnce(offsetsOf(mesh)).directions,
    backMm: wallSpan(part).backMm,
  };
  const scale = scaleForGirth(shell, planeInFile(tape), wanted);
  return scale === null ? noFit(tape.name, mm, easeMm) : ok(scale);
}

const planeInFile = ({ pointInFile: [x, y, z], normal: [a, b, c] }: GirthTape) => ({
  point: { x, y, z },
  normal: { x: a, y: b, z: c },
});

const noFit = (where: string, mm: number, easeMm: number): Result<never> =>
  fail(
    'size/no-fit',
    `No size of the sculpt gives ${Number((mm + easeMm).toFixed(1))} mm at ${where} inside foam this thick: move the tape, or take thinner foam.`,
  );

function sizeNote(model: SourceModel, scale: number, title: string, mm: number, { easeMm }: BodyTie): Finding {
  const { min, max } = boxOfPoints3(model.positions);
  const longest = scale * Math.max(max.x - min.x, max.y - min.y, max.z - min.z);
  const ease = Number(easeMm.toFixed(1));
  return {
    code: 'size/by-body',
    severity: 'note',
    text: `Sized by the body: ${title.toLowerCase()} ${Number(mm.toFixed(1))} mm ${ease < 0 ? `less ${-ease}` : `and ${ease}`} mm of ease make the sculpt ${Number(longest.toFixed(1))} mm long.`,
    value: longest,
    unit: 'mm',
    where: {},
  };
}

/** What a change of measure does to a size, to be told beside the change; none where it is the same to 0.05 mm. */
export function resizedFinding(name: string, oldLongestMm: number, newLongestMm: number): readonly Finding[] {
  if (Math.abs(newLongestMm - oldLongestMm) < 0.05) return [];
  return [
    {
      code: 'size/follows-body',
      severity: 'note',
      text: `${name} follows the body: ${oldLongestMm.toFixed(1)} mm long before, ${newLongestMm.toFixed(1)} mm now.`,
      value: newLongestMm,
      unit: 'mm',
      where: {},
    },
  ];
}
