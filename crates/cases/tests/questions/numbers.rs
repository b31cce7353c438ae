//! T7, T8 and T12, and a job in feet: what is counted, and how steep it is.

use super::*;

#[test]
fn t7_a_pad_of_6_by_3_by_0_4_is_12_tonnes_and_140_barrows() {
    let p = plan(
        "schema = 1\n[measure]\nslope = { fall = \"1 mm\", over = \"3 m\", width = \"6 m\" }\n[ground]\nsoil = \"firm-clay\"\n
[[pad]]\nid = \"P1\"\nlevel = \"99.6 m\"\ncorners = [[\"0 m\", \"0 m\"], [\"6 m\", \"0 m\"], [\"6 m\", \"3 m\"], [\"0 m\", \"3 m\"]]\n",
    );
    let bank = moved(&p, "P1").0;
    near("bank", bank, 7.2);
    let by_hand = |loose: f64, key: &str| {
        work("dig/by-hand", &[("bank", bank.into()), ("to_loose", loose.into()), ("density", 1600.0.into())], key)
    };
    near("loose, least", by_hand(1.25, "loose"), 9.0);
    near("loose, most", by_hand(1.40, "loose"), 10.1);
    near("tonnes", by_hand(1.25, "mass") / 1000.0, 11.5);
    near("barrows, least", by_hand(1.25, "barrows"), 130.0);
    near("barrows, most", by_hand(1.40, "barrows"), 145.0);
    near("person-days, least", by_hand(1.25, "days_least"), 2.0);
    near("person-days, most", by_hand(1.25, "days_most"), 3.5);
    let loose = p.factors.loose(groundhold_quantity::Volume::m3(bank)).to_m3();
    assert!((9.0 * 0.95..=10.1 * 1.05).contains(&loose), "firm clay swells to {loose} m³");
    assert_has(&p, &["D-001"]);
}

#[test]
fn t8_half_a_metre_in_three_is_too_steep_for_a_wheelchair_and_three_risers_as_steps() {
    let head = "schema = 1\n[measure]\nslope = { fall = \"1 mm\", over = \"12 m\", width = \"6 m\" }\n
[[pad]]\nid = \"P1\"\nlevel = \"100.5 m\"\ncorners = [[\"0 m\", \"6 m\"], [\"6 m\", \"6 m\"], [\"6 m\", \"9 m\"], [\"0 m\", \"9 m\"]]\n";
    let p = plan(&format!(
        "{head}[[ramp]]\nid = \"R1\"\nto = \"P1\"\nwidth = \"1 m\"\npath = [[\"3 m\", \"3 m\"], [\"3 m\", \"6 m\"]]\n"
    ));
    let r = &p.shaped.ramps[0];
    near("one in", r.gradient.to_one_in(), 6.0);
    near("per cent", r.gradient.to_ratio() * 100.0, 16.7);
    near("degrees", r.gradient.to_angle().to_deg(), 9.46);
    assert_has(&p, &["G-022", "G-020"]);
    assert!(texts(&p, "G-022").contains("wheelchair"));
    for (one_in, length) in [(12.0, 6.0), (14.0, 7.0), (20.0, 10.0)] {
        near("length", work("ramp/length", &[("rise", 0.5.into()), ("slope", (1.0 / one_in).into())], "run"), length);
    }
    let texts = texts(&p, "G-022");
    assert!(["6.00 m", "7.00 m", "10.00 m"].iter().all(|l| texts.contains(l)) && texts.contains("landing"), "{texts}");
    let p = plan(&format!("{head}[[steps]]\nid = \"S1\"\nto = \"P1\"\nwidth = \"1 m\"\nfrom = [\"3 m\", \"3 m\"]\n"));
    let f = &p.shaped.flights[0];
    assert_eq!(f.risers, 3);
    near("riser", f.riser.to_mm(), 167.0);
}

#[test]
fn t12_two_metres_at_14_degrees_are_13_equal_risers_in_flights_with_landings() {
    let run = 2.0 / groundhold_quantity::math::tan(14.0_f64.to_radians());
    near("run", run, 8.02);
    let chosen = |key: &str| work("steps/choose", &[("rise", 2000.0.into()), ("run", (run * 1000.0).into())], key);
    assert_eq!(chosen("risers"), 13.0);
    near("riser", chosen("riser"), 153.8);
    let split = |key: &str| {
        work(
            "steps/split",
            &[
                ("rise", 2000.0.into()),
                ("run", (run * 1000.0).into()),
                ("risers", 13.0.into()),
                ("going", 330.0.into()),
            ],
            key,
        )
    };
    near("2R+G if spread evenly", split("even_sum"), 910.0);
    assert!(split("even_sum") > 700.0 && split("two_r_plus_g") < 700.0);
    let p = plan(&format!(
        "schema = 1\n[measure]\nslope = {{ fall = \"2 m\", over = \"{run:.4} m\", width = \"3 m\" }}\n
[[pad]]\nid = \"P1\"\nlevel = \"102 m\"\ncorners = [[\"0 m\", \"{run:.4} m\"], [\"3 m\", \"{run:.4} m\"], [\"3 m\", \"{:.4} m\"], [\"0 m\", \"{:.4} m\"]]
[[steps]]\nid = \"S1\"\nto = \"P1\"\nwidth = \"1 m\"\ngoing = \"330 mm\"\nfrom = [\"1.5 m\", \"0 m\"]\n",
        run + 2.0,
        run + 2.0
    ));
    assert_has(&p, &["G-033"]);
    let f = &p.shaped.flights[0];
    assert_eq!(f.risers, 13, "{}", said(&p));
    near("riser", f.riser.to_mm(), 153.8);
    let levels: Vec<f64> = f.treads.iter().map(|t| t.level.to_m()).collect();
    let steps: Vec<f64> = levels.windows(2).map(|w| (w[1] - w[0]).abs()).filter(|d| *d > 1e-6).collect();
    assert!(steps.iter().all(|d| (d * 1000.0 - f.riser.to_mm()).abs() < 0.1), "unequal risers {steps:?}");
    let says = texts(&p, "G-033");
    assert!(says.contains("landings of"), "{says}");
}

/// Whether a text has a number in metres, millimetres or kilograms.
fn metric(text: &str) -> bool {
    let units = ["m", "mm", "m²", "m³", "kg", "kPa", "kN"];
    let words: Vec<&str> = text.split_whitespace().collect();
    let number = |w: &str| w.trim_start_matches(['(', '−']).starts_with(|c: char| c.is_ascii_digit());
    let unit = |w: &str| units.contains(&w.trim_end_matches(|c: char| ",.;:)?".contains(c)));
    words.windows(2).any(|w| number(w[0]) && unit(w[1]))
}

#[test]
fn a_job_in_feet_speaks_of_feet() {
    let mut feet = groundhold_cases::demo();
    let spoken = |job: &groundhold_plan::job::Job| {
        let p = planned(job);
        let findings = p.findings.iter().map(|f| format!("{} {}", f.kind.code, f.says));
        let tasks = p.programme.tasks.iter().map(|t| format!("{} {}", t.id, t.name));
        findings.chain(tasks).collect::<Vec<_>>()
    };
    assert!(spoken(&feet).iter().filter(|t| metric(t)).count() > 20);
    feet.about.units = groundhold_quantity::Units::Feet;
    // Stone is sold and graded in millimetres everywhere; a layer's thickness is a rule of the trade in round figures.
    let graded = ["W-006", "D-003", "D-011"];
    let left: Vec<String> =
        spoken(&feet).into_iter().filter(|t| metric(t) && !graded.iter().any(|g| t.starts_with(g))).collect();
    assert_eq!(left, Vec::<String>::new());
}
