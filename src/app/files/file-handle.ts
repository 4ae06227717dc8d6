/**
 * The part of the browser's file interface that is used here (WICG File System Access; WHATWG File System). Only some browsers have it, so
 * each call says when it is not there, and whoever asks falls back to downloads and to the plain chooser.
 */

/** A file on the disk that the maker chose. */
export interface FileHandle {
  readonly kind: 'file';
  readonly name: string;
  getFile(): Promise<File>;
  /** Bytes go to a file beside it, which takes its place when the stream is closed. */
  createWritable(): Promise<FileStream>;
  queryPermission?(wish: { readonly mode: 'readwrite' }): Promise<PermissionState>;
  /** Asks the maker; only within a click or a key press. */
  requestPermission?(wish: { readonly mode: 'readwrite' }): Promise<PermissionState>;
}

export interface FileStream {
  write(data: Uint8Array<ArrayBuffer>): Promise<void>;
  close(): Promise<void>;
  abort(): Promise<void>;
}

/** One kind of file in the browser's chooser. */
export interface FileKindWish {
  readonly description: string;
  readonly accept: Readonly<Record<string, readonly string[]>>;
}

interface Pickers {
  showOpenFilePicker?(wish: { readonly types: readonly FileKindWish[] }): Promise<readonly FileHandle[]>;
  showSaveFilePicker?(wish: {
    readonly suggestedName: string;
    readonly types: readonly FileKindWish[];
  }): Promise<FileHandle>;
  launchQueue?: { setConsumer(take: (launch: { readonly files?: readonly FileHandle[] }) => void): void };
}

const pickers = (): Pickers => globalThis as Pickers;

export const canChooseHandles = (): boolean => pickers().showOpenFilePicker !== undefined;
export const canSaveInPlace = (): boolean => pickers().showSaveFilePicker !== undefined;

/** Asks for a file to open. @returns null where the maker thought better of it. */
export async function chooseToOpen(type: FileKindWish): Promise<FileHandle | null> {
  return await unlessStopped(async () => (await pickers().showOpenFilePicker?.({ types: [type] }))?.[0] ?? null);
}

/** Asks where to save. @returns null where the maker thought better of it. */
export async function chooseToSave(suggestedName: string, type: FileKindWish): Promise<FileHandle | null> {
  return await unlessStopped(
    async () => (await pickers().showSaveFilePicker?.({ suggestedName, types: [type] })) ?? null,
  );
}

/** Files that the system hands over when one of the app's own kind is double-clicked. */
export function onLaunch(take: (handle: FileHandle) => void): void {
  pickers().launchQueue?.setConsumer(({ files = [] }) => {
    if (files.length > 0) take(files[0]);
  });
}

/** The handle of what was dropped; null where the browser gives none. To be called within the event: later its items are gone. */
export async function droppedHandle(event: DragEvent): Promise<FileHandle | null> {
  const items = [...(event.dataTransfer?.items ?? [])] as readonly HandleItem[];
  const item = items.find(({ kind }) => kind === 'file');
  try {
    const handle = (await item?.getAsFileSystemHandle?.()) ?? null;
    return handle?.kind === 'file' ? (handle as FileHandle) : null;
  } catch {
    // What is dropped from elsewhere than a disk has no handle: it is opened all the same.
    return null;
  }
}

type HandleItem = DataTransferItem & {
  getAsFileSystemHandle?(): Promise<{ readonly kind: 'file' | 'directory' } | null>;
};

/** Whether it may be written; asks the maker where that is not said yet. */
export async function mayWrite(handle: FileHandle): Promise<boolean> {
  const wish = { mode: 'readwrite' } as const;
  if ((await handle.queryPermission?.(wish)) === 'granted') return true;
  if (handle.requestPermission === undefined) return handle.queryPermission === undefined;
  return (await handle.requestPermission(wish)) === 'granted';
}

/** Puts bytes into a file in one go: until they are all there, what was in it stays. Rejects as the disk does, with the file as it was. */
export async function writeWhole(handle: FileHandle, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
  const stream = await handle.createWritable();
  try {
    await stream.write(bytes);
  } catch (error) {
    await stream.abort().catch(() => undefined);
    throw error;
  }
  await stream.close();
}

async function unlessStopped<T>(ask: () => Promise<T | null>): Promise<T | null> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
