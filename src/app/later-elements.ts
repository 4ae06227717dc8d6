// All of the window that its first picture can do without: it is loaded while that is drawn, and grows out of the empty elements.
import './chosen-row.ts';
import './finder.ts';
import './flat-bench.ts';
import './job-sheet.ts';
import './legend/legend.ts';
import './look-row.ts';
import './page-view.ts';
import './sheet-view.ts';
import './stage-rule.ts';
import './stage-sides.ts';
