import type { Finding } from '../../base/finding.ts';
import { contentHash } from '../../base/hash.ts';
import type { Result } from '../../base/result.ts';
import { shareOfWork, type Work } from '../../base/work.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { buildModel } from './build-model.ts';
import { readObj } from './obj.ts';
import type { RawModel } from './raw-model.ts';
import { sniffFormat, type Sniffed } from './sniff-format.ts';
import { readAsciiStl } from './stl-ascii.ts';
import { readBinaryStl } from './stl-binary.ts';

/**
 * Reads a model file: OBJ, or STL in either form. What the file is is told by its size and content, not by its name.
 * A fault in the file ends in a Problem that says where it is and what to do; a face that can be set aside is a finding of the model.
 * @param bytes     the whole file; not changed.
 * @param fileName  with its ending, for doubtful content and for messages.
 * @throws Cancelled when the work was called off.
 */
export async function readModel(bytes: Uint8Array, fileName: string, work: Work): Promise<Result<SourceModel>> {
  await work.pause(0, 'reading the model');
  const sniffed = sniffFormat(bytes, fileName);
  if (!sniffed.ok) return sniffed;
  const raw = await readAs(sniffed, bytes, shareOfWork(work, 0, 0.6));
  if (!raw.ok) return raw;
  const hash = await contentHash(bytes);
  const named = { ...raw.value, findings: [...nameFinding(sniffed, fileName), ...raw.value.findings] };
  return buildModel(named, { fileName, hash }, shareOfWork(work, 0.6, 1));
}

function readAs(sniffed: Sniffed, bytes: Uint8Array, work: Work): Promise<Result<RawModel>> {
  if (sniffed.as === 'obj') return readObj(bytes, sniffed.from, work);
  return sniffed.as === 'stl-ascii' ? readAsciiStl(bytes, sniffed.from, work) : readBinaryStl(bytes, work);
}

function nameFinding({ as }: Sniffed, fileName: string): Finding[] {
  const format = as === 'obj' ? 'obj' : 'stl';
  const ending = /\.(obj|stl)$/i.exec(fileName)?.[1].toLowerCase();
  if (ending === undefined || ending === format) return [];
  return [
    {
      code: 'read/other-ending',
      severity: 'note',
      text: `The name ends in .${ending}, but the file holds ${format.toUpperCase()} and was read as that.`,
      where: {},
    },
  ];
}
