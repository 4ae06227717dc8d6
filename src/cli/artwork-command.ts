import type { Finding } from '../base/finding.ts';
import { formatArea, formatMeasured, formatNumber } from '../base/format-length.ts';
import type { Artwork } from '../model/artwork.ts';
import { artworkFromSvg } from '../pipeline/artwork.ts';
import { artworkJson } from '../pipeline/artwork-json.ts';
import type { ArtworkOptions } from './artwork-options.ts';
import { Refused } from './exit.ts';
import { writeAll } from './output-folder.ts';
import { checkFolder } from './output-place.ts';
import { readInput } from './read-input.ts';

const FILE_NAME = 'artwork.json';

/** `artwork FILE.svg`: reads flat artwork, tells its pieces and what is wrong, and writes artwork.json. @returns what stdout gets. */
export async function artworkCommand({ input, out, choice, json }: ArtworkOptions): Promise<string> {
  const { name, bytes } = await readInput(input);
  if (out !== undefined) await checkFolder(out, [FILE_NAME], [input]);
  const made = artworkFromSvg(new TextDecoder().decode(bytes), choice);
  if (!made.ok) throw Refused.from(made.problem, name);
  const text = `${JSON.stringify(artworkJson(made.value, made.notes), null, 1)}\n`;
  if (out !== undefined) await writeAll(out, new Map([[FILE_NAME, text]]));
  return json ? text : summary(name, made.value, made.notes, out);
}

function summary(
  name: string,
  { pieces, widthMm, heightMm, scale }: Artwork,
  findings: readonly Finding[],
  out: string | undefined,
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
    ...findings.map(({ severity, text }) => `${severity}: ${text}`),
    ...(out === undefined ? [] : [`written to ${out}`]),
    '',
  ].join('\n');
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
