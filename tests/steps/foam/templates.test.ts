import { describe, expect, it } from 'vitest';
import { rad } from '../../../src/geom/vec.ts';
import { SMALLEST_WORDS_MM } from '../../../src/model/line-style.ts';
import type { Template } from '../../../src/model/template.ts';
import type { FoamInput } from '../../../src/steps/foam/make-foam-pieces.ts';
import { bevelSteps } from '../../../src/steps/foam/bevel-steps.ts';
import { makeTemplate } from '../../../src/steps/foam/make-template.ts';
import { onPaper } from '../../../src/steps/foam/template-lines.ts';
import { makeShellLayer } from '../../../src/steps/shell/make-shell-layer.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';
import {
  BOX_EDGES,
  columnEdges,
  foamOf,
  hingedFlat,
  hingeMesh,
  partedAlong,
  ringEdges,
  turnedMesh,
  type Parted,
} from './support.ts';
import { collisionsOf, isInsidePolygon, isWithin, textsOf, ticksOf, wordsCorners } from './template-check.ts';

const CONTEXT = { projectName: 'Lamplighter lantern', foamName: 'EVA 10 mm, 1000 × 2000' };

function templatesOf(parted: Parted, change: Partial<FoamInput> = {}) {
  const { pieces, seams } = foamOf(parted, change);
  const mates = new Map(pieces.map(({ id, number }) => [id, number]));
  return { pieces, seams, templates: pieces.map((piece) => makeTemplate(piece, seams, { ...CONTEXT, mates })) };
}

/** Two tubes that meet on a slant, one piece each: bevels that change all along. */
function elbow(): Parted {
  const [sides, r, lean] = [24, 60, rad(25)];
  const points = [0, 1].flatMap((j) =>
    Array.from({ length: sides }, (_, i): [number, number, number] => {
      const angle = (2 * Math.PI * i) / sides;
      const [x, y] = [r * Math.cos(angle), r * Math.sin(angle)];
      return [x, y, j === 0 ? -120 : -x * Math.tan(lean)];
    }),
  );
  const above = points.slice(0, sides).map(([x, y, z]): [number, number, number] => {
    const d = 2 * (x * Math.sin(lean) + z * Math.cos(lean));
    return [x - d * Math.sin(lean), y, z - d * Math.cos(lean)];
  });
  const faces = [0, 1].flatMap((j) =>
    Array.from({ length: sides }, (_, i) => [
      j * sides + i,
      j * sides + ((i + 1) % sides),
      (j + 1) * sides + ((i + 1) % sides),
      (j + 1) * sides + i,
    ]),
  );
  return partedAlong(meshOf([...points, ...above], faces), [...ringEdges(sides, 1), ...columnEdges(sides, 6, 2)], {
    thicknessMm: 8,
  });
}

/** Every piece the tests below draw, both ways. */
const CASES: readonly { readonly name: string; readonly parted: Parted }[] = [
  { name: 'a box', parted: partedAlong(boxMesh(100, 60, 25), BOX_EDGES, { thicknessMm: 6 }) },
  { name: 'a large box', parted: partedAlong(boxMesh(400, 300, 120), BOX_EDGES) },
  { name: 'a tiny box', parted: partedAlong(boxMesh(22, 16, 9), BOX_EDGES, { thicknessMm: 2 }) },
  { name: 'an eight-sided tube', parted: partedAlong(tubeMesh(8, 40, 80), columnEdges(8, 0, 1), { thicknessMm: 6 }) },
  {
    name: 'a cone in two',
    parted: partedAlong(
      turnedMesh(24, [
        [60, 0],
        [45, 40],
        [30, 80],
      ]),
      [...columnEdges(24, 0, 2), ...columnEdges(24, 12, 2)],
    ),
  },
  { name: 'a hinge', parted: partedAlong(hingeMesh(rad(50)), []) },
  { name: 'a hinge parted', parted: partedAlong(hingeMesh(rad(-50)), [[0, 1]]) },
  {
    name: 'a lap',
    parted: partedAlong(hingeMesh(rad(30)), [[0, 1]], {}, [{ edge: [0, 1], kind: 'lap', allowanceMm: 12, lapFace: 1 }]),
  },
  {
    name: 'narrow rings',
    parted: partedAlong(
      turnedMesh(16, [
        [60, 0],
        [52, 10],
        [40, 14],
      ]),
      [...ringEdges(16, 1), ...columnEdges(16, 0, 2)],
      { thicknessMm: 4 },
    ),
  },
  { name: 'an elbow', parted: elbow() },
];

describe.each(CASES)('templates of $name', ({ parted }) => {
  const sides = (['face', 'back'] as const).map((tracedSide) => templatesOf(parted, { tracedSide }));

  it('have no words on words, lines, marks or the line to cut', () => {
    expect(sides.flatMap(({ templates }) => templates.flatMap(collisionsOf))).toEqual([]);
  });

  it('have no words smaller than can be read, and all of them in the box', () => {
    for (const { templates } of sides) {
      for (const { drawing, box } of templates) {
        for (const words of drawing.words) {
          expect(words.heightMm).toBeGreaterThanOrEqual(SMALLEST_WORDS_MM);
          for (const [x, y] of wordsCorners(words)) {
            expect(x).toBeGreaterThanOrEqual(box.minX - 1e-9);
            expect(x).toBeLessThanOrEqual(box.maxX + 1e-9);
            expect(y).toBeGreaterThanOrEqual(box.minY - 1e-9);
            expect(y).toBeLessThanOrEqual(box.maxY + 1e-9);
          }
        }
      }
    }
  });

  it('say what each piece is, name both ends of every seam and number every mark', () => {
    for (const { pieces, templates } of sides) {
      templates.forEach((template, i) => {
        const piece = pieces[i];
        const said = textsOf(template).join(' ');
        expect(said).toContain(piece.name);
        expect(said).toContain(piece.revision);
        expect(said).toContain('piece revision');
        expect(said).toContain('10 mm');
        for (const edge of piece.edges)
          if (edge.letter !== '')
            expect(textsOf(template).some((text) => new RegExp(`^${edge.letter}(:| |$)`).test(text))).toBe(true);
        for (const mark of piece.marks)
          expect(textsOf(template).filter((text) => text === `${mark.letter}${mark.index}`).length).toBeGreaterThan(0);
      });
    }
  });

  it('have ticks that stand outside the line to cut', () => {
    for (const { pieces, templates } of sides) {
      templates.forEach((template, i) => {
        const ticks = ticksOf(template, pieces[i]);
        expect(ticks).toHaveLength(pieces[i].marks.length);
        for (const [from, to] of ticks) {
          expect(isCovered(template, from)).toBe(false);
          expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeGreaterThan(3);
        }
      });
    }
  });
});

/** True when a point lies on foam as the cut lines have it. */
function isCovered({ drawing }: Template, p: readonly number[]): boolean {
  const rings = drawing.strokes
    .filter(({ role }) => role === 'cut')
    .map(({ points }) => Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]]));
  return rings.filter((ring) => isInsidePolygon(p, ring)).length % 2 === 1;
}

describe('a piece traced on its back', () => {
  it('is printed as its mirror image and says so', () => {
    const parted = partedAlong(tubeMesh(8, 40, 80), columnEdges(8, 0, 1), { thicknessMm: 6 });
    const [{ pieces, templates }] = [templatesOf(parted, { tracedSide: 'back' })];
    const cut = templates[0].drawing.strokes.find(({ role }) => role === 'cut');
    expect([...(cut?.points ?? [])]).toEqual([...pieces[0].outline].map((x, i) => (i % 2 === 0 ? -x : x)));
    expect(templates[0].reversed).toBe(true);
    expect(textsOf(templates[0]).join(' ')).toContain('traced on the back, printed reversed');
    expect(textsOf(templates[0]).join(' ')).toContain('other side out');
    // Ridges lie on the face, so on paper they bend in; the face edges stand out under the line that is cut.
    expect(textsOf(templates[0]).join(' ')).toContain('fold in 45°, groove 3.7 mm');
    expect(textsOf(templates[0]).join(' ')).toContain('out under');
  });

  it('is not reversed when traced on its face', () => {
    const parted = partedAlong(tubeMesh(8, 40, 80), columnEdges(8, 0, 1), { thicknessMm: 6 });
    const { templates } = templatesOf(parted);
    expect(templates[0].reversed).toBe(false);
    expect(textsOf(templates[0]).join(' ')).toContain('fold out 45°, groove behind 3.7 mm');
    expect(textsOf(templates[0]).join(' ')).toContain('in under');
    expect(textsOf(templates[0]).join(' ')).toContain('this side out');
  });
});

describe('lines', () => {
  it('show the other edge only where it is not the line to cut', () => {
    const roles = (parted: Parted) => templatesOf(parted).templates[0].drawing.strokes.map(({ role }) => role);
    expect(roles(partedAlong(tubeMesh(24, 40, 80), columnEdges(24, 0, 1)))).not.toContain('bevel');
    expect(roles(partedAlong(boxMesh(100), BOX_EDGES))).toContain('bevel');
  });

  it('show where a lap’s allowance begins', () => {
    const parted = partedAlong(hingeMesh(rad(30)), [[0, 1]], { modelIs: 'middle' }, [
      { edge: [0, 1], kind: 'lap', allowanceMm: 12, lapFace: 1 },
    ]);
    const { templates } = templatesOf(parted);
    const laps = templates.flatMap(({ drawing }) => drawing.strokes.filter(({ role }) => role === 'lap'));
    expect(laps).toHaveLength(1);
    const [x0, y0, x1, y1] = laps[0].points;
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(100, 9);
    expect(templates.flatMap(textsOf).join(' ')).toContain('lap 12 mm');
    expect(templates.flatMap(textsOf).join(' ')).toContain('under the lap');
  });

  it('tell at a seam of two thicknesses what stands proud, and have another code for another neighbour', () => {
    const made = (otherMm: number) => {
      const parted = partedAlong(hingeMesh(rad(10)), [[0, 1]], { thicknessMm: 6 });
      const { layer, mesh, patches } = parted;
      const other = makeShellLayer(mesh, { ...layer, backMm: -otherMm, thicknessMm: otherMm });
      const shells = [layer, other];
      const flats = patches.map((patch, i) => hingedFlat(patch, shells[i].neutralPositions));
      return templatesOf(parted, { shells, flats });
    };
    const { templates, pieces } = made(10);
    // On the plane that halves 10 degrees: 4 mm / cos 5 degrees.
    for (const template of templates) expect(textsOf(template).join(' ')).toContain('step 4 mm on the back');
    expect(made(6).templates.flatMap(textsOf).join(' ')).not.toContain('step');
    expect(made(15).pieces[0].revision).not.toBe(pieces[0].revision);
    expect(made(15).pieces[0].outline).toEqual(pieces[0].outline);
  });

  it('hold the foam in a box of its own', () => {
    const { templates } = templatesOf(partedAlong(boxMesh(100), BOX_EDGES), { tracedSide: 'back' });
    // Traced on the back, 80 mm; the face edge stands 10 mm outside all round.
    expect(templates[0].foamBox.maxX - templates[0].foamBox.minX).toBeCloseTo(100, 9);
    expect(templates[0].box.minX).toBeLessThanOrEqual(templates[0].foamBox.minX);
  });
});

describe('words', () => {
  it('stand inside where there is room', () => {
    const { templates } = templatesOf(partedAlong(boxMesh(400, 300, 120), BOX_EDGES));
    expect(
      templates.flatMap((template) =>
        template.drawing.words.filter((words) => !isWithin(template, words)).map(({ text }) => text),
      ),
    ).toEqual([]);
  });

  it('stand beside the piece on leaders where there is none', () => {
    const { templates } = templatesOf(partedAlong(boxMesh(22, 16, 9), BOX_EDGES, { thicknessMm: 2 }));
    for (const { drawing } of templates) expect(drawing.strokes.some(({ role }) => role === 'leader')).toBe(true);
  });

  it('tell how the saw is set where there is room, and leave it out where there is none', () => {
    const told = (...size: [number, number, number]): readonly (readonly string[])[] =>
      templatesOf(partedAlong(boxMesh(...size), BOX_EDGES)).templates.map((template) =>
        textsOf(template).filter((text) => text.startsWith('saw ')),
      );
    for (const texts of told(400, 300, 200)) {
      expect(texts).toEqual([expect.stringMatching(/^saw 45° in under: [A-L], [A-L], [A-L], [A-L]$/)]);
    }
    expect(told(30, 30, 30).flat()).toEqual([]);
  });

  it('part a mark’s number from a letter that ends in one', () => {
    const { pieces, seams } = foamOf(partedAlong(boxMesh(200), BOX_EDGES));
    const lettered = (letter: string): string => `${letter}2`;
    const [piece] = pieces.map((one) => ({
      ...one,
      marks: one.marks.map((mark) => ({ ...mark, letter: lettered(mark.letter) })),
    }));
    const texts = textsOf(makeTemplate(piece, seams, CONTEXT));
    for (const { letter, index } of piece.marks) expect(texts).toContain(`${letter}·${index}`);
  });

  it('tell twins which hand they are and what to turn', () => {
    const roof = meshOf(
      [
        [0, 50, 0],
        [0, 50, 100],
        [-60, 0, 0],
        [-60, 0, 120],
        [60, 0, 0],
        [60, 0, 120],
      ],
      [
        [0, 2, 3, 1],
        [0, 1, 5, 4],
      ],
    );
    const { templates } = templatesOf(partedAlong(roof, [[0, 1]]), { upAxis: 'y' });
    expect(textsOf(templates[0]).join(' ')).toContain('right, twin of 2: turn the paper, never the foam');
    expect(textsOf(templates[1]).join(' ')).toContain('left, twin of 1: turn the paper, never the foam');
  });

  it('name the mate by its number, and a closing seam as its own', () => {
    const { templates } = templatesOf(partedAlong(hingeMesh(rad(90)), [[0, 1]]));
    expect(textsOf(templates[0]).some((text) => text.startsWith('A → 2'))).toBe(true);
    const tube = templatesOf(partedAlong(tubeMesh(8, 40, 80), columnEdges(8, 0, 1)));
    expect(textsOf(tube.templates[0]).filter((text) => text.startsWith('A to itself'))).toHaveLength(2);
  });

  it('tell a bevel’s range, and the lean at every further five degrees', () => {
    const { templates, pieces } = templatesOf(elbow());
    const texts = textsOf(templates[0]);
    expect(texts.some((text) => /bevel 2[45]° out to 2[45]° in under/.test(text))).toBe(true);
    const leans = texts.filter((text) => /^\d+° (in|out)$/.test(text));
    expect(leans.length).toBeGreaterThanOrEqual(8);
    expect(pieces[0].edges.some(({ bevelDeg }) => Math.max(...bevelDeg) > 24)).toBe(true);
  });

  it('tell a bevel that changes at its start, at its end and every five degrees between', () => {
    const { pieces } = templatesOf(elbow());
    const paper = onPaper(pieces[0]);
    const changing = pieces[0].edges.filter(({ bevelDeg }) => Math.max(...bevelDeg) - Math.min(...bevelDeg) >= 5);
    expect(changing.length).toBeGreaterThan(0);
    for (const edge of changing) {
      const steps = bevelSteps(paper, edge);
      const leans = steps.map(({ leanDeg }) => leanDeg);
      // 4 mm inside the ends: the sharpest facet is 16 mm wide and turns the bevel by 6.5 degrees.
      expect(Math.abs(leans[0] - edge.bevelDeg[0])).toBeLessThan(2);
      expect(Math.abs(leans[leans.length - 1] - edge.bevelDeg[edge.bevelDeg.length - 1])).toBeLessThan(2);
      // Facets turn the seam's bevel by up to 6.5 degrees each: never more than a step and a facet goes untold.
      leans.slice(1).forEach((lean, i) => expect(Math.abs(lean - leans[i])).toBeLessThan(5 + 7));
      // The thin line runs straight across to the other edge: t tan(lean) away, 8 mm foam.
      for (const { at, end, outward, leanDeg } of steps) {
        const across = (at.x - end.x) * outward.x + (at.y - end.y) * outward.y;
        expect(across).toBeCloseTo(8 * Math.tan(rad(leanDeg)), 1);
      }
    }
  });

  it('show the second line of a bevel t tan(bevel) from the line that is cut, and both beside the neutral line', () => {
    for (const [thicknessMm, k, foldDeg] of [
      [6, 0.5, 60],
      [10, 0.33, 90],
      [15, 0.5, -50],
    ]) {
      const parted = partedAlong(hingeMesh(rad(foldDeg)), [[0, 1]], { thicknessMm, neutralFraction: k });
      const { pieces, templates } = templatesOf(parted);
      const [piece] = pieces;
      const edge = piece.edges.find(({ letter }) => letter === 'A');
      if (edge === undefined) throw new Error('no seam');
      const slope = Math.tan(rad(foldDeg / 2));
      const [face, back] = [(1 - k) * thicknessMm * slope, -k * thicknessMm * slope];
      expect(edge.faceOffsetMm[0]).toBeCloseTo(face, 9);
      expect(edge.backOffsetMm[0]).toBeCloseTo(back, 9);
      const second = templates[0].drawing.strokes.find(({ role }) => role === 'bevel');
      const neutral = [edge.from, edge.to].map((i) => piece.neutralOutline.subarray(2 * i, 2 * i + 2));
      const [x, y] = second?.points.subarray(second.closed ? 0 : 2) ?? [];
      // The hinge is straight: distance of a point of the drawn line from the line through the neutral edge.
      const [dx, dy] = [neutral[1][0] - neutral[0][0], neutral[1][1] - neutral[0][1]];
      const away = ((x - neutral[0][0]) * dy - (y - neutral[0][1]) * dx) / Math.hypot(dx, dy);
      expect(away).toBeCloseTo(back, 9);
    }
  });

  it('point up where the sculpt’s up is, and not on a level piece', () => {
    const { templates, pieces } = templatesOf(partedAlong(boxMesh(100), BOX_EDGES));
    templates.forEach((template, i) => {
      const heads = template.drawing.strokes.filter(({ filled }) => filled === true);
      expect(heads).toHaveLength(pieces[i].up === null ? 0 : 1);
      if (heads.length === 0) return;
      const [tipX, tipY, , leftY, rightX] = heads[0].points;
      expect(tipY).toBeGreaterThan(leftY);
      expect(Math.abs(tipX - rightX)).toBeLessThan(2);
    });
  });

  it('are the same every time', () => {
    const draw = () =>
      JSON.stringify(templatesOf(partedAlong(boxMesh(100, 60, 25), BOX_EDGES, { thicknessMm: 6 })).templates);
    expect(draw()).toBe(draw());
  });
});
