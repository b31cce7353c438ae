//! Situations that must be met, and the earthquake: read, written again, and refused with what was expected.

use groundhold_exchange::{Problem, job_text, read_job};
use groundhold_hold::LoadCase;
use groundhold_plan::job::Job;

fn read(ground: &str) -> Result<Job, Vec<Problem>> {
    let text = format!(
        "schema = 1\n[measure]\nslope = {{ fall = \"1 m\", over = \"6 m\" }}\n[ground]\nsoil = \"firm-clay\"\n{ground}"
    );
    read_job("job.toml", &text, &|name| Err(format!("there is no `{name}`"))).whole()
}

fn said(ground: &str) -> String {
    read(ground).err().unwrap_or_default().iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

const SHAKES: &str = "earthquake = { horizontal = \"12 %\", source = \"invented for a test\" }\n";

#[test]
fn what_is_read_is_written_and_read_again() {
    let job = read(&format!("must_meet = [\"wet-winter\", \"earthquake\"]\n{SHAKES}")).unwrap();
    assert_eq!(job.ground.must_meet, [LoadCase::WetWinter, LoadCase::Earthquake]);
    assert_eq!(job.ground.shaking.as_ref().map(|s| s.0.to_percent()), Some(12.0));
    let again = read_job("job.toml", &job_text(&job), &|name| Err(format!("there is no `{name}`"))).whole().unwrap();
    assert_eq!(again.ground, job.ground);
}

#[test]
fn what_is_no_situation_is_refused_with_those_there_are() {
    let text = said("must_meet = [\"moonlight\"]\n");
    assert!(text.contains("moonlight") && text.contains("end-of-construction") && text.contains(":6:"), "{text}");
    assert!(said("must_meet = [\"earthquake\"]\n").contains("horizontal"), "nobody said how hard");
    assert!(said("must_meet = [\"wet-winter\", \"wet-winter\"]\n").contains("twice"));
    assert!(said("earthquake = { horizontal = \"12 %\" }\n").contains("source"));
    assert!(said("earthquake = { horizontal = \"140 %\", source = \"x\" }\n").contains("140"));
}
