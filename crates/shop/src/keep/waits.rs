//! Erasures that wait: a rule, or the shop's own choice, wants the records of an order kept
//! for some years after it ended. Until then, and for a day at least, the asking stands in the
//! record, nothing is erased, and it can be called off; then it is carried out.

use super::erase::{Breadth, Erased, Whom, carry_out, ended_of, find, whose};
use crate::device::Device;
use crate::phrases::keep as words;
use crate::places::place_of;
use crate::service::Service;
use crate::trouble::{Trouble, TroubleKind};
use crate::world::World;
use jiff::civil::Date;
use jiff::{SignedDuration, Span, Timestamp};
use record::Stream;
use repair::{CommandId, CustomerId, PersonId, ShopFact, Token, papers};
use serde_json::{Value, json};

/// An erasure that waits.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiting {
    /// The asking, by its command.
    pub asked: CommandId,
    /// When it was asked for.
    pub at: Timestamp,
    /// Who took the asking down.
    pub who: PersonId,
    /// Whose words.
    pub customer: CustomerId,
    /// How much of them.
    pub breadth: Breadth,
    /// Why, as a code.
    pub why: Token,
    /// Until when it can be called off before anything is erased, however short the time is
    /// that records are kept for.
    pub earliest: Timestamp,
    /// The day from which records need be kept no longer; `None` while a vehicle of theirs is
    /// here.
    pub until: Option<Date>,
}

/// How long an erasure can be called off at least. By the clock of whoever wrote the asking
/// down, not by the device that sent it.
const DAY: SignedDuration = SignedDuration::from_hours(24);

impl Waiting {
    /// Whether it has waited long enough.
    #[must_use]
    pub fn is_due(&self, now: Timestamp, today: Date) -> bool {
        now >= self.earliest && self.until.is_some_and(|until| today >= until)
    }
}

/// For how many years after an order's end the shop keeps its records: the longer of what
/// it set itself and what the rules of its place say.
#[must_use]
pub fn kept_years(world: &World) -> u32 {
    let of_place = place_of(&world.shop).and_then(crate::places::Place::keep_years);
    world
        .shop
        .records_kept_years()
        .max(of_place.unwrap_or_default())
}

/// The erasures that wait, the oldest first.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn erasures_waiting(service: &Service) -> Result<Vec<Waiting>, Trouble> {
    let world = service.world()?;
    let mut out = Vec::new();
    for (command, stamp, fact) in world.shop.erasures_waiting() {
        let ShopFact::ErasureAsked {
            customer,
            every_word,
            why,
        } = fact
        else {
            continue;
        };
        let breadth = Breadth::of(*every_word);
        let until = match find(&world, &Whom::Customer(customer.clone()), breadth) {
            Ok(found) => Some(kept_until(service, &world, &found)?),
            Err(trouble) if matches!(trouble.kind, TroubleKind::Record | TroubleKind::Away) => {
                return Err(trouble);
            }
            Err(_) => None,
        };
        out.push(Waiting {
            asked: command.clone(),
            earliest: recorded_at(service, command)?
                .checked_add(DAY)
                .unwrap_or(Timestamp::MAX),
            at: stamp.at,
            who: stamp.who.clone(),
            customer: customer.clone(),
            breadth,
            why: why.clone(),
            until,
        });
    }
    out.sort_by(|a, b| (a.at, &a.asked).cmp(&(b.at, &b.asked)));
    Ok(out)
}

/// When a command was written down.
fn recorded_at(service: &Service, command: &CommandId) -> Result<Timestamp, Trouble> {
    let (store, log) = service.record();
    let rows = store.command(log, command.as_str())?;
    let at = rows.first().and_then(|row| row.recorded_at.parse().ok());
    at.ok_or_else(|| {
        Trouble::new(
            TroubleKind::Record,
            crate::phrases::service::the_record(),
            words::no_moment(command.as_str()),
            words::run_verify(),
        )
    })
}

/// Carries out what has waited long enough and was not called off.
///
/// # Errors
/// [`Trouble`], if the record cannot be read or written.
pub fn erase_due(service: &Service) -> Result<Vec<Erased>, Trouble> {
    let mut done = Vec::new();
    loop {
        let world = service.world()?;
        let seq = world.seq(&Stream::Shop)?;
        let (now, today) = (service.now(), service.rules(&world).today());
        let mut waiting = erasures_waiting(service)?.into_iter();
        let Some(next) = waiting.find(|one| one.is_due(now, today)) else {
            return Ok(done);
        };
        let whom = Whom::Customer(next.customer.clone());
        let found = find(&world, &whom, next.breadth)?;
        match carry_out(service, found, &next, seq) {
            Ok(erased) => done.push(erased),
            // Somebody wrote to the shop meanwhile: they may have called it off.
            Err(trouble) if trouble.kind == TroubleKind::Conflict => service.catch_up()?,
            Err(trouble) => return Err(trouble),
        }
    }
}

/// Takes an asking down, unless the same one waits already.
pub(super) fn wait(
    service: &Service,
    found: &Erased,
    breadth: Breadth,
    who: &str,
    why: &Token,
) -> Result<Waiting, Trouble> {
    let same = |waiting: &Waiting| {
        waiting.customer == found.customer
            && (waiting.breadth == breadth || breadth == Breadth::Person)
    };
    if let Some(waiting) = erasures_waiting(service)?.into_iter().find(same) {
        return Ok(waiting);
    }
    let asked = json!({ "erasure-asked": { "customer": found.customer.as_str(),
        "every_word": breadth == Breadth::EveryWord, "why": why.as_str() } });
    tell(service, who, asked)?;
    let waiting = erasures_waiting(service)?.into_iter().find(same);
    waiting.ok_or_else(|| {
        Trouble::new(
            TroubleKind::Conflict,
            words::the_asking(),
            words::called_off_at_once(),
            words::ask_again(),
        )
    })
}

/// Calls every erasure off that waits for this person. Answers which.
///
/// # Errors
/// [`Trouble`]: none waits, who asks may not, or the record cannot be written.
pub fn call_off(service: &Service, whom: &Whom, who: &str) -> Result<Vec<Waiting>, Trouble> {
    let world = service.world()?;
    let customer = whose(&world, whom)?;
    let mut waiting = erasures_waiting(service)?;
    waiting.retain(|one| one.customer == customer);
    if waiting.is_empty() {
        return Err(Trouble::new(
            TroubleKind::NotFound,
            words::the_erasure(),
            words::none_waits(),
            words::waits_on_the_page(),
        ));
    }
    for one in &waiting {
        let fact = json!({ "erasure-called-off": { "asked": one.asked.as_str() } });
        tell(service, who, fact)?;
    }
    Ok(waiting)
}

fn tell(service: &Service, who: &str, fact: Value) -> Result<(), Trouble> {
    let mut device = Device::new("buttonup", who);
    let caller = service.caller(Some(who), "buttonup")?;
    let command = device.command("shop", service.now(), "shop_fact", fact);
    service.command(&caller, command).map(drop)
}

/// Why the machine's clock is not believed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClockDoubt {
    /// What it says.
    pub now: Timestamp,
    /// When the last event was written down, by the clock of then.
    pub last: String,
}

/// What is erased does not come back. A clock that is years ahead would have everything be due:
/// it is believed where what was written last was written within a day of it.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn clock_doubt(service: &Service) -> Result<Option<ClockDoubt>, Trouble> {
    let (store, log) = service.record();
    let head = store.head(log)?;
    let last = store.log(log, head.position.saturating_sub(1), 1)?;
    let Some(last) = last.first() else {
        return Ok(None);
    };
    let now = service.now();
    let at: Option<Timestamp> = last.recorded_at.parse().ok();
    let agrees = at.is_some_and(|at| now.duration_since(at).abs() <= DAY);
    Ok((!agrees).then(|| ClockDoubt {
        now,
        last: last.recorded_at.clone(),
    }))
}

/// The day from which the words of what was found need be kept no longer.
pub(super) fn kept_until(
    service: &Service,
    world: &World,
    found: &Erased,
) -> Result<Date, Trouble> {
    let years = kept_years(world);
    let rules = service.rules(world);
    let mut until = Date::MIN;
    for number in &found.orders {
        let Some(id) = world.order_numbered(*number)? else {
            continue;
        };
        let order = world.order(&id)?;
        if papers::handed_over(&order).is_none() {
            // It was opened by mistake: there is nothing to keep.
            continue;
        }
        if let Some(ended) = ended_of(&order) {
            let kept = rules
                .day(ended)
                .checked_add(Span::new().years(i64::from(years.min(1_000))));
            until = until.max(kept.unwrap_or(Date::MAX));
        }
    }
    Ok(until)
}
