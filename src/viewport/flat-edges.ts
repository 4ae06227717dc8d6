import type { FoamPiece } from '../model/foam-piece.ts';

/** How far the face-side and the back-side edge of a flat piece stand from its neutral line, as a displacement of each local vertex, mm. */
export interface FlatEdges {
  /** Packed xy per local vertex; 0 inside the piece. */
  readonly face: Float32Array;
  readonly back: Float32Array;
}

/** Corners are carried to the point where both offset edges meet, at most this many times the offset. */
const MOST_MITRE = 3;

/** The bevelled edges of a piece, brought from the runs of its outline to its local vertices. */
export function flatEdges(piece: FoamPiece): FlatEdges {
  const face = new Float32Array(piece.uv.length);
  const back = new Float32Array(piece.uv.length);
  const rings = [piece.neutralOutline, ...piece.neutralHoles];
  const offsets = rings.map((ring) => ({
    // Of the side that leaves each ring point, at its start and at its end.
    face: new Float64Array(ring.length),
    back: new Float64Array(ring.length),
  }));
  for (const edge of piece.edges) {
    const ring = rings[edge.ring];
    const at = offsets[edge.ring];
    if (ring === undefined || at === undefined) continue;
    const count = ring.length / 2;
    for (let i = 0; i + 1 < edge.stationMm.length; i += 1) {
      const p = (edge.from + i) % count;
      at.face[2 * p] = edge.faceOffsetMm[i];
      at.face[2 * p + 1] = edge.faceOffsetMm[i + 1];
      at.back[2 * p] = edge.backOffsetMm[i];
      at.back[2 * p + 1] = edge.backOffsetMm[i + 1];
    }
  }
  const vertexAt = new Map<string, number>();
  for (let v = 0; v < piece.uv.length / 2; v += 1) vertexAt.set(keyOf(piece.uv, v), v);
  rings.forEach((ring, r) => {
    for (let p = 0; p < ring.length / 2; p += 1) {
      const v = vertexAt.get(keyOf(ring, p));
      if (v === undefined) continue;
      setMitre(face, v, ring, p, offsets[r].face);
      setMitre(back, v, ring, p, offsets[r].back);
    }
  });
  return { face, back };
}

const keyOf = (xy: ArrayLike<number>, i: number): string => `${xy[2 * i].toFixed(6)} ${xy[2 * i + 1].toFixed(6)}`;

/** Displacement of ring point `p` that stands off from both sides meeting there by their own offsets. */
function setMitre(target: Float32Array, v: number, ring: Float64Array, p: number, offsets: Float64Array): void {
  const count = ring.length / 2;
  const before = (p + count - 1) % count;
  const after = (p + 1) % count;
  const m = outwardOf(ring, before, p);
  const n = outwardOf(ring, p, after);
  const a = offsets[2 * before + 1];
  const b = offsets[2 * p];
  const cos = m.x * n.x + m.y * n.y;
  const sin = m.x * n.y - m.y * n.x;
  let x: number;
  let y: number;
  if (Math.abs(sin) > 0.05) {
    x = (a * n.y - b * m.y) / sin;
    y = (b * m.x - a * n.x) / sin;
  } else {
    const by = (a + b) / 2 / Math.max(0.1, (1 + cos) / 2);
    x = (by * (m.x + n.x)) / 2;
    y = (by * (m.y + n.y)) / 2;
  }
  const most = MOST_MITRE * Math.max(Math.abs(a), Math.abs(b));
  const size = Math.hypot(x, y);
  const hold = size > most ? most / size : 1;
  target[2 * v] = x * hold;
  target[2 * v + 1] = y * hold;
}

/** Unit vector to the right of the side from `p` to `q`: outward, for outer rings and holes alike. */
function outwardOf(ring: Float64Array, p: number, q: number): { x: number; y: number } {
  const [x, y] = [ring[2 * q] - ring[2 * p], ring[2 * q + 1] - ring[2 * p + 1]];
  const length = Math.hypot(x, y) || 1;
  return { x: y / length, y: -x / length };
}
