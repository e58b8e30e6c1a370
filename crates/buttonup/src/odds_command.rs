//! `buttonup odds`: the spread of hours and price of an order, from a file or from typed lines.
//!
//! Reads what is asked, asks the crate `odds`, and writes down its answer. It calculates
//! nothing itself.

use crate::answer::{Answer, Wrong};
use clap::Args;
use odds::{Ask, Cause, CauseSort, Grid, History, Prior, Quote, Read, Score, Spread, Verdict};
use serde_json::{Value, json};
use std::fs;

/// An order to be quoted.
#[derive(Debug, Args)]
pub struct Odds {
    /// An order as TOML (docs/odds.md describes it), or lines as typed: "what, minutes, times".
    #[arg(required = true, value_name = "FILE.toml | LINE")]
    asked: Vec<String>,
    /// Another file whose past jobs are learned instead of those of the first.
    #[arg(long, value_name = "FILE.toml")]
    history: Option<String>,
    /// What an hour costs.
    #[arg(long)]
    rate: Option<f64>,
    /// The amount that the customer has authorised.
    #[arg(long)]
    ceiling: Option<f64>,
    /// A chance that is to be covered, such as 0.9; may be given several times.
    #[arg(long, value_name = "CHANCE")]
    cover: Vec<f64>,
    /// Rust of the vehicle, 0 for none to 3 for heavy.
    #[arg(long)]
    rust: Option<u8>,
    /// Age of the vehicle in years.
    #[arg(long, value_name = "YEARS")]
    age: Option<f64>,
    /// The same seed gives the same answer.
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// How often the order is drawn.
    #[arg(long, default_value_t = 100_000)]
    draws: usize,
}

/// Quotes the order.
pub fn run(asked: &Odds) -> Result<Answer, Wrong> {
    let (place, mut read) = order(asked)?;
    if let Some(history) = &asked.history {
        let other = file(history)?;
        read.history = other.history;
        read.snags = other.snags;
    }
    if let Some(rate) = asked.rate {
        read.order.rule.rate = rate;
    }
    let condition = &mut read.order.condition;
    condition.age_years = asked.age.or(condition.age_years);
    if let Some(rust) = asked.rust {
        condition.rust = Some(rust);
        for line in &mut read.order.lines {
            if let Some(pieces) = &mut line.pieces {
                pieces.joint.rust = pieces.joint.rust.or(Some(rust));
            }
        }
    }
    let mut ask = Ask {
        seed: asked.seed,
        draws: asked.draws,
        threads: std::thread::available_parallelism().map_or(1, usize::from),
        ceiling: asked.ceiling.or(read.ceiling),
        ..Ask::default()
    };
    if !asked.cover.is_empty() {
        ask.chances.clone_from(&asked.cover);
    }
    let learned = read.history.fit().map_err(refused(&place))?;
    let score = (!read.given.is_empty())
        .then(|| odds::score(&read.given))
        .transpose()
        .map_err(refused(&place))?;
    let quote = odds::quote(&learned, &read.snags, &read.order, &ask).map_err(refused(&place))?;
    let warnings = read.warnings.iter().map(ToString::to_string);
    let notes: Vec<String> = warnings.chain(quote.notes.iter().cloned()).collect();
    Ok(Answer {
        text: words(&quote, &ask, &read, score.as_ref(), &notes),
        json: in_json(&quote, &ask, score.as_ref(), &notes),
        good: true,
    })
}

/// What is asked for: a file, or lines as typed.
fn order(asked: &Odds) -> Result<(String, Read), Wrong> {
    let is_file = |word: &String| word.to_ascii_lowercase().ends_with(".toml");
    let files: Vec<&String> = asked.asked.iter().filter(|word| is_file(word)).collect();
    let place = match files[..] {
        [] => "the lines".to_owned(),
        [one] => one.clone(),
        _ => {
            return Err(Wrong::input(
                "the command line",
                format!("{} files are named", files.len()),
                "name one; past jobs of another go with --history",
            ));
        }
    };
    let mut read = match files.first() {
        Some(name) => file(name)?,
        None => Read {
            order: odds::Order::default(),
            history: History::new(Prior::default(), Grid::default()).map_err(refused(&place))?,
            snags: odds::SnagHistory::default(),
            ceiling: None,
            given: Vec::new(),
            warnings: Vec::new(),
        },
    };
    for word in asked.asked.iter().filter(|word| !is_file(word)) {
        let line = odds::line(word).map_err(|said| {
            let (what, mend) = said.split_once(": ").unwrap_or((&said, "check it"));
            Wrong::input("the lines", what, mend)
        })?;
        read.order.lines.push(line);
    }
    Ok((place, read))
}

fn file(name: &str) -> Result<Read, Wrong> {
    let text = fs::read_to_string(name).map_err(|error| match error.kind() {
        std::io::ErrorKind::InvalidData => Wrong::input(
            name,
            "it is no UTF-8 text",
            "save it as UTF-8 text, or name another file",
        ),
        _ => Wrong::input(name, error.to_string(), "name a file that can be read"),
    })?;
    odds::read(name, &text).map_err(|troubles| {
        let lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
        Wrong::input(name, lines.join("\n"), "see docs/odds.md")
    })
}

/// What the crate refuses, told as "what is wrong: how to mend it".
fn refused(place: &str) -> impl Fn(odds::OddsError) -> Wrong {
    move |error| {
        let message = error.to_string();
        let (what, mend) = message.split_once(": ").unwrap_or((&message, "check it"));
        Wrong::input(place, what, mend)
    }
}

fn words(quote: &Quote, ask: &Ask, read: &Read, score: Option<&Score>, notes: &[String]) -> String {
    let priced = read.order.rule.rate > 0.0 || !read.order.amounts.is_empty();
    let (low, high) = quote.hours.eight_in_ten();
    let mut lines = vec![format!("likely {low:.1} to {high:.1} hours (8 of 10)")];
    for covers in &quote.ceilings {
        let often = often(covers.chance);
        lines.push(if priced {
            format!("  {:.2} covers it {often}", covers.amount)
        } else {
            format!("  {:.1} hours cover it {often}", covers.hours)
        });
    }
    if let (Some(chance), Some(ceiling)) = (quote.chance_under_ceiling, ask.ceiling) {
        lines.push(format!(
            "  the ceiling of {ceiling:.2} covers it {}",
            often(chance.chance)
        ));
    }
    let snags = quote.snags;
    if snags.count > 0.0 {
        lines.push(format!(
            "snags, apart from slow work: at least one {}, {:.0} minutes and {:.2} on average",
            often(snags.chance),
            snags.minutes,
            snags.price
        ));
    }
    let causes = quote.causes.iter().filter(|cause| cause.share >= 0.01);
    lines.push("what drives it:".to_owned());
    lines.extend(
        causes
            .take(6)
            .map(|cause| format!("  {:>3.0} %  {}", 100.0 * cause.share, cause_words(cause))),
    );
    for worth in &quote.worth {
        lines.push(format!(
            "{} first: {:+.2} hours and {:+.2} on average, {:+.2} on what covers 9 of 10",
            worth.what, worth.hours.0, worth.price.0, worth.price_nine_in_ten
        ));
    }
    if quote.capped > 0.02 {
        lines.push(format!(
            "in {:.0} % of the draws some work ran to {} times its book time: there one stops and asks",
            100.0 * quote.capped,
            odds::CAP
        ));
    }
    if let Some(score) = score {
        lines.extend(score_words(score));
    }
    lines.extend(notes.iter().cloned());
    lines.push(format!("\n{}", quote.working.text().trim_end()));
    lines.join("\n")
}

/// A chance as one says it.
fn often(chance: f64) -> String {
    if chance < 0.005 {
        return "hardly ever".to_owned();
    }
    if chance > 0.995 {
        return "nearly always".to_owned();
    }
    let tenths = chance * 10.0;
    if (tenths - tenths.round()).abs() < 0.05 && tenths.round() > 0.0 {
        format!("{tenths:.0} times in 10")
    } else {
        format!("{:.0} times in 100", chance * 100.0)
    }
}

fn cause_words(cause: &Cause) -> String {
    match cause.sort {
        CauseSort::Work => format!("how quickly it goes: {}", cause.what),
        CauseSort::Snag => format!("what snaps or tears: {}", cause.what),
        CauseSort::Vehicle | CauseSort::Shop | CauseSort::Parts => cause.what.clone(),
    }
}

fn score_words(score: &Score) -> Vec<String> {
    let verdict = match score.verdict {
        Verdict::TooFew { quotes, needed } => {
            format!("{quotes} quotes given: too few to judge, {needed} are needed")
        }
        Verdict::Holds => "the quotes given hold what they said".to_owned(),
        Verdict::TooNarrow => "the quotes given were too narrow".to_owned(),
        Verdict::TooWide => "the quotes given were too wide".to_owned(),
    };
    let bands = score.bands.iter().map(|band| {
        format!(
            "  {:.0} of 100 said, {:.0} of 100 held ({} of {}; truly {:.0} to {:.0})",
            100.0 * band.said,
            100.0 * band.share(),
            band.inside,
            band.quotes,
            100.0 * band.low,
            100.0 * band.high
        )
    });
    std::iter::once(verdict).chain(bands).collect()
}

fn in_json(quote: &Quote, ask: &Ask, score: Option<&Score>, notes: &[String]) -> Value {
    let working: Value = serde_json::from_str(&quote.working.json())
        .expect("a working writes itself as one JSON object");
    json!({
        "hours": spread(&quote.hours),
        "price": spread(&quote.price),
        "book_hours": quote.book_hours,
        "ceiling": ask.ceiling,
        "chance_under_ceiling": quote.chance_under_ceiling.map(|under| under.chance),
        "ceiling_for": quote.ceilings.iter().map(|covers| json!({
            "chance": covers.chance,
            "price": covers.amount,
            "hours": covers.hours,
            "error": covers.error,
        })).collect::<Vec<_>>(),
        "snags": {
            "chance": quote.snags.chance,
            "count": quote.snags.count,
            "minutes": quote.snags.minutes,
            "price": quote.snags.price,
        },
        "causes": quote.causes.iter().map(|cause| json!({
            "what": cause.what,
            "sort": cause.sort.name(),
            "share": cause.share,
            "hours_without": cause.hours_without,
            "price_without": cause.price_without,
        })).collect::<Vec<_>>(),
        "first": quote.worth.iter().map(|worth| json!({
            "what": worth.what,
            "hours": worth.hours.0,
            "hours_error": worth.hours.1,
            "price": worth.price.0,
            "price_error": worth.price.1,
            "hours_nine_in_ten": worth.hours_nine_in_ten,
            "price_nine_in_ten": worth.price_nine_in_ten,
        })).collect::<Vec<_>>(),
        "capped": quote.capped,
        "seed": quote.seed,
        "draws": quote.draws,
        "error": {
            "hours": errors(&quote.hours),
            "price": errors(&quote.price),
            "chance_under_ceiling": quote.chance_under_ceiling.map(|under| under.error),
        },
        "score": score.map(score_json),
        "notes": notes,
        "working": working,
    })
}

/// The name of a quantile: p10 for one in ten.
fn name(chance: f64) -> String {
    format!("p{:02.0}", chance * 100.0)
}

fn spread(spread: &Spread) -> Value {
    let told = spread.quantiles.iter();
    let mut fields: serde_json::Map<String, Value> = told
        .map(|(chance, value, _)| (name(*chance), json!(value)))
        .collect();
    fields.insert("mean".to_owned(), json!(spread.mean));
    Value::Object(fields)
}

fn errors(spread: &Spread) -> Value {
    let told = spread.quantiles.iter();
    let mut fields: serde_json::Map<String, Value> = told
        .map(|(chance, _, error)| (name(*chance), json!(error)))
        .collect();
    fields.insert("mean".to_owned(), json!(spread.mean_error));
    Value::Object(fields)
}

fn score_json(score: &Score) -> Value {
    let verdict = match score.verdict {
        Verdict::TooFew { .. } => "too few",
        Verdict::Holds => "holds",
        Verdict::TooNarrow => "too narrow",
        Verdict::TooWide => "too wide",
    };
    json!({
        "quotes": score.quotes,
        "verdict": verdict,
        "pinball": score.pinball,
        "bands": score.bands.iter().map(|band| json!({
            "said": band.said,
            "held": band.share(),
            "inside": band.inside,
            "below": band.below,
            "above": band.above,
            "low": band.low,
            "high": band.high,
        })).collect::<Vec<_>>(),
        "reliability": score.reliability.iter().map(|point| json!({
            "said": point.said,
            "under": point.under,
            "quotes": point.quotes,
            "low": point.low,
            "high": point.high,
        })).collect::<Vec<_>>(),
    })
}

#[cfg(test)]
mod tests {
    use super::{Odds, often, run};
    use crate::answer::{Answer, Wrong};
    use clap::Parser;
    use std::fs;

    #[derive(Parser)]
    struct Line {
        #[command(flatten)]
        asked: Odds,
    }

    fn asked(words: &[&str]) -> Result<Answer, Wrong> {
        let words = ["odds"].into_iter().chain(words.iter().copied());
        run(&Line::try_parse_from(words).unwrap().asked)
    }

    const ORDER: &str = "
rate = 120
ceiling = 850
[vehicle]
rust = 2
[[line]]
what = \"housing bolts\"
kind = \"fasteners\"
minutes = 60
pieces = 10
snag_minutes = [40, 55, 90]
snag_price = 14
[[line]]
what = \"pump\"
minutes = 40
times = 3
[[amount]]
what = \"parts\"
price = 268.4
[[first]]
what = \"soak overnight\"
line = \"housing bolts\"
snag_odds = 0.5
";

    #[test]
    fn typed_lines_are_quoted_in_the_agreed_form() {
        let answer = asked(&[
            "bolts out, 6, 10",
            "pump, 60",
            "--rate",
            "120",
            "--ceiling",
            "300",
            "--draws",
            "5000",
            "--seed",
            "7",
        ])
        .unwrap();
        let json = &answer.json;
        for spread in ["hours", "price"] {
            let at = |name: &str| json[spread][name].as_f64().unwrap();
            assert!(at("p10") < at("p50") && at("p50") < at("p80") && at("p80") < at("p90"));
            assert!(at("mean") > at("p10"));
            assert!(json["error"][spread]["p90"].as_f64().unwrap() > 0.0);
        }
        assert!((json["book_hours"].as_f64().unwrap() - 2.0).abs() < 1e-12);
        let chance = json["chance_under_ceiling"].as_f64().unwrap();
        assert!((0.5..1.0).contains(&chance), "{chance}");
        assert_eq!(json["seed"], 7);
        assert_eq!(json["draws"], 5000);
        assert_eq!(json["ceiling_for"].as_array().unwrap().len(), 3);
        assert!(!json["causes"].as_array().unwrap().is_empty());
        assert!(answer.text.starts_with("likely "), "{}", answer.text);
        assert!(answer.text.contains("(8 of 10)"));
        assert!(answer.text.contains("covers it 9 times in 10"));
        // The same seed says the same.
        let again = asked(&[
            "bolts out, 6, 10",
            "pump, 60",
            "--rate",
            "120",
            "--ceiling",
            "300",
            "--draws",
            "5000",
            "--seed",
            "7",
        ])
        .unwrap();
        assert_eq!(again.json, answer.json);
    }

    #[test]
    fn a_file_with_what_could_be_done_first() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("order.toml");
        fs::write(&file, ORDER).unwrap();
        let file = file.display().to_string();
        let answer = asked(&[&file, "--draws", "5000", "--cover", "0.95"]).unwrap();
        assert!(
            answer.text.contains("soak overnight first: -"),
            "{}",
            answer.text
        );
        assert!(answer.text.contains("covers it 95 times in 100"));
        assert!(answer.text.contains("what snaps or tears: housing bolts"));
        assert!(answer.json["first"][0]["price"].as_f64().unwrap() < 0.0);
        assert!(answer.json["score"].is_null());
    }

    #[test]
    fn given_quotes_are_scored() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("order.toml");
        let given: String = (0..30)
            .map(|_| "[[given]]\nchances = [0.1, 0.9]\nvalues = [3.0, 4.0]\nhappened = 6.0\n")
            .collect();
        fs::write(&file, format!("{ORDER}{given}")).unwrap();
        let answer = asked(&[&file.display().to_string(), "--draws", "1000"]).unwrap();
        assert_eq!(answer.json["score"]["verdict"], "too narrow");
        assert!(answer.text.contains("the quotes given were too narrow"));
    }

    #[test]
    fn what_is_wrong_says_where_and_how_to_mend_it() {
        let wrong = asked(&["bolts"]).unwrap_err();
        assert_eq!(wrong.place, "the lines");
        assert!(wrong.mend.starts_with("write it as"), "{wrong}");
        assert_eq!(asked(&["no such file.toml"]).unwrap_err().code, 2);
        let none = asked(&["bolts, -5"]).unwrap_err();
        assert!(none.what.contains("-5 minutes"), "{none}");
        assert!(
            asked(&["a.toml", "b.toml"])
                .unwrap_err()
                .mend
                .contains("--history")
        );
        let nan = asked(&["bolts, 5", "--ceiling", "NaN"]).unwrap_err();
        assert!(nan.what.contains("the ceiling is NaN"), "{nan}");
    }

    #[test]
    fn chances_as_one_says_them() {
        assert_eq!(often(0.9), "9 times in 10");
        assert_eq!(often(0.72), "72 times in 100");
        assert_eq!(often(0.02), "2 times in 100");
        assert_eq!(often(0.0), "hardly ever");
        assert_eq!(often(1.0), "nearly always");
    }
}
