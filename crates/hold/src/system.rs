//! Which wall systems are there, and what does every one of them say to the rest of the job? One folder in `systems`, one
//! variant and one line here.

use groundhold_quantity::{Length, Slope};

use crate::systems::cantilever::CantileverSpec;
use crate::systems::dry_block::DryBlockSpec;
use crate::systems::dry_stone::DryStoneSpec;
use crate::systems::gabion::GabionSpec;
use crate::systems::mass_wall::MassWallSpec;
use crate::systems::stacked_timbers::StackedTimberSpec;
use crate::systems::steel_posts::SteelPostSpec;
use crate::systems::timber_posts::TimberPostSpec;
use crate::{CaseError, Check, CheckKind, Cross, Field, Given, Layout, Verdict, WallCase};

/// What every wall system can do. [`crate::by_rows`] writes `fields`, `get` and `set` from a table of rows.
pub trait System {
    /// Its key in a job file: `timber-post-and-board`.
    fn key(&self) -> &'static str;
    /// Its sizes, in the order in which they are written.
    fn fields(&self) -> Vec<&'static Field>;
    /// One of its sizes; `None` where it is left out or solved.
    fn get(&self, key: &str) -> Option<Given>;
    /// Sets one of its sizes.
    ///
    /// # Errors
    /// What was found and what was expected.
    fn set(&mut self, key: &str, given: &Given) -> Result<(), String>;
    /// The field whose lengths a price list can give, and the item they are the stock lengths of.
    fn stocked(&self) -> Option<(&'static str, String)> {
        None
    }
    /// What stands between the ground behind and the ground in front, at the level of the ground behind.
    fn thickness(&self) -> Length;
    /// From the back of that to the wall line. The wall line is the plane that is set out: where posts and boards touch,
    /// or the foot of the face.
    fn back_to_line(&self) -> Length;
    /// What holds the soil, seen from above: from and to, measured from the wall line, positive to the open side. Posts
    /// are not counted.
    fn body(&self) -> (Length, Length) {
        (-self.thickness(), Length::ZERO)
    }
    /// How far its outermost post reaches beyond that post's own place along the line.
    fn end_half(&self) -> Length {
        Length::ZERO
    }
    /// The material from which risers of steps beside it are made, in pieces; `None` where it has none that suits.
    fn riser(&self) -> Option<String> {
        None
    }
    /// How far its face goes back for each unit that it rises, where its plan position follows from that.
    fn lean(&self) -> Slope {
        Slope::LEVEL
    }
    /// How its timber is treated, each treatment once; nothing where it has none.
    fn treatments(&self) -> Vec<&str> {
        vec![]
    }
    /// The checks that are shown where there is room for few.
    fn main_checks(&self) -> &'static [CheckKind];
    /// Lays the wall out in whole pieces.
    ///
    /// # Errors
    /// [`CaseError`] says which value of the case cannot be built.
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError>;
    /// Checks it.
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict;
    /// Checks it while a finger drags: the checks that decide, without remedies and without other methods beside them,
    /// where the system can tell them apart.
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        self.judge(case, layout)
    }
    /// Its checks alone, for trials: without findings and remedies, and without the slip of the bank where that is slow.
    fn checks(&self, case: &WallCase, layout: &Layout) -> Vec<Check> {
        self.judge(case, layout).checks
    }
    /// The wall cut across at a chainage; `None` where it does not stand there.
    fn cross(&self, case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross>;
}

/// Writes the three methods of [`System`] that follow from a table of rows.
#[macro_export]
macro_rules! by_rows {
    ($rows:expr) => {
        fn fields(&self) -> Vec<&'static $crate::Field> {
            $rows.iter().map(|r| &r.field).collect()
        }
        fn get(&self, key: &str) -> Option<$crate::Given> {
            $rows.iter().find(|r| r.field.key == key).and_then(|r| (r.get)(self))
        }
        fn set(&mut self, key: &str, given: &$crate::Given) -> Result<(), String> {
            match $rows.iter().find(|r| r.field.key == key) {
                Some(r) => (r.set)(self, given),
                None => Err(format!("there is no field `{key}`")),
            }
        }
    };
}

/// A wall system with its sizes.
#[derive(Debug, Clone, PartialEq)]
pub enum Spec {
    /// Timber posts in holes, boards between or behind them.
    TimberPosts(TimberPostSpec),
    /// Baskets of stone.
    Gabion(GabionSpec),
    /// Stones without mortar.
    DryStone(DryStoneSpec),
    /// Mortared masonry or mass concrete on a footing.
    MassWall(MassWallSpec),
    /// Steel posts in holes, panels between their flanges.
    SteelPosts(SteelPostSpec),
    /// Timbers in courses with ties into the bank.
    StackedTimbers(StackedTimberSpec),
    /// Blocks stacked dry, with or without grid in the fill.
    DryBlock(DryBlockSpec),
    /// A reinforced stem on a footing with toe and heel.
    Cantilever(CantileverSpec),
}

/// One system among all.
pub struct Entry {
    /// Its key in a job file.
    pub key: &'static str,
    /// What it is, in words.
    pub words: &'static str,
    /// With usual sizes; those that must be given stand for nothing until they are.
    pub blank: fn() -> Spec,
}

/// All systems. The first is taken where a job file names none.
pub const SYSTEMS: &[Entry] = &[
    Entry {
        key: "timber-post-and-board",
        words: "timber posts in holes with boards behind or before them",
        blank: || Spec::TimberPosts(TimberPostSpec::blank()),
    },
    Entry {
        key: "gabion",
        words: "wire baskets filled with stone, in stepped courses",
        blank: || Spec::Gabion(GabionSpec::blank()),
    },
    Entry {
        key: "dry-stone",
        words: "stones laid without mortar, with a battered face",
        blank: || Spec::DryStone(DryStoneSpec::blank()),
    },
    Entry {
        key: "mass-wall",
        words: "mortared masonry or mass concrete on a footing",
        blank: || Spec::MassWall(MassWallSpec::blank()),
    },
    Entry {
        key: "steel-post-and-panel",
        words: "steel posts in holes with panels of timber or concrete between their flanges",
        blank: || Spec::SteelPosts(SteelPostSpec::blank()),
    },
    Entry {
        key: "stacked-timbers",
        words: "timbers laid up in courses, with ties and cross pieces in the bank",
        blank: || Spec::StackedTimbers(StackedTimberSpec::blank()),
    },
    Entry {
        key: "dry-block",
        words: "blocks stacked dry with a setback, with or without layers of grid in the fill",
        blank: || Spec::DryBlock(DryBlockSpec::blank()),
    },
    Entry {
        key: "cantilever",
        words: "a stem of reinforced concrete or filled block on a footing with toe and heel",
        blank: || Spec::Cantilever(CantileverSpec::blank()),
    },
];

/// The keys of all systems.
pub static SYSTEM_KEYS: [&str; SYSTEMS.len()] = {
    let mut keys = [""; SYSTEMS.len()];
    let mut i = 0;
    while i < keys.len() {
        keys[i] = SYSTEMS[i].key;
        i += 1;
    }
    keys
};

impl Spec {
    /// The system that builds it.
    pub fn system(&self) -> &dyn System {
        match self {
            Spec::TimberPosts(s) => s,
            Spec::Gabion(s) => s,
            Spec::DryStone(s) => s,
            Spec::MassWall(s) => s,
            Spec::SteelPosts(s) => s,
            Spec::StackedTimbers(s) => s,
            Spec::DryBlock(s) => s,
            Spec::Cantilever(s) => s,
        }
    }
    /// The same, to be changed.
    pub fn system_mut(&mut self) -> &mut dyn System {
        match self {
            Spec::TimberPosts(s) => s,
            Spec::Gabion(s) => s,
            Spec::DryStone(s) => s,
            Spec::MassWall(s) => s,
            Spec::SteelPosts(s) => s,
            Spec::StackedTimbers(s) => s,
            Spec::DryBlock(s) => s,
            Spec::Cantilever(s) => s,
        }
    }
    /// A system by its key, with usual sizes.
    pub fn of(key: &str) -> Option<Spec> {
        SYSTEMS.iter().find(|s| s.key == key).map(|s| (s.blank)())
    }
    /// Sets one size from text as it stands in a job file. What the text does not say stays as it is.
    ///
    /// # Errors
    /// What was found and what was expected; a key that is not there, with those that are.
    pub fn change(&mut self, key: &str, text: &str) -> Result<(), String> {
        let fields = self.system().fields();
        let Some(field) = fields.iter().find(|f| f.key == key) else {
            let known: Vec<&str> = fields.iter().map(|f| f.key).collect();
            return Err(format!("a wall of {} has no size `{key}`; it has {}", self.system().key(), known.join(", ")));
        };
        let given = field.read(text)?;
        self.system_mut().set(key, &given)
    }
}

/// Lays a wall out in whole pieces, with every depth and width solved where none is given.
///
/// # Errors
/// [`CaseError`] says which value of the case cannot be built.
pub fn lay_out(case: &WallCase) -> Result<Layout, CaseError> {
    case.check()?;
    case.spec.system().lay_out(case)
}

/// Checks a wall that was laid out from the same case.
pub fn judge(case: &WallCase, layout: &Layout) -> Verdict {
    case.spec.system().judge(case, layout)
}

/// A wall that was laid out from the same case, cut across at a chainage.
pub fn cross(case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross> {
    case.spec.system().cross(case, layout, chainage)
}

/// Lays a wall out and checks it while a finger drags: see [`System::judge_quick`].
///
/// # Errors
/// [`CaseError`] says which value of the case cannot be built.
pub fn hold_quick(case: &WallCase) -> Result<(Layout, Verdict), CaseError> {
    let layout = lay_out(case)?;
    let verdict = case.spec.system().judge_quick(case, &layout);
    Ok((layout, verdict))
}

/// Lays a wall out and checks it.
///
/// # Errors
/// [`CaseError`] says which value of the case cannot be built.
pub fn hold(case: &WallCase) -> Result<(Layout, Verdict), CaseError> {
    let layout = lay_out(case)?;
    let verdict = judge(case, &layout);
    Ok((layout, verdict))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_system_is_found_by_its_key_and_no_field_stands_twice_in_it() {
        for entry in SYSTEMS {
            let spec = Spec::of(entry.key).unwrap();
            assert_eq!(spec.system().key(), entry.key);
            let fields = spec.system().fields();
            for (i, f) in fields.iter().enumerate() {
                assert!(fields[..i].iter().all(|g| g.key != f.key), "{} {}", entry.key, f.key);
                assert!(f.least <= f.most && !f.words.is_empty(), "{} {}", entry.key, f.key);
            }
            assert!(
                !spec.system().main_checks().is_empty() && spec.system().back_to_line() <= spec.system().thickness()
            );
        }
    }

    #[test]
    fn what_a_system_gives_can_be_set_again_and_a_value_of_another_kind_cannot() {
        for entry in SYSTEMS {
            let mut spec = Spec::of(entry.key).unwrap();
            let before = spec.clone();
            for f in before.system().fields() {
                if let Some(given) = before.system().get(f.key) {
                    spec.system_mut().set(f.key, &given).unwrap();
                }
                let other = if matches!(f.holds, crate::Holds::Flag) { Given::Whole(1) } else { Given::Flag(true) };
                assert!(spec.system_mut().set(f.key, &other).is_err(), "{} {}", entry.key, f.key);
            }
            assert_eq!(spec, before);
            assert!(spec.change("nonsense", "1 m").unwrap_err().contains("has no size `nonsense`; it has "));
        }
    }
}
