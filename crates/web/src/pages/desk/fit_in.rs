//! Could we take this one in today? Asked while somebody is on the phone, and answered by what it
//! does to the others. Nothing is written down.

use super::promise::system_name;
use crate::State;
use crate::pages::{Shown, Visit, show};
use crate::phrases::desk as say;
use crate::tap::{Look, chips, link, required};
use axum::extract::{self, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use jiff::Timestamp;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use maud::{Markup, html};
use serde::Deserialize;
use shop::Trouble;
use shop::floor::{Further, Line, Other, Spread, StallNeed, WhatIf, take_in};
use shop::record::v1::codes::SystemForm;
use shop::repair::System;
use shop::view::kept;
use std::collections::BTreeSet;

/// What is asked about the vehicle.
#[derive(Debug, Default, Deserialize)]
pub struct Asked {
    #[serde(default)]
    minutes: String,
    #[serde(default)]
    stall: String,
    #[serde(default)]
    skill: String,
    #[serde(default)]
    comes: String,
    #[serde(default)]
    wanted: String,
}

pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(asked): Query<Asked>,
) -> Response {
    show(state, headers, move |visit| {
        let answer = answer(visit, &asked)?;
        Ok(Shown::new(
            say::fit_one_in(),
            html! {
                h1 { (say::fit_one_in()) }
                div class="columns" {
                    // On a phone one column lies over the other: the answer comes first there.
                    @match &answer {
                        None => div { p class="soft gap" { (say::fit_in_hint()) } },
                        Some(Err(why)) => div { @for why in why { p class="no gap" { (shop::say::capital(why)) } } },
                        Some(Ok(found)) => div { (told(&asked, found)) },
                    }
                    div { (form(visit, &asked)) }
                }
            },
        ))
    })
    .await
}

/// The systems that somebody of the shop is told to know.
fn known(visit: &Visit<'_>) -> BTreeSet<System> {
    let shop = &visit.snap.world().shop;
    let people = shop.people();
    let skills = people.keys().flat_map(|person| shop.works_on(person));
    skills.copied().collect()
}

fn form(visit: &Visit<'_>, asked: &Asked) -> Markup {
    let mut skills = vec![("", say::anybody())];
    skills.extend(
        known(visit)
            .into_iter()
            .map(|system| (SystemForm::word(system), system_name(system))),
    );
    let stall = match asked.stall.as_str() {
        "" => "lift",
        stall => stall,
    };
    html! {
        form method="get" action="/fit-in" {
            (required("minutes", say::minutes_of_work(), say::one_or_three(), &asked.minutes))
            (chips("stall", say::where_done(), &[("lift", say::on_a_lift()), ("flat", say::flat()), ("any", say::any_stall()), ("none", say::no_stall())], stall))
            @if skills.len() > 1 { (chips("skill", say::who_can_do_it(), &skills, &asked.skill)) }
            label class="field" { span { (say::it_comes()) } span class="soft" { (say::empty_at_the_door()) } input type="datetime-local" name="comes" value=(asked.comes); }
            label class="field" { span { (say::wanted_by()) } span class="soft" { (say::empty_no_hurry()) } input type="datetime-local" name="wanted" value=(asked.wanted); }
            div class="presses low" { button class="press confirm" type="submit" { (say::could_we()) } }
        }
    }
}

/// One number, or least, likely and most; nothing where nothing was typed.
pub fn minutes(text: &str) -> Result<Option<Spread>, ()> {
    const LONGEST: i64 = 31 * 24 * 60;
    let numbers: Result<Vec<i64>, _> = text
        .split(|one: char| one.is_whitespace() || ",;-–".contains(one))
        .filter(|part| !part.is_empty())
        .map(str::parse)
        .collect();
    let spread = match numbers.map_err(|_| ())?.as_slice() {
        [] => return Ok(None),
        [one] => Spread::sure(*one),
        [least, most] => Spread::new(*least, least.midpoint(*most), *most),
        [least, likely, most] => Spread::new(*least, *likely, *most),
        _ => return Err(()),
    };
    let sound = spread.is_sound() && spread.least >= 1 && spread.most <= LONGEST;
    sound.then_some(Some(spread)).ok_or(())
}

/// A local time of the shop, as a field writes it.
fn time(visit: &Visit<'_>, text: &str) -> Result<Option<Timestamp>, ()> {
    if text.is_empty() {
        return Ok(None);
    }
    let zone: TimeZone = visit.snap.rules().zone;
    let local: DateTime = text.parse().map_err(|_| ())?;
    let zoned = local.to_zoned_datetime(zone).map_err(|_| ())?;
    Ok(Some(zoned.timestamp()))
}

type Answer = Option<Result<WhatIf, Vec<String>>>;

fn answer(visit: &Visit<'_>, asked: &Asked) -> Result<Answer, Trouble> {
    let said = |words: &str| Ok(Some(Err(vec![words.to_owned()])));
    let minutes = match minutes(&asked.minutes) {
        Ok(None) => return Ok(None),
        Ok(Some(minutes)) => minutes,
        Err(()) => return said(say::minutes_are_numbers()),
    };
    let (Ok(comes), Ok(wanted)) = (time(visit, &asked.comes), time(visit, &asked.wanted)) else {
        return said(say::that_is_no_time());
    };
    let skill = SystemForm::from_word(&asked.skill);
    let stall = match asked.stall.as_str() {
        "flat" => StallNeed::Flat,
        "any" => StallNeed::Any,
        "none" => StallNeed::No,
        _ => StallNeed::Lift,
    };
    let further = Further {
        minutes,
        stall,
        skill,
        helpers: 0,
        comes,
        wanted,
    };
    take_in(visit.snap, &further).map(Some)
}

fn told(asked: &Asked, found: &WhatIf) -> Markup {
    let worse = found
        .others
        .iter()
        .any(|other| other.chance.is_some_and(|(was, is)| is < was));
    let in_time = found.own.chance.is_none_or(|chance| chance >= 0.5);
    let mut query = form_urlencoded::Serializer::new(String::new());
    if !asked.comes.is_empty() {
        query.append_pair("comes", &asked.comes);
    }
    let check_in = format!("/new?{}", query.finish());
    html! {
        div class="answer" role="status" {
            @match (in_time, worse) {
                (true, false) => p class="yes beside gap" { (say::yes_nobody_waits()) },
                (true, true) => p class="wait beside gap" { (say::yes_others_pay()) },
                (false, _) => p class="no beside gap" { (say::hardly_in_time()) },
            }
            div class="headline" {
                span class="fact" { (found.own.say) }
                span class="what" {
                    span class="line" { (say::ready_eight_in_ten()) }
                    @if let Some(chance) = found.own.chance { span class={ "line " @if in_time { "soft" } @else { "no" } } { (say::as_wanted(kept(chance))) } }
                }
            }
            (felt(found))
            h2 { (say::how_planned()) }
            @for line in &found.own.work { (work_line(line)) }
            @for change in &found.changes { p class="soft gap" { (shop::say::capital(change)) } }
            div class="presses" {
                (link(Look::Plain, if asked.comes.is_empty() { say::check_in_a_vehicle() } else { say::book_it() }, "", &check_in))
            }
        }
    }
}

/// What a change does to the others: how often each promise is kept, how much later each is ready.
pub fn felt(found: &WhatIf) -> Markup {
    html! {
        h2 { (say::what_it_does_to_others()) }
        @if found.others.is_empty() { p class="gap" { (say::nobody_feels_it()) } }
        @for other in &found.others { (other_row(other)) }
    }
}

fn other_row(other: &Other) -> Markup {
    let tenths = |chance: f64| format!("{:.0}", (chance * 10.0).round());
    html! {
        a class="row" href=(format!("/o/{}/promise", other.number)) {
            span class="what" {
                span class="line" { (other.number) " " span class="strong" { (other.vehicle) } }
                @if let Some((was, is)) = other.chance {
                    span class={ "line " @if is < was { "no" } @else if is > was { "yes" } @else { "soft" } } { (say::kept_now_instead(tenths(is), tenths(was))) }
                }
            }
            @if other.later_minutes > 0 { span class="number" { (say::later_by(hours(other.later_minutes))) } }
            @if other.later_minutes < 0 { span class="number soft" { (say::earlier_by(hours(-other.later_minutes))) } }
        }
    }
}

/// Minutes as one says them: `45 min`, `3 h`, `2 days`.
fn hours(minutes: i64) -> String {
    match minutes {
        ..=90 => say::count_minutes(minutes),
        91..=1440 => say::count_hours((minutes + 30) / 60),
        _ => say::count_days((minutes + 720) / 1440),
    }
}

/// One piece of work of the vehicle that is asked about.
pub fn work_line(line: &Line) -> Markup {
    html! {
        div class="row" {
            span class="what" {
                span class="strong line" { (shop::say::capital(&line.what)) }
                @if !line.who.is_empty() { span class="soft line" { (line.who) } }
            }
            span class="number" { (say::from_to(&line.from, &line.to)) }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_are_one_number_two_or_three() {
        assert_eq!(minutes(" 90 "), Ok(Some(Spread::sure(90))));
        assert_eq!(minutes("60-120"), Ok(Some(Spread::new(60, 90, 120))));
        assert_eq!(minutes("25, 35, 50"), Ok(Some(Spread::new(25, 35, 50))));
        assert_eq!(minutes(""), Ok(None));
        for wrong in ["soon", "50, 35, 25", "0", "1 2 3 4", "99999999999999999999"] {
            assert_eq!(minutes(wrong), Err(()), "{wrong}");
        }
    }
}
