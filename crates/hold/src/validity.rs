//! Can this case be laid out at all, and if not, which value is wrong and what was expected?

use groundhold_quantity::{Length, Units};

use crate::{CaseError, Line, Station, WallCase};

impl WallCase {
    /// Checks what every system needs; each system checks its own sizes when it lays the wall out.
    ///
    /// # Errors
    /// [`CaseError`] names the first thing that is wrong.
    pub fn check(&self) -> Result<(), CaseError> {
        self.check_stations()?;
        self.check_corners()?;
        self.check_ground()?;
        self.check_loads()?;
        self.check_neighbours()?;
        self.check_posts()
    }
    /// A refusal in this wall's name.
    pub(crate) fn wrong(&self, what: impl Into<String>, found: impl Into<String>, expected: &str) -> CaseError {
        CaseError::Value { wall: self.id.clone(), what: what.into(), found: found.into(), expected: expected.into() }
    }
    /// A chainage in words.
    pub(crate) fn chainage(&self, c: Length) -> String {
        self.units.run(c)
    }
    fn check_stations(&self) -> Result<(), CaseError> {
        if self.stations.len() < 2 {
            return Err(CaseError::TooFewStations { wall: self.id.clone(), found: self.stations.len() });
        }
        for (i, s) in self.stations.iter().enumerate() {
            if let Some(what) = not_a_number(s) {
                let what = format!("{what} at station {}", i + 1);
                return Err(self.wrong(what, "not an ordinary number", "a number"));
            }
            if s.facing.length() < 1e-9 {
                return Err(self.wrong(format!("the facing at station {}", i + 1), "nothing", "a direction"));
            }
        }
        for (i, w) in self.stations.windows(2).enumerate() {
            if w[1].chainage - w[0].chainage < Length::mm(0.1) {
                return Err(CaseError::ChainageNotRising {
                    wall: self.id.clone(),
                    number: i + 2,
                    at: self.chainage(w[1].chainage),
                    before: self.chainage(w[0].chainage),
                });
            }
        }
        Ok(())
    }
    fn check_corners(&self) -> Result<(), CaseError> {
        let line = Line::new(&self.stations);
        match self.corners.iter().find(|c| !line.has_station(**c)) {
            Some(c) => Err(CaseError::CornerWithoutStation { wall: self.id.clone(), at: self.chainage(*c) }),
            None => Ok(()),
        }
    }
    fn check_ground(&self) -> Result<(), CaseError> {
        for soil in [&self.retained_soil, &self.founding_soil] {
            soil.check().map_err(|e| CaseError::Soil { wall: self.id.clone(), why: e.to_string() })?;
        }
        let Some(bank) = &self.bank else { return Ok(()) };
        let reads = bank.ground.len() >= 2
            && bank.ground.iter().all(|p| p.x.is_finite() && p.y.is_finite())
            && bank.ground.windows(2).all(|w| w[0].x <= w[1].x);
        if reads {
            Ok(())
        } else {
            Err(self.wrong("the section through the bank", "not a line", "at least two points, x never falling"))
        }
    }
    fn check_loads(&self) -> Result<(), CaseError> {
        let pressure = |v| Units::Metric.pressure(v);
        for l in &self.loads {
            let v = l.value.to_kpa();
            if !(0.0..=1000.0).contains(&v) {
                return Err(self.wrong(format!("the load of {}", l.what), pressure(l.value), "from 0 kPa to 1000 kPa"));
            }
            let ordered = Length::ZERO <= l.from && l.from < l.to;
            if !ordered {
                let found = format!("from {} to {}", self.units.length(l.from), self.units.length(l.to));
                return Err(self.wrong(
                    format!("the place of {}", l.what),
                    found,
                    "a near edge at or behind the wall line and a far edge beyond it",
                ));
            }
        }
        let Some(f) = &self.fence else { return Ok(()) };
        if !(0.0..=5.0).contains(&f.height.to_m()) {
            return Err(self.wrong("the fence's height", self.units.length(f.height), "from 0 m to 5 m"));
        }
        if !(0.0..=10.0).contains(&f.wind.to_kpa()) {
            return Err(self.wrong("the wind pressure", pressure(f.wind), "from 0 kPa to 10 kPa"));
        }
        if !(0.0..=1.0).contains(&f.solidity.to_fraction()) {
            return Err(self.wrong("the fence's solid share", format!("{}", f.solidity.to_fraction()), "from 0 to 1"));
        }
        Ok(())
    }
    fn check_neighbours(&self) -> Result<(), CaseError> {
        for n in &self.neighbours {
            if !(0.0..=1e4).contains(&n.distance.to_m()) || !n.chainage.is_finite() {
                let what = format!("the distance to {}", n.what);
                return Err(self.wrong(what, self.units.length(n.distance), "a distance of 0 m or more"));
            }
        }
        if !(0.0..=1.0).contains(&self.water.blocked.to_fraction()) {
            let found = format!("{}", self.water.blocked.to_fraction());
            return Err(self.wrong("the height of water behind the blocked drain", found, "a share from 0 to 1"));
        }
        Ok(())
    }
    fn check_posts(&self) -> Result<(), CaseError> {
        let depths = self.built.iter().map(|b| (b.chainage, b.depth, b.hole_diameter)).chain(
            self.changes
                .iter()
                .map(|c| (c.chainage, c.depth.unwrap_or(Length::m(0.5)), c.hole_diameter.unwrap_or(Length::m(0.3)))),
        );
        for (at, depth, hole) in depths.chain(self.refusals.iter().map(|r| (r.chainage, r.depth, Length::m(0.3)))) {
            let place = format!("of the post at chainage {}", self.chainage(at));
            if !(0.0..=6.0).contains(&depth.to_m()) {
                return Err(self.wrong(format!("the depth {place}"), self.units.length(depth), "from 0 m to 6 m"));
            }
            if !(0.05..=2.0).contains(&hole.to_m()) {
                return Err(self.wrong(format!("the hole {place}"), self.units.length(hole), "from 50 mm to 2 m"));
            }
        }
        Ok(())
    }
}

fn not_a_number(s: &Station) -> Option<&'static str> {
    let level = |l: groundhold_quantity::Level| l.is_finite() && l.to_m().abs() < 1e5;
    match () {
        () if !s.chainage.is_finite() || s.chainage.to_m().abs() > 1e5 => Some("the chainage"),
        () if !(s.at.x.is_finite() && s.at.y.is_finite()) => Some("the point"),
        () if !level(s.behind) => Some("the level behind"),
        () if !level(s.front) => Some("the level in front"),
        () if !level(s.wanted_top) => Some("the wanted top"),
        () if !s.slope_behind.is_finite() || s.slope_behind.to_ratio().abs() > 100.0 => Some("the slope behind"),
        () if !s.slope_front.is_finite() || s.slope_front.to_ratio().abs() > 100.0 => Some("the slope in front"),
        () if !(s.facing.x.is_finite() && s.facing.y.is_finite()) => Some("the facing"),
        () => None,
    }
}
