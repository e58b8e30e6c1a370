//! What the shop's own history says: times, snags, comebacks, quotes.

use phrases::phrases;

phrases! {
    /// How many timed stages a figure is of.
    pub timed_stages(n) = ["{n} timed stage", "{n} timed stages"], ["{n} gestoppter Schritt", "{n} gestoppte Schritte"];
    /// How long stages took against the book: the middle, where most lie, and of how many.
    pub times_the_book(middle, low, high, stages) = "{middle} × the book; 8 of 10 from {low} to {high}; {stages}", "{middle} × Richtzeit; 8 von 10 zwischen {low} und {high}; {stages}";
    /// The same in short, for a drawing.
    pub times_book_short(middle) = "{middle} × book", "{middle} × Richtzeit";
    /// Of how much a figure is, and that it is too little.
    pub too_few(of) = "{of}: too few to tell", "{of}: zu wenige für eine Aussage";
    /// What figures of times say.
    pub about_times = "How long stages took for each minute of the book, pauses left out. The dot is the middle, the line where 8 of 10 lie.", "Wie lange Schritte je Minute Richtzeit dauerten, ohne Pausen. Der Punkt ist die Mitte, auf der Linie liegen 8 von 10.";
    /// What the scale of a drawing tells.
    pub scale_book = "times the book", "mal die Richtzeit";
    /// A mark on the scale of a drawing.
    pub the_book = "the book", "Richtzeit";
    /// A heading of the history.
    pub by_stage = "Time against the book, by stage", "Zeit gegen Richtzeit, nach Schritt";
    /// A heading of the history.
    pub by_person = "Time against the book, by person", "Zeit gegen Richtzeit, nach Person";
    /// A heading of the history.
    pub by_kind = "Time against the book, by kind of vehicle", "Zeit gegen Richtzeit, nach Art des Fahrzeugs";
    /// A heading of the history.
    pub by_month = "Time against the book, by month", "Zeit gegen Richtzeit, nach Monat";
    /// What was moved in a stage, and that it came off.
    pub stage_out(kind) = "{kind} out", "{kind} raus";
    /// What was moved in a stage, and that it went back.
    pub stage_back(kind) = "{kind} back", "{kind} rein";
    /// How many fasteners brought a snag, and how many will in the long run.
    pub snags_in_hundred(found, out, low, high) = "{found} of {out} snapped, stuck or stripped; in the long run {low} to {high} in 100", "{found} von {out} abgerissen, festgegangen oder ausgerissen; auf Dauer {low} bis {high} von 100";
    /// So many of so many.
    pub some_of(some, all) = "{some} of {all}", "{some} von {all}";
    /// How many fasteners brought a snag, and that they are too few.
    pub snags_too_few(found, out, least) = "{found} of {out}: too few to tell, it takes {least}", "{found} von {out}: zu wenige für eine Aussage, möglich ab {least}";
    /// A heading of the history.
    pub snags_by_size = "Snags by size and metal", "Probleme nach Größe und Metall";
    /// What figures of snags say.
    pub about_snags = "Of the fasteners that came out, how many brought a snag. The line is where the share lies 8 times in 10.", "Wie viele der ausgebauten Schrauben ein Problem machten. Auf der Linie liegt der Anteil in 8 von 10 Fällen.";
    /// What the scale of a drawing tells.
    pub scale_hundred = "in 100 that come out", "von 100 ausgebauten";
    /// A size of a thread, and the metal around it.
    pub size_in_metal(size, metal) = "{size} in {metal}", "{size} in {metal}";
    /// A size of a thread, and that nobody told the metal.
    pub metal_not_told(size) = "{size}, metal not told", "{size}, Metall nicht genannt";
    /// How often.
    pub times(n) = ["{n} time", "{n} times"], ["{n}-mal", "{n}-mal"];
    /// How often something differed, and how.
    pub times_and_how(times, how) = "{times}: {how}", "{times}: {how}";
    /// A heading of the history.
    pub parts_that_differed = "Parts that differed", "Abweichende Teile";
    /// What figures of parts say.
    pub about_parts = "What is no longer as the maker fitted it, and parts that were sent back.", "Was nicht mehr so ist, wie der Hersteller es gebaut hat, und Teile, die zurückgingen.";
    /// A part was sent back.
    pub sent_back = "sent back", "zurückgeschickt";
    /// A part was sent back, and why.
    pub sent_back_why(why) = "sent back: {why}", "zurückgeschickt: {why}";
    /// Why work came back: a snag.
    pub something(snag) = "something {snag}", "etwas {snag}";
    /// Why work came back: nobody said.
    pub no_cause_told = "no cause told", "keine Ursache genannt";
    /// How many orders of all.
    pub orders_of(n, all) = ["{n} order of {all}", "{n} orders of {all}"], ["{n} Auftrag von {all}", "{n} Aufträge von {all}"];
    /// How many orders of all, and that they are too few.
    pub too_few_how_often(of) = "{of}: too few to tell how often", "{of}: zu wenige, um zu sagen, wie oft";
    /// A heading of the history.
    pub comebacks_by_cause = "Comebacks by cause", "Reklamationen nach Ursache";
    /// What figures of comebacks say.
    pub about_comebacks = "Orders with a line that warranty or goodwill pays, with the visit before.", "Aufträge mit einer Zeile, die Garantie oder Kulanz zahlt, mit dem Besuch davor.";
    /// Of work that came back: how long it took.
    pub clocked(hours) = "{hours} h on the clock", "{hours} h gestoppt";
    /// Of work that came back: what of it the customer did not pay.
    pub cost_us(amount) = "{amount} before tax that the customer did not pay", "{amount} ohne Steuer, die der Kunde nicht zahlte";
    /// Of work that came back: how many of the orders have no price.
    pub not_priced(n) = ["{n} not priced", "{n} not priced"], ["{n} ohne Preis", "{n} ohne Preis"];
    /// A heading of the history.
    pub torque_sources = "Whose torques were used", "Wessen Drehmomente galten";
    /// What figures of torques say.
    pub about_torques = "Who gave the torque of each group of fasteners that was tightened.", "Wer das Drehmoment jeder angezogenen Gruppe Schrauben genannt hat.";
    /// Fasteners that were tightened without a torque from anybody.
    pub no_torque_told = "No torque told", "Kein Drehmoment genannt";
    /// How many groups of fasteners.
    pub groups(n) = ["{n} group", "{n} groups"], ["{n} Gruppe", "{n} Gruppen"];
    /// On how many orders.
    pub on_orders(n) = ["on {n} order", "on {n} orders"], ["bei {n} Auftrag", "bei {n} Aufträgen"];
    /// How many groups of fasteners on how many orders.
    pub groups_on(groups, orders) = "{groups} {orders}", "{groups} {orders}";
    /// How many orders stayed under what was quoted.
    pub stayed_under(under, all) = "{under} of {all} stayed under what was said to cover it 9 times in 10", "{under} von {all} blieben unter dem, was in 9 von 10 Fällen reichen sollte";
    /// What orders came to against what was quoted.
    pub times_the_middle(middle, low, high, kept) = "{middle} × the middle that was quoted; 8 of 10 from {low} to {high}; {kept}", "{middle} × die veranschlagte Mitte; 8 von 10 zwischen {low} und {high}; {kept}";
    /// The same in short, for a drawing.
    pub times_quoted_short(middle) = "{middle} × quoted", "{middle} × veranschlagt";
    /// A heading of the history.
    pub quotes_against = "Quotes against what it came to", "Kostenvoranschläge und was es dann gekostet hat";
    /// What figures of quotes say.
    pub about_quotes = "The first estimate that was given with its odds, by what the order came to.", "Der erste Kostenvoranschlag, der mit seiner Sicherheit gegeben wurde, verglichen mit dem, was der Auftrag gekostet hat.";
    /// What the scale of a drawing tells.
    pub scale_quoted = "times the middle that was quoted", "mal die veranschlagte Mitte";
    /// A mark on the scale of a drawing.
    pub as_quoted = "as quoted", "wie veranschlagt";
    /// Work that was declined so often, and did not come back.
    pub declined_not_back(times) = "declined {times}, not come back yet", "{times} abgelehnt, noch nicht wiedergekommen";
    /// Work that was declined so often, and came back so often.
    pub declined_came_back(times, came) = "declined {times}, came back {came}", "{times} abgelehnt, {came} wiedergekommen";
    /// A heading of the history.
    pub declined_came = "Declined work that came back", "Abgelehnte Arbeit, die wiederkam";
    /// What figures of declined work say.
    pub about_declined = "What a customer did not want done, and whether a later visit of the vehicle did it.", "Was ein Kunde nicht machen ließ, und ob ein späterer Besuch es gebracht hat.";
    /// A month with its year.
    pub month(month, year) = "{month} {year}", "{month} {year}";
    /// How many bookings.
    pub bookings(n) = ["{n} booking", "{n} bookings"], ["{n} Buchung", "{n} Buchungen"];
    /// How bookings turned out.
    pub bookings_came(bookings, came, another, never) = "{bookings} so far: {came} came on the day, {another} on another day, {never} not at all", "{bookings} bisher: {came} am vereinbarten Tag gekommen, {another} an einem anderen Tag, {never} gar nicht";
    /// The same, and how many in a hundred stay away on their day.
    pub stay_away_in_hundred(came, low, high) = "{came}. In the long run {low} to {high} in 100 do not come on their day.", "{came}. Auf Dauer kommen {low} bis {high} von 100 nicht am vereinbarten Tag.";
    /// The same, and that they are too few.
    pub bookings_too_few(came, least) = "{came}: too few to tell, from {least} bookings on it can be said", "{came}: zu wenige für eine Aussage, möglich ab {least} Buchungen";
    /// So many of so many, and where the share lies in the long run.
    pub in_the_long_run(some, low, high) = "{some}; in the long run {low} to {high} in 100", "{some}; auf Dauer {low} bis {high} von 100";
    /// A heading of the history.
    pub bookings_kept = "Bookings that came", "Buchungen, die kamen";
    /// What figures of bookings say.
    pub about_bookings = "Of the times that were agreed for vehicles to come, by the newest orders. What was changed or called off before its day does not count. The line is where the share lies 8 times in 10.", "Die vereinbarten Zeiten, zu denen Fahrzeuge kommen sollten, aus den neuesten Aufträgen. Was vor dem Tag verschoben oder abgesagt wurde, zählt nicht. Auf der Linie liegt der Anteil in 8 von 10 Fällen.";
    /// What the scale of a drawing tells.
    pub scale_bookings = "in 100 that are booked", "von 100 gebuchten";
    /// How a booking turned out.
    pub came_on_the_day = "Came on the day", "Am vereinbarten Tag";
    /// How a booking turned out.
    pub came_another_day = "Came on another day", "An einem anderen Tag";
    /// How a booking turned out.
    pub came_not_at_all = "Did not come", "Nicht gekommen";
}
