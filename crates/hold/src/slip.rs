//! Does the whole bank slide, wall and all, along a circle under its posts or its base?

use groundhold_earth::slip::{GroundLoad, Layer, Pore, Search, Section};
use groundhold_earth::{Combination, basis::Margin};
use groundhold_finding::Remedy;
use groundhold_quantity::{Length, Level, Point};
use groundhold_working::{Refused, Unit};

use crate::loads;
use crate::stand::Stand;
use crate::{Check, CheckKind, Line, LoadCase, SlipCircle, WallCase};

/// Below this the bank is a kerb and its slip is not searched.
const KERB: Length = Length::mm(300.0);
/// How far the section is drawn to either side, in heights from its underside to the ground behind.
const REACH: f64 = 4.0;
/// No circle shallower than this is asked for: a skin of loose sand is not the bank.
const LEAST_DEPTH: Length = Length::mm(300.0);

/// The critical circle through the section at the highest place, drained; and the same circle with the drain blocked, or
/// its own search where no drain is planned.
///
/// # Errors
/// Where the section cannot be read.
pub(crate) fn checks(case: &WallCase, highest: Option<&Stand>) -> Result<(Vec<Check>, Option<SlipCircle>), Refused> {
    let high = highest.filter(|p| case.search_slip && p.retained >= KERB);
    let Some(post) = high else { return Ok((vec![], None)) };
    let at = case.bank.as_ref().map_or(post.chainage, |b| b.chainage);
    let search = Search { under: Some(Point::m(post.heel.to_m(), post.bottom.to_m())), least_depth: LEAST_DEPTH };
    let (mut checks, mut circle) = (vec![], None::<SlipCircle>);
    for state in loads::states(case).into_iter().filter(|s| SEARCHED.contains(s)) {
        let combination = deciding(case, state);
        let section = section(case, post, combination, state);
        let accident = loads::is_accident(case, state);
        let (factor, traces) = match circle.filter(|_| accident) {
            Some(c) => (section.factor(c.exit_x, c.entry_x, c.radius)?, vec![]),
            None => {
                let slip = section.critical(&search)?;
                circle = Some(SlipCircle {
                    chainage: at,
                    centre_x: Length::m(slip.centre.x),
                    centre_level: Level::m(slip.centre.y),
                    radius: slip.radius,
                    factor: slip.factor,
                    exit_x: Length::m(slip.exit.x),
                    entry_x: Length::m(slip.entry.x),
                });
                (Some(slip.factor), vec![slip.trace])
            }
        };
        let Some(factor) = factor else { continue };
        let wanted = combination.wanted.slip;
        checks.push(Check {
            kind: CheckKind::Slip,
            on: format!("chainage {}", case.chainage(at)),
            case: state,
            method: if accident {
                "Bishop 1955, the drained circle with water"
            } else {
                "Bishop 1955, critical circle"
            },
            basis: combination.key,
            demand: wanted,
            capacity: factor,
            unit: Unit::NONE,
            utilisation: wanted / factor.max(1e-9),
            traces,
            governs: !accident,
        });
    }
    Ok((checks, circle))
}

/// States in which the bank is searched; wind does not reach it, and the others are checked on the wall alone.
const SEARCHED: [LoadCase; 2] = [LoadCase::Drained, LoadCase::DrainBlocked];

/// The set of factors that decides over a slip: the one that weakens the soil, where the margin lies in partial factors.
fn deciding(case: &WallCase, state: LoadCase) -> &'static Combination {
    let all = loads::combinations(case, state);
    match case.basis.margin {
        Margin::GlobalFactors => &all[0],
        Margin::PartialFactors => {
            all.iter().reduce(|a, b| if b.tan_phi > a.tan_phi { b } else { a }).unwrap_or(&all[0])
        }
    }
}

fn section(case: &WallCase, post: &Stand, combination: &Combination, state: LoadCase) -> Section {
    let height = (post.behind - post.bottom).max(Length::m(1.0));
    let reach = height.to_m() * REACH;
    let mut ground = case.bank.as_ref().map_or_else(|| drawn(case, post, reach), |b| b.ground.clone());
    led_on(case, post, &mut ground, reach);
    let (first, last) = (ground[0].x.min(-reach), ground[ground.len() - 1].x.max(reach));
    let retained = Layer { soil: combination.soil(&case.retained_soil), top: vec![] };
    let founding = Layer {
        soil: combination.soil(&case.founding_soil),
        top: vec![Point::m(first, post.front.to_m()), Point::m(last, post.front.to_m())],
    };
    let water = post.front.to_m() + post.retained.to_m() * case.water.blocked.to_fraction();
    let pore = match state {
        LoadCase::DrainBlocked => Pore::Table(vec![
            Point::m(first, water),
            Point::m(-1e-3, water),
            Point::m(0.0, post.front.to_m()),
            Point::m(last, post.front.to_m()),
        ]),
        _ => Pore::Dry,
    };
    let strips = loads::strips(case);
    let load = |s: &groundhold_earth::Strip| GroundLoad {
        value: s.value * if s.permanent { combination.permanent } else { combination.variable },
        from: -s.to,
        to: -s.from,
    };
    // An upper wall is in the drawn ground already where a bank is given; its weight is then not a load.
    let given = strips.iter().take(if case.bank.is_some() { case.loads.len() } else { strips.len() });
    let layers = vec![retained, founding];
    Section { layers, pore, loads: given.map(load).collect(), ..Section::of(case.retained_soil.clone(), ground) }
}

/// Ground that ends too near behind a deep body for a circle to pass under it goes on as it rises there.
fn led_on(case: &WallCase, post: &Stand, ground: &mut Vec<Point>, reach: f64) {
    let far = -(post.heel.to_m().abs() + reach);
    let Some(end) = ground.first().copied().filter(|p| far < p.x) else { return };
    let rise = Line::new(&case.stations).at(post.chainage).slope_behind.to_ratio();
    ground.insert(0, Point::m(far, end.y + rise * (end.x - far)));
}

/// The ground drawn straight from the slopes there.
fn drawn(case: &WallCase, post: &Stand, reach: f64) -> Vec<Point> {
    let here = Line::new(&case.stations).at(post.chainage);
    let (behind, front) = (post.front.to_m() + post.retained.to_m(), post.front.to_m());
    vec![
        Point::m(-reach, behind + here.slope_behind.to_ratio() * reach),
        Point::m(0.0, behind),
        Point::m(0.0, front),
        Point::m(reach, front - here.slope_front.to_ratio() * reach),
    ]
}

/// What mends a slip.
pub(crate) fn remedies() -> Vec<Remedy> {
    vec![Remedy::theirs(
        "A flatter bank behind, a lower wall, drains that draw the water down, or an engineer's design.",
    )]
}
