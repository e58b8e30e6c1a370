//! `buttonup map export` and `buttonup map import`: maps from shop to shop.

use crate::answer::{Answer, Wrong};
use crate::keep::{Place, signer};
use clap::Args;
use serde_json::{Value, json};
use shop::repair::MapId;
use shop::sent_map::{
    ReceivedMap, WouldChange, log_beside, map_beside, people_named, received_map, sent_map,
    would_change,
};
use shop::{Caller, Device, Service};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use store::Store;

/// A map of the shop's, for another shop.
#[derive(Debug, Args)]
pub struct Export {
    /// The map, as its address names it: `lanner-estate-front-door`.
    map: String,
    /// The version; without it, the newest.
    #[arg(long)]
    version: Option<u32>,
    /// The file to write.
    #[arg(short, long, value_name = "FILE.json")]
    output: PathBuf,
    #[command(flatten)]
    place: Place,
}

/// A map that another shop has sent.
#[derive(Debug, Args)]
pub struct Import {
    /// The file as it came; with --from-log the map, as its address names it.
    file: PathBuf,
    /// Take the map from another shop whose record is in the same database, by the name of its
    /// log.
    #[arg(long, value_name = "NAME")]
    from_log: Option<String>,
    /// Keep it as the next version, in the name of this person of the shop. Without it, what
    /// it would change is only shown.
    #[arg(long, value_name = "PERSON")]
    keep: Option<String>,
    #[command(flatten)]
    place: Place,
}

fn service(place: &Place) -> Result<Service, Wrong> {
    let store = place.write_existing()?.shared();
    on(place, store)
}

fn on(place: &Place, store: Arc<dyn Store>) -> Result<Service, Wrong> {
    place.must_hold(store.as_ref())?;
    Ok(Service::open(
        store,
        &place.log,
        Arc::new(jiff::Timestamp::now),
    )?)
}

/// Writes the file.
pub fn export(asked: &Export) -> Result<Answer, Wrong> {
    let service = service(&asked.place)?;
    let (sent, named) = service.look(&Caller::program(), |snap| {
        let sent = sent_map(snap, &MapId::new(&asked.map), asked.version)?;
        let named = people_named(snap, &sent.text);
        Ok::<_, shop::Trouble>((sent, named))
    })?;
    let signer = signer(&asked.place)?;
    let place = asked.output.display().to_string();
    fs::write(&asked.output, signer.file(&sent)).map_err(|error| {
        Wrong::input(
            &*place,
            error.to_string(),
            "name a file that can be written",
        )
    })?;
    let mut text = format!(
        "{place}: {}, version {}, signed with {}",
        sent.vehicle,
        sent.version,
        signer.mark()
    );
    if !named.is_empty() {
        let names = named.join(", ");
        text +=
            &format!("\nIts text names {names}: take that out first if it means somebody here.");
    }
    Ok(Answer {
        text,
        json: json!({ "file": place, "vehicle": sent.vehicle, "version": sent.version,
            "signed_with": signer.mark(), "names": named }),
        good: true,
    })
}

/// Says what a file would change, and keeps it if that is asked for.
pub fn import(asked: &Import) -> Result<Answer, Wrong> {
    let (service, received) = match &asked.from_log {
        Some(log) => beside(asked, log)?,
        None => {
            let received = in_file(&asked.file)?;
            (service(&asked.place)?, received)
        }
    };
    let would = service.look(&Caller::program(), |snap| would_change(snap, &received))?;
    let kept = match &asked.keep {
        Some(person) if !would.same => {
            keep(&service, person, &received, &would)?;
            true
        }
        _ => false,
    };
    Ok(Answer {
        text: told(&received, &would, kept),
        json: json!({ "vehicle": received.sent.vehicle, "from": received.sent.from,
            "their_version": received.sent.version, "signed_with": received.key,
            "signed_before": would.before, "map": would.map.as_str(), "version": would.version,
            "changes": would.changes, "same": would.same, "faults": would.faults,
            "things": would.items, "kept": kept }),
        good: true,
    })
}

fn in_file(file: &Path) -> Result<ReceivedMap, Wrong> {
    let place = file.display().to_string();
    let text = fs::read_to_string(file).map_err(|error| {
        Wrong::input(&*place, error.to_string(), "name a file that can be read")
    })?;
    Ok(received_map(&text)?)
}

/// The shop's own record, and the map of another shop in the same database.
fn beside(asked: &Import, log: &str) -> Result<(Service, ReceivedMap), Wrong> {
    let store = asked.place.write_existing()?.shared();
    let theirs = Place {
        log: log.to_owned(),
        ..asked.place.clone()
    };
    let other = on(&theirs, Arc::clone(&store))?;
    let map = MapId::new(asked.file.display().to_string());
    let received = map_beside(&other, log, &map)?;
    Ok((on(&asked.place, store)?, received))
}

fn told(received: &ReceivedMap, would: &WouldChange, kept: bool) -> String {
    let sent = &received.sent;
    let signed = match log_beside(&received.key) {
        Some(log) => format!("from the log {log} of the same database"),
        None => format!("signed with {}", received.key),
    };
    let mut lines = vec![format!(
        "{}, version {} of {}, kept {}, {signed}{}",
        sent.vehicle,
        sent.version,
        sent.from,
        sent.kept,
        match would.before.as_slice() {
            [] => " (not seen here before)".to_owned(),
            before => format!(" (as {} was)", before.join(", ")),
        }
    )];
    match &would.changes {
        _ if would.same => lines.push("It is what is here already.".to_owned()),
        None => lines.push(format!("The whole map is new: {} things.", would.items)),
        Some(changes) => lines.extend(changes.iter().cloned()),
    }
    lines.extend(would.faults.iter().cloned());
    if kept {
        lines.push(format!(
            "Kept as version {} of {}.",
            would.version, would.map
        ));
    } else if !would.same {
        lines.push("Nothing is kept yet: --keep PERSON keeps it.".to_owned());
    }
    lines.join("\n")
}

fn keep(
    service: &Service,
    person: &str,
    received: &ReceivedMap,
    would: &WouldChange,
) -> Result<(), Wrong> {
    let who = service.look(&Caller::program(), |snap| {
        let people = snap.world().shop.everyone();
        let found = people
            .iter()
            .find(|(id, (name, _))| id.as_str() == person || snap.texts().text(*name) == person);
        let names: Vec<String> = people
            .values()
            .map(|(name, _)| snap.texts().text(*name))
            .collect();
        found.map(|(id, _)| id.as_str().to_owned()).ok_or_else(|| {
            shop::Trouble::unreadable(
                "--keep",
                format!("nobody here is called {person}"),
                &format!("name one of these: {}", names.join(", ")),
            )
        })
    })?;
    let mut device = Device::new(&Device::name(), &who);
    let stream = format!("map:{}", would.map);
    let facts: [Value; 2] = [
        json!({ "drafted": { "version": would.version,
            "text": Device::document(&received.sent.text, "application/toml") } }),
        json!({ "received": { "version": would.version,
            "from": Device::words(&received.sent.from), "key": received.key } }),
    ];
    for fact in facts {
        let command = device.command(&stream, service.now(), "map_fact", fact);
        service.command(&Caller::program(), command)?;
    }
    Ok(())
}
