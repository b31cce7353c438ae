//! How many screws hold a board to its post, pulled out by the soil or carrying the board's weight?
//!
//! Boards behind the posts bear on them: the soil presses them home, and screws only keep them in place. Boards in front
//! of the posts hang on their screws: the soil pulls the screws out, for years, in wet timber.

use groundhold_quantity::{Density, Force, Length, Moment};
use groundhold_working::{Refused, Result, Trace};

use super::{
    en_lateral::{EN_SHEARED, EnSheared, en_sheared},
    en_withdrawal::{
        EN_DECLARED, EN_HEAD, EN_PULLED, EnAxial, EnDeclared, EnHead, EnPulled, GAMMA_JOINT, en_declared, en_head,
        en_pulled, too_short,
    },
    nds_lateral::{NDS_SHEARED, NdsSheared, nds_sheared},
    nds_withdrawal::{NDS_LAG_SCREW, NDS_WOOD_SCREW, NdsPulled, nds_lag_screw, nds_wet_screw, nds_wood_screw},
    screw::Screw,
};
use crate::timber::{Code, Duration, Grade, LoadFactors, cd, kmod};

/// The rules for fixings, with the timber that holds the point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rules {
    /// EN 1995-1-1.
    En1995 {
        /// 1 heated, 2 under a roof, 3 out of doors.
        service_class: u8,
        /// Characteristic density.
        density: Density,
    },
    /// National Design Specification.
    Nds {
        /// Wet in service.
        wet: bool,
        /// Specific gravity.
        gravity: f64,
    },
}

impl Rules {
    /// The rules that go with a grade. AS 1720.1 grades carry no density: give [`Rules::En1995`] with one instead.
    ///
    /// # Errors
    /// For a grade without density or specific gravity, and where grade and rules do not belong together.
    pub fn of(grade: &Grade, code: &Code) -> Result<Rules> {
        match *code {
            Code::En1995 { service_class, .. } if 0.0 < grade.density_char.si() => {
                Ok(Rules::En1995 { service_class, density: grade.density_char })
            }
            Code::Nds { wet, .. } if 0.0 < grade.gravity => Ok(Rules::Nds { wet, gravity: grade.gravity }),
            _ => Err(Refused::NoAnswer {
                working: EN_PULLED.name,
                why: format!("the grade table of {} gives no density; give one to judge screws", grade.name),
            }),
        }
    }
}

/// A board fixed to a post by screws through the board.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Joint {
    /// The screw.
    pub screw: Screw,
    /// Thickness of the board under the head.
    pub board: Length,
    /// Rules and timber.
    pub rules: Rules,
}

/// What gives way first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GivesWay {
    /// The thread pulls out.
    Thread,
    /// The head pulls through the board.
    Head,
    /// The timber crushes or the screw bends.
    Shear,
}

/// What a group of screws carries under these rules (design or allowable).
#[derive(Debug, Clone, PartialEq)]
pub struct Carries {
    /// All screws together.
    pub force: Force,
    /// What gives way first.
    pub by: GivesWay,
    /// Its working.
    pub trace: Trace,
    /// What was left out and must be known.
    pub note: String,
}

/// Screws judged.
#[derive(Debug, Clone, PartialEq)]
pub struct Hang {
    /// Pull on the joint, factored as the rules say.
    pub demand: Force,
    /// What its screws carry.
    pub carries: Carries,
    /// Demand over capacity.
    pub utilisation: f64,
    /// Screws that are enough; `None` where 20 are not.
    pub needed: Option<usize>,
    /// True where permanent and variable load together govern.
    pub with_variable: bool,
}

/// Most screws in one joint that [`hang`] looks for.
pub const MOST_SCREWS: usize = 20;

/// What a group of screws carries that the soil pulls out of the post.
///
/// # Errors
/// Where the thread grips too little, the screw is outside the formula and nothing is declared, or a value is out of range.
pub fn pulled_out(joint: &Joint, screws: usize, duration: Duration) -> Result<Carries> {
    match joint.rules {
        Rules::En1995 { service_class, density } => {
            let kmod = kmod(service_class, duration);
            let thread = en_thread(joint, screws as f64, density, kmod)?;
            let Some(declared) = joint.screw.declared_head else {
                return Ok(Carries {
                    note: "Head pull-through is not checked: no strength is declared.".into(),
                    ..thread
                });
            };
            let (i, trace) = EnHead {
                head: joint.screw.head.to_mm(),
                strength: declared.strength.to_mpa(),
                declared_density: declared.density_kg_per_m3,
                density: density.to_kg_per_m3(),
                screws: screws as f64,
                kmod,
                gamma_m: GAMMA_JOINT,
            }
            .traced(&EN_HEAD)?;
            let head = carries(en_head(&i), GivesWay::Head, trace);
            Ok(if head.force < thread.force { head } else { thread })
        }
        Rules::Nds { wet, gravity } => nds_thread(joint, screws, (wet, gravity), duration),
    }
}

fn carries(axial: EnAxial<f64>, by: GivesWay, trace: Trace) -> Carries {
    Carries { force: Force::n(axial.design), by, trace, note: String::new() }
}

fn en_thread(joint: &Joint, screws: f64, density: Density, kmod: f64) -> Result<Carries> {
    let (diameter, grip) = (joint.screw.diameter.to_mm(), joint.screw.grip(joint.board).to_mm());
    if let Some(why) = too_short(grip, diameter) {
        return Err(Refused::NoAnswer { working: EN_PULLED.name, why });
    }
    let density = density.to_kg_per_m3();
    let (axial, trace) = match joint.screw.declared_withdrawal {
        Some(d) => {
            let (i, trace) = EnDeclared {
                diameter,
                grip,
                strength: d.strength.to_mpa(),
                declared_density: d.density_kg_per_m3,
                density,
                angle: 90.0,
                screws,
                kmod,
                gamma_m: GAMMA_JOINT,
            }
            .traced(&EN_DECLARED)?;
            (en_declared(&i), trace)
        }
        None => {
            let (i, trace) = EnPulled { diameter, grip, density, angle: 90.0, screws, kmod, gamma_m: GAMMA_JOINT }
                .traced(&EN_PULLED)?;
            (en_pulled(&i), trace)
        }
    };
    Ok(carries(axial, GivesWay::Thread, trace))
}

fn nds_thread(joint: &Joint, screws: usize, (wet, gravity): (bool, f64), duration: Duration) -> Result<Carries> {
    let given = NdsPulled {
        gravity,
        diameter: joint.screw.diameter.to_inch(),
        grip: joint.screw.grip(joint.board).to_inch(),
        cd: cd(duration),
        cm: nds_wet_screw(wet),
    };
    // Wood screws go up to 24 gauge, 0.372 in; thicker ones are lag screws.
    let (axial, trace) = if given.diameter <= 0.38 {
        let (i, trace) = given.traced(&NDS_WOOD_SCREW)?;
        (nds_wood_screw(&i), trace)
    } else {
        let (i, trace) = given.traced(&NDS_LAG_SCREW)?;
        (nds_lag_screw(&i), trace)
    };
    Ok(Carries {
        force: Force::lbf(axial.allowable * screws as f64),
        by: GivesWay::Thread,
        trace,
        note: "Working of one screw; head pull-through is not checked.".into(),
    })
}

/// Judges a joint whose screws the soil pulls out (boards in front of posts). `permanent` and `variable` are the pull of
/// this board on this post, not factored: see `timber::BoardCheck::reaction`.
///
/// # Errors
/// As [`pulled_out`].
pub fn hang(
    joint: &Joint,
    screws: usize,
    (permanent, variable, lasting): (Force, Force, Duration),
    loads: LoadFactors,
) -> Result<Hang> {
    let mut combinations = vec![(loads.permanent_alone * permanent, Duration::Permanent, false)];
    if variable != Force::ZERO {
        combinations.push((loads.permanent * permanent + loads.variable * variable, lasting, true));
    }
    let mut worst: Option<Hang> = None;
    for (demand, duration, with_variable) in combinations {
        let carries = pulled_out(joint, screws, duration)?;
        let utilisation = demand / carries.force;
        let needed = needed(joint, demand, duration)?;
        let now = Hang { demand, carries, utilisation, needed, with_variable };
        worst = Some(match worst {
            None => now,
            Some(before) => {
                // More screws are never less; a joint that 20 cannot hold stays that way.
                let needed = before.needed.zip(now.needed).map(|(a, b)| a.max(b));
                Hang { needed, ..if before.utilisation < now.utilisation { now } else { before } }
            }
        });
    }
    worst.ok_or_else(|| Refused::NoAnswer { working: EN_PULLED.name, why: "there is no load to judge".into() })
}

fn needed(joint: &Joint, demand: Force, duration: Duration) -> Result<Option<usize>> {
    for screws in 1..=MOST_SCREWS {
        if demand <= pulled_out(joint, screws, duration)?.force {
            return Ok(Some(screws));
        }
    }
    Ok(None)
}

/// What one screw carries across its axis, board to post. `angle_deg` is the greatest angle between the force and the
/// grain of either piece (90 for a board's weight on a post: the grain of the board lies across it).
///
/// # Errors
/// Where the screw reaches less than 6 diameters into the post (EN 1995-1-1 8.7.1, NDS 12.1.5), or a value is out of range.
pub fn sheared(joint: &Joint, duration: Duration, angle_deg: f64) -> Result<Carries> {
    let screw = &joint.screw;
    let point = screw.length - joint.board;
    if point < 6.0 * screw.diameter {
        let why = format!(
            "the screw reaches {:.0} mm into the post; at least 6 diameters are wanted, {:.0} mm",
            point.to_mm(),
            6.0 * screw.diameter.to_mm()
        );
        let working = match joint.rules {
            Rules::En1995 { .. } => EN_SHEARED.name,
            Rules::Nds { .. } => NDS_SHEARED.name,
        };
        return Err(Refused::NoAnswer { working, why });
    }
    let (force, trace, note) = match joint.rules {
        Rules::En1995 { service_class, density } => {
            let density = density.to_kg_per_m3();
            let effective = 1.1 * screw.root.to_mm();
            let steel = screw.declared_yield.map_or(screw.steel.to_mpa(), |my| wire_of(my, effective));
            let (i, trace) = EnSheared {
                diameter: effective,
                board: joint.board.to_mm(),
                post: point.to_mm(),
                density,
                density_post: density,
                angle: angle_deg,
                angle_post: 0.0,
                steel,
                drilled: if effective <= 6.0 { 0.0 } else { 1.0 },
                withdrawal: 0.0,
                rope: 0.0,
                kmod: kmod(service_class, duration),
                gamma_m: GAMMA_JOINT,
            }
            .traced(&EN_SHEARED)?;
            (Force::n(en_sheared(&i).design), trace, "Without the rope effect.")
        }
        Rules::Nds { wet, gravity } => {
            let (i, trace) = NdsSheared {
                diameter: screw.root.to_inch(),
                side: joint.board.to_inch(),
                main: point.to_inch(),
                gravity_side: gravity,
                gravity_main: gravity,
                steel: nds_wire(screw.diameter.to_inch()),
                angle: angle_deg,
                cd: cd(duration),
                cm: nds_wet_screw(wet),
            }
            .traced(&NDS_SHEARED)?;
            (Force::lbf(nds_sheared(&i).allowable), trace, "Bending yield strength by NDS Appendix I.")
        }
    };
    Ok(Carries { force, by: GivesWay::Shear, trace, note: note.into() })
}

/// Wire strength in MPa that gives a declared yield moment by M_y = 0.3 f_u d^2.6.
fn wire_of(yield_moment: Moment, diameter_mm: f64) -> f64 {
    yield_moment.to_nm() * 1000.0 / (0.3 * groundhold_quantity::math::powf(diameter_mm, 2.6))
}

/// Bending yield strength of screws and nails by diameter, psi, NDS 2018 Table I1 (from memory).
fn nds_wire(diameter_in: f64) -> f64 {
    match diameter_in {
        d if d <= 0.142 => 100_000.0,
        d if d <= 0.177 => 90_000.0,
        d if d <= 0.236 => 80_000.0,
        d if d <= 0.273 => 70_000.0,
        d if d <= 0.344 => 60_000.0,
        _ => 45_000.0,
    }
}
