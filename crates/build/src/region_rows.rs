//! What does a region pack answer, question by question, and which of its questions has no answer?

use groundhold_quantity::{Length, Units};

use crate::{
    Consequence, FrostRule, GuardTrigger, HandrailRule, RainRule, RampLimits, Region, Status, StepLimits, TimberRule,
    Trigger,
};

/// One answer of a pack.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The question, one of [`QUESTIONS`].
    pub question: &'static str,
    /// The answer in words; `None` where the pack knows none.
    pub answer: Option<String>,
    /// Who says so; empty where there is no answer.
    pub source: &'static str,
    /// How far it is confirmed; `None` where there is no answer.
    pub status: Option<Status>,
}

/// Every question that every pack answers or says not to know, in the order in which rows stand.
pub static QUESTIONS: &[&str] = &[
    "who is asked, and from when on",
    "height of a riser",
    "going of a tread",
    "twice the riser and the going",
    "steepest pitch of steps",
    "most risers in a flight",
    "most rise of a flight",
    "most difference of risers",
    "ramp for a wheelchair",
    "landing of a ramp",
    "crossfall of a ramp",
    "drop from which a guard is asked for",
    "height of a guard",
    "when steps need a handrail",
    "height of a handrail",
    "depth from which an excavation is supported or notified",
    "how far spoil stays from the edge",
    "depth of a base for frost",
    "earthquake",
    "design rain",
    "treatment of posts in the ground",
    "treatment of boards against soil",
    "treatment of posts of walls that are asked about",
    "words of the place",
];

/// All answers of a pack in its own units, in the order of [`QUESTIONS`]. Only the first question may have several rows.
pub fn rows(region: &Region) -> Vec<Row> {
    let mut list = List { next: 0, rows: vec![] };
    let asked: Vec<(String, Meta)> =
        region.triggers.iter().map(|t| (trigger(t, region), (t.source, t.status))).collect();
    list.many(asked);
    steps(&mut list, region.steps.as_ref(), region.units);
    ramp(&mut list, region.ramp.as_ref(), region.units);
    edges(&mut list, region.guard.as_ref(), region.handrail.as_ref(), region.units);
    let dig = region.excavation.as_ref();
    list.one(dig.map(|e| (Some(format!("{}. {}", region.units.length(e.support_from), e.says)), (e.source, e.status))));
    list.one(dig.map(|e| (e.spoil_back.map(|l| region.units.length(l)), (e.source, e.status))));
    list.one(region.frost.as_ref().map(|f| (Some(frost(f, region.units)), (f.source, f.status))));
    list.one(region.seismic.as_ref().map(|s| (Some(format!("Look up: {}", s.says)), (s.source, s.status))));
    list.one(region.rain.as_ref().map(|r| (Some(rain(r)), (r.source, r.status))));
    timber(&mut list, region.timber.as_ref());
    let w = region.words;
    let words = format!(
        "{}, asked of {}; services: {}; {}, {}, {}, {}",
        w.permit, w.office, w.services, w.skip, w.sleeper, w.turf, w.drain_stone
    );
    list.one(Some((Some(words), ("common practice, no source", Status::CommonPractice))));
    list.rows
}

type Meta = (&'static str, Status);

/// Rows, each under the next question.
struct List {
    next: usize,
    rows: Vec<Row>,
}

impl List {
    fn question(&mut self) -> &'static str {
        self.next += 1;
        QUESTIONS.get(self.next - 1).copied().unwrap_or_default()
    }
    /// An answer that may be missing because the rule is, or because the rule is silent.
    fn one(&mut self, answer: Option<(Option<String>, Meta)>) {
        let told = answer.and_then(|(a, meta)| Some((a?, meta)));
        self.many(told.into_iter().collect());
    }
    fn many(&mut self, answers: Vec<(String, Meta)>) {
        let question = self.question();
        if answers.is_empty() {
            self.rows.push(Row { question, answer: None, source: "", status: None });
        }
        for (answer, (source, status)) in answers {
            self.rows.push(Row { question, answer: Some(answer), source, status: Some(status) });
        }
    }
}

fn trigger(t: &Trigger, region: &Region) -> String {
    let who = match t.asks {
        Consequence::Notice => "notice",
        Consequence::Permit => region.words.permit,
        Consequence::Engineer => "engineer",
    };
    let from = if t.at_least { "from" } else { "above" };
    format!("{who}: {} {from} {}. {}", t.measured.words(), region.units.length(t.above), t.says)
}

/// `150 mm to 220 mm`, `at most 220 mm`, `at least 220 mm`.
fn between((least, most): (Option<Length>, Option<Length>), units: Units) -> Option<String> {
    match (least, most) {
        (Some(l), Some(m)) => Some(format!("{} to {}", units.length(l), units.length(m))),
        (None, Some(m)) => Some(format!("at most {}", units.length(m))),
        (Some(l), None) => Some(format!("at least {}", units.length(l))),
        (None, None) => None,
    }
}

fn steps(list: &mut List, steps: Option<&StepLimits>, units: Units) {
    type Read = fn(&StepLimits, Units) -> Option<String>;
    let read: [Read; 7] = [
        |s, u| between(s.riser, u),
        |s, u| between(s.going, u),
        |s, u| s.two_r_plus_g.and_then(|(l, m)| between((Some(l), Some(m)), u)),
        |s, _| s.pitch_most.map(|a| format!("at most {:.0}°", a.to_deg())),
        |s, _| s.risers_most.map(|n| n.to_string()),
        |s, u| s.rise_most.map(|l| u.length(l)),
        |s, u| s.riser_difference_most.map(|l| u.length(l)),
    ];
    for r in read {
        list.one(steps.map(|s| (r(s, units), (s.source, s.status))));
    }
}

fn ramp(list: &mut List, ramp: Option<&RampLimits>, units: Units) {
    let runs = |r: &RampLimits| -> Vec<String> {
        r.rows.iter().map(|x| format!("{} for {} at most", units.slope(x.slope), units.run(x.run_most))).collect()
    };
    list.one(ramp.map(|r| (Some(runs(r).join("; ")), (r.source, r.status))));
    list.one(ramp.map(|r| (r.landing.map(|l| format!("at least {}", units.length(l))), (r.source, r.status))));
    list.one(ramp.map(|r| (r.crossfall_most.map(|s| format!("at most {}", units.slope(s))), (r.source, r.status))));
}

fn edges(list: &mut List, guard: Option<&GuardTrigger>, rail: Option<&HandrailRule>, units: Units) {
    let drop = |g: &GuardTrigger| match g.walked_within {
        Some(d) => format!("{}, where people walk within {} of the edge", units.length(g.drop), units.length(d)),
        None => units.length(g.drop),
    };
    list.one(guard.map(|g| (Some(drop(g)), (g.source, g.status))));
    list.one(guard.map(|g| (g.height.map(|l| format!("at least {}", units.length(l))), (g.source, g.status))));
    let when = |h: &HandrailRule| match (h.risers_from, h.rise_from) {
        (Some(n), Some(r)) => Some(format!("from {n} risers, or from a rise of {}", units.length(r))),
        (Some(n), None) => Some(format!("from {n} risers")),
        (None, Some(r)) => Some(format!("from a rise of {}", units.length(r))),
        (None, None) => None,
    };
    list.one(rail.map(|h| (when(h), (h.source, h.status))));
    list.one(rail.map(|h| (between(h.height, units), (h.source, h.status))));
}

fn frost(f: &FrostRule, units: Units) -> String {
    let local = if f.local { " The place may have a deeper frost line: ask." } else { "" };
    match f.depth {
        Some(d) => format!("{} at least. {}{local}", units.length(d), f.says),
        None => format!("{}{local}", f.says),
    }
}

fn rain(r: &RainRule) -> String {
    match r.intensity {
        Some(i) => format!("{:.0} mm/h where nobody looks closer. {}", i.to_mm_per_h(), r.says),
        None => format!("Look up: {}", r.says),
    }
}

fn timber(list: &mut List, timber: Option<&TimberRule>) {
    list.one(timber.map(|t| (Some(t.post.to_string()), (t.source, t.status))));
    list.one(timber.map(|t| (Some(t.board.to_string()), (t.source, t.status))));
    list.one(timber.map(|t| (t.relied_on.map(str::to_string), (t.source, t.status))));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{REGIONS, region};

    #[test]
    fn every_region_answers_every_question_of_the_pack_or_says_that_it_does_not_know() {
        for r in REGIONS {
            let all = rows(r);
            let mut asked: Vec<&str> = all.iter().map(|x| x.question).collect();
            asked.dedup();
            assert_eq!(asked, QUESTIONS, "{}", r.code);
            for x in all {
                assert_eq!(x.answer.is_some(), x.status.is_some(), "{}: {}", r.code, x.question);
                assert_eq!(x.answer.is_some(), !x.source.is_empty(), "{}: {}", r.code, x.question);
            }
        }
    }

    #[test]
    fn no_region_knows_nothing_but_the_generic_one() {
        for r in REGIONS {
            let known = rows(r).iter().filter(|x| x.answer.is_some()).count();
            assert_eq!(known == 1, r.code == "generic", "{} answers {known} questions", r.code);
        }
    }

    #[test]
    fn rows_speak_in_the_units_of_the_place() {
        let riser = |code: &str| rows(region(code).unwrap())[after_triggers(code)].answer.clone();
        assert_eq!(riser("uk-england"), Some("150 mm to 220 mm".into()));
        assert_eq!(riser("us-model"), Some("at most 7¾ in".into()));
    }

    /// Where the row after the triggers stands.
    fn after_triggers(code: &str) -> usize {
        region(code).unwrap().triggers.len().max(1)
    }
}
