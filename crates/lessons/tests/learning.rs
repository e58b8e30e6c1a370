//! What is learned of small jobs whose outcome can be said beforehand.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use lessons::{
    About, Answer, Answers, Ask, BackNeeds, Contradiction, Disagreement, Ground, Held, Job, Joins,
    Learner, Lessons, MOST_STEPS, Model, Moved, Needs, Note, Step, Told, Way,
};
use proptest::prelude::*;
use states::{ItemId, Kind, State};
use std::collections::{BTreeMap, BTreeSet};

fn moved(item: &str, minute: u32) -> Moved {
    Moved {
        item: ItemId::new(item),
        kind: Kind::Cover,
        from: State::On,
        to: State::Off,
        minute,
    }
}

fn words(names: &str) -> BTreeSet<String> {
    names.split_whitespace().map(str::to_owned).collect()
}

/// A job in which these came off, words between bars in one go.
fn job(name: &str, by: &str, variants: &str, off: &str) -> Job {
    let turns = off.split_whitespace().enumerate();
    let moves = turns.flat_map(|(minute, turn)| {
        let minute = u32::try_from(minute).unwrap();
        turn.split('|').map(move |item| moved(item, minute))
    });
    Job {
        name: name.to_owned(),
        by: words(by),
        variants: words(variants),
        moves: moves.collect(),
        told: Vec::new(),
    }
}

fn learned(jobs: &[Job]) -> Learner {
    let mut learner = Learner::new(Joins::default());
    for job in jobs {
        assert_eq!(learner.add(job), []);
    }
    learner
}

fn off(item: &str) -> Step {
    Step::new(item, State::Off)
}

fn lessons_for(learner: &Learner, variants: Option<&str>, answers: &Answers) -> Lessons {
    let variants = variants.map(words);
    learner.lessons(&Ask {
        way: Way::Out,
        variants: variants.as_ref(),
        answers,
        model: &Model::default(),
    })
}

fn lessons(learner: &Learner) -> Lessons {
    lessons_for(learner, None, &Answers::default())
}

fn ground(lessons: &Lessons, one: &str, other: &str) -> Option<Ground> {
    lessons
        .between(&off(one), &off(other))
        .map(|pair| pair.ground)
}

#[test]
fn each_way_to_know_a_pair_is_told_apart() {
    let learner = learned(&[
        job("1", "ana", "", "tray belt lamp"),
        job("2", "ben", "", "tray lamp belt"),
        job("3", "ana ben", "", "tray grip|panel"),
        job("4", "cyd", "", "panel|grip"),
    ]);
    let mut answers = Answers::default();
    answers.needed.insert((off("tray"), off("grip")));
    let lessons = lessons_for(&learner, None, &answers);
    let seen = Ground::Seen {
        times: 2,
        witnesses: 2,
    };
    assert_eq!(ground(&lessons, "tray", "belt"), Some(seen));
    let both = Ground::BothWays { there: 1, back: 1 };
    assert_eq!(ground(&lessons, "belt", "lamp"), Some(both));
    let never_apart = Ground::NeverApart { times: 2 };
    assert_eq!(ground(&lessons, "grip", "panel"), Some(never_apart));
    assert_eq!(ground(&lessons, "grip", "tray"), Some(Ground::Stated));
    assert_eq!(ground(&lessons, "belt", "panel"), None, "never in one job");
    assert_eq!(ground(&lessons, "belt", "nothing of the kind"), None);
}

#[test]
fn one_persons_habit_is_one_witness_and_says_so() {
    let habit: Vec<Job> = (0..20)
        .map(|nth| job(&format!("{nth}"), "ana", "", "tray belt"))
        .collect();
    let mut learner = learned(&habit);
    let pair = lessons(&learner)
        .between(&off("tray"), &off("belt"))
        .unwrap();
    assert_eq!(
        pair.to_string(),
        "tray off before belt off: seen 20 times, always by the same hands, so it may be a habit"
    );
    assert_eq!(pair.held, Held::Guess);
    let alone = pair.shown;
    assert!(alone < 0.5, "{alone}");
    // With a helper it is the same hands still; another person is another witness.
    learner.add(&job("20", "ana ben", "", "tray belt"));
    assert_eq!(learner.witnesses(), 1);
    learner.add(&job("21", "cyd", "", "tray belt"));
    assert_eq!(learner.witnesses(), 2);
    let pair = lessons(&learner)
        .between(&off("tray"), &off("belt"))
        .unwrap();
    assert!(pair.shown > alone);
    assert!(pair.to_string().ends_with("seen 22 times, 2 witnesses"));
}

#[test]
fn a_sequence_tapped_wrong_once_does_not_undo_what_many_have_shown() {
    let people = ["ana", "ben", "cyd", "dee", "eve"];
    let mut jobs: Vec<Job> = (0..25)
        .map(|nth| job(&format!("{nth}"), people[nth % 5], "", "tray belt"))
        .collect();
    jobs.push(job("wrong", "ana", "", "belt tray"));
    let pair = lessons(&learned(&jobs))
        .between(&off("belt"), &off("tray"))
        .unwrap();
    assert_eq!(pair.first, off("tray"));
    assert!(pair.needed > 0.5, "{pair:?}");
    assert_eq!(pair.ground, Ground::BothWays { there: 25, back: 1 });
}

#[test]
fn what_came_off_without_the_other_does_not_need_it() {
    let lessons = lessons(&learned(&[
        job("1", "ana", "", "tray belt"),
        job("2", "ben", "", "tray belt"),
        job("3", "cyd", "", "belt"),
        job("4", "dee", "", "belt"),
    ]));
    let pair = lessons.between(&off("tray"), &off("belt")).unwrap();
    assert_eq!(pair.held, Held::Either, "{pair:?}");
    let path = lessons.path_to(&[off("belt")]).unwrap();
    assert_eq!(path.steps.len(), 1, "the tray stays on");
}

#[test]
fn the_path_says_what_it_rests_on() {
    let mut learner = learned(&[job("1", "ana", "", "tray belt lamp")]);
    let once = lessons(&learner);
    let path = once.path_to(&[off("lamp")]).unwrap();
    let names: Vec<_> = path.steps.iter().map(|one| one.step.to_string()).collect();
    assert_eq!(names, ["tray off", "belt off", "lamp off"]);
    assert_eq!(path.steps[2].guessed, [off("belt")]);
    assert!(
        once.caution()
            .unwrap()
            .to_string()
            .starts_with("one job only")
    );
    for (nth, who) in ["ben", "cyd", "dee", "eve", "fay"].iter().enumerate() {
        learner.add(&job(&format!("more {nth}"), who, "", "tray belt lamp"));
    }
    let more = lessons(&learner);
    let sure = more.path_to(&[off("lamp")]).unwrap();
    assert!(sure.holds > path.holds && sure.holds > 0.9, "{sure:?}");
    assert_eq!(more.caution(), None);
    let never = more.path_to(&[off("engine")]).unwrap_err();
    assert!(
        never
            .to_string()
            .starts_with("engine off: no job has shown it yet")
    );
}

#[test]
fn what_was_never_apart_is_done_in_one_go() {
    let learner = learned(&[
        job("1", "ana", "", "tray grip|panel lamp"),
        job("2", "ben", "", "tray panel|grip lamp"),
        job("3", "cyd", "", "tray panel|grip lamp"),
    ]);
    let path = lessons(&learner).path_to(&[off("lamp")]).unwrap();
    let told: Vec<_> = path
        .steps
        .iter()
        .map(|one| (one.step.item.as_str(), one.in_one_go))
        .collect();
    assert_eq!(
        told,
        [
            ("tray", false),
            ("grip", false),
            ("panel", true),
            ("lamp", false)
        ]
    );
}

/// Two that were never apart, and a third that people put between: then a sequence is claimed
/// that nobody has shown, and the path says so.
#[test]
fn a_path_that_parts_what_was_never_apart_is_not_sure() {
    let people = ["ana", "ben", "cyd", "dee"];
    let jobs: Vec<Job> = people
        .iter()
        .map(|who| job(who, who, "", "grip|panel lamp"))
        .collect();
    let learner = learned(&jobs);
    let holds = |answers: &Answers| {
        let lessons = lessons_for(&learner, None, answers);
        let path = lessons.path_to(&[off("lamp"), off("panel")]).unwrap();
        (path.holds, path.steps[1].in_one_go)
    };
    let (together, in_one_go) = holds(&Answers::default());
    assert!(together > 0.9 && in_one_go, "{together}");
    // Somebody says that the panel needs the lamp off.
    let mut answers = Answers::default();
    answers.needed.insert((off("lamp"), off("panel")));
    let (parted, in_one_go) = holds(&answers);
    assert!(parted < 0.8 && !in_one_go, "{parted}");
    // And the grip before the panel: what follows from answers is sure.
    answers.needed.insert((off("grip"), off("lamp")));
    assert!(holds(&answers).0 > 0.9);
}

#[test]
fn answers_go_before_what_was_seen() {
    let learner = learned(&[job("1", "ana", "", "tray belt lamp")]);
    let mut answers = Answers::default();
    let seen = lessons(&learner);
    let question = seen.questions(&[off("lamp")], 1).remove(0);
    assert!(question.to_string().starts_with("Could "), "{question}");
    answers.take(&question, Answer::Yes);
    let lessons = lessons_for(&learner, None, &answers);
    let pair = lessons.between(&question.first, &question.second).unwrap();
    assert_eq!((pair.held, pair.needed), (Held::Either, 0.0));
    // Nobody can say: it is not asked again, and the step rests on a guess.
    let question = lessons.questions(&[off("lamp")], 1).remove(0);
    answers.take(&question, Answer::CannotSay);
    let lessons = lessons_for(&learner, None, &answers);
    let again = lessons.questions(&[off("lamp")], 9);
    assert!(!again.contains(&question), "{again:?}");
    let path = lessons.path_to(&[off("lamp")]).unwrap();
    let unsaid = |one: &&lessons::PathStep| one.step == question.second;
    let step = path.steps.iter().find(unsaid).unwrap();
    assert!(step.guessed.contains(&question.first), "{step:?}");
}

#[test]
fn answers_that_exclude_each_other_are_told_and_do_no_harm() {
    let learner = learned(&[job("1", "ana", "", "tray belt lamp")]);
    let mut answers = Answers::default();
    answers.needed.insert((off("tray"), off("belt")));
    answers.needed.insert((off("belt"), off("lamp")));
    answers.needed.insert((off("lamp"), off("tray")));
    answers.not_needed.insert((off("tray"), off("lamp")));
    answers.needed.insert((off("nothing"), off("lamp")));
    let lessons = lessons_for(&learner, None, &answers);
    let told: Vec<String> = lessons
        .contradictions()
        .iter()
        .map(Contradiction::to_string)
        .collect();
    assert!(!told.is_empty());
    assert!(
        told.iter().all(|one| one.starts_with("answers exclude")),
        "{told:?}"
    );
    // What stands keeps the sequence that does not go round.
    let path = lessons.path_to(&[off("tray")]).unwrap();
    let names: Vec<_> = path
        .steps
        .iter()
        .map(|one| one.step.item.as_str())
        .collect();
    assert_eq!(names, ["belt", "lamp", "tray"]);
}

#[test]
fn jobs_that_go_round_in_a_circle_lose_their_least_sure_pair() {
    // Each pair was seen one way, and together they go round.
    let learner = learned(&[
        job("1", "ana", "", "tray belt"),
        job("2", "ben", "", "tray belt"),
        job("3", "ana", "", "belt lamp"),
        job("4", "ben", "", "belt lamp"),
        job("5", "ana", "", "lamp tray"),
    ]);
    let mut answers = Answers::default();
    // Presence alone would settle it, so it is stated away.
    answers.not_needed.insert((off("lamp"), off("belt")));
    let lessons = lessons_for(&learner, None, &answers);
    assert!(
        lessons
            .path_to(&[off("lamp"), off("belt"), off("tray")])
            .is_ok()
    );
}

#[test]
fn a_sequence_that_differs_by_variant_is_told_apart() {
    let people = ["ana", "ben", "cyd", "dee"];
    let mut jobs = Vec::new();
    for nth in 0..8 {
        let who = people[nth % 4];
        jobs.push(job(&format!("with {nth}"), who, "aircon", "belt hose pump"));
        jobs.push(job(&format!("without {nth}"), who, "", "hose belt pump"));
    }
    let learner = learned(&jobs);
    let together = lessons(&learner);
    let pair = together.between(&off("belt"), &off("hose")).unwrap();
    assert_eq!(pair.differs_by.as_deref(), Some("aircon"));
    let first = |variants: &str| {
        let lessons = lessons_for(&learner, Some(variants), &Answers::default());
        let path = lessons.path_to(&[off("pump")]).unwrap();
        path.steps[0].step.item.as_str().to_owned()
    };
    assert_eq!((first("aircon"), first("")), ("belt".into(), "hose".into()));
}

#[test]
fn what_only_a_variant_has_is_not_looked_for_on_the_others() {
    let mut jobs = Vec::new();
    for (nth, who) in ["ana", "ben", "cyd"].iter().enumerate() {
        jobs.push(job(
            &format!("with {nth}"),
            who,
            "aircon",
            "condenser radiator",
        ));
        jobs.push(job(&format!("without {nth}"), who, "", "radiator"));
    }
    let learner = learned(&jobs);
    let all = lessons(&learner);
    assert_eq!(all.only_with()[0].step, off("condenser"));
    assert_eq!(all.only_with()[0].variant, "aircon");
    let steps = |variants: &str| {
        let lessons = lessons_for(&learner, Some(variants), &Answers::default());
        lessons.path_to(&[off("radiator")]).unwrap().steps.len()
    };
    assert_eq!((steps("aircon"), steps("")), (2, 1));
}

#[test]
fn two_ways_to_one_target_are_proposed_as_alternatives() {
    let learner = learned(&[
        job("1", "ana", "", "tray tensioner belt"),
        job("2", "ben", "", "tray tensioner belt"),
        job("3", "cyd", "", "tray shield idler belt"),
        job("4", "dee", "", "shield tray idler belt"),
    ]);
    let found = learner.alternatives(&off("belt"));
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(
        found[0].to_string(),
        "before belt off: idler off and shield off (2 jobs) or tensioner off (2 jobs); will either do?"
    );
    assert_eq!(found[0].ways[0].witnesses, 2);
    assert!(learner.alternatives(&off("tray")).is_empty());
    assert!(learner.alternatives(&off("nothing")).is_empty());
}

#[test]
fn bad_jobs_are_told_in_plain_words_and_do_no_harm() {
    let mut learner = Learner::new(Joins::default());
    let empty = learner.add(&Job::default());
    let said: Vec<String> = empty.iter().map(Note::to_string).collect();
    assert_eq!(said.len(), 2, "{said:?}");
    assert!(said[0].contains("nothing was moved"), "{said:?}");
    assert!(lessons(&learner).pairs().is_empty());
    assert!(lessons(&learner).questions(&[off("tray")], 3).is_empty());
    let mut odd = job("2", "ana", "", "tray belt");
    odd.moves.push(Moved {
        kind: Kind::Belt,
        ..moved("tray", 5)
    });
    odd.moves.push(Moved {
        to: State::Unplugged,
        ..moved("lamp", 6)
    });
    let said: Vec<String> = learner.add(&odd).iter().map(Note::to_string).collect();
    assert_eq!(
        said,
        [
            "2: lamp was left in a state that its kind does not have; left out, correct the kind",
            "2: tray is two kinds of thing in one job; left out, give one of them another name"
        ]
    );
    assert_eq!(lessons(&learner).steps(), [off("belt")]);
    // An item that is another kind of thing in another job is asked about.
    learner.add(&Job {
        moves: vec![Moved {
            kind: Kind::Hose,
            ..moved("belt", 1)
        }],
        ..job("3", "ben", "", "")
    });
    let asked: Vec<String> = learner
        .disagreements()
        .iter()
        .map(Disagreement::to_string)
        .collect();
    assert!(
        asked.contains(
            &"belt: cover (1) or hose (1); which is it, or are they two things?".to_owned()
        ),
        "{asked:?}"
    );
}

/// A name of its own in every job, such as one with the order's number in it.
#[test]
fn thousands_of_names_are_no_trouble() {
    let mut learner = Learner::new(Joins::default());
    for nth in 0..2000 {
        learner.add(&job(
            &format!("{nth}"),
            "ana",
            "",
            &format!("tray lamp-{nth} belt"),
        ));
    }
    let lessons = lessons(&learner);
    assert_eq!(lessons.steps().len(), MOST_STEPS);
    let said = lessons.caution().unwrap().to_string();
    assert!(
        said.starts_with("the 1402 rarest steps are left out"),
        "{said}"
    );
    let path = lessons.path_to(&[off("belt")]).unwrap();
    assert_eq!(path.steps[0].step, off("tray"));
}

#[test]
fn an_order_opened_again_counts_as_it_is_now() {
    let mut learner = learned(&[job("1", "ana", "", "tray belt")]);
    let again = job("1", "ana", "", "belt tray");
    let notes = learner.add(&again);
    assert_eq!(
        notes[0].to_string(),
        "1: was known already; it now counts as it was given last"
    );
    assert_eq!(learner.counts(), learned(&[again]).counts());
    assert!(learner.take_back("1"));
    assert!(!learner.take_back("1"));
    assert!(learner.counts().is_empty());
    assert!(learner.kinds().is_empty() && learner.gathered().is_empty());
}

fn told(item: &str, about: About, value: &str, by: &str) -> Told {
    Told {
        item: ItemId::new(item),
        about,
        value: value.to_owned(),
        by: by.to_owned(),
    }
}

#[test]
fn what_was_told_is_gathered_with_who_said_it_and_contradictions_are_asked() {
    let mut jobs = [
        job("1", "ana", "", "pump"),
        job("2", "ben", "", "pump"),
        job("3", "cyd", "", "pump"),
    ];
    jobs[0].told = vec![
        told("pump", About::Torque, "9 Nm, 90 deg", "handbook 2019"),
        told("pump", About::Tool, "10 mm", "ana"),
        told("pump", About::Spent, "yes", "ana"),
        told("pump", About::Owes, "bleed", "ana"),
    ];
    jobs[1].told = vec![
        told("pump", About::Torque, "9.0 N·m, 90 °", "ben"),
        told("pump", About::Tool, "Pliers", "ben"),
        told("pump", About::Spent, "yes", "ben"),
    ];
    jobs[2].told = vec![
        told("pump", About::Torque, "12 Nm", "cyd"),
        told("pump", About::Tool, "pliers", "cyd"),
    ];
    let learner = learned(&jobs);
    let gathered = learner.gathered();
    let of = |about: About| gathered.iter().find(|one| one.about == about).unwrap();
    let torque = of(About::Torque);
    assert_eq!(
        torque.values[0].by,
        ["ben", "handbook 2019"].map(str::to_owned).into()
    );
    assert_eq!((torque.values[0].times, torque.of), (2, 3));
    assert_eq!(
        of(About::Tool).values.len(),
        2,
        "two tools are no contradiction"
    );
    assert_eq!(of(About::Spent).values[0].times, 2);
    assert_eq!(of(About::Owes).values[0].value, "bleed");
    let asked: Vec<String> = learner
        .disagreements()
        .iter()
        .map(Disagreement::to_string)
        .collect();
    assert_eq!(
        asked,
        [
            "pump, torque: 9 Nm, 90 deg (ben, handbook 2019, 2 jobs) or 12 Nm (cyd, 1 job); which is right?"
        ]
    );
}

#[test]
fn joined_names_are_one_item() {
    let mut learner = Learner::new(Joins::new([
        (ItemId::new("cover"), ItemId::new("tray")),
        (ItemId::new("lid"), ItemId::new("cover")),
    ]));
    for one in [
        job("1", "ana", "", "lid belt"),
        job("2", "ben", "", "cover belt"),
    ] {
        learner.add(&one);
    }
    let seen = Ground::Seen {
        times: 2,
        witnesses: 2,
    };
    assert_eq!(ground(&lessons(&learner), "tray", "belt"), Some(seen));
    assert!(
        learner
            .joins()
            .joined(&ItemId::new("lid"), &ItemId::new("tray"))
    );
    // Pairs that go round are one thing under the least name.
    let round = Joins::new([
        (ItemId::new("b"), ItemId::new("a")),
        (ItemId::new("a"), ItemId::new("b")),
    ]);
    assert_eq!(round.name(&ItemId::new("b")), &ItemId::new("a"));
}

#[test]
fn the_way_back_is_learned_from_how_things_went_back() {
    let back = |item: &str, minute| Moved {
        from: State::Off,
        to: State::On,
        ..moved(item, minute)
    };
    let mut one = job("1", "ana", "", "tray belt");
    one.moves
        .extend([back("belt", 5), back("tray", 6), back("tray", 3)]);
    let learner = learned(&[one]);
    let lessons = learner.lessons(&Ask {
        way: Way::Back,
        variants: None,
        answers: &Answers::default(),
        model: &Model::default(),
    });
    let path = lessons.path_to(&[Step::new("tray", State::On)]).unwrap();
    let names: Vec<_> = path.steps.iter().map(|one| one.step.to_string()).collect();
    assert_eq!(
        names,
        ["belt on", "tray on"],
        "it is home after the last time"
    );
}

/// What each item needs to come off, by what jobs have shown.
fn needs_out(learner: &Learner) -> Needs {
    let lessons = lessons(learner);
    let mut needs: Needs = lessons
        .steps()
        .iter()
        .map(|step| (step.item.clone(), BTreeSet::new()))
        .collect();
    for pair in lessons.direct() {
        needs
            .entry(pair.second.item)
            .or_default()
            .insert(pair.first.item);
    }
    needs
}

fn way_back(learner: &Learner) -> BTreeMap<ItemId, BackNeeds> {
    let back = learner.lessons_back(&Model::default());
    learner.way_back(&needs_out(learner), &|_| true, &back)
}

/// A job in which these came off in turn, and went back in turn.
fn there_and_back(name: &str, by: &str, out: &str, back: &str) -> Job {
    let mut one = job(name, by, "", out);
    for mut moved in job(name, by, "", back).moves {
        (moved.from, moved.to) = (State::Off, State::On);
        moved.minute += 100;
        one.moves.push(moved);
    }
    one
}

#[test]
fn the_way_back_is_turned_round_but_where_jobs_have_shown_otherwise() {
    let ids =
        |names: &str| -> BTreeSet<ItemId> { names.split_whitespace().map(ItemId::new).collect() };
    let jobs = |backs: &[&str]| {
        let one = |(at, back): (usize, &&str)| {
            let by = ["ana", "ben", "cyd"][at % 3];
            there_and_back(&at.to_string(), by, "hose pump bracket", back)
        };
        learned(&backs.iter().enumerate().map(one).collect::<Vec<_>>())
    };
    let turned = "bracket pump hose";
    assert_eq!(way_back(&jobs(&[turned; 4])), BTreeMap::new());
    // All in one go, nobody knows which went first: it stays turned round.
    assert_eq!(way_back(&jobs(&["bracket|pump|hose"; 4])), BTreeMap::new());
    let at_the_bench = way_back(&jobs(&["hose bracket pump"; 6]));
    let bracket = &at_the_bench[&ItemId::new("bracket")];
    assert_eq!((&bracket.away, &bracket.home), (&ids("pump"), &ids("hose")));
    assert_eq!(at_the_bench[&ItemId::new("pump")], BackNeeds::default());
    // The hose hangs on nothing itself: what waits for it says so.
    assert_eq!(at_the_bench.len(), 2);
    // Either way: what was needed so far is given up, and nothing is asked for in its stead.
    let either = way_back(&jobs(&[
        turned,
        "hose bracket pump",
        turned,
        "hose bracket pump",
        turned,
        "hose bracket pump",
    ]));
    let pump = ItemId::new("pump");
    assert_eq!(either, [(pump, BackNeeds::default())].into());
}

#[test]
fn what_a_person_stated_is_turned_round_whatever_was_seen() {
    let jobs: Vec<Job> = (0..6)
        .map(|at| {
            there_and_back(
                &at.to_string(),
                ["ana", "ben"][at % 2],
                "hose pump",
                "hose pump",
            )
        })
        .collect();
    let learner = learned(&jobs);
    let back = learner.lessons_back(&Model::default());
    let way = |is_taught: &dyn Fn(&ItemId) -> bool| {
        learner.way_back(&needs_out(&learner), is_taught, &back)
    };
    assert_eq!(way(&|_| true).len(), 1);
    assert_eq!(way(&|item| item.as_str() != "pump"), BTreeMap::new());
}

fn any_job(nth: usize) -> impl Strategy<Value = Job> {
    let people = proptest::collection::btree_set("[a-d]", 0..3);
    let variants = proptest::collection::btree_set("[xy]", 0..3);
    let moves = proptest::collection::vec((0..7_u8, 0..9_u32, proptest::bool::ANY), 0..14);
    (people, variants, moves).prop_map(move |(by, variants, moves)| Job {
        name: format!("job {nth}"),
        by,
        variants,
        told: moves
            .iter()
            .map(|(item, minute, _)| {
                let by = if *minute < 4 { "ana" } else { "ben" };
                told(&format!("i{item}"), About::Count, &minute.to_string(), by)
            })
            .collect(),
        moves: moves
            .iter()
            .map(|(item, minute, back)| {
                let one = moved(&format!("i{item}"), *minute);
                match back {
                    true => Moved {
                        from: State::Off,
                        to: State::On,
                        ..one
                    },
                    false => one,
                }
            })
            .collect(),
    })
}

fn any_jobs() -> impl Strategy<Value = Vec<Job>> {
    (1..9_usize).prop_flat_map(|count| (0..count).map(any_job).collect::<Vec<_>>())
}

/// Everything that comes out, bit by bit.
fn all_of(learner: &Learner) -> String {
    let mut text = format!("{:?}{:?}", learner.counts(), learner.gathered());
    for way in [Way::Out, Way::Back] {
        for variants in [None, Some(words("x"))] {
            let lessons = learner.lessons(&Ask {
                way,
                variants: variants.as_ref(),
                answers: &Answers::default(),
                model: &Model::default(),
            });
            let targets = lessons.steps().to_vec();
            let bits: Vec<u64> = lessons
                .pairs()
                .iter()
                .flat_map(|pair| [pair.needed, pair.opposite, pair.shown])
                .map(f64::to_bits)
                .collect();
            text += &format!(
                "{:?}{bits:?}{:?}{:?}{:?}",
                lessons.pairs(),
                lessons.path_to(&targets),
                lessons.questions(&targets, 4),
                lessons.contradictions(),
            );
            for step in &targets {
                text += &format!("{:?}", learner.alternatives(step));
            }
        }
    }
    text
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_sequence_of_arrival_teaches_the_same_bits(jobs in any_jobs(), turn in 0..9_usize) {
        let mut one = Learner::new(Joins::default());
        for job in &jobs {
            one.add(job);
        }
        let mut other = Learner::new(Joins::default());
        for at in 0..jobs.len() {
            other.add(&jobs[jobs.len() - 1 - (at + turn) % jobs.len()]);
        }
        prop_assert_eq!(all_of(&one), all_of(&other));
    }

    #[test]
    fn a_job_taken_back_leaves_no_trace(jobs in any_jobs(), which in 0..9_usize) {
        let gone = &jobs[which % jobs.len()].name;
        let mut one = Learner::new(Joins::default());
        for job in &jobs {
            one.add(job);
        }
        one.take_back(gone);
        let mut other = Learner::new(Joins::default());
        for job in jobs.iter().filter(|job| job.name != *gone) {
            other.add(job);
        }
        prop_assert_eq!(all_of(&one), all_of(&other));
    }

    /// Whatever jobs have shown, everything that came off can go back.
    #[test]
    fn no_way_back_goes_in_a_circle(jobs in any_jobs(), stated in proptest::collection::btree_set(0..7_u8, 0..4)) {
        let mut learner = Learner::new(Joins::default());
        for job in &jobs {
            learner.add(job);
        }
        let needs = needs_out(&learner);
        let is_taught = |item: &ItemId| !stated.iter().any(|one| item.as_str() == format!("i{one}"));
        let back = learner.lessons_back(&Model::default());
        let way = learner.way_back(&needs, &is_taught, &back);
        prop_assert!(way.keys().all(is_taught));
        let mut away: BTreeSet<ItemId> = needs.keys().cloned().collect();
        while !away.is_empty() {
            let waits_for = |item: &ItemId| way.get(item).map_or(&needs[item], |back| &back.away);
            let can = |item: &&ItemId| {
                let homes = way.get(*item).is_none_or(|back| back.home.is_disjoint(&away));
                // It goes after all that go back while it is away.
                let blocks = away.iter().any(|other| waits_for(other).contains(*item));
                homes && !blocks && waits_for(item).is_subset(&away)
            };
            let next = away.iter().find(can).cloned();
            prop_assert!(next.is_some(), "{away:?} cannot go back by {way:?}, {needs:?}");
            away.remove(&next.unwrap());
        }
    }

    #[test]
    fn no_path_breaks_what_was_stated(jobs in any_jobs()) {
        let mut learner = Learner::new(Joins::default());
        for job in &jobs {
            learner.add(job);
        }
        let mut answers = Answers::default();
        answers.needed.insert((off("i0"), off("i1")));
        answers.needed.insert((off("i1"), off("i2")));
        let lessons = lessons_for(&learner, None, &answers);
        if let Ok(path) = lessons.path_to(&[off("i2")]) {
            let at = |item: &str| path.steps.iter().position(|one| one.step == off(item));
            let known = |item: &str| lessons.steps().contains(&off(item));
            if known("i0") && known("i1") {
                prop_assert!(at("i0") < at("i1") && at("i1") < at("i2"), "{path:?}");
                prop_assert!(at("i0").is_some());
            }
            prop_assert!((0.0..=1.0).contains(&path.holds));
        }
    }
}
