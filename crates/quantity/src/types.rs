//! The quantities: one type each, built and read by the name of its unit.

use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

use crate::{math, parse::Quantity};

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $words:literal, $example:literal, { $($(#[$udoc:meta])* $unit:ident, $to:ident, $factor:expr;)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: $name = $name(0.0);
            $(
                $(#[$udoc])*
                pub const fn $unit(value: f64) -> Self { $name(value * $factor) }
                /// The value read in that unit.
                pub const fn $to(self) -> f64 { self.0 / $factor }
            )*
            /// The value in its SI base unit.
            pub const fn si(self) -> f64 { self.0 }
            /// Its size without its sign.
            pub fn abs(self) -> Self { $name(self.0.abs()) }
            /// The smaller of two.
            pub fn min(self, other: Self) -> Self { if other.0 < self.0 { other } else { self } }
            /// The larger of two.
            pub fn max(self, other: Self) -> Self { if other.0 > self.0 { other } else { self } }
            /// True for an ordinary number: neither infinite nor undefined.
            pub fn is_finite(self) -> bool { self.0.is_finite() }
        }
        impl Quantity for $name {
            const WORDS: &'static str = $words;
            const EXAMPLE: &'static str = $example;
            const KIND: crate::parse::Kind = crate::parse::Kind::$name;
            fn from_si(value: f64) -> Self { $name(value) }
            fn in_si(self) -> f64 { self.0 }
        }
        impl Add for $name { type Output = Self; fn add(self, o: Self) -> Self { $name(self.0 + o.0) } }
        impl Sub for $name { type Output = Self; fn sub(self, o: Self) -> Self { $name(self.0 - o.0) } }
        impl Neg for $name { type Output = Self; fn neg(self) -> Self { $name(-self.0) } }
        impl AddAssign for $name { fn add_assign(&mut self, o: Self) { self.0 += o.0; } }
        impl SubAssign for $name { fn sub_assign(&mut self, o: Self) { self.0 -= o.0; } }
        impl Mul<f64> for $name { type Output = Self; fn mul(self, k: f64) -> Self { $name(self.0 * k) } }
        impl Mul<$name> for f64 { type Output = $name; fn mul(self, q: $name) -> $name { $name(self * q.0) } }
        impl Div<f64> for $name { type Output = Self; fn div(self, k: f64) -> Self { $name(self.0 / k) } }
        impl Div for $name { type Output = f64; fn div(self, o: Self) -> f64 { self.0 / o.0 } }
        impl std::iter::Sum for $name { fn sum<I: Iterator<Item = Self>>(it: I) -> Self { $name(it.map(|q| q.0).sum()) } }
    };
}

const FOOT: f64 = 0.3048;
const POUND: f64 = 0.45359237;
const POUND_FORCE: f64 = 4.4482216152605;

quantity! {
    /// A distance, a thickness, a height difference.
    Length, "a length with its unit", "1.2 m, 450 mm or 4 ft 6 in", {
        /// From metres.
        m, to_m, 1.0;
        /// From millimetres.
        mm, to_mm, 0.001;
        /// From feet (international foot, exactly 0.3048 m).
        ft, to_ft, FOOT;
        /// From inches.
        inch, to_inch, FOOT / 12.0;
    }
}
quantity! {
    /// An area.
    Area, "an area with its unit", "12 m2", {
        /// From square metres.
        m2, to_m2, 1.0;
        /// From square millimetres.
        mm2, to_mm2, 1e-6;
        /// From square feet.
        ft2, to_ft2, FOOT * FOOT;
    }
}
quantity! {
    /// A volume. Whether bank, loose or compacted is said by the field that holds it.
    Volume, "a volume with its unit", "0.35 m3 or 20 l", {
        /// From cubic metres.
        m3, to_m3, 1.0;
        /// From litres.
        litre, to_litre, 0.001;
        /// From cubic yards.
        yd3, to_yd3, FOOT * FOOT * FOOT * 27.0;
    }
}
quantity! {
    /// An angle.
    Angle, "an angle with its unit", "35 deg", {
        /// From radians.
        rad, to_rad, 1.0;
        /// From degrees.
        deg, to_deg, std::f64::consts::PI / 180.0;
    }
}
quantity! {
    /// Rise over run, positive uphill.
    Slope, "a slope", "1:40, 2 % or 14 deg", {
        /// From rise over run.
        ratio, to_ratio, 1.0;
        /// From per cent.
        percent, to_percent, 0.01;
    }
}
quantity! {
    /// A plain ratio: a waste allowance, a tax rate.
    Share, "a share", "5 % or 0.05", {
        /// From a fraction of one.
        fraction, to_fraction, 1.0;
        /// From per cent.
        percent, to_percent, 0.01;
    }
}
quantity! {
    /// A force.
    Force, "a force with its unit", "2.5 kN", {
        /// From newtons.
        n, to_n, 1.0;
        /// From kilonewtons.
        kn, to_kn, 1000.0;
        /// From pounds-force.
        lbf, to_lbf, POUND_FORCE;
    }
}
quantity! {
    /// A force per metre run.
    LineForce, "a force per length with its unit", "3.6 kN/m", {
        /// From newtons per metre.
        n_per_m, to_n_per_m, 1.0;
        /// From kilonewtons per metre.
        kn_per_m, to_kn_per_m, 1000.0;
    }
}
quantity! {
    /// A bending moment (or a moment per metre run, where the field says so).
    Moment, "a moment with its unit", "1.8 kNm", {
        /// From newton metres.
        nm, to_nm, 1.0;
        /// From kilonewton metres.
        knm, to_knm, 1000.0;
    }
}
quantity! {
    /// A pressure, a stress or a strength.
    Pressure, "a pressure with its unit", "2.5 kPa or 24 MPa", {
        /// From pascals.
        pa, to_pa, 1.0;
        /// From kilopascals.
        kpa, to_kpa, 1000.0;
        /// From megapascals (newtons per square millimetre).
        mpa, to_mpa, 1e6;
        /// From pounds-force per square foot.
        psf, to_psf, POUND_FORCE / (FOOT * FOOT);
    }
}
quantity! {
    /// Weight per volume.
    UnitWeight, "a unit weight with its unit", "18 kN/m3", {
        /// From newtons per cubic metre.
        n_per_m3, to_n_per_m3, 1.0;
        /// From kilonewtons per cubic metre.
        kn_per_m3, to_kn_per_m3, 1000.0;
    }
}
quantity! {
    /// A mass.
    Mass, "a mass with its unit", "25 kg or 1.6 t", {
        /// From kilograms.
        kg, to_kg, 1.0;
        /// From tonnes.
        t, to_t, 1000.0;
        /// From pounds.
        lb, to_lb, POUND;
    }
}
quantity! {
    /// Mass per volume.
    Density, "a density with its unit", "1600 kg/m3", {
        /// From kilograms per cubic metre.
        kg_per_m3, to_kg_per_m3, 1.0;
        /// From tonnes per cubic metre.
        t_per_m3, to_t_per_m3, 1000.0;
    }
}
quantity! {
    /// A flow of water.
    Flow, "a flow with its unit", "0.8 l/s", {
        /// From cubic metres a second.
        m3_per_s, to_m3_per_s, 1.0;
        /// From litres a second.
        l_per_s, to_l_per_s, 0.001;
    }
}
quantity! {
    /// Depth of rain in a time.
    RainIntensity, "a rain intensity with its unit", "60 mm/h", {
        /// From metres a second.
        m_per_s, to_m_per_s, 1.0;
        /// From millimetres an hour.
        mm_per_h, to_mm_per_h, 0.001 / 3600.0;
    }
}
quantity! {
    /// A length of working time.
    Time, "a time with its unit", "6 h or 2 days (of 8 h)", {
        /// From seconds.
        s, to_s, 1.0;
        /// From minutes.
        min_, to_min, 60.0;
        /// From hours.
        h, to_h, 3600.0;
    }
}

/// A position above the job's datum, up positive. Two levels are subtracted to a [`Length`], never added.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Level(f64);

impl Level {
    /// From metres above the datum.
    pub const fn m(value: f64) -> Self {
        Level(value)
    }
    /// In metres above the datum.
    pub const fn to_m(self) -> f64 {
        self.0
    }
    /// The lower of two.
    pub fn min(self, other: Self) -> Self {
        if other.0 < self.0 { other } else { self }
    }
    /// The higher of two.
    pub fn max(self, other: Self) -> Self {
        if other.0 > self.0 { other } else { self }
    }
    /// True for an ordinary number.
    pub fn is_finite(self) -> bool {
        self.0.is_finite()
    }
}
impl Sub for Level {
    type Output = Length;
    fn sub(self, o: Self) -> Length {
        Length::m(self.0 - o.0)
    }
}
impl Add<Length> for Level {
    type Output = Level;
    fn add(self, o: Length) -> Level {
        Level(self.0 + o.to_m())
    }
}
impl Sub<Length> for Level {
    type Output = Level;
    fn sub(self, o: Length) -> Level {
        Level(self.0 - o.to_m())
    }
}

macro_rules! product {
    ($($a:ident * $b:ident = $c:ident;)*) => { $(
        impl Mul<$b> for $a { type Output = $c; fn mul(self, o: $b) -> $c { $c::from_si(self.si() * o.si()) } }
        impl Div<$b> for $c { type Output = $a; fn div(self, o: $b) -> $a { $a::from_si(self.si() / o.si()) } }
    )* };
}
product! {
    Area * Length = Volume;
    UnitWeight * Length = Pressure;
    Pressure * Length = LineForce;
    Pressure * Area = Force;
    LineForce * Length = Force;
    Force * Length = Moment;
    UnitWeight * Volume = Force;
    Density * Volume = Mass;
}
impl Mul for Length {
    type Output = Area;
    fn mul(self, o: Length) -> Area {
        Area::m2(self.si() * o.si())
    }
}
impl Div<Length> for Area {
    type Output = Length;
    fn div(self, o: Length) -> Length {
        Length::m(self.si() / o.si())
    }
}

impl Slope {
    /// Level ground.
    pub const LEVEL: Slope = Slope::ZERO;
    /// One up in `run` along.
    pub fn one_in(run: f64) -> Slope {
        Slope::ratio(1.0 / run)
    }
    /// The angle above level.
    pub fn to_angle(self) -> Angle {
        Angle::rad(math::atan(self.to_ratio()))
    }
    /// From the angle above level.
    pub fn from_angle(a: Angle) -> Slope {
        Slope::ratio(math::tan(a.to_rad()))
    }
    /// The n of "1 in n"; infinite on level ground.
    pub fn to_one_in(self) -> f64 {
        1.0 / self.to_ratio()
    }
}

/// Standard gravity, exactly 9.80665 m/s² (3rd CGPM, 1901). Weight of a mass.
pub fn weight(mass: Mass) -> Force {
    Force::n(mass.to_kg() * 9.80665)
}

/// Unit weight of water, 9.81 kN/m³, the value hand calculations use.
pub const WATER: UnitWeight = UnitWeight::kn_per_m3(9.81);
