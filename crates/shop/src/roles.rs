//! Which role may say, see or change what: one table. Every kind of command and every route
//! has a row in it, and a test fails where one has none.
//!
//! Facts about a vehicle and an order are open to everybody, since a fact is never refused.
//! What is decided, what is set for the whole shop, and what shows money is not.

use crate::caller::Caller;
use crate::phrases::access as words;
use crate::trouble::{Trouble, TroubleKind};
use repair::{Fact, Order, PersonId, Role, WaivedBy};
use std::collections::BTreeSet;

/// Everybody of the shop.
pub const ANYBODY: &[Role] = &[
    Role::Technician,
    Role::Desk,
    Role::Owner,
    Role::Apprentice,
    Role::Foreman,
];
/// Everybody but who still learns.
pub const STAFF: &[Role] = &[Role::Technician, Role::Desk, Role::Owner, Role::Foreman];
/// Whoever knows vehicles and answers for work on them.
pub const TECHNICIANS: &[Role] = &[Role::Technician, Role::Owner, Role::Foreman];
/// Who answers for the shop.
pub const OWNER: &[Role] = &[Role::Owner];
/// Who leads the work on vehicles.
const LEADS: &[Role] = &[Role::Owner, Role::Foreman];
/// Who is shown prices.
pub const PRICES: &[Role] = STAFF;

/// What somebody wants to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Act<'a> {
    /// A fact of an order, by its kind.
    OrderFact(&'a str),
    /// A request about an order, by its kind.
    Request(&'a str),
    /// A fact of a vehicle, a customer or a map.
    Beside(&'a str),
    /// A fact of the shop, by its kind.
    ShopFact(&'a str),
    /// A page, a door or a file, by its route.
    See(&'a str),
}

/// Who may do it: nothing where the table has no row.
#[must_use]
pub fn who_may(act: Act<'_>) -> Option<&'static [Role]> {
    match act {
        // What is so is so, whoever says it.
        Act::OrderFact(_) => Some(ANYBODY),
        Act::Request(kind) => row(REQUESTS, kind),
        Act::Beside(kind) => row(BESIDE, kind),
        Act::ShopFact(kind) => row(SHOP, kind),
        Act::See(route) => row(ROUTES, route),
    }
}

/// Whether it says what is so about an order, a vehicle or a customer: that is never refused.
#[must_use]
pub fn is_fact(act: Act<'_>) -> bool {
    matches!(act, Act::OrderFact(_) | Act::Beside("vehicle" | "customer"))
}

/// Whether this caller may.
///
/// # Errors
/// [`Trouble`], refused: who may, in words.
pub fn check(caller: &Caller, act: Act<'_>) -> Result<(), Trouble> {
    if caller.founding || is_fact(act) {
        return Ok(());
    }
    let may = who_may(act).unwrap_or(OWNER);
    if caller.has_any(may) {
        return Ok(());
    }
    let names: Vec<&str> = may.iter().map(|role| name(*role)).collect();
    Err(Trouble::new(
        TroubleKind::Refused,
        match act {
            Act::See(route) => route.to_owned(),
            Act::OrderFact(kind) | Act::Request(kind) => kind.to_owned(),
            Act::Beside(kind) | Act::ShopFact(kind) => kind.to_owned(),
        },
        match caller.roles.is_empty() {
            true => words::nobody_of_that_name().to_owned(),
            false => words::this_is_for(names.join(", ")),
        },
        words::pick_one_at_who(),
    ))
}

/// Whether it is decided with the PIN, where people sign in: what binds the shop or the
/// customer, and who may use the program. A fact is taken without it, since it is so.
#[must_use]
pub fn asks_pin(act: Act<'_>) -> bool {
    match act {
        Act::Request(kind) => !["open", "adopt"].contains(&kind),
        Act::ShopFact(kind) => !["word-added", "word-removed", "weighed"].contains(&kind),
        Act::OrderFact(_) | Act::Beside(_) | Act::See(_) => false,
    }
}

/// What a caller may let pass on an order: the owner everything; a technician what is for the
/// technician in charge, if the order is theirs or nobody's; the desk its papers.
#[must_use]
pub fn may_waive(caller: &Caller, order: &Order) -> BTreeSet<WaivedBy> {
    let mut out = BTreeSet::new();
    if caller.has_any(STAFF) {
        out.insert(WaivedBy::Desk);
    }
    if caller.has_any(LEADS) {
        out.extend([WaivedBy::InCharge, WaivedBy::Foreman]);
    }
    let assigned: BTreeSet<&PersonId> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Assigned { person } => Some(person),
            _ => None,
        })
        .collect();
    let theirs = caller
        .person
        .as_ref()
        .is_some_and(|person| assigned.contains(person));
    if caller.has_any(TECHNICIANS) && (theirs || assigned.is_empty()) {
        out.insert(WaivedBy::InCharge);
    }
    out
}

/// A role in words.
#[must_use]
pub fn name(role: Role) -> &'static str {
    match role {
        Role::Technician => words::technician(),
        Role::Desk => words::desk(),
        Role::Owner => words::owner(),
        Role::Apprentice => words::apprentice(),
        Role::Foreman => words::foreman(),
    }
}

type Table = &'static [(&'static str, &'static [Role])];

fn row(table: Table, name: &str) -> Option<&'static [Role]> {
    let found = table.iter().find(|(row, _)| *row == name);
    found.map(|(_, roles)| *roles)
}

const REQUESTS: Table = &[
    ("open", STAFF),
    ("adopt", ANYBODY),
    ("price", STAFF),
    ("add-to-price", STAFF),
    ("write-down", STAFF),
    ("credit", STAFF),
    ("charge", STAFF),
    ("waive", STAFF),
    ("withdraw-waiver", STAFF),
    ("hand-over", STAFF),
    ("take-back", STAFF),
    ("void", STAFF),
];

/// Facts of vehicles, customers and maps.
const BESIDE: Table = &[
    ("vehicle", ANYBODY),
    ("customer", ANYBODY),
    ("map", TECHNICIANS_AND_DESK),
];

const TECHNICIANS_AND_DESK: &[Role] = STAFF;

const SHOP: Table = &[
    ("set", OWNER),
    ("joined", OWNER),
    ("departed", OWNER),
    ("stall-added", OWNER),
    ("person-told", OWNER),
    ("stall-told", OWNER),
    ("stall-fitted", OWNER),
    ("stall-removed", OWNER),
    ("money-told", OWNER),
    ("job-kept", STAFF),
    ("job-dropped", STAFF),
    ("altitude-told", STAFF),
    ("weighed", TECHNICIANS),
    ("place-chosen", OWNER),
    ("records-kept", OWNER),
    ("erasure-asked", OWNER),
    ("word-added", TECHNICIANS),
    ("word-removed", TECHNICIANS),
    ("alone-allowed", OWNER),
    ("skill-told", LEADS),
    ("erasure-called-off", OWNER),
    ("letterhead-told", OWNER),
    ("seat-told", OWNER),
    ("logo-told", OWNER),
    ("grade-told", OWNER),
    ("shop-speaks", OWNER),
    ("person-speaks", ANYBODY),
    ("hours-told", LEADS),
    ("systems-told", LEADS),
    ("days-off", STAFF),
    ("days-off-ended", STAFF),
];

/// Kinds of the shop's stream that only its own program writes.
pub const OWN: &[&str] = &[
    "number-given",
    "invoice-number-given",
    "credit-number-given",
    "erased",
    "erasure-ended",
];

const ROUTES: Table = &[
    ("/", ANYBODY),
    ("/find", ANYBODY),
    ("/customers", STAFF),
    ("/vehicles", STAFF),
    ("/c/{customer}", STAFF),
    ("/calls", STAFF),
    ("/estimates", PRICES),
    ("/shop", ANYBODY),
    ("/devices", STAFF),
    ("/devices/opened", OWNER),
    ("/devices/invite", STAFF),
    ("/devices/change", OWNER),
    ("/pin", ANYBODY),
    ("/prove", ANYBODY),
    ("/api/pin", ANYBODY),
    ("/api/pin/beside", ANYBODY),
    ("/shop/letterhead", OWNER),
    ("/shop/prices", PRICES),
    ("/shop/books", PRICES),
    ("/shop/books/{list}", PRICES),
    ("/record", STAFF),
    ("/record/verify", STAFF),
    ("/record/backup", STAFF),
    ("/record/export", OWNER),
    ("/record/keys", OWNER),
    ("/shop/read-in", OWNER),
    ("/shop/read-in/done", OWNER),
    ("/week", ANYBODY),
    ("/fit-in", ANYBODY),
    ("/new", STAFF),
    ("/sale", PRICES),
    ("/order/{order}", ANYBODY),
    ("/o/{number}", ANYBODY),
    ("/o/{number}/story", ANYBODY),
    ("/o/{number}/mend", STAFF),
    ("/o/{number}/walk", ANYBODY),
    ("/o/{number}/off", ANYBODY),
    ("/o/{number}/back", ANYBODY),
    ("/o/{number}/open", ANYBODY),
    ("/o/{number}/tray", ANYBODY),
    ("/o/{number}/tray/count", ANYBODY),
    ("/tray-sheet/{paper}", ANYBODY),
    ("/o/{number}/item/{item}", ANYBODY),
    ("/o/{number}/item/{item}/{step}", ANYBODY),
    ("/o/{number}/snag", ANYBODY),
    ("/o/{number}/snag/{snag}", ANYBODY),
    ("/o/{number}/due", ANYBODY),
    ("/o/{number}/measures", ANYBODY),
    ("/o/{number}/second", ANYBODY),
    ("/o/{number}/may", ANYBODY),
    ("/o/{number}/may/{gate}", ANYBODY),
    ("/o/{number}/hand-over", STAFF),
    ("/o/{number}/desk", STAFF),
    ("/o/{number}/price", PRICES),
    ("/o/{number}/odds", PRICES),
    ("/o/{number}/ask", PRICES),
    ("/o/{number}/parts", STAFF),
    ("/o/{number}/pay", PRICES),
    ("/o/{number}/decline", STAFF),
    ("/o/{number}/estimate", PRICES),
    ("/o/{number}/added", PRICES),
    ("/o/{number}/invoice", PRICES),
    ("/o/{number}/credit", PRICES),
    // What shows prices is refused to who is shown none.
    ("/o/{number}/papers/{kind}", ANYBODY),
    ("/o/{number}/promise", ANYBODY),
    ("/o/{number}/plan", ANYBODY),
    ("/o/{number}/state", ANYBODY),
    ("/o/{number}/way", ANYBODY),
    ("/o/{number}/plan/price", PRICES),
    ("/o/{number}/stage", ANYBODY),
    ("/o/{number}/how-to", ANYBODY),
    ("/o/{number}/before", ANYBODY),
    ("/v/{vehicle}", ANYBODY),
    ("/maps", ANYBODY),
    ("/maps/{map}", ANYBODY),
    ("/maps/new", STAFF),
    ("/maps/start", STAFF),
    ("/maps/read-in", STAFF),
    ("/maps/{map}/versions", ANYBODY),
    ("/maps/{map}/send", STAFF),
    ("/maps/{map}/sent-file", STAFF),
    ("/maps/check", STAFF),
    ("/maps/{map}/edit", STAFF),
    ("/maps/{map}/file", STAFF),
    ("/kinds", ANYBODY),
    ("/kinds/{kind}", ANYBODY),
    ("/kinds/{kind}/map", STAFF),
    ("/kinds/{kind}/history", STAFF),
    ("/history", STAFF),
    ("/language", ANYBODY),
    ("/skills", ANYBODY),
    ("/o/{number}/two", ANYBODY),
    ("/calc", ANYBODY),
    ("/calc/{room}", ANYBODY),
    ("/calc/{room}/{calculator}", ANYBODY),
    ("/o/{number}/calc/{room}/{calculator}", ANYBODY),
    ("/threads", ANYBODY),
    ("/threads/{calculator}", ANYBODY),
    ("/coolant", ANYBODY),
    ("/coolant/{calculator}", ANYBODY),
    ("/file/{id}", ANYBODY),
    ("/api/commands", ANYBODY),
    ("/api/commands/check", ANYBODY),
    ("/api/day", ANYBODY),
    ("/api/orders", ANYBODY),
    ("/api/orders/{number}", ANYBODY),
    ("/api/orders/{number}/reach", ANYBODY),
    ("/api/reach", ANYBODY),
    ("/api/calc", ANYBODY),
    ("/api/calc/{room}/{calculator}", ANYBODY),
    ("/api/openapi.json", ANYBODY),
    ("/api/live", ANYBODY),
];

#[cfg(test)]
mod tests {
    use super::*;
    use record::v1::beside::ShopFactForm;
    use record::v1::decisions::RequestForm;

    #[test]
    fn every_kind_of_command_has_a_row() {
        for kind in RequestForm::KINDS {
            assert!(who_may(Act::Request(kind)).is_some(), "request {kind}");
        }
        for kind in ShopFactForm::KINDS {
            let own = OWN.contains(kind);
            let has_row = who_may(Act::ShopFact(kind)).is_some();
            assert_ne!(own, has_row, "shop_fact {kind}");
        }
        for stream in ["vehicle", "customer", "map"] {
            assert!(who_may(Act::Beside(stream)).is_some(), "{stream}");
        }
    }

    #[test]
    fn no_row_stands_for_nothing() {
        let known =
            |kinds: &[&str], table: Table| table.iter().all(|(kind, _)| kinds.contains(kind));
        assert!(known(RequestForm::KINDS, REQUESTS));
        assert!(known(ShopFactForm::KINDS, SHOP));
    }

    #[test]
    fn erasing_and_settings_are_the_owners() {
        for kind in [
            "set",
            "joined",
            "departed",
            "records-kept",
            "erasure-asked",
            "erasure-called-off",
        ] {
            assert_eq!(who_may(Act::ShopFact(kind)), Some(OWNER), "{kind}");
        }
    }

    #[test]
    fn an_apprentice_is_shown_no_money_and_decides_nothing_but_the_map() {
        for kind in RequestForm::KINDS {
            let may =
                who_may(Act::Request(kind)).is_some_and(|who| who.contains(&Role::Apprentice));
            assert_eq!(may, *kind == "adopt", "{kind}");
        }
        for route in [
            "/o/{number}/price",
            "/o/{number}/invoice",
            "/o/{number}/pay",
        ] {
            let may = who_may(Act::See(route)).is_some_and(|who| who.contains(&Role::Apprentice));
            assert!(!may, "{route}");
        }
    }
}
