//! Does each panel carry the soil behind it, sit on its flanges, and do the flanges hold it?

use groundhold_earth::Method as Theory;
use groundhold_member::concrete::{self, Strip};
use groundhold_member::panel::{check_concrete_panel, panel};
use groundhold_member::steel::Rules;
use groundhold_member::timber::{
    Board as Spanning, Code, Duration, EN_BEARING, EnBearing, GAMMA_M, Grade, NDS_BEARING, NdsBearing, Section,
    check_board, en_bearing, kmod, nds_bearing,
};
use groundhold_quantity::{Area, Force, Length, Pressure};
use groundhold_working::{Refused, Trace, Unit};

use super::posts::{factors, left};
use crate::posted::carried::{Carried, carried, keep_worse};
use crate::posted::embedment::over;
use crate::posted::loads::{self, UNFACTORED};
use crate::systems::steel_posts::{Carries, Made, SteelPost, SteelPostSpec};
use crate::workings::{FLANGE, flange};
use crate::{Bay, Board, Check, CheckKind, Layout, Line, LoadCase, WallCase, timber_rules};

/// A panel may bow by its span over this. Common practice, no source.
const BOW_LIMIT: f64 = 100.0;

/// A panel in one state with what it carries.
struct Asked<'a> {
    case: &'a WallCase,
    spec: &'a SteelPostSpec,
    bay: &'a Bay,
    /// The weaker of the two posts beside it.
    post: &'a SteelPost,
    state: LoadCase,
    carried: Carried,
    /// From the middle of one seat to that of the other.
    span: Length,
}

/// The worst panel of every bay in every state.
///
/// # Errors
/// As the pressure theory or the rules refuse.
pub(crate) fn checks(case: &WallCase, spec: &SteelPostSpec, layout: &Layout) -> Result<Vec<Check>, Refused> {
    let line = Line::new(&case.stations);
    let mut all = vec![];
    for bay in &layout.bays {
        let slope = line.at((bay.chainage.0 + bay.chainage.1) / 2.0).slope_behind;
        for state in loads::states(case).into_iter().filter(|s| *s != LoadCase::Wind) {
            let Some(active) = loads::active(case, &UNFACTORED, state, Theory::Rankine, bay.retained, slope)? else {
                continue;
            };
            let mut of_bay: Vec<Check> = vec![];
            for board in layout.boards.iter().filter(|b| b.from_post == bay.from_post) {
                let Some(carried) = carried(case, &active, bay, board, state) else { continue };
                for check in of_panel(case, spec, layout, bay, board, state, carried)? {
                    keep_worse(&mut of_bay, check);
                }
            }
            all.extend(of_bay);
        }
    }
    Ok(all)
}

fn of_panel(
    case: &WallCase,
    spec: &SteelPostSpec,
    layout: &Layout,
    bay: &Bay,
    board: &Board,
    state: LoadCase,
    carried: Carried,
) -> Result<Vec<Check>, Refused> {
    let near = [bay.from_post, bay.to_post].map(|n| {
        let end = n == 1 || n == layout.posts.len();
        if end { spec.at_end() } else { &spec.post }
    });
    let seats = near.map(|p| spec.seat(p).max(Length::ZERO));
    let post = if near[1].flange().0 < near[0].flange().0 { near[1] } else { near[0] };
    let span = (board.length - seats[0] / 2.0 - seats[1] / 2.0).max(Length::mm(100.0));
    let seat = seats[0].min(seats[1]);
    let a = Asked { case, spec, bay, post, state, carried, span };
    let mut all = match &spec.panel.made {
        Made::Timber { grade, .. } => timber(&a, grade, seat)?,
        Made::Concrete { carries } => cast(&a, carries.as_ref())?,
    };
    all.extend(flange_of(&a, board)?);
    Ok(all)
}

impl Asked<'_> {
    fn check(
        &self,
        kind: CheckKind,
        method: &'static str,
        (demand, capacity, unit): (f64, f64, Unit),
        traces: Vec<Trace>,
    ) -> Check {
        Check {
            kind,
            on: format!("bay {}", self.bay.number),
            case: self.state,
            method,
            basis: self.case.basis.key,
            demand,
            capacity,
            unit,
            utilisation: over(demand, capacity),
            traces: traces.into_iter().chain([self.carried.trace.clone()]).collect(),
            governs: crate::loads::governs(self.case, self.state),
        }
    }
    /// Push of one end of the panel on its post, with factors on what stays and on what comes and goes.
    fn reaction(&self, (stays, goes): (f64, f64)) -> Force {
        (self.carried.permanent * stays + self.carried.variable * goes) * (self.span / 2.0)
    }
}

fn timber(a: &Asked, grade: &'static Grade, seat: Length) -> Result<Vec<Check>, Refused> {
    let panel = &a.spec.panel;
    let spanning = Spanning {
        section: Section::rectangle(panel.height, panel.thickness),
        bay: a.span,
        bays: 1,
        permanent: a.carried.permanent,
        variable: a.carried.variable,
        lasting: timber_rules::lasting(a.case, a.state),
        bow_limit: BOW_LIMIT,
    };
    let code = timber_rules::code(a.case, a.state, grade);
    let found = check_board(&spanning, grade, &code)?;
    let (b, s, bow) = (&found.strength.bending, &found.strength.shear, &found.bow);
    let with = |t: &Trace| vec![t.clone(), found.effects_trace.clone()];
    let mut all = vec![
        a.check(
            CheckKind::BoardBending,
            code.words(),
            (b.demand.to_knm(), b.capacity.to_knm(), Unit::KNM),
            with(&b.trace),
        ),
        a.check(CheckKind::BoardShear, code.words(), (s.demand.to_kn(), s.capacity.to_kn(), Unit::KN), with(&s.trace)),
    ];
    if !loads::is_accident(a.case, a.state) {
        let figures = (bow.last.to_mm(), bow.allowed.to_mm(), Unit::MM);
        all.push(a.check(CheckKind::BoardBow, "final bow with creep", figures, with(&bow.trace)));
    }
    all.extend(pressed(a, grade, &code, seat)?);
    Ok(all)
}

/// The end of a timber panel pressed across its grain by the flange; left out where the grade gives no value for it.
fn pressed(a: &Asked, grade: &'static Grade, code: &Code, seat: Length) -> Result<Option<Check>, Refused> {
    let seat_mm = seat.to_mm();
    if grade.bearing <= Pressure::ZERO || seat_mm < 5.0 {
        return Ok(None);
    }
    let loads = code.loads();
    let variable = a.carried.variable.si() > 0.0;
    let stays = if variable { loads.permanent } else { loads.permanent_alone };
    let force = a.reaction((stays, loads.variable)).to_kn();
    let breadth = a.spec.panel.height.to_mm();
    let lasting = if variable { timber_rules::lasting(a.case, a.state) } else { Duration::Permanent };
    let strength = grade.bearing.to_mpa();
    let (capacity, trace) = match *code {
        Code::En1995 { service_class, .. } => {
            let kmod = kmod(service_class, lasting);
            let (i, t) =
                EnBearing { force, breadth, length: seat_mm, beyond: 0.0, kc90: 1.0, strength, kmod, gamma_m: GAMMA_M }
                    .traced(&EN_BEARING)?;
            (en_bearing(&i).capacity, t)
        }
        Code::Nds { wet, .. } => {
            let cm = if wet { 0.67 } else { 1.0 };
            let (i, t) = NdsBearing { force, breadth, length: seat_mm, strength, cm, ct: 1.0 }.traced(&NDS_BEARING)?;
            (nds_bearing(&i).capacity, t)
        }
        Code::As1720 { .. } => return Ok(None),
    };
    Ok(Some(a.check(
        CheckKind::Seat,
        "pressed across the grain by the flange",
        (force, capacity, Unit::KN),
        vec![trace],
    )))
}

/// A cast panel by what its maker states, or by its steel with EN 1992-1-1.
fn cast(a: &Asked, carries: Option<&Carries>) -> Result<Vec<Check>, Refused> {
    let height = a.spec.panel.height;
    let raised = factors(a.case, a.state, Rules::En1993);
    let pressure = |(stays, goes): (f64, f64)| (a.carried.permanent * stays + a.carried.variable * goes) / height;
    let Some(carries) = carries else { return Ok(vec![]) };
    match *carries {
        Carries::Stated { moment, shear, design } => {
            let (method, factors) = match design {
                true => ("its maker's design resistance, factored loads", raised),
                false => ("its maker's allowable resistance, loads as they are", (1.0, 1.0)),
            };
            let (m, v, trace) = panel(pressure(factors), a.span)?;
            let (m, v) = (m.to_knm() * height.to_m(), v.to_kn() * height.to_m());
            Ok(vec![
                a.check(CheckKind::PanelBending, method, (m, moment.to_knm(), Unit::KNM), vec![trace.clone()]),
                a.check(CheckKind::PanelShear, method, (v, shear.to_kn(), Unit::KN), vec![trace]),
            ])
        }
        Carries::Bars { count, diameter, cover, strength, yield_stress } => {
            let area = std::f64::consts::PI / 4.0 * diameter.to_mm() * diameter.to_mm() * f64::from(count);
            let strip = Strip {
                thickness: a.spec.panel.thickness,
                effective: a.spec.panel.thickness - cover - diameter / 2.0,
                steel_per_m: Area::mm2(area / height.to_m()),
                strength,
                yield_stress,
            };
            let asked = pressure(raised);
            let (found, trace) = check_concrete_panel(&strip, concrete::Rules::En1992, asked, 1.0, a.span)?;
            let method = "EN 1992-1-1, per metre of height";
            let (b, s) = (&found.bending, &found.shear);
            // Too little steel breaks without a warning: the moment that it holds then does not count in full.
            let short = found.least_steel.utilisation.max(1.0);
            let holds = (b.demand.to_knm(), b.capacity.to_knm() / short, Unit::KNM);
            Ok(vec![
                a.check(CheckKind::PanelBending, method, holds, vec![b.trace.clone(), trace.clone()]),
                a.check(
                    CheckKind::PanelShear,
                    method,
                    (s.demand.to_kn(), s.capacity.to_kn(), Unit::KN),
                    vec![s.trace.clone(), trace],
                ),
            ])
        }
    }
}

/// The flange that the panel leans on: the force of its end at the tip.
fn flange_of(a: &Asked, board: &Board) -> Result<Option<Check>, Refused> {
    let (shape, rust) = left(a.spec, a.post)?;
    let of = a.post;
    let (new, root) = of.flange();
    let lost = of.profile.shape.depth() - shape.depth();
    let thick = new - lost;
    let lever = of.outstand() - root * 0.8;
    let force = a.reaction(factors(a.case, a.state, of.rules)) / (board.top - board.bottom);
    let share = if of.rules == Rules::Aisc { 0.6 } else { 1.0 };
    let given = [force.to_kn_per_m(), lever.to_mm().max(1.0), thick.to_mm(), of.steel.yield_stress.to_mpa(), share];
    let (asked, holds) = flange(given[0], given[1], given[2], given[3], given[4]);
    let traces = std::iter::once(Trace::new(&FLANGE, given.map(Into::into).to_vec())).chain(rust).collect();
    Ok(Some(a.check(
        CheckKind::FlangeBending,
        "the panel at the tip of the flange, with what rust leaves",
        (asked, holds, Unit::KNM),
        traces,
    )))
}
