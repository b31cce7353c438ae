//! The thread itself: from the job through the nine stages to a plan.

use groundhold_build as build;
use groundhold_dig::{Dug, Factors, dig, factors};
use groundhold_drain::{Drained, Pool};
use groundhold_earth::basis::{BASES, basis};
use groundhold_earth::soil::{Bears, CLASSES, WALL_FRICTION_SHARE, class};
use groundhold_earth::{Basis, Soil};
use groundhold_finding::{Finding, Severity};
use groundhold_order as order;
use groundhold_quantity::{Angle, Length, Level, Share};
use groundhold_setout::SetOut;
use groundhold_shape as shape;

use crate::again::Earlier;
use crate::as_found::{self, OldWallPlan};
use crate::digging::{self, Groundwork};
use crate::earthwork::{self, Moves};
use crate::job::{Job, PadLevel, PadWish};
use crate::survey::{Survey, survey};
use crate::trouble::{Part, Trouble};
use crate::walls::{Common, WallPlan, walls};
use crate::{
    beside, bodies, cost, drainage, existing, kept_clear, near, needs, programme, setting_out, standing,
    standing_water, start, undermined, wish,
};

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
    /// Walls that stand already, back-analysed, in the order of the job.
    pub old_walls: Vec<OldWallPlan>,
    /// Water.
    pub drained: Drained,
    /// Cut and fill by element, between the surfaces.
    pub moves: Vec<Moves>,
    /// The account of the dig.
    pub dug: Dug,
    /// Where the soil goes; not worked out in a quick plan.
    pub groundwork: Groundwork,
    /// Where rain stands on the finished ground, the deepest first; not worked out in a quick plan.
    pub pools: Vec<Pool>,
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
    planned(&Earlier::none(job), job, Pace::Whole)
}

/// Plans a job after an edit, with what the edit does not touch taken over from the plan before it. The same as [`plan`],
/// sooner.
///
/// # Errors
/// As [`plan`].
pub fn replan(before: &Plan, job: &Job) -> Result<Plan, Vec<Trouble>> {
    planned(&Earlier::of(job, before), job, Pace::Whole)
}

/// Plans a job while a finger drags. As [`plan`], but walls are checked without slips of the bank, remedies and other methods
/// beside the deciding one; and cutting lists are the first good ones, not the proven best. What is shown of it must be planned
/// in full once the finger is lifted.
///
/// # Errors
/// As [`plan`].
pub fn plan_quick(job: &Job) -> Result<Plan, Vec<Trouble>> {
    planned(&Earlier::none(job), job, Pace::Quick)
}

/// [`plan_quick`] after an edit, with what the edit does not touch taken over from the plan before it.
///
/// # Errors
/// As [`plan`].
pub fn replan_quick(before: &Plan, job: &Job) -> Result<Plan, Vec<Trouble>> {
    planned(&Earlier::of(job, before), job, Pace::Quick)
}

/// How thoroughly it is planned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Pace {
    Whole,
    Quick,
}

fn planned(earlier: &Earlier, job: &Job, pace: Pace) -> Result<Plan, Vec<Trouble>> {
    let chosen = chosen(job)?;
    let survey = earlier.survey().map_or_else(|| survey(job), |s| Ok(s.clone()))?;
    let limits = limits(chosen.region);
    let shaped = earlier.shaped().cloned().unwrap_or_else(|| shaped(job, &survey, chosen.factors, limits));
    let blocked = drainage::blocked(job, &survey.ground, &shaped);
    let common = Common {
        job,
        blocked: &blocked,
        ground: &survey.ground,
        shaped: &shaped,
        soil: &chosen.soil,
        basis: chosen.basis,
        slips: pace == Pace::Whole,
    };
    let walls = walls(&common, earlier)?;
    let drained = match earlier.drained(&walls) {
        Some(same) => same.clone(),
        None => drainage::drained(job, &survey.ground, &walls, &chosen.soil.name)?,
    };
    let moves = earthwork::moves(&survey.ground, &shaped);
    let mut case = dig_case(job, &chosen, &survey, &shaped, &walls, &drained, &moves);
    let mut dug = dig(&case);
    let (mut groundwork, mut pools, mut homeless) = (Groundwork::default(), vec![], vec![]);
    if pace == Pace::Whole {
        (groundwork, homeless) = digging::groundwork(job, &survey.ground, &shaped, &walls, &drained, &dug);
        case.carry = groundwork.carried.as_ref().and_then(|c| c.mean()).unwrap_or(case.carry);
        case.heap.from_crest = digging::toe_from_walls(&groundwork.stockpiled, &walls);
        dug = dig(&case);
        pools = standing_water::standing(&survey.ground, &shaped, &walls);
    }
    let facts = programme::facts(job, &survey.ground, &shaped, &walls);
    let asked = build::check_region(chosen.region, &facts);
    let mut works = programme::works(job, &survey.ground, &shaped, &walls, &drained, &moves, &dug);
    works.approval_needed = asked.iter().any(|f| programme::APPROVALS.contains(&f.kind.code));
    let programme = build::plan_works(&works, &programme::crew(job))
        .map_err(|e| vec![Trouble::new(Part::Choice("order.crew"), e)])?;
    let sources = needs::Sources { job, shaped: &shaped, walls: &walls, drained: &drained, moves: &moves, dug: &dug };
    let effort = match pace {
        Pace::Whole => order::DEFAULT_EFFORT,
        Pace::Quick => order::Effort { nodes: 0, steps: 0 },
    };
    let (take_off, quote) = ordered(&sources, &programme, effort);
    let setout = setting_out::set_out(job, &survey.ground, &shaped, &walls);

    let mut findings = survey.findings.clone();
    findings.extend(shaped.findings.iter().cloned());
    findings.extend(walls.iter().flat_map(|w| w.verdict.findings.clone()));
    findings.extend(near::check(job, &survey.ground, &shaped, &walls));
    findings.extend(kept_clear::check(job, &survey.ground, &shaped));
    findings.extend(existing::check(job, &survey.ground, &shaped, &chosen.soil));
    let old_walls = as_found::old_walls(job, &survey.ground, &chosen.soil, chosen.basis);
    findings.extend(as_found::check(job, &old_walls));
    let site = undermined::Site {
        job,
        ground: &survey.ground,
        shaped: &shaped,
        walls: &walls,
        soil: &chosen.soil,
        slips: pace == Pace::Whole,
    };
    findings.extend(undermined::check(&site));
    findings.extend(start::check(job, &walls));
    findings.extend(beside::check(job));
    findings.extend(standing::check(job, &walls, &survey.points));
    let from_drain = findings.len();
    findings.extend(drained.findings.iter().cloned());
    programme::rain_said(chosen.region, &mut findings[from_drain..]);
    findings.extend(standing_water::check(job, &survey.ground, &shaped, &drained, &pools));
    findings.extend(dug.findings.iter().cloned());
    findings.extend(homeless);
    findings.extend(take_off.findings.iter().cloned());
    findings.extend(needs::much_concrete(job.about.units, &walls));
    findings.extend(order::lifting(
        &needs::lifted(job.about.units, &walls, &shaped),
        &order::LiftLimits { units: job.about.units, ..order::LiftLimits::default() },
    ));
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
        old_walls,
        drained,
        moves,
        dug,
        groundwork,
        pools,
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
    ("H-032", "B-037"),
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

/// What a plan asked of `shape`: its wishes with every balanced pad at the level that was found.
pub fn wished(plan: &Plan) -> shape::Wish {
    let at = |p: &PadWish| {
        let found = plan.shaped.pads.iter().find(|q| q.id == p.id);
        found.map_or(earthwork::mean_level(&plan.survey.ground, p), |q| q.plane.level_at(q.polygon.centroid()))
    };
    wish::wish(&plan.job, &at, limits(plan.region))
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
    let level = |pad: &PadWish| solved(job, survey, pad, factors, limits);
    let shaped = shape::shape(&survey.ground, &wish::wish(job, &level, limits));
    match standing::led_on(job, &shaped) {
        Some(led) => shape::shape(&survey.ground, &wish::wish(&led, &level, limits)),
        None => shaped,
    }
}

/// The level of a pad that asks for one: where it balances, or where it is cheapest.
fn solved(job: &Job, survey: &Survey, pad: &PadWish, factors: Factors, limits: shape::Limits) -> Level {
    if pad.level == PadLevel::Cheapest {
        let at = |level: Level| alone_at(job, survey, pad, level, limits);
        return earthwork::cheapest_level(job, &survey.ground, pad, factors, &at);
    }
    balanced(job, survey, pad, factors, limits).0
}

/// The ground shaped with one pad at a level; others that wait for theirs lie at the mean of their ground.
fn alone_at(job: &Job, survey: &Survey, pad: &PadWish, level: Level, limits: shape::Limits) -> shape::Shaped {
    let each = |p: &PadWish| if p.id == pad.id { level } else { earthwork::mean_level(&survey.ground, p) };
    let mut alone = job.clone();
    for p in alone.pads.iter_mut().filter(|p| p.id == pad.id) {
        p.level = PadLevel::At(level);
    }
    shape::shape(&survey.ground, &wish::wish(&alone, &each, limits))
}

fn balanced(
    job: &Job,
    survey: &Survey,
    pad: &PadWish,
    factors: Factors,
    limits: shape::Limits,
) -> (Level, Option<groundhold_dig::Balanced>) {
    let at = |level: Level| alone_at(job, survey, pad, level, limits);
    earthwork::balanced_level(job, &survey.ground, pad, factors, &at)
}

fn dig_case(
    job: &Job,
    chosen: &Chosen,
    survey: &Survey,
    shaped: &shape::Shaped,
    walls: &[WallPlan],
    drained: &Drained,
    moves: &[Moves],
) -> groundhold_dig::DigCase {
    let mut case = earthwork::base_case(job, chosen.factors);
    let rock = digging::rock_cut(job, &survey.ground, shaped, moves);
    case.moved = earthwork::moved(job, moves, &rock);
    case.walls = drainage::zones(drained);
    case.trenches = drainage::trenches(drained);
    case.bodies = bodies::bodies(&survey.ground, walls);
    case.holes = walls.iter().map(|w| (w.id.clone(), w.layout.hole_spoil())).collect();
    case.fit_for_fill = matches!(chosen.soil.bears, Bears::Yes);
    case.made_ground = chosen.soil.class.is_some_and(|c| c.key == "made-ground");
    case.unsupported = programme::unsupported(chosen.region);
    let soil = &chosen.soil.name;
    case.excavated = digging::excavated(job, &survey.ground, walls, soil, case.made_ground, case.unsupported.as_ref());
    for (i, e) in case.excavated.iter().enumerate() {
        // Where the ramp parts a wall, each run has a face of its own.
        let run = |w: &groundhold_dig::WallDug| {
            w.wall == e.element || walls.iter().any(|p| p.id == w.wall && p.of == e.element)
        };
        let nth = case.excavated[..i].iter().filter(|b| b.element == e.element).count();
        if let Some(w) = case.walls.iter_mut().filter(|w| run(w)).nth(nth) {
            w.working_room = e.more;
        }
    }
    case.open_cuts = walls
        .iter()
        .map(|w| groundhold_dig::OpenCut { element: w.of.clone(), on: String::new(), depth: w.layout.retained })
        .filter(|c| c.depth > Length::ZERO)
        .collect();
    case
}

/// What lies on site: all that was bought, less what stands already.
fn on_hand(sources: &needs::Sources, saw: &order::Saw) -> Vec<order::OnHand> {
    let (job, used) = (sources.job, needs::standing(sources));
    if job.order.bought.is_empty() || used.is_empty() {
        return job.order.bought.clone();
    }
    let rest = order::left_over(&used, &job.order.prices, saw, &job.order.bought, order::DEFAULT_EFFORT);
    rest.into_iter().map(|l| order::OnHand { item: l.item, stock_length: l.stock_length, units: l.units }).collect()
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
    let on_hand = on_hand(sources, &saw);
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
