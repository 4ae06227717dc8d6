const edgesWord = (n: number): string => `${n}\u00a0${n === 1 ? 'edge' : 'edges'}`;

/** What the window says of marking seams by hand. */
export const MARK_WORDS = {
  verbs: {
    followRound: 'follow round',
    followRidge: 'follow the ridge',
    pickCorner: 'pick this corner',
    partAlong: 'part along it',
    split: 'split by a line',
    round: (name: string) => `part round ${name}`,
    roundHere: 'part round it',
  },
  tools: {
    round:
      'Click an edge: the foam parts along the line of edges that runs through it, all the way round. Drag to draw.',
    ridge: 'Click a ridge or valley: the foam parts along it as far as it stays sharper than the angle. Drag to draw.',
    path: 'Click corners: the line runs along creases and smooth edges from one to the next. Click the last one again, or press Enter, to part along it.',
    split:
      'Click two corners of the piece or more: the line runs on to its edges at both ends. Press Enter to part along it.',
  },
  sharper: 'sharper than',
  degrees: 'Least angle of the ridge, degrees',
  group: 'Group of the file',
  partRound: 'Part round it',
  spoken: {
    noRidge: 'This edge is not as sharp as that.',
    picked: (n: number) => `${n === 1 ? 'First corner' : `Corner ${n}`} picked.`,
    backOne: 'One corner back.',
    line: (n: number) => `A line of ${edgesWord(n)}.`,
    nothingRound: 'Nothing lies beside it to part from.',
  },
};
