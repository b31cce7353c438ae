//! How does the page make the same sheets as the terminal? By the same function, in a module of its own.

use std::collections::BTreeMap;

use groundhold_exchange::read_job;
use groundhold_plan::plan_priced;

/// The set of sheets of a job as PDF. `names` and `texts` are its files in pairs; `date` is printed as it is given.
///
/// # Errors
/// In words: what in the job cannot be read or planned, or why the PDF cannot be written.
pub fn pdf_of(names: &[String], texts: &[String], date: &str) -> Result<Vec<u8>, String> {
    let files: BTreeMap<&str, &str> = names.iter().map(String::as_str).zip(texts.iter().map(String::as_str)).collect();
    let job = files.get("job.toml").ok_or("there is no job.toml")?;
    let open = |name: &str| match files.get(name) {
        Some(t) => Ok((*t).to_string()),
        None => Err("it is not among this job's files".to_string()),
    };
    let job = read_job("job.toml", job, &open).whole().map_err(|p| first(&p))?;
    let plan = plan_priced(&job).map_err(|t| first(&t))?;
    groundhold_paper::pdf_set(&plan, date).map_err(|e| e.to_string())
}

fn first<T: ToString>(all: &[T]) -> String {
    all.first().map_or("the job cannot be planned".into(), ToString::to_string)
}

/// The same for the worker of the page.
///
/// # Errors
/// As [`pdf_of`].
#[cfg(target_arch = "wasm32")]
#[wasm_bindgen::prelude::wasm_bindgen]
pub fn pdf(names: Vec<String>, texts: Vec<String>, date: &str) -> Result<Vec<u8>, wasm_bindgen::JsValue> {
    pdf_of(&names, &texts, date).map_err(|e| e.into())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn demo() -> (Vec<String>, Vec<String>) {
        let files = [
            ("job.toml", include_str!("../../../demo/job.toml")),
            ("levels.csv", include_str!("../../../demo/levels.csv")),
            ("positions.csv", include_str!("../../../demo/positions.csv")),
            ("prices.csv", include_str!("../../../demo/prices.csv")),
        ];
        files.iter().map(|(n, t)| ((*n).to_string(), (*t).to_string())).unzip()
    }

    #[test]
    fn the_demo_becomes_a_pdf_and_a_missing_file_is_named() {
        let (names, texts) = demo();
        let bytes = pdf_of(&names, &texts, "2026-05-11").unwrap();
        assert!(bytes.starts_with(b"%PDF-"));
        assert!(pdf_of(&names[..3], &texts[..3], "").unwrap_err().contains("prices.csv"));
        assert!(pdf_of(&[], &[], "").is_err());
    }
}
