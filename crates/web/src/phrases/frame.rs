//! The frame of every page, what is refused, signing in, and what a phone says by itself.

use phrases::phrases;

phrases! {
    /// The bar at the desk: the way to the day.
    pub day = "Day", "Tag";
    /// The letter of "Day" that opens it: it stands in that word, and opens nothing else on any page.
    pub day_key = "d", "g";
    /// The bar at the desk: the way to all orders.
    pub orders = "Orders", "Aufträge";
    /// The letter of "Orders" that opens them: it stands in that word, and opens nothing else.
    pub orders_key = "o", "u";
    /// The bar at the desk: the way to the calls and to what waits.
    pub calls_and_waits = "Calls and waits", "Anrufe, Aus\u{ad}stehendes";
    /// The letter of "Calls and waits" that opens them: it stands in there, and opens nothing else.
    pub calls_key = "c", "n";
    /// The bar at the desk: the way to the maps.
    pub maps = "Maps", "Vorlagen";
    /// The letter of "Maps" that opens them: it stands in that word, and opens nothing else.
    pub maps_key = "m", "v";
    /// The bar at the desk: the way to the calculators.
    pub work_it_out = "Work it out", "Rechnen";
    /// The letter of "Work it out" that opens it: it stands in there, and opens nothing else.
    pub work_it_out_key = "w", "h";
    /// The bar at the desk: the way to the shop's own pages; and the name of the bar itself.
    pub the_shop = "The shop", "Werkstatt";
    /// The letter of "The shop" that opens it: it stands in there, and opens nothing else.
    pub the_shop_key = "s", "w";
    /// The field in the bar that finds an order, for who hears the page.
    pub find = "Find name, plate, number", "Name, Kennzeichen, Nummer suchen";
    /// In the empty field that finds an order; the slash at its end is the key that leads into it.
    pub find_with_key = "Find name, plate, number  /", "Name, Kennzeichen, Nummer suchen  /";
    /// The line at the foot of each page, when nothing waits to be sent.
    pub saved = "Saved", "Gespeichert";
    /// The press at the foot of each page that takes the last tap back.
    pub undo_last = "Undo last", "Letztes zurücknehmen";
    /// The press at the foot of a page at the desk that shows all keys.
    pub keys_at_a_glance = "An underlined letter opens it · / finds · ? all keys", "Ein unterstrichener Buchstabe öffnet · / sucht · ? alle Tasten";
    /// Heading of the list of keys.
    pub keys = "Keys", "Tasten";
    /// The list of keys, on the left: which.
    pub underlined_letters = "letters that are underlined", "unterstrichene Buchstaben";
    /// The list of keys, on the right: what an underlined letter does.
    pub open_that_page = "open that page", "öffnen diese Seite";
    /// The list of keys, on the left: the digits.
    pub one_to_nine = "1 to 9", "1 bis 9";
    /// The list of keys, on the right: what a digit does.
    pub open_that_stall = "open what stands in that stall", "öffnen, was auf diesem Platz steht";
    /// The list of keys, on the right: what the slash does.
    pub find_all_of_it = "find a name, a plate, a number, a telephone", "Name, Kennzeichen, Nummer, Telefon suchen";
    /// The list of keys, on the left: two keys as they are printed on a keyboard.
    pub tab_enter = "Tab, Enter", "Tab, Enter";
    /// The list of keys, on the right: what these two do.
    pub from_one_to_the_next = "go from one thing to the next, and open it", "von einem zum nächsten gehen und es öffnen";
    /// The list of keys, on the left: the key as it is printed on a keyboard.
    pub escape = "Esc", "Esc";
    /// The list of keys, on the right: what that key does.
    pub back_to_the_day = "back to the day", "zurück zum Tag";
    /// The list of keys, on the right: what the question mark does.
    pub this_list = "this list", "diese Liste";
    /// The tick below the list of keys that turns letters and digits on and off.
    pub letters_open_pages = "Letters and digits open pages", "Buchstaben und Ziffern öffnen Seiten";
    /// The press that closes the list of keys.
    pub close = "Close", "Schließen";

    /// Beside the field for the odometer: in which unit it is written.
    pub odometer_in(unit) = "in {unit} unless you write the unit, such as 148200 {unit}", "in {unit}, wenn keine Einheit dabeisteht, z. B. 148200 {unit}";
    /// The field for a photo; and the name of a photo of which nothing is told.
    pub photo = "Photo", "Foto";
    /// The name of a photo, with what was told of it.
    pub photo_of(what) = "Photo: {what}", "Foto: {what}";
    /// Over the press that records a few spoken words.
    pub or_say_it = "Or say it, up to 30 seconds", "Oder sprechen, bis zu 30 Sekunden";
    /// The press that begins to record.
    pub start_speaking = "Record", "Aufnehmen";
    /// The press that drops what was recorded.
    pub without_the_recording = "Drop the recording", "Aufnahme verwerfen";
    /// The name of a recording that was just made.
    pub recording = "Recording", "Aufnahme";
    /// The name of a recording, with who spoke and when.
    pub recording_of(who) = "Recording: {who}", "Aufnahme: {who}";
    /// Under a recording that does not play.
    pub cannot_be_heard = "It can't be played: it was erased, is out of reach, or this browser does not know its sort", "Lässt sich nicht abspielen: gelöscht, außer Reichweite, oder dieser Browser kennt das Format nicht";
    /// The sheet that is signed with a finger, for who hears the page.
    pub sheet_to_sign = "A sheet to sign on", "Feld zum Unterschreiben";
    /// The press that wipes the sheet.
    pub clear_the_sheet = "Clear the sheet", "Feld leeren";
    /// The field in place of the sheet.
    pub photo_of_signed_paper = "Or a photo of the signed paper", "Oder ein Foto vom unterschriebenen Papier";
    /// The name of a drawn signature, where nobody is named.
    pub signature = "Signature", "Unterschrift";
    /// The name of a drawn signature.
    pub signature_of(who) = "Signature of {who}", "Unterschrift von {who}";
    /// What a browser says where a field takes a number alone.
    pub number_such_as = "A number such as 12.50", "Eine Zahl wie 12,50";

    /// Where a refusal came from: what the page or the program asked.
    pub the_request = "the request", "die Anfrage";
    /// Refused for now: too many send large things at once.
    pub too_much_at_once = "too much is being sent at once", "gerade wird zu viel auf einmal gesendet";
    /// Refused for now.
    pub did_not_arrive_in_time = "what was sent did not arrive in time", "das Gesendete kam nicht rechtzeitig an";
    /// Refused for now.
    pub broke_off = "what was sent broke off", "das Gesendete brach ab";
    /// How to mend it: the device sends it once more.
    pub send_again = "send it again; a command counts once", "noch einmal senden; es zählt nur einmal";
    /// Where a refusal came from: what was sent.
    pub the_body = "the body", "das Gesendete";
    /// Refused: what was sent has too many bytes.
    pub larger_than(mib) = "it is larger than {mib} MiB", "es ist größer als {mib} MiB";
    /// How to mend it.
    pub smaller_photo = "make the photo smaller and send it again", "das Foto verkleinern und noch einmal senden";
    /// How to mend it.
    pub send_less = "send less at a time", "weniger auf einmal senden";
    /// Where a refusal came from: the way something was asked (HTTP).
    pub the_method = "the method", "die Methode";
    /// Refused: an address is asked in a way that it does not take.
    pub does_not_take(address, method) = "{address} does not take {method}", "{address} nimmt {method} nicht an";
    /// How to mend it.
    pub open_as_a_page = "open it as a page, and press what stands on it", "als Seite öffnen und drücken, was darauf steht";
    /// How to mend it, for a program that asks.
    pub sent_with_post = "commands are sent with POST to /api/commands; all else is asked with GET", "Befehle gehen mit POST an /api/commands; alles andere wird mit GET gefragt";
    /// Where a refusal came from: this program.
    pub the_program = "the program", "das Programm";
    /// Refused: no answer in time.
    pub took_too_long = "it took too long", "es hat zu lange gedauert";
    /// What went wrong: the program could not end what was asked.
    pub stopped_in_the_middle = "it stopped in the middle of this", "es brach mittendrin ab";
    /// How to mend it.
    pub try_again = "try again", "noch einmal versuchen";
    /// Where a refusal came from: the address that was opened.
    pub the_address = "the address", "die Adresse";
    /// Refused: what was written behind an address makes no sense there.
    pub not_with_that_behind_it(address) = "{address} cannot be read with what stands behind it", "{address} ist mit dem, was dahintersteht, nicht lesbar";
    /// How to mend it.
    pub go_back_and_open_anew = "go back and open the page anew", "zurückgehen und die Seite neu öffnen";
    /// How to mend it, for a program that asks.
    pub see_what_it_takes = "see /api/openapi.json for what it takes", "was es annimmt, steht in /api/openapi.json";
    /// Where a refusal came from: what a program says it sends.
    pub the_content_type = "the content type", "der Inhaltstyp";
    /// Refused, for a program.
    pub only_json = "only JSON is taken", "nur JSON wird angenommen";
    /// How to mend it, for a program.
    pub send_json = "send content-type: application/json", "content-type: application/json senden";
    /// Refused, for a program: it sent something else than was wanted.
    pub it_is_not(wanted, error) = "it is not {wanted}: {error}", "es ist nicht {wanted}: {error}";
    /// Refused, for a program.
    pub it_is_no_json(error) = "it is no JSON: {error}", "es ist kein JSON: {error}";
    /// How to mend it, for a program: what is wanted, and where it is described.
    pub send_what_is_wanted(wanted) = "send {wanted}; see /api/openapi.json", "{wanted} senden; siehe /api/openapi.json";
    /// What is wanted of a program.
    pub one_command = "one command", "ein Befehl";
    /// What is wanted of a program.
    pub list_of_commands = "a list of commands", "eine Liste von Befehlen";

    /// Refused: a request names another machine than this.
    pub addressed_elsewhere(host) = "it is addressed to {host}, which is not here", "sie ist an {host} gerichtet, und das ist nicht hier";
    /// Refused: a page of some other program asks.
    pub from_a_page_of(origin) = "it comes from a page of {origin}", "sie kommt von einer Seite von {origin}";
    /// Refused: a page of some other program asks; in brackets what the browser calls it.
    pub from_another_place(what) = "it comes from a page of another place ({what})", "sie kommt von einer fremden Seite ({what})";
    /// How to mend it: where the program is found on the shop's network.
    pub open_there(host) = "open https://{host}", "https://{host} öffnen";
    /// How to mend it: where the program is found on its own machine.
    pub open_on_this_machine(port) = "open http://127.0.0.1:{port} in a browser on this machine", "http://127.0.0.1:{port} im Browser an diesem Rechner öffnen";

    /// Where a refusal came from: the phone or tablet in the hand.
    pub this_device = "this device", "dieses Gerät";
    /// Refused: the owner has put the device out.
    pub was_put_out = "it was put out", "es wurde gesperrt";
    /// How to mend it.
    pub let_in_again = "what was tapped on it before is still sent; ask at the desk to let it in again", "was vorher getippt wurde, wird noch gesendet; im Büro wieder anmelden lassen";
    /// Where a refusal came from: nobody has said who they are.
    pub who_it_is = "who it is", "wer es ist";
    /// Refused.
    pub nobody_signed_in = "nobody is signed in on this device", "an diesem Gerät ist niemand angemeldet";
    /// How to mend it.
    pub name_and_pin = "pick your name and type your PIN", "Namen wählen und PIN eingeben";
    /// Refused: a device that was never let in.
    pub has_not_joined = "this device has not joined the shop", "dieses Gerät gehört noch nicht zur Werkstatt";
    /// How to mend it; the names are those of the pages.
    pub scan_the_code = "at the desk, open The shop, then Devices and people, and scan the code that is shown there", "im Büro unter Werkstatt, dann Geräte und Leute, den Code zeigen lassen und einscannen";
    /// Refused for a moment: a device asks too often.
    pub asks_too_much = "it asks for more than anybody can look at", "es fragt mehr, als jemand ansehen kann";
    /// How to mend it.
    pub wait_a_moment = "wait a moment; what was tapped is kept and sent then", "kurz warten; was getippt wurde, bleibt und wird dann gesendet";

    /// Title, heading and press of the page that says how a device comes to trust the shop.
    pub join_the_shop = "Join the shop", "Gerät anmelden";
    /// That page: why a certificate is installed.
    pub why_a_certificate = "What this device and the shop's computer send each other is encrypted, with a certificate of the shop's own. Install it once on this device. Without it everything works after a warning of the browser, but no page opens where the Wi-Fi does not reach.", "Was dieses Gerät und der Rechner der Werkstatt einander senden, ist verschlüsselt, mit einem eigenen Zertifikat der Werkstatt. Einmal auf diesem Gerät installieren. Ohne geht nach einer Warnung des Browsers alles, nur öffnet sich keine Seite, wo das WLAN nicht hinreicht.";
    /// That page, heading of the first half.
    pub install_the_certificate = "1. Install the certificate", "1. Zertifikat installieren";
    /// That page: the press that loads the file.
    pub load_the_certificate = "Load the certificate", "Zertifikat laden";
    /// That page: for what the certificate counts.
    pub counts_inside_alone = "It counts for addresses inside the shop's network alone.", "Es gilt nur für Adressen im Netz der Werkstatt.";
    /// That page, heading of the second half.
    pub then_join = "2. Join", "2. Anmelden";
    /// That page, at its end.
    pub nothing_shown_here = "Nothing of the shop is shown on this page, and nothing is typed on it.", "Auf dieser Seite steht nichts von der Werkstatt, und nichts wird eingegeben.";
    /// That page: a sort of device.
    pub on_android = "Android", "Android";
    /// That page, Android, first step; the name of the press is that of the page.
    pub android_load = "Press \u{201c}Load the certificate\u{201d} and keep the file.", "„Zertifikat laden“ drücken und die Datei behalten.";
    /// That page, Android, second step; the names are those of the device's settings.
    pub android_settings = "Open Settings, Security, More security settings, Encryption and credentials, Install a certificate, CA certificate. On some phones it is found by searching Settings for \u{201c}certificate\u{201d}.", "Einstellungen, Sicherheit, Weitere Sicherheitseinstellungen, Verschlüsselung und Anmeldedaten, Zertifikat installieren, CA-Zertifikat öffnen. Auf manchen Handys findet es die Suche in den Einstellungen nach „Zertifikat“.";
    /// That page, Android, third step; the name of the press is the device's own.
    pub android_install = "Read the warning, press \u{201c}Install anyway\u{201d}, and pick buttonup-shop.crt.", "Die Warnung lesen, „Trotzdem installieren“ drücken und buttonup-shop.crt wählen.";
    /// That page: a sort of device.
    pub on_iphone = "iPhone and iPad", "iPhone und iPad";
    /// That page, iPhone, first step.
    pub iphone_load = "Open this page in Safari, press \u{201c}Load the certificate\u{201d} and allow the profile.", "Diese Seite in Safari öffnen, „Zertifikat laden“ drücken und das Profil zulassen.";
    /// That page, iPhone, second step; the names are those of the device's settings.
    pub iphone_settings = "Open Settings, General, VPN and device management, and install the profile.", "Einstellungen, Allgemein, VPN und Geräteverwaltung öffnen und das Profil installieren.";
    /// That page, iPhone, third step; the names are those of the device's settings.
    pub iphone_trust = "Then Settings, General, About, Certificate trust settings: switch it on for this shop.", "Dann Einstellungen, Allgemein, Info, Zertifikatsvertrauenseinstellungen: für diese Werkstatt einschalten.";
    /// That page: a sort of device.
    pub on_windows = "Windows", "Windows";
    /// That page, Windows, first step.
    pub windows_open = "Open the file that was loaded and press Install certificate.", "Die geladene Datei öffnen und Zertifikat installieren drücken.";
    /// That page, Windows, second step; the names are those of the window that opens.
    pub windows_store = "Choose Local machine, then \u{201c}Place all certificates in the following store\u{201d}: Trusted root certification authorities.", "Lokaler Computer wählen, dann „Alle Zertifikate in folgendem Speicher speichern“: Vertrauenswürdige Stammzertifizierungsstellen.";
    /// That page: a sort of device.
    pub on_macos = "macOS", "macOS";
    /// That page, macOS, first step.
    pub macos_open = "Open the file that was loaded: Keychain Access adds it.", "Die geladene Datei öffnen: Die Schlüsselbundverwaltung nimmt sie auf.";
    /// That page, macOS, second step; the names are those of that program.
    pub macos_trust = "Open it there, and under Trust choose Always trust.", "Dort öffnen und unter Vertrauen „Immer vertrauen“ wählen.";
    /// That page: a sort of device.
    pub on_linux = "Linux", "Linux";
    /// That page, Linux; the names are those of the browser's settings.
    pub linux_chromium = "In Chromium: Settings, Privacy and security, Security, Manage certificates, Authorities, Import; trust it for websites.", "In Chromium: Einstellungen, Datenschutz und Sicherheit, Sicherheit, Zertifikate verwalten, Zertifizierungsstellen, Importieren; für Websites vertrauen.";
    /// That page, Linux; the names are those of the browser's settings.
    pub linux_firefox = "In Firefox: Settings, Privacy and security, View certificates, Authorities, Import.", "In Firefox: Einstellungen, Datenschutz & Sicherheit, Zertifikate anzeigen, Zertifizierungsstellen, Importieren.";

    /// The name of a drawing of a whole map.
    pub in_layers(vehicle) = "{vehicle} in layers", "{vehicle} in Lagen";
    /// The name of a drawing of what has to come off for something.
    pub way_in_to(things) = "The way in to {things}", "Der Weg zu {things}";
    /// In such a drawing, under a part: what is put in for it, such as a pin or a clamp.
    pub goes_in(thing) = "{thing} in", "{thing} rein";
    /// Between the names of several things.
    pub and_between = " and ", " und ";

    /// What stands at the top left of a page: the way back to the floor.
    pub floor = "Floor", "Halle";
    /// Refused: an address that leads nowhere.
    pub no_such_page = "there is no such page", "diese Seite gibt es nicht";
    /// Refused, where a page is made for who is signed in.
    pub nobody_is_signed_in = "nobody is signed in", "niemand ist angemeldet";
    /// Title of the page that says what went wrong.
    pub trouble = "Trouble", "Problem";
    /// The page that says what went wrong: where.
    pub where_it_is(place) = "Where: {place}", "Wo: {place}";
    /// The page that says what went wrong: the large press.
    pub to_the_floor = "To the floor", "Zur Halle";
    /// The page that says what went wrong: the other press.
    pub find_an_order = "Find an order", "Auftrag suchen";
    /// Refused; in the hole stands what was written where a number should be, in quotes.
    pub no_orders_number(written) = "{written} is no order's number", "{written} ist keine Auftragsnummer";

    /// Above every page of an order of which something cannot be read.
    pub order_only_looked_at = "This order can only be looked at.", "Dieser Auftrag kann nur angesehen werden.";
    /// The same box: what to trust.
    pub go_by_the_vehicle = "What is shown here lacks it: go by the vehicle, not by this page. What is told about it waits on the device.", "Hier fehlt es: nach dem Fahrzeug gehen, nicht nach dieser Seite. Was dazu gesagt wird, wartet auf dem Gerät.";
    /// On the floor, behind the name of such an order or of another part of the record.
    pub can_only_be_looked_at = " can only be looked at", " kann nur angesehen werden";
    /// On the floor: how much was told about it meanwhile, and on which devices it waits.
    pub told_about_it_waits(n, devices) = ["{n} thing told about it waits on {devices}.", "{n} things told about it wait on {devices}."], ["{n} Angabe dazu wartet auf {devices}.", "{n} Angaben dazu warten auf {devices}."];

    /// Refused: a photo or a signature that is not known.
    pub no_such_file = "there is no such file", "diese Datei gibt es nicht";
    /// Refused: a photo or a signature that was erased.
    pub file_was_erased = "this file was erased; the record keeps only that there was one", "diese Datei wurde gelöscht; die Aufzeichnung weiß nur noch, dass es eine gab";
    /// How to mend it.
    pub back_to_its_order = "go back to the order it belonged to", "zurück zum Auftrag, zu dem sie gehörte";
}
