/** The half of the reader that takes files apart; it runs beside the half that asks. */
declare module 'pdfjs-dist/legacy/build/pdf.worker.mjs' {
  export const WorkerMessageHandler: unknown;
}
