import { contentHash } from '../base/hash.ts';
import { ok } from '../base/result.ts';
import type { SculptView } from '../model/bench-view.ts';
import type { SourceModel } from '../model/source-model.ts';
import { sourceFormat } from '../pipeline/source-format.ts';
import type { Source } from '../pipeline/sculpt-stage.ts';
import { sculptAtWork } from '../project/at-work.ts';
import { FIRST_LOOK, firstLook } from './first-look.ts';
import { PoliteWork } from './polite-work.ts';
import type { Workshop } from './workshop-api.ts';

/** The workshop itself, as far as it is handed over to. */
export interface WholeWorkshop extends Workshop {
  /** Keeps a source file that came before it was here. */
  takeSource(hash: string, source: Source): void;
  /** The sculpt that the screen has as its update {@link FIRST_LOOK}. */
  seenAs(view: SculptView): void;
}

/**
 * Stands for the workshop until that is loaded, which is twenty times as large: takes files in and shows the first sculpt as it is read.
 * Every other call waits for the workshop, in the order of the calls.
 */
class Reception implements Pick<Workshop, 'putSource' | 'keepFile' | 'compute'> {
  readonly #load: () => Promise<WholeWorkshop>;
  #whole: Promise<WholeWorkshop> | null = null;
  readonly #sources = new Map<string, Source>();

  constructor(load: () => Promise<WholeWorkshop>) {
    this.#load = load;
  }

  /** What could not be loaded is asked for again by the next call. */
  whole(before: Promise<unknown> = Promise.resolve()): Promise<WholeWorkshop> {
    this.#whole ??= before
      .then(() => this.#load())
      .then((whole) => {
        for (const [hash, source] of this.#sources) whole.takeSource(hash, source);
        this.#sources.clear();
        return whole;
      })
      .catch((error: unknown) => {
        this.#whole = null;
        throw error;
      });
    return this.#whole;
  }

  async putSource(...file: Parameters<Workshop['putSource']>): ReturnType<Workshop['putSource']> {
    if (this.#whole !== null) return (await this.#whole).putSource(...file);
    const format = sourceFormat(...file);
    return format.ok ? ok({ hash: await this.keepFile(...file), format: format.value }) : format;
  }

  async keepFile(bytes: Uint8Array, fileName: string): Promise<string> {
    const hash = await contentHash(bytes);
    if (this.#whole === null) this.#sources.set(hash, { fileName, bytes });
    else (await this.#whole).takeSource(hash, { fileName, bytes });
    return hash;
  }

  async compute(...ask: Parameters<Workshop['compute']>): ReturnType<Workshop['compute']> {
    const [project, have, onProgress, ...rest] = ask;
    if (this.#whole !== null) return (await this.#whole).compute(...ask);
    let seen: SculptView | null = null;
    const looking = this.#look(...ask).then((view) => (seen = view));
    const whole = await this.whole(looking);
    if (seen === null) return whole.compute(...ask);
    whole.seenAs(seen);
    return whole.compute(project, have === 0 ? FIRST_LOOK : have, onProgress, ...rest);
  }

  /** Shows the sculpt that is worked on. @returns it where the screen took it. */
  async #look(...[project, have, onProgress, onEarly]: Parameters<Workshop['compute']>): Promise<SculptView | null> {
    const part = sculptAtWork(project);
    const source = part === null ? undefined : this.#sources.get(part.source.hash);
    if (part === null || source === undefined || onEarly === undefined || have !== 0) return null;
    const look = await firstLook(part, source.bytes, new PoliteWork(onProgress));
    if (look === null) return null;
    let model: SourceModel | undefined = look.model;
    const takeRead = (): SourceModel | undefined => {
      const taken = model;
      model = undefined;
      return taken;
    };
    this.#sources.set(part.source.hash, { ...source, takeRead });
    return (await onEarly({ number: FIRST_LOOK, sculpt: look.view })) ? look.view : null;
  }
}

/** @param load  brings the workshop. */
export function receptionOf(load: () => Promise<WholeWorkshop>): Workshop {
  const reception = new Reception(load);
  return new Proxy({} as Workshop, {
    get: (_, name: keyof Workshop) =>
      name === 'putSource' || name === 'keepFile' || name === 'compute'
        ? reception[name].bind(reception)
        : async (...words: never[]) => {
            const whole = await reception.whole();
            return await (whole[name] as (...of: never[]) => Promise<unknown>)(...words);
          },
  });
}
