//! Does the plan hold together whatever is changed about the demo job?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_cases::{all_said, demo};
use groundhold_earth::basis::BASES;
use groundhold_earth::soil::CLASSES;
use groundhold_hold::systems::timber_posts::{Boards, CourseFit, Fill, TimberPostSpec};
use groundhold_hold::{PostChange, Spec};
use groundhold_order::OnHand;
use groundhold_plan::job::*;
use groundhold_plan::{check, plan, replan};
use groundhold_quantity::{Length, Level, Point, Pressure, RainIntensity, Slope};
use proptest::prelude::*;

/// One edit: what is changed, which of them, and by how much (−1 to 1, twice).
#[derive(Debug, Clone)]
struct Edit {
    what: usize,
    which: usize,
    by: (f64, f64),
}

type Change = fn(&mut Job, &Edit);

fn bought(job: &mut Job, e: &Edit) {
    let boards = ["board 200x50 UC4 C24", "post 125x125 UC4 C24", "post 150x150 UC4 C24"];
    let bars = OnHand {
        item: boards[e.which % 3].into(),
        stock_length: (!e.which.is_multiple_of(4)).then(|| Length::m(3.0 + 2.4 * e.by.0)),
        units: (e.which % 30) as f64,
    };
    let bags = OnHand { item: "concrete bag 20 kg".into(), stock_length: None, units: (e.which % 60) as f64 };
    job.order.bought.extend([bars, bags]);
}

/// Every kind of edit, by name so that a failing run says what it did.
const CHANGES: &[(&str, Change)] = &[
    ("pad corner", |j, e| moved(pick(&mut j.pads[0].corners, e.which), e.by, 1.5)),
    ("pad level", |j, e| j.pads[0].level = PadLevel::At(Level::m(101.08 + e.by.0))),
    ("pad balanced", |j, _| j.pads[0].level = PadLevel::Balance),
    ("pad fall", |j, e| {
        let way = groundhold_quantity::Vector::m(e.by.0, e.by.1 + 2.0);
        j.pads[0].fall = Some((Slope::ratio(0.05 * e.by.1.abs()), way));
    }),
    ("pad apron", |j, e| j.pads[0].apron = Length::m(e.by.0.abs())),
    ("pad build-up", |j, e| j.pads[0].build_up = Length::m(e.by.0.abs())),
    ("pad far away", |j, e| {
        j.pads[0].corners.iter_mut().for_each(|c| *c = Point::m(c.x + 20.0 * e.by.0, c.y + 20.0 * e.by.1));
    }),
    ("second pad", |j, e| {
        let mut second = j.pads[0].clone();
        second.id = "P2".into();
        second.corners.iter_mut().for_each(|c| *c = Point::m(c.x + 6.0 * e.by.0, c.y + 6.0 * e.by.1));
        second.level = PadLevel::At(Level::m(101.0 + e.by.0));
        j.pads.retain(|p| p.id != "P2");
        j.pads.push(second);
    }),
    ("wall corner", |j, e| {
        let wall = e.which % 2;
        moved(pick(&mut j.walls[wall].line, e.which / 2), e.by, 1.0);
    }),
    ("wall ends", |j, e| {
        let end = |x: f64| if x < 0.0 { WallEnd::At } else { WallEnd::Fade };
        j.walls[e.which % 2].ends = [end(e.by.0), end(e.by.1)];
    }),
    ("wall top", |j, e| {
        j.walls[e.which % 2].top = match e.which % 3 {
            0 => WallTop::FollowGround { above: Length::m(0.2 * e.by.0) },
            1 => WallTop::At(Level::m(101.2 + e.by.0)),
            _ => WallTop::AbovePad { pad: "P1".into(), by: Length::m(0.3 * e.by.0) },
        };
    }),
    ("wall turned round", |j, e| {
        let w = &mut j.walls[e.which % 2];
        w.retains_left = !w.retains_left;
    }),
    ("wall removed", |j, e| {
        if j.walls.len() > 1 {
            j.walls.swap_remove(e.which % 2);
            j.walls.push(j.walls[0].clone());
            j.walls[1].id = "W9".into();
        }
    }),
    ("fence", |j, e| {
        j.walls[e.which % 2].fence = Some(FenceWish {
            height: Length::m(0.2 + e.by.0.abs() * 1.8),
            wind: Pressure::kpa(0.1 + e.by.1.abs()),
            solid: groundhold_quantity::Share::percent(50.0),
            source: "invented".into(),
        });
    }),
    ("spacing", |j, e| spec(j, e).spacing = Length::m(1.65 + 1.35 * e.by.0)),
    ("post left out or moved", |j, e| {
        let at = Length::m(7.0 + 7.0 * e.by.0);
        let changes = &mut j.walls[e.which % 2].changes;
        changes.push(PostChange::without(at));
        if e.which % 3 != 0 {
            changes.push(PostChange::more(at + Length::m(0.8 * e.by.1)));
        }
    }),
    ("hole depth", |j, e| spec(j, e).hole.depth = (e.which % 5 != 0).then(|| Length::m(1.0 + 0.9 * e.by.0))),
    ("hole diameter", |j, e| spec(j, e).hole.diameter = Length::m(0.45 + 0.3 * e.by.0)),
    ("hole fill", |j, e| spec(j, e).hole.fill = if e.by.0 < 0.0 { Fill::Rammed } else { Fill::Concrete }),
    ("gravel", |j, e| spec(j, e).hole.gravel_base = Length::m(0.5 * e.by.0.abs())),
    ("boards", |j, e| spec(j, e).boards = if e.by.0 < 0.0 { Boards::InFront } else { Boards::Behind }),
    ("bury", |j, e| spec(j, e).bury = Length::m(0.4 * e.by.0.abs())),
    ("fit", |j, e| spec(j, e).fit = if e.by.0 < 0.0 { CourseFit::FromTop } else { CourseFit::FromBury }),
    ("neglect", |j, e| spec(j, e).neglect_top = Length::m(e.by.0.abs())),
    ("board height", |j, e| spec(j, e).board.height = Length::mm(200.0 + 100.0 * e.by.0)),
    ("stock", |j, e| spec(j, e).stock = vec![Length::m(2.4 + 2.0 * e.by.0), Length::m(3.6)]),
    ("soil", |j, e| j.ground.soil = CLASSES[e.which % CLASSES.len()].key.into()),
    ("turf and topsoil", |j, e| {
        (j.ground.turf, j.ground.topsoil) = (Length::m(0.1 * e.by.0.abs()), Length::m(0.6 * e.by.1.abs()));
    }),
    ("ground water", |j, e| j.ground.water_depth = Some(Length::m(3.0 * e.by.0.abs()))),
    ("basis", |j, e| j.about.basis = BASES[e.which % BASES.len()].key.into()),
    ("region", |j, e| {
        let known = ["generic", "uk-england", "us-model", "nz", "au-nsw", "au-qld", "au-vic"];
        j.about.region = known[e.which % known.len()].into();
    }),
    ("batter", |j, e| {
        j.batter =
            Batter { cut: Slope::one_in(2.6 + 2.4 * e.by.0), fill: Slope::one_in(2.6 + 2.0 * e.by.1), bench: None };
    }),
    ("load", |j, e| j.loads[0].value = Pressure::kpa(10.0 * e.by.0.abs())),
    ("load behind", |j, e| {
        j.loads.push(Load {
            on: format!("behind W{}", 1 + e.which % 2),
            what: "car".into(),
            value: Pressure::kpa(5.0),
        });
    }),
    ("rain", |j, e| {
        j.drain.rain = (e.which % 4 != 0).then(|| (RainIntensity::mm_per_h(100.0 * e.by.0.abs()), "invented".into()));
    }),
    ("outlet", |j, e| {
        let at = Point::m(5.0 + 8.0 * e.by.0, 2.0 + 6.0 * e.by.1);
        j.drain.outlet = (e.which % 4 != 0).then(|| (at, Level::m(100.0 + 1.5 * e.by.0)));
    }),
    ("no drain", |j, _| j.drain.wanted = false),
    ("swale", |j, e| {
        let mut s = groundhold_drain::SwaleWish::above(if e.which % 2 == 0 { "W1" } else { "W2" });
        s.fall = Slope::ratio(0.002 + 0.05 * e.by.0.abs());
        s.offset = Length::m(3.0 * e.by.1.abs());
        s.lining = groundhold_drain::LININGS[e.which % groundhold_drain::LININGS.len()];
        j.drain.swales = vec![s];
    }),
    ("weep holes", |j, e| {
        let spacing = Length::m(0.5 + 3.0 * e.by.0.abs());
        j.drain.weeps = (e.which % 3 != 0).then(|| groundhold_drain::WeepWish { spacing, ..Default::default() });
    }),
    ("rock probed", |j, e| {
        j.ground.rock.push((Point::m(6.0 + 6.0 * e.by.0, 6.0 + 6.0 * e.by.1), Length::m(1.2 * e.by.0.abs())));
    }),
    ("moisture", |j, e| j.ground.moisture = Some(groundhold_quantity::Share::fraction(0.6 * e.by.0.abs()))),
    ("further outlet", |j, e| {
        j.drain.more_outlets.push((Point::m(6.0 + 8.0 * e.by.0, 6.0 + 8.0 * e.by.1), Level::m(100.0 + e.by.0)));
    }),
    ("street", |j, e| {
        let mut near = j.near[0].clone();
        near.id = "N9".into();
        near.kind = NearKind::Street;
        near.line = vec![Point::m(-3.0, -3.0 + e.by.0), Point::m(18.0, -3.0 + e.by.1)];
        j.near.retain(|n| n.id != "N9");
        j.near.push(near);
    }),
    ("price removed", |j, e| {
        let n = j.order.prices.len();
        if n > 0 {
            j.order.prices.remove(e.which % n);
        }
    }),
    ("all prices removed", |j, _| j.order.prices.clear()),
    ("bought", |j, e| bought(j, e)),
    ("kerf and tax", |j, e| {
        j.order.kerf = Length::mm(8.0 * e.by.0.abs());
        j.order.tax = groundhold_quantity::Share::fraction(e.by.1.abs());
    }),
    ("crew", |j, e| j.order.people = (1 + e.which % 4) as f64),
    ("steps", |j, e| {
        moved(&mut j.flights[0].from, e.by, 3.0);
        j.flights[0].going = (e.which % 3 != 0).then(|| Length::m(0.32 + 0.12 * e.by.0));
        j.flights[0].width = Length::m(0.9 + 0.5 * e.by.1);
    }),
    ("no steps", |j, e| {
        if e.which % 2 == 0 {
            j.ramps.clear();
        } else {
            j.ramps[..].iter_mut().for_each(|r| r.width = Length::m(0.6 + e.by.0.abs()));
        }
    }),
    ("ramp", |j, e| {
        if let Some(r) = j.ramps.first_mut() {
            moved(pick(&mut r.path, e.which), e.by, 2.0);
            r.steepest = Slope::one_in(9.0 + 5.0 * e.by.0);
        }
    }),
    ("near removed", |j, e| {
        let n = j.near.len();
        if n > 0 {
            j.near.remove(e.which % n);
        }
    }),
    ("near moved", |j, e| j.near.iter_mut().flat_map(|n| n.line.iter_mut()).for_each(|p| moved(p, e.by, 4.0))),
    ("break line turned round", |j, e| pick(&mut j.measure.break_lines, e.which).reverse()),
    ("break line mixed", |j, e| {
        let line = pick(&mut j.measure.break_lines, e.which);
        let n = line.len();
        line.swap(e.which % n, (e.which / 7) % n);
    }),
    ("break lines left out", |j, _| j.measure.break_lines.truncate(1)),
    ("level row missing", |j, e| {
        let n = j.measure.book.len();
        j.measure.book.remove(e.which % n);
    }),
    ("level read wrong", |j, e| {
        let row = pick(&mut j.measure.book, e.which);
        row.intermediate = row.intermediate.map(|r| r + Length::m(e.by.0));
    }),
    ("position row missing", |j, e| {
        let n = j.measure.positions.len();
        let gone = j.measure.positions.remove(e.which % n).point;
        j.measure.break_lines.iter_mut().for_each(|l| l.retain(|p| *p != gone));
    }),
    ("tape read wrong", |j, e| {
        let row = pick(&mut j.measure.positions, e.which);
        if let Some((_, tape)) = row.ties.first_mut() {
            *tape += Length::m(0.3 * e.by.0);
        }
    }),
    ("rock", |j, e| {
        record(
            j,
            Event::Find(Find::Rock {
                wall: format!("W{}", 1 + e.which % 2),
                post: 1 + e.which % 16,
                chainage: (e.which % 3 != 0).then(|| Length::m(9.0 * e.by.0.abs())),
                at: (e.which % 5 == 0).then(|| Point::m(6.0 + 3.6 * e.by.0, if e.which % 2 == 0 { 9.4 } else { 3.6 })),
                depth: Length::m(e.by.1.abs()),
            }),
        );
    }),
    ("pipe", |j, e| {
        let at = Point::m(6.0 + 5.0 * e.by.0, 6.0 + 4.0 * e.by.1);
        record(j, Event::Find(Find::Service { what: "clay pipe".into(), line: vec![at], depth: Length::m(0.4) }));
    }),
    ("water", |j, e| {
        let element = ["W1", "W2", "P1", "S1", "nowhere"][e.which % 5].into();
        record(j, Event::Find(Find::Water { element, depth: Length::m(e.by.0.abs()) }));
    }),
    ("level error", |j, e| {
        let level = Level::m(101.0 + 1.5 * e.by.0);
        record(j, Event::Find(Find::LevelError { point: (1 + e.which % 62).to_string(), level }));
    }),
    ("built", |j, e| {
        let Ok(now) = plan(j) else { return };
        let Some(wall) = now.walls.get(e.which % 2) else { return };
        let n = wall.layout.posts.len().min(1 + e.which % 6);
        let posts = wall.layout.posts[..n].iter().map(groundhold_cases::as_built).collect();
        record(j, Event::Built(AsBuilt { says: "some posts".into(), element: wall.id.clone(), posts }));
    }),
    ("built whole", |j, e| {
        let element = ["P1", "S1", "R1", "W1", "W2"][e.which % 5].to_string();
        record(j, Event::Built(AsBuilt { says: element.clone(), element, posts: vec![] }));
    }),
];

fn pick<T>(list: &mut [T], which: usize) -> &mut T {
    let n = list.len();
    &mut list[which % n]
}

fn moved(p: &mut Point, by: (f64, f64), reach: f64) {
    *p = Point::m(p.x + reach * by.0, p.y + reach * by.1);
}

fn spec<'j>(j: &'j mut Job, e: &Edit) -> &'j mut TimberPostSpec {
    let Spec::TimberPosts(s) = &mut j.walls[e.which % 2].spec else { panic!("the demo's walls are of timber") };
    s
}

fn record(j: &mut Job, event: Event) {
    j.record.push(Entry { at: "2026-05-11T10:20:00".into(), event, note: String::new() });
}

fn edit() -> impl Strategy<Value = Edit> {
    let by = || -1.0..1.0;
    (0..CHANGES.len(), 0usize..1000, by(), by()).prop_map(|(what, which, x, y)| Edit { what, which, by: (x, y) })
}

/// Edits the demo, plans it where it can be planned, and gives what does not hold.
fn violations(edits: &[Edit]) -> Vec<String> {
    let mut job = demo();
    edits.iter().for_each(|e| CHANGES[e.what].1(&mut job, e));
    let names: Vec<&str> = edits.iter().map(|e| CHANGES[e.what].0).collect();
    match plan(&job) {
        Ok(p) => check(&p).iter().map(|v| format!("{names:?}: {} on {} by {}", v.rule, v.on, v.by)).collect(),
        Err(troubles) => {
            assert!(!troubles.is_empty(), "{names:?}: no plan and no word why");
            assert!(troubles.iter().all(|t| !t.says.is_empty()), "{names:?}: {}", all_said(&troubles));
            vec![]
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 32, max_shrink_iters: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_demo_job_edited_at_random_is_planned_or_refused_and_its_balances_hold(edits in prop::collection::vec(edit(), 1..6)) {
        let found = violations(&edits);
        prop_assert!(found.is_empty(), "{}", found.join("\n"));
    }
}

#[test]
fn every_kind_of_edit_alone_is_planned_or_refused_and_its_balances_hold() {
    let mut found = vec![];
    for what in 0..CHANGES.len() {
        for (which, by) in [(17, (0.5, -0.4)), (42, (-0.9, 0.9))] {
            found.extend(violations(&[Edit { what, which, by }]));
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// The plan of a job made anew, and with the help of the plan before an edit; both in full, or what was said against it.
fn anew_and_again(before: &groundhold_plan::Plan, after: &Job) -> (String, String) {
    (format!("{:?}", plan(after)), format!("{:?}", replan(before, after)))
}

#[test]
fn a_plan_made_again_after_any_kind_of_edit_is_the_plan_made_anew() {
    let before = plan(&demo()).unwrap();
    for (what, (name, change)) in CHANGES.iter().enumerate() {
        let mut after = demo();
        change(&mut after, &Edit { what, which: 17, by: (0.2, -0.15) });
        let (anew, again) = anew_and_again(&before, &after);
        assert!(anew == again, "`{name}` is planned otherwise where the plan before it is at hand");
    }
    let (anew, again) = anew_and_again(&before, &demo());
    assert!(anew == again, "a job that was not edited is planned otherwise the second time");
}
