//! Does a steel section carry its moment and shear, by the rules that are asked for?

use groundhold_quantity::{Force, Length, Moment, Pressure};
use groundhold_working::{Refused, Result, Trace};

use super::{
    aisc::{AISC_BENDING, AISC_SHEAR, AiscBending, AiscShear, aisc_bending, aisc_shear},
    en1993::{EN3_BENDING, EN3_SHEAR, SteelBending, SteelShear, en3_bending, en3_shear},
    section::{Shape, SteelFigures},
};
use crate::Row;

/// A steel by its yield strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Steel {
    /// Yield strength for thin parts.
    pub yield_stress: Pressure,
}

impl Steel {
    /// S235, EN 10025-2 up to 16 mm.
    pub const S235: Steel = Steel { yield_stress: Pressure::mpa(235.0) };
    /// S275, EN 10025-2 up to 16 mm.
    pub const S275: Steel = Steel { yield_stress: Pressure::mpa(275.0) };
    /// S355, EN 10025-2 up to 16 mm.
    pub const S355: Steel = Steel { yield_stress: Pressure::mpa(355.0) };
    /// ASTM A36, 36 ksi.
    pub const A36: Steel = Steel { yield_stress: Pressure::psf(36_000.0 * 144.0) };
    /// ASTM A992, 50 ksi.
    pub const A992: Steel = Steel { yield_stress: Pressure::psf(50_000.0 * 144.0) };
}

/// The rules by which steel is judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rules {
    /// EN 1993-1-1, partial factors 1.0: put factored effects in.
    En1993,
    /// ANSI/AISC 360, allowable strength: put effects in as they are.
    Aisc,
}

/// Bending and shear judged.
#[derive(Debug, Clone, PartialEq)]
pub struct SteelCheck {
    /// Bending about the stronger axis.
    pub bending: Row<Moment>,
    /// Shear.
    pub shear: Row<Force>,
    /// Working of the section's figures.
    pub section: Trace,
    /// Class of the section by EN 1993-1-1, Table 5.2 (1 to 3); 0 under other rules.
    pub class: u8,
}

impl SteelCheck {
    /// The worst of both.
    pub fn utilisation(&self) -> f64 {
        self.bending.utilisation.max(self.shear.utilisation)
    }
}

/// Bending and shear of a section about its stronger axis; `unheld` is the length that nothing holds sideways, zero where
/// panels in the flanges or soil hold it.
///
/// # Errors
/// Where a value is out of range, or a part is so thin that these formulas do not hold.
pub fn check_steel(
    shape: &Shape,
    steel: Steel,
    rules: Rules,
    (moment, shear): (Moment, Force),
    unheld: Length,
) -> Result<SteelCheck> {
    let (f, section) = shape.figures()?;
    let fy = steel.yield_stress.to_mpa();
    // A closed section does not tip while it is not much deeper than wide.
    let unheld = if matches!(shape, Shape::Hollow { .. }) { 0.0 } else { unheld.to_mm() };
    match rules {
        Rules::En1993 => by_en((shape, &f, section), fy, (moment, shear), unheld),
        Rules::Aisc => by_aisc((shape, &f, section), fy, (moment, shear), unheld),
    }
}

fn by_en(
    (shape, f, section): (&Shape, &SteelFigures<f64>, Trace),
    yield_stress: f64,
    (moment, shear): (Moment, Force),
    unheld: f64,
) -> Result<SteelCheck> {
    let class = class(shape, yield_stress)?;
    let rolled_i = matches!(shape, Shape::I { .. });
    let curve = match (rolled_i, shape.depth() <= 2.0 * shape.width()) {
        (true, true) => 0.21,
        (true, false) => 0.34,
        (false, _) => 0.76,
    };
    let (b, bent) = SteelBending {
        moment: moment.to_knm(),
        modulus: if class < 3 { f.plastic } else { f.elastic },
        yield_stress,
        unheld,
        minor: f.minor,
        torsion: f.torsion,
        warping: f.warping,
        shape: 1.0,
        curve,
        gamma: 1.0,
    }
    .traced(&EN3_BENDING)?;
    let (v, sheared) =
        SteelShear { shear: shear.to_kn(), area: f.shear_area, yield_stress, gamma: 1.0 }.traced(&EN3_SHEAR)?;
    Ok(SteelCheck {
        bending: Row::new("bending", moment, Moment::knm(en3_bending(&b).capacity), bent),
        shear: Row::new("shear", shear, Force::kn(en3_shear(&v).capacity), sheared),
        section,
        class,
    })
}

fn by_aisc(
    (shape, f, section): (&Shape, &SteelFigures<f64>, Trace),
    yield_stress: f64,
    (moment, shear): (Moment, Force),
    unheld: f64,
) -> Result<SteelCheck> {
    let (flange, between, web, omega) = match *shape {
        Shape::I { depth, width, web, flange, .. } => {
            (width / (2.0 * flange), (depth - flange).to_mm(), (depth * web).to_mm2(), 1.5)
        }
        Shape::Channel { depth, width, web, flange, .. } => {
            (width / flange, (depth - flange).to_mm(), (depth * web).to_mm2(), 1.67)
        }
        Shape::Hollow { depth, wall, .. } => (0.0, 0.0, 2.0 * ((depth - 3.0 * wall) * wall).to_mm2(), 1.67),
    };
    let (b, bent) = AiscBending {
        moment: moment.to_knm(),
        plastic: f.plastic,
        elastic: f.elastic,
        yield_stress,
        flange,
        unheld,
        minor: f.minor,
        area: f.area,
        torsion: f.torsion,
        between,
        omega: 1.67,
    }
    .traced(&AISC_BENDING)?;
    if (199_948.0 / yield_stress).sqrt() < flange {
        return bent.sheet().and(Err(thin(AISC_BENDING.name)));
    }
    let (v, sheared) = AiscShear { shear: shear.to_kn(), area: web, yield_stress, omega }.traced(&AISC_SHEAR)?;
    Ok(SteelCheck {
        bending: Row::new("bending", moment, Moment::knm(aisc_bending(&b).capacity), bent),
        shear: Row::new("shear", shear, Force::kn(aisc_shear(&v).capacity), sheared),
        section,
        class: 0,
    })
}

fn thin(working: &'static str) -> Refused {
    Refused::NoAnswer {
        working,
        why: "a part of the section is so thin that it buckles first (rust, or a light section)".into(),
    }
}

/// Class of a section in bending, EN 1993-1-1 Table 5.2: outstands 9, 10, 14 ε; webs 72, 83, 124 ε; inner flanges 33, 38,
/// 42 ε, with ε = √(235/f_y).
fn class(shape: &Shape, fy: f64) -> Result<u8> {
    let e = (235.0 / fy).sqrt();
    let rank = |ratio: f64, limits: [f64; 3]| limits.iter().position(|l| ratio <= l * e).map(|k| k as u8 + 1);
    let (flange, web) = match *shape {
        Shape::I { depth, width, web, flange, root } => (
            rank((width - web - 2.0 * root) / (2.0 * flange), [9.0, 10.0, 14.0]),
            rank((depth - 2.0 * flange - 2.0 * root) / web, [72.0, 83.0, 124.0]),
        ),
        Shape::Channel { depth, width, web, flange, root } => (
            rank((width - web - root) / flange, [9.0, 10.0, 14.0]),
            rank((depth - 2.0 * flange - 2.0 * root) / web, [72.0, 83.0, 124.0]),
        ),
        Shape::Hollow { depth, width, wall } => (
            rank((width - 3.0 * wall) / wall, [33.0, 38.0, 42.0]),
            rank((depth - 3.0 * wall) / wall, [72.0, 83.0, 124.0]),
        ),
    };
    match (flange, web) {
        (Some(f), Some(w)) => Ok(f.max(w)),
        _ => Err(thin(EN3_BENDING.name)),
    }
}
