//! Under which rules is the timber of this wall judged, and how long do its loads last?

use groundhold_member::timber::{Code, Duration, Grade, LoadFactors};

use crate::loads::is_accident;
use crate::{LoadCase, WallCase};

/// AS/NZS 1170.0:2002 clause 4.2.2 with earth pressure 1.5 F_e, from memory: soil counts as 1.5 whichever load is with it.
const AS_EARTH: LoadFactors = LoadFactors { permanent_alone: 1.5, permanent: 1.5, variable: 1.5 };

/// The rules of a grade for timber against the ground, with the factors on loads of those rules; in an accident, loads as
/// they are (EN 1990:2002 6.4.3.3; for other rules taken alike).
pub(crate) fn code(case: &WallCase, state: LoadCase, grade: &Grade) -> Code {
    let code = Code::in_the_ground(grade);
    match code {
        _ if is_accident(case, state) => code.with_loads(LoadFactors::NONE),
        Code::As1720 { .. } => code.with_loads(AS_EARTH),
        _ => code,
    }
}

/// How long the load that comes and goes lasts in a state.
pub(crate) fn lasting(case: &WallCase, state: LoadCase) -> Duration {
    match state {
        LoadCase::Wind => Duration::Instant,
        _ if is_accident(case, state) => Duration::Short,
        _ => Duration::Medium,
    }
}
