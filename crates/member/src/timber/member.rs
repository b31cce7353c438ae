//! Does a section of a grade carry its moment and shear, by the rules that grade belongs to?

use groundhold_quantity::{Force, Length, Moment, Pressure};
use groundhold_working::{Refused, Result, Trace};

use super::{
    Code, Duration, Effects, Family, Grade, MemberCheck, Section, Use, as1720, code::LoadFactors, en1995, nds,
};

/// One combination of actions.
#[derive(Clone, Copy)]
struct Combined {
    moment: Moment,
    shear: Force,
    duration: Duration,
    with_variable: bool,
}

/// Permanent load alone, and permanent with variable load where there is any: the longest load of the first and the
/// shortest of the second decide on the strength.
fn combinations(effects: &Effects, loads: LoadFactors) -> Vec<Combined> {
    let alone = Combined {
        moment: loads.permanent_alone * effects.permanent_moment,
        shear: loads.permanent_alone * effects.permanent_shear,
        duration: Duration::Permanent,
        with_variable: false,
    };
    if effects.variable_moment == Moment::ZERO && effects.variable_shear == Force::ZERO {
        return vec![alone];
    }
    let both = Combined {
        moment: loads.permanent * effects.permanent_moment + loads.variable * effects.variable_moment,
        shear: loads.permanent * effects.permanent_shear + loads.variable * effects.variable_shear,
        duration: effects.variable,
        with_variable: true,
    };
    vec![alone, both]
}

/// Bending and shear of a section under moments and shears that are not yet factored. `unheld` is the length over which
/// nothing holds a deep section sideways; zero where it is held or cannot tip (only AS 1720.1 uses it here).
///
/// # Errors
/// Where grade and rules do not belong together, or a value is out of range.
pub fn check_member(
    grade: &Grade,
    section: &Section,
    code: &Code,
    effects: &Effects,
    unheld: Length,
) -> Result<MemberCheck> {
    belongs(grade, code)?;
    let (mut bending, mut shear) = (None, None);
    for c in combinations(effects, code.loads()) {
        let (m, v) = one(grade, section, code, &c, unheld)?;
        bending = Some(worse(bending, m));
        shear = Some(worse(shear, v));
    }
    match (bending, shear) {
        (Some(bending), Some(shear)) => Ok(MemberCheck { bending, shear }),
        _ => Err(Refused::NoAnswer { working: en1995::EN_BENDING.name, why: "there is no load to judge".into() }),
    }
}

fn worse<Q>(before: Option<Use<Q>>, now: Use<Q>) -> Use<Q> {
    match before {
        Some(b) if now.utilisation <= b.utilisation => b,
        _ => now,
    }
}

fn belongs(grade: &Grade, code: &Code) -> Result<()> {
    let (fits, working) = match code {
        Code::En1995 { .. } => (grade.family == Family::En338, en1995::EN_BENDING.name),
        Code::Nds { .. } => (
            matches!(grade.family, Family::NdsDimension | Family::NdsSouthernPine | Family::NdsTimbers),
            nds::NDS_BENDING.name,
        ),
        Code::As1720 { .. } => (grade.family == Family::As1720, as1720::AS_BENDING.name),
    };
    if fits {
        return Ok(());
    }
    let why = format!("{} is an {}; it is not for use with {}", grade.name, grade.family.words(), code.words());
    Err(Refused::NoAnswer { working, why })
}

type Both = (Use<Moment>, Use<Force>);

fn one(grade: &Grade, section: &Section, code: &Code, c: &Combined, unheld: Length) -> Result<Both> {
    match *code {
        Code::En1995 { service_class, .. } => by_en(grade, section, en1995::kmod(service_class, c.duration), c),
        Code::Nds { wet, .. } => by_nds(grade, section, wet, c),
        Code::As1720 { wet, capacity, .. } => by_as(grade, section, (wet, capacity), c, unheld),
    }
}

fn use_of<Q>(demand: Q, capacity: Q, utilisation: f64, c: &Combined, trace: Trace) -> Use<Q> {
    Use { demand, capacity, utilisation, with_variable: c.with_variable, trace }
}

fn by_en(grade: &Grade, section: &Section, kmod: f64, c: &Combined) -> Result<Both> {
    let (b, bending) = en1995::EnBending {
        moment: c.moment.to_knm(),
        modulus: section.modulus_mm3(),
        depth: section.depth().to_mm(),
        strength: grade.bending.to_mpa(),
        kmod,
        gamma_m: en1995::GAMMA_M,
    }
    .traced(&en1995::EN_BENDING)?;
    let (v, shear) = en1995::EnShear {
        shear: c.shear.to_kn(),
        area: section.area().to_mm2(),
        shape: section.shear_shape(),
        strength: grade.shear.to_mpa(),
        kmod,
        gamma_m: en1995::GAMMA_M,
        kcr: en1995::KCR,
    }
    .traced(&en1995::EN_SHEAR)?;
    let (b, v) = (en1995::en_bending(&b), en1995::en_shear(&v));
    Ok((
        use_of(c.moment, Moment::knm(b.capacity), b.utilisation, c, bending),
        use_of(c.shear, Force::kn(v.capacity), v.utilisation, c, shear),
    ))
}

fn by_nds(grade: &Grade, section: &Section, wet: bool, c: &Combined) -> Result<Both> {
    let factors = nds::nds_factors(grade, section, wet);
    let cd = nds::cd(c.duration);
    let (b, bending) = nds::NdsBending {
        moment: c.moment.to_knm(),
        modulus: section.modulus_mm3(),
        strength: grade.bending.to_mpa(),
        cd,
        cm: factors.cm_bending,
        cf: factors.cf,
        cfu: factors.cfu,
    }
    .traced(&nds::NDS_BENDING)?;
    let (v, shear) = nds::NdsShear {
        shear: c.shear.to_kn(),
        area: section.area().to_mm2(),
        shape: section.shear_shape(),
        strength: grade.shear.to_mpa(),
        cd,
        cm: factors.cm_shear,
    }
    .traced(&nds::NDS_SHEAR)?;
    let (b, v) = (nds::nds_bending(&b), nds::nds_shear(&v));
    Ok((
        use_of(c.moment, Moment::knm(b.capacity), b.utilisation, c, bending),
        use_of(c.shear, Force::kn(v.capacity), v.utilisation, c, shear),
    ))
}

fn by_as(grade: &Grade, section: &Section, (wet, phi): (bool, f64), c: &Combined, unheld: Length) -> Result<Both> {
    let k12 = match as1720::slender(section, unheld.to_mm(), as1720::rho(grade)) {
        Some(s) => as1720::as_stability(&s.traced(&as1720::AS_STABILITY)?.0).k12,
        None => 1.0,
    };
    let (k1, k4) = (as1720::k1(c.duration), as1720::k4(grade, wet));
    let (b, bending) = as1720::AsBending {
        moment: c.moment.to_knm(),
        modulus: section.modulus_mm3(),
        strength: grade.bending.to_mpa(),
        phi,
        k1,
        k4,
        k6: 1.0,
        k9: 1.0,
        k12,
    }
    .traced(&as1720::AS_BENDING)?;
    let (v, shear) = as1720::AsShear {
        shear: c.shear.to_kn(),
        area: section.area().to_mm2(),
        shape: section.shear_shape(),
        strength: grade.shear.to_mpa(),
        phi,
        k1,
        k4,
        k6: 1.0,
    }
    .traced(&as1720::AS_SHEAR)?;
    let (b, v) = (as1720::as_bending(&b), as1720::as_shear(&v));
    Ok((
        use_of(c.moment, Moment::knm(b.capacity), b.utilisation, c, bending),
        use_of(c.shear, Force::kn(v.capacity), v.utilisation, c, shear),
    ))
}

/// Final bow over first bow under load that stays, by these rules: EN 1 + k_def, NDS K_cr, AS j₂.
pub fn creep_factor(code: &Code) -> f64 {
    match *code {
        Code::En1995 { service_class, .. } => 1.0 + en1995::kdef(service_class),
        Code::Nds { wet, .. } => nds::nds_creep(wet),
        Code::As1720 { wet, .. } => as1720::j2(wet),
    }
}

/// Modulus of elasticity to compute bows with: the mean one; for wet NDS dimension lumber with C_M.
pub fn stiffness(grade: &Grade, section: &Section, code: &Code) -> Pressure {
    match *code {
        Code::Nds { wet, .. } => nds::nds_stiffness(grade, &nds::nds_factors(grade, section, wet)),
        _ => grade.stiffness,
    }
}
