//! An order read once: its account, what is owed, its litres and the answers of its gates,
//! each made when it is asked for first.

use crate::account::Account;
use crate::alarms;
use crate::debts::{self, Debt};
use crate::gates::{self, Answer};
use crate::litres::{self, Litres};
use crate::order::Order;
use crate::reason::Reason;
use crate::rules::Rules;
use states::{Gate, ItemId};
use std::cell::OnceCell;
use std::collections::BTreeMap;
use std::sync::Arc;

/// An order as it reads at one time under one set of rules.
#[derive(Debug, Clone)]
pub struct OrderReading<'a> {
    order: &'a Order,
    rules: Rules,
    account: Arc<Account>,
    litres: OnceCell<BTreeMap<ItemId, Litres>>,
    debts: OnceCell<Vec<Debt>>,
    answers: [OnceCell<Answer>; Gate::ALL.len()],
    alarms: OnceCell<Vec<Reason>>,
}

impl<'a> OrderReading<'a> {
    /// An order, read under these rules.
    #[must_use]
    pub fn of(order: &'a Order, rules: &Rules) -> Self {
        Self {
            order,
            rules: rules.clone(),
            account: order.account(),
            litres: OnceCell::new(),
            debts: OnceCell::new(),
            answers: Default::default(),
            alarms: OnceCell::new(),
        }
    }

    #[must_use]
    pub fn order(&self) -> &'a Order {
        self.order
    }

    /// The time and place it is asked under.
    #[must_use]
    pub fn rules(&self) -> &Rules {
        &self.rules
    }

    /// Where everything stands.
    #[must_use]
    pub fn account(&self) -> &Account {
        &self.account
    }

    /// Litres of every fluid.
    #[must_use]
    pub fn litres(&self) -> &BTreeMap<ItemId, Litres> {
        let read = || litres::litres(self.order, &self.account);
        self.litres.get_or_init(read)
    }

    /// Everything owed.
    #[must_use]
    pub fn debts(&self) -> &[Debt] {
        let read = || debts::debts(self.order, &self.account, &self.rules);
        self.debts.get_or_init(read)
    }

    /// Whether the vehicle may.
    #[must_use]
    pub fn answer(&self, gate: Gate) -> &Answer {
        let nth = Gate::ALL.iter().position(|one| *one == gate);
        let nth = nth.expect("all gates are among all gates");
        self.answers[nth].get_or_init(|| gates::answer(self, gate))
    }

    /// What came in after a hand-over and stands open.
    #[must_use]
    pub fn alarms(&self) -> &[Reason] {
        self.alarms.get_or_init(|| alarms::of(self))
    }
}
