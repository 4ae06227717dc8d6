import type { AssemblySculpt, AssemblySheet } from './assembly-parts.ts';
import { canStand } from './assembly.ts';
import type { Run } from './run.ts';
import type { LayerRun } from './sculpt-run.ts';

/** The sculpts of a run that came as far as pieces, with all sheets of their walls. */
export const assemblySculpts = (run: Run): readonly AssemblySculpt[] =>
  run.sculpts.flatMap((own): AssemblySculpt[] => {
    const sheets = own.sheetsOfFoam.map((layer) => sheetOf(run, layer)).filter((sheet) => sheet !== null);
    const isWhole = sheets.length === own.sheetsOfFoam.length && sheets.length > 0 && own.stopped === null;
    return isWhole && canStand(own) ? [{ part: own.wished, sheets, wallSheets: own.layers.length }] : [];
  });

function sheetOf(run: Run, { cut, pieces, bare, plan }: LayerRun): AssemblySheet | null {
  const own = bare ?? pieces;
  return cut === null || own === null ? null : { cut, pieces: own, foam: run.foam(plan.choice.foam) };
}
