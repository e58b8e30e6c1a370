//! How a job was done, as a sheet for the next who does it: what came off in which sequence,
//! where, with what, what went wrong and how it ended. It follows from the order's record.

mod beside_map;

pub use beside_map::BesideMap;

use crate::cautions::cautions;
use crate::maps::KeptMap;
use crate::phrases::order::no_order;
use crate::phrases::shop as words;
use crate::planning::{Asked, is_away, ran_tenths};
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::{PhotoView, mending, photo};
use jiff::Timestamp;
use map::Map;
use plan::Minutes;
use record::form::Form;
use repair::{
    Account, Clock, CommandId, Fact, HowToWritten, Item, ItemId, Kind, Move, Order, PieceIs,
    SnagId, StageId, State, System, Words, Zone, adoption, aim, how_to_written,
};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// How a job was done.
#[derive(Debug, Clone, Default)]
pub struct HowTo {
    /// The order.
    pub number: u64,
    /// The order's name in the record.
    pub order: String,
    /// The vehicle, as people call it.
    pub vehicle: String,
    /// What the sheet is called, where somebody said.
    pub title: Option<String>,
    /// The commands that told that, for a device to name as seen.
    pub title_told_by: Vec<String>,
    /// What people wrote about the whole job.
    pub notes: Vec<HowNote>,
    /// The commands that told in which sequence notes stand.
    pub sequence_told_by: Vec<String>,
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
    /// The same beside the map that it was worked by, if it was.
    pub beside_map: Option<BesideMap>,
}

/// What was told in one go.
#[derive(Debug, Clone, Default)]
pub struct HowStage {
    /// The command that told it.
    pub told_by: String,
    /// What people wrote beside it.
    pub notes: Vec<HowNote>,
    /// How long its clock ran; nothing where none did.
    pub minutes: Option<String>,
    /// Where one stands, each place once.
    pub places: Vec<String>,
    /// What one holds.
    pub tools: Vec<String>,
    /// Its rows.
    pub rows: Vec<HowRow>,
}

/// What somebody wrote on the sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HowNote {
    /// Its name in the record.
    pub note: String,
    pub words: String,
    /// Who wrote it.
    pub by: String,
    /// The commands that told it, for a device to name as seen.
    pub told_by: Vec<String>,
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

impl HowTo {
    /// All notes in the sequence in which they stand: of the whole job, then stage by stage.
    pub fn all_notes(&self) -> impl Iterator<Item = &HowNote> {
        let stages = self.off.iter().chain(&self.back);
        let of_stages = stages.flat_map(|stage| &stage.notes);
        self.notes.iter().chain(of_stages)
    }

    /// The command of the stage that a note stands beside.
    #[must_use]
    pub fn stage_of(&self, note: &HowNote) -> Option<&str> {
        let mut stages = self.off.iter().chain(&self.back);
        let of = stages.find(|stage| stage.notes.contains(note));
        of.map(|stage| stage.told_by.as_str())
    }
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
    let (kept, map) = by_map(snap, &order)?.unzip();
    let sheet = Sheet {
        account: Account::of(&order),
        order: &order,
        names: &names,
        map,
        clocks: clocks(&order),
    };
    let (mut off, mut back) = sheet.stages();
    if off.is_empty() && back.is_empty() {
        let mut trouble = Trouble::not_found(words::nothing_was_moved(number));
        words::made_of_what_came_off().clone_into(&mut trouble.mend);
        return Err(trouble);
    }
    let written = how_to_written(&order);
    let notes = beside(&written, &names, off.iter_mut().chain(&mut back));
    Ok(HowTo {
        number,
        order: id.as_str().to_owned(),
        title: names.text_of(written.title),
        title_told_by: told_by(&written.title_told_by),
        notes,
        sequence_told_by: told_by(&written.sequence_told_by),
        vehicle: crate::teaching::label_of(snap, &id)?,
        lines: lines(&order, &names),
        cautions: sheet.cautions(),
        snags: snags(snap, &order, number)?,
        photos: photos(&order, &names),
        sources: sheet.sources(),
        work: work(&order),
        by: sheet.by(),
        beside_map: kept.and_then(|kept| sheet.beside_map(&kept)),
        off,
        back,
    })
}

/// Puts each note beside its stage; those that have none any more are of the whole job.
fn beside<'s>(
    written: &HowToWritten,
    names: &Names<'_>,
    stages: impl Iterator<Item = &'s mut HowStage>,
) -> Vec<HowNote> {
    let mut all = Vec::new();
    let mut stages: Vec<&mut HowStage> = stages.collect();
    for note in &written.notes {
        let shown = HowNote {
            note: note.note.as_str().to_owned(),
            words: names.text(note.words),
            by: names.person(&note.by),
            told_by: told_by(&note.told_by),
        };
        let of = note.stage.as_ref().map(CommandId::as_str);
        match stages
            .iter_mut()
            .find(|stage| of == Some(stage.told_by.as_str()))
        {
            Some(stage) => stage.notes.push(shown),
            None => all.push(shown),
        }
    }
    all
}

fn told_by(commands: &[CommandId]) -> Vec<String> {
    commands
        .iter()
        .map(|command| command.as_str().to_owned())
        .collect()
}

/// The version of the map by which an order works.
fn by_map(snap: &Snapshot<'_>, order: &Order) -> Result<Option<(Arc<KeptMap>, Map)>, Trouble> {
    let Some(adopted) = adoption(order) else {
        return Ok(None);
    };
    let kept = snap.map(adopted.map, Some(adopted.version))?;
    let map = kept.sound().ok().cloned();
    Ok(map.map(|map| (kept, map)))
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
    account: Arc<Account>,
    names: &'a Names<'a>,
    map: Option<Map>,
    clocks: BTreeMap<StageId, Vec<(Timestamp, Clock)>>,
}

impl Sheet<'_> {
    /// The stages out and back, in the sequence in which they were told.
    fn stages(&self) -> (Vec<HowStage>, Vec<HowStage>) {
        let undone = self.order.undone();
        let mut told: Vec<(Timestamp, &CommandId, Option<&StageId>, Vec<&Move>)> = Vec::new();
        for (command, filed) in self.order.facts() {
            let Fact::Moved { stage, moves } = &filed.fact else {
                continue;
            };
            let stands = (0_u16..)
                .zip(moves)
                .filter(|(nth, _)| !undone.moves.contains(&(command.clone(), *nth)));
            let stands: Vec<&Move> = stands.map(|(_, change)| change).collect();
            told.push((filed.stamp.at, command, stage.as_ref(), stands));
        }
        told.sort_by_key(|(at, ..)| *at);
        let (mut off, mut back) = (Vec::new(), Vec::new());
        for (at, command, stage, moves) in told {
            let ran = stage.and_then(|stage| ran_tenths(self.clocks.get(stage)?, at));
            let minutes = ran.map(|tenths| Minutes::tenths(tenths).to_string());
            for (away, into) in [(true, &mut off), (false, &mut back)] {
                let of = moves.iter().filter(|change| self.is_away(change) == away);
                let of: Vec<&Move> = of.copied().collect();
                if !of.is_empty() {
                    into.push(self.stage(command, &of, minutes.clone()));
                }
            }
        }
        (off, back)
    }

    fn beside_map(&self, kept: &KeptMap) -> Option<BesideMap> {
        let map = self.map.as_ref()?;
        let of_vehicle = match aim(self.order) {
            Some(aim) => map.of_variant(&Asked::of(map, &aim).variants),
            None => map.clone(),
        };
        let away = |change: &Move| self.is_away(change);
        Some(BesideMap {
            map: kept.id.as_str().to_owned(),
            vehicle: map.vehicle.clone(),
            version: kept.version,
            apart: beside_map::apart(self.order, &self.account, self.names, &of_vehicle, away),
        })
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

    fn stage(&self, told_by: &CommandId, moves: &[&Move], minutes: Option<String>) -> HowStage {
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
            told_by: told_by.as_str().to_owned(),
            notes: Vec::new(),
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
