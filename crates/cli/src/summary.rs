//! What comes of a plan, on one screen.

use groundhold_finding::{Finding, Remedy, Severity, Whose};
use groundhold_hold::{CheckKind, LoadCase};
use groundhold_plan::{Difference, Plan};
use groundhold_quantity::{Length, Level, Money, Units};

use crate::Ending;

/// 1 when something must not be built so.
pub fn ending(plan: &Plan) -> Ending {
    if plan.gravest() == Some(Severity::Stop) { Ending::Stop } else { Ending::Fine }
}

fn money(plan: &Plan, m: Money) -> String {
    format!("{} {}", plan.job.about.currency.0, m.shown())
}

/// The screen.
pub fn screen(plan: &Plan) -> String {
    let mut out = String::new();
    let mut line = |s: String| {
        out.push_str(s.trim_end());
        out.push('\n');
    };
    let about = &plan.job.about;
    line(format!("{} · {}{}", about.name, about.place, if about.demo { " · invented demo data" } else { "" }));
    for (label, text) in rows(plan) {
        for (i, part) in text.iter().enumerate() {
            line(format!("  {:<9} {part}", if i == 0 { label } else { "" }));
        }
    }
    line(String::new());
    for f in plan.findings.iter().take(MOST) {
        line(one_finding(f));
    }
    if plan.findings.len() > MOST {
        line(format!("  … and {} more: `groundhold plan --findings`", plan.findings.len() - MOST));
    }
    line(format!("  {} Local rules and licensed practice decide; nothing here replaces them.", counts(plan)));
    out
}

/// Findings shown on the screen before the rest is only counted.
const MOST: usize = 8;

fn counts(plan: &Plan) -> String {
    let of = |s: Severity| plan.findings.iter().filter(|f| f.severity == s).count();
    let parts: Vec<String> = [Severity::Stop, Severity::Ask, Severity::Watch, Severity::Note]
        .into_iter()
        .filter(|s| of(*s) > 0)
        .map(|s| format!("{} {}", of(s), s.word()))
        .collect();
    if parts.is_empty() { "No findings.".into() } else { format!("{}.", parts.join(", ")) }
}

fn one_finding(f: &Finding) -> String {
    let says: String = if f.says.chars().count() > 128 {
        f.says.chars().take(127).chain("…".chars()).collect()
    } else {
        f.says.clone()
    };
    format!("  {:<5} {} {:<11} {says}", f.severity.word(), f.kind.code, f.place.to_string())
}

fn rows(plan: &Plan) -> Vec<(&'static str, Vec<String>)> {
    let u = plan.job.about.units;
    let mut rows = vec![("measure", measure(plan, u))];
    let pads = plan.shaped.pads.iter().map(|p| {
        format!(
            "{} {} at {}, {}",
            p.id,
            u.area(p.area),
            u.level(p.plane.level_at(p.polygon.centroid())),
            u.slope(p.plane.slope())
        )
    });
    let flights = plan.shaped.flights.iter().map(|f| {
        format!(
            "{} {} risers of {}, going {}, 2R+G {}",
            f.id,
            f.risers,
            u.length(f.riser),
            u.length(f.going),
            u.length(f.two_r_plus_g)
        )
    });
    let ramps = plan
        .shaped
        .ramps
        .iter()
        .map(|r| format!("{} {} long, {}, rises {}", r.id, u.run(r.length), u.slope(r.gradient), u.length(r.rise)));
    rows.push(("shape", pads.chain(flights).chain(ramps).collect()));
    rows.push(("hold", plan.walls.iter().map(|w| wall(w, u)).collect()));
    let mut water: Vec<String> = plan.drained.pipes.iter().map(|p| pipe(p, u)).collect();
    water.extend(plan.drained.swales.iter().map(|s| {
        let flow = s.flow.map_or("flow not known".into(), |q| format!("{:.2} l/s", q.to_l_per_s()));
        format!(
            "swale above {} {} long at {}, {} deep, {flow}",
            s.wish.above,
            u.run(s.length),
            u.slope(s.wish.fall),
            u.length(s.depth_least)
        )
    }));
    water.extend(plan.drained.soakaway.iter().map(|s| {
        format!(
            "soakaway {} × {}, holds {} of {} asked",
            u.run(s.length),
            u.run(s.wish.width),
            u.volume(s.has),
            u.volume(s.asked)
        )
    }));
    rows.push(("drain", water));
    rows.push(("dig", dig(plan, u)));
    rows.push(("order", order_rows(plan, u)));
    rows.push((
        "set out",
        vec![format!(
            "{} marks, {} posts, {} diagonals, from {} pegs",
            plan.setout.rows.len(),
            plan.setout.posts.len(),
            plan.setout.diagonals.len(),
            plan.setout.pegs.len()
        )],
    ));
    let p = &plan.programme;
    let days = p.length_days;
    rows.push((
        "build",
        vec![format!(
            "{} tasks, {} hold points, {:.0} working days ({:.0} to {:.0}), {:.0} person-hours",
            p.tasks.len(),
            p.hold_points.len(),
            days.1.ceil(),
            days.0.ceil(),
            days.2.ceil(),
            p.hours.likely.to_h()
        )],
    ));
    if !plan.job.record.is_empty() {
        rows.push(("record", plan.job.record.iter().map(|e| format!("{} {}", e.at, event(e, u))).collect()));
    }
    rows.retain(|(_, text)| !text.is_empty());
    rows
}

fn event(e: &groundhold_plan::job::Entry, u: Units) -> String {
    use groundhold_plan::job::{Event, Find};
    let what = match &e.event {
        Event::Built(b) => format!("built {}", b.says),
        Event::Find(Find::Rock { wall, post, depth, .. }) => {
            format!("rock at {wall} post {post}, {} down", u.length(*depth))
        }
        Event::Find(Find::Service { what, depth, .. }) => format!("{what}, {} down", u.length(*depth)),
        Event::Find(Find::Water { element, depth }) => {
            format!("water at {element}, {} down", u.length(*depth))
        }
        Event::Find(Find::LevelError { point, level }) => {
            format!("point {point} is at {}", u.level(*level))
        }
        Event::Note => String::new(),
    };
    if e.note.is_empty() { what } else { format!("{what} ({})", e.note) }
}

fn measure(plan: &Plan, u: Units) -> Vec<String> {
    let s = &plan.survey;
    if s.quick {
        return vec![format!("a plane slope over {}", u.area(s.ground.area()))];
    }
    let book = s.reduced.as_ref().map(|r| {
        let close = match (r.misclose, r.allowed) {
            (Some(m), Some(a)) => format!("closes to {} of {} allowed", u.length(m), u.length(a)),
            _ => "does not close".into(),
        };
        format!("{} rows, {} set-ups, {close}", r.rows.len(), r.set_ups)
    });
    let ground =
        format!("{} points, {} triangles, {}", s.points.len(), s.ground.triangles().len(), u.area(s.ground.area()));
    vec![book.into_iter().chain([ground]).collect::<Vec<_>>().join("; ")]
}

fn wall(w: &groundhold_plan::WallPlan, u: Units) -> String {
    let l = &w.layout;
    let worst = |kind: CheckKind| w.verdict.worst(kind).map_or(0.0, |c| c.utilisation);
    let blocked =
        w.verdict.checks.iter().filter(|c| c.case == LoadCase::DrainBlocked).map(|c| c.utilisation).fold(0.0, f64::max);
    let main = w.case.spec.system().main_checks().iter();
    let used: Vec<String> = main.map(|k| format!("{:.0} % {}", worst(*k) * 100.0, k.short())).collect();
    format!(
        "{} {} long, holds {}, stands {}: {}; used {}, {:.0} % drain blocked",
        w.id,
        u.run(l.length),
        u.length(l.retained),
        u.length(l.exposed),
        l.headline,
        used.join(", "),
        blocked * 100.0
    )
}

fn pipe(p: &groundhold_drain::PipeRun, u: Units) -> String {
    let flow = p.flow.map_or(String::from("flow not known"), |q| {
        format!("{:.2} l/s of {:.2}", q.to_l_per_s(), p.capacity.to_l_per_s())
    });
    format!("{} pipe {} {} long at {}, {flow}", p.wall, u.length(p.diameter), u.run(p.length), u.slope(p.fall))
}

fn dig(plan: &Plan, u: Units) -> Vec<String> {
    let d = &plan.dug;
    let s = &d.subsoil;
    let (fewest, most) = d.person_days();
    let mut all = vec![format!(
        "subsoil {} dug, {} placed, {} over ({} loose), {} short; topsoil {}; {} loads away; {:.0} to {:.0} person-days by hand",
        u.volume(s.dug),
        u.volume(s.placed),
        u.volume(s.over),
        u.volume(s.over_loose),
        u.volume(s.short),
        u.volume(d.topsoil.dug),
        d.loads_away(),
        fewest.ceil(),
        most.ceil()
    )];
    if d.rock.dug > groundhold_quantity::Volume::ZERO {
        all.push(format!("rock {} broken out, {} loose", u.volume(d.rock.dug), u.volume(d.rock.over_loose)));
    }
    if let Some(c) = plan.groundwork.carried.as_ref().filter(|c| !c.carries.is_empty()) {
        let mean = c.mean().map_or(String::new(), |m| format!(", {} on the mean", u.run(m)));
        all.push(format!("{} carries, least work {:.0} m³·m (bound {:.0}){mean}", c.carries.len(), c.work, c.bound));
    }
    if let Some(t) = &d.turves {
        all.push(format!("{} turves cut, {} laid again", t.pieces_cut, t.pieces_laid));
    }
    all
}

fn order_rows(plan: &Plan, u: Units) -> Vec<String> {
    let mut rows: Vec<String> = plan
        .take_off
        .cutting
        .iter()
        .map(|c| {
            let proof = if c.proven { "proven cheapest".into() } else { format!("bound {}", money(plan, c.bound)) };
            format!(
                "{}: {} lengths, {} waste, {} ({proof})",
                c.material,
                c.bars.len(),
                u.run(c.waste),
                money(plan, c.cost)
            )
        })
        .collect();
    let q = &plan.quote;
    let complete =
        if q.is_complete() { String::new() } else { format!("; INCOMPLETE, no price for {}", q.missing.join(", ")) };
    rows.push(format!("net {}, with margin and tax {}{complete}", money(plan, q.net), money(plan, q.total)));
    rows
}

/// All findings with their remedies and what each costs.
pub fn findings(plan: &Plan) -> String {
    let mut out = String::new();
    for f in &plan.findings {
        out.push_str(&format!(
            "{} {} {} · {}\n    {}\n",
            f.severity.word().to_uppercase(),
            f.kind.code,
            f.kind.name,
            f.place,
            f.says
        ));
        if let Some(u) = f.utilisation {
            out.push_str(&format!("    demand over capacity {u:.2}\n"));
        }
        f.remedies.iter().for_each(|r| out.push_str(&remedy(plan, r)));
    }
    out.push_str(&format!("{}\n", counts(plan)));
    out
}

/// A remedy with its cost, and the commands that apply it.
fn remedy(plan: &Plan, r: &Remedy) -> String {
    let shown = if r.proven { ", shown to mend it" } else { "" };
    let cost = match (r.whose, r.cost) {
        (Whose::Theirs, _) => " (not ours to decide)".to_string(),
        (Whose::Ours, Some(c)) if c >= Money::ZERO => format!(" (costs {} more{shown})", money(plan, c)),
        (Whose::Ours, Some(c)) => format!(" (saves {}{shown})", money(plan, -c)),
        (Whose::Ours, None) => String::new(),
    };
    let mut out = format!("    → {}{cost}\n", r.says);
    for a in &r.change {
        out.push_str(&format!("      groundhold set {} {} \"{}\"\n", a.element, a.field, a.value));
    }
    out
}

/// The level at which each pad would balance.
pub fn balance(found: &Result<Vec<(String, Option<Level>)>, Vec<groundhold_plan::Trouble>>, u: Units) -> String {
    let Ok(pads) = found else { return String::new() };
    let one = |(id, level): &(String, Option<Level>)| match level {
        Some(l) => format!("{id} would balance cut and fill at {}\n", u.level(*l)),
        None => format!("{id} does not balance within 3 m of the ground\n"),
    };
    pads.iter().map(one).collect()
}

/// The order on the screen.
pub fn order(plan: &Plan) -> String {
    let u = plan.job.about.units;
    let mut out = String::new();
    for l in &plan.take_off.lines {
        let amount = l.amount.map_or("no price".into(), |m| money(plan, m));
        let long = l.stock_length.map_or(String::new(), |s| format!(" {}", stock(u, s)));
        out.push_str(&format!(
            "  {:<36} {:>9} {:<5} {amount:>14}  {}\n",
            format!("{}{long}", l.item),
            groundhold_quantity::trim(l.bought, 2),
            l.unit.shown(),
            l.what
        ));
    }
    for x in &plan.take_off.left_over {
        let long = x.stock_length.map_or(String::new(), |s| format!(" at {}", plan.job.about.units.run(s)));
        out.push_str(&format!("  left over: {} {}{long}\n", groundhold_quantity::trim(x.units, 2), x.item));
    }
    let q = &plan.quote;
    out.push_str(&format!(
        "  net {}, margin {}, tax {}, total {}\n",
        money(plan, q.net),
        money(plan, q.margin),
        money(plan, q.tax),
        money(plan, q.total)
    ));
    out
}

/// A stock length: to the decimetre, or in feet and inches.
fn stock(u: Units, l: Length) -> String {
    match u {
        Units::Metric => format!("{:.1} m", l.to_m()),
        Units::Feet => u.length(l),
    }
}

/// A length on the tape: to the millimetre, its unit where it is wanted; or in feet and inches.
fn tape(u: Units, l: Length, with_unit: bool) -> String {
    match u {
        Units::Metric => format!("{:.3}{}", l.to_m(), if with_unit { " m" } else { "" }),
        Units::Feet => u.length(l),
    }
}

/// The set-out table on the screen.
pub fn setout(plan: &Plan) -> String {
    let u = plan.job.about.units;
    let mut out = String::new();
    if let Some((a, b, l)) = &plan.setout.base {
        out.push_str(&format!("  base line {a}–{b}, {}\n", tape(u, *l, true)));
    }
    for r in &plan.setout.rows {
        let tie = |t: &groundhold_setout::Tie| format!("{} {}", t.peg, tape(u, t.reads, false));
        let ties = r.ties.as_ref().map_or(String::new(), |(a, b)| format!("{}, {}", tie(a), tie(b)));
        let off = r.offset.map_or(String::new(), |(x, y)| format!("{} / {}", tape(u, x, false), tape(u, y, false)));
        let level = r.mark.wanted.map_or(String::new(), |l| u.level(l).trim_end_matches(" m").into());
        out.push_str(&format!("  {:<8} {off:<18} {ties:<24} {level:>9}  {}\n", r.mark.id, r.mark.what));
    }
    out
}

/// What changes between two plans.
pub fn difference(d: &Difference, after: &Plan) -> String {
    let u = after.job.about.units;
    if d.is_empty() {
        return "nothing changes\n".into();
    }
    let mut out = String::from("what changes\n");
    let mut line = |s: String| out.push_str(&format!("  {s}\n"));
    d.levels.iter().for_each(|x| line(format!("{}: {} → {}", x.what, u.level(x.before), u.level(x.after))));
    d.lengths.iter().for_each(|x| line(format!("{}: {} → {}", x.what, u.run(x.before), u.run(x.after))));
    for p in &d.posts {
        let show = |f: &groundhold_plan::PostFigures| {
            format!("hole {} deep, {} wide, post {} long", u.length(f.depth), u.length(f.diameter), u.length(f.length))
        };
        let at = u.run(p.chainage);
        match (&p.before, &p.after) {
            (Some(b), Some(a)) => line(format!("{} post {} ({at}): {} → {}", p.wall, a.number, show(b), show(a))),
            (None, Some(a)) => line(format!("{} new post {} at {at}: {}", p.wall, a.number, show(a))),
            (Some(b), None) => line(format!("{} post {} at {at} is gone", p.wall, b.number)),
            (None, None) => {}
        }
    }
    d.volumes.iter().for_each(|x| line(format!("{}: {} → {}", x.what, u.volume(x.before), u.volume(x.after))));
    for c in &d.order {
        let q = |s: &Option<groundhold_order::Side>| {
            s.map_or("none".into(), |s| format!("{} {}", groundhold_quantity::trim(s.quantity, 2), s.unit.shown()))
        };
        let long = c.stock_length.map_or(String::new(), |s| format!(" {}", stock(u, s)));
        let sign = if c.difference >= Money::ZERO { "+" } else { "" };
        line(format!("{}{long}: {} → {} ({sign}{})", c.item, q(&c.before), q(&c.after), c.difference.shown()));
    }
    for l in &d.left_over {
        let long = l.stock_length.map_or(String::new(), |s| format!(" at {}", u.run(s)));
        let n = |units: f64| groundhold_quantity::trim(units, 2);
        line(format!("left over: {}{long}: {} → {}", l.item, n(l.before), n(l.after)));
    }
    if let Some(p) = &d.price {
        line(format!("{}: {} → {}", p.what, money(after, p.before), money(after, p.after)));
    }
    for (code, place, says) in &d.findings_new {
        line(format!("new {code} {place}: {says}"));
        let same = |f: &&Finding| f.kind.code == code && f.place.to_string() == *place;
        let stop = after.findings.iter().find(same).filter(|f| f.severity == Severity::Stop);
        stop.iter().flat_map(|f| &f.remedies).for_each(|r| remedy(after, r).lines().for_each(|l| line(l.into())));
    }
    d.findings_gone.iter().for_each(|(code, place, _)| line(format!("gone {code} {place}")));
    out
}
