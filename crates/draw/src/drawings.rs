//! Which drawings does a plan have, and by which names are they asked for?

use groundhold_plan::Plan;

use crate::Scene;

/// Size of a drawing that fills the frame of an A3 sheet, millimetres.
const WIDE: f64 = 390.0;
const HIGH: f64 = 248.0;

/// Every drawing of a plan with its name: `plan`, `elevation-W1`, `section-W1`, `as-found-E1`, `steps-S1`, `ramp-R1`,
/// `drain-W1`, `site-section`,
/// `cutting` (with `-2`, `-3` for further sheets), `programme`.
pub fn drawings(plan: &Plan) -> Vec<(String, Scene)> {
    let mut all = vec![("plan".to_string(), plan_view(plan, WIDE, HIGH))];
    for w in &plan.walls {
        all.push((format!("elevation-{}", w.id), elevation(plan, &w.id, WIDE, 105.0)));
    }
    for w in &plan.walls {
        all.push((format!("section-{}", w.id), section(plan, &w.id, 200.0, 152.0)));
    }
    for w in &plan.old_walls {
        all.push((format!("as-found-{}", w.id), section_as_found(plan, &w.id, 200.0, 130.0)));
    }
    for f in &plan.shaped.flights {
        all.push((format!("steps-{}", f.id), steps_detail(plan, &f.id, 200.0, 130.0)));
    }
    for r in &plan.shaped.ramps {
        all.push((format!("ramp-{}", r.id), ramp_section(plan, &r.id, 260.0, 100.0)));
    }
    for p in &plan.drained.pipes {
        all.push((format!("drain-{}", p.wall), drain_long_section(plan, &p.wall, WIDE, 130.0)));
    }
    all.push(("site-section".to_string(), site_section(plan, WIDE, 100.0)));
    let cut = if plan.take_off.cutting.is_empty() { vec![] } else { cutting_bars(plan, 277.0, 190.0) };
    for (i, s) in cut.into_iter().enumerate() {
        all.push((if i == 0 { "cutting".to_string() } else { format!("cutting-{}", i + 1) }, s));
    }
    all.push(("programme".to_string(), programme_bars(plan, WIDE, 200.0)));
    all
}

/// The site seen from above, to scale, within a frame in millimetres of paper.
pub fn plan_view(plan: &Plan, width: f64, height: f64) -> Scene {
    crate::plan_view::plan_view(plan, width, height)
}

/// A wall seen from the front, developed along its chainage; an empty sheet for an unknown wall.
pub fn elevation(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    crate::elevation::elevation(plan, wall, width, height)
}

/// The governing cross-section of a wall with what presses on it; an empty sheet for an unknown wall.
pub fn section(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    crate::section::section(plan, wall, width, height)
}

/// The drain of a wall along its way, with its invert levels; an empty sheet for a wall without one.
pub fn drain_long_section(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    crate::long_section::drain_long_section(plan, wall, width, height)
}

/// A wall that stands already, in section as it was found; an empty sheet for an unknown one.
pub fn section_as_found(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    crate::section_as_found::section_as_found(plan, wall, width, height)
}

/// A flight of steps cut along its middle; an empty sheet for an unknown flight.
pub fn steps_detail(plan: &Plan, flight: &str, width: f64, height: f64) -> Scene {
    crate::steps::steps_detail(plan, flight, width, height)
}

/// A ramp cut along its middle line; an empty sheet for an unknown ramp.
pub fn ramp_section(plan: &Plan, ramp: &str, width: f64, height: f64) -> Scene {
    crate::ramp::ramp_section(plan, ramp, width, height)
}

/// The cutting lists as bars, on as many sheets as they need; one empty sheet where nothing is cut.
pub fn cutting_bars(plan: &Plan, width: f64, height: f64) -> Vec<Scene> {
    crate::cutting::cutting_bars(plan, width, height)
}

/// The order of work as bars, with the needs that decide and the hold points.
pub fn programme_bars(plan: &Plan, width: f64, height: f64) -> Scene {
    crate::programme::programme_bars(plan, width, height)
}

/// Existing and finished ground along a line up the slope, with cut and fill told apart.
pub fn site_section(plan: &Plan, width: f64, height: f64) -> Scene {
    crate::site_section::site_section(plan, width, height)
}

/// Plan and sections together, for a first page: 320 mm by 213 mm, which is 1200 by 800 pixels.
pub fn picture(plan: &Plan) -> Scene {
    crate::picture::picture(plan)
}

#[cfg(test)]
mod tests {
    use groundhold_plan::job::{AsBuilt, BuiltPost, Entry, Event, Find, Job};
    use groundhold_quantity::{Length, Level, Units};

    use super::*;
    use crate::overlap;

    fn demo() -> Job {
        let open = |name: &str| match name {
            "levels.csv" => Ok(include_str!("../../../demo/levels.csv").to_string()),
            "positions.csv" => Ok(include_str!("../../../demo/positions.csv").to_string()),
            "prices.csv" => Ok(include_str!("../../../demo/prices.csv").to_string()),
            other => Err(format!("the demo has no table {other}")),
        };
        groundhold_exchange::read_job("job.toml", include_str!("../../../demo/job.toml"), &open).whole().unwrap()
    }

    fn planned(job: &Job) -> Plan {
        groundhold_plan::plan(job).unwrap()
    }

    #[test]
    fn no_text_of_the_demo_lies_on_another_or_leaves_its_sheet() {
        let mut feet = demo();
        feet.about.units = Units::Feet;
        for job in [demo(), feet] {
            let plan = planned(&job);
            let mut all = drawings(&plan);
            all.push(("picture".into(), picture(&plan)));
            for (name, s) in &all {
                assert_eq!(overlap::of(&s.items), Vec::<(String, String)>::new(), "{name}, {:?}", job.about.units);
                assert_eq!(overlap::outside(&s.items, s.width, s.height), Vec::<String>::new(), "{name}");
            }
        }
    }

    #[test]
    fn every_post_and_board_of_a_wall_is_on_its_elevation() {
        let plan = planned(&demo());
        for w in &plan.walls {
            let svg = crate::to_svg(&elevation(&plan, &w.id, 390.0, 120.0));
            for p in &w.layout.pieces {
                let element = match p.role {
                    groundhold_hold::Role::Post => format!("{} post {}", w.id, p.bay),
                    _ => format!("{} {}", w.id, p.mark),
                };
                assert!(svg.contains(&format!("data-element=\"{element}\"")), "{element}");
            }
        }
    }

    #[test]
    fn every_piece_of_the_cutting_list_is_on_its_sheets() {
        let plan = planned(&demo());
        let text: Vec<String> = cutting_bars(&plan, 277.0, 190.0)
            .iter()
            .flat_map(|s| overlap::labels(&s.items).into_iter().map(|l| l.text.clone()).collect::<Vec<_>>())
            .collect();
        for p in plan.take_off.cutting.iter().flat_map(|c| &c.bars).flat_map(|b| &b.pieces) {
            assert!(text.contains(&p.mark), "{}", p.mark);
        }
    }

    #[test]
    fn the_same_plan_gives_the_same_bytes() {
        let plan = planned(&demo());
        assert_eq!(crate::to_svg(&plan_view(&plan, 390.0, 248.0)), crate::to_svg(&plan_view(&plan, 390.0, 248.0)));
    }

    #[test]
    fn an_unknown_element_or_a_frame_without_room_gives_an_empty_sheet_and_no_panic() {
        let plan = planned(&demo());
        assert!(elevation(&plan, "W9", 300.0, 100.0).items.is_empty());
        assert!(section(&plan, "W9", 200.0, 100.0).items.is_empty());
        assert!(steps_detail(&plan, "S9", 200.0, 100.0).items.is_empty());
        for (w, h) in [(0.0, 0.0), (10.0, 10.0), (-5.0, 80.0), (80.0, 3.0), (40.0, 400.0)] {
            plan_view(&plan, w, h);
            elevation(&plan, "W1", w, h);
            section(&plan, "W1", w, h);
            steps_detail(&plan, "S1", w, h);
            ramp_section(&plan, "R1", w, h);
            cutting_bars(&plan, w, h);
            programme_bars(&plan, w, h);
            site_section(&plan, w, h);
            drain_long_section(&plan, "W1", w, h);
        }
    }

    #[test]
    fn a_smaller_sheet_has_a_coarser_scale_and_says_so() {
        let plan = planned(&demo());
        assert_eq!(plan_view(&plan, 390.0, 248.0).scale, "1:50");
        assert_eq!(plan_view(&plan, 190.0, 140.0).scale, "1:100");
    }

    #[test]
    fn what_was_found_and_built_is_marked() {
        let mut job = demo();
        let wall = &planned(&job).walls[0].layout;
        let built = |n: usize| {
            let p = &wall.posts[n - 1];
            BuiltPost {
                number: n,
                chainage: p.chainage,
                at: None,
                depth: p.depth,
                diameter: p.hole_diameter,
                top: p.top,
                length: None,
            }
        };
        let entry = |event| Entry { at: "2026-05-11T10:20:00".into(), event, note: String::new() };
        let posts = vec![built(1), built(2)];
        let says = "W1 posts 1-2".to_string();
        job.record.push(entry(Event::Built(AsBuilt { says, element: "W1".into(), posts })));
        let rock = Find::Rock { wall: "W1".into(), post: 6, chainage: None, at: None, depth: Length::mm(600.0) };
        job.record.push(entry(Event::Find(rock)));
        job.record.push(entry(Event::Find(Find::LevelError { point: "17".into(), level: Level::m(100.46) })));
        let plan = planned(&job);
        let svg = crate::to_svg(&plan_view(&plan, 390.0, 248.0));
        assert!(svg.contains("F2 rock at 600 mm") && svg.contains("post already built"), "{}", svg.len());
        assert!(crate::to_svg(&elevation(&plan, "W1", 390.0, 120.0)).contains("F2 rock at 600 mm"));
    }
}
