//! German, for papers, and what a screen says otherwise than they do.

use super::tongue::Tongue;
use repair::price::Payer;
use repair::{
    DifferenceIs, Ending, Kind, Leaves, OldPartFate, ProofIs, SnagIs, State, Token, Work, WorkIs,
};

pub(super) static TONGUE: Tongue = PAPERS;

const PAPERS: Tongue = Tongue {
    state,
    proof,
    snag,
    work,
    work_name,
    old_part,
    difference,
    left,
    ending,
    payer,
    measured: crate::measures::in_german,
    undescribed: |item| format!("etwas noch nicht Beschriebenes ({item})"),
    the_vehicle: "Fahrzeug",
    quoted: |written| format!("\u{201e}{written}\u{201c}"),
    a_line: "eine Beanstandung",
    a_part: |part| format!("Teil {part}"),
    work_sent_out: "Fremdarbeit",
    unsaid: |label| format!("{label}: bewegt, und niemand hat angegeben, was es ist"),
    disputed: |label, claims| format!("{label}: {claims}; nachsehen, was stimmt"),
    says: |who, state| format!("{who} sagt {state}"),
    low: |label, litres| format!("{label} zu wenig: {litres}"),
    still_inside: |label| format!("{label}: noch drin"),
    not_seen: "nicht gesehen",
    old_one_on: "das alte ist dran; ein neues einbauen",
    pass_done: |word, passes| format!("{word}, {passes}. Durchgang gemacht"),
    litres: |out, poured| format!("{} L raus, {} L rein", comma(out), comma(poured)),
    litres_untold: "nicht notiert, wie viel herauskam",
    unlocated: |open| format!("{open}: noch nicht angegeben, zu welchem System es gehört"),
    not_caught: |item| format!("{item} ist heraus, und nicht notiert, wohin: die Liter fehlen"),
    much_missing: |item, out, poured| {
        format!(
            "{item}: {} L raus, nur {} L rein, und kein kalter Füllstand gesehen",
            comma(out),
            comma(poured)
        )
    },
    amount_unread: |item, amounts| {
        format!("{item}: {amounts} nicht als Liter lesbar, und kein kalter Füllstand notiert")
    },
    litres_short: |item, out, poured| {
        format!(
            "{item}: {} L raus, {} L rein: der Füllstand nach dem Abkühlen entscheidet",
            comma(out),
            comma(poured)
        )
    },
    fate_untold: |item| format!("{item}: nicht angegeben, wohin das Abgelassene kam"),
    not_known: |item| {
        format!("{item}: nicht angegeben, was es ist; es kann zu Bremse oder Lenkung gehören")
    },
    not_looked_at: |complaint| format!("{complaint}: vor der Fahrt nicht angesehen"),
    torque_told_apart: |item| format!("{item}: zwei verschiedene Drehmomente genannt"),
    not_checked: |item, by| format!("{item}: zweite Prüfung fehlt (gemacht von {by})"),
    proof_missing: |proof| format!("{proof} fehlt"),
    mix_outside: "Kühlmittelmischung außerhalb ihrer Grenzen",
    proof_failed: |proof| format!("{proof} nicht bestanden"),
    part_adrift: |count, part| {
        format!(
            "{} × {part}: ungeklärt, ob eingebaut, zurückgegeben oder im Lager",
            comma(count)
        )
    },
    old_part_adrift: |part| format!("Altes Teil, {part}: Verbleib ungeklärt"),
    sublet_out: |what| format!("{what} ist noch außer Haus"),
    line_unfinished: |complaint| format!("{complaint}: Ursache und Abhilfe nicht notiert"),
    not_priced: "Noch kein Preis",
    no_consent: |payer| format!("{payer}: keiner Summe zugestimmt"),
    over_ceiling: |by, payer| format!("{payer}: {by} über dem Vereinbarten"),
    not_charged: "Rechnung nicht geschrieben",
    unpaid: |balance| format!("{balance} noch offen"),
    keys_here: "Die Schlüssel sind noch bei uns",
    waived: |by, why| format!("trotzdem freigegeben von {by}: {why}"),
    snag_open: "Mangel nicht behoben",
    not_resolved: |at, what| format!("{at}: {what}, nicht behoben"),
    later: |date, distance| {
        let by = date.map(|date| format!(" bis zum {}", date.strftime("%-d.%-m.%Y")));
        let after =
            distance.map(|distance| format!(" nach {}", comma(&distance.replace(" to ", " bis "))));
        format!("{}{}", after.unwrap_or_default(), by.unwrap_or_default())
    },
    now: |item, how| format!("{item}: jetzt {how}"),
    due: |what| format!("Fällig: {what}"),
};

/// What a screen says: shorter than a paper, to whoever mends it, and never to the customer.
pub(super) static ON_SCREEN: Tongue = Tongue {
    state: on_screen::state,
    snag: on_screen::snag,
    old_part: on_screen::old_part,
    payer: on_screen::payer,
    disputed: |label, claims| format!("{label}: {claims}; nachsehen und sagen, was stimmt"),
    unlocated: |open| format!("{open}: sagen, zu welchem System es gehört"),
    not_caught: |item| format!("{item} ist heraus, und nirgends steht, wohin: Liter notieren"),
    fate_untold: |item| {
        format!("{item}: was kam heraus und wohin: aufgehoben, verwertet, entsorgt?")
    },
    not_known: |item| {
        format!("{item}: was ist es? Es kann zu Bremse, Lenkung oder Ähnlichem gehören")
    },
    not_looked_at: |complaint| {
        format!("{complaint}: vor der Fahrt ansehen und sagen, was gefunden wurde")
    },
    torque_told_apart: |item| format!("{item}: zwei Drehmomente genannt. Welches gilt?"),
    not_checked: |item, by| format!("{item}: braucht eine zweite Prüfung (gemacht von {by})"),
    part_adrift: |count, part| {
        format!(
            "{} × {part}: eingebaut, zurückgegeben oder im Lager?",
            comma(count)
        )
    },
    old_part_adrift: |part| {
        format!("Altes Teil, {part}: aufgehoben, gegen Pfand zurück oder entsorgt?")
    },
    no_consent: |payer| format!("Noch keiner Summe zugestimmt ({payer})"),
    over_ceiling: |by, payer| {
        format!("{by} über dem Vereinbarten ({payer}): fragen oder nachlassen")
    },
    snag_open: "Problem nicht behoben",
    ..PAPERS
};

mod on_screen {
    use repair::price::Payer;
    use repair::{Kind, OldPartFate, SnagIs, State};

    pub fn state(kind: Kind, state: State) -> &'static str {
        match state {
            State::Off => "ab",
            State::Stub { holds: true } => "festgegangen",
            other => super::state(kind, other),
        }
    }

    pub fn snag(snag: SnagIs) -> &'static str {
        match snag {
            SnagIs::Stuck => "festgegangen",
            other => super::snag(other),
        }
    }

    pub fn payer(payer: Payer) -> &'static str {
        match payer {
            Payer::Customer => "Kunde",
            Payer::Warranty => "Garantie",
            Payer::Goodwill => "Kulanz",
        }
    }

    pub fn old_part(fate: OldPartFate) -> &'static str {
        match fate {
            OldPartFate::Kept => "für den Kunden aufgehoben",
            OldPartFate::Given => "dem Kunden gegeben",
            OldPartFate::Core => "gegen Pfand zurückgegeben",
            OldPartFate::Scrap => "entsorgt",
        }
    }
}

/// The point within a figure as a comma.
pub(super) fn comma(text: &str) -> String {
    phrases::speaking(phrases::Language::German, || phrases::figures(text))
}

fn state(kind: Kind, state: State) -> &'static str {
    match state {
        State::On => "dran",
        State::Off => "abgebaut",
        State::Tight => "fest",
        State::Cracked => "gelöst",
        State::Out => "ausgebaut",
        State::Loose { .. } => "dran, nicht fest",
        State::Stub { holds: true } => "steckt fest",
        State::Stub { holds: false } => "abgerissen",
        State::Plugged => "gesteckt",
        State::Unplugged => "abgezogen",
        State::AtLevel => "Füllstand stimmt",
        State::Low => "zu wenig",
        State::Done => "erledigt",
        State::Due => "fällig",
        State::Outside => "nicht mehr im Fahrzeug",
        State::Inside if kind == Kind::PutIn => "noch drin",
        State::Inside => "noch drin",
    }
}

fn proof(proof: ProofIs) -> &'static str {
    match proof {
        ProofIs::RoadTest => "Probefahrt",
        ProofIs::LeakTest => "Dichtprüfung des Kühlsystems",
        ProofIs::BrakeTest => "Bremsprüfung",
        ProofIs::FuelLeakLook => "Sichtprüfung auf Kraftstoffaustritt unter Druck",
        ProofIs::RestraintLamp => "Kontrolle der Airbagleuchte",
        ProofIs::CoolantMix => "Prüfung der Kühlmittelmischung",
        ProofIs::Other => "Prüfung",
    }
}

fn snag(snag: SnagIs) -> &'static str {
    match snag {
        SnagIs::Snapped => "abgerissen",
        SnagIs::Stuck => "festsitzend",
        SnagIs::Stripped => "Gewinde ausgerissen",
        SnagIs::Rounded => "Kopf rundgedreht",
        SnagIs::Torn => "gerissen",
        SnagIs::Worn => "verschlissen",
        SnagIs::Broken => "gebrochen",
        SnagIs::Bent => "verbogen",
        SnagIs::Corroded => "verrostet",
        SnagIs::Leaking => "undicht",
        SnagIs::Missing => "fehlt",
        SnagIs::Other => "nicht in Ordnung",
    }
}

/// Work in words, as the trade has them.
fn work(work: &Work) -> String {
    let sort = work.sort.as_ref().map(Token::as_str);
    let by_trade = sort.and_then(sort_of_work);
    by_trade.unwrap_or_else(|| work_name(work.work).to_owned())
}

/// A work of the trade in words; nothing where the trade has none of that code.
pub(crate) fn sort_of_work(sort: &str) -> Option<String> {
    let (code, side) = sort.split_once(':').unwrap_or((sort, ""));
    let words = trade::Vocabulary::shipped().work(code)?.german.to_string();
    Some(match side_of(side) {
        "" => words,
        side => format!("{words}, {side}"),
    })
}

/// A side as the trade codes it.
fn side_of(code: &str) -> &str {
    match code {
        "front-left" => "vorne links",
        "front-right" => "vorne rechts",
        "rear-left" => "hinten links",
        "rear-right" => "hinten rechts",
        "front" => "vorne",
        "rear" => "hinten",
        "left" => "links",
        "right" => "rechts",
        other => other,
    }
}

fn work_name(work: WorkIs) -> &'static str {
    match work {
        WorkIs::Bleed => "Entlüften",
        WorkIs::LevelWarm => "Füllstand warm prüfen",
        WorkIs::LevelCold => "Füllstand kalt prüfen",
        WorkIs::LookForLeaks => "Auf Undichtigkeit prüfen",
        WorkIs::TorqueAgain => "Nachziehen",
        WorkIs::TorqueAfterDistance => "Nach 50 bis 100 km nachziehen",
        WorkIs::PumpPedal => "Bremspedal aufpumpen",
        WorkIs::Relearn => "Anlernen",
        WorkIs::Alignment => "Spur prüfen",
        WorkIs::ClockAndWindows => "Uhr und Fenster einstellen",
        WorkIs::CleanFace => "Dichtfläche reinigen",
        WorkIs::Other => "Weitere Arbeit",
    }
}

fn old_part(fate: OldPartFate) -> &'static str {
    match fate {
        OldPartFate::Kept => "für Sie aufgehoben",
        OldPartFate::Given => "Ihnen gegeben",
        OldPartFate::Core => "gegen Pfand zurückgegeben",
        OldPartFate::Scrap => "entsorgt",
    }
}

fn difference(what: DifferenceIs) -> &'static str {
    match what {
        DifferenceIs::Insert => "Gewindeeinsatz",
        DifferenceIs::Larger => "größeres Gewinde",
        DifferenceIs::Longer => "längere Schraube",
        DifferenceIs::Substitute => "ein anderes Teil",
        DifferenceIs::Gone => "mit Zustimmung weggelassen",
        DifferenceIs::Other => "anders",
    }
}

fn left(leaves: Leaves) -> &'static str {
    match leaves {
        Leaves::DrivesAway => "fuhr weg",
        Leaves::CollectedApart => "zerlegt abgeholt",
    }
}

fn ending(ending: Ending) -> &'static str {
    match ending {
        Ending::Repaired => "repariert",
        Ending::NotReproduced => "die Beanstandung war nicht nachstellbar",
        Ending::DeclinedPutBack => "abgelehnt und wieder zusammengebaut",
        Ending::DeclinedApart => "abgelehnt und zerlegt abgeholt",
    }
}

fn payer(payer: Payer) -> &'static str {
    match payer {
        Payer::Customer => "der Kunde",
        Payer::Warranty => "die Garantie",
        Payer::Goodwill => "Kulanz",
    }
}
