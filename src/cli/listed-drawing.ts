import { isPictureFile } from '../pipeline/picture-artwork.ts';
import type { Drawing } from '../project/artwork-part.ts';
import type { PlainSource } from '../project/plain-part.ts';
import { artworkOptionsFrom, type ArtworkOptions } from './artwork-options.ts';
import { WrongUsage } from './exit.ts';
import type { FigureValues } from './listed-figures.ts';
import type { PartReading } from './listed-part.ts';

/** A drawing or picture that a part is made of, how it is read, and what is done with it. */
export interface ListedDrawing {
  readonly source: PlainSource;
  readonly drawing: Drawing;
  readonly craft: ArtworkOptions['craft'];
}

/** @param values  options of `artwork`. @throws WrongUsage, Refused */
export async function drawingOf(
  file: string | undefined,
  values: FigureValues,
  fileOf: PartReading['fileOf'],
): Promise<ListedDrawing> {
  if (file === undefined) throw new WrongUsage('--file is missing: the drawing or picture it is made of.');
  const { choice, picture, craft } = artworkOptionsFrom([file], values);
  const { source, bytes } = await fileOf(file);
  const isPicture = isPictureFile(bytes);
  const stray = isPicture ? picture.ofDrawings : picture.ofPictures;
  if (stray !== null)
    throw new WrongUsage(
      `${source.fileName} is ${isPicture ? 'a picture in pixels' : 'a drawing'}: --${stray} is not for it.`,
    );
  return {
    source,
    drawing: isPicture ? { from: 'picture', choice: picture.choice } : { from: 'svg', choice },
    craft,
  };
}
