import { spoken } from './language/spoken.ts';

const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

/** What kinds of parts are called; one that is not here is called as the document calls it. */
const KINDS: Readonly<Record<string, string>> = {
  sculpt: 'sculpt',
  shape: 'shape',
  stack: 'stack of sheets',
  artwork: 'flat artwork',
  'build-up': 'build-up on a core',
  trim: 'trim',
  covers: 'covers over seams',
  clay: 'clay over a core',
  strap: 'strap',
};

const LABELS: Readonly<Record<string, string>> = { K: 'neutral fraction' };

/** Texts about the parts of a prop. */
export const PART_WORDS = spoken('part', {
  answer: (parts: number, pieces: number) =>
    pieces === 0
      ? count(parts, 'part', 'parts')
      : `${count(parts, 'part', 'parts')}, ${count(pieces, 'piece', 'pieces')}`,
  none: 'no part yet',
  list: 'Parts of the prop',
  kind: (kind: string) => KINDS[kind] ?? kind.replaceAll('-', ' '),
  shape: (shape: string) => `shape, ${shape}`,
  foam: (thickness: string) => `${thickness} foam`,
  atWork: 'at work',
  pieces: (n: number) => count(n, 'piece', 'pieces'),
  copies: (n: number) => `${n} of it`,
  told: (n: number) => `${n} to look at`,
  notMade: 'cannot be made',
  notYet: 'not worked out',

  add: {
    shape: 'Add a shape',
    sculpt: 'Add a sculpt …',
    file: 'Add from a file …',
    fileWhy: 'A drawing or a picture is cut out as it is; a model is stacked of sheets.',
    heading: 'A new shape',
    put: 'Put it in the project',
    leave: 'Leave it',
  },
  begin: 'Begin with a shape',
  beginVerb: 'begin a new job with a shape',
  prop: 'prop',
  /** What a job that is begun with a shape begins with. */
  first: { name: 'pipe wrap', shape: 'wrap' },

  fields: {
    name: 'Name',
    copies: 'How many',
    foam: 'Foam',
    foams: 'Foams it may take',
    x: 'x',
    y: 'y',
    z: 'z',
    turn: 'Turned about z',
    place: 'Where it stands in the prop',
    tip: { x: 'tip over x', y: 'tip over y' },
    tipWhy: 'A quarter turn about x or y.',
    noName: 'Give the part a name.',
    remove: 'take it away',
    last: 'It is the only part: open or add another before it is taken away.',
    workOn: 'work on this one',
    setOn: (sculpt: string) => `set it on ${sculpt} where you look`,
    isOn: (sculpt: string) => `It sits on ${sculpt}, to be moved by its figures.`,
    notThere:
      'The sculpt is not in the middle of the picture: turn to the place where the part goes, and set it on once more.',
    ofArea: 'It is said of an area of the sculpt, and goes with it.',
    sculpt: 'Size, seams and foam of this sculpt stand below.',
    notAtWork: 'Its size, seams and foam stand below while it is worked on.',
  },

  shapes: {
    shape: 'Shape',
    find: 'Find a shape by name',
    list: 'Shapes',
    found: (n: number) => (n === 0 ? 'No shape is called that: try a shorter word.' : count(n, 'shape', 'shapes')),
    other: 'another shape',
    close: 'close the list',
    sizes: 'Sizes',
    finer: 'Foam and finer sizes',
    usual: (text: string) => `Usually ${text}.`,
    ofFoam: (text: string) => `That of the foam, ${text}.`,
    figures: (n: number) => `Figures of the shape (${n})`,
    figure: 'Figure',
    value: 'Value',
    /** Sizes whose name is a letter. */
    labels: LABELS,
    picture: (pieces: string) => `Flat pieces: ${pieces}`,
    times: (n: number, name: string) => (n === 1 ? name : `${n} × ${name}`),
    size: (name: string, x: string, y: string) => `${name}, ${x} × ${y}`,
    trying: 'being drawn …',
    cannot: 'These sizes do not go together yet.',
    kept: 'The project keeps the sizes that went together last.',
  },

  /** How a piece comes into its form. */
  bends: { flat: 'stays flat', rolled: 'rolled', folded: 'folded', formed: 'formed warm' },

  groups: {
    round: 'Wraps, cones and ducts',
    balls: 'Balls, domes and rings',
    layers: 'In layers of sheet',
    boxes: 'Boxes, prisms and joints',
    solids: 'Solids of regular faces',
    flat: 'Flat outlines',
    strips: 'Edging, strips and bends',
    more: 'More shapes',
  },

  nothing: 'Nothing lies here yet: open a file, or add a part in the lists beside this.',
  noForm: 'Its parts are flat: they lie on the sheets in the lists beside this.',
} as const);

export type ShapeGroup = keyof typeof PART_WORDS.groups;
