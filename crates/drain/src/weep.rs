//! What runs out of a weep hole, and when does rising water lift the soil?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Flow, Length, Level, Share, trim};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working, check_range};

use crate::findings::WEEPS_SMALL;
use crate::{DrainCase, Station, WallLine, WeepWish};

/// Flow through a hole with water standing above it.
///
/// # Source
/// Torricelli with a discharge coefficient; any hydraulics text. Cd 0.61 for a sharp edge.
/// # Symbols
/// d diameter (m), h water above the middle of the hole (m), C_d discharge coefficient; g = 9.81 m/s².
/// # Gives
/// Q = C_d·πd²/4·√(2gh), l/s.
/// # Not for
/// Long holes and holes behind fabric, which pass less; water below the top of the hole.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-04: 75 mm, 0.5 m: 8.44 l/s.
pub(crate) fn orifice<N: Number>(diameter: N, head: N, coefficient: N) -> N {
    let area = (diameter.squared() * (std::f64::consts::PI / 4.0)).named("A", Unit::M2);
    let velocity = (head * (2.0 * 9.81)).sqrt().named("v", Unit::M_S);
    (coefficient * area * velocity * 1000.0).named("Q", Unit::L_S)
}

/// The working of `orifice`.
pub static ORIFICE: Working = Working {
    name: "water/orifice",
    title: "How much runs through a weep hole with water standing above it?",
    source: Source { work: "Torricelli with a discharge coefficient", place: "any hydraulics text" },
    not_for: "long holes and holes behind fabric, which pass less",
    inputs: &[
        Input::new("diameter", "d", "diameter of the hole", Unit::M, Limits::ours(0.001, 1.0)),
        Input::new("head", "h", "water above the middle of the hole", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("coefficient", "C_d", "discharge coefficient", Unit::NONE, Limits::ours(0.3, 1.0)).or(0.61),
    ],
    outputs: &[Output { key: "flow", words: "flow", unit: Unit::L_S }],
    run: |g| Ok(vec![Found::One(orifice(g.one("diameter")?, g.one("head")?, g.one("coefficient")?))]),
};

/// Hydraulic gradient at which rising water carries the soil.
///
/// # Source
/// Terzaghi; any soil mechanics text.
/// # Symbols
/// G_s density of the grains over that of water, e void ratio.
/// # Gives
/// i_c = (G_s − 1)/(1 + e), about 1.
/// # Not for
/// Cohesive soil.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-07: 2.65 and 0.65: 1.0.
pub(crate) fn critical_gradient<N: Number>(grains: N, voids: N) -> N {
    ((grains - 1.0) / (voids + 1.0)).named("i_c", Unit::NONE)
}

/// The working of `critical_gradient`.
pub static CRITICAL_GRADIENT: Working = Working {
    name: "water/critical-gradient",
    title: "At which gradient does rising water carry the soil?",
    source: Source { work: "Terzaghi, Theoretical Soil Mechanics (1943)", place: "any soil mechanics text" },
    not_for: "cohesive soil",
    inputs: &[
        Input::new("grains", "G_s", "density of the grains over that of water", Unit::NONE, Limits::ours(2.0, 3.5))
            .or(2.65),
        Input::new("voids", "e", "void ratio", Unit::NONE, Limits::ours(0.1, 3.0)),
    ],
    outputs: &[Output { key: "gradient", words: "critical gradient", unit: Unit::NONE }],
    run: |g| Ok(vec![Found::One(critical_gradient(g.one("grains")?, g.one("voids")?))]),
};

/// A row of weep holes.
#[derive(Debug, Clone, PartialEq)]
pub struct Weeps {
    /// How many.
    pub count: u32,
    /// Distance between them.
    pub spacing: Length,
    /// What all of them pass with the head given.
    pub flow: Flow,
    /// Working of one hole.
    pub trace: Trace,
}

/// Weep holes along a solid wall: as many as the spacing asks for, one in the middle of each part, and what they pass
/// with `head` of water above them. 50 to 75 mm every 1.2 to 2.0 m is common practice, no source.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] for a hole or a head outside the working's limits, and a spacing of
/// nothing.
pub fn weeps(wall: Length, spacing: Length, diameter: Length, head: Length) -> groundhold_working::Result<Weeps> {
    let given = [diameter.to_m(), head.to_m(), 0.61];
    ORIFICE.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(ORIFICE.name, row, v))?;
    let part = Input::new("spacing", "a", "distance between weep holes", Unit::M, Limits::ours(0.1, 100.0));
    check_range(ORIFICE.name, &part, spacing.to_m())?;
    let along = Input::new("wall", "L", "length of the wall", Unit::M, Limits::ours(0.0, 1e5));
    check_range(ORIFICE.name, &along, wall.to_m())?;
    let count = (wall / spacing - 1e-9).ceil().max(1.0);
    let one = orifice(given[0], given[1], given[2]);
    Ok(Weeps {
        count: count as u32,
        spacing: wall / count,
        flow: Flow::l_per_s(one * count),
        trace: Trace::new(&ORIFICE, given.map(Into::into).to_vec()),
    })
}

/// Height of water above the middle of a hole at which it passes a flow.
///
/// # Source
/// Torricelli with a discharge coefficient, turned round.
/// # Symbols
/// Q flow through one hole (l/s), d its diameter (m), C_d discharge coefficient; g = 9.81 m/s².
/// # Gives
/// h = (Q/(C_d·πd²/4))²/2g, m.
/// # Not for
/// Long holes and holes behind fabric, which ask for more.
/// # Errors
/// None of its own.
/// # By hand
/// 8.4407 l/s through 75 mm: 0.5 m (reference case HY-04-back).
pub(crate) fn head<N: Number>(flow: N, diameter: N, coefficient: N) -> N {
    let area = (diameter.squared() * (std::f64::consts::PI / 4.0)).named("A", Unit::M2);
    ((flow / 1000.0 / (coefficient * area)).squared() / (2.0 * 9.81)).named("h", Unit::M)
}

/// The working of `head`.
pub static WEEP_HEAD: Working = Working {
    name: "water/orifice-head",
    title: "How high does water stand above a weep hole that passes a flow?",
    source: Source { work: "Torricelli with a discharge coefficient", place: "any hydraulics text, turned round" },
    not_for: "long holes and holes behind fabric, which ask for more",
    inputs: &[
        Input::new("flow", "Q", "flow through one hole", Unit::L_S, Limits::ours(0.0, 1000.0)),
        Input::new("diameter", "d", "diameter of the hole", Unit::M, Limits::ours(0.001, 1.0)),
        Input::new("coefficient", "C_d", "discharge coefficient", Unit::NONE, Limits::ours(0.3, 1.0)).or(0.61),
    ],
    outputs: &[Output { key: "head", words: "water above the middle of the hole", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(head(g.one("flow")?, g.one("diameter")?, g.one("coefficient")?))]),
};

/// Walls that retain less than this count as full of water when their drain is blocked.
const LOW: Length = Length::mm(300.0);

/// Level to which water may stand at a station when the drain is blocked: as high above the holes as lets them pass the
/// flow, no higher than the ground behind; the ground behind where there are no holes or the flow is not known.
pub(crate) fn blocked(wall: &WallLine, s: &Station, wish: Option<&WeepWish>, flow: Option<Flow>) -> Level {
    let (Some(w), Some(q)) = (wish, flow) else { return s.behind };
    let holes = (wall.length() / w.spacing.max(Length::mm(100.0))).ceil().max(1.0);
    let h = head(q.to_l_per_s() / holes, w.diameter.to_m().max(0.001), 0.61);
    // Water covers the hole before it counts as an orifice.
    let stands = s.front + w.above + Length::m(h).max(w.diameter / 2.0);
    if stands.is_finite() { stands.min(s.behind) } else { s.behind }
}

/// How high water may stand behind a wall whose drain is blocked, as a share of the height that it retains: the largest
/// of its stations that retain 300 mm or more; all of it without weep holes, without a flow, and for a lower wall.
pub fn blocked_share(wall: &WallLine, wish: Option<&WeepWish>, flow: Option<Flow>) -> Share {
    let high = wall.stations.iter().filter(|s| s.behind - s.front >= LOW);
    let share = high.map(|s| (blocked(wall, s, wish, flow) - s.front) / (s.behind - s.front));
    Share::fraction(share.reduce(f64::max).unwrap_or(1.0).clamp(0.0, 1.0))
}

/// The weep holes of a wall, and what stands against them where the flow is known.
pub(crate) fn weeps_of(
    case: &DrainCase,
    wall: &WallLine,
    wish: &WeepWish,
    flow: Option<Flow>,
) -> (Option<Weeps>, Option<Finding>) {
    let high = wall.stations.iter().reduce(|a, b| if b.behind - b.front > a.behind - a.front { b } else { a });
    let room = high.map_or(Length::ZERO, |s| s.behind - s.front - wish.above).max(Length::ZERO);
    let Ok(found) = weeps(wall.length(), wish.spacing, wish.diameter, room) else { return (None, None) };
    let short = flow.filter(|q| *q > found.flow).map(|q| {
        let says = format!(
            "{} weep holes of {} pass {} l/s before water stands to the ground behind; {} l/s come.",
            found.count,
            case.units.length(wish.diameter),
            trim(found.flow.to_l_per_s(), 2),
            trim(q.to_l_per_s(), 2)
        );
        let one = found.flow / f64::from(found.count);
        let f = Finding::new(&WEEPS_SMALL, Place::of(&wall.id), says)
            .with_utilisation((q / found.flow).min(999.0))
            .with_trace(found.trace.clone());
        if one > Flow::ZERO {
            let needed = (q / one).ceil();
            f.with_remedy(Remedy::theirs(format!(
                "{needed} holes, one every {}.",
                case.units.run(wall.length() / needed)
            )))
        } else {
            f.with_remedy(Remedy::theirs("Holes nearer to the ground in front."))
        }
    });
    (Some(found), short)
}
