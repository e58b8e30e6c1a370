//! Who stopped in a stage and said why: what the next one, or the desk, hears first.

use super::noted::{VoiceView, voice};
use super::story;
use crate::say::Names;
use jiff::Timestamp;
use repair::{Clock, Fact, Filed, PersonId, Rules, StageId};
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;

/// A stage that somebody stopped in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PausedView {
    /// Who.
    pub by: String,
    /// Since when.
    pub at: String,
    /// Why, in words.
    pub words: Option<String>,
    /// The same, recorded.
    pub voice: Option<VoiceView>,
}

/// What somebody did last in a stage: when, and as which of the facts.
type Last<'a> = (Timestamp, usize, &'a Filed);

/// The pauses that something was said of and that still hold: nothing came of that stage by that
/// person since.
pub(super) fn paused(names: &Names<'_>, rules: &Rules) -> Vec<PausedView> {
    let order = names.reading().order();
    let mut clocks: BTreeMap<(&StageId, &PersonId), Last<'_>> = BTreeMap::new();
    for (nth, (_, filed)) in order.beside_moves().enumerate() {
        let Fact::Timed { stage, .. } = &filed.fact else {
            continue;
        };
        let told = (filed.stamp.at, nth, filed);
        let last = clocks.entry((stage, &filed.stamp.who)).or_insert(told);
        if (told.0, told.1) > (last.0, last.1) {
            *last = told;
        }
    }
    clocks.retain(|_, (.., filed)| says_why(&filed.fact));
    if clocks.is_empty() {
        return Vec::new();
    }
    for (_, filed) in order.facts() {
        if let Fact::Moved {
            stage: Some(stage), ..
        } = &filed.fact
        {
            let of = (stage, &filed.stamp.who);
            if clocks.get(&of).is_some_and(|(at, ..)| *at < filed.stamp.at) {
                clocks.remove(&of);
            }
        }
    }
    let mut held: Vec<Last<'_>> = clocks.into_values().collect();
    held.sort_by_key(|(at, nth, _)| std::cmp::Reverse((*at, *nth)));
    let words_of = |fact: &Fact| match fact {
        Fact::Timed { words, .. } => words.map(|words| names.text(words)),
        _ => None,
    };
    held.into_iter()
        .map(|(.., filed)| PausedView {
            by: names.person(&filed.stamp.who),
            at: story::hour(rules, filed.stamp.at),
            words: words_of(&filed.fact),
            voice: voice(names, rules, filed),
        })
        .collect()
}

fn says_why(fact: &Fact) -> bool {
    matches!(fact, Fact::Timed { clock: Clock::Paused, words, voice, .. }
        if words.is_some() || voice.is_some())
}
