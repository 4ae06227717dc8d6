import type { Finding } from '../base/finding.ts';
import { ok, type Result } from '../base/result.ts';
import type { Work } from '../base/work.ts';
import { turnedMesh, type ProfilePoint } from '../mesh/turned-mesh.ts';
import type { GivenScale } from '../model/source-model.ts';
import type { Stack, StackWish } from '../model/stack.ts';
import { readModel } from '../steps/read/read-model.ts';
import { meshFromModel, mmPerUnitOf } from '../steps/read/size.ts';
import { makeStack } from '../steps/stack/make-stack.ts';

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
  const mmPerUnit = mmPerUnitOf(read.value, scale ?? { by: 'unit', unit: 'mm' });
  if (!mmPerUnit.ok) return mmPerUnit;
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
  const made = makeStack(meshFromModel(read.value, mmPerUnit.value), wish);
  if (!made.ok) return made;
  return ok({ ...made.value, findings: [...assumed, ...made.value.findings] });
}

/** Stacks what is turned round the axis: z of the model. @param profile radius against length, by ascending length. */
export function stackOfProfile(profile: readonly ProfilePoint[], wish: StackWish): Result<Stack> {
  const mesh = turnedMesh(profile);
  return mesh.ok ? makeStack(mesh.value, wish) : mesh;
}
