//! The ground before and after in three dimensions, with a slider between: a small renderer of our own on WebGL 2.
//!
//! Cut and fill are told apart by hatch as well as by colour: strokes for cut, dots for fill, as on the drawing.

use std::cell::RefCell;
use std::rc::Rc;

use groundhold_quantity::math::{cos, sin, tan};
use leptos::ev;
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlCanvasElement, WebGl2RenderingContext as Gl, WebGlProgram, WebGlUniformLocation};

use super::App;
use crate::live::{Relief, relief};

const CORNER: &str = "#version 300 es
in vec3 place; in vec2 more;
uniform mat4 see; uniform float after;
out float depth; out vec3 at; out float what;
void main() {
  float z = mix(place.z, more.x, after);
  depth = more.x - place.z; what = more.y; at = vec3(place.xy, z);
  gl_Position = see * vec4(at, 1.0);
}";

const SPOT: &str = "#version 300 es
precision highp float;
in float depth; in vec3 at; in float what;
uniform float after; uniform vec3 earth; uniform vec3 cut; uniform vec3 fill; uniform vec3 timber; uniform vec3 post; uniform vec3 ink;
out vec4 color;
void main() {
  vec3 n = normalize(cross(dFdx(at), dFdy(at)));
  float light = 0.62 + 0.38 * abs(dot(n, normalize(vec3(-0.45, 0.35, 0.82))));
  vec3 c = earth;
  if (what < 0.5) {
    float worked = smoothstep(0.01, 0.03, abs(depth)) * after;
    vec3 tint = depth < 0.0 ? cut : fill;
    float stroke = step(0.62, fract((at.x + at.y) * 2.2));
    vec2 d = fract(at.xy * 2.6) - 0.5;
    float dots = step(dot(d, d), 0.05);
    float hatch = depth < 0.0 ? stroke : dots;
    // A face that is nearly upright stands behind a wall or a riser: no hatch there.
    hatch *= smoothstep(0.45, 0.6, abs(n.z));
    c = mix(c, mix(mix(earth, tint, 0.18), tint, hatch * 0.8), worked);
    float line = abs(fract(at.z * 10.0 - 0.5) - 0.5) / max(fwidth(at.z * 10.0), 1e-4);
    c = mix(ink, c, clamp(line, 0.55, 1.0));
  } else if (what < 1.5) { c = timber * (abs(fract(at.z * 5.0) - 0.5) > 0.46 ? 0.7 : 1.0); }
  else { c = post; }
  color = vec4(c * light, 1.0);
}";

/// How it is looked at.
#[derive(Clone, Copy)]
struct Eye {
    round: f64,
    up: f64,
    far: f64,
    fingers: usize,
}

struct Renderer {
    gl: Gl,
    program: WebGlProgram,
    see: Option<WebGlUniformLocation>,
    after: Option<WebGlUniformLocation>,
    triangles: i32,
    reach: f64,
}

/// The view; closes itself where there is no WebGL 2, and the drawing remains.
#[component]
pub fn ReliefView() -> impl IntoView {
    let app = App::get();
    let canvas = NodeRef::<html::Canvas>::new();
    let after = RwSignal::new(1.0_f64);
    let eye = RwSignal::new(Eye { round: -0.55, up: 0.62, far: 2.5, fingers: 0 });
    let renderer = Rc::new(RefCell::new(None::<Renderer>));
    let own = renderer.clone();
    Effect::new(move |_| {
        let Some(c) = canvas.get() else { return };
        let Some(plan) = app.plan() else { return };
        let mesh = relief(&plan);
        let mut r = own.borrow_mut();
        if r.is_none() {
            match Renderer::new(&c) {
                Ok(made) => *r = Some(made),
                Err(why) => {
                    app.relief.set(false);
                    app.say(format!(
                        "This device draws no 3-D here ({why}); the drawing stays, and \"Before\" compares."
                    ));
                    return;
                }
            }
        }
        if let Some(r) = r.as_mut() {
            r.load(&mesh);
            r.draw(&c, after.get_untracked(), eye.get_untracked());
        }
    });
    Effect::new(move |_| {
        let (a, e) = (after.get(), eye.get());
        if let (Some(c), Some(r)) = (canvas.get(), renderer.borrow().as_ref()) {
            r.draw(&c, a, e);
        }
    });
    let down = move |e: ev::PointerEvent| {
        if let Some(c) = canvas.get_untracked() {
            let element: &web_sys::Element = c.as_ref();
            // Without capture a turn ends at the edge; no harm otherwise.
            let _ = element.set_pointer_capture(e.pointer_id());
        }
        eye.update(|v| v.fingers += 1);
        e.stop_propagation();
    };
    let go = move |e: ev::PointerEvent| {
        if eye.get_untracked().fingers == 0 {
            return;
        }
        let (dx, dy) = (f64::from(e.movement_x()), f64::from(e.movement_y()));
        eye.update(|v| {
            if v.fingers > 1 {
                v.far = (v.far * (1.0 + dy * 0.004)).clamp(0.6, 6.0);
            } else {
                v.round += dx * 0.008;
                v.up = (v.up + dy * 0.006).clamp(0.08, 1.5);
            }
        });
        e.stop_propagation();
    };
    let up = move |_: ev::PointerEvent| eye.update(|v| v.fingers = v.fingers.saturating_sub(1));
    let wheel = move |e: ev::WheelEvent| {
        e.prevent_default();
        e.stop_propagation();
        eye.update(|v| v.far = (v.far * (1.0 + e.delta_y().clamp(-200.0, 200.0) * 0.001)).clamp(0.6, 6.0));
    };
    let key = move |e: ev::KeyboardEvent| {
        let by = match e.key().as_str() {
            "ArrowLeft" => (0.1, 0.0, 1.0),
            "ArrowRight" => (-0.1, 0.0, 1.0),
            "ArrowUp" => (0.0, 0.08, 1.0),
            "ArrowDown" => (0.0, -0.08, 1.0),
            "+" | "=" => (0.0, 0.0, 0.9),
            "-" => (0.0, 0.0, 1.1),
            _ => return,
        };
        e.prevent_default();
        eye.update(|v| {
            v.round += by.0;
            v.up = (v.up + by.1).clamp(0.08, 1.5);
            v.far = (v.far * by.2).clamp(0.6, 6.0);
        });
    };
    let slide = move |e: web_sys::Event| after.set(super::form::typed(&e).parse::<f64>().unwrap_or(100.0) / 100.0);
    view! {
        <div class="relief" data-test="relief">
            <canvas node_ref=canvas tabindex="0" role="img" aria-label="The ground in three dimensions. Arrow keys turn it, plus and minus come nearer and go away."
                on:pointerdown=down on:pointermove=go on:pointerup=up on:pointercancel=up on:wheel=wheel on:keydown=key></canvas>
            <label class="slider" on:pointerdown=|e| e.stop_propagation()><span>"before"</span>
                <input type="range" min="0" max="100" value="100" aria-label="From before to after" data-test="relief-slider" on:input=slide/><span>"after"</span></label>
        </div>
    }
}

impl Renderer {
    fn new(canvas: &HtmlCanvasElement) -> Result<Renderer, String> {
        let gl = canvas.get_context("webgl2").ok().flatten().ok_or("no WebGL 2")?;
        let gl: Gl = gl.dyn_into().map_err(|_| "no WebGL 2")?;
        let program = gl.create_program().ok_or("no program")?;
        for (kind, text) in [(Gl::VERTEX_SHADER, CORNER), (Gl::FRAGMENT_SHADER, SPOT)] {
            let shader = gl.create_shader(kind).ok_or("no shader")?;
            gl.shader_source(&shader, text);
            gl.compile_shader(&shader);
            if gl.get_shader_parameter(&shader, Gl::COMPILE_STATUS).as_bool() != Some(true) {
                return Err(gl.get_shader_info_log(&shader).unwrap_or_default());
            }
            gl.attach_shader(&program, &shader);
        }
        gl.bind_attrib_location(&program, 0, "place");
        gl.bind_attrib_location(&program, 1, "more");
        gl.link_program(&program);
        if gl.get_program_parameter(&program, Gl::LINK_STATUS).as_bool() != Some(true) {
            return Err(gl.get_program_info_log(&program).unwrap_or_default());
        }
        gl.use_program(Some(&program));
        gl.enable(Gl::DEPTH_TEST);
        let (see, after) = (gl.get_uniform_location(&program, "see"), gl.get_uniform_location(&program, "after"));
        Ok(Renderer { gl, program, see, after, triangles: 0, reach: 1.0 })
    }

    fn load(&mut self, mesh: &Relief) {
        let gl = &self.gl;
        let numbers = js_sys::Float32Array::from(&mesh.corners[..]);
        gl.bind_buffer(Gl::ARRAY_BUFFER, gl.create_buffer().as_ref());
        gl.buffer_data_with_array_buffer_view(Gl::ARRAY_BUFFER, &numbers, Gl::STATIC_DRAW);
        for (place, size, offset) in [(0, 3, 0), (1, 2, 12)] {
            gl.enable_vertex_attrib_array(place);
            gl.vertex_attrib_pointer_with_i32(place, size, Gl::FLOAT, false, 20, offset);
        }
        let triangles = js_sys::Uint32Array::from(&mesh.triangles[..]);
        gl.bind_buffer(Gl::ELEMENT_ARRAY_BUFFER, gl.create_buffer().as_ref());
        gl.buffer_data_with_array_buffer_view(Gl::ELEMENT_ARRAY_BUFFER, &triangles, Gl::STATIC_DRAW);
        self.triangles = mesh.triangles.len() as i32;
        self.reach = f64::from(mesh.reach);
    }

    fn draw(&self, canvas: &HtmlCanvasElement, after: f64, eye: Eye) {
        let gl = &self.gl;
        let ratio = crate::browser::window().map_or(1.0, |w| w.device_pixel_ratio()).min(2.0);
        let (w, h) = (f64::from(canvas.client_width()) * ratio, f64::from(canvas.client_height()) * ratio);
        if w < 2.0 || h < 2.0 {
            return;
        }
        if canvas.width() != w as u32 || canvas.height() != h as u32 {
            canvas.set_width(w as u32);
            canvas.set_height(h as u32);
        }
        gl.viewport(0, 0, w as i32, h as i32);
        let [r, g, b] = shade("--sunk");
        gl.clear_color(r, g, b, 1.0);
        gl.clear(Gl::COLOR_BUFFER_BIT | Gl::DEPTH_BUFFER_BIT);
        for (name, variable) in [
            ("earth", "--bank"),
            ("cut", "--cut"),
            ("fill", "--fill"),
            ("timber", "--timber"),
            ("post", "--post"),
            ("ink", "--earth"),
        ] {
            let [r, g, b] = shade(variable);
            gl.uniform3f(gl.get_uniform_location(&self.program, name).as_ref(), r, g, b);
        }
        gl.uniform1f(self.after.as_ref(), after as f32);
        let see = look(eye, self.reach, w / h);
        gl.uniform_matrix4fv_with_f32_array(self.see.as_ref(), false, &see);
        gl.draw_elements_with_i32(Gl::TRIANGLES, self.triangles, Gl::UNSIGNED_INT, 0);
    }
}

/// A colour of the style sheet, `#rrggbb`, as three shares.
fn shade(variable: &str) -> [f32; 3] {
    let root = crate::browser::document().and_then(|d| d.document_element());
    let style = root.and_then(|r| crate::browser::window()?.get_computed_style(&r).ok().flatten());
    let text = style.and_then(|s| s.get_property_value(variable).ok()).unwrap_or_default();
    let hex = text.trim().trim_start_matches('#').to_string();
    let part =
        |i: usize| hex.get(i..i + 2).and_then(|h| u8::from_str_radix(h, 16).ok()).map_or(0.5, |v| f32::from(v) / 255.0);
    [part(0), part(2), part(4)]
}

/// From metres to the screen: turned round the middle, seen from above at a slant, in perspective. Column by column.
fn look(eye: Eye, reach: f64, aspect: f64) -> [f32; 16] {
    let (cr, sr, cu, su) = (cos(eye.round), sin(eye.round), cos(eye.up), sin(eye.up));
    // Right, up and towards the eye, in metres of the ground.
    let right = [cr, sr, 0.0];
    let up = [-sr * su, cr * su, cu];
    let back = [sr * cu, -cr * cu, su];
    let far = eye.far * reach * if aspect < 1.0 { 1.0 / aspect } else { 1.0 };
    let f = 1.0 / tan(0.42);
    let (near, end) = (far * 0.05, far * 6.0);
    let (a, b) = ((end + near) / (near - end), 2.0 * end * near / (near - end));
    let mut out = [0.0_f32; 16];
    for i in 0..3 {
        out[i * 4] = (right[i] * f / aspect) as f32;
        out[i * 4 + 1] = (up[i] * f) as f32;
        out[i * 4 + 2] = (back[i] * a) as f32;
        out[i * 4 + 3] = -back[i] as f32;
    }
    out[14] = (b - far * a) as f32;
    out[15] = far as f32;
    out
}
