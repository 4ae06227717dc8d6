import { inPaperLanguage } from '../../project/paper-language-commands.ts';
import type { Project } from '../../project/project.ts';
import { language } from './language.ts';

/** A job that is begun in this window: its paper speaks the language of the window, until the maker chooses another. */
export const begunHere = (project: Project): Project => inPaperLanguage(project, language());
