import type { FilesDesk, FilesHost } from './files-desk.ts';
import type { FilesMaking } from './files-api.ts';

/** The desk that makes files. Its code, drawings for machines and letters for pictures among it, is loaded when the first is asked for. */
export class LaterFilesDesk implements FilesMaking {
  readonly #host: FilesHost;
  #desk: Promise<FilesDesk> | null = null;

  constructor(host: FilesHost) {
    this.#host = host;
  }

  async makeFiles(...ask: Parameters<FilesMaking['makeFiles']>): ReturnType<FilesMaking['makeFiles']> {
    this.#desk ??= import('./files-desk.ts').then(
      ({ FilesDesk }) => new FilesDesk(this.#host),
      (error: unknown) => {
        // The next file asks for it again.
        this.#desk = null;
        throw error;
      },
    );
    return await (await this.#desk).makeFiles(...ask);
  }

  async stopFiles(): Promise<void> {
    await (await this.#desk)?.stopFiles();
  }
}
