//! What a page about a kind of vehicle asks: one question at a time, names, values; and what was
//! answered before. Each with what its answer is recorded as.

use super::said::{self, about_code, answered, of_names};
use super::taught::{AnsweredShown, Asked, Differ, Page, SameAsked};
use super::words::{about_words, alike, could, kind_words, person, value_words};
use crate::phrases::teaching as told;
use lessons::{Disagreement, Meaning, Question, SameName, Step};
use record::form::Form;
use record::v1::basics::StateForm;
use record::v1::codes::CouldBeForm;
use repair::{CommandId, CouldBe, ItemId};
use serde_json::{Value, json};

impl Page<'_> {
    /// The question to ask next: not about a name that may be another's, as long as there are
    /// others.
    pub(super) fn next<'q>(
        &self,
        questions: &'q [Question],
        names: &[SameAsked],
    ) -> Option<&'q Question> {
        let is_open = |item: &ItemId| {
            let names = names.iter();
            names
                .flat_map(|same| [&same.name, &same.other])
                .any(|name| name == item.as_str())
        };
        let clear = |question: &&Question| {
            !is_open(&question.first.item) && !is_open(&question.second.item)
        };
        questions.iter().find(clear).or(questions.first())
    }

    pub(super) fn question(&self, question: &Question) -> Asked {
        let Question { first, second, .. } = question;
        let seen = answered(self.snap, &self.kind.said, self.learner().joins())
            .into_iter()
            .find(|one| one.first == *first && one.second == *second)
            .map(|one| one.seen)
            .unwrap_or_default();
        let between = self.lessons.between(first, second);
        Asked {
            words: could(first, second),
            why: between.map_or_else(String::new, |pair| {
                told::before_how(
                    self.step_words(&pair.first),
                    self.step_words(&pair.second),
                    self.how(&pair),
                )
            }),
            facts: [CouldBe::Yes, CouldBe::No, CouldBe::CannotSay]
                .map(|answer| self.answer(first, second, answer, &seen)),
        }
    }

    fn answer(&self, first: &Step, second: &Step, answer: CouldBe, seen: &[CommandId]) -> Value {
        json!({ "answered": {
            "first": (self.words)(first.item.as_str()), "first_to": StateForm::of(&first.to),
            "second": (self.words)(second.item.as_str()), "second_to": StateForm::of(&second.to),
            "answer": CouldBeForm::of(&answer), "after": commands(seen),
        } })
    }

    pub(super) fn names(&self) -> Vec<SameAsked> {
        let said = of_names(self.snap, &self.kind.said);
        let vocabulary = self.snap.vocabulary();
        let meaning = |name: &str| {
            let trade = crate::trade_read::trade_of(name, &vocabulary)?;
            Some(Meaning {
                sort: trade.sort?.as_str().to_owned(),
                side: trade.side.map(|side| side.as_str().to_owned()),
            })
        };
        let found = self.learner().same_names(&meaning);
        let one = |same: SameName| {
            let (name, other) = (same.name.clone(), same.other.clone());
            let pair = match other < name {
                true => (other.clone(), name.clone()),
                false => (name.clone(), other.clone()),
            };
            let before = said.get(&pair);
            if before.is_some_and(|before| !before.same) {
                return None;
            }
            let seen = before.map(|before| before.seen.clone()).unwrap_or_default();
            let fact = |is: bool| {
                json!({ "names-joined": {
                    "name": (self.words)(name.as_str()), "other": (self.words)(other.as_str()),
                    "same": is, "after": commands(&seen),
                } })
            };
            Some(SameAsked {
                why: alike(&same),
                facts: [fact(true), fact(false)],
                name: name.to_string(),
                other: other.to_string(),
            })
        };
        found.into_iter().filter_map(one).collect()
    }

    pub(super) fn differ(&self) -> Vec<Differ> {
        let all = self.learner().disagreements();
        all.iter().filter_map(|one| self.one_differs(one)).collect()
    }

    fn one_differs(&self, one: &Disagreement) -> Option<Differ> {
        match one {
            Disagreement::Values(gathered) => {
                let (code, at) = about_code(gathered.about);
                let key = (gathered.item.clone(), code.to_owned(), at);
                let before = self.chosen.get(&key);
                let seen = before.map(|(.., seen)| seen.clone()).unwrap_or_default();
                let value = |value: &lessons::Value| {
                    let fact = json!({ "value-chosen": {
                        "item": (self.words)(gathered.item.as_str()), "about": code, "at": at,
                        "value": (self.words)(&value.value), "after": commands(&seen),
                    } });
                    let by = self.said_by(&value.by, value.times);
                    (value_words(gathered.about, &value.value), by, fact)
                };
                Some(Differ {
                    words: told::differs_in(&gathered.item, about_words(gathered.about)),
                    values: gathered.values.iter().map(value).collect(),
                    chosen: before.map(|(value, by, _)| {
                        let value = value_words(gathered.about, value);
                        told::chosen_by(value, person(self.snap, by.who.as_str()))
                    }),
                })
            }
            Disagreement::Kinds { item, kinds } => {
                let key = (item.clone(), said::KIND.to_owned(), None);
                let before = self.chosen.get(&key);
                let seen = before.map(|(.., seen)| seen.clone()).unwrap_or_default();
                let kinds = kinds.iter().map(|(kind, times)| {
                    let word = map::kind_word(*kind);
                    let fact = json!({ "value-chosen": {
                        "item": (self.words)(item.as_str()), "about": said::KIND, "at": null,
                        "value": (self.words)(word), "after": commands(&seen),
                    } });
                    (kind_words(word), told::orders(*times), fact)
                });
                Some(Differ {
                    words: told::what_is_it(item),
                    values: kinds.collect(),
                    chosen: before.map(|(value, by, _)| {
                        told::chosen_by(kind_words(value), person(self.snap, by.who.as_str()))
                    }),
                })
            }
        }
    }

    pub(super) fn answered(&self) -> Vec<AnsweredShown> {
        let all = answered(self.snap, &self.kind.said, self.learner().joins());
        let one = |one: said::Answered| {
            let all = [
                (told::yes(), CouldBe::Yes),
                (told::no(), CouldBe::No),
                (told::can_not_say(), CouldBe::CannotSay),
            ];
            let word = all.iter().find(|(_, answer)| *answer == one.answer);
            let word = word.map_or("", |(word, _)| word);
            let others = all.iter().filter(|(_, answer)| *answer != one.answer);
            let fact = |answer: CouldBe| self.answer(&one.first, &one.second, answer, &one.seen);
            AnsweredShown {
                words: could(&one.first, &one.second),
                said: told::said_by(word, person(self.snap, one.by.who.as_str())),
                others: others
                    .map(|(word, answer)| (*word, fact(*answer)))
                    .collect(),
            }
        };
        all.into_iter().map(one).collect()
    }
}

fn commands(seen: &[CommandId]) -> Vec<&str> {
    seen.iter().map(CommandId::as_str).collect()
}
