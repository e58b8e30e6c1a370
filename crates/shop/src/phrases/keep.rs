//! The record itself: what can't be read, what is erased.

use phrases::phrases;

phrases! {
    /// How it is mended that this program can't read a part of the record.
    pub use_the_newer_program = "use the newer program, if one wrote it; else report this with the output of `buttonup verify`", "das neuere Programm nehmen, falls eines es geschrieben hat; sonst das hier mit der Ausgabe von `buttonup verify` melden";
    /// A part of the record can't be read: which event, of what kind and version, and why.
    pub event_cannot_be_read(position, kind, version, why) = "event {position} of the record ({kind}, version {version}) cannot be read by this program: {why}", "Ereignis {position} der Aufzeichnung ({kind}, Version {version}) kann dieses Programm nicht lesen: {why}";
    /// What happens to what was sent for a part that can't be read, and how that ends.
    pub sent_again_by_itself(mend) = "what is kept on the device is sent again by itself; nothing else has to wait. To end it: {mend}", "was auf dem Gerät liegt, wird von selbst noch einmal gesendet; sonst wartet nichts. So endet es: {mend}";
    /// Nothing is taken for a part that can't be read; why.
    pub nothing_written_there(why) = "nothing can be written down there: {why}", "dort lässt sich nichts aufschreiben: {why}";
    /// There is no such customer, by the name in the record.
    pub no_customer(id) = "there is no customer {id}", "es gibt keinen Kunden {id}";
    /// Where something is refused: an order.
    pub order(number) = "order {number}", "Auftrag {number}";
    /// Refused to erase somebody's words.
    pub vehicle_still_here = "their vehicle is still here, and these words are needed for it", "das Fahrzeug ist noch da, und diese Angaben werden dafür gebraucht";
    /// How it is mended.
    pub hand_over_then_erase = "hand the vehicle over or void the order, then erase", "das Fahrzeug übergeben oder den Auftrag stornieren, dann löschen";
    /// Refused to erase somebody's words: some can't be read; why.
    pub words_not_all_found(why) = "their words cannot all be found: {why}", "nicht alle Angaben sind zu finden: {why}";
    /// Nothing says when a command was written down.
    pub no_moment(command) = "nothing says when {command} was written down", "nirgends steht, wann {command} aufgeschrieben wurde";
    /// How it is mended.
    pub run_verify = "run `buttonup verify`", "`buttonup verify` laufen lassen";
    /// Where something is refused: the asking for an erasure.
    pub the_asking = "the asking", "der Löschauftrag";
    /// Refused: somebody else called it off.
    pub called_off_at_once = "somebody called it off at once", "jemand hat ihn sofort zurückgezogen";
    /// How it is mended.
    pub ask_again = "ask again if it is still wanted", "noch einmal verlangen, falls weiter gewünscht";
    /// Where something is refused: an erasure.
    pub the_erasure = "the erasure", "die Löschung";
    /// Refused: no erasure waits.
    pub none_waits = "none waits for this customer: nothing was asked for, or it is done already", "für diesen Kunden wartet keine: nichts wurde verlangt, oder sie ist schon geschehen";
    /// Where erasures that wait are found.
    pub waits_on_the_page = "what waits stands on the page about the record", "was wartet, steht auf der Seite der Aufzeichnung";
    /// There is no such file.
    pub no_such_file = "there is no such file", "diese Datei gibt es nicht";
    /// A text of the record is missing.
    pub text_is_missing(text) = "the text {text} is missing, and nothing says that it was erased", "der Text {text} fehlt, und nirgends steht, dass er gelöscht wurde";
    /// How it is mended.
    pub verify_and_restore = "run `buttonup verify`, keep a copy of the record as it is, and restore the newest backup that verifies", "`buttonup verify` laufen lassen, eine Kopie der Aufzeichnung behalten, wie sie ist, und die neueste Sicherung zurückspielen, die sich prüfen lässt";
}
