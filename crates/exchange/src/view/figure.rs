//! How is a quantity rounded for other programs, and what is a figure that may be a list or a word?

use groundhold_quantity::{Area, Length, Level, Mass, Money, Point, Volume};
use groundhold_working::Value;
use serde::Serialize;

/// Rounded to so many parts of one; minus nothing is nothing.
fn rounded(v: f64, parts: f64) -> f64 {
    (v * parts).round() / parts + 0.0
}

/// Metres to the micrometre.
pub(super) fn m(v: Length) -> f64 {
    rounded(v.to_m(), 1e6)
}
/// Metres above the datum to the micrometre.
pub(super) fn level(v: Level) -> f64 {
    rounded(v.to_m(), 1e6)
}
/// Square metres.
pub(super) fn m2(v: Area) -> f64 {
    rounded(v.to_m2(), 1e6)
}
/// Cubic metres to the cubic centimetre.
pub(super) fn m3(v: Volume) -> f64 {
    rounded(v.to_m3(), 1e6)
}
/// Kilograms to the gram.
pub(super) fn kg(v: Mass) -> f64 {
    rounded(v.to_kg(), 1e3)
}
/// The currency's unit, to a hundredth of a cent.
pub(super) fn money(v: Money) -> f64 {
    v.amount()
}
/// A count, a share, a factor: to six decimals.
pub(super) fn number(v: f64) -> f64 {
    rounded(v, 1e6)
}
/// x and y in metres.
pub(super) fn xy(p: Point) -> [f64; 2] {
    [rounded(p.x, 1e6), rounded(p.y, 1e6)]
}

/// What goes into or comes out of a working.
#[derive(Serialize)]
#[serde(untagged)]
pub(super) enum Figure {
    One(f64),
    Many(Vec<f64>),
    Word(String),
}

impl From<&Value> for Figure {
    fn from(v: &Value) -> Figure {
        match v {
            Value::One(x) => Figure::One(*x),
            Value::Many(xs) => Figure::Many(xs.clone()),
            Value::Word(w) => Figure::Word(w.clone()),
        }
    }
}
