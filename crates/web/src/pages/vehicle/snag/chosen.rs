//! A way that was taken: its steps to do, and for ever after what was decided and why. All
//! of it comes from the event; nothing is worked out again.

use super::put_right::put_right;
use super::{Sheet, about, take};
use crate::pages::bench::answer;
use crate::pages::vehicle::pieces::change;
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, link, order_fact, when, words};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Amount;
use shop::mending::{StepTold, Told};
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::{KindForm, ResolvedForm};
use shop::view::ChoiceView;

pub(super) fn chosen(sheet: &Sheet<'_>, choice: &ChoiceView) -> Markup {
    let Some(told) = &choice.told else {
        return html! {
            h1 { (shop::say::capital(&sheet.found.text)) }
            p class="gap" { (say::kept_by_newer_program(&choice.taken)) }
            pre { (choice.outputs) }
        };
    };
    let open = sheet.found.resolved.is_none();
    html! {
        h1 { (shop::say::capital(&sheet.found.text)) }
        @if open { (answer::cautions(&told.cautions)) }
        (answer::way(&told.way))
        p class="soft" { (say::taken_by()) (choice.taken) }
        @if let Some((resolved, by)) = &sheet.found.resolved {
            p class="yes gap" { (say::was_put_right()) (how(*resolved)) }
            p class="soft" { (by) }
            (now(told))
        }
        div class="columns" {
            div {
                h2 { (say::what_is_done()) }
                (steps(sheet, choice, told, open))
                @if open { (money(sheet)) }
            }
            div {
                (answer::joints(&told.found, &told.way.joint, true))
                (answer::behind(told))
                h2 { (say::ways_not_taken()) }
                @for other in &told.others {
                    div class="row" {
                        span class="what" { span class="strong line" { (other.rank) ". " (shop::say::capital(&other.name)) } span class="soft line" { (other.reason) } }
                        @if other.holds { span class="yes" { (say::holds()) } } @else { span class="no" { (say::no()) } }
                    }
                }
                (as_described(told))
                @if open { (otherwise(sheet, choice, told)) }
            }
        }
        @if open {
            form {
                div class="presses low" { (finish(sheet, choice, told)) }
            }
        } @else if sheet.order.aim.is_some() {
            div class="presses low" { (link(Look::Confirm, say::next_stage(), say::bolt_goes_in_with_others(), &format!("/o/{}/stage", sheet.order.number))) }
        } @else {
            div class="presses low" { (link(Look::Confirm, say::put_back(), say::bolt_goes_in_with_others(), &format!("/o/{}/back", sheet.order.number))) }
        }
    }
}

/// How a snag ended, in words.
pub(super) fn how(resolved: ResolvedForm) -> &'static str {
    resolved.read().map_or("", shop::say::resolved)
}

/// What holds from now on.
fn now(told: &Told) -> Markup {
    html! {
        @if let Some(size) = &told.way.size_now {
            p class="gap" { (say::from_now_on()) span class="strong" { (size) @if let Some(torque) = &told.way.torque_written { ", " (torque) } } }
        }
    }
}

fn steps(sheet: &Sheet<'_>, choice: &ChoiceView, told: &Told, open: bool) -> Markup {
    html! {
        form {
            @for (nth, step) in told.way.steps.iter().enumerate() {
                @let done = choice.done.get(nth).copied().unwrap_or(false);
                @let mark = if done { "mark home" } else { "mark" };
                @if open && !done {
                    @if let Some(caution) = answer::new_caution(&told.way.steps, nth) { p class="no gap" { (shop::say::capital(caution)) } }
                    button class="row" type="submit" data-commands=(Value::from(step_done(sheet, choice, nth, step, false))) {
                        span class=(mark) {} span class="what" { (shop::say::capital(&step.what)) }
                    }
                } @else {
                    div class="row" { span class=(mark) {} span class="what" { (shop::say::capital(&step.what)) } @if done { span class="soft" { (say::done()) } } }
                }
            }
        }
        @if let Some(torque) = &told.way.torque {
            p class="soft gap" { (say::then_with_the_others(&told.way.bolt, &torque.0)) }
        }
    }
}

/// The facts of one step done. In one go with the others, what it would put in is out
/// again at the end, so only what is inside now has to move.
fn step_done(
    sheet: &Sheet<'_>,
    choice: &ChoiceView,
    nth: usize,
    step: &StepTold,
    in_one_go: bool,
) -> Vec<Value> {
    let fact = |content: Value| order_fact(&sheet.order.order, content);
    let own = format!("{}-{nth}", choice.id);
    let seen: Vec<Value> = sheet
        .order
        .debts
        .iter()
        .find(|debt| debt.own.as_deref() == Some(&own))
        .map(|debt| {
            let name =
                |seen: &shop::view::MoveName| json!({ "command": seen.command, "nth": seen.nth });
            debt.seen.iter().map(name).collect()
        })
        .unwrap_or_default();
    let mut out = vec![fact(json!({ "work-done": {
        "work": { "work": "other", "item": sheet.found.item, "own": own }, "after": seen, "words": null } }))];
    let mut moves = Vec::new();
    let mut shift = |codes: &[String], to: StateForm| {
        for code in codes {
            let id = format!("{}-{code}", choice.id);
            let Some(item) = sheet.order.items.iter().find(|item| item.item == id) else {
                continue;
            };
            if item.home == (to == StateForm::Inside) {
                moves.push(change(item, &[1], to, "original"));
            }
        }
    };
    if !in_one_go {
        shift(&step.puts_in, StateForm::Inside);
    }
    shift(&step.takes_out, StateForm::Outside);
    if !moves.is_empty() {
        out.push(fact(json!({ "moved": { "stage": null, "moves": moves } })));
    }
    if let Some(part) = step.fits {
        out.push(fact(json!({ "part-stepped": {
            "part": format!("{}-part-{part}", choice.id), "quantity": "1", "step": "fitted", "due": null, "words": null } })));
    }
    out
}

/// Everything that is left of the steps, then the end of the snag, in one tap.
fn finish(sheet: &Sheet<'_>, choice: &ChoiceView, told: &Told) -> Markup {
    let left: Vec<(usize, &StepTold)> = told
        .way
        .steps
        .iter()
        .enumerate()
        .filter(|(nth, _)| !choice.done.get(*nth).copied().unwrap_or(false))
        .collect();
    let mut commands: Vec<Value> = left
        .iter()
        .flat_map(|(nth, step)| step_done(sheet, choice, *nth, step, true))
        .collect();
    commands.extend(ended(sheet, choice, told));
    let next = match sheet.order.aim {
        Some(_) => format!("/o/{}/stage", sheet.order.number),
        None => sheet.path(),
    };
    let (label, small) = match left.len() {
        0 => (say::it_is_sound(), say::bolt_ready_to_go_in().to_owned()),
        count => (say::all_done_as_listed(), say::steps(count)),
    };
    button(Look::Confirm, label, &small, &commands, Some(&next))
}

/// A way that has no code of its own is told in words.
fn named(told: &Told) -> Value {
    match told.way.code.as_str() {
        "other" => words(&told.way.name),
        _ => Value::Null,
    }
}

/// The snag resolved on the strength of the choice, and what differs from now on.
fn ended(sheet: &Sheet<'_>, choice: &ChoiceView, told: &Told) -> Vec<Value> {
    let fact = |content: Value| order_fact(&sheet.order.order, content);
    let found = sheet.found;
    let moves: Vec<Value> = sheet
        .item
        .filter(|item| item.kind == KindForm::Fasteners)
        .map(|item| change(item, &found.at, StateForm::Out, "original"))
        .into_iter()
        .collect();
    let mut out = vec![fact(json!({ "snag-resolved": {
        "snag": found.snag, "how": told.way.code, "words": named(told), "calculation": choice.id, "moves": moves } }))];
    if let (Some(what), Some(size)) = (&told.way.difference, &told.way.size_now) {
        out.push(fact(json!({ "difference-noted": {
            "id": format!("{}-now", choice.id), "item": found.item, "at": found.at, "what": what,
            "size": size, "torque": told.way.torque_written, "words": null } })));
    }
    out
}

/// What the price says now.
fn money(sheet: &Sheet<'_>) -> Markup {
    let total = sheet.order.totals.first();
    let over = total
        .and_then(|total| total.room.as_ref())
        .and_then(Amount::below_nought);
    html! {
        @if let Some(total) = total {
            a class="row" href=(format!("/o/{}/{}", sheet.order.number, if over.is_some() { "ask?then=stage" } else { "price" })) {
                span class="what" {
                    span class="strong line" { (say::price_now(&total.net)) }
                    @if let Some(over) = &over { span class="no line" { (say::over_what_was_agreed(over)) } }
                }
            }
        }
        a class="row" href=(format!("/o/{}/parts", sheet.order.number)) { span class="what strong" { (say::parts()) } }
    }
}

/// The hole as it was described when the way was taken.
fn as_described(told: &Told) -> Markup {
    html! {
        details id="described" {
            summary class="row" { span class="strong" { (say::hole_as_described()) } }
            dl class="figures" {
                @for (name, value) in told.fields.iter().filter(|(name, _)| !matches!(name.as_str(), "asked" | "way" | "depth" | "hole")) {
                    div { dt { (name.replace('-', " ")) } dd { (value) } }
                }
            }
        }
    }
}

/// Another way, or none of them.
fn otherwise(sheet: &Sheet<'_>, choice: &ChoiceView, told: &Told) -> Markup {
    let mut undo: Vec<Value> = choice
        .commands
        .iter()
        .map(|command| {
            order_fact(
                &sheet.order.order,
                json!({ "undo": { "command": command, "part": null } }),
            )
        })
        .collect();
    let entries = sheet.order.price.iter().flat_map(|price| &price.open);
    let entries: Vec<_> = entries.collect();
    let priced = take::on_price(sheet, told);
    if !priced.is_empty() {
        undo.push(when("off-price", take::price_without(sheet, &priced)));
    }
    html! {
        details id="otherwise" {
            summary class="row" { span class="strong" { (say::not_this_way_after_all()) } }
            p class="gap" { (say::takes_back_the_way()) }
            form {
                @for nth in &priced {
                    @let entry = &entries[*nth];
                    p class="spread gap" { span { (entry.label) } span class="number" { (entry.amount) } }
                }
                @if !priced.is_empty() {
                    label class="row" {
                        input type="checkbox" name="off-price" value="yes" checked;
                        span class="what" { (say::off_the_price_too()) }
                    }
                }
                div class="presses" { (button(Look::Plain, say::take_the_way_back(), "", &undo, Some(&sheet.path()))) }
            }
            (put_right(sheet.order, sheet.found))
        }
        (about(sheet))
    }
}
