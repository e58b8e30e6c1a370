//! A finished order as it teaches: what was moved when and by whom, and what was told of it.

use crate::planning::{came_off, in_order, job_of};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::Timestamp;
use lessons::{About, Job, Moved, Told};
use map::{JobItem, Map};
use repair::{
    Account, CommandId, Fact, ItemId, Kind, Order, OrderId, PieceIs, Position, State, Stated,
    Words, adoption, aim,
};
use std::collections::{BTreeMap, BTreeSet};

/// Who says so, where a map did.
pub(super) const THE_MAP: &str = "the map";
/// The same where a table of the trade did.
pub(super) const THE_TRADE: &str = "the trade";
/// What is told of a thing whose old one did not go back: kept so, whatever is spoken.
pub(super) const A_NEW_ONE: &str = "a new one went on";

/// What one finished order teaches.
#[derive(Debug, Clone)]
pub(super) struct OrderTaught {
    /// Its number.
    pub number: u64,
    /// What it teaches of sequence and facts.
    pub job: Job,
    /// Names that it says mean one thing: the other, then the one that is kept.
    pub same: Vec<(ItemId, ItemId)>,
    /// What came off, as a map sees it.
    pub items: Vec<JobItem>,
}

/// Reads an order.
pub(super) fn read(snap: &Snapshot<'_>, number: u64, id: &OrderId) -> Result<OrderTaught, Trouble> {
    let order = snap.world().order(id)?;
    let by_map = by_map(snap, &order)?;
    Ok(taught(snap, &order, number, by_map.as_ref()))
}

/// The map that an order works by, if it can be read.
fn by_map(snap: &Snapshot<'_>, order: &Order) -> Result<Option<Map>, Trouble> {
    let Some(adopted) = adoption(order) else {
        return Ok(None);
    };
    let kept = snap.map(adopted.map, Some(adopted.version))?;
    Ok(kept.sound().ok().cloned())
}

fn taught(snap: &Snapshot<'_>, order: &Order, number: u64, by_map: Option<&Map>) -> OrderTaught {
    let account = Account::of(order);
    let label = |words: Words| snap.texts().text(words);
    let name = format!("order {number}");
    let seen = job_of(order, &name, "", &label);
    let named = came_off(order, &label);
    let start = named
        .iter()
        .flat_map(|(item, _)| account.moves.live(item))
        .map(|(_, node)| node.stamp.at)
        .min();
    let (mut moves, mut by) = (Vec::new(), BTreeSet::new());
    for (item, called) in &named {
        for (moved, who) in moves_of(&account, item, called, start) {
            // Only the way out is learned: who puts things back has not chosen its sequence.
            if is_away(moved.kind, moved.to) {
                by.insert(who);
            }
            moves.push(moved);
        }
    }
    let variants = aim(order).map_or_else(BTreeSet::new, |aim| {
        let codes = aim.variants.iter();
        codes.map(|code| code.as_str().replace('-', " ")).collect()
    });
    let telling = Telling {
        order,
        account: &account,
        by_map,
        map_names: by_map.map_or_else(BTreeMap::new, |map| {
            let on_order = |name: &ItemId| account.moves.name(&in_order(name)).clone();
            map.items
                .keys()
                .map(|name| (on_order(name), name.clone()))
                .collect()
        }),
        who: who_told(order, &account),
    };
    let told = named
        .iter()
        .zip(&seen.off)
        .flat_map(|((item, called), is)| telling.of(item, called, is))
        .collect();
    OrderTaught {
        number,
        job: Job {
            name,
            by,
            variants,
            moves,
            told,
        },
        same: same(order, &account, &label),
        items: seen.off,
    }
}

/// The moves of an item, each from where it stood by the moves before, with who made it.
fn moves_of(
    account: &Account,
    item: &ItemId,
    called: &str,
    start: Option<Timestamp>,
) -> Vec<(Moved, String)> {
    let Some(kind) = account.items.get(item).map(|known| known.kind) else {
        return Vec::new();
    };
    let mut live: Vec<_> = account
        .moves
        .live(item)
        .filter(|(_, node)| node.stated == Stated::Moved)
        .collect();
    live.sort_by_key(|(id, node)| (node.stamp.at, (*id).clone()));
    let mut stands: BTreeMap<Position, State> = BTreeMap::new();
    let mut out = Vec::new();
    for (_, node) in live {
        let to = node.change.left.state;
        let from = |at: &Position| stands.get(at).copied().unwrap_or_else(|| kind.home());
        let from = node.change.at.iter().map(from).find(|from| *from != to);
        if let (Some(from), Some(start)) = (from, start) {
            let seconds = node.stamp.at.as_second() - start.as_second();
            let moved = Moved {
                item: ItemId::new(called),
                kind,
                from,
                to,
                minute: u32::try_from(seconds / 60).unwrap_or(0),
            };
            out.push((moved, node.stamp.who.as_str().to_owned()));
        }
        stands.extend(node.change.at.iter().map(|at| (*at, to)));
    }
    out
}

/// Who told what of which item last.
type Who = BTreeMap<(ItemId, &'static str), (Timestamp, CommandId, String)>;

fn who_told(order: &Order, account: &Account) -> Who {
    let mut who = Who::new();
    for (command, filed) in order.beside_moves() {
        let (item, about): (&ItemId, &[&'static str]) = match &filed.fact {
            Fact::Declared { item } => (&item.id, &["count", "size", "torque", "place", "spent"]),
            Fact::SizeTold { item, .. } => (item, &["size"]),
            Fact::TorqueTold { item, .. } => (item, &["torque"]),
            Fact::CountCorrected { item, .. } => (item, &["count"]),
            Fact::Located { item, .. } => (item, &["place"]),
            _ => continue,
        };
        let item = account.moves.name(item);
        for about in about {
            let told = (
                filed.stamp.at,
                command.clone(),
                filed.stamp.who.as_str().to_owned(),
            );
            let last = who
                .entry((item.clone(), about))
                .or_insert_with(|| told.clone());
            if told > *last {
                *last = told;
            }
        }
    }
    who
}

/// What an order says of its items, with who says so.
struct Telling<'a> {
    order: &'a Order,
    account: &'a Account,
    by_map: Option<&'a Map>,
    /// By the name in the order, the map's.
    map_names: BTreeMap<ItemId, ItemId>,
    who: Who,
}

impl Telling<'_> {
    fn of(&self, item: &ItemId, called: &str, is: &JobItem) -> Vec<Told> {
        let by = |about: &'static str| self.by(item, about);
        let mut out = Vec::new();
        let mut tell = |about: About, value: String, by: String| {
            let item = ItemId::new(called);
            out.push(Told {
                item,
                about,
                value,
                by,
            });
        };
        if is.kind.is_counted() {
            tell(About::Count, is.count.to_string(), by("count"));
        }
        if let Some(size) = &is.size {
            tell(About::Size, size.clone(), by("size"));
        }
        for (at, length) in &is.lengths {
            tell(About::Length(*at), length.clone(), by("count"));
        }
        if let Some(torque) = &is.torque {
            let value = torque.passes.join(", ");
            tell(About::Torque, value, torque.title.clone());
        }
        if let Some(place) = &is.zone {
            tell(About::Place, place.clone(), by("place"));
        }
        if is.spent {
            tell(About::Spent, A_NEW_ONE.to_owned(), by("spent"));
        }
        for who in self.renewed_by(item) {
            tell(About::Spent, A_NEW_ONE.to_owned(), who);
        }
        for (work, who) in self.owes(item) {
            tell(About::Owes, work, who);
        }
        for tool in self.tools(item) {
            tell(About::Tool, tool, THE_MAP.to_owned());
        }
        out
    }

    fn by(&self, item: &ItemId, about: &'static str) -> String {
        if self.map_names.contains_key(item) {
            return THE_MAP.to_owned();
        }
        let told = self.who.get(&(item.clone(), about));
        told.map_or_else(String::new, |(.., who)| who.clone())
    }

    /// Who put a new one on.
    fn renewed_by(&self, item: &ItemId) -> BTreeSet<String> {
        let live = self.account.moves.live(item);
        let new = live.filter(|(_, node)| node.change.left.piece == PieceIs::New);
        new.map(|(_, node)| node.stamp.who.as_str().to_owned())
            .collect()
    }

    /// The work that an item left: by what the trade says of its name, and by who said so.
    fn owes(&self, item: &ItemId) -> Vec<(String, String)> {
        let known = self.account.items.get(item);
        let by_trade = known.and_then(repair::Item::known_trade);
        let by_trade = by_trade.into_iter().flat_map(|trade| &trade.owes);
        let by_trade = by_trade.filter_map(|owed| {
            let words = crate::trade_read::work_in_words(owed.sort.as_str())?;
            Some((words, THE_TRADE.to_owned()))
        });
        let done = self.order.beside_moves().filter_map(|(_, filed)| {
            let Fact::WorkDone { work, .. } = &filed.fact else {
                return None;
            };
            let of = self.account.moves.name(work.item.as_ref()?);
            let is_own = work.own.is_none() && work.sort.is_none();
            (of == item && is_own).then(|| {
                let words = crate::say::work_words(work);
                (words, filed.stamp.who.as_str().to_owned())
            })
        });
        by_trade.chain(done).collect()
    }

    fn tools(&self, item: &ItemId) -> BTreeSet<String> {
        let known = self
            .map_names
            .get(item)
            .and_then(|name| self.by_map?.items.get(name));
        let moves = known.into_iter().flat_map(|known| &known.moves);
        moves.flat_map(|step| step.tools.clone()).collect()
    }
}

/// Names that an order says mean one thing.
fn same(
    order: &Order,
    account: &Account,
    label: &dyn Fn(Words) -> String,
) -> Vec<(ItemId, ItemId)> {
    let mut labels: BTreeMap<&ItemId, Words> = BTreeMap::new();
    let mut pairs = Vec::new();
    for (_, filed) in order.beside_moves() {
        match &filed.fact {
            Fact::Declared { item } => {
                labels.entry(&item.id).or_insert(item.label);
            }
            Fact::SameAs { item, also } => pairs.extend([item, also]),
            _ => {}
        }
    }
    let named = |item: &ItemId| {
        let text = label(*labels.get(item)?).trim().to_owned();
        (!text.is_empty() && text != crate::words::ERASED).then(|| ItemId::new(text))
    };
    let joined = |item: &ItemId| {
        let kept = account.items.get(account.moves.name(item))?;
        let kept = ItemId::new(label(kept.label).trim());
        let other = named(item)?;
        (other != kept).then_some((other, kept))
    };
    pairs.into_iter().filter_map(joined).collect()
}

/// Whether a move of this kind to this state takes a thing away from its place.
pub(super) fn is_away(kind: Kind, state: State) -> bool {
    state.rung() == kind.away()
}
