// An independent look at an order of gluing, on the mesh itself: it shares nothing with the product but the figures of shared/hand-reach.json.
// Bodies are flooded triangle by triangle, rims walked from half-edge to half-edge round the corners, ways relaxed until nothing changes
// (Bellman 1958, Ford 1956).
import { readFileSync } from 'node:fs';

interface Figures {
  readonly bowlShare: number;
  readonly reaches: readonly { readonly rimMm: number; readonly reachMm: number }[];
}
const FIGURES = JSON.parse(readFileSync('shared/hand-reach.json', 'utf8')) as Figures;

export interface Sculpt {
  readonly positions: ArrayLike<number>;
  readonly triangles: ArrayLike<number>;
}

/** Seams as rows of vertices, in the order in which they are glued. */
export type Rows = readonly ArrayLike<number>[];

/** Which seams (by their place in the order) no hand reaches when they are pressed; all seams of the sculpt must be told. */
export function unreachedInOrder(sculpt: Sculpt, rows: Rows): readonly number[] {
  const closed = new Set<string>();
  const isSeam = new Set<string>();
  for (const row of rows) for (const key of keysOf(row)) isSeam.add(key);
  const missed: number[] = [];
  const known = halfEdges(sculpt);
  rows.forEach((row, i) => {
    for (const key of keysOf(row)) closed.add(key);
    if (!isRowReached(known, row, isSeam, closed)) missed.push(i);
  });
  return missed;
}

const keyOf = (a: number, b: number): string => (a < b ? `${a}_${b}` : `${b}_${a}`);
const keysOf = (row: ArrayLike<number>): string[] =>
  Array.from({ length: row.length - 1 }, (_, i) => keyOf(row[i], row[i + 1]));

interface HalfEdges {
  readonly count: number;
  readonly key: readonly string[];
  readonly mate: readonly number[];
  readonly mm: readonly number[];
}

/** Of each half-edge its edge, the one across and its length. */
function halfEdges({ positions, triangles }: Sculpt): HalfEdges {
  const from = (h: number): number => triangles[h];
  const to = (h: number): number => triangles[h - (h % 3) + ((h + 1) % 3)];
  const all = Array.from({ length: triangles.length }, (_, h) => h);
  const byWay = new Map<string, number[]>();
  for (const h of all) {
    const way = `${from(h)}>${to(h)}`;
    byWay.set(way, [...(byWay.get(way) ?? []), h]);
  }
  return {
    count: triangles.length,
    key: all.map((h) => keyOf(from(h), to(h))),
    mate: all.map((h) => {
      const mates = byWay.get(`${to(h)}>${from(h)}`) ?? [];
      return mates.length === 1 && byWay.get(`${from(h)}>${to(h)}`)?.length === 1 ? mates[0] : -1;
    }),
    mm: all.map((h) =>
      Math.sqrt([0, 1, 2].reduce((sum, k) => sum + (positions[3 * from(h) + k] - positions[3 * to(h) + k]) ** 2, 0)),
    ),
  };
}

function isRowReached(
  { count, key, mate, mm }: HalfEdges,
  row: ArrayLike<number>,
  isSeam: Set<string>,
  closed: Set<string>,
): boolean {
  const across = mate.map((other, h) => (isSeam.has(key[h]) && !closed.has(key[h]) ? -1 : other));
  // The body: triangles that hang together with those beside the row.
  const rowKeys = new Set(keysOf(row));
  const body = new Set<number>();
  const flood = key.flatMap((edge, h) => (rowKeys.has(edge) ? [Math.floor(h / 3)] : []));
  for (let t = flood.pop(); t !== undefined; t = flood.pop()) {
    if (body.has(t)) continue;
    body.add(t);
    for (let h = 3 * t; h < 3 * t + 3; h += 1) if (across[h] >= 0) flood.push(Math.floor(across[h] / 3));
  }
  // A corner of foam: all half-edges that leave one vertex and are joined round it.
  const cornerOf = new Int32Array(count).fill(-1);
  const nextRound = (h: number): number => {
    const before = h - (h % 3) + ((h + 2) % 3);
    return across[before];
  };
  const backRound = (h: number): number => {
    if (across[h] < 0) return -1;
    const mate = across[h];
    return mate - (mate % 3) + ((mate + 1) % 3);
  };
  for (const t of body) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      if (cornerOf[h] >= 0) continue;
      const open = [h];
      for (let g = open.pop(); g !== undefined; g = open.pop()) {
        if (cornerOf[g] >= 0) continue;
        cornerOf[g] = h;
        for (const other of [nextRound(g), backRound(g)]) if (other >= 0) open.push(other);
      }
    }
  }
  const corner = (h: number): number => cornerOf[h];
  const after = (h: number): number => h - (h % 3) + ((h + 1) % 3);
  // Rims: from the end of a free half-edge round its corner to the next free one.
  const free = [...body].flatMap((t) => [3 * t, 3 * t + 1, 3 * t + 2]).filter((h) => across[h] < 0);
  const seen = new Set<number>();
  const need = new Float64Array(count).fill(Infinity);
  const lower = (at: number, value: number): void => {
    need[at] = Math.min(need[at], value);
  };
  for (const first of free) {
    if (seen.has(first)) continue;
    const rim: number[] = [];
    for (let h = first; !seen.has(h);) {
      seen.add(h);
      rim.push(h);
      let g = after(h);
      while (across[g] >= 0) g = after(across[g]);
      h = g;
    }
    const length = rim.reduce((sum, h) => sum + mm[h], 0);
    let reach = FIGURES.bowlShare * length;
    for (const { rimMm, reachMm } of FIGURES.reaches) if (length >= rimMm) reach = Math.max(reach, reachMm);
    for (const h of rim) {
      lower(corner(h), -reach);
      lower(corner(after(h)), -reach);
    }
  }
  // Relax all sides of all triangles until nothing changes.
  for (let changed = true; changed;) {
    changed = false;
    for (const t of body) {
      for (let h = 3 * t; h < 3 * t + 3; h += 1) {
        const [a, b] = [corner(h), corner(after(h))];
        if (need[a] + mm[h] < need[b] || need[b] + mm[h] < need[a]) {
          need[b] = Math.min(need[b], need[a] + mm[h]);
          need[a] = Math.min(need[a], need[b] + mm[h]);
          changed = true;
        }
      }
    }
  }
  for (const t of body) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      if (!rowKeys.has(key[h])) continue;
      const [a, b] = [need[corner(h)], need[corner(after(h))]];
      // The middle between both is the place that is hardest to come to.
      if (Math.max(a, b, (a + b + mm[h]) / 2) > 1e-9) return false;
    }
  }
  return true;
}
