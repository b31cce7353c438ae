//! How steep may a cut stand while the wall is built, how much more is dug for that, and what is done where it is too high?

use groundhold_quantity::{Length, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

use crate::UnsupportedTrigger;

const OSHA: Source = Source {
    work: "29 CFR 1926 Subpart P, Appendix B (United States, 1989)",
    place: "Table B-1, excavations under 20 ft (6.1 m); seen quoted",
};

/// A class of ground by how steep a cut in it may stand open for a short time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CutClass {
    /// What it is called.
    pub name: &'static str,
    /// Which ground that is.
    pub words: &'static str,
    /// Run of the side for one up, at the steepest.
    pub side: f64,
    /// True where it may be benched.
    pub benched: bool,
    /// Where that is from.
    pub source: Source,
}

/// The classes, the firmest first.
pub static CUT_CLASSES: &[CutClass] = &[
    CutClass {
        name: "A",
        words: "stiff clay, cemented ground; never where water seeps or it was dug before",
        side: 0.75,
        benched: true,
        source: OSHA,
    },
    CutClass {
        name: "B",
        words: "firm clay, silt, loam, angular gravel, ground that was dug before",
        side: 1.0,
        benched: true,
        source: OSHA,
    },
    CutClass {
        name: "C",
        words: "sand, gravel, soft clay, wet or seeping ground",
        side: 1.5,
        benched: false,
        source: OSHA,
    },
];

/// The class of a soil told in words (`firm silty clay`). Sand, gravel, soft and wet ground are C, all else is B: that it is
/// A only a competent person on the spot says.
pub fn cut_class(described: &str, water: bool, made: bool) -> &'static CutClass {
    let lower = described.to_lowercase();
    let weak = ["sand", "gravel", "soft", "loose", "peat", "made", "fill"];
    let main = lower.split([',', ';', '(']).next().unwrap_or("");
    let words: Vec<&str> = main.split(|c: char| !c.is_alphabetic()).filter(|w| !w.is_empty()).collect();
    let noun_is_weak = words.last().is_some_and(|w| weak.contains(w) || weak.contains(&w.trim_end_matches('s')));
    let told_weak = words.iter().any(|w| ["soft", "loose", "made"].contains(w));
    if water || made || noun_is_weak || told_weak { &CUT_CLASSES[2] } else { &CUT_CLASSES[1] }
}

/// Area of ground dug beyond a wall, in a section through a face that is laid back.
///
/// # Source
/// Geometry; the slope of the side from Table B-1 of Appendix B to Subpart P of 29 CFR 1926.
/// # Symbols
/// h height of the face (m), r room to work in behind the wall (m), s run of the side for one up.
/// # Gives
/// A = r·h + s·h²/2 (m² of section), and how far the crest lies back from the foot, b = r + s·h (m).
/// # Not for
/// Ground that rises steeply behind: the crest lies further back than b.
/// # Errors
/// None of its own.
/// # By hand
/// 1.2 m, 0.3 m of room, 1:1: 0.36 + 0.72 = 1.08 m², crest 1.5 m back (reference case DIG-FACE-1).
pub(crate) fn over_dig<N: Number>(height: N, room: N, side: N) -> [N; 2] {
    [(room * height + side * height.squared() / 2.0).named("A", Unit::M2), (room + side * height).named("b", Unit::M)]
}

/// The working of `over_dig`.
pub static OVER_DIG: Working = Working {
    name: "dig/over-dig",
    title: "How much more is dug where a face is laid back and needs room to work?",
    source: Source { work: "geometry", place: "slopes: 29 CFR 1926 Subpart P, App. B, Table B-1" },
    not_for: "ground that rises steeply behind the crest",
    inputs: &[
        Input::new("height", "h", "height of the face", Unit::M, Limits::author(0.0, 6.1)),
        Input::new("room", "r", "room to work in", Unit::M, Limits::ours(0.0, 5.0)).or(0.0),
        Input::new("side", "s", "run of the side for one up", Unit::NONE, Limits::ours(0.0, 5.0)),
    ],
    outputs: &[
        Output { key: "area", words: "area of section", unit: Unit::M2 },
        Output { key: "back", words: "crest back from the foot", unit: Unit::M },
    ],
    run: |g| {
        let found = over_dig(g.one("height")?, g.one("room")?, g.one("side")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// A face as the plan sees it: its height along the wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Face {
    /// The wall.
    pub element: String,
    /// Chainage and height of ground over the foot of the dig, in order.
    pub heights: Vec<(Length, Length)>,
    /// Room to work in behind.
    pub room: Length,
    /// From the foot back to what must not be undermined (boundary, building, service, tree); `None` where nothing is near.
    pub free: Option<(Length, String)>,
}

/// What is done instead of leaving a face open.
#[derive(Debug, Clone, PartialEq)]
pub enum Instead {
    /// Laid back so far from its foot.
    LaidBack {
        /// Crest back from the foot at the highest place.
        back: Length,
        /// Run for one up.
        side: f64,
    },
    /// Benched in steps.
    Benched {
        /// How many.
        steps: u32,
        /// Height of each.
        high: Length,
        /// Width of each.
        wide: Length,
    },
    /// In short lengths, never two beside each other open at once.
    ShortLengths {
        /// Length of each.
        long: Length,
        /// Their numbers from the start of the wall, round by round.
        rounds: Vec<Vec<u32>>,
    },
    /// Shored as a competent person designs.
    Shored,
}

/// A face that is dug.
#[derive(Debug, Clone, PartialEq)]
pub struct Excavated {
    /// The wall.
    pub element: String,
    /// Class of the ground.
    pub class: &'static CutClass,
    /// Greatest height.
    pub height: Length,
    /// Where that is.
    pub at: Length,
    /// From where to where it is higher than the limit; `None` where it nowhere is.
    pub too_high: Option<(Length, Length)>,
    /// True where the account below has it laid back.
    pub laid_back: bool,
    /// Dug beyond wall and drainage zone, and put back, bank.
    pub more: Volume,
    /// Ways that do it, the plainest first; empty where the face may stand as it is.
    pub ways: Vec<Instead>,
    /// Working of the section at the highest place.
    pub trace: Trace,
}

/// From this height on a face is reckoned with as laid back where the local rule is not known: 4 ft, the height of a bench
/// in 29 CFR 1926 Subpart P, App. B.
pub const STANDS: Length = Length::mm(1200.0);
/// A face in sand or wet ground is laid back from this height on. Common practice, no source.
const RUNS: Length = Length::mm(300.0);
/// Greatest height of one bench: 4 ft.
const BENCH: Length = Length::mm(1200.0);
/// A short length. Common practice, no source: 1.0 to 1.4 m, as in underpinning.
const SHORT: Length = Length::m(1.2);
/// Heights that differ by less meet.
const HAIR: Length = Length::mm(1e-3);

/// What digging a face takes: laid back at the slope of its class where it is higher than the limit (or is ground that
/// runs) and there is room; else it goes in short lengths, upright.
pub fn excavate(face: &Face, class: &'static CutClass, limit: Option<&UnsupportedTrigger>) -> Excavated {
    let most = limit.map_or(STANDS, |l| l.most);
    let (at, height) =
        face.heights.iter().copied().fold((Length::ZERO, Length::ZERO), |a, b| if b.1 > a.1 { b } else { a });
    let high: Vec<Length> = face.heights.iter().filter(|h| h.1 + HAIR >= most).map(|h| h.0).collect();
    let too_high = high.first().zip(high.last()).map(|(a, b)| (*a, *b));
    let runs = class.side > 1.0 && height + HAIR >= RUNS;
    let [_, back] = over_dig(height.to_m(), face.room.to_m(), class.side).map(Length::m);
    let fits = face.free.as_ref().is_none_or(|(free, _)| back <= *free);
    let laid_back = (too_high.is_some() || runs) && fits;
    let side = if laid_back { class.side } else { 0.0 };
    let more: f64 = face.heights.windows(2).map(|w| between(w, face.room.to_m(), side)).sum();
    let given = [height.to_m().min(6.1), face.room.to_m(), side];
    let wanted = too_high.is_some() || runs;
    Excavated {
        element: face.element.clone(),
        class,
        height,
        at,
        too_high,
        laid_back,
        more: Volume::m3(more),
        ways: if wanted { ways(face, class, height, back, fits) } else { vec![] },
        trace: Trace::new(&OVER_DIG, given.map(Into::into).to_vec()),
    }
}

/// Volume over a stretch in which the height changes in a straight line, exactly.
fn between(w: &[(Length, Length)], room: f64, side: f64) -> f64 {
    let run = (w[1].0 - w[0].0).to_m();
    let (a, b) = (w[0].1.to_m().max(0.0), w[1].1.to_m().max(0.0));
    run.max(0.0) * (room * 0.5 * (a + b) + side * (a * a + a * b + b * b) / 6.0)
}

fn ways(face: &Face, class: &CutClass, height: Length, back: Length, fits: bool) -> Vec<Instead> {
    let mut all = vec![];
    if fits {
        all.push(Instead::LaidBack { back, side: class.side });
    }
    if fits && class.benched && height > BENCH {
        let steps = (height / BENCH).ceil();
        let high = height / steps;
        all.push(Instead::Benched { steps: steps as u32, high, wide: high * class.side });
    }
    if let (Some(first), Some(last)) = (face.heights.first(), face.heights.last()) {
        all.push(short_lengths(last.0 - first.0));
    }
    all.push(Instead::Shored);
    all
}

/// Short lengths in three rounds, so that between two that are open two lie untouched or done.
fn short_lengths(length: Length) -> Instead {
    let count = (length / SHORT).ceil().clamp(1.0, 1000.0) as u32;
    let round = |r: u32| (1..=count).filter(|n| n % 3 == (r + 1) % 3).collect::<Vec<u32>>();
    let rounds = (0..3).map(round).filter(|r| !r.is_empty()).collect();
    Instead::ShortLengths { long: length / f64::from(count), rounds }
}

impl Instead {
    /// In a sentence, lengths as the closure writes them.
    pub fn says(&self, length: &dyn Fn(Length) -> String) -> String {
        match self {
            Instead::LaidBack { back, side } => {
                let slope = groundhold_quantity::trim(*side, 2);
                format!(
                    "Lay it back, {slope} across for 1 up: its crest then lies {} back from its foot.",
                    length(*back)
                )
            }
            Instead::Benched { steps, high, wide } => {
                format!("Bench it in {steps} steps {} high and at least {} wide.", length(*high), length(*wide))
            }
            Instead::ShortLengths { long, rounds } => {
                let words = rounds.iter().map(|r| r.iter().map(u32::to_string).collect::<Vec<_>>().join(", "));
                format!(
                    "Dig it in lengths of {}, hit and miss, each held before its neighbour is dug: {}.",
                    length(*long),
                    words.collect::<Vec<_>>().join("; then ")
                )
            }
            Instead::Shored => "Have it shored as a competent person designs.".into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn face(h: f64, free: Option<f64>) -> Face {
        Face {
            element: "W1".into(),
            heights: vec![(Length::ZERO, Length::m(h)), (Length::m(6.0), Length::m(h))],
            room: Length::ZERO,
            free: free.map(|f| (Length::m(f), "boundary".into())),
        }
    }

    #[test]
    fn a_low_face_in_clay_stands_and_one_at_the_limit_is_laid_back() {
        let limit = UnsupportedTrigger { most: Length::m(1.0), source: "invented".into() };
        let clay = cut_class("firm silty clay", false, false);
        let low = excavate(&face(0.999, None), clay, Some(&limit));
        assert!(low.ways.is_empty() && low.more == Volume::ZERO && low.too_high.is_none());
        let high = excavate(&face(1.0, None), clay, Some(&limit));
        assert!(high.laid_back && (high.more.to_m3() - 0.5 * 6.0).abs() < 1e-9, "{high:?}");
        assert!(matches!(high.ways[0], Instead::LaidBack { .. }));
        assert!(high.trace.sheet().is_ok());
    }

    #[test]
    fn where_the_boundary_is_too_near_it_goes_in_short_lengths_that_never_touch() {
        let limit = UnsupportedTrigger { most: Length::m(1.0), source: "invented".into() };
        let e = excavate(&face(1.5, Some(1.0)), cut_class("clay", false, false), Some(&limit));
        assert!(!e.laid_back && e.more == Volume::ZERO);
        let Instead::ShortLengths { rounds, .. } = &e.ways[0] else { panic!("{:?}", e.ways) };
        let mut all: Vec<u32> = rounds.concat();
        all.sort_unstable();
        assert_eq!(all, [1, 2, 3, 4, 5]);
        assert!(rounds.iter().all(|r| r.windows(2).all(|w| w[1] - w[0] >= 2)));
    }

    #[test]
    fn sand_and_wet_clay_are_the_weakest_class_and_nothing_is_ever_the_firmest() {
        for (soil, water, class) in [
            ("loose sand", false, "C"),
            ("firm silty clay", true, "C"),
            ("sandy clay", false, "B"),
            ("stiff clay", false, "B"),
        ] {
            assert_eq!(cut_class(soil, water, false).name, class, "{soil}");
        }
    }
}
