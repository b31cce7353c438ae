//! What does a wall with a reinforced stem weigh, what holds its key, and what may be changed to mend it?

use groundhold_earth::Combination;
use groundhold_finding::Kind;
use groundhold_quantity::{Length, LineForce, trim};
use groundhold_working::{Refused, Trace};

use super::steel::Steel;
use super::{CONCRETE, CantileverSpec, Made, sections};
use crate::gravity::{Body, Course, Gravity, Spot, Way};
use crate::workings::{KEY, key};
use crate::{Check, CheckKind, Layout, LoadCase, Strip, Stuff, WallCase, findings};

/// The sizes with their steel; without it, the sections are not judged.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Laid<'a> {
    pub spec: &'a CantileverSpec,
    pub steel: Option<Steel>,
}

/// Retained height at which guides for garden walls of this kind stop. Common practice, no source.
const GUIDE: Length = Length::m(1.2);

/// Which checks of its sections make which finding.
const KINDS: &[(&[CheckKind], &Kind)] = &[
    (&[CheckKind::StemBending, CheckKind::StemShear], &findings::STEM_BREAKS),
    (
        &[CheckKind::ToeBending, CheckKind::ToeShear, CheckKind::HeelBending, CheckKind::HeelShear],
        &findings::FOOTING_BREAKS,
    ),
    (&[CheckKind::LeastSteel, CheckKind::Cover], &findings::STEEL_SCANT),
    (&[CheckKind::Anchorage], &findings::ANCHORAGE_SHORT),
];

impl Gravity for Laid<'_> {
    fn body(&self, strip: &Strip) -> Body {
        let s = self.spec;
        let footing = s.footing.to_m();
        let high = (strip.top - strip.base).to_m().max(footing + 0.01);
        let (foot, top) = (-s.stem.to_m(), -s.top_thickness().to_m());
        let heel = -strip.width.to_m();
        let course = |height, front, back, unit_weight, stuff, group| Course {
            height,
            front,
            back,
            unit_weight,
            stuff,
            group,
            joint_below: false,
        };
        Body {
            courses: vec![
                course(
                    (0.0, footing),
                    (s.toe.to_m(), s.toe.to_m()),
                    (heel, heel),
                    CONCRETE,
                    Stuff::Concrete,
                    "footing",
                ),
                course((footing, high), (0.0, 0.0), (foot, top), s.unit_weight(), s.stuff(), "stem"),
            ],
        }
    }
    fn key(&self, case: &WallCase, c: &Combination) -> Result<Option<(LineForce, Trace)>, Refused> {
        let s = self.spec;
        if s.key <= Length::ZERO {
            return Ok(None);
        }
        let soil = c.soil(&case.founding_soil);
        let (gamma, phi) = (soil.unit_weight.to_kn_per_m3(), soil.phi.to_deg());
        let held = key(gamma, phi.to_radians(), s.footing.to_m(), s.key.to_m(), 0.5) / c.earth_resistance;
        let given = vec![gamma.into(), phi.into(), s.footing.to_m().into(), s.key.to_m().into(), 0.5.into()];
        let trace = Trace::new(&KEY, given);
        trace.sheet()?;
        Ok(Some((LineForce::kn_per_m(held), trace)))
    }
    fn joint_friction(&self) -> f64 {
        0.6
    }
    fn drains_itself(&self) -> bool {
        false
    }
    fn guide(&self) -> (Length, &'static str) {
        (GUIDE, "garden walls with a reinforced stem")
    }
    fn widths(&self, _: &Strip) -> Vec<Length> {
        vec![]
    }
    fn given_width(&self) -> Option<Length> {
        self.spec.heel.map(|h| h + self.spec.stem)
    }
    fn ways(&self, layout: &Layout) -> Vec<Way> {
        let s = self.spec;
        let mm = |l: Length| trim(l.to_mm(), 0);
        let step = Length::mm(50.0);
        let wide = layout.strips.iter().map(|p| p.width).reduce(Length::max).unwrap_or(s.stem);
        let heel = wide - s.stem;
        let stem = match s.made {
            Made::Concrete => Way::lengths("stem", s.stem, step, Length::mm(500.0), |t| {
                format!("A stem {} mm thick instead of {} mm.", mm(t), mm(s.stem))
            }),
            Made::Block => Way {
                key: "stem",
                tries: [190.0, 240.0, 290.0]
                    .into_iter()
                    .map(Length::mm)
                    .filter(|t| *t > s.stem)
                    .map(|t| {
                        (format!("{} mm", mm(t)), format!("Blocks {} mm thick instead of {} mm.", mm(t), mm(s.stem)))
                    })
                    .collect(),
            },
        };
        vec![
            Way::lengths("heel", heel, step, Length::m(3.0), |h| {
                format!("A heel of {} mm instead of {} mm.", mm(h), mm(heel))
            }),
            Way::lengths("toe", s.toe, step, Length::m(1.5), |t| {
                format!("A toe of {} mm instead of {} mm.", mm(t), mm(s.toe))
            }),
            Way::lengths("key", s.key, step, Length::mm(500.0), |k| {
                format!("A key {} mm deep under the footing.", mm(k))
            }),
            stem,
            Way::lengths("footing", s.footing, step, Length::mm(600.0), |t| {
                format!("A footing {} mm thick instead of {} mm.", mm(t), mm(s.footing))
            }),
            self.closer(),
            self.thicker(),
            self.covered(),
        ]
    }
    fn own_checks(
        &self,
        case: &WallCase,
        spot: &Spot,
        state: LoadCase,
        c: &'static Combination,
    ) -> Result<Vec<Check>, Refused> {
        match &self.steel {
            Some(steel) => sections::checks(case, self, steel, spot, state, c),
            None => Ok(vec![]),
        }
    }
    fn own_kinds(&self) -> &'static [(&'static [CheckKind], &'static Kind)] {
        KINDS
    }
}

impl Laid<'_> {
    /// Bars closer together, where their distance was given.
    fn closer(&self) -> Way {
        let given = self.spec.every.unwrap_or_default();
        let tries = super::steel::distances(self.spec.made).iter().copied().filter(|e| *e < given);
        let says = |e: Length| {
            (format!("{} mm", trim(e.to_mm(), 0)), format!("Bars of the stem {} mm apart.", trim(e.to_mm(), 0)))
        };
        Way { key: "every", tries: tries.map(says).collect() }
    }
    /// Thicker bars, where their diameter was given.
    fn thicker(&self) -> Way {
        let Some(given) = self.spec.bar else { return Way { key: "bar", tries: vec![] } };
        let tries = super::steel::BARS.iter().copied().filter(|b| *b > given);
        let says = |b: Length| {
            (format!("{} mm", trim(b.to_mm(), 0)), format!("Bars of {} mm in the stem.", trim(b.to_mm(), 0)))
        };
        Way { key: "bar", tries: tries.map(says).collect() }
    }
    /// More cover, where it was given.
    fn covered(&self) -> Way {
        let Some(given) = self.spec.cover else { return Way { key: "cover", tries: vec![] } };
        Way::lengths("cover", given, Length::mm(5.0), Length::mm(80.0), |c| {
            format!("Cover of {} mm to the bars of the stem.", trim(c.to_mm(), 0))
        })
    }
}
