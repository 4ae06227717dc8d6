import type { FileHandle, FileStream } from '../../src/app/files/file-handle.ts';

/** A file on a disk that does as it is told. */
export class FakeHandle implements FileHandle {
  readonly kind = 'file';
  text: string;
  lastModified = 1000;
  permission: PermissionState = 'granted';
  /** What the disk says when it is written to, or when the stream is closed. */
  writeFault: Error | null = null;
  closeFault: Error | null = null;
  isGone = false;

  constructor(
    readonly name: string,
    text = '',
  ) {
    this.text = text;
  }

  getFile(): Promise<File> {
    if (this.isGone) return Promise.reject(new DOMException('gone', 'NotFoundError'));
    return Promise.resolve(new File([this.text], this.name, { lastModified: this.lastModified }));
  }

  createWritable(): Promise<FileStream> {
    let written = '';
    return Promise.resolve({
      write: (data) => {
        written += new TextDecoder().decode(data).slice(0, this.writeFault === null ? undefined : 10);
        return this.writeFault === null ? Promise.resolve() : Promise.reject(this.writeFault);
      },
      close: () => {
        if (this.closeFault !== null) return Promise.reject(this.closeFault);
        this.text = written;
        this.lastModified += 1000;
        return Promise.resolve();
      },
      abort: () => Promise.resolve(),
    });
  }

  queryPermission(): Promise<PermissionState> {
    return Promise.resolve(this.permission === 'denied' ? 'prompt' : this.permission);
  }

  requestPermission(): Promise<PermissionState> {
    return Promise.resolve(this.permission);
  }
}
