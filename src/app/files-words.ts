import type { PaperFile } from '../worker/files-api.ts';
import { spoken } from './language/spoken.ts';

/** What the window says of files to take away. */
export const FILES_WORDS = spoken('files', {
  waiting: 'waiting for pieces',
  answer: 'Pick what to take away',
  paper: {
    legend: 'Paper and lists',
    kinds: {
      templates: 'Templates, PDF',
      buildSheet: 'Build sheet, PDF: cut list, gluing step by step, what it takes',
      cutList: 'Cut list, CSV',
      gluing: 'Order of gluing, JSON',
      pieces: 'Pieces, SVG',
      report: 'Report, JSON',
      project: 'The job itself',
    } satisfies Record<PaperFile, string>,
  },
  cutter: {
    legend: 'For a cutter, a file for each sheet of foam',
    sheetSvg: 'SVG, in hairlines and filled',
    dxf: 'DXF, a block for each piece',
  },
  pictures: {
    legend: 'Pictures, a file for each sheet and page',
    png: 'PNG in true size',
    dpi: 'Dots to the inch',
  },
  models: {
    legend: 'The finished prop, thick and put together',
    stl: 'STL',
    obj: 'OBJ, and the flat pieces with texture coordinates in mm',
    stack: 'A wall of several sheets comes whole and sheet by sheet.',
    smaller: 'Once more, smaller: to print it as a check',
    times: 'How many times smaller',
  },
  save: 'Save what is picked',
  zip: 'Several files come as one zip; with the job in it the zip opens here again.',
  nothing: 'Nothing is picked.',
  stop: 'Call it off',
  stopVerb: 'call off making files',
  progress: 'How far the files are',
  cautionFirst: 'Before a laser cuts foam',
  cautionUnknown: 'Nobody has said what cuts the sheets. Should it be a laser:',
  seen: 'I have read this',
  seenFirst: 'Read what stands above first: then the files can be saved.',
  saved: (name: string, count: number) =>
    count === 1 ? `${name} is in your downloads.` : `${name} with ${count} files is in your downloads.`,
  inside: 'What is in it',
  spoken: {
    begun: 'Making files.',
    stopped: 'Called off. No file was made.',
  },
});

/** What the window says of the machine that cuts the sheets. */
export const CUTTER_WORDS = spoken('cutter', {
  kind: 'What cuts the sheets',
  kinds: { unknown: 'not said yet', blade: 'a knife that is drawn or shakes', laser: 'a laser' },
  width: 'Width of its cut',
  usual: (width: string) => `usual: ${width}`,
  takeUsual: 'take the usual width',
  widthWhy:
    'Lines run half of it outside outlines and inside holes. Cut a square of 100 mm and measure what is missing.',
  bridges: 'Leave bridges that hold each piece in its sheet',
  count: 'Bridges round a piece',
  bridgeMm: 'Width of a bridge',
});
