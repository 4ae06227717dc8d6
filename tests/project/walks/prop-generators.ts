import { partId } from '../../../src/base/ids.ts';
import { BODY_MEASURES } from '../../../src/model/body-measures.ts';
import { CLAYS } from '../../../src/model/clay.ts';
import { COATINGS } from '../../../src/model/coatings.ts';
import { GLUES } from '../../../src/model/glues.ts';
import { removeBodyMeasure, setBodyMeasure } from '../../../src/project/body-commands.ts';
import { bringBackState } from '../../../src/project/bring-back.ts';
import { changeAsSeen } from '../../../src/project/change-seen.ts';
import {
  renameProject,
  setLengthUnit,
  setNeutralTest,
  setPaper,
  setShrinkage,
  useNeutral,
} from '../../../src/project/commands.ts';
import { setBridges, setCutter, setCutWidth } from '../../../src/project/cutter-commands.ts';
import * as done from '../../../src/project/done-commands.ts';
import {
  addColour,
  newColour,
  removeColour,
  setBaseColour,
  setClay,
  setColour,
} from '../../../src/project/finish-commands.ts';
import { addJoin, changeJoin, removeJoin } from '../../../src/project/joins-commands.ts';
import { fetchVersion, keepVersion, removeVersion, renameVersion } from '../../../src/project/kept-commands.ts';
import { versionsOf } from '../../../src/project/kept-version.ts';
import { setMirrored } from '../../../src/project/mirrored-commands.ts';
import { setPaperLanguage } from '../../../src/project/paper-language-commands.ts';
import { placeCopy } from '../../../src/project/placing-commands.ts';
import { addPlain, changePlain, removePlain, workOn } from '../../../src/project/plain-commands.ts';
import { choosePrinter, forgetPrinter, keepPrinter } from '../../../src/project/printer-commands.ts';
import type { Project } from '../../../src/project/project.ts';
import { setRuled } from '../../../src/project/ruled-commands.ts';
import { addSculpt, changeSculpt, removeSculpt } from '../../../src/project/sculpt-commands.ts';
import { setPartOn } from '../../../src/project/set-on-sculpt.ts';
import * as shop from '../../../src/project/shop-commands.ts';
import { forgetRules, RULE_LIMITS, RULE_NAMES, setRule } from '../../../src/project/shop-rules.ts';
import * as stock from '../../../src/project/stock-commands.ts';
import { newStockId } from '../../../src/project/stock-sheet.ts';
import type { Dice } from './dice.ts';
import * as draw from './draws.ts';
import type { Generators } from './generators.ts';
import { SCULPT_GENERATORS } from './sculpt-generators.ts';

const anyPart = ({ parts, plain = [] }: Project, dice: Dice) =>
  dice.known(
    [...parts, ...plain].map(({ id }) => id),
    partId('part-none'),
  );
const version = (project: Project, dice: Dice): string =>
  dice.known(
    versionsOf(project).map(({ id }) => id),
    'version-none',
  );
const join = ({ joins = [] }: Project, dice: Dice): string =>
  dice.known(
    joins.map(({ id }) => id),
    'join-none',
  );
const printer = ({ printers = [] }: Project, dice: Dice): string =>
  dice.known(
    printers.map(({ name }) => name),
    'printer-none',
  );
const place = (dice: Dice) => [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, dice.mm(-90, 90), dice.mm(-90, 90), 0, 1];
const aSheet = (project: Project, dice: Dice) => ({
  id: newStockId(project.stock),
  name: draw.someName(dice),
  foam: draw.foam(project, dice),
  shape: dice.chance(0.5)
    ? ({ kind: 'rectangle', widthMm: dice.mm(10, 900), heightMm: dice.mm(10, 900) } as const)
    : ({ kind: 'outline', points: [0, 0, dice.mm(10, 900), 0, dice.mm(0, 900), dice.mm(10, 900)] } as const),
  count: 1 + dice.whole(4),
  ...(dice.chance(0.3) ? { keepOut: [[10, 10, 20, 10, 20, 20]] } : {}),
  ...(dice.chance(0.3) ? { grain: dice.pick(['x', 'y'] as const) } : {}),
});
const laid = (project: Project, dice: Dice) =>
  dice.several(3, () => ({
    foam: draw.foam(project, dice),
    name: draw.sheetName(project, dice),
    placements: dice.several(3, () => ({
      piece: draw.piece(dice),
      copy: dice.whole(2),
      x: dice.mm(0, 900),
      y: 1,
      turnRad: 0.5,
    })),
  }));

/** Commands about the whole prop, its paper, its foam and the work. */
export const PROP_GENERATORS: Generators = {
  renameProject: (_, dice) => renameProject(draw.name(dice)),
  setLengthUnit: (_, dice) => setLengthUnit(dice.pick(['mm', 'in'])),
  setPaper: ({ paper }, dice) =>
    setPaper(
      dice.chance(0.3)
        ? { ...paper, name: 'custom', widthMm: dice.mm(100, 900), heightMm: dice.mm(100, 900) }
        : {
            ...paper,
            name: dice.pick(['A4', 'A3', 'Letter']),
            orientation: dice.pick(['portrait', 'landscape']),
            marginMm: dice.mm(0, 20),
          },
    ),
  setShrinkage: (project, dice) =>
    setShrinkage(
      draw.anyFoam(project, dice),
      dice.chance(0.3) ? null : { alongPct: dice.mm(-19, 19), acrossPct: dice.mm(-19, 19) },
    ),
  setNeutralTest: (project, dice) =>
    setNeutralTest(
      draw.anyFoam(project, dice),
      dice.chance(0.3)
        ? null
        : {
            lengthMm: dice.mm(50, 300),
            thicknessMm: dice.mm(1, 20),
            readings: dice.several(3, () => ({ mandrelMm: dice.mm(10, 90), arcMm: dice.mm(10, 300) })),
          },
    ),
  useNeutral: (project, dice) => useNeutral(draw.anyFoam(project, dice), dice.between(0, 1)),
  setBodyMeasure: (_, dice) => setBodyMeasure({ name: dice.pick(BODY_MEASURES).name, mm: dice.mm(1, 4000) }),
  removeBodyMeasure: ({ body = [] }, dice) =>
    removeBodyMeasure(
      dice.known(
        body.map(({ name }) => name),
        'none',
      ),
    ),
  bringBackState: (project, dice) =>
    bringBackState(dice.pick([project, ...versionsOf(project).map(({ document }) => document)])),
  changeAsSeen: (project, dice) => {
    const versions = versionsOf(project).map(({ document }) => document);
    // As a field sends it: the document that was on the screen is a little older, and may be of another sculpt.
    const seen = dice.pick([null, project, ...versions]);
    const from = seen ?? project;
    const kind = dice.pick([
      'setScale',
      'setThickness',
      'addRegion',
      'setPaper',
      'addLayer',
      'setColour',
      'setTape',
    ] as const);
    const generator = SCULPT_GENERATORS[kind] ?? PROP_GENERATORS[kind];
    const command = generator?.(from.parts.length === 0 ? project : from, dice) ?? null;
    return command === null ? null : changeAsSeen(command, seen);
  },
  setCutter: (_, dice) => setCutter(dice.pick([null, 'blade', 'laser'])),
  setCutWidth: (_, dice) => setCutWidth(dice.pick([null, dice.mm(0, 10)])),
  setBridges: (_, dice) => setBridges(dice.pick([null, { count: 1 + dice.whole(9), widthMm: dice.mm(1, 50) }])),
  tickPrinted: (_, dice) => done.tickPrinted(dice.several(3, () => draw.revised(dice))),
  tickCut: (_, dice) => done.tickCut(draw.revised(dice)),
  releaseCut: (_, dice) => done.releaseCut(draw.piece(dice)),
  tickWork: (_, dice) => done.tickWork(dice.pick(['bevelled', 'formed']), draw.revised(dice)),
  releaseWork: (_, dice) => done.releaseWork(dice.pick(['bevelled', 'formed']), draw.piece(dice)),
  releasePrinted: (_, dice) => done.releasePrinted(dice.several(3, () => draw.revised(dice))),
  tickStep: (_, dice) => done.tickStep({ id: `glue/${dice.whole(9)}`, as: `as ${dice.whole(3)}` }),
  releaseSteps: (_, dice) => done.releaseSteps(dice.several(3, () => `glue/${dice.whole(9)}`)),
  forgetGone: (_, dice) => done.forgetGone(dice.several(5, () => draw.revised(dice))),
  addColour: (_, dice) => addColour(newColour(draw.name(dice), '#A0b0C0')),
  setColour: (project, dice) =>
    setColour(
      draw.colour(project, dice) ?? 'colour-none',
      dice.pick([
        { name: draw.name(dice) },
        { coats: 1 + dice.whole(5) },
        { rgb: '#102030' },
        { recoatMin: dice.mm(0, 90) },
      ]),
    ),
  removeColour: (project, dice) => removeColour(draw.colour(project, dice) ?? 'colour-none'),
  setBaseColour: (project, dice) => setBaseColour(draw.colour(project, dice)),
  setClay: (_, dice) => setClay({ ...dice.pick(CLAYS), layerMm: dice.mm(1, 20) }),
  addJoin: (project, dice) =>
    addJoin(
      dice.pick([
        { kind: 'hole', part: anyPart(project, dice), through: anyPart(project, dice) },
        { kind: 'seat', part: anyPart(project, dice), on: anyPart(project, dice), side: dice.pick(['face', 'back']) },
        { kind: 'travel', along: draw.triple(dice), bagMm: dice.mm(100, 900), joint: { kind: 'peg', diameterMm: 8 } },
      ]),
    ),
  removeJoin: (project, dice) => removeJoin(join(project, dice)),
  changeJoin: (project, dice) => {
    const known = dice.known(project.joins ?? [], null);
    if (known === null) return changeJoin('join-none', {});
    const change = known.kind === 'travel' ? { bagMm: dice.mm(100, 900) } : { along: draw.triple(dice) };
    return changeJoin(known.id, change, draw.drag(dice));
  },
  keepVersion: (_, dice) =>
    dice.chance(0.5) ? keepVersion(draw.name(dice), `2030-0${1 + dice.whole(9)}-01T00:00:00.000Z`) : null,
  renameVersion: (project, dice) => renameVersion(version(project, dice), draw.name(dice)),
  removeVersion: (project, dice) => removeVersion(version(project, dice)),
  fetchVersion: (project, dice) => fetchVersion(version(project, dice)),
  setMirrored: (_, dice) => setMirrored(dice.pick(['once', 'each'])),
  setPaperLanguage: (_, dice) => setPaperLanguage(dice.pick(['en', 'de'])),
  setRuled: (_, dice) => setRuled(dice.pick(['print', 'tell'])),
  placeCopy: (project, dice) =>
    placeCopy(laid(project, dice), draw.piece(dice), draw.held(project, dice), draw.drag(dice)),
  addPlain: ({ plain = [] }, dice) => {
    if (plain.length === 0 || plain.length > 30) return null;
    const { id: _, ...part } = dice.pick(plain);
    return addPlain({ ...part, name: draw.name(dice) });
  },
  removePlain: ({ plain = [] }, dice) => (plain.length === 0 ? null : removePlain(dice.pick(plain).id)),
  changePlain: ({ plain = [] }, dice) =>
    plain.length === 0
      ? null
      : changePlain(
          dice.pick(plain).id,
          dice.pick([{ name: draw.name(dice) }, { copies: 1 + dice.whole(9) }, { transform: place(dice) }]),
          'change a part',
          draw.drag(dice),
        ),
  workOn: (project, dice) => workOn(anyPart(project, dice)),
  keepPrinter: (_, dice) =>
    keepPrinter({
      name: draw.someName(dice),
      acrossShare: dice.between(0.91, 1.09),
      upShare: dice.between(0.91, 1.09),
      leanRad: 0.01,
    }),
  choosePrinter: (project, dice) => choosePrinter(dice.pick([null, printer(project, dice)])),
  forgetPrinter: (project, dice) => forgetPrinter(printer(project, dice)),
  addSculpt: (project, dice) =>
    project.parts.length > 5 ? null : addSculpt(draw.name(dice), dice.pick(project.parts).source),
  changeSculpt: (project, dice) =>
    changeSculpt(
      anyPart(project, dice),
      dice.pick([{ name: draw.name(dice) }, { copies: 1 + dice.whole(9) }, { transform: place(dice) }]),
      'change a part',
      draw.drag(dice),
    ),
  removeSculpt: (project, dice) => (project.parts.length < 2 ? null : removeSculpt(anyPart(project, dice))),
  setPartOn: (project, dice) => setPartOn(anyPart(project, dice), anyPart(project, dice), place(dice)),
  setGlue: (_, dice) => shop.setGlue({ ...dice.pick(GLUES), cureH: dice.mm(0, 48) }),
  setCoatings: (_, dice) => shop.setCoatings(dice.several(3, () => dice.pick(COATINGS))),
  setCurrency: (_, dice) => shop.setCurrency(dice.pick(['', 'EUR', '$', ' ¥ '])),
  setSheetPrice: (project, dice) => shop.setSheetPrice(draw.anyFoam(project, dice), dice.pick([null, dice.mm(0, 90)])),
  setGluePrice: (_, dice) => shop.setGluePrice(dice.pick([null, dice.mm(0, 90)])),
  setRule: (project, dice) => {
    const rule = dice.pick(RULE_NAMES);
    const { least, most } = RULE_LIMITS[rule];
    return setRule(draw.anyFoam(project, dice), rule, dice.mm(least, most));
  },
  forgetRules: (project, dice) => forgetRules(draw.anyFoam(project, dice)),
  addStockSheet: (project, dice) => stock.addStockSheet(aSheet(project, dice)),
  changeStockSheet: (project, dice) => {
    const known = project.stock?.sheets ?? [];
    const { id } = known.length === 0 ? { id: 'stock-none' } : dice.pick(known);
    return stock.changeStockSheet({ ...aSheet(project, dice), id }, draw.drag(dice));
  },
  removeStockSheet: (project, dice) => stock.removeStockSheet(draw.sheetName(project, dice).stock),
  setFillRule: (project, dice) =>
    stock.setFillRule(
      draw.foam(project, dice),
      dice.pick([
        { borderMm: dice.mm(0, 200) },
        { spacingMm: dice.mm(0, 50) },
        { turns: dice.pick(['any', 'half', 'none']) },
        { buys: dice.chance(0.5) },
      ]),
    ),
  holdCopy: (project, dice) => stock.holdCopy(draw.piece(dice), draw.held(project, dice), draw.drag(dice)),
  releaseCopy: (_, dice) => stock.releaseCopy(draw.piece(dice), dice.whole(3)),
  groupPieces: (_, dice) =>
    stock.groupPieces(
      dice.several(3, () => draw.piece(dice)),
      dice.pick([null, 'one', 'two']),
    ),
  keepLayout: (project, dice) =>
    stock.keepLayout(
      laid(project, dice).map(({ foam, name: sheet, placements }) => ({ foam, sheet, places: placements })),
    ),
  forgetLayout: () => stock.forgetLayout(),
  keepOffcut: (project, dice) => stock.keepOffcut({ ...aSheet(project, dice), leftBy: draw.sheetName(project, dice) }),
};
