// A general-purpose chart generator in a process of its own: node tests/bench/chart-generator.mjs < model.json
// Reads {"positions":[x,y,z,…],"triangles":[a,b,c,…]}, writes {"corners":[…]}: per corner of each triangle the number of the vertex it got; two
// triangles hang together where they share the vertices of a side. The package was built for browsers, so it is shown an empty window; its
// build has no options, it runs as it comes.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const { positions, triangles } = JSON.parse(readFileSync(0, 'utf8'));
globalThis.window = {};
globalThis.document = { currentScript: null };
const load = require('xatlas-web');
const wasmBinary = readFileSync(require.resolve('xatlas-web/dist/xatlas-web.wasm'));

const generator = load({
  wasmBinary,
  onRuntimeInitialized() {
    // Not before `load` has returned.
    setTimeout(() => process.stdout.write(JSON.stringify({ corners: corners() })), 0);
  },
});

function corners() {
  generator.createAtlas();
  const { meshId, positionOffset, indexOffset } = generator.createMesh(
    positions.length / 3,
    triangles.length,
    false,
    false,
  );
  generator.HEAPF32.set(positions, positionOffset / 4);
  generator.HEAPU16.set(triangles, indexOffset / 2);
  const code = generator.addMesh();
  if (code !== 0) throw new Error(`the chart generator takes no such model (code ${code})`);
  generator.generateAtlas();
  const made = generator.getMeshData(meshId);
  // In and out go by different widths: 16 bits in, 32 out.
  const out = [...generator.HEAPU32.subarray(made.indexOffset / 4, made.indexOffset / 4 + made.newIndexCount)];
  const source = generator.HEAPU32.subarray(made.originalIndexOffset / 4);
  if (out.length !== triangles.length || out.some((v, i) => source[v] !== triangles[i]))
    throw new Error('the chart generator gives other triangles back');
  return out;
}
