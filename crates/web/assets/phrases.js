// What the scripts of the pages say by themselves: each text once, with a note on where it stands
// and each language beside the other. A hole such as {left} is filled by who says it. A test holds
// every text to have all languages, with the same holes.

const PHRASES = {
  // The line at the foot of each page: nothing waits to be sent.
  all_sent: { en: "Saved · all sent", de: "Gespeichert · alles gesendet" },
  // The line at the foot of each page: so many taps wait to be sent.
  saved_to_send: { en: "Saved · {left} to send", de: "Gespeichert · {left} zu senden" },
  // The same, where the shop's program does not answer.
  kept_to_send: {
    en: "Out of reach · kept on this device · {left} to send",
    de: "Keine Verbindung · auf diesem Gerät · {left} zu senden",
  },
  // The line at the foot of each page, and the page shown in place of one: the program does not answer.
  out_of_reach: { en: "Out of reach", de: "Keine Verbindung" },
  // The line at the foot of each page: the program asks for a moment.
  sent_in_a_moment: { en: "Kept here. It is sent in a moment.", de: "Bleibt hier. Wird gleich gesendet." },
  // The same: the program cannot write now.
  could_not_write: {
    en: "The shop's program could not write it down. It is kept here and sent again.",
    de: "Das Programm der Werkstatt konnte es nicht aufschreiben. Es bleibt hier und wird wieder gesendet.",
  },
  // The same: nobody is signed in.
  sent_after_sign_in: {
    en: "Kept here. It is sent once somebody signs in on this device.",
    de: "Bleibt hier. Wird gesendet, sobald sich an diesem Gerät jemand anmeldet.",
  },
  // The same: the order it is about cannot be read.
  only_looked_at: {
    en: "Kept here: what it is about can only be looked at now. It is sent again by itself.",
    de: "Bleibt hier: Worum es geht, kann jetzt nur angesehen werden. Wird von selbst wieder gesendet.",
  },
  // A tap that was refused, because nobody typed the PIN it needs.
  left_without_pin: { en: "It was left without the PIN", de: "Ohne PIN nicht gemacht" },
  // Behind that.
  nothing_was_done: { en: "Nothing was done.", de: "Nichts wurde gemacht." },
  // Above why a tap was refused, where nothing more is told.
  was_refused: { en: "It was refused", de: "Abgelehnt" },
  // A tap of which the words are not known any more.
  a_tap: { en: "A tap", de: "Eine Eingabe" },
  // Above why a tap was refused later, when nobody waited for it.
  was_not_taken: { en: "“{label}”, {when}, was not taken:", de: "„{label}“, {when}, wurde nicht angenommen:" },
  // A press: the refused tap is sent once more.
  do_it_again: { en: "Do it again", de: "Noch einmal" },
  // A press: what waits here is dropped, or a question is left without an answer.
  leave_it: { en: "Leave it", de: "Lassen" },
  // A link.
  page_it_came_from: { en: "To the page it came from", de: "Zur Seite, von der es kam" },
  // The line at the foot of each page: others did something, and this page is not changed by it.
  news_page_stays: { en: "News came in. This page stays as it is.", de: "Es gibt Neues. Diese Seite bleibt, wie sie ist." },
  // The same: something is being typed.
  news_once_sent: { en: "News came in. It shows once this is sent.", de: "Es gibt Neues. Es erscheint, wenn dies gesendet ist." },
  // The same: hands are on the page.
  news_when_you_pause: { en: "News came in. It shows when you pause.", de: "Es gibt Neues. Es erscheint in einer Pause." },
  // How to mend it, below a test that passed without a reading.
  write_or_press_again: { en: "Write it, or press again.", de: "Eintragen, oder noch einmal drücken." },
  // How to mend it, below what a form lacks.
  then_press_again: { en: "Then press again.", de: "Dann noch einmal drücken." },
  // A tap could not be kept.
  could_not_be_kept: { en: "This could not be kept on this device.", de: "Das ließ sich auf diesem Gerät nicht speichern." },
  // How to mend it.
  store_is_full: {
    en: "Its store is full. Go where the network reaches, so that what waits is sent; then press again.",
    de: "Sein Speicher ist voll. Dorthin gehen, wo Empfang ist, damit Wartendes gesendet wird; dann noch einmal drücken.",
  },
  // A decision was pressed where the program does not answer.
  needs_the_program: {
    en: "This needs the shop's program, and it is out of reach.",
    de: "Dafür braucht es das Programm der Werkstatt, und das ist nicht erreichbar.",
  },
  // How to mend it.
  nothing_was_decided: {
    en: "Nothing was decided. Go where the network reaches, then press again.",
    de: "Nichts wurde entschieden. Dorthin gehen, wo Empfang ist, dann noch einmal drücken.",
  },
  // In "PIN of …", where the name is not known.
  other_person: { en: "the other person", de: "der anderen Person" },
  // A reading was to be worked out where the program does not answer.
  cant_be_worked_out: {
    en: "It can't be worked out: the shop's program is out of reach.",
    de: "Das lässt sich nicht ausrechnen: Das Programm der Werkstatt ist nicht erreichbar.",
  },
  // How to mend it.
  go_where_it_reaches: {
    en: "Go where the network reaches, then press again.",
    de: "Dorthin gehen, wo Empfang ist, dann noch einmal drücken.",
  },
  // The same press a second time; at which time of day it was pressed first.
  pressed_before: { en: "The same was pressed here at {at}", de: "Dasselbe wurde hier um {at} gedrückt" },
  // What to do then.
  press_again_to_note: {
    en: "If it is to be noted once more, press again.",
    de: "Soll es noch einmal notiert werden, noch einmal drücken.",
  },
  // Beside the press that takes the last tap back: the words of that tap.
  last_tap: { en: "last: {label}", de: "zuletzt: {label}" },
  // The line at the foot of each page, when something was to be taken back.
  nothing_to_take_back: { en: "Nothing on this device to take back", de: "An diesem Gerät ist nichts zurückzunehmen" },
  // The same: it was on another order.
  last_was_on_order: {
    en: "The last tap was on order {order}: open it to take it back",
    de: "Zuletzt getippt wurde bei Auftrag {order}: dort öffnen, um es zurückzunehmen",
  },
  // The same: it was elsewhere.
  last_was_elsewhere: { en: "The last tap was on another page", de: "Zuletzt getippt wurde auf einer anderen Seite" },
  // The line at the foot of each page: a press that may have been meant for what stood there before.
  had_just_changed: {
    en: "The page had just changed there. Look, and press again.",
    de: "Die Seite hatte sich gerade geändert. Nachsehen und noch einmal drücken.",
  },

  // A photo that is too large.
  file_too_large: { en: "The file has {bytes} bytes; at most {most} fit.", de: "Die Datei hat {bytes} Byte; höchstens {most} passen." },
  // A press: a few words are recorded in place of typing them.
  start_speaking: { en: "Record", de: "Aufnehmen" },
  // The same press while it runs: how long, and how long at most.
  stop_speaking: { en: "Stop · {seconds} of {most} s", de: "Stopp · {seconds} von {most} s" },
  // The same press once something is recorded.
  speak_again: { en: "Record again", de: "Neu aufnehmen" },
  // Below that press while it runs.
  speak_now: { en: "Speak now.", de: "Jetzt sprechen." },
  // Below a recording that is not sent yet.
  goes_with_it: { en: "It goes with what you press below.", de: "Sie geht mit dem mit, was unten gedrückt wird." },
  // Below the press that records: a browser that cannot, or an address that it does not trust.
  no_recording_here: {
    en: "This browser gives no microphone at this address. Type it, or join the shop with the certificate.",
    de: "Dieser Browser gibt an dieser Adresse kein Mikrofon. Tippen, oder das Gerät mit dem Zertifikat anmelden.",
  },
  // The same: somebody said no to it.
  microphone_not_allowed: {
    en: "The microphone is not allowed for this page. Allow it in the browser's settings, or type it.",
    de: "Das Mikrofon ist für diese Seite nicht erlaubt. In den Einstellungen des Browsers erlauben oder tippen.",
  },
  // The same: there is none, or another program has it.
  no_microphone: {
    en: "No microphone is free on this device. Type it.",
    de: "An diesem Gerät ist kein Mikrofon frei. Tippen.",
  },
  // The same: it ran, and nothing came of it.
  nothing_was_heard: { en: "Nothing was recorded. Try again, or type it.", de: "Nichts aufgenommen. Noch einmal, oder tippen." },
  // On the press that counts bolts in a photo, meanwhile.
  counting: { en: "Counting …", de: "Zählt …" },
  // On the same press, when there was no answer.
  count_again: { en: "Out of reach: count again", de: "Keine Verbindung: noch einmal zählen" },
  // A press below the rows of a form: one more row.
  another_row: { en: "Another", de: "Noch eins" },

  // Above a map that was changed here earlier and not kept.
  map_not_kept: {
    en: "You changed this map on this device and did not keep it.",
    de: "Diese Vorlage wurde auf diesem Gerät geändert und nicht gespeichert.",
  },
  // A press: that change is gone on with.
  take_it_up_again: { en: "Take it up again", de: "Wieder aufnehmen" },

  // The name of the field for a PIN.
  pin: { en: "PIN", de: "PIN" },
  // The large press where a PIN is typed.
  go_on: { en: "Go on", de: "Weiter" },
  // Below a wrong PIN: what is wrong, and how to mend it, both with a capital letter.
  wrong_and_mend: { en: "{what}. {mend}.", de: "{what}. {mend}." },
  // Where a PIN is typed and nobody answers.
  program_out_of_reach: {
    en: "The shop's program is out of reach.",
    de: "Das Programm der Werkstatt ist nicht erreichbar.",
  },
  // Heading where the PIN is asked before a decision.
  decided_with_pin: { en: "This is decided with your PIN", de: "Das wird mit der PIN entschieden" },
  // Heading where another person's PIN is asked.
  pin_of: { en: "PIN of {name}", de: "PIN: {name}" },
  // The key of the pad that takes a digit back.
  back_key: { en: "Back", de: "Zurück" },

  // The page shown in place of a page of an order.
  page_is_with_program: {
    en: "This page is with the shop's program, and the network does not reach here. What was tapped is kept and sent by itself.",
    de: "Diese Seite hat das Programm der Werkstatt, und hier ist kein Empfang. Was getippt wurde, bleibt und wird von selbst gesendet.",
  },
  // The page shown in place of any other page.
  this_is_with_program: {
    en: "This is with the shop's program, and the network does not reach here. What was tapped is kept and sent by itself.",
    de: "Das hat das Programm der Werkstatt, und hier ist kein Empfang. Was getippt wurde, bleibt und wird von selbst gesendet.",
  },
  // That page: heading above the orders of which the next stage was taken along.
  taken_along: { en: "Taken along", de: "Mitgenommen" },
  // That page: an order.
  order: { en: "Order {number}", de: "Auftrag {number}" },
  // That page, under an order: so many of its photos found no room on the device.
  photos_left: { en: "{left} of its photos found no room here", de: "{left} seiner Fotos fanden hier keinen Platz" },
  // In place of a photo that does not lie on this device; what it shows.
  photo_not_here: { en: "{what}: not on this device", de: "{what}: nicht auf diesem Gerät" },
  // That page: beside an order.
  next_stage: { en: "next stage", de: "nächster Schritt" },
  // That page: the press at its foot that takes the last tap back.
  undo_last: { en: "Undo last", de: "Letztes zurücknehmen" },
};

const known = (tag) => ["en", "de"].find((one) => tag?.toLowerCase().startsWith(one)) ?? "en";

/// The language of the page; where there is none, that of the browser.
export const spoken = () => known(globalThis.document?.documentElement.lang ?? navigator.language);

/// A text, in the language of the page unless another is asked for.
export const say = (name, holes = {}, language = spoken()) =>
  PHRASES[name][language].replace(/\{(\w+)\}/g, (_, hole) => String(holes[hole]));
