//! From the text of a job file and its tables to a job, with everything that is wrong with them.

use groundhold_hold::{SYSTEM_KEYS, Spec};
use groundhold_plan::job::*;
use groundhold_quantity::{
    Angle, Currency, Length, Level, Point, Quantity, Slope, Time, Units, Vector, math, parse, segments_cross,
};
use toml_edit::{Document, Item};

use crate::ground_water;
use crate::page::{Node, Page};
use crate::problem::Problem;
use crate::situations;
use crate::wall_spec;
use crate::{bought_file, record_file, standing_file, tables};

/// Largest job file that is read.
const LARGEST: usize = 4 << 20;

/// What was understood, and what was wrong. Without problems the job is there and whole.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// What was understood; what was wrong is left out of it.
    pub job: Option<Job>,
    /// Everything that is wrong, in the order of the files.
    pub problems: Vec<Problem>,
}

impl Read {
    /// The job if nothing is wrong.
    ///
    /// # Errors
    /// All problems.
    pub fn whole(self) -> Result<Job, Vec<Problem>> {
        match self.job {
            Some(job) if self.problems.is_empty() => Ok(job),
            _ => Err(self.problems),
        }
    }
}

/// Reads a job file named `file`. `open` gives the text of a table by the name that stands in the job, or says why not.
pub fn read_job(file: &str, text: &str, open: &dyn Fn(&str) -> Result<String, String>) -> Read {
    if text.len() > LARGEST {
        let says = format!("the file has {} bytes; a job file has at most {LARGEST}", text.len());
        return Read { job: None, problems: vec![Problem::whole(file, says)] };
    }
    let document = match Document::parse(text) {
        Ok(d) => d,
        Err(e) => {
            let says = format!("this is not TOML: {}", e.message().replace('\n', "; "));
            let problem = match e.span() {
                Some(span) => Problem::at(file, text, span, says),
                None => Problem::whole(file, says),
            };
            return Read { job: None, problems: vec![problem] };
        }
    };
    let page = Page::new(file, text);
    let job = {
        let root = page.root(document.as_table());
        root.number("schema");
        let reader = Reader { page: &page, open };
        let job = reader.job(&root);
        reader.check_names(&root, &job);
        job
    };
    Read { job: Some(job), problems: page.into_problems() }
}

struct Reader<'a> {
    page: &'a Page<'a>,
    open: &'a dyn Fn(&str) -> Result<String, String>,
}

fn id(n: &Node) -> String {
    n.text("id").unwrap_or_default()
}

impl Reader<'_> {
    fn job(&self, root: &Node) -> Job {
        let mut job = Job { drain: DrainWish { wanted: true, ..DrainWish::default() }, ..Job::default() };
        job.about = root.table("job").map_or(default_about(), |n| about(&n));
        if let Some(n) = root.table("measure") {
            job.measure = self.measure(&n);
        }
        if let Some(n) = root.table("ground") {
            job.ground = ground(&n);
        }
        if let Some(b) = root.table("shape").and_then(|n| n.table("batter")) {
            job.batter.cut = b.quantity("cut").unwrap_or(job.batter.cut);
            job.batter.fill = b.quantity("fill").unwrap_or(job.batter.fill);
            job.batter.bench = bench(&b);
        }
        job.order = root.table("order").map_or(default_order(), |n| self.order(&n));
        let stock = wall_spec::stock_of(&job.order.prices);
        job.pads = root.tables("pad").iter().filter_map(pad).collect();
        job.walls = root.tables("wall").iter().filter_map(|n| wall(n, &stock)).collect();
        job.flights = root.tables("steps").iter().filter_map(flight).collect();
        job.ramps = root.tables("ramp").iter().filter_map(ramp).collect();
        job.near = root.tables("near").iter().filter_map(near).collect();
        job.standing = root.tables("standing").iter().filter_map(standing_file::read).collect();
        job.loads = root.tables("load").iter().filter_map(load).collect();
        if let Some(n) = root.table("drain") {
            job.drain = drain(&n);
        }
        job.record = root.tables("record").iter().filter_map(record_file::entry).collect();
        job
    }

    /// The text of a table that the job names.
    fn table_text(&self, n: &Node, key: &str) -> Option<(String, String)> {
        let name = n.text(key)?;
        match (self.open)(&name) {
            Ok(text) => Some((name, text)),
            Err(why) => {
                n.complain(key, format!("the file `{name}` cannot be read: {why}"));
                None
            }
        }
    }

    fn measure(&self, n: &Node) -> Measure {
        let mut m = Measure::default();
        if let Some(d) = n.table("datum") {
            m.datum = d.text("peg").zip(d.quantity("level")).map(|(peg, level)| Datum {
                peg,
                level,
                note: d.text("note").unwrap_or_default(),
            });
        }
        m.pegs = pegs(n);
        m.misclose_per_setup = n.table("close").and_then(|c| {
            c.text("per");
            c.quantity("misclose")
        });
        if let Some((name, text)) = self.table_text(n, "book") {
            m.book = self.keep(tables::level_book(&name, &text));
        }
        if let Some((name, text)) = self.table_text(n, "positions") {
            m.positions = self.keep(tables::positions(&name, &text));
        }
        if let Some((name, text)) = self.table_text(n, "spots") {
            m.spots = self.keep(tables::spots(&name, &text));
        }
        m.break_lines = n.name_lists("break_lines").unwrap_or_default();
        m.boundary = n.names("boundary").unwrap_or_default();
        m.quick = n.table("slope").and_then(|s| quick(&s));
        if m.quick.is_none() && m.book.is_empty() && m.spots.is_empty() && !n.has("book") && !n.has("spots") {
            n.complain("slope", "there is no ground: expected a level `book`, `spots`, or a `slope` in two numbers");
        }
        m
    }

    fn order(&self, n: &Node) -> OrderWish {
        let mut o = default_order();
        if let Some((name, text)) = self.table_text(n, "prices") {
            o.prices = self.keep(tables::prices(&name, &text));
        }
        o.kerf = n.quantity("kerf").unwrap_or(o.kerf);
        o.waste = n.quantity("waste").unwrap_or(o.waste);
        o.tax = n.quantity("tax").unwrap_or(o.tax);
        o.margin = n.quantity("margin").unwrap_or(o.margin);
        if let Some(c) = n.table("crew") {
            o.people = c.number("people").unwrap_or(o.people);
            o.hours_per_day = c.quantity("hours_per_day").unwrap_or(o.hours_per_day);
        }
        if let Some(v) = n.table("vehicle") {
            o.payload = v.quantity("payload").unwrap_or(o.payload);
            o.load_volume = v.quantity("volume").unwrap_or(o.load_volume);
        }
        o.bought = bought_file::read(n);
        o
    }

    fn keep<T>(&self, (rows, problems): (Vec<T>, Vec<Problem>)) -> Vec<T> {
        problems.into_iter().for_each(|p| self.page.add(p));
        rows
    }

    /// Ids that stand twice, and names of things that are not there.
    fn check_names(&self, root: &Node, job: &Job) {
        let mut seen: Vec<String> = vec![];
        for list in ["pad", "wall", "steps", "ramp", "near", "standing"] {
            for n in root.tables(list) {
                let name = id(&n);
                if !name.is_empty() && seen.contains(&name) {
                    n.complain("id", format!("`{name}` stands twice; an id names one thing"));
                }
                seen.push(name);
                if let Some(to) = matches!(list, "steps" | "ramp").then(|| n.text("to")).flatten()
                    && !job.pads.iter().any(|p| p.id == to)
                {
                    n.complain(
                        "to",
                        format!("there is no pad `{to}`; {}", known(job.pads.iter().map(|p| p.id.as_str()))),
                    );
                }
            }
        }
        for (n, wall) in root.tables("wall").iter().zip(&job.walls) {
            if let WallTop::AbovePad { pad, .. } = &wall.top
                && !job.pads.iter().any(|p| p.id == *pad)
            {
                n.complain(
                    "top",
                    format!("there is no pad `{pad}`; {}", known(job.pads.iter().map(|p| p.id.as_str()))),
                );
            }
        }
        for n in root.tables("load") {
            let Some(on) = n.text("on") else { continue };
            let name = on.strip_prefix("behind ").unwrap_or(&on);
            if !job.ids().contains(&name) {
                n.complain("on", format!("there is no `{name}`; {}", known(job.ids().into_iter())));
            }
        }
        self.check_points(root, job);
    }

    /// Break lines and boundary name points that were measured.
    fn check_points(&self, root: &Node, job: &Job) {
        let m = &job.measure;
        if m.positions.is_empty() && m.spots.is_empty() {
            return;
        }
        let pegs = m.pegs.iter().map(|p| &p.id);
        let all: Vec<&String> =
            m.positions.iter().map(|p| &p.point).chain(m.spots.iter().map(|s| &s.id)).chain(pegs).collect();
        let Some(n) = root.table("measure") else { return };
        let lines = m.break_lines.iter().map(|l| ("break_lines", l)).chain([("boundary", &m.boundary)]);
        for (key, line) in lines {
            for point in line.iter().filter(|p| !all.contains(p)) {
                n.complain(key, format!("point `{point}` is not in the position book or among the spots"));
            }
            for twice in line.windows(2).filter(|w| w[0] == w[1]) {
                n.complain(key, format!("point `{}` follows itself", twice[0]));
            }
        }
    }
}

fn known<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let names: Vec<&str> = names.collect();
    if names.is_empty() { "there is none in this job".into() } else { format!("known are {}", names.join(", ")) }
}

fn default_about() -> About {
    About {
        region: "generic".into(),
        basis: "working-stress".into(),
        currency: Currency("EUR".into()),
        ..About::default()
    }
}

fn about(n: &Node) -> About {
    let d = default_about();
    let feet = n.text("units").is_some_and(|u| u == "feet");
    About {
        name: n.text("name").unwrap_or_default(),
        place: n.text("place").unwrap_or_default(),
        client: n.text("client").unwrap_or_default(),
        region: n.text("region").unwrap_or(d.region),
        basis: n.text("basis").unwrap_or(d.basis),
        currency: n.text("currency").map_or(d.currency, Currency),
        units: if feet { Units::Feet } else { Units::Metric },
        demo: n.flag("demo").unwrap_or(false),
    }
}

fn default_order() -> OrderWish {
    OrderWish {
        kerf: Length::mm(4.0),
        people: 2.0,
        hours_per_day: Time::h(8.0),
        payload: groundhold_quantity::Mass::t(1.0),
        load_volume: groundhold_quantity::Volume::m3(1.0),
        ..OrderWish::default()
    }
}

fn pegs(n: &Node) -> Vec<Peg> {
    let Some(item) = n.raw("pegs") else { return vec![] };
    let Some(table) = item.as_table_like() else {
        n.complain("pegs", "expected a table such as { A = [\"0 m\", \"0 m\"], B = [\"14 m\", \"0 m\"] }");
        return vec![];
    };
    // The base line runs between the first two, so the order of the file is kept.
    table
        .iter()
        .filter_map(|(name, v)| Some(Peg { id: name.to_string(), at: n.point_from("pegs", v.as_value(), v.span())? }))
        .collect()
}

fn quick(n: &Node) -> Option<QuickSlope> {
    let (fall, over) = (n.quantity::<Length>("fall"), n.quantity::<Length>("over"));
    let width = n.quantity("width").or_else(|| (!n.has("width")).then_some(over).flatten());
    let foot = n.quantity("foot").or_else(|| (!n.has("foot")).then_some(Level::m(100.0)));
    Some(QuickSlope { fall: fall?, over: over?, width: width?, foot: foot? })
}

fn ground(n: &Node) -> GroundWish {
    let measured = n.table("measured").map_or(MeasuredSoil::default(), |m| MeasuredSoil {
        unit_weight: m.quantity("unit_weight"),
        friction: m.quantity("friction"),
        cohesion: m.quantity("cohesion"),
        undrained: m.quantity("undrained"),
        source: m.text("source").unwrap_or_default(),
    });
    n.text("note");
    GroundWish {
        turf: n.quantity("turf").unwrap_or(Length::ZERO),
        topsoil: n.quantity("topsoil").unwrap_or(Length::ZERO),
        soil: n.text("soil").unwrap_or_default(),
        measured,
        water_depth: n.quantity("water"),
        frost: n.quantity("frost"),
        sieves: ground_water::sieves(n),
        moisture: n.quantity("moisture"),
        rock: ground_water::rock(n),
        must_meet: situations::must_meet(n),
        shaking: situations::shaking(n),
    }
}

fn pad(n: &Node) -> Option<PadWish> {
    let outline = n.line("corners", true);
    if let Some((a, b)) = outline.as_ref().and_then(|(c, bends)| first_crossing(c, bends, true)) {
        n.complain("corners", format!("side {a} crosses side {b}; give the corners in order round the pad"));
        return None;
    }
    let level = pad_level(n);
    let fall = if n.has("fall") { pad_fall(n) } else { None };
    Some(PadWish {
        id: n.text("id")?,
        name: n.text("name").unwrap_or_default(),
        corners: outline.as_ref()?.0.clone(),
        bends: outline?.1,
        level: level?,
        between: ground_water::between(n),
        fall,
        apron: n.quantity("apron").unwrap_or(Length::ZERO),
        build_up: n.quantity("build_up").unwrap_or(Length::ZERO),
        batter: n.table("batter").map(|b| {
            let d = Batter::default();
            let (cut, fill) = (b.quantity("cut"), b.quantity("fill"));
            Batter { cut: cut.unwrap_or(d.cut), fill: fill.unwrap_or(d.fill), bench: bench(&b) }
        }),
    })
}

fn bench(n: &Node) -> Option<Bench> {
    let b = n.table("bench")?;
    let (every, width) = (b.quantity("every"), b.quantity("width"));
    Some(Bench { every: every?, width: width?, fall: b.quantity("fall").unwrap_or(Slope::LEVEL) })
}

fn pad_level(n: &Node) -> Option<PadLevel> {
    let text = n.raw("level")?.as_str().unwrap_or_default();
    if text == "balance" {
        return Some(PadLevel::Balance);
    }
    if text == "cheapest" {
        return Some(PadLevel::Cheapest);
    }
    match parse::<Level>(text) {
        Ok(l) if l.to_m().abs() < 9000.0 => Some(PadLevel::At(l)),
        Ok(_) => {
            n.complain("level", format!("found `{text}`, expected a level between −9000 m and 9000 m"));
            None
        }
        Err(e) => {
            n.complain("level", format!("{e}; or the words balance or cheapest"));
            None
        }
    }
}

fn pad_fall(n: &Node) -> Option<(Slope, Vector)> {
    let text = n.raw("fall")?.as_str().unwrap_or_default();
    let (slope, toward) = text.split_once(" toward ")?;
    let half = std::f64::consts::FRAC_1_SQRT_2;
    let direction = match toward.trim() {
        "north-east" => Vector::m(half, half),
        "south-east" => Vector::m(half, -half),
        "south-west" => Vector::m(-half, -half),
        "north-west" => Vector::m(-half, half),
        angle if parse::<Angle>(angle).is_ok() => {
            let a = parse::<Angle>(angle).map_or(0.0, Angle::to_rad);
            Vector::m(math::sin(a), math::cos(a))
        }
        "north" => Vector::m(0.0, 1.0),
        "south" => Vector::m(0.0, -1.0),
        "east" => Vector::m(1.0, 0.0),
        "west" => Vector::m(-1.0, 0.0),
        other => {
            n.complain("fall", format!("found `{other}`, expected north, south-east or another of the eight directions, or degrees clockwise from north such as 135 deg"));
            return None;
        }
    };
    match parse::<Slope>(slope) {
        Ok(s) if (0.0..=0.2).contains(&s.in_si()) => Some((s, direction)),
        Ok(_) => {
            n.complain("fall", format!("found `{slope}`, expected a fall from level to 1:5"));
            None
        }
        Err(e) => {
            n.complain("fall", e);
            None
        }
    }
}

fn wall(n: &Node, stock: &wall_spec::Stock) -> Option<WallWish> {
    let system = if n.has("system") { n.text("system") } else { Some(SYSTEM_KEYS[0].into()) };
    let blank = system.as_deref().and_then(Spec::of);
    let alongside = n.table("alongside").and_then(|b| Some(Alongside { wall: b.text("wall")?, by: b.quantity("by")? }));
    let line = if n.has("alongside") { Some((vec![], vec![])) } else { n.line("line", false) };
    if n.has("line") == n.has("alongside") {
        n.complain("line", "expected a line, or alongside = { wall = \"W1\", by = \"1.5 m\" } in its place");
        return None;
    }
    if let Some((a, b)) = line.as_ref().and_then(|(l, bends)| first_crossing(l, bends, false)) {
        n.complain("line", format!("piece {a} of the wall crosses piece {b}; a wall may not cross itself"));
        return None;
    }
    let ends = wall_ends(n);
    let top = wall_top(n);
    let parts: Vec<Option<WallPart>> = n
        .tables("part")
        .iter()
        .map(|p| {
            let blank = if p.has("system") { p.text("system").as_deref().and_then(Spec::of) } else { blank.clone() };
            let spec = blank.and_then(|blank| sizes(p, blank, stock));
            Some(WallPart { from: p.quantity("from")?, to: p.quantity("to")?, spec: spec? })
        })
        .collect();
    let spec = blank.and_then(|blank| sizes(n, blank, stock));
    let fence = n.table("fence").and_then(|f| {
        Some(FenceWish {
            height: f.quantity("height")?,
            wind: f.quantity("wind")?,
            solid: f.quantity("solid").unwrap_or(groundhold_quantity::Share::fraction(1.0)),
            source: f.text("source").unwrap_or_default(),
        })
    });
    let beside = n.text("beside").map(|b| if b == "play area" { Beside::PlayArea } else { Beside::FoodBed });
    let list = n.tables("change");
    let changes = list.iter().filter_map(|c| {
        Some(groundhold_hold::PostChange {
            chainage: c.quantity("chainage")?,
            hole_diameter: c.quantity("hole_diameter"),
            depth: c.quantity("hole_depth"),
            extra: c.flag("extra").unwrap_or(false),
            left_out: c.flag("left_out").unwrap_or(false),
        })
    });
    Some(WallWish {
        id: n.text("id")?,
        name: n.text("name").unwrap_or_default(),
        line: line.as_ref()?.0.clone(),
        bends: line?.1,
        alongside,
        ends: ends?,
        retains_left: n.text("retains")? == "left",
        top: top?,
        spec: spec?,
        parts: parts.into_iter().collect::<Option<Vec<_>>>()?,
        fence,
        beside,
        changes: changes.collect(),
    })
}

/// The sizes of a wall's system; a system that must be given none takes its usual ones where no table stands.
fn sizes(n: &Node, blank: Spec, stock: &wall_spec::Stock) -> Option<Spec> {
    if let Some(s) = n.table_of("spec", blank.system().key()) {
        return wall_spec::read(&s, blank, stock);
    }
    let must: Vec<&str> = blank.system().fields().iter().filter(|f| f.must).map(|f| f.key).collect();
    let (Some((last, before)), false) = (must.split_last(), n.has("spec")) else {
        return (!n.has("spec")).then_some(blank);
    };
    let before = before.join(", ");
    let and = if before.is_empty() { "" } else { " and " };
    n.complain("spec", format!("the sizes are missing: a table [wall.spec] with {before}{and}{last}"));
    None
}

fn wall_ends(n: &Node) -> Option<[WallEnd; 2]> {
    if !n.has("ends") {
        return Some([WallEnd::Fade; 2]);
    }
    let words: Vec<&str> = n
        .raw("ends")
        .and_then(Item::as_array)
        .map(|a| a.iter().filter_map(|v| v.as_str()).collect())
        .unwrap_or_default();
    let ends: Option<Vec<WallEnd>> = words
        .iter()
        .map(|w| match *w {
            "fade" => Some(WallEnd::Fade),
            "at" => Some(WallEnd::At),
            "return" => Some(WallEnd::Return(None)),
            w => {
                let (word, size) = w.split_once(' ')?;
                let size = parse::<Length>(size).ok().filter(|l| (0.0..=100.0).contains(&l.to_m()))?;
                match word {
                    "return" => Some(WallEnd::Return(Some(size))),
                    "post" => Some(WallEnd::Post(size)),
                    _ => None,
                }
            }
        })
        .collect();
    match ends.as_deref() {
        Some([a, b]) => Some([*a, *b]),
        _ => {
            n.complain("ends", "expected two of the words fade, at, return, return 1.2 m and post 200 mm, for example [\"fade\", \"at\"]");
            None
        }
    }
}

fn wall_top(n: &Node) -> Option<WallTop> {
    let item = n.raw("top")?;
    let expected = "expected { follow = \"ground\", above = \"50 mm\" }, { at = \"101.2 m\" }, { above = \"P1\", by = \"50 mm\" }, \
                    { from = \"101.2 m\", to = \"101.0 m\" }, { step = \"200 mm\", above = \"50 mm\", least = \"1.2 m\" } or \
                    { line = [[\"0 m\", \"101.2 m\"], [\"4 m\", \"101.0 m\"]] }";
    let Some(table) = item.as_table_like() else {
        n.complain("top", expected);
        return None;
    };
    let text = |key: &str| table.get(key).and_then(Item::as_str);
    let length = |key: &str| match text(key).map(parse::<Length>) {
        Some(Ok(l)) => Some(l),
        Some(Err(e)) => {
            n.complain("top", format!("{key}: {e}"));
            None
        }
        None => {
            n.complain("top", expected);
            None
        }
    };
    if text("follow").is_some() {
        return length("above").map(|above| WallTop::FollowGround { above });
    }
    let level = |key: &str| match text(key).map(parse::<Level>) {
        Some(Ok(l)) => Some(l),
        _ => {
            n.complain("top", format!("{key}: {expected}"));
            None
        }
    };
    if table.contains_key("from") {
        let (from, to) = (level("from"), level("to"));
        return Some(WallTop::Raked { from: from?, to: to? });
    }
    if table.contains_key("step") {
        let (by, above) = (length("step"), length("above"));
        let least = if table.contains_key("least") { length("least")? } else { Length::ZERO };
        return Some(WallTop::Stepped { above: above?, by: by?, least });
    }
    if let Some(rows) = table.get("line").and_then(Item::as_array) {
        let row = |v: &toml_edit::Value| {
            let a = v.as_array().filter(|a| a.len() == 2)?;
            let part = |i: usize| a.get(i).and_then(toml_edit::Value::as_str);
            Some((parse::<Length>(part(0)?).ok()?, parse::<Level>(part(1)?).ok()?))
        };
        let levels: Option<Vec<(Length, Level)>> = rows.iter().map(row).collect();
        let forward = |l: &Vec<(Length, Level)>| !l.is_empty() && l.windows(2).all(|w| w[0].0 <= w[1].0);
        return match levels.filter(forward) {
            Some(levels) => Some(WallTop::Line(levels)),
            None => {
                n.complain("top", format!("line: expected chainages that go forward, each with a level; {expected}"));
                None
            }
        };
    }
    if let Some(at) = text("at") {
        return match parse::<Level>(at) {
            Ok(l) => Some(WallTop::At(l)),
            Err(e) => {
                n.complain("top", format!("at: {e}"));
                None
            }
        };
    }
    match text("above") {
        Some(pad) => length("by").map(|by| WallTop::AbovePad { pad: pad.to_string(), by }),
        None => {
            n.complain("top", expected);
            None
        }
    }
}

/// The first two pieces of a line that cross, counted from 1.
fn first_crossing(points: &[Point], bends: &[Bend], closed: bool) -> Option<(usize, usize)> {
    if !bends.is_empty() {
        // On a curve the pieces are those between the places that it was read at.
        let line = groundhold_shape::Alignment { points: points.to_vec(), bends: bends.to_vec() };
        let course = if closed { line.closed() } else { line.course() };
        return course.ok().and_then(|c| first_crossing(&c.points, &[], closed));
    }
    let line = points;
    let mut sides: Vec<(Point, Point)> = line.windows(2).map(|w| (w[0], w[1])).collect();
    if closed && let (Some(first), Some(last)) = (line.first(), line.last()) {
        sides.push((*last, *first));
    }
    for (i, a) in sides.iter().enumerate() {
        for (j, b) in sides.iter().enumerate().skip(i + 1) {
            if segments_cross(a.0, a.1, b.0, b.1).is_some() {
                return Some((i + 1, j + 1));
            }
        }
    }
    None
}

fn flight(n: &Node) -> Option<FlightWish> {
    let (id, from, to, width) = (n.text("id"), n.point("from"), n.text("to"), n.quantity("width"));
    let turns = if n.has("turns") { n.points("turns", 1)? } else { vec![] };
    Some(FlightWish { id: id?, from: from?, to: to?, width: width?, going: n.quantity("going"), turns })
}

fn ramp(n: &Node) -> Option<RampWish> {
    let (id, path, to, width) = (n.text("id"), n.line("path", false), n.text("to"), n.quantity("width"));
    let steepest = n.quantity("steepest").unwrap_or(Slope::one_in(12.0));
    let crossfall = if n.has("crossfall") { Some(crossfall(n)?) } else { None };
    let landings =
        n.table("landings").and_then(|l| Some(Landings { every: l.quantity("every")?, length: l.quantity("length")? }));
    let within = if n.has("within") { n.points("within", 3)? } else { vec![] };
    let (path, bends) = path?;
    Some(RampWish { id: id?, path, bends, to: to?, width: width?, steepest, crossfall, landings, within })
}

fn crossfall(n: &Node) -> Option<(Slope, Side)> {
    let text = n.raw("crossfall")?.as_str().unwrap_or_default();
    let read = text.split_once(" to ").and_then(|(slope, side)| {
        let side = match side.trim() {
            "left" => Side::Left,
            "right" => Side::Right,
            _ => return None,
        };
        parse::<Slope>(slope).ok().filter(|s| (0.0..=0.2).contains(&s.in_si())).map(|s| (s, side))
    });
    if read.is_none() {
        n.complain(
            "crossfall",
            format!("found `{text}`, expected a fall from level to 1:5 and a side, such as 1:40 to left"),
        );
    }
    read
}

fn near(n: &Node) -> Option<Near> {
    let kind = n.text("kind")?;
    let trunk = n.quantity("trunk");
    let line = match (n.has("line"), n.has("at")) {
        (true, _) => n.points("line", 2)?,
        (false, true) => vec![n.point("at")?],
        _ => {
            n.complain("at", "expected where it is: `at` a point, or a `line`");
            return None;
        }
    };
    let kind = match kind.as_str() {
        "boundary" => NearKind::Boundary,
        "street" | "public path" => NearKind::Street,
        "tree" => {
            let Some(trunk) = trunk else {
                n.complain("trunk", "a tree needs the diameter of its trunk, for example \"250 mm\"");
                return None;
            };
            NearKind::Tree { trunk }
        }
        k if ["main", "pipe", "cable", "drain", "sewer", "duct", "gas"].iter().any(|w| k.contains(w)) => {
            NearKind::Service(k.into())
        }
        k if ["house", "building", "wall", "fence", "garage", "footing"].iter().any(|w| k.contains(w)) => {
            NearKind::Footing(k.into())
        }
        k => NearKind::Other(k.into()),
    };
    Some(Near {
        id: n.text("id")?,
        kind,
        line,
        depth: n.quantity("depth"),
        clear: n.quantity("clear"),
        source: n.text("source").unwrap_or_default(),
        age_days: n.number("age_days"),
        level: n.quantity("level"),
        holds: standing_wall(n),
    })
}

/// What is known of a wall that stands there.
fn standing_wall(n: &Node) -> Option<StandingWall> {
    let (drained, filter) = (n.flag("drained"), n.flag("filter"));
    for key in ["drained", "filter"] {
        if n.has(key) && !n.has("retained") {
            n.complain(key, "of which wall? expected `retained`, how much the wall that stands there holds");
        }
    }
    Some(StandingWall { retained: n.quantity("retained")?, drained, filter })
}

fn load(n: &Node) -> Option<Load> {
    let (on, what, value) = (n.text("on"), n.text("what"), n.quantity("value"));
    Some(Load { on: on?, what: what?, value: value? })
}

fn drain(n: &Node) -> DrainWish {
    let rain = n.table("rain").and_then(|r| r.quantity("intensity").zip(r.text("source")));
    let outlet = n.table("outlet").and_then(|o| o.point("at").zip(o.quantity("level")));
    DrainWish {
        rain,
        outlet,
        rain_curve: n.table("rain").map_or(vec![], |r| ground_water::rain_curve(&r)),
        more_outlets: ground_water::outlets(n),
        soakaway: n.table("soakaway").and_then(|s| ground_water::soakaway(&s)),
        swales: n.tables("swale").iter().filter_map(ground_water::swale).collect(),
        weeps: n.table("weeps").map(|w| ground_water::weeps(&w)),
        surface: n.text("surface").unwrap_or_default(),
        uphill: n.quantity("uphill").unwrap_or(Length::ZERO),
        fill: n.text("fill").unwrap_or_default(),
        pipe: n.quantity("pipe"),
        wanted: !n.flag("none").unwrap_or(false),
    }
}
