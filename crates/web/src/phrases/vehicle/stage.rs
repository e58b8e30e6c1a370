//! What is said in a stage of a plan.

use phrases::phrases;

phrases! {
    /// Heading, where the order has no plan.
    pub no_plan_yet = "No plan yet", "Noch kein Plan";
    /// Under that heading.
    pub pick_what_to_get_at = "Pick what to get at, and the stages follow. Without one, say what comes off.",
        "Auswählen, wo man ran muss, dann folgen die Schritte. Ohne Plan angeben, was abkommt.";
    /// The large press under that.
    pub make_a_plan = "Make a plan", "Plan machen";
    /// Heading, where what is left of the plan cannot be done.
    pub no_way_by_this_plan = "No way by this plan", "Mit diesem Plan geht es nicht";
    /// The large press under that.
    pub change_the_plan = "Change the plan", "Plan ändern";
    /// Folded: how many things stand otherwise than the plan supposed.
    pub things_not_as_planned(n) = ["{n} thing is not as planned", "{n} things are not as planned"],
        ["{n} Teil ist nicht wie geplant", "{n} Teile sind nicht wie geplant"];
    /// Under that.
    pub stages_follow_what_is_so = "The stages follow what is so.", "Die Schritte richten sich nach dem, was ist.";
    /// The large press: all pieces are on, and have their torque.
    pub on_and_tight = "On and tight", "Dran und fest";
    /// The large press: all pieces are on, and have the first of several torques.
    pub on_pass_1_done = "On, pass 1 done", "Dran, Durchgang 1 gemacht";
    /// Small words on that press: with which group one begins.
    pub the_others_after_it(label) = "{label}, the others after it", "{label}, die anderen danach";
    /// How many stages of the plan are still to come.
    pub stages_left(n) = ["{n} stage left", "{n} stages left"], ["noch {n} Schritt", "noch {n} Schritte"];
    /// Beside the drawing of a joint with a sequence.
    pub begin_at_the_ring = "Begin at the ring", "Beim Ring anfangen";
    /// Beside the drawing of a joint, in small words.
    pub drawn_by_count = "drawn by their count, not to scale", "nach Anzahl gezeichnet, nicht maßstäblich";
    /// Before whoever gives the torque.
    pub torque_by = "Torque by ", "Drehmoment laut ";
    /// Before work that a stage leads to.
    pub still_to_do_afterwards = "Still to do afterwards: ", "Danach noch zu tun: ";
    /// Row to the page on which things come off.
    pub something_else_came_off = "Something else came off", "Noch etwas ist ab";
    /// Press: the pieces are on, the torque comes later.
    pub not_tight_yet = "Not tight yet", "Noch nicht fest";
    /// How many pieces a stage takes off.
    pub pieces_out(n) = ["{n} piece out", "{n} pieces out"], ["{n} Stück raus", "{n} Stück raus"];
    /// How many pieces a stage puts back.
    pub pieces_back(n) = ["{n} piece back", "{n} pieces back"], ["{n} Stück wieder dran", "{n} Stück wieder dran"];
    /// Which torque of how many; more stands behind it.
    pub pass_of(nth, total) = "pass {nth} of {total} · ", "Durchgang {nth} von {total} · ";
    /// A group, and that all of it is meant.
    pub group_all(label, n) = "{label}, all {n}", "{label}, alle {n}";
    /// Before the new piece that goes on.
    pub new_piece = "New: ", "Neu: ";
    /// Field: litres of a fluid that came out.
    pub came_out_of(label) = "Came out: {label}", "Herausgekommen: {label}";
    /// Field: litres of a fluid that was filled in.
    pub poured_in_of(label) = "Poured in: {label}", "Eingefüllt: {label}";
    /// Folded: not all of a group moved.
    pub only_some_of_a_group = "Only some of a group", "Nur einige einer Gruppe";
    /// Behind a group, over its numbers.
    pub which_of_group = ": which", ": welche";
    /// What is different on this vehicle than its map says, such as a thread that was repaired.
    pub vehicle_differs(how) = "This vehicle differs {how}. That goes before the map.",
        "Dieses Fahrzeug weicht ab, {how}. Das gilt vor der Vorlage.";
    /// Before the group that is tightened.
    pub tighten_this = "Tighten: ", "Festziehen: ";
    /// Before whoever gives the torque, alone in its line.
    pub by = "By ", "Laut ";
    /// Press: one of several torques is given.
    pub pass_done(nth) = "Pass {nth} done", "Durchgang {nth} gemacht";
    /// Press: what could be tightened is left for now.
    pub later_go_on = "Later, go on", "Später, weiter";
    /// Heading: what was wanted is free.
    pub you_are_there = "You are there", "Alles liegt frei";
    /// Behind an open snag.
    pub close = "close", "abschließen";
    /// Where a snag is in the way of putting things back.
    pub put_this_right_first = "Put this right first: what it holds up has no way back yet.",
        "Das zuerst beheben: was daran hängt, kann noch nicht zurück.";
    /// What comes next: the repair, then so many stages of so many minutes.
    pub do_the_repair(n, minutes) = ["Do the repair. Then the way back: {n} stage, {minutes} min.", "Do the repair. Then the way back: {n} stages, {minutes} min."],
        ["Jetzt die Reparatur. Dann der Rückweg: {n} Schritt, {minutes} min.", "Jetzt die Reparatur. Dann der Rückweg: {n} Schritte, {minutes} min."];
    /// Before what is replaced by new.
    pub new_ones_go_on = "New ones go on: ", "Neu kommen dran: ";
    /// The large press under that.
    pub now_the_way_back = "Now the way back", "Jetzt der Rückweg";
    /// Press beside that.
    pub get_at_more = "Get at more", "Noch mehr freilegen";
    /// Heading at the end of a plan to make it roll.
    pub nothing_in_the_way_of_rolling = "Nothing is in the way of rolling", "Dem Rollen steht nichts im Weg";
    /// Press under that, to its gate.
    pub cleared_to_roll = "Cleared to roll?", "Freigabe zum Rollen?";
    /// Heading at the end of a plan.
    pub everything_by_the_map_is_home = "Everything by the map is home", "Alles nach der Vorlage ist an seinem Platz";
    /// Behind a thing that stays off.
    pub its_snag_is_not_resolved = ": its snag is not resolved", ": das Problem ist nicht behoben";

    /// What became of screws that need no torque.
    pub on_snug_and_checked = "on, snug and checked", "dran, handfest und geprüft";
    /// What a group comes to with its torque.
    pub on_with_torque(torque) = "on, {torque}", "dran, {torque}";
    /// What a group comes to with the first of several torques.
    pub on_pass_1_at(torque) = "on, pass 1 at {torque}", "dran, Durchgang 1 mit {torque}";
    /// Hint of the field for litres, with what the map knows.
    pub with_its_unit_it_holds(holds) = "with its unit; it holds {holds}", "mit Einheit; es fasst {holds}";

    /// Heading: which of the things of a stage something is wrong with.
    pub what_is_it_with = "What is it with?", "Woran liegt es?";
    /// Row: none of those.
    pub something_else = "Something else", "Etwas anderes";
    /// Press.
    pub back_to_the_stage = "Back to the stage", "Zurück zum Schritt";
}
