import { USUAL_FILL } from '../project/fill-rule.ts';
import { USUAL_MOCK_UP } from '../project/mock-up.ts';
import { WISH_LIMITS } from '../project/wish-limits.ts';

/** What `--help` prints. */
export const USAGE = `Foamloft: from a sculpt to true-scale foam templates.

  node dist/cli.js inspect MODEL [--json]
      Tells what a model file holds: counts, size, area, and what is wrong.

  node dist/cli.js compare PROJECT PROJECT [--json]
  node dist/cli.js compare PROJECT --kept NAME [--json]
      Two projects side by side, or a kept version and the project as it is:
      pieces, foam, seams, stretch, gaps, pages. What differs is marked with *,
      and pieces that differ are named.

  node dist/cli.js seams MODEL|PROJECT --out FILE.json [options]
      Looks for seams: few and short, every piece within its limits. Tells each
      improvement, and writes the best as a seam file for make. Ctrl-C stops it
      sooner.

      --seconds S           how long, from the start, default 10
      --moves N             or after so many tries: the same on every machine
      --limit PCT           most stretch and squash of 99 % of a piece, default
                            what the foam takes
      --pieces few|simple   few pieces with darts (default), or more, simpler
      --limits foam         default: on the foam's own surface and on its sheet;
                            narrow parts cost more and are told
      --limits reference    as research measures: 5 %, the sculpt itself
      --mirror              seams alike on both sides of a sculpt that is
      --hide SIDE           seams cost less at the back, under, left or right
                            as it stands seen from the front, or nowhere
      --from SEAMS.json     seams to begin from
      --seed N              another number looks elsewhere, default 1
      --report FILE         every triangle flat and in space, for checking
      --thickness, --unit, --size as for make

  node dist/cli.js make MODEL|PROJECT --out DIR [options]
  node dist/cli.js make [MODEL|PROJECT] --parts FILE.json --out DIR [options]
      Makes the templates and writes templates.pdf, pieces.svg, report.json,
      project.foamloft.json and timings.json into DIR, and files.json, which
      tells what it wrote: what an earlier run wrote there and this one does not
      is removed, unless it was changed since.

      --parts FILE.json     add parts of other kinds, as told of in
                            shared/parts.schema.json; one whose name is there
                            takes its place. Without a model or project the
                            prop is made of these alone:
                            {"version":1,"parts":[{"kind":"stack",
                            "name":"Pommel","foam":["10 mm","6 mm"],
                            "turned":"0:30,40:30","dowel":"6 mm"}]}
                            Kinds: shape (with "shape" and "sizes"), stack,
                            artwork (with "file") and build-up; other fields are
                            the options of shape, stack, artwork and core,
                            without dashes, less those of sheets. "place" has
                            "at", "facing", "turnDeg" and "copies"; --place of
                            core is "seats" here, that of artwork
                            "photo-places". Kind sculpt has "file", "seams" and
                            "unit" or "size" of make, its "foam" is its wall
                            from the inside outward
      --name TEXT           what the prop is called, on every page; else as its
                            project or parts file says, or as its file is named
      --new-version FILE    another version of the model takes its place: seams,
                            areas and wishes are carried over to where they lay,
                            and what has no place there is told
      --seams FILE.json     where to part the sculpt:
                            {"version":1,"edges":[[0,1],[1,2]]},
                            corners counted from 0; how, with
                            "joins":[{"edge":[0,1],"kind":"rebate",
                            "allowanceMm":0}], or kind "lap"
      --unit mm|cm|m|in     unit of the numbers in the file (mm when neither
                            --unit nor --size is given, and the report says so)
      --size AXIS=MM        one real measure instead: longest=, x=, y= or z=
      --thickness MM        foam, default 6; of every sheet of a wall
      --wall MM,MM          a wall of several sheets instead, from the inside
                            outward, each with pieces of its own size
      --stagger MM          lay the seams of inner sheets so far beside those of
                            the outermost, one to either side in turn; 0 over
                            them
      --simplify N|MMmm     make a dense sculpt simpler for paper: to N
                            triangles, as 5000, or as far as its surface moves
                            by no more than MM, as 0.4mm; off: as it is
      --area NAME=WORD      say of an area of the project, or of a group of the
                            file, by its name: clear (no seam is proposed
                            inside), prefer (seams cost less), stiff, soft or
                            normal (how it gives); may be repeated
      --piece-foam FACE=MM  cut the piece that holds a face of the file, counted
                            from 0, from foam so thick; may be repeated
      --raise AREA=MM       lay a sheet of foam so thick on the face over an
                            area of the project, by its name; 0 for none; may be
                            repeated
      --steep LETTER=WAY    build a seam whose fold is beyond the blade: split
                            (strips between), fill (a gap, filled) or trim (a
                            gap under a strip); may be repeated
      --score LETTER=MM,MM  score along a seam instead of parting there: how
                            deep in the face, and how wide it opens when warmed;
                            may be repeated. Letters of --steep and --score are
                            those printed when neither is given
      --model-is SIDE       which surface of the foam the sculpt is:
                            face (default), middle, back
      --off MM              how far that surface stands off the sculpt, outward;
                            inward with a minus: --off=-2
      --neutral K           neutral fraction from the back, 0 to 1, default 0.5
      --traced SIDE         side the template is traced on: face (default), back
      --up AXIS             which way is up in the file: x, y or z
      --seam-price N        seam lengths against stretch inside a piece: 0 for
                            least stretch, 10000 for true seams, default ${WISH_LIMITS.seamPrice.usual}
      --squash-price N      squash against the same stretch, 1 to 20,
                            default ${WISH_LIMITS.squashPrice.usual}
      --even-out            ease the worst spot at a small rise of the mean
      --keep-apart          keep edges of a piece from lying over each other
      --shrink ALONG,ACROSS what the foam loses when warmed, per cent, along and
                            across the sheet: pieces are cut larger by it
      --rule NAME=N         a rule of the shop for this foam, may be repeated:
                            bevelLimitDeg (how far the saw leans), hingeMm
                            (left under grooves), foldLimitDeg (grooved folds),
                            stretchNoticePct, stretchTooMuchPct, bendNoticePct,
                            bendTooMuchPct and others
      --girth-at AXIS=N     measure the girth inside, square to an axis, at a
                            number of the file: round the line through its zero
      --body-girth MM       of who wears it there; --ease MM: how much looser
      --body NAME=LENGTH    size the sculpt by a measure of the body, as
                            forearm=280mm, with --ease: inside the foam round
                            --girth-at, or along an axis over a share of it by
                            --body-along y=0.9
      --pass MM             girth of what must pass when it is put on
      --core AXIS=MM        rod or pipe along an axis through the file's zero,
                            by its outside diameter
      --core-model FILE     OBJ or STL of what the part sits on; it stands
                            where its numbers put it beside the sculpt's
      --core-unit UNIT      mm, cm, m, in, or sculpt (default): as the sculpt's
      --core-room MM        room wanted all round it
      --paper NAME          A4 (default), A3, A2, A1, A0, Letter, Legal,
                            Tabloid, "ANSI C" …, roll=MM (its width)
                            or custom=WxH in mm
      --landscape           turn the paper
      --margin MM           unprintable border, default 10
      --overlap MM          how far tiles overlap, default 10
      --mirrored once|each  pieces that mirror each other: one template for
                            both, turned over for the second (default), or one
                            each
      --ruled tell|print    long straight strips of one width: told on the map
                            and cut by the ruler (default), or printed
      --language en|de      what templates, map and build sheet are printed in:
                            English (default) or German
      --printer NAME        draw the pages for a printer the project keeps; off:
                            for any printer
      --measured WxH        keep that printer: what the square of its first page
                            reads in mm, across and up, as 97x98.4; with both
                            diagonals, rising and falling, 97x98.4x139.1x138.
                            Read on a page made for it, the rest is added
      --glue NAME           what pieces are glued with: solvent (default),
                            water or spray contact adhesive
      --sheet-price MM=N    what a sheet of the foam so thick costs, may be
                            repeated; --currency TEXT: what prices are in
      --stock FILE.json     sheets and offcuts in hand, as the list told of in
                            shared/stock.schema.json: used before any is bought
      --border MM           kept free along the edges of a sheet, default ${USUAL_FILL.borderMm}
      --spacing MM          kept free between pieces, default ${USUAL_FILL.spacingMm}: what a saw
                            or laser takes away
      --turns any|half|none how pieces may lie: any way (default); along the
                            sheet, either way round; or only as they are drawn
      --turn-over           pieces may lie with their other side up
      --no-buying           use what is in hand alone; say what does not fit
      --lay-out-moves N     better the layout for so many moves, the same on
                            every machine; it is kept in the project
      --coats NAME,NAME     what goes all over, in this order: sealer, primer,
                            acrylic, spray, clear; or none
      --colour NAME=#RRGGBB a paint of your own list, may be repeated; after the
                            colour brushed (default) or sprayed, coats, and how
                            many m2 a litre covers by its label, as
                            Brass=#b58a3c,sprayed,3,4.5
      --paint AREA=COLOUR   paint an area of the project, or a group of the
                            file, by its name; rest: all else; none: no colour;
                            may be repeated. Areas, tape, steps: build-sheet.pdf
      --fillet LETTER=MM    fill an inner corner along a seam with clay, to a
                            hollow of this radius; --clay AREA=MM: build an area
                            up in clay, so high; 0 for none; may be repeated
      --clay-area AREA=MM   model an area in clay over a core of sheet, so much
                            clay at least; it leaves the foam; 0 for none; may
                            be repeated; --clay-sheets MM,MM: what the core is
                            stacked of; --clay-wall MM: a hollow core
      --mock-up 1:N         mock-up.pdf: the pieces N times smaller in card with
                            square edges, to see in ten minutes how they close;
                            --card MM: how thick the card is, default ${USUAL_MOCK_UP.cardMm}
      --dxf                 sheet-1.dxf, sheet-2.dxf …: each sheet of foam for a
                            cutter, in mm, pieces as they lie on it
      --svg-sheets          the same as SVG, in hairlines and filled
      --png DPI             a picture of each page and each sheet, with so many
                            dots to the inch
      --stl                 the finished prop, put together and thick, in true
                            size; a wall of several sheets also sheet by sheet
      --obj                 the same as OBJ, and flat-pieces.obj: the pieces on
                            the sculpt, laid flat in their texture coordinates
      --smaller N           the prop also N times smaller, to print as a check
      --cutter blade|laser  what cuts them: says what a laser must never cut,
                            unless it is a blade, and how wide the cut is
      --cut-width MM        what the cut takes away, default 0 for a blade, 0.2
                            for a laser: lines run half of it outside pieces
      --bridges N,MM        leave each piece joined to its sheet at N places, MM
                            wide, as 4,2
      --date YYYY-MM-DD     date on the paper, default today; the same input
                            and date give the same bytes

  node dist/cli.js nest INSTANCE.json [--out FILE.json] [options]
      Lays pieces on a strip of given height, as short as it can. Ctrl-C stops
      it sooner.

      --seconds S           how long, from the start, default 10
      --moves N             or after so many moves: the same on every machine
      --seed N              another number looks elsewhere, default 1

  node dist/cli.js shape NAME [SIZE=VALUE ...] [--json] [--out FOLDER]
      Develops a shape from its sizes, exactly: figures, flat pieces, seams. A
      value is 120, "4 1/2 in", 114,3mm or 45; several have commas between. What
      is left out has its default.

      --json                everything, arcs as arcs
      --out FOLDER          the pieces in true size as NAME.svg and NAME.dxf,
                            arcs as arcs
      --list                every shape, or the one named: one sentence, and
                            its sizes with units, defaults and limits

  node dist/cli.js stack MODEL --sheets MM,MM [options]
  node dist/cli.js stack --turned LENGTH:RADIUS,… --sheets MM,MM [options]
      A closed solid, or one turned round its axis, as flat layers of sheet:
      which sheets make its height, outlines, how much to sand or fill.

      --sheets 10,6         thicknesses in hand, mm
      --axis AXIS           way from the first layer to the last: x, y, z, -x,
                            -y, -z or a direction as 1,0,2; default z
      --rule larger         default: each layer holds all of the solid between
                            its faces, foam is only sanded off
      --rule middle|smaller section half way up; or what all sections have in
                            common, hollows are only filled
      --seat bottom         default: what the sheets are too high or too low
                            lies over the top; middle: half and half; top
      --dowel MM            two dowels through as many layers as have room
      --core-hole MM        hole for a pipe through all layers that have room;
                            --core-at X,Y: where, across the axis
      --clearance MM        how much wider holes are, default 0.3
      --hole-margin MM      foam left round a hole, default 5
      --wall MM             hollow layers with a wall so thick; --open bottom,
                            top or both: where the hollow runs out
      --unit, --size        as for make
      --json                every outline and figure
      --out DIR             stack.json, stack.svg (layers, true size) and
                            stack-sections.svg (cut along the axis)

  node dist/cli.js core --pipe NAME|--diameter MM --length MM [options]
  node dist/cli.js core --list [--json]
      A pipe or rod built up with foam to a profile: wraps layer on layer, a
      skin, staves, wound strips and what sits on it; --list gives the pipes.

      --pipe NAME           outside diameter by a standard; or --diameter MM
      --length MM           from end to end, caps included
      --profile 0:20,300:24 length:radius in mm; ~ after one goes on smoothly
      --sheets 10,6,2       thicknesses in hand, mm; --sheet-size 1000x2000
      --rule sand           default: foam stands proud everywhere; fill:
                            nowhere; middle: between the two
      --neutral SHARE       where a wrap keeps its length, 0 (back) to 1 (face)
      --wrap-price N        one more wrap counts like so many cm³ of sanding,
                            default 10
      --seam-turn DEG       how far each seam is turned from the one
                            beneath, 60 to 300, default 137.5
      --skin MM             a thin sheet over all: cylinders and cones
      --staves 300-350=8,10 from and to, how many, their sheet; may be repeated
      --wind width=25,pitch=22
                            a wound strip, may be repeated; pitch, overlap or
                            gap, from, to, thick, neutral, starts, hand, keep,
                            cut, crossed
      --place head=700-860  what sits on the core, or with ,foam on the foam;
                            may be repeated
      --start-cap 10        discs of sheet at an end, 10x2, or bought=5; the
                            other with --end-cap
      --glue-room MM        between the core and what slides on it, default 0.3
      --json                every outline and figure
      --out DIR             core.json, core-pieces.svg and core-side.svg

  node dist/cli.js artwork FILE.svg|png|jpg [--out DIR] [options]
      Reads flat artwork: pieces by their groups, with areas, holes and lengths,
      and what is open, crosses or is drawn twice. Writes artwork.json into DIR.

      --width MM            true width over all lines
      --known A,B=MM        true length between two named shapes, or two points
                            in numbers of the file, as 0,0,50,0=120
      --deviation MM        how far straight parts may be from curves,
                            default 0.05
      --close MM            join open ends no farther apart than this
      --regularise MM       make circles, arcs and straight lines of what is
                            nearly so; lines move no farther than this
      --symmetric MM        make closed lines that are nearly symmetric
                            exactly so, turned or mirrored; as far at most
      --strokes WAY         centre (default): the line itself; outline: what
                            the stroke covers
                            Of a picture, places count px from its upper left
                            corner, down; beside --width, --known and others:
      --height MM           true height over all lines; --dpi N: px to the inch.
                            Else the density in the file is taken, and told
      --square CORNERS=WxH  set a photograph straight: four corners of a
                            rectangle, upper left first, clockwise, as
                            10,12,410,20,400,310,8,300=210x297
      --place X,Y=X,Y       or by places in px and where they are in mm, y up;
                            four or more, repeated
      --check X,Y,X,Y=MM    a length to hold the result against, repeated
      --threshold PCT       grey between dark and light, 0 black to 100 white;
                            default: found; --invert: shapes are the light
      --smooth PX           against noise: width of the bell it is seen through
      --specks MM2          leave out spots smaller than this, default 1
      --trace MM            how far curves may be from the picture's line,
                            default 0.1; half a pixel where it has no half tones
      --crop X,Y,X,Y        only within a box, or a figure of more corners
      --light WAY           drawn: greys blend as programs draw them; photo: as
                            light does, default where it is set straight
      --thickness MM        the pieces of foam it comes to, and the work
      --offset MM           areas reach so much farther; inward with a minus:
                            --offset=-2; --corners round (default) or sharp
      --inlay MM            pocket and insert with so much free all round;
                            --inlay-from pocket (default), insert or both;
                            --cut-width MM: of a cut that runs on its line
      --raised NxMM         a badge of N sheets, as 3x2mm; --edge square
                            (default), bevel,DEGREES or rounded,MM; --steps edge
                            (default: only sanded) or middle
      --repeat N|MMmm       so many, or so far apart, fitted to a whole count,
                            with one of:
      --round MM            on a strip round a barrel of this outside diameter;
                            --thickness, --neutral, --strip-width MM;
                            --spaced-on outside (default), flat or inside; --as
                            engrave (default) or placement
      --along FILE.svg      along its first line; --start MM, --end MM kept
                            free; --ends both (default), first or none; --stand
                            along (default) or upright
      --scatter FILE.svg    over its areas until no more fits; --least MM free
                            between any two, --edge-room MM at the edge, --vary
                            PCT in size, --turn DEGREES either way, --seed N
      --json                everything on the screen, arcs as arcs

  node dist/cli.js strip --out DIR [--thickness MM] [--paper NAME] [--margin MM]
      Writes test-strip.pdf: a strip to bend, from which the neutral fraction of
      a foam is found.

  --help, --version

Exit: 0 done · 1 the file or a choice is at fault (one sentence says why)
      2 wrong usage
`;
