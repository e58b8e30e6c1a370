//! Connections: how many there are at once, and how long one may say nothing.

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::GracefulShutdown;
use hyper_util::service::TowerToHyperService;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio_io_timeout::TimeoutStream;

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
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            // A shop has a dozen screens, each with a few connections; a process may hold a
            // thousand files.
            connections: 512,
            head: Duration::from_secs(30),
            taking: Duration::from_secs(30),
        }
    }
}

/// Serves until `stopping` is done; then those who are being answered are answered to the end.
pub async fn serve(
    listener: TcpListener,
    router: Router,
    limits: Limits,
    stopping: impl Future<Output = ()>,
) {
    let places = Arc::new(Semaphore::new(limits.connections));
    let all = GracefulShutdown::new();
    let mut stopping = pin!(stopping);
    loop {
        let (stream, place) = tokio::select! {
            next = next(&listener, &places) => next,
            () = &mut stopping => break,
        };
        let connection = http1::Builder::new()
            .timer(TokioTimer::new())
            .header_read_timeout(limits.head)
            .serve_connection(
                TokioIo::new(Box::pin(patient(stream, limits))),
                TowerToHyperService::new(router.clone()),
            );
        let connection = all.watch(connection);
        tokio::spawn(async move {
            // Whoever broke it off knows; there is nobody else to tell.
            let _ = connection.await;
            drop(place);
        });
    }
    drop(listener);
    all.shutdown().await;
}

/// The next connection, once there is a place for it.
async fn next(
    listener: &TcpListener,
    places: &Arc<Semaphore>,
) -> (TcpStream, OwnedSemaphorePermit) {
    /// Where no connection can be taken the machine is out of something: it gets a moment.
    const MOMENT: Duration = Duration::from_millis(200);
    let place = Arc::clone(places).acquire_owned().await;
    let place = place.expect("the places are never closed");
    loop {
        match listener.accept().await {
            Ok((stream, _)) => return (stream, place),
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
