//! Whom to ring and what is waited for, what a payer is asked, and the days ahead.

use phrases::phrases;

phrases! {
    /// A call: a promise that the plan hardly keeps. How often it is kept, and the time to say instead.
    pub ring_slips(customer, hour, kept, instead) = "Ring {customer}: promised for {hour}, {kept}; say {instead}", "{customer} anrufen: zugesagt für {hour}, {kept}; {instead} sagen";
    /// A call: it left, and something came in after that.
    pub left_look_then_ring = "Left, and something came in after: look, then ring", "Ist weg, und danach kam noch etwas herein: nachsehen, dann anrufen";
    /// What is waited for: when somebody answers, and what they are asked.
    pub answers_by(who, hour, question) = "{who} answers by {hour}: {question}", "{who} antwortet bis {hour}: {question}";
    /// Before what is asked: when they wanted to answer and did not.
    pub wanted_to_answer_by(hour) = "Wanted to answer by {hour}. ", "Wollte bis {hour} antworten. ";
    /// Behind "said no": to what sum.
    pub to_sum(sum) = " to {sum}", " ({sum})";
    /// What can be done when somebody said no: no more is charged than this.
    pub charge_no_more(ceiling) = "charge {ceiling} and no more, ", "höchstens {ceiling} berechnen, ";
    /// A payer said no to the price: to which sum, when, and what can be done.
    pub said_no(who, sum, at, down) = "{who} said no{sum}, {at}: {down}take it off the price, or put it back as it was", "{who} hat abgelehnt{sum}, {at}: {down}vom Preis nehmen oder zurückbauen, wie es war";
    /// A call: the promise is past and it is not ready; how many things are open.
    pub ring_not_ready(customer, hour, open) = "Ring {customer}: promised for {hour}, and it is not ready ({open} open)", "{customer} anrufen: zugesagt für {hour} und nicht fertig ({open} offen)";
    /// A call: a vehicle was to come and is not here.
    pub ring_not_come(customer, hour) = "Ring {customer}: was to come {hour} and is not here", "{customer} anrufen: sollte {hour} kommen und ist nicht da";
    /// A call: a part comes only after the promise.
    pub ring_comes_later(customer, hour, day) = "Ring {customer}: promised for {hour}, but something comes only on {day}", "{customer} anrufen: zugesagt für {hour}, aber etwas kommt erst am {day}";
    /// What is waited for: the customer knows that the promise is not kept.
    pub told_no_new_time(customer, hour) = "{customer} was told {hour}: no new time yet", "{customer} weiß es seit {hour}: noch keine neue Zeit";
    /// Behind a call: what is still to pay.
    pub comma_to_pay(amount) = ", {amount} to pay", ", {amount} zu zahlen";
    /// What is waited for: the customer knows that it is ready.
    pub knows_it_is_ready(customer, hour, to_pay) = "{customer} knows that it is ready, {hour}{to_pay}", "{customer} weiß, dass es fertig ist, {hour}{to_pay}";
    /// A call: it can be collected.
    pub ring_ready(customer, to_pay) = "Ring {customer}: ready to collect{to_pay}", "{customer} anrufen: fertig zum Abholen{to_pay}";
    /// A call: work that is due after the hand-over.
    pub ring_due(customer, what) = "Ring {customer}: {what}", "{customer} anrufen: {what}";
    /// A call some days after: whether a fault came back.
    pub ask_whether_back(customer, complaint) = "Ask {customer} whether it came back: {complaint}", "{customer} fragen, ob es wieder da ist: {complaint}";
    /// Behind what is on its way or away: the day it is due.
    pub comma_due(day) = ", due {day}", ", kommt am {day}";
    /// Behind a part on its way: from whom.
    pub from_whom(from) = " from {from}", " von {from}";
    /// A part that is late.
    pub late_part(count, part, from, due) = "Late: {count} × {part}{from}{due}", "Überfällig: {count} × {part}{from}{due}";
    /// A part that is ordered.
    pub part_on_its_way(count, part, from, due) = "On its way: {count} × {part}{from}{due}", "Unterwegs: {count} × {part}{from}{due}";
    /// An old part with a core charge.
    pub send_back_core(part) = "Send the old one back as a core: {part}", "Altteil wegen Pfand zurückschicken: {part}";
    /// Work sent out that is late.
    pub late_at(to, what, since, due) = "Late at {to}: {what}, since {since}{due}", "Überfällig bei {to}: {what}, seit {since}{due}";
    /// Work sent out.
    pub away_at(to, what, since, due) = "Away at {to}: {what}, since {since}{due}", "Außer Haus bei {to}: {what}, seit {since}{due}";

    /// Behind a sum in what a payer is asked.
    pub sum_with_tax = " with tax", " mit Steuer";
    /// Behind a sum in what a payer is asked.
    pub sum_before_tax = " before tax", " ohne Steuer";
    /// What a payer is asked: nothing is agreed and there is no price yet.
    pub ask_for_diagnosis(who) = "Ask {who} what may be spent on finding the fault: nothing is agreed yet.", "{who} fragen, was die Fehlersuche kosten darf: noch ist nichts vereinbart.";
    /// Nothing is asked: there is no price yet.
    pub nothing_to_ask_no_price(sum) = "Nothing to ask: up to {sum} is agreed, and there is no price yet.", "Nichts zu fragen: bis {sum} ist vereinbart, und es gibt noch keinen Preis.";
    /// What a payer is asked: the whole sum.
    pub ask_for(who, sum, tax) = "Ask {who} for {sum}{tax}: nothing is agreed yet.", "{who} fragen, ob {sum}{tax} in Ordnung sind: noch ist nichts vereinbart.";
    /// What a payer is asked: more than the limit.
    pub ask_for_more(who, more, tax, limit, sum) = "Ask {who} for {more} more{tax}: the limit is {limit}, this makes {sum}.", "{who} fragen, ob {more}{tax} mehr in Ordnung sind: vereinbart sind höchstens {limit}, das wären {sum}.";
    /// Nothing is asked: what is left under the limit.
    pub nothing_to_ask_left(left, tax, limit) = "Nothing to ask: {left}{tax} is left under the limit of {limit}.", "Nichts zu fragen: {left}{tax} sind noch frei bis höchstens {limit}.";
    /// Where the shop has no place of its own: in the sentence that the rules there let a sum pass.
    pub the_shops_place = "the shop's place", "das Recht am Ort";
    /// Over the limit, and the rules of the place let it pass.
    pub need_not_ask(over, tax, place, limit, who) = "Nothing has to be asked: it is {over}{tax} over the limit, and {place} lets up to {limit} pass. Tell {who} all the same.", "Niemand muss gefragt werden: es sind {over}{tax} mehr als vereinbart, und bis {limit} ist das zulässig ({place}). Trotzdem Bescheid sagen: {who}.";
    /// The customer without a name, in what they are asked.
    pub the_customer = "the customer", "Kunde";
    /// Who pays, in what they are asked.
    pub the_warranty = "the warranty", "Garantie";
    /// Who pays goodwill, in what they are asked: the shop itself.
    pub the_shop = "the shop", "Werkstatt";
    /// One of several answers that stand: who wrote it down, when, and the sum with tax.
    pub agreed_with_tax(who, at, sum) = "{who}, {at}: up to {sum} with tax", "{who}, {at}: höchstens {sum} mit Steuer";
    /// One of several answers that stand: who wrote it down, when, and the sum before tax.
    pub agreed_before_tax(who, at, sum) = "{who}, {at}: up to {sum} before tax", "{who}, {at}: höchstens {sum} ohne Steuer";

    /// On the page of the day: what is still to pay.
    pub to_pay(amount) = "{amount} to pay", "{amount} zu zahlen";
    /// On the page of the day, where it waits: the day something is due.
    pub due(day) = "due {day}", "kommt am {day}";
    /// On the page of the day: nobody told where the vehicle stands.
    pub not_placed_yet = "not placed yet", "noch kein Platz";
    /// Before the number of a place outside the stalls on the page of the day: one letter.
    pub yard_letter(nth) = "Y{nth}", "H{nth}";

    /// How often a promise is kept.
    pub hardly_ever_kept = "hardly ever kept", "fast nie gehalten";
    /// How often a promise is kept.
    pub nearly_always_kept = "nearly always kept", "fast immer gehalten";
    /// How often a promise is kept.
    pub kept_times_in_ten(n) = "kept {n} times in 10", "in {n} von 10 Fällen gehalten";
    /// How often a promise is kept, beside a drawing.
    pub hardly_kept = "hardly kept", "kaum zu halten";
    /// How often a promise is kept, beside a drawing.
    pub nearly_sure = "nearly sure", "fast sicher";
    /// How often a promise is kept, beside a drawing.
    pub kept_in_ten(n) = "kept {n} in 10", "hält {n} von 10";
    /// What keeping one promise costs another: how often that is kept then, and now.
    pub kept_instead(name, now, before) = "{name}: kept {now} times in 10 instead of {before}", "{name}: in {now} von 10 Fällen gehalten statt in {before}";
    /// A time to promise, and how often it is kept.
    pub say_then(time, kept) = "say {time}: {kept}", "{time} sagen: {kept}";
}
