import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));
export const CLI = join(ROOT, 'dist/cli.js');

export interface CliRun {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the built command line in a process of its own, its output in pipes as in a script. */
export function runCli(...words: string[]): CliRun {
  if (!existsSync(CLI)) throw new Error('dist/cli.js is not built: npm run build');
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...words], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { status, stdout, stderr };
}

/** A folder of its own for one test, gone when it ends. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'foamloft-cli-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes files into a scratch folder. @returns their full paths in the order given */
export function scratchFiles(files: Readonly<Record<string, string | Uint8Array>>): string[] {
  const folder = scratchFolder();
  return Object.entries(files).map(([name, content]) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  });
}

/** A sample's model and seams. */
export const sample = (name: string): { model: string; seams: string } => ({
  model: join(ROOT, 'samples', `${name}.obj`),
  seams: join(ROOT, 'samples', `${name}.seams.json`),
});
