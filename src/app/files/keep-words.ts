import { spoken } from '../language/spoken.ts';

/** What the window says of where jobs are kept: files, this browser, other windows. */
export const KEEP_WORDS = spoken('keep', {
  /** Title block. */
  file: (name: string) => `in ${name}`,
  changed: (name: string) => `changed, ${name} is older`,
  noFile: 'not in a file yet',
  looking: 'only looked at here, not kept',
  save: 'Save the job',
  saveAs: 'Save as …',
  verbs: {
    save: 'save the job',
    saveAs: 'save the job as another file',
    workHere: 'work on this job here',
    onlyLook: 'only look at this job here',
    copy: 'go on in a copy of this job',
    earlier: 'see earlier states of jobs',
    goBack: (name: string) => `go back to ${name}`,
  },
  kindOfFile: 'Foamloft job',
  kindsToOpen: 'Jobs, sculpts and drawings',

  saved: (name: string) => `Saved in ${name}.`,
  inDownloads: (name: string) => `${name} is in your downloads.`,
  changedOnDisk: (name: string, when: string) =>
    `${name} was changed on the disk (${when}) after it was opened here. Nothing was written.`,
  gone: (name: string) => `${name} is no longer where it was. Save the job as another file.`,
  notAllowed: (name: string) => `This window may not write to ${name}. Allow it, or save the job as another file.`,
  failed: (name: string, reason: string) => `${name} could not be written: ${reason}. What was in it is still there.`,
  reasons: { full: 'the disk is full', other: 'the disk refused it' },
  writeOver: 'write over it',
  openIt: 'open what is on the disk',
  again: 'try again',

  full: 'This browser has no more room, so the job is not kept here. Save it to a file, and forget jobs you need no longer under earlier states.',
  newer:
    'A newer version of this window is open beside it and keeps the jobs now. Nothing more is kept from here: save the job to a file, then load this window anew.',

  windows: {
    label: 'The job in two windows',
    elsewhere: 'Another window works on this job, so nothing can be changed here.',
    refused: 'Nothing was changed: another window works on this job. Work on it here, or in a copy.',
    looking: 'You only look at this job here; another window works on it.',
    workHere: 'Work here instead',
    onlyLook: 'Only look',
    copy: 'Open a copy',
    copyName: (name: string) => `${name}, copy`,
    taken: 'You work on it here now.',
  },

  earlier: {
    summary: 'Earlier states of this job and others',
    waiting: 'looking them up …',
    none: 'None yet. They are kept here by themselves while you work.',
    refused: 'This browser keeps nothing, so there are none.',
    why: 'Kept in this browser only: the ends of the last ten stretches of work, then one for each hour and day.',
    inHand: 'the job in hand',
    last: 'as it was left',
    inFile: 'saved in its file',
    after: (what: string) => `after: ${what}`,
    pieces: (n: number) => (n === 1 ? '1\u00a0piece' : `${n}\u00a0pieces`),
    bring: 'bring back',
    open: 'open',
    bringOf: (when: string) => `bring back the state of ${when}`,
    openOf: (name: string) => `open ${name} as it was left`,
    forget: 'forget this job',
    forgetSure: (name: string) => `Forget ${name} with all its states?`,
    forgetYes: 'forget it',
    forgetNo: 'keep it',
    before: (name: string) => `back to ${name}, with all its steps`,
    back: (when: string) => `The state of ${when} is back. Undo takes you to where you were.`,
    all: (n: number) => `all ${n} states`,
    missing: 'This state is no longer there.',
  },

  everything: 'Pick everything',
  print: {
    verb: 'print the templates',
    button: 'Print …',
    why: 'In the dialogue choose 100 % and no fitting to the page, then measure the square.',
  },
});
