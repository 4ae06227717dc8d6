import { spoken } from './language/spoken.ts';

const edgesWord = (n: number): string => `${n}\u00a0${n === 1 ? 'edge' : 'edges'}`;

/** What the window says of marking seams by hand. */
export const MARK_WORDS = spoken('mark', {
  verbs: {
    followRound: 'follow round',
    followRidge: 'follow the ridge',
    pickCorner: 'pick this corner',
    partAlong: 'part along it',
    lay: { edges: 'along edges', straight: 'straight across', curve: 'smooth curve' },
    atPlane: 'part at the plane',
    atPlanes: 'part at equal spacing',
    straighten: 'straighten',
    move: 'move it',
    holdNext: 'take hold farther along',
    mirror: 'mirror what is marked',
    noMirror: 'mark one side alone',
    hold: 'hold it',
    letGo: 'let it go',
    keepClear: 'keep clear of seams',
    prefer: 'prefer it for seams',
    split: 'split by a line',
    round: (name: string) => `part round ${name}`,
    roundHere: 'part round it',
    dart: 'pull a dart',
    drawing: 'lay a drawing on the sculpt',
    layBy: { seen: 'as seen', round: 'laid round' },
    hole: 'end it in a round hole',
    point: 'end it in a point',
  },
  tools: {
    dart: 'Press on an open edge or a seam and pull into the piece. By keyboard: walk the edges (E) and hold Shift on the way in.',
    round:
      'Click an edge: the foam parts along the line of edges that runs through it, all the way round. Drag to draw.',
    ridge: 'Click a ridge or valley: the foam parts along it as far as it stays sharper than the angle. Drag to draw.',
    path: 'Click corners: the line runs along creases and smooth edges from one to the next. Click the last one again, or press Enter, to part along it.',
    straight:
      'Click places: the line runs straight across the faces from one to the next. Click the last one again, or press Enter, to part along it.',
    curve:
      'Click places: one smooth curve runs through all of them. Click the last one again, or press Enter, to part along it.',
    split:
      'Click two corners of the piece or more: the line runs on to its edges at both ends. Press Enter to part along it.',
  },
  move: {
    edges: 'Arrow keys take the seam from corner to corner.',
    path: 'Arrow keys move the seam where the mark is: 1 mm, with Shift 10.',
    spoken: 'In hand. Arrow keys move it, N takes hold farther along, Escape lets go.',
  },
  drawing: {
    size: 'size',
    sizeLabel: 'Size of the drawing, per cent',
    turn: 'turned',
    turnLabel: 'Turn of the drawing, degrees, against the clock',
    facts: (name: string, width: string, height: string) => `${name}, ${width} × ${height}.`,
    place: 'Click the sculpt where its middle goes.',
    how: {
      seen: 'It lies as you looked at its place. Click another place, or move it with the arrow keys: 1 mm, with Shift 10. Enter parts along it.',
      round:
        'It lies round the surface with its lengths kept. Click another place, or move it with the arrow keys: 1 mm, with Shift 10. Enter parts along it.',
    },
    missed: (percent: string) => `${percent} of it lies beside the sculpt.`,
    closed: (mm: string) => `It does not close there by itself: a piece of ${mm} closes it.`,
    needsSculpt: (file: string) => `${file} is a drawing: open a sculpt first, then lay it on.`,
    unreadable: (file: string) => `${file} cannot be read: choose it again.`,
    needs3d:
      'A drawing is laid in the 3D picture, which this browser cannot draw: draw lines at a plane or along edges instead.',
  },
  darts: {
    heading: 'Darts and how they end',
    name: (letter: string, length: string) => `Dart ${letter}, ${length}`,
    ends: (letter: string) => `How dart ${letter} ends`,
    point: 'in a point',
    hole: 'in a round hole',
    diameter: 'wide',
    pulled: (length: string, stretch: string, squash: string) =>
      `${length} long. Its piece stretches ${stretch} and squashes ${squash}.`,
  },
  straightened: 'straighten the seam',
  within: 'within',
  every: 'every',
  bothSides: 'Mirror: marks appear on both sides',
  paint: 'Seams there',
  paints: { free: 'seams as elsewhere', clear: 'kept clear of seams', prefer: 'preferred for seams' },
  areaNames: { clear: (piece: string) => `${piece}, kept clear`, prefer: (piece: string) => `${piece}, preferred` },
  sharper: 'sharper than',
  degrees: 'Least angle of the ridge, degrees',
  group: 'Group of the file',
  partRound: 'Part round it',
  spoken: {
    noHold: 'This seam has no corner between its ends to take hold of.',
    noDartHere: 'A dart begins at an open edge or a seam: press there and pull into the piece.',
    dart: 'The dart stays.',
    drawn: (n: number) => (n === 1 ? 'Parted along a line.' : `Parted along ${n} lines.`),
    kept: (n: number) => (n === 1 ? 'The picked place stays.' : `The ${n} picked places stay.`),
    toCorners: (n: number) =>
      n === 1
        ? 'The picked place stays, moved to the nearest corner.'
        : `The ${n} picked places stay, each at the nearest corner.`,
    straightened: (mm: number) => `Straightened. It lies at most ${mm.toFixed(1)} mm from where it was.`,
    mirrored: (isOn: boolean) => (isOn ? 'Marks appear on both sides.' : 'Marks stay on one side.'),
    noRidge: 'This edge is not as sharp as that.',
    picked: (n: number) => `${n === 1 ? 'First corner' : `Corner ${n}`} picked.`,
    backOne: 'One corner back.',
    placed: (n: number) => `${n === 1 ? 'First place' : `Place ${n}`} picked.`,
    backOnePlace: 'One place back.',
    line: (n: number) => `A line of ${edgesWord(n)}.`,
    nothingRound: 'Nothing lies beside it to part from.',
  },
});
