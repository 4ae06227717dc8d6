// The command line: one file, dist/cli.js, that plain Node runs without any package beside it.
import { defineConfig } from 'vite';
import { recordPackages } from './record-packages.ts';
import { ROOT, TARGET, UNUSED_PACKAGES } from './vite-shared.ts';

export default defineConfig({
  root: ROOT,
  publicDir: false,
  plugins: [recordPackages('cli').main],
  resolve: { alias: UNUSED_PACKAGES },
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: 'src/cli/main.ts',
    target: TARGET,
    outDir: 'dist',
    // The app was built into the same folder before.
    emptyOutDir: false,
    minify: false,
    copyPublicDir: false,
    reportCompressedSize: false,
    rolldownOptions: {
      output: { format: 'es', entryFileNames: 'cli.js', codeSplitting: false },
    },
  },
});
