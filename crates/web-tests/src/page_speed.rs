//! How fast is the page? Frames of a drag, the first interaction from a cold cache, and the engine beside the native one.

use std::process::ExitCode;
use std::time::Instant;

use groundhold_web::job::{demo, pack};
use groundhold_web_tests::{DESK, Outcome, PHONE, Page, Screen, Served, element};
use serde_json::{Value, json};

/// From the beginning of a frame until everything of it is drawn, as far as the page's own thread has to do with it.
const RECORD: &str = "
    window.spent = [];
    const frame = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (f) => frame((t) => {
        const begun = performance.now();
        f(t);
        const drawn = new MessageChannel();
        drawn.port1.onmessage = () => window.spent.push(performance.now() - begun);
        drawn.port2.postMessage(0);
    });
    new MutationObserver((_, watch) => {
        if (document.documentElement.dataset.ready !== 'true') return;
        watch.disconnect();
        window.readyAt = performance.now();
        document.querySelector('[data-test=tab-order]').click();
        frame(() => { const c = new MessageChannel(); c.port1.onmessage = () => { window.answeredAt = performance.now(); }; c.port2.postMessage(0); });
    }).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-ready'] });";

const MOVES: u32 = 160;

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    match args.first().map(|server| measure(server)) {
        Some(Ok(())) => ExitCode::SUCCESS,
        Some(Err(why)) => {
            eprintln!("page-speed: {why}");
            ExitCode::FAILURE
        }
        None => {
            eprintln!("page-speed PATH-OF-keep-serving");
            ExitCode::FAILURE
        }
    }
}

fn measure(server: &str) -> Outcome<()> {
    let served = Served::start(server, None)?;
    println!("{:<44} {:>9} {:>9} {:>9}", "", "median", "95 %", "target");
    for screen in [PHONE, DESK] {
        let mut spent = drag(&served, screen)?;
        let name = format!("drag a wall of the demo, {}: ms a frame", screen.name);
        row(&name, middle(&mut spent), share(&mut spent, 0.95), "16 and 33");
    }
    let (mut ready, mut answered) = cold(&served)?;
    row("drawing stands, cold cache: ms", middle(&mut ready), share(&mut ready, 0.95), "");
    row("first interaction answered, cold cache: ms", middle(&mut answered), share(&mut answered, 0.95), "1000");
    engine(&served)
}

fn row(name: &str, median: f64, most: f64, target: &str) {
    println!("{name:<44} {median:>9.1} {most:>9.1} {target:>9}");
}

fn share(all: &mut [f64], part: f64) -> f64 {
    all.sort_by(f64::total_cmp);
    let at = ((all.len() as f64 * part).ceil() as usize).clamp(1, all.len().max(1)) - 1;
    all.get(at).copied().unwrap_or(f64::NAN)
}

fn middle(all: &mut [f64]) -> f64 {
    share(all, 0.5)
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().map(|a| a.iter().filter_map(Value::as_f64).collect()).unwrap_or_default()
}

fn recorded(served: &Served, screen: Screen) -> Outcome<Page> {
    let browser = std::rc::Rc::new(std::cell::RefCell::new(groundhold_web_tests::Chromium::start()?));
    let mut page = Page::blank(&browser, screen)?;
    page.call("Page.addScriptToEvaluateOnNewDocument", json!({ "source": RECORD }))?;
    page.go(&served.address)?;
    Ok(page)
}

/// Frames while a wall's corner goes round in a circle.
fn drag(served: &Served, screen: Screen) -> Outcome<Vec<f64>> {
    let mut page = recorded(served, screen)?;
    page.tap(&element("tab-ground"))?;
    page.tap(&element("pick-W2"))?;
    let (x, y) = page.middle(&element("grip"))?;
    page.press(x, y)?;
    page.ask("window.spent.length = 0")?;
    for step in 0..MOVES {
        let turn = f64::from(step) / 20.0;
        // A triangle wave, twenty pixels either way.
        let wave = |t: f64| ((t.rem_euclid(2.0) - 1.0).abs() - 0.5) * 40.0;
        page.slide(x + wave(turn) - wave(0.0), y + wave(turn + 0.5) - wave(0.5))?;
    }
    let spent = numbers(&page.ask("window.spent")?);
    page.lift(x, y)?;
    if spent.len() < MOVES as usize / 4 {
        return Err(format!("only {} frames were drawn in {MOVES} moves", spent.len()));
    }
    println!("   {} frames in {MOVES} moves", spent.len());
    Ok(spent)
}

/// When the drawing stands and when a first touch is answered, each time with a fresh profile.
fn cold(served: &Served) -> Outcome<(Vec<f64>, Vec<f64>)> {
    let (mut ready, mut answered) = (vec![], vec![]);
    for _ in 0..7 {
        let mut page = recorded(served, PHONE)?;
        page.wait("window.answeredAt", "the first touch is answered")?;
        ready.extend(page.ask("window.readyAt")?.as_f64());
        answered.extend(page.ask("window.answeredAt")?.as_f64());
    }
    Ok((ready, answered))
}

/// The demo planned in the page and natively, in turns.
fn engine(served: &Served) -> Outcome<()> {
    let files = demo();
    let packed = Value::from(pack(&files)).to_string();
    let mut page = Page::open(&served.address, DESK)?;
    page.ask(&format!("import('/groundhold_web.js').then((m) => {{ window.engine = m; window.packed = {packed}; }})"))?;
    let (mut wasm, mut native) = (vec![], vec![]);
    for round in 0..8 {
        let times = page.ask(
            "(() => { const all = []; for (let i = 0; i < 6; i++) { const t = performance.now(); window.engine.plan_size(window.packed); all.push(performance.now() - t); } return all; })()",
        )?;
        let mut ours = vec![];
        for _ in 0..6 {
            let begun = Instant::now();
            std::hint::black_box(
                groundhold_web::job::unpack(&pack(&files))
                    .ok()
                    .and_then(|f| f.read().whole().ok())
                    .map(|j| groundhold_plan::plan(&j)),
            );
            ours.push(begun.elapsed().as_secs_f64() * 1e3);
        }
        // The first round warms both up: the browser compiles twice, first quickly and then well.
        if round > 0 {
            wasm.extend(numbers(&times));
            native.extend(ours);
        }
    }
    let (w, n) = (middle(&mut wasm), middle(&mut native));
    row("read and plan the demo, in the page: ms", w, share(&mut wasm, 0.95), "");
    row("read and plan the demo, natively: ms", n, share(&mut native, 0.95), "");
    row("the page's engine over the native one", w / n, share(&mut wasm, 0.95) / share(&mut native, 0.95), "1.5");
    Ok(())
}
