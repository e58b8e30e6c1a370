//! Erasures that wait: a rule, or the shop's own choice, wants the records of an order kept
//! for some years after it ended. Until then the asking stands in the record, and nothing
//! is erased; then it is carried out.

use super::erase::{Breadth, Erased, Erasing, Whom, carry_out, ended_of, find};
use crate::device::Device;
use crate::places::place_of;
use crate::service::Service;
use crate::trouble::{Trouble, TroubleKind};
use crate::world::World;
use jiff::civil::Date;
use jiff::{Span, Timestamp};
use repair::{CommandId, CustomerId, PersonId, ShopFact, Token, papers};
use serde_json::json;

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
    /// The day from which it can be carried out; `None` while a vehicle of theirs is here.
    pub until: Option<Date>,
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

/// Carries out what has waited long enough.
///
/// # Errors
/// [`Trouble`], if the record cannot be read or written.
pub fn erase_due(service: &Service) -> Result<Vec<Erased>, Trouble> {
    let today = today(service)?;
    let mut done = Vec::new();
    for waiting in erasures_waiting(service)? {
        if waiting.until.is_none_or(|until| today < until) {
            continue;
        }
        let found = find(
            &*service.world()?,
            &Whom::Customer(waiting.customer),
            waiting.breadth,
        )?;
        let why = (waiting.who.as_str(), &waiting.why);
        done.push(carry_out(service, found, why, Some(&waiting.asked))?);
    }
    Ok(done)
}

/// Takes an asking down, unless the same one waits already.
pub(super) fn wait(
    service: &Service,
    found: &Erased,
    breadth: Breadth,
    who: &str,
    why: &Token,
    until: Date,
) -> Result<Erasing, Trouble> {
    let customer = found.customer.clone();
    let waits = erasures_waiting(service)?.into_iter().any(|waiting| {
        waiting.customer == customer && (waiting.breadth == breadth || breadth == Breadth::Person)
    });
    if !waits {
        let asked = json!({ "erasure-asked": { "customer": customer.as_str(),
            "every_word": breadth == Breadth::EveryWord, "why": why.as_str() } });
        let mut device = Device::new("buttonup", who);
        let caller = service.caller(Some(who), "buttonup")?;
        service.command(
            &caller,
            device.command("shop", service.now(), "shop_fact", asked),
        )?;
    }
    Ok(Erasing::Waits { customer, until })
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

pub(super) fn today(service: &Service) -> Result<Date, Trouble> {
    let world = service.world()?;
    Ok(service.rules(&world).today())
}
