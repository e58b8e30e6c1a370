//! The desk of the simulated shop: sums agreed to, priced, charged and paid, keys, and work
//! that somebody says is owed.

use crate::papers::Papers;
use crate::world::World;
use price::{Charge, Entry, Payer};
use repair::*;

fn entry(each: i64) -> Entry {
    Entry {
        line: None,
        charge: Charge::Labour,
        label: None,
        quantity: 1.into(),
        each: each.into(),
        payer: Payer::Customer,
        less: Vec::new(),
    }
}

pub fn priced(world: &World, each: i64) -> Request {
    let seen = papers::priced_by(&world.order).cloned();
    Request::Price {
        entries: vec![entry(each)],
        after: seen.into_iter().collect(),
    }
}

pub fn agreed(amount: i64, after: Vec<CommandId>) -> Fact {
    Fact::Consented {
        step: ConsentStep::Repair,
        payer: Payer::Customer,
        lines: vec![],
        agreed: true,
        amount: Some(amount.into()),
        tax_included: false,
        way: Way::InPerson,
        person: None,
        said: None,
        number_called: None,
        signature: None,
        after,
    }
}

pub fn paid(amount: i64) -> Fact {
    Fact::Paid {
        payer: Payer::Customer,
        amount: amount.into(),
        by: PaidBy::Card,
        deposit: false,
    }
}

fn keys(step: KeyStep) -> Fact {
    Fact::Keys { step, words: None }
}

/// What is told at the desk, or of work that is owed, by somebody who knows what their
/// phone knows.
pub fn told(world: &mut World, device: usize) -> Fact {
    match world.draw(6) {
        0 => {
            let mut after =
                world.seen_commands(device, |fact| matches!(fact, Fact::Consented { .. }));
            match world.draw(4) {
                0 | 1 => after.clear(),
                2 => after = after.pop().into_iter().collect(),
                _ => {}
            }
            let amount = [80, 100, 120][world.draw(3)];
            agreed(amount, after)
        }
        1 => paid([-20, 20, 100][world.draw(3)]),
        2 => keys(KeyStep::Taken),
        3 => keys(KeyStep::GivenBack),
        4 => Fact::WorkDue {
            id: own(world),
            item: None,
            words: Words([0; 32]),
            until: match world.draw(3) {
                0 => Until::Later {
                    date: None,
                    distance: None,
                },
                1 => Until::Before(Gate::Roll),
                _ => Until::Before(Gate::HandOver),
            },
        },
        _ => {
            let id = own(world);
            done(&id)
        }
    }
}

fn own(world: &mut World) -> WorkId {
    WorkId::new(format!("own {}", world.draw(2)))
}

pub fn done(own: &WorkId) -> Fact {
    Fact::WorkDone {
        work: Work::declared(own.clone(), None),
        after: vec![],
        words: None,
    }
}

/// The desk asks for something; the answer is what the plain book says it should be.
pub fn ask(world: &mut World) {
    let papers = world.papers();
    match world.draw(3) {
        0 => {
            let each = [90, 100, 130][world.draw(3)];
            let priced = priced(world, each);
            world.ask(priced).expect("a price may always be set");
        }
        1 => write_down(world, &papers),
        _ => charge(world, &papers),
    }
}

fn write_down(world: &mut World, papers: &Papers) {
    let answers = papers::standing_answers(&world.order).remove(&Payer::Customer);
    let answers = answers.into_iter().flatten().map(|(answer, _)| answer);
    let after = answers
        .chain(papers::priced_by(&world.order))
        .cloned()
        .collect();
    let asked = world.ask(Request::WriteDown {
        payer: Payer::Customer,
        after,
    });
    let may = papers.over().is_some() && papers.open > 0;
    assert_eq!(asked.is_ok(), may, "{asked:?}");
}

fn charge(world: &mut World, papers: &Papers) {
    let asked = world.ask(Request::Charge { after: vec![] });
    let may = papers.agreed.is_some() && papers.over().is_none() && !papers.charged;
    assert_eq!(asked.is_ok(), may, "{asked:?}");
}

/// Somebody careful brings the papers in order; now and then they forget one thing.
pub fn settle(world: &mut World, device: usize) {
    if world.papers().agreed.is_none() {
        let net = world.papers().net();
        world.tell(device, agreed(net, vec![]));
        world.send_all(device);
    }
    if world.papers().over().is_some() {
        let papers = world.papers();
        write_down(world, &papers);
    }
    // What is on an invoice can't be written down: they are asked for it.
    let papers = world.papers();
    if papers.over().is_some() {
        let seen = world.seen_commands(device, |fact| matches!(fact, Fact::Consented { .. }));
        world.tell(device, agreed(papers.net(), seen));
        world.send_all(device);
    }
    let papers = world.papers();
    if !papers.charged && !world.one_in(12) {
        charge(world, &papers);
    }
    let left = papers.net() - papers.paid;
    if left > 0 && !world.one_in(12) {
        world.tell(device, paid(left));
    }
    if !world.one_in(12) {
        for _ in 0..papers.keys {
            world.tell(device, keys(KeyStep::GivenBack));
        }
    }
    world.send_all(device);
}
