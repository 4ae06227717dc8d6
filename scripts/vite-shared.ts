import { fileURLToPath } from 'node:url';
import type { Alias } from 'vite';

export const ROOT = fileURLToPath(new URL('../', import.meta.url));

const EMPTY = fileURLToPath(new URL('./empty-module.ts', import.meta.url));

/** What the PDF library would load to turn web pages into pages of paper, which nobody here does. */
export const UNUSED_PACKAGES: Alias[] = ['canvg', 'html2canvas', 'dompurify'].map((find) => ({
  find,
  replacement: EMPTY,
}));

export const TARGET = 'es2022';
