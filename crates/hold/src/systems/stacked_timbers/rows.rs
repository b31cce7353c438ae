//! Which sizes of a wall of stacked timbers can be written down, each in one row?

use groundhold_member::timber::{Section, grade, grade_names};
use groundhold_quantity::{Length, Slope};

use super::{CourseScrews, StackedTimber, StackedTimberSpec, TieSpec};
use crate::timber_text as text;
use crate::{Field, Given, Holds, Row, other_kind, row};

/// Lengths in which sleepers are usual. Common practice, no source.
const USUAL_STOCK: [Length; 2] = [Length::m(2.4), Length::m(3.0)];

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<StackedTimberSpec>] = &[
    Row {
        field: Field::new(
            "timber",
            "timbers",
            Holds::Own {
                like: "height x thickness in mm, treatment and strength class, such as \"150x150 UC4 C16\"",
                whole: with_class,
            },
        )
        .must(),
        get: |s| Some(Given::Text(s.timber.text())),
        set: set_timber,
    },
    row!(
        StackedTimberSpec,
        Field::new("stock", "stock lengths of timbers; left out, those of the price list", Holds::Lengths)
            .within(0.6, 8.0),
        stock,
        Lengths
    ),
    row!(
        StackedTimberSpec,
        Field::new("batter", "lean of the face into the bank, run over rise", Holds::Slope).within(0.0, 0.25),
        batter,
        Slope
    ),
    row!(
        StackedTimberSpec,
        Field::new("bury", "underside of the lowest course below the ground in front", Holds::Length).within(0.0, 1.0),
        bury,
        Length
    ),
    row!(
        StackedTimberSpec,
        Field::new("bed", "rolled stone under the lowest course", Holds::Length).within(0.0, 0.5),
        bed,
        Length
    ),
    row!(
        StackedTimberSpec,
        Field::new("ties", "what holds the courses to the bank", Holds::OneOf(&["into bank", "none"])),
        [tied],
        one of "into bank" => true, "none" => false
    ),
    row!(
        StackedTimberSpec,
        Field::new("tie_spacing", "largest distance from tie to tie in a row", Holds::Length).within(0.3, 2.5),
        ties.spacing,
        Length
    ),
    row!(
        StackedTimberSpec,
        Field::new("tie_every", "courses from one row of ties to the next", Holds::Whole).within(1.0, 8.0),
        ties.every,
        Whole
    ),
    row!(
        StackedTimberSpec,
        Field::new("tie_length", "from the face to the back of the cross piece; left out, it is solved", Holds::Length)
            .within(0.5, 6.0),
        ties.length,
        Some Length
    ),
    row!(
        StackedTimberSpec,
        Field::new("cross_length", "length of a cross piece along the wall", Holds::Length).within(0.3, 2.5),
        ties.cross,
        Length
    ),
    row!(
        StackedTimberSpec,
        Field::new("tie_screws", "screws through the head of a tie and through its end", Holds::Whole)
            .within(1.0, 12.0),
        ties.screws,
        Whole
    ),
    Row {
        field: Field::new(
            "screws",
            "screws",
            Holds::Own { like: "diameter x length in mm, such as \"10x280\"", whole: |t| screws(t).map(|_| ()) },
        ),
        get: |s| Some(Given::Text(text::spelled(s.screws.diameter, s.screws.length))),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            let (diameter, length) = screws(t)?;
            s.screws = CourseScrews { diameter, length, ..s.screws };
            Ok(())
        },
    },
    row!(
        StackedTimberSpec,
        Field::new("screw_spacing", "from screw to screw along a course", Holds::Length).within(0.1, 2.0),
        screws.spacing,
        Length
    ),
];

fn with_class(t: &str) -> Result<(), String> {
    match text::read(t)?.grade {
        Some(_) => Ok(()),
        None => Err(format!("found `{t}` without a strength class; known are {}", grade_names().join(", "))),
    }
}

/// What the text does not say stays, where it holds for the new size.
fn set_timber(s: &mut StackedTimberSpec, given: &Given) -> Result<(), String> {
    let Given::Text(t) = given else { return Err(other_kind()) };
    let read = text::read(t)?;
    let kept = || grade(s.timber.grade.name, &Section::rectangle(read.first, read.second)).ok();
    let Some(grade) = read.grade.or_else(kept) else {
        return Err(format!("found `{t}` without a strength class; known are {}", grade_names().join(", ")));
    };
    let treatment = if read.treatment.is_empty() { s.timber.treatment.clone() } else { read.treatment };
    s.timber = StackedTimber { height: read.first, thickness: read.second, grade, treatment };
    Ok(())
}

fn screws(t: &str) -> Result<(Length, Length), String> {
    let read = |t: &str| t.trim().parse::<f64>();
    match t.split_once(['x', '×']).map(|(d, l)| (read(d), read(l))) {
        Some((Ok(d), Ok(l))) if (5.0..=20.0).contains(&d) && (60.0..=1000.0).contains(&l) => {
            Ok((Length::mm(d), Length::mm(l)))
        }
        _ => Err(format!("found `{t}`, expected diameter x length in mm, such as \"10x280\"")),
    }
}

impl StackedTimberSpec {
    /// Usual sizes: sleepers of 150 by 150 with ties every second course at 1.2 m. Common practice, no source.
    pub fn blank() -> StackedTimberSpec {
        let side = Length::mm(150.0);
        let c16 = grade("C16", &Section::rectangle(side, side))
            .expect("C16 is a row of the strength classes and 150 mm square is within its sizes");
        StackedTimberSpec {
            timber: StackedTimber { height: side, thickness: side, grade: c16, treatment: String::new() },
            stock: USUAL_STOCK.to_vec(),
            batter: Slope::ratio(0.1),
            bury: Length::mm(150.0),
            bed: Length::mm(150.0),
            tied: true,
            ties: TieSpec { spacing: Length::m(1.2), every: 2, length: None, cross: Length::m(0.9), screws: 4 },
            screws: CourseScrews { diameter: Length::mm(10.0), length: Length::mm(280.0), spacing: Length::mm(400.0) },
        }
    }
}
