//! Does the server keep its word over a real socket, and can any bytes bring it down?
#![allow(clippy::unwrap_used, missing_docs)]

use std::collections::BTreeMap;
use std::fs;
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::PathBuf;
use std::sync::{Arc, Mutex, OnceLock};
use std::time::Duration;

use groundhold_server::{JobFolder, Listener, Pages, Pairing, Site, run};
use proptest::prelude::*;

const JOB: &str = include_str!("../../../demo/job.toml");

/// A job's folder of this test's own, with a table in it and a secret beside it.
fn folder(name: &str) -> PathBuf {
    let base = std::env::temp_dir().join(format!("groundhold-wire-{name}-{}", std::process::id()));
    let _ = fs::remove_dir_all(&base);
    fs::create_dir_all(base.join("job")).unwrap();
    fs::write(base.join("secret.csv"), "secret").unwrap();
    fs::write(base.join("job/job.toml"), JOB).unwrap();
    fs::write(base.join("job/levels.csv"), "one\n").unwrap();
    base
}

struct Running {
    own: SocketAddr,
    network: SocketAddr,
    code: Arc<Mutex<String>>,
    base: PathBuf,
}

fn serve(name: &str) -> Running {
    let base = folder(name);
    fs::create_dir_all(base.join("page")).unwrap();
    fs::write(base.join("page/index.html"), "<p>the page").unwrap();
    let pairing = Pairing::begin().unwrap();
    let code = Arc::new(Mutex::new(pairing.shown()));
    let told = Arc::clone(&code);
    let site = Site {
        pages: Pages::Folder(base.join("page")),
        job: Some(JobFolder::open(&base.join("job")).unwrap()),
        pairing: Some(Mutex::new(pairing)),
        tell_code: Box::new(move |c| *told.lock().unwrap() = c.to_string()),
    };
    let listeners = vec![Listener::own(0).unwrap(), Listener::network([127, 0, 0, 1].into(), 0).unwrap()];
    let (own, network) = (listeners[0].address().unwrap(), listeners[1].address().unwrap());
    std::thread::spawn(move || run(site, listeners));
    Running { own, network, code, base }
}

struct Said {
    status: u16,
    head: String,
    body: String,
}

impl Said {
    fn header(&self, name: &str) -> Option<&str> {
        self.head.lines().filter_map(|l| l.split_once(": ")).find(|(k, _)| k.eq_ignore_ascii_case(name)).map(|(_, v)| v)
    }
    fn files(&self) -> BTreeMap<String, String> {
        let all: serde_json::Value = serde_json::from_str(&self.body).unwrap();
        serde_json::from_value(all["files"].clone()).unwrap()
    }
}

fn send(to: SocketAddr, bytes: &[u8]) -> Vec<u8> {
    let mut stream = TcpStream::connect(to).unwrap();
    stream.set_read_timeout(Some(Duration::from_secs(15))).unwrap();
    // The server may hang up before all is written; what it answered is what counts.
    let _ = stream.write_all(bytes);
    let _ = stream.shutdown(std::net::Shutdown::Write);
    let mut answer = vec![];
    let _ = stream.read_to_end(&mut answer);
    answer
}

fn ask(to: SocketAddr, what: &str, headers: &[(&str, &str)], body: &str) -> Said {
    let mut text = format!("{what} HTTP/1.1\r\n");
    if !headers.iter().any(|(k, _)| *k == "Host") {
        text += &format!("Host: {to}\r\n");
    }
    headers.iter().for_each(|(k, v)| text += &format!("{k}: {v}\r\n"));
    text += &format!("Content-Length: {}\r\nConnection: close\r\n\r\n{body}", body.len());
    let answer = String::from_utf8_lossy(&send(to, text.as_bytes())).into_owned();
    let (head, body) = answer.split_once("\r\n\r\n").unwrap_or((&answer, ""));
    let status = head.split(' ').nth(1).and_then(|s| s.parse().ok()).unwrap_or(0);
    Said { status, head: head.into(), body: body.into() }
}

fn put(to: SocketAddr, tag: &str, files: &[(&str, &str)]) -> Said {
    let files: BTreeMap<&str, &str> = files.iter().copied().collect();
    ask(to, "PUT /api/job", &[("If-Match", tag)], &serde_json::json!({ "files": files }).to_string())
}

#[test]
fn every_answer_forbids_foreign_and_inline_scripts_framing_and_guessing() {
    let s = serve("headers");
    for path in ["/", "/nothing", "/api/job", "/api/nothing"] {
        for to in [s.own, s.network] {
            let said = ask(to, &format!("GET {path}"), &[], "");
            let policy = said.header("content-security-policy").unwrap();
            assert!(policy.contains("default-src 'none'") && policy.contains("script-src 'self' 'wasm-unsafe-eval'"));
            assert!(!policy.contains("unsafe-inline") && !policy.contains("'unsafe-eval'") && !policy.contains('*'));
            assert_eq!(said.header("x-content-type-options"), Some("nosniff"));
            assert_eq!(said.header("cross-origin-opener-policy"), Some("same-origin"));
        }
    }
}

#[test]
fn a_save_changes_the_files_once_and_keeps_what_was_there() {
    let s = serve("save");
    let first = ask(s.own, "GET /api/job", &[], "");
    assert_eq!(first.status, 200);
    assert_eq!(first.files().keys().collect::<Vec<_>>(), ["job.toml", "levels.csv"]);
    let tag = first.header("etag").unwrap();
    let saved = put(s.own, tag, &[("job.toml", JOB), ("levels.csv", "two\n")]);
    assert_eq!(saved.status, 200, "{}", saved.body);
    assert_eq!(fs::read_to_string(s.base.join("job/levels.csv")).unwrap(), "two\n");
    assert_eq!(fs::read_to_string(s.base.join("job/earlier/0001/levels.csv")).unwrap(), "one\n");
    assert_ne!(saved.header("etag"), Some(tag));

    let late = put(s.own, tag, &[("job.toml", JOB), ("levels.csv", "three\n")]);
    assert_eq!(late.status, 412, "the second device has not seen the first one's save");
    assert_eq!(late.files()["levels.csv"], "two\n");
    assert_eq!(late.header("etag"), saved.header("etag"));
    assert_eq!(fs::read_to_string(s.base.join("job/levels.csv")).unwrap(), "two\n");
    assert_eq!(ask(s.own, "PUT /api/job", &[], "{}").status, 428);
    let same = put(s.own, saved.header("etag").unwrap(), &[("job.toml", JOB), ("levels.csv", "two\n")]);
    assert_eq!((same.status, same.header("etag")), (200, saved.header("etag")));
    assert!(!s.base.join("job/earlier/0002").exists(), "nothing changed, so there is nothing to keep");
}

#[test]
fn a_path_out_of_the_job_folder_is_neither_read_nor_written() {
    let s = serve("paths");
    let tag = ask(s.own, "GET /api/job", &[], "").header("etag").unwrap().to_string();
    for name in ["../secret.csv", "/tmp/x.csv", "a/../../secret.csv", ".hidden.csv", "x.sh", "earlier/0001/job.csv"] {
        let said = put(s.own, &tag, &[("job.toml", JOB), (name, "gone")]);
        assert_eq!(said.status, 422, "{name}");
        assert!(said.body.contains("expected"), "{}", said.body);
    }
    assert_eq!(fs::read_to_string(s.base.join("secret.csv")).unwrap(), "secret");
    // A job file that names a table outside, or a link that leads there.
    let pointing = JOB.replace("\"levels.csv\"", "\"../secret.csv\"");
    assert_ne!(pointing, JOB);
    let said = put(s.own, &tag, &[("job.toml", &pointing)]);
    assert_eq!(said.status, 200);
    assert!(!ask(s.own, "GET /api/job", &[], "").body.contains("secret\""));
    #[cfg(unix)]
    {
        fs::remove_file(s.base.join("job/levels.csv")).unwrap();
        std::os::unix::fs::symlink(s.base.join("secret.csv"), s.base.join("job/levels.csv")).unwrap();
        let tag = said.header("etag").unwrap();
        let _ = put(s.own, tag, &[("job.toml", JOB)]);
        let read = ask(s.own, "GET /api/job", &[], "");
        assert_eq!(read.status, 500);
        assert!(read.body.contains("not a file of the job's own folder"), "{}", read.body);
        assert_eq!(fs::read_to_string(s.base.join("secret.csv")).unwrap(), "secret");
    }
    for path in ["/../secret.csv", "/%2e%2e/secret.csv", "//secret.csv", "/./../secret.csv"] {
        assert_ne!(ask(s.own, &format!("GET {path}"), &[], "").status, 200, "{path}");
    }
}

#[test]
fn a_foreign_name_and_a_page_from_elsewhere_are_refused() {
    let s = serve("foreign");
    assert_eq!(ask(s.own, "GET /api/job", &[("Host", "evil.example")], "").status, 421);
    assert_eq!(ask(s.own, "PUT /api/job", &[("Origin", "http://evil.example"), ("If-Match", "*")], "{}").status, 403);
    assert_eq!(ask(s.own, "DELETE /api/job", &[], "").status, 405);
}

#[test]
fn the_network_door_opens_only_with_the_code_and_only_for_its_cookie() {
    let s = serve("pairing");
    assert_eq!(ask(s.network, "GET /api/job", &[], "").status, 401);
    assert_eq!(ask(s.network, "GET /index.html", &[], "").status, 401);
    assert!(ask(s.network, "GET /", &[], "").body.contains("Pairing code"));
    assert_eq!(ask(s.network, "POST /pair", &[], "code=WRONG").status, 401);
    let code = s.code.lock().unwrap().clone();
    let paired = ask(s.network, "POST /pair", &[], &format!("code={}", code.to_lowercase()));
    assert_eq!(paired.status, 303, "{}", paired.body);
    let cookie = paired.header("set-cookie").unwrap();
    assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), "{cookie}");
    let cookie = cookie.split(';').next().unwrap();
    assert_eq!(ask(s.network, "GET /api/job", &[("Cookie", cookie)], "").status, 200);
    assert_eq!(ask(s.network, "GET /", &[("Cookie", cookie)], "").body, "<p>the page");
    let mut forged = cookie.to_string();
    forged.pop();
    assert_eq!(ask(s.network, "GET /api/job", &[("Cookie", &forged)], "").status, 401);
    assert_ne!(*s.code.lock().unwrap(), code, "a code is good for one device");
    assert_eq!(ask(s.network, "POST /pair", &[], &format!("code={code}")).status, 401);
    let long = "x".repeat(300);
    assert_eq!(ask(s.network, "POST /pair", &[], &format!("code={long}")).status, 413);
}

#[test]
fn more_than_the_limit_is_refused_unread_and_the_last_byte_below_it_is_read() {
    let s = serve("limits");
    let head = |n: usize| {
        format!(
            "PUT /api/job HTTP/1.1\r\nHost: {}\r\nIf-Match: *\r\nContent-Length: {n}\r\nConnection: close\r\n\r\n",
            s.own
        )
    };
    let most = groundhold_server::MOST_BYTES;
    let said = send(s.own, head(most + 1).as_bytes());
    assert!(said.starts_with(b"HTTP/1.1 413"), "{}", String::from_utf8_lossy(&said));
    let mut whole = head(most).into_bytes();
    whole.extend(vec![b' '; most]);
    let said = send(s.own, &whole);
    assert!(said.starts_with(b"HTTP/1.1 422"), "read, but it is no job: {}", String::from_utf8_lossy(&said));
    let mut chunked =
        format!("PUT /api/job HTTP/1.1\r\nHost: {}\r\nIf-Match: *\r\nTransfer-Encoding: chunked\r\n\r\n", s.own)
            .into_bytes();
    for _ in 0..=(most >> 20) {
        chunked.extend(b"100000\r\n");
        chunked.extend(vec![b' '; 1 << 20]);
        chunked.extend(b"\r\n");
    }
    chunked.extend(b"0\r\n\r\n");
    let said = send(s.own, &chunked);
    assert!(said.is_empty() || said.starts_with(b"HTTP/1.1 413"), "{}", String::from_utf8_lossy(&said));
    let many = "x-a: b\r\n".repeat(4000);
    let said = send(s.own, format!("GET / HTTP/1.1\r\nHost: {}\r\n{many}\r\n", s.own).as_bytes());
    assert!(said.is_empty() || said.starts_with(b"HTTP/1.1 4"), "{}", String::from_utf8_lossy(&said));
    assert_eq!(ask(s.own, "GET /", &[], "").status, 200);
}

/// One server for all random requests: if any of them hurts it, the next one sees it.
fn fuzzed() -> &'static Running {
    static RUNNING: OnceLock<Running> = OnceLock::new();
    RUNNING.get_or_init(|| serve("fuzz"))
}

fn still_well(before: &str) {
    let s = fuzzed();
    assert_eq!(ask(s.own, "GET /", &[], "").body, "<p>the page", "after {before:?}");
    assert_eq!(fs::read_to_string(s.base.join("secret.csv")).unwrap(), "secret");
}

/// Requests that look right in most places and wrong in some.
fn nearly_right() -> impl Strategy<Value = Vec<u8>> {
    let method = prop_oneof![Just("GET"), Just("PUT"), Just("POST"), Just("HEAD"), Just("OPTIONS"), Just("")];
    let path = prop_oneof![
        Just("/".to_string()),
        Just("/api/job".into()),
        Just("/pair".into()),
        Just("/../../secret.csv".into()),
        "/[ -~]{0,30}",
        "\\PC{0,12}"
    ];
    let header = prop_oneof![
        Just("Host: localhost".to_string()),
        Just("Transfer-Encoding: chunked".into()),
        Just("If-Match: *".into()),
        Just("Content-Length: 99999999999999999999".into()),
        Just("Content-Length: 5".into()),
        "[A-Za-z-]{1,12}: [ -~]{0,30}",
        "[ -~]{0,20}"
    ];
    let body = prop_oneof![
        Just(br#"{"files":{"job.toml":"x"}}"#.to_vec()),
        Just(br#"{"files":{"../secret.csv":"x","job.toml":""}}"#.to_vec()),
        proptest::collection::vec(any::<u8>(), 0..200)
    ];
    (method, path, proptest::collection::vec(header, 0..5), any::<bool>(), body).prop_map(
        |(m, p, headers, named, body)| {
            let host = if named {
                format!("Host: {}\r\nContent-Length: {}\r\n", fuzzed().own, body.len())
            } else {
                String::new()
            };
            let rest: String = headers.iter().map(|h| format!("{h}\r\n")).collect();
            let mut out = format!("{m} {p} HTTP/1.1\r\nConnection: close\r\n{host}{rest}\r\n").into_bytes();
            out.extend(body);
            out
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn random_bytes_never_bring_the_server_down(bytes in proptest::collection::vec(any::<u8>(), 0..600)) {
        let answer = send(fuzzed().own, &bytes);
        prop_assert!(answer.is_empty() || answer.starts_with(b"HTTP/1."));
        still_well(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn nearly_right_requests_never_bring_the_server_down(bytes in nearly_right()) {
        for to in [fuzzed().own, fuzzed().network] {
            let answer = send(to, &bytes);
            prop_assert!(answer.is_empty() || answer.starts_with(b"HTTP/1."));
        }
        still_well(&String::from_utf8_lossy(&bytes));
    }
}

#[test]
fn a_client_that_says_nothing_does_not_keep_others_waiting() {
    let s = serve("silent");
    let silent: Vec<TcpStream> = (0..40).map(|_| TcpStream::connect(s.own).unwrap()).collect();
    let begun = std::time::Instant::now();
    assert_eq!(ask(s.own, "GET /", &[], "").status, 200);
    assert!(begun.elapsed() < Duration::from_secs(5), "{:?}", begun.elapsed());
    drop(silent);
}
