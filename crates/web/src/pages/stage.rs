//! Stages: taking things off as typed, putting them back as shown; the open list; the
//! tray.

use super::walk::ZONES;
use super::{Shown, count, order_of, show};
use crate::State;
use crate::tap::{Look, button, chips, field, input, link, new, order_fact, words};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, PreEscaped, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::{KindForm, PutInForm, SystemForm, ZoneForm};
use shop::repair::{Kind, System, Zone};
use shop::view::{ItemView, OrderView};
use shop::{ItemLine, item_line};

/// Rows a stage shows at most.
const MOST: usize = 8;

pub const KINDS: &[(&str, &str)] = &[
    ("fasteners", "bolts, screws, nuts"),
    ("clips", "clips"),
    ("part", "part"),
    ("cover", "cover"),
    ("hose", "hose, pipe"),
    ("connector", "plug"),
    ("seal", "seal"),
    ("belt", "belt"),
    ("fluid", "fluid"),
    ("put-in", "put in"),
];

pub const SYSTEMS: &[(&str, &str)] = &[
    ("brakes", "brakes"),
    ("steering", "steering"),
    ("wheels", "wheels"),
    ("suspension", "suspension"),
    ("fuel", "fuel"),
    ("restraints", "airbags, belts"),
    ("drive-belt", "drive belt"),
    ("high-voltage", "high voltage"),
    ("cooling", "cooling"),
    ("oil", "engine oil"),
    ("engine", "engine"),
    ("transmission", "gearbox"),
    ("intake", "intake"),
    ("exhaust", "exhaust"),
    ("battery", "battery"),
    ("electrical", "electrical"),
    ("climate", "climate"),
    ("body", "body, covers"),
];

/// What was typed.
#[derive(Debug, Deserialize)]
pub struct Typed {
    lines: Option<String>,
}

pub async fn off(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(typed): Query<Typed>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let typed = typed.lines.unwrap_or_default();
        let lines: Vec<ItemLine> = typed
            .lines()
            .flat_map(|line| line.split(';'))
            .filter(|line| !line.trim().is_empty())
            .take(MOST)
            .map(item_line)
            .collect();
        Ok(Shown::of(&order, "This stage", html! {
            h1 { "What comes off" }
            @if lines.is_empty() {
                form method="get" action=(format!("/o/{}/off", order.number)) class="narrow" {
                    label class="field" {
                        span { "One thing a line, as you would say it" }
                        span class="soft" { "such as 6 tray screws M6x16, or 5.5 L coolant, or rag" }
                        textarea name="lines" required {}
                    }
                    div class="presses" { button class="press confirm" type="submit" { "Read it" } }
                }
                (again(&order))
            } @else { (read_lines(&order, &lines)) }
        }))
    })
    .await
}

/// Things known and at home: off again with one tap each.
fn again(order: &OrderView) -> Markup {
    let home: Vec<_> = order
        .items
        .iter()
        .filter(|item| item.home && item.kind != KindForm::Work)
        .collect();
    html! {
        @if !home.is_empty() {
            h2 { "Known, and in place" }
            @for item in home {
                a class="row" href=(format!("/o/{}/item/{}", order.number, item.item)) {
                    (mark(item)) span class="what" { (item.label) } span class="soft" { (where_it_stands(item)) }
                }
            }
        }
    }
}

/// What was typed, as read: one tap confirms, exceptions are opened.
fn read_lines(order: &OrderView, lines: &[ItemLine]) -> Markup {
    let pieces: usize = lines.iter().map(|line| usize::from(line.count)).sum();
    let mut commands: Vec<Value> = lines
        .iter()
        .enumerate()
        .map(|(nth, line)| declare(&order.order, nth, line))
        .collect();
    let moves: Vec<Value> = lines
        .iter()
        .enumerate()
        .map(|(nth, line)| take_off(nth, line))
        .collect();
    commands.push(order_fact(
        &order.order,
        json!({ "moved": { "stage": new("stage"), "moves": moves } }),
    ));
    commands.extend(
        lines
            .iter()
            .enumerate()
            .filter_map(|(nth, line)| drain(&order.order, nth, line)),
    );
    html! {
        @for caution in cautions(lines) { p class="caution" { (caution) } }
        form {
            @for (nth, line) in lines.iter().enumerate() { (line_row(nth, line)) }
            (input("container", "They lie in", "such as tray A", "tray A"))
            div class="presses two low" {
                (button(Look::Confirm, "Out as shown", &count(pieces, "piece", "pieces"), &commands, Some(&format!("/o/{}", order.number))))
                (link(Look::Plain, "Type again", "", &format!("/o/{}/off", order.number)))
            }
        }
    }
}

/// One thing as it was read, with everything about it a tap away.
fn line_row(nth: usize, line: &ItemLine) -> Markup {
    let kind = KindForm::word(line.kind);
    let system = SystemForm::word(line.system);
    let zone = ZoneForm::word(line.zone);
    let unknown = line.system == System::Unknown;
    let spoken = |list: &[(&str, &str)], code: &str| {
        list.iter()
            .find(|(known, _)| *known == code)
            .map_or_else(|| "not told".to_owned(), |(_, word)| (*word).to_owned())
    };
    html! {
        details id=(format!("line-{nth}")) open[unknown] {
            summary class="row" {
                span class={ "mark " (mark_of(line.kind)) } {}
                span class="what" {
                    span class="strong line" { (line.label) @if let Some(size) = &line.size { " " (size) } }
                    span class="soft line" {
                        (spoken(KINDS, kind)) " · " (spoken(SYSTEMS, system)) " · " (spoken(ZONES, zone))
                        @if let Some(amount) = &line.amount { " · " (amount) }
                    }
                }
                span class="beside number" { (line.count) }
            }
            (chips(&format!("kind-{nth}"), "What it is", KINDS, kind))
            (chips(&format!("system-{nth}"), "Belongs to", SYSTEMS, system))
            (chips(&format!("zone-{nth}"), "Worked on", ZONES, zone))
            (chips(&format!("spent-{nth}"), "Goes back?", &[("", "the same one"), ("spent", "a new one")], if line.kind == Kind::Seal { "spent" } else { "" }))
        }
    }
}

fn declare(order: &str, nth: usize, line: &ItemLine) -> Value {
    let at = |name: &str| format!("{name}-{nth}");
    let pieces: Vec<Value> = (1..=line.count)
        .map(|position| json!({ "position": position, "length": null }))
        .collect();
    let put_in = line.put_in.map_or("other", PutInForm::word);
    order_fact(
        order,
        json!({ "declared": { "item": {
            "id": new(&at("item")),
            "kind": field(&at("kind")),
            "system": { "$map": at("system"), "to": same(SYSTEMS), "else": "unknown" },
            "zone": field(&at("zone")),
            "label": words(&line.label),
            "size": line.size,
            "pieces": pieces,
            "pattern": null,
            "spent": { "$flag": at("spent") },
            "may_miss": null,
            "put_in": { "$map": at("kind"), "to": { "put-in": put_in } },
            "holds": null,
        } } }),
    )
}

/// Every code mapped to itself.
fn same(list: &[(&str, &str)]) -> Value {
    list.iter()
        .map(|(code, _)| ((*code).to_owned(), json!(code)))
        .collect::<serde_json::Map<_, _>>()
        .into()
}

fn take_off(nth: usize, line: &ItemLine) -> Value {
    let away: serde_json::Map<String, Value> = Kind::ALL
        .into_iter()
        .map(|kind| {
            (
                KindForm::word(kind).to_owned(),
                json!(StateForm::of(&kind.away())),
            )
        })
        .collect();
    let at: Vec<u16> = (1..=line.count).collect();
    json!({
        "item": new(&format!("item-{nth}")),
        "at": at,
        "after": [],
        "left": { "state": { "$map": format!("kind-{nth}"), "to": away }, "piece": "original" },
        "container": field("container"),
    })
}

fn drain(order: &str, nth: usize, line: &ItemLine) -> Option<Value> {
    let amount = line.amount.as_ref()?;
    Some(
        json!({ "$when": format!("kind-{nth}"), "is": ["fluid"], "then":
        order_fact(order, json!({ "drained": {
            "item": new(&format!("item-{nth}")), "amount": amount, "fate": "kept", "temperature": null } })) }),
    )
}

/// The usual cautions, before the step they concern.
fn cautions(lines: &[ItemLine]) -> Vec<&'static str> {
    let any = |test: &dyn Fn(&ItemLine) -> bool| lines.iter().any(test);
    let table: [(bool, &str); 6] = [
        (
            any(&|line| {
                line.system == System::Cooling && matches!(line.kind, Kind::Hose | Kind::Fluid)
            }),
            "Coolant may be hot and under pressure. Open nothing until it is cool to the hand; see the maker's instructions.",
        ),
        (
            any(&|line| line.system == System::Restraints),
            "Airbags can fire. Battery off and wait as the maker says before unplugging; licensed practice only where the law asks.",
        ),
        (
            any(&|line| line.system == System::HighVoltage),
            "High voltage kills. Only who is qualified for it releases it, by the maker's procedure.",
        ),
        (
            any(&|line| line.system == System::Fuel),
            "Fuel under pressure and vapour: no flame, no spark, let the pressure off as the maker says.",
        ),
        (
            any(&|line| matches!(line.zone, Zone::Below | Zone::WheelWell)),
            "Lift and support as the lift's and the vehicle's makers say. Nothing here says that it is safe to go under it.",
        ),
        (
            any(&|line| line.kind == Kind::Belt || line.system == System::DriveBelt),
            "Moving belts and fans: engine off, key out, and a fan may still start by itself.",
        ),
    ];
    table
        .into_iter()
        .filter(|(there, _)| *there)
        .map(|(_, text)| text)
        .collect()
}

/// What an open item goes to next on its way home.
fn next_home(item: &ItemView, state: StateForm) -> Option<StateForm> {
    match (item.kind, state) {
        (KindForm::Fasteners, StateForm::Out) => Some(StateForm::Loose { passes: 0 }),
        (KindForm::Fasteners, StateForm::Cracked) => Some(StateForm::Tight),
        (KindForm::Fasteners, StateForm::Loose { .. } | StateForm::Stub { .. }) => None,
        (KindForm::Fluid | KindForm::Work, _) => None,
        (kind, _) => kind.read().ok().map(|kind| StateForm::of(&kind.home())),
    }
}

/// One move of a group of pieces, as a device sends it.
pub fn change(item: &ItemView, at: &[u16], state: StateForm, piece: &str) -> Value {
    json!({
        "item": item.item,
        "at": at,
        "after": item.seen,
        "left": { "state": state, "piece": piece },
        "container": null,
    })
}

pub async fn back(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        Ok(Shown::of(&order, "Back together", back_content(&order)))
    })
    .await
}

/// The last things off go on first: up to eight rows, one tap.
fn back_content(order: &OrderView) -> Markup {
    let mut going: Vec<(&ItemView, Vec<u16>, StateForm)> = Vec::new();
    for item in order.items.iter().rev().filter(|item| !item.home) {
        for group in &item.pieces {
            let Some(state) = group.state else { continue };
            if let Some(to) = next_home(item, state)
                && to != state
            {
                going.push((item, group.at.clone(), to));
            }
        }
    }
    let rest = going.len().saturating_sub(MOST);
    going.truncate(MOST);
    let moves: Vec<Value> = going
        .iter()
        .enumerate()
        .map(|(nth, (item, at, to))| {
            let piece = if item.spent { "new" } else { "original" };
            crate::tap::when(&format!("row-{nth}"), change(item, at, *to, piece))
        })
        .collect();
    let command = order_fact(
        &order.order,
        json!({ "moved": { "stage": new("stage"), "moves": moves } }),
    );
    let pieces: usize = going.iter().map(|(_, at, _)| at.len()).sum();
    html! {
        h1 { "Back as shown" }
        @if going.is_empty() {
            p class="gap" { "Nothing left to put on. Tighten, fill, and close the list." }
        } @else {
            p class="soft" { "Last off goes on first. Untick what is not on yet." @if rest > 0 { " Then " (rest) " more." } }
            form {
                @for (nth, (item, at, to)) in going.iter().enumerate() {
                    label class="row" {
                        input type="checkbox" name=(format!("row-{nth}")) value="yes" checked;
                        span class="what" {
                            span class="strong line" { (item.label) @if let Some(size) = &item.size { " " (size) } }
                            span class="soft line" {
                                (goes(*to, item))
                                @if item.spent { ", a new one" }
                                @if let Some(container) = &item.container { " · from " (container) }
                            }
                        }
                        span class="beside number" { (at.len()) }
                    }
                }
                div class="presses low" {
                    (button(Look::Confirm, "On as shown", &count(pieces, "piece", "pieces"), &[command], None))
                }
            }
        }
        (tighten(order))
        (fill(order))
        div class="presses" { (link(Look::Plain, "Still open", &open_words(order), &format!("/o/{}/open", order.number))) }
    }
}

fn goes(to: StateForm, item: &ItemView) -> String {
    match to {
        StateForm::Loose { .. } => "on, not tight yet".to_owned(),
        StateForm::Outside => "out of the vehicle".to_owned(),
        other => item
            .kind
            .read()
            .ok()
            .zip(other.read().ok())
            .map_or_else(String::new, |(kind, state)| {
                shop::say::state(kind, state).to_owned()
            }),
    }
}

/// Torque: one tap a group, never across groups, pass by pass where there are passes.
fn tighten(order: &OrderView) -> Markup {
    let loose: Vec<_> = order
        .items
        .iter()
        .filter(|item| item.kind == KindForm::Fasteners)
        .flat_map(|item| {
            item.pieces
                .iter()
                .filter_map(move |group| match group.state {
                    Some(StateForm::Loose { passes }) => Some((item, group, passes)),
                    _ => None,
                })
        })
        .collect();
    html! {
        @if !loose.is_empty() {
            h2 { "Tighten" }
            @for (item, group, passes) in loose {
                @let total = item.passes.len().max(1);
                @let next = usize::from(passes) + 1;
                @let to = if next >= total { StateForm::Tight } else { StateForm::Loose { passes: passes + 1 } };
                @let torque = item.passes.get(usize::from(passes)).cloned();
                @let whole = group.at.len() == item.positions.len();
                form {
                    div class="spread gap" {
                        span class="strong" { (item.label) @if let Some(size) = &item.size { " " (size) } }
                        span class="soft" {
                            @if whole { "all " (group.at.len()) } @else { (group.at.len()) " of " (item.positions.len()) }
                        }
                    }
                    @if let Some(torque) = &torque { p class="fact" { (torque) } }
                    @else { p class="soft" { "No torque is known here: the maker's, or snug and checked." } }
                    @let label = if total > 1 { format!("Pass {next} of {total} done") } else { "Tight".to_owned() };
                    @let small = if whole { String::new() } else { format!("positions {}", shop::say::positions(&group.at)) };
                    div class="presses" {
                        (button(Look::Plain, &label, &small, &[order_fact(&order.order, json!({ "moved": { "stage": null, "moves": [change(item, &group.at, to, "original")] } }))], None))
                    }
                }
            }
        }
    }
}

/// Fluids close on their level.
fn fill(order: &OrderView) -> Markup {
    let low: Vec<_> = order
        .items
        .iter()
        .filter(|item| item.kind == KindForm::Fluid && !item.home)
        .collect();
    html! {
        @if !low.is_empty() {
            h2 { "Fill" }
            @for item in low {
                form class="narrow" {
                    p class="strong gap" { (item.label) }
                    @for line in order.open_items.iter().filter(|open| open.item == item.item) { p class="soft" { (line.text) } }
                    (input("amount", "Poured in", "with its unit, such as 5.5 L", ""))
                    @let pour = crate::tap::when("amount", order_fact(&order.order, json!({ "poured": { "item": item.item, "amount": field("amount"), "what": null, "temperature": null } })));
                    @let level = order_fact(&order.order, json!({ "moved": { "stage": null, "moves": [change(item, &item.positions, StateForm::AtLevel, "original")] } }));
                    div class="presses two" {
                        (button(Look::Plain, "Filled to its level", "", &[pour.clone(), level], None))
                        (button(Look::Plain, "Poured", "not at level", &[pour], None))
                    }
                }
            }
        }
    }
}

fn open_words(order: &OrderView) -> String {
    let inside = order.open_items.iter().filter(|open| open.inside).count();
    format!(
        "{} not home · {inside} inside",
        order.open_items.len() - inside
    )
}

pub async fn open(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let (inside, outside): (Vec<_>, Vec<_>) = order.open_items.iter().partition(|open| open.inside);
        let row = |open: &shop::view::OpenItemView| html! {
            a class="row" href=(format!("/o/{}/item/{}", order.number, open.item)) {
                span class={ "mark " (if open.inside { "inside" } else { "" }) } {}
                span class="what" {
                    span class="strong line" { (open.text) }
                    span class="soft line" { (open.by) ", " (open.since) }
                }
            }
        };
        Ok(Shown::of(&order, "Still open", html! {
            h1 { "Still open" }
            div class="three" {
                @for (number, word) in [(outside.len(), "not home"), (inside.len(), "inside"), (order.debts.len(), "owed")] {
                    div { span class="fact" { (number) } span class="beside" { (word) } }
                }
            }
            div class="columns" {
                div {
                    @for open in &outside { (row(open)) }
                    @if !inside.is_empty() { h2 { "Inside the vehicle" } @for open in &inside { (row(open)) } }
                    @if order.open_items.is_empty() { p class="gap yes" { "Everything is home." } }
                }
                div {
                    @if !order.debts.is_empty() {
                        h2 { "Owed" }
                        @for debt in &order.debts { a class="row" href=(format!("/o/{}/due", order.number)) { span class="what" { (debt.text) } } }
                    }
                }
            }
            div class="presses two low" {
                (link(Look::Confirm, "Put back", "", &format!("/o/{}/back", order.number)))
                (link(Look::Plain, "The tray", "", &format!("/o/{}/tray", order.number)))
            }
        }))
    })
    .await
}

pub async fn tray(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let picture = drawing::svg(&drawing::tray(&tray_of(&order), 358.0));
        Ok(Shown::of(&order, "The tray", html! {
            h1 { "On the bench" }
            (PreEscaped(picture))
            div class="presses low" { (link(Look::Confirm, "Put back", "", &format!("/o/{}/back", order.number))) }
        }))
    })
    .await
}

/// What lies on the bench, by the container it was put in.
fn tray_of(order: &OrderView) -> drawing::Tray {
    let mut places: Vec<drawing::TrayPlace> = Vec::new();
    for item in order
        .items
        .iter()
        .filter(|item| !item.home && item.kind != KindForm::PutIn)
    {
        let away: usize = item
            .pieces
            .iter()
            .filter(|group| {
                matches!(
                    group.state,
                    Some(StateForm::Off | StateForm::Out | StateForm::Low)
                )
            })
            .map(|group| group.at.len())
            .sum();
        if away == 0 {
            continue;
        }
        let container = item.container.clone().unwrap_or_else(|| "bench".to_owned());
        let mark = match item.kind {
            KindForm::Fluid => drawing::TrayMark::Fluid {
                amount: order
                    .open_items
                    .iter()
                    .find(|open| open.item == item.item)
                    .and_then(|open| open.text.split_once(": "))
                    .map(|(_, amount)| amount.split(',').next().unwrap_or("").to_owned())
                    .unwrap_or_default(),
            },
            KindForm::Fasteners | KindForm::Clips => drawing::TrayMark::Fasteners,
            _ => drawing::TrayMark::Part,
        };
        let thing = drawing::TrayThing {
            label: item.label.clone(),
            detail: item.size.clone().unwrap_or_default(),
            count: u32::try_from(away).unwrap_or(u32::MAX),
            mark,
        };
        match places.iter_mut().find(|place| place.container == container) {
            Some(place) => place.things.push(thing),
            None => places.push(drawing::TrayPlace {
                stage: String::new(),
                container,
                things: vec![thing],
            }),
        }
    }
    drawing::Tray { places }
}

fn mark_of(kind: Kind) -> &'static str {
    match kind {
        Kind::PutIn => "inside",
        Kind::Fasteners | Kind::Clips => "round",
        _ => "",
    }
}

/// The mark of where an item stands.
pub fn mark(item: &ItemView) -> Markup {
    let round = if matches!(item.kind, KindForm::Fasteners | KindForm::Clips) {
        "round"
    } else {
        ""
    };
    let loose = item
        .pieces
        .iter()
        .any(|group| matches!(group.state, Some(StateForm::Loose { .. })));
    let state = if item.home {
        "home"
    } else if item.kind == KindForm::PutIn {
        "inside"
    } else if loose {
        "half"
    } else {
        ""
    };
    html! { span class={ "mark " (round) " " (state) } {} }
}

/// Where an item's pieces stand, in a few words.
pub fn where_it_stands(item: &ItemView) -> String {
    let several = item.positions.len() > 1;
    item.pieces
        .iter()
        .map(|group| {
            if several {
                format!("{} {}", group.at.len(), group.text)
            } else {
                group.text.clone()
            }
        })
        .collect::<Vec<_>>()
        .join(", ")
}
