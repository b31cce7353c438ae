//! Plans a job folder and says what the stages found: a look inside while working on the engine.

fn main() {
    let folder = std::env::args().nth(1).unwrap_or_else(|| "demo".into());
    let open = |name: &str| std::fs::read_to_string(format!("{folder}/{name}")).map_err(|e| e.to_string());
    let text = open("job.toml").unwrap_or_default();
    let read = groundhold_exchange::read_job("job.toml", &text, &open);
    read.problems.iter().for_each(|p| println!("{p}"));
    let Some(job) = read.job else { return };
    let begun = std::time::Instant::now();
    let plan = match groundhold_plan::plan(&job) {
        Ok(p) => p,
        Err(t) => {
            t.iter().for_each(|t| println!("{:?} {:?}: {}", t.of, t.row, t.says));
            return;
        }
    };
    println!("planned in {:?}", begun.elapsed());
    for w in &plan.walls {
        println!(
            "{} length {:.3} retained {:.3} exposed {:.3} posts {} boards {}",
            w.id,
            w.layout.length.to_m(),
            w.layout.retained.to_m(),
            w.layout.exposed.to_m(),
            w.layout.posts.len(),
            w.layout.boards.len()
        );
        for p in &w.layout.posts {
            println!(
                "  post {} c {:.2} at {:.2},{:.2} top {:.3} front {:.3} behind {:.3} ret {:.3} depth {:.2} len {:.2}",
                p.number,
                p.chainage.to_m(),
                p.at.x,
                p.at.y,
                p.top.to_m(),
                p.front.to_m(),
                p.behind.to_m(),
                p.retained.to_m(),
                p.depth.to_m(),
                p.length.to_m()
            );
        }
    }
    for f in &plan.shaped.flights {
        println!(
            "{} risers {} riser {:.1} going {:.1} foot {:?} {:.3}",
            f.id,
            f.risers,
            f.riser.to_mm(),
            f.going.to_mm(),
            f.foot,
            f.foot_level.to_m()
        );
    }
    for r in &plan.shaped.ramps {
        println!(
            "{} length {:.2} gradient 1:{:.2} rise {:.3}",
            r.id,
            r.length.to_m(),
            r.gradient.to_one_in(),
            r.rise.to_m()
        );
    }
    for m in &plan.moves {
        println!(
            "{} {:?} cut {:.3} fill {:.3} area {:.2}",
            m.element,
            m.kind,
            m.volumes.cut.to_m3(),
            m.volumes.fill.to_m3(),
            (m.volumes.cut_area + m.volumes.fill_area).to_m2()
        );
    }
    for c in &plan.take_off.cutting {
        println!(
            "{}: {} bars, cost {} bound {} proven {} nodes {}",
            c.material,
            c.bars.len(),
            c.cost.shown(),
            c.bound.shown(),
            c.proven,
            c.nodes
        );
    }
    println!("total {}", plan.quote.total.shown());
    for f in &plan.findings {
        println!("{} {} {}: {}", f.severity.word(), f.kind.code, f.place, f.says);
    }
    for v in groundhold_plan::check(&plan) {
        println!("VIOLATED {} {} by {}", v.rule, v.on, v.by);
    }
}
