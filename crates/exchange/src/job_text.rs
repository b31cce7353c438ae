//! A whole job written as a person would write it, so that reading it again gives the same job.

use groundhold_plan::job::*;
use groundhold_quantity::{Point, Units, Vector};

use crate::bought_file;
use crate::line_text::{self, point};
use crate::record_file::{entry_text, quoted};
use crate::spelled as say;
use crate::standing_file;
use crate::tables_text;
use crate::wall_spec::{Stock, stock_of, written};

/// The text of a job file. Level book, positions, spots and prices stand in files of their own, which it names and
/// [`job_tables`] gives.
pub fn job_text(job: &Job) -> String {
    let mut out =
        Page(String::from("# A number always carries its unit. Ids are short and never change.\nschema = 1\n"));
    about(&mut out, &job.about);
    measure(&mut out, &job.measure);
    ground(&mut out, job);
    job.pads.iter().for_each(|p| pad(&mut out, p));
    let stock = stock_of(&job.order.prices);
    job.walls.iter().for_each(|w| wall(&mut out, w, &stock));
    job.flights.iter().for_each(|f| flight(&mut out, f));
    job.ramps.iter().for_each(|r| ramp(&mut out, r));
    job.near.iter().for_each(|n| near(&mut out, n));
    job.standing.iter().for_each(|w| out.0.push_str(&standing_file::text(w)));
    for l in &job.loads {
        out.table("[[load]]");
        out.text("on", &l.on);
        out.text("what", &l.what);
        out.line("value", say::pressure(l.value));
    }
    drain(&mut out, &job.drain);
    order(&mut out, &job.order);
    job.record.iter().for_each(|e| out.0.push_str(&entry_text(e)));
    out.0
}

/// The files that the job names: level book, positions, spots and prices, as far as it has rows of them.
pub fn job_tables(job: &Job) -> Vec<(String, String)> {
    let m = &job.measure;
    let all = [
        (BOOK, !m.book.is_empty(), tables_text::level_book(&m.book)),
        (POSITIONS, !m.positions.is_empty(), tables_text::positions(&m.positions)),
        (SPOTS, !m.spots.is_empty(), tables_text::spots(&m.spots)),
        (PRICES, !job.order.prices.is_empty(), tables_text::prices(&job.order.prices)),
    ];
    all.into_iter().filter(|(_, there, _)| *there).map(|(name, _, text)| (name.to_string(), text)).collect()
}

const BOOK: &str = "levels.csv";
const POSITIONS: &str = "positions.csv";
const SPOTS: &str = "spots.csv";
const PRICES: &str = "prices.csv";

/// The text so far.
struct Page(String);

impl Page {
    fn table(&mut self, head: &str) {
        self.0.push_str(&format!("\n{head}\n"));
    }
    /// A value that is already TOML.
    fn line(&mut self, key: &str, value: impl std::fmt::Display) {
        self.0.push_str(&format!("{key} = {value}\n"));
    }
    /// A text, left out where it is empty.
    fn text(&mut self, key: &str, text: &str) {
        if !text.is_empty() {
            self.line(key, quoted(text));
        }
    }
    /// A value that may be missing.
    fn maybe(&mut self, key: &str, value: Option<String>) {
        if let Some(v) = value {
            self.line(key, v);
        }
    }
}

pub(crate) fn points(list: &[Point]) -> String {
    format!("[{}]", list.iter().map(|p| point(*p)).collect::<Vec<_>>().join(", "))
}
fn names(list: &[String]) -> String {
    format!("[{}]", list.iter().map(|n| quoted(n)).collect::<Vec<_>>().join(", "))
}

fn about(out: &mut Page, a: &About) {
    out.table("[job]");
    out.text("name", &a.name);
    out.text("place", &a.place);
    out.text("client", &a.client);
    out.text("region", &a.region);
    out.text("basis", &a.basis);
    out.text("currency", &a.currency.0);
    out.line("units", if a.units == Units::Feet { "\"feet\"" } else { "\"metric\"" });
    out.line("demo", a.demo);
}

fn measure(out: &mut Page, m: &Measure) {
    out.table("[measure]");
    if let Some(d) = &m.datum {
        let note = if d.note.is_empty() { String::new() } else { format!(", note = {}", quoted(&d.note)) };
        out.line("datum", format!("{{ peg = {}, level = {}{note} }}", quoted(&d.peg), say::level(d.level)));
    }
    if !m.pegs.is_empty() {
        let pegs: Vec<String> = m.pegs.iter().map(|p| format!("{} = {}", key(&p.id), point(p.at))).collect();
        out.line("pegs", format!("{{ {} }}   # the first two are the base line", pegs.join(", ")));
    }
    let files = [
        ("book", BOOK, m.book.is_empty()),
        ("positions", POSITIONS, m.positions.is_empty()),
        ("spots", SPOTS, m.spots.is_empty()),
    ];
    files.iter().filter(|(_, _, empty)| !empty).for_each(|(key, file, _)| out.text(key, file));
    if let Some(l) = m.misclose_per_setup {
        out.line("close", format!("{{ misclose = {}, per = \"set-up\" }}", say::length(l)));
    }
    if !m.break_lines.is_empty() {
        let lines: Vec<String> = m.break_lines.iter().map(|l| format!("  {},\n", names(l))).collect();
        out.line("break_lines", format!("[\n{}]", lines.concat()));
    }
    if !m.boundary.is_empty() {
        out.line("boundary", names(&m.boundary));
    }
    if let Some(q) = &m.quick {
        let (fall, over) = (say::length(q.fall), say::length(q.over));
        let (width, foot) = (say::length(q.width), say::level(q.foot));
        out.line("slope", format!("{{ fall = {fall}, over = {over}, width = {width}, foot = {foot} }}"));
    }
}

/// A key, in quotes where TOML wants them.
fn key(name: &str) -> String {
    let bare = !name.is_empty() && name.chars().all(|c| c.is_ascii_alphanumeric() || c == '_' || c == '-');
    if bare { name.into() } else { quoted(name) }
}

fn ground(out: &mut Page, job: &Job) {
    let g = &job.ground;
    out.table("[ground]");
    out.line("turf", say::length(g.turf));
    out.line("topsoil", say::length(g.topsoil));
    out.text("soil", &g.soil);
    out.maybe("water", g.water_depth.map(say::length));
    out.maybe("frost", g.frost.map(say::length));
    for (key, value) in crate::ground_water::ground_lines(g) {
        out.line(key, value);
    }
    if g.measured != MeasuredSoil::default() {
        let s = &g.measured;
        out.table("[ground.measured]");
        out.maybe("unit_weight", s.unit_weight.map(say::unit_weight));
        out.maybe("friction", s.friction.map(say::angle));
        out.maybe("cohesion", s.cohesion.map(say::pressure));
        out.maybe("undrained", s.undrained.map(say::pressure));
        out.line("source", quoted(&s.source));
    }
    out.table("[shape]");
    out.line("batter", format!("{}   # where no wall stands, rise over run", batter(&job.batter)));
}

fn batter(b: &Batter) -> String {
    let bench = b.bench.map_or(String::new(), |b| {
        let (every, width, fall) = (say::length(b.every), say::length(b.width), say::slope(b.fall));
        format!(", bench = {{ every = {every}, width = {width}, fall = {fall} }}")
    });
    format!("{{ cut = {}, fill = {}{bench} }}", say::slope(b.cut), say::slope(b.fill))
}

fn pad(out: &mut Page, p: &PadWish) {
    out.table("[[pad]]");
    out.line("id", quoted(&p.id));
    out.text("name", &p.name);
    out.line("corners", line_text::line(&p.corners, &p.bends));
    match p.level {
        PadLevel::At(l) => out.line("level", say::level(l)),
        PadLevel::Balance => out.text("level", "balance"),
        PadLevel::Cheapest => out.text("level", "cheapest"),
    }
    for (key, value) in crate::ground_water::pad_lines(p) {
        out.line(key, value);
    }
    if let Some((slope, toward)) = p.fall {
        let spelled = say::slope(slope);
        out.line("fall", format!("\"{} toward {}\"", spelled.trim_matches('"'), compass(toward)));
    }
    out.line("apron", say::length(p.apron));
    out.line("build_up", say::length(p.build_up));
    out.maybe("batter", p.batter.as_ref().map(batter));
}

/// A direction by its name, or in degrees clockwise from north.
fn compass(v: Vector) -> String {
    let half = std::f64::consts::FRAC_1_SQRT_2;
    let named = [
        ("east", 1.0, 0.0),
        ("west", -1.0, 0.0),
        ("north", 0.0, 1.0),
        ("south", 0.0, -1.0),
        ("north-east", half, half),
        ("south-east", half, -half),
        ("south-west", -half, -half),
        ("north-west", -half, half),
    ];
    let u = v.unit();
    match named.iter().find(|(_, x, y)| (u.x - x).abs() < 1e-12 && (u.y - y).abs() < 1e-12) {
        Some((name, ..)) => (*name).into(),
        None => format!("{} deg", groundhold_quantity::math::atan2(v.x, v.y).to_degrees()),
    }
}

/// The block of one wall, with all its stock lengths.
pub(crate) fn wall_text(w: &WallWish) -> String {
    let mut out = Page(String::new());
    wall(&mut out, w, &vec![]);
    out.0
}

fn wall(out: &mut Page, w: &WallWish, stock: &Stock) {
    out.table("[[wall]]");
    out.line("id", quoted(&w.id));
    out.text("name", &w.name);
    out.text("system", w.spec.system().key());
    match &w.alongside {
        Some(b) => out.line("alongside", format!("{{ wall = {}, by = {} }}", quoted(&b.wall), say::length(b.by))),
        None => out.line("line", line_text::line(&w.line, &w.bends)),
    }
    let ends = w.ends.map(|e| match e {
        WallEnd::Fade => "\"fade\"".to_string(),
        WallEnd::At => "\"at\"".into(),
        WallEnd::Return(None) => "\"return\"".into(),
        WallEnd::Return(Some(l)) => format!("\"return {}\"", say::length(l).trim_matches('"')),
        WallEnd::Post(l) => format!("\"post {}\"", say::length(l).trim_matches('"')),
    });
    out.line("ends", format!("[{}, {}]", ends[0], ends[1]));
    out.text("retains", if w.retains_left { "left" } else { "right" });
    let top = match &w.top {
        WallTop::FollowGround { above } => format!("{{ follow = \"ground\", above = {} }}", say::length(*above)),
        WallTop::At(l) => format!("{{ at = {} }}", say::level(*l)),
        WallTop::AbovePad { pad, by } => format!("{{ above = {}, by = {} }}", quoted(pad), say::length(*by)),
        WallTop::Raked { from, to } => format!("{{ from = {}, to = {} }}", say::level(*from), say::level(*to)),
        WallTop::Stepped { above, by, least } => {
            let (by, above, least) = (say::length(*by), say::length(*above), say::length(*least));
            format!("{{ step = {by}, above = {above}, least = {least} }}")
        }
        WallTop::Line(levels) => {
            let rows: Vec<String> =
                levels.iter().map(|(c, z)| format!("[{}, {}]", say::length(*c), say::level(*z))).collect();
            format!("{{ line = [{}] }}", rows.join(", "))
        }
    };
    out.line("top", top);
    if let Some(f) = &w.fence {
        let (height, wind, solid) = (say::length(f.height), say::pressure(f.wind), say::share(f.solid));
        let source = quoted(&f.source);
        out.line("fence", format!("{{ height = {height}, wind = {wind}, solid = {solid}, source = {source} }}"));
    }
    if let Some(b) = w.beside {
        out.text("beside", if b == Beside::PlayArea { "play area" } else { "food bed" });
    }
    if !w.changes.is_empty() {
        let each = w.changes.iter().map(|c| {
            let size = |key: &str, l| format!(", {key} = {}", say::length(l));
            let diameter = c.hole_diameter.map_or(String::new(), |l| size("hole_diameter", l));
            let depth = c.depth.map_or(String::new(), |l| size("hole_depth", l));
            let extra = if c.extra { ", extra = true" } else { "" };
            let left_out = if c.left_out { ", left_out = true" } else { "" };
            format!("  {{ chainage = {}{diameter}{depth}{extra}{left_out} }},\n", say::length(c.chainage))
        });
        out.line("change", format!("[\n{}]", each.collect::<String>()));
    }
    out.table("[wall.spec]");
    for (key, value) in written(&w.spec, stock) {
        out.line(key, value);
    }
    for p in &w.parts {
        out.table("[[wall.part]]");
        out.line("from", say::length(p.from));
        out.line("to", say::length(p.to));
        if p.spec.system().key() != w.spec.system().key() {
            out.text("system", p.spec.system().key());
        }
        out.table("[wall.part.spec]");
        for (key, value) in written(&p.spec, stock) {
            out.line(key, value);
        }
    }
}

fn flight(out: &mut Page, f: &FlightWish) {
    out.table("[[steps]]");
    out.line("id", quoted(&f.id));
    out.line("from", point(f.from));
    out.line("to", quoted(&f.to));
    out.line("width", say::length(f.width));
    out.maybe("going", f.going.map(say::length));
    out.maybe("turns", (!f.turns.is_empty()).then(|| points(&f.turns)));
}

fn ramp(out: &mut Page, r: &RampWish) {
    out.table("[[ramp]]");
    out.line("id", quoted(&r.id));
    out.line("path", line_text::line(&r.path, &r.bends));
    out.line("to", quoted(&r.to));
    out.line("width", say::length(r.width));
    out.line("steepest", say::slope(r.steepest));
    out.maybe(
        "crossfall",
        r.crossfall.map(|(s, side)| {
            format!("\"{} to {}\"", say::slope(s).trim_matches('"'), if side == Side::Left { "left" } else { "right" })
        }),
    );
    let landings = |l: Landings| format!("{{ every = {}, length = {} }}", say::length(l.every), say::length(l.length));
    out.maybe("landings", r.landings.map(landings));
    out.maybe("within", (!r.within.is_empty()).then(|| points(&r.within)));
}

fn near(out: &mut Page, n: &Near) {
    out.table("[[near]]");
    out.line("id", quoted(&n.id));
    let kind = match &n.kind {
        NearKind::Service(words) | NearKind::Footing(words) | NearKind::Other(words) => words,
        NearKind::Tree { .. } => "tree",
        NearKind::Boundary => "boundary",
        NearKind::Street => "street",
    };
    out.line("kind", quoted(kind));
    match &n.line[..] {
        [at] => out.line("at", point(*at)),
        line => out.line("line", points(line)),
    }
    if let NearKind::Tree { trunk } = n.kind {
        out.line("trunk", say::length(trunk));
    }
    out.maybe("depth", n.depth.map(say::length));
    out.maybe("clear", n.clear.map(say::length));
    out.text("source", &n.source);
    out.maybe("age_days", n.age_days.map(say::number));
    out.maybe("level", n.level.map(say::level));
    if let Some(w) = &n.holds {
        out.line("retained", say::length(w.retained));
        out.maybe("drained", w.drained.map(|d| d.to_string()));
        out.maybe("filter", w.filter.map(|f| f.to_string()));
    }
}

fn drain(out: &mut Page, d: &DrainWish) {
    out.table("[drain]");
    if let Some((rain, source)) = &d.rain {
        out.line(
            "rain",
            format!(
                "{{ intensity = {}, source = {}{} }}",
                say::rain(*rain),
                quoted(source),
                crate::ground_water::durations(d)
            ),
        );
    }
    if let Some((at, level)) = &d.outlet {
        out.line("outlet", format!("{{ at = {}, level = {} }}", point(*at), say::level(*level)));
    }
    for (key, value) in crate::ground_water::drain_lines(d) {
        out.line(key, value);
    }
    out.text("surface", &d.surface);
    out.line("uphill", say::length(d.uphill));
    out.text("fill", &d.fill);
    out.maybe("pipe", d.pipe.map(say::length));
    if !d.wanted {
        out.line("none", true);
    }
}

fn order(out: &mut Page, o: &OrderWish) {
    out.table("[order]");
    if !o.prices.is_empty() {
        out.text("prices", PRICES);
    }
    out.line("kerf", say::length(o.kerf));
    out.line("waste", say::share(o.waste));
    out.line("tax", say::share(o.tax));
    out.line("margin", say::share(o.margin));
    out.line(
        "crew",
        format!("{{ people = {}, hours_per_day = {} }}", say::number(o.people), say::time(o.hours_per_day)),
    );
    let (payload, volume) = (say::mass(o.payload), say::volume(o.load_volume));
    out.line("vehicle", format!("{{ payload = {payload}, volume = {volume} }}"));
    if !o.bought.is_empty() {
        let items: Vec<String> =
            o.bought.iter().map(|b| format!("  {},\n", quoted(&bought_file::spelled(b)))).collect();
        out.line("bought", format!("[\n{}]", items.concat()));
    }
}
