//! The questions that may be put about a fluid, beside its steps.

use crate::form::none;
use crate::phrases::fluids as say;
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
    Part::Heading(say::a_testers_reading),
    Part::choice(
        "class",
        say::class_on_the_cap_never_guessed,
        &[
            ("", say::not_read),
            ("DOT 3", say::dot_3),
            ("DOT 4", say::dot_4),
            ("DOT 5", say::dot_5_silicone),
            ("DOT 5.1", say::dot_5_1),
            ("ISO 4925 class 6", say::iso_class_6),
            ("ISO 4925 class 7", say::iso_class_7),
        ],
    ),
    Part::within(
        "boils",
        say::the_tester_says_that_it_boils,
        Holds::TEMPERATURE,
        (80.0, 400.0),
        none,
    ),
    Part::number(
        "tester",
        say::the_tester_may_be_off_by,
        Holds::KELVIN,
        say::about_5_k_if_empty,
    ),
    Part::number(
        "makers-least",
        say::the_makers_least_in_use,
        Holds::TEMPERATURE,
        say::may_stay_empty,
    ),
]);

pub(super) const AMOUNTS: Part = Part::Group(&[
    Part::Heading(say::in_against_out),
    Part::text("out", say::came_out, say::each_pan_such_as_4_l),
    Part::text("in", say::went_in, say::each_jug_such_as_3_l),
    Part::number(
        "low-before",
        say::low_when_it_came,
        Holds::VOLUME,
        say::may_stay_empty,
    ),
]);

pub(super) const LEVEL: Part = Part::Group(&[
    Part::Heading(say::the_level),
    Part::choice(
        "level",
        say::it_stands,
        &[
            ("", say::not_looked),
            ("at-mark", say::at_its_mark),
            ("low", say::stands_low),
            ("high", say::stands_high),
        ],
    ),
    Part::number("at", say::it_was_at, Holds::TEMPERATURE, none),
    Part::number(
        "window-low",
        say::the_makers_window_from,
        Holds::TEMPERATURE,
        none,
    ),
    Part::number("window-high", say::to, Holds::TEMPERATURE, none),
]);

pub(super) const SORTS: Part = Part::Group(&[
    Part::Heading(say::two_sorts),
    Part::text(
        "inside",
        say::the_sort_that_is_in,
        say::as_printed_empty_if_nobody_knows,
    ),
    Part::text("new", say::the_sort_that_is_to_go, say::as_printed),
    Part::text(
        "asked-for",
        say::the_sort_that_the_maker_asks,
        say::as_printed,
    ),
]);

pub(super) const UREA: Part = Part::Group(&[
    Part::Heading(say::filled_up),
    Part::number("holds", say::the_tank_holds, Holds::VOLUME, none),
    Part::number(
        "left",
        say::left_in_it,
        Holds::VOLUME,
        say::about_0_if_empty,
    ),
    Part::number("now", say::urea_in_what_is_left, Holds::SHARE, say::as_read),
    Part::number(
        "bottle",
        say::urea_in_the_container,
        Holds::SHARE,
        say::about_32_5_if_empty,
    ),
]);

pub(super) const WASHER: Part = Part::Group(&[
    Part::Heading(say::what_to_pour),
    Part::number("holds", say::the_bottle_holds, Holds::VOLUME, none),
    Part::number(
        "left",
        say::left_in_it,
        Holds::VOLUME,
        say::about_0_if_empty,
    ),
    Part::number(
        "now",
        say::concentrate_in_what_is_left,
        Holds::SHARE,
        say::no_percent_if_empty,
    ),
    Part::number(
        "want",
        say::concentrate_wanted,
        Holds::SHARE,
        say::or_the_frost_limit_below,
    ),
    Part::number(
        "want-frost",
        say::frost_limit_wanted,
        Holds::TEMPERATURE,
        say::by_the_labels_points,
    ),
    Part::text(
        "label",
        say::points_of_the_label,
        say::such_as_50_20c_100_45c,
    ),
]);

pub(super) const CHARGE: Part = Part::Group(&[
    Part::Heading(say::by_weight),
    Part::number("label-weight", say::the_label_says, Holds::FILLING, none),
    Part::number("weight-out", say::recovered, Holds::FILLING, none),
    Part::number("weight-in", say::weighed_in, Holds::FILLING, none),
    Part::number(
        "scale",
        say::the_scale_may_be_off_by,
        Holds::FILLING,
        say::about_10_g_if_empty,
    ),
    Part::text("oil-out", say::oil_that_came_out_ml, say::may_stay_empty),
    Part::text(
        "oil-for-parts",
        say::oil_for_new_parts_ml,
        say::by_the_maker_may_stay_empty,
    ),
    Part::text("oil-in", say::oil_put_in_ml, say::may_stay_empty),
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
            asked.wrong("class", say::is_no_class(&printed, names.join(", ")));
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
        BrakeVerdictKind::Dry => (say::as_new(), "dry", "yes"),
        BrakeVerdictKind::TakenUpWater => (say::has_taken_up_water(), "taken-up-water", "wait"),
        BrakeVerdictKind::Renew => (say::renew_it(), "renew", "no"),
        BrakeVerdictKind::TooNear => (say::too_near_to_tell(), "too-near", "wait"),
        BrakeVerdictKind::CannotTell => (say::cant_tell(), "cant-tell", "wait"),
    };
    Some(Said {
        name: "reading",
        what: say::the_testers_reading(),
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
        EqualVerdict::Equal => (say::as_much_in_as_out(), "equal", "yes"),
        EqualVerdict::Short => (say::short(), "short", "no"),
        EqualVerdict::TooMuch => (say::too_much(), "too-much", "no"),
        EqualVerdict::CannotTell => (say::cant_tell(), "cant-tell", "wait"),
    };
    let (missing, within) = (asked.show_l(found.missing_l), asked.show_l(found.within_l));
    Some(Said {
        name: "amounts",
        what: say::in_against_out(),
        value: value.to_owned(),
        beside: say::missing_good_to(missing, within),
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
        asked.needed("window-low", say::a_window_has_two_ends());
        asked.needed("window-high", say::a_window_has_two_ends());
    }
    let found = level_at(&Levels {
        seen,
        temperature_c: asked.celsius("at"),
        window_c: ends.0.zip(ends.1),
    });
    let found = ok(asked, "window-low", found)?;
    let (value, code, tone) = match found.verdict {
        LevelVerdict::Closes => (say::right(), "closes", "yes"),
        LevelVerdict::Low => (say::stands_low(), "low", "no"),
        LevelVerdict::High => (say::stands_high(), "high", "no"),
        LevelVerdict::TooCold => (say::too_cold_to_tell(), "too-cold", "wait"),
        LevelVerdict::TooHot => (say::too_hot_to_tell(), "too-hot", "wait"),
        LevelVerdict::CannotTell => (say::cant_tell(), "cant-tell", "wait"),
    };
    Some(Said {
        name: "level",
        what: say::the_level(),
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
        May::Yes => (say::may_go_in(), "yes", "yes"),
        May::Said => (say::may_go_in_say_so(), "said", "wait"),
        May::No => (say::may_not_go_in(), "no", "no"),
        May::Ask => (say::ask_first(), "ask", "wait"),
    };
    Some(Said {
        name: "sorts",
        what: say::two_sorts(),
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
        asked.needed("now", say::read_what_is_left_or_drain());
    }
    let found = urea(&Urea {
        tank_l,
        left_l,
        left_percent: asked.quantity("now", Unit::Percent).unwrap_or(0.0),
        add_percent: asked.quantity("bottle", Unit::Percent).unwrap_or(32.5),
    });
    let found = ok(asked, "holds", found)?;
    let percent = format!("{:.1}", found.full_percent);
    let beside = match found.drain_l {
        None => say::filled_up_it_has(percent),
        Some(drain) => say::drain_first(percent, asked.show_l(drain)),
    };
    Some(Said {
        name: "mix",
        what: say::filled_up(),
        value: if found.within_standard {
            say::within_the_standard()
        } else {
            say::outside_the_standard()
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
        format!(", {}", say::against_frost_to(asked.show_c(c)))
    });
    Some(Said {
        name: "mix",
        what: say::what_to_pour(),
        value: asked.show_l(found.concentrate_l),
        beside: say::of_concentrate_and_water(
            asked.show_l(found.water_l),
            format!("{:.0}\u{202f}%{frost}", found.percent),
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
            _ => asked.wrong("label", say::is_no_point(point)),
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
        ChargeVerdict::AsLabelled => (say::as_the_label_says(), "as-labelled", "yes"),
        ChargeVerdict::Short => (say::short(), "short", "no"),
        ChargeVerdict::TooMuch => (say::too_much(), "too-much", "no"),
        ChargeVerdict::Open => (say::open(), "open", "wait"),
    };
    let words: Vec<String> = found.words.iter().map(|words| capital(words)).collect();
    Some(Said {
        name: "charge",
        what: say::the_charge(),
        value: value.to_owned(),
        beside: words.join(". "),
        tone,
        code,
        outputs: json!({ "lost_g": found.lost_g, "oil_owed_ml": found.oil_owed_ml }),
        working: found.working,
    })
}
