//! `buttonup serve` and `buttonup demo`: one shop on this machine.

use crate::answer::{Answer, Wrong};
use crate::keep::{Place, erase_due, kept};
use clap::Args;
use jiff::Timestamp;
use shop::Service;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

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
    place: Place,
}

/// Where to serve, and where to make the invented shop.
#[derive(Debug, Args)]
pub struct Demo {
    #[command(flatten)]
    listen: Listen,
    /// A fresh folder; a temporary one if none is named.
    #[arg(long, value_name = "FOLDER")]
    data: Option<PathBuf>,
}

/// Serves a shop until it is stopped.
pub fn serve(serve: &Serve) -> Result<Answer, Wrong> {
    only_this_machine(&serve.listen)?;
    let service = open_service(&serve.place)?;
    run(&serve.listen, &serve.place, service)
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
    run(&demo.listen, &place, service)
}

pub fn open_service(place: &Place) -> Result<Service, Wrong> {
    let store = place.write()?.shared();
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
        "use 127.0.0.1: this machine only, until people have PINs",
    ))
}

fn run(listen: &Listen, place: &Place, service: Service) -> Result<Answer, Wrong> {
    let stopped = |error: std::io::Error| {
        Wrong::input(
            listen.listen.to_string(),
            error.to_string(),
            "is another program on that port? name another with --listen",
        )
    };
    let kept_at = place.clone();
    let runtime = tokio::runtime::Runtime::new().map_err(stopped)?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::bind(listen.listen)
            .await
            .map_err(stopped)?;
        let address = listener.local_addr().map_err(stopped)?;
        let live = web::Live::default();
        let (store, _) = service.record();
        let told = live.clone();
        store.on_append(Box::new(move |_, position| told.grown(position)));
        let service = Arc::new(service);
        let state = web::State {
            service: Arc::clone(&service),
            live,
            kept: Arc::new(move || kept(&kept_at)),
        };
        tokio::spawn(erase_when_due(Arc::clone(&service), place.clone()));
        println!("http://{address}");
        println!("This machine only. Stop with Ctrl-C.");
        if !listen.no_open {
            open_browser(&format!("http://{address}"));
        }
        axum::serve(listener, web::router(state, address.port()))
            .with_graceful_shutdown(async {
                let _ = tokio::signal::ctrl_c().await;
            })
            .await
            .map_err(stopped)?;
        // Only so that the next start is quick: without it, it catches up.
        tokio::task::spawn_blocking(move || service.save_index())
            .await
            .map_err(|error| stopped(error.into()))??;
        Ok::<_, Wrong>(())
    })?;
    Ok(Answer {
        text: String::new(),
        json: serde_json::Value::Null,
        good: true,
    })
}

/// Carries out the erasures that waited for a day that has come, for as long as the shop
/// is served.
async fn erase_when_due(service: Arc<Service>, place: Place) {
    const LOOK_AGAIN: Duration = Duration::from_secs(60 * 60);
    loop {
        let (service, place) = (Arc::clone(&service), place.clone());
        let done = tokio::task::spawn_blocking(move || erase_due(&place, &service)).await;
        if let Ok(Err(wrong)) = done {
            tracing::warn!("erasures that are due: {wrong}");
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
