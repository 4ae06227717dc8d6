import { fileNameOf } from '../base/file-name.ts';
import type { Finding } from '../base/finding.ts';
import { fail, ok, type Fail, type Result } from '../base/result.ts';
import { runWithPauses } from '../base/stepwise.ts';
import { Cancelled, shareOfWork, type Work } from '../base/work.ts';
import { cutterOfProject, machineFileSteps, type MachineChoices } from '../pipeline/machine-files.ts';
import { stoppedIn, type Outcome } from '../pipeline/outcome.ts';
import type { Source } from '../pipeline/sculpt-stage.ts';
import { SHOP_FILES, shopFile } from '../pipeline/shop-files.ts';
import { isWhole, shopPlanSteps } from '../pipeline/shop-plan.ts';
import { FILE_NAMES, pdfOf, projectFileOf, reportOf, svgOf } from '../pipeline/write-files.ts';
import type { Project } from '../project/project.ts';
import { zipSteps } from '../steps/write/zip.ts';
import type { FilesAsk, FilesMade, FilesMaking, PaperFile, ReadyFile } from './files-api.ts';
import { PoliteWork } from './polite-work.ts';
import type { Progress } from './workshop-api.ts';

/** What the desk needs of the workshop. */
export interface FilesHost {
  loadFont(): Promise<Uint8Array>;
  /** Runs the chain in its turn. */
  run(project: Project, date: string, work: Work): Promise<Outcome>;
  sourceOf(hash: string): Source | undefined;
}

/** Share of the work that the chain takes, and that packing does: it is mostly remembered. */
const RUN_SHARE = 0.15;
const PACK_FROM = 0.92;

type Contents = Map<string, Uint8Array | string>;

/** Makes the files that were picked, one list at a time. */
export class FilesDesk implements FilesMaking {
  readonly #host: FilesHost;
  #work: PoliteWork | null = null;

  constructor(host: FilesHost) {
    this.#host = host;
  }

  async makeFiles(
    ask: FilesAsk,
    project: Project,
    date: string,
    onProgress: (progress: Progress) => void,
  ): Promise<Result<FilesMade> | null> {
    this.#work?.cancel();
    const work = new PoliteWork(onProgress);
    this.#work = work;
    try {
      return await this.#make(ask, project, date, work);
    } catch (error) {
      if (error instanceof Cancelled) return null;
      throw error;
    } finally {
      if (this.#work === work) this.#work = null;
    }
  }

  stopFiles(): Promise<void> {
    this.#work?.cancel();
    return Promise.resolve();
  }

  async #make(ask: FilesAsk, project: Project, date: string, work: PoliteWork): Promise<Result<FilesMade>> {
    await work.pause(0, 'working out the job');
    const outcome = await this.#host.run(project, date, shareOfWork(work, 0, RUN_SHARE));
    const stopped = stoppedIn(outcome);
    if (stopped !== null) return { ok: false, problem: stopped.problem };
    if (!isWhole(outcome)) return fail('files/unfinished', 'A piece cannot be laid flat yet: part it first.');
    const files: Contents = new Map();
    const failed = await this.#addPaper(files, ask.paper, outcome, date, work);
    if (failed !== null) return failed;
    const made = await this.#addMachine(files, ask, outcome, work);
    if (!made.ok) return made;
    return ok({ file: await packed(files, project, date, work), names: [...files.keys()], notes: made.value });
  }

  async #addPaper(
    files: Contents,
    wanted: readonly PaperFile[],
    outcome: Outcome,
    date: string,
    work: PoliteWork,
  ): Promise<Fail | null> {
    for (const [i, kind] of wanted.entries()) {
      await work.pause(RUN_SHARE + (i / wanted.length) * 0.35, `making ${NAMES[kind]}`);
      const made = await this.#paperFile(kind, outcome, date, work);
      if (!made.ok) return made;
      files.set(NAMES[kind], made.value);
    }
    return null;
  }

  async #paperFile(
    kind: PaperFile,
    outcome: Outcome,
    date: string,
    work: PoliteWork,
  ): Promise<Result<Uint8Array | string>> {
    switch (kind) {
      case 'templates':
        return await pdfOf(outcome, { font: await this.#host.loadFont(), date }, quiet(work));
      case 'buildSheet':
        return await shopFile('sheet', outcome, { font: await this.#host.loadFont(), date }, quiet(work));
      case 'cutList':
      case 'gluing':
        return await shopFile(kind, outcome, { font: new Uint8Array(0), date }, quiet(work));
      case 'pieces':
        return ok(svgOf(outcome));
      case 'report':
        return ok(reportOf(outcome, [], await runWithPauses(shopPlanSteps(outcome), () => work.pause(work.done))));
      case 'project':
        return ok(projectFileOf(outcome, (hash) => this.#host.sourceOf(hash)));
    }
  }

  async #addMachine(
    files: Contents,
    ask: FilesAsk,
    outcome: Outcome,
    work: PoliteWork,
  ): Promise<Result<readonly Finding[]>> {
    const choices = machineChoices(ask, outcome.project);
    if (choices === null) return ok([]);
    const font = ask.pngDpi === null ? new Uint8Array(0) : await this.#host.loadFont();
    let told = 0;
    const steps = machineFileSteps(outcome, choices, font);
    const made = await runWithPauses(steps, () => {
      // How many stretches there are is not known beforehand: it comes nearer and nearer.
      told += 1;
      return work.pause(0.5 + (PACK_FROM - 0.5) * (1 - Math.exp(-told / 40)), 'making files for machines');
    });
    if (!made.ok) return made;
    for (const [name, content] of made.value) files.set(name, content);
    return ok(made.notes);
  }
}

const NAMES: Readonly<Record<PaperFile, string>> = {
  templates: FILE_NAMES.pdf,
  buildSheet: SHOP_FILES.sheet,
  cutList: SHOP_FILES.cutList,
  gluing: SHOP_FILES.gluing,
  pieces: FILE_NAMES.svg,
  report: FILE_NAMES.report,
  project: FILE_NAMES.project,
};

/** Lets others run and can be called off, and tells nothing of its own: how far the whole is stands as it was. */
const quiet = (work: PoliteWork): Work => ({ pause: () => work.pause(work.done), signal: work.signal });

/** @returns null where nothing is for a machine. */
function machineChoices(ask: FilesAsk, project: Project): MachineChoices | null {
  const { sheetSvg, dxf, pngDpi, stl, obj, timesSmaller } = ask;
  if (!sheetSvg && !dxf && pngDpi === null && !stl && !obj) return null;
  return {
    sheetSvg,
    dxf,
    ...(pngDpi === null ? {} : { pngDpi }),
    ...(stl || obj ? { models: { stl, obj, ...(timesSmaller === null ? {} : { timesSmaller }) } } : {}),
    cutter: cutterOfProject(project),
  };
}

const MIMES: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  json: 'application/json',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  png: 'image/png',
  stl: 'model/stl',
  obj: 'model/obj',
  zip: 'application/zip',
};

/** One file as it is, several as one zip that is called after the job. */
async function packed(files: Contents, { name }: Project, date: string, work: PoliteWork): Promise<ReadyFile> {
  const [only] = files;
  if (files.size === 1) return readyFile(only[0], only[1]);
  let told = 0;
  const bytes = await runWithPauses(zipSteps(files, date), () => {
    told += 1;
    return work.pause(PACK_FROM + (1 - PACK_FROM) * (1 - Math.exp(-told / 20)), 'packing them together');
  });
  return readyFile(`${fileNameOf(name)}.zip`, bytes);
}

function readyFile(name: string, content: Uint8Array | string): ReadyFile {
  const type = MIMES[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
  return { name, blob: new Blob([content as Uint8Array<ArrayBuffer> | string], { type }) };
}
