/**
 * Grid of the polygon library, steps per mm: it works on whole numbers, 1 = 0.1 µm. Far under any knife, and products of two differences
 * stay exact in double precision for anything up to 6.7 m across (2 x (6.7e7)² < 2^53).
 */
export const GRID_PER_MM = 1e4;
