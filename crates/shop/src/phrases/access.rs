//! Who may use the program: devices, PINs, roles.

use phrases::phrases;

phrases! {
    /// Refused: how long somebody stays signed in.
    pub the_minutes = "the minutes", "die Minuten";
    /// Refused: no time to stay signed in.
    pub no_time_to_stay = "that is no time to stay signed in", "so lange bleibt niemand angemeldet";
    /// How minutes are mended.
    pub write_minutes = "write 1 to 720 minutes", "1 bis 720 Minuten schreiben";
    /// Where something is refused: who may use the program.
    pub who_may_use_it = "who may use it", "wer es benutzen darf";
    /// Where something is refused: who may use the program, and the drawer it is kept in.
    pub who_may_use_it_in(drawer) = "who may use it, {drawer}", "wer es benutzen darf, {drawer}";
    /// Too many change the same.
    pub too_many_change = "too many change the same at once", "zu viele ändern gerade dasselbe";
    /// How it is mended.
    pub try_in_a_moment = "try again in a moment", "gleich noch einmal versuchen";
    /// What is kept can't be read.
    pub entry_unreadable(error) = "an entry cannot be read ({error})", "ein Eintrag ist nicht lesbar ({error})";
    /// How it is mended.
    pub put_out_and_join = "put that device out and let it join again, or take the PIN away and set a new one", "das Gerät sperren und neu anmelden, oder die PIN löschen und eine neue festlegen";
    /// There is no such device.
    pub no_such_device = "there is no such device", "dieses Gerät gibt es nicht";
    /// Refused: the code by which a device joins.
    pub the_code = "the code", "der Code";
    /// Refused: too many tries.
    pub too_many_wrong_codes = "too many wrong codes came in the last minute", "in der letzten Minute kamen zu viele falsche Codes";
    /// How it is mended.
    pub wait_and_scan = "wait a minute, then scan the code again", "eine Minute warten, dann den Code neu scannen";
    /// Refused: a device's name.
    pub the_name = "the name", "der Name";
    /// Refused: a device's name that is none.
    pub device_needs_name = "a device needs a name of up to 60 letters", "ein Gerät braucht einen Namen mit höchstens 60 Zeichen";
    /// How a device's name is mended.
    pub write_what_people_call_it = "write what people call it, such as \"Pavel's phone\" or \"tablet at lift 2\"", "schreiben, wie alle es nennen, etwa „Pavels Handy“ oder „Tablet an Bühne 2“";
    /// Refused: a code that is used up or wrong.
    pub code_lets_nobody_in = "this code lets nobody in: it was used, or its ten minutes are over, or a letter is wrong", "dieser Code gilt nicht: er ist verbraucht, seine zehn Minuten sind um, oder ein Zeichen ist falsch";
    /// How it is mended.
    pub ask_for_new_code = "ask at the desk for a new code", "im Büro einen neuen Code holen";
    /// Refused: the PIN.
    pub the_pin = "the PIN", "die PIN";
    /// Refused: there is one.
    pub has_a_pin = "this person has a PIN already", "diese Person hat schon eine PIN";
    /// How it is mended.
    pub sign_in_with_it = "sign in with it; the owner can take it away if it is forgotten", "damit anmelden; ist sie vergessen, kann der Inhaber sie löschen";
    /// Refused: the PIN is wrong.
    pub not_the_pin = "that is not the PIN", "das ist nicht die PIN";
    /// How it is mended.
    pub type_it_again = "type it again; whoever forgot it asks the owner", "noch einmal eingeben; wer sie vergessen hat, fragt den Inhaber";
    /// How long one has to wait.
    pub seconds(n) = "{n} seconds", "{n} Sekunden";
    /// How long one has to wait.
    pub minutes(n) = "{n} minutes", "{n} Minuten";
    /// Refused: the PIN was wrong too often.
    pub wrong_too_often(wait) = "it was wrong too often: wait {wait}", "sie war zu oft falsch: {wait} warten";
    /// How it is mended.
    pub owner_can_lift = "the owner can lift that under Devices and people", "der Inhaber kann das unter „Geräte und Leute“ aufheben";
    /// Refused: there is no PIN.
    pub no_pin_yet = "this person has no PIN yet", "diese Person hat noch keine PIN";
    /// How it is mended.
    pub set_one = "set one: pick the name under Who is it?", "eine festlegen: den Namen unter „Wer ist es?“ wählen";
    /// Refused: the PIN could not be kept.
    pub could_not_be_kept(error) = "it could not be kept ({error})", "sie ließ sich nicht speichern ({error})";
    /// How it is mended.
    pub try_again = "try again", "noch einmal versuchen";
    /// Refused: a PIN that is none.
    pub pin_is_digits = "a PIN is 4 to 8 digits", "eine PIN hat 4 bis 8 Ziffern";
    /// How it is mended.
    pub digits_alone = "type digits alone", "nur Ziffern eingeben";
    /// Refused: a PIN that is too easy.
    pub pin_too_easy = "that PIN is one of the first that anybody tries", "diese PIN gehört zu denen, die jeder zuerst probiert";
    /// How it is mended.
    pub without_pattern = "take one without a pattern and without a year", "eine ohne Muster und ohne Jahreszahl nehmen";
    /// Refused: a decision wants the PIN.
    pub decided_with_pin = "this is decided with the PIN", "das wird mit der PIN entschieden";
    /// How it is mended.
    pub type_your_pin = "type your PIN", "PIN eingeben";
    /// Where something is refused: the device.
    pub this_device = "this device", "dieses Gerät";
    /// Refused: the device was put out.
    pub was_put_out = "it was put out", "es ist gesperrt";
    /// How it is mended.
    pub ask_to_be_let_in = "what was tapped on it before is still sent; ask at the desk to let it in again", "was vorher getippt wurde, wird noch gesendet; im Büro wieder anmelden lassen";
    /// Refused: nobody is signed in.
    pub nobody_signed_in = "nobody is signed in", "niemand ist angemeldet";
    /// How it is mended.
    pub pick_your_name = "pick your name and type your PIN", "den Namen wählen und die PIN eingeben";
    /// Where something is refused: whose tap it was.
    pub who_it_was = "who it was", "wer es war";
    /// Refused: somebody else was signed in.
    pub not_signed_in_here = "this person was not signed in on this device", "diese Person war auf diesem Gerät nicht angemeldet";
    /// How it is mended.
    pub sign_in_and_do_again = "whoever did it signs in here and does it again", "wer es war, meldet sich hier an und macht es noch einmal";

    /// A role.
    pub technician = "technician", "Mechaniker";
    /// A role.
    pub desk = "desk", "Büro";
    /// A role.
    pub owner = "owner", "Inhaber";
    /// A role.
    pub apprentice = "apprentice", "Azubi";
    /// A role.
    pub foreman = "foreman", "Meister";
    /// Refused: nobody of that name.
    pub nobody_of_that_name = "nobody of that name belongs to the shop", "diesen Namen gibt es in der Werkstatt nicht";
    /// Refused: only these roles may.
    pub this_is_for(roles) = "this is for {roles}", "das ist für: {roles}";
    /// How it is mended that somebody may not.
    pub pick_one_at_who = "pick one of them at /who", "unter /who jemanden davon wählen";
    /// Where something is refused: who does it.
    pub who = "who", "wer";
    /// How it is mended that nobody is picked.
    pub pick_a_person = "pick a person at /who", "unter /who jemanden wählen";
}
