//! What do area, inertia and moduli of a rolled or hollow steel section amount to, from its sides?

use groundhold_quantity::Length;
use groundhold_working::{Limits, Number, Result, Source, Trace, Unit, Working};

use crate::given::{gives, takes};

/// A steel section, bent about its stronger axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// An I or H section.
    I {
        /// Overall depth.
        depth: Length,
        /// Width of the flanges.
        width: Length,
        /// Thickness of the web.
        web: Length,
        /// Thickness of the flanges.
        flange: Length,
        /// Radius of the root.
        root: Length,
    },
    /// A channel with parallel flanges.
    Channel {
        /// Overall depth.
        depth: Length,
        /// Width of the flanges.
        width: Length,
        /// Thickness of the web.
        web: Length,
        /// Thickness of the flanges.
        flange: Length,
        /// Radius of the root.
        root: Length,
    },
    /// A rectangular hollow section, cold formed.
    Hollow {
        /// Overall depth.
        depth: Length,
        /// Overall width.
        width: Length,
        /// Thickness.
        wall: Length,
    },
}

takes! {
    /// An I or H section, mm.
    ISides {
        depth: "h", "overall depth", MM, Limits::ours(40.0, 1200.0);
        width: "b", "width of the flanges", MM, Limits::ours(20.0, 600.0);
        web: "t_w", "thickness of the web", MM, Limits::ours(0.5, 60.0);
        flange: "t_f", "thickness of the flanges", MM, Limits::ours(0.5, 60.0);
        root: "r", "radius of the root", MM, Limits::ours(0.0, 60.0), 0.0;
    }
}
takes! {
    /// A channel with parallel flanges, mm.
    ChannelSides {
        depth: "h", "overall depth", MM, Limits::ours(40.0, 600.0);
        width: "b", "width of the flanges", MM, Limits::ours(20.0, 200.0);
        web: "t_w", "thickness of the web", MM, Limits::ours(0.5, 40.0);
        flange: "t_f", "thickness of the flanges", MM, Limits::ours(0.5, 40.0);
        root: "r", "radius of the root", MM, Limits::ours(0.0, 40.0), 0.0;
    }
}
takes! {
    /// A rectangular hollow section, mm.
    HollowSides {
        depth: "h", "overall depth", MM, Limits::ours(20.0, 500.0);
        width: "b", "overall width", MM, Limits::ours(20.0, 500.0);
        wall: "t", "thickness", MM, Limits::ours(0.5, 20.0);
        outside: "r_o", "outer radius of the corners", MM, Limits::ours(0.0, 60.0);
    }
}
gives! {
    /// Figures of a steel section.
    SteelFigures {
        area: MM2, "cross-section";
        inertia: MM4, "second moment of area, stronger axis";
        elastic: MM3, "elastic section modulus, stronger axis";
        plastic: MM3, "plastic section modulus, stronger axis";
        minor: MM4, "second moment of area, weaker axis";
        shear_area: MM2, "area that takes shear (EN 1993-1-1, 6.2.6)";
        torsion: MM4, "torsion constant, without roots";
        warping: MM4, "warping constant over 1000 mm²";
    }
}

/// Area of the root between web and flange, its centroid from the corner and its own inertia, by its radius.
fn root_of<N: Number>(r: N) -> (N, N, N) {
    let n = N::constant;
    let pi = std::f64::consts::PI;
    let area = n(1.0 - pi / 4.0) * r.squared();
    let off = n((10.0 - 3.0 * pi) / (12.0 - 3.0 * pi)) * r;
    let own = n(1.0 / 3.0 - pi / 16.0 - 1.0 / (36.0 - 9.0 * pi)) * r.powf(4.0);
    (area, off, own)
}

/// Figures of an I or H section.
///
/// # Source
/// Elementary geometry with root fillets; shear area EN 1993-1-1:2005, 6.2.6(3)a; torsion as thin rectangles, warping
/// I_z (h − t_f)²/4, e.g. Young & Budynas, Roark's Formulas for Stress and Strain.
/// # Symbols
/// h depth, b width, t_w web, t_f flange, r root.
/// # Gives
/// A, I_y, W_el, W_pl, I_z, A_v, I_t, I_w.
/// # Not for
/// Flanges that taper.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// HEB100 (100, 100, 6, 10, 12): A 26.04 cm², I 449.5 cm⁴, W_pl 104.2 cm³ (ST-T1).
pub fn section_i<N: Number>(i: &ISides<N>) -> SteelFigures<N> {
    let n = N::constant;
    let (h, b, tw, tf) = (i.depth, i.width, i.web, i.flange);
    let (fillet, off, own) = root_of(i.root);
    let inner = (h - n(2.0) * tf).named("h_i", Unit::MM);
    let area = (n(2.0) * b * tf + inner * tw + n(4.0) * fillet).named("A", Unit::MM2);
    let arm = inner / 2.0 - off;
    let inertia = ((b * h.cubed() - (b - tw) * inner.cubed()) / 12.0 + n(4.0) * (own + fillet * arm.squared()))
        .named("I_y", Unit::MM4);
    let elastic = (n(2.0) * inertia / h).named("W_el", Unit::MM3);
    let plastic = (b * tf * (h - tf) + tw * inner.squared() / 4.0 + n(4.0) * fillet * arm).named("W_pl", Unit::MM3);
    let aside = tw / 2.0 + off;
    let minor = ((n(2.0) * tf * b.cubed() + inner * tw.cubed()) / 12.0 + n(4.0) * (own + fillet * aside.squared()))
        .named("I_z", Unit::MM4);
    let shear_area = (area - n(2.0) * b * tf + (tw + n(2.0) * i.root) * tf).max(inner * tw).named("A_v", Unit::MM2);
    let torsion = ((n(2.0) * b * tf.cubed() + (h - tf) * tw.cubed()) / 3.0).named("I_t", Unit::MM4);
    let warping = (minor * (h - tf).squared() / 4.0 / 1000.0).named("I_w/1000 mm²", Unit::MM4);
    SteelFigures { area, inertia, elastic, plastic, minor, shear_area, torsion, warping }
}

/// Figures of a channel with parallel flanges.
///
/// # Source
/// Elementary geometry with root fillets; shear area EN 1993-1-1:2005, 6.2.6(3)b; torsion and warping of thin rectangles,
/// e.g. Young & Budynas, Roark's Formulas for Stress and Strain.
/// # Symbols
/// As [`section_i`].
/// # Gives
/// As [`section_i`].
/// # Not for
/// Channels whose flanges taper; a load beside the shear centre, which twists them.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 100 × 50, 5, 8.5, 9: I 208 cm⁴, W_pl 48.9 cm³ (ST-T2).
pub fn section_channel<N: Number>(i: &ChannelSides<N>) -> SteelFigures<N> {
    let n = N::constant;
    let (h, b, tw, tf) = (i.depth, i.width, i.web, i.flange);
    let (fillet, off, own) = root_of(i.root);
    let inner = (h - n(2.0) * tf).named("h_i", Unit::MM);
    let area = (n(2.0) * b * tf + inner * tw + n(2.0) * fillet).named("A", Unit::MM2);
    let arm = inner / 2.0 - off;
    let inertia = ((b * h.cubed() - (b - tw) * inner.cubed()) / 12.0 + n(2.0) * (own + fillet * arm.squared()))
        .named("I_y", Unit::MM4);
    let elastic = (n(2.0) * inertia / h).named("W_el", Unit::MM3);
    let plastic = (b * tf * (h - tf) + tw * inner.squared() / 4.0 + n(2.0) * fillet * arm).named("W_pl", Unit::MM3);
    let aside = tw + off;
    let centre =
        ((tf * b.squared() + inner * tw.squared() / 2.0 + n(2.0) * fillet * aside) / area).named("c", Unit::MM);
    let about_back =
        n(2.0) * tf * b.cubed() / 3.0 + inner * tw.cubed() / 3.0 + n(2.0) * (own + fillet * aside.squared());
    let minor = (about_back - area * centre.squared()).named("I_z", Unit::MM4);
    let shear_area = (area - n(2.0) * b * tf + (tw + i.root) * tf).named("A_v", Unit::MM2);
    let torsion = ((n(2.0) * b * tf.cubed() + (h - tf) * tw.cubed()) / 3.0).named("I_t", Unit::MM4);
    let (flange, web) = (b - tw / 2.0, h - tf);
    let warping = (tf * flange.cubed() * web.squared() / 12.0
        * ((n(3.0) * flange * tf + n(2.0) * web * tw) / (n(6.0) * flange * tf + web * tw))
        / 1000.0)
        .named("I_w/1000 mm²", Unit::MM4);
    SteelFigures { area, inertia, elastic, plastic, minor, shear_area, torsion, warping }
}

/// Figures of a rectangular hollow section.
///
/// # Source
/// EN 10219-2:2006, Annex B (area, inertia and plastic modulus with rounded corners; torsion as a thin closed wall); shear
/// area EN 1993-1-1:2005, 6.2.6(3)f. From memory, derived again.
/// # Symbols
/// h depth, b width, t wall, r_o outer radius; inner radius r_o − t.
/// # Gives
/// As [`section_i`]; no warping.
/// # Not for
/// Open or slotted sections.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 100 × 50 × 4, r_o 8: A = 4·2·(150 − 8) − 0.858·(64 − 16) = 1095 mm² (ST-K-RHS).
pub fn section_hollow<N: Number>(i: &HollowSides<N>) -> SteelFigures<N> {
    let n = N::constant;
    let (h, b, t) = (i.depth, i.width, i.wall);
    let inside = (i.outside - t).max(n(0.0)).named("r_i", Unit::MM);
    let (outer, inner) = (root_of(i.outside), root_of(inside));
    let (hi, bi) = ((h - n(2.0) * t).named("h_i", Unit::MM), (b - n(2.0) * t).named("b_i", Unit::MM));
    let area = (n(2.0) * t * (b + h - n(2.0) * t) - n(4.0) * (outer.0 - inner.0)).named("A", Unit::MM2);
    let about = |depth: N, width: N, depth_in: N, width_in: N| {
        let (out, inn) = (depth / 2.0 - outer.1, depth_in / 2.0 - inner.1);
        (width * depth.cubed() - width_in * depth_in.cubed()) / 12.0 - n(4.0) * (outer.2 + outer.0 * out.squared())
            + n(4.0) * (inner.2 + inner.0 * inn.squared())
    };
    let inertia = about(h, b, hi, bi).named("I_y", Unit::MM4);
    let minor = about(b, h, bi, hi).named("I_z", Unit::MM4);
    let elastic = (n(2.0) * inertia / h).named("W_el", Unit::MM3);
    let (out, inn) = (h / 2.0 - outer.1, hi / 2.0 - inner.1);
    let plastic = (b * h.squared() / 4.0 - bi * hi.squared() / 4.0 - n(4.0) * outer.0 * out + n(4.0) * inner.0 * inn)
        .named("W_pl", Unit::MM3);
    let shear_area = (area * h / (b + h)).named("A_v", Unit::MM2);
    let (hm, bm) = (h - t, b - t);
    let torsion = (n(2.0) * t * hm.squared() * bm.squared() / (hm + bm)).named("I_t", Unit::MM4);
    SteelFigures { area, inertia, elastic, plastic, minor, shear_area, torsion, warping: n(0.0) }
}

impl Shape {
    /// Figures with their working.
    ///
    /// # Errors
    /// Where a side lies outside the limits of its row.
    pub fn figures(&self) -> Result<(SteelFigures<f64>, Trace)> {
        match *self {
            Shape::I { depth, width, web, flange, root } => {
                let [depth, width, web, flange, root] = [depth, width, web, flange, root].map(Length::to_mm);
                let (i, t) = ISides { depth, width, web, flange, root }.traced(&SECTION_I)?;
                Ok((section_i(&i), t))
            }
            Shape::Channel { depth, width, web, flange, root } => {
                let [depth, width, web, flange, root] = [depth, width, web, flange, root].map(Length::to_mm);
                let (i, t) = ChannelSides { depth, width, web, flange, root }.traced(&SECTION_CHANNEL)?;
                Ok((section_channel(&i), t))
            }
            Shape::Hollow { depth, width, wall } => {
                let [depth, width, wall] = [depth, width, wall].map(Length::to_mm);
                let (i, t) = HollowSides { depth, width, wall, outside: corner(wall) }.traced(&SECTION_HOLLOW)?;
                Ok((section_hollow(&i), t))
            }
        }
    }
    /// What is left when rust has taken `loss` from every face that it reaches; the inside of a hollow section counts as
    /// closed. `None` where nothing is left.
    pub fn less(&self, loss: Length) -> Option<Shape> {
        let off = |side: Length, faces: f64| Some(side - faces * loss).filter(|s| Length::ZERO < *s);
        Some(match *self {
            Shape::I { depth, width, web, flange, root } => Shape::I {
                depth: off(depth, 2.0)?,
                width: off(width, 2.0)?,
                web: off(web, 2.0)?,
                flange: off(flange, 2.0)?,
                root,
            },
            Shape::Channel { depth, width, web, flange, root } => Shape::Channel {
                depth: off(depth, 2.0)?,
                width: off(width, 2.0)?,
                web: off(web, 2.0)?,
                flange: off(flange, 2.0)?,
                root,
            },
            Shape::Hollow { depth, width, wall } => {
                Shape::Hollow { depth: off(depth, 2.0)?, width: off(width, 2.0)?, wall: off(wall, 1.0)? }
            }
        })
    }
    /// Overall depth in the direction of the load.
    pub fn depth(&self) -> Length {
        match *self {
            Shape::I { depth, .. } | Shape::Channel { depth, .. } | Shape::Hollow { depth, .. } => depth,
        }
    }
    /// Overall width across the load.
    pub fn width(&self) -> Length {
        match *self {
            Shape::I { width, .. } | Shape::Channel { width, .. } | Shape::Hollow { width, .. } => width,
        }
    }
}

/// Outer radius of the corners of a cold formed hollow section, EN 10219-2: 2t to 6 mm, 2.5t to 10 mm, 3t above.
fn corner(wall_mm: f64) -> f64 {
    match wall_mm {
        t if t <= 6.0 => 2.0 * t,
        t if t <= 10.0 => 2.5 * t,
        t => 3.0 * t,
    }
}

const GEOMETRY: Source = Source {
    work: "elementary geometry; EN 1993-1-1:2005; Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed.",
    place: "shear area 6.2.6(3); torsion and warping of open thin sections, Tables 10.7 and 10.14; from memory",
};

/// Working of [`section_i`].
pub static SECTION_I: Working = Working {
    name: "steel/section-i",
    title: "Area, inertia and moduli of an I or H section.",
    source: GEOMETRY,
    not_for: "flanges that taper",
    inputs: ISides::INPUTS,
    outputs: SteelFigures::OUTPUTS,
    run: |g| section_i(&ISides::put(g)?).found(),
};

/// Working of [`section_channel`].
pub static SECTION_CHANNEL: Working = Working {
    name: "steel/section-channel",
    title: "Area, inertia and moduli of a channel with parallel flanges.",
    source: GEOMETRY,
    not_for: "flanges that taper; a load beside the shear centre, which twists it",
    inputs: ChannelSides::INPUTS,
    outputs: SteelFigures::OUTPUTS,
    run: |g| section_channel(&ChannelSides::put(g)?).found(),
};

/// Working of [`section_hollow`].
pub static SECTION_HOLLOW: Working = Working {
    name: "steel/section-hollow",
    title: "Area, inertia and moduli of a rectangular hollow section.",
    source: Source { work: "EN 10219-2:2006", place: "Annex B; from memory, derived again" },
    not_for: "open or slotted sections",
    inputs: HollowSides::INPUTS,
    outputs: SteelFigures::OUTPUTS,
    run: |g| section_hollow(&HollowSides::put(g)?).found(),
};
