//! What drawings say: lettering on them, and the words for whoever hears them.

use phrases::phrases;

phrases! {
    /// Under the drawing of what lies on what.
    pub broken_line = "Broken line: one of them is enough", "Gestrichelt: eins davon reicht";
    /// One row of the drawing of what lies on what, for whoever hears it: its number from above,
    /// and the things in it.
    pub row_of_things(nth, things) = "Row {nth}: {things}. ", "Reihe {nth}: {things}. ";
    /// Where a thing stands in the drawing of what lies on what, for whoever hears it.
    pub partly_out = "partly out", "zum Teil ausgebaut";
    /// Where a thing stands: a lock pin and the like, which is put in for the job.
    pub put_in = "in", "drin";
    /// Where a fluid stands.
    pub drained = "out", "raus";
    /// Where a thing stands.
    pub off = "off", "ab";
    /// What a thing is in the drawing: what one wants to get at.
    pub wanted = "wanted", "gesucht";
    /// What a thing is in the drawing: what comes off next.
    pub next = "next", "als Nächstes";

    /// Title of the marked photo of pieces.
    pub pieces_on_photo(n) = "{n} pieces on the photo", "{n} Teile auf dem Foto";
    /// A piece on a photo of which the program is not sure, for whoever hears it.
    pub look_at_it(piece) = "{piece}, look at it", "{piece}, ansehen";

    /// Title of the drawing of the stalls with their day.
    pub floor_and_day = "The floor and its day", "Die Halle und ihr Tag";
    /// A stall in which no vehicle stands, in the plan of it.
    pub free_in_plan = "free", "frei";
    /// A stall in which no vehicle stands, beside the plan of it.
    pub free = "Free", "Frei";
    /// A stall in which no vehicle stands, for whoever hears it.
    pub place_free(place) = "{place}: free", "{place}: frei";
    /// Under "Free": the stall has a lift.
    pub lift = "lift", "Bühne";
    /// Under "Free": the stall has no lift.
    pub flat = "flat", "ohne Bühne";
    /// Heading of the column with the times that were promised.
    pub promised = "promised", "zugesagt";
    /// Under the promised time: it will not be kept.
    pub not_kept = "not kept", "klappt nicht";
    /// The promised time of a vehicle and how sure it is, for whoever hears it; both after commas.
    pub promised_for(time, sure) = ", promised {time}{sure}", ", zugesagt {time}{sure}";
    /// A vehicle in a stall, for whoever hears it.
    pub cannot_roll = ", can't roll", ", rollt nicht";

    /// Title of the drawing of a week.
    pub week_and_room = "The week and its room", "Die Woche und was noch geht";
    /// How many vehicles are booked for a day.
    pub booked(many) = "{many} booked", "{many} angemeldet";
    /// Behind a day: hours of work that can be taken in.
    pub hours_free(hours) = "{hours} h free", "{hours} h frei";
    /// Behind a day on which nobody works.
    pub closed = "closed", "zu";
    /// A day, for whoever hears it: all hours of work, those that are planned, those that are free,
    /// and what is booked.
    pub day_in_words(day, open, planned, free, booked) = "{day}: {open} h of work, {planned} h planned, {free} h free, {booked}.", "{day}: {open} h Arbeit, {planned} h geplant, {free} h frei, {booked}.";
    /// A day on which nobody works, for whoever hears it.
    pub day_closed(day) = "{day}: closed.", "{day}: zu.";

    /// Beside a tray: what lies in it came off last.
    pub last_off = "last off", "zuletzt ab";
    /// Beside a tray: as which it came off; in English as "3rd", in German as a number.
    pub nth_off(ordinal, nth) = "{ordinal} off", "als {nth}. ab";
    /// In a tray with nothing in it.
    pub empty = "empty", "leer";
    /// Title of the drawing of the trays.
    pub nothing_on_bench = "Nothing on the bench", "Nichts auf der Werkbank";
    /// Title of the drawing of the trays.
    pub only_fluid_on_bench = "Only fluid on the bench", "Nur Flüssigkeit auf der Werkbank";
    /// Title of the drawing of the trays: how many pieces lie in them.
    pub pieces_on_bench(n) = ["{n} piece on the bench", "{n} pieces on the bench"],
        ["{n} Teil auf der Werkbank", "{n} Teile auf der Werkbank"];
    /// The drawing of the trays, for whoever hears it.
    pub nothing_lies_on_bench = "Nothing that has come off lies on the bench.", "Von dem, was ab ist, liegt nichts auf der Werkbank.";
    /// Beside a fluid in the drawing of the trays, instead of its litres.
    pub not_measured = "not measured", "nicht gemessen";

    /// The section through a screwed joint, for whoever hears it: the bolt, its measures, and
    /// perhaps the sentence that follows.
    pub section_through_joint(bolt, measures, edges) = "Section through the joint, bolt {bolt}: {measures}.{edges}", "Schnitt durch die Verbindung, Schraube {bolt}: {measures}.{edges}";
    /// The sentence after it.
    pub metal_not_measured = " The metal around it was not measured.", " Das Material darum herum wurde nicht gemessen.";

    /// Title of the drawing of how many pieces are off over the time of a job.
    pub way_in_and_out = "The way in and out", "Der Weg hinein und wieder heraus";
    /// In that drawing: how many pieces are off now.
    pub so_many_off(n) = "{n} off", "{n} ab";
    /// The same for whoever hears it: pieces, time and its unit, and what is to go.
    pub off_after(n, time, unit, to_go) = "{n} off after {time:.0} {unit}{to_go}", "{n} ab nach {time:.0} {unit}{to_go}";
    /// How much time is to go; after a comma.
    pub to_go(time, unit) = ", {time:.0} {unit} to go", ", noch {time:.0} {unit}";

    /// Title of the curve of a road test.
    pub road_test = "Road test", "Probefahrt";
    /// Name of an axis of time.
    pub minutes = "minutes", "Minuten";
    /// Name of the axis of temperature, with its unit.
    pub coolant_axis(unit) = "coolant, {unit}", "Kühlmittel, {unit}";
    /// Instead of the curve of a road test.
    pub no_drive_yet = "No drive yet", "Noch keine Fahrt";
    /// The same for whoever hears it.
    pub no_temperature_yet = "No temperature was recorded yet.", "Noch keine Temperatur aufgezeichnet.";
    /// Over the strip with the speed: the highest, and its unit.
    pub speed_at_most(most, unit) = "speed, at most {most:.0} {unit}", "Tempo, höchstens {most:.0} {unit}";
    /// The curve of a road test, for whoever hears it.
    pub coolant_from_to(from, to, unit, minutes, most) = "Coolant from {from:.0} to {to:.0} {unit} in {minutes:.0} minutes, at most {most:.0} {unit}.", "Kühlmittel von {from:.0} auf {to:.0} {unit} in {minutes:.0} Minuten, höchstens {most:.0} {unit}.";
    /// The band within which the temperature is right, for whoever hears it.
    pub may_keep_to(from, to, unit) = "It may keep to {from:.0} to {to:.0} {unit}.", "Richtig sind {from:.0} bis {to:.0} {unit}.";
    /// What stands at a point of the curve, for whoever hears it.
    pub mark_at(words, minutes) = "{words} at {minutes:.1} minutes.", "{words} nach {minutes:.1} Minuten.";
    /// The same where it is wrong.
    pub wrong_mark_at(words, minutes) = "Wrong: {words} at {minutes:.1} minutes.", "Falsch: {words} nach {minutes:.1} Minuten.";

    /// A part of the bar of a price, with its sum.
    pub labour(sum) = "labour {sum}", "Arbeit {sum}";
    /// A part of the bar of a price, with its sum: neither labour nor parts.
    pub other(sum) = "other {sum}", "Sonstiges {sum}";
    /// A part of the bar of a price, with its sum.
    pub parts(sum) = "parts {sum}", "Teile {sum}";
    /// Over the line at what was agreed.
    pub agreed(sum) = "agreed {sum}", "vereinbart {sum}";
    /// Title of the bar of a price.
    pub price_against_agreed = "The price against what was agreed", "Der Preis und das Vereinbarte";
    /// The bar of a price, for whoever hears it; the last is what was agreed, after a comma.
    pub price_in_words(labour, other, parts, total, agreed) = "Labour {labour}, other {other}, parts {parts}, in all {total}{agreed}", "Arbeit {labour}, Sonstiges {other}, Teile {parts}, Summe {total}{agreed}";
    /// What was agreed, for whoever hears it; after a comma.
    pub and_agreed(sum) = ", agreed {sum}", ", vereinbart {sum}";

    /// Name of an axis of odds: in how many of 100 cases an amount is enough.
    pub times_in_hundred = "times in 100 that it covers", "wie oft von 100 Mal es reicht";
    /// Title of the curve of odds.
    pub how_often_it_covers = "How often an amount covers it", "Wie oft ein Betrag reicht";
    /// A mark on the curve of odds, for whoever hears it.
    pub dashed_line_agreed(sum) = " The dashed line is the {sum:.0} that was agreed.", " Die gestrichelte Linie sind die vereinbarten {sum:.0}.";
    /// Instead of the curve of odds.
    pub no_odds_yet = "No odds yet", "Noch nichts gerechnet";
    /// The same for whoever hears it.
    pub nothing_worked_out = "Nothing was worked out yet.", "Es wurde noch nichts gerechnet.";

    /// Beside the dashed run of a belt.
    pub it_lies_like_this = "it lies like this", "so liegt er jetzt";
    /// The drawing of a belt, for whoever hears it: the pulleys, and perhaps the sentence that
    /// follows.
    pub belt_lies_on(pulleys, wrong) = "The belt lies on {pulleys}.{wrong}", "Der Riemen liegt auf {pulleys}.{wrong}";
    /// The sentence after it.
    pub dashed_is_wrong = " Dashed: how it lies now, which is wrong.", " Gestrichelt: wie er jetzt liegt, das ist falsch.";
    /// One pulley, for whoever hears it: which side of the belt, how far, which way it turns.
    pub pulley_with_ribs(pulley, degrees, turns) = "{pulley} with its ribs,{degrees} turns {turns}", "{pulley} mit den Rippen,{degrees} dreht {turns}";
    /// One pulley, for whoever hears it: which side of the belt, how far, which way it turns.
    pub pulley_with_back(pulley, degrees, turns) = "{pulley} with its back,{degrees} turns {turns}", "{pulley} mit dem Rücken,{degrees} dreht {turns}";
    /// Which way a pulley turns.
    pub clockwise = "clockwise", "rechtsherum";
    /// Which way a pulley turns.
    pub counter_clockwise = "counter-clockwise", "linksherum";
    /// It drives the others; after a comma.
    pub drives = ", drives", ", treibt an";

    /// Name of a curve over the strength of a coolant.
    pub boils_under_cap = "boils under its cap", "siedet unter dem Deckel";
    /// Name of a curve over the strength of a coolant.
    pub boils_open = "boils open", "siedet offen";
    /// Name of a curve over the strength of a coolant.
    pub freezes = "freezes", "gefriert";
    /// Title of that chart.
    pub freezing_and_boiling = "Freezing and boiling against strength", "Gefrieren und Sieden je nach Stärke";
    /// The chart, for whoever hears it: strength and its name, and what it does there.
    pub at_strength(strength, named, freezes, boils) = "At {strength:.0} {named} it {freezes}{boils}.", "Bei {strength:.0} {named}: {freezes}{boils}.";
    /// What it does besides; after a semicolon.
    pub and_it(boils) = "; it {boils}", "; {boils}";
    /// The chart without a reading, for whoever hears it: over what.
    pub points_against(named) = "Freezing and boiling points against {named}.", "Gefrier- und Siedepunkt über {named}.";
    /// Title of the drawing of how full a system is.
    pub in_the_system = "What is in the system", "Was im System ist";
    /// Instead of the curve of a pressure test.
    pub no_readings_yet = "No readings yet", "Noch keine Messwerte";
    /// The same for whoever hears it.
    pub no_pressure_yet = "No pressure was read yet.", "Noch kein Druck abgelesen.";
    /// Name of the axis of pressure, with its unit.
    pub gauge_axis(unit) = "gauge, {unit}", "Manometer, {unit}";
    /// Title of the curve of a pressure test.
    pub pressure_against_time = "Pressure against time", "Druck über der Zeit";
    /// Under the curve of a pressure test: the rings.
    pub read = "read", "Wert";
    /// Under the curve of a pressure test: the line.
    pub fitted = "fitted", "Linie";

    /// Under the curve of a pressure test: between the dashed lines.
    pub band_of_95 = "95 % band", "95-%-Band";
    /// A reading of a pressure test, for whoever hears it.
    pub pressure_at(pressure, unit, minutes) = "{pressure:.2} {unit} at {minutes:.1} minutes", "{pressure:.2} {unit} nach {minutes:.1} Minuten";
    /// The curve of a pressure test, for whoever hears it: how many readings, the first and the
    /// last of them, and perhaps the sentence that follows.
    pub readings_from(n, ends, verdict) = "{n} readings, from {ends}.{verdict}", "{n} Messwerte, von {ends}.{verdict}";
    /// Between the first and the last reading.
    pub from_to = " to ", " bis ";

    /// The drawing of bolts with the sequence in which they are turned, for whoever hears it.
    pub bolts_and_turns(n) = "{n} bolts; the number in each is its turn, from 1", "{n} Schrauben; die Zahl in jeder sagt, wann sie dran ist, ab 1";

    /// How a bolt of a joint stands, behind its number, for whoever hears it.
    pub bolt_out = "out", "raus";
    /// How a bolt of a joint stands, behind its number, for whoever hears it.
    pub bolt_loose = "on, not tight", "dran, nicht fest";
    /// How a bolt of a joint stands, behind its number, for whoever hears it.
    pub bolt_tight = "tight", "fest";
    /// The bolts of a joint, for whoever hears it: each number and how it stands.
    pub bolts_of_joint(bolts) = "Bolts: {bolts}.", "Schrauben: {bolts}.";
    /// The sentence after it, where the sequence is known.
    pub in_the_sequence(numbers) = " In the sequence {numbers}.", " In der Reihenfolge {numbers}.";
}
