//! Do whole courses meet the wanted top, does soil stay behind them, do posts that stand reach, and does every change fit?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Length, Level};
use groundhold_working::Trace;

use super::along::MEANT;
use super::place::beside;
use super::{CourseFit, Posted};
use crate::workings::{COURSES, courses};
use crate::{Bay, Layout, Line, Post, PostChange, WallCase, findings};

/// An overshoot that nobody sees.
const UNSEEN: Length = Length::mm(20.0);

/// What the layout itself has against it.
pub(crate) fn findings(case: &WallCase, wall: &Posted, layout: &Layout) -> Vec<Finding> {
    let mut all = vec![];
    all.extend(top_misses(case, wall, layout));
    all.extend(soil_over_top(case, layout));
    all.extend(built_short(case, wall, layout));
    all.extend(case.changes.iter().filter_map(|c| change_fits_nothing(case, layout, c)));
    all
}

/// Posts that stand and do not reach to the top of the boards beside them; said at the worst.
fn built_short(case: &WallCase, wall: &Posted, layout: &Layout) -> Option<Finding> {
    let short = |p: &Post| beside(&layout.bays, p.number - 1).map(|b| b.top).reduce(Level::max).map(|t| t - p.top);
    let all = layout.posts.iter().filter(|p| p.stands_to.is_some()).filter_map(|p| Some((p, short(p)?)));
    let all: Vec<(&Post, Length)> = all.filter(|(_, by)| UNSEEN < *by).collect();
    let (post, by) = all.iter().copied().reduce(|a, b| if b.1 > a.1 { b } else { a })?;
    let others = match all.len() {
        1 => String::new(),
        n => format!(" {} other post(s) that stand are too short as well.", n - 1),
    };
    let says = format!(
        "Post {} stands to {}; the boards beside it go {} higher.{others}",
        post.number,
        case.units.level(post.top),
        case.units.length(by)
    );
    let pitch = wall.height + wall.gap;
    let courses = (by / pitch - 1e-6).ceil().max(1.0);
    let longer = post.length + by;
    let lower = Remedy::theirs(format!(
        "The top of the wall lower there by {courses} course(s), {}: it then ends {} below the top of the post.",
        case.units.length(pitch * courses),
        case.units.length(pitch * courses - by)
    ));
    let another = Remedy::theirs(format!("The post drawn and one of {} set in its place.", case.units.length(longer)));
    let splice = Remedy::theirs("A splice on the post, to an engineer's detail.");
    let place = Place::on(&case.id, format!("post {}", post.number));
    let finding = Finding::new(&findings::BUILT_POST_SHORT, place, says).with_utilisation(longer / post.length);
    Some(finding.with_remedy(lower).with_remedy(another).with_remedy(splice))
}

/// A change that names a place where no post is, or that would leave out a post that must stay.
fn change_fits_nothing(case: &WallCase, layout: &Layout, change: &PostChange) -> Option<Finding> {
    let near = |p: &&Post| (p.chainage - change.chainage).abs() <= MEANT;
    // The extra posts of a move may stand near the place that was left.
    let kept = layout.posts.iter().filter(near).find(|p| change.left_out && !p.extra);
    let sized = change.hole_diameter.is_some() || change.depth.is_some();
    let said = match kept {
        Some(p) if p.corner => format!("post {} stands at a corner, where boards end, and stays", p.number),
        Some(p) if p.built => format!("post {} stands already and stays", p.number),
        Some(p) if p.number == 1 || p.number == layout.posts.len() => {
            format!("post {} is an end of the wall, where boards end, and stays", p.number)
        }
        Some(_) => return None,
        None if (sized || change.extra) && !layout.posts.iter().any(|p| near(&p)) => {
            format!("no post stands within {} of it", case.units.length(MEANT))
        }
        None => return None,
    };
    let at = case.chainage(change.chainage);
    let place = Place::on(&case.id, format!("chainage {at}"));
    let says = format!("A change is written down for a post at chainage {at}, and {said}.");
    Some(Finding::new(&findings::CHANGE_FITS_NOTHING, place, says))
}

/// The wanted top of a bay, above its lowest front ground.
fn wanted(line: &Line, bay: &Bay) -> Length {
    let over = line.over(bay.chainage.0, bay.chainage.1);
    over.iter().map(|g| g.wanted_top - bay.front).reduce(Length::max).unwrap_or_default()
}

fn top_misses(case: &WallCase, wall: &Posted, layout: &Layout) -> Option<Finding> {
    if wall.fit == CourseFit::FromTop {
        return None;
    }
    let line = Line::new(&case.stations);
    let over = |b: &Bay| (b.top - b.front) - wanted(&line, b);
    let highest = layout.bays.iter().reduce(|a, b| if b.top - b.front > a.top - a.front { b } else { a })?;
    if over(highest) < UNSEEN {
        return None;
    }
    let asked = wanted(&line, highest);
    let buried = highest.front - highest.bottom;
    let values = [asked, buried, wall.height, wall.gap].map(Length::to_m);
    let count = courses(values[0], values[1], values[2], values[3]);
    let length = |m: f64| case.units.length(Length::m(m));
    let says = format!(
        "{} is wanted above the ground in front; {} whole courses give {}, {} give {}.",
        length(asked.to_m()),
        count.up,
        length(count.exposed_up),
        count.down,
        length(count.exposed_down)
    );
    let bury = Length::m(count.bury_exact);
    let adjust = |field: &str, value: String| Adjust { element: case.id.clone(), field: field.into(), value };
    let deeper = Remedy::ours(
        format!(
            "The lowest board buried by {}: {} courses then stand {} high.",
            length(bury.to_m()),
            count.up,
            length(values[0])
        ),
        vec![adjust("spec.bury", format!("{} mm", bury.to_mm().round()))],
    );
    let place = Place::on(&case.id, format!("bay {}", highest.number));
    let finding = Finding::new(&findings::TOP_MISSES, place, says)
        .with_trace(Trace::new(&COURSES, values.map(Into::into).to_vec()))
        .with_remedy(deeper);
    let says = "Courses counted from the wanted top, the lowest board buried deeper.";
    Some(finding.with_remedy(Remedy::ours(says, vec![adjust("spec.fit", "from top".into())])))
}

fn soil_over_top(case: &WallCase, layout: &Layout) -> Option<Finding> {
    let over = |b: &Bay| b.behind - b.top;
    let worst = layout.bays.iter().reduce(|a, b| if over(b) > over(a) { b } else { a })?;
    if over(worst) < Length::mm(5.0) {
        return None;
    }
    let says = format!(
        "The ground behind stands {} above the top board of bay {}.",
        case.units.length(over(worst)),
        worst.number
    );
    let remedy = Remedy::theirs(format!(
        "The wall's top {} higher, or the ground behind lower.",
        case.units.length(over(worst))
    ));
    let place = Place::on(&case.id, format!("bay {}", worst.number));
    Some(Finding::new(&findings::SOIL_OVER_TOP, place, says).with_remedy(remedy))
}
