//! The questions that may be put about a fluid, beside its steps.

use crate::{Asked, Holds, Part, capital};
use fluids::{
    Amount, Amounts, BrakeReading, BrakeVerdictKind, ChargeVerdict, DotClass, EqualVerdict, Kind,
    LevelSeen, LevelVerdict, Levels, May, Refrigerant, Sorts, Urea, Washer, brake_reading,
    equal_amounts, level_at, refrigerant, sorts, urea, washer,
};
use measure::{Unit, Working};
use serde_json::{Value, json};

/// One question answered.
pub(super) struct Said {
    pub name: &'static str,
    pub what: &'static str,
    pub value: String,
    pub beside: String,
    pub tone: &'static str,
    pub code: &'static str,
    pub outputs: Value,
    pub working: Working,
}

/// A jug is good to this where nothing is said.
const JUG_L: f64 = 0.1;
/// A pan, and what is spilt beside it.
const PAN_L: f64 = 0.3;

pub(super) const READING: Part = Part::Group(&[
    Part::Heading("A tester's reading"),
    Part::choice(
        "class",
        "Class on the cap; never guessed",
        &[
            ("", "not read"),
            ("DOT 3", "DOT 3"),
            ("DOT 4", "DOT 4"),
            ("DOT 5", "DOT 5, silicone"),
            ("DOT 5.1", "DOT 5.1"),
            ("ISO 4925 class 6", "ISO class 6"),
            ("ISO 4925 class 7", "ISO class 7"),
        ],
    ),
    Part::within(
        "boils",
        "The tester says that it boils at",
        Holds::TEMPERATURE,
        (80.0, 400.0),
        "",
    ),
    Part::number(
        "tester",
        "The tester may be off by",
        Holds::KELVIN,
        "5 K if empty",
    ),
    Part::number(
        "makers-least",
        "The maker's least in use",
        Holds::TEMPERATURE,
        "may stay empty",
    ),
]);

pub(super) const AMOUNTS: Part = Part::Group(&[
    Part::Heading("In against out"),
    Part::text("out", "Came out", "each pan, such as 4 L, 0.5 L"),
    Part::text("in", "Went in", "each jug, such as 3 L, 1.5 L"),
    Part::number(
        "low-before",
        "Low when it came",
        Holds::VOLUME,
        "may stay empty",
    ),
]);

pub(super) const LEVEL: Part = Part::Group(&[
    Part::Heading("The level"),
    Part::choice(
        "level",
        "It stands",
        &[
            ("", "not looked"),
            ("at-mark", "at its mark"),
            ("low", "low"),
            ("high", "high"),
        ],
    ),
    Part::number("at", "It was at", Holds::TEMPERATURE, ""),
    Part::number(
        "window-low",
        "The maker's window, from",
        Holds::TEMPERATURE,
        "",
    ),
    Part::number("window-high", "To", Holds::TEMPERATURE, ""),
]);

pub(super) const SORTS: Part = Part::Group(&[
    Part::Heading("Two sorts"),
    Part::text(
        "inside",
        "The sort that is in",
        "as printed; empty if nobody knows",
    ),
    Part::text("new", "The sort that is to go in", "as printed"),
    Part::text(
        "asked-for",
        "The sort that the maker asks for",
        "as printed",
    ),
]);

pub(super) const UREA: Part = Part::Group(&[
    Part::Heading("Filled up"),
    Part::number("holds", "The tank holds", Holds::VOLUME, ""),
    Part::number("left", "Left in it", Holds::VOLUME, "0 if empty"),
    Part::number("now", "Urea in what is left", Holds::SHARE, "as read"),
    Part::number(
        "bottle",
        "Urea in the container",
        Holds::SHARE,
        "32.5 % if empty",
    ),
]);

pub(super) const WASHER: Part = Part::Group(&[
    Part::Heading("What to pour"),
    Part::number("holds", "The bottle holds", Holds::VOLUME, ""),
    Part::number("left", "Left in it", Holds::VOLUME, "0 if empty"),
    Part::number(
        "now",
        "Concentrate in what is left",
        Holds::SHARE,
        "0 % if empty",
    ),
    Part::number(
        "want",
        "Concentrate wanted",
        Holds::SHARE,
        "or the frost limit below",
    ),
    Part::number(
        "want-frost",
        "Frost limit wanted",
        Holds::TEMPERATURE,
        "by the label's points",
    ),
    Part::text(
        "label",
        "Points of the label",
        "such as 50% -20C, 100% -45C",
    ),
]);

pub(super) const CHARGE: Part = Part::Group(&[
    Part::Heading("By weight"),
    Part::number("label-weight", "The label says", Holds::FILLING, ""),
    Part::number("weight-out", "Recovered", Holds::FILLING, ""),
    Part::number("weight-in", "Weighed in", Holds::FILLING, ""),
    Part::number(
        "scale",
        "The scale may be off by",
        Holds::FILLING,
        "10 g if empty",
    ),
    Part::text("oil-out", "Oil that came out, mL", "may stay empty"),
    Part::text(
        "oil-for-parts",
        "Oil for new parts, mL",
        "by the maker; may stay empty",
    ),
    Part::text("oil-in", "Oil put in, mL", "may stay empty"),
]);

/// Each question that was put, answered.
pub(super) fn answers(kind: Kind, asked: &mut Asked) -> Vec<Said> {
    let each = [
        reading(asked),
        levels(asked),
        amounts(asked),
        mix(kind, asked),
        charge(asked),
        two_sorts(kind, asked),
    ];
    each.into_iter().flatten().collect()
}

/// What the crate refuses: "what is wrong: how to mend it".
fn ok<T>(asked: &mut Asked, field: &str, found: Result<T, fluids::FluidError>) -> Option<T> {
    let found = found.map_err(|error| {
        let message = error.to_string();
        match message.rsplit_once(": ") {
            Some((what, mend)) => format!("{what}; {mend}"),
            None => message,
        }
    });
    asked.ok(field, found)
}

fn reading(asked: &mut Asked) -> Option<Said> {
    let boils_c = asked.celsius("boils")?;
    let class = asked.some("class").map(str::to_owned);
    let class = class.and_then(|printed| {
        let named = DotClass::named(&printed);
        if named.is_none() {
            let names: Vec<&str> = DotClass::ALL.iter().map(|class| class.name()).collect();
            asked.wrong(
                "class",
                format!("`{printed}` is no class; write one of {}", names.join(", ")),
            );
        }
        named
    });
    let found = brake_reading(&BrakeReading {
        class,
        boils_c,
        within_k: asked
            .quantity("tester", Unit::KelvinDifference)
            .unwrap_or(5.0),
        makers_least_c: asked.celsius("makers-least"),
    });
    let found = ok(asked, "boils", found)?;
    let (value, code, tone) = match found.kind {
        BrakeVerdictKind::Dry => ("as new", "dry", "yes"),
        BrakeVerdictKind::TakenUpWater => ("has taken up water", "taken-up-water", "wait"),
        BrakeVerdictKind::Renew => ("renew it", "renew", "no"),
        BrakeVerdictKind::TooNear => ("too near to tell", "too-near", "wait"),
        BrakeVerdictKind::CannotTell => ("can't tell", "cant-tell", "wait"),
    };
    Some(Said {
        name: "reading",
        what: "The tester's reading",
        value: value.to_owned(),
        beside: capital(&found.words),
        tone,
        code,
        outputs: json!({ "dry_c": found.limits.map(|limits| limits.dry_c),
            "wet_c": found.limits.map(|limits| limits.wet_c) }),
        working: found.working,
    })
}

fn amounts(asked: &mut Asked) -> Option<Said> {
    let all = |litres: Vec<f64>, within_l: f64| -> Vec<Amount> {
        let one = |litres| Amount {
            litres,
            within_l,
            temperature_c: None,
        };
        litres.into_iter().map(one).collect()
    };
    let out = all(asked.amounts("out"), PAN_L);
    let poured = all(asked.amounts("in"), JUG_L);
    if out.is_empty() && poured.is_empty() {
        return None;
    }
    let found = equal_amounts(&Amounts {
        out,
        poured,
        low_before_l: asked.litres("low-before"),
    });
    let found = ok(asked, "out", found)?;
    let (value, code, tone) = match found.verdict {
        EqualVerdict::Equal => ("as much in as out", "equal", "yes"),
        EqualVerdict::Short => ("short", "short", "no"),
        EqualVerdict::TooMuch => ("too much", "too-much", "no"),
        EqualVerdict::CannotTell => ("can't tell", "cant-tell", "wait"),
    };
    let (missing, within) = (asked.show_l(found.missing_l), asked.show_l(found.within_l));
    Some(Said {
        name: "amounts",
        what: "In against out",
        value: value.to_owned(),
        beside: format!("Missing {missing}, good to {within}"),
        tone,
        code,
        outputs: json!({ "missing_l": found.missing_l, "within_l": found.within_l }),
        working: found.working,
    })
}

fn levels(asked: &mut Asked) -> Option<Said> {
    let seen = match asked.some("level")? {
        "low" => LevelSeen::Low,
        "high" => LevelSeen::High,
        _ => LevelSeen::AtMark,
    };
    let ends = (asked.celsius("window-low"), asked.celsius("window-high"));
    if ends.0.is_some() != ends.1.is_some() {
        asked.needed("window-low", "a window has two ends");
        asked.needed("window-high", "a window has two ends");
    }
    let found = level_at(&Levels {
        seen,
        temperature_c: asked.celsius("at"),
        window_c: ends.0.zip(ends.1),
    });
    let found = ok(asked, "window-low", found)?;
    let (value, code, tone) = match found.verdict {
        LevelVerdict::Closes => ("right", "closes", "yes"),
        LevelVerdict::Low => ("low", "low", "no"),
        LevelVerdict::High => ("high", "high", "no"),
        LevelVerdict::TooCold => ("too cold to tell", "too-cold", "wait"),
        LevelVerdict::TooHot => ("too hot to tell", "too-hot", "wait"),
        LevelVerdict::CannotTell => ("can't tell", "cant-tell", "wait"),
    };
    Some(Said {
        name: "level",
        what: "The level",
        value: value.to_owned(),
        beside: capital(found.words),
        tone,
        code,
        outputs: json!({}),
        working: found.working,
    })
}

fn two_sorts(kind: Kind, asked: &mut Asked) -> Option<Said> {
    let text = |name: &str| asked.some(name).map(str::to_owned);
    let question = Sorts {
        kind,
        inside: text("inside"),
        new: text("new"),
        asked_for: text("asked-for"),
    };
    if question.inside.is_none() && question.new.is_none() && question.asked_for.is_none() {
        return None;
    }
    let found = ok(asked, "new", sorts(&question))?;
    let (value, code, tone) = match found.may {
        May::Yes => ("may go in", "yes", "yes"),
        May::Said => ("may go in: say so", "said", "wait"),
        May::No => ("may not go in", "no", "no"),
        May::Ask => ("ask first", "ask", "wait"),
    };
    Some(Said {
        name: "sorts",
        what: "Two sorts",
        value: value.to_owned(),
        beside: capital(&found.words),
        tone,
        code,
        outputs: json!({}),
        working: found.working,
    })
}

fn mix(kind: Kind, asked: &mut Asked) -> Option<Said> {
    match kind {
        Kind::Urea => filled_up(asked),
        Kind::Washer => to_pour(asked),
        _ => None,
    }
}

fn filled_up(asked: &mut Asked) -> Option<Said> {
    let tank_l = asked.litres("holds")?;
    let left_l = asked.litres("left").unwrap_or(0.0);
    if left_l > 0.0 {
        asked.needed("now", "read what is left, or drain it");
    }
    let found = urea(&Urea {
        tank_l,
        left_l,
        left_percent: asked.quantity("now", Unit::Percent).unwrap_or(0.0),
        add_percent: asked.quantity("bottle", Unit::Percent).unwrap_or(32.5),
    });
    let found = ok(asked, "holds", found)?;
    let beside = match found.drain_l {
        None => format!("Filled up it has {:.1}\u{202f}%", found.full_percent),
        Some(drain) => format!(
            "Filled up it has {:.1}\u{202f}%: drain {} first",
            found.full_percent,
            asked.show_l(drain)
        ),
    };
    Some(Said {
        name: "mix",
        what: "Filled up",
        value: if found.within_standard {
            "within the standard"
        } else {
            "outside the standard"
        }
        .to_owned(),
        beside,
        tone: if found.within_standard { "yes" } else { "no" },
        code: if found.within_standard {
            "within"
        } else {
            "outside"
        },
        outputs: json!({ "percent": found.full_percent, "drain_l": found.drain_l }),
        working: found.working,
    })
}

fn to_pour(asked: &mut Asked) -> Option<Said> {
    let holds_l = asked.litres("holds")?;
    let label = label(asked);
    let found = washer(&Washer {
        holds_l,
        left_l: asked.litres("left").unwrap_or(0.0),
        left_percent: asked.quantity("now", Unit::Percent).unwrap_or(0.0),
        want_percent: asked.quantity("want", Unit::Percent),
        want_c: asked.celsius("want-frost"),
        label,
    });
    let found = ok(asked, "holds", found)?;
    let frost = found.freezes_c.map_or_else(String::new, |c| {
        format!(", against frost to {}", asked.show_c(c))
    });
    Some(Said {
        name: "mix",
        what: "What to pour",
        value: asked.show_l(found.concentrate_l),
        beside: format!(
            "Of concentrate, and {} of water: {:.0}\u{202f}%{frost}",
            asked.show_l(found.water_l),
            found.percent
        ),
        tone: "",
        code: "pour",
        outputs: json!({ "concentrate_l": found.concentrate_l, "water_l": found.water_l,
            "percent": found.percent, "freezes_c": found.freezes_c }),
        working: found.working,
    })
}

/// `50% -20C, 100% -45C`.
fn label(asked: &mut Asked) -> Vec<(f64, f64)> {
    let text = asked.text("label").to_owned();
    let mut out = Vec::new();
    for point in text
        .split([',', '\n'])
        .map(str::trim)
        .filter(|one| !one.is_empty())
    {
        let pair = point.split_once('%').map(|(share, frost)| {
            let share = crate::read(
                share,
                measure::Dimension::Fraction,
                Unit::Percent,
                Unit::Percent,
            );
            let frost = crate::read(
                frost,
                measure::Dimension::Temperature,
                Unit::Celsius,
                Unit::Celsius,
            );
            (share, frost)
        });
        match pair {
            Some((Ok(share), Ok(frost))) => out.push((share, frost)),
            _ => asked.wrong(
                "label",
                format!("`{point}` is no point of a label; write it such as 50% -20C"),
            ),
        }
    }
    out
}

fn charge(asked: &mut Asked) -> Option<Said> {
    let weights =
        ["label-weight", "weight-out", "weight-in"].map(|name| asked.quantity(name, Unit::Gram));
    let oils = ["oil-out", "oil-for-parts", "oil-in"].map(|name| asked.plain(name));
    if weights.iter().chain(&oils).all(Option::is_none) {
        return None;
    }
    let [label_g, out_g, in_g] = weights;
    let [oil_out_ml, oil_for_parts_ml, oil_in_ml] = oils;
    let found = refrigerant(&Refrigerant {
        label_g,
        out_g,
        in_g,
        within_g: asked.quantity("scale", Unit::Gram).unwrap_or(10.0),
        oil_out_ml,
        oil_for_parts_ml,
        oil_in_ml,
    });
    let found = ok(asked, "label-weight", found)?;
    let (value, code, tone) = match found.verdict {
        ChargeVerdict::AsLabelled => ("as the label says", "as-labelled", "yes"),
        ChargeVerdict::Short => ("short", "short", "no"),
        ChargeVerdict::TooMuch => ("too much", "too-much", "no"),
        ChargeVerdict::Open => ("open", "open", "wait"),
    };
    let words: Vec<String> = found.words.iter().map(|words| capital(words)).collect();
    Some(Said {
        name: "charge",
        what: "The charge",
        value: value.to_owned(),
        beside: words.join(". "),
        tone,
        code,
        outputs: json!({ "lost_g": found.lost_g, "oil_owed_ml": found.oil_owed_ml }),
        working: found.working,
    })
}
