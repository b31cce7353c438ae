//! A number that remembers how it was made, and the sheet on which it writes its lines.

use std::cell::RefCell;
use std::fmt;
use std::ops::{Add, Div, Mul, Neg, Sub};

use groundhold_quantity::{math, trim};

use crate::{Number, Unit};

/// One line of a hand calculation.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What is found.
    pub symbol: &'static str,
    /// The formula in symbols; empty for a number put in.
    pub formula: String,
    /// The formula with the numbers put in.
    pub put_in: String,
    /// The result in `unit` (degrees for an angle).
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
}

impl fmt::Display for Line {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.symbol.is_empty() {
            return write!(f, "{}", self.formula);
        }
        write!(f, "{} = ", self.symbol)?;
        let result = figure(self.value, self.unit);
        if !self.formula.is_empty() && self.formula != self.symbol {
            write!(f, "{} = ", self.formula)?;
            if self.put_in != self.formula && self.put_in != result {
                write!(f, "{} = ", self.put_in)?;
            }
        }
        let gap = if matches!(self.unit.0, "" | "°" | "%") { "" } else { " " };
        write!(f, "{result}{gap}{}", self.unit.0)
    }
}

/// A figure in its unit: metres to the millimetre, everything else to four figures.
fn figure(v: f64, unit: Unit) -> String {
    if unit == Unit::M && v.abs() >= 1.0 { trim(v, 3) } else { digits(v) }
}

/// Four figures, as one writes them by hand.
pub(crate) fn digits(v: f64) -> String {
    let a = v.abs();
    let d = match a {
        _ if a == 0.0 || !v.is_finite() => 0,
        _ if a >= 1000.0 => 0,
        _ if a >= 100.0 => 1,
        _ if a >= 10.0 => 2,
        _ if a >= 1.0 => 3,
        _ if a >= 0.001 => 4,
        _ => return format!("{v:.2e}").replace('-', "−"),
    };
    trim(v, d)
}

#[derive(Clone)]
struct Node {
    symbols: String,
    numbers: String,
    /// How tightly the symbols hold together, and how tightly the numbers do.
    rank: (u8, u8),
}

/// A number under its symbol.
fn known_by(symbol: &str, value: f64, unit: Unit) -> Node {
    let degree = if unit == Unit::DEG { "°" } else { "" };
    let numbers = format!("{}{degree}", figure(value, unit));
    Node { symbols: symbol.into(), numbers, rank: (ATOM, rank_of(value)) }
}

/// A negative number needs brackets in a product or after a minus.
fn rank_of(value: f64) -> u8 {
    if value < 0.0 { 1 } else { ATOM }
}

const ATOM: u8 = 9;
const POWER: u8 = 8;
/// Beyond this a text is cut: a loop over hundreds of strips cannot be read as one line anyway.
const LONGEST: usize = 600;

/// Where the lines of one working are noted.
#[derive(Default)]
pub struct Sheet {
    nodes: RefCell<Vec<Node>>,
    lines: RefCell<Vec<Line>>,
}

impl Sheet {
    /// An empty sheet.
    pub fn new() -> Sheet {
        Sheet::default()
    }
    /// Puts a number in under its symbol. Degrees are turned into radians inside.
    pub fn put(&self, symbol: &'static str, value: f64, unit: Unit) -> Shown<'_> {
        let angle = unit == Unit::DEG;
        let inside = if angle { value.to_radians() } else { value };
        self.shown(known_by(symbol, value, unit), inside, angle)
    }
    /// A remark between the lines: which branch was taken and why.
    pub fn remark(&self, text: impl Into<String>) {
        let text = text.into();
        self.lines.borrow_mut().push(Line {
            symbol: "",
            formula: text,
            put_in: String::new(),
            value: 0.0,
            unit: Unit::NONE,
        });
    }
    /// The lines so far.
    pub fn lines(&self) -> Vec<Line> {
        self.lines.borrow().clone()
    }
    fn shown(&self, node: Node, value: f64, angle: bool) -> Shown<'_> {
        let mut nodes = self.nodes.borrow_mut();
        nodes.push(node);
        Shown { sheet: Some(self), node: nodes.len() - 1, value, angle }
    }
}

/// A number that remembers how it was made.
#[derive(Clone, Copy)]
pub struct Shown<'s> {
    sheet: Option<&'s Sheet>,
    node: usize,
    value: f64,
    angle: bool,
}

impl<'s> Shown<'s> {
    fn bare(value: f64, angle: bool) -> Self {
        Shown { sheet: None, node: 0, value, angle }
    }
    fn node(self) -> Node {
        match self.sheet {
            Some(s) => s.nodes.borrow()[self.node].clone(),
            None => {
                let t = if self.angle { format!("{}°", digits(self.value.to_degrees())) } else { digits(self.value) };
                let rank = rank_of(self.value);
                Node { symbols: t.clone(), numbers: t, rank: (rank, rank) }
            }
        }
    }
    fn make(sheet: Option<&'s Sheet>, mut node: Node, value: f64, angle: bool) -> Self {
        for t in [&mut node.symbols, &mut node.numbers] {
            if t.chars().count() > LONGEST {
                *t = t.chars().take(LONGEST).chain("…".chars()).collect();
                node.rank = (ATOM, ATOM);
            }
        }
        match sheet {
            Some(s) => s.shown(node, value, angle),
            None => Shown::bare(value, angle),
        }
    }
    fn two(self, other: Self, sign: &str, rank: u8, value: f64) -> Self {
        let (a, b) = (self.node(), other.node());
        let wrap = |t: &str, r: u8, right: bool| {
            let needs = r < rank || (right && r == rank && matches!(sign, "−" | "/"));
            if needs { format!("({t})") } else { t.to_string() }
        };
        let gap = if matches!(sign, "/" | "·") { "" } else { " " };
        let join =
            |x: &str, rx: u8, y: &str, ry: u8| format!("{}{gap}{sign}{gap}{}", wrap(x, rx, false), wrap(y, ry, true));
        let node = Node {
            symbols: join(&a.symbols, a.rank.0, &b.symbols, b.rank.0),
            numbers: join(&a.numbers, a.rank.1, &b.numbers, b.rank.1),
            rank: (rank, rank),
        };
        let angle = match sign {
            "+" | "−" => self.angle || other.angle,
            "·" => self.angle != other.angle,
            _ => self.angle && !other.angle,
        };
        Shown::make(self.sheet.or(other.sheet), node, value, angle)
    }
    fn call(self, name: &str, value: f64, angle: bool) -> Self {
        let n = self.node();
        let node = Node {
            symbols: format!("{name}({})", n.symbols),
            numbers: format!("{name}({})", n.numbers),
            rank: (ATOM, ATOM),
        };
        Shown::make(self.sheet, node, value, angle)
    }
    fn raised(self, mark: &str, value: f64) -> Self {
        let n = self.node();
        let w = |t: &str, r: u8| if r < ATOM { format!("({t}){mark}") } else { format!("{t}{mark}") };
        let node = Node { symbols: w(&n.symbols, n.rank.0), numbers: w(&n.numbers, n.rank.1), rank: (POWER, POWER) };
        Shown::make(self.sheet, node, value, false)
    }
    fn pick(self, other: Self, name: &str, value: f64) -> Self {
        let (a, b) = (self.node(), other.node());
        let node = Node {
            symbols: format!("{name}({}, {})", a.symbols, b.symbols),
            numbers: format!("{name}({}, {})", a.numbers, b.numbers),
            rank: (ATOM, ATOM),
        };
        Shown::make(self.sheet.or(other.sheet), node, value, self.angle || other.angle)
    }
}

macro_rules! operators {
    ($($trait:ident $call:ident $sign:literal $rank:literal $do:expr;)*) => { $(
        impl<'s> $trait for Shown<'s> {
            type Output = Self;
            fn $call(self, o: Self) -> Self {
                let f: fn(f64, f64) -> f64 = $do;
                self.two(o, $sign, $rank, f(self.value, o.value))
            }
        }
        impl<'s> $trait<f64> for Shown<'s> {
            type Output = Self;
            fn $call(self, o: f64) -> Self { $trait::$call(self, Shown::bare(o, false)) }
        }
    )* };
}
operators! {
    Add add "+" 1 |a, b| a + b;
    Sub sub "−" 1 |a, b| a - b;
    Mul mul "·" 2 |a, b| a * b;
    Div div "/" 2 |a, b| a / b;
}
impl<'s> Neg for Shown<'s> {
    type Output = Self;
    fn neg(self) -> Self {
        let n = self.node();
        let w = |t: &str, r: u8| if r < 2 { format!("−({t})") } else { format!("−{t}") };
        let node = Node { symbols: w(&n.symbols, n.rank.0), numbers: w(&n.numbers, n.rank.1), rank: (1, 1) };
        Shown::make(self.sheet, node, -self.value, self.angle)
    }
}

impl<'s> Number for Shown<'s> {
    fn constant(value: f64) -> Self {
        Shown::bare(value, false)
    }
    fn degrees(value: f64) -> Self {
        Shown::bare(value.to_radians(), true)
    }
    fn value(self) -> f64 {
        self.value
    }
    fn named(self, symbol: &'static str, unit: Unit) -> Self {
        let Some(sheet) = self.sheet else { return self };
        let n = self.node();
        let angle = unit == Unit::DEG;
        let value = if angle { self.value.to_degrees() } else { self.value };
        sheet.lines.borrow_mut().push(Line { symbol, formula: n.symbols, put_in: n.numbers, value, unit });
        sheet.shown(known_by(symbol, value, unit), self.value, angle)
    }
    fn sin(self) -> Self {
        self.call("sin", math::sin(self.value), false)
    }
    fn cos(self) -> Self {
        self.call("cos", math::cos(self.value), false)
    }
    fn tan(self) -> Self {
        self.call("tan", math::tan(self.value), false)
    }
    fn asin(self) -> Self {
        self.call("asin", math::asin(self.value), true)
    }
    fn acos(self) -> Self {
        self.call("acos", math::acos(self.value), true)
    }
    fn atan(self) -> Self {
        self.call("atan", math::atan(self.value), true)
    }
    fn sqrt(self) -> Self {
        self.call("√", self.value.sqrt(), false)
    }
    fn exp(self) -> Self {
        self.call("exp", math::exp(self.value), false)
    }
    fn ln(self) -> Self {
        self.call("ln", math::ln(self.value), false)
    }
    fn powf(self, exponent: f64) -> Self {
        self.raised(&format!("^{}", digits(exponent)), math::powf(self.value, exponent))
    }
    fn squared(self) -> Self {
        self.raised("²", self.value * self.value)
    }
    fn cubed(self) -> Self {
        self.raised("³", self.value * self.value * self.value)
    }
    fn abs(self) -> Self {
        let angle = self.angle;
        self.call("abs", self.value.abs(), angle)
    }
    fn min(self, other: Self) -> Self {
        self.pick(other, "min", Number::min(self.value, other.value))
    }
    fn max(self, other: Self) -> Self {
        self.pick(other, "max", Number::max(self.value, other.value))
    }
}
