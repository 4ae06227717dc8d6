import { describe, expect, it } from 'vitest';
import { findFaults } from './find-faults.ts';
import { projectFiles, readProjectFile } from './project-files.ts';

const sources = projectFiles('src/').filter((path) => path.endsWith('.ts'));

describe('the house', () => {
  it('has sources to look at', () => expect(sources.length).toBeGreaterThan(50));

  it('keeps to its tables', () => {
    expect(sources.flatMap((path) => findFaults(path, readProjectFile(path)))).toEqual([]);
  });
});

describe('the check', () => {
  const bad: readonly (readonly [path: string, text: string, fault: string])[] = [
    ['src/base/a.ts', `import { b } from '../geom/b.ts';`, 'base may not import geom/b.ts'],
    ['src/geom/a.ts', `import type { B } from '../mesh/b.ts';`, 'geom may not import mesh/b.ts'],
    ['src/mesh/a.ts', `export { b } from '../model/b.ts';\nexport const c = 1;`, 'mesh may not import model/b.ts'],
    ['src/steps/cut/a.ts', `import { b } from '../seams/b.ts';`, 'steps/cut may not import steps/seams/b.ts'],
    ['src/steps/cut/a.ts', `const b = await import('../foam/b.ts');`, 'steps/cut may not import steps/foam/b.ts'],
    ['src/steps/cut/a.ts', `let b: import('../../project/b.ts').B;`, 'steps/cut may not import project/b.ts'],
    [
      'src/model/a.ts',
      `import data from '../../samples/b.json' with { type: 'json' };`,
      'model may not import samples/b.json',
    ],
    ['src/project/a.ts', `import { b } from '../pipeline/b.ts';`, 'project may not import pipeline/b.ts'],
    ['src/viewport/a.ts', `import { b } from '../app/b.ts';`, 'viewport may not import app/b.ts'],
    [
      'src/viewport/a.ts',
      `new Worker(new URL('../worker/b.ts', import.meta.url));`,
      'viewport may not import worker/b.ts',
    ],
    ['src/app/a.ts', `import { b } from '../model/b.ts';`, 'app may import types alone from model/b.ts'],
    ['src/app/a.ts', `import { type B, c } from '../model/b.ts';`, 'app may import types alone from model/b.ts'],
    ['src/app/a.ts', `import { b } from '../worker/workshop.ts';`, 'app may not import worker/workshop.ts'],
    ['src/app/a.ts', `import type { B } from '../pipeline/b.ts';`, 'app may not import pipeline/b.ts'],
    ['src/cli/a.ts', `import { b } from '../steps/read/b.ts';`, 'cli may not import steps/read/b.ts'],
    ['src/loft/a.ts', ``, 'lies in no folder of the table'],
    ['src/geom/a.ts', `import { Vector3 } from 'three';`, 'three comes in through viewport or geom/bvh.ts alone'],
    ['src/geom/bvh.ts', `import { WebGLRenderer } from 'three';`, 'WebGLRenderer of three may not be used here'],
    ['src/geom/bvh.ts', `import * as all from 'three';`, '* of three may not be used here'],
    ['src/viewport/a.ts', `import { b } from 'three-mesh-bvh';`, 'three-mesh-bvh comes in through geom/bvh.ts alone'],
    ['src/steps/read/a.ts', `import earcut from 'earcut';`, 'earcut comes in through geom/triangulate.ts alone'],
    ['src/geom/a.ts', `import { b } from 'clipper2-ts';`, 'clipper2-ts comes in through geom/polygon-boolean.ts or geom/whole-union.ts alone'],
    [
      'src/geom/a.ts',
      `import { b } from 'robust-predicates';`,
      'robust-predicates comes in through geom/predicates.ts alone',
    ],
    ['src/steps/write/svg.ts', `import { b } from 'jspdf';`, 'jspdf comes in through steps/write/pdf*.ts alone'],
    ['src/viewport/a.ts', `import { html } from 'lit/html.js';`, 'lit comes in through app alone'],
    ['src/app/a.ts', `import { b } from 'comlink';`, 'comlink comes in through worker alone'],
    ['src/app/a.ts', `import { b } from 'idb';`, 'idb comes in through app/files/shelves.ts alone'],
    ['src/model/a.ts', `import * as v from 'valibot';`, 'valibot comes in through project or steps/read alone'],
    ['src/worker/a.ts', `import { b } from 'fflate';`, 'fflate comes in through app or cli or steps/write or steps/artwork/read-png.ts alone'],
    ['src/app/a.ts', `import '@other/font/index.css';`, '@other/font/index.css has no door'],
    ['src/app/a.ts', `const b = await import(address);`, 'address has no door'],
    ['src/steps/read/a.ts', `import { b } from 'node:fs';`, 'node:fs belongs to Node'],
    ['src/steps/read/a.ts', `import { b } from 'fs';`, 'fs belongs to Node'],
    ['src/geom/a.ts', `import { b } from './b';`, './b must end in .ts or .json'],
    ['src/geom/a.ts', `import { b } from './b.js';`, './b.js must end in .ts or .json'],
    ['src/geom/a.ts', `import './b.css';`, './b.css must end in .ts or .json'],
    ['src/geom/a.ts', `console.log(1);`, 'uses console.log, which the core may not'],
    ['src/worker/a.ts', `const b = globalThis.Date.now();`, 'uses Date.now, which the core may not'],
    ['src/steps/nest/a.ts', `const roll = Math.random;`, 'uses Math.random, which the core may not'],
    ['src/steps/write/a.ts', `const b = new Date();`, 'uses new Date(), which the core may not'],
    ['src/geom/index.ts', `export const b = 1;`, 'a barrel file, import from the files themselves'],
    [
      'src/geom/all.ts',
      `export * from './b.ts';\nexport { c } from './c.ts';`,
      'a barrel file, import from the files themselves',
    ],
  ];
  for (const [path, text, fault] of bad) {
    it(`finds in ${path}: ${fault}`, () => {
      const faults = findFaults(path, text);
      expect(faults.map((sentence) => sentence.replace(/^\S+: /, ''))).toEqual([fault]);
      expect(faults[0].startsWith(path)).toBe(true);
    });
  }

  const good: readonly (readonly [path: string, text: string])[] = [
    ['src/steps/cut/a.ts', `import { b } from './b.ts';\nimport { c } from '../../mesh/c.ts';`],
    ['src/model/a.ts', `import papers from '../../shared/papers.json' with { type: 'json' };`],
    [
      'src/app/a.ts',
      `import type { B } from '../model/b.ts';\nimport { type C } from '../model/c.ts';\nlet d: import('../model/d.ts').D;`,
    ],
    ['src/app/a.ts', `import { b } from '../worker/client.ts';\nimport type { C } from '../worker/workshop-api.ts';`],
    ['src/app/a.ts', `import { html } from 'lit';\nimport styles from './b.css?inline';\nconsole.error(Date.now());`],
    ['src/worker/client.ts', `new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });`],
    ['src/cli/a.ts', `import { b } from 'node:fs';\nconst font = new URL('./fonts/b.ttf', import.meta.url);`],
    ['src/steps/write/pdf-page.ts', `import { jsPDF } from 'jspdf';\nconst when = new Date(date);`],
    ['src/geom/bvh.ts', `import { BufferGeometry } from 'three';\nimport { MeshBVH } from 'three-mesh-bvh';`],
    ['src/geom/a.ts', `// import { b } from '../app/b.ts'; console.log\nconst text = "import('../app/b.ts')";`],
  ];
  for (const [i, [path, text]] of good.entries()) {
    it(`passes case ${i}, ${path}`, () => expect(findFaults(path, text)).toEqual([]));
  }
});
