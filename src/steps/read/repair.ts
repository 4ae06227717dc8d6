import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { Repair, SourceModel } from '../../model/source-model.ts';
import { closeHoleSteps } from './close-hole.ts';
import { doubledFaces } from './doubled-faces.ts';
import { emptyFaces, faceAreaSteps } from './face-areas.ts';
import { orientSteps, turnFaces } from './orient-faces.ts';
import { selectFaces } from './select-faces.ts';
import { shellSteps } from './shell-of-faces.ts';
import { sideLinkSteps } from './side-links.ts';

/**
 * Makes the repairs that the maker asked for, one after the other. The numbers of the file stay valid: what is dropped leaves its number
 * unused, what is added comes after all others.
 * @returns the very same model when nothing was asked for or nothing was to be done; a Problem when a repair cannot be made.
 */
export function applyRepairs(model: SourceModel, repairs: readonly Repair[]): Result<SourceModel> {
  return runAtOnce(repairSteps(model, repairs));
}

/** The same in stretches. */
export function* repairSteps(model: SourceModel, repairs: readonly Repair[]): Stepwise<Result<SourceModel>> {
  let repaired = model;
  const notes: Finding[] = [];
  for (const repair of repairs) {
    const result = yield* stepsOf(repaired, repair);
    yield;
    if (!result.ok) return result;
    repaired = result.value;
    notes.push(...result.notes);
  }
  return ok(repaired, notes);
}

function* stepsOf(model: SourceModel, repair: Repair): Stepwise<Result<SourceModel>> {
  switch (repair.kind) {
    case 'turn-faces':
      return yield* turnOutward(model);
    case 'drop-doubled':
      return dropFaces(model, doubledFaces(model));
    case 'drop-empty':
      return dropFaces(model, emptyFaces(yield* faceAreaSteps(model)));
    case 'close-hole':
      return yield* closeHoleSteps(model, repair.edge);
    case 'keep-shell':
      return yield* keepShell(model, repair.vertex);
  }
}

function* turnOutward(model: SourceModel): Stepwise<Result<SourceModel>> {
  const links = yield* sideLinkSteps(model);
  const { turn, turnedCount, oneSided } = yield* orientSteps(model, links, yield* faceAreaSteps(model));
  yield;
  const notes: Finding[] = oneSided.length === 0 ? [] : [oneSidedNote(oneSided.length)];
  return ok(turnedCount === 0 ? model : turnFaces(model, turn), notes);
}

const oneSidedNote = (count: number): Finding => ({
  code: 'read/one-sided',
  severity: 'warning',
  text: `${count === 1 ? 'One surface has' : `${count} surfaces have`} only one side, like a Möbius band, and was not turned: cut it in your modelling program.`,
  value: count,
  where: {},
});

function dropFaces(model: SourceModel, faces: readonly number[]): Result<SourceModel> {
  if (faces.length === 0) return ok(model);
  const isKept = new Uint8Array(model.faceNumber.length).fill(1);
  for (const f of faces) isKept[f] = 0;
  if (!isKept.includes(1)) return fail('read/nothing-left', 'This would drop every face of the sculpt: undo it.');
  return ok(selectFaces(model, isKept));
}

/** Keeps what hangs together by edges with a face at the vertex. @param fileVertex a number of the file. */
function* keepShell(model: SourceModel, fileVertex: number): Stepwise<Result<SourceModel>> {
  const vertex = model.vertexOfFile[fileVertex] ?? -1;
  if (vertex < 0)
    return fail('read/no-vertex', `The sculpt has no vertex ${fileVertex}: choose one of the surface to keep.`);
  const shells = yield* shellSteps(model);
  const wanted = new Set<number>();
  for (let f = 0; f < shells.length; f += 1) {
    if (model.faceVertices.subarray(model.faceStarts[f], model.faceStarts[f + 1]).includes(vertex))
      wanted.add(shells[f]);
  }
  const isKept = Uint8Array.from(shells, (shell) => (wanted.has(shell) ? 1 : 0));
  return ok(isKept.includes(0) ? selectFaces(model, isKept) : model);
}
