//! `buttonup serve` and `buttonup demo`: one shop on this machine.

use crate::answer::{Answer, Wrong};
use crate::keep::daily::{Copies, Keeper};
use crate::keep::{Place, clock_agrees, erase_due};
use crate::network::OnNetwork;
use clap::Args;
use jiff::Timestamp;
use shop::Service;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;
use tokio::sync::watch;

/// Where to serve.
#[derive(Debug, Args)]
struct Listen {
    /// The address to serve on; port 0 takes any free one.
    #[arg(long, value_name = "ADDRESS:PORT", default_value = "127.0.0.1:7461")]
    listen: SocketAddr,
    /// Do not open a browser.
    #[arg(long)]
    no_open: bool,
}

/// Where to serve, and which record.
#[derive(Debug, Args)]
pub struct Serve {
    #[command(flatten)]
    listen: Listen,
    #[command(flatten)]
    network: OnNetwork,
    #[command(flatten)]
    copies: Copies,
    #[command(flatten)]
    place: Place,
}

/// Where to serve, and where to make the invented shop.
#[derive(Debug, Args)]
pub struct Demo {
    #[command(flatten)]
    listen: Listen,
    #[command(flatten)]
    network: OnNetwork,
    /// A fresh folder; a temporary one if none is named.
    #[arg(long, value_name = "FOLDER")]
    data: Option<PathBuf>,
}

/// Serves a shop until it is stopped.
pub fn serve(serve: &Serve) -> Result<Answer, Wrong> {
    only_this_machine(&serve.listen)?;
    let service = open_service(&serve.place)?;
    let keeper = Keeper::new(&serve.place, Some(&serve.copies));
    run(&serve.listen, &serve.network, &serve.place, service, keeper)
}

/// Makes the invented shop in a fresh folder, then serves it.
pub fn demo(demo: &Demo) -> Result<Answer, Wrong> {
    only_this_machine(&demo.listen)?;
    let folder = match &demo.data {
        Some(folder) => folder.clone(),
        None => std::env::temp_dir().join(format!("buttonup-demo-{}", shop::Device::name())),
    };
    let taken = std::fs::read_dir(&folder).is_ok_and(|mut entries| entries.next().is_some());
    if taken {
        return Err(Wrong::input(
            folder.display().to_string(),
            "the folder is not empty, and the demo wants a fresh one",
            "name another with --data, or serve this one with `buttonup serve --data`",
        ));
    }
    let place = Place::folder(folder);
    let service = open_service(&place)?;
    crate::demo::make(&service)?;
    let keeper = Keeper::new(&place, None);
    run(&demo.listen, &demo.network, &place, service, keeper)
}

pub fn open_service(place: &Place) -> Result<Service, Wrong> {
    let store = place.write()?.shared();
    place.must_not_be_anothers(store.as_ref())?;
    Ok(Service::open(store, &place.log, Arc::new(Timestamp::now))?)
}

/// Asked before anything is opened or made.
fn only_this_machine(listen: &Listen) -> Result<(), Wrong> {
    if listen.listen.ip() == Ipv4Addr::LOCALHOST {
        return Ok(());
    }
    Err(Wrong::input(
        "--listen",
        format!("{} is not this machine", listen.listen.ip()),
        "use 127.0.0.1 for this machine; for the shop's network start it with --shop-network",
    ))
}

fn run(
    listen: &Listen,
    network: &OnNetwork,
    place: &Place,
    service: Service,
    keeper: Keeper,
) -> Result<Answer, Wrong> {
    let stopped = |error: std::io::Error| {
        Wrong::input(
            listen.listen.to_string(),
            error.to_string(),
            "is another program on that port? name another with --listen",
        )
    };
    let keeper = Arc::new(keeper);
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .max_blocking_threads(MOST_AT_ONCE)
        .build()
        .map_err(stopped)?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::bind(listen.listen)
            .await
            .map_err(stopped)?;
        let address = listener.local_addr().map_err(stopped)?;
        let ready = network.ready(&place.data, Timestamp::now()).await?;
        let live = web::Live::default();
        let (store, _) = service.record();
        let told = live.clone();
        store.on_append(Box::new(move |_, position| told.grown(position)));
        let service = Arc::new(service);
        let state = web::State {
            service: Arc::clone(&service),
            live: live.clone(),
            keeper: keeper.clone(),
            network: ready.as_ref().map(|ready| ready.network.clone()),
        };
        tokio::spawn(erase_when_due(Arc::clone(&service), place.clone()));
        if keeper.daily {
            tokio::spawn(copy_daily(Arc::clone(&service), keeper));
        }
        println!("http://{address}");
        match &ready {
            Some(ready) => println!("{}\nStop with Ctrl-C.", ready.told()),
            None => println!("This machine only. Stop with Ctrl-C."),
        }
        if !listen.no_open {
            open_browser(&format!("http://{address}"));
        }
        let (told_to_stop, stopping) = watch::channel(false);
        tokio::spawn(until_told_to_stop(live, told_to_stop));
        let graceful = is_told(stopping.clone());
        let router = web::router(state, address.port());
        let (limits, told) = (web::Limits::default(), stopping.clone());
        if let Some(ready) = ready {
            tokio::spawn(ready.serve(router.clone(), limits, move || is_told(told.clone())));
        }
        let serving = web::serve(listener, router, limits, graceful);
        tokio::select! {
            () = serving => {}
            // Whoever is still being answered has had the time to be.
            () = out_of_patience(stopping) => {}
        }
        // Only so that the next start is quick: without it, it catches up.
        let saving = tokio::task::spawn_blocking(move || service.save_index());
        if let Ok(saved) = tokio::time::timeout(SAVING, saving).await {
            saved.map_err(|error| stopped(error.into()))??;
        }
        Ok::<_, Wrong>(())
    })?;
    // Nobody waits for what hangs.
    runtime.shutdown_timeout(SAVING);
    Ok(Answer {
        text: String::new(),
        json: serde_json::Value::Null,
        good: true,
    })
}

/// How many are answered at the same time. More threads answer no sooner on a shop's machine, and
/// each keeps memory of its own.
const MOST_AT_ONCE: usize = 24;

/// How long those are waited for who are being answered when the program is told to stop.
const PATIENCE: Duration = Duration::from_millis(1_200);

/// How long writing the index may take, and then whatever still hangs.
const SAVING: Duration = Duration::from_millis(300);

/// Waits until somebody wants the program to end, by Ctrl-C or as a service is stopped, and
/// tells the pages. Who wants it twice gets it at once.
async fn until_told_to_stop(live: web::Live, told_to_stop: watch::Sender<bool>) {
    let Ok(mut signals) = Signals::listen() else {
        return;
    };
    signals.next().await;
    live.close();
    told_to_stop.send_replace(true);
    signals.next().await;
    // The number that a shell expects of what was interrupted.
    std::process::exit(130);
}

async fn is_told(mut stopping: watch::Receiver<bool>) {
    let _ = stopping.wait_for(|told| *told).await;
}

async fn out_of_patience(stopping: watch::Receiver<bool>) {
    is_told(stopping).await;
    tokio::time::sleep(PATIENCE).await;
}

/// What ends a program from outside.
struct Signals {
    #[cfg(unix)]
    interrupted: tokio::signal::unix::Signal,
    #[cfg(unix)]
    terminated: tokio::signal::unix::Signal,
}

impl Signals {
    #[cfg(unix)]
    fn listen() -> std::io::Result<Self> {
        use tokio::signal::unix::{SignalKind, signal};
        Ok(Self {
            interrupted: signal(SignalKind::interrupt())?,
            terminated: signal(SignalKind::terminate())?,
        })
    }

    #[cfg(unix)]
    async fn next(&mut self) {
        tokio::select! {
            _ = self.interrupted.recv() => {}
            _ = self.terminated.recv() => {}
        }
    }

    #[cfg(not(unix))]
    fn listen() -> std::io::Result<Self> {
        Ok(Self {})
    }

    #[cfg(not(unix))]
    async fn next(&mut self) {
        let _ = tokio::signal::ctrl_c().await;
    }
}

/// Carries out the erasures that waited for a day that has come, for as long as the shop
/// is served.
async fn erase_when_due(service: Arc<Service>, place: Place) {
    const LOOK_AGAIN: Duration = Duration::from_secs(60 * 60);
    loop {
        let (service, place) = (Arc::clone(&service), place.clone());
        let done = tokio::task::spawn_blocking(move || {
            clock_agrees(&service)?;
            erase_due(&place, &service)
        });
        let done = done.await;
        if let Ok(Err(wrong)) = done {
            tracing::warn!("erasures that are due: {wrong}");
        }
        tokio::time::sleep(LOOK_AGAIN).await;
    }
}

/// Copies the record once a day, for as long as the shop is served.
async fn copy_daily(service: Arc<Service>, keeper: Arc<Keeper>) {
    /// Whoever starts the program wants to work first.
    const FIRST: Duration = Duration::from_secs(10 * 60);
    const LOOK_AGAIN: Duration = Duration::from_secs(60 * 60);
    tokio::time::sleep(FIRST).await;
    loop {
        let (service, keeper) = (Arc::clone(&service), Arc::clone(&keeper));
        let done = tokio::task::spawn_blocking(move || {
            let events = service.world()?.position;
            keeper.daily_copy(events)
        });
        match done.await {
            Ok(Ok(true)) => tracing::info!("the day's copy is made"),
            Ok(Err(wrong)) => tracing::warn!("the day's copy: {wrong}"),
            _ => {}
        }
        tokio::time::sleep(LOOK_AGAIN).await;
    }
}

/// Opens the browser if this machine has a way to; the address is printed anyway.
fn open_browser(address: &str) {
    let opener = if cfg!(target_os = "macos") {
        "open"
    } else if cfg!(target_os = "windows") {
        "explorer"
    } else {
        "xdg-open"
    };
    let quiet = std::process::Stdio::null;
    let started = std::process::Command::new(opener)
        .arg(address)
        .stdin(quiet())
        .stdout(quiet())
        .stderr(quiet())
        .spawn();
    if started.is_err() {
        tracing::debug!("no {opener} on this machine");
    }
}
