//! What happened in an order, line by line.

use phrases::phrases;

phrases! {
    /// Two things that were told apart are one.
    pub one_thing(one, other) = "{one} and {other} are one thing", "{one} und {other} sind dasselbe Teil";
    /// The pieces of a thing were counted again.
    pub counted_again(what, count) = "{what}: counted again, {count}", "{what}: neu gezählt, {count}";
    /// What a thing tightens to.
    pub torque_told(what, torque) = "{what}: torque {torque}", "{what}: Drehmoment {torque}";
    /// A thing has another name.
    pub called_now(name) = "Called now: {name}", "Heißt jetzt: {name}";
    /// Found so at the walk-round.
    pub found(what) = "Found: {what}", "Vorgefunden: {what}";
    /// Somebody looked how things stand.
    pub looked(what) = "Looked: {what}", "Nachgesehen: {what}";
    /// Somebody stopped in a stage; why, if it was said.
    pub stopped_here(why) = "Stopped in a stage{why}", "In einem Schritt aufgehört{why}";
    /// Noted at the walk-round: where, what, and in words.
    pub noted(zone, what, words) = "Noted, {zone}: {what}{words}", "Notiert, {zone}: {what}{words}";
    /// An area was walked round.
    pub walked_round(zone) = "Walked round: {zone}", "Rundgang: {zone}";
    /// So much of a fluid came out.
    pub drained(what, amount) = "{what}: {amount} out", "{what}: {amount} raus";
    /// So much of a fluid went in.
    pub poured(what, amount) = "{what}: {amount} in", "{what}: {amount} rein";
    /// A level was seen warm, and is right.
    pub level_warm_right(what) = "{what}: level seen warm, right", "{what}: Füllstand warm geprüft, stimmt";
    /// A level was seen warm, and is not right.
    pub level_warm_not_right(what) = "{what}: level seen warm, not right", "{what}: Füllstand warm geprüft, stimmt nicht";
    /// A level was seen cold, and is right.
    pub level_cold_right(what) = "{what}: level seen cold, right", "{what}: Füllstand kalt geprüft, stimmt";
    /// A level was seen cold, and is not right.
    pub level_cold_not_right(what) = "{what}: level seen cold, not right", "{what}: Füllstand kalt geprüft, stimmt nicht";
    /// Work was done; on what.
    pub done(what, on) = "Done: {what}{on}", "Erledigt: {what}{on}";
    /// The engine is to be started with a belt off; why.
    pub start_with_off(what, why) = "A start with {what} off is planned{why}", "Starten ohne {what} ist geplant{why}";
    /// Work is due.
    pub due(what) = "Due: {what}", "Fällig: {what}";
    /// A snag: on what, at which positions, what, and in words.
    pub snag(on, at, what, words) = "Snag: {on}{at} {what}{words}", "Problem: {on}{at} {what}{words}";
    /// A snag is resolved; how.
    pub snag_resolved(words) = "Snag resolved{words}", "Problem behoben{words}";
    /// Something stays other than the maker fitted it.
    pub stands_different(what) = "Stands different from now on: {what}", "Ist ab jetzt anders: {what}";
    /// A second person checked these.
    pub checked(what) = "Checked: {what}", "Geprüft: {what}";
    /// A test: what was tried, how it ended, and in words.
    pub proved(proof, outcome, words) = "{proof}: {outcome}{words}", "{proof}: {outcome}{words}";
    /// What the plan aims at.
    pub planned(aim) = "Planned: {aim}", "Geplant: {aim}";
    /// An aim of the plan: all goes home.
    pub all_home_again = "everything home again", "alles wieder an seinem Platz";
    /// An aim of the plan: that the vehicle may roll.
    pub so_that_it_may_roll = "so that it may roll", "damit es rollen darf";
    /// An aim of the plan: to get at things.
    pub get_at(what) = "get at {what}", "Zugang zu {what}";

    /// What the customer complains of.
    pub complaint(words) = "Complaint: {words}", "Beanstandung: {words}";
    /// What somebody else than the customer pays for.
    pub complaint_paid_by(payer, words) = "Complaint, paid by {payer}: {words}", "Beanstandung, Zahler {payer}: {words}";
    /// A line's text was written: which of them.
    pub line_complaint(words) = "Complaint: {words}", "Beanstandung: {words}";
    /// A line's text was written: which of them.
    pub line_cause(words) = "Cause: {words}", "Ursache: {words}";
    /// A line's text was written: which of them.
    pub line_correction(words) = "Correction: {words}", "Abhilfe: {words}";
    /// The customer would not have something put right, and signed that.
    pub declined_signed(what, why) = "Declined, signed: {what}: {why}", "Abgelehnt, unterschrieben: {what}: {why}";
    /// The customer would not have something put right, and did not sign that.
    pub declined_not_signed(what, why) = "Declined, not signed: {what}: {why}", "Abgelehnt, nicht unterschrieben: {what}: {why}";
    /// Somebody paid before the work.
    pub deposit(payer, amount, by) = "Deposit by {payer}: {amount} ({by})", "Anzahlung, {payer}: {amount} ({by})";
    /// Somebody paid.
    pub paid(payer, amount, by) = "Paid by {payer}: {amount} ({by})", "Zahlung, {payer}: {amount} ({by})";
    /// How it was paid.
    pub by_cash = "cash", "bar";
    /// How it was paid.
    pub by_card = "card", "Karte";
    /// How it was paid.
    pub by_transfer = "transfer", "Überweisung";
    /// How it was paid.
    pub by_cheque = "cheque", "Scheck";
    /// How it was paid: it stays owed on account.
    pub by_account = "on account", "auf Rechnung";
    /// A part is needed.
    pub part_needed(count, part) = "Part needed: {count} × {part}", "Ersatzteil nötig: {count} × {part}";
    /// Behind a step of a part: the day it is due.
    pub comma_due(day) = ", due {day}", ", kommt am {day}";
    /// A part's step: when it is due, and in words.
    pub part_ordered(part, due, words) = "Ordered: {part}{due}{words}", "Bestellt: {part}{due}{words}";
    /// A part's step: when it is due, and in words.
    pub part_received(part, due, words) = "Received: {part}{due}{words}", "Geliefert: {part}{due}{words}";
    /// A part's step: when it is due, and in words.
    pub part_compared(part, due, words) = "Compared: {part}{due}{words}", "Verglichen: {part}{due}{words}";
    /// A part's step: when it is due, and in words.
    pub part_fitted(part, due, words) = "Fitted: {part}{due}{words}", "Eingebaut: {part}{due}{words}";
    /// A part's step: when it is due, and in words.
    pub part_returned(part, due, words) = "Returned: {part}{due}{words}", "Zurückgegeben: {part}{due}{words}";
    /// A part's step: when it is due, and in words.
    pub part_stocked(part, due, words) = "Stocked: {part}{due}{words}", "Ins Lager: {part}{due}{words}";
    /// A part's step: when it is due, and in words.
    pub part_cancelled(part, due, words) = "Cancelled: {part}{due}{words}", "Abbestellt: {part}{due}{words}";
    /// What became of an old part.
    pub old_part(part, fate) = "Old {part}: {fate}", "Altes Teil, {part}: {fate}";
    /// What became of an old part that nobody named.
    pub old_part_unnamed(fate) = "Old part: {fate}", "Altes Teil: {fate}";
    /// Work was sent out: to whom, what, with which things, and when it is due.
    pub sent_out(to, what, with, due) = "Sent out to {to}: {what}{with}{due}", "Außer Haus gegeben an {to}: {what}{with}{due}";
    /// Behind work that was sent out: the day it is due back.
    pub comma_due_back(day) = ", due back {day}", ", zurück am {day}";
    /// Work came back.
    pub sublet_back(words) = "Back from where it was sent{words}", "Wieder im Haus{words}";
    /// The keys were taken in.
    pub keys_taken(words) = "Keys taken in{words}", "Schlüssel angenommen{words}";
    /// The keys were given back.
    pub keys_given_back(words) = "Keys given back{words}", "Schlüssel zurückgegeben{words}";
    /// The odometer was read.
    pub odometer(reading) = "Odometer {reading}", "Kilometerstand {reading}";
    /// Where the vehicle was moved to.
    pub moved_into_stall = "Moved into a stall", "Auf einen Platz gestellt";
    /// Where the vehicle was moved to.
    pub moved_into_yard = "Moved into the yard", "In den Hof gestellt";
    /// The vehicle was taken away.
    pub taken_away = "Taken away from here", "Weggebracht";
    /// Where the vehicle was pushed, and why.
    pub pushed_into_stall(why) = "Pushed into a stall by hand: {why}", "Von Hand auf einen Platz geschoben: {why}";
    /// Where the vehicle was pushed, and why.
    pub pushed_into_yard(why) = "Pushed into the yard by hand: {why}", "Von Hand in den Hof geschoben: {why}";
    /// The vehicle was pushed away, and why.
    pub pushed_away(why) = "Pushed away from here by hand: {why}", "Von Hand weggeschoben: {why}";
    /// When it was promised for.
    pub promised_for(hour) = "Promised for {hour}", "Zugesagt für {hour}";
    /// Who is to work on it.
    pub works_on_it(who) = "{who} works on it", "{who} arbeitet daran";
    /// When an answer will come.
    pub will_answer_by(hour) = "Will answer by {hour}", "Antwortet bis {hour}";
    /// A paper was given out.
    pub paper_given_out(words) = "Paper given out{words}", "Papier ausgegeben{words}";
    /// A photo was added.
    pub photo_added = "Photo added", "Foto hinzugefügt";
    /// What the sheet of how the job was done is called.
    pub how_to_titled(words) = "How it was done, title: {words}", "Wie es gemacht wurde, Titel: {words}";
    /// Something was written on that sheet.
    pub how_to_noted(words) = "How it was done, note: {words}", "Wie es gemacht wurde, Notiz: {words}";
    /// A note was taken off that sheet.
    pub how_to_note_taken_off = "How it was done: note removed", "Wie es gemacht wurde: Notiz entfernt";
    /// The notes on that sheet stand in another sequence.
    pub how_to_sequenced = "How it was done: note moved up", "Wie es gemacht wurde: Notiz nach oben gestellt";
    /// Something was taken back.
    pub took_something_back = "Took something back", "Etwas zurückgenommen";
    /// How much work is left, between what least and most, by whom, and where.
    pub work_left(minutes, range, skill, stall) = "{minutes} minutes of work left{range}{skill}{stall}", "Noch {minutes} Minuten Arbeit{range}{skill}{stall}";
    /// Behind the work that is left: how many more people hold and hand.
    pub and_helpers(many) = ", {many} to help", ", {many} zum Helfen";
    /// Behind the work that is left: minutes of a drive at the end.
    pub and_a_road_test(minutes) = ", {minutes} minutes of road test", ", {minutes} Minuten Probefahrt";
    /// A line of the story: when the vehicle is to come.
    pub is_to_come(hour) = "To come: {hour}", "Kommt: {hour}";
    /// Behind minutes of work: between what least and most.
    pub least_to_most(least, most) = " ({least} to {most})", " ({least} bis {most})";
    /// Behind minutes of work: where.
    pub on_a_lift = ", on a lift", ", auf einer Bühne";
    /// Behind minutes of work: where.
    pub on_a_flat_stall = ", on a flat stall", ", auf einem Platz ohne Bühne";
    /// Behind minutes of work: where.
    pub in_no_stall = ", in no stall", ", ohne Platz";
    /// Somebody agreed to finding the fault; up to what, how, and in what words.
    pub yes_to_diagnosis(who, amount, way, said) = "{who} said yes to finding the fault{amount} ({way}){said}", "{who} hat der Fehlersuche zugestimmt{amount} ({way}){said}";
    /// Somebody did not agree to finding the fault; up to what, how, and in what words.
    pub no_to_diagnosis(who, amount, way, said) = "{who} said no to finding the fault{amount} ({way}){said}", "{who} hat die Fehlersuche abgelehnt{amount} ({way}){said}";
    /// Somebody agreed to taking it apart; up to what, how, and in what words.
    pub yes_to_taking_apart(who, amount, way, said) = "{who} said yes to taking it apart{amount} ({way}){said}", "{who} hat dem Zerlegen zugestimmt{amount} ({way}){said}";
    /// Somebody did not agree to taking it apart; up to what, how, and in what words.
    pub no_to_taking_apart(who, amount, way, said) = "{who} said no to taking it apart{amount} ({way}){said}", "{who} hat das Zerlegen abgelehnt{amount} ({way}){said}";
    /// Somebody agreed to the repair; up to what, how, and in what words.
    pub yes_to_repair(who, amount, way, said) = "{who} said yes to the repair{amount} ({way}){said}", "{who} hat der Reparatur zugestimmt{amount} ({way}){said}";
    /// Somebody did not agree to the repair; up to what, how, and in what words.
    pub no_to_repair(who, amount, way, said) = "{who} said no to the repair{amount} ({way}){said}", "{who} hat die Reparatur abgelehnt{amount} ({way}){said}";
    /// Somebody agreed to more work; up to what, how, and in what words.
    pub yes_to_more(who, amount, way, said) = "{who} said yes to doing more{amount} ({way}){said}", "{who} hat weiterer Arbeit zugestimmt{amount} ({way}){said}";
    /// Somebody did not agree to more work; up to what, how, and in what words.
    pub no_to_more(who, amount, way, said) = "{who} said no to doing more{amount} ({way}){said}", "{who} hat weitere Arbeit abgelehnt{amount} ({way}){said}";
    /// Behind what was agreed: the ceiling.
    pub up_to_with_tax(amount) = ", up to {amount} with tax", ", höchstens {amount} mit Steuer";
    /// Behind what was agreed: the ceiling.
    pub up_to_before_tax(amount) = ", up to {amount} before tax", ", höchstens {amount} ohne Steuer";
    /// Behind what was agreed: what they said, word for word.
    pub in_their_words(words) = ": “{words}”", ": „{words}“";
    /// How somebody agreed.
    pub in_person = "in person", "persönlich";
    /// How somebody agreed.
    pub by_phone = "phone", "Telefon";
    /// How somebody agreed.
    pub by_message = "message", "Nachricht";
    /// How somebody agreed.
    pub by_mail = "mail", "E-Mail";
    /// How somebody agreed.
    pub signed = "signed", "unterschrieben";
    /// The order was opened.
    pub order_opened(number) = "Order {number} opened", "Auftrag {number} angelegt";
    /// A map was taken over.
    pub by_the_map(version) = "Working by the map, version {version}", "Es gilt die Vorlage, Version {version}";
    /// The price was set.
    pub price_set(sum) = "Price set: {sum} before tax", "Preis festgelegt: {sum} ohne Steuer";
    /// A discount was given; for whom.
    pub discount(amount, payer) = "Discount of {amount} for {payer}", "Nachlass {amount}, {payer}";
    /// An invoice was written; its numbers.
    pub invoice_written(numbers) = "Invoice written{numbers}", "Rechnung geschrieben{numbers}";
    /// A credit note was written: its number, for whom, how much, and why.
    pub credit_note(number, payer, sum, why) = "Credit note {number} for {payer}, {sum}: {why}", "Rechnungskorrektur {number}, {payer}, {sum}: {why}";
    /// Something was let pass at a gate, and why.
    pub waived_at(gate, why) = "Waived at {gate}: {why}", "Trotzdem freigegeben ({gate}): {why}";
    /// A waiver was taken back.
    pub waiver_taken_back = "Waiver taken back", "Freigabe zurückgenommen";
    /// It was handed over: how it left, its boxes, and who took it.
    pub handed_over(how, boxes, by) = "Handed over: {how}{boxes}{by}", "Übergeben: {how}{boxes}{by}";
    /// Behind the hand-over: how many boxes went with it.
    pub boxes_with_it(boxes) = ", boxes with it: {boxes}", ", Kisten dabei: {boxes}";
    /// Behind the hand-over: who signed.
    pub signed_by(who) = ", signed by {who}", ", unterschrieben von {who}";
    /// Behind the hand-over: who collected it.
    pub collected_by(who) = ", collected by {who}", ", abgeholt von {who}";
    /// It was taken in again.
    pub back_in(why) = "Back in: {why}", "Wieder angenommen: {why}";
    /// The order was opened by mistake.
    pub voided(why) = "Voided: {why}", "Storniert: {why}";
    /// Somebody was rung about the approval; in words.
    pub rung_approval(words) = "Rung about the approval{words}", "Wegen der Zustimmung angerufen{words}";
    /// Somebody was rung about the promise; in words.
    pub rung_promise(words) = "Rung about the promised time{words}", "Wegen der zugesagten Zeit angerufen{words}";
    /// Somebody was rung that it is ready; in words.
    pub rung_ready(words) = "Rung that it is ready{words}", "Angerufen, dass es fertig ist{words}";
    /// Somebody was rung about work that is due; in words.
    pub rung_due(words) = "Rung about work that is due{words}", "Wegen fälliger Arbeit angerufen{words}";
    /// Somebody was rung whether a fault came back; in words.
    pub rung_follow_up(words) = "Rung whether it came back{words}", "Angerufen, ob es wieder da ist{words}";
    /// Behind a call: nobody answered; in words.
    pub no_answer(words) = ", no answer{words}", ", niemand ging ran{words}";
}
