//! The sum of it: what is dug, used, left over and brought in, by soil; loads, heaps and days.

use groundhold_finding::Finding;
use groundhold_quantity::{Area, Length, Mass, Volume};
use groundhold_working::Trace;

use crate::formation::{OVER, over};
use crate::handling::{bring, keep, tasks};
use crate::soil::ROCK;
use crate::{
    DigCase, Excavated, Factors, Heap, Loads, TOPSOIL, TURF, Task, Turves, Vehicle, at_moisture, heap, in_states,
    ledger, loads, remarks, turves,
};

/// Which earth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Earth {
    /// Grass with its roots.
    Turf,
    /// The dark layer that grows things.
    Topsoil,
    /// What lies below.
    Subsoil,
    /// What has to be broken out.
    Rock,
}

impl Earth {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Earth::Turf => "turf",
            Earth::Topsoil => "topsoil",
            Earth::Subsoil => "subsoil",
            Earth::Rock => "rock",
        }
    }
}

/// One line of the account.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Element or wall it belongs to; empty for the whole job.
    pub element: String,
    /// What is done there.
    pub what: &'static str,
    /// With which earth.
    pub earth: Earth,
    /// Dug, bank.
    pub dug: Volume,
    /// Put there, compacted. Negative where a drainage zone takes the place of fill counted in another row.
    pub placed: Volume,
    /// Its working, where it is more than a thickness times an area.
    pub trace: Option<Trace>,
}

/// The account of one earth. Always `dug = used + over` in the bank, and `placed = used·k_c + short` compacted.
#[derive(Debug, Clone, PartialEq)]
pub struct Stream {
    /// Which earth.
    pub earth: Earth,
    /// Its factors.
    pub factors: Factors,
    /// Dug, bank.
    pub dug: Volume,
    /// To be put in place, compacted.
    pub placed: Volume,
    /// Bank used for it.
    pub used: Volume,
    /// Bank left over.
    pub over: Volume,
    /// Compacted volume for which the site has nothing.
    pub short: Volume,
    /// What is left over, loose.
    pub over_loose: Volume,
    /// Mass of what is left over.
    pub over_mass: Mass,
    /// Loads that take it away; `None` where nothing is left over or the vehicle is not countable.
    pub loads: Option<Loads>,
    /// Workings: balance, loose and compacted.
    pub traces: Vec<Trace>,
}

/// What must not be carted away.
#[derive(Debug, Clone, PartialEq)]
pub struct Keep {
    /// Which earth.
    pub earth: Earth,
    /// For what.
    pub purpose: &'static str,
    /// Bank volume.
    pub bank: Volume,
    /// Loose volume in the heap.
    pub loose: Volume,
    /// True when it waits in a heap; false when it goes straight from cut to fill.
    pub heaped: bool,
}

/// What must be brought.
#[derive(Debug, Clone, PartialEq)]
pub struct Bring {
    /// What it is.
    pub what: String,
    /// For which element; empty for the whole job.
    pub element: String,
    /// Volume in place.
    pub in_place: Volume,
    /// Volume to order, loose.
    pub loose: Volume,
    /// Its mass.
    pub mass: Mass,
    /// Loads; `None` where the vehicle is not countable.
    pub loads: Option<Loads>,
}

/// Everything that moves.
#[derive(Debug, Clone, PartialEq)]
pub struct Dug {
    /// The account, line by line.
    pub rows: Vec<Row>,
    /// Turf.
    pub turf: Stream,
    /// Topsoil.
    pub topsoil: Stream,
    /// Subsoil.
    pub subsoil: Stream,
    /// Rock; none of it is used as fill.
    pub rock: Stream,
    /// Turves counted; `None` where there is no turf.
    pub turves: Option<Turves>,
    /// How the faces behind walls are dug.
    pub excavated: Vec<Excavated>,
    /// What must not be carted away.
    pub keep: Vec<Keep>,
    /// What must be brought.
    pub bring: Vec<Bring>,
    /// Heaps of what waits.
    pub heaps: Vec<Heap>,
    /// Barrows of everything that is carted off or heaped, when it is wheeled by hand.
    pub barrows: u32,
    /// Work by hand, with the range of person-days.
    pub tasks: Vec<Task>,
    /// Workings of the tasks and heaps.
    pub traces: Vec<Trace>,
    /// What stands against it.
    pub findings: Vec<Finding>,
}

impl Dug {
    /// The accounts of turf, topsoil and subsoil, and of rock where some is dug.
    pub fn streams(&self) -> Vec<&Stream> {
        let rock = (self.rock.dug > Volume::ZERO).then_some(&self.rock);
        [&self.turf, &self.topsoil, &self.subsoil].into_iter().chain(rock).collect()
    }
    /// Whole loads that go away, each earth by itself.
    pub fn loads_away(&self) -> u32 {
        self.streams().iter().filter_map(|s| s.loads.as_ref()).map(|l| l.count).sum()
    }
    /// Everything dug, bank.
    pub fn dug(&self) -> Volume {
        self.streams().iter().map(|s| s.dug).sum()
    }
    /// Fewest and most person-days by hand.
    pub fn person_days(&self) -> (f64, f64) {
        self.tasks.iter().fold((0.0, 0.0), |(a, b), t| (a + t.person_days.0, b + t.person_days.1))
    }
}

/// Works out what moves. Volumes that are negative or not ordinary numbers count as nothing and give a finding at
/// `stop`.
pub fn dig(case: &DigCase) -> Dug {
    let (case, mut findings) = ledger::countable(case);
    let rows = ledger::rows(&case);
    let stream = |earth: Earth, factors: Factors, fit: bool| account(&rows, earth, factors, fit, case.vehicle);
    let wet = |soil: Factors| case.moisture.map_or(soil, |w| at_moisture(&soil, w));
    let turf = stream(Earth::Turf, TURF, true);
    let topsoil = stream(Earth::Topsoil, wet(TOPSOIL), true);
    let subsoil = stream(Earth::Subsoil, wet(case.soil), case.fit_for_fill);
    let rock = stream(Earth::Rock, ROCK, false);
    let keep = keep(&case, &turf, &topsoil, &subsoil);
    let heaps: Vec<Heap> = keep
        .iter()
        .filter(|k| k.heaped)
        .map(|k| heap(k.earth.words(), k.loose, case.heap.side, case.heap.height_most))
        .collect();
    let (tasks, mut traces) = tasks(&case, [&turf, &topsoil, &subsoil, &rock]);
    traces.extend(heaps.iter().map(|h| h.trace.clone()));
    let wheeled: Volume = [&turf, &topsoil, &subsoil, &rock].iter().map(|s| s.factors.loose(s.dug)).sum();
    let barrow = case.barrow.to_litre();
    let barrows = if barrow >= 1.0 { (wheeled.to_litre() / barrow).ceil() as u32 } else { 0 };
    let bring = bring(&case, &topsoil, &subsoil);
    let counted = turves_of(&case);
    let excavated = case.excavated.clone();
    let mut dug = Dug {
        rows,
        turf,
        topsoil,
        subsoil,
        rock,
        turves: counted,
        excavated,
        keep,
        bring,
        heaps,
        barrows,
        tasks,
        traces,
        findings: vec![],
    };
    findings.extend(remarks::remarks(&case, &dug));
    dug.findings = findings;
    dug
}

fn turves_of(case: &DigCase) -> Option<Turves> {
    let cut: Area = case.moved.iter().map(|m| m.cut_area + m.fill_area).sum::<Area>() + case.stripped_besides;
    let laid: Area = case.moved.iter().map(|m| m.turf_back).sum::<Area>() + case.turf_back;
    (case.turf > Length::ZERO && cut > Area::ZERO).then(|| turves(cut, laid))
}

/// Bank volume of subsoil left over, negative where the fill is short: what a level is balanced by. Nothing else is
/// worked out, so it is quick. Figures that are not countable count as nothing.
pub fn subsoil_over(case: &DigCase) -> Volume {
    let (case, _) = ledger::countable(case);
    let rows = ledger::rows(&case);
    let (dug, placed) = sums(&rows, Earth::Subsoil);
    let [_, left] = over(dug.to_m3(), placed.to_m3(), case.soil.bank_to_compacted);
    Volume::m3(left)
}

fn sums(rows: &[Row], earth: Earth) -> (Volume, Volume) {
    let of = |f: fn(&Row) -> Volume| rows.iter().filter(|r| r.earth == earth).map(f).sum::<Volume>();
    (of(|r| r.dug), of(|r| r.placed).max(Volume::ZERO))
}

fn account(rows: &[Row], earth: Earth, soil: Factors, fit: bool, vehicle: Vehicle) -> Stream {
    let (dug, placed) = sums(rows, earth);
    let wanted = if fit { placed } else { Volume::ZERO };
    let [needed, left] = over(dug.to_m3(), wanted.to_m3(), soil.bank_to_compacted);
    let over_bank = Volume::m3(left.max(0.0));
    let used = dug - over_bank;
    let short = if left < 0.0 { Volume::m3(-left * soil.bank_to_compacted) } else { placed - wanted };
    debug_assert!(left < 0.0 || (needed - used.to_m3()).abs() <= 1e-9 * needed.abs().max(1.0));
    let (over_loose, _, states) = in_states(over_bank, &soil);
    let balance = Trace::new(&OVER, vec![dug.to_m3().into(), wanted.to_m3().into(), soil.bank_to_compacted.into()]);
    Stream {
        earth,
        factors: soil,
        dug,
        placed,
        used,
        over: over_bank,
        short,
        over_loose,
        over_mass: soil.mass(over_bank),
        loads: (over_bank > Volume::litre(1.0)).then(|| loads(over_bank, &soil, vehicle).ok()).flatten(),
        traces: vec![balance, states],
    }
}
