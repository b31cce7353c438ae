//! Which sizes of a wall of timber posts and boards can be written down, each in one row?

use groundhold_member::timber::{Climate, Durability, Grade, Section, grade, grade_names};
use groundhold_quantity::{Length, Slope};

use super::{Ageing, BoardTimber, Boards, Capping, CourseFit, Fill, HoleSpec, PostTimber, ScrewSpec, TimberPostSpec};
use crate::timber_text::{self as text, Timber};
use crate::{Field, Given, Holds, Row, other_kind, row};

/// Lengths in which boards are usual where neither the job nor the price list says any. Common practice, no source.
const USUAL_STOCK: [Length; 4] = [Length::m(2.4), Length::m(3.0), Length::m(3.6), Length::m(4.8)];

const POST: Field = Field::new(
    "post",
    "post",
    Holds::Own { like: "sizes in mm, treatment and strength class, such as \"125x125 UC4 C24\"", whole: post_whole },
)
.must();
const BOARD: Field = Field::new(
    "board",
    "board",
    Holds::Own {
        like: "height x thickness in mm, treatment and strength class, such as \"200x50 UC4 C24\"",
        whole: with_class,
    },
)
.must();
const CAPPING: Field = Field::new(
    "capping",
    "capping",
    Holds::Own {
        like: "width x thickness in mm, such as \"150x38 UC4 C24\", or the word none",
        whole: |t| capping(t).map(|_| ()),
    },
);
const SCREWS: Field = Field::new(
    "screws",
    "screws",
    Holds::Own { like: "diameter x length in mm, such as \"8x120\"", whole: |t| screws(t).map(|_| ()) },
);

const NOT_KNOWN: &str = "not known";
const DURABILITIES: [&str; 9] = [
    NOT_KNOWN,
    "class 1",
    "class 2",
    "class 3",
    "class 4",
    "sapwood",
    "treated for 15 years",
    "treated for 30 years",
    "treated for 60 years",
];
/// Heartwood by class (EN 350, AS 5604); treatments by the service lives that BS 8417:2011 knows, from memory.
const LASTS: [(&str, Durability); 8] = [
    ("class 1", Durability::Heartwood(1)),
    ("class 2", Durability::Heartwood(2)),
    ("class 3", Durability::Heartwood(3)),
    ("class 4", Durability::Heartwood(4)),
    ("sapwood", Durability::Sapwood),
    ("treated for 15 years", Durability::Treated { life_years: 15.0 }),
    ("treated for 30 years", Durability::Treated { life_years: 30.0 }),
    ("treated for 60 years", Durability::Treated { life_years: 60.0 }),
];

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<TimberPostSpec>] = &[
    Row { field: POST, get: |s| Some(Given::Text(post_text(&s.post))), set: set_post },
    Row { field: BOARD, get: |s| Some(Given::Text(board_text(&s.board))), set: set_board },
    row!(
        TimberPostSpec,
        Field::new("spacing", "largest distance of posts", Holds::Length).must().within(0.3, 3.0),
        spacing,
        Length
    ),
    row!(
        TimberPostSpec,
        Field::new("boards", "side of the posts on which the boards stand", Holds::OneOf(&["behind", "front"])),
        [boards],
        one of "behind" => Boards::Behind, "front" => Boards::InFront
    ),
    row!(
        TimberPostSpec,
        Field::new("hole_diameter", "diameter of the post holes", Holds::Length).within(0.1, 2.0),
        hole.diameter,
        Length
    ),
    row!(
        TimberPostSpec,
        Field::new("hole_depth", "depth of post holes; left out, it is solved", Holds::Length).within(0.1, 6.0),
        hole.depth,
        Some Length
    ),
    row!(
        TimberPostSpec,
        Field::new("hole_fill", "what the holes are filled with", Holds::OneOf(&["concrete", "rammed"])),
        [hole.fill],
        one of "concrete" => Fill::Concrete, "rammed" => Fill::Rammed
    ),
    row!(
        TimberPostSpec,
        Field::new("gravel", "gravel under the post", Holds::Length).within(0.0, 0.5),
        hole.gravel_base,
        Length
    ),
    row!(
        TimberPostSpec,
        Field::new("bury", "lowest board below the ground in front", Holds::Length).within(0.0, 1.0),
        bury,
        Length
    ),
    row!(
        TimberPostSpec,
        Field::new("neglect", "top layer in front that is not counted on", Holds::Length).within(0.0, 1.0),
        neglect_top,
        Length
    ),
    row!(
        TimberPostSpec,
        Field::new("fit", "from where the courses are counted", Holds::OneOf(&["from bury", "from top"])),
        [fit],
        one of "from bury" => CourseFit::FromBury, "from top" => CourseFit::FromTop
    ),
    Row {
        field: CAPPING,
        get: |s| s.capping.as_ref().map(|c| Given::Text(joined(&[&text::spelled(c.width, c.thickness), &c.quality]))),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            s.capping = capping(t)?;
            Ok(())
        },
    },
    Row {
        field: SCREWS,
        get: |s| Some(Given::Text(text::spelled(s.screws.diameter, s.screws.length))),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            let (diameter, length) = screws(t)?;
            s.screws = ScrewSpec { diameter, length, ..s.screws };
            Ok(())
        },
    },
    row!(
        TimberPostSpec,
        Field::new("lean", "lean of the posts into the bank", Holds::Slope).within(0.0, 0.25),
        lean,
        Slope
    ),
    row!(
        TimberPostSpec,
        Field::new("stock", "stock lengths of boards; left out, those of the price list", Holds::Lengths)
            .within(0.3, 12.0),
        stock,
        Lengths
    ),
    Row {
        field: Field::new("durability", "how long the timber lasts in the ground", Holds::OneOf(&DURABILITIES)),
        get: |s| LASTS.iter().find(|l| s.ageing.durability == Some(l.1)).map(|l| Given::Text(l.0.into())),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            s.ageing.durability = LASTS.iter().find(|l| l.0 == t).map(|l| l.1);
            Ok(())
        },
    },
    row!(
        TimberPostSpec,
        Field::new("climate", "how well fungi live at the place", Holds::OneOf(&["slow", "temperate", "warm", "hot"])),
        [ageing.climate],
        one of "slow" => Climate::Slow, "temperate" => Climate::Temperate, "warm" => Climate::Warm, "hot" => Climate::Hot
    ),
    row!(
        TimberPostSpec,
        Field::new("years", "years of service for which posts and boards are judged; 0 is new", Holds::Whole)
            .within(0.0, 100.0),
        ageing.years,
        Whole
    ),
];

impl TimberPostSpec {
    /// Usual sizes. Post, board and spacing are to be given: a file without them is refused.
    pub fn blank() -> TimberPostSpec {
        let grade = c24();
        TimberPostSpec {
            post: PostTimber { breadth: Length::mm(100.0), depth: Length::mm(100.0), grade, treatment: String::new() },
            board: BoardTimber {
                thickness: Length::mm(50.0),
                height: Length::mm(200.0),
                grade,
                treatment: String::new(),
            },
            spacing: Length::m(1.2),
            boards: Boards::Behind,
            stock: USUAL_STOCK.to_vec(),
            bays_per_board: None,
            hole: HoleSpec {
                diameter: Length::mm(450.0),
                depth: None,
                fill: Fill::Concrete,
                gravel_base: Length::mm(100.0),
            },
            bury: Length::mm(50.0),
            fit: CourseFit::FromBury,
            board_gap: Length::ZERO,
            capping: None,
            screws: ScrewSpec { diameter: Length::mm(8.0), length: Length::mm(120.0), per_joint: 2 },
            neglect_top: Length::mm(150.0),
            lean: Slope::LEVEL,
            bow_limit: 100.0,
            ageing: Ageing::NEW,
        }
    }
}

fn c24() -> &'static Grade {
    grade("C24", &Section::rectangle(Length::mm(100.0), Length::mm(100.0)))
        .expect("C24 is a row of the strength classes and 100 mm square is within its sizes")
}

fn joined(parts: &[&str]) -> String {
    parts.iter().copied().filter(|p| !p.is_empty()).collect::<Vec<_>>().join(" ")
}

fn post_text(p: &PostTimber) -> String {
    joined(&[&text::spelled(p.breadth, p.depth), &p.treatment, p.grade.name])
}

fn board_text(b: &BoardTimber) -> String {
    joined(&[&text::spelled(b.height, b.thickness), &b.treatment, b.grade.name])
}

/// Boards without posts are refused with the reason.
fn post_whole(t: &str) -> Result<(), String> {
    if t == "none" {
        return Err("boards stacked without posts fall over: three boards of 200x100 behind 600 mm of soil have a factor of \
                    about 0.11 against overturning, 1.5 is wanted (`groundhold work walls/external` shows it); expected \
                    posts, such as \"125x125 UC4 C24\""
            .into());
    }
    with_class(t)
}

fn with_class(t: &str) -> Result<(), String> {
    match text::read(t)?.grade {
        Some(_) => Ok(()),
        None => Err(format!("found `{t}` without a strength class; known are {}", grade_names().join(", "))),
    }
}

/// What the text does not say stays: a wall that is changed keeps its treatment and its class.
fn keep_unsaid(t: &Timber, treatment: &mut String, grade: &mut &'static Grade) {
    if !t.treatment.is_empty() {
        treatment.clone_from(&t.treatment);
    }
    if let Some(g) = t.grade {
        *grade = g;
    }
}

fn set_post(s: &mut TimberPostSpec, given: &Given) -> Result<(), String> {
    let Given::Text(t) = given else { return Err(other_kind()) };
    let t = text::read(t)?;
    (s.post.breadth, s.post.depth) = (t.first, t.second);
    keep_unsaid(&t, &mut s.post.treatment, &mut s.post.grade);
    Ok(())
}

fn set_board(s: &mut TimberPostSpec, given: &Given) -> Result<(), String> {
    let Given::Text(t) = given else { return Err(other_kind()) };
    let t = text::read(t)?;
    (s.board.height, s.board.thickness) = (t.first.max(t.second), t.first.min(t.second));
    keep_unsaid(&t, &mut s.board.treatment, &mut s.board.grade);
    Ok(())
}

fn screws(t: &str) -> Result<(Length, Length), String> {
    let read = |t: &str| t.trim().parse::<f64>();
    match t.split_once(['x', '×']).map(|(d, l)| (read(d), read(l))) {
        Some((Ok(d), Ok(l))) if (3.0..=20.0).contains(&d) && (20.0..=600.0).contains(&l) => {
            Ok((Length::mm(d), Length::mm(l)))
        }
        _ => Err(format!("found `{t}`, expected diameter x length in mm, such as \"8x120\"")),
    }
}

fn capping(t: &str) -> Result<Option<Capping>, String> {
    if t == "none" {
        return Ok(None);
    }
    let (size, quality) = t.split_once(' ').unwrap_or((t, ""));
    let Some((a, b)) = text::sizes(size) else {
        return Err(format!("found `{t}`, expected width x thickness in mm, such as \"150x38 UC4 C24\", or none"));
    };
    Ok(Some(Capping { width: a.max(b), thickness: a.min(b), quality: quality.trim().into() }))
}
