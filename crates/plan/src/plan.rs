//! The thread itself: from the job through the nine stages to a plan.

use groundhold_build as build;
use groundhold_dig::{Dug, Factors, dig, factors};
use groundhold_drain::Drained;
use groundhold_earth::basis::{BASES, basis};
use groundhold_earth::soil::{Bears, CLASSES, WALL_FRICTION_SHARE, class};
use groundhold_earth::{Basis, Soil};
use groundhold_finding::{Finding, Severity};
use groundhold_order as order;
use groundhold_quantity::{Angle, Length, Level, Share};
use groundhold_setout::SetOut;
use groundhold_shape as shape;

use crate::earthwork::{self, Moves};
use crate::job::{Job, PadLevel, PadWish};
use crate::survey::{Survey, survey};
use crate::trouble::{Part, Trouble};
use crate::walls::{Common, WallPlan, walls};
use crate::{cost, drainage, kept_clear, near, needs, programme, setting_out, standing, wish};

/// Everything that comes of a job.
#[derive(Debug, Clone)]
pub struct Plan {
    /// The job it was made from.
    pub job: Job,
    /// The ground as measured.
    pub survey: Survey,
    /// The soil below the topsoil.
    pub soil: Soil,
    /// Its bulking and compaction.
    pub factors: Factors,
    /// How margins are judged.
    pub basis: &'static Basis,
    /// The region pack.
    pub region: &'static build::Region,
    /// The ground as it will be.
    pub shaped: shape::Shaped,
    /// Walls in whole pieces, checked.
    pub walls: Vec<WallPlan>,
    /// Water.
    pub drained: Drained,
    /// Cut and fill by element, between the surfaces.
    pub moves: Vec<Moves>,
    /// The account of the dig.
    pub dug: Dug,
    /// Take-off, cutting lists, left-overs.
    pub take_off: order::TakeOff,
    /// The price.
    pub quote: order::Quote,
    /// Set-out tables.
    pub setout: SetOut,
    /// Order of work.
    pub programme: build::Programme,
    /// What speaks against it, gravest first.
    pub findings: Vec<Finding>,
}

impl Plan {
    /// The gravest weight among the findings.
    pub fn gravest(&self) -> Option<Severity> {
        self.findings.iter().map(|f| f.severity).max()
    }
    /// A wall by its id.
    pub fn wall(&self, id: &str) -> Option<&WallPlan> {
        self.walls.iter().find(|w| w.id == id)
    }
}

/// What is chosen by name in the job's head.
struct Chosen {
    basis: &'static Basis,
    region: &'static build::Region,
    soil: Soil,
    factors: Factors,
}

/// Plans a job. Pure: the same job gives the same plan, bit for bit, on every machine.
///
/// # Errors
/// Everything that stops it, each with its place in the job. What can be planned but should not be built is a finding.
pub fn plan(job: &Job) -> Result<Plan, Vec<Trouble>> {
    planned(job, Pace::Whole)
}

/// Plans a job while a finger drags. As [`plan`], but what is as it was in `last` is taken from there; walls that changed are
/// checked without slips of the bank, remedies and other methods beside the deciding one; and cutting lists are the first good
/// ones, not the proven best. What is shown of it must be planned in full once the finger is lifted.
///
/// # Errors
/// As [`plan`].
pub fn plan_quick(job: &Job, last: Option<&Plan>) -> Result<Plan, Vec<Trouble>> {
    planned(job, Pace::Quick(last))
}

/// How thoroughly it is planned.
#[derive(Debug, Clone, Copy)]
enum Pace<'a> {
    Whole,
    Quick(Option<&'a Plan>),
}

impl<'a> Pace<'a> {
    /// The survey of the last plan, if the ground was measured as it is now.
    fn known_survey(self, job: &Job) -> Option<&'a Survey> {
        let Pace::Quick(Some(last)) = self else { return None };
        (last.job.measure == job.measure && last.job.record == job.record).then_some(&last.survey)
    }
    fn walls(self) -> Option<&'a [WallPlan]> {
        match self {
            Pace::Whole => None,
            Pace::Quick(last) => Some(last.map_or(&[][..], |l| &l.walls)),
        }
    }
}

fn planned(job: &Job, pace: Pace) -> Result<Plan, Vec<Trouble>> {
    let chosen = chosen(job)?;
    let survey = match pace.known_survey(job) {
        Some(known) => known.clone(),
        None => survey(job)?,
    };
    let limits = limits(chosen.region);
    let shaped = shaped(job, &survey, chosen.factors, limits);
    let (soil, basis) = (&chosen.soil, chosen.basis);
    let common = Common { job, ground: &survey.ground, shaped: &shaped, soil, basis, quick: pace.walls() };
    let walls = walls(&common)?;
    let drained = drainage::drained(job, &survey.ground, &walls, &chosen.soil.name)?;
    let moves = earthwork::moves(&survey.ground, &shaped);
    let dug = dig(&dig_case(job, &chosen, &walls, &drained, &moves));
    let facts = programme::facts(job, &survey.ground, &shaped, &walls);
    let asked = build::check_region(chosen.region, &facts);
    let mut works = programme::works(job, &survey.ground, &shaped, &walls, &drained, &moves, &dug);
    works.approval_needed = asked.iter().any(|f| programme::APPROVALS.contains(&f.kind.code));
    let programme = build::plan_works(&works, &programme::crew(job))
        .map_err(|e| vec![Trouble::new(Part::Choice("order.crew"), e)])?;
    let sources = needs::Sources { job, shaped: &shaped, walls: &walls, drained: &drained, moves: &moves, dug: &dug };
    let effort = match pace {
        Pace::Whole => order::DEFAULT_EFFORT,
        Pace::Quick(_) => order::Effort { nodes: 0, steps: 0 },
    };
    let (take_off, quote) = ordered(&sources, &programme, effort);
    let setout = setting_out::set_out(job, &survey.ground, &shaped, &walls);

    let mut findings = survey.findings.clone();
    findings.extend(shaped.findings.iter().cloned());
    findings.extend(walls.iter().flat_map(|w| w.verdict.findings.clone()));
    findings.extend(near::check(job, &survey.ground, &shaped, &walls));
    findings.extend(kept_clear::check(job, &survey.ground, &shaped));
    findings.extend(standing::check(job, &walls, &survey.points));
    findings.extend(drained.findings.iter().cloned());
    findings.extend(dug.findings.iter().cloned());
    findings.extend(take_off.findings.iter().cloned());
    findings.extend(needs::much_concrete(&walls));
    findings.extend(order::lifting(&needs::lifted(&walls, &shaped), &order::LiftLimits::default()));
    findings.extend(setout.findings.iter().cloned());
    findings.extend(programme.findings.iter().cloned());
    findings.extend(asked);
    said_once(&mut findings);
    // A stable sort keeps the order of the stages within one weight.
    findings.sort_by_key(|f| std::cmp::Reverse(f.severity));
    Ok(Plan {
        job: job.clone(),
        survey,
        soil: chosen.soil,
        factors: chosen.factors,
        basis: chosen.basis,
        region: chosen.region,
        shaped,
        walls,
        drained,
        moves,
        dug,
        take_off,
        quote,
        setout,
        programme,
        findings,
    })
}

/// Findings of two stages that say the same of one place: the first of a pair gives way to the second.
const SAME: &[(&str, &str)] = &[
    ("B-009", "G-040"),
    ("B-010", "H-010"),
    ("B-013", "N-005"),
    ("B-013", "N-006"),
    ("B-015", "N-007"),
    ("B-019", "D-005"),
    ("B-017", "G-022"),
];

/// Leaves out what another stage has said already of the same element, or of the whole job.
fn said_once(findings: &mut Vec<Finding>) {
    let all: Vec<(&str, String)> = findings.iter().map(|f| (f.kind.code, f.place.element.clone())).collect();
    findings.retain(|f| {
        let twin = |(first, second): &(&str, &str)| {
            *first == f.kind.code
                && all.iter().any(|(code, element)| {
                    code == second && (*element == f.place.element || f.place.element.is_empty())
                })
        };
        !SAME.iter().any(twin)
    });
}

/// Plans a job and finds out what each remedy would cost, by planning it with the remedy taken.
///
/// # Errors
/// As [`plan`].
pub fn plan_priced(job: &Job) -> Result<Plan, Vec<Trouble>> {
    let mut planned = plan(job)?;
    cost::price_remedies(job, &mut planned);
    Ok(planned)
}

/// For each pad, the level at which cut and fill balance; `None` where there is none.
///
/// # Errors
/// As [`plan`].
pub fn balance(job: &Job) -> Result<Vec<(String, Option<Level>)>, Vec<Trouble>> {
    let chosen = chosen(job)?;
    let survey = survey(job)?;
    let limits = limits(chosen.region);
    Ok(job
        .pads
        .iter()
        .map(|pad| {
            let (level, found) = balanced(job, &survey, pad, chosen.factors, limits);
            (pad.id.clone(), found.map(|_| level))
        })
        .collect())
}

fn chosen(job: &Job) -> Result<Chosen, Vec<Trouble>> {
    let mut troubles = vec![];
    let about = &job.about;
    let found_basis = basis(&about.basis);
    if found_basis.is_none() {
        let known: Vec<&str> = BASES.iter().map(|b| b.key).collect();
        let says = format!("found `{}`, expected one of {}", about.basis, known.join(", "));
        troubles.push(Trouble::new(Part::Choice("job.basis"), says));
    }
    let region = build::region(&about.region);
    if region.is_none() {
        let known: Vec<&str> = build::REGIONS.iter().map(|r| r.code).collect();
        let says = format!("found `{}`, expected one of {}", about.region, known.join(", "));
        troubles.push(Trouble::new(Part::Choice("job.region"), says));
    }
    let soil = soil(job).map_err(|t| troubles.push(t)).ok();
    match (found_basis, region, soil) {
        (Some(basis), Some(region), Some(soil)) => {
            let factors = factors(&soil.name).unwrap_or_else(|| groundhold_dig::FACTORS[1]);
            Ok(Chosen { basis, region, soil, factors })
        }
        _ => Err(troubles),
    }
}

/// Soil taken where the job names none: a poor one, so that nothing looks better than it is.
const UNTOLD: &str = "silty-clay";

fn soil(job: &Job) -> Result<Soil, Trouble> {
    let key = if job.ground.soil.is_empty() { UNTOLD } else { &job.ground.soil };
    let Some(class) = class(key) else {
        let known: Vec<&str> = CLASSES.iter().map(|c| c.key).collect();
        let says = format!("found `{key}`, expected a class told by hand: {}", known.join(", "));
        return Err(Trouble::new(Part::Choice("ground.soil"), says));
    };
    let mut soil = Soil::of(class);
    let measured = &job.ground.measured;
    if let Some(g) = measured.unit_weight {
        soil.unit_weight_saturated = soil.unit_weight_saturated.max(g);
        soil.unit_weight = g;
    }
    if let Some(phi) = measured.friction {
        soil.phi = phi;
        let delta = Angle::rad(phi.to_rad() * WALL_FRICTION_SHARE);
        (soil.delta_timber, soil.delta_concrete) = (delta, delta);
    }
    soil.cohesion = measured.cohesion.unwrap_or(soil.cohesion);
    soil.undrained = measured.undrained.or(soil.undrained);
    if !measured.source.is_empty() {
        soil.source = format!("{}; measured: {}", soil.source, measured.source);
    }
    soil.check().map_err(|e| Trouble::new(Part::Choice("ground.measured"), e))?;
    Ok(soil)
}

fn limits(region: &'static build::Region) -> shape::Limits {
    programme::limits(region)
}

fn shaped(job: &Job, survey: &Survey, factors: Factors, limits: shape::Limits) -> shape::Shaped {
    let level = |pad: &PadWish| balanced(job, survey, pad, factors, limits).0;
    let shaped = shape::shape(&survey.ground, &wish::wish(job, &level, limits));
    match standing::led_on(job, &shaped) {
        Some(led) => shape::shape(&survey.ground, &wish::wish(&led, &level, limits)),
        None => shaped,
    }
}

fn balanced(
    job: &Job,
    survey: &Survey,
    pad: &PadWish,
    factors: Factors,
    limits: shape::Limits,
) -> (Level, Option<groundhold_dig::Balanced>) {
    // While one pad is balanced, others that wait for their balance lie at the mean of their ground.
    let at = |level: Level| {
        let each = |p: &PadWish| if p.id == pad.id { level } else { earthwork::mean_level(&survey.ground, p) };
        let mut alone = job.clone();
        for p in alone.pads.iter_mut().filter(|p| p.id == pad.id) {
            p.level = PadLevel::At(level);
        }
        shape::shape(&survey.ground, &wish::wish(&alone, &each, limits))
    };
    earthwork::balanced_level(job, &survey.ground, pad, factors, &at)
}

fn dig_case(
    job: &Job,
    chosen: &Chosen,
    walls: &[WallPlan],
    drained: &Drained,
    moves: &[Moves],
) -> groundhold_dig::DigCase {
    let mut case = earthwork::base_case(job, chosen.factors);
    case.moved = earthwork::moved(job, moves);
    case.walls = drainage::zones(drained);
    case.trenches = drainage::trenches(drained);
    case.holes = walls.iter().map(|w| (w.id.clone(), w.layout.hole_spoil())).collect();
    case.fit_for_fill = matches!(chosen.soil.bears, Bears::Yes);
    case.made_ground = chosen.soil.class.is_some_and(|c| c.key == "made-ground");
    case.unsupported = programme::unsupported(chosen.region);
    case.open_cuts = walls
        .iter()
        .map(|w| groundhold_dig::OpenCut { element: w.of.clone(), on: String::new(), depth: w.layout.retained })
        .filter(|c| c.depth > Length::ZERO)
        .collect();
    case
}

fn ordered(
    sources: &needs::Sources,
    programme: &build::Programme,
    effort: order::Effort,
) -> (order::TakeOff, order::Quote) {
    let job = sources.job;
    let mut all = needs::materials(sources);
    all.extend(programme::labour(programme));
    let saw = order::Saw { kerf: job.order.kerf, trim: Length::ZERO };
    let on_hand: Vec<order::OnHand> = job
        .order
        .bought
        .iter()
        .map(|(item, units)| order::OnHand { item: item.clone(), stock_length: None, units: *units })
        .collect();
    let mut take_off = order::still_to_buy(&all, &job.order.prices, &saw, &on_hand, effort);
    if let Some(need) = needs::deliveries(job, &take_off) {
        let more = order::take_off(&[need], &job.order.prices, &saw);
        take_off.lines.extend(more.lines);
        take_off.findings.extend(more.findings);
    }
    let terms = order::Terms { overhead: Share::ZERO, margin: job.order.margin, tax: job.order.tax };
    let quote = order::quote(take_off.lines.iter().map(order::QuoteLine::from).collect(), &terms);
    (take_off, quote)
}
