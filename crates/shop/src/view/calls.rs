//! Whom to ring now and what is waited for, over all orders that are here.

use super::ask::{AskView, asks};
use super::planned::{kept, planned};
use super::row::{COMES, OrderRow, promised, row};
use super::{goods, story};
use crate::floor::{COMES_LATE, days};
use crate::phrases::calls as words;
use crate::say::{Names, day_words};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::owing_due;
use jiff::{SignedDuration, Timestamp};
use record::form::Form as _;
use record::v1::codes::{PartStepForm, PayerForm, RungAboutForm};
use repair::{Decision, Fact, Order, OrderId, Rules, RungAbout, VehicleFact, papers};
use rust_decimal::Decimal;
use serde::Serialize;
use utoipa::ToSchema;

/// What sort of thing is to be seen to, the most pressing first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CallKind {
    /// It left, and something came in after.
    Left,
    /// Somebody has to be asked.
    Ask,
    /// What was promised will not be kept.
    Promise,
    /// It was to come, and is not here.
    NotCome,
    /// It can be collected.
    Ready,
    /// Work that it left with is due.
    Due,
    /// Its fault did not show itself: has it come back?
    FollowUp,
    /// Somebody said no, and nothing was done about it yet.
    SaidNo,
    /// Something is late.
    Late,
    /// Something is on its way, or away, or somebody was told and has to come.
    Waits,
    /// An old part has to go back.
    Core,
}

impl CallKind {
    /// Whether somebody has to be rung now.
    #[must_use]
    pub fn rings(self) -> bool {
        self <= Self::FollowUp
    }

    /// What they are rung about, in the record's word.
    #[must_use]
    pub fn about(self) -> Option<RungAboutForm> {
        Some(match self {
            Self::Ask => RungAboutForm::Approval,
            Self::Promise => RungAboutForm::Promise,
            Self::Ready => RungAboutForm::Ready,
            Self::Due => RungAboutForm::Due,
            Self::FollowUp => RungAboutForm::FollowUp,
            _ => return None,
        })
    }
}

/// One thing to see to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct CallView {
    /// What sort.
    pub kind: CallKind,
    /// What to do, or what is waited for, in one sentence.
    pub what: String,
    /// The number to ring; empty if nobody is to be rung, or none is known.
    pub phone: String,
    /// The order's number.
    pub number: u64,
    /// The order's name in the record.
    pub order: String,
    /// The vehicle.
    pub vehicle: String,
    /// The vehicle's name in the record.
    pub vehicle_id: Option<String>,
    /// The customer.
    pub customer: String,
    /// What is left under the customer's ceiling, if there is one and it holds.
    pub left: Option<crate::Amount>,
    /// The page of the order where it is seen to.
    pub page: String,
    /// When they were rung about it last and did not answer.
    pub tried: Option<String>,
    /// What they are asked, where it is that.
    pub ask: Option<AskView>,
}

/// Everything to ring about or wait for, the most pressing first.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn calls(snap: &Snapshot<'_>) -> Result<Vec<CallView>, Trouble> {
    let world = snap.world();
    let rules = snap.rules();
    let mut out = Vec::new();
    for (number, id) in world.orders_here()? {
        let order = world.order(&id)?;
        if !papers::is_voided(&order) {
            out.extend(Here::of(snap, &rules, &id, &order, number)?.calls()?);
        }
    }
    slipping(snap, &mut out)?;
    out.extend(due_later(snap, &rules)?);
    out.extend(follow_ups(snap, &rules)?);
    out.sort_by_key(|call| (call.kind, call.number));
    Ok(out)
}

/// Promises that the plan of the days ahead hardly keeps, where nobody is rung about them yet.
fn slipping(snap: &Snapshot<'_>, calls: &mut Vec<CallView>) -> Result<(), Trouble> {
    let world = snap.world();
    let rules = snap.rules();
    for promise in planned(&*days(snap)?).promises {
        let rung = |call: &CallView| {
            call.number == promise.number
                && (call.kind.rings() || call.kind == CallKind::Waits && call.page == "promise")
        };
        let Some(hour) = promise.promised.filter(|_| promise.slips) else {
            continue;
        };
        let Some(id) = world.order_numbered(promise.number)? else {
            continue;
        };
        if calls.iter().any(rung) {
            continue;
        }
        let order = world.order(&id)?;
        let here = Here::of(snap, &rules, &id, &order, promise.number)?;
        if let Some(told) = here.told_of_promise() {
            calls.push(told);
            continue;
        }
        let what = words::ring_slips(
            promise.customer,
            hour,
            kept(promise.chance.unwrap_or_default()),
            promise.say,
        );
        calls.push(here.call(CallKind::Promise, what, "promise"));
    }
    Ok(())
}

/// An order with what is read of it for its calls.
struct Here<'a> {
    names: Names<'a>,
    order: &'a Order,
    rules: &'a Rules,
    row: OrderRow,
    asks: Vec<AskView>,
    id: &'a OrderId,
}

/// When somebody was rung about something.
struct Rung {
    at: Timestamp,
    reached: bool,
}

impl<'a> Here<'a> {
    fn of(
        snap: &'a Snapshot<'_>,
        rules: &'a Rules,
        id: &'a OrderId,
        order: &'a Order,
        number: u64,
    ) -> Result<Self, Trouble> {
        let world = snap.world();
        let names = Names::of(snap, world, order);
        Ok(Self {
            row: row(snap, &names, number)?,
            asks: asks(snap, world, order, rules)?,
            names,
            order,
            rules,
            id,
        })
    }

    /// All that it calls for.
    fn calls(&self) -> Result<Vec<CallView>, Trouble> {
        let mut out = Vec::new();
        if self.row.handed_over {
            if !self.names.reading().alarms().is_empty() {
                let what = words::left_look_then_ring().to_owned();
                out.push(self.call(CallKind::Left, what, ""));
            }
            return Ok(out);
        }
        for ask in self.asks.iter().filter(|ask| ask.must) {
            out.push(self.asked(ask));
        }
        out.extend(self.promise());
        out.extend(self.not_come());
        if self.row.word == "ready" {
            out.push(self.ready());
        }
        let away = away(&self.names, self.order, self.rules);
        out.extend(
            away.into_iter()
                .map(|(kind, what, page)| self.call(kind, what, &page)),
        );
        Ok(out)
    }

    /// A call of the customer's.
    fn call(&self, kind: CallKind, what: String, page: &str) -> CallView {
        let customer = self
            .asks
            .iter()
            .find(|ask| ask.payer == PayerForm::Customer);
        CallView {
            kind,
            what,
            phone: customer
                .filter(|_| kind.rings())
                .map(|ask| ask.phone.clone())
                .unwrap_or_default(),
            number: self.row.number,
            order: self.id.as_str().to_owned(),
            vehicle: self.row.vehicle.clone(),
            vehicle_id: self.row.vehicle_id.clone(),
            customer: self.row.customer.clone(),
            left: customer.and_then(|ask| ask.left.clone()),
            page: page.to_owned(),
            tried: kind.about().and_then(|about| self.tried(about)),
            ask: None,
        }
    }

    /// Somebody who has to be asked; or who said no, or when they will answer.
    fn asked(&self, ask: &AskView) -> CallView {
        let page = match ask.payer {
            PayerForm::Customer => "ask".to_owned(),
            PayerForm::Warranty => "ask?payer=warranty".to_owned(),
            PayerForm::Goodwill => "ask?payer=goodwill".to_owned(),
        };
        if let Some(no) = self.said_no(ask) {
            return CallView {
                phone: String::new(),
                ..self.call(CallKind::SaidNo, no, "desk")
            };
        }
        let due = repair::answer_due(self.order);
        let hour = |at| story::hour(self.rules, at);
        if let Some(due) = due.filter(|due| *due > self.rules.now) {
            let what = words::answers_by(&ask.who, hour(due), &ask.sentence);
            return self.call(CallKind::Waits, what, &page);
        }
        let late = due.map_or_else(String::new, |due| words::wanted_to_answer_by(hour(due)));
        CallView {
            phone: ask.phone.clone(),
            ask: Some(ask.clone()),
            ..self.call(CallKind::Ask, format!("{late}{}", ask.sentence), &page)
        }
    }

    /// That a payer said no to the price as it still stands.
    fn said_no(&self, ask: &AskView) -> Option<String> {
        let answers = self
            .order
            .beside_moves()
            .filter_map(|(command, filed)| match &filed.fact {
                Fact::Consented {
                    payer,
                    agreed,
                    after,
                    ..
                } if PayerForm::of(payer) == ask.payer => {
                    Some(((filed.stamp.at, command), *agreed, after))
                }
                _ => None,
            });
        let ((at, _), agreed, after) = answers.max_by(|a, b| a.0.cmp(&b.0))?;
        let unchanged = papers::priced_by(self.order).is_none_or(|priced| after.contains(priced));
        if agreed || !unchanged {
            return None;
        }
        let at = story::hour(self.rules, at);
        let sum = ask.sum.as_ref().map_or_else(String::new, words::to_sum);
        let down = match &ask.ceiling {
            Some(ceiling) => words::charge_no_more(ceiling),
            None => String::new(),
        };
        Some(words::said_no(&ask.who, sum, at, down))
    }

    /// A promise that is past, or that a part or sublet cannot keep.
    fn promise(&self) -> Option<CallView> {
        let at = promised(self.order)?;
        // What is not here yet is rung about for that.
        if self.row.word == "ready" || self.row.word == COMES {
            return None;
        }
        let hour = story::hour(self.rules, at);
        let open = self.row.open + self.row.inside;
        let what = if at <= self.rules.now {
            words::ring_not_ready(&self.row.customer, hour, open)
        } else {
            let due = goods::last_due(self.order).filter(|due| *due > self.rules.day(at))?;
            words::ring_comes_later(&self.row.customer, hour, day_words(&due.to_string()))
        };
        let told = self.told_of_promise();
        Some(told.unwrap_or_else(|| self.call(CallKind::Promise, what, "promise")))
    }

    /// A vehicle that was to come, and after half an hour has not.
    fn not_come(&self) -> Option<CallView> {
        let at = repair::expected(self.order)?;
        let late = SignedDuration::from_mins(COMES_LATE);
        if at.checked_add(late).is_ok_and(|late| late > self.rules.now) {
            return None;
        }
        let hour = story::hour(self.rules, at);
        let what = words::ring_not_come(&self.row.customer, hour);
        Some(self.call(CallKind::NotCome, what, "#place"))
    }

    /// That the customer knows of a promise that is not kept, and was promised nothing since.
    fn told_of_promise(&self) -> Option<CallView> {
        let told = self.reached(RungAbout::Promise)?;
        let since = last_promise(self.order).is_none_or(|promised| promised < told);
        let hour = story::hour(self.rules, told);
        let what = words::told_no_new_time(&self.row.customer, hour);
        since.then(|| self.call(CallKind::Waits, what, "promise"))
    }

    fn ready(&self) -> CallView {
        let customer = &self.row.customer;
        let owes = papers::price(self.order)
            .and_then(|price| price.totals.get(&repair::price::Payer::Customer).cloned())
            .map_or(Decimal::ZERO, |totals| totals.gross);
        let paid = papers::paid(self.order, repair::price::Payer::Customer).unwrap_or_default();
        let balance = owes.saturating_sub(paid);
        let to_pay = if balance > Decimal::ZERO {
            let digits = papers::minor_digits(self.order);
            words::comma_to_pay(crate::say::money(balance, digits))
        } else {
            String::new()
        };
        if let Some(told) = self.reached(RungAbout::Ready) {
            let hour = story::hour(self.rules, told);
            let what = words::knows_it_is_ready(customer, hour, to_pay);
            return self.call(CallKind::Waits, what, "hand-over");
        }
        let what = words::ring_ready(customer, to_pay);
        self.call(CallKind::Ready, what, "hand-over")
    }

    fn rung(&self, wanted: RungAbout) -> Option<Rung> {
        rung(self.order, wanted)
    }

    /// When somebody was reached about it last; nothing if they were tried in vain since.
    fn reached(&self, about: RungAbout) -> Option<Timestamp> {
        self.rung(about)
            .filter(|rung| rung.reached)
            .map(|rung| rung.at)
    }

    /// When they were rung last and did not answer.
    fn tried(&self, about: RungAboutForm) -> Option<String> {
        let about = about.read().ok()?;
        let rung = self.rung(about).filter(|rung| !rung.reached)?;
        Some(story::hour(self.rules, rung.at))
    }
}

/// When somebody was rung about something last, since it was taken in for the last time.
fn rung(order: &Order, wanted: RungAbout) -> Option<Rung> {
    let back = order
        .decisions()
        .iter()
        .filter(|decided| matches!(decided.decision, Decision::TakenBack { .. }))
        .map(|decided| decided.stamp.at)
        .max();
    order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Rung { about, reached, .. } if *about == wanted => {
                Some(((filed.stamp.at, command), *reached))
            }
            _ => None,
        })
        .filter(|((at, _), _)| back.is_none_or(|back| back < *at))
        .max_by(|a, b| a.0.cmp(&b.0))
        .map(|((at, _), reached)| Rung { at, reached })
}

/// When a promise was given last.
fn last_promise(order: &Order) -> Option<Timestamp> {
    let promises = order
        .beside_moves()
        .filter(|(_, filed)| matches!(filed.fact, Fact::Promised { .. }));
    promises.map(|(_, filed)| filed.stamp.at).max()
}

/// Work that vehicles left with and that is due by now, where nobody knows of it yet.
fn due_later(snap: &Snapshot<'_>, rules: &Rules) -> Result<Vec<CallView>, Trouble> {
    let world = snap.world();
    let mut out = Vec::new();
    for vehicle in world.owing_by(rules.today())? {
        let orders = world.orders_of_vehicle(&vehicle)?;
        // Where it is here, it stands on its page.
        let is_here =
            |order: &Order| papers::handed_over(order).is_none() && !papers::is_voided(order);
        if let Some((_, last)) = orders.first()
            && is_here(&*world.order(last)?)
        {
            continue;
        }
        let carried = world.vehicle(&vehicle)?;
        for (_, stamp, fact) in carried.facts() {
            let VehicleFact::LeftOwing { order: id, .. } = fact else {
                continue;
            };
            let stands = carried.owing().any(|owing| owing == fact);
            let due = owing_due(fact, stamp.at).filter(|due| *due <= rules.today());
            let (Some(_), true) = (due, stands) else {
                continue;
            };
            let (Some(number), order) = (world.number_of(id)?, world.order(id)?) else {
                continue;
            };
            let here = Here::of(snap, rules, id, &order, number)?;
            if here.reached(RungAbout::Due).is_none() {
                let what = words::ring_due(
                    &here.row.customer,
                    lower_first(&super::standing_text(snap, fact)),
                );
                out.push(here.call(CallKind::Due, what, ""));
            }
        }
    }
    Ok(out)
}

fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// Vehicles that left some days ago with a fault that did not show itself.
fn follow_ups(snap: &Snapshot<'_>, rules: &Rules) -> Result<Vec<CallView>, Trouble> {
    let world = snap.world();
    let mut out = Vec::new();
    for (number, id) in world.follow_ups_by(rules.today())? {
        let order = world.order(&id)?;
        let here = Here::of(snap, rules, &id, &order, number)?;
        let what = words::ask_whether_back(&here.row.customer, &here.row.complaint);
        out.push(here.call(CallKind::FollowUp, what, ""));
    }
    Ok(out)
}

/// What is on its way to us, away from us, or has to go back.
fn away(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<(CallKind, String, String)> {
    let mut out = Vec::new();
    let due = |due: &Option<String>| {
        due.as_ref()
            .map_or(String::new(), |due| words::comma_due(day_words(due)))
    };
    let kind = |late| {
        if late {
            CallKind::Late
        } else {
            CallKind::Waits
        }
    };
    for part in goods::parts(names, order, rules) {
        let has = |step| part.steps.contains_key(&step);
        let from = part.from.as_ref().map_or(String::new(), words::from_whom);
        if has(PartStepForm::Ordered) && !has(PartStepForm::Received) && part.adrift != "0" {
            let due = due(&part.due);
            let what = match part.late {
                true => words::late_part(&part.quantity, &part.label, from, due),
                false => words::part_on_its_way(&part.quantity, &part.label, from, due),
            };
            out.push((kind(part.late), what, "parts".to_owned()));
        }
        if part.core.is_some() && part.old.is_none() && has(PartStepForm::Fitted) {
            let what = words::send_back_core(&part.label);
            out.push((CallKind::Core, what, "parts".to_owned()));
        }
    }
    for sublet in goods::sublets(names, order, rules)
        .iter()
        .filter(|one| !one.back)
    {
        let due = due(&sublet.due);
        let what = match sublet.late {
            true => words::late_at(&sublet.to, &sublet.what, &sublet.since, due),
            false => words::away_at(&sublet.to, &sublet.what, &sublet.since, due),
        };
        out.push((kind(sublet.late), what, "parts".to_owned()));
    }
    out
}
