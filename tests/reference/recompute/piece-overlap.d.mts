export function deepestOverlap(
  flats: readonly (readonly (readonly number[])[])[],
  touchMm: number,
): { readonly pairs: number; readonly deepest: number };
