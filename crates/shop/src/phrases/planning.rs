//! Rows of a plan, why they are there, and what keeps a plan from being made.

use phrases::phrases;

phrases! {
    /// What a row of the plan comes to: a rag or clamp is put in.
    pub put_in = "in", "rein";
    /// What a row of the plan comes to: a rag or clamp is taken out.
    pub removed = "removed", "raus";
    /// What a row of the plan comes to: a fluid.
    pub drained = "drained", "abgelassen";
    /// What a row of the plan comes to: a fluid.
    pub filled_to_its_level = "filled to its level", "aufgefüllt";
    /// What a row of the plan comes to: work is due.
    pub owed = "owed", "fällig";
    /// What a row of the plan comes to: work is done.
    pub done = "done", "erledigt";
    /// What a row of the plan comes to: bolts are on by hand.
    pub on_not_tight = "on, not tight", "dran, nicht fest";
    /// A thing and what it comes to: top hose off.
    pub moved(what, to) = "{what} {to}", "{what} {to}";

    /// Where a plan can't be made.
    pub the_plan = "the plan", "der Plan";
    /// How it is mended that there is no plan.
    pub allow_or_name_others = "allow what was ruled out, or name other items", "Ausgeschlossenes erlauben oder andere Teile nennen";
    /// Why there is no plan: a move, or its place, was ruled out.
    pub nothing_replaces(step) = "nothing replaces “{step}”, and it or its place was ruled out", "nichts ersetzt „{step}“, und dieser Handgriff oder sein Ort ist ausgeschlossen";
    /// Why there is no plan: a move, and what it needs.
    pub wants_first(step, need) = "{step} wants {need} first, which cannot be had", "{step} braucht erst {need}, und das geht nicht";
    /// Why there is no plan: the map does not know a thing.
    pub map_has_no(item) = "the map has no {item}", "die Vorlage kennt {item} nicht";
    /// How it is mended that the map does not know a thing.
    pub name_as_the_map_does = "name an item as the map does", "ein Teil so nennen wie die Vorlage";
    /// Why there is no plan: moves that wait for each other.
    pub wait_for_each_other(steps) = "these wait for each other: {steps}", "diese warten aufeinander: {steps}";
    /// How it is mended that moves wait for each other.
    pub allow_another_way = "allow another way, or mend the map", "einen anderen Weg erlauben oder die Vorlage verbessern";

    /// The times of a move.
    pub out_and_back(out, back) = "{out} min out, {back} back", "{out} min raus, {back} rein";

    /// Why a row is in the plan: it comes off with another thing and has to be new.
    pub comes_off_with(what) = "it comes off with the {what} and may not go back", "geht mit ab ({what}) und darf nicht wieder dran";
    /// A fluid that comes out: what the system holds, and what its drain gives.
    pub fluid_lost(fluid, holds, drains) = "{fluid}: {holds}, the drain gives {drains}", "{fluid}: {holds}, aus dem Ablass kommen {drains}";
    /// Work that is due later.
    pub owed_after(work, after) = "{work}, after {after}", "{work}, nach {after}";
    /// Why a row is in the plan.
    pub what_we_want = "it is what we want", "darum geht es";
    /// Why a row is in the plan: another needs it first.
    pub first_for(step) = "first, for: {step}", "zuerst, für: {step}";
    /// Why a row is in the plan: another made the work due.
    pub owed_by(step) = "owed by: {step}", "nötig durch: {step}";
    /// Why a row is in the plan.
    pub home_for_this = "it has to be home for this", "muss dafür an seinem Platz sein";
    /// Why a row is in the plan.
    pub you_asked_for_it = "you asked for it", "so verlangt";
    /// Why a row is in the plan: work that another left.
    pub owed_since(step) = "owed since: {step}", "fällig seit: {step}";
    /// Why a row is in the plan: it lets another go back.
    pub before(step) = "before: {step}", "vor: {step}";
    /// Why a row is in the plan.
    pub goes_home = "it goes home, and nothing waits for it", "kommt an seinen Platz, nichts wartet darauf";

    /// What has come about besides the plan: a stub.
    pub stub_stays(what, at, state) = "{what} {at} {state}: nothing moves it until its snag is resolved", "{what} {at} {state}: bewegt sich nicht, bis das Problem behoben ist";
    /// What has come about besides the plan: something is off that the map does not know.
    pub off_unknown(what) = "{what}, which the map does not know, is off too and goes home with the rest", "{what}, der Vorlage unbekannt, ist auch ab und kommt mit dem Rest wieder dran";
    /// What has come about besides the plan: something is off that is not needed.
    pub off_not_needed(what) = "{what}, which this way does not need, is off too and goes home with the rest", "{what}, dafür nicht nötig, ist auch ab und kommt mit dem Rest wieder dran";

    /// What is wrong with a map: what can't go back once a thing is off.
    pub no_legal_way_back(item, steps) = "{item}: once it is off there is no legal way back for {steps}", "{item}: ist es ab, gibt es keinen erlaubten Weg zurück für {steps}";
    /// What is wrong with a map: nothing leads to a thing, and why.
    pub nobody_gets_at(item, why) = "nobody can get at {item}: {why}", "niemand kommt heran an {item}: {why}";

    /// Where something stands other than the maker fitted it: at which positions.
    pub at_positions(at) = "at {at}: ", "an {at}: ";
    /// Something stands other than the maker fitted it: where, and what holds now.
    pub now(at, what) = "{at}now {what}", "{at}jetzt {what}";
    /// What a thing is called that nobody described.
    pub not_described = "something not described yet", "etwas noch nicht Beschriebenes";

    /// Why nothing can be learned from an order.
    pub nothing_to_learn(number) = "nothing came off in order {number}, so that there is nothing to learn", "in Auftrag {number} ging nichts ab, also ist nichts zu lernen";
    /// What can't be read.
    pub the_map = "the map", "die Vorlage";
    /// How it is mended that a map can't be read.
    pub mend_its_newest = "mend its newest version first", "erst ihre neueste Version in Ordnung bringen";

    /// Why there is no plan: a move that is asked for is not on the map.
    pub no_such_move(id) = "{id}: no such move", "{id}: diesen Handgriff gibt es in der Vorlage nicht";
    /// How it is mended that a move is not on the map.
    pub name_a_move = "name one of the map's moves", "einen Handgriff der Vorlage nennen";
    /// Why there is no plan: two moves of the map are called alike.
    pub two_moves_named(id) = "{id}: two moves have this name", "{id}: zwei Handgriffe heißen so";
    /// How it is mended that two moves are called alike.
    pub rename_one = "rename one", "einen davon umbenennen";
    /// Why there is no plan: a move of the map goes the wrong way. The states are code words.
    pub not_outward(id, from, to) = "{id}: from {from} to {to} does not lead away from home", "{id}: von {from} nach {to} führt nicht vom Ausgangszustand weg";
    /// How it is mended that a move goes the wrong way.
    pub state_the_way_out = "state the move out, its way back follows", "den Weg hinaus angeben; der Weg zurück folgt daraus";
    /// Why there is no plan: a thing's moves of the map do not follow on each other.
    pub not_one_way(item, id) = "{item}: its moves do not join into one way out from home (at {id})", "{item}: die Handgriffe ergeben keinen durchgehenden Weg hinaus (bei {id})";
    /// How it is mended that moves do not follow on each other; `any` is a code word.
    pub join_the_moves = "let each start where the one before ends, and state other ways as `any` in needs", "jeden dort anfangen lassen, wo der vorige endet, und andere Wege bei dem, was zuerst nötig ist, als `any` angeben";
    /// Why there is no plan: a move of the map waits for its own thing.
    pub needs_itself(id, item) = "{id}: needs a state of its own item {item}", "{id}: braucht zuerst etwas vom eigenen Teil {item}";
    /// How it is mended that a move waits for its own thing; `from` is a code word.
    pub take_out_of_the_need = "`from` says that already, take it out of the need", "`from` sagt das schon; dort herausnehmen";
    /// Why there is no plan: the map is too large.
    pub too_many_moves(count, limit) = "{count} moves are more than the {limit} that can be planned at once", "{count} Handgriffe sind mehr als die {limit}, die auf einmal geplant werden können";
    /// How it is mended that the map is too large.
    pub leave_out_far_items = "leave out items far from the target", "Teile weit weg vom Ziel weglassen";
    /// Why there is no plan: the map's times are too long.
    pub times_too_long(limit) = "the times add up to more than {limit} minutes", "die Zeiten ergeben zusammen mehr als {limit} Minuten";
    /// How it is mended that times are too long.
    pub correct_longest = "correct the longest", "die längste berichtigen";
    /// Why there is no plan: a bolt that snapped is in the way, and how it is mended. The states are code words.
    pub stub_in_the_way(item, wanted) = "{item}: nothing leads to {wanted} from where it stands: a stub is in the way, resolve its snag first", "{item}: von hier geht es nicht weiter; ein Schraubenrest ist im Weg, erst das Problem beheben";
    /// Why there is no plan: nothing takes the thing out. The states are code words.
    pub nothing_leads_there(item, wanted) = "{item}: nothing leads to {wanted} from where it stands", "{item}: von hier geht es nicht weiter";
    /// How it is mended that nothing takes the thing out.
    pub add_its_move = "add its move to the map", "den Handgriff in die Vorlage aufnehmen";
    /// Why there is no plan: a place was asked for.
    pub nothing_at_place = "nothing can be done at a place that was asked for", "an einem verlangten Ort ist nichts zu tun";
    /// How it is mended that nothing is done at a place.
    pub take_the_place_out = "take the place out", "den Ort herausnehmen";
    /// Why there is no plan: what has to be first on the way contradicts itself.
    pub no_sequence = "no sequence of moves keeps every need on the way to the target", "in keiner Reihenfolge ist auf dem Weg zum Ziel alles da, was zuerst nötig ist";
    /// How it is mended that no sequence is possible.
    pub check_needs_in_place = "check needs that ask for something in place", "prüfen, wo etwas dran sein muss";
    /// Why there is no plan: a thing would go back where nothing may be done.
    pub home_at_ruled_out(id, place) = "{id}: its way back is at {place}, which was ruled out", "{id}: zurück geht es nur von dort: {place}, und das ist ausgeschlossen";
    /// How it is mended that a thing goes back where nothing may be done.
    pub allow_the_place = "allow the place or leave the item out", "den Ort erlauben oder das Teil weglassen";
    /// Why there is no plan: the search gave up.
    pub no_plan_within(states) = "no plan was found within {states} states", "in {states} Zuständen fand sich kein Plan";
    /// How it is mended that the search gave up.
    pub allow_more_states = "allow more", "mehr erlauben";
}
