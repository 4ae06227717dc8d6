// Draws the icons of the installed app from the mark: node scripts/icons.mjs
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { CHROMIUM_FLAGS, requireChromium } from './lib/chromium.mjs';
import { ROOT } from './lib/paths.mjs';

const ASSETS = join(ROOT, 'src/app/assets');

/**
 * Sizes, px, and the share of them that the mark takes. A system may cut a maskable icon to any form that holds the circle of 0.8 of its size
 * (Web App Manifest, "Icon masks and safe zone"): the corners of the mark lie 0.86 out, so it is drawn smaller there.
 */
const ICONS = [
  { file: 'icon-192.png', size: 192, share: 1 },
  { file: 'icon-512.png', size: 512, share: 1 },
  { file: 'icon-maskable-512.png', size: 512, share: 0.9 },
  { file: 'icon-touch-180.png', size: 180, share: 0.9 },
];

const mark = readFileSync(join(ASSETS, 'mark.svg'), 'utf8');
const ground = /<rect[^>]*fill="([^"]+)"/.exec(mark)[1];
const browser = await chromium.launch({ executablePath: requireChromium(), args: [...CHROMIUM_FLAGS] });
try {
  for (const { file, size, share } of ICONS) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const drawn = mark.replace(
      '<svg ',
      `<svg width="${Math.round(size * share)}" height="${Math.round(size * share)}" `,
    );
    await page.setContent(
      `<body style="margin:0;height:100vh;display:grid;place-content:center;background:${ground}">${drawn}</body>`,
    );
    await page.screenshot({ path: join(ASSETS, file) });
    await page.close();
  }
} finally {
  await browser.close();
}
