//! What is not known yet of a hole.

use super::put_right::put_right;
use super::{Sheet, about};
use crate::pages::bench::form::parts;
use crate::phrases::vehicle as say;
use maud::{Markup, html};
use shop::calculators::Asked;
use shop::calculators::threads::hole;

/// Fields that say what the bolt is.
const BOLT: [&str; 4] = ["thread", "class", "bolt-length", "torque"];

pub(super) fn questions(sheet: &Sheet<'_>, asked: &Asked) -> Markup {
    let said: Vec<&str> = BOLT
        .iter()
        .map(|name| asked.text(name))
        .filter(|text| !text.is_empty())
        .collect();
    let troubled = BOLT.iter().any(|name| asked.troubles.contains_key(*name));
    let unknown = asked.text("thread").is_empty();
    html! {
        h1 class="no" { (shop::say::capital(&sheet.found.text)) }
        @if let Some(words) = &sheet.found.words { p class="gap" { (say::quoted(words)) } }
        @if !asked.troubles.is_empty() { p class="alarm" { (say::not_worked_out_yet()) } }
        form method="get" action=(sheet.path()) class="narrow" {
            input type="hidden" name="asked" value="1";
            @if sheet.found.known.contains_key("joint") { input type="hidden" name="joint" value=(asked.text("joint")); }
            @else { (parts(asked, &[hole::JOINT])) }
            details id="known" open[unknown || troubled] {
                summary class="row" {
                    span class="what" {
                        span class="strong line" { @if unknown { (say::the_bolt_say_what()) } @else { (said.join(" · ")) } }
                        @if asked.text("torque").is_empty() { span class="soft line" { (say::no_torque_is_made_up()) } }
                        @else { span class="soft line" { (say::torque_from(sheet.found.torque_from.as_deref().unwrap_or(say::this_order()))) } }
                    }
                }
                (parts(asked, hole::BOLT))
            }
            (parts(asked, hole::HOLE))
            div class="presses low" { button class="press confirm" type="submit" { (say::show_repair_options()) } }
        }
        details id="otherwise" {
            summary class="row" { span class="strong" { (say::came_out_or_another_way()) } }
            (about(sheet))
            (put_right(sheet.order, sheet.found))
        }
    }
}
