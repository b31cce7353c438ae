//! Situations beside every day: which are shown, which must be met, and that each asks at least what it should.

mod walls;

use groundhold_earth::basis::{EN1997_DA1, WORKING_STRESS};
use groundhold_earth::pressure::seismic::{Shaking, shaken};
use groundhold_earth::{Backfill, Soil, soil::class};
use groundhold_hold::systems::timber_posts::Ageing;
use groundhold_hold::{CheckKind, LoadCase, Verdict, hold};
use groundhold_member::timber::Durability;
use groundhold_quantity::{Length, Share};
use proptest::prelude::*;
use walls::{sand, spec, straight};

fn worst(v: &Verdict, kind: CheckKind, state: LoadCase) -> Option<f64> {
    v.checks.iter().filter(|c| c.kind == kind && c.case == state).map(|c| c.utilisation).reduce(f64::max)
}

#[test]
fn a_situation_that_is_not_asked_for_is_shown_and_does_not_decide() {
    let (_, v) = hold(&straight(4.8, 0.8, spec())).unwrap();
    for state in [LoadCase::WetWinter, LoadCase::MachineBehind, LoadCase::JustBuilt] {
        let of: Vec<_> = v.checks.iter().filter(|c| c.case == state).collect();
        assert!(!of.is_empty() && of.iter().all(|c| !c.governs), "{state:?}");
    }
    assert!(v.checks.iter().all(|c| c.case != LoadCase::Earthquake), "nobody said how hard the ground shakes");
    let machine = worst(&v, CheckKind::Embedment, LoadCase::MachineBehind).unwrap();
    assert!(machine > 1.0);
    assert!(v.findings.iter().any(|f| f.kind.code == "H-042" && f.says.contains("machine")), "{:?}", v.findings);
}

#[test]
fn a_situation_that_must_be_met_deepens_the_holes_until_it_is() {
    for basis in [&WORKING_STRESS, &EN1997_DA1] {
        let mut case = straight(4.8, 0.8, spec());
        case.basis = basis;
        let (before, _) = hold(&case).unwrap();
        case.must_meet = vec![LoadCase::MachineBehind];
        let (after, v) = hold(&case).unwrap();
        let deepest = |l: &groundhold_hold::Layout| l.posts.iter().map(|p| p.depth).reduce(Length::max).unwrap();
        assert!(deepest(&after) > deepest(&before) + Length::mm(50.0), "{}", basis.key);
        let u = worst(&v, CheckKind::Embedment, LoadCase::MachineBehind).unwrap();
        assert!(u <= 1.0 && u > 0.8, "{u}");
        assert!(v.checks.iter().filter(|c| c.case == LoadCase::MachineBehind).all(|c| c.governs));
    }
}

#[test]
fn the_thrust_while_the_ground_shakes_is_that_of_mononobe_and_okabe() {
    let mut case = straight(4.8, 1.0, spec());
    case.shaking = Some(Share::fraction(0.15));
    case.must_meet = vec![LoadCase::Earthquake];
    let (_, v) = hold(&case).unwrap();
    let shown = v.pushes.iter().find(|p| p.case == LoadCase::Earthquake && p.governs).unwrap();
    let backfill = Backfill::new(sand(), Length::m(1.0));
    let by_hand = shaken(&backfill, Shaking { horizontal: 0.15, vertical: 0.0 }).unwrap();
    assert!((shown.horizontal.to_kn_per_m() - by_hand.horizontal.to_kn_per_m()).abs() < 1e-9);
    assert!((shown.arm.to_m() - by_hand.arm.to_m()).abs() < 1e-9);
    assert!(v.findings.iter().any(|f| f.kind.code == "H-045"), "what the check leaves out is said");
    let still = v.pushes.iter().find(|p| p.case == LoadCase::Drained && p.governs).unwrap();
    assert!(shown.horizontal > still.horizontal && shown.arm > still.arm);
}

#[test]
fn fresh_clay_does_not_push_a_low_wall_and_softened_clay_pushes_harder() {
    let mut case = straight(4.8, 0.8, spec());
    case.retained_soil = Soil::of(class("firm-clay").unwrap());
    case.founding_soil = case.retained_soil.clone();
    let (_, v) = hold(&case).unwrap();
    let every_day = worst(&v, CheckKind::Embedment, LoadCase::Drained).unwrap();
    assert!(worst(&v, CheckKind::Embedment, LoadCase::JustBuilt).is_none_or(|u| u < every_day));
    assert!(worst(&v, CheckKind::Embedment, LoadCase::WetWinter).unwrap() > every_day);
}

#[test]
fn sapwood_posts_are_weaker_each_year_and_what_nobody_knows_is_asked() {
    let mut case = straight(4.8, 0.8, spec());
    let mut worst_in = |durability, years| {
        let s = walls::spec_of(&mut case);
        s.ageing = Ageing { durability, years, ..Ageing::NEW };
        hold(&case).unwrap().1
    };
    let bends = |v: &Verdict| worst(v, CheckKind::PostBending, LoadCase::Drained).unwrap();
    let new = worst_in(Some(Durability::Sapwood), 0);
    let (two, three) = (worst_in(Some(Durability::Sapwood), 2), worst_in(Some(Durability::Sapwood), 3));
    assert!(bends(&two) > bends(&new) && bends(&three) > bends(&two), "{} {}", bends(&two), bends(&three));
    let said = new.findings.iter().find(|f| f.kind.code == "H-044").unwrap();
    let year: u32 = said.says.split("about year ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    assert!((3..=6).contains(&year), "{year}");
    // Treated timber keeps its section for the life of its treatment.
    let treated = Some(Durability::Treated { life_years: 30.0 });
    assert_eq!(bends(&worst_in(treated, 29)), bends(&new));
    let unknown = worst_in(None, 15);
    assert_eq!(bends(&unknown), bends(&new));
    assert!(unknown.findings.iter().any(|f| f.kind.code == "H-043"));
    // Nothing is left: said, not a panic.
    let gone = worst_in(Some(Durability::Sapwood), 60);
    assert!(
        gone.findings.iter().any(|f| f.kind.code == "H-022" && f.says.contains("nothing is left")),
        "{:?}",
        gone.findings
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn harder_shaking_is_never_easier_and_no_situation_but_fresh_clay_is_easier_than_every_day(
        retained in 0.3..1.2f64, kh in 0.02..0.2f64, more in 0.01..0.1f64,
    ) {
        let mut case = straight(4.8, retained, spec());
        case.must_meet = vec![LoadCase::Earthquake, LoadCase::WetWinter, LoadCase::MachineBehind];
        case.spec = { let mut s = spec(); s.hole.depth = Some(Length::m(1.2)); groundhold_hold::Spec::TimberPosts(s) };
        let of = |share: f64| {
            let case = groundhold_hold::WallCase { shaking: Some(Share::fraction(share)), ..case.clone() };
            hold(&case).unwrap().1
        };
        let (less, harder) = (of(kh), of(kh + more));
        let at = |v: &Verdict, s| worst(v, CheckKind::Embedment, s).unwrap();
        prop_assert!(at(&harder, LoadCase::Earthquake) >= at(&less, LoadCase::Earthquake) - 1e-9);
        for state in [LoadCase::WetWinter, LoadCase::MachineBehind] {
            prop_assert!(at(&less, state) >= at(&less, LoadCase::Drained) - 1e-9);
        }
    }
}
