//! What does a screw carry when it is pulled out or sheared, and how many does a board need?

mod bolts;
mod en_lateral;
mod en_withdrawal;
mod joint;
mod nds_lateral;
mod nds_withdrawal;
mod screw;

pub use bolts::{
    BOLT_GROUP, BoltGroup, BoltShare, EN_DOUBLE, EnDouble, EnDoubleModes, NDS_DOUBLE, NdsDouble, NdsDoubleModes,
    bolt_group, en_double, nds_double,
};
pub use en_lateral::{EN_SHEARED, EnShearModes, EnSheared, en_sheared};
pub use en_withdrawal::{
    EN_DECLARED, EN_HEAD, EN_PULLED, EnAxial, EnDeclared, EnHead, EnPulled, GAMMA_JOINT, en_declared, en_head,
    en_pulled,
};
pub use joint::{Carries, GivesWay, Hang, Joint, MOST_SCREWS, Rules, hang, pulled_out, sheared};
pub use nds_lateral::{NDS_SHEARED, NdsModes, NdsSheared, nds_sheared};
pub use nds_withdrawal::{
    NDS_LAG_SCREW, NDS_WOOD_SCREW, NdsAxial, NdsPulled, nds_lag_screw, nds_wet_screw, nds_wood_screw,
};
pub use screw::{Declared, Screw};
