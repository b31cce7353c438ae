//! Which walls are the tests about? Builders of cases.
#![allow(dead_code, missing_docs, clippy::unwrap_used)]

use groundhold_earth::Soil;
use groundhold_hold::systems::timber_posts::*;
use groundhold_hold::*;
use groundhold_member::timber::{Grade, Section, grade};
use groundhold_quantity::{Angle, Length, Level, Point, Share, Slope, UnitWeight, Units, Vector};

pub fn mm(v: f64) -> Length {
    Length::mm(v)
}

pub fn c24(a: f64, b: f64) -> &'static Grade {
    grade("C24", &Section::rectangle(mm(a), mm(b))).unwrap()
}

/// 18 kN/m3, 30 degrees: the soil of the cases T1 to T12.
pub fn sand() -> Soil {
    Soil::given("sand", UnitWeight::kn_per_m3(18.0), UnitWeight::kn_per_m3(20.0), Angle::deg(30.0))
}

/// Posts 100x150 deep, boards 200x50 behind them, 2.4 m stock, 1.2 m bays, holes of 300 mm.
pub fn spec() -> TimberPostSpec {
    TimberPostSpec {
        post: PostTimber { breadth: mm(100.0), depth: mm(150.0), grade: c24(100.0, 150.0), treatment: "H5".into() },
        board: BoardTimber { thickness: mm(50.0), height: mm(200.0), grade: c24(50.0, 200.0), treatment: "H4".into() },
        spacing: mm(1200.0),
        boards: Boards::Behind,
        stock: vec![mm(2400.0)],
        bays_per_board: None,
        hole: HoleSpec { diameter: mm(300.0), depth: None, fill: Fill::Concrete, gravel_base: mm(100.0) },
        bury: Length::ZERO,
        fit: CourseFit::FromBury,
        board_gap: Length::ZERO,
        capping: None,
        screws: ScrewSpec { diameter: mm(6.0), length: mm(100.0), per_joint: 2 },
        neglect_top: Length::ZERO,
        lean: Slope::LEVEL,
        bow_limit: 150.0,
        ageing: Ageing::NEW,
    }
}

/// A station on a wall that runs east with its open side to the south.
pub fn station(chainage: f64, behind: f64, front: f64, top: f64) -> Station {
    Station {
        chainage: Length::m(chainage),
        at: Point::m(chainage, 0.0),
        behind: Level::m(behind),
        front: Level::m(front),
        slope_behind: Slope::LEVEL,
        slope_front: Slope::LEVEL,
        wanted_top: Level::m(top),
        facing: Vector::m(0.0, -1.0),
    }
}

pub fn case(stations: Vec<Station>, spec: TimberPostSpec) -> WallCase {
    WallCase {
        id: "W1".into(),
        stations,
        corners: vec![],
        spec: Spec::TimberPosts(spec),
        retained_soil: sand(),
        founding_soil: sand(),
        loads: vec![],
        fence: None,
        neighbours: vec![],
        bank: None,
        water: Water { drained: true, blocked: Share::fraction(1.0) },
        must_meet: vec![],
        shaking: None,
        basis: &groundhold_earth::basis::WORKING_STRESS,
        search_slip: false,
        built: vec![],
        refusals: vec![],
        changes: vec![],
        units: Units::Metric,
    }
}

/// The checks of situations that are not only shown beside.
pub fn asked(v: &Verdict) -> Vec<&Check> {
    v.checks.iter().filter(|c| !LoadCase::ON_REQUEST.contains(&c.case)).collect()
}

/// A wall of one height on level ground.
pub fn straight(length: f64, retained: f64, spec: TimberPostSpec) -> WallCase {
    let (b, f) = (100.0 + retained, 100.0);
    case(vec![station(0.0, b, f, b), station(length, b, f, b)], spec)
}

pub fn spec_of(case: &mut WallCase) -> &mut TimberPostSpec {
    let Spec::TimberPosts(s) = &mut case.spec else { panic!("these walls are of timber") };
    s
}
