import type { MadeFile } from '../worker/workshop-api.ts';

/** How long the browser may take to begin a download before its bytes are let go, ms. */
const GRACE_MS = 10_000;

/** Hands a file to the browser's downloads. */
export function downloadFile(file: MadeFile): void {
  const url = URL.createObjectURL(new Blob([file.bytes as Uint8Array<ArrayBuffer>], { type: file.mime }));
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), GRACE_MS);
}
