//! temp
fn main() {
    let read = |n: &str| std::fs::read_to_string(format!("demo/{n}")).map_err(|e| e.to_string());
    let job = groundhold_exchange::read_job("job.toml", &read("job.toml").unwrap(), &read).whole().unwrap();
    let plan = groundhold_plan::plan_priced(&job).unwrap();
    std::fs::create_dir_all("/tmp/t/xdump").unwrap();
    let w = |n: &str, t: &[u8]| std::fs::write(format!("/tmp/t/xdump/{n}"), t).unwrap();
    for (n, t) in groundhold_exchange::tables_out(&plan) {
        w(&n, t.as_bytes());
    }
    w("plan.json", groundhold_exchange::plan_json(&plan).as_bytes());
    w("schema.json", groundhold_exchange::schema_json().as_bytes());
    w("job.toml", groundhold_exchange::job_text(&job).as_bytes());
    for (n, t) in groundhold_exchange::job_tables(&job) {
        w(&format!("job-{n}"), t.as_bytes());
    }
    w("plan.xlsx", &groundhold_exchange::spreadsheet(&plan, "2026-05-11").unwrap());
}
