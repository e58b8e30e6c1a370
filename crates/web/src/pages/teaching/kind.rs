//! One kind of vehicle: the steps that finished work has taught and how sure they are, one
//! question at a time, names that may mean one thing, what was told differently.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, Visit, show};
use crate::phrases::teaching as say;
use crate::tap::{Look, button, link, words};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::Trouble;
use shop::repair::{CommandId, MapId};
use shop::roles::{Act, STAFF, check};
use shop::teaching::{
    AlikeKind, AnsweredShown, Asked, Differ, SameAsked, StepTaught, Taught, VehicleKind, alike,
    taught, vehicle_kind,
};

/// What the address asks for.
#[derive(Debug, Deserialize)]
pub struct For {
    /// The item to get at; all of it without one.
    #[serde(rename = "for")]
    item: Option<String>,
}

pub async fn kind(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(code): Path<String>,
    Query(asked): Query<For>,
) -> Response {
    show(state, headers, move |visit| {
        let kind = vehicle_kind(visit.snap, &code)?;
        let found = taught(visit.snap, &kind, asked.item.as_deref(), &words)?;
        let answers = check(visit.snap.caller(), Act::Beside("map")).is_ok();
        let renews = visit.snap.caller().has_any(STAFF);
        let here = Here {
            alike: alike(visit.snap, &kind)?,
            also: also_called(visit, &kind)?,
            kind: &kind,
            answers,
            renews,
        };
        let mut page =
            Shown::new(say::taught_of(&kind.vehicle), content(&here, &found)).of_part(Part::Maps);
        page.leads_to(say::what_our_work_has_taught(), "/kinds");
        Ok(page)
    })
    .await
}

struct Here<'a> {
    kind: &'a VehicleKind,
    /// The other kinds.
    alike: Vec<AlikeKind>,
    /// Its other names, each with what takes it off again.
    also: Vec<(String, Value)>,
    /// Whether who looks may answer.
    answers: bool,
    /// Whether they may keep a map.
    renews: bool,
}

impl Here<'_> {
    fn command(&self, fact: &Value) -> Value {
        json!({ "stream": format!("map:{}", self.kind.code), "map_fact": fact })
    }
}

fn content(here: &Here<'_>, found: &Taught) -> Markup {
    html! {
        h1 { (here.kind.vehicle) }
        (sure(found))
        div class="columns" {
            div {
                @if here.answers { (question(here, found)) }
                (steps(found))
            }
            div {
                (maps(here, found))
                @if here.answers { (names(here, &found.names)) (same_kind(here)) }
                (differ(here, &found.differ))
                (aims(found))
                (lists(found))
                @if here.answers { (answered(here, &found.answered)) }
                (orders(here.kind.code.as_str(), found))
            }
        }
    }
}

/// On how much it rests.
fn sure(found: &Taught) -> Markup {
    html! {
        @if found.orders.is_empty() {
            p class="gap" { (say::no_finished_order()) }
        } @else {
            div class="headline" {
                span class="fact" { (found.orders.len()) }
                span class="what" {
                    span class="beside line" { @if found.orders.len() == 1 { (say::finished_order()) } @else { (say::finished_orders()) } }
                    span class="soft line" { (say::witnesses(found.witnesses)) }
                }
            }
            @if let Some(caution) = &found.caution { p class="wait gap" { (shop::say::capital(caution)) "." } }
            @else {
                p class="gap" {
                    (say::goes_through()) span class="strong" { (found.holds) }
                    @if found.guesses > 0 { (say::steps_rest_on_a_guess(found.guesses)) }
                    "."
                }
            }
        }
    }
}

/// One question, in a row of three answers.
fn question(here: &Here<'_>, found: &Taught) -> Markup {
    html! {
        @if let Some(waits) = &found.waits {
            h2 { (say::a_question_later()) }
            p class="gap" { (say::nobody_is_asked(waits)) }
        }
        @if let Some(question) = &found.question { (one_question(here, question, found.more)) }
    }
}

fn one_question(here: &Here<'_>, question: &Asked, more: usize) -> Markup {
    let [yes, no, unsaid] = &question.facts;
    html! {
        h2 class="spread" { span { (say::a_question()) } @if more > 0 { span class="soft" { (say::more_after_it(more)) } } }
        p class="large gap" { (question.words) }
        p class="soft" { (shop::say::capital(&question.why)) }
        form {
            div class="presses thirds" {
                (button(Look::Plain, say::yes(), "", &[here.command(yes)], None))
                (button(Look::Plain, say::no(), "", &[here.command(no)], None))
                (button(Look::Plain, say::cant_say(), "", &[here.command(unsaid)], None))
            }
        }
    }
}

fn steps(found: &Taught) -> Markup {
    html! {
        @if !found.steps.is_empty() {
            h2 class="spread" {
                span { @match &found.target { Some(item) => { (say::way_in_to(item)) }, None => { (say::the_way_in()) } } }
                span class="soft" { (say::steps(found.steps.len())) }
            }
            @for (nth, step) in found.steps.iter().enumerate() { (one_step(nth, step)) }
        }
    }
}

fn one_step(nth: usize, step: &StepTaught) -> Markup {
    let guess = step.rests.iter().any(|rest| rest.guess);
    html! {
        details id=(format!("step-{}", nth + 1)) {
            summary class="row" {
                span class="beside nth" { (nth + 1) }
                span class="what" {
                    span class="line" { span class="strong" { (step.item) } " " (step.done) }
                    @if step.in_one_go { span class="soft line" { (say::in_one_go()) } }
                    @if guess { span class="wait line" { (say::its_place_is_a_guess()) } }
                    @else if step.rests.is_empty() { span class="soft line" { (say::nothing_before_it()) } }
                    @else { span class="soft line" { (say::after(befores(step))) } }
                }
                span class="number soft" { @if let (Some(out), _) = &step.minutes { (say::minutes(out)) } }
            }
            div class="why" {
                @for rest in &step.rests {
                    p { @if rest.guess { span class="wait" { (say::a_guess()) } } (say::after(&rest.before)) span class="soft" { (say::known_how(&rest.how)) } }
                }
                @if let (out, Some(back)) = &step.minutes {
                    p { span class="soft" { (say::here_it_takes()) } @if let Some(out) = out { (say::min_off(out)) } (say::min_back(back)) }
                }
                @for fact in &step.facts {
                    p {
                        span class="soft" { (say::about(shop::say::capital(&fact.about))) }
                        @for (at, (value, by)) in fact.values.iter().enumerate() {
                            @if at > 0 { (say::or_else()) }
                            (value) span class="soft" { (say::told_by(by)) }
                        }
                        @if let Some(chosen) = &fact.chosen { (say::of_these_chosen(chosen)) }
                    }
                }
            }
        }
    }
}

fn befores(step: &StepTaught) -> String {
    let names: Vec<&str> = step.rests.iter().map(|rest| rest.before.as_str()).collect();
    names.join(", ")
}

/// The maps of this kind, and the way to make or renew one.
fn maps(here: &Here<'_>, found: &Taught) -> Markup {
    html! {
        h2 { (say::the_map()) }
        @if here.kind.maps.is_empty() { p class="gap" { (say::none_of_this_kind()) } }
        @for kept in &here.kind.maps {
            a class="row" href=(format!("/maps/{}", kept.id)) {
                span class="what strong" { (kept.id.as_str().replace('-', " ")) }
                span class="soft number" { (say::version(kept.version)) }
            }
        }
        @if here.renews && !found.steps.is_empty() {
            div class="presses" {
                (link(Look::Plain, if here.kind.maps.is_empty() { say::make_the_map() } else { say::renew_the_map() }, say::look_at_it_first(), &format!("/kinds/{}/map", here.kind.code)))
            }
        }
    }
}

fn names(here: &Here<'_>, names: &[SameAsked]) -> Markup {
    html! {
        @if !names.is_empty() {
            h2 { (say::one_thing_or_two()) }
            @for same in names {
                @let [yes, no] = &same.facts;
                p class="gap" { span class="strong" { (same.other) } (say::and_between()) span class="strong" { (same.name) } span class="soft line" { (shop::say::capital(&same.why)) } }
                form {
                    div class="presses even" {
                        (button(Look::Plain, say::the_same(), &say::as_name(&same.name), &[here.command(yes)], None))
                        (button(Look::Plain, say::two_things(), "", &[here.command(no)], None))
                    }
                }
            }
        }
    }
}

fn differ(here: &Here<'_>, differ: &[Differ]) -> Markup {
    html! {
        @if !differ.is_empty() {
            h2 { (say::told_differently()) }
            @for one in differ {
                p class="gap" { span class="strong" { (shop::say::capital(&one.words)) } @if let Some(chosen) = &one.chosen { span class="soft line" { (say::chosen(chosen)) } } }
                form {
                    @for (value, by, fact) in &one.values {
                        div class="row" {
                            span class="what" { span class="line" { (value) } span class="soft line" { (by) } }
                            @if here.answers && !fact.is_null() {
                                button class="press" type="submit" data-commands=(Value::from(vec![here.command(fact)])) { (say::this_one()) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What the way in may be asked for.
fn aims(found: &Taught) -> Markup {
    html! {
        @if found.targets.len() > 1 {
            details id="aims" {
                summary class="row" { span class="what strong" { (say::way_in_to_one_thing()) } }
                @if found.target.is_some() { a class="row" href="?" { span class="what" { (say::all_of_it()) } } }
                @for item in &found.targets {
                    @let query = form_urlencoded::byte_serialize(item.as_bytes()).collect::<String>();
                    a class="row" href=(format!("?for={query}")) aria-current=[(found.target.as_ref() == Some(item)).then_some("true")] { span class="what" { (item) } }
                }
            }
        }
    }
}

fn lists(found: &Taught) -> Markup {
    let list = |title: &str, lines: &[String]| {
        html! {
            @if !lines.is_empty() {
                h2 { (title) }
                @for line in lines { p class="row" { (shop::say::capital(line)) } }
            }
        }
    };
    html! {
        (list(say::does_not_fit_together(), &found.circles))
        (list(say::either_way(), &found.both_ways))
        (list(say::went_back_otherwise(), &found.back))
        @if !found.back.is_empty() { p class="soft" { (say::a_map_keeps_to_it()) } }
        (list(say::not_on_all_of_them(), &found.variants))
    }
}

/// The other names of a kind, each with the command that makes it a kind of its own again.
fn also_called(visit: &Visit<'_>, kind: &VehicleKind) -> Result<Vec<(String, Value)>, Trouble> {
    let world = visit.snap.world();
    let mut out = Vec::new();
    for name in &kind.also {
        let map = world.map(name)?;
        out.push((
            name.as_str().replace('-', " "),
            same_as(name, None, &map.same_kind_as().1),
        ));
    }
    Ok(out)
}

fn same_as(kind: &MapId, to: Option<&MapId>, after: &[CommandId]) -> Value {
    let after: Vec<&str> = after.iter().map(CommandId::as_str).collect();
    json!({ "stream": format!("map:{kind}"),
        "map_fact": { "same-kind-as": { "kind": to.map(MapId::as_str), "after": after } } })
}

/// Kinds whose names are near each other are offered to be one; any other is a fold away.
fn same_kind(here: &Here<'_>) -> Markup {
    let (near, others): (Vec<&AlikeKind>, Vec<&AlikeKind>) =
        here.alike.iter().partition(|one| one.near);
    let offer = |one: &AlikeKind| {
        let joined = same_as(&one.code, Some(&here.kind.code), &one.seen);
        html! {
            div class="row" {
                span class="what" { a href=(format!("/kinds/{}", one.code)) { (one.vehicle) } }
                button class="press" type="submit" data-commands=(Value::from(vec![joined])) { (say::same_kind()) }
            }
        }
    };
    html! {
        @if !near.is_empty() {
            h2 { (say::called_otherwise()) }
            p class="soft" { (say::near_names()) }
            form { @for one in &near { (offer(one)) } }
        }
        @if !here.also.is_empty() {
            h2 { (say::also_called()) }
            form {
                @for (name, apart) in &here.also {
                    div class="row" {
                        span class="what" { (name) }
                        button class="press" type="submit" data-commands=(Value::from(vec![apart.clone()])) { (say::another_kind_after_all()) }
                    }
                }
            }
        }
        @if !others.is_empty() {
            details id="same-kind" {
                summary class="row" { span class="what strong" { (say::same_as_another_kind()) } }
                form { @for one in &others { (offer(one)) } }
            }
        }
    }
}

fn answered(here: &Here<'_>, answered: &[AnsweredShown]) -> Markup {
    html! {
        @if !answered.is_empty() {
            h2 { (say::answered()) }
            @for (nth, one) in answered.iter().enumerate() {
                details id=(format!("answered-{nth}")) {
                    summary class="row" { span class="what" { span class="line" { (one.words) } span class="soft line" { (one.said) } } }
                    form {
                        div class="presses even" {
                            @for (word, fact) in &one.others { (button(Look::Plain, word, "", &[here.command(fact)], None)) }
                        }
                    }
                }
            }
        }
    }
}

fn orders(kind: &str, found: &Taught) -> Markup {
    html! {
        @if !found.orders.is_empty() {
            a class="row" href=(format!("/kinds/{kind}/history")) { span class="what strong" { (say::of_this_kind()) } }
            details id="orders" {
                summary class="row" { span class="what strong" { (say::orders_behind_it()) } }
                @for (number, by) in &found.orders {
                    a class="row" href=(format!("/o/{number}")) { span class="what" { span class="strong" { (number) } } span class="soft" { (by) } }
                }
            }
        }
    }
}
