//! Is this request one of ours, and what may a browser do with the answer?

use hyper::header::{HeaderMap, HeaderName, HeaderValue};
use hyper::{Method, StatusCode, Uri, header};

/// Headers of every answer. Nothing from elsewhere, nothing inline, no framing, no sensors but those of site mode.
const HEADERS: &[(&str, &str)] = &[
    (
        "content-security-policy",
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; \
         font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; frame-src 'self' blob:; \
         form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    ),
    ("x-content-type-options", "nosniff"),
    ("x-frame-options", "DENY"),
    ("referrer-policy", "no-referrer"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-embedder-policy", "require-corp"),
    ("cross-origin-resource-policy", "same-origin"),
    (
        "permissions-policy",
        "accelerometer=(self), gyroscope=(self), magnetometer=(self), screen-wake-lock=(self), camera=(), microphone=(), \
         geolocation=(), payment=(), usb=()",
    ),
];

/// Puts the headers of every answer.
pub(crate) fn protect(headers: &mut HeaderMap) {
    for (name, value) in HEADERS {
        headers.insert(HeaderName::from_static(name), HeaderValue::from_static(value));
    }
}

/// A way in: the names under which a listener is known, and whether a code is asked for there.
#[derive(Debug, Clone)]
pub struct Door {
    /// Hosts as a browser writes them, with the port.
    pub hosts: Vec<String>,
    /// A session is needed.
    pub paired: bool,
}

impl Door {
    /// The door of this machine itself.
    pub fn own(port: u16) -> Door {
        Door { hosts: hosts(&["localhost", "127.0.0.1"], port), paired: false }
    }
    /// The door to the local network, under one address.
    pub fn network(address: std::net::IpAddr, port: u16) -> Door {
        let shown = if address.is_ipv6() { format!("[{address}]") } else { address.to_string() };
        Door { hosts: hosts(&[&shown], port), paired: true }
    }

    /// Refuses a request under a foreign name, which is how a page elsewhere reaches a server here (DNS rebinding), and a
    /// change asked for by a page from elsewhere.
    pub(crate) fn admit(
        &self,
        method: &Method,
        uri: &Uri,
        headers: &HeaderMap,
    ) -> Result<(), (StatusCode, &'static str)> {
        let foreign = (StatusCode::MISDIRECTED_REQUEST, "This server does not answer under that name.");
        let mut hosts = headers.get_all(header::HOST).iter();
        let host = hosts.next().and_then(|h| h.to_str().ok());
        let ours = |h: &str| self.hosts.iter().any(|o| o.eq_ignore_ascii_case(h));
        if hosts.next().is_some() || !host.is_some_and(ours) || uri.authority().is_some_and(|a| !ours(a.as_str())) {
            return Err(foreign);
        }
        let elsewhere = (StatusCode::FORBIDDEN, "Asked for by a page from elsewhere.");
        let origin = headers.get(header::ORIGIN);
        let own_page = origin.is_some_and(|o| o.to_str().is_ok_and(|o| o.strip_prefix("http://").is_some_and(ours)));
        let changes = !matches!(*method, Method::GET | Method::HEAD);
        if changes && origin.is_some() && !own_page {
            return Err(elsewhere);
        }
        let site = headers.get("sec-fetch-site").map(HeaderValue::as_bytes);
        let asked_here = matches!(site, None | Some(b"same-origin" | b"none"));
        let for_data = changes || uri.path().starts_with("/api/");
        if for_data && !asked_here { Err(elsewhere) } else { Ok(()) }
    }
}

fn hosts(names: &[&str], port: u16) -> Vec<String> {
    let mut all: Vec<String> = names.iter().map(|n| format!("{n}:{port}")).collect();
    if port == 80 {
        all.extend(names.iter().map(|n| (*n).to_string()));
    }
    all
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn asked(method: Method, uri: &str, headers: &[(&'static str, &str)]) -> Result<(), StatusCode> {
        let mut map = HeaderMap::new();
        for (k, v) in headers {
            map.append(*k, v.parse().unwrap());
        }
        Door::own(4000).admit(&method, &uri.parse().unwrap(), &map).map_err(|(s, _)| s)
    }

    #[test]
    fn only_the_servers_own_names_are_answered() {
        assert_eq!(asked(Method::GET, "/", &[("host", "localhost:4000")]), Ok(()));
        assert_eq!(asked(Method::GET, "/", &[("host", "LOCALHOST:4000")]), Ok(()));
        let foreign = Err(StatusCode::MISDIRECTED_REQUEST);
        assert_eq!(asked(Method::GET, "/", &[("host", "evil.example:4000")]), foreign);
        assert_eq!(asked(Method::GET, "/", &[("host", "localhost")]), foreign, "another port");
        assert_eq!(asked(Method::GET, "/", &[]), foreign);
        assert_eq!(asked(Method::GET, "/", &[("host", "localhost:4000"), ("host", "evil.example")]), foreign);
        assert_eq!(asked(Method::GET, "http://evil.example/", &[("host", "localhost:4000")]), foreign);
    }

    #[test]
    fn a_page_from_elsewhere_may_neither_change_nor_read_the_job() {
        let host = ("host", "127.0.0.1:4000");
        let no = Err(StatusCode::FORBIDDEN);
        assert_eq!(asked(Method::PUT, "/api/job", &[host, ("origin", "http://127.0.0.1:4000")]), Ok(()));
        assert_eq!(asked(Method::PUT, "/api/job", &[host, ("origin", "http://evil.example")]), no);
        assert_eq!(asked(Method::PUT, "/api/job", &[host, ("origin", "null")]), no);
        assert_eq!(asked(Method::PUT, "/api/job", &[host, ("sec-fetch-site", "cross-site")]), no);
        assert_eq!(asked(Method::GET, "/api/job", &[host, ("sec-fetch-site", "same-site")]), no);
        assert_eq!(asked(Method::GET, "/api/job", &[host, ("sec-fetch-site", "same-origin")]), Ok(()));
        assert_eq!(asked(Method::GET, "/", &[host, ("sec-fetch-site", "cross-site")]), Ok(()), "a link may lead here");
    }
}
