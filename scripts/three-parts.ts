import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { ROOT } from './vite-shared.ts';

const THREE = join(ROOT, 'node_modules/three/src');
const SHADERS = join(THREE, 'renderers/shaders');

/** Shaders of the materials that the bench is drawn with, and of shadows. Whoever uses another kind of material names its shader here. */
const USED_SHADERS = ['meshbasic', 'meshlambert', 'depth'].map((name) => join(SHADERS, `ShaderLib/${name}.glsl.js`));
/** Files that bring shaders of their own, or put parts of shaders before all others. */
const OWN_SHADERS = [
  join(ROOT, 'node_modules/three/examples/jsm/lines/LineMaterial.js'),
  join(THREE, 'renderers/webgl/WebGLProgram.js'),
];

/**
 * What stands for parts of the library that nothing here calls: goggles, light from pictures, pictures all round, forms that pass into each
 * other, values that materials share, and pictures that are worked over. Paths below its `src/`.
 */
const STAND_INS: Readonly<Record<string, string>> = {
  'renderers/webxr/WebXRManager.js': `export class WebXRManager {
  enabled = false;
  isPresenting = false;
  addEventListener() {}
  removeEventListener() {}
  setAnimationLoop() {}
  getEnvironmentBlendMode() {}
  dispose() {}
}`,
  'extras/PMREMGenerator.js': 'export class PMREMGenerator {}',
  'renderers/WebGLCubeRenderTarget.js': 'export class WebGLCubeRenderTarget {}',
  // Its copy of a package that is here already.
  'extras/lib/earcut.js': `export { default } from 'earcut';`,
  'renderers/webgl/WebGLMorphtargets.js': 'export const WebGLMorphtargets = function () { return { update() {} }; };',
  'renderers/webgl/WebGLUniformsGroups.js': `export const WebGLUniformsGroups = function () {
  return { bind() {}, update() {}, dispose() {} };
};`,
  'renderers/webgl/WebGLOutput.js': 'export class WebGLOutput {}',
  'renderers/shaders/DFGLUTData.js': 'export const getDFGLUT = () => null;',
};

/**
 * Takes the 3D library by its single files, of which a bundle keeps what is used, and leaves out shaders and other parts that are not.
 * Its one large file keeps nearly all of itself.
 */
export function threeParts(): Plugin {
  const used = usedChunks();
  return {
    name: 'foamloft-three-parts',
    enforce: 'pre',
    resolveId: (source) => (source === 'three' ? join(THREE, 'Three.js') : null),
    load(id) {
      const path = id.replaceAll('\\', '/').split('/three/src/')[1];
      return path === undefined ? null : (STAND_INS[path] ?? (used.has(path) ? null : emptied(path, id)));
    },
    transform: (code, id) => (id.endsWith('.glsl.js') ? { code: withoutComments(code), map: null } : null),
  };
}

/** An unused shader with the names it exports; null for all that is no shader. */
function emptied(path: string, id: string): string | null {
  if (!/^renderers\/shaders\/Shader(Chunk|Lib)\/.*\.glsl\.js$/.test(path)) return null;
  const names = [...readFileSync(id, 'utf8').matchAll(/^export (?:const (\w+)|(default))/gm)];
  return names.map(([, name]) => (name === undefined ? `export default '';` : `export const ${name} = '';`)).join('\n');
}

/** Paths below `src/` of the used shaders and all that they include. */
function usedChunks(): ReadonlySet<string> {
  const known = new Set(readdirSync(join(SHADERS, 'ShaderChunk')));
  const found = new Set<string>();
  const waiting = [...USED_SHADERS, ...OWN_SHADERS];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    const path = file.replaceAll('\\', '/').split('/three/src/')[1] ?? file;
    if (found.has(path)) continue;
    found.add(path);
    for (const [, included, put] of readFileSync(file, 'utf8').matchAll(/#include <(\w+)>|ShaderChunk\[ '(\w+)' \]/g)) {
      const name = included ?? put;
      if (known.has(`${name}.glsl.js`)) waiting.push(join(SHADERS, `ShaderChunk/${name}.glsl.js`));
    }
  }
  return found;
}

/** The text of a shader without what only people read. */
const withoutComments = (code: string): string =>
  code
    .replace(/\/\*(?! glsl \*\/)[\s\S]*?\*\//g, '')
    .replace(/[ \t]*\/\/.*$/gm, '')
    .replace(/^[ \t]+|[ \t]+$/gm, '')
    .replace(/\n{2,}/g, '\n');
