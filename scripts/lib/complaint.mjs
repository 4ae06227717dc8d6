/** What the person at the terminal can put right: shown as one sentence, without a stack, and given as the exit code. */
export class Complaint extends Error {
  /**
   * @param {string} sentence  what is wrong and what to do
   * @param {number} exitCode  2 when the machine lacks something, 1 for everything else
   */
  constructor(sentence, exitCode = 1) {
    super(sentence);
    this.exitCode = exitCode;
  }
}

/** Runs a script's body; a {@link Complaint} ends it with its sentence, anything else with a stack. */
export async function runScript(body) {
  try {
    await body();
  } catch (error) {
    if (!(error instanceof Complaint)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = error.exitCode;
  }
}
