//! Does a finished plan hold together? Walks it by other formulas than those that made it and says what is violated.

use groundhold_quantity::{Length, Money, Point, Volume, distance};
use groundhold_surface::clip_convex;

use crate::plan::Plan;

/// One thing that does not hold.
#[derive(Debug, Clone, PartialEq)]
pub struct Violation {
    /// Which rule.
    pub rule: &'static str,
    /// Where.
    pub on: String,
    /// By how much, in the unit of the rule.
    pub by: f64,
}

/// Everything that is violated; empty for a plan that holds together.
pub fn check(plan: &Plan) -> Vec<Violation> {
    let mut found = vec![];
    boards_end_on_posts(plan, &mut found);
    courses_are_whole(plan, &mut found);
    strips_cover_the_wall(plan, &mut found);
    pieces_are_cut_once(plan, &mut found);
    bars_hold_their_pieces(plan, &mut found);
    soil_is_kept(plan, &mut found);
    volumes_agree(plan, &mut found);
    money_adds_up(plan, &mut found);
    tapes_meet(plan, &mut found);
    pipes_fall(plan, &mut found);
    soil_is_carried(plan, &mut found);
    ground_is_one_surface(plan, &mut found);
    found
}

fn fail(found: &mut Vec<Violation>, rule: &'static str, on: String, by: f64) {
    found.push(Violation { rule, on, by });
}

/// Lengths on paper are to the millimetre.
const FITS: Length = Length::mm(1.0);

fn boards_end_on_posts(plan: &Plan, found: &mut Vec<Violation>) {
    for w in &plan.walls {
        let half = w.layout.posts.iter().map(|p| p.chainage).collect::<Vec<_>>();
        for b in &w.layout.boards {
            for end in [b.chainage.0, b.chainage.1] {
                let gap = half.iter().map(|c| (*c - end).abs()).reduce(Length::min).unwrap_or(end);
                // At its ends the wall's boards reach past the post's centre by at most the post's breadth.
                if gap > Length::mm(150.0) {
                    fail(found, "a board ends on a post", format!("{} {}", w.id, b.mark), gap.to_m());
                }
            }
        }
    }
}

fn courses_are_whole(plan: &Plan, found: &mut Vec<Violation>) {
    for w in &plan.walls {
        for bay in &w.layout.bays {
            let within = |b: &&groundhold_hold::Board| {
                let middle = (bay.chainage.0 + bay.chainage.1) / 2.0;
                b.chainage.0 <= middle && middle <= b.chainage.1
            };
            let boards: Vec<_> = w.layout.boards.iter().filter(within).collect();
            if boards.len() != bay.courses {
                let by = boards.len() as f64 - bay.courses as f64;
                fail(found, "a bay has one board a course", format!("{} bay {}", w.id, bay.number), by);
            }
            let height: Length = boards.iter().map(|b| b.top - b.bottom).sum();
            let gap = (height - (bay.top - bay.bottom)).abs();
            let gaps = Length::mm(30.0) * boards.len() as f64;
            if gap > gaps {
                fail(found, "boards fill the bay's height", format!("{} bay {}", w.id, bay.number), gap.to_m());
            }
        }
        for p in &w.layout.posts {
            let by = ((p.top - p.bottom) - p.length).abs();
            if by > Length::mm(20.0) {
                fail(
                    found,
                    "a post is as long as from top to bottom",
                    format!("{} post {}", w.id, p.number),
                    by.to_m(),
                );
            }
        }
    }
}

/// Strips follow each other from end to end, and each stands from its underside to its top, on ground and not above it.
fn strips_cover_the_wall(plan: &Plan, found: &mut Vec<Violation>) {
    for w in &plan.walls {
        let strips = &w.layout.strips;
        let on = |n: usize| format!("{} strip {n}", w.id);
        for pair in strips.windows(2) {
            let gap = (pair[1].chainage.0 - pair[0].chainage.1).abs();
            if gap > FITS {
                fail(found, "strips follow each other", on(pair[1].number), gap.to_m());
            }
        }
        let covered: Length = strips.iter().map(groundhold_hold::Strip::length).sum();
        let by = (covered - w.layout.length).abs();
        if by > FITS {
            fail(found, "strips cover the wall", w.id.clone(), by.to_m());
        }
        for s in strips {
            if s.top < s.foot {
                fail(found, "a strip stands from its foot to its top", on(s.number), (s.foot - s.top).to_m());
            }
            // A wall on posts has its base at each post and not between them: `hold` says where that is too little.
            if !w.layout.posts.is_empty() {
                continue;
            }
            if s.foot < s.base {
                fail(found, "a strip stands on its base", on(s.number), (s.base - s.foot).to_m());
            }
            if s.base > s.front + FITS {
                fail(found, "a base lies in the ground", on(s.number), (s.base - s.front).to_m());
            }
        }
    }
}

fn pieces_are_cut_once(plan: &Plan, found: &mut Vec<Violation>) {
    let mut wanted: Vec<(String, f64)> = plan
        .walls
        .iter()
        .flat_map(|w| {
            w.layout.pieces.iter().filter(|p| !p.built).map(move |p| (format!("{}-{}", w.id, p.mark), p.length.to_mm()))
        })
        .collect();
    let bars = plan.take_off.cutting.iter().flat_map(|c| c.bars.iter());
    for piece in bars.flat_map(|b| b.pieces.iter()) {
        let near = |w: &(String, f64)| w.0 == piece.mark && (w.1 - piece.length.to_mm()).abs() < 1.0;
        match wanted.iter().position(near) {
            Some(i) => {
                wanted.swap_remove(i);
            }
            // Riser boards are cut with the wall's boards.
            None if plan.shaped.flights.iter().any(|f| piece.mark.starts_with(&format!("{}-r", f.id))) => {}
            None => fail(found, "nothing is cut that is not wanted", piece.mark.clone(), piece.length.to_m()),
        }
    }
    if plan.take_off.is_complete() {
        for (mark, mm) in wanted {
            fail(found, "every piece is cut", mark, mm / 1000.0);
        }
    }
}

/// What the cutting list forgives a bar (`order::cut` says why): a tenth of a millimetre.
const OVERRUN: Length = Length::mm(0.1);
/// Half of the hundredth of a millimetre in which pieces are counted there.
const ROUNDED: Length = Length::mm(0.005);

fn bars_hold_their_pieces(plan: &Plan, found: &mut Vec<Violation>) {
    for c in &plan.take_off.cutting {
        for (i, bar) in c.bars.iter().enumerate() {
            let pieces: Length = bar.pieces.iter().map(|p| p.length).sum();
            let cuts = c.saw.kerf * (bar.pieces.len().saturating_sub(1)) as f64;
            let over = pieces + cuts - bar.stock;
            if over > OVERRUN + ROUNDED * bar.pieces.len() as f64 {
                fail(found, "a bar holds its pieces and cuts", format!("{} bar {}", c.material, i + 1), over.to_m());
            }
        }
    }
}

fn soil_is_kept(plan: &Plan, found: &mut Vec<Violation>) {
    for s in plan.dug.streams() {
        let by = (s.dug - s.used - s.over).to_m3().abs();
        if by > 1e-9 * s.dug.to_m3().max(1.0) {
            fail(found, "what is dug is used or left over", s.earth.words().into(), by);
        }
        let by = (s.placed - s.short - s.factors.compacted(s.used)).to_m3().abs();
        if by > 1e-9 * s.placed.to_m3().max(1.0) {
            fail(found, "what is placed was used or is short", s.earth.words().into(), by);
        }
    }
    let removed: Volume = plan.dug.rows.iter().map(|r| r.dug).sum();
    let by = (removed - plan.dug.dug()).to_m3().abs();
    if by > 1e-9 * removed.to_m3().max(1.0) {
        fail(found, "rows add up to what is dug", String::new(), by);
    }
}

/// Cut less fill by the level difference at the middle of each overlap times its area: exact for planes, and without
/// splitting any of them.
fn volumes_agree(plan: &Plan, found: &mut Vec<Violation>) {
    let triangles = plan.survey.ground.facets();
    for m in &plan.moves {
        let pieces = plan.shaped.grounds.iter().filter(|g| g.of == m.element && g.kind == m.kind);
        let mut net = 0.0;
        for g in pieces {
            for t in &triangles {
                let overlap = clip_convex(&g.facet.ring, &t.ring);
                let (area, middle) = area_and_middle(&overlap);
                if area > 0.0 {
                    net += area * (t.plane.level_at(middle) - g.facet.plane.level_at(middle)).to_m();
                }
            }
        }
        let by = (net - (m.volumes.cut - m.volumes.fill).to_m3()).abs();
        if by > 1e-7 * (1.0 + m.volumes.cut.to_m3() + m.volumes.fill.to_m3()) {
            fail(found, "cut less fill agrees by another way", m.element.clone(), by);
        }
    }
}

fn ground_is_one_surface(plan: &Plan, found: &mut Vec<Violation>) {
    use groundhold_shape::Flaw;
    for flaw in plan.shaped.flaws(&plan.survey.ground) {
        match flaw {
            Flaw::Overlap { of, area, .. } => {
                fail(found, "no two pieces of finished ground overlap", of.join(" "), area.to_m2());
            }
            Flaw::Uncovered { area } => fail(found, "the surface covers the survey once", String::new(), area.to_m2()),
            Flaw::Step { of, height, .. } => fail(found, "no step inside an element", of, height.to_m()),
        }
    }
}

fn area_and_middle(ring: &[Point]) -> (f64, Point) {
    let Some(o) = ring.first() else { return (0.0, Point::default()) };
    let (mut area, mut x, mut y) = (0.0, 0.0, 0.0);
    for w in ring[1..].windows(2) {
        let (u, v) = (w[0] - *o, w[1] - *o);
        let a = u.cross(v) / 2.0;
        area += a;
        x += a * (u.x + v.x) / 3.0;
        y += a * (u.y + v.y) / 3.0;
    }
    if area > 0.0 { (area, Point::m(o.x + x / area, o.y + y / area)) } else { (0.0, *o) }
}

fn money_adds_up(plan: &Plan, found: &mut Vec<Violation>) {
    let q = &plan.quote;
    let lines: Money = q.lines.iter().filter_map(|l| l.amount).sum();
    let parts: Money = q.parts.iter().map(|p| p.total).sum();
    let checks = [
        ("lines add up to the net sum", lines, q.net),
        ("heads add up to the net sum", q.heads.iter().map(|h| h.1).sum(), q.net),
        ("elements add up to the total", parts, q.total),
        ("net, overhead, margin and tax add up to the total", q.net + q.overhead + q.margin + q.tax, q.total),
    ];
    for (rule, a, b) in checks {
        if a != b {
            fail(found, rule, String::new(), (a - b).amount());
        }
    }
}

fn tapes_meet(plan: &Plan, found: &mut Vec<Violation>) {
    let peg = |id: &str| plan.setout.pegs.iter().find(|p| p.id == id).map(|p| p.at);
    for r in &plan.setout.rows {
        let Some((a, b)) = &r.ties else { continue };
        let (Some(pa), Some(pb)) = (peg(&a.peg), peg(&b.peg)) else { continue };
        let met = groundhold_setout::points_from_ties(pa, pb, a.reads, b.reads);
        let gap = met.map_or(Length::m(f64::INFINITY), |(l, r2)| distance(l, r.mark.at).min(distance(r2, r.mark.at)));
        if gap > FITS {
            fail(found, "two tapes meet at the mark", r.mark.id.clone(), gap.to_m());
        }
    }
}

/// Every earth that is dug is carried somewhere, and no carrying has less work than the bound.
fn soil_is_carried(plan: &Plan, found: &mut Vec<Violation>) {
    let Some(c) = &plan.groundwork.carried else { return };
    if (c.work - c.bound).abs() > 1e-6 * c.work.max(1.0) {
        fail(found, "the least work is proved", String::new(), c.work - c.bound);
    }
    for s in plan.dug.streams() {
        let heap = format!("heap of {}", s.earth.words());
        let first = c.carries.iter().filter(|x| x.earth == s.earth && x.from != heap && x.from != "gate");
        let by = (first.map(|x| x.bank).sum::<Volume>() - s.dug).to_m3().abs();
        if by > 1e-7 * s.dug.to_m3().max(1.0) {
            fail(found, "what is dug is carried", s.earth.words().into(), by);
        }
    }
}

fn pipes_fall(plan: &Plan, found: &mut Vec<Violation>) {
    for s in &plan.drained.swales {
        for w in s.points.windows(2).filter(|w| w[1].invert > w[0].invert) {
            fail(found, "a swale falls all the way", s.wish.above.clone(), (w[1].invert - w[0].invert).to_m());
        }
    }
    for p in &plan.drained.pipes {
        for w in p.points.windows(2) {
            let rise = w[1].invert - w[0].invert;
            if rise > Length::mm(0.1) {
                fail(found, "a pipe falls all the way", p.wall.clone(), rise.to_m());
            }
        }
    }
}
