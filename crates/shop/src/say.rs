//! Plain words for states, reasons, debts and refusals. The core speaks in codes; this
//! is the one place that turns them into what a person reads.

mod english;
mod german;
mod tongue;

use crate::snapshot::Snapshot;
use crate::world::World;
pub use calculators::capital;
use repair::price::{Payer, TooLarge};
use repair::{
    Account, Debt, Fact, Gate, Item, ItemId, Kind, Language, Noted, OldPartFate, OpenItem, Order,
    OrderReading, Outcome, PartId, PersonId, PieceIs, Position, ProofIs, Reason, Refusal, Resolved,
    SnagIs, Stand, Standing, State, Until, Why, Words, WorkIs, Zone,
};
use rust_decimal::Decimal;
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
pub use tongue::Tongue;

/// What somebody sent, as it is said back to them: not more of it than fits a line.
#[must_use]
pub fn shortened(sent: &str) -> Cow<'_, str> {
    const LONGEST: usize = 80;
    match sent.char_indices().nth(LONGEST) {
        None => sent.into(),
        Some((end, _)) => format!("{}\u{2026}", &sent[..end]).into(),
    }
}

/// The names needed to speak about one order.
pub struct Names<'a> {
    snap: &'a Snapshot<'a>,
    world: &'a World,
    order: &'a Order,
    reading: OrderReading<'a>,
    tongue: &'static Tongue,
}

impl<'a> Names<'a> {
    /// Reads the names off an order.
    #[must_use]
    pub fn of(snap: &'a Snapshot<'a>, world: &'a World, order: &'a Order) -> Self {
        Self {
            reading: OrderReading::of(order, &snap.rules()),
            snap,
            world,
            order,
            tongue: Tongue::of(Language::English),
        }
    }

    /// The same in this language.
    #[must_use]
    pub fn speaking(mut self, language: Language) -> Self {
        self.tongue = Tongue::of(language);
        self
    }

    /// The phrases it speaks in.
    #[must_use]
    pub fn tongue(&self) -> &'static Tongue {
        self.tongue
    }

    /// Words that somebody typed, if they are still there.
    #[must_use]
    pub fn text_of(&self, words: Option<Words>) -> Option<String> {
        self.snap.texts().text_of(words)
    }

    /// The account the names were read from.
    #[must_use]
    pub fn account(&self) -> &Account {
        self.reading.account()
    }

    /// The order as it reads now.
    #[must_use]
    pub fn reading(&self) -> &OrderReading<'a> {
        &self.reading
    }

    /// The map the order works by, with what was copied of it.
    #[must_use]
    pub fn adoption(&self) -> Option<repair::Adoption<'a>> {
        repair::adoption(self.order)
    }

    /// What a person is called.
    #[must_use]
    pub fn person(&self, person: &PersonId) -> String {
        self.world.shop.everyone().get(person).map_or_else(
            || person.as_str().to_owned(),
            |(name, _)| self.snap.texts().text(*name),
        )
    }

    /// The words behind a commitment.
    #[must_use]
    pub fn text(&self, words: Words) -> String {
        self.snap.texts().text(words)
    }

    /// What an item is called.
    #[must_use]
    pub fn label(&self, item: &ItemId) -> String {
        match self.account().items.get(self.account().moves.name(item)) {
            Some(known) => self.snap.texts().text(known.label),
            None => (self.tongue.undescribed)(item.as_str()),
        }
    }

    /// What an item is called; by its own name, before anybody touched it.
    #[must_use]
    pub fn known(&self, item: &ItemId) -> String {
        match self.account().items.get(self.account().moves.name(item)) {
            Some(known) => self.snap.texts().text(known.label),
            None => item.as_str().replace('-', " "),
        }
    }

    /// What an item is called, with its size.
    #[must_use]
    pub fn label_and_size(&self, item: &Item) -> String {
        let label = self.snap.texts().text(item.label);
        match &item.size {
            Some(size) if !label.contains(size.as_str()) => format!("{label} {}", size.as_str()),
            _ => label,
        }
    }

    /// An open item in one line: what, how many, where they stand.
    #[must_use]
    pub fn open(&self, open: &OpenItem) -> String {
        let tongue = self.tongue;
        let Some(item) = &open.known else {
            return (tongue.unsaid)(&self.label(&open.item));
        };
        let label = self.label_and_size(item);
        if open.disputed {
            return (tongue.disputed)(&label, &self.claims(item, open));
        }
        match item.kind {
            Kind::Fluid => (tongue.low)(&label, &self.in_and_out(&item.id)),
            Kind::PutIn => (tongue.still_inside)(&label),
            _ => format!("{label}: {}", groups(tongue, item, open)),
        }
    }

    fn claims(&self, item: &Item, open: &OpenItem) -> String {
        let said: BTreeSet<String> = open
            .pieces
            .iter()
            .flat_map(|piece| self.account().moves.heads(&open.item, piece.position))
            .map(|(_, node)| {
                let state = (self.tongue.state)(item.kind, node.change.left.state);
                (self.tongue.says)(&self.person(&node.stamp.who), state)
            })
            .collect();
        said.into_iter().collect::<Vec<_>>().join(", ")
    }

    /// Litres of a fluid out and in, in words.
    #[must_use]
    pub fn in_and_out(&self, item: &ItemId) -> String {
        match self.reading.litres().get(item) {
            Some(sums) => (self.tongue.litres)(
                &sums.out.normalize().to_string(),
                &sums.poured.normalize().to_string(),
            ),
            None => self.tongue.litres_untold.to_owned(),
        }
    }

    /// A reason in one line.
    #[must_use]
    pub fn reason(&self, reason: &Reason) -> String {
        let said = self.tongue;
        let label = |item: &ItemId| self.label(item);
        let figure = |figure: &Decimal| figure.normalize().to_string();
        match &reason.why {
            Why::Open(open) => self.open(open),
            Why::Unlocated(open) => (said.unlocated)(&self.open(open)),
            Why::NotCaught { item } => (said.not_caught)(&label(item)),
            Why::MuchMissing {
                item,
                out_litres,
                in_litres,
            } => (said.much_missing)(&label(item), &figure(out_litres), &figure(in_litres)),
            Why::AmountUnread { item, amounts } => {
                let amounts: Vec<String> = amounts
                    .iter()
                    .map(|amount| format!("\u{201c}{}\u{201d}", amount.as_str()))
                    .collect();
                (said.amount_unread)(&label(item), &amounts.join(", "))
            }
            Why::LitresShort {
                item,
                out_litres,
                in_litres,
            } => (said.litres_short)(&label(item), &figure(out_litres), &figure(in_litres)),
            Why::FateUntold { item } => (said.fate_untold)(&label(item)),
            Why::NotKnown { item } => (said.not_known)(&label(item)),
            Why::ComplaintNotLookedAt { line } => (said.not_looked_at)(&self.complaint(line)),
            Why::TorqueToldApart { item } => (said.torque_told_apart)(&label(item)),
            Why::Owed(debt) => self.debt(debt),
            Why::SnagOpen { snag, item } => self.snag(snag, item.as_ref()),
            Why::NotChecked { item, by, .. } => (said.not_checked)(&label(item), &self.person(by)),
            Why::ProofMissing { proof, .. } => (said.proof_missing)((said.proof)(*proof)),
            Why::ProofFailed {
                proof: ProofIs::CoolantMix,
                ..
            } => said.mix_outside.to_owned(),
            Why::ProofFailed { proof, .. } => (said.proof_failed)((said.proof)(*proof)),
            Why::PartAdrift { part, quantity } => {
                (said.part_adrift)(&figure(quantity), &self.part(part))
            }
            Why::OldPartAdrift { part } => (said.old_part_adrift)(&self.part(part)),
            Why::SubletOut { sublet } => (said.sublet_out)(&self.sublet(sublet)),
            Why::LineUnfinished { line } => (said.line_unfinished)(&self.complaint(line)),
            Why::NotPriced => said.not_priced.to_owned(),
            Why::NoConsent { payer } => (said.no_consent)((said.payer)(*payer)),
            Why::OverCeiling { payer, over } => {
                (said.over_ceiling)(&over.by.to_string(), (said.payer)(*payer))
            }
            Why::NotCharged => said.not_charged.to_owned(),
            Why::Unpaid { balance } => (said.unpaid)(&balance.to_string()),
            Why::KeysHere => said.keys_here.to_owned(),
        }
    }

    /// What keeps an order from being voided, and how it is ended, in one line.
    #[must_use]
    pub fn standing(&self, standing: &Standing) -> String {
        let told = "if it was told by mistake, take it back";
        match standing {
            Standing::Moved { item } => {
                format!(
                    "{} was moved: hand the order over instead; {told}",
                    self.label(item)
                )
            }
            Standing::Fluid { item } => format!(
                "{}, {}: hand the order over instead; {told}",
                self.label(item),
                self.in_and_out(item)
            ),
            Standing::Snag { snag } => {
                format!(
                    "{}: hand the order over instead; {told}",
                    self.snag(snag, None)
                )
            }
            Standing::Part { part, quantity } => format!(
                "{} × {}: send back, put into stock or cancel",
                quantity.normalize(),
                self.part(part)
            ),
            Standing::Core { part } => {
                format!(
                    "Core of {}: send it back, or say where it went",
                    self.part(part)
                )
            }
            Standing::OldPart { part } => {
                format!(
                    "Old {}: say whether it is kept, a core or scrap",
                    self.part(part)
                )
            }
            Standing::Sublet { sublet } => {
                format!("{} is still away: fetch it back", self.sublet(sublet))
            }
            Standing::Invoice => "The invoice is written: hand the order over instead".to_owned(),
            Standing::Money { payer, amount } => {
                let amount = amount.map_or_else(|| TooLarge.to_string(), |sum| sum.to_string());
                format!("{amount} from {}: give it back first", payer_name(*payer))
            }
            Standing::Keys => "We still have the keys: give them back".to_owned(),
        }
    }

    /// A debt in one line.
    #[must_use]
    pub fn debt(&self, debt: &Debt) -> String {
        let what = match debt.words {
            Some(words) => self.text(words),
            None => (self.tongue.work)(&debt.work),
        };
        let on = match &debt.work.item {
            Some(item) => format!(": {}", self.label(item)),
            None => String::new(),
        };
        format!("{what}{on}{}", until(self.tongue, &debt.until))
    }

    /// A snag in one line.
    #[must_use]
    pub fn snag(&self, snag: &repair::SnagId, item: Option<&ItemId>) -> String {
        match self.snag_at(snag, item) {
            Some((at, what)) => (self.tongue.not_resolved)(&at, what),
            None => self.tongue.snag_open.to_owned(),
        }
    }

    /// A snag as it was found, in one line.
    #[must_use]
    pub fn snag_found(&self, snag: &repair::SnagId, item: Option<&ItemId>) -> String {
        match self.snag_at(snag, item) {
            Some((at, what)) => format!("{at}: {what}"),
            None => self.tongue.snag_open.to_owned(),
        }
    }

    /// Where a snag is, and what.
    fn snag_at(
        &self,
        snag: &repair::SnagId,
        item: Option<&ItemId>,
    ) -> Option<(String, &'static str)> {
        let found = self
            .order
            .beside_moves()
            .find_map(|(_, filed)| match &filed.fact {
                Fact::SnagFound {
                    snag: id,
                    what,
                    at,
                    words,
                    ..
                } if id == snag => Some((*what, at.clone(), *words)),
                _ => None,
            });
        let (what, at, words) = found?;
        let where_ = item.map_or_else(
            || {
                self.snap
                    .texts()
                    .text_of(words)
                    .unwrap_or_else(|| self.tongue.the_vehicle.to_owned())
            },
            |item| self.label(item),
        );
        let at = if at.is_empty() {
            String::new()
        } else {
            format!(" {}", positions(&at))
        };
        Some((format!("{where_}{at}"), (self.tongue.snag)(what)))
    }

    /// Everything that is declined, in one line: things, work on the price, snags.
    #[must_use]
    pub fn declined(
        &self,
        items: &[ItemId],
        at: &[Position],
        entries: &[Words],
        snags: &[repair::SnagId],
    ) -> String {
        let mut things: Vec<String> = items.iter().map(|item| self.label(item)).collect();
        if let (Some(last), false) = (things.last_mut(), at.is_empty()) {
            *last = format!("{last} {}", positions(at));
        }
        let entries = entries.iter().map(|entry| self.text(*entry));
        let open = repair::snags::open(self.order);
        let snags = snags.iter().map(|snag| {
            let known = open.iter().find(|one| one.snag == *snag);
            self.snag(snag, known.and_then(|one| one.item.as_ref()))
        });
        things
            .into_iter()
            .chain(entries)
            .chain(snags)
            .collect::<Vec<_>>()
            .join(", ")
    }

    /// What a part is called.
    #[must_use]
    pub fn part(&self, part: &PartId) -> String {
        self.order
            .beside_moves()
            .find_map(|(_, filed)| match &filed.fact {
                Fact::PartNeeded {
                    part: id, label, ..
                } if id == part => Some(self.snap.texts().text(*label)),
                _ => None,
            })
            .unwrap_or_else(|| (self.tongue.a_part)(part.as_str()))
    }

    fn sublet(&self, sublet: &repair::SubletId) -> String {
        self.order
            .beside_moves()
            .find_map(|(_, filed)| match &filed.fact {
                Fact::SubletOut {
                    sublet: id, what, ..
                } if id == sublet => Some(self.snap.texts().text(*what)),
                _ => None,
            })
            .unwrap_or_else(|| self.tongue.work_sent_out.to_owned())
    }

    fn complaint(&self, line: &repair::LineId) -> String {
        repair::papers::lines(self.order)
            .into_iter()
            .find(|known| known.line == *line)
            .map_or_else(
                || self.tongue.a_line.to_owned(),
                |line| self.snap.texts().text(line.complaint),
            )
    }
}

/// How many pieces stand where, in the order of the ladder.
fn groups(tongue: &Tongue, item: &Item, open: &OpenItem) -> String {
    let mut by_stand: BTreeMap<(Option<Stand>, bool), Vec<Position>> = BTreeMap::new();
    for piece in &open.pieces {
        let stand = piece.stands.first().copied();
        let old = stand.is_some_and(|stand| {
            stand.state == piece.home.state && piece.home.piece != PieceIs::Original
        });
        by_stand
            .entry((stand, old))
            .or_default()
            .push(piece.position);
    }
    let counted = item.kind.is_counted() && item.positions().len() > 1;
    by_stand
        .into_iter()
        .map(|((stand, old), at)| {
            let word = stand.map_or(tongue.not_seen, |stand| {
                (tongue.state)(item.kind, stand.state)
            });
            let word = if old {
                tongue.old_one_on.to_owned()
            } else {
                with_passes(tongue, word, stand)
            };
            if counted {
                format!("{} {word} ({})", at.len(), positions(&at))
            } else {
                word
            }
        })
        .collect::<Vec<_>>()
        .join(", ")
}

fn with_passes(tongue: &Tongue, word: &str, stand: Option<Stand>) -> String {
    match stand.map(|stand| stand.state) {
        Some(State::Loose { passes }) if passes > 0 => (tongue.pass_done)(word, passes.into()),
        _ => word.to_owned(),
    }
}

/// Positions in words: `1–4, 6`.
///
/// ```
/// assert_eq!(shop::say::positions(&[1, 2, 3, 4, 6]), "1–4, 6");
/// assert_eq!(shop::say::positions(&[3]), "3");
/// ```
#[must_use]
pub fn positions(at: &[Position]) -> String {
    let sorted: BTreeSet<Position> = at.iter().copied().collect();
    let mut runs: Vec<(Position, Position)> = Vec::new();
    for position in sorted {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == position => *last = position,
            _ => runs.push((position, position)),
        }
    }
    runs.into_iter()
        .map(|(first, last)| match last - first {
            0 => first.to_string(),
            1 => format!("{first}, {last}"),
            _ => format!("{first}–{last}"),
        })
        .collect::<Vec<_>>()
        .join(", ")
}

/// A state in words.
#[must_use]
pub fn state(kind: Kind, state: State) -> &'static str {
    match state {
        State::On => "on",
        State::Off => "off",
        State::Tight => "tight",
        State::Cracked => "cracked loose",
        State::Out => "out",
        State::Loose { .. } => "on, not tight",
        State::Stub { holds: true } => "stuck",
        State::Stub { holds: false } => "snapped",
        State::Plugged => "plugged",
        State::Unplugged => "unplugged",
        State::AtLevel => "at level",
        State::Low => "low",
        State::Done => "done",
        State::Due => "due",
        State::Outside => "out of the vehicle",
        State::Inside if kind == Kind::PutIn => "inside",
        State::Inside => "in it",
    }
}

/// A gate in words.
#[must_use]
pub fn gate(gate: Gate) -> &'static str {
    match gate {
        Gate::GoLive => "Battery on",
        Gate::Start => "Start",
        Gate::Lower => "Lower",
        Gate::Roll => "Roll",
        Gate::Road => "Road",
        Gate::HandOver => "Hand over",
    }
}

/// A payer in words.
#[must_use]
pub fn payer_name(payer: Payer) -> &'static str {
    match payer {
        Payer::Customer => "the customer",
        Payer::Warranty => "the warranty",
        Payer::Goodwill => "goodwill",
    }
}

/// Work in words, as the trade has them.
pub(crate) fn work_words(work: &repair::Work) -> String {
    (Tongue::of(Language::English).work)(work)
}

/// An older sort of work in words.
#[must_use]
pub fn work_name(work: WorkIs) -> &'static str {
    match work {
        WorkIs::Bleed => "Bleed",
        WorkIs::LevelWarm => "See the level warm",
        WorkIs::LevelCold => "See the level cold",
        WorkIs::LookForLeaks => "Look for leaks",
        WorkIs::TorqueAgain => "Re-torque",
        WorkIs::TorqueAfterDistance => "Re-torque after 50 to 100 km",
        WorkIs::PumpPedal => "Pump the brake pedal",
        WorkIs::Relearn => "Relearn",
        WorkIs::Alignment => "Check the alignment",
        WorkIs::ClockAndWindows => "Set the clock and windows",
        WorkIs::CleanFace => "Clean the face",
        WorkIs::Other => "Other work",
    }
}

/// A proof in words.
#[must_use]
pub fn proof_name(proof: ProofIs) -> &'static str {
    match proof {
        ProofIs::RoadTest => "road test",
        ProofIs::LeakTest => "leak test of the cooling system",
        ProofIs::BrakeTest => "brake test",
        ProofIs::FuelLeakLook => "look for fuel leaks under pressure",
        ProofIs::RestraintLamp => "check of the restraint lamp",
        ProofIs::CoolantMix => "coolant mix within its limits",
        ProofIs::Other => "test",
    }
}

/// An outcome in words.
#[must_use]
pub fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Held => "passed",
        Outcome::Failed => "failed",
        Outcome::NotProvoked => "couldn't reproduce",
    }
}

/// A snag in words.
#[must_use]
pub fn snag_name(snag: SnagIs) -> &'static str {
    match snag {
        SnagIs::Snapped => "snapped",
        SnagIs::Stuck => "stuck",
        SnagIs::Stripped => "thread stripped",
        SnagIs::Rounded => "head rounded",
        SnagIs::Torn => "torn",
        SnagIs::Worn => "worn",
        SnagIs::Broken => "broken",
        SnagIs::Bent => "bent",
        SnagIs::Corroded => "corroded",
        SnagIs::Leaking => "leaking",
        SnagIs::Missing => "missing",
        SnagIs::Other => "not as it should be",
    }
}

/// How a snag ended, in words.
#[must_use]
pub fn resolved(how: Resolved) -> &'static str {
    match how {
        Resolved::AsBefore => "out, all as before",
        Resolved::ThreadChased => "thread chased",
        Resolved::WireInsert => "wire insert",
        Resolved::Bushing => "solid bushing",
        Resolved::Oversize => "larger thread",
        Resolved::LongerBolt => "longer bolt",
        Resolved::NewPart => "new part",
        Resolved::LeftByConsent => "left, by consent",
        Resolved::Other => "another way",
    }
}

/// Where on the vehicle, in words.
#[must_use]
pub fn zone_name(zone: Zone) -> &'static str {
    match zone {
        Zone::Above => "engine bay",
        Zone::Below => "underneath",
        Zone::WheelWell => "wheels",
        Zone::Cabin => "cabin",
        Zone::Rear => "rear",
        Zone::Outside => "outside",
        Zone::Unknown => "place not told",
    }
}

/// What was noted at a walk-round, in words.
#[must_use]
pub fn noted_name(what: Noted) -> &'static str {
    match what {
        Noted::WarningLamp => "warning lamp lit",
        Noted::Damage => "scratch or damage",
        Noted::Missing => "something missing",
        Noted::EarlierRepair => "repaired before",
        Noted::LockingKey => "locking-nut key",
        Noted::Leak => "leak",
        Noted::Other => "noted",
    }
}

/// What became of an old part, in words.
#[must_use]
pub fn old_part(fate: OldPartFate) -> &'static str {
    match fate {
        OldPartFate::Kept => "kept for the customer",
        OldPartFate::Given => "given to the customer",
        OldPartFate::Core => "sent back as a core",
        OldPartFate::Scrap => "scrapped",
    }
}

/// By when and after how far, behind what is due then.
pub(crate) fn until(tongue: &Tongue, until: &Until) -> String {
    match until {
        Until::Before(_) => String::new(),
        Until::Later { date, distance } => {
            let distance = distance.as_ref().map(repair::Written::as_str);
            (tongue.later)(*date, distance)
        }
    }
}

/// A refusal in words.
#[must_use]
pub fn refusal(refusal: &Refusal) -> String {
    match refusal {
        Refusal::NotYoursToWaive { by, .. } => format!(
            "only {} may let this pass",
            match by {
                repair::WaivedBy::Desk => "who sees to the papers",
                repair::WaivedBy::InCharge => "the technician whose order it is, or the owner,",
                repair::WaivedBy::Foreman => "the owner",
            }
        ),
        Refusal::StillOpen { gate: at, reasons } => format!(
            "{}: no, {} {} against it",
            gate(*at),
            reasons.len(),
            if reasons.len() == 1 {
                "reason stands"
            } else {
                "reasons stand"
            }
        ),
        Refusal::OverCeiling { payer, over } => format!(
            "{} is {} over the {} that {} agreed to",
            over.sum,
            over.by,
            over.ceiling.amount,
            payer_name(*payer)
        ),
        Refusal::BadCredit { fault } => capital(&format!("{}: {}", fault.at, fault.what)),
        other => {
            let text = other.to_string();
            capital(text.split(';').next().unwrap_or_default())
        }
    }
}

/// How a refusal is mended.
#[must_use]
pub fn mend(refusal: &Refusal) -> String {
    match refusal {
        Refusal::StillOpen { .. } => "close each, or have it waived where that may be".to_owned(),
        Refusal::OverCeiling { .. } => {
            "ask for consent to more, or write it down to what was agreed".to_owned()
        }
        other => {
            let text = other.to_string();
            text.split_once(';').map_or_else(
                || "look at the order again".to_owned(),
                |(_, mend)| mend.trim().to_owned(),
            )
        }
    }
}

/// A sum with its currency's digits.
#[must_use]
pub fn money(amount: Decimal, minor_digits: u32) -> String {
    repair::price::rounded(amount, minor_digits).to_string()
}

/// A day as it is said: `Mon 30 Nov`. What is no day stays as it is written.
#[must_use]
pub fn day_words(day: &str) -> String {
    day.parse::<jiff::civil::Date>().map_or_else(
        |_| day.to_owned(),
        |day| day.strftime("%a %-d %b").to_string(),
    )
}
