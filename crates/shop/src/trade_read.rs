//! What a typed name means in the trade, as an order keeps it.

use repair::{
    CheckIs, Fact, Gate, Item, Kind, SharedIs, SureIs, System, Token, Trade, TradeWork, Written,
};
use trade::{Branch, Said, Shared, Sure, Vocabulary, says};

/// The distance after which wheel nuts are tightened again, where the maker says none.
const WHEEL_DISTANCE: &str = "50 km";

/// What the trade knows of a thing by its name; nothing for a name of no letters.
#[must_use]
pub fn trade_of(name: &str, vocabulary: &Vocabulary) -> Option<Trade> {
    let things = says(name, vocabulary);
    let known = things.iter().find(|said| said.kind.is_some());
    let said = known.or(things.first())?;
    Some(trade_of_said(said, vocabulary))
}

/// The same of one thing of a line.
#[must_use]
pub fn trade_of_said(said: &Said, vocabulary: &Vocabulary) -> Trade {
    let code = |text: &str| Token::new(text).ok();
    Trade {
        table: vocabulary.version(),
        additions: vocabulary.additions(),
        sort: said.sort.as_deref().and_then(code),
        sure: match said.sure {
            Sure::Sure => SureIs::Sure,
            Sure::Likely => SureIs::Likely,
            Sure::Unknown => SureIs::Unknown,
        },
        system: system_of(said),
        side: said.side.and_then(|side| code(side.code())),
        safety: said.safety,
        shuts: said.gates_shut_off.iter().collect(),
        owes: said
            .owed
            .iter()
            .filter_map(|owes| work(owes, vocabulary))
            .collect(),
        cautions: said.caution.iter().filter_map(|text| code(text)).collect(),
    }
}

/// The system a thing belongs to, as orders keep systems.
#[must_use]
pub fn system_of(said: &Said) -> System {
    match said.system {
        Branch::Towing => System::Body,
        branch => branch.fold().unwrap_or(System::Unknown),
    }
}

fn work(owes: &trade::Owes, vocabulary: &Vocabulary) -> Option<TradeWork> {
    let known = vocabulary.work(&owes.work);
    let first: Vec<Gate> = owes.shuts.iter().collect();
    // A gate that another of them asks of says nothing more.
    let before = first
        .iter()
        .copied()
        .filter(|gate| {
            let mut others = first.iter().filter(|other| *other != gate);
            !others.any(|other| gate.includes(*other))
        })
        .collect();
    Some(TradeWork {
        sort: Token::new(&owes.work).ok()?,
        before,
        shared: known.map_or(SharedIs::Item, |work| match work.shared {
            Shared::Order => SharedIs::Order,
            Shared::Wheel => SharedIs::Wheel,
            Shared::Item => SharedIs::Item,
        }),
        after: match &*owes.work {
            "torque-after-distance" => Written::new(WHEEL_DISTANCE).ok(),
            _ => None,
        },
    })
}

/// A work of the trade in English words, such as `bleed-brakes` or `wheel-torque:front-left`.
#[must_use]
pub fn work_in_words(sort: &str) -> Option<String> {
    let (code, side) = sort.split_once(':').unwrap_or((sort, ""));
    let work = Vocabulary::shipped().work(code)?;
    Some(match side {
        "" => work.english.to_string(),
        side => format!("{}, {}", work.english, side.replace('-', " ")),
    })
}

/// The same words, which are kept in English, in what is spoken; what the trade does not call so
/// stays as it is.
pub(crate) fn work_spoken(english: &str) -> String {
    let named = |words: &str| {
        let mut works = Vocabulary::shipped().works().iter();
        works.find(|work| &*work.english == words)
    };
    let sort = match (named(english), english.rsplit_once(", ")) {
        (Some(work), _) => Some(work.code.to_string()),
        (None, Some((words, side))) => {
            named(words).map(|work| format!("{}:{}", work.code, side.replace(' ', "-")))
        }
        (None, None) => None,
    };
    let said = sort.and_then(|sort| crate::say::sort_of_work(&sort));
    said.unwrap_or_else(|| crate::say::own_work_spoken(english))
}

/// The systems of the safety class that a complaint is about.
#[must_use]
pub fn complaint_about(words: &str, vocabulary: &Vocabulary) -> Vec<System> {
    const FELT: &[(&[&str], System)] = &[
        (&["brak", "brems", "pedal"], System::Brakes),
        (
            &[
                "steer",
                "lenk",
                "pulls",
                "wander",
                "shimm",
                "zieht nach",
                "zieht beim",
                "zieht zur",
                "flatter",
                "schlinger",
            ],
            System::Steering,
        ),
        (
            &[
                "tyre", "tire", "reifen", "wheel", "puncture", "plattfu", "räder", "raeder",
            ],
            System::Wheels,
        ),
    ];
    let small = words.to_lowercase();
    let mut out: Vec<System> = FELT
        .iter()
        .filter(|(felt, _)| felt.iter().any(|word| small.contains(word)))
        .map(|(_, system)| *system)
        .collect();
    let said = says(words, vocabulary);
    out.extend(said.iter().map(system_of).filter(|system| {
        matches!(
            system,
            System::Brakes | System::Steering | System::Wheels | System::Suspension
        )
    }));
    out.sort();
    out.dedup();
    out
}

/// What counts of a check, as far as it hangs on who makes it.
pub struct Checks {
    /// Whether they still learn.
    pub learns: bool,
    /// Whether the owner lets whoever works alone check by walking back.
    pub alone: bool,
}

/// Fills in what the trade knows, where a device could not: out of reach, or by hand at the
/// JSON door; and of who checks, whether they still learn, and whether the owner lets whoever works
/// alone check by walking back. `text` gives the words behind a commitment, if
/// they are there.
pub fn fill_in(
    fact: Fact,
    who: &Checks,
    vocabulary: &Vocabulary,
    text: &dyn Fn(repair::Words) -> Option<String>,
) -> Vec<Fact> {
    match fact {
        Fact::Declared { item } if item.trade.is_none() => {
            let trade = text(item.label).and_then(|label| trade_of(&label, vocabulary));
            vec![Fact::Declared {
                item: read_as(item, trade),
            }]
        }
        Fact::LineOpened {
            line,
            complaint,
            payer,
            about,
        } if about.is_empty() => vec![Fact::LineOpened {
            about: text(complaint)
                .map_or_else(Vec::new, |words| complaint_about(&words, vocabulary)),
            line,
            complaint,
            payer,
        }],
        Fact::SnagFound {
            snag,
            item: None,
            at,
            what,
            sits,
            words,
            photos,
            moves,
            about: None,
            voice,
        } => vec![Fact::SnagFound {
            about: words
                .and_then(text)
                .and_then(|words| trade_of(&words, vocabulary)),
            snag,
            item: None,
            at,
            what,
            sits,
            words,
            photos,
            moves,
            voice,
        }],
        Fact::Renamed { item, label, after } => {
            let known = text(label).and_then(|label| trade_of(&label, vocabulary));
            let told = known.filter(Trade::is_known).map(|trade| Fact::TradeTold {
                item: item.clone(),
                trade,
                after: after.clone(),
            });
            [Fact::Renamed { item, label, after }]
                .into_iter()
                .chain(told)
                .collect()
        }
        Fact::Checked {
            check,
            items,
            after,
            ..
        } => vec![Fact::Checked {
            check,
            items,
            after,
            learns: who.learns.then_some(true),
            alone: (check == CheckIs::WalkedBack).then_some(who.alone),
        }],
        fact => vec![fact],
    }
}

/// An item whose system nobody told belongs where its name says.
fn read_as(item: Item, trade: Option<Trade>) -> Item {
    let known = trade.as_ref().filter(|trade| trade.is_known());
    let system = match (item.system, known) {
        (System::Unknown, Some(trade)) => trade.system,
        (told, _) => told,
    };
    // What is put in is looked for where it is; a work is done where it is said.
    let kept = !matches!(item.kind, Kind::Work);
    Item {
        system,
        trade: trade.filter(|_| kept),
        ..item
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_read_as_the_trade_means_it() {
        let hose = trade_of("brake hose front left", Vocabulary::shipped()).unwrap();
        assert!(hose.safety && hose.shuts(Gate::Roll) && !hose.shuts(Gate::Lower));
        assert!(
            hose.owes
                .iter()
                .any(|owed| owed.sort.as_str() == "bleed-brakes" && owed.before == [Gate::Roll])
        );
        let bulb = trade_of("headlamp bulb", Vocabulary::shipped()).unwrap();
        assert!(!bulb.safety && !bulb.shuts(Gate::Roll));
        let nobody = trade_of("glurble", Vocabulary::shipped()).unwrap();
        assert!(!nobody.is_known() && nobody.safety && nobody.shuts(Gate::GoLive));
    }

    #[test]
    fn works_have_words() {
        assert_eq!(
            work_in_words("bleed-brakes").as_deref(),
            Some("bleed the brakes")
        );
        let wheel = work_in_words("wheel-torque:front-left").unwrap();
        assert!(wheel.ends_with(", front left"), "{wheel}");
        assert_eq!(work_in_words("no-such-work"), None);
        // What is kept in English is said in what is spoken.
        for work in Vocabulary::shipped().works() {
            let said = phrases::speaking(phrases::Language::German, || work_spoken(&work.english));
            assert_eq!(said, *work.german);
            assert_eq!(work_spoken(&work.english), *work.english);
        }
        let german =
            |words: &str| phrases::speaking(phrases::Language::German, || work_spoken(words));
        assert!(
            german(&wheel).ends_with(", vorne links"),
            "{}",
            german(&wheel)
        );
        assert_eq!(german("Bleed"), "Entlüften");
        assert_eq!(german("wipe the glass"), "wipe the glass");
    }

    #[test]
    fn a_complaint_says_what_it_is_about() {
        assert_eq!(
            complaint_about("It squeals when I brake", Vocabulary::shipped()),
            [System::Brakes]
        );
        assert_eq!(
            complaint_about("Pulls to the left", Vocabulary::shipped()),
            [System::Steering]
        );
        assert_eq!(
            complaint_about("Quietscht beim Bremsen", Vocabulary::shipped()),
            [System::Brakes]
        );
        for words in [
            "Zieht nach links",
            "Flattert ab 100",
            "Schlingert in der Kurve",
        ] {
            let about = complaint_about(words, Vocabulary::shipped());
            assert!(about.contains(&System::Steering), "{words}: {about:?}");
        }
        assert!(complaint_about("Smells hot after the motorway", Vocabulary::shipped()).is_empty());
        assert!(complaint_about("", Vocabulary::shipped()).is_empty());
    }
}
