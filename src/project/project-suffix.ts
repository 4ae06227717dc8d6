/** Ending of project files. */
export const PROJECT_SUFFIX = '.foamloft.json';
