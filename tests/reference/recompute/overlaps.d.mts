export function countOverlaps(flats: readonly (readonly (readonly number[])[])[], leastAreaMm2: number): number;
