import { FIRST_CLAY, MOST_CLAY_MM, type Clay } from '../model/clay.ts';
import type { Project } from './project.ts';

/** Thickest build-up and widest fillet, mm: the same for the project's file, the window and the command line. */
export const CLAY_MOST_MM = MOST_CLAY_MM;

/** The clay in force: the maker's, else the first of shared/clays.json. */
export const clayOf = ({ shop }: Pick<Project, 'shop'>): Clay => shop?.clay ?? FIRST_CLAY;
