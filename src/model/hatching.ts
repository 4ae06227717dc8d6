/** How an area is told from others on paper, where there is no colour: lines this far apart, mm, at these angles, degrees from level. */
export interface Hatching {
  readonly anglesDeg: readonly number[];
  readonly spacingMm: number;
}

/**
 * Which hatching each colour of a list has, by its place in {@link HATCHINGS}; the base is left plain.
 * @param base id of the base colour.
 */
export function hatchingPlaces(
  colours: readonly { readonly id: string }[],
  base: string | undefined,
): ReadonlyMap<string, number> {
  return new Map(colours.flatMap(({ id }, i): [string, number][] => (id === base ? [] : [[id, i % HATCHINGS.length]])));
}

/** One for each colour of a list of the most there may be; the base colour has none. Each differs from all before it in its angle or by twice its spacing. */
export const HATCHINGS: readonly Hatching[] = [
  { anglesDeg: [45], spacingMm: 2.4 },
  { anglesDeg: [-45], spacingMm: 2.4 },
  { anglesDeg: [45, -45], spacingMm: 3.2 },
  { anglesDeg: [0], spacingMm: 2.4 },
  { anglesDeg: [90], spacingMm: 2.4 },
  { anglesDeg: [0, 90], spacingMm: 3.2 },
  { anglesDeg: [45], spacingMm: 1.1 },
  { anglesDeg: [-45], spacingMm: 1.1 },
  { anglesDeg: [45, -45], spacingMm: 1.6 },
  { anglesDeg: [0], spacingMm: 1.1 },
  { anglesDeg: [90], spacingMm: 1.1 },
  { anglesDeg: [0, 90], spacingMm: 1.6 },
];
