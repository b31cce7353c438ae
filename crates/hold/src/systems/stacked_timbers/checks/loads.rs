//! How much of the push does each row of ties take, and how much crosses each joint?

use groundhold_earth::{Active, Combination, Method as Theory};
use groundhold_quantity::{Length, Level, LineForce};
use groundhold_working::{Refused, Trace};

use crate::loads::is_accident;
use crate::posted::carried::integrated;
use crate::posted::loads::active;
use crate::systems::stacked_timbers::StackedTimberSpec;
use crate::{Ground, Line, LoadCase, Strip, WallCase};

/// A push per metre of wall: what stays, and what comes and goes.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Pushed {
    pub stays: f64,
    pub goes: f64,
}

impl Pushed {
    pub fn plus(self, other: Pushed) -> Pushed {
        Pushed { stays: self.stays + other.stays, goes: self.goes + other.goes }
    }
    pub fn times(self, k: f64) -> Pushed {
        Pushed { stays: self.stays * k, goes: self.goes * k }
    }
}

/// A row of ties with what it holds.
#[derive(Debug, Clone)]
pub(crate) struct RowLoad {
    /// The course of its heads, counted from 0 at the foot of the strip.
    pub course: usize,
    /// Middle of the ties below the ground behind.
    pub depth: Length,
    /// Push that it takes, kN per metre of wall.
    pub pushed: Pushed,
}

/// The soil behind a strip at the place where it holds most, in one state with one set of factors on the soil.
pub(crate) struct Behind<'a> {
    case: &'a WallCase,
    spec: &'a StackedTimberSpec,
    strip: &'a Strip,
    state: LoadCase,
    /// Ground there.
    pub ground: Ground,
    active: Active,
}

/// The place of a strip where it holds most.
pub(crate) fn spot(case: &WallCase, strip: &Strip) -> Ground {
    let line = Line::new(&case.stations);
    let places = line.over(strip.chainage.0, strip.chainage.1);
    let most = places.into_iter().reduce(|a, b| if b.retained() > a.retained() { b } else { a });
    most.unwrap_or_else(|| line.at(strip.middle()))
}

impl<'a> Behind<'a> {
    /// Nothing where nothing is held.
    ///
    /// # Errors
    /// As the pressure theory refuses.
    pub fn of(
        case: &'a WallCase,
        spec: &'a StackedTimberSpec,
        strip: &'a Strip,
        combination: &Combination,
        state: LoadCase,
    ) -> Result<Option<Behind<'a>>, Refused> {
        let ground = spot(case, strip);
        let found = active(case, combination, state, Theory::Rankine, ground.retained(), ground.slope_behind)?;
        Ok(found.map(|active| Behind { case, spec, strip, state, ground, active }))
    }
    /// The working of the pressure.
    pub fn trace(&self) -> Trace {
        self.active.trace.clone()
    }
    /// Below the ground behind.
    pub fn depth(&self, level: Level) -> Length {
        self.ground.behind - level
    }
    /// Underside of a course of the strip, counted from 0.
    pub fn bottom(&self, course: usize) -> Level {
        self.strip.base + self.spec.timber.height * course as f64
    }
    /// The push between two depths.
    fn between(&self, from: Length, to: Length) -> Pushed {
        let (from, to) = (from.max(Length::ZERO), to.min(self.ground.retained()));
        if to - from < Length::mm(0.1) {
            return Pushed::default();
        }
        let part = |l: LineForce| l.to_kn_per_m();
        let both = (part(self.active.permanent.horizontal), part(self.active.variable.horizontal));
        let share = if both.0 + both.1 > 0.0 { both.0 / (both.0 + both.1) } else { 1.0 };
        let soil = part(integrated(&self.active, from, to, |o| o.soil));
        let load = part(integrated(&self.active, from, to, |o| o.surcharge));
        let water = part(integrated(&self.active, from, to, |o| o.water));
        let accident = is_accident(self.case, self.state);
        Pushed {
            stays: soil + load * share + if accident { 0.0 } else { water },
            goes: load * (1.0 - share) + if accident { water } else { 0.0 },
        }
    }
    /// Wind on a fence on top: its force, and its height above the top of the wall.
    fn wind(&self) -> (f64, f64) {
        match (&self.case.fence, self.state) {
            (Some(f), LoadCase::Wind) => {
                (f.wind.to_kpa() * f.solidity.to_fraction() * f.height.to_m(), f.height.to_m() / 2.0)
            }
            _ => (0.0, 0.0),
        }
    }
    /// Rows from the highest down, each with the soil half way to the next; the lowest takes all below it, the highest all
    /// above it, and the wind on a fence with the lever that it has over the row.
    pub fn rows(&self) -> Vec<RowLoad> {
        let courses = self.spec.rows(self.strip.courses);
        let middle = |k: usize| self.depth(self.bottom(k) + self.spec.timber.height / 2.0);
        let depths: Vec<Length> = courses.iter().map(|k| middle(*k)).collect();
        let mut all = vec![];
        for (i, course) in courses.iter().enumerate() {
            let from = if i == 0 { Length::ZERO } else { (depths[i - 1] + depths[i]) / 2.0 };
            let to = depths.get(i + 1).map_or(self.ground.retained(), |d| (depths[i] + *d) / 2.0);
            let mut pushed = self.between(from, to);
            if i == 0 {
                let (force, arm) = self.wind();
                let above = (self.strip.top - self.bottom(*course)).to_m() + arm;
                let lever = depths.get(1).map_or(self.depth(self.strip.base) - depths[0], |d| *d - depths[0]).to_m();
                pushed.goes += force * (1.0 + above / lever.max(0.1));
            }
            all.push(RowLoad { course: *course, depth: depths[i], pushed });
        }
        all
    }
    /// The push above the joint under a course.
    pub fn above(&self, course: usize) -> Pushed {
        let (wind, _) = self.wind();
        let soil = self.between(Length::ZERO, self.depth(self.bottom(course)));
        soil.plus(Pushed { stays: 0.0, goes: wind })
    }
    /// The moment of that about the joint, kNm per metre, by slices.
    pub fn moment_above(&self, course: usize) -> Pushed {
        const SLICES: usize = 16;
        let joint = self.depth(self.bottom(course)).min(self.ground.retained());
        let (wind, arm) = self.wind();
        let lever = (self.strip.top - self.bottom(course)).to_m() + arm;
        let mut all = Pushed { stays: 0.0, goes: wind * lever };
        if joint <= Length::ZERO {
            return all;
        }
        let step = joint / SLICES as f64;
        for i in 0..SLICES {
            let (from, to) = (step * i as f64, step * (i + 1) as f64);
            let lever = (joint - (from + to) / 2.0).to_m();
            all = all.plus(self.between(from, to).times(lever));
        }
        all
    }
    /// The moment half way between two levels, a stretch of the face that is held at both: p a²/8 by its mean push.
    pub fn moment_between(&self, upper: Level, lower: Level) -> Pushed {
        let (from, to) = (self.depth(upper), self.depth(lower));
        self.between(from, to).times((to - from).to_m().max(0.0) / 8.0)
    }
}
