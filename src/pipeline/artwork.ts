import type { Finding } from '../base/finding.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { mapped } from '../geom/affine.ts';
import { length2, sub2, type Vec2 } from '../geom/vec.ts';
import type { ArtDrawing, Artwork } from '../model/artwork.ts';
import type { ArtworkChoice, ArtworkSize } from '../model/artwork-choice.ts';
import { collectShapes } from '../steps/artwork/collect-shapes.ts';
import { makeArtwork } from '../steps/artwork/make-artwork.ts';
import { boxOfPaths } from '../steps/artwork/segment-box.ts';

/** Greatest distance of straight parts from their curve unless told otherwise, mm: under the width of a pencil line by ten. */
export const USUAL_DEVIATION_MM = 0.05;

export const USUAL_ARTWORK: ArtworkChoice = {
  size: { by: 'file' },
  deviationMm: USUAL_DEVIATION_MM,
  closeMm: 0,
  regulariseMm: 0,
  strokes: 'centre',
};

/** A drawing is no larger than this after it is scaled, mm. */
const MOST_MM = 100_000;

/**
 * Flat artwork from the text of an SVG file, in its true size.
 * @returns with what is to be told of it. Fails with `artwork/…` or `xml/…`, each telling what to do.
 */
export function artworkFromSvg(text: string, { size, ...wishes }: ArtworkChoice): Result<Artwork> {
  const drawing = collectShapes(text);
  if (!drawing.ok) return drawing;
  const scale = scaleOf(drawing.value, size);
  if (!scale.ok) return scale;
  const made = makeArtwork(drawing.value, { ...wishes, scale: scale.value });
  if (!made.ok) return made;
  // Where a length is known, the unit of the file no longer matters.
  const notes = drawing.notes.filter(({ code }) => size.by === 'file' || code !== 'artwork/no-unit');
  return ok(made.value, [...notes, ...made.notes] satisfies readonly Finding[]);
}

function scaleOf(drawing: ArtDrawing, size: ArtworkSize): Result<number> {
  if (size.by === 'file') return ok(1);
  const box = boxOfPaths(drawing.shapes.flatMap(({ paths }) => paths));
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  let now = width;
  if (size.by === 'points') now = length2(sub2(mapped(drawing.mmFromUser, size.a), mapped(drawing.mmFromUser, size.b)));
  if (size.by === 'names') {
    const [a, b] = [middleOf(drawing, size.a), middleOf(drawing, size.b)];
    const missing = a === null ? size.a : b === null ? size.b : null;
    if (a === null || b === null)
      return fail('artwork/known', `Nothing in the drawing is called ${missing}: name two of its shapes or groups.`);
    now = length2(sub2(a, b));
  }
  const scale = size.mm / now;
  if (!(now > 0) || !Number.isFinite(scale))
    return fail('artwork/known', 'The length that is known is nought in the drawing: name two places that are apart.');
  if (Math.max(width, height) * scale > MOST_MM)
    return fail('artwork/known', 'The artwork would be over 100 m large: check the length that is known.');
  return ok(scale);
}

/** The middle of the box round all that has a name. */
function middleOf({ shapes, pieces }: ArtDrawing, name: string): Vec2 | null {
  const own = shapes.filter((shape) => shape.name === name || pieces[shape.piece] === name);
  if (own.length === 0) return null;
  const box = boxOfPaths(own.flatMap(({ paths }) => paths));
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}
