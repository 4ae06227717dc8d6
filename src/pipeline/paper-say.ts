import { sayOnPaper } from '../base/german/on-paper.ts';
import { inEnglish, type PaperLanguage, type Say } from '../base/paper-language.ts';
import { paperLanguageOf } from '../project/paper-language-commands.ts';
import type { Project } from '../project/project.ts';

const SAY: Readonly<Record<PaperLanguage, Say>> = { en: inEnglish, de: sayOnPaper };

/** What the project's paper is printed in. */
export const sayOf = (project: Pick<Project, 'paper'>): Say => SAY[paperLanguageOf(project)];
