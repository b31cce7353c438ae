//! What may speak against a wall? One row per code; codes never change meaning and are never reused.

use groundhold_finding::{Kind, Severity};

/// Embedment too shallow.
pub static EMBEDMENT_SHALLOW: Kind = Kind {
    code: "H-001",
    name: "embedment too shallow",
    severity: Severity::Stop,
    why: "The posts turn over in the ground: the wall leans, then lies down, usually in the first wet winter.",
    source: "Broms 1964, ASCE SM2 and SM3; IBC 2021 1807.3",
    when_wrong: "A soil far better than its class, shown by a test on site.",
};

/// Post overstressed.
pub static POST_OVERSTRESSED: Kind = Kind {
    code: "H-002",
    name: "post overstressed",
    severity: Severity::Stop,
    why: "The post breaks at the ground, where it is also wettest and rots first.",
    source: "EN 1995-1-1 6.1.6; NDS 3.3; AS 1720.1 3.2",
    when_wrong: "none known",
};

/// Board overstressed.
pub static BOARD_OVERSTRESSED: Kind = Kind {
    code: "H-003",
    name: "board overstressed",
    severity: Severity::Stop,
    why: "The board cracks between two posts and the soil comes through.",
    source: "EN 1995-1-1 6.1.6; NDS 3.3; AS 1720.1 3.2",
    when_wrong: "Soil that arches between the posts presses less on mid-span; nobody should count on it in wet ground.",
};

/// Board bows.
pub static BOARD_BOWS: Kind = Kind {
    code: "H-004",
    name: "board bows",
    severity: Severity::Watch,
    why: "Wet timber under lasting load keeps creeping: the wall bulges long before a board breaks, and looks failed.",
    source: "EN 1995-1-1 2.2.3 and 7.2 for creep; the limit is common practice, no source",
    when_wrong: "A limit stricter than the owner cares about.",
};

/// Boards hang on their screws.
pub static SCREWS_PULL: Kind = Kind {
    code: "H-005",
    name: "boards hang on their screws",
    severity: Severity::Stop,
    why: "Boards in front of the posts are pushed off them; screws in wet, end-split timber work loose one by one.",
    source: "EN 1995-1-1 8.7.2; boards behind the posts: common practice, no source",
    when_wrong: "Boards that are also let into the posts or held by a rail.",
};

/// Wall relies on its drain.
pub static DRAIN_BLOCKED: Kind = Kind {
    code: "H-006",
    name: "wall relies on its drain",
    severity: Severity::Watch,
    why: "Water to the ground behind about doubles the push. A drain that silts up or freezes takes the margin away.",
    source: "EN 1997-1:2004 9.4.2 and 9.6, from memory: where a wall depends on its drain, the drain is maintained or its failure is designed for",
    when_wrong: "Boards with open gaps on clean stone, which cannot hold water back.",
};

/// Bank slips under the wall.
pub static SLIP: Kind = Kind {
    code: "H-007",
    name: "bank slips under the wall",
    severity: Severity::Stop,
    why: "The whole bank slides on a curved surface below the posts and takes the wall with it.",
    source: "Bishop 1955, Géotechnique 5(1)",
    when_wrong: "A single section is searched; ground that changes along the wall is not seen.",
};

/// Load near the wall.
pub static LOAD_NEAR: Kind = Kind {
    code: "H-008",
    name: "load near the wall",
    severity: Severity::Watch,
    why: "A load behind pushes the wall as if it were higher. A load that comes later was not designed for.",
    source: "45° line and active wedge: common practice, no source",
    when_wrong: "A load carried below the wedge by its own deep footing.",
};

/// Fence on the wall.
pub static FENCE_ON_TOP: Kind = Kind {
    code: "H-009",
    name: "fence on the wall",
    severity: Severity::Watch,
    why: "Wind on a fence works on a long arm: it may ask more of the posts than the soil does.",
    source: "statics; wind pressure from the region",
    when_wrong: "An open fence of wires.",
};

/// Two walls act together.
pub static WALLS_CLOSE: Kind = Kind {
    code: "H-010",
    name: "two walls act together",
    severity: Severity::Ask,
    why: "The upper wall stands in the wedge of the lower one and loads it: together they act as one higher wall, and many places count them so.",
    source: "twice the lower wall's height apart: common practice, no source",
    when_wrong: "Walls on rock or with the upper one founded below the lower one's wedge.",
};

/// Cut near the wall.
pub static CUT_NEAR: Kind = Kind {
    code: "H-011",
    name: "cut near the wall",
    severity: Severity::Stop,
    why: "A trench or cut in front takes away the ground that holds the posts.",
    source: "passive wedge 45° − φ/2 from the underside of the post, Rankine 1857",
    when_wrong: "A narrow trench, backfilled and rammed the same day; say so to the person in charge.",
};

/// Footing above the 45 degree line.
pub static FOOTING_NEAR: Kind = Kind {
    code: "H-012",
    name: "footing above the 45 degree line",
    severity: Severity::Ask,
    why: "Digging below a line at 45° from a footing's edge lets it settle; its load also pushes the wall.",
    source: "45° line: common practice, no source",
    when_wrong: "A footing on rock or piles.",
};

/// Soil not to bear on.
pub static SOIL_POOR: Kind = Kind {
    code: "H-013",
    name: "soil not to bear on",
    severity: Severity::Stop,
    why: "Topsoil, made ground, peat and soft clay give way under the posts for years.",
    source: "common practice, no source; IBC 2021 1806.2 gives such soils no presumptive value",
    when_wrong: "Made ground that was placed in layers, compacted and tested.",
};

/// Ground behind too steep for its soil.
pub static SLOPE_STEEP: Kind = Kind {
    code: "H-014",
    name: "ground behind too steep for its soil",
    severity: Severity::Stop,
    why: "Ground steeper than its friction angle slides by itself; no pressure theory gives a push for it.",
    source: "Rankine 1857: no active state above φ",
    when_wrong: "Ground held by cohesion or roots for a while.",
};

/// Hole refused.
pub static HOLE_REFUSED: Kind = Kind {
    code: "H-015",
    name: "hole refused",
    severity: Severity::Stop,
    why: "A post that ends short of its depth is the first to lean, and takes its neighbours along.",
    source: "Broms 1964, ASCE SM2 and SM3",
    when_wrong: "Sound rock that a post can be fixed to by an engineer's detail.",
};

/// Methods disagree on depth.
pub static METHODS_DISAGREE: Kind = Kind {
    code: "H-016",
    name: "methods disagree on depth",
    severity: Severity::Note,
    why: "The depth depends on whose method is used. The basis says which decides; the others show how far off it may be.",
    source: "Broms 1964; IBC 2021 1807.3; rule of thumb: common practice, no source",
    when_wrong: "none known",
};

/// Whole courses miss the wanted top.
pub static TOP_MISSES: Kind = Kind {
    code: "H-017",
    name: "whole courses miss the wanted top",
    severity: Severity::Note,
    why: "Whole boards give only certain heights: the top comes out above the wanted level.",
    source: "arithmetic",
    when_wrong: "The extra height is wanted as a kerb.",
};

/// Ground behind above the top of the wall.
pub static SOIL_OVER_TOP: Kind = Kind {
    code: "H-018",
    name: "ground behind above the top of the wall",
    severity: Severity::Stop,
    why: "Soil spills over the top board and water runs down the face.",
    source: "common practice, no source",
    when_wrong: "A bank that starts at the very top on purpose; then raise the ground's level in the job.",
};

/// Top of the post moves.
pub static POST_MOVES: Kind = Kind {
    code: "H-019",
    name: "top of the post moves",
    severity: Severity::Watch,
    why: "The wall leans forward as the soil in front takes up the load; a lean of 1 in 50 is usually taken as a warning.",
    source: "Broms 1964, ASCE SM2 and SM3, for the movement; 1 in 50: common practice, no source",
    when_wrong: "A wall built with a lean into the bank.",
};

/// No drain behind the wall.
pub static NO_DRAIN: Kind = Kind {
    code: "H-020",
    name: "no drain behind the wall",
    severity: Severity::Ask,
    why: "Most walls that fail were never drained.",
    source: "EN 1997-1:2004 9.6, from memory",
    when_wrong: "Clean gravel to the face and open gaps on ground that drains by itself.",
};

/// Holes close together.
pub static HOLES_CLOSE: Kind = Kind {
    code: "H-021",
    name: "holes close together",
    severity: Severity::Watch,
    why: "Posts closer than about three hole diameters press on the same ground and carry less each than alone.",
    source: "three diameters: Broms 1964 discussion, from memory",
    when_wrong: "Posts in rock.",
};

/// Not checked.
pub static CANNOT_CHECK: Kind = Kind {
    code: "H-022",
    name: "not checked",
    severity: Severity::Stop,
    why: "A method could not be run on this wall: nothing is known about that check.",
    source: "none",
    when_wrong: "The wall is outside the method and an engineer checks it another way.",
};

/// Screw too short.
pub static SCREW_SHORT: Kind = Kind {
    code: "H-023",
    name: "screw too short",
    severity: Severity::Watch,
    why: "A screw that hardly enters the post does not hold the board while the soil is filled in.",
    source: "EN 1995-1-1 8.7.2 (3), least penetration of six diameters, from memory",
    when_wrong: "none known",
};

/// Higher than guides for its kind.
pub static RETAINS_MUCH: Kind = Kind {
    code: "H-024",
    name: "higher than guides for its kind",
    severity: Severity::Ask,
    why: "Guides for low walls stop at 1.0 m to 1.5 m retained, whatever they are built of; above, an engineer designs the wall.",
    source: "Timber Queensland data sheet 8 (2014), 1 m; New Zealand Building Act 2004 Schedule 1, 1.5 m",
    when_wrong: "A wall designed by a licensed engineer.",
};

/// A change that no post takes.
pub static CHANGE_FITS_NOTHING: Kind = Kind {
    code: "H-040",
    name: "change of a post fits nothing",
    severity: Severity::Watch,
    why: "What was decided on site about one post is left out of the plan: it is built as if nobody had decided anything.",
    source: "common practice, no source",
    when_wrong: "The wall was made shorter or its posts were spaced anew on purpose; then take the change out of the job.",
};

/// A post that stands is too short for the boards beside it.
pub static BUILT_POST_SHORT: Kind = Kind {
    code: "H-041",
    name: "built post too short",
    severity: Severity::Stop,
    why: "Boards above the top of their post have nothing to lean on: the soil pushes them over.",
    source: "geometry; common practice, no source",
    when_wrong: "The post was lengthened by a splice that an engineer designed; then write down its new top.",
};

/// Wall slides.
pub static WALL_SLIDES: Kind = Kind {
    code: "H-025",
    name: "wall slides",
    severity: Severity::Stop,
    why: "The wall is pushed forward on its base; it never comes back.",
    source: "EN 1997-1:2004 6.5.3; IBC 2018 1807.2.3",
    when_wrong: "Ground in front that stays for good would hold too; it is not counted on.",
};

/// Wall turns over.
pub static WALL_OVERTURNS: Kind = Kind {
    code: "H-026",
    name: "wall turns over",
    severity: Severity::Stop,
    why: "The push turns the wall over its toe.",
    source: "rigid-body equilibrium; IBC 2018 1807.2.3",
    when_wrong: "none known",
};

/// Resultant leaves the middle of the base.
pub static OUT_OF_MIDDLE: Kind = Kind {
    code: "H-027",
    name: "resultant leaves the middle of the base",
    severity: Severity::Ask,
    why: "The heel lifts off and the toe presses the harder: the wall leans forward over the years.",
    source: "middle third: Navier, as in Das 2011 chapter 8; a third of the width: EN 1997-1:2004 6.5.4",
    when_wrong: "A base on rock.",
};

/// Ground under the base gives way.
pub static GROUND_PRESSED: Kind = Kind {
    code: "H-028",
    name: "ground under the base gives way",
    severity: Severity::Stop,
    why: "The toe sinks and the wall leans until it falls.",
    source: "EN 1997-1:2004 Annex D, from memory",
    when_wrong: "Ground better than its class, shown by a test on site.",
};

/// Course slides on the one below.
pub static JOINT_SLIDES: Kind = Kind {
    code: "H-029",
    name: "course slides on the one below",
    severity: Severity::Stop,
    why: "The wall bulges: the courses above a joint move out together.",
    source: "friction in a dry joint: common practice, no source",
    when_wrong: "Courses locked by throughs or tied baskets.",
};

/// Joint opens at its back.
pub static JOINT_OPENS: Kind = Kind {
    code: "H-030",
    name: "joint opens at its back",
    severity: Severity::Ask,
    why: "The back of the joint opens, fines wash in, and it never closes again: the wall bulges.",
    source: "middle third: Navier, as in Das 2011 chapter 8",
    when_wrong: "Mortar that carries tension; nobody should count on it outdoors.",
};

/// Wall crushed in a joint.
pub static CRUSHED: Kind = Kind {
    code: "H-031",
    name: "wall crushed in a joint",
    severity: Severity::Stop,
    why: "Mortar or stone breaks at the front of a joint.",
    source: "EN 1996-1-1:2005 6.1, from memory",
    when_wrong: "none known",
};

/// Base within reach of frost.
pub static BASE_ABOVE_FROST: Kind = Kind {
    code: "H-032",
    name: "base within reach of frost",
    severity: Severity::Watch,
    why: "Soil that heaves lifts the base in winter and lets it down softened in spring; each year the wall leans a little more.",
    source: "450 mm in ground that heaves: common practice, no source; local frost depth decides",
    when_wrong: "A dry stone or basket wall that may move a little.",
};

/// A situation that need not be met.
pub static SITUATION: Kind = Kind {
    code: "H-042",
    name: "would not hold in another situation",
    severity: Severity::Watch,
    why: "The job does not ask for this situation to be met, and the highest place would fail in it.",
    source: "EN 1997-1:2004 2.2: situations that may come are looked at; which must be met is the owner's and the law's",
    when_wrong: "That situation cannot come here.",
};

/// Steel post overstressed.
pub static STEEL_OVERSTRESSED: Kind = Kind {
    code: "H-054",
    name: "steel post overstressed",
    severity: Severity::Stop,
    why: "The post bends for good, or folds: the wall leans and does not come back.",
    source: "EN 1993-1-1:2005 6.2; ANSI/AISC 360-16 F2, G2",
    when_wrong: "none known",
};

/// Flange bends under the panel.
pub static FLANGE_BENDS: Kind = Kind {
    code: "H-055",
    name: "flange bends under the panel",
    severity: Severity::Stop,
    why: "The flange opens outwards at the lowest panel and lets it slip out; rust makes thin flanges thinner.",
    source: "statics; lever from the root as in EN 1993-1-8:2005 6.2.4",
    when_wrong: "Panels wedged or grouted so that they press close to the web.",
};

/// Panel sits too little on its flange.
pub static SEAT_NARROW: Kind = Kind {
    code: "H-056",
    name: "panel sits too little on its flange",
    severity: Severity::Stop,
    why: "A panel that is cut a little short, or a post that stands a little off, and the panel drops out; or its end is crushed.",
    source: "least seat by common practice, no source; EN 1995-1-1 6.1.5; NDS 3.10",
    when_wrong: "Panels that are held by a cleat or grouted in.",
};

/// Panel overstressed.
pub static PANEL_OVERSTRESSED: Kind = Kind {
    code: "H-057",
    name: "panel overstressed",
    severity: Severity::Stop,
    why: "The panel cracks between two posts and the soil comes through.",
    source: "EN 1992-1-1 6.1, 6.2; what its maker states",
    when_wrong: "Soil that arches between the posts presses less on mid-span; nobody should count on it in wet ground.",
};

/// Panels that do not come out whole.
pub static PANELS_CUT: Kind = Kind {
    code: "H-058",
    name: "panels that do not come out whole",
    severity: Severity::Watch,
    why: "A cast panel that is sawn loses cover at its end and sometimes its anchored steel; it is ordered to its length, or the line is moved.",
    source: "common practice, no source",
    when_wrong: "Panels that their maker allows to be cut.",
};

/// Corner post by a fabricator.
pub static CORNER_POST: Kind = Kind {
    code: "H-059",
    name: "corner post by a fabricator",
    severity: Severity::Watch,
    why: "Panels meet the corner post from two directions: it needs plates or channels welded on to hold both, before it is galvanised.",
    source: "common practice, no source",
    when_wrong: "none known",
};

/// Tie pulls out of the bank.
pub static TIE_PULLS: Kind = Kind {
    code: "H-060",
    name: "tie pulls out of the bank",
    severity: Severity::Stop,
    why: "The cross piece moves through the soil and the wall leans out, course by course.",
    source: "Rankine's passive less active pressure over the piece itself; NAVFAC DM 7.02, chapter 3, for wanted factors",
    when_wrong: "none known",
};

/// Tie ends in the sliding wedge.
pub static TIE_SHORT: Kind = Kind {
    code: "H-061",
    name: "tie ends in the sliding wedge",
    severity: Severity::Stop,
    why: "A cross piece that lies within the soil that slides with the wall holds nothing.",
    source: "NAVFAC DM 7.02, chapter 3, wedges of wall and anchor; from memory",
    when_wrong: "Ground that is far better than its class.",
};

/// Tie or its screws overstressed.
pub static TIE_TEARS: Kind = Kind {
    code: "H-062",
    name: "tie or its screws overstressed",
    severity: Severity::Stop,
    why: "The tie tears at its head or the cross piece is pulled off its end.",
    source: "EN 1995-1-1 6.1.2, 8.2; NDS 3.8, 12.3",
    when_wrong: "none known",
};

/// Courses part.
pub static COURSES_PART: Kind = Kind {
    code: "H-063",
    name: "courses part",
    severity: Severity::Stop,
    why: "A course is pushed off the one below, or the courses above turn over: the face bulges between its ties.",
    source: "statics; EN 1995-1-1 8.2, 8.7; NDS 12.2, 12.3",
    when_wrong: "none known",
};

/// Timber of a course overstressed.
pub static COURSE_OVERSTRESSED: Kind = Kind {
    code: "H-064",
    name: "timber of a course overstressed",
    severity: Severity::Stop,
    why: "The timber that carries the ties cracks between two of them and the face comes through.",
    source: "EN 1995-1-1 6.1.6; NDS 3.3; AS 1720.1 3.2",
    when_wrong: "Soil that arches between the ties; nobody should count on it in wet ground.",
};

/// Timber of a course bows.
pub static COURSE_BOWS: Kind = Kind {
    code: "H-065",
    name: "timber of a course bows",
    severity: Severity::Watch,
    why: "Wet timber under lasting load keeps creeping: the face bulges between its ties long before it breaks.",
    source: "EN 1995-1-1 2.2.3 and 7.2 for creep; the limit is common practice, no source",
    when_wrong: "A limit stricter than the owner cares about.",
};

/// Screws between courses too short.
pub static RODS_SHORT: Kind = Kind {
    code: "H-066",
    name: "screws between courses too short",
    severity: Severity::Watch,
    why: "A screw that hardly reaches into the course below holds neither push nor lift.",
    source: "EN 1995-1-1 8.7.1; NDS 12.1.5: six diameters",
    when_wrong: "none known",
};

/// Stem overstressed.
pub static STEM_BREAKS: Kind = Kind {
    code: "H-081",
    name: "stem overstressed",
    severity: Severity::Stop,
    why: "The stem breaks at its foot, all at once where it has little steel.",
    source: "EN 1992-1-1:2004 6.1 and 6.2.2; EN 1996-1-1:2005 6.6 and 6.7; ACI 318-19 22; TMS 402-16 8.3",
    when_wrong: "none known",
};

/// Footing overstressed.
pub static FOOTING_BREAKS: Kind = Kind {
    code: "H-082",
    name: "footing overstressed",
    severity: Severity::Stop,
    why: "The toe or the heel cracks off the footing and the wall leans.",
    source: "EN 1992-1-1:2004 6.1 and 6.2.2; ACI 318-19 13 and 22",
    when_wrong: "none known",
};

/// Too little steel or cover.
pub static STEEL_SCANT: Kind = Kind {
    code: "H-083",
    name: "too little steel or cover",
    severity: Severity::Stop,
    why: "With less steel than the least the first crack is the last; steel that lies too near the face rusts and bursts it.",
    source: "EN 1992-1-1:2004 9.2.1.1 and 4.4.1; EN 1996-1-1:2005 8.2.3; ACI 318-19 20.5.1.3 and 24.4; from memory",
    when_wrong: "Cover of stainless steel.",
};

/// Starter bars too short in the footing.
pub static ANCHORAGE_SHORT: Kind = Kind {
    code: "H-084",
    name: "starter bars too short in the footing",
    severity: Severity::Stop,
    why: "The bars of the stem are pulled out of the footing before they carry what they can.",
    source: "EN 1992-1-1:2004 8.4; ACI 318-19 25.4.2",
    when_wrong: "A welded or hooked end that was designed for itself.",
};

/// Grid too weak.
pub static GRID_TEARS: Kind = Kind {
    code: "H-085",
    name: "grid too weak",
    severity: Severity::Stop,
    why: "A grid that is loaded beyond its strength for good stretches for years, then tears: the face leans and falls.",
    source: "FHWA-NHI-10-024 (2009) 3.5 and 4.4.7",
    when_wrong: "A grid with test reports of its own that show more.",
};

/// Grid too short.
pub static GRID_PULLS_OUT: Kind = Kind {
    code: "H-086",
    name: "grid too short",
    severity: Severity::Stop,
    why: "A layer that hardly reaches behind the slip wedge is pulled along with it.",
    source: "FHWA-NHI-10-024 (2009) 3.4 and 4.4.7",
    when_wrong: "none known",
};

/// Grid slips from between the blocks.
pub static GRID_LEAVES_BLOCKS: Kind = Kind {
    code: "H-087",
    name: "grid slips from between the blocks",
    severity: Severity::Stop,
    why: "The face comes away from the fill that the grid holds.",
    source: "FHWA-NHI-10-024 (2009) 4.4.7 and Appendix B; ASTM D6638",
    when_wrong: "A block and a grid that were tested together and hold more: put in what the test says.",
};

/// Fill slides on a layer of grid.
pub static GRID_LAYER_SLIDES: Kind = Kind {
    code: "H-088",
    name: "fill slides on a layer of grid",
    severity: Severity::Stop,
    why: "All that stands on the layer is pushed out on it, as on a table.",
    source: "FHWA-NHI-10-024 (2009) 4.4.6",
    when_wrong: "none known",
};

/// Grid and blocks not tested together.
pub static GRID_UNTESTED: Kind = Kind {
    code: "H-089",
    name: "grid and blocks not tested together",
    severity: Severity::Ask,
    why: "How hard dry blocks grip a grid is known from tests of this block with this grid only; what is taken here is a low figure from memory.",
    source: "FHWA-NHI-10-024 (2009) Appendix B; ASTM D6638",
    when_wrong: "none known",
};

/// Earthquake checked in part.
pub static SHAKEN_IN_PART: Kind = Kind {
    code: "H-045",
    name: "earthquake checked in part",
    severity: Severity::Ask,
    why: "Shaken ground also holds less, and loose wet sand may flow.",
    source: "EN 1998-5:2004 7.3.2 and 4.1.4, from memory",
    when_wrong: "none known",
};

/// How timber ages is not known.
pub static AGE_UNKNOWN: Kind = Kind {
    code: "H-043",
    name: "how long the timber lasts is not known",
    severity: Severity::Ask,
    why: "A later year can only be looked at where somebody says how durable the timber is, or for how long it was treated.",
    source: "EN 350:2016 for classes; BS 8417:2011 for service lives of treatments; from memory",
    when_wrong: "none known",
};

/// Timber used up in a year.
pub static USED_UP: Kind = Kind {
    code: "H-044",
    name: "timber used up in a later year",
    severity: Severity::Note,
    why: "Posts rot at the ground line, out of sight; the wall leans, then falls.",
    source: "Wang, Leicester and Nguyen, Decay in Ground Contact, 2008, from memory; a guide for inspection, not a promise",
    when_wrong: "Posts in concrete that is dished at the top so that water stands round them go sooner.",
};

/// All kinds of finding of this crate.
pub static FINDINGS: &[&Kind] = &[
    &EMBEDMENT_SHALLOW,
    &POST_OVERSTRESSED,
    &BOARD_OVERSTRESSED,
    &BOARD_BOWS,
    &SCREWS_PULL,
    &DRAIN_BLOCKED,
    &SLIP,
    &LOAD_NEAR,
    &FENCE_ON_TOP,
    &WALLS_CLOSE,
    &CUT_NEAR,
    &FOOTING_NEAR,
    &SOIL_POOR,
    &SLOPE_STEEP,
    &HOLE_REFUSED,
    &METHODS_DISAGREE,
    &TOP_MISSES,
    &SOIL_OVER_TOP,
    &POST_MOVES,
    &NO_DRAIN,
    &HOLES_CLOSE,
    &CANNOT_CHECK,
    &SCREW_SHORT,
    &RETAINS_MUCH,
    &WALL_SLIDES,
    &WALL_OVERTURNS,
    &OUT_OF_MIDDLE,
    &GROUND_PRESSED,
    &JOINT_SLIDES,
    &JOINT_OPENS,
    &CRUSHED,
    &BASE_ABOVE_FROST,
    &CHANGE_FITS_NOTHING,
    &BUILT_POST_SHORT,
    &SITUATION,
    &AGE_UNKNOWN,
    &USED_UP,
    &SHAKEN_IN_PART,
    &STEEL_OVERSTRESSED,
    &FLANGE_BENDS,
    &SEAT_NARROW,
    &PANEL_OVERSTRESSED,
    &PANELS_CUT,
    &CORNER_POST,
    &TIE_PULLS,
    &TIE_SHORT,
    &TIE_TEARS,
    &COURSES_PART,
    &COURSE_OVERSTRESSED,
    &COURSE_BOWS,
    &RODS_SHORT,
    &STEM_BREAKS,
    &FOOTING_BREAKS,
    &STEEL_SCANT,
    &ANCHORAGE_SHORT,
    &GRID_TEARS,
    &GRID_PULLS_OUT,
    &GRID_LEAVES_BLOCKS,
    &GRID_LAYER_SLIDES,
    &GRID_UNTESTED,
];
