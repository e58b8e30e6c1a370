//! What keeps an order, or all of it, from being planned, and what is done in which sequence.

use phrases::phrases;

phrases! {
    /// What keeps all of it from being planned.
    pub no_opening_hours = "no opening hours are told yet", "noch keine Öffnungszeiten eingetragen";
    /// What keeps all of it from being planned.
    pub no_stalls = "the shop has no stalls yet", "die Werkstatt hat noch keine Plätze";
    /// What keeps all of it from being planned.
    pub nobody_works = "nobody of the shop works on vehicles", "niemand in der Werkstatt arbeitet an Fahrzeugen";
    /// What keeps all of it from being planned.
    pub closed_ahead = "the shop is closed on all the days ahead", "die Werkstatt hat an allen kommenden Tagen zu";
    /// Why an order is not planned.
    pub record_unread = "a part of its record can't be read", "ein Teil der Aufzeichnung ist nicht lesbar";
    /// Why an order is not planned.
    pub not_here = "the vehicle is not here, and nobody told when it comes", "das Fahrzeug ist nicht da, und niemand hat gesagt, wann es kommt";
    /// Why an order is not planned: when it was to come.
    pub did_not_come(hour) = "not here yet: it was to come {hour}, and nobody told a new time", "noch nicht da: es sollte {hour} kommen, keine neue Zeit genannt";
    /// What a vehicle that is asked about on the phone is called.
    pub the_further_one = "the new one", "das neue";
    /// Why buttoning up is no question.
    pub never_waits_apart = "it never waits in its stall while it can't roll", "es wartet nie auf seinem Platz, solange es nicht rollen kann";
    /// What keeps all of it from being planned: a stall by its name.
    pub stalls_cross_in_a_circle(stall) = "the stalls that are crossed on the way to {stall} lead back to it", "die Plätze auf dem Weg zu {stall} führen zu ihm zurück";
    /// Why an order is not planned.
    pub another_in_its_stall = "another vehicle is told to stand in its stall", "auf seinem Platz soll ein anderes Fahrzeug stehen";
    /// Why an order is not planned.
    pub stall_not_told = "it can't roll, and nobody told in which stall it stands", "es kann nicht rollen, und niemand hat gesagt, auf welchem Platz es steht";
    /// Why an order is not planned.
    pub outside_and_cannot_roll = "it stands outside and can't roll: nobody works on it there", "es steht draußen und kann nicht rollen: dort arbeitet niemand daran";
    /// Why an order is not planned.
    pub no_minutes = "no minutes: nobody told how long the work takes", "keine Minuten: niemand hat gesagt, wie lange die Arbeit dauert";
    /// Why an order is not planned.
    pub told_minutes_worked(minutes) = "no minutes: the {minutes} that were told are worked", "keine Minuten: die genannten {minutes} sind abgearbeitet";
    /// Why an order is not planned.
    pub priced_hours_worked(hours) = "no minutes: the {hours} hours on the price are worked", "keine Minuten: die {hours} Stunden im Preis sind abgearbeitet";
    /// Why an order is not planned: a part or work sent out.
    pub no_day_told(what) = "no day was told for {what}", "für {what} ist kein Tag genannt";
    /// Why an order is not planned: a part or work sent out.
    pub was_due(what, day) = "{what} was due on {day} and is not here: no new day was told", "{what} sollte am {day} da sein und fehlt: kein neuer Tag genannt";
    /// Why an order is not planned.
    pub answer_did_not_come = "the answer was due and did not come: nobody told when it comes", "die Antwort war fällig und kam nicht: niemand hat gesagt, wann sie kommt";
    /// Why an order is not planned.
    pub waits_for_a_yes = "it waits for a yes, and nobody told when the answer comes", "es wartet auf eine Zustimmung, und niemand hat gesagt, wann die Antwort kommt";
    /// Why an order is not planned.
    pub only_who_learns = "nobody can do it: only who learns is here", "niemand kann es machen: es ist nur der Azubi da";
    /// Why an order is not planned: the system that somebody has to know.
    pub nobody_knows(system) = "nobody is told to know {system}", "bei niemandem ist eingetragen: {system}";
    /// Why an order is not planned: who is to do it, and the system.
    pub told_does_not_know(who, system) = "{who} is to do it and is not told to know {system}", "{who} soll es machen, eingetragen ist dort nicht: {system}";
    /// Under a plan: an order that does not fit into the hours that are planned.
    pub not_within_the_hours(order) = "{order} is not done within the hours given: plan more days, or give it to somebody else", "{order} wird in den vorhandenen Stunden nicht fertig: mehr Tage planen oder jemand anderem geben";
    /// What is waited for, in the plan of an order.
    pub the_customers_answer = "the customer's answer", "die Antwort des Kunden";
    /// What is done, in the plan of an order.
    pub take_apart = "take apart", "zerlegen";
    /// What is done, in the plan of an order.
    pub put_together = "put together", "zusammen\u{ad}bauen";
    /// What is done, in the plan of an order, where it is not known more closely.
    pub work = "work", "Arbeit";
    /// What is done at the end, in the plan of an order.
    pub road_test = "road test", "Probefahrt";
    /// An hour on another day, in the plan.
    pub day_hour(day, hour) = "{day} {hour}", "{day} {hour}";
}
