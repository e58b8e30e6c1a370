//! How an order and its things stand.

use phrases::phrases;

phrases! {
    /// There is no order of this number.
    pub no_order(number) = "there is no order {number}", "es gibt keinen Auftrag {number}";
    /// There is no such snag.
    pub no_snag = "there is no such snag on this order", "auf diesem Auftrag gibt es dieses Problem nicht";
    /// There is no such vehicle.
    pub no_vehicle = "there is no such vehicle", "dieses Fahrzeug gibt es nicht";
    /// There is no such customer.
    pub no_customer = "there is no such customer", "diesen Kunden gibt es nicht";

    /// Who says a torque, behind it.
    pub comma_by(who) = ", by {who}", ", nach {who}";
    /// Between the passes of a torque.
    pub then = ", then ", ", dann ";
    /// Between states that several people told differently.
    pub or = " or ", " oder ";

    /// Where a vehicle stands whose stall has no name.
    pub a_stall = "a stall", "ein Platz";
    /// Where a vehicle stands.
    pub yard = "yard", "Hof";
    /// Where a vehicle stands: not here.
    pub away = "away", "außer Haus";

    /// What holds the vehicle, in one word: opened by mistake.
    pub word_voided = "voided", "storniert";
    /// What holds the vehicle, in one word: it left.
    pub word_left = "left", "weg";
    /// What holds the vehicle: it is not here yet.
    pub word_comes = "to come", "kommt noch";
    /// What holds the vehicle: it left, and something came in after.
    pub word_left_look = "left, look", "weg, nachsehen";
    /// What holds the vehicle, in one word: somebody has to agree.
    pub word_consent = "consent", "Zustimmung";
    /// What holds the vehicle: something of it is away to be worked on.
    pub word_machine_work = "machine work", "Fremdarbeit";
    /// What holds the vehicle, in one word: a part is on its way.
    pub word_part = "part", "Ersatzteil";
    /// What holds the vehicle, in one word: a snag.
    pub word_snag = "snag", "Problem";
    /// What holds the vehicle: somebody works on it.
    pub word_at_work = "at work", "in Arbeit";
    /// What holds the vehicle, in one word: a test is missing.
    pub word_test = "test", "Prüfung";
    /// What holds the vehicle, in one word: papers are missing.
    pub word_papers = "papers", "Papiere";
    /// What holds the vehicle, in one word: nothing, it can be collected.
    pub word_ready = "ready", "fertig";

    /// A group left in the middle: what it is, how many are done of how many.
    pub some_of(what, done, all) = "{what} {done} of {all}", "{what} {done} von {all}";
    /// A group left in the middle, and what was being done with it.
    pub group_and_doing(group, doing) = "{group}, {doing}", "{group}, {doing}";
    /// What was being done with a group: put on by hand.
    pub on_by_hand = "on by hand", "von Hand dran";
    /// What was being done with a group: a tightening pass.
    pub pass(n) = "pass {n}", "Durchgang {n}";
    /// What was being done with a group: tightened.
    pub tight = "tight", "fest";

    /// A part of the record that takes nothing: an order.
    pub stuck_order(number) = "Order {number}", "Auftrag {number}";
    /// A part of the record that takes nothing: an order.
    pub stuck_order_unnumbered = "An order that has no number yet", "Ein Auftrag, der noch keine Nummer hat";
    /// A part of the record that takes nothing: a vehicle without a name.
    pub stuck_vehicle = "A vehicle", "Ein Fahrzeug";
    /// A part of the record that takes nothing: a customer without a name.
    pub stuck_customer = "A customer", "Ein Kunde";
    /// A part of the record that takes nothing: a map.
    pub stuck_map(map) = "Map {map}", "Vorlage {map}";
    /// A part of the record that takes nothing: the shop.
    pub stuck_shop = "The shop itself, with new orders", "Die Werkstatt selbst, mit neuen Aufträgen";

    /// A newer reading of a thing: what would be otherwise.
    pub word_known_now = "its word is known now", "die Bezeichnung ist jetzt bekannt";
    /// A newer reading of a thing: what would be otherwise.
    pub word_not_known_now = "its word is not known any more", "die Bezeichnung ist nicht mehr bekannt";
    /// A newer reading of a thing: its system.
    pub belongs_to(system) = "belongs to: {system}", "gehört zu: {system}";
    /// A newer reading of a thing: it is of the safety class.
    pub people_are_hurt = "people are hurt if it fails", "Menschen kommen zu Schaden, wenn es versagt";
    /// A newer reading of a thing: it is not of the safety class any more.
    pub stricter_no_more = "the stricter rules hold for it no more", "die strengeren Regeln gelten dafür nicht mehr";
    /// A newer reading of a thing: work that is due then.
    pub owed_too(work) = "owed too: {work}", "auch noch zu tun: {work}";
    /// A newer reading of a thing: work that is not due then.
    pub not_owed(work) = "not owed: {work}", "nicht mehr zu tun: {work}";
    /// A newer reading of a thing.
    pub other_gates = "other gates wait for it", "es hält bei anderen Freigaben auf";
}
