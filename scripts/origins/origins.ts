/** Where each word, sign, colour and drawing comes from, by hand. What is not here fails the check. */

/** Words of names by where they come from; a word stands once. */
export const WORD_ORIGINS: Readonly<Record<string, string>> = {
  'Trade: tailoring and pattern cutting':
    'allowance cover covered covers cut cuts dart darts ease fold folded folds gather girth gore gores grain mark marked marks mate nap notch pattern rim seam seams strap tape taped template templates trim true truest twin walk walking worn',
  'Trade: woodwork, sheet metal and bookbinding':
    'bench bevel bevelled bevels blade board bridge bridges butt card chamfer comb core dowel dry edging fillets fit groove grooves half-round half-way hinge joint joints kerf kerfs laminate lap layer layers lean leaning length lengths miter mock-up offcut panel pitch ply prong quarter-round rebate rod saw score scored slot stack step strip strips tab tapered v-cut wedge wind winding wound wrap wraps zones',
  'Trade: foam, leather and prop making':
    'EVA PVC acrylic adhesive air-drying aluminium badge bracer brush brushed buckle build build-up built clay coat coats conduit contact copper emblem flexible foam foams foam’s form formed glue glued gluing heat helm lantern maul padding plate prime primer prop sculpt sculpts seal sealer shoulder skin soft solvent spray steel stiff touch-dry warm warmed water-borne',
  'Trade: printing and paper':
    'ANSI legal letter margin page pages paper print printed printer prints registration roll rolled scale sheet sheets tabloid uncorrected',
  'Trade: figures of the foam (mechanics and sheet-metal handbooks)':
    'bend bending bends compression empirical extension fraction gap gaps gives hold neutral pull pulled radius shrink shrinkage shrinks squash stagger strain strength stretch tears thick thickest thickness thin',
  'Textbook: geometry and development of surfaces':
    'angle arc archimedean axis balls box boxes branch circumference cone cones contour corner corners curve cylinder defects degrees diameter dome domes ducts edge edges elbow ellipse face faces facet frustum grid helical hopper line lines oblique outline outlines path plane platonic point pointed polygon prism prisms profile pyramid regular ridge ring rings solids sphere spherical square star surface torus triangles truncated valley',
  'Standard: units and short forms (ISO 80000, ISO 216, open file formats)':
    'CSV IV IX JSON PDF PNG STL SVG XL a backspace c cm ctrl d e end enter esc f g h home i in inch inches k kg l litre m metres min ml mm n s shift space v w x y z',
  'Standard: what hands do to a screen (W3C, UI Events and Pointer Events)':
    'button click drag finger fingers pen pinch tap trackpad wheel',
  Ours: 'apart bare between flat foamloft job jobs lamplighter’s next off-line part parted parts proposal proposals propose sharper shop steep-built ten-minute thread whole',
};

/** Plain English words of names, each read by somebody who asked which program it brings to mind: none. */
export const PLAIN_WORDS = `
  about above across add afresh after again against air alike all allows alone along an and anew another any are area areas arrow artwork
  as aside assembly at away back bar base batch batches be before begin beginning behind being below beside best beyond blind body body’s
  border both bought boundary breadth breaks bring browser but buy by calibration call can cannot cans cap cent change changed
  changes check checks choose chosen clear clearance clock close closed closer closes colour colours come comes comfort compare
  contrast copies copy cost crease crest currency date day days dearer decide decided deep deepest depth deutsch did differ direction disc
  disk do does done door dots doubles down draw drawing drawings drawn dries drop dropped each earlier either elsewhere empty ends
  english enough equal even every everything exploded falls far farther fast fetch few field figure figures file files fill filled
  find finding findings fine finer finish finished finishing first focus follow for forget found free from front full go goes gone
  good grade greatest group hairlines half hand handle has have head height held help here hide high higher holds hole holes hollow
  how image improve improving inner inside install instead into inward is it its itself join joined joins keep keeps kept keys kinds
  knife known label laid language large larger laser last later lay laying layout lead least leave left lengthwise less let level
  lie lies light like limit link list lists little long longer longest look looking loop lower lying machine made make making many
  match may me means measure measured measures meets mends mid middle mind minute mirror mirrored model more most move moved much my
  name narrow narrower narrows nearer network new night no none not note nothing now nowhere number of off offset older on once one
  only open opened opening opens or order other out outer outside outward over overlap own paint pair particular passes per pick
  picked picture piece pieces pipe place places plain play prefer preferred prices project pulling put putting quarter raised read
  reading rear redo refused release remnant remove report rest revision right room round rounded rules runs said same sample save
  saved saves say says schedule scrap screen second see seen set setting settling shade shape shapes share shorter show shut side sides
  sight simple simplify since sits size sizes slant slices slide small smaller smooth something sort spacing split stand stands
  state states stays steepest stencil steps still stock stop stops straight straighten strong such system table take taken takes
  tall test text than that the them then there these they thing third this those three through tick ticked tightest tightly tile
  times tip to together too top touch towards trace traced tracing trade tries try turn turned turns twice two type under underneath undo
  unit until up upper upright use used usual usually value version versions view visit volume waiting wanted wants warning was
  way ways wears well wet what whatever when where which whoever wide wider widest width windows wish with within without word words
  work worked working works worst write written wrong yes yet you your zero
`;

/** Signs that stand in texts. */
export const SIGN_ORIGINS: Readonly<Record<string, string>> = {
  '–': 'typography: from … to',
  '…': 'typography: more is asked for, or under way',
  '·': 'typography: divides facts on paper',
  '•': 'typography: point of a list',
  '’': 'typography: apostrophe',
  '‘': 'typography: quotation',
  '„': 'typography: quotation in German',
  '“': 'typography: quotation',
  '”': 'typography: quotation',
  '°': 'standard: ISO 80000-3, degree',
  '×': 'standard: ISO 80000-2, by',
  '−': 'standard: ISO 80000-2, minus',
  '≈': 'standard: ISO 80000-2, about',
  '\ufffd': 'standard: Unicode, replacement character: stands for what a file holds and cannot be shown',
  '′': 'typography: feet, understood when typed',
  '″': 'typography: inches, understood when typed',
  '‟': 'typography: quotation, understood as inches',
  '⁄': 'typography: fractions of an inch, understood when typed',
  '∕': 'typography: the same',
  '←': 'caps of keyboards, ISO/IEC 9995-7',
  '→': 'caps of keyboards, ISO/IEC 9995-7; on paper: leads to',
  '↑': 'caps of keyboards, ISO/IEC 9995-7',
  '↓': 'caps of keyboards, ISO/IEC 9995-7',
  '✓': 'a tick, as by pencil',
  '⊙': 'ours: a pin seen from above, for what is held',
  '⠿': 'ours: a rough place to take hold of',
  '☐': 'a box to be ticked, as on any printed list',
  '☑': 'the same, ticked',
};

/** Custom properties of tokens.css. */
export const TOKEN_ORIGINS: Readonly<Record<string, string>> = {
  '--paper': 'manila card',
  '--paper-high': 'manila card, lit',
  '--paper-low': 'manila card, in shade',
  '--ink': 'graphite',
  '--ink-soft': 'graphite, rubbed',
  '--rule': 'a pencilled line',
  '--rule-soft': 'a fainter one',
  '--lamp': 'lamp amber: only what is chosen or next',
  '--on-lamp': 'graphite on amber',
  '--lamp-ink': 'amber dark enough for words',
  '--wrong': 'red lead, as corrections are marked in',
  '--bench-ground': 'a workshop wall',
  '--bench-top': 'a wooden bench top',
  '--bench-line': 'a rule burnt into the bench',
  '--foam': 'charcoal foam, its skin',
  '--foam-cut': 'charcoal foam where a blade went through',
  '--sculpt': 'modelling plaster',
  '--on-foam': 'chalk on foam',
  '--sculpt-line': 'graphite on plaster',
  '--print': 'white paper',
  '--print-ink': 'black ink',
};

const OURS_OF_BENCH = 'ours: the colours of tokens.css before a page says otherwise';

/** Colour codes outside of tokens.css, by the file they stand in. */
export const CODE_ORIGINS: Readonly<Record<string, string>> = {
  'src/app/assets/mark.svg': 'ours: ink, paper and lamp of tokens.css',
  'src/app/files/print-pages.ts': 'black ink',
  'src/app/paint-swatch.ts': 'ours: ink and chalk, whichever stands out from a swatch',
  'src/app/paint-words.ts': 'ours: tar, brass, bone, rust, moss, slate; a maker puts in the shade of the tin',
  'src/app/sheet-picture.ts': 'ours: white mixed into cut foam, black numbers',
  'src/app/sheet-view-style.ts': 'ours: white mixed into cut foam, black numbers',
  'src/pipeline/build-up-svg.ts': 'ours: tints of layers in a figure for checking',
  'src/pipeline/stack-svg.ts': 'ours: tints of layers in a figure for checking',
  'src/pipeline/svg-in-mm.ts': 'white paper',
  'src/steps/write/outline-svg.ts': 'black ink; blue for what is drawn and not cut, ours',
  'src/steps/write/sheet-svg.ts':
    'ours: one pure colour a layer, as far from each other as cutters need to tell them; words say which is which',
  'src/steps/write/svg.ts': 'black ink',
  'src/viewport/bench-theme.ts': OURS_OF_BENCH,
  'src/viewport/painting.ts': 'ours: quiet earth tones that tell pieces from each other, and coats of a pull',
  'src/viewport/stretch-colours.ts': 'published: PuOr of eleven classes, ColorBrewer 2.0, C. A. Brewer, Apache-2.0',
  'src/viewport/studio.ts': 'ours: warm lamp, cool window, white sky',
  'src/viewport/words-mesh.ts': 'white: a mask that takes any colour',
};

/** Files that draw. Every one was drawn for this project, in code; lines are those of ISO 128-2:2020 as in model/line-style.ts. */
export const DRAWING_ORIGINS: Readonly<Record<string, string>> = {
  'src/app/assets/mark.svg': 'the mark: sheets of foam, one chosen',
  'src/app/at-bench/work-picture.ts': 'a piece or step of the job itself',
  'src/app/core-side.ts': 'a core cut along its axis',
  'src/app/elevation.ts': 'the sculpt from the front with its measures (ISO 129-1)',
  'src/app/foam-line.ts': 'thicknesses as bars',
  'src/app/help/drawings.ts': 'one small figure for a word of the trade',
  'src/app/help/guide-line.ts': 'a tick',
  'src/app/history/two-outlines.ts': 'two outlines, one over the other',
  'src/app/job-line.ts': 'box of a printed list: empty, ticked, waiting, wrong',
  'src/app/legend/legend.ts': 'the strokes of the picture',
  'src/app/legend/scale-bar.ts': 'a scale with its figures',
  'src/app/outline-board.ts': 'an outline on a grid',
  'src/app/page-drawing.ts': 'a page as it prints',
  'src/app/paint-swatch.ts': 'a painted card with its hatching',
  'src/app/piece-picture.ts': 'a flat piece',
  'src/app/proposals.ts': 'flat pieces beside each other',
  'src/app/shape-picture.ts': 'flat pieces of a shape',
  'src/app/sheet-picture.ts': 'a sheet of foam from above',
  'src/app/sheet-view-parts.ts': 'handles and places on a sheet',
  'src/app/sheet-view.ts': 'a sheet of foam from above',
  'src/app/stage-rule.ts': 'the helm whole, apart, flat, on the sheet',
  'src/app/stock-row.ts': 'a traced offcut',
  'src/app/verdict/verdict-view.ts': 'a tick or a sign beside a check',
};
