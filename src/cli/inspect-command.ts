import { QUIET_WORK } from '../base/work.ts';
import { findingFigures, type Finding } from '../base/finding.ts';
import type { ModelFacts } from '../model/model-facts.ts';
import type { SourceModel } from '../model/source-model.ts';
import { inspectModel, type MirrorFacts } from '../pipeline/inspect-model.ts';
import { Refused } from './exit.ts';
import { readInput } from './read-input.ts';

/** `inspect MODEL [--json]`: what the file holds, in the file's own unit. */
export async function inspectCommand(path: string, json: boolean): Promise<string> {
  const file = await readInput(path);
  const result = await inspectModel(file.bytes, file.name, QUIET_WORK);
  if (!result.ok) throw Refused.from(result.problem, file.name);
  const { model, facts, findings, mirror } = result.value;
  return json
    ? `${JSON.stringify(asJson(model, facts, findings, mirror), null, 1)}\n`
    : asText(model, facts, findings, mirror);
}

function asJson(
  model: SourceModel,
  facts: ModelFacts,
  findings: readonly Finding[],
  mirror: MirrorFacts | null,
): Record<string, unknown> {
  return {
    schemaVersion: 1,
    file: model.fileName,
    format: model.format,
    modelHash: model.hash,
    ...facts,
    joined: model.joined,
    mirror,
    findings: findings.map((finding) => ({ ...findingFigures(finding), where: finding.where })),
  };
}

function asText(
  model: SourceModel,
  facts: ModelFacts,
  findings: readonly Finding[],
  mirror: MirrorFacts | null,
): string {
  const size = facts.boxSize.map(short).join(' x ');
  const exact = facts.afterExactJoin;
  const rows: [string, string][] = [
    [
      'vertices',
      `${facts.vertices}${exact.vertices === facts.vertices ? '' : ` (${exact.vertices} after joining exactly equal ones)`}`,
    ],
    ['faces', `${facts.faces}`],
    ['triangles', `${facts.triangles}`],
    [
      'edges',
      `${facts.edges}${facts.triangleEdges === facts.edges ? '' : ` (${facts.triangleEdges} of triangles)`}${exact.edges === facts.edges ? '' : ` (${exact.edges} after exact joining)`}`,
    ],
    ['Euler number', `${facts.euler}${exact.euler === facts.euler ? '' : ` (${exact.euler} after exact joining)`}`],
    ['shells', `${facts.shells}`],
    [
      'open loops',
      `${facts.openLoops} with ${facts.openEdges} edges${exact.openEdges === facts.openEdges ? '' : ` (${exact.openLoops} with ${exact.openEdges} after exact joining)`}`,
    ],
    ['genus', facts.genus === null ? 'not a manifold' : `${facts.genus}`],
    ['non-manifold', `${facts.nonManifoldEdges} edges, ${facts.nonManifoldVertices} vertices`],
    ['turned edges', `${facts.turnedEdges}`],
    ['empty faces', `${facts.emptyFaces}`],
    ['doubled faces', `${facts.doubledFaces}`],
    [
      'area',
      `${precise(facts.area)}${Math.abs(facts.fanArea - facts.area) > 1e-6 * facts.area ? ` (${precise(facts.fanArea)} when faces are fanned from their first corner)` : ''}`,
    ],
    ['size', `${size} from ${facts.boxMin.map(short).join(', ')}`],
    [
      'joined',
      `${model.joined.inFile} corners in the file, ${model.joined.afterNear} after joining within ${model.joined.toleranceUnits.toExponential(2)}`,
    ],
    ['mirror', mirror === null ? 'none found' : mirrorText(mirror)],
  ];
  const width = Math.max(...rows.map(([name]) => name.length));
  const lines = rows.map(([name, value]) => `${name.padEnd(width)}  ${value}`);
  const told = findings.map((finding) => `${finding.severity}: ${finding.text} (${finding.code})`);
  return [
    `${model.fileName} (numbers in the file's own unit)`,
    ...lines,
    ...(told.length === 0 ? ['nothing found wrong'] : told),
    '',
  ].join('\n');
}

function mirrorText({ normal, at, share, tolerance }: MirrorFacts): string {
  const rounded = normal.map((x) => String(Number(x.toFixed(5)) + 0)).join(', ');
  const where = `square to ${rounded} at ${String(Number(at.toPrecision(5)))}`;
  return `${where}: ${(100 * share).toFixed(share === 1 ? 0 : 1)} % of the surface within ${tolerance.toPrecision(2)}`;
}

const short = (x: number): string => String(Number(x.toPrecision(6)));
const precise = (x: number): string => String(Number(x.toPrecision(9)));
