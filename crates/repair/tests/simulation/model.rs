//! A plain model of an order, written from the rules and not from the code: where each
//! thing is, what is open, and what speaks against handing over. It reads the facts
//! that were sent and uses nothing else of the account.

use crate::told::{About, Known, Tellings};
use jiff::Timestamp;
use repair::{
    CheckIs, CommandId, Event, Fact, Item, Kind, LevelAt, Move, MoveId, Outcome, PartStep, Piece,
    PieceIs, ProofIs, Recorded, State, System, Until, WorkId, WorkIs,
};
use std::collections::{BTreeMap, BTreeSet};

/// Where a piece may be, in the sequence in which reasons list them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Is {
    On,
    Off,
    Tight,
    Cracked,
    Out,
    Loose(u8),
    Stub(bool),
    Plugged,
    Unplugged,
    AtLevel,
    Low,
    Outside,
    Inside,
}

/// What a piece is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Made {
    Old,
    New,
    Other,
}

/// The pieces that are not where they belong, thing by thing, each with where it is.
pub type Open = BTreeMap<String, BTreeMap<u16, BTreeSet<(Is, Made)>>>;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum How {
    Found,
    Moved,
    Looked,
}

/// One statement about some pieces of one thing.
#[derive(Debug)]
struct Claim {
    name: (String, u16),
    thing: String,
    at: Vec<u16>,
    is: Is,
    made: Made,
    how: How,
    who: String,
    when: Timestamp,
    stands: bool,
    /// Whether it names something that has not arrived yet.
    in_the_dark: bool,
}

/// What one place has heard, doubles left out.
pub struct Book<'a> {
    facts: Vec<(&'a str, &'a str, &'a Fact)>,
    claims: Vec<Claim>,
    /// For each claim, the claims it had seen, near and far, as bits.
    sees: Vec<u128>,
    things: BTreeMap<String, Item>,
    /// The same things as people tell of them.
    known: BTreeMap<String, Known>,
    tellings: Tellings<'a>,
    recounted: BTreeSet<String>,
    one: BTreeMap<String, String>,
    need: Option<&'a Need>,
    now: Timestamp,
}

/// Tight screws want the shield in its place.
pub struct Need {
    pub to_tighten: &'static str,
    pub wants_on: &'static str,
}

pub fn is(state: State) -> Is {
    match state {
        State::On => Is::On,
        State::Off => Is::Off,
        State::Tight => Is::Tight,
        State::Cracked => Is::Cracked,
        State::Out => Is::Out,
        State::Loose { passes } => Is::Loose(passes),
        State::Stub { holds } => Is::Stub(holds),
        State::Plugged => Is::Plugged,
        State::Unplugged => Is::Unplugged,
        State::AtLevel => Is::AtLevel,
        State::Low => Is::Low,
        State::Outside => Is::Outside,
        State::Inside => Is::Inside,
        State::Done | State::Due => unreachable!("no work items in this shop"),
    }
}

fn word(is: Is) -> String {
    match is {
        Is::Loose(passes) => format!("Loose{passes}"),
        Is::Stub(true) => "Stuck".into(),
        Is::Stub(false) => "Snapped".into(),
        other => format!("{other:?}"),
    }
}

/// Where things of a kind belong, and where they go when they come off.
fn belongs(kind: Kind) -> (Is, Is) {
    match kind {
        Kind::Fasteners => (Is::Tight, Is::Out),
        Kind::Clips => (Is::On, Is::Out),
        Kind::Connector => (Is::Plugged, Is::Unplugged),
        Kind::Fluid => (Is::AtLevel, Is::Low),
        Kind::PutIn => (Is::Outside, Is::Inside),
        _ => (Is::On, Is::Off),
    }
}

fn pieces(positions: BTreeSet<u16>) -> Vec<Piece> {
    let piece = |position| Piece {
        position,
        length: None,
    };
    positions.into_iter().map(piece).collect()
}

/// What belongs to the wheels, and coolant, in this shop.
pub fn strict(item: &Item) -> bool {
    item.kind == Kind::Fluid || item.system == System::Wheels
}

impl<'a> Book<'a> {
    pub fn of(
        events: impl IntoIterator<Item = &'a Recorded<Event>>,
        need: Option<&'a Need>,
        now: Timestamp,
    ) -> Self {
        let mut heard: BTreeMap<&str, (&Recorded<Event>, &Fact)> = BTreeMap::new();
        for event in events {
            if let Event::Fact(fact) = &event.event {
                heard.entry(event.command.as_str()).or_insert((event, fact));
            }
        }
        let stands = |command: &str| !taken_back(command, &heard);
        let move_stands =
            |command: &str, nth: u16| stands(command) && !taken_back_alone((command, nth), &heard);
        let mut book = Self {
            facts: vec![],
            claims: vec![],
            sees: vec![],
            things: BTreeMap::new(),
            known: BTreeMap::new(),
            tellings: Tellings::default(),
            recounted: BTreeSet::new(),
            one: BTreeMap::new(),
            need,
            now,
        };
        for (command, (event, fact)) in &heard {
            book.tellings.hear(command, fact, stands(command));
            if stands(command) {
                let who = event.stamp.who.as_str();
                book.facts.push((command, who, fact));
            }
        }
        book.name_things();
        let mut after = Vec::new();
        for (command, (event, fact)) in &heard {
            if let Fact::LevelSeen {
                item,
                good,
                after: seen,
                ..
            } = fact
            {
                book.claims.push(Claim {
                    name: ((*command).to_owned(), 0),
                    thing: book.one_name(item.as_str()),
                    at: vec![1],
                    is: if *good { Is::AtLevel } else { Is::Low },
                    made: Made::Old,
                    how: How::Looked,
                    who: event.stamp.who.as_str().to_owned(),
                    when: event.stamp.at,
                    stands: move_stands(command, 0),
                    in_the_dark: false,
                });
                after.push(seen);
                continue;
            }
            let (how, moves): (How, &[Move]) = match fact {
                Fact::Found { moves } => (How::Found, moves),
                Fact::Seen { moves } => (How::Looked, moves),
                Fact::Moved { moves, .. }
                | Fact::SnagFound { moves, .. }
                | Fact::SnagResolved { moves, .. } => (How::Moved, moves),
                _ => continue,
            };
            for (nth, change) in (0..).zip(moves) {
                book.claims.push(Claim {
                    name: ((*command).to_owned(), nth),
                    thing: book.one_name(change.item.as_str()),
                    at: change.at.clone(),
                    is: is(change.left.state),
                    made: match change.left.piece {
                        PieceIs::Original => Made::Old,
                        PieceIs::New => Made::New,
                        PieceIs::Substitute => Made::Other,
                    },
                    how,
                    who: event.stamp.who.as_str().to_owned(),
                    when: event.stamp.at,
                    stands: move_stands(command, nth),
                    in_the_dark: false,
                });
                after.push(&change.after);
            }
        }
        assert!(book.claims.len() <= 128, "the bits of one word");
        book.follow(&after);
        book
    }

    fn name_things(&mut self) {
        // Names that are one thing, near and far, go by the least of them.
        let same = |(_, _, fact): &(&str, &str, &'a Fact)| match fact {
            Fact::SameAs { item, also } => Some([item.as_str(), also.as_str()]),
            _ => None,
        };
        let same: Vec<[&str; 2]> = self.facts.iter().filter_map(same).collect();
        for name in same.iter().flatten() {
            let mut group = BTreeSet::from([*name]);
            for _ in &same {
                let met = same
                    .iter()
                    .filter(|two| two.iter().any(|one| group.contains(one)));
                let met: Vec<&str> = met.flatten().copied().collect();
                group.extend(met);
            }
            let least = group.first().expect("the name itself");
            self.one.insert((*name).to_owned(), (*least).to_owned());
        }
        for (_, _, fact) in self.facts.clone() {
            match fact {
                Fact::Declared { item } => {
                    let name = self.one_name(item.id.as_str());
                    self.things.entry(name).or_insert_with(|| item.clone());
                }
                Fact::CountCorrected { item, .. } => {
                    self.recounted.insert(self.one_name(item.as_str()));
                }
                _ => {}
            }
        }
        let names: Vec<String> = self.things.keys().cloned().collect();
        for name in names {
            let known = self.known_of(&name);
            let thing = self.things.get_mut(&name).expect("a name of them");
            thing.pieces = pieces(known.positions());
            // Of several places the stricter counts.
            let wheels = known.may_be(System::Wheels).then_some(System::Wheels);
            let first = known.places.first().map(|(system, _)| *system);
            thing.system = wheels.or(first).expect("it was declared somewhere");
            self.known.insert(name, known);
        }
    }

    /// What was told of a thing last; where nothing was, what was declared.
    fn known_of(&self, name: &str) -> Known {
        let mut out = Known::default();
        for about in About::ALL {
            let told = self.tellings.last(about, |item| self.is_it(item, name));
            for (_, fact) in &told {
                out.take(fact, about);
            }
            let declared = self.facts.iter().filter(
                |(_, _, fact)| matches!(fact, Fact::Declared { item } if self.is_it(&item.id, name)),
            );
            for (_, _, fact) in declared.filter(|_| told.is_empty()) {
                out.take(fact, about);
            }
        }
        out.settle();
        out
    }

    fn is_it(&self, item: &repair::ItemId, name: &str) -> bool {
        self.one_name(item.as_str()) == name
    }

    fn one_name(&self, name: &str) -> String {
        self.one.get(name).map_or(name, String::as_str).to_owned()
    }

    /// Fills in who had seen what, near and far.
    fn follow(&mut self, after: &[&Vec<MoveId>]) {
        self.sees = after.iter().map(|seen| self.direct(seen)).collect();
        for (index, seen) in after.iter().enumerate() {
            let named: BTreeSet<&MoveId> = seen.iter().collect();
            let arrived = self.sees[index].count_ones();
            self.claims[index].in_the_dark = named.len() > usize::try_from(arrived).unwrap();
        }
        loop {
            let before = self.sees.clone();
            for index in 0..self.sees.len() {
                self.sees[index] = self.far(self.sees[index]);
            }
            if self.sees == before {
                return;
            }
        }
    }

    fn direct(&self, seen: &[MoveId]) -> u128 {
        let named = |claim: &Claim| {
            seen.iter()
                .any(|id| id.command.as_str() == claim.name.0 && id.nth == claim.name.1)
        };
        (0..self.claims.len())
            .filter(|index| named(&self.claims[*index]))
            .fold(0, |bits, index| bits | 1 << index)
    }

    fn far(&self, near: u128) -> u128 {
        (0..self.sees.len())
            .filter(|index| near >> index & 1 == 1)
            .fold(near, |bits, index| bits | self.sees[index])
    }

    /// What a statement that names these had seen.
    fn seen(&self, after: &[MoveId]) -> u128 {
        self.far(self.direct(after))
    }

    fn about(&self, thing: &str, at: Option<u16>) -> Vec<usize> {
        (0..self.claims.len())
            .filter(|index| {
                let claim = &self.claims[*index];
                claim.stands && claim.thing == thing && at.is_none_or(|at| claim.at.contains(&at))
            })
            .collect()
    }

    /// Of some claims, those that none of the others has seen.
    fn last(&self, claims: &[usize]) -> Vec<usize> {
        let passed = claims
            .iter()
            .fold(0, |bits, index| bits | self.sees[*index]);
        let unseen = |index: &&usize| passed >> **index & 1 == 0;
        claims.iter().filter(unseen).copied().collect()
    }

    pub fn places(&self, thing: &str) -> BTreeSet<u16> {
        let spoken = self
            .about(thing, None)
            .into_iter()
            .flat_map(|index| self.claims[index].at.clone());
        let Some(item) = self.things.get(thing) else {
            return spoken.collect();
        };
        let counted = item.pieces.iter().map(|piece| piece.position);
        if self.recounted.contains(thing) && !strict(item) && item.system != System::Unknown {
            counted.collect()
        } else {
            counted.chain(spoken).collect()
        }
    }

    /// Where a piece is: more than one where people disagree.
    pub fn whereabouts(&self, thing: &str, at: u16) -> BTreeSet<(Is, Made)> {
        self.last(&self.about(thing, Some(at)))
            .into_iter()
            .map(|index| (self.claims[index].is, self.claims[index].made))
            .collect()
    }

    /// The state the walk-round found, if whoever moved the piece knew of it.
    fn was_found(&self, item: &Item, thing: &str, at: u16) -> Option<Is> {
        let claims = self.about(thing, Some(at));
        let of = |how: How| {
            let claims = claims.iter().copied();
            claims.filter(move |index| self.claims[*index].how == how)
        };
        let nothing_but_finds = |find: &usize| {
            let known = self.sees[*find] | 1 << find;
            (0..self.claims.len())
                .filter(|index| known >> index & 1 == 1)
                .map(|index| &self.claims[index])
                .all(|claim| claim.how == How::Found && !claim.in_the_dark)
        };
        let walked: Vec<usize> = of(How::Found).filter(nothing_but_finds).collect();
        let found = self.last(&walked);
        let states: BTreeSet<Is> = found.iter().map(|index| self.claims[*index].is).collect();
        let known = |mover: usize| found.iter().any(|f| self.sees[mover] >> f & 1 == 1);
        if strict(item) || states.len() != 1 || !of(How::Moved).all(known) {
            return None;
        }
        states.first().copied()
    }

    fn in_order(&self, thing: &str, at: u16, (is, made): (Is, Made)) -> bool {
        let Some(item) = self.things.get(thing) else {
            return false;
        };
        let (home, _) = belongs(item.kind);
        let (found, wanted) = self.home(item, thing, at);
        let placed = is == home || is == found;
        let renewed = wanted == Made::Old || made != Made::Old;
        placed && renewed || self.refused(item, thing, at, is)
    }

    /// Where a piece belongs: as it was found, else as its kind does; new, if it was off and
    /// may not go back.
    pub fn home(&self, item: &Item, thing: &str, at: u16) -> (Is, Made) {
        let (home, away) = belongs(item.kind);
        let was_off = self
            .about(thing, Some(at))
            .into_iter()
            .any(|index| self.claims[index].how == How::Moved && self.claims[index].is == away);
        let made = match item.spent && was_off {
            true => Made::New,
            false => Made::Old,
        };
        (self.was_found(item, thing, at).unwrap_or(home), made)
    }

    /// Whether the customer signed that it may stay so; never for a missing wheel nut.
    fn refused(&self, item: &Item, thing: &str, at: u16, is: Is) -> bool {
        let gone = matches!(is, Is::Out | Is::Stub(false) | Is::Off);
        let strict = matches!(item.system, System::Wheels | System::Unknown);
        if item.kind == Kind::Fasteners && strict && gone {
            return false;
        }
        self.facts.iter().any(|(_, _, fact)| match fact {
            Fact::Declined {
                items,
                at: signed,
                signature: Some(_),
                ..
            } => {
                items
                    .iter()
                    .any(|item| self.one_name(item.as_str()) == thing)
                    && (signed.is_empty() || signed.contains(&at))
            }
            _ => false,
        })
    }

    pub fn open(&self) -> Open {
        let mut names: BTreeSet<String> = self.things.keys().cloned().collect();
        let spoken_of = self.claims.iter().filter(|claim| claim.stands);
        names.extend(spoken_of.map(|claim| claim.thing.clone()));
        let mut out = BTreeMap::new();
        for thing in names {
            let places = self.places(&thing);
            let pieces: BTreeMap<u16, BTreeSet<(Is, Made)>> = places
                .iter()
                .map(|at| (*at, self.whereabouts(&thing, *at)))
                .filter(|(at, stands)| {
                    !stands
                        .iter()
                        .all(|stand| self.in_order(&thing, *at, *stand))
                })
                .collect();
            if !pieces.is_empty() && !self.may_be_missing(&thing, &places, &pieces) {
                out.insert(thing, pieces);
            }
        }
        out
    }

    fn may_be_missing(
        &self,
        thing: &str,
        places: &BTreeSet<u16>,
        pieces: &BTreeMap<u16, BTreeSet<(Is, Made)>>,
    ) -> bool {
        let Some(item) = self.things.get(thing).filter(|item| !strict(item)) else {
            return false;
        };
        let Some(rule) = &item.may_miss else {
            return false;
        };
        let missing = |at: &&u16| {
            self.whereabouts(thing, **at)
                .iter()
                .any(|(is, _)| *is == Is::Out)
        };
        let all = places.iter().filter(missing).count();
        pieces.iter().all(|(at, stands)| {
            stands.iter().all(|(is, _)| *is == Is::Out) && !rule.never_at.contains(at)
        }) && all <= usize::from(rule.up_to)
    }

    fn disturbed(&self, thing: &str) -> Vec<usize> {
        let mut claims = self.about(thing, None);
        claims.retain(|index| self.claims[*index].how == How::Moved);
        claims
    }

    /// Everything on the technician's list against handing over, by its code, and whether
    /// it can be waived.
    pub fn against(&self) -> BTreeMap<String, bool> {
        let mut out = BTreeMap::new();
        let open = self.open();
        for (thing, pieces) in &open {
            let at: Vec<String> = pieces
                .iter()
                .map(|(at, stands)| {
                    let stands: Vec<String> = stands.iter().map(|(is, _)| word(*is)).collect();
                    format!("{at}={}", stands.join("+"))
                })
                .collect();
            let known = self.things.get(thing);
            let lost = known.is_some_and(|item| item.system == System::Unknown);
            let wheel = known.is_some_and(|item| item.system == System::Wheels);
            let code = if lost { "unlocated" } else { "open" };
            let key = format!("{code}:{thing}:{}", at.join(","));
            out.insert(key, known.is_some() && !lost && !wheel);
        }
        let mut more = self.owed();
        more.extend(self.unchecked(&open));
        more.extend(self.unproven());
        more.extend(self.adrift());
        let short = self.things.contains_key("coolant") && !open.contains_key("coolant");
        if short && self.tenths_missing() > 10 && !self.seen_cold() {
            more.push("much-missing:coolant".into());
        }
        // Handing over to drive away asks all that the road asks, and that all that rolling
        // asks: what drips is caught (design.md, rule 4).
        if self.things.contains_key("coolant")
            && open.contains_key("coolant")
            && self.was_drained()
            && !self.caught()
        {
            more.push("not-caught:coolant".into());
        }
        out.extend(more.into_iter().map(|key| (key, true)));
        // Tightening asks which of several torques holds; nobody lets that pass.
        for (thing, known) in &self.known {
            if known.torques.len() > 1 && !self.disturbed(thing).is_empty() {
                out.insert(format!("told-apart:{thing}:torque"), false);
            }
        }
        out
    }

    /// What is told beside it and shuts nothing, by its code.
    pub fn told(&self) -> BTreeSet<String> {
        let mut out = BTreeSet::new();
        if !self.things.contains_key("coolant") || self.open().contains_key("coolant") {
            return out;
        }
        let missing = self.tenths_missing();
        if missing > 5 && (missing <= 10 || self.seen_cold()) {
            out.insert("litres-short:coolant".into());
        }
        let low = |index: &usize| self.claims[*index].is == Is::Low;
        if !self.caught() && self.disturbed("coolant").iter().any(low) {
            out.insert("fate-untold:coolant".into());
        }
        out
    }

    /// Whether any coolant came out into something.
    fn caught(&self) -> bool {
        let into_a_pan = |fact: &Fact| matches!(fact, Fact::Drained { amount, .. } if amount.as_str() != "0.0 L");
        self.facts.iter().any(|(_, _, fact)| into_a_pan(fact))
    }

    /// Whether anybody moved the coolant, not merely looked at it.
    fn was_drained(&self) -> bool {
        !self.disturbed("coolant").is_empty()
    }

    /// The doings of a work: what each had seen, together.
    fn done(&self, work: WorkIs, thing: Option<&str>) -> u128 {
        self.facts.iter().fold(0, |bits, (_, _, fact)| match fact {
            Fact::WorkDone {
                work: done, after, ..
            } if done.work == work
                && done
                    .item
                    .as_ref()
                    .map(|item| self.one_name(item.as_str()))
                    .as_deref()
                    == thing =>
            {
                bits | self.seen(after)
            }
            Fact::LevelSeen {
                item,
                level,
                good: true,
                after,
                ..
            } if Some(item.as_str()) == thing
                && (*level == LevelAt::Warm && work == WorkIs::LevelWarm
                    || *level == LevelAt::Cold && work == WorkIs::LevelCold) =>
            {
                bits | self.seen(after)
            }
            _ => bits,
        })
    }

    fn owed(&self) -> Vec<String> {
        let mut out = Vec::new();
        let causes = |thing: &str| {
            let known = self.things.contains_key(thing);
            let moved = if known { self.disturbed(thing) } else { vec![] };
            moved
                .into_iter()
                .fold(0u128, |bits, index| bits | 1 << index)
        };
        let coolant = causes("coolant");
        let cold = self.done(WorkIs::LevelCold, Some("coolant"));
        let warm = self.done(WorkIs::LevelWarm, Some("coolant")) | cold;
        let today = |index: usize| {
            let day = |at: Timestamp| at.as_second().div_euclid(86_400);
            self.claims[index].is == Is::AtLevel && day(self.claims[index].when) == day(self.now)
        };
        let filled_today = self.disturbed("coolant").into_iter().any(today);
        let bled = self.done(WorkIs::Bleed, Some("coolant"));
        let looked = self.done(WorkIs::LookForLeaks, None);
        for (work, causes, done) in [
            ("Bleed:coolant", coolant, bled),
            ("LevelWarm:coolant", coolant, warm),
            (
                "LevelCold:coolant",
                coolant,
                cold | if filled_today { u128::MAX } else { 0 },
            ),
            ("LookForLeaks:", coolant, looked),
            (
                "ClockAndWindows:",
                causes("battery"),
                self.done(WorkIs::ClockAndWindows, None),
            ),
        ] {
            if causes & !done != 0 {
                out.push(format!("owed:{work}"));
            }
        }
        let is_done = |own: &WorkId| {
            self.facts.iter().any(|(_, _, fact)| {
                matches!(fact, Fact::WorkDone { work, .. } if work.own.as_ref() == Some(own))
            })
        };
        for (_, _, fact) in &self.facts {
            if let Fact::WorkDue {
                id,
                until: Until::Before(_),
                ..
            } = fact
                && !is_done(id)
            {
                out.push(format!("owed:own:{id}"));
            }
        }
        if let Some(need) = self.need {
            let tight = self.one_name(need.to_tighten);
            let broken = self.tightened_too_early(need);
            if broken & !self.done(WorkIs::TorqueAgain, Some(&tight)) != 0 {
                out.push(format!("owed:TorqueAgain:{tight}"));
            }
        }
        out
    }

    /// Tightenings made while, as their author knew, what they want was not in place, and
    /// not made again since.
    fn tightened_too_early(&self, need: &Need) -> u128 {
        let wanted = self.one_name(need.wants_on);
        let mut tightenings = self.disturbed(&self.one_name(need.to_tighten));
        tightenings.retain(|index| self.claims[*index].is == Is::Tight);
        let good = |mover: usize| {
            let seen = self.sees[mover] | self.far(self.before_in_stage(mover));
            // Nobody spoke of it: no places, and it stands where it belongs.
            self.places(&wanted).iter().all(|at| {
                let mut known = self.about(&wanted, Some(*at));
                known.retain(|index| seen >> index & 1 == 1);
                let last = self.last(&known);
                let item = self.things.get(&wanted);
                let found = item.and_then(|item| self.was_found(item, &wanted, *at));
                if last.is_empty() {
                    found.unwrap_or(Is::On) == Is::On
                } else {
                    last.iter().all(|index| self.claims[*index].is == Is::On)
                }
            })
        };
        let made_good = |early: usize, at: u16| {
            tightenings.iter().any(|later| {
                self.sees[*later] >> early & 1 == 1
                    && self.claims[*later].at.contains(&at)
                    && good(*later)
            })
        };
        tightenings
            .iter()
            .filter(|index| !good(**index))
            .filter(|index| {
                let at = &self.claims[**index].at;
                !at.iter().all(|at| made_good(**index, *at))
            })
            .fold(0, |bits, index| bits | 1 << index)
    }

    /// The moves of one stage were made in their sequence, whether or not one names another.
    fn before_in_stage(&self, mover: usize) -> u128 {
        let (command, nth) = &self.claims[mover].name;
        (0..self.claims.len())
            .filter(|index| {
                let claim = &self.claims[*index];
                claim.stands && claim.name.0 == *command && claim.name.1 < *nth
            })
            .fold(0, |bits, index| bits | 1 << index)
    }

    fn unchecked(&self, open: &Open) -> Vec<String> {
        let mut out = Vec::new();
        for (thing, item) in &self.things {
            let moved = self.disturbed(thing);
            if !strict(item) || open.contains_key(thing) || moved.is_empty() {
                continue;
            }
            let mut last = BTreeSet::new();
            for at in self.places(thing) {
                let mut here = moved.clone();
                here.retain(|index| self.claims[*index].at.contains(&at));
                last.extend(self.last(&here));
            }
            let movers: BTreeSet<&str> = last
                .iter()
                .map(|index| self.claims[*index].who.as_str())
                .collect();
            let checked = self.facts.iter().any(|(_, who, fact)| match fact {
                Fact::Checked {
                    check,
                    items,
                    after,
                    ..
                } => {
                    let seen = self.seen(after);
                    items.iter().any(|item| self.is_it(item, thing))
                        && last.iter().all(|index| seen >> index & 1 == 1)
                        && (*check == CheckIs::WalkedBack || !movers.contains(who))
                }
                _ => false,
            });
            if !checked {
                out.push(format!("not-checked:{thing}"));
            }
        }
        out
    }

    fn unproven(&self) -> Vec<String> {
        let disturbed: Vec<(&String, &Item)> = self
            .things
            .iter()
            .filter(|(thing, item)| item.kind != Kind::PutIn && !self.disturbed(thing).is_empty())
            .collect();
        let cooling = disturbed
            .iter()
            .any(|(_, item)| item.system == System::Cooling);
        // A proof takes the place only of one of its own kind.
        let replaced: BTreeSet<(ProofIs, &str)> = self
            .facts
            .iter()
            .filter_map(|(_, _, fact)| match fact {
                Fact::Proved {
                    proof, replaces, ..
                } => Some(replaces.iter().map(|of| (*proof, of.as_str()))),
                _ => None,
            })
            .flatten()
            .collect();
        let mut out = Vec::new();
        for (proof, name, needed) in [
            (ProofIs::RoadTest, "RoadTest", !disturbed.is_empty()),
            (ProofIs::LeakTest, "LeakTest", cooling),
        ] {
            let shown: Vec<(&Outcome, u128)> = self
                .facts
                .iter()
                .filter_map(|(_, _, fact)| match fact {
                    Fact::Proved {
                        id,
                        proof: of,
                        outcome,
                        after,
                        ..
                    } if *of == proof && !replaced.contains(&(proof, id.as_str())) => {
                        Some((outcome, self.seen(after)))
                    }
                    _ => None,
                })
                .collect();
            let failed = shown
                .iter()
                .any(|(outcome, _)| **outcome == Outcome::Failed);
            let concerned: Vec<&String> = disturbed
                .iter()
                .filter(|(thing, item)| {
                    let system = match proof {
                        ProofIs::LeakTest => item.system == System::Cooling,
                        _ => [System::Wheels, System::Cooling, System::Exhaust]
                            .iter()
                            .any(|system| self.known[*thing].may_be(*system)),
                    };
                    system && item.kind != Kind::Fluid
                })
                .map(|(thing, _)| *thing)
                .collect();
            let held = shown.iter().any(|(outcome, seen)| {
                **outcome != Outcome::Failed
                    && concerned
                        .iter()
                        .all(|thing| self.was_in_order(thing, *seen))
            });
            if failed {
                out.push(format!("proof-failed:{name}"));
            } else if needed && !held {
                out.push(format!("proof-missing:{name}"));
            }
        }
        out
    }

    /// Whether all that had been seen of a thing was in order, and nothing not seen
    /// took it out of order.
    fn was_in_order(&self, thing: &str, seen: u128) -> bool {
        self.places(thing).into_iter().all(|at| {
            let (known, unknown): (Vec<usize>, Vec<usize>) = self
                .about(thing, Some(at))
                .into_iter()
                .partition(|index| seen >> index & 1 == 1);
            let fine = |index: &usize| {
                let claim = &self.claims[*index];
                self.in_order(thing, at, (claim.is, claim.made))
            };
            self.last(&known).iter().all(fine) && unknown.iter().all(fine)
        })
    }

    fn adrift(&self) -> Vec<String> {
        let mut out = Vec::new();
        let ended = |snag: &str| {
            self.facts.iter().any(|(_, _, fact)| {
                matches!(fact, Fact::SnagResolved { snag: ended, .. } if ended.as_str() == snag)
            })
        };
        let stepped = |part: &str, fitted: bool| {
            self.facts.iter().any(|(_, _, fact)| match fact {
                Fact::PartStepped { part: of, step, .. } => {
                    of.as_str() == part
                        && (*step == PartStep::Fitted || !fitted && *step == PartStep::Stocked)
                }
                _ => false,
            })
        };
        for (_, _, fact) in &self.facts {
            match fact {
                Fact::SnagFound { snag, .. } if !ended(snag.as_str()) => {
                    out.push(format!("snag:{snag}"));
                }
                Fact::PartNeeded { part, .. } => {
                    let old_went = self.facts.iter().any(|(_, _, fact)| {
                        matches!(fact, Fact::OldPart { part: Some(of), .. } if of == part)
                    });
                    if !stepped(part.as_str(), false) {
                        out.push(format!("part:{part}"));
                    }
                    if stepped(part.as_str(), true) && !old_went {
                        out.push(format!("old-part:{part}"));
                    }
                }
                _ => {}
            }
        }
        out
    }

    /// Tenths of a litre that came out and did not go back.
    fn tenths_missing(&self) -> i64 {
        let tenths = |amount: &repair::Written| -> i64 {
            let digits: String = amount
                .as_str()
                .chars()
                .filter(char::is_ascii_digit)
                .collect();
            digits.parse().unwrap()
        };
        self.facts
            .iter()
            .map(|(_, _, fact)| match fact {
                Fact::Drained { amount, .. } => tenths(amount),
                Fact::Poured { amount, .. } => -tenths(amount),
                _ => 0,
            })
            .sum()
    }

    fn seen_cold(&self) -> bool {
        let moved = self
            .disturbed("coolant")
            .into_iter()
            .fold(0u128, |bits, index| bits | 1 << index);
        self.facts.iter().any(|(_, _, fact)| match fact {
            Fact::LevelSeen {
                level: LevelAt::Cold,
                good: true,
                after,
                ..
            } => moved & !self.seen(after) == 0,
            _ => false,
        })
    }

    // What a device needs to know to write its facts.

    /// The names of the claims about some things: all, or those that stand last.
    pub fn known(&self, things: &[&str], only_last: bool) -> Vec<MoveId> {
        let mut out = BTreeSet::new();
        for thing in things {
            let thing = self.one_name(thing);
            let all: Vec<usize> = (0..self.claims.len())
                .filter(|index| self.claims[*index].thing == thing)
                .collect();
            let mut named = all.clone();
            if only_last {
                named.clear();
                for at in all.iter().flat_map(|index| self.claims[*index].at.clone()) {
                    named.extend(self.last(&self.about(&thing, Some(at))));
                }
            }
            out.extend(
                named
                    .into_iter()
                    .map(|index| self.claims[index].name.clone()),
            );
        }
        out.into_iter()
            .map(|(command, nth)| MoveId {
                command: CommandId::new(command),
                nth,
            })
            .collect()
    }

    /// The facts that stand, each with its command.
    pub fn facts(&self) -> impl Iterator<Item = (&str, &Fact)> {
        self.facts
            .iter()
            .map(|(command, _, fact)| (*command, *fact))
    }

    pub fn is_declared(&self, thing: &str) -> bool {
        self.things.contains_key(&self.one_name(thing))
    }

    /// The things that were declared.
    pub fn things(&self) -> &BTreeMap<String, Item> {
        &self.things
    }

    /// A thing as people tell of it.
    pub fn known_as(&self, thing: &str) -> Option<&Known> {
        self.known.get(&self.one_name(thing))
    }

    /// The commands that told something of a thing: all, or those that stand last.
    pub fn tellings_of(&self, thing: &str, about: About, only_last: bool) -> Vec<CommandId> {
        let name = self.one_name(thing);
        let is_it = |item: &repair::ItemId| self.is_it(item, &name);
        let told = if only_last {
            let last = self.tellings.last(about, is_it);
            last.into_iter().map(|(command, _)| command).collect()
        } else {
            self.tellings.all(about, is_it)
        };
        told.into_iter().map(CommandId::new).collect()
    }
}

/// Whether a reason says nothing worse than was known when it left: of the same thing, no
/// piece that was not away then, and none farther away.
pub fn was_known(key: &str, known: &BTreeSet<String>) -> bool {
    let read = |key: &str| -> Option<(String, BTreeMap<String, Vec<String>>)> {
        let (code, rest) = key.split_once(':')?;
        let (thing, places) = rest.rsplit_once(':')?;
        let places = places.split(',').map(|place| {
            let (at, stands) = place.split_once('=').unwrap();
            let stands = stands.split('+').map(str::to_owned);
            (at.to_owned(), stands.collect())
        });
        ["open", "unlocated"]
            .contains(&code)
            .then(|| (thing.to_owned(), places.collect()))
    };
    // How far away, by the ladder: in its place, by hand with so many passes, out.
    let distance = |word: &str| match word {
        "On" | "Tight" | "Plugged" | "AtLevel" | "Outside" => Some(0),
        "Out" => Some(1000),
        loose => Some(999 - loose.strip_prefix("Loose")?.parse::<i32>().ok()?),
    };
    let nearer = |now: &String, then: &String| {
        now == then
            || match (distance(now), distance(then)) {
                (Some(now), Some(then)) => now <= then && then > 0,
                (Some(now), None) => now == 0,
                _ => false,
            }
    };
    let Some((thing, now)) = read(key) else {
        return known.contains(key);
    };
    known.iter().filter_map(|key| read(key)).any(|(of, then)| {
        of == thing
            && now.iter().all(|(at, stands)| {
                let then = then.get(at).cloned().unwrap_or_default();
                stands
                    .iter()
                    .all(|now| then.iter().any(|then| nearer(now, then)))
            })
    })
}

type Heard<'a> = BTreeMap<&'a str, (&'a Recorded<Event>, &'a Fact)>;

fn taken_back(command: &str, heard: &Heard<'_>) -> bool {
    heard.iter().any(|(by, (_, fact))| {
        matches!(fact, Fact::Undo { command: target, part: None } if target.as_str() == command)
            && !taken_back(by, heard)
    })
}

/// Whether one move of a command is taken back, and the rest of it is not.
fn taken_back_alone((command, nth): (&str, u16), heard: &Heard<'_>) -> bool {
    heard.iter().any(|(by, (_, fact))| {
        matches!(fact, Fact::Undo { command: target, part: Some(part) }
            if target.as_str() == command && *part == nth)
            && !taken_back(by, heard)
    })
}
