import { fail, ok, type Result } from '../../base/result.ts';
import type { Work } from '../../base/work.ts';
import { coordinateSizeFault, isUsable } from './coordinate-fault.ts';
import { MOST_TRIANGLES } from './limits.ts';
import { PointTable } from './point-table.ts';
import type { RawModel } from './raw-model.ts';

/** A binary STL is 80 bytes of anything, a count, and 50 bytes for each facet: normal, three corners, two bytes of anything. */
const HEADER_BYTES = 84;
const FACET_BYTES = 50;

/** How many facets are read between two pauses. */
const STRIDE = 1 << 14;

/** How many facets the header promises; null when the file is too short to say. */
export const promisedFacets = (bytes: Uint8Array): number | null =>
  bytes.length < HEADER_BYTES ? null : viewOf(bytes).getUint32(80, true);

/** How many whole facets fit into the bytes after the header. */
export const heldFacets = (bytes: Uint8Array): number =>
  Math.max(0, Math.floor((bytes.length - HEADER_BYTES) / FACET_BYTES));

/** True when the size is exactly what the header promises: the one sure sign, for many binary files begin with the word `solid` too. */
export function hasBinaryStlSize(bytes: Uint8Array): boolean {
  const promised = promisedFacets(bytes);
  return promised !== null && bytes.length === HEADER_BYTES + FACET_BYTES * promised;
}

/**
 * Reads a binary STL. The stored normals are not used: they are often wrong, and the order of corners says the same.
 * Up to 49 stray bytes at the end are passed over.
 */
export async function readBinaryStl(bytes: Uint8Array, work: Work): Promise<Result<RawModel>> {
  const promised = promisedFacets(bytes);
  const held = heldFacets(bytes);
  if (promised === null) {
    return fail(
      'read/stl-truncated',
      `The file ends after ${bytes.length} bytes, before a binary STL says how many facets it has: export the sculpt again.`,
    );
  }
  if (held < promised) {
    return fail(
      'read/stl-truncated',
      `The file is cut short: it promises ${promised} facets and holds ${held}, so copy or export it again.`,
    );
  }
  if (held > promised) {
    return fail(
      'read/stl-count',
      `The file promises ${promised} facets and holds ${held}, so some would be lost: export the sculpt again.`,
    );
  }
  if (promised === 0)
    return fail('read/no-faces', 'The file is a binary STL without a facet: export the sculpt again.');
  if (promised > MOST_TRIANGLES) {
    return fail(
      'read/too-large',
      `The file has ${promised} triangles, more than the ${MOST_TRIANGLES} that fit: reduce the mesh in your modelling program first.`,
    );
  }
  const view = viewOf(bytes);
  const table = new PointTable(Math.ceil(promised / 1.8));
  const corners = new Uint32Array(3 * promised);
  for (let facet = 0; facet < promised; facet += 1) {
    if (facet % STRIDE === 0) await work.pause(facet / promised, 'reading the model');
    const at = HEADER_BYTES + FACET_BYTES * facet + 12;
    for (let k = 0; k < 3; k += 1) {
      const x = view.getFloat32(at + 12 * k, true);
      const y = view.getFloat32(at + 12 * k + 4, true);
      const z = view.getFloat32(at + 12 * k + 8, true);
      if (!(isUsable(x) && isUsable(y) && isUsable(z))) {
        return coordinateSizeFault(isUsable(x) ? (isUsable(y) ? z : y) : x, `in facet ${facet + 1}`);
      }
      corners[3 * facet + k] = table.numberOf(x, y, z);
    }
  }
  return ok({
    format: 'stl',
    points: table.points,
    colours: null,
    cornersInFile: 3 * promised,
    faceStarts: new Uint32Array(promised + 1).map((_, f) => 3 * f),
    faceCorners: corners,
    groupNames: [],
    groupOfFace: new Int32Array(promised).fill(-1),
    placeOfFace: (f) => `facet ${f + 1}`,
    findings: [],
  });
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
