import { defineConfig } from 'vite';
import { recordPackages } from './record-packages.ts';
import { ROOT, TARGET, UNUSED_PACKAGES } from './vite-shared.ts';

/**
 * How a file of the command line is built: everything in one, for plain Node.
 * @param entry  source file, below the top of the project.
 * @param name   what the file in dist/ is called, without its ending.
 */
export const cliConfig = (entry: string, name: string) =>
  defineConfig({
    root: ROOT,
    publicDir: false,
    plugins: [recordPackages(name).main],
    resolve: { alias: UNUSED_PACKAGES },
    ssr: { noExternal: true, target: 'node' },
    build: {
      ssr: entry,
      target: TARGET,
      outDir: 'dist',
      // The app was built into the same folder before.
      emptyOutDir: false,
      minify: false,
      copyPublicDir: false,
      reportCompressedSize: false,
      rolldownOptions: {
        output: { format: 'es', entryFileNames: `${name}.js`, codeSplitting: false },
      },
    },
  });
