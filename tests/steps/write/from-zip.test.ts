import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { fileFromZip, isZip } from '../../../src/steps/write/from-zip.ts';

const zip = (files: Record<string, string>): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])), { level: 0 });

/** Where the list at the end tells of the last file (APPNOTE 4.3.12). */
const lastEntry = (bytes: Uint8Array): number => Buffer.from(bytes).lastIndexOf('PK\u0001\u0002', undefined, 'latin1');

describe('a file in a zip', () => {
  it('is the first whose name ends so', () => {
    const bytes = zip({ 'read-me.txt': 'no', 'a/helm.foamloft.json': 'first', 'mask.foamloft.json': 'second' });
    expect(isZip(bytes)).toBe(true);
    expect(fileFromZip(bytes, '.foamloft.json')).toEqual(strToU8('first'));
    expect(fileFromZip(bytes, '.obj')).toBeNull();
  });

  it('is the only one that is unpacked: what others claim is never made room for', () => {
    const bytes = zip({ 'helm.foamloft.json': 'first', 'mask.foamloft.json': 'second' });
    // The list at the end says that the second is packed in a way nobody knows.
    bytes[lastEntry(bytes) + 10] = 99;
    expect(fileFromZip(bytes, '.foamloft.json')).toEqual(strToU8('first'));
  });

  it('is none where the zip is damaged, or claims more than half a gigabyte', () => {
    const bytes = zip({ 'helm.foamloft.json': 'first' });
    expect(fileFromZip(bytes.subarray(0, 40), '.foamloft.json')).toBeNull();
    new DataView(bytes.buffer, bytes.byteOffset).setUint32(lastEntry(bytes) + 24, 0x20000001, true);
    expect(fileFromZip(bytes, '.foamloft.json')).toBeNull();
  });
});
