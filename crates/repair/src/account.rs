//! The account: every item, where its pieces stand, what is home, what is open.

use crate::code::{PieceIs, Stand};
use crate::fact::Fact;
use crate::ids::{CommandId, MoveId};
use crate::item::Item;
use crate::items::{ToldApart, items, spoken_of};
use crate::moves::{Moves, Node, Stated, says_moves};
use crate::order::{Filed, Order, Stamp};
use states::{ItemId, Kind, Position, State, System};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// One piece that is not at home.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenPiece {
    pub position: Position,
    /// Where it stands; more than one where people disagree and nobody has looked.
    pub stands: BTreeSet<Stand>,
    /// Where it belongs.
    pub home: Stand,
}

/// An item that is not at home.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenItem {
    pub item: ItemId,
    /// What is known of it; nothing, if nobody declared it yet.
    pub known: Option<Item>,
    /// Its pieces that are not at home.
    pub pieces: Vec<OpenPiece>,
    /// Who moved it last, and when.
    pub last: Stamp,
    /// Whether people disagree about where it stands.
    pub disputed: bool,
}

/// Everything the facts say about items.
#[derive(Debug, Clone, Default)]
pub struct Account {
    pub moves: Moves,
    /// The items, each under the one name it goes by.
    pub items: BTreeMap<ItemId, Item>,
    /// What people told of items apart, until somebody who saw it settles it.
    pub told_apart: BTreeMap<ItemId, ToldApart>,
    /// The items that stand open.
    pub open: Vec<OpenItem>,
    /// Items closed although pieces are missing, with how many: within what is allowed.
    pub closed_short: BTreeMap<ItemId, u16>,
    /// What the customer signed for: the positions each time, none meaning all.
    declined: BTreeMap<ItemId, Vec<Vec<Position>>>,
    /// The items whose pieces were counted again.
    counted: BTreeSet<ItemId>,
}

impl Account {
    /// The account of an order.
    #[must_use]
    pub fn of(order: &Order) -> Arc<Self> {
        order.account()
    }

    /// Reads the account off an order.
    pub(crate) fn read(order: &Order) -> Self {
        let moves = Moves::of(order);
        let (items, told_apart) = items(order, &moves);
        let declined = declined(order, &moves);
        let counted = counted(order, &moves);
        let mut out = Self {
            moves,
            items,
            told_apart,
            declined,
            counted,
            ..Self::default()
        };
        let named: BTreeSet<ItemId> = out.moves.items().chain(out.items.keys()).cloned().collect();
        for item in named {
            out.close_or_open(&item);
        }
        out
    }

    /// The same account with one more fact of a command that nothing of is taken back. Nothing,
    /// where more than the items it moves may read otherwise by it.
    pub(crate) fn with(
        mut account: Arc<Self>,
        command: &CommandId,
        filed: &Filed,
    ) -> Option<Arc<Self>> {
        let fact = &filed.fact;
        let speaks_of_items = spoken_of(fact).is_some()
            || matches!(
                fact,
                Fact::SameAs { .. } | Fact::Declined { .. } | Fact::Undo { .. }
            );
        if speaks_of_items || !account.moves.is_new_to(command, fact) {
            return None;
        }
        if says_moves(fact) {
            let account = Arc::make_mut(&mut account);
            for item in account.moves.add(command, filed) {
                account.closed_short.remove(&item);
                account.open.retain(|open| open.item != item);
                account.close_or_open(&item);
            }
            account.open.sort_by(|a, b| a.item.cmp(&b.item));
        }
        Some(account)
    }

    fn close_or_open(&mut self, item: &ItemId) {
        let pieces: Vec<_> = self
            .positions(item)
            .into_iter()
            .filter_map(|position| self.piece(item, position))
            .collect();
        if pieces.is_empty() {
            return;
        }
        if let Some(missing) = self.missing_within(item, &pieces) {
            self.closed_short.insert(item.clone(), missing);
            return;
        }
        let last = pieces
            .iter()
            .flat_map(|piece| self.moves.heads(item, piece.position))
            .map(|(_, node)| &node.stamp)
            .max_by_key(|stamp| (stamp.at, &stamp.who));
        let Some(last) = last.cloned() else { return };
        self.open.push(OpenItem {
            item: item.clone(),
            known: self.items.get(item).cloned(),
            disputed: pieces.iter().any(|piece| piece.stands.len() > 1),
            pieces,
            last,
        });
    }

    /// The positions of an item: those declared and those that moves speak of. Once the
    /// pieces were counted again only those count, but for the safety class, where
    /// counting does not make a missing piece good.
    #[must_use]
    pub fn positions(&self, item: &ItemId) -> BTreeSet<Position> {
        let spoken_of = self.moves.positions(item);
        let Some(known) = self.items.get(self.moves.name(item)) else {
            return spoken_of;
        };
        let strict = known.is_safety() || known.system == System::Unknown;
        let mut out: BTreeSet<_> = known.positions().into_iter().collect();
        if strict || !self.counted.contains(&known.id) {
            out.extend(spoken_of);
        }
        out
    }

    /// One piece, if it is not at home.
    fn piece(&self, item: &ItemId, position: Position) -> Option<OpenPiece> {
        let stands = self.moves.stands(item, position);
        let home = self.home(item, position);
        let at_home = match self.items.get(item) {
            None => stands.is_empty(),
            Some(known) => stands
                .iter()
                .all(|stand| self.is_home(known, position, *stand, home)),
        };
        (!at_home).then_some(OpenPiece {
            position,
            stands,
            home,
        })
    }

    fn is_home(&self, item: &Item, position: Position, stand: Stand, home: Stand) -> bool {
        // A piece found missing and put right is more at home than it was found.
        let placed = stand.state == home.state || stand.state == item.kind.home();
        if placed && (home.piece == PieceIs::Original || stand.piece != PieceIs::Original) {
            return true;
        }
        !never_passes(item, stand)
            && self.declined.get(&item.id).is_some_and(|signed| {
                signed
                    .iter()
                    .any(|at| at.is_empty() || at.contains(&position))
            })
    }

    /// Where a piece belongs: as found at the walk-round, else as its kind does; new, if
    /// it was taken off and may not go back. Safety-class items belong as their kind
    /// does, whatever was found.
    #[must_use]
    pub fn home(&self, item: &ItemId, position: Position) -> Stand {
        let Some(known) = self.items.get(self.moves.name(item)) else {
            return Stand {
                state: State::On,
                piece: PieceIs::Original,
            };
        };
        let kind_home = known.kind.home();
        let found = (!known.is_safety())
            .then(|| self.found(item, position))
            .flatten();
        let was_off = self.moves.live(item).any(|(_, node)| {
            node.stated == Stated::Moved
                && node.change.at.contains(&position)
                && node.change.left.state == known.kind.away()
        });
        Stand {
            state: found.unwrap_or(kind_home),
            piece: if known.spent && was_off {
                PieceIs::New
            } else {
                PieceIs::Original
            },
        }
    }

    /// The state found before anybody had touched the piece, as told last; nothing if two
    /// walk-rounds disagree, or if somebody moved the piece who had not seen what was
    /// found: then it may have been found so because of that move.
    fn found(&self, item: &ItemId, position: Position) -> Option<State> {
        let here = || {
            self.moves
                .live(item)
                .filter(|(_, node)| node.change.at.contains(&position))
        };
        let walked: BTreeSet<&MoveId> = here()
            .filter(|(_, node)| node.stated == Stated::Found && self.saw_only_finds(node))
            .map(|(id, _)| id)
            .collect();
        let found = self.moves.heads_seen(item, position, &walked);
        let state = found.first()?.1.change.left.state;
        let agreed = found
            .iter()
            .all(|(_, node)| node.change.left.state == state);
        let before_touch =
            here()
                .filter(|(_, node)| node.stated == Stated::Moved)
                .all(|(id, _)| {
                    let seen = self.moves.seen_by([id]);
                    found.iter().any(|(id, _)| seen.contains(id))
                });
        (agreed && before_touch).then_some(state)
    }

    /// Whether the author of a find had seen nothing, or other finds alone.
    fn saw_only_finds(&self, node: &Node) -> bool {
        self.moves.seen_by(&node.change.after).iter().all(|id| {
            self.moves
                .get(id)
                .is_some_and(|seen| seen.stated == Stated::Found)
        })
    }

    /// How many pieces are missing, if that many may be, there.
    fn missing_within(&self, item: &ItemId, pieces: &[OpenPiece]) -> Option<u16> {
        let known = self.items.get(item)?;
        let allowed = known.may_miss.as_ref().filter(|_| !known.is_safety())?;
        let missing = pieces.iter().all(|piece| {
            piece.stands.iter().all(|stand| stand.state == State::Out)
                && !allowed.never_at.contains(&piece.position)
        });
        // Those that were missing already count against what may be missing.
        let out = self
            .positions(item)
            .into_iter()
            .filter(|position| {
                let stands = self.moves.stands(item, *position);
                stands.iter().any(|stand| stand.state == State::Out)
            })
            .count();
        let count = u16::try_from(pieces.len()).ok()?;
        (missing && out <= usize::from(allowed.up_to)).then_some(count)
    }

    /// Whether moves disturbed the item: it was moved, not merely found or seen.
    #[must_use]
    pub fn is_disturbed(&self, item: &ItemId) -> bool {
        self.moves
            .live(item)
            .any(|(_, node)| node.stated == Stated::Moved)
    }

    /// The item as each of the people who told of its place apart would have it; as it
    /// is, where nobody did. A gate asks every one.
    #[must_use]
    pub fn readings<'a>(&'a self, item: &'a Item) -> &'a [Item] {
        self.told_apart
            .get(&item.id)
            .map(|apart| apart.readings.as_slice())
            .filter(|readings| !readings.is_empty())
            .unwrap_or(std::slice::from_ref(item))
    }

    /// The systems that were disturbed, put-ins and owed work apart.
    #[must_use]
    pub fn systems_disturbed(&self) -> BTreeSet<System> {
        self.items
            .values()
            .filter(|item| !matches!(item.kind, Kind::PutIn | Kind::Work))
            .filter(|item| self.is_disturbed(&item.id))
            .flat_map(|item| self.readings(item))
            .map(|item| item.system)
            .collect()
    }

    /// Whether everything that these moves had seen of the item stood at home, and
    /// nothing that disturbed it has gone unseen.
    #[must_use]
    pub fn home_as_seen(&self, item: &ItemId, seen: &BTreeSet<&MoveId>) -> bool {
        let Some(known) = self.items.get(self.moves.name(item)) else {
            return false;
        };
        self.positions(item).into_iter().all(|position| {
            let home = self.home(item, position);
            let unseen_and_away = self.moves.live(item).any(|(id, node)| {
                node.change.at.contains(&position)
                    && !seen.contains(id)
                    && !self.is_home(known, position, node.change.left, home)
            });
            let seen_home = self
                .moves
                .heads_seen(item, position, seen)
                .iter()
                .all(|(_, node)| self.is_home(known, position, node.change.left, home));
            !unseen_and_away && seen_home
        })
    }

    /// The open item of this name.
    #[must_use]
    pub fn open_item(&self, item: &ItemId) -> Option<&OpenItem> {
        let name = self.moves.name(item);
        self.open.iter().find(|open| open.item == *name)
    }
}

/// A missing wheel nut or brake bolt, or one that may be: no signature makes it good.
fn never_passes(item: &Item, stand: Stand) -> bool {
    item.kind == Kind::Fasteners
        && matches!(
            item.system,
            System::Wheels | System::Brakes | System::Unknown
        )
        && !stand.state.in_place()
}

fn counted(order: &Order, moves: &Moves) -> BTreeSet<ItemId> {
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::CountCorrected { item, .. } => Some(moves.name(item).clone()),
            _ => None,
        })
        .collect()
}

fn declined(order: &Order, moves: &Moves) -> BTreeMap<ItemId, Vec<Vec<Position>>> {
    let mut out: BTreeMap<ItemId, Vec<Vec<Position>>> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        let Fact::Declined {
            items,
            at,
            signature: Some(_),
            ..
        } = &filed.fact
        else {
            continue;
        };
        for item in items {
            out.entry(moves.name(item).clone())
                .or_default()
                .push(at.clone());
        }
    }
    out
}
