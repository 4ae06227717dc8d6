import { spokenName } from '../base/spoken-name.ts';
import type { ShapeOffer } from '../worker/parts-api.ts';
import { shapeText } from './data-words.ts';
import type { ShapeGroup } from './part-words.ts';

/** Shapes by the group they are looked for in; solids are told by their sizes, and what is in none is among the others. */
const MEMBERS: Readonly<Partial<Record<ShapeGroup, readonly string[]>>> = {
  round: [
    'wrap',
    'tapered_wrap',
    'cone',
    'frustum',
    'cone_from_disc',
    'oblique_cone',
    'truncated_cylinder',
    'elbow',
    'branch',
    'square_to_round',
  ],
  balls: ['sphere_gores', 'dome_gores', 'sphere_zones', 'spherical_cap', 'dome', 'torus_gores', 'torus_zones'],
  layers: ['sphere_layers', 'cone_layers', 'torus_layers', 'tapered_layers'],
  boxes: ['box', 'prism', 'pyramid', 'hopper', 'box_joint', 'comb_joint'],
  flat: ['regular_polygon', 'ellipse', 'star', 'ring', 'arc', 'seam_allowance'],
  strips: ['half_round_edging', 'quarter_round_edging', 'helical_strip', 'tapered_helical_strip', 'bend'],
};

const ORDER: readonly ShapeGroup[] = ['round', 'balls', 'layers', 'boxes', 'flat', 'strips', 'solids', 'more'];

const groupOf = ({ name, sizes }: ShapeOffer): ShapeGroup =>
  ORDER.find((group) => MEMBERS[group]?.includes(name)) ??
  (sizes.some((size) => size.name === 'circumscribed_diameter') ? 'solids' : 'more');

/** Shapes that a word is found in, group by group; a group without any is left out. All of them for no word. */
export function groupedShapes(
  offers: readonly ShapeOffer[],
  word: string,
): readonly { readonly group: ShapeGroup; readonly offers: readonly ShapeOffer[] }[] {
  const words = word.trim().toLowerCase().split(/\s+/);
  const found = offers.filter((offer) => {
    const text = [shapeText(offer.name), ...[offer.name, ...offer.also, offer.says].map(spokenName)]
      .join(' ')
      .toLowerCase();
    return words.every((one) => text.includes(one));
  });
  return ORDER.map((group) => ({ group, offers: found.filter((offer) => groupOf(offer) === group) })).filter(
    (one) => one.offers.length > 0,
  );
}
