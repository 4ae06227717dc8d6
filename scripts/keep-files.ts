import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { KEEPER, type KeptFile } from '../src/app/offline/keeper-talk.ts';
import { ROOT, TARGET } from './vite-shared.ts';
import { ICON_FOLDER, ICONS, TOUCH_ICON, WEB_MANIFEST, webManifest } from './web-manifest.ts';

/** A file of the build. */
interface BuiltFile {
  readonly fileName: string;
  readonly bytes: string | Uint8Array;
}

/** What nobody asks for after the page is open: it is there for the system that installs the app. */
const NOT_KEPT = new RegExp(`^(${WEB_MANIFEST}|${ICON_FOLDER}/.*)$`);

/** In the order in which they are wanted: what the first picture is made of, then what is asked for later. */
const ORDER = [/^index\.html$/, /^assets\/index-/, /\.css$/, /\.woff2$/, /^assets\//, /^samples\//];

/**
 * Writes the web manifest with its icons, and the service worker with the list of every file of the build, so that the app can be installed and
 * works without a network.
 * @param recorder  notes the packages that go into the worker
 */
export function keepFiles(recorder: () => Plugin): Plugin {
  return {
    name: 'foamloft-keep-files',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: () => [
        { tag: 'link', attrs: { rel: 'manifest', href: `./${WEB_MANIFEST}` }, injectTo: 'head' },
        { tag: 'link', attrs: { rel: 'apple-touch-icon', href: `./${ICON_FOLDER}/${TOUCH_ICON}` }, injectTo: 'head' },
      ],
    },
    generateBundle: {
      // The page itself and the static files are there by then.
      order: 'post',
      async handler(_options, bundle) {
        const files = Object.values(bundle).map((file): BuiltFile => ({
          fileName: file.fileName,
          bytes: file.type === 'chunk' ? file.code : file.source,
        }));
        const keeper = await buildKeeper(listKept(files), recorder());
        this.emitFile({ type: 'asset', fileName: KEEPER, source: keeper });
        this.emitFile({ type: 'asset', fileName: WEB_MANIFEST, source: JSON.stringify(webManifest(), null, 2) });
        for (const file of [...ICONS.map((icon) => icon.file), TOUCH_ICON]) {
          const source = readFileSync(join(ROOT, 'src/app/assets', file));
          this.emitFile({ type: 'asset', fileName: `${ICON_FOLDER}/${file}`, source });
        }
      },
    },
  };
}

/** The files to keep, with what tells their versions apart: names in assets/ hold a hash already. */
function listKept(files: readonly BuiltFile[]): KeptFile[] {
  const rank = (name: string): number => {
    const at = ORDER.findIndex((pattern) => pattern.test(name));
    return at < 0 ? ORDER.length : at;
  };
  return files
    .filter(({ fileName }) => !NOT_KEPT.test(fileName))
    .sort((a, b) => rank(a.fileName) - rank(b.fileName) || (a.fileName < b.fileName ? -1 : 1))
    .map(({ fileName, bytes }) => ({ url: fileName, revision: fileName.startsWith('assets/') ? null : hashOf(bytes) }));
}

const hashOf = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex').slice(0, 16);

/** All in one file, and no module: browsers read such a worker longest. */
async function buildKeeper(kept: readonly KeptFile[], recorder: Plugin): Promise<string> {
  const built = await build({
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    publicDir: false,
    plugins: [recorder],
    define: { KEPT_FILES: JSON.stringify(kept), 'process.env.NODE_ENV': '"production"' },
    build: {
      write: false,
      target: TARGET,
      lib: {
        entry: join(ROOT, 'src/app/offline/keeper-worker.ts'),
        formats: ['iife'],
        name: 'keeper',
        fileName: 'keeper',
      },
      reportCompressedSize: false,
    },
  });
  const outputs = (Array.isArray(built) ? built : [built]).flatMap((one) => ('output' in one ? one.output : []));
  const [worker, ...more] = outputs;
  if (worker?.type !== 'chunk' || more.length > 0) throw new Error('the service worker is not one file');
  return worker.code;
}
