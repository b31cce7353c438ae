//! Does an order hold what is needed, and does it add up, whatever the order of the input?

use groundhold_order::*;
use groundhold_quantity::{Area, Density, Length, Mass, Money, Share, Time, Volume};
use proptest::prelude::*;

/// An invented price list.
fn prices() -> Vec<Price> {
    let board = |m: f64, price: f64| Price::new("board 200x50", SoldBy::Each, Money::of(price)).long(Length::m(m));
    vec![
        board(2.4, 17.60),
        board(3.0, 22.40),
        board(3.6, 27.20),
        Price::new("concrete bag 20 kg", SoldBy::Bag, Money::of(5.20)).weighing(Mass::kg(20.0)),
        Price::new("stone 10-20", SoldBy::T, Money::of(38.0)),
        Price::new("drain pipe 80", SoldBy::M, Money::of(2.90)).in_packs_of(50.0),
        Price::new("geotextile", SoldBy::M2, Money::of(1.35)).in_packs_of(100.0),
        Price::new("screw 8x120", SoldBy::Each, Money::of(0.62)).in_packs_of(50.0),
        Price::new("screw 8x120", SoldBy::Each, Money::of(0.50)).in_packs_of(200.0),
        Price::new("labour", SoldBy::Hour, Money::of(38.0)),
    ]
}

fn boards(element: &str, lengths: &[f64]) -> Need {
    let pieces = lengths.iter().enumerate().map(|(i, l)| (format!("{}", i + 1), Length::m(*l))).collect();
    Need::new("board 200x50", element, "boards", Measured::Pieces(pieces))
}

fn needs() -> Vec<Need> {
    let stone = Need::new("stone 10-20", "W1", "drainage", Measured::Volume(Volume::m3(0.88)));
    vec![
        boards("W1", &[1.5; 9]),
        boards("W2", &[1.5; 5]),
        Need::new("concrete bag 20 kg", "W1", "posts", Measured::Count(38.0)),
        stone.dense(Density::t_per_m3(1.5)).wasting(Share::percent(10.0)),
        Need::new("drain pipe 80", "W1", "drain", Measured::Length(Length::m(7.5))),
        Need::new("geotextile", "W1", "behind the stone", Measured::Area(Area::m2(14.0))),
        Need::new("screw 8x120", "W1", "boards", Measured::Count(40.0)),
        Need::new("labour", "W1", "wall", Measured::Time(Time::h(31.0))).under(Head::Labour),
    ]
}

fn line<'a>(t: &'a TakeOff, item: &str) -> &'a Line {
    t.lines.iter().find(|l| l.item == item).unwrap_or_else(|| panic!("there is no line for {item}"))
}

#[test]
fn a_low_wall_is_taken_off_to_whole_packs() {
    let t = take_off(&needs(), &prices(), &Saw::default());
    assert!(t.findings.is_empty(), "{:?}", t.findings);
    let b = line(&t, "board 200x50");
    assert_eq!((b.bought, b.stock_length, b.amount), (7.0, Some(Length::m(3.0)), Some(Money::of(156.80))));
    let stone = line(&t, "stone 10-20");
    assert!((stone.net - 1.32).abs() < 1e-9 && stone.bought == 2.0, "{stone:?}");
    assert_eq!((line(&t, "drain pipe 80").packs, line(&t, "drain pipe 80").amount), (1.0, Some(Money::of(145.0))));
    assert_eq!(line(&t, "concrete bag 20 kg").mass, Some(Mass::kg(760.0)));
    assert_eq!(line(&t, "labour").amount, Some(Money::of(1178.0)));
    assert!(t.is_complete());
}

#[test]
fn of_several_packs_the_cheaper_way_is_bought() {
    let of = |n: f64| {
        let need = [Need::new("screw 8x120", "W1", "", Measured::Count(n))];
        let t = take_off(&need, &prices(), &Saw::default());
        (t.lines[0].bought, t.lines[0].amount)
    };
    assert_eq!(of(50.0), (50.0, Some(Money::of(31.0))));
    assert_eq!(of(160.0), (200.0, Some(Money::of(100.0))));
}

#[test]
fn a_missing_price_is_a_finding_and_never_a_silent_zero() {
    let mut list = prices();
    list.retain(|p| p.item != "geotextile");
    let t = take_off(&needs(), &list, &Saw::default());
    assert_eq!(t.findings.len(), 1);
    let f = &t.findings[0];
    assert_eq!((f.kind.code, f.place.element.as_str()), ("O-001", "W1"));
    assert!(f.says.contains("`geotextile`") && f.says.contains("14 m²"), "{}", f.says);
    assert!(f.remedies[0].says.contains("price list"));
    assert_eq!(line(&t, "geotextile").amount, None);
    let q = quote(t.lines.iter().map(QuoteLine::from).collect(), &Terms::default());
    assert_eq!(q.missing, ["geotextile"]);
}

#[test]
fn stone_without_a_density_is_a_finding_that_says_so() {
    let need = [Need::new("stone 10-20", "W1", "", Measured::Volume(Volume::m3(0.88)))];
    let t = take_off(&need, &prices(), &Saw::default());
    assert_eq!(t.findings[0].kind.code, "O-002");
    assert!(t.findings[0].says.contains("density"), "{}", t.findings[0].says);
    assert!(!t.is_complete());
}

#[test]
fn a_piece_too_long_for_the_list_stops_and_says_which_length_would_do() {
    let t = take_off(&[boards("W1", &[1.5, 4.1])], &prices(), &Saw::default());
    assert_eq!(t.findings[0].kind.code, "O-003");
    assert!(t.findings[0].remedies[0].says.contains("4100 mm"));
    assert!(!t.is_complete());
}

#[test]
fn a_count_of_something_listed_in_several_lengths_is_refused() {
    let t = take_off(&[Need::new("board 200x50", "W1", "", Measured::Count(3.0))], &prices(), &Saw::default());
    assert!(t.findings[0].says.contains("several lengths"), "{}", t.findings[0].says);
}

#[test]
fn spare_boards_are_whole_and_of_the_longest_length_bought() {
    let t = take_off(&[boards("W1", &[1.5; 14]).wasting(Share::percent(5.0))], &prices(), &Saw::default());
    assert_eq!((t.lines[0].net, t.lines[0].waste, t.lines[0].bought), (7.0, 1.0, 8.0));
}

#[test]
fn what_is_bought_already_is_not_bought_again() {
    let (all, list, saw) = (needs(), prices(), Saw::default());
    let first = take_off(&all, &list, &saw);
    let of = |l: &Line| OnHand { item: l.item.clone(), stock_length: l.stock_length, units: l.bought };
    let bought: Vec<OnHand> = first.lines.iter().map(of).collect();
    let again = still_to_buy(&all, &list, &saw, &bought, DEFAULT_EFFORT);
    assert_eq!(again.sum(), Money::ZERO);
    assert!(again.lines.iter().all(|l| l.bought == 0.0));
    let pipe = again.left_over.iter().find(|l| l.item == "drain pipe 80").unwrap();
    assert_eq!(pipe.units, 42.5);
    // The wall grows by a bay: two boards' worth more, one board to buy.
    let mut more = all.clone();
    more.push(boards("W2", &[1.5, 1.5]));
    let grown = still_to_buy(&more, &list, &saw, &bought, DEFAULT_EFFORT);
    assert_eq!(line(&grown, "board 200x50").bought, 1.0);
    // Without the second wall, two boards are left over.
    let without: Vec<Need> = all.into_iter().filter(|n| n.element != "W2").collect();
    let over = left_over(&without, &list, &saw, &bought, DEFAULT_EFFORT);
    let boards = over.iter().find(|l| l.item == "board 200x50").unwrap();
    assert_eq!((boards.units, boards.stock_length, boards.unit), (2.0, Some(Length::m(3.0)), Some(SoldBy::Each)));
}

#[test]
fn boards_on_site_without_a_length_are_asked_for() {
    let on_hand = [OnHand { item: "board 200x50".into(), stock_length: None, units: 4.0 }];
    let t = take_off_with(&needs(), &prices(), &Saw::default(), &on_hand, DEFAULT_EFFORT);
    assert!(t.findings.iter().any(|f| f.kind.code == "O-007"));
    assert_eq!(line(&t, "board 200x50").bought, 7.0);
}

#[test]
fn bars_sold_by_the_metre_cost_their_length() {
    let row = Price::new("rail", SoldBy::M, Money::of(4.0)).long(Length::m(3.0));
    let need = Need::new("rail", "S1", "", Measured::Pieces(vec![("a".into(), Length::m(1.4)); 2]));
    let t = take_off(&[need], &[row], &Saw::default());
    assert_eq!((t.lines[0].bought, t.lines[0].amount), (1.0, Some(Money::of(12.0))));
}

#[test]
fn every_line_can_show_its_packs() {
    let t = take_off(&needs(), &prices(), &Saw::default());
    for l in &t.lines {
        let sheet = l.trace.as_ref().unwrap().sheet().unwrap();
        assert_eq!(sheet.values[2], groundhold_working::Value::One(l.bought), "{}", l.item);
    }
}

fn any_needs() -> impl Strategy<Value = Vec<Need>> {
    let item = prop_oneof![
        Just("concrete bag 20 kg"),
        Just("screw 8x120"),
        Just("nothing like it"),
        Just("board 200x50"),
        Just("stone 10-20"),
    ];
    let one = (item, 0u8..3, 0.1f64..40.0, 0.0f64..20.0).prop_map(|(item, element, much, waste)| {
        let q = match item {
            "board 200x50" => Measured::Pieces(vec![("p".into(), Length::m(0.3 + much / 15.0)); 2]),
            "stone 10-20" => Measured::Volume(Volume::m3(much)),
            _ => Measured::Count(much.round()),
        };
        let need = Need::new(item, format!("W{element}"), "something", q).dense(Density::t_per_m3(1.5));
        need.wasting(Share::percent(waste))
    });
    prop::collection::vec(one, 0..14)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn the_order_of_needs_and_prices_does_not_matter(needs in any_needs(), turn in 0usize..20) {
        let a = take_off(&needs, &prices(), &Saw::default());
        let (mut needs, mut list) = (needs, prices());
        if !needs.is_empty() {
            let by = turn % needs.len();
            needs.rotate_left(by);
        }
        list.rotate_left(turn % prices().len());
        list.reverse();
        let b = take_off(&needs, &list, &Saw::default());
        prop_assert_eq!(a, b);
    }

    #[test]
    fn every_line_is_shared_out_among_its_elements_and_covers_what_is_needed(needs in any_needs()) {
        let t = take_off(&needs, &prices(), &Saw::default());
        for l in &t.lines {
            let parts: Money = l.elements.iter().map(|e| e.1).sum();
            prop_assert_eq!(parts, l.amount.unwrap_or(Money::ZERO));
            if l.amount.is_some() {
                prop_assert!(l.bought + l.on_hand >= l.gross - 1e-6 * l.gross.max(1.0));
                prop_assert_eq!(l.amount, l.rate.map(|r| (r * l.bought).to_cents()));
            }
        }
        let q = quote(t.lines.iter().map(QuoteLine::from).collect(), &Terms::default());
        prop_assert_eq!(q.net, t.sum());
        prop_assert_eq!(q.is_complete(), t.is_complete());
        let asked = t.lines.iter().filter(|l| l.amount.is_none()).count();
        let said = t.findings.iter().filter(|f| f.kind.code != "O-004").count();
        prop_assert_eq!(asked, said);
    }
}
