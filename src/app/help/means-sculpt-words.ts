/** What fields about the sculpt mean: its size, its seams, the foam, how it fits. Words in brackets lead to the glossary. */
export const MEANS_SCULPT = {
  'job-name': 'What the job is called. It stands on every page and names the files you save.',
  'size-axis': 'The side of the sculpt whose length you know. Its longest side is the easiest to measure on a drawing.',
  'size-known':
    'How long that side is to be when the prop is finished, foam and all. Everything else follows from it in true scale.',
  'size-between':
    'The length between the two corners you picked, as it is to be on the finished prop. A helm: from ear to ear.',
  up: 'Which way is up in the file. It turns the view and tells the pieces their up arrows; it changes no size.',
  triangles:
    'How many triangles the simpler sculpt is to have. Fewer are quicker to lay flat; 5000 are plenty for most props.',
  deviation: 'How far the simpler surface may lie from your own. Half a millimetre is less than a knife strays.',
  mirror:
    'Marks you make appear on the other half as well, and what you join is joined on both. Off for what is uneven.',
  group: 'Groups that the file itself brings, by their names. The foam is parted all round the one you choose.',
  sharper:
    'Edges that turn more sharply than this are [parted|seam] at once: right for panelled props. 30 to 45 degrees is usual.',
  'proposal-limit':
    'How much [stretch] and [squash] a proposal may ask of the foam. Less means more seams. Empty means what the foam can take.',
  'proposal-hide': 'Seams cost less on this side, so that they lie where nobody looks. A helm hides them at the back.',
  ridge: 'How sharply an edge must turn to be followed as a ridge. 30 degrees is usual; lower it on soft shapes.',
  spacing:
    'How far apart the planes are at which the foam is parted, from the one you hold. Armour bands: 40 to 60 mm.',
  taut: 'How far the seam may move from where it was when it is straightened. 3 mm takes out a jagged line and no more.',
  'drawing-size': 'Size of the drawing against its file, per cent. 100 lays it in the size it was drawn.',
  'drawing-turn': 'How far the drawing is turned on the surface, degrees against the clock.',
  'dart-end':
    'How a [dart] ends. A round hole keeps foam from tearing on when it is pulled; a point leaves less to hide.',
  'tip-hole': 'Width of the hole at the end of the dart. 3 mm is usual, made with a punch or a hot nail.',
  'area-name': 'What this area is called, in lists and on paper.',
  'area-give':
    'Whether the foam gives here when it is shaped. A stiff area keeps its lengths, one to be warmed may [stretch] more.',
  'area-seams': 'Whether seams may run here when they are proposed: kept clear, left free or preferred.',
  'area-raised': 'A sheet of foam glued on the face here, cut to this area: trim, badges, raised panels.',
  within: 'How far from the place you clicked the area reaches. Empty takes the whole panel.',

  foam: 'Thickness of the sheet. It moves the surface that keeps its length, so pieces change shape and not only edges. 5 to 10 mm for armour, 2 for trim.',
  'sheet-size': 'Size of the sheet you buy. Pieces are laid on sheets of this size, and one that is larger is told.',
  thickness:
    'What your ruler or caliper says of the foam in hand. Sheets sold as 5 mm are often 4.6: a wrong thickness opens every [bevel].',
  surface:
    'Which surface of the foam your sculpt is. Face: the outside you modelled. Back: a head, an arm or a pipe that the foam goes round. Face is usual.',
  'wall-sheet': 'The [layer] of the wall that lies on the bench and that the fields below are about.',
  stagger:
    'How far the seams of this sheet lie beside those of the sheet outside it, so that no seam goes through the whole wall. 15 to 30 mm; 0 leaves them in line.',
  neutral:
    'Where in the thickness the foam keeps its length in a bend: 0 at the inside, 1 at the outside. It sets how long a rolled piece is. 0.5 until you have measured.',
  traced:
    'The side of the foam you draw round the template on. Tracing on the back keeps ink off the face; the template is then mirrored.',
  'neutral-length': 'How long your test strip is, flat. The printed strip says what it should be.',
  'neutral-thickness': 'Thickness of the test strip, measured on itself.',
  'neutral-across': 'How wide the round thing is that the strip is bent round: a tin, a pipe, a jar.',
  'neutral-arc': 'From mark to mark along the outside of the strip while it lies bent. Read it to half a millimetre.',
  'shrink-alongPct':
    'How much shorter the foam gets along the sheet when you warm it, per cent. 0 to 3 is usual; measure a square of 100 mm.',
  'shrink-acrossPct':
    'How much narrower the foam gets across the sheet when you warm it, per cent. Often less than along it.',
  'allow-shrinkage':
    'Pieces are drawn larger by what they lose in the heat. Leave it off where you do not warm the foam.',
  'hold-seams':
    'What gives way when a round surface is laid flat: the lengths of seams, or the foam between them. Seam lengths first is usual, so that edges meet.',
  'squash-price':
    'How much dearer gathering the foam is than pulling it. Foam wrinkles sooner than it tears: 2 to 4 times.',
  'laying-evenOut': 'The worst place of a piece is spread over more foam. For foam near its limit.',
  'laying-keepApart': 'Edges of one piece that would lie over each other on the sheet are kept apart.',
  'rule-foam': 'The foam these rules are of. Each foam keeps its own.',
  'rule-stretchNoticePct': 'From here on a note says that the foam must give. 3 per cent for cold foam.',
  'rule-stretchTooMuchPct':
    'From here on it is too much and a seam or [dart] is wanted. 8 per cent cold, 20 warmed: a shop rule, nobody has published one.',
  'rule-bendNoticePct': 'Strain of the skins in a tight bend from which a note is made. 10 per cent is usual.',
  'rule-bendTooMuchPct':
    'Strain of the skins that is too much: take thinner foam, two [layers|layer], or [grooves|groove].',
  'rule-foldLimitDeg':
    'Folds sharper than this are [grooved|groove] from behind and not just bent. 20 degrees is usual.',
  'rule-panelFlatDeg': 'A panel counts as flat while it leans no more than this from end to end.',
  'rule-hingeMm': 'Foam left whole under a [groove], the skin it hinges on. 1 to 1.5 mm.',
  'rule-leastHingeMm': 'A skin thinner than this tears when it is folded. Such grooves are told.',
  'rule-kerfMm': 'How wide your blade or saw cuts a [kerf]. Cut one in scrap and measure it.',
  'rule-bevelLimitDeg':
    'How far your saw table or blade leans from square. Most stop at 45 degrees; a steeper [bevel] is told.',
  'rule-narrowThicknesses': 'A piece narrower than this many thicknesses is told: it is hard to cut and to glue.',
  'rule-markSpacingMm':
    '[Match marks|mate-mark] stand no farther apart than this along a seam. 80 mm is usual, less on curves.',
  'rule-markLeastSeamMm': 'Seams shorter than this need no match marks.',

  'tape-axis': 'Which way the tape stands square to. A head is taped square to up.',
  'tape-bodyGirthMm':
    'The [girth] you measured on the body here, with what is worn underneath. Pull the tape snug, not tight.',
  'tape-easeMm':
    'Room beyond the body, in girth: [ease]. Two fingers under a helm are about 40 mm, a bracer over a sleeve 20.',
  'tape-bodyBreadthMm': 'How broad the body is here. A helm with the right girth can still be too narrow at the ears.',
  'tape-bodyLengthMm': 'How long the body is here from front to back.',
  place: 'Where it stands. Drag it, or use the arrow keys.',
  'core-axis': 'Which way the rod or pipe runs.',
  'core-diameterMm': 'Outside width of the rod or pipe. Measure yours: pipes are sold by a name, not by this size.',
  'core-lengthMm': 'How far the rod reaches into the foam.',
  'core-unit': 'What the numbers in the file of the core are.',
  room: 'Least [clearance] between foam and core that you want all round. 1 mm slides, 0 is tight, 5 takes padding.',
  'joint-axis': 'The line the joint turns about.',
  'joint-side': 'The side that turns. The other one stays.',
  'joint-bend': 'How far it has to turn, degrees. Foam that meets foam before that is told.',
  'covers-face': 'It is worn over the face. Then openings to see and breathe through are asked for.',
  'opening-use': 'What this opening is for. A way in is held against what must pass it.',
  'pass-girthMm': 'Girth of what must pass on the way in: of a helm the head, of a bracer the fist.',
  'pass-breadthMm': 'Breadth of what must pass, at its widest.',
  off: 'Moves all of the foam outward from the sculpt, or inward with a minus, and leaves its thickness. For padding.',
  'score-depthMm': 'How deep the face is cut for a line that heat opens. A third of the thickness is usual.',
  'score-openMm': 'How wide the line gapes once it was warmed. It shows, and no foam is taken away.',
};
