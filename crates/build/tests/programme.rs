//! Is the order of work one that can be built, and does it say what must be watched?

use groundhold_build::*;
use groundhold_quantity::{Area, Length, Mass, Share, Slope, Time, Volume};
use proptest::prelude::*;

/// A pad in a slope, an upper wall in its cut, a lower one that holds its fill, steps and a ramp. Invented.
fn terrace() -> Works {
    let wall = |id: &str, retained: f64, above: f64| WallWorks {
        id: id.into(),
        length: Length::m(8.0),
        retained: Length::m(retained),
        base_above_lowest: Length::m(above),
        posts: 8,
        holes: 8,
        hole_depth: Length::m(0.9),
        hole_diameter: Length::mm(300.0),
        holes_volume: Volume::m3(0.5),
        boards: 24,
        concrete: Volume::m3(0.4),
        trench: Volume::m3(1.5),
        drain_stone: Volume::m3(1.2),
        pipe: Length::m(8.0),
        fabric: Area::m2(12.0),
        backfill: Volume::m3(0.8),
        ..WallWorks::default()
    };
    let mut upper = wall("W1", 0.9, 0.6);
    upper.stands_in_cut_of = vec!["P1".into()];
    let mut lower = wall("W2", 0.5, 0.0);
    lower.holds_fill_of = vec!["P1".into()];
    Works {
        walls: vec![upper, lower],
        pads: vec![PadWorks {
            id: "P1".into(),
            area: Area::m2(27.0),
            cut: Volume::m3(6.0),
            fill: Volume::m3(4.0),
            paving: Area::m2(27.0),
            cut_depth: Length::m(0.7),
            fill_depth: Length::m(0.4),
            ..PadWorks::default()
        }],
        flights: vec![FlightWorks {
            id: "S1".into(),
            risers: 5,
            width: Length::m(0.9),
            rise: Length::m(0.75),
            cut: Volume::m3(0.6),
            base: Volume::m3(0.3),
            toward: "P1".into(),
            complete: false,
        }],
        ramps: vec![RampWorks {
            id: "R1".into(),
            length: Length::m(7.0),
            width: Length::m(1.0),
            base: Volume::m3(0.7),
            surface: Area::m2(7.0),
            toward: "P1".into(),
            ..RampWorks::default()
        }],
        stripped: Stripped { area: Area::m2(50.0), turf: Volume::m3(2.0), topsoil: Volume::m3(7.0), complete: false },
        drainage: Drainage {
            collector: Length::m(9.0),
            trench: Volume::m3(1.0),
            outlet: Some("to the ditch".into()),
            complete: false,
        },
        services_near: true,
        service_clearance: Some(Length::m(1.1)),
        deepest_open_cut: Length::m(0.9),
        heaviest_piece: Mass::kg(38.0),
        heaviest_what: "board of W1".into(),
        treated_timber: true,
        ground_slope: Slope::one_in(6.0),
        access: Access { haul: Length::m(25.0), narrowest: None },
        ..Works::default()
    }
}

fn at<'p>(p: &'p Programme, id: &str) -> &'p Task {
    p.tasks.iter().find(|t| t.id == id).unwrap_or_else(|| panic!("no task {id}"))
}

/// What must be true of every programme.
fn can_be_built(p: &Programme, crew: &Crew) {
    for t in &p.tasks {
        for n in &t.needs {
            assert!(at(p, &n.task).finish + n.wait_days <= t.start + 1e-9, "{} starts before {} allows", t.id, n.task);
        }
        assert!(
            0.0 <= t.float && (t.finish - t.start - t.days).abs() < 1e-9 && t.critical == (t.float == 0.0),
            "{t:?}"
        );
        assert!(t.hours.low <= t.hours.likely && t.hours.likely <= t.hours.high && 1 <= t.people);
        assert_eq!(
            t.trace.sheet().expect("a trace in a programme lies within the limits of its working").values.len(),
            1
        );
    }
    for t in &p.tasks {
        let busy: u32 =
            p.tasks.iter().filter(|o| o.start <= t.start + 1e-9 && t.start + 1e-9 < o.finish).map(|o| o.people).sum();
        assert!(busy <= crew.people, "{busy} people at the start of {}", t.id);
    }
    let last = p.tasks.iter().map(|t| t.finish).fold(0.0, f64::max);
    assert!((last - p.length_days.1).abs() < 1e-9);
    assert!(p.shortest_days <= p.length_days.1 + 1e-9);
    assert!(p.length_days.0 <= p.length_days.1 && p.length_days.1 <= p.length_days.2);
    assert!(p.critical.iter().any(|id| at(p, id).start == 0.0) && !p.critical.is_empty());
    assert!(p.tasks.windows(2).all(|w| w[0].start <= w[1].start));
}

#[test]
fn the_lowest_wall_stands_and_is_drained_before_the_fill_it_holds() {
    let crew = Crew::default();
    let p = plan_works(&terrace(), &crew).unwrap();
    can_be_built(&p, &crew);
    let order =
        ["job/survey", "job/services", "job/strip", "P1/cut", "W2/trench", "W2/holes", "W2/posts", "W2/concrete"];
    let then = [
        "W2/boards",
        "W2/pipe",
        "W2/stone",
        "W2/backfill",
        "P1/fill",
        "S1/steps",
        "P1/pave",
        "job/clean",
        "job/record",
    ];
    let all: Vec<&str> = order.into_iter().chain(then).collect();
    for two in all.windows(2) {
        assert!(at(&p, two[0]).finish <= at(&p, two[1]).start + 1e-9, "{} before {}", two[0], two[1]);
    }
    assert!(at(&p, "W2/concrete").finish <= at(&p, "W1/holes").start + 1e-9);
    assert!(at(&p, "P1/cut").finish <= at(&p, "W1/trench").start + 1e-9);
    assert!(at(&p, "job/outlet").finish <= at(&p, "W2/pipe").start + 1e-9);
}

#[test]
fn concrete_is_two_days_old_before_boards_and_seven_before_fill() {
    let p = plan_works(&terrace(), &Crew { people: 6, day: Time::h(8.0) }).unwrap();
    for w in ["W1", "W2"] {
        let poured = at(&p, &format!("{w}/concrete")).finish;
        assert!(at(&p, &format!("{w}/boards")).start - poured >= 2.0 - 1e-9);
        assert!(at(&p, &format!("{w}/backfill")).start - poured >= 7.0 - 1e-9);
    }
}

#[test]
fn hold_points_stand_before_the_spade_the_concrete_the_cover_the_fill_and_the_handing_over() {
    let p = plan_works(&terrace(), &Crew::default()).unwrap();
    let before: Vec<&str> = p.hold_points.iter().map(|h| h.before.as_str()).collect();
    for id in [
        "job/strip",
        "W1/concrete",
        "W2/concrete",
        "W1/stone",
        "W2/stone",
        "W1/backfill",
        "P1/fill",
        "P1/pave",
        "job/record",
    ] {
        assert_eq!(before.iter().filter(|b| **b == id).count(), 1, "{id} in {before:?}");
    }
    assert!(p.hold_points.iter().enumerate().all(|(i, h)| h.number == i + 1 && !h.checks.is_empty()));
    for t in &p.tasks {
        assert_eq!(
            t.hold_point.map(|n| p.hold_points[n - 1].before.as_str()),
            before.contains(&t.id.as_str()).then_some(t.id.as_str())
        );
    }
}

#[test]
fn cautions_bite_only_where_their_danger_is() {
    let p = plan_works(&terrace(), &Crew::default()).unwrap();
    let bites = |id: &str, task: &str| at(&p, task).cautions.contains(&id);
    assert!(bites("services", "job/strip") && bites("services", "W1/holes") && !bites("services", "W1/boards"));
    assert!(
        bites("wet-concrete", "W1/concrete") && bites("treated-timber", "W1/boards") && bites("lifting", "W1/posts")
    );
    assert!(p.cautions.iter().all(|c| c.caution.id != "roots" && c.caution.id != "machine-on-slope"));
    let open = p.cautions.iter().find(|c| c.caution.id == "open-face").unwrap();
    assert_eq!(open.here, "Deepest open face 0.90 m.");
    let mut works = terrace();
    works.tree = Some(TreeNear { id: "T1".into(), trunk: Length::mm(500.0), distance: Length::m(5.9) });
    let with_tree = plan_works(&works, &Crew::default()).unwrap();
    let roots = with_tree.cautions.iter().find(|c| c.caution.id == "roots").unwrap();
    assert_eq!(roots.here, "T1: root zone 6.00 m, nearest dig 5.90 m away, inside it.");
}

#[test]
fn posts_that_stand_already_are_not_done_again() {
    let mut works = terrace();
    let before = plan_works(&works, &Crew::default()).unwrap();
    works.walls[1].built = Share::percent(50.0);
    let half = plan_works(&works, &Crew::default()).unwrap();
    let likely = |p: &Programme, id: &str| at(p, id).hours.likely.to_h();
    for id in ["W2/holes", "W2/posts", "W2/concrete"] {
        assert!((likely(&half, id) * 2.0 - likely(&before, id)).abs() < 1e-9, "{id}");
    }
    works.walls[1].built = Share::fraction(1.0);
    let all = plan_works(&works, &Crew::default()).unwrap();
    assert!(
        all.tasks.iter().all(|t| t.id != "W2/holes" && t.id != "W2/concrete")
            && all.tasks.iter().any(|t| t.id == "W2/boards")
    );
    works.walls[1].complete = true;
    let done = plan_works(&works, &Crew::default()).unwrap();
    assert!(done.tasks.iter().all(|t| t.element != "W2"));
    can_be_built(&done, &Crew::default());
}

#[test]
fn water_in_the_trench_puts_a_sump_before_holes_and_concrete() {
    let mut works = terrace();
    works.walls[0].water_found = true;
    let p = plan_works(&works, &Crew::default()).unwrap();
    assert!(at(&p, "W1/trench").finish <= at(&p, "W1/sump").start + 1e-9);
    assert!(at(&p, "W1/sump").finish <= at(&p, "W1/holes").start + 1e-9);
    assert!(p.findings.iter().any(|f| f.kind.code == "B-035" && f.place.element == "W1"));
}

#[test]
fn an_empty_job_is_surveyed_asked_about_and_recorded_and_a_bad_crew_is_refused() {
    let p = plan_works(&Works::default(), &Crew::default()).unwrap();
    can_be_built(&p, &Crew::default());
    assert_eq!(p.tasks.last().map(|t| t.id.as_str()), Some("job/record"));
    for people in [0, 51] {
        let said = plan_works(&Works::default(), &Crew { people, day: Time::h(8.0) }).unwrap_err().to_string();
        assert_eq!(said, format!("the crew: number of people is {people}, expected 1 to 50"));
    }
    assert!(plan_works(&Works::default(), &Crew { people: 50, day: Time::h(16.0) }).is_ok());
    assert!(plan_works(&Works::default(), &Crew { people: 1, day: Time::h(16.1) }).is_err());
}

#[test]
fn negative_and_undefined_quantities_and_twin_ids_are_refused_by_name() {
    let mut works = terrace();
    works.walls[0].concrete = Volume::m3(-0.1);
    assert!(
        plan_works(&works, &Crew::default()).unwrap_err().to_string().starts_with("W1: concrete is -0.1, expected")
    );
    let mut works = terrace();
    works.pads[0].cut = Volume::m3(f64::NAN);
    assert!(plan_works(&works, &Crew::default()).unwrap_err().to_string().starts_with("P1: cut is NaN"));
    let mut works = terrace();
    works.walls[1].id = "W1".into();
    assert_eq!(
        plan_works(&works, &Crew::default()).unwrap_err().to_string(),
        "W1 is the id of two elements; ids must differ"
    );
}

#[test]
fn heavy_pieces_narrow_ways_and_lone_builders_are_said() {
    let codes = |w: &Works, people: u32| -> Vec<&str> {
        let p = plan_works(w, &Crew { people, day: Time::h(8.0) }).unwrap();
        p.findings.iter().map(|f| f.kind.code).filter(|c| *c != "B-034").collect()
    };
    let mut works = terrace();
    assert_eq!(codes(&works, 2), Vec::<&str>::new());
    assert_eq!(codes(&works, 1), ["B-031"]);
    works.heaviest_piece = Mass::kg(50.0);
    assert_eq!(codes(&works, 2), Vec::<&str>::new());
    works.heaviest_piece = Mass::kg(50.1);
    assert_eq!(codes(&works, 2), ["B-030"]);
    works.heaviest_piece = Mass::kg(20.0);
    works.dig = DigBy::Machine;
    works.access.narrowest = Some(Length::mm(699.0));
    assert_eq!(codes(&works, 2), ["B-032"]);
    works.access.narrowest = Some(Length::mm(700.0));
    assert_eq!(codes(&works, 2), Vec::<&str>::new());
}

/// The longest path by trying every path: slow, and another way than two passes.
fn longest_path(activities: &[Activity], from: usize) -> f64 {
    let before = activities[from].needs.iter().map(|n| longest_path(activities, n.of) + n.wait_days);
    activities[from].days + before.fold(0.0, f64::max)
}

/// Networks whose needs point back only, so that there is no circle.
fn networks() -> impl Strategy<Value = Vec<Activity>> {
    let one = (0.0..5.0f64, proptest::collection::vec((any::<prop::sample::Index>(), 0.0..2.0f64), 0..3));
    proptest::collection::vec(one, 1..10).prop_map(|rows| {
        let activity = |(i, (days, needs)): (usize, (f64, Vec<(prop::sample::Index, f64)>))| {
            let needs = if i == 0 {
                vec![]
            } else {
                needs.iter().map(|(k, w)| Arc { of: k.index(i), wait_days: *w }).collect()
            };
            Activity { id: format!("a{i}"), days, needs }
        };
        rows.into_iter().enumerate().map(activity).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_length_is_that_of_the_longest_path_and_no_float_is_negative(activities in networks()) {
        let longest = (0..activities.len()).map(|i| longest_path(&activities, i)).fold(0.0, f64::max);
        let n = Network::new(activities.clone()).unwrap();
        let t = n.times();
        prop_assert!((t.length - longest).abs() < 1e-9);
        for (i, a) in activities.iter().enumerate() {
            prop_assert!(0.0 <= t.float[i]);
            prop_assert!(a.needs.iter().all(|x| t.finish[x.of] + x.wait_days <= t.start[i] + 1e-9));
        }
        prop_assert!(t.float.iter().any(|f| *f < 1e-9));
    }

    #[test]
    fn slipping_an_activity_by_its_float_keeps_the_end_and_by_more_delays_it(activities in networks(), which in any::<prop::sample::Index>()) {
        let t = Network::new(activities.clone()).unwrap().times();
        let i = which.index(activities.len());
        let with = |slip: f64| {
            let mut late = activities.clone();
            late[i].days += slip;
            Network::new(late).unwrap().times().length
        };
        prop_assert!((with(t.float[i]) - t.length).abs() < 1e-9);
        prop_assert!((with(t.float[i] + 1.0) - t.length - 1.0).abs() < 1e-9);
    }

    #[test]
    fn levelling_never_shortens_never_overbooks_and_one_person_takes_the_sum(activities in networks(), crew in 1u32..4) {
        let n = Network::new(activities.clone()).unwrap();
        let people = vec![1; activities.len()];
        let l = level_people(&n, &people, crew).unwrap();
        let t = l.network.times();
        prop_assert!(n.times().length <= t.length + 1e-9);
        for i in 0..activities.len() {
            let at = t.start[i] + 1e-9;
            let busy = (0..activities.len()).filter(|&k| t.start[k] <= at && at < t.finish[k]).count();
            prop_assert!(busy <= crew as usize);
        }
        let work: f64 = activities.iter().map(|a| a.days).sum();
        prop_assert!(work <= t.length * f64::from(crew) + 1e-9);
    }

    #[test]
    fn any_terrace_can_be_built_by_any_crew(
        people in 1u32..7, scale in 0.0..20.0f64, built in 0.0..=1.0f64, machine in any::<bool>(), water in any::<bool>(), done in 0usize..5,
    ) {
        let mut works = terrace();
        works.pads[0].cut = works.pads[0].cut * scale;
        works.walls[0].built = Share::fraction(built);
        works.walls[1].water_found = water;
        works.dig = if machine { DigBy::Machine } else { DigBy::Hand };
        match done {
            1 => works.walls[1].complete = true,
            2 => works.pads[0].complete = true,
            3 => works.stripped.complete = true,
            4 => works.drainage.complete = true,
            _ => {}
        }
        let crew = Crew { people, day: Time::h(7.5) };
        let p = plan_works(&works, &crew).unwrap();
        can_be_built(&p, &crew);
        prop_assert_eq!(&p, &plan_works(&works, &crew).unwrap());
    }
}
