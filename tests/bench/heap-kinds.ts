import type { CDPSession } from 'playwright-core';

/** How many things of each kind a page holds, and their bytes: kinds by the name of what made them. */
export type HeapKinds = ReadonlyMap<string, { readonly count: number; readonly bytes: number }>;

interface Snapshot {
  readonly snapshot: {
    readonly meta: { readonly node_fields: readonly string[]; readonly node_types: readonly unknown[] };
  };
  readonly nodes: readonly number[];
  readonly strings: readonly string[];
}

/** Kinds of nodes that are told by their name; of all others the type says enough. */
const NAMED = new Set(['object', 'native', 'closure', 'array']);

/** Reads a snapshot of a page's heap (V8's own format) after everything unreachable was let go. */
export async function heapKinds(session: CDPSession): Promise<HeapKinds> {
  const parts: string[] = [];
  const hear = ({ chunk }: { chunk: string }): void => void parts.push(chunk);
  session.on('HeapProfiler.addHeapSnapshotChunk', hear);
  await session.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false });
  session.off('HeapProfiler.addHeapSnapshotChunk', hear);
  const { snapshot, nodes, strings } = JSON.parse(parts.join('')) as Snapshot;
  const { node_fields: fields, node_types: types } = snapshot.meta;
  const [type, name, size] = ['type', 'name', 'self_size'].map((field) => fields.indexOf(field));
  const typeNames = types[type] as readonly string[];
  const kinds = new Map<string, { count: number; bytes: number }>();
  for (let i = 0; i < nodes.length; i += fields.length) {
    const kind = typeNames[nodes[i + type]];
    const key = NAMED.has(kind) ? `${kind} ${strings[nodes[i + name]].slice(0, 60)}` : kind;
    const known = kinds.get(key) ?? { count: 0, bytes: 0 };
    kinds.set(key, { count: known.count + 1, bytes: known.bytes + nodes[i + size] });
  }
  return kinds;
}

/** Kinds of which there are more than before, those that grew by most bytes first. */
export function grown(before: HeapKinds, after: HeapKinds, most = 12): readonly string[] {
  return [...after]
    .map(([kind, { count, bytes }]) => {
      const was = before.get(kind) ?? { count: 0, bytes: 0 };
      return { kind, count: count - was.count, bytes: bytes - was.bytes };
    })
    .filter(({ count, bytes }) => count > 0 || bytes > 0)
    .sort((one, other) => other.bytes - one.bytes)
    .slice(0, most)
    .map(({ kind, count, bytes }) => `${kind}: ${count} more, ${(bytes / 1000).toFixed(1)} kB`);
}
