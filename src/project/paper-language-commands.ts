import type { PaperLanguage } from '../base/paper-language.ts';
import type { Command } from './commands.ts';
import type { Project } from './project.ts';

/** The language its paper is printed in. */
export const paperLanguageOf = ({ paper: { language = 'en' } }: Pick<Project, 'paper'>): PaperLanguage => language;

/** The same project with its paper in a language; English is not written down. */
export function inPaperLanguage(project: Project, wanted: PaperLanguage): Project {
  if (paperLanguageOf(project) === wanted) return project;
  const { language: _, ...paper } = project.paper;
  return { ...project, paper: wanted === 'en' ? paper : { ...paper, language: wanted } };
}

/** In which language templates, map and build sheet are printed. */
export const setPaperLanguage = (wanted: PaperLanguage): Command => ({
  label: 'choose the language of the paper',
  apply: (project) => inPaperLanguage(project, wanted),
});
