//! How do requests come in, and what bounds them? Sockets, time limits, size limits; what they say is another file's business.

use std::convert::Infallible;
use std::net::{IpAddr, SocketAddr, TcpListener};
use std::sync::Arc;
use std::time::Duration;

use http_body_util::{BodyExt, Full, LengthLimitError, Limited};
use hyper::body::{Body, Bytes, Incoming};
use hyper::header::{CONNECTION, HeaderValue};
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper::{Request, Response, StatusCode};
use hyper_util::rt::{TokioIo, TokioTimer};
use thiserror::Error;
use tokio::net::TcpStream;
use tokio::sync::Semaphore;
use tokio::time::timeout;

use crate::answer::{Site, plain};
use crate::guard::{self, Door};
use crate::network::is_local;

/// Largest body of a request.
pub const MOST_BYTES: usize = 8 << 20;
/// Largest body from whoever was not let in yet: a code.
const MOST_BYTES_OUTSIDE: usize = 256;
/// Largest head of a request.
const MOST_HEAD: usize = 16 << 10;
/// Connections at one door at once.
const MOST_CONNECTIONS: usize = 64;
/// For the head of a request, and between two requests.
const HEAD_TIME: Duration = Duration::from_secs(10);
/// For the body of a request.
const BODY_TIME: Duration = Duration::from_secs(30);
/// For a whole connection; a browser opens another one.
const CONNECTION_TIME: Duration = Duration::from_secs(300);

/// A socket and the door it stands for.
pub struct Listener {
    socket: TcpListener,
    door: Door,
}

/// Why there is no server.
#[derive(Debug, Error)]
pub enum NoServer {
    /// The address cannot be listened on.
    #[error("{address} cannot be listened on: {error}; another --port may be free")]
    Taken {
        /// Which.
        address: SocketAddr,
        /// What the system says.
        error: std::io::Error,
    },
    /// This machine has no address in a local network.
    #[error(
        "this machine has no address in a local network, found {0}; --share needs one (10.…, 172.16.… to 172.31.…, 192.168.…)"
    )]
    NotLocal(String),
    /// The system refused.
    #[error("the server cannot be started: {0}")]
    System(#[from] std::io::Error),
}

impl Listener {
    /// Listens on this machine only. Port 0 takes any that is free.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn own(port: u16) -> Result<Listener, NoServer> {
        Listener::bind(SocketAddr::from(([127, 0, 0, 1], port)), |a| Door::own(a.port()))
    }

    /// Listens on one address of the local network, where a code is asked for.
    ///
    /// # Errors
    /// When the address is not one of a local network, or the port is taken.
    pub fn network(address: IpAddr, port: u16) -> Result<Listener, NoServer> {
        if !is_local(address) {
            return Err(NoServer::NotLocal(address.to_string()));
        }
        Listener::bind(SocketAddr::new(address, port), |a| Door::network(a.ip(), a.port()))
    }

    fn bind(address: SocketAddr, door: impl Fn(SocketAddr) -> Door) -> Result<Listener, NoServer> {
        let socket = TcpListener::bind(address).map_err(|error| NoServer::Taken { address, error })?;
        socket.set_nonblocking(true)?;
        let door = door(socket.local_addr()?);
        Ok(Listener { socket, door })
    }

    /// The address it listens on.
    ///
    /// # Errors
    /// When the system does not say.
    pub fn address(&self) -> Result<SocketAddr, NoServer> {
        Ok(self.socket.local_addr()?)
    }
}

/// Serves until the program ends.
///
/// # Errors
/// When it cannot begin.
pub fn run(site: Site, listeners: Vec<Listener>) -> Result<Infallible, NoServer> {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
    let site = Arc::new(site);
    runtime.block_on(async move {
        for listener in listeners {
            let socket = tokio::net::TcpListener::from_std(listener.socket)?;
            tokio::spawn(accept(socket, Arc::new(listener.door), Arc::clone(&site)));
        }
        Ok(std::future::pending::<Infallible>().await)
    })
}

async fn accept(socket: tokio::net::TcpListener, door: Arc<Door>, site: Arc<Site>) {
    let places = Arc::new(Semaphore::new(MOST_CONNECTIONS));
    loop {
        // The semaphore is never closed, so a place always comes free.
        let Ok(place) = Arc::clone(&places).acquire_owned().await else { return };
        match socket.accept().await {
            Ok((stream, peer)) if is_local(peer.ip()) => {
                let (door, site) = (Arc::clone(&door), Arc::clone(&site));
                tokio::spawn(async move {
                    // A connection that runs out of time or breaks off is nothing to report: the browser asks again.
                    let _ = timeout(CONNECTION_TIME, converse(stream, door, site)).await;
                    drop(place);
                });
            }
            Ok(_) => {}
            // Too many open files, or a peer that left at once: wait a little and go on.
            Err(_) => tokio::time::sleep(Duration::from_millis(50)).await,
        }
    }
}

async fn converse(stream: TcpStream, door: Arc<Door>, site: Arc<Site>) -> hyper::Result<()> {
    let service = service_fn(move |request: Request<Incoming>| {
        let (door, site) = (Arc::clone(&door), Arc::clone(&site));
        async move { Ok::<_, Infallible>(respond(request, &door, &site).await.map(Full::new)) }
    });
    let mut builder = http1::Builder::new();
    builder
        .half_close(true)
        .timer(TokioTimer::new())
        .header_read_timeout(HEAD_TIME)
        .max_buf_size(MOST_HEAD)
        .max_headers(64);
    builder.serve_connection(TokioIo::new(stream), service).await
}

async fn respond(request: Request<Incoming>, door: &Door, site: &Site) -> Response<Bytes> {
    let (head, body) = request.into_parts();
    let refuse = |status: StatusCode, says: &str| {
        let mut out = plain(status, says);
        guard::protect(out.headers_mut());
        out.headers_mut().insert(CONNECTION, HeaderValue::from_static("close"));
        out
    };
    // Refused before the body is read: whoever may not speak need not be listened to.
    if let Err((status, why)) = door.admit(&head.method, &head.uri, &head.headers) {
        return refuse(status, why);
    }
    let most = if site.is_outside(door, &head.headers) { MOST_BYTES_OUTSIDE } else { MOST_BYTES };
    let too_large = format!("At most {most} bytes are taken.");
    if body.size_hint().lower() > most as u64 {
        return refuse(StatusCode::PAYLOAD_TOO_LARGE, &too_large);
    }
    match timeout(BODY_TIME, Limited::new(body, most).collect()).await {
        Ok(Ok(body)) => site.answer(door, &Request::from_parts(head, body.to_bytes())),
        Ok(Err(e)) if e.is::<LengthLimitError>() => refuse(StatusCode::PAYLOAD_TOO_LARGE, &too_large),
        Ok(Err(_)) => refuse(StatusCode::BAD_REQUEST, "The request broke off."),
        Err(_) => refuse(StatusCode::REQUEST_TIMEOUT, "The request took too long."),
    }
}
