//! What finished work has taught of a kind of vehicle, and what is asked about it.

use phrases::phrases;

phrases! {
    /// A question: could a thing be moved before another is? What comes off, and after what else.
    pub could_come_off(what, before) = "Could the {what} come off before the {before}?", "Geht das auch: {what} ab, und danach erst {before}?";
    /// The same question of a thing that comes out.
    pub could_come_out(what, before) = "Could the {what} come out before the {before}?", "Geht das auch: {what} raus, und danach erst {before}?";
    /// The same question of bolts that are cracked loose.
    pub could_be_cracked(what, before) = "Could the {what} be cracked loose before the {before}?", "Geht das auch: {what} lösen, und danach erst {before}?";
    /// The same question of a plug that is unplugged.
    pub could_be_unplugged(what, before) = "Could the {what} be unplugged before the {before}?", "Geht das auch: {what} abziehen, und danach erst {before}?";
    /// The same question of a fluid.
    pub could_be_drained(what, before) = "Could the {what} be drained before the {before}?", "Geht das auch: {what} ablassen, und danach erst {before}?";
    /// The same question of something that is put in.
    pub could_go_in(what, before) = "Could the {what} go in before the {before}?", "Geht das auch: {what} rein, und danach erst {before}?";
    /// The same question of work.
    pub could_be_done(what, before) = "Could the {what} be done before the {before}?", "Geht das auch: {what} machen, und danach erst {before}?";
    /// In such a question, what else is done: bolts are cracked loose.
    pub are_cracked(what) = "{what} are cracked loose", "{what} lösen";
    /// In such a question, what else is done: a plug is unplugged.
    pub is_unplugged(what) = "{what} is unplugged", "{what} abziehen";
    /// In such a question, what else is done: a fluid is drained.
    pub is_drained(what) = "{what} is drained", "{what} ablassen";
    /// In such a question, what else is done: something is put in.
    pub is_in(what) = "{what} is in", "{what} rein";
    /// What is done with a thing: a fluid.
    pub drained = "drained", "abgelassen";
    /// What is done with a thing: something that stays inside for a while.
    pub put_in = "put in", "rein";
    /// What is done with a thing: bolts.
    pub cracked_loose = "cracked loose", "gelöst";
    /// A thing and what is done with it.
    pub step(what, done) = "{what} {done}", "{what} {done}";
    /// What was told of a thing: its count.
    pub how_many = "how many", "wie viele";
    /// What was told of a thing: its size.
    pub size = "size", "Größe";
    /// What was told of a thing: the length of one piece.
    pub length_at(at) = "length at {at}", "Länge an {at}";
    /// What was told of a thing: its torque.
    pub torque = "torque", "Drehmoment";
    /// What was told of a thing: where it is worked on.
    pub place = "where", "wo";
    /// What was told of a thing: a tool.
    pub tool = "tool", "Werkzeug";
    /// What was told of a thing: whether the old one goes back.
    pub goes_back = "goes back", "kommt wieder dran";
    /// What was told of a thing: work that is due after it.
    pub owed_after_it = "owed after it", "danach fällig";
    /// What was told of a thing: the old one did not go back.
    pub a_new_one = "a new one went on", "ein neues kam dran";
    /// Why two names may be one thing.
    pub the_same_words = "the same words", "dieselben Wörter";
    /// Why two names may be one thing.
    pub one_and_many = "one and many", "Einzahl und Mehrzahl";
    /// Why two names may be one thing: what the trade calls both.
    pub both_are(sort) = "both are {sort}", "beides ist {sort}";
    /// Why two names may be one thing.
    pub letters_differ(n) = ["one letter differs", "{n} letters differ"], ["ein Buchstabe ist anders", "{n} Buchstaben sind anders"];
    /// Why two names may be one thing, and in how many orders each stands.
    pub in_orders(why, one, other) = "{why}; in {one} and {other}", "{why}; in {one} und {other}";
    /// How many orders.
    pub orders(n) = ["{n} order", "{n} orders"], ["{n} Auftrag", "{n} Aufträgen"];
    /// What is left out: two answers that can't both be.
    pub answers_exclude(one, other) = "{one} before {other}: answers exclude each other; until somebody answers again it counts as needed", "{one} vor {other}: Antworten widersprechen sich; bis jemand neu antwortet, gilt es als nötig";
    /// What is left out: orders that can't be brought into one sequence.
    pub goes_in_a_circle(one, other) = "{one} before {other}: the orders go round in a circle; this is the least sure of it and was left out", "{one} vor {other}: die Aufträge gehen im Kreis; das hier ist das Unsicherste daran und blieb weg";
    /// People or sources: all but the last, and the last.
    pub and(rest, last) = "{rest} and {last}", "{rest} und {last}";
    /// Nobody told it.
    pub nobody_named = "nobody named", "niemand genannt";
    /// Who told it: the map.
    pub the_map = "the map", "die Vorlage";
    /// Who told it: what the trade says of a name.
    pub the_trade = "the trade", "die Fachwörter";
    /// Why a question is asked: a step before another, and how that is known.
    pub before_how(first, second, how) = "{first} before {second}: {how}", "{first} vor {second}: {how}";
    /// What contradicts itself: of which thing, in which respect.
    pub differs_in(item, about) = "{item}: {about}?", "{item}: {about}?";
    /// What contradicts itself: the sort of a thing.
    pub what_is_it(item) = "{item}: what is it?", "{item}: was ist es?";
    /// What was chosen of several, and by whom.
    pub chosen_by(value, who) = "{value}, by {who}", "{value}, von {who}";
    /// An answer.
    pub yes = "Yes", "Ja";
    /// An answer.
    pub no = "No", "Nein";
    /// An answer.
    pub can_not_say = "Can't say", "Weiß nicht";
    /// What was answered, and by whom.
    pub said_by(answer, who) = "{answer}, {who}", "{answer}, {who}";
    /// Why nothing is asked now: who is at such a vehicle, on which order.
    pub is_at_one(who, number) = "{who} is at one just now, order {number}", "{who} ist gerade an einem, Auftrag {number}";
    /// What went back otherwise than it came off, and how that is known.
    pub went_back_before(one, other, how) = "{one} went back before {other}, and came off before it as well: {how}", "{one} kam vor {other} wieder dran und ging auch davor ab: {how}";
    /// Who told something, and how often.
    pub who_times(n, who) = ["{who}, once", "{who}, {n} times"], ["{who}, einmal", "{who}, {n}-mal"];
    /// How a sequence is known: a person answered.
    pub stated = "stated", "angegeben";
    /// How a sequence is known.
    pub seen_once = "seen once", "einmal gesehen";
    /// How a sequence is known: seen so often, always with the same people.
    pub seen_with(times, who) = "seen {times} times, always with {who}: one witness, it may be a habit", "{times}-mal gesehen, immer mit {who}: ein Zeuge, kann Gewohnheit sein";
    /// How a sequence is known: seen so often, by so many that do not depend on each other.
    pub seen_by_witnesses(times, witnesses) = "seen {times} times, {witnesses} witnesses", "{times}-mal gesehen, {witnesses} Zeugen";
    /// How a sequence is known: either was seen.
    pub seen_both_ways(there, back) = "seen both ways, {there} and {back}", "in beiden Reihenfolgen gesehen, {there} und {back}";
    /// How a sequence is known: both were told at once.
    pub told_in_one_go = "told in one go, once", "in einem Zug genannt, einmal";
    /// How a sequence is known: both were always told at once.
    pub never_apart(times) = "never seen apart, {times} times", "nie getrennt gesehen, {times}-mal";
    /// How a sequence is known: it is not the same on all vehicles.
    pub differs_by(how, variant) = "{how}; differs by {variant}", "{how}; je nach {variant}";
    /// Two steps of which either sequence was seen, and how that is known.
    pub both_ways(first, second, how) = "{first}, {second}: {how}", "{first}, {second}: {how}";
    /// A step that only some vehicles have, and in how many orders it was.
    pub only_with(step, variant, orders) = "{step}: only with {variant}, {orders}", "{step}: nur mit {variant}, in {orders}";
    /// One of several ways to a step: what it takes, and in how many orders it was.
    pub way(steps, orders) = "{steps} ({orders})", "{steps} (in {orders})";
    /// Between the things of one way.
    pub and_between = " and ", " und ";
    /// Between several ways.
    pub or_between = ", or ", ", oder ";
    /// Several ways to a step.
    pub before_ways(step, ways) = "Before {step}: {ways}", "Vor {step}: {ways}";
    /// Where nothing is known of a kind of vehicle.
    pub nothing_of(kind) = "there is neither finished work nor a map of {kind}", "es gibt weder fertige Arbeit noch eine Vorlage zu {kind}";
    /// How it is mended that nothing is known of a kind of vehicle.
    pub hand_one_over = "hand an order of it over first, or write a map", "erst einen Auftrag dazu übergeben oder eine Vorlage schreiben";
    /// Why no map can be made of a kind of vehicle.
    pub nothing_came_off = "nothing came off in any order of this kind", "bei Aufträgen dieser Art ging nichts ab";
    /// How it is mended that no map can be made.
    pub record_what_comes_off = "record what comes off, and hand the order over", "aufschreiben, was abgeht, und den Auftrag übergeben";
    /// What is wrong with a map, and how it is mended.
    pub fault_and_mend(what, mend) = "{what}; {mend}", "{what}; {mend}";
    /// In a new map: what a thing comes off after.
    pub after(need) = "after {need}", "nach {need}";
    /// In a new map: what a thing comes off after, as a guess.
    pub after_as_a_guess(need) = "after {need}, a guess", "nach {need}, vermutet";
    /// In a new map: what it needs to go back, where that is not the way out turned round.
    pub goes_back_once(need) = "going back: {need}", "Einbau: {need}";
    /// In a new map: a torque, and who says so.
    pub torque_by(torque, source) = "{torque}, by {source}", "{torque}, nach {source}";
    /// Between the passes of a torque.
    pub then = ", then ", ", dann ";
    /// In a new map: minutes off.
    pub minutes_off(minutes) = "{minutes} min off", "{minutes} min ab";
    /// In a new map: minutes back.
    pub minutes_back(minutes) = "{minutes} min back", "{minutes} min dran";

    /// A kind of thing.
    pub kind_part = "part", "Teil";
    /// A kind of thing.
    pub kind_cover = "cover", "Abdeckung";
    /// A kind of thing.
    pub kind_hose = "hose", "Schlauch";
    /// A kind of thing.
    pub kind_seal = "seal", "Dichtung";
    /// A kind of thing.
    pub kind_belt = "belt", "Riemen";
    /// A kind of thing.
    pub kind_fasteners = "fasteners", "Schrauben";
    /// A kind of thing.
    pub kind_clips = "clips", "Clips";
    /// A kind of thing.
    pub kind_connector = "connector", "Stecker";
    /// A kind of thing.
    pub kind_fluid = "fluid", "Flüssigkeit";
    /// A kind of thing.
    pub kind_work = "work", "Arbeit";
    /// A kind of thing: rags, clamps and the like that are put in for a while.
    pub kind_put_in = "put-in", "vorübergehend drin";

    /// Before what was learned: there is nothing.
    pub no_job_seen = "no job was seen; nothing is known of the sequence", "kein Auftrag ist da; über die Reihenfolge ist nichts bekannt";
    /// Before what was learned.
    pub one_job_only = "one job only: the sequence is the one it went by, and nothing tells which of it is needed", "nur ein Auftrag: Die Reihenfolge ist die, in der es ging; was davon nötig ist, sagt nichts";
    /// Before what was learned: there are more steps than are weighed against each other.
    pub rarest_left_out(n) = "the {n} rarest steps are left out; join names that mean one thing", "die {n} seltensten Handgriffe sind weggelassen; Namen verbinden, die dasselbe meinen";
}
