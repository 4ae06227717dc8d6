import { readFile } from 'node:fs/promises';
import { FILE_NAMES, stripPdfOf } from '../pipeline/write-files.ts';
import { newProject } from '../project/new-project.ts';
import { setFoam, setThickness } from '../project/commands.ts';
import type { PaperChoice } from '../project/project.ts';
import { Refused } from './exit.ts';
import { writeAll } from './output-folder.ts';
import { checkFolder } from './output-place.ts';

/** What the command line said of a test strip. */
export interface StripChoices {
  readonly out: string;
  readonly thicknessMm?: number;
  readonly paper: Partial<PaperChoice>;
  readonly date: string;
}

/** No sculpt is needed for a strip. */
const NO_SOURCE = { hash: '0'.repeat(64), fileName: 'none', format: 'obj' } as const;

/** `strip --out DIR`: the page from which a foam's neutral fraction is found. @returns the line for stdout. */
export async function stripCommand({ out, thicknessMm, paper, date }: StripChoices): Promise<string> {
  await checkFolder(out, [FILE_NAMES.strip], []);
  const first = newProject('Test strip', NO_SOURCE);
  const foam = first.foams.find((sheet) => sheet.thicknessMm === thicknessMm);
  const chosen = foam === undefined ? first : setFoam(foam.id, foam.thicknessMm).apply(first);
  const project = thicknessMm === undefined ? chosen : setThickness(thicknessMm).apply(chosen);
  const font = new Uint8Array(await readFile(new URL('./fonts/DejaVuSans.ttf', import.meta.url)));
  const made = await stripPdfOf({ ...project, paper: { ...project.paper, ...paper } }, { font, date });
  if (!made.ok) throw Refused.from(made.problem, 'strip');
  await writeAll(out, new Map([[FILE_NAMES.strip, made.value]]));
  return `test strip written to ${out}\n`;
}
