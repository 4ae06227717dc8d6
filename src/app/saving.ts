import type { FaultReport } from '../base/result.ts';
import type { ReadyFile } from '../worker/files-api.ts';
import type { MadeFile } from '../worker/workshop-api.ts';

/** How long the browser may take to begin a download before its bytes are let go, ms. */
const GRACE_MS = 10_000;

/** Hands over what tells of a fault of the program's own. */
export const downloadReport = ({ name, text }: FaultReport): void =>
  downloadBlob({ name, blob: new Blob([text], { type: 'application/json' }) });

/** Hands a file to the browser's downloads. */
export function downloadFile({ name, bytes, mime }: MadeFile): void {
  downloadBlob({ name, blob: new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mime }) });
}

/** The same, where its bytes are at hand already. */
export function downloadBlob({ name, blob }: ReadyFile): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), GRACE_MS);
}
