import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const ROOT = fileURLToPath(new URL('../', import.meta.url));
const FONT_PACKAGE = join(ROOT, 'node_modules/dejavu-fonts-ttf');

const MIME_BY_ENDING: Readonly<Record<string, string>> = {
  ttf: 'font/ttf',
  txt: 'text/plain; charset=utf-8',
  obj: 'text/plain; charset=utf-8',
  json: 'application/json; charset=utf-8',
};

/** Files that go out as they are: name under the address of the app, path on this machine. */
function staticFiles(): ReadonlyMap<string, string> {
  const files = new Map([
    ['fonts/DejaVuSans.ttf', join(FONT_PACKAGE, 'ttf/DejaVuSans.ttf')],
    ['fonts/DejaVuSans-LICENSE.txt', join(FONT_PACKAGE, 'LICENSE')],
    ['licences.json', join(ROOT, 'shared/licences.json')],
    ['LICENSE.txt', join(ROOT, 'LICENSE')],
  ]);
  for (const name of readdirSync(join(ROOT, 'samples')).sort()) {
    if (/\.(obj|seams\.json|foamloft\.json)$/.test(name)) files.set(`samples/${name}`, join(ROOT, 'samples', name));
  }
  return files;
}

/** The font of the printed pages, all terms of use, and the samples: copied into the build, and answered by the development server. */
export function shipStaticFiles(): Plugin {
  return {
    name: 'foamloft-static-files',
    generateBundle() {
      for (const [fileName, path] of staticFiles()) {
        this.emitFile({ type: 'asset', fileName, originalFileName: relative(ROOT, path), source: readFileSync(path) });
      }
    },
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const name = decodeURIComponent((request.url ?? '').replace(/^\//, '').replace(/[?#].*$/, ''));
        const path = staticFiles().get(name);
        if (path === undefined) return next();
        response.setHeader(
          'Content-Type',
          MIME_BY_ENDING[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream',
        );
        response.end(readFileSync(path));
      });
    },
  };
}
