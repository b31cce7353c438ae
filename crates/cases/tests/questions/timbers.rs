//! T5 and T6: boards and timbers that are stacked.

use super::*;

#[test]
fn t5_boards_stacked_without_posts_are_refused_with_the_reason() {
    let spec = format!("post = \"none\"\nboard = \"200x100 UC4 C24\"\n{PLAIN}");
    let text = bench("", SAND, 0.6, 4.8, &spec, "");
    let problems = groundhold_cases::read(&text, &[]).unwrap_err();
    let said = problems.iter().map(ToString::to_string).collect::<String>();
    assert!(said.contains("without posts fall over") && said.contains("post = \"none\""), "{said}");
    // Posts further apart than the boards are long leave boards without a post at an end.
    let wide = format!("post = \"125x125 UC4 C24\"\nboard = \"200x100 UC4 C24\"\n{}", PLAIN.replace("1.2 m", "2.5 m"));
    let troubles = groundhold_plan::plan(&job(&bench("", SAND, 0.6, 4.8, &wide, ""), &[])).unwrap_err();
    assert!(groundhold_cases::all_said(&troubles).contains("longest stock board"));
    let fits = wide.replace("2.5 m", "2.4 m");
    assert!(groundhold_plan::plan(&job(&bench("", SAND, 0.6, 4.8, &fits, ""), &[])).is_ok());
}

#[test]
fn t6_treated_timber_beside_children_or_food_is_said_and_durable_timber_is_not() {
    let spec =
        |treatment: &str| format!("post = \"150x150{treatment} C24\"\nboard = \"150x50{treatment} C24\"\n{PLAIN}");
    let beside = |what: &str, treatment: &str| {
        let text = bench("", SAND, 0.6, 4.8, &spec(treatment), "");
        plan(&text.replacen("retains = \"left\"", &format!("retains = \"left\"\nbeside = \"{what}\""), 1))
    };
    for (what, word) in [("play area", "children"), ("food bed", "food")] {
        let p = beside(what, " UC4");
        assert!(texts(&p, "N-024").contains(word) && texts(&p, "N-024").contains("UC4"), "{}", said(&p));
        assert!(!has(&beside(what, ""), "N-024"));
    }
    assert!(!has(&plan(&bench("", SAND, 0.6, 4.8, &spec(" UC4"), "")), "N-024"));
}

#[test]
fn t5_half_buried_courses_miss_600_and_the_tool_says_so() {
    let c =
        |key: &str| work("wall/courses", &[("wanted", 0.6.into()), ("bury", 0.1.into()), ("height", 0.2.into())], key);
    assert_eq!((c("down"), c("up")), (3.0, 4.0));
    near("three courses", c("exposed_down"), 0.5);
    near("four courses", c("exposed_up"), 0.7);
    near("burial that meets it", c("bury_exact"), 0.2);
    // Without posts: 0.7 m of timber of 6.5 kN/m³, 100 mm thick, against 0.6 m of soil.
    let push =
        work("earth-pressure/coulomb", &[("gamma", 18.0.into()), ("phi", 30.0.into()), ("height", 0.6.into())], "pa");
    let factor = work(
        "walls/external",
        &[
            ("weights", (0.7 * 0.1 * 6.5).into()),
            ("arms", 0.05.into()),
            ("pushes", push.into()),
            ("heights", 0.2.into()),
            ("width", 0.1.into()),
            ("mu", 0.5.into()),
        ],
        "fs_over",
    );
    near("boards stacked without posts", factor, 0.11);
    let spec = format!(
        "post = \"125x125 UC4 C24\"\nboard = \"200x100 UC4 C24\"\n{}",
        PLAIN.replace("bury = \"0 mm\"", "bury = \"100 mm\"")
    );
    let near_by = "[[near]]\nid = \"N1\"\nkind = \"manhole\"\nat = [\"3 m\", \"2.4 m\"]\n[[near]]\nid = \"N2\"\nkind = \"fence\"\nline = [[\"-0.05 m\", \"-2 m\"], [\"-0.05 m\", \"8 m\"]]\n";
    let p = plan(&bench("", SAND, 0.6, 4.8, &spec, near_by));
    let says = texts(&p, "H-017");
    assert!(says.contains("4 whole courses give 700 mm, 3 give 500 mm"), "{says}\n{}", said(&p));
    assert_has(&p, &["N-008"]);
    assert!(texts(&p, "N-008").contains("N1"), "{}", texts(&p, "N-008"));
    // The same garden filled up by 600 mm against the fence.
    let raised = plan(&bench("", SAND, 0.6, 4.8, &spec, near_by).replace("level = \"100 m\"", "level = \"101.2 m\""));
    assert!(texts(&raised, "N-009").contains("N2"), "{}", said(&raised));
}

#[test]
fn t6_stacked_timbers_of_4_ft_need_nine_courses_a_permit_and_more_where_the_ground_slopes() {
    let c = |key: &str| work("wall/courses", &[("wanted", inch(48.0).into()), ("height", inch(5.5).into())], key);
    assert_eq!((c("up"), c("down")), (9.0, 8.0));
    near("nine courses", c("exposed_up"), inch(49.5));
    near("eight courses", c("exposed_down"), inch(44.0));
    let push = |beta: f64| {
        work(
            "earth-pressure/coulomb",
            &[("gamma", 18.0.into()), ("phi", 30.0.into()), ("alpha", beta.into()), ("height", inch(48.0).into())],
            "pa",
        )
    };
    near("a slope of 5° behind", push(5.0) / push(0.0), 1.05);
    let spec = format!(
        "post = \"150x150 UC4 C24\"\nboard = \"150x50 UC4 C24\"\n{}",
        PLAIN.replace("bury = \"0 mm\"", "bury = \"140 mm\"")
    );
    let p = plan(&bench("region = \"us-model\"\nunits = \"feet\"", SAND, inch(48.0), 4.57, &spec, ""));
    assert_has(&p, &["B-001", "H-024"]);
    let p = plan(&bench(
        "region = \"us-model\"\nunits = \"feet\"",
        "\n[ground]\nsoil = \"firm-clay\"\n",
        inch(48.0),
        4.57,
        &spec,
        "",
    ));
    let treated = p.programme.cautions.iter().any(|c| format!("{c:?}").to_lowercase().contains("treated"));
    assert!(treated, "no caution about treated timber");
}

/// The same bench held by timbers laid up in courses.
fn stacked(head: &str, ground: &str, retained: f64, length: f64, spec: &str) -> Plan {
    let text = bench(head, ground, retained, length, spec, "");
    plan(&text.replace("retains = \"left\"", "retains = \"left\"\nsystem = \"stacked-timbers\""))
}

#[test]
fn t5_boards_stacked_alone_turn_over_as_by_hand_and_ties_are_offered() {
    let spec = "timber = \"200x100 UC4 C24\"\nties = \"none\"\nbury = \"0 mm\"\nbatter = \"0 %\"\nscrews = \"8x280\"\n";
    let p = stacked("", SAND, 0.6, 4.8, spec);
    assert_eq!(p.walls[0].layout.strips[0].courses, 3);
    let turns = factor_of(&p, CheckKind::Overturning, LoadCase::Drained, 1.5);
    // By hand with three courses of 6.5 kN/m³: 0.10; the question's 0.11 counts a fourth.
    assert!((0.05..0.13).contains(&turns), "{turns}");
    assert_has(&p, &["H-026"]);
    assert!(texts(&p, "H-026").contains("ties") || texts(&p, "H-026").contains("Ties"), "{}", texts(&p, "H-026"));
}

#[test]
fn t6_fifteen_feet_of_stacked_timbers_have_nine_courses_above_the_ground_and_two_ties_in_a_row_at_least() {
    let spec = "timber = \"140x140 UC4 C16\"\nbatter = \"1:12\"\nbury = \"140 mm\"\nties = \"into bank\"\ntie_spacing = \"8 ft\"\ntie_every = 2\n";
    let p = stacked("region = \"us-model\"\nunits = \"feet\"", SAND, inch(48.0), 4.57, spec);
    let layout = &p.walls[0].layout;
    let courses = layout.strips.iter().map(|s| s.courses).max().unwrap();
    assert_eq!(courses, 10, "nine of 140 mm are 1.26 m, and one is buried");
    // Ties of 140 mm: two in a row at the least on 15 ft at 8 ft.
    let rows = (courses as f64 / 2.0).floor() as usize;
    let ties = layout.pieces.iter().filter(|p| p.mark.starts_with('T')).count();
    assert!(2 * (rows - 1) <= ties, "{ties} ties in about {rows} rows");
    assert_has(&p, &["B-001", "H-024"]);
}
