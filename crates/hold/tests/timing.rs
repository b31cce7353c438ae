mod walls;
use groundhold_earth::soil::{Soil, class};
use groundhold_hold::systems::timber_posts::*;
use groundhold_hold::*;
use groundhold_quantity::*;
use walls::*;
fn show(c: &WallCase) {
    let t = std::time::Instant::now();
    let l = groundhold_hold::lay_out(c).unwrap();
    println!("layout {:?}", t.elapsed());
    for p in &l.posts {
        println!(
            "P{} ch {:.3} ret {:.0} exp {:.0} depth {:.0} len {:.0} trib {:.0}",
            p.number,
            p.chainage.to_m(),
            p.retained.to_mm(),
            p.exposed.to_mm(),
            p.depth.to_mm(),
            p.length.to_mm(),
            p.tributary.to_mm()
        );
    }
    for b in &l.bays {
        println!(
            "bay {} courses {} bottom {:.3} top {:.3} front {:.3} behind {:.3}",
            b.number,
            b.courses,
            b.bottom.to_m(),
            b.top.to_m(),
            b.front.to_m(),
            b.behind.to_m()
        );
    }
    for b in &l.boards {
        print!("{} {:.3}-{:.3} len {:.0}; ", b.mark, b.chainage.0.to_m(), b.chainage.1.to_m(), b.length.to_mm());
    }
    println!();
    let t = std::time::Instant::now();
    let v = groundhold_hold::judge(c, &l);
    println!(
        "judge {:?} checks {} findings {} util {}",
        t.elapsed(),
        v.checks.len(),
        v.findings.len(),
        v.utilisation()
    );
    for f in &v.findings {
        println!("{} {} {}: {} u={:?}", f.kind.code, f.severity.word(), f.place, f.says, f.utilisation);
        for r in &f.remedies {
            println!("     - {} {:?}", r.says, r.change);
        }
    }
    for m in v.margins.iter().filter(|m| m.post == 3) {
        println!("{:?} {} {:?} {:?} {} {}", m.case, m.method, m.depth, m.factor, m.wanted, m.governs);
    }
    for k in v.checks.iter().filter(|k| k.on == "post 3" || k.on == "bay 3" || k.on.starts_with("ch")) {
        println!(
            "{:?} {} {} {} {} {:.3} {:.3} {} u={:.3} {}",
            k.kind,
            k.on,
            k.case.words(),
            k.method,
            k.basis,
            k.demand,
            k.capacity,
            k.unit.0,
            k.utilisation,
            k.governs
        );
    }
    println!(
        "{:?} {:?}",
        v.slip,
        v.pushes.iter().map(|p| (p.method, p.case, p.horizontal.to_kn_per_m(), p.arm.to_m())).collect::<Vec<_>>()
    );
}
#[test]
fn timing() {
    let mut s = spec();
    s.post = PostTimber { breadth: mm(75.0), depth: mm(100.0), grade: c24(75.0, 100.0), treatment: "H5".into() };
    s.bury = mm(50.0);
    s.neglect_top = mm(150.0);
    s.fit = CourseFit::FromTop;
    s.capping = Some(Capping { width: mm(150.0), thickness: mm(50.0), quality: "H4 C24".into() });
    // uphill wall: level pad 100.0 in front; slope rises north; fades at both ends over 1.2 m
    let mut c = case(
        vec![
            station(0.0, 100.0, 100.0, 100.05),
            station(2.0, 100.8, 100.0, 100.85),
            station(8.0, 100.9, 100.0, 100.95),
            station(10.0, 100.0, 100.0, 100.05),
        ],
        s.clone(),
    );
    for st in &mut c.stations {
        st.slope_behind = Slope::ratio(1.0 / 6.0);
    }
    c.retained_soil = Soil::of(class("silty-clay").unwrap());
    c.founding_soil = c.retained_soil.clone();
    c.search_slip = true;
    show(&c);
    println!("=============== downhill");
    let mut c = case(
        vec![
            station(0.0, 100.0, 100.0, 100.05),
            station(1.5, 100.0, 99.6, 100.05),
            station(7.0, 100.0, 99.5, 100.05),
            station(8.5, 100.0, 100.0, 100.05),
        ],
        s,
    );
    for st in &mut c.stations {
        st.slope_front = Slope::ratio(1.0 / 6.0);
    }
    c.retained_soil = Soil::of(class("silty-clay").unwrap());
    c.founding_soil = c.retained_soil.clone();
    c.loads = vec![Load {
        value: Pressure::kpa(2.5),
        from: mm(300.0),
        to: mm(2700.0),
        permanent: true,
        what: "tool shed".into(),
    }];
    c.search_slip = true;
    c.basis = &groundhold_earth::basis::EN1997_DA1;
    show(&c);
}
