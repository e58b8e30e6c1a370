//! What is said of people and their devices.

use phrases::phrases;

phrases! {
    /// Title and heading of the owner's page of devices and people; also the way back to it.
    pub devices_and_people = "Devices and people", "Geräte und Leute";
    /// That page, where the program serves its own machine alone.
    pub this_machine_alone = "This program serves this machine alone, and asks no PIN.", "Dieses Programm bedient nur diesen Rechner und fragt nach keiner PIN.";
    /// That page, before the command that is typed for it.
    pub start_it_so = "To let phones and tablets in, start it so:", "Damit sich Handys und Tablets anmelden können, so starten:";
    /// Heading above what devices sent long after it was done.
    pub came_late = "Came late", "Verspätet";
    /// Below that heading.
    pub came_late_hint = "Kept as said. Look whether it can be so.", "Gespeichert, wie es eingegeben wurde. Nachsehen, ob es stimmen kann.";
    /// What came late: who, on which device.
    pub who_on_device(who, device) = "{who} on {device}", "{who} an {device}";
    /// What came late: why it stands there and when it came; a link follows.
    pub why_and_when_it_came(why, when) = "{why}, came {when}, ", "{why}, gekommen {when}, ";
    /// What came late: the link to its order or vehicle.
    pub what_it_is_about = "what it is about", "worum es geht";
    /// What came late: the press that takes it off the list.
    pub seen = "Seen", "Gesehen";
    /// Heading above the devices that were let in.
    pub devices = "Devices", "Geräte";
    /// Behind the name of the device that shows the page.
    pub this_one = " (this one)", " (dieses)";
    /// Where a device is used, in a list and as a choice.
    pub at_the_desk = "at the desk", "im Büro";
    /// Where a device is used, in a list and as a choice.
    pub at_the_vehicles = "at the vehicles", "an den Fahrzeugen";
    /// A device: when it was let in.
    pub joined(when) = ", joined {when}", ", dabei seit {when}";
    /// A device: when somebody signed in on it last.
    pub last_signed_in(when) = ", last signed in {when}", ", zuletzt angemeldet {when}";
    /// A device: who is signed in on it.
    pub now_used_by(who) = ", now {who}", ", jetzt {who}";
    /// The press that shuts a device out.
    pub put_out = "Put out", "Sperren";
    /// The fold with the devices that were shut out.
    pub devices_put_out(n) = ["{n} device put out", "{n} devices put out"], ["{n} Gerät gesperrt", "{n} Geräte gesperrt"];
    /// The large press that shows a code for one more device; also the title and heading of that page.
    pub let_a_device_in = "Let a device in", "Gerät anmelden";
    /// Heading above who has a PIN.
    pub pins = "PINs", "PINs";
    /// A person whose PIN was typed wrong too often.
    pub wrong_too_often = "wrong too often, has to wait", "zu oft falsch, muss warten";
    /// A person who has a PIN.
    pub has_a_pin = "has a PIN", "hat eine PIN";
    /// A person who has none.
    pub no_pin_yet = "no PIN yet", "noch keine PIN";
    /// The press that ends the wait after too many wrong PINs.
    pub let_try_again = "Let try again", "Wieder versuchen lassen";
    /// The press that takes somebody's PIN away.
    pub take_pin_away = "Take PIN away", "PIN löschen";
    /// Below the list of PINs.
    pub sets_one_at_the_next = "Who has no PIN sets one at the next sign-in. Let them do so while you stand by.", "Wer keine PIN hat, legt bei der nächsten Anmeldung eine fest. Am besten ist jemand dabei.";
    /// The way to the list of who opened pages with a customer's data; also that page's title and heading.
    pub who_opened_what = "Who opened what", "Wer was geöffnet hat";
    /// Beside the way to that list.
    pub last_ninety_days = "the last 90 days", "die letzten 90 Tage";
    /// Heading above the times after which a PIN is asked for.
    pub how_long = "How long", "Wie lange";
    /// Label of a number of minutes.
    pub minutes_at_the_desk = "At the desk: minutes without a press, then the PIN is asked", "Im Büro: so viele Minuten ohne Tippen, dann kommt die PIN";
    /// Label of a number of minutes.
    pub minutes_before_a_decision = "Before a decision: minutes after the last one or the PIN", "Vor einer Entscheidung: so viele Minuten nach der letzten oder nach der PIN";
    /// The press that keeps these times.
    pub keep = "Keep", "Speichern";
    /// A press.
    pub change_my_pin = "Change my PIN", "Meine PIN ändern";
    /// A press.
    pub sign_out = "Sign out", "Abmelden";
    /// A person who is in no list.
    pub somebody = "somebody", "jemand";
    /// The page with the code: what to do with it.
    pub scan_this = "Scan this with the phone or tablet. It lets one device in, for ten minutes.", "Mit dem Handy oder Tablet einscannen. Der Code gilt für ein Gerät, zehn Minuten lang.";
    /// The page with the code: before the address that may be typed in place of scanning.
    pub or_open_there = "Or open there: ", "Oder dort öffnen: ";
    /// The page with the code: before the letters that are typed there.
    pub and_type = "and type ", "und eingeben: ";
    /// The page with the code: where to read of the certificate.
    pub first_page_says(address) = "The first page says how a device comes to trust this shop's own certificate: {address}", "Wie ein Gerät dem Zertifikat dieser Werkstatt vertraut, steht auf der ersten Seite: {address}";
    /// The page with the code: the press that makes a new one.
    pub another_code = "Another code", "Neuer Code";
    /// Where a refusal came from.
    pub the_code = "the code", "der Code";
    /// How to mend it.
    pub type_the_address = "type the address by hand", "die Adresse von Hand eingeben";
    /// The drawn code, for who hears the page.
    pub code_to_scan = "A code to scan", "Ein Code zum Scannen";
    /// Refused: something was not sent along.
    pub it_is_missing = "it is missing", "es fehlt";
    /// Refused; a program asked for something that is not there.
    pub nothing_changed_here(what) = "`{what}` is nothing that is changed here", "`{what}` wird hier nicht geändert";
    /// How to mend it.
    pub press_on_page_of_devices = "press it on the page of devices", "auf der Seite der Geräte drücken";
    /// Where a refusal came from.
    pub this_program = "this program", "dieses Programm";
    /// Refused: there are no devices but the machine itself.
    pub serves_its_own_machine = "it serves its own machine alone", "es bedient nur den eigenen Rechner";
    /// How to mend it.
    pub start_with_shop_network = "start it with --shop-network to let other devices in", "mit --shop-network starten, damit sich andere Geräte anmelden können";
    /// The list of who opened what: what it is.
    pub opened_pages_are = "Pages that show who a customer is, once a day for each person. Kept for 90 days, outside the record.", "Seiten, die zeigen, wer ein Kunde ist, für jeden einmal am Tag. 90 Tage gespeichert, außerhalb der Aufzeichnung.";
    /// The list of who opened what, when it is empty.
    pub nothing_yet = "Nothing yet.", "Noch nichts.";
    /// The list of who opened what: when, on which device.
    pub when_on_device(when, device) = "{when}, on {device}", "{when}, an {device}";
    /// The list of who opened what: how many of how many are shown.
    pub the_last_of(shown, all) = "The last {shown} of {all}.", "Die letzten {shown} von {all}.";

    /// Title of the page on which a device is let in, and its press.
    pub join = "Join", "Anmelden";
    /// Heading of that page.
    pub join_the_shop = "Join the shop", "Gerät anmelden";
    /// Label of the field for the code.
    pub code = "Code", "Code";
    /// What the code looks like.
    pub code_hint = "twelve letters and digits, shown at the desk", "zwölf Buchstaben und Ziffern, im Büro angezeigt";
    /// Label of the field for the device's name.
    pub what_is_it_called = "What do people call this device?", "Wie heißt dieses Gerät?";
    /// What such a name looks like.
    pub device_name_hint = "such as Pavel's phone, or tablet at lift 2", "z. B. Pavels Handy oder Tablet an Bühne 2";
    /// Above the choice of where the device is used.
    pub where_used = "Where is it used?", "Wo wird es benutzt?";

    /// Refused.
    pub no_such_person = "there is no such person in this shop", "diese Person gibt es in der Werkstatt nicht";
    /// Title, label and name of the field for a PIN.
    pub pin = "PIN", "PIN";
    /// Where somebody sets their PIN: what it takes.
    pub set_your_pin(least, most) = "Set your PIN: {least} to {most} digits, without a pattern. Nobody else learns it.", "PIN festlegen: {least} bis {most} Ziffern, ohne Muster. Niemand sonst erfährt sie.";
    /// Label of the second field where a PIN is set.
    pub same_once_more = "The same once more", "Dieselbe noch einmal";
    /// The large press of signing in.
    pub sign_in = "Sign in", "Anmelden";
    /// The large press where a PIN is set.
    pub set_pin = "Set PIN", "PIN festlegen";
    /// The press that leads back to the list of people.
    pub not_this_person(first_name) = "Not {first_name}", "Nicht {first_name}";
    /// The key of the pad that takes a digit back.
    pub back_key = "Back", "Zurück";
    /// Where a refusal came from.
    pub the_pin = "the PIN", "die PIN";
    /// Refused: a PIN that was typed twice.
    pub not_the_same = "the two are not the same", "die beiden sind nicht gleich";
    /// How to mend it.
    pub type_it_twice = "type it twice", "zweimal eingeben";
    /// How to mend it.
    pub type_new_one_twice = "type the new one twice", "die neue zweimal eingeben";
    /// Heading where the PIN is asked for once more.
    pub your_pin_please = "Your PIN, please", "Bitte die PIN";
    /// Below that heading.
    pub press_once_more = "Then press once more what you wanted.", "Danach noch einmal drücken, was gewollt war.";
    /// The large press where the PIN is asked for once more.
    pub go_on = "Go on", "Weiter";
    /// What is wanted of a program.
    pub a_pin = "a PIN", "eine PIN";
    /// What is wanted of a program.
    pub person_and_pin = "a person and their PIN", "eine Person und ihre PIN";
    /// Title and heading of the page on which a PIN is changed.
    pub your_pin = "Your PIN", "Eigene PIN";
    /// Label of a field.
    pub pin_until_now = "The PIN until now", "Bisherige PIN";
    /// Label of a field.
    pub new_pin = "The new one", "Neue PIN";
    /// Label of a field.
    pub new_pin_once_more = "The new one once more", "Neue PIN noch einmal";
    /// The large press.
    pub change_pin = "Change PIN", "PIN ändern";
    /// Heading after that.
    pub pin_is_changed = "Your PIN is changed", "Die PIN ist geändert";
    /// The press after that.
    pub to_the_day = "To the day", "Zum Tag";
    /// Refused: the device is the machine that the program runs on.
    pub asks_no_pin = "this program serves its own machine alone, and asks no PIN", "dieses Programm bedient nur den eigenen Rechner und fragt nach keiner PIN";
    /// Where a refusal came from.
    pub this_device = "this device", "dieses Gerät";
    /// Title and heading of the page on which it is chosen what the screens speak.
    pub language_of_the_screens = "Language of the screens", "Sprache der Bildschirme";
    /// Where that page is opened, in both languages, for whoever cannot read the one.
    pub language_in_both = "Language · Sprache", "Sprache · Language";
    /// Legend of the choice for one's own screens.
    pub your_own_screens = "Your own screens speak", "Sprache der eigenen Bild\u{ad}schirme";
    /// A choice there: what the shop's screens speak.
    pub as_the_shop = "as the shop's", "wie die Werkstatt";
    /// Legend of the choice for the whole shop.
    pub screens_of_the_shop = "The shop's screens speak", "Sprache der Bild\u{ad}schirme der Werkstatt";
    /// Below that choice.
    pub papers_have_their_own = "Papers have a language of their own, on the page of your papers.", "Papiere haben ihre eigene Sprache, auf der Seite der Papiere.";
    /// The press that keeps it.
    pub save = "Save", "Speichern";
    /// The press that keeps it for the whole shop.
    pub save_for_the_shop = "Save for the shop", "Für die Werkstatt speichern";
}
