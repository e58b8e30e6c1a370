//! `buttonup serve` and `buttonup demo`: one shop on this machine.

use crate::answer::{Answer, Wrong};
use crate::demo;
use clap::Args;
use jiff::Timestamp;
use shop::Service;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use store::{Sqlite, Store};

/// The name of a shop's log in its folder.
pub const LOG: &str = "shop";

/// Where to serve, and from which folder.
#[derive(Debug, Args)]
pub struct Where {
    /// The address to serve on; port 0 takes any free one.
    #[arg(long, value_name = "ADDRESS:PORT", default_value = "127.0.0.1:7461")]
    listen: SocketAddr,
    /// The shop's folder.
    #[arg(long, value_name = "FOLDER")]
    data: Option<PathBuf>,
    /// Do not open a browser.
    #[arg(long)]
    no_open: bool,
}

/// Opens the record in a folder.
pub fn open_store(folder: &Path) -> Result<Sqlite, Wrong> {
    Sqlite::open(folder).map_err(|error| {
        let mend = error.mend();
        Wrong::input(folder.display().to_string(), error.to_string(), mend)
    })
}

/// Serves a shop until it is stopped.
pub fn serve(place: &Where) -> Result<Answer, Wrong> {
    let folder = place.data.clone().unwrap_or_else(|| PathBuf::from("shop"));
    let service = open_service(&folder)?;
    run(place, service)
}

/// Makes the invented shop in a fresh folder, then serves it.
pub fn demo(place: &Where) -> Result<Answer, Wrong> {
    let folder = match &place.data {
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
    let service = open_service(&folder)?;
    demo::make(&service)?;
    run(place, service)
}

fn open_service(folder: &Path) -> Result<Service, Wrong> {
    let store: Arc<dyn Store> = Arc::new(open_store(folder)?);
    Ok(Service::open(store, LOG, Arc::new(Timestamp::now))?)
}

fn run(place: &Where, service: Service) -> Result<Answer, Wrong> {
    if place.listen.ip() != Ipv4Addr::LOCALHOST {
        return Err(Wrong::input(
            "--listen",
            format!("{} is not this machine", place.listen.ip()),
            "use 127.0.0.1: this machine only, until people have PINs",
        ));
    }
    let stopped = |error: std::io::Error| {
        Wrong::input(
            place.listen.to_string(),
            error.to_string(),
            "is another program on that port? name another with --listen",
        )
    };
    let runtime = tokio::runtime::Runtime::new().map_err(stopped)?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::bind(place.listen)
            .await
            .map_err(stopped)?;
        let address = listener.local_addr().map_err(stopped)?;
        let live = web::Live::default();
        let (store, _) = service.record();
        let told = live.clone();
        store.on_append(Box::new(move |_, position| told.grown(position)));
        let state = web::State {
            service: Arc::new(service),
            live,
        };
        println!("http://{address}");
        println!("This machine only. Stop with Ctrl-C.");
        if !place.no_open {
            open_browser(&format!("http://{address}"));
        }
        axum::serve(listener, web::router(state, address.port()))
            .with_graceful_shutdown(async {
                let _ = tokio::signal::ctrl_c().await;
            })
            .await
            .map_err(stopped)
    })?;
    Ok(Answer {
        text: String::new(),
        json: serde_json::Value::Null,
        good: true,
    })
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
