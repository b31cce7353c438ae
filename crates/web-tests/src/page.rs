//! What does a page show, and did it complain? One tab, asked by script and by selector.

use std::cell::RefCell;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::{Chromium, Outcome};

/// How large the window is, and whether it is touched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Screen {
    /// Name for pictures.
    pub name: &'static str,
    /// In pixels.
    pub width: u32,
    /// In pixels.
    pub height: u32,
    /// Fingers instead of a mouse.
    pub touch: bool,
}

/// A phone held upright.
pub const PHONE: Screen = Screen { name: "phone", width: 390, height: 844, touch: true };
/// A desk.
pub const DESK: Screen = Screen { name: "desk", width: 1440, height: 900, touch: false };
/// What should happen happens within this time, on a busy machine too.
const PATIENCE: Duration = Duration::from_secs(100);

/// A tab.
pub struct Page {
    pub(crate) browser: Rc<RefCell<Chromium>>,
    session: String,
    pub(crate) screen: Screen,
    complaints: Vec<String>,
}

/// The selector of an element that has a name for tests.
pub fn element(name: &str) -> String {
    format!("[data-test=\"{name}\"]")
}

impl Page {
    /// Opens a tab in a browser of its own and goes to the address.
    ///
    /// # Errors
    /// When there is no browser, or the page does not stand within the time.
    pub fn open(address: &str, screen: Screen) -> Outcome<Page> {
        let mut page = Page::blank(&Rc::new(RefCell::new(Chromium::start()?)), screen)?;
        page.go(address)?;
        Ok(page)
    }

    /// Another tab of the same browser, at the same size.
    ///
    /// # Errors
    /// When the page does not stand within the time.
    pub fn beside(&self, address: &str) -> Outcome<Page> {
        let mut page = Page::blank(&self.browser, self.screen)?;
        page.go(address)?;
        Ok(page)
    }

    /// An empty tab.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn blank(browser: &Rc<RefCell<Chromium>>, screen: Screen) -> Outcome<Page> {
        // A window of its own: a tab behind another one draws no frames.
        let target = browser.borrow_mut().call(
            None,
            "Target.createTarget",
            json!({ "url": "about:blank", "newWindow": true }),
        )?;
        let attach = json!({ "targetId": target["targetId"], "flatten": true });
        let attached = browser.borrow_mut().call(None, "Target.attachToTarget", attach)?;
        let session = attached["sessionId"].as_str().unwrap_or_default().to_string();
        let mut page = Page { browser: Rc::clone(browser), session, screen, complaints: vec![] };
        for domain in ["Page", "Runtime", "Log", "DOM"] {
            page.call(&format!("{domain}.enable"), json!({}))?;
        }
        page.size(screen)?;
        Ok(page)
    }

    /// Makes the window another size.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn size(&mut self, screen: Screen) -> Outcome<()> {
        self.screen = screen;
        let metrics = json!({
            "width": screen.width, "height": screen.height, "deviceScaleFactor": 1, "mobile": screen.touch
        });
        self.call("Emulation.setDeviceMetricsOverride", metrics)?;
        let touch = json!({ "enabled": screen.touch, "maxTouchPoints": 5 });
        self.call("Emulation.setTouchEmulationEnabled", touch)?;
        Ok(())
    }

    /// One message of the protocol.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn call(&mut self, method: &str, params: Value) -> Outcome<Value> {
        self.browser.borrow_mut().call(Some(&self.session), method, params)
    }

    /// Goes to an address and waits until the drawing stands.
    ///
    /// # Errors
    /// When it does not within the time.
    pub fn go(&mut self, address: &str) -> Outcome<()> {
        let said = self.call("Page.navigate", json!({ "url": address }))?;
        if let Some(error) = said.get("errorText") {
            return Err(format!("{address}: {error}"));
        }
        self.ready()
    }

    /// Loads the page again, and waits until the drawing stands.
    ///
    /// # Errors
    /// When it does not within the time.
    pub fn reload(&mut self) -> Outcome<()> {
        // Marked, so that the old page is not taken for the new one.
        self.ask("document.documentElement.removeAttribute('data-ready')")?;
        self.call("Page.reload", json!({}))?;
        self.ready()
    }

    fn ready(&mut self) -> Outcome<()> {
        self.wait("document.documentElement.dataset.ready === 'true'", "the drawing stands")
    }

    /// The value of an expression in the page; a promise is waited for.
    ///
    /// # Errors
    /// What it throws.
    pub fn ask(&mut self, script: &str) -> Outcome<Value> {
        let params = json!({ "expression": script, "awaitPromise": true, "returnByValue": true, "userGesture": true });
        let said = self.call("Runtime.evaluate", params)?;
        match said.get("exceptionDetails") {
            Some(e) => Err(format!("{script}: {}", e["exception"]["description"].as_str().unwrap_or("it throws"))),
            None => Ok(said["result"]["value"].clone()),
        }
    }

    /// Waits until an expression, or what it promises, is true.
    ///
    /// # Errors
    /// With what was waited for, when it does not become true within the time.
    pub fn wait(&mut self, script: &str, what: &str) -> Outcome<()> {
        let begun = Instant::now();
        loop {
            // While a page is being loaded there may be nothing to ask.
            let now = self.ask(&format!("(async () => Boolean(await ({script})))()"));
            if now.as_ref().is_ok_and(|v| *v == true) {
                return Ok(());
            }
            if begun.elapsed() > PATIENCE {
                let shown = self.ask("document.body.innerText.slice(0, 1500)").unwrap_or_default();
                let wrong = self.complaints().join("; ");
                return Err(format!("waited {} s in vain until {what}: {now:?}; {wrong}\n{shown}", PATIENCE.as_secs()));
            }
            std::thread::sleep(Duration::from_millis(40));
        }
    }

    /// Waits until an element is there.
    ///
    /// # Errors
    /// When it does not come.
    pub fn wait_for(&mut self, selector: &str) -> Outcome<()> {
        self.wait(&format!("document.querySelector({selector:?})"), &format!("{selector} is there"))
    }

    /// The text of an element as it is shown; empty where there is none.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn text(&mut self, selector: &str) -> Outcome<String> {
        let shown = self.ask(&format!("document.querySelector({selector:?})?.innerText ?? ''"))?;
        Ok(shown.as_str().unwrap_or_default().to_string())
    }

    /// How many elements there are.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn count(&mut self, selector: &str) -> Outcome<u64> {
        Ok(self.ask(&format!("document.querySelectorAll({selector:?}).length"))?.as_u64().unwrap_or(0))
    }

    /// Puts files into a file input, as the system's dialogue would.
    ///
    /// # Errors
    /// When there is no such input.
    pub fn choose_files(&mut self, selector: &str, files: &[&Path]) -> Outcome<()> {
        let found =
            self.call("Runtime.evaluate", json!({ "expression": format!("document.querySelector({selector:?})") }))?;
        let object = found["result"]["objectId"].as_str().ok_or(format!("{selector} is not there"))?;
        self.call("DOM.setFileInputFiles", json!({ "objectId": object, "files": files }))?;
        Ok(())
    }

    /// Lets downloads go into a folder.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn download_into(&mut self, folder: &Path) -> Outcome<()> {
        let how = json!({ "behavior": "allow", "downloadPath": folder });
        self.browser.borrow_mut().call(None, "Browser.setDownloadBehavior", how)?;
        Ok(())
    }

    /// A picture of the window in `target/shots`.
    ///
    /// # Errors
    /// When it cannot be taken or written.
    pub fn shot(&mut self, name: &str) -> Outcome<PathBuf> {
        let said = self.call("Page.captureScreenshot", json!({ "format": "png" }))?;
        let bytes = base64(said["data"].as_str().unwrap_or_default())?;
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/shots");
        std::fs::create_dir_all(&folder).map_err(|e| e.to_string())?;
        let path = folder.join(format!("{name}-{}.png", self.screen.name));
        std::fs::write(&path, bytes).map_err(|e| format!("{}: {e}", path.display()))?;
        Ok(path)
    }

    /// Everything the page complained of so far: errors thrown, written to the console, or blocked by its policy.
    pub fn complaints(&mut self) -> Vec<String> {
        let events = self.browser.borrow_mut().events(&self.session);
        self.complaints.extend(events.iter().filter_map(complaint));
        self.complaints.clone()
    }

    /// Fails if the page complained.
    ///
    /// # Errors
    /// With every complaint.
    pub fn content(&mut self) -> Outcome<()> {
        let all = self.complaints();
        if all.is_empty() { Ok(()) } else { Err(format!("the page complains: {}", all.join("\n"))) }
    }
}

fn complaint(event: &Value) -> Option<String> {
    let p = &event["params"];
    match event["method"].as_str()? {
        "Runtime.exceptionThrown" => {
            let e = &p["exceptionDetails"];
            Some(format!("{} {}", e["text"], e["exception"]["description"]))
        }
        "Runtime.consoleAPICalled" if p["type"] == "error" || p["type"] == "assert" => Some(p["args"].to_string()),
        "Log.entryAdded" if p["entry"]["level"] == "error" => {
            let (text, url) = (p["entry"]["text"].to_string(), p["entry"]["url"].as_str().unwrap_or_default());
            // Whether a job is served is found out by asking; that there is none is an answer, not an error.
            (!url.ends_with("/api/job")).then(|| format!("{text} {url}"))
        }
        _ => None,
    }
}

/// Bytes out of base64 (RFC 4648).
fn base64(text: &str) -> Outcome<Vec<u8>> {
    let mut out = Vec::with_capacity(text.len() / 4 * 3);
    let (mut bits, mut held) = (0u32, 0u32);
    for letter in text.bytes().filter(|b| *b != b'=') {
        let value = match letter {
            b'A'..=b'Z' => letter - b'A',
            b'a'..=b'z' => letter - b'a' + 26,
            b'0'..=b'9' => letter - b'0' + 52,
            b'+' => 62,
            b'/' => 63,
            other => return Err(format!("found byte {other} in base64")),
        };
        bits = (bits << 6) | u32::from(value);
        held += 6;
        if held >= 8 {
            held -= 8;
            out.push((bits >> held) as u8);
            bits &= (1 << held) - 1;
        }
    }
    Ok(out)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn base64_reads_the_vectors_of_its_standard() {
        for (text, plain) in
            [("", ""), ("Zg==", "f"), ("Zm8=", "fo"), ("Zm9v", "foo"), ("Zm9vYg==", "foob"), ("Zm9vYmFy", "foobar")]
        {
            assert_eq!(base64(text).unwrap(), plain.as_bytes());
        }
        assert!(base64("Z*==").is_err());
    }

    #[test]
    fn an_error_in_the_console_is_a_complaint_and_a_job_that_is_not_served_is_none() {
        let entry = |url: &str| json!({ "method": "Log.entryAdded", "params": { "entry": { "level": "error", "text": "404", "url": url } } });
        assert!(complaint(&entry("http://localhost/app.css")).is_some());
        assert!(complaint(&entry("http://localhost/api/job")).is_none());
        assert!(complaint(&json!({ "method": "Runtime.consoleAPICalled", "params": { "type": "log" } })).is_none());
    }
}
