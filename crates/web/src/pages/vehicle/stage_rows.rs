//! The rows of a stage as a device sends them: what is first touched is described, then
//! everything moves at once; fluids with their litres, work as done.

use crate::phrases::vehicle as say;
use crate::tap::{field, new, order_fact, when, words};
use serde_json::{Value, json};
use shop::ItemLine;
use shop::looks::is_look;
use shop::plan::Way;
use shop::planning::{
    OrderMap, RowShown, StageShown, declared, in_order, owing, sort_of_work, torque_source,
};
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::{KindForm, WorkIsForm};
use shop::repair::{ItemId, Kind, State};
use shop::view::{DebtView, ItemView, MoveName, OrderView, PartView};

/// One row, with what the order knows of its item.
pub struct Row<'a> {
    /// The row.
    pub shown: &'a RowShown,
    id: &'a ItemId,
    described: Option<Value>,
    seen: Vec<MoveName>,
    debts: Vec<&'a DebtView>,
    /// The new part that goes on with it, while nothing says where that is.
    part: Option<&'a PartView>,
    holds: Option<String>,
}

/// The rows of a stage.
pub fn rows<'a>(order: &'a OrderView, on: &'a OrderMap, stage: &'a StageShown) -> Vec<Row<'a>> {
    let view = |id: &ItemId| order.items.iter().find(|item| item.item == id.as_str());
    let mut out = Vec::new();
    for shown in stage.rows.iter().filter(|row| !only_tight_left(on, row)) {
        let id = on.id(&shown.item);
        let mut seen: Vec<MoveName> = [id.clone()]
            .into_iter()
            .chain(on.looked_at(&shown.item))
            .filter_map(|id| view(&id))
            .flat_map(|item| item.seen.clone())
            .collect();
        seen.sort();
        seen.dedup();
        let known = on.map.items.get(&shown.item);
        let holds = known.and_then(|known| known.holds.as_ref());
        out.push(Row {
            described: declared(&on.map, &shown.item, &words).filter(|_| view(id).is_none()),
            seen,
            debts: debts(order, on, shown),
            part: new_part(order, shown, id),
            holds: holds.map(shop::planning::amount),
            shown,
            id,
        });
    }
    out
}

/// The part that is needed for this item and goes on here: all of it, or one of its pieces.
fn new_part<'a>(order: &'a OrderView, shown: &RowShown, id: &ItemId) -> Option<&'a PartView> {
    let goes_on = shown.way == Way::Back;
    let is_it = |part: &&PartView| part.item.as_deref() == Some(id.as_str()) && part.adrift != "0";
    order.parts.iter().find(is_it).filter(|_| goes_on)
}

/// Whether its pieces are on, so that nothing is left but the torque.
fn only_tight_left(on: &OrderMap, row: &RowShown) -> bool {
    let stands = on.stands(&row.item);
    let is_on = |at: &u16| {
        let on = |(position, state): &(u16, State)| {
            position == at && matches!(state, State::Loose { .. })
        };
        stands.iter().any(on)
    };
    !row.torque.is_empty() && row.at.iter().all(is_on)
}

/// What the order owes that is this work of the map.
fn debts<'a>(order: &'a OrderView, on: &OrderMap, shown: &RowShown) -> Vec<&'a DebtView> {
    if shown.kind != Kind::Work {
        return Vec::new();
    }
    let named = in_order(&shown.item);
    let sort = WorkIsForm::of(&sort_of_work(&on.map, &shown.item));
    let ids: Vec<&str> = owing(&on.map, &shown.item)
        .map(|(item, _)| on.id(item).as_str())
        .collect();
    let meant = |debt: &&DebtView| match &debt.owed.named {
        Some(owed) => owed.0 == named.as_str(),
        None => {
            debt.work == sort
                && sort != WorkIsForm::Other
                && debt.own.is_none()
                && debt.items.iter().any(|item| ids.contains(&item.as_str()))
        }
    };
    order.debts.iter().filter(meant).collect()
}

impl Row<'_> {
    /// The item's name in the order.
    pub fn id(&self) -> &str {
        self.id.as_str()
    }

    /// What tells the order what the item is, if it does not know yet.
    pub fn described(&self) -> Option<&Value> {
        self.described.as_ref()
    }

    /// How many pieces move.
    pub fn pieces(&self) -> usize {
        match self.only_told() {
            true => 0,
            false => self.shown.at.len(),
        }
    }

    /// Whether the row only says what the others lead to: work that becomes owed.
    pub fn only_told(&self) -> bool {
        self.shown.kind == Kind::Work && self.shown.way == Way::Out
    }

    /// Whether it is a look that only a person can say was made.
    pub fn is_look(&self) -> bool {
        !self.only_told() && self.debts.iter().any(|debt| is_look(debt))
    }

    /// Whether it can be laid down somewhere.
    pub fn can_lie(&self) -> bool {
        !matches!(
            self.shown.kind,
            Kind::Fluid | Kind::Work | Kind::PutIn | Kind::Connector
        )
    }

    /// The state it is left in: what has a torque goes on first, and is tightened apart.
    fn left(&self) -> State {
        match self.shown.torque.is_empty() {
            false => State::Loose { passes: 0 },
            true => match self.shown.to {
                State::Cracked if self.shown.way == Way::Back => State::Loose { passes: 0 },
                to => to,
            },
        }
    }

    /// What it comes to, in words.
    pub fn words(&self) -> String {
        let fasteners = self.shown.kind == Kind::Fasteners && self.shown.way == Way::Back;
        let base = match self.left() {
            State::Loose { .. } => say::on_not_tight_yet(),
            State::Tight if fasteners => say::on_snug_and_checked(),
            _ => &self.shown.done,
        };
        match self.shown.spent && self.shown.way == Way::Back {
            true => format!("{base}{}", say::comma_a_new_one()),
            false => base.to_owned(),
        }
    }

    /// What goes on new among its pieces, where not all of it does.
    pub fn new_piece(&self) -> Option<&str> {
        let part = self.part.filter(|_| !self.shown.spent)?;
        Some(&part.label)
    }

    /// What it comes to with the first pass of its torque.
    pub fn words_after_a_pass(&self) -> String {
        let passes = &self.shown.torque;
        let torque = passes.first().map_or("", String::as_str);
        match self.after_a_pass() {
            State::Tight => say::on_with_torque(torque),
            _ => say::on_pass_1_at(torque),
        }
    }

    /// What the map knows of a fluid's litres.
    pub fn fluid_hint(&self) -> String {
        match &self.holds {
            Some(holds) => say::with_its_unit_it_holds(holds),
            None => say::with_its_unit().to_owned(),
        }
    }

    /// The row as a typed line would be read, for its cautions.
    pub fn as_line(&self, on: &OrderMap) -> Option<ItemLine> {
        let (kind, system, zone) = on.thing(&self.shown.item)?;
        Some(ItemLine {
            count: u16::try_from(self.pieces()).unwrap_or(u16::MAX),
            label: self.shown.label.clone(),
            size: None,
            amount: None,
            passes: Vec::new(),
            kind,
            system,
            zone,
            sort: None,
            put_in: None,
            sure: shop::repair::SureIs::Sure,
            mend: None,
        })
    }

    /// The one torque of a stage on the way back that is given with the same tap, after
    /// the last piece went on: the first pass of its first group. Other groups and passes
    /// are taps of their own.
    pub fn closing<'a, 'b>(rows: &'b [Row<'a>]) -> Option<&'b Row<'a>> {
        let first = rows.iter().find(|row| !row.shown.torque.is_empty())?;
        let alone = rows.iter().filter(|row| row.id == first.id).count() == 1;
        (first.shown.way == Way::Back && alone).then_some(first)
    }

    /// The state that the first pass of its torque leaves it in.
    pub fn after_a_pass(&self) -> State {
        match self.shown.torque.len() {
            0 | 1 => State::Tight,
            _ => State::Loose { passes: 1 },
        }
    }

    /// The commands of a stage: described, moved, litres, work done. `tight` is the row
    /// whose first pass is given with it.
    pub fn commands(rows: &[Row<'_>], order: &OrderView, tight: Option<&Row<'_>>) -> Vec<Value> {
        let ticked = |nth: usize| format!("row-{nth}");
        let fact = |content: Value| order_fact(&order.order, content);
        let mut out = Vec::new();
        for (nth, row) in rows.iter().enumerate() {
            let described = row
                .described
                .clone()
                .filter(|_| row.shown.kind != Kind::Work);
            out.extend(described.map(|declared| when(&ticked(nth), fact(declared))));
        }
        let moves: Vec<Value> = rows
            .iter()
            .enumerate()
            .filter(|(_, row)| row.shown.kind != Kind::Work)
            .map(|(nth, row)| {
                let is_tight = tight.is_some_and(|tight| tight.id == row.id);
                let left = if is_tight {
                    row.after_a_pass()
                } else {
                    row.left()
                };
                when(&ticked(nth), row.moved(nth, left))
            })
            .collect();
        if !moves.is_empty() {
            out.push(fact(
                json!({ "moved": { "stage": new("stage"), "moves": moves } }),
            ));
        }
        for (nth, row) in rows.iter().enumerate() {
            out.extend(
                row.litres(nth)
                    .map(|litres| when(&format!("amount-{nth}"), fact(litres))),
            );
            out.extend(row.part.map(|part| {
                let fitted = json!({ "part-stepped": { "part": part.part, "quantity": part.adrift,
                    "step": "fitted", "due": null, "words": null } });
                when(&ticked(nth), fact(fitted))
            }));
            for debt in row.debts.iter().filter(|_| !row.only_told()) {
                let done = json!({ "work-done": { "work": debt.owed, "after": debt.seen, "words": null } });
                out.push(when(&ticked(nth), fact(done)));
            }
        }
        out
    }

    fn moved(&self, nth: usize, left: State) -> Value {
        let at: Vec<Value> = match self.shown.at.as_slice() {
            [one] => vec![json!(one)],
            several => several
                .iter()
                .map(|at| when(&format!("at-{nth}-{at}"), json!(at)))
                .collect(),
        };
        let back = self.shown.way == Way::Back;
        let piece = if back && self.shown.spent {
            "new"
        } else {
            "original"
        };
        let lies = !back && self.can_lie();
        json!({
            "item": self.id.as_str(),
            "at": at,
            "after": self.seen,
            "left": { "state": StateForm::of(&left), "piece": piece },
            "container": if lies { field("container") } else { Value::Null },
        })
    }

    fn litres(&self, nth: usize) -> Option<Value> {
        let amount = field(&format!("amount-{nth}"));
        let item = self.id.as_str();
        (self.shown.kind == Kind::Fluid).then(|| match self.shown.way {
            Way::Out => json!({ "drained": { "item": item, "amount": amount, "fate": "kept", "temperature": null } }),
            Way::Back => json!({ "poured": { "item": item, "amount": amount, "what": null, "temperature": null } }),
        })
    }
}

/// A group that is on and not tight, and its next pass.
pub struct Tightening<'a> {
    /// The item.
    pub item: &'a ItemView,
    /// The positions.
    pub at: Vec<u16>,
    /// The torque of the next pass.
    pub torque: String,
    /// Which pass that is.
    pub pass: usize,
    /// How many there are.
    pub total: usize,
    /// The sequence, in the map's words.
    pub pattern: Option<&'a str>,
    /// Who says so.
    pub source: Option<String>,
    /// What differs from the map by now, and goes before it.
    pub differs: &'a [String],
}

/// What has a torque by the map, is on, and may be tightened by what it needs.
pub fn tightenings<'a>(order: &'a OrderView, on: &'a OrderMap) -> Vec<Tightening<'a>> {
    let mut out = Vec::new();
    for (name, known) in &on.map.items {
        let id = on.id(name).as_str();
        let Some(item) = order.items.iter().find(|item| item.item == id) else {
            continue;
        };
        if known.torque.is_empty() || item.home || !on.may_come_to(name, State::Tight) {
            continue;
        }
        for group in &item.pieces {
            let Some(StateForm::Loose { passes }) = group.state else {
                continue;
            };
            let done = usize::from(passes).min(known.torque.len() - 1);
            out.push(Tightening {
                item,
                at: group.at.clone(),
                torque: known
                    .torque
                    .get(done)
                    .map_or_else(String::new, |pass| pass.written().replace(' ', "\u{202f}")),
                pass: done + 1,
                total: known.torque.len(),
                pattern: known.pattern.as_deref(),
                source: torque_source(&on.map, known),
                differs: on.differs.get(on.id(name)).map_or(&[], Vec::as_slice),
            });
        }
    }
    out
}

impl Tightening<'_> {
    /// The pieces in words.
    pub fn pieces(&self) -> String {
        if self.at.len() == self.item.positions.len() && self.at.len() > 1 {
            return say::all_n(self.at.len());
        }
        match self.at.as_slice() {
            [_] if self.item.positions.len() == 1 => String::new(),
            at => say::positions(shop::say::positions(at)),
        }
    }

    /// The fact that this pass is done.
    pub fn command(&self, order: &OrderView) -> Value {
        let state = match self.pass >= self.total {
            true => StateForm::Tight,
            false => StateForm::Loose {
                passes: u8::try_from(self.pass).unwrap_or(u8::MAX),
            },
        };
        let piece = if self.item.spent && self.item.kind != KindForm::PutIn {
            "new"
        } else {
            "original"
        };
        let change = super::pieces::change(self.item, &self.at, state, piece);
        order_fact(
            &order.order,
            json!({ "moved": { "stage": null, "moves": [change] } }),
        )
    }
}
