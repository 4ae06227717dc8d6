/** Whether somebody sits before this machine's screen. */
export function hasSomebodyToShow(env: Record<string, string | undefined>, isTerminal: boolean): boolean;
