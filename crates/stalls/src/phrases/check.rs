//! What keeps a floor from being planned, what is missing, and how it is mended.

use phrases::phrases;

phrases! {
    /// A note: an order whose vehicle's weight nobody gave.
    pub weight_not_given(order) = "{order}: its weight is not given, so nobody checked that the lift carries it", "{order}: das Gewicht ist nicht angegeben; ob die Bühne es trägt, hat niemand geprüft";
    /// A note: work that is longer than a day of whoever can do it.
    pub longer_than_a_day(order, what, minutes, day) = "{order}, {what}: {minutes} minutes are longer than any day of who can do it ({day} minutes), so it runs over several days without a pause for anything else: write it as stages", "{order}, {what}: {minutes} Minuten sind länger als jeder Tag derer, die es können ({day} Minuten); es läuft über mehrere Tage, ohne Pause für anderes: in Schritte teilen";
    /// Where something is wrong: a stall without a name.
    pub a_stall = "a stall", "ein Platz";
    /// Where something is wrong: a person without a name.
    pub a_person = "a person", "eine Person";
    /// Where something is wrong: an order without a name.
    pub an_order = "an order", "ein Auftrag";
    /// What something is, before its name, where it is wrong.
    pub stall = "stall", "Platz";
    /// What somebody is, before the name, where something is wrong.
    pub person = "person", "Person";
    /// What something is, before its name, where it is wrong.
    pub order = "order", "Auftrag";
    /// A stall, a person or an order has no name.
    pub no_name = "it has no name", "der Name fehlt";
    /// How it is mended that something has no name.
    pub name_it = "name it", "benennen";
    /// Two stalls, people or orders are called alike.
    pub two_have_this_name(sort) = "two have this name (each {sort} is told by its name)", "zwei heißen so (unterschieden wird nur am Namen)";
    /// How it is mended that two are called alike.
    pub give_another_name = "give one of them another", "einem davon einen anderen geben";
    /// Where something is wrong.
    pub opening_hours = "the opening hours", "die Öffnungszeiten";
    /// The opening hours are all over.
    pub no_hours_left = "none is left after the moment that is planned from", "nach dem Zeitpunkt, ab dem geplant wird, ist keine mehr übrig";
    /// How it is mended that the opening hours are over.
    pub give_hours_ahead = "give hours for the days ahead", "Zeiten für die kommenden Tage angeben";
    /// Where something is wrong.
    pub the_hours = "the hours", "die Zeiten";
    /// A time is far from now.
    pub ten_years_away = "a time lies more than ten years away", "eine Zeit liegt mehr als zehn Jahre entfernt";
    /// How it is mended that a time is far from now.
    pub slip_in_the_years = "look for a slip in the years", "die Jahreszahlen auf Vertippen prüfen";
    /// Where something is wrong: the points by which plans are compared.
    pub the_rules = "the rules", "die Regeln";
    /// Points are too large or below nothing.
    pub points_from_to(most) = "points have to be from 0 to {most}", "Punkte gehen von 0 bis {most}";
    /// How it is mended that points are too large.
    pub write_smaller_points = "write smaller ones; only what they are to each other counts", "kleinere schreiben; es zählt nur ihr Verhältnis zueinander";
    /// A stall's way out leads over one that is not there.
    pub crosses_none(number) = "it crosses stall number {number}, and there is none", "der Weg führt über Platz Nummer {number}, und den gibt es nicht";
    /// How it is mended that stalls are named that are not there.
    pub name_stalls_that_are = "name stalls that are there", "Plätze nennen, die es gibt";
    /// A stall's way out leads over itself.
    pub crosses_itself = "whoever leaves it has to cross it again (the stalls to cross go round in a circle)", "wer hinausfährt, muss wieder darüber (die Plätze auf dem Weg gehen im Kreis)";
    /// How it is mended that a way leads over itself.
    pub leave_out_the_crossed = "leave out the stall that need not be crossed", "den Platz weglassen, über den man nicht muss";
    /// An order has no work.
    pub nothing_to_do = "nothing is to be done", "es ist nichts zu tun";
    /// How it is mended that an order has no work.
    pub write_a_phase = "write at least one phase, or leave the order out", "mindestens eine Arbeit angeben oder den Auftrag weglassen";
    /// An order's vehicle stands nowhere that is known.
    pub stands_in_none = "it stands in a stall that is not there", "es steht auf einem Platz, den es nicht gibt";
    /// How it is mended that a stall is not there.
    pub name_a_stall_that_is = "name a stall that is there", "einen Platz nennen, den es gibt";
    /// How much an order's promise counts.
    pub promise_weighs(weight) = "its promise weighs {weight}", "die Zusage wiegt {weight}";
    /// How it is mended that a promise's weight makes no sense.
    pub write_a_weight = "write a weight from 0 to 1000000; 1 is usual", "ein Gewicht von 0 bis 1000000 schreiben; üblich ist 1";
    /// An order's vehicle is here and comes later.
    pub here_and_to_come = "it is here, and it is still to come", "es ist da, und es kommt erst noch";
    /// How it is mended that a vehicle is here and comes later.
    pub leave_out_when_it_comes = "leave out when it comes", "weglassen, wann es kommt";
    /// A vehicle is apart, and nobody said where.
    pub apart_nowhere = "it can't roll, and no stall is named in which it stands", "es kann nicht rollen, und der Platz, auf dem es steht, fehlt";
    /// How it is mended that a vehicle is apart nowhere.
    pub name_the_stall_or_rolls = "name the stall, or say that it rolls", "den Platz nennen, oder dass es rollt";
    /// A vehicle is apart at the end.
    pub apart_at_the_end = "it can't roll when all is done", "es kann nicht rollen, wenn alles getan ist";
    /// How it is mended that a vehicle is apart at the end.
    pub write_what_puts_together = "write the phase that puts it back together", "die Arbeit angeben, die es wieder zusammenbaut";
    /// What is worked on began later than now.
    pub began_after_now = "what runs began after now", "was läuft, fing erst später an";
    /// How it is mended that work began later than now.
    pub write_when_it_began = "write when it began", "angeben, wann es anfing";
    /// Somebody who is unknown works on it.
    pub unknown_at_work = "somebody works on it who is not there", "daran arbeitet jemand, den es nicht gibt";
    /// How it is mended that people are unknown.
    pub name_people_who_are = "name people who are there", "Leute nennen, die es gibt";
    /// Its work has begun without anybody who can do it.
    pub begun_without_skill = "its first phase has begun, and nobody with the skill works on it", "die erste Arbeit läuft, und keiner, der es kann, arbeitet daran";
    /// How it is mended that work has begun without anybody who can do it.
    pub name_who_works = "name who works on it, or say that it has not begun", "angeben, wer daran arbeitet, oder dass es nicht angefangen hat";
    /// It is worked on nowhere that is known.
    pub worked_on_nowhere = "it is worked on, and no stall is named in which it stands", "daran wird gearbeitet, und der Platz, auf dem es steht, fehlt";
    /// How it is mended that a stall is missing.
    pub name_the_stall = "name the stall", "den Platz nennen";
    /// Somebody works on two orders at once.
    pub also_works_on(order) = "who works on it also works on {order}", "wer daran arbeitet, arbeitet auch an {order}";
    /// How it is mended that somebody works on two orders at once.
    pub one_vehicle_at_a_time = "a person works on one vehicle at a time: say which has not begun", "jeder arbeitet an einem Fahrzeug: angeben, welches nicht angefangen hat";
    /// Minutes that are in no sequence.
    pub minutes_run(least, likely, most) = "its minutes run from {least} over {likely} to {most}", "die Minuten gehen von {least} über {likely} bis {most}";
    /// How it is mended that minutes are in no sequence.
    pub write_in_sequence = "write least, likely and most in that sequence; work takes at least a minute", "mindestens, wahrscheinlich und höchstens in dieser Reihenfolge; Arbeit dauert mindestens eine Minute";
    /// Work that nobody can do.
    pub nobody_has_skill(skill) = "nobody has the skill {skill}", "keiner kann {skill}";
    /// How it is mended that nobody can do it.
    pub give_the_skill = "give it to somebody, or write another", "es jemandem zuteilen oder etwas anderes angeben";
    /// Work without anybody in the shop.
    pub nobody_to_do_it = "there is nobody to do it", "es ist keiner da, der es macht";
    /// How it is mended that there is nobody.
    pub name_the_people = "name the people", "die Leute nennen";
    /// Work that nobody can do in the days ahead.
    pub nobody_here(names) = "nobody who can do it is here in the hours given ({names})", "keiner, der es kann, ist in diesen Zeiten da ({names})";
    /// How it is mended that nobody is here.
    pub give_more_days = "give more days, or ask who else can do it", "mehr Tage angeben, oder fragen, wer es noch kann";
    /// Work that needs many hands.
    pub needs_helpers(n) = "it needs {n} helpers", "es braucht {n} Helfer";
    /// How it is mended that work needs many hands.
    pub at_most_three_helpers = "write at most 3, and the rest as work of its own", "höchstens 3 angeben, den Rest als eigene Arbeit";
    /// Work that needs more hands than there are.
    pub needs_more_helpers(n, all) =
        ["it needs somebody to help, and nobody else is there", "it needs {n} people to help, and there are {all} in all"],
        ["es braucht jemanden zum Helfen, und sonst ist niemand da", "es braucht {n} Leute zum Helfen, und insgesamt sind {all} da"];
    /// How it is mended that work needs more hands than there are.
    pub fewer_helpers = "ask for fewer, or name more people", "weniger angeben, oder mehr Leute nennen";
    /// A road test in a stall, or of a vehicle that is apart.
    pub road_test_rolls = "a road test needs no stall, and the vehicle has to roll", "eine Probefahrt braucht keinen Platz, und das Fahrzeug muss rollen";
    /// How it is mended that a road test is in a stall.
    pub road_test_without_stall = "write it without a stall, after it can roll", "ohne Platz angeben, sobald es rollen kann";
    /// A road test of a vehicle that is apart.
    pub comes_while_apart(what) = "{what} comes while it can't roll", "{what} kommt, solange es nicht rollen kann";
    /// How it is mended that a road test comes while it is apart.
    pub together_before_the_road = "write what puts it back together before the road test", "vor der Probefahrt angeben, was es wieder zusammenbaut";
    /// A vehicle is taken apart outside.
    pub apart_without_stall = "it is taken apart where there is no stall", "es wird zerlegt, wo kein Platz ist";
    /// How it is mended that a vehicle is taken apart outside; the last words are those that are written.
    pub say_which_stall = "say which stall it needs: lift, flat or any", "angeben, welchen Platz es braucht: lift (Bühne), flat (ohne Bühne) oder any (egal)";
    /// A stall, and what it is held by, in a list.
    pub held_by(stall, by) = "{stall} by {by}", "{stall} durch {by}";
    /// A vehicle is apart in a stall that is wrong for the work.
    pub apart_in_wrong_stall(stall) = "it can't roll and stands in {stall}, which does not suit the work", "es kann nicht rollen und steht auf {stall}; der passt nicht zur Arbeit";
    /// How it is mended that a vehicle is apart in a wrong stall.
    pub make_it_roll_first = "write what makes it roll first, or check its weight and what the work needs", "erst angeben, was es rollen lässt, oder das Gewicht prüfen und was die Arbeit braucht";
    /// No stall for the work is free at all.
    pub all_held(stalls) = "every stall that suits it is held for good: {stalls}", "jeder Platz, der passt, ist auf Dauer belegt: {stalls}";
    /// How it is mended that no stall is free.
    pub free_one = "free one of them", "einen davon frei machen";
    /// A vehicle is too heavy for every lift.
    pub too_heavy(weight, most) = "it weighs {weight} kg, and the strongest lift carries {most} kg", "es wiegt {weight} kg, und die stärkste Bühne trägt {most} kg";
    /// A vehicle is too high for every lift.
    pub too_high(height, highest) = "it is {height} mm high, and no lift clears more than {highest} mm", "es ist {height} mm hoch, und keine Bühne lässt mehr als {highest} mm zu";
    /// How it is mended that no lift takes a vehicle.
    pub without_a_lift = "do it without a lift, or elsewhere", "ohne Bühne machen, oder anderswo";
    /// No stall is what the work needs.
    pub no_stall_suits(needs) = "no stall suits it (needed: {needs})", "kein Platz passt dazu (gebraucht: {needs})";
    /// Between two needs, one after the other.
    pub then = ", then ", ", dann ";
    /// A stall that work needs.
    pub a_lift = "lift", "Bühne";
    /// A stall that work needs: one without a lift.
    pub a_flat_one = "flat", "ohne Bühne";
    /// A stall that work needs.
    pub any_stall = "any", "egal welcher";
    /// Work needs no stall.
    pub needs_none = "none", "keiner";
    /// How it is mended that no stall suits.
    pub name_one_that_suits = "name a stall that does, or split the work where it can roll", "einen nennen, der passt, oder die Arbeit teilen, wo es rollen kann";
    /// Several vehicles are told in one stall.
    pub stand_in_it(orders) = "{orders} stand in it", "darauf stehen {orders}";
    /// Between two names.
    pub and = " and ", " und ";
    /// How it is mended that several vehicles are in one stall.
    pub one_vehicle_a_stall = "a stall holds one vehicle: say where the others stand", "auf einen Platz passt ein Fahrzeug: angeben, wo die anderen stehen";
    /// Where something is wrong: an order that should be rolled out.
    pub order_to_roll_out = "the order to roll out", "der Auftrag, der hinausrollen soll";
    /// The order to roll out is unknown.
    pub it_is_not_there = "it is not there", "es gibt ihn nicht";
    /// How it is mended that the order to roll out is unknown.
    pub name_one_on_the_floor = "name one that is on the floor", "einen nennen, der in der Halle ist";
    /// A vehicle is to be rolled out where nothing waits.
    pub no_wait = "the phase to roll it out for is no wait", "dort, wo es hinausrollen soll, wird nicht gewartet";
    /// How it is mended that nothing waits.
    pub name_the_wait = "name the wait that it would spend outside", "nennen, worauf es draußen warten würde";
    /// A vehicle to be rolled out is not apart.
    pub can_roll_as_it_is = "it can roll as it is", "es kann rollen, so wie es ist";
    /// How it is mended that a vehicle to be rolled out is not apart.
    pub just_roll_it_out = "just roll it out", "einfach hinausrollen";
    /// Work that is put into the plan: taking apart again what was put together to roll out.
    pub open_up_again = "open up again", "wieder öffnen";
    /// Work that is put into the plan: putting together so that it can be rolled out.
    pub button_up = "button up", "zusammenbauen";
}
