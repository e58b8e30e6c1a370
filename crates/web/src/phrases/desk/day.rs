//! The day: what stands where, whom to ring, what was promised, what goes home; finding.

use phrases::phrases;

phrases! {
    /// Press on the day's page, title and heading of taking in.
    pub check_in_a_vehicle = "Check in a vehicle", "Fahrzeug annehmen";
    /// The letter that opens it at the desk: one of its letters, not in use in the bar above.
    pub check_in_key = "i", "f";
    /// The way to the calls, with their title and heading.
    pub calls_and_waits = "Calls and waits", "Anrufe, Aus\u{ad}stehendes";
    /// The way to finding; its title, heading and press.
    pub find = "Find", "Suchen";
    /// The way to the shop's own pages.
    pub the_shop = "The shop", "Werkstatt";
    /// Beside the way to a sale.
    pub over_the_counter = "over the counter", "über die Theke";
    /// The way to what can be worked out.
    pub work_it_out_bench = "Work it out", "Rechnen";
    /// Beside it: what.
    pub what_is_worked_out = "threads, coolant, fluids, belt, road test",
        "Gewinde, Kühlmittel, Flüssigkeiten, Riemen, Probefahrt";
    /// How a vehicle stands: it is not here yet.
    pub is_to_come = "To come", "Kommt noch";
    /// How a vehicle stands: somebody has to be asked.
    pub waits_for_a_yes = "Waits for a yes", "Wartet auf Zustimmung";
    /// How a vehicle stands.
    pub waits_for_a_part = "Waits for a part", "Wartet auf ein Teil";
    /// How a vehicle stands: something is sent out.
    pub machine_work = "Machine work", "Fremdarbeit";
    /// How a vehicle stands: something went wrong and is not mended.
    pub snag = "Snag", "Problem";
    /// How a vehicle stands: it left, and something came in after.
    pub left_look = "Left, look", "Weg, nachsehen";
    /// How a vehicle stands: it can go.
    pub ready = "Ready", "Fertig";
    /// How a vehicle stands: a check or a proof is missing.
    pub to_be_tested = "To be tested", "Zu prüfen";
    /// How a vehicle stands: things are off.
    pub at_work = "At work", "In Arbeit";
    /// A stall with no vehicle.
    pub free = "Free", "Frei";
    /// What somebody was at when they stopped.
    pub stopped_here_at(what) = "Stopped here: {what}", "Hier unterbrochen: {what}";
    /// How sure the promised time is.
    pub time_is(sure) = "The time is {sure}", "Die Zeit: {sure}";
    /// Behind how much is open.
    pub cant_roll = ", can't roll", ", rollt nicht";
    /// Heading over calls to make.
    pub ring_now = "Ring now", "Jetzt anrufen";
    /// The letter that opens the calls: one of that heading, not in use in the bar above.
    pub ring_key = "r", "j";
    /// Where there are none.
    pub no_calls = "No calls to make.", "Keine Anrufe offen.";
    /// Heading over the promises.
    pub promises = "Promises", "Zusagen";
    /// Where no promise is in the plan.
    pub no_time_promised = "No time is promised for what is planned.",
        "Für das Geplante ist keine Zeit zugesagt.";
    /// How many orders are in the plan without a promise.
    pub planned_unpromised(n) =
        ["{n} order is planned with no time promised.", "{n} orders are planned with no time promised."],
        ["{n} Auftrag ist ohne zugesagte Zeit geplant.", "{n} Aufträge sind ohne zugesagte Zeit geplant."];
    /// Beside a promise that slips: what can be said.
    pub say_hour(hour) = "say {hour}", "{hour} sagen";
    /// An order that the plan does not get done.
    pub beyond_the_days = "Not done on any of the days ahead", "An keinem der nächsten Tage fertig";
    /// Before what to move so that a promise is kept, with how often it then is.
    pub to_keep_it(then) = "To keep it ({then}):", "Damit es klappt ({then}):";
    /// What that does to other promises.
    pub it_costs(what) = "It costs {what}", "Das kostet {what}";
    /// Nothing helps a promise.
    pub nothing_keeps_it = "Nothing on the floor keeps it.", "In der Halle hilft da nichts.";
    /// Heading over orders that are left out of the plan.
    pub not_planned = "Not planned", "Nicht geplant";
    /// Heading over what is on its way or away.
    pub waiting_on = "Waiting on", "Wir warten auf";
    /// Where nothing is.
    pub nothing_on_its_way = "Nothing is on its way or away.",
        "Nichts ist unterwegs oder außer Haus.";
    /// Heading over vehicles that are booked; of a day without any.
    pub to_come = "To come", "Kommen noch";
    /// Where nothing is.
    pub nothing_booked = "Nothing is booked.", "Nichts ist angemeldet.";
    /// Under a vehicle that was to come.
    pub has_not_come = "Has not come", "Ist nicht gekommen";
    /// Why to ring: a vehicle was to come and is not here.
    pub call_not_come = "not here", "nicht da";
    /// The way to where it is told that it came, or when it comes.
    pub it_came_or_comes = "It came, or another time", "Ist da, oder andere Zeit";
    /// Heading over what whoever looks is to do.
    pub your_day = "Your day", "Heute dran";
    /// Behind work that is to be done: until when.
    pub until(time) = "until {time}", "bis {time}";
    /// Behind work that goes on: until when.
    pub at_it_until(time) = "now, until {time}", "jetzt, bis {time}";
    /// Where a vehicle has to go, and where it stands.
    pub bring_it(to, from) = "Into {to} (stands: {from})", "Auf {to} (steht: {from})";
    /// The way to the week, its title and heading.
    pub the_week = "The week", "Die Woche";
    /// Beside a day: hours of work that can be taken in.
    pub room_for(hours) = "room for {hours} h of work", "noch {hours} h Arbeit frei";
    /// The same where people have more time than stalls.
    pub room_by_stalls(hours) = "room for {hours} h, then the stalls are full", "noch {hours} h frei, dann sind die Plätze voll";
    /// Beside a day.
    pub full = "full", "voll";
    /// Beside a day on which people have time.
    pub no_stall_free = "no stall free", "kein Platz frei";
    /// Beside a day.
    pub closed = "closed", "zu";
    /// How many promises end on a day.
    pub promised_that_day(n) = ["{n} vehicle is promised for it.", "{n} vehicles are promised for it."],
        ["{n} Fahrzeug ist dafür zugesagt.", "{n} Fahrzeuge sind dafür zugesagt."];
    /// Under the drawing of the week.
    pub room_is_honest = "Room: what is left where work takes as long as it does 8 times in 10.",
        "Frei: was bleibt, wenn die Arbeit so lange dauert wie in 8 von 10 Fällen.";
    /// Under how often bookings came: that the room does not count on any staying away.
    pub room_takes_all_as_coming = "The room takes every booking as coming: who stays away is known only on the day, and when all come there has to be room for all.",
        "Beim Freien zählt jede Buchung als gekommen: Wer wegbleibt, weiß man erst am Tag, und wenn alle kommen, muss für alle Platz sein.";
    /// Under that: orders whose work nobody knows.
    pub not_in_the_room(n) = ["{n} order is not planned: its work is not in this.", "{n} orders are not planned: their work is not in this."],
        ["{n} Auftrag ist nicht geplant: seine Arbeit fehlt hier.", "{n} Aufträge sind nicht geplant: ihre Arbeit fehlt hier."];

    /// The way to the question, its title and heading.
    pub fit_one_in = "Fit one in?", "Geht noch eins?";
    /// Beside the empty question.
    pub fit_in_hint = "What does one more do to the others? Nothing is written down.", "Was heißt eins mehr für die anderen? Es wird nichts gespeichert.";
    /// Label: how long the work takes.
    pub minutes_of_work = "Minutes of work", "Minuten Arbeit";
    /// Its hint.
    pub one_or_three = "one number, or least, likely, most: 60, 90, 150", "eine Zahl, oder mindestens, wahrscheinlich, höchstens: 60, 90, 150";
    /// Label: when the vehicle is brought.
    pub it_comes = "It comes", "Es kommt";
    /// Its hint.
    pub empty_at_the_door = "empty: it is at the door", "leer: es steht vor der Tür";
    /// Label: by when they want it.
    pub wanted_by = "They want it by", "Gewünscht bis";
    /// Its hint.
    pub empty_no_hurry = "empty: no hurry", "leer: keine Eile";
    /// Press: ask it.
    pub could_we = "Could we?", "Geht das?";
    /// What is wrong with minutes.
    pub minutes_are_numbers = "Write minutes as one number, or as least, likely and most: 60, 90, 150.", "Minuten als eine Zahl schreiben, oder mindestens, wahrscheinlich, höchstens: 60, 90, 150.";
    /// What is wrong with a time.
    pub that_is_no_time = "That is no day and time.", "Das ist kein Tag mit Uhrzeit.";
    /// The answer.
    pub yes_nobody_waits = "Yes: no promise suffers.", "Ja: keine Zusage ist gefährdet.";
    /// The answer.
    pub yes_others_pay = "Yes, at the cost of others.", "Ja, auf Kosten von anderen.";
    /// The answer.
    pub hardly_in_time = "Hardly by then.", "Bis dahin kaum.";
    /// Beside the time to say.
    pub ready_eight_in_ten = "ready by then 8 times in 10", "bis dahin in 8 von 10 Fällen fertig";
    /// Under it: how often it is ready when they want it.
    pub as_wanted(kept) = "as wanted: {kept}", "wie gewünscht: {kept}";
    /// Heading.
    pub what_it_does_to_others = "What it does to the others", "Was es für die anderen heißt";
    /// Where it does nothing.
    pub nobody_feels_it = "Nobody feels it.", "Für die anderen ändert sich nichts.";
    /// How often a promise is kept then, and as things are.
    pub kept_now_instead(now, before) = "kept {now} times in 10 instead of {before}", "in {now} von 10 Fällen gehalten statt in {before}";
    /// By how much an order is ready later.
    pub later_by(time) = "{time} later", "{time} später";
    /// By how much an order is ready earlier.
    pub earlier_by(time) = "{time} earlier", "{time} früher";
    /// A time span.
    pub count_minutes(n) = "{n} min", "{n} min";
    /// A time span.
    pub count_hours(n) = "{n} h", "{n} h";
    /// A time span.
    pub count_days(n) = ["{n} day", "{n} days"], ["{n} Tag", "{n} Tage"];
    /// The way to checking it in for the time it comes.
    pub book_it = "Book it", "Anmelden";

    /// Heading over what is promised for today.
    pub goes_home_today = "Goes home today", "Geht heute raus";
    /// Beside that heading: over the amounts.
    pub to_pay = "to pay", "zu zahlen";
    /// Where nothing is.
    pub nothing_promised_today = "Nothing is promised for today.", "Für heute ist nichts zugesagt.";
    /// Behind a vehicle that can go.
    pub is_ready = " ready", " fertig";
    /// In the place of an amount.
    pub not_priced = "not priced", "ohne Preis";

    /// How much may still be charged by the rules of the place.
    pub left_under_limit(amount) = "{amount} left under the limit", "noch {amount} bis zur Grenze";
    /// When somebody was rung and did not answer.
    pub no_answer_at(when) = "No answer {when}", "Keine Antwort {when}";
    /// Press: they did not answer.
    pub no_answer = "No answer", "Keine Antwort";
    /// Press: they agree.
    pub yes_up_to(amount) = "Yes, up to {amount}", "Ja, bis {amount}";
    /// The way to the page on which their answer is written down.
    pub they_answered = "They answered", "Antwort ist da";
    /// Press: they know.
    pub told_them = "Told them", "Bescheid gesagt";
    /// Press: the vehicle comes for what is due.
    pub it_comes_in = "It comes in", "Kommt her";
    /// Press: the vehicle came back after a repair.
    pub it_came_back = "It came back", "Ist wieder da";
    /// Press: nothing is wrong after a repair.
    pub it_is_fine = "It is fine", "Alles gut";
    /// What is kept of an answer on the telephone: what the money is for.
    pub parts_and_labour_are(things) = "Parts and labour: {things}", "Teile und Arbeit: {things}";
    /// Why to ring: somebody has to be asked.
    pub call_ask = "ask", "fragen";
    /// Why to ring: a promise slips.
    pub call_promise = "promise", "Zusage";
    /// Why to ring: something on the vehicle is due.
    pub call_due = "due", "fällig";
    /// Why to ring: how it is after a repair.
    pub call_follow_up = "ask after it", "nachfragen";
    /// What is waited for: they declined.
    pub call_said_no = "said no", "abgelehnt";
    /// What is waited for.
    pub call_waits = "waits", "wartet";
    /// What is waited for: an old part that goes back.
    pub call_core = "core", "Altteil";

    /// Label: what can be looked for.
    pub find_by = "Number, plate, name, telephone, VIN, complaint, part or date",
        "Nummer, Kennzeichen, Name, Telefon, FIN, Beanstandung, Teil oder Datum";
    /// The way to the list.
    pub all_customers = "All customers", "Alle Kunden";
    /// The way to the list.
    pub all_vehicles = "All vehicles", "Alle Fahrzeuge";
    /// How many orders were found.
    pub orders_count(n) = ["{n} order", "{n} orders"], ["{n} Auftrag", "{n} Aufträge"];
    /// Behind it.
    pub and_older = ", and older ones", ", und ältere";
    /// Press: orders before these.
    pub older_ones = "Older ones", "Ältere";
    /// The way from a list to finding.
    pub find_by_words = "Find by words", "Mit Worten suchen";
    /// An empty list.
    pub none = "None.", "Keine.";
}
