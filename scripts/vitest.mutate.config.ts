import { defineConfig } from 'vitest/config';
import { TEST_MS } from '../tests/support/time-limits.ts';
import { ROOT, UNUSED_PACKAGES } from './vite-shared.ts';

/** Unit tests near the folder that is changed: those of whole samples would take minutes for each change. */
export default defineConfig({
  root: ROOT,
  resolve: { alias: UNUSED_PACKAGES },
  test: {
    name: 'unit',
    include: (process.env.FOAMLOFT_MUTATE_TESTS ?? '').split(',').map((folder) => `${folder}/**/*.test.ts`),
    exclude: ['tests/browser/**', 'tests/**/*.e2e.test.ts'],
    environment: 'node',
    isolate: false,
    testTimeout: TEST_MS,
    hookTimeout: TEST_MS,
  },
});
