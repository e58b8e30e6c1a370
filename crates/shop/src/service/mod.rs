//! The service: takes commands, and keeps the folded world up to date.

mod answer;
mod both;
mod carried;
mod check;
mod turns;
mod waiting;

pub(crate) use answer::append_trouble;
pub use answer::{Accepted, AcceptedEvent};
pub(crate) use carried::carried_by_vehicle;
pub use waiting::WaitingFact;

use crate::access::{Access, LateFact};
use crate::appending;
use crate::caller::Caller;
use crate::command::{ReadCommand, Said, read};
use crate::device::Device;
use crate::doubts::{self, Known, Odd};
use crate::maps::check_draft;
use crate::own_words;
use crate::phrases::service as words;
use crate::roles;
use crate::snapshot::{Shelves, Snapshot};
use crate::trade_read::Checks;
use crate::trouble::{Trouble, TroubleKind};
use crate::words::{Texts, with_sent};
use crate::world::{World, customer_of, squeezed, vehicle_of};
use answer::{accepted, id_reused};
use check::{check_job, check_money, check_place, check_settings, check_weights, check_years};
use jiff::Timestamp;
use record::{AnyEvent, Stream};
use repair::{
    Context, Decision, Event, Fact, Field, Leaves, MapFact, OdometerAt, Order, OrderId,
    OrderReading, PersonId, Refusal, Request, Rules, ShopFact, VehicleFact, VehicleId, VinRead,
    Words, decide, record as record_fact,
};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, PoisonError, RwLock};
use std::time::{Duration, Instant};
use store::{Outcome, Store};
use turns::Turns;
use waiting::Waits;

/// A clock handed in by whoever starts the service.
pub type Now = Arc<dyn Fn() -> Timestamp + Send + Sync>;

/// One shop's use cases.
pub struct Service {
    store: Arc<dyn Store>,
    log: String,
    now: Now,
    /// The world as it is now. Whoever looks takes it along; whoever writes changes it in
    /// place if nobody looks, and a copy of it otherwise.
    world: RwLock<Arc<World>>,
    texts: Texts,
    shelves: Shelves,
    waits: Waits,
    turns: Turns,
}

/// How often a request without `expected` is read and decided again at least.
const FEWEST_TRIES: usize = 12;

/// How long a decision is made anew at most. A turn of its own keeps this program's other
/// writers away; those of another program it can only outlast.
const LONGEST_WAIT: Duration = Duration::from_secs(10);

/// How many rows are read at a time.
const PAGE: usize = 5_000;

impl Service {
    /// Opens a shop's log and folds it.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read, or is not whole.
    pub fn open(store: Arc<dyn Store>, log: &str, now: Now) -> Result<Self, Trouble> {
        check_landed(store.as_ref(), log)?;
        store.look_over(log)?;
        let service = Self {
            texts: Texts::new(Arc::clone(&store), log),
            world: RwLock::new(Arc::new(World::open(Arc::clone(&store), log)?)),
            store,
            log: log.to_owned(),
            now,
            shelves: Shelves::default(),
            waits: Waits::default(),
            turns: Turns::default(),
        };
        service.catch_up()?;
        Ok(service)
    }

    /// The folded world as it is now.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read.
    pub fn world(&self) -> Result<Arc<World>, Trouble> {
        let head = self.store.head(&self.log)?.position;
        if head > self.read_world().position {
            self.catch_up()?;
        }
        let world = self.read_world();
        if head > world.position {
            return Err(missing_end(world.position, head));
        }
        Ok(world)
    }

    /// Lets somebody look at the shop as it is now, or at a page, a door or a file of it.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read, or as `look` says.
    pub fn look<T>(
        &self,
        caller: &Caller,
        look: impl FnOnce(&Snapshot<'_>) -> Result<T, Trouble>,
    ) -> Result<T, Trouble> {
        let world = self.world()?;
        let snapshot = Snapshot::new(caller, world, &self.texts, &self.shelves, self.now());
        phrases::speaking(caller.language, || crate::words::whole(|| look(&snapshot)))
    }

    /// What a person's screens speak, or anybody's, as this program knew it at the last news of the
    /// record.
    #[must_use]
    pub fn language(&self, person: Option<&str>) -> phrases::Language {
        let person = person.map(PersonId::new);
        crate::caller::spoken(self.read_world().shop.speaks(person.as_ref()))
    }

    /// A person as this program knew them at the last news of the record.
    #[must_use]
    pub fn known_caller(&self, person: Option<&str>, device: &str) -> Caller {
        Caller::of(&self.read_world().shop, person, device)
    }

    /// A person of the shop as who asks.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read.
    pub fn caller(&self, person: Option<&str>, device: &str) -> Result<Caller, Trouble> {
        Ok(Caller::of(&self.world()?.shop, person, device))
    }

    /// The texts behind commitments.
    #[must_use]
    pub fn texts(&self) -> &Texts {
        &self.texts
    }

    /// The store and the log's name.
    #[must_use]
    pub fn record(&self) -> (&dyn Store, &str) {
        (self.store.as_ref(), &self.log)
    }

    /// Who may use the shop's program over its network, as it stands beside the record.
    #[must_use]
    pub fn access(&self) -> Access<'_> {
        Access::new(self.store.as_ref(), &self.log, self.now())
    }

    /// The time by the clock that was handed in.
    #[must_use]
    pub fn now(&self) -> Timestamp {
        (self.now)()
    }

    /// The time and zone of questions asked now.
    #[must_use]
    pub fn rules(&self, world: &World) -> Rules {
        crate::snapshot::rules(world, self.now())
    }

    /// Facts that devices keep because nothing can be written into their streams now, the
    /// oldest first. Those that were turned away since this program was started.
    #[must_use]
    pub fn waiting(&self) -> Vec<WaitingFact> {
        self.waits.all()
    }

    /// Takes one command of a caller as a device sent it.
    ///
    /// # Errors
    /// [`Trouble`]: it cannot be read, is refused, somebody else was quicker, the record
    /// cannot be written, or its stream takes nothing now.
    pub fn command(&self, caller: &Caller, sent: Value) -> Result<Accepted, Trouble> {
        self.command_read(caller, &read(sent)?)
    }

    /// Takes one command as a device of the shop's network sent it, bound to the sign-in that it
    /// was made under. What was tapped before the device was put out, or before the person left
    /// the shop, is a fact all the same: it is kept and marked for the owner.
    ///
    /// # Errors
    /// See [`Service::command`]; and it is refused where the person was not signed in on that
    /// device, or asked for the PIN where it is decided with it.
    pub fn command_from(&self, device: &str, sent: Value) -> Result<Accepted, Trouble> {
        let access = self.access();
        let command = read(sent)?;
        let sign_in = command.sign_in.as_deref().unwrap_or_default();
        let who = command.who.as_str().to_owned();
        let mut caller = self.caller(Some(&who), &command.device)?;
        if caller.founding {
            return self.command_read(&caller, &command);
        }
        let bound = access.bound(device, sign_in, &who)?;
        let gone = caller.roles.is_empty().then_some(crate::access::LEFT);
        let is_fact = roles::is_fact(command.act());
        let late = bound.late.or(gone).filter(|_| is_fact);
        if late.is_some() {
            caller = Caller::late(&who, &command.device);
        } else if !is_fact || roles::asks_pin(command.act()) {
            access.check_stands(device)?;
        }
        let decides = roles::asks_pin(command.act());
        if decides && self.repeat(&command)?.is_none() {
            access.check_fresh(device, sign_in)?;
        }
        let accepted = self.command_read(&caller, &command)?;
        if decides {
            access.proved(sign_in)?;
        }
        if let Some(why) = late {
            let fact = LateFact {
                at: self.now(),
                stream: command.stream.to_string(),
                person: who,
                device: bound.device,
                why: why.to_owned(),
            };
            access.mark_late(command.id.as_str(), &fact)?;
        }
        if let Said::Fact(AnyEvent::Shop(ShopFact::Departed { person })) = &command.said {
            self.access().sign_out_everywhere(person.as_str())?;
        }
        Ok(accepted)
    }

    fn command_read(&self, caller: &Caller, command: &ReadCommand) -> Result<Accepted, Trouble> {
        phrases::speaking(caller.language, || self.command_taken(caller, command))
    }

    fn command_taken(&self, caller: &Caller, command: &ReadCommand) -> Result<Accepted, Trouble> {
        roles::check(caller, command.act())?;
        if let Some(answer) = self.repeat(command)? {
            return Ok(answer);
        }
        match with_sent(&command.private, || self.take(caller, command)) {
            Err(mut trouble) if trouble.kind == TroubleKind::Waits => {
                match command.said {
                    Said::Fact(_) => self.waits.note(command, (self.now)()),
                    // What somebody asks for now is not meant for some later day.
                    Said::Request(_) => trouble.kind = TroubleKind::Refused,
                }
                Err(trouble)
            }
            // The same may have come twice at once, and the other was quicker: what is refused
            // now is that it be done again.
            Err(trouble) => self.repeat(command)?.ok_or(trouble),
            Ok(accepted) => {
                self.waits.taken(command);
                Ok(accepted)
            }
        }
    }

    fn take(&self, caller: &Caller, command: &ReadCommand) -> Result<Accepted, Trouble> {
        self.check_takes(&command.stream)?;
        self.check_named(command)?;
        match command.said.clone() {
            Said::Fact(event) => {
                let _turn = self.turns.take(&[&command.stream], 0);
                let expected = self.rests_on(command, &event)?;
                let events = self.events_of_fact(caller, command, event)?;
                self.append(command, expected, events)
            }
            Said::Request(request) => {
                self.check_waiver(command, &request)?;
                self.decide(caller, command, &request)
            }
        }
    }

    /// What would refuse one of these commands, as far as that can be known before the first
    /// of them is written: so that a form of several is taken whole or not at all. A request
    /// that rests on an earlier command of the form is not judged.
    ///
    /// # Errors
    /// [`Trouble`]: the first that would be refused, and why.
    pub fn check(&self, caller: &Caller, parts: Vec<Value>) -> Result<(), Trouble> {
        let mut spoken = BTreeSet::new();
        let mut odd = Vec::new();
        // The vehicles of orders that the form itself opens.
        let mut coming = BTreeMap::new();
        // Orders of which the form itself says what the odometer shows on the way out.
        let mut read_out = BTreeSet::new();
        for (nth, part) in parts.into_iter().enumerate() {
            let command = read(whole(part, nth))?;
            roles::check(caller, command.act())?;
            let first = spoken.insert(command.stream.clone());
            match command.said.clone() {
                Said::Fact(event) => {
                    if let AnyEvent::Order(Event::Fact(Fact::Odometer {
                        at: OdometerAt::Out,
                        ..
                    })) = &event
                    {
                        read_out.insert(command.stream.clone());
                    }
                    let found = self.doubts(&command, &event, &coming)?;
                    odd.extend(found.into_iter().map(|odd| (nth, odd)));
                    drop(self.events_of_fact(caller, &command, event)?);
                }
                Said::Request(request) => {
                    if let Request::Open { vehicle, .. } = &request {
                        coming.insert(command.stream.clone(), vehicle.clone());
                    }
                    self.check_waiver(&command, &request)?;
                    let drives = Leaves::DrivesAway;
                    let leaves =
                        matches!(request, Request::HandOver { leaves, .. } if leaves == drives);
                    if let (true, Stream::Order(id)) = (
                        leaves && !read_out.contains(&command.stream),
                        &command.stream,
                    ) {
                        let order = self.world()?.order(id)?;
                        odd.extend(doubts::leaving(&order).map(|odd| (nth, odd)));
                    }
                    if let (true, Stream::Order(id)) = (first, &command.stream) {
                        let world = self.world()?;
                        self.decided(&world, id, &request, caller)?;
                    }
                }
            }
        }
        doubts::trouble(&odd).map_or(Ok(()), Err)
    }

    /// What is odd about a fact of an order, held against what the order and the vehicle's
    /// earlier ones say.
    fn doubts(
        &self,
        command: &ReadCommand,
        event: &AnyEvent,
        coming: &BTreeMap<Stream, VehicleId>,
    ) -> Result<Vec<Odd>, Trouble> {
        if let AnyEvent::Vehicle(fact) = event {
            return self.known_already(command, fact);
        }
        let (AnyEvent::Order(Event::Fact(fact)), Stream::Order(id)) = (event, &command.stream)
        else {
            return Ok(Vec::new());
        };
        let world = self.world()?;
        let order = world.order(id)?;
        let comes = coming.get(&command.stream).cloned();
        let last_visit = match vehicle_of(&order).or(comes) {
            Some(vehicle) => world
                .orders_of_vehicle(&vehicle)?
                .into_iter()
                .filter(|(_, other)| other != id)
                .max()
                .map(|(_, other)| world.order(&other))
                .transpose()?
                .and_then(|other| {
                    let read = |at| doubts::odometer(&other, at);
                    read(OdometerAt::Out).or_else(|| read(OdometerAt::In))
                }),
            None => None,
        };
        let account = order.account();
        let known = Known {
            order: &order,
            items: account.items.values().collect(),
            last_visit,
        };
        Ok(doubts::doubts(fact, &known))
    }

    /// A stream of which something cannot be read takes nothing.
    fn check_takes(&self, stream: &Stream) -> Result<(), Trouble> {
        match self.world()?.unread(stream)? {
            Some(unread) => Err(unread.trouble()),
            None => Ok(()),
        }
    }

    /// The answer that a command got before; nothing if it is new.
    fn repeat(&self, command: &ReadCommand) -> Result<Option<Accepted>, Trouble> {
        let earlier = self.store.command(&self.log, command.id.as_str())?;
        if earlier.is_empty() {
            return Ok(None);
        }
        if earlier
            .iter()
            .any(|row| row.command_digest != command.digest)
        {
            return Err(id_reused());
        }
        Ok(Some(accepted(&earlier)))
    }

    /// Words that never came would leave an event whose text is missing for ever, and
    /// the record would no longer verify. Nor would it where a file is named as another sort
    /// of file than it came as.
    fn check_named(&self, command: &ReadCommand) -> Result<(), Trouble> {
        for named in &command.named {
            let came = command.private.iter().find(|text| text.words.0 == named.id);
            let media = match came {
                Some(text) => Some(text.media.clone()),
                None => self
                    .store
                    .private(&self.log, &named.id)?
                    .map(|private| private.media),
            };
            let words = Words(named.id).hex();
            match media {
                None => {
                    return Err(Trouble::unreadable(
                        "the command's texts",
                        format!("it names the words {words}, which never came or were erased"),
                        "send the words themselves, with a salt made on the device",
                    ));
                }
                Some(media) if media != named.media => {
                    return Err(Trouble::unreadable(
                        "the command's texts",
                        format!(
                            "it names {words} as {:?}, but it came as {media:?}",
                            named.media
                        ),
                        "name it as what it came as",
                    ));
                }
                Some(_) => {}
            }
        }
        Ok(())
    }

    /// A fact rests on nothing. A version of a map rests on those before it: two people
    /// cannot both keep the third.
    fn rests_on(
        &self,
        command: &ReadCommand,
        event: &AnyEvent,
    ) -> Result<BTreeMap<String, u64>, Trouble> {
        let (AnyEvent::Map(fact @ MapFact::Drafted { .. }), Stream::Map(id)) =
            (event, &command.stream)
        else {
            return Ok(BTreeMap::new());
        };
        let world = self.world()?;
        check_draft(&world, id, fact, &command.private)?;
        let stream = command.stream.to_string();
        let read = [(stream, world.seq(&command.stream)?)].into();
        Ok(resting(command, read))
    }

    fn events_of_fact(
        &self,
        caller: &Caller,
        command: &ReadCommand,
        event: AnyEvent,
    ) -> Result<Vec<(Stream, AnyEvent)>, Trouble> {
        let event = match (event, &command.stream) {
            (AnyEvent::Order(Event::Fact(fact)), Stream::Order(id)) => {
                let world = self.world()?;
                let order = world.order(id)?;
                let came = |words: Words| self.words_that_came(command, words);
                let who = Checks {
                    learns: caller.only_learns(),
                    alone: world.shop.alone_allowed().is_some(),
                };
                let table = own_words::vocabulary(&world, &self.texts, &self.shelves);
                return Ok(crate::trade_read::fill_in(fact, &who, &table, &came)
                    .into_iter()
                    .flat_map(|fact| record_fact(&order, fact))
                    .map(|event| (command.stream.clone(), AnyEvent::Order(event)))
                    .collect());
            }
            (AnyEvent::Vehicle(fact), _) => AnyEvent::Vehicle(self.with_vin_read(command, fact)),
            (event, _) => event,
        };
        match &event {
            AnyEvent::Shop(ShopFact::Set { settings, .. }) => check_settings(settings)?,
            AnyEvent::Shop(ShopFact::RecordsKept { years, .. }) => check_years(*years)?,
            AnyEvent::Shop(ShopFact::Weighed { weights, .. }) => check_weights(weights)?,
            AnyEvent::Shop(ShopFact::MoneyTold { rules, .. }) => {
                check_money(rules, self.world()?.shop.settings())?;
            }
            AnyEvent::Shop(ShopFact::JobKept { job, .. }) => {
                check_job(job, self.world()?.shop.settings())?;
            }
            AnyEvent::Shop(ShopFact::WordAdded { name, sort }) => {
                let table = own_words::vocabulary(&*self.world()?, &self.texts, &self.shelves);
                let name = self.words_that_came(command, *name).unwrap_or_default();
                own_words::check_word(&table, &name, sort.as_str())?;
            }
            AnyEvent::Shop(ShopFact::PlaceChosen {
                place: Some(place),
                version,
                ..
            }) => check_place(place.as_str(), *version)?,
            _ => {}
        }
        Ok(vec![(command.stream.clone(), event)])
    }

    /// How far a vehicle's number could be read follows from the number, whatever was sent.
    fn with_vin_read(&self, command: &ReadCommand, fact: VehicleFact) -> VehicleFact {
        let read = |words: Words| {
            let text = self.words_that_came(command, words)?;
            Some(match vin::inspect(&text).valid {
                true => VinRead::Valid,
                false => VinRead::KeptAnyway,
            })
        };
        match fact {
            VehicleFact::Declared {
                texts,
                vin_read,
                rust,
                customer,
            } => {
                let number = texts.get(&Field::Vin).copied();
                let vin_read = number.map_or(VinRead::NoneReadable, |number| {
                    read(number).unwrap_or(vin_read)
                });
                VehicleFact::Declared {
                    texts,
                    vin_read,
                    rust,
                    customer,
                }
            }
            VehicleFact::Mended {
                field: Field::Vin,
                words,
                vin_read,
                after,
            } => VehicleFact::Mended {
                field: Field::Vin,
                words,
                vin_read: read(words).or(vin_read),
                after,
            },
            fact => fact,
        }
    }

    /// A vehicle that is written down for the first time under a plate or number that the shop
    /// knows.
    fn known_already(
        &self,
        command: &ReadCommand,
        fact: &VehicleFact,
    ) -> Result<Vec<Odd>, Trouble> {
        let VehicleFact::Declared { texts, .. } = fact else {
            return Ok(Vec::new());
        };
        let mut out = Vec::new();
        for (field, name) in [(Field::Plate, "plate"), (Field::Vin, "vin")] {
            let words = texts.get(&field).copied();
            let Some(text) = words.and_then(|words| self.words_that_came(command, words)) else {
                continue;
            };
            let program = Caller::program();
            let known = self.look(&program, |snap| {
                let found = crate::view::vehicles_saying(snap, &text, 1)?;
                let alike = |one: &crate::view::KnownVehicle| {
                    let known = match field {
                        Field::Plate => &one.plate,
                        _ => &one.vin,
                    };
                    squeezed(known) == squeezed(&text)
                };
                Ok(found.into_iter().find(alike))
            })?;
            out.extend(known.map(|known| Odd {
                path: format!("declared.texts.{name}"),
                what: crate::phrases::doubts::is_known(&text, &known.label, &known.owner),
                how: doubts::How::Doubtful,
            }));
        }
        Ok(out)
    }

    /// A waiver says why, in words that somebody reads on the invoice a year later.
    fn check_waiver(&self, command: &ReadCommand, request: &Request) -> Result<(), Trouble> {
        /// Shorter than this no reason is one.
        const SHORTEST: usize = 8;
        let Request::Waive { words, .. } = request else {
            return Ok(());
        };
        let text = self.words_that_came(command, *words).unwrap_or_default();
        let letters = text.chars().filter(|c| c.is_alphanumeric()).count();
        if letters >= SHORTEST && text.split_whitespace().count() > 1 {
            return Ok(());
        }
        Err(Trouble::new(
            TroubleKind::Refused,
            words::why_it_may_pass(),
            words::says_nothing_of_why(text),
            words::say_why_in_few_words(),
        ))
    }

    /// Words that a command brought with it, or that came before.
    fn words_that_came(&self, command: &ReadCommand, words: Words) -> Option<String> {
        let brought = command.private.iter().find(|text| text.words == words);
        match brought {
            Some(text) => Some(String::from_utf8_lossy(&text.content).into_owned()),
            None => self
                .store
                .private(&self.log, &words.0)
                .ok()
                .flatten()
                .map(|private| String::from_utf8_lossy(&private.content).into_owned()),
        }
    }

    fn decide(
        &self,
        caller: &Caller,
        command: &ReadCommand,
        request: &Request,
    ) -> Result<Accepted, Trouble> {
        let Stream::Order(id) = &command.stream else {
            return Err(Trouble::unreadable(
                "stream",
                "a request goes to an order",
                "send it to order:…",
            ));
        };
        let mut last = None;
        let began = Instant::now();
        for passed in 0.. {
            if passed >= FEWEST_TRIES && began.elapsed() > LONGEST_WAIT {
                break;
            }
            let _turn = self.turns.take(&[&command.stream, &Stream::Shop], passed);
            let (events, expected) = {
                let world = self.world()?;
                // Before anything is decided: what another program adds while it is decided
                // would else be counted as seen.
                let mut read = seqs(&world, id)?;
                let request = knowing(command, &world, id, request)?;
                let events = self.decided(&world, id, &request, caller)?;
                let rests_on = |stream: &String| {
                    *stream == command.stream.to_string()
                        || events.iter().any(|(to, _)| to.to_string() == *stream)
                };
                read.retain(|stream, _| rests_on(stream));
                (events, resting(command, read))
            };
            match self.append(command, expected, events) {
                Err(trouble)
                    if trouble.kind == TroubleKind::Conflict && !names(command, &trouble.place) =>
                {
                    self.catch_up()?;
                    last = Some(trouble);
                }
                answer => return answer,
            }
        }
        Err(last.unwrap_or_else(|| {
            Trouble::new(
                TroubleKind::Conflict,
                words::the_order(),
                words::others_keep_changing(),
                words::send_it_again(),
            )
        }))
    }

    /// The events of a request that is granted, in every stream they belong to.
    fn decided(
        &self,
        world: &World,
        id: &OrderId,
        request: &Request,
        caller: &Caller,
    ) -> Result<Vec<(Stream, AnyEvent)>, Trouble> {
        let settings = world.shop.settings();
        let rules = self.rules(world);
        let context = Context {
            next_number: world.next_number()?,
            next_invoice: world.next_invoice()?,
            next_credit: world.next_credit()?,
            currency: settings.map_or_else(|| "EUR".to_owned(), |s| s.currency.clone()),
            minor_digits: settings.map_or(2, |s| s.minor_digits),
            taxes: settings.map(|s| s.taxes.clone()).unwrap_or_default(),
            terms: world.shop.money().terms(),
            rules,
            may_waive: BTreeSet::new(),
        };
        let order = world.order(id)?;
        let exempt = match customer_of(&order) {
            Some(customer) => world.customer(&customer)?.exemption(),
            None => None,
        };
        let context = Context {
            may_waive: roles::may_waive(caller, &order),
            terms: repair::price::Terms {
                exempt,
                ..context.terms
            },
            ..context
        };
        let decided = decide(&order, &context, request.clone())
            .map_err(|refusal| self.refused(&order, &refusal))?;
        let mut out = Vec::new();
        for event in decided {
            match &event {
                Event::Decision(Decision::Opened { number, .. }) => {
                    out.push((
                        Stream::Shop,
                        AnyEvent::Shop(ShopFact::NumberGiven {
                            number: *number,
                            order: id.clone(),
                        }),
                    ));
                }
                // Given with the invoice or not at all: the numbers have no gap.
                Event::Decision(Decision::Charged { numbers, .. }) => {
                    out.extend(numbers.iter().map(|(payer, number)| {
                        let given = ShopFact::InvoiceNumberGiven {
                            number: *number,
                            order: id.clone(),
                            payer: *payer,
                        };
                        (Stream::Shop, AnyEvent::Shop(given))
                    }));
                }
                Event::Decision(Decision::Credited { number, payer, .. }) => {
                    let given = ShopFact::CreditNumberGiven {
                        number: *number,
                        order: id.clone(),
                        payer: *payer,
                    };
                    out.push((Stream::Shop, AnyEvent::Shop(given)));
                }
                Event::Decision(Decision::HandedOver { .. }) => {
                    let reading = OrderReading::of(&order, &context.rules);
                    out.extend(carried_by_vehicle(world, &reading, id)?);
                }
                _ => {}
            }
            out.push((Stream::Order(id.clone()), AnyEvent::Order(event)));
        }
        Ok(out)
    }

    fn refused(&self, order: &Order, refusal: &Refusal) -> Trouble {
        let conflict = self.look(&Caller::program(), |snap| {
            Ok(both::conflict(snap, order, refusal))
        });
        if let Ok(Some(conflict)) = conflict {
            return conflict;
        }
        let mut trouble = Trouble::new(
            TroubleKind::Refused,
            words::the_order(),
            crate::say::refusal(refusal),
            crate::say::mend(refusal),
        );
        if let Refusal::StillOpen { reasons, .. } = refusal {
            trouble.reasons = self
                .look(&Caller::program(), |snap| {
                    let names = crate::say::Names::of(snap, snap.world(), order);
                    Ok(reasons.iter().map(|reason| names.reason(reason)).collect())
                })
                .unwrap_or_default();
        }
        if let Refusal::NotVoidable { standing } = refusal {
            trouble.reasons = self
                .look(&Caller::program(), |snap| {
                    let names = crate::say::Names::of(snap, snap.world(), order);
                    Ok(standing.iter().map(|one| names.standing(one)).collect())
                })
                .unwrap_or_default();
        }
        trouble
    }

    /// Writes down facts that the shop's own program made of what a person gave it, in one
    /// commit.
    ///
    /// # Errors
    /// [`Trouble`]: nobody is known to have asked, or the record cannot be written.
    pub(crate) fn write_down(
        &self,
        caller: &Caller,
        events: Vec<(Stream, AnyEvent)>,
        private: Vec<store::Private>,
    ) -> Result<(), Trouble> {
        const DEVICE: &str = "buttonup";
        let who = caller.person.as_ref().ok_or_else(crate::read_in::nobody)?;
        let command_id = Device::name();
        let now = (self.now)().to_string();
        let new = store::Command {
            log: self.log.clone(),
            digest: Sha256::digest(command_id.as_bytes()).into(),
            command_id,
            who: who.as_str().to_owned(),
            device: DEVICE.to_owned(),
            device_seq: self.store.device_seq(&self.log, DEVICE)?.unwrap_or(0) + 1,
            happened_at: now.clone(),
            recorded_at: now,
            expected: BTreeMap::new(),
            events: Vec::new(),
            private,
            erase: Vec::new(),
        };
        appending::append(self.store.as_ref(), new, &events)?;
        self.catch_up()
    }

    fn append(
        &self,
        command: &ReadCommand,
        expected: BTreeMap<String, u64>,
        events: Vec<(Stream, AnyEvent)>,
    ) -> Result<Accepted, Trouble> {
        {
            let world = self.world()?;
            for (stream, _) in &events {
                if let Some(unread) = world.unread(stream)? {
                    return Err(unread.trouble());
                }
            }
        }
        let new = store::Command {
            log: self.log.clone(),
            command_id: command.id.as_str().to_owned(),
            digest: command.digest,
            who: command.who.as_str().to_owned(),
            device: command.device.clone(),
            device_seq: command.device_seq,
            happened_at: command.happened_at.clone(),
            recorded_at: (self.now)().to_string(),
            expected,
            events: Vec::new(),
            private: command.private.iter().map(private).collect(),
            erase: Vec::new(),
        };
        match appending::append(self.store.as_ref(), new, &events)? {
            Outcome::Appended(rows) => {
                self.catch_up()?;
                Ok(accepted(&rows))
            }
            Outcome::Repeated(rows) => Ok(accepted(&rows)),
        }
    }

    /// Folds what was appended since, by this program or another.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read.
    pub fn catch_up(&self) -> Result<(), Trouble> {
        loop {
            let from = self.read_world().position;
            let rows = self.store.log(&self.log, from, PAGE)?;
            let Some(last) = rows.last().map(|row| row.position) else {
                return Ok(());
            };
            check_landed(self.store.as_ref(), &self.log)?;
            let mut world = self.world.write().unwrap_or_else(PoisonError::into_inner);
            let world = Arc::make_mut(&mut *world);
            world.take(&rows)?;
            for row in &rows {
                // Erased by whichever program: no word of it stays at hand here.
                let gone: Vec<_> = crate::keep::erased(row).into_iter().map(Words).collect();
                self.texts.forget(&gone);
            }
            world.save(false)?;
            if last < from.saturating_add(PAGE as u64) {
                return Ok(());
            }
        }
    }

    /// Writes the index of the record as it stands now, so that the next start has nothing
    /// to catch up with.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read.
    pub fn save_index(&self) -> Result<(), Trouble> {
        self.catch_up()?;
        let mut world = self.world.write().unwrap_or_else(PoisonError::into_inner);
        Arc::make_mut(&mut *world).save(true)
    }

    fn read_world(&self) -> Arc<World> {
        Arc::clone(&self.world.read().unwrap_or_else(PoisonError::into_inner))
    }
}

/// A command that is only asked about, with what a device adds when it sends it.
fn whole(mut part: Value, nth: usize) -> Value {
    if let Some(fields) = part.as_object_mut() {
        fields.insert("command_id".to_owned(), format!("asked-{nth}").into());
        fields.insert("device".to_owned(), "page".into());
        fields.insert("device_seq".to_owned(), 1.into());
        fields.insert("happened_at".to_owned(), "2026-01-01T00:00:00Z".into());
    }
    part
}

/// Half a copy is not served as if it were the whole.
fn check_landed(store: &dyn Store, log: &str) -> Result<(), Trouble> {
    if store.landing(log)?.is_none() {
        return Ok(());
    }
    Err(Trouble::new(
        TroubleKind::Record,
        words::the_record(),
        words::part_of_a_copy(),
        words::restore_same_copy(),
    ))
}

fn missing_end(position: u64, head: u64) -> Trouble {
    Trouble::new(
        TroubleKind::Record,
        words::the_record(),
        words::end_is_missing(position, head),
        words::stop_and_restore(),
    )
}

/// What a decision rests on: what was read for it, or what the command says in its place. A
/// command that names one stream has not thereby seen the others.
fn resting(command: &ReadCommand, mut read: BTreeMap<String, u64>) -> BTreeMap<String, u64> {
    read.extend(command.expected.clone().unwrap_or_default());
    read
}

/// A price whose author rests on a sequence number of the order has seen all that stands
/// there at that number: the store holds it to that.
fn knowing(
    command: &ReadCommand,
    world: &World,
    id: &OrderId,
    request: &Request,
) -> Result<Request, Trouble> {
    let mut request = request.clone();
    if !names(command, &command.stream.to_string()) {
        return Ok(request);
    }
    if let Request::Price { after, .. } | Request::WriteDown { after, .. } = &mut request
        && after.is_empty()
    {
        let order = world.order(id)?;
        let answers = repair::papers::standing_answers(&order);
        after.extend(
            answers
                .values()
                .flatten()
                .map(|(answer, _)| (*answer).clone()),
        );
        after.extend(repair::papers::priced_by(&order).cloned());
    }
    Ok(request)
}

/// Where the streams stand that a request about an order can rest on or write to: the order's,
/// its vehicle's, and the shop's, which gives the numbers.
fn seqs(world: &World, id: &OrderId) -> Result<BTreeMap<String, u64>, Trouble> {
    let order = Stream::Order(id.clone());
    let shop = (Stream::Shop.to_string(), world.seq(&Stream::Shop)?);
    let mut seqs = BTreeMap::from([shop, (order.to_string(), world.seq(&order)?)]);
    if let Some(vehicle) = vehicle_of(&*world.order(id)?) {
        let vehicle = Stream::Vehicle(vehicle);
        seqs.insert(vehicle.to_string(), world.seq(&vehicle)?);
    }
    Ok(seqs)
}

fn names(command: &ReadCommand, stream: &str) -> bool {
    let expected = command.expected.as_ref();
    expected.is_some_and(|expected| expected.contains_key(stream))
}

fn private(text: &record::Private) -> store::Private {
    store::Private {
        id: text.words.0,
        salt: text.salt,
        media: text.media.clone(),
        content: text.content.clone(),
    }
}
