//! What a page, a paper or the JSON door shows of an order: codes turned into words,
//! commitments into texts, everything computed at the moment it is asked for.

mod apart;
mod ask;
mod bolts;
mod calls;
mod credits;
mod day;
mod day_told;
mod desk;
mod goods;
mod items;
mod known;
mod leaving;
mod made;
mod mending;
mod newer;
mod noted;
mod on_papers;
mod papers;
mod paused;
mod pictures;
mod planned;
mod row;
mod stopped;
mod story;
mod story_desk;
mod stuck;
mod taxed;
mod way;
mod week;
mod wrench;

pub use crate::world::vehicle_of;
pub use apart::ApartView;
pub use ask::AskView;
pub use bolts::{Face, Shape, bolt_places, face};
pub use calls::{CallKind, CallView, calls};
pub use credits::{CreditView, CreditedView, LessView, ShareView};
pub use day::{DayOrder, DayPerson, DayPlace, DayView, ExpectedView, HomeView, MineView, day};
pub use day_told::{
    CallTold, DayTold, PlanTold, PromiseTold, WorkOf, WorkTold, day_told, nothing_told, plan_notes,
    plan_told,
};
pub(crate) use desk::entry_label;
pub use desk::{
    ConsentView, InvoiceView, LineView, PaymentView, PriceEntryView, PriceView, TotalView,
};
pub use goods::{PartView, SubletView};
pub use items::{
    DebtView, GateView, ItemView, LengthView, MoveName, OpenItemView, PaperView, PiecesView,
    ReasonView, SnagView, WaiverView,
};
pub use known::{
    KnownCustomer, KnownVehicle, TakenIn, customer as known_customer, customer_of_order,
    customers_from, customers_saying, offered, rows_of_customer, twins_of_customer,
    twins_of_vehicle, vehicle as known_vehicle, vehicles_from, vehicles_of, vehicles_saying,
};
pub use leaving::{DeclinedView, LeftView};
pub use mending::{ChoiceView, MendingView, mending};
pub use newer::{NewerView, newer};
pub(crate) use noted::photo;
pub use noted::{NoteView, PhotoView, VoiceView};
pub use on_papers::{OnPapers, OpenOnPapers, on_papers};
pub use papers::{GivenView, LetterheadView, PAPER, PapersView, PostalView, ProofView, letterhead};
pub use paused::PausedView;
pub use pictures::{PictureView, pictures};
pub use planned::{NotPlannedView, PlannedView, PromiseView, kept, offer};
pub use planned::{must_be_asked, planned as planned_view};
pub(crate) use row::stands;
pub use row::{MOST_ROWS, OrderRow, StandsHere, rows, rows_here, rows_of_vehicle, stands_here};
pub(crate) use row::{assigned, promised};
pub use stopped::StoppedView;
pub use story::StoryLine;
pub use stuck::{StuckView, stuck};
pub use taxed::{NotTaxed, TaxGroupView, TaxedLineView, TaxedView};
pub use way::{WaySoFar, way_so_far};
pub use week::{WeekDay, WeekView, week};
pub use wrench::usual_wrench;
pub(crate) use {desk::must_ask, goods::parts, goods::sublets};

use crate::phrases::order as words;
use crate::say::{Names, Tongue};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::words::whole;
use crate::world::{World, customer_of};
use made::{Basis, Made};
use record::Stream;
use repair::{Field, Order, OrderId, VehicleFact, VehicleId};
use serde::Serialize;
use std::collections::BTreeMap;
use std::sync::Arc;
use utoipa::ToSchema;

/// One order, whole.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct OrderView {
    /// The number people call it by.
    pub number: u64,
    /// Its name in the record.
    pub order: String,
    /// The last sequence number of its stream that this shows.
    pub seq: u64,
    /// What of it cannot be read, if anything: then it can only be looked at, and what is
    /// shown lacks that.
    pub unread: Option<String>,
    /// How it stands on the floor.
    pub row: OrderRow,
    /// Its lines.
    pub lines: Vec<LineView>,
    /// What it aims at by its map, if it has been planned.
    pub aim: Option<String>,
    /// Every item.
    pub items: Vec<ItemView>,
    /// The items that are not at home, put-ins included.
    pub open_items: Vec<OpenItemView>,
    /// Work owed.
    pub debts: Vec<DebtView>,
    /// The six gates.
    pub gates: Vec<GateView>,
    /// Snags not resolved.
    pub snags: Vec<SnagView>,
    /// Parts.
    pub parts: Vec<PartView>,
    /// Work sent out.
    pub sublets: Vec<SubletView>,
    /// The price as it stands.
    pub price: Option<PriceView>,
    /// What each payer owes.
    pub totals: Vec<TotalView>,
    /// What to ask each payer, the customer first.
    pub asks: Vec<AskView>,
    /// Consents.
    pub consents: Vec<ConsentView>,
    /// Payments.
    pub payments: Vec<PaymentView>,
    /// Waivers that stand.
    pub waivers: Vec<WaiverView>,
    /// Proofs still needed.
    pub proofs_needed: Vec<String>,
    /// Proofs told so far by what was tried, for a new one of the same to replace.
    pub proofs_told: BTreeMap<String, Vec<String>>,
    /// Whether the keys hang with the shop.
    pub keys_here: bool,
    /// Whether the vehicle was handed over.
    pub handed_over: bool,
    /// How it left.
    pub left: Option<LeftView>,
    /// Who is to work on it, by their names in the record.
    pub assigned: Vec<String>,
    /// What the customer would not have put right.
    pub declined: Vec<DeclinedView>,
    /// Whether the order was opened by mistake.
    pub voided: bool,
    /// What came in after a hand-over and stands open.
    pub alarms: Vec<String>,
    /// What this vehicle carries from earlier orders.
    pub standing: Vec<String>,
    /// What the papers for the customer say beside all this.
    pub papers: PapersView,
    /// Groups left in the middle, the last one first.
    pub stopped: Vec<StoppedView>,
    /// Who stopped in a stage and said why, the last one first.
    pub paused: Vec<PausedView>,
    /// What was noted at the walk-round.
    pub notes: Vec<NoteView>,
    /// The areas that were walked round.
    pub walked: Vec<record::v1::codes::ZoneForm>,
    /// What happened, oldest first: the last 200 things, or those before `before`.
    pub story: Vec<StoryLine>,
    /// What to ask for as `before` for the things before these; nothing, if these are the first.
    pub story_before: Option<usize>,
    /// How many things happened in all.
    pub story_length: usize,
}

/// One order by its number.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn order(snap: &Snapshot<'_>, number: u64) -> Result<Arc<OrderView>, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(words::no_order(number)))?;
    let order = world.order(&id)?;
    let made = snap.shelf::<Made>();
    let basis = Basis::of(snap, &id, &order)?;
    if let Some(view) = made.get(&id, &basis) {
        return Ok(view);
    }
    // What could not be read now is not kept for the next who look.
    let view = whole(|| view(snap, world, &id, &order, number))?;
    let view = Arc::new(if snap.caller().sees_prices() {
        view
    } else {
        view.without_prices()
    });
    if !crate::words::fault_met() {
        made.put(&id, basis, &view);
    }
    Ok(view)
}

/// The same with the part of its story that ends before a place in it.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn order_before(
    snap: &Snapshot<'_>,
    number: u64,
    before: usize,
) -> Result<Arc<OrderView>, Trouble> {
    let view = order(snap, number)?;
    let world = snap.world();
    let order = world.order(&OrderId::new(view.order.clone()))?;
    let names = Names::of(snap, world, &order);
    let part = story::story(&names, snap, &order, &snap.rules(), Some(before));
    Ok(Arc::new(OrderView {
        story: part.lines,
        story_before: part.earlier,
        ..OrderView::clone(&view)
    }))
}

impl OrderView {
    /// The same for who is shown no prices: none is sent.
    fn without_prices(self) -> Self {
        Self {
            price: None,
            totals: Vec::new(),
            asks: Vec::new(),
            consents: Vec::new(),
            payments: Vec::new(),
            // Their prices stand on them.
            papers: PapersView {
                given: Vec::new(),
                ..self.papers
            },
            ..self
        }
    }
}

fn view(
    snap: &Snapshot<'_>,
    world: &World,
    id: &OrderId,
    order: &Order,
    number: u64,
) -> Result<OrderView, Trouble> {
    let names = Names::of(snap, world, order);
    let rules = snap.rules();
    let unread = world.unread(&Stream::Order(id.clone()))?;
    let unread = unread.map(|unread| unread.sentence());
    let mut gates = items::gates(&names);
    if let Some(unread) = &unread {
        gates.iter_mut().for_each(|gate| gate.shut_by(unread));
    }
    let mut row = row::row(snap, &names, number)?;
    row.can_roll &= unread.is_none();
    let story = story::story(&names, snap, order, &rules, None);
    Ok(OrderView {
        number,
        order: id.as_str().to_owned(),
        seq: world.seq(&Stream::Order(id.clone()))?,
        row,
        unread,
        lines: desk::lines(snap, order),
        aim: repair::adoption(order).and_then(|_| story::aim(&names, order)),
        items: items::items(&names, snap, order),
        open_items: items::open_items(&names, &rules),
        debts: items::debts(&names),
        waivers: items::waivers(&gates),
        gates,
        snags: items::snags(&names, order),
        parts: parts(&names, order, &rules),
        sublets: sublets(&names, order, &rules),
        totals: desk::totals(order),
        price: desk::price(snap, order, &rules),
        asks: ask::asks(snap, world, order, &rules)?,
        consents: desk::consents(snap, &names, order, &rules),
        payments: desk::payments(&names, order, &rules),
        proofs_needed: items::proofs_needed(&names),
        proofs_told: items::proofs_told(order),
        keys_here: repair::papers::keys_here(order),
        handed_over: repair::papers::handed_over(order).is_some(),
        left: leaving::left_view(&names, order, &rules),
        assigned: assigned(order),
        declined: leaving::declined(&names, order, &rules),
        voided: repair::papers::is_voided(order),
        alarms: names
            .reading()
            .alarms()
            .iter()
            .map(|reason| names.reason(reason))
            .collect(),
        standing: standing(snap, world, order)?,
        papers: papers::papers(&names, snap, world, id, order)?,
        stopped: stopped::stopped(&names),
        paused: paused::paused(&names, &rules),
        notes: noted::notes(&names, order, &rules),
        walked: noted::walked(order),
        story: story.lines,
        story_before: story.earlier,
        story_length: story.length,
    })
}

/// Lasting differences and work left owing, in words.
fn standing(snap: &Snapshot<'_>, world: &World, order: &Order) -> Result<Vec<String>, Trouble> {
    let Some(vehicle) = vehicle_of(order) else {
        return Ok(Vec::new());
    };
    let vehicle = world.vehicle(&vehicle)?;
    Ok(vehicle
        .differences()
        .chain(vehicle.owing())
        .map(|fact| standing_text(snap, fact))
        .collect())
}

/// One lasting difference or piece of work left owing, in words.
#[must_use]
pub fn standing_text(snap: &Snapshot<'_>, fact: &VehicleFact) -> String {
    standing_said(Tongue::spoken(), snap, fact)
}

/// The same in a language.
pub(crate) fn standing_said(tongue: &Tongue, snap: &Snapshot<'_>, fact: &VehicleFact) -> String {
    let text = |words| snap.texts().text_of(words);
    match fact {
        VehicleFact::Differs {
            item,
            at,
            size,
            torque,
            words,
            what,
            ..
        } => {
            let item = text(*item).unwrap_or_else(|| tongue.the_vehicle.to_owned());
            let at = if at.is_empty() {
                String::new()
            } else {
                format!(" {}", crate::say::positions(at))
            };
            let mut parts: Vec<String> = Vec::new();
            // A size says more than what sort of difference it is.
            let sort = || {
                size.is_none()
                    .then(|| (tongue.difference)(*what).to_owned())
            };
            parts.extend(text(*words).or_else(sort));
            parts.extend(size.as_ref().map(|size| size.as_str().to_owned()));
            parts.extend(torque.as_ref().map(|torque| torque.as_str().to_owned()));
            (tongue.now)(&format!("{item}{at}"), &parts.join(", "))
        }
        VehicleFact::LeftOwing {
            work,
            item,
            words,
            until,
            ..
        } => {
            let what = text(*words).unwrap_or_else(|| (tongue.work)(work));
            let until = crate::say::until(tongue, until);
            match text(*item) {
                Some(item) => (tongue.due)(&format!("{what}: {item}{until}")),
                None => (tongue.due)(&format!("{what}{until}")),
            }
        }
        _ => String::new(),
    }
}

/// The same for the customer an order was opened for.
pub(crate) fn customer_text(
    snap: &Snapshot<'_>,
    world: &World,
    order: &Order,
    field: Field,
) -> Result<String, Trouble> {
    let words = match customer_of(order) {
        Some(id) => world.customer(&id)?.text(field).words,
        None => None,
    };
    Ok(snap.texts().text_of(words).unwrap_or_default())
}

/// A vehicle's text as it reads now; empty if there is none.
pub(crate) fn vehicle_text(
    snap: &Snapshot<'_>,
    world: &World,
    vehicle: Option<&VehicleId>,
    field: Field,
) -> Result<String, Trouble> {
    let words = match vehicle {
        Some(id) => world.vehicle(id)?.text(field).words,
        None => None,
    };
    Ok(snap.texts().text_of(words).unwrap_or_default())
}

/// The day of a time at the shop, in words.
pub(crate) fn day_of(rules: &repair::Rules, at: jiff::Timestamp) -> String {
    crate::say::day_words(&rules.day(at).to_string())
}

/// The hour of a time at the shop, in words.
pub(crate) fn hour_of(rules: &repair::Rules, at: jiff::Timestamp) -> String {
    story::hour(rules, at)
}
