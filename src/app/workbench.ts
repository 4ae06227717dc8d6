import { sculptAtWork } from '../project/at-work.ts';
import type { Problem } from '../base/result.ts';
import type { EarlyUpdate } from '../model/bench-view.ts';
import type { Command } from '../project/commands.ts';
import { History } from '../project/history.ts';
import { documentOf } from '../project/kept-version.ts';
import type { Project, SculptPart } from '../project/project.ts';
import { neededSources, sourcesOfProject } from '../project/sources.ts';
import type { ComputeReply, FileKind, MadeFile, Progress, Workshop } from '../worker/workshop-api.ts';
import type { Autosave, SaveState } from './autosave.ts';
import { EMPTY_BENCH, chainIndex, mergeEarly, mergeUpdate, pieceIndex, type Bench } from './bench-state.ts';
import type { LockDoor } from './files/job-lock.ts';
import { KEEP_WORDS } from './files/keep-words.ts';
import { Keeping, type JobPlace } from './files/keeping.ts';
import { jobKeyOf } from './files/kept-job.ts';
import { placeSaid } from './history/step-said.ts';
import { findingText, toldText } from './finding-text.ts';
import { labelText } from './label-words.ts';
import { downloadReport } from './saving.ts';
import type { Refusal, SavedSource, Storage } from './storage.ts';
import { findingKey, toldFindings } from './verdict/told-findings.ts';
import { FIRST_VIEW, FIRST_WISHES, NOTHING, NO_PATH, type ViewState, type Wishes } from './view-state.ts';
import { WORDS } from './words.ts';

/** A way out that a notice offers as a button. */
export interface Remedy {
  readonly label: string;
  run(): void;
}

/** A job that is open, with its steps and where it is kept. */
interface OpenJob {
  readonly history: History;
  readonly place: JobPlace;
}

/** One sentence above the job sheet, with its remedy. */
export interface Notice {
  readonly tone: 'note' | 'problem';
  readonly text: string;
  readonly remedy?: Remedy;
  /** Other ways out, where there are several. */
  readonly also?: readonly Remedy[];
  /** What the button that closes it says, where it says more than that. */
  readonly close?: string;
}

/**
 * What the window knows: the document with its history, the last result, and how it is looked at. Elements are given slices of it and
 * send events; every change is told by a `change` event, and nothing else writes here.
 */
export class Workbench extends EventTarget {
  readonly workshop: Workshop;
  readonly keeping: Keeping;
  #history: History | null = null;
  #before: OpenJob | null = null;
  #bench: Bench = EMPTY_BENCH;
  #view: ViewState = FIRST_VIEW;
  #wishes: Wishes = FIRST_WISHES;
  #progress: Progress | null = null;
  #reading: string | null = null;
  #isStale = false;
  #notice: Notice | null = null;
  #spoken = '';
  #turn = 0;
  #undos = 0;
  #refusals = 0;
  #isRefusing = false;

  constructor(
    workshop: Workshop,
    readonly storage: Storage,
    /** How windows speak to each other; null where they cannot. */
    locks: LockDoor | null = null,
  ) {
    super();
    this.workshop = workshop;
    storage.onNewer = () => this.#tellRefusal('newer');
    this.keeping = new Keeping(
      storage,
      locks,
      (state) => this.#onSaveState(state),
      () => this.#onHold(),
    );
  }

  get autosave(): Autosave {
    return this.keeping.autosave;
  }

  get project(): Project | null {
    return this.#history?.project ?? null;
  }
  get part(): SculptPart | null {
    return this.project === null ? null : sculptAtWork(this.project);
  }
  get history(): History | null {
    return this.#history;
  }
  get bench(): Bench {
    return this.#bench;
  }
  get view(): ViewState {
    return this.#view;
  }
  get wishes(): Wishes {
    return this.#wishes;
  }
  /** How far the running computation is; null when none runs. */
  get progress(): Progress | null {
    return this.#progress;
  }
  /** Name of the file being read, or null. */
  get reading(): string | null {
    return this.#reading;
  }
  /** True while the bench shows an older document than the one in force. */
  get isStale(): boolean {
    return this.#isStale;
  }
  get notice(): Notice | null {
    return this.#notice;
  }
  /** How often it was undone or done again: what was under way then is not gone on with. */
  get undos(): number {
    return this.#undos;
  }
  /** How often something was to be changed while another window works on the job, since that was told. */
  get refusals(): number {
    return this.#refusals;
  }
  /** The last sentence for screen readers. */
  get spoken(): string {
    return this.#spoken;
  }
  /** The job that was open before this one, to go back to. */
  get before(): Project | null {
    return this.#before?.history.project ?? null;
  }

  /** Opens a job in place of the one in hand, which stays at hand as `before`. @param place  missing: it is in no file. */
  adopt(project: Project, fresh: readonly SavedSource[], place?: JobPlace): void {
    this.#before = this.#inHand ?? this.#before;
    for (const source of fresh) this.autosave.addSource(source);
    this.#show({
      history: new History(project, Date.now()),
      place: place ?? { job: jobKeyOf(project), file: null, inFile: null },
    });
  }

  get #inHand(): OpenJob | null {
    return this.#history === null ? null : { history: this.#history, place: this.keeping.place };
  }

  /** Puts the job before this one back, with its history. */
  goBack(): void {
    const back = this.#before;
    if (back === null) return;
    this.#before = this.#inHand;
    void this.keepSources(back.history.project).then(() => this.#show(back));
  }

  /** The file the job is kept in, or whether it is in one, has changed. */
  async isSavedTo(...saved: Parameters<Keeping['isSavedTo']>): Promise<void> {
    await this.keeping.isSavedTo(...saved);
    this.#keep();
    this.#changed();
  }

  run(command: Command): void {
    const history = this.#history;
    if (history === null || this.#refuses()) return;
    const before = history.project;
    if (history.run(command, Date.now()) !== before) this.#documentChanged(before);
  }

  /** Where another window works on the job nothing is changed in this one, and a `refused` event tells so. */
  #refuses(): boolean {
    if (this.keeping.hold === 'mine') return false;
    this.#refusals += 1;
    this.#changed();
    this.dispatchEvent(new Event('refused'));
    this.#isRefusing = true;
    queueMicrotask(() => (this.#isRefusing = false));
    return true;
  }

  undo(): void {
    const label = this.#history?.undoLabel;
    if (label == null) return;
    this.#walk((history) => history.undo(), WORDS.spoken.undone(labelText(label)));
  }

  redo(): void {
    const label = this.#history?.redoLabel;
    if (label == null) return;
    this.#walk((history) => history.redo(), WORDS.spoken.redone(labelText(label)));
  }

  /** Goes to a step of the history: as many undos or redos as it is away. */
  goToStep(id: number): void {
    this.#walk((history) => history.goTo(id), '');
  }

  /** @param said  what was done; empty: the place is enough. */
  #walk(go: (history: History) => Project, said: string): void {
    const history = this.#history;
    if (history === null || this.#refuses()) return;
    const before = history.project;
    const now = go(history);
    if (now === before) return;
    this.#undos += 1;
    this.#letGoOfDart();
    this.say(placeSaid(history.trail, said));
    // Files of a step that is come back to may have been let go of.
    if (neededSources(now).some(({ hash }) => neededSources(before).every((source) => source.hash !== hash)))
      void this.keepSources(now);
    this.#documentChanged(before);
  }

  /** A dart that was undone is told of no longer. */
  #letGoOfDart(): void {
    const { dart } = this.#view;
    const corner = dart === null ? undefined : this.#bench.sculpt?.fileVertex[dart.tip];
    const isMarked = this.part?.seams.edges.some((pair) => pair.some((end) => end === corner)) === true;
    if (dart !== null && !isMarked) this.setView({ dart: null });
  }

  setView(patch: Partial<ViewState>): void {
    const { sheet } = this.#view;
    this.#view = { ...this.#view, ...patch };
    this.#changed();
    // Another sheet of foam is at hand in the worker; nothing is worked out for it.
    if (this.#view.sheet !== sheet) void this.compute();
  }

  setWishes(patch: Partial<Wishes>): void {
    this.#wishes = { ...this.#wishes, ...patch };
    this.#changed();
    // A refused wish is only forgotten; the job's own saving says when storage is off.
    this.storage.saveWishes(this.#wishes).catch(() => undefined);
  }

  setNotice(notice: Notice | null): void {
    // What was refused has not happened.
    if (this.#isRefusing && notice?.tone === 'note') return;
    this.#notice = notice;
    this.#changed();
  }

  setReading(fileName: string | null): void {
    this.#reading = fileName;
    this.#changed();
  }

  /** Tells a screen reader; a sentence said twice in a row is heard twice. */
  say(text: string): void {
    if (this.#isRefusing) return;
    this.#spoken = text === this.#spoken ? `${text}\u00a0` : text;
    this.#changed();
  }

  async cancel(): Promise<void> {
    await this.workshop.cancel();
  }

  /** A file of the last result. Problems become a notice. */
  async makeFile(kind: FileKind, date: string): Promise<MadeFile | null> {
    const { project } = this;
    if (project === null) return null;
    const made = await this.workshop.makeFile(kind, project, date);
    if (made.ok) return made.value;
    this.showProblem(made.problem);
    return null;
  }

  /** @param fileName  of the file that is at fault; where the sentence does not name it, it is named before it. */
  showProblem(problem: Problem, fileName = ''): void {
    const text = findingText(problem, this.project?.lengthUnit ?? 'mm');
    const { report } = problem;
    this.setNotice({
      tone: 'problem',
      text: text.includes(fileName) ? text : WORDS.notice.ofFile(fileName, text),
      ...(report === undefined
        ? {}
        : { remedy: { label: WORDS.notice.keepReport, run: () => downloadReport(report) } }),
    });
  }

  /** Computes the document in force. A newer call makes this one worthless: its reply is dropped. */
  async compute(): Promise<void> {
    const { project } = this;
    if (project === null) return;
    const turn = ++this.#turn;
    this.#isStale = true;
    this.#progress = { done: 0, text: '' };
    this.#changed();
    let isOver = false;
    const onProgress = (progress: Progress): void => {
      // Messages may arrive after the reply they belong to.
      if (turn !== this.#turn || isOver) return;
      const isSettling = this.#bench.pieces?.isFinal === false;
      this.#progress = isSettling ? { ...progress, text: WORDS.settling(toldText(progress.text, 'mm')) } : progress;
      this.#changed();
    };
    const onEarly = (early: EarlyUpdate): Promise<boolean> => {
      const isTaken = turn === this.#turn && !isOver;
      if (isTaken) this.#showBench(mergeEarly(this.#bench, early));
      return Promise.resolve(isTaken);
    };
    try {
      const reply = await this.workshop.compute(
        documentOf(project),
        this.#bench.update,
        onProgress,
        onEarly,
        this.#view.sheet,
      );
      isOver = true;
      if (turn === this.#turn) this.#take(reply);
    } catch (error) {
      // Our own mistake, or the worker ran out of memory: the document stands and can be saved, and whoever looks at the console is told.
      reportError(error);
      if (turn === this.#turn) this.#give();
    }
  }

  #give(): void {
    this.#progress = null;
    this.#reading = null;
    const remedy = { label: WORDS.notice.again, run: () => void this.compute() };
    this.setNotice({ tone: 'problem', text: WORDS.notice.broke, remedy });
  }

  #take(reply: ComputeReply): void {
    this.#progress = null;
    this.#reading = null;
    if (reply.cancelled) {
      const remedy = { label: WORDS.notice.goOn, run: () => void this.compute() };
      this.setNotice({ tone: 'note', text: WORDS.notice.stopped, remedy });
      return;
    }
    this.#isStale = false;
    const { stopped } = reply.update;
    if (this.#isFresh && stopped?.step === 'read' && this.#before !== null)
      return this.#refuse(this.#before, stopped.problem);
    this.#showBench(mergeUpdate(this.#bench, reply.update));
    const { pieces } = this.#bench;
    if (this.project !== null && pieces !== null)
      this.keeping.tell(this.project, this.#history?.undoLabel ?? '', pieces.pieces.length);
  }

  /** Puts another bench up, and lets go of what was chosen on the old one and is gone. */
  #showBench(bench: Bench): void {
    const edgesBefore = this.#bench.sculpt?.edgeVertices.length;
    this.#bench = bench;
    const isOtherSculpt = this.#bench.sculpt?.edgeVertices.length !== edgesBefore;
    this.#view = { ...this.#view, pointed: null, ...(isOtherSculpt ? ON_THE_OLD_SCULPT : {}) };
    const isOfSculpt = isOtherSculpt && this.#view.choice.kind !== 'part';
    if (isOfSculpt || this.#choiceIsGone()) this.#view = { ...this.#view, choice: NOTHING };
    this.#changed();
  }

  /** True for a job that was just opened and not worked on. */
  get #isFresh(): boolean {
    return this.#history?.canUndo === false && this.#history.canRedo === false && this.#bench.sculpt === null;
  }

  /** A file that cannot be read never takes the place of a job: that one comes back, with the reason said. */
  #refuse(back: OpenJob, problem: Problem): void {
    this.#before = null;
    const fileName = this.part?.source.fileName ?? '';
    void this.keepSources(back.history.project).then(() => {
      this.#show(back);
      this.showProblem(problem, fileName);
    });
  }

  #choiceIsGone(): boolean {
    const { choice } = this.#view;
    if (choice.kind === 'piece') return pieceIndex(this.#bench, choice.piece) < 0;
    if (choice.kind === 'seam') return chainIndex(this.#bench, choice.seam) < 0;
    if (choice.kind === 'part') return !partsOf(this.project, this.#bench).includes(choice.part);
    if (choice.kind === 'sheet') return choice.sheet >= (this.#bench.sheets?.sheets.length ?? 0);
    if (choice.kind === 'finding') return !toldFindings(this.#bench).some((told) => findingKey(told) === choice.key);
    return choice.kind === 'page' && choice.page >= (this.#bench.paper?.pages.length ?? 0);
  }

  #show({ history, place }: OpenJob): void {
    this.#history = history;
    this.keeping.moveTo(place);
    this.#bench = EMPTY_BENCH;
    this.#view = { ...FIRST_VIEW, familiar: this.#view.familiar };
    this.#documentChanged();
  }

  /** @param before  the document until now; where only versions were kept or let go since, nothing is to be worked out. */
  #documentChanged(before: Project | null = null): void {
    this.#keep();
    if (before !== null && before.revision === this.project?.revision) return this.#changed();
    if (this.#notice?.tone === 'problem') this.#notice = null;
    void this.compute();
  }

  /** Has the document in force kept in the browser. @param isOpened  true to leave what was kept of it before as an earlier state. */
  keepNow(isOpened = false): void {
    if (isOpened) this.keeping.moveTo(this.keeping.place);
    this.#keep();
  }

  #keep(): void {
    const { project } = this;
    const pieces = this.#bench.pieces?.pieces.length ?? null;
    if (project === null || this.#history === null) return;
    this.keeping.later(project, this.#history.undoLabel ?? '', this.#history.step, pieces);
  }

  /** Sources of a job may have been let go of meanwhile: going back hands them over again. */
  async keepSources(project: Project): Promise<void> {
    for (const source of sourcesOfProject(project)) {
      const bytes = await this.workshop.getSource(source.hash);
      if (bytes !== undefined) this.autosave.addSource({ hash: source.hash, fileName: source.fileName, bytes });
    }
  }

  #onHold(): void {
    if (this.keeping.hold === 'mine') this.#refusals = 0;
    this.#changed();
  }

  #onSaveState(state: SaveState): void {
    if (state === 'refused') this.#tellRefusal(this.autosave.refusal);
    else this.#changed();
  }

  #tellRefusal(refusal: Refusal): void {
    const texts: Record<Refusal, string> = {
      full: KEEP_WORDS.full,
      newer: KEEP_WORDS.newer,
      off: WORDS.notice.storageRefused,
    };
    this.setNotice({ tone: 'note', text: texts[refusal] });
  }

  #changed(): void {
    this.dispatchEvent(new Event('change'));
  }
}

/** Every part of a project, whatever it is made of. */
const partsOf = (project: Project | null, { plain }: Bench): readonly string[] => [
  ...[...(project?.parts ?? []), ...(project?.plain ?? [])].map(({ id }) => id),
  ...plain.map(({ part }) => part),
];

/** Corners and edges of another sculpt mean nothing. */
const ON_THE_OLD_SCULPT: Partial<ViewState> = {
  from: null,
  to: null,
  cursor: null,
  walked: null,
  ...NO_PATH,
  proposals: null,
  under: null,
};
