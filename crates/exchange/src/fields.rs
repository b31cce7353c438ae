//! Every field of a job file in one table: its words, what it holds, whether it must be there, least and most.
//!
//! From a row follow the check, the message, the hint after a slip of the finger, and the JSON Schema for editors.

use std::sync::LazyLock;

use groundhold_hold::{self as hold, Entry, SYSTEM_KEYS, SYSTEMS};

/// What a field holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Holds {
    /// Text.
    Text,
    /// A short id without blanks.
    Id,
    /// A bare number.
    Number,
    /// A whole number.
    Whole,
    /// true or false.
    Flag,
    /// A quantity in text with its unit; least and most are in its SI unit.
    Quantity(&'static str),
    /// A point: two lengths.
    Point,
    /// A list of points.
    Points,
    /// A list of points, with tables where it bends.
    Line,
    /// A list of names.
    Names,
    /// A list of lists of names.
    NameLists,
    /// One of these words.
    OneOf(&'static [&'static str]),
    /// A date and time.
    Moment,
    /// A table of this kind.
    Table(&'static str),
    /// A list of tables of this kind.
    Tables(&'static str),
    /// The table of sizes of the system that the wall is built in.
    Sizes,
    /// A list of lengths with their units.
    Lengths,
    /// Something that its reader explains itself.
    Own(&'static str),
}

/// One field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// The kind of table it stands in.
    pub table: &'static str,
    /// Its key.
    pub key: &'static str,
    /// What it holds.
    pub holds: Holds,
    /// Whether it must be there.
    pub must: bool,
    /// Least value, in SI units.
    pub least: f64,
    /// Most value, in SI units.
    pub most: f64,
    /// Words for people.
    pub words: &'static str,
}

const ANY: f64 = f64::INFINITY;

const fn field(table: &'static str, key: &'static str, holds: Holds, words: &'static str) -> Field {
    Field { table, key, holds, must: false, least: -ANY, most: ANY, words }
}

impl Field {
    const fn must(mut self) -> Field {
        self.must = true;
        self
    }
    const fn within(mut self, least: f64, most: f64) -> Field {
        self.least = least;
        self.most = most;
        self
    }
}

const LENGTH: Holds = Holds::Quantity("length");
const LEVEL: Holds = Holds::Quantity("level");
const SLOPE: Holds = Holds::Quantity("slope");
const SHARE: Holds = Holds::Quantity("share");
const PRESSURE: Holds = Holds::Quantity("pressure");

/// Farthest a coordinate or a length may reach: ten kilometres.
const FAR: f64 = 10_000.0;

/// The table, but for the sizes of wall systems, which stand with their systems.
static OWN: &[Field] = &[
    field("", "schema", Holds::Whole, "version of the file's form").must().within(1.0, 1.0),
    field("", "job", Holds::Table("job"), "what the job is"),
    field("", "measure", Holds::Table("measure"), "how the ground was measured").must(),
    field("", "ground", Holds::Table("ground"), "turf, topsoil and soil"),
    field("", "shape", Holds::Table("shape"), "batters"),
    field("", "pad", Holds::Tables("pad"), "level areas"),
    field("", "wall", Holds::Tables("wall"), "walls"),
    field("", "steps", Holds::Tables("steps"), "flights of steps"),
    field("", "ramp", Holds::Tables("ramp"), "ramps"),
    field("", "near", Holds::Tables("near"), "what lies or stands near"),
    field("", "standing", Holds::Tables("standing"), "walls that stand already, as found"),
    field("", "load", Holds::Tables("load"), "loads on finished ground"),
    field("", "drain", Holds::Table("drain"), "rain, outlet and drain fill"),
    field("", "order", Holds::Table("order"), "prices, waste, tax"),
    field("", "record", Holds::Tables("record"), "what happened on site"),
    // ── job
    field("job", "name", Holds::Text, "what the job is called"),
    field("job", "place", Holds::Text, "where it is"),
    field("job", "client", Holds::Text, "for whom"),
    field("job", "region", Holds::Text, "code of the region pack"),
    field("job", "basis", Holds::Text, "design basis"),
    field("job", "currency", Holds::Text, "currency of the prices"),
    field("job", "units", Holds::OneOf(&["metric", "feet"]), "units for people"),
    field("job", "demo", Holds::Flag, "true where the data are invented"),
    // ── measure
    field("measure", "datum", Holds::Table("datum"), "the station with a known level"),
    field("measure", "pegs", Holds::Own("a table of pegs, each with two lengths"), "known pegs"),
    field("measure", "book", Holds::Text, "file of the level book"),
    field("measure", "positions", Holds::Text, "file of offsets and tapes"),
    field("measure", "spots", Holds::Text, "file of points with position and level"),
    field("measure", "close", Holds::Table("close"), "tolerance of the misclose"),
    field("measure", "break_lines", Holds::NameLists, "lines where the ground changes slope, by point"),
    field("measure", "boundary", Holds::Names, "outline of the survey, by point"),
    field("measure", "slope", Holds::Table("slope"), "a slope in two numbers, where there is no survey"),
    field("datum", "peg", Holds::Id, "the peg that carries the datum").must(),
    field("datum", "level", LEVEL, "its level").must().within(-500.0, 9000.0),
    field("datum", "note", Holds::Text, "how to find it again"),
    field("close", "misclose", LENGTH, "misclose allowed").must().within(0.0005, 1.0),
    field("close", "per", Holds::OneOf(&["set-up"]), "what it is allowed for"),
    field("slope", "fall", LENGTH, "height difference").must().within(0.001, 200.0),
    field("slope", "over", LENGTH, "plan length over which it falls").must().within(0.1, FAR),
    field("slope", "width", LENGTH, "width along the contour").within(0.1, FAR),
    field("slope", "foot", LEVEL, "level of the foot").within(-500.0, 9000.0),
    // ── ground
    field("ground", "turf", LENGTH, "thickness of turf").within(0.0, 0.3),
    field("ground", "topsoil", LENGTH, "thickness of topsoil under the turf").within(0.0, 2.0),
    field("ground", "soil", Holds::Text, "class of the soil, told by hand"),
    field("ground", "note", Holds::Text, "how it was told"),
    field("ground", "water", LENGTH, "depth of standing water below the surface").within(0.0, 50.0),
    field("ground", "frost", LENGTH, "how deep the ground freezes here, as the local office tells it").within(0.0, 3.0),
    field(
        "ground",
        "sieves",
        Holds::Own(
            "a list of sieves, each with its opening and what passes, such as [[\"0.075 mm\", \"30 %\"], [\"4.75 mm\", \"96 %\"]]",
        ),
        "sieve test of the soil",
    ),
    field("ground", "moisture", SHARE, "moisture as found, water over dry soil").within(0.0, 2.0),
    field("ground", "rock", Holds::Tables("probe"), "probes down to rock"),
    field("probe", "at", Holds::Point, "where it was probed").must(),
    field("probe", "depth", LENGTH, "how deep rock was met").must().within(0.0, 30.0),
    field(
        "ground",
        "must_meet",
        Holds::Names,
        "situations that every wall must meet besides every day, wind and water",
    ),
    field("ground", "earthquake", Holds::Table("earthquake"), "how hard the ground shakes"),
    field("earthquake", "horizontal", SHARE, "steady push sideways, as a share of gravity").must().within(0.0, 1.0),
    field("earthquake", "source", Holds::Text, "who says so").must(),
    field("ground", "measured", Holds::Table("measured"), "parameters that somebody measured"),
    field("measured", "unit_weight", Holds::Quantity("unit weight"), "unit weight").within(8_000.0, 27_000.0),
    field("measured", "friction", Holds::Quantity("angle"), "effective friction angle").within(0.0, 0.9),
    field("measured", "cohesion", PRESSURE, "effective cohesion").within(0.0, 200_000.0),
    field("measured", "undrained", PRESSURE, "undrained strength").within(0.0, 500_000.0),
    field("measured", "source", Holds::Text, "who says so").must(),
    // ── shape
    field("shape", "batter", Holds::Table("batter"), "slopes of banks without a wall"),
    field("batter", "bench", Holds::Table("bench"), "level steps that break a high bank"),
    field("bench", "every", LENGTH, "height of bank between two benches").must().within(0.1, 20.0),
    field("bench", "width", LENGTH, "its width").must().within(0.1, 5.0),
    field("bench", "fall", SLOPE, "its fall away from the bank above").within(0.0, 0.2),
    field("batter", "cut", SLOPE, "in cut, rise over run").within(0.05, 5.0),
    field("batter", "fill", SLOPE, "in fill, rise over run").within(0.05, 2.0),
    field("pad", "id", Holds::Id, "its id").must(),
    field("pad", "name", Holds::Text, "what people call it"),
    field("pad", "corners", Holds::Line, "its corners in order").must(),
    field("pad", "level", Holds::Own("a level such as 101.080 m, or the word balance or cheapest"), "finished level")
        .must(),
    field(
        "pad",
        "between",
        Holds::Own("a list of two levels, the lower first, such as [\"100.8 m\", \"101.3 m\"]"),
        "limits of a level that is solved for",
    ),
    field(
        "pad",
        "fall",
        Holds::Own(
            "a slope and a direction, such as \"1:80 toward south\" or \"1:80 toward 135 deg\" clockwise from north",
        ),
        "fall for drainage",
    ),
    field("pad", "apron", LENGTH, "level strip round it").within(0.0, 10.0),
    field("pad", "build_up", LENGTH, "stone and paving under the finished level").within(0.0, 1.0),
    field("pad", "batter", Holds::Table("batter"), "banks from its edge, where they differ from those of the job"),
    // ── walls
    field("wall", "id", Holds::Id, "its id").must(),
    field("wall", "name", Holds::Text, "what people call it"),
    field("wall", "system", Holds::OneOf(&SYSTEM_KEYS), "wall system; left out, the first of them"),
    field("wall", "line", Holds::Line, "its line in plan"),
    field("wall", "alongside", Holds::Table("alongside"), "in place of a line: that of another wall, moved"),
    field("alongside", "wall", Holds::Id, "the other wall").must(),
    field("alongside", "by", LENGTH, "how far behind it; negative in front of it").must().within(-100.0, 100.0),
    field(
        "wall",
        "ends",
        Holds::Own("two of the words fade, at, return, return 1.2 m, post 200 mm"),
        "how each end is found",
    ),
    field("wall", "retains", Holds::OneOf(&["left", "right"]), "side of the ground it holds").must(),
    field(
        "wall",
        "top",
        Holds::Own(
            "{ follow = \"ground\", above = … }, { at = … }, { above = \"P1\", by = … }, { from = …, to = … }, \
             { step = …, above = …, least = … } or { line = [[chainage, level], …] }",
        ),
        "its top",
    )
    .must(),
    field("wall", "spec", Holds::Sizes, "sizes, as the system wants them"),
    field("wall", "part", Holds::Tables("part"), "stretches in which it is made otherwise"),
    field("part", "from", LENGTH, "from this chainage along its line as given").must().within(0.0, FAR),
    field("part", "to", LENGTH, "to this one").must().within(0.0, FAR),
    field("part", "system", Holds::OneOf(&SYSTEM_KEYS), "wall system there; left out, that of the wall"),
    field("part", "spec", Holds::Sizes, "sizes there").must(),
    field("wall", "fence", Holds::Table("fence"), "a fence on top"),
    field("wall", "beside", Holds::OneOf(&["food bed", "play area"]), "what is grown or done right beside it"),
    field("wall", "change", Holds::Tables("change"), "posts that differ by decision"),
    field("fence", "height", LENGTH, "height above the wall's top").must().within(0.1, 4.0),
    field("fence", "wind", PRESSURE, "wind pressure on it").must().within(50.0, 5_000.0),
    field("fence", "solid", SHARE, "share of the face that is solid").within(0.05, 1.0),
    field("fence", "source", Holds::Text, "where the wind pressure is from"),
    field("change", "chainage", LENGTH, "where along the wall").must().within(0.0, FAR),
    field("change", "hole_diameter", LENGTH, "diameter of the hole there").within(0.1, 2.0),
    field("change", "hole_depth", LENGTH, "depth of the hole there").within(0.1, 6.0),
    field("change", "extra", Holds::Flag, "true for a post that the layout would not put there"),
    field("change", "left_out", Holds::Flag, "true for a post of the layout that is left out"),
    // ── steps and ramps
    field("steps", "id", Holds::Id, "its id").must(),
    field("steps", "from", Holds::Point, "somewhere below").must(),
    field("steps", "to", Holds::Id, "the pad it leads to").must(),
    field("steps", "width", LENGTH, "clear width").must().within(0.3, 10.0),
    field("steps", "going", LENGTH, "going; left out, it is chosen").within(0.15, 2.0),
    field("ramp", "id", Holds::Id, "its id").must(),
    field("steps", "turns", Holds::Points, "middles of the landings on which it turns, from the pad down"),
    field("ramp", "path", Holds::Line, "middle line from the bottom up").must(),
    field("ramp", "to", Holds::Id, "the pad it leads to").must(),
    field("ramp", "width", LENGTH, "width").must().within(0.3, 10.0),
    field("ramp", "steepest", SLOPE, "steepest that will do").within(0.005, 0.5),
    field("ramp", "crossfall", Holds::Own("a slope and a side, such as \"1:40 to left\""), "fall across"),
    field("ramp", "landings", Holds::Table("landings"), "level landings on the way"),
    field("ramp", "within", Holds::Points, "outline within which it may be led to and fro"),
    field("landings", "every", LENGTH, "largest rise between two").must().within(0.05, 10.0),
    field("landings", "length", LENGTH, "length of each").must().within(0.1, 20.0),
    // ── near and load
    field("near", "id", Holds::Id, "its id").must(),
    field("near", "kind", Holds::Text, "what it is").must(),
    field("near", "at", Holds::Point, "where it stands"),
    field("near", "line", Holds::Points, "where it runs"),
    field("near", "depth", LENGTH, "depth of its top or of its footing").within(0.0, 30.0),
    field("near", "clear", LENGTH, "distance to keep to each side").within(0.0, 100.0),
    field("near", "trunk", LENGTH, "diameter of the trunk at breast height").within(0.02, 5.0),
    field("near", "source", Holds::Text, "where that is known from"),
    field("near", "level", LEVEL, "its finished level, for a driveway or a path that is met").within(-500.0, 9000.0),
    field("near", "retained", LENGTH, "how much a wall that stands there holds").within(0.05, 20.0),
    field("near", "drained", Holds::Flag, "whether stone with a pipe or weep holes lies behind that wall"),
    field("near", "filter", Holds::Flag, "whether a filter or fabric keeps the soil out of that stone"),
    field("near", "age_days", Holds::Number, "age of that knowledge in days").within(0.0, 40_000.0),
    // ── walls that stand already
    field("standing", "id", Holds::Id, "its id").must(),
    field("standing", "name", Holds::Text, "what people call it"),
    field(
        "standing",
        "made",
        Holds::OneOf(&[
            "timber posts and boards",
            "dry stone",
            "mortared masonry",
            "mass concrete",
            "block",
            "gabion",
            "stacked timbers",
            "unknown",
        ]),
        "what it is made of",
    )
    .must(),
    field("standing", "line", Holds::Points, "its line in plan").must(),
    field("standing", "retains", Holds::OneOf(&["left", "right"]), "side of the ground it holds").must(),
    field("standing", "looked_at", Holds::Text, "the day on which it was measured"),
    field("standing", "height", LENGTH, "ground behind above the ground in front").must().within(0.05, 20.0),
    field("standing", "thickness", LENGTH, "front to back").within(0.02, 20.0),
    field("standing", "below", LENGTH, "its underside below the ground in front").within(0.0, 10.0),
    field(
        "standing",
        "post",
        Holds::Own("sizes in mm: along the wall, then front to back, such as \"100x100\""),
        "posts",
    ),
    field("standing", "spacing", LENGTH, "from post to post").within(0.1, 6.0),
    field("standing", "hole", LENGTH, "diameter of the concrete round a post").within(0.05, 2.0),
    field("standing", "soft", LENGTH, "how far a blade goes into every face of a post at the ground").within(0.0, 0.3),
    field("standing", "age", Holds::Number, "years since it was built").within(0.0, 2000.0),
    field("standing", "lean", LENGTH, "how far its top stands out; into the bank is negative").within(-5.0, 5.0),
    field("standing", "bulge", Holds::Table("bulge"), "how far it bellies out, and where"),
    field("bulge", "size", LENGTH, "how far").must().within(0.0, 2.0),
    field("bulge", "at", LENGTH, "how high above the ground in front").must().within(0.0, 20.0),
    field("standing", "crack", Holds::Tables("crack"), "cracks"),
    field("crack", "runs", Holds::OneOf(&["horizontal", "stepped", "vertical"]), "which way it runs").must(),
    field("crack", "width", LENGTH, "how wide it gapes").must().within(0.0, 1.0),
    field("standing", "weeps", Holds::OneOf(&["none", "blocked", "running"]), "holes that let water through"),
    field("standing", "filter", Holds::Flag, "whether a filter or fabric lies behind it"),
    field("standing", "wet", LENGTH, "how high its face is wet or stained").within(0.0, 20.0),
    field("standing", "above", Holds::Names, "what is above: load, vehicle, fence, wet ground, tree"),
    field("standing", "load", PRESSURE, "how heavy that is, where it was reckoned").within(0.0, 200_000.0),
    field("standing", "beneath", Holds::Names, "what was done below: dug away, trench"),
    field("standing", "dug", LENGTH, "how deep it was dug away").within(0.0, 10.0),
    field("standing", "note", Holds::Text, "in words"),
    field("standing", "replaced_by", Holds::Text, "the new wall that takes its place"),
    field("load", "on", Holds::Text, "the element it stands on").must(),
    field("load", "what", Holds::Text, "what it is").must(),
    field("load", "value", PRESSURE, "how much").must().within(0.0, 200_000.0),
    // ── drain
    field("drain", "rain", Holds::Table("rain"), "design rain"),
    field("drain", "outlet", Holds::Table("outlet"), "where the water goes"),
    field("drain", "outlets", Holds::Tables("outlet"), "further outlets"),
    field("drain", "soakaway", Holds::Table("soakaway"), "a pit that the water seeps away from"),
    field("drain", "swale", Holds::Tables("swale"), "swales above walls"),
    field("drain", "weeps", Holds::Table("weeps"), "weep holes through the walls"),
    field("drain", "surface", Holds::Text, "row of the runoff table"),
    field("drain", "uphill", LENGTH, "slope length above the survey").within(0.0, FAR),
    field("drain", "fill", Holds::Text, "class of drain fill"),
    field("drain", "pipe", LENGTH, "inside diameter of the pipe; left out, it is chosen").within(0.04, 0.6),
    field("drain", "none", Holds::Flag, "true where the drain is left out on purpose"),
    field("rain", "intensity", Holds::Quantity("rain intensity"), "intensity").must().within(0.0, 0.0003),
    field("rain", "source", Holds::Text, "where it is from").must(),
    field(
        "rain",
        "durations",
        Holds::Own(
            "a list of durations with their intensity, shortest first, such as [[\"5 min\", \"110 mm/h\"], [\"60 min\", \"25 mm/h\"]]",
        ),
        "rain by duration",
    ),
    field("soakaway", "at", Holds::Point, "its middle").must(),
    field("soakaway", "level", LEVEL, "invert of the pipe that comes in").must().within(-500.0, 9000.0),
    field("soakaway", "length", LENGTH, "length; left out, it is solved").within(0.3, 100.0),
    field("soakaway", "width", LENGTH, "width").must().within(0.3, 20.0),
    field("soakaway", "depth", LENGTH, "depth below the incoming pipe").must().within(0.2, 6.0),
    field("soakaway", "empty", SHARE, "share that is empty: 30 % with stone").within(0.05, 1.0),
    field("soakaway", "rate", Holds::Quantity("rain intensity"), "rate at which the ground takes water, measured")
        .within(0.0, 0.01),
    field("soakaway", "test", Holds::Table("pit test"), "the trial pit by which the rate is worked out"),
    field("soakaway", "source", Holds::Text, "who measured it, when"),
    field("pit test", "length", LENGTH, "length of the trial pit").must().within(0.1, 10.0),
    field("pit test", "width", LENGTH, "its width").must().within(0.1, 10.0),
    field("pit test", "depth", LENGTH, "depth of water when full").must().within(0.1, 5.0),
    field("pit test", "time", Holds::Quantity("time"), "time from 75 % to 25 % of that depth, the slowest of three")
        .must()
        .within(1.0, 1e7),
    field("swale", "above", Holds::Id, "the wall above which it runs").must(),
    field("swale", "bed", LENGTH, "width of its bed; 0 mm for a vee").within(0.0, 10.0),
    field("swale", "sides", SLOPE, "slope of its sides").within(0.05, 4.0),
    field("swale", "fall", SLOPE, "fall along it").within(0.001, 0.5),
    field("swale", "lining", Holds::Text, "what it is lined with"),
    field("swale", "freeboard", LENGTH, "kept free above the water").within(0.0, 2.0),
    field("swale", "offset", LENGTH, "distance from the wall").within(0.0, 100.0),
    field("weeps", "diameter", LENGTH, "diameter of a hole").within(0.01, 0.3),
    field("weeps", "spacing", LENGTH, "distance between holes").within(0.2, 20.0),
    field("weeps", "above", LENGTH, "middle of the holes above the ground in front").within(0.0, 3.0),
    field("outlet", "at", Holds::Point, "where").must(),
    field("outlet", "level", LEVEL, "its level").must().within(-500.0, 9000.0),
    // ── order
    field("order", "prices", Holds::Text, "file of the price list"),
    field("order", "kerf", LENGTH, "width of a saw cut").within(0.0, 0.02),
    field("order", "waste", SHARE, "allowance for waste").within(0.0, 1.0),
    field("order", "tax", SHARE, "tax on the sum").within(0.0, 1.0),
    field("order", "margin", SHARE, "overhead and profit").within(0.0, 5.0),
    field("order", "crew", Holds::Table("crew"), "who works"),
    field("order", "vehicle", Holds::Table("vehicle"), "what carries the material"),
    field(
        "order",
        "bought",
        Holds::Own("a list such as [\"8 of board 200x50 UC4 C24 at 4.8 m\", \"30 of concrete bag 20 kg\"]"),
        "what was bought so far",
    ),
    field("crew", "people", Holds::Number, "people").within(1.0, 100.0),
    field("crew", "hours_per_day", Holds::Quantity("time"), "working hours in a day").within(3600.0, 86_400.0),
    field("vehicle", "payload", Holds::Quantity("mass"), "what it carries").within(10.0, 60_000.0),
    field("vehicle", "volume", Holds::Quantity("volume"), "what fits in it").within(0.05, 60.0),
    // ── record
    field("record", "at", Holds::Moment, "when").must(),
    field("record", "note", Holds::Text, "in words"),
    field("record", "find", Holds::Table("find"), "what was found"),
    field("record", "built", Holds::Table("built"), "what was built"),
    field("find", "kind", Holds::OneOf(&["rock", "pipe", "cable", "water", "level"]), "what was found").must(),
    field("find", "wall", Holds::Id, "at which wall"),
    field("find", "element", Holds::Id, "at which element"),
    field("find", "post", Holds::Whole, "at which post").within(1.0, 10_000.0),
    field("find", "chainage", LENGTH, "where that post stands along the wall").within(0.0, FAR),
    field("find", "what", Holds::Text, "what it seems to be"),
    field("find", "at", Holds::Point, "where"),
    field("find", "line", Holds::Points, "where it was followed"),
    field("find", "depth", LENGTH, "how deep").within(0.0, 30.0),
    field("find", "point", Holds::Text, "which point"),
    field("find", "level", LEVEL, "what its level really is").within(-500.0, 9000.0),
    field("built", "element", Holds::Id, "the element").must(),
    field("built", "says", Holds::Text, "as people say it"),
    field("built", "posts", Holds::Tables("built post"), "the posts that stand, with their real measures"),
    field("built post", "number", Holds::Whole, "its number").must().within(1.0, 10_000.0),
    field("built post", "chainage", LENGTH, "where along the wall").must().within(0.0, FAR),
    field("built post", "at", Holds::Point, "where in plan, on the wall's line"),
    field("built post", "depth", LENGTH, "depth of its hole").must().within(0.0, 10.0),
    field("built post", "diameter", LENGTH, "diameter of its hole").must().within(0.05, 3.0),
    field("built post", "top", LEVEL, "level of its top").must().within(-500.0, 9000.0),
    field("built post", "length", LENGTH, "its cut length, top to underside").within(0.05, 20.0),
];

/// Every row: those of the table, and the sizes of each wall system as a table with the system's key as its name.
pub static FIELDS: LazyLock<Vec<Field>> = LazyLock::new(|| {
    let of_system = |entry: &Entry| {
        let spec = (entry.blank)();
        let fields = spec.system().fields();
        fields.into_iter().map(|f| size(entry.key, f)).collect::<Vec<_>>()
    };
    OWN.iter().copied().chain(SYSTEMS.iter().flat_map(of_system)).collect()
});

/// A size of a wall system as a row.
fn size(system: &'static str, f: &hold::Field) -> Field {
    let holds = match f.holds {
        hold::Holds::Length => LENGTH,
        hold::Holds::Slope => SLOPE,
        hold::Holds::Angle => Holds::Quantity("angle"),
        hold::Holds::Share => SHARE,
        hold::Holds::Pressure => PRESSURE,
        hold::Holds::UnitWeight => Holds::Quantity("unit weight"),
        hold::Holds::Density => Holds::Quantity("density"),
        hold::Holds::Whole => Holds::Whole,
        hold::Holds::Flag => Holds::Flag,
        hold::Holds::OneOf(words) => Holds::OneOf(words),
        hold::Holds::Lengths => Holds::Lengths,
        hold::Holds::Own { like, .. } => Holds::Own(like),
    };
    Field { table: system, key: f.key, holds, must: f.must, least: f.least, most: f.most, words: f.words }
}

/// The row of a field.
pub fn row(table: &str, key: &str) -> Option<&'static Field> {
    FIELDS.iter().find(|f| f.table == table && f.key == key)
}

/// The rows of a table.
pub fn rows_of(table: &str) -> impl Iterator<Item = &'static Field> {
    FIELDS.iter().filter(move |f| f.table == table)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_table_that_a_field_names_has_rows_and_no_field_stands_twice() {
        for (i, f) in FIELDS.iter().enumerate() {
            if let Holds::Table(t) | Holds::Tables(t) = f.holds {
                assert!(rows_of(t).next().is_some(), "{}.{} names the table {t}", f.table, f.key);
            }
            assert!(!FIELDS[..i].iter().any(|g| g.table == f.table && g.key == f.key), "{}.{}", f.table, f.key);
            assert!(f.least <= f.most);
        }
    }
}
