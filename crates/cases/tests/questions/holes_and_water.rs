//! T10 and T11: a hole that is refused, a trench that floods.

use super::*;

fn t10(diameter: &str, spacing: &str, depth: &str, rock: bool) -> Plan {
    let plain = PLAIN.replace("300 mm", diameter).replace("1.2 m", spacing);
    let spec = format!("post = \"100x150 UC4 C24\"\nboard = \"200x50 UC4 C24\"\nhole_depth = \"{depth}\"\n{plain}");
    let rest = "[[record]]\nat = 2026-05-11T10:20:00\nfind = { kind = \"rock\", wall = \"W1\", post = 3, depth = \"600 mm\" }\n";
    plan(&bench("", SAND, 0.8, 6.0, &spec, if rock { rest } else { "" }))
}

/// Deciding factor of a post in the middle of the wall, drained.
fn factor(p: &Plan, post: usize) -> f64 {
    let margins = &p.wall("W1").unwrap().verdict.margins;
    let m = margins.iter().find(|m| m.post == post && m.governs && m.case == LoadCase::Drained).unwrap();
    m.factor.unwrap()
}

#[test]
fn t10_a_hole_refused_at_600_fails_and_what_is_offered_passes() {
    let p = t10("300 mm", "1.2 m", "800 mm", false);
    near("retained", p.wall("W1").unwrap().layout.retained.to_m(), 0.8);
    near("factor at 800 mm", factor(&p, 3), 1.69);
    assert!(!has(&p, "H-015"), "{}", said(&p));
    let p = t10("300 mm", "1.2 m", "800 mm", true);
    near("factor at 600 mm", factor(&p, 3), 0.88);
    let f = found(&p, "H-015")[0];
    assert_eq!((f.place.element.as_str(), f.place.on.as_str(), f.severity), ("W1", "post 3", Severity::Stop));
    let ours: Vec<&str> = f.remedies.iter().filter(|r| r.whose == Whose::Ours).map(|r| r.says.as_str()).collect();
    assert!(ours.iter().any(|s| s.contains("600 mm diameter")), "{ours:?}");
    assert!(ours.iter().any(|s| s.contains("post more") || s.contains("posts more")), "{ours:?}");
    assert!(!ours.iter().any(|s| s.contains("450 mm diameter")), "{ours:?}");
    let theirs = texts(&p, "H-015");
    assert!(theirs.contains("engineer") && theirs.contains("lower by"), "{theirs}");
    near("600 mm holes", factor(&t10("600 mm", "1.2 m", "600 mm", false), 3), 1.75);
    near("450 mm holes", factor(&t10("450 mm", "1.2 m", "600 mm", false), 3), 1.31);
    near("bays of 0.6 m", factor(&t10("300 mm", "0.6 m", "600 mm", false), 4), 1.75);
}

#[test]
fn t11_a_flooded_trench_under_a_wall_of_1_5_m_stops_the_work_and_makes_its_order_again() {
    let spec = format!("post = \"150x200 UC4 C24\"\nboard = \"200x75 UC4 C24\"\n{PLAIN}");
    let flood =
        "[[record]]\nat = 2026-05-11T10:20:00\nfind = { kind = \"water\", element = \"W1\", depth = \"500 mm\" }\n";
    let clay = "\n[ground]\nsoil = \"firm-clay\"\n";
    let case = |head: &str, retained: f64, rest: &str| plan(&bench(head, clay, retained, 6.0, &spec, rest));
    let p = case("", 1.5, flood);
    assert_has(&p, &["B-014", "B-035", "W-015"]);
    let says = texts(&p, "B-014");
    for words in ["300 × 300 × 250", "boots", "soft before concrete", "lower than the base", "order of work", "client"]
    {
        assert!(says.contains(words), "{words}: {says}");
    }
    assert_eq!(found(&p, "B-014")[0].severity, Severity::Stop);
    let names = |p: &Plan| p.programme.tasks.iter().map(|t| t.name.clone()).collect::<Vec<_>>();
    assert_ne!(names(&p), names(&case("", 1.5, "")), "the order of work is as it was");
    let asks = ["B-001", "B-002", "B-019", "D-005", "B-021"];
    for region in ["au-nsw", "au-qld", "au-sa", "au-vic", "au-wa", "nz", "uk-england", "us-model"] {
        let p = case(&format!("region = \"{region}\""), 1.5, flood);
        assert_has(&p, &["H-024"]);
        assert!(asks.iter().any(|c| has(&p, c)), "{region}: nobody is asked:\n{}", said(&p));
    }
    let consent = |retained: f64| texts(&case("region = \"nz\"", retained, ""), "B-001").contains("more than 1.5 m");
    assert!(consent(1.51) && !consent(1.49), "the limit in New Zealand is 1.5 m");
}
