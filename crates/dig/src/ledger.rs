//! The account line by line, from figures that can be counted.

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Area, Length, Volume};

use crate::findings::NOT_COUNTABLE;
use crate::formation::formation_of;
use crate::{DigCase, Earth, Row};

/// Most of anything that is believed: a million m³, m² or m.
const MOST: f64 = 1e6;

/// The case with every figure that cannot be counted set to nothing, and a finding for each.
pub(crate) fn countable(case: &DigCase) -> (DigCase, Vec<Finding>) {
    let mut case = case.clone();
    let mut said = vec![];
    let mut check = |place: Place, what: &str, value: f64| -> bool {
        if (0.0..=MOST).contains(&value) {
            return true;
        }
        let says = format!("{what} is {value}; expected an ordinary number from 0 to {MOST}. It counts as nothing.");
        said.push(Finding::new(&NOT_COUNTABLE, place, says));
        false
    };
    let mut volume = |place: Place, what: &str, v: &mut Volume| {
        if !check(place, what, v.to_m3()) {
            *v = Volume::ZERO;
        }
    };
    for m in &mut case.moved {
        volume(Place::of(&m.element), "the cut (m³)", &mut m.cut);
        volume(Place::of(&m.element), "the fill (m³)", &mut m.fill);
        volume(Place::of(&m.element), "the rock (m³)", &mut m.rock);
    }
    for w in &mut case.walls {
        volume(Place::of(&w.wall), "the drainage zone in the ground (m³)", &mut w.zone_in_ground);
        volume(Place::of(&w.wall), "the drainage zone in fill (m³)", &mut w.zone_in_fill);
        volume(Place::of(&w.wall), "the soil cap (m³)", &mut w.cap);
        volume(Place::of(&w.wall), "the drain stone (m³)", &mut w.stone);
        volume(Place::of(&w.wall), "the working room (m³)", &mut w.working_room);
    }
    for b in &mut case.bodies {
        volume(Place::of(&b.wall), "what is dug for the wall (m³)", &mut b.dug);
        volume(Place::of(&b.wall), "what is put back round the wall (m³)", &mut b.put_back);
        volume(Place::of(&b.wall), "the part of the wall in fill (m³)", &mut b.in_fill);
    }
    for (wall, v) in &mut case.holes {
        volume(Place::of(wall), "the spoil of the post holes (m³)", v);
    }
    for t in &mut case.trenches {
        volume(Place::on("", t.what.as_str()), "the trench dug (m³)", &mut t.dug);
        volume(Place::on("", t.what.as_str()), "the trench put back (m³)", &mut t.put_back);
        volume(Place::on("", t.what.as_str()), "the stone of the trench (m³)", &mut t.stone);
    }
    let mut area = |place: Place, what: &str, a: &mut Area| {
        if !check(place, what, a.to_m2()) {
            *a = Area::ZERO;
        }
    };
    for m in &mut case.moved {
        area(Place::of(&m.element), "the area in cut (m²)", &mut m.cut_area);
        area(Place::of(&m.element), "the area in fill (m²)", &mut m.fill_area);
        area(Place::of(&m.element), "the turf laid again (m²)", &mut m.turf_back);
    }
    area(Place::job(), "the area stripped besides (m²)", &mut case.stripped_besides);
    area(Place::job(), "the turf laid again (m²)", &mut case.turf_back);
    area(Place::job(), "the area of topsoil put back (m²)", &mut case.topsoil_back);
    let mut thickness = |place: Place, what: &str, l: &mut Length| {
        if !check(place, what, l.to_m()) {
            *l = Length::ZERO;
        }
    };
    thickness(Place::job(), "the thickness of turf (m)", &mut case.turf);
    thickness(Place::job(), "the thickness of topsoil (m)", &mut case.topsoil);
    thickness(Place::job(), "the distance a barrow is pushed (m)", &mut case.carry);
    for m in &mut case.moved {
        thickness(Place::of(&m.element), "the build-up (m)", &mut m.build_up);
        thickness(Place::of(&m.element), "the topsoil put back (m)", &mut m.topsoil_back);
    }
    (case, said)
}

/// Every line of the account. The case must be countable.
pub(crate) fn rows(case: &DigCase) -> Vec<Row> {
    let mut rows = vec![];
    let mut put = |element: &str, what, earth, dug: Volume, placed: Volume, trace| {
        if dug != Volume::ZERO || placed != Volume::ZERO {
            rows.push(Row { element: element.into(), what, earth, dug, placed, trace });
        }
    };
    let none = Volume::ZERO;
    let strip = case.turf + case.topsoil;
    for m in &case.moved {
        let area = m.cut_area + m.fill_area;
        let laid = m.turf_back.min(area) * case.turf;
        put(
            &m.element,
            if laid > none { "turf stripped, and laid again" } else { "turf stripped" },
            Earth::Turf,
            area * case.turf,
            laid,
            None,
        );
        let back = area * m.topsoil_back;
        put(&m.element, "topsoil stripped and spread back", Earth::Topsoil, area * case.topsoil, back, None);
        let on_top = m.build_up + m.topsoil_back;
        let formed = formation_of(m.cut, m.fill, [m.cut_area, m.fill_area], strip, on_top);
        let rock = m.rock.min(formed.dug);
        put(&m.element, "cut and fill", Earth::Subsoil, formed.dug - rock, formed.filled, Some(formed.trace));
        put(&m.element, "rock broken out", Earth::Rock, rock, none, None);
    }
    let besides = case.stripped_besides;
    put(
        "",
        "turf stripped besides, and laid again",
        Earth::Turf,
        besides * case.turf,
        case.turf_back * case.turf,
        None,
    );
    let back = case.topsoil_back * case.topsoil;
    put("", "topsoil stripped besides, and spread back", Earth::Topsoil, besides * case.topsoil, back, None);
    for w in &case.walls {
        put(&w.wall, "drainage zone dug", Earth::Subsoil, w.zone_in_ground, none, None);
        put(&w.wall, "drainage zone in place of fill", Earth::Subsoil, none, -w.zone_in_fill, None);
        put(&w.wall, "soil cap on the drainage zone", Earth::Subsoil, none, w.cap, None);
        put(&w.wall, "working room", Earth::Subsoil, w.working_room, w.working_room, None);
    }
    for b in &case.bodies {
        put(&b.wall, "dug for the wall, put back round it", Earth::Subsoil, b.dug, b.put_back, None);
        put(&b.wall, "wall in place of fill", Earth::Subsoil, none, -b.in_fill, None);
    }
    for (wall, spoil) in &case.holes {
        put(wall, "post holes", Earth::Subsoil, *spoil, none, None);
    }
    for t in &case.trenches {
        put(&t.what, "pipe trench", Earth::Subsoil, t.dug, t.put_back, None);
    }
    rows
}
