// The app: index.html and what it loads, to dist/.
import { defineConfig } from 'vite';
import { keepFiles } from './keep-files.ts';
import { recordPackages } from './record-packages.ts';
import { shipStaticFiles } from './static-files.ts';
import { threeParts } from './three-parts.ts';
import { ROOT, TARGET, UNUSED_PACKAGES } from './vite-shared.ts';

const packages = recordPackages('app');

export default defineConfig({
  root: ROOT,
  // Relative addresses: the built folder works under any path.
  base: './',
  // A file that is missing is missing, and not the start page under another name.
  appType: 'mpa',
  publicDir: false,
  plugins: [threeParts(), shipStaticFiles(), packages.main, keepFiles(packages.worker)],
  resolve: { alias: UNUSED_PACKAGES },
  worker: { format: 'es', plugins: () => [threeParts(), packages.worker()] },
  build: {
    target: TARGET,
    outDir: 'dist',
    emptyOutDir: true,
    // The content security policy allows files of our own origin: nothing is written into the page or into an address.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The 3D library alone is larger than the default limit of the warning.
    chunkSizeWarningLimit: 1200,
    reportCompressedSize: false,
  },
  optimizeDeps: { entries: ['index.html'] },
});
