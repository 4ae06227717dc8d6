import type { Work } from '../base/work.ts';
import type { FillRule } from '../model/stock.ts';
import { besideOf, type Outcome } from '../pipeline/outcome.ts';
import { SheetCrew } from '../pipeline/sheet-crew.ts';
import { sheetTaskOf } from '../pipeline/sheet-task.ts';
import { FILL_LIMITS, TURN_RULES } from '../project/fill-rule.ts';
import type { Project } from '../project/project.ts';
import { addStockSheet, keepLayout, removeStockSheet, setFillRule } from '../project/stock-commands.ts';
import { readStockFile } from '../project/stock-file.ts';
import { Refused, WrongUsage } from './exit.ts';
import { decimal, given, number, oneOf } from './option-values.ts';
import { readInput } from './read-input.ts';
import { foamsInUse } from './shop-option.ts';

/** What is said of foam in hand, and of how sheets are filled. */
export interface StockOption {
  /** A file with the sheets in hand, in place of the project's. */
  readonly file?: string;
  readonly fill: Partial<Omit<FillRule, 'foam'>>;
  /** Moves that better the layout; 0 or left out: it is laid once. */
  readonly moves?: number;
}

/** Far beyond any patience: days. */
const MOST_MOVES = 1e9;

/** `--stock`, `--border`, `--spacing`, `--turns`, `--turn-over`, `--no-buying`, `--lay-out-moves`; nothing where none is. @throws WrongUsage */
export function stockFrom(values: {
  readonly stock?: string | undefined;
  readonly border?: string | undefined;
  readonly spacing?: string | undefined;
  readonly turns?: string | undefined;
  readonly 'turn-over'?: boolean | undefined;
  readonly 'no-buying'?: boolean | undefined;
  readonly 'lay-out-moves'?: string | undefined;
}): StockOption | undefined {
  const fill = {
    ...given('borderMm', number('border', values.border, { least: 0, most: FILL_LIMITS.borderMm })),
    ...given('spacingMm', number('spacing', values.spacing, { least: 0, most: FILL_LIMITS.spacingMm })),
    ...given('turns', oneOf('turns', values.turns, TURN_RULES)),
    ...given('turnOver', values['turn-over']),
    ...given('buys', values['no-buying'] === true ? false : undefined),
  };
  const word = values['lay-out-moves'];
  const moves = word === undefined ? undefined : decimal(word);
  if (moves !== undefined && !(Number.isInteger(moves) && moves >= 0 && moves <= MOST_MOVES))
    throw new WrongUsage(`--lay-out-moves takes a whole number from 0 to ${MOST_MOVES}, not ${word}.`);
  if (values.stock === undefined && moves === undefined && Object.keys(fill).length === 0) return undefined;
  return { fill, ...given('file', values.stock), ...given('moves', moves) };
}

/** The project with that said of it. @throws Refused where the file cannot be used. */
export async function withStock(project: Project, option: StockOption | undefined): Promise<Project> {
  if (option === undefined) return project;
  const { file, fill } = option;
  const used = foamsInUse(project);
  const rules = Object.keys(fill).length === 0 ? [] : project.foams.filter(({ id }) => used.has(id));
  const commands = [...rules.map(({ id }) => setFillRule(id, fill)), ...(await stockCommands(project, file))];
  return commands.reduce((changed, command) => command.apply(changed), project);
}

async function stockCommands(project: Project, file: string | undefined) {
  if (file === undefined) return [];
  const { name, bytes } = await readInput(file);
  const read = readStockFile(new TextDecoder().decode(bytes), name, project.foams);
  if (!read.ok) throw new Refused(read.problem.text);
  const before = project.stock?.sheets ?? [];
  return [...before.map(({ id }) => removeStockSheet(id)), ...read.value.map(addStockSheet)];
}

/** Moves between two times at which others may run. */
const STEP = 100;

/** The project with the best layout that so many moves find, or itself where none is better than the first. */
export async function withBetterLayout(outcome: Outcome, moves: number | undefined, work: Work): Promise<Project> {
  const { project, pieces, templates } = outcome;
  if (moves === undefined || moves === 0 || templates === null) return project;
  const crew = new SheetCrew(sheetTaskOf(project, [...(pieces ?? []), ...besideOf(outcome)], templates), 1);
  while (crew.moves < moves && !crew.isDone) {
    crew.step(Math.min(STEP, moves - crew.moves));
    await work.pause(crew.moves / moves, 'laying out foam');
  }
  return crew.found === 0 ? project : keepLayout(crew.kept).apply(project);
}
