import { spawn } from 'node:child_process';
import { ROOT } from './paths.mjs';

/** Runs the parts of a long job one after another, says how long each took, and goes on after one that failed. */
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
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    process.stdout.write(`== ${name}: ${isGood ? 'done' : 'FAILED'} in ${seconds} s\n`);
    if (!isGood) this.failed.push(name);
    return isGood;
  }
}

/** Runs a JavaScript file with this Node, its output passing through. @returns whether it ended with 0 */
export function runNode(file, words, env = process.env) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [file, ...words], {
      cwd: ROOT,
      env,
      stdio: ['ignore', 'inherit', 'inherit'],
    });
    child.once('error', (error) => {
      process.stderr.write(`${error.message}\n`);
      resolve(false);
    });
    child.once('exit', (code) => resolve(code === 0));
  });
}
