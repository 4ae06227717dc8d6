// Times flattening of one patch at full quality: node scripts/run-ts.mjs tests/bench/flatten.bench.ts [most triangles]
// The reference mask is refined to about 1k, 4k, 16k and 65k triangles, a dome to 124k; median and spread of 7 runs after warm ones,
// with a checksum of the result beside each time. "cpu" is the processor's time, which other work on the machine disturbs less.
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { readTestObj } from '../support/read-test-obj.ts';
import { refined } from './refined.ts';

const RUNS = 7;

interface Time {
  readonly wallMs: number;
  readonly cpuMs: number;
}

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

function timed(times: readonly Time[]): string {
  const walls = times.map(({ wallMs }) => wallMs);
  const spread = `${Math.min(...walls).toFixed(0)}-${Math.max(...walls).toFixed(0)}`;
  return `${middle(walls).toFixed(0)} ms (${spread}), cpu ${middle(times.map(({ cpuMs }) => cpuMs)).toFixed(0)} ms`;
}

async function bench(name: string, mesh: Mesh): Promise<void> {
  const seams = { isSeam: new Uint8Array(topologyOf(mesh).edgeCount), count: 0 };
  const run = async (start?: Float64Array) => {
    // A patch of its own for each run: nothing may be remembered from the last one.
    const [patch] = cutPatches(mesh, seams, mesh.positions).patches;
    const [began, cpu] = [performance.now(), process.cpuUsage()];
    const result = await flattenPatch(patch, mesh.positions, start === undefined ? {} : { start }, QUIET_WORK);
    const used = process.cpuUsage(cpu);
    if (!result.ok) throw new Error(result.problem.text);
    const time: Time = { wallMs: performance.now() - began, cpuMs: (used.user + used.system) / 1000 };
    return { time, flat: result.value };
  };
  let { flat } = await run();
  ({ flat } = await run());
  const cold: Time[] = [];
  const again: Time[] = [];
  for (let i = 0; i < RUNS; i += 1) {
    cold.push((await run()).time);
    again.push((await run(flat.uv)).time);
  }
  const checksum = flat.uv.reduce((sum, x) => sum + Math.abs(x), 0).toFixed(6);
  process.stdout.write(
    `${name}, ${mesh.triangles.length / 3} triangles: ${timed(cold)}; again from its own result ${timed(again)}\n` +
      `  energy ${flat.energy.toFixed(7)}, ${flat.solve.steps} steps, ${flat.flipped} flipped, checksum ${checksum}\n`,
  );
}

const most = Number(process.argv[2] ?? 130_000);
for (const name of ['mask-1k', 'hemisphere-2k']) {
  let mesh = readTestObj(new URL(`../reference/flatten/${name}.obj`, import.meta.url));
  for (let level = 0; level < 4 && mesh.triangles.length / 3 <= most; level += 1) {
    await bench(name, mesh);
    mesh = refined(mesh);
  }
}
