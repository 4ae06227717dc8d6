import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const FOLDER = new URL('../golden/', import.meta.url);

/**
 * Compares a readable text, numbers rounded to 0.001 mm by the caller, with the one kept in tests/golden. The kept one is only
 * written by `npm run golden`, to be reviewed as a diff; one that is missing fails. It shows a change, it does not prove right.
 * @param name    file name under tests/golden, with its ending; may name a folder
 * @param folder  where the kept texts are; only tests of this function give another
 */
export function expectGolden(name: string, text: string, folder: URL = FOLDER): void {
  const path = fileURLToPath(new URL(name, folder));
  if (process.env.FOAMLOFT_UPDATE_GOLDEN === '1') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    return;
  }
  if (!existsSync(path)) {
    throw new Error(`tests/golden/${name} is missing. Look at what the test gives, then run: npm run golden`);
  }
  expect(text, `differs from tests/golden/${name}; if the change is meant, run: npm run golden`).toBe(
    readFileSync(path, 'utf8'),
  );
}
