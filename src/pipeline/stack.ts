import type { Finding } from '../base/finding.ts';
import { ok, type Result } from '../base/result.ts';
import type { Work } from '../base/work.ts';
import { turnedMesh, type ProfilePoint } from '../mesh/turned-mesh.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { GivenScale, SourceModel } from '../model/source-model.ts';
import type { Stack, StackWish } from '../model/stack.ts';
import { readModel } from '../steps/read/read-model.ts';
import { meshFromModel, mmPerUnitOf } from '../steps/read/size.ts';
import { makeStack } from '../steps/stack/make-stack.ts';

/** A model in mm. @param scale left out, its numbers are mm. */
export function solidOfModel(model: SourceModel, scale: GivenScale | undefined): Result<Mesh> {
  const mmPerUnit = mmPerUnitOf(model, scale ?? { by: 'unit', unit: 'mm' });
  return mmPerUnit.ok ? ok(meshFromModel(model, mmPerUnit.value)) : mmPerUnit;
}

/** Reads a model and stacks it. @param scale left out, its numbers are mm, which is told. */
export async function stackOfModel(
  bytes: Uint8Array,
  fileName: string,
  scale: GivenScale | undefined,
  wish: StackWish,
  work: Work,
): Promise<Result<Stack>> {
  const read = await readModel(bytes, fileName, work);
  if (!read.ok) return read;
  const solid = solidOfModel(read.value, scale);
  if (!solid.ok) return solid;
  const assumed: readonly Finding[] =
    scale === undefined
      ? [
          {
            code: 'size/assumed',
            severity: 'warning',
            text: 'The file does not say its unit, so its numbers were taken as millimetres: give --unit or --size if that is not so.',
            where: {},
          },
        ]
      : [];
  const made = makeStack(solid.value, wish);
  if (!made.ok) return made;
  return ok({ ...made.value, findings: [...assumed, ...made.value.findings] });
}

/** Stacks what is turned round the axis: z of the model. @param profile radius against length, by ascending length. */
export function stackOfProfile(profile: readonly ProfilePoint[], wish: StackWish): Result<Stack> {
  const mesh = turnedMesh(profile);
  return mesh.ok ? makeStack(mesh.value, wish) : mesh;
}
