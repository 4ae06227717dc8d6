import type { Finding } from '../base/finding.ts';
import { formatArea, formatMeasured, formatNumber } from '../base/format-length.ts';
import type { Artwork } from '../model/artwork.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../pipeline/artwork.ts';
import { artworkFromPicture, isPictureFile, type PictureArtwork } from '../pipeline/picture-artwork.ts';
import { traceJson } from '../pipeline/picture-json.ts';
import { craftArtwork, type CraftedArtwork } from '../pipeline/artwork-craft.ts';
import { craftJson } from '../pipeline/artwork-craft-json.ts';
import { artworkJson } from '../pipeline/artwork-json.ts';
import type { CraftOption } from './artwork-craft-option.ts';
import type { ArtworkOptions } from './artwork-options.ts';
import { Refused } from './exit.ts';
import { writeAll } from './output-folder.ts';
import { checkFolder } from './output-place.ts';
import { readInput } from './read-input.ts';

const FILE_NAME = 'artwork.json';

/** `artwork FILE`: reads flat artwork, tells its pieces and what is wrong, and writes artwork.json. @returns what stdout gets. */
export async function artworkCommand(options: ArtworkOptions): Promise<string> {
  const { input, out, craft, json } = options;
  const { name, bytes } = await readInput(input);
  if (out !== undefined) await checkFolder(out, [FILE_NAME], [input]);
  const made = readArtwork(name, bytes, options);
  const crafted = craft === undefined ? null : await craftedFrom(name, made.artwork, craft);
  const notes = [...made.notes, ...(crafted?.notes ?? [])];
  const object = {
    ...(crafted === null ? artworkJson(made.artwork, notes) : craftJson(crafted.value, notes)),
    ...(made.trace === null ? {} : { trace: traceJson(made.trace) }),
  };
  const text = `${JSON.stringify(object, null, 1)}\n`;
  if (out !== undefined) await writeAll(out, new Map([[FILE_NAME, text]]));
  if (json) return text;
  return summary(name, crafted?.value.artwork ?? made.artwork, notes, out, crafted?.value);
}

interface ReadArtwork {
  readonly artwork: Artwork;
  /** How it was traced; null for a drawing. */
  readonly trace: PictureArtwork['trace'] | null;
  readonly notes: readonly Finding[];
}

function readArtwork(name: string, bytes: Uint8Array, { choice, picture }: ArtworkOptions): ReadArtwork {
  if (!isPictureFile(bytes)) {
    if (picture.ofPictures !== null)
      throw new Refused(`${name} is no picture in pixels: --${picture.ofPictures} is for PNG and JPEG.`);
    const made = artworkFromSvg(new TextDecoder().decode(bytes), choice);
    if (!made.ok) throw Refused.from(made.problem, name);
    return { artwork: made.value, trace: null, notes: made.notes };
  }
  if (picture.ofDrawings !== null)
    throw new Refused(`${name} is a picture in pixels: --${picture.ofDrawings} is for drawings.`);
  const made = artworkFromPicture(bytes, picture.choice);
  if (!made.ok) throw Refused.from(made.problem, name);
  return { ...made.value, notes: made.notes };
}

async function craftedFrom(
  file: string,
  artwork: Artwork,
  { craft, other }: CraftOption,
): Promise<{ readonly value: CraftedArtwork; readonly notes: readonly Finding[] }> {
  let beside: Artwork | null = null;
  if (other !== undefined) {
    const { name, bytes } = await readInput(other);
    // What is open there is meant so: only its lines and areas are taken.
    const read = artworkFromSvg(new TextDecoder().decode(bytes), USUAL_ARTWORK);
    if (!read.ok) throw Refused.from(read.problem, name);
    beside = read.value;
  }
  const made = craftArtwork(artwork, craft, beside);
  if (!made.ok) throw Refused.from(made.problem, file);
  return made;
}

function summary(
  name: string,
  { pieces, widthMm, heightMm, scale }: Artwork,
  findings: readonly Finding[],
  out: string | undefined,
  crafted: CraftedArtwork | undefined,
): string {
  const scaled = scale === 1 ? '' : `, scaled by ${formatNumber(scale, 4)}`;
  return [
    `${name}: ${counted(pieces.length, 'piece')}, ${formatMeasured(widthMm, 'mm')} x ${formatMeasured(heightMm, 'mm')}${scaled}`,
    ...pieces.map(({ name: piece, regions, lines, areaMm2, lengthMm }) => {
      const holes = regions.reduce((sum, one) => sum + one.holes.length, 0);
      const areas = regions.length > 1 ? `, ${regions.length} areas` : '';
      const open = lines.length > 0 ? `, ${counted(lines.length, 'open line')}` : '';
      return `piece ${piece}: ${formatArea(areaMm2, 'mm')}${areas}, ${counted(holes, 'hole')}, ${formatMeasured(lengthMm, 'mm')} of line${open}`;
    }),
    ...Object.entries(crafted?.figures ?? {}).map(([figure, value]) => `${figure}: ${formatNumber(value, 3)}`),
    ...(crafted?.work?.steps ?? []).map(({ text }, i) => `step ${i + 1}: ${text}`),
    ...findings.map(({ severity, text }) => `${severity}: ${text}`),
    ...(out === undefined ? [] : [`written to ${out}`]),
    '',
  ].join('\n');
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
