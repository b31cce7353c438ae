//! One picture that says what this is: the plan, the slope cut through, and the section of the highest wall.

use groundhold_plan::Plan;

use crate::pens::{BLACK, FIGURE, FINE, GREY, MEDIUM, PALE, line};
use crate::scene::{At, Label, Pen, Scene};

/// Millimetres; at 3.75 pixels a millimetre 1200 by 800.
const WIDE: f64 = 320.0;
const HIGH: f64 = 213.3;
/// Room for the plan and the site section at the left.
const LEFT: f64 = 191.0;
/// Height of the plan.
const PLAN: f64 = 138.0;

/// Plan and sections together, for a first page.
pub(crate) fn picture(plan: &Plan) -> Scene {
    let name = if plan.job.about.name.is_empty() { "Plan" } else { &plan.job.about.name };
    let mut s = Scene::new(WIDE, HIGH, format!("{name}: plan and sections"));
    s.push(Label::new(At::mm(6.0, 9.2), name, 5.6).bold().into());
    let mut words = plan.job.about.place.clone();
    if plan.job.about.demo {
        words = format!("{words}{}invented demo data", if words.is_empty() { "" } else { " · " });
    }
    s.push(Label::new(At::mm(WIDE - 6.0, 9.2), words, FIGURE).end().ink(GREY).into());
    s.push(line(vec![At::mm(6.0, 12.0), At::mm(WIDE - 6.0, 12.0)], Pen::new(MEDIUM, BLACK)));

    let view = crate::plan_view::quiet(plan, LEFT - 8.0, PLAN);
    s.place(&view, 4.0, 15.0);
    let below = 15.0 + PLAN + 1.0;
    s.push(line(vec![At::mm(6.0, below), At::mm(LEFT - 4.0, below)], Pen::new(FINE, PALE)));
    let site = crate::site_section::site_section(plan, LEFT - 8.0, HIGH - below - 3.0);
    s.place(&site, 4.0, below + 1.0);

    s.push(line(vec![At::mm(LEFT, 15.0), At::mm(LEFT, HIGH - 4.0)], Pen::new(FINE, PALE)));
    let highest = plan.walls.iter().reduce(|a, b| if b.layout.retained > a.layout.retained { b } else { a });
    if let Some(w) = highest {
        let section = crate::section::section(plan, &w.id, WIDE - LEFT - 5.0, HIGH - 18.0);
        s.place(&section, LEFT + 2.0, 15.0);
    }
    s.scale = view.scale;
    s
}
