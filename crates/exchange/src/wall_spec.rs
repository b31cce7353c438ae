//! The sizes of a wall as people write them: `125x125 UC4 C24`.

use groundhold_hold::Spec;
use groundhold_hold::systems::timber_posts::{
    BoardTimber, Boards, Capping, CourseFit, Fill, HoleSpec, PostTimber, ScrewSpec, TimberPostSpec,
};
use groundhold_member::timber::{Grade, grade_names};
use groundhold_order::Price;
use groundhold_plan::job::timber::{self, Timber};
use groundhold_quantity::{Length, Slope, parse};
use toml_edit::{Item, Value};

use crate::page::Node;

/// Stock lengths by item.
pub(crate) type Stock = Vec<(String, Vec<Length>)>;

/// The stock lengths of every item of a price list.
pub(crate) fn stock_of(prices: &[Price]) -> Stock {
    let mut stock: Stock = vec![];
    for p in prices {
        let Some(length) = p.stock_length else { continue };
        match stock.iter_mut().find(|(item, _)| *item == p.item) {
            Some((_, lengths)) => lengths.push(length),
            None => stock.push((p.item.clone(), vec![length])),
        }
    }
    stock
}

/// Lengths in which boards are usual where neither the job nor the price list says any. Common practice, no source.
const USUAL_STOCK: [f64; 4] = [2.4, 3.0, 3.6, 4.8];

pub(crate) fn read(n: &Node, stock: &Stock) -> Option<Spec> {
    let post = timber(n, "post").map(|(t, grade)| PostTimber {
        breadth: t.first,
        depth: t.second,
        grade,
        treatment: t.treatment,
    });
    let board = timber(n, "board").map(|(t, grade)| BoardTimber {
        height: t.first.max(t.second),
        thickness: t.first.min(t.second),
        grade,
        treatment: t.treatment,
    });
    let spacing = n.quantity("spacing");
    let fill = if n.text("hole_fill").is_some_and(|f| f == "rammed") { Fill::Rammed } else { Fill::Concrete };
    let hole = HoleSpec {
        diameter: n.quantity("hole_diameter").unwrap_or(Length::mm(450.0)),
        depth: n.quantity("hole_depth"),
        fill,
        gravel_base: n.quantity("gravel").unwrap_or(Length::mm(100.0)),
    };
    let front = n.text("boards").is_some_and(|b| b == "front");
    let bury = n.quantity("bury").unwrap_or(Length::mm(50.0));
    let neglect_top = n.quantity("neglect").unwrap_or(Length::mm(150.0));
    let lean = n.quantity("lean").unwrap_or(Slope::LEVEL);
    let screws = screw(n);
    let capping = capping(n);
    let (post, board) = (post?, board?);
    let stock = stock_lengths(n, stock, &board);
    Some(Spec::TimberPosts(TimberPostSpec {
        post,
        board,
        spacing: spacing?,
        boards: if front { Boards::InFront } else { Boards::Behind },
        stock: stock?,
        bays_per_board: None,
        hole,
        bury,
        fit: if n.text("fit").is_some_and(|f| f == "from top") { CourseFit::FromTop } else { CourseFit::FromBury },
        board_gap: Length::ZERO,
        capping: capping?,
        screws: screws?,
        neglect_top,
        lean,
        bow_limit: 100.0,
    }))
}

fn timber(n: &Node, key: &str) -> Option<(Timber, &'static Grade)> {
    let text = n.raw(key)?.as_str().unwrap_or_default();
    if key == "post" && text == "none" {
        n.complain(
            key,
            "boards stacked without posts fall over: three boards of 200x100 behind 600 mm of soil have a factor of about 0.11 \
             against overturning, 1.5 is wanted (`groundhold work walls/external` shows it); expected posts, such as \"125x125 UC4 C24\"",
        );
        return None;
    }
    let read = timber::read(text).and_then(|t| {
        let grade = t.grade.ok_or_else(|| {
            format!("found `{text}` without a strength class; known are {}", grade_names().join(", "))
        })?;
        Ok((t, grade))
    });
    match read {
        Ok(t) => Some(t),
        Err(why) => {
            n.complain(key, why);
            None
        }
    }
}

fn screw(n: &Node) -> Option<ScrewSpec> {
    if !n.has("screws") {
        return Some(ScrewSpec { diameter: Length::mm(8.0), length: Length::mm(120.0), per_joint: 2 });
    }
    let text = n.raw("screws")?.as_str().unwrap_or_default();
    match text.split_once(['x', '×']).map(|(d, l)| (d.trim().parse::<f64>(), l.trim().parse::<f64>())) {
        Some((Ok(d), Ok(l))) if (3.0..=20.0).contains(&d) && (20.0..=600.0).contains(&l) => {
            Some(ScrewSpec { diameter: Length::mm(d), length: Length::mm(l), per_joint: 2 })
        }
        _ => {
            n.complain("screws", format!("found `{text}`, expected diameter x length in mm, such as \"8x120\""));
            None
        }
    }
}

/// The outer `None` after a complaint, the inner where no capping is wanted.
fn capping(n: &Node) -> Option<Option<Capping>> {
    if !n.has("capping") {
        return Some(None);
    }
    let text = n.raw("capping")?.as_str().unwrap_or_default();
    if text == "none" {
        return Some(None);
    }
    let (size, quality) = text.split_once(' ').unwrap_or((text, ""));
    let Some((a, b)) = timber::sizes(size) else {
        n.complain(
            "capping",
            format!("found `{text}`, expected width x thickness in mm, such as \"150x38 UC4 C24\", or none"),
        );
        return None;
    };
    Some(Some(Capping { width: a.max(b), thickness: a.min(b), quality: quality.trim().into() }))
}

fn stock_lengths(n: &Node, stock: &Stock, board: &BoardTimber) -> Option<Vec<Length>> {
    if !n.has("stock") {
        let listed = stock.iter().find(|(item, _)| *item == board.material()).map(|(_, l)| l.clone());
        return Some(listed.unwrap_or_else(|| USUAL_STOCK.iter().map(|m| Length::m(*m)).collect()));
    }
    let list = n.raw("stock").and_then(Item::as_array)?;
    let read =
        |v: &Value| v.as_str().and_then(|t| parse::<Length>(t).ok()).filter(|l| (0.3..=12.0).contains(&l.to_m()));
    let lengths: Option<Vec<Length>> = list.iter().map(read).collect();
    if lengths.as_ref().is_none_or(Vec::is_empty) {
        n.complain("stock", "expected a list of lengths from 0.3 m to 12 m, such as [\"2.4 m\", \"3.0 m\"]");
        return None;
    }
    lengths
}
