//! What is said of the plan of an order.

use phrases::phrases;

phrases! {
    /// Title of the page.
    pub plan = "Plan", "Plan";
    /// Refusal.
    pub order_without_map(number) = "order {number} works by no map yet", "Auftrag {number} läuft noch nach keiner Vorlage";
    /// Heading: the maps of the shop, to pick one.
    pub by_which_map = "By which map?", "Nach welcher Vorlage?";
    /// Under that heading.
    pub what_a_map_says = "A map says what is fitted to what on one kind of vehicle.",
        "Eine Vorlage sagt für eine Art Fahrzeug, was woran montiert ist.";
    /// Under that heading, when there is none.
    pub no_maps_yet = "The shop has no maps yet.", "Die Werkstatt hat noch keine Vorlagen.";
    /// Row.
    pub make_one_from_our_orders = "Make one from our finished orders", "Eine aus unseren fertigen Aufträgen machen";
    /// Small words on that row.
    pub of_such_vehicles = "of such vehicles", "von solchen Fahrzeugen";
    /// Under a map.
    pub for_this_vehicle = "for this vehicle", "für dieses Fahrzeug";
    /// Under a map.
    pub for_another_vehicle = "for another vehicle", "für ein anderes Fahrzeug";
    /// Press.
    pub all_maps = "All maps", "Alle Vorlagen";
    /// A plan that has no stages.
    pub nothing_has_to_be_moved = "Nothing has to be moved for it.", "Dafür muss nichts bewegt werden.";
    /// Row under the figures of a plan.
    pub show_as_a_drawing = "Show it as a drawing", "Als Zeichnung zeigen";
    /// Row under the figures of a plan.
    pub share_between_two = "Share it between two people", "Auf zwei Leute aufteilen";
    /// Beside a plan: what it would cost without what was ruled out, and how much that is less.
    pub with_nothing_ruled_out(cost, dearer) = "With nothing ruled out: {cost} min, {dearer}",
        "Ohne Ausschlüsse: {cost} min, {dearer}";
    /// Row under that.
    pub show_that_one = "Show that one", "Diesen zeigen";
    /// Heading over the stages on the way out.
    pub comes_off = "Comes off", "Kommt ab";
    /// Heading over the stages on the way back.
    pub goes_back = "Goes back", "Kommt wieder dran";
    /// How many steps rest on a guess; how many steps there are stands behind it.
    pub steps_rest_on_a_guess(n) = ["{n} step rests on a guess, of ", "{n} steps rest on a guess, of "],
        ["{n} Handgriff beruht auf einer Vermutung, von ", "{n} Handgriffe beruhen auf einer Vermutung, von "];
    /// Behind that: how many steps of coming off there are.
    pub steps_off(n) = ["{n} step off", "{n} steps off"], ["{n} Handgriff beim Ausbau", "{n} Handgriffen beim Ausbau"];
    /// Behind that row.
    pub settle_it = "settle it", "klären";
    /// Before names: things on the order that are called as on the map.
    pub by_the_same_name = "On this order by the same name: ", "In diesem Auftrag unter demselben Namen: ";
    /// Press under that.
    pub they_are_the_same = "They are the same", "Es sind dieselben";
    /// Small words on that press.
    pub plan_starts_from_where_they_stand = "the plan then starts from where they stand",
        "der Plan geht dann davon aus, wie sie stehen";
    /// What is wanted of a plan.
    pub everything_home_again = "Everything home again", "Alles wieder an seinen Platz";
    /// What is wanted of a plan: put together only so far that the vehicle can be rolled.
    pub button_it_up_to_roll = "Button it up so that it rolls", "So weit zusammenbauen, dass es rollt";
    /// What is wanted of a plan: the names of things.
    pub get_at(names) = "Get at {names}", "Zugang zu: {names}";
    /// The minutes of a plan.
    pub minutes_out_and_back(out, back) = "{out} out, {back} back", "{out} Ausbau, {back} Einbau";
    /// How often one goes elsewhere, such as from above to below.
    pub changes_of_place(n) = ["{n} change of place", "{n} changes of place"], ["{n} Ortswechsel", "{n} Ortswechsel"];
    /// Behind that: how often one takes another tool.
    pub changes_of_tools(n) = "{n} of tools", "{n} Werkzeugwechsel";
    /// Under the figures of a plan.
    pub proven_nothing_cheaper(cost) = "Proven: nothing is cheaper. {cost} min with all changes.",
        "Nachgewiesen: mit weniger geht es nicht. {cost} min mit allen Wechseln.";
    /// The same, where it is not proven.
    pub best_found(gap, cost) = "The best found, at most {gap} min above the cheapest. {cost} min with all changes.",
        "Das Beste, was gefunden wurde, höchstens {gap} min über dem Günstigsten. {cost} min mit allen Wechseln.";
    /// Behind how long it is likely to take.
    pub while_nobody_timed = ", while nobody has timed a stage here", ", solange hier niemand einen Schritt gestoppt hat";
    /// Folded: the working behind a number.
    pub how_was_this_found = "How was this found?", "Wie wurde das gerechnet?";
    /// Heading over what goes on new.
    pub renewed = "Renewed", "Wird erneuert";
    /// Heading over fluids that run out.
    pub drained = "Drained", "Wird abgelassen";
    /// Heading over work that a plan leads to.
    pub owed_by_it = "Owed by it", "Dadurch noch zu tun";
    /// Heading.
    pub stays_until_resolved = "Stays until its snag is resolved", "Bleibt, bis das Problem behoben ist";
    /// Heading.
    pub no_legal_way_back = "No legal way back", "Kein zulässiger Rückweg";
    /// Heading over what can be changed in a plan.
    pub what_if = "What if", "Was wäre, wenn";
    /// Row under that.
    pub lift_is_taken = "The lift is taken: nothing from below", "Die Bühne ist belegt: nichts von unten";
    /// Row under that, for another place.
    pub nothing_from(place) = "Nothing from {place}", "Kein Zugang von: {place}";
    /// Behind that row.
    pub taken_plan_with_it = "taken: plan with it again", "belegt: wieder damit planen";
    /// Behind that row.
    pub free_see_without = "free: see what it takes without", "frei: zeigen, was es ohne kostet";
    /// Before a variant of a vehicle.
    pub it_has = "It has: ", "Es hat: ";
    /// Behind that row.
    pub has_it_plan_without = "it has it: plan without", "hat es: ohne planen";
    /// Behind that row.
    pub not_told_plan_with = "not told: plan with it", "nicht angegeben: damit planen";
    /// Before a step that is ruled out.
    pub ruled_out = "Not: ", "Nicht: ";
    /// Behind that row.
    pub allow_it_again = "allow it again", "wieder erlauben";
    /// Before a step that is done in any case.
    pub in_any_case_this = "In any case: ", "Auf jeden Fall: ";
    /// Behind that row.
    pub let_it_be = "let it be", "doch nicht";
    /// Row.
    pub get_at_one_thing_more = "Get at one thing more", "Noch ein Teil freilegen";
    /// Row.
    pub get_at_something_else = "Get at something else", "Etwas anderes freilegen";
    /// Row.
    pub where_things_stand_as_text = "Where things stand, as text", "Wie alles steht, als Text";
    /// Heading.
    pub other_ways = "Other ways", "Andere Wege";
    /// Another way: what it does not do, and how much it costs more or less.
    pub not_this(what, dearer) = "Not {what}: {dearer}", "Nicht {what}: {dearer}";
    /// The large press: the plan is taken over.
    pub work_by_it = "Work by it", "Danach arbeiten";
    /// Press to the price of the plan.
    pub price_it = "Price it", "Preis dazu";

    /// Refusal.
    pub no_map_is_picked = "no map is picked for this order yet", "für diesen Auftrag ist noch keine Vorlage gewählt";
    /// Title: the plan as a drawing.
    pub the_way_in = "The way in", "Der Weg zum Teil";
    /// Over the drawing.
    pub how_to_read_the_drawing = "What stands above comes off first. A filled mark is home, a hollow one is off.",
        "Was oben steht, kommt zuerst ab. Ein volles Zeichen ist dran, ein hohles ab.";
    /// Press to the plan.
    pub as_a_list = "As a list", "Als Liste";

    /// The work of a plan, for the customer: everything wanted is renewed.
    pub renewing(names) = "Renewing {names}, with all that has to come off for it",
        "{names} erneuern, mit allem, was dafür ab muss";
    /// The work of a plan, for the customer.
    pub work_on(names) = "Work on {names}, with all that has to come off for it",
        "Arbeit an {names}, mit allem, was dafür ab muss";
    /// Title and heading.
    pub price_of_the_plan = "Price of the plan", "Preis des Plans";
    /// Heading over what stands on the price already.
    pub priced_so_far = "Priced so far", "Bisheriger Preis";
    /// Heading.
    pub labour = "Labour", "Arbeit";
    /// So many hours, as a number with a part.
    pub hours(n) = "{n} hours", "{n} Stunden";
    /// Field.
    pub an_hour_before_tax = "An hour, before tax", "Eine Stunde, ohne Steuer";
    /// Heading.
    pub parts_it_renews = "Parts it renews", "Teile, die erneuert werden";
    /// Under that heading.
    pub give_a_price_or_leave_empty = "Give a price, or leave it empty and it is left out.",
        "Preis eintragen; was leer bleibt, fällt weg.";
    /// Hint of the field for the price of one part.
    pub one_costs_before_tax = "one costs, before tax", "eines kostet, ohne Steuer";
    /// The large press.
    pub set_the_price = "Set the price", "Preis festlegen";
    /// Small words on that press.
    pub and_work_by_this_plan = "and work by this plan", "und nach diesem Plan arbeiten";
    /// Press, and where a page leads back to.
    pub the_plan = "The plan", "Der Plan";

    /// Heading over the things of a map.
    pub what_to_get_at = "What do you want to get at?", "Wo muss man ran?";
    /// Field.
    pub find_it_by_a_word = "Find it by a word", "Mit einem Wort finden";
    /// Hint of that field.
    pub such_as_gasket = "such as gasket", "z. B. Dichtung";
    /// Press beside that field.
    pub find = "Find", "Finden";
    /// Nothing has that word.
    pub nothing_is_called_that = "Nothing on this map is called that. Try another word.",
        "In dieser Vorlage heißt nichts so. Ein anderes Wort versuchen.";
    /// Behind a thing that is picked.
    pub wanted = "wanted", "gewünscht";
    /// The large press.
    pub show_the_plan = "Show the plan", "Plan zeigen";
    /// Small words on that press.
    pub things_wanted(n) = ["{n} thing wanted", "{n} things wanted"], ["{n} Teil gewünscht", "{n} Teile gewünscht"];

    /// Under a stage.
    pub rests_on_a_guess = "rests on a guess", "beruht auf einer Vermutung";
    /// Under a step: what is supposed to come off before it; names with the next between them.
    pub a_guess_comes_first(names) = "A guess: that the {names} comes first", "Vermutung: {names} kommt zuerst";
    /// Between those names.
    pub the_between = ", the ", ", ";
    /// Before the minutes of a step.
    pub takes = "Takes: ", "Dauert: ";
    /// Before the size of a bolt.
    pub size_is = "Size: ", "Größe: ";
    /// Row under a step.
    pub not_that_way = "Not that way", "Nicht so";
    /// Behind that row.
    pub show_without_it = "show a plan without it", "einen Plan ohne das zeigen";
    /// Row under a step.
    pub in_any_case = "In any case", "Auf jeden Fall";
    /// Behind that row.
    pub keep_it_in = "keep it in", "im Plan lassen";
    /// Another plan costs as much.
    pub costs_the_same = "the same", "gleich viel";
    /// Another plan costs more.
    pub min_more(minutes) = "{minutes} min more", "{minutes} min mehr";
    /// Another plan costs less.
    pub min_less(minutes) = "{minutes} min less", "{minutes} min weniger";
    /// What comes off, or stays on, in another plan: no more than here.
    pub nothing_else = "nothing else", "nichts weiter";
    /// Before what comes off in another plan.
    pub other_comes_off = "Comes off: ", "Kommt ab: ";
    /// Before what stays on in another plan.
    pub other_stays_on = "Stays on: ", "Bleibt dran: ";

    /// Refusal.
    pub no_plan_to_share = "there is no plan to share: pick a map and what to get at",
        "es gibt keinen Plan zum Aufteilen: erst Vorlage wählen und das Teil, an das man ran muss";
    /// Title.
    pub two_people = "Two people", "Zwei Leute";
    /// Behind what is wanted, as a heading.
    pub comma_two_people = ", two people", ", zu zweit";
    /// Beside the minutes for two.
    pub in_place_of(minutes) = "in place of {minutes} alone", "statt {minutes} allein";
    /// Under that: the ways from place to place are not counted.
    pub walks_left_out = "walks left out", "ohne Laufwege";
    /// Under the figures.
    pub proven_for_two = "Proven: two people are not finished sooner.", "Nachgewiesen: zu zweit geht es nicht schneller.";
    /// The same, where it is not proven.
    pub best_found_for_two(minutes) = "The best found; nobody is finished before {minutes} min.",
        "Das Beste, was gefunden wurde; vor {minutes} min ist niemand fertig.";
    /// Where two are as slow as one.
    pub second_saves_nothing = "A second person saves nothing here: each step waits for the one before.",
        "Zu zweit geht es hier nicht schneller: jeder Handgriff wartet auf den davor.";
    /// Heading over what the first person does.
    pub one_person = "One", "Einer";
    /// Heading over what the second person does.
    pub the_other_person = "The other", "Der andere";
    /// Heading over what happens without anybody, such as draining.
    pub by_itself = "By itself", "Von allein";
    /// Press.
    pub the_plan_for_one = "The plan for one", "Der Plan für einen";
    /// Under a person.
    pub nothing_to_do = "Nothing to do.", "Nichts zu tun.";
    /// Between two steps of a person.
    pub waits_for_the_other = "waits for the other", "wartet auf den anderen";
    /// Between two steps of a person.
    pub waits_for_the_lift = "waits for the lift", "wartet auf die Bühne";
    /// Until which minute.
    pub to_minute(minute) = "to {minute}", "bis {minute}";
}
