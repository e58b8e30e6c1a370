//! One order: what is so, its parts, when it is ready, what was declined, how it leaves.

use phrases::phrases;

phrases! {
    /// Alarm: what came in after the vehicle had left.
    pub left_and_after(what) = "Left, and this came in after: {what}",
        "Weg, und danach kam noch: {what}";
    /// On an order that was opened by mistake.
    pub voided_by_mistake = "Voided: opened by mistake", "Storniert: aus Versehen angelegt";
    /// What the list of the vehicles beside an order is called aloud.
    pub on_the_floor = "On the floor", "In der Halle";
    /// Where nobody said where a vehicle stands.
    pub no_place_told = "no place told", "kein Platz genannt";
    /// Before the hour for which it was promised.
    pub promised_before = "promised ", "zugesagt ";
    /// Above what somebody was at when they stopped.
    pub stopped_here = "Stopped here", "Hier unterbrochen";
    /// What the way in and out is counted in, where nothing was timed.
    pub stages = "stages", "Schritte";
    /// Beside the number of things that are off.
    pub still_off = "still off", "noch ab";
    /// How many things are inside the vehicle that do not belong there, and how much work is owed.
    pub inside_and_owed(n, debts) =
        ["{n} thing inside, {debts} owed", "{n} things inside, {debts} owed"],
        ["{n} Teil drin, {debts} noch zu tun", "{n} Teile drin, {debts} noch zu tun"];
    /// Heading over parts that were bought and that nobody has put on.
    pub new_part_not_on = "New part, not on yet", "Neues Teil, noch nicht dran";
    /// Press: something was replaced with a new one.
    pub renewed(what) = "{what} renewed", "{what} erneuert";
    /// Beside that press: what it says.
    pub old_off_new_on = "the old one off, the new one on", "altes ab, neues dran";
    /// No order is called so.
    pub no_such_order = "there is no such order", "diesen Auftrag gibt es nicht";
    /// How many things a newer table of the trade reads otherwise.
    pub read_otherwise(n) =
        ["{n} thing is read otherwise by now", "{n} things are read otherwise by now"],
        ["{n} Teil wird inzwischen anders gelesen", "{n} Teile werden inzwischen anders gelesen"];
    /// Press: take the newer reading.
    pub read_them_so = "Read them so", "So lesen";
    /// Beside that press: what comes of it.
    pub owed_follows = "what is owed follows", "was zu tun ist, folgt daraus";
    /// Heading over what was said, found and done.
    pub complaint_cause_correction = "Complaint, cause, correction",
        "Beanstandung, Ursache, Abhilfe";
    /// What unfolds the field of the cause that stands already.
    pub edit_cause = "Edit the cause", "Ursache ändern";
    /// What unfolds the field of the cause.
    pub write_cause = "Write the cause", "Ursache aufschreiben";
    /// What unfolds the field of what was done, which stands already.
    pub edit_correction = "Edit the correction", "Abhilfe ändern";
    /// What unfolds the field of what was done.
    pub write_correction = "Write the correction", "Abhilfe aufschreiben";
    /// Heading over the ways to an order's pages, on the phone.
    pub this_order = "This order", "Dieser Auftrag";
    /// The way to what is still to do.
    pub owed_checks_proof = "Owed, checks, proof", "Noch zu tun, Prüfungen, Nachweise";
    /// How much work is owed.
    pub owed_count(n) = "{n} owed", "{n} noch zu tun";
    /// Beside the way to the measures: which.
    pub which_measures = "pads, discs, tread, battery", "Beläge, Scheiben, Profil, Batterie";
    /// The way to the parts, and their heading.
    pub parts_and_machine_work = "Parts and machine work", "Teile und Fremdarbeit";
    /// The way to the desk's page of an order.
    pub desk_price_consent_money = "Desk: price, consent, money", "Büro: Preis, Zustimmung, Geld";
    /// How long the story is.
    pub lines_count(n) = ["{n} line", "{n} lines"], ["{n} Eintrag", "{n} Einträge"];
    /// What unfolds where the vehicle stands.
    pub where_who_when = "Where it stands, who, when", "Wo es steht, wer, wann";
    /// Where nobody said where it stands.
    pub not_told = "not told", "nicht angegeben";
    /// Press: the vehicle stands in the yard.
    pub yard = "Yard", "Hof";
    /// Press: who is signed in works on it.
    pub i_work_on_it = "I work on it", "Ich arbeite daran";
    /// A stall is taken by another vehicle.
    pub stands_there(stall, vehicle) = "{stall}: {vehicle} stands there",
        "{stall}: {vehicle} steht dort";
    /// Press: into a stall that is taken.
    pub all_the_same(stall) = "{stall} all the same", "Trotzdem {stall}";
    /// Beside that press: what comes of it.
    pub two_in_one_stall = "two in one stall", "zwei auf einem Platz";
    /// Beside the way to when it is ready.
    pub what_to_say = "what to say, work left", "was zu sagen ist, restliche Arbeit";
    /// Press: go on where somebody stopped.
    pub go_on_here = "Go on here", "Hier weiter\u{ad}machen";
    /// Press: see what the vehicle may do now.
    pub cleared_to = "Cleared to …?", "Freigabe für …?";
    /// Beside that press.
    pub everything_is_back = "everything is back", "alles ist wieder dran";
    /// Press: make a plan.
    pub plan_it = "Plan it", "Planen";
    /// Beside that press.
    pub what_comes_off = "what comes off, and how", "was ab muss und wie";
    /// Press: say that something came off, where nothing more is to do.
    pub something_off = "Something off", "Etwas ausbauen";
    /// Press: say that something more came off.
    pub off_press = "Off", "Ausbauen";
    /// Beside that press.
    pub off_more = "more", "mehr";
    /// Press: say that something was put back.
    pub put_back = "Put back", "Einbauen";
    /// Heading of the story.
    pub what_happened = "What happened", "Was geschehen ist";
    /// The way to the newest end of a long story.
    pub to_the_newest = "To the newest", "Zum Neuesten";
    /// The way to what happened before.
    pub earlier = "Earlier", "Früher";
    /// Behind a line of the story that was undone.
    pub taken_back = " taken back", " zurückgenommen";
    /// Why a decision has no press that undoes it.
    pub decision_stays = "A decision is not taken back: it is answered by another one.",
        "Eine Entscheidung wird nicht zurückgenommen: eine neue tritt an ihre Stelle.";
    /// Press that undoes a line of the story.
    pub take_this_back = "Take this back", "Zurücknehmen";
    /// Beside that press.
    pub as_if_not_been = "as if it had not been", "als wäre es nie gewesen";

    /// Heading over who agreed to what.
    pub approval = "Approval", "Zustimmung";
    /// Heading over the money and the keys.
    pub money_and_keys = "Money and keys", "Geld und Schlüssel";
    /// Heading over what is still to do.
    pub still_to_do = "Still to do, proof", "Noch zu tun, Nachweise";
    /// Heading over the papers; how a vehicle stands: a paper, money or the keys are missing.
    pub papers = "Papers", "Papiere";
    /// The letter that opens the price: one of the letters of that heading, in no other heading's
    /// use and not in that of the bar above.
    pub price_key = "p", "p";
    /// The letter that opens the approval: chosen likewise.
    pub approval_key = "a", "z";
    /// The letter that opens the money and the keys: chosen likewise.
    pub money_key = "y", "g";
    /// The letter that opens the parts: chosen likewise.
    pub parts_key = "t", "l";
    /// The letter that opens what is still to do: chosen likewise.
    pub still_to_do_key = "f", "u";
    /// The letter that opens the papers: chosen likewise.
    pub papers_key = "e", "e";
    /// Beside the heading of the keys: the shop has them.
    pub keys_here = "keys here", "Schlüssel hier";
    /// Beside the heading of the keys: the shop has none.
    pub no_keys_here = "no keys here", "kein Schlüssel hier";
    /// How far the price is over what was agreed.
    pub over_agreed(amount) = "{amount} over what was agreed", "{amount} über dem Vereinbarten";
    /// How far the price is under what was agreed.
    pub under_agreed(amount) = "{amount} under what was agreed", "{amount} unter dem Vereinbarten";
    /// Beside a price that nobody agreed to.
    pub nothing_agreed_yet = "nothing agreed yet", "noch nichts vereinbart";
    /// How many of the parts have come.
    pub parts_here(here, all) = "{here} of {all} here", "{here} von {all} da";
    /// How much is still to do.
    pub things_count(n) = ["{n} thing", "{n} things"], ["{n} Punkt", "{n} Punkte"];
    /// Of a part: it has come.
    pub here = "here", "da";
    /// Where no part is needed, beside the job.
    pub no_parts_needed = "None needed so far.", "Bisher keine nötig.";
    /// What is to be proved before it leaves.
    pub proof_needed(proof) = "{proof} needed", "{proof} fehlt";
    /// A proof: driven on the road.
    pub road_test = "road test", "Probefahrt";
    /// A proof: the cooling put under pressure.
    pub leak_test = "leak test", "Dichtprüfung";
    /// A proof: the brakes tested.
    pub brake_test = "brake test", "Bremsprüfung";
    /// A proof: looked for fuel that leaks under pressure.
    pub fuel_leak_look = "fuel leak look", "Sicht\u{ad}prüfung auf Kraft\u{ad}stoff\u{ad}austritt";
    /// A proof: the lamp of the airbags goes out.
    pub restraint_lamp = "restraint lamp", "Kontrolle der Airbagleuchte";
    /// A proof: the coolant's mixture measured.
    pub coolant_mix = "coolant mix", "Prüfung der Kühl\u{ad}mittel\u{ad}mischung";
    /// A proof of another sort.
    pub other_proof = "other", "weiterer Nachweis";

    /// Where no part is needed.
    pub none_needed = "None needed so far", "Bisher keine nötig";
    /// Over the parts: what is easily forgotten.
    pub compare_parts =
        "Compare each new part with the old one before the vehicle can no longer roll.",
        "Jedes neue Teil mit dem alten vergleichen, solange das Fahrzeug noch rollt.";
    /// Heading over work that others do.
    pub sent_out = "Sent out", "Außer Haus";
    /// Where nothing is sent out.
    pub nothing_away = "Nothing is away", "Nichts ist außer Haus";
    /// What unfolds the form for a part.
    pub part_is_needed = "A part is needed", "Ein Teil wird gebraucht";
    /// Label: the maker's number of the part.
    pub its_number = "Its number", "Teilenummer";
    /// Label: what one of them costs the shop.
    pub costs_us_each = "Costs us, each", "Kostet uns, je Stück";
    /// Label: what the customer pays for one.
    pub sold_for_each = "Sold for, each", "Verkauft für, je Stück";
    /// Label: what is charged for the old part until it goes back.
    pub core_charge_each_label = "Core charge, each", "Altteilpfand, je Stück";
    /// Its hint.
    pub given_back_for_old = "given back for the old one", "gibt es für das alte zurück";
    /// Legend over the complaints: for which one the part is.
    pub for_which = "For", "Für";
    /// To tick: an old part comes off.
    pub old_comes_off = "An old one comes off for it", "Ein altes kommt dafür ab";
    /// Press: the part is needed.
    pub it_is_needed = "It is needed", "Wird gebraucht";
    /// Behind what is true of a part: where the old one went.
    pub old_one_is(fate) = " · old one {fate}", " · altes {fate}";
    /// When a part is to come.
    pub due_on(day) = "due {day}", "kommt {day}";
    /// What is charged for each old part.
    pub core_charge_each(amount) = "core charge {amount} each", "Altteilpfand {amount} je Stück";
    /// What was done with parts, behind a count.
    pub step_ordered = "ordered", "bestellt";
    /// What was done with parts, behind a count: they came.
    pub step_received = "received", "geliefert";
    /// What was done with parts, behind a count: held against the old; beside the press for it.
    pub step_compared = "compared", "verglichen";
    /// What was done with parts, behind a count: put on.
    pub step_fitted = "fitted", "eingebaut";
    /// What was done with parts, behind a count: sent back.
    pub step_returned = "returned", "zurückgegeben";
    /// What was done with parts, behind a count: put into stock.
    pub step_stocked = "stocked", "ins Lager";
    /// What was done with parts, behind a count: not wanted any more.
    pub step_cancelled = "cancelled", "abbestellt";
    /// Label: how many of the parts the press is about.
    pub how_many_of_them = "How many of them", "Wie viele davon";
    /// What unfolds a new order of the same part.
    pub another_day_maker = "Another day, another maker", "Anderer Tag, anderer Hersteller";
    /// What unfolds the ordering of a part.
    pub order_it = "Order it", "Bestellen";
    /// Label: who sells it.
    pub from_whom = "From whom", "Bei wem";
    /// Label: on which day a part is to come.
    pub due_day = "Due", "Kommt am";
    /// Its hint.
    pub day_promised = "the day it was promised for", "der zugesagte Tag";
    /// Press: a part is ordered.
    pub ordered = "Ordered", "Bestellt";
    /// Press: a part has come.
    pub received = "Received", "Geliefert";
    /// Press: the new part is like the old one.
    pub same_as_old = "Same as the old", "Wie das alte";
    /// Press: the part is on the vehicle.
    pub fitted = "Fitted", "Eingebaut";
    /// Press: the part went back to who sold it.
    pub returned = "Returned", "Zurück\u{ad}gegeben";
    /// Press: the part stays with the shop.
    pub into_stock = "Into stock", "Ins Lager";
    /// Press: the part is not wanted any more.
    pub not_needed_after_all = "Not needed after all", "Doch nicht nötig";
    /// What unfolds the form for a part that is not like the old one.
    pub differs_from_old = "It differs from the old one", "Anders als das alte";
    /// What stands in its field to begin with, to be written on.
    pub new_part_differs(part) = "new {part} differs: ", "Neuteil {part} ist anders: ";
    /// Press of that form.
    pub it_differs = "It differs", "Ist anders";
    /// Beside that press: what comes of it.
    pub a_snag_for_desk = "a snag, for the desk to see", "ein Problem, das Büro sieht es";
    /// Press: where the old part went.
    pub old_kept = "Old one: kept", "Altes: aufgehoben";
    /// Beside that press.
    pub for_the_customer = "for the customer", "für den Kunden";
    /// Press: where the old part went.
    pub old_given = "Old one: given", "Altes: mitgegeben";
    /// Beside that press: the customer has it.
    pub they_have_it = "they have it", "der Kunde hat es";
    /// Press: where the old part went: back for its core charge.
    pub old_core = "Old one: core", "Altes: gegen Pfand";
    /// Beside that press.
    pub goes_back = "goes back", "geht zurück";
    /// Press: where the old part went.
    pub old_scrap = "Old one: scrap", "Altes: entsorgt";
    /// Where what was sent out is, and since when.
    pub sublet_at(to, since) = "at {to}, since {since}", "bei {to}, seit {since}";
    /// Behind it: when it is to be back.
    pub sublet_due(day) = ", due {day}", ", zurück {day}";
    /// Of what was sent out: it is here again.
    pub is_back = "back", "zurück";
    /// Of what was sent out: it is not here yet.
    pub is_away = "away", "außer Haus";
    /// Label: the state in which it came back.
    pub how_it_came_back = "How it came back", "Wie es zurückkam";
    /// Its hint.
    pub counted_as_agreed = "counted, and as agreed?", "gezählt und wie vereinbart?";
    /// Press: what was sent out is here again.
    pub it_is_back = "It is back", "Ist zurück";
    /// What unfolds the form for work that others do.
    pub send_out = "Send something out", "Etwas außer Haus geben";
    /// Label: the work.
    pub what_is_to_be_done = "What is to be done", "Was zu tun ist";
    /// Label: the day on which it is to be back.
    pub due_back = "Due back", "Zurück am";
    /// Label: what it costs the shop.
    pub costs_us = "Costs us", "Kostet uns";
    /// Legend over the things that are off.
    pub what_goes_with_it = "What goes with it", "Was mitgeht";
    /// Press: it was sent out.
    pub it_is_away = "It is away", "Ist außer Haus";

    /// Title of the page on when an order is ready.
    pub when_it_is_ready = "When it is ready", "Wann es fertig ist";
    /// Beside where it stands: when it comes.
    pub comes_at(time) = "comes {time}", "kommt {time}";
    /// Under that.
    pub here_once_placed = "It is here as soon as somebody says where it stands.", "Es ist da, sobald jemand sagt, wo es steht.";
    /// Label: when it comes, if it is not here.
    pub not_here_comes = "Not here: it comes", "Nicht da: es kommt";
    /// Press.
    pub it_comes_then = "It comes then", "Kommt dann";
    /// Beside the time for which it was promised.
    pub was_promised = "was promised", "war zugesagt";
    /// Press: promise this time.
    pub say_time(time) = "Say {time}", "{time} zusagen";
    /// Heading over what is planned of an order.
    pub how_planned = "How it is planned", "Wie es geplant ist";
    /// Before what it waits for.
    pub waits_for = "Waits for ", "Wartet auf ";
    /// From when to when.
    pub from_to(from, to) = "{from} to {to}", "{from} bis {to}";
    /// Why an order is not planned.
    pub not_planned_why(why) = "Not planned: {why}", "Nicht geplant: {why}";
    /// Where an order has nothing left to plan.
    pub nothing_left_to_plan = "Nothing is left to be planned.", "Nichts mehr zu planen.";
    /// Choice of who can do the work that is left.
    pub anybody = "anybody", "alle";
    /// Heading over the work that is left.
    pub work_left = "Work left", "Restliche Arbeit";
    /// Label: how many minutes it likely takes.
    pub minutes_likely = "Minutes, likely", "Minuten, wahrscheinlich";
    /// Its hint.
    pub counts_down = "what is worked from now on counts down",
        "was ab jetzt gearbeitet wird, geht davon ab";
    /// Label: the fewest minutes.
    pub at_least = "At least", "Mindestens";
    /// Its hint.
    pub leave_both_empty = "leave both empty if you can't say",
        "beide leer lassen, wenn es niemand sagen kann";
    /// Label: the most minutes.
    pub at_most = "At most", "Höchstens";
    /// Legend over the systems: which one somebody has to know.
    pub who_can_do_it = "Who can do it", "Wer es kann";
    /// Legend over the stalls that it needs.
    pub where_done = "Where", "Wo";
    /// Choice of a stall.
    pub any_stall = "any stall", "jeder Platz";
    /// Choice of a stall.
    pub on_a_lift = "on a lift", "auf einer Bühne";
    /// Choice of a stall: no lift.
    pub flat = "flat", "ohne Bühne";
    /// Choice of a stall: none.
    pub no_stall = "no stall", "kein Platz";
    /// Legend: how many hold and hand.
    pub who_helps = "Somebody helps", "Jemand hilft";
    /// Choice of how many.
    pub nobody_helps = "nobody", "niemand";
    /// Choice of how many.
    pub one_helps = "one", "eine Person";
    /// Choice of how many.
    pub two_help = "two", "zwei";
    /// Choice of how many.
    pub three_help = "three", "drei";
    /// Label: how long the drive at the end is.
    pub road_test_minutes = "Road test, minutes", "Probefahrt, Minuten";
    /// Its hint.
    pub empty_if_none = "empty if there is none", "leer, wenn es keine gibt";
    /// Under how it is planned.
    pub weight_not_checked = "Weight not told: not checked against the lift", "Gewicht unbekannt: nicht mit der Bühne verglichen";
    /// Under how it is planned.
    pub height_not_checked = "Height not told: not checked against the roof", "Höhe unbekannt: nicht mit dem Dach verglichen";
    /// Heading of the question.
    pub button_up_or_keep = "Button it up, or keep the stall?", "Zusammen\u{ad}bauen oder Platz behalten?";
    /// Label.
    pub minutes_to_button_up = "Minutes to button it up", "Minuten zum Zusammen\u{ad}bauen";
    /// Label.
    pub minutes_to_open_again = "Minutes to be as far again", "Minuten, um wieder so weit zu sein";
    /// Press: asks it.
    pub what_does_it_do = "What does it do?", "Was bringt das?";
    /// The answer, with the stall.
    pub button_it_up(stall) = "Button it up and roll it out of {stall}: fewer promises break.", "Zusammenbauen und aus {stall} rollen: weniger Zusagen platzen.";
    /// The answer.
    pub keep_it_there = "Keep it where it is: buttoning it up breaks more promises.", "Stehen lassen: Zusammenbauen lässt mehr Zusagen platzen.";
    /// The answer.
    pub keeps_no_promise_more = "No promise hangs on it: it only takes time.", "Keine Zusage hängt daran: es kostet nur Zeit.";
    /// The vehicle that is asked about.
    pub this_one_ready = "This one is ready", "Dieses ist fertig";
    /// A time, and the one before.
    pub instead_of(now, before) = "{now} instead of {before}", "{now} statt {before}";
    /// Heading where the customer has not answered.
    pub waits_for_their_yes = "It waits for a yes", "Wartet auf Zustimmung";
    /// Label: when they will answer.
    pub answer_by = "They will answer by", "Antwort kommt bis";
    /// Press: keep when they will answer.
    pub keep_it = "Keep it", "Speichern";
    /// A system of the vehicle that somebody has to know.
    pub brakes = "brakes", "Bremsen";
    /// A system of the vehicle that somebody has to know.
    pub steering = "steering", "Lenkung";
    /// A system of the vehicle that somebody has to know.
    pub wheels = "wheels", "Räder";
    /// A system of the vehicle that somebody has to know.
    pub suspension = "suspension", "Fahrwerk";
    /// A system of the vehicle that somebody has to know.
    pub fuel = "fuel", "Kraftstoff";
    /// A system of the vehicle that somebody has to know: airbags and belts.
    pub restraints = "restraints", "Rückhaltesysteme";
    /// A system of the vehicle that somebody has to know.
    pub drive_belt = "drive belt", "Riementrieb";
    /// A system of the vehicle that somebody has to know.
    pub high_voltage = "high voltage", "Hochvolt";
    /// A system of the vehicle that somebody has to know.
    pub cooling = "cooling", "Kühlung";
    /// A system of the vehicle that somebody has to know.
    pub oil = "oil", "Öl";
    /// A system of the vehicle that somebody has to know.
    pub engine = "engine", "Motor";
    /// A system of the vehicle that somebody has to know.
    pub transmission = "transmission", "Getriebe";
    /// A system of the vehicle that somebody has to know.
    pub intake = "intake", "Ansaugung";
    /// A system of the vehicle that somebody has to know.
    pub exhaust = "exhaust", "Abgas\u{ad}anlage";
    /// A system of the vehicle that somebody has to know.
    pub battery = "battery", "Batterie";
    /// A system of the vehicle that somebody has to know.
    pub electrical = "electrical", "Elektrik";
    /// A system of the vehicle that somebody has to know.
    pub climate = "climate", "Klima";
    /// A system of the vehicle that somebody has to know.
    pub body = "body", "Karosserie";
    /// A system of the vehicle that somebody has to know: nobody said which.
    pub unknown_system = "unknown", "unbekannt";

    /// Title of the page on what the customer declines.
    pub declined_title = "Declined", "Abgelehnt";
    /// Its heading, and the way to it.
    pub declined_work = "Declined work", "Abgelehnte Arbeit";
    /// Warning over it.
    pub declined_caution =
        "Brakes, steering, wheels, fuel and restraints: the vehicle leaves with them as they are only if it is signed for here. A missing wheel nut or brake bolt never passes. Say plainly what it means for their safety before they sign.",
        "Bremsen, Lenkung, Räder, Kraftstoff und Rückhaltesysteme: so wie sie sind, geht das Fahrzeug nur hinaus, wenn hier dafür unterschrieben ist. Eine fehlende Radmutter oder Bremsschraube geht nie durch. Vor der Unterschrift klar sagen, was es für die Sicherheit heißt.";
    /// Heading over what they declined before.
    pub declined_so_far = "Declined so far", "Bisher abgelehnt";
    /// Behind what was declined and not signed for.
    pub not_signed = " · not signed", " · nicht unterschrieben";
    /// Whose signature it is, behind "Signature of" (German: "Unterschrift von").
    pub customer_who_signed = "the customer", "dem Kunden";
    /// Where there is nothing that could be declined.
    pub nothing_to_decline =
        "There is nothing to decline yet: no price, no snag, nothing taken off.",
        "Noch gibt es nichts abzulehnen: kein Preis, kein Problem, nichts ausgebaut.";
    /// Heading over what can be declined.
    pub what_they_decline = "What they decline", "Was abgelehnt wird";
    /// Where nothing is ticked as the form is sent.
    pub tick_what_they_decline = "Tick what they decline", "Ankreuzen, was abgelehnt wird";
    /// To tick: take the declined work off the price.
    pub off_the_price_as_well = "Take what is ticked off the price as well",
        "Angekreuztes auch aus dem Preis nehmen";
    /// Label: their words.
    pub what_they_say = "What they say, and who says it", "Was gesagt wird und von wem";
    /// Its hint.
    pub decline_hint = "such as: Ines Duarte wants no new shield and knows that it rattles",
        "etwa: Ines Duarte will kein neues Blech und weiß, dass es klappert";
    /// Legend over the sheet to sign on.
    pub their_signature = "Their signature", "Unterschrift des Kunden";
    /// Press: they decline what is ticked.
    pub they_decline_it = "They decline it", "Ablehnung festhalten";

    /// On handing over: nothing is in the way.
    pub nothing_against = "Yes: nothing stands against it", "Ja: nichts spricht dagegen";
    /// On handing over: what is missing is asked with the press.
    pub yes_with_what_is_asked = "Yes, with what is asked here",
        "Ja, mit dem, was hier gefragt wird";
    /// On handing over: how many reasons are in the way.
    pub no_reasons(n) = ["No: {n} reason stands", "No: {n} reasons stand"],
        ["Nein: {n} Grund steht dagegen", "Nein: {n} Gründe stehen dagegen"];
    /// The way to the reasons.
    pub fix_or_waive = "Fix them, or waive one", "Beheben oder trotzdem freigeben";
    /// Heading over the last press of a sale.
    pub done = "Done", "Fertig";
    /// Heading and press: the vehicle leaves on its own wheels.
    pub drives_away = "It drives away", "Fährt weg";
    /// Hint of the odometer: what it read as it came.
    pub on_the_way_in(reading) = "on the way in {reading}", "bei Annahme {reading}";
    /// Legend: in which way the order ends.
    pub it_ends = "It ends", "Ausgang";
    /// How an order ends.
    pub ends_repaired = "repaired", "repariert";
    /// How an order ends: the complaint did not show.
    pub ends_not_reproduced = "not reproduced", "nicht nachstell\u{ad}bar";
    /// How an order ends: they want no repair, it is together again.
    pub ends_declined = "declined, put back", "abgelehnt, wieder zusammen\u{ad}gebaut";
    /// What unfolds a sheet to sign on.
    pub have_them_sign = "Have them sign for it", "Unterschreiben lassen";
    /// Legend over that sheet: who signs has the vehicle.
    pub received_signed = "Received", "Erhalten";
    /// Press that ends a sale over the counter.
    pub sold_done = "Sold, done", "Verkauft, fertig";
    /// Press: keys and vehicle leave together.
    pub keys_given_drives_away = "Keys given, it drives away", "Schlüssel übergeben, fährt weg";
    /// What unfolds further reasons.
    pub and_more(n) = "And {n} more", "Und {n} weitere";
    /// What unfolds the form for a vehicle that is collected in pieces, and its press.
    pub collected_dismantled = "Collected dismantled", "Zerlegt abgeholt";
    /// What that means.
    pub not_put_together =
        "Not put back together. What is open goes with it on paper, the boxes are counted, and it is signed for. Price, payment and keys are settled as always.",
        "Nicht zusammengebaut. Was offen ist, geht auf Papier mit, die Kisten werden gezählt, und es wird unterschrieben. Preis, Zahlung und Schlüssel werden wie immer erledigt.";
    /// Warning before they sign for it.
    pub must_not_be_driven =
        "It must not be driven or started. Say so, and how it is to be moved, before they sign.",
        "Es darf weder gefahren noch gestartet werden. Vor der Unterschrift das sagen, und wie es zu transportieren ist.";
    /// Label: how many boxes leave with it.
    pub boxes = "Boxes that go with it", "Kisten, die mitgehen";
    /// Its hint.
    pub boxes_hint = "counted, 0 if none", "gezählt, 0, wenn keine";
    /// Label: who signs.
    pub signed_by = "Signed by", "Unterschrieben von";
    /// Its hint.
    pub their_name = "their name", "Name";
    /// Beside the press: all that is listed goes with it.
    pub as_listed = "as listed", "wie aufgeführt";
    /// The same, where the keys are still with us and go along.
    pub as_listed_with_keys = "as listed, with its keys", "wie aufgeführt, mit den Schlüsseln";
    /// How many boxes left with it, behind who handed it over.
    pub boxes_with_it(n) = [". {n} box with it", ". {n} boxes with it"],
        [". {n} Kiste dabei", ". {n} Kisten dabei"];
    /// The way to an invoice of an order that left, for whom it is.
    pub print_invoice_for(whom) = "Print the invoice for {whom}", "Rechnung für {whom} drucken";
    /// Over the form that takes it in again.
    pub if_it_is_back = "If it is back on this order, take it in again.",
        "Ist es wegen dieses Auftrags zurück, wieder annehmen.";
    /// Label of that form.
    pub why_it_is_back = "Why it is back", "Warum es zurück ist";

    /// Heading over what undoes an order.
    pub opened_by_mistake = "Opened by mistake?", "Aus Versehen angelegt?";
    /// Beside the press that gives the keys back.
    pub still_have_keys = "we still have them", "sie sind noch hier";
    /// Press: the order is no order any more.
    pub void_this_order = "Void this order", "Auftrag stornieren";
    /// Beside that press.
    pub only_while_nothing_done = "only while nothing was done on it",
        "nur, solange nichts daran gemacht ist";
}
