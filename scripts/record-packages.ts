import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { ROOT } from './vite-shared.ts';

/**
 * Notes which packages really went into a build, by the modules of which something is left, in `dist/.packages/NAME.json`.
 * Virtual modules, which are the bundler's own code, are noted by the name of their maker.
 * @returns the plugin of the build, and the one of its workers, which Vite builds on their own beforehand
 */
export function recordPackages(name: string): { readonly main: Plugin; readonly worker: () => Plugin } {
  const packages = new Set<string>();
  const collect: Plugin['generateBundle'] = (_options, bundle) => {
    for (const file of Object.values(bundle)) {
      if (file.type === 'asset') {
        file.originalFileNames.forEach(add);
      } else {
        for (const [id, { renderedLength }] of Object.entries(file.modules)) if (renderedLength > 0) add(id);
      }
    }
  };
  const add = (id: string): void => {
    const found = packageOf(id);
    if (found !== undefined) packages.add(found);
  };
  return {
    main: {
      name: 'foamloft-record-packages',
      generateBundle: collect,
      writeBundle() {
        const folder = join(ROOT, 'dist/.packages');
        mkdirSync(folder, { recursive: true });
        writeFileSync(join(folder, `${name}.json`), `${JSON.stringify([...packages].sort(), null, 2)}\n`);
      },
    },
    worker: () => ({ name: 'foamloft-record-worker-packages', generateBundle: collect }),
  };
}

/** The package a module or asset is from, or undefined for our own. */
function packageOf(id: string): string | undefined {
  const inside = id.replaceAll('\\', '/').split('node_modules/').at(-1) ?? '';
  const virtual = id.startsWith('\0');
  if (!virtual && !id.includes('node_modules/')) return undefined;
  // "\0@oxc-project+runtime@1.2.3/helpers/x.js" is how the bundler names the helpers it brings along.
  const parts = inside
    .replace(/^\0/, '')
    .replace(/^(@[\w-]+)\+([\w-]+)@[^/]*/, '$1/$2')
    .split('/');
  return parts.slice(0, parts[0].startsWith('@') ? 2 : 1).join('/');
}
