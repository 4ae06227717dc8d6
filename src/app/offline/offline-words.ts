import { spoken } from '../language/spoken.ts';

/** Texts of what is kept for the time without a network, and of new versions. */
export const OFFLINE_WORDS = spoken('offline', {
  ready: 'All of Foamloft is kept in this browser: from now on it works without a network.',
  notYet:
    'There is no network, and not all of Foamloft is kept in this browser yet. What you have not used so far may be missing; the job goes on.',
  newer: 'A new version of Foamloft is here. The window is loaded anew for it; the job stays as it is.',
  newerElsewhere:
    'Another window has taken up a new version of Foamloft; this one goes on with the one before. It is loaded anew for it; the job stays as it is.',
  saveFirst:
    'A new version of Foamloft is here. What was changed in this window is not kept in the browser: save the job to a file first.',
  save: 'save the job',
  takeUp: 'take it up',
  later: 'later',
  row: 'Without a network',
  states: {
    off: 'not in this browser',
    keeping: 'not yet, files are being kept',
    kept: 'works',
  },
  install: 'Install it on this machine',
});
