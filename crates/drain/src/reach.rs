//! Stretch by stretch and shaft by shaft: how much runs in a pipe, how deep, and where is it looked into?

use groundhold_quantity::{Flow, Length, Level, Point, Slope};
use groundhold_working::Trace;

use crate::{DrainCase, InvertPoint, PipeMaterial, capacity, depth_of_flow, diameter_needed};

/// A straight stretch of a pipe at one fall.
#[derive(Debug, Clone, PartialEq)]
pub struct Reach {
    /// Along the pipe, from and to.
    pub chainage: (Length, Length),
    /// Its fall.
    pub fall: Slope,
    /// Flow at its low end in the design rain; `None` where no rain was given.
    pub flow: Option<Flow>,
    /// What it carries, full.
    pub capacity: Flow,
    /// Depth of water over diameter at that flow; `None` where it is not known or too much.
    pub filled: Option<f64>,
    /// Velocity at that flow, metres a second.
    pub velocity_m_per_s: Option<f64>,
    /// Working of the depth, or of the capacity where no flow is known.
    pub trace: Trace,
}

/// What a node of the pipe is.
#[derive(Debug, Clone, PartialEq)]
pub enum NodeKind {
    /// The high end, brought up to be rodded and flushed.
    Rodding,
    /// A bend.
    Bend,
    /// A shaft in which the pipes of these walls run in.
    Junction(Vec<String>),
    /// It runs into the shaft of another wall's pipe.
    Joins(String),
    /// An open end.
    Outlet,
    /// An end that nobody has led on.
    End,
}

impl NodeKind {
    /// In words.
    pub fn words(&self) -> String {
        match self {
            NodeKind::Rodding => "rodding point".into(),
            NodeKind::Bend => "bend".into(),
            NodeKind::Junction(walls) => format!("catch pit, joined by the pipe of {}", walls.join(", ")),
            NodeKind::Joins(wall) => format!("runs into the catch pit of {wall}"),
            NodeKind::Outlet => "outlet".into(),
            NodeKind::End => "end".into(),
        }
    }
}

/// A node of the pipe.
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// Along the pipe from its high end.
    pub chainage: Length,
    /// In plan.
    pub at: Point,
    /// Invert.
    pub invert: Level,
    /// Existing ground there; `None` off the survey.
    pub ground: Option<Level>,
    /// What it is.
    pub kind: NodeKind,
}

/// A pipe is rodded from both ends; longer than this between two points it gets one more. Common practice, no source.
const RODDED: Length = Length::m(30.0);
/// Turns nearer to each other than this are one bend.
const ONE_BEND: Length = Length::mm(300.0);
/// Turns by less than this are laid in the pipe's own bend: sine of the angle (about 6°).
const TURNS: f64 = 0.1;

/// Flow at each point: the wall's own grows evenly along the wall, and what joins comes in at its low end.
pub(crate) fn flows(points: &[InvertPoint], own: Option<Flow>, joined: Option<Flow>) -> Vec<Option<Flow>> {
    let behind =
        points.iter().filter(|p| p.wall_chainage.is_some()).map(|p| p.chainage).fold(Length::ZERO, Length::max);
    let at = |p: &InvertPoint| {
        let own = own?;
        if p.wall_chainage.is_some() {
            return Some(own * if behind > Length::ZERO { p.chainage / behind } else { 1.0 });
        }
        Some(own + joined.unwrap_or(Flow::ZERO))
    };
    points.iter().map(at).collect()
}

/// Flow and fall of the stretch that asks for the widest pipe; `None` where no flow is known.
pub(crate) fn governing(
    points: &[InvertPoint],
    flows: &[Option<Flow>],
    material: PipeMaterial,
) -> Option<(Flow, Slope)> {
    let stretches = points.windows(2).zip(flows.iter().skip(1)).filter_map(|(w, q)| Some(((*q)?, slope(w))));
    stretches.reduce(|best, s| {
        let wide = |(q, fall): (Flow, Slope)| diameter_needed(q, fall, material).0;
        if wide(s) >= wide(best) { s } else { best }
    })
}

fn slope(w: &[InvertPoint]) -> Slope {
    Slope::ratio((w[0].invert - w[1].invert) / (w[1].chainage - w[0].chainage).max(Length::mm(1e-3)))
}

/// The stretches of a pipe of this diameter.
pub(crate) fn reaches(
    points: &[InvertPoint],
    flows: &[Option<Flow>],
    diameter: Length,
    material: PipeMaterial,
) -> Vec<Reach> {
    let all = points.windows(2).zip(flows.iter().skip(1));
    all.map(|(w, flow)| {
        let fall = slope(w);
        let (full, full_trace) = capacity(diameter, fall, material);
        let depth = flow.and_then(|q| depth_of_flow(q, diameter, fall, material));
        Reach {
            chainage: (w[0].chainage, w[1].chainage),
            fall,
            flow: *flow,
            capacity: full,
            filled: depth.as_ref().map(|d| d.0),
            velocity_m_per_s: depth.as_ref().map(|d| d.1),
            trace: depth.map_or(full_trace, |d| d.2),
        }
    })
    .collect()
}

/// The nodes of a pipe from its high end.
pub(crate) fn nodes(
    case: &DrainCase,
    points: &[InvertPoint],
    joins: Option<&str>,
    open: bool,
    received: &[String],
) -> Vec<Node> {
    let low_end = points.iter().rposition(|p| p.wall_chainage.is_some());
    let node = |p: &InvertPoint, kind: NodeKind| Node {
        chainage: p.chainage,
        at: p.at,
        invert: p.invert,
        ground: case.ground.level_at(p.at),
        kind,
    };
    let mut found: Vec<Node> = vec![];
    let last = points.len().saturating_sub(1);
    let mut rodded = Length::ZERO;
    for (i, p) in points.iter().enumerate() {
        let turned = i > 0 && i < last && {
            let (a, b) = ((p.at - points[i - 1].at).unit(), (points[i + 1].at - p.at).unit());
            a.cross(b).abs() > TURNS || a.dot(b) < 0.0
        };
        while i > 0 && p.chainage - rodded > RODDED {
            rodded += RODDED;
            found.push(node(&between(points, rodded), NodeKind::Rodding));
        }
        let kind = if !received.is_empty() && Some(i) == low_end {
            NodeKind::Junction(received.to_vec())
        } else if i == last {
            joins.map_or(if open { NodeKind::Outlet } else { NodeKind::End }, |w| NodeKind::Joins(w.into()))
        } else if i == 0 {
            NodeKind::Rodding
        } else if turned && found.last().is_none_or(|n| p.chainage - n.chainage > ONE_BEND) {
            NodeKind::Bend
        } else {
            continue;
        };
        if !matches!(kind, NodeKind::Bend) {
            rodded = p.chainage;
        }
        found.push(node(p, kind));
    }
    found
}

fn between(points: &[InvertPoint], chainage: Length) -> InvertPoint {
    let i = points.iter().position(|p| p.chainage >= chainage).unwrap_or(points.len().saturating_sub(1)).max(1);
    let (a, b) = (points[i - 1], points[i]);
    let t = (chainage - a.chainage) / (b.chainage - a.chainage).max(Length::mm(1e-3));
    InvertPoint {
        chainage,
        at: a.at.towards(b.at, t),
        invert: a.invert + (b.invert - a.invert) * t,
        wall_chainage: None,
    }
}
