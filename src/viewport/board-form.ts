/** Steps in which a corner, seen from above, and an edge are rounded. */
const CORNER_STEPS = 8;
const EDGE_STEPS = 2;

/** Sizes of a board, mm. */
export interface Board {
  /** Along x and z, of its upper face without the rounded edge. */
  readonly width: number;
  readonly depth: number;
  readonly thickness: number;
  /** Radius of its corners, seen from above, and of its edges, which stand out by as much. */
  readonly corner: number;
  readonly edge: number;
}

/** Triangles of a solid: packed xyz of corners and normals, three places in them for each triangle, counter-clockwise seen from outside. */
export interface BoardForm {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly corners: readonly number[];
}

/** A board whose corners and edges are rounded; its upper face lies at y 0, its middle over x 0, z 0. */
export function boardForm({ width, depth, thickness, corner, edge }: Board): BoardForm {
  const outline = roundedOutline(width / 2 - corner, depth / 2 - corner);
  const turns = Array.from({ length: EDGE_STEPS + 1 }, (_, i) => ((i / EDGE_STEPS) * Math.PI) / 2);
  // From above to below: how far each ring stands out, how high it is, and how far its normal leans from up.
  const rings = [
    ...turns.map((lean) => ({ out: edge * Math.sin(lean), y: edge * (Math.cos(lean) - 1), lean })),
    ...turns.map((lean) => ({
      out: edge * Math.cos(lean),
      y: edge * (1 - Math.sin(lean)) - thickness,
      lean: lean + Math.PI / 2,
    })),
  ];
  const positions = rings.flatMap(({ out, y }) =>
    outline.flatMap(({ x, z, nx, nz }) => [x + (corner + out) * nx, y, z + (corner + out) * nz]),
  );
  const normals = rings.flatMap(({ lean }) =>
    outline.flatMap(({ nx, nz }) => [nx * Math.sin(lean), Math.cos(lean), nz * Math.sin(lean)]),
  );
  const count = outline.length;
  const last = (rings.length - 1) * count;
  const corners: number[] = [];
  for (let i = 2; i < count; i += 1) corners.push(0, i, i - 1, last, last + i - 1, last + i);
  for (let from = 0; from < last; from += count) {
    for (let i = 0; i < count; i += 1) {
      const [a, b] = [from + i, from + ((i + 1) % count)];
      corners.push(a, b, b + count, a, b + count, a + count);
    }
  }
  return { positions: Float32Array.from(positions), normals: Float32Array.from(normals), corners };
}

/** Middles of the rounded corners with the directions away from them, clockwise seen from above (x right, z down). */
function roundedOutline(x: number, z: number): { x: number; z: number; nx: number; nz: number }[] {
  const quarters = [
    [x, z],
    [-x, z],
    [-x, -z],
    [x, -z],
  ] as const;
  return quarters.flatMap(([cx, cz], quarter) =>
    Array.from({ length: CORNER_STEPS + 1 }, (_, i) => {
      const turn = ((quarter + i / CORNER_STEPS) * Math.PI) / 2;
      return { x: cx, z: cz, nx: Math.cos(turn), nz: Math.sin(turn) };
    }),
  );
}
