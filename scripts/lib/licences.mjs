import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Complaint } from './complaint.mjs';
import { DIST, MODULES } from './paths.mjs';

/** Short names of terms that a package only describes in words. */
const LICENCE_NAMES = { 'dejavu-fonts-ttf': 'Bitstream-Vera' };

/** Files inside a package that hold notices of further makers, which its licence file leaves out. */
const NOTICES_INSIDE = {
  'jpeg-js': ['lib/decoder.js', 'lib/encoder.js'],
  jspdf: ['dist/jspdf.es.js'],
  pako: ['lib/zlib/adler32.js'],
};

/** The bundler's helpers come with no package of their own, but in one version with this one, of the same makers and terms. */
const SAME_TERMS = { '@oxc-project/runtime': '@oxc-project/types' };

/** The builds that note their packages. */
const BUILDS = ['app', 'cli'];

/**
 * What the last build holds of others' work, by name, with the full texts.
 * @returns {{ name: string, version: string, licence: string, usedIn: string[], text: string }[]}
 */
export function readLicences() {
  const usedIn = new Map();
  for (const build of BUILDS) {
    const path = join(DIST, '.packages', `${build}.json`);
    if (!existsSync(path)) throw new Complaint('dist/ holds no build to look into. Run: npm run build');
    for (const name of JSON.parse(readFileSync(path, 'utf8'))) usedIn.set(name, [...(usedIn.get(name) ?? []), build]);
  }
  return [...usedIn.keys()].sort().map((name) => {
    const folder = join(MODULES, SAME_TERMS[name] ?? name);
    const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const licence = LICENCE_NAMES[name] ?? about.license;
    return { name, version: about.version, licence, usedIn: usedIn.get(name), text: licenceText(name, folder) };
  });
}

function licenceText(name, folder) {
  const files = readdirSync(folder).filter((file) => /^(licen[cs]e|copying|notice)(\.(md|txt))?$/i.test(file));
  if (files.length === 0)
    throw new Complaint(
      `The package ${name} holds no licence text: look for it and name it in scripts/lib/licences.mjs.`,
    );
  const texts = files.sort().map((file) => ownPart(readFileSync(join(folder, file), 'utf8')));
  const notices = (NOTICES_INSIDE[name] ?? []).flatMap((file) => noticesIn(readFileSync(join(folder, file), 'utf8')));
  return [...texts, ...new Set(notices)].map(tidy).join('\n\n----\n\n');
}

/** Without the terms of what was bundled into a tool of the build and never reaches ours. */
function ownPart(text) {
  return text.split(/^# Licenses of bundled dependencies/m)[0];
}

/** Comments that speak of a copyright or a licence, without their marks. */
function noticesIn(code) {
  const comments = code.match(/\/\*[^]*?\*\/|(?:^[ \t]*\/\/.*\n)+/gm) ?? [];
  return comments
    .filter((comment) => /@license|copyright|\(C\) \d{4}/i.test(comment))
    .map((comment) => comment.replace(/^[ \t]*(\/\*+|\*+\/|\*(?!\/)|\/\/) ?/gm, '').replace(/\*+\/\s*$/, ''));
}

function tidy(text) {
  return text
    .replaceAll('\r\n', '\n')
    .replace(/^@license ?/gm, '')
    .replace(/[ \t]+$/gm, '')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}
