//! The sizes of a wall, whatever its system: read and written by the rows that the system itself gives.

use groundhold_hold::{Field, Given, Holds, Spec};
use groundhold_order::Price;
use groundhold_quantity::Length;

use crate::page::Node;
use crate::spelled as say;

/// Stock lengths by item.
pub(crate) type Stock = Vec<(String, Vec<Length>)>;

/// The stock lengths of every item of a price list.
pub(crate) fn stock_of(prices: &[Price]) -> Stock {
    let mut stock: Stock = vec![];
    for p in prices {
        let Some(length) = p.stock_length else { continue };
        match stock.iter_mut().find(|(item, _)| *item == p.item) {
            Some((_, lengths)) => lengths.push(length),
            None => stock.push((p.item.clone(), vec![length])),
        }
    }
    stock
}

/// Reads the sizes of a system that starts with its usual ones. `None` after a complaint.
pub(crate) fn read(n: &Node, mut spec: Spec, stock: &Stock) -> Option<Spec> {
    let mut whole = true;
    for field in spec.clone().system().fields() {
        if !n.has(field.key) {
            // A size that must be there is missed by reading it.
            whole &= !field.must || n.raw(field.key).is_some();
            continue;
        }
        let set = |given: Given| spec.system_mut().set(field.key, &given);
        match given(n, field).map(set) {
            Some(Ok(())) => {}
            Some(Err(why)) => {
                n.complain(field.key, why);
                whole = false;
            }
            None => whole = false,
        }
    }
    if let Some((key, item)) = spec.system().stocked().filter(|(key, _)| !n.has(key))
        && let Some((_, lengths)) = stock.iter().find(|(i, _)| *i == item)
        && let Err(why) = spec.system_mut().set(key, &Given::Lengths(lengths.clone()))
    {
        n.complain(key, why);
        whole = false;
    }
    whole.then_some(spec)
}

/// The value of a field that is there. `None` after a complaint.
fn given(n: &Node, field: &Field) -> Option<Given> {
    let key = field.key;
    match field.holds {
        Holds::Length => n.quantity(key).map(Given::Length),
        Holds::Slope => n.quantity(key).map(Given::Slope),
        Holds::Angle => n.quantity(key).map(Given::Angle),
        Holds::Share => n.quantity(key).map(Given::Share),
        Holds::Pressure => n.quantity(key).map(Given::Pressure),
        Holds::UnitWeight => n.quantity(key).map(Given::UnitWeight),
        Holds::Density => n.quantity(key).map(Given::Density),
        // A number that was set from the command line stands as text.
        Holds::Whole => match n.raw(key)?.as_str() {
            Some(text) => field.read(text).map_err(|why| n.complain(key, why)).ok(),
            None => n.number(key).map(|v| Given::Whole(v as u32)),
        },
        Holds::Flag => match n.raw(key)?.as_str() {
            Some(text) => field.read(text).map_err(|why| n.complain(key, why)).ok(),
            None => n.flag(key).map(Given::Flag),
        },
        Holds::OneOf(_) => n.text(key).map(Given::Text),
        Holds::Lengths => match n.raw(key)?.as_str() {
            Some(text) => field.read(text).map_err(|why| n.complain(key, why)).ok(),
            None => n.lengths(key).map(Given::Lengths),
        },
        Holds::Own { whole, .. } => {
            let text = n.raw(key)?.as_str().unwrap_or_default();
            match whole(text) {
                Ok(()) => Some(Given::Text(text.into())),
                Err(why) => {
                    n.complain(key, why);
                    None
                }
            }
        }
    }
}

/// Every size that is not left to be solved, as TOML. Stock that the price list gives is left out, so that a new list
/// brings its own.
pub(crate) fn written(spec: &Spec, stock: &Stock) -> Vec<(&'static str, String)> {
    let system = spec.system();
    let stocked = system.stocked();
    let listed = |key: &str, given: &Given| {
        let item = stocked.as_ref().filter(|(k, _)| *k == key).map(|(_, item)| item);
        let lengths = item.and_then(|item| stock.iter().find(|(i, _)| i == item)).map(|(_, l)| l);
        lengths.is_some_and(|l| *given == Given::Lengths(l.clone()))
    };
    let fields = system.fields().into_iter().filter_map(|f| Some((f.key, system.get(f.key)?)));
    fields.filter(|(key, given)| !listed(key, given)).map(|(key, given)| (key, spelled(&given))).collect()
}

fn spelled(given: &Given) -> String {
    match given {
        Given::Length(l) => say::length(*l),
        Given::Slope(s) => say::slope(*s),
        Given::Angle(a) => say::angle(*a),
        Given::Share(s) => say::share(*s),
        Given::Pressure(p) => say::pressure(*p),
        Given::UnitWeight(g) => say::unit_weight(*g),
        Given::Density(d) => say::density(*d),
        Given::Whole(n) => n.to_string(),
        Given::Flag(f) => f.to_string(),
        Given::Text(t) => crate::record_file::quoted(t),
        Given::Lengths(all) => format!("[{}]", all.iter().map(|l| say::length(*l)).collect::<Vec<_>>().join(", ")),
    }
}
