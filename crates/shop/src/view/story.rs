//! What happened, in plain words with times.

use super::noted::{PhotoView, VoiceView, photo, voice};
use super::story_desk::{decision, desk_fact};
use crate::phrases::{order, story as words};
use crate::say::{self, Names, dates};
use crate::snapshot::Snapshot;
use jiff::Timestamp;
use repair::{
    Account, AimIs, CommandId, Decided, Decision, Fact, Filed, ItemId, LevelAt, Move, Order, Rules,
    State,
};
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;

/// One line of the story.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct StoryLine {
    /// When.
    pub at: String,
    /// Who.
    pub who: String,
    /// What.
    pub text: String,
    /// Photos that came with it.
    pub photos: Vec<PhotoView>,
    /// What was said with it into a device.
    pub voice: Option<VoiceView>,
    /// The signature that came with it, by its commitment.
    pub signature: Option<String>,
    /// Whether it is a decision: it is answered by another, not taken back.
    pub decided: bool,
    /// The command, for undo.
    pub command: String,
    /// Whether it was taken back.
    pub undone: bool,
}

/// How many lines of a story are shown at a time.
const MOST_LINES: usize = 200;

/// A time at the shop, with its day.
pub(crate) fn time(rules: &Rules, at: Timestamp) -> String {
    dates::time(&at.to_zoned_datetime(rules.zone.clone()))
}

/// The same with its year, for what is kept for years.
pub(crate) fn dated(rules: &Rules, at: Timestamp) -> String {
    dates::dated(&at.to_zoned_datetime(rules.zone.clone()))
}

/// An hour at the shop, if it is today's; else its day.
pub(super) fn hour(rules: &Rules, at: Timestamp) -> String {
    let zoned = at.to_zoned_datetime(rules.zone.clone());
    if zoned.date() == rules.today() {
        return zoned.strftime("%H:%M").to_string();
    }
    let day = dates::short_weekday(zoned.date());
    format!("{day} {}", zoned.strftime("%H:%M"))
}

/// Lines of a story that are shown together, the oldest first.
pub(super) struct Part {
    pub(super) lines: Vec<StoryLine>,
    /// Where those before them end, if there are any.
    pub(super) earlier: Option<usize>,
    /// How many lines the whole story has.
    pub(super) length: usize,
}

/// One thing that happened.
enum Happened<'a> {
    Fact(&'a Filed),
    Decision(&'a Decided),
}

impl Happened<'_> {
    fn at(&self) -> Timestamp {
        match self {
            Self::Fact(filed) => filed.stamp.at,
            Self::Decision(decided) => decided.stamp.at,
        }
    }

    /// Whether a story says something of it: of a clock only why it was stopped, where that was
    /// said.
    fn is_told(&self) -> bool {
        !matches!(
            self,
            Self::Fact(Filed {
                fact: Fact::Declared { .. }
                    | Fact::Timed {
                        words: None,
                        voice: None,
                        ..
                    }
                    | Fact::Located { .. }
                    | Fact::Calculated { .. }
                    | Fact::TradeTold { .. },
                ..
            })
        )
    }
}

/// Everything that a story tells, as it is filed: only what is shown is put in sequence, and only
/// of that words are made.
fn happened(order: &Order) -> Vec<(&CommandId, Happened<'_>)> {
    let facts = order.story();
    let facts = facts.map(|(command, filed)| (command, Happened::Fact(filed)));
    let decisions = order.decisions().iter();
    let decisions = decisions.map(|decided| (&decided.command, Happened::Decision(decided)));
    let mut all: Vec<_> = facts.chain(decisions).collect();
    all.retain(|(_, one)| one.is_told());
    all
}

/// The part from `start` to `end` of all, had they been put in sequence from the oldest to the
/// newest. What one command carried stays as it is filed.
fn in_sequence<'a, 'o>(
    all: &'a [(&'o CommandId, Happened<'o>)],
    start: usize,
    end: usize,
) -> Vec<&'a (&'o CommandId, Happened<'o>)> {
    let mut filed: Vec<_> = all.iter().enumerate().collect();
    let by_age = |(nth, (command, one)): &(usize, &(&'o CommandId, Happened<'o>))| {
        (one.at(), *command, *nth)
    };
    if end < filed.len() {
        filed.select_nth_unstable_by(end, |a, b| by_age(a).cmp(&by_age(b)));
        filed.truncate(end);
    }
    if start > 0 && start < filed.len() {
        filed.select_nth_unstable_by(start, |a, b| by_age(a).cmp(&by_age(b)));
    }
    let mut part = filed.split_off(start.min(filed.len()));
    part.sort_unstable_by(|a, b| by_age(a).cmp(&by_age(b)));
    part.into_iter().map(|(_, one)| one).collect()
}

/// The lines of a story that end before a place in it; without one, the last.
pub(super) fn story(
    names: &Names<'_>,
    snap: &Snapshot<'_>,
    order: &Order,
    rules: &Rules,
    before: Option<usize>,
) -> Part {
    let undone = order.undone();
    let all = happened(order);
    let end = before.unwrap_or(usize::MAX).min(all.len());
    let start = end.saturating_sub(MOST_LINES);
    let line = |(command, one): &(&CommandId, Happened<'_>)| {
        let (stamp, text, photos, voice, signature) = match one {
            Happened::Fact(filed) => (
                &filed.stamp,
                fact(names, snap, rules, &filed.fact),
                photos(&filed.fact),
                voice(names, rules, filed),
                signature(&filed.fact),
            ),
            Happened::Decision(decided) => (
                &decided.stamp,
                decision(snap, &decided.decision),
                Vec::new(),
                None,
                match &decided.decision {
                    Decision::HandedOver { signature, .. } => signature.as_ref(),
                    _ => None,
                },
            ),
        };
        let decided = matches!(one, Happened::Decision(_));
        (!text.is_empty()).then(|| StoryLine {
            at: time(rules, stamp.at),
            who: names.person(&stamp.who),
            text,
            photos,
            voice,
            signature: signature.map(|file| file.words.hex()),
            decided,
            command: command.as_str().to_owned(),
            undone: !decided && undone.commands.contains(*command),
        })
    };
    Part {
        lines: in_sequence(&all, start, end)
            .into_iter()
            .filter_map(line)
            .collect(),
        earlier: (start > 0).then_some(start),
        length: all.len(),
    }
}

fn photos(fact: &Fact) -> Vec<PhotoView> {
    files(fact).iter().map(|file| photo(file, "")).collect()
}

/// The photos that came with a fact.
pub(super) fn files(fact: &Fact) -> &[repair::File] {
    match fact {
        Fact::Observed { photos, .. } | Fact::SnagFound { photos, .. } => photos,
        // A paper is no photo, and not everybody is shown its prices.
        Fact::Attached { file, .. } if file.media.as_str() != super::PAPER => {
            std::slice::from_ref(file)
        }
        _ => &[],
    }
}

fn signature(fact: &Fact) -> Option<&repair::File> {
    match fact {
        Fact::Consented { signature, .. } | Fact::Declined { signature, .. } => signature.as_ref(),
        _ => None,
    }
}

fn fact(names: &Names<'_>, snap: &Snapshot<'_>, rules: &Rules, fact: &Fact) -> String {
    let text = |words| snap.texts().text(words);
    let text_of = |words| snap.texts().text_of(words);
    match fact {
        Fact::Declared { .. } | Fact::Located { .. } | Fact::Calculated { .. } => String::new(),
        Fact::Timed { words, .. } => words::stopped_here(
            words
                .map(|words| format!(": {}", text(words)))
                .unwrap_or_default(),
        ),
        Fact::SameAs { item, also } => words::one_thing(names.label(item), names.label(also)),
        Fact::CountCorrected { item, pieces, .. } => {
            words::counted_again(names.label(item), pieces.len())
        }
        Fact::SizeTold { item, size, .. } => format!("{}: {}", names.label(item), size.as_str()),
        Fact::TorqueTold { item, pattern, .. } => {
            let passes: Vec<_> = pattern.passes.iter().map(repair::Written::as_str).collect();
            words::torque_told(names.label(item), passes.join(order::then()))
        }
        Fact::Renamed { item, .. } => words::called_now(names.label(item)),
        Fact::Found { moves } => words::found(moved(names, moves)),
        Fact::Moved { moves, .. } => say::capital(&moved(names, moves)),
        Fact::Seen { moves } => words::looked(moved(names, moves)),
        Fact::Observed {
            zone,
            what,
            words: typed,
            ..
        } => {
            let typed = text_of(*typed).map(|typed| format!(": {typed}"));
            words::noted(
                say::zone_name(*zone),
                say::noted_name(*what),
                typed.unwrap_or_default(),
            )
        }
        Fact::Walked { zone } => words::walked_round(say::zone_name(*zone)),
        Fact::Drained { item, amount, .. } => words::drained(names.label(item), amount.as_str()),
        Fact::Poured { item, amount, .. } => words::poured(names.label(item), amount.as_str()),
        Fact::ReadOff { what, value, .. } => {
            format!("{}: {}", say::capital(what.as_str()), value.as_str())
        }
        Fact::LevelSeen {
            item, level, good, ..
        } => {
            let item = names.label(item);
            match (level, good) {
                (LevelAt::Warm, true) => words::level_warm_right(item),
                (LevelAt::Warm, false) => words::level_warm_not_right(item),
                (LevelAt::Cold, true) => words::level_cold_right(item),
                (LevelAt::Cold, false) => words::level_cold_not_right(item),
            }
        }
        Fact::WorkDone { work, words, .. } => {
            let what = words.map_or_else(|| say::work_name(work.work).to_owned(), text);
            let on = work
                .item
                .as_ref()
                .map(|item| format!(": {}", names.label(item)));
            words::done(what, on.unwrap_or_default())
        }
        Fact::BeltLeftOff { item, words, .. } => {
            let why = text_of(*words).map(|why| format!(": {why}"));
            words::start_with_off(names.label(item), why.unwrap_or_default())
        }
        Fact::WorkDue { words, .. } => words::due(names.work_text(*words)),
        Fact::SnagFound {
            what,
            item,
            at,
            words,
            ..
        } => {
            let on = item.as_ref().map(|item| names.label(item));
            let at = if at.is_empty() {
                String::new()
            } else {
                format!(" {}", say::positions(at))
            };
            let words = words
                .map(|words| format!(" ({})", text(words)))
                .unwrap_or_default();
            words::snag(on.unwrap_or_default(), at, say::snag_name(*what), words)
        }
        Fact::SnagResolved { words, .. } => words::snag_resolved(
            words
                .map(|words| format!(": {}", text(words)))
                .unwrap_or_default(),
        ),
        Fact::DifferenceNoted { words, what, .. } => words::stands_different(
            words.map_or_else(|| (names.tongue().difference)(*what).to_owned(), text),
        ),
        Fact::Checked { items, .. } => {
            let names: Vec<_> = items.iter().map(|item| names.label(item)).collect();
            words::checked(names.join(", "))
        }
        Fact::Proved {
            proof,
            outcome,
            words,
            ..
        } => words::proved(
            say::capital(say::proof_name(*proof)),
            say::outcome(*outcome),
            words
                .map(|words| format!(". {}", text(words)))
                .unwrap_or_default(),
        ),
        _ => desk_fact(names, rules, fact),
    }
}

/// Moves in words, alike ones together: `tray screws out (1–6), tray off`.
fn moved(names: &Names<'_>, moves: &[Move]) -> String {
    let mut groups: BTreeMap<(usize, State), Vec<u16>> = BTreeMap::new();
    for (nth, change) in moves.iter().enumerate() {
        let first = moves
            .iter()
            .position(|other| other.item == change.item)
            .unwrap_or(nth);
        groups
            .entry((first, change.left.state))
            .or_default()
            .extend(&change.at);
    }
    groups
        .into_iter()
        .filter_map(|((nth, state), at)| {
            let change = moves.get(nth)?;
            Some(phrase(names, names.account(), change, state, &at))
        })
        .collect::<Vec<_>>()
        .join(", ")
}

fn phrase(names: &Names<'_>, account: &Account, change: &Move, state: State, at: &[u16]) -> String {
    let kind = account
        .items
        .get(account.moves.name(&change.item))
        .map_or(repair::Kind::Part, |item| item.kind);
    let several = account.positions(&change.item).len() > 1;
    let at = if several {
        format!(" ({})", say::positions(at))
    } else {
        String::new()
    };
    format!(
        "{} {}{at}",
        names.label(&change.item),
        say::state(kind, state)
    )
}

/// What an order aims at, in words.
pub(super) fn aim(names: &Names<'_>, order: &Order) -> Option<String> {
    repair::aim(order).map(|aim| aim_words(names, aim.is, &aim.targets))
}

pub(super) fn aimed(names: &Names<'_>, aim: AimIs, targets: &[ItemId]) -> String {
    words::planned(aim_words(names, aim, targets))
}

fn aim_words(names: &Names<'_>, aim: AimIs, targets: &[ItemId]) -> String {
    match aim {
        AimIs::Home => words::all_home_again().to_owned(),
        AimIs::Roll => words::so_that_it_may_roll().to_owned(),
        AimIs::Reach => {
            let labels: Vec<_> = targets.iter().map(|item| names.known(item)).collect();
            words::get_at(labels.join(", "))
        }
    }
}
