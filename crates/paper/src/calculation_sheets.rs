//! Will it stand, and how do you know? Basis and soil, checks wall by wall, and every working behind them.

use groundhold_earth::Combination;
use groundhold_hold::{Check, CheckKind};
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, trim};
use groundhold_working::Trace;

use crate::calculation::Calculations;
use crate::drawings::wall_name;
use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};

const PART: &str = "Calculations";

/// Basis, checks, workings.
pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let mut calculations = Calculations::default();
    let mut flow = Flow::new(Paper::A4, PART, "Basis and soil");
    basis(&mut flow, plan);
    let mut all = flow.finish();
    for wall in &plan.walls {
        let mut flow = Flow::new(Paper::A4, PART, &format!("Checks of {}", wall.id));
        checks(&mut flow, plan, wall, &mut calculations);
        all.extend(flow.finish());
    }
    all.extend(crate::as_found_sheets::leaves(plan, &mut calculations));
    let mut flow = Flow::new(Paper::A4, PART, "Other figures");
    others(&mut flow, plan, &mut calculations);
    all.extend(flow.finish());
    let mut flow = Flow::new(Paper::A4, PART, "Workings").in_columns(2);
    flow.title("Workings");
    flow.paragraph("Every calculation once, with its source, what was put in, and the lines of the hand calculation. Angles are in degrees; a number out of the valid range gives no figure. A range in brackets is the source's own, any other is ours.");
    calculations.write(&mut flow);
    all.extend(flow.finish());
    all
}

fn basis(flow: &mut Flow, plan: &Plan) {
    let b = plan.basis;
    let u = plan.job.about.units;
    flow.title("Basis and soil");
    flow.paragraph(&format!("Margins are judged by: {}. Source: {}, {}.", b.name, b.source.work, b.source.place));
    let mut t = Table::new(vec![
        sentences("Set of factors"),
        figures("Permanent"),
        figures("Variable"),
        figures("tan φ"),
        figures("c′"),
        figures("c_u"),
        figures("Embedment wanted"),
        figures("Sliding wanted"),
        figures("Overturning wanted"),
        figures("Bearing wanted"),
        figures("Slip wanted"),
    ])
    .with_symbols();
    for c in b.combinations {
        let Combination { permanent, variable, tan_phi, cohesion, undrained, wanted, .. } = c;
        let f = |v: &f64| trim(*v, 2);
        t.row([
            format!("{} ({})", c.name, c.key),
            f(permanent),
            f(variable),
            f(tan_phi),
            f(cohesion),
            f(undrained),
            f(&wanted.embedment),
            f(&wanted.sliding),
            f(&wanted.overturning),
            f(&wanted.bearing),
            f(&wanted.slip),
        ]);
    }
    flow.table(&t);
    flow.heading("Soil");
    let s = &plan.soil;
    let mut facts = vec![
        ("Soil".to_string(), s.name.clone()),
        (
            "Unit weight".into(),
            format!(
                "{} kN/m³ moist, {} kN/m³ saturated",
                trim(s.unit_weight.to_kn_per_m3(), 1),
                trim(s.unit_weight_saturated.to_kn_per_m3(), 1)
            ),
        ),
        (
            "Friction angle".into(),
            format!("{}° in the soil, {}° against timber", trim(s.phi.to_deg(), 1), trim(s.delta_timber.to_deg(), 1)),
        ),
        ("Cohesion".into(), u.pressure(s.cohesion)),
    ];
    facts.extend(s.undrained.map(|c| ("Undrained strength".to_string(), u.pressure(c))));
    facts.push(("Source".into(), s.source.clone()));
    facts.extend(s.class.map(|c| ("How to tell it".to_string(), c.by_hand.to_string())));
    let water =
        plan.job.ground.water_depth.map_or("none was seen".into(), |d| format!("{} below the surface", u.length(d)));
    facts.push(("Water in the ground".into(), water));
    flow.facts(&facts);
    flow.small("The soil was told by hand. Who needs more certainty has it tested.");
    if !plan.job.loads.is_empty() {
        flow.heading("Loads");
        let mut t = Table::new(vec![words("On"), sentences("What"), figures("How much")]);
        for l in &plan.job.loads {
            t.row([l.on.clone(), l.what.clone(), u.pressure(l.value)]);
        }
        flow.table(&t);
    }
}

/// The kinds of check that were made, in the order in which they were.
fn kinds(wall: &WallPlan) -> Vec<CheckKind> {
    let mut all = vec![];
    for c in &wall.verdict.checks {
        if !all.contains(&c.kind) {
            all.push(c.kind);
        }
    }
    all
}

fn checks(flow: &mut Flow, plan: &Plan, wall: &WallPlan, calculations: &mut Calculations) {
    let u = plan.job.about.units;
    let v = &wall.verdict;
    flow.title(&format!("Checks of {}", wall_name(plan, &wall.id, &wall.of)));
    flow.paragraph(&format!(
        "Retained at most {}. Largest use of what is there: {} %. The worst place of each kind in each state; above 100 % more is asked than is there.",
        u.length(wall.layout.retained),
        trim(v.utilisation() * 100.0, 0)
    ));
    let mut t = Table::new(vec![
        sentences("Check"),
        words("Where"),
        sentences("State"),
        sentences("By"),
        figures("Asked"),
        figures("There is"),
        words("Unit"),
        figures("Use"),
        sentences("Workings"),
    ]);
    for kind in kinds(wall) {
        for governs in [true, false] {
            for c in worst_by_state(wall, kind, governs) {
                let used_for = format!("{}, {} {}", kind.words(), wall.id, c.on);
                let on = if c.on.is_empty() { "whole wall".to_string() } else { c.on.clone() };
                let use_ = if c.utilisation.is_finite() {
                    format!("{} %", trim(c.utilisation * 100.0, 0))
                } else {
                    "no capacity".into()
                };
                let refs =
                    if governs { calculations.numbers(&c.traces, used_for.trim()) } else { "shown beside".into() };
                let method = if c.basis.is_empty() || c.basis == c.method {
                    c.method.to_string()
                } else {
                    format!("{}; {}", c.method, c.basis)
                };
                t.row([
                    kind.words().into(),
                    on,
                    c.case.words().into(),
                    method,
                    trim(c.demand, 3),
                    trim(c.capacity, 3),
                    c.unit.0.into(),
                    if c.fails() { format!("{use_} !") } else { use_ },
                    refs,
                ]);
            }
        }
    }
    flow.table(&t);
    margins(flow, plan, wall, calculations);
    pushes(flow, wall, calculations);
    if let Some(s) = &v.slip {
        flow.heading("Slip of the bank");
        flow.paragraph(&format!(
            "Critical circle at {}: centre {} in front of the wall line at level {}, radius {}; resisting over driving moment {}.",
            u.run(s.chainage),
            u.run(s.centre_x),
            u.level(s.centre_level),
            u.run(s.radius),
            trim(s.factor, 2)
        ));
    }
}

/// The worst check of a kind in each state.
fn worst_by_state(wall: &WallPlan, kind: CheckKind, governs: bool) -> Vec<&Check> {
    let mut worst: Vec<&Check> = vec![];
    for c in wall.verdict.checks.iter().filter(|c| c.kind == kind && c.governs == governs) {
        let same = |w: &&mut &Check| w.case == c.case && (governs || w.method == c.method);
        match worst.iter_mut().find(same) {
            Some(w) if c.utilisation > w.utilisation => *w = c,
            Some(_) => {}
            None => worst.push(c),
        }
    }
    worst
}

/// Embedment of the post that holds most, by every method.
fn margins(flow: &mut Flow, plan: &Plan, wall: &WallPlan, calculations: &mut Calculations) {
    let u = plan.job.about.units;
    let highest = wall.layout.posts.iter().reduce(|a, b| if b.retained > a.retained { b } else { a });
    let Some(post) = highest else { return };
    let rows: Vec<_> = wall.verdict.margins.iter().filter(|m| m.post == post.number).collect();
    if rows.is_empty() {
        return;
    }
    let explained = format!(
        "It holds {} and stands {} deep. Accepted methods disagree; the one by which the wall is judged is marked.",
        u.length(post.retained),
        u.length(post.depth)
    );
    let mut t = Table::new(vec![
        sentences("State"),
        sentences("Method"),
        figures("Depth asked"),
        figures("Factor there is"),
        figures("Factor wanted"),
        words("Judges"),
        words("Working"),
        sentences("Remark"),
    ]);
    for m in rows {
        let used_for = format!("embedment, {} post {}", wall.id, post.number);
        t.row([
            m.case.words().into(),
            m.method.into(),
            m.depth.map_or("none found".into(), |d: Length| u.length(d)),
            m.factor.map_or("–".into(), |f| trim(f, 2)),
            trim(m.wanted, 2),
            if m.governs { "yes".into() } else { "–".into() },
            calculations.numbers(&m.trace, &used_for),
            m.note.clone(),
        ]);
    }
    flow.titled(&format!("Embedment of post {} by every method", post.number), &explained, &t);
}

fn pushes(flow: &mut Flow, wall: &WallPlan, calculations: &mut Calculations) {
    if wall.verdict.pushes.is_empty() {
        return;
    }
    let mut t = Table::new(vec![
        sentences("State"),
        sentences("Theory"),
        figures("Horizontal kN/m"),
        figures("Downwards kN/m"),
        figures("Arm m"),
        words("At"),
        figures("Force kN"),
        figures("Moment kNm"),
        words("Judges"),
        words("Working"),
    ]);
    for p in &wall.verdict.pushes {
        t.row([
            p.case.words().into(),
            p.method.into(),
            trim(p.horizontal.to_kn_per_m(), 3),
            trim(p.vertical.to_kn_per_m(), 3),
            trim(p.arm.to_m(), 3),
            p.on.clone(),
            p.force.map_or("–".into(), |f| trim(f.to_kn(), 3)),
            p.moment.map_or("–".into(), |m| trim(m.to_knm(), 3)),
            if p.governs { "yes".into() } else { "–".into() },
            calculations.numbers([&p.trace], &format!("push on {}", wall.id)),
        ]);
    }
    flow.titled("Push at the highest place", "", &t);
}

/// Everything else that was worked out: survey, steps, ramps, water, dig, time, and what findings rest on.
fn others(flow: &mut Flow, plan: &Plan, calculations: &mut Calculations) {
    let mut t = Table::new(vec![words("Of"), sentences("Figure"), sentences("Workings")]);
    let mut put = |of: &str, figure: &str, traces: &[&Trace]| {
        if !traces.is_empty() {
            let refs = calculations.numbers(traces.iter().copied(), &format!("{figure}, {of}"));
            t.row([of.into(), figure.into(), refs]);
        }
    };
    if let Some(r) = &plan.survey.reduced {
        put("survey", "level book", &r.traces.iter().collect::<Vec<_>>());
    }
    for f in &plan.shaped.flights {
        put(&f.id, "riser, going and pitch", &[&f.trace]);
    }
    for r in &plan.shaped.ramps {
        put(&r.id, "gradient", &[&r.trace]);
    }
    for w in &plan.drained.walls {
        put(&w.wall, "flow in the design rain", &w.flow_trace.iter().collect::<Vec<_>>());
        let filter = w.filter.iter().flat_map(|f| &f.traces).collect::<Vec<_>>();
        put(&w.wall, "stone against soil", &filter);
    }
    for p in &plan.drained.pipes {
        put(&p.wall, "pipe", &p.traces.iter().collect::<Vec<_>>());
    }
    for s in plan.dug.streams() {
        put("dig", &format!("balance of {}", s.earth.words()), &s.traces.iter().collect::<Vec<_>>());
        let loads: Vec<&Trace> = s.loads.iter().map(|l| &l.trace).collect();
        put("dig", &format!("loads of {}", s.earth.words()), &loads);
    }
    put("dig", "heaps and work by hand", &plan.dug.traces.iter().collect::<Vec<_>>());
    put("programme", "length of the longest chain", &[&plan.programme.expected_trace]);
    for f in &plan.findings {
        let figure = format!("finding {} ({})", f.kind.code, f.kind.name);
        put(&f.place.to_string(), &figure, &f.trace.iter().collect::<Vec<_>>());
    }
    flow.title("Other figures");
    flow.paragraph("Where each of the other figures was worked out. The numbers are those of the workings on the sheets that follow.");
    flow.table(&t);
}
