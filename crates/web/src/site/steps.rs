//! What is the next peg, post, cut or piece of work, and which figures does it need?

use groundhold_plan::Plan;
use groundhold_quantity::{Length, Units};
use groundhold_setout::Tie;

/// What is gone through, one thing after the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Round {
    /// Pegs to be set.
    #[default]
    Pegs,
    /// Posts to be set.
    Posts,
    /// Pieces to be sawn.
    Cuts,
    /// Work in its order.
    Work,
}

impl Round {
    /// All of them, in the order in which they come.
    pub const ALL: [Round; 4] = [Round::Pegs, Round::Posts, Round::Cuts, Round::Work];
    /// The word on its button.
    pub fn word(self) -> &'static str {
        match self {
            Round::Pegs => "Pegs",
            Round::Posts => "Posts",
            Round::Cuts => "Cuts",
            Round::Work => "Work",
        }
    }
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// A name that stays when other things change.
    pub key: String,
    /// What it is, large.
    pub title: String,
    /// What each figure is, and the figure.
    pub facts: Vec<(String, String)>,
    /// The element and the place on it.
    pub element: String,
    /// A word more; may be empty.
    pub note: String,
    /// True when it is done.
    pub done: bool,
}

/// The things of a round; `ticked` are the keys of those that are done.
pub fn steps(plan: &Plan, round: Round, ticked: &[String]) -> Vec<Step> {
    let mut all = match round {
        Round::Pegs => pegs(plan),
        Round::Posts => posts(plan),
        Round::Cuts => cuts(plan),
        Round::Work => work(plan),
    };
    for s in &mut all {
        s.done |= ticked.contains(&s.key);
    }
    all
}

fn tape(units: Units, l: Length) -> String {
    match units {
        Units::Metric => format!("{:.3} m", l.to_m()),
        Units::Feet => units.length(l),
    }
}

fn tapes(units: Units, ties: &Option<(Tie, Tie)>, facts: &mut Vec<(String, String)>) {
    if let Some((a, b)) = ties {
        for t in [a, b] {
            facts.push((format!("tape from {}", t.peg), tape(units, t.reads)));
        }
    }
}

fn pegs(plan: &Plan) -> Vec<Step> {
    let units = plan.job.about.units;
    let one = |r: &groundhold_setout::Row| {
        let mut facts = vec![];
        tapes(units, &r.ties, &mut facts);
        if let Some(dig) = r.dig {
            let word = if dig >= Length::ZERO { "dig down" } else { "fill up" };
            facts.push((word.into(), units.length(dig.abs())));
        }
        if let Some(staff) = r.staff {
            facts.push(("staff reads".into(), tape(units, staff)));
        }
        let check = r.check.as_ref().map(|c| format!("Proof: {} from {}.", tape(units, c.reads), c.peg));
        let datum = tape(units, plan.setout.staff_on_datum);
        Step {
            key: format!("peg {}", r.mark.id),
            title: format!("{} · {}", r.mark.id, r.mark.what),
            facts,
            element: r.mark.element.clone(),
            note: format!("{} Staff readings hold with {datum} read on the datum.", check.unwrap_or_default())
                .trim()
                .into(),
            done: false,
        }
    };
    plan.setout.rows.iter().map(one).collect()
}

fn posts(plan: &Plan) -> Vec<Step> {
    let units = plan.job.about.units;
    let one = |r: &groundhold_setout::PostRow| {
        let p = &r.post;
        let mut facts = vec![];
        tapes(units, &r.ties, &mut facts);
        let hole = r
            .hole_below_ground
            .map_or(("hole below the dug ground", r.hole_below_front), |h| ("hole below ground now", h));
        facts.push((hole.0.into(), units.length(hole.1)));
        facts.push(("string at level".into(), units.level(r.string)));
        if let Some(staff) = r.staff_top {
            facts.push(("staff on its top".into(), tape(units, staff)));
        }
        facts.push(("hole wide".into(), units.length(p.hole_diameter)));
        let spacing = r.spacing.map(|s| format!("{} from the post before.", units.length(s)));
        Step {
            key: format!("post {} {}", p.wall, p.number),
            title: format!("{} post {}", p.wall, p.number),
            facts,
            element: format!("{} post {}", p.wall, p.number),
            note: spacing.unwrap_or_else(|| "First of its wall.".into()),
            done: p.built,
        }
    };
    plan.setout.posts.iter().map(one).collect()
}

fn cuts(plan: &Plan) -> Vec<Step> {
    let units = plan.job.about.units;
    let mut all = vec![];
    for cutting in &plan.take_off.cutting {
        for (i, bar) in cutting.bars.iter().enumerate() {
            let facts = bar
                .pieces
                .iter()
                .map(|p| (format!("{} {}", p.element, p.mark).trim().to_string(), units.length(p.length)))
                .collect();
            all.push(Step {
                key: format!("cut {} {}", cutting.material, i + 1),
                title: format!("{} · {} long", cutting.material, units.run(bar.stock)),
                facts,
                element: bar.pieces.first().map(|p| p.element.clone()).unwrap_or_default(),
                note: format!("Bar {} of {}. Left over: {}.", i + 1, cutting.bars.len(), units.length(bar.offcut)),
                done: false,
            });
        }
    }
    all
}

/// What to heed at a piece of work, in its own words.
fn cautioned<'a>(plan: &'a Plan, id: &str) -> Option<&'a str> {
    plan.programme.cautions.iter().find(|c| c.caution.id == id).map(|c| c.caution.says)
}

fn work(plan: &Plan) -> Vec<Step> {
    let one = |t: &groundhold_build::Task| {
        let mut facts = vec![];
        if t.quantity > 0.0 {
            facts.push(("how much".into(), format!("{} {}", groundhold_quantity::trim(t.quantity, 1), t.unit)));
        }
        facts.push((
            "day".into(),
            if t.first_day() == t.last_day() {
                t.first_day().to_string()
            } else {
                format!("{}–{}", t.first_day(), t.last_day())
            },
        ));
        let hold = t.hold_point.and_then(|n| plan.programme.hold_points.iter().find(|h| h.number == n));
        if let Some(h) = hold {
            facts.push(("stop and check before going on".into(), h.name.clone()));
        }
        Step {
            key: format!("work {}", t.id),
            title: if t.element.is_empty() { t.name.clone() } else { format!("{} · {}", t.element, t.name) },
            facts,
            element: t.element.clone(),
            note: [t.how.as_str()]
                .into_iter()
                .chain(t.cautions.iter().filter_map(|id| cautioned(plan, id)))
                .filter(|s| !s.is_empty())
                .collect::<Vec<_>>()
                .join(" "),
            done: false,
        }
    };
    plan.programme.tasks.iter().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_round_of_the_demo_has_steps_with_figures_and_keys_of_their_own() {
        let plan = groundhold_plan::plan(&crate::job::demo().read().whole().unwrap()).unwrap();
        for round in Round::ALL {
            let all = steps(&plan, round, &[]);
            assert!(!all.is_empty() && all.iter().all(|s| !s.facts.is_empty()), "{round:?}");
            let mut keys: Vec<&str> = all.iter().map(|s| s.key.as_str()).collect();
            keys.sort_unstable();
            keys.dedup();
            assert_eq!(keys.len(), all.len(), "{round:?}");
            let done = steps(&plan, round, &[all[0].key.clone()]);
            assert!(done[0].done && !done[1].done);
        }
    }

    #[test]
    fn a_piece_of_work_says_what_to_heed_in_words() {
        let plan = groundhold_plan::plan(&crate::job::demo().read().whole().unwrap()).unwrap();
        let all = steps(&plan, Round::Work, &[]);
        for (step, task) in all.iter().zip(&plan.programme.tasks) {
            let says = task.cautions.iter().map(|id| cautioned(&plan, id).unwrap());
            assert!(says.into_iter().all(|s| step.note.contains(s)), "{}", step.title);
        }
        assert!(plan.programme.tasks.iter().any(|t| !t.cautions.is_empty()));
    }

    #[test]
    fn a_post_is_found_from_two_pegs_with_its_hole_and_string() {
        let plan = groundhold_plan::plan(&crate::job::demo().read().whole().unwrap()).unwrap();
        let post = &steps(&plan, Round::Posts, &[])[0];
        let whats: Vec<&str> = post.facts.iter().map(|f| f.0.as_str()).collect();
        assert!(whats[0].starts_with("tape from") && whats[1].starts_with("tape from"));
        assert!(whats.iter().any(|w| w.starts_with("hole below")) && whats.contains(&"string at level"));
    }
}
