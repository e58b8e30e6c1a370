//! A stage of things coming off: typed as people say it, read, confirmed with one tap.

use super::choices::{self, Choices, KINDS, SYSTEMS, ZONES, same};
use super::immobile::parts_first;
use super::pieces::{mark, where_it_stands};
use super::put_ins::{With, one_each, put_ins};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, chips, field, input, link, new, order_fact, required, text, words};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::{KindForm, PutInForm, SystemForm, ZoneForm};
use shop::repair::{Kind, State as Stands, SureIs, System};
use shop::trade::Vocabulary;
use shop::view::{ItemView, OrderView};
use shop::{ItemLine, item_lines};
use std::collections::BTreeMap;

/// What was typed.
#[derive(Debug, Deserialize)]
pub struct Typed {
    lines: Option<String>,
    /// What was typed, to be changed before it is read again.
    edit: Option<String>,
    /// Set where things of a name that is off already are others.
    others: Option<String>,
    /// What others call a thing whose word is not known, by its place in the list: `as-0`.
    #[serde(flatten)]
    other_words: BTreeMap<String, String>,
}

pub async fn off(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(typed): Query<Typed>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let written = typed.lines.clone().unwrap_or_default();
        let table = visit.snap.vocabulary();
        let lines: Vec<Line> = written
            .lines()
            .flat_map(|line| line.split(';'))
            .filter(|line| !line.trim().is_empty())
            .flat_map(|line| item_lines(line, &table))
            .flat_map(one_each)
            .enumerate()
            .map(|(nth, line)| {
                let word = typed.other_words.get(&format!("as-{nth}"));
                called(line, word.map(String::as_str), &table)
            })
            .collect();
        Ok(Shown::of(&order, say::this_stage(), html! {
            h1 { (say::what_comes_off()) }
            @if written.trim().is_empty() {
                form method="get" action=(format!("/o/{}/off", order.number)) class="narrow" {
                    label class="field" {
                        span { (say::one_thing_a_line()) }
                        span class="soft" { (say::such_as_things_off()) }
                        textarea name="lines" required { (typed.edit.as_deref().unwrap_or_default()) }
                    }
                    div class="presses" { button class="press confirm" type="submit" { (say::read_it()) } }
                }
                (again(&order))
            } @else { (read_lines(&order, &written, lines, typed.others.is_some())) }
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
            h2 { (say::known_and_in_place()) }
            @for item in home {
                a class="row" href=(format!("/o/{}/item/{}", order.number, item.item)) {
                    (mark(item)) span class="what" { (item.label) } span class="soft" { (where_it_stands(item)) }
                }
            }
        }
    }
}

/// What was typed, as read: one tap confirms, exceptions are opened.
fn read_lines(order: &OrderView, written: &str, read: Vec<Line>, others: bool) -> Markup {
    let again = |line: &Line| {
        if others {
            None
        } else {
            off_already(order, &line.line)
        }
    };
    let (same, read): (Vec<Line>, Vec<Line>) =
        read.into_iter().partition(|line| again(line).is_some());
    let same: Vec<&ItemView> = same.iter().filter_map(again).collect();
    if read.is_empty() {
        return html! { (the_same_ones(order, written, &same)) };
    }
    let read = &read[..];
    let lines: Vec<ItemLine> = read.iter().map(|line| line.line.clone()).collect();
    let lines = &lines[..];
    let known: Vec<Option<&ItemView>> = lines.iter().map(|line| known(order, line)).collect();
    let with = put_ins(lines);
    let pieces: usize = lines
        .iter()
        .zip(&known)
        .map(|(line, known)| known.map_or(usize::from(line.count), |item| in_place(item).len()))
        .sum();
    let words = read.iter().enumerate();
    let words = words
        .filter_map(|(nth, line)| Some(word_added(nth, line.means.as_deref()?, &line.line.label)));
    let mut commands: Vec<Value> = words.collect();
    let declared = lines
        .iter()
        .enumerate()
        .filter(|(nth, _)| known[*nth].is_none())
        .map(|(nth, line)| declare(&order.order, nth, line))
        .chain(with.iter().map(|with| with.declared(&order.order)));
    commands.extend(declared);
    let moves: Vec<Value> = lines
        .iter()
        .enumerate()
        .map(|(nth, line)| take_off(nth, line, known[nth]))
        .chain(with.iter().map(With::moved))
        .collect();
    commands.push(order_fact(
        &order.order,
        json!({ "moved": { "stage": new("stage"), "moves": moves } }),
    ));
    commands.extend(
        lines
            .iter()
            .enumerate()
            .filter_map(|(nth, line)| drain(&order.order, nth, line, known[nth])),
    );
    let told = lines.iter().zip(&known);
    commands.extend(told.filter_map(|(line, known)| torque_told(&order.order, line, *known)));
    html! {
        form id="as" method="get" action=(format!("/o/{}/off", order.number)) {
            input type="hidden" name="lines" value=(written);
            @for (nth, line) in read.iter().enumerate() {
                @if let Some(word) = &line.word { input type="hidden" name=(format!("as-{nth}")) value=(word); }
            }
        }
        // The form begins at the top, so that its press stays in view.
        form {
            @if !same.is_empty() { (the_same_ones(order, written, &same)) }
            @for caution in cautions(lines) { p class="caution" { (caution) } }
            (parts_first(order, lines))
            @if lines.iter().any(|line| line.system == System::Wheels) { (super::walk::key_before_wheels(order)) }
            @for (nth, line) in lines.iter().enumerate() {
                @match known[nth] {
                    Some(item) => (known_row(nth, line, item)),
                    None => (line_row(order, nth, line, &read[nth])),
                }
                @for with in with.iter().filter(|with| with.row == nth) { (with.shown()) }
            }
            @if lines.iter().any(|line| !line.passes.is_empty()) {
                (required("torque-source", say::who_gives_the_torque(), say::such_as_the_manual(), ""))
            }
            (input("container", say::stored_in(), say::such_as_tray_a(), say::tray_a()))
            div class="presses two low" {
                (button(Look::Confirm, say::out_as_shown(), &say::pieces(pieces), &commands, Some(&format!("/o/{}", order.number))))
                (link(Look::Plain, say::type_again(), "", &format!("/o/{}/off?edit={}", order.number, escaped(written))))
            }
        }
    }
}

/// A thing of that name that is off already, whole.
fn off_already<'a>(order: &'a OrderView, line: &ItemLine) -> Option<&'a ItemView> {
    let label = line.label.to_lowercase();
    order.items.iter().find(|item| {
        !item.home
            && item.kind == KindForm::of(&line.kind)
            && item.label.to_lowercase() == label
            && in_place(item).is_empty()
    })
}

/// The same list pressed twice, or typed by two people, is one list.
fn the_same_ones(order: &OrderView, written: &str, same: &[&ItemView]) -> Markup {
    let others = format!(
        "/o/{}/off?lines={}&others=yes",
        order.number,
        escaped(written)
    );
    html! {
        h2 { (say::off_already()) }
        @for item in same {
            @let open = order.open_items.iter().find(|open| open.item == item.item);
            a class="row" href=(format!("/o/{}/item/{}", order.number, item.item)) {
                (mark(item))
                span class="what" {
                    span class="strong line" { (item.label) @if let Some(size) = &item.size { " " (size) } }
                    @if let Some(open) = open { span class="soft line" { (where_it_stands(item)) ", " (open.by) ", " (open.since) } }
                }
            }
        }
        p class="soft gap" { (say::if_the_same()) }
        div class="presses even" {
            (link(Look::Plain, say::they_are_others(), say::note_them_too(), &others))
            (link(Look::Plain, say::the_same_ones(), say::to_the_order(), &format!("/o/{}", order.number)))
        }
    }
}

fn escaped(text: &str) -> String {
    form_urlencoded::byte_serialize(text.as_bytes()).collect()
}

/// A line as read, and where its own word was not known, by what others call it.
struct Line {
    line: ItemLine,
    /// What others call it, as typed.
    word: Option<String>,
    /// The sort that its own word means from now on.
    means: Option<String>,
}

/// Reads a thing whose word is not known by another word for it. What was typed stays its name.
fn called(line: ItemLine, word: Option<&str>, table: &Vocabulary) -> Line {
    let word = word.map(str::trim).filter(|word| !word.is_empty());
    let other = word.and_then(|word| item_lines(word, table).into_iter().next());
    let known = other.filter(|other| other.sort.is_some() && line.sort.is_none());
    let word = word.map(str::to_owned);
    match known {
        Some(known) => Line {
            means: known.sort.clone(),
            word,
            line: ItemLine {
                kind: known.kind,
                system: known.system,
                zone: known.zone,
                put_in: known.put_in,
                sure: known.sure,
                mend: None,
                ..line
            },
        },
        None => Line {
            line,
            word,
            means: None,
        },
    }
}

/// What others call a thing: asked where its word is not known, so that the shop's own word is
/// known from then on.
fn other_word(nth: usize, read: &Line) -> Markup {
    let name = format!("as-{nth}");
    html! {
        @match (&read.means, &read.word) {
            (Some(_), Some(word)) => {
                label class="row" {
                    input type="checkbox" name=(format!("keep-{nth}")) value="yes" checked;
                    span class="what" { (say::means_from_now_on(&read.line.label, word)) }
                }
            }
            _ if read.line.sure == SureIs::Unknown && read.line.sort.is_none() => {
                @if let Some(word) = &read.word { p class="wait gap" { (say::not_known_either(word)) } }
                label class="field" {
                    span { (say::what_do_others_call_it()) }
                    span class="soft" { (say::such_as_brake_pads()) }
                    input type="text" form="as" name=(name) autocomplete="off";
                }
                div class="presses" { button class="press" type="submit" form="as" { (say::read_it_so()) } }
            }
            _ => {}
        }
    }
}

/// A word of the shop's own, kept with the tap that takes the thing off.
fn word_added(nth: usize, sort: &str, label: &str) -> Value {
    let fact = json!({ "word-added": { "name": words(label), "sort": sort } });
    json!({ "$when": format!("keep-{nth}"), "then": { "stream": "shop", "shop_fact": fact } })
}

/// The thing of that name that the order knows, in its place or found so: what was missing at
/// the walk-round is then not ours.
fn known<'a>(order: &'a OrderView, line: &ItemLine) -> Option<&'a ItemView> {
    let label = line.label.to_lowercase();
    order.items.iter().find(|item| {
        item.home && item.kind == KindForm::of(&line.kind) && item.label.to_lowercase() == label
    })
}

/// The positions that are in their place, and so can come off.
fn in_place(item: &ItemView) -> Vec<u16> {
    let groups = item.pieces.iter().filter(|group| {
        let state = group.state.and_then(|state| state.read().ok());
        state.is_some_and(|state| state.in_place() || state == Stands::AtLevel)
    });
    groups.flat_map(|group| group.at.iter().copied()).collect()
}

/// A thing that the order knows already.
fn known_row(nth: usize, line: &ItemLine, item: &ItemView) -> Markup {
    let there = in_place(item).len();
    html! {
        input type="hidden" name=(format!("kind-{nth}")) value=(KindForm::word(line.kind));
        div class="row" {
            span class={ "mark " (mark_of(line.kind)) } {}
            span class="what" {
                span class="strong line" { (item.label) @if let Some(size) = &item.size { " " (size) } }
                span class="soft line" {
                    (say::known_on_this_order())
                    @if there < item.positions.len() { (say::there_of(there, item.positions.len())) }
                }
            }
            span class="beside number" { (there) }
        }
    }
}

/// One thing as it was read, with everything about it a tap away.
fn line_row(order: &OrderView, nth: usize, line: &ItemLine, read: &Line) -> Markup {
    let kind = KindForm::word(line.kind);
    let system = SystemForm::word(line.system);
    let zone = ZoneForm::word(line.zone);
    let unknown = line.system == System::Unknown;
    let spoken = |list: &Choices, code: &str| {
        let found = list.iter().find(|(known, _)| *known == code);
        found.map_or_else(say::not_told, |(_, word)| word())
    };
    html! {
        details id=(format!("line-{nth}")) open[unknown] {
            summary class="row" {
                span class={ "mark " (mark_of(line.kind)) } {}
                span class="what" {
                    span class="strong line" { (line.label) @if let Some(size) = &line.size { " " (size) } }
                    span class="soft line" {
                        @match line.sure { SureIs::Sure => {}, SureIs::Likely => { (say::likely()) }, SureIs::Unknown => { (say::not_known()) } }
                        (spoken(KINDS, kind)) " · " (spoken(SYSTEMS, system)) " · " (spoken(ZONES, zone))
                        @if let Some(amount) = &line.amount { " · " (amount) }
                        @if !line.passes.is_empty() { " · " (line.passes.join(say::then_between())) }
                    }
                }
                span class="beside number" { (line.count) }
            }
            @if let Some(mend) = &line.mend { p class="wait gap" { (shop::say::capital(mend)) } }
            (other_word(nth, read))
            (chips(&format!("kind-{nth}"), say::what_it_is(), &choices::spoken(KINDS), kind))
            (chips(&format!("system-{nth}"), say::belongs_to(), &choices::spoken(SYSTEMS), system))
            (chips(&format!("zone-{nth}"), say::worked_on(), &choices::spoken(ZONES), zone))
            (chips(&format!("spent-{nth}"), say::goes_back_question(), &[("", say::the_same_one()), ("spent", say::a_new_one())], if line.kind == Kind::Seal { "spent" } else { "" }))
            @if line.kind == Kind::Fasteners { (wont_come_out(order, nth, line)) }
        }
    }
}

/// A screw that was typed and does not come out, rounded or stuck: the order is told what it is,
/// and its snag is noted before anything is said to be off.
fn wont_come_out(order: &OrderView, nth: usize, line: &ItemLine) -> Markup {
    let next = format!("/o/{}/snag?item={{item-{nth}}}", order.number);
    let declared = declare(&order.order, nth, line);
    html! {
        div class="presses" { (button(Look::Plain, say::it_wont_come_out(), say::rounded_stuck_snapped(), &[declared], Some(&next))) }
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
            "pattern": pattern(line, &json!([])),
            "spent": { "$flag": at("spent") },
            "may_miss": null,
            "put_in": { "$map": at("kind"), "to": { "put-in": put_in } },
            "holds": null,
        } } }),
    )
}

/// A torque that was typed, with who gives it.
fn pattern(line: &ItemLine, sequence: &Value) -> Value {
    if line.passes.is_empty() {
        return Value::Null;
    }
    json!({ "passes": line.passes, "sequence": sequence, "source": text("torque-source") })
}

/// The same for a group that the order knows already.
fn torque_told(order: &str, line: &ItemLine, known: Option<&ItemView>) -> Option<Value> {
    let item = known.filter(|_| !line.passes.is_empty())?;
    let pattern = pattern(line, &json!(item.sequence));
    Some(order_fact(
        order,
        json!({ "torque-told": { "item": item.item, "pattern": pattern, "after": item.told_by } }),
    ))
}

fn take_off(nth: usize, line: &ItemLine, known: Option<&ItemView>) -> Value {
    let away: serde_json::Map<String, Value> = Kind::ALL
        .into_iter()
        .map(|kind| {
            (
                KindForm::word(kind).to_owned(),
                json!(StateForm::of(&kind.away())),
            )
        })
        .collect();
    let at: Vec<u16> = known.map_or_else(|| (1..=line.count).collect(), in_place);
    json!({
        "item": name(nth, known),
        "at": at,
        "after": known.map(|item| item.seen.clone()).unwrap_or_default(),
        "left": { "state": { "$map": format!("kind-{nth}"), "to": away }, "piece": "original" },
        "container": field("container"),
    })
}

/// What a row's item is called in the record.
fn name(nth: usize, known: Option<&ItemView>) -> Value {
    known.map_or_else(|| new(&format!("item-{nth}")), |item| json!(item.item))
}

fn drain(order: &str, nth: usize, line: &ItemLine, known: Option<&ItemView>) -> Option<Value> {
    let amount = line.amount.as_ref()?;
    Some(
        json!({ "$when": format!("kind-{nth}"), "is": ["fluid"], "then":
        order_fact(order, json!({ "drained": {
            "item": name(nth, known), "amount": amount, "fate": "kept", "temperature": null } })) }),
    )
}

/// The usual cautions, before the step they concern.
pub(super) fn cautions(lines: &[ItemLine]) -> Vec<&'static str> {
    let things = lines.iter().map(|line| (line.kind, line.system, line.zone));
    shop::cautions(&things.collect::<Vec<_>>())
}

fn mark_of(kind: Kind) -> &'static str {
    match kind {
        Kind::PutIn => "inside",
        Kind::Fasteners | Kind::Clips => "round",
        _ => "",
    }
}
