//! Items, debts, gates and snags in words.

use super::apart::ApartView;
use super::noted::{PhotoView, photos_of_items};
use crate::phrases::order as words;
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use record::form::Form;
use record::v1::basics::{ReasonKeyForm, StateForm};
use record::v1::codes::{GateForm, KindForm, ProofIsForm, SystemForm, WorkIsForm, ZoneForm};
use record::v1::facts::WorkForm;
use repair::{Gate, Item, ItemId, Kind, MoveId, Order, Reason, Rules, Until, Waivable, Why};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use utoipa::ToSchema;

/// The name of a move: what a device sends as seen.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
pub struct MoveName {
    /// The command that carried it.
    pub command: String,
    /// Its place in that command.
    pub nth: u16,
}

/// Pieces of an item that stand alike.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PiecesView {
    /// Their positions.
    pub at: Vec<u16>,
    /// Where they stand; empty if people disagree.
    pub state: Option<StateForm>,
    /// The same in words.
    pub text: String,
}

/// How long one piece is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct LengthView {
    /// Its position.
    pub at: u16,
    /// As written.
    pub length: String,
}

/// One item.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ItemView {
    /// Its name in the record.
    pub item: String,
    /// What it is called.
    pub label: String,
    /// Its size.
    pub size: Option<String>,
    /// What sort of thing.
    pub kind: KindForm,
    /// Its system.
    pub system: SystemForm,
    /// Where it is worked on.
    pub zone: ZoneForm,
    /// Its positions.
    pub positions: Vec<u16>,
    /// Where its pieces stand.
    pub pieces: Vec<PiecesView>,
    /// Whether it is of the safety class.
    pub safety: bool,
    /// Whether it may not go back once off.
    pub spent: bool,
    /// Whether it is at home.
    pub home: bool,
    /// Whether anything was done to it.
    pub disturbed: bool,
    /// Whether it was found so at the walk-round.
    pub found: bool,
    /// The container its pieces lie in.
    pub container: Option<String>,
    /// What a tightening pass is, pass by pass.
    pub passes: Vec<String>,
    /// Who says so.
    pub torque_from: Option<String>,
    /// The positions in tightening sequence, where one is stated.
    pub sequence: Vec<u16>,
    /// The lengths of its pieces, where they are known.
    pub lengths: Vec<LengthView>,
    /// The wrench its size most likely wants.
    pub wrench: Option<String>,
    /// Photos of it.
    pub photos: Vec<PhotoView>,
    /// The moves a device sends as seen.
    pub seen: Vec<MoveName>,
    /// What was told of it since it was declared, for a device that tells better to name as
    /// seen.
    pub told_by: Vec<String>,
    /// What people told of it apart, until one of them is settled on.
    pub apart: Vec<ApartView>,
}

/// An item that is not at home.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct OpenItemView {
    /// Its name in the record.
    pub item: String,
    /// What it is called.
    pub label: String,
    /// In one line.
    pub text: String,
    /// What sort of thing; nothing, if nobody said.
    pub kind: Option<KindForm>,
    /// Where its pieces stand.
    pub states: Vec<String>,
    /// Where it belongs.
    pub home: String,
    /// Since when.
    pub since: String,
    /// Through whom.
    pub by: String,
    /// Whether it is a thing inside the vehicle.
    pub inside: bool,
    /// Whether people disagree.
    pub disputed: bool,
}

/// Work owed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct DebtView {
    /// What, in one line.
    pub text: String,
    /// What sort of work.
    pub work: WorkIsForm,
    /// The item.
    pub item: Option<String>,
    /// The name of a person's own.
    pub own: Option<String>,
    /// The items whose moves made it due.
    pub items: Vec<String>,
    /// The work as a command names it: doing it sends this back.
    pub owed: WorkForm,
    /// The gate it stands before; nothing, if it is due after hand-over.
    pub before: Option<GateForm>,
    /// The moves that answering it must have seen.
    pub seen: Vec<MoveName>,
}

/// One reason at a gate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ReasonView {
    /// Its name, for a waiver.
    pub key: String,
    /// How much of it there is, for a waiver to name as seen.
    pub figure: String,
    /// What sort of reason.
    pub kind: String,
    /// In words.
    pub text: String,
    /// Whether it holds the vehicle here, or only warns.
    pub blocks: bool,
    /// Whether it may be waived.
    pub waivable: bool,
    /// Who waived it, and why.
    pub waived: Option<String>,
    /// Whether that prints on the invoice.
    pub prints: bool,
    /// The item it is about.
    pub item: Option<String>,
    /// Who did what nobody else has checked.
    pub by: Option<String>,
}

/// One reason of the desk's list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PaperView {
    /// Its name, for a waiver.
    pub key: String,
    /// How much of it there is, for a waiver to name as seen.
    pub figure: String,
    /// What sort of reason.
    pub kind: String,
    /// In words.
    pub text: String,
    /// Whether it holds the vehicle here.
    pub blocks: bool,
    /// Whether it may be waived.
    pub waivable: bool,
    /// Who waived it, and why.
    pub waived: Option<String>,
    /// Whether that prints on the invoice.
    pub prints: bool,
}

/// One gate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct GateView {
    /// Which.
    pub gate: GateForm,
    /// In words.
    pub name: String,
    /// Yes or no.
    pub may: bool,
    /// The technician's list.
    pub fit_to_go: Vec<ReasonView>,
    /// The desk's list.
    pub papers: Vec<PaperView>,
    /// For *roll*, where it is shut: what stands in the way of pushing it by hand. That opens no
    /// gate.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub against_pushing: Option<Vec<String>>,
}

/// A snag that is not resolved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct SnagView {
    /// Its name.
    pub snag: String,
    /// The item.
    pub item: Option<String>,
    /// The positions.
    pub at: Vec<u16>,
    /// In words.
    pub text: String,
}

/// A waiver that stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct WaiverView {
    /// The gate.
    pub gate: GateForm,
    /// The reason it lets pass.
    pub reason: String,
    /// Who, and why.
    pub waived: String,
    /// Whether it prints on the invoice.
    pub prints: bool,
}

/// A move's name as it is sent.
pub(super) fn move_name(id: &MoveId) -> MoveName {
    MoveName {
        command: id.command.as_str().to_owned(),
        nth: id.nth,
    }
}

/// Every item, in the order it was first touched, then by label.
pub(super) fn items(names: &Names<'_>, snap: &Snapshot<'_>, order: &Order) -> Vec<ItemView> {
    let account = names.account();
    // The first move of each item: by the clock, then by its place in its stage.
    let first = |item: &ItemId| {
        account
            .moves
            .live(item)
            .map(|(id, node)| (node.stamp.at, id.command.clone(), id.nth))
            .min()
    };
    let mut all: Vec<&Item> = account.items.values().collect();
    all.sort_by_cached_key(|item| {
        let first = first(&item.id);
        (first.is_none(), first, item.id.clone())
    });
    let mut photos = photos_of_items(names, order);
    let told = repair::told_of_items(order, &account.moves);
    all.into_iter()
        .map(|item| {
            let told = told.get(&item.id).map_or(&[][..], Vec::as_slice);
            let apart = account.told_apart.get(&item.id);
            ItemView {
                photos: photos.remove(item.id.as_str()).unwrap_or_default(),
                apart: apart.map_or_else(Vec::new, |apart| {
                    super::apart::apart(names, item, apart, told)
                }),
                told_by: told
                    .iter()
                    .map(|command| command.as_str().to_owned())
                    .collect(),
                ..item_view(names, snap, item)
            }
        })
        .collect()
}

fn item_view(names: &Names<'_>, snap: &Snapshot<'_>, item: &Item) -> ItemView {
    let account = names.account();
    let container = account
        .moves
        .live(&item.id)
        .filter_map(|(_, node)| node.change.container.as_ref().map(|c| (node.stamp.at, c)))
        .max()
        .map(|(_, container)| container.as_str().to_owned());
    let label = snap.texts().text(item.label);
    let pattern = item.pattern.iter();
    ItemView {
        item: item.id.as_str().to_owned(),
        sequence: pattern.flat_map(|p| p.sequence.clone()).collect(),
        lengths: item
            .pieces
            .iter()
            .filter_map(|piece| {
                Some(LengthView {
                    at: piece.position,
                    length: piece.length.as_ref()?.as_str().to_owned(),
                })
            })
            .collect(),
        wrench: super::wrench::of(item, &label),
        photos: Vec::new(),
        told_by: Vec::new(),
        apart: Vec::new(),
        torque_from: item
            .pattern
            .as_ref()
            .and_then(|pattern| snap.texts().text_of(pattern.source)),
        label,
        size: item.size.as_ref().map(|size| size.as_str().to_owned()),
        kind: KindForm::of(&item.kind),
        system: SystemForm::of(&item.system),
        zone: ZoneForm::of(&item.zone),
        positions: account.positions(&item.id).into_iter().collect(),
        pieces: pieces(names, item),
        safety: item.is_safety(),
        spent: item.spent,
        home: account.open_item(&item.id).is_none(),
        disturbed: account.is_disturbed(&item.id),
        found: account
            .moves
            .live(&item.id)
            .any(|(_, node)| node.stated == repair::Stated::Found),
        container,
        passes: item
            .pattern
            .iter()
            .flat_map(|pattern| &pattern.passes)
            .map(|pass| pass.as_str().to_owned())
            .collect(),
        seen: seen(names, item).iter().map(move_name).collect(),
    }
}

/// The moves that a move of this item has seen: its own, and those of the items that a
/// stated need of its tightening looks at, or the debt of a need broken would be missed.
fn seen(names: &Names<'_>, item: &Item) -> BTreeSet<MoveId> {
    let account = names.account();
    let stated = names.adoption().map_or(&[][..], |adopted| adopted.needs);
    let tightening = stated.iter().filter(|stated| {
        stated.to == repair::State::Tight && *account.moves.name(&stated.item) == item.id
    });
    let looked_at = tightening.flat_map(|stated| stated.need.items());
    [&item.id]
        .into_iter()
        .chain(looked_at)
        .flat_map(|item| account.moves.frontier(item))
        .collect()
}

fn pieces(names: &Names<'_>, item: &Item) -> Vec<PiecesView> {
    let account = names.account();
    let mut groups: BTreeMap<BTreeSet<repair::State>, Vec<u16>> = BTreeMap::new();
    for position in account.positions(&item.id) {
        let mut states: BTreeSet<_> = account
            .moves
            .stands(&item.id, position)
            .into_iter()
            .map(|stand| stand.state)
            .collect();
        if states.is_empty() {
            states.insert(account.home(&item.id, position).state);
        }
        groups.entry(states).or_default().push(position);
    }
    groups
        .into_iter()
        .map(|(states, at)| PiecesView {
            at,
            text: states
                .iter()
                .map(|state| say::state(item.kind, *state))
                .collect::<Vec<_>>()
                .join(words::or()),
            state: match states.len() {
                1 => states.first().map(StateForm::of),
                _ => None,
            },
        })
        .collect()
}

pub(super) fn open_items(names: &Names<'_>, rules: &Rules) -> Vec<OpenItemView> {
    names
        .account()
        .open
        .iter()
        .map(|open| {
            let kind = open.known.as_ref().map(|item| item.kind);
            let words =
                |state| (names.tongue().state)(kind.unwrap_or(Kind::Part), state).to_owned();
            let states: BTreeSet<String> = open
                .pieces
                .iter()
                .flat_map(|piece| &piece.stands)
                .map(|stand| words(stand.state))
                .collect();
            OpenItemView {
                item: open.item.as_str().to_owned(),
                label: names.label(&open.item),
                text: names.open(open),
                kind: kind.as_ref().map(KindForm::of),
                states: states.into_iter().collect(),
                home: open
                    .pieces
                    .first()
                    .map(|piece| words(piece.home.state))
                    .unwrap_or_default(),
                since: super::story::time(rules, open.last.at),
                by: names.person(&open.last.who),
                inside: kind == Some(Kind::PutIn),
                disputed: open.disputed,
            }
        })
        .collect()
}

pub(super) fn debts(names: &Names<'_>) -> Vec<DebtView> {
    names
        .reading()
        .debts()
        .iter()
        .map(|debt| {
            let seen = answer_seen(names, debt);
            DebtView {
                text: names.debt(debt),
                work: WorkIsForm::of(&debt.work.work),
                item: debt.work.item.as_ref().map(|item| item.as_str().to_owned()),
                own: debt.work.own.as_ref().map(|own| own.as_str().to_owned()),
                items: caused_by(names, debt),
                owed: WorkForm::of(&debt.work),
                before: match &debt.until {
                    Until::Before(gate) => Some(GateForm::of(gate)),
                    Until::Later { .. } => None,
                },
                seen,
            }
        })
        .collect()
}

/// The items whose moves made a debt due, each once.
fn caused_by(names: &Names<'_>, debt: &repair::Debt) -> Vec<String> {
    let moves = &names.account().moves;
    let items: BTreeSet<&ItemId> = debt
        .causes
        .iter()
        .filter_map(|cause| moves.get(cause))
        .map(|node| moves.name(&node.change.item))
        .collect();
    let items = items.into_iter().chain(&debt.work.item);
    let items: BTreeSet<String> = items.map(|item| item.as_str().to_owned()).collect();
    items.into_iter().collect()
}

/// What answering a debt has seen: its causes, and what its item has come to since.
fn answer_seen(names: &Names<'_>, debt: &repair::Debt) -> Vec<MoveName> {
    let since = debt
        .work
        .item
        .iter()
        .flat_map(|item| names.account().moves.frontier(item));
    debt.causes
        .iter()
        .cloned()
        .chain(since)
        .collect::<BTreeSet<_>>()
        .iter()
        .map(move_name)
        .collect()
}

pub(super) fn gates(names: &Names<'_>) -> Vec<GateView> {
    Gate::ALL
        .into_iter()
        .map(|gate| {
            let answer = names.reading().answer(gate);
            let pushing = (gate == Gate::Roll && !answer.may()).then(|| {
                let against = repair::against_pushing(names.reading());
                against.iter().map(|reason| names.reason(reason)).collect()
            });
            GateView {
                against_pushing: pushing,
                gate: GateForm::of(&gate),
                name: say::gate(gate).to_owned(),
                may: answer.may(),
                fit_to_go: answer
                    .fit_to_go
                    .iter()
                    .map(|reason| ReasonView {
                        key: ReasonKeyForm::of(&reason.key).0,
                        figure: reason.figure.clone(),
                        kind: kind_of(reason),
                        text: names.reason(reason),
                        blocks: reason.blocks,
                        waivable: reason.waivable != Waivable::Never,
                        waived: waived(names, reason),
                        prints: prints(reason),
                        item: item_of(reason),
                        by: by_of(reason),
                    })
                    .collect(),
                papers: answer
                    .papers
                    .iter()
                    .map(|reason| PaperView {
                        key: ReasonKeyForm::of(&reason.key).0,
                        figure: reason.figure.clone(),
                        kind: kind_of(reason),
                        text: names.reason(reason),
                        blocks: reason.blocks,
                        waivable: reason.waivable != Waivable::Never,
                        waived: waived(names, reason),
                        prints: prints(reason),
                    })
                    .collect(),
            }
        })
        .collect()
}

impl GateView {
    /// What cannot be read may hold the vehicle here.
    pub(super) fn shut_by(&mut self, unread: &str) {
        self.may = false;
        if let Some(against) = &mut self.against_pushing {
            against.insert(0, say::capital(unread));
        }
        let reason = ReasonView {
            key: "unread".to_owned(),
            kind: "unread".to_owned(),
            text: say::capital(unread),
            blocks: true,
            waivable: false,
            waived: None,
            prints: false,
            figure: String::new(),
            item: None,
            by: None,
        };
        self.fit_to_go.insert(0, reason);
    }
}

fn kind_of(reason: &Reason) -> String {
    let mut key = ReasonKeyForm::of(&reason.key).0;
    key.truncate(key.find(':').unwrap_or(key.len()));
    key
}

fn item_of(reason: &Reason) -> Option<String> {
    match &reason.why {
        Why::Open(open) | Why::Unlocated(open) => Some(&open.item),
        Why::NotCaught { item }
        | Why::MuchMissing { item, .. }
        | Why::LitresShort { item, .. }
        | Why::AmountUnread { item, .. }
        | Why::TorqueToldApart { item }
        | Why::NotKnown { item }
        | Why::FateUntold { item }
        | Why::NotChecked { item, .. } => Some(item),
        Why::Owed(debt) => debt.work.item.as_ref(),
        Why::SnagOpen { item, .. } => item.as_ref(),
        _ => None,
    }
    .map(|item| item.as_str().to_owned())
}

fn by_of(reason: &Reason) -> Option<String> {
    match &reason.why {
        Why::NotChecked { by, .. } => Some(by.as_str().to_owned()),
        _ => None,
    }
}

pub(super) fn waived(names: &Names<'_>, reason: &Reason) -> Option<String> {
    reason
        .waiver
        .as_ref()
        .map(|waiver| (names.tongue().waived)(&names.person(&waiver.by), &names.text(waiver.words)))
}

pub(super) fn prints(reason: &Reason) -> bool {
    reason.waiver.as_ref().is_some_and(|waiver| waiver.prints)
}

pub(super) fn waivers(gates: &[GateView]) -> Vec<WaiverView> {
    gates
        .iter()
        .flat_map(|gate| {
            let fit = gate
                .fit_to_go
                .iter()
                .map(|r| (&r.text, &r.waived, r.prints));
            let papers = gate.papers.iter().map(|r| (&r.text, &r.waived, r.prints));
            fit.chain(papers)
                .filter_map(|(text, waived, prints)| {
                    Some(WaiverView {
                        gate: gate.gate,
                        reason: text.clone(),
                        waived: waived.clone()?,
                        prints,
                    })
                })
                .collect::<Vec<_>>()
        })
        .collect()
}

pub(super) fn snags(names: &Names<'_>, order: &Order) -> Vec<SnagView> {
    repair::snags::open(order)
        .into_iter()
        .map(|snag| SnagView {
            text: names.snag(&snag.snag, snag.item.as_ref()),
            snag: snag.snag.as_str().to_owned(),
            item: snag.item.map(|item| item.as_str().to_owned()),
            at: snag.at,
        })
        .collect()
}

/// The proofs that are missing, or failed, at the hand-over.
pub(super) fn proofs_needed(names: &Names<'_>) -> Vec<String> {
    let answer = names.reading().answer(Gate::HandOver);
    let needed: BTreeSet<_> = answer
        .fit_to_go
        .iter()
        .filter(|reason| reason.waiver.is_none())
        .filter_map(|reason| match &reason.why {
            Why::ProofMissing { proof, .. } | Why::ProofFailed { proof, .. } => Some(*proof),
            _ => None,
        })
        .collect();
    needed
        .into_iter()
        .map(|proof| ProofIsForm::word(proof).to_owned())
        .collect()
}

/// The names of the proofs told so far, by what was tried.
pub(super) fn proofs_told(order: &Order) -> BTreeMap<String, Vec<String>> {
    let mut out: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        if let repair::Fact::Proved { id, proof, .. } = &filed.fact {
            let told = out.entry(ProofIsForm::word(*proof).to_owned()).or_default();
            told.push(id.as_str().to_owned());
        }
    }
    out
}
