import { readFile } from 'node:fs/promises';
import { formatInches } from '../base/format-length.ts';
import { needSculptAtWork, sculptAtWork } from '../project/at-work.ts';
import { contentHash } from '../base/hash.ts';
import type { Finding } from '../base/finding.ts';
import type { CoreModel } from '../model/clearance.ts';
import type { FlattenWishes, HeatShrinkage } from '../model/flatten-settings.ts';
import type { BodyMeasure } from '../model/body-measures.ts';
import type { ScaleChoice } from '../model/source-model.ts';
import type { Work } from '../base/work.ts';
import { atWorkIn, besideOf, stoppedIn, type Outcome, type SculptOutcome } from '../pipeline/outcome.ts';
import type { RunChoices } from '../pipeline/run.ts';
import { Pipeline } from '../pipeline/pipeline.ts';
import type { Source } from '../pipeline/sculpt-stage.ts';
import { writeShopFiles } from '../pipeline/shop-files.ts';
import { ThreadCrew } from '../pipeline/thread-crew.ts';
import { FILE_NAMES, writeFiles } from '../pipeline/write-files.ts';
import { emptyProject, nameFromFile } from '../project/new-project.ts';
import type { PaperChoice, Project, SculptPart } from '../project/project.ts';
import type { MockUp } from '../project/mock-up.ts';
import { ruled, type RuleName } from '../project/shop-rules.ts';
import { freeId, setCore } from '../project/wear-commands.ts';
import { sourceFormat } from '../pipeline/source-format.ts';
import { withAreas, type AreaChoice } from './area-option.ts';
import { withClay, type ClayOption } from './clay-option.ts';
import { Refused } from './exit.ts';
import { changePart, openInput, seamsFrom, type OpenedInput } from './open-input.ts';
import { onNewVersion } from './new-version-option.ts';
import { writeAll } from './output-folder.ts';
import { checkFolder } from './output-place.ts';
import { clearLeftOver, leftOver, RECORD_NAME, recordOf } from './output-record.ts';
import { partLines, withParts } from './parts-option.ts';
import { pieceFoamSettings, type PieceFoamChoice } from './piece-foam-option.ts';
import { withPrinter, type PrinterOption } from './printer-option.ts';
import { raisedRegions, type RaiseChoice } from './raise-option.ts';
import { readInput } from './read-input.ts';
import { LEAST_TRIANGLES, startThread, threadsOfMachine } from './flatten-threads.ts';
import { machineChoices, withCutter, type MachineOption } from './machine-option.ts';
import { makeSmall } from './mock-up-option.ts';
import { makeForMachines, tellCautions } from './machine-step.ts';
import { sculptOption } from './sculpt-options.ts';
import { wishedOf, type SculptWishes } from './sculpt-wishes.ts';
import { seamCommands, type SeamWishes } from './seam-options.ts';
import { withSimplify, type SimplifyOption } from './simplify-option.ts';
import { withPaint, type PaintOption } from './paint-option.ts';
import { withShop, type ShopOption } from './shop-option.ts';
import { springLines } from './spring-lines.ts';
import { sheetLines } from './sheet-lines.ts';
import { withBetterLayout, withStock, type StockOption } from './stock-option.ts';
import { terminalWork } from './terminal-work.ts';
import { wishedLayers } from './wall-option.ts';

/** What the command line said; left out means: as the project has it, or the default. */
export interface MakeChoices extends SculptWishes {
  /** A model or a project; left out where a prop is made of the parts of a file alone. */
  readonly input?: string;
  readonly out: string;
  /** A file of parts that are added. */
  readonly parts?: string;
  /** Of the prop, on every page. */
  readonly name?: string;
  readonly seams?: string;
  /** A model file that takes the place of the sculpt's. */
  readonly newVersion?: string;
  readonly scale?: ScaleChoice;
  /** What the wearer measures, where the size follows it. */
  readonly body?: readonly BodyMeasure[];
  /** Of every sheet of the wall. */
  readonly thicknessMm?: number;
  /** Sheets of the wall from the inside outward, mm; then no `thicknessMm`. */
  readonly wallMm?: readonly number[];
  /** How far the seams of inner sheets lie beside those of the outermost, mm. */
  readonly staggerMm?: number;
  /** Pieces that are cut from foam of another thickness. */
  readonly pieceFoams?: readonly PieceFoamChoice[];
  /** Areas that get a raised sheet. */
  readonly raises?: readonly RaiseChoice[];
  /** Seams named by their letters that are to be built otherwise. */
  readonly seamWishes?: SeamWishes;
  /** How far the sculpt is made simpler; null: not at all. */
  readonly simplify?: SimplifyOption;
  /** What is said of areas and groups. */
  readonly areas?: readonly AreaChoice[];
  readonly flatten?: Partial<FlattenWishes>;
  /** What the foam loses when warmed; pieces are then cut larger by it. */
  readonly shrinkage?: HeatShrinkage;
  /** Rules of the shop for the foam. */
  readonly rules?: Partial<Record<RuleName, number>>;
  /** Tapes, cores and what must pass, in place of the project's. */
  readonly wear?: Partial<Pick<SculptPart, 'tapes' | 'core' | 'worn'>>;
  /** A model file that the part sits on, beside other cores. */
  readonly coreModel?: { readonly path: string } & Pick<CoreModel, 'unit' | 'roomMm'>;
  readonly paper?: Partial<PaperChoice>;
  /** The printer that pages are drawn for. */
  readonly printer?: PrinterOption;
  /** Files beside the templates, for machines. */
  readonly machine?: MachineOption;
  /** Glue and prices. */
  readonly shop?: ShopOption;
  /** Foam in hand, and how sheets are filled. */
  readonly stock?: StockOption;
  /** Areas in clay over a core. */
  readonly clay?: ClayOption;
  /** Colours, and shapes in clay. */
  readonly paint?: PaintOption;
  /** A small prop of card to try the pieces out with. */
  readonly mockUp?: MockUp;
  readonly date: string;
}

/** `make [MODEL|PROJECT] [--parts FILE.json] --out DIR`: the whole chain, its files written all or none. @returns the lines for stdout. */
export async function makeCommand(choices: MakeChoices): Promise<string> {
  const started = performance.now();
  const { project: begun, sources, assumed, fileName, inputs } = await openAll(choices);
  await checkFolder(choices.out, [FILE_NAMES.pdf, FILE_NAMES.project], inputs);
  const crew = new ThreadCrew(startThread, threadsOfMachine(), LEAST_TRIANGLES);
  const pipeline = new Pipeline(crew);
  const first = withCutter(withPrinter(begun, choices.printer), choices.machine);
  const machine = machineChoices(choices.machine, first);
  tellCautions(machine);
  for (const [hash, source] of sources) pipeline.putSource(hash, source);
  const marked = choices.seams === undefined ? null : await seamsFrom(choices.seams, first);
  const { newVersion } = choices;
  const work = terminalWork();
  const { project: found, told } = await onNewVersion(changePart(first, marked ?? {}), newVersion, pipeline, work);
  // Seams that were carried over are the project's own.
  const seams = newVersion === undefined ? marked : null;
  const chosen = await withAreas(withChoices(found, choices, seams), choices.areas, pipeline, work);
  const cored = choices.coreModel === undefined ? chosen : await withCore(chosen, choices.coreModel, pipeline);
  const bought = withShop(await withSimplify(cored, choices.simplify, pipeline, work), choices.shop);
  const painted = await withPaint(bought, choices.paint, pipeline, work);
  const project = await withStock(await withClay(painted, choices.clay, pipeline, work), choices.stock);
  const runChoices = { strictSeams: seams !== null, date: choices.date };
  const run = runWishes(pipeline, project, choices.seamWishes, work, runChoices);
  let threads = 0;
  const ran = await run.finally(() => {
    ({ threads } = crew);
    crew.end();
  });
  const laid = await withBetterLayout(ran, choices.stock?.moves, work);
  const outcome = laid === ran.project ? ran : await pipeline.run(laid, work, runChoices);
  work.clear();
  refuseIfUnfinished(outcome, choices.seams ?? fileName);
  const computed = performance.now();
  const font = new Uint8Array(await readFile(new URL('./fonts/DejaVuSans.ttf', import.meta.url)));
  const files = await writeFiles(outcome, {
    font,
    date: choices.date,
    notes: [...assumed, ...told],
    sourceOf: (hash) => pipeline.sourceOf(hash),
  });
  if (!files.ok) throw Refused.from(files.problem, fileName);
  const shop = await writeShopFiles(outcome, { font, date: choices.date }, work);
  work.clear();
  const written = performance.now();
  const timings = {
    readAndComputeMs: computed - started,
    writeMs: written - computed,
    threads,
    peakMemoryMb: process.resourceUsage().maxRSS / 1024,
  };
  const forMachines = makeForMachines(outcome, machine, font, fileName);
  const sourceOf = pipeline.sourceOf.bind(pipeline);
  const small = await makeSmall(outcome, choices.mockUp, { sourceOf }, { font, date: choices.date });
  const made = new Map([...files.value, ...shop.files, ...small.files, ...forMachines.files]);
  const all = new Map([
    ...made,
    [RECORD_NAME, await recordOf(made)],
    ['timings.json', `${JSON.stringify(timings, null, 1)}\n`],
  ]);
  await checkFolder(choices.out, [...all.keys()], inputs);
  const left = await leftOver(choices.out, new Set(all.keys()), inputs);
  await writeAll(choices.out, all);
  const cleared = await clearLeftOver(choices.out, left);
  const said = [...assumed, ...told, ...shop.findings];
  return summary(outcome, said, choices.out, [shop.line, ...small.lines, ...forMachines.lines, ...cleared]);
}

/** What the command line names, opened: the model or project and the parts that are added to it. @throws Refused */
async function openAll(choices: MakeChoices): Promise<OpenedInput & { fileName: string; inputs: readonly string[] }> {
  const { input, parts } = choices;
  const file = input === undefined ? null : await readInput(input);
  const fileName = file?.name ?? parts ?? '';
  const opened =
    file === null
      ? { project: emptyProject(nameFromFile(fileName)), sources: new Map<string, Source>(), assumed: [] }
      : await openInput(file, choices.scale);
  const more = parts === undefined ? null : await withParts(opened.project, parts);
  const own = more?.project ?? opened.project;
  const name = choices.name ?? (input === undefined ? more?.name : undefined);
  const project = name === undefined ? own : { ...own, name };
  const stray = sculptAtWork(project) === null ? sculptOption(choices) : null;
  if (stray !== null)
    throw new Refused(`${fileName} holds no sculpt, and only a sculpt can be told ${stray}: leave that out.`);
  const sources = new Map([...opened.sources, ...(more?.sources ?? [])]);
  return {
    project,
    sources,
    assumed: opened.assumed,
    fileName,
    inputs: [...inputsOf(choices), ...(more?.inputs ?? [])],
  };
}

/** Files that are read. */
const inputsOf = ({ input, seams, newVersion, coreModel, stock }: MakeChoices): readonly string[] =>
  [input, seams, newVersion, coreModel?.path, stock?.file].filter((path) => path !== undefined);

/** Runs the chain; where seams are named by letters, once before, to learn which seam has which. */
async function runWishes(
  pipeline: Pipeline,
  project: Project,
  wishes: SeamWishes | undefined,
  work: Work,
  choices: RunChoices,
): Promise<Outcome> {
  const outcome = await pipeline.run(project, work, choices);
  if (wishes === undefined || outcome.cut === null) return outcome;
  const wished = seamCommands(outcome, wishes).reduce((changed, command) => command.apply(changed), project);
  return await pipeline.run(wished, work, choices);
}

async function withCore(
  project: Project,
  { path, unit, roomMm }: NonNullable<MakeChoices['coreModel']>,
  pipeline: Pipeline,
): Promise<Project> {
  const { name: fileName, bytes } = await readInput(path);
  const format = sourceFormat(bytes, fileName);
  if (!format.ok) throw Refused.from(format.problem, fileName);
  const hash = await contentHash(bytes);
  pipeline.putSource(hash, { fileName, bytes });
  const { core = [] } = needSculptAtWork(project);
  return setCore({
    kind: 'model',
    id: freeId('core', core),
    name: nameFromFile(fileName),
    source: { hash, fileName, format: format.value },
    unit,
    pointInFile: [0, 0, 0],
    ...(roomMm === undefined ? {} : { roomMm }),
  }).apply(project);
}

/** The table of the body with what was measured now, each measure once. */
const withMeasures = (old: readonly BodyMeasure[], own: readonly BodyMeasure[]): readonly BodyMeasure[] => [
  ...old.filter(({ name }) => own.every((one) => one.name !== name)),
  ...own,
];

function withChoices(project: Project, choices: MakeChoices, seams: Partial<SculptPart> | null): Project {
  const part = sculptAtWork(project);
  if (part === null) return { ...project, paper: { ...project.paper, ...choices.paper } };
  const { shrinkage } = choices;
  const layers = wishedLayers(part.layers, project.foams, { ...choices, shrinks: shrinkage !== undefined });
  return {
    ...changePart(project, {
      ...(choices.scale === undefined ? {} : { scale: choices.scale }),
      ...seams,
      ...wishedOf(part, choices),
      pieceSettings: [...part.pieceSettings, ...pieceFoamSettings(choices.pieceFoams ?? [], project.foams)],
      regions: raisedRegions(part.regions, choices.raises ?? [], project.foams),
      ...choices.wear,
      flatten: { ...part.flatten, ...choices.flatten },
      layers,
    }),
    ...(choices.body === undefined ? {} : { body: withMeasures(project.body ?? [], choices.body) }),
    foams: project.foams.map((sheet) =>
      layers.some(({ foam }) => foam === sheet.id)
        ? ruled(shrinkage === undefined ? sheet : { ...sheet, shrinkage }, choices.rules ?? {})
        : sheet,
    ),
    paper: { ...project.paper, ...choices.paper },
  };
}

/**
 * Templates that leave out a part of a sculpt would mislead: an unfinished chain is refused whole. Other parts stand by themselves, and one that cannot
 * be made is told; where none can be there is nothing to write.
 */
function refuseIfUnfinished(outcome: Outcome, fileName: string): void {
  const { part, plain } = outcome;
  const stopped = stoppedIn(outcome);
  if (part === null && plain.every(({ pieces }) => pieces.length === 0)) {
    const first = outcome.findings.find(({ severity }) => severity === 'error');
    throw new Refused(`${fileName}: ${first?.text ?? 'it holds no part yet: add one.'}`);
  }
  if (stopped !== null && stopped.step !== 'flatten') throw Refused.from(stopped.problem, fileName);
  const missing = outcome.findings.find(({ severity, code }) => severity === 'error' && /^(cut|flatten)\//.test(code));
  const text = missing?.text ?? stopped?.problem.text;
  const own = outcome.sculpts.find(({ part: { id } }) => id === missing?.where.part) ?? atWorkIn(outcome);
  if (text !== undefined) throw new Refused(`${fileName}: ${text}${own === null ? '' : offeredCut(own)}`);
}

/** Longest cut that is told edge by edge. */
const MOST_EDGES_TOLD = 24;

/** The first cut the program offers, in the words of a seam file; empty when it offers none. */
function offeredCut({ layers, sculpt }: SculptOutcome): string {
  const [offer] = layers.at(0)?.cut?.offers ?? [];
  const mesh = sculpt?.mesh;
  if (offer === undefined || mesh === undefined) return '';
  // Edges that a line across faces has made are none of the file's.
  if (offer.edges.some((pair) => pair.some((v) => v >= mesh.fileVertex.length))) return '';
  const told = offer.edges.slice(0, MOST_EDGES_TOLD).map(([v, w]) => `[${mesh.fileVertex[v]},${mesh.fileVertex[w]}]`);
  const rest = offer.edges.length - told.length;
  return ` A short cut would be "edges":[${told.join(',')}${rest > 0 ? `, and ${rest} more` : ''}].`;
}

/** What making the sculpt simpler came to; nothing where that was not asked for. */
const simplifyLine = ({ findings }: Outcome): readonly string[] =>
  findings.filter(({ code }) => code.startsWith('simplify/')).map(({ text }) => text);

/** Pieces that have no paper of their own, told by number; nothing where all have. */
function turnedLine({ paper, pieces }: Outcome): readonly string[] {
  const numberOf = (id: string): number | undefined => pieces?.find((piece) => piece.id === id)?.number;
  const told = (paper?.turned ?? []).map(({ piece, template }) => `${numberOf(piece)} with ${numberOf(template)}`);
  return told.length === 0 ? [] : [`cut with their twin's template turned over: ${told.join(', ')}`];
}

/** Strips without paper, told by number; nothing where there is none. */
function ruledLine({ paper, strips, plain }: Outcome): readonly string[] {
  const ids = new Set<string>((paper?.ruled ?? []).map(({ piece }) => piece));
  const numbers = besideOf({ strips, plain }).flatMap(({ id, number }) => (ids.has(id) ? [number] : []));
  return numbers.length === 0 ? [] : [`without paper, cut by the ruler, figures on the map: ${numbers.join(', ')}`];
}

/** How the finished pieces meet; nothing where no two edges do. */
function dryFitLine({ dryFit }: SculptOutcome): readonly string[] {
  if (dryFit === null || dryFit.perSeam.length === 0) return [];
  const { perSeam, worstGapMm, worstOverlapMm, corners } = dryFit;
  const seams = `${perSeam.length} ${perSeam.length === 1 ? 'seam' : 'seams'}`;
  const deepest = corners.length === 0 ? '' : `, corners up to ${corners[0].overlapMm.toFixed(2)} mm into each other`;
  return [
    `dry fit of ${seams}: gap up to ${worstGapMm.toFixed(2)} mm, overlap up to ${worstOverlapMm.toFixed(2)} mm${deepest}`,
  ];
}

/** What tapes and cores come to. */
function bodyFitLines({ bodyFit }: SculptOutcome): readonly string[] {
  if (bodyFit === null) return [];
  const tapes = bodyFit.tapes.flatMap(({ tape, back, face, sizeFactor, moveMm }) =>
    back === null || face === null
      ? []
      : [
          `${tape.name}: ${back.girthMm.toFixed(1)} mm inside (${formatInches(back.girthMm)}), ${face.girthMm.toFixed(1)} mm outside` +
            (sizeFactor === null ? '' : `; ${(100 * sizeFactor).toFixed(2)} % of this size would fit the body`) +
            (moveMm === null ? '' : `, and so would foam ${moveMm.toFixed(2)} mm farther out`),
        ],
  );
  const cores = bodyFit.cores.flatMap(({ core, tightest }) =>
    tightest === null ? [] : [`${core.name}: ${tightest.clearanceMm.toFixed(2)} mm of room at the tightest place`],
  );
  const joints = bodyFit.joints.flatMap(({ joint, bent }) =>
    bent === null
      ? []
      : [
          bent.roomMm > 0
            ? `${joint.name}: ${bent.roomMm.toFixed(2)} mm of room at ${Math.abs(joint.bendDeg)} degrees`
            : `${joint.name}: foam meets foam after ${bent.freeDeg.toFixed(1)} of ${Math.abs(joint.bendDeg)} degrees`,
        ],
  );
  return [...tapes, ...cores, ...joints];
}

/** A line of one of several sculpts says of which. What goes on from the line before is set in. */
const sculptLine = ({ sculpts }: Outcome, { part }: SculptOutcome, line: string): string =>
  sculpts.length < 2 || line.startsWith(' ') ? line : `${part.name}: ${line}`;

function summary(outcome: Outcome, assumed: readonly Finding[], out: string, lines: readonly string[]): string {
  const pieces = [...(outcome.pieces ?? []), ...outcome.plain.flatMap((one) => one.pieces)];
  const told = [...assumed, ...outcome.findings].filter((finding) => finding.severity !== 'note');
  return [
    `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'}, ${outcome.paper?.pages.length ?? 0} pages, written to ${out}`,
    ...partLines(outcome),
    ...turnedLine(outcome),
    ...ruledLine(outcome),
    ...simplifyLine(outcome),
    ...outcome.sculpts.flatMap((own) =>
      [...dryFitLine(own), ...springLines(own), ...bodyFitLines(own)].map((line) => sculptLine(outcome, own, line)),
    ),
    ...sheetLines(outcome),
    ...lines,
    ...told.map((finding) => `${finding.severity}: ${finding.text}`),
    '',
  ].join('\n');
}
