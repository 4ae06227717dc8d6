import type { ComparedPiece, Comparison, VersionFigures, Worst } from '../model/comparison.ts';
import { compare } from '../pipeline/compare/compare.ts';
import { figuresOf, type MadeFigures } from '../pipeline/compare/figures-of.ts';
import { Pipeline } from '../pipeline/pipeline.ts';
import { QUIET_WORK } from '../base/work.ts';
import { versionsOf, type Document } from '../project/kept-version.ts';
import { Refused } from './exit.ts';
import { openInput } from './open-input.ts';
import { readInput } from './read-input.ts';

/** Two states to compare. */
export interface CompareChoices {
  /** Two projects, or one and `version`. */
  readonly inputs: readonly [string] | readonly [string, string];
  /** Name of a version kept in the first, which is compared with how that is now. */
  readonly version?: string;
  readonly json: boolean;
}

/** `compare A B`: two projects side by side, or a kept version and the project it is kept in. @throws Refused */
export async function compareCommand({ inputs, version, json }: CompareChoices): Promise<string> {
  const pipeline = new Pipeline();
  const made: MadeFigures[] = [];
  for (const document of await documentsOf(pipeline, inputs, version))
    made.push(figuresOf(await pipeline.run(document, QUIET_WORK)));
  const comparison = await compare(made[0], made[1], QUIET_WORK);
  return json ? `${JSON.stringify(asJson(comparison), null, 1)}\n` : asText(comparison);
}

async function documentsOf(
  pipeline: Pipeline,
  inputs: CompareChoices['inputs'],
  version: string | undefined,
): Promise<readonly Document[]> {
  const projects = [];
  for (const path of inputs) {
    const { project, sources } = await openInput(await readInput(path), undefined);
    for (const [hash, source] of sources) pipeline.putSource(hash, source);
    projects.push(project);
  }
  if (version === undefined) return projects;
  const [project] = projects;
  const names = versionsOf(project).map(({ name }) => name);
  const kept = versionsOf(project)[names.indexOf(version)];
  if (names.includes(version)) return [kept.document, project];
  const told = names.length === 0 ? 'it keeps none' : `it keeps ${names.join(', ')}`;
  throw new Refused(`${inputs[0]}: it keeps no version named ${version}; ${told}.`);
}

function asJson({ one, other, pieces }: Comparison): Record<string, unknown> {
  return {
    schemaVersion: 1,
    one,
    other,
    pieces: pieces.map(({ kind, one: first, other: second, movedMm }) => ({
      kind,
      one: first === null ? null : withoutRings(first),
      other: second === null ? null : withoutRings(second),
      movedMm,
    })),
  };
}

function withoutRings<T extends { readonly rings: unknown }>({ rings: _, ...figures }: T): Omit<T, 'rings'> {
  return figures;
}

function asText({ one, other, pieces }: Comparison): string {
  const rows: [string, string, string][] = [
    ['', 'first', 'second'],
    ...ROWS.map(([name, of]): [string, string, string] => [name, of(one), of(other)]),
  ];
  const foams = new Map([...one.foams, ...other.foams].map(({ id, name }) => [id, name]));
  for (const [id, name] of foams) rows.push([name, areaOf(one, id), areaOf(other, id)]);
  const wide = [0, 1].map((column) => Math.max(...rows.map((row) => row[column].length)));
  const lines = rows.map(
    ([name, a, b]) => `${name.padEnd(wide[0])}  ${a.padEnd(wide[1])}  ${b}${name !== '' && a !== b ? '  *' : ''}`,
  );
  const apart = pieces.filter(({ kind }) => kind !== 'same').map(pieceText);
  const stopped = [one.stopped, other.stopped].flatMap((text, i) =>
    text === null ? [] : [`The ${i === 0 ? 'first' : 'second'} is not made to its end: ${text}`],
  );
  return `${[...lines, ...stopped, ...apart, `${pieces.length - apart.length} pieces are alike`].join('\n')}\n`;
}

const fixed = (value: number, decimals: number, unit: string): string => `${value.toFixed(decimals)}${unit}`;
const worst = (own: Worst | null, decimals: number, unit: string): string =>
  own === null ? 'none' : `${fixed(own.value, decimals, unit)} at ${own.at}`;

const ROWS: readonly (readonly [string, (figures: VersionFigures) => string])[] = [
  ['pieces', ({ pieces }) => `${pieces}`],
  ['cut in all', ({ cuts }) => `${cuts}`],
  ['sheets of foam', ({ sheets }) => `${sheets}`],
  ['seams', ({ seams }) => `${seams}`],
  ['length of seam', ({ seamMm }) => fixed(seamMm, 1, ' mm')],
  ['worst stretch', ({ stretch }) => worst(stretch, 1, ' %')],
  ['worst squash', ({ squash }) => worst(squash, 1, ' %')],
  ['widest gap', ({ gap }) => worst(gap, 2, ' mm')],
  ['deepest overlap', ({ overlap }) => worst(overlap, 2, ' mm')],
  ['most between marks', ({ slip }) => worst(slip, 2, ' mm')],
  ['steepest bevel', ({ bevel }) => worst(bevel, 1, '°')],
  ['pages', ({ pages }) => `${pages}`],
  ['findings', ({ warnings }) => `${warnings}`],
];

const areaOf = ({ foams }: VersionFigures, foam: string): string =>
  fixed((foams.find(({ id }) => id === foam)?.areaMm2 ?? 0) / 100, 1, ' cm²');

function pieceText({ kind, one, other, movedMm }: ComparedPiece): string {
  const { number, name } = one ?? other ?? { number: 0, name: '' };
  const what = { changed: 'changed', gone: 'only in the first', come: 'only in the second', same: 'alike' }[kind];
  return `${number} ${name}: ${what}${movedMm === null ? '' : `, edge moved by up to ${fixed(movedMm, 2, ' mm')}`}`;
}
