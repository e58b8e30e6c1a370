//! What is told of a plan: whole bottles, inhibitors, and the working.

use super::blend::{Addition, Shelf, Stock, bottles};
use super::{MixPlan, MixQuestion, REACHED_WITHIN, Round, WholeBottles, after};
use crate::error::CoolantError;
use crate::inhibitor::{InhibitorNote, inhibitor_notes};
use crate::mixture::Mixture;
use crate::phrases as say;
use crate::{sources, text};
use measure::{Line, Source, Working};

pub(super) fn planned(question: &MixQuestion, rounds: Vec<Round>) -> Result<MixPlan, CoolantError> {
    let reached = rounds.last().map_or(question.now, |round| round.after);
    Ok(MixPlan {
        whole_bottles: whole_bottles(question, &rounds)?,
        inhibitors: notes(question, &rounds),
        working: working(question, &rounds, reached),
        rounds,
        reached,
    })
}

/// The last fill with its stronger part in whole bottles, if that still reaches.
fn whole_bottles(
    question: &MixQuestion,
    rounds: &[Round],
) -> Result<Option<WholeBottles>, CoolantError> {
    let Some((last, earlier)) = rounds.split_last() else {
        return Ok(None);
    };
    let [strong, weak] = last.add.as_slice() else {
        return Ok(None);
    };
    let bottle_l = question
        .shelf
        .iter()
        .find(|stock| stock.what == strong.what)
        .and_then(|stock| stock.bottle_l);
    let Some(bottle_l) = bottle_l else {
        return Ok(None);
    };
    let fill_l = question.capacity_l - question.left_l;
    let whole_l = libm::round(strong.litres / bottle_l) * bottle_l;
    if whole_l > fill_l {
        return Ok(None);
    }
    let poured = [(strong.what, whole_l), (weak.what, fill_l - whole_l)];
    let add = poured.map(|(what, jug_l)| Addition {
        what,
        litres: jug_l,
        jug_l,
        bottles: None,
    });
    let before = earlier.last().map_or(question.now, |round| round.after);
    let reached = after(question, before.volume_fraction(), &add)?;
    let off = (reached.volume_fraction() - question.want.volume_fraction()).abs();
    let near = off <= 4.0 * REACHED_WITHIN;
    Ok(near.then_some(WholeBottles {
        what: strong.what,
        count: bottles(whole_l, bottle_l).count,
        made_up_with: weak.what,
        made_up_l: fill_l - whole_l,
        reached,
    }))
}

fn notes(question: &MixQuestion, rounds: &[Round]) -> Vec<InhibitorNote> {
    let poured = |stock: &&Stock| {
        stock.what != Shelf::Water
            && rounds
                .iter()
                .flat_map(|round| &round.add)
                .any(|addition| addition.what == stock.what)
    };
    let shelf: Vec<_> = question
        .shelf
        .iter()
        .filter(poured)
        .map(|stock| (stock.what.to_string(), stock.inhibitor.as_ref()))
        .collect();
    inhibitor_notes(question.maker, question.in_system, &shelf)
}

fn working(question: &MixQuestion, rounds: &[Round], reached: Mixture) -> Working {
    let balance = |mixture: Mixture| text::percent(mixture.volume_fraction());
    let start = Line::new(say::glycol_that_is_in(), Source::given())
        .symbol(say::at_present())
        .input(say::capacity(), text::litres(question.capacity_l))
        .input(say::left_in(), text::litres(question.left_l))
        .value(balance(question.now));
    let working = rounds.iter().enumerate().fold(
        Working::new(say::mixing_title()).line(start),
        |working, (index, round)| {
            let what = say::round(index + 1);
            let line = Line::new(what, sources::mass_balance()).formula("c'", say::formula_round());
            let line = round.add.iter().fold(line, |line, one| {
                line.input(one.what.to_string(), text::litres(one.jug_l))
            });
            working.line(line.value(balance(round.after)))
        },
    );
    working
        .remark(say::reached_by_volume(balance(reached)))
        .remark(say::water_quality())
        .limit(say::shrink_together())
        .limit(say::run_before_measuring())
}
