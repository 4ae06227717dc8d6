import { needSculptAtWork } from './at-work.ts';
import { FIRST_CLAY, type Clay, type ClayFillet } from '../model/clay.ts';
import { checkColour, COLOUR_KINDS, MOST_COLOURS, type Colour } from '../model/colours.ts';
import type { Region } from '../model/flatten-settings.ts';
import type { SeamOfPieces, ShopChoices } from '../model/shop-choices.ts';
import { addRegion, onSculpt, type Command } from './commands.ts';
import { isSameName } from './finish-schema.ts';
import type { Project, SculptPart } from './project.ts';
import { onShop } from './shop-commands.ts';

/** What a maker may say of a colour. */
export type ColourFields = Omit<Colour, 'id'>;

/** A colour as it begins, brushed on with the usual figures. */
export function newColour(name: string, rgb: string): ColourFields {
  const [{ id: _, ...usual }] = COLOUR_KINDS;
  return { name: name.trim(), rgb: rgb.toLowerCase(), ...usual, figures: 'usual' };
}

/** Whether a list has room for another colour of that name. */
export const canAddColour = (colours: readonly Colour[], name: string): boolean =>
  colours.length < MOST_COLOURS && name.trim() !== '' && !colours.some((own) => isSameName(own.name, name));

/** The id the next colour takes: `colour-1`, `colour-2` …, the first that is free. */
export function nextColourId({ colours = [] }: ShopChoices): string {
  for (let i = 1; ; i += 1) if (!colours.some(({ id }) => id === `colour-${i}`)) return `colour-${i}`;
}

/** Puts a colour on the list, under {@link nextColourId}. Changes nothing where the list has no room for it ({@link canAddColour}). */
export const addColour = (fields: ColourFields): Command =>
  onShop('add a colour', (shop) => {
    const { colours = [] } = shop;
    if (!canAddColour(colours, fields.name)) return shop;
    return { ...shop, colours: [...colours, checkColour({ ...fields, id: nextColourId(shop) })] };
  });

/**
 * Changes what is said of a colour. A figure of the label that is changed makes all of them the label's; a name that another one has is not taken.
 */
export const setColour = (id: string, fields: Partial<ColourFields>): Command =>
  onShop(
    'change a colour',
    (shop) => {
      const { colours = [] } = shop;
      const isTaken = ({ name = '' }: Partial<ColourFields>): boolean =>
        name.trim() === '' || colours.some((other) => other.id !== id && isSameName(other.name, name));
      const { name, ...others } = fields;
      const taken = name === undefined || isTaken(fields) ? others : { ...others, name: name.trim() };
      const isOfLabel = (['coats', 'coverageM2PerL', 'recoatMin', 'handleMin'] as const).some((key) => key in fields);
      const change = isOfLabel && fields.figures === undefined ? { ...taken, figures: 'label' as const } : taken;
      return {
        ...shop,
        colours: colours.map((own) => (own.id === id ? checkColour({ ...own, ...change }) : own)),
      };
    },
    `colour ${id} ${Object.keys(fields).join(' ')}`,
  );

/** Takes a colour off the list; what was painted with it is as the rest again. */
export function removeColour(id: string): Command {
  const label = 'remove a colour';
  const ofShop = onShop(label, ({ colours = [], baseColour, ...rest }) => {
    const kept = colours.filter((own) => own.id !== id);
    return {
      ...rest,
      ...(kept.length === 0 ? {} : { colours: kept }),
      ...(baseColour === undefined || baseColour === id ? {} : { baseColour }),
    };
  });
  // On every sculpt, not the one at work alone: a file that paints with what it does not hold is not read again.
  const ofAreas = (project: Project): Project => {
    const parts = project.parts.map((part) => withRegions(part, (region) => withColour(region, null, id)));
    return parts.every((part, i) => part === project.parts[i]) ? project : { ...project, parts };
  };
  return { label, apply: (project) => ofAreas(ofShop.apply(project)) };
}

/** The colour of all that no area says otherwise of; null: it keeps the coats that are put on all over. */
export const setBaseColour = (id: string | null): Command =>
  onShop('choose the base colour', ({ baseColour: _, ...shop }) => (id === null ? shop : { ...shop, baseColour: id }));

/** Paints an area in a colour of the list; null: as the rest. */
export const colourRegion = (area: string, colour: string | null): Command =>
  onSculpt(colour === null ? 'take the paint off an area' : 'paint an area', (part) =>
    withRegions(part, (region) => (region.id === area ? withColour(region, colour) : region)),
  );

/**
 * Paints polygons of the file. Those of one area paint that area; others become an area of that name.
 * @param colour id of a colour of the list; null: as the rest, and nothing changes where they are no area.
 */
export function paintFaces(name: string, faces: readonly number[], colour: string | null): Command {
  const label = colour === null ? 'take the paint off an area' : 'paint an area';
  return {
    label,
    apply(project) {
      const own = [...new Set(faces)].sort((a, b) => a - b);
      const known = areaOf(project, own);
      if (known !== undefined) return colourRegion(known.id, colour).apply(project);
      if (colour === null) return project;
      // What is said of the area round them holds for them too.
      const round = needSculptAtWork(project).regions.findLast(({ faces: all }) =>
        own.every((face) => all.includes(face)),
      );
      const marked = addRegion(name, own, round?.give ?? 'normal', round?.seams).apply(project);
      const made = marked === project ? undefined : needSculptAtWork(marked).regions.at(-1);
      return made === undefined ? project : colourRegion(made.id, colour).apply(marked);
    },
  };
}

/** The area of just these polygons, ascending; undefined where there is none. */
export const areaOf = (project: Pick<Project, 'parts' | 'atWork'>, faces: readonly number[]): Region | undefined =>
  needSculptAtWork(project).regions.findLast(
    (region) => region.faces.length === faces.length && region.faces.every((f, i) => f === faces[i]),
  );

/** Takes a clay, as its label says. */
export const setClay = (clay: Clay): Command =>
  onShop(
    'choose the clay',
    ({ clay: _, ...shop }) => (JSON.stringify(clay) === JSON.stringify(FIRST_CLAY) ? shop : { ...shop, clay }),
    'clay',
  );

/** Builds an area up in clay, so high over the foam, mm; null: not. */
export const clayRegion = (area: string, heightMm: number | null): Command =>
  onSculpt(
    heightMm === null ? 'leave the clay off an area' : 'model an area in clay',
    (part) =>
      withRegions(part, (region) => {
        if (region.id !== area || (region.clay?.heightMm ?? null) === heightMm) return region;
        const { clay: _, ...bare } = region;
        return heightMm === null ? bare : { ...bare, clay: { heightMm } };
      }),
    `clay ${area}`,
  );

/** Fills a seam of the sheet that is seen with clay to a hollow of this radius, mm; null: leaves it as it is glued. */
export const setFillet = (seam: SeamOfPieces, radiusMm: number | null): Command =>
  onSculpt(
    radiusMm === null ? 'leave the clay off a seam' : 'fill a seam with clay',
    (part) => {
      const { fillets = [], ...rest } = part;
      const before = filletOf(part, seam);
      if ((before?.radiusMm ?? null) === radiusMm) return part;
      const others = fillets.filter((fillet) => fillet !== before);
      const { pieces, nth } = seam;
      const after = radiusMm === null ? others : [...others, { pieces, nth, radiusMm }];
      return after.length === 0 ? rest : { ...rest, fillets: after };
    },
    `fillet ${seam.pieces.join(' ')} ${seam.nth}`,
  );

/** What is filled along a seam, if anything; its pieces in either order. */
export function filletOf({ fillets = [] }: Pick<SculptPart, 'fillets'>, seam: SeamOfPieces): ClayFillet | undefined {
  const [a, b] = seam.pieces;
  return fillets.find(({ pieces: [c, d], nth }) => nth === seam.nth && ((a === c && b === d) || (a === d && b === c)));
}

/** @param only take it off only where it is this one. */
function withColour(region: Region, colour: string | null, only?: string): Region {
  const { colour: before, ...bare } = region;
  if ((before ?? null) === colour || (only !== undefined && before !== only)) return region;
  return colour === null ? bare : { ...bare, colour };
}

/** The part with its areas changed; the very same where none is. */
export function withRegions(part: SculptPart, change: (region: Region) => Region): SculptPart {
  const regions = part.regions.map(change);
  return regions.every((region, i) => region === part.regions[i]) ? part : { ...part, regions };
}
