import { formatLength, formatNumber, type LengthUnit } from '../base/format-length.ts';
import { settingText } from '../base/lean-words.ts';
import type { BendStyle, FoamPiece } from '../model/foam-piece.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import type { Page } from '../model/page.ts';
import type { FileKind } from '../worker/workshop-api.ts';
import type { LanguageWish } from './language/language.ts';
import { spoken } from './language/spoken.ts';
import type { EdgeFacts } from './edge-facts.ts';
import { FORMING_WORDS } from './forming-words.ts';
import { JOIN_WORDS } from './join-words.ts';
import { SPRING_WORDS } from './spring-words.ts';
import { WEAR_WORDS } from './wear-words.ts';
import { MARK_WORDS } from './mark-words.ts';
import { DONE_WORDS } from './done-words.ts';
import { NEUTRAL_WORDS } from './neutral-words.ts';
import { PRINTER_WORDS } from './printer-words.ts';
import { SAW_WORDS } from './saw-words.ts';

/** `1 seam`, `2 seams`. */
const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

/** Every text the window shows or speaks. Trade words and plain ones; sentences say what is so and what to do. */
export const WORDS = spoken('window', {
  name: 'Foamloft',
  waiting: 'open a sculpt first',
  sheetLabel: 'Job sheet',

  /** Lines of the job sheet, in the order of the work. */
  lines: {
    size: 'What it is and how big',
    seams: 'Where it parts',
    foam: 'Which foam',
    fit: 'Does it fit and close',
    sheets: 'How it lies on the sheets',
    paper: 'Paper',
    cuts: 'The cut list',
    gluing: 'The order of gluing',
    finish: 'Colours and finishing',
    takes: 'What it takes',
    files: 'Files',
    parts: 'Parts',
  },
  marks: { so: 'decided', missing: 'still to decide', wrong: 'something is wrong here', wait: 'being worked out' },

  head: {
    jobName: 'Name of the job',
    revision: (n: number) => `revision ${n}`,
    saved: { saved: 'kept in this browser', saving: 'being kept …', refused: 'not kept: save the job to a file' },
    open: 'Open a file …',
    keep: 'Save the job',
    find: 'What can be done',
    back: (name: string) => `back to ${name}`,
    kit: 'Samples to try:',
    kitLabel: 'Sample jobs',
    undo: 'Undo',
    redo: 'Redo',
  },

  size: {
    unread: 'no sculpt yet',
    unknown: 'Size not known yet',
    tall: (height: string) => `${height} tall`,
    across: (width: string, depth: string) => `${width} wide, ${depth} deep`,
    picture: (thing: string) => `The sculpt from the front with its height and width, beside ${thing}`,
    familiar: { hand: 'a hand 200 mm long', head: 'a head 230 mm high', door: 'a door 2 m high' },
    familiarShort: {
      hand: (height: string) => `hand, ${height}`,
      head: (height: string) => `head, ${height}`,
      door: (height: string) => `door, ${height}`,
    },
    readAs: { mm: 'Read as millimetres.', cm: 'Read as centimetres.', m: 'Read as metres.', in: 'Read as inches.' },
    measured: 'Sized by two corners you measured.',
    byBody: (measure: string) => `Follows the body: ${measure}.`,
    fromAxis: (axis: 'longest' | 'x' | 'y' | 'z') =>
      axis === 'longest' ? 'Sized by its longest side.' : `Sized along ${axis}.`,
    change: 'change the size',
    keep: 'keep the size',
    ask: (longest: string) =>
      `The file holds numbers without a unit. Its longest side is ${longest}. Which size is it?`,
    unit: 'Unit of the file',
    units: { mm: 'mm', cm: 'cm', m: 'metres', in: 'inches' },
    orKnown: 'or a length you know:',
    axes: { longest: 'longest side', x: 'along x', y: 'along y', z: 'along z' },
    is: 'measures',
    measure: 'or pick two corners on the sculpt',
    measureVerb: 'measure between two corners',
    between: 'from corner to corner',
    up: 'Which way is up in the file',
  },

  seams: {
    waiting: 'set the size first',
    counts: (seams: number, pieces: number) => `${count(seams, 'seam', 'seams')}, ${count(pieces, 'piece', 'pieces')}`,
    sharper: 'Edges sharper than',
    partEdges: (n: number) => (n === 0 ? 'none left' : `Part ${count(n, 'edge', 'edges')}`),
    by: 'Part the foam',
    reach: { round: 'follow round', ridge: 'follow the ridge' },
    tools: { part: 'edge by edge', path: 'along a path', dart: 'pull a dart', walk: 'walking' },
    partAlong: (length: string) => `Part along ${length}`,
  },
  tools: {
    part: 'Click an edge to part the foam there, click a seam to join it again. Drag to draw a line along edges.',
    path: MARK_WORDS.tools.path,
    dart: MARK_WORDS.tools.dart,
    drawing: MARK_WORDS.drawing.place,
    measure: 'Click two corners whose distance you know.',
    move: MARK_WORDS.move.path,
    walk: 'Arrow keys walk from corner to corner, P parts the edge you came along, Shift with an arrow parts as you go. R picks corners for a path.',
  },

  foam: {
    answer: (thickness: string) => `${thickness} EVA foam`,
    answerOfWall: (thicknesses: readonly string[]) =>
      `EVA foam of ${thicknesses.length} sheets, from outside: ${thicknesses.join(', ')}`,
    stock: 'Sheets in stock, thickness as against each other',
    sheet: 'Sheet',
    size: (width: string, height: string) => `${width} × ${height}`,
    measured: 'Measured thickness',
    modelIs: 'The sculpt is the foam’s',
    surfaces: { face: 'face', middle: 'middle', back: 'back' },
    finer: 'Bending, tracing and shrinkage',
    neutral: 'Neutral fraction, from the inside of a bend',
    neutralWhy:
      'The layer of the foam that keeps its length when it bends. 0.5 until you have bent and measured a strip of your own.',
    traced: 'Templates are traced on the foam’s',
    sides: { face: 'face', back: 'back, printed mirrored' },
    wall: {
      heading:
        'Sheets of the wall, outermost first. The chosen one lies on the bench, and what stands below is about it.',
      name: (sheet: number, sheets: number, thickness: string) =>
        `${sheet}, ${thickness}${sheet === 1 ? ', outside' : sheet === sheets ? ', inside' : ''}`,
      add: { outside: 'Add a sheet outside', inside: 'Add a sheet inside' },
      move: { outside: 'outward', inside: 'inward' },
      stagger: 'Seams beside those outside',
      staggerOf: (sheet: string, least: string) =>
        `How far the seams of sheet ${sheet} lie beside those that are seen, along the sculpt: 0, or ${least} and more; below 0 to the other side.`,
      moveOf: (what: string, sheet: string) => `${what}: sheet ${sheet}`,
      remove: 'take away',
    },
  },

  fit: {
    waiting: 'waiting for pieces',
    answer: (stretch: string, squash: string) => `Stretch ${stretch}, squash ${squash}`,
    closes: (difference: string) => `Both sides of every seam agree within ${difference}.`,
    noSeams: 'No seam to close.',
    dryFit: (gap: string, overlap: string) =>
      `Put together dry, thick and bevelled, edges leave gaps of at most ${gap} and overlap by at most ${overlap}.`,
    worst: 'Gives most:',
  },
  forming: FORMING_WORDS,
  wear: WEAR_WORDS,
  neutral: NEUTRAL_WORDS,
  done: DONE_WORDS,
  printer: PRINTER_WORDS,
  marking: MARK_WORDS,
  joins: JOIN_WORDS,
  springing: SPRING_WORDS,
  seamTable: {
    caption: 'Seams with the length of both sides',
    seam: 'Seam',
    pieces: 'Pieces',
    oneSide: 'One side',
    otherSide: 'Other',
    difference: 'Apart',
    bevel: 'Bevel',
    dryFit: 'Dry fit',
    fits: (gap: string, overlap: string) => `gap ${gap}, overlap ${overlap}`,
    itself: (piece: number) => `${piece} closes`,
    choose: (letter: string) => `Seam ${letter}`,
    all: (n: number) => `all ${n} seams`,
    fewer: (n: number) => `only the ${n} that differ most`,
  },

  sheets: {
    waiting: 'waiting for pieces',
    answer: (n: number, width: string, height: string) => `${count(n, 'sheet', 'sheets')} of ${width} × ${height}`,
    sheet: (n: number) => `Sheet ${n}`,
    used: (share: string) => `${share} used`,
    picture: (pieces: number) => `A sheet of foam from above with ${count(pieces, 'piece', 'pieces')} on it`,
  },

  paper: {
    waiting: 'no pages yet',
    answer: (pages: number, paper: string) => `${count(pages, 'page', 'pages')} of ${paper}`,
    trueScale: 'Print at 100 %, without fitting to the page, and measure the square on the first page.',
    name: (name: string) => (name === 'roll' ? 'Roll' : name === 'custom' ? 'My own size' : name),
    paper: 'Paper',
    stands: 'Stands',
    orientation: { portrait: 'upright', landscape: 'across' },
    width: 'Width',
    height: 'Height',
    margin: 'Margin',
    overlap: 'Overlap',
    pages: 'Pages as they print',
    pageName: (page: Page) => (page.kind === 'scale' ? 'scale square' : page.name),
    picture: (name: string) => `Page ${name} as it prints`,
    place: (name: string, at: number, of: number) => `${name}, page ${at} of ${of}`,
    before: 'page before',
    next: 'next page',
    close: 'back to the bench',
    save: 'Save templates, PDF',
  },

  cuts: {
    waiting: 'waiting for pieces',
    answer: (pieces: number, area: string) => `${count(pieces, 'piece', 'pieces')}, ${area} of foam`,
    kind: (piece: FoamPiece) => {
      const hand = piece.hand === undefined ? '' : `${piece.hand} hand, `;
      const side = piece.tracedSide === 'back' ? ', traced on the back' : '';
      return `${hand}${piece.bendStyle}${side}`;
    },
    size: (width: string, height: string) => `${width} × ${height}`,
    figures: (quantity: number, thickness: string, area: string, give: string) =>
      `${quantity} × ${thickness}, ${area}, gives ${give}`,
    /** `strip, long edges 30° in under`. */
    strip: ({ bevelDeg }: FoamStrip) => `strip, long edges ${settingText(bevelDeg)}`,
    stripFigures: (quantity: number, thickness: string, area: string) => `${quantity} × ${thickness}, ${area}`,
    saw: SAW_WORDS,
  },
  cautions: {
    cut: 'Before you cut',
    glue: 'Before you heat or glue',
    step: 'Before this step',
    // PVC stays as it is written.
    names: (titles: readonly string[]) =>
      titles.map((title) => title.replace(/^\p{Lu}(?!\p{Lu})/u, (first) => first.toLowerCase())).join(', '),
  },

  findings: {
    severity: { error: 'Stops', warning: 'Look', note: 'Note' },
    alike: (n: number) => `and ${n} more like this`,
    more: (n: number) => `${n} more`,
  },
  repairs: {
    done: 'Repaired:',
    takeBack: 'take back',
    'turn-faces': 'faces turned',
    'drop-doubled': 'doubles dropped',
    'drop-empty': 'empty faces dropped',
    'close-hole': 'a hole closed',
    'keep-shell': 'one surface kept',
  },
  remedies: {
    turnFaces: 'Turn them',
    dropDoubled: 'Drop the doubles',
    dropEmpty: 'Drop them',
    closeHole: 'Close it',
    forgetWish: 'Forget this wish',
    partPiece: 'Part it along the line',
  },

  stages: ['whole', 'apart', 'flat', 'on the sheet'],
  stageKeys: ['W', 'A', 'F', 'S'],
  stage: {
    bench: 'The bench',
    label: 'The sculpt and its pieces on the bench',
    keys: 'Arrow keys turn the view, plus and minus go nearer and farther. Press E to walk along edges, slash to find what can be done.',
    slider: 'Where the pieces are, from whole to on the sheet',
    no3d: 'This browser cannot draw in 3D. Everything else works: pieces, sheets, pages and files.',
    lost: 'The 3D picture was lost. It comes back by itself; pieces, sheets, pages and files go on.',
    drop: 'Let go to open it',
    empty: 'Drop an OBJ or STL file here, or open one. Foamloft turns it into templates for foam, in true size.',
    reading: (name: string) => `Reading ${name} …`,
    stale: 'as it was before the last change',
  },

  verbs: {
    part: 'part here',
    join: 'join',
    joinSeam: (letter: string) => `join seam ${letter}`,
    joinAll: 'join everything',
    partTool: 'part edge by edge',
    pathTool: 'part along a path',
    walk: 'walk the edges',
    sharp: 'part edges sharper than an angle',
    frame: 'come close',
    frameAll: 'see all',
    traceFrom: (side: 'face' | 'back') => `trace on the ${side}`,
    bendAs: { rolled: 'roll it', grooved: 'groove its folds', kerfed: 'kerf its bend' } satisfies Record<
      BendStyle,
      string
    >,
    roll: (stage: string) => `show it ${stage}`,
    look: (side: string) => `look from the ${side}`,
    lookRound: 'turn it slowly round, or stop',
    lookReturn: 'look from where you were before',
    undo: (label: string) => `undo: ${label}`,
    redo: (label: string) => `redo: ${label}`,
    open: 'open a file',
    newVersion: 'put in a new version of this sculpt',
    save: (kind: FileKind) =>
      ({
        pdf: 'save templates as PDF',
        svg: 'save pieces as SVG',
        report: 'save the report',
        project: 'save the job',
        strip: 'save the test strip as PDF',
        changed: 'save pages of what changed as PDF',
      })[kind],
    keepSurface: 'keep only this surface',
    goTo: (line: string) => `go to: ${line}`,
    beside: { none: 'nothing beside it', hand: 'a hand beside it', head: 'a head beside it', door: 'a door beside it' },
  },
  chosen: {
    seam: (letter: string) => `Seam ${letter}`,
    openEdge: (letter: string) => `Open edge ${letter}`,
    piece: (number: number, name: string) => `${number} ${name}`,
    edgeFacts: (facts: EdgeFacts, unit: LengthUnit) =>
      `${formatLength(facts.length, unit)}, ${foldWords(facts.foldDeg)}`,
    seamFacts: (one: string, other: string, difference: string) => `${one} and ${other}, ${difference} apart`,
    openFacts: (length: string) => `${length}, an edge of the prop`,
    pieceFacts: (thickness: string, reason: string) => `${thickness}. ${reason}`,
    quantity: 'Cut',
    pieceName: 'Name',
    allowance: 'Lap',
    tools: {
      part: 'Part edges',
      path: 'Part along a path',
      dart: 'Pull a dart',
      drawing: 'Lay a drawing',
      measure: 'Measure',
      move: 'Move the seam',
      walk: 'Walk the edges',
    },
    noChoice: 'Nothing chosen',
    back: 'let go',
    done: 'done',
  },

  finder: {
    label: 'What do you want to do?',
    hint: 'type what you want to do, or a word of the trade',
    none: 'Nothing is called that here.',
    later: 'with nothing chosen or in hand ',
  },
  progress: { label: 'Being worked out', begins: 'working it out', cancel: 'call it off' },
  field: {
    wrong: (min: number, max: number, unit: LengthUnit) =>
      Number.isFinite(max)
        ? `Between ${formatLength(min, unit)} and ${formatLength(max, unit)}.`
        : 'A length, like 322 mm or 12 3/4 in.',
    thousands: 'No marks between thousands: 1234.5, not 1,234.5.',
  },

  notice: {
    close: 'close',
    stopped: 'Called off: what is shown is from before the last change.',
    goOn: 'work it out',
    broke: 'Something went wrong while working this out. The job itself is safe: save it to a file, or try again.',
    again: 'try again',
    silent:
      'What is being worked out has not answered for 20 seconds. It may only be large; if nothing moves, work it out afresh. The job itself is safe.',
    afresh: 'work it out afresh',
    storageRefused: 'This browser keeps nothing for later, so save the job to a file before you close the window.',
    recovered: (name: string) => `${name} is back as you left it.`,
    renewed: (file: string, told: string) => `${file} has taken the place of the sculpt. ${told}`.trim(),
    keepReport: 'keep the report',
    ofFile: (file: string, text: string) => `${file}: ${text}`,
    unreadable: (file: string) => `${file} could not be read from the disk: copy it and try again.`,
    seamsNeedModel: (file: string) => `${file} holds seams only: open its model first, then the seams.`,
    noSample: (title: string) => `${title} could not be fetched: open a file of your own.`,
    saved: (file: string) => `${file} is in your downloads.`,
  },

  spoken: {
    undone: (label: string) => `Undone: ${label}.`,
    redone: (label: string) => `Done again: ${label}.`,
    parted: (length: string) => `Parted along ${length}.`,
    joined: (length: string) => `Joined along ${length}.`,
    allJoined: 'Everything joined.',
    moved: 'Seam moved.',
    openAlready: 'This is an open edge of the prop already.',
    walkBegins: 'Walking. Arrow keys go along edges, P parts, Escape ends.',
    noWay: 'No edge leads that way.',
    walked: (facts: EdgeFacts, unit: LengthUnit, isParting: boolean) =>
      [
        `${formatLength(facts.length, unit)}, ${foldWords(facts.foldDeg)}`,
        facts.isOpen ? ', open edge' : facts.letter === null ? '' : `, seam ${facts.letter}`,
        isParting && !facts.isOpen ? ', parted' : '',
        '.',
      ].join(''),
    ready: (pieces: number, pages: number) =>
      `Ready: ${count(pieces, 'piece', 'pieces')}, ${count(pages, 'page', 'pages')}.`,
  },

  foot: {
    units: 'Lengths in',
    unitNames: { mm: 'mm', in: 'inches' },
    language: 'Language',
    languages: { auto: 'as the system', en: 'English', de: 'Deutsch' } satisfies Record<LanguageWish, string>,
    light: 'Light',
    themes: { auto: 'as the system', light: 'day', dark: 'night' },
    contrast: 'Contrast',
    contrasts: { auto: 'as the system', more: 'strong' },
    keys: 'Letter keys',
    keyNames: { on: 'on', off: 'off' },
    picture: 'Picture',
    pictures: { auto: 'as the machine allows', fine: 'fine', plain: 'plain, fast' },
    noLicences: 'The list could not be fetched; it is in licences.json beside the page.',
    licences: 'Works by others inside, and their terms',
  },

  settling: (text: string) => `${text}, pieces still settling`,
});

/** `flat`, `ridge 34°` where the surface turns outward, `valley 12°` where it turns inward. */
function foldWords(deg: number): string {
  if (Math.abs(deg) < 0.5) return 'flat';
  return `${deg > 0 ? 'ridge' : 'valley'} ${formatNumber(Math.abs(deg))}°`;
}
