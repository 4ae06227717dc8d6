import { tieToBody, untieFromBody } from '../../../src/project/body-commands.ts';
import { setClayCore } from '../../../src/project/clay-core-commands.ts';
import * as own from '../../../src/project/commands.ts';
import { clayRegion, colourRegion, paintFaces, setFillet } from '../../../src/project/finish-commands.ts';
import { setHiddenSide } from '../../../src/project/hidden-commands.ts';
import { holdPiece, holdSeams, letPieceGo, letSeamsGo } from '../../../src/project/hold-commands.ts';
import { addLayer, moveLayer, removeLayer, setStagger } from '../../../src/project/layer-commands.ts';
import { setMirror } from '../../../src/project/mirror-commands.ts';
import { addMarks, drawPaths, lockPaths, removePaths, replacePath } from '../../../src/project/path-commands.ts';
import { setGrain, setPieceFoam } from '../../../src/project/piece-commands.ts';
import { partScore, removeScore, scoreSeam, setScore } from '../../../src/project/score-commands.ts';
import { setSeamJoin } from '../../../src/project/seam-commands.ts';
import { acceptGluing } from '../../../src/project/shop-commands.ts';
import { setSimplify } from '../../../src/project/simplify-commands.ts';
import { setTipHole, TIP_HOLE_MM } from '../../../src/project/tip-commands.ts';
import { takeNewVersion } from '../../../src/project/version-commands.ts';
import * as wear from '../../../src/project/wear-commands.ts';
import { BODY_MEASURES } from '../../../src/model/body-measures.ts';
import { HIDDEN_SIDES } from '../../../src/model/hidden-side.ts';
import * as draw from './draws.ts';
import type { Generators } from './generators.ts';

const SIDES = ['inside', 'outside'] as const;
const WORDS = ['x', 'y', 'z'] as const;
const oneOf = (
  list: readonly { readonly id: string }[] | undefined,
  dice: Parameters<typeof draw.edge>[0],
  other: string,
) =>
  dice.known(
    (list ?? []).map(({ id }) => id),
    other,
  );

/** Commands about the sculpt that is worked on. */
export const SCULPT_GENERATORS: Generators = {
  setScale: (_, dice) =>
    own.setScale(
      dice.pick([
        { by: 'unit', unit: dice.pick(['mm', 'cm', 'm', 'in']) },
        { by: 'size', axis: dice.pick(['longest', ...WORDS]), mm: dice.mm(1, 900) },
        { by: 'points', from: draw.corner(dice), to: draw.corner(dice), mm: dice.mm(1, 900) },
      ]),
    ),
  setUpAxis: (_, dice) => own.setUpAxis(dice.pick(WORDS)),
  addRepair: (_, dice) =>
    own.addRepair(
      dice.pick([
        { kind: 'turn-faces' },
        { kind: 'drop-doubled' },
        { kind: 'drop-empty' },
        { kind: 'close-hole', edge: draw.edge(dice) },
        { kind: 'keep-shell', vertex: draw.corner(dice) },
      ]),
    ),
  removeRepair: (_, dice) => own.removeRepair(dice.whole(4)),
  addSeamEdges: (_, dice) => own.addSeamEdges(draw.someEdges(dice), draw.drag(dice)),
  removeSeamEdges: (project, dice) => own.removeSeamEdges(draw.marked(project, dice), draw.drag(dice)),
  moveSeam: (project, dice) => {
    const { seams, seamSettings: settings, edgeWishes, heldSeams } = draw.part(project);
    const gone = draw.marked(project, dice).filter(([a]) => a >= 0);
    return own.moveSeam(
      { seams, settings, edgeWishes, heldSeams },
      gone,
      draw.someEdges(dice),
      `drag ${dice.whole(3)}`,
    );
  },
  drawDart: (project, dice) => own.drawDart(draw.part(project).seams, draw.someEdges(dice), `drag ${dice.whole(3)}`),
  clearSeams: () => own.clearSeams(),
  setSeams: (_, dice) =>
    own.setSeams(
      { edges: draw.someEdges(dice), paths: dice.several(2, () => draw.seamPath(dice)) },
      dice.several(2, () => ({
        edge: draw.edge(dice),
        kind: dice.pick(['butt', 'lap', 'rebate']),
        allowanceMm: dice.mm(0, 9),
      })),
    ),
  setFoam: (project, dice) =>
    own.setFoam(draw.foam(project, dice), dice.mm(1, 30), dice.chance(0.5) ? draw.layer(project, dice) : undefined),
  setThickness: (project, dice) =>
    own.setThickness(dice.mm(1, 30), dice.chance(0.5) ? draw.layer(project, dice) : undefined),
  setNeutral: (project, dice) =>
    own.setNeutral(dice.between(0, 1), dice.chance(0.5) ? draw.layer(project, dice) : undefined),
  setModelIs: (_, dice) => own.setModelIs(dice.pick(['face', 'middle', 'back'])),
  setTracedSide: (_, dice) => own.setTracedSide(dice.pick(['face', 'back'])),
  setPieceSetting: (_, dice) =>
    own.setPieceSetting(
      draw.face(dice),
      dice.pick([
        { name: draw.name(dice) },
        { quantity: 1 + dice.whole(4) },
        { bendStyle: dice.pick(['rolled', 'grooved', 'kerfed']) },
        { tracedSide: dice.pick(['face', 'back']) },
      ]),
    ),
  setFlattenWishes: (_, dice) =>
    own.setFlattenWishes(
      dice.pick([
        { seamPrice: dice.mm(0, 10_000) },
        { squashPrice: dice.mm(1, 20) },
        { evenOut: dice.chance(0.5) },
        { keepApart: dice.chance(0.5) },
      ]),
    ),
  addRegion: (_, dice) =>
    own.addRegion(
      draw.name(dice),
      draw.faces(dice),
      dice.pick(['stiff', 'soft', 'normal']),
      dice.pick([undefined, 'clear', 'prefer']),
    ),
  freeFaces: (_, dice) => own.freeFaces(draw.faces(dice)),
  removeRegion: (project, dice) => own.removeRegion(draw.region(project, dice)),
  renameRegion: (project, dice) => own.renameRegion(draw.region(project, dice), draw.name(dice)),
  setRegionGive: (project, dice) =>
    own.setRegionGive(draw.region(project, dice), dice.pick(['stiff', 'soft', 'normal'])),
  setRegionSeams: (project, dice) =>
    own.setRegionSeams(draw.region(project, dice), dice.pick([null, 'clear', 'prefer'])),
  raiseRegion: (project, dice) =>
    own.raiseRegion(draw.region(project, dice), dice.chance(0.3) ? null : dice.pick(project.foams)),
  setEdgeWish: (project, dice) =>
    own.setEdgeWish(
      draw.marked(project, dice),
      dice.pick([{ holdLength: dice.chance(0.6) }, { straight: dice.chance(0.6) }]),
    ),
  setAllowForShrinkage: (_, dice) => own.setAllowForShrinkage(dice.chance(0.5)),
  forgetWish: (project, dice) =>
    own.forgetWish(
      dice.pick([
        { about: 'edge', edges: draw.marked(project, dice), asks: dice.pick(['anything', 'holdLength', 'straight']) },
        { about: 'seam', edge: draw.marked(project, dice).at(0) ?? draw.edge(dice) },
        { about: 'piece', face: draw.face(dice) },
        { about: 'area', id: draw.region(project, dice) },
        { about: 'faces', faces: draw.faces(dice) },
        { about: 'shrinkage' },
      ]),
    ),
  tieToBody: (_, dice) =>
    tieToBody(
      {
        measure: dice.pick(BODY_MEASURES).name,
        easeMm: dice.mm(-50, 50),
        at: dice.chance(0.5)
          ? { by: 'tape', tape: `tape-${1 + dice.whole(3)}` }
          : { by: 'extent', axis: dice.pick(['longest', ...WORDS]), share: dice.between(0.1, 2) },
      },
      draw.drag(dice),
    ),
  untieFromBody: (_, dice) => untieFromBody(dice.mm(1, 900)),
  setClayCore: (project, dice) =>
    setClayCore(
      draw.region(project, dice),
      dice.chance(0.3)
        ? null
        : {
            coverMm: dice.mm(1, 20),
            foams: [draw.foam(project, dice)],
            ...(dice.chance(0.5) ? { axis: { x: 0, y: dice.mm(1, 2), z: 0 } } : {}),
            ...(dice.chance(0.5) ? { label: { gPerCm3: dice.mm(1, 2) } } : {}),
            ...(dice.chance(0.5) ? { wallMm: dice.mm(5, 30) } : {}),
          },
      draw.drag(dice),
    ),
  colourRegion: (project, dice) => colourRegion(draw.region(project, dice), draw.colour(project, dice)),
  paintFaces: (project, dice) =>
    paintFaces(draw.someName(dice), [draw.face(dice), ...draw.faces(dice)], draw.colour(project, dice)),
  clayRegion: (project, dice) => clayRegion(draw.region(project, dice), dice.chance(0.3) ? null : dice.mm(1, 60)),
  setFillet: (_, dice) => setFillet(draw.seamOfPieces(dice), dice.chance(0.3) ? null : dice.mm(1, 60)),
  setHiddenSide: (_, dice) => setHiddenSide(dice.pick([null, ...HIDDEN_SIDES])),
  holdSeams: (project, dice) => holdSeams(draw.marked(project, dice)),
  letSeamsGo: (project, dice) => letSeamsGo(draw.marked(project, dice)),
  holdPiece: (_, dice) => holdPiece(draw.faces(dice)),
  letPieceGo: (_, dice) => letPieceGo(draw.faces(dice)),
  addLayer: (_, dice) => addLayer(dice.pick(SIDES)),
  removeLayer: (project, dice) => removeLayer(draw.layer(project, dice)),
  moveLayer: (project, dice) => moveLayer(draw.layer(project, dice), dice.pick(SIDES)),
  setStagger: (project, dice) => setStagger(draw.layer(project, dice), dice.pick([0, 0.5, dice.mm(-200, 200)])),
  setMirror: (_, dice) =>
    setMirror(
      dice.pick([null, { by: 'off' }, { by: 'plane', pointInFile: draw.triple(dice), normal: draw.triple(dice) }]),
    ),
  drawPaths: (_, dice) =>
    drawPaths(
      dice.several(2, () => draw.seamPath(dice)),
      draw.drag(dice),
    ),
  addMarks: (_, dice) => addMarks({ edges: draw.someEdges(dice), paths: dice.several(2, () => draw.seamPath(dice)) }),
  removePaths: (_, dice) => removePaths(dice.several(2, () => dice.whole(6))),
  replacePath: (_, dice) => replacePath(dice.whole(4), draw.points(dice), draw.drag(dice)),
  lockPaths: (_, dice) =>
    lockPaths(
      dice.several(3, () => dice.whole(4)),
      dice.chance(0.5),
    ),
  setGrain: (_, dice) =>
    setGrain(
      draw.faces(dice),
      dice.chance(0.3) ? null : { angleDeg: dice.mm(-180, 180), stretch: dice.pick(['any', 'across', 'along']) },
      draw.drag(dice),
    ),
  setPieceFoam: (project, dice) => setPieceFoam(draw.faces(dice), dice.chance(0.3) ? null : draw.foam(project, dice)),
  scoreSeam: (project, dice) =>
    scoreSeam(draw.marked(project, dice), { depthMm: dice.mm(0.5, 9), openMm: dice.mm(0, 9) }),
  partScore: (project, dice) => partScore(oneOf(draw.part(project).scores, dice, 'score-none')),
  removeScore: (project, dice) => removeScore(oneOf(draw.part(project).scores, dice, 'score-none')),
  setScore: (project, dice) =>
    setScore(
      oneOf(draw.part(project).scores, dice, 'score-none'),
      dice.pick([{ depthMm: dice.mm(0.5, 9) }, { openMm: dice.mm(0, 9) }]),
    ),
  setSeamJoin: (project, dice) =>
    setSeamJoin(draw.marked(project, dice), {
      kind: dice.pick(['butt', 'lap', 'rebate']),
      allowanceMm: dice.pick([0, dice.mm(1, 20)]),
      ...(dice.chance(0.2) ? { lapFace: draw.face(dice), lapUnder: true } : {}),
      ...(dice.chance(0.2) ? { standFace: draw.face(dice), standSide: 'left' as const } : {}),
      ...draw.steep(dice),
    }),
  acceptGluing: (_, dice) => acceptGluing(dice.several(4, () => draw.seamOfPieces(dice))),
  setSimplify: (_, dice) =>
    setSimplify(
      dice.pick([null, { triangles: 4 + dice.whole(900), keep: [1, 5] }, { deviationMm: dice.mm(0.1, 9), keep: [] }]),
    ),
  setTipHole: (_, dice) =>
    setTipHole(draw.corner(dice), dice.chance(0.3) ? null : dice.mm(TIP_HOLE_MM.least, TIP_HOLE_MM.most)),
  takeNewVersion: (project, dice) => {
    const part = draw.part(project);
    return takeNewVersion({
      ...part,
      source: dice.pick(project.parts).source,
      seams: { ...part.seams, edges: draw.someEdges(dice) },
    });
  },
  setTape: (_, dice) =>
    wear.setTape(
      {
        id: `tape-${1 + dice.whole(3)}`,
        name: draw.name(dice),
        pointInFile: draw.triple(dice),
        normal: draw.triple(dice),
        ...(dice.chance(0.5) ? { easeMm: dice.mm(0, 20), bodyGirthMm: dice.mm(1, 900) } : {}),
      },
      draw.drag(dice),
    ),
  removeTape: (project, dice) => wear.removeTape(oneOf(draw.part(project).tapes, dice, 'tape-none')),
  setCore: (project, dice) =>
    wear.setCore(
      dice.chance(0.5)
        ? {
            id: `core-${1 + dice.whole(3)}`,
            name: draw.name(dice),
            pointInFile: draw.triple(dice),
            direction: draw.triple(dice),
            diameterMm: dice.mm(1, 90),
            ...(dice.chance(0.5) ? { roomMm: dice.mm(0, 5), lengthMm: dice.mm(1, 900) } : {}),
          }
        : {
            kind: 'model',
            id: `core-${1 + dice.whole(3)}`,
            name: draw.name(dice),
            source: dice.pick(project.parts).source,
            unit: dice.pick(['mm', 'sculpt']),
            pointInFile: draw.triple(dice),
            ...(dice.chance(0.5) ? { turnDeg: draw.triple(dice) } : {}),
          },
      draw.drag(dice),
    ),
  removeCore: (project, dice) => wear.removeCore(oneOf(draw.part(project).core, dice, 'core-none')),
  setJoint: (_, dice) =>
    wear.setJoint(
      {
        id: `joint-${1 + dice.whole(3)}`,
        name: draw.name(dice),
        pointInFile: draw.triple(dice),
        axis: draw.triple(dice),
        towards: draw.triple(dice),
        bendDeg: dice.mm(1, 170) * dice.pick([1, -1]),
      },
      draw.drag(dice),
    ),
  removeJoint: (project, dice) => wear.removeJoint(oneOf(draw.part(project).joints, dice, 'joint-none')),
  setWorn: (_, dice) =>
    wear.setWorn(
      dice.pick([
        null,
        { coversFace: dice.chance(0.5) },
        {
          girthMm: dice.mm(1, 900),
          tape: 'tape-1',
          openings: [{ vertex: draw.corner(dice), use: dice.pick(wear.OPENING_USES) }],
        },
      ]),
    ),
  sizeBy: (_, dice) => wear.sizeBy(dice.between(0.5, 2), dice.mm(1, 900)),
  setOff: (_, dice) => wear.setOff(dice.pick([0, dice.mm(-200, 200)])),
};
