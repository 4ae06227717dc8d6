import { sayOnPaper } from '../base/german/on-paper.ts';
import { inEnglish, type PaperLanguage, type Say } from '../base/paper-language.ts';
import type { Project } from '../project/project.ts';

const SAY: Readonly<Record<PaperLanguage, Say>> = { en: inEnglish, de: sayOnPaper };

/** What the project's paper is printed in. */
export const sayOf = ({ paper: { language = 'en' } }: Pick<Project, 'paper'>): Say => SAY[language];
