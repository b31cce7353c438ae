//! How are only those layers of the drawing touched that changed?

use web_sys::Element;

use crate::browser::document;
use crate::live::Layer;

const SVG: &str = "http://www.w3.org/2000/svg";

/// Layers that are on the screen.
#[derive(Default)]
pub struct OnScreen {
    layers: Vec<(Layer, Element)>,
}

impl OnScreen {
    /// Brings the screen up to date. Layers that are as they were are left alone; true where any was touched.
    pub fn update(&mut self, parent: &Element, fresh: &[Layer]) -> bool {
        let same_keys =
            self.layers.len() == fresh.len() && self.layers.iter().zip(fresh).all(|((l, _), f)| l.key == f.key);
        if !same_keys {
            parent.set_inner_html("");
            self.layers = fresh.iter().filter_map(|l| Some((l.clone(), added(parent, l)?))).collect();
            return true;
        }
        let mut touched = false;
        for ((old, element), new) in self.layers.iter_mut().zip(fresh) {
            if old != new {
                element.set_inner_html(&inside(new));
                *old = new.clone();
                touched = true;
            }
        }
        touched
    }
}

fn inside(l: &Layer) -> String {
    if l.title.is_empty() { l.svg.clone() } else { format!("<title>{}</title>{}", escaped(&l.title), l.svg) }
}

fn escaped(t: &str) -> String {
    t.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

fn added(parent: &Element, l: &Layer) -> Option<Element> {
    let g = document()?.create_element_ns(Some(SVG), "g").ok()?;
    if !l.element.is_empty() {
        g.set_attribute("data-element", &l.element).ok()?;
    }
    g.set_inner_html(&inside(l));
    parent.append_child(&g).ok()?;
    Some(g)
}
