//! From the wall to the outlet: what is dug for the pipe, and what is in its way?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Volume, distance, segments_cross};
use groundhold_surface::Tin;

use crate::findings::{COVER_SMALL, OUTLET_BEYOND_SURVEY, OUTLET_BURIED, PIPE_ABOVE_GROUND, PIPE_UNDER_WALL};
use crate::linear::integral;
use crate::{DrainCase, InvertPoint, PipeTrench, WallLine};

/// Ground so far above an open end buries it; a pipe so far above the ground hangs.
const NOTICED: Length = Length::mm(150.0);

/// Cover over the crown under grass. Common practice, no source.
const COVER: Length = Length::mm(300.0);
/// So near to its open end a pipe may lie shallow, m.
const NEAR_OUTLET: f64 = 1.5;

/// The stretch from the wall to the outlet.
pub(crate) struct Leg(Option<(InvertPoint, InvertPoint)>);

/// Ground and invert at a place on the leg: distance, ground level, invert.
type Crossed = (f64, Option<f64>, f64);

impl Leg {
    pub(crate) fn of(points: &[InvertPoint]) -> Leg {
        match points {
            [.., a, b] if b.wall_chainage.is_none() => Leg(Some((*a, *b))),
            _ => Leg(None),
        }
    }
    fn crossed(&self, ground: &Tin) -> Vec<Crossed> {
        let Some((a, b)) = self.0 else { return vec![] };
        let length = distance(a.at, b.at).to_m();
        let invert = |d: f64| a.invert.to_m() + (b.invert - a.invert).to_m() * (d / length).clamp(0.0, 1.0);
        let section = ground.section(&[a.at, b.at]);
        section.iter().map(|s| (s.chainage.to_m(), s.level.map(Level::to_m), invert(s.chainage.to_m()))).collect()
    }
    pub(crate) fn trench(&self, case: &DrainCase, diameter: Length) -> PipeTrench {
        let length = self.0.map_or(Length::ZERO, |(a, b)| b.chainage - a.chainage);
        let (under, wide) = (case.bed.under.to_m(), case.bed.trench.to_m());
        let stone_high = under + diameter.to_m() + case.bed.over.to_m();
        let (mut dug, mut stone, mut known, mut deepest) = (0.0, 0.0, 0.0, 0.0_f64);
        for w in self.crossed(case.ground).windows(2) {
            let (Some(g0), Some(g1)) = (w[0].1, w[1].1) else { continue };
            let run = w[1].0 - w[0].0;
            let depths = (g0 - w[0].2 + under, g1 - w[1].2 + under);
            let limits = [depths, (0.0, 0.0), (stone_high, stone_high)];
            dug += integral(run, limits, |[d, _, _]| d.max(0.0)) * wide;
            stone += integral(run, limits, |[d, _, s]| d.max(0.0).min(s)) * wide;
            known += run;
            deepest = deepest.max(depths.0).max(depths.1);
        }
        let radius = 0.5 * diameter.to_m();
        let pipe = std::f64::consts::PI * radius * radius * known;
        PipeTrench {
            length,
            deepest: Length::m(deepest),
            dug: Volume::m3(dug),
            stone: Volume::m3((stone - pipe).max(0.0)),
            put_back: Volume::m3(dug - stone),
            beyond_survey: Length::m((length.to_m() - known).max(0.0)),
        }
    }
    pub(crate) fn remarks(
        &self,
        case: &DrainCase,
        wall: &WallLine,
        trench: &PipeTrench,
        joins: bool,
        diameter: Length,
    ) -> Vec<Finding> {
        let Some((a, b)) = self.0 else { return vec![] };
        let mut said = vec![];
        let here = || Place::on(&wall.id, "outlet pipe");
        if !joins
            && let Some(level) = case.ground.level_at(b.at)
            && level - b.invert > NOTICED
        {
            let says = format!("The outlet lies {} below the ground there.", case.units.length(level - b.invert));
            said.push(Finding::new(&OUTLET_BURIED, here(), says));
        }
        let lowest = self.crossed(case.ground).into_iter().filter_map(|(d, g, z)| g.map(|g| (d, z - g)));
        if let Some((d, over)) = lowest.max_by(|x, y| x.1.total_cmp(&y.1))
            && over > NOTICED.to_m()
        {
            let says = format!(
                "{} from the wall the pipe would hang {} above the ground.",
                case.units.run(Length::m(d)),
                case.units.length(Length::m(over))
            );
            said.push(Finding::new(&PIPE_ABOVE_GROUND, here(), says));
        }
        said.extend(self.cover(case, wall, joins, diameter));
        if trench.beyond_survey > Length::mm(50.0) {
            let says =
                format!("{} of the way to the outlet lies outside the survey.", case.units.run(trench.beyond_survey));
            said.push(Finding::new(&OUTLET_BEYOND_SURVEY, here(), says));
        }
        for other in &case.walls {
            let crossing = other.stations.windows(2).find_map(|w| segments_cross(a.at, b.at, w[0].at, w[1].at));
            if let Some((t, _)) = crossing {
                let invert = a.invert + (b.invert - a.invert) * t;
                let says =
                    format!("The pipe passes under {} with its invert at {}.", other.id, case.units.level(invert));
                said.push(Finding::new(&PIPE_UNDER_WALL, here(), says));
            }
        }
        said
    }

    /// Where the crown lies too shallow, away from the open end.
    fn cover(&self, case: &DrainCase, wall: &WallLine, joins: bool, diameter: Length) -> Option<Finding> {
        let (a, b) = self.0?;
        // A short leg lies in the backfill of the wall and of the shaft.
        if (b.chainage - a.chainage).to_m() < NEAR_OUTLET {
            return None;
        }
        let until = (b.chainage - a.chainage).to_m() - if joins { 0.0 } else { NEAR_OUTLET };
        let cover = |c: &Crossed| Some((c.0, c.1? - c.2 - diameter.to_m()));
        let crossed = self.crossed(case.ground);
        let under = crossed.iter().filter(|c| c.0 <= until).filter_map(cover).filter(|c| c.1 >= 0.0);
        let (d, least) = under.min_by(|x, y| x.1.total_cmp(&y.1)).filter(|c| c.1 < COVER.to_m())?;
        let says = format!(
            "{} from the wall the outlet pipe has {} over its crown; {} is usual.",
            case.units.run(Length::m(d)),
            case.units.length(Length::m(least)),
            case.units.length(COVER)
        );
        let lay = format!("Lay it {} deeper there, or slab it over.", case.units.length(COVER - Length::m(least)));
        Some(Finding::new(&COVER_SMALL, Place::on(&wall.id, "outlet pipe"), says).with_remedy(Remedy::theirs(lay)))
    }
}
