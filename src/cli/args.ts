import { parseArgs } from 'node:util';
import { PAPER_LANGUAGES } from '../base/paper-language.ts';
import type { FlattenWishes, HeatShrinkage } from '../model/flatten-settings.ts';
import type { GirthTape } from '../model/girth.ts';
import type { PaperChoice } from '../project/project.ts';
import { bodyFrom } from './body-option.ts';
import { WISH_LIMITS } from '../project/wish-limits.ts';
import { areasFrom } from './area-option.ts';
import { clayFrom } from './clay-option.ts';
import { ARTWORK_ONLY, artworkOptionsFrom, type ArtworkOptions } from './artwork-options.ts';
import type { CompareChoices } from './compare-command.ts';
import { CORE_ONLY, coreOptionsFrom, type CoreOptions } from './core-options.ts';
import { WrongUsage } from './exit.ts';
import { machineFrom } from './machine-option.ts';
import { mockUpFrom } from './mock-up-option.ts';
import type { MakeChoices } from './make-command.ts';
import { nestChoicesFrom, type NestChoices } from './nest-options.ts';
import { decimal, given, number, oneOf } from './option-values.ts';
import { paintFrom } from './paint-option.ts';
import { pieceFoamsFrom } from './piece-foam-option.ts';
import { printerFrom } from './printer-option.ts';
import { PROPOSE_ONLY, proposeChoicesFrom, type ProposeChoices } from './propose-options.ts';
import { raisesFrom } from './raise-option.ts';
import { rulesFrom } from './rules-option.ts';
import { scaleFrom } from './scale-option.ts';
import { sculptWishesFrom } from './sculpt-wishes.ts';
import { seamWishesFrom } from './seam-options.ts';
import { shapeChoicesFrom, type ShapeChoices } from './shape-options.ts';
import { shopFrom } from './shop-option.ts';
import { stockFrom } from './stock-option.ts';
import { simplifyFrom } from './simplify-option.ts';
import { STACK_ONLY, stackChoicesFrom, type StackChoices } from './stack-options.ts';
import type { StripChoices } from './strip-command.ts';
import { staggerFrom, wallFrom } from './wall-option.ts';

export type Command =
  | { readonly name: 'help' }
  | { readonly name: 'version' }
  | { readonly name: 'inspect'; readonly input: string; readonly json: boolean }
  | { readonly name: 'make'; readonly choices: MakeChoices }
  | { readonly name: 'seams'; readonly choices: ProposeChoices }
  | { readonly name: 'compare'; readonly choices: CompareChoices }
  | { readonly name: 'nest'; readonly choices: NestChoices }
  | { readonly name: 'shape'; readonly choices: ShapeChoices }
  | { readonly name: 'stack'; readonly choices: StackChoices }
  | { readonly name: 'core'; readonly choices: CoreOptions }
  | { readonly name: 'strip'; readonly choices: StripChoices }
  | { readonly name: 'artwork'; readonly choices: ArtworkOptions };

/**
 * Understands the command line.
 * @param words  arguments after the script's name.
 * @param today  `YYYY-MM-DD`, used when --date is left out.
 * @throws WrongUsage with one sentence.
 */
export function parseCommand(words: readonly string[], today: string): Command {
  const { values, positionals } = parsed(words);
  if (values.help === true || words.length === 0) return { name: 'help' };
  if (values.version === true) return { name: 'version' };
  const [command, input, ...rest] = positionals;
  if (command === 'shape') return { name: 'shape', choices: shapeChoicesFrom(positionals.slice(1), values) };
  if (command === 'core') return { name: 'core', choices: coreOptionsFrom(positionals.slice(1), values) };
  if (values.list === true) throw new WrongUsage('--list is an option of shape and of core.');
  const ofCore = CORE_ONLY.find((name) => values[name] !== undefined);
  if (ofCore !== undefined) throw new WrongUsage(`--${ofCore} is an option of core.`);
  if (command === 'stack')
    return { name: 'stack', choices: stackChoicesFrom(positionals.slice(1), values, scaleFrom(values)) };
  const ofStack = STACK_ONLY.find((name) => values[name] !== undefined);
  if (ofStack !== undefined) throw new WrongUsage(`--${ofStack} is an option of stack.`);
  if (command === 'artwork') return { name: 'artwork', choices: artworkOptionsFrom(positionals.slice(1), values) };
  const ofArtwork = ARTWORK_ONLY.find((name) => values[name] !== undefined);
  if (ofArtwork !== undefined) throw new WrongUsage(`--${ofArtwork} is an option of artwork.`);
  if (command === 'compare') return { name: 'compare', choices: compareChoices(positionals.slice(1), values) };
  if (values.kept !== undefined) throw new WrongUsage('--kept is an option of compare.');
  if (command === 'strip') return { name: 'strip', choices: stripChoices(positionals, values, today) };
  if (command === undefined)
    throw new WrongUsage(
      'there is no command: begin with inspect, seams, make, compare, nest, shape, stack, core, artwork or strip.',
    );
  if (command !== 'inspect' && command !== 'make' && command !== 'seams' && command !== 'nest')
    throw new WrongUsage(
      `there is no command ${command}: use inspect, seams, make, compare, nest, shape, stack, core, artwork or strip.`,
    );
  const isOfParts = command === 'make' && values.parts !== undefined;
  if (input === undefined && isOfParts) return { name: 'make', choices: makeChoices(undefined, values, today) };
  if (input === undefined)
    throw new WrongUsage(`${command} needs a file: node dist/cli.js ${command} MODEL${OUT_OF[command]}.`);
  if (rest.length > 0)
    throw new WrongUsage(
      `${command} takes one file, but ${rest.length + 1} were given: ${[input, ...rest].join(', ')}.`,
    );
  if (command === 'inspect') {
    const stray = Object.keys(values).find((name) => name !== 'json');
    if (stray !== undefined) throw new WrongUsage(`--${stray} is an option of make, not of inspect.`);
    return { name: 'inspect', input, json: values.json === true };
  }
  if (command === 'nest') return { name: 'nest', choices: nestChoicesFrom(input, values) };
  if (command === 'seams') return { name: 'seams', choices: proposeChoicesFrom(input, values, scaleFrom(values)) };
  return { name: 'make', choices: makeChoices(input, values, today) };
}

/** @throws WrongUsage where there are not two states to compare. */
function compareChoices(inputs: readonly string[], values: ReturnType<typeof parsed>['values']): CompareChoices {
  const { kept, json = false, ...others } = values;
  const [stray] = Object.keys(others);
  if (stray !== undefined) throw new WrongUsage(`--${stray} is no option of compare.`);
  const [one, other, ...rest] = inputs;
  if (kept !== undefined && one !== undefined && other === undefined) return { inputs: [one], version: kept, json };
  if (kept !== undefined || other === undefined || rest.length > 0)
    throw new WrongUsage('compare takes two projects, or one and --kept with the name of a version.');
  return { inputs: [one, other], json };
}

/** What a command must be told beside its file. */
const OUT_OF = { inspect: '', nest: '', seams: ' --out FILE.json', make: ' --out DIR' } as const;

const OPTIONS = {
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean' },
  json: { type: 'boolean' },
  list: { type: 'boolean' },
  kept: { type: 'string' },
  out: { type: 'string' },
  seams: { type: 'string' },
  parts: { type: 'string' },
  name: { type: 'string' },
  'new-version': { type: 'string' },
  unit: { type: 'string' },
  size: { type: 'string' },
  thickness: { type: 'string' },
  wall: { type: 'string' },
  stagger: { type: 'string' },
  simplify: { type: 'string' },
  area: { type: 'string', multiple: true },
  'model-is': { type: 'string' },
  neutral: { type: 'string' },
  off: { type: 'string' },
  traced: { type: 'string' },
  up: { type: 'string' },
  'seam-price': { type: 'string' },
  'squash-price': { type: 'string' },
  'even-out': { type: 'boolean' },
  'keep-apart': { type: 'boolean' },
  shrink: { type: 'string' },
  rule: { type: 'string', multiple: true },
  'piece-foam': { type: 'string', multiple: true },
  raise: { type: 'string', multiple: true },
  steep: { type: 'string', multiple: true },
  score: { type: 'string', multiple: true },
  'girth-at': { type: 'string' },
  body: { type: 'string' },
  'body-along': { type: 'string' },
  'body-girth': { type: 'string' },
  ease: { type: 'string' },
  core: { type: 'string' },
  'core-model': { type: 'string' },
  'core-unit': { type: 'string' },
  'core-room': { type: 'string' },
  pass: { type: 'string' },
  paper: { type: 'string' },
  landscape: { type: 'boolean' },
  margin: { type: 'string' },
  overlap: { type: 'string' },
  mirrored: { type: 'string' },
  ruled: { type: 'string' },
  language: { type: 'string' },
  printer: { type: 'string' },
  measured: { type: 'string' },
  glue: { type: 'string' },
  currency: { type: 'string' },
  'sheet-price': { type: 'string', multiple: true },
  stock: { type: 'string' },
  border: { type: 'string' },
  spacing: { type: 'string' },
  turns: { type: 'string' },
  'turn-over': { type: 'boolean' },
  'no-buying': { type: 'boolean' },
  'lay-out-moves': { type: 'string' },
  coats: { type: 'string' },
  colour: { type: 'string', multiple: true },
  paint: { type: 'string', multiple: true },
  clay: { type: 'string', multiple: true },
  'clay-area': { type: 'string', multiple: true },
  'clay-sheets': { type: 'string' },
  'clay-wall': { type: 'string' },
  fillet: { type: 'string', multiple: true },
  'mock-up': { type: 'string' },
  card: { type: 'string' },
  dxf: { type: 'boolean' },
  'svg-sheets': { type: 'boolean' },
  png: { type: 'string' },
  stl: { type: 'boolean' },
  obj: { type: 'boolean' },
  smaller: { type: 'string' },
  cutter: { type: 'string' },
  'cut-width': { type: 'string' },
  bridges: { type: 'string' },
  date: { type: 'string' },
  report: { type: 'string' },
  from: { type: 'string' },
  limits: { type: 'string' },
  limit: { type: 'string' },
  pieces: { type: 'string' },
  mirror: { type: 'boolean' },
  hide: { type: 'string' },
  seconds: { type: 'string' },
  moves: { type: 'string' },
  sheets: { type: 'string' },
  axis: { type: 'string' },
  seat: { type: 'string' },
  dowel: { type: 'string' },
  'core-hole': { type: 'string' },
  'core-at': { type: 'string' },
  clearance: { type: 'string' },
  'hole-margin': { type: 'string' },
  turned: { type: 'string' },
  open: { type: 'string' },
  pipe: { type: 'string' },
  diameter: { type: 'string' },
  length: { type: 'string' },
  profile: { type: 'string' },
  wind: { type: 'string', multiple: true },
  skin: { type: 'string' },
  staves: { type: 'string', multiple: true },
  'start-cap': { type: 'string' },
  'end-cap': { type: 'string' },
  'glue-room': { type: 'string' },
  'seam-turn': { type: 'string' },
  'wrap-price': { type: 'string' },
  'sheet-size': { type: 'string' },
  seed: { type: 'string' },
  width: { type: 'string' },
  known: { type: 'string' },
  deviation: { type: 'string' },
  close: { type: 'string' },
  regularise: { type: 'string' },
  symmetric: { type: 'string' },
  strokes: { type: 'string' },
  height: { type: 'string' },
  dpi: { type: 'string' },
  square: { type: 'string' },
  place: { type: 'string', multiple: true },
  check: { type: 'string', multiple: true },
  threshold: { type: 'string' },
  invert: { type: 'boolean' },
  smooth: { type: 'string' },
  specks: { type: 'string' },
  trace: { type: 'string' },
  crop: { type: 'string' },
  light: { type: 'string' },
  offset: { type: 'string' },
  corners: { type: 'string' },
  inlay: { type: 'string' },
  'inlay-from': { type: 'string' },
  raised: { type: 'string' },
  edge: { type: 'string' },
  steps: { type: 'string' },
  repeat: { type: 'string' },
  round: { type: 'string' },
  'strip-width': { type: 'string' },
  'spaced-on': { type: 'string' },
  as: { type: 'string' },
  along: { type: 'string' },
  start: { type: 'string' },
  end: { type: 'string' },
  ends: { type: 'string' },
  stand: { type: 'string' },
  scatter: { type: 'string' },
  least: { type: 'string' },
  'edge-room': { type: 'string' },
  vary: { type: 'string' },
  turn: { type: 'string' },
} as const;

type Values = ReturnType<typeof parsed>['values'];

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true, strict: true });
  } catch (error) {
    const text = error instanceof Error ? error.message.split('. ')[0] : String(error);
    const dashed = /^Option '(?:-\w, )?--([\w-]+)/.exec(text)?.[1];
    if (dashed !== undefined && text.includes('ambiguous'))
      throw new WrongUsage(
        `--${dashed} is followed by a word with a dash: give it a value, with a minus as --${dashed}=-2.`,
      );
    throw new WrongUsage(`${text.charAt(0).toLowerCase()}${text.slice(1)}.`);
  }
}

function makeChoices(input: string | undefined, values: Values, today: string): MakeChoices {
  if (values.json === true) throw new WrongUsage('--json is an option of inspect; make always writes report.json.');
  const stray = PROPOSE_ONLY.find((name) => values[name] !== undefined);
  if (stray !== undefined) throw new WrongUsage(`--${stray} is an option of seams, not of make.`);
  if (values.out === undefined) throw new WrongUsage('make needs a folder to write to: add --out DIR.');
  if (values.wall !== undefined && values.thickness !== undefined)
    throw new WrongUsage('give --thickness or --wall, not both.');
  const wear = wearFrom(values);
  const body = bodyFrom(values, wear?.tapes?.at(0)?.id);
  const scale = body?.scale ?? scaleFrom(values);
  return {
    ...given('input', input),
    out: values.out,
    ...given('parts', values.parts),
    ...given('name', nameFrom(values.name)),
    ...given('seams', values.seams),
    ...given('newVersion', values['new-version']),
    ...given('scale', scale),
    ...given('thicknessMm', number('thickness', values.thickness, { over: 0, most: 200 })),
    ...given('wallMm', wallFrom(values.wall)),
    ...given('staggerMm', staggerFrom(values.stagger)),
    ...given('simplify', simplifyFrom(values.simplify)),
    ...given('areas', areasFrom(values.area)),
    ...sculptWishesFrom(values),
    flatten: flattenFrom(values),
    ...given('shrinkage', shrinkageFrom(values.shrink)),
    ...given('rules', rulesFrom(values.rule)),
    ...given('pieceFoams', pieceFoamsFrom(values['piece-foam'])),
    ...given('raises', raisesFrom(values.raise)),
    ...given('seamWishes', seamWishesFrom(values.steep, values.score, values.fillet)),
    ...given('wear', wear),
    ...given('body', body === undefined ? undefined : [body.measure]),
    ...given('coreModel', coreModelFrom(values)),
    paper: paperFrom(values),
    ...given('machine', machineFrom(values)),
    ...given('printer', printerFrom(values)),
    ...given('shop', shopFrom(values)),
    ...given('stock', stockFrom(values)),
    ...given('paint', paintFrom(values)),
    ...given('clay', clayFrom(values)),
    ...given('mockUp', mockUpFrom(values)),
    date: dateFrom(values.date, today),
  };
}

function nameFrom(word: string | undefined): string | undefined {
  const name = word?.trim();
  if (name === '') throw new WrongUsage('--name takes what the prop is called.');
  return name;
}

const STRIP_OPTIONS: readonly string[] = ['out', 'thickness', 'paper', 'margin', 'date'];

function stripChoices(positionals: readonly string[], values: Values, today: string): StripChoices {
  if (positionals.length > 1) throw new WrongUsage('strip takes no file: it is the same for every sculpt.');
  const stray = Object.keys(values).find((name) => !STRIP_OPTIONS.includes(name));
  if (stray !== undefined) throw new WrongUsage(`--${stray} is an option of make, not of strip.`);
  if (values.out === undefined) throw new WrongUsage('strip needs a folder to write to: add --out DIR.');
  return {
    out: values.out,
    ...given('thicknessMm', number('thickness', values.thickness, { over: 0, most: 200 })),
    paper: paperFrom(values),
    date: dateFrom(values.date, today),
  };
}

function flattenFrom(values: Values): Partial<FlattenWishes> {
  return {
    ...given('seamPrice', number('seam-price', values['seam-price'], WISH_LIMITS.seamPrice)),
    ...given('squashPrice', number('squash-price', values['squash-price'], WISH_LIMITS.squashPrice)),
    ...given('evenOut', values['even-out']),
    ...given('keepApart', values['keep-apart']),
  };
}

/** Far beyond any body or sculpt, mm. */
const MOST_BODY_MM = 1e6;

/** What the part is measured against; nothing where no option of that kind was given. */
function wearFrom(values: Values): MakeChoices['wear'] {
  const tape = tapeFrom(values);
  const passMm = number('pass', values.pass, { over: 0, most: MOST_BODY_MM });
  const core = values.core === undefined ? undefined : alongAxis('core', values.core, 'z=32', { over: 0 });
  if (tape === undefined && passMm === undefined && core === undefined) return undefined;
  return {
    ...(tape === undefined ? {} : { tapes: [tape] }),
    ...(core === undefined
      ? {}
      : {
          core: [{ id: 'core-1', name: 'Core', pointInFile: [0, 0, 0], direction: core.axis, diameterMm: core.value }],
        }),
    ...(passMm === undefined ? {} : { worn: { girthMm: passMm } }),
  };
}

function coreModelFrom(values: Values): MakeChoices['coreModel'] {
  const { 'core-model': path, 'core-unit': unitWord, 'core-room': roomWord } = values;
  if (path === undefined) {
    if (unitWord !== undefined || roomWord !== undefined)
      throw new WrongUsage('--core-unit and --core-room belong to a core: say which with --core-model FILE.');
    return undefined;
  }
  const unit = oneOf('core-unit', unitWord, ['mm', 'cm', 'm', 'in', 'sculpt']) ?? 'sculpt';
  return { path, unit, ...given('roomMm', number('core-room', roomWord, { least: 0, most: MOST_BODY_MM })) };
}

function tapeFrom(values: Values): GirthTape | undefined {
  const bodyGirthMm = number('body-girth', values['body-girth'], { over: 0, most: MOST_BODY_MM });
  // Foam may be stretched on where the size follows the body.
  const isSized = values.body !== undefined;
  const easeMm = isSized ? undefined : number('ease', values.ease, { least: 0, most: MOST_BODY_MM });
  const word = values['girth-at'];
  if (word === undefined) {
    if (bodyGirthMm !== undefined || easeMm !== undefined)
      throw new WrongUsage('--body-girth and --ease belong to a tape: say where with --girth-at y=120.');
    return undefined;
  }
  const { axis, value } = alongAxis('girth-at', word, 'y=120', { least: -MOST_BODY_MM });
  const [x, y, z] = axis.map((share) => (share === 0 ? 0 : value));
  return {
    id: 'tape-1',
    name: 'Girth',
    pointInFile: [x, y, z],
    normal: axis,
    ...given('bodyGirthMm', bodyGirthMm),
    ...given('easeMm', easeMm),
  };
}

/** `y=120`: an axis of the file and a number. */
function alongAxis(name: string, word: string, example: string, limits: { least?: number; over?: number }) {
  const [axisWord, numberWord, ...rest] = word.split('=');
  const axis = oneOf(name, axisWord, ['x', 'y', 'z'], 'axis=number with axis ');
  const value = number(name, numberWord ?? '', { ...limits, most: MOST_BODY_MM });
  if (axis === undefined || value === undefined || rest.length > 0)
    throw new WrongUsage(`--${name} looks like ${example}.`);
  const direction = [axis === 'x' ? 1 : 0, axis === 'y' ? 1 : 0, axis === 'z' ? 1 : 0] as const;
  return { axis: direction, value };
}

/** No decimal commas here: `1,5` is two numbers. */
function shrinkageFrom(word: string | undefined): HeatShrinkage | undefined {
  if (word === undefined) return undefined;
  const [alongPct, acrossPct, ...rest] = word.split(',').map(decimal);
  const isShrinkage = (pct: number | undefined): pct is number =>
    pct !== undefined && Math.abs(pct) < WISH_LIMITS.shrinkagePct;
  if (rest.length > 0 || !isShrinkage(alongPct) || !isShrinkage(acrossPct)) {
    throw new WrongUsage(
      `--shrink takes two numbers of per cent under ${WISH_LIMITS.shrinkagePct}, along and across the sheet, as 2,1.5, not ${word === '' ? 'nothing' : word}.`,
    );
  }
  return { alongPct, acrossPct };
}

function paperFrom(values: Values): Partial<PaperChoice> {
  const marginMm = number('margin', values.margin, { least: 0, most: 200 });
  const overlapMm = number('overlap', values.overlap, { least: 0, most: 200 });
  return {
    ...(values.paper === undefined ? {} : paperNamed(values.paper)),
    ...(values.landscape === true ? { orientation: 'landscape' as const } : {}),
    ...given('marginMm', marginMm),
    ...given('overlapMm', overlapMm),
    ...given('mirrored', oneOf('mirrored', values.mirrored, ['once', 'each'] as const)),
    ...given('ruled', oneOf('ruled', values.ruled, ['print', 'tell'] as const)),
    ...given('language', oneOf('language', values.language, PAPER_LANGUAGES)),
  };
}

function paperNamed(word: string): Partial<PaperChoice> {
  const roll = /^roll=(.+)$/.exec(word);
  if (roll !== null) return { name: 'roll', widthMm: mustBe(number('paper', roll[1], { over: 0, most: 5080 })) };
  const custom = /^custom=(.+)x(.+)$/i.exec(word);
  if (custom !== null) {
    return {
      name: 'custom',
      widthMm: mustBe(number('paper', custom[1], { over: 0, most: 5080 })),
      heightMm: mustBe(number('paper', custom[2], { over: 0, most: 5080 })),
    };
  }
  return { name: word };
}

function mustBe(value: number | undefined): number {
  if (value === undefined) throw new WrongUsage('--paper roll=MM and custom=WxH need sizes in mm.');
  return value;
}

function dateFrom(word: string | undefined, today: string): string {
  if (word === undefined) return today;
  const [day] = word.split('T');
  // 30 February is taken for 2 March: the day must come back as it was written.
  const isReal = /^\d{4}-\d{2}-\d{2}(T[\d:.]+Z?)?$/.test(word) && !Number.isNaN(Date.parse(word));
  if (!isReal || new Date(Date.parse(day)).toISOString().slice(0, 10) !== day) {
    throw new WrongUsage(`--date ${word} is no date: write it as 2026-03-01.`);
  }
  return word;
}
