//! States, gates, areas, reasons and refusals in words.

use phrases::phrases;

phrases! {
    /// A gate: the battery goes on again.
    pub gate_battery = "Battery on", "Batterie an";
    /// A gate: the engine is started.
    pub gate_start = "Start", "Starten";
    /// A gate: it is let down from the lift.
    pub gate_lower = "Lower", "Absenken";
    /// A gate: it is rolled.
    pub gate_roll = "Roll", "Rollen";
    /// A gate: it is driven on the road.
    pub gate_road = "Road", "Probefahrt";
    /// A gate: it is handed over.
    pub gate_hand_over = "Hand over", "Übergabe";

    /// How a test ended.
    pub passed = "passed", "bestanden";
    /// How a test ended.
    pub failed = "failed", "nicht bestanden";
    /// How a test ended: the fault did not show itself.
    pub could_not_reproduce = "couldn't reproduce", "nicht nachstellbar";

    /// How a snag ended.
    pub out_all_as_before = "out, all as before", "raus, alles wie vorher";
    /// How a snag ended.
    pub thread_chased = "thread chased", "Gewinde nachgeschnitten";
    /// How a snag ended.
    pub wire_insert = "wire insert", "Drahtgewindeeinsatz";
    /// How a snag ended.
    pub solid_bushing = "solid bushing", "Gewindebuchse";
    /// How a snag ended.
    pub larger_thread = "larger thread", "größeres Gewinde";
    /// How a snag ended.
    pub longer_bolt = "longer bolt", "längere Schraube";
    /// How a snag ended.
    pub new_part = "new part", "Neuteil";
    /// How a snag ended.
    pub left_by_consent = "left, by consent", "mit Zustimmung so gelassen";
    /// How a snag ended.
    pub another_way = "another way", "auf andere Art";

    /// An area of the vehicle.
    pub engine_bay = "engine bay", "Motorraum";
    /// An area of the vehicle.
    pub underneath = "underneath", "unten";
    /// An area of the vehicle.
    pub wheels = "wheels", "Räder";
    /// An area of the vehicle.
    pub cabin = "cabin", "Innenraum";
    /// An area of the vehicle.
    pub rear = "rear", "Heck";
    /// An area of the vehicle.
    pub outside = "outside", "außen";
    /// Where nobody said which area it is.
    pub place_not_told = "place not told", "Ort nicht genannt";

    /// What was noted at the walk-round.
    pub warning_lamp_lit = "warning lamp lit", "Warnleuchte an";
    /// What was noted at the walk-round.
    pub scratch_or_damage = "scratch or damage", "Kratzer oder Schaden";
    /// What was noted at the walk-round.
    pub something_missing = "something missing", "etwas fehlt";
    /// What was noted at the walk-round.
    pub repaired_before = "repaired before", "schon einmal repariert";
    /// What was noted at the walk-round: the key of a locking wheel nut.
    pub locking_nut_key = "locking-nut key", "Adapter für die Felgenschlösser";
    /// What was noted at the walk-round.
    pub leak = "leak", "undicht";
    /// What was noted at the walk-round, of no sort.
    pub noted = "noted", "notiert";

    /// A system of the vehicle.
    pub brakes = "brakes", "Bremsen";
    /// A system of the vehicle.
    pub steering = "steering", "Lenkung";
    /// A system of the vehicle: suspension.
    pub suspension = "suspension", "Fahrwerk";
    /// A system of the vehicle.
    pub fuel = "fuel", "Kraftstoff";
    /// A system of the vehicle: belts and airbags.
    pub restraints = "restraints", "Rückhaltesysteme";
    /// A system of the vehicle.
    pub drive_belt = "drive belt", "Riementrieb";
    /// A system of the vehicle.
    pub high_voltage = "high voltage", "Hochvolt";
    /// A system of the vehicle.
    pub cooling = "cooling", "Kühlung";
    /// A system of the vehicle.
    pub oil = "oil", "Öl";
    /// A system of the vehicle.
    pub engine = "engine", "Motor";
    /// A system of the vehicle: gearbox, shafts, axles.
    pub transmission = "transmission", "Getriebe";
    /// A system of the vehicle: the intake of air.
    pub intake = "intake", "Ansaugung";
    /// A system of the vehicle.
    pub exhaust = "exhaust", "Abgasanlage";
    /// A system of the vehicle.
    pub battery = "battery", "Batterie";
    /// A system of the vehicle.
    pub electrical = "electrical", "Elektrik";
    /// A system of the vehicle: heating and air conditioning.
    pub climate = "climate", "Klima";
    /// A system of the vehicle.
    pub body = "body", "Karosserie";
    /// A system of the vehicle that nobody told.
    pub system_unknown = "unknown", "unbekannt";

    /// What an order can't be voided for, behind what stands: how that is mended.
    pub taken_back_if_a_mistake = "if it was told by mistake, take it back", "war das ein Irrtum, dann zurücknehmen";
    /// Why an order can't be voided: the thing was moved; and how that is mended.
    pub was_moved(what, mistake) = "{what} was moved: hand the order over instead; {mistake}", "{what} wurde bewegt: stattdessen den Auftrag übergeben; {mistake}";
    /// Why an order can't be voided: litres of a fluid went out or in.
    pub fluid_moved(what, litres, mistake) = "{what}, {litres}: hand the order over instead; {mistake}", "{what}, {litres}: stattdessen den Auftrag übergeben; {mistake}";
    /// Why an order can't be voided: a snag stands.
    pub snag_stands(what, mistake) = "{what}: hand the order over instead; {mistake}", "{what}: stattdessen den Auftrag übergeben; {mistake}";
    /// Why an order can't be voided: parts are here or ordered.
    pub parts_stand(count, part) = "{count} × {part}: send back, put into stock or cancel", "{count} × {part}: zurückschicken, ins Lager legen oder abbestellen";
    /// Why an order can't be voided: an old part with a core charge.
    pub core_stands(part) = "Core of {part}: send it back, or say where it went", "Altteil von {part}: zurückschicken oder angeben, wohin es ging";
    /// Why an order can't be voided: an old part.
    pub old_part_stands(part) = "Old {part}: say whether it is kept, a core or scrap", "Altes Teil, {part}: angeben, ob aufgehoben, gegen Pfand zurück oder entsorgt";
    /// Why an order can't be voided: something was sent out.
    pub sublet_stands(what) = "{what} is still away: fetch it back", "{what} ist noch außer Haus: zurückholen";
    /// Why an order can't be voided.
    pub invoice_stands = "The invoice is written: hand the order over instead", "Die Rechnung ist geschrieben: stattdessen den Auftrag übergeben";
    /// Why an order can't be voided: somebody paid.
    pub money_stands(amount, payer) = "{amount} from {payer}: give it back first", "{amount} bezahlt ({payer}): erst zurückzahlen";
    /// Why an order can't be voided.
    pub keys_stand = "We still have the keys: give them back", "Die Schlüssel sind noch bei uns: zurückgeben";
    /// A sum beyond all measure, in place of the sum.
    pub sum_too_large = "the sum is too large to be reckoned; look at quantities, prices and taxes again", "die Summe ist zu groß; Mengen, Preise und Steuern noch einmal ansehen";

    /// Refused: only these may let something pass.
    pub only_papers_may_waive = "only who sees to the papers may let this pass", "das darf nur freigeben, wer die Papiere macht";
    /// Refused: only these may let something pass.
    pub only_in_charge_may_waive = "only the technician whose order it is, or the owner, may let this pass", "das darf nur der Mechaniker des Auftrags oder der Inhaber freigeben";
    /// Refused: only the owner may let something pass.
    pub only_owner_may_waive = "only the owner may let this pass", "das darf nur der Inhaber freigeben";
    /// Refused at a gate: how many reasons stand against it.
    pub reasons_stand(n, gate) = ["{gate}: no, {n} reason stands against it", "{gate}: no, {n} reasons stand against it"], ["{gate}: nein, {n} Grund spricht dagegen", "{gate}: nein, {n} Gründe sprechen dagegen"];
    /// How a gate that refused is opened.
    pub close_each = "close each, or have it waived where that may be", "jeden erledigen oder, wo das geht, trotzdem freigeben";
    /// Refused: a sum is over what a payer agreed to.
    pub over_ceiling(sum, by, ceiling, payer) = "{sum} is {by} over the {ceiling} that {payer} agreed to", "{sum} liegt {by} über den {ceiling}, die vereinbart sind ({payer})";
    /// How a sum over what was agreed is mended.
    pub ask_for_more = "ask for consent to more, or write it down to what was agreed", "Zustimmung zu mehr holen oder auf das Vereinbarte nachlassen";
    /// Refused: there is no such thing, what is wrong before a colon and what it is behind.
    pub refused_at(at, what) = "{at}: {what}", "{at}: {what}";
    /// How a refusal is mended, where nothing else is known.
    pub look_at_the_order_again = "look at the order again", "den Auftrag noch einmal ansehen";
    /// Refused.
    pub already_open = "This order is open already", "Dieser Auftrag ist schon offen";
    /// Refused.
    pub no_such_order = "There is no such order", "Diesen Auftrag gibt es nicht";
    /// How a refusal is mended: the order is opened first.
    pub open_it_first = "open it first", "erst anlegen";
    /// Refused.
    pub was_voided = "This order was voided", "Dieser Auftrag wurde storniert";
    /// How a refusal is mended: another order is opened.
    pub open_a_new_one = "open a new one", "einen neuen anlegen";
    /// Refused.
    pub was_handed_over = "The vehicle was handed over", "Das Fahrzeug wurde übergeben";
    /// How a refusal is mended: the vehicle is taken in again.
    pub take_it_back_in = "take it back in first", "erst wieder annehmen";
    /// Refused.
    pub was_not_handed_over = "The vehicle was not handed over, so it cannot be taken back in", "Das Fahrzeug wurde nicht übergeben und kann nicht wieder angenommen werden";
    /// Refused.
    pub nobody_agreed = "Nobody has agreed to a sum yet", "Noch keiner Summe wurde zugestimmt";
    /// How a refusal is mended.
    pub record_the_consent = "record the consent first", "erst die Zustimmung eintragen";
    /// Refused.
    pub no_price_yet = "There is no price yet", "Es gibt noch keinen Preis";
    /// How a refusal is mended.
    pub set_one_first = "set one first", "erst einen festlegen";
    /// Refused: an entry of the price, by its place, and what is wrong with it.
    pub bad_entry(nth, what) = "Entry {nth} of the price: {what}", "Zeile {nth} des Preises: {what}";
    /// Refused.
    pub price_changed = "The price was changed meanwhile", "Der Preis wurde inzwischen geändert";
    /// How a refusal is mended.
    pub look_at_both_and_set = "look at both and set it again", "beide ansehen und neu festlegen";
    /// Refused.
    pub sum_changed = "The sum or what was agreed has changed meanwhile", "Die Summe oder die Vereinbarung hat sich inzwischen geändert";
    /// How a refusal is mended.
    pub look_at_both_and_decide = "look at both and decide again", "beide ansehen und neu entscheiden";
    /// Refused: what was to be waived has changed.
    pub figure_changed = "There is more or less of it than was seen", "Es ist mehr oder weniger davon als gesehen";
    /// How a refusal is mended.
    pub look_and_decide_again = "look again and decide again", "noch einmal ansehen und neu entscheiden";
    /// Refused.
    pub all_on_an_invoice = "Everything is on an invoice already", "Alles steht schon auf einer Rechnung";
    /// How a refusal is mended.
    pub goes_on_the_next_one = "what is added later goes on the next one", "was später dazukommt, steht auf der nächsten";
    /// Refused.
    pub no_such_invoice = "There is no such invoice for that payer", "Für diesen Zahler gibt es die Rechnung nicht";
    /// How a refusal is mended.
    pub look_at_the_invoices = "look at the order's invoices", "die Rechnungen des Auftrags ansehen";
    /// Refused.
    pub sum_beyond_measure = "The sum is too large to be reckoned", "Die Summe ist zu groß";
    /// How a refusal is mended.
    pub look_at_prices_again = "look at quantities, prices and taxes again", "Mengen, Preise und Steuern noch einmal ansehen";
    /// Refused.
    pub within_what_was_agreed = "The sum is within what was agreed", "Die Summe liegt im vereinbarten Rahmen";
    /// How a refusal is mended.
    pub nothing_to_write_down = "there is nothing to write down", "es gibt nichts nachzulassen";
    /// Refused.
    pub no_such_reason = "No such reason stands at this gate now", "Dieser Grund steht hier jetzt nicht";
    /// How a refusal is mended.
    pub look_again = "look again", "noch einmal ansehen";
    /// Refused.
    pub can_not_be_waived = "This can't be waived", "Das darf niemand trotzdem freigeben";
    /// How a refusal is mended.
    pub put_it_right = "it has to be put right", "es muss in Ordnung gebracht werden";
    /// Refused.
    pub no_such_waiver = "There is no such waiver to take back", "Es gibt keine solche Freigabe";
    /// Refused: the order can't be voided.
    pub something_still_stands = "Something still stands on this order", "Auf diesem Auftrag ist noch etwas offen";
    /// How a refusal is mended.
    pub bring_each_to_its_end = "bring each to its end first", "erst alles abschließen";
    /// Refused: it leaves collected apart, and nobody counted the boxes.
    pub count_the_boxes = "Count the boxes that go with it", "Die Kisten zählen, die mitgehen";
    /// Refused: it leaves collected apart, and nobody signed.
    pub have_the_list_signed = "Have the open list signed", "Die offene Liste unterschreiben lassen";
}
