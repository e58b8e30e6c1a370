//! Connections: how many there are at once, how long one may say nothing, and who hears them.

use crate::network::Peer;
use axum::Router;
use axum::body::Body;
use hyper::Request;
use hyper::body::Incoming;
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper_util::rt::{TokioExecutor, TokioIo, TokioTimer};
use hyper_util::server::conn::auto;
use hyper_util::server::graceful::{GracefulShutdown, Watcher};
use std::net::{IpAddr, SocketAddr};
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;
use tokio::io::{AsyncRead, AsyncWrite};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio_io_timeout::TimeoutStream;
use tokio_rustls::TlsAcceptor;
use tokio_rustls::rustls::ServerConfig;
use tower_service::Service as _;

/// What one program on a port has patience for.
#[derive(Debug, Clone, Copy)]
pub struct Limits {
    /// How many connections there are at once; more wait until one ends.
    pub connections: usize,
    /// How long the head of a request may take, counted from the end of the answer before: so
    /// long a connection may stand idle as well.
    pub head: Duration,
    /// How long somebody who is being answered may take nothing of it.
    pub taking: Duration,
    /// How long two may take to agree on how they encrypt.
    pub greeting: Duration,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            // A shop has a dozen screens, each with a few connections; a process may hold a
            // thousand files.
            connections: 512,
            head: Duration::from_secs(30),
            taking: Duration::from_secs(30),
            greeting: Duration::from_secs(5),
        }
    }
}

/// Who may come in at a port, and whether others between hear it.
#[derive(Clone)]
pub enum Door {
    /// This machine alone.
    Here,
    /// The shop's network, encrypted.
    Encrypted(Arc<ServerConfig>),
    /// A program in front, at this address, that speaks https with the network.
    Behind(IpAddr),
    /// Anybody, in the open: it answers how to come in, and nothing else.
    Open,
}

/// Serves this machine until `stopping` is done; then those who are being answered are answered
/// to the end.
pub async fn serve(
    listener: TcpListener,
    router: Router,
    limits: Limits,
    stopping: impl Future<Output = ()>,
) {
    serve_at(Door::Here, listener, router, limits, stopping).await;
}

/// The same for whoever may come in at that door.
pub async fn serve_at(
    door: Door,
    listener: TcpListener,
    router: Router,
    limits: Limits,
    stopping: impl Future<Output = ()>,
) {
    let places = Arc::new(Semaphore::new(limits.connections));
    let all = GracefulShutdown::new();
    let mut stopping = pin!(stopping);
    loop {
        let (stream, from, place) = tokio::select! {
            next = next(&listener, &places) => next,
            () = &mut stopping => break,
        };
        let (door, router, watcher) = (door.clone(), router.clone(), all.watcher());
        tokio::spawn(async move {
            answer(door, stream, from, router, limits, watcher).await;
            drop(place);
        });
    }
    drop(listener);
    all.shutdown().await;
}

/// Answers one connection to its end.
async fn answer(
    door: Door,
    stream: TcpStream,
    from: SocketAddr,
    router: Router,
    limits: Limits,
    watcher: Watcher,
) {
    let peer = |secure, here| Peer {
        address: from.ip().to_canonical(),
        secure,
        here,
    };
    let stream = Box::pin(patient(stream, limits));
    match door {
        Door::Here => speak(stream, router, peer(false, true), None, limits, watcher).await,
        Door::Open => speak(stream, router, peer(false, false), None, limits, watcher).await,
        Door::Behind(front) if from.ip().to_canonical() == front => {
            speak(
                stream,
                router,
                peer(true, false),
                Some(front),
                limits,
                watcher,
            )
            .await;
        }
        // Whoever goes round the program in front is not answered.
        Door::Behind(_) => {}
        Door::Encrypted(config) => {
            let greeting = TlsAcceptor::from(config).accept(stream);
            if let Ok(Ok(stream)) = tokio::time::timeout(limits.greeting, greeting).await {
                encrypted(stream, router, peer(true, false), limits, watcher).await;
            }
        }
    }
}

/// HTTP/1.1 in the open.
async fn speak(
    stream: impl AsyncRead + AsyncWrite + Unpin + 'static,
    router: Router,
    peer: Peer,
    front: Option<IpAddr>,
    limits: Limits,
    watcher: Watcher,
) {
    let answers = service_fn(move |request| {
        let peer = Peer {
            address: if front.is_some() {
                told_by_front(&request)
            } else {
                peer.address
            },
            ..peer
        };
        called(&router, request, peer)
    });
    let connection = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(limits.head)
        .serve_connection(TokioIo::new(stream), answers);
    // Whoever broke it off knows; there is nobody else to tell.
    let _ = watcher.watch(connection).await;
}

/// HTTP/1.1 or HTTP/2, as the two agreed.
async fn encrypted(
    stream: impl AsyncRead + AsyncWrite + Unpin + Send + 'static,
    router: Router,
    peer: Peer,
    limits: Limits,
    watcher: Watcher,
) {
    /// One page with its files asks for about a dozen things at once.
    const STREAMS: u32 = 64;
    let answers = service_fn(move |request| called(&router, request, peer));
    let mut builder = auto::Builder::new(TokioExecutor::new());
    builder
        .http1()
        .timer(TokioTimer::new())
        .header_read_timeout(limits.head);
    builder
        .http2()
        .timer(TokioTimer::new())
        .max_concurrent_streams(STREAMS)
        .keep_alive_interval(limits.head)
        .keep_alive_timeout(limits.taking);
    let connection = builder.serve_connection(TokioIo::new(stream), answers);
    let _ = watcher.watch(connection.into_owned()).await;
}

fn called(
    router: &Router,
    request: Request<Incoming>,
    peer: Peer,
) -> impl Future<Output = Result<axum::response::Response, std::convert::Infallible>> + use<> {
    let mut request = request.map(Body::new);
    request.extensions_mut().insert(peer);
    router.clone().call(request)
}

/// Whom the program in front says it speaks for: the last it names, which it wrote itself.
fn told_by_front(request: &Request<Incoming>) -> IpAddr {
    const NOBODY: IpAddr = IpAddr::V4(std::net::Ipv4Addr::UNSPECIFIED);
    let told = request.headers().get_all("x-forwarded-for");
    let last = told
        .iter()
        .next_back()
        .and_then(|value| value.to_str().ok());
    last.and_then(|value| value.rsplit(',').next()?.trim().parse().ok())
        .unwrap_or(NOBODY)
}

/// The next connection, once there is a place for it.
async fn next(
    listener: &TcpListener,
    places: &Arc<Semaphore>,
) -> (TcpStream, SocketAddr, OwnedSemaphorePermit) {
    /// Where no connection can be taken the machine is out of something: it gets a moment.
    const MOMENT: Duration = Duration::from_millis(200);
    let place = Arc::clone(places).acquire_owned().await;
    let place = place.expect("the places are never closed");
    loop {
        match listener.accept().await {
            Ok((stream, from)) => return (stream, from, place),
            Err(_) => tokio::time::sleep(MOMENT).await,
        }
    }
}

fn patient(stream: TcpStream, limits: Limits) -> TimeoutStream<TcpStream> {
    // Without it an answer may be a little later, no more.
    let _ = stream.set_nodelay(true);
    let mut stream = TimeoutStream::new(stream);
    stream.set_write_timeout(Some(limits.taking));
    stream
}
