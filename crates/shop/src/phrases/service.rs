//! What is refused, and what two people changed at the same time.

use phrases::phrases;

phrases! {
    /// Where something is refused: the order.
    pub the_order = "the order", "der Auftrag";
    /// Where something is refused or not found: the record.
    pub the_record = "the record", "die Aufzeichnung";
    /// How it is mended that something is not there.
    pub look_it_up = "look it up by number, plate or name", "nach Nummer, Kennzeichen oder Name suchen";
    /// Two changed the same: what a payer pays.
    pub what_payer_pays(payer) = "What {payer} pays", "Was zu zahlen ist ({payer})";
    /// Behind "changed meanwhile": by whom, and when.
    pub by_whom_when(who, hour) = " by {who}, {hour}", " von {who}, {hour}";
    /// Two changed the price; by whom.
    pub price_changed(by) = "The price was changed meanwhile{by}", "Der Preis wurde inzwischen geändert{by}";
    /// How it is mended that two changed the same.
    pub look_at_both = "look at both, then decide again: nothing was changed, and what you typed is still there", "beide ansehen, dann neu entscheiden: es wurde nichts geändert, und die Eingabe ist noch da";
    /// One side of what two changed: it is left out.
    pub not_there = "not there", "nicht da";
    /// What two changed: what was sent, and what stands.
    pub you_and_now(what, yours, now) = "{what}: you {yours}, now {now}", "{what}: gesendet {yours}, jetzt {now}";
    /// An entry of the price that has no words.
    pub entry_without_words = "An entry without words", "Eine Zeile ohne Text";
    /// What a payer pays with tax, and what is agreed.
    pub sum_with_tax(sum, agreed) = "{sum} with tax, {agreed}", "{sum} mit Steuer, {agreed}";
    /// What a payer pays before tax, and what is agreed.
    pub sum_before_tax(sum, agreed) = "{sum} before tax, {agreed}", "{sum} ohne Steuer, {agreed}";
    /// No sum was agreed to.
    pub nothing_agreed = "nothing agreed", "nichts vereinbart";
    /// What was agreed.
    pub so_much_agreed(sum) = "{sum} agreed", "{sum} vereinbart";
    /// Refused: the place whose rules hold.
    pub the_place = "the place whose rules hold", "der Ort, dessen Regeln gelten";
    /// Refused: rules that this program does not have.
    pub rules_unknown(version, place) = "version {version} of {place} is not among the rules this program has", "Version {version} von {place} gehört nicht zu den Regeln in diesem Programm";
    /// How a place is mended.
    pub choose_a_listed_place = "choose one that the page of the shop lists, or none", "einen von der Seite der Werkstatt wählen oder keinen";
    /// Refused: the shop's time zone.
    pub the_time_zone = "the shop's time zone", "die Zeitzone der Werkstatt";
    /// Refused: a time zone that is none.
    pub no_time_zone(zone) = "{zone} is no time zone", "{zone} ist keine Zeitzone";
    /// How a time zone is mended.
    pub write_zone_like = "write it like Europe/Lisbon or America/Chicago", "so schreiben: Europe/Berlin oder America/Chicago";
    /// Refused: the shop's currency.
    pub the_currency = "the shop's currency", "die Währung der Werkstatt";
    /// Refused: too many digits of a currency.
    pub too_many_digits(digits, most) = "{digits} digits after the point; no currency has more than {most}", "{digits} Stellen nach dem Komma; keine Währung hat mehr als {most}";
    /// How a currency is mended.
    pub give_digits_of_coin = "give the digits of the smallest coin: 2 for cents", "die Stellen der kleinsten Münze angeben: 2 für Cent";
    /// Refused: the shop's rate.
    pub the_rate = "the shop's rate", "der Stundensatz der Werkstatt";
    /// Refused: a rate that is none.
    pub no_rate(rate) = "{rate} is no rate of an hour", "{rate} ist kein Stundensatz";
    /// How a rate is mended.
    pub give_hour_cost = "give what an hour costs before tax: nought or more", "angeben, was eine Stunde ohne Steuer kostet: null oder mehr";
    /// Refused: the shop's tax.
    pub the_tax = "the shop's tax", "die Steuer der Werkstatt";
    /// Refused: a tax that is none.
    pub no_tax(name, percent) = "{name}: {percent} per cent is no tax", "{name}: {percent} Prozent sind keine Steuer";
    /// How a tax is mended.
    pub give_per_cent = "give its per cent: nought or more, such as 20", "den Prozentsatz angeben: null oder mehr, etwa 19";
    /// Refused: how long records are kept.
    pub years_kept = "the years that records are kept", "die Jahre der Aufbewahrung";
    /// Refused: too many years.
    pub too_many_years(years, most) = "{years} years; nobody keeps records for more than {most}", "{years} Jahre; niemand bewahrt länger auf als {most}";
    /// How years are mended.
    pub say_whole_years = "say it in whole years, as the law or your accountant does", "in ganzen Jahren, so wie Gesetz oder Steuerberater es verlangen";
    /// Refused: how ways of mending are weighed.
    pub the_weights = "the weights", "die Gewichte";
    /// Refused: weights that rank nothing.
    pub weights_out_of_range = "each must be between 0 and 1000, and one above 0", "jedes zwischen 0 und 1000, und mindestens eines über 0";
    /// How weights are mended.
    pub write_one_for_each = "write 1 for each to count them alike", "überall 1 schreiben, damit alle gleich zählen";
    /// Refused: another command came under the same name.
    pub another_command = "another command came under this id before", "unter dieser Kennung kam schon ein anderer Befehl";
    /// How it is mended.
    pub own_id_each = "give each command an id of its own", "jedem Befehl eine eigene Kennung geben";
    /// Refused: somebody else was quicker.
    pub somebody_was_quicker(actual, expected) = "it stands at {actual}, not at {expected}: somebody else was quicker", "es steht bei {actual}, nicht bei {expected}: jemand anders war schneller";
    /// How it is mended that somebody else was quicker.
    pub look_at_what_is_new = "look at what is new and decide again", "das Neue ansehen und neu entscheiden";
    /// Refused: a waiver without a reason.
    pub why_it_may_pass = "why it may pass", "der Grund";
    /// Refused: a waiver whose words are no reason.
    pub says_nothing_of_why(text) = "“{text}” says nothing of why it may pass", "„{text}“ sagt nicht, warum";
    /// How a waiver without a reason is mended.
    pub say_why_in_few_words = "say in a few words why, and what is done about it", "kurz sagen, warum, und was deswegen getan wird";
    /// Refused: others change the same all the time.
    pub others_keep_changing = "others keep changing it", "andere ändern ihn gerade";
    /// How it is mended.
    pub send_it_again = "send it again", "noch einmal senden";
    /// The record is a copy that is not whole.
    pub part_of_a_copy = "a part of a copy is all that is there: setting it down goes on, or broke off", "es ist erst ein Teil einer Kopie da: sie wird noch geschrieben oder brach ab";
    /// How a copy that is not whole is mended.
    pub restore_same_copy = "restore or import the same copy to the same place again: it goes on from where it broke off. Or use an empty place", "dieselbe Kopie noch einmal an denselben Ort zurückspielen: es geht dort weiter, wo es abbrach. Oder einen leeren Ort nehmen";
    /// The record lacks its end.
    pub end_is_missing(position, head) = "it ends at event {position}, but its head says {head}", "sie endet bei Ereignis {position}, ihr Kopf sagt aber {head}";
    /// How a record that lacks its end is mended.
    pub stop_and_restore = "stop the program, keep a copy of the record as it is, and restore the newest backup that verifies", "das Programm anhalten, eine Kopie der Aufzeichnung behalten, wie sie ist, und die neueste Sicherung zurückspielen, die sich prüfen lässt";
    /// Refused: words and files that came with a command.
    pub the_commands_texts = "the command's texts", "die Texte des Befehls";
    /// How a text is mended.
    pub mend_the_text = "mend the text and send it again", "den Text berichtigen und noch einmal senden";
    /// Refused: what a device sent.
    pub the_command = "the command", "der Befehl";
    /// How a command is mended.
    pub see_the_form = "see /api/openapi.json for the form of a command", "wie ein Befehl aussieht, steht unter /api/openapi.json";
    /// How a command is mended.
    pub mend_that_field = "mend that field and send it again", "das Feld berichtigen und noch einmal senden";
    /// What is wrong with a command.
    pub exactly_one_of = "send exactly one of fact, vehicle_fact, customer_fact, map_fact, shop_fact, request",
        "genau eines senden: fact, vehicle_fact, customer_fact, map_fact, shop_fact, request";
    /// What is wrong with a command.
    pub wrong_stream(stream) = "stream: {stream} does not take this; a fact or request goes to order:…, a vehicle_fact to vehicle:…, a customer_fact to customer:…, a map_fact to map:…, a shop_fact to shop",
        "stream: {stream} nimmt das nicht; fact und request gehen an order:…, vehicle_fact an vehicle:…, customer_fact an customer:…, map_fact an map:…, shop_fact an shop";
    /// What is wrong with a command.
    pub no_position = "fact.moves: a move names no position; name each piece, from 1",
        "fact.moves: es steht nicht dabei, welches Stück; jedes nennen, ab 1";
    /// What is wrong with a command.
    pub nothing_declined = "fact: nothing is named that is declined; name items, entries of the price or snags",
        "fact: es steht nicht dabei, was abgelehnt wurde; Teile, Zeilen des Preises oder Probleme nennen";
    /// What is wrong with a command.
    pub only_by_the_program = "shop_fact: this is written by the shop's own program only",
        "shop_fact: das schreibt nur das Programm selbst";
    /// What is wrong with a command: when it happened.
    pub no_time(text) = "{text} is no time", "{text} ist kein Zeitpunkt";
    /// How a time is mended.
    pub write_a_time_like = "write it like \"2026-11-25T08:30:00Z\"", "so schreiben: „2026-11-25T08:30:00Z“";
    /// How it is mended that something does not fit into one event.
    pub in_smaller_steps = "say it in several smaller steps", "in mehreren kleineren Schritten senden";
    /// What is wrong with a command.
    pub named_by_nothing = "a text or file came with it that nothing in it names, or as something else",
        "ein Text oder eine Datei kam mit, ohne dass der Befehl sie so nennt";
    /// How it is mended.
    pub leave_out_what_is_not_needed = "leave out what is not needed, and name a file as what it is",
        "Unnötiges weglassen und eine Datei als das nennen, was sie ist";
    /// A tap that came late, as it is marked: the device was put out by then.
    pub device_was_put_out = "the device was put out", "das Gerät war gesperrt";
    /// A tap that came late, as it is marked: the person had left.
    pub person_had_left = "the person had left the shop", "die Person gehörte nicht mehr zur Werkstatt";
}
