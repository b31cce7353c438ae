//! Within which limits do the embedment formulas take their inputs? The rows that all of them share.

use groundhold_working::{Input, Limits, Output, Unit};

pub(crate) const FORCE: Input = Input::new("force", "P", "horizontal push", Unit::KN, Limits::ours(0.0, 10_000.0));
pub(crate) const ARM: Input =
    Input::new("arm", "h", "height of the push above the ground in front", Unit::M, Limits::ours(0.0, 20.0));
pub(crate) const WIDTH: Input = Input::new("width", "b", "bearing width", Unit::M, Limits::ours(0.03, 5.0));
pub(crate) const DEPTH: Input =
    Input::new("depth", "D", "depth below the ground in front", Unit::M, Limits::ours(0.0, 30.0));
pub(crate) const NEGLECTED: Input =
    Input::new("neglected", "z₀", "layer in front that is not counted on", Unit::M, Limits::ours(0.0, 5.0)).or(0.0);
pub(crate) const REDUCTION: Input = Input::new(
    "reduction",
    "μ",
    "what is left of the resistance beside a slope or in a close row",
    Unit::NONE,
    Limits::ours(0.01, 1.0),
)
.or(1.0);
pub(crate) const FACTOR: Input =
    Input::new("factor", "F", "wanted ratio of ultimate resistance to push", Unit::NONE, Limits::ours(0.5, 10.0))
        .or(1.0);
pub(crate) const UNIT_WEIGHT: Input = Input::new(
    "unit_weight",
    "γ",
    "unit weight of the soil, effective below water",
    Unit::KN_M3,
    Limits::ours(5.0, 30.0),
);
pub(crate) const PHI: Input = Input::new("phi", "φ", "effective friction angle", Unit::DEG, Limits::ours(15.0, 50.0));
pub(crate) const STRENGTH: Input =
    Input::new("strength", "c_u", "undrained shear strength", Unit::KPA, Limits::ours(5.0, 1000.0));

pub(crate) const OUT_DEPTH: Output =
    Output { key: "depth", words: "required depth below the ground in front", unit: Unit::M };
pub(crate) const OUT_ULTIMATE: Output = Output { key: "force", words: "ultimate push", unit: Unit::KN };
pub(crate) const OUT_MOMENT: Output = Output { key: "moment", words: "greatest moment in the post", unit: Unit::KNM };
pub(crate) const OUT_SHEAR_FREE: Output =
    Output { key: "depth_of_moment", words: "depth of the greatest moment below the ground in front", unit: Unit::M };
pub(crate) const YIELD: Input =
    Input::new("moment", "M_y", "moment at which the post yields", Unit::KNM, Limits::ours(0.0, 10_000.0));
pub(crate) const OUT_YIELD_PUSH: Output =
    Output { key: "force", words: "push at which the post yields", unit: Unit::KN };
