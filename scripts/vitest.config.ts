import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import packageFile from '../package.json' with { type: 'json' };
import { CHROMIUM_FLAGS, findChromium } from './lib/chromium.mjs';
import { TEST_MS, WAIT_MS } from '../tests/support/time-limits.ts';
import { shipStaticFiles } from './static-files.ts';
import { ROOT, UNUSED_PACKAGES } from './vite-shared.ts';

/** Every package that is code: workers are not looked into beforehand, and so their packages are named here. */
const PACKAGES = Object.keys(packageFile.dependencies).filter((name) => !name.includes('font'));

/**
 * Three kinds of tests:
 * `unit` in Node, `component` for single elements inside a browser, `e2e` in Node on what was built: the app in a browser, the command line.
 */
export default defineConfig({
  root: ROOT,
  resolve: { alias: UNUSED_PACKAGES },
  test: {
    expect: { poll: { timeout: WAIT_MS } },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/**/*.e2e.test.ts'],
          environment: 'node',
          // Nearly all are pure: one load of the sources serves every file. Where a test puts a module in another's place, it clears up.
          isolate: false,
          testTimeout: TEST_MS,
          hookTimeout: TEST_MS,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        plugins: [shipStaticFiles()],
        // A package that is only found during the run reloads the page and loses the test: all are named beforehand.
        optimizeDeps: {
          entries: ['index.html', 'tests/browser/**/*.component.test.ts'],
          include: ['vitest/browser', 'axe-core', 'lit/decorators.js', ...PACKAGES],
        },
        test: {
          name: 'component',
          include: ['tests/browser/**/*.component.test.ts'],
          testTimeout: TEST_MS,
          hookTimeout: TEST_MS,
          sequence: { groupOrder: 1 },
          browser: {
            enabled: true,
            headless: true,
            connectTimeout: TEST_MS,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: { executablePath: findChromium(), args: [...CHROMIUM_FLAGS] },
              // Drawn in software each picture of a journey takes a second.
              contextOptions: { reducedMotion: 'reduce' },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          include: ['tests/**/*.e2e.test.ts'],
          environment: 'node',
          isolate: false,
          testTimeout: TEST_MS,
          hookTimeout: TEST_MS,
          // One browser that draws in software fills two cores.
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
