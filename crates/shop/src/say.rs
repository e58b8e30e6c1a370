//! Plain words for states, reasons, debts and refusals. The core speaks in codes; this
//! is the one place that turns them into what a person reads.

pub(crate) mod dates;
mod english;
mod german;
pub(crate) mod in_each;
pub(crate) mod of_price;
mod spoken_text;
mod tongue;

use crate::amount::Amount;
use crate::mending::{CALCULATOR, Told};
use crate::phrases::say as words;
use crate::snapshot::Snapshot;
use crate::world::World;
pub use calculators::capital;
use repair::price::Payer;
use repair::{
    Account, Debt, Fact, Gate, Item, ItemId, Kind, Language, Noted, OldPartFate, OpenItem, Order,
    OrderReading, Outcome, PartId, PersonId, PieceIs, Position, ProofIs, Reason, Refusal, Resolved,
    SnagIs, Stand, Standing, State, System, Until, Why, Words, WorkIs, Zone,
};
use rust_decimal::Decimal;
pub use spoken_text::SpokenText;
use std::borrow::Cow;
use std::cell::OnceCell;
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
    language: Language,
    /// Steps of ways that were taken: as whoever took one said it, and as it is read here.
    steps: OnceCell<BTreeMap<String, String>>,
}

impl<'a> Names<'a> {
    /// Reads the names off an order, to be said in the language that is spoken.
    #[must_use]
    pub fn of(snap: &'a Snapshot<'a>, world: &'a World, order: &'a Order) -> Self {
        Self {
            reading: OrderReading::of(order, &snap.rules()),
            snap,
            world,
            order,
            tongue: Tongue::spoken(),
            language: spoken(),
            steps: OnceCell::new(),
        }
    }

    /// The same in this language.
    #[must_use]
    pub fn speaking(mut self, language: Language) -> Self {
        self.tongue = Tongue::of(language);
        self.language = language;
        self.steps = OnceCell::new();
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

    /// A sum as the language of these names writes it.
    fn sum(&self, sum: Decimal) -> String {
        let language = match self.language {
            Language::English => ::phrases::Language::English,
            Language::German => ::phrases::Language::German,
        };
        ::phrases::speaking(language, || Amount::from(sum).to_string())
    }

    /// The words behind a commitment.
    #[must_use]
    pub fn text(&self, words: Words) -> String {
        self.snap.texts().text(words)
    }

    /// Words of work that is due: a step of a way that was taken is read in the language of these
    /// names, whoever took it.
    #[must_use]
    pub fn work_text(&self, words: Words) -> String {
        let said = self.text(words);
        let steps = self.steps.get_or_init(|| {
            let language = match self.language {
                Language::English => ::phrases::Language::English,
                Language::German => ::phrases::Language::German,
            };
            ::phrases::speaking(language, || steps_taken(self.order))
        });
        steps.get(&said).cloned().unwrap_or(said)
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
                    .map(|amount| (said.quoted)(amount.as_str()))
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
                (said.over_ceiling)(&self.sum(over.by), (said.payer)(*payer))
            }
            Why::NotCharged => said.not_charged.to_owned(),
            Why::Unpaid { balance } => (said.unpaid)(&self.sum(*balance)),
            Why::KeysHere => said.keys_here.to_owned(),
        }
    }

    /// What keeps an order from being voided, and how it is ended, in one line.
    #[must_use]
    pub fn standing(&self, standing: &Standing) -> String {
        let mistake = words::taken_back_if_a_mistake();
        match standing {
            Standing::Moved { item } => words::was_moved(self.label(item), mistake),
            Standing::Fluid { item } => {
                words::fluid_moved(self.label(item), self.in_and_out(item), mistake)
            }
            Standing::Snag { snag } => words::snag_stands(self.snag(snag, None), mistake),
            Standing::Part { part, quantity } => {
                words::parts_stand(quantity.normalize(), self.part(part))
            }
            Standing::Core { part } => words::core_stands(self.part(part)),
            Standing::OldPart { part } => words::old_part_stands(self.part(part)),
            Standing::Sublet { sublet } => words::sublet_stands(self.sublet(sublet)),
            Standing::Invoice => words::invoice_stands().to_owned(),
            Standing::Money { payer, amount } => {
                let amount = amount.map_or_else(
                    || words::sum_too_large().to_owned(),
                    |sum| Amount::from(sum).to_string(),
                );
                words::money_stands(amount, payer_name(*payer))
            }
            Standing::Keys => words::keys_stand().to_owned(),
        }
    }

    /// A debt in one line.
    #[must_use]
    pub fn debt(&self, debt: &Debt) -> String {
        let what = match debt.words {
            Some(words) => self.work_text(words),
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

/// The steps of every way to mend a thread that was taken, as said and as read in what is spoken.
fn steps_taken(order: &Order) -> BTreeMap<String, String> {
    let outputs = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Calculated {
                calculator,
                version,
                outputs,
                ..
            } if calculator.as_str() == CALCULATOR.0 && *version == CALCULATOR.1 => Some(outputs),
            _ => None,
        });
    let told = outputs.filter_map(|outputs| serde_json::from_str::<Told>(outputs).ok());
    told.flat_map(Told::steps_read)
        .map(|(said, read)| (capital(&said), capital(&read)))
        .collect()
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
    (Tongue::spoken().state)(kind, state)
}

/// A gate in words.
#[must_use]
pub fn gate(gate: Gate) -> &'static str {
    match gate {
        Gate::GoLive => words::gate_battery(),
        Gate::Start => words::gate_start(),
        Gate::Lower => words::gate_lower(),
        Gate::Roll => words::gate_roll(),
        Gate::Road => words::gate_road(),
        Gate::HandOver => words::gate_hand_over(),
    }
}

/// A payer in words.
#[must_use]
pub fn payer_name(payer: Payer) -> &'static str {
    (Tongue::spoken().payer)(payer)
}

/// What work of no sort of the trade is called in English, in what is spoken; other words stay as
/// they are.
pub(crate) fn own_work_spoken(english: &str) -> String {
    const ALL: [WorkIs; 12] = [
        WorkIs::Bleed,
        WorkIs::LevelWarm,
        WorkIs::LevelCold,
        WorkIs::LookForLeaks,
        WorkIs::TorqueAgain,
        WorkIs::TorqueAfterDistance,
        WorkIs::PumpPedal,
        WorkIs::Relearn,
        WorkIs::Alignment,
        WorkIs::ClockAndWindows,
        WorkIs::CleanFace,
        WorkIs::Other,
    ];
    let kept = Tongue::of(Language::English).work_name;
    let mut all = ALL.into_iter();
    let found = all.find(|work| kept(*work) == english);
    found.map_or_else(
        || english.to_owned(),
        |work| (Tongue::spoken().work_name)(work).to_owned(),
    )
}

/// Work in words, as the trade has them: always in English, for what is compared and kept.
pub(crate) fn work_words(work: &repair::Work) -> String {
    (Tongue::of(Language::English).work)(work)
}

/// Work in words, as the trade has them.
pub(crate) fn work_said(work: &repair::Work) -> String {
    (Tongue::spoken().work)(work)
}

/// An older sort of work in words.
#[must_use]
pub fn work_name(work: WorkIs) -> &'static str {
    (Tongue::spoken().work_name)(work)
}

/// A proof in words.
#[must_use]
pub fn proof_name(proof: ProofIs) -> &'static str {
    (Tongue::spoken().proof)(proof)
}

/// An outcome in words.
#[must_use]
pub fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Held => words::passed(),
        Outcome::Failed => words::failed(),
        Outcome::NotProvoked => words::could_not_reproduce(),
    }
}

/// A snag in words.
#[must_use]
pub fn snag_name(snag: SnagIs) -> &'static str {
    (Tongue::spoken().snag)(snag)
}

/// How a snag ended, in words.
#[must_use]
pub fn resolved(how: Resolved) -> &'static str {
    match how {
        Resolved::AsBefore => words::out_all_as_before(),
        Resolved::ThreadChased => words::thread_chased(),
        Resolved::WireInsert => words::wire_insert(),
        Resolved::Bushing => words::solid_bushing(),
        Resolved::Oversize => words::larger_thread(),
        Resolved::LongerBolt => words::longer_bolt(),
        Resolved::NewPart => words::new_part(),
        Resolved::LeftByConsent => words::left_by_consent(),
        Resolved::Other => words::another_way(),
    }
}

/// Where on the vehicle, in words.
#[must_use]
pub fn zone_name(zone: Zone) -> &'static str {
    match zone {
        Zone::Above => words::engine_bay(),
        Zone::Below => words::underneath(),
        Zone::WheelWell => words::wheels(),
        Zone::Cabin => words::cabin(),
        Zone::Rear => words::rear(),
        Zone::Outside => words::outside(),
        Zone::Unknown => words::place_not_told(),
    }
}

/// What was noted at a walk-round, in words.
#[must_use]
pub fn noted_name(what: Noted) -> &'static str {
    match what {
        Noted::WarningLamp => words::warning_lamp_lit(),
        Noted::Damage => words::scratch_or_damage(),
        Noted::Missing => words::something_missing(),
        Noted::EarlierRepair => words::repaired_before(),
        Noted::LockingKey => words::locking_nut_key(),
        Noted::Leak => words::leak(),
        Noted::Other => words::noted(),
    }
}

/// What became of an old part, in words.
#[must_use]
pub fn old_part(fate: OldPartFate) -> &'static str {
    (Tongue::spoken().old_part)(fate)
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
        Refusal::StillOpen { gate: at, reasons } => words::reasons_stand(reasons.len(), gate(*at)),
        Refusal::OverCeiling { payer, over } => words::over_ceiling(
            Amount::from(over.sum),
            Amount::from(over.by),
            Amount::from(over.ceiling.amount),
            payer_name(*payer),
        ),
        Refusal::BadCredit { fault } => capital(&words::refused_at(
            of_price::place(fault),
            of_price::what(&fault.wrong),
        )),
        Refusal::BadEntry { nth, what } => words::bad_entry(nth + 1, of_price::entry(*what).0),
        other => in_short(other).0.to_owned(),
    }
}

/// How a refusal is mended.
#[must_use]
pub fn mend(refusal: &Refusal) -> String {
    match refusal {
        Refusal::StillOpen { .. } => words::close_each().to_owned(),
        Refusal::OverCeiling { .. } => words::ask_for_more().to_owned(),
        Refusal::BadCredit { fault } => of_price::how(&fault.wrong),
        Refusal::BadEntry { what, .. } => of_price::entry(*what)
            .1
            .unwrap_or(words::look_at_the_order_again())
            .to_owned(),
        other => in_short(other)
            .1
            .unwrap_or(words::look_at_the_order_again())
            .to_owned(),
    }
}

/// A refusal that names nothing, and how it is mended.
fn in_short(refusal: &Refusal) -> (&'static str, Option<&'static str>) {
    match refusal {
        Refusal::AlreadyOpen => (words::already_open(), None),
        Refusal::NotYoursToWaive { by, .. } => (
            match by {
                repair::WaivedBy::Desk => words::only_papers_may_waive(),
                repair::WaivedBy::InCharge => words::only_in_charge_may_waive(),
                repair::WaivedBy::Foreman => words::only_owner_may_waive(),
            },
            None,
        ),
        Refusal::NotOpen => (words::no_such_order(), Some(words::open_it_first())),
        Refusal::Voided => (words::was_voided(), Some(words::open_a_new_one())),
        Refusal::HandedOver => (words::was_handed_over(), Some(words::take_it_back_in())),
        Refusal::NotHandedOver => (words::was_not_handed_over(), None),
        Refusal::NoConsent { .. } => (words::nobody_agreed(), Some(words::record_the_consent())),
        Refusal::NotPriced => (words::no_price_yet(), Some(words::set_one_first())),
        Refusal::PriceChanged { .. } => {
            (words::price_changed(), Some(words::look_at_both_and_set()))
        }
        Refusal::SumChanged(_) => (words::sum_changed(), Some(words::look_at_both_and_decide())),
        Refusal::FigureChanged { .. } => (
            words::figure_changed(),
            Some(words::look_and_decide_again()),
        ),
        Refusal::NothingToCharge => (
            words::all_on_an_invoice(),
            Some(words::goes_on_the_next_one()),
        ),
        Refusal::NoSuchInvoice { .. } => (
            words::no_such_invoice(),
            Some(words::look_at_the_invoices()),
        ),
        Refusal::TooLarge => (
            words::sum_beyond_measure(),
            Some(words::look_at_prices_again()),
        ),
        Refusal::NothingToWriteDown => (
            words::within_what_was_agreed(),
            Some(words::nothing_to_write_down()),
        ),
        Refusal::NoSuchReason { .. } => (words::no_such_reason(), Some(words::look_again())),
        Refusal::CannotBeWaived { .. } => (words::can_not_be_waived(), Some(words::put_it_right())),
        Refusal::NoSuchWaiver => (words::no_such_waiver(), None),
        Refusal::NotVoidable { .. } => (
            words::something_still_stands(),
            Some(words::bring_each_to_its_end()),
        ),
        Refusal::BoxesNotCounted => (words::count_the_boxes(), None),
        Refusal::NotSigned => (words::have_the_list_signed(), None),
        // They name what is wrong with what, and are said by whoever asked.
        Refusal::StillOpen { .. }
        | Refusal::OverCeiling { .. }
        | Refusal::BadCredit { .. }
        | Refusal::BadEntry { .. } => ("", None),
    }
}

/// A sum with its currency's digits.
#[must_use]
pub fn money(amount: Decimal, minor_digits: u32) -> Amount {
    repair::price::rounded(amount, minor_digits).into()
}

/// What stands in place of a sum beyond all measure.
#[must_use]
pub(crate) fn too_large() -> &'static str {
    words::sum_too_large()
}

/// Figures within a text as they are written in what is spoken: with a comma in German.
#[must_use]
pub fn figures(text: &str) -> String {
    ::phrases::figures(text)
}

/// A text as it stands within a sentence: small in English, as it is in German, where nouns are
/// not.
#[must_use]
pub(crate) fn within(text: &str) -> String {
    match spoken() {
        Language::English => text.to_lowercase(),
        Language::German => text.to_owned(),
    }
}

/// The language that is spoken, for what is told apart by language.
#[must_use]
pub fn spoken() -> Language {
    match ::phrases::spoken() {
        ::phrases::Language::English => Language::English,
        ::phrases::Language::German => Language::German,
    }
}

/// A work of the trade, such as `bleed-brakes`, in words; nothing where the trade has none of that
/// code.
pub(crate) fn sort_of_work(sort: &str) -> Option<String> {
    match spoken() {
        Language::English => crate::trade_read::work_in_words(sort),
        Language::German => german::sort_of_work(sort),
    }
}

/// A system of the vehicle in words.
#[must_use]
pub fn system_name(system: System) -> &'static str {
    match system {
        System::Brakes => words::brakes(),
        System::Steering => words::steering(),
        System::Wheels => words::wheels(),
        System::Suspension => words::suspension(),
        System::Fuel => words::fuel(),
        System::Restraints => words::restraints(),
        System::DriveBelt => words::drive_belt(),
        System::HighVoltage => words::high_voltage(),
        System::Cooling => words::cooling(),
        System::Oil => words::oil(),
        System::Engine => words::engine(),
        System::Transmission => words::transmission(),
        System::Intake => words::intake(),
        System::Exhaust => words::exhaust(),
        System::Battery => words::battery(),
        System::Electrical => words::electrical(),
        System::Climate => words::climate(),
        System::Body => words::body(),
        System::Unknown => words::system_unknown(),
    }
}

/// A day as it is said: `Mon 30 Nov`. What is no day stays as it is written.
#[must_use]
pub fn day_words(day: &str) -> String {
    let date = day.parse::<jiff::civil::Date>();
    date.map_or_else(|_| day.to_owned(), dates::day)
}
