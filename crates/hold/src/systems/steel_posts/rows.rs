//! Which sizes of a wall of steel posts with panels can be written down, each in one row?

use groundhold_member::steel::{Exposure, profile, profile_names};
use groundhold_member::timber::{Section, grade, grade_names};
use groundhold_quantity::{Force, Length, Moment, Pressure};

use super::spec::STEELS;
use super::{Carries, Made, Panel, SteelPost, SteelPostSpec};
use crate::posted::{CourseFit, Fill, HoleSpec};
use crate::timber_text::{self as text};
use crate::{Field, Given, Holds, Row, other_kind, row};

const POST_LIKE: &str = "a steel section and its grade, such as \"UC 152x152x23 S275\"";
const PANEL_LIKE: &str =
    "height x thickness in mm with treatment and class, such as \"200x50 UC4 C24\", or \"concrete 300x60\"";
const CARRIES_LIKE: &str = "what the maker states for one panel, such as \"3.2 kNm 12 kN design\" (or allowable), or its \
                            steel near the pulled face, such as \"3x8 cover 25 C40 B500\"";

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<SteelPostSpec>] = &[
    Row {
        field: Field::new("post", "post", Holds::Own { like: POST_LIKE, whole: |t| post(t).map(|_| ()) }).must(),
        get: |s| Some(Given::Text(s.post.text())),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            s.post = post(t)?;
            Ok(())
        },
    },
    Row {
        field: Field::new(
            "end_post",
            "post at both ends; left out, like the others",
            Holds::Own { like: POST_LIKE, whole: |t| post(t).map(|_| ()) },
        ),
        get: |s| s.end_post.as_ref().map(|p| Given::Text(p.text())),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            s.end_post = Some(post(t)?);
            Ok(())
        },
    },
    Row {
        field: Field::new("panel", "panel", Holds::Own { like: PANEL_LIKE, whole: whole_panel }).must(),
        get: |s| Some(Given::Text(s.panel.text())),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            s.panel = panel(t, &s.panel)?;
            Ok(())
        },
    },
    Row {
        field: Field::new(
            "panel_carries",
            "what a concrete panel holds",
            Holds::Own { like: CARRIES_LIKE, whole: |t| carries(t).map(|_| ()) },
        ),
        get: |s| match &s.panel.made {
            Made::Concrete { carries: Some(c) } => Some(Given::Text(carries_text(c))),
            _ => None,
        },
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            match &mut s.panel.made {
                Made::Concrete { carries: c } => *c = Some(carries(t)?),
                Made::Timber { .. } => {
                    return Err("the panel is of timber, which is judged by its strength class; left out".into());
                }
            }
            Ok(())
        },
    },
    row!(
        SteelPostSpec,
        Field::new("panel_length", "length of a panel as it is sold", Holds::Length).must().within(0.4, 6.0),
        panel.length,
        Length
    ),
    row!(
        SteelPostSpec,
        Field::new("clearance", "room between a panel's end and the web", Holds::Length).within(0.0, 0.04),
        clearance,
        Length
    ),
    row!(
        SteelPostSpec,
        Field::new("hole_diameter", "diameter of the post holes", Holds::Length).within(0.15, 2.0),
        hole.diameter,
        Length
    ),
    row!(
        SteelPostSpec,
        Field::new("hole_depth", "depth of post holes; left out, it is solved", Holds::Length).within(0.1, 6.0),
        hole.depth,
        Some Length
    ),
    row!(
        SteelPostSpec,
        Field::new("gravel", "gravel under the post", Holds::Length).within(0.0, 0.5),
        hole.gravel_base,
        Length
    ),
    row!(
        SteelPostSpec,
        Field::new("bury", "lowest panel below the ground in front", Holds::Length).within(0.0, 1.0),
        bury,
        Length
    ),
    row!(
        SteelPostSpec,
        Field::new("neglect", "top layer in front that is not counted on", Holds::Length).within(0.0, 1.0),
        neglect_top,
        Length
    ),
    row!(
        SteelPostSpec,
        Field::new("fit", "from where the courses are counted", Holds::OneOf(&["from bury", "from top"])),
        [fit],
        one of "from bury" => CourseFit::FromBury, "from top" => CourseFit::FromTop
    ),
    row!(
        SteelPostSpec,
        Field::new("zinc_um", "zinc on the posts in micrometres", Holds::Whole).within(0.0, 300.0),
        zinc_um,
        Whole
    ),
    row!(
        SteelPostSpec,
        Field::new(
            "exposure",
            "what the posts stand in where they are bent most",
            Holds::OneOf(&["natural soil", "polluted soil", "aggressive soil", "fill", "aggressive fill", "air", "sea air"])
        ),
        [exposure],
        one of "natural soil" => Exposure::Natural, "polluted soil" => Exposure::Polluted,
            "aggressive soil" => Exposure::Aggressive, "fill" => Exposure::Fill,
            "aggressive fill" => Exposure::AggressiveFill, "air" => Exposure::Air, "sea air" => Exposure::SeaAir
    ),
    row!(
        SteelPostSpec,
        Field::new("years", "years for which the posts are judged", Holds::Whole).within(0.0, 100.0),
        years,
        Whole
    ),
];

/// Reads a section with its grade of steel.
fn post(t: &str) -> Result<SteelPost, String> {
    let known: Vec<&str> = STEELS.iter().map(|s| s.0).collect();
    let Some((name, last)) = t.trim().rsplit_once(' ') else {
        return Err(format!("found `{t}`, expected {POST_LIKE}"));
    };
    let Some((grade, steel, rules)) = STEELS.iter().find(|s| s.0.eq_ignore_ascii_case(last)).copied() else {
        return Err(format!("found `{last}` as the grade of steel, expected one of {}", known.join(", ")));
    };
    let sections: Vec<&str> = profile_names().into_iter().filter(|n| !n.starts_with("RHS")).collect();
    match profile(name) {
        Ok(p) if !p.name.starts_with("RHS") => Ok(SteelPost { profile: p, grade, steel, rules }),
        Ok(p) => {
            Err(format!("{} has no flanges between which a panel stands; known are {}", p.name, sections.join(", ")))
        }
        Err(_) => Err(format!("there is no steel section `{}`; known are {}", name.trim(), sections.join(", "))),
    }
}

fn whole_panel(t: &str) -> Result<(), String> {
    if t.trim_start().starts_with("concrete") {
        return panel(t, &SteelPostSpec::blank().panel).map(|_| ());
    }
    match text::read(t)?.grade {
        Some(_) => Ok(()),
        None => Err(format!("found `{t}` without a strength class; known are {}", grade_names().join(", "))),
    }
}

/// Reads a panel; what the text does not say stays as it was.
fn panel(t: &str, was: &Panel) -> Result<Panel, String> {
    let order = |a: Length, b: Length| (a.max(b), a.min(b));
    if let Some(size) = t.trim().strip_prefix("concrete") {
        let Some((a, b)) = text::sizes(size.trim()) else { return Err(format!("found `{t}`, expected {PANEL_LIKE}")) };
        let (height, thickness) = order(a, b);
        let carries = match &was.made {
            Made::Concrete { carries } => *carries,
            Made::Timber { .. } => None,
        };
        return Ok(Panel { height, thickness, length: was.length, made: Made::Concrete { carries } });
    }
    let read = text::read(t)?;
    let (height, thickness) = order(read.first, read.second);
    let before = match &was.made {
        Made::Timber { grade: g, treatment } => {
            let fits = grade(g.name, &Section::rectangle(height, thickness)).ok();
            (fits, treatment.clone())
        }
        Made::Concrete { .. } => (None, String::new()),
    };
    let Some(grade) = read.grade.or(before.0) else {
        return Err(format!("found `{t}` without a strength class; known are {}", grade_names().join(", ")));
    };
    let treatment = if read.treatment.is_empty() { before.1 } else { read.treatment };
    Ok(Panel { height, thickness, length: was.length, made: Made::Timber { grade, treatment } })
}

fn carries(t: &str) -> Result<Carries, String> {
    let words: Vec<&str> = t.split_whitespace().collect();
    let wrong = || format!("found `{t}`, expected {CARRIES_LIKE}");
    let number = |w: &str, least: f64, most: f64| w.parse::<f64>().ok().filter(|v| (least..=most).contains(v));
    match words.as_slice() {
        [m, "kNm", v, "kN", kind @ ("design" | "allowable")] => {
            let (m, v) = (number(m, 0.05, 100.0), number(v, 0.2, 500.0));
            let (m, v) = m.zip(v).ok_or_else(wrong)?;
            Ok(Carries::Stated { moment: Moment::knm(m), shear: Force::kn(v), design: *kind == "design" })
        }
        [bars, "cover", cover, concrete, steel] => {
            let (n, d) = bars.split_once(['x', '×']).ok_or_else(wrong)?;
            let count = n.parse::<u32>().ok().filter(|n| (1..=50).contains(n)).ok_or_else(wrong)?;
            let diameter = number(d, 3.0, 32.0).ok_or_else(wrong)?;
            let cover = number(cover, 5.0, 200.0).ok_or_else(wrong)?;
            let strength = concrete.strip_prefix('C').and_then(|c| number(c, 12.0, 90.0)).ok_or_else(wrong)?;
            let yields = steel.strip_prefix('B').and_then(|b| number(b, 200.0, 700.0)).ok_or_else(wrong)?;
            Ok(Carries::Bars {
                count,
                diameter: Length::mm(diameter),
                cover: Length::mm(cover),
                strength: Pressure::mpa(strength),
                yield_stress: Pressure::mpa(yields),
            })
        }
        _ => Err(wrong()),
    }
}

fn carries_text(c: &Carries) -> String {
    match *c {
        Carries::Stated { moment, shear, design } => {
            let kind = if design { "design" } else { "allowable" };
            format!("{} kNm {} kN {kind}", short(moment.to_knm()), short(shear.to_kn()))
        }
        Carries::Bars { count, diameter, cover, strength, yield_stress } => format!(
            "{count}x{} cover {} C{} B{}",
            short(diameter.to_mm()),
            short(cover.to_mm()),
            short(strength.to_mpa()),
            short(yield_stress.to_mpa())
        ),
    }
}

/// With at most three decimals and without zeros at its end.
fn short(v: f64) -> String {
    format!("{v:.3}").trim_end_matches('0').trim_end_matches('.').to_string()
}

impl SteelPostSpec {
    /// Usual sizes: hot-dip zinc of 85 µm, fill behind, 50 years. Post, panel and its length are to be given. Common practice,
    /// no source; 85 µm is the mean for steel over 6 mm in EN ISO 1461.
    pub fn blank() -> SteelPostSpec {
        let (height, thickness) = (Length::mm(200.0), Length::mm(50.0));
        let c24 = grade("C24", &Section::rectangle(height, thickness))
            .expect("C24 is a row of the strength classes and 200 by 50 mm is within its sizes");
        SteelPostSpec {
            post: post("UC 152x152x23 S275").expect("the section and the grade are rows of the catalogue"),
            end_post: None,
            panel: Panel {
                height,
                thickness,
                length: Length::m(2.0),
                made: Made::Timber { grade: c24, treatment: String::new() },
            },
            clearance: Length::mm(10.0),
            hole: HoleSpec {
                diameter: Length::mm(450.0),
                depth: None,
                fill: Fill::Concrete,
                gravel_base: Length::mm(100.0),
            },
            bury: Length::mm(50.0),
            fit: CourseFit::FromBury,
            neglect_top: Length::mm(150.0),
            zinc_um: 85,
            exposure: Exposure::Fill,
            years: 50,
        }
    }
}
