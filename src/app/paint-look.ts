import type { SculptView } from '../model/bench-view.ts';
import type { Region } from '../model/flatten-settings.ts';
import type { Project } from '../project/project.ts';

/** The colour of each triangle of the sculpt as 0xrrggbb, -1 where it has none. Where areas meet, the later one that has a colour counts. */
export function paintsOfTriangles(
  sculpt: SculptView | null,
  regions: readonly Region[],
  shop: Project['shop'],
): Int32Array {
  const shades = new Map((shop?.colours ?? []).map(({ id, rgb }) => [id, Number.parseInt(rgb.slice(1), 16)]));
  const base = shades.get(shop?.baseColour ?? '') ?? -1;
  const ofFace = new Map<number, number>();
  for (const { colour, faces } of regions) {
    const shade = shades.get(colour ?? '');
    if (shade !== undefined) for (const face of faces) ofFace.set(face, shade);
  }
  return Int32Array.from(sculpt?.faceOfTriangle ?? [], (face) => ofFace.get(face) ?? base);
}

/** Which colour all of some polygons have of their own; null for none, undefined where they are not alike. */
export function colourOfFaces(regions: readonly Region[], faces: readonly number[]): string | null | undefined {
  const colours = new Map<number, string>();
  for (const region of regions)
    if (region.colour !== undefined) for (const face of region.faces) colours.set(face, region.colour);
  const first = colours.get(faces[0]) ?? null;
  return faces.every((face) => (colours.get(face) ?? null) === first) ? first : undefined;
}
