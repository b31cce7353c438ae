//! Which places are known, and which ask for what everywhere?

mod au_act;
mod au_nsw;
mod au_nt;
mod au_qld;
mod au_sa;
mod au_tas;
mod au_vic;
mod au_wa;
mod australia;
mod ca;
mod ca_bc;
mod ca_on;
mod canada;
mod generic;
mod ie;
mod kingdom;
mod nz;
mod uk_england;
mod uk_scotland;
mod uk_wales;
mod us_ibc;
mod us_model;

use crate::Region;

use generic::NOTHING_KNOWN;

pub(crate) use generic::EVERYWHERE;

/// The day of the snapshot.
pub(crate) const READ: &str = "2026-11-25";

/// Every region pack, by code.
pub static REGIONS: &[&Region] = &[
    &au_act::REGION,
    &au_nsw::REGION,
    &au_nt::REGION,
    &au_qld::REGION,
    &au_sa::REGION,
    &au_tas::REGION,
    &au_vic::REGION,
    &au_wa::REGION,
    &ca::REGION,
    &ca_bc::REGION,
    &ca_on::REGION,
    &generic::REGION,
    &ie::REGION,
    &nz::REGION,
    &uk_england::REGION,
    &uk_scotland::REGION,
    &uk_wales::REGION,
    &us_ibc::REGION,
    &us_model::REGION,
];

/// The pack of this code, if there is one.
pub fn region(code: &str) -> Option<&'static Region> {
    REGIONS.iter().find(|r| r.code == code).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_sorted_and_each_row_names_its_source() {
        assert!(REGIONS.windows(2).all(|w| w[0].code < w[1].code));
        for r in REGIONS {
            assert!(r.triggers.iter().all(|t| !t.source.is_empty() && !t.says.is_empty() && t.says.ends_with('.')));
            assert!(r.date_read.len() == 10 && region(r.code) == Some(*r));
            assert!(r.notes.iter().all(|n| n.ends_with('.')), "{}", r.code);
        }
        assert_eq!(region("atlantis"), None);
    }

    #[test]
    fn limits_of_steps_and_ramps_are_in_order() {
        for r in REGIONS {
            if let Some(s) = r.steps {
                for (least, most) in [s.riser, s.going, (s.two_r_plus_g.map(|x| x.0), s.two_r_plus_g.map(|x| x.1))] {
                    assert!(least.zip(most).is_none_or(|(l, m)| l < m), "{}", r.code);
                }
            }
            if let Some(p) = r.ramp {
                assert!(
                    p.rows.windows(2).all(|w| w[0].slope < w[1].slope && w[0].run_most >= w[1].run_most),
                    "{}",
                    r.code
                );
                assert_eq!(p.rows.last().map(|x| x.slope), Some(p.steepest), "{}", r.code);
            }
        }
    }
}
