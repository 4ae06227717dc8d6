import { settingText, type LeanWords } from '../../base/lean-words.ts';
import type { FinishWork } from '../../model/finish.ts';
import { spoken } from '../language/spoken.ts';
import type { Phase } from './work-order.ts';

const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

/** What is said at the bench, where the work is done line by line. */
export const AT_BENCH_WORDS = spoken('atBench', {
  open: 'At the bench',
  verb: 'go to the bench: the work line by line',
  label: 'At the bench',
  leave: 'Job sheet',
  leaveLabel: 'Back to the job sheet',
  phases: {
    print: 'Print',
    cut: 'Cut',
    bevel: 'Bevel',
    form: 'Form',
    fit: 'Dry fit',
    glue: 'Glue',
    parts: 'Parts',
    finish: 'Finish',
  } satisfies Record<Phase, string>,
  kinds: 'Kinds of work',
  share: (done: number, all: number) => `${done}/${all}`,
  far: (done: number, all: number) => `${done} of ${count(all, 'line', 'lines')} done`,
  place: (phase: string, at: number, all: number) => `${phase}, ${at} of ${all}`,
  spoken: (title: string, phase: string, at: number, all: number) => `${title}. ${phase}, ${at} of ${all}.`,
  back: 'Back',
  next: 'Next',
  done: 'Done',
  isDone: 'Take back',
  isDoneLabel: 'Take back the tick: this line is done',
  actions: 'Tick off, go on, go back',
  state: {
    done: 'done',
    changed: 'Ticked off, but changed since: to be done anew.',
  },
  changedLines: (n: number, first: string) =>
    n === 1
      ? `Changed since it was ticked off: ${first}.`
      : `Changed since they were ticked off: ${first} and ${n - 1} more.`,
  goneLines: (n: number) => `${count(n, 'ticked step is', 'ticked steps are')} no more.`,
  see: 'See the first',
  forget: 'Forget',
  empty: 'Nothing to do yet: the job needs pieces first.',
  making: 'Being worked out …',
  keys: 'Space ticks off, arrow keys go on and back, Esc leads to the job sheet. Or swipe.',
  awake: { on: 'The screen stays awake.', off: 'This browser lets the screen sleep: set the tablet to stay awake.' },

  pages: {
    title: (pages: number) => `Print ${count(pages, 'page', 'pages')}`,
    save: 'Save the pages, PDF',
  },
  square: {
    title: 'Measure the square',
    text: 'On the first page. Both its sides must be as long as is printed beside it. If not, print anew without fitting to the page, or measure your printer under “Paper”.',
  },
  cut: {
    title: (number: number | string) => `Cut ${number}`,
    figures: (quantity: number, thickness: string) => `${quantity}× from ${thickness}`,
    hands: { left: 'left hand', right: 'right hand' },
    traced: {
      face: 'Traced on the face: this side out.',
      back: 'Traced on the back: the template lies mirrored.',
    },
    straight: 'Cut it square: bevels come next.',
    onSheet: (sheets: readonly string[]) => `On ${sheets.join(' and ')}.`,
    sheet: (n: number, of: number) => (of === 1 ? 'the only sheet' : `sheet ${n} of ${of}`),
    inHand: (sheet: string, label: string) => `${sheet} (${label})`,
    nowhere: 'On no sheet yet.',
    picture: (name: string) => `${name} as it is cut, with its marks`,
  },
  bevel: {
    title: (number: number | string) => `Bevel ${number}`,
    under: 'In under: the cut runs in beneath the traced side.',
    strip: (bevelDeg: number) => `Both long edges ${settingText(bevelDeg)}`,
    /** Of the saw, in the language in force; in English they are those of the core. */
    leans: undefined as LeanWords | undefined,
    edges: (setting: string, lengths: readonly string[]) =>
      `${setting}: ${lengths.length === 1 ? 'the edge of' : 'edges of'} ${lengths.join(', ')}`,
  },
  form: {
    title: (number: number | string) => `Form ${number}`,
    grooves: (n: number, side: 'face' | 'back', depth: string, width: string) =>
      `${count(n, 'groove', 'grooves')} from the ${side}: up to ${depth} deep and ${width} wide.`,
    kerfs: (n: number, side: 'face' | 'back', depth: string) =>
      `${count(n, 'kerf', 'kerfs')} from the ${side}, ${depth} deep.`,
    scores: (n: number, depth: string) => `${count(n, 'line', 'lines')} scored in the face, up to ${depth} deep.`,
    bend: (radius: string) => `Bend it: tightest to a radius of ${radius}.`,
  },
  fit: {
    title: 'Put it together dry',
    text: 'Tape the pieces together without glue and look along every seam.',
    worst: (letter: string, one: string, other: string) => `Look first at seam ${letter}, ${one} to ${other}.`,
  },
  glue: {
    seams: (letters: readonly string[]) => `Glue ${letters.join(', ')}`,
    step: (number: number) => `Glue step ${number}`,
    title: (number: number, title: string) => `${number}. ${title}`,
    picture: (number: number) => `The prop when step ${number} of gluing is done`,
    drawing: 'The picture is being drawn …',
    warmed: 'Warmed before the glue was opened:',
  },
  part: {
    title: (at: number, of: number) => `Step ${at} of ${of}`,
    copies: (n: number) => `${n} times, once for each.`,
    pieces: (numbers: readonly (number | string)[]) =>
      numbers.length === 1 ? `Piece ${numbers[0]}.` : `Pieces ${numbers.join(', ')}.`,
  },
  finish: {
    clay: 'Model',
    bare: 'Tape',
    seal: 'Seal',
    prime: 'Prime',
    paint: 'Paint',
    colour: 'Paint',
    clear: 'Clear coat',
  } satisfies Record<FinishWork, string>,
  copies: {
    label: 'Copies that are done',
    copy: (n: number, of: number) => `copy ${n} of ${of}`,
  },
  ticks: {
    label: 'How far this piece is',
    kinds: { printed: 'printed', cut: 'cut', bevelled: 'bevelled', formed: 'formed', glued: 'glued' },
    stands: { done: 'yes', open: 'not yet', changed: 'changed since' },
  },
  mind: 'Mind:',
  end: {
    title: 'All done',
    open: (n: number) => `${count(n, 'line is', 'lines are')} still open`,
    go: 'Go to the first',
  },
});
