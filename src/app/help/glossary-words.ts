import { spoken } from '../language/spoken.ts';

/** One word of the trade: how it is written, other words it is looked for by, and what it is. Words in brackets lead to others. */
export interface Term {
  readonly word: string;
  readonly also: string;
  readonly says: string;
}

const term = (word: string, also: string, says: string): Term => ({ word, also, says });

/** The words of the trade as the window uses them. */
export const GLOSSARY_WORDS = spoken('glossary', {
  allowance: term(
    'allowance',
    'margin seam allowance',
    'Foam added outside a [seam] to glue on. A [butt] seam has none.',
  ),
  apart: term(
    'apart',
    'exploded',
    'The pieces drawn off the prop, each straight outward, so that every [seam] can be seen.',
  ),
  back: term('back', 'inside rear', 'The inside of the finished prop. Its other side is the [face].'),
  badge: term('badge', 'emblem raised', 'A flat shape glued on the [face], cut from thin foam.'),
  bend: term(
    'bend',
    'roll curve',
    'Foam rolled without a [fold]. Outside the [neutral surface|neutral] it is pulled, inside it is pressed.',
  ),
  bevel: term(
    'bevel',
    'slant chamfer miter lean',
    'An edge cut slanting, so that two pieces close on a corner without a gap. Each takes half of the turn; the blade leans that far from square.',
  ),
  butt: term(
    'butt',
    'butt joint edge to edge',
    'A [seam] whose two cut edges meet face to face. The [bevel] lets them close.',
  ),
  clearance: term(
    'clearance',
    'room gap',
    'Room between the inside of the foam and what it goes over: a pipe, a rod, a head.',
  ),
  core: term('core', 'pipe rod dowel', 'What the foam goes round and stays on: a pipe, a rod, a helmet liner.'),
  corner: term('corner', 'point', 'Where edges of the sculpt meet. Paths run from corner to corner.'),
  'cut-line': term(
    'cut line',
    'outline',
    'The wide line on a template. Cut on it; the [other edge|other-edge] of the bevel is narrow.',
  ),
  dart: term(
    'dart',
    'notch wedge gore',
    'A [seam] that ends inside a piece. Closing it makes the flat piece round, as in a tailor’s jacket.',
  ),
  'dry-fit': term(
    'dry fit',
    'fit test assembly',
    'All pieces put together without glue. The window does it first, with thickness and bevels, and measures every gap.',
  ),
  ease: term('ease', 'comfort play', 'Room beyond the body, measured in [girth]: for padding, sleeves, breath.'),
  edge: term('edge', 'line', 'A line of the sculpt where two faces meet. A [seam] follows edges or runs across faces.'),
  face: term('face', 'outside front', 'The outside of the finished prop. Its other side is the [back].'),
  fold: term(
    'fold',
    'crease ridge valley',
    'A line where a piece turns but stays whole. On paper it is a line of long dashes and dots.',
  ),
  gap: term('gap', 'opening', 'How far two edges stay apart in the [dry fit|dry-fit]. Glue bridges half a millimetre.'),
  girth: term('girth', 'circumference round', 'What a tape says round a body. It bridges hollows, as a tape does.'),
  grain: term(
    'grain',
    'nap direction',
    'The way the sheet was made. Foam stretches and shrinks more along one way; the arrow on a piece says which way lies along the sheet.',
  ),
  groove: term(
    'groove',
    'v-cut score',
    'A cut part way through along a [fold], so that thick foam turns sharply and its skin stays whole.',
  ),
  hinge: term('hinge', 'skin', 'The thin foam left under a [groove]. It keeps its length when the piece is folded.'),
  kerf: term(
    'kerf',
    'saw cut slot',
    'What a blade takes away, or one of many cuts side by side that let thick foam bend. How wide it is decides how far it bends.',
  ),
  lap: term(
    'lap',
    'overlap joint',
    'A [seam] where one side reaches over the other and is glued on it. Strong, and thicker there.',
  ),
  layer: term(
    'layer',
    'laminate ply',
    'One sheet of a wall made of several. Each has its own size, for outside is longer.',
  ),
  'mate-mark': term(
    'mate mark',
    'match mark notch registration',
    'A short line across a cut. It meets the mark with the same number on the other piece, so that edges cannot creep.',
  ),
  margin: term('margin', 'border', 'Paper at the edge that a printer leaves white.'),
  neutral: term(
    'neutral surface',
    'neutral fraction axis k',
    'The layer inside the foam that keeps its length in a [bend]. Pieces are laid flat from it, and so fit when they are rolled.',
  ),
  offcut: term('offcut', 'scrap remnant', 'Foam left over that is large enough to cut from again.'),
  'open-edge': term('open edge', 'rim boundary', 'An edge of the prop where the foam ends: the rim of a helm.'),
  'other-edge': term(
    'other edge',
    'second line',
    'Where a [bevel] comes out on the far side of the foam. It is the narrow line beside the [cut line|cut-line].',
  ),
  overlap: term(
    'overlap',
    'glue strip',
    'How far pages lie over each other, or two edges reach into each other in the [dry fit|dry-fit].',
  ),
  page: term(
    'page',
    'paper tile',
    'One printed paper. A piece that is larger runs over several, with marks to lay them by.',
  ),
  panel: term('panel', 'facet', 'A nearly flat part of a piece between [folds|fold].'),
  piece: term('piece', 'part template', 'What is cut from foam in one go. It has a number, and a letter on each edge.'),
  pitch: term('pitch', 'winding lead', 'How far a wound strip runs on along the [core] in one turn.'),
  ridge: term('ridge', 'crest crease', 'A line of sharp edges along the sculpt, outward or inward.'),
  'scale-square': term(
    'scale square',
    'test calibration 100 mm',
    'The square on the first page. Measure it with a ruler: if it is not 100 mm the templates are wrong too.',
  ),
  seam: term(
    'seam',
    'cut join',
    'A line where the foam is parted and two edges are glued together. Both carry the same letter.',
  ),
  sheet: term('sheet', 'board stock', 'Foam as it is sold. Pieces are laid out on sheets.'),
  shrinkage: term(
    'shrinkage',
    'heat shrink',
    'How much smaller foam gets when it is warmed, along and across the sheet.',
  ),
  squash: term(
    'squash',
    'compression gather',
    'How much shorter the foam has to become somewhere, per cent. It wrinkles sooner than it stretches.',
  ),
  stack: term(
    'stack',
    'slices contour',
    'A solid made of flat layers glued on each other, one sheet thick each, and sanded.',
  ),
  stagger: term(
    'stagger',
    'offset',
    'How far the [seams|seam] of one [layer] lie beside those of the next, so that no seam goes right through.',
  ),
  strain: term(
    'strain',
    'skin',
    'How far the outer skin is pulled and the inner one pressed in a tight [bend], per cent.',
  ),
  stretch: term(
    'stretch',
    'extension pull',
    'How much longer the foam has to become somewhere, per cent. Warm foam gives more.',
  ),
  template: term(
    'template',
    'pattern stencil',
    'A [piece] on paper in true size. It is drawn round on foam and can be used again.',
  ),
  thread: term('thread', 'link', 'The thin line on the bench that joins the two edges of a [seam], wherever they lie.'),
  trim: term(
    'trim',
    'edging strip',
    'A strip glued along a [seam] or an [open edge|open-edge], to hide or to adorn it.',
  ),
  twin: term(
    'twin',
    'mirror image pair',
    'A piece that is the mirror image of another. One [template], turned over, cuts both.',
  ),
  wrap: term('wrap', 'roll round', 'Foam laid round a [core] without a gap: rolled for a pipe, fanned for a cone.'),
});

/** The words of the trade by their names. */
export type TermName = keyof typeof GLOSSARY_WORDS & string;

export const TERM_NAMES = Object.keys(GLOSSARY_WORDS) as readonly TermName[];

export const isTermName = (name: string): name is TermName => Object.hasOwn(GLOSSARY_WORDS, name);
