//! Is the engine in the page the same engine? Every letter of the demo's plan is compared.
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_web::job::{demo, pack};
use groundhold_web_tests::{DESK, Page, Served};

const SERVER: &str = env!("CARGO_BIN_EXE_keep-serving");

#[test]
fn the_plan_of_the_demo_is_the_same_to_the_last_letter_in_the_page_and_natively() {
    let files = demo();
    let plan = groundhold_plan::plan(&files.read().whole().unwrap()).unwrap();
    let native = groundhold_exchange::plan_json(&plan);
    assert!(native.len() > 20_000, "a plan of the demo has more to say than {} letters", native.len());
    let served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, DESK).unwrap();
    let packed = serde_json::Value::from(pack(&files)).to_string();
    let wasm = page.ask(&format!("import('/groundhold_web.js').then((m) => m.plan_view({packed}))")).unwrap();
    let wasm = wasm.as_str().unwrap();
    if wasm != native {
        let at = wasm.bytes().zip(native.bytes()).position(|(a, b)| a != b).unwrap_or(wasm.len().min(native.len()));
        let near = |t: &str| t.get(at.saturating_sub(60)..(at + 60).min(t.len())).unwrap_or_default().to_string();
        panic!("from letter {at} they differ: in the page `{}`, natively `{}`", near(wasm), near(&native));
    }
    page.content().unwrap();
}
