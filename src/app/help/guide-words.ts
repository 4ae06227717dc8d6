import { spoken } from '../language/spoken.ts';

/** What one step of the guided job says: what to do, and how by mouse and by key. */
export interface StepWords {
  readonly title: string;
  readonly why: string;
  readonly mouse: string;
  readonly keys: string;
}

/** What the guided job says. */
export const GUIDE_WORDS = spoken('guide', {
  offer: 'New here? Ten steps on this job, about ten minutes, end with a template in your hand.',
  begin: 'Begin',
  takeUp: 'Take it up again',
  notNow: 'not now',
  heading: 'The ten-minute job',
  progress: (done: number, of: number) => `${done} of ${of} done`,
  step: (at: number, of: number, title: string) => `Step ${at} of ${of}: ${title}`,
  tickedStep: (at: number, title: string) => `Step ${at}, done: ${title}`,
  mouse: 'Mouse or finger:',
  keys: 'Keys:',
  show: 'Show me where',
  on: 'Leave it as it is, next step',
  leave: 'Leave it for now',
  again: 'From the beginning',
  spoken: (title: string, next: string) => `Done: ${title}. Next: ${next}.`,
  finished: 'All ten are done. Cut on the wide lines, and glue in the order that the sheet gives.',
  close: 'close',
  steps: {
    size: {
      title: 'Size it to your head',
      why: 'A prop is only as right as its size.',
      mouse:
        'Press “change the size”, choose the longest side and type how long it is to be. Or lay a tape under “Body and core” and type your head’s girth.',
      keys: '1 goes to the line, Tab to “change the size”, Enter; type the length, Enter.',
    },
    apart: {
      title: 'Look where it parts',
      why: 'Each piece is what you will cut, each line between two is a seam to glue.',
      mouse: 'Drag the slider under the picture to “apart”, then turn the view by dragging on nothing.',
      keys: 'A draws the pieces apart, W puts them together again.',
    },
    seam: {
      title: 'Move or add a seam',
      why: 'You know best where a seam may be seen.',
      mouse: 'Drag a seam to another edge. Or press “edge by edge” in the line and click an edge: it parts there.',
      keys: 'E walks along edges with the arrow keys, P parts the edge you came along, Esc ends. Undo is Ctrl Z.',
    },
    foam: {
      title: 'Choose your foam',
      why: 'Thickness changes the shape of every piece, not only its edge.',
      mouse: 'Click another thickness, or type what your ruler says of your sheet.',
      keys: '3 goes to the line, Tab to the thicknesses, arrow keys choose.',
    },
    stretch: {
      title: 'Look at the stretch',
      why: 'Where the colour is strong the foam has to give. Under 3 per cent you feel nothing.',
      mouse:
        'Choose “stretch” among the colours in the line about fit, then point at the picture for the figure there.',
      keys: 'K colours the picture by stretch, K again puts it away.',
    },
    fit: {
      title: 'Put it together dry',
      why: 'The window closes every seam before you own a drop of glue.',
      mouse: 'Choose “finished prop” over the picture, or “gaps” among the colours in the line about fit.',
      keys: 'D colours the gaps of the dry fit; V goes from surface to surface.',
    },
    sheets: {
      title: 'See it on your sheets',
      why: 'So much foam you buy, and this is left over.',
      mouse: 'Drag the slider to “on the sheet”, or click a sheet in its line. Pieces can be dragged there.',
      keys: 'S lays the pieces on their sheets.',
    },
    paper: {
      title: 'Say what paper you have',
      why: 'A margin that is too small loses lines at the edge of the page.',
      mouse: 'Choose your paper and set its margin, or click a page to look at it.',
      keys: '6 goes to the line, Tab to the paper, arrow keys choose.',
    },
    pdf: {
      title: 'Save the templates',
      why: 'One file, in true size, with every piece and how to glue it.',
      mouse: 'Press “Save templates, PDF”, or print them at once.',
      keys: 'Press / and type pdf, then Enter.',
    },
    square: {
      title: 'Read the scale square',
      why: 'Printers stretch. Only your ruler knows by how much.',
      mouse:
        'Print page 1 at 100 per cent, choose “measure a printer” and type what your ruler says of the square, both ways.',
      keys: '6 goes to the line, Tab to the printer; choose “measure a printer” and type both figures.',
    },
  },
});
