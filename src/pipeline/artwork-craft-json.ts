import type { Finding } from '../base/finding.ts';
import type { PlainWork } from '../model/plain-piece.ts';
import type { CraftedArtwork } from './artwork-craft.ts';
import { artworkJson } from './artwork-json.ts';

const figure = (value: number): number => Number(value.toFixed(6)) + 0;

/** What was made of artwork as JSON: the artwork it comes to, as {@link artworkJson} gives it, with its figures and the work. */
export const craftJson = ({ kind, artwork, figures, work }: CraftedArtwork, findings: readonly Finding[]): object => ({
  ...artworkJson(artwork, findings),
  made: kind,
  figures: Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, figure(value)])),
  ...(work === null ? {} : { work: workJson(work) }),
});

const workJson = ({ pieces, steps }: PlainWork): object => ({
  pieces: pieces.map(({ key, name, quantity, thicknessMm, areaMm2, outline, holes, lines, bend }) => ({
    key,
    name,
    quantity,
    thicknessMm: figure(thicknessMm),
    areaMm2: figure(areaMm2),
    cutMm: figure([...outline, ...holes.flat()].reduce((sum, { lengthMm }) => sum + lengthMm, 0)),
    bend: bend.kind,
    lines: countedRoles(lines.map(({ role }) => role)),
  })),
  steps: steps.map(({ work, pieces: taken, text, glueMm2 }) => ({
    work,
    pieces: taken,
    text,
    glueMm2: figure(glueMm2),
  })),
});

const countedRoles = (roles: readonly string[]): Readonly<Record<string, number>> =>
  Object.fromEntries([...new Set(roles)].map((role) => [role, roles.filter((one) => one === role).length]));
