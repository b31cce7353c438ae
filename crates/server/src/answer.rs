//! What is answered to a request? A plain function of the request and the site; sockets are another file's business.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use hyper::body::Bytes;
use hyper::header::{self, HeaderMap, HeaderValue};
use hyper::{Method, Request, Response, StatusCode};
use serde_json::{Value, json};

use crate::guard::{self, Door};
use crate::job_folder::{JobFolder, Kept, NotKept};
use crate::pages::Pages;
use crate::pairing::{Pairing, Try};

const COOKIE: &str = "groundhold-session";
const JSON: &str = "application/json";
const HTML: &str = "text/html; charset=utf-8";

/// What is served: the page, perhaps a job, perhaps a code for the local network.
pub struct Site {
    /// The page's files.
    pub pages: Pages,
    /// The job, if one is served.
    pub job: Option<JobFolder>,
    /// Codes and sessions, when shared.
    pub pairing: Option<Mutex<Pairing>>,
    /// Told the code that now holds, whenever it changes.
    pub tell_code: Box<dyn Fn(&str) + Send + Sync>,
}

type Answer = Response<Bytes>;

impl Site {
    /// Answers a request that came in by a door.
    pub fn answer(&self, door: &Door, request: &Request<Bytes>) -> Answer {
        let mut answer = match door.admit(request.method(), request.uri(), request.headers()) {
            Err((status, why)) => plain(status, why),
            Ok(()) if self.is_outside(door, request.headers()) => self.outside(request),
            Ok(()) => self.inside(request),
        };
        guard::protect(answer.headers_mut());
        answer
    }

    fn inside(&self, request: &Request<Bytes>) -> Answer {
        match (request.method(), request.uri().path()) {
            (&Method::GET | &Method::HEAD, "/api/job") => self.job(),
            (&Method::PUT, "/api/job") => self.save(request),
            (_, "/api/job") => not_so("GET, HEAD, PUT"),
            (_, path) if path.starts_with("/api/") => plain(StatusCode::NOT_FOUND, "There is no such question."),
            (&Method::GET | &Method::HEAD, path) => self.page(path, request.headers()),
            _ => not_so("GET, HEAD"),
        }
    }

    fn page(&self, path: &str, headers: &HeaderMap) -> Answer {
        let Some(file) = self.pages.find(path) else {
            if path == "/" {
                return answer(StatusCode::SERVICE_UNAVAILABLE, HTML, NO_PAGE);
            }
            return plain(StatusCode::NOT_FOUND, "There is no such page.");
        };
        let known = headers.get(header::IF_NONE_MATCH).and_then(|v| v.to_str().ok());
        let mut out = if known.is_some_and(|k| k.split(',').any(|k| k.trim().trim_start_matches("W/") == file.tag)) {
            answer(StatusCode::NOT_MODIFIED, file.kind, "")
        } else if file.gzip && takes_gzip(headers) {
            let mut out = answer(StatusCode::OK, file.kind, file.bytes.to_vec());
            out.headers_mut().insert(header::CONTENT_ENCODING, HeaderValue::from_static("gzip"));
            out
        } else {
            answer(StatusCode::OK, file.kind, file.unpacked().into_owned())
        };
        tagged(&mut out, &file.tag);
        out.headers_mut().insert(header::CACHE_CONTROL, HeaderValue::from_static("no-cache"));
        out.headers_mut().insert(header::VARY, HeaderValue::from_static("accept-encoding"));
        out
    }

    fn job(&self) -> Answer {
        let Some(job) = &self.job else { return error(StatusCode::NOT_FOUND, "no job is served") };
        match job.read() {
            Ok(kept) => job_text(StatusCode::OK, &kept),
            Err(why) => error(StatusCode::INTERNAL_SERVER_ERROR, &why),
        }
    }

    fn save(&self, request: &Request<Bytes>) -> Answer {
        let Some(job) = &self.job else { return error(StatusCode::NOT_FOUND, "no job is served") };
        let Some(expected) = request.headers().get(header::IF_MATCH).and_then(|v| v.to_str().ok()) else {
            return error(StatusCode::PRECONDITION_REQUIRED, "If-Match is missing: say which version this one follows");
        };
        let files = match files_in(request.body()) {
            Ok(files) => files,
            Err(why) => return error(StatusCode::UNPROCESSABLE_ENTITY, &why),
        };
        match job.write(&files, expected.trim()) {
            Ok(kept) => {
                let mut out = answer(StatusCode::OK, JSON, json!({ "kept": kept.earlier }).to_string());
                tagged(&mut out, &kept.tag);
                out
            }
            Err(NotKept::Conflict(now)) => job_text(StatusCode::PRECONDITION_FAILED, &now.0),
            Err(e @ NotKept::Wrong(_)) => error(StatusCode::UNPROCESSABLE_ENTITY, &e.to_string()),
            Err(e @ NotKept::Disk { .. }) => error(StatusCode::INSUFFICIENT_STORAGE, &e.to_string()),
        }
    }

    /// True for a request by a door that asks for a code, from a device that did not give it.
    pub(crate) fn is_outside(&self, door: &Door, headers: &HeaderMap) -> bool {
        door.paired && !self.has_session(headers)
    }

    fn has_session(&self, headers: &HeaderMap) -> bool {
        let Some(pairing) = &self.pairing else { return false };
        let pairing = pairing.lock().unwrap_or_else(PoisonError::into_inner);
        let cookies = headers.get_all(header::COOKIE).iter().filter_map(|v| v.to_str().ok());
        cookies
            .flat_map(|line| line.split(';'))
            .filter_map(|pair| pair.trim().split_once('='))
            .any(|(name, token)| name == COOKIE && pairing.knows(token))
    }

    /// For whoever was not let in yet: the page that asks for the code, and nothing else.
    fn outside(&self, request: &Request<Bytes>) -> Answer {
        let Some(pairing) = &self.pairing else { return plain(StatusCode::FORBIDDEN, "This job is not shared.") };
        match (request.method(), request.uri().path()) {
            (&Method::GET | &Method::HEAD, "/" | "/pair") => answer(StatusCode::UNAUTHORIZED, HTML, ask_code("")),
            (&Method::POST, "/pair") => {
                let body = String::from_utf8_lossy(request.body());
                let typed = body.split('&').find_map(|p| p.strip_prefix("code=")).unwrap_or_default();
                let mut pairing = pairing.lock().unwrap_or_else(PoisonError::into_inner);
                let outcome = pairing.attempt(typed);
                if let Ok(Try::In(_) | Try::Wrong { withdrawn: true }) = outcome {
                    (self.tell_code)(&pairing.shown());
                }
                tried(outcome)
            }
            _ => plain(StatusCode::UNAUTHORIZED, "Open the first page and type the code."),
        }
    }
}

fn tried(outcome: Result<Try, String>) -> Answer {
    match outcome {
        Ok(Try::In(token)) => {
            let mut out = plain(StatusCode::SEE_OTHER, "");
            let cookie = format!("{COOKIE}={token}; HttpOnly; SameSite=Strict; Path=/; Max-Age=86400");
            if let Ok(value) = HeaderValue::from_str(&cookie) {
                out.headers_mut().insert(header::SET_COOKIE, value);
            }
            out.headers_mut().insert(header::LOCATION, HeaderValue::from_static("/"));
            out
        }
        Ok(Try::Wrong { withdrawn: false }) => {
            answer(StatusCode::UNAUTHORIZED, HTML, ask_code("That is not the code."))
        }
        Ok(Try::Wrong { withdrawn: true }) => answer(
            StatusCode::UNAUTHORIZED,
            HTML,
            ask_code("That is not the code. After five wrong tries there is a new one on the screen."),
        ),
        Ok(Try::Closed) => plain(StatusCode::TOO_MANY_REQUESTS, "Nobody is let in any more. Start the server again."),
        Err(why) => plain(StatusCode::INTERNAL_SERVER_ERROR, &why),
    }
}

/// `{"files": {"name": "text", …}}`, and nothing else.
fn files_in(body: &[u8]) -> Result<BTreeMap<String, String>, String> {
    let value: Value = serde_json::from_slice(body).map_err(|e| format!("this is not JSON: {e}"))?;
    let files = value.get("files").and_then(Value::as_object).ok_or("expected {\"files\": {\"job.toml\": \"…\"}}")?;
    let text = |(name, text): (&String, &Value)| match text {
        Value::String(text) => Ok((name.clone(), text.clone())),
        _ => Err(format!("the file `{name}` is not a text")),
    };
    files.iter().map(text).collect()
}

fn job_text(status: StatusCode, kept: &Kept) -> Answer {
    let mut out = answer(status, JSON, json!({ "files": kept.files }).to_string());
    tagged(&mut out, &kept.tag);
    out.headers_mut().insert(header::CACHE_CONTROL, HeaderValue::from_static("no-store"));
    out
}

fn takes_gzip(headers: &HeaderMap) -> bool {
    let accepted = headers.get(header::ACCEPT_ENCODING).and_then(|v| v.to_str().ok()).unwrap_or_default();
    accepted.split(',').any(|e| {
        let mut parts = e.split(';').map(str::trim);
        parts.next() == Some("gzip") && !parts.any(|q| matches!(q, "q=0" | "q=0.0" | "q=0.00" | "q=0.000"))
    })
}

fn tagged(out: &mut Answer, tag: &str) {
    if let Ok(value) = HeaderValue::from_str(tag) {
        out.headers_mut().insert(header::ETAG, value);
    }
}

fn answer(status: StatusCode, kind: &'static str, body: impl Into<Bytes>) -> Answer {
    let mut out = Response::new(body.into());
    *out.status_mut() = status;
    out.headers_mut().insert(header::CONTENT_TYPE, HeaderValue::from_static(kind));
    out
}

pub(crate) fn plain(status: StatusCode, says: &str) -> Answer {
    answer(status, "text/plain; charset=utf-8", says.to_string())
}

fn error(status: StatusCode, says: &str) -> Answer {
    answer(status, JSON, json!({ "error": says }).to_string())
}

fn not_so(allowed: &'static str) -> Answer {
    let mut out = plain(StatusCode::METHOD_NOT_ALLOWED, "That cannot be asked for here.");
    out.headers_mut().insert(header::ALLOW, HeaderValue::from_static(allowed));
    out
}

const NO_PAGE: &str = "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>Groundhold</title>\
<h1>The page is not in this program yet</h1>\
<p>In the folder of the source, run <code>cargo xtask web</code>, then start this command again with cargo.\
<p>Or serve a page made elsewhere: <code>groundhold serve --pages FOLDER</code>.</html>\n";

fn ask_code(says: &str) -> String {
    format!(
        "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\">\
<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><title>Groundhold: pairing code</title>\
<h1>Pairing code</h1><p>It stands on the screen of the machine that shares the job. The connection is not encrypted: \
use it in a network you trust.<form method=\"post\" action=\"/pair\"><p role=\"alert\">{says}</p>\
<p><label>Code <input name=\"code\" autocomplete=\"off\" autocapitalize=\"characters\" required></label> \
<button>Open</button></form></html>\n"
    )
}
