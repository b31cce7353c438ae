//! What changes when the ground disagrees, and what stays because it is built?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_cases::{DEMO, as_built, assert_has, demo, demo_with, found, has, planned};
use groundhold_finding::{Adjust, Severity, Whose};
use groundhold_hold::Post;
use groundhold_plan::job::*;
use groundhold_plan::{Plan, apply, check, compare, plan_priced, rock_along};
use groundhold_quantity::{Length, Level, Point, distance};

/// The downhill wall's posts 1 to 5 as the demo plans them.
fn five_posts() -> (Event, Vec<Post>) {
    let plan = planned(&demo());
    let posts = plan.wall("W2").unwrap().layout.posts[..5].to_vec();
    let built =
        AsBuilt { says: "W2 posts 1-5".into(), element: "W2".into(), posts: posts.iter().map(as_built).collect() };
    (Event::Built(built), posts)
}

/// Rock 450 mm down at the third post of the uphill wall, with the place of that day as the command line writes it.
fn rock() -> Event {
    rock_at(3)
}

fn rock_at(post: usize) -> Event {
    let p = planned(&demo()).wall("W1").unwrap().layout.posts[post - 1].clone();
    let depth = Length::mm(450.0);
    Event::Find(Find::Rock { wall: "W1".into(), post, chainage: Some(p.chainage), at: Some(p.face), depth })
}

/// Asserts that every post stands where it stood, as deep, and is counted as built.
fn stand(plan: &Plan, posts: &[Post]) {
    let wall = plan.wall("W2").unwrap();
    for was in posts {
        let near = |p: &&Post| distance(p.face, was.face) < Length::mm(1.0);
        let is = wall.layout.posts.iter().find(near).unwrap_or_else(|| {
            let all: Vec<_> = wall.layout.posts.iter().map(|p| (p.number, p.face)).collect();
            panic!("post {} stood at {:?}; posts stand at {all:?}", was.number, was.face)
        });
        assert!(is.built, "post {} is no longer built", was.number);
        assert!(
            (is.depth - was.depth).abs() < Length::mm(0.6),
            "post {}: {:?} and {:?}",
            was.number,
            is.depth,
            was.depth
        );
        assert!((is.hole_diameter - was.hole_diameter).abs() < Length::mm(0.6));
    }
    assert_eq!(wall.layout.posts.iter().filter(|p| p.built).count(), posts.len());
    assert_eq!(check(plan), []);
}

#[test]
fn posts_that_stand_stay_when_rock_is_found_at_the_other_wall() {
    let (built, posts) = five_posts();
    let plan = planned(&demo_with(&[built, rock()]));
    stand(&plan, &posts);
    for was in &posts {
        let is = plan.wall("W2").unwrap().layout.post(was.number).unwrap();
        // The record is written to the millimetre.
        assert!((is.chainage - was.chainage).abs() < Length::mm(2.0), "{:?} and {:?}", is.chainage, was.chainage);
    }
}

#[test]
fn posts_that_stand_stay_when_the_pad_goes_up_or_down_by_50_mm() {
    let (built, posts) = five_posts();
    for by in [-50.0, 50.0] {
        let mut job = demo_with(std::slice::from_ref(&built));
        let PadLevel::At(level) = job.pads[0].level else { panic!("the demo's pad has a level") };
        job.pads[0].level = PadLevel::At(level + Length::mm(by));
        stand(&planned(&job), &posts);
    }
}

#[test]
fn posts_that_stand_stay_when_the_spacing_changes() {
    let (built, posts) = five_posts();
    for spacing in ["1.0 m", "0.8 m", "1.5 m"] {
        let adjust = Adjust { element: "W2".into(), field: "spec.spacing".into(), value: spacing.into() };
        let plan = planned(&apply(&demo_with(std::slice::from_ref(&built)), &adjust).unwrap());
        stand(&plan, &posts);
        let before = planned(&demo());
        assert_ne!(
            before.wall("W2").unwrap().layout.posts.len(),
            plan.wall("W2").unwrap().layout.posts.len(),
            "another spacing of {spacing} leaves the number of posts as it was"
        );
    }
}

#[test]
fn what_stands_is_neither_dug_nor_poured_nor_bought_again() {
    let (built, posts) = five_posts();
    let (before, after) = (planned(&demo()), planned(&demo_with(&[built])));
    let (b, a) = (&before.wall("W2").unwrap().layout, &after.wall("W2").unwrap().layout);
    assert!(a.concrete() < b.concrete() && a.hole_spoil() < b.hole_spoil());
    let first = |l: &groundhold_hold::Layout| l.holes.iter().take(posts.len()).map(|h| h.spoil.to_m3()).sum::<f64>();
    assert!((b.hole_spoil().to_m3() - a.hole_spoil().to_m3() - first(b)).abs() < 1e-3);
    assert!(after.quote.total < before.quote.total, "{:?} and {:?}", after.quote.total, before.quote.total);
}

/// The demo with these purchases in its job file.
fn with_bought(list: &str, events: &[Event]) -> Job {
    let entry = |event: &Event| Entry { at: "2026-05-11T10:20:00".into(), event: event.clone(), note: String::new() };
    let text = DEMO.replacen("kerf   = \"4 mm\"", &format!("kerf   = \"4 mm\"\nbought = {list}"), 1);
    let text = events.iter().fold(text, |text, e| groundhold_exchange::append_entry(&text, &entry(e)));
    groundhold_cases::job(&text, groundhold_cases::DEMO_TABLES)
}

#[test]
fn boards_bought_with_their_length_are_cut_first_and_what_is_not_needed_is_left_over() {
    let before = planned(&demo());
    let job = with_bought("[\"8 of board 200x50 UC4 C24 at 4.8 m\", \"3 of post 150x150 UC4 C24 at 6.0 m\"]", &[]);
    let plan = planned(&job);
    let boards = plan.take_off.cutting.iter().find(|c| c.material.starts_with("board")).unwrap();
    let long = boards.bars.iter().filter(|b| b.limited && (b.stock - Length::m(4.8)).abs() < Length::mm(1.0)).count();
    assert_eq!(long, 8, "{:?}", boards.bars.len());
    assert!(plan.quote.total < before.quote.total && !has(&plan, "O-007") && plan.take_off.left_over.is_empty());
    // More than the job needs: what is not cut is left over.
    let much = planned(&with_bought("[\"90 of board 200x50 UC4 C24 at 3.6 m\"]", &[]));
    let left = &much.take_off.left_over[0];
    assert!(left.units > 40.0 && left.stock_length == Some(Length::m(3.6)), "{left:?}");
    // Without a length it is said.
    let unsaid = planned(&with_bought("{ \"board 200x50 UC4 C24\" = 8 }", &[]));
    assert!(found(&unsaid, "O-007")[0].remedies[0].says.contains("at 4.8 m"));
    assert_eq!(check(&plan), []);
}

#[test]
fn rock_says_what_of_the_posts_bought_is_left_over_and_what_is_still_to_buy() {
    let all: Vec<String> = planned(&demo())
        .take_off
        .cutting
        .iter()
        .filter(|c| c.material.starts_with("post 150"))
        .flat_map(|c| c.bars.iter().map(|b| format!("\"1 of {} at {} m\"", c.material, b.stock.to_m())))
        .collect();
    let list = format!("[{}]", all.join(", "));
    let before = planned(&with_bought(&list, &[]));
    let posts =
        |p: &Plan| p.take_off.lines.iter().filter(|l| l.item.starts_with("post 150")).map(|l| l.bought).sum::<f64>();
    assert_eq!(posts(&before), 0.0, "all posts are bought");
    let job = with_bought(&list, &[rock()]);
    let plan = plan_priced(&job).unwrap();
    let f = found(&plan, "H-015")[0];
    let aside = f.remedies.iter().find(|r| r.change.iter().any(|a| a.value.contains(','))).unwrap();
    let after = planned(&apply(&job, &aside.change[0]).unwrap());
    // One post more than was bought.
    let d = compare(&before, &after);
    assert!(posts(&after) >= 1.0 && d.order.iter().any(|c| c.item.starts_with("post 150")), "{d:?}");
    // And with the post left standing on the rock, a shorter one: what is left over is said.
    let short = compare(&before, &planned(&job));
    assert!(!short.left_over.is_empty() || !short.order.is_empty(), "{short:?}");
    assert!(compare(&before, &before).left_over.is_empty());
}

#[test]
fn posts_that_stand_were_cut_from_what_was_bought() {
    let (built, posts) = five_posts();
    let list = "[\"6 of post 125x125 UC4 C24 at 3.0 m\", \"400 of concrete bag 20 kg\"]";
    let left = |p: &Plan, item: &str| -> f64 {
        let left = p.take_off.left_over.iter().filter(|l| l.item.starts_with(item)).map(|l| l.units).sum::<f64>();
        let used = p.take_off.lines.iter().filter(|l| l.item.starts_with(item)).map(|l| l.on_hand).sum::<f64>();
        left + used
    };
    let (before, after) = (planned(&with_bought(list, &[])), planned(&with_bought(list, &[built])));
    assert_eq!(left(&before, "post 125"), 6.0);
    // Two posts of less than 1.5 m come out of each 3 m.
    let used = posts.iter().map(|p| p.length.to_m()).sum::<f64>() / 3.0;
    let now = left(&after, "post 125");
    assert!(now <= 6.0 - used.ceil() && now >= 1.0, "{now} are on site, {used} were used");
    assert!(left(&after, "concrete") < left(&before, "concrete"));
    assert_eq!(check(&after), []);
}

#[test]
fn a_pad_that_goes_up_leaves_built_posts_too_short_and_one_that_goes_down_has_them_cut() {
    let (built, posts) = five_posts();
    let at = |by: f64| {
        let mut job = demo_with(std::slice::from_ref(&built));
        let PadLevel::At(level) = job.pads[0].level else { panic!("the demo's pad has a level") };
        job.pads[0].level = PadLevel::At(level + Length::mm(by));
        planned(&job)
    };
    let up = at(50.0);
    let f = found(&up, "H-041");
    assert!(f.len() == 1 && f[0].place.element == "W2" && f[0].says.contains("50 mm higher"), "{f:?}");
    let boards = |p: &Plan| {
        let all = p.programme.tasks.iter().find(|t| t.id == "W2/boards").unwrap();
        format!("{all:?}")
    };
    assert!(!boards(&up).contains("cut down first"));
    let down = at(-50.0);
    assert!(!has(&down, "H-041") && boards(&down).contains("post 1 by 50 mm"), "{}", boards(&down));
    let w = down.wall("W2").unwrap();
    for (is, was) in w.layout.posts.iter().filter(|p| p.built).zip(&posts) {
        assert!((is.top + Length::mm(50.0) - was.top).abs() < Length::mm(1.0));
        assert!((is.bottom - was.bottom).abs() < Length::mm(2.0), "the underside of a post that stands does not move");
    }
    assert!(!has(&at(0.0), "H-041") && !boards(&at(0.0)).contains("cut down"));
}

#[test]
fn a_record_without_the_length_of_its_posts_still_reads() {
    let (Event::Built(mut b), _) = five_posts() else { panic!("nothing built") };
    b.posts.iter_mut().for_each(|p| p.length = None);
    let plan = planned(&demo_with(&[Event::Built(b)]));
    assert_eq!(plan.wall("W2").unwrap().layout.posts.iter().filter(|p| p.built).count(), 5);
}

/// Asserts that every remedy of ours for a refused hole is priced and leaves no refused hole; gives how many there are.
fn ours_pass(job: &Job, plan: &Plan) -> usize {
    let f = found(plan, "H-015")[0];
    assert!(f.utilisation.is_some_and(|u| u > 1.0) && f.trace.is_some(), "{f:?}");
    let ours: Vec<_> = f.remedies.iter().filter(|r| r.whose == Whose::Ours).collect();
    for r in &ours {
        assert!(r.proven && r.cost.is_some(), "{r:?}");
        let mended = r.change.iter().fold(job.clone(), |j, a| apply(&j, a).unwrap());
        let after = planned(&mended);
        assert!(!has(&after, "H-015"), "{} leaves {:?}", r.says, found(&after, "H-015")[0].says);
        assert_eq!(after.quote.total - plan.quote.total, r.cost.unwrap(), "{}", r.says);
        assert_eq!(check(&after), []);
    }
    ours.len()
}

/// In clay the first one and a half hole widths count for nothing (Broms): 450 mm of a hole 450 mm wide hold nothing, and
/// no wider hole or post more changes that. What is left is no post in that place.
#[test]
fn rock_at_450_mm_is_mended_in_one_step_by_a_post_moved_along_or_by_two_beside_it() {
    let job = demo_with(&[rock()]);
    let plan = plan_priced(&job).unwrap();
    let f = found(&plan, "H-015")[0];
    let moved: Vec<_> = f.remedies.iter().filter(|r| r.change.iter().any(|a| a.field == "posts.moved")).collect();
    assert_eq!(moved.len(), 2, "{:?}", f.remedies);
    let rock = rock_along(&rock_of(&job), plan.wall("W1").unwrap()).unwrap();
    for r in moved {
        assert!(r.proven && r.change.len() == 1, "{r:?}");
        let after = planned(&apply(&job, &r.change[0]).unwrap());
        assert!(!has(&after, "H-015") && !has(&after, "B-016"), "{}", r.says);
        let w = after.wall("W1").unwrap();
        let nearest = w.layout.posts.iter().map(|p| (p.chainage - rock).abs()).reduce(Length::min).unwrap();
        assert!(
            nearest >= Length::mm(305.0),
            "a hole of 450 mm is offered {nearest:?} from the middle of the refused one"
        );
        assert_eq!(check(&after), []);
        // The rock is still where it was found, for the drawings and the next person.
        assert!((rock_along(&rock_of(&job), w).unwrap() - rock).abs() < Length::mm(2.0));
        assert_eq!(w.case.refusals.len(), 1);
    }
}

fn rock_of(job: &Job) -> Find {
    let mut finds = job.record.iter().filter_map(|e| match &e.event {
        Event::Find(f @ Find::Rock { .. }) => Some(f.clone()),
        _ => None,
    });
    finds.next_back().unwrap()
}

#[test]
fn a_rock_stays_where_it_was_found_when_the_spacing_changes() {
    let job = demo_with(&[rock()]);
    let place = |p: &Plan| p.wall("W1").unwrap().case.refusals[0].chainage;
    let before = place(&planned(&job));
    for spacing in ["0.8 m", "2.0 m"] {
        let adjust = Adjust { element: "W1".into(), field: "spec.spacing".into(), value: spacing.into() };
        let after = planned(&apply(&job, &adjust).unwrap());
        assert!((place(&after) - before).abs() < Length::mm(2.0), "{spacing}");
    }
    // A post stands in the rock at a spacing of 0.8 m, none does at 2.0 m.
    let at = |s: &str| {
        let adjust = Adjust { element: "W1".into(), field: "spec.spacing".into(), value: s.into() };
        planned(&apply(&job, &adjust).unwrap()).wall("W1").unwrap().layout.posts.iter().any(|p| p.refused_at.is_some())
    };
    assert!(at("0.8 m") && !at("2.0 m"));
}

#[test]
fn a_rock_off_the_wall_is_said_to_fit_nothing() {
    let Event::Find(Find::Rock { wall, post, chainage, depth, .. }) = rock() else { panic!("no rock") };
    let away = Find::Rock { wall, post, chainage, at: Some(Point::m(6.0, 2.0)), depth };
    let plan = planned(&demo_with(&[Event::Find(away)]));
    assert!(has(&plan, "N-010") && !has(&plan, "H-015"));
    assert!(!has(&planned(&demo_with(&[rock()])), "N-010"));
}

#[test]
fn a_corner_that_meets_rock_is_neither_moved_nor_left_out() {
    let corner = planned(&demo()).wall("W1").unwrap().layout.posts.iter().find(|p| p.corner).unwrap().number;
    let job = demo_with(&[rock_at(corner)]);
    let plan = plan_priced(&job).unwrap();
    let fields = found(&plan, "H-015")[0].remedies.iter().flat_map(|r| r.change.iter().map(|a| a.field.clone()));
    assert!(fields.clone().all(|f| f != "posts.moved" && f != "posts.left_out"), "{:?}", fields.collect::<Vec<_>>());
    let at = plan.wall("W1").unwrap().layout.post(corner).unwrap().chainage;
    let adjust = Adjust { element: "W1".into(), field: "posts.left_out".into(), value: format!("{:.3} m", at.to_m()) };
    let kept = planned(&apply(&job, &adjust).unwrap());
    assert_eq!(kept.wall("W1").unwrap().layout.posts.len(), plan.wall("W1").unwrap().layout.posts.len());
    assert!(found(&kept, "H-040").iter().any(|f| f.says.contains("corner")));
    assert!(!has(&plan, "H-040"));
}

#[test]
fn rock_at_450_mm_refuses_the_hole_and_names_who_can_mend_it() {
    let job = demo_with(&[rock()]);
    let plan = plan_priced(&job).unwrap();
    let refused = found(&plan, "H-015");
    assert_eq!(refused.len(), 1, "{:?}", refused.iter().map(|f| &f.says).collect::<Vec<_>>());
    let f = refused[0];
    assert_eq!((f.severity, f.place.element.as_str(), f.place.on.as_str()), (Severity::Stop, "W1", "post 3"));
    assert!(f.remedies.iter().any(|r| r.says.contains("dowelled into the rock")), "{:?}", f.remedies);
    let posts: Vec<_> = plan.wall("W1").unwrap().layout.posts.iter().map(|p| (p.chainage, p.depth, p.corner)).collect();
    println!("{} remedies of ours; posts {posts:?}", ours_pass(&job, &plan));
}

#[test]
fn rock_100_mm_short_of_the_depth_has_remedies_of_ours_that_pass() {
    let before = planned(&demo());
    let mut ours = 0;
    for post in &before.wall("W1").unwrap().layout.posts[3..7] {
        let depth = post.depth - Length::mm(100.0);
        let find = Find::Rock {
            wall: "W1".into(),
            post: post.number,
            chainage: Some(post.chainage),
            at: Some(post.face),
            depth,
        };
        let job = demo_with(&[Event::Find(find)]);
        let plan = plan_priced(&job).unwrap();
        if has(&plan, "H-015") {
            ours += ours_pass(&job, &plan);
        }
    }
    assert!(ours > 0, "no hole refused 100 mm early has a remedy of ours");
}

#[test]
fn rock_at_a_post_known_by_its_number_alone_is_found_again() {
    let find = Find::Rock { wall: "W1".into(), post: 3, chainage: None, at: None, depth: Length::mm(450.0) };
    let plan = planned(&demo_with(&[Event::Find(find)]));
    assert!(found(&plan, "H-015").iter().any(|f| f.place.on == "post 3"));
}

#[test]
fn remedies_are_priced_and_proven_by_planning_again() {
    let plan = plan_priced(&demo_with(&[rock()])).unwrap();
    let ours: Vec<_> = plan.findings.iter().flat_map(|f| &f.remedies).filter(|r| r.whose == Whose::Ours).collect();
    assert!(ours.iter().all(|r| r.change.is_empty() || r.cost.is_some()), "{ours:?}");
    assert!(ours.iter().any(|r| r.proven));
    assert!(ours.iter().filter(|r| r.proven).any(|r| r.cost.is_some_and(|c| c.amount() != 0.0)), "{ours:?}");
}

#[test]
fn a_pipe_nobody_knew_stops_the_work_and_the_holes_beside_it() {
    let post = planned(&demo()).wall("W1").unwrap().layout.posts[3].clone();
    let pipe =
        |at: Point| Event::Find(Find::Service { what: "clay pipe".into(), line: vec![at], depth: Length::mm(300.0) });
    let beside = planned(&demo_with(&[pipe(Point::m(post.at.x + 0.3, post.at.y + 0.1))]));
    assert_has(&beside, &["N-007", "N-001"]);
    assert!(found(&beside, "N-001").iter().any(|f| f.place.element == "W1" && f.place.on == "post 4"));
    assert_eq!(found(&beside, "N-007")[0].severity, Severity::Stop);
    let away = planned(&demo_with(&[pipe(Point::m(-1.0, 12.0))]));
    assert!(has(&away, "N-007") && found(&away, "N-001").len() == found(&planned(&demo()), "N-001").len());
}

#[test]
fn a_pipe_found_where_a_hole_was_made_already_does_not_speak_of_that_hole() {
    let (built, posts) = five_posts();
    let at = posts[1].at;
    let pipe = Event::Find(Find::Service { what: "clay pipe".into(), line: vec![at], depth: Length::mm(300.0) });
    let plan = planned(&demo_with(&[built, pipe]));
    assert!(!found(&plan, "N-001").iter().any(|f| f.place.element == "W2" && f.place.on == "post 2"));
}

#[test]
fn water_in_the_dig_stops_the_work_there() {
    let plan = planned(&demo_with(&[Event::Find(Find::Water { element: "W1".into(), depth: Length::mm(500.0) })]));
    assert_has(&plan, &["B-014"]);
    let f = found(&plan, "B-014")[0];
    assert_eq!((f.severity, f.place.element.as_str()), (Severity::Stop, "W1"));
    assert!(f.remedies.iter().any(|r| r.says.contains("300 × 300 × 250 mm")), "{:?}", f.remedies);
    assert_ne!(planned(&demo()).programme.tasks.len(), plan.programme.tasks.len(), "the order of work is as it was");
}

#[test]
fn a_level_read_wrong_changes_levels_order_and_price() {
    let before = planned(&demo());
    let point = before.survey.points.iter().find(|p| p.id == "44").unwrap();
    let wrong = Event::Find(Find::LevelError { point: "44".into(), level: point.level + Length::mm(300.0) });
    let after = planned(&demo_with(&[wrong]));
    let d = compare(&before, &after);
    assert!(!d.levels.is_empty() && !d.order.is_empty() && d.price.is_some(), "{d:?}");
    assert!(!d.volumes.is_empty() && !d.lengths.is_empty() && !d.posts.is_empty(), "{d:?}");
    assert_eq!(check(&after), []);
    assert_eq!(compare(&before, &before), groundhold_plan::Difference::default());
}

#[test]
fn a_level_error_of_nothing_changes_nothing() {
    let before = planned(&demo());
    let level = before.survey.points.iter().find(|p| p.id == "27").unwrap().level;
    let same =
        Event::Find(Find::LevelError { point: "27".into(), level: Level::m((level.to_m() * 1e3).round() / 1e3) });
    let d = compare(&before, &planned(&demo_with(&[same])));
    assert!(d.order.is_empty() && d.levels.is_empty(), "{d:?}");
}
