//! What somebody typed that cannot be, or hardly is.

use phrases::phrases;

phrases! {
    /// A size that was told otherwise before.
    pub told_before(before, now) = "{before} was told before, not {now}", "vorher wurde {before} genannt, nicht {now}";
    /// A number of parts that is none.
    pub no_number_of_parts(quantity) = "{quantity} is no number of parts", "{quantity} ist keine Stückzahl";
    /// How a number of parts is mended.
    pub write_how_many = "write how many are needed, such as 1", "schreiben, wie viele nötig sind, etwa 1";
    /// A figure below nought.
    pub below_nought(figure) = "{figure} is below 0", "{figure} liegt unter 0";
    /// How a price below nought is mended.
    pub write_nought_or_more = "write 0 or more; money given back is a line of the price", "0 oder mehr schreiben; zurückgegebenes Geld ist eine Zeile im Preis";
    /// A vehicle leaves, and nobody read its odometer.
    pub odometer_not_noted = "nobody noted the odometer on the way out", "der Kilometerstand bei der Übergabe ist nicht notiert";
    /// What a page asks where something hardly can be so.
    pub look_again_press_again = "look again; if it is so, press once more", "noch einmal hinsehen; stimmt es, noch einmal drücken";
    /// How an odometer reading is mended.
    pub write_what_it_shows = "write what it shows, with its unit, such as 148200 km", "schreiben, was er anzeigt, mit Einheit, etwa 148200 km";
    /// An odometer reading that is none.
    pub no_odometer_reading(text) = "{text} is no odometer reading", "{text} ist kein Kilometerstand";
    /// An odometer reading below nought.
    pub odometer_below_nought(text) = "{text}: no odometer stands below 0", "{text}: kein Kilometerstand liegt unter 0";
    /// An odometer reading that few reach.
    pub more_than_vehicles_reach(text) = "{text} is more than almost any vehicle reaches", "{text} ist mehr, als fast jedes Fahrzeug schafft";
    /// An odometer reading that is less than on the last visit.
    pub less_than_last_visit(before, now) = "on the last visit it was {before}, and now {now}", "beim letzten Besuch waren es {before}, jetzt {now}";
    /// An odometer reading that is less than on the way in.
    pub less_than_on_the_way_in(before, now) = "on the way in it was {before}, and now {now}", "bei der Annahme waren es {before}, jetzt {now}";
    /// How an amount of a fluid is mended.
    pub write_with_litres = "write it with its unit, such as 5.5 L", "mit Einheit schreiben, etwa 5,5 L";
    /// An amount of a fluid that is none.
    pub no_amount(text) = "{text} is no amount", "{text} ist keine Menge";
    /// An amount of a fluid that is too much.
    pub more_than_it_holds(text) = "{text} is more than such a vehicle holds", "{text} ist mehr, als so ein Fahrzeug fasst";
    /// How a torque is mended.
    pub write_torque_with_unit = "write it with its unit, such as 30 Nm or 90 deg", "mit Einheit schreiben, etwa 30 Nm oder 90 deg";
    /// A torque that is none.
    pub no_torque_no_angle(text) = "{text} is no torque and no angle", "{text} ist weder Drehmoment noch Winkel";
    /// A torque of nought or less.
    pub tightens_nothing(text) = "{text} tightens nothing", "{text} zieht nichts fest";
    /// A torque that no bolt of that size bears.
    pub breaks_the_bolt(text, most) = "{text} breaks even the strongest bolt of that size, at about {most} N·m", "bei {text} reißt auch die festeste Schraube dieser Größe, sie hält etwa {most} N·m aus";
    /// A torque that is too much.
    pub more_than_bolts_take(text) = "{text} is more than a light vehicle's bolts take", "{text} ist mehr, als Schrauben am Pkw aushalten";
    /// An angle that is too much.
    pub more_than_two_turns(text) = "{text} is more than two whole turns", "{text} sind mehr als zwei ganze Umdrehungen";
    /// A vehicle that the shop knows already, with its owner.
    pub is_known(text, vehicle, owner) = "{text} is known: {vehicle}, {owner}", "{text} ist bekannt: {vehicle}, {owner}";
}
