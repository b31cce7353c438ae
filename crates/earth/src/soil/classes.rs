//! Which soils can be told by hand, and which cautious figures stand for each?

use groundhold_quantity::{Angle, Pressure, UnitWeight};
use groundhold_working::Source;

use super::{Bears, Class, Figure, Frost, Kind, Subgrade};

const WEIGHTS: Source = Source {
    work: "from memory: BS 8002:1994, Code of practice for earth retaining structures",
    place: "Table 1; between loose and dense taken midway",
};
const GRAINS: Source = Source {
    work: "from memory: BS 8002:1994, Code of practice for earth retaining structures",
    place: "2.2.4, φ′max = 30° + A + B + C for angularity, grading and blow count",
};
const FINES: Source = Source {
    work: "from memory: BS 8002:1994, Code of practice for earth retaining structures",
    place: "Table 2, φ′crit by plasticity index, c′ = 0",
};
const UNDRAINED: Source = Source {
    work: "from memory: BS 5930:1999, Code of practice for site investigations",
    place: "field terms of undrained strength; low end of the term's range",
};
const WATER_TIGHT: Source = Source {
    work: "from memory: Terzaghi and Peck, Soil Mechanics in Engineering Practice, 2nd ed., 1967",
    place: "permeability and drainage of soils, order of magnitude",
};
const STIFF_SAND: Source = Source {
    work: "from memory: Terzaghi, Evaluation of coefficients of subgrade reaction, Géotechnique 5(4), 1955",
    place: "n_h of moist sand",
};
const STIFF_CLAY: Source = Source {
    work: "from memory: Davisson, Lateral load capacity of piles, Highway Research Record 333, 1970",
    place: "k_h · b = 67 c_u",
};
const BEARING: Source =
    Source { work: "from memory: BS 8004:1986, Code of practice for foundations", place: "Table 1, low end" };
const FROST: Source = Source {
    work: "from memory: US Army TM 5-818-2, Pavement design for seasonal frost conditions, 1985",
    place: "frost groups F1 to F4",
};
const OURS: Source = Source { work: "common practice, no source", place: "a cautious figure of ours" };

const fn kn_m3(v: f64, source: Source) -> Figure<UnitWeight> {
    Figure { value: UnitWeight::kn_per_m3(v), source }
}
const fn deg(v: f64, source: Source) -> Figure<Angle> {
    Figure { value: Angle::deg(v), source }
}
const fn kpa(v: f64, source: Source) -> Option<Figure<Pressure>> {
    Some(Figure { value: Pressure::kpa(v), source })
}
const fn m_s(v: f64) -> Figure<f64> {
    Figure { value: v, source: WATER_TIGHT }
}
const fn n_h(v: f64, source: Source) -> Figure<Subgrade> {
    Figure { value: Subgrade::WithDepth(UnitWeight::kn_per_m3(v)), source }
}
const fn k_b(cu: f64) -> Figure<Subgrade> {
    Figure { value: Subgrade::Constant(Pressure::kpa(67.0 * cu)), source: STIFF_CLAY }
}
const fn frost(value: Frost) -> Figure<Frost> {
    Figure { value, source: FROST }
}

/// The classes, coarse to fine, then what should not carry.
pub static CLASSES: &[Class] = &[
    Class {
        key: "dense-gravel",
        name: "dense gravel",
        by_hand: "Stones between pea and egg, packed with sand; a pick is needed and the hole keeps its side.",
        uscs: "GW",
        kind: Kind::Coarse,
        unit_weight: kn_m3(18.0, WEIGHTS),
        unit_weight_saturated: kn_m3(21.0, WEIGHTS),
        phi: deg(38.0, GRAINS),
        undrained: None,
        permeability_m_s: m_s(1e-3),
        subgrade: n_h(17_600.0, STIFF_SAND),
        bearing: kpa(600.0, BEARING),
        frost: frost(Frost::Low),
        bears: Bears::Yes,
    },
    Class {
        key: "gravel",
        name: "loose to medium gravel",
        by_hand: "Stones between pea and egg; a spade goes in with a rattle and the sides of the hole run.",
        uscs: "GP",
        kind: Kind::Coarse,
        unit_weight: kn_m3(16.0, WEIGHTS),
        unit_weight_saturated: kn_m3(20.0, WEIGHTS),
        phi: deg(34.0, GRAINS),
        undrained: None,
        permeability_m_s: m_s(1e-2),
        subgrade: n_h(6_600.0, STIFF_SAND),
        bearing: kpa(200.0, BEARING),
        frost: frost(Frost::Low),
        bears: Bears::Yes,
    },
    Class {
        key: "dense-sand",
        name: "dense sand",
        by_hand: "Grains are seen and felt, nothing sticks; a peg of 50 mm square is hard to drive 150 mm, a spade needs the foot.",
        uscs: "SW",
        kind: Kind::Coarse,
        unit_weight: kn_m3(18.5, WEIGHTS),
        unit_weight_saturated: kn_m3(21.5, WEIGHTS),
        phi: deg(36.0, GRAINS),
        undrained: None,
        permeability_m_s: m_s(1e-4),
        subgrade: n_h(17_600.0, STIFF_SAND),
        bearing: kpa(300.0, BEARING),
        frost: frost(Frost::Low),
        bears: Bears::Yes,
    },
    Class {
        key: "medium-sand",
        name: "medium dense sand",
        by_hand: "Grains are seen and felt; squeezed damp it holds for a moment and falls apart at a touch; a spade goes in with a push.",
        uscs: "SP",
        kind: Kind::Coarse,
        unit_weight: kn_m3(17.5, WEIGHTS),
        unit_weight_saturated: kn_m3(20.75, WEIGHTS),
        phi: deg(32.0, GRAINS),
        undrained: None,
        permeability_m_s: m_s(1e-4),
        subgrade: n_h(6_600.0, STIFF_SAND),
        bearing: kpa(100.0, BEARING),
        frost: frost(Frost::Low),
        bears: Bears::Yes,
    },
    Class {
        key: "loose-sand",
        name: "loose sand",
        by_hand: "Grains are seen and felt; dug with the hand, a stick pushes in, the hole's side runs when dry.",
        uscs: "SP",
        kind: Kind::Coarse,
        unit_weight: kn_m3(16.5, WEIGHTS),
        unit_weight_saturated: kn_m3(20.0, WEIGHTS),
        phi: deg(30.0, GRAINS),
        undrained: None,
        permeability_m_s: m_s(1e-3),
        subgrade: n_h(2_200.0, STIFF_SAND),
        bearing: kpa(50.0, OURS),
        frost: frost(Frost::Low),
        bears: Bears::Yes,
    },
    Class {
        key: "silty-sand",
        name: "silty sand",
        by_hand: "Gritty between the teeth and floury on the fingers; squeezed it keeps the print of the hand, rolled it breaks; dust when dry.",
        uscs: "SM",
        kind: Kind::Coarse,
        unit_weight: kn_m3(18.0, WEIGHTS),
        unit_weight_saturated: kn_m3(20.75, WEIGHTS),
        phi: deg(30.0, GRAINS),
        undrained: None,
        permeability_m_s: m_s(1e-6),
        subgrade: n_h(2_200.0, STIFF_SAND),
        bearing: kpa(75.0, OURS),
        frost: frost(Frost::High),
        bears: Bears::Yes,
    },
    Class {
        key: "silty-clay",
        name: "silty clay",
        by_hand: "Rolls to a thread of 3 mm but crumbles there; a ribbon between finger and thumb breaks before 50 mm; the thumb dents it.",
        uscs: "CL",
        kind: Kind::Fine,
        unit_weight: kn_m3(18.0, WEIGHTS),
        unit_weight_saturated: kn_m3(18.0, WEIGHTS),
        phi: deg(28.0, FINES),
        undrained: kpa(40.0, UNDRAINED),
        permeability_m_s: m_s(1e-8),
        subgrade: k_b(40.0),
        bearing: kpa(75.0, BEARING),
        frost: frost(Frost::High),
        bears: Bears::Yes,
    },
    Class {
        key: "firm-clay",
        name: "firm clay",
        by_hand: "Smooth and sticky; a ribbon longer than 50 mm; the thumb makes a dent with effort, strong fingers mould it.",
        uscs: "CL",
        kind: Kind::Fine,
        unit_weight: kn_m3(18.0, WEIGHTS),
        unit_weight_saturated: kn_m3(18.0, WEIGHTS),
        phi: deg(25.0, FINES),
        undrained: kpa(40.0, UNDRAINED),
        permeability_m_s: m_s(1e-9),
        subgrade: k_b(40.0),
        bearing: kpa(75.0, BEARING),
        frost: frost(Frost::Medium),
        bears: Bears::Yes,
    },
    Class {
        key: "stiff-clay",
        name: "stiff clay",
        by_hand: "Fingers cannot mould it; the thumb only marks it, the thumbnail goes in; it comes out of the hole in lumps.",
        uscs: "CH",
        kind: Kind::Fine,
        unit_weight: kn_m3(19.0, WEIGHTS),
        unit_weight_saturated: kn_m3(19.0, WEIGHTS),
        phi: deg(25.0, FINES),
        undrained: kpa(75.0, UNDRAINED),
        permeability_m_s: m_s(1e-9),
        subgrade: k_b(75.0),
        bearing: kpa(150.0, BEARING),
        frost: frost(Frost::Medium),
        bears: Bears::Yes,
    },
    Class {
        key: "soft-clay",
        name: "soft clay",
        by_hand: "Comes out between the fingers when squeezed; the thumb sinks in; a boot leaves a deep print.",
        uscs: "CH",
        kind: Kind::Fine,
        unit_weight: kn_m3(17.0, WEIGHTS),
        unit_weight_saturated: kn_m3(17.0, WEIGHTS),
        phi: deg(20.0, FINES),
        undrained: kpa(20.0, UNDRAINED),
        permeability_m_s: m_s(1e-9),
        subgrade: k_b(20.0),
        bearing: None,
        frost: frost(Frost::Medium),
        bears: Bears::No("soft clay creeps under a steady push; dig to firmer ground or ask an engineer"),
    },
    Class {
        key: "made-ground",
        name: "made ground",
        by_hand: "Bits of brick, ash, plaster, glass or plastic; colours change within a spade's width; it lies where somebody tipped it.",
        uscs: "",
        kind: Kind::Coarse,
        unit_weight: kn_m3(17.0, OURS),
        unit_weight_saturated: kn_m3(20.0, OURS),
        phi: deg(28.0, OURS),
        undrained: None,
        permeability_m_s: Figure { value: 1e-5, source: OURS },
        subgrade: n_h(1_100.0, OURS),
        bearing: None,
        frost: Figure { value: Frost::High, source: OURS },
        bears: Bears::No(
            "tipped ground settles and changes from spade to spade; set posts and footings in the ground below it",
        ),
    },
    Class {
        key: "topsoil",
        name: "topsoil",
        by_hand: "Dark, crumbly, smells of earth, full of roots; a spade goes in by its own weight.",
        uscs: "OL",
        kind: Kind::Coarse,
        unit_weight: kn_m3(16.0, OURS),
        unit_weight_saturated: kn_m3(18.0, OURS),
        phi: deg(25.0, OURS),
        undrained: None,
        permeability_m_s: Figure { value: 1e-5, source: OURS },
        subgrade: n_h(1_100.0, OURS),
        bearing: None,
        frost: Figure { value: Frost::High, source: OURS },
        bears: Bears::No("topsoil rots, shrinks and is lifted by frost; count depth from below it"),
    },
];
