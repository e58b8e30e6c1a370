//! How a job was done, as a sheet for the next who does it: what came off in which sequence,
//! where, with what, what went wrong and how it ended. It follows from the order's record.

use crate::cautions::cautions;
use crate::phrases::order::no_order;
use crate::phrases::shop as words;
use crate::planning::{is_away, ran_tenths};
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::{PhotoView, mending, photo};
use jiff::Timestamp;
use map::Map;
use plan::Minutes;
use record::form::Form;
use repair::{
    Account, Clock, Fact, Item, ItemId, Kind, Move, Order, PieceIs, SnagId, StageId, State, System,
    Words, Zone, adoption,
};
use std::collections::{BTreeMap, BTreeSet};

/// How a job was done.
#[derive(Debug, Clone)]
pub struct HowTo {
    /// The order.
    pub number: u64,
    /// The vehicle, as people call it.
    pub vehicle: String,
    /// What was wrong, what was found, what was done: each line of the order.
    pub lines: Vec<[String; 3]>,
    /// What stands before the steps.
    pub cautions: Vec<&'static str>,
    /// The way out.
    pub off: Vec<HowStage>,
    /// The way back.
    pub back: Vec<HowStage>,
    /// What went wrong, and how it ended.
    pub snags: Vec<HowSnag>,
    /// Photos that were taken.
    pub photos: Vec<PhotoView>,
    /// Who says the torques, each once.
    pub sources: Vec<String>,
    /// Work that was done because of it.
    pub work: Vec<String>,
    /// Who worked on it, by their first names.
    pub by: Vec<String>,
}

/// What was told in one go.
#[derive(Debug, Clone, Default)]
pub struct HowStage {
    /// How long its clock ran; nothing where none did.
    pub minutes: Option<String>,
    /// Where one stands, each place once.
    pub places: Vec<String>,
    /// What one holds.
    pub tools: Vec<String>,
    /// Its rows.
    pub rows: Vec<HowRow>,
}

/// One thing that was moved.
#[derive(Debug, Clone)]
pub struct HowRow {
    /// What it is called, with its count and size.
    pub label: String,
    /// What was done with it.
    pub done: String,
    /// The positions, where only some were moved.
    pub at: Option<String>,
    /// The passes of its torque, where it was tightened.
    pub torque: Vec<String>,
    /// Lengths that differ by position.
    pub lengths: Option<String>,
    /// Whether a new one went on.
    pub new: bool,
}

/// Something that went wrong.
#[derive(Debug, Clone)]
pub struct HowSnag {
    /// Its name in the record.
    pub snag: String,
    /// What it was.
    pub text: String,
    /// What was said of it.
    pub words: Option<String>,
    /// How it ended, by whom and when; nothing where it is open.
    pub ended: Option<String>,
}

impl HowSnag {
    /// The same in one line.
    #[must_use]
    pub fn in_one_line(&self) -> String {
        let words = self.words.as_ref().map(|words| format!(", {words}"));
        let ended = self
            .ended
            .as_ref()
            .map_or(words::still_open(), String::as_str);
        words::snag_and_end(&self.text, words.unwrap_or_default(), ended)
    }
}

/// How an order was done.
///
/// # Errors
/// [`Trouble`]: there is no such order, nothing was moved in it, or the record cannot be read.
pub fn how_to(snap: &Snapshot<'_>, number: u64) -> Result<HowTo, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let order = world.order(&id)?;
    let names = Names::of(snap, world, &order);
    let sheet = Sheet {
        account: Account::of(&order),
        order: &order,
        names: &names,
        map: by_map(snap, &order)?,
        clocks: clocks(&order),
    };
    let (off, back) = sheet.stages();
    if off.is_empty() && back.is_empty() {
        let mut trouble = Trouble::not_found(words::nothing_was_moved(number));
        words::made_of_what_came_off().clone_into(&mut trouble.mend);
        return Err(trouble);
    }
    Ok(HowTo {
        number,
        vehicle: crate::teaching::label_of(snap, &id)?,
        lines: lines(&order, &names),
        cautions: sheet.cautions(),
        snags: snags(snap, &order, number)?,
        photos: photos(&order, &names),
        sources: sheet.sources(),
        work: work(&order),
        by: sheet.by(),
        off,
        back,
    })
}

fn by_map(snap: &Snapshot<'_>, order: &Order) -> Result<Option<Map>, Trouble> {
    let Some(adopted) = adoption(order) else {
        return Ok(None);
    };
    let kept = snap.map(adopted.map, Some(adopted.version))?;
    Ok(kept.sound().ok().cloned())
}

fn clocks(order: &Order) -> BTreeMap<StageId, Vec<(Timestamp, Clock)>> {
    let mut clocks: BTreeMap<StageId, Vec<(Timestamp, Clock)>> = BTreeMap::new();
    for (_, filed) in order.facts() {
        if let Fact::Timed { stage, clock, .. } = &filed.fact {
            let told = clocks.entry(stage.clone()).or_default();
            told.push((filed.stamp.at, *clock));
        }
    }
    clocks
}

/// What a sheet is made from.
struct Sheet<'a> {
    order: &'a Order,
    account: std::sync::Arc<Account>,
    names: &'a Names<'a>,
    map: Option<Map>,
    clocks: BTreeMap<StageId, Vec<(Timestamp, Clock)>>,
}

impl Sheet<'_> {
    /// The stages out and back, in the sequence in which they were told.
    fn stages(&self) -> (Vec<HowStage>, Vec<HowStage>) {
        let undone = self.order.undone();
        let mut told: Vec<(Timestamp, Option<&StageId>, Vec<&Move>)> = Vec::new();
        for (command, filed) in self.order.facts() {
            let Fact::Moved { stage, moves } = &filed.fact else {
                continue;
            };
            let stands = (0_u16..)
                .zip(moves)
                .filter(|(nth, _)| !undone.moves.contains(&(command.clone(), *nth)));
            let stands: Vec<&Move> = stands.map(|(_, change)| change).collect();
            told.push((filed.stamp.at, stage.as_ref(), stands));
        }
        told.sort_by_key(|(at, ..)| *at);
        let (mut off, mut back) = (Vec::new(), Vec::new());
        for (at, stage, moves) in told {
            let ran = stage.and_then(|stage| ran_tenths(self.clocks.get(stage)?, at));
            let minutes = ran.map(|tenths| Minutes::tenths(tenths).to_string());
            for (away, into) in [(true, &mut off), (false, &mut back)] {
                let of = moves.iter().filter(|change| self.is_away(change) == away);
                let of: Vec<&Move> = of.copied().collect();
                if !of.is_empty() {
                    into.push(self.stage(&of, minutes.clone()));
                }
            }
        }
        (off, back)
    }

    fn item(&self, change: &Move) -> (ItemId, Option<&Item>) {
        let id = self.account.moves.name(&change.item).clone();
        let known = self.account.items.get(&id);
        (id, known)
    }

    fn is_away(&self, change: &Move) -> bool {
        let (_, known) = self.item(change);
        let kind = known.map_or(Kind::Part, |known| known.kind);
        is_away(kind, change.left.state)
    }

    fn stage(&self, moves: &[&Move], minutes: Option<String>) -> HowStage {
        let (mut places, mut tools) = (BTreeSet::new(), BTreeSet::new());
        for change in moves {
            let (id, known) = self.item(change);
            let zone = known.map_or(Zone::Unknown, |known| known.zone);
            if zone != Zone::Unknown {
                places.insert(say::zone_name(zone).to_owned());
            }
            tools.extend(self.tools(&id, change.left.state));
        }
        HowStage {
            minutes,
            places: places.into_iter().collect(),
            tools: tools.into_iter().collect(),
            rows: moves.iter().map(|change| self.row(change)).collect(),
        }
    }

    fn tools(&self, id: &ItemId, to: State) -> BTreeSet<String> {
        let on_map = |map: &Map| {
            let on_order =
                |name: &ItemId| self.account.moves.name(&crate::planning::in_order(name)) == id;
            let (_, known) = map.items.iter().find(|(name, _)| on_order(name))?;
            let made = known
                .moves
                .iter()
                .find(|made| made.to == to || made.from == to);
            Some(made?.tools.clone())
        };
        self.map.as_ref().and_then(on_map).unwrap_or_default()
    }

    fn row(&self, change: &Move) -> HowRow {
        let (id, known) = self.item(change);
        let kind = known.map_or(Kind::Part, |known| known.kind);
        let all = known.map_or(1, |known| known.pieces.len().max(1));
        let label = known.map_or_else(
            || self.names.label(&id),
            |known| self.names.label_and_size(known),
        );
        let many = match all {
            1 => label,
            _ => format!("{} {label}", change.at.len()),
        };
        let tightened = change.left.state == State::Tight;
        let pattern = known
            .and_then(|known| known.pattern.as_ref())
            .filter(|_| tightened);
        HowRow {
            label: many,
            done: say::state(kind, change.left.state).to_owned(),
            at: (change.at.len() < all).then(|| words::at_positions(say::positions(&change.at))),
            torque: pattern.map_or_else(Vec::new, |pattern| {
                let passes = pattern.passes.iter();
                passes.map(|pass| pass.as_str().to_owned()).collect()
            }),
            lengths: known.and_then(lengths),
            new: change.left.piece == PieceIs::New,
        }
    }

    fn moved(&self) -> impl Iterator<Item = &Item> {
        let items = self.account.moves.items();
        items.filter_map(|item| self.account.items.get(item))
    }

    fn cautions(&self) -> Vec<&'static str> {
        let things: Vec<(Kind, System, Zone)> = self
            .moved()
            .map(|item| (item.kind, item.system, item.zone))
            .collect();
        cautions(&things)
    }

    fn sources(&self) -> Vec<String> {
        let patterns = self.moved().filter_map(|item| item.pattern.as_ref());
        let sources: BTreeSet<String> = patterns
            .filter(|pattern| !pattern.passes.is_empty())
            .map(|pattern| {
                self.names
                    .text_of(pattern.source)
                    .unwrap_or_else(|| words::no_source_told().to_owned())
            })
            .collect();
        sources.into_iter().collect()
    }

    fn by(&self) -> Vec<String> {
        let items = self.account.moves.items();
        let live = items.flat_map(|item| self.account.moves.live(item));
        let who: BTreeSet<String> = live
            .map(|(_, node)| self.names.person(&node.stamp.who))
            .collect();
        who.into_iter().collect()
    }
}

/// Lengths by position, where the pieces are not alike.
fn lengths(item: &Item) -> Option<String> {
    let told: Vec<(u16, &str)> = item
        .pieces
        .iter()
        .filter_map(|piece| Some((piece.position, piece.length.as_ref()?.as_str())))
        .collect();
    let different: BTreeSet<&str> = told.iter().map(|(_, length)| *length).collect();
    (different.len() > 1).then(|| {
        let each: Vec<String> = told
            .iter()
            .map(|(at, length)| format!("{at}: {length}"))
            .collect();
        each.join(", ")
    })
}

fn lines(order: &Order, names: &Names<'_>) -> Vec<[String; 3]> {
    let text = |words: Option<Words>| names.text_of(words).unwrap_or_default();
    let lines = repair::papers::lines(order);
    let each = lines.iter().map(|line| {
        [
            names.text(line.complaint),
            text(line.cause),
            text(line.correction),
        ]
    });
    each.collect()
}

fn snags(snap: &Snapshot<'_>, order: &Order, number: u64) -> Result<Vec<HowSnag>, Trouble> {
    let mut found: Vec<(Timestamp, &SnagId)> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::SnagFound { snag, .. } => Some((filed.stamp.at, snag)),
            _ => None,
        })
        .collect();
    found.sort();
    let each = found.into_iter();
    let shown = |(_, snag): (Timestamp, &SnagId)| {
        let found = mending(snap, number, snag.as_str())?;
        let ended = found.resolved.and_then(|(how, by)| {
            let how = say::resolved(how.read().ok()?);
            Some(format!("{how} ({by})"))
        });
        Ok(HowSnag {
            snag: found.snag,
            text: found.text,
            words: found.words,
            ended,
        })
    };
    each.map(shown).collect()
}

fn photos(order: &Order, names: &Names<'_>) -> Vec<PhotoView> {
    let mut out = Vec::new();
    for (_, filed) in order.beside_moves() {
        let (files, words) = match &filed.fact {
            Fact::Attached { file, words, .. } => (std::slice::from_ref(file), words),
            Fact::SnagFound { photos, words, .. } => (photos.as_slice(), words),
            _ => continue,
        };
        let text = names.text_of(*words).unwrap_or_default();
        let images = files
            .iter()
            .filter(|file| file.media.as_str().starts_with("image/"));
        out.extend(images.map(|file| photo(file, &text)));
    }
    out
}

/// Work that was done, each once.
fn work(order: &Order) -> Vec<String> {
    let done = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::WorkDone { work, .. } => Some(say::work_said(work)),
            _ => None,
        });
    let done: BTreeSet<String> = done.collect();
    done.into_iter().collect()
}
