/** The mark of the lamplighters as flat artwork: a flame on a shield of 56 × 86 mm, drawn in mm. Two groups, so that it comes as two pieces. */
export function flameBadge(): string {
  const flame = [
    'M 30 6',
    'C 35 18 50 26 50 46',
    'C 50 58 41 66 30 66',
    'C 19 66 10 58 10 46',
    'C 10 37 15 32 19 25',
    'C 21 30 22 33 25 35',
    'C 27 26 25 16 30 6',
    'Z',
  ];
  const core = [
    'M 30 36',
    'C 33 43 38 46 38 52',
    'C 38 57 34.4 60 30 60',
    'C 25.6 60 22 57 22 52',
    'C 22 46 27 43 30 36',
    'Z',
  ];
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="90mm" viewBox="0 0 60 90">',
    '  <title>Flame badge of the lamplighters</title>',
    '  <g id="shield" fill="none" stroke="black" stroke-width="0.2">',
    '    <path d="M 2 2 H 58 V 56 C 58 72 46 82 30 88 C 14 82 2 72 2 56 Z"/>',
    '  </g>',
    '  <g id="flame" fill="none" stroke="black" stroke-width="0.2">',
    `    <path d="${flame.join(' ')}"/>`,
    `    <path d="${core.join(' ')}"/>`,
    '  </g>',
    '</svg>',
  ];
  return `${lines.join('\n')}\n`;
}
