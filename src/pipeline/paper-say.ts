import { sayOnPaper } from '../base/german/on-paper.ts';
import { inInches } from '../base/in-inches.ts';
import { inEnglish, type PaperLanguage, type Say } from '../base/paper-language.ts';
import { paperLanguageOf } from '../project/paper-language-commands.ts';
import type { Project } from '../project/project.ts';

const SAY: Readonly<Record<PaperLanguage, Say>> = { en: inEnglish, de: sayOnPaper };

/** What makers call things with a length in it, which is a name and no figure: `EVA 6 mm, 1000 × 2000`. */
const SIZED = /\d[ \u00a0]mm\b/;

/** Ways of saying in inches, by language and names; few jobs are worked on at once. */
const MOST_KEPT = 20;
const inInchesBy = new Map<string, Say>();

/** What the project's paper is printed in: its language, and the unit of the job. */
export function sayOf(project: Pick<Project, 'paper' | 'lengthUnit' | 'foams' | 'parts' | 'plain'>): Say {
  const language = paperLanguageOf(project);
  if (project.lengthUnit === 'mm') return SAY[language];
  const names = namesIn(project);
  const key = JSON.stringify([language, ...names]);
  const known = inInchesBy.get(key);
  if (known !== undefined) return known;
  if (inInchesBy.size >= MOST_KEPT) inInchesBy.clear();
  const asIs = SAY[language];
  const say: Say = Object.assign((text: string) => asIs(inInches(text, names)), { unit: 'in' as const, asIs });
  inInchesBy.set(key, say);
  return say;
}

/** Names of foams, whole and as templates tell them, and of parts where they have a length in them. */
function namesIn({ foams, parts, plain = [] }: Parameters<typeof sayOf>[0]): readonly string[] {
  const foamNames = foams.flatMap(({ name }) => [name, name.split(',')[0].trim()]);
  const sized = [...parts, ...plain].map(({ name }) => name).filter((name) => SIZED.test(name));
  return [...new Set([...foamNames, ...sized])].filter((name) => name !== '').sort();
}
