import { Memo } from '../base/memo.ts';
import type { Finding } from '../base/finding.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import { boxOfPoints3 } from '../mesh/measure.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { ModelFacts } from '../model/model-facts.ts';
import type { SourceModel } from '../model/source-model.ts';
import type { SourceRef } from '../project/project.ts';
import { factSteps } from '../steps/read/facts.ts';
import { findFaults } from '../steps/read/faults.ts';
import { readModel } from '../steps/read/read-model.ts';
import { repairSteps } from '../steps/read/repair.ts';
import { canBeBuilt, meshFromModel, sizeFindings } from '../steps/read/size.ts';
import { followedBy, mmPerUnitOfPart } from './body-size.ts';
import type { SizedSculpt } from './outcome.ts';
import { rememberedSteps } from './remembered.ts';
import { Stopped } from './run.ts';
import type { SculptRun } from './sculpt-run.ts';

/** A source file kept beside the document. */
export interface Source {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  /** Gives what was read from it already, once. */
  takeRead?(): SourceModel | undefined;
}

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/** From the file to a sculpt in mm: read, repaired, sized and looked over. */
export class SculptStage {
  readonly #sources: ReadonlyMap<string, Source>;
  readonly #read = new Memo<[string], SourceModel>(3);
  readonly #repaired = new Memo<[SourceModel, unknown], Result<SourceModel>>(KEPT);
  readonly #sized = new Memo<unknown[], { sculpt: SizedSculpt; findings: readonly Finding[] }>(KEPT);
  readonly #facts = new Memo<[SourceModel], ModelFacts>(KEPT);
  readonly #faults = new Memo<[Mesh], readonly Finding[]>(KEPT);

  /** @param sources  files by the SHA-256 of their bytes. */
  constructor(sources: ReadonlyMap<string, Source>) {
    this.#sources = sources;
  }

  /** The model in a file that was put here. Fails with `read/no-source` where it was not, else as `readModel` does. */
  async read({ hash, fileName }: Pick<SourceRef, 'hash' | 'fileName'>, work: Work): Promise<Result<SourceModel>> {
    const known = this.#read.get([hash]);
    if (known !== undefined) return ok(known);
    const kept = this.#sources.get(hash);
    if (kept === undefined) return fail('read/no-source', `The file ${fileName} is not here: choose it again.`);
    const ahead = kept.takeRead?.();
    const read = ahead === undefined ? await readModel(kept.bytes, fileName, work) : ok(ahead);
    if (read.ok) this.#read.set([hash], read.value);
    return read;
  }

  /** Puts the sculpt of the run's part into the run. */
  async make(run: SculptRun, work: Work): Promise<void> {
    const { source } = run.part;
    const isNew = this.#read.get([source.hash]) === undefined;
    const read = await this.read(source, shareOfWork(work, 0, 0.6));
    if (!read.ok) throw new Stopped('read', read.problem);
    const model = read.value;
    if (isNew) run.made('read');
    run.findings.push(...model.findings);
    const { repairs } = run.part;
    const look = shareOfWork(work, 0.6, 0.7);
    await look.pause(0, 'looking the model over');
    const repairing = rememberedSteps(this.#repaired, [model, repairs], () => repairSteps(model, repairs), look);
    const repaired = run.take('read', await repairing).value;
    const { sculpt, findings } = await this.#size(run, repaired, look);
    run.sculpt = sculpt;
    run.findings.push(...findings);
    let faults = this.#faults.get([sculpt.mesh]);
    if (faults === undefined) {
      faults = await findFaults(repaired, sculpt.mesh, shareOfWork(work, 0.7, 1));
      this.#faults.set([sculpt.mesh], faults);
    }
    run.findings.push(...faults);
    if (sculpt.mmPerUnit === null) {
      throw new Stopped(
        'size',
        fail('size/unknown', 'The file does not say how large the sculpt is: give its unit or one real measure.')
          .problem,
      );
    }
    // It is on the bench by now, so that its size can be mended; all that follows would take longer the larger it is.
    run.take('size', canBeBuilt(sidesOf(sculpt.mesh)));
  }

  async #size(
    run: SculptRun,
    model: SourceModel,
    work: Work,
  ): Promise<{ sculpt: SizedSculpt; findings: readonly Finding[] }> {
    const { scale } = run.part;
    const key = [model, scale, ...followedBy(run.part, run.project.body)];
    const known = this.#sized.get(key);
    if (known !== undefined) return known;
    const sized =
      scale === null ? null : run.take('size', mmPerUnitOfPart(model, { ...run.part, scale }, run.project.body));
    const mmPerUnit = sized?.value ?? null;
    const mesh = meshFromModel(model, mmPerUnit ?? 1);
    const findings = sized === null ? [] : [...sized.notes, ...sizeFindings(sidesOf(mesh))];
    await work.pause(0.5);
    const facts = await rememberedSteps(this.#facts, [model], () => factSteps(model), work);
    run.made('size');
    return this.#sized.set(key, { sculpt: { model, facts, mesh, mmPerUnit }, findings });
  }
}

/** Sides of the upright box, mm. */
function sidesOf({ positions }: Mesh): readonly [number, number, number] {
  const { min, max } = boxOfPoints3(positions);
  return [max.x - min.x, max.y - min.y, max.z - min.z];
}
