//! Any text as every quantity. What is read is a number, and what a person is shown of it does not panic.

use groundhold_quantity::{
    Angle, Area, Density, Flow, Force, Length, Level, LineForce, Mass, Moment, Pressure, Quantity, RainIntensity,
    Share, Slope, Time, UnitWeight, Units, Volume, parse,
};

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    for units in [Units::Metric, Units::Feet] {
        read::<Length>(text).map(|q| (units.length(q), units.run(q)));
        read::<Level>(text).map(|q| units.level(q));
        read::<Area>(text).map(|q| units.area(q));
        read::<Volume>(text).map(|q| units.volume(q));
        read::<Slope>(text).map(|q| units.slope(q));
        read::<Pressure>(text).map(|q| units.pressure(q));
    }
    read::<Angle>(text);
    read::<Share>(text);
    read::<Force>(text);
    read::<LineForce>(text);
    read::<Moment>(text);
    read::<UnitWeight>(text);
    read::<Mass>(text);
    read::<Density>(text);
    read::<Flow>(text);
    read::<RainIntensity>(text);
    read::<Time>(text);
}

fn read<Q: Quantity>(text: &str) -> Option<Q> {
    match parse::<Q>(text) {
        Ok(q) => {
            assert!(q.in_si().is_finite(), "`{text}` reads as {}", q.in_si());
            Some(q)
        }
        Err(e) => {
            assert!(!e.to_string().is_empty());
            None
        }
    }
}
