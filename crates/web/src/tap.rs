//! Buttons that carry commands. A command is a template with holes that the page's
//! script fills in on the tap; see `assets/app.js`.

use crate::phrases::frame as say;
use maud::{Markup, html};
use phrases::number_to_type;
use serde_json::{Value, json};
use shop::view::{PhotoView, VoiceView};

/// A command template for an order.
pub fn order_fact(order: &str, fact: Value) -> Value {
    json!({ "stream": format!("order:{order}"), "fact": fact })
}

/// A request template for an order.
pub fn order_request(order: &str, request: Value) -> Value {
    json!({ "stream": format!("order:{order}"), "request": request })
}

/// The value of a field, or null.
pub fn field(name: &str) -> Value {
    json!({ "$field": name })
}

/// A measured value from a field: a bare number gets the unit.
pub fn amount(name: &str, unit: &str) -> Value {
    json!({ "$amount": name, "unit": unit })
}

/// Words from a field, with a salt made on the device; null if it is empty.
pub fn text(name: &str) -> Value {
    json!({ "$text": name })
}

/// Words from a field, with those of others before it, each behind its label; null if all
/// are empty.
pub fn text_with(name: &str, before: &[(&str, &str)]) -> Value {
    json!({ "$text": name, "with": before })
}

/// Words known now.
pub fn words(text: &str) -> Value {
    json!({ "$words": text })
}

/// A new name, the same for the whole tap.
pub fn new(name: &str) -> Value {
    json!({ "$new": name })
}

/// Something left out unless the field is filled or ticked.
pub fn when(field: &str, then: Value) -> Value {
    json!({ "$when": field, "then": then })
}

/// Something left out unless the field reads otherwise than it did when the page came.
pub fn changed(field: &str, then: Value) -> Value {
    json!({ "$changed": field, "then": then })
}

/// A file made on the page: a signature drawn, a photo chosen; null if there is none.
pub fn file(name: &str) -> Value {
    json!({ "$file": name })
}

/// Files made on the page: photos chosen or taken.
pub fn files(name: &str) -> Value {
    json!({ "$files": name })
}

/// The choices of a table, in the language that is spoken.
pub fn choices(all: &[(&'static str, phrases::Say)]) -> Vec<(&'static str, &'static str)> {
    all.iter().map(|(code, said)| (*code, said())).collect()
}

/// What a button looks like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Look {
    /// What confirms: the large one.
    Confirm,
    /// Any other.
    Plain,
}

/// A button that sends commands, then goes on or stays.
pub fn button(
    look: Look,
    label: &str,
    small: &str,
    commands: &[Value],
    next: Option<&str>,
) -> Markup {
    let class = match look {
        Look::Confirm => "press confirm",
        Look::Plain => "press",
    };
    html! {
        button class=(class) type="submit" data-commands=(Value::from(commands.to_vec())) data-next=[next] {
            (label)
            @if !small.is_empty() { small { (small) } }
        }
    }
}

/// A link that looks like a button.
pub fn link(look: Look, label: &str, small: &str, to: &str) -> Markup {
    let class = match look {
        Look::Confirm => "press confirm",
        Look::Plain => "press",
    };
    html! {
        a class=(class) href=(to) {
            (label)
            @if !small.is_empty() { small { (small) } }
        }
    }
}

/// A text field with its label.
pub fn input(name: &str, label: &str, hint: &str, value: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="text" name=(name) value=(value) autocomplete="off";
        }
    }
}

/// Several lines of words.
pub fn lines(name: &str, label: &str, hint: &str, value: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            textarea name=(name) rows="3" autocomplete="off" { (value) }
        }
    }
}

/// A text field that must be filled.
pub fn required(name: &str, label: &str, hint: &str, value: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="text" name=(name) value=(value) autocomplete="off" required;
        }
    }
}

/// The odometer, in the shop's unit unless another is written.
pub fn odometer(name: &str, label: &str, unit: &str, value: &str) -> Markup {
    let hint = say::odometer_in(unit);
    required(name, label, &hint, value)
}

/// Photos, taken or chosen.
pub fn photo_field(name: &str) -> Markup {
    html! {
        label class="field" {
            span { (say::photo()) }
            input type="file" name=(name) accept="image/*" multiple;
        }
    }
}

/// A few words said into the device in place of typing them: see `assets/voice.js`.
pub fn voice_field(name: &str) -> Markup {
    html! {
        fieldset class="voice" data-voice {
            legend { (say::or_say_it()) }
            input type="file" name=(name) accept="audio/*" hidden;
            button class="press" type="button" data-record { (say::start_speaking()) }
            p class="soft" role="status" data-told {}
            audio controls hidden aria-label=(say::recording()) {}
            button class="press" type="button" data-unsaid hidden { (say::without_the_recording()) }
        }
    }
}

/// What somebody said into a device, to be heard.
pub fn spoken(voice: Option<&VoiceView>) -> Markup {
    html! {
        @if let Some(voice) = voice {
            div class="voice" {
                audio controls preload="none" src=(format!("/file/{}", voice.file)) aria-label=(say::recording_of(&voice.by)) {}
                p class="soft" data-unheard hidden { (say::cannot_be_heard()) }
            }
        }
    }
}

/// Photos, small, each a tap from its whole size.
pub fn thumbnails(photos: &[PhotoView]) -> Markup {
    html! {
        @if !photos.is_empty() {
            div class="thumbnails" {
                @for photo in photos.iter().filter(|photo| photo.media.starts_with("image/")) {
                    @let shows = if photo.text.is_empty() { say::photo().to_owned() } else { say::photo_of(&photo.text) };
                    a href=(format!("/file/{}", photo.file)) { img src=(format!("/file/{}", photo.file)) alt=(shows) loading="lazy"; }
                }
            }
        }
    }
}

/// A sheet to sign on with a finger or a pen. Who cannot draw on it signs on paper.
pub fn sheet(name: &str, legend: &str) -> Markup {
    html! {
        fieldset class="sheet" {
            legend { (legend) }
            canvas data-draw=(name) role="img" aria-label=(say::sheet_to_sign()) {}
            button class="press" type="button" data-clear=(name) { (say::clear_the_sheet()) }
            label class="field" {
                span { (say::photo_of_signed_paper()) }
                input type="file" name=(name) accept="image/*";
            }
        }
    }
}

/// A signature as it was drawn, or nothing.
pub fn signed(file: Option<&str>, by: &str) -> Markup {
    html! {
        @if let Some(file) = file {
            img class="signed" src=(format!("/file/{file}")) alt=(if by.is_empty() { say::signature().to_owned() } else { say::signature_of(by) });
        }
    }
}

/// A sum or a count: only a number is taken, with a point or a comma, marks between its thousands
/// and no more than a minus before. `value` is a number as the program writes it; it stands there as
/// what is spoken writes it.
pub fn figure(name: &str, label: &str, hint: &str, value: &str, must: bool) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="text" name=(name) value=(number_to_type(value)) autocomplete="off" inputmode="decimal"
                data-sum pattern=" *[\\-−]?([0-9]+|[0-9]{1,3}([ .,'][0-9]{3})+)([.,][0-9]+)? *" title=(say::number_such_as()) required[must];
        }
    }
}

/// A day.
pub fn day(name: &str, label: &str, hint: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="date" name=(name);
        }
    }
}

/// A day that must be told.
pub fn needed_day(name: &str, label: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            input type="date" name=(name) required;
        }
    }
}

/// A text field that must be filled while another holds one of these values: first that
/// field's name, then the values.
pub fn needed_when(name: &str, label: &str, hint: &str, value: &str, when: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="text" name=(name) value=(value) autocomplete="off" data-needed=(when);
        }
    }
}

/// One of a few, as chips.
pub fn chips(name: &str, legend: &str, choices: &[(&str, &str)], chosen: &str) -> Markup {
    html! {
        fieldset {
            legend { (legend) }
            div class="chips" {
                @for (value, label) in choices {
                    label {
                        input type="radio" name=(name) value=(value) checked[*value == chosen];
                        (label)
                    }
                }
            }
        }
    }
}
