import { spawn } from 'node:child_process';
import { ROOT } from './paths.mjs';

/** Runs the parts of a long job, says how long each took, and goes on after one that failed. */
export class Stages {
  /** Names of the stages that failed, in order. */
  failed = [];

  /**
   * @param {string} name  what the stage does, for the reader
   * @param {() => Promise<boolean>} work  resolves to whether it went well
   */
  async run(name, work) {
    process.stdout.write(`\n== ${name}\n`);
    const start = performance.now();
    const isGood = await work();
    this.#ended(name, isGood, start);
    return isGood;
  }

  /**
   * Runs stages side by side, the first named first. What one writes is shown when it ends, so that no two are mixed.
   * @param {{ name: string, work: (write: (text: string) => void) => Promise<boolean> }[]} stages
   * @param {number} most  so many at once
   */
  async runSideBySide(stages, most) {
    const waiting = [...stages];
    const next = async () => {
      for (let stage = waiting.shift(); stage !== undefined; stage = waiting.shift()) {
        process.stdout.write(`\n== ${stage.name}: begins\n`);
        const start = performance.now();
        const written = [];
        const isGood = await stage.work((text) => written.push(text));
        process.stdout.write(`\n== ${stage.name}\n${written.join('')}`);
        this.#ended(stage.name, isGood, start);
      }
    };
    await Promise.all(Array.from({ length: most }, next));
  }

  #ended(name, isGood, start) {
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    process.stdout.write(`== ${name}: ${isGood ? 'done' : 'FAILED'} in ${seconds} s\n`);
    if (!isGood) this.failed.push(name);
  }
}

/**
 * Runs a JavaScript file with this Node.
 * @param {(text: string) => void} [write]  takes its output; without one it passes through
 * @returns whether it ended with 0
 */
export function runNode(file, words, env = process.env, write = undefined) {
  return new Promise((resolve) => {
    const out = write === undefined ? 'inherit' : 'pipe';
    const child = spawn(process.execPath, [file, ...words], { cwd: ROOT, env, stdio: ['ignore', out, out] });
    for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', write);
    child.once('error', (error) => {
      process.stderr.write(`${error.message}\n`);
      resolve(false);
    });
    child.once('close', (code) => resolve(code === 0));
  });
}
