//! Where a mixture freezes and boils, and the strength from a reading.

use super::{ALTITUDE, COUNTED, LABEL, standing, strength_rows};
use crate::phrases::coolant as say;
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, Say};
use coolant::{
    Boiling, Caution, Concentrate, FreezeTable, Freezing, Glycol, MarginStanding, Mixture,
    Strength, StrengthStanding,
};
use drawing::{Drawing, MixChart, MixReading, mix_chart};
use measure::{Customary, Range, Working};
use phrases::{Language, speaking};
use serde_json::json;

/// What the label says is in the bottle.
pub const KIND: Part = Part::choice(
    "glycol",
    say::the_label_says,
    &[
        ("ethylene", say::ethylene_glycol),
        ("propylene", say::propylene_glycol),
    ],
);

const HOT: &[Say] = &[|| Caution::Hot.text(), || Caution::Poisonous.text()];

pub(super) const PROTECTION: Calculator = Calculator {
    code: "protection",
    name: say::how_far_it_protects,
    what: say::freezing_boiling_under_the_cap_at,
    cautions: HOT,
    how: Vec::new,
    form: &[
        Part::text("strength", say::strength, say::such_as_50),
        Part::choice("of", say::that_is, COUNTED),
        KIND,
        Part::number(
            "cap",
            say::cap,
            Holds::PRESSURE,
            say::stamped_on_it_such_as_1,
        ),
        ALTITUDE,
        Part::number(
            "hottest",
            say::hottest_reading,
            Holds::TEMPERATURE,
            say::such_as_108_c_or_226,
        ),
        LABEL,
    ],
    at_first: &[],
    run: protection,
};

/// What it was read with.
pub const INSTRUMENT: Part = Part::choice(
    "instrument",
    say::read_with,
    &[
        ("refractometer", say::refractometer),
        ("hydrometer", say::hydrometer),
        ("strip", say::test_strip),
    ],
);

/// What was read.
pub const READING: Part = Part::text("reading", say::it_shows, say::refractometer_36_c_or_33_f);

/// How warm the sample was.
pub const SAMPLE: Part = Part::number(
    "sample",
    say::samples_temperature,
    Holds::TEMPERATURE,
    say::for_a_hydrometer_a_cold_shop,
);

pub(super) const STRENGTH: Calculator = Calculator {
    code: "strength",
    name: say::what_is_in,
    what: say::by_refractometer_hydrometer_or_strip,
    cautions: HOT,
    how: Vec::new,
    form: &[
        INSTRUMENT,
        READING,
        SAMPLE,
        KIND,
        Part::number(
            "cap",
            say::cap,
            Holds::PRESSURE,
            say::for_the_boiling_point_may_stay,
        ),
        ALTITUDE,
        LABEL,
    ],
    at_first: &[],
    run: measured,
};

/// Freezing, boiling under the cap at the altitude, and the margin to the hottest reading.
#[must_use]
pub fn protection(asked: &mut Asked) -> Option<Answer> {
    asked.needed("strength", say::such_as_50());
    let mixture = asked.strength("strength");
    let protected = mixture.and_then(|mixture| protects(asked, mixture, None, Working::new("")));
    protected.filter(|_| asked.troubles.is_empty())
}

/// The strength by what was read, and how far it protects.
#[must_use]
pub fn measured(asked: &mut Asked) -> Option<Answer> {
    asked.needed("reading", say::write_what_the_instrument_shows());
    let found = read_strength(asked)?;
    let answer = protects(asked, found.mixture, found.mass_band, found.working)?;
    asked.troubles.is_empty().then_some(answer)
}

/// Density of water at 60 °F, which a hydrometer's 1.000 stands for.
const WATER_60_F_KG_PER_M3: f64 = 999.0;

fn read_strength(asked: &mut Asked) -> Option<Strength> {
    if asked.text("reading").is_empty() {
        return None;
    }
    let glycol = asked.glycol();
    match asked.text("instrument") {
        "hydrometer" => {
            let gravity = asked.plain("reading")?;
            let sample_c = asked.temperature_or_room("sample");
            let density = gravity * WATER_60_F_KG_PER_M3;
            let found = coolant::strength_from_density(glycol, density, sample_c);
            asked.ok("reading", found)
        }
        "strip" => {
            let mixture = asked.strength("reading")?;
            Some(Strength {
                mixture,
                mass_band: None,
                working: Working::new(say::strength()).remark(say::as_the_strip_shows_it()),
            })
        }
        _ => {
            let freeze_c = asked.celsius("reading")?;
            let scale = Glycol::named(asked.text("scale")).unwrap_or(glycol);
            let concentrate = asked.concentrate();
            let found = match asked.table() {
                Some(table) => {
                    coolant::strength_by_table(glycol, scale, freeze_c, concentrate, &table)
                }
                None => coolant::strength_from_freeze_point(glycol, scale, freeze_c),
            };
            asked.ok("reading", found)
        }
    }
}

fn protects(
    asked: &mut Asked,
    mixture: Mixture,
    band: Option<Range<f64>>,
    found: Working,
) -> Option<Answer> {
    let concentrate = asked.concentrate();
    let table = asked.table();
    let freezing = by_table(mixture, concentrate, table.as_ref());
    let freezing = asked.ok("strength", freezing)?;
    let boiling = boiling(asked, mixture);
    let (standing, told) = standing(asked, mixture, concentrate)?;
    let mut answer = Answer {
        fact: asked.large_c(freezing.freeze_c),
        said: say::it_freezes_at(asked.show_c(freezing.freeze_c)),
        tone: match standing {
            StrengthStanding::Within => "yes",
            StrengthStanding::TooWeak | StrengthStanding::TooStrong => "no",
        },
        ..Answer::default()
    };
    answer.row(say::this_mix(), told);
    strength_rows(&mut answer, mixture, concentrate);
    if freezing.within_k > 0.0 {
        answer.row(
            say::other_tables_put_it_between(),
            say::one_and_other(
                asked.show_c(freezing.count_on_c()),
                asked.show_c(freezing.freeze_c - freezing.within_k),
            ),
        );
        answer
            .notes
            .push(say::count_on_the_warmer_one_points().to_owned());
    } else {
        answer
            .notes
            .push(say::by_the_points_entered_from_the().to_owned());
    }
    if let Some(band) = band {
        answer.row(
            say::glycol_by_mass_by_how_dense(),
            say::percent_from_to(
                format!("{:.0}", band.low() * 100.0),
                format!("{:.0}", band.high() * 100.0),
            ),
        );
        answer
            .notes
            .push(say::inhibitors_make_bought_coolant_denser_so().to_owned());
    }
    let mut working = found.then(freezing.working.clone());
    if let Some(boiling) = &boiling {
        answer.row(say::boils_under_its_cap(), asked.show_c(boiling.boil_c));
        answer.row(
            say::boils_with_no_pressure(),
            asked.show_c(boiling.boil_open_c),
        );
        working = working.then(boiling.working.clone());
        if let Some(hottest_c) = asked.celsius("hottest") {
            working = margin(asked, &mut answer, boiling, mixture, hottest_c, working)?;
        }
    }
    answer.drawings.push(chart(
        asked,
        mixture,
        &freezing,
        boiling.as_ref(),
        table.as_ref(),
    ));
    answer.outputs = json!({
        "freeze_c": rounded(freezing.freeze_c),
        "boil_c": boiling.as_ref().map(|boiling| rounded(boiling.boil_c)),
        "glycol": mixture.glycol().name(),
        "volume_fraction": rounded(mixture.volume_fraction() * 1000.0) / 1000.0,
        "concentrate_fraction": mixture.concentrate_fraction(concentrate),
        // For a program and for the record, whatever is spoken.
        "standing": speaking(Language::English, || standing.to_string()),
    });
    Some(answer.with_working(&working))
}

fn rounded(number: f64) -> f64 {
    (number * 10.0).round() / 10.0
}

fn by_table(
    mixture: Mixture,
    concentrate: Concentrate,
    table: Option<&FreezeTable>,
) -> Result<Freezing, coolant::CoolantError> {
    match table {
        Some(table) => coolant::freezing_by_table(mixture, concentrate, table),
        None => coolant::freezing(mixture),
    }
}

/// Only where a cap is told: no rating is made up.
fn boiling(asked: &mut Asked, mixture: Mixture) -> Option<Boiling> {
    let cap_kpa = asked.kilopascals("cap")?;
    let altitude_m = asked.altitude_m();
    let field = if (0.0..=250.0).contains(&cap_kpa) {
        "altitude"
    } else {
        "cap"
    };
    let found = coolant::boiling(mixture, cap_kpa, altitude_m);
    asked.ok(field, found)
}

fn margin(
    asked: &mut Asked,
    answer: &mut Answer,
    boiling: &Boiling,
    mixture: Mixture,
    hottest_c: f64,
    working: Working,
) -> Option<Working> {
    let found = coolant::margin(boiling, hottest_c);
    let margin = asked.ok("hottest", found)?;
    let altitude_m = asked.altitude_m();
    let opened = coolant::opening_cap(mixture, altitude_m, hottest_c);
    let opened = asked.ok("hottest", opened)?;
    let word = match margin.standing {
        MarginStanding::Ample => say::ample(),
        MarginStanding::Thin => say::thin_the_head_is_hotter_than(),
        MarginStanding::Boils => say::none_it_boils(),
    };
    answer.row(
        say::from_the_hottest_reading_to_boiling(),
        format!("{:.0} K, {word}", margin.under_cap_k),
    );
    answer.alarms.push(opened.caution);
    Some(working.then(margin.working))
}

/// Both curves by concentrate by volume, with this mixture on them.
fn chart(
    asked: &mut Asked,
    mixture: Mixture,
    freezing: &Freezing,
    boiling: Option<&Boiling>,
    table: Option<&FreezeTable>,
) -> Drawing {
    let us = asked.customary() == Customary::Us;
    let shown = |t_c: f64| if us { t_c * 1.8 + 32.0 } else { t_c };
    let concentrate = Concentrate::default();
    let altitude_m = asked.altitude_m();
    let parts = || (0..=13_u32).map(|step| f64::from(step) * 0.05);
    let curve = |of: &dyn Fn(Mixture) -> Option<f64>| {
        parts()
            .filter_map(|part| {
                let mixture = Mixture::of_concentrate(mixture.glycol(), part, concentrate).ok()?;
                Some((part * 100.0, shown(of(mixture)?)))
            })
            .collect::<Vec<_>>()
    };
    let boils = |pressure: fn(&Boiling) -> f64| {
        boiling.map_or_else(Vec::new, |at| {
            // The cap as it was told is what lies between the two pressures.
            let cap_kpa = at.absolute_pressure_kpa - at.atmosphere_kpa;
            curve(&|mixture| {
                let found = coolant::boiling(mixture, cap_kpa, altitude_m).ok()?;
                Some(pressure(&found))
            })
        })
    };
    let told = |t_c: f64| {
        let unit = if us { "°F" } else { "°C" };
        format!("{:.0}\u{202f}{unit}", shown(t_c)).replace('-', "\u{2212}")
    };
    let strength = mixture.concentrate_fraction(concentrate).unwrap_or(1.0) * 100.0;
    mix_chart(
        &MixChart {
            strength: say::concentrate_by_volume().to_owned(),
            unit: if us { "°F" } else { "°C" }.to_owned(),
            freeze: curve(&|mixture| Some(coolant::freezing(mixture).ok()?.freeze_c)),
            boil: boils(|found| found.boil_c),
            boil_open: boils(|found| found.boil_open_c),
            published: table.map_or_else(Vec::new, |table| {
                let points = table.points().iter();
                points
                    .map(|(part, t_c)| (part * 100.0, shown(*t_c)))
                    .collect()
            }),
            reading: Some(MixReading {
                strength,
                freeze: shown(freezing.freeze_c),
                freeze_words: say::freezes_at(told(freezing.freeze_c)),
                boil: boiling.map(|found| shown(found.boil_c)),
                boil_words: boiling
                    .map(|found| say::boils_at(told(found.boil_c)))
                    .unwrap_or_default(),
            }),
        },
        PHONE_PX,
    )
}
