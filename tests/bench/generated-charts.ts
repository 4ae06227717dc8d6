import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import type { SeamSet } from '../../src/model/seams.ts';
import type { ProposalLimits } from '../../src/pipeline/propose/proposal.ts';
import type { CheckedProposal } from '../reference/recompute/check-proposal.mjs';
import { laidSeams } from './laid-seams.ts';

const SCRIPT = fileURLToPath(new URL('./chart-generator.mjs', import.meta.url));
/** Its indices have 16 bits. */
const MOST_VERTICES = 65_535;
/** How often charts that broke the limit are given to it again. */
const MOST_ROUNDS = 4;

/** What a general-purpose chart generator makes of a model, as it comes and with what broke the limits cut again. */
export interface GeneratedCharts {
  readonly first: CheckedProposal;
  /** The first round that keeps the limits; null where none does. */
  readonly held: CheckedProposal | null;
}

/**
 * Charts of a model, laid flat by our own flattening, which keeps the limit more often than the generator's own, and recomputed like a proposal.
 * The build has no settings from coarse to fine: charts that break the limit are given to it again, each alone.
 */
export async function generatedCharts(
  modelBytes: Uint8Array,
  mesh: Mesh,
  fileName: string,
  mmPerUnit: number,
  limits: ProposalLimits,
): Promise<GeneratedCharts | { readonly missing: string }> {
  if (mesh.positions.length / 3 > MOST_VERTICES) return { missing: 'too many corners' };
  const isSeam = new Uint8Array(topologyOf(mesh).edgeCount);
  let first: CheckedProposal | null = null;
  let triangles = [...mesh.triangles.keys()].filter((h) => h % 3 === 0).map((h) => h / 3);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const corners = runGenerator(mesh, triangles);
    if (typeof corners === 'string') return { missing: corners };
    const before = isSeam.reduce((sum, one) => sum + one, 0);
    markSeams(mesh, triangles, corners, isSeam);
    const count = isSeam.reduce((sum, one) => sum + one, 0);
    if (round > 0 && count === before) break;
    const seams: SeamSet = { isSeam: isSeam.slice(), count };
    const laid = await laidSeams(modelBytes, { mesh, fileName, mmPerUnit, limits }, seams);
    first ??= laid.checked;
    if (laid.checked.pieces.every(({ passes }) => passes)) return { first, held: laid.checked };
    triangles = laid.broken;
  }
  if (first === null) throw new Error('generatedCharts: no round');
  return { first, held: null };
}

/** @returns per corner of the given triangles the vertex it got; a sentence where the generator does not run. */
function runGenerator(mesh: Mesh, triangles: readonly number[]): readonly number[] | string {
  const corners = triangles.flatMap((t) => [...mesh.triangles.subarray(3 * t, 3 * t + 3)]);
  const used = [...new Set(corners)];
  const place = new Map(used.map((v, i) => [v, i]));
  const input = JSON.stringify({
    positions: used.flatMap((v) => [...mesh.positions.subarray(3 * v, 3 * v + 3)]),
    triangles: corners.map((v) => place.get(v)),
  });
  const { status, stdout, stderr } = spawnSync(process.execPath, [SCRIPT], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (status !== 0) return stderr.split('\n').find((line) => /Error|abort/.test(line)) ?? 'it ends with an error';
  return (JSON.parse(stdout) as { corners: number[] }).corners;
}

/** Sides whose two triangles got other vertices are seams. */
function markSeams(mesh: Mesh, triangles: readonly number[], corners: readonly number[], isSeam: Uint8Array): void {
  const { twin, edgeOfHalfedge } = topologyOf(mesh);
  const own = new Map(triangles.map((t, i) => [t, i]));
  const cornerOf = (h: number): number | undefined => {
    const i = own.get(Math.floor(h / 3));
    return i === undefined ? undefined : corners[3 * i + (h % 3)];
  };
  const next = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);
  for (const t of triangles) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const other = twin[h];
      if (other < 0 || !own.has(Math.floor(other / 3))) continue;
      if (cornerOf(h) !== cornerOf(next(other)) || cornerOf(next(h)) !== cornerOf(other)) isSeam[edgeOfHalfedge[h]] = 1;
    }
  }
}
