//! Sieves, probes, rain by duration, swales, soakaways and weep holes: how are they read from a job file and written to one?

use groundhold_drain::{INFILTRATION, Lining, SoakawayWish, SwaleWish, WeepWish, channel_lining};
use groundhold_plan::job::{DrainWish, GroundWish, PadWish};
use groundhold_quantity::{Length, Level, Point, Quantity, RainIntensity, Share, Time, parse};
use toml_edit::{Item, Value as Toml};

use crate::page::Node;
use crate::situations;
use crate::spelled as say;

/// A list of pairs of quantities, in text: `[["5 min", "110 mm/h"], …]`.
fn pairs<A: Quantity, B: Quantity>(n: &Node, key: &str) -> Vec<(A, B)> {
    if !n.has(key) {
        return vec![];
    }
    let Some(list) = n.raw(key).and_then(Item::as_array) else {
        n.complain(key, "expected a list of pairs");
        return vec![];
    };
    let mut found = vec![];
    for (i, v) in list.iter().enumerate() {
        let texts: Option<Vec<&str>> = v.as_array().map(|a| a.iter().filter_map(Toml::as_str).collect());
        match texts.as_deref() {
            Some([a, b]) => match (parse::<A>(a), parse::<B>(b)) {
                (Ok(a), Ok(b)) => found.push((a, b)),
                (Err(e), _) => n.complain(key, format!("pair {}: {e}", i + 1)),
                (_, Err(e)) => n.complain(key, format!("pair {}: {e}", i + 1)),
            },
            _ => n.complain(key, format!("pair {} is not two texts with their units", i + 1)),
        }
    }
    found
}

pub(crate) fn sieves(n: &Node) -> Vec<(Length, Share)> {
    pairs(n, "sieves")
}

pub(crate) fn rock(n: &Node) -> Vec<(Point, Length)> {
    n.tables("rock").iter().filter_map(|p| p.point("at").zip(p.quantity("depth"))).collect()
}

pub(crate) fn between(n: &Node) -> Option<(Level, Level)> {
    if !n.has("between") {
        return None;
    }
    let texts: Vec<&str> = n.raw("between")?.as_array()?.iter().filter_map(Toml::as_str).collect();
    let levels: Vec<Level> = texts.iter().filter_map(|t| parse(t).ok()).collect();
    match levels.as_slice() {
        [low, high] if low < high && texts.len() == 2 => Some((*low, *high)),
        _ => {
            n.complain("between", "expected two levels, the lower first, such as [\"100.8 m\", \"101.3 m\"]");
            None
        }
    }
}

pub(crate) fn rain_curve(n: &Node) -> Vec<(Time, RainIntensity)> {
    pairs(n, "durations")
}

pub(crate) fn outlets(n: &Node) -> Vec<(Point, Level)> {
    n.tables("outlets").iter().filter_map(|o| o.point("at").zip(o.quantity("level"))).collect()
}

pub(crate) fn soakaway(n: &Node) -> Option<SoakawayWish> {
    let (at, level, width, depth) = (n.point("at"), n.quantity("level"), n.quantity("width"), n.quantity("depth"));
    let tested = n.table("test").and_then(|t| rate_of(&t));
    Some(SoakawayWish {
        length: n.quantity("length"),
        empty: n.quantity("empty").unwrap_or(Share::fraction(0.3)),
        rate: n.quantity("rate").or(tested),
        source: n.text("source").unwrap_or_default(),
        at: at?,
        level: level?,
        width: width?,
        depth: depth?,
    })
}

/// The rate of a trial pit.
fn rate_of(t: &Node) -> Option<RainIntensity> {
    let sizes = [t.quantity::<Length>("length"), t.quantity("width"), t.quantity("depth")];
    let time: Option<Time> = t.quantity("time");
    let [l, w, d] = [sizes[0]?, sizes[1]?, sizes[2]?];
    let given = [l.to_m(), w.to_m(), d.to_m(), time?.to_s()].map(Into::into).to_vec();
    let rate = INFILTRATION.work_in_order(given).ok()?.values;
    match rate.get(2) {
        Some(groundhold_working::Value::One(f)) => Some(RainIntensity::m_per_s(*f)),
        _ => None,
    }
}

pub(crate) fn swale(n: &Node) -> Option<SwaleWish> {
    let usual = SwaleWish::above(n.text("above")?);
    let lining: Lining = match n.text("lining") {
        None => usual.lining,
        Some(words) => match channel_lining(&words) {
            Some(l) => *l,
            None => {
                let known: Vec<&str> = groundhold_drain::LININGS.iter().map(|l| l.name).collect();
                n.complain("lining", format!("found `{words}`, expected one of {}", known.join("; ")));
                return None;
            }
        },
    };
    let sides: Option<groundhold_quantity::Slope> = n.quantity("sides");
    Some(SwaleWish {
        bed: n.quantity("bed").unwrap_or(usual.bed),
        side: sides.map_or(usual.side, |s| 1.0 / s.to_ratio()),
        fall: n.quantity("fall").unwrap_or(usual.fall),
        lining,
        freeboard: n.quantity("freeboard").unwrap_or(usual.freeboard),
        offset: n.quantity("offset").unwrap_or(usual.offset),
        above: usual.above,
    })
}

pub(crate) fn weeps(n: &Node) -> WeepWish {
    let usual = WeepWish::default();
    WeepWish {
        diameter: n.quantity("diameter").unwrap_or(usual.diameter),
        spacing: n.quantity("spacing").unwrap_or(usual.spacing),
        above: n.quantity("above").unwrap_or(usual.above),
    }
}

/// Keys and values of a table, as they are written.
pub(crate) type Lines = Vec<(&'static str, String)>;

fn list(pairs: impl Iterator<Item = (String, String)>) -> String {
    format!("[{}]", pairs.map(|(a, b)| format!("[{a}, {b}]")).collect::<Vec<_>>().join(", "))
}

fn point(p: Point) -> String {
    format!("[{}, {}]", say::metres(p.x), say::metres(p.y))
}

pub(crate) fn ground_lines(g: &GroundWish) -> Lines {
    let mut all = vec![];
    if !g.sieves.is_empty() {
        all.push(("sieves", list(g.sieves.iter().map(|(d, p)| (say::length(*d), say::share(*p))))));
    }
    all.extend(g.moisture.map(|w| ("moisture", say::share(w))));
    if !g.rock.is_empty() {
        let probe = |(at, d): &(Point, Length)| format!("{{ at = {}, depth = {} }}", point(*at), say::length(*d));
        all.push(("rock", format!("[{}]", g.rock.iter().map(probe).collect::<Vec<_>>().join(", "))));
    }
    all.extend(situations::lines(g));
    all
}

pub(crate) fn pad_lines(p: &PadWish) -> Lines {
    p.between.map(|(a, b)| ("between", format!("[{}, {}]", say::level(a), say::level(b)))).into_iter().collect()
}

/// `, durations = [[…]]` for the table of the rain; nothing where there is one intensity.
pub(crate) fn durations(d: &DrainWish) -> String {
    if d.rain_curve.is_empty() {
        return String::new();
    }
    format!(", durations = {}", list(d.rain_curve.iter().map(|(t, i)| (say::time(*t), say::rain(*i)))))
}

pub(crate) fn drain_lines(d: &DrainWish) -> Lines {
    let mut all = vec![];
    if !d.more_outlets.is_empty() {
        let one = |(at, l): &(Point, Level)| format!("{{ at = {}, level = {} }}", point(*at), say::level(*l));
        all.push(("outlets", format!("[{}]", d.more_outlets.iter().map(one).collect::<Vec<_>>().join(", "))));
    }
    if let Some(s) = &d.soakaway {
        let mut parts = vec![format!("at = {}", point(s.at)), format!("level = {}", say::level(s.level))];
        parts.extend(s.length.map(|l| format!("length = {}", say::length(l))));
        parts.extend([
            format!("width = {}", say::length(s.width)),
            format!("depth = {}", say::length(s.depth)),
            format!("empty = {}", say::share(s.empty)),
        ]);
        parts.extend(s.rate.map(|r| format!("rate = {}", say::rain(r))));
        if !s.source.is_empty() {
            parts.push(format!("source = {}", Toml::from(s.source.as_str()).to_string().trim()));
        }
        all.push(("soakaway", format!("{{ {} }}", parts.join(", "))));
    }
    if !d.swales.is_empty() {
        let one = |s: &SwaleWish| {
            format!(
                "{{ above = {}, bed = {}, sides = {}, fall = {}, lining = \"{}\", freeboard = {}, offset = {} }}",
                Toml::from(s.above.as_str()).to_string().trim(),
                say::length(s.bed),
                say::slope(groundhold_quantity::Slope::ratio(1.0 / s.side)),
                say::slope(s.fall),
                s.lining.name,
                say::length(s.freeboard),
                say::length(s.offset)
            )
        };
        all.push(("swale", format!("[{}]", d.swales.iter().map(one).collect::<Vec<_>>().join(", "))));
    }
    all.extend(d.weeps.map(|w| {
        let parts = [say::length(w.diameter), say::length(w.spacing), say::length(w.above)];
        ("weeps", format!("{{ diameter = {}, spacing = {}, above = {} }}", parts[0], parts[1], parts[2]))
    }));
    all
}
