import { formatLength, type LengthUnit } from '../base/format-length.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { Page } from '../model/page.ts';
import type { EdgeFacts } from './edge-facts.ts';

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

const FILE_NAMES = { pdf: 'templates, PDF', svg: 'pieces, SVG', report: 'all figures, JSON', project: 'the job, to go on later' };
const SIDES = { face: 'the face', back: 'the back' };

/** Every word on the screen, in one place. Trade words or plain ones. */
export const WORDS = {
  name: 'Foamloft',
  waiting: 'Open a sculpt first',

  /** Steps of the job, in the order of the work. */
  lines: {
    size: 'What it is and how big',
    seams: 'Where it parts',
    foam: 'Which foam',
    fit: 'Does it fit and close',
    sheets: 'How it lies on the sheets',
    paper: 'Paper',
    cuts: 'Cut list',
  },
  marks: { so: 'decided', missing: 'still to decide', wrong: 'needs a look', wait: 'waits' },

  head: {
    jobName: 'Name of the job',
    revision: (n: number): string => `revision ${n}`,
    saved: { saved: 'kept in this browser', saving: 'keeping …', refused: 'not kept: save the job as a file' },
    open: 'Open a file',
    keep: 'Save the job',
    find: 'Find',
    back: (name: string): string => `Back to ${name}`,
    undo: 'Undo',
    redo: 'Redo',
    kit: 'The lamplighter’s kit:',
    kitLabel: 'Things to try it with',
  },

  size: {
    unread: 'Drop a sculpt here, OBJ or STL',
    unknown: 'How big is it?',
    tall: (length: string): string => `${length} tall`,
    across: (width: string, depth: string): string => `${width} wide, ${depth} deep`,
    ask: (longest: string): string =>
      `The file has no unit. Its longest side is ${longest} of something: choose what that is, or give one real measure.`,
    unit: 'Unit of the file',
    units: { mm: 'mm', cm: 'cm', in: 'inches', m: 'metres' },
    readAs: {
      mm: 'Read as millimetres.',
      cm: 'Read as centimetres.',
      in: 'Read as inches.',
      m: 'Read as metres.',
    },
    measured: 'From the distance between two points.',
    fromAxis: (axis: string): string => (axis === 'longest' ? 'From its longest side.' : `From its measure along ${axis}.`),
    orKnown: 'or a measure you know:',
    axes: { longest: 'longest side', x: 'along x', y: 'along y', z: 'along z' },
    is: 'is',
    measure: 'or pick two points on it',
    between: 'Between the two points',
    change: 'change the size',
    keep: 'keep it',
    up: 'Which way is up in the file',
    picture: (familiar: string): string => `The sculpt from the front, true to size beside ${familiar}`,
    familiar: { hand: 'a hand', head: 'a head', door: 'a door' },
    familiarShort: {
      hand: (height: string): string => `hand ${height}`,
      head: (height: string): string => `head ${height}`,
      door: (height: string): string => `door ${height}`,
    },
  },

  seams: {
    waiting: 'Not parted yet',
    counts: (seams: number, pieces: number): string =>
      `${count(seams, 'seam', 'seams')}, ${count(pieces, 'piece', 'pieces')}`,
    sharper: 'Edges sharper than',
    partEdges: (n: number): string => (n === 0 ? 'none' : `Part ${count(n, 'edge', 'edges')}`),
    partAlong: (length: string): string => `Part along ${length}`,
  },
  tools: {
    choose: '',
    part: 'Click an edge to part it, click it again to join it. Esc when done.',
    path: 'Click where the seam begins, then where it goes: it takes the shortest way along the edges. Esc when done.',
    measure: 'Click two points on the sculpt whose distance you know.',
    walk: 'Arrow keys walk along the edges; P parts the edge just walked, with Shift held each edge is parted on the way. Esc when done.',
  },

  foam: {
    answer: (thickness: string): string => `${thickness} foam`,
    stock: 'Sheet in hand',
    sheet: 'Size of the sheet',
    size: (width: string, height: string): string => `${width} × ${height}`,
    measured: 'Thickness measured',
    modelIs: 'The sculpt is',
    surfaces: { face: 'the face, outside', middle: 'the middle', back: 'the back, inside' },
    finer: 'Finer points',
    neutral: 'Neutral fraction: where in the sheet bending changes no length, 0 back to 1 face',
    neutralWhy: 'Half is usual for foam (shop rule). Bend a measured strip of yours to find it better.',
    traced: 'Templates are traced on',
    sides: SIDES,
  },

  fit: {
    waiting: 'Nothing is flat yet',
    answer: (stretch: string, squash: string): string => `stretch ${stretch}, squash ${squash}`,
    closes: (difference: string): string => `The two sides of every seam agree within ${difference}.`,
    noSeams: 'There is no seam to close.',
    legend: (limit: number): string =>
      `Scale of stretch and squash: squash to ${limit} per cent on the left, stretch to ${limit} per cent on the right`,
    legendHint: 'Squash on the left, stretch on the right, per cent. Point at the bench for the figure.',
    reading: (squash: string, stretch: string): string => `Here: squash ${squash}, stretch ${stretch}`,
    worst: 'Most:',
  },
  seamTable: {
    caption: 'Seams with the lengths of both sides',
    seam: 'seam',
    pieces: 'pieces',
    oneSide: 'one side',
    otherSide: 'other side',
    difference: 'differ',
    bevel: 'bevel',
    lap: 'lap',
    itself: (piece: number): string => `${piece} to itself`,
    choose: (letter: string): string => `Choose seam ${letter}`,
  },

  sheets: {
    waiting: 'No pieces to lay out yet',
    answer: (n: number, width: string, height: string): string => `${count(n, 'sheet', 'sheets')} of ${width} × ${height}`,
    sheet: (n: number): string => `Sheet ${n}`,
    used: (share: string): string => `${share} used`,
    picture: (n: number): string => `A sheet with ${count(n, 'piece', 'pieces')}`,
  },

  paper: {
    waiting: 'Nothing to print yet',
    answer: (pages: number, paper: string): string => `${count(pages, 'page', 'pages')} of ${paper}`,
    trueScale: 'Print at 100 %, “actual size”. Measure the square on the first page before you cut: 100 mm both ways.',
    paper: 'Paper',
    name: (name: string): string => ({ roll: 'a roll', custom: 'own size' })[name] ?? name,
    stands: 'Stands',
    orientation: { portrait: 'upright', landscape: 'across' },
    width: 'Width',
    height: 'Height',
    margin: 'Margin',
    overlap: 'Overlap',
    pages: 'Pages',
    pageName: ({ kind, name }: Page): string => ({ scale: 'measure me', map: 'map', tile: name })[kind],
    picture: (name: string): string => `Page ${name}`,
    files: { pdf: 'Save the templates, PDF', svg: 'Pieces, SVG', report: 'All figures, JSON', project: 'The job' },
  },

  cuts: {
    waiting: 'No pieces yet',
    answer: (n: number, area: string): string => `${count(n, 'piece', 'pieces')}, ${area}`,
    kind: ({ bendStyle, hand, folds }: FoamPiece): string =>
      [bendStyle, ...(folds.length === 0 ? [] : [count(folds.length, 'fold', 'folds')]), ...(hand === undefined ? [] : [hand])].join(', '),
    size: (width: string, height: string): string => `${width} × ${height}`,
    figures: (quantity: number, thickness: string, area: string, give: string): string =>
      `${quantity} × ${thickness}, ${area}, gives ${give}`,
  },
  cautions: { cut: 'Mind yourself', glue: 'Mind yourself' },

  findings: {
    severity: { error: 'Wrong', warning: 'Mind', note: 'Note' },
    more: (n: number): string => `${n} more`,
  },
  remedies: {
    turnFaces: 'Turn the faces',
    dropDoubled: 'Drop the doubled faces',
    dropEmpty: 'Drop the empty faces',
    closeHole: 'Close this hole',
    keepShell: 'Keep only this surface',
    partAlong: 'Part along this line',
  },

  stages: ['whole', 'apart', 'flat', 'on the sheet'],
  stageKeys: ['W', 'A', 'F', 'S'],
  stage: {
    label: 'The bench: the sculpt, its pieces and the sheets of foam',
    keys: 'Arrow keys turn the view, plus and minus come nearer and go farther. E walks a mark along the edges.',
    slider: 'Where the pieces are',
    no3d: 'This browser shows no 3D, so the bench is drawn flat. Everything else works.',
    lost: 'The 3D picture was lost, so the bench is drawn flat until it is back. Nothing else is.',
    drop: 'Let go: it opens here.',
    reading: (name: string): string => `Reading ${name} …`,
  },

  verbs: {
    part: 'Part here',
    join: 'Join',
    joinSeam: (letter: string): string => `Join seam ${letter}`,
    walk: 'Walk the edges',
    walkFromHere: 'Walk from here',
    butt: 'Make it a butt seam',
    lap: (mm: number): string => `Make it a lap of ${mm} mm`,
    otherLap: 'Lap on the other side',
    frame: 'Come closer',
    traceFrom: (side: 'face' | 'back'): string => `Trace on ${SIDES[side]}`,
    bendAs: (style: 'rolled' | 'grooved'): string => (style === 'rolled' ? 'Roll it' : 'Groove its folds'),
    partTool: 'Part edges',
    pathTool: 'Part along a path',
    sharp: 'Part edges sharper than an angle',
    joinAll: 'Join everything',
    roll: (stage: string): string => `Show the pieces ${stage}`,
    showStretch: 'Show the stretch',
    hideStretch: 'Hide the stretch',
    frameAll: 'See everything',
    look: (side: string): string => `Look from the ${side}`,
    undo: (label: string): string => `Undo: ${label}`,
    redo: (label: string): string => `Redo: ${label}`,
    open: 'Open a file',
    save: (kind: keyof typeof FILE_NAMES): string => `Save ${FILE_NAMES[kind]}`,
    goTo: (title: string): string => `Go to: ${title}`,
    back: 'Back',
  },
  chosen: {
    edge: 'Edge',
    seam: (letter: string): string => (letter === '' ? 'Open edge' : `Seam ${letter}`),
    page: (name: string): string => `Page ${name}`,
    walk: 'Walking the edges',
    edgeFacts: (facts: EdgeFacts, unit: LengthUnit): string =>
      `${formatLength(facts.length, unit)} long, ${facts.isOpen ? 'open' : `folds ${Math.round(facts.foldDeg)}°`}`,
    seamFacts: (length: string, bevel: string, kind: string): string => `${kind}, ${length} long, bevel ${bevel}`,
    pieceFacts: (thickness: string, area: string, reason: string): string => `${thickness}, ${area}. ${reason}`,
  },

  finder: {
    label: 'What do you want to do?',
    hint: 'part, flat, save …',
    none: 'Nothing here is called that.',
  },
  progress: { label: 'How far it is', begins: 'beginning', cancel: 'stop' },
  field: {
    wrong: (min: number, max: number, unit: LengthUnit): string =>
      `From ${formatLength(min, unit)} to ${formatLength(max, unit)}, please.`,
  },

  notice: {
    recovered: (name: string): string => `Here is ${name} again, as you left it.`,
    stopped: 'Stopped. The bench shows the state before.',
    goOn: 'Go on',
    broke: 'Something of ours broke while working this out. Your job is safe: undo the last change, or try again.',
    again: 'Try again',
    storageRefused: 'This browser keeps nothing here. Save the job as a file before you close the window.',
    unreadable: (name: string): string => `${name} could not be read from the disk: choose it again.`,
    noSample: (title: string): string => `${title} could not be fetched. Open a sculpt of your own.`,
    seamsNeedModel: (name: string): string => `${name} holds seams: open their sculpt first.`,
    close: 'All right',
  },

  spoken: {
    undone: (label: string): string => `Undone: ${label}.`,
    redone: (label: string): string => `Done again: ${label}.`,
    parted: (edges: number): string => `Parted ${count(edges, 'edge', 'edges')}.`,
    joined: (edges: number): string => `Joined ${count(edges, 'edge', 'edges')}.`,
    allJoined: 'All seams are joined.',
    openAlready: 'This is an open edge already.',
    pathFrom: 'The seam begins here. Choose where it goes.',
    noWay: 'No edge leads that way.',
    walkBegins: 'Walking: arrow keys follow the edges, P parts the edge just walked.',
    walked: (facts: EdgeFacts, unit: LengthUnit, isParting: boolean): string => {
      const state = facts.isOpen ? 'open edge' : facts.letter === null ? (isParting ? 'parted' : 'joined') : `seam ${facts.letter}`;
      const turn = Math.round(facts.foldDeg);
      const fold = turn === 0 ? 'flat' : `${turn > 0 ? 'ridge' : 'valley'} of ${Math.abs(turn)} degrees`;
      return `${formatLength(facts.length, unit)}, ${fold}, ${state}.`;
    },
  },

  foot: {
    units: 'Lengths in',
    unitNames: { mm: 'mm', in: 'inches' },
    light: 'Light',
    themes: { auto: 'as the system', light: 'light', dark: 'dark' },
    contrast: 'Contrast',
    contrasts: { auto: 'as the system', more: 'high' },
    keys: 'Letter keys',
    keyNames: { on: 'on', off: 'off' },
    licences: 'What Foamloft is made of',
    licencesNone: 'The list could not be fetched.',
  },
} as const;
