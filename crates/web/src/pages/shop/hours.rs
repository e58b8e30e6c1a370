//! When the shop is open, who works when and knows what, and days off.

use crate::pages::Visit;
use crate::phrases::dates::dated;
use crate::phrases::shop as say;
use crate::tap::{Look, button, field, new, required, when};
use jiff::civil::Date;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::v1::codes::SystemForm;
use shop::repair::{CommandId, DaysOff, PersonId, System, Week};

/// What somebody can be told to know: the systems of a vehicle.
const SKILLS: [System; 18] = [
    System::Brakes,
    System::Steering,
    System::Wheels,
    System::Suspension,
    System::Fuel,
    System::Restraints,
    System::DriveBelt,
    System::HighVoltage,
    System::Cooling,
    System::Oil,
    System::Engine,
    System::Transmission,
    System::Intake,
    System::Exhaust,
    System::Battery,
    System::Electrical,
    System::Climate,
    System::Body,
];

fn of_shop(fact: Value) -> Value {
    json!({ "stream": "shop", "shop_fact": fact })
}

fn seen(commands: Vec<&CommandId>) -> Vec<&str> {
    commands.into_iter().map(CommandId::as_str).collect()
}

/// The shop's opening hours and the days on which it is closed.
pub fn opening(visit: &Visit<'_>) -> Markup {
    let shop = &visit.snap.world().shop;
    let now = shop.hours(None).map(Week::said);
    let told = of_shop(
        json!({ "hours-told": { "person": null, "week": field("week"),
        "after": seen(shop.hours_told(None)) } }),
    );
    html! {
        details id="hours" open[now.is_none()] {
            summary class="row" {
                span class="what strong" { (say::opening_hours()) }
                @match &now {
                    Some(now) => span class="soft" { (now) },
                    None => span class="wait" { (say::hours_not_told()) },
                }
            }
            form class="narrow" {
                (required("week", say::open_on(), say::hours_hint(), now.as_deref().unwrap_or("")))
                div class="presses" { (button(Look::Plain, say::save_the_hours(), "", &[told], None)) }
            }
            (days_off(visit, None))
        }
    }
}

/// What can be told of a person's work: their hours, what they know, when they are not there.
pub fn of_person(visit: &Visit<'_>, person: &str) -> Markup {
    let shop = &visit.snap.world().shop;
    let id = PersonId::new(person);
    let now = shop.hours(Some(&id)).map(Week::said);
    let knows = shop.works_on(&id);
    let told = of_shop(
        json!({ "hours-told": { "person": person, "week": field("week"),
        "after": seen(shop.hours_told(Some(&id))) } }),
    );
    let skills: Vec<Value> = SKILLS
        .iter()
        .map(|skill| when(SystemForm::word(*skill), json!(SystemForm::word(*skill))))
        .collect();
    let skills = of_shop(
        json!({ "systems-told": { "person": person, "systems": skills,
        "after": seen(shop.systems_told(&id)) } }),
    );
    html! {
        form {
            (crate::tap::input("week", say::works_on(), say::own_hours_hint(), now.as_deref().unwrap_or("")))
            div class="presses" { (button(Look::Plain, say::save_the_hours(), "", &[told], None)) }
        }
        details id=(format!("knows-{person}")) {
            summary class="row" { span class="what" { (say::knows()) } span class="soft" { (words(knows)) } }
            form {
                fieldset {
                    legend { (say::what_they_know()) }
                    div class="ticks" {
                        @for skill in SKILLS {
                            @let code = SystemForm::word(skill);
                            label class="row" { input type="checkbox" name=(code) value=(code) checked[knows.contains(&skill)]; span { (word(skill)) } }
                        }
                    }
                }
                div class="presses" { (button(Look::Plain, say::save_what_they_know(), "", &[skills], None)) }
            }
        }
        (days_off(visit, Some(&id)))
    }
}

/// One press for who is not there today, as long as it is not told.
pub fn not_here_today(visit: &Visit<'_>, person: &str) -> Markup {
    let shop = &visit.snap.world().shop;
    let today = visit.snap.rules().today();
    let told = shop.days_off().iter().any(|one| {
        one.person.is_some_and(|who| who.as_str() == person)
            && (one.first..=one.last).contains(&today)
    });
    let off = of_shop(json!({ "days-off": { "id": new("off"), "person": person,
        "first": today.to_string(), "last": today.to_string() } }));
    html! {
        @if !told {
            form { div class="presses" { (button(Look::Plain, say::not_here_today(), say::the_day_is_laid_anew(), &[off], None)) } }
        }
    }
}

fn words(skills: &[System]) -> String {
    if skills.is_empty() {
        return say::not_told().to_owned();
    }
    let words: Vec<&str> = skills.iter().map(|skill| word(*skill)).collect();
    words.join(", ")
}

fn word(skill: System) -> &'static str {
    match skill {
        System::Brakes => say::brakes(),
        System::Steering => say::steering(),
        System::Wheels => say::wheels(),
        System::Suspension => say::suspension(),
        System::Fuel => say::fuel(),
        System::Restraints => say::restraints(),
        System::DriveBelt => say::drive_belt(),
        System::HighVoltage => say::high_voltage(),
        System::Cooling => say::cooling(),
        System::Oil => say::oil(),
        System::Engine => say::engine(),
        System::Transmission => say::transmission(),
        System::Intake => say::intake(),
        System::Exhaust => say::exhaust(),
        System::Battery => say::battery(),
        System::Electrical => say::electrical(),
        System::Climate => say::climate(),
        System::Body => say::body(),
        System::Unknown => say::unknown(),
    }
}

/// Days on which the shop is closed, or somebody is not there.
fn days_off(visit: &Visit<'_>, of: Option<&PersonId>) -> Markup {
    let shop = &visit.snap.world().shop;
    let today = visit.snap.rules().today();
    let all = shop.days_off();
    let ahead: Vec<&DaysOff<'_>> = all
        .iter()
        .filter(|one| one.person == of && one.last >= today)
        .collect();
    let told = of_shop(
        json!({ "days-off": { "id": new("off"), "person": of.map(PersonId::as_str),
        "first": field("first"), "last": field("last") } }),
    );
    let (title, add) = match of {
        None => (say::closed_days(), say::add_closed_days()),
        Some(_) => (say::days_off(), say::add_days_off()),
    };
    html! {
        @for one in ahead {
            form {
                div class="row" {
                    span class="what" { (say::which_days(title, span(one.first, one.last))) }
                    (button(Look::Plain, say::not_after_all(), "", &[of_shop(json!({ "days-off-ended": { "id": one.id.as_str() } }))], None))
                }
            }
        }
        form class="narrow" {
            (date("first", &say::from_day(title)))
            (date("last", say::to_that_day_too()))
            div class="presses" { (button(Look::Plain, add, "", &[told], None)) }
        }
    }
}

fn date(name: &str, label: &str) -> Markup {
    html! {
        label class="field" { span { (label) } input type="date" name=(name) required; }
    }
}

fn span(first: Date, last: Date) -> String {
    let day = |date: Date| dated("%a %-d %b", date);
    match first == last {
        true => day(first),
        false => say::day_to_day(day(first), day(last)),
    }
}
