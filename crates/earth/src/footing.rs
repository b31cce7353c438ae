//! How much can the ground carry under a base, by each accepted rule side by side, whatever its shape, load and surroundings?

use groundhold_quantity::{Angle, Force, Length, Pressure};
use groundhold_working::{
    Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Value, Working,
};

use crate::bearing::{Author, n_gamma, n_q_and_n_c};
use crate::rows::{self, not_below_zero};
use crate::soil::Soil;

/// Whose rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// EN 1997-1:2004 Annex D: no depth factors, no factors for a slope in front.
    En1997,
    /// Vesic (1973, 1975).
    Vesic,
    /// Brinch Hansen (1970).
    Hansen,
    /// Meyerhof (1963): no factors for a slope in front or a tilted base.
    Meyerhof,
}

/// A base and what comes down on it, whole (not per metre run): a strip is a base of its length.
#[derive(Debug, Clone, PartialEq)]
pub struct Base {
    /// What lies under it. For a design value, hand in [`crate::Combination::soil`] of it.
    pub soil: Soil,
    /// Effective width B′ = B − 2e, the way the load pushes.
    pub width: Length,
    /// Effective length.
    pub length: Length,
    /// Depth of the underside below the lower ground beside it.
    pub depth: Length,
    /// Weight of what lies beside the underside, the smaller side.
    pub overburden: Pressure,
    /// Weight per volume of the soil under the base: γ, or γ′ under water.
    pub submerged: bool,
    /// Vertical load.
    pub vertical: Force,
    /// Horizontal load along the width.
    pub horizontal: Force,
    /// Slope of the ground in front, positive where it falls away.
    pub ground_falls: Angle,
    /// Tilt of the underside against level, positive where it leans against the push.
    pub tilt: Angle,
}

/// What the ground can carry.
#[derive(Debug, Clone, PartialEq)]
pub struct Bearing {
    /// By whose rule.
    pub by: Rule,
    /// Pressure at failure over the effective area.
    pub pressure: Pressure,
    /// Load at failure.
    pub load: Force,
    /// How it was worked out.
    pub trace: Trace,
}

/// In m, kN, kPa and radians.
struct Case<N> {
    width: N,
    length: N,
    depth: N,
    q: N,
    gamma: N,
    phi: N,
    c: N,
    vertical: N,
    horizontal: N,
    falls: N,
    tilt: N,
}

/// Factors on cohesion, overburden and weight.
#[derive(Clone, Copy)]
struct Three<N> {
    c: N,
    q: N,
    g: N,
}

/// Bearing factors, then those of shape, depth, inclination, and of tilted base and slope in front.
type Factors<N> = [Three<N>; 5];

impl<N: Number> Three<N> {
    fn one() -> Three<N> {
        let one = N::constant(1.0);
        Three { c: one, q: one, g: one }
    }
    fn times(self, o: Three<N>) -> Three<N> {
        Three { c: self.c * o.c, q: self.q * o.q, g: self.g * o.g }
    }
    fn named(self, c: &'static str, q: &'static str, g: &'static str) -> Three<N> {
        let n = |v: N, symbol| if v.value() == 1.0 { v } else { v.named(symbol, Unit::NONE) };
        Three { c: n(self.c, c), q: n(self.q, q), g: n(self.g, g) }
    }
}

struct Answer<N> {
    shape: Three<N>,
    depth: Three<N>,
    inclined: Three<N>,
    pressure: N,
    load: N,
}

fn one<N: Number>() -> N {
    N::constant(1.0)
}

/// Inclination exponent m = (2 + B/L)/(1 + B/L) for a load along the width.
fn exponent<N: Number>(s: &Case<N>) -> N {
    let ratio = s.width / s.length;
    ((ratio + 2.0) / (ratio + 1.0)).named("m", Unit::NONE)
}

fn to_power<N: Number>(base: N, exponent: N) -> N {
    if base.value() <= 0.0 { N::constant(0.0) } else { (base.ln() * exponent).exp() }
}

/// 1 − H/(V + A′ c cot φ).
fn upright_share<N: Number>(s: &Case<N>) -> N {
    let grip = if s.c.value() == 0.0 { s.vertical } else { s.vertical + s.width * s.length * s.c / s.phi.tan() };
    one::<N>() - s.horizontal / grip
}

/// Drained ground by EN 1997-1.
///
/// # Source
/// EN 1997-1:2004 Annex D.4 (formulas from memory).
/// # Symbols
/// | B′, L′, q, γ, φ, c | effective size, overburden, weight and strength below | m, kPa, kN/m³, angle, kPa | φ > 0 |
/// | V, H, α | load, tilt of the base | kN, angle | |
/// # Gives
/// c N_c b_c s_c i_c + q N_q b_q s_q i_q + ½ γ B′ N_γ b_γ s_γ i_γ, in kPa.
/// # Not for
/// A slope in front, layers.
/// # Errors
/// None here; callers refuse a load that slides.
/// # By hand
/// B′ = 1.5, L′ = 3, φ = 30°, q = 9, γ = 18, c = 0, V = 300, H = 0: s_q = 1.25, s_γ = 0.85: 207.0 + 230.5 = 437.5 kPa
/// (reference case FO-01).
fn en1997<N: Number>(s: &Case<N>) -> Factors<N> {
    let (n_q, n_c) = n_q_and_n_c(s.phi);
    let n_g = n_gamma(Author::En1997, s.phi, n_q);
    let (tan, ratio) = (s.phi.tan(), s.width / s.length);
    let s_q = one::<N>() + ratio * s.phi.sin();
    let s_g = one::<N>() - ratio * 0.3;
    let s_c = (s_q * n_q - 1.0) / (n_q - 1.0);
    let shape = Three { c: s_c, q: s_q, g: s_g }.named("s_c", "s_q", "s_γ");
    let b_q = (one::<N>() - s.tilt * tan).squared();
    let b_c = b_q - (one::<N>() - b_q) / (n_c * tan);
    let share = upright_share(s);
    let m = exponent(s);
    let i_q = to_power(share, m);
    let i_g = to_power(share, m + 1.0);
    let i_c = i_q - (one::<N>() - i_q) / (n_c * tan);
    let inclined = Three { c: i_c, q: i_q, g: i_g }.named("i_c", "i_q", "i_γ");
    let tilted = Three { c: b_c, q: b_q, g: b_q }.named("b_c", "b_q", "b_γ");
    [Three { c: n_c, q: n_q, g: n_g }, shape, Three::one(), inclined, tilted]
}

/// Undrained ground by EN 1997-1, on undrained strength: (π + 2) c_u b_c s_c i_c + q.
///
/// # Source
/// EN 1997-1:2004 Annex D.3 (formulas from memory).
/// # Symbols
/// | c_u, A′, H, α | strength, effective area, horizontal load, tilt | kPa, m², kN, angle | H ≤ A′ c_u |
/// # Gives
/// (s_c, i_c, b_c): 1 + 0.2 B′/L′; ½(1 + √(1 − H/(A′ c_u))); 1 − 2α/(π + 2).
/// # Not for
/// Layers.
/// # Errors
/// None here; callers refuse H above A′ c_u.
/// # By hand
/// c_u = 50, B′ = 1.5, strip, H = 30 kN/m: i_c = ½(1 + √0.6) = 0.887 (reference case FO-04).
fn en1997_undrained<N: Number>(s: &Case<N>) -> (N, N, N) {
    let s_c = one::<N>() + s.width / s.length * 0.2;
    let held = s.width * s.length * s.c;
    let i_c = (one::<N>() + not_below_zero(one::<N>() - s.horizontal / held).sqrt()) * 0.5;
    let b_c = one::<N>() - s.tilt * 2.0 / (std::f64::consts::PI + 2.0);
    (s_c, i_c, b_c)
}

/// Vesic's factors.
///
/// # Source
/// Vesic, "Analysis of ultimate loads of shallow foundations", J. Soil Mech. Found. Div. ASCE 99(SM1) (1973), and
/// "Bearing capacity of shallow foundations", in Winterkorn and Fang, Foundation Engineering Handbook (1975); depth factors
/// Hansen (1970). From memory; shape and depth seen in Das, Principles of Foundation Engineering, 5th ed., Ex. 3.6.
/// # Symbols
/// | as [`en1997`]; D/B, ω | depth over width, slope falling away in front | –, angle | ω < φ |
/// # Gives
/// Factors of shape, depth, inclination, and of tilted base and slope together: g_q = g_γ = (1 − tan ω)².
/// # Not for
/// Layers; punching in loose soil.
/// # Errors
/// None here.
/// # By hand
/// B′ = 0.9353, L′ = 1.275, D/B = 0.7/1.5, φ = 30°, q = 12.6, γ = 18: 605.5 kN on 1.1925 m² (reference case BC-05).
fn vesic<N: Number>(s: &Case<N>, k: N) -> Factors<N> {
    let (n_q, n_c) = n_q_and_n_c(s.phi);
    let n_g = n_gamma(Author::Vesic, s.phi, n_q);
    let (tan, ratio) = (s.phi.tan(), s.width / s.length);
    let shape = Three { c: one::<N>() + ratio * n_q / n_c, q: one::<N>() + ratio * tan, g: one::<N>() - ratio * 0.4 }
        .named("s_c", "s_q", "s_γ");
    let deep = depth_factors(s, k, n_c);
    let share = upright_share(s);
    let m = exponent(s);
    let i_q = to_power(share, m);
    let i_c = i_q - (one::<N>() - i_q) / (n_c * tan);
    let inclined = Three { c: i_c, q: i_q, g: to_power(share, m + 1.0) }.named("i_c", "i_q", "i_γ");
    let b_q = (one::<N>() - s.tilt * tan).squared();
    let g_q = not_below_zero(one::<N>() - s.falls.tan()).squared();
    let lost = |f: N| f - (one::<N>() - f) / (n_c * tan);
    let around = Three { c: lost(b_q) * lost(g_q), q: b_q * g_q, g: b_q * g_q }.named("g_c", "g_q", "g_γ");
    [Three { c: n_c, q: n_q, g: n_g }, shape, deep, inclined, around]
}

/// Hansen's depth factors, which Vesic takes over; k = D/B up to 1, its angle in radians beyond.
fn depth_factors<N: Number>(s: &Case<N>, k: N, n_c: N) -> Three<N> {
    let tan = s.phi.tan();
    let d_q = one::<N>() + tan * 2.0 * (one::<N>() - s.phi.sin()).squared() * k;
    let d_c = d_q - (one::<N>() - d_q) / (n_c * tan);
    Three { c: d_c, q: d_q, g: one() }.named("d_c", "d_q", "d_γ")
}

/// Hansen's factors.
///
/// # Source
/// Brinch Hansen, "A revised and extended formula for bearing capacity", Danish Geotechnical Institute Bulletin 28 (1970);
/// as in Bowles, Foundation Analysis and Design, 5th ed. (1996), Table 4-5 (from memory).
/// # Symbols
/// | as [`vesic`] | | | |
/// # Gives
/// i_q = (1 − 0.5 H/(V + A′ c cot φ))⁵, i_γ = (1 − 0.7 H/(…))⁵, g_q = g_γ = (1 − 0.5 tan ω)⁵,
/// b_q = e^(−2 η tan φ), b_γ = e^(−2.7 η tan φ); shape and depth as Vesic's, s_q with sin φ.
/// # Not for
/// Layers.
/// # Errors
/// None here.
/// # By hand
/// Strip, φ = 35°, V = 100, H = 20: i_q = 0.9⁵ = 0.590, i_γ = 0.86⁵ = 0.470 (reference case FO-07).
fn hansen<N: Number>(s: &Case<N>, k: N) -> Factors<N> {
    let (n_q, n_c) = n_q_and_n_c(s.phi);
    let n_g = n_gamma(Author::Hansen, s.phi, n_q);
    let (tan, ratio) = (s.phi.tan(), s.width / s.length);
    let share = one::<N>() - upright_share(s);
    let five = |part: f64, v: N| not_below_zero(one::<N>() - v * part).powf(5.0);
    let i_q = five(0.5, share);
    let i_c = i_q - (one::<N>() - i_q) / (n_q - 1.0);
    let inclined = Three { c: i_c, q: i_q, g: five(0.7, share) }.named("i_c", "i_q", "i_γ");
    let shape =
        Three { c: one::<N>() + ratio * n_q / n_c, q: one::<N>() + ratio * s.phi.sin(), g: one::<N>() - ratio * 0.4 }
            .named("s_c", "s_q", "s_γ");
    let g_q = five(0.5, s.falls.tan());
    let falls_deg = s.falls / N::degrees(147.0);
    let b_c = one::<N>() - s.tilt / N::degrees(147.0);
    let tilted = |part: f64| (-(s.tilt * tan * part)).exp();
    let around = Three { c: (one::<N>() - falls_deg) * b_c, q: g_q * tilted(2.0), g: g_q * tilted(2.7) }
        .named("g_c", "g_q", "g_γ");
    [Three { c: n_c, q: n_q, g: n_g }, shape, depth_factors(s, k, n_c), inclined, around]
}

/// Meyerhof's factors.
///
/// # Source
/// Meyerhof, "Some recent research on the bearing capacity of foundations", Canadian Geotechnical J. 1(1) (1963); as in
/// Das, Principles of Geotechnical Engineering, 7th ed., 16.6 (inclination from memory, the rest seen in Ex. 16.3, 16.4).
/// # Symbols
/// | as [`en1997`]; ψ | load from vertical | angle | ψ < φ |
/// # Gives
/// s_q = s_γ = 1 + 0.1 K_p B/L, d_q = d_γ = 1 + 0.1 √K_p D/B (1 below φ = 10°), i_q = i_c = (1 − ψ/90°)²,
/// i_γ = (1 − ψ/φ)².
/// # Not for
/// A slope in front, a tilted base.
/// # Errors
/// None here.
/// # By hand
/// Reference cases BC-07 and BC-08.
fn meyerhof<N: Number>(s: &Case<N>) -> Factors<N> {
    let (n_q, n_c) = n_q_and_n_c(s.phi);
    let n_g = n_gamma(Author::Meyerhof, s.phi, n_q);
    let kp = crate::pressure::rankine::kp(s.phi);
    let (side, deep) = (kp * s.width / s.length, kp.sqrt() * s.depth / s.width);
    let rough = s.phi.value().to_degrees() >= 10.0 - 1e-9;
    let with = |v: N| if rough { one::<N>() + v * 0.1 } else { one() };
    let shape = Three { c: one::<N>() + side * 0.2, q: with(side), g: with(side) }.named("s_c", "s_q", "s_γ");
    let depth = Three { c: one::<N>() + deep * 0.2, q: with(deep), g: with(deep) }.named("d_c", "d_q", "d_γ");
    let psi = (s.horizontal / s.vertical).atan();
    let i_q = (one::<N>() - psi / N::degrees(90.0)).squared();
    let i_g = not_below_zero(one::<N>() - psi / s.phi).squared();
    let inclined = Three { c: i_q, q: i_q, g: i_g }.named("i_c", "i_q", "i_γ");
    [Three { c: n_c, q: n_q, g: n_g }, shape, depth, inclined, Three::one()]
}

impl<N: Number> Case<N> {
    fn answer(&self, rule: Rule) -> Answer<N> {
        if self.phi.value() == 0.0 {
            return self.undrained(rule);
        }
        let over = self.depth / self.width;
        let k = if over.value() <= 1.0 { over } else { over.atan() };
        let [n, shape, depth, inclined, around] = match rule {
            Rule::En1997 => en1997(self),
            Rule::Vesic => vesic(self, k),
            Rule::Hansen => hansen(self, k),
            Rule::Meyerhof => meyerhof(self),
        };
        let f = shape.times(depth).times(inclined).times(around);
        let pressure = self.c * n.c * f.c + self.q * n.q * f.q + self.gamma * self.width * n.g * f.g * 0.5;
        let pressure = not_below_zero(pressure).named("q_u", Unit::KPA);
        let load = (pressure * self.width * self.length).named("Q_u", Unit::KN);
        Answer { shape, depth, inclined, pressure, load }
    }
    /// φ = 0 with undrained strength as cohesion: each author's factors of that case.
    fn undrained(&self, rule: Rule) -> Answer<N> {
        let ratio = self.width / self.length;
        let over = self.depth / self.width;
        let k = if over.value() <= 1.0 { over } else { over.atan() };
        let held = self.width * self.length * self.c;
        let half = |v: N| (one::<N>() + not_below_zero(one::<N>() - v).sqrt()) * 0.5;
        let pi2 = std::f64::consts::PI + 2.0;
        let (s_c, d_c, i_c, b_c) = match rule {
            Rule::En1997 => {
                let (s, i, b) = en1997_undrained(self);
                (s, one(), i, b)
            }
            Rule::Vesic => {
                let i = one::<N>() - exponent(self) * self.horizontal / (held * pi2);
                let around = (one::<N>() - self.tilt * 2.0 / pi2) * (one::<N>() - self.falls * 2.0 / pi2);
                (one::<N>() + ratio / pi2, one::<N>() + k * 0.4, not_below_zero(i), around)
            }
            Rule::Hansen => (one::<N>() + ratio * 0.2, one::<N>() + k * 0.4, half(self.horizontal / held), one()),
            Rule::Meyerhof => {
                let psi = (self.horizontal / self.vertical).atan();
                let i = (one::<N>() - psi / N::degrees(90.0)).squared();
                (one::<N>() + ratio * 0.2, one::<N>() + over * 0.2, i, one())
            }
        };
        let shape = Three { c: s_c, ..Three::one() }.named("s_c", "s_q", "s_γ");
        let depth = Three { c: d_c, ..Three::one() }.named("d_c", "d_q", "d_γ");
        let inclined = Three { c: i_c, ..Three::one() }.named("i_c", "i_q", "i_γ");
        let factors = if rule == Rule::Hansen {
            // Hansen adds the parts of φ = 0 instead of multiplying them.
            let lost = (self.tilt + self.falls) / N::degrees(147.0);
            not_below_zero(shape.c + depth.c + inclined.c - lost - 2.0)
        } else {
            shape.c * depth.c * inclined.c * b_c
        };
        let mut pressure = self.c * pi2 * factors + self.q;
        if rule == Rule::Vesic && self.falls.value() > 0.0 {
            // Vesic (1975): on a slope of undrained clay N_γ is −2 sin ω.
            pressure = pressure - self.gamma * self.width * self.falls.sin();
        }
        let pressure = not_below_zero(pressure).named("q_u", Unit::KPA);
        let load = (pressure * self.width * self.length).named("Q_u", Unit::KN);
        Answer { shape, depth, inclined, pressure, load }
    }
    /// Why there is no answer, if so.
    fn impossible(&self, rule: Rule) -> Option<String> {
        let area = self.width.value() * self.length.value();
        let held = if self.phi.value() == 0.0 {
            area * self.c.value()
        } else {
            self.vertical.value() + area * self.c.value() / groundhold_quantity::math::tan(self.phi.value())
        };
        if self.horizontal.value() > 0.0 && self.horizontal.value() >= held {
            return Some(SLIDES.into());
        }
        if self.width.value() > self.length.value() + 1e-9 {
            return Some(
                "the width is larger than the length; the load should push along the shorter side, or swap them".into(),
            );
        }
        let knows_slopes = matches!(rule, Rule::Vesic | Rule::Hansen);
        let falls = self.falls.value();
        if falls > 0.0 && !knows_slopes {
            return Some(format!("{} has no factor for a slope in front; take Vesic or Hansen", rule.name()));
        }
        if self.phi.value() > 0.0 && falls > self.phi.value() {
            return Some("the ground in front falls away steeper than its friction angle; it moves by itself".into());
        }
        if self.tilt.value() != 0.0 && rule == Rule::Meyerhof {
            return Some("Meyerhof has no factor for a tilted base; take EN 1997-1, Vesic or Hansen".into());
        }
        None
    }
}

const SLIDES: &str = "the horizontal load is as large as the ground under the base can hold; it slides before it sinks";

impl Rule {
    /// All of them, as rows of a comparison.
    pub const ALL: [Rule; 4] = [Rule::En1997, Rule::Vesic, Rule::Hansen, Rule::Meyerhof];

    /// In words, for tables.
    pub fn name(self) -> &'static str {
        match self {
            Rule::En1997 => "EN 1997-1 Annex D",
            Rule::Vesic => "Vesic",
            Rule::Hansen => "Brinch Hansen",
            Rule::Meyerhof => "Meyerhof",
        }
    }
    fn working(self) -> &'static Working {
        match self {
            Rule::En1997 => &EN1997_BASE,
            Rule::Vesic => &VESIC_BASE,
            Rule::Hansen => &HANSEN_BASE,
            Rule::Meyerhof => &MEYERHOF_BASE,
        }
    }
    /// What drained ground can carry, on φ′ and c′.
    ///
    /// # Errors
    /// A load that slides, a slope or a tilt that the rule does not know, or a value outside the working's limits.
    pub fn drained(self, base: &Base) -> Result<Bearing> {
        self.of(base, base.soil.phi.to_deg(), base.soil.cohesion.to_kpa())
    }
    /// What clay can carry before its water has gone, on its undrained strength.
    ///
    /// # Errors
    /// As [`Rule::drained`]; a soil without an undrained strength.
    pub fn undrained(self, base: &Base) -> Result<Bearing> {
        let cu = base.soil.undrained.ok_or_else(|| Refused::NoAnswer {
            working: self.working().name,
            why: format!("soil `{}` has no undrained strength", base.soil.name),
        })?;
        self.of(base, 0.0, cu.to_kpa())
    }
    fn of(self, base: &Base, phi_deg: f64, c: f64) -> Result<Bearing> {
        let b = base;
        let gamma = if b.submerged { b.soil.unit_weight_submerged() } else { b.soil.unit_weight };
        let given: [f64; 11] = [
            b.width.to_m(),
            b.length.to_m(),
            b.depth.to_m(),
            b.overburden.to_kpa(),
            gamma.to_kn_per_m3(),
            phi_deg,
            c,
            b.vertical.to_kn(),
            b.horizontal.to_kn(),
            b.ground_falls.to_deg(),
            b.tilt.to_deg(),
        ];
        let working = self.working();
        let values: Vec<Value> = given.map(Into::into).into();
        rows::check(working, &values)?;
        let case = Case {
            width: given[0],
            length: given[1],
            depth: given[2],
            q: given[3],
            gamma: given[4],
            phi: given[5].to_radians(),
            c: given[6],
            vertical: given[7],
            horizontal: given[8],
            falls: given[9].to_radians(),
            tilt: given[10].to_radians(),
        };
        if let Some(why) = case.impossible(self) {
            return Err(Refused::NoAnswer { working: working.name, why });
        }
        let a = case.answer(self);
        Ok(Bearing {
            by: self,
            pressure: Pressure::kpa(a.pressure),
            load: Force::kn(a.load),
            trace: Trace::new(working, values),
        })
    }
}

impl Base {
    /// What drained ground can carry by every rule, as rows of a comparison; a rule that does not know the case says so.
    pub fn by_every_rule(&self) -> Vec<(Rule, Result<Bearing>)> {
        Rule::ALL.into_iter().map(|r| (r, r.drained(self))).collect()
    }
}

fn run<'s>(rule: Rule, g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let case = Case {
        width: g.one("width")?,
        length: g.one("length")?,
        depth: g.one("depth")?,
        q: g.one("q")?,
        gamma: g.one("gamma")?,
        phi: g.one("phi")?,
        c: g.one("c")?,
        vertical: g.one("v")?,
        horizontal: g.one("h")?,
        falls: g.one("falls")?,
        tilt: g.one("tilt")?,
    };
    if let Some(why) = case.impossible(rule) {
        return Err(g.no_answer(why));
    }
    let a = case.answer(rule);
    let list = |t: Three<groundhold_working::Shown<'s>>| Found::Many(vec![t.c, t.q, t.g]);
    Ok(vec![list(a.shape), list(a.depth), list(a.inclined), Found::One(a.pressure), Found::One(a.load)])
}

const INPUTS: &[Input] = &[
    Input::new("width", "B'", "effective width, B − 2e, along the push", Unit::M, Limits::ours(0.01, 100.0)),
    Input::new("length", "L'", "effective length", Unit::M, Limits::ours(0.01, 1e6)).or(1e6),
    Input::new("depth", "D", "depth of the underside, for the depth factors", Unit::M, Limits::ours(0.0, 20.0)).or(0.0),
    Input::new("q", "q", "overburden beside the underside, the smaller", Unit::KPA, Limits::ours(0.0, 1000.0)).or(0.0),
    Input::new("gamma", "γ", "unit weight of the soil below, under water γ'", Unit::KN_M3, Limits::ours(0.1, 30.0)),
    Input::new("phi", "φ", "friction angle; 0 for undrained", Unit::DEG, Limits::ours(0.0, 50.0)),
    Input::new("c", "c", "cohesion; undrained strength with φ = 0", Unit::KPA, Limits::ours(0.0, 1000.0)).or(0.0),
    Input::new("v", "V", "vertical load", Unit::KN, Limits::ours(0.001, 1e9)).or(1.0),
    Input::new("h", "H", "horizontal load along the width", Unit::KN, Limits::ours(0.0, 1e9)).or(0.0),
    Input::new("falls", "ω", "slope of the ground in front, falling away", Unit::DEG, Limits::ours(0.0, 45.0)).or(0.0),
    Input::new("tilt", "η", "tilt of the underside against the push", Unit::DEG, Limits::ours(0.0, 30.0)).or(0.0),
];

const OUTPUTS: &[Output] = &[
    Output { key: "shape", words: "factors of shape: on cohesion, overburden, weight", unit: Unit::NONE },
    Output { key: "deep", words: "factors of depth", unit: Unit::NONE },
    Output { key: "inclined", words: "factors of inclination", unit: Unit::NONE },
    Output { key: "qu", words: "pressure at failure over the effective area", unit: Unit::KPA },
    Output { key: "load", words: "load at failure", unit: Unit::KN },
];

/// A base by EN 1997-1.
pub static EN1997_BASE: Working = Working {
    name: "bearing/en1997",
    title: "How much can drained or undrained ground carry under a base of any shape, by EN 1997-1?",
    source: Source {
        work: "EN 1997-1:2004, Geotechnical design, general rules",
        place: "Annex D.3 (φ = 0) and D.4, from memory",
    },
    not_for: "a slope in front, layers",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| run(Rule::En1997, g),
};

/// A base by Vesic.
pub static VESIC_BASE: Working = Working {
    name: "bearing/vesic",
    title: "How much can ground carry under a base of any shape, depth, tilt and with a slope in front, by Vesic?",
    source: Source {
        work: "Vesic, J. Soil Mech. Found. Div. ASCE 99(SM1), 1973; and in Winterkorn and Fang, Foundation Engineering Handbook, 1975",
        place: "depth: Hansen, 1970; factors from memory, shape and depth as in Das, Principles of Foundation Engineering, 5th ed., Ex. 3.6",
    },
    not_for: "layers, punching in loose soil",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| run(Rule::Vesic, g),
};

/// A base by Brinch Hansen.
pub static HANSEN_BASE: Working = Working {
    name: "bearing/hansen",
    title: "How much can ground carry under a base of any shape, depth, tilt and with a slope in front, by Brinch Hansen?",
    source: Source {
        work: "Brinch Hansen, A revised and extended formula for bearing capacity, Danish Geotechnical Institute Bulletin 28, 1970",
        place: "as in Bowles, Foundation Analysis and Design, 5th ed., 1996, Table 4-5, from memory",
    },
    not_for: "layers",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| run(Rule::Hansen, g),
};

/// A base by Meyerhof.
pub static MEYERHOF_BASE: Working = Working {
    name: "bearing/meyerhof-inclined",
    title: "How much can ground carry under a base of any shape and depth with an inclined load, by Meyerhof?",
    source: Source {
        work: "Meyerhof, Some recent research on the bearing capacity of foundations, Canadian Geotechnical J. 1(1), 1963",
        place: "as in Das, Principles of Geotechnical Engineering, 7th ed., 16.6; inclination from memory",
    },
    not_for: "a slope in front, a tilted base",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| run(Rule::Meyerhof, g),
};
