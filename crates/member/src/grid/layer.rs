//! What pulls at one layer of grid, and do its strength, its length and its grip on the blocks hold it?

use groundhold_quantity::{Angle, Length, LineForce, Pressure, UnitWeight, math};
use groundhold_working::{Limits, Number, Result, Source, Trace, Unit, Working};

use crate::{
    Row,
    given::{gives, takes},
};

takes! {
    /// Pull on one layer; m, kPa.
    GridLayer {
        depth: "z", "depth of the layer below the top of the fill", M, Limits::ours(0.0, 10.0);
        unit_weight: "γ", "unit weight of the fill", KN_M3, Limits::ours(10.0, 25.0);
        surcharge: "q", "load on the fill", KPA, Limits::ours(0.0, 100.0), 0.0;
        coefficient: "K", "active coefficient of the fill", NONE, Limits::ours(0.05, 1.0);
        spacing: "S_v", "height of fill that goes with the layer", M, Limits::author(0.05, 0.9);
    }
}
gives! {
    /// Pull on one layer.
    GridDemand {
        vertical: KPA, "vertical pressure at the layer";
        pull: KN_M, "greatest pull";
    }
}
takes! {
    /// Pull-out of one layer; m, kN/m.
    GridPullout {
        pull: "T_max", "greatest pull", KN_M, Limits::ours(0.0, 1000.0);
        height: "H", "height of the wall", M, Limits::ours(0.1, 10.0);
        depth: "z", "depth of the layer below the top of the fill", M, Limits::ours(0.0, 10.0);
        length: "L", "length of the layer from the face", M, Limits::ours(0.0, 20.0);
        vertical: "σ_v", "vertical pressure at the layer, without load that comes and goes", KPA, Limits::ours(0.1, 500.0);
        phi: "φ", "friction angle of the fill", DEG, Limits::author(20.0, 45.0);
        grip: "C_i", "F* over tan φ: 2/3 where no test is at hand", NONE, Limits::author(0.3, 1.0), 0.667;
        stretch: "α", "correction for the stretch of the grid: 0.8 grids, 0.6 sheets", NONE, Limits::author(0.6, 1.0), 0.8;
        factor: "F", "wanted ratio of pull-out to pull", NONE, Limits::ours(1.0, 3.0), 1.5;
    }
}
gives! {
    /// Pull-out of one layer.
    GridPulloutFigures {
        active: M, "length within the slip wedge";
        behind: M, "length behind the slip wedge";
        needed: M, "length needed behind it, at least 1 m";
        capacity: KN_M, "pull-out with the factor taken off";
        utilisation: NONE, "pull over capacity";
    }
}
takes! {
    /// Grip of a layer between the blocks; kN/m, kPa.
    GridConnection {
        pull: "T_0", "pull at the face", KN_M, Limits::ours(0.0, 1000.0);
        base: "a_c", "strength of the joint without load on it, by test", KN_M, Limits::ours(0.0, 200.0);
        angle: "λ_c", "growth of it with the weight above, by test", DEG, Limits::ours(0.0, 60.0);
        weight: "N", "weight of the blocks above, per metre", KN_M, Limits::ours(0.0, 300.0);
        most: "T_lim", "most that the test showed", KN_M, Limits::ours(0.0, 500.0);
        factor: "F", "factor, and reductions for creep and age", NONE, Limits::ours(1.0, 6.0), 1.5;
    }
}
gives! {
    /// Grip of a layer between the blocks.
    GridConnectionFigures {
        capacity: KN_M, "grip with the factor taken off";
        utilisation: NONE, "pull over grip";
    }
}

/// Greatest pull on a layer.
///
/// # Source
/// FHWA-NHI-10-024 (2009), 4.4.7: σ_h = K_r (γ z + q), K_r = K_a for grids, T_max = σ_h S_v.
/// # Symbols
/// z, γ, q, K, S_v: half the way to the layers above and below.
/// # Gives
/// σ_v and T_max per metre.
/// # Not for
/// Point loads behind the face; layers more than 0.8 m apart.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// z 1.2, γ 19, q 5, K 0.27, S_v 0.4: 27.8 kPa, 3.0 kN/m (GG-03).
pub fn grid_layer<N: Number>(i: &GridLayer<N>) -> GridDemand<N> {
    let vertical = (i.unit_weight * i.depth + i.surcharge).named("σ_v", Unit::KPA);
    GridDemand { vertical, pull: (i.coefficient * vertical * i.spacing).named("T_max", Unit::KN_M) }
}

/// Length behind the slip wedge and pull-out.
///
/// # Source
/// FHWA-NHI-10-024 (2009), 3.4 and 4.4.7: P_r = F* α σ_v L_e C with F* = 2/3 tan φ, α 0.8 for grids, C 2 faces; slip wedge of Rankine,
/// L_a = (H − z) tan(45° − φ/2) for a face that leans less than 10°; L_e at least 1 m.
/// # Symbols
/// As listed.
/// # Gives
/// L_a, L_e there and needed, capacity.
/// # Not for
/// Slopes above the fill; faces that lean more than 10° (the wedge is smaller there: careful).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// φ 34°, σ_v 22.8, T 3: F* 0.45, L_e = 1.5·3/(2·0.45·0.8·22.8) = 0.27 m, so 1 m (GG-04).
pub fn grid_pullout<N: Number>(i: &GridPullout<N>) -> GridPulloutFigures<N> {
    let n = N::constant;
    let wedge = (N::degrees(45.0) - i.phi / 2.0).tan();
    let active = ((i.height - i.depth).max(n(0.0)) * wedge).named("L_a", Unit::M);
    let behind = (i.length - active).max(n(0.0)).named("L_e", Unit::M);
    let per_metre = (n(2.0) * i.grip * i.phi.tan() * i.stretch * i.vertical).named("C F* α σ_v", Unit::KPA);
    let needed = (i.factor * i.pull / per_metre).max(n(1.0)).named("L_e,req", Unit::M);
    let capacity = (per_metre * behind / i.factor).named("P_r/F", Unit::KN_M);
    GridPulloutFigures { active, behind, needed, capacity, utilisation: (i.pull / capacity).named("T/P_r", Unit::NONE) }
}

/// Grip of a layer between the blocks.
///
/// # Source
/// FHWA-NHI-10-024 (2009), Appendix B (connection tests, T = a_c + N tan λ up to a limit; ASTM D6638). From memory.
/// # Symbols
/// a_c, λ_c, T_lim of the test report, N weight above.
/// # Gives
/// Grip per metre with the factor taken off.
/// # Not for
/// A grid and a block that were not tested together.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// a_c 6, λ 35°, N 6: 10.2, F 1.5: 6.8 kN/m (GG-05).
pub fn grid_connection<N: Number>(i: &GridConnection<N>) -> GridConnectionFigures<N> {
    let grip = (i.base + i.weight * i.angle.tan()).min(i.most).named("T_conn", Unit::KN_M);
    let capacity = (grip / i.factor).named("T_c", Unit::KN_M);
    GridConnectionFigures { capacity, utilisation: (i.pull / capacity).named("T_0/T_c", Unit::NONE) }
}

/// A grid with the blocks it was tested with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Allowable or design strength, reductions taken off.
    pub strength: LineForce,
    /// F* over tan φ.
    pub grip: f64,
    /// Connection without load on it.
    pub connection: LineForce,
    /// Growth of the connection with the weight above.
    pub connection_angle: Angle,
    /// Most that the connection test showed.
    pub connection_most: LineForce,
}

/// One layer in a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// Height of the wall.
    pub height: Length,
    /// Depth of the layer below the top of the fill.
    pub depth: Length,
    /// Length from the face.
    pub length: Length,
    /// Height of fill that goes with it.
    pub spacing: Length,
    /// Fill.
    pub phi: Angle,
    /// Unit weight of the fill.
    pub unit_weight: UnitWeight,
    /// Active coefficient of the fill.
    pub coefficient: f64,
    /// Load on the fill.
    pub surcharge: Pressure,
    /// Weight of the blocks above the layer, per metre.
    pub blocks: LineForce,
    /// Wanted ratio of pull-out and of connection to pull.
    pub factor: f64,
}

/// One layer judged.
#[derive(Debug, Clone, PartialEq)]
pub struct LayerCheck {
    /// Strength for good.
    pub strength: Row<LineForce>,
    /// Pull-out behind the slip wedge.
    pub pullout: Row<LineForce>,
    /// Grip between the blocks.
    pub connection: Row<LineForce>,
    /// Length needed from the face.
    pub length_needed: Length,
    /// Working of the pull.
    pub pull: Trace,
}

impl LayerCheck {
    /// The worst of the three.
    pub fn utilisation(&self) -> f64 {
        self.strength.utilisation.max(self.pullout.utilisation).max(self.connection.utilisation)
    }
}

/// Judges one layer of grid; the strength is compared with the pull as it is.
///
/// # Errors
/// Where a value is out of range.
pub fn check_layer(grid: &Grid, layer: &Layer) -> Result<LayerCheck> {
    let (i, pull_trace) = GridLayer {
        depth: layer.depth.to_m(),
        unit_weight: layer.unit_weight.to_kn_per_m3(),
        surcharge: layer.surcharge.to_kpa(),
        coefficient: layer.coefficient,
        spacing: layer.spacing.to_m(),
    }
    .traced(&GRID_LAYER)?;
    let demand = grid_layer(&i);
    let pull = LineForce::kn_per_m(demand.pull);
    let (p, out_trace) = GridPullout {
        pull: demand.pull,
        height: layer.height.to_m(),
        depth: i.depth,
        length: layer.length.to_m(),
        vertical: (i.unit_weight * i.depth).max(0.1),
        phi: layer.phi.to_deg(),
        grip: grid.grip,
        stretch: 0.8,
        factor: layer.factor,
    }
    .traced(&GRID_PULLOUT)?;
    let out = grid_pullout(&p);
    let (c, grip_trace) = GridConnection {
        pull: demand.pull,
        base: grid.connection.to_kn_per_m(),
        angle: grid.connection_angle.to_deg(),
        weight: layer.blocks.to_kn_per_m(),
        most: grid.connection_most.to_kn_per_m(),
        factor: layer.factor,
    }
    .traced(&GRID_CONNECTION)?;
    let wedge = math::tan(std::f64::consts::FRAC_PI_4 - p.phi / 2.0);
    let active = (layer.height - layer.depth).max(Length::ZERO) * wedge;
    // Less than a metre behind the wedge does not count as held, however little is asked.
    let held = if out.behind < 1.0 { 0.0 } else { out.capacity };
    Ok(LayerCheck {
        strength: Row::new("strength", pull, grid.strength, pull_trace.clone()),
        pullout: Row::new("pull-out", pull, LineForce::kn_per_m(held), out_trace),
        connection: Row::new("connection", pull, LineForce::kn_per_m(grid_connection(&c).capacity), grip_trace),
        length_needed: active + Length::m(out.needed),
        pull: pull_trace,
    })
}

const FHWA: &str = "FHWA-NHI-10-024, Design and Construction of Mechanically Stabilized Earth Walls, 2009";

/// Working of [`grid_layer`].
pub static GRID_LAYER: Working = Working {
    name: "grid/layer-pull",
    title: "Greatest pull on a layer of geogrid.",
    source: Source { work: FHWA, place: "4.4.7; from memory" },
    not_for: "point loads behind the face; layers more than 0.8 m apart",
    inputs: GridLayer::INPUTS,
    outputs: GridDemand::OUTPUTS,
    run: |g| grid_layer(&GridLayer::put(g)?).found(),
};

/// Working of [`grid_pullout`].
pub static GRID_PULLOUT: Working = Working {
    name: "grid/pull-out",
    title: "Length of a layer of geogrid behind the slip wedge, and its pull-out.",
    source: Source { work: FHWA, place: "3.4, 4.4.7; from memory" },
    not_for: "slopes above the fill",
    inputs: GridPullout::INPUTS,
    outputs: GridPulloutFigures::OUTPUTS,
    run: |g| grid_pullout(&GridPullout::put(g)?).found(),
};

/// Working of [`grid_connection`].
pub static GRID_CONNECTION: Working = Working {
    name: "grid/connection",
    title: "Grip of a layer of geogrid between the blocks.",
    source: Source { work: FHWA, place: "Appendix B; ASTM D6638 tests; from memory" },
    not_for: "a grid and a block that were not tested together",
    inputs: GridConnection::INPUTS,
    outputs: GridConnectionFigures::OUTPUTS,
    run: |g| grid_connection(&GridConnection::put(g)?).found(),
};
