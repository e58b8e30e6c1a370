//! The week: what is booked for each day, and how much room is honestly left.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show};
use crate::phrases::desk as say;
use crate::tap::{Look, link};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::{Week, WeekBar, svg, week as drawn};
use maud::{Markup, PreEscaped, html};
use shop::view::{ExpectedView, WeekDay, WeekView, week as week_view};

const DESK: f64 = 880.0;
const PHONE: f64 = 358.0;

pub async fn week(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let week = week_view(visit.snap)?;
        let drawing = drawing_of(&week);
        Ok(Shown::new(
            say::the_week(),
            html! {
                h1 class="spread" {
                    span { (say::the_week()) }
                    span class="on-desk both" {
                        a class="press" href="/fit-in" { (say::fit_one_in()) }
                    }
                }
                @for missing in &week.missing {
                    a class="row" href="/shop#hours" { span class="what wait" { (say::nothing_planned(missing)) } span class="soft" { (say::tell_it()) } }
                }
                @if week.missing.is_empty() {
                    div class="on-desk" { (PreEscaped(svg(&drawn(&drawing, DESK)))) }
                    div class="on-phone" { (PreEscaped(svg(&drawn(&drawing, PHONE)))) }
                    p class="soft gap" { (say::room_is_honest()) }
                    @if week.not_planned > 0 { p class="wait gap" { (say::not_in_the_room(week.not_planned)) } }
                }
                @if let Some(came) = &week.came {
                    p class="gap" { (came) }
                    p class="soft gap" { (say::room_takes_all_as_coming()) }
                }
                @for day in &week.days { (one_day(day, week.missing.is_empty())) }
                div class="presses low on-phone" { (link(Look::Plain, say::fit_one_in(), "", "/fit-in")) }
            },
        )
        .of_part(Part::Day))
    })
    .await
}

/// The week as it is drawn, in hours.
fn drawing_of(week: &WeekView) -> Week {
    #[allow(clippy::cast_precision_loss, reason = "minutes of a day")]
    let hours = |minutes: i64| minutes as f64 / 60.0;
    Week {
        days: week
            .days
            .iter()
            .map(|day| WeekBar {
                name: day.name.clone(),
                open: hours(day.open_minutes),
                planned: hours(day.planned_minutes),
                room: hours(day.room_minutes),
                booked: day.booked.len(),
            })
            .collect(),
    }
}

fn one_day(day: &WeekDay, planned: bool) -> Markup {
    html! {
        section {
            h2 class="spread" {
                span { (day.name) }
                @if planned { span class="soft" { (room(day)) } }
            }
            @for one in &day.booked { (booked(one)) }
            @if day.booked.is_empty() && day.promised == 0 { p class="soft gap" { (say::nothing_booked()) } }
            @if day.promised > 0 { p class="gap" { (say::promised_that_day(day.promised)) } }
        }
    }
}

fn room(day: &WeekDay) -> String {
    #[allow(clippy::cast_precision_loss, reason = "minutes of a day")]
    let hours = |minutes: i64| {
        let hours = format!("{:.1}", minutes as f64 / 60.0);
        shop::say::figures(hours.strip_suffix(".0").unwrap_or(&hours))
    };
    if day.open_minutes == 0 {
        return say::closed().to_owned();
    }
    match (day.room_minutes, day.by_stalls) {
        (0, true) => say::no_stall_free().to_owned(),
        (0, false) => say::full().to_owned(),
        (room, true) => say::room_by_stalls(hours(room)),
        (room, false) => say::room_for(hours(room)),
    }
}

/// A vehicle that is to come.
pub fn booked(one: &ExpectedView) -> Markup {
    html! {
        a class="row" href=(format!("/o/{}#place", one.number)) {
            span class="what" {
                span class="line" { (one.number) " " span class="strong" { (one.vehicle) } " " span class="soft" { (one.customer) } }
                span class="soft line short" { (one.complaint) }
                @if one.late { span class="no line" { (say::has_not_come()) } }
            }
            span class="number strong" { (one.at) }
        }
    }
}
