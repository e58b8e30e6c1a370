//! Gates: what the vehicle may do next, yes or no with every reason.
//!
//! Each gate looks at its own part of the account. Every rule is one small function
//! here, so that a false alarm or a missed one is found by reading one page.

use crate::account::{Account, OpenItem};
use crate::code::{SnagIs, Stand};
use crate::decision::Decision;
use crate::fact::Fact;
use crate::item::{Item, PutIn};
use crate::moves::Stated;
use crate::order::Order;
use crate::papers::papers;
use crate::proofs::{not_checked, proofs};
use crate::reading::OrderReading;
use crate::reason::{Reason, ReasonKey, Waivable, Waiver, Why};
use crate::rules::Rules;
use crate::snags::OpenSnag;
use crate::stock::adrift;
use crate::trade::Trade;
use states::{Gate, ItemId, Kind, State, System, Zone};
use std::collections::{BTreeMap, BTreeSet};

/// The answer of one gate: two lists, never one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    pub gate: Gate,
    /// What the technician must see to.
    pub fit_to_go: Vec<Reason>,
    /// What the desk must see to.
    pub papers: Vec<Reason>,
}

impl Answer {
    /// Whether the vehicle may.
    #[must_use]
    pub fn may(&self) -> bool {
        !self.reasons().any(Reason::shuts)
    }

    /// Both lists, the technician's first.
    pub fn reasons(&self) -> impl Iterator<Item = &Reason> {
        self.fit_to_go.iter().chain(&self.papers)
    }
}

/// Asks one gate.
#[must_use]
pub fn may(order: &Order, gate: Gate, rules: &Rules) -> Answer {
    OrderReading::of(order, rules).answer(gate).clone()
}

/// Asks one gate of an order already read.
pub(crate) fn answer(reading: &OrderReading<'_>, gate: Gate) -> Answer {
    let order = reading.order();
    let waivers = waivers(order);
    let waived = |mut reasons: Vec<Reason>| {
        for reason in &mut reasons {
            // What a reason allows now counts, not what it allowed when it was waived: the
            // item may have turned out to be one of the safety class since.
            reason.waiver = waivers
                .get(&(gate, reason.key.clone(), reason.figure.clone()))
                .filter(|_| reason.waivable != Waivable::Never)
                .map(|waiver| Waiver {
                    prints: waiver.prints || reason.waivable == Waivable::Prints,
                    ..waiver.clone()
                });
        }
        reasons
    };
    let handing_over = gate == Gate::HandOver;
    Answer {
        gate,
        fit_to_go: waived(fit_to_go(reading, gate)),
        papers: if handing_over {
            waived(papers(order, reading.rules()))
        } else {
            Vec::new()
        },
    }
}

/// Every reason against a gate: its own, and those of the gates that it asks of. So road
/// never opens before roll, roll never before lower, road never before start, and handing
/// over to drive away never before road.
fn fit_to_go(reading: &OrderReading<'_>, gate: Gate) -> Vec<Reason> {
    let asked = Gate::ALL.into_iter().filter(|asked| gate.includes(*asked));
    let mut out: Vec<Reason> = Vec::new();
    // The gate's own reasons stand first.
    let others = asked.filter(|asked| *asked != gate);
    for asked in [gate].into_iter().chain(others) {
        for reason in of_gate(reading, asked).into_iter().map(Reason::new) {
            if !out.iter().any(|known| known.key == reason.key) {
                out.push(reason);
            }
        }
    }
    out
}

/// The reasons that a gate has by itself.
fn of_gate(reading: &OrderReading<'_>, gate: Gate) -> Vec<Why> {
    let (order, account) = (reading.order(), reading.account());
    let mut out: Vec<Why> = Vec::new();
    for open in &account.open {
        match &open.known {
            Some(item) if is_unlocated(account, item) => out.push(Why::Unlocated(open.clone())),
            _ if gate == Gate::Start && is_left_off(order, account, open) => {}
            _ if concerns(account, gate, open) => out.push(Why::Open(open.clone())),
            _ => {}
        }
    }
    out.extend(not_known(account));
    out.extend(told_apart(account, gate));
    out.extend(fluids(reading, gate));
    out.extend(
        reading
            .debts()
            .iter()
            .filter(|debt| debt.gates.contains(&gate))
            .cloned()
            .map(Why::Owed),
    );
    if matches!(gate, Gate::Road | Gate::HandOver) {
        out.extend(not_checked(order, account));
    }
    out.extend(snags(order, account, gate));
    if gate == Gate::Road {
        out.extend(complaints(order));
    }
    if gate == Gate::HandOver {
        out.extend(proofs(order, account));
        out.extend(adrift(order));
    }
    out
}

/// Complaints about what holds people's lives, as long as nobody has said what was found.
fn complaints(order: &Order) -> Vec<Why> {
    crate::papers::lines(order)
        .into_iter()
        .filter(|line| line.about_safety && line.cause.is_none())
        .map(|line| Why::ComplaintNotLookedAt { line: line.line })
        .collect()
}

/// What nobody knows and may be of the safety class, wherever it stands.
fn not_known(account: &Account) -> Vec<Why> {
    let moved = |item: &&Item| account.is_disturbed(&item.id);
    account
        .items
        .values()
        .filter(|item| item.may_be_of_safety())
        .filter(moved)
        .filter(|item| account.open_item(&item.id).is_none())
        .map(|item| Why::NotKnown {
            item: item.id.clone(),
        })
        .collect()
}

fn is_unlocated(account: &Account, item: &Item) -> bool {
    let mut readings = account.readings(item).iter();
    readings.any(|item| item.system == System::Unknown)
}

/// Groups that were tightened, or will be, to torques that people told apart: which one
/// holds is asked before the road.
fn told_apart(account: &Account, gate: Gate) -> Vec<Why> {
    if !matches!(gate, Gate::Road | Gate::HandOver) {
        return Vec::new();
    }
    let moved = |item: &ItemId| account.is_disturbed(item);
    account
        .told_apart
        .iter()
        .filter(|(item, apart)| !apart.patterns.is_empty() && moved(item))
        .map(|(item, _)| Why::TorqueToldApart { item: item.clone() })
        .collect()
}

/// Whether a start without this belt is planned, by somebody who knew that it is off. A move
/// of it since, or another on another phone, and it has to be said again.
fn is_left_off(order: &Order, account: &Account, open: &OpenItem) -> bool {
    let is_belt = open
        .known
        .as_ref()
        .is_some_and(|item| item.kind == Kind::Belt);
    is_belt
        && stands(open).all(|stand| stand.state == State::Off)
        && order.beside_moves().any(|(_, filed)| match &filed.fact {
            Fact::BeltLeftOff { item, after, .. } => {
                let seen = account.moves.seen_by(after);
                account.moves.name(item) == &open.item
                    && account
                        .moves
                        .frontier(item)
                        .iter()
                        .all(|id| seen.contains(id))
            }
            _ => false,
        })
}

/// Whether an open item stands at this gate.
fn concerns(account: &Account, gate: Gate, open: &OpenItem) -> bool {
    let Some(item) = &open.known else {
        return true;
    };
    account
        .readings(item)
        .iter()
        .any(|item| reads_as_concerning(account, gate, item, open))
}

fn reads_as_concerning(account: &Account, gate: Gate, item: &Item, open: &OpenItem) -> bool {
    if item.known_trade().is_some() {
        let all_in_place = stands(open).all(|stand| stand.state.in_place());
        let by_trade = gate == Gate::HandOver || item.trade_shuts(gate, all_in_place);
        let half_fastened = item.kind.is_counted() && any_in_place(account, item);
        let by_what_holds = match gate {
            Gate::Lower | Gate::Roll => is_hanging(account, item, open),
            Gate::Road => half_fastened || is_hanging(account, item, open),
            _ => false,
        };
        if by_trade || by_what_holds || !item.told_otherwise() {
            return by_trade || by_what_holds;
        }
    }
    let at_lower = || at_lower(item, open) || is_hanging(account, item, open);
    match gate {
        Gate::HandOver => true,
        Gate::GoLive => at_go_live(item),
        Gate::Start => at_go_live(item) || at_start(item),
        Gate::Lower => at_lower(),
        Gate::Roll => at_lower() || at_roll(item),
        Gate::Road => {
            at_go_live(item)
                || at_start(item)
                || at_lower()
                || at_roll(item)
                || at_road(account, item)
        }
    }
}

/// Nothing bare or hanging on a circuit, fans clear, high voltage released. The
/// battery's own terminals are what going live closes.
fn at_go_live(item: &Item) -> bool {
    match item.kind {
        Kind::Connector => item.system != System::Battery,
        Kind::PutIn => near_fans(item),
        Kind::Fluid => false,
        // Other work is taught and tried with the battery on.
        Kind::Work => item.system == System::HighVoltage,
        _ => matches!(
            item.system,
            System::Electrical | System::HighVoltage | System::Restraints
        ),
    }
}

/// A cooling fan may start by itself once the battery is on: what could be caught.
fn near_fans(item: &Item) -> bool {
    let loose = !matches!(
        item.put_in,
        Some(PutIn::Clamp | PutIn::Plug | PutIn::Pin | PutIn::Chips | PutIn::Tang)
    );
    loose
        && (matches!(item.zone, Zone::Above | Zone::Unknown)
            || matches!(item.system, System::Cooling | System::DriveBelt))
}

/// Oil and coolant in, belt on, nothing inside near moving parts.
fn at_start(item: &Item) -> bool {
    match item.kind {
        Kind::PutIn => {
            matches!(item.zone, Zone::Above | Zone::WheelWell | Zone::Unknown) || item.system.runs()
        }
        Kind::Fluid => item.system.stops_without_fluid() && item.system != System::Brakes,
        // Bleeding and levels are seen to with the engine running.
        Kind::Work => false,
        Kind::Hose | Kind::Belt if item.system == System::Steering => true,
        _ => matches!(
            item.system,
            System::Battery
                | System::Fuel
                | System::Oil
                | System::Cooling
                | System::DriveBelt
                | System::Engine
                | System::Transmission
        ),
    }
}

/// Wheels on, at least hand-tight; nothing under it.
fn at_lower(item: &Item, open: &OpenItem) -> bool {
    match item.kind {
        Kind::PutIn => {
            is_below(item)
                && matches!(
                    item.put_in,
                    Some(PutIn::Lamp | PutIn::Tool | PutIn::Cord | PutIn::Other) | None
                )
        }
        Kind::Fluid | Kind::Work => false,
        _ => carries_weight(item) && stands(open).any(|stand| !stand.state.in_place()),
    }
}

/// Wheels tight, brakes and steering whole.
fn at_roll(item: &Item) -> bool {
    if item.kind == Kind::PutIn {
        return matches!(
            item.system,
            System::Brakes | System::Wheels | System::Steering | System::Suspension
        );
    }
    match item.system {
        System::Wheels | System::Brakes | System::Suspension => true,
        System::Steering => item.kind != Kind::Fluid,
        _ => false,
    }
}

/// Everything that runs, everything inside, and covers that are only half fastened: a
/// cover that is off altogether cannot fall off.
fn at_road(account: &Account, item: &Item) -> bool {
    item.kind == Kind::PutIn
        || item.system.runs()
        || item.kind.is_counted() && any_in_place(account, item)
}

fn stands(open: &OpenItem) -> impl Iterator<Item = &Stand> {
    open.pieces.iter().flat_map(|piece| &piece.stands)
}

/// Whether any piece of an item is in its place, at home or not.
fn any_in_place(account: &Account, item: &Item) -> bool {
    account.positions(&item.id).into_iter().any(|position| {
        let stands = account.moves.stands(&item.id, position);
        stands.iter().any(|stand| stand.state.in_place()) || stands.is_empty()
    })
}

/// Where it could fall from under the vehicle; a zone nobody has told may be there.
fn is_below(item: &Item) -> bool {
    matches!(item.zone, Zone::Below | Zone::WheelWell | Zone::Unknown)
}

/// Under the vehicle, a group that is cracked or only partly out may let its part drop.
fn is_hanging(account: &Account, item: &Item, open: &OpenItem) -> bool {
    let loosened = stands(open).any(|stand| match stand.state {
        State::Cracked => true,
        state => !state.in_place(),
    });
    is_below(item) && item.kind.is_counted() && loosened && any_in_place(account, item)
}

/// Fluids that are dripping, and fluids of which much is missing.
fn fluids(reading: &OrderReading<'_>, gate: Gate) -> Vec<Why> {
    let (account, litres) = (reading.account(), reading.litres());
    let mut out = Vec::new();
    for item in account
        .items
        .values()
        .filter(|item| item.kind == Kind::Fluid)
    {
        let sums = litres.get(&item.id).cloned().unwrap_or_default();
        let low = account.open_item(&item.id).is_some();
        // A level that is only seen low came out of nothing that could be caught.
        let drained = account.is_disturbed(&item.id);
        // Something went into a pan, however its amount was written.
        let caught = !sums.out.is_zero() || !sums.out_unread.is_empty();
        if low && drained && !caught && matches!(gate, Gate::Lower | Gate::Roll | Gate::Road) {
            out.push(Why::NotCaught {
                item: item.id.clone(),
            });
        }
        if gate == Gate::HandOver && !low && sums.unknown() && !sums.cold_level_good {
            let unread = sums.out_unread.iter().chain(&sums.poured_unread);
            out.push(Why::AmountUnread {
                item: item.id.clone(),
                amounts: unread.cloned().collect(),
            });
        }
        if gate == Gate::HandOver && !low && sums.much_is_missing() {
            out.push(Why::MuchMissing {
                item: item.id.clone(),
                out_litres: sums.out,
                in_litres: sums.poured,
            });
        } else if gate == Gate::HandOver && !low && sums.warns() {
            out.push(Why::LitresShort {
                item: item.id.clone(),
                out_litres: sums.out,
                in_litres: sums.poured,
            });
        }
        if gate == Gate::HandOver && !low && !caught && was_drained(account, item) {
            out.push(Why::FateUntold {
                item: item.id.clone(),
            });
        }
    }
    out
}

/// Coolant that stood low through us: it is poisonous, and local rules want to know where it
/// went. As long as it is low, [`Why::NotCaught`] asks.
fn was_drained(account: &Account, item: &Item) -> bool {
    item.system == System::Cooling
        && account
            .moves
            .live(&item.id)
            .any(|(_, node)| node.stated == Stated::Moved && node.change.left.state == State::Low)
}

/// Snags that have not ended: all at hand-over, on the road those of what runs, and of what is
/// of the safety class wherever the thing itself would stand.
fn snags(order: &Order, account: &Account, gate: Gate) -> Vec<Why> {
    let stands = |snag: &OpenSnag| {
        let Some(item) = &snag.item else {
            let about = snag.about.as_ref();
            return gate == Gate::HandOver
                || about.is_some_and(|about| told_snag_shuts(about, snag.what, gate));
        };
        let known = account.items.get(account.moves.name(item));
        known.is_none_or(|item| {
            let mut readings = account.readings(item).iter();
            gate == Gate::HandOver || readings.any(|item| snag_shuts(item, snag.what, gate))
        })
    };
    crate::snags::open(order)
        .into_iter()
        .filter(stands)
        .map(|snag| Why::SnagOpen {
            snag: snag.snag,
            item: snag.item,
        })
        .collect()
}

/// The same for a snag that names no item, by what its words speak of. Where nobody knows what that
/// is, it does not go on the road.
fn told_snag_shuts(about: &Trade, what: SnagIs, gate: Gate) -> bool {
    if !about.is_known() {
        return gate == Gate::Road;
    }
    if about.safety && !is_whole(what) {
        return about.shuts(gate);
    }
    gate == Gate::Road && (about.system.runs() || about.safety)
}

/// It may be worn or seized, but it is all there.
fn is_whole(what: SnagIs) -> bool {
    matches!(
        what,
        SnagIs::Stuck | SnagIs::Rounded | SnagIs::Worn | SnagIs::Corroded | SnagIs::Other
    )
}

/// Whether an item with such a fault shuts a gate: of the safety class, and no longer whole, it
/// shuts what it would shut if it were off.
fn snag_shuts(item: &Item, what: SnagIs, gate: Gate) -> bool {
    if item.is_safety() && !is_whole(what) {
        return match item.known_trade() {
            Some(_) => item.trade_shuts(gate, false),
            None => shuts_when_off(item, gate),
        };
    }
    let runs = item.system.runs() || item.system == System::Unknown || item.is_safety();
    gate == Gate::Road && runs
}

/// What an item shuts by its system while it is off.
fn shuts_when_off(item: &Item, gate: Gate) -> bool {
    match gate {
        Gate::GoLive => at_go_live(item),
        Gate::Start => at_start(item),
        Gate::Lower => carries_weight(item),
        Gate::Roll => at_roll(item),
        Gate::Road | Gate::HandOver => true,
    }
}

fn carries_weight(item: &Item) -> bool {
    matches!(
        item.system,
        System::Wheels | System::Suspension | System::Steering
    )
}

/// The waivers that stand, by gate, reason, and how much of it there was.
fn waivers(order: &Order) -> BTreeMap<(Gate, ReasonKey, String), Waiver> {
    let withdrawn: BTreeSet<_> = order
        .decisions()
        .iter()
        .filter_map(|decided| match &decided.decision {
            Decision::WaiverWithdrawn { waiver } => Some(waiver),
            _ => None,
        })
        .collect();
    order
        .decisions()
        .iter()
        .filter(|decided| !withdrawn.contains(&decided.command))
        .filter_map(|decided| match &decided.decision {
            Decision::Waived {
                gate,
                reason,
                figure,
                prints,
                words,
            } => Some((
                (*gate, reason.clone(), figure.clone()),
                Waiver {
                    command: decided.command.clone(),
                    by: decided.stamp.who.clone(),
                    words: *words,
                    prints: *prints,
                },
            )),
            _ => None,
        })
        .collect()
}
