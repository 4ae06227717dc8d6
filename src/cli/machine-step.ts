import { machineCautions, machineFiles, type MachineChoices } from '../pipeline/machine-files.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { Refused } from './exit.ts';

/** What is dangerous at a machine stands on the terminal before there is a file to give to it. */
export function tellCautions(machine: MachineChoices | undefined): void {
  const cautions = machine === undefined ? [] : machineCautions(machine);
  if (cautions.length > 0)
    process.stdout.write(`Before a laser cuts foam:\n${cautions.map((text) => `  ${text}\n`).join('')}`);
}

/**
 * Files for machines and what is said of them.
 * @param font DejaVu Sans.
 * @param fileName  named in a refusal where the fault is the model's.
 * @throws Refused
 */
export function makeForMachines(
  outcome: Outcome,
  machine: MachineChoices | undefined,
  font: Uint8Array,
  fileName: string,
): { readonly files: ReadonlyMap<string, Uint8Array | string>; readonly lines: readonly string[] } {
  if (machine === undefined) return { files: new Map(), lines: [] };
  const made = machineFiles(outcome, machine, font);
  if (!made.ok) throw Refused.from(made.problem, fileName);
  return {
    files: made.value,
    lines: made.notes.map(({ severity, text }) => (severity === 'note' ? text : `${severity}: ${text}`)),
  };
}
