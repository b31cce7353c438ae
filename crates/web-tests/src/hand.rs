//! How does a person use the page? Fingers or a mouse, and the keyboard, as the browser itself receives them.

use serde_json::json;

use crate::{Outcome, Page};

/// Keys that write nothing: name, code, number.
const KEYS: &[(&str, &str, u32)] = &[
    ("Tab", "Tab", 9),
    ("Enter", "Enter", 13),
    ("Escape", "Escape", 27),
    ("Space", "Space", 32),
    ("Backspace", "Backspace", 8),
    ("ArrowLeft", "ArrowLeft", 37),
    ("ArrowUp", "ArrowUp", 38),
    ("ArrowRight", "ArrowRight", 39),
    ("ArrowDown", "ArrowDown", 40),
];

impl Page {
    /// The middle of an element, scrolled into sight.
    ///
    /// # Errors
    /// When it is not there, or something else lies over it.
    pub fn middle(&mut self, selector: &str) -> Outcome<(f64, f64)> {
        self.wait_for(selector)?;
        let found = self.ask(&format!(
            "(async () => {{
                const e = document.querySelector({selector:?});
                e.scrollIntoView({{ block: 'center', inline: 'center', behavior: 'instant' }});
                await new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
                const b = e.getBoundingClientRect();
                const [x, y] = [b.left + b.width / 2, b.top + b.height / 2];
                const top = document.elementFromPoint(x, y);
                const over = top && (e.contains(top) || top.contains(e)) ? '' : (top ? top.outerHTML.slice(0, 200) : 'nothing');
                return [x, y, over];
            }})()"
        ))?;
        let over = found[2].as_str().unwrap_or_default();
        if !over.is_empty() {
            return Err(format!("{selector} cannot be touched: over it lies {over}"));
        }
        Ok((found[0].as_f64().unwrap_or(0.0), found[1].as_f64().unwrap_or(0.0)))
    }

    /// Touches or clicks an element.
    ///
    /// # Errors
    /// When it cannot be.
    pub fn tap(&mut self, selector: &str) -> Outcome<()> {
        let (x, y) = self.middle(selector)?;
        self.tap_at(x, y)
    }

    /// Touches or clicks the first button or link in sight whose words begin so.
    ///
    /// # Errors
    /// When there is none.
    pub fn tap_named(&mut self, words: &str) -> Outcome<()> {
        let mark = format!(
            "(() => {{
                document.querySelectorAll('[data-found]').forEach((e) => e.removeAttribute('data-found'));
                const e = [...document.querySelectorAll('button, a, summary, [role=button], [role=tab]')]
                    .find((e) => e.checkVisibility() && (e.getAttribute('aria-label') ?? e.innerText).trim().startsWith({words:?}));
                e?.setAttribute('data-found', '');
                return Boolean(e);
            }})()"
        );
        self.wait(&mark, &format!("there is a button `{words}`"))?;
        self.tap("[data-found]")
    }

    /// Touches or clicks a place.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn tap_at(&mut self, x: f64, y: f64) -> Outcome<()> {
        self.press(x, y)?;
        self.lift(x, y)
    }

    /// A finger or the mouse button goes down.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn press(&mut self, x: f64, y: f64) -> Outcome<()> {
        if self.screen.touch {
            return self.touch("touchStart", &[(x, y)]);
        }
        self.mouse("mouseMoved", x, y)?;
        self.mouse("mousePressed", x, y)
    }

    /// It moves while it is down.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn slide(&mut self, x: f64, y: f64) -> Outcome<()> {
        if self.screen.touch { self.touch("touchMove", &[(x, y)]) } else { self.mouse("mouseMoved", x, y) }
    }

    /// It goes up.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn lift(&mut self, x: f64, y: f64) -> Outcome<()> {
        if self.screen.touch { self.touch("touchEnd", &[]) } else { self.mouse("mouseReleased", x, y) }
    }

    /// Fingers down, moved or up.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn touch(&mut self, what: &str, points: &[(f64, f64)]) -> Outcome<()> {
        let points: Vec<_> =
            points.iter().enumerate().map(|(id, (x, y))| json!({ "x": x, "y": y, "id": id })).collect();
        self.call("Input.dispatchTouchEvent", json!({ "type": what, "touchPoints": points }))?;
        Ok(())
    }

    fn mouse(&mut self, what: &str, x: f64, y: f64) -> Outcome<()> {
        let held = u32::from(what != "mouseMoved");
        let button = if what == "mouseMoved" { "none" } else { "left" };
        let event = json!({ "type": what, "x": x, "y": y, "button": button, "buttons": held, "clickCount": held, "pointerType": "mouse" });
        self.call("Input.dispatchMouseEvent", event)?;
        Ok(())
    }

    /// Turns the wheel over a place.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn wheel(&mut self, x: f64, y: f64, by: f64) -> Outcome<()> {
        let event = json!({ "type": "mouseWheel", "x": x, "y": y, "deltaX": 0, "deltaY": by });
        self.call("Input.dispatchMouseEvent", event)?;
        Ok(())
    }

    /// Strikes a key: a name such as `Enter`, or one letter. `shift` holds the shift key down with it.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn strike(&mut self, key: &str, shift: bool) -> Outcome<()> {
        let known = KEYS.iter().find(|(name, ..)| *name == key);
        let (code, number) = known.map_or((key, 0), |(_, code, number)| (*code, *number));
        let text = match key {
            "Enter" => "\r",
            "Space" => " ",
            _ if known.is_none() => key,
            _ => "",
        };
        let key = if key == "Space" { " " } else { key };
        let modifiers = if shift { 8 } else { 0 };
        let mut down = json!({ "type": "keyDown", "key": key, "code": code, "modifiers": modifiers });
        if number > 0 {
            down["windowsVirtualKeyCode"] = number.into();
        }
        if !text.is_empty() {
            down["text"] = text.into();
        }
        let mut up = down.clone();
        up["type"] = "keyUp".into();
        self.call("Input.dispatchKeyEvent", down)?;
        self.call("Input.dispatchKeyEvent", up)?;
        Ok(())
    }

    /// Types a text where the cursor is.
    ///
    /// # Errors
    /// What the browser refuses.
    pub fn write(&mut self, text: &str) -> Outcome<()> {
        self.call("Input.insertText", json!({ "text": text }))?;
        Ok(())
    }

    /// Touches a field, marks what is in it, and types over it.
    ///
    /// # Errors
    /// When it cannot be touched.
    pub fn fill(&mut self, selector: &str, text: &str) -> Outcome<()> {
        self.tap(selector)?;
        self.ask(&format!("document.querySelector({selector:?}).select()"))?;
        self.write(text)
    }

    /// Walks with the Tab key to an element, as a person without a pointer does.
    ///
    /// # Errors
    /// When it is not reached within two hundred steps.
    pub fn walk_to(&mut self, selector: &str) -> Outcome<()> {
        self.wait_for(selector)?;
        for _ in 0..200 {
            if self.ask(&format!("document.activeElement?.matches({selector:?}) ?? false"))? == true {
                return Ok(());
            }
            self.strike("Tab", false)?;
        }
        Err(format!("{selector} is not reached by the Tab key"))
    }
}
