//! Where does the water go? Catchments, pipes, stone, and the invert levels to lay to.

use groundhold_drain::{PipeRun, WallDrain};
use groundhold_plan::Plan;
use groundhold_quantity::{Length, Units, trim};

use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences};
use crate::wall_schedule::{m, metres, mm, short};

pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let d = &plan.drained;
    if d.walls.is_empty() {
        return vec![];
    }
    let u = plan.job.about.units;
    let mut flow = Flow::new(Paper::A4, "Schedules", "Drainage");
    flow.title("Drainage");
    flow.paragraph(&rain(plan));
    for wall in &d.walls {
        flow.heading(&format!("Behind {}", wall.wall));
        let pipe = d.pipe(&wall.wall);
        let mut all = facts(wall, u);
        all.extend(pipe.iter().flat_map(|p| pipe_facts(p, u)));
        flow.facts(&all);
        if let Some(pipe) = pipe {
            flow.table(&inverts(pipe, u));
            flow.table(&reaches(pipe, u));
        }
    }
    for s in &d.swales {
        flow.heading(&format!("Swale above {}", s.wish.above));
        flow.facts(&swale_facts(s, u));
    }
    if let Some(s) = &d.soakaway {
        flow.heading("Soakaway");
        flow.facts(&soakaway_facts(s, u));
    }
    flow.finish()
}

fn rain(plan: &Plan) -> String {
    match &plan.job.drain.rain {
        Some((i, source)) => format!("Design rain {} mm/h ({source}).", trim(i.to_mm_per_h(), 1)),
        None => "No design rain was given, so no flow was worked out.".into(),
    }
}

fn swale_facts(s: &groundhold_drain::Swale, u: Units) -> Vec<(String, String)> {
    let mut all = vec![
        ("Line".to_string(), format!("{} along the contour, falling {}", u.run(s.length), u.slope(s.wish.fall))),
        (
            "Section".to_string(),
            format!(
                "bed {}, sides 1 in {}, {} deep at least, {} from edge to edge, {} dug",
                u.length(s.wish.bed),
                trim(s.wish.side, 2),
                u.length(s.depth_least),
                u.run(s.width),
                u.volume(s.dug)
            ),
        ),
        ("Catchment".to_string(), u.area(s.catchment.area())),
    ];
    if let (Some(q), Some(w)) = (s.flow, &s.water) {
        let words = format!(
            "{}: {} deep, {} m/s, {} Pa on {} ({} % of what it stands)",
            flow_words(q),
            u.length(w.depth),
            trim(w.velocity_m_per_s, 2),
            trim(w.shear.to_pa(), 1),
            s.wish.lining.name,
            trim(w.utilisation * 100.0, 0)
        );
        all.push(("In the design rain".to_string(), words));
    }
    all
}

fn soakaway_facts(s: &groundhold_drain::Soakaway, u: Units) -> Vec<(String, String)> {
    let rate = s.wish.rate.map_or(0.0, |r| r.to_mm_per_h());
    vec![
        (
            "Size".to_string(),
            format!("{} × {}, {} below the incoming pipe", u.run(s.length), u.run(s.wish.width), u.run(s.wish.depth)),
        ),
        ("Ground takes".to_string(), format!("{} mm/h ({})", trim(rate, 1), s.wish.source)),
        (
            "Storage".to_string(),
            format!(
                "{} of {} asked by a rain of {} min",
                u.volume(s.has),
                u.volume(s.asked),
                trim(s.duration.to_min(), 0)
            ),
        ),
        ("Half empty after".to_string(), format!("{} h", trim(s.half_empty.to_h(), 1))),
    ]
}

/// Stretch by stretch: fall, flow and depth of water.
fn reaches(p: &PipeRun, u: Units) -> Table {
    let mut t = Table::new(vec![
        figures(&format!("From{}", m(u))),
        figures(&format!("To{}", m(u))),
        figures("Fall"),
        figures("Flow"),
        figures("Carries, full"),
        figures("Filled"),
        figures("Velocity"),
    ]);
    for r in &p.reaches {
        t.row([
            metres(r.chainage.0, u),
            metres(r.chainage.1, u),
            u.slope(r.fall),
            r.flow.map_or("–".into(), flow_words),
            flow_words(r.capacity),
            r.filled.map_or("–".into(), |f| format!("{} %", trim(f * 100.0, 0))),
            r.velocity_m_per_s.map_or("–".into(), |v| format!("{} m/s", trim(v, 2))),
        ]);
    }
    t
}

fn flow_words(f: groundhold_quantity::Flow) -> String {
    format!("{} l/s", trim(f.to_l_per_s(), 3))
}

fn facts(w: &WallDrain, u: Units) -> Vec<(String, String)> {
    let c = &w.catchment;
    let mut all =
        vec![("Catchment".to_string(), format!("{}, of it {} beyond the survey", u.area(c.area()), u.area(c.beyond)))];
    all.extend(w.flow.map(|f| ("Flow in the design rain".to_string(), flow_words(f))));
    all.extend(w.arrival.as_ref().map(|a| {
        let words = format!(
            "{} of way falling {}: {} min over land, {} min by Kirpich; the rain is read at {} min",
            u.run(a.way),
            u.slope(a.fall),
            trim(a.overland.to_min(), 1),
            trim(a.kirpich.to_min(), 1),
            trim(a.time.to_min(), 1)
        );
        ("Water arrives in".to_string(), words)
    }));
    all.extend(w.weeps.as_ref().map(|h| {
        let words = format!(
            "{}, one every {}, passing {} before water stands to the ground behind",
            h.count,
            u.run(h.spacing),
            flow_words(h.flow)
        );
        ("Weep holes".to_string(), words)
    }));
    match &w.zone {
        Some(z) => all.extend([
            (
                "Drain stone".into(),
                format!(
                    "{} wide, at most {} high, {} in place",
                    u.length(z.width),
                    u.length(z.height_most),
                    u.volume(z.stone)
                ),
            ),
            ("Soil cap on it".into(), u.volume(z.cap)),
            ("Fabric".into(), format!("{} with laps", u.area(z.fabric))),
        ]),
        None => all.push(("Drain stone".into(), "none: the drain is left out".into())),
    }
    if let Some(f) = &w.filter {
        let yes = |b: bool| if b { "yes" } else { "no" };
        all.push((
            "Stone against soil".into(),
            format!(
                "stone D15 {} mm; keeps the soil back by itself: {}; open enough: {}; fabric openings at most {} mm",
                trim(f.stone_d15.to_mm(), 2),
                yes(f.keeps_back),
                yes(f.drains),
                trim(f.fabric_opening.to_mm(), 2)
            ),
        ));
    }
    all
}

fn pipe_facts(p: &PipeRun, u: Units) -> Vec<(String, String)> {
    let mut all = vec![
        (
            "Pipe".to_string(),
            format!(
                "{} bore, {}, of it {} slotted behind the wall",
                u.length(p.diameter),
                u.run(p.length),
                u.run(p.behind_wall)
            ),
        ),
        ("Least fall".into(), u.slope(p.fall)),
        ("Carries, full".into(), flow_words(p.capacity)),
    ];
    if let Some(used) = p.utilisation {
        all.push(("Used (three quarters full is all)".into(), format!("{} %", trim(used * 100.0, 1))));
    }
    if let (Some(filled), Some(v)) = (p.filled, p.velocity_m_per_s) {
        all.push((
            "At the design flow".into(),
            format!("{} % of the bore deep, {}", trim(filled * 100.0, 0), speed(v, u)),
        ));
    }
    all.extend(
        p.joins
            .as_ref()
            .map(|w| ("Runs into".to_string(), format!("the catch pit at the low end of the drain of {w}"))),
    );
    match &p.outlet {
        Some(o) => all.push((
            "Outlet".into(),
            format!(
                "{} east, {} north, level {}",
                u.run(groundhold_quantity::Length::m(o.at.x)),
                u.run(groundhold_quantity::Length::m(o.at.y)),
                u.level(o.level)
            ),
        )),
        None if p.joins.is_some() => {}
        None => all.push(("Outlet".into(), "none given".into())),
    }
    all.push((
        "Trench to the outlet".into(),
        format!(
            "{}, at most {} deep, {} dug, {} stone, {} put back",
            u.run(p.trench.length),
            u.length(p.trench.deepest),
            u.volume(p.trench.dug),
            u.volume(p.trench.stone),
            u.volume(p.trench.put_back)
        ),
    ));
    all
}

/// Every point of the pipe line with its invert level.
fn inverts(p: &PipeRun, u: Units) -> Table {
    let mut t = Table::new(vec![
        figures(&format!("Along the pipe{}", m(u))),
        figures(&format!("East{}", m(u))),
        figures(&format!("North{}", m(u))),
        figures("Invert level"),
        figures(&format!("Below its start{}", mm(u))),
        sentences("Where"),
    ]);
    let Some(first) = p.points.first() else { return t };
    let last = p.points.len() - 1;
    for (i, at) in p.points.iter().enumerate() {
        let place = match (at.wall_chainage, i == last) {
            (Some(c), _) => format!("behind {} at {}", p.wall, u.run(c)),
            (None, true) => "outlet".into(),
            (None, false) => "on the way to the outlet".into(),
        };
        t.row([
            metres(at.chainage, u),
            metres(groundhold_quantity::Length::m(at.at.x), u),
            metres(groundhold_quantity::Length::m(at.at.y), u),
            u.level(at.invert),
            short(first.invert - at.invert, u),
            place,
        ]);
    }
    t
}

/// A speed in metres or feet a second.
fn speed(metres_per_second: f64, u: Units) -> String {
    match u {
        Units::Metric => format!("{} m/s", trim(metres_per_second, 2)),
        Units::Feet => format!("{} ft/s", trim(Length::m(metres_per_second).to_ft(), 2)),
    }
}
